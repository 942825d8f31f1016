package truesize

import (
	"fmt"
	"path/filepath"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/read"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

var a4 = draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}

// ring is the template of a ring far larger than a sheet.
func ring(t *testing.T, diameter float64) *template {
	t.Helper()
	pl := sheettest.JobOf("tiles", parts.Millimetres, sheettest.RingPart(diameter))
	one, err := newPunch(pl, pl.Parts[0], pl.Parts[0].Faces[0], false)
	if err != nil {
		t.Fatal(err)
	}
	return one
}

// sheetsOf are the template sheets of all parts of a plan, apartOf those that they do
// not share.
func sheetsOf(pl *plan.Plan, paper draw.Frame, which Policy) ([]draw.Chapter, error) {
	c, err := Choose(pl, pl.Parts, paper, which)
	if err != nil {
		return nil, err
	}
	return c.Sheets(nil), nil
}

func apartOf(pl *plan.Plan, paper draw.Frame, which Policy) ([]draw.Chapter, error) {
	c, err := Choose(pl, pl.Parts, paper, which)
	if err != nil {
		return nil, err
	}
	return c.Apart(), nil
}

// TestTiles: every cross is whole on a tile, no seam comes within 5 mm of its
// arms, no tile is larger than the sheet, and each match mark is whole on
// exactly two.
func TestTiles(t *testing.T) {
	t.Parallel()
	one := ring(t, 620)
	for _, f := range []draw.Frame{a4, a4.Turned(), {WidthMm: 279.4, HeightMm: 431.8}} {
		w := window(f)
		tiles := one.tiles(w.Width(), w.Height())
		if len(tiles) < 4 {
			t.Fatalf("only %d tiles", len(tiles))
		}
		for i, m := range one.marks {
			whole := false
			for _, tile := range tiles {
				whole = whole || tile.window.Holds(m)
			}
			if !whole {
				t.Errorf("cross %d is whole on no tile", i)
			}
		}
		g := tiles[0].grid
		for _, m := range one.marks {
			for _, x := range g.xs {
				if x > m.X0-clearMm+1e-9 && x < m.X1+clearMm-1e-9 {
					t.Errorf("a seam at x %g is too near a cross from %g to %g", x, m.X0, m.X1)
				}
			}
			for _, y := range g.ys {
				if y > m.Y0-clearMm+1e-9 && y < m.Y1+clearMm-1e-9 {
					t.Errorf("a seam at y %g is too near a cross from %g to %g", y, m.Y0, m.Y1)
				}
			}
		}
		on := map[string]int{}
		for _, tile := range tiles {
			if tile.window.Width() > w.Width()+1e-9 || tile.window.Height() > w.Height()+1e-9 {
				t.Errorf("tile %d is %g by %g", tile.n, tile.window.Width(), tile.window.Height())
			}
			for _, m := range tile.seams() {
				on[m.letter]++
			}
		}
		if len(on) < 2*(len(tiles)-1) {
			t.Errorf("%d match marks join %d tiles", len(on), len(tiles))
		}
		for letter, n := range on {
			if n != 2 {
				t.Errorf("match mark %s is whole on %d tiles", letter, n)
			}
		}
	}
}

// TestTilesLap: what each tile of every column and row shows beyond its seams is the lap that is glued, 8, at its right
// and below, and the rim to cut off, 4, at its left and above; nothing at the edge of the template.
func TestTilesLap(t *testing.T) {
	t.Parallel()
	g := &grid{area: draw.R(-10, 5, 300, 205), xs: []float64{90, 190}, ys: []float64{130, 60}, shown: [][]bool{{true, true, true}, {true, false, true}, {true, true, true}}}
	left, right := []float64{-10, 90, 190}, []float64{90, 190, 300}
	top, bottom := []float64{205, 130, 60}, []float64{130, 60, 5}
	n, paper := 0, 0.0
	for row := range 3 {
		for col := range 3 {
			cell, seen := g.cell(col, row), g.window(col, row)
			if want := draw.R(left[col], bottom[row], right[col], top[row]); cell != want {
				t.Errorf("cell %d %d: %v, want %v", col, row, cell, want)
			}
			lap := func(inside bool, mm float64) float64 { return map[bool]float64{true: mm}[inside] }
			if want := draw.R(left[col]-lap(col > 0, 4), bottom[row]-lap(row < 2, 8), right[col]+lap(col < 2, 8), top[row]+lap(row > 0, 4)); seen != want {
				t.Errorf("window %d %d: %v, want %v", col, row, seen, want)
			}
			if g.shown[row][col] {
				n, paper = n+1, paper+seen.Width()*seen.Height()
			}
		}
	}
	if g.count() != n || g.paper() != paper {
		t.Errorf("%d tiles of %g, want %d of %g", g.count(), g.paper(), n, paper)
	}
}

