package develop

import (
	"errors"
	"math"
	"testing"
)

// TestShell holds the blank of a rolled tube to the metal that is in the tube: the middle of the sheet goes round the
// middle of the wall, so blank and ring have one volume (Pappus), 1247.212 long for Ø400 of 3.
func TestShell(t *testing.T) {
	s := Shell{OutsideDiameterMm: 400, ThicknessMm: 3, LengthMm: 300, SeamDeg: 90, OverlapMm: 20}
	d, err := s.Develop()
	if err != nil {
		t.Fatal(err)
	}
	girth, _ := d.Result("girth at the middle of the sheet")
	near(t, "girth", girth, 1247.212, 0.001)
	near(t, "metal", girth*300*3, math.Pi/4*(400*400-394*394)*300, 0.01)
	// TOP is x = 0 and clock angles grow to the right, so a seam at 90° leaves a quarter right of it, and there is the lap.
	near(t, "left edge", d.Box().Min.XMm, -0.75*girth, 1e-6)
	near(t, "right edge with the lap", d.Box().Max.XMm, 0.25*girth+20, 1e-6)
	near(t, "along", d.Box().Max.YMm-d.Box().Min.YMm, 300, 1e-9)
	for _, bad := range []Shell{
		{OutsideDiameterMm: 400, ThicknessMm: 200, LengthMm: 300},
		{OutsideDiameterMm: 400, ThicknessMm: 0, LengthMm: 300},
		{OutsideDiameterMm: 400, ThicknessMm: 3},
		{OutsideDiameterMm: 400, ThicknessMm: 3, LengthMm: 300, OverlapMm: 624},
	} {
		if _, err := bad.Develop(); !errors.Is(err, ErrInput) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
	if _, err := (Shell{OutsideDiameterMm: 400, ThicknessMm: 3, LengthMm: 300, OverlapMm: 623}).Develop(); err != nil {
		t.Errorf("a lap just under half the girth: %v", err)
	}
	if _, err := (Shell{OutsideDiameterMm: 400, ThicknessMm: 199.9, LengthMm: 300}).Develop(); err != nil {
		t.Errorf("a sheet that all but fills the round: %v", err)
	}
}

// TestLapGirth draws the round and the lap as a polygon, and takes the convex hull for the tape.
func TestLapGirth(t *testing.T) {
	s := Shell{OutsideDiameterMm: 184, ThicknessMm: 1.5, OverlapMm: 10}
	var points []Point
	const steps = 200000
	lap := s.OverlapMm / (s.OutsideDiameterMm / 2)
	for i := range steps {
		a, r := 2*math.Pi*float64(i)/steps, s.OutsideDiameterMm/2
		if math.Abs(a-math.Pi) <= lap/2 {
			r += s.ThicknessMm
		}
		points = append(points, Point{XMm: r * math.Cos(a), YMm: r * math.Sin(a)})
	}
	near(t, "tape", hullMm(points)-math.Pi*s.OutsideDiameterMm, s.LapGirthMm(), 0.001)
	near(t, "butt", Shell{OutsideDiameterMm: 184, ThicknessMm: 1.5}.LapGirthMm(), 0, 0)
}

// hullMm is the girth of the convex hull of points round the origin, the first of which is on it.
func hullMm(points []Point) (sum float64) {
	var hull []Point
	for _, p := range append(points, points[0]) {
		for n := len(hull); n > 1 && hull[n-1].Minus(hull[n-2]).Cross(p.Minus(hull[n-1])) <= 0; n-- {
			hull = hull[:n-1]
		}
		hull = append(hull, p)
	}
	for i := range len(hull) - 1 {
		d := hull[i+1].Minus(hull[i])
		sum += math.Hypot(d.XMm, d.YMm)
	}
	return sum
}

// TestShellOpenings has openings where they are on the round, drawn with arcs, and none over an edge or the seam.
func TestShellOpenings(t *testing.T) {
	s := Shell{OutsideDiameterMm: 103, ThicknessMm: 3, LengthMm: 80, SeamDeg: 270}
	s.Openings = []Feature{
		{Name: "a", Kind: Window, OnSurface: true, ClockDeg: 90, AxialMm: 30, WidthMm: 12, LengthMm: 12, CornerMm: 6},
		{Name: "b", Kind: Window, OnSurface: true, ClockDeg: 300, AxialMm: 50, WidthMm: 20, LengthMm: 40, CornerMm: 5},
	}
	d, err := s.Develop()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range d.Curves {
		middle := Point{XMm: (c.Box().Min.XMm + c.Box().Max.XMm) / 2, YMm: (c.Box().Min.YMm + c.Box().Max.YMm) / 2}
		switch c.Name {
		case "a": // a quarter of π·100 from TOP
			near(t, "a round", middle.XMm, 25*math.Pi, 1e-9)
			near(t, "a along", middle.YMm, 30, 1e-9)
			near(t, "a area", c.AreaMm2(), 36*math.Pi, 1e-6)
		case "b": // 60° before TOP
			near(t, "b round", middle.XMm, -100*math.Pi/6, 1e-9)
			near(t, "b area", c.AreaMm2(), 800-(4-math.Pi)*25, 1e-6)
		}
	}
	if n := len(d.Curves); d.Curves[n-1].Name != "b" || d.Curves[n-2].Name != "a" {
		t.Errorf("the openings are not drawn")
	}
	for _, bad := range []Feature{
		{Name: "seam", Kind: Window, OnSurface: true, ClockDeg: 275, AxialMm: 30, WidthMm: 12, LengthMm: 12},
		{Name: "end", Kind: Window, OnSurface: true, ClockDeg: 90, AxialMm: 5, WidthMm: 12, LengthMm: 12},
		{Name: "corner", Kind: Window, OnSurface: true, ClockDeg: 90, AxialMm: 30, WidthMm: 12, LengthMm: 12, CornerMm: 7},
	} {
		s.Openings = []Feature{bad}
		if _, err := s.Develop(); !errors.Is(err, ErrInput) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
}
