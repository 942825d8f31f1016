package develop

import (
	"errors"
	"math"
	"testing"

	"centrepop/parts/geom"
	"centrepop/parts/seq"

	"pgregory.net/rapid"
)

// TestErrorOrFinite: whatever the numbers, a pattern is complete and finite,
// or there is an error and no pattern; nothing panics.
func TestErrorOrFinite(t *testing.T) {
	good := 0
	wild := rapid.SampledFrom([]float64{0, 0.01, 1, 45, 90, 100, MaxLengthMm, -1, -90, 1e-9, 1e300, -1e300, 5e-324, math.NaN(), math.Inf(1), math.Inf(-1)})
	rapid.Check(t, func(t *rapid.T) {
		// About half of the parts have one or two wild numbers.
		pick := func(name string, tame *rapid.Generator[float64]) float64 {
			if rapid.IntRange(0, 19).Draw(t, name+" wild") == 19 {
				return wild.Draw(t, name)
			}
			return tame.Draw(t, name)
		}
		f := func(name string) float64 { return pick(name, rapid.Float64Range(30, 360)) }
		s := func(name string) float64 { return pick(name, rapid.SampledFrom([]float64{0, 0, 1, 3})) }
		n := func(name string) int { return rapid.SampledFrom([]int{0, 0, 1, 3, 30}).Draw(t, name) }
		var pieces []Development
		var err error
		switch rapid.IntRange(0, 4).Draw(t, "kind") {
		case 0:
			var d Development
			d, err = Cylinder{DiameterMm: f("D"), PaperMm: s("paper"), WidthMm: f("width"), TabMm: s("tab"), FromBack: rapid.Bool().Draw(t, "from back"),
				Features: []Feature{{Kind: FeatureKind(n("kind of feature")), ClockDeg: f("clock"), AxialMm: f("axial"),
					DiameterMm: f("d"), WidthMm: f("w"), LengthMm: f("l"), CornerMm: s("corner")}}}.Develop()
			if err == nil {
				pieces = append(pieces, d)
			}
		case 1:
			var p SaddlePattern
			p, err = Saddle{MainDiameterMm: f("D"), BranchDiameterMm: f("d"), MainWallMm: s("T"), BranchWallMm: s("t"), AngleDeg: pick("angle", rapid.Float64Range(30, 90)), OffsetMm: s("offset"),
				SetIn: rapid.Bool().Draw(t, "set in"), GapMm: s("gap"), PaperMm: s("paper"), TabMm: s("tab"), SeamDeg: f("seam"), MarginMm: s("margin"), Divisions: 12 * n("n")}.Develop()
			if err == nil {
				pieces = append(pieces, p.Branch, p.Hole)
			}
		case 2:
			var p FrustumPattern
			p, err = Frustum{LargeDiameterMm: f("D"), SmallDiameterMm: f("d"), HeightMm: f("h"), ThicknessMm: s("t"), OverlapMm: s("lap"), Inside: rapid.Bool().Draw(t, "inside"),
				SheetWidthMm: 900, SheetHeightMm: 1200}.Develop()
			if err == nil {
				pieces = append(pieces, p.Piece)
			}
		default:
			var p StripPattern
			if rapid.Bool().Draw(t, "oblique") {
				p, err = Oblique{
					BaseDiameterMm: f("D"), TopDiameterMm: f("d"),
					Forming: Forming{HeightMm: f("h"), OffsetTopMm: f("up"), OffsetRightMm: f("right"), ThicknessMm: s("t"), OverlapMm: s("lap"), SeamDeg: f("seam"), Divisions: 12 * n("n"), Faceted: rapid.Bool().Draw(t, "faceted")},
				}.Develop()
			} else {
				p, err = Transition{
					WidthMm: f("w"), DepthMm: f("v"), DiameterMm: f("d"),
					Forming: Forming{HeightMm: f("h"), OffsetTopMm: f("up"), OffsetRightMm: f("right"), ThicknessMm: s("t"), OverlapMm: s("lap"), SeamDeg: rapid.SampledFrom([]float64{0, 90, 45, math.NaN()}).Draw(t, "seam"), Divisions: 12 * n("n"), Faceted: rapid.Bool().Draw(t, "faceted")},
				}.Develop()
			}
			pieces = p.Pieces
			for _, l := range p.Lines {
				if !finite(l.TrueMm) || !finite(l.BendDeg) {
					t.Errorf("line %v is not finite", l)
				}
			}
		}
		if err == nil {
			good++
		}
		if (err == nil) != (len(pieces) > 0) {
			t.Fatalf("%d pieces and error %v", len(pieces), err)
		}
		if err != nil && !errors.Is(err, ErrInput) {
			t.Errorf("error of another kind: %v", err)
		}
		for _, d := range pieces {
			checkComplete(t, d)
		}
	})
	if good == 0 {
		t.Error("no part was good, the numbers drawn test nothing")
	}
	t.Logf("%d good parts", good)
}

// Result is the named number of Results, and whether it exists.
func (d *Development) Result(name string) (float64, bool) {
	v, ok := seq.Find(d.Results, func(v Value) bool { return v.Name == name })
	return v.Value, ok
}

