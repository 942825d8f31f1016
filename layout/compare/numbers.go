package compare

import (
	"fmt"
	"math"
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
		return 0, "", "it is not a number, or out of range"
	}
	unit = strings.ToLower(strings.TrimSpace(text[s.At:]))
	switch unit {
	case "em", "ex", "rem", "ch", "%":
		return v, unit, ""
	}
	if _, ok := mmPer[unit]; !ok {
		return 0, "", "the unit is not known"
	}
	return v, unit, ""
}

// coordinate reads an attribute in user units; of is what 100 % stands for.
func (f *file) coordinate(e *element, name string, of, otherwise float64) (float64, error) {
	text, ok := e.attr(name)
	if !ok || strings.TrimSpace(text) == "auto" {
		return otherwise, nil
	}
	v, unit, bad := length(text)
	if bad != "" {
		return 0, f.faultIn(e, name, 0, "%s is %q: %s", name, short(text), bad)
	}
	switch unit {
	case "":
		return v, nil
	case "%":
		return v / 100 * of, nil
	}
	per, ok := mmPer[unit]
	if !ok {
		return 0, f.faultIn(e, name, 0, "%s is %q: the unit %s depends on a font", name, short(text), unit)
	}
	return v * per / mmPerPx, nil
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
		n, ok := one(name, v)
		if !ok {
			return m, from, fmt.Sprintf("%s with %d numbers is not known", short(name), len(v))
		}
		m = m.times(n)
	}
	return m, 0, "more than 1000 steps"
}

// one is a single step of a transform.
func one(name string, v []float64) (matrix, bool) {
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	switch {
	case name == "matrix" && len(v) == 6:
		return matrix{v[0], v[1], v[2], v[3], v[4], v[5]}, true
	case name == "translate" && len(v) == 1:
		return matrix{1, 0, 0, 1, v[0], 0}, true
	case name == "translate" && len(v) == 2:
		return matrix{1, 0, 0, 1, v[0], v[1]}, true
	case name == "scale" && len(v) == 1:
		return matrix{v[0], 0, 0, v[0], 0, 0}, true
	case name == "scale" && len(v) == 2:
		return matrix{v[0], 0, 0, v[1], 0, 0}, true
	case name == "rotate" && (len(v) == 1 || len(v) == 3):
		sin, cos := math.Sincos(v[0] * math.Pi / 180)
		m := matrix{cos, sin, -sin, cos, 0, 0}
		if len(v) == 3 {
			m = matrix{1, 0, 0, 1, v[1], v[2]}.times(m).times(matrix{1, 0, 0, 1, -v[1], -v[2]})
		}
		return m, true
	case name == "skewX" && len(v) == 1:
		return matrix{1, 0, tan(v[0]), 1, 0, 0}, true
	case name == "skewY" && len(v) == 1:
		return matrix{1, tan(v[0]), 0, 1, 0, 0}, true
	}
	return identity, false
}
