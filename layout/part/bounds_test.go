package part

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/bars"
	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// told is all that is said of a part, a line each: operations with their limits and
// speeds, features, what is measured.
func told(m *Model) string {
	var out []string
	for _, o := range m.Out.Operations {
		out = append(out, o.Title, o.Holding, o.Tool, o.Speed, o.Gauge)
		out = append(append(out, o.Do...), o.Limits...)
	}
	for _, f := range m.Features {
		out = append(out, words3(f.Name, f.Size, f.Limits), f.Note)
	}
	for _, c := range m.Out.Checks {
		out = append(out, words3(c.What, c.Wanted, c.Limits))
	}
	return strings.Join(out, "\n") + "\n"
}

func words3(a, b, c string) string { return a + ": " + b + " = " + c }

// TestSmallSizes: small jobs with one thing each to say, its figures by hand.
func TestSmallSizes(t *testing.T) {
	t.Parallel()
	const (
		plate  = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {rectangle: [200, 120]MORE}\n"
		disc   = "part: d\nkind: flange\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {circle: 200}\n"
		turned = "part: t\nkind: turned\nmaterial: S355\nstock: {round: 310 mm}\nprofile:\n  outside: [{name: rim, diameter: 300, length: 130}]\n"
		sleeve = "part: cyl\nkind: turned\nmaterial: S355\nstock: {round: 60 mm}\nprofile:\n  outside:\n    - {name: o, diameter: 55, length: LONG}\n  inside:\n    - {name: i, diameter: 30, length: LONG}\n"
		shaft  = "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 70 mm, length: 210 mm, cut: saw}\nprofile:\n  outside:\n    - {name: nose, diameter: 38, length: 80}\n    - {name: collar, diameter: 60, length: 50}\n"
		nut    = "part: n\nkind: turned\nmaterial: S235\nstock: {round: 65 mm}\nprofile:\n  outside: [{name: body, diameter: 60, length: 30}]\n  inside: [{name: screw, thread: SIZE, length: 30}]\n"
		thick  = "part: w\nkind: turned\nmaterial: S235\nstock: {round: 4 in}\nprofile:\n  outside: [{name: body, diameter: 3.6, length: 2}]\n  inside: [{name: bore, diameter: 0.5, length: 2}]\nradial:\n  - {name: screw, clock: 0, axial: 1, size: \"SIZE tap\"}\n"
	)
	hub := func(out, bore float64, long string) string {
		return fmt.Sprintf("part: h\nkind: turned\nmaterial: S355\nstock: {round: %g mm}\nprofile:\n  outside: [{name: body, diameter: %g, length: %s}]\n  inside: [{name: bore, diameter: %g, fit: H7, length: %s}]\n", out+5, out, long, bore, long)
	}
	tray := func(high float64, more string) string {
		return fmt.Sprintf("part: tray\nkind: folded\nmaterial: S235\nstock: {sheet: 2, cut: laser}\noutline: {rectangle: [200, 200]}\nbends:\n  radius: 2\n  flanges: [{side: top, height: %g}]\n%s", high, more)
	}
	cutBy := func(what string) string {
		return "part: h\nkind: turned\nmaterial: S355\nstock: {plate: 25 mm, cut: " + what + "}\nprofile:\n  outside: [{name: body, diameter: 200, length: 20}]\n"
	}
	for _, c := range []struct {
		name, units, text string
		want, not         []string
	}{
		{"a bore left by the laser, which holds 0.1", "mm", strings.Replace(disc, "saw}", "laser}\nbore: {diameter: 60, fit: H7, leave: 2}", 1), []string{"set the bore as cut true within 0.1 mm, face"}, nil},
		{"a bore left by plasma, a quarter of it", "mm", strings.Replace(disc, "saw}", "plasma}\nbore: {diameter: 60, fit: H7, leave: 1.2}", 1), []string{"set the bore as cut true within 0.3 mm, face"}, nil},
		{"a window near a step as wide", "mm", strings.Replace(hub(60, 40, "100"), "{name: body, diameter: 60, length: 100}", "{name: body, diameter: 60, length: 50}, {name: tail, diameter: 60, length: 50}", 1) + "radial: [{name: w, clock: 0, axial: 39, window: {around: 20, along: 20, corner: 3}}]\n", nil, []string{"leave no burr there"}},
		{"that reaches it", "mm", strings.Replace(hub(60, 40, "100"), "{name: body, diameter: 60, length: 100}", "{name: body, diameter: 60, length: 50}, {name: tail, diameter: 60, length: 50}", 1) + "radial: [{name: w, clock: 0, axial: 42, window: {around: 20, along: 20, corner: 3}}]\n", []string{"It runs 2 mm into tail: leave no burr there."}, nil},
		{"from behind it", "mm", strings.Replace(hub(60, 40, "100"), "{name: body, diameter: 60, length: 100}", "{name: body, diameter: 60, length: 50}, {name: tail, diameter: 60, length: 50}", 1) + "radial: [{name: w, clock: 0, axial: 58, window: {around: 20, along: 20, corner: 3}}]\n", []string{"It runs 2 mm into body: leave no burr there."}, nil},
		{"a hole as cut, sunk", "mm", strings.NewReplacer("saw", "laser", "MORE", "").Replace(plate) + "holes: [{name: h, at: [[30, 30]], size: 24 mm, countersink: {diameter: 40, angle: 90}}]\n", []string{"Countersink"}, []string{"Drill Ø24"}},
		{"bored deeper", "mm", strings.NewReplacer("saw", "laser", "MORE", "").Replace(plate) + "holes: [{name: h, at: [[30, 30]], size: 24 mm, counterbore: {diameter: 40, depth: 8}}]\n", []string{"Counterbore"}, []string{"Drill Ø24"}},
		{"a metal without speeds", "mm", strings.Replace(disc, "S235", "oak", 1) + "bore: {diameter: 60, fit: H7}\nholes: [{name: h, at: [[0, 70]], size: 10 mm}]\nslots: [{name: s, at: [[0, -70]], width: 10, length: 30}]\n", nil, []string{"rev/min"}},
		{"a bore in a sawn disc", "mm", disc + "bore: {diameter: 60, fit: H7}\n", []string{"set the outside true within 0.5 mm, face"}, nil},
		{"a bore in a sawn plate", "mm", strings.Replace(plate, "MORE", "", 1) + "bore: {diameter: 60, fit: H7}\n", []string{"set the middle as scribed true within 0.5 mm, face"}, nil},
		{"corners of half a millimetre", "mm", strings.Replace(plate, "MORE", ", corner: 0.5", 1), []string{"200 × 120, corners R0.5"}, nil},
		{"sharp corners", "mm", strings.Replace(plate, "MORE", "", 1), []string{"outline: 200 × 120 = "}, []string{"corners R"}},
		// ISO 286-2: 12 H7 is 12.000 to 12.018, printed rounded inward.
		{"a bore that is drilled and reamed", "mm", strings.Replace(plate, "MORE", "", 1) + "bore: {diameter: 12, fit: H7}\n", []string{"\nBore Ø12 H7\n", "\nbore 12.000 – 12.018\n"}, nil},
		// ISO 2768-1 Table 3: a short leg over 50 to 120 mm, ±20' in class m, ±0.33°; of 8, up to
		// 10 mm, ±1°. Table 2: over 6 mm ±1.
		{"a wide chamfer", "mm", turned + "chamfers: [{edge: rim-front, size: 60, angle: 45, for: lead-in}]\n", []string{": 120 under its Ø = 118.0 – 122.0, 45° ±0.33°\n"}, nil},
		{"a chamfer", "mm", turned + "chamfers: [{edge: rim-front, size: 8, angle: 45, for: lead-in}]\n", []string{": 16 under its Ø = 14.0 – 18.0, 45° ±1°\n"}, nil},
		// Of what is sawn 50 are in the jaws: of 211 + 4 stick out three times 55, of 212 + 4 more.
		{"three diameters", "mm", strings.ReplaceAll(sleeve, "LONG", "211"), []string{"chuck on the back end, set true"}, []string{"steady"}},
		{"over three diameters", "mm", strings.ReplaceAll(sleeve, "LONG", "212"), []string{"set true; a centre in a plug, or a steady"}, nil},
		// A bar of Ø30 × 2000 (I = 39760.8 mm⁴) on centres: 75·2000³/(48·210000·39760.8) =
		// 1.4971 mm; its ends, a little thinner and thicker, hardly bend.
		{"a slender bar", "mm", "part: bar\nkind: shaft\nmaterial: S355\nstock: {round: 40 mm}\nprofile:\n  outside:\n    - {name: collar, diameter: 30.2, length: 20}\n    - {name: fine, diameter: 30, fit: k6, length: 1960}\n    - {name: end, diameter: 29.8, length: 20}\n", []string{"a finishing cut bends fine 1497 µm aside"}, nil},
		// A ring as large as its floor, 38 − 2 × 2.3 (trade table of layout/grooves), is not stretched.
		{"an O-ring that just fits", "mm", shaft + "grooves: [{name: g, in: nose, axial: 10, for: o-ring, o-ring: 33.4x3}]\n", []string{", stretched 0 %;"}, []string{"pressed together"}},
		{"an O-ring too large", "mm", shaft + "grooves: [{name: g, in: nose, axial: 10, for: o-ring, o-ring: 34x3}]\n", []string{", pressed together 1.8 %;"}, []string{"stretched"}},
		// One and a half diameters to a whole sixteenth: 3/8 is 0.5625 = 9/16; #10 is 0.285, so
		// 5/16 = 0.3125; 1/4 is 0.375 = 6/16.
		{"a thread of 3/8", "in", strings.Replace(thick, "SIZE", "3/8-16 UNC", 1), []string{"thread 0.5625 in deep"}, nil},
		{"a thread of #10", "in", strings.Replace(thick, "SIZE", "#10-24 UNC", 1), []string{"thread 0.3125 in deep"}, nil},
		{"a thread of 1/4", "in", strings.Replace(thick, "SIZE", "1/4-20 UNC", 1), []string{"thread 0.375 in deep"}, nil},
		// A slot is 30 long over all: with its middle 60 out and its axis across, both ends of
		// its middle line are at √(60² + 10²) = 60.828, so 100 − 5 − 60.828 = 34.172 from the
		// outside; along, 100 − 5 − 70 = 25. The second lies √(90² + 45²) = 100.623 from the first.
		{"slots on a round", "mm", disc + "slots:\n  - {name: s, at: [[60, 0], [-30, 45]], width: 10, length: 30, turn: 0}\n",
			[]string{"\ns 1, outside to its near side: 34.17 = 33.88 – 34.47\n", "\ns 2 from 1, side to like side: 100.62 = 100.33 – 100.92\n"}, []string{"bore to its near side", "long axis at clock"}},
		{"slots along", "mm", disc + "slots:\n  - {name: s, at: [[60, 0]], width: 10, length: 30, turn: 90}\n", []string{"\ns 1, outside to its near side: 25 = 24.8 – 25.2\n"}, nil},
		// From the bore Ø30: 60 − 5 − 15 = 40 across; 50 − 20 = 30 along.
		{"slots beside a bore", "mm", disc + "bore: {diameter: 30}\nslots:\n  - {name: s, at: [[60, 0]], width: 10, length: 30, turn: 0}\n", []string{"\ns 1, bore to its near side: 40 = 39.7 – 40.3\n"}, []string{"outside to its near side"}},
		{"slots towards a bore", "mm", disc + "bore: {diameter: 30}\nslots:\n  - {name: s, at: [[60, 0]], width: 10, length: 30, turn: 90}\n", []string{"\ns 1, bore to its near side: 30 = 29.8 – 30.2\n"}, nil},
		{"a slot at the back, beside a wider bore", "mm", "part: t\nkind: turned\nmaterial: S355\nstock: {round: 210 mm}\nprofile:\n  outside: [{name: rim, diameter: 200, length: 50}]\n  inside: [{name: narrow, diameter: 30, length: 20}, {name: wide, diameter: 60, length: 30}]\nslots:\n  - {name: s, face: back, at: [[60, 0]], width: 10, length: 30, turn: 0, depth: 5}\n", []string{"\ns 1, bore to its near side: 25 = 24.8 – 25.2\n"}, nil},
		{"a thread to tap by hand", "mm", strings.ReplaceAll(nut, "SIZE", "M24x2"), []string{"Tap by hand or cut screw M24x2, pitch 2 mm, 30 long."}, nil},
		{"a thread too large for that", "mm", strings.ReplaceAll(nut, "SIZE", "M27x2"), []string{"Cut screw M27x2, pitch 2 mm, 30 long."}, []string{"Tap by hand or cut"}},
		// A window 20 wide: half a millimetre a side for the file, a drill of 10 at the most, webs of 1.
		{"a window", "mm", hub(60, 40, "100") + "radial: [{name: w, clock: 0, axial: 50, window: {around: 20, along: 30, corner: 3}}]\n", []string{"Chain-drill Ø10", "holes 11 mm apart"}, nil},
		{"a narrow window", "mm", hub(60, 40, "100") + "radial: [{name: w, clock: 0, axial: 50, window: {around: 8, along: 30, corner: 1}}]\n", []string{"Chain-drill Ø7", "3 holes 11 mm apart"}, nil},
		// Broached to ten widths, one bar reaches four bores: 100 and 152.
		{"a hub keyway of 100", "mm", hub(80, 38, "100") + "keyways: [{name: k, in: bore, length: 100, key: 10x8}]\n", []string{"Broach with shims"}, []string{"Too long for a push broach"}},
		{"of 101", "mm", hub(80, 38, "101") + "keyways: [{name: k, in: bore, length: 101, key: 10x8}]\n", []string{"Too long for a push broach, which cuts about 100 mm"}, []string{"half from each end", "by wire"}},
		{"of 152", "mm", hub(80, 38, "152") + "keyways: [{name: k, in: bore, length: 152, key: 10x8}]\n", []string{"Too long for a push broach"}, []string{"half from each end"}},
		{"of 153", "mm", hub(80, 38, "153") + "keyways: [{name: k, in: bore, length: 153, key: 10x8}]\n", []string{"half from each end to one TOP line"}, []string{"by wire"}},
		{"of 304", "mm", hub(80, 38, "304") + "keyways: [{name: k, in: bore, length: 304, key: 10x8}]\n", []string{"half from each end to one TOP line"}, []string{"by wire"}},
		{"of 305", "mm", hub(80, 38, "305") + "keyways: [{name: k, in: bore, length: 305, key: 10x8}]\n", []string{"have it cut by wire"}, nil},
		// Jaws bend a wall under a twentieth of its diameter.
		{"a wall of 10 in 200", "mm", hub(200, 180, "30"), nil, []string{"three-cornered"}}, {"a thinner one", "mm", hub(200, 180.2, "30"), []string{"jaws pinch a wall of 9.9 mm three-cornered"}, nil},
		{"one and a half diameters high", "mm", hub(60, 30, "90") + "holes: [{name: h, at: [[22, 0], [-22, 0]], size: 5}]\n", []string{"clamped on parallels"}, []string{"in a vee"}}, {"higher", "mm", hub(60, 30, "90.1") + "holes: [{name: h, at: [[22, 0], [-22, 0]], size: 5}]\n", []string{"upright in a vee on an angle plate, front face up, 90.1 mm high"}, nil},
		{"a disc cut by laser", "mm", cutBy("laser"), []string{"cut: Ø202 × 25 thick"}, nil}, {"by waterjet", "mm", cutBy("waterjet"), []string{"cut: Ø202 × 25 thick"}, nil}, {"by plasma", "mm", cutBy("plasma"), []string{"cut: Ø204 × 25 thick"}, nil}, {"by flame", "mm", cutBy("flame"), []string{"cut: Ø206 × 25 thick"}, nil}, {"sawn", "mm", cutBy("saw"), []string{"205 × 205"}, nil},
		// In six steps of R6, each √(36 − (6 − z)²) over the 144 where it begins.
		{"R3", "mm", turned + "chamfers: [{edge: rim-front, radius: 3, for: deburr}]\n", []string{"with a form tool, to the radius gauge."}, nil}, {"R6", "mm", turned + "chamfers: [{edge: rim-front, radius: 6, for: deburr}]\n", []string{"turned in steps from the face: 5 to Ø299.83, 4 to Ø299.31, 3 to Ø298.39, 2 to Ø296.94, 1 to Ø294.63; then"}, nil}, {"R3.1", "mm", turned + "chamfers: [{edge: rim-front, radius: 3.1, for: deburr}]\n", []string{"turned in steps"}, []string{"form tool"}},
		{"R25", "mm", turned + "chamfers: [{edge: rim-front, radius: 25, for: deburr}]\n", []string{"to the radius gauge."}, nil}, {"R25.1", "mm", turned + "chamfers: [{edge: rim-front, radius: 25.1, for: deburr}]\n", []string{"to the sheet template cut to the radius."}, nil},
		{"a slot of 25", "mm", hub(100, 80, "200") + "radial: [{name: s, clock: 0, axial: 100, slot: {around: 25, along: 60}}]\n", nil, []string{"Chain-drill"}}, {"a wider one", "mm", hub(100, 80, "200") + "radial: [{name: s, clock: 0, axial: 100, slot: {around: 25.1, along: 60}}]\n", []string{"Chain-drill"}, nil},
		{"as a tool leaves it", "mm", strings.Replace(shaft, "length: 80", "length: 80, fit: k6, finish: Ra 0.8", 1), nil, []string{"leave 0.02"}}, {"finer", "mm", strings.Replace(shaft, "length: 80", "length: 80, fit: k6, finish: Ra 0.7", 1), []string{"leave 0.02 on the diameter for that"}, nil},
		{"a flange of 50", "mm", tray(50, ""), nil, []string{"free edge out of square"}}, {"a higher one, a hundredth of it", "mm", tray(51, ""), []string{"top flange, free edge out of square: 0 = ±0.51 mm"}, nil},
		{"an outside for the lathe, cut without metal left", "mm", strings.NewReplacer("saw}", "laser}", "circle: 200", "circle: 200, fit: h9").Replace(disc), []string{"Leave the outside large enough for the lathe to clean it up."}, nil},
		{"a bore finer than a bar leaves it", "mm", strings.Replace(hub(60, 30, "40"), "fit: H7", "fit: H7, finish: Ra 0.4", 1), []string{"Hone bore to size: boring alone leaves it rougher than Ra 0.4."}, nil},
		{"a slot askew", "mm", disc + "slots:\n  - {name: s, at: [[60, 0]], width: 10, length: 30, turn: 210}\n", []string{"\ns 1, long axis at clock: 30° = "}, nil},
	} {
		m := work(t, c.units, c.text)
		s := told(m)
		for _, w := range c.want {
			if !strings.Contains(s, w) {
				t.Errorf("%s: no %q in\n%s", c.name, w, s)
			}
		}
		for _, w := range c.not {
			if strings.Contains(s, w) {
				t.Errorf("%s: %q in\n%s", c.name, w, s)
			}
		}
	}
}

