package picture

import (
	"cmp"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// label is a diameter to be written above or below a section.
type label struct {
	plan.Dimension
	fromMm, toMm float64   // where along the axis its surface can be shown
	row          int       // from the part outwards
	middle       float64   // of its text
	passes       []float64 // where its leader passes the rows nearer to the part, from the part outwards
	at           float64   // the height that its leader leaves the rows at
}

// labels write diameters with their limits in rows from y on, away from the part, each with a leader
// that goes between the labels of the nearer rows to its surface.
func (v *dimensioned) labels(dims []plan.Dimension, y float64, rows int, side float64) []*label {
	list := v.settled(labelled(dims, rows), rows)
	base, bands := make([]float64, rows), make([][2]float64, rows)
	high := 0.0
	for row := range rows {
		inner := high
		high += rowMm(rowOf(list, row))
		base[row], bands[row] = y+inner, [2]float64{y + inner - 0.7, y + high - 1.5}
		if side < 0 {
			base[row], bands[row] = y-high+1, [2]float64{y - inner - 0.4, y - high + 1}
		}
	}
	for _, l := range list {
		v.leader(l, bands, side)
	}
	for _, l := range list {
		upper, lower := base[l.row]+limitEmMm*1.35, base[l.row]+0.5
		if l.Limits == "" {
			upper = lower
		} else {
			v.p.Draw.Add(draw.Over(draw.Text{XMm: l.middle, YMm: lower, SizeMm: limitEmMm, Align: draw.Centre, Content: l.Limits}.Within(v.p.Width - 1))...)
		}
		v.p.Draw.Add(draw.Over(draw.Text{XMm: l.middle, YMm: upper, SizeMm: sizeEmMm, Bold: true, Align: draw.Centre, Content: l.Text}.Within(v.p.Width - 1))...)
	}
	return list
}

// stretch is where along the axis the surface of a diameter can be shown: the longest part of
// it that nothing with a label of its own is cut into.
func stretch(d plan.Dimension, all []plan.Dimension) (fromMm, toMm float64) {
	at := d.FromMm
	cut := append(slices.Clone(all), plan.Dimension{FromMm: d.ToMm, ToMm: d.ToMm})
	slices.SortStableFunc(cut, func(a, b plan.Dimension) int { return cmp.Compare(a.FromMm, b.FromMm) })
	for _, o := range cut {
		if o.FromMm > d.ToMm || o.ToMm < d.FromMm || o.ToMm-o.FromMm >= d.ToMm-d.FromMm {
			continue
		}
		if o.FromMm-at > toMm-fromMm {
			fromMm, toMm = at, o.FromMm
		}
		at = max(at, o.ToMm)
	}
	if toMm == fromMm {
		return d.FromMm, d.ToMm
	}
	return fromMm, toMm
}

// settled gives labels the rows in which their leaders lean least: one after the other changes its row,
// or two change theirs for each other's, while that helps and the rows do not grow.
func (v *dimensioned) settled(list []*label, rows int) []*label {
	most, leans := highMm(list, rows), v.placed(list)
	better := func() bool {
		if highMm(list, rows) > most {
			return false
		}
		mm := v.placed(list)
		is := mm < leans-0.5
		if is {
			leans = mm
		}
		return is
	}
	for again := true; again; {
		again = false
		for _, l := range list {
			best := l.row
			for l.row = range rows {
				if better() {
					best, again = l.row, true
				}
			}
			l.row = best
			for _, o := range list {
				if l.row, o.row = o.row, l.row; better() {
					again = true
				} else {
					l.row, o.row = o.row, l.row
				}
			}
		}
	}
	v.placed(list)
	return list
}

// placed finds the middles of labels, row by row from the part outwards: over their surfaces as far as
// there is room for them and for the leaders that pass between them; and how far the leaders lean in all.
func (v *dimensioned) placed(list []*label) (leansMm float64) {
	for _, l := range list {
		l.passes = nil
	}
	for row := 0; ; row++ {
		on := seq.Keep(list, func(l *label) bool { return l.row >= row })
		if len(on) == 0 {
			return leansMm
		}
		places := seq.Map(on, func(l *label) float64 { return v.x((l.fromMm + l.toMm) / 2) })
		widths := seq.Map(on, func(l *label) float64 { return l.roomMm(row) })
		free := seq.Map(on, v.onto)
		for i := range on {
			half := max(0, widths[i]/2-labelGapMm)
			free[i] = [2]float64{free[i][0] - half, free[i][1] + half}
		}
		for range 20 { // none moves another where all can stay over their surfaces
			for i, f := range free {
				places[i] = min(max(places[i], f[0]), f[1])
			}
			places = draw.Apart(places, widths, 0, v.p.Width)
		}
		for i, l := range on {
			leansMm += max(0, free[i][0]-places[i], places[i]-free[i][1]) + 1000*max(0, places[i]+widths[i]/2-v.p.Width)
			if l.middle = places[i]; l.row > row {
				l.passes = append(l.passes, l.middle)
			}
		}
	}
}

// onto is where a leader can stand upright on the surface of a label, in the panel.
func (v *dimensioned) onto(l *label) [2]float64 {
	margin := (l.toMm - l.fromMm) * 0.15
	return [2]float64{v.x(l.fromMm + margin), v.x(l.toMm - margin)}
}

// leader leads from a label to its surface, upright where it can be and through the rows between: where each
// band of texts begins and ends is given, from the part outwards. What of it lies in the rows is drawn.
func (v *dimensioned) leader(l *label, bands [][2]float64, side float64) {
	free := v.onto(l)
	from := v.starts(l)
	x, y := min(max(min(max(l.middle, free[0]), free[1]), from[0]), from[1]), bands[l.row][0]
	if l.row > 0 {
		half := l.half()
		x = min(max(l.passes[l.row-1], l.middle-half), l.middle+half)
	}
	for row := l.row - 1; row >= 0; row-- {
		v.lead(x, y, l.passes[row], bands[row][1])
		x, y = l.passes[row], bands[row][0]
		v.lead(x, bands[row][1], x, y)
	}
	l.at = y
	v.leaders = append(v.leaders, [4]float64{x, y, min(max(x, free[0]), free[1]), v.surface(l, side)})
}

// half is how far from its middle a leader may leave a label.
func (l *label) half() float64 { return max(0, labelWidth(l.Dimension)/2-labelGapMm) }

// starts is where a leader can leave the rows of labels.
func (v *dimensioned) starts(l *label) [2]float64 {
	if l.row > 0 {
		return [2]float64{l.passes[0], l.passes[0]}
	}
	return [2]float64{l.middle - l.half(), l.middle + l.half()}
}

// surface is the height of the surface of a label on its side of the axis.
func (v *dimensioned) surface(l *label, side float64) float64 {
	if v.s.Whole != nil {
		return v.y(l.RadiusMm * side)
	}
	return v.y(l.RadiusMm)
}

// lead is a piece of a leader.
func (v *dimensioned) lead(x, y, tx, ty float64) {
	v.leaders = append(v.leaders, [4]float64{x, y, tx, ty})
	v.p.Draw.Add(draw.Segment(x, y, tx, ty, draw.HairMm))
}

// leaderTo is a thin line from a label to a surface, ending in an arrow on it.
func leaderTo(x, y, tx, ty float64) []draw.Item {
	dir := canvas.Point{X: tx - x, Y: ty - y}
	if dir.Length() < 0.1 {
		return nil
	}
	dir = dir.Norm(arrowMm)
	across := canvas.Point{X: -dir.Y * 0.18, Y: dir.X * 0.18}
	return []draw.Item{
		draw.Segment(x, y, tx, ty, draw.HairMm),
		draw.Shape{Path: draw.Polygon(tx, ty, tx-dir.X+across.X, ty-dir.Y+across.Y, tx-dir.X-across.X, ty-dir.Y-across.Y), Fill: draw.Black},
	}
}

// labelWidth is the width of a label and of the gap beside it.
func labelWidth(d plan.Dimension) float64 {
	return max(draw.TextWidth(d.Text, sizeEmMm, true), draw.TextWidth(d.Limits, limitEmMm, false)) + labelGapMm
}

// roomMm is the width that a label takes in a row: its own, or that of its leader that passes.
func (l *label) roomMm(row int) float64 {
	if l.row > row {
		return passMm
	}
	return labelWidth(l.Dimension)
}

// rowsFor is in how many rows labels must stand for each to have its room.
func rowsFor(dims []plan.Dimension, width float64) int {
	rows := min(len(dims), 1)
	for rows < len(dims) && labelsWidth(dims, rows) > width {
		rows++
	}
	return rows
}

// labelled are diameters in the order in which they stand along the part, in rows by turns.
func labelled(dims []plan.Dimension, rows int) []*label {
	list := seq.Map(dims, func(d plan.Dimension) *label {
		from, to := stretch(d, dims)
		return &label{Dimension: d, fromMm: from, toMm: to}
	})
	slices.SortStableFunc(list, func(a, b *label) int { return cmp.Compare(a.fromMm+a.toMm, b.fromMm+b.toMm) })
	for i, l := range list {
		l.row = i % rows
	}
	return list
}

// rowOf are the labels of a row.
func rowOf(list []*label, row int) []*label {
	return seq.Keep(list, func(l *label) bool { return l.row == row })
}

func rowMm(row []*label) float64 {
	if slices.ContainsFunc(row, func(l *label) bool { return l.Limits != "" }) {
		return labelRowMm
	}
	return plainRowMm
}

// labelsMm is how high labels in rows are.
func labelsMm(dims []plan.Dimension, rows int) float64 { return highMm(labelled(dims, rows), rows) }

func highMm(list []*label, rows int) (mm float64) {
	for row := range rows {
		mm += rowMm(rowOf(list, row))
	}
	return mm
}

// labelsWidth is how wide a panel must be for its labels in rows, and for the leaders between them.
func labelsWidth(dims []plan.Dimension, rows int) (widest float64) {
	list := labelled(dims, rows)
	for row := range rows {
		widest = max(widest, seq.Sum(list, func(l *label) float64 {
			if l.row < row {
				return 0
			}
			return l.roomMm(row)
		}))
	}
	return widest
}
