package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
	"centrepop/templates/sheettest"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// boxesOf are the rectangles of a drawing of a width of line.
func boxesOf(d *draw.Drawing, width float64) (out []draw.Rect) {
	for _, item := range d.Items {
		if s, ok := item.(draw.Shape); ok && s.WidthMm == width && s.Path.Closed() {
			b := s.Path.Bounds()
			out = append(out, draw.R(b.X0, b.Y0, b.X1, b.Y1))
		}
	}
	return out
}

func linesOf(d *draw.Drawing, width float64) (out [][4]float64) {
	for _, item := range d.Items {
		if s, ok := item.(draw.Shape); ok && s.WidthMm == width {
			if c := s.Path.Coords(); len(c) == 2 {
				out = append(out, [4]float64{c[0].X, c[0].Y, c[1].X, c[1].Y})
			}
		}
	}
	return out
}

func textsOf(d *draw.Drawing) (out []draw.Text) {
	for _, item := range d.Items {
		if text, ok := item.(draw.Text); ok {
			out = append(out, text)
		}
	}
	return out
}

// heights is a table as high rows as these, its head with title 9 and alone 5.
func heights(rows ...float64) measured {
	m := measured{headMm: 9, barsMm: 5, rowsMm: rows, sumMm: []float64{0}}
	for i, h := range rows {
		m.sumMm = append(m.sumMm, m.sumMm[i]+h)
	}
	return m
}

// TestHalves: a table is broken where the taller of two columns is lowest, at least three rows in each, or four where it
// goes on from another page; it stays whole where that is no lower by a tenth. Compared with all ways.
func TestHalves(t *testing.T) {
	t.Parallel()
	for _, rows := range [][]float64{{6, 6}, {6, 6, 6, 6, 6}, {6, 6, 6, 6, 6, 6}, {30, 6, 6, 6, 6, 6}, {6, 6, 6, 6, 6, 30, 5, 5}, {5, 7, 9, 11, 13, 8, 6, 4, 10, 12, 7, 5, 6}, {1, 1, 1, 1, 1, 1, 40}} {
		m := heights(rows...)
		for from := range len(rows) {
			for _, head := range []float64{9, 5} {
				least := 3
				if from > 0 {
					least = 4
				}
				at, best := len(rows), m.high(from, len(rows), head)
				for k := from + least; k <= len(rows)-least; k++ {
					left, right := head, m.barsMm
					for i, h := range rows {
						if i >= from && i < k {
							left += h
						} else if i >= k {
							right += h
						}
					}
					if h := max(left, right); h < best-0.1 {
						at, best = k, h
					}
				}
				if k, high := m.halve(from, len(rows), head); k != at || !near(high, best) {
					t.Errorf("%v from %d under %v: %d, %v, want %d, %v", rows, from, head, k, high, at, best)
				}
			}
		}
		if got := m.high(2, 2, 9); got != 0 {
			t.Errorf("no rows are %v high", got)
		}
	}
}

// TestFill: as many rows of a record as stand in two columns of a height, the verdict under the last of them; four at
// least are left for the next page, and fewer than eight are not begun.
func TestFill(t *testing.T) {
	t.Parallel()
	r := recording{measured: heights(slices.Repeat([]float64{6}, 30)...), verdict: draw.Piece{Height: 8}}
	for _, c := range []struct {
		from  int
		room  float64
		n, at int
	}{
		{0, 103, 30, 15}, {0, 102.9, 26, 13}, {0, 83, 26, 13}, {0, 82.9, 24, 12}, {0, 59, 18, 9}, {0, 29, 8, 4}, {0, 28.9, 0, 0},
		{20, 43, 30, 25}, {20, 42.9, 20, 20}, {18, 49, 30, 24}, {18, 41, 26, 22}, {16, 50, 26, 21}, {22, 1000, 30, 26}, {23, 1000, 30, 30},
	} {
		if n, at := r.fill(c.from, c.room); n != c.n || at != c.at {
			t.Errorf("from %d in %v: up to %d, broken at %d, want %d, %d", c.from, c.room, n, at, c.n, c.at)
		}
	}
}

