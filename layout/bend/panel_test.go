package bend

import (
	"errors"
	"math"
	"slices"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// box is a panel of 2 mm with square flanges all round.
func box(flanges ...Flange) Panel {
	for i := range flanges {
		if flanges[i].AngleDeg == 0 {
			flanges[i].AngleDeg = 90
		}
		if flanges[i].RadiusMm == 0 {
			flanges[i].RadiusMm = 2
		}
	}
	return Panel{WidthMm: 200, HeightMm: 120, ThicknessMm: 2, GapMm: 0.5, Flanges: flanges}
}

// For 2 mm and R2, DIN 6935 gives k = 0.65: an allowance of π/2·(2 + 0.65) = 4.1626,
// a deduction of 2·4 − 4.1626 = 3.8374. The rest is sums.
const allowance, deduction = 4.162610, 3.837390

func outline(b PanelBlank) float64 {
	sum := 0.0
	for i, p := range b.Outline {
		sum += p.Cross(b.Outline[(i+1)%len(b.Outline)]) / 2
	}
	return -sum // clockwise
}

func same(t *testing.T, what string, got, want []geom.Point) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %v, want %v", what, got, want)
		return
	}
	for i := range got {
		if !near(got[i].XMm, want[i].XMm, 1e-5) || !near(got[i].YMm, want[i].YMm, 1e-5) {
			t.Errorf("%s: point %d is %v, want %v", what, i, got[i], want[i])
		}
	}
}

// TestPanelOutline: each way that a flange can end, corner by corner.
func TestPanelOutline(t *testing.T) {
	t.Parallel()
	edge := 60 + 40 - deduction // of a top flange of 40
	side := 100 + 30 - deduction
	for name, c := range map[string]struct {
		p    Panel
		want []geom.Point
	}{
		"none": {box(), []geom.Point{{XMm: 100, YMm: 60}, {XMm: 100, YMm: -60}, {XMm: -100, YMm: -60}, {XMm: -100, YMm: 60}}},
		"from end to end": {box(Flange{Side: Top, HeightMm: 40}), []geom.Point{
			{XMm: -100, YMm: edge}, {XMm: 100, YMm: edge}, {XMm: 100, YMm: -60}, {XMm: -100, YMm: -60}}},
		// Reliefs one thickness wide and 4 + 2 deep, 10 and 25 from the ends.
		"within its side": {box(Flange{Side: Top, HeightMm: 40, FromMm: 10, ToMm: 25}), []geom.Point{
			{XMm: -90, YMm: edge}, {XMm: 75, YMm: edge}, {XMm: 75, YMm: 54}, {XMm: 77, YMm: 54}, {XMm: 77, YMm: 60}, {XMm: 100, YMm: 60},
			{XMm: 100, YMm: -60}, {XMm: -100, YMm: -60}, {XMm: -100, YMm: 60}, {XMm: -92, YMm: 60}, {XMm: -92, YMm: 54}, {XMm: -90, YMm: 54}}},
		"almost to the end": {box(Flange{Side: Bottom, HeightMm: 40, ToMm: 2}), []geom.Point{
			{XMm: 100, YMm: 60}, {XMm: 100, YMm: -edge}, {XMm: -98, YMm: -edge}, {XMm: -98, YMm: -54}, {XMm: -100, YMm: -54}, {XMm: -100, YMm: 60}}},
		// Both end 2.5 within the other's outside; the bends end at 56 + 4.1626
		// and 96 + 4.1626, the relief begins 6 within.
		"a corner": {box(Flange{Side: Top, HeightMm: 40}, Flange{Side: Right, HeightMm: 30}), []geom.Point{
			{XMm: -100, YMm: edge}, {XMm: 97.5, YMm: edge}, {XMm: 97.5, YMm: 56 + allowance}, {XMm: 94, YMm: 56 + allowance},
			{XMm: 94, YMm: 54}, {XMm: 96 + allowance, YMm: 54}, {XMm: 96 + allowance, YMm: 57.5}, {XMm: side, YMm: 57.5},
			{XMm: side, YMm: -60}, {XMm: -100, YMm: -60}}},
		"a wide corner": {box(Flange{Side: Top, HeightMm: 40, ToMm: 8}, Flange{Side: Right, HeightMm: 30, FromMm: 7}), []geom.Point{
			{XMm: -100, YMm: edge}, {XMm: 92, YMm: edge}, {XMm: 92, YMm: 53}, {XMm: side, YMm: 53},
			{XMm: side, YMm: -60}, {XMm: -100, YMm: -60}}},
		// The right one begins well below the corner, which the top one reaches.
		"past a corner": {box(Flange{Side: Top, HeightMm: 40}, Flange{Side: Right, HeightMm: 30, FromMm: 15}), []geom.Point{
			{XMm: -100, YMm: edge}, {XMm: 100, YMm: edge}, {XMm: 100, YMm: 60}, {XMm: 100, YMm: 47}, {XMm: 94, YMm: 47}, {XMm: 94, YMm: 45}, {XMm: side, YMm: 45},
			{XMm: side, YMm: -60}, {XMm: -100, YMm: -60}}},
		// Each has its own relief, and the base keeps its corner.
		"well apart": {box(Flange{Side: Top, HeightMm: 40, ToMm: 20}, Flange{Side: Right, HeightMm: 30, FromMm: 15}), []geom.Point{
			{XMm: -100, YMm: edge}, {XMm: 80, YMm: edge}, {XMm: 80, YMm: 54}, {XMm: 82, YMm: 54}, {XMm: 82, YMm: 60}, {XMm: 100, YMm: 60},
			{XMm: 100, YMm: 47}, {XMm: 94, YMm: 47}, {XMm: 94, YMm: 45}, {XMm: side, YMm: 45},
			{XMm: side, YMm: -60}, {XMm: -100, YMm: -60}}},
	} {
		b, err := c.p.Blank()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		same(t, name, b.Outline, c.want)
	}
}

