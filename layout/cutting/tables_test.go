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

// A size beyond the series has no nearest drill, whichever end it lies beyond.
func TestNoNearestBeyond(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		mm float64
		s  System
	}{{0.29, Metric}, {50.01, Metric}, {0.34, Inch}, {50.9, Inch}} {
		if d, err := StockDrill(c.mm, c.s, Nearest); err == nil {
			t.Errorf("%v: %+v", c.mm, d)
		}
	}
}
