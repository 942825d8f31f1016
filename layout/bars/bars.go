// Package bars computes the ends of bars and tubes for a frame: mitred and
// coped ends, what to measure and how to set the saw, and how mitred pieces lie
// on a stock bar, turned over so that neighbours share a cut.
//
// All lengths are millimetres, all angles degrees.
//
// A [Member] lies along x, its two long sides at y = ± half its width across the
// mitre. The angle of an end is measured from a square cut: 0 is square, and it
// is positive where the side at +y, the top, sticks out. The length is that of
// the centre line. A member of a rectangular frame has +45 and +45, a brace
// between parallel bars +45 and −45.
//
// Meetings and frames are worked out in the plane of the mitres. A round branch on
// a round is in package develop. Sizes of sections are those of EN 10219-2,
// EN 10056-1 and DIN 1026-1, and of ASTM A500 and A36 in inches; see Listed.
package bars

import (
	"cmp"
	"math"

	"centrepop/layout/lookup"
)

// Limits of what this package takes.
const (
	MaxMm       = 20000.0
	MaxMitreDeg = 75.0 // beyond it no common saw swings
)

// Member is a bar with its two ends.
type Member struct {
	LengthMm         float64 // along the centre line
	WidthMm          float64 // across, in the plane of the mitres
	StartDeg, EndDeg float64 // from a square cut
}

// Sides is a member as it is measured and sawn.
type Sides struct {
	TopMm, BottomMm    float64 // from point to point along each side
	LongPointToPointMm float64 // between the two outermost points along the bar: the least stock
}

// check refuses a member that cannot be.
func (m Member) check() error {
	if err := cmp.Or(
		lookup.Length("length", m.LengthMm, 0, MaxMm),
		lookup.Length("width", m.WidthMm, 0, MaxMm),
		lookup.Angle("start angle", m.StartDeg, -MaxMitreDeg-1e-9, MaxMitreDeg),
		lookup.Angle("end angle", m.EndDeg, -MaxMitreDeg-1e-9, MaxMitreDeg),
	); err != nil {
		return err
	}
	// Neither side may vanish.
	a, b := tan(m.StartDeg), tan(m.EndDeg)
	return lookup.Length("length", m.LengthMm, m.WidthMm/2*math.Abs(a+b), MaxMm)
}

func tan(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }

func cos(deg float64) float64 { return math.Cos(deg * math.Pi / 180) }

// Across returns how long a cut at deg from square is across a bar, and how far its long
// point is beyond the short one.
func Across(widthMm, deg float64) (cutMm, offMm float64) {
	return widthMm / cos(deg), widthMm * tan(deg)
}

// Work returns what to measure and to saw. It errs with a *lookup.RangeError for
// a number out of range and for mitres that would meet within the bar.
func (m Member) Work() (Sides, error) {
	if err := m.check(); err != nil {
		return Sides{}, err
	}
	half := m.WidthMm / 2
	a, b := half*tan(m.StartDeg), half*tan(m.EndDeg)
	return Sides{TopMm: m.LengthMm + a + b, BottomMm: m.LengthMm - a - b, LongPointToPointMm: m.LengthMm + math.Abs(a) + math.Abs(b)}, nil
}

// ByLong returns the member whose longer side is longMm. It errs as Work does,
// and for a side that leaves nothing of the shorter one.
func ByLong(longMm, widthMm, startDeg, endDeg float64) (Member, error) {
	lost := widthMm * math.Abs(tan(startDeg)+tan(endDeg))
	if err := lookup.Length("long side", longMm, lost, MaxMm); err != nil {
		return Member{}, err
	}
	m := Member{LengthMm: longMm - lost/2, WidthMm: widthMm, StartDeg: startDeg, EndDeg: endDeg}
	return m, m.check()
}

// Mitre returns the saw angles from square for the two bars of a corner, whose
// widths in its plane may differ: the cut runs from the inside corner to the
// outside one. The corner is the angle between the bars, 90 for a square frame.
// It errs with a *lookup.RangeError for a width not above 0, a corner not
// between 0 and 180, and a corner for which a saw would have to swing too far.
func Mitre(cornerDeg, firstMm, secondMm float64) (firstDeg, secondDeg float64, err error) {
	if err := cmp.Or(
		lookup.Angle("corner", cornerDeg, 0, lookup.Under(180)),
		lookup.Length("first width", firstMm, 0, MaxMm),
		lookup.Length("second width", secondMm, 0, MaxMm),
	); err != nil {
		return 0, 0, err
	}
	c := cornerDeg * math.Pi / 180
	angle := func(own, other float64) float64 {
		return math.Atan2(other+own*math.Cos(c), own*math.Sin(c)) * 180 / math.Pi
	}
	firstDeg, secondDeg = angle(firstMm, secondMm), angle(secondMm, firstMm)
	for _, a := range []float64{firstDeg, secondDeg} {
		if err := lookup.Angle("saw angle", a, -MaxMitreDeg, MaxMitreDeg+1e-9); err != nil {
			return 0, 0, err
		}
	}
	return firstDeg, secondDeg, nil
}

// ByPoints returns the member whose outermost points are pointsMm apart along the
// bar. It errs as Work does.
func ByPoints(pointsMm, widthMm, startDeg, endDeg float64) (Member, error) {
	lost := widthMm / 2 * (math.Abs(tan(startDeg)) + math.Abs(tan(endDeg)))
	m := Member{LengthMm: pointsMm - lost, WidthMm: widthMm, StartDeg: startDeg, EndDeg: endDeg}
	return m, m.check()
}

// Cope is the end of a bar or tube of rectangular section that sits square on a
// round, its axis meeting the round's.
type Cope struct {
	DepthMm  float64 // of the hollow: its edges reach this much further than the middle of the bar
	RadiusMm float64 // of the hollow
	EdgeMm   float64 // along the bar from the round's axis to the edges of the hollow
}

// CopeOn returns the cope of a bar barMm wide across a round of roundMm diameter.
// It errs with a *lookup.RangeError for a bar wider than the round.
func CopeOn(roundMm, barMm float64) (Cope, error) {
	if err := cmp.Or(
		lookup.Length("round", roundMm, 0, MaxMm),
		lookup.Length("bar", barMm, 0, roundMm),
	); err != nil {
		return Cope{}, err
	}
	r := roundMm / 2
	edge := math.Sqrt(r*r - barMm*barMm/4)
	return Cope{DepthMm: r - edge, RadiusMm: r, EdgeMm: edge}, nil
}
