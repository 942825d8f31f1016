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

// SmallestMm is the smallest size in millimetres.
const SmallestMm = 0.001

// LengthForms is what a length may look like, for messages.
const LengthForms = "12, 12.7 mm, 1/2 in, 1-3/8 in or 0.375 in"

// MmOf reads a length into millimetres; a bare number is in units. It
// returns what is wrong, or "".
func MmOf(text string, units Units) (mm float64, wrong string) {
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
		return 0, fmt.Sprintf("the unit %s is not known; use mm or in", Quote(unit))
	}
	value, wrong := NumberOf(number)
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

// NumberOf reads a decimal (-12.5), a fraction (3/8) or a whole number and
// a fraction (1-3/8, 1 3/8). It returns what is wrong, or "".
func NumberOf(text string) (value float64, wrong string) {
	sign := 1.0
	rest, minus := strings.CutPrefix(text, "-")
	if minus {
		sign = -1
	} else {
		rest = strings.TrimPrefix(rest, "+")
	}
	if strings.Contains(rest, ",") {
		return 0, "write a decimal point, not a comma"
	}
	if numerator, denominator, ok := strings.Cut(rest, "/"); ok {
		value, wrong = fractionOf(numerator, denominator)
	} else {
		value, wrong = decimalOf(rest)
	}
	return sign * value, wrong
}

const notNumber = "it is not a number"

// fractionOf reads what stands before and behind a stroke: 3 and 8, or 1-3 and 8.
func fractionOf(numerator, denominator string) (value float64, wrong string) {
	whole, ok := 0.0, true
	if cut := strings.IndexAny(numerator, "- "); cut >= 0 {
		if whole, ok = WholeOf(numerator[:cut]); !ok {
			return 0, notNumber
		}
		numerator = strings.TrimLeft(numerator[cut+1:], " ")
	}
	n, okN := WholeOf(numerator)
	d, okD := WholeOf(denominator)
	switch {
	case !okN || !okD:
		return 0, notNumber
	case d == 0:
		return 0, "the fraction is divided by zero"
	case whole > 0 && n >= d:
		return 0, "the fraction beside a whole number must be less than 1"
	}
	return whole + n/d, ""
}

// decimalOf reads digits with at most one point.
func decimalOf(text string) (value float64, wrong string) {
	switch {
	case text == "" || strings.Trim(text, "0123456789.") != "":
		return 0, notNumber
	case len(text) > 1 && text[0] == '0' && text[1] != '.':
		return 0, "a number must not start with an extra 0"
	case len(text) > 20:
		return 0, "the number has too many digits"
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil { // a second point, or no digit
		return 0, notNumber
	}
	return value, ""
}

// WholeOf reads a whole number of at most six digits.
func WholeOf(text string) (float64, bool) {
	if text == "" || len(text) > 6 || strings.Trim(text, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(text)
	return float64(n), err == nil
}

// DegOf reads degrees: 30, 30 deg or 30°.
func DegOf(text string) (deg float64, wrong string) {
	if notFinite(text) {
		return 0, "it is not finite"
	}
	number, unit := splitUnit(text)
	if unit != "" && unit != "deg" && unit != "°" {
		return 0, fmt.Sprintf("the unit %s is not known; use deg or °", Quote(unit))
	}
	if strings.Contains(number, "/") {
		return 0, "write the angle as a decimal"
	}
	deg, wrong = NumberOf(number)
	if wrong == "" && math.Abs(deg) > 360 {
		return 0, "angles go from -360 to 360 degrees"
	}
	return deg, wrong
}

// NewtonOf reads a force into newton: 200 kN, 20 t (tonne-force), 20000 N.
func NewtonOf(text string) (newton float64, wrong string) {
	if notFinite(strings.TrimRight(text, "kNt ")) {
		return 0, "it is not finite"
	}
	number, unit := splitUnit(text)
	factor, ok := map[string]float64{"N": 1, "kN": 1000, "t": newtonPerTonne}[unit]
	if !ok {
		return 0, "say the unit: N, kN or t"
	}
	newton, wrong = NumberOf(number)
	if newton *= factor; wrong == "" && (newton < 1 || newton > 1e8) {
		return 0, "forces go from 1 N to 100 000 kN"
	}
	return newton, wrong
}
