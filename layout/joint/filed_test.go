package joint_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/read"
)

// filed is the plan of a job of the parts given, each named by its file, in mm.
func filed(t *testing.T, joints string, partTexts ...string) *plan.Plan {
	t.Helper()
	return planned(t, jobOf(t, joints, partTexts...))
}

// jobOf is that job.
func jobOf(t *testing.T, joints string, partTexts ...string) *parts.Job {
	t.Helper()
	dir, names := t.TempDir(), []string{}
	put := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, text := range partTexts {
		names = append(names, strings.Fields(text)[1]+".yaml")
		put(names[len(names)-1], text)
	}
	put("job.yaml", "job: J\nunits: mm\ntolerance: m\nparts: ["+strings.Join(names, ", ")+"]\njoints:\n  - "+joints+"\n")
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// A branch of 80 on a main of 200, at 60° and 20 off the axis: 277.94 along the curve where
// they meet (integrated apart from this program), 274.02 without the offset, 257.37 if it
// were square. Its wall of 2 is sheet: tacks of four thicknesses of that, 60 apart at most
// (common practice), not of the 8 of the main.
func TestBranchWeldGoesByTheBranch(t *testing.T) {
	t.Parallel()
	main := "part: main\nkind: tube\nmaterial: S235\nstock: {tube: 200 mm, wall: 8 mm, length: 604 mm}\ntube: {outside: 200, wall: 8, length: 600}\nradial: [{name: opening, clock: 0, axial: 300, size: 20 mm, depth: through}]\n"
	branch := "part: branch\nkind: tube\nmaterial: S235\nstock: {tube: 80 mm, wall: 2 mm, length: 320 mm}\ntube: {outside: 80, wall: 2, length: 300}\nends:\n  back: {onto: main.outside, angle: 60, offset: 20, joint: set-on, gap: 1, clock: 0, place: {clock: 0, axial: 300, leans: back}}\n"
	for _, side := range []string{"outside", "bore"} { // the weld runs round its outside whichever is named
		w := filed(t, "{name: w, weld: {part: branch."+side+", to: main.opening, type: square, process: TIG}}", main, branch).Joints[0].Weld
		if math.Abs(w.LengthMm-277.94) > 0.01 || w.TackLengthMm != 8 || len(w.TacksDeg) != 8 {
			t.Errorf("by its %s %v mm, %d tacks of %v", side, w.LengthMm, len(w.TacksDeg), w.TackLengthMm)
		}
	}
}

// Runs of 25 mm² with MAG wire and 18 with sticks (common practice): a fillet of leg 12 is 72
// mm² and a tenth more, 79.2; a chamfer of 9 at 45° against a tube 40.5 under a cap of 2/3 × 9 × 1.
func TestRunsFollowTheSection(t *testing.T) {
	t.Parallel()
	plate := "material: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {square: 100}\n"
	j := filed(t, "{name: w, weld: {part: a.outline, to: b.outline, type: fillet, size: 12, length: 100, process: MAG}}", "part: a\nkind: plate\n"+plate, "part: b\nkind: plate\n"+plate).Joints[0]
	if j.Weld.AreaMm2 != 79.2 || j.Weld.Runs != 4 {
		t.Errorf("fillet of %v mm² in %d runs", j.Weld.AreaMm2, j.Weld.Runs)
	}
	says(t, j, []string{"4 runs of MAG"}, nil)
	tube := "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 8 mm, length: 204 mm}\ntube: {outside: 100, wall: 8, length: 200}\n"
	flange := "part: flange\nkind: flange\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {circle: 200}\nbore: {diameter: 100, fit: {light-press: tube.outside}, leave: 2}\nchamfers: [{edge: bore-back, size: 9 mm, angle: 45, for: weld}]\n"
	j = filed(t, "{name: w, weld: {part: flange.bore, to: tube.outside, type: bevel, process: MMA}}", tube, flange).Joints[0]
	if j.Weld.AreaMm2 != 46.5 || j.Weld.Runs != 3 || len(j.Weld.Order) == 0 || j.Weld.Order[len(j.Weld.Order)-1].Layer != 3 {
		t.Errorf("groove of %v mm² in %d runs, %+v", j.Weld.AreaMm2, j.Weld.Runs, j.Weld.Order)
	}
}

// A hub turned to 90 from a bar of 130 has the 195 MPa of EN 10025-2:2004 Table 7 over 100 to
// 150, from one of 95 the 215 of over 80 to 100.
func TestPressYieldsByTheBarBought(t *testing.T) {
	t.Parallel()
	for bar, yield := range map[string]float64{"130": 195, "95": 215} {
		p := filed(t, "{name: p, press: {shaft: pin.seat, bore: hub.bore}, level: front-with-front}",
			"part: hub\nkind: turned\nmaterial: S235\nstock: {round: "+bar+" mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 90, length: 40}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 40}]\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: p6, length: 40}]\n").Joints[0].Press
		if got := p.HubSafety * p.HubMPa.Max; math.Abs(got-yield) > 0.01*yield {
			t.Errorf("from %s mm: safety %v at %v MPa, as of %v; want %v", bar, p.HubSafety, p.HubMPa.Max, got, yield)
		}
	}
}

// A branch that is cut to stand on a main is welded to the opening there, not to its outside,
// which would be two rounds on one axis (by geometry).
func TestBranchWantsAnOpening(t *testing.T) {
	t.Parallel()
	main := "part: main\nkind: tube\nmaterial: S235\nstock: {tube: 200 mm, wall: 8 mm, length: 604 mm}\ntube: {outside: 200, wall: 8, length: 600}\n"
	branch := "part: branch\nkind: tube\nmaterial: S235\nstock: {tube: 80 mm, wall: 2 mm, length: 320 mm}\ntube: {outside: 80, wall: 2, length: 300}\nends:\n  back: {onto: main.outside, angle: 60, joint: set-on, gap: 1, clock: 0, place: {clock: 0, axial: 300, leans: back}}\n"
	p, err := draft(jobOf(t, "{name: w, weld: {part: branch.outside, to: main.outside, type: square, process: TIG}}", main, branch))
	if err != nil || len(p.Faults) != 1 || p.Faults[0].Kind != plan.CannotJoin || !strings.Contains(p.Faults[0].Args[1].Text, "opening") {
		t.Errorf("%v, %+v", err, p.Faults)
	}
}

// A fit that neither the heat its hub stands (grey iron 250 °C, DIN 7190) nor liquid nitrogen
// opens has no step that heats or cools, and no number to work by.
func TestNothingIsHeatedPastWhatItStands(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ method, fit, step string }{{"heat", "u6", "Stop"}, {"heat", "n6", "Heat"}, {"cool", "u6", "Stop"}, {"cool", "k6", "Cool"}} {
		j := filed(t, "{name: p, press: {shaft: pin.seat, bore: hub.bore, method: "+c.method+"}, level: front-with-front}",
			"part: hub\nkind: turned\nmaterial: EN-GJL-250\nstock: {round: 90 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 80, length: 20}]\n  inside: [{name: bore, diameter: 40, fit: H6, length: 20}]\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 40, fit: "+c.fit+", length: 40}]\n").Joints[0]
		if got := j.Steps[1].Title; got != c.step {
			t.Errorf("%s %s: %s, want %s; hub %v °C of %v, shaft %v °C of %v", c.method, c.fit, got, c.step, j.Press.HeatHubC, j.Press.HeatLimitC, j.Press.CoolShaftC, j.Press.ColdLimitC)
		}
	}
}

