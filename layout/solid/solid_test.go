package solid

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/parts"
)

func mm(v float64) parts.Length { return parts.Length{Mm: v} }

// gone is how much a cut takes off a block of 100 × 100 × 20 under z = 0.
func gone(cut ...assembly.Simple) float64 {
	block := assembly.Of(assembly.Cuboid(assembly.Vec{X: -50, Y: -50, Z: -20}, assembly.Vec{X: 50, Y: 50}))
	return 200_000 - block.Cut(cut...).Bulk().VolumeMm3
}

// TestHole: what each hole takes off a block 20 thick, by the formulas of
// cylinder and cone.
func TestHole(t *testing.T) {
	t.Parallel()
	const pi = math.Pi
	made := func(mm float64) part.Made { return part.Made{FinishedMm: mm} }
	tapped := part.Made{FinishedMm: 10, DrillMm: 8, Thread: &threads.Thread{}}
	for _, c := range []struct {
		name string
		hole parts.HoleGroup
		size part.Made
		want float64
	}{
		{"through", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}}, made(10), pi * 25 * 20},
		{"through, whatever its depth", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true, Depth: mm(5)}}, made(10), pi * 25 * 20},
		{"blind", parts.HoleGroup{FaceGroup: parts.FaceGroup{Depth: mm(12)}}, made(10), pi * 25 * 12},
		{"as deep as the part", parts.HoleGroup{FaceGroup: parts.FaceGroup{Depth: mm(20)}}, made(10), pi * 25 * 20},
		{"tapped", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}}, tapped, pi * 16 * 20},
		{"counterbored", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}, Counterbore: &parts.Counterbore{Diameter: mm(18), Depth: mm(6)}}, made(10), pi * (25*14 + 81*6)},
		{"counterbored, blind", parts.HoleGroup{FaceGroup: parts.FaceGroup{Depth: mm(15)}, Counterbore: &parts.Counterbore{Diameter: mm(18), Depth: mm(6)}}, made(10), pi * (25*9 + 81*6)},
		// 90° from 20 to 10: 5 deep, a frustum of π·5/3·(100 + 50 + 25).
		{"countersunk", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}, Countersink: &parts.Countersink{Diameter: mm(20), Angle: parts.Angle{Deg: 90}}}, made(10), pi * (25*15 + 5*175.0/3)},
		// 60° from 20 to 10: 5/tan 30° deep.
		{"countersunk steeply", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}, Countersink: &parts.Countersink{Diameter: mm(20), Angle: parts.Angle{Deg: 60}}}, made(10), pi * (25*(20-5*math.Sqrt(3)) + 5*math.Sqrt(3)*175/3)},
	} {
		g := &part.Group{Hole: &c.hole, Size: c.size}
		if got := gone(hole(g, 20, past)); math.Abs(got-c.want) > 1e-3*c.want {
			t.Errorf("%s: %.1f mm³ gone, want %.1f", c.name, got, c.want)
		}
	}
}

