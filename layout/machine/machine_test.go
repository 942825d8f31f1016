package machine_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/read"
)

func load(t *testing.T, path string) (*machine.Machine, *plan.Plan) {
	t.Helper()
	job, err := read.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	w, err := layout.Work(job)
	if err != nil {
		t.Fatal(err)
	}
	return w.Machine(), w.Plan
}

// write puts files of a small job into a folder.
func write(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, "job.yaml")
}

func body(t *testing.T, m *machine.Machine, id string) *assembly.Body {
	t.Helper()
	i := slices.IndexFunc(m.Bodies, func(b assembly.Body) bool { return b.ID == id })
	if i < 0 {
		t.Fatalf("no body %s", id)
	}
	return &m.Bodies[i]
}

func boxed(t *testing.T, m *machine.Machine, id string, low, high assembly.Vec) {
	t.Helper()
	b := body(t, m, id).Box()
	if b.Low.Sub(low).Len() > 1e-6 || b.High.Sub(high).Len() > 1e-6 {
		t.Errorf("%s stands at %+v to %+v, want %+v to %+v", id, b.Low, b.High, low, high)
	}
}

// The pug mill drawn by hand: 1495 over all with the gear motor, the base plate 120 mm ahead of the housing plate's front and its underside 180
// below the axis, the stand of 50 + 400 + 10 under it, 640 mm of machine in front of it, the rear cone's place 1.5 mm clear of its shoulder less the ring's own
// set-back.
func TestPugMill(t *testing.T) {
	t.Parallel()
	m, pl := load(t, "../../testdata/pugmill/job.yaml")
	all := assembly.Together(m.Bodies)
	size := all.Box.Size()
	if math.Abs(size.Z-1495) > 0.01 || math.Abs(all.Box.Low.Y+180+50+400+10) > 1e-6 {
		t.Errorf("size %+v, low %+v", size, all.Box.Low)
	}
	plate := body(t, m, "housing-plate#1").Box()
	boxed(t, m, "base-plate#1", assembly.Vec{X: -170, Y: -180, Z: plate.High.Z + 120 - 460}, assembly.Vec{X: 170, Y: -160, Z: plate.High.Z + 120})
	if ahead := all.Box.High.Z - (plate.High.Z + 120); math.Abs(ahead-640) > 0.5 {
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

func TestGateJackGoesTogether(t *testing.T) {
	t.Parallel()
	m, _ := load(t, "../../testdata/gatejack/job.yaml")
	for _, p := range m.Problems {
		t.Errorf("%s: %s", p.Kind, p.What)
	}
	if len(m.Bodies) != 43 || len(m.Floating) != 0 {
		t.Errorf("%d bodies, %v float", len(m.Bodies), m.Floating)
	}
}

const (
	basePart = "part: base\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [400, 200]}\n"
	ribPart  = "part: rib\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {polygon: {points: [[0, 0], [100, 0], [0, 60]]}}\n"
	ribJob   = "job: Rib\nunits: mm\nparts: [base.yaml, rib.yaml]\njoints:\n"
	ribWeld  = "  - {name: rib, weld: {part: rib.outline, to: base.outline, type: fillet, length: 100}"
)

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
		m := ribs(t, ribWeld+", place: {"+c.place+"}}\n")
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

// Of parts in no joint the loose ones do not float, each of the others once.
func TestFloats(t *testing.T) {
	t.Parallel()
	plate := func(name string) string {
		return "part: " + name + "\ntitle: The " + name + "\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {rectangle: [60, 40]}\n"
	}
	for loose, want := range map[string]string{"": "The funnel, The lid", "funnel": "The lid", "lid": "The funnel"} {
		job := strings.Replace(ribJob, "rib.yaml", "rib.yaml, funnel.yaml, lid.yaml", 1) + ribWeld +
			", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n"
		if loose != "" {
			job += "loose:\n  - {part: " + loose + ", how: laid on top, after: rib}\n"
		}
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1), "funnel.yaml": plate("funnel"), "lid.yaml": plate("lid"), "job.yaml": job}))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.PartsFloat {
				got += p.Args[0].Text
			}
		}
		if got != want {
			t.Errorf("loose %q: %q floats, want %q", loose, got, want)
		}
	}
}

