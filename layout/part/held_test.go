package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// What hangs over is packed up under the holes, and the parallels lie under what stands; a waist
// between flanges is reached by a recess tool, its corners no rounder than the washers let them:
// 156/2 − 20/2 (M10, ISO 7089) − 132.5/2 = 1.75. Jaws hold the widest that has no thread.
func TestHeldUnderFlanges(t *testing.T) {
	t.Parallel()
	job := demo(t, "pugmill")
	for name, want := range map[string][]string{
		"lantern":       {"clamped on parallels under housing face, front face up; packing 82 mm higher beside each hole", "clamped on parallels, back face up", "A recess tool, right- and left-hand, standing out 64 or more; face both shoulders with it, corners R1.5 mm at most: washers lie there.", "on barrel face (the 4 mm before it free), soft jaws", "Chain-drill Ø7, 900 rev/min, 6 holes 8.4 mm apart, inside the line"},
		"gland-ring":    {"clamped on parallels under pilot, front face up"},
		"barrel-end":    {"on shoulder (the 22 mm before it free), soft jaws", "Counterbore Ø15 × 8.6 deep, pilot Ø9, 200 rev/min."},
		"die-ring":      {"countersink Ø18 × 90°, 200 rev/min.", "Depth: thread 12 deep, drill 17.1 deep + point."},
		"auger-shaft":   {"set true at the back end, in the chuck over copper, on no thread, or a steady", "side-and-face cutter Ø63 × 12"},
		"motor-adapter": {"corners: guard, slowest speed first", "its corners swing up to Ø439"},
	} {
		for _, p := range job.Parts {
			if p.Name.Value == name {
				m := Work(job, p)
				text := lines(m)
				for _, o := range m.Out.Operations {
					text += "\n" + o.Holding + "\n" + o.Tool + "\n" + o.Caution
				}
				for _, w := range want {
					if !strings.Contains(text, w) {
						t.Errorf("%s: no %q in\n%s", name, w, text)
					}
				}
			}
		}
	}
}

// What is filed comes no wider than drawn, and no closer than a file makes it; a tape reads ±1
// (common practice, no source).
func TestFiled(t *testing.T) {
	t.Parallel()
	const ring = "part: p\nkind: ring\nmaterial: S235\nstock: {round: 160 mm}\nprofile:\n  outside: [{name: rim, diameter: 150, length: 40}]\n  inside: [{name: hole, diameter: 72, length: 40}]\nradial:\n  - {name: a, clock: 0, axial: 20, slot: {around: 8, along: 20}, depth: through}\n"
	for source, want := range map[string][2]string{ring: {", no wider, for what reaches in", "7.0 – 8.0 × 19.0 – 21.0"}, strings.Replace(ring, "72", "112", 1): {"", "7.8 – 8.2 × 19.8 – 20.2"}} {
		if c := check(work(t, "mm", source), "a around × along"+want[0]); c == nil || c.Limits != want[1] {
			t.Errorf("%v, want %s", c, want)
		}
	}
}

// A cutter cuts a little wider than it is: what may come no wider than drawn gets one half a millimetre narrower.
func TestNoWiderSlot(t *testing.T) {
	t.Parallel()
	const slit = "part: p\nkind: tube\nmaterial: S235\nstock: {tube: 60, wall: 3}\ntube: {outside: 60, wall: 3, length: 80}\nradial:\n  - {name: a, clock: 0, axial: 40, slot: {around: 4, along: 20}, depth: through}\n"
	for source, want := range map[string]string{slit: "slot drill up to Ø4,", strings.Replace(slit, "through}", "through, note: \"no wider: a finger\"}", 1): "slot drill up to Ø3.5,"} {
		ops := work(t, "mm", source).Out.Operations
		if !slices.ContainsFunc(ops, func(o plan.Operation) bool { return strings.HasPrefix(o.Tool, want) }) {
			t.Errorf("no %q in %+v", want, ops)
		}
	}
}

// What a drawing gives by limits is shown by them, though they stand in the row it is turned in.
func TestShownByLimits(t *testing.T) {
	t.Parallel()
	for fit, want := range map[string]string{"{limits: [29.97, 30]}": "Ø29.97 – 30.00", "h7": "Ø30 h7"} {
		m := work(t, "mm", "part: p\nkind: shaft\nmaterial: S235\nstock: {round: 40 mm}\nprofile:\n  outside: [{name: a, diameter: 30, fit: "+fit+", length: 40}]\n")
		if d := m.Out.Dimensions[0]; d.Text != want || d.Limits != "" {
			t.Errorf("%s: %+v, want %q", fit, d, want)
		}
	}
}

// What a note asks for at a machine is a row of the work and of the record, and no note; a bar has
// no rows but those of its list.
func TestMachinedByNote(t *testing.T) {
	t.Parallel()
	const notes = "notes: ['DRILL: spots at 90°, 4 deep by a 90° drill, for the screws.', 'Keep it dry.']\n"
	m := work(t, "mm", "part: p\nkind: shaft\nmaterial: S235\nstock: {round: 40 mm}\nprofile:\n  outside: [{name: a, diameter: 30, length: 40}]\n"+notes)
	has(t, m, "By the designer’s note", "Spots at 90°, 4 deep by a 90° drill, for the screws.")
	if c := check(m, "spots at 90°, 4 deep by a 90° drill"); c == nil || c.Limits != "places ± 0.3" || len(m.Out.Notes) != 1 {
		t.Errorf("%+v, notes %q", c, m.Out.Notes)
	}
	for note, want := range map[string]string{"LATHE: ream the bore to its limits after pressing": "by the note", "LATHE: cut 3/4-6 Acme, single depth 0.093 in, 5 turns": "by the note", "DRILL: 2 spots 60 mm apart": "places ± 0.3"} {
		m = work(t, "mm", "part: p\nkind: shaft\nmaterial: S235\nstock: {round: 40 mm}\nprofile:\n  outside: [{name: a, diameter: 30, length: 40}]\nnotes: ['"+note+"']\n")
		if _, what, _ := strings.Cut(note, ": "); check(m, what) == nil || check(m, what).Limits != want {
			t.Errorf("%s: %+v", note, check(m, what))
		}
	}
	if m = work(t, "mm", "part: p\nkind: bar\nmaterial: S235\nbar: {square: 20, length: 100}\n"+notes); len(m.Out.Notes) != 2 {
		t.Errorf("of a bar %q", m.Out.Notes)
	}
}

