package part

import (
	"math"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/develop"
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
