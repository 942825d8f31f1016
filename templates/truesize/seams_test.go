package truesize

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// plain is a template of an outline that lies far off all seams.
func plain(area draw.Rect) *template {
	return &template{outline: area.Grown(50).Path(), part: &plan.PartPlan{Title: "Plate"}, name: "face", full: area, core: area}
}

// TestMatchMarks: two marks on each seam between two tiles, at 15 and 85 hundredths of its length, or in steps of 2 mm
// off a hole, towards the middle first; lettered in order, the upright seams of a row from the left, then the level ones.
func TestMatchMarks(t *testing.T) {
	t.Parallel()
	area := draw.R(0, 0, 200, 100)
	for _, c := range []struct {
		name  string
		shown [][]bool
		marks []draw.Rect
		want  []match
	}{
		{"four tiles", [][]bool{{true, true}, {true, true}}, nil, []match{{"A", 80, 62, false}, {"B", 80, 94, false}, {"C", 80, 9, false}, {"D", 80, 51, false}, {"E", 12, 60, true}, {"F", 68, 60, true}, {"G", 98, 60, true}, {"H", 182, 60, true}}},
		{"one of four is left out", [][]bool{{true, true}, {true, false}}, nil, []match{{"A", 80, 66, false}, {"B", 80, 94, false}, {"C", 12, 60, true}, {"D", 68, 60, true}}},
		{"a hole at the lower mark", [][]bool{{true, true}, {false, false}}, []draw.Rect{draw.R(78, 64, 82, 68)}, []match{{"A", 80, 74, false}, {"B", 80, 94, false}}},
		{"a hole at a side of a mark", [][]bool{{true, false}, {true, false}}, []draw.Rect{draw.R(13, 58, 20, 62)}, []match{{"A", 6, 60, true}, {"B", 68, 60, true}}},
		{"holes all along", [][]bool{{true, false}, {true, false}}, []draw.Rect{draw.R(0, 58, 80, 62)}, []match{{"A", 12, 60, true}, {"B", 68, 60, true}}},
	} {
		one := plain(area)
		one.marks = c.marks
		g := &grid{area: area, xs: []float64{80}, ys: []float64{60}, shown: c.shown}
		one.matchMarks(g)
		want := slices.Clone(c.want)
		for i := range want { // along a seam from 60 to 100: 66 and 94
			if want[i].x == 80 && want[i].y == 62 {
				want[i].y = 66
			}
		}
		if !slices.EqualFunc(g.marks, want, func(a, b match) bool {
			return a.letter == b.letter && a.across == b.across && near(a.x, b.x) && near(a.y, b.y)
		}) {
			t.Errorf("%s: %v, want %v", c.name, g.marks, want)
		}
	}
}

