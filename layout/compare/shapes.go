package compare

import (
	"math"
	"strings"
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
	if !(math.Abs(q.x) <= maxMm && math.Abs(q.y) <= maxMm) {
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

// steps is how many straight pieces keep a curve of second differences bend
// (in the element's units) flat enough.
func (p *pen) steps(bend float64) int {
	n := math.Ceil(math.Sqrt(bend * p.m.stretch() / (8 * flatMm)))
	if !(n <= 4096) {
		return 4096
	}
	return max(int(n), 1)
}

func (p *pen) quad(x1, y1, x2, y2 float64) {
	x0, y0 := p.x, p.y
	n := p.steps(2 * math.Hypot(x0-2*x1+x2, y0-2*y1+y2))
	for i := 1; i <= n && !p.tooMuch; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		p.to(u*u*x0+2*u*t*x1+t*t*x2, u*u*y0+2*u*t*y1+t*t*y2)
	}
	p.x, p.y = x2, y2
}

func (p *pen) cubic(x1, y1, x2, y2, x3, y3 float64) {
	x0, y0 := p.x, p.y
	n := p.steps(6 * math.Max(math.Hypot(x0-2*x1+x2, y0-2*y1+y2), math.Hypot(x1-2*x2+x3, y1-2*y2+y3)))
	for i := 1; i <= n && !p.tooMuch; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		a, b, c, d := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		p.to(a*x0+b*x1+c*x2+d*x3, a*y0+b*y1+c*y2+d*y3)
	}
	p.x, p.y = x3, y3
}

// turn draws an elliptical arc about a centre, from angle a by sweep (radians
// in the ellipse's own frame, which is turned by cos, sin).
func (p *pen) turn(cx, cy, rx, ry, cos, sin, a, sweep float64) {
	n := p.steps(math.Max(rx, ry) * sweep * sweep)
	n = max(n, int(math.Ceil(math.Abs(sweep)/(2*math.Pi)*48)))
	for i := 1; i <= n && !p.tooMuch; i++ {
		s, c := math.Sincos(a + sweep*float64(i)/float64(n))
		p.to(cx+rx*c*cos-ry*s*sin, cy+rx*c*sin+ry*s*cos)
	}
}

// arc draws an arc to x, y (SVG 1.1, appendix F.6: from end points to centre).
func (p *pen) arc(rx, ry, turnDeg float64, large, sweep bool, x, y float64) {
	rx, ry = math.Abs(rx), math.Abs(ry)
	x0, y0 := p.x, p.y
	if x0 == x && y0 == y {
		return
	}
	if rx < 1e-12 || ry < 1e-12 {
		p.to(x, y)
		return
	}
	sin, cos := math.Sincos(math.Mod(turnDeg, 360) * math.Pi / 180)
	dx, dy := (x0-x)/2, (y0-y)/2
	u, v := cos*dx+sin*dy, cos*dy-sin*dx
	if l := (u/rx)*(u/rx) + (v/ry)*(v/ry); l > 1 {
		rx, ry = rx*math.Sqrt(l), ry*math.Sqrt(l)
	}
	num := rx*rx*ry*ry - rx*rx*v*v - ry*ry*u*u
	den := rx*rx*v*v + ry*ry*u*u
	k := math.Sqrt(math.Max(num/den, 0))
	if large == sweep {
		k = -k
	}
	cu, cv := k*rx*v/ry, -k*ry*u/rx
	cx, cy := cos*cu-sin*cv+(x0+x)/2, sin*cu+cos*cv+(y0+y)/2
	from := math.Atan2((v-cv)/ry, (u-cu)/rx)
	by := math.Atan2((-v-cv)/ry, (-u-cu)/rx) - from
	if sweep && by < 0 {
		by += 2 * math.Pi
	} else if !sweep && by > 0 {
		by -= 2 * math.Pi
	}
	p.turn(cx, cy, rx, ry, cos, sin, from, by)
	// The end as written, not as computed.
	if len(p.line) > 0 {
		p.line = p.line[:len(p.line)-1]
	}
	p.to(x, y)
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
	if !closed && len(line) > 2 && line[0].distance(line[len(line)-1]) <= joinMm {
		closed = true
	}
	line = thin(line, closed, flatMm)
	if len(line) < 2 {
		return nil // a dot cuts nothing
	}
	if len(line) < 3 {
		closed = false
	}
	if len(p.f.sheet.contours) >= maxContours {
		return p.f.fault(p.e.from, "the drawing has more than %d contours", maxContours)
	}
	c := contour{points: line, closed: closed, element: p.e.name, mark: p.mark}
	at := p.f.where(p.e.from)
	c.line, c.column = at.line, at.column
	p.f.sheet.contours = append(p.f.sheet.contours, c)
	return nil
}

