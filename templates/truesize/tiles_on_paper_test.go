package truesize

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// tilePage is a tile read back from its sheet, in coordinates of the part.
type tilePage struct {
	window draw.Rect
	marks  map[string]bool // centres of match marks
	dashed int             // seams to cut along
	chain  int             // seams to lay on
}

// tilePages draws a part apart and reads its tiles back.
func tilePages(t *testing.T, part *plan.PartPlan, paper draw.Frame) []tilePage {
	t.Helper()
	pl := sheettest.JobOf("tiles", parts.Millimetres, part)
	chapters, err := apartOf(pl, paper, Useful)
	if err != nil {
		t.Fatal(err)
	}
	var pages []tilePage
	for _, s := range chapters[0].Sheets {
		items := sheettest.Flatten(t, &s.Draw, 0, 0, nil)
		page := tilePage{marks: map[string]bool{}}
		var dx, dy float64
		for _, it := range items {
			if it.Clip != nil { // the face is drawn in a window of its own
				dx, dy = it.DX, it.DY
				page.window = draw.R(it.Clip.X0-dx, it.Clip.Y0-dy, it.Clip.X1-dx, it.Clip.Y1-dy)
				break
			}
		}
		for _, it := range items {
			shape, ok := it.Item.(draw.Shape)
			if !ok || it.Clip != nil {
				continue
			}
			b := shape.Path.Bounds()
			switch {
			case math.Abs(b.W()-6.4) < 1e-9 && math.Abs(b.H()-6.4) < 1e-9:
				page.marks[fmt.Sprintf("%.3f %.3f", (b.X0+b.X1)/2-dx, (b.Y0+b.Y1)/2-dy)] = true
			case len(shape.DashMm) == len(draw.CutDash) && max(b.W(), b.H()) > 30:
				page.dashed++
			case len(shape.DashMm) == len(draw.ChainDash) && max(b.W(), b.H()) > 30:
				page.chain++
			}
		}
		pages = append(pages, page)
	}
	return pages
}

// TestSeamsMeetOnPaper: each match mark stands on exactly two sheets at the
// same place of the part, every tile hangs on another by two of them, and
// there are as many seams to cut along as to lay on.
func TestSeamsMeetOnPaper(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		part  *plan.PartPlan
		paper draw.Frame
		least int
	}{
		{sheettest.RingPart(620), a4, 6},
		{sheettest.PlatePart(), draw.Frame{WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}, 3},
		{sheettest.PlatePart(), draw.Frame{WidthMm: 297, HeightMm: 420, Name: "A3"}, 2},
	} {
		pages := tilePages(t, c.part, c.paper)
		if len(pages) < c.least {
			t.Fatalf("%s on %s: %d tiles", c.part.Name, c.paper.Name, len(pages))
		}
		on := map[string]int{}
		dashed, chain := 0, 0
		for i, p := range pages {
			dashed, chain = dashed+p.dashed, chain+p.chain
			if len(p.marks) < 2 {
				t.Errorf("%s: tile %d has %d match marks", c.part.Name, i+1, len(p.marks))
			}
			for at := range p.marks {
				on[at]++
			}
		}
		for at, n := range on {
			if n != 2 {
				t.Errorf("%s: the match mark at %s stands on %d tiles", c.part.Name, at, n)
			}
		}
		if dashed != chain || 2*dashed != len(on) {
			t.Errorf("%s: %d seams to cut along, %d to lay on, %d match marks", c.part.Name, dashed, chain, len(on))
		}
	}
}

// TestTooLarge: the part, its size and the paper are named.
func TestTooLarge(t *testing.T) {
	t.Parallel()
	part := sheettest.PlatePart()
	face := part.Faces[0]
	face.MinMm, face.MaxMm = plan.XY{XMm: -4500, YMm: -4500}, plan.XY{XMm: 4500, YMm: 4500}
	face.Outline = "M-4500 -4500H4500V4500H-4500Z"
	for i := range face.Holes {
		face.Holes[i].XMm *= 20
		face.Holes[i].YMm *= 20
	}
	pl := sheettest.JobOf("tiles", parts.Millimetres, part)
	_, err := sheetsOf(pl, a4, Useful)
	if err == nil || !strings.Contains(err.Error(), "gate-plate") || !strings.Contains(err.Error(), "9000 × 9000 mm needs more than 400 sheets of A4") {
		t.Errorf("%v", err)
	}
}
