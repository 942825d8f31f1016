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

// Room round a dimensioned section, in millimetres.
const (
	labelRowMm   = 8.6  // size over limits
	plainRowMm   = 5.4  // sizes alone
	chainMm      = 7.5  // a line of lengths with its texts
	chainRowMm   = 3.9  // a further row of its texts
	roomyMm      = 26.0 // of a section that can do with less
	dimSidePad   = 7.0
	wholeSidePad = 16.0 // with TOP at the left and how far an end is off at the right
	sizeEmMm     = 3.4  // em of a size, and of its limits
	limitEmMm    = 2.7
	arrowMm      = 2.2
	leastMm      = 14.0 // of the section itself
	shortMm      = 34.0 // of a short part, which is drawn longer than it is for the sake of its lengths,
	mostStretch  = 1.8  // but not more
	endsMm       = 7.4  // FRONT and BACK under it
)

// Dimensioned draws a part cut along its axis, the half above it, with its
// sizes: diameters at leaders, outside above and inside below, lengths on
// dimension lines in a chain, the overall length above them (ISO 129-1). It is
// no wider than width and no taller than maxHeight.
func Dimensioned(part *plan.PartPlan, width, maxHeight float64) draw.Panel {
	s := part.Section
	v := &dimensioned{part: part, s: s}
	v.sort()
	outsideRows, boreRows := rowsFor(v.outsides, width), rowsFor(v.bores, width)
	v.lo, v.hi = reach(s)
	side := dimSidePad
	if s.Whole != nil {
		side = wholeSidePad
	}
	outsideMm := labelsMm(v.outsides, outsideRows)
	// A thin plate is drawn thicker than it is, and a long rod shorter.
	aspect := min(max(s.LengthMm/(v.hi-v.lo), 0.3), 12)
	for v.rows = [2]int{1, 1}; ; {
		fixed := outsideMm + labelsMm(v.bores, boreRows) + v.chainsMm(0) + chainMm + endsMm + v.chainsMm(1)
		room := max(leastMm, maxHeight-fixed)
		v.h = min(room, (width-2*side)/aspect)
		v.h = min(max(v.h, leastMm), room)
		v.w = min(v.h*aspect, width-2*side)
		if s.Flat { // its faces tell more
			v.h, v.w = min(v.h, roomyMm), min(v.w, roomyMm)
		} else if s.Whole == nil {
			v.w = max(v.w, min(v.w*mostStretch, shortMm, width-2*side))
		}
		panelWidth := min(width, max(v.w+2*side, 46, labelsWidth(v.outsides, outsideRows), labelsWidth(v.bores, boreRows)))
		v.p = draw.Panel{Width: panelWidth, Height: fixed + v.h}
		v.x0 = (panelWidth - v.w) / 2
		v.axis = -(outsideMm + v.chainsMm(0) + chainMm + v.h*v.hi/(v.hi-v.lo))
		if !v.moreRows() {
			break
		}
	}
	v.p.Later = func() draw.Drawing {
		one := *v
		one.draw(outsideRows, boreRows)
		return one.p.Draw
	}
	return v.p
}

// sort finds the place of each size; where they are too many there is the overall length alone.
func (v *dimensioned) sort() {
	crowded := Crowded(v.part)
	for _, d := range v.part.Dimensions {
		to := &v.above
		switch {
		case d.Kind == plan.OverallDim:
			v.overall = d
			continue
		case d.Kind == plan.OffsetDim:
			v.offset = &d
			continue
		case d.Kind == plan.LengthDim && d.FromMm == 0 && d.ToMm == v.s.LengthMm: // the overall length says it
			continue
		case d.Kind == plan.DiameterDim && d.Inside:
			to = &v.bores
		case d.Kind == plan.DiameterDim:
			to = &v.outsides
		case d.Inside:
			to = &v.below
		}
		if !crowded {
			*to = append(*to, d)
		}
	}
}

// chainsMm is the height of the lengths above the part (0) or below it (1).
func (v *dimensioned) chainsMm(side int) float64 {
	if len([2][]plan.Dimension{v.above, v.below}[side]) == 0 {
		return 0
	}
	return chainMm + float64(v.rows[side]-1)*chainRowMm
}

// moreRows gives a chain another row where its texts would stand off their lines.
func (v *dimensioned) moreRows() bool {
	for side, dims := range [2][]plan.Dimension{v.above, v.below} {
		if _, off := v.chainPlaces(dims, v.rows[side]); off && v.rows[side] < min(mostChainRows, len(dims)) && v.h > roomyMm {
			v.rows[side]++
			return true
		}
	}
	return false
}

