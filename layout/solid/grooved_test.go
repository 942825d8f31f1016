package solid_test

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/grooves"
	"centrepop/layout/layouttest"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
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
	// A key of DIN 6885, 12 × 8 with round ends, fills its keyway from 30 to 70.
	if box := assembly.Of(solid.Key(&plan.KeywayRow{WidthMm: 12, HeightMm: 8, DepthMm: 5, FromMm: 30, ToMm: 70})).Box(); box.Size().Sub(assembly.Vec{X: 12, Y: 40, Z: 8}).Len() > 1e-6 || math.Abs(box.Low.Z) > 1e-9 {
		t.Errorf("%+v", box)
	}
}

// TestRingsOfGrooves: in a groove of 50 to 60 in a face, 2 deep, an O-ring of 3 is π/4 · 3² / 2 = 3.534 wide, against the outer wall, or
// with the pressure outside the inner one. A retaining ring of 40 is 1.75 thick in a groove of 1.85 and reaches halfway to where its lugs
// need room: round a shaft (DIN 471, floor 37.5, room 52.6) to 46.3, in a bore (DIN 472, floor 42.5, room 27.82) to 33.91.
func TestRingsOfGrooves(t *testing.T) {
	t.Parallel()
	ring := func(what string, s assembly.Simple, outer, inner, front, back float64) {
		t.Helper()
		solid, box := assembly.Of(s), assembly.Of(s).Box()
		if math.Abs(box.High.X-outer) > 1e-3 || math.Abs(box.High.Z+front) > 1e-9 || math.Abs(box.Low.Z+back) > 1e-9 {
			t.Errorf("%s: %+v", what, box)
		}
		in := func(x float64) float64 { return solid.Dist(assembly.Vec{X: x, Z: -(front + back) / 2}) }
		if in(inner-0.001) < 0 || in(inner+0.001) > 0 {
			t.Errorf("%s: bored %g and %g from %g", what, in(inner-0.001), in(inner+0.001), inner)
		}
	}
	for outside, want := range map[bool][2]float64{false: {30, 26.466}, true: {28.534, 25}} {
		g := &part.Groove{In: &parts.Groove{PressureOutside: outside}, Row: plan.GrooveRow{Face: parts.Front, ToMm: 2, DepthMm: 2, InnerMm: 50, OuterMm: 60, ORing: &plan.ORingFit{SectionMm: 3}}}
		ring("O-ring", solid.ORing(g), want[0], want[1], 0, 2)
	}
	for text, want := range map[string][2]float64{
		"kind: shaft\nmaterial: C45\nstock: {round: 45, length: 110}\nprofile:\n  outside: [{name: seat, diameter: 40, length: 100}]\n":                                                       {23.15, 18.75},
		"kind: turned\nmaterial: C45\nstock: {round: 80, length: 110}\nprofile:\n  outside: [{name: body, diameter: 76, length: 100}]\n  inside: [{name: seat, diameter: 40, length: 100}]\n": {21.25, 16.955},
	} {
		r := layouttest.Model(t, "part: p\n"+text+"grooves: [{name: ring, in: seat, axial: 20, from: front, for: retaining-ring}]\n")
		for back, front := range map[bool]float64{false: 20, true: 20.1} {
			s, ok := solid.Retaining(r, &r.Grooves[0], back)
			if !ok {
				t.Fatal("no ring")
			}
			ring(string(r.Part.Kind), s, want[0], want[1], front, front+1.75)
		}
	}
}
