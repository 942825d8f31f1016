package words

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
		return Trim(mm/geom.MmPerInch, 3)
	}
	return Trim(mm, 2)
}

// Angle writes an angle with at most two decimals.
func Angle(deg float64) string { return Trim(deg, 2) + "°" }

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

// Upper writes a face's name in capitals.
func Upper(f parts.Face) string { return strings.ToUpper(string(f)) }

// Lettered is the span with the letter of a face before each number: "B1–B6".
func Lettered(f parts.Face, first, count int) string {
	letter := Upper(f)[:1]
	return letter + strings.ReplaceAll(Span(first, count), "–", "–"+letter)
}

// LengthWord names the unit of a table's lengths.
func LengthWord(units parts.Units) string {
	if units == parts.Inches {
		return "inches"
	}
	return "mm"
}