// TestAskedBesides: what the machine and the joints ask of a part. An M20 thread, pitch 2.5, runs out over 11.2 (DIN 76-1, from
// memory) before a narrower bore, and nowhere at a mouth; undercuts lie at the shoulder of their steps.
func TestAskedBesides(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: s\nkind: turned\nmaterial: C45\nstock: {tube: 70 mm, wall: 30 mm, length: 210 mm, cut: saw}\nprofile:\n  outside:\n    - {name: nose, diameter: 38, length: 80, undercut: {width: 3, depth: 0.3}}\n    - {name: big-collar, diameter: 60, length: 50}\n"+
		"    - {name: tail, diameter: 38, length: 60, length-limits: [59.9, 60.1], undercut: {width: 4, depth: 0.3}}\n  inside:\n    - {name: tap, thread: M20, length: 40}\n    - {name: way, diameter: 12, length: 150}\n"+
		"holes:\n  - {name: pins, face: back, at: [[16, 3]], size: 3 mm, depth: 8}\n")
	grooved := work(t, "mm", "part: n\nkind: turned\nmaterial: C45\nstock: {round: 70 mm, length: 45 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 40}]\n  inside: [{name: way, diameter: 12, length: 10}, {name: tap, thread: M20, length: 30, undercut: {width: 5, depth: 0.3}}]\n")
	outside, inside := m.Sides()
	for what, c := range map[string][2]any{
		"steps without limits":     {m.Unlimited(false, 0, 190), []string{"nose", "big collar"}},
		"as far as they go":        {m.Unlimited(false, 0, 129), []string{"nose"}},
		"from where they begin":    {m.Unlimited(false, 1, 190), []string{"big collar"}},
		"before the narrower bore": {m.RunoutMm(inside[0], true), 11.2}, "at the mouth": {m.RunoutMm(inside[0], false), 0.0}, "at its undercut": {grooved.RunoutMm(grooved.Side(true)[1], false), 5.0},
		"at a back shoulder": {m.Undercut(outside[0]), geom.Span{FromMm: 77, ToMm: 80}}, "at a front one": {m.Undercut(outside[2]), geom.Span{FromMm: 130, ToMm: 134}},
		"seen from the front": {m.Groups[0].SeenFront([]plan.XY{{XMm: 16, YMm: 3}}), []plan.XY{{XMm: -16, YMm: 3}}},
		"stock":               {m.StockText(), "tube Ø70 × 30 wall, 210 long, saw cut"},
	} {
		if got, want := fmt.Sprint(c[0]), fmt.Sprint(c[1]); got != want {
			t.Errorf("%s: %s, want %s", what, got, want)
		}
	}
}

