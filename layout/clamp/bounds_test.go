package clamp

import (
	"errors"
	"math"
	"testing"
)

// TestRoomAtBounds: what has room has it at half a millimetre too, and what has none by a
// hair has none. M4 has a head of 7 × 4 (ISO 4762) and a hole of 4.5 (ISO 273).
func TestRoomAtBounds(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		r    Ring
		ok   bool
	}{
		{"a bore of 1.5", Ring{OutsideMm: 40, BoreMm: 1.5, SlotMm: 1}, true},
		{"no bore", Ring{OutsideMm: 40, BoreMm: 0, SlotMm: 1, AtMm: 10}, false},
		{"a cut of 0.5", Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 0.5}, true},
		// 17.4625 + 2.25 = 19.7125 is where the hole meets the bore.
		{"half a millimetre to the bore", Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1, AtMm: 20.2125}, true},
		{"the hole touches the bore", Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1, AtMm: 19.7125}, false},
		// The seat is at 4.8: a cut of 8.8 leaves 0.4, one of 9.6 nothing.
		{"little under the head", Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 8.8}, true},
		{"nothing under the head", Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 9.6}, false},
		// Rim of the head on the round: 25.4 − 3.5.
		{"the head at the rim", Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1, AtMm: 21.9}, false},
	} {
		c.r.Bolt, c.r.Class = bolt(t, "M4"), "8.8"
		if w, err := c.r.Work(); (err == nil) != c.ok || err != nil && !errors.Is(err, ErrNoRoom) {
			t.Errorf("%s: %v %+v", c.name, err, w)
		}
	}
	r := Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1.6, Bolt: bolt(t, "M4"), Class: "8.8"}
	r.Bolt.SocketHeadDiameterMm = 0
	if _, err := r.Work(); !errors.Is(err, ErrNoRoom) {
		t.Errorf("a screw without a socket head: %v", err)
	}
}

// TestCounterbores: a counterbore is about a seventh wider than its head, to half a
// millimetre, and at least one: M8 13 + 2 (1.82), M12 18 + 2.5 (2.52), M20
// 30 + 4 (4.2) (heads of ISO 4762); by sixteenths 15 becomes 9/16 = 14.2875, and by
// half millimetres stays.
func TestCounterbores(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		size       string
		tool, want float64
	}{{"M8", 0, 15}, {"M12", 0, 20.5}, {"M20", 0, 34}, {"M8", 25.4 / 16, 14.2875}, {"M8", 0.5, 15}} {
		w, err := Ring{OutsideMm: 200, BoreMm: 100, SlotMm: 2, Bolt: bolt(t, c.size), Class: "8.8", ToolMm: c.tool}.Work()
		if err != nil || w.HeadMm != c.want {
			t.Errorf("%s by %v: Ø%v, %v, want %v", c.size, c.tool, w.HeadMm, err, c.want)
		}
	}
}

// TestTorqueHeld: in newton metres of the screw's force and the bore in metres: least
// 2 × 0.08 × 0.5 F d of the least preload, most π × 0.15 F d of the largest.
func TestTorqueHeld(t *testing.T) {
	t.Parallel()
	w, err := Ring{OutsideMm: 200, BoreMm: 100, SlotMm: 2, Bolt: bolt(t, "M20"), Class: "8.8"}.Work()
	if err != nil {
		t.Fatal(err)
	}
	// Three quarters of the proof load of ISO 898-1, which scatters by 30 %.
	const preloadN = 0.75 * 147_000
	for what, c := range map[string][2]float64{"least": {w.LowNm, 0.08 * 0.7 * preloadN * 0.1}, "most": {w.HighNm, math.Pi * 0.15 * 1.3 * preloadN * 0.1}} {
		if math.Abs(c[0]-c[1]) > 1e-6*c[1] {
			t.Errorf("%s %v N m, want %v", what, c[0], c[1])
		}
	}
}