// TestDivide: the first sheet of 100 takes up to 92 of a template, 100 less a lap, each other 88 more, and the last
// its rim besides; a seam keeps out of spans, and 20 from what is before.
func TestDivide(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		lo, hi, size, share float64
		spans               [][2]float64
		want                string
	}{
		{0, 100, 100, 0, nil, "[]"}, {0, 100.1, 100, 0, nil, "[92]"}, {5, 305, 100, 0, nil, "[97 185 273]"}, {0, 188, 100, 0, nil, "[92]"}, {0, 188.1, 100, 0, nil, "[92 180]"},
		{0, 150, 100, 1, nil, "[73]"}, {0, 150, 100, 0.5, nil, "[82.5]"}, {0, 150, 100, 0, [][2]float64{{80, 95}}, "[80]"}, {0, 150, 100, 0, [][2]float64{{70, 81}, {80, 95}}, "[70]"}, {0, 150, 100, 0, [][2]float64{{80, 92}}, "[92]"},
		{0, 150, 100, 0, [][2]float64{{54, 95}}, "[54]"}, {0, 150, 100, 0, [][2]float64{{53, 95}}, "[53 141]"}, {0, 180, 100, 1, nil, "[88]"}, {0, 180, 100, 0, [][2]float64{{90, 95}}, "[90]"}, {0, 276, 100, 0, nil, "[92 180]"},
	} {
		got, ok := divide(c.lo, c.hi, c.size, c.share, c.spans)
		if s := fmt.Sprint(got); s != c.want || !ok {
			t.Errorf("%+v: %s %v", c, s, ok)
		}
	}
	if _, ok := divide(0, 500, 36, 0, nil); ok {
		t.Error("sheets of hardly more than their laps")
	}
	if _, ok := divide(0, 100, 36.1, 0, nil); !ok {
		t.Error("sheets a little larger")
	}
}

// TestBareTilesGo: the middle of a ring is not printed, and what is left still
// hangs together.
func TestBareTilesGo(t *testing.T) {
	t.Parallel()
	one := ring(t, 900)
	tiles := one.tiles(186, 261.5)
	g := tiles[0].grid
	all := len(g.shown) * len(g.shown[0])
	if g.count() >= all || !g.connected() {
		t.Errorf("%d of %d tiles, connected %v", g.count(), all, g.connected())
	}
	g.shown = [][]bool{{true, false, true}}
	if g.connected() {
		t.Error("two tiles apart count as connected")
	}
}

func TestLetters(t *testing.T) {
	t.Parallel()
	for n, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 701: "ZZ"} {
		if got := letters(n); got != want {
			t.Errorf("%d is %q, want %q", n, got, want)
		}
	}
}

// resolved is a demo job worked out.
func resolved(tb testing.TB, name string) *plan.Plan {
	tb.Helper()
	job, err := read.Load(filepath.Join("..", "..", "testdata", name, "job.yaml"))
	if err != nil {
		tb.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		tb.Fatal(err)
	}
	return worked.Plan
}

// TestFill prints how much of the sheets the templates of the demos use, and
// keeps it from falling: of the room inside margins, strip and rules, by the
// boxes of what is drawn.
func TestFill(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		job    string
		paper  draw.Frame
		sheets int
		fill   float64
	}{
		{"pugmill", a4, 30, 0.80}, {"pugmill", draw.Frame{WidthMm: 215.9, HeightMm: 279.4}, 32, 0.79},
		{"gatejack", a4, 11, 0.74}, {"gatejack", draw.Frame{WidthMm: 215.9, HeightMm: 279.4}, 12, 0.74},
	} {
		pl := resolved(t, c.job)
		got, err := sheetsOf(pl, c.paper, Useful)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, s := range got[0].Sheets {
			sum += s.FillShare
		}
		n := len(got[0].Sheets)
		t.Logf("%s on %g × %g: %d sheets, mean fill %.0f %%", c.job, c.paper.WidthMm, c.paper.HeightMm, n, 100*sum/float64(n))
		if n > c.sheets || sum/float64(n) < c.fill {
			t.Errorf("%s: %d sheets, %.0f %% full; want at most %d, at least %.0f %%", c.job, n, 100*sum/float64(n), c.sheets, 100*c.fill)
		}
	}
}

// TestPolicy: what the plan calls needless is printed only if all is asked for.
func TestPolicy(t *testing.T) {
	t.Parallel()
	pl := resolved(t, "pugmill")
	count := func(which Policy) int {
		n := 0
		for _, part := range pl.Parts {
			list, err := templatesOf(pl, part, which)
			if err != nil {
				t.Fatal(err)
			}
			n += len(list)
		}
		return n
	}
	if all, useful := count(All), count(Useful); all-useful != 16 || count(None) != 0 {
		t.Errorf("%d templates of %d, %d for none", useful, all, count(None))
	}
}
