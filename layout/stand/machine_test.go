package stand_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/picture"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
)

// The pug mill drawn by hand: 1508 over all with the gear motor and the die nut, which stands 13 out, the base plate 120 mm ahead of the housing plate's front and its underside 180
// below the axis, the stand of 50 + 400 + 10 under it, 653 mm of machine in front of it, the rear cone's place 1.5 mm clear of its shoulder less the ring's own
// set-back.
func TestPugMill(t *testing.T) {
	t.Parallel()
	m, pl := load(t, "../../testdata/pugmill/job.yaml")
	all := assembly.Together(m.Bodies)
	size := all.Box.Size()
	if math.Abs(size.Z-1508) > 0.01 || math.Abs(all.Box.Low.Y+180+50+400+10) > 1e-6 {
		t.Errorf("size %+v, low %+v", size, all.Box.Low)
	}
	plate := body(t, m, "housing-plate#1").Box()
	boxed(t, m, "base-plate#1", assembly.Vec{X: -170, Y: -180, Z: plate.High.Z + 120 - 460}, assembly.Vec{X: 170, Y: -160, Z: plate.High.Z + 120})
	if ahead := all.Box.High.Z - (plate.High.Z + 120); math.Abs(ahead-653) > 0.5 {
		t.Errorf("%g mm ahead of the base", ahead)
	}
	boxed(t, m, "gusset#4", assembly.Vec{X: -160, Y: -160, Z: plate.Low.Z - 110}, assembly.Vec{X: -150, Y: -20, Z: plate.Low.Z})
	// The inlet stub's far end: the hand drawing says ≈ 192 to the flange's top.
	stub := body(t, m, "inlet-stub#1").Box()
	if c := stub.Centre(); math.Abs(c.Z-(-501+140)) > 1e-6 || math.Abs(c.X) > 1e-6 {
		t.Errorf("stub over %+v", c)
	}
	shaft, bearing := body(t, m, "auger-shaft#1").Box(), body(t, m, "front-bearing cone").Box()
	// The shaft's shoulder, 530 mm from its nose, against the bearing.
	if gap := shaft.High.Z - 530 - bearing.High.Z; math.Abs(gap) > 1e-6 {
		t.Errorf("front bearing %g mm off its shoulder", gap)
	}
	for _, p := range m.Problems {
		if p.Kind != plan.PartsFloat && p.Kind != plan.WouldTip {
			t.Errorf("%s: %s", p.Kind, p.What)
		}
	}
	// Masses agree with those of the part sheets, which count a saddle by its mean
	// and see keyways, as the solids do not.
	for _, b := range m.Bodies {
		of, made := m.Of[b.ID]
		if !made {
			continue
		}
		kg, _, _ := b.Mass()
		want := pl.Part(of.Part).MassKg
		if math.Abs(kg-want) > 0.035*want {
			t.Errorf("%s: %.3f kg, the sheet says %.3f", b.ID, kg, want)
		}
	}
}

