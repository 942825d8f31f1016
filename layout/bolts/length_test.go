package bolts

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// kinds joins the problem kinds of a candidate.
func kinds(problems []Problem) string {
	var list []string
	for _, p := range problems {
		list = append(list, string(p.Kind))
	}
	return strings.Join(list, " ")
}

// Worked by hand: clamp = grip + washers; nut 8.4 and two threads 3 mm for
// M10 (ISO 4032, ISO 888).
func TestNutLengths(t *testing.T) {
	for _, c := range []struct {
		size string
		j    Joint
		want string
	}{
		{"M10", Joint{GripMm: 20}, "M10 x 35"},                                         // 20+8.4+3 = 31.4
		{"M10", Joint{GripMm: 20, HeadWashers: 1, NutWashers: 1}, "M10 x 40"},          // 24+11.4 = 35.4
		{"M10", Joint{GripMm: 18.6}, "M10 x 30"},                                       // exactly 30
		{"M10", Joint{Head: Socket, GripMm: 16}, "M10 x 30"},                           // 27.4
		{"M16", Joint{GripMm: 40, NutWashers: 1}, "M16 x 65"},                          // 43+14.8+4 = 61.8
		{"M36", Joint{GripMm: 60}, "M36 x 100"},                                        // 60+31+8 = 99
		{"1/2-13 UNC", Joint{GripMm: 25.4, NutWashers: 1}, "1/2-13 UNC x 1 3/4 in"},    // 1+0.095+0.4375+0.1538 = 1.686
		{"1/4-20 UNC", Joint{GripMm: 0.25 * inch}, "1/4-20 UNC x 5/8 in"},              // 0.25+0.21875+0.1 = 0.569
		{"1-8 UNC", Joint{GripMm: 4 * inch}, "1-8 UNC x 5 1/2 in"},                     // 4+0.859+0.25 = 5.109
		{"3/4-10 UNC", Joint{GripMm: 7.5 * inch, HeadWashers: 1}, "3/4-10 UNC x 9 in"}, // 7.634+0.641+0.2 = 8.475
		{"M5", Joint{GripMm: 30.5}, "M5 x 40"},                                         // 36.8
	} {
		got, err := find(t, c.size).ChooseLength(c.j)
		if err != nil || got.Chosen == nil || got.Chosen.Name != c.want {
			t.Errorf("%s %+v: %+v, %v, want %s", c.size, c.j, got, err, c.want)
		}
	}
}

func TestNutCandidates(t *testing.T) {
	got, err := find(t, "M10").ChooseLength(Joint{GripMm: 20})
	if err != nil || len(got.Candidates) != 3 {
		t.Fatalf("%+v, %v", got, err)
	}
	short, good, long := got.Candidates[0], got.Candidates[1], got.Candidates[2]
	if short.LengthMm != 30 || kinds(short.Problems) != "short-protrusion" || !near(short.ProtrusionMm, 1.6, 1e-9) {
		t.Errorf("short: %+v", short)
	}
	if good.LengthMm != 35 || good.Problems != nil || !near(good.ProtrusionMm, 6.6, 1e-9) || good.EngagementMm != 8.4 || !good.FullThread {
		t.Errorf("good: %+v", good)
	}
	if long.LengthMm != 40 || kinds(long.Problems) != "long-past-nut" {
		t.Errorf("long: %+v", long)
	}
}