// TestPanelChain: across two opposite flanges a panel is a chain of three legs,
// and its area that of the strips.
func TestPanelChain(t *testing.T) {
	t.Parallel()
	p := box(Flange{Side: Left, HeightMm: 25, AngleDeg: 120, RadiusMm: 3}, Flange{Side: Right, HeightMm: 40, AngleDeg: 60})
	b, err := p.Blank()
	if err != nil {
		t.Fatal(err)
	}
	flat, err := Chain{LegsMm: []float64{25, 200, 40}, Bends: []Bend{{2, 3, 120, 0}, {2, 2, 60, 0}}}.Blank()
	if err != nil {
		t.Fatal(err)
	}
	left, right := b.Folds[0], b.Folds[1]
	if got := left.EdgeMm + right.EdgeMm; !near(got, flat.LengthMm, 1e-9) {
		t.Errorf("blank %v, a chain %v", got, flat.LengthMm)
	}
	if !near(left.StopMm(), flat.Folds[0].LineMm, 1e-9) || !near(right.StopMm(), flat.LengthMm-flat.Folds[1].LineMm, 1e-9) {
		t.Errorf("stops %v and %v, the chain's lines at %v and %v of %v", left.StopMm(), right.StopMm(), flat.Folds[0].LineMm, flat.Folds[1].LineMm, flat.LengthMm)
	}
	if got := outline(b); !near(got, flat.LengthMm*120, 1e-6) {
		t.Errorf("area %v, want %v", got, flat.LengthMm*120)
	}
	// A hole 15 up the right flange and 10 above its middle.
	want := onChain(flat, 2, 15)
	if got := right.OnBlank(-10, 15); !near(got.XMm+left.EdgeMm, want, 1e-9) || got.YMm != 10 {
		t.Errorf("the hole lies at %v, the chain's at %v", got, want)
	}
}

func TestPanelSides(t *testing.T) {
	t.Parallel()
	for s, want := range map[Side]geom.Point{Top: {XMm: 3, YMm: 5}, Right: {XMm: 5, YMm: -3}, Bottom: {XMm: -3, YMm: -5}, Left: {XMm: -5, YMm: 3}} {
		if got := s.TurnedTo(geom.Point{XMm: 3, YMm: 5}); got != want {
			t.Errorf("side %d: %v, want %v", s, got, want)
		}
	}
}