// TestSeamLines: a tile is cut along its left and upper seams, which are dashed, and has chain lines where its right and
// lower neighbours are laid; its match marks stand on them, and the words say which it is.
func TestSeamLines(t *testing.T) {
	t.Parallel()
	area := draw.R(0, 0, 600, 480)
	all := []bool{true, true, true}
	g := &grid{area: area, xs: []float64{200, 400}, ys: []float64{320, 160}, shown: [][]bool{all, all, all}}
	of := plain(area)
	one := &tile{of: of, n: 5, grid: g, col: 1, row: 1, cell: g.cell(1, 1), window: g.window(1, 1)}
	const ox, oy = -160.0, -110.0
	s := &draw.Sheet{}
	w := draw.R(one.window.X0+ox, one.window.Y0+oy, one.window.X1+ox, one.window.Y1+oy)
	l := laid{s, draw.NewOccupied(w), &draw.Drawing{}, ox, oy}
	one.seamLines(l)
	one.seamLetters(l)
	one.seamNotes(l)
	want := map[[4]float64][]float64{{40, w.Y0, 40, w.Y1}: draw.CutDash, {240, w.Y0, 240, w.Y1}: draw.ChainDash, {w.X0, 210, w.X1, 210}: draw.CutDash, {w.X0, 50, w.X1, 50}: draw.ChainDash}
	found := 0
	for _, item := range s.Draw.Items {
		if line, ok := item.(draw.Shape); ok && line.WidthMm == draw.LineMm {
			c := line.Path.Coords()
			if dash, ok := want[[4]float64{c[0].X, c[0].Y, c[1].X, c[1].Y}]; ok && slices.Equal(dash, line.DashMm) {
				found++
			}
			if l.Free(draw.R((c[0].X+c[1].X)/2, (c[0].Y+c[1].Y)/2, (c[0].X+c[1].X)/2, (c[0].Y+c[1].Y)/2)) {
				t.Errorf("the line %v is not kept clear", c)
			}
		}
	}
	if found != 4 {
		t.Errorf("%d of 4 seams: %v", found, s.Draw.Items)
	}
	texts := map[string]draw.Text{}
	for _, text := range textsOf(&s.Draw) {
		if text.Content == "cut along this line" { // of the left seam upwards, of the upper one level
			text.Content += fmt.Sprint(text.RotateDeg)
		}
		texts[text.Content] = text
	}
	marks := one.seams()
	if len(marks) != 8 {
		t.Fatalf("%d match marks: %v", len(marks), marks)
	}
	for _, m := range marks {
		text, x, y := texts[m.letter], ox+m.x, oy+m.y
		r := draw.TextRect(text)
		off := math.Hypot(max(0, r.X0-x, x-r.X1), max(0, r.Y0-y, y-r.Y1))
		inside := one.cell.X0+ox < r.X0 && r.X1 < one.cell.X1+ox && one.cell.Y0+oy < r.Y0 && r.Y1 < one.cell.Y1+oy
		if text.SizeMm != 4.4 || !text.Bold || !inside || off < 3 || off > 6+1e-6 {
			t.Errorf("%s at %v, %v: %+v, %v off", m.letter, x, y, text, off)
		}
	}
	drop := draw.DropMm * draw.SmallMm
	for content, at := range map[string][2]float64{ // where the baseline lies across the seam
		"cut along this line90": {40 + 0.7 + (draw.AscentMm+draw.DropMm)*draw.SmallMm - drop, 0}, "cut along this line0": {0, 210 - 3.4 + drop},
		"edge of tile 6 lies on this line": {240 - 3.4 + (draw.AscentMm+draw.DropMm)*draw.SmallMm - drop, 0}, "edge of tile 8 lies on this line": {0, 50 + 0.7 + drop},
	} {
		text, ok := texts[content]
		if got := text.XMm; !ok || at[0] != 0 && (!near(got, at[0]) || text.RotateDeg != 90) {
			t.Errorf("%q: %+v, want at %v", content, text, at)
		}
		if at[1] != 0 && (!near(text.YMm, at[1]) || text.RotateDeg != 0) {
			t.Errorf("%q: %+v, want at %v", content, text, at)
		}
	}
	for _, r := range s.Refers {
		name := map[string]string{of.title(6): "edge of tile 6 lies on this line", of.title(8): "edge of tile 8 lies on this line"}[r.Title]
		text, gap := texts[name], draw.TextWidth(name, draw.SmallMm, false)+1.2
		x, y := text.XMm+gap, text.YMm
		if text.RotateDeg != 0 {
			x, y = text.XMm, text.YMm+gap
		}
		if name == "" || !near(r.XMm, x) || !near(r.YMm, y) || r.RotateDeg != text.RotateDeg || r.SizeMm != draw.SmallMm {
			t.Errorf("%+v after %+v", r, text)
		}
	}
	if len(s.Refers) != 2 {
		t.Errorf("%d numbers of pages", len(s.Refers))
	}
}

