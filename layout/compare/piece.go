package compare

import (
	"math"
	"slices"

	"centrepop/parts/geom"
)

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
