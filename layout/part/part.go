// Package part works out one part of a job. The way through it is one of
// stages, each a value that the next one reads and none writes to again:
//
//	Sizes     every diameter and hole with its limits     sizes.go, sized.go, chain.go, metal.go
//	Shape     section, faces, flat patterns               shape.go
//	Numbered  the features that pictures and steps name   features.go
//	          operations, checks, ladders                 operations.go, checks.go
//
// A stage embeds the one before it, so that a call can go back to an earlier
// stage and never on to a later one. What differs from one form of part to
// another stands in one file per form (flat.go, turned.go, tube.go, cone.go,
// transition.go, folded.go, flight.go, bar.go), the lathe work in setting.go, turning.go, held.go, support.go, deep.go,
// threading.go and stockcut.go, what can be on a part in one file per thing
// (chamfer.go, hole.go, slot.go, radial.go, saddle.go, keyway.go, groove.go,
// fold.go, detail.go).
//
// Lengths are millimetres and angles degrees. It names the standards of its
// tables where it uses them; faults of the input are located parts.Errors.
//
// Standards: ISO 286-1 and ISO 2768-1 for limits, ISO 273 and ASME B18.2.8 for
// clearance holes; packages threads, cutting and develop name their own.
package part

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/grooves"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Held is a step and the operation of its part, by number, in which it is roughed.
type Held struct {
	Step      string
	Operation int
}

// TrueBy is what a part is set true by: a step by its name, empty where that is none, and how it is said.
type TrueBy struct{ On, Text string }

// Model is one part worked out, read-only.
type Model struct {
	*Numbered
	Out  *plan.PartPlan
	Errs parts.Errors // faults of the input; the rest is then not to be used
	// Later is what its record checks and its operations do once it is welded, as Out leaves them out.
	// LaterHeld says in which operations it was held for that where it is turned.
	Later     []plan.Check
	LaterDo   []string
	LaterHeld []Held
	LaterTrue []TrueBy // what it is set true by then, the best first

	work *bench // how it is made as it is drawn
}

// Work works out one part of a job: its sheet has what is done before it is welded, the rest has it
// finished.
func Work(job *parts.Job, p *parts.Part) *Model {
	m, rough := asDrawn(job, p), p.BeforeWeld(WeldLeaveMm(job))
	if rough == nil || len(m.Errs) > 0 {
		return m
	}
	first := asDrawn(job, rough)
	m.Errs, m.LaterTrue = first.Errs, first.form.trueBy(first.Numbered)
	m.Later = seq.Keep(m.Out.Checks, func(c plan.Check) bool {
		return !slices.ContainsFunc(first.Out.Checks, func(o plan.Check) bool { return o.What == c.What && o.Limits == c.Limits })
	})
	b := &bench{Numbered: m.Numbered, later: true, worked: map[workedTo]bool{}}
	now := m.finishing(b, first)
	turned, _ := b.chamferLines(func(c *chamfer) bool { return c.step != nil && c.step.AfterWeld && c.For != "weld" })
	grooved, _, _ := b.grooveLines(func(g *Groove) bool { return g.step != nil && g.step.AfterWeld })
	if ends := m.TwoEnds(); ends != "" {
		m.LaterDo = append(m.LaterDo, ends)
	}
	if do := slices.Concat(m.detailsLater(b), turned, grooved); do != nil {
		m.LaterDo = append(m.LaterDo, strings.Join(do, " "))
	}
	if rough.Top.Value != p.Top.Value {
		m.LaterDo = append(m.LaterDo, "The keyway goes where TOP is scribed.")
	}
	cut := m.cutLater()
	for i, o := range m.Out.Operations {
		switch cuts := slices.ContainsFunc(o.Refs, func(n int) bool { return cut[n] }); {
		case cuts && !Bores(o):
			m.LaterDo = append(m.LaterDo, strings.Join(slices.Concat([]string{o.Title + "."}, o.Do, o.Dangers), " "))
		case cuts && m.Flat():
			now.bore = &m.Out.Operations[i]
		}
	}
	m.Out.Operations, m.Out.Checks, m.Out.Features, m.Out.Dimensions = first.Out.Operations, first.Out.Checks, first.Out.Features, first.Out.Dimensions
	m.Out.Faces = first.Out.Faces
	m.finishNow(job.Unwelded(p), now)
	return m
}

