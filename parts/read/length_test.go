package read

import (
	"math"
	"testing"
)

func TestThreadMm(t *testing.T) {
	// Basic major diameters: ISO 261:1998 table 2 and ASME B1.1 table 1 say
	// them by the designation itself; pipe threads (ISO 228-1) do not.
	for designation, mm := range map[string]float64{
		"M10": 10, "M40x1.5": 40, "M40×1.5": 40, "Tr20x4": 20, "1/2-13 UNC": 12.7, "1-1/4-12 UNF": 31.75,
		"G1": 0, "R1/2": 0, "#10-24 UNC": 0, "": 0, "M": 0,
	} {
		if got := threadMm(designation); math.Abs(got-mm) > 1e-12 {
			t.Errorf("threadMm(%q) = %g, want %g", designation, got, mm)
		}
	}
}
