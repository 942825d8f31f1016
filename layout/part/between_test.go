package part

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/layout/plan"
)

// TestBetween: how far two places lie apart at the limits, by hand from ISO 2768-1 m: 6 to 30 ± 0.2,
// 30 to 120 ± 0.3 mm. Of 20 + (100) + 30, 150 over all ± 0.5, the 100 follows from the others: 98.95 to
// 101.05 by 149.5 − 20.2 − 30.3 and 150.5 − 19.8 − 29.7; as a whole 150 it is as drawn.
func TestBetween(t *testing.T) {
	t.Parallel()
	const pin = `part: pin
kind: shaft
material: C45
stock: {round: 50 mm, length: 160 mm}
profile:
  outside:
    - {name: head, diameter: 30, length: 20}
    - {name: body, diameter: 40, length: 100}
    - {name: tail, diameter: 30, length: 30}
`
	limited := strings.Replace(pin, "length: 100", "length: 100, length-limits: [99.9, 100]", 1)
	for _, c := range []struct {
		file     string
		from, to float64
		want     plan.Range
	}{
		{pin, 0, 20, plan.Range{Min: 19.8, Max: 20.2}},
		{pin, 20, 120, plan.Range{Min: 149.5 - 20.2 - 30.2, Max: 150.5 - 19.8 - 29.8}},
		{pin, 20, 150, plan.Range{Min: 149.5 - 20.2, Max: 150.5 - 19.8}},
		{limited, 20, 120, plan.Range{Min: 99.9, Max: 100}},
		{limited, 0, 120, plan.Range{Min: 119.7, Max: 120.2}},
		{limited, 120, 150, plan.Range{Min: 149.5 - 20.2 - 100, Max: 150.5 - 19.8 - 99.9}}, // now the tail follows
	} {
		m := work(t, "mm", c.file)
		got := m.BetweenMm(false, c.from, c.to)
		if math.Abs(got.Min-c.want.Min) > 1e-9 || math.Abs(got.Max-c.want.Max) > 1e-9 {
			t.Errorf("%g to %g: %+v, want %+v", c.from, c.to, got, c.want)
		}
	}
	// A step from end to end, outside or as bore, gives its limits to the part: record, operation and chain.
	for _, c := range []string{"outside: [{name: o, diameter: 25, LENGTH}]", "outside: [{name: o, diameter: 25, length: 6.5}, {name: p, diameter: 20, length: 100}], inside: [{name: i, diameter: 10, LENGTH}]"} {
		m := work(t, "mm", "part: tie\nkind: turned\nmaterial: C45\nstock: {round: 28, length: 110}\nprofile: {"+strings.Replace(c, "LENGTH", "length: 106.5, length-limits: [106.48, 106.52]", 1)+"}\n")
		if got := m.BetweenMm(false, 0, 106.5); math.Abs(got.Min-106.48) > 1e-9 || math.Abs(got.Max-106.52) > 1e-9 {
			t.Errorf("%s: %+v", c, got)
		}
		if row := check(m, "length"); row == nil || row.MinMm != 106.48 || row.MaxMm != 106.52 || row.Gauge != "micrometer" || row.Source != lookup.Told("drawing") {
			t.Errorf("%s: the record has %+v", c, row)
		}
		if said := told(m); strings.Count(said, "length 106.48 – 106.52") != 1 || strings.Contains(said, "52 long") {
			t.Errorf("%s:\n%s", c, said)
		}
	}
	if c := check(work(t, "mm", limited), "body length"); c == nil || c.MinMm != 99.9 || c.MaxMm != 100 || c.Source != lookup.Told("drawing") {
		t.Errorf("the record has %+v", c)
	}
	if c := check(work(t, "mm", pin), "body length"); c != nil {
		t.Errorf("the record has the length that follows from the others: %+v", c)
	}
}