// TestBalance: tables stand in two columns so that the taller is as low as can be; blocks of a cover too.
func TestBalance(t *testing.T) {
	t.Parallel()
	table := func(rows int) measured { return heights(slices.Repeat([]float64{6}, rows)...) }
	for _, c := range []struct {
		rows []int
		want int
	}{{nil, 0}, {[]int{4}, 1}, {[]int{4, 4}, 1}, {[]int{9, 4, 4}, 1}, {[]int{4, 4, 9}, 2}, {[]int{4, 4, 4, 4}, 2}, {[]int{1, 1, 1, 20}, 3}} {
		r := region{}
		for _, n := range c.rows {
			r.narrow = append(r.narrow, table(n))
		}
		if got := r.balance(); got != c.want {
			t.Errorf("%v rows: %d in the left column, want %d", c.rows, got, c.want)
		}
	}
	for _, c := range []struct {
		highs []float64
		split int
		high  float64
	}{{nil, 0, 0}, {[]float64{10}, 0, 10}, {[]float64{10, 10}, 1, 10}, {[]float64{30, 10, 10}, 1, 30}, {[]float64{10, 10, 30}, 2, 30}, {[]float64{10, 20, 15, 5}, 2, 30}} {
		if split, high := lowestSplit(c.highs); split != c.split || high != c.high {
			t.Errorf("%v: %d, %v, want %d, %v", c.highs, split, high, c.split, c.high)
		}
	}
}

// TestParted: a table of more than 14 rows stands in a column in two parts, the second continued.
func TestParted(t *testing.T) {
	t.Parallel()
	for _, n := range []int{1, 14, 15, 40} {
		table := draw.Table{Title: "Holes", Lead: "all", Columns: []draw.Column{{Head: "No."}}}
		for i := range n {
			table.Rows = append(table.Rows, []string{fmt.Sprint(i)})
		}
		list := measure(table, 80).parted()
		var rows []string
		for _, m := range list {
			for _, row := range m.Rows {
				rows = append(rows, row[0])
			}
		}
		if want := map[bool]int{true: 2, false: 1}[n > 14]; len(list) != want || len(rows) != n || rows[n-1] != fmt.Sprint(n-1) {
			t.Errorf("%d rows: %d tables of %q", n, len(list), rows)
		}
		if len(list) == 2 && (list[0].Title != "Holes" || list[0].Lead != "all" || list[1].Title != "Holes (continued)" || list[1].Lead != "" || math.Abs(list[0].whole()-list[1].whole()) > 20) {
			t.Errorf("%d rows: %q of %v and %q of %v", n, list[0].Title, list[0].whole(), list[1].Title, list[1].whole())
		}
	}
}

// TestPackedTools: tools stand each on the first page with room, 1.8 mm apart, the first page having less; the highest first
// where that saves a page.
func TestPackedTools(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		highs       []float64
		first, room float64
		want        string
	}{
		{[]float64{20, 30, 40}, 100, 100, "[[0 1 2]]"}, {[]float64{20, 30, 46.4}, 100, 100, "[[0 1 2]]"}, {[]float64{20, 30, 46.5}, 100, 100, "[[0 1] [2]]"},
		{[]float64{60, 30}, 50, 100, "[[1] [0]]"}, {[]float64{20, 60, 25, 70}, 100, 100, "[[0 1] [2 3]]"}, {[]float64{20, 60, 30, 70}, 100, 100, "[[0 3] [1 2]]"}, {[]float64{30, 30, 60, 60}, 100, 100, "[[0 2] [1 3]]"}, {[]float64{50}, 50, 100, "[[0]]"}, {[]float64{50.1}, 50, 100, "[[] [0]]"},
	} {
		var pieces [][]draw.Piece
		for _, h := range c.highs {
			pieces = append(pieces, []draw.Piece{{Height: h / 2}, {Height: h / 2}})
		}
		if got := fmt.Sprint(packed(pieces, c.first, c.room)); got != c.want {
			t.Errorf("%v on %v and %v: %s, want %s", c.highs, c.first, c.room, got, c.want)
		}
	}
}

