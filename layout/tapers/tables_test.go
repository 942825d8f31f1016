package tapers

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "DIN 82: type, smaller by pitches", knurls)
	golden.Held(t, "DIN 82 pitches, mm", [][]float64{knurlPitches})
}
