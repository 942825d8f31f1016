package templates

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// placed is an item of a page with its place on paper.
type placed struct {
	item   Item
	dx, dy float64
	clip   *rect // nil: not clipped
}

// flatten lists the items of a drawing with the groups resolved. It refuses
// any transform other than a move: nothing on a sheet is scaled.
func flatten(t *testing.T, d *Drawing, dx, dy float64, clip *rect) []placed {
	t.Helper()
	var all []placed
	for _, item := range d.Items {
		g, ok := item.(Group)
		if !ok {
			all = append(all, placed{item, dx, dy, clip})
			continue
		}
		m := g.Transform
		if m[0][0] != 1 || m[1][1] != 1 || m[0][1] != 0 || m[1][0] != 0 {
			t.Fatalf("a group is scaled or turned: %v", m)
		}
		inner := clip
		if g.Clip != nil {
			b := g.Clip.Bounds()
			inner = &rect{b.X0 + dx, b.Y0 + dy, b.X1 + dx, b.Y1 + dy}
		}
		all = append(all, flatten(t, g.Drawing, dx+m[0][2], dy+m[1][2], inner)...)
	}
	return all
}

// room is the rectangle an item covers on paper; it is turned inside out
// where nothing of the item is left by the clip.
func (p placed) room() rect {
	var r rect
	switch item := p.item.(type) {
	case Shape:
		b := item.Path.Bounds()
		r = rect{b.X0, b.Y0, b.X1, b.Y1}.grown(item.WidthMm / 2)
	case Text:
		c := corners(item, 0)
		r = rect{c[0].X, c[0].Y, c[0].X, c[0].Y}
		for _, q := range c[1:] {
			r = rect{min(r.x0, q.X), min(r.y0, q.Y), max(r.x1, q.X), max(r.y1, q.Y)}
		}
	}
	r = rect{r.x0 + p.dx, r.y0 + p.dy, r.x1 + p.dx, r.y1 + p.dy}
	if p.clip != nil {
		r = rect{max(r.x0, p.clip.x0), max(r.y0, p.clip.y0), min(r.x1, p.clip.x1), min(r.y1, p.clip.y1)}
	}
	return r
}

// corners are the corners of a text's room, shrunk by less, turned about its
// position.
func corners(t Text, less float64) [4]canvas.Point {
	r := textRect(t).grown(-less)
	turn := canvas.Identity.RotateAbout(t.RotateDeg, t.XMm, t.YMm)
	return [4]canvas.Point{
		turn.Dot(canvas.Point{X: r.x0, Y: r.y0}), turn.Dot(canvas.Point{X: r.x1, Y: r.y0}),
		turn.Dot(canvas.Point{X: r.x1, Y: r.y1}), turn.Dot(canvas.Point{X: r.x0, Y: r.y1}),
	}
}

// overlap tells whether two texts, at any angles, lie over each other: no
// side of either rectangle has the other wholly beyond it.
func overlap(p, q placed) bool {
	a, b := corners(p.item.(Text), 0.05), corners(q.item.(Text), 0.05)
	for i := range b {
		b[i] = b[i].Add(canvas.Point{X: q.dx - p.dx, Y: q.dy - p.dy})
	}
	for _, pair := range [2][2][4]canvas.Point{{a, b}, {b, a}} {
		for i, from := range pair[0] {
			side := pair[0][(i+1)%4].Sub(from)
			beyond := true
			for _, corner := range pair[1] {
				beyond = beyond && side.PerpDot(corner.Sub(from)) <= 0
			}
			if beyond {
				return false
			}
		}
	}
	return true
}

// checkPage tests what holds for every page: items inside the margins, text
// large enough, no text over another.
func checkPage(t *testing.T, name string, page *Page) {
	t.Helper()
	const edge = marginMm - 0.6 // half a thick line
	inside := rect{edge, edge, page.WidthMm - edge, page.HeightMm - edge}
	var texts []placed
	var rooms []rect
	for _, p := range flatten(t, &page.Drawing, 0, 0, nil) {
		r := p.room()
		text, isText := p.item.(Text)
		if r.x0 > r.x1 || r.y0 > r.y1 {
			continue // clipped away
		}
		if !inside.holds(r) {
			t.Errorf("%s page %s: %s lies outside the margins: %.1f", name, page.Label, describe(p.item), r)
		}
		if !isText {
			continue
		}
		if text.SizeMm < smallMm-1e-9 {
			t.Errorf("%s page %s: %q is only %.2f mm", name, page.Label, text.Content, text.SizeMm)
		}
		if strings.TrimSpace(text.Content) == "" {
			t.Errorf("%s page %s: an empty text", name, page.Label)
		}
		for i, q := range texts {
			if r.meets(rooms[i]) && overlap(p, q) {
				t.Errorf("%s page %s: %q lies over %q at %.1f", name, page.Label, text.Content, q.item.(Text).Content, r)
			}
		}
		texts, rooms = append(texts, p), append(rooms, r)
	}
	if len(texts) < 10 {
		t.Errorf("%s page %s: only %d texts", name, page.Label, len(texts))
	}
}

