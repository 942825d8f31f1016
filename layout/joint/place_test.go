package joint_test

import "testing"

// Where a part stands is said in the words of its place.
func TestPlaceText(t *testing.T) {
	t.Parallel()
	want := map[string]string{
		"upright":       "bottom of Housing plate on the front of Base plate, 120 from its left edge, 10 from its bottom edge, front to the left",
		"gusset-4":      "left of Gusset 4 on the back of Housing plate, 0 from its right edge, 0 from its bottom edge, front to the left",
		"stand-foot-2":  "front of Stand foot 2 on the right of Stand leg 2, its middle on the other's, TOP to the top of Stand leg 2, its right end to the front of Stand leg 2",
		"hopper-throat": "back of Hopper throat on the front of Hopper, its origin on the other's, 20 down, TOP up, 1 inside it",
	}
	for _, j := range demoPlan(t, "pugmill").Joints {
		w, ok := want[j.Name]
		if delete(want, j.Name); ok && j.How != w {
			t.Errorf("%s: %q, want %q", j.Name, j.How, w)
		}
	}
	if len(want) > 0 {
		t.Errorf("no joints %v", want)
	}
}
