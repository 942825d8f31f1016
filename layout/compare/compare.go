// Package compare holds a cutting drawing that somebody else made against the
// part as it is drawn here, and lists what differs: the scale, a mirror image
// or a turn, the outline, and every hole and slot that is missing, moved, of
// another size, open or cut twice.
//
// Read takes the SVG apart (SVG 1.1, Second Edition; lengths by CSS, where an
// inch has 96 px); Wanted gives the part as it should be cut, seen on its
// front: bores smaller by what is left for the lathe, tapped holes at their
// tap drill or left out; Compare says what differs.
//
// Lengths are millimetres with x to the right and y up. A drawing may lie
// anywhere on its sheet: the place of the whole is no finding.
package compare

import (
	"fmt"
	"math"
)

// Code names a kind of finding; codes do not change.
type Code string

// The codes.
const (
	Empty          Code = "empty"           // nothing to cut in the drawing
	Scale          Code = "scale"           // the whole is too large or too small
	Mirror         Code = "mirror"          // the whole is a mirror image
	Turned         Code = "turned"          // the whole is turned
	OutlineMissing Code = "outline-missing" // no closed contour can be the outline
	OutlineSize    Code = "outline-size"    // the outline has another width or height
	OutlineShape   Code = "outline-shape"   // the outline has the size but not the shape
	Open           Code = "open-contour"    // a contour does not close
	Doubled        Code = "doubled"         // a contour lies twice on the same place
	HoleMissing    Code = "hole-missing"
	HoleExtra      Code = "hole-extra"
	HoleMoved      Code = "hole-moved"
	HoleDiameter   Code = "hole-diameter"
	HoleShape      Code = "hole-shape" // a round hole is drawn as something else
	BlindCut       Code = "blind-cut"  // a blind hole or slot is cut through
	SlotMissing    Code = "slot-missing"
	SlotMoved      Code = "slot-moved"
	SlotShape      Code = "slot-shape"
	Extra          Code = "extra-contour" // a contour that is nothing of the part
)

// Finding is one difference. Line and Column point into the drawing; both are
// 0 for what is not there. N is the hole's number on the front, 0 for none.
type Finding struct {
	Code   Code    `json:"code"`
	What   string  `json:"what"`
	Group  string  `json:"group,omitempty"`
	N      int     `json:"n,omitempty"`
	Line   int     `json:"line,omitempty"`
	Column int     `json:"column,omitempty"`
	XMm    float64 `json:"x_mm"` // place on the part's front
	YMm    float64 `json:"y_mm"`
	ByMm   float64 `json:"by_mm"` // how far moved, how much too large
}

// DefaultToleranceMm is how far a drawing may be off before it is a finding:
// under what a laser holds on plate (common practice, no source).
const DefaultToleranceMm = 0.1

// Report is the answer.
type Report struct {
	Part        string    `json:"part"`
	Contours    int       `json:"contours"` // closed ones, marks aside
	Circles     int       `json:"circles"`
	Marks       int       `json:"marks"`   // contours on marking layers, not compared
	Texts       int       `json:"texts"`   // texts and pictures, not compared
	Matched     int       `json:"matched"` // holes, slots and bore found in their place and size
	Wanted      int       `json:"wanted"`
	LeftOut     []string  `json:"left_out"`   // not cut but drilled afterwards: tapped, reamed or too small to cut
	Scale       float64   `json:"scale"`      // the drawing is this much too large; 1 if right
	TurnedDeg   float64   `json:"turned_deg"` // clockwise
	Mirrored    bool      `json:"mirrored"`
	ToleranceMm float64   `json:"tolerance_mm"`
	Findings    []Finding `json:"findings"`
}

// Compare holds a sheet against a part. The tolerance is for places, diameters
// and outlines; 0 stands for DefaultToleranceMm. It refuses a tolerance beyond
// 0.001 to 10 mm.
func Compare(want *Part, sheet *Sheet, toleranceMm float64) (*Report, error) {
	if toleranceMm == 0 {
		toleranceMm = DefaultToleranceMm
	}
	if !(toleranceMm >= 0.001 && toleranceMm <= 10) {
		return nil, fmt.Errorf("compare: a tolerance of %v mm is not within 0.001 to 10 mm", toleranceMm)
	}
	c := &comparison{want: want, tol: toleranceMm, report: &Report{
		Part: want.Name, Texts: sheet.Texts, Scale: 1, ToleranceMm: toleranceMm, Findings: []Finding{}, LeftOut: []string{},
	}}
	c.collect(sheet)
	if len(c.closed) == 0 && len(c.open) == 0 {
		c.add(Finding{Code: Empty, What: "the drawing holds nothing to cut"})
		return c.report, nil
	}
	c.findPose()
	c.doubles()
	c.opens()
	c.outline()
	c.holes()
	c.slots()
	c.extras()
	c.report.Wanted = len(c.want.Rounds) + len(c.want.Slots) - len(c.report.LeftOut)
	for i := range c.report.Findings {
		f := &c.report.Findings[i]
		f.XMm, f.YMm, f.ByMm = tidy(f.XMm), tidy(f.YMm), tidy(f.ByMm)
	}
	return c.report, nil
}

// comparison is the work in hand. The contours are in the part's coordinates
// once the pose is found.
type comparison struct {
	want   *Part
	tol    float64
	report *Report
	closed []*piece
	open   []*piece
	edge   *piece // the outline, nil if none
}

// piece is a contour of the drawing with what it was recognised as.
type piece struct {
	contour
	round  bool
	centre point
	radius float64
	used   bool // explained by a finding or a match
	// Box and area once the piece lies on the part; middles are asked for often.
	w, h, mm2 float64
	mid       point
}

func (c *comparison) add(f Finding) { c.report.Findings = append(c.report.Findings, f) }

// at fills a finding's place in the drawing and on the part.
func (p *piece) at(f Finding) Finding {
	f.Line, f.Column = p.line, p.column
	f.XMm, f.YMm = p.mid.x, p.mid.y
	return f
}

// measure notes the box, the area and the middle: the centre of a round piece,
// and of the box of any other.
func (p *piece) measure() {
	lo, hi := p.box()
	p.w, p.h = hi.x-lo.x, hi.y-lo.y
	p.mm2, _ = p.area()
	p.mid = point{(lo.x + hi.x) / 2, (lo.y + hi.y) / 2}
	if p.round {
		p.mid = p.centre
	}
}

func (p *piece) recognise() {
	p.centre, p.radius, p.round = p.circle()
}

func tidy(v float64) float64 {
	if v = math.Round(v*1e4) / 1e4; v == 0 {
		return 0 // never -0
	}
	return v
}
