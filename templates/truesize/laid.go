package truesize

import (
	"iter"
	"math"

	"centrepop/layout/plan"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// laid is a template laid on a sheet: its origin at (ox, oy) of the paper, its lines
// about that origin, and what they and the texts take of the window that shows it.
type laid struct {
	*draw.Sheet
	*draw.Occupied
	lines  *draw.Drawing
	ox, oy float64
}

// seen is the window about the template's origin.
func (l laid) seen() draw.Rect { return l.Window.Moved(-l.ox, -l.oy) }

// shift carries the template to its place on the paper.
func (l laid) shift() canvas.Matrix { return canvas.Identity.Translate(l.ox, l.oy) }

// onPaper is where on the paper a room about the template's origin lies.
func (l laid) onPaper(r draw.Rect) draw.Rect { return r.Moved(l.ox, l.oy) }

// clip puts the lines on the sheet, cut off at the window.
func (l laid) clip() {
	l.Draw.Add(draw.Group{Drawing: l.lines, Transform: l.shift(), Clip: l.Window.Path()})
}

// pop draws a centre-pop cross.
func (l laid) pop(x, y float64) {
	l.lines.Add(draw.PopCross(x, y))
	l.AddLine(l.ox+x-draw.CrossArmMm, l.oy+y, l.ox+x+draw.CrossArmMm, l.oy+y)
	l.AddLine(l.ox+x, l.oy+y-draw.CrossArmMm, l.ox+x, l.oy+y+draw.CrossArmMm)
}

// put sets a text where it is free, and tells whether it is.
func (l laid) put(text draw.Text) bool {
	r := draw.TextRect(text)
	if !l.Free(r) {
		return false
	}
	l.AddText(r)
	l.Draw.Add(text)
	return true
}

// topMark draws an arrow up from a point, and TOP beside it.
func (l laid) topMark(at plan.XY) {
	l.lines.Add(draw.TopArrow(at.XMm, at.YMm, 5))
	l.AddLine(l.ox+at.XMm, l.oy+at.YMm-3, l.ox+at.XMm, l.oy+at.YMm+5)
	text := draw.Text{XMm: at.XMm + 3, YMm: at.YMm + 1.2, SizeMm: draw.TextMm, Bold: true, Content: "TOP"}
	if r := l.onPaper(draw.TextRect(text)); l.Window.Holds(r) {
		l.lines.Add(text)
		l.AddText(r)
	}
}

// nameCircle writes a circle's name beside its line where there is room: at
// a large circle close to the line, at a small one as near as can be.
func (l laid) nameCircle(c plan.Circle) {
	x, y, r := l.ox+c.CentreMm.XMm, l.oy+c.CentreMm.YMm, c.DiameterMm/2
	if c.Label == "" || !l.Window.Grown(-2).Meets(draw.R(x, y, x, y).Grown(r)) {
		return
	}
	for _, size := range []float64{draw.TextMm, draw.SmallMm} {
		drop := draw.DropOf(c.Label) * size
		w, h := draw.TextWidth(c.Label, size, false), draw.AscentMm*size+drop
		spot, ok := besideCircle(l.Occupied, canvas.Point{X: x, Y: y}, r, w, h)
		if !ok && isSmall(c) {
			spot, ok = l.Find(draw.Search{X: x, Y: y, W: w, H: h, Near: r + 0.9, Far: r + 9, Angle: math.Atan2(c.CentreMm.YMm, c.CentreMm.XMm)}, l.Free)
		}
		if ok {
			l.AddText(spot)
			l.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0 + drop, SizeMm: size, Content: c.Label})
			return
		}
	}
}

// besideCircle looks for room, w × h, at the line of a circle of radius r, outside and
// then inside it, from the right on.
func besideCircle(room *draw.Occupied, centre canvas.Point, r, w, h float64) (draw.Rect, bool) {
	for i := range 48 {
		angle := math.Pi * (0.25 - float64(i%24)/12)
		sin, cos := math.Sincos(angle)
		if i >= 24 {
			angle += math.Pi
		}
		if spot := (draw.Search{X: centre.X + r*cos, Y: centre.Y + r*sin, W: w, H: h}).At(1, angle); room.Free(spot) {
			return spot, true
		}
	}
	return draw.Rect{}, false
}

// How far a text beside a line is off it: so far that the line does not count as
// being in its way, and where others are.
const (
	alongFreeMm = 2.0
	alongMm     = 0.9
)

// along writes a text beside a straight line, turned with it, where the room
// allows it near the middle.
func (l laid) along(text string, from, to canvas.Point) {
	const size = draw.SmallMm
	x0, y0, x1, y1 := from.X, from.Y, to.X, to.Y
	length := math.Hypot(x1-x0, y1-y0)
	if near := draw.R(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)).Grown(2 * size); !near.Meets(l.Window) {
		return
	}
	w := draw.TextWidth(text, size, false)
	if length < w+4 {
		return
	}
	if x1 < x0 || x1 == x0 && y1 < y0 {
		x0, y0, x1, y1 = x1, y1, x0, y0
	}
	ux, uy := (x1-x0)/length, (y1-y0)/length
	angle := math.Atan2(uy, ux) * 180 / math.Pi
	for i := range 60 { // off other lines, then only off other texts
		off := alongFreeMm
		if i >= 30 {
			off = alongMm
		}
		at := length/2 + float64((i%30+1)/2)*4*float64(1-2*(i%2))
		if at < w/2+1 || at > length-w/2-1 {
			continue
		}
		for _, off := range []float64{off, -off - draw.AscentMm*size} {
			x, y := x0+ux*at-uy*off, y0+uy*at+ux*off
			boxes := turnedRoom(canvas.Point{X: x, Y: y}, canvas.Point{X: ux, Y: uy}, w, size)
			if l.AllClear(boxes, i < 30) {
				for b := range boxes {
					l.AddText(b)
				}
				label := draw.Text{XMm: x, YMm: y, SizeMm: size, Align: draw.Centre, RotateDeg: angle, Content: text}
				if i < 30 {
					l.Draw.Add(label)
				} else {
					l.Draw.Add(draw.Over(label)...)
				}
				return
			}
		}
	}
}

// turnedRoom is the room of a text w wide in the direction way, centred at a
// point: small boxes along it.
func turnedRoom(at, way canvas.Point, w, size float64) iter.Seq[draw.Rect] {
	const middle, half = (draw.AscentMm - draw.DropMm) / 2, (draw.AscentMm + draw.DropMm) / 2
	return func(yield func(draw.Rect) bool) {
		for t := -w / 2; t < w/2+size*0.4; t += size * 0.4 {
			t := min(t, w/2)
			cx, cy := at.X+way.X*t-way.Y*size*middle, at.Y+way.Y*t+way.X*size*middle
			if !yield(draw.R(cx, cy, cx, cy).Grown(size * half)) {
				return
			}
		}
	}
}
