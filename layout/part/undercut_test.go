package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

const undercutShaft = `part: spindle
kind: shaft
material: C45
stock: {round: 70 mm, length: 210 mm, cut: saw}
profile:
  outside:
    - {name: nose, thread: M36x3, length: 40, NOSE}
    - {name: collar, diameter: 60, length: 20}
    - {name: tail, diameter: 50, length: 50, TAIL}
  inside:
    - {name: nut, thread: M16, length: 40, NUT}
    - {name: floor, diameter: 8, length: 10}
`

// DIN 509 for 50: radius 0.6, 0.3 deep, 2.5 wide; form F 0.2 into the shoulder
// and to 2.1 up from the floor, form E needs 0.6 of chamfer at the mate. DIN 76-1 for a pitch
// of 3 outside: 31.6 h13 (31.210 to 31.600, ISO 286-2), 10.5 wide, R1.6; short
// 7.5; for a pitch of 2 inside: 16.5 H13 (16.500 to 16.770), 10.3 wide.
func TestUndercuts(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ at, named, line, what, limits string }{
		{"TAIL", "DIN 509-F", "Undercut of tail, DIN 509-F 0.6x0.3: 2.5 wide, 0.3 deep, R0.6, out at 15°; and 0.2 into the shoulder, as far as 2.1 up from the floor.", "tail undercut", "depth 0.3 – 0.4"},
		{"TAIL", "DIN 509-E", "Undercut of tail, DIN 509-E 0.6x0.3: 2.5 wide, 0.3 deep, R0.6, out at 15°; what sits here needs a chamfer over 0.6.", "tail undercut", "depth 0.3 – 0.4"},
		{"TAIL", "DIN 509-F 1x0.2", "Undercut of tail, DIN 509-F 1x0.2: 2.5 wide, 0.2 deep, R1, out at 15°; and 0.1 into the shoulder, as far as 1.8 up from the floor; what sits here needs a chamfer over 0.8.", "tail undercut", "depth 0.2 – 0.3"},
		{"NOSE", "DIN 76-A", "Undercut of nose, DIN 76-A: floor Ø31.6 h13, 10.5 at most from the shoulder, corners R1.6, flank 30° on the thread's side.", "nose undercut", "31.21 – 31.60"},
		{"NOSE", "DIN 76-B", "Undercut of nose, DIN 76-B: floor Ø31.6 h13, 7.5 at most from the shoulder", "nose undercut", "31.21 – 31.60"},
		{"NUT", "DIN 76-C", "Undercut of nut, DIN 76-C: floor Ø16.5 H13, 10.3 at most from the shoulder", "nut undercut", "16.50 – 16.77"},
	} {
		text := strings.Replace(undercutShaft, c.at, "undercut: "+c.named, 1)
		m := work(t, "mm", strings.NewReplacer(", NOSE", "", ", TAIL", "", ", NUT", "").Replace(text))
		has(t, m, c.line)
		if w := check(m, c.what); w == nil || w.Limits != c.limits || w.MinMm >= w.MaxMm {
			t.Errorf("%s: %v, want %s", c.named, w, c.limits)
		}
		if f := feature(m, strings.ToLower(c.at)); !strings.Contains(f.Note, c.named[:8]) {
			t.Errorf("%s: %v", c.named, f)
		}
		runs := slices.ContainsFunc(m.Out.Operations, func(o plan.Operation) bool {
			return strings.Contains(strings.Join(o.Do, " "), "run out, and full thread ends")
		})
		if runs != (c.at != "NOSE") {
			t.Errorf("%s: says of the run-out %v", c.named, runs)
		}
	}
}