// TestPanelOrder: short lines first, the lower of two opposite flanges first;
// and what stands in the way then.
func TestPanelOrder(t *testing.T) {
	t.Parallel()
	b, err := box(Flange{Side: Top, HeightMm: 60}, Flange{Side: Right, HeightMm: 50}, Flange{Side: Bottom, HeightMm: 40}, Flange{Side: Left, HeightMm: 30}).Blank()
	if err != nil {
		t.Fatal(err)
	}
	order := b.Order()
	for i, want := range []int{3, 1, 2, 0} { // left, right (120 long), bottom, top (200 long)
		if order[i] != want {
			t.Fatalf("order %v", order)
		}
	}
	// A flange on the left as high as 130 would stand up to the ram: its pair comes last.
	deep, err := box(Flange{Side: Top, HeightMm: 60}, Flange{Side: Right, HeightMm: 50}, Flange{Side: Bottom, HeightMm: 40}, Flange{Side: Left, HeightMm: 130}).Blank()
	if err != nil || !slices.Equal(deep.Order(), []int{2, 0, 1, 3}) {
		t.Errorf("order %v, %v", deep.Order(), err)
	}
	// Square over square: (base − height − thickness) / √2. Between the sides: 200 − 2·2.
	for i, want := range []Way{
		{BesideMm: (120 - 40 - 2) / math.Sqrt2, PunchMm: 196}, {BesideMm: (200 - 30 - 2) / math.Sqrt2}, {BesideMm: math.Inf(1), PunchMm: 196}, {BesideMm: math.Inf(1)},
	} {
		got := b.WayOf(order, i)
		if !math.IsInf(got.UnderMm, 1) || got.PunchMm != want.PunchMm || got.DieMm != want.DieMm || got.BesideMm != want.BesideMm && !near(got.BesideMm, want.BesideMm, 1e-9) {
			t.Errorf("fold %d: %+v, want %+v", i, got, want)
		}
	}
	// Set in by 60 and 26 high, a flange across ends some 60 behind the fold line, and
	// (60 − 26) / √2 = 24 beside the punch at last; set in by 40 it is 10 beside it. One
	// that hangs stays off the die from 50 behind the line on. The line lies 4 less half a bend in from the end: a tenth more
	// or less than 50, and than 15·√2 + 26, tells.
	line := 4 - allowance/2
	for _, c := range []struct {
		inMm    float64
		forward bool
		want    [2]float64
	}{{60, false, [2]float64{}}, {40, false, [2]float64{120 - 2, 0}}, {60, true, [2]float64{}}, {40, true, [2]float64{0, 120 - 2}},
		{line + 50.1, true, [2]float64{}}, {line + 49.9, true, [2]float64{0, 120 - 2}}, {line + 15*math.Sqrt2 + 26.1, false, [2]float64{}}, {line + 15*math.Sqrt2 + 25.9, false, [2]float64{120 - 2, 0}},
	} {
		b, err := box(Flange{Side: Top, HeightMm: 26, FromMm: c.inMm, ToMm: c.inMm, Forward: c.forward}, Flange{Side: Left, HeightMm: 90}).Blank()
		if err != nil {
			t.Fatal(err)
		}
		if w := b.WayOf([]int{0, 1}, 1); w.PunchMm != c.want[0] || w.DieMm != c.want[1] {
			t.Errorf("%+v: %v and %v", c, w.PunchMm, w.DieMm)
		}
	}
	// A flange on the other side of the sheet hangs beside the die, its inside 58 from
	// the middle; the fold line is half a bend beyond 56.
	b, err = box(Flange{Side: Top, HeightMm: 60}, Flange{Side: Bottom, HeightMm: 40, Forward: true}).Blank()
	if w := b.WayOf(b.Order(), 0); err != nil || !math.IsInf(w.BesideMm, 1) || !near(w.UnderMm, 58+56+allowance/2, 1e-6) || w.PunchMm != 0 || w.DieMm != 0 {
		t.Errorf("%+v, %v", w, err)
	}
	// One that hangs at the end of the fold limits the die there alone.
	b, err = box(Flange{Side: Top, HeightMm: 60}, Flange{Side: Right, HeightMm: 40, Forward: true}).Blank()
	if err != nil || b.WayOf(b.Order(), 0) != (Way{BesideMm: math.Inf(1), UnderMm: math.Inf(1), DieMm: 198, DieEnds: 1}) {
		t.Errorf("%+v, %v", b.WayOf(b.Order(), 0), err)
	}
	// Leaning in by 45°: the tip of 40 lies further in than a square one by what
	// the rest of the leg, 36, takes along: 36·cos 45° and the bend's own.
	b, _ = box(Flange{Side: Top, HeightMm: 40, AngleDeg: 135}).Blank()
	if c := math.Sqrt2 / 2; !near(b.Folds[0].inMm(), 4-2*c+36*c, 1e-9) {
		t.Errorf("tip %v in", b.Folds[0].inMm())
	}
}

