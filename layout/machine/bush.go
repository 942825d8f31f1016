package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/fits"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// A journal runs in a bore that is wider by no more than nearShare of it, has fits.OilShare of its
// diameter of play there at the least and fills fillShare of its length. Common practice, no source.
const (
	nearShare = 0.03
	fillShare = 0.75
	// reachShare of the length of a bush is how far off a journal is still taken for its own.
	reachShare = 4
)

// loosestRun is the loosest of the fits that ISO 1829 and ANSI B4.2 prefer for what runs, from memory.
const loosestRun = "H11/c11"

// inBushes looks at what lies in the bores of parts that are pressed in: the bore closes when it is pressed, and
// what no joint says to turn there may do so. How far that of a loose part closes, which words alone have pressed
// in, nobody works out.
func (m *Machine) inBushes() (found []plan.Problem) {
	each := func(b pressedIn) {
		found = append(found, seq.Flat(m.PartOf(b.ID).Side(true), func(bore *part.Step) []plan.Problem { return m.inBore(&b, bore) })...)
	}
	for _, j := range m.OfKind(parts.PressKind) {
		each(pressedIn{m.At(j.A), j.Press.BoreClosesMm, func(kind plan.ProblemKind, args ...plan.Arg) plan.Problem { return m.Fault(j.Name, kind, args...) }})
	}
	for _, l := range m.Laid() {
		if bush := m.Standing(l.Instance); bush != nil && l.Loose.Held == parts.ByForce && m.driven(bush) {
			each(pressedIn{bush, math.NaN(), func(kind plan.ProblemKind, args ...plan.Arg) plan.Problem {
				return stand.Problem(l.Loose.After.Value, kind, l.At.Pos, args...)
			}})
		}
	}
	return found
}

// pressedIn is a bush that is pressed in, how far its bores close by that, NaN where that is not known, and what makes a
// problem of it.
type pressedIn struct {
	*assembly.Body
	closesMm float64
	fault    func(kind plan.ProblemKind, args ...plan.Arg) plan.Problem
}

// driven tells whether a step of a body lies in a hole that it is larger than.
func (m *Machine) driven(bush *assembly.Body) bool {
	outside := m.PartOf(bush.ID).Side(false)
	for b := range m.Parts() {
		for _, h := range m.roundHoles(b) {
			if b.ID != bush.ID && slices.ContainsFunc(outside, func(s *part.Step) bool {
				return mostMm(s) > h.leastMm && s.Size.NominalMm-h.isMm <= stand.FitMm && h.holds(bush.Pose, s.Span(), nil)
			}) {
				return true
			}
		}
	}
	return false
}

// inBore judges what lies in one bore of a bush; where nothing does, a journal of its size that ends
// before it should have reached it.
func (m *Machine) inBore(bush *pressedIn, bore *part.Step) (found []plan.Problem) {
	nearest, missing := -reachShare*bore.LengthMm(), []plan.Problem(nil)
	for _, p := range m.Along(bush.Pose) {
		if p.ID == bush.ID || m.joinsTo(bush.ID, p.ID) {
			continue
		}
		problems, long := m.inBush(bush, p, bore)
		switch {
		case long > 0:
			found, nearest = append(found, problems...), inf
		case long > nearest:
			nearest, missing = long, problems
		}
	}
	if nearest <= 0 {
		return missing
	}
	return found
}

// Beyond is how thick, across, what runs through the bore of a part is before its front, by its title: what
// comes onto the front comes over that.
func (m *Machine) Beyond(on string) map[string]float64 {
	out, p := map[string]float64{}, m.Standing(parts.Instance{Part: on, Copy: 1})
	if p == nil {
		return out
	}
	bores := m.Model(on).Side(true)
	for _, o := range m.Along(p.Pose) {
		if o.ID == p.ID {
			continue
		}
		through, thick := false, 0.0
		for _, s := range o.Of.Side(false) {
			on := o.Span(s.Span())
			through = through || slices.ContainsFunc(bores, func(bore *part.Step) bool {
				return s.Size.NominalMm <= bore.Size.NominalMm && on.Meets(bore.Span())
			})
			if on.FromMm < -geom.CloseMm {
				thick = max(thick, s.Size.NominalMm)
			}
		}
		if through && thick > 0 {
			out[m.Title(o.ID)] = thick
		}
	}
	return out
}