// The flank of DIN 509 leaves the cylinder at 15°: 0.3 / tan 15° = 1.120 long. Form F
// goes 0.2 into the shoulder and back to its plane at 8°, 0.2 / tan 8° = 1.423 long,
// 2.1 above the floor: at 24.7 + 2.1 = 26.8. Form E leaves the shoulder as it is. In a
// bore all is turned round: its floor lies outside, its shoulder inward.
func TestUndercutContour(t *testing.T) {
	t.Parallel()
	plain := strings.NewReplacer(", NOSE", "", ", NUT", "", ", TAIL", "")
	inner := strings.Replace(undercutShaft, "{name: nut, thread: M16, length: 40, NUT}", "{name: cup, diameter: 20, length: 40, undercut: DIN 509-F}", 1)
	for _, c := range []struct {
		text string
		in   bool
		want []plan.XY
	}{
		{strings.Replace(undercutShaft, "TAIL", "undercut: DIN 509-F", 1), false, []plan.XY{{XMm: 60, YMm: 30}, {XMm: 60, YMm: 26.8}, {XMm: 59.8, YMm: 25.376926}, {XMm: 59.8, YMm: 24.7}, {XMm: 61.380385, YMm: 24.7}, {XMm: 62.5, YMm: 25}}},
		{strings.Replace(undercutShaft, "TAIL", "undercut: DIN 509-E", 1), false, []plan.XY{{XMm: 60, YMm: 30}, {XMm: 60, YMm: 24.7}, {XMm: 61.380385, YMm: 24.7}, {XMm: 62.5, YMm: 25}}},
		{inner, true, []plan.XY{{XMm: 37.5, YMm: 10}, {XMm: 38.619615, YMm: 10.3}, {XMm: 40.2, YMm: 10.3}, {XMm: 40.2, YMm: 9.623074}, {XMm: 40, YMm: 8.2}, {XMm: 40, YMm: 4}}},
	} {
		m := work(t, "mm", plain.Replace(c.text))
		line := m.Out.Section.Outer
		if c.in {
			line = m.Out.Section.Inner
		}
		i := slices.IndexFunc(line, func(p plan.XY) bool { return p == c.want[0] })
		if i < 0 || len(line) < i+len(c.want) {
			t.Errorf("no %v in %v", c.want[0], line)
			continue
		}
		for j, q := range c.want {
			if p := line[i+j]; math.Hypot(p.XMm-q.XMm, p.YMm-q.YMm) > 1e-5 {
				t.Errorf("point %d is %v, want %v", j, p, q)
			}
		}
	}
}

// A thread between a seat of its own diameter and a smaller one has its undercut beside
// the seat, 37.7 at the floor and 5.2 wide (DIN 76-1, pitch 1.5). Without, it is full from
// 4.5 on there, and at once on the other side, whose 38 is under its root of 38.16; where
// both sides stand over the root, beside the larger.
func TestUndercutBesideSeat(t *testing.T) {
	t.Parallel()
	const shaft = "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: collar, diameter: 44, length: 20}\n    - {name: seat, diameter: 40, fit: k6, length: 20}\n    - {name: nut, thread: M40x1.5, length: 22, undercut: DIN 76-A}\n    - {name: tail, diameter: 38, length: 20}\n"
	for text, at := range map[string][2]float64{shaft: {40, 45.2}, strings.Replace(shaft, "diameter: 38", "diameter: 39", 1): {40, 45.2}, strings.Replace(shaft, "diameter: 38", "diameter: 42", 1): {56.8, 62}} {
		m := work(t, "mm", text)
		var floor []float64
		for _, p := range m.Out.Section.Outer {
			if p.YMm == 18.85 {
				floor = append(floor, p.XMm)
			}
		}
		if len(floor) != 2 || floor[0] < at[0] || floor[1] > at[1] || floor[0] != at[0] && floor[1] != at[1] {
			t.Errorf("floor %v, want within %v:\n%s", floor, at, text)
		}
		for _, d := range m.Out.Dimensions { // its size points at the thread
			if d.Text == "M40x1.5" && (d.FromMm < floor[1] && d.ToMm > floor[0] || d.ToMm-d.FromMm < 16) {
				t.Errorf("the thread is pointed at from %v to %v, its undercut is %v", d.FromMm, d.ToMm, floor)
			}
		}
		free := work(t, "mm", strings.Replace(text, ", undercut: DIN 76-A", "", 1))
		front, back, want := free.FullThreadMm(free.StepNamed("nut"), false), free.FullThreadMm(free.StepNamed("nut"), true), 4.5
		if text == shaft {
			want = 0
		}
		if front != 4.5 || back != want || m.FullThreadMm(m.StepNamed("nut"), false) != 0 {
			t.Errorf("full from %v and %v, want 4.5 and %v", front, back, want)
		}
	}
}

