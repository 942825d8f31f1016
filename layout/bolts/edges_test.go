package bolts

import (
	"math"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// TestEveryLimitOfALength puts M10 × 40 (nut 8.4, pitch 1.5, ISO 4032 and 888;
// engagement in steel 1 d) on each limit of a good length, and a thousandth of
// a millimetre past it.
func TestEveryLimitOfALength(t *testing.T) {
	t.Parallel()
	b := find(t, "M10")
	blind, through := &TappedHole{ThreadMm: 20}, &TappedHole{ThreadMm: 15, Through: true}
	for _, c := range []struct {
		name    string
		hole    *TappedHole
		gripMm  float64 // the last good one
		past    float64 // which way it gets worse
		problem string
		mm      []float64 // of the problem, at the limit
	}{
		{"two pitches past the nut", nil, 40 - 8.4 - 3, 1, "short-protrusion", []float64{3, 3}},
		{"one diameter past the nut", nil, 40 - 8.4 - 10, -1, "long-past-nut", []float64{10}},
		{"a pitch left in the hole", blind, 40 - 18.5, -1, "near-bottom", []float64{1.5}},
		{"one diameter engaged", blind, 30, 1, "short-engagement", []float64{10, 10}},
		{"one diameter past the plate", through, 15, -1, "long-past-hole", []float64{10}},
		{"one diameter engaged in the plate", through, 30, 1, "short-engagement", []float64{10, 10}},
	} {
		for off, want := range map[float64]string{0: "", 0.001: c.problem} {
			j := Joint{Head: Hex, GripMm: c.gripMm + off*c.past, Hole: c.hole}
			choice, err := b.ChooseLength(j)
			if err != nil {
				t.Fatal(err)
			}
			k := b.judge(choice, j, 40, true)
			if kinds(k.Problems) != want {
				t.Errorf("%s, by %v: %q, want %q", c.name, off, kinds(k.Problems), want)
				continue
			}
			if want != "" {
				for i, mm := range k.Problems[0].Mm {
					if len(k.Problems[0].Mm) != len(c.mm) || !near(mm, c.mm[i], 0.00101) {
						t.Errorf("%s: %v, want %v", c.name, k.Problems[0].Mm, c.mm)
					}
				}
			}
			if k := b.judge(choice, j, 40, false); strings.HasPrefix(want, "long") && len(k.Problems) > 0 {
				t.Errorf("%s, with no shorter one: %+v", c.name, k)
			}
		}
	}
	for _, c := range []struct {
		gripMm float64
		hole   *TappedHole
		want   string
	}{
		{31.6, nil, "short-protrusion"}, {31.601, nil, "nut-not-filled"}, // the end flush with the nut
		{20, blind, "near-bottom"}, {19.999, blind, "bottoms-out"}, // the end on the last thread
	} {
		if k := b.judge(Choice{ClampMm: c.gripMm}, Joint{Head: Hex, GripMm: c.gripMm, Hole: c.hole}, 40, false); kinds(k.Problems) != c.want {
			t.Errorf("grip %v: %q, want %q", c.gripMm, kinds(k.Problems), c.want)
		}
	}
	// A screw that ends before the thread begins engages nothing.
	for _, hole := range []*TappedHole{nil, blind, through} {
		if k := b.judge(Choice{ClampMm: 45}, Joint{Head: Hex, GripMm: 45, Hole: hole}, 40, false); k.EngagementMm != 0 {
			t.Errorf("%+v: %v mm engaged", hole, k.EngagementMm)
		}
	}
	if k := b.judge(Choice{ClampMm: 20}, Joint{Head: Hex, GripMm: 20, Hole: through}, 40, false); k.ProtrusionMm != 5 {
		t.Errorf("%v mm past a thread of 15", k.ProtrusionMm)
	}
}

// TestRangeOfALength: the range in which a length should lie, M10 through a
// grip of 30 with a washer of 2.
func TestRangeOfALength(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		size     string
		hole     *TappedHole
		min, max float64
	}{
		{"M10", nil, 32 + 8.4 + 3, 32 + 8.4 + 10}, {"M3", nil, 30.5 + 2.4 + 1, 30.5 + 2.4 + 3},
		{"M10", &TappedHole{ThreadMm: 20}, 42, 32 + 20 - 1.5}, {"M10", &TappedHole{ThreadMm: 15, Through: true}, 42, 32 + 15 + 10},
		{"M10", &TappedHole{ThreadMm: 8, Through: true}, 42, 32 + 10 + 10},
	} {
		got, err := find(t, c.size).ChooseLength(Joint{GripMm: 30, HeadWashers: 1, Hole: c.hole})
		if err != nil || !near(got.MinMm, c.min, 1e-9) || !near(got.MaxMm, c.max, 1e-9) {
			t.Errorf("%s %+v: %v to %v, %v, want %v to %v", c.size, c.hole, got.MinMm, got.MaxMm, err, c.min, c.max)
		}
	}
}

