package truesize

import (
	"math"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// TestSqueeze: two templates of a sheet go to two others with room for one each;
// where one finds no room, the sheets stay as they are.
func TestSqueeze(t *testing.T) {
	t.Parallel()
	block := func(w, h float64) tile {
		r := draw.R(0, 0, w, h)
		return tile{of: &template{part: &plan.PartPlan{Title: "Plate"}, side: "FRONT"}, window: r, cell: r}
	}
	sheet := func(tiles ...tile) *page {
		p := newPage(a4)
		for _, one := range tiles {
			if !p.put(one) {
				t.Fatal("no room")
			}
		}
		return p
	}
	for _, c := range []struct {
		second float64 // height of the second template to share out
		want   []int   // templates on each sheet left
	}{{80, []int{2, 2}}, {130, []int{1, 1, 2}}} {
		pages := []*page{sheet(block(180, 150)), sheet(block(180, 150)), sheet(block(150, 80), block(150, c.second))}
		var got []int
		for _, p := range squeeze(pages, waysOf(a4)) {
			got = append(got, len(p.tiles))
		}
		if len(got) != len(c.want) {
			t.Fatalf("%v mm: %v templates on the sheets, want %v", c.second, got, c.want)
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%v mm: %v templates on the sheets, want %v", c.second, got, c.want)
			}
		}
	}
}

// TestTopLineOpensAtMarks: the TOP line ends at the arms of each cross on it, and
// passes one beside it.
func TestTopLineOpensAtMarks(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) plan.PatternMark { return plan.PatternMark{CentreMm: plan.XY{XMm: x, YMm: y}} }
	p := &pattern{dev: &plan.Development{Marks: []plan.PatternMark{at(0, 60), at(0.2, 20), at(9, 40)}}}
	line := canvas.MustParseSVGPath("M0 0V100")
	const arm = draw.CrossArmMm
	var got []float64
	for _, q := range p.openAtMarks(line).Coords() {
		got = append(got, q.Y)
	}
	want := []float64{0, 20 - arm, 20 + arm, 60 - arm, 60 + arm, 100}
	if !slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
		t.Errorf("the line turns at %v, want %v", got, want)
	}
}

// TestNarrowTileIsNamed: a strip as high as its sheet, too narrow for a heading, says
// upwards what it is; a wide one says it across.
func TestNarrowTileIsNamed(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ widthMm, turned float64 }{{28, 90}, {100, 0}} {
		p := newPage(a4)
		room := window(p.frame)
		of := &template{part: &plan.PartPlan{Title: "Tube"}, side: "this side out", outline: room.Path(), draw: func(laid) {}}
		for n, w := range []float64{60, c.widthMm} {
			r := draw.R(0, 0, w, room.Height())
			if !p.put(tile{of: of, n: n + 1, col: n, window: r, cell: r, grid: &grid{area: r, xs: []float64{0}, shown: [][]bool{{true, true}}}}) {
				t.Fatal("no room")
			}
		}
		var named []draw.Text
		between := 0
		for _, item := range p.draw(&plan.Plan{}).Draw.Items {
			if text, ok := item.(draw.Text); ok && text.Bold && text.Content == "Tube · tile 2 of 2 · this side out" {
				named = append(named, text)
			}
			if line, ok := item.(draw.Shape); ok && math.Abs(line.Path.Bounds().X0-room.X0-60-gapMm/2)+line.Path.Bounds().W()+math.Abs(line.Path.Bounds().H()-room.Height()) < 1e-6 {
				between++
			}
		}
		if between != 1 {
			t.Errorf("%d lines between the two", between)
		}
		if len(named) != 1 || named[0].RotateDeg != c.turned {
			t.Errorf("%v mm wide: %+v, want one turned by %v°", c.widthMm, named, c.turned)
		}
	}
}

// A cell of a tile's head that has no room for all its texts has whole ones, and where the
// others stand: none of them is cut off.
func TestHeadTextsAreWhole(t *testing.T) {
	t.Parallel()
	s := &draw.Sheet{}
	c := stripCell{lines: []string{"1–8 Ø11 for M10, through, PCD 156", "9–12 Ø17.5 for M16, through, PCD 348", "B1–B3 Ø5"}, sizes: []float64{threeLinesMm}, more: "more: see tile 1"}
	c.draw(s, 0, 44, draw.R(0, 0, 200, 12))
	var said []string
	for _, item := range s.Draw.Items {
		said = append(said, item.(draw.Text).Content)
	}
	if len(said) != 2 || said[0] != c.lines[0] || said[1] != c.more {
		t.Errorf("%q", said)
	}
	// Three short lines are as large as three may be, two as they are.
	for n, size := range map[int]float64{2: 4, 3: threeLinesMm} {
		if all, sizes := (stripCell{lines: []string{"one", "two", "three"}[:n], sizes: []float64{4}}).running(44); len(all) != n || sizes[0] > size || sizes[0] < size-0.11 {
			t.Errorf("%q of %v mm, want %v", all, sizes, size)
		}
	}
}

// What is marked is no circle besides: a hole of its size in its place, but the circle that holes lie on stays.
func TestCirclesBesideSpots(t *testing.T) {
	t.Parallel()
	at := plan.XY{XMm: 30}
	p := &punch{face: &plan.Face{Circles: []plan.Circle{{CentreMm: at, DiameterMm: 10}, {CentreMm: at, DiameterMm: 18}, {DiameterMm: 10}, {CentreMm: at, DiameterMm: 10, Pitch: true}}}, marked: marked{spots: []spot{{at: at, wideMm: 10}}}}
	if got := p.circles(); !slices.Equal(got, p.face.Circles[1:]) {
		t.Errorf("%+v", got)
	}
}

// TestPrice: a template on two tiles is a cut one, on one or none it is not; what it leaves out costs as much paper as
// what it shows.
func TestPrice(t *testing.T) {
	one := &template{full: draw.R(0, 0, 100, 60)}
	of := func(area draw.Rect, windows ...draw.Rect) (tiles []tile) {
		for _, w := range windows {
			tiles = append(tiles, tile{of: one, window: w, grid: &grid{area: area}})
		}
		return tiles
	}
	for _, c := range []struct {
		name  string
		tiles []tile
		want  price
	}{
		{"none", nil, price{}},
		{"whole", of(one.full, one.full), price{tileCost: 1, paperCost: 6000}},
		{"in two that lap by 10", of(one.full, draw.R(0, 0, 55, 60), draw.R(45, 0, 100, 60)), price{cutCost: 1, tileCost: 2, paperCost: 6600}},
		{"without a corner", of(draw.R(0, 0, 80, 50), draw.R(0, 0, 80, 50)), price{tileCost: 1, paperCost: 2000 + 4000}},
	} {
		var got price
		if got.add(one, c.tiles); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	if a, b := (price{1, 0, 2, 5}), (price{0, 9, 2, 6}); a.less(b, []int{cutCost, paperCost}) || !a.less(b, []int{tileCost, paperCost}) || a.less(a, []int{cutCost}) {
		t.Error("what counts first decides, then what counts next")
	}
}
