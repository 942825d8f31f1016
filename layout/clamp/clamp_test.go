package clamp

import (
	"errors"
	"math"
	"testing"

	"centrepop/layout/bolts"
)

func bolt(t *testing.T, size string) bolts.Bolt {
	t.Helper()
	b, err := bolts.Find(size)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// By hand, with ISO 4762 and ISO 273. A ring of 50.8 with a bore of 34.925, M4 (head 7
// × 4, hole 4.5, stress area 8.78): the middle of the wall is (25.4 + 17.4625)/2 =
// 21.43125. The rim of the head at 24.93125 meets the round √(25.4² − 24.93125²) =
// 4.857 from the slot, so the seat is 4.8; the axis √(25.4² − 21.43125²) = 13.633, so
// 8.833 deep. The thread ends in metal up to √(25.4² − 23.43125²) = 9.805: 14.605 long
// at the most, in stock 12; 12 − 4.8 − 0.8 = 6.4 engaged. Beside the hole 21.43125 −
// 17.4625 − 2.25 = 1.71875. The corner of the head: √(24.93125² + 8.8²) − 25.4 = 1.039 over the round.
//
// 8.8: 0.75 × proof 5100 N (ISO 898-1 Table 5, 8.78 × 580) = 3819 N; oiled 0.15 × 3819
// × 4 = 2.29 N m. Least 2 × 0.08 × 0.5 × 0.7 × 3819 × 34.925 = 7.47 N m, most π × 0.15
// × 1.3 × 3819 × 34.925 = 81.7.
func TestWork(t *testing.T) {
	t.Parallel()
	w, err := Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1.6, Bolt: bolt(t, "M4"), Class: "8.8"}.Work()
	if err != nil {
		t.Fatal(err)
	}
	for what, c := range map[string][3]float64{
		"at": {w.AtMm, 21.43125, 1e-9}, "hole": {w.HoleMm, 4.5, 1e-9}, "counterbore": {w.HeadMm, 8, 1e-9}, "seat": {w.SeatMm, 4.8, 1e-9},
		"deep": {w.DeepMm, 8.833, 1e-3}, "exit": {w.ExitMm, 13.633, 1e-3}, "long": {w.LongMm, 12, 1e-9}, "grip": {w.GripMm, 4, 1e-9},
		"thread": {w.HoldsMm, 6.4, 1e-9}, "inner": {w.InnerMm, 1.71875, 1e-9}, "outer": {w.OuterMm, 1.71875, 1e-9}, "proud": {w.ProudMm, 1.039, 1e-3},
		"torque": {w.TorqueNm, 2.29, 0.01}, "low": {w.LowNm, 7.47, 0.02}, "high": {w.HighNm, 81.7, 0.2},
	} {
		if math.Abs(c[0]-c[1]) > c[2] {
			t.Errorf("%s is %v, want %v", what, c[0], c[1])
		}
	}
	// A shop whose end mills go by sixteenths takes 5/16 in, 7.9375, for 8.
	if in, err := (Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1.6, Bolt: bolt(t, "M4"), Class: "8.8", ToolMm: 25.4 / 16}).Work(); err != nil || in.HeadMm != 7.9375 || in.SeatMm != w.SeatMm {
		t.Errorf("%v %+v", err, in)
	}
	// Nearer to the bore the seat lies deeper and the screw can be longer.
	in, err := Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1.6, AtMm: 20.8, Bolt: bolt(t, "M4"), Class: "8.8"}.Work()
	if err != nil || in.SeatMm <= w.SeatMm || in.LongMm != 16 || in.InnerMm >= w.InnerMm || in.OuterMm <= w.OuterMm {
		t.Errorf("%v %+v", err, in)
	}
	if w, err := (Ring{OutsideMm: 57.15, BoreMm: 34.925, SlotMm: 2, Bolt: bolt(t, "1/4-20 UNC"), Class: "A574"}).Work(); err != nil || math.Abs(w.LongMm-12.7) > 1e-9 && math.Abs(w.LongMm-15.875) > 1e-9 {
		t.Errorf("%v %+v", err, w)
	}
}

func TestNoRoom(t *testing.T) {
	t.Parallel()
	for _, r := range []Ring{
		{OutsideMm: 50.8, BoreMm: 46, SlotMm: 1.6, Class: "8.8"},             // wall under the head
		{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 12, Class: "8.8"},          // slot past the seat
		{OutsideMm: 50.8, BoreMm: 34.925, Class: "8.8"},                      // no slot
		{OutsideMm: 50.8, BoreMm: 60, SlotMm: 1, Class: "8.8"},               // no ring
		{OutsideMm: 50.8, BoreMm: 34.925, AtMm: 19, SlotMm: 1, Class: "8.8"}, // hole into the bore
		{OutsideMm: 50.8, BoreMm: 34.925, AtMm: 22, SlotMm: 1, Class: "8.8"}, // head over the rim
	} {
		r.Bolt = bolt(t, "M4")
		if w, err := r.Work(); !errors.Is(err, ErrNoRoom) {
			t.Errorf("%+v: %v %+v", r, err, w)
		}
	}
	if _, err := (Ring{OutsideMm: 50.8, BoreMm: 34.925, SlotMm: 1.6, Bolt: bolt(t, "M4"), Class: "grade 5"}).Work(); err == nil || errors.Is(err, ErrNoRoom) {
		t.Errorf("a class that M4 is not made in: %v", err)
	}
	if LeastWallMm(3) != 1 || LeastWallMm(8) != 2 || LeastGripMm(8) != 4 || LeastThreadMm(8, true) != 8 || LeastThreadMm(8, false) != 12 {
		t.Error("the proportions have changed")
	}
}
