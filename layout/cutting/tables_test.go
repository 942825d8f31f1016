package cutting

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "ISO 1641-1 end mills: diameter, flutes standard, long, mm", endMills[Metric])
	golden.Held(t, "ASME B94.19 end mills: diameter, flutes regular, long, mm", endMills[Inch])
	golden.Held(t, "ISO 235 drills: to, flutes, mm", flutes)
	golden.Held(t, "ISO 529 taps: to, length, mm", taps)
}
