package bars

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"centrepop/layout/lookup"
)

// Turned over, frame members share their cuts: four of 450 (long 500) in 50 take
// the first point, four middles and three cuts of 3/cos 45°.
func TestTurnedPairs(t *testing.T) {
	t.Parallel()
	member := Member{450, 50, 45, 45}
	got, err := Nest([]Piece{{Name: "rail", Member: member, Count: 4}}, Stock{BarMm: 6000, KerfMm: 3, TrimMm: 10})
	if err != nil || len(got) != 1 || len(got[0].Cuts) != 4 {
		t.Fatalf("%+v, %v", got, err)
	}
	kerf := 3 * math.Sqrt2
	if from, long := got[0].Cuts[1].Span(); !near(from, 35+450+kerf-25, 1e-9) || !near(long, 500, 1e-9) {
		t.Errorf("from %v, %v long", from, long)
	}
	for i, c := range got[0].Cuts {
		if want := 35 + float64(i)*(450+kerf); !near(c.FromMm, want, 1e-9) || c.Turned != (i%2 == 1) || c.SharedWithBefore != (i > 0) {
			t.Errorf("piece %d: %+v, want from %v", i, c, want)
		}
	}
	if want := 6000 - (35 + 4*450 + 3*kerf + 25 + kerf); !near(got[0].OffcutMm, want, 1e-9) {
		t.Errorf("offcut %v, want %v", got[0].OffcutMm, want)
	}
	// An angle section cannot be turned: a wedge of the width is lost each time.
	got, _ = Nest([]Piece{{Name: "rail", Member: member, Count: 2, Keep: KeepTop}}, Stock{BarMm: 6000, KerfMm: 3})
	if second := got[0].Cuts[1]; !near(second.FromMm, 25+450+50+kerf, 1e-9) || second.Turned || second.SharedWithBefore {
		t.Errorf("%+v", second)
	}
	// A brace lies against the next as it is.
	got, _ = Nest([]Piece{{Name: "brace", Member: Member{300, 50, 45, -45}, Count: 2, Keep: KeepTop}}, Stock{BarMm: 6000, KerfMm: 3})
	if second := got[0].Cuts[1]; !second.SharedWithBefore || second.Reversed || !near(second.FromMm, 25+300+kerf, 1e-9) {
		t.Errorf("%+v", second)
	}
	// One mitred end: end for end, like against like.
	got, _ = Nest([]Piece{{Name: "leg", Member: Member{300, 50, 0, 30}, Count: 3}}, Stock{BarMm: 6000, KerfMm: 3})
	cuts := got[0].Cuts
	if !cuts[1].SharedWithBefore || !cuts[2].SharedWithBefore || cuts[1].Reversed == cuts[0].Reversed {
		t.Errorf("%+v", cuts)
	}
	// Unlike widths never share a cut.
	if gap, shared := between(Member{300, 50, 0, 0}, Member{300, 40, 0, 0}, 3); shared || gap != 3 {
		t.Error(gap, shared)
	}
}

