package truesize

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// ringLike is the flange with some of its holes, as another part of one to make.
func ringLike(holes int) *plan.PartPlan {
	p := *sheettest.FlangePart()
	f := *p.Faces[0]
	p.Name, p.Title, p.Quantity, p.Faces = "ring", "Ring", 1, []*plan.Face{&f}
	f.Holes, f.Groups = f.Holes[:holes], f.Groups[:1]
	f.Circles = []plan.Circle{{Label: "bore Ø120", DiameterMm: 120}, {Label: "pitch circle Ø140", DiameterMm: 140, Pitch: true}}
	return &p
}

// TestTwins: a face that the plan has punched from another part's template has none of
// its own where that is printed: the other says so, shows its bore, and is one of its
// sheets. Alone, or where the plan names another face, it has its own.
func TestTwins(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		spoil func(p *plan.PartPlan, f *plan.Face)
		twin  bool
	}{
		"shared":      {func(*plan.PartPlan, *plan.Face) {}, true},
		"two of them": {func(p *plan.PartPlan, _ *plan.Face) { p.Quantity = 2 }, true},
		"its own":     {func(_ *plan.PartPlan, f *plan.Face) { f.Shares = "" }, false},
		"not printed": {func(_ *plan.PartPlan, f *plan.Face) { f.Shares = "cover" }, false},
		"other side":  {func(_ *plan.PartPlan, f *plan.Face) { f.Face = parts.Back }, false},
	} {
		flange, ring := sheettest.FlangePart(), ringLike(6)
		ring.Faces[0].Shares = flange.Name
		c.spoil(ring, ring.Faces[0])
		pl := sheettest.JobOf("Tried", parts.Millimetres, flange, ring)
		chapters, err := sheetsOf(pl, a4, Useful)
		if err != nil {
			t.Fatal(err)
		}
		all, crosses, titles, starts := "", 0, []string(nil), []string(nil)
		for _, s := range chapters[0].Sheets {
			s.Close(1, 1)
			titles, starts = append(titles, s.Parts...), append(starts, s.Starts...)
			for _, it := range sheettest.Flatten(t, &s.Draw, 0, 0, nil) {
				switch item := it.Item.(type) {
				case draw.Text:
					all += item.Content + " "
				case draw.Shape:
					if _, _, ok := sheettest.CrossAt(item); ok {
						crosses++
					}
				}
			}
		}
		times := "print once more"
		if ring.Quantity == 2 {
			times = "print 2 more"
		}
		said := strings.Contains(all, "also for Ring: holes 1–6, ") && strings.Contains(all, times) && strings.Contains(all, "Ring: bore Ø120")
		if want := map[bool]int{true: 8, false: 14}[c.twin]; said != c.twin || crosses != want {
			t.Errorf("%s: a twin is said %v, %d crosses, want %v, %d: %s", name, said, crosses, c.twin, want, all)
		}
		if !slices.Contains(titles, "Ring") || !slices.ContainsFunc(starts, func(s string) bool { return strings.HasPrefix(s, "Ring: Punch template") }) {
			t.Errorf("%s: no sheet is the ring's: %q, %q", name, titles, starts)
		}
	}
}

// TestHalfPattern: a pattern that is its own mirror image is printed as its half
// with the lap where that saves sheets; nothing of the other half is on the sheet but
// the paper beyond the centre line.
func TestHalfPattern(t *testing.T) {
	t.Parallel()
	x := 0.0
	for _, c := range []struct {
		wide    float64
		mirror  *float64
		lapAt   float64
		half    bool
		lo, hi  float64 // of what is shown
		sheets  int
		wantLap string
	}{
		{150, &x, 150, true, -patternPadMm, 162 + patternPadMm, 1, "; overlap at one end only"},
		{150, &x, -162, true, -162 - patternPadMm, patternPadMm, 1, "; overlap at one end only"},
		{150, &x, 0, true, -patternPadMm, 150 + patternPadMm, 1, ""},
		{150, nil, 150, false, 0, 0, 2, ""},
		{60, &x, 60, false, -60 - patternPadMm, 72 + patternPadMm, 1, ""},
	} {
		part := patternParts()
		dev := plan.Development{Name: "cone", Kind: plan.ConePattern, Title: "Cone", MirrorMm: c.mirror, Labels: []plan.PatternLabel{{Text: "0"}, {Text: "12"}},
			MinMm: plan.XY{XMm: min(-c.wide, c.lapAt)}, MaxMm: plan.XY{XMm: max(c.wide, c.lapAt+12), YMm: 200},
			Lines: []plan.PatternLine{{Name: "edge", Role: "edge", Path: square(-c.wide, 0, c.wide, 200)}}}
		if c.lapAt != 0 {
			dev.Lines = append(dev.Lines, plan.PatternLine{Name: "lap", Role: "tab", Path: square(c.lapAt, 0, c.lapAt+12, 200)})
		} else {
			dev.MinMm.XMm, dev.MaxMm.XMm = -c.wide, c.wide
		}
		part.Developments = []plan.Development{dev}
		choice, err := Choose(sheettest.JobOf("Tried", parts.Millimetres, part), []*plan.PartPlan{part}, a4, Useful)
		if err != nil {
			t.Fatal(err)
		}
		list := choice.printed[0]
		got, tiles := list[len(list)-1], list[len(list)-1].fewest(waysOf(a4))
		if half := strings.HasSuffix(got.name, ", half"); half != c.half || len(tiles) != c.sheets {
			t.Errorf("%+v: half %v on %d sheets", c, half, len(tiles))
		}
		if w := tiles[0].window; c.sheets == 1 && (w.X0 != c.lo || w.X1 != c.hi) {
			t.Errorf("%+v: shows %v to %v", c, w.X0, w.X1)
		}
		if said := strings.Join(got.legend, " "); c.half != strings.Contains(said, "turn it over on the centre line, scribe again; turned over, 12 is 0"+c.wantLap) {
			t.Errorf("%+v says %q", c, said)
		}
		s, w := &draw.Sheet{}, window(a4)
		(&placed{tile: tiles[0].tile}).draw(s, draw.R(w.X0, w.Y0, w.X0+tiles[0].window.Width(), w.Y0+tiles[0].window.Height()))
		for _, text := range textsOf(&s.Draw) { // beside a rule, which stands along the edge
			if at := text.XMm - draw.AscentMm*text.SizeMm - w.X0; c.half && strings.HasPrefix(text.Content, "centre line") && at < 1 {
				t.Errorf("%+v: %q stands %.2f from the edge", c, text.Content, at)
			}
		}
	}
}