// A lid of 8 with plates of 12 and 5 between it and a base of 10, whose holes lie 60 to the right and 20 up: the
// lid's front lies 8 and 17 before the base's front, on its back 10 and 17 behind it; so it does where its place
// is said. Each plate lies on the one before it, its holes, 7 to the left in the second, on the lid's.
func TestStackBeside(t *testing.T) {
	t.Parallel()
	plate := func(name, thick, centre string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: " + thick + " mm, cut: laser}\noutline: {rectangle: [300, 200]}\nholes: [{name: h, grid: {columns: 2, rows: 2, pitch: [40, 30], centre: " + centre + "}, size: M8 clearance}]\n"
	}
	for how, want := range map[string]plan.Beside{
		"face: back-on-front":  {XMm: 60, YMm: 20, FrontMm: -25},
		"face: front-on-back":  {XMm: 60, YMm: 20, FrontMm: 27},
		"face: back-on-back":   {XMm: 60, YMm: 20, FrontMm: 35, OtherWay: true},
		"face: front-on-front": {XMm: 60, YMm: 20, FrontMm: -17, OtherWay: true},
		"place: {on: front, with: back, at: [60, 20], top: up}":  {XMm: 60, YMm: 20, FrontMm: -25},
		"place: {on: back, with: front, at: [-60, 20], top: up}": {XMm: 60, YMm: 20, FrontMm: 27},
		"place: {on: front, with: front, at: [60, 20], top: up}": {XMm: 60, YMm: 20, FrontMm: -17, OtherWay: true},
	} {
		j := filed(t, "{name: j, bolt: {through: lid.h, stack: [mid.h, low.h], into: base.h, bolt: M8 8.8, nut: yes}, "+how+"}", plate("lid", "8", "[0, 0]"), plate("mid", "12", "[0, 0]"), plate("low", "5", "[-7, 0]"), plate("base", "10", "[60, 20]")).Joints[0]
		if b := j.Beside; b == nil || *b != want {
			t.Errorf("%s: %+v", how, b)
		}
		stack := []plan.Beside{{FrontMm: 8}, {XMm: 7, FrontMm: 20}} // behind the lid's back
		if strings.Contains(how, "face: front") || strings.Contains(how, "with: front") {
			stack = []plan.Beside{{FrontMm: -12}, {XMm: 7, FrontMm: -17}}
		}
		if !slices.Equal(j.Stack, stack) {
			t.Errorf("%s: %+v, want %+v", how, j.Stack, stack)
		}
	}
	// One with more holes has no place on them.
	six := strings.Replace(plate("mid", "12", "[0, 0]"), "columns: 2", "columns: 3", 1)
	if p, err := draft(jobOf(t, "{name: j, bolt: {through: lid.h, stack: [mid.h], into: base.h, bolt: M8 8.8, nut: yes}, face: back-on-front}", plate("lid", "8", "[0, 0]"), six, plate("base", "10", "[60, 20]"))); err != nil || len(p.Joints) > 0 && p.Joints[0].Stack != nil {
		t.Errorf("%v, %+v", err, p)
	}
	// Made studs with a body of 90 hold the lid that far off.
	stud := "part: stud\nkind: shaft\nquantity: 4\nmaterial: S235\nstock: {round: 20, cut: saw}\nprofile:\n  outside:\n    - {name: a, thread: M8, length: 19}\n    - {name: body, diameter: 20, length: 90}\n    - {name: b, thread: M8, length: 21}\n"
	b := filed(t, "{name: j, bolt: {through: lid.h, into: base.h, bolt: M8, stud: stud}, place: {on: front, with: back, at: [60, 20], top: up}}", plate("lid", "8", "[0, 0]"), plate("base", "10", "[60, 20]"), stud).Joints[0].Beside
	if b == nil || b.FrontMm != -98 {
		t.Errorf("studs: %+v", b)
	}
}

