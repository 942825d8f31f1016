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
}
