package picture

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// Sizes of the picture of a bar, in millimetres.
const (
	barHighMm = 11.0 // of its front view
	barMostMm = 16.0 // of another side, all at one scale
	flatBarMm = 5.5  // under which the numbers of holes stand below
	barRowMm  = 4.4  // a row of lengths
	barEndsMm = 13.0 // beside the bar, for the section and the saw angles
	sectionMm = 10.0 // of the section, its larger side
)

// barView maps a bar to paper: its ends at one scale with its width, what lies
// between shortened or stretched to the room.
type barView struct {
	bar      *plan.BarPlan
	d        *draw.Drawing
	x0, room float64
}

// scale is that of all views across the bar.
func (v *barView) scale() float64 {
	scale := barHighMm / v.bar.WidthMm
	for _, h := range v.bar.Holes {
		if h.Side == "top" || h.Side == "bottom" {
			scale = min(scale, barMostMm/v.bar.DepthMm)
		}
	}
	return scale
}

// x is where a place along the bar lies.
func (v *barView) x(mm float64) float64 {
	half := v.bar.LengthMm / 2
	scale := v.scale()
	end := math.Min(0.8*half, 1.15*v.bar.WidthMm) // at scale, if there is the room
	if end*scale > v.room*0.3 {
		scale = v.room * 0.3 / end
	}
	t := mm + half
	switch {
	case t <= end:
		return v.x0 + t*scale
	case t >= 2*half-end:
		return v.x0 + v.room - (2*half-t)*scale
	}
	return v.x0 + end*scale + (t-end)/(2*half-2*end)*(v.room-2*end*scale)
}

// Bar draws a bar as it is sawn and drilled, in a width: the front view with its
// lengths, the section as seen from the left end, and every other side that has holes.
// Lengths are shortened, so the picture has no scale.
func Bar(b *plan.BarPlan, width float64) draw.Panel {
	p := draw.Panel{Width: width}
	v := &barView{bar: b, d: &p.Draw, x0: barEndsMm + 10, room: width - 2*(barEndsMm+10)}
	var y float64
	if b.Top != "" {
		y -= barRowMm
		v.points(y, "top", "top "+b.Top)
	}
	front := v.holes("front")
	y -= v.chain(front, y, v.scale()*b.WidthMm) + 1
	high := v.scale() * b.WidthMm
	y -= high
	v.front(y, high)
	v.marks(front, y, high)
	y -= barRowMm
	if b.Bottom != "" {
		v.points(y, "bottom", "bottom "+b.Bottom)
	}
	if b.TopMm != b.LengthMm && b.BottomMm != b.LengthMm {
		y -= barRowMm
	}
	if b.Bottom == "" || b.TopMm != b.LengthMm && b.BottomMm != b.LengthMm {
		v.line(v.x0, v.x0+v.room, y, b.Length)
	}
	for _, side := range []string{"top", "bottom", "back"} {
		list := v.holes(side)
		if len(list) == 0 {
			continue
		}
		y -= 1.5
		high := v.scale() * b.DepthMm
		if side == "back" {
			high = v.scale() * b.WidthMm
		}
		y -= v.chain(list, y, high) + 1
		y -= high
		v.side(side, y, high, list)
		if high < flatBarMm {
			y -= draw.SmallMm
		}
	}
	p.Height = -y + 1.5
	return p
}

func (v *barView) holes(side string) []plan.BarHole {
	out := seq.Keep(v.bar.Holes, func(h plan.BarHole) bool { return h.Side == side })
	slices.SortStableFunc(out, func(a, b plan.BarHole) int { return cmp.Compare(a.XMm, b.XMm) })
	return out
}

// front draws the front view with its cuts and the section beside it.
func (v *barView) front(y, high float64) {
	b := v.bar
	at := func(q canvas.Point) (float64, float64) { return v.x(q.X), y + (q.Y+b.WidthMm/2)*high/b.WidthMm }
	path, err := canvas.ParseSVGPath(string(b.Outline))
	if err != nil {
		return
	}
	v.d.Add(draw.Shape{Path: draw.Loop(path.Flatten(0.05).Coords(), at), Stroke: draw.Black, WidthMm: draw.ThickMm})
	v.section(sectionMm/2, y+high/2)
	for _, e := range []plan.BarEnd{b.Left, b.Right} {
		text := "square"
		if e.SawDeg > 0 {
			text = "saw " + strconv.FormatFloat(math.Round(e.SawDeg*100)/100, 'f', -1, 64) + "°"
		} else if e.Cope != "" {
			text = "cope"
		}
		x, align := v.x0-1.2, draw.Right
		if e.Name == b.Right.Name {
			x, align = v.x0+v.room+1.2, draw.Left
		}
		v.d.Add(draw.Text{XMm: x, YMm: y + high/2 - 3.6, SizeMm: draw.SmallMm, Bold: e.SawDeg > 0, Align: align, Content: text})
	}
	v.d.Add(draw.Text{XMm: v.x0 - 1.2, YMm: y + high/2 + 0.8, SizeMm: draw.SmallMm, Align: draw.Right, Content: "front  L"},
		draw.Text{XMm: v.x0 + v.room + 1.2, YMm: y + high/2 + 0.8, SizeMm: draw.SmallMm, Content: "R"})
}