// chainPlaces are the middles of the texts of a chain, every one in the next of so many rows, and
// whether one of them stands beside its own line.
func (v *dimensioned) chainPlaces(dims []plan.Dimension, rows int) (places []float64, off bool) {
	places = make([]float64, len(dims))
	for row := range rows {
		var wanted, widths []float64
		for i := row; i < len(dims); i += rows {
			a, b := v.x(dims[i].FromMm), v.x(dims[i].ToMm)
			wanted, widths = append(wanted, (a+b)/2), append(widths, chainWidth(dims, i))
		}
		for k, x := range apart(wanted, widths, 0.5, v.p.Width-0.5) {
			i := row + k*rows
			a, b := v.x(dims[i].FromMm), v.x(dims[i].ToMm)
			places[i] = x
			off = off || math.Abs(x-wanted[k]) > max((b-a)/2, 0.45*widths[k])
		}
	}
	return places, off
}

// chainWidth is the room of a text of a chain.
func chainWidth(dims []plan.Dimension, i int) float64 {
	w := draw.TextWidth(dims[i].Text, sizeEmMm, true) + 1.2
	if len(dims) == 1 && dims[0].Limits != "" {
		w += draw.TextWidth(dims[0].Limits, limitEmMm, false) + 1.5
	}
	return w
}

// mostChainRows is in how many rows the texts of a chain stand at most.
const mostChainRows = 3

// draw draws the section and its sizes, the diameters in so many rows above and
// below.
func (v *dimensioned) draw(outsideRows, boreRows int) {
	v.metal()
	top, low := v.y(v.hi), v.y(v.lo)
	chains := v.chainsMm(0) + chainMm
	v.labels(v.outsides, top+chains+1.5, outsideRows, 1)
	v.chain([]plan.Dimension{v.overall}, top+chains-4, top, 0)
	v.chain(v.above, top+chainMm-4, top, 0)
	v.labels(v.bores, low-2-v.chainsMm(1), boreRows, -1)
	v.chain(v.below, low-v.chainsMm(1)+1, low, 1)
	if v.s.Whole != nil {
		v.leaning(top)
	}
	v.p.Draw.Add(draw.Text{XMm: 0, YMm: -v.p.Height + 1.2, SizeMm: draw.SmallMm, Bold: true, Content: "FRONT"},
		draw.Text{XMm: v.p.Width, YMm: -v.p.Height + 1.2, SizeMm: draw.SmallMm, Bold: true, Align: draw.Right, Content: "BACK"})
}

// mostLabels is how many diameters a side of a section shows.
const mostLabels = 16

// Crowded tells whether a part has too many sizes to draw: they are listed
// instead.
func Crowded(part *plan.PartPlan) bool {
	n := map[bool]int{}
	for _, d := range part.Dimensions {
		if d.Kind == plan.DiameterDim {
			n[d.Inside]++
		}
	}
	return max(n[true], n[false]) > mostLabels
}

// dimensioned is a section in the making.
type dimensioned struct {
	part                          *plan.PartPlan
	s                             *plan.Section
	outsides, bores, above, below []plan.Dimension
	overall                       plan.Dimension
	p                             draw.Panel
	leaders                       [][4]float64
	offset                        *plan.Dimension
	rows                          [2]int  // of the texts of the lengths above and below
	lo, hi                        float64 // of the section, from its axis
	x0, axis, w, h                float64
}

// x is where a place along the axis lies, and y one so far above it.
func (v *dimensioned) x(z float64) float64 { return v.x0 + z*v.w/v.s.LengthMm }
func (v *dimensioned) y(r float64) float64 { return v.axis + r*v.h/(v.hi-v.lo) }

// leaning marks TOP beside a section that is cut on both sides of the axis, and how far
// the middle of its back end stands off the axis.
func (v *dimensioned) leaning(top float64) {
	d, x := &v.p.Draw, v.x0-wholeSidePad/2-2
	d.Add(draw.TopArrow(x, top-5, 5), draw.Text{XMm: x, YMm: top - 8.4, SizeMm: draw.SmallMm, Bold: true, Align: draw.Centre, Content: "TOP"})
	if v.offset == nil {
		return
	}
	end, y := v.x(v.s.LengthMm), v.y(v.offset.RadiusMm)
	d.Add(draw.Segment(end-2, y, end+6, y, draw.ThinMm, draw.ChainDash...), draw.Segment(end+5, v.axis, end+5, y, draw.ThinMm))
	for _, at := range []float64{v.axis, y} {
		d.Add(draw.Segment(end+4.2, at-0.8, end+5.8, at+0.8, draw.ThinMm))
	}
	d.Add(draw.Text{XMm: end + 6.8, YMm: (v.axis+y)/2 - sizeEmMm*0.36, SizeMm: sizeEmMm, Bold: true, Content: v.offset.Text})
}

