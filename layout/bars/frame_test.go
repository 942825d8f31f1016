package bars

import (
	"math"
	"testing"

	"centrepop/parts/geom"
)

// A corner of two equal tubes, their long sides below: the second stands up at the
// right end of the first, turned a quarter, its lower side outside.
func TestOnto(t *testing.T) {
	t.Parallel()
	rail, _ := ByPoints(460, 50, -45, -45)
	end, _ := ByPoints(340, 50, -45, -45)
	m, ok := Onto(end, false, rail, true)
	if !ok || m.Over || !near(math.Remainder(m.TurnDeg-90, 360), 0, 1e-9) || geom.Distance(m.ShiftMm, geom.Point{XMm: 205, YMm: 145}) > 1e-9 || m.MissMm > 1e-9 {
		t.Errorf("%+v, %v", m, ok)
	}
	// One with its long side above has to be turned over for it.
	flipped, _ := ByPoints(340, 50, 45, 45)
	if m, ok = Onto(flipped, false, rail, true); !ok || !m.Over || geom.Distance(m.ShiftMm, geom.Point{XMm: 205, YMm: 145}) > 1e-9 {
		t.Errorf("%+v, %v", m, ok)
	}
	// A bar of 40 at 45° has a shorter cut, by (50 − 40)√2.
	thin, _ := ByPoints(340, 40, -45, -45)
	if m, _ = Onto(thin, false, rail, true); !near(m.MissMm, 10*math.Sqrt2, 1e-9) {
		t.Errorf("%+v", m)
	}
	if _, ok = Onto(Member{LengthMm: 300, WidthMm: 50}, false, rail, true); ok {
		t.Error("a square end meets a mitre")
	}
	if _, ok = Onto(end, false, Member{LengthMm: 300, WidthMm: 50}, true); ok {
		t.Error("a mitre meets a square end")
	}
}

// A frame of 460 × 340 has diagonals of √(460² + 340²), and closes. With one rail
// 5 too long its end stands 5 off, and with an end of 44° it is turned by 1°.
func TestRing(t *testing.T) {
	t.Parallel()
	member := func(mm, start, end float64) Member { m, _ := ByPoints(mm, 50, start, end); return m }
	links := func() []Link {
		return []Link{{member(460, -45, -45), false, true}, {member(340, -45, -45), false, true}, {member(460, -45, -45), false, true}, {member(340, -45, -45), false, true}}
	}
	f, ok := Ring(links())
	want := math.Hypot(460, 340)
	if !ok || f.GapMm > 1e-9 || f.TurnDeg > 1e-9 || !near(f.DiagonalsMm[0], want, 1e-9) || !near(f.DiagonalsMm[1], want, 1e-9) || geom.Distance(f.CornersMm[1], geom.Point{XMm: 230, YMm: 170 + 145}) > 1e-9 {
		t.Errorf("%+v, %v", f, ok)
	}
	if sides, rect := f.OutsideMm(); !rect || !near(sides[0], 340, 1e-9) || !near(sides[1], 460, 1e-9) {
		t.Errorf("outside %v, %v", sides, rect)
	}
	// The same with a member turned over and one the other way round.
	turned := links()
	turned[1].Member = member(340, 45, 45)
	turned[2].In, turned[2].Out = true, false
	turned[2].Member = member(460, 45, 45)
	if f, ok = Ring(turned); !ok || f.GapMm > 1e-9 || f.TurnDeg > 1e-9 || !near(f.DiagonalsMm[0], want, 1e-9) || !near(f.DiagonalsMm[1], want, 1e-9) {
		t.Errorf("%+v, %v", f, ok)
	}
	long := links()
	long[2].Member = member(465, -45, -45)
	if f, _ = Ring(long); !near(f.GapMm, 5, 1e-9) || f.TurnDeg > 1e-9 {
		t.Errorf("%+v", f)
	}
	if _, rect := f.OutsideMm(); rect {
		t.Error("a frame that does not close has an outside")
	}
	off := links()
	off[3].Member = member(340, -45, -44)
	if f, _ = Ring(off); !near(f.TurnDeg, 1, 1e-9) || f.GapMm < 1 {
		t.Errorf("%+v", f)
	}
	hexagon := []Link{}
	for range 6 {
		hexagon = append(hexagon, Link{member(300, -30, -30), false, true})
	}
	if f, ok = Ring(hexagon); !ok || f.GapMm > 1e-9 || f.DiagonalsMm[0] != 0 || len(f.CornersMm) != 6 {
		t.Errorf("%+v", f)
	}
	if _, rect := f.OutsideMm(); rect {
		t.Error("a hexagon has an outside")
	}
	square := links()
	square[0].Member.EndDeg = 0
	if _, ok = Ring(square); ok {
		t.Error("a square end makes no ring")
	}
	if _, ok = Ring(links()[:2]); ok {
		t.Error("two make no ring")
	}
}
