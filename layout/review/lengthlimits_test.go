package review

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/parts/geom"
)

// TestLengthLimits: a length of 20 lies between its limits or on one of them; what lies wholly beside them is found, by 0.05, with
// their middle, to hundredths.
func TestLengthLimits(t *testing.T) {
	t.Parallel()
	const pin = "part: p\nkind: turned\nmaterial: C45\nstock: {round: 35, length: 62, cut: saw}\nprofile:\n  outside:\n    - {name: head, diameter: 30, length: 20%s}\n    - {name: body, diameter: 20, length: 40}\n"
	for limits, middle := range map[string]string{"": "", "[19.9, 20.1]": "", "[20, 20.2]": "", "[19.8, 20]": "", "[20.05, 20.2]": "20.13", "[19.8, 19.95]": "19.88"} {
		if limits != "" {
			limits = ", length-limits: " + limits
		}
		said := ""
		for _, f := range alone(t, "limits", fmt.Sprintf(pin, limits)) {
			_, said, _ = strings.Cut(f.Fix, "the middle is ")
			if geom.Over(math.Abs(*f.OverMm-0.05), 0) {
				t.Errorf("%q: %v over", limits, *f.OverMm)
			}
		}
		if strings.TrimSuffix(said, " mm") != middle {
			t.Errorf("%q: %q", limits, said)
		}
	}
}