func describe(item Item) string {
	if text, ok := item.(Text); ok {
		return fmt.Sprintf("%q", text.Content)
	}
	return "a shape"
}

func TestOverlap(t *testing.T) {
	base := placed{item: Text{SizeMm: 4, Content: "barrel flange"}} // about 25 mm wide
	for _, c := range []struct {
		text Text
		dx   float64
		want bool
	}{
		{Text{SizeMm: 4, Content: "x"}, 5, true},
		{Text{SizeMm: 4, Content: "x"}, 60, false},
		{Text{YMm: 4.2, SizeMm: 4, Content: "x"}, 5, false},
		{Text{YMm: -10, SizeMm: 4, Content: "barrel flange", RotateDeg: 90}, 5, true},
		{Text{YMm: -2, SizeMm: 4, Content: "barrel flange", RotateDeg: 30}, -6, true},
		{Text{YMm: 5.5, SizeMm: 4, Content: "barrel flange", RotateDeg: 30}, 5, false}, // its upright box does overlap
	} {
		if got := overlap(base, placed{item: c.text, dx: c.dx}); got != c.want {
			t.Errorf("%q at %g, %g turned %g: overlap is %v", c.text.Content, c.dx, c.text.YMm, c.text.RotateDeg, got)
		}
	}
}

func TestEveryPageIsCleanAndInsideTheMargins(t *testing.T) {
	for _, s := range samples() {
		doc, err := Packet(s.pl, Options{Paper: s.paper})
		if err != nil {
			t.Fatal(err)
		}
		for i := range doc.Pages {
			checkPage(t, s.name, &doc.Pages[i])
		}
	}
}

// crossAt returns the centre of a shape that is a centre-pop cross.
func crossAt(s Shape) (x, y float64, ok bool) {
	want := popCross(0, 0).Path
	if s.Path.Len() != want.Len() {
		return 0, 0, false
	}
	b := s.Path.Bounds()
	x, y = (b.X0+b.X1)/2, (b.Y0+b.Y1)/2
	coords, wanted := s.Path.Coords(), want.Coords()
	for i := range coords {
		if math.Hypot(coords[i].X-x-wanted[i].X, coords[i].Y-y-wanted[i].Y) > 1e-9 {
			return 0, 0, false
		}
	}
	return x, y, true
}

// templatePages are the pages of a document at 1:1.
func templatePages(doc *Document, t *testing.T) []*Page {
	var pages []*Page
	for i := range doc.Pages {
		for _, p := range flatten(t, &doc.Pages[i].Drawing, 0, 0, nil) {
			if text, ok := p.item.(Text); ok && text.Content == "1:1" {
				pages = append(pages, &doc.Pages[i])
				break
			}
		}
	}
	return pages
}

