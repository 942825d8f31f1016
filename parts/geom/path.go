package geom

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"
)

// maxPathSegments is the most commands in one outline path.
const maxPathSegments = 2000

// pathArguments gives the number of numbers after each path command (SVG 1.1
// section 8.3, path data).
var pathArguments = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// CheckContour says what keeps a closed path from being the outline of a part,
// or "": a place over 10 m from the origin, an area under 1 mm², sides that
// cross.
func CheckContour(p *canvas.Path) (wrong string) {
	b := p.Bounds()
	for _, v := range []float64{b.X0, b.Y0, b.X1, b.Y1} {
		if !(math.Abs(v) <= LargestMm) {
			return fmt.Sprintf("it runs more than %g mm from the origin", LargestMm)
		}
	}
	switch _, _, at, crosses, ok := Crossing(corners(p)); {
	case !ok:
		return "it is too intricate to check for crossings"
	case crosses:
		return fmt.Sprintf("it crosses itself near x %s, y %s mm", shortMm(at.XMm), shortMm(at.YMm))
	case math.Abs(NewContour(p).AreaMm2()) < 1:
		return "the contour has no area"
	}
	return ""
}

// shortMm writes millimetres to a thousandth, without trailing zeros.
func shortMm(mm float64) string {
	return strconv.FormatFloat(math.Round(mm*1000)/1000+0, 'f', -1, 64)
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
	return v, err == nil && math.Abs(v) <= LargestMm
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

// command reads the letter at the head of the data, if there is one, and says
// what is wrong with it.
func (s *pathScanner) command(first bool, last byte) (command byte, wrong string) {
	letter := s.rest[0] &^ 0x20
	if _, ok := pathArguments[letter]; !ok || letter < 'A' {
		if last == 0 || last&^0x20 == 'Z' {
			return 0, fmt.Sprintf("%q is not expected there", short(s.rest))
		}
		return last, ""
	}
	command = s.rest[0]
	s.rest = s.rest[1:]
	switch {
	case last&^0x20 == 'Z':
		return 0, "it goes on after Z; only one contour can be the outline"
	case first && letter != 'M':
		return 0, "it does not start with M"
	case !first && letter == 'M':
		return 0, "it has a second M; only one contour can be the outline"
	}
	return command, ""
}

// ParsePath reads SVG path data of one closed contour in millimetres, y up. It
// returns what is wrong, or "": data that do not start with M or end with Z, a
// second contour, more than 2000 commands, a number over 10 000.
func ParsePath(text string) (path *canvas.Path, wrong string) {
	s := &pathScanner{rest: text}
	pen := &pathPen{path: &canvas.Path{}}
	command := byte(0)
	for count := 0; ; count++ {
		s.space()
		if s.rest == "" {
			break
		}
		if count > maxPathSegments {
			return nil, fmt.Sprintf("it has more than %d segments", maxPathSegments)
		}
		if command, wrong = s.command(count == 0, command); wrong != "" {
			return nil, wrong
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
				return nil, fmt.Sprintf("after %c a number within ±%g is needed at %q", command, LargestMm, short(s.rest))
			}
		}
		pen.draw(upper, command >= 'a', v)
		if upper == 'M' {
			command-- // M to L, m to l: further pairs are lines
		}
		if math.Abs(pen.at.XMm) > LargestMm || math.Abs(pen.at.YMm) > LargestMm {
			return nil, fmt.Sprintf("it runs more than %g mm from the origin", LargestMm)
		}
	}
	if command&^0x20 != 'Z' {
		return nil, "it is not closed with Z"
	}
	return pen.path, ""
}

// short is a piece of path data for a message.
func short(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}

// pathPen follows path commands.
type pathPen struct {
	path    *canvas.Path
	at      Point
	control Point // last control point, for S and T
	last    byte  // last command, upper case
}

func (p *pathPen) draw(command byte, relative bool, v [7]float64) {
	base := Point{}
	if relative {
		base = p.at
	}
	abs := func(i int) Point { return Point{base.XMm + v[i], base.YMm + v[i+1]} }
	reflected := func(after string) Point {
		if p.last == 0 || strings.IndexByte(after, p.last) < 0 {
			return p.at
		}
		return Point{2*p.at.XMm - p.control.XMm, 2*p.at.YMm - p.control.YMm}
	}
	switch command {
	case 'M':
		p.at = abs(0)
		p.path.MoveTo(p.at.XMm, p.at.YMm)
	case 'L':
		p.lineTo(abs(0))
	case 'H':
		p.lineTo(Point{base.XMm + v[0], p.at.YMm})
	case 'V':
		p.lineTo(Point{p.at.XMm, base.YMm + v[0]})
	case 'C':
		p.cubicTo(abs(0), abs(2), abs(4))
	case 'S':
		p.cubicTo(reflected("CS"), abs(0), abs(2))
	case 'Q':
		p.quadTo(abs(0), abs(2))
	case 'T':
		p.quadTo(reflected("QT"), abs(0))
	case 'A':
		p.at = abs(5)
		p.path.ArcTo(v[0], v[1], v[2], v[3] == 1, v[4] == 1, p.at.XMm, p.at.YMm)
	case 'Z':
		p.path.Close()
	}
	p.last = command
}

func (p *pathPen) lineTo(to Point) {
	p.at = to
	p.path.LineTo(to.XMm, to.YMm)
}

func (p *pathPen) cubicTo(a, b, to Point) {
	p.at, p.control = to, b
	p.path.CubeTo(a.XMm, a.YMm, b.XMm, b.YMm, to.XMm, to.YMm)
}

func (p *pathPen) quadTo(a, to Point) {
	p.at, p.control = to, a
	p.path.QuadTo(a.XMm, a.YMm, to.XMm, to.YMm)
}
