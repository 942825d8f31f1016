package develop

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"centrepop/parts/golden"
)

// TestDevelopedWhole: all of a few patterns, point by point, name by name: what
// the tests of single rules do not look at stays as it is. Long curves are thinned.
func TestDevelopedWhole(t *testing.T) {
	t.Parallel()
	form := Forming{HeightMm: 200, OffsetTopMm: 30, OffsetRightMm: -20, ThicknessMm: 3, OverlapMm: 8, SeamDeg: 90}
	pieces := form
	pieces.Faceted, pieces.Inside, pieces.Divisions, pieces.OverlapMm = true, true, 16, 0
	sheet := form
	sheet.SheetWidthMm, sheet.SheetHeightMm = 420, 297
	holes := []Feature{
		{Name: "a", ClockDeg: 10, AxialMm: 30, DiameterMm: 12}, {Name: "b", Kind: AxialSlot, ClockDeg: 95, AxialMm: 50, WidthMm: 8, LengthMm: 40},
		{Name: "c", Kind: AroundSlot, ClockDeg: 180, AxialMm: 40, WidthMm: 6, LengthMm: 30}, {Name: "d", Kind: Window, ClockDeg: 250, AxialMm: 45, WidthMm: 30, LengthMm: 20, CornerMm: 3},
		{Name: "e", Kind: Window, ClockDeg: 320, AxialMm: 60, WidthMm: 30, LengthMm: 20, OnSurface: true}, {Name: "f", ClockDeg: 330, AxialMm: 20, DiameterMm: 5},
	}
	var got []byte
	add := func(name string, err error, ds ...*Development) {
		got = fmt.Appendf(got, "== %s: %d, %v\n", name, len(ds), err)
		for _, d := range ds {
			d.Blank = Curve{} // checkComplete adds it up
			for i, c := range d.Curves {
				if n := len(c.Segments); n > 16 {
					d.Curves[i].Name = fmt.Sprintf("%s (%d pieces)", c.Name, n)
					var few []Segment
					for j := 0; j < n; j += max(n/8, 1) {
						few = append(few, c.Segments[j])
					}
					d.Curves[i].Segments = few
				}
			}
			got = append(got, golden.Text(*d)...)
		}
	}
	wraps := map[string]Cylinder{
		"wrap":        {DiameterMm: 80, PaperMm: 0.1, WidthMm: 90, TabMm: 10, Features: holes},
		"wrap behind": {DiameterMm: 80, WidthMm: 90, FromBack: true, Features: holes},
	}
	front, err := wraps["wrap"].Develop()
	add("wrap", err, &front)
	behind := closedAt(t, wraps["wrap behind"], 175)
	add("wrap behind", nil, &behind)
	for _, s := range []Saddle{
		{MainDiameterMm: 219.1, MainWallMm: 8, BranchDiameterMm: 114.3, BranchWallMm: 6.3, AngleDeg: 60, OffsetMm: 15, GapMm: 2, PaperMm: 0.1, TabMm: 10},
		{MainDiameterMm: 168.3, MainWallMm: 6.3, BranchDiameterMm: 60.3, BranchWallMm: 4, AngleDeg: 90, OffsetMm: -30, SetIn: true, GapMm: 1, SeamDeg: 90, MarginMm: 8, Divisions: 8},
	} {
		p, err := s.Develop()
		add(fmt.Sprint("saddle, set in ", s.SetIn), err, &p.Branch, &p.Hole)
	}
	for _, f := range []Frustum{
		{LargeDiameterMm: 300, SmallDiameterMm: 150, HeightMm: 200, ThicknessMm: 3, OverlapMm: 8},
		{LargeDiameterMm: 300, SmallDiameterMm: 150, Inside: true, HeightMm: 200, SheetWidthMm: 420, SheetHeightMm: 297},
	} {
		p, err := f.Develop()
		add(fmt.Sprint("frustum, gores ", p.Gores), err, &p.Piece)
	}
	strips := func(name string, p StripPattern, err error) {
		var ds []*Development
		for i := range p.Pieces {
			ds = append(ds, &p.Pieces[i])
		}
		add(name, err, ds...)
	}
	for _, f := range []Forming{form, pieces, sheet} {
		oblique, transition := Oblique{BaseDiameterMm: 250, TopDiameterMm: 120, Forming: f}, Transition{WidthMm: 260, DepthMm: 180, DiameterMm: 120, Forming: f}
		choices := []int{1, 2, 4}
		if f == pieces {
			choices = []int{2}
		}
		o, err := oblique.develop(choices)
		strips("oblique", o, err)
		tr, err := transition.develop(choices)
		strips("transition", tr, err)
	}
	golden.Compare(t, "testdata/developed.txt", got)
}

