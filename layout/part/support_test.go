package part

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// TestSupport: what holds a round up follows from how far it sticks out, how much of
// it the jaws have, and how a finishing cut of 75 N bends it. On centres a bar of Ø30 ×
// 300 (I = 39761 mm⁴) bends 75·300³/(48·210000·39761) = 5.05 µm aside in its middle, so
// twice that is more than a quarter of k6 (13 µm) and of h8 (33 µm: 8.25), and less than
// one of h9 (52 µm: 13) and of h11 (130 µm).
func TestSupport(t *testing.T) {
	t.Parallel()
	bar := func(size string, length, fine int) string {
		return fmt.Sprintf("part: bar\nkind: shaft\nmaterial: S355\nstock: {round: 40 mm}\nprofile:\n  outside:\n    - {name: collar, diameter: 30.2, length: 20}\n    - {name: fine, %s, length: %d}\n    - {name: end, diameter: 29.8, length: %d}\n", size, fine, length-fine-20)
	}
	sleeve := func(length int) string {
		return fmt.Sprintf("part: cyl\nkind: turned\nmaterial: S355\nstock: {round: 60 mm}\nprofile:\n  outside:\n    - {name: o, diameter: 55, length: %d}\n  inside:\n    - {name: i, diameter: 30, length: %d}\n", length, length)
	}
	rim := func(stock, long, behind int) string {
		return fmt.Sprintf("part: cap\nkind: turned\nmaterial: S355\nstock: {round: 120 mm, length: %d mm}\nprofile:\n  outside:\n    - {name: rim, diameter: 116, length: %d}\n    - {name: pilot, diameter: 90, length: %d}\n", stock, long, behind)
	}
	knob := func(length, head int) string {
		return fmt.Sprintf("part: knob\nkind: turned\nmaterial: S355\nstock: {round: %d mm, length: %d}\nprofile:\n  outside:\n    - {name: stem, diameter: 50, length: %d}\n    - {name: head, diameter: %d, length: 10}\n", head+5, length+14, length, head)
	}
	for _, c := range []struct {
		name, text string
		want, not  []string
	}{
		{"close on centres", bar("diameter: 30, fit: k6", 300, 278), []string{"travelling steady, or a spring pass on short steps: a finishing cut bends fine 5 µm aside"}, nil},
		{"h8 on centres", bar("diameter: 30, fit: h8", 300, 278), []string{"travelling steady, or a spring pass on short steps: a finishing cut bends fine 5 µm aside"}, nil},
		{"bent by more than its limits", bar("diameter: 30, fit: k6", 900, 878), []string{"travelling steady: a finishing cut bends fine "}, []string{"spring pass"}},
		{"h9 on centres", bar("diameter: 30, fit: h9", 300, 278), []string{"between centres"}, []string{"steady, or a spring pass"}},
		{"coarse on centres", bar("diameter: 30, fit: h11", 300, 278), []string{"between centres"}, []string{"steady, or a spring pass"}},
		{"a lead screw", "part: bar\nkind: shaft\nmaterial: C45\nstock: {round: 30 mm}\nprofile:\n  outside:\n    - {name: thread, thread: Tr24x5, length: 600}\n    - {name: collar, diameter: 30, length: 20}\n", []string{"travelling steady, or a spring pass on short steps: a finishing cut bends thread"}, nil},
		{"a short lead screw", "part: bar\nkind: shaft\nmaterial: C45\nstock: {round: 30 mm}\nprofile:\n  outside:\n    - {name: thread, thread: Tr24x5, length: 150}\n    - {name: collar, diameter: 30, length: 20}\n", []string{"between centres"}, []string{"spring pass"}},
		{"a centre in one end", bar("diameter: 30, fit: k6", 300, 278) + "centres: {ends: front}\n", []string{"If a centre holds it, not a steady: centre-drill"}, []string{"between centres", "Face and centre both ends"}},
		{"short and close", bar("diameter: 30, fit: k6", 60, 20), []string{"chuck on the back end, set true"}, []string{"steady", "centre"}},
		{"a long tube is faced in a steady", "part: pipe\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 5 mm, length: 404 mm}\ntube: {outside: 100, wall: 5, length: 400}\n",
			[]string{"chuck on the back end, set true; steady near the end that is faced, on a cathead, 350 mm sticks out", "turned round, set true; steady near the end that is faced, on a cathead, 350 mm sticks out"}, []string{"with a centre"}},
		{"a short tube is not", "part: pipe\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 5 mm, length: 204 mm}\ntube: {outside: 100, wall: 5, length: 200}\n", nil, []string{"steady"}},
		// A cantilever of Ø16/12 × 45 (I = 2199 mm⁴) and 3 of the head Ø28/12 (I = 29154) to the
		// jaws: 75/(3·210000)·(45³/2199 + (48³ − 45³)/29154) = 5.0 µm; h6 has 11.
		{"thin and close in the chuck", "part: pin\nkind: shaft\nmaterial: S355\nstock: {round: 30 mm}\nprofile:\n  outside:\n    - {name: fine, diameter: 16, fit: h6, length: 45}\n    - {name: head, diameter: 28, length: 30}\n  inside:\n    - {name: oil, diameter: 12, length: 75}\n",
			[]string{"a centre in a plug, or a steady, at the free end: a finishing cut bends fine 5 µm aside"}, nil},
		// Thinner than the jaws are long: nothing to say, and no number that is none.
		{"a thin ring", "part: ring\nkind: turned\nmaterial: CuSn12\nstock: {tube: 50 mm, wall: 8 mm, length: 7 mm}\nprofile:\n  outside:\n    - {name: o, diameter: 48, fit: h7, length: 4}\n  inside:\n    - {name: i, diameter: 36, length: 4}\n",
			[]string{"Turn o Ø48 h7, 4 long, as far as the jaws allow, the rest when turned round.", "Turn from the back face", "Turn the rest of o to Ø48 h7, to meet what was turned before."}, []string{"Inf", "for the jaws", "steady"}},
		// 220 and 6 to saw and face, 50 in the jaws: 176 sticks out, more than 3 × 55; of 190
		// it is 146.
		{"a sleeve that chatters", sleeve(220), []string{"chuck on the back end, set true; a centre in a plug, or a steady, at the free end until the outside is rough turned"}, []string{"for the jaws"}},
		{"a sleeve that does not", sleeve(190), []string{"chuck on the back end, set true"}, []string{"steady", "for the jaws"}},
		// The jaws have less than a fifth of what sticks out, which is more than its diameter, or less.
		{"little in the jaws", knob(92, 60), []string{"9 mm for the jaws, 97 mm sticks out: light cuts; a centre or a steady at the free end until the outside is rough turned"}, nil},
		{"little in the jaws, but short", knob(63, 70), []string{"9 mm for the jaws, 68 mm sticks out: light cuts"}, []string{"steady"}},
		// 28 sawn of a part of 24: 2 to face each end, and 3 behind the rim, less 3 that the tool
		// stays clear: 2 for the jaws, so the rim is turned in two settings and they have half of
		// it, 10.5, too. Of 40 sawn 3 are for each end (Ø over 100): 3 for the jaws, and the same.
		{"a rim with next to nothing behind it", rim(28, 21, 3), []string{"only 12.5 mm for the jaws, 15.5 mm sticks out", "Turn rim Ø116, (21) long, as far as the jaws allow, the rest when turned round.", "Turn the rest of rim to Ø116, to meet what was turned before."}, nil},
		{"the same with enough", rim(40, 21, 13), []string{"only 13 mm for the jaws, 27 mm sticks out", "Turn rim Ø116, (21) long."}, nil},
		{"a thin rim", rim(15, 9, 3), []string{"only 6 mm for the jaws, 9 mm sticks out", "Turn rim Ø116, (9) long, as far as the jaws allow, the rest when turned round."}, nil},
		{"one outside, long", "part: cyl\nkind: turned\nmaterial: S355\nstock: {round: 60 mm, length: 306 mm}\nprofile:\n  outside:\n    - {name: o, diameter: 55, length: 300}\n  inside:\n    - {name: i, diameter: 40, length: 300}\n",
			[]string{"a centre in a plug, or a steady, at the free end until the outside is rough turned"}, []string{"for the jaws"}},
	} {
		m := work(t, "mm", c.text)
		has(t, m, c.want...)
		for _, n := range c.not {
			for _, o := range m.Out.Operations {
				if o.Machine == "Lathe" && strings.Contains(o.Holding, n) {
					t.Errorf("%s: %q in %s", c.name, n, o.Holding)
				}
			}
		}
	}
}

