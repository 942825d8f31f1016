package joint

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "ISO 492 cone bores: to, mm, lower, µm", coneBores)
	golden.Held(t, "ISO 492 cup outsides: to, mm, lower, µm", cupSizes)
	golden.Held(t, "ISO 492 ball bearing bores: to, mm, lower, µm", ballBores)
	golden.Held(t, "ISO 492 ball bearing outsides: to, mm, lower, µm", ballSizes)
	golden.Held(t, "DIN 5418: chamfer, shoulder of light series, of others, mm", shoulderHigh)
}
