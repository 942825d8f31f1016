package part

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// The record checks where a pattern lies, not only its chords: on a pitch circle
// that two gaps far apart are alike within twice ±0.2 (ISO 2768-1 Table 1, class
// m, over 30 to 120 is ±0.3; 6 to 30 is ±0.2), on a plate the first hole from two
// edges, less half the pin, from flame-cut ones no nearer than they are cut; and the sizes of windows and counterbores.
func TestRecordSaysWhereThingsAre(t *testing.T) {
	t.Parallel()
	const ring = "part: p\nkind: flange\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {circle: 120}\nbore: {diameter: 40, fit: H7}\nholes: [{name: bolts, circle: {pcd: 90, count: 5}, size: 9, counterbore: {diameter: 15, depth: 7}}]\n"
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [100, 80]}\nholes: [{name: a, at: [[-30, -20], [30, 20]], size: 10}]\n"
	const tube = "part: p\nkind: shaft\nmaterial: S235\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: a, diameter: 40, length: 60}\nradial:\n  - {name: w, clock: 90, axial: 30, slot: {around: 8, along: 20}, depth: 5}\n"
	const round = "part: p\nkind: tube\nmaterial: S235\nstock: {tube: 60 mm, wall: 10 mm}\ntube: {outside: 60, wall: 10, length: 150}\nradial:\n  - {name: vent, clock: [0, 90], axial: 40, from: back, size: 6}\n  - {name: port, clock: 0, axial: 30, size: M10x1 tap}\n  - {name: dent, clock: 0, axial: 90, size: 8, depth: 5}\n  - {name: oil, clock: 180, axial: 30, size: M2 tap}\n  - {name: screw, clock: 270, axial: 30, size: M6 clearance}\n  - {name: feed, clock: 90, axial: 110, size: 1/4 NPT tap}\n"
	const mouths = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {rectangle: [100, 80]}\nholes:\n  - {name: flush, at: [[0, 0]], size: M8 clearance, countersink: {diameter: 18, angle: 90}}\n  - {name: dowel, at: [[20, 0]], size: {diameter: 6, fit: H7}, depth: 12}\n  - {name: pin, at: [[40, 0]], size: 8, depth: 12}\nslots:\n  - {name: tray, at: [[-30, 0]], width: 9, length: 30, depth: 6}\n  - {name: open, at: [[-10, 20]], width: 9, length: 30, turn: 90}\n"
	for source, want := range map[string][]string{
		// ISO 2768-1 Table 1, class m: 3 to 6 ±0.1, 6 to 30 ±0.2, 30 to 120 ±0.3. From the
		// face that the drawing names, not 110 from the other.
		round: {"vent 2 × Ø6 5.9 – 6.1", "vent at 0°, 90° 40 from BACK 39.7 – 40.3", "port M10x1 runs freely, square", "dent Ø8, 5 deep 7.8 – 8.2 × 4.9 – 5.1", "oil M2 runs freely 3 deep, square", "screw Ø6.6 for M6 Ø6.6, bolt passes",
			"feed 1/4-18 NPT fitting goes in 5.79 mm by hand, 1 turn more or less"}, // L1, ASME B1.20.1: 0.2278 in
		mouths: {"flush countersink 90°, Ø at the face 18 18.0 – 18.4", "dowel Ø6 H7, drill Ø5.8, ream, 12 deep 6.000 – 6.012 × 11.8 – 12.2", "pin Ø8, 12 deep 7.8 – 8.2 × 11.8 – 12.2",
			"tray width × length × depth 9 × 30 × 6 8.8 – 9.2 × 29.8 – 30.2 × 5.9 – 6.1", "open width × length 9 × 30 8.8 – 9.2 × 29.8 – 30.2"},
		ring:  {"bolts bore to pin, at 1 and 3  alike within 0.6", "bolts counterbore Ø15, depth 7 6.8 – 7.2"},
		plate: {"a 1, left and bottom edge to pin 15, 15 14.8 – 15.2, 14.8 – 15.2"},
		strings.Replace(plate, "laser", "flame", 1):                                             {"outline 100 × 80 98.7 – 101.3 × 78.7 – 81.3", "a 1, left and bottom edge to pin 15, 15 13.9 – 16.1, 13.9 – 16.1"},
		strings.Replace(strings.Replace(ring, ", fit: H7", "", 1), "mm}", "mm, cut: flame}", 1): {"bolts bore to pin, at 1 and 3  alike within 3.6"},
		tube: {"w around × along × deep 8 × 20 × 5 8.0 – 8.2 × 19.8 – 20.2 × 4.9 – 5.1", "w at 90°, round from TOP 31.42 30.2 – 32.6"}, // 40 ± 0.3 across: 0.24 more
		strings.Replace(tube, "clock: 90", "clock: 270", 1): {"w at 270°, round from TOP, the short way 31.42 30.2 – 32.6"},
	} {
		var all []string
		for _, c := range work(t, "mm", source).Out.Checks {
			all = append(all, c.What+" "+c.Wanted+" "+c.Limits)
		}
		for _, w := range want {
			if !strings.Contains(strings.Join(all, "\n"), w) {
				t.Errorf("no %q in\n%s", w, strings.Join(all, "\n"))
			}
		}
		if strings.Contains(strings.Join(all, "\n"), "slides") {
			t.Errorf("no bolt is known to slide in a slot:\n%s", strings.Join(all, "\n"))
		}
	}
}

