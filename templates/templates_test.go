package templates

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
	"centrepop/templates/truesize"
)

func TestOverlap(t *testing.T) {
	base := sheettest.Placed{Item: draw.Text{SizeMm: 4, Content: "barrel flange"}} // about 25 mm wide
	for _, c := range []struct {
		text draw.Text
		dx   float64
		want bool
	}{
		{draw.Text{SizeMm: 4, Content: "x"}, 5, true},
		{draw.Text{SizeMm: 4, Content: "x"}, 60, false},
		{draw.Text{YMm: 4.2, SizeMm: 4, Content: "x"}, 5, false},
		{draw.Text{YMm: -10, SizeMm: 4, Content: "barrel flange", RotateDeg: 90}, 5, true},
		{draw.Text{YMm: -2, SizeMm: 4, Content: "barrel flange", RotateDeg: 30}, -6, true},
		{draw.Text{YMm: 5.5, SizeMm: 4, Content: "barrel flange", RotateDeg: 30}, 5, false}, // its upright box does overlap
	} {
		if got := sheettest.Overlap(base, sheettest.Placed{Item: c.text, DX: c.dx}); got != c.want {
			t.Errorf("%q at %g, %g turned %g: overlap is %v", c.text.Content, c.dx, c.text.YMm, c.text.RotateDeg, got)
		}
	}
}

func TestEveryPageIsCleanAndInsideTheMargins(t *testing.T) {
	for _, s := range sheettest.Samples() {
		doc, err := Packet(s.Plan, Options{Paper: s.Paper})
		if err != nil {
			t.Fatal(err)
		}
		for i := range doc.Pages {
			sheettest.CheckPage(t, s.Name, &doc.Pages[i])
		}
	}
}

// templatePages are the pages of a document at 1:1.
func templatePages(doc *draw.Document, t *testing.T) []*draw.Page {
	var pages []*draw.Page
	for i := range doc.Pages {
		for _, p := range sheettest.Flatten(t, &doc.Pages[i].Drawing, 0, 0, nil) {
			if text, ok := p.Item.(draw.Text); ok && (strings.HasPrefix(text.Content, "1:1 · ") || strings.HasPrefix(text.Content, "templates, 1:1")) {
				pages = append(pages, &doc.Pages[i])
				break
			}
		}
	}
	return pages
}

func TestEveryHoleIsWholeOnSomeSheetAtItsPlace(t *testing.T) {
	for _, s := range sheettest.Samples() {
		for _, part := range s.Plan.Parts {
			if len(part.Faces) != 1 {
				continue // two faces are told apart by their sheets only
			}
			face := part.Faces[0]
			doc, err := Templates(s.Plan, []string{part.Name}, Options{Paper: s.Paper})
			if err != nil {
				t.Fatal(err)
			}
			whole := map[int]bool{}
			for _, page := range templatePages(doc, t) {
				items := sheettest.Flatten(t, &page.Drawing, 0, 0, nil)
				for _, p := range items {
					shape, ok := p.Item.(draw.Shape)
					if !ok {
						continue
					}
					x, y, ok := sheettest.CrossAt(shape)
					if !ok {
						continue
					}
					h := holeNear(face, x, y)
					if h == nil {
						if !slotEndNear(face, x, y) {
							t.Errorf("%s %s page %s: a cross at %g, %g where no hole is", s.Name, part.Name, page.Label, x, y)
						}
						continue
					}
					reach := max(h.DiameterMm/2, draw.CrossArmMm)
					r := draw.R(h.XMm, h.YMm, h.XMm, h.YMm).Grown(reach)
					r = draw.R(r.X0+p.DX, r.Y0+p.DY, r.X1+p.DX, r.Y1+p.DY)
					if p.Clip == nil || p.Clip.Holds(r) {
						whole[h.N] = true
						if !numberNear(items, h, x+p.DX, y+p.DY) {
							t.Errorf("%s %s page %s: hole %d has no number near it", s.Name, part.Name, page.Label, h.N)
						}
					}
				}
			}
			for _, h := range face.Holes {
				if !whole[h.N] {
					t.Errorf("%s %s: hole %d is whole on no sheet", s.Name, part.Name, h.N)
				}
			}
		}
	}
}

func holeNear(face *plan.Face, x, y float64) *plan.Hole {
	for i := range face.Holes {
		if math.Hypot(face.Holes[i].XMm-x, face.Holes[i].YMm-y) < 1e-9 {
			return &face.Holes[i]
		}
	}
	return nil
}

func slotEndNear(face *plan.Face, x, y float64) bool {
	for _, s := range face.Slots {
		for _, end := range s.EndsMm {
			if math.Hypot(end.XMm-x, end.YMm-y) < 1e-9 {
				return true
			}
		}
	}
	return false
}

