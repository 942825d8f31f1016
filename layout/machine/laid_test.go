package machine_test

import (
	"cmp"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// A stop collar of 2-3/4 by 1/2 goes on edge through a window of 1-1/2 by 4 and turns in a bore
// of 3.068; not without the window, and not one of 7/8 thick, whose corners are 2.88 apart but
// which is no way in A key bar that reaches through the tube lies in it. What
// a collar lies on comes first.
func TestLoosePartsComeIn(t *testing.T) {
	t.Parallel()
	const window, slot = "{name: sight, clock: [90, 270], axial: 12, from: front, window: {around: 1-1/2, along: 4, corner: 1/2}}", "window: {around: 1-1/2"
	for _, c := range []struct {
		edit [3]string
		want plan.ProblemKind
	}{
		{[3]string{"guide-tube.yaml", window, "{name: sight, clock: [90, 270], axial: 12, from: front, size: 1/4, depth: through}"}, plan.PathBlocked},
		{[3]string{"guide-tube.yaml", slot, "window: {around: 0.45, along: 4, corner: 0.1}} # "}, plan.PathBlocked},
		{[3]string{"guide-tube.yaml", slot, "window: {around: 1"}, ""},
		{[3]string{"job.yaml", "from-top: 0.22", "from-top: 0"}, plan.PartsOverlap},
		{[3]string{"job.yaml", "until the end float is set.\", after: upper-bearing", "until the end float is set.\", after: stay"}, plan.LaidEarly},
	} {
		m, _ := load(t, edited(t, "gatejack", c.edit))
		got := plan.ProblemKind("")
		for _, p := range m.Problems {
			if p.Kind == plan.PathBlocked || p.Kind == plan.PartsOverlap || p.Kind == plan.LaidEarly {
				got = p.Kind
			}
		}
		if got != c.want {
			t.Errorf("%v: %q, want %q", c.edit, got, c.want)
		}
	}
}

// A lid laid on a rib comes after the joint that brings the rib: of two, welded on by the first and the
// second joint.
func TestLaidEarly(t *testing.T) {
	t.Parallel()
	place := func(bottom string) string {
		return ", place: {on: front, with: bottom, from-left: 30, from-bottom: " + bottom + ", front: down}}\n"
	}
	joints := ribWeld + place("20") + strings.ReplaceAll(strings.ReplaceAll(ribWeld, "name: rib", "name: other"), "rib.outline", "rib#2.outline") + place("80")
	for _, c := range []struct{ after, on, want string }{
		{"rib", "rib#1", ""}, {"other", "rib#1", ""}, {"other", "rib#2", ""}, {"rib", "rib#2", "laid-early lid rib rib 2 other"}, {"rib", "base", ""},
	} {
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": ribPart, "lid.yaml": "part: lid\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {rectangle: [20, 10]}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + joints + "loose:\n  - {part: lid, how: laid on, after: " + c.after + ", lies: [{on: " + c.on + ".front, with: back}]}\n"}))
		if got := argued(m, plan.LaidEarly); got != c.want {
			t.Errorf("after %s on %s: %q, want %q", c.after, c.on, got, c.want)
		}
	}
}

// A lid that comes off again in its step lies in a base by so much, or in the rib where that stands: not yet at the first joint, and at the second
// by half its thickness of 10.
func TestComesOffAgain(t *testing.T) {
	t.Parallel()
	place := func(bottom string) string {
		return ", place: {on: front, with: bottom, from-left: 30, from-bottom: " + bottom + ", front: down}}\n"
	}
	joints := ribWeld + place("20") + strings.ReplaceAll(strings.ReplaceAll(ribWeld, "name: rib", "name: other"), "rib.outline", "rib#2.outline") + place("80")
	for _, c := range []struct{ after, at, want string }{
		{"rib", "[100, 50]", ""}, {"rib", "[100, 50], gap: -4.004", "parts-overlap lid base 4"}, {"rib", "[-100, -15]", ""}, {"other", "[-100, -15]", "parts-overlap lid rib 2 5"}, {"rib", "[-100, -75]", "parts-overlap lid rib 1 5"},
	} {
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": ribPart, "lid.yaml": "part: lid\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {rectangle: [20, 10]}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + joints + "loose:\n  - {part: lid, how: laid on, after: " + c.after + ", off: yes, lies: [{on: base.front, with: back, at: " + c.at + "}]}\n"}))
		if got := argued(m, plan.PartsOverlap); got != c.want {
			t.Errorf("after %s at %s: %q, want %q", c.after, c.at, got, c.want)
		}
	}
}