// TestUndercutHasRoom: an undercut is narrower than its step: DIN 509 0.6 × 0.3 is 2.5 wide.
func TestUndercutHasRoom(t *testing.T) {
	t.Parallel()
	for long, faults := range map[string]int{"2.6": 0, "2.5": 1, "2.4": 1} {
		job := load(t, "mm", "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 70 mm, length: 210 mm, cut: saw}\nprofile:\n  outside:\n    - {name: nose, diameter: 38, length: "+long+", undercut: DIN 509-E 0.6x0.3}\n    - {name: collar, diameter: 60, length: 50}\n")
		if m := Work(job, job.Parts[0]); len(m.Errs) != faults {
			t.Errorf("a step of %s: %v", long, m.Errs)
		}
	}
}

// TestOpeningInBranch: an opening lies inside the bore of a branch whose axis comes out
// at clock 30°, 100 from an end of a main of 400 and Ø200, if each of its corners does:
// 10° round is 200·π·10/360 = 17.4533, and a window of 20 × 12 with corners of 2 has the
// centres of its corners 8 and 4 from its middle; 0.2 beyond is within what the hand cuts.
func TestOpeningInBranch(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name                 string
		from                 parts.Face
		clock, axial         float64
		around, along, round float64
		reach                float64 // the farthest point from the axis of the branch
	}{
		{"in the middle", parts.Front, 30, 100, 20, 12, 2, math.Hypot(8, 4) + 2},
		{"over TOP", parts.Front, -330, 100, 20, 12, 2, math.Hypot(8, 4) + 2},
		{"turned", parts.Front, 40, 100, 20, 12, 2, math.Hypot(8+17.4533, 4) + 2},
		{"turned back", parts.Front, 20, 100, 20, 12, 2, math.Hypot(8+17.4533, 4) + 2},
		{"along", parts.Front, 30, 107, 20, 12, 2, math.Hypot(8, 4+7) + 2},
		{"along, back", parts.Front, 30, 93, 20, 12, 2, math.Hypot(8, 4+7) + 2},
		{"from the back", parts.Back, 30, 303, 20, 12, 2, math.Hypot(8, 4+3) + 2},
		{"a hole", parts.Front, 30, 105, 10, 10, 5, 5 + 5},
	} {
		row := plan.RadialRow{ClockDeg: c.clock, AxialMm: c.axial, AroundMm: c.around, AlongMm: c.along, CornerMm: c.round, OutsideMm: 200}
		for _, bore := range []float64{2*(c.reach-handCutMm) - 0.01, 2*(c.reach-handCutMm) + 0.01} {
			h := branchHole{saddle: &saddle{origin: &origin{from: c.from, lengthMm: 400, axialMm: 100, clockDeg: 30}, boreMm: bore}}
			if got := h.holds(row); got != (bore > 2*(c.reach-handCutMm)) {
				t.Errorf("%s in Ø%.3f: %v", c.name, bore, got)
			}
		}
	}
}

// TestSlotsNearFolds: a slot on a flange keeps from its fold by its nearest end, whichever
// side the flange is on: 20 up, 10 wide and 30 long over all, its side reaches 5 and its
// end 15 towards the fold. R2 and 2 mm end the bend (2 + 2)·tan 45° = 4 up; at least twice
// the sheet has to be left (common practice).
func TestSlotsNearFolds(t *testing.T) {
	t.Parallel()
	for _, side := range []string{"top", "right", "bottom", "left"} {
		for turn, near := range map[int]bool{0: true, 90: false} {
			m := work(t, "mm", fmt.Sprintf("part: tray\nkind: folded\nmaterial: S235\nstock: {sheet: 2, cut: laser}\noutline: {rectangle: [200, 200]}\nbends:\n  radius: 2\n  flanges: [{side: %s, height: 60}]\nslots: [{name: s, on: %s, at: [[0, 20]], width: 10, length: 30, turn: %d}]\n", side, side, turn))
			found := false
			for _, p := range m.Out.Problems {
				found = found || p.Kind == plan.NearBend
			}
			if found != near {
				t.Errorf("%s, turned %d°: %v", side, turn, m.Out.Problems)
			}
		}
	}
}

// TestNeutralLine: DIN 6935's k at R2 in 2 mm is 0.325 of the thickness from the inside,
// at R4 (0.65 + lg 2 / 2) / 2 = 0.4; said once where all folds have one radius.
func TestNeutralLine(t *testing.T) {
	t.Parallel()
	for more, want := range map[string]string{"": "k of DIN 6935, 0.325 of the thickness at R2", ", radius: 4": "k of DIN 6935, 0.325 of the thickness at R2, 0.4 of the thickness at R4"} {
		m := work(t, "mm", "part: tray\nkind: folded\nmaterial: S235\nstock: {sheet: 2, cut: laser}\noutline: {rectangle: [200, 200]}\nbends:\n  radius: 2\n  flanges: [{side: top, height: 60}, {side: bottom, height: 60"+more+"}]\n")
		if rules := m.Developments[0].Rules; rules[len(rules)-1] != want {
			t.Errorf("%q, want %q", rules, want)
		}
	}
}

// TestBranchLeans: what stands square leans to no side; the end without a saddle reaches no main.
func TestBranchLeans(t *testing.T) {
	t.Parallel()
	for angle, leans := range map[string]bool{"90": false, "75": true} {
		m := work(t, "mm", branch("angle: "+angle+", place: {clock: 90, axial: 300}"), mainTube)
		if got := strings.Contains(feature(m, "back end saddle").Note, "leaning to its front"); got != leans {
			t.Errorf("at %s°: %s", angle, feature(m, "back end saddle").Note)
		}
		if reach, main, ok := m.ReachMm(parts.Front); reach != 0 || main != 0 || ok {
			t.Errorf("the front reaches %g to a main of %g, %v", reach, main, ok)
		}
	}
}

// TestKeyEnds: a key has a round end for each end of its keyway that stands in the metal:
// two in a step, one where the keyway begins at the face, none where it runs out at both.
func TestKeyEnds(t *testing.T) {
	t.Parallel()
	for key, want := range map[string]string{"axial: 60, length: 40": "round ends", "axial: 40, length: 40": "one end round", "axial: 70, length: 100": "square ends"} {
		m := work(t, "mm", "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 70 mm, length: 210 mm}\nprofile:\n  outside: [{name: nose, diameter: 30, length: 20}, {name: seat, diameter: 50, length: 100}, {name: tail, diameter: 30, length: 40}]\nkeyways: [{name: k, in: seat, "+key+"}]\n")
		if item, _ := m.Keyways[0].Bought(m.W); !strings.Contains(item, ", "+want+", ") {
			t.Errorf("%s: %s, want %s", key, item, want)
		}
	}
}

// TestTabsOfSmallTubes: a tab to glue is 15 wide, on a small round a fifth of its girth:
// Ø20·π/5 = 12.6.
func TestTabsOfSmallTubes(t *testing.T) {
	t.Parallel()
	for od, want := range map[string]float64{"20": 12.6, "80": 15} {
		m := work(t, "mm", strings.Replace(branch("angle: 90, place: {clock: 90, axial: 300}"), "outside: 80", "outside: "+od, 1)+"radial: [{name: vent, clock: 90, axial: 30, size: 4 mm, depth: through}]\n", mainTube)
		girth := math.Pi * (20 + 0.1)
		if od == "80" {
			girth = math.Pi * (80 + 0.1)
		}
		for _, name := range []string{"wrap-outside", "saddle-back"} {
			d := development(t, m, name)
			if got := d.MaxMm.XMm - d.MinMm.XMm - girth; math.Abs(got-want) > 1e-6 {
				t.Errorf("%s of Ø%s: a tab of %g, want %g", d.Name, od, got, want)
			}
		}
	}
}

