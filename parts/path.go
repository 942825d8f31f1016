package parts

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// xy is a place on the front face in millimetres, x right and y up.
type xy struct{ x, y float64 }

// maxPathSegments is the most commands in one outline path.
const maxPathSegments = 2000

// curveSteps is how many straight pieces stand for a curve when holes are
// checked against an outline; cut outlines are made by later stages.
const curveSteps = 32

// pathArguments gives the number of numbers after each path command (SVG 1.1
// section 8.3, path data).
var pathArguments = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// path reads SVG path data of one closed contour.
func (r *reader) path(n *node) Text {
	text, ok := r.scalar(n, "path data", `SVG path data such as "M0 0 L100 0 L100 50 Z", in mm, y up`)
	if !ok {
		return Text{}
	}
	corners, wrong := parsePath(text)
	if wrong == "" && area(corners) < 1 {
		wrong = "the contour has no area"
	}
	if wrong == "" {
		wrong = pathCrossing(corners)
	}
	if wrong != "" {
		r.faultf(n.pos, `one closed contour such as "M0 0 L100 0 L100 50 Z", in mm, y up`, "the path cannot be used: %s", wrong)
		return Text{}
	}
	return Text{Value: text, Pos: n.pos}
}

// pathScanner takes path data apart.
type pathScanner struct{ rest string }

func (s *pathScanner) space() {
	s.rest = strings.TrimLeft(s.rest, " \t\n,")
}

// number reads one number of path data; numbers may touch, as in "1-2.5.5".
func (s *pathScanner) number() (float64, bool) {
	s.space()
	i, dots, digits := 0, 0, 0
scan:
	for ; i < len(s.rest); i++ {
		c := s.rest[i]
		switch {
		case c >= '0' && c <= '9':
			digits++
		case (c == '-' || c == '+') && i == 0:
		case c == '.' && dots == 0:
			dots++
		default:
			break scan
		}
	}
	if digits == 0 || digits > 20 {
		return 0, false
	}
	v, err := strconv.ParseFloat(s.rest[:i], 64)
	s.rest = s.rest[i:]
	return v, err == nil && math.Abs(v) <= largestMm
}

// flag reads the 0 or 1 of an arc, which may touch what follows.
func (s *pathScanner) flag() (float64, bool) {
	s.space()
	if s.rest == "" || s.rest[0] != '0' && s.rest[0] != '1' {
		return 0, false
	}
	v := float64(s.rest[0] - '0')
	s.rest = s.rest[1:]
	return v, true
}

// parsePath checks path data and returns the contour as straight pieces. It
// returns what is wrong, or "".
func parsePath(text string) (corners []xy, wrong string) {
	s := &pathScanner{rest: text}
	pen := &pathPen{}
	command := byte(0)
	for count := 0; ; count++ {
		s.space()
		if s.rest == "" {
			break
		}
		if count > maxPathSegments {
			return nil, fmt.Sprintf("it has more than %d segments", maxPathSegments)
		}
		letter := s.rest[0] &^ 0x20
		if _, ok := pathArguments[letter]; ok && letter >= 'A' {
			command = s.rest[0]
			s.rest = s.rest[1:]
			switch {
			case pen.closed:
				return nil, "it goes on after Z; only one contour can be the outline"
			case count == 0 && letter != 'M':
				return nil, "it does not start with M"
			case count > 0 && letter == 'M':
				return nil, "it has a second M; only one contour can be the outline"
			}
		} else if command == 0 || command&^0x20 == 'Z' {
			return nil, fmt.Sprintf("%s is not expected there", quote(s.rest))
		}
		var v [7]float64
		upper := command &^ 0x20
		for i := range pathArguments[upper] {
			read := s.number
			if upper == 'A' && (i == 3 || i == 4) {
				read = s.flag
			}
			var ok bool
			if v[i], ok = read(); !ok {
				return nil, fmt.Sprintf("after %c a number within ±%g is needed at %s", command, largestMm, quote(s.rest))
			}
		}
		pen.draw(upper, command >= 'a', v)
		if command&^0x20 == 'M' {
			command-- // M to L, m to l: further pairs are lines
		}
		for _, c := range pen.corners[max(len(pen.corners)-1, 0):] {
			if math.Abs(c.x) > largestMm || math.Abs(c.y) > largestMm {
				return nil, fmt.Sprintf("it runs more than %g mm from the origin", largestMm)
			}
		}
	}
	if !pen.closed {
		return nil, "it is not closed with Z"
	}
	return pen.corners, ""
}

// pathPen follows path commands and collects straight pieces.
type pathPen struct {
	corners []xy
	at      xy
	control xy   // last control point, for S and T
	last    byte // last command, upper case
	closed  bool
}

func (p *pathPen) lineTo(to xy) {
	p.corners = append(p.corners, to)
	p.at = to
}

