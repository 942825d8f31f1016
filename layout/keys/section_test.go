package keys

import "testing"

// A 10 × 8 key has t1 5 and t2 3.3 by DIN 6885-1 (engineersedge.com) whatever
// the shaft; a 1/4 square key in 1-1/4 in has S 1.112 and T 1.367 in
// (Machinery's Handbook, ANSI B17.1). A 3/16 square key in 1-1/4 in by the same
// formula: chord 1.23586, S 1.14918, T 1.34168 in.
func TestOf(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		dia, w, h                float64
		inch                     bool
		shaft, hub, scale, least float64
	}{
		{45, 10, 8, false, 40, 48.3, 1, 1e-9},
		{100, 56, 32, false, 80, 112.4, 1, 1e-9},
		{31.75, 6.35, 6.35, true, 1.112, 1.367, 25.4, 5e-4},
		{31.75, 4.7625, 4.7625, true, 1.14918, 1.34168, 25.4, 5e-6},
	} {
		k, err := Of(c.dia, c.w, c.h, c.inch)
		if err != nil {
			t.Fatal(err)
		}
		if !near(k.ShaftAcrossMm/c.scale, c.shaft, c.least) || !near(k.HubAcrossMm/c.scale, c.hub, c.least) {
			t.Errorf("%v × %v in %v: %v and %v across, want %v and %v", c.w, c.h, c.dia, k.ShaftAcrossMm/c.scale, k.HubAcrossMm/c.scale, c.shaft, c.hub)
		}
	}
	for _, c := range [][3]float64{{40, 10, 9}, {40, 11, 8}, {10, 10, 8}, {40, 0, 8}} {
		if _, err := Of(c[0], c[1], c[2], false); err == nil {
			t.Errorf("no error for %v", c)
		}
	}
}

// Widths: 10 N9 is 9.964 to 10.000 and 10 JS9 9.982 to 10.018 (ISO 286-2); an
// inch keyway is up to 0.002 in wider than its key to 1/2 in, 0.003 to 1 in and
// 0.004 above (ASME B17.1 class 1, as engineersedge.com prints it).
func TestKeyway(t *testing.T) {
	t.Parallel()
	metric, err := For(38)
	if err != nil {
		t.Fatal(err)
	}
	for hub, want := range map[bool][2]float64{false: {9.964, 10}, true: {9.982, 10.018}} {
		l, _, err := metric.Keyway(hub)
		if err != nil || !near(l.MinMm, want[0], 1e-6) || !near(l.MaxMm, want[1], 1e-6) {
			t.Errorf("hub %v: %v to %v, %v", hub, l.MinMm, l.MaxMm, err)
		}
	}
	for in, wider := range map[float64]float64{0.25: 0.002, 0.5: 0.002, 0.625: 0.003, 1: 0.003, 1.25: 0.004, 3.5: 0.004} {
		l, source, err := Parallel{WidthMm: in * mmPerInch, Standard: "ASME B17.1"}.Keyway(true)
		if err != nil || !near(l.MinMm, in*25.4, 1e-9) || !near(l.MaxMm, (in+wider)*25.4, 1e-9) || source.String() != "ASME B17.1-1967 class 1" {
			t.Errorf("%v in: %v to %v from %v, %v", in, l.MinMm/25.4, l.MaxMm/25.4, source, err)
		}
	}
	if _, _, err := (Parallel{WidthMm: 100}).Keyway(false); err == nil {
		t.Error("no error for 100 mm")
	}
}
