package keys

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "DIN 6888: shaft over, to, width, height, disc, shaft depth, hub depth, mm", din6888)
	golden.Held(t, "ASME B17.2: shaft over, to, width, height, disc, shaft depth, hub depth, in", asmeB172)
	golden.Held(t, "ASME B17.2 seats: key, shaft least, most, hub least, in", inchSeats)
	golden.Held(t, "ASME B17.1 class 1 keyways: key to, wider by, in", inchWider)
	golden.Held(t, "ASME B17.1: shaft to, width, square height, flat height, in", asmeB171)
	golden.Held(t, "DIN 6885-1: shaft to, width, height, shaft depth, hub depth, least and most length, mm", din6885)
	golden.Held(t, "DIN 6885-1 lengths, mm", [][]float64{lengthsMm})
}
