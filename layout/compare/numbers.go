package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"centrepop/parts/geom"
)

// The units of SVG in millimetres (CSS Values 3, absolute lengths: an inch is
// 96 px, 72 pt and 6 pc).
const (
	mmPerInch = geom.MmPerInch
	mmPerPx   = mmPerInch / 96
)

var mmPer = map[string]float64{"": mmPerPx, "px": mmPerPx, "mm": 1, "cm": 10, "in": mmPerInch, "pt": mmPerInch / 72, "pc": mmPerInch / 6, "q": 0.25}

// length reads a number with a unit; bad says what is wrong with it.
func length(text string) (v float64, unit, bad string) {
	s := geom.Scanner{Text: text}
	v, ok := s.Number()
	if !ok {
		return v, unit, "it is not a number, or out of range"
	}
	unit = strings.ToLower(strings.TrimSpace(text[s.At:]))
	switch unit {
	case "em", "ex", "rem", "ch", "%":
		return v, unit, ""
	}
	if _, ok := mmPer[unit]; !ok {
		return v, unit, "the unit is not known"
	}
	return v, unit, ""
}

// coordinate reads an attribute in user units; of is what 100 % stands for.
func (f *file) coordinate(e *element, name string, of, otherwise float64) (float64, error) {
	if text, ok := e.attr(name); !ok || strings.TrimSpace(text) == "auto" {
		return otherwise, nil
	}
	v, unit, err := f.inUnit(e, name)
	switch unit {
	case "":
		return v, err
	case "%":
		return v / 100 * of, err
	}
	return v * mmPer[unit] / mmPerPx, err
}

// inUnit reads a length with its unit, which is one that is known, or a share in percent.
func (f *file) inUnit(e *element, name string) (v float64, unit string, err error) {
	text, _ := e.attr(name)
	v, unit, bad := length(text)
	if _, known := mmPer[unit]; bad == "" && !known && unit != "%" {
		bad = "the unit " + unit + " depends on a font"
	}
	if bad != "" {
		return v, unit, f.faultIn(e, name, 0, "%s is %q: %s", name, short(text), bad)
	}
	return v, unit, nil
}

// short cuts a piece of input for a message.
func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// matrix maps x, y to a·x + c·y + e, b·x + d·y + f, as in SVG.
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{1, 0, 0, 1, 0, 0}

func (m matrix) apply(x, y float64) point {
	return xy(float64(m.a*x)+float64(m.c*y)+m.e, float64(m.b*x)+float64(m.d*y)+m.f)
}

// times is m after n: what n gives, m takes further.
func (m matrix) times(n matrix) matrix {
	return matrix{
		float64(m.a*n.a) + float64(m.c*n.b), float64(m.b*n.a) + float64(m.d*n.b),
		float64(m.a*n.c) + float64(m.c*n.d), float64(m.b*n.c) + float64(m.d*n.d),
		float64(m.a*n.e) + float64(m.c*n.f) + m.e, float64(m.b*n.e) + float64(m.d*n.f) + m.f,
	}
}

// stretch is how much the matrix lengthens at most.
func (m matrix) stretch() float64 {
	return math.Max(math.Hypot(m.a, m.b), math.Hypot(m.c, m.d)) * math.Sqrt2
}

// transform reads a transform attribute; bad says what is wrong, at where.
func transform(text string) (m matrix, at int, bad string) {
	s := geom.Scanner{Text: text}
	m = identity
	for range 1000 {
		s.Comma()
		if s.At >= len(text) {
			return m, s.At, ""
		}
		from := s.At
		for s.At < len(text) && (text[s.At] >= 'a' && text[s.At] <= 'z' || text[s.At] >= 'A' && text[s.At] <= 'Z') {
			s.At++
		}
		name := text[from:s.At]
		if s.Blank(); s.At >= len(text) || text[s.At] != '(' {
			return m, from, "a name such as translate and an opening bracket belong here"
		}
		s.At++
		var v []float64
		for n, ok := s.Number(); ok; n, ok = s.Number() {
			v = append(v, n)
			s.Comma()
		}
		if s.Blank(); s.At >= len(text) || text[s.At] != ')' {
			return m, s.At, "a number or a closing bracket belongs here"
		}
		s.At++
		i := slices.IndexFunc(moves, func(k move) bool { return k.name == name && k.numbers == len(v) })
		if i < 0 {
			return m, from, fmt.Sprintf("%s with %d numbers is not known", short(name), len(v))
		}
		m = m.times(moves[i].matrix(v))
	}
	return m, 0, "more than 1000 steps"
}

// move is a step of a transform, by its name and how many numbers it has.
type move struct {
	name    string
	numbers int
	matrix  func(v []float64) matrix
}

var moves = []move{
	{"matrix", 6, func(v []float64) matrix { return matrix{v[0], v[1], v[2], v[3], v[4], v[5]} }},
	{"translate", 1, func(v []float64) matrix { return moved(v[0], 0) }},
	{"translate", 2, func(v []float64) matrix { return moved(v[0], v[1]) }},
	{"scale", 1, func(v []float64) matrix { return matrix{v[0], 0, 0, v[0], 0, 0} }},
	{"scale", 2, func(v []float64) matrix { return matrix{v[0], 0, 0, v[1], 0, 0} }},
	{"rotate", 1, func(v []float64) matrix { return turned(v[0]) }},
	{"rotate", 3, func(v []float64) matrix { return moved(v[1], v[2]).times(turned(v[0])).times(moved(-v[1], -v[2])) }},
	{"skewX", 1, func(v []float64) matrix { return matrix{1, 0, math.Tan(v[0] * radPerDeg), 1, 0, 0} }},
	{"skewY", 1, func(v []float64) matrix { return matrix{1, math.Tan(v[0] * radPerDeg), 0, 1, 0, 0} }},
}

const radPerDeg = math.Pi / 180

func moved(x, y float64) matrix { return matrix{1, 0, 0, 1, x, y} }

func turned(deg float64) matrix {
	sin, cos := math.Sincos(deg * radPerDeg)
	return matrix{cos, sin, -sin, cos, 0, 0}
}
