package joint

import (
	"math"
	"slices"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// comesOff lists, the last put on first, what is put on by hand with a later joint and lies over
// the heads or nuts of bolts, with what lies on that, and a motor that its notes set on it, under
// its guards: it comes off before these are tightened.
func (j *making) comesOff(t *joint) (out []plan.Off) {
	var off []*parts.Loose
	guards := 0
	for e := range seq.Refs(j.job.Loose) {
		if e.Off || slices.ContainsFunc(j.before, func(o *joint) bool { return o.in.Name.Value == e.After.Value }) {
			continue
		}
		title := words.Head(e.Item.Value)
		over := slices.ContainsFunc(off, func(below *parts.Loose) bool { return j.job.LiesOver(e, below) })
		if e.Part.Value != "" {
			r := j.model(e.Part.Value)
			title = r.Out.Title
			over = over || slices.ContainsFunc(j.headSides(t), func(side headSide) bool { return j.overHeads(r, side, t) })
		}
		if over {
			off, out = append(off, e), slices.Insert(out, 0, plan.Off{Title: title, Loose: e})
			if j.job.Motor.Guarded(title) {
				guards++
			}
		}
	}
	if m := j.job.Motor; m != nil && slices.ContainsFunc(m.Notes, func(n parts.Text) bool {
		return slices.ContainsFunc(off, func(below *parts.Loose) bool { return j.job.Over(n.Value, below) })
	}) {
		out = slices.Insert(out, guards, plan.Off{Title: "the motor"})
	}
	return out
}

// titles are those of things that come off.
func titles(off []plan.Off) []string { return seq.Map(off, func(o plan.Off) string { return o.Title }) }

// overHeads tells whether a loose part sits beyond the heads of bolts, on the step of a shaft
// that is its seat, and reaches out over one of them.
func (j *making) overHeads(r *part.Model, side headSide, t *joint) bool {
	wide := seq.Max(0, r.Side(false), diameterMm) / 2
	form := bolts.Head(t.in.Bolt.Head)
	if side.isNut {
		form = bolts.Hex
	}
	head, err := t.bolt.HeadDiameterMm(form)
	if err != nil || !slices.ContainsFunc(side.pts, func(p plan.XY) bool { return math.Hypot(p.XMm, p.YMm)-head/2 < wide }) {
		return false
	}
	for q := range seq.Refs(j.placed) {
		for s := range seq.Refs(q.r.Steps) {
			if q.group == side.group && !s.Inside && side.outMm(q, s.MidMm()) > 0 && r.Part.NamedIn(s.Seat) {
				return true
			}
		}
	}
	return false
}

// behind lists what stands over the heads or nuts of bolts in the finished machine and is no
// matter of a hand: parts that later joints bring, motors and couplings. They are reached when
// that is off.
func (j *making) behind(t *joint) (out []plan.Off) {
	there := j.there(t)
	for _, side := range j.headSides(t) {
		for p := range seq.Refs(j.placed) {
			if p.group != side.group || slices.Contains(there, p.Instance) || slices.Contains(t.others(), p.Instance) {
				continue
			}
			if gap, over := j.over(p, side); over && gap <= side.needMm {
				out = seq.Add(out, plan.Off{Title: copyTitle(p.r, p.Copy), Of: p.Instance})
			}
		}
		for e := range seq.Refs(j.job.Loose) {
			if e.Stands != nil && !e.Off && j.standsOver(e.Stands, side, t) {
				out = seq.Add(out, plan.Off{Title: words.Head(e.Item.Value), Loose: e})
			}
		}
	}
	return out
}

// standsOver tells whether a coupling on the end of a shaft begins in the room of heads and
// reaches out over one of them.
func (j *making) standsOver(on *parts.Stands, side headSide, t *joint) bool {
	shaft := j.at(on.On.Instance())
	if shaft == nil || shaft.group != side.group {
		return false
	}
	s := shaft.r.StepNamed(on.On.Feature)
	if s == nil || !slices.ContainsFunc(side.pts, func(p plan.XY) bool { return math.Hypot(p.XMm, p.YMm) < on.Diameter.Mm/2 }) {
		return false
	}
	from, out := s.FromMm, 1.0
	if s.FromMm+s.ToMm < shaft.r.LengthMm() {
		from, out = s.ToMm, -1
	}
	begins := side.outMm(shaft, from)
	return shaft.at.way(out) == side.dir && begins >= 0 && begins <= side.needMm
}

// shutBy lists what is taken off, in that order, before the bearing of a joint is set anew: the
// covers of its bore, and before these what lies over their heads.
func (j *making) shutBy(t *joint) (out []plan.Off) {
	for _, o := range ofKind(j.all, parts.BoltKind) {
		if o.axis && o.covers(t) && len(o.a.r.MetalAt(t.b.step.Size.NominalMm/2-geom.CloseMm)) > 0 {
			out = slices.Concat(out, j.behind(o), j.comesOff(o), []plan.Off{{Title: o.a.title(), Of: o.a.Instance()}})
		}
	}
	return out
}
