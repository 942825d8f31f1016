package cutting

import (
	"fmt"
	"math"
	"testing"

	"centrepop/layout/threads"
	"centrepop/parts/geom"
)

var finishNames = [...]string{"drilled", "reamed", "adjust-reamed", "bored", "tapped", "bored then tapped"}

// way writes a way in a line: drills, finish, leave.
func way(w Way) string {
	out := ""
	for _, s := range w.Drills {
		out += s.Size.Name + " "
	}
	out += finishNames[w.Finish]
	if w.LeaveMm != 0 {
		out += fmt.Sprintf(" leave %.3f", w.LeaveMm)
	}
	if w.BoreToMm != 0 {
		out += fmt.Sprintf(" bore to %.2f", w.BoreToMm)
	}
	if w.BothEnds {
		out += " both ends"
	}
	return out
}

// Each line by hand from the rules in holes.go; limits by ISO 286-1, ISO 2768-1
// and ISO 273.
func TestWayFor(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		what string
		hole Hole
		want string
	}{
		{"clearance M8", Hole{NominalMm: 9, Clearance: true, LargestMm: 25}, "9.0 drilled"},
		{"open out", Hole{NominalMm: 40, LargestMm: 50}, "10.0 20.0 40.0 drilled"},
		{"over the largest drill", Hole{NominalMm: 60, LargestMm: 25}, "6.5 12.5 25.0 bored leave 35.000"},
		{"by the largest drill", Hole{NominalMm: 25, LargestMm: 25}, "6.5 12.5 25.0 drilled"},
		{"by the largest drill, in inches", Hole{NominalMm: 25.4, LargestMm: 25.4, System: Inch}, "1/4 in 1/2 in 1 in drilled"},
		{"30 a hair over the largest drill", Hole{NominalMm: 30, LargestMm: 29.99}, "7.5 15.0 29.75 bored leave 0.250"},
		{"half an inch in millimetres", Hole{NominalMm: 12.7, LargestMm: 25}, "6.5 12.7 drilled"},
		{"half an inch in inches", Hole{NominalMm: 12.7, LargestMm: 25.4, System: Inch}, "1/4 in 1/2 in drilled"},
		{"1/2 clearance in inches, 0.562 in", Hole{NominalMm: 14.2748, Clearance: true, LargestMm: 25.4, System: Inch}, "9/32 in 9/16 in drilled"},
		{"30 with a drill to 23", Hole{NominalMm: 30, LargestMm: 23}, "6.0 11.5 23.0 bored leave 7.000"},
		{"14 in 14.088 to 14.487", Hole{NominalMm: 14, MinMm: 14.088, MaxMm: 14.487, LargestMm: 23}, "7.5 14.25 drilled"},
		{"14 m, ISO 2768", Hole{NominalMm: 14, MinMm: 13.8, MaxMm: 14.2, LargestMm: 23}, "7.0 14.0 drilled"},
		{"10 in 10.5 to 11.5: the middle of what a drill may be", Hole{NominalMm: 10, MinMm: 10.5, MaxMm: 11.5, LargestMm: 23}, "5.5 10.9 drilled"},
		{"10 H7", Hole{NominalMm: 10, MinMm: 10, MaxMm: 10.015, Class: "H7", LargestMm: 23}, "9.8 reamed leave 0.200"},
		{"20 H8", Hole{NominalMm: 20, MinMm: 20, MaxMm: 20.033, Class: "H8", LargestMm: 23}, "10.0 19.75 reamed leave 0.250"},
		{"25 H7", Hole{NominalMm: 25, MinMm: 25, MaxMm: 25.021, Class: "H7", LargestMm: 30}, "6.5 12.5 24.5 reamed leave 0.500"},
		{"1/2 H7 in inches", Hole{NominalMm: 12.7, MinMm: 12.7, MaxMm: 12.718, Class: "H7", LargestMm: 25.4, System: Inch}, "1/4 in 31/64 in reamed leave 0.397"},
		{"1/4 H7 in inches", Hole{NominalMm: 6.35, MinMm: 6.35, MaxMm: 6.365, Class: "H7", LargestMm: 25.4, System: Inch}, "15/64 in reamed leave 0.397"},
		{"20 E9: no reamer", Hole{NominalMm: 20, MinMm: 20.04, MaxMm: 20.092, Class: "E9", LargestMm: 23}, "10.0 19.5 bored leave 0.566"},
		{"12 in 12.1 to 12.2: what is left counts to what is bored", Hole{NominalMm: 12, MinMm: 12.1, MaxMm: 12.2, LargestMm: 23}, "6.0 11.6 bored leave 0.550"},
		{"20 H11: a drill cuts too large", Hole{NominalMm: 20, MinMm: 20, MaxMm: 20.13, Class: "H11", LargestMm: 23}, "10.0 19.5 bored leave 0.500"},
		{"20 H12", Hole{NominalMm: 20, MinMm: 20, MaxMm: 20.21, Class: "H12", LargestMm: 23}, "10.0 20.0 drilled"},
		{"10 D11 by drill", Hole{NominalMm: 10, MinMm: 10.04, MaxMm: 10.25, Class: "D11", LargestMm: 23}, "5.5 10.1 drilled"},
		{"10.3 H7: no such reamer", Hole{NominalMm: 10.3, MinMm: 10.3, MaxMm: 10.318, Class: "H7", LargestMm: 23}, "9.8 bored leave 0.500"},
		{"6 E9: no bar goes in", Hole{NominalMm: 6, MinMm: 6.02, MaxMm: 6.05, Class: "E9", LargestMm: 23}, "5.8 adjust-reamed leave 0.235"},
		{"20 H6 three diameters deep", Hole{NominalMm: 20, MinMm: 20, MaxMm: 20.013, Class: "H6", DepthMm: 60, LargestMm: 23}, "10.0 19.5 bored leave 0.500"},
		{"20 H6 deeper", Hole{NominalMm: 20, MinMm: 20, MaxMm: 20.013, Class: "H6", DepthMm: 61, LargestMm: 23}, "10.0 19.5 bored leave 0.500 both ends"},
		{"20 H6 too deep for a bar", Hole{NominalMm: 20, MinMm: 20, MaxMm: 20.013, Class: "H6", DepthMm: 121, LargestMm: 23}, "10.0 19.5 adjust-reamed leave 0.500"},
		{"0.66 in, 5 in deep", Hole{NominalMm: 16.764, MinMm: 16.5, MaxMm: 17.0, DepthMm: 127, LargestMm: 23}, "8.5 16.75 drilled"},
		{"10 drilled eleven diameters deep", Hole{NominalMm: 10, DepthMm: 110, LargestMm: 23}, "10.0 drilled both ends"},
		{"10 drilled ten diameters deep", Hole{NominalMm: 10, DepthMm: 100, LargestMm: 23}, "10.0 drilled"},
		{"G1 1/2 by a drill to 30", Hole{NominalMm: 47.803, Thread: thread(t, "G1 1/2"), LargestMm: 30}, "7.5 15.0 30.0 bored then tapped leave 15.000 bore to 45.00"},
		{"M10", Hole{NominalMm: 10, Thread: thread(t, "M10"), LargestMm: 30}, "8.5 tapped"},
		{"18.1 clearance", Hole{NominalMm: 18.1, Clearance: true, LargestMm: 30}, "9.0 17.5 bored leave 0.600"},
		{"18.2 clearance", Hole{NominalMm: 18.2, Clearance: true, LargestMm: 30}, "9.5 18.25 drilled"},
		{"18.04 a hair over", Hole{NominalMm: 18.04, LargestMm: 30}, "9.0 18.0 drilled"},
		{"10 in 10 to 10.4: at the nominal size", Hole{NominalMm: 10, MinMm: 10, MaxMm: 10.4, LargestMm: 23}, "10.0 drilled"},
		{"5.04 clearance", Hole{NominalMm: 5.04, Clearance: true, LargestMm: 23}, "5.0 drilled"},
		{"5.06 clearance", Hole{NominalMm: 5.06, Clearance: true, LargestMm: 23}, "5.1 drilled"},
		{"5.06", Hole{NominalMm: 5.06, LargestMm: 23}, "5.1 drilled"},
		// Between #13, 0.185 in, and 3/16 in the nearer one.
		{"4.72 in inches", Hole{NominalMm: 4.72, LargestMm: 25.4, System: Inch}, "#13 drilled"},
		{"4.74 in inches", Hole{NominalMm: 4.74, LargestMm: 25.4, System: Inch}, "3/16 in drilled"},
		// Over an inch drills go by thirty-seconds: 1 27/32 leaves 0.169 of the 0.397 for a
		// reamer of 47, 1 11/16 leaves 0.137 of that of 43, less than half; 1 7/32 under 1 1/4 leaves 0.794.
		{"47 H7 by drills in inches", Hole{NominalMm: 47, MinMm: 47, MaxMm: 47.025, Class: "H7", LargestMm: 50.8, System: Inch}, "1/4 in 15/32 in 29/32 in 1-13/16 in bored leave 0.963"},
		{"43 H7 by drills in inches", Hole{NominalMm: 43, MinMm: 43, MaxMm: 43.025, Class: "H7", LargestMm: 50.8, System: Inch}, "7/32 in 7/16 in 27/32 in 1-21/32 in bored leave 0.931"},
		{"1 1/4 H7 in inches", Hole{NominalMm: 31.75, MinMm: 31.75, MaxMm: 31.775, Class: "H7", LargestMm: 50.8, System: Inch}, "5/16 in 5/8 in 1-7/32 in reamed leave 0.794"},
	} {
		w, err := WayFor(c.hole)
		if got := way(w); err != nil || got != c.want {
			t.Errorf("%s: %s (%v), want %s", c.what, got, err, c.want)
		}
	}
}

