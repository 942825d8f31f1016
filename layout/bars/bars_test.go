package bars

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"centrepop/layout/lookup"
)

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// A frame member of 50 wide with 45° at both ends loses its width twice on the
// inside: the rule S = L − 2·W of every framing guide. The rest is geometry.
func TestMember(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		m    Member
		want Sides
	}{
		{Member{450, 50, 45, 45}, Sides{500, 400, 500}},
		{Member{450, 50, -45, -45}, Sides{400, 500, 500}},
		{Member{450, 50, 45, -45}, Sides{450, 450, 500}},
		{Member{450, 50, 30, 0}, Sides{464.433757, 435.566243, 464.433757}},
		{Member{450, 50, 0, 30}, Sides{464.433757, 435.566243, 464.433757}},
	} {
		s, err := c.m.Work()
		if err != nil {
			t.Error(err)
			continue
		}
		if !near(s.TopMm, c.want.TopMm, 1e-6) || !near(s.BottomMm, c.want.BottomMm, 1e-6) || !near(s.LongPointToPointMm, c.want.LongPointToPointMm, 1e-6) {
			t.Errorf("%+v: %+v, want %+v", c.m, s, c.want)
		}
		back, err := ByLong(math.Max(s.TopMm, s.BottomMm), c.m.WidthMm, c.m.StartDeg, c.m.EndDeg)
		if err != nil || !near(back.LengthMm, c.m.LengthMm, 1e-9) {
			t.Errorf("%+v by its long side: %+v, %v", c.m, back, err)
		}
	}
	for deg, want := range map[float64][2]float64{0: {50, 0}, 30: {57.735027, 28.867513}, 45: {70.710678, 50}, -45: {70.710678, -50}} {
		if cut, off := Across(50, deg); !near(cut, want[0], 1e-6) || !near(off, want[1], 1e-6) {
			t.Errorf("%v°: %v, %v", deg, cut, off)
		}
	}
	for _, c := range []struct {
		m    Member
		what string
	}{
		{Member{0, 50, 0, 0}, "length"}, {Member{450, 0, 0, 0}, "width"}, {Member{450, 50, 76, 0}, "start angle"}, {Member{450, 50, 0, -76}, "end angle"},
		{Member{50, 50, 45, 45}, "length"}, {Member{math.NaN(), 50, 0, 0}, "length"}, {Member{450, 50, math.NaN(), 0}, "start angle"}, {Member{20001, 50, 0, 0}, "length"},
	} {
		var r *lookup.RangeError
		if _, err := c.m.Work(); !errors.As(err, &r) || r.What != c.what {
			t.Errorf("%+v: %v", c.m, err)
		}
	}
	if _, err := (Member{50.1, 50, 45, 45}).Work(); err != nil {
		t.Error(err)
	}
	if _, err := (Member{100, 50, 75, -75}).Work(); err != nil {
		t.Error(err)
	}
	var r *lookup.RangeError
	if _, err := ByLong(100, 50, 45, 45); !errors.As(err, &r) || r.What != "long side" || !near(r.Above, 100, 1e-9) {
		t.Errorf("a member with no short side: %v", err)
	}
	if _, err := ByLong(100.1, 50, 45, 45); err != nil {
		t.Error(err)
	}
	if _, err := ByLong(100, 50, 76, 0); err == nil {
		t.Error("76° is accepted")
	}
}

// Equal bars share the corner: half of what is left to a straight line. Unequal
// ones at a right angle: the tangent is the ratio of the widths.
func TestMitre(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ corner, first, second, a, b float64 }{
		{90, 50, 50, 45, 45}, {120, 50, 50, 30, 30}, {60, 40, 40, 60, 60}, {135, 40, 40, 22.5, 22.5},
		{90, 40, 60, 56.309932, 33.690068}, {90, 60, 40, 33.690068, 56.309932}, {60, 50, 30, 51.786789, 68.213211},
	} {
		a, b, err := Mitre(c.corner, c.first, c.second)
		if err != nil || !near(a, c.a, 1e-6) || !near(b, c.b, 1e-6) {
			t.Errorf("%+v: %v, %v, %v", c, a, b, err)
			continue
		}
		// Both cuts are as long, and turn the corner together.
		if !near(c.first/cos(a), c.second/cos(b), 1e-6) || !near(a+b, 180-c.corner, 1e-6) {
			t.Errorf("%+v: cuts %v, %v, angles %v", c, c.first/cos(a), c.second/cos(b), a+b)
		}
	}
	for _, c := range [][3]float64{{0, 50, 50}, {180, 50, 50}, {90, 0, 50}, {90, 50, 0}, {20, 50, 50}, {90, 10, 50}, {math.NaN(), 50, 50}} {
		if _, _, err := Mitre(c[0], c[1], c[2]); err == nil {
			t.Errorf("%v is accepted", c)
		}
	}
}

// A bar of 60 on a round of 100: the edges stand √(50² − 30²) = 40 from the
// axis, so the hollow is 10 deep.
func TestCope(t *testing.T) {
	t.Parallel()
	if c, err := CopeOn(100, 60); err != nil || !near(c.DepthMm, 10, 1e-9) || !near(c.EdgeMm, 40, 1e-9) || c.RadiusMm != 50 {
		t.Errorf("%+v, %v", c, err)
	}
	if c, err := CopeOn(60, 60); err != nil || !near(c.DepthMm, 30, 1e-9) || c.EdgeMm != 0 {
		t.Errorf("%+v, %v", c, err)
	}
	for _, v := range [][2]float64{{0, 60}, {50, 60}, {100, 0}, {100, math.NaN()}} {
		if _, err := CopeOn(v[0], v[1]); err == nil {
			t.Errorf("%v is accepted", v)
		}
	}
}

func TestSmall(t *testing.T) {
	t.Parallel()
	if _, err := (Member{0.9, 0.5, 0, 0}).Work(); err != nil {
		t.Error(err)
	}
	if _, _, err := Mitre(90, 0.5, 0.5); err != nil {
		t.Error(err)
	}
	if _, err := CopeOn(0.9, 0.5); err != nil {
		t.Error(err)
	}
	// A corner of less than a degree needs a saw no shop has: 75° is the limit.
	if _, _, err := Mitre(30, 50, 50); err != nil {
		t.Error(err)
	}
	if _, _, err := Mitre(29.9, 50, 50); err == nil {
		t.Error("75.05° is accepted")
	}
}

func ExampleMember_Work() {
	s, err := Member{LengthMm: 550, WidthMm: 50, StartDeg: 45, EndDeg: 45}.Work()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("top %.0f, bottom %.0f\n", s.TopMm, s.BottomMm)
	// Output: top 600, bottom 500
}