func ribs(t *testing.T, rest string) *machine.Machine {
	t.Helper()
	m, _ := load(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": ribPart, "job.yaml": ribJob + rest}))
	return m
}

// Where a rib of 100 × 60 × 10 stands on a plate of 400 × 200, origin in its
// middle and its front at z = 0, by each key of place.
func TestPlaces(t *testing.T) {
	t.Parallel()
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	for _, c := range []struct {
		place     string
		low, high assembly.Vec
	}{
		{"on: front, with: bottom, from-left: 30, from-bottom: 20, front: down", v(-170, -80, 0), v(-70, -70, 60)},
		{"on: front, with: bottom, from-right: 30, from-top: 20, front: up", v(70, 70, 0), v(170, 80, 60)},
		{"on: front, with: bottom, from-left: 30, from-bottom: 20, front: right", v(-170, -80, 0), v(-160, 20, 60)},
		{"on: back, with: bottom, from-left: 30, from-bottom: 20, front: down", v(70, -80, -80), v(170, -70, -20)},
		{"on: front, with: back, at: [10, 20], top: up", v(10, 20, 0), v(110, 80, 10)},
		{"on: front, with: back, at: [10, 20], top: right", v(10, -80, 0), v(70, 20, 10)},
		{"on: front, with: back, at: [10, 20], top: down", v(-90, -40, 0), v(10, 20, 10)},
		{"on: front, with: front, at: [10, 20], top: up, gap: 3", v(-90, 20, 3), v(10, 80, 13)},
		{"on: right, with: left, from-bottom: 0, from-left: 5, front: left", v(200, -100, -15), v(300, -40, -5)},
		{"on: left, with: left, from-bottom: 0, from-left: 5, front: left", v(-300, -100, -15), v(-200, -40, -5)},
		{"on: bottom, with: bottom, from-left: 0, from-bottom: 0, front: down", v(-200, -160, -20), v(-100, -100, -10)},
		{"on: top, with: bottom, from-left: 0, from-bottom: 0, front: down", v(-200, 100, -10), v(-100, 160, 0)},
		{"on: front, with: bottom, from-left: 30, from-bottom: 20, front: down, gap: -4", v(-170, -80, -4), v(-70, -70, 56)},
	} {
		m, _ := stood(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": ribPart, "job.yaml": ribJob + ribWeld + ", place: {" + c.place + "}}\n"}))
		root := body(t, m, "base#1").Pose
		rib := body(t, m, "rib#1")
		rib.Pose = root.Inverse().Of(rib.Pose)
		if b := rib.Box(); b.Low.Sub(c.low).Len() > 1e-6 || b.High.Sub(c.high).Len() > 1e-6 {
			t.Errorf("%s: %+v to %+v, want %+v to %+v", c.place, b.Low, b.High, c.low, c.high)
		}
	}
}

// What the joints do not say, and what they say wrong. In the middle of a rib of 10 it is 5 to its
// outside.
func TestProblems(t *testing.T) {
	t.Parallel()
	second := strings.ReplaceAll(strings.ReplaceAll(ribWeld, "name: rib", "name: other"), "rib.outline", "rib#2.outline")
	good := ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n"
	for _, c := range []struct {
		name, joints, want string
	}{
		{"all said", ribWeld + good, "parts-float rib"},
		{"no place", ribWeld + "}\n", "place-lacking rib 1 base"},
		{"no distance from a side", ribWeld + ", place: {on: front, with: bottom, from-bottom: 20, front: down}}\n", "place-open rib from-left or from-right; parts-float rib"},
		{"nothing but the faces", ribWeld + ", place: {on: front, with: bottom}}\n", "place-open rib top or front; from-left or from-right; from-bottom or from-top; parts-float rib"},
		{"twice in one place", ribWeld + good + second + good, "parts-overlap rib 1 rib 2 5"},
		{"8 mm off", ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down, gap: 8}}\n", "weld-apart rib 1 base 8; parts-float rib"},
		{"4 mm off", ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down, gap: 4}}\n", "parts-float rib"},
		{"side by side", ribWeld + good + second + strings.ReplaceAll(good, "from-bottom: 20", "from-bottom: 30"), ""},
		{"sunk", ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down, gap: -4}}\n", "parts-overlap base rib 1 4; parts-float rib"},
	} {
		if got := argued(ribs(t, c.joints)); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// Two lugs bolted 300 mm apart on one plate, one of them turned, and one under
// it: the holes give their places.
func TestLugsBesideTheAxis(t *testing.T) {
	t.Parallel()
	lug := "part: lug\nkind: plate\nquantity: 3\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {polygon: {points: [[0, 0], [80, 0], [80, 50], [0, 90]]}}\n" +
		"holes:\n  - {name: bolts, at: [[20, 20], [60, 20], [20, 60]], size: M10 clearance}\n"
	slab := "part: plate\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 15 mm}\noutline: {rectangle: [500, 300]}\nholes:\n" +
		"  - {name: left, at: [[-190, 0], [-150, 0], [-190, 40]], size: M10 clearance}\n" +
		"  - {name: right, at: [[110, 40], [110, 0], [150, 40]], size: M10 clearance}\n" +
		"  - {name: under, at: [[20, -60], [-20, -60], [20, -100]], size: M10 clearance}\n"
	bolt := func(n, group, more string) string {
		return "  - {name: lug-" + n + ", bolt: {through: lug#" + n + ".bolts, into: plate." + group + ", bolt: M10 8.8, nut: yes}" + more + "}\n"
	}
	m, pl := load(t, write(t, map[string]string{"lug.yaml": lug, "plate.yaml": slab, "job.yaml": "job: Lugs\nunits: mm\nparts: [plate.yaml, lug.yaml]\njoints:\n" +
		bolt("1", "left", ", face: back-on-front") + bolt("2", "right", ", face: back-on-front") + bolt("3", "under", ", face: back-on-back")}))
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	if may := m.Allowed([]assembly.Body{{ID: "lug-1 screw 1"}}); len(may) != 1 || may[0] != (assembly.Allowed{A: "lug-1 screw 1", B: "plate#1", UpToMm: 5}) {
		t.Errorf("a screw M10 lies in %+v", may)
	}
	boxed(t, m, "lug#1", v(-210, -20, 0), v(-130, 70, 12))
	boxed(t, m, "lug#2", v(90, -20, 0), v(180, 60, 12)) // a quarter clockwise
	if len(m.Problems) != 0 || len(pl.Faults) != 0 {
		t.Errorf("%+v %+v", m.Problems, pl.Faults)
	}
	if b := body(t, m, "lug#3").Box(); math.Abs(b.High.Z+15) > 1e-9 || math.Abs(b.Low.Z+27) > 1e-9 {
		t.Errorf("under: %+v", b)
	}
	for _, id := range []string{"lug-1 screw 1", "lug-2 screw 3", "lug-3 screw 2"} {
		body(t, m, id)
	}
	if how := pl.Joints[0].How; !strings.Contains(how, "hole on hole, TOP of lug 1 at 0°") {
		t.Error(how)
	}
	plate := body(t, m, "plate#1")
	for _, c := range []struct {
		pose assembly.Pose
		deg  float64
	}{
		{assembly.Still, 0}, {assembly.Rotate(assembly.AxisZ, 180), 180}, {assembly.Rotate(assembly.AxisZ, 30.004), 30}, // to a hundredth; turned against the clock, TOP lies with it
		{assembly.Rotate(assembly.AxisX, 90), 0}, {assembly.Rotate(assembly.AxisX, 30), 0},
	} {
		plate.Pose = c.pose
		if picture.Draw(m); math.Abs(pl.Joints[0].UpDeg-c.deg) > 1e-9 {
			t.Errorf("the machine's TOP at %g of plate, want %g", pl.Joints[0].UpDeg, c.deg)
		}
	}
}

// A washer of 10 between two plates of 12, the holes of the first 25 off its middle: it lies between them, on whichever
// face they meet, its bore over the middle of the holes, turned where its own are.
func TestStackBesideTheAxis(t *testing.T) {
	t.Parallel()
	round := func(name, thick, holes string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: " + thick + " mm}\noutline: {circle: 150}\nholes:\n  - {name: bolts, circle: {pcd: 100, count: 4, first: " + holes + "}, size: M10 clearance}\n"
	}
	for _, c := range []struct {
		face, first string
		z           [2]float64
		turn        float64
	}{
		{"back-on-front", "45", [2]float64{-22, -12}, 0}, {"front-on-back", "45", [2]float64{0, 10}, 0}, {"back-on-front", "15", [2]float64{-22, -12}, 30},
	} {
		m, pl := load(t, write(t, map[string]string{
			"a.yaml": round("a", "12", "45, centre: [25, 0]"), "b.yaml": round("b", "10", c.first), "c.yaml": round("c", "12", "45"),
			"job.yaml": "job: J\nunits: mm\nparts: [a.yaml, b.yaml, c.yaml]\njoints:\n  - {name: j, bolt: {through: a.bolts, stack: [b.bolts], into: c.bolts, bolt: M10 8.8, nut: yes}, face: " + c.face + "}\n",
		}))
		a, b := body(t, m, "a#1"), body(t, m, "b#1")
		at := a.Pose.Inverse().Of(b.Pose)
		low, high := at.At.Z-10, at.At.Z
		if at.At.Sub(assembly.Vec{X: 25, Z: at.At.Z}).Len() > 1e-9 || math.Abs(low-c.z[0]) > 1e-9 || math.Abs(high-c.z[1]) > 1e-9 || at.Z.Sub(assembly.AxisZ).Len() > 1e-9 {
			t.Errorf("%+v: %+v", c, at)
		}
		if got := math.Atan2(at.X.Y, at.X.X) * 180 / math.Pi; math.Abs(math.Remainder(math.Abs(got)-c.turn, 90)) > 1e-6 {
			t.Errorf("%+v: turned by %v", c, got)
		}
		if len(m.Problems) != 0 || len(pl.Faults) != 0 {
			t.Errorf("%+v: %+v %+v", c, m.Problems, pl.Faults)
		}
	}
}

