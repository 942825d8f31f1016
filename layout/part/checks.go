package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// record collects what is measured before the part leaves the bench.
type record struct {
	*Numbered
	list []plan.Check
}

// Usual calipers measure up to caliperMm, or 12 in, and a rule is read where limits lie ruleMm or more apart, or 1/32 in.
// Common practice, no source.
const caliperMm, ruleMm = 300.0, 1.0

func (r *record) add(c plan.Check) {
	if c.Gauge == usualGauge && c.MinMm > r.W.Step(caliperMm, 12) {
		c.Gauge = words.Either(geom.Clean(c.MaxMm-c.MinMm) >= r.W.Step(ruleMm, 1.0/32), "rule", "long calipers or trammel")
	}
	r.list = append(r.list, c)
}

// usualGauge is what measures most sizes.
const usualGauge = "calipers"

// sized adds a check with the limits and the source of a size.
func (r *record) sized(c plan.Check, s Sized) {
	c.Limits, c.Source = words.OrNone(r.limitsText(s)), s.Source
	if s.Limited {
		c.MinMm, c.MaxMm = s.MinMm, s.MaxMm
	}
	r.add(c)
}

func checks(n *Numbered) []plan.Check {
	r := &record{Numbered: n}
	for st := range seq.Refs(n.Steps) {
		r.checkStep(st)
	}
	for _, f := range n.Features {
		switch f.Kind {
		case plan.LengthFeature, plan.HeightFeature, plan.OffsetFeature, plan.ThicknessFeature, plan.EndFeature, plan.EdgeFeature:
			r.form.check(r, f)
		}
	}
	for _, it := range n.items() {
		it.checks(r)
	}
	r.checkNotes()
	if top := n.topMark(); top != "" {
		r.add(plan.Check{What: "TOP marked", Wanted: top, Limits: r.topPlace()})
	}
	return r.list
}

// check measures the size along the axis, the offset of an end, or an end.
func (usual) check(r *record, f plan.Feature) {
	switch whole := r.whole(); f.Kind {
	case plan.LengthFeature, plan.HeightFeature:
		gauge := words.Either(!whole.ByLimits(), "calipers", gauge(&Step{Size: whole}))
		r.sized(plan.Check{Ref: f.N, What: f.Name, Wanted: r.W.Size(whole.NominalMm), Gauge: gauge}, whole)
	case plan.OffsetFeature:
		r.checkSaid(f, weld.PlaceSource, "square from the other end, rule")
	default:
		r.checkSaid(f, r.generalSource(f.Limits), usualGauge)
	}
}

// checkSaid measures a feature as it is said; where nothing limits it, by its note.
func (r *record) checkSaid(f plan.Feature, source lookup.Source, gauge string) {
	if f.Limits == "" {
		source = lookup.Source{}
	}
	r.add(plan.Check{Ref: f.N, What: f.Name, Wanted: f.Size, Limits: cmp.Or(f.Limits, f.Note, words.OrNone("")), Gauge: gauge, Source: source})
}

// checkNotes adds what the notes ask to be machined; the general tolerance limits the places that one gives.
func (r *record) checkNotes() {
	for _, t := range r.Part.Notes {
		if w := parts.AskedBy(t.Value); w != nil {
			limits := "by the note"
			if pm, err := fits.General(r.LengthMm(), r.Job.Tolerance.Value); err == nil && w.Placed {
				limits = "places ± " + r.W.About(pm)
			}
			r.add(plan.Check{What: w.Do, Limits: limits, Gauge: "calipers"})
		}
	}
}

func (r *record) checkStep(s *Step) {
	name := words.Spaced(s.Name)
	c := plan.Check{Ref: r.ref(s), What: name, Wanted: r.wanted(s), Limits: r.limitsText(s.Size), Source: s.Size.Source, Gauge: gauge(s)}
	if r.Part.Rolled != nil && !s.Inside {
		c.Gauge = "tape round it, both ends: " + r.girth(s)
	}
	switch {
	case s.Size.Limited:
		c.MinMm, c.MaxMm = s.Size.MinMm, s.Size.MaxMm
	case s.Size.AsBought:
		c.Limits = "as bought"
		if r.pressedOn(s) {
			c.Limits, c.Gauge = "as bought, for the bore on it: four places across, the largest", r.W.Micrometer(s.Size.NominalMm)
		}
	default:
		c.Limits = words.OrNone(c.Limits)
	}
	for _, d := range s.details {
		d.check(s, &c)
	}
	if t := s.Size.Thread; t != nil {
		c.Limits = r.classLimits(t) + c.Limits
	}
	r.add(c)
	for _, d := range s.details {
		d.more(r, s)
	}
	if s.LengthMm() != geom.Clean(r.LengthMm()) && !r.auxiliary(s) {
		r.sized(plan.Check{Ref: r.ref(s), What: name + " length", Wanted: r.W.Size(s.LengthMm()), Gauge: r.lengthGauge(s)}, r.length(s))
	}
}