// What two ribs that both stand on a base do to each other is said at the joint of the two, where there is one, else at that with which they come
// together.
func TestSaidAtTheirJoint(t *testing.T) {
	t.Parallel()
	place := func(bottom string) string {
		return ", place: {on: front, with: bottom, from-left: 30, from-bottom: " + bottom + ", front: down}}\n"
	}
	joints := ribWeld + place("20") + strings.ReplaceAll(strings.ReplaceAll(ribWeld, "name: rib", "name: other"), "rib.outline", "rib#2.outline") + place("25")
	for want, tie := range map[string]string{"other": "", "tie": "  - {name: tie, weld: {part: rib#2.outline, to: rib#1.outline, type: fillet, length: 20}}\n"} {
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": ribPart, "job.yaml": ribJob + joints + tie}))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.PartsOverlap {
				got += p.Joint
			}
		}
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A lid of 5 that lies on a base of 20 may have so much as 12 under it, and lies in it or on it, or half a millimetre off its side; beyond that it lies on
// nothing, its top 1.2345 under the face.
func TestLaidFree(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ at, gap, want string }{
		{"[100, 50]", "0", ""}, {"[100, 50]", "12", ""}, {"[100, 50]", "12.3456", "laid-free lid base front 12.3"}, {"[100, 50]", "-6.2345", ""},
		{"[210.45, 50]", "-6.2345", ""}, {"[210.52, 50]", "-6.2345", "laid-free lid base front 1.2"}, {"[300, 50]", "-6.2345", "laid-free lid base front 1.2"}, {"[300, 50]", "-4.2345", ""},
	} {
		got := found(t, map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"lid.yaml": "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {rectangle: [20, 10]}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n" +
				"loose:\n  - {part: lid, how: laid on, after: rib, lies: [{on: base.front, with: back, at: " + c.at + ", gap: " + c.gap + "}]}\n"}, plan.LaidFree)
		if got != c.want {
			t.Errorf("at %s, %s off: %q, want %q", c.at, c.gap, got, c.want)
		}
	}
}

// A lid of sheet 2 with flanges of 20 lies with their edges on a base of 400 × 200; all round larger it lies as high on nothing, and goes on by 18 until its sheet
// meets the base. Beside the base nothing is under a lid.
func TestLaidPast(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ wide, gap, want string }{
		{"[399, 199]", "0", ""}, {"[410, 210]", "0", "laid-past lid base front 18"}, {"[410, 210]", "1", ""}, {"[410, 210]", "-18", ""},
		{"[399, 210]", "0", ""}, {"[410, 210]", "0.4", "laid-past lid base front 18.4"},
	} {
		files := map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"lid.yaml": "part: lid\nkind: folded\nmaterial: S235\nstock: {sheet: 2}\noutline: {rectangle: " + c.wide + "}\nbends: {radius: 2, flanges: [{side: top, height: 20}, {side: bottom, height: 20}, {side: left, height: 20}, {side: right, height: 20}]}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + ribWeld + ", place: {on: back, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n" +
				"loose:\n  - {part: lid, how: laid on, after: rib, lies: [{on: base.front, with: back, at: [0, 0], gap: " + c.gap + "}]}\n"}
		if got := found(t, files, plan.LaidPast, plan.LaidFalls); got != c.want {
			t.Errorf("%s, %s off: %q, want %q", c.wide, c.gap, got, c.want)
		}
	}
	if got := found(t, map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
		"lid.yaml": "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {rectangle: [20, 10]}\n",
		"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + ribWeld + ", place: {on: back, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n" +
			"loose:\n  - {part: lid, how: laid on, after: rib, lies: [{on: base.front, with: back, at: [211, 50]}]}\n"}, plan.LaidFalls); got != "laid-falls lid base front" {
		t.Error(got)
	}
}

