package develop

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// onSheet are the places on a sheet of length mm from left on of what lies at x,
// both ends included.
func onSheet(x, length, left, right float64) (out []float64) {
	for k := -4.0; k <= 4; k++ {
		if at := x + k*length; at >= left-1e-9*length && at <= right+1e-9*length {
			out = append(out, at)
		}
	}
	return out
}

// closedAt is a template whose ends meet at a clock angle.
func closedAt(t reporter, c Cylinder, seamDeg float64) Development {
	t.Helper()
	outlines, err := c.outlines()
	if err != nil {
		t.Fatalf("%v", err)
	}
	length, _ := wrapLengthMm(c.DiameterMm, c.PaperMm)
	return c.closed(outlines, length, seamDeg)
}

// TestWrapSheet: the frame, the quadrant lines and the labels of any template, worked out from
// the clock angles alone.
func TestWrapSheet(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := Cylinder{DiameterMm: 100, PaperMm: rapid.SampledFrom([]float64{0, 0.1}).Draw(t, "paper"), WidthMm: 80, TabMm: rapid.SampledFrom([]float64{0, 0.5, 15}).Draw(t, "tab"),
			FromBack: rapid.Bool().Draw(t, "from back")}
		for i := range rapid.IntRange(0, 3).Draw(t, "holes") {
			c.Features = append(c.Features, Feature{Name: string(rune('a' + i)), Kind: Hole, ClockDeg: float64(rapid.IntRange(-36, 36).Draw(t, "clock")) * 10, AxialMm: 40, DiameterMm: 6})
		}
		seam := float64(rapid.IntRange(-36, 36).Draw(t, "seam")) * 10
		d := closedAt(t, c, seam)
		length := math.Pi * (100 + c.PaperMm)
		sign := 1.0
		if c.FromBack {
			sign = -1
		}
		x := func(clock float64) float64 { return sign * length * clock / 360 }
		// The left edge is the seam, at TOP or left of it.
		left := x(seam)
		for left > 1e-9 {
			left -= length
		}
		for left <= -length+1e-9 {
			left += length
		}
		right := left + length
		near(t, "left", d.Box().Min.XMm, left, 1e-8)
		near(t, "right", d.Box().Max.XMm, right+c.TabMm, 1e-8)
		near(t, "length", d.WrapMm, length, 1e-9)
		near(t, "seam", d.SeamDeg, math.Mod(seam+720, 360), 1e-9)
		lines := map[string][]float64{}
		for _, k := range d.Curves {
			if k.Role == Top || k.Role == Division {
				if at := k.Points(0); at[0].XMm != at[1].XMm || at[0].YMm != 0 || at[1].YMm != 80 || (k.Role == Top) != (k.Name == "TOP") {
					t.Fatalf("%s: %v", k.Name, at)
				}
				lines[k.Name] = append(lines[k.Name], k.Start.XMm)
			}
		}
		for i, name := range []string{"TOP", "90°", "180°", "270°"} {
			want := onSheet(x(90*float64(i)), length, left, right)
			if !slices.EqualFunc(lines[name], want, func(a, b float64) bool { return math.Abs(a-b) < 1e-7 }) {
				t.Fatalf("%s at %v, want %v", name, lines[name], want)
			}
		}
		for _, f := range c.Features {
			half := length / 2 / math.Pi * math.Asin(0.06)
			// What crosses the seam is drawn at both ends, to the end of the tab.
			crosses := false
			for _, edge := range []float64{left, right} {
				for _, at := range onSheet(x(f.ClockDeg), length, left-half, right+half) {
					crosses = crosses || math.Abs(at-edge) < half
				}
			}
			end := right
			if crosses {
				end += c.TabMm
			}
			var labels, extents []float64
			for _, l := range d.Labels {
				if l.Text == f.Name {
					labels = append(labels, l.At.XMm)
				}
			}
			for _, k := range d.Curves {
				if k.Name == f.Name {
					extents = append(extents, k.Box().Min.XMm, k.Box().Max.XMm)
					if whole := k.Box().Size().XMm > 2*half-0.1; k.Closed != whole {
						t.Fatalf("%s from %v: closed %v", f.Name, extents, k.Closed)
					}
				}
			}
			if want := onSheet(x(f.ClockDeg), length, left, end); len(labels) != len(want) {
				t.Fatalf("%s labelled at %v, want %v", f.Name, labels, want)
			}
			var want []float64
			for _, at := range onSheet(x(f.ClockDeg), length, left-half, end+half) {
				if lo, hi := max(left, at-half), min(end, at+half); hi > lo+1e-9 {
					want = append(want, lo, hi)
				}
			}
			if slices.Sort(extents); !slices.EqualFunc(extents, want, func(a, b float64) bool { return math.Abs(a-b) < 0.05 }) {
				t.Fatalf("%s from and to %v, want %v", f.Name, extents, want)
			}
		}
	})
}

// TestWrapLimits: what just fits is drawn, what is a little more is refused.
func TestWrapLimits(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		f    Feature
		fits bool
	}{
		"to the sides":              {Feature{Kind: Window, WidthMm: 99.9, LengthMm: 20}, true},
		"out of the sides":          {Feature{Kind: Window, WidthMm: 100, LengthMm: 20}, false},
		"round slot":                {Feature{Kind: AxialSlot, WidthMm: 20, LengthMm: 20}, true},
		"slot wider than long":      {Feature{Kind: AxialSlot, WidthMm: 20, LengthMm: 19.9}, false},
		"full corners":              {Feature{Kind: Window, WidthMm: 30, LengthMm: 20, CornerMm: 10}, true},
		"larger corners":            {Feature{Kind: Window, WidthMm: 30, LengthMm: 20, CornerMm: 10.1}, false},
		"on the surface, wide":      {Feature{Kind: Window, WidthMm: 314, LengthMm: 20, OnSurface: true}, true},
		"on the surface, all round": {Feature{Kind: Window, WidthMm: 314.2, LengthMm: 20, OnSurface: true}, false},
		"from edge to edge":         {Feature{Kind: Window, WidthMm: 20, LengthMm: 80}, true},
		"over the edges":            {Feature{Kind: Window, WidthMm: 20, LengthMm: 80.1}, false},
		"shortest around":           {Feature{Kind: AroundSlot, WidthMm: 10, LengthMm: 100*math.Asin(0.1) + 1e-9}, true},
		"shorter around":            {Feature{Kind: AroundSlot, WidthMm: 10, LengthMm: 100*math.Asin(0.1) - 0.01}, false},
	} {
		c.f.AxialMm = 40
		_, err := Cylinder{DiameterMm: 100, WidthMm: 80, Features: []Feature{c.f}}.Develop()
		if (err == nil) != c.fits {
			t.Errorf("%s: %v", name, err)
		}
	}
	for tab, fits := range map[float64]bool{50 * math.Pi: true, 50*math.Pi + 0.01: false} {
		if _, err := (Cylinder{DiameterMm: 100, WidthMm: 80, TabMm: tab}).Develop(); (err == nil) != fits {
			t.Errorf("a tab of %v: %v", tab, err)
		}
	}
}
