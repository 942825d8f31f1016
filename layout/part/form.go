package part

import (
	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// form is what a part is made as. Each answers every stage; one that needs
// nothing there says so.
type form interface {
	lengthMm() float64                        // along the axis, front face to back
	steps(z *sizer) []Step                    // its cylinders, outside first
	outline(s *Sizes) *canvas.Path            // seen on the front face, y up
	round() bool                              // a circle outside
	roundMm(feature string) float64           // of a round of its own besides its steps, 0 if it is none
	wallMm(s *Sizes, zMm float64) float64     // metal that heat flows into: plate, wall, or half a solid bar
	overall(s *Sizes) string                  // outside size in words: of what is folded, over all
	section(s *Sizes) *plan.Section           // half section
	developments(d *shaper)                   // flat patterns
	volumeMm3(g *Shape) float64               // before the holes
	features(n *Numbered)                     // its own features, in order
	operations(b *bench)                      // up to marking out
	cutFile(c *cutter) (*plan.Profile, error) // what a cutter gets of it

	// What usual answers alike for most.
	listed() bool                                       // it stands in the cut list: no face is drawn, and its notes are all there
	stockText(s *Sizes) string                          // what it is made from, in words
	metalAt(s *Sizes, radiusMm float64) []geom.Span     // stretches of the axis with metal at a radius
	fromEdge(s *Sizes, mm float64) Sized                // a length measured from its edge
	seamMm() float64                                    // length of the seam of a piece, 0 without one
	placeGroup(z *sizer, m *Group)                      // puts holes or slots on it, and refuses what has no place there
	wallsMm(s *Sizes, m *Group) (metal, across float64) // where a group is, and to the far side from there
	throughMm(s *Sizes, m *Group) (metal, travel float64)
	throughWords(m *Group) string         // how far a through group goes
	where(n *Numbered, m *Group) string   // a group is, in words
	needless(d *shaper) string            // why its flat pattern is not worth printing, "" where it is
	items(g *Shape) []item                // what of itself has a number of its own
	problems(n *Numbered) []plan.Problem  // what is wrong with it
	show(n *Numbered, out *plan.PartPlan) // what shows it in place of, or beside, the half section
	mark(b *bench)                        // TOP and the places of holes
	onMill(s *Sizes) bool                 // the mill bores it
	heldUnder(b *bench, m *Group) string  // the drill, or on the mill for slots
	longAxis(m *Group, s slots) string    // how slots lie on it, in words
	check(r *record, f plan.Feature)      // measures a feature of its own
	checkPlace(r *record, m *Group)       // measures where a group lies
	trueBy(n *Numbered) []TrueBy          // what it is set true by after its welds, the best first
}

// usual is what most forms answer alike; a form has it and answers itself what is otherwise there.
type usual struct{}

func (usual) steps(*sizer) []Step                 { return nil }
func (usual) round() bool                         { return false }
func (usual) roundMm(string) float64              { return 0 }
func (usual) listed() bool                        { return false }
func (usual) stockText(s *Sizes) string           { return s.StockWords(s.Part.Stock) }
func (usual) seamMm() float64                     { return 0 }
func (usual) needless(*shaper) string             { return "" }
func (usual) items(*Shape) []item                 { return nil }
func (usual) problems(*Numbered) []plan.Problem   { return nil }
func (usual) show(*Numbered, *plan.PartPlan)      {}
func (usual) onMill(*Sizes) bool                  { return false }
func (usual) fromEdge(s *Sizes, mm float64) Sized { return s.General(geom.Clean(mm)) }
func (usual) throughWords(*Group) string          { return "through" }
func (usual) longAxis(m *Group, s slots) string {
	return "to clock " + words.Angle(s.turnDeg(m))
}
func (usual) wallsMm(s *Sizes, _ *Group) (metal, across float64) { return s.LengthMm(), s.LengthMm() }

// faced is a form whose front face is drawn without a hole too, with what it puts there.
type faced interface {
	onFace(w words.Writer, out *plan.Face)
}

// formOf is the form of a part by what the drawing gives: the first that fits. The reader lets
// none through without one.
func formOf(p *parts.Part, units parts.Units) form {
	switch inch := units == parts.Inches; {
	case p.Bends != nil:
		return newFolded(p, inch)
	case p.Outline != nil:
		return &flat{Part: p}
	case p.Rolled != nil:
		return &rolled{tube{turned{in: p.Profile}, p.Ends}, p.Rolled}
	case p.Profile != nil && p.Kind == parts.Tube:
		return &tube{turned{in: p.Profile}, p.Ends}
	case p.Profile != nil:
		return &turned{in: p.Profile}
	case p.Frustum != nil:
		return &cone{in: p.Frustum}
	case p.Flight != nil:
		return newHelix(p.Flight)
	case p.Bar != nil:
		return newBar(p.Bar, inch)
	case p.Transition != nil:
		return &transition{in: p.Transition}
	}
	panic("part: " + p.Name.Value + " has no form")
}
