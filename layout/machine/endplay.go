package machine

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// endFace is a face across the axis of a shaft, of a part on that: where it and the part's other end there lie from the
// shaft's front, and from the part's own.
type endFace struct {
	*assembly.Body
	of        *part.Model
	mm, ownMm [2]float64
}

// endPlays finds shafts in plain bushes that have no play along them at some limits, between what of theirs, or of what is
// fixed to them, meets the bushes, or what is fixed to those, at either end. What is free to run out at an end has play; what
// rolling bearings hold, or has a spacer by words, is not looked at.
func (m *Machine) endPlays() (found []plan.Problem) {
	seen, of := map[string]bool{}, m.fixed()
	for _, j := range m.OfKind(parts.SlideKind) {
		shaft, bush := m.At(j.B), m.At(j.A)
		if shaft == nil || bush == nil || !m.Tied(shaft, bush) || seen[of(shaft.ID)] || of(shaft.ID) == of(bush.ID) {
			continue
		}
		seen[of(shaft.ID)] = true
		if m.spacedElse(j.B.Instance()) {
			continue
		}
		turning, beside := m.fixedWith(of, shaft.ID), []assembly.Body(nil)
		for b := range m.Parts() {
			if of(b.ID) != of(shaft.ID) && b.ID != bush.ID {
				beside = append(beside, *b)
			}
		}
		still := m.fixedWith(of, bush.ID)
		found = append(append(found, m.endPlay(j, shaft, turning, still)...), m.comesOff(j, turning, still)...)
		if carry := seq.Keep(m.Joints, func(o *plan.JointPlan) bool {
			return m.Job.Runs(m.Joint(o.Name)) && (of(o.A.Instance().ID()) == of(shaft.ID) || of(o.B.Instance().ID()) == of(shaft.ID))
		}); len(carry) == 1 {
			found = append(found, m.oneBush(j, shaft, bush, turning, beside)...)
		}
	}
	return found
}

// fixedWith are the parts that are fixed to a body, itself among them.
func (m *Machine) fixedWith(of func(id string) string, id string) (all []assembly.Body) {
	for b := range m.Parts() {
		if of(b.ID) == of(id) {
			all = append(all, *b)
		}
	}
	return all
}

// fixed names, for each body, what it is fixed to: by all joints but those in which one part turns.
func (m *Machine) fixed() (of func(id string) string) {
	group := groups(seq.Keep(m.Joints, func(j *plan.JointPlan) bool { return !m.Job.Runs(m.Joint(j.Name)) }))
	return func(id string) string { return cmp.Or(group[id], id) }
}

// spacedElse tells whether rolling bearings hold a shaft along its axis, or words put a spacer there.
func (m *Machine) spacedElse(shaft parts.Instance) bool {
	return slices.ContainsFunc(m.Joints, func(j *plan.JointPlan) bool {
		spaced := func(e parts.Loose) bool { return e.As == parts.ASpacer && e.After.Value == j.Name }
		return (j.A.Instance() == shaft || j.B.Instance() == shaft) && (j.Kind == parts.BearingKind || slices.ContainsFunc(m.Job.Loose, spaced))
	})
}

// oneBush finds what is wrong where one bush carries a level shaft whose centre of gravity, with what is fixed to it, lies beside
// it; nil where it lies in it or nobody knows it, the shaft stands, or what turns lies in a bore of another as well.
func (m *Machine) oneBush(j *plan.JointPlan, shaft, bush *assembly.Body, turning, others []assembly.Body) []plan.Problem {
	if math.Abs(shaft.Pose.Z.Dot(m.Up)) > stand.Level || slices.ContainsFunc(turning, func(t assembly.Body) bool { return m.inAny(&t, others) }) {
		return nil
	}
	all, along := assembly.Together(turning), shaft.Pose.Z
	low, high := bush.Box().Along(along)
	at := all.Centre.Dot(along)
	off := max(low-at, at-high)
	if len(all.Unknown) > 0 || !geom.Over(off, tipsMm) {
		return nil
	}
	return []plan.Problem{m.Fault(j.Name, plan.OneBush, m.Named(shaft.ID), m.Named(bush.ID), m.Rounded(off, 0))}
}