// TestLetGo: 27 of stock for 23: 1.5 is faced off the front, 20 turned, 3 the tool stays clear, so the jaws have 2.5;
// 1.5 + 20 + 3 stick out, of which they want a fifth, and 0.15 × 40: stock of 30.5. What the shop saws without a length
// given is so long, and what is given longer is held by the more. A ring of 4 is
// held on half of it, or on 4 + 1.5 behind it. A disc of 2.9 is all that holds a hub turned behind it.
func TestLetGo(t *testing.T) {
	t.Parallel()
	const bush = "part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 42LENGTH}\nprofile:\n  one-setting: [body, bore]\n  outside: [{name: body, diameter: 32, fit: r6, length: 20}, {name: collar, diameter: 40, length: 3}]\n  inside: [{name: bore, diameter: 25, fit: H7, length: 23}]\n"
	const disc = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 70, length: 40}\nprofile: {outside: [{name: disc, diameter: 60, length: LONG}, {name: hub, diameter: 20, length: 30}]}\n"
	const ring = "part: ring\nkind: turned\nmaterial: CuSn12\nstock: {tube: 50, wall: 8LENGTH}\nprofile: {outside: [{name: o, diameter: 48, length: 4}], inside: [{name: i, diameter: 36, length: 4}]}\n"
	for _, c := range []struct{ text, held, what, fix string }{
		{strings.Replace(bush, "LENGTH", ", length: 27", 1), "only 2.5 mm for the jaws, 24.5 mm sticks out: light cuts", "only 2.5 of the stock is left for the jaws, and 24.5 sticks out", "stock 31 long along the axis"},
		{strings.Replace(bush, "LENGTH", ", length: 27.5", 1), "only 3 mm for the jaws, 24.5 mm sticks out: light cuts", "", ""},
		{strings.Replace(bush, "LENGTH", ", length: 31", 1), "set true", "", ""},
		{strings.Replace(bush, "LENGTH", "", 1), "Cut 31 mm long", "", ""},
		{strings.Replace(disc, "LONG", "2.9", 1), "on disc, soft jaws", "turned round, it is held on disc alone: 2.9 for the jaws, and 30 sticks out", "a longer disc, or another step in front of it that the jaws can hold"},
		{strings.Replace(disc, "LONG", "3", 1), "on disc, soft jaws", "", ""},
		{strings.Replace(ring, "LENGTH", ", length: 7", 1), "as far as the jaws allow", "only 2 of the stock is left for the jaws, and 5 sticks out", "stock 11 long along the axis"},
		{strings.Replace(ring, "LENGTH", ", length: 11", 1), "as far as the jaws allow", "", ""},
		{strings.Replace(ring, "LENGTH", "", 1), "Cut 11 mm long", "", ""},
	} {
		m := work(t, "mm", c.text)
		has(t, m, c.held)
		what, fix := "", ""
		for _, p := range m.Out.Problems {
			if p.Kind == plan.JawsShort || p.Kind == plan.JawsThin {
				what, fix = p.What, m.W.Fix(p)
			}
		}
		if what != c.what || fix != c.fix || c.what == "" && strings.Contains(c.held, "set true") && strings.Contains(lines(m), "for the jaws") {
			t.Errorf("%q, %q, want %q, %q in\n%s", what, fix, c.what, c.fix, lines(m))
		}
	}
}

