package picture_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// A plate on edge falls over at the arc tangent of half its thickness over the height of its
// centre: 7.5 over 160 for the housing plate, 5 over 54.4 for a gusset, 25 over 200 for a leg of
// the stand, while a foot lies flat. The jack's guide tube alone has 44.45 over 305; with 1.76 kg
// of flange on top of its 6.56 kg the centre comes to 368, so 6.9°. What is joined to the
// shaft before the frame carries it lies on its housing and, beyond the centre of gravity, on
// what is there by then. A gusset's 230 of seam are more than its 140 on the housing plate, and
// a leg stands half on the end that is mitred to its rail. What slides over the shaft needs the
// block in front taken out: by then the centre of gravity lies in front of the housing, 527 to 650 behind the
// shaft's front end (20 for 506) and, with the hub on, 80 for the 447 that the lantern's step left.
func TestHold(t *testing.T) {
	t.Parallel()
	shaft := [2]string{"Bearing housing", "Auger shaft"}
	for name, want := range map[string]map[string]*plan.Hold{
		"pugmill": {
			"front-flange":   nil,
			"inlet-stub":     {GapMm: 1.5, PieceDeg: 0, On: [2]string{"Barrel tube", "Barrel tube"}, CentreMm: 269, At: "Barrel flange 1"},
			"front-bearing":  {On: shaft, Once: true, Cups: true, CentreMm: 501, At: "Auger shaft"},
			"auger-flight":   nil,
			"delivery-die":   {Foot: "Barrel flange 2"},
			"gland":          {On: shaft, CentreMm: 504, At: "Auger shaft", Out: "Auger shaft", TipsMm: 23}, // 2 kg, yet over the block with what tips then
			"lantern":        {On: shaft, CentreMm: 497, At: "Auger shaft", Out: "Auger shaft", TipsMm: 20},
			"auger":          {On: [2]string{"Bearing housing", "Auger hub"}, CentreMm: 447, At: "Auger shaft", Out: "Auger shaft", TipsMm: 29},
			"barrel":         {On: [2]string{"Bearing housing", "Barrel tube"}, CentreMm: 445, At: "Barrel end", Out: "Auger hub", TipsMm: 80, Slung: true},
			"upright":        {PieceDeg: 2},
			"gusset-4":       {PieceDeg: 5, RunsOn: []string{"Base plate"}},
			"stand-corner-4": nil,
			"stand-leg-3":    {PieceDeg: 7, RunsOn: []string{"Stand end"}},
			"stand-foot-3":   nil,
			"base-far":       nil,
			"housing":        {BeyondMm: 6, At: "Barrel end", Later: []string{"Gear motor 2.2 kW"}, Slung: true}, // its feet end 25 behind the base's end, which lies 10 behind the housing: the heavy barrel is in front of them
			"switch-bracket": nil,                                                                                // said at the step before
			"hopper-cone":    nil,
		},
		"gatejack": {
			"top-flange":    {UprightDeg: 6},
			"foot-flange":   {UprightDeg: 6, Grips: true}, // its foot is the bare end of the tube, the flange on top
			"stay":          {PieceDeg: 7, On: [2]string{"Guide tube", "Guide tube"}, CentreMm: 299, At: "Pedestal flange 1"},
			"lower-bearing": {On: [2]string{"Thrust housing", "Thrust housing"}, Once: true, Cups: true, CentreMm: 89, At: "Drive nut"}, // its back up, on the front end of the nut that comes from there
			"yoke":          {UprightDeg: 10, Bolts: true, Lies: "Handwheel hub"},                                                       // set upright on what is anchored, the hub still loose
			"housing":       {UprightDeg: 10, Lies: "Handwheel hub"},                                                                    // laid down the hub slides off
		},
	} {
		joints, _ := pictured(t, name)
		for joint, hold := range want {
			if got := joints[joint].Hold; !reflect.DeepEqual(got, hold) {
				t.Errorf("%s %s: %+v, want %+v", name, joint, got, hold)
			}
		}
	}
}

