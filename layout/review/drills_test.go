package review

import (
	"strings"
	"testing"

	"centrepop/layout/words"
	"centrepop/parts"
)

// The drill nearest to a hole that no drill makes is one of the job's own system: number 7 is
// 0.2010 in and 13/64 0.2031 (ASME B94.11M); 5.1 mm lies nearer to 0.202 in than either.
func TestNearestDrillNamed(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		units parts.Units
		mm    float64
		want  string
	}{
		{parts.Inches, 0.2022 * 25.4, "0.202 in; the nearest drill is 13/64 in (0.203 in)"},
		{parts.Inches, 0.2805 * 25.4, "0.281 in; the nearest drill is K (0.281 in)"},
		{parts.Millimetres, 0.2022 * 25.4, "5.14 mm; the nearest drill is 5.1 mm"},
		{parts.Millimetres, 5.1, ""},
		{parts.Millimetres, 55.03, ""}, // is bored
		{parts.Inches, 5.1, ""},        // a metric drill makes it
	} {
		r := &reviewer{job: &parts.Job{Units: c.units}, w: words.Writer{Units: c.units}}
		v := &view{reviewer: r, p: &parts.Part{}}
		v.drillSize(drilled{parts.HoleSize{Make: parts.PlainHole}, "h", c.mm, true})
		got := ""
		for _, f := range r.found {
			got = f.Numbers
		}
		if !strings.EqualFold(got, c.want) {
			t.Errorf("%g mm in %s: %q, want %q", c.mm, c.units, got, c.want)
		}
	}
}
