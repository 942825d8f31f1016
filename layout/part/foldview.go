package part

import (
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/layout/bend"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// show draws the cuts across the folded part.
func (f *folded) show(n *Numbered, out *plan.PartPlan) {
	out.Dimensions = nil
	out.Profiles, _ = f.cuts(n.Sizes)
}

// cuts are the cuts across the folded part: from left to right and from bottom
// to top, where there are flanges; and how wide and how high it is over those, mm.
func (f *folded) cuts(s *Sizes) (out []plan.FoldView, overMm [2]float64) {
	overMm = [2]float64{f.Outline.Width.Mm, f.Outline.Height.Mm}
	for n, v := range []struct {
		name       string
		minus, way bend.Side
		mm         float64
	}{{"cut from left to right, front up", bend.Left, bend.Right, overMm[0]}, {"cut from bottom to top, front up", bend.Bottom, bend.Top, overMm[1]}} {
		view := plan.FoldView{Name: v.name}
		ends := [2]float64{-v.mm / 2, v.mm / 2}
		for i := range f.blank.Folds {
			fold, hand := &f.blank.Folds[i], 1.0
			switch fold.Side {
			case v.minus:
				hand = -1
			case v.way:
			default:
				continue
			}
			if fold.Nth == 0 {
				ends[int(hand+1)/2] = hand * fold.BeginMm
			}
			f.flapView(s, &view, i, hand)
		}
		if len(view.Metal) == 0 {
			continue
		}
		if len(view.Turns) > 2 { // flanges on flanges leave no room: the table of folds has them
			view.Turns = nil
		}
		base := []plan.XY{{XMm: ends[0]}, {XMm: ends[1]}, {XMm: ends[1], YMm: -f.Thickness.Mm}, {XMm: ends[0], YMm: -f.Thickness.Mm}}
		addMetal(&view, geom.Polygon(base))
		overMm[n] = view.MaxMm.XMm - view.MinMm.XMm
		z := s.General(v.mm)
		out = append(out, f.over(view, v.mm, s.W.Size(v.mm), s.limitsText(z)))
	}
	return out, overMm
}

// addMetal puts a closed path among the metal of a view.
func addMetal(v *plan.FoldView, p *canvas.Path) {
	b := geom.Bounds(p)
	if len(v.Metal) > 0 {
		b = b.Join(geom.Box{Min: v.MinMm, Max: v.MaxMm})
	}
	v.MinMm, v.MaxMm = b.Min, b.Max
	v.Metal = append(v.Metal, plan.Contour(p.ToSVG()))
}

// over puts the length over the flanges where fewest of them stand.
func (f *folded) over(view plan.FoldView, mm float64, text, limits string) plan.FoldView {
	d := plan.FoldLength{FromMm: plan.XY{XMm: -mm / 2, YMm: view.MaxMm.YMm}, ToMm: plan.XY{XMm: mm / 2, YMm: view.MaxMm.YMm}, Out: plan.XY{YMm: 1}, Text: text, Limits: limits}
	if view.MaxMm.YMm > -view.MinMm.YMm {
		d.FromMm.YMm, d.ToMm.YMm, d.Out.YMm = view.MinMm.YMm, view.MinMm.YMm, -1
	}
	view.Dims = append([]plan.FoldLength{d}, view.Dims...)
	return view
}

// flapView draws a flange on the right of a cut (hand 1) or on its left (−1).
func (f *folded) flapView(s *Sizes, v *plan.FoldView, i int, hand float64) {
	fold := &f.blank.Folds[i]
	at := func(p plan.XY) plan.XY { return plan.XY{XMm: geom.Clean(hand * p.XMm), YMm: geom.Clean(p.YMm)} }
	addMetal(v, loopOf(fold.Section(), hand < 0, at))
	foot, turn := fold.Wall()
	sin, cos := math.Sincos(turn * math.Pi / 180)
	along, out := plan.XY{XMm: cos, YMm: sin}, plan.XY{XMm: -sin, YMm: cos} // out of the front
	if fold.Forward {                                                       // whose outside is the back
		foot, out = foot.Minus(out.Times(f.Thickness.Mm)), out.Times(-1)
	}
	z := s.General(fold.HeightMm)
	v.Dims = append(v.Dims, plan.FoldLength{FromMm: at(foot), ToMm: at(foot.Plus(along.Times(fold.HeightMm))), Out: at(out), Text: s.W.Size(fold.HeightMm), Limits: s.limitsText(z)})
	v.Turns = append(v.Turns, plan.FoldTurn{AtMm: at(fold.Centre()), Text: words.Trim(fold.AngleDeg, 1) + "° R" + s.W.Size(fold.RadiusMm)})
}
