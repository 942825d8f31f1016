package joint_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
)

// Spacers that go between two plates which stand to each other already are all put in before any screw is pulled tight: a tight one
// keeps the next out. Spacers on which the second plate is laid last, and a single one, are tightened as they come. Common practice, no source.
func TestSpacersAtOnce(t *testing.T) {
	t.Parallel()
	const plate = "kind: plate\nmaterial: S235\ntop: punch\nstock: {plate: 10, cut: laser}\noutline: {rectangle: [200, 60]}\nholes:\n" +
		"  - {name: a, at: [[-80, 0]], size: 9}\n  - {name: b, at: [[0, 0]], size: 9}\n  - {name: c, at: [[80, 0]], size: 9}\n"
	const spacer = "part: spacer\ntitle: Spacer\nkind: shaft\nmaterial: C45\nquantity: 3\nstock: {round: 25 mm, length: 104 mm, cut: saw}\nprofile:\n  outside:\n    - {name: body, diameter: 24, length: 100}\nholes:\n" +
		"  - {name: one, face: front, at: [[0, 0]], size: M8 tap, depth: 20}\n  - {name: two, face: back, at: [[0, 0]], size: M8 tap, depth: 20}\n"
	for _, c := range []struct {
		what, order string
		loose       int
	}{
		{"one after the other", "1a 2a 1b 2b 1c 2c", 5},
		{"the last two between", "1a 2a 1b 1c 2b 2c", 5},
		{"a plate on all", "1a 1b 1c 2a 2b 2c", 0},
		{"a single one", "1a 2a", 0},
	} {
		t.Run(c.what, func(t *testing.T) {
			t.Parallel()
			job := "job: box\nunits: mm\ntolerance: m\nparts: [plate-1.yaml, plate-2.yaml, spacer.yaml]\njoints:\n"
			for _, o := range strings.Fields(c.order) {
				n, hole := o[:1], o[1:]
				face, end := "back-on-front", "one"
				if n == "2" {
					face, end = "back-on-back", "two"
				}
				job += fmt.Sprintf("  - name: j%s\n    bolt: {through: plate-%s.%s, into: spacer#%d.%s, bolt: M8 8.8}\n    face: %s\n", o, n, hole, strings.Index("abc", hole)+1, end, face)
			}
			_, p := layouttest.Load(t, layouttest.Write(t, map[string]string{"job.yaml": job, "plate-1.yaml": "part: plate-1\n" + plate, "plate-2.yaml": "part: plate-2\n" + plate, "spacer.yaml": spacer}))
			loose, tight := 0, 0
			for i := range p.Joints {
				steps, checks := fmt.Sprint(p.Joints[i].Steps), fmt.Sprint(p.Joints[i].Checks)
				waits := strings.Contains(steps, "Finger-tight until the 3 × Spacer are in")
				if waits == strings.Contains(steps, "Tighten") || waits == strings.Contains(checks, "torque") {
					t.Errorf("%s: loose %v: %s; %s", p.Joints[i].Name, waits, steps, checks)
				}
				if waits {
					loose++
				} else if strings.Contains(steps, "All at both ends of the 3 × Spacer, that are loose till now") && strings.Contains(checks, "at both ends of the 3 × Spacer") {
					tight++
				}
			}
			if c.order == "1a 2a" && !strings.Contains(fmt.Sprint(p.Joints[0].Steps), "by a strap wrench or in lined vice jaws on body") { // 100 long, M8
				t.Errorf("held: %+v", p.Joints[0].Steps)
			}
			if loose != c.loose || tight != min(loose, 1) {
				t.Errorf("%d left loose, %d tighten them", loose, tight)
			}
		})
	}
}