// metal draws the half section, its threads, and the axis.
func (v *dimensioned) metal() {
	at := func(q plan.XY) (float64, float64) { return v.x(q.XMm), v.y(q.YMm) }
	cut(&v.p.Draw, v.s, at, draw.R(v.x0-1, v.axis-1, v.x0+v.w+1, v.axis+v.h+1))
	threadLines(&v.p.Draw, v.s, at, false)
	cutIn(&v.p.Draw, v.part, at)
	v.p.Draw.Add(draw.Segment(v.x0-4, v.axis, v.x0+v.w+4, v.axis, draw.ThinMm, draw.ChainDash...))
}

// chain draws lengths on a line at y, with extension lines from the metal's
// edge at from, above the part (0) or below it (1). The texts of further rows have a line down
// to what they measure.
func (v *dimensioned) chain(dims []plan.Dimension, y, from float64, side int) {
	d, rows, out := &v.p.Draw, v.rows[side], [2]float64{1, -1}[side]
	edges := map[float64]bool{}
	widths := make([]float64, len(dims))
	for i, dim := range dims {
		a, b := v.x(dim.FromMm), v.x(dim.ToMm)
		for _, x := range []float64{a, b} {
			if !edges[x] {
				edges[x] = true
				d.Add(draw.Segment(x, from+out*0.8, x, y+out*1.2, draw.HairMm))
			}
		}
		d.Add(draw.Segment(a, y, b, y, draw.ThinMm))
		if b-a > 3*arrowMm {
			d.Add(arrow(a, y, -1), arrow(b, y, 1))
		} else { // no room between: strokes
			d.Add(draw.Segment(a-0.8, y-0.8, a+0.8, y+0.8, draw.ThinMm), draw.Segment(b-0.8, y-0.8, b+0.8, y+0.8, draw.ThinMm))
		}
		widths[i] = chainWidth(dims, i)
	}
	places, _ := v.chainPlaces(dims, rows)
	roomy := true // every text stands within its own stretch
	for i, dim := range dims {
		a, b := v.x(dim.FromMm), v.x(dim.ToMm)
		roomy = roomy && widths[i] < b-a
		if row := i % rows; row > 0 { // under all texts, which stand over it
			d.Add(draw.Segment(places[i], y+0.5+float64(row)*chainRowMm, (a+b)/2, y, draw.HairMm))
		}
	}
	for i, dim := range dims {
		a, b := v.x(dim.FromMm), v.x(dim.ToMm)
		base := y + 0.9 + float64(i%rows)*chainRowMm
		if roomy {
			places[i] = v.clear(places[i], widths[i], y, a, b)
		}
		text, size := dim.Text, sizeEmMm
		if len(dims) == 1 && dim.Limits != "" {
			room := draw.TextWidth(dim.Limits, limitEmMm, false)
			d.Add(draw.Over(draw.Text{XMm: places[i] + widths[i]/2 - room, YMm: base, SizeMm: limitEmMm, Content: dim.Limits})...)
			places[i] -= (room + 1.5) / 2
		}
		d.Add(draw.Over(draw.Text{XMm: places[i], YMm: base, SizeMm: size, Bold: true, Align: draw.Centre, Content: text})...)
	}
}

