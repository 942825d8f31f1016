package draw

import (
	"math"
	"strconv"

	"centrepop/parts/geom"

	"github.com/tdewolff/canvas"
)

// The line widths, in millimetres.
const (
	HairMm  = 0.13 // construction and hatching
	ThinMm  = 0.18
	LineMm  = 0.35 // outlines
	ThickMm = 0.7
)

// Dash patterns, drawn and skipped lengths in millimetres.
var (
	ChainDash  = []float64{6, 1, 1, 1}
	HiddenDash = []float64{1.2, 0.8}
	CutDash    = []float64{3, 1.5}
)

// Segment is a straight line.
func Segment(x0, y0, x1, y1, width float64, dash ...float64) Shape {
	p := pathOf(2)
	p.MoveTo(x0, y0)
	p.LineTo(x1, y1)
	return Shape{Path: p, Stroke: Black, WidthMm: width, DashMm: dash}
}

// Box is the outline of a rectangle.
func Box(r Rect, width float64) Shape { return Shape{Path: r.Path(), Stroke: Black, WidthMm: width} }

// Ring is a circle.
func Ring(x, y, radius, width float64, dash ...float64) Shape {
	return Shape{Path: canvas.Circle(radius).Translate(x, y), Stroke: Black, WidthMm: width, DashMm: dash}
}

// Stadium is a slot with round ends about a centre; half leads from there to
// the centre of one end, and is zero for a circle.
func Stadium(centre, half canvas.Point, radius, width float64) Shape {
	a, b := centre.Sub(half), centre.Add(half)
	return Shape{Path: SlotPath(a.X, a.Y, b.X, b.Y, 2*radius), Stroke: Black, WidthMm: width}
}

// Disc is a filled circle.
func Disc(x, y, radius float64) Shape {
	return Shape{Path: canvas.Circle(radius).Translate(x, y), Fill: Black}
}

// Line is the open path through points, each where at says that it lies on the paper.
func Line[P any](points []P, at func(P) (x, y float64)) *canvas.Path {
	path := &canvas.Path{}
	for i, p := range points {
		if x, y := at(p); i == 0 {
			path.MoveTo(x, y)
		} else {
			path.LineTo(x, y)
		}
	}
	return path
}

// Loop is the closed path through points.
func Loop[P any](points []P, at func(P) (x, y float64)) *canvas.Path {
	path := Line(points, at)
	path.Close()
	return path
}

// Polygon is the closed path through the points x, y, x, y …
func Polygon(xy ...float64) *canvas.Path {
	p := &canvas.Path{}
	p.MoveTo(xy[0], xy[1])
	for i := 2; i < len(xy); i += 2 {
		p.LineTo(xy[i], xy[i+1])
	}
	p.Close()
	return p
}

// The centre-pop cross, in millimetres from the centre.
const (
	CrossOpenMm = 0.8 // the punch's point goes into the open middle
	CrossArmMm  = 4.0
)

// PopCross is the cross to punch at: four arms that leave the centre open, so
// the point of the punch can be seen going in.
func PopCross(x, y float64) Shape {
	p := &canvas.Path{}
	for _, d := range [4][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		p.MoveTo(x+d[0]*CrossOpenMm, y+d[1]*CrossOpenMm)
		p.LineTo(x+d[0]*CrossArmMm, y+d[1]*CrossArmMm)
	}
	return Shape{Path: p, Stroke: Black, WidthMm: ThinMm}
}

// TopArrow is an upright arrow with its foot at (x, y), heightMm tall.
func TopArrow(x, y, height float64) Shape {
	w := height * 0.36
	return Shape{Path: Polygon(
		x-w*0.28, y, x+w*0.28, y, x+w*0.28, y+height*0.5, x+w, y+height*0.5,
		x, y+height, x-w, y+height*0.5, x-w*0.28, y+height*0.5), Fill: Black}
}

// Warning is the caution sign: a triangle with an exclamation mark, side
// sizeMm, lower left corner at (x, y).
func Warning(x, y, size float64) []Item {
	h := size * math.Sqrt(3) / 2
	mid := x + size/2
	return []Item{
		Shape{Path: Polygon(x, y, x+size, y, mid, y+h), Stroke: Black, WidthMm: size * 0.09},
		Shape{Path: Polygon(mid-size*0.03, y+h*0.33, mid+size*0.03, y+h*0.33, mid+size*0.055, y+h*0.7, mid-size*0.055, y+h*0.7), Fill: Black},
		Disc(mid, y+h*0.2, size*0.05),
	}
}

