package sequence

import (
	"maps"
	"math"
	"slices"
	"strings"

	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// anchors marks the holes for anchors in the view from above, and says how far each row of them
// lies from the machine's lines: above the view or below it, and at its right, at the
// heights that it returns.
func (r *arranger) anchors(d *draw.Drawing, p *picture.Paper, box draw.Rect, below bool) (right []float64) {
	const arm = 1.6
	across, along := map[float64]string{}, map[float64]string{}
	for _, a := range r.a.Anchors {
		x, y := p.At(a.AtMm)
		d.Add(draw.Segment(x-arm, y, x+arm, y, draw.ThinMm), draw.Segment(x, y-arm, x, y+arm, draw.ThinMm))
		across[x], along[y] = r.w.Read(a.FromMm.XMm), r.w.Read(a.FromMm.YMm)
	}
	edge, way, foot := box.Y1+tick, 1.0, 0.0
	if below {
		edge, way, foot = box.Y0-tick, -1, draw.TextMm
	}
	free := box.X0 - 3*picture.BalloonStepMm
	for _, x := range inOrder(across) {
		wide := draw.TextWidth(across[x], draw.TextMm, false)
		at := max(x, free+wide/2)
		free = at + wide/2 + gap
		d.Add(draw.Segment(x, edge, at, edge+way*tick, draw.ThinMm), draw.Segment(x, edge-way, x, edge, draw.ThinMm),
			draw.Text{XMm: at, YMm: edge + way*(tick+gap/2+foot*0.8), SizeMm: draw.TextMm, Align: draw.Centre, Content: across[x]})
	}
	rows := inOrder(along)
	right = draw.Spread(rows, draw.TextMm+gap, math.Inf(-1), math.Inf(1))
	for i, y := range rows {
		at := right[i]
		d.Add(draw.Segment(box.X1+0.5, y, box.X1+tick, y, draw.ThinMm), draw.Segment(box.X1+tick, y, box.X1+2*tick, at, draw.ThinMm))
		d.Add(draw.Over(draw.Text{XMm: box.X1 + 2*tick + gap/2, YMm: at - draw.TextMm*0.35, SizeMm: draw.TextMm, Content: along[y]})...)
	}
	return right
}

// The marks of anchors in millimetres, and the gap to their words.
const tick, gap = 1.5, 1.2

// anchorsMm is how far the words on anchors reach beside a view, in millimetres.
func (r *arranger) anchorsMm() (mm float64) {
	for _, a := range r.a.Anchors {
		mm = max(mm, 2*tick+gap+draw.TextWidth(r.w.Read(a.FromMm.YMm), draw.TextMm, false))
	}
	return mm
}

// inOrder are the places of rows, the least first.
func inOrder(rows map[float64]string) []float64 { return slices.Sorted(maps.Keys(rows)) }

// anchored says of which holes the crosses in the view from above are, and from where they lie so far.
func (r *arranger) anchored() string {
	var sizes []string
	for _, a := range r.a.Anchors {
		size := words.Either(a.Slot, "slots "+r.w.Read(a.DiameterMm)+" wide", "Ø"+r.w.Read(a.DiameterMm))
		sizes = seq.Add(sizes, size)
	}
	from := words.Either(r.a.Stands != "", ", as far from the two centre lines as written below and beside it.", ", as far from the FRONT end and from the axis as written above and beside it.")
	return words.When(len(sizes) != 0, "Crosses in the view from above: holes for anchors, "+strings.Join(sizes, ", ")+from)
}