// shape draws a basic shape or a path; elements of other kinds are passed over.
func (f *file) shape(e *element, c context) error {
	p := &pen{f: f, e: e, m: c.m, mark: c.mark}
	var bad error
	get := func(name string, of float64) float64 {
		v, err := f.coordinate(e, name, of, 0)
		if err != nil && bad == nil {
			bad = err
		}
		return v
	}
	diagonal := math.Hypot(c.w, c.h) / math.Sqrt2
	switch e.name {
	case "path":
		d, _ := e.attr("d")
		return p.path(d)
	case "circle", "ellipse":
		cx, cy := get("cx", c.w), get("cy", c.h)
		rx, ry := get("r", diagonal), 0.0
		if ry = rx; e.name == "ellipse" {
			rx, ry = get("rx", c.w), get("ry", c.h)
		}
		if bad != nil {
			return bad
		}
		if rx < 0 || ry < 0 {
			return f.fault(e.from, "the radius of a %s is negative", e.name)
		}
		if rx == 0 || ry == 0 {
			return nil
		}
		p.turn(cx, cy, rx, ry, 1, 0, 0, 2*math.Pi)
		return p.lift(true)
	case "rect":
		x, y, w, h := get("x", c.w), get("y", c.h), get("width", c.w), get("height", c.h)
		rx, ry := get("rx", c.w), get("ry", c.h)
		if bad != nil {
			return bad
		}
		if w < 0 || h < 0 || rx < 0 || ry < 0 {
			return f.fault(e.from, "a side or radius of a rect is negative")
		}
		if w == 0 || h == 0 {
			return nil
		}
		if _, ok := e.attr("rx"); !ok {
			rx = ry
		}
		if _, ok := e.attr("ry"); !ok {
			ry = rx
		}
		rx, ry = math.Min(rx, w/2), math.Min(ry, h/2)
		p.to(x+rx, y)
		p.to(x+w-rx, y)
		p.arc(rx, ry, 0, false, true, x+w, y+ry)
		p.to(x+w, y+h-ry)
		p.arc(rx, ry, 0, false, true, x+w-rx, y+h)
		p.to(x+rx, y+h)
		p.arc(rx, ry, 0, false, true, x, y+h-ry)
		p.to(x, y+ry)
		p.arc(rx, ry, 0, false, true, x+rx, y)
		return p.lift(true)
	case "line":
		x1, y1, x2, y2 := get("x1", c.w), get("y1", c.h), get("x2", c.w), get("y2", c.h)
		if bad != nil {
			return bad
		}
		p.to(x1, y1)
		p.to(x2, y2)
		return p.lift(false)
	case "polyline", "polygon":
		text, _ := e.attr("points")
		s := scanner{text: text}
		for {
			s.comma()
			if s.at >= len(text) {
				break
			}
			x, ok := s.number()
			if !ok {
				return f.faultIn(e, "points", s.at, "a number belongs here")
			}
			s.comma()
			y, ok := s.number()
			if !ok {
				return f.faultIn(e, "points", s.at, "a point lacks its y")
			}
			if p.to(x, y); p.tooMuch {
				break
			}
		}
		return p.lift(e.name == "polygon")
	}
	return nil
}