// comesOff finds a bush that a shaft has a shoulder for at one end and nothing at the other, over which it comes off: no face of
// what does not go with it, no retaining ring, no thread for a nut, nothing that words put there.
func (m *Machine) comesOff(j *plan.JointPlan, turning, still []assembly.Body) []plan.Problem {
	shaft, bush := m.At(j.B), m.At(j.A)
	named := func(e parts.Loose) bool {
		return m.Job.Part(j.A.Part).NamedIn(e.Item.Value+" "+e.How.Value) || m.Job.Part(j.B.Part).NamedIn(e.Item.Value+" "+e.How.Value)
	}
	if slices.ContainsFunc(m.Job.Loose, named) {
		return nil
	}
	free := func(over parts.Face) bool {
		_, _, gap := m.nearest(shaft, turning, still, over == parts.Front) // the shaft leaves it the other way
		return gap == inf && !m.endKept(shaft, bush, over)
	}
	front, back := free(parts.Front), free(parts.Back)
	if front == back {
		return nil
	}
	over := words.Either(front, parts.Front, parts.Back)
	return []plan.Problem{m.Fault(j.Name, plan.ComesOff, m.Named(bush.ID), m.Named(shaft.ID), plan.Named(string(over)))}
}

// endKept tells whether something of a shaft or of the bush on it is for what keeps them together at an end of the shaft: a groove for
// a retaining ring, a thread outside, or one in the face of that end.
func (m *Machine) endKept(shaft, bush *assembly.Body, end parts.Face) bool {
	r := m.PartOf(shaft.ID)
	middle := stand.On(shaft.Pose, bush, m.PartOf(bush.ID)).Middle()
	at := func(mm float64) bool { return mm < middle == (end == parts.Front) }
	ring := func(g part.Groove) bool { return g.Row.EdgeMm > 0 && (g.Row.Inside || at(g.Row.Span().MidMm())) }
	return slices.ContainsFunc(r.Grooves, ring) || slices.ContainsFunc(m.PartOf(bush.ID).Grooves, ring) ||
		slices.ContainsFunc(r.Side(false), func(s *part.Step) bool { return s.Size.Thread != nil && at(s.MidMm()) }) ||
		slices.ContainsFunc(r.Groups, func(g part.Group) bool { return g.Size.Thread != nil && !g.OnWall() && (g.Through || g.Face == end) })
}

// inAny tells whether a journal of a body lies in a bore of one of others.
func (m *Machine) inAny(b *assembly.Body, others []assembly.Body) bool {
	return slices.ContainsFunc(others, func(o assembly.Body) bool {
		return stand.SameAxis(b.Pose, o.Pose) && slices.ContainsFunc(m.PartOf(o.ID).Side(true), func(bore *part.Step) bool {
			_, most, _ := journalIn(stand.On(o.Pose, b, m.PartOf(b.ID)), bore)
			return geom.Over(most, 0)
		})
	})
}

// endPlay is what is wrong with the play of a shaft along its bushes; nil where it has some, or nothing meets.
func (m *Machine) endPlay(j *plan.JointPlan, shaft *assembly.Body, turning, still []assembly.Body) []plan.Problem {
	turns0, still0, gap0 := m.nearest(shaft, turning, still, false)
	turns1, still1, gap1 := m.nearest(shaft, turning, still, true)
	play := geom.Clean(gap0 + gap1)
	if play == inf {
		return nil
	}
	turns, sure := m.apartMm(shaft, turning, turns0, turns1)
	stands, too := m.apartMm(shaft, still, still0, still1)
	least, kind := turns.Min-stands.Max, plan.EndPlayNone
	switch {
	case geom.Over(least, 0):
		return nil
	case !sure || !too:
		kind = plan.EndPlayUnsure
	}
	return []plan.Problem{m.Fault(j.Name, kind, m.Named(shaft.ID), m.Named(turns1.ID), m.Named(still1.ID), m.Named(turns0.ID), m.Named(still0.ID),
		m.Rounded(least, 2), plan.Of(plan.Mm, play))}
}