// TwoEnds says which bores that are finished after a weld are bored from which end, where no tool reaches all of them
// from one; empty where one does.
func (m *Model) TwoEnds() string {
	inside := m.Side(true)
	open := func(steps []*Step, radiusMm float64) bool {
		return !slices.ContainsFunc(steps, func(o *Step) bool { return geom.Over(radiusMm, o.RadiusMm()) })
	}
	var front, back []string
	all := true // from the back
	for i, s := range inside {
		if !s.AfterWeld {
			continue
		}
		ahead, behind := open(inside[:i], s.RadiusMm()), open(inside[i+1:], s.RadiusMm()) && !m.blind(inside[len(inside)-1])
		if ahead {
			front = append(front, words.Spaced(s.Name))
		} else if behind {
			back = append(back, words.Spaced(s.Name))
		}
		all = all && behind
	}
	if len(front) == 0 || len(back) == 0 || all {
		return ""
	}
	first := words.Join(" and ", front...)
	return "No tool reaches all bores from one end: " + first + " from the front; then turn it round, set it true by indicator in " + first + ", and bore " +
		words.Join(" and ", back...) + " from the back."
}

// detailsLater are what is worked on the steps that are finished after a weld, once each is turned: undercuts, and the like.
func (m *Model) detailsLater(b *bench) (do []string) {
	for s := range seq.Refs(m.Steps) {
		if !s.AfterWeld {
			continue
		}
		for _, d := range s.details {
			_, line := d.after(b, s)
			if u, ok := d.(undercut); ok && line == "" {
				line = "Undercut of " + words.Spaced(s.Name) + ": " + strings.TrimPrefix(u.words(m.W), "undercut ") + ", at the shoulder."
			}
			if line != "" {
				do = append(do, line)
			}
		}
	}
	return do
}

// finishing lists the steps that are finished after a weld, and notes what stays on each until then. Where the
// operations before the weld have a step, it is held as in them.
func (m *Model) finishing(b *bench, first *Model) (now finishing) {
	for i := range m.Steps {
		s := &m.Steps[i]
		if !s.AfterWeld {
			continue
		}
		now.sizes, now.limits = append(now.sizes, m.Finished(s)), append(now.limits, b.limits(words.Spaced(s.Name), s.Size)...)
		left := geom.Clean(math.Abs(s.Size.NominalMm - first.Steps[i].Size.NominalMm))
		m.Out.Notes = append(m.Out.Notes, words.Capital(words.Spaced(s.Name))+" "+m.W.Dia(s.Size.NominalMm)+
			" is finished after the last weld on it, and what is cut into it: "+m.W.Said(left)+" stay on the diameter until then.")
		for _, o := range first.Out.Operations {
			if Bores(o) && slices.Contains(o.Refs, first.ref(&first.Steps[i])) {
				now.held = append(now.held, "For "+words.Spaced(s.Name)+" hold it, and set the tool, as in operation "+strconv.Itoa(o.N)+".")
				m.LaterHeld = append(m.LaterHeld, Held{words.Spaced(s.Name), o.N})
			}
		}
	}
	return now
}

// cutLater are the numbers of what has operations of its own after a weld: steps, the keyways and flats on them, and
// the split of a ring whose bore they are.
func (m *Model) cutLater() map[int]bool {
	cut := map[int]bool{}
	for s := range seq.Refs(m.Steps) {
		cut[m.ref(s)] = s.AfterWeld
	}
	for k := range seq.Refs(m.Keyways) {
		cut[m.ref(k)] = k.step.AfterWeld
	}
	for f := range seq.Refs(m.Flats) {
		cut[m.ref(f)] = f.step.AfterWeld
	}
	if c := m.Clamp; c != nil {
		cut[m.ref(c)] = m.StepNamed(c.Row.In).AfterWeld
	}
	return cut
}

