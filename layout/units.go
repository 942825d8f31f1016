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

// Read writes a length as callipers read it: to 0.01 mm or 0.001 in.
func (w Writer) Read(mm float64) string {
	if w.Units == parts.Inches {
		return trim(mm/MmPerInch, 3) + " in"
	}
	return trim(mm, 2)
}

// Near writes a length of advice, with one figure: "0.3 mm", "0.01 in". It is
// for what nobody measures; a limit is written by Limits.
func (w Writer) Near(mm float64) string {
	v, unit := mm, " mm"
	if w.Units == parts.Inches {
		v, unit = mm/MmPerInch, " in"
	}
	if v <= 0 {
		return "0" + unit
	}
	return trim(v, max(0, -int(math.Floor(math.Log10(v))))) + unit
}

// Dia writes a diameter.
func (w Writer) Dia(mm float64) string { return "Ø" + w.Size(mm) }

// Drill writes a drill diameter: in an inch job with the millimetres beside
// it where it is a metric drill, which such a shop has to look for.
func (w Writer) Drill(mm float64) string {
	if w.Units == parts.Inches && math.Abs(mm*20-math.Round(mm*20)) > 1e-6 {
		return w.Dia(mm)
	}
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

// Setting writes a setting in thousandths of a millimetre, or ten-thousandths of
// an inch: "0.02 mm", "-0.0012 in".
func (w Writer) Setting(mm float64) string {
	if w.Units == parts.Inches {
		return trim(mm/MmPerInch, 4) + " in"
	}
	return trim(mm, 3) + " mm"
}

// Exact writes a measured size with all the digits a micrometer gives.
func (w Writer) Exact(mm float64) string {
	if w.Units == parts.Inches {
		return fmt.Sprintf("%.4f", round(mm/MmPerInch, 4))
	}
	return fmt.Sprintf("%.2f", round(mm, 2))
}