// TestRadialOpenings: what is cut into a bar of 60, by box and volume.
func TestRadialOpenings(t *testing.T) {
	t.Parallel()
	bar := func() *assembly.Solid { return assembly.Of(assembly.Cylinder(30, -200, 0)) }
	row := func(r plan.RadialRow) plan.RadialRow { r.OutsideMm = 60; return r }
	deep := &parts.Radial{Depth: mm(10)}
	for _, c := range []struct {
		name string
		in   *parts.Radial
		row  plan.RadialRow
		size part.Made
		in3  []assembly.Vec // taken away
		out3 []assembly.Vec // left
	}{
		{"hole at 90° to the middle", &parts.Radial{}, row(plan.RadialRow{Shape: "hole", ClockDeg: 90, AxialMm: 50}), part.Made{FinishedMm: 10},
			[]assembly.Vec{{X: 29, Z: -50}, {X: 1, Z: -50}, {X: 20, Y: 4.9, Z: -50}, {X: 20, Z: -54.9}}, []assembly.Vec{{X: -1, Z: -50}, {X: 20, Y: 5.1, Z: -50}, {X: 20, Z: -55.1}, {X: 20, Z: -44.9}}},
		{"tapped hole", &parts.Radial{}, row(plan.RadialRow{Shape: "hole", AxialMm: 50}), part.Made{FinishedMm: 10, DrillMm: 8, Thread: &threads.Thread{}},
			[]assembly.Vec{{Y: 20, Z: -50}, {X: 3.9, Y: 20, Z: -50}}, []assembly.Vec{{X: 4.1, Y: 20, Z: -50}}},
		{"blind hole", deep, row(plan.RadialRow{Shape: "hole", ClockDeg: 180, AxialMm: 50}), part.Made{FinishedMm: 10},
			[]assembly.Vec{{Y: -29, Z: -50}, {Y: -20.1, Z: -50}}, []assembly.Vec{{Y: -19.9, Z: -50}, {Y: 29, Z: -50}}},
		// 47.12 mm round a circle of 60 is 90°: to 30·sin 45° on both sides.
		{"window", deep, row(plan.RadialRow{Shape: "window", AxialMm: 50, AroundMm: 15 * math.Pi, AlongMm: 40}), part.Made{},
			[]assembly.Vec{{X: 21.1, Y: 21.1, Z: -50}, {Y: 25, Z: -30.1}, {X: -21, Y: 21, Z: -69.9}}, []assembly.Vec{{X: 21.3, Y: 20.5, Z: -50}, {Y: 25, Z: -29.9}, {Y: 19.9, Z: -50}}},
		// 110 mm are over half of the round: all of its width.
		{"window over half round", &parts.Radial{}, row(plan.RadialRow{Shape: "window", AxialMm: 50, AroundMm: 110, AlongMm: 40}), part.Made{},
			[]assembly.Vec{{X: 29.5, Y: 1, Z: -50}, {X: -29.5, Y: 1, Z: -31}}, []assembly.Vec{{X: 29.5, Y: -1, Z: -50}}},
		{"window, corners round", deep, row(plan.RadialRow{Shape: "window", AxialMm: 50, AroundMm: 15 * math.Pi, AlongMm: 40, CornerMm: 10}), part.Made{},
			[]assembly.Vec{{X: 18, Y: 22, Z: -33.5}, {Y: 25, Z: -30.1}}, []assembly.Vec{{X: 20.5, Y: 21, Z: -31}}},
		{"slot along", deep, row(plan.RadialRow{Shape: "slot", AxialMm: 50, AroundMm: 10, AlongMm: 40}), part.Made{},
			[]assembly.Vec{{Y: 25, Z: -30.1}, {X: 4.9, Y: 25, Z: -50}}, []assembly.Vec{{X: 4, Y: 25, Z: -31}, {X: 5.1, Y: 25, Z: -50}, {Y: 25, Z: -29.9}}},
		// Round the bar by 40, its ends of radius 5 about 30 · sin(40/60) − 5 = 13.55: at 45° they reach 17.09 across and 3.54 along.
		{"slot across", deep, row(plan.RadialRow{Shape: "slot", AxialMm: 50, AroundMm: 40, AlongMm: 10}), part.Made{},
			[]assembly.Vec{{X: 17, Y: 22, Z: -53.5}, {X: 18.5, Y: 22, Z: -50}}, []assembly.Vec{{X: 17.3, Y: 22, Z: -53.75}, {X: 18.6, Y: 22, Z: -50}}},
	} {
		s := bar().Cut(radial(nil, &part.Radial{In: c.in, Rows: []plan.RadialRow{c.row}, Size: c.size})...)
		for _, p := range c.in3 {
			if s.Dist(p) < 0 {
				t.Errorf("%s: metal at %v", c.name, p)
			}
		}
		for _, p := range c.out3 {
			if s.Dist(p) >= 0 {
				t.Errorf("%s: none at %v", c.name, p)
			}
		}
	}
}

// TestFlatsAndGrooves: a bar of 40 with flats 3 deep, and grooves in its ends.
func TestFlatsAndGrooves(t *testing.T) {
	t.Parallel()
	s := assembly.Of(assembly.Cylinder(20, -100, 0)).Cut(flats(&plan.FlatsRow{Sides: 3, ClockDeg: 30, FromMm: 10, ToMm: 40, DiameterMm: 40, DepthMm: 3})...)
	for _, c := range []struct {
		deg, r, z float64
		metal     bool
	}{
		{30, 17.1, 25, false}, {30, 16.9, 25, true}, {150, 17.1, 11, false}, {270, 17.1, 39, false}, {270, 16.9, 39, true},
		{30, 19, 9.9, true}, {30, 19, 10.1, false}, {30, 19, 39.9, false}, {30, 19, 40.1, true}, {90, 19.9, 25, true}, {210, 19.9, 25, true},
	} {
		p := assembly.Clock(c.r, c.deg)
		p.Z = -c.z
		if got := s.Dist(p) < 0; got != c.metal {
			t.Errorf("at %g°, %g out and %g back: metal %v", c.deg, c.r, c.z, got)
		}
	}
	// A ring of 20 to 30 in the end, 4 deep: π (225 − 100) 4.
	const want = math.Pi * 125 * 4
	if got := gone(faceGroove(&plan.GrooveRow{Face: parts.Front, FromMm: 0, ToMm: 4, InnerMm: 20, OuterMm: 30})); math.Abs(got-want) > 1e-3*want {
		t.Errorf("groove in front: %.1f mm³", got)
	}
	if got := gone(faceGroove(&plan.GrooveRow{Face: parts.Back, FromMm: 16, ToMm: 20, InnerMm: 20, OuterMm: 30})); math.Abs(got-want) > 1e-3*want {
		t.Errorf("groove in the back: %.1f mm³", got)
	}
}