// TestHeadsOfPieces: one piece has the word alone, up to four a column each, more one for all.
func TestHeadsOfPieces(t *testing.T) {
	t.Parallel()
	for n, want := range map[int]string{0: "done", 1: "done", 2: "pc 1,pc 2", 4: "pc 1,pc 2,pc 3,pc 4", 5: "all 5"} {
		if got := strings.Join(pieceHeads(n, "done"), ","); got != want {
			t.Errorf("%d: %q, want %q", n, got, want)
		}
	}
}

// TestVerdict: each piece has a row with three boxes of 4.4 mm before their words, and lines for who, when and what;
// a line that would be shorter than 6 mm is left out, and none goes past the width.
func TestVerdict(t *testing.T) {
	t.Parallel()
	d := density(1)
	for _, c := range []struct {
		quantity, rows int
		width          float64
		lines          int // of a row
	}{{1, 1, 190, 3}, {3, 3, 190, 3}, {9, 1, 190, 3}, {1, 1, 140, 2}, {1, 1, 110, 1}, {2, 2, 70, 0}} {
		p := d.verdict(c.quantity, c.width)
		boxes, lines := boxesOf(&p.Draw, draw.LineMm), linesOf(&p.Draw, draw.ThinMm)
		if len(boxes) != 3*c.rows || len(lines) != c.lines*c.rows || !near(p.Height, 5.7*float64(c.rows)+0.8) {
			t.Errorf("%d pieces in %v: %d boxes, %d lines, %v high", c.quantity, c.width, len(boxes), len(lines), p.Height)
			continue
		}
		for i, b := range boxes {
			y, x := -4.6-5.7*float64(i/3), 0.0
			if c.quantity > 1 {
				x = 13
			}
			for _, word := range []string{"Passed", "To rework", "Scrap"}[:i%3] {
				x += draw.TextWidth(word, d.bodyMm(), false) + 10
			}
			if want := draw.R(x, y-0.9, x+4.4, y+3.5); !near(b.X0, want.X0) || !near(b.X1, want.X1) || !near(b.Y0, want.Y0) || !near(b.Y1, want.Y1) {
				t.Errorf("%d pieces: box %d is %v, want %v", c.quantity, i, b, want)
			}
			if !slices.ContainsFunc(textsOf(&p.Draw), func(q draw.Text) bool { return near(q.XMm, x+5.6) && q.YMm == y && q.SizeMm == d.bodyMm() }) {
				t.Errorf("%d pieces: no word after box %d", c.quantity, i)
			}
		}
		for _, l := range lines {
			long := []float64{30, 18}
			if l[1] != l[3] || l[2] > c.width+1e-9 || l[2]-l[0] <= 6 || !near(l[2]-l[0], long[0]) && !near(l[2]-l[0], long[1]) && !near(l[2], c.width) {
				t.Errorf("%d pieces in %v: a line %v", c.quantity, c.width, l)
			}
		}
	}
}

// TestVerdictLines: a line for a hand to write on is 6 mm long at least.
func TestVerdictLines(t *testing.T) {
	t.Parallel()
	d := density(1)
	before := draw.TextWidth("By", d.bodyMm(), false) + 1
	for _, word := range []string{"Passed", "To rework", "Scrap"} {
		before += draw.TextWidth(word, d.bodyMm(), false) + 10
	}
	for long, lines := range map[float64]int{5.9: 0, 6.1: 1} {
		p := d.verdict(1, before+long)
		if got := len(linesOf(&p.Draw, draw.ThinMm)); got != lines {
			t.Errorf("%g mm of room: %d lines", long, got)
		}
	}
}