// TestSeamLettersInTheWay: where lines are all about a mark its letter is smaller or further off, and at last lies over
// lines, but never over a text; where texts leave no room it has none.
func TestSeamLettersInTheWay(t *testing.T) {
	t.Parallel()
	area := draw.R(0, 0, 200, 80)
	g := &grid{area: area, xs: []float64{100}, shown: [][]bool{{true, true}}}
	g.marks = []match{{"A", 100, 40, false}}
	one := &tile{of: plain(area), n: 1, grid: g, cell: g.cell(0, 0), window: g.window(0, 0)}
	for _, c := range []struct {
		name  string
		lines []float64 // upright ones
		texts []draw.Rect
		size  float64
		far   [2]float64
	}{
		{"free", nil, nil, 4.4, [2]float64{3.9, 4.1}},
		{"a text near", nil, []draw.Rect{draw.R(90, 37, 93, 43)}, 4.4, [2]float64{3, 6.1}},
		{"lines close by", []float64{94, 95, 96, 97}, []draw.Rect{draw.R(97, 0, 120, 80)}, 4.4, [2]float64{6.1, 11.1}},
		{"room for a small one", []float64{86, 89.6, 90.5, 92, 94, 96, 98, 100}, []draw.Rect{draw.R(98.4, 0, 120, 80)}, 3.4, [2]float64{3.9, 11.1}},
		{"lines everywhere", []float64{60, 62, 64, 66, 68, 70, 72, 74, 76, 78, 80, 82, 84, 86, 88, 90, 92, 94, 96, 98, 100, 102, 104, 106, 108}, nil, 4.4, [2]float64{3.9, 4.1}},
		{"texts everywhere", nil, []draw.Rect{draw.R(0, 0, 200, 80)}, 0, [2]float64{}},
	} {
		s := &draw.Sheet{}
		l := laid{s, draw.NewOccupied(one.window), &draw.Drawing{}, 0, 0}
		for _, x := range c.lines {
			l.AddLine(x, 0, x, 80)
		}
		for _, r := range c.texts {
			l.AddText(r)
		}
		one.seamLetters(l)
		texts := textsOf(&s.Draw)
		if c.size == 0 {
			if len(texts) != 0 {
				t.Errorf("%s: %+v", c.name, texts)
			}
			continue
		}
		if len(texts) != 1 {
			t.Fatalf("%s: %d letters", c.name, len(texts))
		}
		r := draw.R(texts[0].XMm, texts[0].YMm, texts[0].XMm+draw.TextWidth("A", c.size, true), texts[0].YMm+draw.AscentMm*c.size)
		if far := math.Hypot(max(0, r.X0-100, 100-r.X1), max(0, r.Y0-40, 40-r.Y1)); texts[0].SizeMm != c.size || far < c.far[0] || far > c.far[1] || l.ClearOfTexts(r) {
			t.Errorf("%s: %v em, %v off at %v, want %v em, %v off", c.name, texts[0].SizeMm, far, r, c.size, c.far)
		}
	}
}

// TestSeamsWhereTheyFall: where marks leave no clear place for a seam, all stretches are as long.
func TestSeamsWhereTheyFall(t *testing.T) {
	t.Parallel()
	everywhere := [][2]float64{{-1000, 1000}}
	for _, c := range []struct {
		lo, hi float64
		want   []float64
	}{{0, 300, []float64{75, 150, 225}}, {-50, 150, []float64{50.0 / 3, 250.0 / 3}}, {0, 276, []float64{92, 184}}, {0, 276.1, []float64{276.1 / 4, 276.1 / 2, 276.1 * 3 / 4}}} {
		got, ok := divide(c.lo, c.hi, 100, 0, everywhere)
		if !ok || !slices.EqualFunc(got, c.want, near) {
			t.Errorf("%v to %v: %v, want %v", c.lo, c.hi, got, c.want)
		}
	}
}

// TestTopKept: the arrow of TOP is kept clear from 3 mm under its point to 5 mm over it, and the word stands beside it
// where the window holds it.
func TestTopKept(t *testing.T) {
	t.Parallel()
	const ox, oy = 50.0, 20.0
	at := plan.XY{XMm: 10, YMm: 30}
	for _, c := range []struct {
		right float64
		word  bool
	}{{200, true}, {ox + at.XMm + 5, false}} {
		room := draw.NewOccupied(draw.R(0, 0, c.right, 100))
		var d draw.Drawing
		laid{Occupied: room, lines: &d, ox: ox, oy: oy}.topMark(at)
		for y, free := range map[float64]bool{-3.6: true, -3: false, 0: false, 4.9: false, 5.6: true} {
			if got := room.Free(draw.R(ox+at.XMm, oy+at.YMm+y, ox+at.XMm, oy+at.YMm+y)); got != free {
				t.Errorf("%v over the point: free %v", y, got)
			}
		}
		texts := textsOf(&d)
		if len(texts) != 0 != c.word || c.word && (texts[0].XMm != at.XMm+3 || texts[0].YMm != at.YMm+1.2 || room.ClearOfTexts(draw.R(ox+at.XMm+4, oy+at.YMm+2, ox+at.XMm+5, oy+at.YMm+3))) {
			t.Errorf("in a window to %v: %+v", c.right, texts)
		}
	}
}