func (p *pathPen) draw(command byte, relative bool, v [7]float64) {
	base := xy{}
	if relative {
		base = p.at
	}
	abs := func(i int) xy { return xy{base.x + v[i], base.y + v[i+1]} }
	reflected := func(after string) xy {
		if strings.IndexByte(after, p.last) < 0 || p.last == 0 {
			return p.at
		}
		return xy{2*p.at.x - p.control.x, 2*p.at.y - p.control.y}
	}
	switch command {
	case 'M', 'L':
		p.lineTo(abs(0))
	case 'H':
		p.lineTo(xy{base.x + v[0], p.at.y})
	case 'V':
		p.lineTo(xy{p.at.x, base.y + v[0]})
	case 'C':
		p.cubic(abs(0), abs(2), abs(4))
	case 'S':
		p.cubic(reflected("CS"), abs(0), abs(2))
	case 'Q':
		p.quadratic(abs(0), abs(2))
	case 'T':
		p.quadratic(reflected("QT"), abs(0))
	case 'A':
		p.arc(v[0], v[1], v[2], v[3] == 1, v[4] == 1, abs(5))
	case 'Z':
		p.closed = true
	}
	p.last = command
}

func (p *pathPen) cubic(a, b, to xy) {
	from := p.at
	for i := 1; i <= curveSteps; i++ {
		t := float64(i) / curveSteps
		u := 1 - t
		k0, k1, k2, k3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		p.lineTo(xy{k0*from.x + k1*a.x + k2*b.x + k3*to.x, k0*from.y + k1*a.y + k2*b.y + k3*to.y})
	}
	p.at, p.control = to, b
}

func (p *pathPen) quadratic(a, to xy) {
	from := p.at
	for i := 1; i <= curveSteps; i++ {
		t := float64(i) / curveSteps
		u := 1 - t
		p.lineTo(xy{u*u*from.x + 2*u*t*a.x + t*t*to.x, u*u*from.y + 2*u*t*a.y + t*t*to.y})
	}
	p.at, p.control = to, a
}

// arc follows SVG 1.1 appendix F.6.5, from end points to centre, and F.6.6
// for radii that are zero or too small.
func (p *pathPen) arc(rx, ry, turn float64, large, sweep bool, to xy) {
	from := p.at
	rx, ry = math.Abs(rx), math.Abs(ry)
	if rx == 0 || ry == 0 || from == to {
		p.lineTo(to)
		return
	}
	sin, cos := math.Sincos(turn * math.Pi / 180)
	hx, hy := (from.x-to.x)/2, (from.y-to.y)/2
	x1, y1 := cos*hx+sin*hy, -sin*hx+cos*hy
	if short := x1*x1/(rx*rx) + y1*y1/(ry*ry); short > 1 {
		rx, ry = rx*math.Sqrt(short), ry*math.Sqrt(short)
	}
	below := rx*rx*y1*y1 + ry*ry*x1*x1
	k := math.Sqrt(math.Max(0, rx*rx*ry*ry-below) / below)
	if large == sweep {
		k = -k
	}
	cx1, cy1 := k*rx*y1/ry, -k*ry*x1/rx
	cx, cy := cos*cx1-sin*cy1+(from.x+to.x)/2, sin*cx1+cos*cy1+(from.y+to.y)/2
	start := math.Atan2((y1-cy1)/ry, (x1-cx1)/rx)
	swept := math.Atan2((-y1-cy1)/ry, (-x1-cx1)/rx) - start
	if sweep && swept < 0 {
		swept += 2 * math.Pi
	} else if !sweep && swept > 0 {
		swept -= 2 * math.Pi
	}
	for i := 1; i < curveSteps; i++ {
		s, c := math.Sincos(start + swept*float64(i)/curveSteps)
		p.lineTo(xy{cx + cos*rx*c - sin*ry*s, cy + sin*rx*c + cos*ry*s})
	}
	p.lineTo(to)
}

// area is the area inside a polygon in mm², by the shoelace formula.
func area(corners []xy) float64 {
	sum := 0.0
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		sum += a.x*b.y - b.x*a.y
	}
	return math.Abs(sum) / 2
}

// within tells whether a place is inside a polygon, by counting the sides that
// a ray to the right crosses.
func within(at xy, corners []xy) bool {
	in := false
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		if (a.y > at.y) != (b.y > at.y) && at.x < (b.x-a.x)*(at.y-a.y)/(b.y-a.y)+a.x {
			in = !in
		}
	}
	return in
}

// toEdge is the distance from a place to the nearest side of a polygon.
func toEdge(at xy, corners []xy) float64 {
	best := math.Inf(1)
	for i, a := range corners {
		best = math.Min(best, toSegment(at, a, corners[(i+1)%len(corners)]))
	}
	return best
}

func toSegment(at, a, b xy) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := 0.0
	if d := dx*dx + dy*dy; d > 0 {
		t = math.Min(1, math.Max(0, ((at.x-a.x)*dx+(at.y-a.y)*dy)/d))
	}
	return math.Hypot(at.x-a.x-t*dx, at.y-a.y-t*dy)
}

// selfCrossing finds two sides of a polygon that cross; side i runs from
// corner i to the next.
func selfCrossing(c []xy) (i, j int, found bool) {
	turn := func(a, b, p xy) float64 { return (b.x-a.x)*(p.y-a.y) - (b.y-a.y)*(p.x-a.x) }
	for i := range c {
		for j := i + 2; j < len(c); j++ {
			a, b, p, q := c[i], c[(i+1)%len(c)], c[j], c[(j+1)%len(c)]
			if a == q {
				continue // the last side meets the first
			}
			if turn(a, b, p)*turn(a, b, q) < 0 && turn(p, q, a)*turn(p, q, b) < 0 {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}
