package sequence

import (
	"fmt"
	"math"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// TestSmallRules: what decides how a picture and its numbers stand, at both sides of its bounds.
func TestSmallRules(t *testing.T) {
	t.Parallel()
	pic := func(arrows ...plan.Arrow) *plan.Picture {
		return &plan.Picture{MaxMm: plan.XY{XMm: 100, YMm: 50}, Arrows: arrows}
	}
	along := func(x, y float64) plan.Arrow {
		return plan.Arrow{AtMm: plan.XY{XMm: 50, YMm: 25}, Dir: plan.XY{XMm: x, YMm: y}}
	}
	sides := func(width float64, arrows ...plan.Arrow) string { // what is left, right, over and under it
		m := roomOf(pic(arrows...), width, 400)
		if want := min((width-m.left-m.right)/100, (400-m.over-m.under)/50); math.Abs(m.scale-want) > 1e-9 {
			t.Errorf("scale %v, want %v", m.scale, want)
		}
		return fmt.Sprintf("%.3g %.3g %.3g %.3g, %.3g", m.left, m.right, m.over-picture.BalloonRowMm, m.under-picture.CaptionMm, m.arrow)
	}
	front := func(placed ...plan.Placed) string {
		return frontOf(&plan.JointPlan{Placed: placed, B: plan.JointEnd{Title: "b"}})
	}
	said := func(units parts.Units, lo, hi float64) string {
		return words.NarrowFine(plan.Range{Min: lo, Max: hi}, units)
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"no arrows", sides(55), "2 2 0 0, 1"}, {"four fifths of the width", sides(44), "2 2 0 0, 0.8"}, {"the least arrows", sides(38), "2 2 0 0, 0.7"},
		{"to the right, from the left", sides(55, along(0.51, 0.86)), fmt.Sprintf("%.3g 2 0 0, 1", besideMm)}, {"hardly", sides(55, along(0.5, 0.87)), fmt.Sprintf("2 2 0 %.3g, 1", arrowMm)},
		{"to the left, from the right", sides(44, along(-0.51, 0.86)), fmt.Sprintf("2 %.3g 0 0, 0.8", 0.8*besideMm)}, {"hardly", sides(55, along(-0.5, -0.87)), fmt.Sprintf("2 2 %.3g 0, 1", arrowMm)},
		{"one behind the other", sides(55, along(-1, 0), along(-1, 0)), fmt.Sprintf("2 %.3g 0 0, 1", besideMm+arrowMm)}, {"and on the left", sides(55, along(1, 0), along(1, 0)), fmt.Sprintf("%.3g 2 0 0, 1", besideMm+arrowMm)},
		{"the front of the first that lies as the assembly does", []string{front(), front(plan.Placed{Title: "a", TurnDeg: 9}), front(plan.Placed{Title: "a", TurnDeg: 9}, plan.Placed{Title: "c"}), front(plan.Placed{Title: "a", OtherWay: true}, plan.Placed{Title: "c", FrontMm: 1})}, "[b a c a]"},
		{"a range in µm", []string{said(parts.Millimetres, 0.5, 1.2), said(parts.Millimetres, -0.02, 0), said(parts.Inches, 0.0254, 2.54)}, "[500–1200 µm -20 to 0 µm 0.001–0.1 in]"},
	} {
		if got, want := fmt.Sprint(c.got), fmt.Sprint(c.want); got != want {
			t.Errorf("%s: %s, want %s", c.what, got, want)
		}
	}
	// The page of a tool's sheet stands half an em behind its name, on its line.
	for _, width := range []float64{180, 60} {
		x, size := 0.0, closeness(1).em(3.2)
		lines := closeness(1).ready([]*plan.JointPlan{{Tools: []string{"T1 Stop disc", "T2 Sleeve"}}}, width)
		lead := draw.TextWidth("Have ready:", size, false) + size/2
		if len(lines[0].Refers) == 0 {
			t.Fatalf("no pages in %v", width)
		}
		x = lead + draw.TextWidth("T1 Stop disc", size, true) + size/2
		if r := lines[0].Refers[0]; math.Abs(r.XMm-x) > 1e-9 || math.Abs(r.YMm+size) > 1e-9 || r.SizeMm != size || r.Title != "T1 Stop disc" {
			t.Errorf("in %v the page stands at %+v, want %v", width, r, x)
		}
	}
}
