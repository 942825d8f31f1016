package bend

import (
	"math"
	"slices"
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
	if _, err := box(Flange{Side: Top, Nth: 1, HeightMm: 12}, Flange{Side: Top, HeightMm: 30}).Blank(); err == nil || err.Error() != "bend: flange 2 of a side comes before the one that it is on" {
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

// turnedIn is a box of 200 × 120 with walls of 50 and flanges turned in on their free edges.
func turnedIn(lips [4]float64, edit func(*Panel)) PanelBlank {
	p := Panel{WidthMm: 200, HeightMm: 120, ThicknessMm: 2, GapMm: 0.5, Mitred: true}
	for s := Top; s <= Left; s++ {
		p.Flanges = append(p.Flanges, Flange{Side: s, HeightMm: 50, AngleDeg: 90, RadiusMm: 2})
		if lips[s] > 0 {
			p.Flanges = append(p.Flanges, Flange{Side: s, Nth: 1, HeightMm: lips[s], AngleDeg: 90, RadiusMm: 2})
		}
	}
	if edit != nil {
		edit(&p)
	}
	b, err := p.Blank()
	if err != nil {
		panic(err)
	}
	return b
}

// Flanges of 15 and 12 turned in at a corner of a box: folded, a point h up one lies h in
// from the outside of its wall. Their cuts stand 45 degrees to both and 0.5 apart, from
// the end of the bend (4 up) to the free edge of the lower one, 12; the higher goes on
// square from there.
func TestMitredLips(t *testing.T) {
	t.Parallel()
	b := turnedIn([4]float64{15, 12, 15, 12}, nil)
	top, right := b.at(Top, 1), b.at(Right, 1)
	shift := 0.5 / math.Sqrt2
	for _, f := range []*PanelFold{top, right} {
		_, half := b.halves(f.Side)
		if !near(f.RightMm, half-4-shift, 1e-9) || !near(f.LeftMm, 4+shift-half, 1e-9) || !near(f.RightMitreMm, 8, 1e-9) || !near(f.LeftMitreMm, 8, 1e-9) {
			t.Errorf("side %d: from %v to %v, mitred %v and %v", f.Side, f.LeftMm, f.RightMm, f.LeftMitreMm, f.RightMitreMm)
		}
		if want := f.Side.TurnedTo(geom.Point{XMm: half - 4 - shift, YMm: f.LineMm()}); geom.Distance(f.LineTo, want) > 1e-9 {
			t.Errorf("side %d: fold line to %v, want %v", f.Side, f.LineTo, want)
		}
	}
	on := func(f *PanelFold, along, h float64) bool { // on the outline, h up the flange
		want := f.OnBlank(along, h)
		for _, p := range b.Outline {
			if geom.Distance(p, want) < 1e-6 {
				return true
			}
		}
		return false
	}
	for i, ok := range []bool{
		on(top, 96-shift, 4), on(top, 88-shift, 12), on(top, 88-shift, 15), on(top, shift-96, 4),
		on(right, shift-56, 4), on(right, shift-48, 12), on(right, 56-shift, 4), on(right, 48-shift, 12),
	} {
		if !ok {
			t.Errorf("corner %d is not on the outline %v", i, b.Outline)
		}
	}
	// Seen on the base: (96 - s, 60 - 4) and (100 - 4, 56 - s) on lines at 45 degrees.
	if gap := ((100 - 4.0) - (56 - shift) - ((96 - shift) - 56)) / math.Sqrt2; !near(gap, 0.5, 1e-9) {
		t.Errorf("the cuts stand %v apart", gap)
	}
	small := turnedIn([4]float64{4.5, 12, 4.5, 12}, nil) // half a millimetre past the bend
	if f := small.at(Top, 1); !near(f.RightMitreMm, 0.5, 1e-9) || !slices.ContainsFunc(small.Outline, func(p geom.Point) bool { return geom.Distance(p, f.OnBlank(95.5-shift, 4.5)) < 1e-6 }) {
		t.Errorf("a small mitre: %+v, %v", f, small.Outline)
	}
	if w := b.WayOf(b.Order(), 0); !near(w.PunchMm, 200-2*12, 1e-9) { // the top wall, between flanges of 12
		t.Errorf("the punch has %v", w.PunchMm)
	}
	for name, edit := range map[string]func(*Panel){
		"not asked for": func(p *Panel) { p.Mitred = false }, "another height": func(p *Panel) { p.Flanges[0].HeightMm, p.Flanges[4].HeightMm = 60, 60 },
		"turned out": func(p *Panel) { p.Flanges[1].Forward, p.Flanges[5].Forward = true, true }, "a slant": func(p *Panel) { p.Flanges[1].AngleDeg, p.Flanges[5].AngleDeg = 80, 80 },
		"stays off": func(p *Panel) {
			for _, i := range []int{1, 5} {
				p.Flanges[i].FromMm, p.Flanges[i].ToMm = 30, 30
			}
		},
		"stays off by half": func(p *Panel) {
			for i := 1; i < len(p.Flanges); i += 2 {
				p.Flanges[i].ToMm = 0.5
			}
		},
		"stays off from the left by half": func(p *Panel) {
			for i := 1; i < len(p.Flanges); i += 2 {
				p.Flanges[i].FromMm = 0.5
			}
		},
		"its wall stays off": func(p *Panel) {
			for i := 0; i < len(p.Flanges); i += 2 {
				p.Flanges[i].ToMm = 0.5
			}
		},
		"its wall stays off from the left": func(p *Panel) {
			for i := 0; i < len(p.Flanges); i += 2 {
				p.Flanges[i].FromMm = 0.5
			}
		},
		"another radius": func(p *Panel) { p.Flanges[1].RadiusMm, p.Flanges[5].RadiusMm = 3, 3 },
	} {
		b := turnedIn([4]float64{15, 12, 15, 12}, edit)
		for _, f := range b.Folds {
			if f.LeftMitreMm != 0 || f.RightMitreMm != 0 {
				t.Errorf("%s: side %d is mitred", name, f.Side)
			}
		}
	}
	// One slanted flange is mitred at neither of its corners, the others where they meet.
	b = turnedIn([4]float64{15, 12, 15, 12}, func(p *Panel) { p.Flanges[1].AngleDeg = 80 })
	for side, want := range map[Side][2]float64{Top: {}, Right: {0, 8}, Bottom: {8, 8}, Left: {8, 0}} {
		if f := b.at(side, 1); !near(f.LeftMitreMm, want[0], 1e-9) || !near(f.RightMitreMm, want[1], 1e-9) {
			t.Errorf("beside a slanted one: side %d is mitred %v and %v", side, f.LeftMitreMm, f.RightMitreMm)
		}
	}
	// Square ones give way to those of 15 at the top and the bottom, with the gap: 60 less 15.5.
	b = turnedIn([4]float64{15, 12, 15, 12}, func(p *Panel) { p.Mitred = false })
	for _, side := range []Side{Right, Left} {
		if f := b.at(side, 1); !near(f.LeftMm, -44.5, 1e-9) || !near(f.RightMm, 44.5, 1e-9) {
			t.Errorf("square: side %d from %v to %v", side, f.LeftMm, f.RightMm)
		}
	}
	b = turnedIn([4]float64{15, 12, 0, 0}, nil) // one corner
	if top, right := b.at(Top, 1), b.at(Right, 1); top.LeftMitreMm != 0 || top.RightMitreMm != 8 || right.LeftMitreMm != 8 || right.RightMitreMm != 0 {
		t.Errorf("one corner: %+v, %+v", top, right)
	}
	p := Panel{WidthMm: 50, HeightMm: 200, ThicknessMm: 2, GapMm: 0.5, Mitred: true}
	for s := Top; s <= Left; s++ {
		p.Flanges = append(p.Flanges, Flange{Side: s, HeightMm: 50, AngleDeg: 90, RadiusMm: 2}, Flange{Side: s, Nth: 1, HeightMm: 30, AngleDeg: 90, RadiusMm: 2})
	}
	if _, err := p.Blank(); err == nil { // 46 of fold line, and 26 off each end
		t.Error("mitres that cross are taken")
	}
}

// TestPunchUnderLips: walls of 80 with edges of 18 turned in at the top and the bottom are folded last, with 140 less the
// sheet of the sides between those; folded first they leave 160 less twice 18 for the punch, and all between the walls at
// the left where the edges begin 110 from there: 110 leaned by 45° lie 110 cos 45° − 80 sin 45° = 21 off the punch, over 15.
func TestPunchUnderLips(t *testing.T) {
	t.Parallel()
	panel := func(offMm float64) PanelBlank {
		wall := func(s Side) Flange {
			return Flange{Side: s, HeightMm: 80, AngleDeg: 90, RadiusMm: 1.5, Forward: true}
		}
		top, bottom := wall(Top), wall(Bottom)
		top.Nth, top.HeightMm, top.FromMm = 1, 18, offMm
		bottom.Nth, bottom.HeightMm, bottom.ToMm = 1, 18, offMm
		b, err := Panel{WidthMm: 140, HeightMm: 160, ThicknessMm: 1.5, GapMm: 0.5, Flanges: []Flange{wall(Top), wall(Right), wall(Bottom), wall(Left), top, bottom}}.Blank()
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	b, first := panel(0), []int{4, 5, 0, 2, 1, 3}
	if w := b.WayOf(b.Order(), 0); !near(w.PunchMm, 140-2*1.5, 1e-9) || !slices.Equal(b.Order()[2:4], []int{1, 3}) {
		t.Errorf("last: %+v, %v", w, b.Order())
	}
	if w := b.WayOf(first, 1); !near(w.PunchMm, 160-2*18, 1e-9) {
		t.Errorf("first: %+v", w)
	}
	b = panel(110)
	if right, left := b.WayOf(first, 1).PunchMm, b.WayOf(first, 3).PunchMm; !near(right, 160-2*18, 1e-9) || !near(left, 160-2*1.5, 1e-9) {
		t.Errorf("at one end: %v and %v", right, left)
	}
}