// A post of 900 × 300 × 60 whose middle stands 150 mm off the end of a base of
// 400 × 200 × 20: the common centre lies at 350 × 127.17 / 139.73 from the
// base's middle. Anchored before the step that would tip it, it stands.
func TestTips(t *testing.T) {
	t.Parallel()
	post := "part: post\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {rectangle: [900, 300]}\n"
	for left, beyond := range map[string]float64{"-600": 118.5, "-250": 0, "-600, anchored: base": 0, "-600, anchored: post": 0} {
		left, anchored, fixed := strings.Cut(left, ",")
		if fixed {
			anchored = "," + anchored
		}
		m, _ := load(t, write(t, map[string]string{
			"base.yaml": basePart, "post.yaml": post,
			"job.yaml": "job: Post\nunits: mm\nparts: [post.yaml, base.yaml]\njoints:\n" + strings.ReplaceAll(ribWeld, "rib.outline", "post.outline") +
				", place: {on: front, with: bottom, from-left: " + left + ", from-bottom: 70, front: down}" + anchored + "}\n",
		}))
		m.Problems = slices.DeleteFunc(m.Problems, func(p plan.Problem) bool { return p.Kind == plan.Overhangs })
		switch {
		case beyond == 0 && len(m.Problems) > 0:
			t.Errorf("%s: %+v", left, m.Problems)
		case beyond > 0 && (len(m.Problems) != 1 || m.Problems[0].Kind != plan.WouldTip || m.Problems[0].Args[1].Value != beyond || math.Abs(m.Problems[0].Args[2].Value-139.73) > 0.1):
			t.Errorf("%s: %+v", left, m.Problems)
		}
	}
}

// What is welded onto a plate of 400 × 200 stands on it, and on none of its
// holes. The rib's foot of 100 × 10 lies 30 from the left and from 20 to 30 from
// the bottom; moved to the left by 60 it keeps 70 % of it on the plate,
// and no longer the 100 of its weld.
func TestStandsOnAPlate(t *testing.T) {
	t.Parallel()
	hole := func(what string) string { return "holes:\n  - {name: pegs, datum: left-bottom, " + what + "}\n" }
	slot := func(what string) string { return "slots:\n  - {name: pegs, datum: left-bottom, " + what + "}\n" }
	for _, c := range []struct {
		left, holes, want string
	}{
		{"30", "", ""},
		{"-29", "", "seam-beyond [100 rib 71]"},
		{"-31", "", "seam-beyond [100 rib 69]overhangs [rib base 31]"},
		{"331", "", "seam-beyond [100 rib 69]overhangs [rib base 31]"},
		{"-31.26", "", "seam-beyond [100 rib 68.7]overhangs [rib base 31.3]"},
		{"30", hole("face: front, at: [[10, 100], [80, 25]], size: 6 mm"), "hole-closed [pegs base rib hole 2 0]"},
		{"30", hole("face: front, at: [[80, 30]], size: 6 mm"), "hole-closed [pegs base rib hole 1 50]"},
		{"30", hole("face: front, at: [[80, 34]], size: 6 mm"), ""},
		{"30", hole("face: back, at: [[320, 25]], size: 6 mm, depth: through"), "hole-closed [pegs base rib hole 1 0]"},
		{"30", hole("face: back, at: [[320, 25]], size: 6 mm, depth: 5 mm"), ""},
		{"30", slot("face: front, at: [[80, 25]], width: 6, length: 40, turn: 0"), "hole-closed [pegs base rib slot 1 72]"},
		{"30", slot("face: front, at: [[80, 54]], width: 6, length: 40, turn: 0"), ""},
		{"30", slot("face: back, at: [[320, 25]], width: 6, length: 40, turn: 90, depth: through"), "hole-closed [pegs base rib slot 1 0]"},
		{"30", slot("face: back, at: [[320, 25]], width: 6, length: 40, turn: 90, depth: 5"), ""},
	} {
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart + c.holes, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"job.yaml": ribJob + ribWeld + ", place: {on: front, with: bottom, from-left: " + c.left + ", from-bottom: 20, front: down}}\n"}))
		got := ""
		for _, p := range m.Problems {
			var args []string
			for _, a := range p.Args {
				if args = append(args, a.Text); a.Text == "" {
					args[len(args)-1] = words.Trim(a.Value, 3)
				}
			}
			got += string(p.Kind) + " [" + strings.Join(args, " ") + "]"
		}
		if got != c.want {
			t.Errorf("%s %s: %s, want %s", c.left, c.holes, got, c.want)
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
		if m.Pictures(); math.Abs(pl.Joints[0].UpDeg-c.deg) > 1e-9 {
			t.Errorf("the machine's TOP at %g of plate, want %g", pl.Joints[0].UpDeg, c.deg)
		}
	}
}

