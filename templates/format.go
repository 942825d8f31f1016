package templates

import (
	"math"
	"strconv"
	"strings"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// mmPerInch is exact by definition (1959 international yard).
const mmPerInch = geom.MmPerInch

// fixed writes a length in the job's units with the digits of a table: two
// decimals in millimetres, three in inches.
func fixed(mm float64, units parts.Units) string {
	if units == parts.Inches {
		return plainMinus(strconv.FormatFloat(mm/mmPerInch, 'f', 3, 64))
	}
	return plainMinus(strconv.FormatFloat(mm, 'f', 2, 64))
}

// short writes a length in the job's units without closing zeros.
func short(mm float64, units parts.Units) string {
	if units == parts.Inches {
		return trimmed(mm/mmPerInch, 3)
	}
	return trimmed(mm, 2)
}

// degrees writes an angle with at most two decimals.
func degrees(deg float64) string { return trimmed(deg, 2) + "°" }

// trimmed writes a number with at most the given decimals and no closing
// zeros.
func trimmed(v float64, decimals int) string {
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

// mass writes kilograms with three figures.
func mass(kg float64) string {
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

// span writes a run of numbers: "7" or "1–6".
func span(first, count int) string {
	if count <= 1 {
		return strconv.Itoa(first)
	}
	return strconv.Itoa(first) + "–" + strconv.Itoa(first+count-1)
}

// joined puts the non-empty texts together with a separator.
func joined(sep string, texts ...string) string {
	var kept []string
	for _, t := range texts {
		if t != "" {
			kept = append(kept, t)
		}
	}
	return strings.Join(kept, sep)
}