// Two weldments, each about an axis of its own, are bolted 150 to the right and 20 up; the ring on each pipe stands
// 4 out of the pipe's end, which lies that far under its face. A weld that cannot be made is no step to come after.
func TestWeldmentsBeside(t *testing.T) {
	t.Parallel()
	pipe := func(name string) string {
		return "part: " + name + "\nkind: tube\nmaterial: S235\nstock: {tube: 60, wall: 4}\ntube: {outside: 60, wall: 4, length: 100}\n"
	}
	plate := func(name, centre string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 8 mm, cut: laser}\noutline: {rectangle: [500, 200]}\nbore: {diameter: 60.6}\nholes: [{name: h, grid: {columns: 2, rows: 2, pitch: [100, 90], centre: " + centre + "}, size: M8 clearance}]\n"
	}
	joints := "{name: a, weld: {part: lid.bore, to: stub.outside, type: fillet}, level: front-with-front, below: 4}\n  - {name: b, weld: {part: base.bore, to: pipe.outside, type: fillet}, level: front-with-back, below: 4}\n  - {name: j, bolt: {through: lid.h, into: base.h, bolt: M8 8.8, nut: yes}, face: front-on-front}"
	p := filed(t, joints, plate("lid", "[0, 0]"), plate("base", "[150, 20]"), pipe("stub"), pipe("pipe"))
	if s := jointNamed(t, p, "j").Beside; s == nil || s.XMm != 150 || s.YMm != 20 || len(p.Faults) > 0 {
		t.Errorf("%+v, %v", s, p.Faults)
	}
	for name, want := range map[string]string{"a": "front of lid 4 mm out of the front of stub", "b": "front of base 4 mm out of the back of pipe"} {
		if how := jointNamed(t, p, name).How; !strings.HasPrefix(how, want) {
			t.Errorf("%s: %q", name, how)
		}
	}
	p, _ = draft(jobOf(t, strings.Replace(joints, "lid.bore, to: stub.outside", "lid.outline, to: stub.outside", 1), plate("lid", "[0, 0]"), plate("base", "[150, 20]"), pipe("stub"), pipe("pipe")))
	why := jointNamed(t, p, "j").Why
	if len(p.Faults) == 0 || len(why) != 1 || why[0].Step != 1 {
		t.Errorf("%v, %v", why, p.Faults)
	}
}

