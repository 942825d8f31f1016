package templates

import (
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/read"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestLeaves: on both sides of the paper every template lies on an odd page and has
// nothing but a line on its back, behind covers of an odd and an even number of pages;
// nothing else is lost, and the cover names the pages as they are then.
func TestLeaves(t *testing.T) {
	t.Parallel()
	job, err := read.Load(filepath.Join("..", "testdata", "gatejack", "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	opt := Options{For: Machinist}
	paper, err := paperOf(worked.Plan, opt)
	if err != nil {
		t.Fatal(err)
	}
	chapters, err := opt.work(opt.tasks(worked.Plan, worked.Plan.Parts, paper))
	if err != nil {
		t.Fatal(err)
	}
	count := func(chapters []draw.Chapter) (all, cut, empty int) {
		for _, c := range chapters {
			for _, s := range c.Sheets {
				switch {
				case s.Scale == draw.TrueScale:
					cut++
				case s.Name == "empty":
					empty++
				}
				all++
			}
		}
		return all, cut, empty
	}
	was, templates, _ := count(chapters)
	for cover := 1; cover <= 2; cover++ {
		got := leaves(chapters, cover)
		n, before := cover, (*draw.Sheet)(nil)
		for _, c := range got {
			for _, s := range c.Sheets {
				n++
				if back := before != nil && before.Scale == draw.TrueScale; s.Scale == draw.TrueScale && (n%2 == 0 || back) || back && s.Name != "empty" {
					t.Errorf("cover of %d: page %d, %s, behind %s", cover, n, s.Name, before.Name)
				}
				before = s
			}
		}
		all, cut, empty := count(got)
		if cut != templates || all-empty != was || empty-templates < 0 || empty-templates > 1 || before.Scale == draw.TrueScale {
			t.Errorf("cover of %d: %d sheets of %d, %d templates of %d, %d empty", cover, all, was, cut, templates, empty)
		}
	}
	doc, err := Packet(worked.Plan, Options{For: Machinist, TwoSided: true})
	if err != nil {
		t.Fatal(err)
	}
	first, last, named := 0, 0, ""
	for i := range doc.Pages {
		text := ""
		for _, it := range sheettest.Flatten(t, &doc.Pages[i].Drawing, 0, 0, nil) {
			if x, ok := it.Item.(draw.Text); ok {
				text += x.Content + " "
			}
		}
		switch {
		case i < 2: // the cover goes on
			named += text
		case first == 0 && strings.Contains(text, "this side out"):
			first = i + 1
		case strings.Contains(text, "the other side is cut out"):
			last = i + 1
		}
	}
	if !doc.TwoSided || first%2 == 0 || !strings.Contains(named, strconv.Itoa(first)+"–"+strconv.Itoa(last)) {
		t.Errorf("two-sided %v, templates on pages %d to %d; the cover: %s", doc.TwoSided, first, last, named)
	}
}

// TestCoverOfSomeParts: the cover of a packet of some parts lists these, their machines
// and what they are sawn from, not what the machine is bought from; that of the whole
// packet lists all.
func TestCoverOfSomeParts(t *testing.T) {
	t.Parallel()
	job, err := read.Load(filepath.Join("..", "testdata", "gatejack", "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	pl := worked.Plan
	if opt := (Options{}); opt.coverOf(pl) != pl {
		t.Error("the whole packet's cover is not of the whole job")
	}
	two := &plan.Plan{Parts: []*plan.PartPlan{{Name: "a", Title: "Pin"}, {Name: "b", Title: "Pin"}}, Cuts: []plan.CutRow{{Bars: []plan.CutBar{{Pieces: []plan.CutPiece{{Part: "Pin", Name: "a"}, {Part: "Pin", Name: "b"}}}}}}}
	if got := (Options{Parts: []string{"b"}}).coverOf(two).Cuts[0].Bars[0].Pieces; len(got) != 1 || got[0].Name != "b" {
		t.Errorf("of two parts of one title: %v", got)
	}
	doc, err := Packet(pl, Options{Parts: []string{"stem", "cap-ring"}})
	if err != nil {
		t.Fatal(err)
	}
	said := "|"
	for i := range doc.Pages[:2] {
		said += strings.Join(sheettest.TextsOf(t, &doc.Pages[i]), "|") + "|"
	}
	for text, want := range map[string]bool{"Stem": true, "Cap ring": true, "Guide tube": false, "Stock to order, in inches": true, "round Ø1.125 in, saw cut": true, "round Ø2.125 in, saw cut": false, "2 × Pedestal flange Ø7": false, "To buy": false, "Lathe": true, "Roll": false} {
		if strings.Contains(said, "|"+text+"|") != want {
			t.Errorf("cover: %q %v, want %v", text, !want, want)
		}
	}
	if doc, err = Packet(pl, Options{Parts: []string{"stem", "frame-rail"}}); err != nil {
		t.Fatal(err)
	}
	if said := strings.Join(sheettest.TextsOf(t, &doc.Pages[0]), "|") + strings.Join(sheettest.TextsOf(t, &doc.Pages[1]), "|"); !strings.Contains(said, "Stock to order, in inches; bars: their own list") {
		t.Errorf("a bar is among them: %q", said)
	}
	if len(pl.Bought) == 0 || len(pl.Parts) < 10 {
		t.Error("the plan itself has lost what the cover leaves out")
	}
}
