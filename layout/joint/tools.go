package joint

import (
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
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

// tools are what the joints made need and no merchant sells, in their order, with
// sheets if the job asks for them. Each joint learns the names of its own.
func (j *assembly) tools(made []*joint) []plan.ToolRow {
	var list tooling
	for i, t := range made {
		t.kind.tools(j, t, made[:i], &list)
	}
	out := j.toolRows(list, 0)
	if j.job.Tools {
		out = j.addJigs(made, out)
	}
	return append(out, j.backings(made, len(out))...)
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

// tools are what stands between the ram and the hub: a sleeve over a shaft
// that stands out, or a disc that stops the ram where the shaft lies under the
// hub's face. A hub that is heated needs the disc alone, which has
// no use where the shaft cannot be let down onto it.
func (pressKind) tools(j *assembly, t *joint, _ []*joint, list *tooling) {
	out, span := j.standsOutMm(t)
	hot := t.in.Press.Method != "press"
	if t.frame != "" {
		j.screwTools(t, list)
		return
	}
	switch d := t.b.step.Size.NominalMm; {
	case t.built, out < 0 && t.collared(): // against stops on the shaft, or its collar
	case out < 0:
		if tol, _, known := t.tubeLimits(); known { // the bore is turned to suit the least of them
			d = -j.w.Up(tol.PlusMinusMm-d, 0.5, 1.0/64)
		}
		list.add(t, tool{"Stop disc", " " + t.w.Dia(d-overMm) + " × " + t.w.Size(-out) + " thick, to lie on the end of " + t.a.r.Out.Title, j.disc(d-overMm, -out), nil})
	case out > 0 && !hot:
		passed := seq.Max(d, stepsAt(t.a.r, false, span), diameterMm)
		in := bounds{passed + overMm/2, passed + 3*overMm/2, passed + overMm}
		list.add(t, tool{"Press sleeve", " " + t.w.Dia(in.nominal) + " inside, " + t.w.Size(j.up(out+endMm)) + " long, ends square",
			j.sleeve(in, free(j.up(in.high+2*sleeveWallMm(d))), out+endMm), nil})
	case !hot:
		list.add(t, tool{"Flat plate", " wider than " + t.w.Dia(d), nil, nil})
	}
}

// hollow are the sizes of a tube for the list.
func (j *assembly) hollow(in, out, longMm float64) string {
	return " " + j.w.Dia(in) + " inside, " + j.w.Dia(out) + " outside, " + j.w.Size(j.up(longMm)) + " long, "
}

// tools are a ring for each cup and a driver for each cone that is mounted in the steps of the joint.
func (bearingKind) tools(j *assembly, t *joint, _ []*joint, list *tooling) {
	for _, of := range t.cups {
		j.cupRing(t, of, list)
	}
	for _, of := range t.cones {
		j.coneDriver(t, of, list)
	}
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

// coneDriver is the driver for the cone of a bearing, long enough to stand out over the
// shaft; where the end of the shaft can be pulled on, it is the tube of a draw bolt. A cone
// that slides on by hand needs none.
func (j *assembly) coneDriver(t, of *joint, list *tooling) {
	p, m, ok := of.mounted()
	if !ok || p.ConeSleeveInMm == 0 {
		return
	}
	comes := -m.coneDir // the side that the cone comes from
	if p.Adjusted {
		comes = m.coneDir
	}
	name, long := "Cone driver", reachMm(of.a, comes)+endMm
	if of.draw != nil {
		name, long = "Draw tube", j.tubeMm(of, m)
	}
	list.add(t, tool{name, j.hollow(p.ConeSleeveInMm, p.ConeSleeveOutMm, long) + "on the cone's " + follows(p) + " end",
		j.sleeve(atLeast(p.ConeSleeveInMm, pressWideMm), atMost(p.ConeSleeveOutMm, 1), long), nil})
	if of.draw != nil {
		j.drawTools(of, list)
	}
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
	t.emptyBores(before, func(f feature, s *part.Step) { list.add(t, j.plug(f, s, t.helixMm() != 0)) })
}

// emptyBores goes through the bores of what a weld joins that have limits and nothing in them yet.
func (t *joint) emptyBores(before []*joint, visit func(f feature, bore *part.Step)) {
	for _, f := range []feature{t.a, t.b} {
		for _, s := range f.r.Side(true) {
			if s.Size.Fitted() && !s.AfterWeld && !filled(f.Instance(), s, append(slices.Clone(before), t)) {
				visit(f, s)
			}
		}
	}
}

// plugText says where the plugs of a weld go.
func (j *making) plugText(t *joint) string {
	var in []string
	t.emptyBores(j.before, func(f feature, s *part.Step) {
		in = append(in, "Scrap plug, oiled, in the "+words.Spaced(s.Name)+" of "+f.title()+each(s)+", until all is cold.")
	})
	return strings.Join(in, " ")
}

// each says where the two plugs of a long bore go.
func each(bore *part.Step) string {
	return words.When(bore.LengthMm() > longDias*(bore.Size.MinMm-plugMm), ", one in each end")
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
