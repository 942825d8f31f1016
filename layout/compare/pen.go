package compare

import (
	"math"

	"centrepop/parts/geom"
)

// pen draws contours: what it is told in the units of an element, it keeps as
// straight pieces in millimetres.
type pen struct {
	f        *file
	e        *element
	m        matrix
	mark     bool
	x, y     float64 // where it is, in the element's units
	line     []point
	tooMuch  bool
	notPlain bool // a number left the range
}

func (p *pen) to(x, y float64) {
	q := p.m.apply(x, y)
	if !(math.Abs(q.XMm) <= maxMm && math.Abs(q.YMm) <= maxMm) {
		p.notPlain = true
		return
	}
	if p.f.points++; p.f.points > maxPoints {
		p.tooMuch = true
		return
	}
	p.line = append(p.line, q)
	p.x, p.y = x, y
}

// These keep curves round that are drawn far too small: in a cubic or quadratic
// curve, and in a full circle.
const (
	fewestSteps    = 24
	fewestInCircle = 128
)

// steps is how many straight pieces keep a curve of second differences bend
// (in the element's units) flat enough.
func (p *pen) steps(bend float64) int {
	if bend == 0 {
		return 1
	}
	n := math.Max(math.Ceil(math.Sqrt(bend*p.m.stretch()/(8*flatMm))), fewestSteps)
	if !(n <= 4096) {
		return 4096
	}
	return int(n)
}

// quad is the cubic curve that runs the same way.
func (p *pen) quad(b, c point) {
	a := xy(p.x, p.y)
	p.cubic(a.Plus(b.Minus(a).Times(2.0/3)), c.Plus(b.Minus(c).Times(2.0/3)), c)
}

func (p *pen) cubic(b, c, d point) {
	a := xy(p.x, p.y)
	n := p.steps(6 * math.Max(math.Hypot(a.XMm-2*b.XMm+c.XMm, a.YMm-2*b.YMm+c.YMm), math.Hypot(b.XMm-2*c.XMm+d.XMm, b.YMm-2*c.YMm+d.YMm)))
	for i := 1; i <= n && !p.tooMuch; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		ka, kb, kc, kd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		p.to(ka*a.XMm+kb*b.XMm+kc*c.XMm+kd*d.XMm, ka*a.YMm+kb*b.YMm+kc*c.YMm+kd*d.YMm)
	}
	p.x, p.y = d.XMm, d.YMm
}

// frame is how an ellipse is turned.
type frame struct{ cos, sin float64 }

// turn draws an elliptical arc about a centre, from angle a by sweep (radians
// in the ellipse's own frame).
func (p *pen) turn(centre, radii point, t frame, a, sweep float64) {
	n := p.steps(math.Max(radii.XMm, radii.YMm) * sweep * sweep)
	n = max(n, int(math.Ceil(math.Abs(sweep)/(2*math.Pi)*fewestInCircle)))
	for i := 1; i <= n && !p.tooMuch; i++ {
		s, c := math.Sincos(a + sweep*float64(i)/float64(n))
		p.to(centre.XMm+radii.XMm*c*t.cos-radii.YMm*s*t.sin, centre.YMm+radii.XMm*c*t.sin+radii.YMm*s*t.cos)
	}
}

// arc draws an arc (SVG 1.1, appendix F.6: from end points to centre).
func (p *pen) arc(to geom.Stroke) {
	rx, ry, x, y := math.Abs(to.Radii.XMm), math.Abs(to.Radii.YMm), to.To.XMm, to.To.YMm
	x0, y0 := p.x, p.y
	if x0 == x && y0 == y {
		return
	}
	if geom.Alike(min(rx, ry), 0) {
		p.to(x, y)
		return
	}
	sin, cos := math.Sincos(math.Mod(to.TurnDeg, 360) * math.Pi / 180)
	dx, dy := (x0-x)/2, (y0-y)/2
	u, v := cos*dx+sin*dy, cos*dy-sin*dx
	if l := (u/rx)*(u/rx) + (v/ry)*(v/ry); l > 1 {
		rx, ry = rx*math.Sqrt(l), ry*math.Sqrt(l)
	}
	num := rx*rx*ry*ry - rx*rx*v*v - ry*ry*u*u
	den := rx*rx*v*v + ry*ry*u*u
	k := math.Sqrt(math.Max(num/den, 0))
	if to.Large == to.Sweep {
		k = -k
	}
	cu, cv := k*rx*v/ry, -k*ry*u/rx
	cx, cy := cos*cu-sin*cv+(x0+x)/2, sin*cu+cos*cv+(y0+y)/2
	from := math.Atan2((v-cv)/ry, (u-cu)/rx)
	by := math.Atan2((-v-cv)/ry, (-u-cu)/rx) - from
	if to.Sweep && by < 0 {
		by += 2 * math.Pi
	} else if !to.Sweep && by > 0 {
		by -= 2 * math.Pi
	}
	p.turn(xy(cx, cy), xy(rx, ry), frame{cos, sin}, from, by)
	// The end as written, not as computed.
	if len(p.line) > 0 {
		p.line = p.line[:len(p.line)-1]
	}
	p.to(x, y)
}

// flatShare is how far a straight piece may be from its curve, of the size.
const flatShare = 0.0001

// spread is the larger side of the box.
func spread(points []point) float64 {
	w, h := (&contour{points: points}).size()
	return math.Max(w, h)
}

// lift ends a contour.
func (p *pen) lift(closed bool) error {
	if p.tooMuch {
		return p.f.fault(p.e.from, "the drawing has more than %d points", maxPoints)
	}
	if p.notPlain {
		return p.f.fault(p.e.from, "a coordinate is further than %g mm out", maxMm)
	}
	line := p.line
	p.line = nil
	if len(line) == 0 {
		return nil
	}
	if !closed && geom.Distance(line[0], line[len(line)-1]) <= joinMm {
		closed = true
	}
	line = thin(line, closed, math.Min(flatMm, flatShare*spread(line)))
	if len(line) < 2 && !p.mark {
		return nil // a dot cuts nothing, but it marks
	}
	if len(line) < 3 {
		closed = false
	}
	if len(p.f.sheet.contours) >= maxContours {
		return p.f.fault(p.e.from, "the drawing has more than %d contours", maxContours)
	}
	p.f.sheet.contours = append(p.f.sheet.contours, contour{points: line, closed: closed, place: p.f.where(p.e.from), mark: p.mark})
	return nil
}
