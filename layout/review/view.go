package review

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// view is a part as the rules see it: cylinders, walls and holes in the frame of
// its front face, x right, y up, z from the front face (0) to the back.
type view struct {
	*reviewer
	m        *part.Model
	p        *parts.Part
	q        *plan.PartPlan
	lengthMm float64
	outside  []*cylinder // front to back, as are those inside
	inside   []*cylinder
	outline  []plan.XY // flat parts: a closed polyline
	holes    []hole
}

// cylinder is a step of the part, outside or inside.
type cylinder struct {
	*part.Step
	before []*cylinder // those of its side, front to back, as are those behind it
	behind []*cylinder
}

// sign is that of what stands out on its side.
func (c *cylinder) sign() float64 {
	if c.Inside {
		return -1
	}
	return 1
}

// fitted tells whether its diameter has limits, threaded whether it is a thread.
func (c *cylinder) fitted() bool   { return c.Drawn.Size.Fit.Pos.Line > 0 }
func (c *cylinder) threaded() bool { return c.Drawn.Size.Thread.Value != "" }

// neighbours are the steps just before it and just behind it, nil where there is none.
func (c *cylinder) neighbours() (before, behind *cylinder) {
	if n := len(c.before); n > 0 {
		before = c.before[n-1]
	}
	if len(c.behind) > 0 {
		behind = c.behind[0]
	}
	return before, behind
}

// next are those of them that there are.
func (c *cylinder) next() []*cylinder {
	before, behind := c.neighbours()
	return slices.DeleteFunc([]*cylinder{before, behind}, func(o *cylinder) bool { return o == nil })
}

// toward is the face of it that looks to another of its side.
func (c *cylinder) toward(o *cylinder) parts.Face {
	if o.FromMm > c.FromMm {
		return parts.Back
	}
	return parts.Front
}

// outBy is how far another step stands out beyond it on their side.
func (c *cylinder) outBy(o *cylinder) float64 { return c.sign() * (o.RadiusMm() - c.RadiusMm()) }

// inTheWay are the first steps that keep a ring from passing to it, from the front and from the back. The tenth of a
// millimetre lets steps with other limits of the same nominal size through.
func (c *cylinder) inTheWay() (shut []*cylinder) {
	const sameMm = 0.1
	for _, way := range [][]*cylinder{c.before, c.behind} {
		if o := seq.First(way, func(o *cylinder) bool { return c.outBy(o) > sameMm/2 }); o != nil {
			shut = append(shut, o)
		}
	}
	return shut
}

// inRow are the steps of one side, each with those beside it.
func inRow(steps ...*part.Step) []*cylinder {
	out := seq.Map(steps, func(s *part.Step) *cylinder { return &cylinder{Step: s} })
	for i, c := range out {
		c.before, c.behind = out[:i], out[i+1:]
	}
	return out
}

// hole is one hole or slot on a face.
type hole struct {
	group        *parts.HoleGroup // nil for a slot
	slot         *parts.FaceSlot
	name         string
	face         parts.Face
	n            int       // number on its face
	a, b         plan.XY   // centres of its ends, equal for a round hole, seen from the front whatever face it is on
	pos          parts.Pos // what to change about it: its group
	through      bool
	depthMm      float64 // as drawn, of a blind one
	radiusMm     float64 // of the finished hole; half the thread for a tapped one
	fromMm, toMm float64 // z of the full diameter, front to back
	metalMm      float64 // metal under its centre, from the marked face to the first gap
	stripMm      float64 // the least strip beside it in soft sheet, 0 in metal
	thread       *threads.Thread
	drillMm      float64 // last drill; 0 for a slot
}

// viewOf is a part as the rules see it, worked out once; nil if there is none.
func (r *reviewer) viewOf(name string) *view {
	v, ok := r.views[name]
	if !ok {
		if q := r.pl.Part(name); q != nil {
			v = newView(r, r.model(name), q)
		}
		r.views[name] = v
	}
	return v
}

// all are the parts of the job, in its order.
func (r *reviewer) all() (out []*view) {
	for _, p := range r.job.Parts {
		if v := r.viewOf(p.Name.Value); v != nil {
			out = append(out, v)
		}
	}
	return out
}

// planned are the joints of a kind that are worked out.
func (r *reviewer) planned(kind parts.JointKind) []*plan.JointPlan {
	return plan.OfKind(r.pl.Joints, kind)
}

// turned tells whether a part has steps.
func (v *view) turned() bool { return v.p.Turned() }