// section draws the cross section about the height y, its front at the left.
func (v *barView) section(x, y float64) {
	b := v.bar
	scale := sectionMm / math.Max(b.WidthMm, b.DepthMm)
	for i, c := range b.Profile {
		fill := draw.Pale
		if i > 0 {
			fill = draw.White
		}
		if path, err := canvas.ParseSVGPath(string(c)); err == nil {
			path = path.Transform(canvas.Identity.Translate(x-b.DepthMm*scale/2, y).Scale(scale, scale))
			v.d.Add(draw.Shape{Path: path, Fill: fill, Stroke: draw.Black, WidthMm: draw.ThinMm})
		}
	}
}

// marks are the holes with their numbers, above their lines or where the last number
// reaches so far below.
func (v *barView) marks(list []plan.BarHole, y, high float64) {
	ends := math.Inf(-1) // of the number above that stands furthest to the right
	for _, h := range list {
		x, hy := v.x(h.XMm), y+high/2+h.YMm*v.scale()
		r := math.Max(0.7, h.DiameterMm/2*v.scale())
		end := h.EndMm.Times(v.scale())
		v.d.Add(draw.Stadium(canvas.Point{X: x, Y: hy}, canvas.Point{X: end.XMm, Y: end.YMm}, r, draw.LineMm))
		r += math.Abs(end.XMm)
		v.d.Add(draw.Segment(x-r-1, hy, x+r+1, hy, draw.HairMm), draw.Segment(x, hy-r-1, x, hy+r+1, draw.HairMm))
		number := draw.Text{XMm: x + r + 0.6, YMm: hy + 0.5, SizeMm: draw.SmallMm, Bold: true, Content: strconv.Itoa(h.N)}
		if high < flatBarMm {
			number.YMm = y - draw.SmallMm
		}
		if number.XMm < ends+0.4 {
			number.YMm = hy - 0.5 - 0.8*draw.SmallMm
		} else {
			ends = number.XMm + draw.TextWidth(number.Content, draw.SmallMm, true)
		}
		v.d.Add(number)
	}
}

// barLabel is a place along a side: its text and the lowest hole there.
type barLabel struct {
	text    string
	x, lowY float64
	wide    float64
}

// labels are the places of the holes of a side, each once, from the left; number says in the text which holes lie there.
func (v *barView) labels(list []plan.BarHole, numbered bool) (out []barLabel) {
	for _, h := range list {
		if n := len(out) - 1; n >= 0 && math.Abs(out[n].x-v.x(h.XMm)) < 0.01 && out[n].text == h.From {
			out[n].lowY = min(out[n].lowY, h.YMm)
			continue
		}
		out = append(out, barLabel{text: h.From, x: v.x(h.XMm), lowY: h.YMm})
	}
	for i := range out {
		if numbered {
			at := seq.Keep(list, func(h plan.BarHole) bool { return math.Abs(out[i].x-v.x(h.XMm)) < 0.01 && h.From == out[i].text })
			out[i].text = strings.Join(seq.Map(at, func(h plan.BarHole) string { return strconv.Itoa(h.N) }), ", ") + ": " + out[i].text
		}
		out[i].wide = draw.TextWidth(out[i].text, draw.SmallMm, false)
	}
	return out
}

// shorten says once, at the left of a row, from which end its labels count, if it is the same for all.
func (v *barView) shorten(places []barLabel, y float64) {
	_, end, _ := strings.Cut(places[0].text, " from ")
	if slices.ContainsFunc(places, func(l barLabel) bool { return !strings.HasSuffix(l.text, " from "+end) }) {
		return
	}
	for i := range places {
		places[i].text = strings.TrimSuffix(places[i].text, " from "+end)
		places[i].wide = draw.TextWidth(places[i].text, draw.SmallMm, false)
	}
	v.d.Add(draw.Text{XMm: v.x0 - barEndsMm - 1, YMm: y, SizeMm: draw.SmallMm, Align: draw.Right, Content: "from " + end})
}