// A nut 16 high on a thread of 20: three quarters of its own are 12, less than 0.8 of the diameter, and of one 40 high that is less, 24. On another pitch it is a stop, and of two
// threads on one pin the one counts on which it is.
func TestNutsEngage(t *testing.T) {
	t.Parallel()
	const tip = ", {name: neck, diameter: 24, length: 10}, {name: tip, thread: M30, length: 10}"
	for _, c := range []struct{ thread, gap, tip, high, want string }{
		{"M30", "-16", "", "16", ""},
		{"M30", "-11.8", "", "16", ""},
		{"M30", "-11.5", "", "16", ""},
		{"M30", "-11.4", "", "16", "nut-hangs Nut Pin end 11.4 12"},
		{"M30", "-5.1234", "", "16", "nut-hangs Nut Pin end 5.12 12"},
		{"M30", "-5.1234", "", "16.255", "nut-hangs Nut Pin end 5.12 12.19"},
		{"M30", "1", "", "16", "nut-hangs Nut Pin end 0 12"},
		{"M30", "-20", "", "40", "nut-hangs Nut Pin end 20 24"},
		{"Tr30x6", "-20", "", "40", "nut-hangs Nut Pin end 20 30"}, // what travels carries on three quarters of it
		{"M30", "-40", tip, "16", ""},
		{"M30", "-8", tip, "16", "nut-hangs Nut Pin tip 8 12"},
		{"M30x2", "-16", "", "16", "nut-pitch Nut Pin end M30x2 M30"},
		{"M36", "-16", "", "16", ""}, // over it, and not on it
	} {
		end := "M30"
		if strings.HasPrefix(c.thread, "Tr") {
			end = c.thread
		}
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, pin.yaml, nut.yaml]\njoints:\n  - {name: pin, press: {shaft: pin.seat, bore: plate.bore}, level: front-with-front}\n" +
				"loose:\n  - {part: nut, how: screwed on by hand, after: pin, lies: [{on: pin.back, with: front, gap: " + c.gap + "}]}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"pin.yaml":   "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 36, length: 70}\nprofile:\n  outside: [{name: seat, diameter: 32, fit: s6, length: 20}, {name: end, thread: " + end + ", length: 20}" + c.tip + "]\nchamfers: [{edge: seat-front, size: 1, angle: 15, for: lead-in}]\n",
			"nut.yaml":   "part: nut\ntitle: Nut\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 44}\nprofile:\n  outside: [{name: body, diameter: 55, length: " + c.high + "}]\n  inside: [{name: thread, thread: " + c.thread + ", length: " + c.high + "}]\n",
		}, plan.NutHangs, plan.NutPitch)
		if got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.thread, c.gap, got, c.want)
		}
	}
}