// Roughness takes 0.8 of both seats' Rz off an interference (DIN 7190-1:2017), Rz taken as 5 Ra: of Ra 1.6
// on both 12.8 µm, on one 6.4; of Ra 6.3 on both 50.4, more than H7/p6 holds at its least.
func TestRoughSeats(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		pin, bore, takes string
		none, all        bool // no finish is drawn; it may take all
	}{
		{"", "", "", true, false}, {", finish: Ra 1.6", "", "6.4 µm", false, true}, {"", ", finish: Ra 1.6", "6.4 µm", false, true}, {", finish: Ra 1.6", ", finish: Ra 1.6", "12.8 µm", false, true}, {", finish: Ra 6.3", ", finish: Ra 6.3", "", false, true},
	} {
		j := filed(t, "{name: j, press: {shaft: pin.seat, bore: hub.bore}, level: front-with-front, below: 0.3}",
			"part: hub\nkind: turned\nmaterial: S235\nstock: {round: 95 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 90, length: 40}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 40"+c.bore+"}]\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: p6, length: 40"+c.pin+"}]\n").Joints[0]
		takes := ""
		for _, f := range j.Figures {
			if f.Label == "flattened roughness takes" {
				takes = f.Value
			}
		}
		cautions := strings.Join(j.Cautions, " ")
		if !strings.Contains(takes, c.takes) || (takes == "") != c.none || strings.Contains(cautions, "No finish is drawn") != c.none {
			t.Errorf("%q and %q: takes %q; %s", c.pin, c.bore, takes, cautions)
		}
		// Under 0.5 ISO 2768-1 has no tolerance: 0.3 is held to 0.2.
		seated := ""
		for _, k := range j.Checks {
			if k.What == "seated" {
				seated = fmt.Sprint(k.MinMm, " ", k.MaxMm, " ", k.Limits)
			}
		}
		if seated != "0.1 0.5 0.1 – 0.5 below, at four places" {
			t.Errorf("seated: %q", seated)
		}
	}
}