// TestTapFromItsOwnEnd: a long thread behind a clearance is tapped from the back,
// where it begins.
func TestTapFromItsOwnEnd(t *testing.T) {
	t.Parallel()
	const tappedNut = "part: nut\nkind: turned\nmaterial: CuSn12\nstock: {round: 50 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 40, length: 100}\n    - {name: flange, diameter: 48, length: 20}\n  inside:\n    - {name: clear, diameter: 20.5, length: 40}\n    - {name: screw, thread: M20, length: 80}\n"
	m := work(t, "mm", tappedNut)
	s := lines(m)
	if back := strings.Index(s, "Turn from the back face"); back < 0 || strings.Index(s, "Tap screw M20") < back || strings.Index(s, "Bore clear") > back {
		t.Error(s)
	}
	if !strings.Contains(s, "Tap screw M20, 80 long, by hand, the tap on the tailstock centre, square, with cutting oil.") || strings.Contains(told(m), "threads ") {
		t.Errorf("a tap runs at a speed of the lathe: %s", told(m))
	}
	if cut := told(work(t, "mm", strings.NewReplacer("length: 40}\n    - {name: screw, thread: M20, length: 80", "length: 100}\n    - {name: screw, thread: M20, length: 20").Replace(tappedNut))); !strings.Contains(cut, "threads ") {
		t.Errorf("no speed to cut a thread at: %s", cut)
	}
}

