package assembly

import (
	"math"
	"testing"
)

// A point beyond a corner by 3, 4 and 12 is 13 away.
func TestWithinOfABox(t *testing.T) {
	t.Parallel()
	b := Box{Low: Vec{0, 0, 0}, High: Vec{10, 20, 30}}
	for _, c := range []struct {
		p    Vec
		mm   float64
		want bool
	}{
		{Vec{13, 24, 42}, 13.001, true}, {Vec{13, 24, 42}, 13, false}, {Vec{13, 24, 42}, 12.999, false}, {Vec{-3, -4, -12}, 13.001, true}, {Vec{-3, -4, -12}, 12.999, false},
		{Vec{10, 20, 30}, 0, true}, {Vec{0, 0, 0}, 0, true}, {Vec{5, 5, 5}, -1, true}, {Vec{11, 5, 5}, 0, false}, {Vec{11, 5, 5}, -2, false}, {Vec{5, 22, 5}, 2.1, true}, {Vec{5, 5, 32.2}, 2.1, false},
	} {
		if got := b.within(c.p, c.mm); got != c.want {
			t.Errorf("%v within %g: %v", c.p, c.mm, got)
		}
	}
	far := Box{Low: Vec{12, 0, 0}, High: Vec{13, 20, 30}}
	for axis, turned := range []func(Vec) Vec{func(p Vec) Vec { return p }, func(p Vec) Vec { return Vec{p.Y, p.X, p.Z} }, func(p Vec) Vec { return Vec{p.Z, p.Y, p.X} }} {
		near, far := Box{turned(b.Low), turned(b.High)}, Box{turned(far.Low), turned(far.High)}
		if !near.Meets(far, 2) || near.Meets(far, 1.99) || !far.Meets(near, 2) || far.Meets(near, 1.99) {
			t.Errorf("axis %d: 2 mm between boxes", axis)
		}
	}
}

// A line of sight is blocked by one stretch of metal, not by the sum of two: through two
// plates of 3 with 4 between.
func TestBlocksInOneGo(t *testing.T) {
	t.Parallel()
	s := Of(Cuboid(Vec{-5, -5, 0}, Vec{5, 5, 3}), Cuboid(Vec{-5, -5, 7}, Vec{5, 5, 10}))
	for _, c := range []struct {
		length, least float64
		want          bool
	}{{100, 2.9, true}, {100, 3, false}, {100, 3.1, false}, {100, 5.9, false}, {6.8, 0.7, true}, {6.8, 0.9, false}, {5, 0.01, false}} {
		if got := s.blocks(Vec{1, 1, -6}, AxisZ, c.length, 0, c.least); got != c.want {
			t.Errorf("over %g, %g at least: %v", c.length, c.least, got)
		}
	}
}

// The faces of a shape lie on it: no point of one is off its box, and together they reach
// all of its sides.
func TestFacesLieOnTheShape(t *testing.T) {
	t.Parallel()
	for _, c := range shapesByFormula {
		for _, one := range c.solid.add {
			of := nothing()
			box := one.shape.box()
			for _, f := range one.shape.faces() {
				for i := range 5 {
					for k := range 5 {
						p := f.point(f.a0+(f.a1-f.a0)*float64(i)/4, f.b0+(f.b1-f.b0)*float64(k)/4)
						of = of.With(p)
						if !box.within(p, 1e-6) {
							t.Fatalf("%s: %v of a face is outside %v", c.name, p, box)
						}
						if f.centre.Sub(p).Len() > f.reach+1e-6 && math.Abs(f.reach) > 0 {
							t.Errorf("%s: %v is further than %g from %v", c.name, p, f.reach, f.centre)
						}
					}
				}
			}
			if of.Low.Sub(box.Low).Len()+of.High.Sub(box.High).Len() > 0.03*box.High.Sub(box.Low).Len() {
				t.Errorf("%s: faces reach %v, the shape %v", c.name, of, box)
			}
		}
	}
}

func TestLooks(t *testing.T) {
	t.Parallel()
	for z, want := range map[float64]int{1: 1, 2e-9: 1, 1e-9: 0, 0: 0, -1e-9: 0, -2e-9: -1, -1: -1} {
		if got := looks(Vec{X: 1, Z: z}, AxisZ); got != want {
			t.Errorf("a normal with %g: %d, want %d", z, got, want)
		}
	}
}
