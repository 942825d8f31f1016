package part

import (
	"slices"

	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

// operations cut the end.
func (m *saddle) operations(b *bench) {
	var limits []string
	if m == b.saddles[len(b.saddles)-1] {
		limits = b.wholeLimits("length over the tips")
	}
	b.op(warn(plan.Operation{
		Machine: plan.Bench, Title: "Cut the " + string(m.end.Face) + " end to the saddle curve",
		Do: []string{
			"Wrap the saddle template round the tube, its square edge " + b.W.Said(m.squareMm) + " from the " + string(m.far()) + " face, line 0 at clock " + words.Angle(m.end.Clock.Deg) + ".",
			"Punch along the curve every " + b.W.Near(10) + ", take the paper off, cut outside the marks and grind to them.",
			m.said("Offer it up to ", "It is done before its hole, which is then ground to it. There it enters ") + words.Join(", ", m.main, m.where(b.W)) + ": gap " + b.W.Said(m.end.Gap.Mm) +
				m.said(" all round.", " all round, its end level with the bore there."),
		},
		Tool: "saw, plasma or grinder", Gauge: "feeler or wire " + b.W.Size(m.end.Gap.Mm),
		Limits: limits, Refs: []int{b.ref(m)},
	}, grinding))
}

func (h *branchHole) operations(b *bench) {
	refs, start := []int{b.ref(h)}, ""
	for m := range seq.Refs(b.Radials) { // what is cut with it
		row := m.Rows[0]
		if b.branchOver(row.N) != h {
			continue
		}
		refs = append(refs, b.ref(m))
		if row.DiameterMm != 0 && row.DiameterMm < h.boreMm/2 {
			start = "Drill " + words.Spaced(row.Name) + ", " + b.W.Drill(row.DiameterMm) + ", inside the marks to start from. "
		}
	}
	b.op(warn(plan.Operation{Machine: plan.Bench, Title: words.Capital(h.name()),
		Do: []string{
			"Lay the hole template of " + h.branch.Title.Value + " on the outside, its " + h.note(b.W) +
				", and punch along the curve. Measure where the origin lies for the record now: the cut may take it away.",
			start + "Cut through the wall in the direction of the branch's axis, inside the marks. The branch is done before: " +
				words.Either(h.end.SetIn, "enter it", "offer it up") + " and grind the hole to it, not it to the hole.",
		},
		Tool: "plasma, hole saw or grinder", Gauge: "the cut branch", Refs: refs}, grinding))
}

// saddleOffMm is how far the gap of a saddle may be off at any place: less than none is none. Common practice, no source.
const saddleOffMm = 1.0

// checks is how the cut end meets its main.
func (m *saddle) checks(r *record) {
	gap := m.end.Gap.Mm
	limits := "up to " + r.W.Read(gap+saddleOffMm)
	if gap > saddleOffMm {
		limits = r.W.Limits(gap-saddleOffMm, gap+saddleOffMm)
	}
	r.add(plan.Check{
		Ref: r.ref(m), What: string(m.end.Face) + m.said(" end saddle on its main", " end saddle in its main"), Wanted: "gap " + r.W.Size(gap) + " all round",
		Limits: limits + " at any place", Gauge: "wire or feeler", Source: lookup.NoSource,
	})
}

func (h *branchHole) checks(r *record) {
	r.sized(plan.Check{
		Ref: r.ref(h), What: h.name(), Wanted: r.W.Read(h.origin.axialMm) + " from the " + string(h.origin.from) + " face to its origin, before it is cut",
		Gauge: "tape",
	}, r.taped(h.origin.axialMm))
}

// shownRows are what is cut into the outside, as a drawing shows it: an opening in the hole of a
// branch is cut with that.
func (n *Numbered) shownRows() []plan.RadialRow {
	rows := n.rows()
	for _, h := range n.holed {
		row := h.row(n)
		i := slices.IndexFunc(rows, func(r plan.RadialRow) bool { return n.branchOver(r.N) == h })
		if i < 0 {
			row.N, row.Name = len(rows)+1, h.name()
			rows = append(rows, row)
			continue
		}
		row.N, row.Name, row.SizeText = rows[i].N, rows[i].Name, h.name()+", "+row.SizeText
		rows[i] = row
	}
	return rows
}

// branches are the holes that other parts' saddled ends need in this part.
func (s *Sizes) branches() []*branchHole {
	var out []*branchHole
	for _, p := range s.Job.Parts {
		for e := range seq.Refs(p.Ends) {
			if p != s.Part && e.Onto.Part == s.Part.Name.Value && e.Place != nil {
				d := &shaper{Shape: &Shape{Sizes: newSizer(s.Job, p).Sizes}, faults: faults{job: s.Job}}
				if d.saddle(e); len(d.saddles) > 0 {
					out = append(out, &branchHole{d.saddles[0], p})
				}
			}
		}
	}
	return out
}
