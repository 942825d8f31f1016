package machine_test

import (
	"math"
	"strings"
	"testing"

	"centrepop/parts"
)

// The jack, by hand: the stud of 152 in the arm hole 70 off the axis stands 136 up out of the flange, beside the hub
// of 51 radius; one of 80 radius is in its way, and so it stands before the port at the clock angle of its hole. The
// drive nut reaches 0.217 in out of the hub's front: 2.092 less the collar's 0.875 and the hub's 1.
func TestRods(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ file, from, to, in, before string }{
		{"", "", "", "Rain cone", ""},
		{"handwheel-hub.yaml", "circle: 4", "circle: 6-1/2", "Handwheel hub, Rain cone", ""},
		{"thrust-housing.yaml", "pcd: 5-1/2, at: [270]", "pcd: 5-1/2, at: [355]", "Rain cone", "grease-port of Thrust housing"},
		// The stud's side 5.56 from the middle of the port, whose gun is 7.5 about it; and 7.85.
		{"thrust-housing.yaml", "pcd: 5-1/2, at: [270]", "pcd: 5-1/2, at: [351.5]", "Rain cone", "grease-port of Thrust housing"},
		{"thrust-housing.yaml", "pcd: 5-1/2, at: [270]", "pcd: 5-1/2, at: [349.6]", "Rain cone", ""},
	} {
		var edits [][3]string
		if c.file != "" {
			edits = append(edits, [3]string{c.file, c.from, c.to})
		}
		m, _ := stood(t, edited(t, "gatejack", edits...))
		in, before := m.Rods("thrust-housing", "arm", 9.525, 152.4)
		if got, port := strings.Join(in, ", "), strings.Join(before, ", "); got != c.in || port != c.before {
			t.Errorf("%s: in %q, before %q, want %q and %q", c.to, got, port, c.in, c.before)
		}
	}
	m, _ := stood(t, edited(t, "gatejack"))
	if mm, ok := m.Past("drive-nut", "handwheel-hub", parts.Front); !ok || math.Abs(mm-0.217*25.4) > 1e-6 {
		t.Errorf("the nut stands %g past the hub", mm)
	}
	// 5.075 long: 5.075 − 1 − 0.217 out of its back.
	if mm, ok := m.Past("drive-nut", "handwheel-hub", parts.Back); !ok || math.Abs(mm-3.858*25.4) > 1e-6 {
		t.Errorf("and %g out of its back", mm)
	}
	for _, c := range [][2]string{{"drive-nut", "none"}, {"none", "handwheel-hub"}} {
		if mm, ok := m.Past(c[0], c[1], parts.Front); ok {
			t.Errorf("%s past %s: %g", c[0], c[1], mm)
		}
	}
	// The hub's top is 3.71 over the flange: 2 of body, less 7/8 of seat for 0.71 of bearing, collar 7/8, hub 1. The
	// stud of 6 ends 5-3/8 over the flange of 5/8, one of 3 ends 2-3/8 over it.
	for long, over := range map[float64]float64{6: 5.375 - 3.71, 3: 2.375 - 3.71} {
		if mm, ok := m.RodsPast("thrust-housing", "arm", 9.525, long*25.4, "handwheel-hub"); !ok || math.Abs(mm-over*25.4) > 0.05 {
			t.Errorf("a stud of %g ends %g over the hub", long, mm)
		}
	}
	if mm, ok := m.RodsPast("thrust-housing", "arm", 9.525, 152.4, "none"); ok || mm != 0 {
		t.Errorf("over no part: %g", mm)
	}
	if in, before := m.Rods("thrust-housing", "arm", 9.525, 15); in != nil || before != nil {
		t.Errorf("a stud that does not come through: %q, %q", in, before)
	}
	if mm, ok := m.Past("drive-nut", "stay", parts.Front); ok {
		t.Errorf("on no axis: %g", mm)
	}
}
