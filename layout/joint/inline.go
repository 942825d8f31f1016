package joint

import (
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// byPlay are the bushes of a shaft that nothing brings in line but the play of the holes of a bolted joint, and the shaft; early
// tells that they are not both there when it is made.
type byPlay struct {
	first, second, shaft feature
	early                bool
}

// inLineBy is what a bolted joint has to bring in line: the bushes that come to hang together with it, once all is there that
// holds parts in their places better than its play; nil where there is nothing.
func (j *making) inLineBy(t *joint) *byPlay {
	if j.locates(t) {
		return nil
	}
	holds := seq.Keep(j.all, func(o *joint) bool { return !j.job.Runs(o.in) })
	sure := seq.Keep(holds, j.locates)
	for _, o := range holds {
		if o == t {
			break
		}
		if !j.locates(o) {
			sure = append(sure, o)
		}
	}
	turning := seq.Keep(j.all, (*joint).turns)
	for i, o := range turning {
		for _, q := range turning[:i] {
			ties := func(by []*joint) bool { return slices.Contains(j.members(q.a.Instance(), by), o.a.Instance()) }
			if q.b.Instance() == o.b.Instance() && !ties(sure) && ties(append(slices.Clone(sure), t)) {
				now := seq.Keep(j.made(t), func(m *joint) bool { return slices.Contains(holds, m) })
				return &byPlay{q.a, o.a, o.b, !ties(now)}
			}
		}
	}
	return nil
}

// locates tells whether a joint holds its parts in their places across its faces: all do but bolts with play in their holes where no
// spigot of one side lies closely in a bore of the next, and the two have no fitted holes.
func (j *making) locates(t *joint) bool {
	if !t.is(parts.BoltKind) || t.bolt == nil || t.a.group == nil || t.b.group == nil || 2*t.reachMm() <= dowelMm {
		return true
	}
	fitted := func(f feature) bool {
		return slices.ContainsFunc(f.r.Groups, func(g part.Group) bool { return g.Size.Thread == nil && g.Size.Size.Fitted() })
	}
	if fitted(t.a) && fitted(t.b) {
		return true
	}
	rigid := seq.Keep(j.all, func(o *joint) bool { return o.is(parts.PressKind) || o.is(parts.WeldKind) })
	of := func(i parts.Instance) []placedPart {
		in := j.members(i, rigid)
		return seq.Keep(j.placed, func(p placedPart) bool { return slices.Contains(in, p.Instance) })
	}
	near, left := of(t.a.Instance()), seq.Map(append(t.others(), t.b.Instance()), of)
	for k := 0; k >= 0; {
		if k = slices.IndexFunc(left, func(side []placedPart) bool { return closely(near, side) }); k >= 0 {
			near, left = append(near, left[k]...), slices.Delete(left, k, k+1)
		}
	}
	return slices.ContainsFunc(near, func(p placedPart) bool { return p.Instance == t.b.Instance() })
}

// closely tells whether a part of one side is centred in one of the other, or the other way round.
func closely(near, side []placedPart) bool {
	return slices.ContainsFunc(near, func(p placedPart) bool {
		return slices.ContainsFunc(side, func(q placedPart) bool { return p.group == q.group && (centred(p, q) || centred(q, p)) })
	})
}

// dowelMm is the play from which on bolts hold nothing in its place. Common practice, no source.
const dowelMm = 0.1

// centred tells whether a spigot of one part lies closely in a bore of another.
func centred(p, q placedPart) bool {
	for _, out := range p.r.Side(false) {
		for _, in := range q.r.Side(true) {
			s := spigot{p, q, out, in}
			if _, hi := s.playMm(); s.nested() && !geom.Over(hi, looseMm) {
				return true
			}
		}
	}
	return false
}

// throughBoth says how what only the play of the holes brings in line is bolted together; empty where there is none. It notes it as
// a problem.
func (j *making) throughBoth(t *joint, p *plan.BoltPlan) string {
	by := j.inLineBy(t)
	if by == nil {
		return ""
	}
	kind := plan.BushesByPlay
	how := ": put " + by.shaft.title() + ", or a bar of its size, through both, and pull them tight while it turns freely."
	if by.early {
		kind = plan.BushesEarly
		how = ": leave them hand-tight here, and pull them tight when both are in, with " + by.shaft.title() + ", or a bar of its size, through both and turning freely."
	}
	t.problem(kind, plan.Named(by.first.title()), plan.Named(by.second.title()), plan.Named(by.shaft.title()), plan.Of(plan.Mm, p.PlayMm))
	return "Only the play in these holes, " + t.w.Read(p.PlayMm) + ", lets " + by.first.title() + " and " + by.second.title() + " come in line" + how
}