// joinsTo tells whether a joint is between two bodies that does not let one turn in the other.
func (m *Machine) joinsTo(a, b string) bool {
	return slices.ContainsFunc(m.Joints, func(j *plan.JointPlan) bool {
		ids, in := stand.EndsOf(j), m.Joint(j.Name)
		return (in.Slide == nil || !m.Job.Runs(in)) && slices.Contains(ids, a) && slices.Contains(ids, b)
	})
}

// inBush judges the journal of a shaft in a bore of a bush, and says on how much of it the shaft lies; less than
// nothing is how far off the journal ends.
func (m *Machine) inBush(bush *pressedIn, shaft stand.OnAxis, bore *part.Step) (found []plan.Problem, most float64) {
	run, most, lies := journalIn(shaft, bore)
	named := m.namedJournal(bush.ID, shaft, bore)
	if named != nil { // whatever else of the shaft is drawn in the bore
		run, most = named, shaft.Span(named.Span()).OnMm(bore.Span())
	} else if run == nil || !geom.Over(most, 0) && geom.Over(lies, 0) {
		return nil, lies
	}
	say := func(kind plan.ProblemKind, mm ...float64) {
		args := []plan.Arg{plan.Named(m.Title(shaft.ID) + " " + words.Spaced(run.Name)), plan.Named(m.Title(bush.ID) + " " + words.Spaced(bore.Name))}
		found = append(found, bush.fault(kind, append(args, seq.Map(mm, func(v float64) plan.Arg { return m.Rounded(v, 3) })...)...))
	}
	if most < fillShare*bore.LengthMm() {
		say(plan.BushShort, words.Round(max(most, 0), 2), bore.LengthMm())
	}
	if !geom.Over(most, 0) && named == nil {
		return found, most
	}
	drawn, closes := bore.Size.MinMm-run.Size.MaxMm, bush.closesMm
	switch left := drawn - closes; {
	case !geom.Over(drawn, 0):
		say(plan.BushSeizes, drawn)
	case math.IsNaN(closes):
		say(plan.BushUnknown, drawn)
	case !geom.Over(left, 0):
		say(plan.BushCloses, left, closes)
	case geom.Over(fits.OilShare*bore.Size.NominalMm, left):
		say(plan.BushTight, left, closes)
	}
	loosest, err := fits.Between(bore.Size.NominalMm, loosestRun)
	if play := bore.Size.MaxMm - run.Size.MinMm; err == nil && geom.Over(play, loosest.ClearanceMaxUm/1000) {
		say(plan.BushLoose, play, loosest.ClearanceMaxUm/1000)
	}
	return found, max(most, lies)
}

// namedJournal is the step of a shaft that a joint has turn in the bore of a bush; nil where none names one.
func (m *Machine) namedJournal(bush string, shaft stand.OnAxis, bore *part.Step) *part.Step {
	j := seq.First(m.OfKind(parts.SlideKind), func(j *plan.JointPlan) bool {
		return m.Job.Runs(m.Joint(j.Name)) && j.A.Instance().ID() == bush && j.A.Feature == bore.Name && j.B.Instance().ID() == shaft.ID
	})
	if j == nil {
		return nil
	}
	return shaft.Of.StepNamed(j.B.Feature)
}

// journalIn is the step of a shaft that runs in a bore, of its size and with limits as that has, nil if none does; on how
// much of the bore it lies, and on how much of it any step does that goes in. The shaft stands on the axis of the bush.
func journalIn(shaft stand.OnAxis, bore *part.Step) (run *part.Step, most, lies float64) {
	most, lies = -inf, -inf
	for _, s := range shaft.Of.Side(false) {
		if s.Size.NominalMm > (1+nearShare)*bore.Size.NominalMm {
			continue // round it, not in it
		}
		long := shaft.Span(s.Span()).OnMm(bore.Span())
		lies = max(lies, long)
		near := math.Abs(bore.Size.NominalMm-s.Size.NominalMm) <= nearShare*bore.Size.NominalMm
		if near && long > most && s.Size.Thread == nil && bore.Size.Thread == nil && s.Size.Limited && bore.Size.Limited {
			run, most = s, long
		}
	}
	return run, most, lies
}
