package truesize

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestSteppedFace: a face that steps at Ø120 is drawn with that circle to cut along; a
// disc with holes has its own TOP, inside it; with nothing to mark outside the step,
// the template ends there.
func TestSteppedFace(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		cut     plan.FaceCut
		outline float64 // diameter
		tops    int
		cuts    int
		says    string
	}{
		{"ring and disc", plan.FaceCut{DiameterMm: 120, ProudMm: 6, Inside: true, Outside: true}, 180, 2, 1, "the disc lies 6 over the ring"},
		{"disc under the ring", plan.FaceCut{DiameterMm: 120, ProudMm: -6, Inside: true, Outside: true}, 180, 2, 1, "the disc lies 6 under the ring"},
		{"ring alone", plan.FaceCut{DiameterMm: 120, ProudMm: 6, Outside: true}, 180, 1, 1, "which stands 6 proud"},
		{"disc alone", plan.FaceCut{DiameterMm: 120, ProudMm: 6, Inside: true}, 120, 1, 0, ""},
	} {
		part := sheettest.RingPart(180)
		part.Faces = part.Faces[:1]
		part.Faces[0].Cuts, part.Faces[0].Circles = []plan.FaceCut{c.cut}, nil
		pl := sheettest.JobOf("stepped", parts.Millimetres, part)
		chapters, err := apartOf(pl, a4, Useful)
		if err != nil {
			t.Fatal(err)
		}
		tops, cuts, outline, said := 0, 0, 0.0, ""
		for _, it := range sheettest.Flatten(t, &chapters[0].Sheets[0].Draw, 0, 0, nil) {
			switch x := it.Item.(type) {
			case draw.Text:
				said += x.Content + " "
				if x.Content == "TOP" && x.YMm < 270 { // not that of the strip
					tops++
				}
			case draw.Shape:
				b := x.Path.Bounds()
				switch round := math.Abs(b.W()-b.H()) < 1e-6; {
				case round && math.Abs(b.W()-120) < 1e-6 && len(x.DashMm) == len(draw.CutDash) && x.DashMm[0] == draw.CutDash[0]:
					cuts++
				case round && len(x.DashMm) == 0 && x.WidthMm == draw.LineMm:
					outline = math.Max(outline, b.W())
				}
			}
		}
		if !strings.Contains(said, c.says) {
			t.Errorf("%s: no %q in %s", c.name, c.says, said)
		}
		if tops != c.tops || cuts != c.cuts || math.Abs(outline-c.outline) > 1e-6 {
			t.Errorf("%s: %d TOP, %d cuts, outline Ø%g; want %d, %d, %g", c.name, tops, cuts, outline, c.tops, c.cuts, c.outline)
		}
	}
}
