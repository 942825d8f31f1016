package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/parts/golden"
)

// TestWorked: what is found in the small jobs of layout/joint/testdata/worked, and the wrong ways of their joints, as
// waysIn writes them. CENTREPOP_UPDATE=1 writes testdata/worked anew: read the difference.
func TestWorked(t *testing.T) {
	layouttest.Whole(t, func(b *strings.Builder, m *machine.Machine, _ *plan.Plan) {
		for _, p := range m.Problems {
			p.What = "" // its words are layout/words'
			fmt.Fprintf(b, "problem %s", golden.Text(p))
		}
		for _, j := range m.Joints {
			if ways := waysIn(m, j.Name); ways != "" {
				fmt.Fprintf(b, "%s goes on %s\n", j.Name, ways)
			}
		}
	})
}
