package part

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/fits"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
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
	Material *material.Material // nil if the material is not known
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

// auxiliary tells whether the length of a step follows from the others of its
// side and the whole, and so has no limits of its own: a chain that is closed
// keeps one such link, in brackets (ISO 129-1, from memory). It is the longest
// step without a seat or a fit, or the longest, and none whose length has limits
// or has to be equal on all copies.
func (s *Sizes) auxiliary(st *Step) bool {
	steps := s.Side(st.Inside)
	if len(steps) < 2 || steps[len(steps)-1].ToMm < s.LengthMm()-geom.CloseMm {
		return false
	}
	free := func(st *Step) float64 {
		switch {
		case len(st.limits) > 0 || slices.ContainsFunc(s.Part.Require, func(q parts.Requirement) bool { return q.Kind == parts.EqualLength && q.Of.Value == st.Name }):
			return 0
		case st.Seat != "" || st.Size.Fitted() || st.Size.Thread != nil:
			return st.LengthMm()
		}
		return st.LengthMm() + s.LengthMm()
	}
	return st == slices.MaxFunc(steps, func(a, b *Step) int { return cmp.Compare(free(a), free(b)) })
}

// length is a step's length with its limits: of one from end to end those of the whole.
func (s *Sizes) length(st *Step) Sized {
	if st.LengthMm() == geom.Clean(s.LengthMm()) {
		return s.whole()
	}
	return s.General(st.LengthMm()).within(st.limits)
}

// whole is the length of the part with its limits: those of a step from end to end, where one has some.
func (s *Sizes) whole() Sized {
	out := s.General(geom.Clean(s.LengthMm()))
	for st := range seq.Refs(s.Steps) {
		if st.LengthMm() == out.NominalMm {
			out = out.within(st.limits)
		}
	}
	return out
}

// within is a size with limits of its own, where it has some.
func (z Sized) within(limits []parts.Length) Sized {
	if len(limits) == 2 {
		z.MinMm, z.MaxMm, z.Limited, z.Class, z.Source = limits[0].Mm, limits[1].Mm, true, limitsClass, "drawing"
	}
	return z
}

// BetweenMm is how far two places along the axis, ends of steps outside or inside, may lie apart
// inside the limits of the lengths: the sum of the links between them or, where one of those follows
// from the others, the whole less the rest.
func (s *Sizes) BetweenMm(inside bool, fromMm, toMm float64) plan.Range {
	var between, rest plan.Range
	open := false
	for _, st := range s.Side(inside) {
		l, sum := s.length(st), &rest
		if st.FromMm > fromMm-geom.CloseMm && st.ToMm < toMm+geom.CloseMm {
			sum = &between
			if open = open || s.auxiliary(st); s.auxiliary(st) {
				continue
			}
		}
		sum.Min, sum.Max = sum.Min+l.MinMm, sum.Max+l.MaxMm
	}
	if open {
		whole := s.whole()
		between = plan.Range{Min: whole.MinMm - rest.Max, Max: whole.MaxMm - rest.Min}
	}
	return plan.Range{Min: geom.Clean(between.Min), Max: geom.Clean(between.Max)}
}

// longText is a step's length: "104", or "(104)" where it is auxiliary.
func (s *Sizes) longText(st *Step) string {
	if s.auxiliary(st) {
		return "(" + s.W.Size(st.LengthMm()) + ")"
	}
	return s.W.Size(st.LengthMm())
}

// LengthMm is the step's length along the axis.
func (s *Step) LengthMm() float64 { return geom.Clean(s.ToMm - s.FromMm) }

// MidMm is the step's middle on the axis, from the front face.
func (s *Step) MidMm() float64 { return (s.FromMm + s.ToMm) / 2 }

// bearing tells whether a rolling bearing sits on the step.
func (s *Step) bearing() bool { return strings.HasPrefix(s.Seat, "bearing") }

// Sized is a diameter with its limits.
type Sized struct {
	NominalMm    float64
	MinMm, MaxMm float64 // equal to nominal where nothing limits it
	Limited      bool
	Class        string // "H7", "±0.1", "light press", "M40x1.5", "ISO 2768-m", or ""
	Source       string
	AsCut        bool // the limits are those that its cutter holds
	AsBought     bool // the maker of the tube or bar limits it, not the shop
	ByClass      bool // the limits are the job's general tolerance
	Thread       *threads.Thread
	Press        parts.Ref
	OffMm        plan.Range // what it is under the bore or over the spigot that it meets, as measured; zero unless Measured
}

