package joint

import (
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// fitted is what is fitted in holes of a size, as it is bought; empty for nothing.
func fitted(what parts.Text, size part.Made) string {
	return words.Capital(parts.Ordered(what.Value, size.ThreadName()))
}

// fitSmall fits the seals, O-rings and what is screwed into holes of a part at the first joint
// that bolts it: its welds are made then, and its faces are open for the last time. The seals of a
// housing that is pressed into it go with it, for behind it none reaches them.
func (j *making) fitSmall(t *joint) {
	var with []feature
	for _, f := range []feature{t.a, t.b} {
		with = append(with, seq.Keep(pressedWith(j.before, f.Instance()), func(f feature) bool { return !t.has(f.Instance()) })...)
	}
	j.fitCarried(t, func(i parts.Instance) bool { return !bolted(j.before, i) }, seq.Flat(with, j.sealsNow)...)
}

// pressedWith are those that some joints press into a part, or it into them.
func pressedWith(made []*joint, i parts.Instance) (out []feature) {
	for _, o := range ofKind(made, parts.PressKind) {
		switch i {
		case o.a.Instance():
			out = append(out, o.b)
		case o.b.Instance():
			out = append(out, o.a)
		}
	}
	return out
}

// fastened is the first of some joints that bolts a part, or what is pressed into it or round it by then; -1 if none does.
func fastened(made []*joint, i parts.Instance) int {
	return slices.IndexFunc(made, func(o *joint) bool {
		with := pressedWith(made[:slices.Index(made, o)], i)
		return o.is(parts.BoltKind) && (o.has(i) || slices.ContainsFunc(with, func(f feature) bool { return o.has(f.Instance()) }))
	})
}

// fitLate fits them where nothing bolts the part, at the last joint that it is in.
func (j *making) fitLate(t *joint) {
	j.fitCarried(t, func(i parts.Instance) bool {
		return !bolted(j.all, i) && !slices.ContainsFunc(j.left(j.made(t)), func(o *joint) bool { return o.has(i) })
	})
}

func (j *making) fitCarried(t *joint, now func(parts.Instance) bool, also ...string) {
	open := seq.Keep([]feature{t.a, t.b}, func(f feature) bool { return now(f.Instance()) })
	if do := append(seq.Flat(open, func(f feature) []string { return j.carried(t, f) }), also...); len(do) > 0 {
		t.step("Fit small parts", do...)
	}
}

// sealsNow says how to fit the seals of a part that nothing has fastened yet, but those that a bearing passes later.
func (j *making) sealsNow(f feature) []string {
	if fastened(j.before, f.Instance()) >= 0 {
		return nil
	}
	return j.seals(f, j.before, func(bore *part.Step) bool { return !passed(bore, f.Instance(), j.left(j.before)) })
}

// carried says how to fit what a part carries, but for what the other part of a joint comes over.
func (j *making) carried(t *joint, f feature) []string {
	do := j.sealsNow(f)
	for _, g := range f.r.Grooves {
		if g.In.Kind == parts.ORingGroove {
			do = append(do, "Lay "+g.Bought(j.w)+", greased, into "+words.Spaced(g.Row.Name)+" of "+f.title()+": not twisted, and not over a sharp edge.")
		}
	}
	for _, g := range f.r.Groups {
		if g.Hole != nil {
			do = append(do, j.screwedIn(f, g.Hole.Fitted, g.Size, g.Group.Name))
		}
	}
	for m := range seq.Refs(f.r.Radials) {
		later := slices.ContainsFunc(j.left(j.before), func(o *joint) bool { return setsLater(o, f, m) })
		if !later && !j.passes(t, f, m) {
			do = append(do, j.screwedIn(f, m.In.Fitted, m.Size, m.In.Name.Value))
		}
	}
	return slices.DeleteFunc(do, func(d string) bool { return d == "" })
}

// setsLater tells whether what is fitted in the outside of a hub is a set screw that a joint brings down on what the hub slides on.
func setsLater(o *joint, hub feature, m *part.Radial) bool {
	return o.is(parts.SlideKind) && !o.refused() && o.a.Instance() == hub.Instance() && !o.turns() && m.BearsInBore(hub.r.Sizes, m.Rows[0].AxialMm)
}

// screwedIn says how to screw in what is fitted in holes of a part; empty for nothing.
func (j *making) screwedIn(f feature, what parts.Text, size part.Made, name string) string {
	if size.Thread == nil || what.Value == "" {
		return ""
	}
	chips := ": clear the hole of chips first."
	if bearingIn(j.before, f.Instance()) != nil {
		chips = ": a greased rag takes the chips out of the hole, no air: bearings lie open behind it."
	}
	return fitted(what, size) + " into " + words.Spaced(name) + " of " + f.title() + chips
}

// passes tells whether the other part of a bolted joint comes to its face over what is fitted in the outside of a part, by
// a bore that leaves it no room: by twice the hole on the diameter (common practice, no source).
func (j *making) passes(t *joint, f feature, m *part.Radial) bool {
	over, face := t.b, t.meeting().First
	if f.Instance() == t.b.Instance() {
		over, face = t.a, t.meeting().Second
	}
	at, by := j.at(f.Instance()), j.at(over.Instance())
	if !t.is(parts.BoltKind) || at == nil || by == nil || at.group != by.group {
		return false
	}
	zMm, _, ok := f.plane(face)
	narrow := func(row plan.RadialRow) bool {
		return slices.ContainsFunc(over.r.Side(true), func(bore *part.Step) bool { return bore.Size.NominalMm < row.OutsideMm+2*m.Size.FinishedMm })
	}
	return ok && slices.ContainsFunc(m.Rows, func(row plan.RadialRow) bool { return (row.AxialMm-zMm)*face.Outward() > 0 && narrow(row) })
}

// fitPassed fits what stands out of a part once the other part of its first bolted joint has come over it.
func (j *making) fitPassed(t *joint) {
	var do []string
	for _, f := range []feature{t.a, t.b} {
		for m := range seq.Refs(f.r.Radials) {
			if what := j.screwedIn(f, m.In.Fitted, m.Size, m.In.Name.Value); what != "" && !bolted(j.before, f.Instance()) && j.passes(t, f, m) {
				do = append(do, what)
			}
		}
	}
	if len(do) > 0 {
		t.step("Fit small parts", do...)
	}
}

// fitSeals fits, once the last bearing is in a housing that was bolted on before, the seals that its bearings
// had to pass: none goes through the lip of a seal.
func (j *making) fitSeals(t *joint) {
	made, housing := append(slices.Clone(j.before), t), t.b.Instance()
	i := fastened(made, housing)
	if i < 0 || bearingIn(j.left(made), housing) != nil {
		return
	}
	if do := j.seals(t.b, made, func(bore *part.Step) bool { return passed(bore, housing, made[i:]) }); len(do) > 0 {
		t.step("Fit the seals", do...)
	}
}

// left are the joints of the cluster but those made.
func (j *making) left(made []*joint) []*joint {
	return seq.Keep(j.all, func(t *joint) bool { return !slices.Contains(made, t) })
}

// passed tells whether one of some bearings goes into its housing through a bore there.
func passed(bore *part.Step, housing parts.Instance, all []*joint) bool {
	return slices.ContainsFunc(ofKind(all, parts.BearingKind), func(t *joint) bool {
		m, ok := t.mount()
		return ok && t.b.Instance() == housing && (bore.MidMm()-t.b.step.MidMm())*t.cupGoes(m) < 0
	})
}

// seals says how to fit the wanted seals of a part once some joints are made.
func (j *making) seals(f feature, made []*joint, wanted func(bore *part.Step) bool) (do []string) {
	for _, q := range f.r.Seals() {
		bore, by := q.Bore, ""
		if !wanted(bore) {
			continue
		}
		if o := bearingIn(made, f.Instance()); o != nil {
			if by, _ = j.notOver(o, made[:slices.Index(made, o)], q, 1); by != "" {
				by = " (it is on the shaft: with a ring in two halves, before " + by + ")"
			}
		}
		do = append(do, "Press seal "+q.Name+by+" into "+words.Spaced(bore.Name)+" of "+f.title()+": square, by its rim, the lip greased and to the "+
			string(q.Lip)+" of "+f.title()+"; nothing sharp may pass the lip.")
		do = append(do, ringOver(bore, f, j.w)...)
	}
	return do
}

// ringOver springs the retaining ring in the bore of a seal over it.
func ringOver(bore *part.Step, f feature, w words.Writer) []string {
	var do []string
	for _, g := range f.r.Grooves {
		if g.In.Kind == parts.RingGroove && g.Row.In == bore.Name {
			do = append(do, g.Bought(w)+" into "+words.Spaced(g.Row.Name)+" of "+f.title()+" over the seal, with its pliers, eyes protected: it snaps to the floor all round.")
		}
	}
	return do
}

// overSealMm is how much larger than its shaft a seal is pulled over. Common practice, no source.
const overSealMm = 0.5

// notOver names what is on the shaft of a bearing before it enters that a seal of its housing does not
// go over, empty where there is nothing, and the end of the shaft there: on the side that the seal comes
// from, away from its shoulder, or with −1 on the other.
func (j *assembly) notOver(t *joint, before []*joint, q *part.Seal, dir float64) (by, end string) {
	shaft := j.at(t.a.Instance())
	if shoulder(feature{r: t.b.r, step: q.Bore}, -1) == nil {
		dir = -dir
	}
	at := j.at(t.b.Instance()).at.seenFrom(shaft.at)
	z, end := at.z0+at.s*q.Bore.MidMm(), faceName(at.way(dir))
	for _, i := range j.members(t.a.Instance(), before) {
		r, on, known := j.model(i.Part), placement{}, false
		if p := j.at(i); p != nil && p.group == shaft.group {
			on, known = p.at.seenFrom(shaft.at), true
		} else if k := slices.IndexFunc(before, func(o *joint) bool { return o.a.Instance() == i && o.b.Instance() == t.a.Instance() }); k >= 0 {
			on, known = j.onFace(before[k])
		}
		if !known {
			continue
		}
		beyond := func(mm float64) bool { return at.way(dir)*(on.z0+on.s*mm-z) > 0 }
		for _, s := range rounds(r) {
			if s.diameterMm > q.ShaftMm+overSealMm && beyond(s.midMm) {
				return words.When(s.name != "", words.Spaced(s.name)+" of ") + copyTitle(r, i.Copy), end
			}
		}
	}
	return "", end
}

// roundOf is one of the rounds that a part is outside: a step, or without a name its flights.
type roundOf struct {
	name              string
	midMm, diameterMm float64
}

// rounds are how wide a part is along its axis.
func rounds(r *part.Model) []roundOf {
	out := seq.Map(r.Side(false), func(s *part.Step) roundOf { return roundOf{s.Name, s.MidMm(), s.Size.NominalMm} })
	if f := r.Part.Flight; f != nil {
		out = append(out, roundOf{midMm: f.Length.Mm / 2, diameterMm: f.Outside.Mm})
	}
	return out
}

// slipSeals slips on a shaft, before its cones, the seals of its housing that do not go over it from their
// own side later, and finds those that go over neither end.
func (j *making) slipSeals(t *joint) {
	for _, q := range t.b.r.Seals() {
		over, _ := j.notOver(t, j.before, q, 1)
		other, end := j.notOver(t, j.before, q, -1)
		switch seal := "seal " + q.Name; {
		case over != "" && other != "":
			t.problem(plan.SealShut, plan.Named(seal), plan.Named(t.b.title()), plan.Named(over), plan.Named(other))
		case over != "":
			t.step("Seal on the shaft", "Slip "+seal+", greased, over the "+end+" end of "+t.a.title()+
				" up to its land before a cone goes on, the lip as it will look, to the "+string(q.Lip)+" of "+t.b.title()+": later it does not go over "+over+
				".")
		}
	}
}
