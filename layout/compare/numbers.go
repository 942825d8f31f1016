package compare

import (
	"fmt"
	"math"
	"strconv"
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

// scanner reads the little languages inside attributes.
type scanner struct {
	text string
	at   int
}

func (s *scanner) blank() {
	for s.at < len(s.text) && strings.IndexByte(" \t\r\n\f", s.text[s.at]) >= 0 {
		s.at++
	}
}

// comma passes over blanks with at most one comma between.
func (s *scanner) comma() {
	s.blank()
	if s.at < len(s.text) && s.text[s.at] == ',' {
		s.at++
		s.blank()
	}
}

func (s *scanner) digits() bool {
	from := s.at
	for s.at < len(s.text) && s.text[s.at] >= '0' && s.text[s.at] <= '9' {
		s.at++
	}
	return s.at > from
}

// number reads the longest number that stands here; at stays if there is none
// or it is out of range.
func (s *scanner) number() (float64, bool) {
	s.blank()
	from := s.at
	if s.at < len(s.text) && (s.text[s.at] == '-' || s.text[s.at] == '+') {
		s.at++
	}
	whole := s.digits()
	fraction := false
	if s.at < len(s.text) && s.text[s.at] == '.' {
		s.at++
		fraction = s.digits()
		if !fraction && !whole {
			s.at = from
			return 0, false
		}
	}
	if !whole && !fraction {
		s.at = from
		return 0, false
	}
	if mark := s.at; s.at < len(s.text) && (s.text[s.at] == 'e' || s.text[s.at] == 'E') {
		s.at++
		if s.at < len(s.text) && (s.text[s.at] == '-' || s.text[s.at] == '+') {
			s.at++
		}
		if !s.digits() {
			s.at = mark // an unit such as em
		}
	}
	v, err := strconv.ParseFloat(s.text[from:s.at], 64)
	if err != nil || math.Abs(v) > 1e9 {
		s.at = from
		return 0, false
	}
	return v, true
}

// flag reads 0 or 1, which may stand without a space before the next number.
func (s *scanner) flag() (bool, bool) {
	s.blank()
	if s.at < len(s.text) && (s.text[s.at] == '0' || s.text[s.at] == '1') {
		s.at++
		return s.text[s.at-1] == '1', true
	}
	return false, false
}

// length reads a number with a unit; bad says what is wrong with it.
func length(text string) (v float64, unit, bad string) {
	s := scanner{text: text}
	v, ok := s.number()
	if !ok {
		return 0, "", "it is not a number, or out of range"
	}
	unit = strings.ToLower(strings.TrimSpace(text[s.at:]))
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
	s := scanner{text: text}
	m = identity
	for range 1000 {
		s.comma()
		if s.at >= len(text) {
			return m, s.at, ""
		}
		from := s.at
		for s.at < len(text) && (text[s.at] >= 'a' && text[s.at] <= 'z' || text[s.at] >= 'A' && text[s.at] <= 'Z') {
			s.at++
		}
		name := text[from:s.at]
		if s.blank(); s.at >= len(text) || text[s.at] != '(' {
			return m, from, "a name such as translate and an opening bracket belong here"
		}
		s.at++
		var v []float64
		for n, ok := s.number(); ok; n, ok = s.number() {
			v = append(v, n)
			s.comma()
		}
		if s.blank(); s.at >= len(text) || text[s.at] != ')' {
			return m, s.at, "a number or a closing bracket belongs here"
		}
		s.at++
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
