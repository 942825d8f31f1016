package joint_test

import (
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
)

// A plate of 50 × 40 with its edge on the rim of a round of 200 leaves 100 − √(100² − 25²) = 3.175 open at its ends, and where
// it stands 10 to the side √(100² − 0²) − √(100² − 35²) = 6.325; across, with its front over the middle and its 10 of thickness beside it, 100 − √(100² − 10²) = 0.501. More than 0.5 and a
// fifth of the throat is not bridged. The sawn end of a bar is as straight. On a flat, with an edge that may fit, and over all of the round, nothing is said.
func TestOpenOnARim(t *testing.T) {
	t.Parallel()
	const disc, tube = "kind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {circle: 200}\n", "kind: tube\nmaterial: S235\nstock: {tube: 200, wall: 10}\ntube: {outside: 200, wall: 10, length: 60}\n"
	plate := func(outline string) string {
		return "kind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {" + outline + "}\n"
	}
	bar := func(end string) string {
		return "kind: bar\nmaterial: S235\nbar: {flat: [50, 10], length: 40" + end + "}\n"
	}
	square, rounded := plate("rectangle: [50, 40]"), plate("rectangle: [50, 40], corner: 5")
	for _, c := range []struct{ on, feature, face, place, lug, gap string }{
		{disc, "outline", "top", "at: [0, 0], front: up", square, "Gap 0 where it touches, 3.18 at its edges."},
		{disc, "outline", "right", "at: [0, 0], front: right", square, "Gap 0 where it touches, 3.18 at its edges."},
		{disc, "outline", "bottom", "at: [-10, 0], front: down", square, "Gap 0 where it touches, 6.33 at its edges."},
		{disc, "outline", "top", "at: [0, 0], front: right", square, "Gap 0 where it touches, 0.5 at its edges."},
		{tube, "outside", "left", "at: [0, 0], front: right", square, "Gap 0 where it touches, 3.18 at its edges."},
		{disc, "outline", "top", "at: [0, 0], front: up", rounded, "No gap."},
		{disc, "outline", "front", "at: [0, 0], front: up", square, "No gap."},
		{disc, "outline", "top", "at: [0, 0], front: up", plate("square: 50"), "Gap 0 where it touches, 3.18 at its edges."},
		{strings.Replace(disc, "200", "50.1", 1), "outline", "top", "at: [0, 0], front: up", square, "Gap 0 where it touches, 23.47 at its edges."},
		{strings.Replace(disc, "200", "49.9", 1), "outline", "top", "at: [0, 0], front: up", square, "No gap."},
		{disc, "outline", "top", "at: [0, 0], front: up", bar(""), "Gap 0 where it touches, 3.18 at its edges."},
		{disc, "outline", "right", "at: [0, 0], front: up", bar(""), "Gap 0 where it touches, 0.5 at its edges."},
		{disc, "outline", "top", "at: [0, 0], front: up", bar(", left: {onto: {diameter: 200}}"), "No gap."},
		{disc, "outline", "top", "at: [0, 0], front: up", bar(", left: {mitre: 20, long: top}"), "No gap."},
	} {
		edge, with := "outline", "bottom"
		if strings.Contains(c.lug, "bar") {
			edge, with = "left", "left"
		}
		_, pl := layouttest.Load(t, layouttest.Write(t, map[string]string{"disc.yaml": "part: disc\n" + c.on, "lug.yaml": "part: lug\n" + c.lug,
			"job.yaml": "job: Lug\nunits: mm\nparts: [disc.yaml, lug.yaml]\njoints:\n  - {name: lug, weld: {part: lug." + edge + ", to: disc." + c.feature + ", type: fillet, size: 5, length: 40, sides: 2}, place: {on: " + c.face + ", with: " + with + ", " + c.place + "}}\n"}))
		j := pl.Joints[0]
		if do := strings.Join(j.Steps[0].Do, " "); !strings.HasSuffix(do, c.gap) {
			t.Errorf("%+v: %s", c, do)
		}
		found := false
		for _, p := range j.Problems {
			found = found || p.Kind == plan.FilletGap
		}
		if wide := strings.Contains(c.gap, "at its edges") && !strings.Contains(c.gap, " 0.5 "); found != wide {
			t.Errorf("%+v: not bridged %v", c, found)
		}
	}
}