// 300 high, a plate of 40 falls over at 7.6°, one of 60 stands up to 11.3°.
func TestHoldByThickness(t *testing.T) {
	t.Parallel()
	for thick, want := range map[string]float64{"40": 7, "60": 0} {
		m, pl := load(t, write(t, map[string]string{
			"base.yaml": basePart,
			"post.yaml": "part: post\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: " + thick + " mm}\noutline: {rectangle: [200, 300]}\n",
			"job.yaml": "job: Post\nunits: mm\nparts: [post.yaml, base.yaml]\njoints:\n" + strings.ReplaceAll(ribWeld, "rib.outline", "post.outline") +
				", place: {on: front, with: bottom, from-left: 100, from-bottom: 70, front: down}}\n",
		}))
		picture.Draw(m)
		if h := pl.Joints[0].Hold; (h == nil) != (want == 0) || h != nil && h.PieceDeg != want {
			t.Errorf("%s thick: %+v, want %g°", thick, h, want)
		}
	}
}

// A hub hot on the upper end of a bar of 400 that stands on Ø40 (4.3 kg with it) has the bar held: it falls over at the arc tangent of 20 over 216. One of Ø30
// (2.7 kg) is held by hand.
func TestHoldByMass(t *testing.T) {
	t.Parallel()
	for dia, want := range map[string]float64{"40": 5, "30": 0} { // 5.3°
		m, pl := load(t, write(t, map[string]string{
			"bar.yaml": "part: bar\nkind: shaft\nmaterial: C45\nstock: {round: 50}\nprofile:\n  outside: [{name: seat, diameter: " + dia + ", fit: s6, length: 30}, {name: body, diameter: " + dia + ", length: 370}]\n",
			"hub.yaml": "part: hub\nkind: turned\nmaterial: C45\nstock: {round: 65}\nprofile:\n  outside: [{name: body, diameter: 60, length: 30}]\n  inside: [{name: bore, diameter: " + dia + ", fit: H7, length: 30}]\n",
			"job.yaml": "job: Hub\nunits: mm\nparts: [bar.yaml, hub.yaml]\njoints:\n  - {name: on, press: {shaft: bar.seat, bore: hub.bore, method: heat}, level: front-with-front}\n",
		}))
		picture.Draw(m)
		if h := pl.Joints[0].Hold; (h == nil) != (want == 0) || h != nil && h.UprightDeg != want {
			t.Errorf("Ø%s: %+v, want %g°", dia, h, want)
		}
	}
}

// Two posts 60 thick, 100 wide and 300 high, bolted to the ends of a bar of 400: they stand on their feet (50 over 150 is
// 18°) when a lid is bolted to the outside of one, and fall over (50 over 260 is 10°) with that outside up.
func TestHoldAsItStands(t *testing.T) {
	t.Parallel()
	plate := func(name, thick, outline, holes string) string {
		return "part: " + name + "\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: " + thick + "}\noutline: {rectangle: " + outline + "}\nholes:\n" + holes
	}
	m, pl := load(t, write(t, map[string]string{
		"post.yaml": plate("post", "60", "[100, 300]", "  - {name: bar, at: [[0, 0]], size: M12 clearance}\n  - {name: lid, at: [[0, -100], [0, 100]], size: M8 tap, depth: 20}\n"),
		"lid.yaml":  plate("lid", "10", "[90, 260]", "  - {name: lid, at: [[0, -100], [0, 100]], size: M8 clearance}\n"),
		"tie.yaml":  "part: tie\nkind: shaft\nmaterial: S355\nstock: {round: 30}\nprofile:\n  outside: [{name: body, diameter: 30, length: 400}]\nholes:\n  - {name: front, at: [[0, 0]], size: M12 tap, depth: 26}\n  - {name: back, face: back, at: [[0, 0]], size: M12 tap, depth: 26}\n",
		"job.yaml": "job: Posts\nunits: mm\nparts: [post.yaml, lid.yaml, tie.yaml]\njoints:\n  - {name: one, bolt: {through: post#1.bar, into: tie.front, bolt: M12 8.8}, face: back-on-front}\n  - {name: two, bolt: {through: post#2.bar, into: tie.back, bolt: M12 8.8}, face: front-on-back, after: one}\n" +
			"  - {name: lid, bolt: {through: lid#1.lid, into: post#1.lid, bolt: M8 8.8}, face: back-on-front, after: two}\n",
	}))
	picture.Draw(m)
	if h := pl.Joints[2].Hold; h != nil {
		t.Errorf("%+v", h)
	}
}