// TestFullThread: M20 (pitch 2.5, minor diameter 17.294: ISO 724) beside what stands over its
// root is cut in full up to 7.5 from it, three pitches by DIN 76-1; at a free end, beside less, or with an undercut
// nothing is lost.
func TestFullThread(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		before, screw, behind string
		front, back           float64
	}{
		{"{name: a, diameter: 40, length: 20}, ", "", "", 7.5, 0}, {"", "", ", {name: b, diameter: 40, length: 20}", 0, 7.5}, {"{name: a, diameter: 17.2, length: 20}, ", "", ", {name: b, diameter: 17.4, length: 20}", 0, 7.5},
		{"{name: a, diameter: 18, length: 20}, ", "", ", {name: b, diameter: 17.2, length: 20}", 7.5, 0}, {"", ", undercut: DIN 76-A", ", {name: b, diameter: 40, length: 20}", 0, 0},
	} {
		m := work(t, "mm", "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm}\nprofile:\n  outside: ["+c.before+"{name: screw, thread: M20, length: 40"+c.screw+"}"+c.behind+"]\n")
		st := m.StepNamed("screw")
		if front, back := m.FullThreadMm(st, false), m.FullThreadMm(st, true); front != c.front || back != c.back {
			t.Errorf("%+v: %g and %g", c, front, back)
		}
	}
}

// TestSmallRules: rules of parts that are one line each, at their bounds, by hand: common
// practice, no source.
func TestSmallRules(t *testing.T) {
	t.Parallel()
	at := func(c ...float64) (out []plan.XY) {
		for i := 0; i < len(c); i += 2 {
			out = append(out, plan.XY{XMm: c[i], YMm: c[i+1]})
		}
		return out
	}
	apart := func(shape geom.Pattern, pts []plan.XY) (out []string) { // holes of 10, the first of them hole 4
		for _, c := range chords(shape, pts, 4, 10) {
			out = append(out, fmt.Sprintf("%d %d %s %g %g %g", c.From, c.To, c.Kind, c.CentreMm, c.OverMm, c.BetweenMm))
		}
		return out
	}
	thread := func(name string) Made {
		u, err := threads.Parse(name)
		if err != nil {
			t.Fatal(err)
		}
		return Made{Thread: &u}
	}
	deep := func(name string, mm ...float64) (out []float64) {
		s := &Sizes{W: words.Writer{Units: parts.Millimetres}}
		for _, v := range mm {
			out = append(out, s.threadMm(thread(name), v))
		}
		return out
	}
	stepped := work(t, "mm", "part: t\nkind: turned\nmaterial: S355\nstock: {round: 110 mm}\nprofile:\n  outside: [{name: a, diameter: 60, length: 20}, {name: b, diameter: 100, length: 30}, {name: c, diameter: 80, length: 25}]\n  inside: [{name: d, diameter: 30, length: 60}]\n")
	through := func(radiusMm float64) [2]float64 { // metal, and the way of the drill
		metal, travel := (usual{}).throughMm(stepped.Sizes, &Group{Points: []plan.XY{{XMm: radiusMm}}})
		return [2]float64{metal, travel}
	}
	wraps := func(long string, axial ...float64) (out []string) { // how wide its strips are
		text := "part: t\nkind: tube\nmaterial: S235\nstock: {tube: 60 mm, wall: 4 mm}\ntube: {outside: 60, wall: 4, length: " + long + "}\nradial:\n"
		for i, z := range axial {
			text += fmt.Sprintf("  - {name: h%d, clock: [0, 90], axial: %g, size: 6}\n", i, z)
		}
		for _, d := range work(t, "mm", text).Developments {
			if d.Kind == plan.WrapPattern {
				out = append(out, fmt.Sprintf("%s %.4g", d.Name, d.MaxMm.YMm-d.MinMm.YMm))
			}
		}
		return out
	}
	const (
		flat = "part: a\nkind: bar\nmaterial: S235\nbar: {flat: [60, 10], length: 300}\nholes: [{name: h, along: {from: left, first: %g}, size: %s}]\n"
		tray = "part: tray\nkind: folded\nmaterial: S235\nstock: {sheet: 2, cut: laser}\noutline: {rectangle: [200, 200]}\nbends:\n  radius: 2\n  flanges: [{side: top, height: 60}]\nholes: [{name: h, on: top, at: [[0, %g]], size: %s}]\n"
	)
	near := func(text string, at float64, size string) string {
		var out []string
		for _, p := range work(t, "mm", fmt.Sprintf(text, at, size)).Out.Problems {
			out = append(out, string(p.Kind))
		}
		return strings.Join(out, " ")
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"left for after a weld", fmt.Sprintf("%g %g", WeldLeaveMm(&parts.Job{}), WeldLeaveMm(&parts.Job{Units: parts.Inches})), "2 1.5875"}, // 1/16 in
		{"passes of half a width", []string{passes(5, 10), passes(5.1, 10), passes(10, 10), passes(10.1, 10)}, []string{"", " in 2 passes", " in 2 passes", " in 3 passes"}},
		{"the seat of a centre in M8", seatMm(&Group{Hole: &parts.HoleGroup{}, Size: thread("M8")}), 10.0},
		{"a thread as deep as a tap reaches, four diameters", deep("M10", 10, 40, 40.1), []float64{10, 40, 15}}, {"of M5, 7.5 to a whole one", deep("M5", 20, 20.1), []float64{20, 8}},
		{"two holes", apart(geom.Along{}, at(0, 0, 30, 40)), []string{"4 5 neighbours 50 60 40"}},
		{"in a ring of four", apart(geom.Ring{}, at(0, 20, 20, 0, 0, -20, -20, 0)), []string{"4 5 neighbours 28.284271247 38.284271247 18.284271247", "4 6 across 40 50 30"}},
		{"in one of three", apart(geom.Ring{}, at(0, 0, 30, 0, 0, 40)), []string{"4 5 neighbours 30 40 20"}},
		{"three in an angle", apart(geom.Along{}, at(30, 0, 0, 0, 0, 40)), []string{"4 5 neighbours 30 40 20", "5 6 neighbours 40 50 30", "4 6 across 50 60 40"}},
		{"24 neighbours of a row of 27, and its ends", func() string {
			var row []float64
			for i := range 27 {
				row = append(row, float64(20*i), 0)
			}
			list := apart(geom.Along{}, at(row...))
			return fmt.Sprint(len(list), " ", list[23], ", ", list[24])
		}(), "25 27 28 neighbours 20 30 10, 4 30 across 520 530 510"},
		{"the farthest beside one another", apart(geom.Along{}, at(50, 0, 0, 0, 100, 0, 60, 0)), []string{"4 5 neighbours 50 60 40", "5 6 neighbours 100 110 90", "6 7 neighbours 40 50 30"}},
		// A plain hole's centre 0.75 of it from an end, a bolt's 1.2 (EN 1993-1-8:2005 Table 3.3), a thread's one.
		{"holes near the end of a bar", []string{near(flat, 15, "20"), near(flat, 14.9, "20"), near(flat, 9.9, "20"), near(flat, 13.2, "M10 clearance"), near(flat, 13.1, "M10 clearance"), near(flat, 10, "M10 tap"), near(flat, 9.9, "M10 tap")}, []string{"", "bar-hole-near", "bar-hole-out", "", "bar-hole-near", "", "bar-hole-near"}},
		// R2 and 2 mm end the bend 4 up; two thicknesses and half of the hole keep off it.
		{"holes near a fold", []string{near(tray, 11, "6"), near(tray, 10.9, "6")}, []string{"", "near-bend"}},
		{"seals in a job of inches", []float64{SealOf("seal 1x2x2.9", parts.Inches).WidthMm, SealOf("seal 40x52x3", parts.Inches).WidthMm, SealOf("seal 40x52x2.9", parts.Millimetres).WidthMm}, []float64{73.66, 3, 2.9}},
		{"left for grinding", hardened{}.clause(words.Writer{Units: parts.Millimetres}), "; leave 0.3 mm on the diameter for grinding (common practice, no source)"},
		{"metal along a line", [][2]float64{through(10), through(20), through(35), through(45), through(51)}, [][2]float64{{15, 15}, {75, 75}, {55, 55}, {30, 30}, {0, 0}}},
		{"a strip of 40 at the least, 15 beyond a hole of 6, in steps of 5", [][]string{wraps("100", 10), wraps("100", 22), wraps("100", 34)}, [][]string{{"wrap-outside 40"}, {"wrap-outside 40"}, {"wrap-outside 55"}}},
		{"one strip to 250, two beyond", [][]string{wraps("250", 30, 210), wraps("251", 30, 211)}, [][]string{{"wrap-outside 230"}, {"wrap-outside-front 50", "wrap-outside-back 60"}}},
	} {
		if got, want := fmt.Sprint(c.got), fmt.Sprint(c.want); got != want {
			t.Errorf("%s: %s, want %s", c.what, got, want)
		}
	}
}

