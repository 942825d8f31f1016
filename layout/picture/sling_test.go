package picture_test

import (
	"strings"
	"testing"

	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// A base of 400 × 200 × 60 (37.7 kg) is lighter than the post of 900 × 300 × 60
// on it, and a strap round it lies under the post; once it is anchored the post is lifted. Either
// is the same at both ends: its centre lies in the middle, and the places of the post 0.35 of its length
// off that. The legs rise by tan 60°. A post of thin sheet stock is slung on nothing. Eye bolts go
// into free threads on both sides, M10 or more, that lie on top: on the base as high as half of it over the centre.
func TestSlings(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		anchored, form, holes string
		want                  *plan.Sling
	}{
		{"", "plate", "", &plan.Sling{End: "left", At: "base", CentreMm: 200}},
		{"", "plate", "[-150, 80], [150, 80]], size: M10 tap", &plan.Sling{End: "left", At: "base", CentreMm: 200, Eyes: "M10", Holes: "eyes", On: [2]string{"base", "base"}}},
		{"", "plate", "[-150, 80], [150, 80]], size: M8 tap", &plan.Sling{End: "left", At: "base", CentreMm: 200}},
		{"", "plate", "[-150, 80], [150, 80]], size: M8 tap, for: lifting", &plan.Sling{End: "left", At: "base", CentreMm: 200, Eyes: "M8", Holes: "eyes", For: true, On: [2]string{"base"}}},
		{"", "plate", "[-150, 80], [150, 80]], size: M8 tap, for: lifting, face: back", &plan.Sling{End: "left", At: "base", CentreMm: 200}}, // underneath
		{"", "plate", "[-150, 0], [150, 80]], size: M8 tap, for: lifting", &plan.Sling{End: "left", At: "base", CentreMm: 200}},              // one under the post
		{"", "plate", "[120, 80], [150, 80]], size: M8 tap, for: lifting", &plan.Sling{End: "left", At: "base", CentreMm: 200}},
		{"", "plate", "[-150, 80], [150, 80]], size: 10 mm", &plan.Sling{End: "left", At: "base", CentreMm: 200}},
		{"", "plate", "[120, 80], [150, 80]], size: M10 tap", &plan.Sling{End: "left", At: "base", CentreMm: 200}},
		{"", "plate", "[-150, 0], [150, 80]], size: M10 tap", &plan.Sling{End: "left", At: "base", CentreMm: 200}}, // one under the post
		{", anchored: base", "plate", "", &plan.Sling{End: "left", At: "post", CentreMm: 450, HalfMm: 315, StrapMm: 50, On: [2]string{"post", "post"}, HookMm: 546}},
		// No strap of 50 lies on a hole of 20 in what it goes round: 9 further in each, its middle is more than 35 off 315 at the fifth place.
		{", anchored: base", "plate", "[-315, 0], [315, 0]], size: 20 mm", &plan.Sling{End: "left", At: "post", CentreMm: 450, HalfMm: 279, StrapMm: 50, On: [2]string{"post", "post"}, HookMm: 484}},
		{", anchored: base", "plate", "[-315, 0], [0, 0]], size: 20 mm", &plan.Sling{End: "left", At: "post", CentreMm: 450, HalfMm: 279, StrapMm: 50, On: [2]string{"post", "post"}, HookMm: 484}}, // nor at one end alone
		{", anchored: base", "plate", "[0, 0], [315, 0]], size: 20 mm", &plan.Sling{End: "left", At: "post", CentreMm: 450, HalfMm: 279, StrapMm: 50, On: [2]string{"post", "post"}, HookMm: 484}},
		{", anchored: base", "sheet", "", &plan.Sling{End: "left", At: "post", CentreMm: 450}},
	} {
		base, holes := strings.Replace(basePart, "20 mm", "60 mm", 1), ""
		if c.holes != "" {
			holes = "holes:\n  - {name: eyes, at: [" + c.holes + ", depth: 20 mm}\n"
		}
		if c.anchored == "" {
			base, holes = base+holes, ""
		}
		m, pl := load(t, write(t, map[string]string{
			"base.yaml": base,
			"post.yaml": "part: post\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {" + c.form + ": 60 mm}\noutline: {rectangle: [900, 300]}\n" + holes,
			"job.yaml": "job: Post\nunits: mm\nparts: [post.yaml, base.yaml]\njoints:\n" + strings.ReplaceAll(ribWeld, "rib.outline", "post.outline") +
				", place: {on: front, with: bottom, from-left: -250, from-bottom: 70, front: down}" + c.anchored + "}\n",
		}))
		picture.Draw(m)
		lift := pl.Joints[0].Lift
		switch {
		case lift == nil:
			t.Errorf("%s: nothing is lifted", c.anchored)
		case (lift.Sling == nil) != (c.want == nil) || c.want != nil && *lift.Sling != *c.want:
			t.Errorf("%s: %+v, want %+v", c.anchored, lift.Sling, c.want)
		}
	}
}