// Two plates of 300 by 200 that stand on edge, 12 thick, with a roll between them in bushes: on one plate that lies it would fall over
// once the rods are in, and is packed up until they are tight; then it stands by itself, and no block holds it while a bush is tried.
func TestHoldUntilItStands(t *testing.T) {
	t.Parallel()
	m, pl := load(t, write(t, map[string]string{
		"side.yaml": "part: side\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [300, 200]}\nbore: {diameter: 40, fit: H7}\nholes: [{name: rods, at: [[-130, 80], [130, 80], [130, -80], [-130, -80]], size: M12 clearance}]\n",
		"bush.yaml": "part: bush\nkind: turned\nquantity: 2\nmaterial: CuSn7Zn4Pb7-C\nstock: {round: 45}\nprofile:\n  outside: [{name: outside, diameter: 40, fit: r6, length: 12}]\n  inside: [{name: bore, diameter: 25, fit: E9, length: 12}]\n",
		"roll.yaml": "part: roll\nkind: shaft\nmaterial: S355\nstock: {round: 85}\nprofile:\n  outside: [{name: front, diameter: 25, fit: h7, length: 40}, {name: body, diameter: 80, length: 190}, {name: back, diameter: 25, fit: h7, length: 40}]\n",
		"rod.yaml":  "part: rod\nkind: turned\nquantity: 4\nmaterial: S355\nstock: {round: 30}\nprofile:\n  outside: [{name: front, thread: M12, length: 30}, {name: body, diameter: 25, length: 200}, {name: back, thread: M12, length: 30}]\n",
		"job.yaml": "job: Rolls\nunits: mm\ntolerance: m\nparts: [side.yaml, bush.yaml, roll.yaml, rod.yaml]\njoints:\n  - {name: bush-1, press: {shaft: bush#1.outside, bore: side#1.bore}, level: front-with-front}\n  - {name: bush-2, press: {shaft: bush#2.outside, bore: side#2.bore}, level: front-with-front}\n" +
			"  - {name: in, slide: {hub: bush#1.bore, on: roll.front}, place: {on: front, with: back, gap: -35}, after: [bush-1, bush-2]}\n  - {name: rods, bolt: {through: side#1.rods, into: side#2.rods, bolt: M12, nut: yes, stud: rod}, face: back-on-front, after: in}\n  - {name: there, slide: {hub: bush#2.bore, on: roll.back}, after: rods}\n",
	}))
	picture.Draw(m)
	for name, want := range map[string]*plan.Hold{"rods": {Packed: true, Once: true}, "there": nil} {
		j := pl.Joints[slices.IndexFunc(pl.Joints, func(j *plan.JointPlan) bool { return j.Name == name })]
		if !reflect.DeepEqual(j.Hold, want) {
			t.Errorf("%s: %+v, want %+v", name, j.Hold, want)
		}
	}
}

// On the upright face of a post of 60 that stands: a pad lies flat against it and is clamped to it, in the
// air and, thin, on the base; a rib on edge is propped in the air, and on the base falls
// over at the arc tangent of 4 over 40; one of 40 is a block, which stands by itself.
func TestHoldAgainstAnUprightFace(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		thick, place string
		want         plan.Hold
	}{
		{"8", "with: back, at: [0, 0], top: up", plan.Hold{Against: "post", PieceDeg: 5}},
		{"8", "with: back, at: [0, -110], top: up", plan.Hold{Against: "post", PieceDeg: 5}},
		{"40", "with: back, at: [0, 0], top: up", plan.Hold{Against: "post"}},
		{"40", "with: back, at: [0, -110], top: up", plan.Hold{}},
		{"8", "with: left, from-left: 96, from-bottom: 100, front: right", plan.Hold{Hangs: true, PieceDeg: 5}},
		{"8", "with: left, from-left: 96, from-bottom: 0, front: right", plan.Hold{PieceDeg: 5}},
		{"40", "with: left, from-left: 80, from-bottom: 100, front: right", plan.Hold{Against: "post"}},
	} {
		m, pl := load(t, write(t, map[string]string{
			"base.yaml": basePart,
			"post.yaml": "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {rectangle: [200, 300]}\n",
			"pad.yaml":  "part: pad\nkind: plate\nmaterial: S235\nstock: {plate: " + c.thick + " mm}\noutline: {square: 80}\n",
			"job.yaml": "job: Post\nunits: mm\nup: top\nparts: [post.yaml, base.yaml, pad.yaml]\njoints:\n" + strings.ReplaceAll(ribWeld, "rib.outline", "post.outline") +
				", place: {on: front, with: bottom, from-left: 100, from-bottom: 10, front: down}}\n  - {name: pad, weld: {part: pad.outline, to: post.outline, type: fillet, size: 5, length: 60}, place: {on: front, " + c.place + "}}\n",
		}))
		picture.Draw(m)
		h := pl.Joints[1].Hold
		if h == nil {
			h = &plan.Hold{}
		}
		if !reflect.DeepEqual(*h, c.want) {
			t.Errorf("%s thick, %s: %+v, want %+v", c.thick, c.place, *h, c.want)
		}
	}
}