// TestRuleBounds: rules of common practice that a number decides, at both sides of it, by hand.
func TestRuleBounds(t *testing.T) {
	t.Parallel()
	says := func(text, what string) bool { return strings.Contains(told(work(t, "mm", text)), what) }
	round := func(steps, more string) string {
		return "part: t\nkind: turned\nmaterial: S355\nstock: {round: 110 mm}\nprofile:\n  outside: [" + steps + "]\n  inside: [{name: d, diameter: 30, length: LONG}]\n" + more
	}
	beside := func(axial float64) bool { // a hole in a Ø60 of 50, beside a Ø100
		text := round("{name: a, diameter: 60, length: 50}, {name: b, diameter: 100, length: 50}", fmt.Sprintf("radial: [{name: h, clock: 0, axial: %g, size: 6, depth: through}]\n", axial))
		return says(strings.Replace(text, "LONG", "100", 1), "B stands 20 mm higher beside it: the tool 35 or more out")
	}
	packed := func(boss string) bool { // holes in a flange of 20 before a boss
		text := round("{name: f, diameter: 100, length: 20}, {name: a, diameter: 60, length: "+boss+"}", "holes: [{name: h, at: [[40, 0], [-40, 0]], size: 8}]\n")
		return says(strings.Replace(text, "LONG", map[string]string{"2": "22", "1.9": "21.9"}[boss], 1), "packing "+boss+" mm higher beside each hole")
	}
	recess := func(waist string) bool {
		return says(strings.Replace(round("{name: a, diameter: 80, length: 20}, {name: w, diameter: "+waist+", length: 30}, {name: b, diameter: 90, length: 20}", ""), "LONG", "70", 1), "A recess tool, right- and left-hand, standing out 15")
	}
	corners := func(n int) bool { // of a plate of 400 x 50, one edge in steps of 1
		points := "[0, 0], [400, 0]"
		for i := range n - 2 {
			points += fmt.Sprintf(", [%d, %d]", 390-10*i, 50+i%2)
		}
		return says("part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {polygon: {points: ["+points+"]}}\n", "corners from the left and the bottom edge")
	}
	pitched := func(n int) bool {
		m := work(t, "mm", fmt.Sprintf("part: p\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 600}\nholes:\n  - {name: row, along: {from: left, first: 40, pitch: 20, count: %d}, size: 9}\n", n))
		return strings.Contains(fmt.Sprint(m.Out.Bar.Measures), "hole to hole")
	}
	left := func(radius string) bool { // by a die of 12, which leaves 0.16 of its opening, R1.92
		m := work(t, "mm", "part: tray\nkind: folded\nmaterial: S235\nstock: {sheet: 2, cut: laser}\noutline: {rectangle: [200, 200]}\nbends:\n  radius: "+radius+"\n  flanges: [{side: top, height: 60}]\n")
		for _, p := range m.Out.Problems {
			if p.Kind == plan.BendRadius {
				return false
			}
		}
		return true
	}
	kerf := func(mm float64) bool {
		job := load(t, "mm", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: plasma}\noutline: {rectangle: [200, 120]}\n")
		_, err := CutProfile(job, "p", CutOptions{KerfMm: mm})
		return err == nil
	}
	taped := func(class string, mm float64) string {
		job := &parts.Job{}
		job.Tolerance.Value = class
		got := (&Sizes{Job: job}).taped(mm)
		return fmt.Sprintf("%g %g", got.MinMm, got.MaxMm)
	}
	ring := work(t, "mm", strings.Replace(round("{name: a, diameter: 100, length: 60}", ""), "LONG", "60", 1))
	weak := func(grip, out float64) bool {
		return (&bench{Numbered: ring.Numbered}).chuckSupport(setting{}, held{gripMm: grip, outMm: out}) != ""
	}
	cope := func(u parts.Units, mm float64) float64 {
		return (&bar{in: &parts.Bar{Length: parts.Length{Mm: mm}}}).templateFromMm(words.Writer{Units: u}, bars.Cope{DepthMm: 10})
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"a holder passes a shoulder 20 off the tool's axis", []bool{beside(29.9), beside(30), beside(30.1), beside(44)}, []bool{false, false, true, true}},
		{"a flange is packed up over 2 of air", []bool{packed("2"), packed("1.9")}, []bool{true, false}},
		{"a usual tool reaches between shoulders under 10", []bool{recess("60"), recess("60.1")}, []bool{true, false}},
		{"twelve corners are told one by one", []bool{corners(12), corners(13)}, []bool{true, false}},
		{"four holes are measured one by one", []bool{pitched(4), pitched(5)}, []bool{false, true}},
		{"a radius as a die leaves it, within three tenths", []bool{left("1.48"), left("2.74"), left("2.75")}, []bool{true, true, false}},
		{"a kerf of 10 at the most", []bool{kerf(0), kerf(10), kerf(10.1), kerf(-0.1)}, []bool{true, true, false, false}},
		// ISO 2768-1: 100 in class m ±0.3; over 2000 in m ±2; 300 in c ±1.2.
		{"a tape reads within 1", []string{taped("m", 100), taped("m", 2500), taped("c", 300)}, []string{"99 101", "2498 2502", "298.8 301.2"}},
		{"jaws hold a fifth of what sticks out", []bool{weak(20, 100), weak(19.9, 100), weak(60, 250), weak(60, 251)}, []bool{false, true, false, true}},
		{"jaws hold 0.15 diameters, or all of it", []bool{weak(15, 40), weak(14.9, 40), weak(12, 12), weak(11.9, 12)}, []bool{false, true, false, true}},
		{"paper 30 beyond a cope, from a whole millimetre or eighth", []float64{cope(parts.Millimetres, 200.7), cope(parts.Inches, 200.7), cope(parts.Millimetres, 39)}, []float64{160, 158.75, 0}},
	} {
		if got, want := fmt.Sprint(c.got), fmt.Sprint(c.want); got != want {
			t.Errorf("%s: %s, want %s", c.what, got, want)
		}
	}
	// A straight cone's blank over 420 is set out by trammel, one up to that is printed.
	for large := 200.0; large < 320; large += 4 {
		m := work(t, "mm", fmt.Sprintf("part: p\nkind: cone\nmaterial: S235\nstock: {sheet: 2 mm, cut: none}\ncone: {large: %g, small: 150, height: 200, thickness: 2, offset: 0, measured: outside, seam: 180, overlap: 15}\n", large))
		d := m.Developments[0]
		if side := max(d.MaxMm.XMm-d.MinMm.XMm, d.MaxMm.YMm-d.MinMm.YMm); (d.NoTemplate != "") != (side > 420) {
			t.Errorf("a blank of %.1f: %q", side, d.NoTemplate)
		}
	}
}

// TestHolesMeasured: distances from edges, depths and chords of holes as they are measured, by hand. ISO 2768-1 m: up to
// 30 ±0.2, up to 120 ±0.3, up to 400 ±0.5; cut by flame or plasma, ISO 9013 class 2 over 10 mm thick, under 125 ±1.8 and
// under 315 ±1.9; printed rounded inward. A pin is as large as the drill; of two in a row both radii may be off, one each way.
func TestHolesMeasured(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {rectangle: [200, 120]}\n"
		disc  = "part: d\nkind: flange\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {circle: 200}\n"
	)
	for _, c := range []struct{ text, want string }{
		// √(120² + 60²) = 134.164.
		{strings.Replace(plate, "saw", "flame", 1) + "holes: [{name: h, at: [[60, 30], [-60, -30]], size: 10}]\n",
			"h: 2 × Ø10 = 9.8 – 10.2; h 1, left and bottom edge to pin: 155, 85 = 153.1 – 156.9, 83.2 – 86.8; h 1–2: 144.16 over pins Ø10 = 143.7 – 144.6"},
		{plate + "holes: [{name: h, face: back, at: [[-60, -30], [60, 30]], size: 10, depth: 12}]\n",
			"h: 2 × Ø10, 12 deep = 9.8 – 10.2 × 11.8 – 12.2; h 1, left and bottom edge to pin: 35, 25 = 34.7 – 35.3, 24.8 – 25.2; h 1–2: 144.16 over pins Ø10 = 143.7 – 144.6"},
		// Up to 3 ±0.1.
		{plate + "holes: [{name: h, at: [[-60, -30]], size: 10, depth: 0.9}]\n", "h: Ø10, 0.9 deep = 9.8 – 10.2 × 0.8 – 1.0; h 1, left and bottom edge to pin: 35, 25 = 34.7 – 35.3, 24.8 – 25.2"},
		// √(40² + 60²) = 72.111; the second pair from the first, too.
		{plate + "holes: [{name: hg, at: [[-60, -30], [60, 30]], size: 10}, {name: h, at: [[-20, -30], [20, 30]], size: 10}]\n",
			"hg: 2 × Ø10 = 9.8 – 10.2; hg 1, left and bottom edge to pin: 35, 25 = 34.7 – 35.3, 24.8 – 25.2; hg 1–2: 144.16 over pins Ø10 = 143.7 – 144.6; " +
				"h: 2 × Ø10 = 9.8 – 10.2; h 3, left and bottom edge to pin: 75, 25 = 74.7 – 75.3, 24.8 – 25.2; h 1–3: 50 over pins Ø10 = 49.7 – 50.3; h 3–4: 82.11 over pins Ø10 = 81.82 – 82.41"},
		// The tapping drill of M10 is 8.5.
		{plate + "holes: [{name: h, at: [[-60, -30], [60, 30]], size: M10 tap, depth: 15}]\n",
			"h: 2 × M10 = runs freely 15 deep, square; h 1, left and bottom edge to pin: 35.75, 25.75 = 35.45 – 36.05, 25.55 – 25.95; h 1–2: 142.66 over pins Ø8.5 = 142.2 – 143.1"},
		// Chords 120·sin 45° = 84.853, 120·sin 36° = 70.534, 120·sin 72° = 114.127, 120·sin 60° = 103.923.
		{disc + "holes: [{name: h, circle: {pcd: 120, count: 4}, size: 10}]\n",
			"h: 4 × Ø10 = 9.8 – 10.2; h outside to pin, at 1 and 3:  = alike within 0.6; h 1–2: 94.85 over pins Ø10 = 94.56 – 95.15; h 1–3: 130 over pins Ø10 = 129.7 – 130.3"},
		{disc + "bore: {diameter: 60}\nholes: [{name: h, circle: {pcd: 120, count: 5}, size: 10}]\n",
			"h: 5 × Ø10 = 9.8 – 10.2; h bore to pin, at 1 and 3:  = alike within 0.6; h 1–2: 80.53 over pins Ø10 = 80.24 – 80.83; h 1–3: 124.13 over pins Ø10 = 123.83 – 124.42"},
		{strings.Replace(disc, "saw", "plasma", 1) + "holes: [{name: h, circle: {pcd: 120, count: 3}, size: 10}]\n",
			"h: 3 × Ø10 = 9.8 – 10.2; h outside to pin, at 1 and 2:  = alike within 3.8; h 1–2: 113.92 over pins Ø10 = 113.63 – 114.22"},
	} {
		var got []string
		for _, k := range work(t, "mm", c.text).Out.Checks {
			if strings.HasPrefix(k.What, "h") {
				got = append(got, words3(k.What, k.Wanted, k.Limits))
			}
		}
		if s := strings.Join(got, "; "); s != c.want {
			t.Errorf("%s\ngot  %s\nwant %s", c.text, s, c.want)
		}
	}
}

