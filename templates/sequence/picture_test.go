package sequence

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// ends are where the leaders of a drawing's balloons end, by their numbers.
func ends(d *draw.Drawing) map[string][][2]float64 {
	out := map[string][][2]float64{}
	for i, item := range d.Items {
		text, ok := item.(draw.Text)
		if !ok || i < 2 {
			continue
		}
		ring, round := d.Items[i-1].(draw.Shape)
		dot, dotted := d.Items[i-2].(draw.Shape)
		if b := ring.Path; round && dotted && b != nil && math.Abs(b.Bounds().W()-2*draw.BalloonMm) < 0.01 && math.Abs(dot.Path.Bounds().W()-1.2) < 0.01 {
			at := dot.Path.Bounds()
			out[text.Content] = append(out[text.Content], [2]float64{(at.X0 + at.X1) / 2, (at.Y0 + at.Y1) / 2})
		}
	}
	return out
}

// In every picture of both demos a balloon ends in what is to be seen of its part: in its cut surface,
// outside of what is drawn over that; in the general arrangement so in the view that is cut.
func TestBalloonsEndInTheirParts(t *testing.T) {
	t.Parallel()
	inside := func(s *plan.Shape, q plan.XY) bool {
		return onMetal(&plan.Picture{Shapes: []plan.Shape{*s}}, q)
	}
	// off tells what is wrong with an end among shapes that are drawn one over the other.
	off := func(drawn []*plan.Shape, item int, q plan.XY) string {
		top := ""
		for _, s := range drawn {
			if inside(s, q) {
				top = strconv.Itoa(s.Item) + " " + s.Title
			}
		}
		if i := slices.IndexFunc(drawn, func(s *plan.Shape) bool { return s.Item == item }); i < 0 || top != strconv.Itoa(item)+" "+drawn[i].Title && !slices.ContainsFunc(drawn, func(s *plan.Shape) bool { return s.Item == item && top == strconv.Itoa(item)+" "+s.Title }) {
			return "ends on " + top
		}
		return ""
	}
	for _, job := range []string{"pugmill", "gatejack"} {
		pl := demo(t, job)
		n := 0
		for _, j := range pl.Joints {
			for i := range j.Pictures {
				pic := &j.Pictures[i]
				p := draw.Panel{Width: 300}
				v := &picture.Paper{Scale: 1}
				sectionOf(&p, pic, v, 1)
				for number, list := range ends(&p.Draw) {
					item, _ := strconv.Atoi(number)
					for _, at := range list {
						n++
						if wrong := off(painted(pic), item, plan.XY{XMm: at[0], YMm: at[1]}); wrong != "" {
							t.Errorf("%s step %d, picture %d: balloon %s %s", job, j.N, i+1, number, wrong)
						}
					}
				}
			}
		}
		if n < 50 {
			t.Errorf("%s: %d balloons", job, n)
		}
		var d draw.Drawing
		r := newArranger(pl, pl.Arrangement, draw.Frame{WidthMm: 297, HeightMm: 210})
		var drawn []*plan.Shape
		for i := range r.a.Front.Shapes {
			drawn = append(drawn, &r.a.Front.Shapes[i])
		}
		for _, q := range r.cutView(&d, &picture.Paper{Scale: 1}) {
			behind := slices.ContainsFunc(r.a.Front.Behind, func(p plan.Place) bool { return p.Item == q.N })
			if wrong := off(drawn, q.N, plan.XY{XMm: q.X, YMm: q.Y}); wrong != "" && !behind {
				t.Errorf("%s, arrangement: balloon %d %s", job, q.N, wrong)
			}
		}
	}
}