// TestTicks: each job has a box for each piece, or one of more than eight; a job that does not fit begins a row.
func TestTicks(t *testing.T) {
	t.Parallel()
	jobs := []string{"sawn", "coped", "drilled", "deburred"}
	for _, c := range []struct {
		n, boxes int
		width    float64
		rows     int
	}{{1, 1, 200, 1}, {8, 8, 400, 1}, {9, 1, 200, 1}, {3, 3, 50, 2}, {1, 1, 10, 4}} {
		p := ticks(jobs, c.n, c.width)
		boxes := boxesOf(&p.Draw, draw.ThinMm)
		if len(boxes) != 4*c.boxes || !near(p.Height, 4.6*float64(c.rows)) {
			t.Errorf("%d pieces in %v: %d boxes, %v high", c.n, c.width, len(boxes), p.Height)
		}
		for i, text := range textsOf(&p.Draw) {
			x := text.XMm + draw.TextWidth(text.Content, draw.SmallMm, false) + 1
			for k, b := range boxes[i*c.boxes : (i+1)*c.boxes] {
				if at := x + 4*float64(k); !near(b.X0, at) || !near(b.Width(), 3.4) || !near(b.Height(), 3.4) || !near(b.Y0, text.YMm-0.7) || b.X1 > c.width && c.width > 30 {
					t.Errorf("%d pieces in %v: box %d of %s is %v", c.n, c.width, k, text.Content, b)
				}
			}
			if text.YMm-0.7 < -p.Height {
				t.Errorf("%s lies under its piece", text.Content)
			}
		}
	}
}

// TestLetter: bars are A to Z, then A2 and on.
func TestLetter(t *testing.T) {
	t.Parallel()
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "A2", 51: "Z2", 52: "A3"} {
		if got := letter(i); got != want {
			t.Errorf("%d: %q, want %q", i, got, want)
		}
	}
}

// TestBarPiecesTurned: pieces are named in the order of sawing, with how each is turned; two that one slanting cut parts have
// the sign of it between them.
func TestBarPiecesTurned(t *testing.T) {
	t.Parallel()
	pl := &plan.Plan{Units: parts.Millimetres}
	bar := plan.StockBar{Cuts: []plan.StockCut{
		{Part: "rail", Name: "Rail", LengthMm: 500}, {Part: "rail", Name: "Rail", LengthMm: 500, Shared: true, EndDeg: 45}, {Part: "post", Name: "Post", LengthMm: 300, Shared: true, Turned: true},
		{Part: "post", Name: "Post", LengthMm: 300, Shared: true, StartDeg: 30, Reversed: true}, {Part: "cross", Name: "Cross 2", LengthMm: 120, StartDeg: 30, Turned: true, Reversed: true}}}
	text, signs, wanted := barPieces(pl, bar, map[string]string{"rail": "A", "post": "C"})
	if want := "A 500, A 500 / C 300 ⟲ / C 300 ⇄, Cross 2 120 ⟲ ⇄"; text != want || !wanted || len(signs) != 6 {
		t.Errorf("%q, %v, %v, want %q", text, signs, wanted, want)
	}
	if _, _, wanted := barPieces(pl, bar, map[string]string{"foot": "A"}); wanted {
		t.Error("a bar of other parts is wanted")
	}
}

// TestRoomOfViews: the section of a flat part is 72 mm high at the most, that of a turned one 92, or 56 without faces
// and with fewer than eight sizes; faces take 0.62 of the width, 0.34 beside a turned section, 0.2 beside a long one, and
// leave a fold its width.
func TestRoomOfViews(t *testing.T) {
	t.Parallel()
	part := func(long float64, flat bool, faces, sizes, profiles int) *plan.PartPlan {
		return &plan.PartPlan{Section: &plan.Section{LengthMm: long, MaxMm: 10, Flat: flat}, Faces: make([]*plan.Face, faces), Dimensions: make([]plan.Dimension, sizes), Profiles: make([]plan.FoldView, profiles)}
	}
	for _, c := range []struct {
		name         string
		part         *plan.PartPlan
		sized        bool
		most, shared float64
	}{
		{"without sizes", part(50, false, 1, 0, 0), false, 72, 0.62}, {"flat", part(50, true, 1, 9, 0), true, 72, 0.62}, {"turned with a face", part(50, false, 1, 3, 0), true, 92, 0.34},
		{"turned, few sizes", part(50, false, 0, 7, 0), true, 56, 0.34}, {"turned, more sizes", part(50, false, 0, 8, 0), true, 92, 0.34}, {"long", part(80.1, false, 1, 9, 0), true, 92, 0.2}, {"not so long", part(80, false, 1, 9, 0), true, 92, 0.34},
		{"folded", part(50, true, 1, 9, 1), true, 72, 1 - picture.FoldedMm/180}, {"long, without sizes", part(90, false, 1, 0, 0), false, 72, 0.62},
	} {
		if got := highestMm(c.part, c.sized); got != c.most {
			t.Errorf("%s: %v high, want %v", c.name, got, c.most)
		}
		if got := faceShare(c.part, c.sized, 180); !near(got, c.shared) {
			t.Errorf("%s: faces take %v, want %v", c.name, got, c.shared)
		}
	}
}

