package draw

import (
	"math"
	"testing"
)

// piece is one of a height with something in it.
func piece(high float64, keep bool) Piece {
	p := Piece{Height: high, Keep: keep}
	p.Draw.Add(Box(Rect{0, -high, 5, 0}, LineMm))
	return p
}

func newFlow(wide, high, header float64) *Flow {
	return NewFlow(func(int) (*Sheet, Piece) { return &Sheet{Frame: Frame{WidthMm: wide, HeightMm: high}}, Space(header) })
}

// places are where the pieces of a page stand, but for its header.
func places(s *Sheet) (out [][2]float64) {
	for _, b := range s.Blocks[1:] {
		out = append(out, [2]float64{b.XMm, b.TopMm})
	}
	return out
}

func same(a, b [][2]float64) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if math.Hypot(a[i][0]-b[i][0], a[i][1]-b[i][1]) > 1e-9 {
			return false
		}
	}
	return true
}

// TestBody: 8 mm of margin, the title block of 8.5 mm, on paper under 185 mm two rows
// of it, and 2.5 mm over that.
func TestBody(t *testing.T) {
	t.Parallel()
	for frame, want := range map[Frame]Rect{
		{WidthMm: 210, HeightMm: 297}: {8, 19, 202, 289}, {WidthMm: 297, HeightMm: 210}: {8, 19, 289, 202}, {WidthMm: 185, HeightMm: 250}: {8, 19, 177, 242}, {WidthMm: 184.9, HeightMm: 250}: {8, 27.5, 176.9, 242},
	} {
		if got := frame.Body(); math.Abs(got.X1-want.X1) > 1e-9 || got.X0 != want.X0 || got.Y0 != want.Y0 || got.Y1 != want.Y1 {
			t.Errorf("%v: %v, want %v", frame, got, want)
		}
	}
	if got := (Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}).Turned(); got != (Frame{297, 210, "A4"}) {
		t.Errorf("turned: %v", got)
	}
}

// TestFlow: pieces stand one under another, in columns side by side, and go on to the
// next column and page; what belongs to the next piece goes with it; room is left
// neither at the head of a column nor past its foot.
func TestFlow(t *testing.T) {
	t.Parallel()
	// A body of 84 × 81 from 8, 27.5 to 108.5, its header 20: from 88.5 down, 61.
	f := newFlow(100, 116.5, 20)
	if f.Width() != 84 || f.Left() != 61 || f.Tallest() != 61 || !f.AtTop() {
		t.Fatalf("%v wide, %v left of %v", f.Width(), f.Left(), f.Tallest())
	}
	f.Add(Space(5), piece(10, false), Space(5), piece(20, false))
	if got := places(f.Sheets[0]); !same(got, [][2]float64{{8, 88.5}, {8, 73.5}}) || f.Left() != 26 {
		t.Errorf("%v, %v left", got, f.Left())
	}
	f.Columns(2)
	if f.Width() != 39 || f.Left() != 26 || f.Column() != 0 {
		t.Errorf("a column is %v wide, %v left", f.Width(), f.Left())
	}
	f.Add(piece(20, false), piece(6, false), piece(10, false), Space(30), piece(1, false))
	// 26 fit to the hair; the next goes to the right, and the room after it ends at the foot.
	if got := places(f.Sheets[0])[2:]; !same(got, [][2]float64{{8, 53.5}, {8, 33.5}, {53, 53.5}}) {
		t.Errorf("in columns: %v", got)
	}
	if len(f.Sheets) != 2 || !same(places(f.Sheets[1]), [][2]float64{{8, 88.5}}) {
		t.Fatalf("the next page holds %v", places(f.Sheets[1]))
	}
	// A heading that would stand alone goes with what it heads.
	f = newFlow(100, 116.5, 20)
	f.Add(piece(45, false), piece(8, true), piece(9, false))
	if got := places(f.Sheets[1]); !same(got, [][2]float64{{8, 88.5}, {8, 80.5}}) {
		t.Errorf("a heading and its text: %v", got)
	}
	f = newFlow(100, 116.5, 20)
	f.Add(piece(44, false), piece(8, true), piece(9, false))
	if len(f.Sheets) != 1 {
		t.Error("a heading that has room for its text goes to the next page")
	}
	// Columns that begin low on a page are left for a new one by what is taller.
	f = newFlow(100, 116.5, 20)
	f.Add(piece(50, false))
	f.Columns(2)
	f.Add(piece(30, false))
	if len(f.Sheets) != 2 || !same(places(f.Sheets[1]), [][2]float64{{8, 88.5}}) {
		t.Errorf("%d pages", len(f.Sheets))
	}
	// A trial draws nothing, and is over after its pages.
	tr := NewTrial(func(int) (*Sheet, Piece) { return &Sheet{Frame: Frame{WidthMm: 100, HeightMm: 116.5}}, Space(20) }, 1)
	tr.Add(piece(60, false))
	if tr.Over() || len(tr.Sheets[0].Draw.Items) != 0 {
		t.Error("one page is more than one")
	}
	if tr.Add(piece(60, false)); !tr.Over() {
		t.Error("two pages are no more than one")
	}
}