// newView works out the geometry the rules share.
func newView(r *reviewer, m *part.Model, q *plan.PartPlan) *view {
	v := &view{reviewer: r, m: m, p: m.Part, q: q, lengthMm: q.Section.LengthMm}
	v.outside, v.inside = inRow(m.Side(false)...), inRow(m.Side(true)...)
	if m.Part.Flat() {
		v.outline = polyline(part.OutlineContour(r.job, m.Part))
	}
	for _, f := range q.Faces {
		for _, h := range f.Holes {
			v.addHole(f, h)
		}
		for _, s := range f.Slots {
			v.addSlot(f, s)
		}
	}
	return v
}

// steps are those outside and then those inside.
func (v *view) steps() []*cylinder { return slices.Concat(v.outside, v.inside) }

// chamferOn is the chamfer of a step at an end, nil if there is none.
func (v *view) chamferOn(c *cylinder, end parts.Face) *parts.Chamfer {
	return seq.At(v.p.Chamfers, func(h *parts.Chamfer) bool { return h.Edge.Value == c.Name+"-"+string(end) })
}

// step is one by its name, nil if there is none.
func (v *view) step(name string) *cylinder { return named(v.steps(), name) }

func named(steps []*cylinder, name string) *cylinder {
	return seq.First(steps, func(s *cylinder) bool { return s.Name == name })
}

func (v *view) groupNamed(name string) (*parts.HoleGroup, *parts.FaceSlot) {
	return seq.At(v.p.Holes, func(h *parts.HoleGroup) bool { return h.Name.Value == name }),
		seq.At(v.p.Slots, func(s *parts.FaceSlot) bool { return s.Name.Value == name })
}

func (v *view) addHole(f *plan.Face, h plan.Hole) {
	g := v.m.GroupNamed(h.Group)
	if g == nil {
		return
	}
	o := hole{group: g.Hole, name: h.Group, face: f.Face, n: h.N, pos: g.Pos, through: g.Through, depthMm: g.Depth.Mm, radiusMm: h.DiameterMm / 2, drillMm: h.DiameterMm}
	o.a = frontXY(f.Face, plan.XY{XMm: h.XMm, YMm: h.YMm})
	o.b = o.a
	depthMm := o.depthMm
	switch t := g.Size.Thread; {
	case t != nil:
		if o.thread, o.radiusMm = t, t.MajorMm/2; !o.through {
			depthMm = fullMm(t, depthMm)
		}
	case g.Hole.Size.Make == parts.PlainHole:
		o.radiusMm = g.Size.FinishedMm / 2
	}
	v.place(&o, depthMm)
}

// fullMm is how deep a blind hole has its full diameter: with the run-out of its thread, where it has one.
func fullMm(t *threads.Thread, depthMm float64) float64 {
	if t != nil {
		if full, err := t.BlindDrillMm(depthMm); err == nil {
			return full
		}
	}
	return depthMm
}

func (v *view) addSlot(f *plan.Face, s plan.Slot) {
	_, slot := v.groupNamed(s.Group)
	if slot == nil {
		return
	}
	o := hole{slot: slot, name: s.Group, face: f.Face, n: s.N, pos: slot.Pos, through: slot.Through, depthMm: slot.Depth.Mm, radiusMm: s.WidthMm / 2}
	o.a, o.b = frontXY(f.Face, s.EndsMm[0]), frontXY(f.Face, s.EndsMm[1])
	v.place(&o, o.depthMm)
}

// frontXY turns a place on a face into one seen from the front.
func frontXY(f parts.Face, p plan.XY) plan.XY {
	p.XMm = parts.At(f, p.XMm, 0-p.XMm)
	return p
}

// The least strip that is left between holes and edges of a soft sheet: as wide as it is thick, within these, mm.
const (
	leastStripMm = 3.0
	mostStripMm  = 6.0
)

// place takes a hole up, and finds where it lies along the axis. It starts at the first metal
// under its centre, seen from its face.
func (v *view) place(h *hole, depthMm float64) {
	if metal := v.m.MetalAt(h.centreMm()); len(metal) > 0 { // else drilled in the air: the bore takes all of it
		last := metal[len(metal)-1]
		first := parts.At(h.face, metal[0], last)
		h.metalMm = first.LengthMm()
		switch {
		case h.through:
			h.fromMm, h.toMm = metal[0].FromMm, last.ToMm
		case h.face == parts.Back:
			h.fromMm, h.toMm = max(0, first.ToMm-depthMm), first.ToMm
		default:
			h.fromMm, h.toMm = first.FromMm, min(v.lengthMm, first.FromMm+depthMm)
		}
	}
	if v.m.Flat() && v.m.Soft() {
		h.stripMm = min(max(h.metalMm, leastStripMm), mostStripMm)
	}
	v.holes = append(v.holes, *h)
}