// TestRefused: what cannot be made of a part is told at its line, with what would do.
func TestRefused(t *testing.T) {
	t.Parallel()
	const (
		post   = "part: post\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: LONG, left: LEFT}\n"
		turned = "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 70 mm, length: 210 mm, cut: saw}\nprofile:\n  outside:\n    - {name: nose, diameter: 38, length: 80MORE}\n    - {name: collar, diameter: 60, length: 50}\n"
	)
	bar := func(long, left string) string { return strings.NewReplacer("LONG", long, "LEFT", left).Replace(post) }
	clamped := func(was, is string) string { return strings.Replace(splitRing, was, is, 1) }
	shaft := func(more, rest string) string { return strings.Replace(turned, "MORE", more, 1) + rest }
	for _, c := range []struct{ name, units, text, what, right string }{
		{"no such round", "mm", bar("500", "{onto: drum.outside}"), "no round drum.outside", "onto: {diameter: 114.3}"},
		{"a cope on less than its width", "mm", bar("500", "{onto: {diameter: 49}}"), "the end cannot be coped: its", ""}, {"a cope on its width", "mm", bar("500", "{onto: {diameter: 50}}"), "", ""},
		{"a cope as deep as the bar", "mm", bar("25", "{onto: {diameter: 50}}"), "the cope is deeper than the bar is long", "a longer bar"}, {"less deep", "mm", bar("25.1", "{onto: {diameter: 50}}"), "", ""},
		{"a wide cut", "mm", clamped("slot: 2", "slot: 14"), "a cut of 14 leaves the screw M5 no metal", "a cut as narrow as the saw"}, {"a thick screw", "mm", clamped("M5 8.8", "M12 8.8"), "a screw M12 has no room in the wall of 10", "a smaller screw"},
		{"an unknown screw", "mm", clamped("M5 8.8", "M5.5 8.8"), "the screw M5.5 is not known", ""}, {"an unknown class", "mm", clamped("M5 8.8", "M5 7.7"), "the screw M5 7.7 cannot be worked out", ""},
		{"no such disc", "mm", shaft("", "keyways: [{name: k, in: nose, axial: 40, key: woodruff 5x7}]\n"), "no Woodruff key is 5x7", "centrepop key"},
		{"no such key", "mm", shaft("", "keyways: [{name: k, in: nose, length: 30, key: 10x7}]\n"), "no standard key is 10 × 7", "another key, or give depth and fit"},
		{"limits that are not its own", "mm", shaft("", "keyways: [{name: k, in: nose, length: 30, fit: {limits: [8.9, 10]}}]\n"), "the limits are far from the key's width of 10", "two sizes"}, {"or too wide", "mm", shaft("", "keyways: [{name: k, in: nose, length: 30, fit: {limits: [10, 11.1]}}]\n"), "the limits are far", ""}, {"a tenth off", "mm", shaft("", "keyways: [{name: k, in: nose, length: 30, fit: {limits: [9, 11]}}]\n"), "", ""},
		{"no such key in a bore that waits for a weld", "mm", "part: h\nkind: turned\nmaterial: S235\nstock: {round: 65}\nprofile:\n  outside: [{name: body, diameter: 60, length: 40}]\n  inside: [{name: bore, diameter: 30, fit: H7, length: 40, after-weld: yes}]\nkeyways: [{name: k, in: bore, key: 10x7}]\n", "no standard key is 10 × 7", ""},
		{"no such thread", "mm", strings.Replace(shaft("", ""), "diameter: 38", "thread: M38.5", 1), "thread M38.5 is not known", ""}, {"a class of the other side", "in", strings.Replace(shaft("", ""), "diameter: 38", "thread: 1/2-13 UNC-2B", 1), "that of the other side", "A for what is turned outside"},
	} {
		job := load(t, c.units, c.text)
		var got []string
		for _, e := range Work(job, job.Parts[0]).Errs {
			if got = append(got, e.What+"; "+e.Right); e.Pos.Line == 0 {
				t.Errorf("%s: no line", c.name)
			}
		}
		if view, err := FaceView(job, job.Parts[0].Name.Value, parts.Front); strings.Contains(c.what, "thread") && (err == nil || view != nil) {
			t.Errorf("%s: %v, %v", c.name, view, err)
		}
		if text := strings.Join(got, "\n"); (c.what == "") != (text == "") || !strings.Contains(text, c.what) || !strings.Contains(text, c.right) {
			t.Errorf("%s: %q, want %q, %q", c.name, text, c.what, c.right)
		}
	}
}

// TestSeatMm: a centre bears on a thread's mouth at 1.25 of its diameter, unless it is sunk already.
func TestSeatMm(t *testing.T) {
	t.Parallel()
	m12 := &threads.Thread{MajorMm: 12}
	for _, c := range []struct {
		thread      *threads.Thread
		bored, cone bool
		mm          float64
	}{{m12, false, false, 15}, {m12, true, false, 0}, {m12, false, true, 0}, {nil, false, false, 0}} {
		g := Group{Hole: &parts.HoleGroup{}, Size: Made{Thread: c.thread}}
		if c.bored {
			g.Hole.Counterbore = &parts.Counterbore{}
		}
		if c.cone {
			g.Hole.Countersink = &parts.Countersink{}
		}
		if got := seatMm(&g); got != c.mm {
			t.Errorf("%+v: %g", c, got)
		}
	}
}

// TestGauge: calipers read to a twentieth: what has less than a tenth between its limits, or is made to
// another part, is held to a micrometer, in a bore to a bore gauge.
func TestGauge(t *testing.T) {
	t.Parallel()
	between := func(mm float64) Sized { return Sized{Limited: true, MinMm: 0, MaxMm: mm} }
	off := func(mm float64) Sized {
		return Sized{Class: measuredClass, OffMm: plan.Range{Max: mm}}
	}
	for _, c := range []struct {
		name       string
		size       Sized
		outs, into string
	}{
		{"no limits", Sized{}, "calipers", "calipers"}, {"a tenth", between(0.1), "calipers", "calipers"}, {"less", between(0.099), "micrometer", "bore gauge"},
		{"a tenth less than another", off(0.1), "calipers", "calipers"}, {"closer", off(0.099), "micrometer", "bore gauge"},
		{"pressed", Sized{Press: parts.Ref{Part: "p"}}, "micrometer", "bore gauge"}, {"a thread", Sized{Thread: &threads.Thread{}}, "thread gauge or counterpart", "thread gauge or counterpart"},
	} {
		if outs, into := gauge(&Step{Size: c.size}), gauge(&Step{Size: c.size, Inside: true}); outs != c.outs || into != c.into {
			t.Errorf("%s: %s, in a bore %s", c.name, outs, into)
		}
	}
}

// TestLongGauges: calipers measure up to 300 mm, or 12 in; over that a rule where the limits lie 1 mm, or 1/32 in, apart,
// else calipers that are longer. Another gauge stays.
func TestLongGauges(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		units        parts.Units
		gauge        string
		least, above float64
		want         string
	}{
		{parts.Millimetres, "calipers", 300, 302, "calipers"}, {parts.Millimetres, "calipers", 300.1, 301.1, "rule"},
		{parts.Millimetres, "calipers", 300.1, 301, "long calipers or trammel"}, {parts.Millimetres, "tape", 300.1, 302, "tape"},
		{parts.Inches, "calipers", 304.79, 306, "calipers"}, {parts.Inches, "calipers", 305, 305.8, "rule"}, {parts.Inches, "calipers", 305, 305.79, "long calipers or trammel"},
	} {
		r := &record{Numbered: &Numbered{Shape: &Shape{Sizes: &Sizes{W: words.Writer{Units: c.units}}}}}
		if r.add(plan.Check{Gauge: c.gauge, MinMm: c.least, MaxMm: c.above}); r.list[0].Gauge != c.want {
			t.Errorf("%v: %s", c, r.list[0].Gauge)
		}
	}
}

// TestLandMm: beside a groove in a face, 42 to 50.2 at its limits, stands what is left to the rounds that end
// there, at theirs; beside one in a step, what is left of that.
func TestLandMm(t *testing.T) {
	t.Parallel()
	round := func(from, to, lo, d, hi float64) Step {
		return Step{FromMm: from, ToMm: to, Size: Sized{NominalMm: d, MinMm: lo, MaxMm: hi}}
	}
	bench := func(steps ...Step) *bench {
		return &bench{Numbered: &Numbered{Shape: &Shape{Sizes: &Sizes{Steps: steps}}}}
	}
	groove := func(face parts.Face, from, to float64) *Groove {
		g := &Groove{In: &parts.Groove{}, wall: Sized{MinMm: 50, MaxMm: 50.2}, width: Sized{MaxMm: 4}}
		g.Row.Face, g.Row.FromMm, g.Row.ToMm = face, from, to
		return g
	}
	for _, c := range []struct {
		name  string
		g     *Groove
		steps []Step
		mm    float64
	}{
		{"to a rim that may be less", groove(parts.Front, 0, 3), []Step{round(0, 40, 59.8, 60, 60)}, 4.8}, {"that may be more", groove(parts.Front, 0, 3), []Step{round(0, 40, 60, 60, 60.2)}, 4.9},
		{"to a bore that may be more", groove(parts.Front, 0, 3), []Step{round(0, 40, 60, 60, 60), round(0, 40, 36, 36, 36.2)}, 2.9}, {"that may be less", groove(parts.Front, 0, 3), []Step{round(0, 40, 35.8, 36, 36)}, 3},
		{"that ends at another face", groove(parts.Front, 0, 3), []Step{round(0, 40, 60, 60, 60), round(1, 40, 36, 36, 36)}, 4.9},
		{"in the back", groove(parts.Back, 37, 40), []Step{round(0, 40, 60, 60, 60), round(0, 37, 36, 36, 36)}, 4.9},
		{"in a shoulder", groove(parts.Front, 10, 13), []Step{round(0, 10, 40, 40, 40), round(10, 40, 60, 60, 60)}, 1},
	} {
		if got := bench(c.steps...).landMm(c.g); math.Abs(got-c.mm) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.name, got, c.mm)
		}
	}
	g := groove("", 14, 17)
	for to, want := range map[float64]float64{19: 2, 40: 4} {
		s := round(10, to, 60, 60, 60)
		if g.step = &s; bench(s).landMm(g) != want {
			t.Errorf("in a step to %g: %g", to, bench(s).landMm(g))
		}
	}
	for to, want := range map[float64]bool{17: false, 17.1: true, 17.99: true, 18: false} { // two edges broken by half a millimetre
		s, b := round(10, to, 60, 60, 60), bench()
		g.step, b.Grooves = &s, []Groove{*g}
		b.Grooves[0].step = &s
		if got := b.narrowLands(); (len(got) == 1) != want {
			t.Errorf("a land to %g: %q", to, got)
		}
	}
}

