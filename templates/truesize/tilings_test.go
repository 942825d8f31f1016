package truesize

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// platePart is a plate about its middle with a bore and a hole near each corner.
func platePart(wide, high, bore, hole float64) *plan.PartPlan {
	x, y := wide/2, high/2
	f := &plan.Face{
		Part: "Plate", Face: "front", Outline: square(-x, -y, x, y), Datum: "left and bottom edge",
		MinMm: plan.XY{XMm: -x, YMm: -y}, MaxMm: plan.XY{XMm: x, YMm: y}, DatumAt: plan.XY{XMm: -x, YMm: -y}, SetAt: plan.XY{XMm: -x, YMm: -y},
	}
	if bore > 0 {
		f.Circles = []plan.Circle{{Label: fmt.Sprintf("Ø%g bore", bore), DiameterMm: bore}}
	}
	for i, at := range [][2]float64{{-1, 1}, {1, 1}, {1, -1}, {-1, -1}} {
		h := plan.Hole{N: i + 1, Group: "corners", XMm: at[0] * (x - 20), YMm: at[1] * (y - 20), DiameterMm: hole}
		h.FromXMm, h.FromYMm = h.XMm+x, h.YMm+y
		f.Holes = append(f.Holes, h)
	}
	f.Groups = []plan.Group{{Name: "corners", First: 1, Count: 4, SizeText: fmt.Sprintf("Ø%g", hole), Marked: "front", FinishedMm: hole}}
	return &plan.PartPlan{Name: "Plate", Title: "Plate", Kind: "plate", Quantity: 1, Material: "S235", StockText: "plate 8", Faces: []*plan.Face{f}}
}

// TestTilings: how plates and rings of many sizes are cut into tiles on four papers: where
// the seams, windows and match marks lie and which tiles are left out. The other tests
// check what must hold of any; CENTREPOP_UPDATE=1 writes it anew.
func TestTilings(t *testing.T) {
	t.Parallel()
	var out strings.Builder
	papers := []draw.Frame{a4, a4.Turned(), {WidthMm: 215.9, HeightMm: 279.4}, {WidthMm: 279.4, HeightMm: 431.8}}
	write := func(name string, p *plan.PartPlan) {
		pl := sheettest.JobOf("tilings", parts.Millimetres, p)
		for _, all := range []bool{false, true} {
			one, err := newPunch(pl, pl.Parts[0], pl.Parts[0].Faces[0], all)
			if err != nil {
				t.Fatal(err)
			}
			for _, paper := range papers {
				w := window(paper)
				tiles := one.tiles(w.Width(), w.Height())
				fmt.Fprintf(&out, "%s, %v on %g x %g, %d tiles", name, all, paper.WidthMm, paper.HeightMm, len(tiles))
				for _, tile := range tiles {
					fmt.Fprintf(&out, "; %d: %.1f %s %v", tile.n, tile.window, one.title(tile.n), len(tile.seams()))
				}
				if len(tiles) > 1 {
					g := tiles[0].grid
					fmt.Fprintf(&out, "; seams %.1f %.1f shown %v marks", g.xs, g.ys, g.shown)
					for _, m := range g.marks {
						fmt.Fprintf(&out, " %s %.1f %.1f %v", m.letter, m.x, m.y, m.across)
					}
				}
				out.WriteByte('\n')
			}
		}
	}
	for _, d := range []float64{230, 300, 420, 505, 610, 760} {
		write(fmt.Sprintf("ring %g", d), sheettest.RingPart(d))
	}
	for _, s := range [][4]float64{{150, 120, 0, 9}, {193, 260, 40, 9}, {260, 180, 60, 11}, {300, 300, 120, 11}, {420, 150, 0, 14}, {400, 400, 260, 14}, {640, 90, 0, 9}, {500, 420, 61, 18}, {505, 700, 300, 18}, {90, 470, 2, 6}} {
		write(fmt.Sprintf("plate %g", s), platePart(s[0], s[1], s[2], s[3]))
	}
	golden.Whole(t, "testdata/tilings.txt", []byte(out.String()))
}

// TestSheetsOfWorked: all template sheets of the small jobs of layout, shared and apart,
// on two papers: a line of the record and a sum each.
func TestSheetsOfWorked(t *testing.T) {
	t.Parallel()
	var out strings.Builder
	for _, c := range [][2]string{{"part", "mm"}, {"part", "turned"}, {"part", "inch"}, {"joint", "barrel"}, {"joint", "formed"}, {"joint", "inch"}, {"joint", "frame"}} {
		w := sheettest.Worked(t, c[0], c[1])
		for _, paper := range []draw.Frame{a4, letter} {
			shared, err := sheetsOf(w.Plan, paper, Useful)
			if err != nil {
				t.Fatal(err)
			}
			apart, err := apartOf(w.Plan, paper, All)
			if err != nil {
				t.Fatal(err)
			}
			for _, chapters := range [][]draw.Chapter{shared, apart} {
				fmt.Fprintf(&out, "%s on %s:\n", c[1], paper.Name)
				for _, k := range chapters {
					out.WriteString(sheettest.RecordLines(t, k.Sheets))
				}
			}
		}
	}
	golden.Whole(t, "testdata/worked.txt", []byte(out.String()))
}
