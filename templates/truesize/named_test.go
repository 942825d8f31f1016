package truesize

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// textsOf are the texts of a drawing and of its groups.
func textsOf(d *draw.Drawing) (out []draw.Text) {
	for _, item := range d.Items {
		switch it := item.(type) {
		case draw.Text:
			out = append(out, it)
		case draw.Group:
			out = append(out, textsOf(it.Drawing)...)
		}
	}
	return out
}

// TestTileMap: the first of three tiles or more says where each lies and on which
// page; the note at a seam names the page of the tile that is laid there; of two tiles
// the note alone does.
func TestTileMap(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		long  float64
		cells int
	}{{900, 4}, {450, 0}} {
		outline := canvas.Rectangle(c.long, 120)
		area := draw.R(0, 0, c.long, 120)
		of := &template{part: &plan.PartPlan{Title: "Rail"}, name: "blank", side: "this side out", exact: true, outline: outline, full: area, core: area,
			draw: func(laid) {}}
		side := a4.Turned()
		tiles := of.tiles(window(side).Width(), window(side).Height())
		var all draw.Chapter
		for _, one := range tiles {
			p := &page{frame: side, tiles: []placed{{tile: one}}}
			s := p.draw(&plan.Plan{})
			p.close(&plan.Plan{}, s)
			all.Sheets = append(all.Sheets, s)
		}
		cells := 0
		for _, text := range textsOf(&all.Sheets[0].Draw) {
			if strings.HasPrefix(text.Content, "tile ") && !text.Bold {
				cells++
			}
		}
		doc := draw.Bind(draw.Job{}, []draw.Chapter{{Sheets: []*draw.Sheet{{}}}, all}, "")
		var pages []string
		for _, text := range textsOf(&doc.Pages[1].Drawing) {
			if text.Bold && text.SizeMm == draw.SmallMm && strings.HasPrefix(text.Content, "page ") {
				pages = append(pages, text.Content)
			}
		}
		want := []string{"page 3", "page 2", "page 3", "page 4", "page 5"}[:1+c.cells]
		if cells != c.cells || !slices.Equal(pages, want) {
			t.Errorf("%v mm on %d sheets: %d cells, pages %q, want %q", c.long, len(tiles), cells, pages, want)
		}
	}
}

// TestTapedSeam: what goes round goes without its tab where that saves a tile, and says that
// its seam is taped; else it has the tab.
func TestTapedSeam(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		round float64
		tiles int
		taped bool
		kind  plan.DevelopmentKind
	}{{520, 2, true, plan.WrapPattern}, {500, 2, false, plan.WrapPattern}, {250, 1, false, plan.WrapPattern}, {268, 1, true, plan.WrapPattern}, {540, 3, false, plan.WrapPattern},
		{520, 2, true, plan.BranchPattern}, {500, 2, false, plan.BranchPattern}} {
		number := strconv.FormatFloat(c.round, 'f', -1, 64)
		dev := &plan.Development{Kind: c.kind, Title: "Wrap", WrapMm: c.round, WidthMm: 60, MaxMm: plan.XY{XMm: c.round + 15, YMm: 60}, Edge: "level", Beyond: "to the back",
			Lines: []plan.PatternLine{{Name: "edge", Role: "edge", Path: plan.Contour("M0 0H" + number + "V60H0Z")}, {Name: "tab", Role: "tab", Path: plan.Contour("M" + number + " 0h15v60h-15Z")}}}
		of, err := newPattern(&plan.Plan{}, &plan.PartPlan{Title: "Tube"}, dev)
		if err != nil {
			t.Fatal(err)
		}
		tiles := of.tiles(window(a4.Turned()).Width(), window(a4.Turned()).Height())
		last := &placed{tile: tiles[len(tiles)-1]}
		s := &draw.Sheet{}
		last.draw(s, window(a4.Turned()))
		tape, glue := false, false
		for _, text := range textsOf(&s.Draw) {
			tape = tape || text.Content == "SEAM: tape it to the left end"
			glue = glue || text.Content == "glue under" || text.Content == "overlap"
		}
		if len(tiles) != c.tiles || tape != c.taped || glue == c.taped {
			t.Errorf("%v mm round: %d tiles, taped %v, glued %v", c.round, len(tiles), tape, glue)
		}
	}
}