// numberNear tells whether the hole's number stands within 30 mm of its rim.
func numberNear(items []sheettest.Placed, h *plan.Hole, x, y float64) bool {
	for _, p := range items {
		text, ok := p.Item.(draw.Text)
		if ok && text.Bold && text.Content == fmt.Sprint(h.N) && text.SizeMm >= draw.SmallNumMm &&
			math.Hypot(text.XMm+p.DX-x, text.YMm+p.DY-y) < h.DiameterMm/2+30 {
			return true
		}
	}
	return false
}

// TestRulesAreTrue measures the rules of the cover on paper, and in a job in inches the 4 in
// that templates are checked by.
func TestRulesAreTrue(t *testing.T) {
	pl := sheettest.JobOf("rules", parts.Inches, sheettest.FlangePart())
	doc, err := Packet(pl, Options{Paper: sheettest.Letter})
	if err != nil {
		t.Fatal(err)
	}
	count := func(page *draw.Page, length float64) (across, up int) {
		for _, p := range sheettest.Flatten(t, &page.Drawing, 0, 0, nil) {
			s, ok := p.Item.(draw.Shape)
			if !ok || s.Path.Len() < 60 {
				continue
			}
			b := s.Path.Bounds()
			if math.Abs(b.W()-length) < 1e-9 {
				across++
			}
			if math.Abs(b.H()-length) < 1e-9 {
				up++
			}
		}
		return across, up
	}
	pages := templatePages(doc, t)
	if across, up := count(&doc.Pages[0], 100); across != 1 || up != 1 {
		t.Errorf("the cover has %d and %d rules of 100 mm", across, up)
	}
	for _, page := range pages {
		var across, up, inches bool
		for _, p := range sheettest.Flatten(t, &page.Drawing, 0, 0, nil) {
			s, ok := p.Item.(draw.Shape)
			if !ok || s.Fill != draw.None {
				continue
			}
			// The mark to check by, 4 in: a bracket 4 mm deep.
			b := s.Path.Bounds()
			across = across || math.Abs(b.W()-101.6) < 1e-9 && math.Abs(b.H()-4) < 1e-9
			up = up || math.Abs(b.H()-101.6) < 1e-9 && math.Abs(b.W()-4) < 1e-9
			// The edge rule, in whole eighths.
			if s.Path.Len() > 100 && math.Abs(b.H()-3.2) < 1e-9 {
				n := b.W() / (25.4 / 8)
				inches = math.Abs(n-math.Round(n)) < 1e-9 && n > 32
			}
		}
		if !across || !up || !inches {
			t.Errorf("page %s: 4 in across %v, up %v, inches %v", page.Label, across, up, inches)
		}
	}
	if across, up := count(&doc.Pages[0], 101.6); across != 1 || up != 1 {
		t.Errorf("the cover has %d and %d rules of 4 in", across, up)
	}
}

func TestBookmarksAndLabels(t *testing.T) {
	s := sheettest.Samples()[0]
	doc, err := Packet(s.Plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	level := -1
	for i, page := range doc.Pages {
		if page.Label != fmt.Sprint(i+1) {
			t.Errorf("page %d is labelled %q", i+1, page.Label)
		}
		for _, b := range page.Bookmarks {
			if b.Level > level+1 {
				t.Errorf("bookmark %q skips a level", b.Title)
			}
			level = b.Level
			got = append(got, strings.Repeat("  ", b.Level)+b.Title)
		}
	}
	want := []string{"Cover",
		"Parts: operations and records", "  Barrel flange", "  Bearing housing, lower", "  Base ring",
		"Templates, 1:1", "  Barrel flange: Punch template, FRONT face",
		"  Bearing housing, lower: Punch template, FRONT face", "  Bearing housing, lower: Punch template, BACK face",
		"  Base ring: Punch template, FRONT face", "Appendix"}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("bookmarks:\n%s", strings.Join(got, "\n"))
	}
	if doc.Language != "en" || doc.Date != "2025-03-14" || doc.Title != "Pug mill, revision B" {
		t.Errorf("document is %q, %q, %q", doc.Title, doc.Language, doc.Date)
	}
}