// numbersOf is how many numbers a step of a path command takes.
func numbersOf(command byte) int {
	switch command {
	case 'H', 'V':
		return 1
	case 'S', 'Q':
		return 4
	case 'C':
		return 6
	case 'A':
		return 7
	}
	return 2
}

// path draws path data (SVG 1.1, chapter 8.3).
func (p *pen) path(d string) error {
	s := scanner{text: d}
	var startX, startY float64 // of the contour
	var ctrlX, ctrlY float64   // last control point, for S and T
	last := byte(0)
	command := byte(0)
	begun := false // the pen is down
	wrong := func(what string) error { return p.f.faultIn(p.e, "d", s.at, "path data: %s", what) }
	for {
		if last != 0 && strings.IndexByte("Zz", last) < 0 {
			s.comma()
		} else {
			s.blank()
		}
		if s.at >= len(d) {
			break
		}
		if strings.IndexByte("MmLlHhVvCcSsQqTtAaZz", d[s.at]) >= 0 {
			command = d[s.at]
			s.at++
		} else if command == 0 || command == 'Z' || command == 'z' {
			return wrong("a command letter belongs here")
		}
		if last == 0 && command != 'M' && command != 'm' {
			s.at--
			return wrong("it must start with M")
		}
		upper := command &^ 0x20
		relX, relY := 0.0, 0.0
		if command != upper {
			relX, relY = p.x, p.y
		}
		if upper == 'Z' {
			if err := p.lift(true); err != nil {
				return err
			}
			p.x, p.y, begun, last = startX, startY, false, command
			continue
		}
		// The numbers of one step.
		var v [7]float64
		for i := range numbersOf(upper) {
			if i > 0 {
				s.comma()
			}
			ok := false
			if upper == 'A' && (i == 3 || i == 4) {
				var set bool
				if set, ok = s.flag(); !ok {
					return wrong("the flag of an arc must be 0 or 1")
				}
				if set {
					v[i] = 1
				}
				continue
			}
			if v[i], ok = s.number(); !ok {
				return wrong("a number belongs here")
			}
		}
		if upper == 'M' {
			if err := p.lift(false); err != nil {
				return err
			}
			p.x, p.y = v[0]+relX, v[1]+relY
			startX, startY = p.x, p.y
			p.to(p.x, p.y)
			begun, last = true, command
			command = 'L' | command&0x20 // further pairs are lines
			continue
		}
		if !begun { // after Z a contour goes on from where the last began
			startX, startY = p.x, p.y
			p.to(p.x, p.y)
			begun = true
		}
		before := last &^ 0x20
		nextX, nextY := p.x, p.y // control point left behind
		switch upper {
		case 'L':
			p.to(v[0]+relX, v[1]+relY)
		case 'H':
			p.to(v[0]+relX, p.y)
		case 'V':
			p.to(p.x, v[0]+relY)
		case 'C', 'S':
			x1, y1 := p.x, p.y
			w := v[:]
			if upper == 'C' {
				x1, y1, w = v[0]+relX, v[1]+relY, v[2:]
			} else if before == 'C' || before == 'S' {
				x1, y1 = 2*p.x-ctrlX, 2*p.y-ctrlY
			}
			nextX, nextY = w[0]+relX, w[1]+relY
			p.cubic(x1, y1, nextX, nextY, w[2]+relX, w[3]+relY)
		case 'Q', 'T':
			x1, y1 := p.x, p.y
			w := v[:]
			if upper == 'Q' {
				x1, y1, w = v[0]+relX, v[1]+relY, v[2:]
			} else if before == 'Q' || before == 'T' {
				x1, y1 = 2*p.x-ctrlX, 2*p.y-ctrlY
			}
			nextX, nextY = x1, y1
			p.quad(x1, y1, w[0]+relX, w[1]+relY)
		case 'A':
			p.arc(v[0], v[1], v[2], v[3] == 1, v[4] == 1, v[5]+relX, v[6]+relY)
		}
		ctrlX, ctrlY = nextX, nextY
		last = command
		if p.tooMuch || p.notPlain {
			break
		}
	}
	return p.lift(false)
}