// Two plates with two rows of bolts each over a bar of its own: the second bar is named where the first is put in,
// and is nothing else that lies between the faces. A rail on slots of what stands already is what is set.
func TestBoltedOverItsOwn(t *testing.T) {
	t.Parallel()
	const flat = "kind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 160}\nholes:\n  - {name: left, at: [[-60, -40], [-60, 40]], size: M10 clearance}\n  - {name: right, at: [[60, -40], [60, 40]], size: M10 clearance}\n"
	p := planned(t, jobOf(t, "{name: one, bolt: {through: top.left, stack: [bar#1.h], into: base.left, bolt: M10 8.8, nut: yes}, face: back-on-front}\n  - {name: two, bolt: {through: top.right, stack: [bar#2.h], into: base.right, bolt: M10 8.8, nut: yes}, face: back-on-front}\n  - {name: rail, bolt: {through: top.slots, into: rail.h, bolt: M6 8.8, washer: yes, nut: yes, adjust: 5}, face: front-on-back}",
		"part: top\n"+flat+"slots: [{name: slots, at: [[0, -40], [0, 40]], width: 6.6, length: 20, turn: 0}]\n", "part: base\n"+strings.NewReplacer("[-60, ", "[-50, ", "[60, ", "[70, ").Replace(flat),
		"part: bar\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {flat: [30, 20], length: 120}\nholes: [{name: h, along: {from: left, first: 20, pitch: 80, count: 2}, size: M10 clearance}]\n",
		"part: rail\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {rectangle: [30, 120]}\nholes: [{name: h, at: [[0, -40], [0, 40]], size: M6 clearance}]\n"))
	says(t, jointNamed(t, p, "one"), []string{"bar 1 between them", "The faces of top and base over bar 2 close here too"}, nil)
	says(t, jointNamed(t, p, "two"), []string{"bar 2 between them. See that it is so, and nothing else lies between the two faces."}, nil)
	bare := planned(t, jobOf(t, "{name: one, bolt: {through: top.left, into: base.left, bolt: M10 8.8, nut: yes}, face: back-on-front}\n  - {name: two, bolt: {through: top.right, into: base.right, bolt: M10 8.8, nut: yes}, face: back-on-front}", "part: top\n"+flat, "part: base\n"+flat))
	says(t, jointNamed(t, bare, "one"), []string{"The faces of top right and base right close here too", "Start those of top right and base right too"}, nil)
	says(t, jointNamed(t, p, "rail"), []string{"Set rail at the place drawn, as far as nothing asks for another: from there it can be shifted 6.7 mm each way along the slots of top, and may be by 5 mm at most."}, []string{"top can be shifted"})
}

// Studs of one part in two joints are its copies one after another: four stand in four holes, and of three one lacks.
// A body of 100 holds the plates 100 apart, and no face lies on another.
func TestStudsOfTwoJoints(t *testing.T) {
	t.Parallel()
	const flat = "kind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 160}\nholes:\n  - {name: left, at: [[-60, -40], [-60, 40]], size: M10 clearance}\n  - {name: right, at: [[60, -40], [60, 40]], size: M10 clearance}\n"
	for _, c := range []struct {
		quantity int
		lacks    bool
	}{{4, false}, {3, true}} {
		p := planned(t, jobOf(t, "{name: one, bolt: {through: top.left, into: base.left, bolt: M10, stud: stud, nut: yes}, face: back-on-front}\n  - {name: two, bolt: {through: top.right, into: base.right, bolt: M10, stud: stud, nut: yes}, face: back-on-front}",
			"part: top\n"+flat, "part: base\n"+flat,
			fmt.Sprintf("part: stud\nkind: turned\nquantity: %d\nmaterial: S355\nstock: {round: 20, length: 153}\nprofile:\n  outside:\n    - {name: front-end, thread: M10, length: 25}\n    - {name: body, diameter: 20, length: 100}\n    - {name: back-end, thread: M10, length: 25}\n", c.quantity)))
		one, two := jointNamed(t, p, "one"), jointNamed(t, p, "two")
		says(t, one, []string{"back of top 100 from the front of base"}, []string{"back of top on the front"})
		says(t, two, nil, []string{"nothing lies between"})
		missing := func(q plan.Problem) bool { return q.Kind == plan.StudsMissing }
		if slices.ContainsFunc(one.Problems, missing) || slices.ContainsFunc(two.Problems, missing) != c.lacks {
			t.Errorf("%d: %v, %v", c.quantity, one.Problems, two.Problems)
		}
	}
}
