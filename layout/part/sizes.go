package part

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Sizes is the first stage: every cylinder, hole and opening of a part with
// what limits it. Read-only.
type Sizes struct {
	Job      *parts.Job
	Part     *parts.Part
	W        words.Writer
	Material *material.Material // nil if the material is not known, or no metal
	Nonmetal *material.Nonmetal // nil where it is no plastic or rubber that is known
	Steps    []Step             // every cylinder: outside first, then inside
	Groups   []Group            // holes and slots on the faces in printing order
	Radials  []Radial           // what is cut from outside into a round
	Keyways  []Keyway           // for parallel keys
	Flats    []Flats            // milled on outsides
	Grooves  []Groove           // for rings, O-rings, grease and relief
	Clamp    *Clamp             // nil for what is not split
	form     form
}

// Step is one cylinder of a turned part, or the bore or round outline of a
// flat one, with its place on the axis and its limits.
type Step struct {
	Drawn        *parts.Step // of the outline or bore of a flat part a step like it
	Name         string
	Inside       bool
	FromMm, ToMm float64
	Size         Sized
	Undercut     *Undercut // nil if there is none
	Seat, Finish string
	Lip          parts.Face // of the seal in a bore, empty if not said
	AfterWeld    bool       // it is finished after the last weld on the part
	details      []detail
	limits       []parts.Length // of its length; empty where the general tolerance holds
	firstMm      float64        // what it is turned to before its taper or knurl, 0 if it has none
	firstFor     string
}

// Span is where the step lies on the axis, from the front face.
func (s *Step) Span() geom.Span { return geom.Span{FromMm: s.FromMm, ToMm: s.ToMm} }

// LengthMm is the step's length along the axis.
func (s *Step) LengthMm() float64 { return geom.Clean(s.ToMm - s.FromMm) }

// MidMm is the step's middle on the axis, from the front face.
func (s *Step) MidMm() float64 { return s.Span().MidMm() }

// Bears tells whether a rolling bearing sits on the step.
func (s *Step) Bears() bool { return parts.SeatUse(s.Seat) == parts.ABearing }

// DensityKgM3 is that of the part's material, kg/m³; 0 where it is not known.
func (s *Sizes) DensityKgM3() float64 {
	switch {
	case s.Material != nil:
		return s.Material.DensityKgM3
	case s.Nonmetal != nil:
		return s.Nonmetal.DensityKgM3
	}
	return 0
}

type sizer struct {
	*Sizes
	faults
}

// StepNamed finds a step by name, or nil.
func (s *Sizes) StepNamed(name string) *Step {
	return seq.At(s.Steps, func(step *Step) bool { return step.Name == name })
}

// Sides returns the outside and the inside steps.
func (s *Sizes) Sides() (outside, inside []*Step) { return s.Side(false), s.Side(true) }

// Side returns the steps of one side, from front to back.
func (s *Sizes) Side(inside bool) []*Step {
	return seq.Keep(slices.Collect(seq.Refs(s.Steps)), func(st *Step) bool { return st.Inside == inside })
}

// neighbours are the steps of the same side before a step and after it; nil where there is none.
func (s *Sizes) neighbours(st *Step) (before, after *Step) {
	steps := s.Side(st.Inside)
	i := slices.Index(steps, st)
	if i > 0 {
		before = steps[i-1]
	}
	if i+1 < len(steps) {
		after = steps[i+1]
	}
	return before, after
}

// beside are those that there are.
func (s *Sizes) beside(st *Step) []*Step {
	before, after := s.neighbours(st)
	return seq.Keep([]*Step{before, after}, func(o *Step) bool { return o != nil })
}

// widest is the outside step of the largest diameter, the first of equals; nil
// for a part without round outside.
func (s *Sizes) widest() *Step {
	outside := s.Side(false)
	if len(outside) == 0 {
		return nil
	}
	return slices.MaxFunc(outside, func(a, b *Step) int { return cmp.Compare(a.Size.NominalMm, b.Size.NominalMm) })
}

// LengthMm is the part's size along its axis: plate thickness, or overall length.
func (s *Sizes) LengthMm() float64 { return s.form.lengthMm() }

