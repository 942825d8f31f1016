package compare

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// spot is a place that the drawing marks: a dot, a small circle, or where two
// lines cross.
type spot struct {
	at    point
	size  float64 // width of what is drawn
	place         // in the drawing
	used  bool
}

// How alike the two lines of a cross are, and how round a dot is.
const (
	crossShare  = 0.1  // of the length: how far their middles may be apart
	crossRatio  = 1.25 // of the two lengths
	crossCosine = 0.5  // they meet at 60° or more
	dotShare    = 0.15 // of the radius: how far a dot's corners may be off it
	dotCorners  = 4
)

// A mark that is none of the part's is a mark up to this size; what is larger is
// a line (common practice, no source).
const mostMarkMm = 10.0

// nearLineMm is how far from the TOP line its arrow head reaches.
const nearLineMm = 3.0

// spots sorts what is on marking layers into places that are marked and other
// lines.
func spots(marks []contour) (found []*spot, rest []*piece) {
	var straight []*piece
	for i := range marks {
		p := &piece{contour: marks[i]}
		p.measure()
		s := &spot{at: p.mid, size: math.Max(p.w, p.h), place: p.place}
		switch {
		case len(p.points) == 1 || p.dot():
			found = append(found, s)
		case len(p.points) == 2:
			straight = append(straight, p)
		default:
			rest = append(rest, p)
		}
	}
	slices.SortStableFunc(straight, func(a, b *piece) int { return cmp.Compare(a.mid.XMm, b.mid.XMm) })
	for i, a := range straight {
		if a.used {
			continue
		}
		for _, b := range straight[i+1:] {
			if b.mid.XMm-a.mid.XMm > crossShare*a.length() {
				break
			}
			if !b.used && crosses(a, b) {
				a.used, b.used = true, true
				found = append(found, &spot{at: a.mid.Plus(b.mid).Times(0.5), size: a.length(), place: place{min(a.line, b.line), a.column}})
				break
			}
		}
		if !a.used {
			rest = append(rest, a)
		}
	}
	return found, rest
}

// dot tells a closed contour about as wide as high, with all its corners about as
// far from its middle.
func (p *piece) dot() bool {
	if !p.closed || len(p.points) < dotCorners || p.w > crossRatio*p.h || p.h > crossRatio*p.w {
		return false
	}
	least, most := math.Inf(1), 0.0
	for _, q := range p.points {
		d := geom.Distance(q, p.mid)
		least, most = math.Min(least, d), math.Max(most, d)
	}
	return least >= (1-dotShare)*most
}

// crosses tells whether two straight lines of about the same length halve each
// other.
func crosses(a, b *piece) bool {
	la, lb := a.length(), b.length()
	if la > crossRatio*lb || lb > crossRatio*la || geom.Distance(a.mid, b.mid) > crossShare*la {
		return false
	}
	u, v := a.points[1].Minus(a.points[0]), b.points[1].Minus(b.points[0])
	return math.Abs(float64(u.XMm*v.XMm)+float64(u.YMm*v.YMm)) <= crossCosine*la*lb
}

// marks compares the places that are marked. A group is marked as a whole or
// not at all, and not where its holes are cut.
func (c *comparison) marks() {
	want := seq.Keep(c.want.Marks, func(m Mark) bool { return !c.cut[m.Group] })
	places := seq.Map(want, func(m Mark) point { return m.Point })
	reach := reaches(places)
	got := pairUp(len(want), len(c.spots), func(i, k int) (float64, bool) {
		d := geom.Distance(c.spots[k].at, places[i])
		return d, d <= reach[i]
	})
	begun := map[string]bool{}
	for i, m := range want {
		begun[m.Group] = begun[m.Group] || got[i] >= 0
	}
	for i, m := range want {
		f := Finding{Code: MarkMissing, Group: m.Group, N: m.N, XMm: m.XMm, YMm: m.YMm}
		if !begun[m.Group] {
			c.report.Unmarked = seq.Add(c.report.Unmarked, c.want.name(m.N, m.Group))
			continue
		}
		c.report.MarksWanted++
		if got[i] < 0 {
			c.add(f)
			continue
		}
		s := c.spots[got[i]]
		s.used = true
		if d := geom.Distance(s.at, places[i]); d > c.tol {
			f.Code, f.ByMm, f.Line, f.Column = MarkMoved, d, s.line, s.column
			f.Drawn = &Shape{XMm: tidy(s.at.XMm), YMm: tidy(s.at.YMm)}
			c.add(f)
			continue
		}
		c.report.MarksRight++
	}
	c.moreMarks()
}

// moreMarks reports marks for nothing, and counts the lines that are none.
func (c *comparison) moreMarks() {
	c.report.Marks = len(c.spots)
	centre := func(s *spot) bool { // of a hole that is cut
		return slices.ContainsFunc(c.want.Rounds, func(w Round) bool { return geom.Distance(s.at, w.Point) <= c.tol })
	}
	var unread []place
	for _, s := range c.spots {
		switch {
		case s.used || centre(s):
		case s.size > mostMarkMm:
			unread = append(unread, s.place)
		default:
			c.add(Finding{Code: MarkExtra, Line: s.line, Column: s.column, XMm: s.at.XMm, YMm: s.at.YMm})
		}
	}
	top := contour{points: c.want.TopLine}
	c.report.OtherLines = len(c.lines)
	scribed := len(top.points) == 2 && slices.ContainsFunc(c.lines, func(p *piece) bool {
		d, _ := apart(&p.contour, &top, mostSamples)
		return d <= c.tol
	})
	for _, p := range c.lines {
		if !scribed || slices.ContainsFunc(p.points, func(q point) bool { return top.off(q, 0) > nearLineMm }) {
			unread = append(unread, p.place)
		}
	}
	if len(unread) > 0 {
		first := slices.MinFunc(unread, func(a, b place) int { return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(a.column, b.column)) })
		c.add(Finding{Code: LinesUnread, Count: len(unread), Line: first.line, Column: first.column})
	}
}
