package bolts

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "nut factors K", nutFactors)
	golden.Held(t, "nut and washer by class of bolt, hardened", golden.Pairs(companionRows))
	golden.Held(t, "lengths of bolts, mm", [][]float64{metricLengths})
	golden.Held(t, "wide washers: size, bore, outside, thick, mm", wideWashers)
	golden.Held(t, "countersunk heads: size, head, height, key, mm, angle, shortest", sunkHeads)
}