// BalloonMm is the radius of a feature balloon.
const BalloonMm = 3.4

// Balloon is a numbered circle about (x, y).
func Balloon(x, y float64, n int) []Item {
	size := 3.8
	if n > 99 {
		size = 3.0
	}
	return []Item{
		Shape{Path: canvas.Circle(BalloonMm).Translate(x, y), Fill: White, Stroke: Black, WidthMm: 0.3},
		Text{XMm: x, YMm: y - size*0.36, SizeMm: size, Bold: true, Align: Centre, Content: strconv.Itoa(n)},
	}
}

// Leader is a line from a balloon's rim to a feature, ending in a dot.
func Leader(bx, by, x, y float64) []Item {
	d := math.Hypot(x-bx, y-by)
	if d <= BalloonMm {
		return []Item{Disc(x, y, 0.6)}
	}
	t := BalloonMm / d
	return []Item{Segment(bx+t*(x-bx), by+t*(y-by), x, y, ThinMm), Disc(x, y, 0.6)}
}

// MatchMark is the diamond that lies on the cut line of two neighbouring
// tiles: half of it stays on either side of the cut.
func MatchMark(x, y float64) []Item {
	const r = 3.2
	return []Item{
		Shape{Path: Polygon(x-r, y, x, y-r, x+r, y, x, y+r), Stroke: Black, WidthMm: ThinMm},
		Segment(x-r, y, x+r, y, HairMm),
		Segment(x, y-r, x, y+r, HairMm),
	}
}

// ScaleLengthMm is the length of the rules that show true size.
const ScaleLengthMm = 100.0

// ruler is a rule with numbers: its marks, the longest with a number, those half as
// often longer than the rest; what stands at its end when it runs across.
type ruler struct {
	marks         int
	stepMm        float64
	major, middle int
	unit          int // of the number at a mark, for each major
	end           string
	endBackMm     float64 // how far the end's text begins before it
}

var (
	mmRuler   = ruler{int(ScaleLengthMm), 1, 10, 5, 10, "100 mm", 2.4}
	inchRuler = ruler{32, geom.MmPerInch / 8, 8, 4, 1, "4 in", 0.8}
)

func rulerOf(inches bool) ruler {
	if inches {
		return inchRuler
	}
	return mmRuler
}

// RuleCheck is the length that stands out on an edge rule: "100 mm" or "4 in".
func RuleCheck(inches bool) string { return rulerOf(inches).end }

// RuleAcross is a 100 mm rule whose zero stands at (x, y); its marks hang
// down 4 mm and its numbers below them, 8 mm in all.
func RuleAcross(d *Drawing, x, y float64) { mmRuler.draw(d, x, y, false) }

// RuleUp is a 100 mm rule upwards with its zero at (x, y); its marks point
// left 4 mm and its numbers stand left of them, 9.5 mm in all.
func RuleUp(d *Drawing, x, y float64) { mmRuler.draw(d, x, y, true) }

// InchRule is a 4 in rule from (x, y), across, or up if up is true; its marks
// lie on the same side as those of the millimetre rules. Marks are eighths.
func InchRule(d *Drawing, x, y float64, up bool) { inchRuler.draw(d, x, y, up) }

// draw draws the whole ruler, its last number bold.
func (r ruler) draw(d *Drawing, x, y float64, up bool) {
	l := laidRule{r, canvas.Point{X: x, Y: y}, up, 1}
	long := float64(r.marks) * r.stepMm
	l.draw(d, long, func(i int, along float64) {
		t := l.number(i, 6.9, 4.6)
		if t.Bold = i == r.marks; t.Bold && !up {
			t.XMm, t.Align, t.Content = x+along-r.endBackMm, Left, r.end
		}
		d.Add(t)
	})
	line := Segment(x-ThinMm/2, y, x+long+ThinMm/2, y, ThinMm)
	if up {
		line = Segment(x, y-ThinMm/2, x, y+long+ThinMm/2, ThinMm)
	}
	d.Add(line)
}

