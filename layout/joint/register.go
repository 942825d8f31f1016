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

// registers finds the spigots of one side of a joint that lie in bores of the
// other, and judges their fit: a spigot centres the joint and must not bind.
func (j *making) registers(t *joint) {
	if _, tied := j.side(t, j.before); tied {
		return
	}
	side := map[inst]int{}
	var sides [][]inst
	for _, i := range append([]inst{t.a.inst(), t.b.inst()}, t.others()...) { // what lies between is a side of its own
		sides = append(sides, j.members(i, j.before))
	}
	for i, members := range sides {
		for _, in := range members {
			if side[in] == 0 {
				side[in] = i + 1
			}
		}
	}
	group := j.at(t.a.inst()).group
	near := seq.Keep(j.placed, func(p placedPart) bool { return p.group == group && side[p.inst] != 0 })
	for _, p := range near {
		for _, q := range near {
			if side[p.inst] == side[q.inst] {
				continue
			}
			for _, out := range p.r.Side(false) {
				for _, in := range q.r.Side(true) {
					if nested(p, q, out, in) {
						t.register(p, q, out, in)
					}
				}
			}
		}
	}
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

// commonMm is the length over which an outside step lies in a bore.
func commonMm(p, q placedPart, out, in *part.Step) float64 {
	alo, ahi := p.at.span(out.FromMm, out.ToMm)
	blo, bhi := q.at.span(in.FromMm, in.ToMm)
	return min(ahi, bhi) - max(alo, blo)
}

// nested tells whether an outside step lies in a bore over at least half a
// millimetre of length, of nearly its size.
func nested(p, q placedPart, out, in *part.Step) bool {
	if commonMm(p, q, out, in) < 0.5 || out.Size.Thread != nil || in.Size.Thread != nil {
		return false
	}
	smaller := in.Size.NominalMm - out.Size.NominalMm
	return math.Abs(smaller) <= nearMm || out.Size.Fitted() && in.Size.Fitted() && smaller > 0 && smaller <= offMm
}

// meetsBottom tells whether a spigot that lies in a register of a bored part as well is too
// long for it, and meets the narrower step behind.
func meetsBottom(p, q placedPart, out, in *part.Step) bool {
	return in.Size.MaxMm < out.Size.MinMm && slices.ContainsFunc(q.r.Steps, func(s part.Step) bool {
		return s.Inside && s.Size.MaxMm >= out.Size.MinMm && nested(p, q, out, &s)
	})
}

// tubeOffMm is how much smaller than drawn the bore of a tube as bought may be, by its
// outside alone; 0 of what is bored, or of a standard that is not known.
func tubeOffMm(q placedPart, in *part.Step) float64 {
	if q.r.Part.Kind != parts.Tube || q.r.Material == nil || in.Size.Fitted() {
		return 0
	}
	outside, _ := q.r.Sides()
	tol, err := fits.TubeOutside(fits.TubeStandard(q.r.Material.Name), outside[0].Size.NominalMm)
	if err != nil {
		return 0
	}
	return tol.PlusMinusMm
}

func (t *joint) register(p, q placedPart, out, in *part.Step) {
	lo, hi := in.Size.MinMm-out.Size.MaxMm, in.Size.MaxMm-out.Size.MinMm
	what := copyTitle(p.r, p.copy) + " " + words.Spaced(out.Name) + " in " + copyTitle(q.r, q.copy) + " " + words.Spaced(in.Name)
	fitted := out.Size.Fitted() && in.Size.Fitted()
	off, asMeasured := tubeOffMm(q, in), out.Size.Measured()
	if asMeasured && lo >= 0 { // else it is drawn larger than the bore
		lo, hi = -out.Size.OffMm.Max, -out.Size.OffMm.Min
	}
	far := in.Size.NominalMm-out.Size.NominalMm > nearMm
	ends := t.held()
	direct := slices.Contains(ends, p.inst) && slices.Contains(ends, q.inst)
	if !far || direct {
		said := what + ": clearance " + t.w.Fine(lo*1000, hi*1000, 0)
		if off > 0 && asMeasured {
			said += " under the bore as measured"
		}
		t.figure("register", said, words.Join("; ", out.Size.Source, in.Size.Source))
	}
	switch {
	case meetsBottom(p, q, out, in):
		t.problem(plan.RegisterBottoms, plan.Named(what), plan.Of(plan.Mm, words.Round(commonMm(p, q, out, in), 2)))
	case lo < 0:
		cure := "a smaller " + words.Spaced(out.Name)
		if q.r.Part.Kind != parts.Tube || in.Size.Fitted() { // that of a tube is as bought
			cure += ", or a larger " + words.Spaced(in.Name)
		}
		by := plan.Of(plan.Mm, words.Round(-lo, 3))
		if out.Size.NominalMm > in.Size.NominalMm {
			t.problem(plan.RegisterLarger, plan.Named(copyTitle(p.r, p.copy)), plan.Named(words.Spaced(out.Name)), plan.Named(copyTitle(q.r, q.copy)), plan.Named(words.Spaced(in.Name)), by, plan.Named(cure))
			return
		}
		if fitted {
			cure = "a fit such as H7/f7"
		}
		t.problem(plan.RegisterBinds, plan.Named(what), by, plan.Named(cure))
	case lo < off && !asMeasured:
		t.problem(plan.RegisterTube, plan.Named(what), plan.Of(plan.Mm, words.Round(off, 2)))
	case far && direct:
		t.problem(plan.RegisterOff, plan.Named(what), plan.Of(plan.Diameter, out.Size.NominalMm), plan.Of(plan.Diameter, in.Size.NominalMm), plan.Of(plan.Mm, geom.Clean(in.Size.NominalMm-out.Size.NominalMm)))
	case fitted && !far && hi > looseMm:
		t.problem(plan.RegisterLoose, plan.Named(what), plan.Of(plan.Mm, words.Round(hi, 3)))
	}
}
