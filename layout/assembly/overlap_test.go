package assembly

import (
	"math"
	"slices"
	"testing"

	"centrepop/parts/geom"

	"pgregory.net/rapid"
)

func still(id string, s *Solid) Body { return Body{ID: id, Solid: s, Pose: Still} }

func at(id string, s *Solid, p Pose) Body { return Body{ID: id, Solid: s, Pose: p} }

// housing is a ring with a bore of 100 in steps: 100 for 30, then 80.
func housing() *Solid {
	return Of(Turned([]ZR{{0, 80}, {60, 80}}, []ZR{{0, 50}, {30, 50}, {30, 40}, {60, 40}}))
}

func TestOverlapOfTurned(t *testing.T) {
	t.Parallel()
	spigot := func(r, long float64) *Solid { return Of(Turned([]ZR{{-20, 70}, {0, 70}, {0, r}, {long, r}}, nil)) }
	for _, c := range []struct {
		name    string
		part    Body
		allowed float64
		depth   float64 // 0 is no overlap
	}{
		{"slides in", still("s", spigot(50, 25)), 0, 0},
		{"0.2 too large", still("s", spigot(50.2, 25)), 0, 0.2},
		{"0.2 too large and allowed", still("s", spigot(50.2, 25)), 0.21, 0},
		{"as a press fit of less", still("s", spigot(50.2, 25)), 0.1, 0.2},
		{"0.03 too large, a contact", still("s", spigot(50.03, 25)), 0, 0},
		{"touches the floor", still("s", spigot(50, 30)), 0, 0},
		{"0.2 too long", still("s", spigot(50, 30.2)), 0, 0.2},
		{"the other way round", at("s", spigot(50.2, 25), Rotate(AxisX, 180).Shifted(Vec{Z: 100})), 0, 0},
		{"from the other end", at("s", spigot(40.2, 25), Rotate(AxisX, 180).Shifted(Vec{Z: 60})), 0, 0.2},
		{"the same place", still("s", housing()), 0, 15},
		{"turned about the axis", at("s", spigot(50.2, 25), Rotate(AxisZ, 33)), 0, 0.2},
	} {
		got := Overlaps([]Body{still("h", housing()), c.part}, []Allowed{{"s", "h", c.allowed}}, Usual)
		if (len(got) > 0) != (c.depth > 0) {
			t.Errorf("%s: %+v", c.name, got)
			continue
		}
		if len(got) > 0 {
			near(t, c.name, got[0].DepthMm, c.depth, 1e-6)
		}
	}
}

// A pin beside the axis goes through a hole of one ring and meets the other.
func TestOverlapOfTurnedWithHoles(t *testing.T) {
	t.Parallel()
	ring := Of(Tube(60, 30, 0, 10))
	for deg := 0.0; deg < 360; deg += 60 {
		ring = ring.Cut(Cylinder(9, -1, 11).At(Move(Clock(45, deg))))
	}
	studs := Of(Tube(60, 55, 0, 10)) // a rim in the same place
	if got := Overlaps([]Body{still("a", ring), still("b", studs)}, nil, Usual); len(got) != 1 {
		t.Errorf("rim: %+v", got)
	}
	// A ring that lies wholly in a groove that a cut has made is free.
	grooved := Of(Tube(60, 30, 0, 10)).Cut(Tube(50, 40, 5, 11))
	if got := Overlaps([]Body{still("a", grooved), still("b", Of(Tube(50, 40, 5, 9)))}, nil, Usual); len(got) != 0 {
		t.Errorf("groove: %+v", got)
	}
}

func TestOverlapElsewhere(t *testing.T) {
	t.Parallel()
	base := still("base", Of(Cuboid(Vec{-200, -100, -12}, Vec{200, 100, 0})))
	post := Of(Cuboid(Vec{-40, -5, 0}, Vec{40, 5, 150}))
	bolt := Of(Cylinder(5, -30, 0), Hexagon(17, 0, 6.4))
	for _, c := range []struct {
		name  string
		a, b  Body
		depth float64
	}{
		{"stands on it", base, still("p", post), 0},
		{"1 mm in it", base, at("p", post, Move(Vec{Z: -1})), 1},
		{"below it", base, at("p", post, Move(Vec{Z: -161})), 1},
		{"tilted, a corner 2 deep", base, at("p", post, Rotate(AxisY, 30).Shifted(Vec{Z: 40*math.Sin(math.Pi/6) - 2})), 2},
		{"bolt in its hole", still("plate", plate()), at("b", bolt, Move(Vec{80, 30, 0})), 0},
		{"bolt 1 mm off its hole", still("plate", plate()), at("b", bolt, Move(Vec{81.5, 30, 0})), 1},
		{"bolt with no hole", still("plate", plate()), at("b", bolt, Move(Vec{50, 0, 0})), 6},
		{"the same plate twice", still("a", plate()), still("b", plate()), 6},
		{"pipe through a wall", still("a", plate()), at("b", Of(Tube(20, 18, -50, 50)), Move(Vec{45, 0, 0})), 6},
		{"pipe through the bore", still("a", plate()), at("b", Of(Tube(29, 25, -50, 50)), Move(Vec{1, 0, 0})), 0},
		{"small pin in a large plate", base, at("b", Of(Cylinder(1.5, -3, 40)), Move(Vec{133, 71, 0})), 3},
		{"plates side by side", base, at("b", base.Solid, Move(Vec{X: 400})), 0},
		{"a plate 1 mm into its neighbour", base, at("b", base.Solid, Move(Vec{X: 399})), 1},
	} {
		got := Overlaps([]Body{c.a, c.b}, nil, Usual)
		back := Overlaps([]Body{c.b, c.a}, nil, Usual)
		if (len(got) > 0) != (c.depth > 0) || len(back) != len(got) {
			t.Errorf("%s: %+v, swapped %+v", c.name, got, back)
			continue
		}
		if len(got) == 0 {
			continue
		}
		near(t, c.name, got[0].DepthMm, c.depth, 0.12*c.depth)
		near(t, c.name+" swapped", back[0].DepthMm, got[0].DepthMm, 1e-9)
	}
}

