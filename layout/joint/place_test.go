package joint_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// Where a part stands is said in the words of its place.
func TestPlaceText(t *testing.T) {
	t.Parallel()
	want := map[string]string{
		"upright":       "bottom of Housing plate on the front of Base plate, 120 from its left edge, 10 from its bottom edge, front to the left",
		"gusset-4":      "left of Gusset 4 on the back of Housing plate, at its right edge, at its bottom edge, front to the left; fillet on its front (125) along Housing plate, on its front (95) and back (95) along Base plate",
		"stand-foot-2":  "front of Stand foot 2 on the right of Stand leg 2, 60 past its front, 10 past its back, 15 past its bottom, 15 past its top, TOP to the top of Stand leg 2, its right end to the front of Stand leg 2",
		"auger-flight":  "front end of Auger flight 20 and its back end 350 from the front of Auger hub; it starts anywhere round it",
		"hopper-throat": "back of Hopper throat on the front of Hopper, its middle on the other's, TOP up, 0.5 inside it",
	}
	for _, j := range demoPlan(t, "pugmill").Joints {
		w, ok := want[j.Name]
		if delete(want, j.Name); ok && j.How != w {
			t.Errorf("%s: %q, want %q", j.Name, j.How, w)
		}
	}
	if len(want) > 0 {
		t.Errorf("no joints %v", want)
	}
}

// What reaches over an edge is said past it, not less than nothing from it.
func TestPlacePastAnEdge(t *testing.T) {
	t.Parallel()
	p, err := draft(jobOf(t, "{name: w, weld: {part: rib.outline, to: base.outline, type: fillet, size: 4 mm, sides: 2}, place: {on: front, with: bottom, from-left: -15, from-bottom: 10, front: down}}",
		"part: base\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [200, 100]}\n", "part: rib\nkind: plate\nmaterial: S235\nstock: {plate: 8 mm}\noutline: {rectangle: [60, 40]}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if j := p.Joint("w"); j == nil || !strings.Contains(j.How, ", 15 past its left edge, 10 from its bottom edge") {
		t.Errorf("%+v, %v", j, p.Faults)
	}
}

// A flight of 330 on the axis of its shaft says where both its ends lie, and may start anywhere round it; not where it
// ends before the front, or where another stands on that shaft: it starts by the clock then.
func TestPlaceOfAFlight(t *testing.T) {
	t.Parallel()
	const (
		shaft  = "part: shaft\ntitle: Shaft\nkind: turned\nmaterial: S235\nstock: {round: 75 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: 900}]\n"
		flight = "part: flight\ntitle: Flight\nkind: flight\nquantity: 2\nmaterial: S235\nstock: {sheet: 6 mm, cut: plasma}\nflight: {shaft: 70, outside: 150, pitch: 110, thickness: 6, length: 330}\n"
		weld   = "{name: w%d, weld: {part: flight#%[1]d.inside, to: shaft.body, type: fillet, size: 4 mm, sides: 2}, place: {on: front, with: back, at: %s, top: up, gap: -%s mm}}"
	)
	for _, c := range []struct{ at, gap, more, want string }{
		{"[0, 0]", "350", "", "front end of Flight 1 20 and its back end 350 from the front of Shaft; it starts anywhere round it"}, {"[0, 0]", "330", "", "front end of Flight 1 0 and its back end 330 from the front of Shaft; it starts anywhere round it"},
		{"[0, 0]", "329", "", ""}, {"[1, 0]", "350", "", ""}, {"[0, 1]", "350", "", ""}, {"[0, 0]", "350", "\n  - " + fmt.Sprintf(weld, 2, "[0, 0]", "700"), ""},
	} {
		p, err := draft(jobOf(t, fmt.Sprintf(weld, 1, c.at, c.gap)+c.more, shaft, flight))
		if err != nil {
			t.Fatal(err)
		}
		how := ""
		if j := p.Joint("w1"); j != nil {
			how = j.How
		}
		if starts := strings.Contains(how, "it starts anywhere"); how != c.want && c.want != "" || starts != (c.want != "") {
			t.Errorf("%+v: %q", c, how)
		}
	}
}

// A round that stands with its end on a face is welded all round: π × 60.3 = 189.44, with
// tacks on the clock; what does not end there has no round to run.
func TestWeldRoundAnEnd(t *testing.T) {
	t.Parallel()
	const core = "weld: {part: core.outside, to: base.outline, type: fillet, size: 5, length: 180, process: MMA}\n    place: {on: front, with: back"
	round := strings.Replace(core, ", length: 180", "", 1)
	w := jointNamed(t, workedWith(t, "formed", core+" => "+round), "core").Weld
	if w == nil || w.LengthMm != 189.44 || w.DiameterMm != 60.3 || len(w.TacksDeg) != 4 {
		t.Errorf("%+v", w)
	}
	if got := problems(workedWith(t, "formed", core+", at: [120, 30], top: left} => "+strings.Replace(round, "with: back", "with: left", 1)+", at: [120, 30], front: left}"), "core"); !strings.Contains(got, string(plan.WeldNoLength)) {
		t.Errorf("on its side: %q", got)
	}
}

// What stays open between two rounds follows from their limits where they meet, and from the
// flats of a bent end. Hopper ring: bore 151 ± 0.3 round a cone that is 150.75 ± 0.5 a
// millimetre from its end, so up to (151.3 - 150.25)/2 = 0.53 (a cone of 300 to 150 in 200
// grows by 0.75 a millimetre). Throat: 295.32 ± 0.5 in 300 - 2 × 2.136 = 295.73 ± 0.5, up to
// 0.70; its 16 flats stand 146.65 × (1 - cos 11.25°) = 2.82 further off.
func TestGapOfRounds(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "hopper-cone"), []string{"Gap 0 to 0.53 by its limits"}, []string{"No gap"})
	says(t, jointNamed(t, p, "hopper-throat"), []string{"Gap 0 to 0.7 by its limits"}, []string{"No gap"})
	if got := problems(p, "hopper-throat"); strings.Contains(got, string(plan.FilletGap)) {
		t.Errorf("rolled: %s", got)
	}
	over := planned(t, editedDemo(t, "pugmill", "job.yaml", "weld: {part: hopper-throat.round-end, to: hopper.large-end, type: fillet, size: 2 mm, process: TIG}\n    place: {on: front, with: back, at: [0, -20]",
		"weld: {part: hopper.large-end, to: hopper-throat.round-end, type: fillet, size: 2 mm, process: TIG}\n    place: {on: back, with: front, at: [0, 20]"))
	says(t, jointNamed(t, over, "hopper-throat"), []string{"Gap 0 to 0.7 by its limits"}, nil) // the same, said of what goes over
	flat := planned(t, editedDemo(t, "pugmill", "hopper-throat.yaml", "bend: rolled", "bend: faceted"))
	says(t, jointNamed(t, flat, "hopper-throat"), []string{"Gap up to 3.52 at the middles of the flats."}, []string{"No gap"})
	if got := problems(flat, "hopper-throat"); !strings.Contains(got, string(plan.FilletGap)) {
		t.Errorf("flats: %s", got)
	}
}

