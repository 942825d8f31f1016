package assembly

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

// blocks are what is in the way; Free says the same of it.
func blocks(t *testing.T, way Way, movers, fixed []Body, allowed []Allowed) []Block {
	t.Helper()
	out := slices.Collect(way.Blocks(movers, fixed, allowed))
	if free := way.Free(movers, fixed, allowed); free != (len(out) == 0) {
		t.Errorf("free %v, but in the way: %+v", free, out)
	}
	return out
}

// A lid comes down on posts as high as the floor it stands on, more of them than
// one walk looks for, then with one that stands out.
func TestFreePastMany(t *testing.T) {
	t.Parallel()
	lid := Of(Cuboid(Vec{-500, -500, 0}, Vec{500, 500, 10}))
	post := Of(Cuboid(Vec{-3, -3, -40}, Vec{3, 3, 0}))
	var posts []Body
	for i := range 100 {
		posts = append(posts, at(fmt.Sprint("post", i), post, Move(Vec{X: float64(i%10)*90 - 400, Y: float64(i/10)*90 - 400})))
	}
	way := Way{Back: AxisZ, FarMm: 60, FinestMm: 50, Tolerance: Usual}
	if got := blocks(t, way, []Body{still("lid", lid)}, posts, nil); len(got) != 0 {
		t.Errorf("level posts: %+v", got)
	}
	for _, high := range []int{0, 63, 64, 99} {
		raised := slices.Clone(posts)
		raised[high].Pose.At.Z += 20
		if got := blocks(t, way, []Body{still("lid", lid)}, raised, nil); len(got) != 1 || got[0].Fixed != posts[high].ID {
			t.Errorf("post %d stands out: %+v", high, got)
		}
		up := way
		up.Back = AxisZ.Times(-1)
		if got := blocks(t, up, raised, []Body{still("lid", lid)}, nil); len(got) != 1 || got[0].Mover != posts[high].ID {
			t.Errorf("post %d stands out of what comes: %+v", high, got)
		}
	}
}

// A shaft in a housing whose bore is 100 for 30 mm and 80 beyond.
func TestBlocksOnAxis(t *testing.T) {
	t.Parallel()
	shaft := func(collar float64) *Solid { // its collar stands at z 40 to 50 when seated
		return Of(Turned([]ZR{{-50, 30}, {40, 30}, {40, collar}, {50, collar}, {50, 30}, {200, 30}}, nil))
	}
	for _, c := range []struct {
		name   string
		collar float64
		back   Vec
		first  float64 // 0 is free
	}{
		{"a collar that fits the bore", 40, AxisZ.Times(-1), 0},
		{"0.03 more is a sliding contact", 40.03, AxisZ.Times(-1), 0},
		{"0.2 more", 40.2, AxisZ.Times(-1), 20},
		{"5 more, from the back", 45, AxisZ, 20},
	} {
		way := Way{Back: c.back, FarMm: 500, FinestMm: 3, Tolerance: Usual}
		got := blocks(t, way, []Body{still("shaft", shaft(c.collar))}, []Body{still("housing", housing())}, nil)
		if len(got) > 0 != (c.first > 0) {
			t.Errorf("%s: %+v", c.name, got)
			continue
		}
		if c.first > 0 {
			near(t, c.name, got[0].FirstMm, c.first, 1e-6)
			near(t, c.name+" last", got[0].LastMm, 0, 1e-6)
		}
	}
	// A ring behind a shoulder: it sits at z 70 to 80 on a shaft of 30 with a
	// collar of 45 at 10 to 20, and cannot come from the front.
	collar := Of(Turned([]ZR{{-100, 30}, {10, 30}, {10, 45}, {20, 45}, {20, 30}, {100, 30}}, nil))
	ring := Of(Tube(60, 30, 70, 80))
	way := Way{Back: AxisZ.Times(-1), FarMm: 300, FinestMm: 3, Tolerance: Usual}
	got := blocks(t, way, []Body{still("ring", ring)}, []Body{still("shaft", collar)}, nil)
	if len(got) != 1 {
		t.Fatalf("ring: %+v", got)
	}
	near(t, "ring first", got[0].FirstMm, 70, 1e-9)
	near(t, "ring last", got[0].LastMm, 50, 1e-9)
	way.Back = AxisZ
	if got := blocks(t, way, []Body{still("ring", ring)}, []Body{still("shaft", collar)}, nil); len(got) != 0 {
		t.Errorf("ring from the back: %+v", got)
	}
	// Lobes pass between lugs that the whole section would hit.
	lugs := Of(Tube(60, 50, 0, 10), Tube(50, 40, 0, 10)).Cut(Cuboid(Vec{-41, -70, -1}, Vec{41, 70, 11}))
	lobes := Of(Tube(49, 42, -60, -50)).Cut(Cuboid(Vec{-70, -41, -61}, Vec{70, 41, -49}))
	way.Back = AxisZ
	for deg, want := range map[float64]int{0: 0, 90: 1} {
		got := blocks(t, way, []Body{at("lobes", lobes, Rotate(AxisZ, deg))}, []Body{still("lugs", lugs)}, nil)
		if len(got) != want {
			t.Errorf("lobes at %g: %+v", deg, got)
		} else if want == 1 {
			near(t, "lobes", got[0].FirstMm, 70, 1e-9)
			near(t, "lobes last", got[0].LastMm, 50, 1e-9)
		}
	}
	way.Back = AxisZ.Times(-1)
	if got := blocks(t, way, []Body{still("ring", ring)}, []Body{still("shaft", collar)}, []Allowed{{"ring", "shaft", math.Inf(1)}}); len(got) != 0 {
		t.Errorf("allowed: %+v", got)
	}
}