// What is exactly as deep as the tolerance is a contact wherever the machine
// stands; 0.01 mm more is none.
func TestOverlapAtTheTolerance(t *testing.T) {
	t.Parallel()
	spigot := Of(Turned([]ZR{{-20, 70}, {0, 70}, {0, 50}, {30, 50}}, nil))
	base := still("a", Of(Cuboid(Vec{-200, -100, -12}, Vec{200, 100, 0})))
	tilted := at("b", housing(), Rotate(AxisX, 5).Shifted(Vec{Z: 80 * math.Sin(5*math.Pi/180)}))
	for _, c := range []struct {
		name string
		a, b Body
		deep Vec // moves b by 1 mm into a
		at   float64
	}{
		{"a tilted ring on a plate", base, tilted, AxisZ.Times(-1), Usual.OtherMm},
		{"a plate on a plate", still("a", plate()), at("b", plate(), Move(Vec{20, 10, 12})), AxisZ.Times(-1), Usual.OtherMm},
		{"a spigot in its bore", still("a", housing()), still("b", spigot), AxisZ, Usual.CoaxialMm},
	} {
		for k := range 40 {
			machine := Rotate(Vec{1, float64(k), -2}, 17*float64(k)).Shifted(Vec{31 * float64(k), -7, 0.1 * float64(k)})
			for _, more := range []float64{0, 0.01} {
				a, b := c.a, c.b
				b.Pose = machine.Of(b.Pose.Shifted(c.deep.Times(c.at + more)))
				a.Pose = machine.Of(a.Pose)
				if got := Overlaps([]Body{a, b}, nil, Usual); (len(got) > 0) != (more > 0) {
					t.Errorf("%s, %g mm more, move %d: %+v", c.name, more, k, got)
				}
			}
		}
	}
}

// A move of everything changes nothing but what lies at the tolerance, and the
// two bodies may change places.
func TestOverlapMovesWithTheMachine(t *testing.T) {
	t.Parallel()
	solids := []*Solid{plate(), housing(), Of(Hexagon(40, 0, 20)), Of(Cylinder(8, -40, 40)), Of(SquareToRound(geom.Point{XMm: 90, YMm: 70}, 0, 25, geom.Point{}, 60))}
	rapid.Check(t, func(t *rapid.T) {
		one := rapid.SampledFrom(solids).Draw(t, "a")
		two := rapid.SampledFrom(solids).Draw(t, "b")
		a, b := still("a", one), at("b", two, anyPose(t))
		b.Pose.At = b.Pose.At.Times(0.15)
		first := Overlaps([]Body{a, b}, nil, Usual)
		other := Overlaps([]Body{b, a}, nil, Usual)
		if len(first) != len(other) || len(first) > 0 && math.Abs(first[0].DepthMm-other[0].DepthMm) > 1e-9 {
			t.Fatalf("%+v, swapped %+v", first, other)
		}
		move := anyPose(t)
		a.Pose, b.Pose = move.Of(a.Pose), move.Of(b.Pose)
		moved := Overlaps([]Body{a, b}, nil, Usual)
		if len(first) == 0 || len(moved) == 0 {
			for _, o := range slices.Concat(first, moved) { // one found it
				if o.DepthMm < Usual.OtherMm+1e-3 {
					continue // at the tolerance, where the finest pieces decide
				}
				t.Fatalf("%+v, moved %+v", first, moved)
			}
			return
		}
		if d := math.Abs(first[0].DepthMm - moved[0].DepthMm); d > 1e-3 {
			t.Fatalf("depth %g, moved %g", first[0].DepthMm, moved[0].DepthMm)
		}
	})
}
