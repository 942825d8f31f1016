package joint

import (
	"testing"

	"centrepop/layout/press"
	"centrepop/parts"
)

// Yield goes by the stock as bought: a hub turned from a bar of 120 has the 195
// MPa of EN 10025-2 over 100 to 150, whatever its wall; a plate its own thickness.
func TestStrengthByStock(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		stock parts.Stock
		want  float64
	}{
		{parts.Stock{Form: "round", Size: parts.Length{Mm: 120}}, 120}, {parts.Stock{Form: "plate", Size: parts.Length{Mm: 12}}, 12},
		{parts.Stock{Form: "tube", Size: parts.Length{Mm: 100}, Second: parts.Length{Mm: 8}}, 8}, {parts.Stock{Form: "flat", Size: parts.Length{Mm: 60}, Second: parts.Length{Mm: 10}}, 10},
		{parts.Stock{Form: "casting"}, 20}, {parts.Stock{}, 20},
	} {
		if got := strengthSectionMm(&parts.Part{Stock: c.stock}, press.Member{OutsideMm: 100, InsideMm: 60}); got != c.want {
			t.Errorf("%+v: %v, want %v", c.stock, got, c.want)
		}
	}
	if got := strengthSectionMm(&parts.Part{}, press.Member{OutsideMm: 100}); got != 100 {
		t.Errorf("solid: %v", got)
	}
}
