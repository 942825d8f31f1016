package develop

import (
	"fmt"
	"testing"

	"centrepop/parts/golden"
)

// TestDevelopedWhole: all of a few patterns, point by point, name by name: what
// the tests of single rules do not look at stays as it is. Long curves are thinned.
func TestDevelopedWhole(t *testing.T) {
	t.Parallel()
	form := Forming{HeightMm: 200, OffsetTopMm: 30, OffsetRightMm: -20, ThicknessMm: 3, OverlapMm: 8, SeamDeg: 90}
	pieces := form
	pieces.Bend, pieces.Measured, pieces.Pieces, pieces.Divisions, pieces.OverlapMm = Faceted, 1, 2, 16, 0
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
		"wrap":        {DiameterMm: 80, PaperMm: 0.1, WidthMm: 90, TabMm: 10, AutoSeam: true, Features: holes},
		"wrap behind": {DiameterMm: 80, WidthMm: 90, Edge: BackFace, SeamDeg: 175, Features: holes},
	}
	for _, name := range []string{"wrap", "wrap behind"} {
		d, err := wraps[name].Develop()
		add(name, err, &d)
	}
	for _, s := range []Saddle{
		{MainDiameterMm: 219.1, MainWallMm: 8, BranchDiameterMm: 114.3, BranchWallMm: 6.3, AngleDeg: 60, OffsetMm: 15, GapMm: 2, PaperMm: 0.1, TabMm: 10},
		{MainDiameterMm: 168.3, MainWallMm: 6.3, BranchDiameterMm: 60.3, BranchWallMm: 4, AngleDeg: 90, OffsetMm: -30, Joint: SetIn, GapMm: 1, SeamDeg: 90, MarginMm: 8, Divisions: 8},
	} {
		p, err := s.Develop()
		add(s.Joint.String(), err, &p.Branch, &p.Hole)
	}
	for _, f := range []Frustum{
		{LargeDiameterMm: 300, SmallDiameterMm: 150, HeightMm: 200, ThicknessMm: 3, OverlapMm: 8},
		{LargeDiameterMm: 300, SmallDiameterMm: 150, Measured: 1, HeightMm: 200, SheetWidthMm: 420, SheetHeightMm: 297},
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
		o, err := Oblique{BaseDiameterMm: 250, TopDiameterMm: 120, Forming: f}.Develop()
		strips("oblique", o, err)
		tr, err := Transition{WidthMm: 260, DepthMm: 180, DiameterMm: 120, Forming: f}.Develop()
		strips("transition", tr, err)
	}
	golden.Compare(t, "testdata/developed.txt", got)
}