func TestBlocksElsewhere(t *testing.T) {
	t.Parallel()
	base := Of(Cuboid(Vec{-200, -100, -12}, Vec{200, 100, 0}))
	post := Of(Cuboid(Vec{-40, -5, 0}, Vec{40, 5, 150}))
	roof := Of(Cuboid(Vec{-30, -30, 200}, Vec{30, 30, 210}))
	way := Way{Back: AxisZ, FarMm: 500, FinestMm: 5, Tolerance: Usual}
	fixed := []Body{still("base", base), still("roof", roof)}
	got := blocks(t, way, []Body{still("post", post)}, fixed, nil)
	if len(got) != 1 || got[0].Fixed != "roof" {
		t.Fatalf("from above: %+v", got)
	}
	near(t, "first", got[0].FirstMm, 210, 1e-6)
	near(t, "last", got[0].LastMm, 50, 1e-6)
	// Of two thin sheets that touch, the lower comes through the upper until it is below it.
	sheet := func(id string, half, z float64) Body {
		return still(id, Of(Cuboid(Vec{-half, -half, z}, Vec{half, half, z + 0.8})))
	}
	if got = blocks(t, way, []Body{sheet("lower", 30, 0)}, []Body{sheet("upper", 50, 0.8)}, nil); len(got) != 1 {
		t.Fatalf("sheets: %+v", got)
	}
	near(t, "sheet first", got[0].FirstMm, 1.6, 1e-6)
	near(t, "sheet last", got[0].LastMm, 0, 1e-6)
	way.Back = AxisY
	if got := blocks(t, way, []Body{still("post", post)}, fixed, nil); len(got) != 0 {
		t.Errorf("from the side, sliding on the base: %+v", got)
	}
	// A stud through its hole is free along it and not across.
	stud := Of(Cylinder(5, -40, 20).At(Move(Vec{80, 30, 0})))
	way.Back = AxisZ
	if got := blocks(t, way, []Body{still("stud", stud)}, []Body{still("plate", plate())}, nil); len(got) != 0 {
		t.Errorf("stud along its hole: %+v", got)
	}
	way.Back = AxisX
	if got := blocks(t, way, []Body{still("stud", stud)}, []Body{still("plate", plate())}, nil); len(got) != 1 {
		t.Errorf("stud across: %+v", got)
	}
}

