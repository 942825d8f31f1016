package parts

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"centrepop/parts/geom"
)

// newtonPerTonne is a tonne-force: 1000 kg under standard gravity, 9.80665
// m/s² (3rd CGPM 1901).
const newtonPerTonne = 9806.65

// smallestMm is the smallest size in millimetres.
const smallestMm = 0.001

// lengthForms is what a length may look like, for messages.
const lengthForms = "12, 12.7 mm, 1/2 in, 1-3/8 in or 0.375 in"

// parseLength reads a length into millimetres; a bare number is in units. It
// returns what is wrong, or "".
func parseLength(text string, units Units) (mm float64, wrong string) {
	if strings.ContainsAny(text, "\t\n\r") {
		return 0, "it is not on one line"
	}
	if notFinite(text) {
		return 0, "it is not finite"
	}
	number, unit := splitUnit(text)
	factor := 1.0
	switch unit {
	case "":
		if units == Inches {
			factor = geom.MmPerInch
		}
	case "mm":
	case "in":
		factor = geom.MmPerInch
	case `"`, "''", "″", "inch", "inches":
		return 0, "write inches as `in`"
	default:
		return 0, fmt.Sprintf("the unit %s is not known; use mm or in", quote(unit))
	}
	value, wrong := parseNumber(number)
	if wrong != "" {
		return 0, wrong
	}
	mm = value * factor
	if math.Abs(mm) > geom.LargestMm {
		return 0, fmt.Sprintf("lengths go up to %g mm (10 m)", geom.LargestMm)
	}
	return mm, ""
}

// notFinite tells the words for values that are no number in YAML and Go.
func notFinite(text string) bool {
	word := strings.TrimLeft(strings.ToLower(strings.TrimSpace(text)), "+-.")
	return word == "inf" || word == "infinity" || word == "nan"
}

// splitUnit cuts the number off a quantity: "12.7mm" gives "12.7" and "mm".
func splitUnit(text string) (number, unit string) {
	text = strings.TrimSpace(text)
	end := strings.LastIndexAny(text, "0123456789./") + 1
	return text[:end], strings.TrimSpace(text[end:])
}

// parseNumber reads a decimal (-12.5), a fraction (3/8) or a whole number and
// a fraction (1-3/8, 1 3/8). It returns what is wrong, or "".
func parseNumber(text string) (value float64, wrong string) {
	const notNumber = "it is not a number"
	sign := 1.0
	rest := text
	if strings.HasPrefix(rest, "-") || strings.HasPrefix(rest, "+") {
		if rest[0] == '-' {
			sign = -1
		}
		rest = rest[1:]
	}
	if strings.Contains(rest, ",") {
		return 0, "write a decimal point, not a comma"
	}
	if numerator, denominator, ok := strings.Cut(rest, "/"); ok {
		whole := 0.0
		if cut := strings.IndexAny(numerator, "- "); cut >= 0 {
			if whole, ok = digits(numerator[:cut]); !ok {
				return 0, notNumber
			}
			numerator = strings.TrimLeft(numerator[cut+1:], " ")
		}
		n, okN := digits(numerator)
		d, okD := digits(denominator)
		switch {
		case !okN || !okD:
			return 0, notNumber
		case d == 0:
			return 0, "the fraction is divided by zero"
		case whole > 0 && n >= d:
			return 0, "the fraction beside a whole number must be less than 1"
		}
		return sign * (whole + n/d), ""
	}
	if rest == "" || strings.Trim(rest, "0123456789.") != "" || strings.Count(rest, ".") > 1 || rest == "." {
		return 0, notNumber
	}
	if len(rest) > 1 && rest[0] == '0' && rest[1] != '.' {
		return 0, "a number must not start with an extra 0"
	}
	if len(rest) > 20 {
		return 0, "the number has too many digits"
	}
	value, err := strconv.ParseFloat(rest, 64)
	if err != nil {
		return 0, notNumber
	}
	return sign * value, ""
}

