// Package joint works out how the parts of a job meet: where each lies in its
// assembly, in which order the joints are made, and the numbers and steps of
// each press fit, weld, bolted joint and bearing. Lengths are millimetres and
// angles degrees. What is wrong with a joint travels as a plan.Problem.
//
// Standards: ISO 286-1 for seats, ISO 492 for rolling bearings; packages press,
// weld, bolts and fits name those that they compute by.
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

// Resolve fills the plan's joints and lists from the parts worked out, in the
// order of job.Parts. Each stage hands its result to the next: the ends of the
// joints, the assembly they make, the order to make them in, then joint by
// joint. What keeps a joint from being worked out is returned, and the joint
// left out; the others go on.
func Resolve(pl *plan.Plan, job *parts.Job, models []*part.Model, seams Seams) []plan.Problem {
	s := &shop{job: job, w: words.Writer{Units: job.Units}, models: models, seams: seams}
	all := s.read()
	a := s.place(sound(all))
	order := a.order(sound(all))
	var made []*joint
	together := connected(order)
	madeOf := map[parts.Instance][]*joint{}
	s.sawShort(a, together, order)
	for _, t := range order {
		of := together.of[t]
		m := &making{assembly: a, before: madeOf[of], all: together.joints[of]}
		if m.joint(t); t.refused() {
			continue
		}
		made, madeOf[of] = append(made, t), append(madeOf[of], t)
		t.out.N = len(made)
		pl.Joints = append(pl.Joints, t.out)
	}
	a.pieces(made)
	pl.Bought = s.bought(made)
	pl.Cuts = s.cuts()
	pl.Bars = s.bars()
	pl.Tools = a.tools(made)
	pl.Lifts = lifts(pl, made)
	return seq.Flat(all, func(t *joint) []plan.Problem { return t.faults })
}