// TestLadderSpread: tube is bought to ±1 % (EN 10219-2 Table 2, from memory): 1.683 of
// 168.3, in steps of 0.2 to 1.8; a turned counterpart stays within 0.6.
func TestLadderSpread(t *testing.T) {
	t.Parallel()
	const flange = "part: flange\nkind: flange\nmaterial: S235\nthickness: 12\noutline: {circle: 260}\nbore: {diameter: 168.3, fit: {light-press: mate.outside}, leave: 2}\n"
	tube := work(t, "mm", flange, "part: mate\nkind: tube\nmaterial: S235\ntube: {outside: 168.3, wall: 4.5, length: 300}\n").Out.Ladders[0]
	if n := len(tube.Rungs); n != 19 || tube.Rungs[0].Measured != "166.50" || tube.Rungs[n-1].Measured != "170.10" {
		t.Errorf("%d rungs from %s to %s", n, tube.Rungs[0].Measured, tube.Rungs[n-1].Measured)
	}
	turned := work(t, "mm", flange, "part: mate\nkind: turned\nmaterial: S235\nprofile: {outside: [{name: outside, diameter: 168.3, length: 50}]}\n").Out.Ladders[0]
	if n := len(turned.Rungs); n != 25 || turned.Rungs[0].Measured != "167.70" {
		t.Errorf("%d rungs from %s", n, turned.Rungs[0].Measured)
	}
	inch := work(t, "in", strings.NewReplacer("12\n", "1/2\n", "260", "7", "168.3", "3-1/2", "leave: 2", "leave: 1/16").Replace(flange),
		"part: mate\nkind: turned\nmaterial: S235\nprofile: {outside: [{name: outside, diameter: 3-1/2, length: 2}]}\n").Out.Ladders[0]
	if n := len(inch.Rungs); n != 25 || inch.Rungs[0].Measured != "3.4760" || inch.Rungs[1].Measured != "3.4780" {
		t.Errorf("%d rungs from %+v", n, inch.Rungs[:2])
	}
}

// TestMicrometerOfTheCounterpart: 168.3 lies between 150 and 175, 3.5 in between 3 and 4: micrometers come by 25 mm and by the
// inch. It is named where the bore is made and on the sheet of the tube that goes into it, and not of one that goes nowhere.
func TestMicrometerOfTheCounterpart(t *testing.T) {
	t.Parallel()
	const flange = "part: flange\nkind: flange\nmaterial: S235\nthickness: 12\noutline: {circle: 260}\nbore: {diameter: 168.3, fit: {light-press: mate.outside}, leave: 2}\n"
	const tube = "part: mate\nkind: tube\nmaterial: S235\ntube: {outside: 168.3, wall: 4.5, length: 300}\n"
	inch := strings.NewReplacer("12\n", "1/2\n", "260", "7", "168.3", "3-1/2", "leave: 2", "leave: 1/16", "4.5", "0.216", "300", "12").Replace
	for _, c := range []struct{ unit, tube, flange, gauge string }{
		{"mm", tube, flange, "micrometer 150 – 175 mm"}, {"in", inch(tube), inch(flange), "micrometer 3 – 4 in"},
	} {
		has(t, work(t, c.unit, c.flange, c.tube), "across with a "+c.gauge+"; take the largest. Set the bore gauge in the same micrometer.")
		got := check(work(t, c.unit, c.tube, c.flange), "outside")
		if got == nil || got.Gauge != c.gauge || got.Limits != "as bought, for the bore on it: four places across, the largest" {
			t.Errorf("%s: %+v", c.unit, got)
		}
	}
	if got := check(work(t, "mm", tube), "outside"); got == nil || got.Gauge != "calipers" || got.Limits != "as bought" {
		t.Errorf("alone: %+v", got)
	}
}