// finishing is what is done to a part after its welds: what is finished, to what limits, how each is held where that
// is known, and the operation of the bore of a plate, nil of other parts.
type finishing struct {
	sizes, limits, held []string
	bore                *plan.Operation
}

// Finished is a step with the size that it is finished to: "bore Ø32 H7".
func (s *Sizes) Finished(st *Step) string {
	return words.Join(" ", words.Spaced(st.Name), s.W.Dia(st.Size.NominalMm), st.Size.classText())
}

// finishNow is the operation before the last in which copies that nothing is welded to get what is finished
// after the welds on the others, and their rows of the record.
func (m *Model) finishNow(copies []int, f finishing) {
	if len(copies) == 0 {
		return
	}
	which := "all pieces"
	switch n := seq.Map(copies, strconv.Itoa); {
	case m.Part.Quantity == 1:
		which = "this piece"
	case len(n) == 1:
		which = "piece " + n[0]
	case len(n) < m.Part.Quantity:
		which = "pieces " + strings.Join(n, ", ")
	}
	o, by := plan.Operation{Machine: plan.Lathe, Limits: f.limits}, ", set true by "+m.LaterTrue[0].Text
	if f.bore != nil {
		o, by = *f.bore, ""
		f.held = seq.Keep(o.Do, func(line string) bool { return line != m.work.top })
	}
	o.Refs, o.Title = nil, "Finish "+which+" now"
	o.Do = slices.Concat([]string{"Nothing is welded to " + which + ": " + strings.Join(f.sizes, "; ") + by + "."}, f.held, m.LaterDo)
	last := len(m.Out.Operations) - 1
	m.Out.Operations = slices.Insert(slices.Clone(m.Out.Operations), max(last, 0), o)
	for i := range m.Out.Operations {
		m.Out.Operations[i].N = i + 1
	}
	for _, c := range m.Later {
		c.What, c.Ref = which+", finished: "+c.What, 0
		m.Out.Checks = append(m.Out.Checks, c)
	}
}

// asDrawn works a part out as it is drawn.
func asDrawn(job *parts.Job, p *parts.Part) *Model {
	sizes, errs := newSizes(job, p)
	shape, more := newShape(sizes)
	errs = append(errs, more...)
	n := number(shape)
	for group, whole := range n.cut.whole {
		if whole {
			n.placed(group, plan.ByCutter)
		}
	}
	ladders, more := newLadders(sizes)
	m := &Model{Numbered: n, Errs: append(errs, more...), work: operations(n)}
	m.Out = &plan.PartPlan{
		Name: p.Name.Value, Title: p.Title.Value, Kind: string(p.Kind), Quantity: p.Quantity,
		Material: p.Material.Value, Top: n.topMark(), StockText: n.form.stockText(sizes),
		MassKg: n.massKg(), Overall: n.form.overall(sizes), Faces: n.Faces, Section: n.Section,
		Dimensions: m.work.limitsOnce(slices.Concat(n.atTop, sizes.dimensions(p.Turned(), p.Flat() && p.Stock.Form != ""))),
		Features:   n.Features, Operations: m.work.ops, Checks: checks(n), Ladders: ladders,
		Keyways: seq.Map(n.Keyways, func(k Keyway) plan.KeywayRow { return k.Row }),
		Grooves: seq.Map(n.Grooves, func(g Groove) plan.GrooveRow { return g.Row }),
		Flats:   seq.Map(n.Flats, func(f Flats) plan.FlatsRow { return f.Row }),
		Radials: n.rows(), Knifed: n.knifed(), Shown: n.shownRows(), Centres: n.centreRows(), Clamp: n.clampRow(), Developments: n.Developments,
		Notes: n.notes(), Cautions: n.cautions(m.work.ops), Problems: n.problems(),
	}
	if len(m.Errs) == 0 {
		n.form.show(n, m.Out)
	}
	return m
}