// On a base of 300 x 300 on a post that is anchored: a cover that stands on it with the leg under its free end lower than the base
// is carried (its centre of gravity lies 20 within the edge of the base); one with too long an end falls over; what is
// bolted on from below hangs.
func TestHoldOnWhatIsAnchored(t *testing.T) {
	t.Parallel()
	plate := func(name, wide, holes string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {rectangle: [" + wide + ", 200]}\nholes:\n" + holes
	}
	for _, c := range []struct {
		wide, at, bolt string
		want           *plan.Hold
	}{
		{"400", "-20", "bolt: {through: cover.cover, into: base.cover, bolt: M10 8.8}, place: {on: front, with: back, at: [120, 0], top: up}", nil},
		{"600", "-200", "bolt: {through: cover.cover, into: base.cover, bolt: M10 8.8}, place: {on: front, with: back, at: [300, 0], top: up}", &plan.Hold{UprightDeg: 1, Bolts: true}},
		{"400", "-20", "bolt: {through: base.cover, into: cover.cover, bolt: M10 8.8}, place: {on: front, with: back, at: [-120, 0], top: up}", &plan.Hold{Comes: "cover"}},
	} {
		size, into := "M10 clearance", "M10 tap"
		if c.want != nil && c.want.Comes != "" {
			size, into = into, size
		}
		m, pl := load(t, write(t, map[string]string{
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {square: 300}\nholes:\n  - {name: cover, at: [[100, -60], [100, 60]], size: " + into + "}\n  - {name: pad, at: [[-100, 0]], size: M8 tap}\n",
			"pad.yaml":   "part: pad\nkind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {square: 40}\nholes:\n  - {name: pad, at: [[0, 0]], size: M8 clearance}\n",
			"cover.yaml": plate("cover", c.wide, "  - {name: cover, at: [["+c.at+", -60], ["+c.at+", 60]], size: "+size+"}\n"),
			"foot.yaml":  "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {square: 300}\n",
			"post.yaml":  "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 160}\noutline: {rectangle: [160, 400]}\n",
			"leg.yaml":   "part: leg\nkind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {rectangle: [100, 90]}\n",
			"job.yaml": "job: Cover\nunits: mm\nup: front\nparts: [base.yaml, post.yaml, foot.yaml, pad.yaml, cover.yaml, leg.yaml]\njoints:\n  - {name: post, weld: {part: post.outline, to: base.outline, type: fillet}, place: {on: back, with: top, from-left: 70, from-bottom: 70, front: left}}\n  - {name: foot, weld: {part: foot.outline, to: post.outline, type: fillet}, place: {on: bottom, with: front, from-left: -70, from-bottom: -70, top: up}}\n  - {name: pad, bolt: {through: pad.pad, into: base.pad, bolt: M8 8.8}, face: back-on-front, anchored: foot, after: foot}\n" +
				"  - {name: leg, weld: {part: leg.outline, to: cover.outline, type: fillet}, place: {on: back, with: top, from-right: 20, from-bottom: 50, front: left}}\n  - {name: cover, " + c.bolt + ", after: [pad, leg]}\n",
		}))
		picture.Draw(m)
		i := slices.IndexFunc(pl.Joints, func(j *plan.JointPlan) bool { return j.Name == "cover" })
		if i < 0 {
			t.Fatal(pl.Faults)
		}
		if got := pl.Joints[i].Hold; !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s wide, %s: %+v, want %+v", c.wide, c.bolt, got, c.want)
		}
	}
}