// TestHolesCutSayWhereTopIs: two of six places on the circle are free of the cut four, 30° beside TOP; the template
// lies by the four and TOP is marked by it. Where all are cut it is marked by the first, at 0° + 22.5°, or, drawn on the
// back, at 337.5° of the front. A hole in the middle has no clock.
func TestHolesCutSayWhereTopIs(t *testing.T) {
	t.Parallel()
	const ring = "part: ring\nkind: flange\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {circle: 200}\nBOREtop: punch\nholes:\n  - {name: cut, FACEcircle: {pcd: 150, count: 4, first: 22.5}, size: 11}\n"
	with := func(bore, face, more string) *Model {
		return work(t, "mm", strings.NewReplacer("BORE", bore, "FACE", face).Replace(ring)+more)
	}
	const taps, bore = "  - {name: taps, circle: {pcd: 150, count: 2, first: 60}, size: M8 tap}\n", "bore: {diameter: 80, fit: H7, leave: 2}\n"
	has(t, with(bore, "", taps), "Set the template, mark TOP, punch",
		"Check the printed rules of every template.\nCut out the front template.\nSet the front one to the bore and its dashed rings of cut over these holes, which are cut already; tape it down.\n"+
			"Mark TOP on the front face (punch) by it.\nPunch every other centre.\n")
	has(t, with(bore, "", strings.Replace(taps, "circle", "face: back, circle", 1)+"slots: [{name: key, at: [[0, 60]], width: 6, length: 10, depth: 2}]\n"),
		"Mark TOP on the front face (punch) by it")
	has(t, with("", "", strings.Replace(taps, "tap}", "tap, depth: 5}", 1)+strings.NewReplacer("taps", "far", "circle", "face: back, circle", "tap}", "tap, depth: 5}").Replace(taps)),
		"Set the front one to the edge and its dashed rings of cut", "Mark TOP on the front face (punch) by it; carry it over the edge to the back.\nSet the back one to the edge and to TOP; tape it down.")
	has(t, with("", "", ""), "Mark TOP on the front face (punch), where the holes cut already have it: cut 1 at clock 22.5°.")
	has(t, work(t, "mm", strings.Replace(strings.NewReplacer("BORE", "", "FACE", "").Replace(ring), "circle: 200", "rectangle: [200, 180]", 1)), "Mark TOP on the front face (punch), as the outline and the holes cut already lie in the picture.")
	has(t, with("", "face: back, ", taps), "Mark TOP on the front face (punch)")
	middle := "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {circle: 100}\nholes: [{name: a, at: [[0, 0]], size: 20}, {name: b, at: [[30, 0]], size: M6 tap}]\n"
	has(t, work(t, "mm", middle), "Scribe TOP on the front face, for setting out.\nCheck the printed", "set it to the edge and to TOP")
}

// TestTopIsCarriedToItsWrap: TOP stands on the front face of a tube 600 long, the template of what lies near the back at
// the back end, 600 away; one that begins at the front face needs no line, and what is set out by the table 80 behind
// that face a square. From the keyway on guide, 20 higher than the tail, no angle lies on both.
func TestTopIsCarriedToItsWrap(t *testing.T) {
	t.Parallel()
	const tube = "part: p\nkind: tube\nmaterial: S235\ntop: scribe\nstock: {tube: 100 mm, wall: 5 mm, length: 604 mm}\ntube: {outside: 100, wall: 5, length: 600}\nradial:\n"
	const hole = "  - {name: NAME, clock: CLOCK, axial: 80, from: FROM, size: 8}\n"
	two := func(from string) string {
		return strings.NewReplacer("NAME", "a", "CLOCK", "0", "FROM", from).Replace(hole) + strings.NewReplacer("NAME", "b", "CLOCK", "90", "FROM", from).Replace(hole)
	}
	has(t, work(t, "mm", tube+two("back")), "level with the back face, its TOP line on TOP, scribed on from the front face along an angle laid on the outside; tape it")
	has(t, work(t, "mm", tube+two("front")), "level with the front face, its TOP line on TOP; tape it")
	has(t, work(t, "mm", tube+strings.NewReplacer("NAME", "a", "CLOCK", "90", "FROM", "front").Replace(hole)), "without a template, from TOP, scribed on from the front face with a square; punch")
	const shaft = "part: p\nkind: shaft\nmaterial: C45\ntop: keyway\nstock: {round: 45 mm, length: 205 mm}\nprofile:\n  outside:\n    - {name: front, diameter: 20, length: 20}\n    - {name: guide, diameter: 40, length: 100}\n    - {name: tail, diameter: 20, length: 80}\n" +
		"radial:\n  - {name: way, clock: 0, axial: 60, slot: {around: 8, along: 30}, depth: 4}\n  - {name: pin, clock: 0, axial: 20, from: back, size: 5}\n"
	m := work(t, "mm", shaft)
	has(t, m, "First scribe TOP lightly on the outside of guide", "way alone is set out there, by the table, without a template; punch",
		"pin alone is set out there, by the table, without a template, from TOP, scribed on from guide in vee blocks, the surface gauge at the height of the axis; punch")
	if !strings.Contains(told(m), "90° to open, surface gauge\n") {
		t.Error(told(m))
	}
}