// nearest are the faces that meet first when what turns goes along a shaft, to its back or its front, and how far it goes
// till then: infinitely where none meet. The metal of all is looked at between the radii of their steps.
func (m *Machine) nearest(shaft *assembly.Body, turning, still []assembly.Body, back bool) (turns, stands endFace, gapMm float64) {
	way := words.Either(back, 1, -1.0)
	gapMm = inf
	for _, r := range m.betweenRadii(slices.Concat(turning, still)) {
		others := m.facesAt(shaft, still, r, !back)
		for _, a := range m.facesAt(shaft, turning, r, back) {
			for _, b := range others {
				if gap := way * (b.mm[0] - a.mm[0]); gap > -geom.CloseMm && gap < gapMm-geom.CloseMm {
					turns, stands, gapMm = a, b, gap
				}
			}
		}
	}
	return turns, stands, gapMm
}

// betweenRadii are radii between those of the steps of parts, and one outside of all.
func (m *Machine) betweenRadii(bodies []assembly.Body) (between []float64) {
	at := []float64{0}
	for b := range seq.Refs(bodies) {
		for _, s := range m.PartOf(b.ID).Steps {
			at = append(at, s.Size.NominalMm/2)
		}
	}
	slices.Sort(at)
	for i, r := range at[1:] {
		if geom.Over(r, at[i]) {
			between = append(between, (at[i]+r)/2)
		}
	}
	return append(between, at[len(at)-1]+1)
}

// facesAt are the faces, of the bodies on the axis of a shaft, at a radius that look to its back or to its front.
func (m *Machine) facesAt(shaft *assembly.Body, bodies []assembly.Body, radiusMm float64, back bool) (all []endFace) {
	for b := range seq.Refs(bodies) {
		if !stand.SameAxis(shaft.Pose, b.Pose) {
			continue
		}
		on := stand.On(shaft.Pose, b, m.PartOf(b.ID))
		for _, own := range on.Of.MetalAt(radiusMm) {
			f := endFace{Body: b, of: on.Of}
			for k, z := range []float64{own.FromMm, own.ToMm} {
				f.mm[k], f.ownMm[k] = on.Z(z), z
			}
			if f.mm[0] < f.mm[1] == back {
				slices.Reverse(f.mm[:])
				slices.Reverse(f.ownMm[:])
			}
			all = append(all, f)
		}
	}
	return all
}

// apartMm is how far one face lies behind another, less than nothing where it is before it, inside the limits of lengths:
// along a part in which both end, or on which their parts end, or along all that joints hold together between them; else as
// drawn, and not sure, nor where what lies between has no limits.
func (m *Machine) apartMm(shaft *assembly.Body, bodies []assembly.Body, behind, before endFace) (mm plan.Range, sure bool) {
	for along := range seq.Refs(bodies) {
		if !stand.SameAxis(shaft.Pose, along.Pose) {
			continue
		}
		for k := range 4 { // faces of their own first
			a, b := k&1, k>>1
			from, ok := m.endsAt(shaft, along, before.mm[b])
			to, too := m.endsAt(shaft, along, behind.mm[a])
			if !ok || !too {
				continue
			}
			out := lies(m.PartOf(along.ID), false, [2]float64{from, to}, behind.mm[a]-before.mm[b])
			for _, own := range []plan.Range{
				lies(behind.of, false, [2]float64{behind.ownMm[a], behind.ownMm[0]}, behind.mm[0]-behind.mm[a]),
				lies(before.of, false, [2]float64{before.ownMm[0], before.ownMm[b]}, before.mm[b]-before.mm[0]),
			} {
				out.Min, out.Max = out.Min+own.Min, out.Max+own.Max
			}
			return out, true
		}
	}
	if out, sure, ok := m.chain(shaft, bodies, before.places(), behind.places()); ok {
		return out, sure
	}
	d := behind.mm[0] - before.mm[0]
	return plan.Range{Min: d, Max: d}, false
}

// places are a face as the end of a step outside and of one inside.
func (f *endFace) places() (all [2]placeOn) {
	for k := range all {
		all[k] = placeOn{f.ID, f.of, k > 0, f.mm[0], f.ownMm[0]}
	}
	return all
}

// endsAt is where a step outside of a body ends at a place along a shaft, from the front of the body's part.
func (m *Machine) endsAt(shaft, b *assembly.Body, mm float64) (ownMm float64, ok bool) {
	on := stand.On(shaft.Pose, b, m.PartOf(b.ID))
	for _, s := range on.Of.Side(false) {
		for _, own := range []float64{s.FromMm, s.ToMm} {
			if geom.Alike(on.Z(own), mm) {
				return own, true
			}
		}
	}
	return ownMm, false
}
