package parts

import (
	"math"
	"testing"

	"centrepop/parts/geom"
)

// FuzzLength: a length is finite and within its limits, or a reason is given;
// the unit changes it by exactly the inch.
func FuzzLength(f *testing.F) {
	for _, seed := range []string{"12", "12 mm", "1/2 in", "1-3/8 in", "1 3/8 in", "0.375 in", "12.7mm", "-5", "+1", ".5", "5.", "", "/", "1/0", "1e3", "NaN", "∞", "12 \u00a0mm", "0.0000000000000000001", "-1-1/2 in", "- 1"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		mm, wrong := MmOf(text, Millimetres)
		if math.IsNaN(mm) || math.Abs(mm) > geom.LargestMm {
			t.Fatalf("parseLength(%q) = %g", text, mm)
		}
		if wrong != "" && mm != 0 {
			t.Fatalf("parseLength(%q) = %g and %q", text, mm, wrong)
		}
		inch, wrongInch := MmOf(text, Inches)
		switch _, unit := splitUnit(text); {
		case wrong != "" || wrongInch != "":
		case unit == "" && inch != mm*geom.MmPerInch:
			t.Fatalf("parseLength(%q) = %g in mm and %g in inches", text, mm, inch)
		case unit != "" && inch != mm:
			t.Fatalf("parseLength(%q) changes with the job's units: %g, %g", text, mm, inch)
		}
	})
}