// bought lists what the joints need from the merchant, then keys, seals,
// what the parts have fitted in their holes, and what comes loose.
func (j *shop) bought(made []*joint) []plan.BoughtRow {
	var out buying
	for _, t := range made {
		t.kind.buy(j, t, &out)
	}
	j.buyAnchors(made, &out)
	for _, r := range j.models {
		add := func(item string, n int, note string) {
			if item != "" {
				out.add(item, n, r.Out.Title, note)
			}
		}
		for _, q := range r.Seals() {
			add("Seal "+q.Name, r.Part.Quantity, "")
		}
		for _, k := range r.Keyways {
			item, note := k.Bought(j.w)
			add(item, r.Part.Quantity, note)
		}
		for _, g := range r.Grooves {
			add(g.Bought(j.w), r.Part.Quantity, "")
		}
		if c := r.Clamp; c != nil {
			add(c.Bought(), r.Part.Quantity, "")
		}
		for g := range seq.Refs(r.Groups) {
			if g.Hole == nil {
				continue
			}
			add(j.jackScrew(r, g), g.Group.Count, "")
			add(fitted(g.Hole.Fitted, g.Size), g.Group.Count*r.Part.Quantity, "")
		}
		for _, m := range r.Radials {
			add(fitted(m.In.Fitted, m.Size), len(m.Rows)*r.Part.Quantity, "")
		}
	}
	j.buyLoose(made, &out)
	j.buyMotor(&out)
	j.buyFiller(made, &out)
	j.buyGrease(made, &out)
	slices.SortStableFunc(out, func(a, b *wanted) int { return strings.Compare(kindOfItem(a.Item), kindOfItem(b.Item)) })
	var rows []plan.BoughtRow
	for _, row := range out {
		row.For = words.Join("; ", append([]string{steps(row.uses)}, row.others...)...)
		rows = append(rows, row.BoughtRow)
	}
	return rows
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

// place puts every joined part on the axis of its assembly, by what is said of it before what is guessed: in
// whatever order the joints are written, a part has one place.
func (s *shop) place(all []*joint) *assembly {
	j := &assembly{shop: s}
	for _, t := range s.surest(all) {
		j.put(t, all)
	}
	j.asWritten(all)
	return j
}

// put places both parts of a joint to each other, if they share an axis, and what is clamped between them.
func (j *assembly) put(t *joint, all []*joint) {
	if t.beside != nil || t.walls() {
		if t.walls() && t.in.Place != nil {
			t.refuse(t.in.Place.Pos, plan.PlaceIdle, plan.Named(t.a.title()))
		}
		if t.walls() || !j.onOneAxis(t.a, t.b) {
			t.stacked = j.besideStack(t)
			return
		}
		t.beside = nil
	}
	rel, ok := j.placing(t, all)
	if t.axis, t.rel = ok, rel; !ok {
		if t.cutTo() && t.in.Rotate.Pos.Line != 0 {
			t.refuse(t.in.Rotate.Pos, plan.TurnIdle, plan.Named(t.a.title()), plan.Named(t.b.title()))
		}
		return
	}
	for _, f := range []feature{t.b, t.a} { // each part first in a group of its own
		if j.at(f.Instance()) == nil {
			j.placed = append(j.placed, placedPart{f.Instance(), f.r, len(j.placed), still})
		}
	}
	if a, b := *j.at(t.a.Instance()), *j.at(t.b.Instance()); a.group == b.group {
		t.agrees(rel, a, b)
	} else {
		t.guessed = t.floats()
		j.join(a.group, b.group, a.at.inverse().then(rel.then(b.at)))
	}
	j.placeStack(t)
	j.placePlate(t)
}

// surest are joints in the order in which they place their parts: what says where, such as faces, a shoulder or holes about
// one axis; bearings of which nothing says which way round their parts look; other holes, which need not share an axis; the
// second ball bearing on a seat, for the one against its shoulder says where the shaft is; what nothing is said of; and cones
// that a nut holds. It notes which bolted parts the holes place off the axis.
func (j *shop) surest(all []*joint) []*joint {
	last := map[*joint]int{}
	for _, t := range all {
		m, mounted := mounting{}, false
		if t.is(parts.BoltKind) {
			t.beside = j.besides(t)
		} else if t.is(parts.BearingKind) {
			m, mounted = t.mount()
		}
		switch {
		case t.beside != nil || t.walls():
			last[t] = 2
		case mounted && m.fixed == nil:
			last[t] = 5
		case t.floats():
			last[t] = 4
		case slices.ContainsFunc(all, t.second):
			last[t] = 3
		case t.is(parts.BearingKind) && !t.in.OtherWay && !t.in.Meet.Set() && t.in.Place == nil:
			last[t] = 1
		}
	}
	return slices.SortedStableFunc(slices.Values(all), func(p, q *joint) int { return last[p] - last[q] })
}

// clusters are the joints that hang together in the finished machine, by a
// part that stands for each cluster, in the order given.
type clusters struct {
	of     map[*joint]parts.Instance
	joints map[parts.Instance][]*joint
}

// connected finds the clusters: two joints with a part in common are in one.
func connected(order []*joint) clusters {
	machine := bodies{}
	for _, t := range order {
		for _, x := range t.held() {
			machine.tie(t.a.Instance(), x)
		}
	}
	out := clusters{map[*joint]parts.Instance{}, map[parts.Instance][]*joint{}}
	for _, t := range order {
		c := machine.of(t.a.Instance())
		out.of[t], out.joints[c] = c, append(out.joints[c], t)
	}
	return out
}

func (j *shop) read() []*joint {
	var all []*joint
	for _, in := range j.job.Joints {
		first, second := in.Ends()
		t := &joint{in: in, kind: kindOf(in), w: j.w, a: j.find(first), b: j.find(second)}
		t.kind.ends(j, t)
		all = append(all, t)
	}
	for _, t := range all {
		t.covered(all)
		t.outer = slices.ContainsFunc(ofKind(all, parts.BearingKind), t.behind)
	}
	return all
}

// joint works out one joint of the final order.
func (j *making) joint(t *joint) {
	if t.refused() { // it waits for others that wait for it
		return
	}
	t.out = &plan.JointPlan{Name: t.in.Name.Value, Kind: t.in.Kind, A: t.a.end(), B: t.b.end(), Why: t.reasons(), Beside: t.beside, Stack: t.stacked}
	t.out.How = j.how(t)
	j.slidesAlong(t)
	for _, p := range t.flaws {
		t.add(p)
	}
	j.align(t)
	j.thickYet(t)
	j.throughHole(t)
	if t.axis && !t.refused() {
		t.out.Placed = j.onAxis(t)
	}
	t.kind.work(j, t)
	t.out.Title = t.kind.title(t)
	if t.refused() {
		t.out.Placed = nil
	}
	if moved, tied := j.side(t, j.before); t.axis && !t.refused() && !tied { // else other joints hold it
		t.kind.traps(j, t, moved)
	}
	if !t.refused() {
		j.finish(t)
	}
}

// how says in words how the parts stand to each other.
func (j *making) how(t *joint) string {
	switch p := t.in.Place; {
	case t.out.Beside != nil:
		return t.besideText(j.w) + j.betweenText(t)
	case p != nil && t.axis && (t.enters() || t.is(parts.ScrewKind, parts.SlideKind)):
		return t.alongText() + j.topText(t)
	case p != nil && t.is(parts.SlideKind) && !p.OnRim():
		return t.alongText()
	case p != nil:
		return j.placeText(t, p)
	case t.axis:
		return j.axisText(t)
	case t.unkept(), t.is(parts.ScrewKind):
		return "where the other joints have them"
	}
	return j.cutText(t)
}

// axisText says how two parts stand to each other that meet on one axis.
func (j *making) axisText(t *joint) string {
	m, text := t.meeting(), "fronts looking the same way"
	switch {
	case t.along():
		text = "how far it goes in is not said"
	case !m.Set() && slices.ContainsFunc(j.before, t.joins):
		text = "as they were put together"
	case m.Level:
		text = j.setting(t).words(j.w, t.a.title(), t.b.title())
	case m.Set():
		text = t.againstText()
		if s := j.seatedBy(t); s != nil {
			text = shoulderOf(words.Spaced(s.Name)) + " of " + t.a.title() + " on the " + string(m.Second) + " of " + t.b.title()
		} else if j.spacerMm(t) > 0 {
			text = string(m.First) + " of " + t.a.title() + " " + j.w.Size(j.spacerMm(t)) + " from the " + string(m.Second) + " of " + t.b.title()
		}
	case j.stands(t).turned():
		text = "fronts looking opposite ways"
	}
	if t.is(parts.BearingKind) || t.runs() { // its shaft turns
		return text
	}
	if stop := t.onShoulder(); stop != nil && !slices.ContainsFunc(j.before, t.joins) {
		text += ", " + shoulderOf(words.Spaced(stop.Name)) + " of " + t.a.title() + " on " + t.b.title()
	}
	return text + j.betweenText(t) + j.topText(t)
}

// slidesAlong notes that nothing says how far a part goes into the other, in which it could be pushed along.
func (j *making) slidesAlong(t *joint) {
	if t.guessed && (t.enters() || t.unkept() || t.is(parts.ScrewKind)) && !geom.Alike(t.a.step.LengthMm(), t.b.step.LengthMm()) {
		t.problem(plan.AlongLacking, plan.Named(t.a.title()), plan.Named(t.b.title()))
	}
}

// seatedBy is the shoulder of what goes into a bore that lies on the face that its joint names; nil where an end of it does.
func (j *making) seatedBy(t *joint) *part.Step {
	if !t.enters() && !t.is(parts.ScrewKind) || t.a.step.Inside {
		return nil
	}
	at := j.stands(t)
	for _, dir := range []float64{-1, 1} {
		if s := shoulder(t.a, dir); s != nil && geom.Alike(at.z0+at.s*end(t.a.step, dir), faceMm(t.b.r, t.meeting().Second.Outward())) {
			return s
		}
	}
	return nil
}

// cutText says how two parts without a common axis stand to each other by the way their ends are cut.
func (j *making) cutText(t *joint) string {
	switch cope, stand := t.copeText(), t.stand(); {
	case t.corner():
		return words.Spaced(t.a.ref.Feature) + " end of " + t.a.title() + " to the " + words.Spaced(t.b.ref.Feature) + " end of " + t.b.title() + ", cut to cut, long points outside, fronts level"
	case cope != "":
		return cope
	case stand != nil:
		return stand.Text(t.w, t.a.title(), t.b.title())
	}
	set := "square and place by the drawing"
	if _, tied := j.side(t, j.before); tied {
		return t.a.text() + " against " + t.b.text() + ", as the two stand already"
	}
	if by := t.leansBy(); by != "" {
		set = "its cut flat on it, so that it leans by " + by + "; its place by the drawing"
	}
	return t.a.text() + " against " + t.b.text() + "; " + set
}

// onAxis are the parts that hang together on the axis of a joint once it is made, and where each is on it.
func (j *making) onAxis(t *joint) (placed []plan.Placed) {
	members, added, group := j.members(t.a.Instance(), j.made(t)), j.added(t), j.at(t.a.Instance()).group
	for _, q := range j.placed {
		if q.group == group && slices.Contains(members, q.Instance) {
			placed = append(placed, plan.Placed{
				Part: q.Part, Copy: q.Copy, Title: copyTitle(q.r, q.Copy),
				FrontMm: geom.Clean(q.at.z0), TurnDeg: geom.OnClock(q.at.turn), OtherWay: q.at.turned(),
				New: slices.Contains(added, q.Instance),
			})
		}
	}
	return placed
}

// finish marks the clock of the assembly and weighs it.
func (j *making) finish(t *joint) {
	made := j.made(t)
	members := j.members(t.a.Instance(), made)
	if t.axis && !t.is(parts.ScrewKind) { // where its thread bites it comes to stand
		j.clockMarks(t)
	}
	if mark := (plan.JointStep{Title: "Mark the clock", Do: t.marked}); t.places {
		t.out.Steps = slices.Insert(t.out.Steps, 0, mark)
	} else if mark.Do != nil {
		t.out.Steps = append(t.out.Steps, mark)
	}
	j.anchoredHere(t)
	j.fitLate(t)
	j.putIn(t, putFirst)
	j.putIn(t, putLast)
	for _, do := range t.in.Do {
		t.step("Besides", words.Capital(do.Value))
	}
	t.written()
	if t.is(parts.BoltKind) && t.axis {
		j.registers(t)
	}
	for i := range t.out.Problems {
		t.out.Problems[i].What = j.w.Says(t.out.Problems[i])
	}
	for _, a := range t.out.InLine {
		t.out.Checks = append(t.out.Checks, plan.Check{What: "in line: " + a.What, Wanted: "at " + words.Angle(a.Deg), Limits: "by eye and square", Gauge: "eye, protractor"})
	}
	kg, all := j.massKg(members, made)
	if t.fixed = j.anchored(t, members); all {
		t.out.MassKg = kg
	}
	j.heavy(t, kg, all)
	j.heavyLoose(t)
	j.unlike(t)
	if t.in.Note.Value != "" {
		t.caution(t.in.Note.Value)
	}
}

// clockMarks lists what lies where on the two parts, and what the rules name.
func (j *making) clockMarks(t *joint) {
	if j.noTop(t) {
		return
	}
	refs := seq.Flat(t.in.InLine, func(rule parts.LineRule) []parts.JointRef { return rule.Refs })
	for _, p := range j.placed {
		title := copyTitle(p.r, p.Copy)
		mark := func(name, label string, deg float64) {
			if k := isNamed(p.Instance, refs, name); k || t.has(p.Instance) {
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
			f := feature{ref: parts.JointRef{Part: p.Part, Copy: p.Copy}, r: p.r, group: &p.r.Groups[i]}
			if name := f.group.Group.Name; isNamed(p.Instance, refs, name) {
				for _, deg := range f.clocks() {
					mark(name, words.Spaced(name), deg)
				}
			}
		}
	}
}
