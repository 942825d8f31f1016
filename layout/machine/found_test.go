package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// The foot of a rib of 100 whose weld has no length said reaches over the edge of its plate by
// 5 or more, with 70 of it on the plate; one by less is a rounded corner's, and of one with
// less on it that is said.
func TestFootBeyond(t *testing.T) {
	t.Parallel()
	for left, want := range map[string]string{
		"0": "", "-4.9": "", "-5": "foot-beyond rib base 5", "-29.04": "foot-beyond rib base 29", "-31": "overhangs rib base 31", "305.1": "foot-beyond rib base 5.1", "304.9": "", "330.5": "overhangs rib base 30.5",
	} {
		for _, on := range []string{"front", "back"} {
			files := map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
				"job.yaml": ribJob + strings.Replace(ribWeld, ", length: 100", "", 1) + ", place: {on: " + on + ", with: bottom, from-left: " + left + ", from-bottom: 20, front: down}}\n"}
			if got := found(t, files, plan.FootBeyond, plan.Overhangs); got != want {
				t.Errorf("%s from the left on the %s: %q, want %q", left, on, got, want)
			}
		}
	}
	for bottom, want := range map[string]string{"-4.9": "", "-5": "foot-beyond rib base 5", "104.9": "", "105": "foot-beyond rib base 5", "-31": "overhangs rib base 31", "131": "overhangs rib base 31"} { // it stands along the plate's height
		files := map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"job.yaml": ribJob + strings.Replace(ribWeld, ", length: 100", "", 1) + ", place: {on: front, with: bottom, from-left: 20, from-bottom: " + bottom + ", front: right}}\n"}
		if got := found(t, files, plan.FootBeyond, plan.Overhangs); got != want {
			t.Errorf("%s from the bottom: %q, want %q", bottom, got, want)
		}
	}
	// One that lies flat has no foot.
	flat := map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1), "job.yaml": ribJob + strings.Replace(ribWeld, ", length: 100", "", 1) + ", place: {on: front, with: back, at: [120, 20], top: up}}\n"}
	if got := found(t, flat, plan.FootBeyond); got != "" {
		t.Errorf("flat: %q", got)
	}
	// Along an edge whose corner is rounded by 60 its foot of 10 has nothing under it as
	// far as 60 less √(60² − (60 − y)²), which from y 0 to 10 is 37.5 on the average, less the 15 that it stands in.
	for _, on := range []string{"front", "back"} {
		round := map[string]string{"base.yaml": strings.Replace(basePart, "rectangle: [400, 200]", "rectangle: [400, 200], corner: 60", 1), "rib.yaml": flat["rib.yaml"], "job.yaml": strings.Replace(flat["job.yaml"], "on: front, with: back, at: [120, 20], top: up", "on: "+on+", with: bottom, from-left: 15, from-bottom: 0, front: down", 1)}
		if got := found(t, round, plan.FootBeyond); got != "foot-beyond rib base 22.4" {
			t.Errorf("round on the %s: %q", on, got)
		}
	}
	// A square post of 50, its middle 0.4 over the line of a corner cut off by 200, has half its foot in the air; further in it has a sixth there, of which nobody asks.
	for at, want := range map[string]string{"100.4, 25": "overhangs post base 25.4", "90, 15": ""} {
		files := map[string]string{"base.yaml": strings.Replace(basePart, "rectangle: [400, 200]", "polygon: {points: [[-200, -100], [200, -100], [0, 100], [-200, 100]]}", 1), "post.yaml": "part: post\nkind: bar\nmaterial: S235\nbar: {square: 50, length: 300}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, post.yaml]\njoints:\n  - {name: w, weld: {part: post.left, to: base.outline, type: fillet, size: 4, length: 100}, place: {on: front, with: left, at: [" + at + "], front: up}}\n"}
		if got := found(t, files, plan.Overhangs); got != want {
			t.Errorf("a post at %s: %q, want %q", at, got, want)
		}
	}
	// Over the corner that a plate does not have a rib stands on nothing, 50 from its edge.
	files := map[string]string{"base.yaml": strings.Replace(basePart, "rectangle: [400, 200]", "polygon: {points: [[0, 0], [400, 0], [400, 100], [200, 100], [200, 200], [0, 200]]}", 1), "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
		"job.yaml": ribJob + ribWeld + ", place: {on: front, with: bottom, from-left: 350, from-bottom: 150, front: down}}\n"}
	if got := found(t, files, plan.FootBeyond, plan.Overhangs, plan.WeldApart); got != "weld-apart rib base 50" {
		t.Errorf("over no corner: %q", got)
	}
}

// A gusset between a base and an upright touches both; off the upright by 6 it is welded to the
// base alone, and another plate there may stand so; one that lies flat there braces nothing.
func TestGussetTouchesBoth(t *testing.T) {
	t.Parallel()
	for left, want := range map[string]string{"110": "", "116": "braces-one gusset base upright 6", "116.04": "braces-one gusset base upright 6", "105": "", "flat": ""} {
		for name, want := range map[string]string{"gusset": want, "fin": ""} {
			if left == "105" { // it lies in the upright, which is said elsewhere
				want = ""
			}
			place := "with: bottom, from-left: " + left + ", from-bottom: 60, front: down"
			if left == "flat" {
				place = "with: back, from-left: 116, from-bottom: 60, top: up"
			}
			files := map[string]string{"base.yaml": basePart, "upright.yaml": strings.NewReplacer("part: rib", "part: upright", "quantity: 2", "quantity: 1").Replace(ribPart),
				name + ".yaml": "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 60]}\n",
				"job.yaml": strings.Replace(ribJob, "rib.yaml", "upright.yaml, "+name+".yaml", 1) + "  - {name: u, weld: {part: upright.outline, to: base.outline, type: fillet, size: 4, length: 100}, place: {on: front, with: bottom, from-left: 100, from-bottom: 20, front: left}}\n" +
					"  - {name: g, weld: {part: " + name + ".outline, to: base.outline, type: fillet, size: 4}, place: {on: front, " + place + "}}\n"}
			if got := found(t, files, plan.BracesOne); got != want {
				t.Errorf("%s %s from the left: %q, want %q", name, left, got, want)
			}
		}
	}
}