// A bolted part stands where its place says, and its holes have to meet there. Plate A has holes 50
// and 70 right of its middle, the column two 10 left and right of its own, so that A's middle lies
// 60 off: to the left with its back on the column, to the right with its front on it; with TOP down
// its holes lie to the left. 50 for 60 misses by 10; with TOP to the right they stand upright, as far
// as √2 × 10 from the column's.
func TestBoltedByItsPlace(t *testing.T) {
	t.Parallel()
	const a = "part: a\ntitle: A\nkind: plate\nmaterial: S355\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [210, 200]}\nholes:\n  - {name: h, at: [[50, 0], [70, 0]], size: M8 clearance}\n"
	const column = "part: column\ntitle: Column\nkind: turned\nmaterial: S355\nstock: {round: 60, length: 142, cut: saw}\nprofile:\n  outside: [{name: outside, diameter: 60, length: 137}]\nholes:\n  - {name: tap, at: [[-10, 0], [10, 0]], size: M8 tap, depth: 20}\n"
	for _, c := range []struct{ place, how, problem string }{
		{"on: front, with: back, at: [-60, 0], top: up", "Back of A on the front of Column, hole on hole, its middle 60 to the left from that of Column seen from its front, TOP at 0°", ""},
		{"on: front, with: front, at: [60, 0], top: up", "Front of A on the front of Column, hole on hole, its middle 60 to the right", ""},
		{"on: front, with: back, at: [60, 0], top: down", "Back of A on the front of Column, hole on hole, its middle 60 to the right from that of Column seen from its front, TOP at 180°", ""},
		{"on: front, with: back, top: down", "Back of A on the front of Column, hole on hole, its middle 60 to the right", ""},
		{"on: front, with: back, at: [-50, 0], top: up", "", "by up to 10;"},
		{"on: front, with: back, at: [0, 60], top: right", "", "by up to 14.14"},
		{"on: front, with: back, at: [0, -60], top: left", "", "by up to 14.14"},
		{"on: front, with: back, at: [0, 0], top: up", "", "by up to 60;"},
	} {
		w, err := layout.Resolve(jobOf(t, "{name: x, bolt: {through: a.h, into: column.tap, bolt: M8 8.8}, place: {"+c.place+"}}", a, column))
		switch {
		case c.problem != "":
			if err == nil || !strings.Contains(err.Error(), c.problem) || strings.Contains(err.Error(), "rotate:") {
				t.Errorf("%s: %v", c.place, err)
			}
		case err != nil:
			t.Errorf("%s: %v", c.place, err)
		default:
			if how := words.Capital(jointNamed(t, w.Plan, "x").How); !strings.HasPrefix(how, c.how) {
				t.Errorf("%s: %q", c.place, how)
			}
		}
	}
	for at, beside := range map[string]bool{"[0, 0]": false, "[0.4, 0]": true, "[0, 0.4]": true} {
		p, _ := layout.Resolve(jobOf(t, "{name: x, bolt: {through: a.h, into: column.tap, bolt: M8 8.8}, place: {on: front, with: back, at: "+at+", top: up}}", strings.Replace(a, "[[50, 0], [70, 0]]", "[[-10, 0], [10, 0]]", 1), column))
		if p == nil || (p.Plan.Joints[0].Beside != nil) != beside {
			t.Errorf("%s: %+v", at, p)
		}
	}
}

