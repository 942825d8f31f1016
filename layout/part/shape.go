package part

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
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

func newShape(s *Sizes) (*Shape, parts.Errors) {
	d := &shaper{Shape: &Shape{Sizes: s, Section: s.form.section(s), bevels: s.chamfers(), wrapped: map[string]*Step{}}, faults: faults{job: s.Job}}
	for _, c := range d.bevels {
		d.roundRoom(c)
	}
	d.dowels()
	d.oneTemplate()
	_, seen := s.form.(faced)
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		if !s.form.listed() && (s.marked(f) || (seen || s.Clamp != nil) && f == parts.Front) {
			face := s.face(f, false)
			s.share(face)
			d.Faces = append(d.Faces, face)
		}
	}
	d.holed = s.branches()
	d.required = s.requirements()
	d.centreHoles()
	for m := range seq.Refs(s.Radials) {
		cut := d.flatCut(m)
		for row := range seq.Refs(m.Rows) {
			row.InFlat = cut
		}
	}
	d.wraps()
	s.form.developments(d)
	d.templatePolicy()
	return d.Shape, d.list
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

// topFace is the face that TOP is marked on.
func (g *Shape) topFace() string {
	if len(g.Faces) > 0 {
		return string(g.Faces[0].Face)
	}
	if g.saddledEnd(parts.Front) {
		return string(parts.Back)
	}
	return string(parts.Front)
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