// TestLengthsShown: the shortest good length is chosen though it lies past a
// gap of the list; where none is good, the first that is long enough stands
// among its neighbours.
func TestLengthsShown(t *testing.T) {
	t.Parallel()
	tight := &TappedHole{ThreadMm: 10} // needs 10 and a pitch
	for _, c := range []struct {
		gripMm float64
		hole   *TappedHole
		chosen float64
		shown  []float64
	}{
		{80.5 - 11.4, nil, 90, []float64{80, 90, 100}}, {80 - 11.4, nil, 80, []float64{70, 80, 90}},
		{1, nil, 20, []float64{20, 25}}, {70, tight, 0, []float64{70, 80, 90}}, {70.5, tight, 0, []float64{80, 90, 100}},
		{1000, nil, 0, []float64{180, 200}}, {5, tight, 0, []float64{20, 25}},
	} {
		got, err := find(t, "M10").ChooseLength(Joint{GripMm: c.gripMm, Hole: c.hole})
		if err != nil {
			t.Fatal(err)
		}
		chosen := 0.0
		if got.Chosen != nil {
			chosen = got.Chosen.LengthMm
		}
		same := len(got.Candidates) == len(c.shown)
		for i := range got.Candidates {
			same = same && got.Candidates[i].LengthMm == c.shown[i]
		}
		if chosen != c.chosen || !same {
			t.Errorf("grip %v: %v of %+v, want %v of %v", c.gripMm, chosen, got.Candidates, c.chosen, c.shown)
		}
	}
}

// TestHoleLimits: a hole is enough exactly at its need: one diameter of thread
// in steel, in a blind one a pitch more.
func TestHoleLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		hole TappedHole
		want string
		mm   []float64
	}{
		{TappedHole{ThreadMm: 10, Through: true}, "", nil}, {TappedHole{ThreadMm: 9.5, Through: true}, "thin-part", []float64{9.5, 10}},
		{TappedHole{ThreadMm: 11.5}, "", nil}, {TappedHole{ThreadMm: 11}, "short-thread", []float64{11, 10, 11.5}},
	} {
		got, err := find(t, "M10").ChooseLength(Joint{GripMm: 20, Hole: &c.hole})
		if err != nil || kinds(got.HoleProblems) != c.want {
			t.Errorf("%+v: %+v, %v, want %q", c.hole, got.HoleProblems, err, c.want)
			continue
		}
		for i, mm := range c.mm {
			if len(got.HoleProblems[0].Mm) != len(c.mm) || !near(got.HoleProblems[0].Mm[i], mm, 1e-9) {
				t.Errorf("%+v: %v, want %v", c.hole, got.HoleProblems[0].Mm, c.mm)
			}
		}
	}
}

// TestThreadLimits: where the thread length steps (ISO 4014 at 125 and 200 mm,
// ISO 4762 three pitches of shank beyond a run-out of five), where a screw is
// threaded to its head, and that a shank may end where the grip does.
func TestThreadLimits(t *testing.T) {
	t.Parallel()
	b, half := find(t, "M10"), find(t, "1/2 UNC")
	for _, c := range []struct {
		b       Bolt
		h       Head
		l, want float64
	}{
		{b, Hex, 125, 26}, {b, Hex, 126, 32}, {b, Hex, 200, 32}, {b, Hex, 201, 45}, {b, Hex, 0.5, 0.5}, {b, Hex, 0, 0},
		{b, Socket, 44, 44}, {b, Socket, 44.01, 32}, {half, Hex, 6.1 * inch, 1.5 * inch},
	} {
		if got := c.b.ThreadLengthMm(c.h, c.l); !near(got, c.want, 1e-9) {
			t.Errorf("%s %s x %v: thread %v, want %v", c.b.Thread.Designation, c.h, c.l, got, c.want)
		}
	}
	for _, c := range []struct {
		b     Bolt
		h     Head
		to    float64
		after float64
	}{
		{b, Hex, 100, 100.5}, {find(t, "M24"), Hex, 200, 200.5}, {half, Hex, 4 * inch, 4.1 * inch}, {b, Socket, 44, 44.5},
	} {
		if !c.b.fullThreadAvailable(c.h, c.to) || c.b.fullThreadAvailable(c.h, c.after) {
			t.Errorf("%s %s is not sold with a full thread to %v alone", c.b.Thread.Designation, c.h, c.to)
		}
	}
	// M10 x 120 has 94 of shank; no ISO 4017 is that long.
	for gripMm, want := range map[float64]string{94: "", 93.999: "shank-jams"} {
		j := Joint{Head: Hex, GripMm: gripMm, Hole: &TappedHole{ThreadMm: 30}}
		if k := b.judge(Choice{ClampMm: gripMm}, j, 120, false); kinds(k.Problems) != want {
			t.Errorf("grip %v: %q, want %q", gripMm, kinds(k.Problems), want)
		}
	}
}