// The same base with two eyes on it, 300 apart astride its centre, is slung by these; with both at one end it is not, nor
// by its own threads, since it does not hang alone.
func TestSlungByItsEyes(t *testing.T) {
	t.Parallel()
	for at, want := range map[string]plan.Sling{"330": {End: "left", At: "base", CentreMm: 200, Holes: "hole", For: true, On: [2]string{"eye"}}, "110": {}} {
		eye := func(n, left string) string {
			return "  - {name: eye-" + n + ", weld: {part: eye#" + n + ".outline, to: base.outline, type: fillet, size: 4}, place: {on: front, with: bottom, from-left: " + left + ", from-bottom: 160, front: down}}\n"
		}
		m, pl := load(t, write(t, map[string]string{
			"base.yaml": strings.Replace(basePart, "20 mm", "60 mm", 1) + "holes: [{name: own, at: [[-150, 80], [150, 80]], size: M8 tap, for: lifting, depth: 20 mm}]\n",
			"post.yaml": "part: post\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {rectangle: [900, 300]}\n",
			"eye.yaml":  "part: eye\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [40, 60]}\nholes:\n  - {name: hole, at: [[0, 12]], size: 18 mm, for: lifting}\n",
			"job.yaml": "job: Post\nunits: mm\nparts: [post.yaml, base.yaml, eye.yaml]\njoints:\n" + eye("1", "30") + eye("2", at) + strings.ReplaceAll(ribWeld, "rib.outline", "post.outline") +
				", place: {on: front, with: bottom, from-left: -250, from-bottom: 70, front: down}}\n",
		}))
		picture.Draw(m)
		lift := pl.Joints[len(pl.Joints)-1].Lift
		if lift == nil || lift.Sling == nil || lift.Sling.For != want.For || want.For && *lift.Sling != want {
			t.Errorf("the second at %s: %+v", at, lift)
		}
	}
}

// A cap of 300 × 400 × 40 (37.7 kg) lies on the front of a base, and the front is up: its longer way goes to TOP.
// One of 400 × 300 has it from 9 to 3 o'clock.
func TestSlungFrontUp(t *testing.T) {
	t.Parallel()
	for size, end := range map[string]string{"[300, 400]": "TOP", "[400, 300]": "9 o'clock"} {
		plate := "kind: plate\nmaterial: S235\nstock: {plate: 40 mm}\n"
		m, pl := load(t, write(t, map[string]string{
			"base.yaml": "part: base\n" + plate + "outline: {square: 600}\nholes: [{name: b, at: [[-50, 0], [50, 0]], size: M10 tap}]\n",
			"cap.yaml":  "part: cap\n" + plate + "outline: {rectangle: " + size + "}\nholes: [{name: b, at: [[-50, 0], [50, 0]], size: M10 clearance}]\n",
			"job.yaml":  "job: J\nunits: mm\nup: front\nparts: [base.yaml, cap.yaml]\njoints: [{name: on, bolt: {through: cap.b, into: base.b, bolt: M10 8.8}, face: back-on-front}]\n",
		}))
		picture.Draw(m)
		if l := pl.Joints[0].Lift; l == nil || l.Sling == nil || !l.Sling.FrontUp || l.Sling.End != end || l.Sling.CentreMm != 200 {
			t.Errorf("%s: %+v", size, l)
		}
	}
}

// An upright of 900 × 40 with one of 200 × 360 on its middle, 60 thick, has its centre of gravity 153.3 up, (36 · 20 + 72 · 220) / 108: 114 over
// wherever a strap lies on its ends. So it is slung at the widest places, 0.35 of 900 off the middle.
func TestSlungOverItsStraps(t *testing.T) {
	t.Parallel()
	m, pl := load(t, write(t, map[string]string{
		"base.yaml": strings.Replace(basePart, "20 mm", "60 mm", 1),
		"post.yaml": "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {polygon: {points: [[0, 0], [900, 0], [900, 40], [550, 40], [550, 400], [350, 400], [350, 40], [0, 40]]}}\n",
		"job.yaml": "job: Post\nunits: mm\nparts: [post.yaml, base.yaml]\njoints:\n" + strings.ReplaceAll(ribWeld, "rib.outline", "post.outline") +
			", place: {on: front, with: bottom, from-left: -250, from-bottom: 70, front: down}, anchored: base}\n",
	}))
	picture.Draw(m)
	want := plan.Sling{End: "left", At: "post", CentreMm: 450, HalfMm: 315, StrapMm: 50, On: [2]string{"post", "post"}, HookMm: 546, OverMm: 114}
	if l := pl.Joints[0].Lift; l == nil || l.Sling == nil || *l.Sling != want {
		t.Errorf("%+v", l)
	}
}

// By hand from the drawings: 24.1 kg of base plate 10 under its face, 10.3 kg of plate on it
// up to 320, and four gussets of 0.708 kg with their middle 54.4 up have their centre
// 41.9 over the face that eye bolts stand on, for a strap would lie on the stand. Of the barrel every
// place behind lies under its inlet or on that one's flange. With the housing the centre
// lies 445 from the front of the barrel end, its grease port's edge, M10, 715, its rear edge 760: no strap of 50 lies
// between them, one of 30 does.
func TestSlungBelowTheCentre(t *testing.T) {
	t.Parallel()
	joints, _ := pictured(t, "pugmill")
	for _, name := range []string{"base-far", "stand-corner-4"} { // bolted on, and tried on before
		if l := joints[name].Lift; l == nil || l.MassKg < 37 || l.Sling == nil || *l.Sling != (plan.Sling{End: "front", At: "Base plate", CentreMm: 194, Eyes: "M12", Holes: "jacking", Through: true, On: [2]string{"Base plate", "Base plate"}, OverMm: 42}) {
			t.Errorf("%s: %+v", name, l)
		}
	}
	if s := joints["housing"].Lift.Sling; s == nil || s.OverMm != 0 || s.At != "Barrel end" || s.CentreMm != 445 || s.StrapMm != 30 || s.On != [2]string{"Barrel tube", "Bearing housing"} || s.HalfMm-15 < 715-445 || s.HalfMm+15 > 760-445 {
		t.Errorf("%+v", s)
	}
	if s := joints["barrel"].Lift.Sling; s == nil || s.HalfMm != 0 || s.Eyes != "" || s.CentreMm != 226 {
		t.Errorf("slung under the inlet: %+v", s)
	}
	if l := joints["motor"].Lift; l != nil && l.Sling != nil {
		t.Errorf("bought, and slung: %+v", l)
	}
}