func TestNestBars(t *testing.T) {
	t.Parallel()
	square := func(l float64) Member { return Member{LengthMm: l, WidthMm: 40} }
	got, err := Nest([]Piece{{Name: "a", Member: square(1000), Count: 2}, {Name: "b", Member: square(2000)}, {Name: "c", Member: square(900)}}, Stock{BarMm: 3000, KerfMm: 0})
	if err != nil || len(got) != 2 || len(got[0].Cuts) != 2 || got[0].Cuts[0].Name != "b" || got[0].Cuts[1].Name != "a" || got[0].OffcutMm != 0 || got[1].Cuts[1].Name != "c" || got[1].OffcutMm != 1100 {
		t.Errorf("%+v, %v", got, err)
	}
	// Of equal length, as they came in.
	got, _ = Nest([]Piece{{Name: "a", Member: square(500)}, {Name: "b", Member: square(500)}, {Name: "c", Member: square(0.5)}}, Stock{BarMm: 3000})
	if got[0].Cuts[0].Name != "a" || got[0].Cuts[1].Name != "b" {
		t.Errorf("%+v", got)
	}
	if got, err := Nest([]Piece{{Member: square(300), Count: 19999}, {Member: square(300)}}, Stock{BarMm: 3000}); err != nil || len(got) != 2000 {
		t.Errorf("%d bars, %v", len(got), err)
	}
	if _, err := Nest([]Piece{{Member: square(300), Count: 20000}, {Member: square(300), Count: 1}}, Stock{BarMm: 3000}); err == nil {
		t.Error("20001 pieces are accepted")
	}
	if got, err := Nest(nil, Stock{BarMm: 3000}); got != nil || err != nil {
		t.Errorf("%+v, %v", got, err)
	}
	for name, c := range map[string]struct {
		p Piece
		s Stock
	}{
		"too long":       {Piece{Member: Member{2960, 50, 45, 45}}, Stock{BarMm: 3000}},
		"with trim":      {Piece{Member: square(2995)}, Stock{BarMm: 3000, TrimMm: 6}},
		"bad member":     {Piece{Member: Member{}}, Stock{BarMm: 3000}},
		"negative count": {Piece{Member: square(10), Count: -1}, Stock{BarMm: 3000}},
		"too many":       {Piece{Member: square(10), Count: 20001}, Stock{BarMm: 3000}},
		"no bar":         {Piece{Member: square(10)}, Stock{}},
		"kerf":           {Piece{Member: square(10)}, Stock{BarMm: 3000, KerfMm: -1}},
		"trim":           {Piece{Member: square(10)}, Stock{BarMm: 3000, TrimMm: math.NaN()}},
	} {
		if _, err := Nest([]Piece{c.p}, c.s); err == nil {
			t.Errorf("%s is accepted", name)
		}
	}
	var r *lookup.RangeError
	if _, err := Nest([]Piece{{Name: "rail", Member: square(3001)}}, Stock{BarMm: 3000}); !errors.As(err, &r) || r.What != "piece rail" {
		t.Errorf("%v", err)
	}
	if _, err := Nest([]Piece{{Member: square(2995)}}, Stock{BarMm: 3000, TrimMm: 5}); err != nil {
		t.Error(err)
	}
}

// TestNestSquare: pieces cut square, at any width. Bar 1000, trim 10, kerf 2: 600 goes
// 10-610; 500 does not fit and opens bar 2 at 10-510; 380 fits bar 1 at 612-992; 300 fits
// bar 2 at 512-812; 175 at 814-989. What ends flush needs no cut after it.
func TestNestSquare(t *testing.T) {
	t.Parallel()
	piece := func(name string, mm float64, count int) Piece {
		return Piece{Name: name, Member: Member{LengthMm: mm, WidthMm: 1}, Count: count}
	}
	for want, in := range map[string]struct {
		trim   float64
		pieces []Piece
	}{
		"a 600 at 10, d 380 at 612, left 6; b 500 at 10, c 300 at 512, e 175 at 814, left 9; ":           {10, []Piece{piece("c", 300, 1), piece("a", 600, 0), piece("e", 175, 1), piece("b", 500, 1), piece("d", 380, 1)}},
		"x 499 at 0, x 499 at 501, left 0; ":                                                             {0, []Piece{piece("x", 499, 2)}},
		"s 820 at 5, p 55 at 827, p 55 at 884, p 55 at 941, left 2; s 820 at 5, p 55 at 827, left 116; ": {5, []Piece{piece("s", 820, 2), piece("p", 55, 4)}},
	} {
		bars, err := Nest(in.pieces, Stock{BarMm: 1000, KerfMm: 2, TrimMm: in.trim})
		got := ""
		for _, b := range bars {
			for _, c := range b.Cuts {
				got += fmt.Sprintf("%s %g at %g, ", c.Name, c.Member.LengthMm, c.FromMm)
			}
			got += fmt.Sprintf("left %g; ", b.OffcutMm)
		}
		if err != nil || got != want {
			t.Errorf("%q, %v, want %q", got, err, want)
		}
	}
	for _, most := range []int{maxPieces - 1, maxPieces} {
		if _, err := Nest([]Piece{piece("a", 10, most), piece("b", 10, 1)}, Stock{BarMm: 1000, KerfMm: 2}); (err == nil) != (most < maxPieces) {
			t.Errorf("%d pieces: %v", most+1, err)
		}
	}
}