// The jack's stem, by hand: its lower collar begins 7-1/4 under the tube, the yoke plate of 3/4
// ends 1/32 + 3/4 under it: 6.469 in. Its keyway of 10-1/4 has its middle 25-3/8 from its front,
// 27 over the tube's back: it ends 3-1/2 under that back end, whose key bar ends 3-1/2 over it,
// 7 free; one of 8-1/4 ends 1 earlier, 152 mm. A tenth of the way is looked for what stops it.
func TestInUse(t *testing.T) {
	t.Parallel()
	const way = "travels: {front: 6-1/4, with: [stop-collar]}"
	for _, c := range []struct{ file, from, to, want string }{
		{"", "", "", ""},
		{"job.yaml", way, "travels: {front: 6.47, with: [stop-collar]}", ""}, // within what two bodies may touch
		{"job.yaml", way, "travels: {front: 6.5, with: [stop-collar]}", "travel-strikes Stop collar 2, Yoke plate, 164.3126, 165.1, front"},
		{"job.yaml", way, "travels: {back: 0.5, with: [stop-collar]}", "travel-runs Stem, 6, 0, front; travel-strikes Stop collar 1, Key bar, 0, 12.7, back"},
		{"job.yaml", way, "travels: {front: 5.5, with: [stop-collar]}", "travel-runs Stem, 13.97, 139.7, front"},
		{"job.yaml", way, "travels: {front: 5.5, back: 0.5, with: [stop-collar]}", "travel-runs Stem, 15.24, 139.7, front; travel-strikes Stop collar 1, Key bar, 0, 12.7, back"}, // a tenth of 6
		{"stem.yaml", "along: 10-1/4", "along: 8-1/4", "travel-strikes Stem, Key bar, 152.1714, 158.75, front"},
	} {
		var edits [][3]string
		if c.file != "" {
			edits = append(edits, [3]string{c.file, c.from, c.to})
		}
		m, _ := load(t, edited(t, "gatejack", edits...))
		var got []string
		for _, p := range m.Problems {
			if p.Kind == plan.TravelStrikes || p.Kind == plan.TravelRuns {
				var args []string
				for _, a := range p.Args {
					args = append(args, cmp.Or(a.Text, words.Trim(a.Value, 6)))
				}
				got = append(got, string(p.Kind)+" "+strings.Join(args, ", "))
			}
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s %q: %q, want %q", c.file, c.to, got, c.want)
		}
	}
}

