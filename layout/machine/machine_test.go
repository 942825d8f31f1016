package machine_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

func TestGateJackGoesTogether(t *testing.T) {
	t.Parallel()
	m, _ := load(t, "../../testdata/gatejack/job.yaml")
	for _, p := range m.Problems {
		t.Errorf("%s: %s", p.Kind, p.What)
	}
	if len(m.Bodies) != 57 || len(m.Floating) != 0 {
		t.Errorf("%d bodies, %v float", len(m.Bodies), m.Floating)
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
	// Where nothing has a place, nothing floats.
	files := map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1), "lid.yaml": plate("lid"), "job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + ribWeld + "}\n"}
	if got := found(t, files, plan.PartsFloat); got != "" {
		t.Errorf("nothing stands: %q", got)
	}
}

// A post of 900 × 300 × 60 whose middle stands 150 mm off the end of a base of
// 400 × 200 × 20: the common centre lies at 350 × 127.17 / 139.73 from the
// base's middle. Anchored before the step that would tip it, it stands; half a millimetre off the edge it tips or does not.
func TestTips(t *testing.T) {
	t.Parallel()
	post := "part: post\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {rectangle: [900, 300]}\n"
	for left, beyond := range map[string]float64{"-600": 118.5, "-469.2": 0, "-470.3": 0.5, "-250": 0, "-600, anchored: base": 0, "-600, anchored: post": 0} {
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

// The same post tips the base at its own step, whatever a second one on its other side weighs later; where a joint of the base
// is not worked out, a bolt through three holes into two, nobody knows what stands there.
func TestTipsAtItsStep(t *testing.T) {
	t.Parallel()
	weld := func(n, left, bottom string) string {
		return "  - {name: post-" + n + ", weld: {part: post#" + n + ".outline, to: base.outline, type: fillet, length: 60}, place: {on: front, with: bottom, from-left: " + left + ", from-bottom: " + bottom + ", front: down}}\n"
	}
	for _, c := range []struct{ second, lid, want string }{
		{"", "", "would-tip base 118.6"}, {weld("2", "100", "130"), "", "would-tip base 118.6"},
		{"", "[[0, 0], [20, 0], [0, 20]]", ""}, {"", "[[0, 0], [20, 0]]", "would-tip base 118.6"},
	} {
		lid := ""
		if c.lid != "" {
			lid = "  - {name: lid, bolt: {through: lid.h, into: base.h, bolt: M8 8.8}, face: back-on-front}\n"
		}
		got := found(t, map[string]string{
			"base.yaml": basePart + "holes:\n  - {name: h, at: [[-150, -80], [-130, -80]], size: M8 tap}\n", "post.yaml": "part: post\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {rectangle: [900, 300]}\n",
			"lid.yaml": "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {square: 50}\nholes:\n  - {name: h, at: " + cmp.Or(c.lid, "[[0, 0]]") + ", size: M8 clearance}\n",
			"job.yaml": "job: Post\nunits: mm\nparts: [post.yaml, base.yaml, lid.yaml]\njoints:\n" + weld("1", "-600", "70") + c.second + lid}, plan.WouldTip)
		if got != c.want && (c.want == "" || !strings.HasPrefix(got, c.want+" 139.7")) {
			t.Errorf("%+v: %q", c, got)
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
		{"30", "", ""}, {"0.9", "", ""}, {"-0.9", "", ""}, {"-1.1", "", "seam-beyond [100 rib 98.9]"},
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
		{"a wide collar", "60", ", after: pin}\n", "path-blocked cover pin 35 without after: pin at cover"},
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
	}{{"43", "23", "path-blocked drum screw 1 drum 20 another order of the joints"}, {"47", "27", ""}} {
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

// A port in a spigot is closed by the ring that it goes into, and free above it: of one of 8 whose middle lies 1.2 beyond the end
// of the ring three tenths and more are closed, of 1.6 a quarter. A guard is there to cover it.
func TestCoveredOpening(t *testing.T) {
	t.Parallel()
	ring := "part: ring\nkind: flange\nmaterial: S355\nstock: {plate: 20 mm}\noutline: {circle: 150}\nbore: {diameter: 80.5}\nholes:\n  - {name: taps, circle: {pcd: 110, count: 4}, size: M8 tap, depth: through}\n"
	for axial, want := range map[string]string{"30": "opening-covered port plug ring 0.1", "30.1": "", "41.2": "opening-covered port plug ring 0.1", "41.6": "", "50": "", "10": ""} {
		plug := "part: plug\nkind: bearing-housing\nmaterial: S355\nstock: {round: 150 mm, length: 70 mm}\nprofile:\n" +
			"  outside:\n    - {name: head, diameter: 140, length: 20}\n    - {name: spigot, diameter: 80, length: 40}\n  inside:\n    - {name: bore, diameter: 50, length: 60}\n" +
			"holes:\n  - {name: screws, circle: {pcd: 110, count: 4}, size: M8 clearance}\nradial:\n  - {name: port, clock: 45, axial: " + axial + ", from: front, size: 8 mm, depth: through}\n"
		ring := ring + words.When(axial == "30.1", "for: guard\n")
		m, _ := load(t, write(t, map[string]string{"plug.yaml": plug, "ring.yaml": ring, "job.yaml": "job: Plug\nunits: mm\nparts: [plug.yaml, ring.yaml]\njoints:\n" +
			"  - {name: plug, bolt: {through: plug.screws, into: ring.taps, bolt: M8 8.8}, face: back-on-front}\n"}))
		if got := argued(m); got != want {
			t.Errorf("%s: %q, want %q", axial, got, want)
		}
	}
}

// A rib that a weld names without its place, from either side, lacks it, and with a lid on it the two stand by themselves: nothing
// else is found of them, by whatever looks at welds, seats, bars and loose parts.
func TestNoPlace(t *testing.T) {
	t.Parallel()
	const lid = "loose:\n  - {part: lid, how: laid on, after: second, lies: [{on: %s, with: back, at: [40, 20]}]}\n"
	for _, c := range []struct{ second, rib, lies, want string }{
		{"rib#2.outline, to: base.outline, type: fillet, size: 4, length: 100, sides: 2", ribPart, "rib#2.front", "weld-unplaced rib 2 base 0"},
		{"base.outline, to: rib#2.outline, type: fillet, size: 4, length: 100, sides: 2", ribPart, "rib#2.front", "weld-unplaced base rib 2 0"},
		{"rib#2.outline, to: base.outline, type: fillet, size: 4, length: 100, sides: 2", ribPart, "rib#1.front", "place-lacking rib 2 base"},
		{"base.outline, to: rib#2.outline, type: fillet, size: 4, length: 100, sides: 2", ribPart, "rib#1.front", "place-lacking base rib 2"},
		{"rib#2.left, to: base.outline, type: fillet, size: 4, length: 60", "part: rib\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {flat: [60, 10], length: 100}\n", "rib#2.front", "weld-unplaced rib 2 base 0"},
	} {
		first := "rib#1.outline"
		if strings.Contains(c.rib, "bar") {
			first = "rib#1.left"
		}
		got := found(t, map[string]string{"base.yaml": basePart, "rib.yaml": c.rib, "lid.yaml": "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {rectangle: [20, 10]}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + "  - {name: first, weld: {part: " + first + ", to: base.outline, type: fillet, size: 4}, place: {on: front, with: " + map[bool]string{true: "left", false: "bottom"}[first == "rib#1.left"] + ", from-left: 30, from-bottom: 20, front: down}}\n" +
				"  - {name: second, weld: {part: " + c.second + "}, after: first}\n" + fmt.Sprintf(lid, c.lies)})
		if got != c.want {
			t.Errorf("%s, lid on %s: %q, want %q", c.second, c.lies, got, c.want)
		}
	}
}
