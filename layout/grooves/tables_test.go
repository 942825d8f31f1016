package grooves

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "ISO 6411: pilot, cone, mouth of B, depth, mm", centres)
	golden.Held(t, "centre hole by diameter: to, pilot, mm", pilotFor)
	golden.Held(t, "DIN 3760 lead-in: shaft to, smaller by, mm", leadInBy)
	golden.Held(t, "RMA OS-4 bores for seals: to, under, over, in", inchBores)
	golden.Held(t, "O-ring lead-ins: section to, length, mm", leadIns)
	golden.Held(t, "ISO 3601-1 sections: to, plus minus, mm", sectionTolerances)
}
