package picture

import (
	"cmp"
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// Room round a cut through a folded part, in millimetres.
const (
	foldSideMm = 26.0 // for the heights of its flanges
	foldOffMm  = 5.0  // from the metal to a dimension line
)

// FoldedMm is the least width of a cut, in millimetres, at which the lengths beside it and
// the one over it do not meet.
const FoldedMm = 2*foldSideMm + 20

// Folded draws a folded part cut across, the metal black, with its lengths and
// the turn of every bend. It is no wider than width and no taller than height.
func Folded(v *plan.FoldView, width, height float64) draw.Panel {
	w, h := v.MaxMm.XMm-v.MinMm.XMm, v.MaxMm.YMm-v.MinMm.YMm
	above, below := 2.0, 2.0
	for _, d := range v.Dims {
		if d.Out.YMm > 0.5 {
			above = foldOffMm + labelRowMm
		} else if d.Out.YMm < -0.5 {
			below = foldOffMm + labelRowMm
		}
	}
	fixed := above + below + CaptionMm
	scale := math.Min((width-2*foldSideMm)/w, math.Max(12, height-fixed)/h)
	tall := math.Max(h*scale, 2*labelRowMm) // for the texts beside it
	p := draw.Panel{Width: w*scale + 2*foldSideMm, Height: tall + fixed}
	ox, oy := foldSideMm-v.MinMm.XMm*scale, -(above+(tall-h*scale)/2)-v.MaxMm.YMm*scale
	for _, c := range v.Metal {
		if path, err := canvas.ParseSVGPath(string(c)); err == nil {
			path = path.Transform(canvas.Identity.Translate(ox, oy).Scale(scale, scale))
			p.Draw.Add(draw.Shape{Path: path, Fill: draw.Black, Stroke: draw.Black, WidthMm: draw.LineMm})
		}
	}
	for i, at := range foldTexts(v.Dims, func(q plan.XY) plan.XY { return q.Times(scale).Plus(plan.XY{XMm: ox, YMm: oy}) }) {
		foldLength(&p.Draw, &v.Dims[i], at)
	}
	for _, t := range v.Turns {
		if room := w * scale / float64(len(v.Turns)); h*scale < 3*draw.SmallMm || draw.TextWidth(t.Text, draw.SmallMm, false)+3 > room {
			continue // the table of folds has them
		}
		x, y, side := ox+t.AtMm.XMm*scale, oy+t.AtMm.YMm*scale, 1.0
		align := draw.Left
		if t.AtMm.XMm > 0 {
			side, align = -1, draw.Right
		}
		if y > oy {
			y += 1.5
		} else {
			y -= 1.5 + draw.AscentMm*draw.SmallMm
		}
		p.Draw.Add(draw.Text{XMm: x + side*1.5, YMm: y, SizeMm: draw.SmallMm, Align: align, Content: t.Text})
	}
	p.Draw.Add(draw.Text{XMm: p.Width / 2, YMm: -p.Height + 1.6, SizeMm: draw.SmallMm, Align: draw.Centre, Content: v.Name}.Within(p.Width))
	return p
}

// foldAt is a length's line on the paper, and how far its text is moved along so that it meets none beside it.
type foldAt struct {
	from, to plan.XY
	asideMm  float64
}

// foldTexts finds where lengths and their texts come: those of lips that turn to each other stand apart.
func foldTexts(dims []plan.FoldLength, on func(plan.XY) plan.XY) []foldAt {
	out := make([]foldAt, len(dims))
	for i, l := range dims {
		off := l.Out.Times(foldOffMm)
		out[i] = foldAt{from: on(l.FromMm).Plus(off), to: on(l.ToMm).Plus(off)}
	}
	middle := func(i int) plan.XY { return out[i].from.Plus(out[i].to).Times(0.5) }
	for i, l := range dims {
		var row []int
		for k, o := range dims {
			if o.Out.YMm*l.Out.YMm > 0 && math.Abs(o.Out.XMm) <= 0.5 && math.Abs(middle(k).YMm-middle(i).YMm) < labelRowMm {
				row = append(row, k)
			}
		}
		slices.SortStableFunc(row, func(a, b int) int { return cmp.Compare(middle(a).XMm, middle(b).XMm) })
		if at := slices.Index(row, i); at >= 0 {
			places := draw.Apart(seq.Map(row, func(k int) float64 { return middle(k).XMm }), seq.Map(row, func(k int) float64 {
				return max(draw.TextWidth(dims[k].Text, sizeEmMm, true), draw.TextWidth(dims[k].Limits, draw.SmallMm, false)) + 1.5
			}), math.Inf(-1), math.Inf(1))
			out[i].asideMm = places[at] - middle(i).XMm
		}
	}
	return out
}

// foldLength draws a length beside the metal, its text outside the line.
func foldLength(d *draw.Drawing, l *plan.FoldLength, at foldAt) {
	ax, ay, bx, by := at.from.XMm, at.from.YMm, at.to.XMm, at.to.YMm
	ux, uy := l.Out.XMm, l.Out.YMm
	for _, q := range [][2]float64{{ax, ay}, {bx, by}} {
		d.Add(draw.Segment(q[0]-ux*(foldOffMm-0.8), q[1]-uy*(foldOffMm-0.8), q[0]+ux, q[1]+uy, draw.HairMm))
	}
	d.Add(draw.Segment(ax, ay, bx, by, draw.ThinMm))
	for _, q := range [][2]float64{{ax, ay}, {bx, by}} { // strokes, which need no room between
		d.Add(draw.Segment(q[0]-0.8, q[1]-0.8, q[0]+0.8, q[1]+0.8, draw.ThinMm))
	}
	x, y, align := (ax+bx)/2+ux*1.2+at.asideMm, (ay+by)/2+uy*1.2, draw.Centre
	switch {
	case ux > 0.5:
		x, align = math.Max(ax, bx)+1.2, draw.Left
	case ux < -0.5:
		x, align = math.Min(ax, bx)-1.2, draw.Right
	}
	upper, lower := y+0.4, y-limitEmMm
	switch {
	case uy > 0.5 && l.Limits == "":
		upper = y
	case uy > 0.5:
		upper, lower = y+limitEmMm*1.2, y
	case uy < -0.5:
		upper, lower = y-sizeEmMm, y-sizeEmMm-limitEmMm*1.2
	}
	d.Add(draw.Text{XMm: x, YMm: upper, SizeMm: sizeEmMm, Bold: true, Align: align, Content: l.Text})
	if l.Limits != "" {
		d.Add(draw.Text{XMm: x, YMm: lower, SizeMm: draw.SmallMm, Align: align, Content: l.Limits})
	}
}