// What is finished after the welds is set true by what was made of it before them: the bore as the laser cut it, which
// holds ±0.1 (common practice, no source), one that was drilled, what was turned, or the tube as bought.
func TestTrueBy(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S355\nstock: {plate: 20, cut: CUT}\noutline: {square: 100}\nbore: {diameter: 32, fit: H7, leave: 2, after-weld: yes}\n"
	const hub = "part: p\nkind: turned\nmaterial: S235\nstock: STOCK\nprofile:\n  outside: [{name: rim, diameter: 60, length: 10}, {name: body, diameter: 45, length: 15}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 25, after-weld: yes}]\n"
	const tube = "part: p\nkind: turned\nmaterial: S235\nstock: {tube: 60, wall: 12}\nprofile:\n  outside: [{name: body, diameter: 60, length: 100}]\n  inside: [{name: bore, diameter: 40, fit: H7, length: 100, after-weld: yes}]\n"
	for _, c := range [][2]string{
		{strings.Replace(plate, "CUT", "laser", 1), "the bore as cut within 0.1 mm"},
		{strings.NewReplacer("CUT", "saw", ", leave: 2", "").Replace(plate), "the bore as made before"},
		{strings.Replace(hub, "STOCK", "{round: 65}", 1), "rim Ø60 as turned"},
		{tube, "bore Ø38 as bored"},
	} {
		if got := work(t, "mm", c[0]).LaterTrue[0].Text; got != c[1] {
			t.Errorf("%q, want %q", got, c[1])
		}
	}
}

// With a bore that is finished after the welds go its chamfers: not those of other steps, nor one that is welded shut.
func TestChamfersAfterWeld(t *testing.T) {
	t.Parallel()
	const hub = "part: p\nkind: turned\nmaterial: S235\nstock: {round: 65}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 10}, {name: body, diameter: 45, length: 15}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 25, after-weld: yes}]\nchamfers: [{edge: rim-front, size: 1.1}, {edge: bore-front, size: 0.7}, {edge: bore-back, size: 2.3, for: weld}]\n"
	do := strings.Join(work(t, "mm", hub).LaterDo, "\n")
	for size, want := range map[string]bool{"0.7": true, "1.1": false, "2.3": false} {
		if strings.Contains(do, size) != want {
			t.Errorf("%s later: %v; %s", size, !want, do)
		}
	}
}

// TOP that is to be a keyway cut after the welds is scribed before them, and the keyway goes there.
func TestTopBeforeItsKeyway(t *testing.T) {
	t.Parallel()
	const hub = "part: p\nkind: turned\nmaterial: S235\ntop: keyway\nstock: {round: 50}\nprofile:\n  outside: [{name: rim, diameter: 45, length: 35}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 35AFTER}]\nkeyways: [{name: key, in: bore}]\n"
	later := work(t, "mm", strings.Replace(hub, "AFTER", ", after-weld: yes", 1))
	do := strings.Join(later.LaterDo, "\n")
	if c := check(later, "TOP marked"); c == nil || c.Wanted != "scribe" || !strings.Contains(lines(later), "Mark TOP on the front face (scribe).") ||
		!strings.Contains(do, "The keyway goes where TOP is scribed.\nkey: keyway 6 JS9 × 35. Clock 0°") || !strings.HasSuffix(do, "A broach that is not square breaks: stand beside the press, eye protection.") || strings.Contains(do, "First scribe") {
		t.Errorf("%+v, later %s\n%s", c, do, lines(later))
	}
	now := work(t, "mm", strings.Replace(hub, "AFTER", "", 1))
	if c := check(now, "TOP marked"); c == nil || c.Wanted != "keyway" || !strings.Contains(lines(now), "First scribe TOP lightly on the front face, where the keyway comes.") {
		t.Errorf("%+v\n%s", c, lines(now))
	}
}

// TestDriverOnWhatTakesIt: at the end turned first a tip 6 long takes no driver; the thread behind it does in a nut, a plain
// round there as it is. A plain end that is long enough is the end itself.
func TestDriverOnWhatTakesIt(t *testing.T) {
	t.Parallel()
	const bar = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 30 mm, length: 906 mm, cut: saw}\nprofile:\n  outside: [{name: tip, diameter: 14, length: TIP}, {name: next, NEXT, length: 300}, {name: guide, diameter: 25, length: 400}, {name: far, diameter: 20, length: 180}]\n"
	for _, c := range []struct{ tip, next, want string }{
		{"6", "thread: M20", "driver on next, in a spare nut M20 sawn open on one side, or copper sheet"},
		{"6", "diameter: 20", "driver on next, over a split sleeve or copper sheet"},
		{"20", "thread: M20", "driver on the end turned before, over a split sleeve or copper sheet"},
	} {
		has(t, work(t, "mm", strings.NewReplacer("TIP", c.tip, "NEXT", c.next).Replace(bar)), "between centres, "+c.want)
	}
}
