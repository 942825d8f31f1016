package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A base of 400 × 200 × 60 (37.7 kg) is lighter than the post of 900 × 300 × 60
// on it; once it is anchored the post is lifted. Either is the same at both ends:
// its centre lies in the middle, and the places 0.35 of its length off that. The
// legs rise by tan 60°. A post of thin sheet stock is slung on nothing.
func TestSlings(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		anchored, form string
		want           *plan.Sling
	}{
		{"", "plate", &plan.Sling{End: "left", At: "base", CentreMm: 200, HalfMm: 140, On: [2]string{"base", "base"}, HookMm: 243}},
		{", anchored: base", "plate", &plan.Sling{End: "left", At: "post", CentreMm: 450, HalfMm: 315, On: [2]string{"post", "post"}, HookMm: 546}},
		{", anchored: base", "sheet", nil},
	} {
		m, pl := load(t, write(t, map[string]string{
			"base.yaml": strings.Replace(basePart, "20 mm", "60 mm", 1),
			"post.yaml": "part: post\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {" + c.form + ": 60 mm}\noutline: {rectangle: [900, 300]}\n",
			"job.yaml": "job: Post\nunits: mm\nparts: [post.yaml, base.yaml]\njoints:\n" + strings.ReplaceAll(ribWeld, "rib.outline", "post.outline") +
				", place: {on: front, with: bottom, from-left: -250, from-bottom: 70, front: down}" + c.anchored + "}\n",
		}))
		m.Pictures()
		lift := pl.Joints[0].Lift
		switch {
		case lift == nil:
			t.Errorf("%s: nothing is lifted", c.anchored)
		case (lift.Sling == nil) != (c.want == nil) || c.want != nil && *lift.Sling != *c.want:
			t.Errorf("%s: %+v, want %+v", c.anchored, lift.Sling, c.want)
		}
	}
}

// By hand from the drawings: 24.1 kg of base plate 10 under its face, 10.3 kg of plate on it
// up to 320, and four gussets of 0.708 kg with their middle 54.4 up have their centre
// 41.9 over the face that they are slung by. Of the barrel every place behind lies under its
// inlet or on that one's flange.
func TestSlungBelowTheCentre(t *testing.T) {
	t.Parallel()
	joints, _ := pictured(t, "pugmill")
	if s := joints["base-far"].Lift.Sling; s == nil || s.OverMm != 42 || s.HalfMm != 161 || s.At != "Base plate" {
		t.Errorf("%+v", s)
	}
	if s := joints["housing"].Lift.Sling; s == nil || s.OverMm != 0 || s.HalfMm != 302 || s.At != "Barrel end" {
		t.Errorf("%+v", s)
	}
	if s := joints["barrel"].Lift.Sling; s != nil {
		t.Errorf("slung under the inlet: %+v", s)
	}
}
