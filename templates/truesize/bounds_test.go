package truesize

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// TestLongNameInStrip: a name in bold over another line that is too wide for its cell is
// broken into two, no word of it lost; the three stand in the middles of thirds of the
// strip, the baseline of each 0.36 of its size lower. A short one stays in one line.
func TestLongNameInStrip(t *testing.T) {
	t.Parallel()
	b := draw.R(0, 100, 200, 100+stripMm)
	const long = "Intermediate support bracket of the discharge end"
	for name, lines := range map[string]int{"Bracket": 2, long: 3} {
		s := &draw.Sheet{}
		width := 2 * draw.TextWidth(long, draw.SmallMm, true) / 3
		stripCell{lines: []string{name, "material S235"}, sizes: []float64{4, 2.8}}.draw(s, 10, 10+width, b)
		got := textsOf(&s.Draw)
		if len(got) != lines || got[lines-1].Content != "material S235" || got[lines-1].Bold {
			t.Fatalf("%s: %+v", name, got)
		}
		var said []string
		for i, text := range got {
			if i < lines-1 {
				said = append(said, text.Content)
			}
			if want := 110 - stripMm/float64(lines)*(float64(i)+0.5) - 0.36*text.SizeMm; math.Abs(text.YMm-want) > 1e-9 || text.XMm != 10 || text.Bold != (i < lines-1) {
				t.Errorf("%s: line %d is %+v, want it at %v", name, i, text, want)
			}
			if wide := draw.TextWidth(text.Content, text.SizeMm, text.Bold); wide > width+1e-9 {
				t.Errorf("%s: line %d is %v wide in %v", name, i, wide, width)
			}
		}
		if strings.Join(said, " ") != name {
			t.Errorf("%q says %q", name, said)
		}
	}
}

// TestCirclesToMiss: holes of the other side up to Ø60 are kept clear of; what is larger,
// and pitch circles, is not.
func TestCirclesToMiss(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		circle plan.Circle
		want   bool
	}{{plan.Circle{DiameterMm: 60}, true}, {plan.Circle{DiameterMm: 60.1}, false}, {plan.Circle{DiameterMm: 8}, true}, {plan.Circle{DiameterMm: 8, Pitch: true}, false}} {
		if got := isSmall(c.circle); got != c.want {
			t.Errorf("%+v: %v", c.circle, got)
		}
	}
}

// TestNameBesideCircle: the name of a circle stands outside of its line, to the right and
// above, where there is room; if what is outside is taken, inside of it; else nowhere.
func TestNameBesideCircle(t *testing.T) {
	t.Parallel()
	const r, w, h = 30, 12, 3
	window := draw.R(-100, -100, 100, 100)
	middle := func(s draw.Rect) float64 { return math.Hypot((s.X0+s.X1)/2, (s.Y0+s.Y1)/2) }
	free := draw.NewOccupied(window)
	spot, ok := besideCircle(free, canvas.Point{}, r, w, h)
	if !ok || middle(spot) < r || spot.X0 < 0 || spot.Y0 < 0 {
		t.Errorf("free: %v, %v", spot, ok)
	}
	outside := draw.NewOccupied(draw.R(-r, -r, r, r))
	for _, corner := range []draw.Rect{draw.R(-r, -r, -20, -20), draw.R(20, -r, r, -20), draw.R(-r, 20, -20, r), draw.R(20, 20, r, r)} {
		outside.AddText(corner)
	}
	spot, ok = besideCircle(outside, canvas.Point{}, r, w, h)
	if !ok || middle(spot) > r {
		t.Errorf("inside: %v, %v", spot, ok)
	}
	if spot, ok := besideCircle(draw.NewOccupied(draw.R(-5, -5, 5, 5)), canvas.Point{}, r, w, h); ok {
		t.Errorf("no room: %v", spot)
	}
}

// TestCentreMark: the centre of a face is marked unless a hole, or the end of a slot, has its cross or its edge there or
// within 1 mm; a slot that lies over it has none there.
func TestCentreMark(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) plan.XY { return plan.XY{XMm: x, YMm: y} }
	slot := func(a, b plan.XY, wide float64) plan.Face {
		return plan.Face{Slots: []plan.Slot{{XMm: (a.XMm + b.XMm) / 2, YMm: (a.YMm + b.YMm) / 2, WidthMm: wide, LengthMm: 40, EndsMm: [2]plan.XY{a, b}}}}
	}
	hole := func(x, y, wide float64) plan.Face {
		return plan.Face{Holes: []plan.Hole{{XMm: x, YMm: y, DiameterMm: wide}}}
	}
	for name, c := range map[string]struct {
		face   plan.Face
		marked bool
	}{
		"nothing": {plan.Face{}, true}, "a hole there": {hole(0, 0, 6), false}, "a wide hole beside it": {hole(0, 30, 58.1), false}, "further off": {hole(30, 0, 57.9), true},
		"a small hole beside it": {hole(draw.CrossArmMm+0.9, 0, 2), false}, "hardly beside it": {hole(draw.CrossArmMm+1.1, 0, 2), true},
		"a slot over it": {slot(at(-20, 0), at(20, 0), 8), true}, "one end of a slot": {slot(at(1, 1), at(20, 0), 8), false}, "the other": {slot(at(20, 0), at(0, -1), 8), false},
		"a wide slot's end": {slot(at(0, 20), at(0, 60), 38.1), false}, "further off yet": {slot(at(0, 20), at(0, 60), 37.9), true},
	} {
		p := &punch{face: &c.face, marked: markedOn(&c.face, true), outline: &canvas.Path{}, lo: at(-80, -80), hi: at(80, 80)}
		l := laid{&draw.Sheet{}, draw.NewOccupied(draw.R(-100, -100, 100, 100)), &draw.Drawing{}, 0, 0}
		p.ticks(l)
		n := 0
		for _, item := range l.lines.Items {
			if s, ok := item.(draw.Shape); ok && len(s.Path.Coords()) == 2 && math.Hypot(s.Path.Coords()[0].X, s.Path.Coords()[0].Y) < 2 {
				n++
			}
		}
		if want := map[bool]int{true: 4, false: 0}[c.marked]; n != want {
			t.Errorf("%s: %d lines at the centre, want %d", name, n, want)
		}
	}
}
