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
	side, ends := dimSidePad, 1.0
	if s.Whole != nil {
		side, ends = wholeSidePad, endsMm
	}
	outsideMm := labelsMm(v.outsides, outsideRows)
	// A thin plate is drawn thicker than it is, and a long rod shorter.
	aspect := min(max(s.LengthMm/(v.hi-v.lo), 0.3), 12)
	for v.rows = [2]int{1, 1}; ; {
		fixed := outsideMm + labelsMm(v.bores, boreRows) + v.chainsMm(0) + chainMm + ends + v.chainsMm(1)
		room := max(leastMm, maxHeight-fixed)
		v.h = min(room, (width-2*side)/aspect)
		v.h = min(max(v.h, leastMm), room)
		v.w = min(v.h*aspect, width-2*side)
		if s.Flat { // its faces tell more
			v.h, v.w = min(v.h, roomyMm), min(v.w, roomyMm)
		} else if s.Whole == nil {
			v.w = max(v.w, min(v.w*mostStretch, max(shortMm, v.chainWide()), width-2*side))
		}
		panelWidth := min(width, max(v.w+2*side, 46, labelsWidth(v.outsides, outsideRows), labelsWidth(v.bores, boreRows), v.chainBeside()))
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

// moreRows gives a chain another row where its texts would stand off their lines: where the picture has
// the height for it, and anywhere if they do not stand clear of the extension lines at the ends.
func (v *dimensioned) moreRows() bool {
	for side, dims := range [2][]plan.Dimension{v.above, v.below} {
		_, off, fits := v.chainPlaces(dims, v.rows[side])
		if v.rows[side] < min(mostChainRows, len(dims)) && (off && v.h > roomyMm || !fits) {
			v.rows[side]++
			return true
		}
	}
	return false
}

// chainWide is how wide a part is drawn for the widest row of the texts of its lengths.
func (v *dimensioned) chainWide() (mm float64) {
	for side, dims := range [2][]plan.Dimension{v.above, v.below} {
		for row := range v.rows[side] {
			mm = max(mm, seq.Sum(chainRow(dims, row, v.rows[side]), func(i int) float64 { return chainRoom(dims, i, row, v.rows[side]) }))
		}
	}
	return mm
}

// chainBeside is how wide a panel is for the texts of lengths that have to stand beyond the ends of a part.
func (v *dimensioned) chainBeside() (mm float64) {
	for _, dims := range [3][]plan.Dimension{{v.overall}, v.above, v.below} {
		for i, d := range dims {
			if w := chainWidth(dims, i); len(dims) == 1 && w > v.w && d.Text != "" {
				mm = max(mm, v.w+2*w+1)
			}
		}
	}
	return mm
}

// chainRow are the lengths whose texts stand in a row of so many, or whose lines pass it from a further one.
func chainRow(dims []plan.Dimension, row, rows int) (on []int) {
	for i := range dims {
		if i%rows >= row {
			on = append(on, i)
		}
	}
	return on
}

// chainRoom is the room in a row of a text of a chain, or of its line.
func chainRoom(dims []plan.Dimension, i, row, rows int) float64 {
	if i%rows > row {
		return passMm
	}
	return chainWidth(dims, i)
}

// chainPlaces are for each text of a chain, every one in the next of so many rows, where its line passes
// the rows nearer to the dimension line and then its middle; whether one of them stands beside its own
// line, and whether all stand clear of the extension lines at the ends.
func (v *dimensioned) chainPlaces(dims []plan.Dimension, rows int) (places [][]float64, off, fits bool) {
	places, fits = make([][]float64, len(dims)), true
	for row := range rows {
		on := chainRow(dims, row, rows)
		wanted := seq.Map(on, func(i int) float64 { return (v.x(dims[i].FromMm) + v.x(dims[i].ToMm)) / 2 })
		widths := seq.Map(on, func(i int) float64 { return chainRoom(dims, i, row, rows) })
		half := seq.Map(on, func(i int) float64 { return (v.x(dims[i].ToMm) - v.x(dims[i].FromMm)) / 2 })
		set, ok := v.between(wanted, widths)
		if led := v.amongLeaders(wanted, widths); led != nil {
			far := false // from its own length
			for k, x := range led {
				far = far || math.Abs(x-wanted[k]) > max(half[k]-widths[k]/2, math.Abs(set[k]-wanted[k])+passMm/2)
			}
			if !far {
				set = led
			}
		}
		fits = fits && ok
		for k, i := range on {
			places[i] = append(places[i], set[k])
			off = off || i%rows == row && math.Abs(set[k]-wanted[k]) > max(half[k], 0.45*widths[k])
		}
	}
	return places, off, fits
}

// amongLeaders sets the texts of a row apart for the leaders that go between them, where there is the room.
func (v *dimensioned) amongLeaders(wanted, widths []float64) []float64 {
	type item struct {
		x, width float64
		text     int // or -1
	}
	var all []item
	for i, x := range wanted {
		all = append(all, item{x, widths[i], i})
	}
	for _, x := range v.tips {
		all = append(all, item{x, passMm, -1})
	}
	slices.SortStableFunc(all, func(a, b item) int { return cmp.Compare(a.x, b.x) })
	set, ok := v.between(seq.Map(all, func(q item) float64 { return q.x }), seq.Map(all, func(q item) float64 { return q.width }))
	if len(v.tips) == 0 || !ok {
		return nil
	}
	out := make([]float64, len(wanted))
	for i, q := range all {
		if q.text >= 0 {
			out[q.text] = set[i]
		}
	}
	return out
}

// between sets the texts of a row between the extension lines at the ends, or the first, the last or both
// beyond these, as it moves them least; where there is no room for that, anywhere in the panel.
func (v *dimensioned) between(wanted, widths []float64) (best []float64, ok bool) {
	n, least := len(wanted), math.Inf(1)
	for _, out := range [4][2]int{{0, 0}, {0, 1}, {1, 0}, {1, 1}} {
		from, to := out[0], n-out[1]
		if from > to || seq.Sum(widths[from:to], func(w float64) float64 { return w }) > v.w || from > 0 && widths[0] == passMm || to < n && widths[to] == passMm {
			continue
		}
		set := slices.Clone(wanted)
		copy(set[from:], draw.Apart(wanted[from:to], widths[from:to], v.x0, v.x0+v.w))
		if from > 0 {
			set[0] = v.x0 - widths[0]/2
		}
		if to < n {
			set[to] = v.x0 + v.w + widths[to]/2
		}
		moved := beyondMm * float64(out[0]+out[1])
		for i := range set {
			moved += math.Abs(set[i] - wanted[i])
		}
		if inside := n == 0 || set[0]-widths[0]/2 > 0 && set[n-1]+widths[n-1]/2 < v.p.Width; inside && moved < least {
			best, least, ok = set, moved, true
		}
	}
	if !ok {
		best = draw.Apart(wanted, widths, 0.5, v.p.Width-0.5)
	}
	return best, ok
}

// beyondMm is how much further a text is moved rather than beyond an end.
const beyondMm = 3.0

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
// below: first where labels stand and how their leaders would go, then the lengths
// clear of these, then the leaders clear of the lengths.
func (v *dimensioned) draw(outsideRows, boreRows int) {
	v.metal()
	top, low := v.y(v.hi), v.y(v.lo)
	chains := v.chainsMm(0) + chainMm
	outsides := v.labels(v.outsides, top+chains+1.5, outsideRows, 1)
	bores := v.labels(v.bores, low-2-v.chainsMm(1), boreRows, -1)
	tips := func(l *label) float64 { return v.x((l.fromMm + l.toMm) / 2) }
	v.chain([]plan.Dimension{v.overall}, top+chains-4, top, 0)
	v.tips = seq.Map(outsides, tips)
	v.chain(v.above, top+chainMm-4, top, 0)
	v.tips = seq.Map(bores, tips)
	v.chain(v.below, low-v.chainsMm(1)+1, low, 1)
	v.leaders = nil
	v.route(outsides, 1)
	v.route(bores, -1)
	v.p.Draw.Add(v.over...)
	if v.s.Whole != nil {
		v.leaning(top)
	}
	v.ends()
}

// ends says which end is which: beside a half section, along its ends, under a whole one.
func (v *dimensioned) ends() {
	front := draw.Text{YMm: -v.p.Height + 1.2, SizeMm: draw.SmallMm, Bold: true, Content: "FRONT"}
	back := front
	back.XMm, back.Align, back.Content = v.p.Width, draw.Right, "BACK"
	if v.s.Whole == nil {
		front = v.upright(front, v.x0-endMm)
		back = v.upright(back, v.x0+v.w+endMm+draw.AscentMm*draw.SmallMm)
	}
	v.p.Draw.Add(draw.Over(front)...)
	v.p.Draw.Add(draw.Over(back)...)
}

// upright turns a text to stand on the axis at x, or higher beside the metal where a leader would run
// through it.
func (v *dimensioned) upright(t draw.Text, x float64) draw.Text {
	t.XMm, t.RotateDeg, t.Align = x, 90, draw.Left
	long, high := draw.TextWidth(t.Content, t.SizeMm, t.Bold), draw.AscentMm*t.SizeMm
	for up := 1.0; up == 1 || up+long < v.h; up++ {
		t.YMm = v.axis + up
		low, top := canvas.Point{X: x - high/2, Y: t.YMm}, canvas.Point{X: x - high/2, Y: t.YMm + long}
		if !slices.ContainsFunc(v.leaders, func(l [4]float64) bool {
			return draw.Cross(low, top, canvas.Point{X: l[0], Y: l[1]}, canvas.Point{X: l[2], Y: l[3]})
		}) {
			return t
		}
	}
	t.YMm = v.axis + 1
	return t
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

// leaning marks TOP, or what is up, beside a section that is cut on both sides of the axis, and how far
// the middle of its back end stands off the axis.
func (v *dimensioned) leaning(top float64) {
	d, x := &v.p.Draw, v.x0-wholeSidePad/2-2
	d.Add(draw.TopArrow(x, top-5, 5), draw.Text{XMm: x, YMm: top - 8.4, SizeMm: draw.SmallMm, Bold: true, Align: draw.Centre, Content: cmp.Or(v.s.Up, "TOP")})
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

// chained are lengths on a dimension line at y: their texts as wide as they are, the first row of them
// based so far from the line, and each further row a step from it.
type chained struct {
	dims          []plan.Dimension
	widths        []float64
	y, base, step float64
}

// height is that of the bases of the texts of a row.
func (c *chained) height(row int) float64 { return c.y + c.base + float64(row)*c.step }

// chain draws lengths on a line at y, with extension lines from the metal's edge at from, above
// the part (0) or below it (1). Below it, texts that are wider than their lengths stand under the
// line, where no extension line comes.
func (v *dimensioned) chain(dims []plan.Dimension, y, from float64, side int) {
	c := &chained{dims, make([]float64, len(dims)), y, 0.9, chainRowMm}
	wide := false
	for i, d := range dims {
		c.widths[i] = chainWidth(dims, i)
		wide = wide || c.widths[i] > v.x(d.ToMm)-v.x(d.FromMm)
		c.base = max(c.base, 0.9+(draw.DropOf(d.Text)-draw.DropOf("8"))*sizeEmMm)
	}
	if wide && side == 1 {
		c.y, c.base, c.step = from-chainMm+4, -0.9-draw.AscentMm*sizeEmMm, -chainRowMm
	}
	v.chainLines(c, from, [2]float64{1, -1}[side])
	places, _, _ := v.chainPlaces(dims, v.rows[side])
	if v.rows[side] == 1 {
		v.aside(c, places)
	}
	for i, at := range places {
		row := len(at) - 1
		v.down(c, at)
		a, b, x0, x1 := v.x(dims[i].FromMm), v.x(dims[i].ToMm), at[row]-c.widths[i]/2, at[row]+c.widths[i]/2
		if row == 0 && (x1 < a+0.1 || x0 > b-0.1) { // beyond its length: on its line made longer
			v.p.Draw.Add(draw.Segment(min(a, x0), c.y, max(b, x1), c.y, draw.ThinMm))
		}
		text := draw.Text{XMm: at[row], YMm: c.height(row), SizeMm: sizeEmMm, Bold: true, Align: draw.Centre, Content: dims[i].Text}
		if len(dims) == 1 && dims[i].Limits != "" {
			room := draw.TextWidth(dims[i].Limits, limitEmMm, false)
			v.write(draw.Text{XMm: x1 - room, YMm: text.YMm, SizeMm: limitEmMm, Content: dims[i].Limits})
			text.XMm -= (room + 1.5) / 2
		}
		v.write(text)
	}
}

// chainLines draws the dimension lines of lengths with their arrows, and extension lines out from the metal.
func (v *dimensioned) chainLines(c *chained, from, out float64) {
	d, y, edges := &v.p.Draw, c.y, map[float64]bool{}
	for _, dim := range c.dims {
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
	}
}

// aside moves each text that has its room over its own length out of the way of leaders, as far as its
// neighbours leave it that.
func (v *dimensioned) aside(c *chained, places [][]float64) {
	for i, d := range c.dims {
		a, b := v.x(d.FromMm), v.x(d.ToMm)
		if c.widths[i] >= b-a {
			continue
		}
		if i > 0 {
			a = max(a, places[i-1][0]+c.widths[i-1]/2-1)
		}
		if i+1 < len(places) {
			b = min(b, places[i+1][0]-c.widths[i+1]/2+1)
		}
		places[i][0] = v.clear(places[i][0], c.widths[i], c.y+c.base-0.9, a, b)
	}
}

// down draws the line of a text of a further row to its dimension line, past the texts of the nearer rows.
func (v *dimensioned) down(c *chained, at []float64) {
	near, far := -0.4, draw.AscentMm*sizeEmMm+0.1 // from the base of a row, to its side of the dimension line and beyond
	if c.step < 0 {
		near, far = far, near
	}
	for row := len(at) - 1; row > 0; row-- {
		end := c.y
		if row > 1 {
			end = c.height(row-1) + near
		}
		upper, lower := c.height(row)+near, c.height(row-1)+far
		v.p.Draw.Add(draw.Segment(at[row], upper, at[row-1], lower, draw.HairMm), draw.Segment(at[row-1], lower, at[row-1], end, draw.HairMm))
	}
}

// write keeps a text of a length, to be drawn over all lines.
func (v *dimensioned) write(t draw.Text) {
	v.texts = append(v.texts, draw.TextRect(t))
	v.over = append(v.over, draw.Over(t)...)
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

// arrow is the head of a dimension line with its tip at (x, y).
func arrow(x, y, dir float64) draw.Shape {
	return draw.Shape{Path: draw.Polygon(x, y, x-dir*arrowMm, y+arrowMm*0.18, x-dir*arrowMm, y-arrowMm*0.18), Fill: draw.Black}
}
