package picture_test

import (
	"slices"
	"testing"

	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// A base with a wall on it, 30 kg, is the machine though a pin with a ring, 6 kg, stands before
// it in the job; pin and ring, tied to it by nothing, have views of their own.
func TestArrangementOfTheHeaviest(t *testing.T) {
	t.Parallel()
	m, _ := load(t, write(t, map[string]string{
		"pin.yaml":  "part: pin\ntitle: Pin\nkind: shaft\nmaterial: C45\nstock: {round: 80 mm, length: 160 mm}\nprofile:\n  outside:\n    - {name: nose, diameter: 40, length: 50, fit: h6}\n    - {name: body, diameter: 60, length: 70}\ngrooves: [{name: ring, in: nose, axial: 10, from: front, for: retaining-ring}]\n",
		"ring.yaml": "part: ring\ntitle: Ring\nkind: turned\nmaterial: S235\nstock: {round: 125 mm, length: 46 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 38}]\n  inside: [{name: bore, diameter: 40, length: 38, fit: H8}]\n",
		"base.yaml": "part: base\ntitle: Base\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {rectangle: [400, 400]}\n",
		"foot.yaml": "part: foot\ntitle: Foot\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {square: 80}\n",
		"lug.yaml":  "part: lug\ntitle: Lug\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {square: 40}\n",
		"wall.yaml": "part: wall\ntitle: Wall\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {rectangle: [300, 100]}\n",
		"job.yaml":  "job: J\nunits: mm\nparts: [pin.yaml, ring.yaml, base.yaml, wall.yaml, foot.yaml, lug.yaml]\njoints:\n  - {name: s, slide: {hub: ring.bore, on: pin.nose, kept-by: pin.ring}}\n  - {name: lug, weld: {part: lug.outline, to: foot.outline, type: fillet, size: 3}, place: {on: front, with: bottom, at: [0, 0], front: left}}\n  - {name: w, weld: {part: wall.outline, to: base.outline, type: fillet, size: 5}, place: {on: front, with: bottom, from-left: 50, from-top: 40, front: up}}\n",
	}))
	a := picture.Draw(m)
	titles := func(a *plan.Arrangement) (list []string) {
		for _, s := range a.Front.Shapes {
			if s.Title != "" {
				list = append(list, s.Title)
			}
		}
		slices.Sort(list)
		return slices.Compact(list)
	}
	if got := titles(a); !slices.Equal(got, []string{"Base", "Wall"}) || a.Title != "" || a.Holds != nil || len(a.Apart) != 2 {
		t.Fatalf("the machine cuts %v; %+v", got, a)
	}
	o := a.Apart[0]
	if got := titles(o); !slices.Equal(got, []string{"Pin", "Ring", "retaining ring of Pin"}) || o.Title != "Ring" || len(o.Holds) != 2 || o.Holds[1] != 1 || o.Holds[2] != 1 {
		t.Errorf("apart: %v, %s, %v", got, o.Title, o.Holds)
	}
	if two := a.Apart[1]; !slices.Equal(titles(two), []string{"Foot"}) || two.Title != "Foot" || len(two.Holds) != 2 {
		t.Errorf("the second apart: %v, %s, %v", titles(two), two.Title, two.Holds)
	}
	if w, h := o.Front.MaxMm.XMm-o.Front.MinMm.XMm, o.Front.MaxMm.YMm-o.Front.MinMm.YMm; w != 120 || h != 120 { // the ring ends where the pin does
		t.Errorf("%g × %g", w, h)
	}
}