// A flange goes on the end of a branch that leans at 60 degrees: the heavy main under it lies aslant and in no V-blocks
// along that axis; square to it the main lies level in them, its centre of gravity in its middle.
func TestHoldUnderALeaningBranch(t *testing.T) {
	t.Parallel()
	for angle, want := range map[string]*plan.Hold{
		"60": {Packed: true},
		"90": {On: [2]string{"main", "main"}, CentreMm: 200, At: "main"},
	} {
		m, pl := load(t, write(t, map[string]string{
			"main.yaml":   "part: main\nkind: tube\nmaterial: S235\nstock: {tube: 200, wall: 20}\ntube: {outside: 200, wall: 20, length: 400}\nradial:\n  - {name: hole, clock: 0, axial: 200, size: 60}\n",
			"branch.yaml": "part: branch\nkind: tube\nmaterial: S235\nstock: {tube: 80, wall: 5}\ntube: {outside: 80, wall: 5, length: 300}\nends:\n  back: {onto: main.outside, angle: " + angle + ", place: {axial: " + map[string]string{"60": "142.3", "90": "200"}[angle] + ", leans: back}}\n",
			"flange.yaml": "part: flange\nkind: flange\nmaterial: S235\nstock: {plate: 10}\noutline: {circle: 140}\nbore: {diameter: 80.5}\n",
			"job.yaml": "job: Branch\nunits: mm\nparts: [main.yaml, branch.yaml, flange.yaml]\njoints:\n  - {name: branch, weld: {part: branch.bore, to: main.hole, type: fillet}}\n" +
				"  - {name: flange, weld: {part: flange.bore, to: branch.outside, type: fillet}, level: front-with-front, below: 4, after: branch}\n",
		}))
		picture.Draw(m)
		if h := pl.Joints[len(pl.Joints)-1].Hold; !reflect.DeepEqual(h, want) {
			t.Errorf("%s: %+v, want %+v, %v", angle, h, want, pl.Faults)
		}
	}
}

// Every step of both demos shows what it joins, cut where the two meet: the corners of a frame
// with the last of them. A flight is cut by a plane through its axis, six times in three turns.
func TestEveryStepIsShown(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		joints, _ := pictured(t, name)
		for _, j := range joints {
			if (j.Frame == "" || j.Frame == j.Name) && len(j.Pictures) == 0 {
				t.Errorf("%s %s has no picture", name, j.Name)
			}
		}
		if j := joints["auger-flight"]; j != nil {
			cuts := 0
			for _, s := range j.Pictures[0].Shapes {
				if s.New {
					cuts += len(s.Loops)
				}
			}
			if cuts < 6 {
				t.Errorf("the flight is cut %d times", cuts)
			}
		}
	}
}

// What stands on the floor stays, and what hangs in the sling comes to it: to the back of the
// frame's plate the housing with all on it, from the front, and on the stand the base plate, from
// above.
func TestWhatIsFreeComes(t *testing.T) {
	t.Parallel()
	joints, _ := pictured(t, "pugmill")
	for name, want := range map[string]struct {
		moved string
		dir   plan.XY
	}{"housing": {"Bearing housing", plan.XY{XMm: 1}}, "base-far": {"Base plate", plan.XY{YMm: -1}}, "switch-bracket": {"Switch bracket", plan.XY{XMm: -1}}} {
		p := joints[name].Pictures[0]
		_, _, titles := shapes(&p)
		if !titles[want.moved] || len(p.Arrows) == 0 || p.Arrows[0].Dir != want.dir {
			t.Errorf("%s: %+v", name, p.Arrows)
		}
		for _, s := range p.Shapes {
			if s.Item > 0 && s.New != (s.Title == want.moved) {
				t.Errorf("%s: %s is new: %v", name, s.Title, s.New)
			}
		}
	}
}