// radiusAt is the radius of the steps at z, 0 where there is none.
func radiusAt(steps []*cylinder, z float64) float64 { return outerMm(at(steps, z)) }

func outerMm(c *cylinder) float64 {
	if c == nil {
		return 0
	}
	return c.RadiusMm()
}

// at is the step that covers z, or nil. Where two meet it is the first.
func at(steps []*cylinder, z float64) *cylinder {
	return seq.First(steps, func(s *cylinder) bool { return s.Span().Holds(z) })
}

// oneOfEach is the first hole of each group that ok holds for.
func (v *view) oneOfEach(ok func(*hole) bool) (out []*hole) {
	done := map[string]bool{}
	for h := range seq.Refs(v.holes) {
		if !done[h.name] && ok(h) {
			done[h.name], out = true, append(out, h)
		}
	}
	return out
}

// span is where it has its full diameter along the axis.
func (h *hole) span() geom.Span { return geom.Span{FromMm: h.fromMm, ToMm: h.toMm} }

// middle is where the middle of a hole lies, centreMm how far from the axis.
func (h *hole) middle() plan.XY   { return h.a.Plus(h.b).Times(0.5) }
func (h *hole) centreMm() float64 { return h.middle().LengthMm() }

// title names a hole as on the sheets: "bolts, hole 3 on the front".
func (h *hole) title() string {
	word := words.Either(h.slot != nil, "slot ", "hole ")
	return h.name + ", " + word + strconv.Itoa(h.n) + " on the " + string(h.face)
}

// headRadiusMm is that of the counterbore or countersink at the marked face, or
// of the hole itself.
func (h *hole) headRadiusMm() float64 {
	switch {
	case h.group != nil && h.group.Counterbore != nil:
		return h.group.Counterbore.Diameter.Mm / 2
	case h.group != nil && h.group.Countersink != nil:
		return h.group.Countersink.Diameter.Mm / 2
	}
	return h.radiusMm
}

// matter is what is around a hole.
func (h *hole) matter() string { return words.Either(h.stripMm > 0, "sheet", "metal") }

// bolt tells whether a bolt goes freely through the hole.
func (h *hole) bolt() bool { return h.group != nil && h.group.Size.Make == parts.ClearanceHole }

// here is the beginning of a finding about a feature of the part, at a place of the input.
func (v *view) here(feature string, pos parts.Pos) Finding {
	return Finding{Part: v.p.Name.Value, Feature: feature, Pos: pos}
}

func (v *view) report(s Severity, feature string, pos parts.Pos, f Finding) {
	f.Severity, f.Part, f.Feature, f.Pos = s, v.p.Name.Value, feature, pos
	v.add(f)
}

// atLeast reports a length that is less than wanted. The finding's Numbers are the words
// between the two, ", wanted " where it has none.
func (v *view) atLeast(feature string, pos parts.Pos, hasMm, wantedMm float64, f Finding) {
	if geom.Over(wantedMm, hasMm) {
		f.LeftMm, f.Numbers = left(hasMm), v.mm(hasMm)+cmp.Or(f.Numbers, ", wanted ")+v.mm(wantedMm)
		v.report(Check, feature, pos, f)
	}
}

// atMost reports a length that is more than wanted; the finding's Numbers are the words between, or ", wanted at most ".
func (v *view) atMost(feature string, pos parts.Pos, hasMm, wantedMm float64, f Finding) {
	if geom.Over(hasMm, wantedMm) {
		f.OverMm, f.Numbers = over(hasMm), v.mm(hasMm)+cmp.Or(f.Numbers, ", wanted at most ")+v.mm(wantedMm)
		v.report(Check, feature, pos, f)
	}
}

// entryPos is where the keyway, groove or flat of a name is written; the part
// itself if there is none.
func entryPos(p *parts.Part, name string) parts.Pos {
	return cmp.Or(
		seq.First(p.Keyways, func(k parts.Keyway) bool { return k.Name.Value == name }).Pos,
		seq.First(p.Grooves, func(g parts.Groove) bool { return g.Name.Value == name }).Pos,
		seq.First(p.Flats, func(f parts.Flats) bool { return f.Name.Value == name }).Pos,
		p.Pos)
}

// thin reports a cut that leaves less metal than the least: the finding has the words for
// that, the rule and the cure, and none the words where nothing is left.
func (v *view) thin(name string, wallMm, leastMm float64, none string, f Finding) {
	if !geom.Over(leastMm, wallMm) {
		return
	}
	severity := Check
	f.LeftMm, f.Numbers = left(wallMm), v.mm(wallMm)+" left, wanted "+v.mm(leastMm)
	if !geom.Some(wallMm) {
		severity, f.What = Stop, name+" "+none
	}
	v.report(severity, name, entryPos(v.p, name), f)
}

