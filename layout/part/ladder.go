package part

import (
	"math"

	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// newLadders prints the bore for each size the mate may measure; without rungs the rule alone of what is
// made to a size as measured.
func newLadders(s *Sizes) ([]plan.Ladder, parts.Errors) {
	f := &faults{job: s.Job}
	var out []plan.Ladder
	for st := range seq.Refs(s.Steps) {
		if st.Size.Measured() {
			out = append(out, plan.Ladder{Feature: words.Spaced(st.Name), Rule: s.limitsText(st.Size), Note: "Measure at four places."})
		}
		if st.Size.Press.Set() {
			if of, mate := s.mateOf(f, st.Size.Press); mate != nil {
				out = append(out, s.ladder(f, st, mate.Size.NominalMm, of.spread(mate)))
			}
		}
	}
	return out, f.list
}

// ladder reads the bore from the measured counterpart.
func (s *Sizes) ladder(f *faults, st *Step, mateMm, spreadMm float64) plan.Ladder {
	l := plan.Ladder{
		Feature: words.Spaced(st.Name), Counterpart: st.Size.Press.Part + " " + words.Spaced(st.Size.Press.Feature),
		Note: "Measure the counterpart at four places across with a " + s.W.Micrometer(mateMm) + ", and set the bore gauge in it; take the largest. Bore " +
			s.W.Size(0.01) + " to " + s.W.Said(0.03) + " under it (common practice, no source).",
	}
	l.Rule = "− " + s.W.Size(0.02) + " (− " + s.W.Size(0.03) + " … − " + s.W.Size(0.01) + ")"
	step, to := ladderStep(spreadMm, s.W.Units)
	rungs, err := fits.LightPressLadder(mateMm, to, step)
	if err != nil {
		f.fault(st.Size.Press.Pos, "no light press for "+s.W.Dia(mateMm), s.W.Refused(err))
		return l
	}
	for _, g := range rungs {
		l.Rungs = append(l.Rungs, plan.Rung{
			MeasuredMm: g.MeasuredMm, BoreMinMm: g.BoreMinMm, BoreMaxMm: g.BoreMaxMm,
			Measured: s.W.Exact(g.MeasuredMm), Bore: s.W.Exact(g.BoreMinMm) + " – " + s.W.Exact(g.BoreMaxMm),
		})
	}
	return l
}

// ladderStep is the step of a ladder: 0.05 mm or 0.002 in, or twice and four times that
// where it would have more than 25 rungs.
func ladderStep(spreadMm float64, in parts.Units) (stepMm, toMm float64) {
	for stepMm = parts.By(in, 0.05, 0.002*geom.MmPerInch); 2*spreadMm/stepMm > 24; stepMm *= 2 {
	}
	return stepMm, stepMm * math.Ceil(spreadMm/stepMm-1e-9)
}