// TestOffCentre: a slot of R10 from 20, 4 to 30, 12 takes 314.16 + 20 · √164 = 570.28 of 100 × 100, its
// middle √689 off the axis: 570.28 · 26.249 / 9429.72 = 1.587.
func TestOffCentre(t *testing.T) {
	t.Parallel()
	b := &bench{Numbered: work(t, "mm", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [90, 90]}\n").Numbered}
	b.cut.outline = geom.Polygon([]plan.XY{{XMm: -50, YMm: -50}, {XMm: 50, YMm: -50}, {XMm: 50, YMm: 50}, {XMm: -50, YMm: 50}})
	b.cut.openings = []opening{{a: plan.XY{XMm: 20, YMm: 4}, b: plan.XY{XMm: 30, YMm: 12}, radius: 10}}
	if got := b.offCentreMm(); math.Abs(got-1.5875) > 1e-3 {
		t.Error(got)
	}
}

// TestAim: what limits alone say is worked to their middle, as it is printed; a class has its size. Cutters
// for keyways in inches go by sixteenths from an eighth to an inch.
func TestAim(t *testing.T) {
	t.Parallel()
	w := words.Writer{Units: parts.Millimetres}
	for _, c := range []struct {
		size Sized
		want string
	}{{Sized{NominalMm: 40, MinMm: 40.1, MaxMm: 40.3, Limited: true}, w.Aim(40, 40.1, 40.3)}, {Sized{NominalMm: 40, MinMm: 40.1, MaxMm: 40.3, Limited: true, Class: "x"}, "40"}, {Sized{NominalMm: 40, MinMm: 40.1, MaxMm: 40.3}, "40"}} {
		if got := c.size.aim(w); got != c.want {
			t.Errorf("%+v: %s, want %s", c.size, got, c.want)
		}
	}
	mm, in := cutterWidths(parts.Millimetres), cutterWidths(parts.Inches)
	if len(in) != 15 || in[0] != 25.4/8 || math.Abs(in[1]-25.4*3/16) > 1e-9 || in[14] != 25.4 || fmt.Sprint(mm) != "[3 4 5 6 8 10 12 14 16 18 20 22 25 28 32 36 40]" {
		t.Errorf("%v, %v", mm, in)
	}
}

// TestWrapStrip: a slot along is marked as far as it lies on its step, of 50 to 150, if more of that is
// straight than round; the paper goes 15 beyond, to whole fives, and is 40 wide at least.
func TestWrapStrip(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		edge                         parts.Face
		at, around, along            float64
		axial, length, width, wideMm float64
	}{
		{parts.Front, 75, 8, 20, 25, 20, 8, 50}, {parts.Back, 75, 8, 20, 75, 20, 8, 100}, {parts.Front, 52, 8, 20, 6, 12, 8, 40}, {parts.Front, 148, 8, 20, 94, 12, 8, 100}, {parts.Back, 148, 8, 20, 6, 12, 8, 40},
		{parts.Front, 48.1, 8, 20, 4.05, 8.1, 8, 40}, {parts.Front, 48, 8, 20, -2, 20, 8, 40}, // 8 of it on the step: no straight
		{parts.Front, 80, 20, 8, 30, 20, 8, 50}, {parts.Front, 52, 20, 8, 2, 20, 8, 40}, // round it
	} {
		w := wrapped{Step: &Step{FromMm: 50, ToMm: 150, Size: Sized{NominalMm: 60}}, edge: c.edge, rows: []plan.RadialRow{{N: 1, AxialMm: c.at, AroundMm: c.around, AlongMm: c.along, Shape: "slot"}}}
		got := w.cylinder(0.1)
		f := got.Features[0]
		if f.AxialMm != c.axial || f.LengthMm != c.length || f.WidthMm != c.width || got.WidthMm != c.wideMm {
			t.Errorf("%+v: %g, %g × %g on a strip of %g", c, f.AxialMm, f.LengthMm, f.WidthMm, got.WidthMm)
		}
	}
}

// TestThroughJig: the jig guides the last drill alone, and the stop counts its plate where the hole is blind.
func TestThroughJig(t *testing.T) {
	t.Parallel()
	for depth, stop := range map[string]bool{"": false, ", depth: 12": true} {
		m := work(t, "mm", "part: p\nkind: plate\nmaterial: S355\nstock: {plate: 40 mm, cut: saw}\noutline: {square: 200}\nholes: [{name: h, at: [[50, 0], [-50, 0]], size: M20 tap"+depth+"}]\n")
		if s := lines(m); !strings.Contains(s, "pilot") {
			t.Error(s)
		}
		m.ThroughJigs([]Jigged{{Group: "h", Lay: "Lay it on.", PlateMm: 10}})
		s := lines(m)
		if !strings.Contains(s, "Lay it on.\nThrough the jig: Drill Ø17.5: 455 rev/min. Put a close Ø17.5 pin through the jig and hole 1 as soon") || strings.Contains(s, "pilot") || strings.Contains(s, "counts the 10 of the jig") != stop {
			t.Error(s)
		}
	}
}

// TestSpeedNotes: of a shop's own speeds one up to a quarter too fast, or not under six tenths of what is
// wanted, goes without a word; a thread is cut at 150. Common practice, no source.
func TestSpeedNotes(t *testing.T) {
	t.Parallel()
	b := &bench{Numbered: work(t, "mm", "part: p\nkind: turned\nmaterial: S235\nstock: {round: 25 mm}\nprofile:\n  outside: [{name: screw, thread: M20, length: 40}]\n").Numbered}
	for _, c := range []struct {
		slow, fast float64
		note       string
	}{{187.5, 400, ""}, {187.6, 400, "slowest speed, 150 wanted: light cuts, coolant"}, {90, 400, ""}, {89.9, 400, "nearest below 150"}, {150, 151, ""}} {
		b.Job.Shop.LatheRPM = []parts.Number{{Value: c.slow}, {Value: c.fast}}
		if rpm, note, _ := b.rpm(cutting.Thread, 20, true); rpm != c.slow || note != c.note {
			t.Errorf("%+v: %g, %s", c, rpm, note)
		}
	}
}

// TestToWall: the walls of a groove 5 wide at 50 of 100 from places on the axis, by hand: its place within
// 0.3, its width within 0.1 and a length within 0.3 (ISO 2768-m); measured from the other face, that of the
// whole within 0.3.
func TestToWall(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		from     string
		atMm     float64
		back     bool
		min, max float64
	}{
		{"front", 0, true, 54.6, 55.4}, {"front", 40, true, 14.3, 15.7}, {"front", 100, false, 49.4, 50.6},
		{"back", 0, true, 49.4, 50.6}, {"back", 40, true, 9.1, 10.9}, {"back", 100, false, 54.6, 55.4},
	} {
		for _, profile := range []string{"outside: [{name: a, diameter: 60, length: 40}, {name: b, diameter: 50, length: 60}]", "outside: [{name: c, diameter: 65, length: 100}]\n  inside: [{name: a, diameter: 30, length: 40}, {name: b, diameter: 40, length: 60}]"} {
			m := work(t, "mm", "part: p\nkind: turned\nmaterial: C45\nstock: {round: 70 mm}\nprofile:\n  "+profile+"\ngrooves: [{name: g, in: b, axial: 50, from: "+c.from+", for: relief, width: 5, depth: 2}]\n")
			if got := m.ToWallMm(&m.Grooves[0], c.atMm, c.back); got.Min != c.min || got.Max != c.max {
				t.Errorf("%+v, %s: %v", c, profile, got)
			}
			if seam, turns := m.HelixMm(); seam != 0 || turns != 0 {
				t.Errorf("it has a seam of %g in %g turns", seam, turns)
			}
		}
	}
}

// TestBranchBeyondItsMain: at 50° the axis of a branch comes out of a main of 200 at 100/tan 50° = 83.9 from where it
// crosses that of the main, towards the side that it leans to; beyond an end of the main there is nothing to cut.
func TestBranchBeyondItsMain(t *testing.T) {
	t.Parallel()
	const beyond = "the place lies beyond barrel.outside"
	for place, want := range map[string]string{
		"angle: 50, place: {axial: 720, leans: back}":             beyond,
		"angle: 50, place: {axial: 716, leans: back}":             "",
		"angle: 50, place: {axial: 720, leans: front}":            "",
		"angle: 50, place: {axial: 50, leans: front}":             beyond,
		"angle: 50, place: {axial: 84, leans: front}":             "",
		"angle: 50, place: {axial: 850, from: back, leans: back}": "", // crosses 50 in front of the main, comes out 33.9 behind its front
		"angle: 50, place: {axial: 50, from: back, leans: back}":  beyond,
		"angle: 90, place: {axial: 801}":                          beyond,
	} {
		job := load(t, "mm", branch(place), mainTube)
		got := ""
		for _, e := range Work(job, job.Parts[0]).Errs {
			got += e.What
		}
		if got != want || len(Work(job, job.Parts[1]).Errs) > 0 {
			t.Errorf("%s: %q, want %q", place, got, want)
		}
	}
}

