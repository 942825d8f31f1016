package layout

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"centrepop/parts"
)

// Writer writes sizes in a job's units.
type Writer struct{ Units parts.Units }

// MmPerInch is exact by definition (international yard and pound agreement, 1959).
const MmPerInch = 25.4

// trim writes a value with at most n decimals and no trailing zeros.
func trim(v float64, n int) string {
	s := strconv.FormatFloat(round(v, n), 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

func round(v float64, n int) float64 {
	p := math.Pow10(n)
	return math.Round(float64(v*p)+math.Copysign(1e-7, v)) / p
}

// Size writes a nominal length: "114.3", or "1.375 in".
func (w Writer) Size(mm float64) string {
	if w.Units == parts.Inches {
		return trim(mm/MmPerInch, 4) + " in"
	}
	return trim(mm, 3)
}

// Said writes a length with its unit, for sentences: "0.5 mm", "0.0197 in".
func (w Writer) Said(mm float64) string {
	if w.Units == parts.Inches {
		return w.Size(mm)
	}
	return w.Size(mm) + " mm"
}

// Dia writes a diameter.
func (w Writer) Dia(mm float64) string { return "Ø" + w.Size(mm) }

// Drill writes a drill diameter: in an inch job with the millimetres beside
// it, since metric and fractional drills are sold in the same shop.
func (w Writer) Drill(mm float64) string {
	if w.Units == parts.Inches {
		return "Ø" + trim(mm/MmPerInch, 4) + " in (" + trim(mm, 2) + " mm)"
	}
	return "Ø" + trim(mm, 3)
}

// Limits writes two sizes to machine to: "90.000 – 90.035". They are rounded
// inward, so that a part within the printed limits is within the true ones.
func (w Writer) Limits(minMm, maxMm float64) string {
	if w.Units == parts.Inches {
		return fmt.Sprintf("%.4f – %.4f in", up(minMm/MmPerInch, 4), -up(-maxMm/MmPerInch, 4))
	}
	return fmt.Sprintf("%.3f – %.3f", up(minMm, 3), -up(-maxMm, 3))
}

// up rounds up to n decimals, forgiving what binary fractions add.
func up(v float64, n int) float64 {
	p := math.Pow10(n)
	return math.Ceil(float64(v*p)-1e-6) / p
}

// Exact writes a measured size with all the digits a micrometer gives.
func (w Writer) Exact(mm float64) string {
	if w.Units == parts.Inches {
		return fmt.Sprintf("%.4f", round(mm/MmPerInch, 4))
	}
	return fmt.Sprintf("%.2f", round(mm, 2))
}