// Where the axis of an oblique, offset branch goes through the outside of its main is
// what its sheets call the origin: R = 100, offset 50, 30 degrees round from the place
// that is said, to the right of who looks at it with the acute side up, whichever end of the branch is cut.
func TestBranchStandsAtItsOrigin(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		end   string
		clock float64
		front float64 // from the main's front face
	}{
		{"angle: 45, offset: 50, place: {clock: 90, axial: 300}", 60, 300 - 86.6025},
		{"angle: 45, offset: 50, place: {clock: 90, axial: 300, leans: back}", 120, 300 + 86.6025},
		{"angle: 45, offset: -50, place: {clock: 90, axial: 300}", 120, 300 - 86.6025},
		{"angle: 90, offset: 50, place: {clock: 0, axial: 300}", 330, 300},
		{"front: angle: 45, offset: 50, place: {clock: 90, axial: 300}", 60, 300 - 86.6025},
		{"front: angle: 90, offset: 50, place: {clock: 0, axial: 300}", 330, 300},
	} {
		cut := "back"
		if strings.HasPrefix(c.end, "front: ") {
			cut = "front"
		}
		m, pl := load(t, write(t, map[string]string{
			"job.yaml":    "job: Branch\nunits: mm\nparts: [main.yaml, branch.yaml]\njoints:\n  - {name: weld, weld: {part: branch.outside, to: main.hole, type: fillet, process: MAG}}\n",
			"main.yaml":   "part: main\nkind: tube\nquantity: 1\nmaterial: S235\ntube: {outside: 200, wall: 5, length: 600}\nradial: [{name: hole, clock: 90, axial: 300, size: 40}]\n",
			"branch.yaml": "part: branch\nkind: tube\nquantity: 1\nmaterial: S235\ntube: {outside: 60, wall: 3, length: 400}\nends: {" + cut + ": {onto: main.outside, " + strings.TrimPrefix(c.end, "front: ") + "}}\n",
		}))
		for _, p := range m.Problems { // the cut end lies on the main, not in it
			if p.Kind != plan.PartsFloat && p.Kind != plan.WouldTip {
				t.Errorf("%s: %s %s", c.end, p.Kind, p.What)
			}
		}
		main, pose := body(t, m, "main#1").Pose, body(t, m, "branch#1").Pose
		rel := main.Inverse().Of(pose)
		// Along the branch's axis from outside the main to its surface.
		step := rel.Z.Times(map[string]float64{"back": -1, "front": 1}[cut])
		at := rel.At.Add(step.Times(-500))
		for i := 0; i < 200000 && math.Hypot(at.X, at.Y) > 100; i++ {
			at = at.Add(step.Times(0.01))
		}
		clock := math.Mod(math.Atan2(at.X, at.Y)*180/math.Pi+360, 360)
		if math.Abs(clock-c.clock) > 0.1 || math.Abs(-at.Z-c.front) > 0.1 {
			t.Errorf("%s: axis comes out at clock %.2f, %.2f from the front; want %v, %v", c.end, clock, -at.Z, c.clock, c.front)
		}
		said := false
		for _, d := range pl.Part("branch").Developments {
			said = said || strings.HasPrefix(d.Origin, fmt.Sprintf("at clock %v°", c.clock))
		}
		if !said {
			t.Errorf("%s: its template does not say clock %v", c.end, c.clock)
		}
	}
}