// A foot of 140 × 60 has two slots 11 × 31 up and down, 20 between the centres of their ends, so 10 each way; a stop of 10
// stands so far from its edge at 30. A hub on the foot goes with it: of 80 it stands 10 over that edge, over the stop's 40 if
// it stands higher. What another joint, or a part between, holds to the base cannot be set.
func TestShiftedAlongSlots(t *testing.T) {
	t.Parallel()
	const slots, holes, taps = "slots: [{name: s, at: [[-40, 0], [40, 0]], width: 11, length: 31}]\n", "holes: [{name: s, at: [[-40, 0], [40, 0]], size: M10 clearance}]\n", "holes: [{name: s, at: [[-40, 0], [40, 0]], size: M10 tap}]\n"
	for _, c := range []struct{ foot, base, bolt, stop, more, want string }{
		{slots, taps, "adjust: 8", "38", "", ""}, {slots, taps, "adjust: 8", "36.04", "", "shift-strikes Foot Stop 6 8 Foot s"},
		{slots, taps, "adjust: 5", "36", "", ""}, {slots, taps, "adjust: 0.8", "36", "", ""}, {slots, taps, "", "36", "", "shift-stops Foot Stop 6 10 Foot s"}, {slots, taps, "", "-46", "", "shift-stops Foot Stop 6 10 Foot s"},
		{holes, slots, "nut: yes, adjust: 8", "36", "", "shift-strikes Foot Stop 6 8 Base s"},
		{slots, taps, "adjust: 8", "45", "  - {name: hub, weld: {part: hub.outline, to: foot.outline, type: fillet, size: 3}, place: {on: front, with: back, at: [0, 0], top: up}}\n", "shift-strikes Hub Stop 5 8 Foot s"},
		{slots, taps, "", "36", "  - {name: tie, weld: {part: foot.outline, to: base.outline, type: fillet, size: 3, length: 20}}\n", ""},
		{slots, taps, "adjust: 8", "36", "  - {name: tie, weld: {part: foot.outline, to: base.outline, type: fillet, size: 3, length: 20}}\n", "shift-held Foot Base 8 Foot s another joint of the two"},
		{slots + "holes: [{name: h, at: [[0, 0]], size: M5 tap}, {name: k, at: [[0, 20]], size: M5 tap}]\n", "holes: [{name: s, at: [[-40, 0], [40, 0]], size: M10 tap}, {name: b, at: [[0, -60]], size: M5 tap}]\n", "adjust: 8", "120",
			"  - {name: on, bolt: {through: hub.k, into: foot.k, bolt: M5 8.8}, face: back-on-front}\n  - {name: hub, weld: {part: hub.outline, to: stop.outline, type: fillet, size: 3, length: 10}}\n", "shift-held Foot Base 8 Foot s Hub, Stop"},
		// What has slots that way itself goes with what it is bolted to.
		{slots + "holes: [{name: h, at: [[0, 0]], size: M5 tap}]\n", taps, "adjust: 8", "45", "  - {name: hub, bolt: {through: hub.h, into: foot.h, bolt: M5 8.8, washer: yes}, face: back-on-front}\n", "shift-strikes Hub Stop 5 8 Foot s; shift-stops Hub Stop 5 9.75 Hub h"},
		// It lies on the foot since the step that bolts that, and goes with it.
		{slots, taps, "adjust: 8", "45", "loose: [{part: hub, how: on the foot, after: foot, lies: [{on: foot.front, with: back}]}]\n", "shift-strikes Hub Stop 5 8 Foot s"},
	} {
		plate := func(name, thick, outline string) string {
			return "part: " + name + "\ntitle: " + strings.ToUpper(name[:1]) + name[1:] + "\nkind: plate\nmaterial: S235\nstock: {plate: " + thick + ", cut: laser}\noutline: {" + outline + "}\n"
		}
		got := found(t, map[string]string{
			"base.yaml": plate("base", "20", "square: 300") + c.base, "foot.yaml": plate("foot", "12", "rectangle: [140, 60]") + c.foot,
			"hub.yaml": plate("hub", "6", "rectangle: [20, 80]") + "slots: [{name: h, at: [[0, 0]], width: 5.5, length: 25}]\nholes: [{name: k, at: [[0, -30]], size: M5 clearance}]\n", "stop.yaml": plate("stop", "10", "rectangle: [40, 40]"),
			"job.yaml": "job: Set\nunits: mm\nparts: [base.yaml, foot.yaml, stop.yaml, hub.yaml]\njoints:\n" +
				"  - {name: stop, weld: {part: stop.outline, to: base.outline, type: fillet, size: 3}, place: {on: front, with: bottom, at: [0, " + c.stop + "], front: down}}\n" +
				"  - {name: foot, bolt: {through: foot.s, into: base.s, bolt: M10 8.8, washer: yes, " + c.bolt + "}, face: back-on-front, after: stop}\n" + c.more,
		}, plan.ShiftStrikes, plan.ShiftStops, plan.ShiftHeld)
		if got != c.want {
			t.Errorf("%s%s stop at %s: %q, want %q", c.foot, c.bolt, c.stop, got, c.want)
		}
	}
}

// A pin of 90 with its head of 36 goes into the hole of 22 of a wall from between that and another one, 150 off;
// from between walls 80 apart it does not, and from outside its head, 60 behind the wall's face, does not pass.
func TestFromBetween(t *testing.T) {
	t.Parallel()
	for right, want := range map[string]string{"240": "", "170": "path-blocked Pin Wall 1 60 first: yes at Pin"} {
		wall := func(n, left string) string {
			return "  - {name: w" + n + ", weld: {part: wall#" + n + ".outline, to: base.outline, type: fillet, size: 5}, place: {on: front, with: bottom, from-left: " + left + ", from-bottom: 20, front: left}}\n"
		}
		got := found(t, map[string]string{
			"job.yaml":  "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, wall.yaml, pin.yaml]\njoints:\n" + wall("1", "80") + wall("2", right) + "loose:\n  - {part: pin, how: put in by hand, after: w2, lies: [{on: wall#1.front, with: back, at: [20, 20], gap: -60.04}]}\n",
			"base.yaml": "part: base\ntitle: Base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {rectangle: [400, 300]}\n",
			"wall.yaml": "part: wall\ntitle: Wall\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {rectangle: [200, 200]}\nholes: [{name: pin, at: [[20, 20]], size: 22}]\n",
			"pin.yaml":  "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 40, length: 100}\nprofile:\n  outside: [{name: body, diameter: 20, length: 70}, {name: head, diameter: 36, length: 20}]\n",
		}, plan.PathBlocked)
		if got != want {
			t.Errorf("%s from the left: %q, want %q", right, got, want)
		}
	}
}

