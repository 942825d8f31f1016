package joint_test

import (
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
)

// A plate of 50 × 40 with its edge on the rim of a round of 200 leaves 100 − √(100² − 25²) = 3.175 open at its ends, and where
// it stands 10 to the side √(100² − 0²) − √(100² − 35²) = 6.325; across, with its front over the middle and its 10 of thickness beside it, 100 − √(100² − 10²) = 0.501. More than 0.5 and a
// fifth of the throat is not bridged. On a flat, and with an edge that may fit, nothing is said.
func TestOpenOnARim(t *testing.T) {
	t.Parallel()
	const disc, tube = "kind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {circle: 200}\n", "kind: tube\nmaterial: S235\nstock: {tube: 200, wall: 10}\ntube: {outside: 200, wall: 10, length: 60}\n"
	const square, rounded = "rectangle: [50, 40]", "rectangle: [50, 40], corner: 5"
	for _, c := range []struct{ on, feature, face, place, lug, gap string }{
		{disc, "outline", "top", "at: [0, 0], front: up", square, "Gap 0 where it touches, 3.18 at its edges."},
		{disc, "outline", "right", "at: [0, 0], front: right", square, "Gap 0 where it touches, 3.18 at its edges."},
		{disc, "outline", "bottom", "at: [-10, 0], front: down", square, "Gap 0 where it touches, 6.33 at its edges."},
		{disc, "outline", "top", "at: [0, 0], front: right", square, "Gap 0 where it touches, 0.5 at its edges."},
		{tube, "outside", "left", "at: [0, 0], front: right", square, "Gap 0 where it touches, 3.18 at its edges."},
		{disc, "outline", "top", "at: [0, 0], front: up", rounded, "No gap."},
		{disc, "outline", "front", "at: [0, 0], front: up", square, "No gap."},
	} {
		_, pl := layouttest.Load(t, layouttest.Write(t, map[string]string{"disc.yaml": "part: disc\n" + c.on, "lug.yaml": "part: lug\nkind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {" + c.lug + "}\n",
			"job.yaml": "job: Lug\nunits: mm\nparts: [disc.yaml, lug.yaml]\njoints:\n  - {name: lug, weld: {part: lug.outline, to: disc." + c.feature + ", type: fillet, size: 5, length: 40, sides: 2}, place: {on: " + c.face + ", with: bottom, " + c.place + "}}\n"}))
		j := pl.Joints[0]
		if do := strings.Join(j.Steps[0].Do, " "); !strings.HasSuffix(do, c.gap) {
			t.Errorf("%+v: %s", c, do)
		}
		found := false
		for _, p := range j.Problems {
			found = found || p.Kind == plan.FilletGap
		}
		if wide := strings.Contains(c.gap, "3.18") || strings.Contains(c.gap, "6.33"); found != wide {
			t.Errorf("%+v: not bridged %v", c, found)
		}
	}
}