// Fitted tells whether a size has limits of its own, not only the job's general
// tolerance or what its cutter holds.
func (s Sized) Fitted() bool {
	return s.Limited && !s.AsCut && !s.ByClass
}

// Measured tells whether a size is made to what it meets, as that measures, and so has no limits
// before.
func (s Sized) Measured() bool { return s.Class == measuredClass }

// ByLimits tells whether a size is drawn by its limits.
func (s Sized) ByLimits() bool { return s.Class == limitsClass }

// classText is the class as it stands behind a size; empty where the limits alone say it.
func (s Sized) classText() string {
	switch s.Class {
	case limitsClass, pressClass, measuredClass:
		return ""
	}
	return s.Class
}

type sizer struct {
	*Sizes
	faults
}

func newSizer(job *parts.Job, p *parts.Part) *sizer {
	z := &sizer{Sizes: &Sizes{Job: job, Part: p, W: words.Writer{Units: job.Units}, form: formOf(p, job.Units)}, faults: faults{job: job}}
	if m, err := material.Find(p.Material.Value); err == nil {
		z.Material = &m
	}
	z.Steps = z.form.steps(z)
	return z
}

func newSizes(job *parts.Job, p *parts.Part) (*Sizes, parts.Errors) {
	z := newSizer(job, p)
	z.faceGroups()
	z.radials()
	z.keyways()
	z.grooves()
	z.flats()
	z.clamp()
	return z.Sizes, z.list
}

// sided refuses a class of the other side: A is outside, B inside.
func (z *sizer) sided(pos parts.Pos, t threads.Thread, inside bool) {
	if t.Class != "" && inside != strings.HasSuffix(t.Class, "B") {
		z.fault(pos, "class "+t.Class+" of "+t.Designation+" is that of the other side", "A for what is turned outside, B for a hole")
	}
}

// sizeOf limits a size: by its own fit, else by the job's general tolerance.
func (z *sizer) sizeOf(s parts.Size, inside bool) Sized {
	out := Sized{NominalMm: s.Nominal.Mm, MinMm: s.Nominal.Mm, MaxMm: s.Nominal.Mm}
	if s.Thread.Value != "" {
		t, err := threads.Parse(s.Thread.Value)
		if err != nil {
			z.fault(s.Thread.Pos, "thread "+s.Thread.Value+" is not known", z.W.Refused(err))
			return out
		}
		z.sided(s.Thread.Pos, t, inside)
		out.Thread, out.Class, out.Source = &t, t.Designation, t.Source
		out.NominalMm, out.MinMm, out.MaxMm = t.MajorMm, t.MajorMm, t.MajorMm
		return out
	}
	f := s.Fit
	switch {
	case f.Class.Value != "":
		l, err := fits.Limit(s.Nominal.Mm, f.Class.Value)
		if err != nil {
			z.fault(f.Class.Pos, "fit "+f.Class.Value+" cannot be used for "+z.W.Dia(s.Nominal.Mm), z.W.Refused(err))
			return out
		}
		out.MinMm, out.MaxMm, out.Limited = l.MinMm, l.MaxMm, true
		out.Class, out.Source = l.Class, "ISO 286-1 "+l.Class
	case f.LightPress.Set():
		out.Class, out.Press = pressClass, f.LightPress
		out.Source = "common practice, no source"
	case len(f.Measured) == 2:
		out.Class, out.Source = measuredClass, "drawing"
		if out.OffMm = (plan.Range{Min: f.Measured[0].Mm, Max: f.Measured[1].Mm}); !inside {
			out.OffMm = plan.Range{Min: -f.Measured[1].Mm, Max: -f.Measured[0].Mm}
		}
	case len(f.Limits) == 2:
		out.MinMm, out.MaxMm, out.Limited = f.Limits[0].Mm, f.Limits[1].Mm, true
		out.Class, out.Source = limitsClass, "drawing"
	case f.PlusMinus.Set():
		out.MinMm, out.MaxMm, out.Limited = s.Nominal.Mm-f.PlusMinus.Mm, s.Nominal.Mm+f.PlusMinus.Mm, true
		out.Class, out.Source = "±"+z.W.Size(f.PlusMinus.Mm), "drawing"
	default:
		out.general(z.Job.Tolerance.Value)
	}
	return out
}

