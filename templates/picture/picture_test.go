package picture

import (
	"math"
	"testing"

	"centrepop/layout/plan"
)

// A leader ends in metal: not in a hole, and where the metal is widest.
func TestMetal(t *testing.T) {
	t.Parallel()
	square := func(x, y, w, h float64) []plan.XY {
		return []plan.XY{{XMm: x, YMm: y}, {XMm: x + w, YMm: y}, {XMm: x + w, YMm: y + h}, {XMm: x, YMm: y + h}}
	}
	for _, c := range []struct {
		loops, over [][]plan.XY
		low, high   plan.XY // where it ends
	}{
		{[][]plan.XY{square(100, 30, 40, 400)}, nil, plan.XY{XMm: 120, YMm: 50}, plan.XY{XMm: 120, YMm: 410}},
		{[][]plan.XY{square(0, 0, 100, 100), square(10, 40, 80, 20)}, nil, plan.XY{XMm: 50, YMm: 15}, plan.XY{XMm: 50, YMm: 85}},
		{[][]plan.XY{square(0, 0, 100, 10), square(0, 90, 60, 20)}, nil, plan.XY{XMm: 30, YMm: 95}, plan.XY{XMm: 30, YMm: 105}},
		{[][]plan.XY{square(0, 0, 100, 40)}, [][]plan.XY{square(20, -10, 60, 100)}, plan.XY{XMm: 10, YMm: 9}, plan.XY{XMm: 10, YMm: 31}}, // a screw goes through it
		{[][]plan.XY{square(0, 0, 100, 40)}, [][]plan.XY{square(-5, 10, 200, 90)}, plan.XY{XMm: 50, YMm: 3}, plan.XY{XMm: 50, YMm: 7}},
	} {
		if got := Metal(c.loops, []*plan.Shape{{Loops: c.over}}); got.XMm < c.low.XMm || got.XMm > c.high.XMm || got.YMm < c.low.YMm || got.YMm > c.high.YMm {
			t.Errorf("a leader to %v under %v ends at %v, want %v to %v", c.loops, c.over, got, c.low, c.high)
		}
	}
}

// A seal is drawn from its case at the open end along the bore to the web, down it and
// to the lip, which touches the shaft at the open end.
func TestSealPath(t *testing.T) {
	t.Parallel()
	at := func(q plan.XY, _ float64) (float64, float64) { return q.XMm, q.YMm }
	for back, want := range map[bool]string{false: "M2 40L10 40L10 32.5L2 30", true: "M10 40L2 40L2 32.5L10 30"} {
		got := sealPath(plan.SealMark{FromMm: 2, ToMm: 10, OuterMm: 80, InnerMm: 60, LipBack: back}, at)
		if got.String() != want {
			t.Errorf("back %v: %s, want %s", back, got, want)
		}
	}
}

// No edge is seen between two equal chords of an arc; one is at a corner, at the
// ends, where a taper of 1:10 begins, and between chords that are not equal.
func TestOnArc(t *testing.T) {
	t.Parallel()
	line := []plan.XY{{XMm: 0, YMm: 10}}
	for i := range 7 { // R5, in sixths of a right angle, from the face at 10 up to 15
		a := float64(i) * math.Pi / 12
		line = append(line, plan.XY{XMm: 10 + 5*(1-math.Cos(a)), YMm: 10 + 5*math.Sin(a)})
	}
	line = append(line, plan.XY{XMm: 30, YMm: 15}, plan.XY{XMm: 50, YMm: 14})
	want := []bool{false, false, true, true, true, true, true, false, false, false}
	for i := range line {
		if got := onArc(line, i); got != want[i] {
			t.Errorf("%v: %v", line[i], got)
		}
	}
}

// A surface is shown where nothing is cut into it that has a label of its own: beside a keyway
// the longer rest, of what is all cut away the whole.
func TestStretch(t *testing.T) {
	t.Parallel()
	d := func(from, to float64) plan.Dimension { return plan.Dimension{FromMm: from, ToMm: to} }
	step := d(10, 60)
	for _, c := range []struct {
		cut      []plan.Dimension
		from, to float64
	}{
		{nil, 10, 60},
		{[]plan.Dimension{d(20, 30)}, 30, 60},
		{[]plan.Dimension{d(25, 55)}, 10, 25},
		{[]plan.Dimension{d(40, 50), d(0, 20)}, 20, 40},
		{[]plan.Dimension{d(60, 80), d(0, 200)}, 10, 60},
		{[]plan.Dimension{d(10, 35), d(35, 60)}, 10, 60},
	} {
		if from, to := stretch(step, append(c.cut, step)); from != c.from || to != c.to {
			t.Errorf("%v: from %v to %v, want %v to %v", c.cut, from, to, c.from, c.to)
		}
	}
}