// A small plate flat on a large one stands on it, and the large one over no edge of it; with its
// middle on the edge of that it does (by geometry).
func TestSmallPlateOnLarge(t *testing.T) {
	t.Parallel()
	for left, want := range map[string]string{"100": "", "0": "", "-50": "overhangs foot base 50"} {
		files := map[string]string{"base.yaml": basePart, "foot.yaml": "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm, cut: saw}\noutline: {square: 100}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "foot.yaml", 1) + "  - {name: w, weld: {part: foot.outline, to: base.outline, type: fillet, size: 6, length: 80}, place: {on: front, with: back, from-left: " + left + ", from-bottom: 50, top: up}}\n"}
		if got := found(t, files, plan.FootBeyond, plan.Overhangs); got != want {
			t.Errorf("%s from the left: %q, want %q", left, got, want)
		}
	}
	// The large one set on the small one, 300 over its left edge, has its middle 100 off that: it is the one that stands over.
	files := map[string]string{"base.yaml": basePart, "foot.yaml": "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm, cut: saw}\noutline: {square: 100}\n",
		"job.yaml": strings.Replace(ribJob, "rib.yaml", "foot.yaml", 1) + "  - {name: w, weld: {part: base.outline, to: foot.outline, type: fillet, size: 6, length: 80}, place: {on: front, with: back, from-left: -300, from-bottom: -50, top: up}}\n"}
	if got := found(t, files, plan.FootBeyond, plan.Overhangs); got != "overhangs base foot 300" {
		t.Errorf("on the small one: %q", got)
	}
	// 360 over it, its right edge 40 on the foot, 60 of that reach out from under it.
	files["job.yaml"] = strings.Replace(files["job.yaml"], "-300", "-360", 1)
	if got := found(t, files, plan.FootBeyond, plan.Overhangs); got != "overhangs foot base 60; overhangs base foot 360" {
		t.Errorf("on its edge: %q", got)
	}
}

// A plate of 100 that lies flat on a rail of 60, or with both ends on two, lies on most of itself or with its
// middle over them: by 20 at the end of one it does, by 51 not. Flat against the face of a post that stands
// it is held by its seam, with a third of it or more there.
func TestLiesOver(t *testing.T) {
	t.Parallel()
	const lug = "part: lug\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {square: 100}\n"
	const rail = "part: rail\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {flat: [60, 10], length: 300}\n"
	const post = "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 60}\noutline: {rectangle: [200, 300]}\n"
	weld := func(n, a, b, place string) string {
		return "  - {name: " + n + ", weld: {part: " + a + ", to: " + b + ", type: fillet, size: 5, length: 50}, place: {" + place + "}}\n"
	}
	for _, c := range []struct{ on, place, want string }{
		{"rail", "on: front, with: back, at: [0, 0], top: up", ""},
		{"rail", "on: front, with: back, at: [120, 0], top: up", ""},
		{"rail", "on: front, with: back, at: [0, 29], top: up", ""},
		{"rail", "on: front, with: back, at: [0, 31], top: up", "overhangs lug rail 51"},
		{"rails", "on: front, with: back, at: [0, 50], top: up", ""},
		{"post", "on: front, with: back, at: [0, 165], top: up", ""},
		{"post", "on: front, with: back, at: [0, 168], top: up", "overhangs lug post 68"},
	} {
		files := map[string]string{"lug.yaml": lug, "base.yaml": basePart, "rail.yaml": strings.Replace(rail, "quantity: 2", "quantity: 1", 1), "post.yaml": post}
		joints := weld("post", "post.outline", "base.outline", "on: front, with: bottom, from-left: 100, from-bottom: 50, front: down") + weld("lug", "lug.outline", "post.outline", c.place)
		names := "post.yaml, base.yaml, lug.yaml"
		switch c.on {
		case "rail":
			joints, names = weld("lug", "lug.outline", "rail.front", c.place), "rail.yaml, lug.yaml"
		case "rails": // the second 100 above the first, under the other end
			files["rail.yaml"], names = rail, "rail.yaml, lug.yaml"
			joints = weld("lug", "lug.outline", "rail#1.front", c.place) + weld("two", "rail#2.front", "lug.outline", "on: back, with: front, at: [0, 50], top: up")
		}
		files["job.yaml"] = "job: J\nunits: mm\nup: top\nparts: [" + names + "]\njoints:\n" + joints
		if got := found(t, files, plan.Overhangs); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.on, c.place, got, c.want)
		}
	}
}

// Holes that a part is to hang in by their name or note lie over its centre of gravity, one of
// a group at the least: of a plate of 400 × 200 that is in its middle, where TOP is up, and 10
// under the holes' mouths where its front is.
func TestLiftsLow(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ hole, up, want string }{
		{"name: lifting, at: [[0, -40]], size: 20", "", "lifts-low lifting base 40"},
		{"name: lifting, at: [[0, 40]], size: 20", "", ""},
		{"name: lifting, at: [[-50, -40], [50, 40]], size: 20", "", ""},
		{"name: lifting, at: [[-50, -40], [50, -30]], size: 20", "", "lifts-low lifting base 30"},
		{"name: eyebolts, at: [[0, -40]], size: 20", "", "lifts-low eyebolts base 40"},
		{"name: for-shackle, at: [[0, -40]], size: 20", "", "lifts-low for shackle base 40"},
		{"name: ears, at: [[0, -40]], size: 20, note: \"Hoist here\"", "", "lifts-low ears base 40"},
		{"name: uplifts, at: [[0, -40]], size: 20", "", ""},
		{"name: lifting, at: [[0, -0.3]], size: 4", "", ""},
		{"name: lifting, at: [[0, -0.7]], size: 4", "", "lifts-low lifting base 1"},
		{"name: lifting, at: [[0, -40]], size: 20", "front", ""},
		{"name: lifting, face: back, at: [[0, -40]], size: 20, depth: 4", "front", "lifts-low lifting base 10"},
	} {
		job := ribJob
		if c.up != "" {
			job = strings.Replace(job, "units: mm\n", "units: mm\nup: "+c.up+"\n", 1)
		}
		files := map[string]string{"base.yaml": basePart + "holes:\n  - {" + c.hole + "}\n", "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"job.yaml": job + ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n"}
		if got := found(t, files, plan.LiftsLow); got != c.want {
			t.Errorf("%s up %q: %q, want %q", c.hole, c.up, got, c.want)
		}
	}
}

// Eyes of 40 × 40 × 10 with a hole of 16, 0.014 of a base of 400 × 200 × 20 in volume 1.6, have the centre of gravity between them, or
// all lie on one side of it. Two with their left edges at 20 and 80 have their middles at 40 and 100, and the centre at
// (1.6 · 200 + 0.014 · 140)/1.628 = 197.8, and with a block of 0.5 bolted on at 60 at 165; of three the last, at 120 and 65 up, lies 76.9 and 34.7 off the centre. One is nobody's pair, and
// holes for something else lift nothing.
func TestLiftsAside(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ at, want string }{
		{"20, 80", "lifts-aside eye 98"}, {"20, 340", ""}, {"20, 160", "lifts-aside eye 18"}, {"20, 160 with a block", ""}, {"20, 180", ""}, {"20, 60, 100", "lifts-aside eye 84"}, {"20, 60, 340", ""}, {"20", ""},
	} {
		eyes, block, _ := strings.Cut(c.at, " with a ")
		at, joints := strings.Split(eyes, ", "), ""
		for n, left := range at {
			joints += fmt.Sprintf("  - {name: e%d, weld: {part: eye#%d.outline, to: base.outline, type: fillet, size: 3}, place: {on: front, with: bottom, from-left: %s, from-bottom: %d, front: down}}\n", n+1, n+1, left, map[bool]int{true: 60 + 70*(n%2), false: 90}[len(at) > 2])
		}
		files := map[string]string{"base.yaml": basePart, "eye.yaml": fmt.Sprintf("part: eye\nkind: plate\nquantity: %d\nmaterial: S235\nstock: {plate: 10}\noutline: {square: 40}\nholes: [{name: lifting, at: [[0, 5]], size: 16}]\n", len(at)),
			"job.yaml": strings.Replace(strings.Replace(ribJob, "rib.yaml", "eye.yaml", 1), "units: mm\n", "units: mm\nup: front\n", 1) + joints}
		if block != "" {
			files["block.yaml"] = "part: block\nkind: plate\nmaterial: S235\nstock: {plate: 50}\noutline: {square: 100}\nholes: [{name: h, at: [[0, 0]], size: M10 clearance}]\n"
			files["base.yaml"] += "holes: [{name: taps, at: [[-140, 0]], size: M10 tap}]\n"
			files["job.yaml"] = strings.Replace(files["job.yaml"], "[base.yaml,", "[base.yaml, block.yaml,", 1) + "  - {name: b, bolt: {through: block.h, into: base.taps, bolt: M10 8.8}, face: back-on-front}\n"
		}
		if got := found(t, files, plan.LiftsAside); got != c.want {
			t.Errorf("%s: %q, want %q", c.at, got, c.want)
		}
		files["eye.yaml"] = strings.Replace(files["eye.yaml"], "lifting", "drain", 1)
		if got := found(t, files, plan.LiftsAside); got != "" {
			t.Errorf("%s, for another use: %q", c.at, got)
		}
	}
}