// ISO 4014 M10 x 45 has b = 26: its shank of 19 lies within a grip of 33. A
// shank longer than the grip asks for a full thread where that is sold.
func TestShank(t *testing.T) {
	b := find(t, "M10")
	if got := b.ThreadLengthMm(Hex, 45); got != 26 {
		t.Errorf("thread length %v, ISO 4014 has 26", got)
	}
	for l, want := range map[float64]float64{100: 26, 130: 32, 220: 45} { // ISO 4014 M10, from memory
		if got := b.ThreadLengthMm(Hex, l); got != want {
			t.Errorf("M10 x %v: %v, want %v", l, got, want)
		}
	}
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		if got := b.ThreadLengthMm(Hex, bad); got != 0 {
			t.Errorf("M10 x %v: %v", bad, got)
		}
	}
	// ISO 4014 to 125 and to 200 mm, from a maker's reprint.
	for size, want := range map[string][2]float64{"M3": {12, 0}, "M6": {18, 0}, "M14": {34, 40}, "M16": {38, 44}, "M24": {54, 60}} {
		if b := find(t, size); b.ThreadLengthMm(Hex, 100) != want[0] || want[1] > 0 && b.ThreadLengthMm(Hex, 150) != want[1] {
			t.Errorf("%s: thread lengths %v, %v, want %v", size, b.ThreadLengthMm(Hex, 100), b.ThreadLengthMm(Hex, 150), want)
		}
	}
	// ASME B18.2.1 to 6 in and beyond.
	for size, want := range map[string][2]float64{"1/4 UNC": {0.75, 1}, "1/2 UNC": {1.25, 1.5}, "1 UNC": {2.25, 2.5}} {
		if b := find(t, size); !near(b.ThreadLengthMm(Hex, 6*inch), want[0]*inch, 1e-9) || !near(b.ThreadLengthMm(Hex, 7*inch), want[1]*inch, 1e-9) {
			t.Errorf("%s: thread lengths, want %v in", size, want)
		}
	}
	// ISO 4762: the longest screw threaded to the head, and the next one's thread
	// (from memory, as catalogues print it).
	for size, want := range map[string][3]float64{"M3": {20, 25, 18}, "M4": {25, 30, 20}, "M5": {25, 30, 22}, "M6": {30, 35, 24}, "M8": {35, 40, 28}, "M10": {40, 45, 32}, "M12": {50, 55, 36},
		"M14": {55, 60, 40}, "M16": {60, 65, 44}, "M20": {70, 80, 52}, "M24": {80, 90, 60}, "M30": {100, 110, 72}, "M36": {110, 120, 84}} {
		b := find(t, size)
		if b.ThreadLengthMm(Socket, want[0]) != want[0] || b.ThreadLengthMm(Socket, want[1]) != want[2] {
			t.Errorf("%s socket: %v and %v, want %v", size, b.ThreadLengthMm(Socket, want[0]), b.ThreadLengthMm(Socket, want[1]), want)
		}
	}
	// ASME B18.3: 2 D + 1/2 in.
	if got := find(t, "1/2 UNC").ThreadLengthMm(Socket, 4*inch); !near(got, 1.5*inch, 1e-9) {
		t.Errorf("1/2 in socket: %v", got)
	}
	got, err := b.ChooseLength(Joint{GripMm: 33})
	if err != nil || got.Chosen == nil || got.Chosen.LengthMm != 45 || got.Chosen.FullThread {
		t.Errorf("grip 33: %+v, %v", got.Chosen, err)
	}
	// M20 x 120 with a tapped hole 60 deep: shank 74 meets the face of a 60
	// grip, and so a fully threaded screw is asked for.
	hole := &TappedHole{ThreadMm: 80}
	got, err = find(t, "M20").ChooseLength(Joint{GripMm: 60, Hole: hole})
	if err != nil || got.Chosen == nil || got.Chosen.LengthMm != 80 {
		t.Fatalf("%+v, %v", got, err)
	}
	judged := find(t, "M20").judge(got, Joint{Head: Hex, GripMm: 60, Hole: hole}, 120, false)
	if !judged.FullThread || len(judged.Problems) != 0 {
		t.Errorf("M20 x 120: %+v", judged)
	}
	judged = find(t, "M20").judge(got, Joint{Head: Socket, GripMm: 60, Hole: hole}, 120, false)
	if kinds(judged.Problems) != "shank-jams" { // ISO 4762: b = 52, shank 68
		t.Errorf("M20 x 120 socket: %+v", judged)
	}
}

