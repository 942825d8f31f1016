package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A pin 12 long 40 (±0.2, ISO 2768-m) through a hole in a plate, its nose 14 behind the plate before it travels. h9 is
// 11.957 to 12 (ISO 286-2). What is driven in may be larger, and what does not reach the hole.
func TestPinsGoThrough(t *testing.T) {
	t.Parallel()
	const through = "on: plate.front, with: back, gap: -40"
	for _, c := range []struct{ hole, body, how, lies, travels, want string }{
		{"12.5", "12", "by hand", through, "", ""},
		{"12.3", "12", "by hand", through, "", "pin-tight Pin body Plate hole 0.1"},
		{"12", "12", "by hand", through, "", "pin-tight Pin body Plate hole 0.4"},
		{"12.3", "12.0006", "by hand", through, "", "pin-tight Pin body Plate hole 0.101"},
		{"12.3", "12", "driven in", through, "", ""},
		{"11.9", "12", "by hand", through, "", "pin-tight Pin body Plate hole 0.1"}, // of no class
		{"12.3", "12, fit: h9", "by hand", through, "", ""},
		{"M12 tap", "12", "by hand", through, "", ""}, // it is screwed in
		{"12.3, depth: 15", "12", "by hand", "on: plate.front, with: front, gap: -15", "", "pin-tight Pin body Plate hole 0.1"},
		{"12.3, face: back, depth: 15", "12", "by hand", "on: plate.back, with: front, gap: -15", "", "pin-tight Pin body Plate hole 0.1"},
		{"12.3, face: back, depth: 15", "12", "by hand", "on: plate.front, with: front", "", ""}, // the hole is not there
		{"13.9", "12", "by hand", through, "", ""},
		{"13.9", "12", "by hand", through, ", travels: {front: 20}", "pin-tight Pin nose Plate hole 0.5"},
		{"13.9", "12", "by hand", through, ", travels: {back: 20}", ""},
		{"13.9", "12", "by hand", through, ", travels: {front: 0.4}", ""},
	} {
		face := ", face: front"
		if strings.Contains(c.hole, "face") {
			face = ""
		}
		tolerance := "tolerance: m\n"
		if c.hole == "11.9" {
			tolerance = ""
		}
		got := found(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\n" + tolerance + "parts: [plate.yaml, base.yaml, pin.yaml]\njoints:\n  - {name: on, weld: {part: plate.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, from-left: 50, from-bottom: 20, front: left}}\nloose:\n  - {part: pin, how: " + c.how + ", after: on, lies: [{" + c.lies + "}]" + c.travels + "}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nholes: [{name: hole" + face + ", at: [[0, 0]], size: " + c.hole + "}]\n",
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\n",
			"pin.yaml":   "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 20, length: 62}\nprofile:\n  outside: [{name: body, diameter: " + c.body + ", length: 30}, {name: nose, diameter: 14, length: 20}]\n",
		}, plan.PinTight)
		if got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// What is pressed into a hole is larger than it at some limits: Ø12 f7 is 11.966 to 11.984, n6 12.012 to 12.023,
// k6 12.001 to 12.012, H7 12 to 12.018 (ISO 286-2). What is not said to be pressed, and what lies in no hole of its size, is not judged.
func TestPressedInIsLarger(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ body, how, want string }{
		{"12, fit: f7", "pressed into the plate", "pressed-loose Pin body Plate hole 0.016"},
		{"12, fit: {limits: [11.96, 11.9837]}", "pressed into the plate", "pressed-loose Pin body Plate hole 0.016"},
		{"12, fit: f7", "driven in", "pressed-loose Pin body Plate hole 0.016"},
		{"12, fit: f7", "slid in", ""},
		{"12, fit: f7", "on the driven side", ""},
		{"12, fit: k6", "pressed in", ""},
		{"12, fit: n6", "pressed in", ""},
		{"10, fit: n6", "pressed into the plate", "pressed-loose Pin body Plate hole 1.981"}, // 10.01 to 10.019
		{"9, fit: n6", "pressed into the plate", ""},
		{"M12", "pressed into the plate", ""}, // by its thread nobody presses
	} {
		size := "diameter: " + c.body
		if strings.HasPrefix(c.body, "M") {
			size = "thread: " + c.body
		}
		got := found(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, base.yaml, pin.yaml]\njoints:\n  - {name: on, weld: {part: plate.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, from-left: 50, from-bottom: 20, front: left}}\nloose:\n  - {part: pin, how: " + c.how + ", after: on, lies: [{on: plate.front, with: back, gap: -20}]}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nholes: [{name: hole, face: front, at: [[0, 0]], size: {diameter: 12, fit: H7}}]\n",
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\n",
			"pin.yaml":   "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 20, length: 62}\nprofile:\n  outside: [{name: body, " + size + ", length: 30}]\n",
		}, plan.PressedLoose)
		if got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// A shaft of 25 f7 (24.959 to 24.98, ISO 286-2) runs in a bush of 25 F8, and one of 24 f7 in none of that; a bore of H11
