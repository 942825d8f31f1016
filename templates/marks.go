package templates

import (
	"fmt"
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/parts"
)

// The line widths, in millimetres.
const (
	hairMm  = 0.13 // construction and hatching
	thinMm  = 0.18
	lineMm  = 0.35 // outlines
	thickMm = 0.7
)

// Dash patterns, drawn and skipped lengths in millimetres.
var (
	chainDash  = []float64{6, 1, 1, 1}
	hiddenDash = []float64{1.2, 0.8}
	cutDash    = []float64{3, 1.5}
)

// segment is a straight line.
func segment(x0, y0, x1, y1, width float64, dash ...float64) Shape {
	p := &canvas.Path{}
	p.MoveTo(x0, y0)
	p.LineTo(x1, y1)
	return Shape{Path: p, Stroke: Black, WidthMm: width, DashMm: dash}
}

// box is the outline of a rectangle.
func box(r rect, width float64) Shape {
	return Shape{Path: r.path(), Stroke: Black, WidthMm: width}
}

// ring is a circle.
func ring(x, y, radius, width float64, dash ...float64) Shape {
	return Shape{Path: canvas.Circle(radius).Translate(x, y), Stroke: Black, WidthMm: width, DashMm: dash}
}

// disc is a filled circle.
func disc(x, y, radius float64) Shape {
	return Shape{Path: canvas.Circle(radius).Translate(x, y), Fill: Black}
}

// polygon is the closed path through the points x, y, x, y …
func polygon(xy ...float64) *canvas.Path {
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
	crossOpenMm = 0.8 // the punch's point goes into the open middle
	crossArmMm  = 4.0
)

// popCross is the cross to punch at: four arms that leave the centre open, so
// the point of the punch can be seen going in.
func popCross(x, y float64) Shape {
	p := &canvas.Path{}
	for _, d := range [4][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		p.MoveTo(x+d[0]*crossOpenMm, y+d[1]*crossOpenMm)
		p.LineTo(x+d[0]*crossArmMm, y+d[1]*crossArmMm)
	}
	return Shape{Path: p, Stroke: Black, WidthMm: thinMm}
}

// topArrow is an upright arrow with its foot at (x, y), heightMm tall.
func topArrow(x, y, height float64) Shape {
	w := height * 0.36
	return Shape{Path: polygon(
		x-w*0.28, y, x+w*0.28, y, x+w*0.28, y+height*0.5, x+w, y+height*0.5,
		x, y+height, x-w, y+height*0.5, x-w*0.28, y+height*0.5), Fill: Black}
}

// warning is the caution sign: a triangle with an exclamation mark, side
// sizeMm, lower left corner at (x, y).
func warning(x, y, size float64) []Item {
	h := size * math.Sqrt(3) / 2
	mid := x + size/2
	return []Item{
		Shape{Path: polygon(x, y, x+size, y, mid, y+h), Stroke: Black, WidthMm: size * 0.09},
		Shape{Path: polygon(mid-size*0.03, y+h*0.33, mid+size*0.03, y+h*0.33, mid+size*0.055, y+h*0.7, mid-size*0.055, y+h*0.7), Fill: Black},
		disc(mid, y+h*0.2, size*0.05),
	}
}

// balloonMm is the radius of a feature balloon.
const balloonMm = 3.4

// balloon is a numbered circle about (x, y).
func balloon(x, y float64, n int) []Item {
	size := 3.8
	if n > 99 {
		size = 3.0
	}
	return []Item{
		Shape{Path: canvas.Circle(balloonMm).Translate(x, y), Fill: White, Stroke: Black, WidthMm: 0.3},
		Text{XMm: x, YMm: y - size*0.36, SizeMm: size, Bold: true, Align: Centre, Content: strconv.Itoa(n)},
	}
}

// leader is a line from a balloon's rim to a feature, ending in a dot.
func leader(bx, by, x, y float64) []Item {
	d := math.Hypot(x-bx, y-by)
	if d <= balloonMm {
		return []Item{disc(x, y, 0.6)}
	}
	t := balloonMm / d
	return []Item{segment(bx+t*(x-bx), by+t*(y-by), x, y, thinMm), disc(x, y, 0.6)}
}

// matchMark is the diamond that lies on the cut line of two neighbouring
// tiles: half of it stays on either side of the cut.
func matchMark(x, y float64) []Item {
	const r = 3.2
	return []Item{
		Shape{Path: polygon(x-r, y, x, y-r, x+r, y, x, y+r), Stroke: Black, WidthMm: thinMm},
		segment(x-r, y, x+r, y, hairMm),
		segment(x, y-r, x, y+r, hairMm),
	}
}

// scaleLengthMm is the length of the rules that show true size.
const scaleLengthMm = 100.0

// ruleAcross is a 100 mm rule whose zero stands at (x, y); its marks hang
// down 4 mm and its numbers below them, 8 mm in all.
func ruleAcross(d *Drawing, x, y float64) {
	marks := &canvas.Path{}
	for i := 0; i <= int(scaleLengthMm); i++ {
		marks.MoveTo(x+float64(i), y)
		marks.LineTo(x+float64(i), y-tickMm(i))
		if i%10 == 0 {
			t := Text{XMm: x + float64(i), YMm: y - 6.9, SizeMm: smallMm, Align: Centre, Content: strconv.Itoa(i)}
			if i == int(scaleLengthMm) {
				t.Content, t.Bold, t.Align, t.XMm = "100 mm", true, Left, x+scaleLengthMm-2.4
			}
			d.Add(t)
		}
	}
	d.Add(Shape{Path: marks, Stroke: Black, WidthMm: thinMm}, segment(x-thinMm/2, y, x+scaleLengthMm+thinMm/2, y, thinMm))
}

