package assembly

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestSolveTree(t *testing.T) {
	t.Parallel()
	meets := []Meet{
		{ID: "lug-1", A: "plate", B: "lug#1", OnA: Move(Vec{X: -150}), OnB: Still},
		{ID: "lug-2", A: "plate", B: "lug#2", OnA: Move(Vec{X: 150}).Of(Rotate(AxisZ, 90)), OnB: Move(Vec{Y: 10})},
		{ID: "pin", A: "pin", B: "lug#2", OnA: Still, OnB: Move(Vec{Z: 40}), Free: []Freedom{TurnZ}},
		{ID: "cap", A: "lid", B: "box", OnA: Still, OnB: Still},
	}
	got := Solve("plate", meets)
	nearVec(t, "lug 1", got.At["lug#1"].At, Vec{X: -150}, 1e-12)
	nearVec(t, "lug 2", got.At["lug#2"].At, Vec{X: 160}, 1e-12)
	nearVec(t, "pin, against the meet's way", got.At["pin"].At, Vec{160, 0, 40}, 1e-12)
	if len(got.At) != 4 { // neither box nor lid
		t.Errorf("placed: %v", got.At)
	}
	if !slices.Equal(got.Open, []Open{{"pin", "pin", TurnZ}}) || len(got.Missed) != 0 {
		t.Errorf("open %v, missed %v", got.Open, got.Missed)
	}
}

// A flange on a tube: the fit leaves turn and slide, the face takes the slide,
// a port in line takes the turn.
func TestSolveFreedoms(t *testing.T) {
	t.Parallel()
	fit := Meet{ID: "fit", A: "tube", B: "flange", OnA: Still, OnB: Still, Free: []Freedom{SlideZ, TurnZ}}
	face := Meet{ID: "face", A: "tube", B: "flange", OnA: Move(Vec{Z: 120}), OnB: Move(Vec{Z: -12}),
		Free: []Freedom{SlideX, SlideY, TurnZ}}
	port := Meet{ID: "port", A: "tube", B: "flange", OnA: Rotate(AxisZ, 75), OnB: Rotate(AxisZ, 30),
		Free: []Freedom{SlideX, SlideY, SlideZ, TurnX, TurnY}}
	for _, c := range []struct {
		name  string
		meets []Meet
		open  []Freedom
		z     float64
		deg   float64
	}{
		{"the fit alone", []Meet{fit}, []Freedom{SlideZ, TurnZ}, 0, 0},
		{"and the face", []Meet{fit, face}, []Freedom{TurnZ}, 132, 0},
		{"and the port", []Meet{fit, face, port}, nil, 132, 45},
	} {
		got := Solve("tube", c.meets)
		var open []Freedom
		for _, o := range got.Open {
			open = append(open, o.Free)
		}
		if !slices.Equal(open, c.open) || len(got.Missed) != 0 {
			t.Errorf("%s: open %v, missed %v", c.name, got.Open, got.Missed)
		}
		near(t, c.name+" z", got.At["flange"].At.Z, c.z, 1e-6)
		_, deg := apart(Still, got.At["flange"])
		near(t, c.name+" turn", deg, c.deg, 1e-6)
	}
}

// A frame of four bars with a bar 3 mm too short does not close.
func TestSolveMismatch(t *testing.T) {
	t.Parallel()
	side := func(long float64) Pose { return Move(Vec{X: long}).Of(Rotate(AxisZ, 90)) }
	for _, c := range []struct {
		name    string
		last    float64
		tilt    float64
		mm, deg float64
	}{{"closes", 300, 0, 0, 0}, {"3 short", 297, 0, 3, 0}, {"2° off", 300, 2, 0, 2}} {
		meets := []Meet{
			{ID: "1", A: "a", B: "b", OnA: side(500), OnB: Still},
			{ID: "2", A: "b", B: "c", OnA: side(300), OnB: Still},
			{ID: "3", A: "c", B: "d", OnA: side(500), OnB: Still},
			{ID: "4", A: "d", B: "a", OnA: side(c.last), OnB: Rotate(AxisX, c.tilt)},
		}
		got := Solve("a", meets)
		if (len(got.Missed) == 1) != (c.mm+c.deg > 0) {
			t.Errorf("%s: %+v", c.name, got.Missed)
			continue
		}
		if len(got.Missed) == 1 {
			near(t, c.name, got.Missed[0].Mm, c.mm, 1e-6)
			near(t, c.name+" turn", got.Missed[0].Deg, c.deg, 1e-6)
			if by := got.Missed[0].By; !slices.Equal(by, []string{"1", "2", "3"}) {
				t.Errorf("%s: placed by %q", c.name, by)
			}
		}
	}
}

// A slide that two meets pull two ways ends halfway and says what it misses.
func TestSolveSharesAMiss(t *testing.T) {
	t.Parallel()
	on := func(z float64) Meet {
		return Meet{ID: "stop", A: "rail", B: "shoe", OnA: Move(Vec{Z: z}), OnB: Still, Free: []Freedom{SlideX}}
	}
	rail := Meet{ID: "rail", A: "rail", B: "shoe", OnA: Still, OnB: Still, Free: []Freedom{SlideZ}}
	got := Solve("rail", []Meet{rail, on(10), on(14)})
	near(t, "halfway", got.At["shoe"].At.Z, 12, 1e-4)
	if len(got.Missed) != 2 {
		t.Fatalf("missed %v", got.Missed)
	}
	near(t, "miss", got.Missed[0].Mm, 2, 1e-4)
}

// Whichever of two is the root, the other stands the same way to it.
func TestSolveFromEitherEnd(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		onA, onB := anyPose(t), anyPose(t)
		meets := []Meet{{ID: "m", A: "a", B: "b", OnA: onA, OnB: onB}}
		got := Solve("a", meets)
		mm, deg := apart(got.At["a"].Of(onA), got.At["b"].Of(onB))
		if mm > 1e-7 || deg > 1e-5 {
			t.Fatalf("frames apart by %g mm, %g°", mm, deg)
		}
		back := Solve("b", meets)
		mm, deg = apart(back.At["a"].Of(got.At["b"]), Still)
		if mm > 1e-6 || deg > 1e-5 || math.IsNaN(mm) {
			t.Fatalf("back apart by %g mm, %g°", mm, deg)
		}
	})
}

// What places one part of a joint by the other leaves out what leads to both, whichever
// stands first, and names each joint once.
func TestSolvePath(t *testing.T) {
	t.Parallel()
	meets := []Meet{
		{ID: "to the ring", A: "root", B: "a"}, {ID: "left", A: "b", B: "a"}, {ID: "right", A: "a", B: "c"}, {ID: "right", A: "c", B: "d"},
		{ID: "closes", A: "d", B: "b", OnA: Move(Vec{X: 1})},
	}
	for i := range meets {
		if meets[i].ID != "closes" {
			meets[i].OnA = Still
		}
		meets[i].OnB = Still
	}
	for root, want := range map[string][]string{"root": {"left", "right"}, "c": {"closes", "right"}} { // from c, what misses is left
		got := Solve(root, meets)
		if len(got.Missed) != 1 {
			t.Fatalf("from %s: missed %+v", root, got.Missed)
		}
		by := slices.Sorted(slices.Values(got.Missed[0].By))
		if !slices.Equal(by, want) {
			t.Errorf("from %s: placed by %q", root, by)
		}
	}
}