// TestTopTexts: TOP stands with its arrow at the far end of its line, to the right of it, else to the left, else lower;
// a long template has it also near the seat edge, a narrow one the word alone, as large as there is room.
func TestTopTexts(t *testing.T) {
	t.Parallel()
	const ox, oy = 100.0, 10.0
	wide := func(beyond string) float64 { return max(14, draw.TextWidth(beyond, draw.SmallMm, false)) }
	for _, c := range []struct {
		name    string
		wide    float64
		beyond  string
		blocked []draw.Rect
		want    []draw.Text
	}{
		{"free", 60, "the flange", nil, []draw.Text{{XMm: ox + 2, YMm: oy + 9, SizeMm: 4.4, Content: "TOP line"}, {XMm: ox + 7.5, YMm: oy + 49, SizeMm: 5, Content: "TOP"}, {XMm: ox + 7.5, YMm: oy + 45, SizeMm: draw.SmallMm, Content: "the flange"}}},
		{"the right is taken", 60, "up", []draw.Rect{draw.R(ox+2, oy+20, ox+200, oy+200)}, []draw.Text{{XMm: ox + 2, YMm: oy + 9, SizeMm: 4.4, Content: "TOP line"}, {XMm: ox - 7 - wide("up") + 6.5, YMm: oy + 49, SizeMm: 5, Content: "TOP"}, {XMm: ox - 7 - wide("up") + 6.5, YMm: oy + 45, SizeMm: draw.SmallMm, Content: "up"}}},
		{"a long word to the left", 60, "the end of the long tube", []draw.Rect{draw.R(ox+2, oy+20, ox+200, oy+200)}, []draw.Text{{XMm: ox + 2, YMm: oy + 9, SizeMm: 4.4, Content: "TOP line"}, {XMm: ox - 7 - wide("the end of the long tube") + 6.5, YMm: oy + 49, SizeMm: 5, Content: "TOP"}}},
		{"the far end is taken", 60, "up", []draw.Rect{draw.R(0, oy+40, 200, oy+200)}, []draw.Text{{XMm: ox + 7.5, YMm: oy + 31, SizeMm: 5, Content: "TOP"}}},
		{"not long", 40, "up", nil, []draw.Text{{XMm: ox + 7.5, YMm: oy + 29, SizeMm: 5, Content: "TOP"}}},
		{"the seat is taken", 80, "up", []draw.Rect{draw.R(0, 0, 200, oy+12)}, []draw.Text{{XMm: ox + 2, YMm: oy + 13, SizeMm: 4.4, Content: "TOP line"}, {XMm: ox + 7.5, YMm: oy + 69, SizeMm: 5, Content: "TOP"}}},
		{"narrow", 15, "up", nil, []draw.Text{{XMm: ox + 1, YMm: oy + 15 - 1.5 - 4.4, SizeMm: 4.4, Content: "TOP"}}},
		{"narrow, the right taken", 15, "up", []draw.Rect{draw.R(ox+0.6, 0, 200, 200)}, []draw.Text{{XMm: ox - 1 - draw.TextWidth("TOP", 4.4, true), YMm: oy + 15 - 1.5 - 4.4, SizeMm: 4.4, Content: "TOP"}}},
		{"narrower", 10, "up", nil, []draw.Text{{XMm: ox + 1, YMm: oy + 10 - 1.5 - draw.TextMm, SizeMm: draw.TextMm, Content: "TOP"}}},
		{"no room", 60, "up", []draw.Rect{draw.R(0, 0, 200, 200)}, nil},
	} {
		s, room := &draw.Sheet{}, draw.NewOccupied(draw.R(0, 0, 200, 200))
		for _, r := range c.blocked {
			room.AddText(r)
		}
		p := &pattern{dev: &plan.Development{WidthMm: c.wide, Beyond: c.beyond}}
		p.topText(laid{s, room, &draw.Drawing{}, ox, oy})
		texts := textsOf(&s.Draw)
		for _, want := range c.want {
			if !slices.ContainsFunc(texts, func(q draw.Text) bool {
				return q.Content == want.Content && near(q.XMm, want.XMm) && near(q.YMm, want.YMm) && q.SizeMm == want.SizeMm
			}) {
				t.Errorf("%s: no %+v in %+v", c.name, want, texts)
			}
		}
		if c.want == nil && len(texts) != 0 || len(c.want) == 1 && c.name == "narrow" && len(texts) != 1 {
			t.Errorf("%s: %+v", c.name, texts)
		}
	}
}