// TestScrew: an M10 by ISO 4017 (head 6.4 high, 16 across), ISO 4762 (16 × 10),
// ISO 4032 (nut 8.4) and ISO 7089 (washer 20 × 2).
func TestScrew(t *testing.T) {
	t.Parallel()
	b, err := bolts.Find("M10")
	if err != nil {
		t.Fatal(err)
	}
	j := &plan.JointPlan{Bolt: &plan.BoltPlan{LengthMm: 40, GripMm: 22}}
	for _, c := range []struct {
		name                     string
		bolt                     parts.BoltJoint
		high, low, wide          float64 // of the screw
		nutHigh, nutLow, nutWide float64
	}{
		{"hexagon", parts.BoltJoint{}, 6.4, -40, 16, 0, 0, 0},
		{"socket head", parts.BoltJoint{Head: "socket"}, 10, -40, 16, 0, 0, 0},
		{"washer", parts.BoltJoint{Washer: true}, 8.4, -38, 20, 0, 0, 0},
		{"nut", parts.BoltJoint{Nut: true}, 6.4, -40, 16, -22, -30.4, 16},
		{"nut and washers", parts.BoltJoint{Nut: true, Washer: true}, 8.4, -38, 20, -22, -32.4, 20},
	} {
		out, nut := Screw(b, &parts.Joint{Bolt: &c.bolt}, j)
		box := assembly.Of(out...).Box()
		if math.Abs(box.High.Z-c.high) > 1e-9 || math.Abs(box.Low.Z-c.low) > 1e-9 || math.Abs(min(box.Size().X, box.Size().Y)-c.wide) > 1e-9 {
			t.Errorf("%s: %+v", c.name, box)
		}
		for z, washer := range map[float64]bool{-0.01: false, 0.01: c.bolt.Washer, 1.99: c.bolt.Washer} {
			if assembly.Of(out...).Dist(assembly.Vec{X: 9.9, Z: z}) < 0 != washer {
				t.Errorf("%s: its washer at %g", c.name, z)
			}
		}
		if len(nut) == 0 {
			if c.bolt.Nut {
				t.Errorf("%s: no nut", c.name)
			}
			continue
		}
		if box = assembly.Of(nut...).Box(); math.Abs(box.High.Z-c.nutHigh) > 1e-9 || math.Abs(box.Low.Z-c.nutLow) > 1e-9 || math.Abs(min(box.Size().X, box.Size().Y)-c.nutWide) > 1e-9 {
			t.Errorf("%s: nut %+v", c.name, box)
		}
		// The shank is as thick as its thread.
		s := assembly.Of(out...)
		if s.Dist(assembly.Vec{X: 4.99, Z: -20}) >= 0 || s.Dist(assembly.Vec{X: 5.01, Z: -20}) < 0 {
			t.Errorf("%s: the shank is no 10", c.name)
		}
	}
	// Countersunk by ISO 10642, 0.3 under the face: a cone from 22.4 to 10 over 6.2, 16.2 across at half of it.
	out, _ := Screw(b, &parts.Joint{Bolt: &parts.BoltJoint{Head: "countersunk"}}, &plan.JointPlan{Bolt: &plan.BoltPlan{LengthMm: 40, GripMm: 22, SunkMm: 0.3}})
	s := assembly.Of(out...)
	if box := s.Box(); math.Abs(box.High.Z+0.3) > 1e-9 || math.Abs(box.Low.Z+40.3) > 1e-9 || math.Abs(box.Size().X-22.4) > 1e-9 {
		t.Errorf("countersunk: %+v", box)
	}
	if s.Dist(assembly.Vec{X: 8.09, Z: -3.4}) >= 0 || s.Dist(assembly.Vec{X: 8.11, Z: -3.4}) < 0 || s.Dist(assembly.Vec{X: 5.01, Z: -6.6}) < 0 {
		t.Error("countersunk: the cone is no 16.2 at half its height, or no 6.2 high")
	}
}