// A post of 900 × 60, 300 high, hangs under a base of 400 × 200 × 20 that is anchored: the
// centre of both lies 250 · 16.2 / 17.8 = 227.5 under the base's middle, and the base's lower
// edge 127.5 over that. Of 20 high the post weighs 1.08 to 1.6, and the centre, 44.3 under the
// middle, lies over the edge.
func TestAnchoredHigh(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ high, anchored, want string }{{"300", "base", "anchored-high base 128 TOP of base"}, {"300", "post", ""}, {"20", "base", ""}} {
		files := map[string]string{"base.yaml": basePart, "post.yaml": "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {rectangle: [900, " + c.high + "]}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, post.yaml]\njoints:\n" + strings.Replace(ribWeld, "rib.outline", "post.outline", 1) + ", place: {on: bottom, with: top, from-left: 0, from-bottom: 0, front: up}, anchored: " + c.anchored + "}\n"}
		if got := found(t, files, plan.AnchoredHigh); got != c.want {
			t.Errorf("%s on a post of %s: %q, want %q", c.anchored, c.high, got, c.want)
		}
	}
}

// A base that is anchored, with a post of 300 that is welded under it, or of 1 or 2; a base that stands upright may hang on a wall. Rails (of the frames
// in layout/joint/testdata, and of the gate jack) lie over openings.
func TestUnderFloor(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ up, high, want string }{
		{"front", "300", "under-floor post 300 base"}, {"front", "2", "under-floor post 2 base"}, {"front", "1", ""}, {"top", "300", ""},
	} {
		files := map[string]string{"base.yaml": basePart, "post.yaml": "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [60, " + c.high + "]}\n",
			"job.yaml": "job: J\nunits: mm\nup: " + c.up + "\nparts: [base.yaml, post.yaml]\njoints:\n" + strings.Replace(ribWeld, "rib.outline", "post.outline", 1) + ", place: {on: back, with: top, from-left: 100, from-bottom: 50, front: left}, anchored: base}\n"}
		if got := found(t, files, plan.UnderFloor); got != c.want {
			t.Errorf("%+v: %q, want %q", c, got, c.want)
		}
	}
}