// A plate of 14 kg comes on a rail on a leg whose foot, cut to 20°, lies on no level floor as drawn: until that is anchored it falls
// over, and then nothing is to be held.
func TestHoldEndsAtTheAnchors(t *testing.T) {
	t.Parallel()
	for anchored, want := range map[string]*plan.Hold{", anchored: foot": nil, "": {Packed: true}} {
		m, pl := load(t, write(t, map[string]string{
			"rail.yaml": "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 8, length: 1200}\nholes: [{name: taps, along: {from: left, first: 500, pitch: 200, count: 2}, size: M8 tap}]\n",
			"leg.yaml":  "part: leg\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 800, right: {mitre: 20, long: top}}\n",
			"foot.yaml": "part: foot\nkind: plate\nfor: leg\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {square: 150}\nholes: [{name: anchors, at: [[-55, 55], [55, -55]], size: 14}]\n",
			"box.yaml":  "part: box\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: laser}\noutline: {rectangle: [300, 300]}\nholes: [{name: holes, at: [[-100, 0], [100, 0]], size: M8 clearance}]\n",
			"job.yaml": "job: Post\nunits: mm\nparts: [rail.yaml, leg.yaml, foot.yaml, box.yaml]\njoints:\n  - {name: leg, weld: {part: leg.left, to: rail.bottom, type: fillet}, place: {on: bottom, with: left, from-right: 0, from-bottom: 0, front: up}}\n" +
				"  - {name: foot, weld: {part: leg.right, to: foot.outline, type: fillet}, place: {on: front, with: right, from-left: 50, from-bottom: 50, front: left}}\n  - {name: box, bolt: {through: box.holes, into: rail.taps, bolt: M8 8.8}, face: back-on-front" + anchored + "}\n",
		}))
		picture.Draw(m)
		i := slices.IndexFunc(pl.Joints, func(j *plan.JointPlan) bool { return j.Name == "box" })
		if i < 0 {
			t.Fatal(pl.Faults)
		}
		if got := pl.Joints[i].Hold; !reflect.DeepEqual(got, want) {
			t.Errorf("%q: %+v, want %+v", anchored, got, want)
		}
	}
}

// What tips at a step is kept by anchors only where something is anchored by then.
func TestTipsBeforeItIsAnchored(t *testing.T) {
	t.Parallel()
	for anchored, free := range map[string]bool{"    anchored: stand-foot\n": false, "": true} {
		m, pl := load(t, edited(t, "pugmill", [3]string{"job.yaml", "    anchored: stand-foot\n", anchored}))
		picture.Draw(m)
		tips := 0
		for _, j := range pl.Joints {
			if h := j.Hold; h != nil && h.BeyondMm > 0 {
				if tips++; h.Free != free {
					t.Errorf("%s with %q: %+v", j.Name, anchored, *h)
				}
			}
		}
		if tips == 0 {
			t.Errorf("nothing tips with %q", anchored)
		}
	}
}