// Form F for 50 goes 2.1 − 0.3 = 1.8 up from the cylinder: 53.6 is just high enough.
// Over a lower shoulder it is a finding, and is drawn without its recess there. The
// floor of a blind bore is always high enough.
func TestUndercutOver(t *testing.T) {
	t.Parallel()
	plain := strings.NewReplacer("TAIL", "undercut: DIN 509-F", ", NOSE", "", ", NUT", "")
	for collar, want := range map[string]string{
		"53.6": "", "53": "the undercut of tail goes 1.8 up its shoulder, which is 1.5 high", "50": "the undercut of tail goes 1.8 up its shoulder, which is 0 high",
	} {
		m := work(t, "mm", strings.Replace(plain.Replace(undercutShaft), "diameter: 60", "diameter: "+collar, 1))
		got := ""
		for _, p := range m.Out.Problems {
			got += p.What
		}
		if got != want {
			t.Errorf("collar %s: %q, want %q", collar, got, want)
		}
		if drawn := slices.ContainsFunc(m.Out.Section.Outer, func(p plan.XY) bool { return p.XMm == 59.8 }); drawn != (want == "") {
			t.Errorf("collar %s: drawn %v", collar, drawn)
		}
	}
	blind := strings.Replace(undercutShaft, "{name: floor, diameter: 8, length: 10}", "{name: floor, diameter: 8, length: 10, undercut: DIN 509-F}", 1)
	if m := work(t, "mm", strings.NewReplacer(", TAIL", "", ", NOSE", "", ", NUT", "").Replace(blind)); len(m.Out.Problems) > 0 {
		t.Errorf("a blind floor: %v", m.Out.Problems)
	}
}

func TestUndercutRefused(t *testing.T) {
	t.Parallel()
	for named, want := range map[string][2]string{
		"TAIL DIN 509-F 0.7x0.3": {"no undercut is named DIN 509-F 0.7x0.3 here", "DIN 509-F 0.1x0.1, DIN 509-F 0.2x0.1"},
		"NOSE DIN 76-C":          {"no undercut is named DIN 76-C here", "DIN 76-A, DIN 76-B"},
		"NUT DIN 76-A":           {"no undercut is named DIN 76-A here", "DIN 76-C, DIN 76-D"},
		"SHORT DIN 509-F":        {"the undercut is 2.5 wide and the step 2 long", "narrower"},
	} {
		at, name, _ := strings.Cut(named, " ")
		text := undercutShaft
		if at == "SHORT" {
			at, text = "TAIL", strings.Replace(text, "length: 50", "length: 2", 1)
		}
		text = strings.Replace(text, at, "undercut: "+name, 1)
		job := load(t, "mm", strings.NewReplacer(", NOSE", "", ", TAIL", "", ", NUT", "").Replace(text))
		m := Work(job, job.Parts[0])
		if len(m.Errs) != 1 || m.Errs[0].What != want[0] || !strings.Contains(m.Errs[0].Right, want[1]) {
			t.Errorf("%s: %v", named, m.Errs)
		}
	}
}

// TestShoulderMm: the higher of the two neighbours of its side counts; the floor of a blind bore ends it.
func TestShoulderMm(t *testing.T) {
	t.Parallel()
	const text = "part: p\nkind: turned\nmaterial: C45\nstock: {round: 70 mm}\nprofile:\n  outside: [{name: a, diameter: 50, length: 20}, {name: b, diameter: 40, length: 20}, {name: c, diameter: 60, length: 20}]\n  inside: [{name: d, diameter: 20, length: 20}, {name: e, diameter: 30, length: 10}, {name: f, diameter: 16, length: LAST}]\n"
	for last, floor := range map[string]float64{"30": 0, "20": math.Inf(1)} {
		m := work(t, "mm", strings.Replace(text, "LAST", last, 1))
		outside, inside := m.Sides()
		for i, want := range [][2]float64{{0, 0}, {10, 7}, {0, floor}} {
			if a, b := m.shoulderMm(outside[i]), m.shoulderMm(inside[i]); a != want[0] || b != want[1] {
				t.Errorf("step %d, floor %g: %g and %g, want %g", i, floor, a, b, want)
			}
		}
	}
	two := work(t, "mm", "part: p\nkind: turned\nmaterial: C45\nstock: {round: 70 mm}\nprofile:\n  outside: [{name: a, diameter: 50, length: 20}, {name: b, diameter: 40, length: 20}]\n")
	if outside, _ := two.Sides(); two.shoulderMm(outside[1]) != 5 || two.shoulderMm(outside[0]) != 0 {
		t.Error("the first of two")
	}
}
