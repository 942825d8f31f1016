package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestProfileAgreesWithSheet: what the cutting file of every flat and folded part of the
// demos cuts is what its sheet says, and is not drilled or milled again; what
// it only marks is made; what it scribes, the sheet has scribed. A rolled blank is its pattern.
func TestProfileAgreesWithSheet(t *testing.T) {
	t.Parallel()
	count, cut, marked, rolled := 0, 0, 0, 0
	for _, name := range []string{"pugmill", "gatejack"} {
		job := demo(t, name)
		for _, p := range job.Parts {
			m := Work(job, p)
			file, err := CutProfile(job, p.Name.Value, CutOptions{})
			_, bent := m.Folded()
			if !m.Flat() && !bent {
				rolled += rolledAgrees(t, job, m)
			}
			if !m.Flat() && !bent || err != nil {
				continue
			}
			count++
			blank := strings.Join(m.Out.Operations[0].Do, "\n")
			if scribes := strings.Contains(blank, "Scribe both ends of every fold line"); bent && scribes == (len(file.Lines) == 0) {
				t.Errorf("%s: the file scribes %d lines, and the sheet says\n%s", p.Name.Value, len(file.Lines), blank)
			}
			for _, c := range file.Contours {
				size, _, _ := strings.Cut(c.SizeText, " as cut")
				if !strings.Contains(blank, size) {
					t.Errorf("%s: %s is cut %s, and the sheet says\n%s", p.Name.Value, c.Name, size, blank)
				}
			}
			for i := range m.Groups {
				g := &m.Groups[i]
				inFile := slices.ContainsFunc(file.Contours, func(c plan.CutContour) bool { return strings.HasPrefix(c.Name, g.Name.Value+" ") })
				made := drilled(m, g)
				switch {
				case inFile:
					cut++
				case slices.ContainsFunc(file.Marks, func(c plan.CutMark) bool { return strings.HasPrefix(c.Name, g.Name.Value+" ") }):
					marked++
				}
				if inFile == made {
					t.Errorf("%s: %s cut %v, drilled or milled %v", p.Name.Value, g.Name.Value, inFile, made)
				}
			}
		}
	}
	if count < 15 || cut < 10 || marked < 25 || rolled < 2 {
		t.Errorf("%d parts with %d groups cut and %d marked, %d rolled: too few to tell", count, cut, marked, rolled)
	}
}

// rolledAgrees compares the cutting file of each piece of a cone, a square-to-round or a flight
// with its flat pattern on the sheet: edge, lines to scribe, thickness and copies. It
// returns how many pieces there are.
func rolledAgrees(t *testing.T, job *parts.Job, m *Model) (pieces int) {
	for _, d := range m.Out.Developments {
		file, err := CutProfile(job, m.Part.Name.Value, CutOptions{Cut: "laser", Piece: d.Name})
		if err != nil {
			continue
		}
		pieces++
		scribed, lap := 0, false
		for _, l := range d.Lines {
			if lap = lap || l.Role == "tab"; l.Role != "edge" && l.Role != "cut" && l.Role != "tab" {
				scribed++
			}
		}
		wide, high := d.MaxMm.XMm-d.MinMm.XMm, d.MaxMm.YMm-d.MinMm.YMm
		if !lap && (math.Abs(file.BlankXMm-wide) > 1e-3 || math.Abs(file.BlankYMm-high) > 1e-3) || len(file.Lines) != scribed || file.Copies != d.Copies || file.ThicknessMm != m.plateMm() {
			t.Errorf("%s, %s: the file cuts %d of %v × %v × %v with %d lines, the sheet %d of %v × %v × %v with %d", m.Part.Name.Value, d.Name,
				file.Copies, file.BlankXMm, file.BlankYMm, file.ThicknessMm, len(file.Lines), d.Copies, wide, high, m.plateMm(), scribed)
		}
	}
	return pieces
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
	// It is taken off before the template is set to the edges.
	text := lines(m)
	has(t, m, "Mill 1.5 off all round, to 100 × 50: one edge")
	if got := m.Out.Operations[1].Limits; len(got) != 1 || got[0] != "outline 99.7 – 100.3 × 49.7 – 50.3" {
		t.Error(got)
	}
	has(t, work(t, "mm", "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {rectangle: [100, 50], corner: 10, leave: 4}\n"), "104 × 54, corners R12 × 10 thick", "Mill 2 off all round, to 100 × 50, corners R10")
	if strings.Index(text, "Mill the outline") > strings.Index(text, "Set the template") {
		t.Error(text)
	}
	has(t, work(t, "mm", "part: disc\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: plasma}\noutline: {circle: 100, leave: 3}\n"), "Turn the outside Ø100", "pressed by a running centre")
	// ISO 2768-m gives 22 ± 0.2; plasma holds ± 0.3.
	if !m.cut.whole["wide"] || m.cut.whole["close"] || m.cut.marks[0].Why != "finer than the plasma holds" {
		t.Errorf("cut to size %v, marks %v", m.cut.whole, m.cut.marks)
	}
}