// checkComplete checks what every development promises.
func checkComplete(t reporter, d Development) {
	t.Helper()
	if len(d.Results) == 0 && d.WrapMm == 0 || len(d.Formulas) == 0 {
		t.Errorf("%v lacks a part", d.Inputs)
	}
	box, area := geom.BoxOf(), 0.0
	for _, c := range d.Curves {
		for _, p := range c.Points(0.5) {
			if !finite(p.XMm) || !finite(p.YMm) {
				t.Fatalf("curve %q is not finite", c.Name)
			}
			if c.Role == Edge || c.Role == Cut || c.Role == Tab {
				box = box.Join(geom.Box{Min: p, Max: p})
			}
		}
		if c.Role == Tab {
			area += Curve{Closed: true, Start: c.Start, Segments: c.Segments}.AreaMm2()
		} else if c.Role == Edge {
			area += c.AreaMm2()
		}
		last := c.Segments[len(c.Segments)-1].To
		if c.Closed != (last == c.Start) {
			t.Errorf("curve %q closed is %v, ends %v apart", c.Name, c.Closed, last.Minus(c.Start))
		}
	}
	is := d.Box()
	size := 1 + is.Size().XMm + is.Size().YMm
	near(t, "box left", is.Min.XMm, box.Min.XMm, 0.5+1e-9*size)
	near(t, "box top", is.Max.YMm, box.Max.YMm, 0.5+1e-9*size)
	if d.Blank.Closed { // the edge and the laps, in one
		near(t, "blank", math.Abs(d.Blank.AreaMm2()), math.Abs(area), 1e-9*size*size)
		near(t, "blank, as wide", d.Blank.Box().Size().XMm, is.Size().XMm, 1e-9*size)
	}
	for _, table := range d.Tables {
		if len(table.Rows) == 0 {
			t.Errorf("table %q is empty", table.Title)
		}
		for _, r := range table.Rows {
			if len(r.Values) != len(table.Columns) {
				t.Errorf("table %q row %s has %d values for %d columns", table.Title, r.Label, len(r.Values), len(table.Columns))
			}
		}
	}
	for _, v := range append(append([]Value{}, d.Inputs...), d.Results...) {
		if !finite(v.Value) {
			t.Errorf("%s is not finite", v.Name)
		}
	}
}

// TestCurveBoxAndArea: one arc of each turn against its known extent: a half
// disc of radius 10 upwards has the area 50π and touches y = 10.
func TestCurveBoxAndArea(t *testing.T) {
	up := Curve{Closed: true, Start: Point{XMm: 10, YMm: 0}, Segments: []Segment{{To: Point{XMm: -10, YMm: 0}, SweepDeg: 180}, {To: Point{XMm: 10, YMm: 0}}}}
	near(t, "area", up.AreaMm2(), 50*math.Pi, 1e-9)
	near(t, "length", up.LengthMm(), 20+10*math.Pi, 1e-9)
	near(t, "top", up.Box().Max.YMm, 10, 1e-12)
	near(t, "bottom", up.Box().Min.YMm, 0, 1e-12)
	down := Curve{Closed: true, Start: Point{XMm: 10, YMm: 0}, Segments: []Segment{{To: Point{XMm: -10, YMm: 0}, SweepDeg: -180}, {To: Point{XMm: 10, YMm: 0}}}}
	near(t, "area clockwise", down.AreaMm2(), -50*math.Pi, 1e-9)
	near(t, "bottom", down.Box().Min.YMm, -10, 1e-12)
	up.Closed = false
	near(t, "area of an open curve", up.AreaMm2(), 0, 0)
	up.Closed = true
	for _, tol := range []float64{0.5, 0.01} {
		points := up.Points(tol)
		for i := 2; i < len(points); i++ {
			mid := points[i-2].Plus(points[i-1]).Times(0.5)
			if rise := 10 - mid.LengthMm(); rise > tol+1e-9 {
				t.Errorf("chord is %g off the arc, want %g", rise, tol)
			}
		}
	}
}

func TestClipX(t *testing.T) {
	square := []Point{{XMm: 0, YMm: 0}, {XMm: 10, YMm: 0}, {XMm: 10, YMm: 10}, {XMm: 0, YMm: 10}, {XMm: 0, YMm: 0}}
	if parts := clipX(square, 0, 10); len(parts) != 1 || len(parts[0]) != 5 { // what lies on both edges is within
		t.Errorf("between its own edges: %v", parts)
	}
	if parts := clipX(square, -1, 11); len(parts) != 1 || len(parts[0]) != 5 {
		t.Errorf("inside: %v", parts)
	}
	if parts := clipX(square, 20, 30); parts != nil {
		t.Errorf("outside: %v", parts)
	}
	parts := clipX(square, -1, 4)
	if len(parts) != 1 || len(parts[0]) != 4 {
		t.Fatalf("cut at 4: %v", parts)
	}
	near(t, "length of the rest", polyline("", Cut, parts[0]...).LengthMm(), 18, 1e-12)
	if parts := clipX(square, 3, 7); len(parts) != 2 {
		t.Errorf("middle: %v", parts)
	}
}