func thread(t *testing.T, name string) *threads.Thread {
	t.Helper()
	th, err := threads.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return &th
}

// Tap drills of both systems: never below the least minor diameter, and the one
// of ISO 2306 practice or of the unified chart where the system has it.
func TestTapDrill(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		thread string
		s      System
		want   string
	}{
		{"M6", Metric, "5.0"}, {"M8", Metric, "6.8"}, {"M12", Metric, "10.2"}, {"M12x1.25", Metric, "10.75"}, {"M14x1.25", Metric, "12.75"}, {"M12", Inch, "Y"}, {"M10", Inch, "Q"}, {"M8", Inch, "H"},
		{"1/2-13 UNC", Metric, "10.7"}, {"1/2-13 UNC", Inch, "27/64 in"}, {"1/4-20 UNC", Inch, "#7"}, {"5/16-18 UNC", Metric, "6.5"}, {"G1", Metric, "30.75"}, {"G1/4", Metric, "11.8"}, {"G1 1/2", Metric, "45.0"}, {"M64", Metric, "58.0"},
	} {
		d, err := TapDrill(*thread(t, c.thread), c.s)
		if err != nil || d.Name != c.want {
			t.Errorf("%s: drill %s, %v; want %s", c.thread, d.Name, err, c.want)
		}
	}
	untapped := *thread(t, "M10")
	untapped.TapDrillMm = 0
	if d, err := TapDrill(untapped, Metric); err == nil {
		t.Errorf("a thread without a tap drill: %v", d)
	}
	for _, th := range threads.All() {
		for _, s := range []System{Metric, Inch} {
			lo, hi := th.MinorLimitsMm()
			d, err := TapDrill(th, s)
			if th.Series == threads.PipeR || th.Lead != nil {
				if err == nil {
					t.Errorf("%s: drill %v, want an error", th.Designation, d)
				}
				continue
			}
			if own := math.Abs(d.DiaMm-th.TapDrillMm) < 0.001; err != nil || d.Name == "" || d.DiaMm < lo || d.DiaMm > hi && !own {
				t.Errorf("%s: drill %v (%v) is outside %.3f to %.3f", th.Designation, d, err, lo, hi)
			}
		}
	}
}

