package part

import (
	"cmp"
	"slices"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
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