// TestFacePanels: faces share their room side by side or one above the other, each as large as it then fits.
func TestFacePanels(t *testing.T) {
	t.Parallel()
	face := &plan.Face{Face: "front", MinMm: plan.XY{XMm: -50, YMm: -40}, MaxMm: plan.XY{XMm: 50, YMm: 40}, Outline: "M-50 -40L50 -40L50 40L-50 40Z"}
	over, under := picture.TopPadMm, picture.CaptionMm
	for _, c := range []struct {
		name        string
		n           int
		wide, each  float64
		column      bool
		panels      int
		high, width float64
	}{
		{"one, by its height", 1, 200, 60, false, 1, 60, 1.25*(60-over-under) + 2*picture.FacePadMm},
		{"one, by its width", 1, 50, 90, false, 1, (50-2*picture.FacePadMm)/1.25 + over + under, 50},
		{"two beside each other", 2, 100, 90, false, 2, (50-2*picture.FacePadMm)/1.25 + over + under, 50},
		{"two one above the other", 2, 200, 90, true, 1, 90, 1.25*(45-over-under) + 2*picture.FacePadMm},
	} {
		got := facePanels(slices.Repeat([]*plan.Face{face}, c.n), c.wide, c.each, c.column)
		if len(got) != c.panels || !near(got[0].Height, c.high) || !near(got[0].Width, c.width) {
			t.Errorf("%s: %d of %v x %v, want %d of %v x %v", c.name, len(got), got[0].Width, got[0].Height, c.panels, c.width, c.high)
		}
	}
}

