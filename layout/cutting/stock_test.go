package cutting

import (
	"fmt"
	"math"
	"math/rand"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestStockDrill(t *testing.T) {
	for _, c := range []struct {
		d    float64
		s    System
		r    Rounding
		want string
	}{
		{8.5, Metric, Down, "8.5"}, // M10 tap drill, ISO 2306
		{10.2, Metric, Nearest, "10.2"},
		{6.75, Metric, Nearest, "6.75"},
		{13.95, Metric, Up, "14.0"}, {13.95, Metric, Down, "13.9"}, // to 14 by 0.1 and the quarters: DIN 338
		{10.71, Metric, Nearest, "10.7"}, {10.78, Metric, Nearest, "10.8"}, {11.8, Metric, Down, "11.8"}, {13.76, Metric, Down, "13.75"},
		{14.1, Metric, Down, "14.0"}, {14.1, Metric, Up, "14.25"}, {30.8, Metric, Down, "30.75"}, // to 32 by 0.25: DIN 345
		{14.125, Metric, Nearest, "14.0"}, // tie: smaller
		{32.2, Metric, Up, "32.5"}, {3.1, Metric, Up, "3.1"}, {3.2, Metric, Up, "3.2"}, {3.22, Metric, Up, "3.25"}, {2.72, Metric, Up, "2.8"},
		{1, Metric, Down, "1.0"}, {50, Metric, Up, "50.0"},
		{0.201 * 25.4, Inch, Nearest, "#7"}, // 1/4-20 UNC tap drill
		{0.257 * 25.4, Inch, Nearest, "F"},  // 5/16-18 UNC tap drill
		{27. / 64 * 25.4, Inch, Down, "27/64 in"},
		{6.35, Inch, Down, "1/4 in"},
		{1.05 * 25.4, Inch, Up, "1-1/16 in"},
		{1.04 * 25.4, Inch, Down, "1-1/32 in"},
	} {
		got, err := StockDrill(c.d, c.s, c.r)
		if err != nil || got.Name != c.want {
			t.Errorf("StockDrill(%v, %v, %v) = %q, %v; want %q", c.d, c.s, c.r, got.Name, err, c.want)
		}
	}
	for _, bad := range []float64{0, -3, 0.9, math.NaN(), math.Inf(1)} {
		if got, err := StockDrill(bad, Metric, Down); err == nil {
			t.Errorf("StockDrill(%v) = %v, want an error", bad, got)
		}
	}
	if got, err := StockDrill(51, Metric, Up); err == nil {
		t.Errorf("StockDrill(51 up) = %v, want an error", got)
	}
	for _, s := range []System{Metric, Inch} {
		all := StockDrills(s)
		for i := 1; i < len(all); i++ {
			if all[i].DiaMm <= all[i-1].DiaMm {
				t.Errorf("drills %q and %q out of order", all[i-1].Name, all[i].Name)
			}
		}
	}
}

// Common practice, no source: by the band of the diameter, its end included.
func TestFacingAllowance(t *testing.T) {
	for d, want := range map[float64]float64{10: 1.5, 50: 1.5, 50.1: 2, 100: 2, 100.1: 3, 300: 3} {
		if got := FacingAllowanceMm(d); got != want {
			t.Errorf("bar of %v: %v a face, want %v", d, got, want)
		}
	}
}

func TestPlanBarsByHand(t *testing.T) {
	// Bar 1000, trim 10, kerf 2. 600 goes 10-610; 500 does not fit, opens bar 2 at
	// 10-510; 380 fits bar 1 at 612-992; 300 fits bar 2 at 512-812; 175 at 814-989.
	bars, err := PlanBars([]Piece{{"c", 300, 1}, {"a", 600, 0}, {"e", 175, 1}, {"b", 500, 1}, {"d", 380, 1}}, 1000, 2, 10)
	if err != nil || len(bars) != 2 {
		t.Fatalf("%v, %v; want two bars", bars, err)
	}
	want := [][]Cut{
		{{"a", 600, 10}, {"d", 380, 612}},
		{{"b", 500, 10}, {"c", 300, 512}, {"e", 175, 814}},
	}
	for i, w := range want {
		if fmt.Sprint(bars[i].Cuts) != fmt.Sprint(w) {
			t.Errorf("bar %d: %v, want %v", i+1, bars[i].Cuts, w)
		}
	}
	if bars[0].OffcutMm != 6 || bars[1].OffcutMm != 9 {
		t.Errorf("offcuts %v and %v, want 6 and 9", bars[0].OffcutMm, bars[1].OffcutMm)
	}
	// Flush with the end: no kerf needed after the last piece.
	if bars, err := PlanBars([]Piece{{"x", 499, 2}}, 1000, 2, 0); err != nil || len(bars) != 1 || bars[0].OffcutMm != 0 {
		t.Errorf("flush plan %v (%v), want one bar without offcut", bars, err)
	}
	if bars, err := PlanBars(nil, 1000, 2, 0); err != nil || len(bars) != 0 {
		t.Errorf("no pieces: %v, %v", bars, err)
	}
}

// Every piece once, none overlapping, all inside, and within 11/9 of the bound
// from total length plus one bar.
func TestPlanBarsProperties(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	for range 200 {
		bar, kerf, trim := 500+rnd.Float64()*6000, rnd.Float64()*4, rnd.Float64()*20
		var pieces []Piece
		total, count := 0.0, 0
		for i := range 1 + rnd.Intn(12) {
			p := Piece{fmt.Sprint("p", i), 20 + rnd.Float64()*(bar-trim-20), rnd.Intn(5)}
			pieces = append(pieces, p)
			total += (p.LengthMm + kerf) * float64(max(1, p.Count))
			count += max(1, p.Count)
		}
		bars, err := PlanBars(pieces, bar, kerf, trim)
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string]int{}
		for _, b := range bars {
			at := trim
			for _, c := range b.Cuts {
				if math.Abs(c.FromMm-at) > 1e-6 || c.FromMm+c.LengthMm > bar+1e-5 {
					t.Fatalf("cut %v, expected at %v on a bar of %v", c, at, bar)
				}
				at = c.FromMm + c.LengthMm + kerf
				seen[c.Name]++
				count--
			}
			if len(b.Cuts) == 0 || math.Abs(b.OffcutMm-max(0, bar-at)) > 1e-6 {
				t.Fatalf("bar %+v, offcut should be %v", b, bar-at)
			}
		}
		if count != 0 {
			t.Fatalf("%d pieces not placed once", count)
		}
		for _, p := range pieces {
			if seen[p.Name] != max(1, p.Count) {
				t.Fatalf("%s placed %d times, want %d", p.Name, seen[p.Name], p.Count)
			}
		}
		for i := range bars { // first fit: the head of a later bar fits no earlier bar
			for j := range i {
				if c := bars[i].Cuts[len(bars[i].Cuts)-1]; c.LengthMm <= bars[j].OffcutMm-1e-6 {
					t.Fatalf("piece %v left off bar %d with %v free", c, j, bars[j].OffcutMm)
				}
			}
		}
		if least := total / (bar - trim + kerf); float64(len(bars)) > 2*least+1 {
			t.Fatalf("%d bars for at least %.2f", len(bars), least)
		}
	}
}