// For any plain hole: steps rise, none above the largest drill, the first starts
// in solid metal, and what is left is counted from the last drill.
func TestWaySteps(t *testing.T) {
	t.Parallel()
	for h := 2.0; h < 80; h += 0.37 {
		for _, s := range []System{Metric, Inch} {
			w, err := WayFor(Hole{NominalMm: h, LargestMm: 32, System: s})
			if err != nil {
				t.Fatal(err)
			}
			last := 0.0
			for i, st := range w.Drills {
				why := OpenOut
				switch i {
				case len(w.Drills) - 1:
					why = Last
				case 0:
					why = Pilot
				}
				if st.Size.DiaMm <= last || st.Size.DiaMm > math.Min(h+clearanceUnderMm, 32)+1e-6 || st.Why != why {
					t.Errorf("hole %v: step %v after %v", h, st, last)
				}
				last = st.Size.DiaMm
			}
			if w.Drills[0].Size.DiaMm > solidMm || w.Finish != Drilled && math.Abs(w.LeaveMm-(h-last)) > 1e-9 {
				t.Errorf("hole %v: %s", h, way(w))
			}
		}
	}
	nan, inf := math.NaN(), math.Inf(1)
	for _, bad := range []Hole{{}, {NominalMm: 10}, {NominalMm: nan, LargestMm: 10}, {NominalMm: 10, LargestMm: inf}, {NominalMm: 0.2, LargestMm: 10}, {NominalMm: 10, LargestMm: 10, DepthMm: -1},
		{NominalMm: 10, LargestMm: 10, MinMm: 2, MaxMm: 1}, {NominalMm: 10, LargestMm: 10, MinMm: nan, MaxMm: nan}, {NominalMm: 10, LargestMm: 10, Thread: thread(t, "R1")}} {
		if w, err := WayFor(bad); err == nil {
			t.Errorf("%+v: %s, want an error", bad, way(w))
		}
	}
}

