package bend

import (
	"math"
	"strings"
	"testing"

	"centrepop/parts/geom"
)

// lips is a box with a flange of 30 at the top and, on its free edge, one of 12.
func lips(t *testing.T, forward bool, more ...Flange) PanelBlank {
	t.Helper()
	b, err := box(append([]Flange{{Side: Top, HeightMm: 30, Forward: true}, {Side: Top, Nth: 1, HeightMm: 12, Forward: forward}}, more...)...).Blank()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A flange on a flange lies on the blank as in a chain of three legs, and so do places
// on it; each stands where the sums put it.
func TestLip(t *testing.T) {
	t.Parallel()
	square := Bend{2, 2, 90, 0}
	flat, err := Chain{LegsMm: []float64{120, 30, 12}, Bends: []Bend{square, square}}.Blank()
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		forward  bool
		foot     geom.Point // corner that the lip is measured from, on the line of the front
		turn     float64
		far      float64 // x of its free edge
		low, top float64
	}{
		// 30 over both sheets: the lip's front 28 over the base's. Its corner is on
		// the inside of the flange, 58 from the middle.
		"z": {false, geom.Point{XMm: 58, YMm: 28}, 0, 70, 26, 28},
		// Turned in, its front looks down, and its corner is the flange's outside.
		"c": {true, geom.Point{XMm: 60, YMm: 26}, 180, 48, 26, 28},
	} {
		b := lips(t, c.forward)
		lip := &b.Folds[1]
		if got := 60 + lip.EdgeMm; !near(got, flat.LengthMm, 1e-9) {
			t.Errorf("%s: blank %v, a chain %v", name, got, flat.LengthMm)
		}
		at := onChain(flat, 2, 7)
		if got := lip.OnBlank(3, 7); got.XMm != 3 || !near(60+got.YMm, at, 1e-9) {
			t.Errorf("%s: a hole at %v, in the chain at %v", name, got, at)
		}
		if got := b.Folds[0].StopMm(); !near(got, 30-4+allowance/2, 1e-6) {
			t.Errorf("%s: stop of the flange %v, from the outside of the lip", name, got)
		}
		foot, turn := lip.Wall()
		if !near(foot.XMm, c.foot.XMm, 1e-9) || !near(foot.YMm, c.foot.YMm, 1e-9) || !near(math.Abs(turn), c.turn, 1e-9) {
			t.Errorf("%s: from %v turned %v", name, foot, turn)
		}
		v := lip.Section()
		for _, i := range []int{2, 3} { // the free edge
			if !near(v[i].XMm, c.far, 1e-9) || v[i].YMm < c.low-1e-9 || v[i].YMm > c.top+1e-9 {
				t.Errorf("%s: the edge at %v", name, v[i])
			}
		}
		if order := b.Order(); order[0] != 1 || order[1] != 0 {
			t.Errorf("%s: order %v", name, order)
		}
	}
}

// What a folded lip does to the fold of its flange: turned in it stands 24 from the
// bend and 10 over the inside, (24 − 10 + 2)/√2 from the punch; turned out it hangs
// 22 and its own bend away from where the bend ends.
func TestLipWay(t *testing.T) {
	t.Parallel()
	b := lips(t, true)
	if w := b.WayOf(b.Order(), 0); !near(w.BesideMm, 16/math.Sqrt2, 1e-9) || !math.IsInf(w.UnderMm, 1) {
		t.Errorf("turned in: %+v", w)
	}
	if w := b.WayOf(b.Order(), 1); !math.IsInf(w.BesideMm, 1) || !math.IsInf(w.UnderMm, 1) {
		t.Errorf("the lip: %+v", w)
	}
	b = lips(t, false)
	if w := b.WayOf(b.Order(), 0); !near(w.UnderMm, allowance/2+22+2, 1e-6) || !math.IsInf(w.BesideMm, 1) {
		t.Errorf("turned out: %+v", w)
	}
	// The opposite flange with a lip turned in, 12 deep and 30 high: 120 between the
	// outsides, its tip 12 within.
	b = lips(t, true, Flange{Side: Bottom, HeightMm: 40, Forward: true})
	if w := b.WayOf(b.Order(), 2); !near(w.BesideMm, (120-12-4-(28-2)+0)/math.Sqrt2, 1e-9) {
		t.Errorf("opposite: %+v", w)
	}
}

// Lips that turn in all round: those on the left and right stop a gap before those at
// the top and bottom, which reach 12 in.
func TestLipCorner(t *testing.T) {
	t.Parallel()
	b := lips(t, true, Flange{Side: Right, HeightMm: 30, Forward: true}, Flange{Side: Right, Nth: 1, HeightMm: 12, Forward: true, FromMm: 1, ToMm: 9})
	top, right := &b.Folds[1], &b.Folds[3]
	if top.LeftMm != -100 || top.RightMm != 97.5 || right.LeftMm != 12.5-60 || right.RightMm != 51 {
		t.Errorf("top from %v to %v, right from %v to %v", top.LeftMm, top.RightMm, right.LeftMm, right.RightMm)
	}
	bend, edge := b.Folds[2].EdgeMm, right.EdgeMm
	var side []geom.Point
	for _, p := range b.Outline {
		if p.XMm >= bend-1e-6 {
			side = append(side, p)
		}
	}
	same(t, "right", side, []geom.Point{{XMm: bend, YMm: 57.5}, {XMm: bend, YMm: 47.5}, {XMm: edge, YMm: 47.5}, {XMm: edge, YMm: -51}, {XMm: bend, YMm: -51}, {XMm: bend, YMm: -60}})
}

func TestLipRefused(t *testing.T) {
	t.Parallel()
	if _, err := box(Flange{Side: Top, Nth: 1, HeightMm: 12}, Flange{Side: Top, HeightMm: 30}).Blank(); err == nil || !strings.Contains(err.Error(), "before the one that it is on") {
		t.Errorf("%v", err)
	}
	// Two setbacks of 4 leave nothing flat between the bends.
	if _, err := box(Flange{Side: Top, HeightMm: 8}, Flange{Side: Top, Nth: 1, HeightMm: 12}).Blank(); err == nil || !strings.Contains(err.Error(), "flange height") {
		t.Errorf("%v", err)
	}
	if _, err := box(Flange{Side: Top, HeightMm: 30, FromMm: 150}, Flange{Side: Top, Nth: 1, HeightMm: 12, ToMm: 60}).Blank(); err == nil || !strings.Contains(err.Error(), "length of the flange") {
		t.Errorf("%v", err)
	}
}
