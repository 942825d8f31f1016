// Package joint works out how the parts of a job meet: where each lies in its
// assembly, in which order the joints are made, and the numbers and steps of
// each press fit, weld, bolted joint and bearing. Lengths are millimetres and
// angles degrees. What is wrong with a joint travels as a plan.Problem.
package joint

import (
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// Resolve fills the plan's joints and lists. The parts must be worked
// out without fault.
func Resolve(p *plan.Plan, job *parts.Job, rs []*part.Model) parts.Errors {
	j := &joiner{job: job, pl: p, w: words.Writer{Units: job.Units}, rs: rs}
	var all []*joint
	for i, in := range job.Joints {
		first, second := in.Ends()
		t := &joint{in: in, index: i, a: j.find(first), b: j.find(second)}
		if j.fits(t) {
			all = append(all, t)
		}
	}
	if len(j.errs) == 0 {
		j.place(all)
	}
	if len(j.errs) == 0 {
		j.order(all)
	}
	if len(j.errs) == 0 {
		for i, t := range j.done {
			j.joint(t, i+1)
		}
	}
	p.Bought = j.bought()
	p.Cuts = j.cuts()
	p.Lifts = j.lifts()
	return j.errs
}

// fits checks that a joint's features are of the sort its kind needs.
func (j *joiner) fits(t *joint) bool {
	before := len(j.errs)
	need := func(f feature, ok bool, what string) {
		if !ok {
			j.fault(f.ref.Pos, plan.CannotJoin, plan.Named(f.text()), plan.Named(what))
		}
	}
	round := func(f feature, inside bool) bool {
		return f.step != nil && f.step.Inside == inside && f.step.Size.Thread == nil
	}
	switch {
	case t.in.Press != nil:
		need(t.a, round(t.a, false), "a round outside, such as a step or the outline of a round plate")
		need(t.b, round(t.b, true), "a bore")
	case t.in.Bearing != nil:
		need(t.a, round(t.a, false), "the shaft step that takes the cone")
		need(t.b, round(t.b, true), "the bore that takes the cup")
	case t.in.Weld != nil:
		edge := func(f feature) bool {
			return f.step != nil || (f.group == nil && f.radial == nil && (f.ref.Feature == "outline" || f.roundMm() > 0)) || f.radial != nil
		}
		need(t.a, edge(t.a), "a step, a bore, an outline or an opening")
		need(t.b, edge(t.b), "a step, a bore, an outline or an opening")
	case t.in.Bolt != nil:
		need(t.a, t.a.group != nil && t.a.group.Hole != nil && t.a.group.Size.Thread == nil, "a group of clearance or plain holes")
		need(t.b, t.b.group != nil && t.b.group.Hole != nil, "a group of holes")
		for _, s := range t.in.Bolt.Stack {
			f := j.find(s)
			need(f, f.group != nil && f.group.Hole != nil && f.group.Size.Thread == nil, "a group of clearance or plain holes")
		}
		j.boltFits(t)
	}
	return len(j.errs) == before
}

// boltFits finds the bolt and checks it against the holes.
func (j *joiner) boltFits(t *joint) {
	in := t.in.Bolt
	b, err := bolts.Find(in.Size)
	if err != nil {
		j.fault(in.Pos, plan.NoBolt, plan.Named(in.Size), plan.Named(strings.TrimPrefix(err.Error(), "bolts: ")))
		return
	}
	t.bolt, t.boltMm = &b, b.Thread.MajorMm
	if t.a.group == nil || t.b.group == nil {
		return
	}
	if thread := t.b.group.Size.Thread; thread != nil {
		if thread.Designation != b.Thread.Designation {
			j.fault(in.Pos, plan.OtherThread, plan.Named(b.Thread.Designation), plan.Named(t.b.text()), plan.Named(thread.Designation))
		}
		if in.Nut {
			j.fault(in.Pos, plan.TappedWithNut, plan.Named(t.b.text()))
		}
	} else if !in.Nut && in.Stud.Value == "" {
		j.fault(in.Pos, plan.NoThreadNoNut, plan.Named(t.b.text()))
	}
	for _, f := range append([]feature{t.a, t.b}, j.stack(t)...) {
		if f.group != nil && f.group.Size.Thread == nil && f.group.Size.FinishedMm < t.boltMm {
			j.fault(f.ref.Pos, plan.HoleTooSmall, plan.Named(f.text()), plan.Of(plan.Diameter, f.group.Size.FinishedMm), plan.Named(b.Thread.Designation))
		}
	}
}

func (j *joiner) stack(t *joint) []feature {
	var out []feature
	for _, s := range t.in.Bolt.Stack {
		out = append(out, j.find(s))
	}
	return out
}

// joint works out one joint of the final order.
func (j *joiner) joint(t *joint, n int) {
	t.out = &plan.JointPlan{
		N: n, Name: t.in.Name.Value, Kind: string(t.in.Kind),
		A: t.a.end(), B: t.b.end(), Why: t.why,
	}
	verb := map[parts.JointKind]string{
		parts.PressKind: "Press", parts.WeldKind: "Weld", parts.BoltKind: "Bolt", parts.BearingKind: "Bearing",
	}[t.in.Kind]
	switch {
	case t.in.Bearing != nil:
		t.out.Title = "Bearing " + t.in.Bearing.Bearing.Value + ": " + t.a.title() + " in " + t.b.title()
	case t.in.Press != nil:
		t.out.Title = verb + " " + t.b.title() + " on " + t.a.title()
	default:
		t.out.Title = verb + " " + t.a.title() + " to " + t.b.title()
	}
	t.out.How = j.how(t)
	j.align(t)
	switch {
	case t.in.Press != nil:
		j.press(t)
	case t.in.Weld != nil:
		j.weld(t)
	case t.in.Bearing != nil:
		j.bearing(t)
	case t.in.Bolt != nil:
		j.boltJoint(t)
	}
	if t.axis && len(j.errs) == 0 {
		j.traps(t)
	}
	j.finish(t)
	j.pl.Joints = append(j.pl.Joints, t.out)
}

func (f feature) end() plan.JointEnd {
	e := plan.JointEnd{Part: f.ref.Part, Copy: f.ref.Copy, Title: f.title(), Feature: f.ref.Feature}
	if s := f.step; s != nil {
		e.DiameterMm, e.MinMm, e.MaxMm, e.Inside = geom.Clean(s.Size.NominalMm), geom.Clean(s.Size.MinMm), geom.Clean(s.Size.MaxMm), s.Inside
		e.FromMm, e.ToMm = geom.Clean(s.FromMm), geom.Clean(s.ToMm)
	}
	if f.group != nil {
		e.DiameterMm = f.group.Size.FinishedMm
	}
	return e
}

// how says in words how the parts stand to each other.
func (j *joiner) how(t *joint) string {
	if !t.axis {
		return t.a.text() + " against " + t.b.text() + "; square and place by the drawing"
	}
	m := t.meeting()
	a, b := j.at(t.a.inst()), j.at(t.b.inst())
	is := a.at.then(b.at.inverse())
	text := "fronts looking the same way"
	switch {
	case !m.Set() && slices.ContainsFunc(t.before(j.done), t.joins):
		text = "as they were put together"
	case m.Set() && m.Level:
		text = string(m.First) + " of " + t.a.title() + " level with the " + string(m.Second) + " of " + t.b.title()
		if m.Below.Mm > 0 {
			text += ", the inner part " + j.w.Size(m.Below.Mm) + " below"
		}
	case m.Set():
		text = string(m.First) + " of " + t.a.title() + " on the " + string(m.Second) + " of " + t.b.title()
	case is.s < 0:
		text = "fronts looking opposite ways"
	}
	return text + ", TOP of " + t.a.title() + " at " + words.Trim(is.turn, 2) + "° of " + t.b.title()
}

// figure adds a number to the joint.
func (t *joint) figure(label, value, source string) {
	t.out.Figures = append(t.out.Figures, plan.Figure{Label: label, Value: value, Source: source})
}

func (t *joint) step(title string, do ...string) *plan.JointStep {
	s := plan.JointStep{N: len(t.out.Steps) + 1, Title: title, Do: slices.DeleteFunc(do, func(d string) bool { return d == "" })}
	t.out.Steps = append(t.out.Steps, s)
	return &t.out.Steps[len(t.out.Steps)-1]
}

func (t *joint) caution(texts ...string) {
	for _, c := range texts {
		if !slices.Contains(t.out.Cautions, c) {
			t.out.Cautions = append(t.out.Cautions, c)
		}
	}
}

// problem notes something wrong with the joint that does not stop the sheets.
func (t *joint) problem(kind plan.ProblemKind, args ...plan.Arg) {
	t.add(plan.Problem{Kind: kind, Args: args})
}

func (t *joint) add(p plan.Problem) {
	p.Pos = t.in.Pos
	t.out.Problems = append(t.out.Problems, p)
}

// finish places the assembly, marks the clock and weighs it.
func (j *joiner) finish(t *joint) {
	made := append(t.before(j.done), t)
	members := j.members(t.a.inst(), made)
	if p := j.at(t.a.inst()); t.axis && p != nil {
		added := j.added(t)
		for _, q := range j.placed {
			if q.group == p.group && slices.Contains(members, q.inst) {
				t.out.Placed = append(t.out.Placed, plan.Placed{
					Part: q.part, Copy: q.copy, Title: copyTitle(q.r, q.copy),
					FrontMm: geom.Clean(q.at.z0), TurnDeg: norm(q.at.turn), OtherWay: q.at.s < 0,
					New: slices.Contains(added, q.inst),
				})
			}
		}
		j.clockMarks(t)
	}
	for _, r := range t.out.Remedies {
		if strings.HasPrefix(r, "Witness") || strings.HasPrefix(r, "Nothing but") {
			t.out.Steps = append([]plan.JointStep{{Title: "Mark the clock", Do: []string{r}}}, t.out.Steps...)
			break
		}
	}
	for i := range t.out.Steps {
		t.out.Steps[i].N = i + 1
	}
	for i := range t.out.Problems {
		t.out.Problems[i].What = j.w.Says(t.out.Problems[i])
	}
	for _, a := range t.out.InLine {
		t.out.Checks = append(t.out.Checks, plan.Check{What: "in line: " + a.What, Wanted: "at " + words.Trim(a.Deg, 2) + "°", Limits: "by eye and square", Gauge: "eye, protractor"})
	}
	if t.in.Bolt != nil && t.axis {
		j.registers(t)
	}
	t.out.MassKg = j.massKg(members)
	if t.out.MassKg > plan.LiftKg {
		t.caution("The assembly is now " + words.Trim(t.out.MassKg, 1) + " kg: lift with a hoist or two people (over 25 kg, ISO 11228-1, from memory).")
	}
	if t.in.Note.Value != "" {
		t.caution(t.in.Note.Value)
	}
}

// added are the parts that this joint brings to the assembly: the side without
// the part that was placed first.
func (j *joiner) added(t *joint) []inst {
	before := t.before(j.done)
	a, b := j.members(t.a.inst(), before), j.members(t.b.inst(), before)
	if slices.Contains(a, t.b.inst()) {
		return nil
	}
	for _, q := range j.placed {
		if slices.Contains(a, q.inst) {
			return b
		}
		if slices.Contains(b, q.inst) {
			return a
		}
	}
	return nil
}

// clockMarks lists what lies where on the two parts, and what the rules name.
func (j *joiner) clockMarks(t *joint) {
	key := func(i inst, name string) bool {
		for _, rule := range t.in.InLine {
			for _, ref := range rule.Refs {
				base, _, _ := parts.Numbered(ref.Feature)
				if (inst{ref.Part, ref.Copy}) == i && (ref.Feature == name || base == name) {
					return true
				}
			}
		}
		return false
	}
	for _, p := range j.placed {
		here := p.inst == t.a.inst() || p.inst == t.b.inst()
		title := copyTitle(p.r, p.copy)
		mark := func(name, label string, deg float64) {
			if k := key(p.inst, name); here || k {
				t.out.Clock = append(t.out.Clock, plan.ClockMark{Label: label, Part: title, Deg: p.at.clock(deg), Key: k})
			}
		}
		mark("top", "TOP", 0)
		for _, m := range p.r.Radials {
			for _, row := range m.Rows {
				mark(row.Name, words.Spaced(row.Name), row.ClockDeg)
			}
		}
		for i := range p.r.Groups {
			f := feature{ref: parts.JointRef{Part: p.part, Copy: p.copy}, r: p.r, group: &p.r.Groups[i]}
			if name := f.group.Group.Name; key(p.inst, name) {
				for _, deg := range f.clocks() {
					mark(name, words.Spaced(name), deg)
				}
			}
		}
	}
}
