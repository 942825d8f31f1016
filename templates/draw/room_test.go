package draw

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// TestBeside: a label's nearest edge lies so far off in a direction.
func TestBeside(t *testing.T) {
	t.Parallel()
	for deg, want := range map[float64]Rect{0: {13, 17, 23, 23}, 90: {5, 23, 15, 29}, 180: {-3, 17, 7, 23}, 270: {5, 11, 15, 17}} {
		got := Search{X: 10, Y: 20, W: 10, H: 6}.At(3, deg*math.Pi/180)
		if math.Abs(got.X0-want.X0)+math.Abs(got.Y0-want.Y0)+math.Abs(got.X1-want.X1)+math.Abs(got.Y1-want.Y1) > 1e-9 {
			t.Errorf("%g°: %v, want %v", deg, got, want)
		}
	}
	if got := (Search{W: 10, H: 6}).At(3, math.Pi/6); math.Abs((got.X0+got.X1)/2-8*math.Sqrt(3)/2) > 1e-9 || math.Abs((got.Y0+got.Y1)/2-3) > 1e-9 {
		t.Errorf("30°: %v", got)
	}
}

// TestFind: first where it is wanted, then by turns of 15° to both sides all round,
// then a millimetre further, and no further than it may.
func TestFind(t *testing.T) {
	t.Parallel()
	room := NewOccupied(Rect{-100, -100, 100, 100})
	for refuse := range 80 {
		n := 0
		got, ok := room.Find(Search{10, 20, 8, 4, 2, 4.5, 1}, func(Rect) bool { n++; return n > refuse })
		d, i := 2+float64(refuse/24), refuse%24
		turn := float64((i+1)/2) * 15 * math.Pi / 180
		if i%2 == 1 {
			turn = -turn
		}
		want := Search{X: 10, Y: 20, W: 8, H: 4}.At(d, 1+turn)
		if refuse >= 72 {
			if ok {
				t.Errorf("place %d is %v", refuse, got)
			}
		} else if !ok || math.Abs(got.X0-want.X0)+math.Abs(got.Y0-want.Y0) > 1e-9 {
			t.Errorf("place %d is %v, want %v", refuse, got, want)
		}
	}
}

// TestLinesAreKept: what lies on a line is not free, what lies 1.2 mm beside it is,
// for lines that come from anywhere; circles too.
func TestLinesAreKept(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(3, 4))
	window := Rect{0, 0, 100, 80}
	at := func(x, y float64) Rect { return Rect{x, y, x, y} }
	for range 400 {
		x0, y0, x1, y1 := rng.Float64()*300-100, rng.Float64()*300-100, rng.Float64()*300-100, rng.Float64()*300-100
		switch rng.IntN(4) {
		case 0:
			x1 = x0
		case 1:
			y1 = y0
		}
		room := NewOccupied(window)
		room.AddLine(x0, y0, x1, y1)
		long := math.Hypot(x1-x0, y1-y0)
		for s := 0.0; s <= long; s += 0.9 {
			x, y := x0+(x1-x0)*s/long, y0+(y1-y0)*s/long
			if window.HasPoint(x, y) && room.Free(at(x, y)) {
				t.Fatalf("%g, %g on the line %g, %g to %g, %g is free", x, y, x0, y0, x1, y1)
			}
			x, y = x-(y1-y0)/long*1.2, y+(x1-x0)/long*1.2
			if window.HasPoint(x, y) && !room.Free(at(x, y)) {
				t.Fatalf("%g, %g beside the line %g, %g to %g, %g is not free", x, y, x0, y0, x1, y1)
			}
		}
	}
	for _, r := range []float64{0.5, 3, 25} {
		room := NewOccupied(window)
		room.AddCircle(50, 40, r)
		for deg := range 360 {
			sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
			if room.Free(at(50+r*cos, 40+r*sin)) || !room.Free(at(50+(r+1.2)*cos, 40+(r+1.2)*sin)) || r > 2 && !room.Free(at(50+(r-1.2)*cos, 40+(r-1.2)*sin)) {
				t.Fatalf("a circle of %g at %d°", r, deg)
			}
		}
	}
}

