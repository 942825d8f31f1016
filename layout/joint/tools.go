package joint

import (
	"slices"
	"strings"

	"centrepop/layout/grooves"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Shop-made tools clear what they pass over by overMm on diameter, stand endMm
// out for the ram or the hand, and a plug is plugMm under the least bore. Common
// practice, no source.
const (
	overMm = 1.0
	endMm  = 20.0
	plugMm = 0.03
)

type tool struct {
	name  string      // "Cone driver"
	sizes string      // what follows the name in the list
	sheet *parts.Part // what it is made as; nil where any plate does
	uses  []*joint
}

// tooling collects tools, one for equal ones.
type tooling []*tool

func (list *tooling) add(t *joint, x tool) {
	for _, old := range *list {
		if old.name == x.name && old.sizes == x.sizes {
			old.uses = seq.Add(old.uses, t)
			return
		}
	}
	x.uses = []*joint{t}
	*list = append(*list, &x)
}

// row is a tool in the list, by its number.
func (x tool) row(n int) plan.ToolRow {
	row := plan.ToolRow{N: n, Tool: x.name + x.sizes}
	row.Name = row.No() + " " + x.name
	return row
}

// toolRows are tools in the list, numbered on from some, with their sheets if the job asks for them.
func (j *shop) toolRows(list tooling, from int) (out []plan.ToolRow) {
	for i, x := range list {
		row := x.row(from + i + 1)
		row.For = steps(x.uses)
		for _, t := range x.uses {
			if !t.is(parts.WeldKind) || x.sheet != nil { // the step says what is bolted on
				t.out.Tools = append(t.out.Tools, row.Name)
			}
		}
		if j.job.Tools && x.sheet != nil {
			row.Sheet = j.toolSheet(&row, x.sheet)
		}
		out = append(out, row)
	}
	return out
}

// backings are the plates that keep faces flat while they are welded; their steps name them.
func (j *shop) backings(made []*joint, from int) []plan.ToolRow {
	var list tooling
	for _, t := range made {
		if p := t.out.Weld; p != nil && p.BackingMm != 0 {
			list.add(t, tool{"Backing plate", " " + t.w.Size(p.BackingMm) + " thick or more, on " + p.BackingOn, nil, nil})
		}
	}
	return j.toolRows(list, from)
}

// standsOutMm is how far the shaft of a press stands out of the hub at the end
// where the hub goes on, which is the nearer one that no collar shuts; below 0 it lies under the
// hub's face, of a bush that stands out nowhere at the end that is less deep, and where its end lies deep in the
// hub there is nothing to reckon with. Span is the shaft from there to its end, on its own axis.
func (j *assembly) standsOutMm(t *joint) (mm float64, span geom.Span) {
	if j.setting(t).far {
		return 0, span
	}
	hub := j.stands(t).inverse().span(t.b.step.Span()) // on the shaft's axis
	long := t.a.r.LengthMm()
	front, back := geom.Span{ToMm: hub.FromMm}, geom.Span{FromMm: hub.ToMm, ToMm: long}
	low, other := hub.FromMm, long-hub.ToMm
	far := (low > other) != (!geom.Over(low, 0) && !geom.Over(other, 0))
	shut := func(s geom.Span) bool { // a collar there does not pass the bore
		return geom.Over(s.ToMm, s.FromMm) && geom.Over(seq.Max(0, stepsAt(t.a.r, false, s), diameterMm), t.b.step.Size.NominalMm)
	}
	if shut(front) != shut(back) {
		far = shut(front)
	}
	if far {
		return geom.Clean(other), back
	}
	return geom.Clean(low), front
}

// collared tells whether faces that meet stop a shaft in its hub.
func (t *joint) collared() bool { m := t.meeting(); return m.Set() && !m.Level }

// stopText says where the disc lies that stops the ram, or a hub that is slipped on.
func (j *assembly) stopText(t *joint) string {
	out, span := j.standsOutMm(t)
	if out >= 0 || t.collared() {
		return ""
	}
	mouth, level := t.b.step.ToMm, t.b.title()
	if front := span.FromMm == 0; front == (j.stands(t).s > 0) {
		mouth = t.b.step.FromMm
	}
	if geom.Over(mouth, 0) && geom.Over(t.b.r.LengthMm(), mouth) { // in a recess
		level = "the end of " + t.b.text() + " there"
	}
	return "The stop disc lies on the end of " + t.a.title() + ": home when it is level with " + level + "."
}

// hollow are the sizes of a tube for the list.
func (j *assembly) hollow(in, out, longMm float64) string {
	return " " + j.w.Dia(in) + " inside, " + j.w.Dia(out) + " outside, " + j.w.Size(j.up(longMm)) + " long, "
}

// cupRing is the ring for the cup of a bearing, long enough to stand out of the housing; t
// is the joint in whose steps the cup goes in.
func (j *assembly) cupRing(t, of *joint, list *tooling) {
	p, m, ok := of.mounted()
	if !ok {
		return
	}
	long := reachMm(of.b, -of.cupGoes(m)) + endMm
	list.add(t, tool{"Press ring", j.hollow(p.CupRingInMm, p.CupRingOutMm, long) + "on the cup", j.sleeve(atLeast(p.CupRingInMm, pressWideMm), within(p.CupRingOutMm, 0.5), long), nil})
}

// mounted is how the bearing of a joint sits, if the joint was worked out.
func (t *joint) mounted() (*plan.BearingPlan, mounting, bool) {
	if t.out == nil || t.out.Bearing == nil {
		return nil, mounting{}, false
	}
	m, ok := t.mount()
	return t.out.Bearing, m, ok
}

// cupGoes is the direction in which a cup goes into its housing: its back first, or, where a cover is bolted on
// behind it later, from that side.
func (t *joint) cupGoes(m mounting) float64 {
	if t.out != nil && t.out.Bearing != nil && t.out.Bearing.CupFromCover {
		return -m.cupDir
	}
	return m.cupDir
}

// reachMm is how far a step lies from the end of its part in a direction.
func reachMm(f feature, dir float64) float64 {
	if back(dir) {
		return geom.Clean(f.r.LengthMm() - f.step.ToMm)
	}
	return f.step.FromMm
}

// tools are plugs that hold the finished bores of what is welded true.
func (weldKind) tools(j *assembly, t *joint, before []*joint, list *tooling) {
	j.emptyBores(t, before, func(f feature, s *part.Step) { list.add(t, j.plug(f, s, t.helixMm() != 0)) })
}

// plug holds a bore true while something is welded to its part; in a long bore one
// in each end. A part that turns between centres meanwhile runs on those of its plugs.
func (j *shop) plug(f feature, bore *part.Step, centred bool) tool {
	d := atMost(words.Round(bore.Size.MinMm-plugMm, 3), plugMm)
	long, count, of := bore.LengthMm(), "", ", for the "+words.Spaced(bore.Name)+" of "+f.title()
	p := toolBlank(parts.TurnedPart, "Oil it. Leave it in until the weld is cold; turn it out if the bore has closed on it.")
	if count = each(bore); count != "" {
		long, p.Quantity = j.up(plugDias*d.high), 2
	}
	if centred {
		long, d = long+j.up(gripMm), free(bore.Size.NominalMm)
		of += ", to it as measured"
	}
	ratio, _ := bore.Cone()
	if ratio > 0 { // a cylinder would enter by nothing
		d, long, p.Quantity = bounds{bore.Size.MinMm, bore.Size.MaxMm, bore.Size.NominalMm}, bore.LengthMm(), 1
		count, of = ", taper 1:"+words.Trim(ratio, 3), of+", pressed in by hand"
	}
	p.Profile = &parts.Profile{Outside: []parts.Step{j.cylinder("outside", d, long)}}
	if ratio > 0 {
		p.Profile.Outside[0].Taper = seq.At(f.r.Part.Profile.Inside, func(s *parts.Step) bool { return s.Name.Value == bore.Name }).Taper
	}
	p.Stock = j.bar(d.high, 0)
	switch {
	case centred:
		p.Centres = &parts.Centres{Form: string(grooves.CentreA), Ends: string(parts.Front)}
		p.Profile.Outside[0].Size.Fit.Measured = []parts.Length{{Mm: runsMm}, {Mm: 2 * runsMm}}
		p.Notes = append(p.Notes, parts.Text{Value: "Made after " + f.title() +
			", whose bore is measured first: a loose plug hangs it off its centre. Its front outward, " + j.w.Size(j.up(gripMm)) +
			" standing out to turn it out by: the part runs on its centre, drilled in the setting that turns the outside, between centres."})
	case d.high > hollowMm:
		p.Profile.Inside = []parts.Step{j.cylinder("bore", free(j.w.Even(d.high/2, 10, 0.25)), long)}
	}
	return tool{"Scrap plug", " " + j.w.Dia(words.Either(ratio > 0, d.nominal, d.high)) + " × " + j.w.Size(long) + " long" + count + of, p, nil}
}

// Pulls tells whether a weld pulls a step of a part out of size that lies so far from it.
func Pulls(r *part.Model, s *part.Step, apartMm float64) bool {
	wallMm, radiusMm := r.WallMm(s.MidMm()), s.RadiusMm()
	return !geom.Over(apartMm, weld.PullMm(radiusMm+words.Either(s.Inside, wallMm, -wallMm)/2, wallMm))
}

// emptyBores goes through the bores of what a weld joins that have limits and nothing in them yet, and that it pulls.
func (j *assembly) emptyBores(t *joint, before []*joint, visit func(f feature, bore *part.Step)) {
	for _, f := range []feature{t.a, t.b} {
		on, known := j.weldSpan(t, f)
		for _, s := range f.r.Side(true) {
			pulled := !known || Pulls(f.r, s, -on.OnMm(s.Span()))
			if s.Size.Fitted() && pulled && !s.AfterWeld && !filled(f.Instance(), s, append(slices.Clone(before), t)) {
				visit(f, s)
			}
		}
	}
}

// weldSpan is where along a part a weld on one of its steps lies: on all of that, or the part of it that the step of the other
// meets; false where it is no step.
func (j *assembly) weldSpan(t *joint, f feature) (s geom.Span, known bool) {
	if f.step == nil {
		return s, false
	}
	s = f.step.Span()
	own, other, _ := t.from(f.Instance())
	if other.step == nil {
		return s, true
	}
	o, placed := j.onOwn(t, own, other)
	if !placed {
		return s, true
	}
	return geom.Between(max(s.FromMm, o.FromMm), min(s.ToMm, o.ToMm)), true
}

// plugText says where the plugs of a weld go.
func (j *making) plugText(t *joint) string {
	var in []string
	j.emptyBores(t, j.before, func(f feature, s *part.Step) {
		in = append(in, "Scrap plug, oiled, in the "+words.Spaced(s.Name)+" of "+f.title()+each(s)+", until all is cold.")
	})
	return strings.Join(in, " ")
}

// each says where the two plugs of a long bore go.
func each(bore *part.Step) string {
	ratio, _ := bore.Cone()
	return words.When(ratio == 0 && bore.LengthMm() > longDias*(bore.Size.MinMm-plugMm), ", one in each end")
}

// filled tells whether one of some joints puts a part into a bore.
func filled(of parts.Instance, s *part.Step, made []*joint) bool {
	return slices.ContainsFunc(made, func(o *joint) bool {
		own, _, ok := o.from(of)
		return ok && own.step != nil && own.step.Name == s.Name
	})
}

// toolSheet works a tool out as any other part of the job; nil if that cannot be.
func (j *shop) toolSheet(row *plan.ToolRow, p *parts.Part) *plan.PartPlan {
	p.Name.Value, p.Title.Value = strings.ToLower(row.No()), row.Name
	p.Notes = append([]parts.Text{{Value: words.Capital(row.For) + "."}}, p.Notes...)
	m := part.Work(j.job, p)
	if len(m.Errs) > 0 {
		return nil
	}
	return m.Out
}
