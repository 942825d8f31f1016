package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A tube's saddled end that nothing is turned at needs no setting of its own, whatever is
// chamfered at the other; its length is measured over the tips, once the last end is cut. TOP
// stands where a saddle does not take it away.
func TestSaddledEnds(t *testing.T) {
	t.Parallel()
	const tube = "part: stub\nkind: tube\nmaterial: S235\ntop: paint\nstock: {tube: 60 mm, wall: 4 mm, length: 140 mm}\ntube: {outside: 60, wall: 4, length: 136}\nends: {ENDS}\nchamfers: [{edge: outside-EDGE, size: 0.5 mm, angle: 15, for: lead-in}]\n"
	const saddle = "{onto: {diameter: 100}}"
	for _, c := range []struct {
		ends, edge string
		titles     string
		tips       string
		top        string
	}{
		{"back: " + saddle, "front", "Cut the stock, Face the front end, Cut the back end to the saddle curve, Deburr and inspect", "Cut the back end", "on the front face"},
		{"front: " + saddle, "back", "Cut the stock, Face the back end, Cut the front end to the saddle curve, Deburr and inspect", "Cut the front end", "on the back face"},
		{"front: " + saddle + ", back: " + saddle, "front", "Cut the stock, Face the front end, Cut the front end to the saddle curve, Cut the back end to the saddle curve, Deburr and inspect", "Cut the back end", "along the outside"},
	} {
		m := work(t, "mm", strings.NewReplacer("ENDS", c.ends, "EDGE", c.edge).Replace(tube))
		var titles []string
		marked := 0
		for _, o := range m.Out.Operations {
			titles = append(titles, o.Title)
			limits := strings.Join(o.Limits, "; ")
			if want := strings.HasPrefix(o.Title, c.tips); strings.Contains(limits, "length over the tips 135.5 – 136.5") != want || strings.HasPrefix(limits, "length 1") {
				t.Errorf("%s: %s: %s", c.ends, o.Title, limits)
			}
			marked += strings.Count(strings.Join(o.Do, " "), "Mark TOP "+c.top+" (paint).")
		}
		if held := m.Out.Operations[1].Holding; strings.HasPrefix(held, "turned round") {
			t.Errorf("%s: first in the lathe %s", c.ends, held)
		}
		if !slices.ContainsFunc(m.Out.Checks, func(k plan.Check) bool { return k.What == "TOP marked" && k.Limits == c.top }) {
			t.Errorf("%s: the record does not ask for TOP %s", c.ends, c.top)
		}
		if got := strings.Join(titles, ", "); got != c.titles || marked != 1 {
			t.Errorf("%s: %s, TOP marked %d times", c.ends, got, marked)
		}
	}
}

// TOP of what is closed by a seam is marked when that is closed, and lies by it.
func TestTopFromSeam(t *testing.T) {
	t.Parallel()
	for seam, want := range map[string]string{"180": "(paint), opposite the seam.", "90": "(paint), the seam at its clock 90°."} {
		has(t, work(t, "mm", "part: hopper\nkind: cone\nmaterial: S235\ntop: paint\nstock: {sheet: 2 mm, cut: none}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: 0, measured: outside, seam: "+seam+"}\n"), "Roll and close the seam", "Mark TOP on the front face "+want)
	}
}

// TestConeIsTapedWithinLimits: 300 and 150 ± 0.5 (ISO 2768-1 m, over 120 to 400) are 940.91 to 944.05 and 469.67 to 472.81 round.
// The sheet of 2 leans by atan 75/200 and is 1.873 thick across the axis: over a lap of 20 the tape reads 0.642 and 1.053 more,
// and round a cone measured inside 2 × 1.873 × π = 11.77. A limit is rounded inward.
func TestConeIsTapedWithinLimits(t *testing.T) {
	t.Parallel()
	for more, want := range map[string]string{
		"measured: outside":              "941.0 – 944.0 and 469.7 – 472.8 outside",
		"measured: outside, overlap: 20": "941.6 – 944.6 and 470.8 – 473.8 over the lap",
		"measured: inside":               "952.7 – 955.8 and 481.5 – 484.5 outside",
	} {
		m := work(t, "mm", "part: hopper\nkind: cone\nmaterial: S235\nstock: {sheet: 2 mm, cut: none}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: 0, seam: 0, "+more+"}\n")
		if o := m.Out.Operations[1]; o.Gauge != "tape round both ends: "+want {
			t.Errorf("%s: %q, want %q", more, o.Gauge, want)
		}
	}
}