// is no fit. Where one of the two has a keyway the other has one, as far as the shaft lies in half of the bore.
func TestLooseShaftInItsHub(t *testing.T) {
	t.Parallel()
	const key = "keyways: [{name: key, in: "
	for _, c := range []struct{ shaft, bore, ofShaft, ofBore, gap, want string }{
		{"25, fit: f7", "25, fit: F8", "", "", "-20", ""},
		{"24, fit: f7", "25, fit: F8", "", "", "-20", "pin-unlike Shaft body Hub bore 24 25"},
		{"24.1234, fit: f7", "25.0004, fit: F8", "", "", "-20", "pin-unlike Shaft body Hub bore 24.123 25"},
		{"18, fit: f7", "25, fit: F8", "", "", "-20", ""},
		{"24", "25, fit: F8", "", "", "-20", ""},
		{"24, fit: f7", "25, fit: H11", "", "", "-20", ""},
		{"25, fit: h6", "25, fit: H7", key + "body, length: 14, axial: 50}]", key + "bore}]", "-20", ""},
		{"25, fit: h6", "25, fit: H7", key + "body, length: 14, axial: 50}]", "", "-20", "pin-keyless Shaft body Hub bore"},
		{"25, fit: h6", "25, fit: H7", key + "body, length: 14, axial: 10}]", "", "-20", ""},
		{"25, fit: h6", "25, fit: H7", "", key + "bore}]", "-20", "pin-keyless Hub bore Shaft body"},
		{"24.5, fit: h6", "25, fit: H7", "", key + "bore}]", "-20", "pin-unlike Shaft body Hub bore 24.5 25; pin-keyless Hub bore Shaft body"}, // half a millimetre is still its size
		{"24.4, fit: h6", "25, fit: H7", "", key + "bore}]", "-20", "pin-unlike Shaft body Hub bore 24.4 25"},
		{"25, fit: h6", "25, fit: H7", "", key + "bore}]", "-10", "pin-keyless Hub bore Shaft body"},
		{"25, fit: h6", "25, fit: H7", "", key + "bore}]", "-9.9", ""},
		{"25, fit: h6", "25, fit: H7", "", key + "bore}]", "-70", "pin-keyless Hub bore Shaft body"}, // its front 10 in
		{"25, fit: h6", "25, fit: H7", "", key + "bore}]", "-70.1", ""},
		{"25, fit: h6", "25, fit: H7", "", key + "bore}]", "hub", "pin-keyless Hub bore Shaft body"},
	} {
		fast, loose := "hub", "shaft"
		if c.gap == "hub" { // that is put on
			fast, loose, c.gap = loose, fast, "-20"
		}
		got := found(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [hub.yaml, base.yaml, shaft.yaml]\njoints:\n  - {name: on, weld: {part: " + fast + ".body, to: base.outline, type: fillet}, place: {on: front, with: back, at: [0, 0], top: up}}\nloose:\n  - {part: " + loose + ", how: slid in, after: on, lies: [{on: " + fast + ".front, with: back, gap: " + c.gap + "}]}\n",
			"hub.yaml":   "part: hub\ntitle: Hub\nkind: turned\nmaterial: S235\nstock: {round: 60}\nprofile:\n  outside: [{name: body, diameter: 50, length: 20}]\n  inside: [{name: bore, diameter: " + c.bore + ", length: 20}]\n" + c.ofBore + "\n",
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\n",
			"shaft.yaml": "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 62}\nprofile:\n  outside: [{name: body, diameter: " + c.shaft + ", length: 60}]\n" + c.ofShaft + "\n",
		}, plan.PinUnlike, plan.PinKeyless)
		if got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// The bore of a boss is finished after the last weld of what it is welded into: a pin comes with that, not
// before, and in its step last.
func TestPinsComeLate(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ after, weld, want string }{
		{"boss", ", after-weld: yes", "pin-early Pin Boss bore boss rib"},
		{"rib", ", after-weld: yes", ""},
		{"rib, first: yes", ", after-weld: yes", "pin-early Pin Boss bore rib rib"},
		{"boss", "", ""},
	} {
		got := found(t, map[string]string{
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, boss.yaml, pin.yaml", 1) + "  - {name: boss, weld: {part: boss.body, to: base.outline, type: fillet}, place: {on: front, with: back, at: [100, 0], top: up}, before: rib}\n" + ribWeld +
				", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\nloose:\n  - {part: pin, how: by hand, after: " + c.after + ", lies: [{on: boss.front, with: back, gap: -20}]}\n",
			"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"boss.yaml": "part: boss\ntitle: Boss\nkind: turned\nmaterial: S235\nstock: {round: 50}\nprofile:\n  outside: [{name: body, diameter: 45, length: 30}]\n  inside: [{name: bore, diameter: 12, fit: H9, length: 30" + c.weld + "}]\n",
			"pin.yaml":  "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 16}\nprofile:\n  outside: [{name: body, diameter: 12, fit: f7, length: 40}]\n",
		}, plan.PinEarly)
		if got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}