// left makes a step that is the surface of its tube or bar, with no limits of its
// own, as it is bought: it is not turned.
func (z *sizer) left(st *Step) {
	stock, d := z.Part.Stock, st.Size.NominalMm
	asIs := func(what string) {
		st.Size = Sized{NominalMm: d, MinMm: d, MaxMm: d, Source: what + " as bought", AsBought: true}
	}
	switch {
	case st.Size.Class != "" || st.Size.Thread != nil:
		return
	case z.Part.Kind == parts.Tube:
		asIs("tube")
		return
	case !stock.Size.Set() || stock.Form != "tube" && (stock.Form != "round" || st.Inside):
		return
	}
	size, what := stock.Size.Mm, "bar"
	if stock.Form == "tube" {
		what = "tube"
		if st.Inside && !stock.Second.Set() {
			return
		} else if st.Inside {
			size -= 2 * stock.Second.Mm
		}
	}
	if math.Abs(d-size) < geom.CloseMm {
		asIs(what)
	}
}

// general applies the ISO 2768-1 class, where one is named and covers the size.
func (s *Sized) general(class string) {
	if class == "" {
		return
	}
	if pm, err := fits.General(s.NominalMm, class); err == nil {
		s.MinMm, s.MaxMm, s.Limited, s.ByClass = s.NominalMm-pm, s.NominalMm+pm, true, true
		s.Source = "ISO 2768-" + class
	}
}

// General limits a plain length, mm, by the general tolerance of the job (ISO 2768-1).
func (s *Sizes) General(mm float64) Sized {
	out := Sized{NominalMm: mm, MinMm: mm, MaxMm: mm}
	out.general(s.Job.Tolerance.Value)
	return out
}

// tapeOffMm is how far off a tape reads round or along a tube. Common practice, no source.
const tapeOffMm = 1.0

// taped limits a length that is set out and read by tape: no closer than that reads, where the job
// has a general tolerance.
func (s *Sizes) taped(mm float64) Sized {
	out := s.General(mm)
	if out.Limited && out.MaxMm-mm < tapeOffMm {
		out.MinMm, out.MaxMm, out.Source = mm-tapeOffMm, mm+tapeOffMm, "common practice, no source"
	}
	return out
}

// limitsText is "90.000 – 90.035", or empty where nothing limits the size.
func (s *Sizes) limitsText(z Sized) string {
	switch {
	case z.Press.Set():
		return "measured counterpart − " + s.W.Size(0.03) + " … − " + s.W.Size(0.01)
	case z.Measured() && z.OffMm.Max > 0:
		return "largest spigot measured + " + s.W.Size(z.OffMm.Min) + " … + " + s.W.Size(z.OffMm.Max)
	case z.Measured():
		return "least bore measured − " + s.W.Size(-z.OffMm.Min) + " … − " + s.W.Size(-z.OffMm.Max)
	case z.Limited:
		return s.W.Limits(z.MinMm, z.MaxMm)
	}
	return ""
}

// aim is a size that no class names, inside its limits as they are printed.
func (z Sized) aim(w words.Writer) string {
	if z.Limited && z.Class == "" {
		return w.Aim(z.NominalMm, z.MinMm, z.MaxMm)
	}
	return w.Size(z.NominalMm)
}

// leftOut tells whether the limits leave the size itself out: it is written with them.
func (z Sized) leftOut() bool {
	return z.Limited && (z.NominalMm <= z.MinMm-geom.CloseMm || z.NominalMm >= z.MaxMm+geom.CloseMm)
}

// classed is a size with its class, "50 m6"; "" for one that only its limits say.
func (z Sized) classed(w words.Writer) string {
	if z.leftOut() && z.ByLimits() {
		return ""
	}
	return words.Join(" ", w.Size(z.NominalMm), z.classText())
}

// worked is a size as it is worked to: with its class, and by its limits where they leave
// the size itself out ("50 m6 (50.009 – 50.025)", "34.912 – 34.925").
func (z Sized) worked(w words.Writer) string {
	size := z.classed(w)
	switch limits := w.Limits(z.MinMm, z.MaxMm); {
	case !z.leftOut():
		return size
	case size == "":
		return limits
	default:
		return size + " (" + limits + ")"
	}
}

