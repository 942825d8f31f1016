package part_test

import (
	"math"
	"path/filepath"
	"slices"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/read"
)

// TestDimensionChains: on every part of the demos the links of a chain add up to
// the whole, exactly one of several is auxiliary (in brackets, no limits: ISO
// 129-1), and what it follows from is toleranced.
func TestDimensionChains(t *testing.T) {
	t.Parallel()
	chains := 0
	for _, name := range []string{"pugmill", "gatejack"} {
		job, err := read.Load(filepath.Join("..", "..", "testdata", name, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		worked, err := layout.Resolve(job)
		if err != nil {
			t.Fatal(err)
		}
		pl := worked.Plan
		for _, p := range pl.Parts {
			for _, inside := range []bool{false, true} {
				links, auxiliary, at := 0, 0, 0.0
				for _, d := range p.Dimensions {
					if d.Kind != plan.LengthDim || d.Inside != inside {
						continue
					}
					if d.FromMm != at {
						t.Errorf("%s: a link begins at %g, the one before it ends at %g", p.Name, d.FromMm, at)
					}
					links, at = links+1, d.ToMm
					if d.Text[0] == '(' {
						auxiliary++
						if d.Limits != "" {
							t.Errorf("%s: the auxiliary %s has limits %s", p.Name, d.Text, d.Limits)
						}
					}
				}
				if links > 1 {
					chains++
					if auxiliary != 1 {
						t.Errorf("%s: %d of %d links are auxiliary", p.Name, auxiliary, links)
					}
				}
			}
			if k := len(p.Dimensions); p.Section != nil && p.Bar == nil && len(p.Profiles) == 0 && (k == 0 || p.Dimensions[k-1].Kind != plan.OverallDim || p.Dimensions[k-1].ToMm != p.Section.LengthMm) {
				t.Errorf("%s: no overall length", p.Name)
			}
		}
	}
	if chains < 8 {
		t.Errorf("only %d chains", chains)
	}
}

// What is cut in from outside has its name on the section, once for its copies, from one of its
// ends to the other along the axis: 25-3/8 and 10-1/4 in, 1-13/32 and 5/8 in, 24 − 1-1/2 and 1 in.
func TestNamesOnTheSection(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]plan.Dimension{
		"stem":           {FromMm: 25.4 * 20.25, ToMm: 25.4 * 30.5, RadiusMm: 12.7, Text: "keyway"},
		"thrust-housing": {FromMm: 25.4 * 1.09375, ToMm: 25.4 * 1.71875, RadiusMm: 25.4 * 2.25, Text: "2 × drain"},
		"guide-tube":     {FromMm: 25.4 * 22, ToMm: 25.4 * 23, RadiusMm: 25.4 * 1.75, Text: "drip"},
	} {
		want.Kind = plan.DiameterDim
		dims := demo(t, "gatejack").Part(name).Dimensions
		near := func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
		if !slices.ContainsFunc(dims, func(d plan.Dimension) bool {
			return d.Text == want.Text && d.Kind == want.Kind && near(d.FromMm, want.FromMm) && near(d.ToMm, want.ToMm) && near(d.RadiusMm, want.RadiusMm)
		}) {
			t.Errorf("%s: no %+v in %+v", name, want, dims)
		}
	}
}

// A cone is measured over its square edges: the height drawn between its diameters is in
// brackets and has no limits of its own (ISO 129-1).
func TestHeightOfACone(t *testing.T) {
	t.Parallel()
	dims := demo(t, "gatejack").Part("rain-cone").Dimensions
	if d := dims[len(dims)-1]; d.Kind != plan.OverallDim || d.Text != "(2.5 in)" || d.Limits != "" {
		t.Errorf("%+v", d)
	}
}