// A cover with a flange on either side stands between two walls 100 apart, which it is screwed to: up to 0.5 narrower the screws draw a flange up, and drawn as wide
// as the room, less 0.1, it hardly goes in; wider it lies in a wall. One turned by a quarter does not meet its screws.
func TestSheetBetweenWalls(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ wide, rotate, want string }{
		{"99.7", "0", ""}, {"99.5", "0", ""}, {"99.4", "0", "place-misses c2 0.6 w1, w2, c1"}, {"99.85", "0", ""}, {"99.95", "0", "sheet-tight Cover Wall 1 Wall 2 99.95 100"},
		{"100", "0", "sheet-tight Cover Wall 1 Wall 2 100 100"}, {"100.2", "0", "place-misses c2 0.2 w1, w2, c1"}, {"99.7", "90", "place-turned c2 13.44 w1, w2, c1"},
	} {
		wall := func(n, left string) string {
			return "  - {name: w" + n + ", weld: {part: wall#" + n + ".outline, to: base.outline, type: fillet, size: 5}, place: {on: front, with: bottom, from-left: " + left + ", from-bottom: 20, front: left}}\n"
		}
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, wall.yaml, cover.yaml]\njoints:\n" + wall("1", "80") + wall("2", "190") +
				"  - {name: c1, bolt: {through: cover.left-bolts, into: wall#1.taps, bolt: M6 8.8}, face: back-on-back}\n" +
				"  - {name: c2, bolt: {through: cover.right-bolts, into: wall#2.taps, bolt: M6 8.8}, face: back-on-front, rotate: " + c.rotate + "}\n",
			"base.yaml": "part: base\ntitle: Base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {rectangle: [400, 300]}\n",
			"wall.yaml": "part: wall\ntitle: Wall\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 200}\nholes: [{name: taps, at: [[0, 0]], size: M6 tap}]\n",
			"cover.yaml": "part: cover\ntitle: Cover\nkind: folded\nmaterial: S235\nstock: {sheet: 1.5, cut: laser}\noutline: {rectangle: [" + c.wide + ", 60]}\n" +
				"bends: {radius: 1.5, flanges: [{side: left, height: 20, toward: front}, {side: right, height: 20, toward: front}]}\n" +
				"holes: [{name: left-bolts, on: left, at: [[0, 11]], size: M6 clearance}, {name: right-bolts, on: right, at: [[0, 11]], size: M6 clearance}]\n",
		}, plan.PlaceMisses, plan.PlaceTurned, plan.SheetTight, plan.PartsOverlap, plan.OverlapMisses)
		if got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.wide, c.rotate, got, c.want)
		}
	}
}

// A knob with a blind tapped hole goes on a stud that a press holds by 15, as deep as its flank (M16: 0.92); one
// of another pitch lies in it, and its hole is shut.
func TestKnobOnItsStud(t *testing.T) {
	t.Parallel()
	for thread, want := range map[string]string{"M16": "", "M16x1.5": "parts-overlap Stud Knob 0.75; hole-dead-end hole Knob Stud"} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, stud.yaml, knob.yaml]\njoints:\n  - {name: stud, press: {shaft: stud.seat, bore: plate.bore}, level: front-with-front}\n" +
				"loose:\n  - {part: knob, how: screwed on, after: stud, lies: [{on: stud.back, with: front, gap: -15}]}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"stud.yaml":  "part: stud\ntitle: Stud\nkind: turned\nmaterial: C45\nstock: {round: 36, length: 44}\nprofile:\n  outside: [{name: seat, diameter: 32, fit: s6, length: 20}, {name: end, thread: M16, length: 20}]\nchamfers: [{edge: seat-front, size: 1, angle: 15, for: lead-in}]\n",
			"knob.yaml":  "part: knob\ntitle: Knob\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 34}\nprofile:\n  outside: [{name: body, diameter: 55, length: 30}]\nholes: [{name: hole, face: front, at: [[0, 0]], size: " + thread + " tap, depth: 18}]\n",
		}, plan.PartsOverlap, plan.HoleDeadEnd)
		if got != want {
			t.Errorf("%s: %q, want %q", thread, got, want)
		}
	}
}