func TestGaps(t *testing.T) {
	t.Parallel()
	lid := func(spigot float64) *Solid { // its flange's face at z = 0, its spigot going in
		return Of(Turned([]ZR{{-15, 80}, {0, 80}, {0, 50}, {spigot, 50}}, nil))
	}
	annulus := func(a, b float64) float64 { return math.Pi * (b*b - a*a) }
	for _, c := range []struct {
		name   string
		spigot float64
		shift  float64
		want   []Gap
	}{
		{"closes before the spigot lands", 28, 0, []Gap{{0, annulus(50, 80)}, {2, annulus(40, 50)}}},
		{"the spigot lands first", 31, -1, []Gap{{0, annulus(40, 50)}, {1, annulus(50, 80)}}},
	} {
		a, b := still("h", housing()), at("l", lid(c.spigot), Move(Vec{Z: c.shift}))
		for _, turned := range []bool{false, true} {
			toward := AxisZ
			if turned {
				half := Rotate(AxisX, 180)
				a.Pose, b.Pose, toward = half.Of(a.Pose), half.Of(b.Pose), AxisZ.Times(-1)
			}
			got := Gaps(&a, &b, toward)
			if len(got) != len(c.want) || !Touches(&a, &b, toward, 1e-3) || Touches(&a, &b, toward.Reversed(), 1e-3) {
				t.Errorf("%s: %+v", c.name, got)
				continue
			}
			for i, g := range got {
				near(t, c.name+" gap", g.Mm, c.want[i].Mm, 1e-9)
				near(t, c.name+" area", g.AreaMm2, c.want[i].AreaMm2, 1e-6)
			}
		}
	}
	// A block between two shelves looks at the one ahead alone.
	shelves, block := still("s", Of(Cuboid(Vec{0, 0, 0}, Vec{50, 50, 5}), Cuboid(Vec{0, 0, 60}, Vec{50, 50, 65}))), still("b", Of(Cuboid(Vec{10, 10, 20}, Vec{40, 40, 50})))
	if got := Gaps(&shelves, &block, AxisZ); len(got) != 1 || math.Abs(got[0].Mm-10) > 1e-9 {
		t.Errorf("shelves: %+v", got)
	}
	if !Touches(&shelves, &block, AxisZ, 10.01) || Touches(&shelves, &block, AxisZ, 9.99) || !Touches(&shelves, &block, AxisZ.Reversed(), 15.01) || Touches(&shelves, &block, AxisZ.Reversed(), 14.99) {
		t.Error("a block 10 under one shelf and 15 over the other touches within more or less than that")
	}
	// Over 60 × 60 columns stand in the middles of 60 rows both ways: a step is as wide as those on it, so one at 30.48 as 30 and one at 30.52 as 31.
	for at, rows := range map[float64]float64{30.48: 30, 30.52: 31} {
		for _, across := range []Pose{Still, Rotate(AxisZ, 90)} {
			steps, plate := Body{ID: "s", Solid: Of(Cuboid(Vec{0, 0, 0}, Vec{at, 60, 10}), Cuboid(Vec{0, 0, 0}, Vec{60, 60, 4})), Pose: across}, Body{ID: "p", Solid: Of(Cuboid(Vec{0, 0, 20}, Vec{60, 60, 30})), Pose: across}
			if got := Gaps(&steps, &plate, AxisZ.Times(-1)); len(got) != 2 || math.Abs(got[0].Mm-10)+math.Abs(got[1].Mm-16) > 1e-9 || math.Abs(got[0].AreaMm2-60*rows)+math.Abs(got[1].AreaMm2-60*(60-rows)) > 1e-6 {
				t.Errorf("a step at %g: %+v", at, got)
			}
		}
	}
	// Plates 7 mm apart, half of one over the other.
	a, b := still("a", Of(Cuboid(Vec{0, 0, 0}, Vec{100, 60, 10}))), still("b", Of(Cuboid(Vec{50, 0, -22}, Vec{150, 60, -7})))
	got := Gaps(&a, &b, AxisZ)
	if len(got) != 1 {
		t.Fatalf("plates: %+v", got)
	}
	near(t, "plates", got[0].Mm, 7, 1e-9)
	near(t, "plates' area", got[0].AreaMm2, 3000, 1e-6)
	mm, ok := Clearance(&a, &b, 50, 0.2)
	near(t, "clearance", mm, 7, 1e-6)
	if !ok {
		t.Error("no clearance found")
	}
	b.Pose = Move(Vec{X: 80, Z: 3})
	mm, _ = Clearance(&a, &b, 50, 0.2)
	near(t, "off the corner", mm, math.Hypot(30, 4), 0.2)
	if _, ok := Clearance(&a, &b, 20, 0.2); ok {
		t.Error("a clearance beyond the limit")
	}
	in := still("in", Of(Cuboid(Vec{40, 20, 4}, Vec{60, 40, 6})))
	for _, c := range []struct {
		name string
		b    *Body
		mm   float64
		want bool
	}{{"30.3 apart, looked for to 30", &b, 30, false}, {"to 30.5", &b, 30.5, true}, {"one in the other", &in, 0.1, true}} {
		if got := [2]bool{Near(&a, c.b, c.mm, 2), Near(c.b, &a, c.mm, 2)}; got != [2]bool{c.want, c.want} {
			t.Errorf("near, %s: %v", c.name, got)
		}
	}
}

func TestOpenings(t *testing.T) {
	t.Parallel()
	tube := Of(Tube(84.15, 78.15, 0, 500)).Cut(Cylinder(40, 0, 100).At(Frame(Vec{Z: 200}, AxisY, AxisZ)))
	cover := still("cover", Of(Cuboid(Vec{0, 90, 100}, Vec{100, 96, 300})))
	look := Opening{At: Vec{Y: 100, Z: 200}, Along: AxisY.Times(-1), RadiusMm: 40, ReachMm: 150}
	for _, c := range []struct {
		name   string
		bodies []Body
		shift  float64
		free   float64
		by     string
	}{
		{"over its window", []Body{still("tube", tube)}, 0, 1, ""},
		{"half covered", []Body{still("tube", tube), cover}, 0, 0.5, "cover"},
		{"off its window", []Body{still("tube", tube)}, 120, 0, "tube"},
		{"reach to the far wall", []Body{still("tube", tube)}, 0, 1, ""},
	} {
		o := look
		o.At.Z += c.shift
		free, covers := o.Look(c.bodies)
		near(t, c.name, free, c.free, 0.001)
		if c.by == "" && len(covers) != 0 || c.by != "" && (len(covers) == 0 || covers[0].ID != c.by) {
			t.Errorf("%s: %+v", c.name, covers)
		}
	}
	look.ReachMm = 200 // the wall behind
	if free, _ := look.Look([]Body{still("tube", tube)}); free != 0 {
		t.Errorf("through the far wall: %g", free)
	}
	got := Crossings([]Body{cover, still("tube", tube)}, Vec{Y: 100, X: 10, Z: 200}, AxisY.Times(-1))
	if len(got) != 2 || got[0].ID != "cover" || got[1].ID != "tube" {
		t.Fatalf("crossings: %+v", got)
	}
	near(t, "cover", got[0].ToMm, 10, 1e-9)
	near(t, "far wall", got[1].FromMm, 100+math.Sqrt(78.15*78.15-100), 1e-9)
}