func TestTappedHole(t *testing.T) {
	b := find(t, "M10")
	for _, c := range []struct {
		name  string
		j     Joint
		want  float64 // chosen length, 0 for none
		holes string  // kinds of hole problems
	}{
		{"steel", Joint{GripMm: 18, HeadWashers: 1, Hole: &TappedHole{ThreadMm: 20}}, 30, ""},            // 20+10 = 30, at most 38.5
		{"aluminium", Joint{GripMm: 20, Hole: &TappedHole{ThreadMm: 25, Material: "aluminium"}}, 40, ""}, // 40 … 43.5
		{"aluminum", Joint{GripMm: 20, Hole: &TappedHole{ThreadMm: 25, Material: "Aluminum"}}, 40, ""},   // the same word
		{"cast iron", Joint{GripMm: 12, Hole: &TappedHole{ThreadMm: 20, Material: "cast iron"}}, 30, ""}, // 27 … 30.5
		{"between the stock lengths", Joint{GripMm: 21, Hole: &TappedHole{ThreadMm: 14}}, 0, ""},         // 31 … 33.5
		{"hole too shallow", Joint{GripMm: 20, Hole: &TappedHole{ThreadMm: 10}}, 0, "short-thread"},      // 10 and a pitch needed
		{"through", Joint{GripMm: 20, Hole: &TappedHole{ThreadMm: 12, Through: true}}, 30, ""},
		{"through thin plate", Joint{GripMm: 20, Hole: &TappedHole{ThreadMm: 8, Through: true}}, 0, "thin-part"},
	} {
		got, err := b.ChooseLength(c.j)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		length := 0.0
		if got.Chosen != nil {
			length = got.Chosen.LengthMm
		}
		if length != c.want || kinds(got.HoleProblems) != c.holes || len(got.Candidates) == 0 {
			t.Errorf("%s: chosen %v, hole %q, want %v, %q: %+v", c.name, length, kinds(got.HoleProblems), c.want, c.holes, got)
		}
	}
	got, err := b.ChooseLength(Joint{GripMm: 20, Hole: &TappedHole{ThreadMm: 12}})
	if err != nil || len(got.Candidates) != 3 || got.Candidates[0].LengthMm != 25 {
		t.Fatalf("%+v, %v", got, err)
	}
	for i, want := range []string{"short-engagement", "", "bottoms-out"} { // 25: 5 mm engaged; 30: 2 mm to spare; 35: 3 mm too long
		if k := got.Candidates[i]; kinds(k.Problems) != want {
			t.Errorf("M10 x %v: %+v, want %q", k.LengthMm, k, want)
		}
	}
	if k := b.judge(got, Joint{Head: Hex, GripMm: 20, Hole: &TappedHole{ThreadMm: 11}}, 30, false); kinds(k.Problems) != "near-bottom" || !near(k.SpareMm, 1, 1e-9) {
		t.Errorf("one mm to spare: %+v", k)
	}
}

func TestChooseLengthRefuses(t *testing.T) {
	b := find(t, "M10")
	nan := math.NaN()
	for name, j := range map[string]Joint{
		"no grip": {}, "negative grip": {GripMm: -1}, "NaN grip": {GripMm: nan}, "infinite grip": {GripMm: math.Inf(1)},
		"absurd grip": {GripMm: 1e300},
		"head":        {Head: "round", GripMm: 20}, "washers": {GripMm: 20, HeadWashers: -1}, "many washers": {GripMm: 20, NutWashers: 99},
		"washer without nut": {GripMm: 20, NutWashers: 1, Hole: &TappedHole{ThreadMm: 20}},
		"no thread":          {GripMm: 20, Hole: &TappedHole{}},
		"NaN thread":         {GripMm: 20, Hole: &TappedHole{ThreadMm: nan}},
		"material":           {GripMm: 20, Hole: &TappedHole{ThreadMm: 20, Material: "cheese"}},
	} {
		if got, err := b.ChooseLength(j); err == nil {
			t.Errorf("%s: %+v", name, got)
		}
	}
	if _, err := (Bolt{}).ChooseLength(Joint{GripMm: 20}); err == nil {
		t.Error("a zero bolt has a length")
	}
	got, err := b.ChooseLength(Joint{GripMm: 5000})
	if err != nil || got.Chosen != nil || len(got.Candidates) == 0 {
		t.Errorf("5 m grip: %+v, %v", got, err)
	}
}