// problems are what is wrong with the things on the part, in words too.
func (n *Numbered) problems() []plan.Problem {
	out := n.unmeasured
	for m := range seq.Refs(n.Radials) {
		out = append(out, m.problems(n)...)
	}
	out = append(out, n.undercutProblems()...)
	for _, s := range n.thin {
		out = append(out, plan.Problem{
			Kind: plan.CentreThin, Pos: n.Part.Pos, Feature: s.Name,
			Args: []plan.Arg{plan.Named(words.Spaced(s.Name)), plan.Named(n.W.Dia(s.Size.NominalMm)), plan.Of(plan.Mm, grooves.LeastCentredMm)},
		})
	}
	out = append(out, n.form.problems(n)...)
	for i := range out {
		out[i].What = n.W.Says(out[i])
	}
	return out
}

func checks(n *Numbered) []plan.Check {
	r := &record{Numbered: n}
	for st := range seq.Refs(n.Steps) {
		r.checkStep(st)
	}
	for _, f := range n.Features {
		switch f.Kind {
		case plan.LengthFeature, plan.HeightFeature, plan.OffsetFeature, plan.ThicknessFeature, plan.EndFeature, plan.EdgeFeature:
			r.form.check(r, f)
		}
	}
	for _, it := range n.items() {
		it.checks(r)
	}
	r.checkNotes()
	if top := n.topMark(); top != "" {
		r.add(plan.Check{What: "TOP marked", Wanted: top, Limits: r.topPlace()})
	}
	return r.list
}