// ruleUp is a 100 mm rule upwards with its zero at (x, y); its marks point
// left 4 mm and its numbers stand left of them, 9.5 mm in all.
func ruleUp(d *Drawing, x, y float64) {
	marks := &canvas.Path{}
	for i := 0; i <= int(scaleLengthMm); i++ {
		marks.MoveTo(x, y+float64(i))
		marks.LineTo(x-tickMm(i), y+float64(i))
		if i%10 == 0 {
			d.Add(Text{XMm: x - 4.6, YMm: y + float64(i) - 0.95, SizeMm: smallMm, Align: Right, Bold: i == int(scaleLengthMm), Content: strconv.Itoa(i)})
		}
	}
	d.Add(Shape{Path: marks, Stroke: Black, WidthMm: thinMm}, segment(x, y-thinMm/2, x, y+scaleLengthMm+thinMm/2, thinMm))
}

// tickMm is the length of the mark at a millimetre of a rule.
func tickMm(mm int) float64 {
	switch {
	case mm%10 == 0:
		return 4
	case mm%5 == 0:
		return 3
	}
	return 2
}

// inchRule is a 4 in rule from (x, y), across, or up if up is true; its marks
// lie on the same side as those of the millimetre rules. Marks are eighths.
func inchRule(d *Drawing, x, y float64, up bool) {
	marks := &canvas.Path{}
	end := 4 * mmPerInch
	for i := 0; i <= 32; i++ {
		at := float64(i) * mmPerInch / 8
		tick := 2.0
		switch {
		case i%8 == 0:
			tick = 4
		case i%4 == 0:
			tick = 3
		}
		label := ""
		if i%8 == 0 {
			label = strconv.Itoa(i / 8)
		}
		if up {
			marks.MoveTo(x, y+at)
			marks.LineTo(x-tick, y+at)
			if label != "" {
				d.Add(Text{XMm: x - 4.6, YMm: y + at - 0.95, SizeMm: smallMm, Align: Right, Bold: i == 32, Content: label})
			}
			continue
		}
		marks.MoveTo(x+at, y)
		marks.LineTo(x+at, y-tick)
		if label == "" {
			continue
		}
		t := Text{XMm: x + at, YMm: y - 6.9, SizeMm: smallMm, Align: Centre, Content: label}
		if i == 32 {
			t.Content, t.Bold, t.Align, t.XMm = "4 in", true, Left, x+at-0.8
		}
		d.Add(t)
	}
	d.Add(Shape{Path: marks, Stroke: Black, WidthMm: thinMm})
	if up {
		d.Add(segment(x, y-thinMm/2, x, y+end+thinMm/2, thinMm))
	} else {
		d.Add(segment(x-thinMm/2, y, x+end+thinMm/2, y, thinMm))
	}
}

// clockMm is the radius of the dials of clockPicture.
const clockMm = 15.0

// clockPicture explains clock angles and numbering: the same six holes from
// the front and, mirrored, from the back. It is 96 mm wide and 52 mm high,
// its origin the upper left corner.
func clockPicture() Drawing {
	var d Drawing
	for i, face := range []parts.Face{parts.Front, parts.Back} {
		cx, cy := 26+48*float64(i), -26.0
		d.Add(ring(cx, cy, clockMm, lineMm), ring(cx, cy, 10, hairMm, chainDash...))
		d.Add(segment(cx-3, cy, cx+3, cy, thinMm), segment(cx, cy-3, cx, cy+3, thinMm))
		for j := range 12 {
			s, c := math.Sincos(float64(j) * math.Pi / 6)
			d.Add(segment(cx+s*clockMm, cy+c*clockMm, cx+s*(clockMm+1.5), cy+c*(clockMm+1.5), thinMm))
		}
		for n := range 6 {
			a := float64(30+60*n) * math.Pi / 180
			if face == parts.Back {
				a = -a
			}
			s, c := math.Sincos(a)
			d.Add(ring(cx+10*s, cy+10*c, 1, thinMm))
			d.Add(Text{XMm: cx + 6.2*s, YMm: cy + 6.2*c - 1, SizeMm: smallMm, Align: Centre, Content: strconv.Itoa(n + 1)})
		}
		d.Add(topArrow(cx, cy+clockMm+2, 4))
		d.Add(Text{XMm: cx + 2.6, YMm: cy + clockMm + 3, SizeMm: smallMm, Bold: true, Content: "TOP 0°"})
		d.Add(Text{XMm: cx + clockMm + 2, YMm: cy - 1, SizeMm: smallMm, Content: "90°"})
		d.Add(Text{XMm: cx, YMm: cy - clockMm - 4.2, SizeMm: smallMm, Align: Centre, Content: "180°"})
		d.Add(Text{XMm: cx - clockMm - 2, YMm: cy - 1, SizeMm: smallMm, Align: Right, Content: "270°"})
		d.Add(Text{XMm: cx, YMm: cy - clockMm - 9, SizeMm: textMm, Bold: true, Align: Centre, Content: fmt.Sprintf("%s face", upper(face))})
	}
	return d
}