// clear moves the middle of a text on a dimension line from a to b to where no
// leader runs through it, if there is such a place.
func (v *dimensioned) clear(x, width, y, a, b float64) float64 {
	free := func(x float64) bool {
		for _, l := range v.leaders {
			if (l[1]-y)*(l[3]-y) > 0 && (l[1]-y-3)*(l[3]-y-3) > 0 {
				continue
			}
			at := l[0] + (l[2]-l[0])*(y+1.5-l[1])/(l[3]-l[1])
			if at > x-width/2-0.6 && at < x+width/2+0.6 {
				return false
			}
		}
		return true
	}
	if free(x) {
		return x
	}
	for shift := 1.0; shift < b-a; shift++ {
		for _, try := range []float64{x - shift, x + shift} {
			if try-width/2 > a+1 && try+width/2 < b-1 && free(try) {
				return try
			}
		}
	}
	return x
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

// arrow is the head of a dimension line with its tip at (x, y).
func arrow(x, y, dir float64) draw.Shape {
	return draw.Shape{Path: draw.Polygon(x, y, x-dir*arrowMm, y+arrowMm*0.18, x-dir*arrowMm, y-arrowMm*0.18), Fill: draw.Black}
}

// labels write diameters with their limits in rows from y on, away from the
// part, each with a leader to its surface.
func (v *dimensioned) labels(dims []plan.Dimension, y float64, rows int, side float64) {
	byRow := labelRows(dims, rows)
	high := labelsMm(dims, rows)
	for row := rows - 1; row >= 0; row-- { // leaders from further out go under
		mine := byRow[row]
		outer := high
		high -= rowMm(mine)
		wanted, widths := make([]float64, len(mine)), make([]float64, len(mine))
		for i, dim := range mine {
			from, to := stretch(dim, dims)
			wanted[i] = v.x((from + to) / 2)
			widths[i] = min(labelWidth(dim), v.p.Width)
		}
		places := apart(wanted, widths, 0, v.p.Width)
		base := y + high
		if side < 0 {
			base = y - outer + 1
		}
		for i, dim := range mine {
			// Straight to the surface where the label stands over it.
			fromMm, toMm := stretch(dim, dims)
			radius := dim.RadiusMm
			if v.s.Whole != nil {
				radius *= side
			}
			from, surface := v.x(fromMm+(toMm-fromMm)*0.15), v.y(radius)
			to := v.x(toMm - (toMm-fromMm)*0.15)
			half := widths[i]/2 - 2
			left, right := max(-1, from-2*half-2), min(v.p.Width+1, to+2*half+2)
			if i > 0 {
				left = max(left, places[i-1]+widths[i-1]/2-1)
			}
			if i+1 < len(mine) {
				right = min(right, places[i+1]-widths[i+1]/2+1)
			}
			places[i] = v.clear(places[i], widths[i], base, left, right)
			x := min(max(places[i], from), to)
			under := min(max(x, places[i]-half), places[i]+half)
			foot := base - 0.7
			if side < 0 {
				foot = base + rowMm(mine) - 1.4
			}
			v.p.Draw.Add(leaderTo(under, foot, x, surface)...)
			v.leaders = append(v.leaders, [4]float64{under, foot, x, surface})
			upper, lower := base+limitEmMm*1.35, base+0.5
			if dim.Limits == "" {
				upper = lower
			} else {
				v.p.Draw.Add(draw.Over(draw.Text{XMm: places[i], YMm: lower, SizeMm: limitEmMm, Align: draw.Centre, Content: dim.Limits}.Within(v.p.Width - 1))...)
			}
			v.p.Draw.Add(draw.Over(draw.Text{XMm: places[i], YMm: upper, SizeMm: sizeEmMm, Bold: true, Align: draw.Centre, Content: dim.Text}.Within(v.p.Width - 1))...)
		}
	}
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

func labelWidth(d plan.Dimension) float64 {
	return max(draw.TextWidth(d.Text, sizeEmMm, true), draw.TextWidth(d.Limits, limitEmMm, false)) + 2
}

// rowsFor is in how many rows labels must stand for each to have its room.
func rowsFor(dims []plan.Dimension, width float64) int {
	sum := seq.Sum(dims, labelWidth)
	rows := 0
	if len(dims) > 0 {
		rows = 1
	}
	for rows < len(dims) && (sum > width*float64(rows)*0.9 || labelsWidth(dims, rows) > width) {
		rows++
	}
	return rows
}

// labelRows are the labels of each row from the part outwards, in the order in which
// they stand along it.
func labelRows(dims []plan.Dimension, rows int) [][]plan.Dimension {
	middle := func(d plan.Dimension) float64 {
		from, to := stretch(d, dims)
		return from + to
	}
	dims = slices.SortedStableFunc(slices.Values(dims), func(a, b plan.Dimension) int { return cmp.Compare(middle(a), middle(b)) })
	out := make([][]plan.Dimension, rows)
	for i, d := range dims {
		out[i%rows] = append(out[i%rows], d)
	}
	return out
}

func rowMm(row []plan.Dimension) float64 {
	if slices.ContainsFunc(row, func(d plan.Dimension) bool { return d.Limits != "" }) {
		return labelRowMm
	}
	return plainRowMm
}

func labelsMm(dims []plan.Dimension, rows int) float64 {
	return seq.Sum(labelRows(dims, rows), rowMm)
}

// labelsWidth is how wide a panel must be for its labels in rows.
func labelsWidth(dims []plan.Dimension, rows int) float64 {
	var widest float64
	for _, row := range labelRows(dims, rows) {
		sum := seq.Sum(row, labelWidth)
		widest = max(widest, sum)
	}
	return widest
}

// apart moves the middles of texts, in rising order, so that none lies over
// another, as little as it can, between lo and hi.
func apart(wanted, widths []float64, lo, hi float64) []float64 {
	n := len(wanted)
	places := slices.Clone(wanted)
	for i := range places {
		places[i] = max(places[i], lo+widths[i]/2)
		if i > 0 {
			places[i] = max(places[i], places[i-1]+(widths[i-1]+widths[i])/2)
		}
	}
	for i := n - 1; i >= 0; i-- {
		limit := hi - widths[i]/2
		if i < n-1 {
			limit = places[i+1] - (widths[i]+widths[i+1])/2
		}
		places[i] = min(places[i], limit)
	}
	return places
}
