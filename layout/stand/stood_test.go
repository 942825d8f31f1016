package stand_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// A spindle with its driven end 14 before its flange, and a plate of 20 on that: the face of the
// plate that looks out lies at 6, the shoulder of the driven end at −14.
var motorParts = map[string]string{
	"spindle.yaml": "part: spindle\ntitle: Spindle\nkind: turned\nmaterial: C45\nstock: {round: 510 mm, length: 90 mm}\nprofile:\n  outside:\n    - {name: drive, diameter: 38, length: 14}\n    - {name: flange, diameter: 500, length: 20}\nholes:\n  - {name: taps, face: front, circle: {pcd: 460, count: 4, first: 45}, size: M10 tap}\n",
	"adapter.yaml": "part: adapter\ntitle: Adapter\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [500, 500]}\nbore: {diameter: 230 mm, fit: H7}\nholes:\n  - {name: motor, face: front, circle: {pcd: 265, count: 4, first: 45}, size: 14.5 mm}\n  - {name: screws, face: front, circle: {pcd: 460, count: 4, first: 45}, size: M10 clearance}\n  - {name: lid, face: front, circle: {pcd: 370, count: 4, first: 0}, size: M8 tap}\n",
	"cup.yaml":     "part: cup\ntitle: Cup\nkind: turned\nmaterial: S235\nstock: {round: 410 mm, length: 310 mm}\nprofile:\n  outside: [{name: body, diameter: 340, length: 280}, {name: flange, diameter: 400, length: 20}]\n  inside: [{name: mouth, diameter: 100, length: 20}, {name: room, diameter: 310, length: 280}]\nholes:\n  - {name: screws, face: front, circle: {pcd: 370, count: 4, first: 0}, size: M8 clearance}\n",
}

// motorJob stands a motor on the plate, with more of its place, more on its plate and more
// loose things.
func motorJob(stands, plate, after string, more ...string) map[string]string {
	job := "job: J\nunits: mm\nparts: [spindle.yaml, adapter.yaml, cup.yaml]\njoints:\n" +
		"  - {name: plate, bolt: {through: adapter.screws, into: spindle.taps, bolt: M10 8.8}, face: back-on-front}\n" +
		"  - {name: lid, bolt: {through: cup.screws, into: adapter.lid, bolt: M8 8.8}, face: back-on-front}\n" +
		"loose:\n  - {item: \"gear motor, 2 kW\", how: on its flange, " + after + ", kg: 48, stands: {on: adapter.motor" + stands + "}}\n" + strings.Join(more, "") +
		"motor: {kw: 2.2, volts: 400, phases: 3, speed: 1430, frame: 100L" + plate + ", rotation: clockwise, seen-from: drive-end, earth: foot, emergency-stop: front, drives: spindle.drive}\n"
	files := map[string]string{"job.yaml": job}
	for name, text := range motorParts {
		files[name] = text
	}
	return files
}