// sizeText is a diameter with its class: "Ø90 H7", "M40x1.5".
func (s *Sizes) sizeText(st *Step) string {
	if t := st.Size.Thread; t != nil {
		text := t.Designation + " thread"
		if st.Inside && t.TapDrillMm > 0 {
			text += ", bore " + s.W.Dia(t.TapDrillMm) + " first"
		}
		return text
	}
	text := "Ø" + st.Size.worked(s.W)
	switch {
	case st.Size.Press.Set():
		return text + " light press on " + st.Size.Press.Part + " " + words.Spaced(st.Size.Press.Feature)
	case st.Size.Measured():
		return text + " " + measuredClass
	}
	return text
}

// wanted is a diameter next to its limits, which it need not say then.
func (s *Sizes) wanted(st *Step) string {
	switch size := st.Size.classed(s.W); {
	case !st.Size.leftOut():
		return s.sizeText(st)
	case size == "":
		return ""
	default:
		return "Ø" + size
	}
}

// The classes of what has none of a standard: of a size drawn by its limits, of a light press, and of one
// that is made to its counterpart as that measures.
const (
	limitsClass   = "limits"
	pressClass    = "light press"
	measuredClass = "to its counterpart as measured"
)

// StepNamed finds a step by name, or nil.
func (s *Sizes) StepNamed(name string) *Step {
	return seq.At(s.Steps, func(step *Step) bool { return step.Name == name })
}

// Sides returns the outside and the inside steps.
func (s *Sizes) Sides() (outside, inside []*Step) { return s.Side(false), s.Side(true) }