// What goes through a hole lies with its shoulder on the face that its place names, its axis on the hole's: 82 of body from its front to the
// shoulder, through 60 of bar, so that it stands out by 22. Without a shoulder there it is as far inside as it is told; 10 beside is no longer the hole.
func TestThroughAHole(t *testing.T) {
	t.Parallel()
	const nut = "part: nut\ntitle: Nut\nkind: turned\nmaterial: S355\nstock: {round: 75, length: 102, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 50, length: 82}, {name: flange, diameter: 70, length: 15}]\n"
	const beam = "part: beam\ntitle: Beam\nkind: bar\nmaterial: S355\nbar: {square: 60, wall: 5, length: 400}\nholes:\n  - {name: nut, on: top, at: [[0, 0]], size: 50.5, walls: both}\n"
	for place, want := range map[string]string{
		"on: bottom, with: front, gap: -82, at: [0, -30], top: up": "the shoulder flange of Nut on the bottom of Beam, its axis on that of the hole nut, TOP to the front of Beam, its front out of the other side by 22",
		"on: top, with: front, gap: -82, at: [0, 30], top: up":     "the shoulder flange of Nut on the top of Beam, its axis on that of the hole nut, TOP to the back of Beam, its front out of the other side by 22",
		"on: top, with: front, gap: -81, at: [0, 30], top: up":     "front of Nut on the top of Beam, its axis on that of the hole nut, TOP to the back of Beam, 81 inside it",
		"on: top, with: front, gap: -82, at: [10, 30], top: up":    "the shoulder flange of Nut on the top of Beam, its origin on the other's, 10 to the right, 30 up, TOP to the back of Beam, its front out of the other side by 22",
	} {
		if how := jointNamed(t, filed(t, "{name: x, weld: {part: nut.flange, to: beam.top, type: fillet, size: 5, length: 100}, place: {"+place+"}}", nut, beam), "x").How; how != want {
			t.Errorf("%s: %q", place, how)
		}
	}
}

