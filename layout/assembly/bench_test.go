package assembly

import (
	"fmt"
	"testing"
)

// machine is a stack of flanges bolted two and two: n flanges of eight bolts.
func machine(n int) []Body {
	flange := Of(Tube(130, 84, 0, 12))
	for deg := 0.0; deg < 360; deg += 45 {
		flange = flange.Cut(Cylinder(5.5, -1, 13).At(Move(Clock(110, deg))))
	}
	bolt := Of(Cylinder(5, -30, 0), Hexagon(17, 0, 6.4))
	tube := Of(Tube(84, 78, -500, 0))
	var out []Body
	for i := range n {
		z := 250 * float64(i)
		add := func(id string, s *Solid, p Pose) {
			out = append(out, Body{ID: fmt.Sprint(id, i), Solid: s, Pose: p, DensityKgM3: 7850})
		}
		add("flange", flange, Move(Vec{Z: z}))
		add("under", flange, Move(Vec{Z: z - 12}))
		add("tube", tube, Move(Vec{Z: z}))
		for deg := 0.0; deg < 360; deg += 45 {
			add(fmt.Sprint("bolt", deg), bolt, Move(Clock(110, deg).Add(Vec{Z: z + 12})))
		}
	}
	return out
}

func BenchmarkOverlaps(b *testing.B) {
	for _, n := range []int{1, 4, 18} {
		bodies := machine(n)
		b.Run(fmt.Sprint(len(bodies), "-bodies"), func(b *testing.B) {
			for b.Loop() {
				Overlaps(bodies, nil, Usual)
			}
		})
	}
}

func BenchmarkTogether(b *testing.B) {
	for _, n := range []int{1, 18} {
		bodies := machine(n)
		b.Run(fmt.Sprint(len(bodies), "-bodies"), func(b *testing.B) {
			for b.Loop() {
				Together(bodies)
			}
		})
	}
}

func BenchmarkLook(b *testing.B) {
	for _, n := range []int{1, 18} {
		bodies := machine(n)
		b.Run(fmt.Sprint(len(bodies), "-bodies"), func(b *testing.B) {
			for b.Loop() {
				Look(bodies, Frame(Vec{}, AxisX, AxisY), 4)
			}
		})
	}
}

func BenchmarkBlocks(b *testing.B) {
	bodies := machine(18)
	way := Way{Back: AxisZ, FarMm: 600, FinestMm: 6, Tolerance: Usual}
	for _, n := range []int{1, 11} {
		b.Run(fmt.Sprint(n, "-movers"), func(b *testing.B) {
			for b.Loop() {
				for range way.Blocks(bodies[:n], bodies[n:], nil) { // all of them
				}
			}
		})
	}
}