// TestDiscTop: the disc that is cut out of a face has TOP marked inside its rim, where the window has that.
func TestDiscTop(t *testing.T) {
	t.Parallel()
	const ox, oy = 60.0, 50.0
	for _, c := range []struct {
		name string
		cut  plan.FaceCut
		top  float64 // of the window
		want bool
	}{{"inside", plan.FaceCut{DiameterMm: 80, Inside: true}, 120, true}, {"not to be cut out", plan.FaceCut{DiameterMm: 80}, 120, false}, {"its rim is on another tile", plan.FaceCut{DiameterMm: 80, Inside: true}, 85, false}} {
		s := &draw.Sheet{}
		room := draw.NewOccupied(draw.R(0, 0, 120, c.top))
		(&punch{}).discTop(laid{s, room, &draw.Drawing{}, ox, oy}, c.cut)
		texts := textsOf(&s.Draw)
		if (len(s.Draw.Items) > 0) != c.want {
			t.Errorf("%s: %v", c.name, s.Draw.Items)
		}
		if !c.want {
			continue
		}
		line := s.Draw.Items[0].(draw.Shape).Path.Coords()
		if line[0] != (canvas.Point{X: ox, Y: oy + 36}) || line[1] != (canvas.Point{X: ox, Y: oy + 40}) || room.ClearOfTexts(draw.R(ox-0.9, oy+35.1, ox, oy+36)) {
			t.Errorf("%s: the tick is %v", c.name, line)
		}
		r := draw.R(texts[0].XMm, texts[0].YMm, texts[0].XMm+draw.TextWidth("TOP", draw.SmallMm, true), texts[0].YMm+draw.AscentMm*draw.SmallMm)
		for _, corner := range [][2]float64{{r.X0, r.Y0}, {r.X0, r.Y1}, {r.X1, r.Y0}, {r.X1, r.Y1}} {
			if math.Hypot(corner[0]-ox, corner[1]-oy) > 39.5 {
				t.Errorf("%s: TOP at %v is not inside the disc", c.name, r)
			}
		}
		if r.X0 > ox+8 || r.Y1 < oy+30 {
			t.Errorf("%s: TOP at %v is far from its tick", c.name, r)
		}
	}
}

// TestHeldProfile: a file of a part that is not released is as wide as its words at the least, 1 mm more on either side,
// and 9 mm taller, with the words under the contours.
func TestHeldProfile(t *testing.T) {
	t.Parallel()
	words := draw.TextWidth(draw.NotReleased, 6, true) + 2
	for _, wide := range []float64{20, 300} {
		p := &plan.Profile{Title: "Plate", MaxMm: plan.XY{XMm: wide, YMm: 30}, Contours: []plan.CutContour{{Path: plan.Contour(draw.R(0, 0, wide, 30).Path().ToSVG())}}}
		for _, held := range []bool{false, true} {
			p.Held = held
			page, err := Profile(p)
			if err != nil {
				t.Fatal(err)
			}
			w, h := wide+2, 32.0
			texts := textsOf(&page.Drawing)
			if held {
				w, h = max(w, words), h+9
				if len(texts) != 1 || texts[0].XMm != 1 || texts[0].YMm != 1 || texts[0].SizeMm != 6 {
					t.Errorf("%+v", texts)
				}
			}
			if !near(page.WidthMm, w) || !near(page.HeightMm, h) || !held && len(texts) != 0 {
				t.Errorf("%v wide, held %v: %v x %v, want %v x %v", wide, held, page.WidthMm, page.HeightMm, w, h)
			}
		}
	}
}