// A pin is screwed into a plate of 20 up to its shoulder, before which full thread of M10 ends 4.5 (DIN 76-1: three pitches of 1.5):
// it stops so far off, and 2.5 with a recess of 2 or 2 drawn off; a recess of 5, an undercut or 4.5 drawn off let it in, as does a
// hole of another size. From the back of the plate it is the same, and so in a turned nut with its thread 2 or 5 behind its front.
func TestThreadStops(t *testing.T) {
	t.Parallel()
	const none = ""
	for _, c := range []struct{ thread, hole, lies, want string }{
		{"M10", "M10 tap", "on: plate.front, with: back, gap: -12", "thread-stops pin plate 4.5 4.5"},
		{"M10", "M10 tap", "on: plate.front, with: back, gap: -10.04", "thread-stops pin plate 2.5 4.5"},
		{"M10", "M10 tap", "on: plate.front, with: back, gap: -7.5", none},
		{"M10", "M10 tap", "on: plate.back, with: back, gap: -12", "thread-stops pin plate 4.5 4.5"},
		{"M10", "M10 tap, counterbore: {diameter: 12, depth: 2}", "on: plate.front, with: back, gap: -12", "thread-stops pin plate 2.5 4.5"},
		{"M10", "M10 tap, counterbore: {diameter: 12, depth: 5}", "on: plate.front, with: back, gap: -12", none},
		{"M10", "M10 tap, counterbore: {diameter: 12, depth: 5}", "on: plate.back, with: back, gap: -12", "thread-stops pin plate 4.5 4.5"},
		{"M10, undercut: DIN 76-A", "M10 tap", "on: plate.front, with: back, gap: -12", none},
		{"M10", "M12 tap", "on: plate.front, with: back, gap: -12", none},
		{"M10", "2", "on: plate.front, with: back, gap: -12", "thread-stops pin plate 2.5 4.5"},
		{"M10", "5", "on: plate.front, with: back, gap: -12", none},
		{"M12", "2", "on: plate.front, with: back, gap: -12", none},
		{"M8", "M8 tap", "on: plate.front, with: back, gap: -12", "thread-stops pin plate 3.8 3.8"}, // three of 1.25
	} {
		files := map[string]string{
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 200}\n",
			"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nholes:\n  - {name: h, at: [[0, 0]], size: " + c.hole + "}\n",
			"pin.yaml":   "part: pin\nkind: turned\nmaterial: S235\nstock: {round: 25, cut: saw}\nprofile:\n  outside: [{name: head, diameter: 20, length: 40}, {name: thread, thread: " + c.thread + ", length: 12}]\n",
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, plate.yaml, pin.yaml]\njoints:\n  - {name: foot, weld: {part: plate.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, at: [0, 0], front: down}}\n" +
				"loose:\n  - {part: pin, how: screwed in, after: foot, lies: [{" + c.lies + ", at: [0, 0]}]}\n"}
		if len(c.hole) == 1 {
			files["plate.yaml"] = "part: plate\nkind: turned\nmaterial: S235\nstock: {round: 65, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 20}]\n  inside: [{name: recess, diameter: 14, length: " + c.hole + "}, {name: thread, thread: M10, length: 15}]\n"
			files["job.yaml"] = strings.Replace(files["job.yaml"], "part: plate.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, at: [0, 0], front: down}", "part: plate.rim, to: base.outline, type: fillet}, place: {on: front, with: back, at: [0, 0], top: up}", 1)
		}
		if got := found(t, files, plan.ThreadStops); got != c.want {
			t.Errorf("%s in %s, %s: %q, want %q", c.thread, c.hole, c.lies, got, c.want)
		}
	}
}