func TestReamable(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		mm    float64
		class string
		want  bool
	}{
		{10, "H7", true}, {10, "H8", true}, {10, "H9", true}, {10, "H11", false}, {10, "E9", false}, {10, "H6", false}, {10, "", false},
		{19.5, "H7", true}, {20.5, "H7", false}, {21, "H7", true}, {50, "H7", true}, {51, "H7", false}, {12.7, "H7", true}, {25.4 * 63 / 64, "H7", true}, {25.4 * 1.0625, "H7", true}, {25.4 * 65 / 64, "H7", false}, {50.8, "H7", true}, {25.4 * 33 / 16, "H7", false},
	} {
		if got := Reamable(c.mm, c.class); got != c.want {
			t.Errorf("Reamable(%v, %q) = %v", c.mm, c.class, got)
		}
	}
	if OversizeMm(10) != 0.1 || OversizeMm(20) != 0.15 || OversizeMm(20.1) != 0.2 {
		t.Error("oversize of a drill: want 0.1, 0.15 and 0.2")
	}
	for mm, want := range map[float64]float64{10: 0.2, 10.5: 0.3, 20: 0.3, 20.5: 0.5} {
		if got := reamLeaveMm(mm, Metric); got != want {
			t.Errorf("a reamer of %v gets %v, want %v", mm, got, want)
		}
	}
}

