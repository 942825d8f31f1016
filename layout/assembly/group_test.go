package assembly

import (
	"math"
	"testing"
)

func TestTogether(t *testing.T) {
	t.Parallel()
	steel := Body{ID: "a", Solid: Of(Cuboid(Vec{0, 0, 0}, Vec{100, 100, 10})), Pose: Still, DensityKgM3: 7850}
	motor := Body{ID: "motor", Solid: Of(Cylinder(80, 0, 200)), Pose: Move(Vec{X: 500}), MassKg: 24, DensityKgM3: 7850}
	unknown := at("seal", Of(Tube(40, 30, 0, 8)), Move(Vec{Z: -90}))
	g := Together([]Body{steel, motor, unknown})
	near(t, "mass", g.MassKg, 0.785+24, 1e-9)
	nearVec(t, "centre", g.Centre, Vec{(0.785*50 + 24*500) / 24.785, 0.785 * 50 / 24.785, (0.785*5 + 24*100) / 24.785}, 1e-9)
	if len(g.Unknown) != 1 || g.Unknown[0] != "seal" {
		t.Errorf("unknown: %v", g.Unknown)
	}
	near(t, "box low", g.Box.Low.Z, -90, 1e-9)
	near(t, "box high", g.Box.High.X, 580, 1e-9)
}

// A plate 460 × 340 with a weight hung out ahead of it.
func TestStanding(t *testing.T) {
	t.Parallel()
	plate := Body{ID: "base", Solid: Of(Cuboid(Vec{0, 0, 0}, Vec{460, 340, 18})), Pose: Still, DensityKgM3: 7850}
	plateKg := 460 * 340 * 18 * 7850e-9
	for _, c := range []struct {
		name   string
		ahead  float64 // x of the weight's middle
		weight float64
	}{
		{"over the plate", 230, 65}, {"hung out 300 ahead", -300, 65}, {"hung out, light", -300, 5},
	} {
		load := Body{ID: "load", Solid: Of(Cylinder(50, -20, 20)), Pose: Move(Vec{c.ahead, 170, 200}), MassKg: c.weight}
		x := (plateKg*230 + c.weight*c.ahead) / (plateKg + c.weight)
		z := (plateKg*9 + c.weight*200) / (plateKg + c.weight)
		got, ok := Standing([]Body{plate, load}, AxisZ)
		if !ok || len(got.Feet) != 4 {
			t.Fatalf("%s: %+v", c.name, got)
		}
		want := math.Min(x, 170)
		near(t, c.name, got.MarginMm, want, 1e-6)
		near(t, c.name+" slope", got.TipDeg, math.Atan2(want, z)*180/math.Pi, 1e-6)
		if want < 170 {
			nearVec(t, c.name+" toward", got.Toward, Vec{X: -1}, 1e-9)
		}
	}
	// The tips of two screws 0.5 under it are no feet; of screws alone they are.
	tip := func(x, y float64) Body {
		return Body{ID: "tip", Solid: Of(Cylinder(6, -0.5, 20)), Pose: Move(Vec{x, y, 0}), DensityKgM3: 7850, Bought: true}
	}
	if got, _ := Standing([]Body{plate, tip(20, 50), tip(20, 250)}, AxisZ); len(got.Feet) != 4 || math.Abs(got.MarginMm-170) > 1 {
		t.Errorf("on tips: %+v", got)
	}
	if got, ok := Standing([]Body{tip(0, 0), tip(100, 0), tip(50, 90)}, AxisZ); !ok || got.MarginMm < 20 {
		t.Errorf("on screws alone: %+v", got)
	}
	if _, ok := Standing([]Body{still("x", Of(Cylinder(5, 0, 5)))}, AxisZ); ok {
		t.Error("stands without a mass")
	}
	round := Body{ID: "r", Solid: Of(Cylinder(50, 0, 20)), Pose: Still, DensityKgM3: 7850}
	got, _ := Standing([]Body{round}, AxisZ)
	near(t, "a disc's rim", got.MarginMm, 50, 0.6)
	// Lying on its side it carries on a line.
	if got, ok := Standing([]Body{round}, AxisX); ok && got.MarginMm > 10 {
		t.Errorf("on its side: %+v", got)
	}
}

func TestSlings(t *testing.T) {
	t.Parallel()
	bar := Body{ID: "bar", Solid: Of(Cylinder(40, 0, 1000)), Pose: Frame(Vec{}, AxisX, AxisZ), DensityKgM3: 7850}
	head := Body{ID: "head", Solid: Of(Cylinder(90, 0, 100)), Pose: Frame(Vec{X: 1000}, AxisX, AxisZ), DensityKgM3: 7850}
	x := (1600.0*1000*500 + 8100*100*1050) / (1600*1000 + 8100*100)
	got, ok := Slings([]Body{bar, head}, AxisZ, AxisX, 200)
	if !ok {
		t.Fatal("no place")
	}
	nearVec(t, "first", got.Points[0], Vec{x - 200, 0, 40}, 1e-6)
	nearVec(t, "second", got.Points[1], Vec{x + 200, 0, 40}, 1e-6)
	if got, ok = Slings([]Body{bar, head}, AxisZ, AxisX, 400); !ok || got.IDs != [2]string{"bar", "head"} {
		t.Errorf("%+v", got)
	}
	near(t, "on the head", got.Points[1].Z, 90, 1e-6)
	if _, ok := Slings([]Body{bar, head}, AxisZ, AxisX, 800); ok {
		t.Error("a sling in the air")
	}
}

// A block of 100 × 60 × 40 that bears on four places 15 under its middle, 20 within two of its sides and 40 of the others from that, tips over the nearer ones at
// atan(20 / 15); on two places, or on none, nothing stands.
func TestStandingOn(t *testing.T) {
	t.Parallel()
	block, at := []Body{{ID: "b", Solid: Of(Cuboid(Vec{}, Vec{100, 60, 40})), Pose: Still, DensityKgM3: 7850}}, []Vec{{10, 10, 5}, {90, 10, 5}, {90, 50, 5}, {10, 50, 5}}
	got, ok := StandingOn(block, at, AxisZ)
	if !ok || len(got.Feet) != 4 || got.Feet[0].Z != 5 || math.Abs(got.MarginMm-20) > 1e-9 || math.Abs(got.TipDeg-math.Atan2(20, 15)*180/math.Pi) > 1e-9 {
		t.Errorf("%+v, %v", got, ok)
	}
	for n := range 3 {
		if _, ok := StandingOn(block, at[:n], AxisZ); ok {
			t.Errorf("it stands on %d places", n)
		}
	}
}

// A step comes down on a plate of 60 × 60 with half of it 0.25 and half 0.75 off: it bears in the columns of the half that is nearer than asked, at its own face.
func TestContact(t *testing.T) {
	t.Parallel()
	plate, step := still("p", Of(Cuboid(Vec{}, Vec{60, 60, 10}))), still("s", Of(Cuboid(Vec{0, 0, 10.25}, Vec{30, 60, 20}), Cuboid(Vec{30, 0, 10.75}, Vec{60, 60, 20})))
	for within, want := range map[float64]int{0.25: 0, 0.5: 30 * 60, 0.76: 60 * 60} {
		got := Contact(&plate, &step, AxisZ.Times(-1), within)
		if len(got) != want {
			t.Errorf("within %g: %d places", within, len(got))
		}
		for _, p := range got {
			if math.Abs(p.Z-10.25) > 1e-9 && (within < 0.75 || p.X < 30 || math.Abs(p.Z-10.75) > 1e-9) {
				t.Fatalf("within %g: at %v", within, p)
			}
		}
	}
}
