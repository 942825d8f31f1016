package solid

import (
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/parts"
)

// TestRadialSolid: what a hole, a tapped one, a slot and a window take out of a round of 100 at 3
// o'clock, 30 from the front: as deep as said, from the outside, or from the axis where they go
// through; around along the chord of the arc, 2 · 50 · sin(20 / 100).
func TestRadialSolid(t *testing.T) {
	t.Parallel()
	const chord = 9.9335 // half of it
	for _, c := range []struct {
		shape           parts.RadialShape
		deep            float64
		thread          *threads.Thread
		from            float64
		acrossMm, along float64 // half of each
	}{
		{parts.RadialHole, 12, nil, 38, 10, 10}, {parts.RadialHole, 0, nil, 0, 10, 10}, {parts.RadialHole, 12, &threads.Thread{}, 38, 8.5, 8.5},
		{parts.RadialSlot, 5, nil, 45, chord, 15}, {parts.RadialWindow, 0, nil, 0, chord, 15}, {parts.RadialWindow, 50, nil, 0, chord, 15},
	} {
		f := &part.Radial{In: &parts.Radial{Shape: c.shape, Depth: parts.Length{Mm: c.deep}}, Size: part.Made{FinishedMm: 20, DrillMm: 17, Thread: c.thread},
			Rows: []plan.RadialRow{{Shape: string(c.shape), ClockDeg: 90, AxialMm: 30, OutsideMm: 100, AroundMm: 20, AlongMm: 30, CornerMm: 2}}}
		box := assembly.Of(radial(nil, f)...).Box()
		want := assembly.Box{Low: assembly.Vec{X: c.from, Y: -c.acrossMm, Z: -30 - c.along}, High: assembly.Vec{X: 51, Y: c.acrossMm, Z: -30 + c.along}}
		if box.Low.Sub(want.Low).Len() > 0.001 || box.High.Sub(want.High).Len() > 0.001 {
			t.Errorf("%s %g deep: %v, want %v", c.shape, c.deep, box, want)
		}
	}
}

// TestFlightSectors: a sector of a flight, of 40 on a shaft and 200 outside, is round about the axis: in its middle, at TOP
// of the first, and beside both its radii it reaches from the shaft to the outside, to a thousandth, wound right or left.
func TestFlightSectors(t *testing.T) {
	t.Parallel()
	for _, left := range []bool{false, true} {
		flight := parts.Flight{Shaft: mm(40), Outside: mm(200), Pitch: mm(120), Length: mm(240), Thickness: mm(4), Left: left}
		s := helicoid(&flight)
		// One shorter than a sector, of 10 along the axis, still has both ends: two sectors, to 45°.
		flight.Length = mm(6)
		for deg, metal := range map[float64]bool{44: true, 46: false} {
			if left {
				deg = -deg
			}
			p := assembly.Clock(60, deg)
			if p.Z = -4.5; helicoid(&flight).Dist(p) < 0 != metal {
				t.Errorf("left %v: a short flight at %g°", left, deg)
			}
		}
		for _, deg := range []float64{0, 14.9, -14.9} {
			at := func(radius float64) float64 {
				p := assembly.Clock(radius, deg)
				p.Z = -2
				return s.Dist(p)
			}
			if at(19.999) < 0 || at(20.001) > 0 || at(99.999) > 0 || at(100.001) < 0 {
				t.Errorf("left %v, at %g°: %g and %g at the shaft, %g and %g outside", left, deg, at(19.999), at(20.001), at(99.999), at(100.001))
			}
		}
	}
}
