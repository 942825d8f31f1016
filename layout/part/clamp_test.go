package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

const splitRing = `
part: collar
kind: ring
material: C45
stock: {round: 55 mm, length: 19 mm}
profile: {outside: [{name: rim, diameter: 50, length: 16}], inside: [{name: bore, diameter: 30, fit: H7, length: 16}]}
keyways: [{name: key, in: bore}]
clamp: {in: bore, slot: 2, screw: M5 8.8, clock: 90, axial: 6, from: back}
`

// A ring that has nothing but its clamp on one side, and no TOP, has no clock: it is split anywhere round, and its
// face shows no TOP. One that is marked TOP, or has a keyway, is split at its clock.
func TestRingOfNoClock(t *testing.T) {
	t.Parallel()
	plain := strings.Replace(splitRing, "keyways: [{name: key, in: bore}]\n", "", 1)
	for _, c := range []struct {
		text string
		none bool
	}{{plain, true}, {plain + "top: scribe\n", false}, {splitRing, false}} {
		m := work(t, "mm", c.text)
		said := m.Clamp.feature(m.Numbered).Note
		for _, o := range m.Out.Operations {
			said += " " + strings.Join(o.Do, " ")
		}
		if strings.Contains(said, "clock 90°") == c.none || strings.Contains(said, "anywhere round") != c.none || m.Faces[0].NoClock != c.none {
			t.Errorf("%s: no clock %v: %s", c.text, m.Faces[0].NoClock, said)
		}
	}
}

// A ring is bored, keyed, drilled and tapped while it is whole, and split last. The
// figures are those of package clamp's test, worked by hand: the rim of the head (8.5)
// at 24.25 meets the round 6.08 from the cut, so the seat is 6.0; the axis at 20 does
// at 15, so it is 9 deep; 16 long.
func TestSplitRing(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", splitRing)
	var order []string
	for _, o := range m.Out.Operations {
		order = append(order, string(o.Machine))
	}
	if want := "Saw Lathe Lathe Bench Bench Drill Saw Bench"; strings.Join(order, " ") != want {
		t.Errorf("%s, want %s", order, want)
	}
	drill := strings.Join(m.Out.Operations[5].Do, " ")
	for _, want := range []string{"20 from the axis, 10 from the front face", "Ø9.5, 9 deep on its middle line, floor 6 from the middle", "Drill Ø4.2", "Open to Ø5.5, 6 deep", "Tap the far side M5."} {
		if !strings.Contains(drill, want) {
			t.Errorf("%q is not in %s", want, drill)
		}
	}
	if saw := strings.Join(m.Out.Operations[6].Do, " "); !strings.Contains(saw, "Saw 2 wide at clock 90° from the outside into bore") || !strings.Contains(saw, "a guess") {
		t.Error(saw)
	}
	for proud, want := range map[float64]bool{-1: false, 0: false, 0.1: true} {
		c := *m.Clamp
		if c.Row.ProudMm = proud; strings.Contains(c.feature(m.Numbered).Note, "over the round") != want {
			t.Errorf("%g over the round: %s", proud, c.feature(m.Numbered).Note)
		}
	}
	row := m.Out.Clamp
	if row.LongMm != 16 || row.AxialMm != 10 || row.HoldsMm != 9 || m.Clamp.Bought() != "Bolt M5 x 16, 8.8, socket head" {
		t.Errorf("%+v %s", row, m.Clamp.Bought())
	}
	var checks []string
	for _, c := range m.Out.Checks {
		if strings.HasPrefix(c.What, "clamp") {
			checks = append(checks, c.What+" "+c.Wanted+": "+c.Limits)
		}
	}
	if want := []string{"clamp slot 2: 1.9 – 2.1", "clamp, floor of the counterbore to the cut 5: 4.9 – 5.1", "clamp closes loose it slips on, nipped up it holds: cut still open"}; !slices.Equal(checks, want) {
		t.Errorf("%q", checks)
	}
	whole := work(t, "mm", strings.Replace(splitRing, "clamp:", "notes: [x]\n#", 1))
	if got, want := whole.Out.MassKg-m.Out.MassKg, 2*10*16*1e-9*m.Material.DensityKgM3; math.Abs(got-want) > 1e-9 {
		t.Errorf("the saw takes %v kg, want %v", got, want)
	}
}

