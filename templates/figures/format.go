// Package figures writes numbers for the sheets, in the job's units.
package figures

import (
	"math"
	"strconv"
	"strings"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// Fixed writes a length in the job's units with the digits of a table: two
// decimals in millimetres, three in inches.
func Fixed(mm float64, units parts.Units) string {
	if units == parts.Inches {
		return plainMinus(strconv.FormatFloat(mm/geom.MmPerInch, 'f', 3, 64))
	}
	return plainMinus(strconv.FormatFloat(mm, 'f', 2, 64))
}

// Short writes a length in the job's units without closing zeros.
func Short(mm float64, units parts.Units) string {
	if units == parts.Inches {
		return Trimmed(mm/geom.MmPerInch, 3)
	}
	return Trimmed(mm, 2)
}

// Degrees writes an angle with at most two decimals.
func Degrees(deg float64) string { return Trimmed(deg, 2) + "°" }

// Trimmed writes a number with at most the given decimals and no closing
// zeros.
func Trimmed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return plainMinus(s)
}

// plainMinus writes no minus before zero.
func plainMinus(s string) string {
	if strings.HasPrefix(s, "-") && strings.Trim(s, "-0.") == "" {
		return s[1:]
	}
	return s
}

// Mass writes kilograms with three figures.
func Mass(kg float64) string {
	switch a := math.Abs(kg); {
	case a >= 99.95:
		return strconv.FormatFloat(kg, 'f', 0, 64) + " kg"
	case a >= 9.995:
		return strconv.FormatFloat(kg, 'f', 1, 64) + " kg"
	case a >= 0.9995:
		return strconv.FormatFloat(kg, 'f', 2, 64) + " kg"
	}
	return strconv.FormatFloat(kg, 'f', 3, 64) + " kg"
}

// Span writes a run of numbers: "7" or "1–6".
func Span(first, count int) string {
	if count <= 1 {
		return strconv.Itoa(first)
	}
	return strconv.Itoa(first) + "–" + strconv.Itoa(first+count-1)
}

// Joined puts the non-empty texts together with a separator.
func Joined(sep string, texts ...string) string {
	var kept []string
	for _, t := range texts {
		if t != "" {
			kept = append(kept, t)
		}
	}
	return strings.Join(kept, sep)
}