// TestPlanBarsOneByOne: each piece in turn is tried on every bar from the first;
// in whole millimetres, so that many end flush with their bar.
func TestPlanBarsOneByOne(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		whole := func(lo, hi int, label string) float64 { return float64(rapid.IntRange(lo, hi).Draw(t, label)) }
		kerf, trim := whole(0, 2, "kerf"), whole(0, 3, "trim")
		var pieces, one []Piece
		for i := range rapid.IntRange(1, 8).Draw(t, "pieces") {
			p := Piece{fmt.Sprint("p", i), whole(1, 20-int(trim), "length"), rapid.IntRange(0, 3).Draw(t, "count")}
			pieces = append(pieces, p)
			for range max(p.Count, 1) {
				one = append(one, p)
			}
		}
		slices.SortStableFunc(one, func(a, b Piece) int { return int(b.LengthMm - a.LengthMm) })
		var want []Bar
		for _, p := range one {
			i, at := 0, trim
			for ; i < len(want); i++ {
				last := want[i].Cuts[len(want[i].Cuts)-1]
				if at = last.FromMm + last.LengthMm + kerf; at+p.LengthMm <= 20 {
					break
				}
				at = trim
			}
			if i == len(want) {
				want = append(want, Bar{LengthMm: 20})
			}
			want[i].Cuts = append(want[i].Cuts, Cut{p.Name, p.LengthMm, at})
			want[i].OffcutMm = max(0, 20-at-p.LengthMm-kerf)
		}
		got, err := PlanBars(pieces, 20, kerf, trim)
		if err != nil || fmt.Sprint(got) != fmt.Sprint(want) {
			t.Fatalf("%v, %v\nwant %v", got, err, want)
		}
	})
}

func TestPlanBarsRefuses(t *testing.T) {
	ok := []Piece{{"a", 100, 1}}
	for name, f := range map[string]func() ([]Bar, error){
		"long piece":   func() ([]Bar, error) { return PlanBars([]Piece{{"a", 995, 1}}, 1000, 2, 10) },
		"zero length":  func() ([]Bar, error) { return PlanBars([]Piece{{"a", 0, 1}}, 1000, 2, 10) },
		"NaN length":   func() ([]Bar, error) { return PlanBars([]Piece{{"a", math.NaN(), 1}}, 1000, 2, 10) },
		"count":        func() ([]Bar, error) { return PlanBars([]Piece{{"a", 10, -1}}, 1000, 2, 10) },
		"many":         func() ([]Bar, error) { return PlanBars([]Piece{{"a", 10, math.MaxInt}}, 1000, 2, 10) },
		"many in two":  func() ([]Bar, error) { return PlanBars([]Piece{{"a", 10, 15000}, {"b", 10, 15000}}, 1000, 2, 10) },
		"bar":          func() ([]Bar, error) { return PlanBars(ok, math.Inf(1), 2, 10) },
		"kerf":         func() ([]Bar, error) { return PlanBars(ok, 1000, -1, 10) },
		"NaN kerf":     func() ([]Bar, error) { return PlanBars(ok, 1000, math.NaN(), 10) },
		"just longer":  func() ([]Bar, error) { return PlanBars([]Piece{{"a", 990.1, 1}}, 1000, 2, 10) },
		"trim":         func() ([]Bar, error) { return PlanBars(ok, 1000, 2, 950) },
		"infinite cut": func() ([]Bar, error) { return PlanBars([]Piece{{"a", math.Inf(1), 1}}, 1000, 2, 0) },
	} {
		if bars, err := f(); err == nil || bars != nil {
			t.Errorf("%s: %v, %v; want only an error", name, bars, err)
		}
	}
}