// laidRule is a ruler along an edge with its zero at a point, across with its marks hanging
// down, or up with them to the left, which are a share of their length.
type laidRule struct {
	ruler
	zero  canvas.Point
	up    bool
	share float64
}

// at is a place along a rule and off its edge.
func (l laidRule) at(along, off float64) (x, y float64) {
	if l.up {
		return l.zero.X - off, l.zero.Y + along
	}
	return l.zero.X + along, l.zero.Y - off
}

// draw draws the marks as far as lengthMm; number is called at those that have one.
func (l laidRule) draw(d *Drawing, lengthMm float64, number func(i int, along float64)) {
	marks := &canvas.Path{}
	for i := 0; float64(i)*l.stepMm <= lengthMm+1e-9; i++ {
		along := float64(i) * l.stepMm
		marks.MoveTo(l.at(along, 0))
		marks.LineTo(l.at(along, l.share*l.tickMm(i)))
		if i%l.major == 0 {
			number(i, along)
		}
	}
	d.Add(Shape{Path: marks, Stroke: Black, WidthMm: ThinMm})
}

// number is that of the mark i, so far off the edge of a rule that runs across or up.
func (l laidRule) number(i int, acrossMm, upMm float64) Text {
	along := float64(i) * l.stepMm
	t := Text{SizeMm: SmallMm, Align: Centre, Content: strconv.Itoa(i / l.major * l.unit)}
	t.XMm, t.YMm = l.at(along, acrossMm)
	if l.up {
		t.Align = Right
		t.XMm, t.YMm = l.at(along-0.95, upMm)
	}
	return t
}

// tickMm is the length of the mark i.
func (r ruler) tickMm(i int) float64 {
	switch {
	case i%r.major == 0:
		return 4
	case i%r.middle == 0:
		return 3
	}
	return 2
}

// TickMm is the length of the mark at a millimetre of a rule.
func TickMm(mm int) float64 { return mmRuler.tickMm(mm) }

// EdgeRule is a rule along an edge with its zero at a point, as long as fits into
// lengthMm: millimetres, or eighths of an inch. It runs across with its marks
// hanging down, or up with them to the left, in 8 mm of room. The 100 mm, or 4 in, to
// check a print by stand out.
func EdgeRule(d *Drawing, zero canvas.Point, lengthMm float64, inches, up bool) {
	l := laidRule{rulerOf(inches), zero, up, 0.8}
	checkMm := float64(l.marks) * l.stepMm
	l.draw(d, lengthMm, func(i int, along float64) {
		// Nothing is written where the mark to check by stands, nor where the rules meet.
		if i > 0 && math.Abs(along-checkMm) >= 9 && along <= lengthMm-2 {
			d.Add(l.number(i, 5.9, 3.8))
		}
	})
	if lengthMm < checkMm+9 {
		return
	}
	check := &canvas.Path{}
	check.MoveTo(l.at(0, 4))
	check.LineTo(l.at(0, 0))
	check.LineTo(l.at(checkMm, 0))
	check.LineTo(l.at(checkMm, 4))
	t := Text{SizeMm: SmallMm, Bold: true, Align: Centre, Content: l.end}
	if t.XMm, t.YMm = l.at(checkMm, 6.6); up {
		t.XMm, t.YMm = l.at(checkMm, 4.6-0.9)
		t.RotateDeg = 90
	}
	d.Add(Shape{Path: check, Stroke: Black, WidthMm: LineMm}, t)
}

// SlotPath is an obround outline: half circles of radius widthMm/2 about the
// points a and b, joined by straight sides; a circle where they coincide.
func SlotPath(ax, ay, bx, by, widthMm float64) *canvas.Path {
	r := widthMm / 2
	dx, dy := bx-ax, by-ay
	d := math.Hypot(dx, dy)
	if d == 0 {
		return canvas.Circle(r).Translate(ax, ay)
	}
	nx, ny := -dy/d*r, dx/d*r
	p := &canvas.Path{}
	p.MoveTo(ax-nx, ay-ny)
	p.LineTo(bx-nx, by-ny)
	p.ArcTo(r, r, 0, false, true, bx+nx, by+ny)
	p.LineTo(ax+nx, ay+ny)
	p.ArcTo(r, r, 0, false, true, ax-nx, ay-ny)
	p.Close()
	return p
}
