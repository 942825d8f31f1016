package review

import (
	"fmt"
	"testing"
)

// TestScrewBesideKey: in a bore of 40 the key 12 wide of DIN 6885-1 reaches 6 to both sides, 17.19° on the round; square
// to it is a quarter turn, 15° more or less.
func TestScrewBesideKey(t *testing.T) {
	t.Parallel()
	const hub = "part: p\nkind: turned\nmaterial: C45\nstock: {round: 80, length: 62, cut: saw}\nprofile:\n  outside:\n    - {name: body, diameter: 75, length: 60}\n  inside:\n    - {name: bore, diameter: 40, fit: H7, length: 40}\n    - {name: wide, diameter: 50, length: 20}\nkeyways:\n  - {name: key, in: bore, clock: %s}\nradial:\n  - {name: lock, %s, from: front, note: %s}\n"
	for _, c := range []struct {
		key, hole, note string
		found           bool
	}{
		{"0", "clock: 0, axial: 20, size: M8 tap", "set screw", false},
		{"0", "clock: 17.1, axial: 20, size: M8 tap", "set screw", false},
		{"0", "clock: 17.3, axial: 20, size: M8 tap", "set screw", true},
		{"0", "clock: 342.9, axial: 20, size: M8 tap", "set screw", false},
		{"0", "clock: 342.7, axial: 20, size: M8 tap", "set screw", true},
		{"0", "clock: 45, axial: 20, size: M8 tap", "set screw", true},
		{"0", "clock: 74.9, axial: 20, size: M8 tap", "set screw", true},
		{"0", "clock: 75.1, axial: 20, size: M8 tap", "set screw", false},
		{"0", "clock: 90, axial: 20, size: M8 tap", "set screw", false},
		{"0", "clock: 104.9, axial: 20, size: M8 tap", "grub screw", false},
		{"0", "clock: 105.1, axial: 20, size: M8 tap", "grub screw", true},
		{"0", "clock: 180, axial: 20, size: M8 tap", "set screw", true},
		{"0", "clock: 270, axial: 20, size: M8 tap", "set screw", false},
		{"350", "clock: 80, axial: 20, size: M8 tap", "set screw", false},
		{"350", "clock: 35, axial: 20, size: M8 tap", "set screw", true},
		{"0", "clock: 45, axial: 50, size: M8 tap", "set screw", false}, // not in the keyed bore
		{"0", "clock: 45, axial: 20, size: M8 tap", "oil cup", false},
		{"0", "clock: 45, axial: 20, size: 8", "set screw", false},
	} {
		if got := alone(t, "key-screw", fmt.Sprintf(hub, c.key, c.hole, c.note)); len(got) > 0 != c.found {
			t.Errorf("key %s, %s, %s: %v", c.key, c.hole, c.note, got)
		}
	}
}
