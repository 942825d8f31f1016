package bars

import (
	"math"

	"centrepop/parts/geom"
)

// Meeting is how one mitred member stands at the end of another, in the other's
// frame: x along it from the middle between its outermost points, y to its top.
type Meeting struct {
	Over    bool       // turned over first, top side down
	TurnDeg float64    // anticlockwise
	ShiftMm geom.Point // of its origin, once turned
	MissMm  float64    // what one cut is longer than the other
}

// corner is a cut end: the long point, the short one, and the way that the metal
// lies from it.
func (m Member) corner(end, over bool) (long, short, metal geom.Point) {
	half := m.WidthMm / 2
	a, b := half*tan(m.StartDeg), half*tan(m.EndDeg)
	all := m.LengthMm + math.Abs(a) + math.Abs(b)
	rise, sign, metal := a, -1.0, geom.Point{XMm: 1}
	if end {
		rise, sign, metal = b, 1, geom.Point{XMm: -1}
	}
	y := math.Copysign(half, rise)
	long = geom.Point{XMm: sign * all / 2, YMm: y}
	short = geom.Point{XMm: sign * (all/2 - 2*math.Abs(rise)), YMm: -y}
	if over {
		long.YMm, short.YMm = -long.YMm, -short.YMm
	}
	return long, short, metal
}

// turned is a point turned anticlockwise about the origin.
func turned(p geom.Point, deg float64) geom.Point {
	sin, cos := geom.SinCosDeg(deg)
	return geom.Point{XMm: p.XMm*cos - p.YMm*sin, YMm: p.XMm*sin + p.YMm*cos}
}

func directionDeg(p geom.Point) float64 { return math.Atan2(p.YMm, p.XMm) * 180 / math.Pi }

// Onto puts an end of a member to an end of another, long point to long point and cut to
// cut, the metal on both sides of it. An end is that at the start, or else at the end. ok
// is false where one of them is cut square.
func Onto(a Member, aEnd bool, b Member, bEnd bool) (m Meeting, ok bool) {
	deg := func(m Member, end bool) float64 {
		if end {
			return m.EndDeg
		}
		return m.StartDeg
	}
	if deg(a, aEnd) == 0 || deg(b, bEnd) == 0 {
		return Meeting{}, false
	}
	long, short, metal := b.corner(bEnd, false)
	cut := short.Minus(long)
	for _, over := range []bool{false, true} {
		l, s, own := a.corner(aEnd, over)
		way := s.Minus(l)
		m = Meeting{Over: over, TurnDeg: directionDeg(cut) - directionDeg(way), MissMm: math.Abs(way.LengthMm() - cut.LengthMm())}
		m.ShiftMm = long.Minus(turned(l, m.TurnDeg))
		if cut.Cross(metal)*cut.Cross(turned(own, m.TurnDeg)) < 0 {
			break
		}
	}
	return m, true
}

// Link is a member of a ring: the end by which it meets the one before it, and by
// which the next meets it. False is the start.
type Link struct {
	Member  Member
	In, Out bool
}

// Frame is a ring of members laid out in the plane.
type Frame struct {
	CornersMm   []geom.Point // the long points, where each meets the next
	DiagonalsMm [2]float64   // from corner to opposite corner; only of four
	GapMm       float64      // by which the last misses the first
	TurnDeg     float64      // and by which it is turned against it
}

// Ring lays the members of a ring one after the other, as their mitres turn them.
// ok is false for fewer than three, and where an end is cut square.
func Ring(links []Link) (f Frame, ok bool) {
	if len(links) < 3 {
		return Frame{}, false
	}
	var at Meeting // of the link in the frame of the first, not turned over
	for i, l := range links {
		long, _, _ := l.Member.corner(l.Out, at.Over)
		f.CornersMm = append(f.CornersMm, turned(long, at.TurnDeg).Plus(at.ShiftMm))
		next := links[(i+1)%len(links)]
		m, ok := Onto(next.Member, next.In, l.Member, l.Out)
		if !ok {
			return Frame{}, false
		}
		at = at.then(m)
	}
	// Once round, the first stands on itself again.
	first := turned(geom.Point{}, at.TurnDeg).Plus(at.ShiftMm)
	f.GapMm = first.LengthMm()
	f.TurnDeg = math.Abs(math.Remainder(at.TurnDeg, 360))
	if len(links) == 4 {
		f.DiagonalsMm = [2]float64{geom.Distance(f.CornersMm[0], f.CornersMm[2]), geom.Distance(f.CornersMm[1], f.CornersMm[3])}
	}
	return f, true
}

// OutsideMm are the two outer sides of a rectangular frame, mm; ok is false for another one, and for one that does not close.
func (f Frame) OutsideMm() (sides [2]float64, ok bool) {
	if len(f.CornersMm) != 4 {
		return sides, false
	}
	var s [4]float64
	for i, p := range f.CornersMm {
		s[i] = geom.Distance(p, f.CornersMm[(i+1)%4])
	}
	same := func(a, b float64) bool { return math.Abs(a-b) < geom.CloseMm }
	return [2]float64{s[0], s[1]}, same(f.GapMm, 0) && same(s[0], s[2]) && same(s[1], s[3]) && same(f.DiagonalsMm[0], f.DiagonalsMm[1])
}

// then is the place of what meets the member that stands at m.
func (m Meeting) then(next Meeting) Meeting {
	if m.Over { // seen from the other side
		next.TurnDeg, next.ShiftMm.YMm, next.Over = -next.TurnDeg, -next.ShiftMm.YMm, !next.Over
	}
	return Meeting{Over: next.Over, TurnDeg: m.TurnDeg + next.TurnDeg, ShiftMm: turned(next.ShiftMm, m.TurnDeg).Plus(m.ShiftMm)}
}