// TestSlantedSection: a flange of 40 folded by 60° leaves the corner of the base's outside,
// 60 from its middle, at 60°: its free edge lies 40·cos 60° = 20 out and 40·sin 60° away
// on the outside, on the inside 2 square to that, 2·sin 60° in and 2·cos 60° further.
// Toward who looks at it all is mirrored about the middle of the sheet, at −1. Its flat
// begins (2 + 2)·tan 30° from the corner.
func TestSlantedSection(t *testing.T) {
	t.Parallel()
	sin, cos, begins := math.Sqrt(3)/2, 0.5, 4/math.Sqrt(3)
	for _, forward := range []bool{false, true} {
		b, err := box(Flange{Side: Top, HeightMm: 40, AngleDeg: 60, Forward: forward}).Blank()
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range []float64{begins, 40} {
			for _, in := range []float64{0, 2} {
				want := geom.Point{XMm: 60 + at*cos - in*sin, YMm: -at*sin - in*cos}
				if forward {
					want.YMm = -2 - want.YMm
				}
				v := b.Folds[0].Section()
				if !slices.ContainsFunc(v, func(p geom.Vertex) bool { return geom.Distance(p.Point, want) < 1e-9 }) {
					t.Errorf("forward %v: no corner %v among %v", forward, want, v)
				}
			}
		}
	}
}

// TestPanelSection: the section of a flange has the area of its strip: the flat
// and a ring sector, and stands on the side it was folded to.
func TestPanelSection(t *testing.T) {
	t.Parallel()
	for _, forward := range []bool{false, true} {
		b, err := box(Flange{Side: Top, HeightMm: 40, Forward: forward}).Blank()
		if err != nil {
			t.Fatal(err)
		}
		v := b.Folds[0].Section()
		area := 0.0
		for i, p := range v {
			q := v[(i+1)%len(v)]
			area += p.Cross(q.Point) / 2
			if p.Bulge != 0 { // the segment of an arc over its chord
				turn := 4 * math.Atan(p.Bulge)
				r := geom.Distance(p.Point, q.Point) / 2 / math.Sin(math.Abs(turn)/2)
				area += r * r / 2 * (turn - math.Sin(turn))
			}
		}
		if want := 36*2 + math.Pi/4*(16-4); !near(area, want, 1e-9) {
			t.Errorf("forward %v: area %v, want %v", forward, area, want)
		}
		// The bend begins 4 before the outside at 60; its middle is 2 off the sheet's inside.
		if want := (geom.Point{XMm: 56, YMm: map[bool]float64{true: 2, false: -4}[forward]}); geom.Distance(b.Folds[0].Centre(), want) > 1e-9 {
			t.Errorf("forward %v: centre %v, want %v", forward, b.Folds[0].Centre(), want)
		}
		low, high := 0.0, 0.0
		for _, p := range v {
			low, high = math.Min(low, p.YMm), math.Max(high, p.YMm)
			if p.XMm > 60+1e-9 || p.XMm < 56-1e-9 {
				t.Errorf("forward %v: %v is not over the flange", forward, p)
			}
		}
		if want := [2]float64{-40, 0}; !forward && (!near(low, want[0], 1e-9) || high != 0) {
			t.Errorf("away: %v to %v", low, high)
		}
		if forward && (!near(high, 38, 1e-9) || !near(low, -2, 1e-9)) {
			t.Errorf("forward: %v to %v", low, high)
		}
	}
}

func TestPanelRefused(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		p    Panel
		what string
	}{
		{Panel{HeightMm: 10, ThicknessMm: 2}, "base width"}, {Panel{WidthMm: 10, ThicknessMm: 2}, "base height"},
		{Panel{WidthMm: 10, HeightMm: 10, ThicknessMm: 2, GapMm: -1}, "gap"}, {Panel{WidthMm: 10, HeightMm: 10, ThicknessMm: 2, GapMm: 10001}, "gap"},
		{Panel{WidthMm: 10001, HeightMm: 10, ThicknessMm: 2}, "base width"}, {Panel{WidthMm: 10, HeightMm: 10001, ThicknessMm: 2}, "base height"},
		{box(Flange{Side: Top, HeightMm: 10001}), "flange height"}, {box(Flange{Side: Top, HeightMm: 40, FromMm: 10001}), "distance from the left end"}, {box(Flange{Side: Top, HeightMm: 40, ToMm: 10001}), "distance from the right end"},
		{box(Flange{Side: Top, HeightMm: 4}), "flange height"}, {box(Flange{Side: Top, HeightMm: 40, AngleDeg: 180}), "bend angle"},
		{box(Flange{Side: Top, HeightMm: 40, FromMm: -1}), "distance from the left end"}, {box(Flange{Side: Top, HeightMm: 40, ToMm: -1}), "distance from the right end"},
		{box(Flange{Side: Top, HeightMm: 40, FromMm: 120, ToMm: 80}), "length of the flange"},
		{Panel{WidthMm: 40, HeightMm: 12, ThicknessMm: 2, Flanges: []Flange{{Side: Top, HeightMm: 20, AngleDeg: 90, RadiusMm: 2}, {Side: Bottom, HeightMm: 20, AngleDeg: 90, RadiusMm: 2}}}, "base"},
	} {
		var r *lookup.RangeError
		if _, err := c.p.Blank(); !errors.As(err, &r) || r.What != c.what {
			t.Errorf("%+v: %v", c.p, err)
		}
	}
	// Just wide enough for two reliefs of 6.
	if _, err := (Panel{WidthMm: 40, HeightMm: 12.1, ThicknessMm: 2, Flanges: []Flange{{Side: Top, HeightMm: 20, AngleDeg: 90, RadiusMm: 2}, {Side: Bottom, HeightMm: 20, AngleDeg: 90, RadiusMm: 2}}}).Blank(); err != nil {
		t.Error(err)
	}
}

