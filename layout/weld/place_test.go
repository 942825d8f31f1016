package weld

import (
	"testing"

	"centrepop/parts/golden"
)

// TestGeneralTolerances: every row of the file, at both sides of each bound.
func TestGeneralTolerances(t *testing.T) {
	t.Parallel()
	from, was := 0.0, ""
	for _, row := range golden.Table(t, "../../testdata/reference/welded_general.csv", len(placeSteps)+len(alikeSteps)+len(leanSteps)) {
		if row["kind"] != was {
			from, was = 0, row["kind"]
		}
		to := row.Number(t, "up_to_mm")
		if row["up_to_mm"] == "" {
			to = 99e3
		}
		for _, mm := range []float64{from + 0.01, to} {
			got := map[string]float64{"length A": PlaceOff(mm), "parallel E": AlikeOff(mm), "angle A": LeanOff(mm) * 1000 / mm}
			near(t, row["kind"], got[row["kind"]], row.Number(t, "off"), 1e-9)
		}
		from = to
	}
}