// TestStepPicture: the step of a joint stands in the middle of its square, 1 mm off its sides along the longer side, what
// comes in it last and in thick lines, what is there in thin ones, with its centre lines.
func TestStepPicture(t *testing.T) {
	t.Parallel()
	box := func(x0, y0, x1, y1 float64, isNew bool) plan.Shape {
		return plan.Shape{Kind: plan.ShapePart, New: isNew, Loops: [][]plan.XY{{{XMm: x0, YMm: y0}, {XMm: x1, YMm: y0}, {XMm: x1, YMm: y1}, {XMm: x0, YMm: y1}}}}
	}
	for _, c := range []struct{ low, high plan.XY }{{plan.XY{XMm: -20, YMm: 30}, plan.XY{XMm: 100, YMm: 90}}, {plan.XY{XMm: 5, YMm: -60}, plan.XY{XMm: 45, YMm: 20}}} {
		w, h := c.high.XMm-c.low.XMm, c.high.YMm-c.low.YMm
		pl := &plan.Plan{Joints: []*plan.JointPlan{{Name: "weld", Pictures: []plan.Picture{{MinMm: c.low, MaxMm: c.high, Centres: [][2]plan.XY{{c.low, c.high}},
			Shapes: []plan.Shape{box(c.low.XMm+w/8, c.low.YMm+h/8, c.low.XMm+w/2, c.low.YMm+h/4, true), box(c.low.XMm+w/2, c.low.YMm+h/8, c.high.XMm-w/8, c.high.YMm-h/8, false)}}}}}}
		d := stepPicture(pl, "weld")
		k := 30 / max(w, h)
		at := func(x, y float64) (float64, float64) { return (32-w*k)/2 + x*k, -(32+h*k)/2 + y*k }
		x0, y0 := at(w/8, h/8)
		x1, y1 := at(w/2, h/4)
		x2, y2 := at(w*7/8, h*7/8)
		for width, want := range map[float64]draw.Rect{draw.ThickMm: draw.R(x0, y0, x1, y1), draw.ThinMm: draw.R(x1, y0, x2, y2)} {
			if got := boxesOf(&d, width); len(got) != 1 || !near(got[0].X0, want.X0) || !near(got[0].Y0, want.Y0) || !near(got[0].X1, want.X1) || !near(got[0].Y1, want.Y1) {
				t.Errorf("%v wide: %v, want %v", width, got, want)
			}
		}
		left, _ := at(0, 0)
		_, top := at(w, h)
		if got := linesOf(&d, draw.HairMm); len(got) == 0 || !near(got[len(got)-1][0], left) || !near(got[len(got)-1][3], top) {
			t.Errorf("centre lines %v", got)
		}
		if n := len(d.Items); d.Items[n-2].(draw.Shape).WidthMm != draw.ThickMm {
			t.Error("what comes is not drawn last")
		}
	}
	for _, pl := range []*plan.Plan{{}, {Joints: []*plan.JointPlan{{Name: "weld"}}}} {
		if d := stepPicture(pl, "weld"); len(d.Items) != 0 {
			t.Errorf("%d items of nothing", len(d.Items))
		}
	}
}

// TestPointedAt: a finding points at its own step before that whose edge its name is, and at no hole of a face.
func TestPointedAt(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		feature string
		at      string // of the steps
	}{{"seat", "seat"}, {"seat-front", "seat"}, {"seat-front-back", "seat front"}, {"collar-back", "collar"}, {"collar-end", ""}, {"bolts", ""}, {"", ""}} {
		for _, first := range []string{"seat front", "seat"} {
			second := map[string]string{"seat front": "seat", "seat": "seat front"}[first]
			part := sheettest.HousingPart()
			part.Faces = nil
			part.Features = []plan.Feature{{N: 7, Name: first, Balloon: plan.XY{XMm: 10, YMm: 50}}, {N: 8, Name: second, Balloon: plan.XY{XMm: 40, YMm: 40}}, {N: 9, Name: "collar", Balloon: plan.XY{XMm: 50, YMm: 30}}, {N: 4, Name: "bolts", Face: "front"}}
			want := c.at
			if c.feature == "seat-front" { // it is the step of that name, which comes before the edge of another
				want = "seat front"
			}
			d := partPicture(part, c.feature)
			var got []string
			for _, text := range textsOf(&d) {
				if len(text.Content) == 1 {
					got = append(got, text.Content)
				}
			}
			if n := map[bool]int{true: 1, false: 0}[want != ""]; len(got) != n || n == 1 && got[0] != "1" {
				t.Errorf("%s: balloons %q", c.feature, got)
			}
			for _, f := range part.Features {
				whole := partPicture(part, f.Name)
				if same := draw.Sum(&whole) == draw.Sum(&d); f.Name == want && !same || f.Name != want && f.Face == "" && same {
					t.Errorf("%s with %s first: points at %s: %v", c.feature, first, f.Name, same)
				}
			}
		}
	}
}

// TestBesideWhich: tables stand beside no part's views or all parts'; of two or three parts also beside those of some.
func TestBesideWhich(t *testing.T) {
	t.Parallel()
	for n, want := range map[int][]uint64{1: {0, 1}, 2: {0, 3, 1, 2}, 3: {0, 7, 1, 2, 3, 4, 5, 6}, 4: {0, 15}, 70: {0, 1<<63 - 1}} {
		if got := besides(n); !slices.Equal(got, want) {
			t.Errorf("%d: %v, want %v", n, got, want)
		}
	}
	l := look{beside: 5}
	for i, want := range []bool{true, false, true, false} {
		if l.besideViews(i) != want {
			t.Errorf("part %d: %v", i, !want)
		}
	}
}