// pressedOn tells whether a bore of the job is made to an outside as that measures.
func (s *Sizes) pressedOn(st *Step) bool {
	to := func(z parts.Size) bool {
		return z.Fit.LightPress.Part == s.Part.Name.Value && z.Fit.LightPress.Feature == st.Name
	}
	return !st.Inside && slices.ContainsFunc(s.Job.Parts, func(p *parts.Part) bool {
		return p.Bore != nil && to(p.Bore.Size) || p.Profile != nil && slices.ContainsFunc(p.Profile.Inside, func(q parts.Step) bool { return to(q.Size) })
	})
}

// generalSource is that of the general tolerance, where it limits.
func (r *record) generalSource(limits string) (source lookup.Source) {
	if limits != "" && r.Job.Tolerance.Value != "" {
		source = generalBy(r.Job.Tolerance.Value, "")
	}
	return source
}

// generalBy is a class of the general tolerance as a source, with what of it.
func generalBy(class, of string) lookup.Source {
	return lookup.Source{Name: "ISO 2768-" + class, Of: of, State: lookup.Checked}
}

func (r *record) checkLength(ref int, what string, mm float64) {
	s := r.General(geom.Clean(mm))
	r.sized(plan.Check{Ref: ref, What: what, Wanted: r.W.Size(geom.Clean(mm)), Gauge: "calipers"}, s)
}

// gauge names what reaches the size to the fineness its limits ask.
func gauge(s *Step) string {
	if s.Size.Thread != nil {
		return "thread gauge or counterpart"
	}
	switch {
	case s.close() && s.Inside:
		return "bore gauge"
	case s.close():
		return "micrometer"
	}
	return "calipers"
}

// lengthGauge is the same of a length between shoulders: over what stands out between two lower ones a micrometer
// goes, into what lies between two higher ones a block, and a depth micrometer to the rest.
func (s *Sizes) lengthGauge(st *Step) string {
	switch z := s.length(st); {
	case !z.Limited || geom.Clean(z.MaxMm-z.MinMm) >= closeMm:
		return "calipers"
	case !st.Inside && s.between(st, -1):
		return "micrometer"
	case !st.Inside && s.between(st, 1):
		return "gauge blocks"
	}
	return "depth micrometer"
}

// gauged tells whether calipers do not do for a step.
func (s *Step) gauged() bool { return s.Size.Thread != nil || s.close() }

// closeMm are limits that calipers, which are out by 0.02 to 0.05 mm, do not decide. Common practice, no source.
const closeMm = 0.1

// close tells whether the diameter of a step is closer than calipers read.
func (s *Step) close() bool {
	return s.Size.Press.Set() || s.Size.Measured() && s.Size.OffMm.Max-s.Size.OffMm.Min < closeMm || s.Size.Limited && s.Size.MaxMm-s.Size.MinMm < closeMm
}

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

// spread is how far an outside may measure from its nominal: as bought what its tube
// standard allows, else 0.6 mm, with more than any turned size has (common practice,
// no source).
func (s *Sizes) spread(st *Step) float64 {
	if s.Part.BoughtTube() && st.Size.AsBought && s.Material != nil {
		if tol, err := fits.TubeOutside(fits.TubeStandard(s.Material.Name), st.Size.NominalMm); err == nil {
			return tol.PlusMinusMm
		}
	}
	return 0.6
}

// ladderStep is the step of a ladder: 0.05 mm or 0.002 in, or twice and four times that
// where it would have more than 25 rungs.
func ladderStep(spreadMm float64, in parts.Units) (stepMm, toMm float64) {
	for stepMm = parts.By(in, 0.05, 0.002*geom.MmPerInch); 2*spreadMm/stepMm > 24; stepMm *= 2 {
	}
	return stepMm, stepMm * math.Ceil(spreadMm/stepMm-1e-9)
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