// A leg of 300 under a base of 400 × 200 × 20, and beside it a pan that reaches 260 or 320 below: the machine stands
// on what reaches lowest; with the pan under the leg it may be its skid. Anchored, the anchor says what it stands on; a post is no leg.
func TestLegsShort(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ title, pan, at, anchored, want string }{
		{"Leg", "320", "200", "", "legs-short Leg 20 pan"}, {"Leg", "320.06", "200", "", "legs-short Leg 20.1 pan"}, {"Leg", "260", "200", "", ""}, {"Leg", "320", "200", ", anchored: pan", ""}, {"Post", "320", "200", "", ""}, {"Leg", "301", "200", "", "legs-short Leg 1 pan"}, {"Leg", "300.9", "200", "", ""}, {"Rear foot", "320.5", "200", "", "legs-short Rear foot 20.5 pan"},
		{"Leg", "320", "59.5", "", "legs-short Leg 20 pan"}, {"Leg", "320", "58", "", ""}, // under it by 2
	} {
		under := func(name, at string) string {
			return "  - {name: " + name + ", weld: {part: " + name + ".outline, to: base.outline, type: fillet}, place: {on: bottom, with: top, from-left: " + at + ", from-bottom: 0, front: up}"
		}
		plate := "kind: plate\nmaterial: S235\nstock: {plate: 20 mm}\n"
		files := map[string]string{
			"base.yaml": basePart, "leg.yaml": "part: leg\ntitle: " + c.title + "\n" + plate + "outline: {rectangle: [60, 300]}\n", "pan.yaml": "part: pan\n" + plate + "outline: {rectangle: [60, " + c.pan + "]}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, leg.yaml, pan.yaml]\njoints:\n" + under("leg", "0") + "}\n" + under("pan", c.at) + c.anchored + "}\n",
		}
		if got := found(t, files, plan.LegsShort); got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// A post of 500 under a base of 400 × 200 × 20 whose front is up, or on it, and a foot across the other end of the post: on its edge as long as up: does
// not say so, unless it lies along the post; upside down over all, and no foot if it is a plate. By hand 1600 cm³ at -10, 417.5 of the post (EN 10219-2, outer corners of
// 10) at 250 and 200 at 505 have their middle at 85.4.
func TestFootOfUpright(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ up, on, end, title, want string }{
		{"", "back", "right", "Press foot", "on-edge Press foot TOP of base post"}, {"", "back", "top", "Press foot", ""}, {"", "back", "right", "Plate", ""},
		{"up: front\n", "back", "right", "Press foot", ""}, {"up: front\n", "front", "right", "Press foot", "legs-high Press foot 415 front of base"}, {"up: front\n", "front", "right", "Plate", ""},
	} {
		files := map[string]string{
			"base.yaml": basePart, "post.yaml": "part: post\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 5, length: 500}\n",
			"foot.yaml": "part: foot\ntitle: " + c.title + "\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [200, 100]}\n",
			"job.yaml": "job: J\nunits: mm\n" + c.up + "parts: [base.yaml, post.yaml, foot.yaml]\njoints:\n  - {name: p, weld: {part: post.left, to: base.outline, type: fillet}, place: {on: " + c.on +
				", with: left, at: [0, 0], front: up}}\n  - {name: f, weld: {part: foot.outline, to: post." + c.end + ", type: fillet}, place: {on: " + c.end + ", with: front, at: [0, 0], top: up}}\n",
		}
		if got := strings.TrimSpace(found(t, files, plan.OnEdge) + " " + found(t, files, plan.LegsHigh)); got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// Four legs of 300 under a base of 400 × 200 × 20, the last 3 shorter, 40 longer, or on its own foot of 3: it ends over or under the others, where
// nothing of the machine is under it. Of two, of posts and of ones that lie, nobody knows.
func TestLegsUneven(t *testing.T) {
	t.Parallel()
	plate := "kind: plate\nmaterial: S235\nstock: {plate: 20 mm}\n"
	for _, c := range []struct{ title, last, foot, legs, want, up string }{
		{"Leg", "300", "", "leg#1 leg#2 leg#3 last", "", ""}, {"Leg", "296.9961", "", "leg#1 leg#2 leg#3 last", "leg-high Last leg 3", ""}, {"Leg", "299.6", "", "leg#1 leg#2 leg#3 last", "", ""}, {"Leg", "299.5", "", "leg#1 leg#2 leg#3 last", "leg-high Last leg 0.5", ""}, {"Leg", "340", "", "leg#1 leg#2 leg#3 last", "leg-low Last leg 40", ""},
		{"Leg", "297", "3", "leg#1 leg#2 leg#3 last", "", ""}, {"Leg", "300", "3", "leg#1 leg#2 leg#3 last", "leg-low Last leg 3", ""},
		{"Leg", "297", "", "leg#1 leg#2 last", "leg-high Last leg 3", ""}, {"Leg", "297", "", "leg#1 last", "", ""}, {"Post", "297", "", "leg#1 leg#2 leg#3 last", "", ""}, {"Leg", "300", "", "leg#1 leg#2 leg#3 last", "", "up: front\n"},
	} {
		joints := ""
		for i, name := range strings.Fields(c.legs) {
			joints += fmt.Sprintf("  - {name: l%d, weld: {part: %s.outline, to: base.outline, type: fillet}, place: {on: bottom, with: top, from-left: %d, from-bottom: %d, front: up}}\n", i, name, 100*i, 5*len(c.up)*(i/3))
		}
		files := map[string]string{
			"base.yaml": basePart, "leg.yaml": "part: leg\ntitle: " + c.title + "\nquantity: 3\n" + plate + "outline: {rectangle: [40, 300]}\n", "last.yaml": "part: last\ntitle: Last " + strings.ToLower(c.title) + "\n" + plate + "outline: {rectangle: [40, " + c.last + "]}\n",
		}
		names := "base.yaml, leg.yaml, last.yaml"
		if c.foot != "" {
			names += ", pad.yaml"
			files["pad.yaml"] = "part: pad\n" + plate + "outline: {rectangle: [60, " + c.foot + "]}\n"
			joints += "  - {name: pad, weld: {part: pad.outline, to: last.outline, type: fillet}, place: {on: bottom, with: top, at: [0, 0], front: up}}\n"
		}
		files["job.yaml"] = "job: J\nunits: mm\n" + c.up + "parts: [" + names + "]\njoints:\n" + joints
		if got := strings.TrimSpace(found(t, files, plan.LegHigh) + " " + found(t, files, plan.LegLow)); got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// Under a rail three legs mitred by 25° lean by that, 400 apart, each 400 sin 25° = 169.05 longer than the one before:
// their feet lie in one plane. One 5 longer lies 5 out of it, one mitred by 20° turns its foot of 100 by 5°, 8.7 from edge to edge; on two feet nothing rocks.
func TestFeetApart(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ length, mitre, to, want string }{
		{"538.095", "25, long: top", "leg-3", ""}, {"543.095", "25, long: top", "leg-3", "feet-apart foot 3 5 foot 1"}, {"538.5", "25, long: top", "leg-3", ""}, {"538.595", "25, long: top", "leg-3", "feet-apart foot 3 0.5 foot 1"},
		{"538.095", "20, long: top", "leg-3", "feet-apart foot 3 8.7 foot 1"}, {"543.095", "25, long: top", "leg-2", ""},
	} {
		bar := func(name, length, mitre string) string {
			return "part: " + name + "\nkind: bar\nfor: leg\nmaterial: S235\nbar: {square: 50, wall: 4, length: " + length + ", right: {mitre: " + mitre + "}}\n"
		}
		files := map[string]string{
			"rail.yaml": "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 1200}\n", "foot.yaml": "part: foot\nkind: plate\nquantity: " + c.to[4:] + "\nfor: leg\nmaterial: S235\nstock: {plate: 8 mm}\noutline: {square: 100}\n",
			"leg-1.yaml": bar("leg-1", "200", "25, long: top"), "leg-2.yaml": bar("leg-2", "369.047", "25, long: top"), "leg-3.yaml": bar("leg-3", c.length, c.mitre),
		}
		job := "job: J\nunits: mm\nparts: [rail.yaml, foot.yaml, leg-1.yaml, leg-2.yaml, leg-3.yaml]\njoints:\n"
		for i, leg := range []string{"leg-1", "leg-2", "leg-3"} {
			job += fmt.Sprintf("  - {name: l%d, weld: {part: %s.right, to: rail.bottom, type: fillet}, place: {on: bottom, with: right, from-left: %d, from-bottom: 0, front: up}}\n", i, leg, 1000-400*i)
			if leg <= c.to {
				job += fmt.Sprintf("  - {name: f%d, weld: {part: foot#%d.outline, to: %s.left, type: fillet}, place: {on: left, with: front, from-left: -25, from-bottom: -25, top: up}}\n", i, i+1, leg)
			}
		}
		files["job.yaml"] = job
		if got := found(t, files, plan.FeetApart); got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// Three upright legs 400 apart under a rail, mitred by 20° and each 400 tan 20° = 145.588 longer than the one before, stand
// with their feet on a slope, as a conveyor does; one 5 longer has its foot 5 cos 20° = 4.7 out of that. Cut square they are uneven, the first by the tangent.
func TestLegsOnASlope(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ length, cut, want string }{
		{"591.176", ", left: {mitre: 20, long: top}", ""}, {"596.176", ", left: {mitre: 20, long: top}", "feet-apart foot 3 4.7 foot 1"}, {"591.176", "", "leg-high leg 1 145.59"},
	} {
		files, joints := map[string]string{
			"rail.yaml": "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 1200}\n", "foot.yaml": "part: foot\nkind: plate\nquantity: 3\nfor: leg\nmaterial: S235\nstock: {plate: 8 mm}\noutline: {square: 100}\n",
		}, ""
		for i, length := range []string{"300", "445.588", c.length} {
			files[fmt.Sprintf("leg-%d.yaml", i+1)] = fmt.Sprintf("part: leg-%d\nkind: bar\nfor: leg\nmaterial: S235\nbar: {square: 50, wall: 4, length: %s%s}\n", i+1, length, c.cut)
			joints += fmt.Sprintf("  - {name: l%d, weld: {part: leg-%d.right, to: rail.bottom, type: fillet}, place: {on: bottom, with: right, from-left: %d, from-bottom: 0, front: up}}\n", i, i+1, 1000-400*i)
			joints += fmt.Sprintf("  - {name: f%d, weld: {part: leg-%d.left, to: foot#%d.outline, type: fillet}, place: {on: front, with: left, from-left: 25, from-bottom: 25, front: left}}\n", i, i+1, i+1)
		}
		files["job.yaml"] = "job: J\nunits: mm\nparts: [rail.yaml, foot.yaml, leg-1.yaml, leg-2.yaml, leg-3.yaml]\njoints:\n" + joints
		if got := strings.TrimSpace(found(t, files, plan.LegHigh) + " " + found(t, files, plan.LegLow) + " " + found(t, files, plan.FeetApart)); got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// A foot of 12 on a base of 15 tapped through for M12: with its washer of 2.5 (ISO 7089) a bolt of 30 comes 0.5 out
// under the base, which stands on the floor. A base of 20 holds it, and a thread that ends inside ends there.
func TestTipsUnder(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ thick, hole, up, want string }{
		{"14.96", "", "front", "tip-under base 0.5 Bolt foot to base"}, {"20", "", "front", ""}, {"22", ", depth: 18", "front", ""}, {"15", "", "top", ""},
	} {
		files := map[string]string{
			"base.yaml": "part: base\nkind: plate\nmaterial: S235\nstock: {plate: " + c.thick + " mm}\noutline: {rectangle: [200, 200]}\nholes:\n  - {name: taps, face: front, at: [[0, -58], [0, 58]], size: M12 tap" + c.hole + "}\n",
			"foot.yaml": "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [40, 150]}\nholes:\n  - {name: bolts, at: [[0, -58], [0, 58]], size: M12 clearance}\n",
			"job.yaml":  "job: J\nunits: mm\nup: " + c.up + "\nparts: [base.yaml, foot.yaml]\njoints:\n  - {name: j, bolt: {through: foot.bolts, into: base.taps, bolt: M12 8.8, washer: yes}, face: back-on-front}\n",
		}
		if got := found(t, files, plan.TipUnder); got != c.want {
			t.Errorf("%s%s %s up: %q, want %q", c.thick, c.hole, c.up, got, c.want)
		}
	}
}

// A mouth of 200 × 200 of sheet of 2 on a plate: the middle of its rim is 99 off the middle, so that on one of 190 it
// stands 4 in the air at two sides, and on one of 193 2.5, which a fillet closes.
func TestMouthPast(t *testing.T) {
	t.Parallel()
	for c, want := range map[[3]string]string{
		{"300, 300", "200", "0, 0"}: "", {"193, 300", "200", "0, 0"}: "", {"190, 300", "200", "0, 0"}: "mouth-past piece base 4", {"180, 300", "200", "0, 0"}: "mouth-past piece base 9",
		{"206, 166", "160", "0, 0"}: "", {"206, 166", "160", "6.9, 0"}: "", {"206, 166", "160", "-7.2, 0"}: "mouth-past piece base 3.2", {"206, 166", "160", "7.24, 0"}: "mouth-past piece base 3.2",
		{"206, 166", "160", "0, 7.2"}: "mouth-past piece base 3.2", {"206, 166", "160", "0, -7.2"}: "mouth-past piece base 3.2", {"206, 166", "160", "0, 6.9"}: "",
		{"400, 400]}\nbore: {diameter: 290}\n#", "200", "0, 0"}: "", // it stands on nothing
	} {
		files := map[string]string{
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [" + c[0] + "]}\n",
			"piece.yaml": "part: piece\nkind: transition\nmaterial: S235\nstock: {sheet: 2 mm}\ntransition: {width: 200, depth: " + c[1] + ", diameter: 150, height: 120, thickness: 2}\n",
			"job.yaml":   "job: J\nunits: mm\nparts: [base.yaml, piece.yaml]\njoints:\n  - {name: j, weld: {part: piece.mouth, to: base.outline, type: fillet, size: 3, length: 700}, place: {on: front, with: front, at: [" + c[2] + "], top: up}}\n",
		}
		if got := found(t, files, plan.MouthPast); got != want {
			t.Errorf("%q: %q, want %q", c, got, want)
		}
	}
}

// A flight of 330 on a step of 400 is welded past its end by what it reaches beyond.
func TestWeldPast(t *testing.T) {
	t.Parallel()
	const (
		shaft  = "part: shaft\ntitle: Shaft\nkind: turned\nmaterial: S235\nstock: {round: 75 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: 400}, {name: drive, diameter: 40, length: 60}]\n"
		flight = "part: flight\ntitle: Flight\nkind: flight\nmaterial: S235\nstock: {sheet: 6 mm, cut: plasma}\nflight: {shaft: 70, outside: 150, pitch: 110, thickness: 6, length: 330}\n"
	)
	for back, want := range map[string]string{"350": "", "330": "", "400": "", "400.4": "", "402.54": "weld-past Flight Shaft 2.5", "329.6": "", "328.4": "weld-past Flight Shaft 1.6"} {
		files := map[string]string{"shaft.yaml": shaft, "flight.yaml": flight, "job.yaml": "job: J\nunits: mm\nparts: [shaft.yaml, flight.yaml]\njoints:\n  - name: w\n    weld: {part: flight.inside, to: shaft.body, type: fillet, size: 4 mm, sides: 2}\n    place: {on: front, with: back, at: [0, 0], top: up, gap: -" + back + " mm}\n"}
		if got := found(t, files, plan.WeldPast); got != want {
			t.Errorf("to %s: %q, want %q", back, got, want)
		}
	}
}

// Between two legs of 40.4 on a rail, 459.6 apart, lies a tie that meets the second at its bottom: said
// to be welded to the top it ends 40 short of that, rounded.
func TestWeldOtherSide(t *testing.T) {
	t.Parallel()
	bar := func(name string, long string, quantity string) string {
		return "part: " + name + "\ntitle: The " + name + "\nkind: bar\nquantity: " + quantity + "\nmaterial: S235\nbar: {square: 40.4, wall: 4, length: " + long + "}\n"
	}
	leg := func(n, left string) string {
		return "  - {name: leg-" + n + ", weld: {part: leg#" + n + ".left, to: rail.back, type: fillet}, place: {on: back, with: left, from-left: " + left + ", from-bottom: 0, front: up}}\n"
	}
	for to, want := range map[string]string{"bottom": "", "front": "", "top": "weld-other-side The tie top The leg 2 40"} {
		files := map[string]string{"rail.yaml": bar("rail", "600", "1"), "leg.yaml": bar("leg", "300", "2"), "tie.yaml": bar("tie", "459.6", "1"),
			"job.yaml": "job: J\nunits: mm\nparts: [rail.yaml, leg.yaml, tie.yaml]\njoints:\n" + leg("1", "0") + leg("2", "500") +
				"  - {name: near, weld: {part: tie.left, to: leg#1.top, type: fillet}, place: {on: top, with: left, from-left: 200, from-bottom: 0, front: up}}\n" +
				"  - {name: far, weld: {part: tie.right, to: leg#2." + to + ", type: fillet}}\n"}
		if got := found(t, files, plan.WeldOtherSide); got != want {
			t.Errorf("to its %s: %q, want %q", to, got, want)
		}
	}
}

// Two plates of 10 face on face: a has holes of 9 in its front, b of 12 in its back, 20 apart
// along their axes, and 10 from those in the back of a; 3 and 4
// beside one another are 5. What lies before the mouths of b's holes is a, as far off as is
// asked for.
func TestApart(t *testing.T) {
	t.Parallel()
	const plate = "part: %s\ntitle: The %[1]s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [200, 100]}\nholes:\n  - {name: bolts, at: [[-80, 0], [80, 0]], size: %s}\n%s"
	job := "job: J\nunits: mm\nparts: [a.yaml, b.yaml, c.yaml, d.yaml]\njoints:\n  - name: j\n    bolt: {through: a.bolts, into: b.bolts, bolt: M8 8.8}\n    face: back-on-front\n" +
		"  - {name: w, weld: {part: c.outline, to: b.outline, type: fillet, length: 40}, place: {on: back, with: front, at: [0, 0], top: up, gap: 3}}\n" +
		"  - {name: u, weld: {part: d.outline, to: b.outline, type: fillet, length: 20}, place: {on: back, with: bottom, from-left: 0, from-bottom: 0, front: left}}\n"
	m, _ := load(t, write(t, map[string]string{"job.yaml": job,
		"a.yaml": fmt.Sprintf(plate, "a", "M8 clearance", "  - {name: x, face: front, at: [[0, 0], [30, 0]], size: 9, depth: 5}\n  - {name: z, face: back, at: [[0, 0]], size: 9, depth: 5}\n"),
		"b.yaml": fmt.Sprintf(plate, "b", "M8 tap", "  - {name: y, face: back, at: [[3, 4], [-33, 0]], size: 12, depth: 4}\n  - {name: edge, face: back, at: [[34, 0], [0, -16], [0, 26]], size: 12, depth: 4}\n"),
		"c.yaml": "part: c\ntitle: The c\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 40]}\nholes:\n  - {name: own, at: [[0, 0]], size: 6}\n",
		"d.yaml": "part: d\ntitle: The d\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [30, 40]}\nholes:\n  - {name: side, at: [[0, 0]], size: 6}\n"}))
	for _, c := range []struct {
		part, group, other, to string
		apart, beside          float64
		ok                     bool
	}{
		{"a", "x", "b", "y", 20, 5, true}, // seen from the front, y lies at −3 and at 33
		{"a", "z", "b", "y", 10, 5, true},
		{"b", "y", "a", "z", 10, 33, true},
		{"a", "z", "a", "x", 10, 0, true},
		{"a", "z", "c", "none", 0, 0, false},
		{"a", "z", "none", "x", 0, 0, false},
		{"a", "z", "d", "side", 0, 0, false}, // square to it
	} {
		apart, beside, ok := m.Apart(c.part, c.group, c.other, c.to)
		if words.Round(apart, 6) != c.apart || words.Round(beside, 6) != c.beside || ok != c.ok {
			t.Errorf("%s of %s to %s of %s: %g and %g, %v", c.group, c.part, c.to, c.other, apart, beside, ok)
		}
	}
	for _, c := range []struct {
		part, group string
		reach       float64
		want        string
	}{{"b", "y", 3, "The c,"}, {"b", "y", 2.9, ","}, {"b", "edge", 50, ",The c,"}, {"a", "x", 50, ","}, {"a", "z", 0, "The b"}} {
		if got := strings.Join(m.Under(c.part, c.group, c.reach), ","); got != c.want {
			t.Errorf("%s of %s, %g off: %q, want %q", c.group, c.part, c.reach, got, c.want)
		}
	}
	a, b := body(t, m, "a#1"), body(t, m, "b#1")
	if !m.Tied(a, b) {
		t.Error("bolted plates are not tied")
	}
}

// A pin of 50 pressed into a hub of 40 reaches 10 out of its back into the plate that is bolted on
// there, whichever of them the job has first: the hub the other way round cures that, as the
// plate is not on the face by which the pin is level.
func TestOverlapBy(t *testing.T) {
	t.Parallel()
	const (
		hub   = "part: hub\nkind: turned\nmaterial: S235\nstock: {round: 130 mm, length: 50 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 40}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 40}]\nholes:\n  - {name: taps, face: %s, circle: {pcd: 90, count: 4, first: 0}, size: M8 tap, depth: 15}\n"
		pin   = "part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm, length: 70 mm}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: p6, length: 50}]\n"
		plate = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 15 mm}\noutline: {square: 120}\nholes:\n  - {name: h, circle: {pcd: 90, count: 4, first: 0}, size: M8 clearance}\n"
	)
	for _, c := range []struct{ parts, level, face, want string }{
		{"hub.yaml, pin.yaml, plate.yaml", "front-with-front", "back", "overlap-by pin plate 10 hub hub the other way round, or "},
		{"hub.yaml, plate.yaml, pin.yaml", "front-with-front", "back", "overlap-by pin plate 10 hub hub the other way round, or "},
		{"hub.yaml, plate.yaml, pin.yaml", "front-with-front", "front", ""},
		{"hub.yaml, pin.yaml, plate.yaml", "back-with-back", "front", "overlap-by pin plate 10 hub hub the other way round, or "},
		{"hub.yaml, pin.yaml, plate.yaml", "back-with-back", "back", ""},
		{"hub.yaml, pin.yaml, plate.yaml", "front-with-front, below: 4", "back", "overlap-by pin plate 14 hub hub the other way round, or "},
	} {
		job := "job: J\nunits: mm\nparts: [" + c.parts + "]\njoints:\n  - {name: p, press: {shaft: pin.seat, bore: hub.bore}, level: " + c.level + "}\n  - {name: b, bolt: {through: plate.h, into: hub.taps, bolt: M8 8.8}, face: back-on-" + c.face + ", after: p}\n"
		if got := found(t, map[string]string{"hub.yaml": fmt.Sprintf(hub, c.face), "pin.yaml": pin, "plate.yaml": plate, "job.yaml": job}, plan.OverlapBy, plan.PartsOverlap, plan.OverlapTurned, plan.OverlapMany); got != c.want {
			t.Errorf("%s, level %s: %q, want %q", c.parts, c.level, got, c.want)
		}
	}
}

// The heads of two screws 80 to either side of the middle of a plate lie in a tube bar of 300 that
// is welded over them, 230 from its farther end; beside its walls and under a solid one they do not.
func TestHeadShutIn(t *testing.T) {
	t.Parallel()
	const plate = "part: %s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [400, 160]}\nholes:\n  - {name: h, at: [[-80, 0], [80, 0]], size: %s}\n"
	for _, c := range []struct{ bar, at, want string }{
		{"rectangle: [60, 40], wall: 3", "0, 0", "head-shut-in b rail 230"},
		{"rectangle: [60, 40], wall: 3", "10.04, 29", "head-shut-in b rail 240"},
		{"rectangle: [60, 40], wall: 3", "0, 31", ""},
		{"rectangle: [60, 40], wall: 3", "200, 0", "head-shut-in b rail 270"},
		{"flat: [60, 40]", "0, 0", ""},
	} {
		files := map[string]string{"a.yaml": fmt.Sprintf(plate, "a", "M8 clearance"), "b.yaml": fmt.Sprintf(plate, "b", "M8 tap"),
			"rail.yaml": "part: rail\nkind: bar\nmaterial: S235\nbar: {" + c.bar + ", length: 300}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [a.yaml, b.yaml, rail.yaml]\njoints:\n  - {name: b, bolt: {through: a.h, into: b.h, bolt: M8 8.8}, face: back-on-front}\n" +
				"  - {name: w, weld: {part: rail.back, to: a.outline, type: fillet, length: 100}, place: {on: front, with: back, at: [" + c.at + "], top: up}}\n"}
		if got := found(t, files, plan.HeadShutIn); got != c.want {
			t.Errorf("%s at %s: %q, want %q", c.bar, c.at, got, c.want)
		}
	}
}

// A can is closed by a cover on a ring that is welded in, with four nuts under that: no hand gets to them, but through
// a bore of 70 in the cover or the floor, a window of 70 by 60, or a socket through holes of 20 over them. A bore of 30
// in the cover or of 50 in the floor lets no hand in, and the nuts lie aside of it. Threads in the ring want none.
func TestClosedIn(t *testing.T) {
	t.Parallel()
	const (
		plain, nuts = "", "size: M8 clearance"
		plate       = "part: %s\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {circle: %s}\n%s"
		holes       = "holes:\n  - {name: h, circle: {pcd: 112, count: 4}, %s}\n"
	)
	for _, c := range []struct{ cover, floor, window, holes, want string }{
		{plain, plain, plain, nuts, "closed-in a nut lid cover without after: foot at lid"},
		{"bore: {diameter: 70}\n", plain, plain, nuts, ""},
		{"bore: {diameter: 30}\n", plain, plain, nuts, "closed-in a nut lid cover without after: foot at lid"},
		{"bore: {diameter: 18}\n", plain, plain, nuts, "closed-in a nut lid cover without after: foot at lid"},
		{plain, "bore: {diameter: 70}\n", plain, nuts, ""},
		{plain, fmt.Sprintf(holes, "size: 20"), plain, nuts, ""},
		{plain, "bore: {diameter: 50}\n", plain, nuts, "closed-in a nut lid cover without after: foot at lid"},
		{plain, plain, "radial:\n  - {name: look, clock: 20, axial: 130, window: {around: 70, along: 60}}\n", nuts, ""},
		{plain, plain, "radial:\n  - {name: look, clock: 20, axial: 130, window: {around: 8, along: 60}}\n", nuts, "closed-in a nut lid cover without after: foot at lid"},
		{plain, plain, plain, "size: M8 tap", ""},
	} {
		files := map[string]string{
			"floor.yaml": fmt.Sprintf(plate, "floor", "200", c.floor),
			"can.yaml":   "part: can\nkind: tube\nmaterial: S235\nstock: {tube: 168.3, wall: 4.5, length: 260}\ntube: {outside: 168.3, wall: 4.5, length: 250}\n" + c.window,
			"ring.yaml":  fmt.Sprintf(plate, "ring", "158.7", "bore: {diameter: 80}\n"+fmt.Sprintf(holes, c.holes)),
			"cover.yaml": fmt.Sprintf(plate, "cover", "158", c.cover+fmt.Sprintf(holes, nuts)),
			"job.yaml": "job: J\nunits: mm\nparts: [floor.yaml, can.yaml, ring.yaml, cover.yaml]\njoints:\n  - {name: seam, weld: {part: ring.outline, to: can.bore, type: fillet}, level: front-with-front, below: 10}\n" +
				"  - {name: foot, weld: {part: can.outside, to: floor.outline, type: fillet}, place: {on: front, with: back, at: [0, 0]}}\n" +
				"  - {name: lid, bolt: {through: cover.h, into: ring.h, bolt: M8 8.8, nut: " + words.Either(c.holes == nuts, "yes", "no") + "}, face: back-on-front, after: foot}\n"}
		if got := found(t, files, plan.ClosedIn); got != c.want {
			t.Errorf("cover %q, floor %q, can %q, %s: %q, want %q", c.cover, c.floor, c.window, c.holes, got, c.want)
		}
	}
}

// A screw that stands in one part runs in the nut of another where both have one thread and one axis, and lies in it
// with any other thread, and 4 beside the axis, where a bore of 19 leaves 5.5 of 12.
func TestScrewRunsInItsNut(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ thread, at, want string }{{"Tr24x5", "[0, 0]", ""}, {"Tr24x3", "[0, 0]", "parts-overlap screw nut 2.5"}, {"Tr24x5", "[4, 0]", "parts-overlap screw nut 6.5"}} {
		files := map[string]string{
			"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {square: 120}\nbore: {diameter: 30}\n",
			"screw.yaml": "part: screw\nkind: turned\nmaterial: S235\nstock: {round: 35, cut: saw}\nprofile:\n  outside: [{name: thread, thread: " + c.thread + ", length: 60}, {name: root, diameter: 30, length: 12}]\n",
			"tube.yaml":  "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 70, wall: 5, cut: saw}\ntube: {outside: 70, wall: 5, length: 40}\n",
			"nut.yaml":   "part: nut\nkind: turned\nmaterial: S235\nstock: {round: 65, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 15}]\n  inside: [{name: thread, thread: Tr24x5, length: 15}]\n",
			"job.yaml": "job: J\nunits: mm\nparts: [plate.yaml, screw.yaml, tube.yaml, nut.yaml]\njoints:\n  - {name: root, weld: {part: screw.root, to: plate.bore, type: fillet}, level: back-with-back}\n" +
				"  - {name: foot, weld: {part: tube.outside, to: plate.outline, type: fillet}, place: {on: front, with: back, at: " + c.at + "}}\n  - {name: rim, weld: {part: nut.rim, to: tube.bore, type: fillet}, level: front-with-front}\n"}
		if got := found(t, files, plan.PartsOverlap); got != c.want {
			t.Errorf("%s at %s: %q, want %q", c.thread, c.at, got, c.want)
		}
	}
}

// What a register is said to be too small for by half a millimetre is no second fault; what is
// drawn too large to be meant for it is one.
func TestRegisterLarger(t *testing.T) {
	t.Parallel()
	for spigot, want := range map[string]string{"80": "", "81": "", "84.007": "parts-overlap body lid 2"} {
		files := map[string]string{
			"body.yaml": "part: body\nkind: turned\nmaterial: S235\nstock: {round: 150 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 140, length: 40}]\n  inside: [{name: register, diameter: 80, fit: H7, length: 10}, {name: bore, diameter: 60, length: 30}]\nholes:\n  - {name: h, face: front, circle: {pcd: 110, count: 4}, size: M8 tap, depth: 20}\n",
			"lid.yaml":  "part: lid\nkind: turned\nmaterial: S235\nstock: {round: 150 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 140, length: 12}, {name: spigot, diameter: " + spigot + ", fit: f7, length: 6}]\nholes:\n  - {name: h, face: front, circle: {pcd: 110, count: 4}, size: M8 clearance}\n",
			"job.yaml":  "job: J\nunits: mm\nparts: [body.yaml, lid.yaml]\njoints:\n  - {name: j, bolt: {through: lid.h, into: body.h, bolt: M8 8.8}, face: back-on-front}\n"}
		if got := found(t, files, plan.PartsOverlap); got != want {
			t.Errorf("a spigot of %s: %q, want %q", spigot, got, want)
		}
	}
}

// A guard with a lip at each side is bolted to a plate by both, their holes 104 apart: turned by 90° and −90° both say one
// place; the other way about one says +104 and the other −104, 208 apart. A lug that lies 6 in the plate has nothing to do with that.
func TestTwoPlacesOfOneGuard(t *testing.T) {
	t.Parallel()
	for turns, want := range map[string]string{"90 -90": "parts-overlap plate lug 6", "-90 90": "place-misses l 208 r; parts-overlap plate lug 6"} {
		right, left, _ := strings.Cut(turns, " ")
		files := map[string]string{
			"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [150, 230]}\nholes:\n  - {name: right, face: front, at: [[52, 0], [52, 60]], size: M6 tap}\n  - {name: left, face: front, at: [[-52, 0], [-52, 60]], size: M6 tap}\n",
			"guard.yaml": "part: guard\nkind: folded\nmaterial: DC01\nstock: {sheet: 1.5}\noutline: {rectangle: [84, 143]}\nbends:\n  radius: 1.5\n  flanges:\n    - {side: left, height: 60}\n    - {side: right, height: 60}\n    - {side: left-2, height: 20, toward: front}\n    - {side: right-2, height: 20, toward: front}\nholes:\n  - {name: right, on: right-2, at: [[-30, 11.5], [30, 11.5]], size: M6 clearance}\n  - {name: left, on: left-2, at: [[30, 11.5], [-30, 11.5]], size: M6 clearance}\n",
			"lug.yaml":   "part: lug\nkind: plate\nmaterial: S235\nstock: {plate: 12}\noutline: {square: 40}\n",
			"job.yaml":   "job: J\nunits: mm\nup: top\nparts: [plate.yaml, guard.yaml, lug.yaml]\njoints:\n  - {name: lug, weld: {part: lug.outline, to: plate.outline, type: fillet}, place: {on: back, with: back, at: [0, -60], top: up, gap: -6}}\n  - {name: r, bolt: {through: guard.right, into: plate.right, bolt: M6 8.8, washer: yes}, face: back-on-front, rotate: " + right + "}\n  - {name: l, bolt: {through: guard.left, into: plate.left, bolt: M6 8.8, washer: yes}, face: back-on-front, rotate: " + left + "}\n",
		}
		if got := found(t, files, plan.PlaceMisses, plan.PartsOverlap, plan.OverlapMisses); got != want {
			t.Errorf("%s: %q, want %q", turns, got, want)
		}
	}
}

// A block between two lugs that stand on a base is bolted to both: where its holes for one lie 5 lower that lug would stand 5 in the base,
// which is one thing with what misses; where they lie 5 higher it stands over it.
func TestOverlapOfWhatMisses(t *testing.T) {
	t.Parallel()
	lug := func(n, left, way string) string {
		return "  - {name: lug-" + n + ", weld: {part: lug#" + n + ".outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, from-left: " + left + ", from-bottom: 50, front: " + way + "}}\n"
	}
	for up, want := range map[string]string{"0": "", "-5": "overlap-misses base lug 2 5 lug-2 5 lug-1, near, far", "5": "place-misses lug-2 5 lug-1, near, far"} {
		files := map[string]string{
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 15}\noutline: {rectangle: [300, 200]}\n",
			"lug.yaml":   "part: lug\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10}\noutline: {square: 100}\nholes: [{name: h, at: [[-20, 0], [20, 0]], size: M8 clearance}]\n",
			"block.yaml": "part: block\nkind: plate\nmaterial: S235\nstock: {plate: 50}\noutline: {rectangle: [80, 40]}\nholes:\n  - {name: near, at: [[-20, 0], [20, 0]], size: M8 tap, depth: 16}\n  - {name: far, face: back, at: [[-20, " + up + "], [20, " + up + "]], size: M8 tap, depth: 16}\n",
			"job.yaml":   "job: J\nunits: mm\nup: front\nparts: [base.yaml, lug.yaml, block.yaml]\njoints:\n" + lug("1", "100", "right") + lug("2", "160", "left") + "  - {name: near, bolt: {through: lug#1.h, into: block.near, bolt: M8 8.8}, face: front-on-front}\n  - {name: far, bolt: {through: lug#2.h, into: block.far, bolt: M8 8.8}, face: front-on-back}\n",
		}
		if got := found(t, files, plan.PlaceMisses, plan.PlaceTurned, plan.PartsOverlap, plan.OverlapMisses); got != want {
			t.Errorf("%s: %q, want %q", up, got, want)
		}
	}
}

// A branch that is cut for another round than the one it is welded to has no place on that: no distance is said.
func TestWeldUnplaced(t *testing.T) {
	t.Parallel()
	for onto, want := range map[string]string{
		"onto: {diameter: 190}, gap: 1":                   "weld-unplaced branch main 0",
		"onto: main.outside, gap: 1, place: {axial: 200}": "",
	} {
		files := map[string]string{
			"main.yaml":   "part: main\nkind: tube\nmaterial: S235\nstock: {tube: 200, wall: 10}\ntube: {outside: 200, wall: 10, length: 400}\nradial:\n  - {name: hole, clock: 0, axial: 200, size: 60}\n",
			"branch.yaml": "part: branch\nkind: tube\nmaterial: S235\nstock: {tube: 80, wall: 5}\ntube: {outside: 80, wall: 5, length: 300}\nends:\n  back: {" + onto + "}\n",
			"job.yaml": "job: Branch\nunits: mm\nparts: [main.yaml, branch.yaml, end.yaml, mouth.yaml]\njoints:\n  - {name: branch, weld: {part: branch.bore, to: main.hole, type: fillet}}\n" +
				"  - {name: end, weld: {part: end.bore, to: main.outside, type: fillet}, level: front-with-front, below: 5}\n  - {name: mouth, weld: {part: mouth.bore, to: branch.outside, type: fillet}, level: front-with-front, below: 5}\n",
			"end.yaml":   "part: end\nkind: flange\nmaterial: S235\nstock: {plate: 10}\noutline: {circle: 260}\nbore: {diameter: 200.5}\n",
			"mouth.yaml": "part: mouth\nkind: flange\nmaterial: S235\nstock: {plate: 10}\noutline: {circle: 120}\nbore: {diameter: 80.5}\n",
		}
		if got := found(t, files, plan.WeldUnplaced, plan.WeldApart); got != want {
			t.Errorf("%s: %q, want %q", onto, got, want)
		}
	}
}

// A plate with an opening of 40 by 240, round at its ends, 200·40 + 400·π = 9257 mm², lies under a flange with a gasket between.
// An opening of 30 by 240 in the gasket leaves 210·30 + 225·π = 7007 of it, 75.7 %; one moved by half its width 200·20 and the
// lens of two circles of 40 that are 20 apart, 491, 48.5 %. What closes it whole is a lid, what has a bore
// carries something in it, and a gasket may end beside the edges
// that it seals.
func TestOpeningsUnderGaskets(t *testing.T) {
	t.Parallel()
	slot := func(x, width string) string {
		return "slots:\n  - {name: way, at: [[" + x + ", 0]], width: " + width + ", length: 240, turn: 0, for: opening}\n"
	}
	plate := func(name, thick, slots string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: " + thick + "}\noutline: {rectangle: [160, 320]}\nholes:\n  - {name: h, at: [[-60, -140], [60, -140], [-60, 140], [60, 140]], size: M8 clearance}\n" + slots
	}
	same := slot("0", "40")
	for _, c := range []struct{ gasket, flange, want string }{
		{same, same, ""},
		{slot("0", "30"), same, "opening-partly way flange gasket 76; opening-partly way table gasket 76"},
		{same, slot("20", "40"), "opening-partly way flange gasket 49"},
		{"bore: {diameter: 38}\n", same, "opening-partly way flange gasket 12; opening-partly way table gasket 12"}, // 361·π of it
		{same, "", ""},
		{same, "bore: {diameter: 30}\n", ""},
		{slot("0", "44"), same, ""},
	} {
		files := map[string]string{"table.yaml": plate("table", "12", same), "gasket.yaml": plate("gasket", "3", c.gasket), "flange.yaml": plate("flange", "10", c.flange),
			"job.yaml": "job: J\nunits: mm\nparts: [table.yaml, gasket.yaml, flange.yaml]\njoints:\n  - {name: j, bolt: {through: flange.h, stack: [gasket.h], into: table.h, bolt: M8 8.8, nut: yes}}\n"}
		if got := found(t, files, plan.OpeningPartly); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.gasket, c.flange, got, c.want)
		}
	}
}

// A tube of 60.3 is welded on a plate over an opening of 80, a bore or a hole: its end stands 9.85 before nothing. Over one of 56 it stands
// on metal.
func TestTubeOverItsOpening(t *testing.T) {
	t.Parallel()
	for opening, want := range map[string]string{
		"bore: {diameter: 80}": "weld-apart tube plate 10", "holes: [{name: duct, at: [[0, 0]], size: 80, for: opening}]": "weld-apart tube plate 10",
		"bore: {diameter: 56}": "", "holes: [{name: duct, at: [[0, 0]], size: 56, for: opening}]": "",
	} {
		got := found(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, tube.yaml]\njoints:\n  - {name: w, weld: {part: tube.outside, to: plate.outline, type: fillet, size: 3, process: MAG}, place: {on: front, with: back, at: [0, 0], top: up}}\n",
			"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 200}\n" + opening + "\n",
			"tube.yaml":  "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 60.3, wall: 3.6, length: 103, cut: saw}\ntube: {outside: 60.3, wall: 3.6, length: 100}\n",
		}, plan.WeldApart)
		if got != want {
			t.Errorf("%s: %q, want %q", opening, got, want)
		}
	}
}
