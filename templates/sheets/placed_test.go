package sheets

import (
	"fmt"
	"slices"
	"strings"
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

// TestTicksInARow: the jobs of a piece stand in a row as long as the boxes of all have room in it, each 0.6 mm behind the one
// before and 2 mm behind the last.
func TestTicksInARow(t *testing.T) {
	t.Parallel()
	for _, n := range []int{1, 4, 8} {
		need := 0.0
		for _, job := range []string{"sawn", "drilled", "deburred"} {
			need += draw.TextWidth(job, draw.SmallMm, false) + 1 + float64(n)*4 + 2
		}
		for width, high := range map[float64]float64{need + 0.01: 4.6, need - 0.01: 9.2, need / 2: 9.2, 1: 13.8} {
			if p := ticks([]string{"sawn", "drilled", "deburred"}, n, width); width != need/2 && !near(p.Height, high) || p.Height < high-1e-6 {
				t.Errorf("%d pieces in %v: %v high, want %v", n, width, p.Height, high)
			}
		}
	}
}

// TestTwoColumnsFrom: lists stand in two columns on paper with 150 mm between its margins or more.
func TestTwoColumnsFrom(t *testing.T) {
	t.Parallel()
	list := draw.Table{Title: "Parts", Columns: []draw.Column{{Head: "No."}}, Rows: [][]string{{"1"}, {"2"}, {"3"}}}
	for width, columns := range map[float64]int{149: 1, 150: 2, 151: 2} {
		f := draw.NewFlow(func(int) (*draw.Sheet, draw.Piece) {
			return &draw.Sheet{Frame: draw.Frame{WidthMm: width + 2*draw.MarginMm, HeightMm: 297}}, draw.Piece{}
		})
		if f.Width() != width {
			t.Fatalf("%v wide, want %v", f.Width(), width)
		}
		density(1).columns(f, &plan.Plan{}, []draw.Table{list, list}, 0)
		at := map[float64]bool{}
		for _, b := range f.Sheets[0].Blocks {
			at[b.XMm] = true
		}
		if len(at) != columns {
			t.Errorf("%v wide: %d columns, want %d", width, len(at), columns)
		}
	}
}

// TestColumnsOfCards: the least and the most width of the columns of the cards, in mm: room to write a reading, and none
// wasted on what is short.
func TestColumnsOfCards(t *testing.T) {
	t.Parallel()
	runs := runsTable(&plan.FirstRun{Degrees: "°C", Watch: []plan.Watched{{Where: "bearing"}, {Where: "gear", Most: "70 °C"}}})
	for name, c := range map[string]struct {
		table draw.Table
		want  string
	}{
		"lines":  {linesTable(), "Stage 25 36, Do, and look 0 0, Wanted 0 52, Found 20 0, Done 11 0 tick, row 6"},
		"runs":   {runs, "Stage 0 24, Run 0 0, Read after 0 0, Speed 0 0, bearing, °C 25 0, gear, °C: stop above 70 °C 25 0, Done 11 0 tick, row 6.5"},
		"upkeep": {upkeepTable(&plan.Upkeep{}), " 0 18, Where 0 0, What 0 0, Every 0 22" + strings.Repeat(",  8.5 0", 8) + ", row 13"},
	} {
		got := ""
		for _, col := range c.table.Columns {
			got += fmt.Sprintf("%s %v %v", col.Head, col.Least, col.Most)
			if col.Tick {
				got += " tick"
			}
			got += ", "
		}
		if got += fmt.Sprint("row ", c.table.RowMm); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}