// A cap nut with 34 of M30x2 goes 34 on a pin of 36 whose end is bevelled 2: the last 9.3 before its floor or a narrower bore are no
// full thread (DIN 76-1), and the pin reaches 7.3 into them. With a room of 34 behind the thread, with the nut 8 off, or with a bore as
// wide as the thread all through, it is home.
func TestThreadJams(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ inside, gap, want string }{
		{"{name: t, thread: M30x2, length: 34}", "-34", "thread-jams Nut Pin 7.3"},
		{"{name: t, thread: M30x2, length: 34}, {name: way, diameter: 20, length: 10}", "-33.96", "thread-jams Nut Pin 7.3"},
		{"{name: t, thread: M30x2, length: 34}, {name: room, diameter: 34, length: 5}", "-34", ""},
		{"{name: t, thread: M30x2, length: 34}", "-26", ""},
		{"{name: t, thread: M30x2, length: 44}", "-34", ""},
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, pin.yaml, nut.yaml]\njoints:\n  - {name: pin, press: {shaft: pin.seat, bore: plate.bore}, level: front-with-front}\n" +
				"loose:\n  - {part: nut, how: screwed on by hand, after: pin, lies: [{on: pin.back, with: front, gap: " + c.gap + "}]}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"pin.yaml":   "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 36, length: 90}\nprofile:\n  outside: [{name: seat, diameter: 32, fit: s6, length: 20}, {name: neck, diameter: 26, length: 10}, {name: end, thread: M30x2, length: 36}]\nchamfers: [{edge: seat-front, size: 1, angle: 15, for: lead-in}, {edge: end-back, size: 2}]\n",
			"nut.yaml":   "part: nut\ntitle: Nut\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 54}\nprofile:\n  outside: [{name: body, diameter: 55, length: 44}]\n  inside: [" + c.inside + "]\n",
		}, plan.ThreadJams)
		if got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.inside, c.gap, got, c.want)
		}
	}
}

// A bolt with a head of 30 lies in the bore of a plate of 10, its shoulder at the mouth: it falls through one of 30 or 38, does
// not hold on one that it stands over by less than 0.5, and holds where it stands over by more. Off the mouth, or in a bore that
// is no hole for it, nobody knows.
func TestHeadsPass(t *testing.T) {
	t.Parallel()
	const laid = "loose:\n  - {part: pin, how: put in from the front, after: rib, lies: [{on: base.front, with: back, gap: "
	for _, c := range []struct{ bore, gap, want string }{
		{"21", "-40", ""}, {"28.9", "-40", ""}, {"29.2", "-40", "head-passes pin head base bore 30 29.2"}, {"30", "-40", "head-passes pin head base bore 30 30"}, {"38", "-40", "head-passes pin head base bore 30 38"},
		{"38", "-35", ""}, {"50", "-40", ""}, {"30", "-40}], travels: {back: 20}} # ", ""}, {"30", "-40}], held: force} # ", ""},
	} {
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart + "bore: {diameter: " + c.bore + "}\n", "rib.yaml": ribPart,
			"pin.yaml": "part: pin\nkind: shaft\nquantity: 1\nmaterial: C45\nstock: {round: 32 mm, length: 64 mm}\nprofile:\n  outside:\n    - {name: head, diameter: 30, length: 20}\n    - {name: seat, diameter: 20, length: 40}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, pin.yaml", 1) + ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n" + laid + c.gap + "}]}\n"}))
		if got := argued(m, plan.HeadPasses); got != c.want {
			t.Errorf("bore %s, %s: %q, want %q", c.bore, c.gap, got, c.want)
		}
	}
}