// holesAndSlots are the groups of holes of the part, and its slots as such.
func (v *view) holesAndSlots() []parts.HoleGroup {
	return append(slices.Clone(v.p.Holes), seq.Map(v.p.Slots, func(s parts.FaceSlot) parts.HoleGroup { return s.AsHoles() })...)
}

// groups are all groups of holes and slots of the job, each with its part.
func (r *reviewer) groups() iter.Seq2[*view, *parts.HoleGroup] {
	return func(yield func(*view, *parts.HoleGroup) bool) {
		for _, v := range r.all() {
			for g := range seq.Refs(v.holesAndSlots()) {
				if !yield(v, g) {
					return
				}
			}
		}
	}
}

// count is how many holes of a group all copies of a part have.
func (v *view) count(g *parts.HoleGroup) int { return g.Pattern.Count * max(1, v.p.Quantity) }

// wideMm is the radius of what is turned or round, at its widest.
func (v *view) wideMm() float64 { return mostMm(v.outside) }

// mostMm is the greatest radius of some steps.
func mostMm(steps []*cylinder) float64 {
	return seq.Max(0, steps, func(c *cylinder) float64 { return c.RadiusMm() })
}

// openMm is the radius of the narrowest opening along the axis, infinite where there is none.
func (v *view) openMm() float64 {
	if v.p.Kind == parts.Cone {
		_, inside := v.p.Formed().Walls()
		return (v.p.Frustum.Small.Mm - inside) / 2
	}
	return seq.Least(v.inside, func(c *cylinder) float64 { return c.RadiusMm() })
}

// holesOf are the holes of a group.
func (v *view) holesOf(name string) (out []hole) {
	return seq.Keep(v.holes, func(h hole) bool { return h.name == name })
}

// joined tells whether a bolt joint uses a hole group: its bolts are known, and
// the joint's own problems say more.
func (v *view) joined(group string) bool { return v.job.Bolts(v.p.Name.Value, group) }

// seal is the radial shaft seal that a step is the seat of, nil for another.
func (v *view) seal(c *cylinder) *part.SealSize {
	m := part.SealOf(c.Seat, v.job.Units)
	if m != nil || c.Inside || c.Seat != "seal" {
		return m
	}
	for _, of := range v.all() { // the land says no size: the bore does whose seal runs on its diameter
		for _, bore := range of.inside {
			if o := part.SealOf(bore.Seat, v.job.Units); o != nil && geom.Alike(o.ShaftMm, c.Drawn.Size.Nominal.Mm) {
				return o
			}
		}
	}
	return nil
}

// edges are those of the bores, or else of the turned outsides, of a part that have about a diameter.
func (v *view) edges(diameterMm, offMm float64, bores bool) (out []string) {
	for _, c := range v.steps() {
		if c.Inside == bores && (bores || v.turned()) && math.Abs(c.Drawn.Size.Nominal.Mm-diameterMm) < offMm {
			out = append(out, c.Name+"-front", c.Name+"-back")
		}
	}
	return out
}

// fine tells fits of a grade or finer, and limits no wider than 0.03 mm. A seat is
// fine from grade 7, and what a weld spoils from grade 9.
func fine(f parts.Fit, grade int) bool {
	const closeMm = 0.03
	switch {
	case len(f.Limits) == 2:
		return !geom.Over(f.Limits[1].Mm-f.Limits[0].Mm, closeMm)
	case f.PlusMinus.Set():
		return !geom.Over(2*f.PlusMinus.Mm, closeMm)
	}
	n, err := strconv.Atoi(strings.TrimLeftFunc(f.Class.Value, unicode.IsLetter))
	return err == nil && n <= grade
}

// How far sizes of a plate may be off those of a motor's flange, and how much larger than its screw a plain hole
// is at the most. Common practice, no source.
const (
	faceOffMm  = 0.25
	plainShare = 1.3
)

// stoodOn tells whether a thing that is bought stands on a feature of the part.
func (v *view) stoodOn(e *parts.Loose, feature string) bool {
	return e.Stands != nil && e.Stands.On.Part == v.p.Name.Value && e.Stands.On.Feature == feature
}

// rootMm is the radius to the bottom of a thread, or of the plain cylinder.
func (c *cylinder) rootMm() float64 {
	switch t := c.Size.Thread; {
	case t == nil:
		return c.RadiusMm()
	case geom.Over(c.RadiusMm(), t.MinorMm/2):
		return t.RootMm() / 2
	}
	return c.Size.Thread.GroundMm() / 2
}