// A motor stands on the face away from the end that it drives, with one that turns both ends to
// one side on the other: its flange and spigot by IEC 60072-1 for 265 and 230 (300 outside, 4
// high), its shaft by frame 100 (28 × 60) where no gear is between, its body as the job says.
func TestMotorStands(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		stands, plate string
		out           float64 // way of its axis
		low, high     float64 // along it, from the plate's face
		radius        [3]float64
		known         bool
	}{
		"by its standard":       {"", "", 1, -60, 10, [3]float64{14, 115, 150}, false},
		"with its body":         {", diameter: 220, length: 250", "", 1, -60, 250, [3]float64{14, 115, 110}, true},
		"no length":             {", diameter: 220", "", 1, -60, 10, [3]float64{14, 115, 150}, false},
		"as long as its flange": {", diameter: 320, length: 10", "", 1, -60, 10, [3]float64{14, 115, 150}, true},
		"a wide body":           {", diameter: 306, length: 250", "", 1, -60, 250, [3]float64{14, 115, 153}, true},
		"its own flange":        {", flange: 250, length: 250", "", 1, -60, 10, [3]float64{14, 115, 125}, false},
		"with a gear":           {", diameter: 220, length: 250", ", output-speed: 30", 1, -4, 250, [3]float64{0, 115, 110}, true},
		"its own shaft":         {", shaft: 50, shaft-length: 100", ", output-speed: 30", 1, -100, 10, [3]float64{25, 115, 150}, false},
		"on the back":           {", face: back", "", -1, -60, 10, [3]float64{14, 115, 150}, false},
		"on the front":          {", face: front", ", through: belt", 1, -60, 10, [3]float64{14, 115, 150}, false},
		"beside":                {"", ", through: belt", -1, -60, 10, [3]float64{14, 115, 150}, false},
	} {
		m, _ := stood(t, write(t, motorJob(c.stands, c.plate, "after: lid, first: yes")))
		b := body(t, m, "Gear motor")
		at := func(r, along float64) float64 { // the sign is exact
			z := 6 + along
			if c.out < 0 {
				z = -14 - along
			}
			return b.Dist(assembly.Vec{X: r, Z: z})
		}
		box, face := b.Box(), 6.0
		low, high := face+c.low, face+c.high
		if c.out < 0 {
			face = -14
			low, high = face-c.high, face-c.low
		}
		if math.Abs(box.Low.Z-low) > 1e-6 || math.Abs(box.High.Z-high) > 1e-6 {
			t.Errorf("%s: from %v to %v, want %v to %v", name, box.Low.Z, box.High.Z, low, high)
		}
		for i, along := range []float64{c.low + 0.1, -2, c.high - 0.1} {
			if r := c.radius[i]; r > 0 && (at(r-0.1, along) > 0 || at(r+0.1, along) < 0) {
				t.Errorf("%s: no %v across at %v: %v, %v", name, 2*r, along, at(r-0.1, along), at(r+0.1, along))
			}
		}
		if kg, _, _ := b.Mass(); kg != 48 {
			t.Errorf("%s: %v kg", name, kg)
		}
		unknown := slices.ContainsFunc(m.Problems, func(p plan.Problem) bool { return p.Kind == plan.BodyUnknown && p.Args[0].Text == "Gear motor" })
		if unknown == c.known {
			t.Errorf("%s: %+v", name, m.Problems)
		}
	}
}

