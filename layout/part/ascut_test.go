package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// TestProfileAgreesWithSheet: what the cutting file of every flat part of the
// demos cuts is what its sheet says, and is not drilled or milled again; what
// it only marks is made.
func TestProfileAgreesWithSheet(t *testing.T) {
	t.Parallel()
	parts, cut, marked := 0, 0, 0
	for _, name := range []string{"pugmill", "gatejack"} {
		job := demo(t, name)
		for _, p := range job.Parts {
			m := Work(job, p)
			file, err := CutProfile(job, p.Name.Value, CutOptions{})
			if !m.Flat() || err != nil {
				continue
			}
			parts++
			blank := strings.Join(m.Out.Operations[0].Do, "\n")
			for _, c := range file.Contours {
				size, _, _ := strings.Cut(c.SizeText, " as cut")
				if !strings.Contains(blank, size) {
					t.Errorf("%s: %s is cut %s, and the sheet says\n%s", p.Name.Value, c.Name, size, blank)
				}
			}
			for i := range m.Groups {
				g := &m.Groups[i]
				inFile := slices.ContainsFunc(file.Contours, func(c plan.CutContour) bool { return strings.HasPrefix(c.Name, g.name+" ") })
				made := drilled(m, g)
				switch {
				case inFile:
					cut++
				case slices.ContainsFunc(file.Marks, func(c plan.CutMark) bool { return strings.HasPrefix(c.Name, g.name+" ") }):
					marked++
				}
				if inFile == made {
					t.Errorf("%s: %s cut %v, drilled or milled %v", p.Name.Value, g.name, inFile, made)
				}
			}
		}
	}
	if parts < 15 || cut < 10 || marked < 25 {
		t.Errorf("%d parts with %d groups cut and %d marked: too few to tell", parts, cut, marked)
	}
}

// drilled tells whether an operation makes the holes or slots of a group.
func drilled(m *Model, g *Group) bool {
	return slices.ContainsFunc(m.Out.Operations, func(o plan.Operation) bool {
		return slices.Equal(o.Refs, []int{m.ref(g)}) && slices.ContainsFunc(o.Do, func(s string) bool {
			return strings.HasPrefix(s, "Drill ") || strings.HasPrefix(s, "Set the long axis")
		})
	})
}

// TestDieRingBlank: the outline of 260 is turned and the cutter leaves 2 on it,
// so that both the cutting file and the sheet say 262 (geometry).
func TestDieRingBlank(t *testing.T) {
	t.Parallel()
	job := demo(t, "pugmill")
	file, err := CutProfile(job, "die-ring", CutOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if file.BlankXMm != 262 || file.Contours[len(file.Contours)-1].SizeText != "Ø262 as cut, 2 left over its size" {
		t.Errorf("the file cuts %v: %s", file.BlankXMm, file.Contours[len(file.Contours)-1].SizeText)
	}
	for _, p := range job.Parts {
		if p.Name.Value == "die-ring" {
			if got := Work(job, p).Out.Operations[0].Do[0]; got != "Cut from plate 20, laser cut: Ø262 × 20 thick, 2 left over its size." {
				t.Error(got)
			}
		}
	}
}

// TestLeaveOnSquare: what is left counts in the size that is written (geometry).
func TestLeaveOnSquare(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", `part: plate
kind: plate
material: S235
stock: {plate: 10, cut: plasma}
outline: {rectangle: [100, 50], leave: 3}
holes:
  - {name: wide, at: [[30, 0]], size: M20 clearance}
  - {name: close, at: [[-30, 0]], size: 22 mm}
`)
	if got, want := m.cut.text, "103 × 53 as cut, 3 left over its size"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	// ISO 2768-m gives 22 ± 0.2; plasma holds ± 0.3.
	if !m.cut.whole["wide"] || m.cut.whole["close"] || m.cut.marks[0].Why != "finer than the plasma holds" {
		t.Errorf("cut to size %v, marks %v", m.cut.whole, m.cut.marks)
	}
}