// TestForget: of what was made for trials only that of the density found is kept, which is all that the sheets are drawn of.
func TestForget(t *testing.T) {
	t.Parallel()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	c := contentOf(origin{pl, pl.Parts[0], Patterns{}}, a4)
	for _, d := range []density{1, 0.9, 0.8, 0.6} {
		c.at(d)
		c.operationsAt(d)
		c.viewsAt(d.pictures(), 180)
	}
	if len(c.texts) != 4 || len(c.operations) < 3 || len(c.views) != 4 {
		t.Fatalf("made %d, %d, %d", len(c.texts), len(c.operations), len(c.views))
	}
	c.forget(0.8)
	_, text := c.texts[0.8]
	_, rows := c.operations[density(0.8).em(operationMm)]
	_, shown := c.views[[2]float64{0.8, 180}]
	if !text || !rows || !shown || len(c.texts) != 1 || len(c.operations) != 1 || len(c.views) != 1 {
		t.Errorf("kept %d, %d, %d: %v, %v, %v", len(c.texts), len(c.operations), len(c.views), text, rows, shown)
	}
}

// TestMeasuredLines: a sum to fill in has two lines of 22 mm for each piece, two pieces side by side.
func TestMeasuredLines(t *testing.T) {
	t.Parallel()
	d := density(1)
	for n, rows := range map[int]int{1: 1, 2: 1, 3: 2, 4: 2, 9: 1} {
		part := &plan.PartPlan{Quantity: n, Ladders: []plan.Ladder{{Feature: "bore", Counterpart: "seat", Rule: "− 0.02", Note: "Warm both."}}}
		pieces := d.measuredLines(part, 190)
		var got [][4]float64
		high := 0
		for _, p := range pieces {
			if p.Height == 7 {
				high++
			}
			got = append(got, linesOf(&p.Draw, draw.ThinMm)...)
			for _, l := range linesOf(&p.Draw, draw.ThinMm) {
				if l[1] != -5.8 || l[3] != -5.8 || !near(l[2]-l[0], 22) || l[2] > 190 {
					t.Errorf("%d pieces: %v", n, l)
				}
			}
		}
		heads := pieceHeads(n, "")
		if high != rows || len(got) != 2*len(heads) {
			t.Errorf("%d pieces: %d rows, %d lines", n, high, len(got))
		}
		if len(heads) > 1 {
			first := "pc 2: measured"
			i := slices.IndexFunc(pieces, func(p draw.Piece) bool {
				return slices.ContainsFunc(textsOf(&p.Draw), func(q draw.Text) bool { return q.Content == first && near(q.XMm, 95) && q.YMm == -5.2 && q.Bold })
			})
			if i < 0 {
				t.Errorf("%d pieces: the second does not begin in the middle", n)
			}
		}
	}
}

