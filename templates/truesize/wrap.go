package truesize

import (
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// clockScale draws the clock angle along a lower edge, inside it: a mark for every
// 5 degrees, or 15 on a small round, and the number at each 30, or each 10 where the
// edge is but a part of the round.
func (p *pattern) clockScale(l laid, edge draw.Rect) {
	perDeg := p.dev.ScaleMm
	if perDeg == 0 {
		return
	}
	step, named := 5, 30
	if math.Abs(perDeg)*5 < 1.5 {
		step = 15
	}
	if p.dev.Kind == plan.MainPattern && math.Abs(perDeg)*10 > 8 {
		named = 10
	}
	marks := &canvas.Path{}
	for deg := -720; deg <= 1080; deg += step {
		x := (float64(deg) - p.dev.ScaleFromDeg) * perDeg
		if x < edge.X0-1e-6 || x > edge.X1+1e-6 {
			continue
		}
		length := 2.0
		switch {
		case deg%30 == 0:
			length = 4.5
		case deg%10 == 0:
			length = 3
		}
		marks.MoveTo(x, edge.Y0)
		marks.LineTo(x, edge.Y0+length)
		l.AddLine(l.ox+x, l.oy+edge.Y0, l.ox+x, l.oy+edge.Y0+length)
		if deg%named != 0 || math.Abs(perDeg)*30 < 6 && deg%90 != 0 {
			continue
		}
		clock := ((deg % 360) + 360) % 360
		text := draw.Text{XMm: x, YMm: edge.Y0 + 5.2, SizeMm: draw.SmallMm, Align: draw.Centre, Bold: clock == 0, Content: strconv.Itoa(clock) + "°"}
		if x-edge.X0 < 3 {
			text.Align, text.XMm = draw.Left, x+4.8
		} else if clock%90 == 0 {
			text.Align, text.XMm = draw.Left, x+0.8
		}
		l.hour(text, x)
	}
	l.lines.Add(draw.Shape{Path: marks, Stroke: draw.Black, WidthMm: draw.ThinMm})
}

// hour sets an hour of the scale where it is wanted or at either side of its mark at x, above
// the short marks there if need be, off lines and texts; where it would hide an outline it is left out.
func (l laid) hour(text draw.Text, x float64) {
	right, left := text, text
	right.Align, right.XMm = draw.Left, x+0.8
	left.Align, left.XMm = draw.Right, x-0.8
	lowRight, lowLeft := right, left
	lowRight.YMm, lowLeft.YMm = text.YMm-1.6, text.YMm-1.6
	for _, try := range []draw.Text{text, right, left, lowRight, lowLeft} {
		if spot := l.onPaper(draw.TextRect(try)); l.Free(spot) {
			l.AddText(spot)
			l.lines.Add(try)
			return
		}
	}
}

// axialRule draws the distance from the seat edge along the left end: each
// millimetre and its tens, or eighths and inches.
func (p *pattern) axialRule(l laid) {
	step, major, half := 1.0, 10, 5
	if p.unit() == "in" {
		step, major, half = geom.MmPerInch/8, 8, 4
	}
	x := p.dev.MinMm.XMm
	marks := &canvas.Path{}
	for i := 1; float64(i)*step <= p.dev.WidthMm+1e-9; i++ {
		y := float64(i) * step
		length := 1.5
		switch {
		case i%major == 0:
			length = 4
		case i%half == 0:
			length = 2.5
		}
		marks.MoveTo(x, y)
		marks.LineTo(x+length, y)
		l.AddLine(l.ox+x, l.oy+y, l.ox+x+length, l.oy+y)
		if i%major != 0 || y > p.dev.WidthMm-2 {
			continue
		}
		text := draw.Text{XMm: x + 4.6, YMm: y - 0.95, SizeMm: draw.SmallMm, Content: strconv.Itoa(i)}
		if p.unit() == "in" {
			text.Content = strconv.Itoa(i / major)
		}
		r := l.onPaper(draw.TextRect(text))
		if !l.Free(r) {
			continue // a seam goes through
		}
		l.AddText(r)
		l.lines.Add(text)
	}
	l.lines.Add(draw.Shape{Path: marks, Stroke: draw.Black, WidthMm: draw.ThinMm})
}

// wrapTexts writes along the TOP line, the seat edge, the seam and the tab
// what each of them is.
func (p *pattern) wrapTexts(l laid) {
	d := p.dev
	if l.Window.X0 < l.ox && l.ox < l.Window.X1 {
		p.topText(l)
	}
	// The seat edge, on every sheet that shows it; in few words where there is
	// little l.
	if l.Window.Y0 < l.oy && l.oy < l.Window.Y1 {
		lo, hi := max(l.Window.X0, l.ox+d.MinMm.XMm)+6, min(l.Window.X1, l.ox+d.MinMm.XMm+d.WrapMm)-2
		end := d.SeatAt
		for _, text := range []string{"SEAT EDGE: " + d.Edge, "SEAT EDGE, " + end + " end", "SEAT EDGE", "SEAT " + end} {
			if p.seatText(l, text, lo, hi) {
				break
			}
		}
	}
	seam, meets := l.ox+d.MinMm.XMm+d.WrapMm, "SEAM: the left end meets this line"
	if p.taped(l) {
		meets = tapeIt
	}
	l.along(meets, canvas.Point{X: seam, Y: l.oy}, canvas.Point{X: seam, Y: l.oy + d.WidthMm})
	l.along("glue under", canvas.Point{X: l.ox + d.MaxMm.XMm, Y: l.oy}, canvas.Point{X: l.ox + d.MaxMm.XMm, Y: l.oy + d.WidthMm})
}

// tapeIt stands at a seam whose tab is left out.
const tapeIt = "SEAM: tape it to the left end"

// taped tells whether a window has the seam of what goes round, and not the tab beyond.
func (p *pattern) taped(l laid) bool {
	seam := l.ox + p.dev.MinMm.XMm + p.dev.WrapMm
	return p.dev.WrapMm > 0 && l.Window.X0 < seam && seam < l.Window.X1 && l.Window.X1 < l.ox+p.dev.MaxMm.XMm-patternRimMm
}

// topText writes TOP beside its line: at the far end with an arrow, and near
// the seat edge where the template is long.
func (p *pattern) topText(l laid) {
	d := p.dev
	if d.WidthMm > 40 {
		for y := 9.0; y < min(25, d.WidthMm/2-8); y += 2 {
			if l.put(draw.Text{XMm: l.ox + 2, YMm: l.oy + y, SizeMm: 4.4, Bold: true, Content: "TOP line"}) {
				break
			}
		}
	}
	below := draw.TextWidth(d.Beyond, draw.SmallMm, false)
	for y := d.WidthMm - 11; y > 10; y -= 3 {
		for _, x := range []float64{l.ox + 1, l.ox - 7 - max(below, 14)} {
			r := draw.R(x, l.oy+y-5, x+7+max(below, 14), l.oy+y+7)
			if l.Free(r) {
				l.AddText(r)
				l.Draw.Add(draw.TopArrow(x+3, l.oy+y-1, 7),
					draw.Text{XMm: x + 6.5, YMm: l.oy + y, SizeMm: 5, Bold: true, Content: "TOP"},
					draw.Text{XMm: x + 6.5, YMm: l.oy + y - 4, SizeMm: draw.SmallMm, Content: d.Beyond})
				return
			}
		}
	}
	// A narrow strip: the word alone.
	for _, size := range []float64{4.4, draw.TextMm, draw.SmallMm} {
		w := draw.TextWidth("TOP", size, true)
		for y := d.WidthMm - 1.5 - size; y > 5; y -= 1.5 {
			for _, x := range []float64{l.ox + 1, l.ox - 1 - w, l.ox + 3, l.ox - 3 - w, l.ox + 5, l.ox - 5 - w} {
				if l.put(draw.Text{XMm: x, YMm: l.oy + y, SizeMm: size, Bold: true, Content: "TOP"}) {
					return
				}
			}
		}
	}
}

// seatText writes a text above the clock scale between two places, nearest
// their middle, and tells whether there was room.
func (p *pattern) seatText(l laid, content string, lo, hi float64) bool {
	w, h := draw.TextWidth(content, draw.TextMm, true), (draw.AscentMm+draw.DropMm)*draw.TextMm
	for _, y := range []float64{8.4, 11, 14, 18, 24, 30} {
		if y+draw.AscentMm*draw.TextMm > p.dev.WidthMm {
			break
		}
		for x := (lo+hi-w)/2 - 0.5; x > lo; x -= 3 {
			for _, at := range []float64{x, lo + hi - w - x} {
				bottom := l.oy + y - draw.DropMm*draw.TextMm
				if r := (draw.R(at, bottom, at+w, bottom+h)); l.Free(r) {
					l.AddText(r)
					l.Draw.Add(draw.Text{XMm: at, YMm: l.oy + y, SizeMm: draw.TextMm, Bold: true, Content: content})
					return true
				}
			}
		}
	}
	return false
}
