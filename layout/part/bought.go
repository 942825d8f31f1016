package part

import (
	"cmp"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// trueAgainMm is how true what is bought half finished is set by its pilot bore and a face, which its maker turned with the rest.
// Common practice, no source.
const trueAgainMm = 0.05

// finishBought checks what is bought half finished, and turns in one setting what of it is made here.
func (b *bench) finishBought() {
	k, outside, inside := b.Part.Stock, b.Side(false), b.Side(true)
	left := seq.Keep(slices.Concat(outside, inside), func(s *Step) bool { return s.Size.AsBought })
	sizes := seq.Map(left, func(s *Step) string {
		return words.Spaced(s.Name) + " " + b.W.Dia(s.Size.NominalMm) + " × " + b.W.Size(s.LengthMm())
	})
	check := "It has " + strings.Join(append(sizes, b.W.Size(b.LengthMm())+" over all"), ", ") + words.When(k.Pilot.Set(), "; pilot bore "+b.W.Dia(k.Pilot.Mm)) + "."
	b.op(plan.Operation{
		Machine: plan.Bench, Title: "Check what was bought", Gauge: "calipers", Refs: b.refs(plan.LengthFeature),
		Do: []string{k.Named.Value + ": as ordered, undamaged.", check, "Nothing of it is turned but what the next rows say."},
	})
	set := setting{face: parts.Front, steps: seq.Keep(slices.Concat(outside, inside), func(s *Step) bool { return !s.Size.AsBought })}
	if len(set.steps) == 0 {
		return
	}
	slices.SortStableFunc(set.steps, func(p, q *Step) int {
		if p.Inside != q.Inside || !p.Inside {
			return cmp.Compare(q.Size.NominalMm, p.Size.NominalMm)
		}
		return cmp.Compare(p.leastMm(), q.leastMm())
	})
	hold := seq.First(outside, func(s *Step) bool { return s.Size.AsBought && s.LengthMm() == seq.Max(0, outside, (*Step).LengthMm) })
	o := plan.Operation{Machine: plan.Lathe, Title: "Turn what is not bought finished", Tool: "indicator", Holding: "four jaws, copper under them"}
	if hold != nil {
		o.Holding = "four jaws on " + words.Spaced(hold.Name) + ", copper under them"
	}
	o.Holding += ", set true by " + words.Either(k.Pilot.Set() || len(inside) > 0, "the bore it comes with", "its outside") +
		" and a face within " + b.W.Near(trueAgainMm) + ": they were turned with the rest"
	bores := seq.Keep(set.steps, func(s *Step) bool { return s.Inside })
	if k.Pilot.Set() && len(bores) > 0 {
		if way, ok := cutting.Widening(bores[0].leastMm(), k.Pilot.Mm, b.largestDrillMm(), b.drills()); ok {
			o.Do = append(o.Do, b.drillLines(way, true)...)
		}
	}
	b.face = set.face
	phases := b.phases(set)
	phases[0].do = slices.Concat(o.Do, phases[0].do)
	o.Do = nil
	b.boxes(o, phases, false)
}