// TestPieceText: a round piece of stock is named by its diameter, a sheet by both sides however narrow, a bar by its length.
func TestPieceText(t *testing.T) {
	t.Parallel()
	for want, p := range map[string]plan.CutPiece{
		"2 × Flange Ø260": {Part: "Flange", Count: 2, Round: true, LengthMm: 260}, "3 × Gusset 120 × 100": {Part: "Gusset", Count: 3, LengthMm: 120, AcrossMm: 100},
		"2 × Shim 120 × 0.5": {Part: "Shim", Count: 2, LengthMm: 120, AcrossMm: 0.5}, "2 × Rail 500": {Part: "Rail", Count: 2, LengthMm: 500}, "2 × Cap": {Part: "Cap", Count: 2}, // a casting
	} {
		if got := pieceText(p, parts.Millimetres); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestSlotsSayFromWhere: slots alone on a face say where x and y are counted from; with holes, the table of these does.
func TestSlotsSayFromWhere(t *testing.T) {
	t.Parallel()
	face := &plan.Face{Face: "front", MinMm: plan.XY{}, MaxMm: plan.XY{XMm: 100, YMm: 60}, Slots: []plan.Slot{{N: 4, WidthMm: 6, LengthMm: 20, TurnDeg: 30, EndsMm: [2]plan.XY{{XMm: 10, YMm: 20}, {XMm: 22, YMm: 27}}}}}
	for n, want := range []string{"x, y from the bottom left corner.", ""} {
		face.Holes = make([]plan.Hole, n)
		table := density(1).slotTable(face, parts.Millimetres)
		if row := []string{"4", "6 × 20", "30°", "10.00, 20.00", "22.00, 27.00"}; table.Lead != want || !slices.Equal(table.Rows[0], row) {
			t.Errorf("%d holes: %q, %q", n, table.Lead, table.Rows[0])
		}
	}
}

// TestOpeningsSayFromWhere: openings in a round that are measured from its back say for each from which face; what a knife cuts
// in a template has punched holes, and no distances over pins, which would stretch it.
func TestOpeningsSayFromWhere(t *testing.T) {
	t.Parallel()
	front, back := plan.RadialRow{N: 1, Name: "port", SizeText: "8 mm", ClockDeg: 90, ArcMm: 78.54, Datum: "front", DatumMm: 20, OutsideMm: 100}, plan.RadialRow{N: 2, Name: "drain", SizeText: "M8", ClockDeg: 180, ArcMm: 157.08, Datum: "back", DatumMm: 15, OutsideMm: 100}
	for _, c := range []struct {
		shown []plan.RadialRow
		head  string
		want  []string
	}{
		{[]plan.RadialRow{front}, "From FRONT", []string{"1", "port, 8 mm", "90°", "78.54", "20.00", "100"}},
		{[]plan.RadialRow{back, front}, "From", []string{"2", "drain, M8", "180°", "157.08", "BACK 15.00", "100"}},
	} {
		if table := density(1).radialTable(&plan.PartPlan{Shown: c.shown}, parts.Millimetres); table.Columns[4].Head != c.head || !slices.Equal(table.Rows[0], c.want) {
			t.Errorf("%q: %q", table.Columns[4].Head, table.Rows[0])
		}
	}
	face := &plan.Face{Face: "front", Round: true, Holes: []plan.Hole{{N: 1}, {N: 2}}, Groups: []plan.Group{{First: 1, Count: 2, Chords: []plan.Chord{{From: 1, To: 2, Kind: "neighbours", CentreMm: 60, OverMm: 68, BetweenMm: 52}}}}}
	for knifed, want := range map[bool]string{false: "Drill Ø 4 60.00 68.00 52.00", true: "Punch Ø 2 60.00"} {
		var said []string
		for _, table := range density(1).partTables(&plan.Plan{Units: parts.Millimetres}, &plan.PartPlan{Knifed: knifed, Faces: []*plan.Face{face}}, nil) {
			if strings.Contains(table.Title, "between") {
				said = append(append(said, fmt.Sprint(len(table.Columns))), table.Rows[0][1:]...)
			} else if len(table.Rows) == 2 {
				said = append(said, table.Columns[6].Head)
			}
		}
		if got := strings.Join(said, " "); got != want {
			t.Errorf("knifed %v: %q", knifed, got)
		}
	}
}

// TestMachinePicture: the machine is as large as the width less 2 mm at both sides and the height allow, with its
// line of text and 2 mm above and below it.
func TestMachinePicture(t *testing.T) {
	t.Parallel()
	a := &plan.Arrangement{Front: plan.View{MaxMm: plan.XY{XMm: 200, YMm: 50}}}
	for _, c := range []struct{ width, height, want float64 }{{104, 60, 25}, {84, 60, 20}, {204, 40, 40}, {204, 60, 50}} {
		if got := machinePicture(a, c.width, c.height).Height - draw.TextMm - 4; !near(got, c.want) {
			t.Errorf("%v × %v: %v high, want %v", c.width, c.height, got, c.want)
		}
	}
}
