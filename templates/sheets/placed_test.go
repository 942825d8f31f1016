package sheets

import (
	"fmt"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestSectionOfAPlace: the section that shows a place is to scale in a square of 32 mm with its balloons over it, its words
// under it and 5 mm at each side, and no less than 6 mm long or high.
func TestSectionOfAPlace(t *testing.T) {
	t.Parallel()
	room := 32 - (2*draw.BalloonMm + 4) - 6.2
	for _, c := range []struct{ long, radius, w, h float64 }{
		{100, 10, 22, 6}, {100, 20, 22, 8.8}, {50, 50, room / 2, room}, {10, 100, 6, room}, {1000, 10, 22, 6}, {22, room / 2, 22, room},
	} {
		part := &plan.PartPlan{Section: &plan.Section{LengthMm: c.long, MaxMm: c.radius, Outer: []plan.XY{{YMm: c.radius}, {XMm: c.long, YMm: c.radius}}}}
		d := partPicture(part, "none")
		outer := draw.Rect{}
		for _, p := range sheettest.Flatten(t, &d, 0, 0, nil) {
			if s, ok := p.Item.(draw.Shape); ok && s.WidthMm == draw.LineMm {
				b := s.Path.Bounds()
				outer = draw.R(min(outer.X0, b.X0+p.DX), min(outer.Y0, b.Y0+p.DY), max(outer.X1, b.X1+p.DX), max(outer.Y1, b.Y1+p.DY))
				if !near(b.W(), c.w) {
					t.Errorf("%v × %v: drawn %v long, want %v", c.long, c.radius, b.W(), c.w)
				}
			}
		}
		// The lower half ends as far under the axis as the upper half over it, which begins under the row of balloons.
		if low := -(2*draw.BalloonMm + 4) - c.h; !near(outer.Y0, low) {
			t.Errorf("%v × %v: drawn down to %v, want %v", c.long, c.radius, outer.Y0, low)
		}
	}
}

// TestColumnsWithoutEmptyLists: a list with nothing in it changes nothing on a cover, however high those about it are.
func TestColumnsWithoutEmptyLists(t *testing.T) {
	t.Parallel()
	table := func(rows int) draw.Table {
		out := draw.Table{Title: fmt.Sprint("List of ", rows), Columns: []draw.Column{{Head: "No."}}}
		for i := range rows {
			out.Rows = append(out.Rows, []string{fmt.Sprint(i)})
		}
		return out
	}
	set := func(lists []draw.Table, under float64) (out []string) {
		f := draw.NewFlow(func(int) (*draw.Sheet, draw.Piece) { return &draw.Sheet{Frame: a4}, draw.Piece{} })
		density(1).columns(f, &plan.Plan{}, lists, under)
		for i, s := range f.Sheets {
			for _, b := range s.Blocks {
				if b.HeightMm > 0 && len(b.Draw.Items) > 0 {
					out = append(out, fmt.Sprintf("%d: %.2f %.2f", i, b.XMm, b.TopMm))
				}
			}
		}
		return out
	}
	for a := range 8 {
		for b := range 8 {
			for _, under := range []float64{0, 150, 200, 205, 210} {
				one, two, three := table(2*a+1), table(b+1), table(a+b/2+1)
				none := draw.Table{Columns: one.Columns}
				if want, got := set([]draw.Table{one, two, three}, under), set([]draw.Table{one, none, two, none, none, three, none}, under); !slices.Equal(got, want) {
					t.Fatalf("%d, %d and %d rows over %v: %q, want %q", len(one.Rows), len(two.Rows), len(three.Rows), under, got, want)
				}
			}
		}
	}
}