// TestBlocks: headings, lists and cautions by their heights, their texts inside.
func TestBlocks(t *testing.T) {
	t.Parallel()
	for name, p := range map[string]Piece{
		"heading": Heading("Holes and slots", 60), "caution": CautionBox("Sharp edges: wear gloves and keep your hands off the wheel.", 3.8, 80), "short caution": CautionBox("Hot.", 3.8, 80),
		"numbered": Numbered("1, 2", "A text that is long enough for two lines or three.", 60), "running head": RunningHead("Flange", "holes", 60), "stack": Stack(Paragraph("–", "A text that is long enough for two lines or three.", 3, false, 40)...),
	} {
		items := p.Draw.Items
		for k := 0; k < len(items); k++ {
			if g, ok := items[k].(Group); ok {
				for _, in := range g.Drawing.Items {
					if text, ok := in.(Text); ok {
						q := g.Transform
						text.XMm, text.YMm = text.XMm+q[0][2], text.YMm+q[1][2]
						items = append(items, text)
					} else if inner, ok := in.(Group); ok {
						inner.Transform = g.Transform.Mul(inner.Transform)
						items = append(items, inner)
					}
				}
			}
		}
		lines := written(items)
		if len(lines) == 0 {
			t.Errorf("%s says nothing", name)
		}
		for i, text := range lines {
			r := TextRect(text)
			if r.Y1 > 1e-9 || r.Y0 < -p.Height-1e-9 || r.X0 < -1e-9 || r.X1 > 80 {
				t.Errorf("%s, %v high: %q lies at %v", name, p.Height, text.Content, r)
			}
			for _, other := range lines[:i] {
				if TextRect(other).Meets(Rect{r.X0, text.YMm, r.X1, r.Y1}) && other.YMm != text.YMm {
					t.Errorf("%s: %q lies on %q", name, text.Content, other.Content)
				}
			}
		}
	}
	if got := CautionBox("Hot.", 1.9, 80).Height; got != 5 {
		t.Errorf("a short caution of half the size is %v high", got)
	}
	if got := CautionBox("Hot.", 3.8, 80).Height; got != 10 {
		t.Errorf("a short caution is %v high", got)
	}
	lines := Wrap("Sharp edges: wear gloves and keep your hands off the wheel.", 3.8, true, 80-17)
	if got, want := CautionBox("Sharp edges: wear gloves and keep your hands off the wheel.", 3.8, 80).Height, max(10, float64(len(lines))*3.8*Leading+3); math.Abs(got-want) > 1e-9 {
		t.Errorf("a caution of %d lines is %v high, want %v", len(lines), got, want)
	}
	if n := Notes("Notes", nil, 80); n != nil {
		t.Errorf("no notes: %v", n)
	}
	if n := Notes("Notes", []string{"a", "b"}, 80); len(n) != 4 || !n[0].Keep || math.Abs(HeightMm(n...)-n[0].Height-2*TextMm*Leading-4) > 1e-9 {
		t.Errorf("two notes: %d pieces, %v high", len(n), HeightMm(n...))
	}
}

// TestRoomiest: the first way of the fewest pages, of as many pages that with the least rest; none is tried after one page
// with no rest.
func TestRoomiest(t *testing.T) {
	t.Parallel()
	type cost struct {
		pages int
		rest  float64
	}
	for _, c := range []struct {
		ways        []cost
		best, tried int
	}{
		{[]cost{{3, 0}, {2, 0}, {2, 0}}, 1, 3}, {[]cost{{1, 0.5}, {1, 0.2}, {1, 0}, {1, 0}}, 2, 3}, {[]cost{{1, 0}, {1, -1}}, 0, 1}, {[]cost{{2, 1}, {2, 0.5}}, 1, 2},
		{[]cost{{2, 0}, {1, 9}}, 1, 2}, {[]cost{{2, 0}, {3, -1}}, 0, 2}, {[]cost{{1, 2}, {2, 0}, {1, 3}}, 0, 3}, {[]cost{{2, 0}, {2, 0}, {2, -1}}, 2, 3}, {[]cost{{1, 0.5}, {1, 0.5}}, 0, 2}, {nil, 0, 0},
	} {
		numbers := make([]int, len(c.ways))
		for i := range numbers {
			numbers[i] = i
		}
		tried := 0
		best, way := Roomiest(numbers, func(i int) cost { tried++; return c.ways[i] }, func(w cost) (int, float64) { return w.pages, w.rest })
		if best != c.best || tried != c.tried || len(c.ways) > 0 && way != c.ways[best] {
			t.Errorf("%v: %d after %d, %v", c.ways, best, tried, way)
		}
	}
	if pages, rest := PagesOf(make([]*Sheet, 3)); pages != 3 || rest != 0 {
		t.Errorf("three sheets are %d pages and %v", pages, rest)
	}
}

// A head says whether its line held all of it; the line is no wider than the page either way.
func TestHeadLine(t *testing.T) {
	t.Parallel()
	const title, rest = "Orchard cider grinder and press", "general arrangement, Pressing barrel, tied to the machine by no joint"
	wide := TextWidth(title+" – "+rest, 4.6, true)
	for width, want := range map[float64]bool{wide + 0.1: true, 0.5 * wide: false, 60: false} {
		p, whole := HeadLine(title, rest, width)
		text := p.Draw.Items[0].(Text)
		if whole != want || (text.Content == title+" – "+rest) != want || TextWidth(text.Content, text.SizeMm, true) > width || p.Height != 10 {
			t.Errorf("%v wide: %v, %+v", width, whole, text)
		}
	}
}