// A hub's keyway shows in the bore of both faces it runs out at, mirrored on the
// back; a blind one only where it is open.
func TestKeywayOnFaces(t *testing.T) {
	t.Parallel()
	k := &Keyway{Row: plan.KeywayRow{Inside: true, DiameterMm: 10, WidthMm: 6, ToMm: 20, ClockDeg: 90}, across: Sized{NominalMm: 12}}
	front, back := k.notch(parts.Front), k.notch(parts.Back)
	if want := []plan.XY{{XMm: 4, YMm: 3}, {XMm: 7, YMm: 3}, {XMm: 7, YMm: -3}, {XMm: 4, YMm: -3}}; len(front) != 4 || front[0] != want[0] || front[1] != want[1] || front[2] != want[2] || front[3] != want[3] {
		t.Errorf("front %v, want %v", front, want)
	}
	if back[1] != (plan.XY{XMm: -7, YMm: -3}) {
		t.Errorf("back %v", back)
	}
	for _, c := range []struct {
		from, to    float64
		front, back bool
	}{{0, 40, true, true}, {0, 25, true, false}, {15, 40, false, true}, {5, 35, false, false}} {
		k.Row.FromMm, k.Row.ToMm = c.from, c.to
		if k.opensAt(parts.Front, 40) != c.front || k.opensAt(parts.Back, 40) != c.back {
			t.Errorf("from %v to %v of 40", c.from, c.to)
		}
	}
	k.Row.Inside, k.Row.DepthMm, k.Row.ClockDeg = false, 2, 0
	if got := k.notch(parts.Front)[1]; got != (plan.XY{XMm: -3, YMm: 3}) {
		t.Errorf("the floor of a shaft's keyway at %v", got)
	}
}

// TestEdgeThatFacesTheHole: 140 × 60 with round ends is straight from -40 to 40: under a hole at 55 the bottom edge has left its
// line, under one at 35 not; the end faces what lies on the axis alone.
func TestEdgeThatFacesTheHole(t *testing.T) {
	t.Parallel()
	const arm = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: saw}\noutline: {slot: [140, 60]}\nholes: [{name: h, FACEat: [[AT]], size: 8 mm}]\n"
	for _, c := range []struct{ face, at, want string }{
		{"", "55, 0", "straight edge laid on the bottom edge, calipers from it"},
		{"", "35, 0", "calipers"},
		{"", "35, 10", "straight edge laid on the left edge, calipers from it"},
		{"face: back, ", "-55, 10", "straight edge laid on the left and bottom edge, calipers from it"},
		{"face: back, ", "-35, 0", "calipers"},
	} {
		m := work(t, "mm", strings.NewReplacer("FACE", c.face, "AT", c.at).Replace(arm))
		if got := check(m, "h 1, left and bottom edge to pin"); got == nil || got.Gauge != c.want {
			t.Errorf("%+v: %+v", c, got)
		}
	}
}