// TestTurned: the end of a bend and a place up its flange, by hand: of 60° over R3 in
// 2 mm, 10 up. Turned forwards the inside goes round its 3, backwards the outside its 5.
func TestTurned(t *testing.T) {
	t.Parallel()
	sin, cos := math.Sqrt(3)/2, 0.5
	for forward, want := range map[bool]frame{
		true:  {geom.Point{XMm: 3*sin + 10*cos, YMm: 3*(1-cos) + 10*sin}, math.Pi / 3},
		false: {geom.Point{XMm: 5*sin + 10*cos, YMm: -5*(1-cos) - 10*sin}, -math.Pi / 3},
	} {
		f := PanelFold{Flange: Flange{AngleDeg: 60, RadiusMm: 3, Forward: forward}, ThicknessMm: 2}
		got := f.turned(10)
		same(t, "the place", []geom.Point{got.at}, []geom.Point{want.at})
		if !near(got.turnRad, want.turnRad, 1e-12) {
			t.Errorf("forward %v: turned %v, want %v", forward, got.turnRad, want.turnRad)
		}
	}
}

// TestPanelLines: the bending line of each side lies on it, half the deduction
// outside where the flange's outside would be, and ends at its reliefs: a thickness
// of 2 beyond the flange's own ends, 10 and 25 from the sheet's as seen up the flange.
func TestPanelLines(t *testing.T) {
	t.Parallel()
	for s, out := range map[Side]float64{Top: 60, Right: 100, Bottom: 60, Left: 100} {
		half := 160 - out
		b, err := box(Flange{Side: s, HeightMm: 40, FromMm: 10, ToMm: 25}).Blank()
		if err != nil {
			t.Fatal(err)
		}
		f, line := &b.Folds[0], out-deduction/2
		want := []geom.Point{s.TurnedTo(geom.Point{XMm: 10 - half, YMm: line}), s.TurnedTo(geom.Point{XMm: half - 25, YMm: line})}
		same(t, "line", []geom.Point{f.LineFrom, f.LineTo}, want)
	}
}

// Flanges that stand up to the ram are folded last, though their lines are the shorter:
// 220 beside a top of 24. Where both are high the lower pair goes first, and what stands
// at its ends reaches 150 over the line of a base that leans by 45°, or by the base's own
// depth where that is less: of 120 √(150² + 120²) = 192.1, of 200 150 √2 = 212.1.
func TestFoldsUnderRam(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		side, top, risen float64
		order            []int
	}{
		{220, 24, 0, []int{0, 2, 1}},
		{101, 24, 0, []int{0, 2, 1}},
		{100, 24, 0, []int{2, 1, 0}},
		{150, 160, math.Hypot(150, 120), []int{2, 1, 0}},
		{160, 101, 101 * math.Sqrt2, []int{0, 2, 1}},
	} {
		b, err := box(Flange{Side: Top, HeightMm: c.top}, Flange{Side: Right, HeightMm: c.side}, Flange{Side: Left, HeightMm: c.side}).Blank()
		if err != nil {
			t.Fatal(err)
		}
		order := b.Order()
		if !slices.Equal(order, c.order) && !slices.Equal(order, []int{c.order[1], c.order[0], c.order[2]}) && !slices.Equal(order, []int{c.order[0], c.order[2], c.order[1]}) {
			t.Errorf("%v beside %v: order %v, want %v", c.side, c.top, order, c.order)
		}
		if w := b.WayOf(order, order[2]); !near(w.RamMm, c.risen, 1e-9) {
			t.Errorf("%v beside %v: %v to clear, want %v", c.side, c.top, w.RamMm, c.risen)
		}
	}
}