// TestTopMark: a face shows TOP over its origin, or over what of it is highest where
// its origin lies in a corner; so does a blank to be folded.
func TestTopMark(t *testing.T) {
	t.Parallel()
	const slanted = "M0 0H100V20L20 80H0Z"
	face := func(shiftMm float64) *template {
		outline := canvas.MustParseSVGPath(slanted).Translate(shiftMm, 0)
		one, err := newPunch(&plan.Plan{}, &plan.PartPlan{}, &plan.Face{Face: parts.Front, Outline: plan.Contour(outline.ToSVG()), MinMm: plan.XY{XMm: shiftMm}, MaxMm: plan.XY{XMm: 100 + shiftMm, YMm: 80}}, false)
		if err != nil {
			t.Fatal(err)
		}
		return one
	}
	blank, err := newPattern(&plan.Plan{}, &plan.PartPlan{}, &plan.Development{Kind: plan.FoldPattern, MaxMm: plan.XY{XMm: 100, YMm: 80}, Lines: []plan.PatternLine{{Name: "edge", Role: "edge", Path: slanted}}})
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		of *template
		at float64 // of the arrow
	}{"corner": {face(0), 10}, "middle": {face(-50), 0}, "blank": {blank, 10}} {
		s := &draw.Sheet{}
		area := c.of.core
		(&placed{tile: tile{of: c.of, window: area, cell: area, grid: &grid{area: area, shown: [][]bool{{true}}}}}).draw(s, area)
		var tops []float64
		for _, text := range textsOf(&s.Draw) {
			if text.Content == "TOP" {
				tops = append(tops, text.XMm-3)
			}
		}
		if len(tops) != 1 || tops[0] < c.at-0.01 || tops[0] > c.at+0.01 {
			t.Errorf("%s: TOP at %v, want %v", name, tops, c.at)
		}
		if c.of.side != "FRONT, this side out" {
			t.Errorf("%s: %q", name, c.of.side)
		}
	}
}

// TestStripSaysAll: with few parts or many the strip has their names and the job whole;
// a caption's line never ends between two of its parts.
func TestStripSaysAll(t *testing.T) {
	t.Parallel()
	job := &plan.Plan{Job: "Sluice-gate jack, mill", Revision: "12"}
	for _, names := range [][]string{{"Rail"}, {"Rail", "Thrust housing"}, {"Rail", "Thrust housing", "Guide tube"}} {
		p := &page{frame: a4}
		for _, name := range names {
			r := draw.R(0, 0, 45, 30)
			p.tiles = append(p.tiles, placed{tile: tile{of: &template{part: &plan.PartPlan{Title: name, Quantity: 2}, name: "face", side: "FRONT, this side out"}, window: r, grid: &grid{area: r}}})
			for _, line := range p.tiles[len(p.tiles)-1].captionLines() {
				if strings.HasSuffix(line, "·") {
					t.Errorf("%s: caption line %q", name, line)
				}
			}
		}
		s := &draw.Sheet{Frame: a4, Part: strings.Join(names, ", ")}
		p.strip(job, s, "page 118 of 128")
		all := ""
		for _, text := range textsOf(&s.Draw) {
			all += " " + text.Content
			if text.YMm < 279 || text.YMm+draw.AscentMm*text.SizeMm > 289-0.2 {
				t.Errorf("%q at %.1f is not within the strip", text.Content, text.YMm)
			}
		}
		for _, want := range append(strings.Fields(s.Part), job.Job+" rev 12", "page 118 of 128") {
			if !strings.Contains(all, want) || strings.Contains(all, "…") {
				t.Errorf("no %q in %s", want, all)
			}
		}
	}
}

// A template says which of its crosses are not popped: a pop beside a hole that is there, or
// that a jig places, leads the drill astray.
func TestNotPopped(t *testing.T) {
	t.Parallel()
	for want, groups := range map[string][]plan.Group{
		"Pop in the open middle of each cross. ":                        {{Name: "a", First: 1, Count: 6}},
		"Pop in the open middle of each cross but 1–6 (by jig T10). ":   {{Name: "a", First: 1, Count: 6, Placed: "T10"}, {Name: "b", First: 7, Count: 2}},
		"Pop in the open middle of each cross but 9–12 (cut already). ": {{Name: "a", First: 1, Count: 8}, {Name: "b", First: 9, Count: 4, Placed: plan.ByCutter}},
		"Pop nothing: 1–6 (by jig T10), 7 (cut already). ":              {{Name: "a", First: 1, Count: 6, Placed: "T10"}, {Name: "b", First: 7, Count: 1, Placed: plan.ByCutter}},
	} {
		p := punch{part: &plan.PartPlan{}, face: &plan.Face{}, marked: marked{groups: groups}}
		if got := p.how(); !strings.HasPrefix(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
		p.part.Knifed = true // a gasket: nothing is popped and drilled
		if got := p.how(); got != "Punch each hole in the middle of its cross, to the dashed ring." {
			t.Errorf("of soft sheet: %q", got)
		}
	}
}