// TestMarkingSaysWhatThereIs: a template is set to the bore where that is true, else to
// the edge; without a template none is cut out or checked.
func TestMarkingSaysWhatThereIs(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [100, 80]}\nholes: [{name: a, at: [[30, 0], [-30, 0]], size: 10 mm, depth: 5}]\n"
	has(t, work(t, "mm", plate), "Cut out the front template, set it to the left and bottom edge and to TOP")
	has(t, work(t, "mm", plate+"bore: {diameter: 30}\n"), "set it to the left and bottom edge") // as the laser cuts it
	has(t, work(t, "mm", strings.Replace(plate, "]\n", ", {name: b, face: back, at: [[20, 20]], datum: right-top, size: 5 mm, depth: 5}]\n", 1)), "set each to the left and top edge (back: right and top) and to TOP")
	// each template goes to the edges that what it marks is measured from, and the record measures from there
	both := work(t, "mm", strings.Replace(plate, "holes: [{name: a, at: [[30, 0], [-30, 0]], size: 10 mm, depth: 5}]\n", `holes:
  - {name: a, at: [[20, 60], [80, 60]], datum: left-bottom, size: 8 mm}
  - {name: c, at: [[25, 40]], datum: right-bottom, size: M8 tap, depth: 5}
  - {name: b, face: back, at: [[0, 20], [0, -20]], size: M8 tap}
  - {name: d, face: back, at: [[10, 0]], size: M8 tap, depth: 5}
`, 1))
	has(t, both, "Cut out the front and the back template, set each to the right and bottom edge and to TOP")
	for what, wanted := range map[string]string{"a 1, left and bottom edge to pin": "16, 56", "c 3, right and bottom edge to pin": "21.6, 36.6", "b 1, right and bottom edge to pin": "46.6, 56.6"} {
		if c := check(both, what); c == nil || c.Wanted != wanted {
			t.Errorf("%s: %+v, want %s", what, c, wanted)
		}
	}
	has(t, work(t, "mm", plate+"bore: {diameter: 30, fit: H7}\n"), "Cut out the front template, set it to the bore and to TOP")
	pin := work(t, "mm", "part: pin\nkind: shaft\nmaterial: S235\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: a, diameter: 40, length: 60}\nradial:\n  - {name: h, clock: 0, axial: 20, size: 6, depth: 10}\n")
	has(t, pin, "Mark TOP, set out, punch", "by the table, without a template")
	two := work(t, "mm", "part: pin\nkind: shaft\nmaterial: S235\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: a, diameter: 40, length: 200}\nradial:\n  - {name: h, clock: 0, axial: 20, size: 6, depth: 10}\n  - {name: i, clock: 90, axial: 180, size: 6, depth: 10}\n")
	if n := strings.Count(lines(two), "without a template"); n > 1 {
		t.Errorf("said %d times:\n%s", n, lines(two))
	}
	if s := lines(pin); strings.Contains(s, "printed rules") || strings.Contains(s, "set the template") {
		t.Error(s)
	}
}

// TestPipeThreadDepth: a plug only closes a hole: three quarters of 20.955, to a whole
// millimetre.
func TestPipeThreadDepth(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", strings.Replace(housing, "size: M30 tap", "size: G1/2 tap", 1))
	has(t, m, "Depth: thread 16 deep, drilled into the bore, 55 through the wall.")
}

