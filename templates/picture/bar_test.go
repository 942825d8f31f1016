package picture

import (
	"math"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
)

// The ends of a bar are drawn at one scale with its width, 11 mm high, what lies between is
// stretched or shortened; holes keep their order, and so do their lengths.
func TestBar(t *testing.T) {
	t.Parallel()
	b := &plan.BarPlan{
		WidthMm: 50, DepthMm: 50, LengthMm: 1000, TopMm: 900, BottomMm: 1000, Length: "1000", Top: "900", Bottom: "1000",
		Outline: "M-500 -25L500 -25L450 25L-450 25z", Left: plan.BarEnd{Name: "left", SawDeg: 45, Long: "bottom"}, Right: plan.BarEnd{Name: "right", SawDeg: 45, Long: "bottom"},
		Holes: []plan.BarHole{
			{N: 2, Side: "front", XMm: 10, DiameterMm: 9, From: "510 from the left"}, {N: 1, Side: "front", XMm: 0, DiameterMm: 9, From: "500 from the left"},
			{N: 3, Side: "top", XMm: 100, YMm: 10, DiameterMm: 9, From: "600 from the left"},
		},
	}
	v := &barView{bar: b, x0: 20, room: 80}
	scale := barHighMm / 50
	if v.x(-500) != 20 || math.Abs(v.x(-450)-20-50*scale) > 1e-9 || math.Abs(v.x(500)-100) > 1e-9 || math.Abs(v.x(450)-100+50*scale) > 1e-9 || math.Abs(v.x(0)-60) > 1e-9 {
		t.Errorf("%v, %v, %v, %v", v.x(-500), v.x(-450), v.x(450), v.x(500))
	}
	short := &barView{bar: &plan.BarPlan{WidthMm: 50, LengthMm: 60}, x0: 0, room: 80}
	if short.x(30) != 80 || short.x(0) != 40 {
		t.Errorf("%v, %v", short.x(0), short.x(30))
	}
	p := Bar(b, 120)
	at := map[string][2]float64{}
	for _, item := range p.Draw.Items {
		if text, ok := item.(draw.Text); ok {
			at[text.Content] = [2]float64{text.XMm, text.YMm}
		}
	}
	one, two := at["500 from the left"], at["510 from the left"]
	if one[1] != two[1] || one[0] >= two[0] || at["top 900"][1] <= at["bottom 1000"][1] || at["600 from the left"][1] >= at["bottom 1000"][1] {
		t.Errorf("%v", at)
	}
	if _, said := at["1000"]; said {
		t.Error("the length stands twice")
	}
	for text, xy := range at {
		if xy[1] > 0 || xy[1] < -p.Height {
			t.Errorf("%s at %v, the picture is %v high", text, xy, p.Height)
		}
	}
	b.Top, b.Bottom, b.TopMm, b.Left, b.Right = "", "", 1000, plan.BarEnd{Name: "left"}, plan.BarEnd{Name: "right", Cope: "Cut."}
	texts := map[string]bool{}
	for _, item := range Bar(b, 120).Draw.Items {
		if text, ok := item.(draw.Text); ok {
			texts[text.Content] = true
		}
	}
	if !texts["1000"] || !texts["square"] || !texts["cope"] || texts["saw 45°"] {
		t.Errorf("%v", texts)
	}
}

// All views of a bar are to the one scale: of a tube 25 high and 50 deep the top is twice as
// high as the front.
func TestBarViewsAreToOneScale(t *testing.T) {
	t.Parallel()
	b := &plan.BarPlan{WidthMm: 25, DepthMm: 50, LengthMm: 200, Length: "200", Outline: "M-100 -12.5L100 -12.5L100 12.5L-100 12.5z",
		Left: plan.BarEnd{Name: "left"}, Right: plan.BarEnd{Name: "right"}, Holes: []plan.BarHole{{N: 1, Side: "top", DiameterMm: 14, From: "100 from the left"}}}
	var high []float64
	for _, item := range Bar(b, 120).Draw.Items {
		if s, ok := item.(draw.Shape); ok && s.WidthMm >= draw.LineMm && s.Path.Bounds().W() > 50 {
			high = append(high, s.Path.Bounds().H())
		}
	}
	if len(high) != 2 || math.Abs(high[1]-2*high[0]) > 1e-9 {
		t.Errorf("%v", high)
	}
}