// ISO 4014 lists M10 to 100; ISO 888 goes on.
func TestLengthOnRequest(t *testing.T) {
	got, err := find(t, "M10").ChooseLength(Joint{GripMm: 110})
	if err != nil || got.Chosen == nil || got.Chosen.LengthMm != 130 { // 110+8.4+3 = 121.4
		t.Errorf("%+v, %v", got.Chosen, err)
	}
	got, err = find(t, "M10").ChooseLength(Joint{GripMm: 85})
	if err != nil || got.Chosen == nil || got.Chosen.LengthMm != 100 || got.Candidates[2].LengthMm != 110 {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestStockLengths(t *testing.T) {
	for size, want := range map[string]string{"M10": "20 100", "M36": "70 360", "1/4 UNC": "1/2 in 6 in", "1 UNC": "1 3/4 in 12 in"} {
		b := find(t, size)
		list := b.StockLengths(Hex)
		for i := 1; i < len(list); i++ {
			if list[i] <= list[i-1] {
				t.Errorf("%s: %v after %v", size, list[i], list[i-1])
			}
		}
		if got := b.LengthName(list[0]) + " " + b.LengthName(list[len(list)-1]); got != want {
			t.Errorf("%s: %s, want %s", size, got, want)
		}
	}
	if list := find(t, "9/16 UNC").StockLengths(Socket); list != nil {
		t.Errorf("9/16 socket: %v", list)
	}
}

// Whatever the joint: the chosen bolt keeps the promises, no shorter stock
// length does, and the numbers add up.
func TestChosenIsGoodAndShortest(t *testing.T) {
	sizes := []string{"M3", "M5", "M8", "M10", "M16", "M24", "M36", "1/4 UNC", "1/2 UNC", "3/4 UNF", "1 UNC"}
	rapid.Check(t, func(t *rapid.T) {
		b, err := Find(rapid.SampledFrom(sizes).Draw(t, "size"))
		if err != nil {
			t.Fatal(err)
		}
		d := b.Thread.MajorMm
		j := Joint{
			Head:        rapid.SampledFrom([]Head{Hex, Socket}).Draw(t, "head"),
			GripMm:      rapid.Float64Range(0.5, 8).Draw(t, "grip/d") * d,
			HeadWashers: rapid.IntRange(0, 2).Draw(t, "washers"),
		}
		if rapid.Bool().Draw(t, "tapped") {
			j.Hole = &TappedHole{ThreadMm: rapid.Float64Range(0.5, 4).Draw(t, "thread/d") * d, Through: rapid.Bool().Draw(t, "through")}
		}
		got, err := b.ChooseLength(j)
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Candidates) == 0 {
			t.Fatalf("%+v", got)
		}
		if got.Chosen == nil {
			for _, k := range got.Candidates {
				if len(k.Problems) == 0 {
					t.Fatalf("%+v is good but not chosen", k)
				}
			}
			return
		}
		k, p := *got.Chosen, b.pitch()
		in := k.LengthMm - got.ClampMm
		switch {
		case len(k.Problems) > 0 || k.LengthMm < got.MinMm-1e-6:
			t.Fatalf("chosen %+v, at least %v", k, got.MinMm)
		case j.Hole == nil && in < b.NutHeightMm+2*p-1e-6:
			t.Fatalf("%v past the face of the nut", in)
		case j.Hole != nil && math.Min(in, j.Hole.ThreadMm) < d-1e-6:
			t.Fatalf("engagement %v", in)
		case j.Hole != nil && !j.Hole.Through && in > j.Hole.ThreadMm-p+1e-6:
			t.Fatalf("%v into a thread of %v", in, j.Hole.ThreadMm)
		}
		for _, l := range b.StockLengths(j.Head) {
			if l < k.LengthMm && l >= got.MinMm {
				t.Fatalf("%v would do, %v chosen", l, k.LengthMm)
			}
		}
	})
}

// A hole's thread holds what its bolt does: by hand for M8, stress area 36.6 mm², D2 7.188: π 8 (1/2
// + 0.812 × 0.5774 / 1.25) = 21.99 mm² for each mm, so 2 × 36.6 × 1040 / (360 × 21.99) = 9.62 in
// S235 for 10.9, and 7.40, less than one diameter, for 8.8. 1/2-13 UNC grade 8 in 400 MPa: 91.55
// mm², 34.92 mm² for each mm, 13.56. Where no strength is kept the diameters stand.
func TestEngagementOfStrongBolts(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		size, class string
		mpa, want   float64
	}{
		{"M8", "10.9", 360, 9.7},
		{"M8", "8.8", 360, 8},
		{"M8", "12.9", 360, 11.3},
		{"M8", "10.9", 0, 8},
		{"M8", "", 360, 8},
		{"1/2-13 UNC", "grade 8", 400, 13.6},
	} {
		got, err := find(t, c.size).ChooseLength(Joint{GripMm: 15, Class: c.class, Hole: &TappedHole{ThreadMm: 30, TensileMPa: c.mpa}})
		if err != nil || !near(got.NeedMm, c.want, 1e-9) || got.Strips != (c.want > 12.8 || c.want > 8 && c.size == "M8") || !near(got.Chosen.EngagementMm, math.Max(got.Chosen.EngagementMm, c.want), 1e-9) {
			t.Errorf("%s %s in %v MPa: %+v, %v, want %v", c.size, c.class, c.mpa, got, err, c.want)
		}
	}
	if _, err := find(t, "M8").ChooseLength(Joint{GripMm: 15, Class: "7.7", Hole: &TappedHole{ThreadMm: 30, TensileMPa: 360}}); err == nil {
		t.Error("a class that is none has an engagement")
	}
}