// chain writes over the holes of a side how far each lies from its end, and returns the height of that: each place once, with a line to
// its holes, the lowest of which lies at its height over the middle of the side; where a row does not hold them all, in more
// rows, with the numbers of the holes before them.
func (v *barView) chain(list []plan.BarHole, y, sideHigh float64) float64 {
	const gapMm, leadMm = 2.0, 2.6
	places := v.labels(list, false)
	wide := func() float64 { return seq.Sum(places, func(l barLabel) float64 { return l.wide + gapMm }) }
	if wide() > v.room+2*barEndsMm {
		v.shorten(places, y-barRowMm+1.2)
	}
	if wide() <= v.room+2*barEndsMm {
		at := draw.Apart(seq.Map(places, func(l barLabel) float64 { return l.x }), seq.Map(places, func(l barLabel) float64 { return l.wide + gapMm }), v.x0-barEndsMm, v.x0+v.room+barEndsMm)
		for i, l := range places {
			v.d.Add(draw.Text{XMm: at[i], YMm: y - barRowMm + 1.2, SizeMm: draw.SmallMm, Align: draw.Centre, Content: l.text})
			top := y - barRowMm - leadMm + 1
			low := top - 1 - sideHigh/2 + l.lowY*v.scale()
			v.d.Add(draw.Shape{Path: draw.Line([]plan.XY{{XMm: at[i], YMm: y - barRowMm + 0.6}, {XMm: l.x, YMm: top}, {XMm: l.x, YMm: low}},
				func(q plan.XY) (float64, float64) { return q.XMm, q.YMm }), Stroke: draw.Black, WidthMm: draw.HairMm})
		}
		return words.Either(len(places) > 0, barRowMm+leadMm-1, 0)
	}
	var ends []float64 // of the last text of each row
	places = v.labels(list, true)
	rows := make([]int, len(places))
	for i, l := range places {
		if rows[i] = slices.IndexFunc(ends, func(end float64) bool { return end < l.x-l.wide/2-1 }); rows[i] < 0 {
			rows[i], ends = len(ends), append(ends, 0)
		}
		ends[rows[i]] = l.x + l.wide/2
	}
	high := float64(len(ends)) * (barRowMm - 0.8)
	for i, l := range places {
		v.d.Add(draw.Text{XMm: l.x, YMm: y - high + float64(rows[i])*(barRowMm-0.8) + 0.8, SizeMm: draw.SmallMm, Align: draw.Centre, Content: l.text})
	}
	return high
}

// points draws the length from point to point along the top or the bottom.
func (v *barView) points(y float64, side, text string) {
	b := v.bar
	ends := [2]float64{-b.LengthMm / 2, b.LengthMm / 2}
	for i, e := range []plan.BarEnd{b.Left, b.Right} {
		if e.SawDeg > 0 && e.Long != side {
			ends[i] -= math.Copysign(b.WidthMm*math.Tan(e.SawDeg*math.Pi/180), ends[i])
		}
	}
	v.line(v.x(ends[0]), v.x(ends[1]), y, text)
}

// line draws a length, its text in the line.
func (v *barView) line(x0, x1, y float64, text string) {
	d := v.d
	w := draw.TextWidth(text, sizeEmMm, true)
	mid := (x0 + x1) / 2
	d.Add(draw.Segment(x0, y+1, mid-w/2-1, y+1, draw.ThinMm), draw.Segment(mid+w/2+1, y+1, x1, y+1, draw.ThinMm))
	for _, x := range []float64{x0, x1} {
		d.Add(draw.Segment(x-0.8, y+0.2, x+0.8, y+1.8, draw.ThinMm))
	}
	d.Add(draw.Text{XMm: mid, YMm: y, SizeMm: sizeEmMm, Bold: true, Align: draw.Centre, Content: text})
}

// side draws another side with its holes, the left end at the left but for the back.
func (v *barView) side(side string, y, high float64, list []plan.BarHole) {
	v.d.Add(draw.Box(draw.R(v.x0, y, v.x0+v.room, y+high), draw.LineMm))
	v.d.Add(draw.Text{XMm: v.x0 - 1.2, YMm: y + high/2 - 1, SizeMm: draw.SmallMm, Align: draw.Right, Content: side})
	if side == "back" {
		v.d.Add(draw.Text{XMm: v.x0 + v.room + 1.2, YMm: y + high/2 - 1, SizeMm: draw.SmallMm, Content: "as from the front"})
	}
	v.marks(list, y, high)
}