// TestRefusedAtBounds: what is refused, and what hardly is not.
func TestRefusedAtBounds(t *testing.T) {
	t.Parallel()
	frustum := func(small, high, thick float64) error {
		_, err := Frustum{LargeDiameterMm: small + 200, SmallDiameterMm: small, HeightMm: high, ThicknessMm: thick}.Develop()
		return err
	}
	long := func(mm float64) error { return checkLength("length", mm) }
	off := func(mm float64) error { return checkOffset("offset", mm) }
	turn := func(deg float64) error { return checkAngle("angle", deg) }
	wrap := func(mm, paper float64) error { _, err := wrapLengthMm(mm, paper); return err }
	saddle := func(angle float64) error {
		_, err := Saddle{MainDiameterMm: 200, MainWallMm: 8, BranchDiameterMm: 80, BranchWallMm: 4, AngleDeg: angle}.Develop()
		return err
	}
	hole := func(axial float64, names ...string) error {
		c := Cylinder{DiameterMm: 80, WidthMm: 90, Features: []Feature{{Name: "a", AxialMm: axial, DiameterMm: 12}}}
		for _, n := range names {
			c.Features = append(c.Features, Feature{Name: n, ClockDeg: 90, AxialMm: 40, DiameterMm: 5})
		}
		_, err := c.Develop()
		return err
	}
	for _, c := range []struct {
		what      string
		good, bad []error
	}{
		// The middle of a plate of 10 that leans by 45° is 10·cos 45° = 7.071 inside its outside; as much has to be left.
		{"a plate too thick", []error{frustum(14.15, 100, 10)}, []error{frustum(14.13, 100, 10)}},
		{"a length", []error{long(MinLengthMm), long(MaxLengthMm)}, []error{long(0), long(0.0099), long(MaxLengthMm + 1), long(math.NaN())}},
		{"an offset", []error{off(0), off(MaxLengthMm), off(-MaxLengthMm)}, []error{off(MaxLengthMm + 1), off(-MaxLengthMm - 1), off(math.Inf(1))}},
		{"an angle", []error{turn(360), turn(-360)}, []error{turn(360.1), turn(-360.1), turn(math.NaN())}},
		{"paper", []error{wrap(10, 9.99), wrap(0.01, 0)}, []error{wrap(10, 10), wrap(0.009, 0), wrap(10, -0.1)}},
		{"a branch", []error{saddle(30), saddle(90)}, []error{saddle(29.9), saddle(90.1)}},
		{"a hole", []error{hole(6.01), hole(83.99), hole(45, "b")}, []error{hole(5.9), hole(84.1), hole(45, "a")}},
	} {
		for _, err := range c.good {
			if err != nil {
				t.Errorf("%s: %v", c.what, err)
			}
		}
		for i, err := range c.bad {
			if !errors.Is(err, ErrInput) {
				t.Errorf("%s: %d is not refused: %v", c.what, i, err)
			}
		}
	}
	size := Point{XMm: 100, YMm: 50}
	if !fitsSheet(size, 100, 50) || !fitsSheet(size, 50, 100) || fitsSheet(size, 99.9, 50) || fitsSheet(size, 50, 99.9) || fitsSheet(size, 49.9, 200) || asin(1+1e-12) != math.Pi/2 || asin(-1-1e-12) != -math.Pi/2 {
		t.Error("a sheet as large as it, or a sine a little over one")
	}
}