// A ring that is bored after its weld is split after that: its sheet neither saws it nor taps it for the screw, and
// what is done later drills, taps and then saws.
func TestSplitAfterItsWeld(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", strings.Replace(splitRing, "fit: H7,", "fit: H7, after-weld: yes,", 1))
	for _, o := range m.Out.Operations {
		if strings.Contains(o.Title, "clamp") {
			t.Errorf("on the sheet: %s", o.Title)
		}
	}
	later := strings.Join(m.LaterDo, "\n")
	tap, saw := strings.Index(later, "Tap the far side M5."), strings.Index(later, "clamp: split the ring")
	if tap < 0 || saw < tap {
		t.Error(later)
	}
	now := m.Out.Operations[len(m.Out.Operations)-2]
	if text := strings.Join(now.Do, "\n"); !strings.HasPrefix(now.Title, "Finish") || strings.Index(text, "bore Ø30 H7") > strings.Index(text, "split the ring") {
		t.Errorf("%s: %s", now.Title, text)
	}
	if !slices.ContainsFunc(m.Later, func(c plan.Check) bool { return c.What == "clamp closes" }) || m.Out.Clamp == nil {
		t.Errorf("%+v", m.Later)
	}
}

// Seen on the front the cut at 90° lies on the right, 1 to each side, from the bore to
// the round, and the counterbore below it, clockwise; on the back it lies on the left.
func TestSplitOnItsFaces(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", splitRing)
	f := m.Out.Faces[0]
	slot := f.Notches[len(f.Notches)-1]
	if f.NoTemplate == "" || math.Abs(slot[0].YMm-1) > 1e-9 || math.Abs(slot[0].XMm-math.Sqrt(15*15-1)) > 1e-9 || math.Abs(slot[2].YMm+1) > 1e-9 || math.Abs(slot[2].XMm-math.Sqrt(25*25-1)) > 1e-9 {
		t.Errorf("%q %+v", f.NoTemplate, slot)
	}
	seat := f.Hidden[len(f.Hidden)-1]
	if math.Abs(seat[1].XMm-15.25) > 1e-9 || math.Abs(seat[1].YMm+6) > 1e-9 || seat[0].YMm >= seat[1].YMm {
		t.Errorf("%+v", seat)
	}
	back, err := FaceView(m.Job, "collar", parts.Back)
	if err != nil || back != nil {
		t.Fatal(err, back)
	}
	on := m.face(parts.Back, false)
	if slot := on.Notches[len(on.Notches)-1]; slot[0].XMm > -14 {
		t.Errorf("%+v", slot)
	}
	if seat := on.Hidden[len(on.Hidden)-1]; math.Abs(seat[1].YMm+6) > 1e-9 {
		t.Errorf("%+v", seat)
	}
}

// Bores that wait for a weld are bored from the end that a tool comes in by, with their undercuts: past a neck of 40 no bar
// reaches one of 60 from the other end. Steps that widen towards the back are all bored from there.
func TestBoredFromTwoEnds(t *testing.T) {
	t.Parallel()
	const housing = "part: h\nkind: bearing-housing\nmaterial: S235\nstock: {round: 105}\nprofile:\n  outside: [{name: body, diameter: 100, length: 90}]\n  inside:\n    - {name: front-cup, diameter: 60, fit: N7, length: 20, undercut: DIN 509-F, after-weld: yes}\n    - {name: neck, diameter: 40, length: 50}\n    - {name: back-cup, diameter: 60, fit: N7, length: 20, undercut: {width: 3, depth: 0.5}, after-weld: yes}\n"
	turned := "No tool reaches all bores from one end: front cup from the front; then turn it round, set it true by indicator in front cup, and bore back cup from the back."
	for _, c := range []struct {
		old, new, ends string
		says           []string
	}{
		{"", "", turned, []string{"Undercut of front cup, DIN 509-F 0.6x0.3: 2.5 wide", "Undercut of back cup: 3 wide × 0.5 deep, at the shoulder."}},
		{"name: front-cup, diameter: 60", "name: front-cup, diameter: 30", "", []string{"Undercut of back cup"}},
		{"undercut: {width: 3, depth: 0.5}, after-weld: yes", "after-weld: yes", turned, []string{"Undercut of front cup"}},
	} {
		m := work(t, "mm", strings.Replace(housing, c.old, c.new, 1))
		later := strings.Join(m.LaterDo, "\n")
		if m.TwoEnds() != c.ends || !strings.Contains(later, c.ends) {
			t.Errorf("%s: %q in %s", c.new, m.TwoEnds(), later)
		}
		for _, said := range c.says {
			if !strings.Contains(later, said) {
				t.Errorf("%s: %q is not in %s", c.new, said, later)
			}
		}
	}
}
