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
	"math"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
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
	MarkMissing    Code = "mark-missing"  // others of its group are there
	MarkMoved      Code = "mark-moved"
	MarkExtra      Code = "mark-extra"
	LinesUnread    Code = "lines-not-compared" // on marking layers, neither marks nor the TOP line
	OthersUnread   Code = "not-compared"       // texts, pictures, hidden and clipped things
)

func (c Code) severity() string {
	switch c {
	case Doubled, MarkMissing, MarkMoved, MarkExtra, LinesUnread, OthersUnread:
		return "check"
	}
	return "stop"
}

// Finding is one difference. Line and Column point into the drawing; both are
// 0 for what is not there. N is the hole's number on the front, 0 for none.
type Finding struct {
	Code   Code    `json:"code"`
	What   string  `json:"what"`
	Group  string  `json:"group,omitempty"`
	N      int     `json:"n,omitempty"`
	Line   int     `json:"line,omitempty"`
	Column int     `json:"column,omitempty"`
	XMm    float64 `json:"x_mm"` // place on the part's front, as it should be where that is known
	YMm    float64 `json:"y_mm"`
	ByMm   float64 `json:"by_mm"` // how far moved, how much too large, how far off the shape
	Count  int     `json:"count,omitempty"`
	Drawn  *Shape  `json:"drawn,omitempty"`
	Wanted *Shape  `json:"wanted,omitempty"`
	// Severity is "stop" for what is cut wrong and "check" for what is marked
	// wrong, lies twice, or could not be compared.
	Severity string `json:"severity"`
}

// Shape is a contour in numbers: its box and middle, the diameter if it is
// round, the number of sides if only its corners are on that diameter.
type Shape struct {
	XMm        float64 `json:"x_mm"`
	YMm        float64 `json:"y_mm"`
	WidthMm    float64 `json:"width_mm,omitempty"`
	HeightMm   float64 `json:"height_mm,omitempty"`
	DiameterMm float64 `json:"diameter_mm,omitempty"`
	Sides      int     `json:"sides,omitempty"`
}

// DefaultToleranceMm is how far a drawing may be off before it is a finding:
// under what a laser holds on plate (common practice, no source).
const DefaultToleranceMm = 0.1

// Report is the answer.
type Report struct {
	Part        string    `json:"part"`
	Contours    int       `json:"contours"` // closed ones, marks aside
	Circles     int       `json:"circles"`
	Marks       int       `json:"marks"` // places marked
	OtherLines  int       `json:"lines"` // other lines on marking layers, such as TOP
	Layers      []string  `json:"marking_layers"`
	Texts       int       `json:"texts"`   // texts, pictures, hidden and clipped things: not compared
	Matched     int       `json:"matched"` // holes, slots and bore found in their place and size
	Wanted      int       `json:"wanted"`
	MarksRight  int       `json:"marks_matched"`
	MarksWanted int       `json:"marks_wanted"`
	LeftOut     []string  `json:"left_out"`   // marked, not cut: tapped, reamed or too small to cut
	Unmarked    []string  `json:"unmarked"`   // those of them that are not marked either
	Scale       float64   `json:"scale"`      // the drawing is this much too large; 1 if right
	TurnedDeg   float64   `json:"turned_deg"` // clockwise
	Mirrored    bool      `json:"mirrored"`
	ToleranceMm float64   `json:"tolerance_mm"`
	Findings    []Finding `json:"findings"`
	units       parts.Units
}

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

// comparison is the work in hand. The contours are in the part's coordinates
// once the pose is found.
type comparison struct {
	want   *Part
	tol    float64
	report *Report
	closed []*piece
	open   []*piece
	spots  []*spot
	lines  []*piece        // on marking layers
	edge   *piece          // the outline, nil if none
	cut    map[string]bool // groups that are cut
}

// piece is a contour of the drawing with what it was recognised as.
type piece struct {
	contour
	round  bool
	sides  int // of a polygon with its corners on a circle
	centre point
	radius float64
	used   bool // explained by a finding or a match
	// Box and area once the piece lies on the part; middles are asked for often.
	w, h, mm2 float64
	mid       point
}

func (c *comparison) add(f Finding) { c.report.Findings = append(c.report.Findings, f) }

// pieces are all contours of the drawing.
func (c *comparison) pieces() []*piece { return slices.Concat(c.closed, c.open, c.lines) }

// at fills a finding's place in the drawing and on the part, and the shape.
func (p *piece) at(f Finding) Finding {
	f.Line, f.Column = p.line, p.column
	f.XMm, f.YMm = p.mid.XMm, p.mid.YMm
	f.Drawn = p.shape()
	return f
}

func (p *piece) shape() *Shape {
	return &Shape{XMm: tidy(p.mid.XMm), YMm: tidy(p.mid.YMm), WidthMm: tidy(p.w), HeightMm: tidy(p.h), Sides: p.sides, DiameterMm: tidy(2 * p.radius)}
}

// measure notes the box, the area and the middle: the centre of a round piece,
// and of the box of any other.
func (p *piece) measure() {
	p.w, p.h = p.size()
	p.mm2, _ = p.area()
	p.mid = p.box().Middle()
	if p.round {
		p.mid = p.centre
	}
}

func (p *piece) recognise() {
	p.centre, p.radius, p.round, p.sides = p.circle()
}

// tidy rounds to a tenth of a micrometre.
func tidy(v float64) float64 { return geom.Clean(math.Round(v*1e4) / 1e4) }
