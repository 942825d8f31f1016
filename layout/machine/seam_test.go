package machine

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestUnmetBounds: holes of 9 and 12 that face one another half a millimetre apart: within 1.5 and a quarter they meet, of other
// names they are two from 10.5 on.
func TestUnmetBounds(t *testing.T) {
	t.Parallel()
	m := Of(&parts.Job{}, nil, nil)
	holes := func(name string, mm float64, out assembly.Vec, at ...assembly.Vec) *stand.Faced {
		return &stand.Faced{Body: &assembly.Body{ID: name}, At: at, Out: out, Group: &part.Group{Hole: &parts.HoleGroup{}, Size: part.Made{FinishedMm: mm}, Group: &plan.Group{Name: name}}}
	}
	for _, c := range []struct {
		name        string
		off, apart  float64
		used, again bool // whether a joint uses one, whether both look the same way
		want        float64
	}{
		{"x", 1.74, 0, false, false, 0}, {"x", 1.76, 0, false, false, 1.76}, {"x", 10.6, 0, false, false, 10.6}, {"y", 1.76, 0, false, false, 1.76}, {"y", 10.49, 0, false, false, 10.49}, {"y", 10.51, 0, false, false, 0},
		{"y", 5, 0.5, false, false, 5.02}, {"y", 5, -0.5, false, false, 5.02}, {"y", 5, 0.51, false, false, 0}, {"y", 5, -0.51, false, false, 0}, {"y", 5, 0, true, false, 0}, {"y", 5, 0, false, true, 0},
	} {
		f, g := holes("x", 9, assembly.AxisZ, assembly.Vec{}), holes(c.name, 12, assembly.AxisZ.Times(-1), assembly.Vec{X: c.off, Z: c.apart}, assembly.Vec{X: 90, Z: c.apart})
		if c.again {
			g.Out = f.Out
		}
		for _, pair := range [][2]*stand.Faced{{f, g}, {g, f}} {
			pair[1].Used = c.used
			got, worst := m.unmet(&plan.JointPlan{}, pair[0], pair[1]), 0.0
			for _, p := range got {
				worst = p.Args[4].Value
			}
			if pair[1].Used = false; worst != c.want {
				t.Errorf("%+v: %g", c, worst)
			}
		}
	}
	// Each is to meet the nearest of the others, and the worst is told: of three 2, 3 and 4 beside, the last.
	f, g := holes("x", 9, assembly.AxisZ, assembly.Vec{}, assembly.Vec{X: 40}, assembly.Vec{Y: 40}), holes("x", 9, assembly.AxisZ.Times(-1), assembly.Vec{X: 42}, assembly.Vec{Y: 43}, assembly.Vec{X: 4})
	if p := m.unmet(&plan.JointPlan{}, f, g); len(p) != 1 || math.Abs(p[0].Args[4].Value-4) > geom.CloseMm {
		t.Errorf("%+v", p)
	}
}

// TestFirstTied: the first joint that ties a body is found, of what is bought or clamped as well.
func TestFirstTied(t *testing.T) {
	t.Parallel()
	s := &Stage{Ends: [][]string{{"a#1", "b#1", "one screw 1"}, {"c#1", "a#1", "plate#1"}}}
	for id, want := range map[string]int{"a#1": 0, "b#1": 0, "one screw 1": 0, "c#1": 1, "plate#1": 1, "d#1": -1} {
		if got := s.First(id); got != want {
			t.Errorf("%s: %d", id, got)
		}
	}
}

// TestOnFloor: of two joints, after the first what it ties to the body on the floor stands there, after both all of it; where nothing
// stands on a floor nothing does.
func TestOnFloor(t *testing.T) {
	t.Parallel()
	s := &Stage{Machine: &Machine{Stand: &stand.Stand{Bodies: []assembly.Body{{ID: "a#1"}, {ID: "b#1"}, {ID: "c#1"}}}}, HasFloor: true, Lowest: 1, ties: map[string][]tie{}}
	s.tie("a#1", "b#1", tie{n: 0})
	s.tie("a#1", "c#1", tie{n: 1})
	for n, want := range []map[string]bool{{"a#1": false, "b#1": true, "c#1": false}, {"a#1": true, "b#1": true, "c#1": false}, {"a#1": true, "b#1": true, "c#1": true}} {
		for id, on := range want {
			if s.OnFloor(n, id) != on {
				t.Errorf("%s after %d: %v", id, n, !on)
			}
		}
	}
	if s.HasFloor = false; s.OnFloor(2, "b#1") {
		t.Error("on no floor")
	}
}

// TestOpeningOf: an opening at 3 o'clock, 30 behind the front of a round of 100, looks out to the right of it; of the round
// on its side, with its front up, it lies 30 lower.
func TestOpeningOf(t *testing.T) {
	t.Parallel()
	row := &plan.RadialRow{ClockDeg: 90, AxialMm: 30, OutsideMm: 100}
	for _, c := range []struct{ pose, want assembly.Pose }{
		{assembly.Still, assembly.Pose{At: assembly.Vec{X: 50, Z: -30}, Z: assembly.AxisX}},
		{assembly.Move(assembly.Vec{X: 1, Y: 2, Z: 3}).Of(assembly.Frame(assembly.Vec{}, assembly.AxisY, assembly.AxisZ)), assembly.Pose{At: assembly.Vec{X: -49, Y: -28, Z: 3}, Z: assembly.AxisX.Reversed()}},
	} {
		if o := openingOf(&assembly.Body{Pose: c.pose}, row); o.At.Sub(c.want.At).Len()+o.Along.Sub(c.want.Z).Len() > 1e-9 {
			t.Errorf("%+v: at %v, along %v", c.pose, o.At, o.Along)
		}
	}
}

// TestRodBefore: a gun 15 wide and 60 long goes to an opening at 3 o'clock in a round of 100. A rod stands before it within
// that length and within its outermost looks, √(11/12) of its half width out, 7.18.
func TestRodBefore(t *testing.T) {
	t.Parallel()
	body, opening := &assembly.Body{Pose: assembly.Still}, &part.Radial{Rows: []plan.RadialRow{{ClockDeg: 90, AxialMm: 30, OutsideMm: 100}}}
	for _, c := range []struct {
		x, y float64
		want bool
	}{{109.5, -5, true}, {110.5, -5, false}, {60, 7.1, true}, {60, 7.3, false}, {60, -17.1, true}, {60, -17.3, false}, {-110, -5, false}} {
		low := assembly.Vec{X: c.x, Y: c.y, Z: -40}
		if got := rodBefore(&assembly.Body{Solid: assembly.Of(assembly.Cuboid(low, low.Add(assembly.Vec{X: 10, Y: 10, Z: 20}))), Pose: assembly.Still}, body, opening); got != c.want {
			t.Errorf("a rod from %g, %g on: %v", c.x, c.y, got)
		}
	}
}
