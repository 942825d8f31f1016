package solid_test

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/grooves"
	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
)

// An O-ring 44 × 3 on a piston for a bore of 50 fills from the floor to the bore, in the middle of
// its groove.
func TestORingOnPiston(t *testing.T) {
	t.Parallel()
	r := layouttest.Model(t, "part: p\nkind: turned\nmaterial: C45\nstock: {round: 55 mm, length: 60 mm}\nprofile:\n  outside: [{name: body, diameter: 50, fit: f7, length: 50}]\ngrooves:\n  - {name: ring, in: body, axial: 20, from: front, for: o-ring, o-ring: 44x3}\n")
	ring := grooves.ORing{InsideMm: 44, SectionMm: 3}
	want, err := ring.In(grooves.Piston, 50, false)
	if err != nil || len(r.Grooves) != 1 {
		t.Fatal(err, r.Out.Problems)
	}
	box := assembly.Of(solid.ORing(&r.Grooves[0])).Box()
	if math.Abs(box.High.X-25) > 1e-6 || math.Abs((box.High.Z+box.Low.Z)/2+20+want.WidthMm/2) > 1e-6 || math.Abs(box.Size().Z*(50-want.FloorMm)/2-math.Pi/4*9) > 1e-6 {
		t.Errorf("%+v, floor %v", box, want.FloorMm)
	}
}

// A Woodruff key 8 × 11 (DIN 6888: disc 28, sunk 8.2) is the segment of its disc: 14² · acos(3/14) −
// 3 · √(11 · 17) = 224.5 mm² (Dubbel, area of a circular segment), 8 wide, its top 2.8 above the crown.
func TestWoodruffKey(t *testing.T) {
	t.Parallel()
	depth := 8.2
	s := assembly.Of(solid.Key(&plan.KeywayRow{WidthMm: 8, HeightMm: 11, DepthMm: depth, RunoutMm: math.Sqrt(depth * (28 - depth)), Woodruff: "8x11"}))
	want := 8 * (196*math.Acos(3.0/14) - 3*math.Sqrt(11*17))
	if got := s.Bulk().VolumeMm3; math.Abs(got-want) > 0.01*want {
		t.Errorf("%v mm³, want %v", got, want)
	}
	if box := s.Box(); math.Abs(box.High.Z-11) > 1e-9 || math.Abs(box.Low.Z) > 1e-9 || math.Abs(box.Size().X-8) > 1e-9 || math.Abs(box.Size().Y-2*math.Sqrt(11*17)) > 1e-6 {
		t.Errorf("%+v", box)
	}
}