// Side returns the steps of one side, from front to back.
func (s *Sizes) Side(inside bool) (steps []*Step) {
	for st := range seq.Refs(s.Steps) {
		if st.Inside == inside {
			steps = append(steps, st)
		}
	}
	return steps
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

// drawnRadius is the radius a step is drawn with: an inside thread shows its
// minor diameter.
func (s *Step) drawnRadius() float64 {
	if s.Inside && s.Size.Thread != nil {
		return s.Size.Thread.MinorMm / 2
	}
	return s.Size.NominalMm / 2
}

// leastMm is the smallest diameter of a bore.
func (s *Step) leastMm() float64 {
	if s.firstMm > 0 {
		return s.firstMm
	}
	if t := s.Size.Thread; t != nil && s.Inside && t.TapDrillMm > 0 {
		return t.TapDrillMm
	}
	return 2 * s.drawnRadius()
}

// stepAt is the step of one side at a place on the axis, or nil; the first
// where two meet.
func stepAt(steps []*Step, z float64) *Step {
	return seq.First(steps, func(s *Step) bool { return z >= s.FromMm-geom.CloseMm && z <= s.ToMm+geom.CloseMm })
}

// outsideAt is the outside step at an axial place.
func (s *Sizes) outsideAt(z float64) *Step { return stepAt(s.Side(false), z) }

// boreAt is the inside step at an axial place, or nil.
func (s *Sizes) boreAt(z float64) *Step { return stepAt(s.Side(true), z) }

// MetalAt lists the stretches of a part's axis where there is metal at a radius.
// The edge of an outline that is not round is not looked at.
func (s *Sizes) MetalAt(radiusMm float64) [][2]float64 {
	return s.form.metalAt(s, radiusMm)
}

func (usual) metalAt(s *Sizes, radiusMm float64) [][2]float64 {
	outsides, insides := s.Sides()
	cuts := []float64{0, s.LengthMm()}
	for _, st := range s.Steps {
		cuts = append(cuts, st.FromMm, st.ToMm)
	}
	slices.Sort(cuts)
	var out [][2]float64
	for i := 0; i+1 < len(cuts); i++ {
		if cuts[i+1]-cuts[i] < geom.CloseMm {
			continue
		}
		mid, outside, inside := (cuts[i]+cuts[i+1])/2, math.Inf(1), -1.0
		if len(outsides) > 0 {
			outside = stepAt(outsides, mid).Size.NominalMm / 2
		}
		if st := stepAt(insides, mid); st != nil {
			inside = st.Size.NominalMm / 2
		}
		if outside <= radiusMm || inside >= radiusMm {
			continue
		}
		if n := len(out); n > 0 && cuts[i]-out[n-1][1] < geom.CloseMm {
			out[n-1][1] = cuts[i+1]
		} else {
			out = append(out, [2]float64{cuts[i], cuts[i+1]})
		}
	}
	return out
}

// Plane is where a face lies on the part's axis at a radius, and how much
// metal lies behind it there.
func (s *Sizes) Plane(f parts.Face, radiusMm float64) (zMm, thickMm float64, ok bool) {
	m := s.MetalAt(radiusMm)
	if len(m) == 0 {
		return 0, 0, false
	}
	if f == parts.Front {
		return m[0][0], m[0][1] - m[0][0], true
	}
	last := m[len(m)-1]
	return last[1], last[1] - last[0], true
}

// PlaneOf is where a face of what a group goes through lies, and how much metal lies
// behind it there: of the part, or of the flange or side of a bar that the group is
// on, which counts from its front. Both walls of a tube count as one.
func (s *Sizes) PlaneOf(m *Group, f parts.Face) (zMm, thickMm float64, ok bool) {
	metal, across := s.form.wallsMm(s, m)
	switch {
	case m.BothWalls():
		thickMm = across
	case m.OnWall():
		thickMm = metal
	default:
		return s.Plane(f, geom.MeanRadiusMm(m.Points))
	}
	if f == parts.Back {
		zMm = thickMm
	}
	return zMm, thickMm, true
}

// StockText is the stock in words: "plate 12, laser cut".
func (s *Sizes) StockText() string { return s.form.stockText(s) }

// StockWords are those of any stock.
func (s *Sizes) StockWords(k parts.Stock) string {
	var t []string
	switch {
	case k.Form == "":
		return "not stated"
	case k.Form == "tube" && k.Second.Set():
		t = append(t, "tube Ø"+s.W.Size(k.Size.Mm)+" × "+s.W.Size(k.Second.Mm)+" wall")
	case k.Form == "flat" && k.Second.Set():
		t = append(t, "flat "+s.W.Size(k.Size.Mm)+" × "+s.W.Size(k.Second.Mm))
	case k.Form == "round":
		t = append(t, "round Ø"+s.W.Size(k.Size.Mm))
	case k.Size.Set():
		t = append(t, k.Form+" "+s.W.Size(k.Size.Mm))
	default:
		t = append(t, k.Form)
	}
	if k.Length.Set() {
		t = append(t, s.W.Size(k.Length.Mm)+" long")
	}
	if k.Cut != "" && k.Cut != "none" {
		t = append(t, k.Cut+" cut")
	}
	return strings.Join(t, ", ")
}

// boreMm is the narrowest bore right through the part, 0 if there is none.
func (s *Sizes) boreMm() float64 {
	inside := s.Side(true)
	if len(inside) == 0 || inside[len(inside)-1].ToMm < s.LengthMm()-geom.CloseMm {
		return 0
	}
	return slices.MinFunc(inside, func(a, b *Step) int { return cmp.Compare(a.Size.NominalMm, b.Size.NominalMm) }).Size.NominalMm
}

// mateOf is the nominal outside diameter that a reference of this part points
// at, with the part it stands on; nil if it points at nothing that fits.
func (s *Sizes) mateOf(f *faults, ref parts.Ref) (*Sizes, *Step) {
	p := s.Job.Part(ref.Part)
	if p == nil {
		return nil, nil
	}
	other := newSizer(s.Job, p).Sizes
	switch st := other.StepNamed(ref.Feature); {
	case st == nil:
		f.fault(ref.Pos, ref.Part+"."+ref.Feature+" is not round", "a round outside of that part")
	case st.Inside:
		f.fault(ref.Pos, "light press on "+ref.Part+"."+ref.Feature+", which is a bore", "the outside step that goes into this bore")
	default:
		return other, st
	}
	return nil, nil
}

// machined is a note that asks for work at a machine for which there is no key: at which, what, and for what.
var machined = regexp.MustCompile(`^(DRILL|MILL|LATHE|BENCH): (.+?)((?:, for |\.$).*)?$`)

// notes are those of the drawing but for work, and what is left out for want of data.
func (g *Shape) notes() []string {
	drawn := seq.Keep(g.Part.Notes, func(n parts.Text) bool { return g.form.listed() || !machined.MatchString(n.Value) })
	out := seq.Map(drawn, func(n parts.Text) string { return n.Value })
	if name := g.Part.Material.Value; name != "" && g.Material == nil {
		out = append(out, "Material "+name+" has no cutting data here: mass and speeds are left out.")
	}
	return append(out, g.Notes...)
}

// rows are the radial features, numbered on in the order of the drawing.
func (s *Sizes) rows() []plan.RadialRow {
	var out []plan.RadialRow
	for _, m := range s.Radials {
		out = append(out, m.Rows...)
	}
	return out
}
