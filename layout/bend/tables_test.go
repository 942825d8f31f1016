package bend

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "V dies, mm", [][]float64{openings})
	golden.Held(t, "V dies, in", [][]float64{inchOpenings})
}