// A turned bore is opened to a millimetre under it, or as far as the drills go; a
// bar reaches three diameters from one end and six from both.
func TestStartBore(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		bore, largest float64
		s             System
		want          string
	}{
		{20, 30, Metric, "9.5 19.0 bored leave 1.000"}, {60, 30, Metric, "7.5 15.0 30.0 bored leave 30.000"}, {1.5, 30, Metric, "1.0 bored leave 0.500"},
		{25.4, 50, Inch, "1/4 in 1/2 in 61/64 in bored leave 1.191"},
	} {
		w, err := StartBore(c.bore, c.largest, c.s)
		if got := way(w); err != nil || got != c.want {
			t.Errorf("bore %v: %s, %v; want %s", c.bore, got, err, c.want)
		}
	}
	for _, bad := range [][2]float64{{0, 30}, {20, 0}, {math.NaN(), 30}, {20, math.Inf(1)}, {20, 0.2}} {
		if w, err := StartBore(bad[0], bad[1], Metric); err == nil || w.Drills != nil {
			t.Errorf("%v: %s, want an error", bad, way(w))
		}
	}
	for _, c := range []struct {
		bore, length float64
		ok, both     bool
	}{{10, 30, true, false}, {10, 30.5, true, true}, {10, 60, true, true}, {10, 60.5, false, false}, {9.9, 5, false, false}, {100, 300, true, false}} {
		if ok, both := BarReach(c.bore, c.length); ok != c.ok || both != c.both {
			t.Errorf("bore %v of %v: %v, %v", c.bore, c.length, ok, both)
		}
	}
	for _, c := range []struct {
		drill, length float64
		want          bool
	}{{9, 90, true}, {9, 90.1, false}, {20, 200, true}} {
		if got := DrillReaches(c.drill, c.length); got != c.want {
			t.Errorf("drill %v to %v: %v", c.drill, c.length, got)
		}
	}
	// A hole of 9 clears the web of 30 and 36, not of 40; 5 mm more is worth a drill.
	for _, c := range []struct {
		bore, hole, largest float64
		want                string
	}{{40, 9, 30, "30.0 bored leave 10.000"}, {37, 9, 50, "36.0 bored leave 1.000"}, {41, 9, 50, "10.0 20.0 40.0 bored leave 1.000"}, {30, 24.25, 30, ""}, {31, 25, 50, "30.0 bored leave 1.000"}, {31, 25.25, 50, ""}, {0.2, 0, 30, ""}} {
		w, ok := Widening(c.bore, c.hole, c.largest, Metric)
		if got := way(w); ok != (c.want != "") || ok && got != c.want {
			t.Errorf("bore %v from %v: %s, %v; want %s", c.bore, c.hole, got, ok, c.want)
		}
	}
	for _, c := range []struct {
		depth           float64
		one, both, deep bool
	}{{100, false, false, false}, {100.1, false, true, false}, {100, true, false, false}, {100.1, true, false, true}} {
		w, err := WayFor(Hole{NominalMm: 10, DepthMm: c.depth, OneEnd: c.one, LargestMm: 30})
		if err != nil || w.BothEnds != c.both || w.Deep != c.deep {
			t.Errorf("%+v: %+v, %v", c, w, err)
		}
	}
	// A bar reaches three diameters from one end: a blind bore of four is reamed.
	for one, want := range map[bool]Finish{false: Bored, true: AdjustReamed} {
		if w, err := WayFor(Hole{NominalMm: 30, MinMm: 30, MaxMm: 30.01, DepthMm: 120, OneEnd: one, LargestMm: 30}); err != nil || w.Finish != want || w.BothEnds == one {
			t.Errorf("one end %v: %+v, %v", one, w, err)
		}
	}
	if d, err := StockDrill(0.2, Metric, Down); err == nil || d != (DrillSize{}) {
		t.Errorf("no drill so small: %v", d)
	}
}

// A hole saw leaves a millimetre for what it cuts over and a half for the bar; sizes and reach from memory.
func TestHoleSaw(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		holeMm, wallMm float64
		clearance      bool
		s              System
		mm             float64 // 0: none
	}{
		{51, 5, false, Metric, 49}, {30, 5, true, Metric, 30}, {30.4, 5, true, Metric, 30}, {2 * geom.MmPerInch, 6, false, Inch, 1.9375 * geom.MmPerInch},
		{15.5, 5, false, Metric, 14}, {15.4, 5, false, Metric, 0}, {153.5, 5, false, Metric, 152}, {154.5, 5, false, Metric, 0}, {51, 38, false, Metric, 49}, {51, 38.1, false, Metric, 0},
	} {
		mm, err := HoleSaw(c.holeMm, c.wallMm, c.clearance, c.s)
		if math.Abs(mm-c.mm) > 1e-9 || (err == nil) != (c.mm > 0) {
			t.Errorf("%+v: %v, %v", c, mm, err)
		}
	}
}