// A flange is bolted on a block of 200 × 150, 37 kg, which stands on its back. A ring of 180 that only lies there
// is no foot, nor is a hood of sheet, bolted on, under what no one person lifts; a ring bolted on is one.
func TestWhatItStandsOn(t *testing.T) {
	t.Parallel()
	const (
		block  = "part: block\ntitle: Block\nkind: turned\nmaterial: S355\nprofile:\n  outside: [{name: body, diameter: 200, length: 150}]\nholes:\n  - {name: taps, circle: {pcd: 150, count: 4, first: 45}, size: M10 tap, depth: 20}\n  - {name: back-taps, face: back, circle: {pcd: 150, count: 4, first: 45}, size: M10 tap, depth: 20}\n"
		flange = "part: flange\ntitle: Flange\nkind: ring\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {circle: 200}\nbore: {diameter: 60}\nholes: [{name: bolts, circle: {pcd: 150, count: 4, first: 45}, size: M10 clearance}]\n"
		ring   = "part: ring\ntitle: Ring\nkind: ring\nmaterial: S235\nstock: {%s: %d mm}\noutline: {circle: 180}\nbore: {diameter: 60}\nholes: [{name: bolts, circle: {pcd: 150, count: 4, first: 45}, size: M10 clearance, counterbore: {diameter: 18, depth: %d}}]\n"
		first  = "  - {name: ring, bolt: {through: ring.bolts, into: block.back-taps, bolt: M10 8.8, head: socket}, face: back-on-back, before: flange}\n"
		on     = "  - {name: flange, bolt: {through: flange.bolts, into: block.taps, bolt: M10 8.8}, face: back-on-front}\n"
		knob   = "part: knob\ntitle: Knob\nkind: turned\nmaterial: S355\nprofile:\n  outside: [{name: outside, diameter: 40, length: 30}]\n"
		knobOn = "  - {name: knob, weld: {part: knob.outside, to: block.body, type: fillet, size: 4}, place: {on: front, with: back, at: [0, 0], top: up}, before: flange}\n"
		laid   = "loose: [{part: ring, how: laid on, after: knob, lies: [{on: block.back, with: back}]}]\n"
	)
	for name, c := range map[string]struct{ stock, joints, foot string }{
		"alone":          {"plate", on, "Block"},
		"ring bolted on": {"plate", first + on, "Ring"},
		"ring laid on":   {"plate", knobOn + on + laid, ""},
		"hood of sheet":  {"sheet", first + on, ""},
	} {
		files := map[string]string{"block.yaml": block, "flange.yaml": flange, "knob.yaml": knob, "ring.yaml": fmt.Sprintf(ring, c.stock, 30, 12), "job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [block.yaml, flange.yaml, ring.yaml, knob.yaml]\njoints:\n" + c.joints}
		m, pl := load(t, write(t, files))
		picture.Draw(m)
		for _, j := range pl.Joints {
			if j.Name != "flange" {
				continue
			}
			h := j.Hold
			if h == nil {
				h = &plan.Hold{}
			}
			if h.Foot != c.foot || c.foot == "" && h.On[0] == "" {
				t.Errorf("%s: %+v, want to stand on %q", name, *h, c.foot)
			}
		}
	}
}

// A flange of 4.4 kg is bolted on a round block of Ø200 that stands by itself: from 12 kg together the sheet says what it stands
// on, for 32 of block (7.9 kg) and not for 30 (7.4 kg). A square one has no front or back to turn down.
func TestStandsOnItsFoot(t *testing.T) {
	t.Parallel()
	const taps = "holes:\n  - {name: taps, circle: {pcd: 150, count: 4, first: 45}, size: M10 tap, depth: 15}\n"
	round := func(long string) string {
		return "part: block\ntitle: Block\nkind: turned\nmaterial: S355\nprofile:\n  outside: [{name: body, diameter: 200, length: " + long + "}]\n" + taps
	}
	for block, want := range map[string]string{round("30"): "", round("32"): "Block", "part: block\ntitle: Block\nkind: plate\nmaterial: S355\nstock: {plate: 40}\noutline: {rectangle: [200, 240]}\n" + strings.Replace(taps, "circle: {", "circle: {centre: [10, 0], ", 1): ""} {
		m, pl := load(t, write(t, map[string]string{
			"block.yaml":  block,
			"flange.yaml": "part: flange\ntitle: Flange\nkind: ring\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {circle: 200}\nbore: {diameter: 60}\nholes: [{name: bolts, circle: {pcd: 150, count: 4, first: 45}, size: M10 clearance}]\n",
			"job.yaml":    "job: J\nunits: mm\ntolerance: m\nparts: [block.yaml, flange.yaml]\njoints:\n  - {name: flange, bolt: {through: flange.bolts, into: block.taps, bolt: M10 8.8}, face: back-on-front}\n",
		}))
		picture.Draw(m)
		got := ""
		if h := pl.Joints[0].Hold; h != nil {
			got = h.Foot
		}
		if got != want {
			t.Errorf("%s: stands on %q, want %q", block, got, want)
		}
	}
}