// Whatever the pieces: all are cut, none overlaps the one before or leaves its
// bar, a kerf stays between them, and the plan is the same twice.
func TestNestAny(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		stock := Stock{BarMm: 3000, KerfMm: rapid.Float64Range(0, 5).Draw(t, "kerf"), TrimMm: rapid.Float64Range(0, 20).Draw(t, "trim")}
		var pieces []Piece
		want := 0
		for range rapid.IntRange(1, 6).Draw(t, "kinds") {
			p := Piece{
				Member: Member{rapid.Float64Range(200, 1500).Draw(t, "length"), 50, rapid.Float64Range(-45, 45).Draw(t, "start"), rapid.Float64Range(-45, 45).Draw(t, "end")},
				Count:  rapid.IntRange(1, 4).Draw(t, "count"), Keep: Keep(rapid.IntRange(0, 3).Draw(t, "keep")),
			}
			want += p.Count
			pieces = append(pieces, p)
		}
		plan, err := Nest(pieces, stock)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := Nest(pieces, stock)
		if !reflect.DeepEqual(plan, again) {
			t.Fatal("two plans of the same pieces differ")
		}
		for _, bar := range plan {
			want -= len(bar.Cuts)
			for _, y := range []float64{-25, 0, 25} {
				free := stock.TrimMm
				for _, c := range bar.Cuts {
					start := c.FromMm - y*tan(c.Member.StartDeg)
					end := c.FromMm + c.Member.LengthMm + y*tan(c.Member.EndDeg)
					if start < free-1e-6 || end > stock.BarMm+1e-6 {
						t.Fatalf("at %v from %v to %v, free from %v", y, start, end, free)
					}
					free = end + stock.KerfMm/cos(c.Member.EndDeg)
				}
			}
		}
		if want != 0 {
			t.Fatalf("%d pieces are not cut", want)
		}
	})
}

// A channel on its back turns over only end for end, and an angle not at all: of pieces
// with one mitred end, the second channel lies mitre to mitre, the second angle does not.
func TestKeep(t *testing.T) {
	t.Parallel()
	for shape, c := range map[Shape]struct {
		open             Side
		keep             Keep
		turned, reversed bool
	}{
		Channel: {Back, KeepFront, true, true}, Angle: {"", KeepAll, false, false}, Square: {"", KeepNone, true, true},
	} {
		s := Section{Shape: shape, WidthMm: 50, DepthMm: 50, WallMm: 5, FlangeMm: 5, Open: c.open}
		if KeepOf(s) != c.keep {
			t.Errorf("%s: %v", shape, KeepOf(s))
		}
		got, err := Nest([]Piece{{Member: Member{300, 50, 0, 30}, Count: 2, Keep: KeepOf(s)}}, Stock{BarMm: 3000})
		if err != nil {
			t.Fatal(err)
		}
		if second := got[0].Cuts[1]; second.Turned != c.turned || second.Reversed != c.reversed || second.SharedWithBefore != c.reversed {
			t.Errorf("%s: %+v", shape, second)
		}
	}
	if KeepOf(Section{Shape: Channel, Open: Top}) != KeepTop || KeepOf(Section{Shape: Channel, Open: Bottom}) != KeepTop || KeepOf(Section{Shape: Flat}) != KeepNone {
		t.Error("a channel that opens up")
	}
}