// The driven end of the spindle looks to the front. A motor beside it on the plate's back has its shaft to the front too,
// one on the front has it to the back; in line it always looks against the end, and nothing is turned over.
func TestOpposed(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		stands, plate string
		want          bool
	}{
		{"", ", through: belt", false}, {", face: back", ", through: belt", false}, {", face: front", ", through: belt", true},
		{", face: front", ", through: gear-pair", true}, {", face: front", "", false}, {", face: back", "", false},
	} {
		m, _ := stood(t, write(t, motorJob(c.stands, c.plate, "after: lid, first: yes")))
		if got := m.Opposed(); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// A motor in line with what it drives: over holes 160 and 40 beside the axis it stands √(160² + 40²) off it; half a millimetre is taken for in line. From the
// shoulder of the drive at −14 a coupling reaches its length, the motor's shaft from the plate's face at 6 its own,
// by half a diameter at least: 10 of 28 across to −4, or 23 of 11 across (ISO/R 775, from memory), by the bores of the coupling, to −17.
func TestMotorInLine(t *testing.T) {
	t.Parallel()
	const coupling = "  - {item: \"coupling%s\", how: on both shafts, after: plate, kg: 5, stands: {on: spindle.drive, diameter: 60, length: %s}}\n"
	for _, c := range []struct {
		stands, plate, bores, length, want string
	}{
		{"", "", "", "20", ""},
		{"-own, diameter: 60", "", "", "20", "motor-beside 164.92"},
		{"-own, diameter: 60", ", through: belt", "", "20", ""},
		{"-near, diameter: 60", "", "", "20", ""},
		{"-off, diameter: 60", "", "", "20", "motor-beside 0.52"},
		{", shaft: 28, shaft-length: 10", "", "", "23.6", ""},
		{", shaft: 28, shaft-length: 10", "", "", "20", "coupling-short 4"},
		{", shaft: 28, shaft-length: 10", "", ", bores 38 and 11", "20", "coupling-short 4"}, // its shaft is known
		{"", ", output-speed: 30", "", "1", ""},
		{"", ", output-speed: 30", ", bores 38 and 11", "1", "coupling-short 1.5"},
		{"", ", output-speed: 30", ", bores 38 and 11", "2.5", ""},
	} {
		files := motorJob(c.stands, c.plate, "after: lid, first: yes", fmt.Sprintf(coupling, c.bores, c.length))
		files["adapter.yaml"] += "  - {name: motor-own, face: front, at: [[140, 20], [180, 20], [160, 80]], size: 9 mm}\n  - {name: motor-near, face: front, at: [[145.49, 0], [-144.51, 0]], size: 9 mm}\n  - {name: motor-off, face: front, at: [[0, 145.52], [0, -144.48]], size: 9 mm}\n"
		m, _ := stood(t, write(t, files))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.MotorBeside || p.Kind == plan.CouplingShort {
				got = fmt.Sprintf("%s %.5g", p.Kind, p.Args[2].Value)
			}
		}
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
	// Nothing says where the plate stands from the shaft: nor does the motor stand beside it by so much.
	files := motorJob("", "", "after: lid")
	files["job.yaml"] = strings.NewReplacer("cup.yaml]", "cup.yaml, ring.yaml]", "{name: plate, bolt: {through: adapter.screws, into: spindle.taps, bolt: M10 8.8}, face: back-on-front}", "{name: ring, weld: {part: ring.outline, to: spindle.flange, type: fillet, size: 4}, place: {on: back, with: front, at: [0, 0], top: up}}").Replace(files["job.yaml"])
	files["ring.yaml"] = "part: ring\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {circle: 300}\n"
	if got := found(t, files, plan.MotorBeside); got != "" {
		t.Errorf("untied: %q", got)
	}
}

// Without a motor that drives, one stands on the face that its place says; where none is said nothing tells.
func TestMotorOfNoDrive(t *testing.T) {
	t.Parallel()
	for face, stands := range map[string]bool{"": false, ", face: front": true} {
		files := motorJob(face, "", "after: lid, first: yes")
		files["job.yaml"], _, _ = strings.Cut(files["job.yaml"], "motor: ")
		m, _ := stood(t, write(t, files))
		if slices.ContainsFunc(m.Bodies, func(b assembly.Body) bool { return b.ID == "Gear motor" }) != stands {
			t.Errorf("%q: stands %v", face, !stands)
		}
	}
}

// On a turned adapter a motor stands on the face that its holes are in: the flange of FF165 (IEC 60072-1, from
// memory: 200 across, a spigot of 130 and 3.5 high) on the back of its rim, at −22, the spigot in a register 5 deep.
func TestMotorOnTurned(t *testing.T) {
	t.Parallel()
	files := motorJob(", face: back, length: 300, diameter: 170", ", output-speed: 30", "after: lid")
	files["adapter.yaml"] = "part: adapter\ntitle: Adapter\nkind: turned\nmaterial: S235\nstock: {round: 510 mm, length: 30 mm}\nprofile:\n  outside: [{name: rim, diameter: 500, length: 22}]\n  inside: [{name: clear, diameter: 100, length: 17}, {name: register, diameter: 130, fit: H8, length: 5}]\n" +
		"holes:\n  - {name: motor, face: back, circle: {pcd: 165, count: 4, first: 45}, size: M10 tap}\n  - {name: screws, face: front, circle: {pcd: 460, count: 4, first: 45}, size: M10 clearance}\n  - {name: lid, face: front, circle: {pcd: 370, count: 4, first: 0}, size: M8 tap}\n"
	m, _ := stood(t, write(t, files))
	b := body(t, m, "Gear motor")
	plate := m.Bodies[slices.IndexFunc(m.Bodies, func(b assembly.Body) bool { return strings.HasPrefix(b.ID, "adapter") })]
	at := func(r, along float64) float64 { // from the back of the rim outward
		return b.Dist(plate.Pose.Apply(assembly.Vec{X: r, Z: -22 - along}))
	}
	for _, in := range [][2]float64{{99, 5}, {64, -3}, {84, 299}} {
		if at(in[0], in[1]) > 0 || at(in[0]+2, in[1]) < 0 {
			t.Errorf("at %v: %v, %v", in, at(in[0], in[1]), at(in[0]+2, in[1]))
		}
	}
}

// On holes that are no standard flange's a motor stands over their middle; one of which nothing is known,
// and a coupling no wider than its step or of no length, stand nowhere.
func TestMotorOverItsHoles(t *testing.T) {
	t.Parallel()
	const coupling = "  - {item: coupling, how: on both shafts, after: plate, kg: 5, stands: {on: spindle.drive%s}}\n"
	for _, c := range [][3]string{{", flange: 60, length: 250", ", diameter: 38.1, length: 14", "Gear motor, Coupling"}, {"", ", diameter: 38, length: 14", ""}, {", diameter: 60", ", diameter: 60", ""}} {
		files := motorJob("-own"+c[0], ", output-speed: 30", "after: lid, first: yes", fmt.Sprintf(coupling, c[1]))
		files["adapter.yaml"] += "  - {name: motor-own, face: front, at: [[140, 20], [180, 20], [160, 80]], size: 9 mm}\n"
		m, _ := stood(t, write(t, files))
		if c[0] == ", flange: 60, length: 250" {
			boxed(t, m, "Gear motor", assembly.Vec{X: 130, Y: 10, Z: 6}, assembly.Vec{X: 190, Y: 70, Z: 16})
		}
		var stand []string
		for _, b := range m.Bodies {
			if b.ID == "Gear motor" || b.ID == "Coupling" {
				stand = append(stand, b.ID)
			}
		}
		if got := strings.Join(stand, ", "); got != c[2] {
			t.Errorf("%q: %q, want %q", c, got, c[2])
		}
	}
}

// A nut M16 (ISO 4032: 14.8 high) on a washer (ISO 7089: 30 across, 3 thick) stands on both ends of
// the mill's four pillars, behind the motor adapter and before the housing plate, 174 from the axis at 45°.
func TestNutsOfStuds(t *testing.T) {
	t.Parallel()
	m, _ := load(t, "../../testdata/pugmill/job.yaml")
	back, front, out := body(t, m, "motor-adapter#1").Box().Low.Z, body(t, m, "housing-plate#1").Box().High.Z, 174/math.Sqrt2
	for n, at := range [][2]float64{{out, out}, {out, -out}, {-out, -out}, {-out, out}} {
		boxed(t, m, fmt.Sprintf("motor nut %d", n+1), assembly.Vec{X: at[0] - 15, Y: at[1] - 15, Z: back - 17.8}, assembly.Vec{X: at[0] + 15, Y: at[1] + 15, Z: back})
		boxed(t, m, fmt.Sprintf("motor nut %d", n+5), assembly.Vec{X: at[0] - 15, Y: at[1] - 15, Z: front}, assembly.Vec{X: at[0] + 15, Y: at[1] + 15, Z: front + 17.8})
	}
	if slices.ContainsFunc(m.Bodies, func(b assembly.Body) bool { return b.ID == "motor nut 9" }) {
		t.Error("more nuts than ends of pillars")
	}
}

// What is bought and round takes room: a motor whose shaft meets the spindle, and one that has to
// come through a cup that is on already, but not one over which the cup comes. A coupling sits
// on the driven end from its shoulder outward, bored for the motor's shaft from there on: it lies
// over that and in nothing else of the motor.
func TestMotorTakesRoom(t *testing.T) {
	t.Parallel()
	const coupling = "  - {item: \"coupling, small\", how: on both shafts, after: plate, kg: 5, stands: {on: spindle.drive, diameter: %s, length: %s}}\n"
	for name, c := range map[string]struct {
		stands, after, more string
		want                []string
	}{
		"free":              {", diameter: 220, length: 250, shaft: 20, shaft-length: 5", "after: lid, first: yes", "", nil},
		"through the cup":   {", diameter: 220, length: 250, shaft: 20, shaft-length: 5", "after: lid", "", []string{"path-blocked Gear motor Cup"}},
		"on the spindle":    {", diameter: 220, length: 250, shaft: 20, shaft-length: 80", "after: lid, first: yes", "", []string{"parts-overlap Spindle Gear motor"}},
		"in the cup":        {", diameter: 316, length: 250, shaft: 20, shaft-length: 5", "after: lid, first: yes", "", []string{"parts-overlap Cup Gear motor"}},
		"with a coupling":   {", diameter: 220, length: 250, shaft: 50, shaft-length: 5", "after: lid, first: yes", fmt.Sprintf(coupling, "80", "15.8"), nil},
		"into the motor":    {", diameter: 220, length: 250, shaft: 50, shaft-length: 5", "after: lid, first: yes", fmt.Sprintf(coupling, "80", "70"), []string{"parts-overlap Gear motor Coupling"}},
		"a coupling in all": {", diameter: 220, length: 250, shaft: 50, shaft-length: 5", "after: lid, first: yes", fmt.Sprintf(coupling, "240", "15.8"), []string{"parts-overlap Adapter Coupling"}},
		"it is taken off":   {", diameter: 316, length: 250, shaft: 20, shaft-length: 80", "after: lid, off: yes", "", nil},
	} {
		m, _ := load(t, write(t, motorJob(c.stands, ", output-speed: 30", c.after, c.more)))
		var got []string
		for _, p := range m.Problems {
			if p.Kind == plan.PartsOverlap || p.Kind == plan.PathBlocked {
				got = append(got, fmt.Sprint(p.Kind, " ", p.Args[0].Text, " ", p.Args[1].Text))
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
		if c.more != "" {
			box := body(t, m, "Coupling").Solid.Box()
			boxed(t, m, "Coupling", assembly.Vec{X: -box.High.X, Y: -box.High.X, Z: -14}, assembly.Vec{X: box.High.X, Y: box.High.X, Z: box.High.Z - 14})
			if b := body(t, m, "Coupling"); b.Dist(assembly.Vec{X: 18.9, Z: -10}) < 0 || b.Dist(assembly.Vec{X: 19.1, Z: -10}) > 0 {
				t.Error("the coupling is not bored for the step")
			}
			// Beyond the end of the shaft, at 0, it is bored 50 for the motor's; it is as wide as the job says.
			for x, metal := range map[float64]bool{24.9: false, 25.1: true, box.High.X - 0.1: true, box.High.X + 0.1: false} {
				if d := body(t, m, "Coupling").Dist(assembly.Vec{X: x, Z: 1}); d < 0 != metal {
					t.Errorf("%s: %g off the axis, before the shaft: %g", name, x, d)
				}
			}
			if want := map[bool]float64{true: 120, false: 40}[strings.Contains(c.more, "240")]; math.Abs(box.High.X-want) > 1e-9 {
				t.Errorf("%s: the coupling is %g wide", name, 2*box.High.X)
			}
		}
	}
}

// What stands has the numbers after the parts: in the arrangement, where things that
// stand nowhere and stay are named, and as what is new in the picture of its step.
func TestMotorIsDrawn(t *testing.T) {
	t.Parallel()
	m, pl := load(t, write(t, motorJob(", diameter: 220, length: 250", ", output-speed: 30", "after: lid, first: yes",
		"  - {item: \"gear motor, spare\", how: on it, after: plate, kg: 5, stands: {on: spindle.drive, diameter: 80, length: 70}}\n",
		"  - {item: \"heater, 2 kg\", how: on it, after: plate, kg: 2}\n", "  - {item: lamp, how: on it, after: plate}\n", "  - {item: shackle, how: to lift it, after: plate, off: yes}\n")))
	all := picture.Draw(m)
	if want := []string{"Gear motor", "Gear motor 2"}; !slices.Equal(all.Bought, want) || !slices.Equal(all.ByHand, []string{"Heater", "Lamp"}) {
		t.Errorf("%q bought, %q by hand", all.Bought, all.ByHand)
	}
	find := func(shapes []plan.Shape, item int) (out *plan.Shape) {
		for i := range shapes {
			if shapes[i].Item == item {
				out = &shapes[i]
			}
		}
		return out
	}
	for item, title := range map[int]string{4: "Gear motor", 5: "Gear motor 2"} {
		s := find(all.Front.Shapes, item)
		if s == nil || s.Title != title || s.Kind != plan.ShapeScrew {
			t.Fatalf("item %d: %+v", item, s)
		}
		if in := find(pl.Joints[1].Pictures[0].Shapes, item); in == nil || in.New != (item == 4) {
			t.Errorf("step 2 shows item %d as %+v", item, in)
		}
	}
	if find(pl.Joints[0].Pictures[0].Shapes, 4) != nil || find(pl.Joints[0].Pictures[0].Shapes, 5) == nil {
		t.Error("step 1 shows the motor, or not what stands with it")
	}
	if all.Front.MaxMm.XMm-all.Front.MinMm.XMm < 320 {
		t.Errorf("%+v wide", all.Front.MaxMm)
	}
}

// A coupling of 60 begins at the shoulder of a step of 38 × 14, and has its bore as far as both go: 38 in a wall of 11. What is
// longer than the step is bored for the motor's shaft beyond it, which is no thicker where none is known; of one that would be bored away
// only what is on the step is known.
func TestCouplingBore(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		long, ends float64
		shaft      string
	}{{5, 5, ""}, {14, 14, ""}, {20, 20, ""}, {20, 14, ", shaft: 60"}} {
		long := c.ends
		m, _ := stood(t, write(t, motorJob(", diameter: 220, length: 250"+c.shaft, ", output-speed: 30", "after: lid, first: yes",
			fmt.Sprintf("  - {item: coupling, how: on both shafts, after: plate, kg: 5, stands: {on: spindle.drive, diameter: 60, length: %g}}\n", c.long))))
		b := body(t, m, "Coupling")
		boxed(t, m, "Coupling", assembly.Vec{X: -30, Y: -30, Z: -14}, assembly.Vec{X: 30, Y: 30, Z: long - 14})
		for _, z := range []float64{-13.9, long/2 - 14, long - 14.1} {
			for x, metal := range map[float64]bool{18.9: false, 19.1: true, 29.9: true, 30.1: false} {
				if d := b.Dist(assembly.Vec{X: x, Z: z}); d < 0 != metal {
					t.Errorf("%g long, %g off the axis at %g: %g", long, x, z, d)
				}
			}
		}
	}
}