// Of five plates of 0.471 kg two are welded to one another and three to one another: what nothing ties together stands apart, the heavier first.
func TestApartByWeight(t *testing.T) {
	t.Parallel()
	weld := func(a, b, at string) string {
		return "  - {name: w" + a + ", weld: {part: tag#" + a + ".outline, to: tag#" + b + ".outline, type: fillet, size: 4}, place: {on: front, with: back, at: [" + at + "], top: up}}\n"
	}
	m, _ := load(t, write(t, map[string]string{"tag.yaml": "part: tag\nkind: plate\nquantity: 5\nmaterial: S235\nstock: {plate: 10}\noutline: {rectangle: [100, 60]}\n",
		"job.yaml": "job: J\nunits: mm\nparts: [tag.yaml]\njoints:\n" + weld("2", "1", "10, 10") + weld("4", "3", "40, 0") + weld("5", "3", "-70, 0")}))
	got := ""
	for _, n := range []string{"1", "2", "3", "4", "5"} {
		got += fmt.Sprint(" ", stand.StandsIn(body(t, m, "tag#"+n)))
	}
	if got != " 1 1 0 0 0" || m.Tied(body(t, m, "tag#1"), body(t, m, "tag#3")) {
		t.Errorf("they stand in%s", got)
	}
}

// A shaft of which only its place along the bush is said lies on the axis of that, and has no clock: nothing is open. It
// is 20 in the bush, its centre of gravity 17 beside it.
func TestPlaceOnAnAxis(t *testing.T) {
	t.Parallel()
	m, _ := load(t, write(t, map[string]string{
		"job.yaml":   "job: J\nunits: mm\nparts: [bush.yaml, shaft.yaml]\njoints:\n  - {name: turn, slide: {hub: bush.bore, on: shaft.run}, place: {on: front, with: front, gap: -20}}\n",
		"bush.yaml":  "part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 50, length: 24}\nprofile:\n  outside: [{name: outside, diameter: 45, length: 20}]\n  inside: [{name: bore, diameter: 25, fit: H8, length: 20}]\n",
		"shaft.yaml": "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 86}\nprofile:\n  outside: [{name: run, diameter: 25, fit: f7, length: 60}, {name: end, thread: M20, length: 20}]\n",
	}))
	if got := argued(m); got != "comes-off bush shaft front; one-bush shaft bush 17" { // and nothing keeps the bush on it before its thread
		t.Error(got)
	}
}