// What holes and slots take out: a tapped hole at its drill, a counterbore, an
// obround pocket, a keyseat as a pocket with straight sides, and grooves.
func TestWhatIsCutOut(t *testing.T) {
	t.Parallel()
	block := "part: block\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [200, 100]}\nholes:\n" +
		"  - {name: tap, at: [[-60, 0]], size: M8 tap}\n  - {name: sunk, face: back, at: [[-60, 30]], size: 11 mm, counterbore: {diameter: 18, depth: 11}}\n" +
		"slots:\n  - {name: pocket, face: front, at: [[40, 0]], width: 12, length: 40, turn: 0, depth: 7}\n"
	shaft := "part: shaft\nkind: shaft\nquantity: 1\nmaterial: S235\nstock: {round: 50 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 40, length: 100}\n" +
		"radial:\n  - {name: seat, clock: 90, axial: 50, from: front, slot: {around: 10, along: 60}, depth: 5}\n" +
		"grooves:\n  - {name: grease, in: body, axial: 90, for: grease, width: 4, depth: 2}\n  - {name: seal, in: front, for: o-ring, o-ring: 20x2}\n  - {name: back, in: back, for: o-ring, o-ring: 20x2}\n" +
		"flats:\n  - {name: square, in: body, sides: 4, across: 34, clock: 45, length: 6}\n"
	job := "job: Cuts\nunits: mm\nparts: [block.yaml, shaft.yaml]\njoints:\n  - {name: stand, weld: {part: shaft.body, to: block.outline, type: fillet, length: 50}, place: {on: front, with: front, at: [0, 0], top: up}}\n"
	m, _ := load(t, write(t, map[string]string{"block.yaml": block, "shaft.yaml": shaft, "job.yaml": job}))
	// Tap drill 6.8; the pocket is 28 × 12 and a circle of 12.
	want := 200*100*20.0 - math.Pi*3.4*3.4*20 - math.Pi*(5.5*5.5*9+81*11) - (28*12+math.Pi*36)*7
	b := body(t, m, "block#1").Solid.Bulk()
	if math.Abs(b.VolumeMm3-want) > 0.5 {
		t.Errorf("block %.1f, want %.1f", b.VolumeMm3, want)
	}
	s := body(t, m, "shaft#1").Solid
	for _, c := range []struct {
		at   assembly.Vec
		want bool
	}{
		{assembly.Vec{X: 14.9, Z: -50}, true}, {assembly.Vec{X: 15.1, Z: -50}, false}, {assembly.Vec{X: 16, Y: 4.7, Z: -50}, false},
		{assembly.Vec{X: 16, Y: 5.2, Z: -50}, true}, {assembly.Vec{X: 16, Z: -79}, false}, {assembly.Vec{X: 16, Y: 4, Z: -79}, true}, {assembly.Vec{X: 16, Z: -81}, true},
		{assembly.Vec{X: 12.1, Y: 12.1, Z: -3}, false}, {assembly.Vec{X: 11.9, Y: 11.9, Z: -3}, true}, {assembly.Vec{X: 12.1, Y: 12.1, Z: -6.1}, true}, {assembly.Vec{X: -12.1, Y: 12.1, Z: -3}, false}, {assembly.Vec{X: 19.5, Z: -3}, true},
		{assembly.Vec{Y: 18.1, Z: -92}, false}, {assembly.Vec{Y: 17.9, Z: -92}, true}, {assembly.Vec{Y: 19, Z: -94.1}, true},
		{assembly.Vec{Y: 11, Z: -1.4}, false}, {assembly.Vec{Y: 11, Z: -1.6}, true}, {assembly.Vec{Y: 12.1, Z: -1}, true}, {assembly.Vec{Y: 9.1, Z: -1}, true},
		{assembly.Vec{Y: 11, Z: -98.6}, false}, {assembly.Vec{Y: 11, Z: -98.4}, true},
	} {
		if got := s.Dist(c.at) < 0; got != c.want {
			t.Errorf("%+v inside: %v", c.at, got)
		}
	}
}

