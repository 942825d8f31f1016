package sheets

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
)

// All bars of a job stand on one sheet: each with its lengths from point to point, saw angles
// and holes, boxes for each piece, what is sawn from each bar as bought, and the record.
func TestBarsSheet(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		paper  draw.Frame
		texts  []string
		sheets int
		boxes  int // sawn, drilled, coped and deburred, for each piece; and one for each bar as bought
	}{
		"pugmill": {draw.Frame{WidthMm: 210, HeightMm: 297}, []string{
			"A  Stand rail  × 2", "top 354.4", "bottom 454.4", "saw 45°", "87.2 from L", "367.2 from L", "B  Stand end  × 2", "top 204.4", "C  Stand leg  × 4", "400",
			"SAW Both ends: saw set 45° from square, long point at the bottom.", "Lines: seat on the middle line of the front.", "DRILL seat: 3 × Ø13.5 for M12.", "Drill Ø7, pilot: 900 rev/min.", "Last of each: Deburr and inspect", "⚠ Saw: clamp", "25 from R", "453.6 – 455.2", "2952.3", "Sawn 2.8 short at each end, for the welds: 460 with them.",
		}, 1, 2*3 + 2*2 + 4*3 + 4*3 + 2},
		"gatejack": {draw.Frame{WidthMm: 215.9, HeightMm: 279.4}, []string{
			"C  Stay  × 1", "cope", "BENCH Cope the right end.", "from L", "13.268 in", "MILL rod:", "milled", "bottom 11.036 in", "10.517 – 10.555 in", "right cope, depth", "0.5 in, 2 in; #8-32 UNC", "runs freely 0.5 in deep, square",
		}, 2, 2*3 + 2*2 + 1*4 + 1*3 + 3},
	} {
		pl := demoPlan(t, name)
		chapters := Bars(pl, pl.Parts, c.paper)
		if len(chapters) != 1 || len(chapters[0].Sheets) != c.sheets {
			t.Fatalf("%s: %d chapters", name, len(chapters))
		}
		var texts, named []string
		boxes := 0
		for _, s := range chapters[0].Sheets {
			texts, named, boxes = append(texts, allTexts(s.Draw)...), append(named, s.Parts...), boxes+countBoxes(s.Draw)
		}
		all := strings.Join(texts, " ")
		for _, text := range c.texts {
			if !wordsInOrder(all, text) {
				t.Errorf("%s: no %q", name, text)
			}
		}
		var bars []string
		for _, p := range pl.Parts {
			if p.Bar != nil {
				bars = append(bars, p.Title)
			}
		}
		if got := strings.Join(named, ", "); got != strings.Join(bars, ", ") {
			t.Errorf("%s: the sheet is of %s", name, got)
		}
		if boxes != c.boxes {
			t.Errorf("%s: %d boxes to tick, want %d", name, boxes, c.boxes)
		}
		for _, p := range Unbarred(pl.Parts) {
			if p.Bar != nil {
				t.Errorf("%s has a sheet of its own", p.Title)
			}
		}
	}
	if got := Bars(&plan.Plan{Units: parts.Millimetres}, nil, draw.Frame{WidthMm: 210, HeightMm: 297}); got != nil {
		t.Error("a sheet without bars")
	}
}

// countBoxes counts the squares to tick.
func countBoxes(d draw.Drawing) int {
	n := 0
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Shape:
			if b := item.Path.Bounds(); item.Path.Closed() && !strings.Contains(item.Path.String(), "A") && b.W() > 3 && b.W() < 6 && b.W()-b.H() < 0.01 && b.H()-b.W() < 0.01 {
				n++
			}
		case draw.Group:
			n += countBoxes(*item.Drawing)
		}
	}
	return n
}

// Many pieces get one box for all; the bars of others that a stock bar holds are named.
func TestBarPieces(t *testing.T) {
	t.Parallel()
	few, many := countBoxes(ticks([]string{"sawn"}, 8, 80).Draw), countBoxes(ticks([]string{"sawn"}, 9, 80).Draw)
	if few != 8 || many != 1 {
		t.Errorf("%d and %d boxes", few, many)
	}
	if narrow := ticks([]string{"sawn", "drilled"}, 4, 40); narrow.Height < 9 {
		t.Errorf("%v high", narrow.Height)
	}
	bar := plan.StockBar{Cuts: []plan.StockCut{
		{Part: "a", Name: "Rail", LengthMm: 600, StartDeg: -45, EndDeg: -45}, {Part: "b", Name: "End", LengthMm: 450, StartDeg: 45, EndDeg: 45, Turned: true, Reversed: true, Shared: true},
		{Part: "b", Name: "End", LengthMm: 450}, {Part: "b", Name: "End", LengthMm: 450, Shared: true},
	}}
	pl := &plan.Plan{Units: parts.Millimetres}
	if text, _, wanted := barPieces(pl, bar, map[string]string{"a": "A"}); text != "A 600 / End 450 ⟲ ⇄, End 450, End 450" || !wanted {
		t.Errorf("%q, %v", text, wanted)
	}
	if _, _, wanted := barPieces(pl, bar, map[string]string{"c": "A"}); wanted {
		t.Error("a bar that is not asked for")
	}
	if letter(0)+letter(25)+letter(26) != "AZA2" {
		t.Error(letter(26))
	}
}
