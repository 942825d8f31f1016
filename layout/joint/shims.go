package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// lids are the joints that bolt on what holds the cups of a tapered bearing and of the other of its pair from outside; none where
// a nut sets their play.
func (j *making) lids(t *joint) (out []*joint) {
	m, _ := t.mount()
	n, _ := t.partner(j.all).mount()
	if m.nut != nil || n.nut != nil {
		return nil
	}
	return seq.Add(out, slices.DeleteFunc([]*joint{m.lid, n.lid}, func(l *joint) bool { return l == nil })...)
}

// lidsLeft are those of them that are not on yet: the last sets the play.
func (j *making) lidsLeft(t *joint) []*joint {
	return seq.Keep(j.lids(t), func(l *joint) bool { return !slices.Contains(j.before, l) })
}

// shimmed are the bearings whose play shims under a cover set in the step of a joint, which bolts on the last of their covers.
func (j *making) shimmed(t *joint) []*joint {
	return seq.Keep(j.before, func(o *joint) bool {
		return o.is(parts.BearingKind) && o.out.Bearing.HasEndFloat && slices.Equal(j.lidsLeft(o), []*joint{t})
	})
}

// shimSteps set the play of bearings by shims under the cover that a joint has bolted on, the last of theirs. Preload is the play that
// thicker shims leave and as much more: no gauge reads below no play. Common practice, no source.
func (j *making) shimSteps(t *joint) {
	for _, o := range j.shimmed(t) {
		p, span := o.out.Bearing, t.span(o.out.Bearing.EndFloatMm)
		p.SetBy = t.in.Name.Value
		cover := t.coverOf(o.b)
		pack := "Nothing on the shaft does it: shims under " + cover + " do" +
			words.When(p.ShimMm > 0, ", about "+t.w.Said(p.ShimMm)+" in all by the lengths as drawn") + ". Begin with more, for too few clamp the bearings."
		again := "To change them " + cover + " comes off, and is bolted as before."
		check := t.floatCheck(p.EndFloatMm)
		if p.EndFloatMm.Max > 0 {
			t.step("Set the end float of "+o.a.title(), pack, "Take out until the dial gauge on the shaft end shows "+span+", push and pull while turning.", again).Hold = "Turns freely by hand."
		} else {
			less := t.w.Setting(-p.EndFloatMm.Max) + " to " + t.w.Setting(-p.EndFloatMm.Min)
			t.step("Set the preload of "+o.a.title(), pack, "Measure the play that these leave by a dial gauge on the shaft end, push and pull while turning; then take out as much, and "+less+" more.", again).
				Hold = "Turns by hand with a light, even drag."
			check.What, check.Limits, check.Gauge = "preload", less+" past no play", "micrometer on the shims"
		}
		t.out.Checks = append(t.out.Checks, check)
	}
}

// shimsMm are the shims under the cover that a joint bolts on, as drawn; 0 for none.
func (j *making) shimsMm(t *joint) float64 {
	return seq.Max(0, j.shimmed(t), func(o *joint) float64 { return o.out.Bearing.ShimMm })
}

// span is a play to set, in words.
func (t *joint) span(mm plan.Range) string { return t.w.Setting(mm.Min) + " to " + t.w.Setting(mm.Max) }

// floatCheck is that of a play that is set.
func (t *joint) floatCheck(mm plan.Range) plan.Check {
	return plan.Check{What: "end float", Wanted: t.span(mm), Limits: t.span(mm), MinMm: mm.Min, MaxMm: mm.Max, Gauge: "dial gauge", Source: lookup.Told("job file")}
}

// coneWidth is by how much a tapered bearing of a bore up to so much is narrower or wider over both rings than its width T, mm.
type coneWidth struct{ toMm, leastMm, mostMm float64 }

// coneWidths are those of the normal class. ISO 492, as three bearing makers' catalogues print it (deviation of T).
var coneWidths = []coneWidth{{80, 0, 0.2}, {120, -0.2, 0.2}, {315, -0.25, 0.35}, {math.Inf(1), -0.4, 0.4}}

// shimsMostMm is the thickest pack of shims that a drawing leaves room for; lengths that ask for more are wrong.
// Common practice, no source.
const shimsMostMm = 2.0

// judgeShims notes a pair whose lengths may leave it more play than it is to have, which shims under its covers only add to, and puts
// in the plan how thick they are as drawn.
func (j *making) judgeShims(t *joint, p *plan.BearingPlan, m mounting) {
	o := t.partner(j.all)
	n, ok := o.mount()
	lids := j.lids(t)
	if !ok || len(lids) == 0 || m.fixed == nil || n.fixed == nil || m.cupDir == n.cupDir {
		return
	}
	drawn, limits := pairPlay(t, o, m, n)
	asked := p.EndFloatMm
	if mm := geom.Clean((asked.Min+asked.Max)/2 - drawn); mm > 0 && mm <= shimsMostMm {
		p.ShimMm = t.w.Rounded(mm, 2)
	}
	if geom.Over(limits.Max, asked.Max) {
		t.problem(plan.ShimsAdd, plan.Of(plan.Mm, limits.Max), plan.Of(plan.Mm, asked.Max), plan.Named(t.a.title()),
			plan.Named(strings.Join(seq.Map(lids, func(l *joint) string { return l.coverOf(t.b) }), " and ")), plan.Of(plan.Mm, geom.Clean(limits.Max-asked.Max)))
	}
}

// pairPlay is how far a shaft goes along between the two of its bearings whose cones stand on its shoulders, without shims: as drawn, and
// inside the limits of the lengths and of the bearings.
func pairPlay(t, o *joint, m, n mounting) (drawn float64, limits plan.Range) {
	add := func(mm plan.Range, nominal, sign float64) {
		drawn += sign * nominal
		if sign < 0 {
			mm = plan.Range{Min: -mm.Max, Max: -mm.Min}
		}
		limits = plan.Range{Min: limits.Min + mm.Min, Max: limits.Max + mm.Max}
	}
	apart := func(r *part.Model, inside bool, a, b float64, sign float64) {
		add(r.BetweenMm(inside, min(a, b), max(a, b)), math.Abs(a-b), sign)
	}
	ends := [2]float64{} // of the housing: the shoulder behind a cup, or the face that its cover lies on
	for i, of := range []struct {
		t *joint
		m mounting
	}{{t, m}, {o, n}} {
		ends[i] = end(of.t.b.step, of.m.cupDir)
		if of.m.lid != nil {
			_, cover, _ := of.m.lid.from(of.t.b.Instance())
			s, _ := of.m.lid.spigotOf(cover, of.t.b.step.Size.NominalMm)
			apart(cover.r, false, s.FromMm, s.ToMm, -1)
		}
		in := of.t.in.Bearing
		by := seq.First(coneWidths, func(row coneWidth) bool { return in.Bore.Mm <= row.toMm })
		add(plan.Range{Min: in.Width.Mm + by.leastMm, Max: in.Width.Mm + by.mostMm}, in.Width.Mm, -1)
	}
	apart(t.b.r, true, ends[0], ends[1], 1)
	apart(t.a.r, false, m.coneBackMm, n.coneBackMm, -1)
	return geom.Clean(drawn), plan.Range{Min: geom.Clean(limits.Min), Max: geom.Clean(limits.Max)}
}
