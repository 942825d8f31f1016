package stand_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
)

// TestWorked: where each body of the small jobs of layout/joint/testdata/worked stands, its mass and its
// centre of gravity, what has no place, and what may lie in what. CENTREPOP_UPDATE=1 writes testdata/worked anew: read the difference.
func TestWorked(t *testing.T) {
	layouttest.Whole(t, func(b *strings.Builder, m *machine.Machine, _ *plan.Plan) {
		for i := range m.Bodies {
			c, box := &m.Bodies[i], m.Bodies[i].Box()
			kg, centre, _ := c.Mass()
			fmt.Fprintf(b, "%s from %.2f to %.2f, %.4g kg about %.2f\n", c.ID, box.Low, box.High, kg, centre)
		}
		fmt.Fprintf(b, "floating %v\n", m.Floating)
		for _, a := range m.Loose {
			fmt.Fprintf(b, "%s and %s may lie in one another by %.4g\n", a.A, a.B, a.UpToMm)
		}
	})
}