// A cover goes over a pin that is pressed in before it, unless the pin's collar
// is wider than its bore: 15.04 over the block, and 20 long.
func TestWays(t *testing.T) {
	t.Parallel()
	pin := func(collar string) string {
		return "part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 65 mm, length: 140 mm}\nprofile:\n  outside:\n" +
			"    - {name: collar, diameter: " + collar + ", length: 20}\n    - {name: neck, diameter: 42, length: 15.04}\n    - {name: seat, diameter: 40, fit: {limits: [40.043, 40.059]}, length: 40}\n"
	}
	block := "part: block\nkind: bearing-housing\nmaterial: S355\nstock: {round: 160 mm, length: 50 mm}\nprofile:\n" +
		"  outside:\n    - {name: body, diameter: 150, length: 40}\n  inside:\n    - {name: bore, diameter: 40, fit: H7, length: 40}\n" +
		"holes:\n  - {name: taps, circle: {pcd: 120, count: 4}, size: M10 tap, depth: 25 mm}\n"
	cover := "part: cover\nkind: flange\nmaterial: S355\nstock: {plate: 10 mm}\noutline: {circle: 150}\nbore: {diameter: 45}\nholes:\n  - {name: bolts, circle: {pcd: 120, count: 4}, size: M10 clearance}\n"
	job := "job: Ways\nunits: mm\nparts: [pin.yaml, block.yaml, cover.yaml]\njoints:\n" +
		"  - {name: pin, press: {shaft: pin.seat, bore: block.bore, method: heat}, level: back-with-back}\n" +
		"  - {name: cover, bolt: {through: cover.bolts, into: block.taps, bolt: M10 8.8}, face: back-on-front"
	for _, c := range []struct{ name, collar, rest, want string }{
		{"a collar that goes through", "44", ", after: pin}\n", ""},
		{"a wide collar", "60", ", after: pin}\n", "path-blocked cover pin 35"},
		{"a wide collar after the cover", "60", ", before: pin}\n", ""},
	} {
		m, pl := load(t, write(t, map[string]string{"pin.yaml": pin(c.collar), "block.yaml": block, "cover.yaml": cover, "job.yaml": job + c.rest}))
		if got := argued(m); got != c.want || len(pl.Faults) > 0 {
			t.Errorf("%s: %q, want %q, %v", c.name, argued(m), c.want, pl.Faults)
		}
	}
}