// A screw M8 through 32 into 15 of steel: 40 engages 8, its whole diameter, as it is wanted, and does.
// Where the flange may come 0.3 thicker, 45 is the next, 13 engaged and still inside the plate; 5.1 thicker 50.
func TestLengthForTheThickest(t *testing.T) {
	t.Parallel()
	b, err := Find("M8")
	if err != nil {
		t.Fatal(err)
	}
	for more, want := range map[float64]float64{0: 40, 0.3: 45, 5.1: 50} {
		c, err := b.ChooseLength(Joint{Head: Socket, GripMm: 32, MoreMm: more, Hole: &TappedHole{ThreadMm: 15, Material: "steel", Through: true}})
		if err != nil || c.Chosen == nil || c.Chosen.LengthMm != want {
			t.Errorf("%g more: %+v, %v", more, c.Chosen, err)
		}
	}
}

// A screw ends inside a through hole that is shut at its far side, and stands out of one that is open: 12 and a
// washer of 2.5 under M12 x 30 leave 15.5, and 12 of it engage steel.
func TestNothingOutOfAShutHole(t *testing.T) {
	t.Parallel()
	b, err := Find("M12")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		thread float64
		shut   bool
		want   float64 // 0 for none
	}{{15, false, 30}, {15, true, 0}, {15.5, true, 30}, {20, true, 30}} {
		got, err := b.ChooseLength(Joint{GripMm: 12, HeadWashers: 1, Hole: &TappedHole{ThreadMm: c.thread, Through: true, Shut: c.shut}})
		if err != nil {
			t.Fatal(err)
		}
		mm, out := 0.0, false
		if got.Chosen != nil {
			mm = got.Chosen.LengthMm
		}
		for _, k := range got.Candidates {
			for _, p := range k.Problems {
				out = out || p.Kind == StandsOut && k.LengthMm == 30 && math.Abs(p.Mm[0]-0.5) < 1e-9
			}
		}
		if mm != c.want || out != (c.want == 0) {
			t.Errorf("%+v: %v, stands out %v", c, mm, out)
		}
	}
}

// No left-hand bolt is kept in stock, whatever its length.
func TestNoLeftHandStock(t *testing.T) {
	if _, err := find(t, "M10 LH").ChooseLength(Joint{GripMm: 20}); err == nil || !strings.Contains(err.Error(), "M10 LH") {
		t.Errorf("%v", err)
	}
}