func (r *record) checkStep(s *Step) {
	name := words.Spaced(s.Name)
	c := plan.Check{Ref: r.ref(s), What: name, Wanted: r.wanted(s), Limits: r.limitsText(s.Size), Source: s.Size.Source, Gauge: gauge(s)}
	if r.Part.Rolled != nil && !s.Inside {
		c.Gauge = "tape round it, both ends: " + r.girth(s)
	}
	switch {
	case s.Size.Limited:
		c.MinMm, c.MaxMm = s.Size.MinMm, s.Size.MaxMm
	case s.Size.AsBought:
		c.Limits = "as bought"
		if r.pressedOn(s) {
			c.Limits, c.Gauge = "as bought, for the bore on it: four places across, the largest", r.W.Micrometer(s.Size.NominalMm)
		}
	default:
		c.Limits = words.OrNone(c.Limits)
	}
	for _, d := range s.details {
		d.check(s, &c)
	}
	if t := s.Size.Thread; t != nil {
		c.Limits = r.classLimits(t) + c.Limits
	}
	r.add(c)
	for _, d := range s.details {
		d.more(r, s)
	}
	if s.LengthMm() != geom.Clean(r.LengthMm()) && !r.auxiliary(s) {
		r.sized(plan.Check{Ref: r.ref(s), What: name + " length", Wanted: r.W.Size(s.LengthMm()), Gauge: r.lengthGauge(s)}, r.length(s))
	}
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

// FaceView is a face of a part as seen by who looks at it, with every hole
// that shows there: those marked on it, and, mirrored in x, the through holes
// marked on the other face. It returns nil for a part without holes there.
// Numbers stay with the hole, so that they run anticlockwise on a mirrored
// circle.
func FaceView(job *parts.Job, part string, face parts.Face) (*plan.Face, error) {
	p := job.Part(part)
	if p == nil {
		return nil, fmt.Errorf("no part %s in the job", part)
	}
	s, errs := newSizes(job, p)
	if len(errs) > 0 {
		return nil, errs
	}
	if s.form.listed() {
		return nil, nil
	}
	f := s.face(face, true)
	if len(f.Groups) == 0 {
		return nil, nil
	}
	return f, nil
}

// OutlineContour is the outline of a part seen on its front face, before any
// hole: the contour of a flat part, the largest circle of a round one. The part
// must be one that Resolve has accepted in this job.
func OutlineContour(job *parts.Job, p *parts.Part) plan.Contour {
	s, _ := newSizes(job, p)
	return plan.Contour(s.OutlinePath().ToSVG())
}

// CutProfile lays out the cutting file of a flat part, or of the flat blank of
// a cone or square-to-round. The error is a located
// parts.Errors where the part is at fault, and a plain one for options.
//
// What is cut: the outline and the bore as left for the lathe, through slots,
// and through holes that are plain or for clearance and not smaller than the
// cutter can make. Tapped, reamed, blind and too small holes become marks.
func CutProfile(job *parts.Job, part string, opt CutOptions) (*plan.Profile, error) {
	p := job.Part(part)
	switch {
	case p == nil:
		return nil, fmt.Errorf("no part %s in the job", part)
	case !(opt.KerfMm >= 0 && opt.KerfMm <= MaxKerfMm):
		return nil, fmt.Errorf("kerf %v mm: 0 to %d mm", opt.KerfMm, MaxKerfMm)
	case opt.Compensate && opt.KerfMm == 0:
		return nil, fmt.Errorf("to compensate, the kerf must be known")
	}
	if rough := p.BeforeWeld(WeldLeaveMm(job)); rough != nil {
		p = rough
	}
	sizes, errs := newSizes(job, p)
	shape, more := newShape(sizes)
	if errs = append(errs, more...); len(errs) > 0 {
		return nil, errs
	}
	c := &cutter{Shape: shape, faults: faults{job: job}, opt: opt}
	c.out = c.newProfile()
	out, err := shape.form.cutFile(c)
	if len(c.list) > 0 {
		return nil, c.list
	}
	return out, err
}

// SawShort has a bar sawn shorter than it is drawn, by leftMm and rightMm at its ends, for
// the gaps of the welds there, or longer where these are negative, for what the welds draw in:
// its sheet shows it so, and its holes from the sawn ends. A coped bar stays as it is drawn; ok
// tells whether another length is sawn.
func (m *Model) SawShort(leftMm, rightMm float64) (ok bool) {
	drawn, is := m.form.(*bar)
	if !is || m.Out.Bar == nil || len(drawn.copes) > 0 || leftMm == 0 && rightMm == 0 {
		return false
	}
	in := *drawn.in
	in.Length.Mm -= leftMm + rightMm
	sawn := newBar(&in, m.Job.Units == parts.Inches)
	if sawn.err != nil {
		return false
	}
	sawn.short = "Sawn " + m.offWords(leftMm) + " at each end"
	if leftMm != rightMm {
		sawn.short = "Sawn left " + m.offWords(leftMm) + " and right " + m.offWords(rightMm)
	}
	sawn.short += ", for the welds: " + m.W.Size(drawn.in.Length.Mm) + " with them."
	sizes := *m.Sizes
	sizes.form, sizes.Groups = sawn, slices.Clone(m.Groups)
	for g := range seq.Refs(sizes.Groups) {
		off := geom.Point{XMm: (leftMm - rightMm) / 2} // of the middle
		if g.On == "" && g.Face == parts.Back {
			off.XMm = -off.XMm
		}
		g.Points = slices.Clone(g.Points)
		for k := range g.Points {
			g.Points[k] = g.Points[k].Minus(off)
		}
	}
	shape := *m.Shape
	shape.Sizes = &sizes
	n := number(&shape)
	m.Out.Bar, m.Out.Overall, m.Out.Features, m.Out.Operations, m.Out.Checks = sawn.plan(n), sawn.overall(&sizes), n.Features, operations(n).ops, checks(n)
	return true
}
