package draw

import (
	"math"
	"slices"
	"testing"

	"github.com/tdewolff/canvas"
)

func TestPopCrossIsOpenAtItsCentre(t *testing.T) {
	want := canvas.MustParseSVGPath("M10.8 20L14 20M10 20.8L10 24M9.2 20L6 20M10 19.2L10 16")
	got := PopCross(10, 20).Path.Coords()
	for i, c := range want.Coords() {
		if math.Hypot(got[i].X-c.X, got[i].Y-c.Y) > 1e-12 {
			t.Errorf("point %d is %v, want %v", i, got[i], c)
		}
	}
	if len(got) != 8 {
		t.Errorf("%d points", len(got))
	}
}

func TestSlotPathHasHalfRoundEnds(t *testing.T) {
	// 30 long, 10 wide, turned by 30° from upright: the box about it is
	// 20·sin 30° + 10 wide and 20·cos 30° + 10 high.
	path := SlotPath(-5, -10*math.Sqrt(3)/2, 5, 10*math.Sqrt(3)/2, 10)
	b := path.Bounds()
	if math.Abs(b.W()-20) > 1e-6 || math.Abs(b.H()-(20*math.Sqrt(3)/2+10)) > 1e-6 {
		t.Errorf("the slot is %g by %g", b.W(), b.H())
	}
	// Outline length: two sides of 20 and a full circle of 10.
	if l := path.Length(); math.Abs(l-(40+10*math.Pi)) > 0.01 {
		t.Errorf("its outline is %g long", l)
	}
	if b := SlotPath(0, 0, 0, 0, 10).Bounds(); math.Abs(b.W()-10) > 1e-9 {
		t.Errorf("a slot as long as it is wide is %g wide", b.W())
	}
}

func TestSpreadKeepsOrderAndDistance(t *testing.T) {
	for _, c := range []struct{ wanted, want []float64 }{
		{[]float64{10, 30}, []float64{10, 30}},
		{[]float64{10, 12, 13}, []float64{11.0 / 3, 35.0 / 3, 59.0 / 3}}, // (10 + 4 − 3)/3, and 8 further each
		{[]float64{10, 12, 40, 41, 42}, []float64{7, 15, 33, 41, 49}},
		{[]float64{95, 96}, []float64{91.5, 99.5}},
		{[]float64{97, 98}, []float64{92, 100}},
		{[]float64{-5, 50}, []float64{0, 50}},
		{[]float64{50}, []float64{50}},
		{nil, nil},
	} {
		got := Spread(c.wanted, 8, 0, 100)
		for i := range c.want {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("spread %v gives %v, want %v", c.wanted, got, c.want)
				break
			}
		}
	}
	// More than fit: closer together, but inside.
	crowd := Spread(make([]float64, 30), 8, 0, 100)
	if crowd[0] < -1e-9 || crowd[29] > 100+1e-9 || math.Abs(crowd[1]-crowd[0]-100.0/29) > 1e-9 {
		t.Errorf("thirty balloons lie at %v", crowd)
	}
}

func TestCross(t *testing.T) {
	cross := func(v ...float64) bool {
		return Cross(canvas.Point{X: v[0], Y: v[1]}, canvas.Point{X: v[2], Y: v[3]}, canvas.Point{X: v[4], Y: v[5]}, canvas.Point{X: v[6], Y: v[7]})
	}
	if !cross(0, 0, 10, 10, 0, 10, 10, 0) {
		t.Error("the diagonals of a square do not cross")
	}
	if cross(0, 0, 10, 0, 0, 1, 10, 1) || cross(0, 0, 1, 1, 5, 0, 0, 5) {
		t.Error("lines that do not meet cross")
	}
	if cross(0, 0, 10, 0, 5, 0, 5, 5) || cross(0, 0, 10, 0, 5, 5, 5, 0) || cross(5, 0, 5, 5, 0, 0, 10, 0) || cross(5, 5, 5, 0, 0, 0, 10, 0) {
		t.Error("an end on a line crosses it")
	}
}

// TestApart: texts keep their order and do not meet, stay between the ends where they fit, and are moved as little as they can be, in squares.
func TestApart(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ wanted, widths, want []float64 }{
		{[]float64{20, 50}, []float64{10, 10}, []float64{20, 50}},
		{[]float64{2, 50}, []float64{10, 10}, []float64{5, 50}},
		{[]float64{20, 99}, []float64{10, 6}, []float64{20, 97}},
		{[]float64{50, 52}, []float64{10, 20}, []float64{43.5, 58.5}},
		{[]float64{50, 95, 98}, []float64{10, 8, 6}, []float64{50, 90, 97}},
		{[]float64{40, 42, 44}, []float64{10, 20, 30}, []float64{71.0 / 3, 71.0/3 + 15, 71.0/3 + 40}},
		{[]float64{10, 12, 14}, []float64{10, 20, 30}, []float64{5, 20, 45}},
		{[]float64{97, 98, 99}, []float64{10, 20, 30}, []float64{45, 60, 85}},
		{[]float64{50, 51}, []float64{80, 60}, []float64{40, 110}},
		{nil, nil, nil},
	} {
		if got := Apart(c.wanted, c.widths, 0, 100); !slices.EqualFunc(got, c.want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("%v, %v wide: %v, want %v", c.wanted, c.widths, got, c.want)
		}
	}
}
