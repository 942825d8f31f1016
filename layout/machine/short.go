package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Where the whole end of a bar looks at one thing, evenMm alike a fifth within its corners, which are round, and its side is longer than what is
// between, it was meant to reach that. Common practice, no source.
const evenMm = 0.5

// short finds bars that are welded by one end and with the other stop in the air before another bar of
// the same frame. In a drum or beside a plate a bar may well end free.
func (m *Machine) short() (found []plan.Problem) {
	group := m.weldGroups()
	for _, j := range m.OfKind(parts.WeldKind) {
		for k, e := range []plan.JointEnd{j.A, j.B} {
			feature := e.Feature
			if p := m.Joint(j.Name).Place; p != nil && k == 0 {
				feature = p.With
			}
			far := string(parts.Side(feature).OtherEnd())
			b := m.At(e)
			if far == "" || b == nil || m.PartOf(b.ID).Part.Bar == nil || m.endJoined(e.Instance(), far) {
				continue
			}
			others := seq.Keep(m.Bodies, func(o assembly.Body) bool { return o.ID != b.ID && group[o.ID] == group[b.ID] })
			if before, mm := m.before(b, e.Instance(), far, others); before != "" && m.PartOf(before).Part.Bar != nil {
				bar := m.PartOf(b.ID).Part.Bar
				found = append(found, m.Fault(j.Name, plan.BarShort, m.Named(b.ID), plan.Named(far), plan.Of(plan.Mm, mm), m.Named(before), m.Rounded(bar.Length.Mm+mm, 3)))
			}
		}
	}
	return found
}

// before is what the whole end of a bar looks at, and how far off it is, mm; empty for nothing, or what is no nearer
// than a side of the bar is long.
func (m *Machine) before(b *assembly.Body, i parts.Instance, end string, others []assembly.Body) (id string, mm float64) {
	cut, size, ok := m.CutOf(i, end)
	bar := m.PartOf(b.ID).Part.Bar
	if !ok || m.Mitred(i, end) {
		return "", 0
	}
	cut = b.Pose.Of(cut)
	low, high := inf, -inf
	shares := []float64{0.2, 0.8}
	for k := range len(shares) * len(shares) {
		hit := assembly.Crossings(others, cut.Apply(assembly.Vec{X: shares[k&1] * size.X, Y: shares[k>>1] * size.Y}), cut.Z)
		if len(hit) == 0 || id != "" && hit[0].ID != id {
			return "", 0
		}
		id, low, high = hit[0].ID, math.Min(low, hit[0].FromMm), math.Max(high, hit[0].FromMm)
	}
	if geom.Over(standOffToMm, low) || geom.Over(high-low, evenMm) || geom.Over(low, max(bar.Width.Mm, bar.Depth.Mm)) {
		return "", 0
	}
	return id, words.Round(low, 2)
}

// endJoined tells whether a joint names an end of a bar, or is placed by it.
func (m *Machine) endJoined(i parts.Instance, end string) bool {
	return slices.ContainsFunc(m.Job.Joints, func(j *parts.Joint) bool {
		first, _ := j.Ends()
		return j.Place != nil && j.Place.With == end && first.Instance() == i || j.Some(func(r parts.JointRef) bool { return r.Instance() == i && r.Feature == end })
	})
}