// TestBookmarks: a chapter has its entry at its first page, a part at its first
// chapter, and what begins on a page one under it.
func TestBookmarks(t *testing.T) {
	t.Parallel()
	frame := Frame{WidthMm: 210, HeightMm: 297}
	sheet := func(starts ...string) *Sheet { return &Sheet{Frame: frame, Starts: starts} }
	doc := Bind(Job{Name: "Mill", Revision: "B"}, []Chapter{{Name: "Cover", Sheets: []*Sheet{sheet()}}, {Part: "Lid", Name: "Drawing", Sheets: []*Sheet{sheet(), sheet("Bolts")}}, {Part: "Lid", Name: "Record", Sheets: []*Sheet{sheet(), sheet()}}, {Part: "Box", Name: "Drawing", Sheets: []*Sheet{sheet()}}}, "all")
	want := [][]Bookmark{{{"Cover", 0}}, {{"Lid", 0}, {"Drawing", 1}}, {{"Bolts", 1}}, {{"Record", 1}}, nil, {{"Box", 0}, {"Drawing", 1}}}
	if len(doc.Pages) != len(want) || doc.Title != "Mill, revision B" {
		t.Fatalf("%d pages of %s", len(doc.Pages), doc.Title)
	}
	for i, page := range doc.Pages {
		if len(page.Bookmarks) != len(want[i]) {
			t.Errorf("page %d: %v, want %v", i+1, page.Bookmarks, want[i])
			continue
		}
		for k := range want[i] {
			if page.Bookmarks[k] != want[i][k] {
				t.Errorf("page %d: %v, want %v", i+1, page.Bookmarks, want[i])
			}
		}
	}
	if to := doc.Marks(); to["Drawing"] != 1 || to["Record"] != 3 || to["Box"] != 5 {
		t.Errorf("marks %v", to)
	}
}

// TestHeads: the rule of a heading lies under its text and over what follows; that of
// a sheet's head under its facts.
func TestHeads(t *testing.T) {
	t.Parallel()
	for name, p := range map[string]Piece{"heading": Heading("Holes", 60), "running head": RunningHead("Flange", "holes", 60)} {
		text, rule := written(p.Draw.Items)[0], drawnLines(p.Draw.Items)[0]
		if r := TextRect(text); rule[1] != rule[3] || rule[0] != 0 || rule[2] != 60 || rule[1] > text.YMm-0.5 || rule[1] < -p.Height+0.5 || r.Y1 > 0 {
			t.Errorf("%s: rule at %v, text at %v of %v", name, rule, r, p.Height)
		}
	}
	var p Piece
	p.Facts(60, "steel", "plate 12 mm", "1.2 kg")
	rule, last := drawnLines(p.Draw.Items)[0], written(p.Draw.Items)
	if y := last[len(last)-1].YMm; rule[1] > y-0.8 || math.Abs(rule[1]+p.Height-2.4) > 1e-9 || rule[2] != 60 {
		t.Errorf("facts: rule at %v, the last line at %v of %v", rule, y, p.Height)
	}
	// A short lead stands beside a compact title, from one line; a long one under it.
	for _, c := range []struct {
		lead   string
		beside bool
	}{{"Calipers.", true}, {"Calipers unless a gauge is named. Others: ISO 273.", true}, {strings.Repeat("Calipers unless a gauge is named. ", 8), false}} {
		pieces := (Table{Title: "Holes", Compact: true, Tight: true, Lead: c.lead}).Head(60)
		texts := written(pieces[0].Draw.Items)
		if got := len(pieces) == 1 && len(texts) > 1; got != c.beside {
			t.Errorf("%d pieces, %d texts in the first; beside %v", len(pieces), len(texts), c.beside)
		}
		if c.beside && (math.Abs(texts[0].YMm-texts[1].YMm) > 1e-9 || TextRect(texts[1]).X0 < TextRect(texts[0]).X1+3 || TextRect(texts[1]).X1 > 60) {
			t.Errorf("title at %v, lead at %v", TextRect(texts[0]), TextRect(texts[1]))
		}
		if last := TextRect(texts[len(texts)-1]); c.beside && last.Y0 < 1-pieces[0].Height {
			t.Errorf("%q: the last line at %v of %v", c.lead, last, pieces[0].Height)
		}
	}
	compact := (Table{Title: "Holes", Compact: true}).Head(60)
	if r := TextRect(written(compact[0].Draw.Items)[0]); r.Y1 > 0 || r.Y0 < -compact[0].Height || compact[0].Height > 2*TextMm || !compact[0].Keep {
		t.Errorf("a compact title at %v of %v", r, compact[0].Height)
	}
}

// TestWrapFacts: no fact is broken over two lines if it fits on one; what is empty is
// left out.
func TestWrapFacts(t *testing.T) {
	t.Parallel()
	facts := []string{"S235", "", "stock: plate 12, laser cut", "TOP marked by: punch"}
	whole := TextWidth(strings.Join([]string{facts[0], facts[2], facts[3]}, " · "), 3.8, false)
	for width, want := range map[float64][]string{
		whole + 0.1: {"S235 · stock: plate 12, laser cut · TOP marked by: punch"},
		whole - 0.1: {"S235 · stock: plate 12, laser cut", "TOP marked by: punch"},
		30:          {"S235", "stock: plate 12,", "laser cut", "TOP marked by:", "punch"},
	} {
		if got := WrapFacts(facts, 3.8, width); !slices.Equal(got, want) {
			t.Errorf("%.1f mm: %q, want %q", width, got, want)
		}
	}
	one, two := Piece{}, Piece{}
	one.Facts(whole*0.95, facts...)
	two.Facts(whole*0.85, facts...)
	if high := two.Height - one.Height; high < FactsMm {
		t.Errorf("facts that are a little too long take a line more: %.2f mm", high)
	}
}