// TestAreas: what may be left out of a template: the marks round it; of a plate that is set by two edges all but these
// and its holes, 3 mm more and 60 mm at the least; of a round one a strip of 20 mm at the right where no hole is, and 10
// at the foot; of what is cut along its outline nothing.
func TestAreas(t *testing.T) {
	t.Parallel()
	full, core, hole := draw.R(-10, -10, 410, 310), draw.R(0, 0, 400, 300), draw.R(100, 100, 110, 110)
	at := func(x, y float64) *plan.XY { return &plan.XY{XMm: x, YMm: y} }
	for _, c := range []struct {
		name  string
		marks []draw.Rect
		setAt *plan.XY
		exact bool
		want  []draw.Rect
	}{
		{"exact", []draw.Rect{hole}, nil, true, nil}, {"no holes", nil, nil, false, nil},
		{"set at the lower left", []draw.Rect{hole}, at(0, 0), false, []draw.Rect{draw.R(0, 0, 113, 113)}},
		{"set at the upper right", []draw.Rect{hole}, at(400, 300), false, []draw.Rect{draw.R(97, 97, 400, 300)}},
		{"set at the lower right", []draw.Rect{hole, draw.R(200, 20, 210, 30)}, at(400, 0), false, []draw.Rect{draw.R(97, 0, 400, 113)}},
		{"holes close to the corner", []draw.Rect{draw.R(10, 10, 20, 20)}, at(0, 0), false, []draw.Rect{draw.R(0, 0, 60, 60)}},
		{"holes close to the other corner", []draw.Rect{draw.R(380, 280, 390, 290)}, at(400, 300), false, []draw.Rect{draw.R(340, 240, 400, 300)}},
		{"holes to the other edges", []draw.Rect{draw.R(10, 10, 399, 299)}, at(0, 0), false, []draw.Rect{core}},
		{"round", []draw.Rect{hole}, nil, false, []draw.Rect{draw.R(0, 0, 380, 300), draw.R(0, 10, 380, 300)}},
		{"round, a hole at the right and the foot", []draw.Rect{draw.R(370, 8, 382, 20)}, nil, false, []draw.Rect{draw.R(0, 0, 385, 300), draw.R(0, 5+5, 385, 300)}},
	} {
		one := &template{full: full, core: core, marks: c.marks, setAt: c.setAt, exact: c.exact}
		want := append([]draw.Rect{full, core}, c.want...)
		if got := one.areas(); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", c.name, got, want)
		}
	}
	taped := draw.R(0, 0, 390, 300)
	if got := (&template{full: full, core: core, taped: &taped, marks: []draw.Rect{hole}}).areas(); !slices.Equal(got, []draw.Rect{full, core, taped}) {
		t.Errorf("taped: %v", got)
	}
}

// TestTileNumbers: the only tile has no number, more are numbered from 1 in rows; the first alone says that the outline
// is not all there.
func TestTileNumbers(t *testing.T) {
	t.Parallel()
	pl := &plan.Plan{Units: parts.Millimetres}
	for _, size := range []float64{150, 620} {
		one := ring(t, size)
		tiles := one.tiles(186, 261.5)
		for i, q := range tiles {
			want := i + 1
			if len(tiles) == 1 {
				want = 0
			}
			if q.n != want || q.of != one || q.cell != q.grid.cell(q.col, q.row) || len(tiles) > 1 && q.grid.number(q.col, q.row) != q.n {
				t.Errorf("Ø%v: tile %d of %d is %d in column %d, row %d", size, i, len(tiles), q.n, q.col, q.row)
			}
			if said := q.partial() != ""; said != (i == 0 && one.leaves(q.grid)) {
				t.Errorf("Ø%v: tile %d says %q", size, i, q.partial())
			}
		}
	}
	_ = pl
}