// TestShortestPartThreaded: the column of bolts_all.csv, from memory: shorter
// hexagon screws are ISO 4017 alone; inch and socket screws have no such end.
func TestShortestPartThreaded(t *testing.T) {
	t.Parallel()
	for _, row := range golden.Table(t, "../../testdata/reference/bolts_all.csv", len(metricBolts)) {
		b, from := find(t, row["bolt"]), row.Number(t, "part_threaded_from_mm")
		for _, l := range b.StockLengths(Hex) {
			if got := b.fullThreadOnly(Hex, l); got != (l < from) || b.fullThreadOnly(Socket, l) {
				t.Errorf("%s x %v: threaded to the head only: %v; the shortest ISO 4014 is %v", row["bolt"], l, got, from)
			}
		}
		if from > 0 && b.fullThreadOnly(Hex, from-0.5) == b.fullThreadOnly(Hex, from) {
			t.Errorf("%s: ISO 4014 begins at %v", row["bolt"], from)
		}
	}
}

// TestEdgesOfTwenty: each column of EN 1993-1-8 Table 3.3 for a hole of 20.
func TestEdgesOfTwenty(t *testing.T) {
	t.Parallel()
	for _, d := range []float64{20, 0.5} {
		got, err := EdgeDistances(d)
		want := Edges{1.2 * d, 2.2 * d}
		if err != nil || got != want {
			t.Errorf("%v: %+v, %v, want %+v", d, got, err, want)
		}
	}
}

// TestRoomLimits: room is enough at the need itself, M10 in its medium hole
// under a socket of 11.5 radius.
func TestRoomLimits(t *testing.T) {
	t.Parallel()
	b := find(t, "M10")
	for _, c := range []struct {
		p    Place
		want string
	}{
		{Place{WallMm: 12}, ""}, {Place{WallMm: 11.99}, "wall-near"}, {Place{WallMm: 0.5}, "wall-near"},
		{Place{NeighbourMm: 12.5 + 16/math.Sqrt(3)}, ""}, {Place{NeighbourMm: 12.49 + 16/math.Sqrt(3)}, "neighbour-near"}, {Place{NeighbourMm: 0.5}, "neighbour-near"},
	} {
		got, err := b.HeadRoom(c.p)
		if err != nil || kinds(got.Problems) != c.want {
			t.Errorf("%+v: %+v, %v, want %q", c.p, got.Problems, err, c.want)
		}
		for _, p := range got.Problems {
			if p.Of != "hex head with socket tool" {
				t.Errorf("%+v: room for a %q", c.p, p.Of)
			}
		}
		if got.ToolRadiusMm != 11.5 {
			t.Errorf("%+v: socket of %v mm radius", c.p, got.ToolRadiusMm)
		}
	}
	bare, err := b.HeadRoom(Place{Tool: ToolNone, Nut: true, Washer: true, WallMm: 1})
	if err != nil || bare.ToolRadiusMm != 0 || bare.Problems[0].Of != "nut with washer" {
		t.Errorf("no tool: %+v, %v", bare, err)
	}
	if _, err := b.HeadRoom(Place{HoleMm: 9.125}); err == nil || !strings.Contains(err.Error(), "hole 9.125 mm is smaller than M10") {
		t.Errorf("small hole: %v", err)
	}
	for mm, want := range map[float64]float64{0.5: (1.25*0.5 + 3) / 2, 0: 0} {
		if got, err := ToolRadiusMm(ToolSocket, mm); got != want || (err != nil) != (want == 0) {
			t.Errorf("socket of %v: %v, %v", mm, got, err)
		}
	}
}

// TestNumbersTaken: what lies on a limit of the input is taken.
func TestNumbersTaken(t *testing.T) {
	t.Parallel()
	b := find(t, "M10")
	for _, j := range []Joint{
		{GripMm: 0.5}, {GripMm: 1e6}, {GripMm: 20, HeadWashers: 10, NutWashers: 10}, {GripMm: 20, Hole: &TappedHole{ThreadMm: 0.5}},
	} {
		if _, err := b.ChooseLength(j); err != nil {
			t.Errorf("%+v: %v", j, err)
		}
	}
	for _, j := range []Joint{{GripMm: 1e6 + 1}, {GripMm: 20, HeadWashers: 11}, {GripMm: 20, NutWashers: 11}, {GripMm: 20, NutWashers: -1}} {
		if _, err := b.ChooseLength(j); err == nil {
			t.Errorf("%+v is taken", j)
		}
	}
}
