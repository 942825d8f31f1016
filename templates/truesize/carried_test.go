package truesize

import (
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// carrying is the flange with two holes and a slot of its back punched from the front,
// of which hole B2 lies at (50, 20).
func carrying() (front *plan.Face, part *plan.PartPlan) {
	p := *sheettest.FlangePart()
	f := *p.Faces[0]
	groups := []plan.Group{{Name: "back-a", First: 1, Count: 2, SizeText: "Ø7", DepthText: "through", Marked: parts.Back, PunchedFrom: parts.Front},
		{Name: "back-s", First: 3, Count: 1, SizeText: "slot", DepthText: "through", Marked: parts.Back, PunchedFrom: parts.Front}}
	f.Carried = &plan.Face{Face: parts.Front, Groups: groups,
		Holes: []plan.Hole{{N: 1, Group: "back-a", XMm: 30, YMm: 10, DiameterMm: 7}, {N: 2, Group: "back-a", XMm: 50, YMm: 20, DiameterMm: 7}},
		Slots: []plan.Slot{{N: 3, Group: "back-s", XMm: -40, WidthMm: 6, LengthMm: 20, EndsMm: [2]plan.XY{{XMm: -33}, {XMm: -47}}}}}
	f.Circles = append(slices.Clone(f.Circles), plan.Circle{Label: "back-a from the back", DiameterMm: 7, CentreMm: plan.XY{XMm: 50, YMm: 20}})
	b := plan.Face{Part: f.Part, Face: parts.Back, Outline: f.Outline, MinMm: f.MinMm, MaxMm: f.MaxMm,
		Groups: append(slices.Clone(groups), plan.Group{Name: "deep", First: 4, Count: 1, SizeText: "M5", Marked: parts.Back}),
		Holes: []plan.Hole{{N: 1, Group: "back-a", XMm: -30, YMm: 10, DiameterMm: 7}, {N: 2, Group: "back-a", XMm: -50, YMm: 20, DiameterMm: 7},
			{N: 4, Group: "deep", YMm: -50, DiameterMm: 4.2}}}
	p.Faces = []*plan.Face{&f, &b}
	return &f, &p
}

// TestCarried: a template marks what it carries of the other face, with that face's
// letter, and draws no plain circle there; the other marks only what is its own and
// draws the rest plain, unless all templates are asked for.
func TestCarried(t *testing.T) {
	t.Parallel()
	front, part := carrying()
	own := len(front.Holes)
	for _, c := range []struct {
		which   Policy
		crosses [2]int
		words   [2][]string
		not     [2]string
	}{
		{Useful, [2]int{own + 4, 1}, [2][]string{{"B1", "B2", "B3"}, {"4", "back-a from the front"}}, [2]string{"back-a from the back", "2"}},
		{All, [2]int{own + 4, 3}, [2][]string{{"B2"}, {"1", "2", "4"}}, [2]string{"back-a from the back", "back-a from the front"}},
	} {
		pl := sheettest.JobOf("carried", parts.Millimetres, part)
		chapters, err := apartOf(pl, a4, c.which)
		if err != nil {
			t.Fatal(err)
		}
		for i := range 2 {
			crosses, texts := 0, []string(nil)
			for _, it := range sheettest.Flatten(t, &chapters[i].Sheets[0].Draw, 0, 0, nil) {
				switch item := it.Item.(type) {
				case draw.Text:
					texts = append(texts, item.Content)
				case draw.Shape:
					if _, _, ok := sheettest.CrossAt(item); ok {
						crosses++
					}
				}
			}
			for _, w := range c.words[i] {
				if !slices.Contains(texts, w) {
					t.Errorf("%v, template %d: no %q in %q", c.which, i, w, texts)
				}
			}
			if crosses != c.crosses[i] || slices.Contains(texts, c.not[i]) {
				t.Errorf("%v, template %d: %d crosses, want %d; %q", c.which, i, crosses, c.crosses[i], texts)
			}
		}
	}
	one, err := newPunch(sheettest.JobOf("carried", parts.Millimetres, part), part, front, false)
	if err != nil {
		t.Fatal(err)
	}
	if legend := strings.Join(one.legend, "\n"); !strings.Contains(legend, "B1–B2  Ø7, through; drawn on the back, mirrored here") {
		t.Error(legend)
	}
}

// TestPartOfAnOutline: where a template leaves part of the outline out, it says so once, and
// which edges there are; 40 mm of each are on it. One that leaves nothing out says nothing.
func TestPartOfAnOutline(t *testing.T) {
	t.Parallel()
	for corner, words := range map[string]string{"right-bottom": "the right and the bottom edge", "left-top": "the left and the top edge", "left-bottom": "the left and the bottom edge"} {
		for _, size := range [][2]float64{{460, 340}, {120, 90}} {
			part := platePart(size[0], size[1], 0, 11)
			f := part.Faces[0]
			f.SetAt, _, _ = geom.Corner(corner, geom.Box{Min: f.MinMm, Max: f.MaxMm})
			one, err := newPunch(sheettest.JobOf("set", parts.Millimetres, part), part, f, false)
			if err != nil {
				t.Fatal(err)
			}
			w := window(a4)
			tiles := one.tiles(w.Width(), w.Height())
			g, said, left := tiles[0].grid, 0, false
			for v := -size[1] / 2; v <= size[1]/2; v++ {
				left = left || !g.shows(-size[0]/2, v) || !g.shows(size[0]/2, v)
			}
			for v := -size[0] / 2; v <= size[0]/2; v++ {
				left = left || !g.shows(v, -size[1]/2) || !g.shows(v, size[1]/2)
			}
			for i := range tiles {
				said += strings.Count(strings.Join(tiles[i].captionTexts(), "\n"), "Outline in part, with "+words+".")
			}
			if left != (said == 1) || said > 1 {
				t.Errorf("%s of %v: part left out: %v, said %d times", corner, size, left, said)
			}
			if s := one.set(g); !s.upright || !s.level || s.bore {
				t.Errorf("%s of %v: %+v", corner, size, s)
			}
		}
	}
	for bore, want := range map[float64]string{0: "set it by what there is.", 40: "set it by the bore."} {
		one := tile{part: true, of: &template{boreMm: bore}}
		if got := one.partial(); got != "Outline in part: "+want {
			t.Errorf("bore %g: %q", bore, got)
		}
	}
	soft := tile{part: true, of: &template{boreMm: 40, punch: &punch{part: &plan.PartPlan{Knifed: true}}}} // nothing of it is cut yet
	if got := soft.partial(); got != "Outline in part: draw the rest on the sheet, between what is shown, before it is cut." {
		t.Error(got)
	}
	only := &template{boreMm: 20, setAt: &plan.XY{XMm: -50, YMm: -50}, outline: canvas.Rectangle(100, 100).Translate(-50, -50), core: draw.R(-50, -50, 50, 50)}
	one := tile{part: true, of: only, grid: &grid{area: draw.R(-50, -40, 50, 50), shown: [][]bool{{true}}}}
	if got := one.partial(); got != "Outline in part, with the left edge. The bottom edge is 50 from the middle of the bore here: set it so." {
		t.Error(got)
	}
	one.grid.area = draw.R(-40, -50, 50, 50)
	if got := one.partial(); got != "Outline in part, with the bottom edge. The left edge is 50 from the middle of the bore here: set it so." {
		t.Error(got)
	}
}

// TestEdgesStay: of a plate whose holes lie in its middle the tiles without a hole
// stay as far as it takes an edge each way to set it by; with a bore one will do.
func TestEdgesStay(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		boreMm float64
		at     plan.XY
		tiles  int
		shown  [2]int // column and row of a corner
	}{{0, plan.XY{XMm: -300, YMm: -300}, 3, [2]int{0, 2}}, {0, plan.XY{XMm: 300, YMm: 300}, 3, [2]int{2, 0}}, {20, plan.XY{XMm: -300, YMm: -300}, 2, [2]int{1, 1}}} {
		g := &grid{area: draw.R(-300, -300, 300, 300), xs: []float64{-100, 100}, ys: []float64{100, -100}, shown: [][]bool{{true, true, true}, {true, true, true}, {true, true, true}}}
		part := sheettest.CrowdedPart()
		face := *part.Faces[0]
		face.Outline, face.MinMm, face.MaxMm = "M-300 -300H300V300H-300Z", plan.XY{XMm: -300, YMm: -300}, plan.XY{XMm: 300, YMm: 300}
		face.SetAt = c.at
		face.Holes, face.Slots = []plan.Hole{{N: 1, DiameterMm: 5}}, nil
		if c.boreMm > 0 {
			face.Circles = []plan.Circle{{DiameterMm: c.boreMm}}
		}
		one, err := newPunch(sheettest.JobOf("edges", parts.Millimetres, part), part, &face, false)
		if err != nil {
			t.Fatal(err)
		}
		one.dropBare(g)
		if !g.shown[1][1] || !g.shown[c.shown[1]][c.shown[0]] || g.count() != c.tiles || !one.edged(g) {
			t.Errorf("bore %g: %v", c.boreMm, g.shown)
		}
	}
}