// digits reads a whole number of at most six digits.
func digits(text string) (float64, bool) {
	if text == "" || len(text) > 6 || strings.Trim(text, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(text)
	return float64(n), err == nil
}

// parseAngle reads degrees: 30, 30 deg or 30°.
func parseAngle(text string) (deg float64, wrong string) {
	if notFinite(text) {
		return 0, "it is not finite"
	}
	number, unit := splitUnit(text)
	if unit != "" && unit != "deg" && unit != "°" {
		return 0, fmt.Sprintf("the unit %s is not known; use deg or °", quote(unit))
	}
	if strings.Contains(number, "/") {
		return 0, "write the angle as a decimal"
	}
	deg, wrong = parseNumber(number)
	if wrong == "" && math.Abs(deg) > 360 {
		return 0, "angles go from -360 to 360 degrees"
	}
	return deg, wrong
}

// parseForce reads a force into newton: 200 kN, 20 t (tonne-force), 20000 N.
func parseForce(text string) (newton float64, wrong string) {
	if notFinite(strings.TrimRight(text, "kNt ")) {
		return 0, "it is not finite"
	}
	number, unit := splitUnit(text)
	factor, ok := map[string]float64{"N": 1, "kN": 1000, "t": newtonPerTonne}[unit]
	if !ok {
		return 0, "say the unit: N, kN or t"
	}
	newton, wrong = parseNumber(number)
	if newton *= factor; wrong == "" && (newton < 1 || newton > 1e8) {
		return 0, "forces go from 1 N to 100 000 kN"
	}
	return newton, wrong
}

// span says which lengths a key takes.
type span int

const (
	positive span = iota // a size
	fromZero             // a distance or an allowance
	signed               // a coordinate or an offset
)

// length reads a length. An absent or faulty one is the zero Length.
func (r *reader) length(n *node, allowed span) Length {
	text, ok := r.scalar(n, "a length", lengthForms)
	if !ok {
		return Length{}
	}
	mm, wrong := parseLength(text, r.units)
	switch {
	case wrong != "":
		r.faultf(n.pos, "a length such as "+lengthForms, "%s is %s: %s", n.label, quote(text), wrong)
		return Length{}
	case allowed == positive && mm <= 0:
		r.faultf(n.pos, "a length above 0", "%s is %s; it must be more than 0", n.label, quote(text))
		return Length{}
	case allowed == positive && mm < smallestMm:
		r.faultf(n.pos, "0.001 mm or more", "%s is %s; that is less than 0.001 mm", n.label, quote(text))
		return Length{}
	case allowed == fromZero && mm < 0:
		r.faultf(n.pos, "0 or more", "%s is %s; it must not be negative", n.label, quote(text))
		return Length{}
	}
	return Length{Mm: mm, Text: strings.TrimSpace(text), Pos: n.pos}
}

// angle reads an angle within lo..hi degrees.
func (r *reader) angle(n *node, lo, hi float64) (Angle, bool) {
	text, ok := r.scalar(n, "an angle", "degrees such as 30, 30 deg or 30°")
	if !ok {
		return Angle{}, false
	}
	deg, wrong := parseAngle(text)
	if wrong != "" {
		r.faultf(n.pos, "degrees such as 30, 30 deg or 30°", "%s is %s: %s", n.label, quote(text), wrong)
		return Angle{}, false
	}
	if deg < lo || deg > hi {
		r.faultf(n.pos, fmt.Sprintf("%g to %g degrees", lo, hi), "%s is %s, outside its range", n.label, quote(text))
		return Angle{}, false
	}
	return Angle{Deg: deg, Pos: n.pos}, true
}

// count reads a whole number within lo..hi. An absent or faulty one is 0.
func (r *reader) count(n *node, lo, hi int) int {
	right := fmt.Sprintf("a whole number from %d to %d", lo, hi)
	text, ok := r.scalar(n, "a number", right)
	if !ok {
		return 0
	}
	v, isWhole := digits(text)
	switch {
	case !isWhole:
		r.faultf(n.pos, right, "%s is %s, which is no whole number in range", n.label, quote(text))
		return 0
	case int(v) < lo || int(v) > hi:
		r.faultf(n.pos, right, "%s is %s, out of range", n.label, quote(text))
		return 0
	}
	return int(v)
}

// number reads a plain decimal within lo..hi.
func (r *reader) number(n *node, lo, hi float64) Number {
	right := fmt.Sprintf("a number from %g to %g", lo, hi)
	text, ok := r.scalar(n, "a number", right)
	if !ok {
		return Number{}
	}
	v, wrong := parseNumber(text)
	if wrong != "" || v < lo || v > hi {
		r.faultf(n.pos, right, "%s is %s, out of range or no number", n.label, quote(text))
		return Number{}
	}
	return Number{Value: v, Pos: n.pos}
}

// point reads [x, y].
func (r *reader) point(n *node) (Point, bool) {
	items, ok := r.items(n, 2, 2, "a point [x, y]")
	if !ok {
		return Point{}, false
	}
	items[0].label, items[1].label = "x of "+n.label, "y of "+n.label
	p := Point{X: r.length(items[0], signed), Y: r.length(items[1], signed), Pos: n.pos}
	return p, p.X.Set() && p.Y.Set()
}
