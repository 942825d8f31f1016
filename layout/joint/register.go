package joint

import (
	"math"
	"slices"

	"centrepop/layout/fits"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// registers judges the fit of the spigots of a joint: one centres the joint and must not bind.
func (j *making) registers(t *joint) {
	if _, tied := j.side(t, j.before); !tied {
		for _, s := range j.spigots(t, j.before) {
			t.register(s)
		}
	}
}

// spigots are those of one side of a joint that lie in bores of the other, once some joints before it are made.
func (j *making) spigots(t *joint, before []*joint) (out []spigot) {
	at := j.at(t.a.Instance())
	if at == nil {
		return nil
	}
	side := map[parts.Instance]int{}
	var sides [][]parts.Instance
	for _, i := range append([]parts.Instance{t.a.Instance(), t.b.Instance()}, t.others()...) { // what lies between is a side of its own
		sides = append(sides, j.members(i, before))
	}
	for i, members := range sides {
		for _, in := range members {
			if side[in] == 0 {
				side[in] = i + 1
			}
		}
	}
	near := seq.Keep(j.placed, func(p placedPart) bool { return p.group == at.group && side[p.Instance] != 0 })
	for _, p := range near {
		for _, q := range near {
			if side[p.Instance] != side[q.Instance] {
				out = append(out, inBores(p, q)...)
			}
		}
	}
	return out
}

// inBores are the outside steps of p that lie in bores of q.
func inBores(p, q placedPart) (out []spigot) {
	for _, o := range p.r.Side(false) {
		for _, in := range q.r.Side(true) {
			if s := (spigot{p, q, o, in}); s.nested() {
				out = append(out, s)
			}
		}
	}
	return out
}

// centres tells whether it leaves no more play than a register may.
func (s spigot) centres() bool {
	_, hi := s.playMm()
	return s.fitted() && s.smallerMm() <= nearMm && hi <= looseMm
}

// spigot is an outside step of p that lies in a bore of q.
type spigot struct {
	p, q    placedPart
	out, in *part.Step
}

// nearMm is how much smaller than a bore an outside may be and still be meant
// to centre in it. Common practice, no source.
const nearMm = 1.0

// offMm is how much smaller than its bore a fitted spigot may be and still be
// taken for a register that is drawn wrong. Common practice, no source.
const offMm = 6.0

// looseMm is the play from which a register no longer centres. Common practice,
// no source.
const looseMm = 0.25

// commonMm is the length over which it lies in the bore.
func (s spigot) commonMm() float64 {
	return s.p.at.span(s.out.Span()).OnMm(s.q.at.span(s.in.Span()))
}

// smallerMm is how much smaller it is drawn than the bore.
func (s spigot) smallerMm() float64 { return s.in.Size.NominalMm - s.out.Size.NominalMm }

// fitted tells whether both are drawn with limits.
func (s spigot) fitted() bool { return s.out.Size.Fitted() && s.in.Size.Fitted() }

// nested tells whether it lies in the bore over at least half a millimetre of
// length, and is of nearly its size.
func (s spigot) nested() bool {
	if s.commonMm() < 0.5 || s.out.Size.Thread != nil || s.in.Size.Thread != nil {
		return false
	}
	smaller := s.smallerMm()
	return math.Abs(smaller) <= nearMm || s.fitted() && smaller > 0 && smaller <= offMm
}

// meetsBottom tells whether one that lies in a register of a bored part as well is too
// long for it, and meets the narrower step behind.
func (s spigot) meetsBottom() bool {
	return s.in.Size.MaxMm < s.out.Size.MinMm && slices.ContainsFunc(s.q.r.Steps, func(in part.Step) bool {
		return in.Inside && in.Size.MaxMm >= s.out.Size.MinMm && spigot{s.p, s.q, s.out, &in}.nested()
	})
}

// text names it and its bore.
func (s spigot) text() string {
	return copyTitle(s.p.r, s.p.Copy) + " " + words.Spaced(s.out.Name) + " in " + copyTitle(s.q.r, s.q.Copy) + " " + words.Spaced(s.in.Name)
}

// tubeOffMm is how much smaller than drawn the bore of a tube as bought may be, by its
// outside alone; 0 of what is bored, or of a standard that is not known.
func (s spigot) tubeOffMm() float64 {
	q := s.q.r
	if !q.Part.BoughtTube() || q.Material == nil || s.in.Size.Fitted() {
		return 0
	}
	outside, _ := q.Sides()
	tol, err := fits.TubeOutside(fits.TubeStandard(q.Material.Name), outside[0].Size.NominalMm)
	if err != nil {
		return 0
	}
	return tol.PlusMinusMm
}

// register says what play a spigot has in its bore, and judges it.
func (t *joint) register(s spigot) {
	lo, hi := s.playMm()
	what, off, asMeasured := plan.Named(s.text()), s.tubeOffMm(), s.out.Size.Measured()
	far, ends := s.smallerMm() > nearMm, t.held()
	direct := slices.Contains(ends, s.p.Instance) && slices.Contains(ends, s.q.Instance)
	if !far || direct {
		said := s.text() + ": clearance " + t.w.Fine(lo*1000, hi*1000)
		said += words.When(off > 0 && asMeasured, " under the bore as measured")
		t.figure("register", said, words.Join("; ", s.out.Size.Source.String(), s.in.Size.Source.String()))
	}
	switch {
	case s.meetsBottom():
		t.problem(plan.RegisterBottoms, what, plan.Of(plan.Mm, s.commonMm()))
	case lo < 0:
		t.binds(s, -lo)
	case lo < off && !asMeasured:
		t.problem(plan.RegisterTube, what, plan.Of(plan.Mm, off))
	case far && direct:
		t.problem(plan.RegisterOff, what, plan.Of(plan.Diameter, s.out.Size.NominalMm), plan.Of(plan.Diameter, s.in.Size.NominalMm), plan.Of(plan.Mm, geom.Clean(s.smallerMm())))
	case s.fitted() && !far && hi > looseMm:
		t.problem(plan.RegisterLoose, what, plan.Of(plan.Mm, hi))
	}
}

// playMm is the play by the limits of both; of one turned to its bore as measured by those, where it is not drawn larger.
func (s spigot) playMm() (lo, hi float64) {
	out, in := s.out.Size, s.in.Size
	if lo, hi = in.MinMm-out.MaxMm, in.MaxMm-out.MinMm; out.Measured() && lo >= 0 {
		return -out.OffMm.Max, -out.OffMm.Min
	}
	return lo, hi
}

// binds says of a spigot that it may be larger than its bore by mm, or is drawn so, and what cures that.
func (t *joint) binds(s spigot, mm float64) {
	by, out, in := plan.Of(plan.Mm, mm), words.Spaced(s.out.Name), words.Spaced(s.in.Name)
	cure := "a smaller " + out
	cure += words.When(!s.q.r.Part.BoughtTube() || s.in.Size.Fitted(), ", or a larger "+in) // that of a tube is as bought
	if s.smallerMm() < 0 {
		t.add(plan.Problem{Kind: plan.RegisterLarger,
			Ends: []parts.JointRef{{Part: s.p.Part, Copy: s.p.Copy, Feature: s.out.Name}, {Part: s.q.Part, Copy: s.q.Copy, Feature: s.in.Name}},
			Args: []plan.Arg{plan.Named(copyTitle(s.p.r, s.p.Copy)), plan.Named(out), plan.Named(copyTitle(s.q.r, s.q.Copy)), plan.Named(in), by, plan.Named(cure)}})
		return
	}
	if s.fitted() {
		cure = "a fit such as H7/f7"
	}
	t.problem(plan.RegisterBinds, plan.Named(s.text()), by, plan.Named(cure))
}