// OutlinePath is the outline of a flat part seen on the front face, or the
// largest circle of a round one; millimetres, y up.
func (s *Sizes) OutlinePath() *canvas.Path { return s.form.outline(s) }

// RoundMm is the diameter of a round feature: a step, or an end of what is
// formed from sheet; 0 for another.
func (s *Sizes) RoundMm(feature string) float64 {
	if st := s.StepNamed(feature); st != nil {
		return st.Size.NominalMm
	}
	return s.form.roundMm(feature)
}

// WallMm is the thickness that heat flows into at a place on the axis: the
// plate, the wall, or half a solid bar.
func (s *Sizes) WallMm(zMm float64) float64 { return s.form.wallMm(s, zMm) }

// Bounds are those of the outline seen on the front face.
func (s *Sizes) Bounds() geom.Box { return geom.Bounds(s.OutlinePath()) }

// boundsOn are those seen on a face.
func (s *Sizes) boundsOn(f parts.Face) geom.Box {
	box := s.Bounds()
	return parts.At(f, box, box.Mirrored())
}

// StockText is the stock in words: "plate 12, laser cut".
func (s *Sizes) StockText() string { return s.form.stockText(s) }

// StockWords are those of any stock.
func (s *Sizes) StockWords(k parts.Stock) string {
	var t []string
	switch {
	case k.Form == "":
		return "not stated"
	case k.Bought():
		t = append(t, words.Join(", pilot bore ", "bought: "+k.Named.Value, words.When(k.Pilot.Set(), s.W.Dia(k.Pilot.Mm))))
	case k.Form == "tube" && k.Second.Set():
		t = append(t, "tube Ø"+s.W.Size(k.Size.Mm)+" × "+s.W.Size(k.Second.Mm)+" wall")
	case k.Form == "flat" && k.Second.Set():
		t = append(t, "flat "+s.W.Size(k.Size.Mm)+" × "+s.W.Size(k.Second.Mm))
	case k.Form == "round":
		t = append(t, "round Ø"+s.W.Size(k.Size.Mm))
	case k.Size.Set():
		t = append(t, k.Form+" "+s.W.Size(k.Size.Mm))
	default:
		t = append(t, words.Join(" ", k.Form, k.Named.Value))
	}
	if k.Length.Set() {
		t = append(t, s.W.Size(k.Length.Mm)+" long")
	}
	if k.Cut != "" && k.Cut != "none" {
		t = append(t, k.Cut+" cut")
	}
	return strings.Join(t, ", ")
}

// notes are those of the drawing but for work, and what is left out for want of data.
func (g *Shape) notes() []string {
	drawn := seq.Keep(g.Part.Notes, func(n parts.Text) bool { return g.form.listed() || parts.AskedBy(n.Value) == nil })
	out := seq.Map(drawn, func(n parts.Text) string { return n.Value })
	if name := g.Part.Material.Value; name != "" && g.Material == nil {
		out = append(out, "Material "+name+" has no cutting data here: "+words.When(g.DensityKgM3() == 0, "mass and ")+"speeds are left out.")
	}
	return append(out, g.Notes...)
}

// rows are the radial features, numbered on in the order of the drawing.
func (s *Sizes) rows() []plan.RadialRow {
	return seq.Flat(s.Radials, func(m Radial) []plan.RadialRow { return m.Rows })
}

// Flat tells whether the part is cut from plate.
func (s *Sizes) Flat() bool { _, ok := s.form.(*flat); return ok }

// side is +1 for an outside, −1 for a bore.
func (s *Step) side() float64 {
	if s.Inside {
		return -1
	}
	return 1
}

// atFace tells whether a step begins or ends in a face of the part.
func (s *Sizes) atFace(st *Step, face parts.Face) bool {
	return face == parts.Front && st.FromMm < geom.CloseMm || face == parts.Back && st.ToMm > s.LengthMm()-geom.CloseMm
}

// clocked are points drawn at TOP, turned clockwise to an angle.
func clocked(deg float64, points ...plan.XY) []plan.XY {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return seq.Map(points, func(q plan.XY) plan.XY {
		return plan.XY{XMm: geom.Clean(q.XMm*cos + q.YMm*sin), YMm: geom.Clean(q.YMm*cos - q.XMm*sin)}
	})
}
