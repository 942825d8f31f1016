package part

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Shape is the second stage: the part's section, faces and flat patterns.
// Read-only.
type Shape struct {
	*Sizes
	Section      *plan.Section
	Faces        []*plan.Face
	Developments []plan.Development
	Notes        []string         // what could not be drawn
	cut          asCut            // of flat parts
	wrapped      map[string]*Step // that a wrap template goes round, by its name
	bevels       []*chamfer
	saddles      []*saddle
	atTop        []plan.Dimension // of what is cut from TOP to 180°
	holed        []*branchHole
	required     []*requirement
	centres      []*centreHole
	thin         []*Step // ends that a centre hole is needed in, and none is known for
}

type shaper struct {
	*Shape
	faults
}

// item is a thing on the part besides its steps, with a number of its own.
type item interface {
	feature(n *Numbered) plan.Feature
	operations(b *bench)
	checks(r *record)
}

// items lists what is on the part, in the order of numbering, of work and of
// the record.
func (g *Shape) items() []item {
	var clamp []item
	if g.Clamp != nil {
		clamp = []item{g.Clamp}
	}
	return slices.Concat(asItems(g.bevels), refItems(g.Groups), refItems(g.Radials), asItems(g.saddles), refItems(g.Keyways), refItems(g.Grooves),
		asItems(g.holed), g.form.items(g), refItems(g.Flats), asItems(g.centres), clamp, asItems(g.required))
}

func asItems[T item](of []T) []item { return seq.Map(of, func(one T) item { return one }) }

func refItems[T any, P interface {
	*T
	item
}](of []T) []item {
	return seq.Map(slices.Collect(seq.Refs(of)), func(one *T) item { return P(one) })
}

// turnedVolumeMm3 sums the cones between the points of a contour.
func turnedVolumeMm3(line []plan.XY) float64 {
	sum := 0.0
	for i := 0; i+1 < len(line); i++ {
		a, b := line[i], line[i+1]
		sum += math.Pi / 3 * (b.XMm - a.XMm) * (a.YMm*a.YMm + a.YMm*b.YMm + b.YMm*b.YMm)
	}
	return sum
}

// centreRows are the centre holes, front before back.
func (g *Shape) centreRows() []plan.CentreRow {
	return seq.Map(g.centres, func(c *centreHole) plan.CentreRow {
		return plan.CentreRow{Face: c.face, Designation: c.Designation, PilotMm: c.PilotMm, MouthMm: c.MouthMm}
	})
}

var radialKinds = map[parts.RadialShape]radialKind{
	parts.RadialHole: radialHole{}, parts.RadialSlot: radialSlot{}, parts.RadialWindow: radialWindow{},
}

// branchOver is the branch inside whose hole a radial feature without a thread lies; nil if there is none.
func (g *Shape) branchOver(n int) *branchHole {
	for _, m := range g.Radials {
		if row, is := seq.Find(m.Rows, func(row plan.RadialRow) bool { return row.N == n }); is && m.Size.Thread == nil {
			return seq.First(g.holed, func(h *branchHole) bool { return h.origin != nil && h.holds(row) })
		}
	}
	return nil
}

// handCutMm is how far an opening may reach past the hole of a branch and is cut with it: what a curve punched
// by its template and ground by hand holds, and more than a rounded size is off. Common practice, no source.
const handCutMm = 0.2

// holds tells whether an opening in the main lies inside the branch's bore.
func (h *branchHole) holds(row plan.RadialRow) bool {
	z := h.origin.fromFrontMm()
	turn := math.Abs(math.Remainder(row.ClockDeg-h.origin.clockDeg, 360))
	if row.AroundMm == 0 { // a round hole
		row.AroundMm, row.AlongMm, row.CornerMm = row.DiameterMm, row.DiameterMm, row.DiameterMm/2
	}
	around := max(0, row.AroundMm/2-row.CornerMm) + turn*math.Pi/360*row.OutsideMm
	along := max(0, row.AlongMm/2-row.CornerMm) + math.Abs(row.AxialMm-z)
	return math.Hypot(around, along)+row.CornerMm <= h.boreMm/2+handCutMm
}

// fromFrontMm is how far from the front face of the main it lies.
func (o *origin) fromFrontMm() float64 { return geom.Clean(o.from.FromFront(o.axialMm, o.lengthMm)) }

// saddleAt is the saddle of an end, nil where it has none.
func (g *Shape) saddleAt(f parts.Face) *saddle {
	return seq.First(g.saddles, func(m *saddle) bool { return m.end.Face == f })
}

// saddledEnd tells whether a face is cut to a saddle curve.
func (g *Shape) saddledEnd(f parts.Face) bool { return g.saddleAt(f) != nil }

// clockFrom says that clock angles outside count as seen from the front, of a part whose sheet shows its back alone: but for those at TOP
// and opposite they lie the other way round there.
func (g *Shape) clockFrom(degs ...float64) string {
	aside := slices.ContainsFunc(degs, func(deg float64) bool { return geom.Some(math.Abs(math.Sin(deg * math.Pi / 180))) })
	return words.When(aside && len(g.Faces) == 1 && g.Faces[0].Face == parts.Back, " (seen from the front)")
}
