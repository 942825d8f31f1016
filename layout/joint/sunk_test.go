package joint_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A lid of 10 mm on 20 mm of plate with M8 x 20: its head, 17.92 over its sharp edge and 4.96 high (ISO 10642), lies 0.04
// under the face in a cone of 18, and reaches 20 less 9.96 into the thread. In one of 16 it stands 0.96 above it, and
// reaches 9.04; 0.75 × 0.8 of the proof load of 21200 N with K = 0.2 on 8 mm is 20.35 N m.
func TestCountersunk(t *testing.T) {
	t.Parallel()
	const cone = "countersink: {diameter: %s, angle: 90}"
	for _, c := range []struct{ name, hole, bolt, face, want string }{
		{"in its cone", fmt.Sprintf(cone, "18"), "head: countersunk", "back", "M8 x 20 10.04 0.04 20.35"},
		{"in a narrow one", fmt.Sprintf(cone, "16"), "head: countersunk", "back", "M8 x 20 9.04 -0.96 20.35; sunk-proud, lid s, 0.96, 16, 17.92"},
		{"in none", "", "head: countersunk", "back", "M8 x 20 10 0 20.35; no-countersink, lid s, 17.92, 90"},
		{"in a counterbore", "counterbore: {diameter: 20, depth: 4}", "head: countersunk", "back", "M8 x 16 10 0 20.35; no-countersink, lid s, 17.92, 90"},
		{"another head", fmt.Sprintf(cone, "18"), "head: socket", "back", "M8 x 20 10 0 25.44; countersunk, lid s, socket"},
		{"on the other face", fmt.Sprintf(cone, "18"), "head: countersunk", "front", "M8 x 20 10.04 0.04 20.35; counterbore-wrong-side, lid s"},
	} {
		lid := "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 120}\nholes: [{name: s, at: [[-40, 0], [40, 0]], size: M8 clearance, depth: through, " + c.hole + "}]\n"
		base := "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\nholes: [{name: h, at: [[-40, 0], [40, 0]], size: M8 tap, depth: through}]\n"
		p, err := draft(jobOf(t, "{name: x, bolt: {through: lid.s, into: base.h, bolt: M8 8.8, "+c.bolt+"}, face: "+c.face+"-on-front}", lid, base))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		b := p.Joints[0].Bolt
		got := fmt.Sprint(b.Ordered, " ", b.EngagementMm, " ", b.SunkMm, " ", math.Round(b.TorqueNm*100)/100)
		kinds := []plan.ProblemKind{plan.NoCountersink, plan.SunkProud, plan.Countersunk, plan.BoreSinkWrongSide}
		if found := argued(slices.DeleteFunc(p.Joints[0].Problems, func(q plan.Problem) bool { return !slices.Contains(kinds, q.Kind) })); found != "" {
			got += "; " + found
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		if cites := slices.ContainsFunc(p.Joints[0].Figures, func(f plan.Figure) bool {
			return f.Label == "bolts" && strings.HasSuffix(f.Source, "; ISO 10642")
		}); cites != (c.bolt != "head: socket") {
			t.Errorf("%s: ISO 10642 named: %v", c.name, cites)
		}
		if list := fmt.Sprint(p.Bought); c.bolt != "head: socket" && !strings.Contains(list, "8.8, countersunk head, hexagon socket") {
			t.Errorf("%s: %s", c.name, list)
		}
	}
}