// What goes through a hole goes through at all limits: of 50 ± 0.3 (ISO 2768-m) in 50.5 ± 0.3 the largest is 50.3 and the smallest hole
// 50.2, so it may be 0.1 larger; of 50 − 0.1 it is not, nor where only its end face lies there.
func TestThroughAHoleAtAllLimits(t *testing.T) {
	t.Parallel()
	const beam = "part: beam\ntitle: Beam\nkind: bar\nmaterial: S355\nbar: {square: 60, wall: 5, length: 400}\nholes:\n  - {name: nut, on: top, at: [[0, 0]], size: 50.5, walls: both}\n"
	for _, c := range []struct {
		fit, gap string
		binds    bool
	}{{"", "-82", true}, {", fit: {limits: [49.9, 50]}", "-82", false}, {"", "0", false}} {
		nut := "part: nut\ntitle: Nut\nkind: turned\nmaterial: S355\nstock: {round: 75, length: 102, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 50, length: 82" + c.fit + "}, {name: flange, diameter: 70, length: 15}]\n"
		p := filed(t, "{name: x, weld: {part: nut.flange, to: beam.top, type: fillet, size: 5, length: 100}, place: {on: top, with: front, gap: "+c.gap+", at: [0, 30], top: up}}", nut, beam)
		if got := problems(p, "x"); strings.Contains(got, string(plan.ThroughBinds)+", Nut body, 0.1, nut, Beam") != c.binds || strings.Contains(got, string(plan.ThroughBinds)) != c.binds {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// A round welded on a plate stands where its place says: on the plate's axis 1 clear of it, or beside.
func TestWeldedRoundByItsPlace(t *testing.T) {
	t.Parallel()
	const disc = "part: disc\ntitle: Disc\nkind: ring\nmaterial: S355\nstock: {plate: 12, cut: laser}\noutline: {circle: 210}\nbore: {diameter: 80}\n"
	const tube = "part: tube\ntitle: Tube\nkind: tube\nmaterial: S355\nstock: {tube: 168.3, wall: 8, length: 142, cut: saw}\ntube: {outside: 168.3, wall: 8, length: 137}\n"
	for place, want := range map[string]struct {
		how     string
		frontMm float64
	}{
		"at: [0, 0], top: left, gap: 1": {"back of Tube on the front of Disc, its middle on the other's, TOP to the left, 1 clear of it", -138},
		"at: [-10, 0], top: up, gap: 1": {"back of Tube on the front of Disc, its middle on the other's, 10 to the left, TOP up, 1 clear of it", 0},
	} {
		p := filed(t, "{name: x, weld: {part: tube.outside, to: disc.outline, type: fillet, size: 6}, place: {on: front, with: back, "+place+"}}", disc, tube)
		j := jointNamed(t, p, "x")
		if j.How != want.how {
			t.Errorf("%s: %q", place, j.How)
		}
		for _, q := range j.Placed {
			if q.Part == "tube" && (q.FrontMm != want.frontMm || q.TurnDeg != 270) {
				t.Errorf("%s: %+v", place, q)
			}
		}
		if onAxis := len(j.Placed) == 2; onAxis != (want.frontMm != 0) {
			t.Errorf("%s: %+v", place, j.Placed)
		}
	}
	const cone = "part: cone\ntitle: Cone\nkind: cone\nmaterial: S355\nstock: {sheet: 2, cut: laser}\ncone: {large: 180, small: 150, height: 100, thickness: 2}\n"
	for _, c := range []struct{ ends, gap, want string }{
		{"part: tube.outside, to: disc.outline", "0", "TOP up"}, {"part: tube.outside, to: disc.outline", "-5", "TOP up, 5 inside it"},
		{"part: cone.large-end, to: tube.outside", "-5", "TOP up, 5 over it"}, {"part: cone.small-end, to: tube.outside", "-5", "TOP up, 5 inside it"},
	} {
		p := filed(t, "{name: x, weld: {"+c.ends+", type: fillet, size: 6}, place: {on: front, with: back, at: [0, 0], top: up, gap: "+c.gap+"}}", disc, tube, cone)
		if how := jointNamed(t, p, "x").How; !strings.HasSuffix(how, c.want) {
			t.Errorf("%s: %q, want %q", c.ends, how, c.want)
		}
	}
}

// A flight of 330 stands on its hub of 371 where level says: its front 20 behind the hub's, turned
// round its back there and its front 350 behind, or its back 20 before the hub's. Its weld comes before the hub goes on the shaft, and so before the barrel
// is bolted over it; its blade ends at a radius of 75.5, far inside those bolts.
func TestFlightOnLevel(t *testing.T) {
	t.Parallel()
	const place = "place: {on: front, with: back, at: [0, 0], top: up, gap: -350 mm}"
	for level, want := range map[string]struct {
		frontMm  float64
		otherWay bool
	}{"front-with-front": {20, false}, "back-with-front": {350, true}, "back-with-back": {21, false}} {
		p := planned(t, editedDemo(t, "pugmill", "job.yaml", place, "level: "+level+"\n    below: 20"))
		j := jointNamed(t, p, "auger-flight")
		var hub, flight plan.Placed
		for _, q := range j.Placed {
			switch q.Part {
			case "auger-hub":
				hub = q
			case "auger-flight":
				flight = q
			}
		}
		if flight.FrontMm-hub.FrontMm != want.frontMm || flight.OtherWay != want.otherWay || hub.OtherWay {
			t.Errorf("%s: %+v on %+v", level, flight, hub)
		}
		if slide, barrel := jointNamed(t, p, "auger").N, jointNamed(t, p, "barrel").N; j.N > slide || slide > barrel {
			t.Errorf("%s: flight at %d, hub at %d, barrel at %d", level, j.N, slide, barrel)
		}
	}
}

// What is left for after the weld is finished after the last weld of all that hangs together by welds,
// and no sheet finishes it before: two hubs on a tube, their bores 2 smaller till then, 48, and no
// keyway. That is 3.8 deep in Ø50, by up to 0.2 more (DIN 6885-1): 3.9 in the middle, 53.9 to the far side.
func TestFinishedAfterTheLastWeld(t *testing.T) {
	t.Parallel()
	const hub = "part: hub\ntitle: Hub\nkind: turned\nquantity: 2\nmaterial: S355\nstock: {round: 120, length: 51}\nprofile:\n  outside: [{name: nose, diameter: 90, length: 15}, {name: flange, diameter: 115, length: 30}]\n  inside: [{name: bore, diameter: 50, fit: H7, length: 45, after-weld: yes}]\nkeyways: [{name: key, in: bore}]\nchamfers: [{edge: bore-back, size: 1, angle: 45}]\ngrooves: [{name: stop, in: bore, for: relief, axial: 6, from: back, width: 3, depth: 2}]\nholes: [{name: pins, face: back, circle: {pcd: 90, count: 3}, size: 5 mm, depth: 8 mm}]\n"
	const tube = "part: drum\ntitle: Drum\nkind: tube\nmaterial: S355\nstock: {tube: 101.6, wall: 5, length: 303}\ntube: {outside: 101.6, wall: 5, length: 300}\n"
	const weld = "{name: %s, weld: {part: hub#%d.nose, to: drum.bore, type: fillet, size: 5}, level: %s, below: 0}"
	p := planned(t, jobOf(t, fmt.Sprintf(weld, "one", 1, "back-with-front")+"\n  - "+fmt.Sprintf(weld, "two", 2, "back-with-back"), hub, tube))
	own := fmt.Sprint(p.Part("hub").Operations, p.Part("hub").Checks)
	for _, said := range []string{"Machine bore Ø48", "47.7 – 48.3"} {
		if !strings.Contains(own, said) {
			t.Errorf("%q is not in %s", said, own)
		}
	}
	for _, said := range []string{"50.000", "key"} {
		if strings.Contains(own, said) {
			t.Errorf("%q is in %s", said, own)
		}
	}
	for _, f := range p.Part("hub").Faces { // what the template is set to as the holes are punched
		if !slices.ContainsFunc(f.Circles, func(c plan.Circle) bool { return c.DiameterMm == 48 }) || slices.ContainsFunc(f.Circles, func(c plan.Circle) bool { return c.DiameterMm == 50 }) {
			t.Errorf("%s: %+v", f.Face, f.Circles)
		}
	}
	says(t, jointNamed(t, p, "one"), nil, []string{"Finish after welding", "50.000"})
	says(t, jointNamed(t, p, "two"), []string{"Finish after welding", "turn or bore only now, without letting go between bores of one axis: Hub 1 bore Ø50 H7; Hub 2 bore Ø50 H7", "Hub 1: Chamfer bore back 1 × 45°: to Ø52 at the face.", "Stop", "groove Ø54", "3.9 deep", "53.9 on Ø50", "Hub 2 bore: 50.000 – 50.025"}, []string{"Measure what was finished"})
}

// What only the weld itself sets level has its place in its own step: hubs of 115 on the ends of a tube of 101.6
// turn 115 across.
// Of 390 the one of 45 is no more held as when it was alone.
func TestWeldmentSetByItsWeld(t *testing.T) {
	t.Parallel()
	const hub = "part: hub\nkind: turned\nquantity: 2\nmaterial: S355\nstock: {round: 120, length: 51}\nprofile:\n  outside: [{name: nose, diameter: 91.6, length: 15}, {name: flange, diameter: 115, length: 30}]\n  inside: [{name: bore, diameter: 50, fit: H7, length: 45, after-weld: yes}]\n"
	const tube = "part: drum\nkind: tube\nmaterial: S355\nstock: {tube: 101.6, wall: 5, length: 303}\ntube: {outside: 101.6, wall: 5, length: 300}\n"
	const welds = "{name: one, weld: {part: hub#1.nose, to: drum.bore, type: fillet, size: 5}, level: front-with-front, below: 15}\n  - {name: two, weld: {part: hub#2.nose, to: drum.bore, type: fillet, size: 5}, level: front-with-back, below: 15}\nshop: {lathe: {swing: %d}}"
	for _, c := range []struct {
		swing     int
		says, not string
	}{
		{115, "bore with the tool as in operation", "mill's table"},
		{114, "for it would swing 115 and the lathe takes 114", "turn or bore only now"},
	} {
		says(t, jointNamed(t, planned(t, jobOf(t, fmt.Sprintf(welds, c.swing), hub, tube)), "two"), []string{c.says}, []string{c.not})
	}
}

// A weldment that the lathe does not swing is bored on the mill: an arm with its far edge 300 out of the
// axis and 40 wide turns 2 × hypot(300, 20) = 601.3 across. What is to be turned outside after the weld
// is not made.
func TestWeldmentOverTheSwing(t *testing.T) {
	t.Parallel()
	const arm = "part: arm\nkind: plate\nmaterial: S355\nstock: {plate: 20, cut: laser}\noutline: {rectangle: [40, 250]}\n"
	const hub = "part: hub\nkind: turned\nmaterial: S355\nstock: {round: 120, length: 41}\nprofile:\n  outside: [{name: rim, diameter: 100, %slength: 40}]\n  inside: [{name: bore, diameter: 50, fit: H7, %s}]\nchamfers: [{edge: bore-front, size: 1, angle: 15, for: lead-in}]\n"
	const weld = "{name: on, weld: {part: arm.outline, to: hub.rim, type: fillet, size: 5, length: 40}, place: {on: front, with: back, at: [0, 175], top: up, gap: -20}}\nshop: {lathe: {swing: %d}}"
	for _, c := range []struct {
		rim, bore string
		swing     int
		says, not []string
	}{
		{"", "length: 40, after-weld: yes", 602, []string{"turn or bore only now", "hold it, and set the tool"}, []string{"mill's table"}},
		{"", "length: 40, after-weld: yes", 601, []string{"clamp it on the mill's table, for it would swing 601 and the lathe takes 601", "to Ø50.54 at the face, 15° from the axis"}, []string{"turn or bore only now", "top slide", "hold it, and set the tool"}},
		{"", "length: 15, after-weld: yes, undercut: DIN 509-F}, {name: neck, diameter: 30, length: 10}, {name: cup, diameter: 50, fit: H7, after-weld: yes, length: 15", 601, []string{"that a tool reaches from one end: hub bore Ø50 H7; hub cup Ø50 H7", "An undercut takes a facing head"}, nil},
		{"fit: h7, after-weld: yes, ", "length: 40", 601, []string{"mill"}, nil},
	} {
		p := planned(t, jobOf(t, fmt.Sprintf(weld, c.swing), fmt.Sprintf(hub, c.rim, c.bore), arm))
		on := jointNamed(t, p, "on")
		says(t, on, c.says, c.not)
		if got := slices.ContainsFunc(on.Problems, func(q plan.Problem) bool { return q.Kind == plan.WeldedSwings }); got != (c.rim != "") {
			t.Errorf("%+v: %v", c, on.Problems)
		}
	}
}

// What stands on its anchors by then goes onto no machine: a bore is not finished after the weld that it is fixed to the floor
// before, or at; nor is anything wrong where nothing is finished, or what is anchored is not welded to it.
func TestWeldmentOnTheFloor(t *testing.T) {
	t.Parallel()
	const plate = "part: %s\nkind: plate\nmaterial: S355\nstock: {plate: 20, cut: laser}\noutline: {rectangle: [200, 200]}\n%s"
	const weld = "{name: on, weld: {part: post.outline, to: base.outline, type: fillet, size: 5, sides: 2}, place: {on: front, with: bottom, from-left: 0, from-bottom: 90, front: down}%s}"
	for _, c := range []struct{ bore, anchored, want string }{
		{"bore: {diameter: 90, fit: H7, after-weld: yes}", ", anchored: base", "post bore Ø90 H7"},
		{"bore: {diameter: 90, fit: H7, after-weld: yes}", "", ""},
		{"bore: {diameter: 90}", ", anchored: base", ""},
		{"bore: {diameter: 90, fit: H7, after-weld: yes}", ", anchored: other", ""},
	} {
		p, got := planned(t, jobOf(t, fmt.Sprintf(weld, c.anchored), fmt.Sprintf(plate, "post", c.bore), fmt.Sprintf(plate, "base", ""), fmt.Sprintf(plate, "other", ""))), ""
		for _, q := range jointNamed(t, p, "on").Problems {
			if q.Kind == plan.WeldedFixed {
				got = q.Args[0].Text
			}
		}
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// A tube of 400 with a plug of 100 that stands 60 out of it is 460 long: what a lathe of 450 does not take is not turned
// after the weld.
func TestWeldmentOverTheCentres(t *testing.T) {
	t.Parallel()
	const tube = "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 60, wall: 5, length: 405}\ntube: {outside: 60, wall: 5, length: 400}\n"
	const plug = "part: plug\nkind: shaft\nmaterial: S355\nstock: {round: 55, length: 105}\nprofile:\n  outside: [{name: seat, diameter: 40, %slength: 60}, {name: in, diameter: 49.9, length: 40}]\n"
	const weld = "{name: on, weld: {part: plug.in, to: tube.bore, type: fillet, size: 3}, place: {on: front, with: back, at: [0, 0], top: up, gap: -40}}\nshop: {lathe: {%sbetween: %d}}"
	for _, c := range []struct {
		seat, swing string
		between     int
		want        string
	}{
		{"fit: k6, after-weld: yes, ", "", 450, "plug 460 450"}, {"fit: k6, after-weld: yes, ", "", 460, ""}, {"fit: k6, ", "", 450, ""}, {"fit: k6, after-weld: yes, ", "swing: 50, ", 450, ""},
	} {
		p, got := planned(t, jobOf(t, fmt.Sprintf(weld, c.swing, c.between), tube, fmt.Sprintf(plug, c.seat))), ""
		for _, q := range jointNamed(t, p, "on").Problems {
			if q.Kind == plan.WeldedLong {
				got = fmt.Sprint(q.Args[0].Text, " ", q.Args[1].Value, q.Args[2].Value)
			}
		}
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// A plug whose 40 of Ø49.9 lie in the tube is set true by its seat, rough 2 over Ø40; by the 49.9 where 10 of that stand out, and not of 9.
func TestSetTrueByWhatIsFree(t *testing.T) {
	t.Parallel()
	const tube = "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 60, wall: 5, length: 405}\ntube: {outside: 60, wall: 5, length: 400}\n"
	const plug = "part: plug\nkind: shaft\nmaterial: S355\nstock: {round: 55, length: 105}\nprofile:\n  outside: [{name: seat, diameter: 40, fit: k6, after-weld: yes, length: 60}, {name: in, diameter: 49.9, length: 40}]\n"
	for inMm, want := range map[int]string{40: "plug true by seat Ø42 as turned", 31: "plug true by seat Ø42 as turned", 30: "plug true by in Ø49.9 as turned"} {
		weld := fmt.Sprintf("{name: on, weld: {part: plug.in, to: tube.bore, type: fillet, size: 3}, place: {on: front, with: back, at: [0, 0], top: up, gap: -%d}}", inMm)
		says(t, jointNamed(t, planned(t, jobOf(t, weld, tube, plug)), "on"), []string{want}, nil)
	}
}

// The round end of a transition on a plate is welded round, with no length told, and its middle, 40 from its mouth's, is said by the
// hole that it lies over.
func TestRoundEndOnAFace(t *testing.T) {
	t.Parallel()
	const piece = "part: piece\nkind: transition\nmaterial: S235\nstock: {sheet: 2, cut: laser}\ntransition: {width: 200, depth: 200, diameter: 120, height: 150, thickness: 2, offset: [40, 0]}\n"
	const lid = "part: lid\nkind: folded\nmaterial: S235\nstock: {sheet: 3, cut: laser}\noutline: {rectangle: [400, 300]}\nbends: {radius: 3, flanges: [{side: left, height: 20, toward: back}]}\nholes: [{name: inlet, at: [[20, 0]], size: 100, for: opening}]\n"
	for at, want := range map[string]string{"-20, 0": "back of piece on the front of lid, its middle over that of inlet, TOP up", "0, 0": "its origin on the other's, TOP up"} {
		weld := "{name: on, weld: {part: piece.round-end, to: lid.outline, type: fillet, size: 3}, place: {on: front, with: back, at: [" + at + "], top: up}}"
		j := jointNamed(t, planned(t, jobOf(t, weld, piece, lid)), "on")
		if says(t, j, []string{want, "First layer in sectors"}, nil); j.Weld.DiameterMm != 120 {
			t.Errorf("%s: %+v", at, j.Weld)
		}
	}
}

// The round end of a transition is butted on a tube of 150 of the same sheet of 2: half of that, 1, may one stand inside the
// other, so 148 does and 147.9 does not. What goes over the other with a fillet may differ.
func TestButtSteps(t *testing.T) {
	t.Parallel()
	const tube = "part: tube\nkind: tube\nmaterial: S235\nstock: {sheet: 2}\ntube: {outside: 150, wall: 2, length: 80, seam: 90}\n"
	const piece = "part: piece\nkind: transition\nmaterial: S235\nstock: {sheet: 2, cut: laser}\ntransition: {width: 200, depth: 200, diameter: %s, height: 120, thickness: 2}\n"
	const weld = "{name: on, weld: {part: piece.round-end, to: tube.outside, type: %s}, place: {on: front, with: back, at: [0, 0], top: up}}"
	for _, c := range []struct{ diameter, kind, want string }{
		{"150", "square", ""}, {"148", "square", ""}, {"147.9", "square", "1.05 1"}, {"152.2", "square", "1.1 1"}, {"140", "fillet, size: 3", ""},
	} {
		p, got := planned(t, jobOf(t, fmt.Sprintf(weld, c.kind), tube, fmt.Sprintf(piece, c.diameter))), ""
		for _, q := range jointNamed(t, p, "on").Problems {
			if q.Kind == plan.ButtSteps {
				got = fmt.Sprint(words.Round(q.Args[0].Value, 3), q.Args[1].Value)
			}
		}
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// A plate that is clamped between two comes with what was pressed into it before: 10 of plate, 20 of it,
// so that its bush stands 10 behind the cover's front.
func TestStackComesWithItsOwn(t *testing.T) {
	t.Parallel()
	const flat = "kind: plate\nmaterial: S235\nstock: {plate: %d, cut: laser}\noutline: {square: 120}\nholes: [{name: h, circle: {pcd: 100, count: 4, first: 45}, size: M10 clearance}]\n"
	p := planned(t, jobOf(t, "{name: bush, press: {shaft: bush.outside, bore: mid.bore, fit: H7/s6}, level: front-with-front}\n  - {name: all, bolt: {through: cover.h, stack: [mid.h], into: base.h, bolt: M10 8.8, nut: yes}, face: back-on-front}",
		"part: cover\n"+fmt.Sprintf(flat, 10), "part: mid\n"+fmt.Sprintf(flat, 20)+"bore: {diameter: 32, fit: H7, leave: 2}\n", "part: base\n"+fmt.Sprintf(flat, 10),
		"part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 36, length: 24}\nprofile:\n  outside: [{name: outside, diameter: 32, fit: s6, length: 20}]\n  inside: [{name: bore, diameter: 25, length: 20}]\nchamfers: [{edge: outside-back, size: 1, angle: 15, for: lead-in}]\n"))
	at := map[string]float64{}
	for _, q := range jointNamed(t, p, "all").Placed {
		at[q.Part] = q.FrontMm
	}
	says(t, jointNamed(t, p, "all"), []string{"back of cover on the front of base, mid between them, TOP of cover at 0° of base", "All 4 by hand through cover, mid with nuts on base"}, nil)
	if len(at) != 4 || at["bush"]-at["cover"] != 10 || at["mid"]-at["cover"] != 10 || at["base"]-at["cover"] != 30 {
		t.Errorf("%v", at)
	}
}

// What is clamped between two is looked at as they are. Base is tapped M10 on a circle of 100, the plate
// between has holes of 11, 0.5 of play on a side: 100.5 lies 0.25 off, over two fifths of that, 101.2 0.6.
// The cover's spigot of 40 f7 goes into its bore of 40 H7; one of 39.6 is loose by over 0.25, one of 40.3
// does not go in.
func TestStackIsLookedAt(t *testing.T) {
	t.Parallel()
	const flat = "kind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 140}\nholes: [{name: h, circle: {pcd: %s, count: 4, first: 45}, size: %s}]\n"
	for _, c := range []struct{ pcd, spigot, want string }{
		{"100", "40", ""},
		{"100.5", "40", "play-used, mid h, 0.25, base taps, 0.5"},
		{"101.2", "40", "stack-misses"},
		{"100", "39.6", "register-loose"},
		{"100", "40.3", "register-larger"},
	} {
		got := foundIn(t, nil, "{name: all, bolt: {through: cover.h, stack: [mid.h], into: base.taps, bolt: M10 8.8}, face: back-on-front}",
			"part: cover\nkind: turned\nmaterial: S235\nstock: {round: 145, length: 40}\nprofile:\n  outside: [{name: flange, diameter: 140, length: 15}, {name: spigot, diameter: "+c.spigot+", fit: f7, length: 10}]\nholes: [{name: h, face: front, circle: {pcd: 100, count: 4, first: 45}, size: M10 clearance}]\n",
			"part: mid\n"+fmt.Sprintf(flat, c.pcd, "11")+"bore: {diameter: 40, fit: H7, leave: 2}\n",
			"part: base\nkind: plate\nmaterial: S235\nstock: {plate: 30, cut: laser}\noutline: {square: 140}\nholes: [{name: taps, circle: {pcd: 100, count: 4, first: 45}, size: M10 tap}]\n")
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s, %s: %q", c.pcd, c.spigot, got)
		}
	}
}

// Under slots the holes below say where the bolts stand that clamp a plate between: of 11 for M10 in both there is 1 of play, of which 0.3 is
// little and 0.5 over two fifths.
func TestStackUnderSlots(t *testing.T) {
	t.Parallel()
	const flat = "kind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [160, 80]}\nholes: [{name: h, at: [[-%s, 0], [%[1]s, 0]], size: M10 clearance}]\n"
	for at, want := range map[string]string{"40": "", "40.3": "", "40.5": "play-used, mid h, 0.5, base h, 1", "39.5": "play-used, mid h, 0.5, base h, 1", "41.1": "stack-misses"} {
		got := foundIn(t, nil, "{name: all, bolt: {through: cover.s, stack: [mid.h], into: base.h, bolt: M10 8.8, nut: yes, washer: yes}, face: back-on-front}",
			"part: cover\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [160, 80]}\nslots: [{name: s, at: [[-40, 0], [40, 0]], width: 11, length: 31}]\n", "part: mid\n"+fmt.Sprintf(flat, at), "part: base\n"+fmt.Sprintf(flat, "40"))
		if want == "" && got != "" || !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q", at, got, want)
		}
	}
}

// A disc that is turned 0.7 to 1.2 under the bore of a tube of 406.4 × 4, as that measures, leaves
// half of it open all round.
func TestGapAsMeasured(t *testing.T) {
	t.Parallel()
	const disc = "part: disc\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {circle: 398.4, fit: {measured: [0.7, 1.2]}, leave: 2}\n"
	const drum = "part: drum\nkind: tube\nmaterial: S235\nstock: {tube: 406.4, wall: 4, length: 606, cut: saw}\ntube: {outside: 406.4, wall: 4, length: 600}\n"
	p := filed(t, "{name: j, weld: {part: disc.outline, to: drum.bore, type: fillet, size: 4, process: MAG}, level: front-with-front, below: 6}", disc, drum)
	says(t, jointNamed(t, p, "j"), []string{"Gap 0.35 to 0.6 by its limits"}, []string{"No gap"})
	// A ring is bored as much over the tube as that measures.
	const ring = "part: ring\nkind: ring\nmaterial: S235\nstock: {plate: 8 mm, cut: laser}\noutline: {circle: 500}\nbore: {diameter: 406.4, fit: {measured: [0.7, 1.2]}, leave: 3}\n"
	p = filed(t, "{name: j, weld: {part: ring.bore, to: drum.outside, type: fillet, size: 4, process: MAG}, level: front-with-front, below: 6}", ring, drum)
	says(t, jointNamed(t, p, "j"), []string{"Gap 0.35 to 0.6 by its limits"}, []string{"No gap"})
}
