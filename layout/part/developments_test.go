package part

import (
	"math"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
)

// TestContour reads arcs back and measures them.
func TestContour(t *testing.T) {
	c := develop.Curve{Closed: true, Start: develop.Point{XMm: 10}, Segments: []develop.Segment{
		{To: develop.Point{XMm: 10}, SweepDeg: 360},
	}}
	for _, sweep := range []float64{360, -360} {
		c.Segments[0].SweepDeg = sweep
		p, err := canvas.ParseSVGPath(string(contour(c)))
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Length(); math.Abs(got-20*math.Pi) > 0.01 {
			t.Errorf("a full circle is %v long", got)
		}
		if b := p.Bounds(); math.Abs(b.X0+10) > 1e-6 || math.Abs(b.Y1-10) > 1e-6 {
			t.Errorf("bounds %v", b)
		}
	}
	// A quarter anticlockwise from 3 o'clock goes over 45°.
	c = develop.Curve{Start: develop.Point{XMm: 10}, Segments: []develop.Segment{{To: develop.Point{YMm: 10}, SweepDeg: 90}}}
	p, err := canvas.ParseSVGPath(string(contour(c)))
	if err != nil {
		t.Fatal(err)
	}
	if got := p.Length(); math.Abs(got-5*math.Pi) > 0.01 {
		t.Errorf("a quarter is %v long", got)
	}
	if got := string(contour(c)); got != "M10 0A10 10 0 0 1 7.071068 7.071068A10 10 0 0 1 0 10" {
		t.Errorf("path %s", got)
	}
}

// TestTransitionAxis: the round end is on the rectangle's axis where it is offset neither way.
func TestTransitionAxis(t *testing.T) {
	t.Parallel()
	for offset, want := range map[string]string{"[0, 0]": "on the rectangle's axis", "[10, 0]": "", "[0, 10]": "", "[10, 10]": ""} {
		m := work(t, "mm", "part: p\nkind: transition\nmaterial: S235\ntransition: {width: 340, depth: 300, diameter: 200, height: 120, thickness: 2, offset: "+offset+"}\n")
		if got := feature(m, "round end").Note; got != want {
			t.Errorf("%s: %q", offset, got)
		}
	}
}

// What leans to a side alone is cut there: 200 wide, 100 deep, Ø60 at 150, 40 to 3 o'clock, the cut goes from 9 o'clock at -100 to -30 + 40 = 10 and from
// 100 to 70 with 3 o'clock up, and says the 40; what leans to TOP too, or stands straight, is cut from TOP to 180°. By geometry.
func TestTransitionLeans(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		offset, up string
		low, high  [2]float64 // of the outsides of the cut, at the front and the back
		off        string
	}{
		{"[40, 0]", "3 o'clock", [2]float64{-100, 10}, [2]float64{100, 70}, "40"}, {"[-40, 0]", "3 o'clock", [2]float64{-100, -70}, [2]float64{100, -10}, "40"},
		{"[40, 20]", "", [2]float64{-50, -10}, [2]float64{50, 50}, "20"}, {"[0, 0]", "", [2]float64{}, [2]float64{}, ""},
	} {
		m := work(t, "mm", "part: h\nkind: transition\nmaterial: S235\ntransition: {width: 200, depth: 100, diameter: 60, height: 150, thickness: 2, measured: outside, offset: "+c.offset+"}\n")
		s := m.Section
		if s.Up != c.up || (c.off == "") != (s.Whole == nil) {
			t.Errorf("%s: %q, %v", c.offset, s.Up, s.Whole)
		}
		if s.Whole != nil {
			up, low := s.Whole[0], s.Whole[1]
			if got := [4]float64{low[0].YMm, low[1].YMm, up[0].YMm, up[1].YMm}; got != [4]float64{c.low[0], c.low[1], c.high[0], c.high[1]} {
				t.Errorf("%s: %v", c.offset, got)
			}
		}
		off := ""
		for _, d := range m.Out.Dimensions {
			if d.Kind == plan.OffsetDim {
				off = d.Text
			}
		}
		if off != c.off {
			t.Errorf("%s: %q", c.offset, off)
		}
	}
}