// A screw M10 × 20 with a head of 6.4 needs 26.4 to come out of its hole: a lip
// 23 mm above its seat is in its way, one at 27 is not.
func TestScrewsGoIn(t *testing.T) {
	t.Parallel()
	block := "part: block\nkind: flange\nmaterial: S355\nstock: {plate: 60 mm}\noutline: {circle: 200}\nholes:\n  - {name: taps, circle: {pcd: 140, count: 4}, size: M10 tap, depth: through}\n"
	for _, c := range []struct {
		total, room, want string
	}{{"43", "23", "path-blocked drum screw 1 drum 20"}, {"47", "27", ""}} {
		drum := "part: drum\nkind: bearing-housing\nmaterial: S355\nstock: {round: 210 mm, length: 100 mm}\nprofile:\n" +
			"  outside:\n    - {name: body, diameter: 200, length: " + c.total + "}\n" +
			"  inside:\n    - {name: lip, diameter: 100, length: 10}\n    - {name: room, diameter: 180, length: " + c.room + "}\n    - {name: floor, diameter: 60, length: 10}\n" +
			"holes:\n  - {name: bolts, face: back, circle: {pcd: 140, count: 4}, size: M10 clearance}\n"
		m, pl := load(t, write(t, map[string]string{"drum.yaml": drum, "block.yaml": block, "job.yaml": "job: Drum\nunits: mm\nparts: [drum.yaml, block.yaml]\njoints:\n" +
			"  - {name: drum, bolt: {through: drum.bolts, into: block.taps, bolt: M10 8.8}, face: back-on-front}\n"}))
		if pl.Joints[0].Bolt.LengthMm != 20 || len(m.Bodies) != 6 {
			t.Fatalf("bolt of %g, %d bodies", pl.Joints[0].Bolt.LengthMm, len(m.Bodies))
		}
		if got := argued(m); got != c.want {
			t.Errorf("room of %s: %q, want %q", c.room, got, c.want)
		}
	}
}

// Where the axis of an oblique, offset branch goes through the outside of its main is
// what its sheets call the origin: R = 100, offset 50, 30 degrees round from the place
// that is said, to the right of who looks at it with the acute side up.
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
	} {
		m, pl := load(t, write(t, map[string]string{
			"job.yaml":    "job: Branch\nunits: mm\nparts: [main.yaml, branch.yaml]\njoints:\n  - {name: weld, weld: {part: branch.outside, to: main.hole, type: fillet, process: MAG}}\n",
			"main.yaml":   "part: main\nkind: tube\nquantity: 1\nmaterial: S235\ntube: {outside: 200, wall: 5, length: 600}\nradial: [{name: hole, clock: 90, axial: 300, size: 40}]\n",
			"branch.yaml": "part: branch\nkind: tube\nquantity: 1\nmaterial: S235\ntube: {outside: 60, wall: 3, length: 400}\nends: {back: {onto: main.outside, " + c.end + "}}\n",
		}))
		for _, p := range m.Problems { // the cut end lies on the main, not in it
			if p.Kind != plan.PartsFloat && p.Kind != plan.WouldTip {
				t.Errorf("%s: %s %s", c.end, p.Kind, p.What)
			}
		}
		main, pose := body(t, m, "main#1").Pose, body(t, m, "branch#1").Pose
		rel := main.Inverse().Of(pose)
		// Along the branch's axis from outside the main to its surface.
		step := rel.Z.Times(-1)
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

// A port in a spigot is closed by the ring that it goes into, and free above it.
func TestCoveredOpening(t *testing.T) {
	t.Parallel()
	ring := "part: ring\nkind: flange\nmaterial: S355\nstock: {plate: 20 mm}\noutline: {circle: 150}\nbore: {diameter: 80.5}\nholes:\n  - {name: taps, circle: {pcd: 110, count: 4}, size: M8 tap, depth: through}\n"
	for axial, want := range map[string]string{"30": "opening-covered port plug ring 0.1", "50": "", "10": ""} {
		plug := "part: plug\nkind: bearing-housing\nmaterial: S355\nstock: {round: 150 mm, length: 70 mm}\nprofile:\n" +
			"  outside:\n    - {name: head, diameter: 140, length: 20}\n    - {name: spigot, diameter: 80, length: 40}\n  inside:\n    - {name: bore, diameter: 50, length: 60}\n" +
			"holes:\n  - {name: screws, circle: {pcd: 110, count: 4}, size: M8 clearance}\nradial:\n  - {name: port, clock: 45, axial: " + axial + ", from: front, size: 8 mm, depth: through}\n"
		m, _ := load(t, write(t, map[string]string{"plug.yaml": plug, "ring.yaml": ring, "job.yaml": "job: Plug\nunits: mm\nparts: [plug.yaml, ring.yaml]\njoints:\n" +
			"  - {name: plug, bolt: {through: plug.screws, into: ring.taps, bolt: M8 8.8}, face: back-on-front}\n"}))
		if got := argued(m); got != want {
			t.Errorf("%s: %q, want %q", axial, got, want)
		}
	}
}
