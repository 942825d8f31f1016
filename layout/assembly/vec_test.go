package assembly

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func anyVec(t *rapid.T, name string, most float64) Vec {
	f := func(axis string) float64 { return rapid.Float64Range(-most, most).Draw(t, name+axis) }
	return Vec{f("x"), f("y"), f("z")}
}

func anyPose(t *rapid.T) Pose {
	axis := anyVec(t, "axis", 1)
	if axis.Len() < 1e-3 {
		axis = AxisX
	}
	return Rotate(axis, rapid.Float64Range(-360, 360).Draw(t, "deg")).Shifted(anyVec(t, "move", 500))
}

func TestPoses(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p, q, v := anyPose(t), anyPose(t), anyVec(t, "v", 1000)
		if d := p.Inverse().Apply(p.Apply(v)).Sub(v).Len(); d > 1e-8 {
			t.Fatalf("inverse is off by %g", d)
		}
		if d := p.Of(q).Apply(v).Sub(p.Apply(q.Apply(v))).Len(); d > 1e-8 {
			t.Fatalf("of is off by %g", d)
		}
		if d := math.Abs(p.Turn(v).Len() - v.Len()); d > 1e-8 {
			t.Fatalf("a turn stretches by %g", d)
		}
		if d := p.X.Cross(p.Y).Sub(p.Z).Len(); d > 1e-9 {
			t.Fatalf("left-handed by %g", d)
		}
		if mm, deg := apart(p, p); mm != 0 || deg > 1e-9 {
			t.Fatalf("apart from itself by %g mm, %g°", mm, deg)
		}
	})
}

func TestTurns(t *testing.T) {
	t.Parallel()
	nearVec(t, "a quarter about z", Rotate(AxisZ, 90).Apply(AxisX), AxisY, 0)
	nearVec(t, "3 o'clock", Clock(50, 90), Vec{X: 50}, 0)
	nearVec(t, "half past", Clock(50, 180), Vec{Y: -50}, 0)
	near(t, "clock", ClockDeg(Vec{-3, 0, 9}), 270, 1e-12)
	for _, deg := range []float64{0.001, 30, 90, 179.9, 180} {
		_, got := apart(Still, Rotate(Vec{1, 2, -2}, deg))
		near(t, "turn between", got, deg, 1e-6)
	}
	mm, _ := apart(Still, Move(Vec{3, 4, 0}))
	near(t, "moved", mm, 5, 0)
	f := Frame(Vec{1, 2, 3}, Vec{X: 2}, Vec{X: 5, Z: 1})
	nearVec(t, "frame z", f.Z, AxisX, 0)
	nearVec(t, "frame y", f.Y, AxisZ, 0)
	nearVec(t, "frame right-handed", f.X.Cross(f.Y), f.Z, 1e-12)
}

// apart is how far two poses differ: the distance of their origins in mm and
// the least turn between them in degrees, 0 to 180.
func apart(p, q Pose) (mm, deg float64) {
	return q.At.Sub(p.At).Len(), turnBetween(p, q).Len() * 180 / math.Pi
}

// TestRound: six ways round the axis of a part lie 60° apart, from its TOP on; of an axis that leans they lie across it.
func TestRound(t *testing.T) {
	for k, way := range Round(AxisZ, 6) {
		if deg := math.Mod(360-float64(60*k), 360); way.Sub(ClockWay(deg)).Len() > 1e-12 {
			t.Errorf("%d: %v, want %v° on the clock", k, way, deg)
		}
	}
	lean := Vec{X: 0.6, Z: 0.8}
	for _, way := range Round(lean, 5) {
		if math.Abs(way.Dot(lean)) > 1e-12 || math.Abs(way.Len()-1) > 1e-12 {
			t.Errorf("%v is not across %v", way, lean)
		}
	}
}
