// Package compare holds a cutting drawing that somebody else made against the
// part as it is drawn here, and lists what differs: the scale, a mirror image
// or a turn, the outline, and every hole and slot that is missing, moved, of
// another size, open or cut twice, and every mark that is missing, moved or too
// many. What it cannot compare, such as texts, it counts.
//
// Standards: SVG 1.1, Second Edition, for the drawing; CSS Values and Units
// Level 3 for its lengths, where an inch has 96 px.
//
// Read takes the SVG apart; Wanted gives the part as it should be cut, seen on
// its front: bores smaller by what is left for the lathe, tapped holes marked or
// at their tap drill; Compare says what differs. Findings are codes and numbers,
// with words in the job's units.
//
// Lengths are millimetres with x to the right and y up. A drawing may lie
// anywhere on its sheet: the place of the whole is no finding.
package compare

import (
	"cmp"
	"fmt"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// DefaultToleranceMm is how far a drawing may be off before it is a finding:
// under what a laser holds on plate (common practice, no source).
const DefaultToleranceMm = 0.1

// ToleranceError is a tolerance beyond 0.001 to 10 mm.
type ToleranceError struct{ Mm float64 }

// Error gives the tolerance in mm, for a log; sheets word it themselves.
func (e *ToleranceError) Error() string { return fmt.Sprintf("compare: tolerance %g", e.Mm) }

// The bounds of a tolerance.
const (
	LeastToleranceMm = 0.001
	MostToleranceMm  = 10.0
)

// Compare holds a sheet against a part. The tolerance is for places, diameters
// and outlines; 0 stands for DefaultToleranceMm. The error is a
// *ToleranceError.
func Compare(want *Part, sheet *Sheet, toleranceMm float64) (*Report, error) {
	toleranceMm = cmp.Or(toleranceMm, DefaultToleranceMm)
	if !(toleranceMm >= LeastToleranceMm && toleranceMm <= MostToleranceMm) {
		return nil, &ToleranceError{toleranceMm}
	}
	c := &comparison{want: want, tol: toleranceMm, cut: map[string]bool{}, report: &Report{
		Part: want.Name, units: want.Units, Layers: sheet.layers, Texts: len(sheet.others), Scale: 1, ToleranceMm: toleranceMm,
		Findings: []Finding{}, LeftOut: []string{}, Unmarked: []string{},
	}}
	c.collect(sheet)
	if len(c.closed) == 0 && len(c.open) == 0 {
		c.add(Finding{Code: Empty})
	} else {
		c.findPose()
		c.doubles()
		c.opens()
		c.outline()
		c.holes()
		c.slots()
		c.extras()
		c.marks()
	}
	if n := len(sheet.others); n > 0 {
		c.add(Finding{Code: OthersUnread, Count: n, Line: sheet.others[0].line, Column: sheet.others[0].column})
	}
	c.report.Wanted = len(c.want.Rounds) + len(c.want.Slots) - len(c.report.LeftOut)
	for i := range c.report.Findings {
		f := &c.report.Findings[i]
		f.XMm, f.YMm, f.ByMm = tidy(f.XMm), tidy(f.YMm), tidy(f.ByMm)
		f.What, f.Severity = c.say(f), f.Code.severity()
	}
	return c.report, nil
}

// collect takes the contours out of the sheet and chains open ones.
func (c *comparison) collect(sheet *Sheet) {
	var open, marks []contour
	for _, k := range sheet.contours {
		k.points = slices.Clone(k.points) // they are moved about
		switch {
		case k.mark:
			marks = append(marks, k)
		case k.closed:
			c.closed = append(c.closed, &piece{contour: k})
		default:
			open = append(open, k)
		}
	}
	for _, k := range join(c.twice(open)) {
		p := &piece{contour: k}
		if k.closed {
			p.points = thin(p.points, true, flatMm)
			p.closed = len(p.points) > 2
		}
		if p.closed {
			c.closed = append(c.closed, p)
		} else {
			c.open = append(c.open, p)
		}
	}
	c.spots, c.lines = spots(marks)
	for _, p := range c.closed {
		p.recognise()
	}
	c.report.Contours = len(c.closed)
}

// twice drops open lines that lie on one before them, so that they do not
// spoil the chaining, and reports each.
func (c *comparison) twice(open []contour) []contour {
	if len(open) > mostOpen {
		return open
	}
	var kept []contour
	for a := range seq.Refs(open) {
		if !slices.ContainsFunc(kept, func(b contour) bool { return a.onLine(&b) }) {
			kept = append(kept, *a)
			continue
		}
		p := piece{contour: *a}
		f := p.at(Finding{Code: Doubled})
		f.Drawn = nil
		c.add(f)
	}
	return kept
}

// onLine tells whether an open line lies on another one, either way round.
func (c *contour) onLine(b *contour) bool {
	first, last := c.points[0], c.points[len(c.points)-1]
	bf, bl := b.points[0], b.points[len(b.points)-1]
	same := geom.Distance(first, bf) < joinMm && geom.Distance(last, bl) < joinMm || geom.Distance(first, bl) < joinMm && geom.Distance(last, bf) < joinMm
	if !same || c.length() < joinMm {
		return false
	}
	d, _ := apart(c, b, 200)
	return d < doubledMm
}

// mostOpen is how many open lines are looked at: more are a hatching or a
// picture, no cutting line.
const mostOpen = 5000