func TestPaperChoice(t *testing.T) {
	pl := sheettest.JobOf("paper", parts.Millimetres, sheettest.FlangePart())
	for _, c := range []struct {
		paper parts.Paper
		want  string
	}{
		{parts.Paper{WidthMm: 139, HeightMm: 300}, "templates: paper of 139 × 300 mm: the sheets need at least 140 × 200 mm and at most 2000 mm"},
		{parts.Paper{WidthMm: 210, HeightMm: 199}, "templates: paper of 199 × 210 mm"},
		{parts.Paper{WidthMm: math.NaN(), HeightMm: 300}, "templates: paper of"},
		{parts.Paper{WidthMm: 300, HeightMm: math.Inf(1)}, "templates: paper of"},
	} {
		_, err := Packet(pl, Options{Paper: c.paper})
		if c.want == "templates: paper of 199 × 210 mm" {
			if err == nil == (c.paper.HeightMm < minPaperWidthMm) {
				t.Errorf("paper %v: %v", c.paper, err)
			}
			continue
		}
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("paper %v: %v", c.paper, err)
		}
	}
	wide, err := Templates(pl, nil, Options{Paper: parts.Paper{WidthMm: 297, HeightMm: 210}})
	if err != nil {
		t.Fatal(err)
	}
	if len(wide.Pages) != 1 || wide.Pages[0].WidthMm != 210 {
		t.Errorf("A4 on its side gives %d pages, %g wide", len(wide.Pages), wide.Pages[0].WidthMm)
	}
}

func TestRefusals(t *testing.T) {
	huge := sheettest.RingPart(9900)
	broken := sheettest.FlangePart()
	broken.Faces[0].Outline = "M0 0 oops"
	flat := sheettest.FlangePart()
	flat.Faces[0].MaxMm = flat.Faces[0].MinMm
	bare := sheettest.FlangePart()
	bare.Faces = nil
	for _, c := range []struct {
		part *plan.PartPlan
		name string
		want string
	}{
		{huge, "", "needs more than 400 sheets of A4"},
		{broken, "", "part barrel-flange, front face: outline:"},
		{flat, "", "the outline encloses nothing"},
		{bare, "", "no face of these parts has anything to mark"},
		{sheettest.FlangePart(), "no-such", `no part is named "no-such"`},
	} {
		var names []string
		if c.name != "" {
			names = []string{c.name}
		}
		doc, err := Templates(sheettest.JobOf("refused", parts.Millimetres, c.part), names, Options{})
		if err == nil || doc != nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("want an error with %q, got %v", c.want, err)
		}
	}
}

// TestLongTextsFlow gives a part texts much longer than a page.
func TestLongTextsFlow(t *testing.T) {
	part := sheettest.FlangePart()
	long := strings.Repeat("Turn the work until the mark comes round again. ", 60)
	part.Notes = []string{strings.Repeat(long, 3), strings.Repeat("x", 900)}
	part.Checks[0].What = long
	part.Operations[0].Do = nil
	for range 60 {
		part.Operations[0].Do = append(part.Operations[0].Do, "Take a cut, stop, measure, and write the size down.")
	}
	doc, err := Packet(sheettest.JobOf("long", parts.Millimetres, part), Options{Paper: sheettest.Least})
	if err != nil {
		t.Fatal(err)
	}
	for i := range doc.Pages {
		sheettest.CheckPage(t, "long", &doc.Pages[i])
	}
}

// TestPacketFor: each reader gets what is theirs, with the cover; a packet of
// one part has nothing of another, nor the assembly.
func TestPacketFor(t *testing.T) {
	pl := sheettest.JoinedPlan()
	titles := func(opt Options) string {
		doc, err := Packet(pl, opt)
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, page := range doc.Pages {
			for _, b := range page.Bookmarks {
				if b.Level == 0 {
					out = append(out, b.Title)
				}
			}
		}
		return strings.Join(out, "|")
	}
	findings := []review.Finding{}
	for _, c := range []struct {
		opt  Options
		want string
	}{
		{Options{Findings: findings}, "Cover|Review|Parts: operations and records|Templates, 1:1|Assembly|Appendix"},
		{Options{Findings: findings, For: Machinist}, "Cover|Parts: operations and records|Templates, 1:1"},
		{Options{Findings: findings, For: Machinist, Templates: truesize.None}, "Cover|Parts: operations and records"},
		{Options{Findings: findings, For: Fabricator}, "Cover|Assembly|Appendix"},
		{Options{Findings: findings, For: Reviewer}, "Cover|Review|Assembly|Appendix"},
		{Options{Parts: []string{"sleeve"}}, "Cover|Parts: operations and records"},
	} {
		if got := titles(c.opt); got != c.want {
			t.Errorf("for %q, parts %v: %s, want %s", c.opt.For, c.opt.Parts, got, c.want)
		}
	}
	if _, err := Packet(pl, Options{Parts: []string{"no-such"}}); err == nil {
		t.Error("an unknown part is not refused")
	}
}