// TestShortBranch: a saddle of Ø80 square on Ø200 is 100 − √(100² − 36²) = 6.7 deep, that of its bore of 72;
// its square edge lies 25 behind it, or at the free end where there is no room, and a millimetre has to be left.
func TestShortBranch(t *testing.T) {
	t.Parallel()
	for long, want := range map[string]string{"40": "8.3", "32": "0.3", "30": "0", "7.8": "0", "7.6": "the saddle is 6.7 deep and cuts through the far end of the tube"} {
		job := load(t, "mm", strings.Replace(branch("angle: 90, place: {clock: 90, axial: 300}"), "length: 500", "length: "+long, 1), mainTube)
		m := Work(job, job.Parts[0])
		got := ""
		for _, e := range m.Errs {
			got += e.What
		}
		if got == "" {
			got = words.Trim(m.saddles[0].squareMm, 1)
		}
		if got != want {
			t.Errorf("%s long: %s, want %s", long, got, want)
		}
	}
}

// TestEndForEnd: a section is the same end for end if each of its points has its like as far from the other end.
func TestEndForEnd(t *testing.T) {
	t.Parallel()
	const text = "part: p\nkind: turned\nmaterial: C45\nstock: {round: 70 mm}\nprofile:\n  outside: [{name: a, diameter: 40, length: 20}, {name: b, diameter: 60, length: 30}, {name: c, diameter: C, length: L}]\n  inside: [{name: i, diameter: 20, length: 10}, {name: j, diameter: 15, length: M}, {name: k, diameter: 20, length: N}]\n"
	for rest, want := range map[string]bool{"40 20 50 10": true, "40.1 20 50 10": false, "39.9 20 50 10": false, "40 20 49 11": false, "40 20 51 9": false, "40 21 51 10": false, "40 19 49 10": false} {
		f := strings.Fields(rest)
		if got := work(t, "mm", strings.NewReplacer("C,", f[0]+",", "L}", f[1]+"}", "M}", f[2]+"}", "N}", f[3]+"}").Replace(text)).EndForEnd(); got != want {
			t.Errorf("%s: %v", rest, got)
		}
	}
	line := []plan.XY{{XMm: 0, YMm: 20}, {XMm: 40, YMm: 20}, {XMm: 40, YMm: 30}, {XMm: 60, YMm: 10}}
	for z, want := range map[float64]float64{0: 20, 39: 20, 40: 20, 45: 25, 60: 10, 61: 10} {
		if got := radiusOn(line, z); got != want {
			t.Errorf("Ø at %g: %g, want %g", z, got, want)
		}
	}
}

// TestAtLeast: what must not be less is rounded up to a tenth of a millimetre, or a hundredth of an inch.
func TestAtLeast(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		units    parts.Units
		mm, want float64
	}{{parts.Millimetres, 4, 4}, {parts.Millimetres, 4.01, 4.1}, {parts.Millimetres, 4.1, 4.1}, {parts.Inches, 2.54, 2.54}, {parts.Inches, 2.55, 2.794}, {parts.Inches, 25.4, 25.4}} {
		if got := (words.Writer{Units: c.units}).Up(c.mm, 0.1, 0.01); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %g", c, got)
		}
	}
}

// TestBackAllowance: what is sawn on for the jaws is no metal to face: of a bar Ø60 × 50 sawn for it half of
// what both faces want stands behind, of one bought longer what its front leaves, of a casting half, of one
// that is hardly longer half, of one that is too short nothing.
func TestBackAllowance(t *testing.T) {
	t.Parallel()
	for stock, want := range map[string]float64{"round: 65 mm": 2, "round: 65 mm, length: 60 mm": 8, "round: 65 mm, length: 52 mm": 1, "casting: 65 mm, length: 60 mm": 5,
		"round: 65 mm, length: 50.5 mm": 0.25, "round: 65 mm, length: 50 mm": 0, "round: 65 mm, length: 49 mm": 0} {
		b := &bench{Numbered: work(t, "mm", "part: p\nkind: turned\nmaterial: S235\nstock: {"+stock+"}\nprofile:\n  outside: [{name: body, diameter: 60, length: 50}]\n").Numbered}
		if got := b.backAllowanceMm(); got != want {
			t.Errorf("%s: %g", stock, got)
		}
		if b.moreMm = 10; b.Part.Stock.Length.Mm == 0 && b.backAllowanceMm() != want {
			t.Errorf("%s: %g with 10 for the jaws", stock, b.backAllowanceMm())
		}
	}
}

// TestChainInInches: a chain of holes in inches leaves 1/64 a side, or a tenth of a narrow width, its drill at most 3/8.
// The angle of a hole is said to a thousandth of a degree.
func TestChainInInches(t *testing.T) {
	t.Parallel()
	m := work(t, "in", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 1/2 in}\noutline: {square: 4}\nholes: [{name: h, circle: {pcd: 2, count: 3, first: 12.3456}, size: 1/4}]\n")
	b := &bench{Numbered: m.Numbered}
	for inch, want := range map[float64][2]string{2: {"Ø0.375 in,", "0.4063 in apart,"}, 0.4: {"Ø0.3688 in,", "0.4 in apart,"}, 0.25: {"Ø0.2188 in,", "0.25 in apart,"}, 1.0 / 32: {"Ø0.025 in,", "0.031 in apart,"}} {
		if got := b.chain(inch*geom.MmPerInch, 100*geom.MmPerInch); !strings.HasPrefix(got, "Chain-drill "+want[0]) || !strings.HasSuffix(got, " holes "+want[1]) {
			t.Errorf("%g in: %s", inch, got)
		}
	}
	if got := (usual{}).where(b.Numbered, &m.Groups[0]); got != "PCD 2 in, hole 1 at 12.346°, front face" {
		t.Error(got)
	}
}

// TestThreadFromEndToEnd: an outside from end to end is turned in two settings, also between centres, where the
// driver holds one end; what is cut into it is cut once, and jaws hold its blank while it has no thread.
func TestThreadFromEndToEnd(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ size, long, want string }{
		{"thread: M20", "40", "\nOn centres, drilled small in both ends, over the whole length: cut screw M20, pitch 2.5 mm, 40 long."},
		{"thread: M20", "40", "on screw at Ø19.75, not yet threaded, "},
		{"thread: M20", "40", "as far as the jaws allow"},
		{"thread: M20", "200", "\nTurn the rest of screw to Ø19.75, for the thread, to meet what was turned before."},
		{"thread: M20", "200", "\nUp to the driver, then turned end for end and picked up there: cut screw M20, pitch 2.5 mm, 200 long."},
		{"diameter: 20, fit: h7", "200", "Turn screw Ø20 h7, 200 long, as far as the driver allows, the rest when turned round."},
		{"diameter: 20, fit: h7", "200", "\nTurn the rest of screw to Ø20 h7, to meet what was turned before."},
	} {
		s := lines(work(t, "mm", "part: p\nkind: turned\nmaterial: S235\nstock: {round: 25 mm}\nprofile:\n  outside: [{name: screw, "+c.size+", length: "+c.long+"}]\n"))
		if !strings.Contains(s, c.want) || strings.Count(s, "M20, pitch") > 1 || strings.Contains(s, "between centres") != (c.long == "200") || strings.Contains(s, "split ring") {
			t.Errorf("%s, %s long: %s", c.size, c.long, s)
		}
	}
}

// TestSawnOff: a roll whose back journal is turned with the rest, before the part is let go, is held by what is sawn on behind
// it and sawn off after; of stock bought to length and of a casting nothing is, and no line of a casting is empty.
func TestSawnOff(t *testing.T) {
	t.Parallel()
	roll := work(t, "mm", "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 105 mm}\nprofile:\n  one-setting: [front, body, back]\n  outside: [{name: front, diameter: 25, length: 40}, {name: body, diameter: 100, length: 150}, {name: back, diameter: 25, length: 40}]\n")
	has(t, roll, "Saw off what it was held by, 1 mm over the length.", "the rest is to face both ends, and to hold it by until it is sawn off.")
	for _, stock := range []string{"round: 105 mm, length: 70 mm", "casting: 105 mm"} {
		other := work(t, "mm", "part: p\nkind: turned\nmaterial: EN-GJL-250\nstock: {"+stock+"}\nprofile:\n  outside: [{name: rim, diameter: 100, length: 40}, {name: hub, diameter: 60, length: 20}]\n")
		if strings.Contains(lines(other), "held by") || slices.ContainsFunc(other.Out.Operations, func(o plan.Operation) bool { return slices.Contains(o.Do, "") }) {
			t.Errorf("%s: %s", stock, lines(other))
		}
	}
}

// TestNoTopOfAMiddle: a washer whose one hole is in its middle has no TOP to mark; with a second hole it has.
func TestNoTopOfAMiddle(t *testing.T) {
	t.Parallel()
	washer := "part: p\nkind: turned\nmaterial: S235\nstock: {round: 65 mm}\nprofile:\n  outside: [{name: body, diameter: 60, length: 6}]\nholes:\n  - {name: bolt, at: [[0, 0]], size: 10.5}\n"
	if got := lines(work(t, "mm", washer)); strings.Contains(got, "TOP") {
		t.Error(got)
	}
	has(t, work(t, "mm", washer+"  - {name: pin, at: [[0, 20]], size: 6}\n"), "Scribe TOP on the front face, for setting out")
}