// A drum of 300 by 400 with a neck in its middle, and a flange put on that: what lies in blocks is the drum, 200 from
// its own front, though the flange goes on across it. A post of 40 and 300 high on a foot of 50 falls over (25 over 155 is 9°), and no block
// holds a plate.
func TestHoldLiesAlongItsRound(t *testing.T) {
	t.Parallel()
	m, pl := load(t, write(t, map[string]string{
		"drum.yaml":   "part: drum\nkind: tube\nmaterial: S235\nstock: {tube: 300 mm, wall: 5 mm, cut: saw}\ntube: {outside: 300 mm, wall: 5 mm, length: 400}\nradial: [{name: door, clock: 0, axial: 200, size: 90, for: opening}]\n",
		"neck.yaml":   "part: neck\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 4 mm, cut: saw}\ntube: {outside: 100 mm, wall: 4 mm, length: 100}\nends: {back: {onto: drum.outside, joint: set-on, place: {clock: 0, axial: 200}}}\n",
		"flange.yaml": "part: flange\nkind: ring\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {circle: 250}\nbore: {diameter: 100.4, fit: {plus-minus: 0.2}}\n",
		"job.yaml": "job: Drum\nunits: mm\ntolerance: m\nparts: [drum.yaml, neck.yaml, flange.yaml]\njoints:\n  - {name: neck, weld: {part: neck.outside, to: drum.door, type: fillet, size: 4}}\n" +
			"  - {name: flange, weld: {part: flange.bore, to: neck.outside, type: fillet, size: 4}, level: front-with-front, below: 5}\n",
	}))
	picture.Draw(m)
	if got, want := pl.Joints[1].Hold, (&plan.Hold{On: [2]string{"drum", "drum"}, CentreMm: 200, At: "drum"}); !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
	m, pl = load(t, write(t, map[string]string{
		"post.yaml": "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 40 mm}\noutline: {rectangle: [200, 300]}\n",
		"foot.yaml": "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [300, 50]}\n",
		"job.yaml":  "job: Post\nunits: mm\ntolerance: m\nparts: [foot.yaml, post.yaml]\njoints:\n  - {name: post, weld: {part: post.outline, to: foot.outline, type: fillet, size: 5}, place: {on: front, with: bottom, from-left: 50, from-bottom: 5, front: down}}\n",
	}))
	picture.Draw(m)
	if h := pl.Joints[0].Hold; h == nil || !h.Packed || h.On[0] != "" {
		t.Errorf("%+v", h)
	}
}

// A shaft of 40 by 700 with a disc of 200 by 40, 30 from one of its ends, lies with the disc in one block and the shaft in another: 6.9 kg with
// their middle 300 from that of 9.5 kg put the centre of gravity 126.6 from that, so 107 beyond the disc, rounded up. A ring of 0.6 kg goes on over the other end,
// whichever that is, to 380 from the disc's, past the block there, which is taken out.
func TestHoldTakesOutTheBlock(t *testing.T) {
	t.Parallel()
	for on, with := range map[string]string{"front": "back", "back": "front"} {
		place := func(on, with, in string) string {
			return "place: {on: " + on + ", with: " + with + ", at: [0, 0], top: up, gap: -" + in + "}}\n"
		}
		m, pl := load(t, write(t, map[string]string{
			"shaft.yaml": "part: shaft\nkind: shaft\nmaterial: C45\nprofile:\n  outside: [{name: body, diameter: 40, length: 700}]\n",
			"disc.yaml":  "part: disc\nkind: ring\nmaterial: S235\nstock: {plate: 40 mm}\noutline: {circle: 200}\nbore: {diameter: 40.4, fit: {plus-minus: 0.2}}\n",
			"ring.yaml":  "part: ring\nkind: ring\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {circle: 80}\nbore: {diameter: 40.4, fit: {plus-minus: 0.2}}\n",
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [shaft.yaml, disc.yaml, ring.yaml]\njoints:\n  - {name: disc, weld: {part: disc.bore, to: shaft.body, type: fillet, size: 4}, " + place(on, with, "70") +
				"  - {name: ring, weld: {part: ring.bore, to: shaft.body, type: fillet, size: 4}, " + place(on, with, "400"),
		}))
		picture.Draw(m)
		if got, want := pl.Joints[1].Hold, (&plan.Hold{On: [2]string{"disc", "shaft"}, CentreMm: map[string]float64{"front": 184, "back": 516}[on], At: "shaft", Out: "shaft", TipsMm: 107}); !reflect.DeepEqual(got, want) {
			t.Errorf("from the %s: %+v, want %+v", on, got, want)
		}
	}
}
