package part

import (
	"strings"
	"testing"
)

// How the bores of a Ø80 bar, 200 long, are opened: jobbers of 10 and 9 mm stay
// straight to ten diameters, 100 and 90 mm, so that they do not go through a wide bore
// of 150 or 170 first; a bar reaches six diameters, half from each end (layout/cutting).
// The 40 mm bore is opened to 30 mm, the largest drill without a list of the shop's.
func TestOpening(t *testing.T) {
	t.Parallel()
	const wide = "For wide let no drill's point go over 170 mm deep.\nDrill Ø30, leaves 10 mm on diameter"
	for _, c := range []struct {
		name, inside string
		want         []string // in this order
		not          string
	}{
		{"narrow behind deep wide", "{name: wide, diameter: 40, length: 170}, {name: narrow, diameter: 10, length: 30}",
			[]string{"Stop every drill short of 170 mm from the front face.", "Drill Ø30, leaves 10 mm", "Bore wide Ø40", "Turn from the back face", "Drill Ø9, leaves 1 mm", "Bore narrow Ø10"}, "half from each end"},
		{"no bar reaches through", "{name: wide, diameter: 40, length: 170}, {name: narrow, diameter: 20, fit: H7, length: 30}",
			[]string{"Bore wide Ø40", "Turn from the back face", "Drill Ø19, leaves 1 mm", "Bore narrow Ø20 H7"}, ""},
		{"near enough", "{name: wide, diameter: 40, length: 60}, {name: narrow, diameter: 25, length: 100}, {name: rear, diameter: 30, length: 40}",
			[]string{"Centre-drill.\n", "Drill Ø24, leaves 1 mm", "For wide let no drill's point go over 60 mm deep.", "Drill Ø30", "Bore narrow Ø25", "Bore wide Ø40", "Turn from the back face", "Bore rear Ø30"}, "For rear"},
		{"no gain from behind", "{name: wide, diameter: 50, length: 60}, {name: narrow, diameter: 36, length: 140}",
			[]string{"Drill Ø30, leaves 6 mm", "Bore narrow Ø36", "Bore wide Ø50", "Turn from the back face"}, "no drill's point"},
		{"blind, deep", "{name: wide, diameter: 40, length: 150}, {name: narrow, diameter: 10, length: 30}",
			[]string{"Stop every drill short of 150 mm", "Drill Ø30", "Narrow from the floor before it: centre-drill there with a long drill. Stop every drill short of 180 mm from the front face.", "Drill Ø10", "made by the drill above", "Bore wide Ø40, 150 long"}, "Deep: "}, // 30 from that floor,
		{"blind from one end", "{name: narrow, diameter: 10, length: 150}", []string{"Stop every drill short of 150 mm", "Drill Ø10", "Deep: draw the drill back often"}, "half from each end"},
		{"through from both", "{name: narrow, diameter: 10, length: 200}", []string{"Drill Ø10", "Deep: drill half from each end"}, "back often"},
		{"wide at the back", "{name: narrow, diameter: 25, length: 30}, {name: wide, diameter: 40, length: 170}",
			[]string{"Drill Ø24", "Bore narrow Ø25", "Turn from the back face", wide, "Bore wide Ø40"}, ""},
		{"deep from the back", "{name: wide, diameter: 40, length: 130}, {name: narrow, diameter: 6, length: 70}",
			[]string{"Stop every drill short of 130 mm from the front face.", "Bore wide Ø40", "Turn from the back face", "Centre-drill.\n", "Drill Ø6", "Deep: draw the drill back often"}, "from the floor before it"},
		{"deep, with limits, before a narrow one", "{name: narrow, diameter: 8, length: 50}, {name: deep, diameter: 12, fit: H7, length: 150}",
			[]string{"Drill Ø8", "Turn from the back face", "Drill out deep Ø12 H7, 150 long.", "Drill Ø11.7, leaves 0.3 mm", "Deep: draw the drill back often", "Ream Ø12 H7"}, ""},
		{"tapped, no bar reaches through", "{name: screw, thread: M24, length: 150}, {name: narrow, diameter: 10, length: 50}",
			[]string{"Stop every drill short of 150 mm", "Drill Ø20, leaves 1 mm", "Screw: the tap drill makes it, no bar reaches so deep, 150 long.\nDrill Ø21", "Tap screw M24", "Turn from the back face", "Drill Ø9, leaves 1 mm"}, "no drill's point"},
		{"tapped from the back", "{name: narrow, diameter: 10, length: 50}, {name: screw, thread: M24, length: 150}",
			[]string{"Drill Ø9, leaves 1 mm", "Bore narrow Ø10", "Turn from the back face", "Screw: the tap drill makes it, no bar reaches so deep, 150 long.\nDrill Ø21, ", "Tap screw M24"}, "no drill's point"},
		{"in the middle", "{name: front, diameter: 40, length: 95}, {name: narrow, diameter: 9, length: 10}, {name: rear, diameter: 40, length: 95}",
			[]string{"Stop every drill short of 95 mm", "Drill Ø30", "Narrow from the floor before it", "Turn from the back face", "For rear let no drill's point go over 95 mm deep.", "Bore rear Ø40"}, ""},
	} {
		m := work(t, "mm", "part: p\nkind: turned\nmaterial: S355\nstock: {round: 85 mm, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 200}]\n  inside: ["+c.inside+"]\n")
		rest := lines(m)
		for _, want := range c.want {
			_, after, ok := strings.Cut(rest, want)
			if !ok {
				t.Errorf("%s: no %q in order in\n%s", c.name, want, lines(m))
				break
			}
			rest = after
		}
		if c.not != "" && strings.Contains(lines(m), c.not) {
			t.Errorf("%s: %q in\n%s", c.name, c.not, lines(m))
		}
	}
}

// A casting is ordered by what its stock has over the finished part: 210 for 200 is 10 on
// every diameter, 96 for 90 is 3 a face. A step no longer than that is cast with its
// neighbour, and a bore under 20 is cast solid (common practice, no source).
func TestCastingIsOrdered(t *testing.T) {
	t.Parallel()
	const casting = "part: c\nkind: turned\nmaterial: EN-GJL-250\nstock: {casting: 210 mm, length: 96 mm}\nprofile:\n  outside: [{name: nose, diameter: 90, length: 10}, {name: body, diameter: 120, length: 60}, {name: flange, diameter: 200, length: 20}]\n  inside: [{name: wide, diameter: 60, length: 40}, {name: bore, diameter: BORE, length: 50}]\n"
	for bore, core := range map[string]string{"30": "core Ø20", "29.9": "cast solid"} {
		if s := lines(work(t, "mm", strings.Replace(casting, "BORE", bore, 1))); !strings.Contains(s, "Ordered with 10 on diameters and 3 on each face: body Ø130, flange Ø210, "+core+". Draft, fillets, shrinkage and a stepped core are the pattern maker's.") {
			t.Errorf("bore %s: %s", bore, s)
		}
	}
	if s := lines(work(t, "in", strings.NewReplacer("210 mm", "8-1/2", "96 mm", "4", "BORE", "1", "200", "8", "120", "4", "90", "3", "60}", "2}", "60,", "2,", "20}", "1}", "10}", "0.5}", "40}", "1.5}", "50}", "2}").Replace(casting))); !strings.Contains(s, "Ordered with 0.5 in on diameters and 0.25 in on each face: body Ø4.5 in, flange Ø8.5 in, cast solid.") {
		t.Error(s)
	}
}
