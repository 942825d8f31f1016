package part

import (
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "DIN 885-1 side and face cutters, mm", [][]float64{cutterWidths(parts.Millimetres)})
	golden.Held(t, "steps of roughness: µin, µm", raSteps)
}