// A set screw bears on what is in the bore: through a wall of (63 - 14)/2 its thread is the 6 at the bore, and 24.5 - 6
// before it are opened out; what else is screwed in, and a set screw in a thinner wall, is threaded from outside.
func TestSetScrewComesThrough(t *testing.T) {
	t.Parallel()
	const pulley = "part: p\nkind: turned\nmaterial: S355\nstock: {round: 70, length: 26}\nprofile:\n  outside: [{name: rim, diameter: 63, length: 22}]\n  inside: [{name: bore, diameter: 14, fit: H7, length: 22}]\nradial:\n  - {name: grub, clock: 90, axial: 11, size: M4 tap, fitted: FITTED}\n"
	m := work(t, "mm", strings.Replace(pulley, "FITTED", "set screw M4 x 12", 1))
	has(t, m, "Depth: drilled into the bore, 24.5 through the wall, opened out from outside 18.5 deep, thread in the 6 left at the bore.", "Open it out to Ø4.5 so that the shank of the tap goes in") // ISO 273, medium
	has(t, work(t, "mm", strings.Replace(pulley, "FITTED", "grease nipple", 1)), "Depth: thread 6 deep, drilled into the bore, 24.5 through the wall.")
	has(t, work(t, "mm", strings.NewReplacer("FITTED", "set screw M4 x 12", "diameter: 63", "diameter: 46").Replace(pulley)), "Depth: into the bore, 16 through the wall.")
}

// TestDeepBoreIsFinished: a bore with limits that no bar reaches is drilled and reamed,
// whether or not it is the narrowest; a drill alone holds no H8.
func TestDeepBoreIsFinished(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: cyl\nkind: turned\nmaterial: S355\nstock: {round: 60 mm, length: 306 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 55, length: 300}\n  inside:\n    - {name: deep, diameter: 20, fit: H8, length: 250}\n    - {name: floor, diameter: 8, length: 50}\n")
	has(t, m, "Drill out deep Ø20 H8, 250 long.", "Ream Ø20 H8, at half the drilling speed.")
	if s := lines(m); strings.Count(s, "Ream") != 1 || !strings.Contains(s, "leaves 0.25 mm on diameter") {
		t.Error(s)
	}
}

// TestDeepBoreOfATube: half from each end a bar reaches six diameters, 300 in Ø50
// (common practice); deeper is a setting of its own, which names no chuck. What is as
// bought is not bored, and no outside as bought is set to 0.02.
func TestDeepBoreOfATube(t *testing.T) {
	t.Parallel()
	const hub = "part: hub\nkind: turned\nmaterial: S235\nstock: {tube: 70 mm, wall: 12.5 mm, length: 373 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: LONG}]\n  inside: [{name: bore, SIZE, length: LONG}]\n"
	for _, c := range []struct {
		size, long string
		said       bool
	}{{"diameter: 50, fit: H11", "301", true}, {"diameter: 50, fit: H11", "300", false}, {"diameter: 45", "370", false}} {
		m := work(t, "mm", strings.NewReplacer("SIZE", c.size, "LONG", c.long).Replace(hub))
		s := lines(m)
		before, own, said := strings.Cut(s, "Bar between centres: bore\nclamped on the cross slide")
		if said != c.said || said && (strings.Contains(before, "H11") || !strings.Contains(own, "Machine bore Ø50 H11, 301 long.") || strings.Contains(strings.Split(own, "Deburr")[0], "chuck")) {
			t.Errorf("%s, %s:\n%s", c.size, c.long, s)
		}
		if said && (!strings.Contains(own, "its outside, as bought, swept by an indicator on the bar, opposite places alike within 0.2 mm at both ends") || strings.Contains(own, "0.02") || !strings.Contains(told(m), "\nbore 50.00 – 50.16\n")) { // ISO 286-2
			t.Error(own)
		}
	}
	turned := strings.NewReplacer("SIZE", "diameter: 50, fit: H11", "diameter: 70,", "diameter: 68,", "LONG", "301").Replace(hub)
	has(t, work(t, "mm", turned), "its outside in line with the centres within 0.02 mm at both ends")
}
