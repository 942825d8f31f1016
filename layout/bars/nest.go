package bars

import (
	"cmp"
	"fmt"
	"math"
	"sort"

	"centrepop/layout/lookup"
)

// maxPieces bounds one plan, so that a mistyped count is refused.
const maxPieces = 20000

// Piece is a member wanted from stock.
type Piece struct {
	Name   string
	Member Member
	Count  int // 0 counts as 1
	Keep   Keep
}

// Keep says how a piece may not lie, because of its section: the bar that it is sawn
// from lies one way.
type Keep int

// What is kept.
const (
	KeepNone  Keep = iota // tubes and solid bars lie any way
	KeepTop               // end for end with the top up: a channel that opens up or down
	KeepFront             // turned over only end for end: a channel that opens to the front or back
	KeepAll               // an angle lies one way only
)

// lets tells whether a piece may lie so.
func (k Keep) lets(turned, reversed bool) bool {
	switch k {
	case KeepTop:
		return !turned
	case KeepFront:
		return turned == reversed
	case KeepAll:
		return !turned && !reversed
	}
	return true
}

// KeepOf is how pieces of a section may lie.
func KeepOf(s Section) Keep {
	switch {
	case s.Shape == Angle:
		return KeepAll
	case s.Shape == Channel && (s.Open == Top || s.Open == Bottom):
		return KeepTop
	case s.Shape == Channel:
		return KeepFront
	}
	return KeepNone
}

// Cut is one piece laid on a bar.
type Cut struct {
	Name             string
	Member           Member  // as it lies: its angles turned with it
	Turned           bool    // top side down
	Reversed         bool    // end for end
	FromMm           float64 // its start on the centre line, from the end of the bar
	SharedWithBefore bool    // one saw cut ends the piece before and begins this one
}

// Span is where a piece lies on its bar: its outermost point from the end of the bar, and
// the length between its outermost points, in mm.
func (c Cut) Span() (fromMm, longMm float64) {
	half := c.Member.WidthMm / 2
	start, end := half*math.Abs(tan(c.Member.StartDeg)), half*math.Abs(tan(c.Member.EndDeg))
	return c.FromMm - start, c.Member.LengthMm + start + end
}

// Bar is one stock bar with its pieces in sawing order.
type Bar struct {
	Cuts     []Cut
	OffcutMm float64 // what is left beyond the last saw cut, along its shorter side
}

// Stock is what pieces are cut from.
type Stock struct {
	BarMm  float64
	KerfMm float64 // width of the saw cut, square to it
	TrimMm float64 // lost to clean the first end
}

// Nest lays pieces on stock bars. The longest come first, each on the first bar
// with room (first fit decreasing), and each is turned over and end for end in
// the way that brings it closest to the piece before: a mitre against a like
// mitre costs one cut, where two unlike ones cost the wedge between them as well.
// Equal pieces keep the order they came in, so the same input gives the same
// plan.
//
// It errs with a *lookup.RangeError for numbers out of range or a piece longer
// than a bar, and for a negative count or more than 20000 pieces.
func Nest(pieces []Piece, stock Stock) ([]Bar, error) {
	if err := cmp.Or(
		lookup.Length("bar", stock.BarMm, 0, MaxMm), lookup.Length("kerf", stock.KerfMm, -1e-12, 100), lookup.Length("trim", stock.TrimMm, -1e-12, stock.BarMm),
	); err != nil {
		return nil, err
	}
	total := 0
	for _, p := range pieces {
		s, err := p.Member.Work()
		if err != nil {
			return nil, err
		}
		if err := lookup.Length("piece "+p.Name, s.LongPointToPointMm, 0, stock.BarMm-stock.TrimMm+1e-6); err != nil {
			return nil, err
		}
		if p.Count < 0 || p.Count > maxPieces-total {
			return nil, fmt.Errorf("bars: piece %q: a count of %d leaves the plan beyond 0 to %d pieces", p.Name, p.Count, maxPieces)
		}
		total += max(p.Count, 1)
	}
	sorted := append([]Piece(nil), pieces...)
	// Longest first is what first fit decreasing asks; stable keeps ties fixed.
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i].Member.LengthMm > sorted[j].Member.LengthMm })
	var out []Bar
	for _, p := range sorted {
		first := 0 // bars before it have no room for this piece
		for range max(p.Count, 1) {
			out, first = lay(out, first, p, stock)
		}
	}
	for i := range out {
		out[i].OffcutMm = math.Max(0, stock.BarMm-reach(out[i].Cuts[len(out[i].Cuts)-1], stock.KerfMm))
	}
	return out, nil
}

// lay puts one piece on the first bar with room, from bar first on, and returns
// which that was.
func lay(out []Bar, first int, p Piece, stock Stock) ([]Bar, int) {
	for i := first; i < len(out); i++ {
		if cut := closest(&out[i].Cuts[len(out[i].Cuts)-1], p, stock); reach(cut, 0) <= stock.BarMm+1e-6 {
			out[i].Cuts = append(out[i].Cuts, cut)
			return out, i
		}
	}
	return append(out, Bar{Cuts: []Cut{closest(nil, p, stock)}}), len(out)
}

// reach is where a piece ends on the bar at its far point, its saw cut included.
func reach(c Cut, kerfMm float64) float64 {
	m := c.Member
	return c.FromMm + m.LengthMm + m.WidthMm/2*math.Abs(tan(m.EndDeg)) + kerfMm/cos(m.EndDeg)
}

// closest lays a piece after another (or on a fresh bar), turned so that it ends
// soonest. Of equal ways the least turned is taken.
func closest(before *Cut, p Piece, stock Stock) (best Cut) {
	for i, way := range [...]struct{ turned, reversed bool }{{false, false}, {false, true}, {true, false}, {true, true}} {
		if !p.Keep.lets(way.turned, way.reversed) {
			continue
		}
		m := p.Member
		if way.turned {
			m.StartDeg, m.EndDeg = -m.StartDeg, -m.EndDeg
		}
		if way.reversed {
			m.StartDeg, m.EndDeg = m.EndDeg, m.StartDeg
		}
		cut := Cut{Name: p.Name, Member: m, Turned: way.turned, Reversed: way.reversed}
		if before == nil {
			cut.FromMm = stock.TrimMm + m.WidthMm/2*math.Abs(tan(m.StartDeg))
		} else {
			gap, shared := between(before.Member, m, stock.KerfMm)
			cut.FromMm, cut.SharedWithBefore = before.FromMm+before.Member.LengthMm+gap, shared
		}
		if i == 0 || reach(cut, 0) < reach(best, 0)-1e-9 {
			best = cut
		}
	}
	return best
}

// between is the distance on the centre line from the end of one piece to the
// start of the next, and whether one cut makes both.
func between(a, b Member, kerfMm float64) (gapMm float64, shared bool) {
	end, start := a.EndDeg, -b.StartDeg // both as the slope of the cut
	if math.Abs(end-start) < 1e-9 && a.WidthMm == b.WidthMm {
		return kerfMm / cos(end), true
	}
	wedge := math.Max(a.WidthMm, b.WidthMm) / 2 * math.Abs(tan(end)-tan(start))
	return wedge + kerfMm/math.Min(cos(end), cos(start)), false
}