func TestEveryHoleIsWholeOnSomeSheetAtItsPlace(t *testing.T) {
	for _, s := range samples() {
		for _, part := range s.pl.Parts {
			if len(part.Faces) != 1 {
				continue // two faces are told apart by their sheets only
			}
			face := part.Faces[0]
			doc, err := Templates(s.pl, []string{part.Name}, Options{Paper: s.paper})
			if err != nil {
				t.Fatal(err)
			}
			whole := map[int]bool{}
			for _, page := range templatePages(doc, t) {
				items := flatten(t, &page.Drawing, 0, 0, nil)
				for _, p := range items {
					shape, ok := p.item.(Shape)
					if !ok {
						continue
					}
					x, y, ok := crossAt(shape)
					if !ok {
						continue
					}
					h := holeNear(face, x, y)
					if h == nil {
						if !slotEndNear(face, x, y) {
							t.Errorf("%s %s page %s: a cross at %g, %g where no hole is", s.name, part.Name, page.Label, x, y)
						}
						continue
					}
					r := holeRect(*h)
					r = rect{r.x0 + p.dx, r.y0 + p.dy, r.x1 + p.dx, r.y1 + p.dy}
					if p.clip == nil || p.clip.holds(r) {
						whole[h.N] = true
						if !numberNear(items, h, x+p.dx, y+p.dy) {
							t.Errorf("%s %s page %s: hole %d has no number near it", s.name, part.Name, page.Label, h.N)
						}
					}
				}
			}
			for _, h := range face.Holes {
				if !whole[h.N] {
					t.Errorf("%s %s: hole %d is whole on no sheet", s.name, part.Name, h.N)
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
func numberNear(items []placed, h *plan.Hole, x, y float64) bool {
	for _, p := range items {
		text, ok := p.item.(Text)
		if ok && text.Bold && text.Content == fmt.Sprint(h.N) && text.SizeMm >= smallNumMm &&
			math.Hypot(text.XMm+p.dx-x, text.YMm+p.dy-y) < h.DiameterMm/2+30 {
			return true
		}
	}
	return false
}

// TestMatchMarksMeet finds each numbered mark on exactly two tiles, at the
// same place of the face, on a cut line of both.
func TestMatchMarksMeet(t *testing.T) {
	pl := jobOf("tiles", parts.Millimetres, ringPart(620))
	face := pl.Parts[0].Faces[0]
	outline, err := canvas.ParseSVGPath(string(face.Outline))
	if err != nil {
		t.Fatal(err)
	}
	p := &punch{pl: pl, part: pl.Parts[0], face: face, outline: outline, bounds: rect{-315, -315, 315, 319}}
	tiles := p.tile(frame{210, 297, "A4"})
	if len(tiles.marks) < 20 {
		t.Fatalf("only %d match marks", len(tiles.marks))
	}
	for _, m := range tiles.marks {
		on := 0
		for row := range tiles.rows.from {
			for col := range tiles.cols.from {
				if !tiles.empty[row][col] && tiles.window(p, col, row).holds(rect{m.x, m.y, m.x, m.y}.grown(3.5)) {
					on++
				}
			}
		}
		if on != 2 {
			t.Errorf("mark %d at %.1f, %.1f is whole on %d tiles", m.n, m.x, m.y, on)
		}
	}
}

func TestDivideCoversAndKeepsSpansWhole(t *testing.T) {
	spans := [][2]float64{{-300, -290}, {-125, -95}, {-120, -80}, {-90, -60}, {40, 75}, {74, 96}, {95, 120}, {200, 380}}
	s := divide(-310, 400, 190, spans)
	for i := range s.cut {
		overlap := s.from[i] + s.size - s.from[i+1]
		if overlap < overlapMm-1e-9 {
			t.Errorf("strips %d and %d overlap by %g", i, i+1, overlap)
		}
		if s.cut[i] < s.from[i+1]+overlapMm/2-1e-9 || s.cut[i] > s.from[i]+s.size-overlapMm/2+1e-9 {
			t.Errorf("cut %d at %g is too near an edge", i, s.cut[i])
		}
	}
	if last := s.from[len(s.from)-1] + s.size; last < 400 {
		t.Errorf("covered only up to %g", last)
	}
	for _, sp := range spans {
		whole := false
		for _, from := range s.from {
			whole = whole || (from <= sp[0] && sp[1] <= from+s.size)
		}
		if !whole {
			t.Errorf("span %v is whole on no strip", sp)
		}
	}
}

// TestRulesAreTrue measures the 100 mm rules and the 4 in rules on paper.
func TestRulesAreTrue(t *testing.T) {
	pl := jobOf("rules", parts.Inches, flangePart())
	doc, err := Packet(pl, Options{Paper: letter})
	if err != nil {
		t.Fatal(err)
	}
	count := func(page *Page, length float64) (across, up int) {
		for _, p := range flatten(t, &page.Drawing, 0, 0, nil) {
			s, ok := p.item.(Shape)
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
	for _, page := range append(templatePages(doc, t), &doc.Pages[0]) {
		if across, up := count(page, 100); across != 1 || up != 1 {
			t.Errorf("page %s has %d and %d rules of 100 mm", page.Label, across, up)
		}
	}
	if across, up := count(&doc.Pages[0], 101.6); across != 1 || up != 1 {
		t.Errorf("the cover has %d and %d rules of 4 in", across, up)
	}
}

// TestLeadersKeepClearOfText checks the pictures: no leader runs through a
// text other than its own balloon's number.
func TestLeadersKeepClearOfText(t *testing.T) {
	for _, part := range []*plan.PartPlan{flangePart(), housingPart(), crowdedPart(), ringPart(620)} {
		leaders := 0
		for _, p := range pictures(part, 194, 105) {
			items := flatten(t, &p.draw, 0, 0, nil)
			for _, line := range items {
				s, ok := line.item.(Shape)
				if !ok || s.WidthMm != thinMm || s.DashMm != nil || len(s.Path.Coords()) != 2 {
					continue
				}
				leaders++
				c := s.Path.Coords()
				for _, other := range items {
					text, ok := other.item.(Text)
					if ok && text.SizeMm != 3.8 && lineMeets(c[0].X+line.dx, c[0].Y+line.dy, c[1].X+line.dx, c[1].Y+line.dy, other.room()) {
						t.Errorf("%s: a leader runs through %q", part.Name, text.Content)
					}
				}
			}
		}
		if leaders < len(part.Features) {
			t.Errorf("%s: %d leaders for %d features", part.Name, leaders, len(part.Features))
		}
	}
}

func lineMeets(x0, y0, x1, y1 float64, r rect) bool {
	for i := range 201 {
		k := float64(i) / 200
		if r.hasPoint(x0+k*(x1-x0), y0+k*(y1-y0)) {
			return true
		}
	}
	return false
}

func TestBookmarksAndLabels(t *testing.T) {
	s := samples()[0]
	doc, err := Packet(s.pl, Options{})
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
		"Barrel flange", "  Operation sheet", "  Punch template, FRONT face", "  Inspection record",
		"Bearing housing, lower", "  Operation sheet", "  Punch template, FRONT face", "  Punch template, BACK face", "  Inspection record",
		"Base ring", "  Operation sheet", "  Punch template, FRONT face"}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("bookmarks:\n%s", strings.Join(got, "\n"))
	}
	if doc.Language != "en" || doc.Date != "2025-03-14" || doc.Title != "Pug mill, revision B" {
		t.Errorf("document is %q, %q, %q", doc.Title, doc.Language, doc.Date)
	}
}

func TestPaperChoice(t *testing.T) {
	pl := jobOf("paper", parts.Millimetres, flangePart())
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
	huge := ringPart(9900)
	broken := flangePart()
	broken.Faces[0].Outline = "M0 0 oops"
	flat := flangePart()
	flat.Faces[0].MaxMm = flat.Faces[0].MinMm
	bare := flangePart()
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
		{flangePart(), "no-such", `no part is named "no-such"`},
	} {
		var names []string
		if c.name != "" {
			names = []string{c.name}
		}
		doc, err := Templates(jobOf("refused", parts.Millimetres, c.part), names, Options{})
		if err == nil || doc != nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("want an error with %q, got %v", c.want, err)
		}
	}
}

// TestLongTextsFlow gives a part texts much longer than a page.
func TestLongTextsFlow(t *testing.T) {
	part := flangePart()
	long := strings.Repeat("Turn the work until the mark comes round again. ", 60)
	part.Notes = []string{strings.Repeat(long, 3), strings.Repeat("x", 900)}
	part.Checks[0].What = long
	part.Operations[0].Do = nil
	for range 60 {
		part.Operations[0].Do = append(part.Operations[0].Do, "Take a cut, stop, measure, and write the size down.")
	}
	doc, err := Packet(jobOf("long", parts.Millimetres, part), Options{Paper: least})
	if err != nil {
		t.Fatal(err)
	}
	for i := range doc.Pages {
		checkPage(t, "long", &doc.Pages[i])
	}
}

func TestFormats(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{fixed(35, parts.Millimetres), "35.00"}, {fixed(-0.001, parts.Millimetres), "0.00"},
		{fixed(-12.7, parts.Inches), "-0.500"}, {fixed(1e-9, parts.Inches), "0.000"},
		{short(8.5, parts.Millimetres), "8.5"}, {short(11, parts.Millimetres), "11"}, {short(100, parts.Millimetres), "100"},
		{short(11.1125, parts.Inches), "0.438"}, {degrees(360.0 / 7), "51.43°"}, {degrees(30), "30°"},
		{mass(0.6551), "0.655 kg"}, {mass(13.44), "13.4 kg"}, {mass(2.314), "2.31 kg"}, {mass(250.4), "250 kg"},
		{span(1, 6), "1–6"}, {span(7, 1), "7"},
		{tileName(0, 0), "A1"}, {tileName(2, 25), "Z3"}, {tileName(0, 26), "AA1"}, {tileName(0, 701), "ZZ1"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}
