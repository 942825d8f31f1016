package review

import (
	"iter"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// along are the parts that stand along the axis of a joint in the finished machine, in the frame of its numbers.
func (r *reviewer) along(j *plan.JointPlan) stand.Line {
	axis, ok := r.machine().AxisOf(j)
	if !ok {
		return nil
	}
	return r.machine().Along(axis)
}

// levelled looks for a flange that a pressed joint sets at the end of its shaft the wrong
// way round: the face that another part is bolted to looks back along the shaft, which stands
// through it. A part with a wide enough bore may be meant to go round the shaft, where the
// face at its end takes another.
func (r *reviewer) levelled(j *parts.Joint) {
	p := j.Press
	hub, shaft, ends := r.viewOf(p.Bore.Part), r.viewOf(p.Shaft.Part), r.boltedTo(p.Bore)
	if !j.Meet.Level || shaft.lengthMm < 2*hub.lengthMm || len(ends[j.Meet.Second]) > 0 {
		return
	}
	for face, with := range ends {
		r.add(Finding{
			Severity: Stop, Part: j.Name.Value, Pos: j.Meet.Pos, What: hub.p.Title.Value + " is level with the end of " + shaft.p.Title.Value + " by its " +
				string(j.Meet.Second) + ", and its " + string(face) + ", which " + strings.Join(with, " and ") + " lies on, looks back along " +
				shaft.p.Title.Value,
			Rule: "what is bolted to a flange lies beyond the end of what the flange is on", Source: "by geometry",
			Fix: "level: front-with-" + string(face) + " or back-with-" + string(face) + "; what stands on it is reviewed once this is right",
		})
	}
}

// boltedTo are the titles of the parts that bolts draw against each face of a copy.
func (r *reviewer) boltedTo(hub parts.JointRef) map[parts.Face][]string {
	out := map[parts.Face][]string{}
	for _, j := range r.job.Of(parts.BoltKind) {
		m := r.job.MeetingOf(j)
		if !m.Set() || m.Level {
			continue
		}
		if b := j.Bolt; b.Through.Instance() == hub.Instance() {
			out[m.First] = append(out[m.First], r.job.Part(b.Into.Part).Title.Value)
		} else if b.Into.Instance() == hub.Instance() {
			out[m.Second] = append(out[m.Second], r.job.Part(b.Through.Part).Title.Value)
		}
	}
	return out
}

// overlapMm is how deep two parts lie in each other that nothing explains: less
// may be a press fit or a chamfer that is not drawn.
const overlapMm = 0.2

// ringOf is a ring that stands on a stretch of an axis.
func ringOf(axis assembly.Pose, on geom.Span, inner, outer float64) *assembly.Body {
	return &assembly.Body{Pose: axis, Solid: assembly.Of(assembly.Tube(outer, inner, -on.ToMm, -on.FromMm))}
}

// lyingIn goes over the parts that joints hold and that lie in a body, as they stand along its axis, with how deep; what a
// press fit or a chamfer that is not drawn explains is none.
func (r *reviewer) lyingIn(body *assembly.Body) iter.Seq2[stand.OnAxis, float64] {
	return func(yield func(stand.OnAxis, float64) bool) {
		for b, of := range r.machine().Parts() {
			o, in := assembly.PairOverlap(body, b, assembly.Tolerance{CoaxialMm: overlapMm, OtherMm: overlapMm, FinestMm: assembly.Usual.FinestMm})
			if in && r.job.ByHand(of.Part.Name.Value) == nil && !yield(stand.On(body.Pose, b, of), o.DepthMm) {
				return
			}
		}
	}
}

// coneShare is the least width of a cone as a part of its bearing's, where the job
// does not give it. Common practice, no source.
const coneShare = 0.8

// openCover finds the end of a housing that is closed by parts with a bore wider
// than the bearing behind them: they neither hold the cup nor keep dirt out.
func (r *reviewer) openCover(j *plan.JointPlan, all stand.Line) {
	b := j.Bearing
	if b.Sealed {
		return
	}
	seat := all.Find(j.B.Instance()).Span(j.B.Span())
	end, out := seat.ToMm, 1.0 // the end of the seat that the back does not stand at
	if math.Abs(b.CupBackMm-end) < math.Abs(b.CupBackMm-seat.FromMm) {
		end, out = seat.FromMm, -1
	}
	const wider = 1.15 // what is far wider is no cover: it only stands round the bearing
	others := seq.Keep(all, func(p stand.OnAxis) bool { return p.ID != j.B.Instance().ID() && p.Of.Part.Name.Value != j.A.Part })
	cover, least := narrowestBeyond(others, end, out, b.OutsideMm/2)
	if cover == nil || 2*least < b.OutsideMm || 2*least > wider*b.OutsideMm {
		return
	}
	r.add(Finding{
		Part: cover.Of.Part.Name.Value, Pos: cover.Of.Part.Name.Pos, What: r.machine().Title(cover.ID) + " leaves the bearing " + b.Bearing + " open",
		Numbers: "its bore is " + r.mm(2*least) + ", the bearing " + r.mm(b.OutsideMm) + " outside", LeftMm: left(b.OutsideMm - 2*least),
		Rule: "a cover reaches over the ring of its bearing", Fix: "a smaller bore",
	})
}

// narrowestBeyond is which of some parts near a place on the axis is narrowest beyond that, outward, where it is as wide as a
// radius, and its own radius there; nil where none reaches so far.
func narrowestBeyond(all stand.Line, end, out, wide float64) (narrow *stand.OnAxis, least float64) {
	const nearMm, stepMm = 5, 0.5
	least = endless
	for p := range seq.Refs(all) {
		on := p.Whole()
		if max(on.FromMm*out, on.ToMm*out) <= end*out || !on.Holds(end) && min(math.Abs(on.FromMm-end), math.Abs(on.ToMm-end)) > nearMm {
			continue
		}
		for z := range middles(on.FromMm, on.ToMm, stepMm) {
			if inner, outer, ok := p.Radii(z); ok && z*out > end*out && !geom.Over(wide, outer) && inner < least {
				narrow, least = p, inner
			}
		}
	}
	return narrow, least
}

// spigots looks for fitted steps of a bolted part that reach into no bore of
// nearly their size: they centre nothing. It looks at the step at the face of the
// joint, and at one of the other end whose seat names a part of the job or that has
// the size of a bore of what it is bolted to: it is put on the wrong way round.
func spigots(r *reviewer) {
	if len(r.pl.Faults) > 0 {
		return // a joint that is not worked out leaves its parts elsewhere
	}
	for _, j := range r.planned(parts.BoltKind) {
		for k, e := range []plan.JointEnd{j.A, j.B} {
			v, other := r.viewOf(e.Part), r.viewOf([]string{j.B.Part, j.A.Part}[k])
			face, ok := r.faceOf(j.Name, e.Part)
			if !v.turned() || !ok {
				continue
			}
			me := r.machine().Standing(e.Instance())
			if me == nil {
				continue
			}
			for _, c := range v.spigotsAt(face, other) {
				r.centres(v, c, me, r.slid(j))
			}
		}
	}
}

// spigotsAt are the fitted end steps of a part that meets another with a face,
// and that are to centre it.
func (v *view) spigotsAt(face parts.Face, other *view) []*cylinder {
	ofSize := func(c *cylinder) bool {
		return slices.ContainsFunc(other.inside, func(o *cylinder) bool { return geom.Alike(o.RadiusMm(), c.RadiusMm()) })
	}
	near, far := v.end(face), v.end(face.Other())
	return seq.Keep([]*cylinder{near, far}, func(c *cylinder) bool {
		return c.fitted() && !c.threaded() && (ofSize(c) || !v.jointNames(c.Name)) && // what slides or is pressed there is what it is fitted for
			(c.Name == near.Name || ofSize(c) && !ofSize(near) || slices.ContainsFunc(v.job.Parts, func(p *parts.Part) bool { return p != v.p && p.NamedIn(c.Seat) }))
	})
}

// The least that a spigot reaches into its register, and how much smaller than
// it may be, as a part of its size. Common practice, no source.
const (
	reachMm    = 1.5
	spigotPart = 0.015
)

// slid tells whether a joint lets its parts be shifted along slots.
func (r *reviewer) slid(j *plan.JointPlan) bool {
	return slices.ContainsFunc([]plan.JointEnd{j.A, j.B}, func(e plan.JointEnd) bool {
		_, slot := r.viewOf(e.Part).groupNamed(e.Feature)
		return slot != nil
	})
}

// centres reports a spigot that reaches into no register; of what is shifted along slots into no guide on two sides either.
func (r *reviewer) centres(v *view, c *cylinder, me *assembly.Body, slid bool) {
	if r.tooLarge(v, c) {
		return
	}
	others := seq.Keep(r.machine().Bodies, func(o assembly.Body) bool { return !o.Bought && o.ID != me.ID && o.Box().Meets(me.Box(), 0) })
	reach := registered(me.Pose, c, others, slid, c.RadiusMm()*spigotPart)
	if reach >= reachMm {
		return
	}
	f := Finding{
		What:    c.Name + " reaches into no register of its size",
		Numbers: r.mm(reach) + " of " + r.mm(c.LengthMm()) + " at " + r.mm(2*c.RadiusMm()) + ", wanted " + r.mm(reachMm), LeftMm: left(reach),
		Rule: "a fitted step at the face of a joint centres it", Fix: "a longer step, the size of the bore it goes into, or the part the other way round",
	}
	const finest, widest = 0.05, 0.5 // mm, and share of the radius
	least, most := c.RadiusMm()*spigotPart, c.RadiusMm()*widest
	if reach == 0 && registered(me.Pose, c, others, slid, most) >= reachMm { // then what stands wide round it is what gets worse
		for most-least > finest/2 {
			if mid := (least + most) / 2; registered(me.Pose, c, others, slid, mid) >= reachMm {
				most = mid
			} else {
				least = mid
			}
		}
		wide := math.Round(2*most/finest) * finest
		f.LeftMm, f.OverMm, f.Numbers = nil, over(wide), f.Numbers+"; what stands round it leaves "+r.mm(wide)
	}
	v.report(Check, c.Name, c.Drawn.Pos, f)
}

// registered is how much of a step some bodies stand close round, on three quarters of the round at the least, or on two sides: they have
// metal so far outside of it and none inside.
func registered(me assembly.Pose, c *cylinder, others []assembly.Body, sides bool, off float64) float64 {
	const rays = 72
	var reach [rays]float64
	own := assembly.Span{FromMm: -c.ToMm, ToMm: -c.FromMm}
	for k, deg := range geom.Evenly(rays) {
		metal := func(o *assembly.Body, radius float64) (mm float64) {
			for _, s := range o.Spans(me.Apply(assembly.Clock(radius, deg)), me.Z) {
				mm += max(0, min(s.ToMm, own.ToMm)-max(s.FromMm, own.FromMm))
			}
			return mm
		}
		for o := range seq.Refs(others) {
			reach[k] += max(0, metal(o, c.RadiusMm()+off)-metal(o, c.RadiusMm()-overlapMm+geom.CloseMm))
		}
	}
	guided := 0.0
	for k := range rays / 2 {
		guided = max(guided, min(reach[k], reach[k+rays/2]))
	}
	slices.Sort(reach[:])
	if sides {
		return geom.Clean(max(reach[rays/4], guided))
	}
	return geom.Clean(reach[rays/4])
}

// tooLarge tells whether a joint says already that a spigot is larger than its register.
func (r *reviewer) tooLarge(v *view, c *cylinder) bool {
	return slices.ContainsFunc(r.pl.Joints, func(j *plan.JointPlan) bool {
		return slices.ContainsFunc(j.Problems, func(p plan.Problem) bool {
			return p.Kind == plan.RegisterLarger && p.Ends[0].Part == v.p.Name.Value && p.Ends[0].Feature == c.Name
		})
	})
}

// takesSpigot tells whether a step of another part lies in a hole of a group as in its register.
func (v *view) takesSpigot(group string) bool {
	b := v.bodyOf(v.p.Name.Value)
	return b != nil && seq.At(v.holes, func(h *hole) bool {
		axis := b.Pose.Of(assembly.Move(assembly.Vec{X: h.a.XMm, Y: h.a.YMm}))
		return h.name == group && seq.At(v.machine().Along(axis), h.registers) != nil
	}) != nil
}

// registers tells whether a hole with a fit takes a step of a part that stands along its axis.
func (h *hole) registers(p *stand.OnAxis) bool {
	if h.group == nil || h.group.Size.Make != parts.PlainHole || h.group.Size.Size.Fit.Class.Value == "" {
		return false
	}
	radius := h.group.Size.Size.Nominal.Mm / 2
	return slices.ContainsFunc(p.Of.Side(false), func(c *part.Step) bool {
		own := c.Size.NominalMm / 2
		return radius > own-overlapMm && radius < own*(1+spigotPart) && p.Span(c.Span()).Meets(h.span())
	})
}

// faceOf is the face of a part that meets the other in a joint.
func (r *reviewer) faceOf(joint, part string) (parts.Face, bool) {
	j := r.job.Joint(joint)
	if j == nil {
		return "", false
	}
	m := r.job.MeetingOf(j)
	first, second := j.Ends()
	switch part {
	case first.Part:
		return m.First, m.Set()
	case second.Part:
		return m.Second, m.Set()
	}
	return "", false
}

// studShoulder looks for studs whose body goes through the hole it should stand
// against.
func (r *reviewer) studShoulder(j *plan.JointPlan) {
	stud, v := r.viewOf(r.job.Joint(j.Name).Bolt.Stud.Value), r.viewOf(j.A.Part)
	if stud == nil || !stud.turned() {
		return
	}
	if stud.weakStud(); j.Bolt.StudStandsMm > 0 && !j.Bolt.Spacer {
		return // it holds nothing apart
	}
	stud.unequal(j)
	wide := seq.Max(0, stud.outside, func(c *cylinder) float64 { return c.Drawn.Size.Nominal.Mm })
	if h := seq.At(v.holes, func(h *hole) bool { return h.name == j.A.Feature && wide < 2*h.radiusMm+1 }); h != nil {
		stud.report(Stop, "", stud.p.Name.Pos, Finding{
			astray: true, doubted: []string{j.Name}, What: stud.p.Title.Value + " has no shoulder that stands against " + j.A.Title, Numbers: v.mm(wide) + " at a hole of " + v.mm(2*h.radiusMm),
			Rule: "a stud that keeps two plates apart has a shoulder wider than their holes", Source: "by geometry", Fix: "a thicker body",
		})
	}
}

// weakStud looks for a stud made of a metal that breaks or strips under the pull of its nut.
func (stud *view) weakStud() {
	m, err := material.Find(stud.p.Material.Value)
	if err != nil || m.Kind.Data().Family == material.Steel {
		return
	}
	stud.report(Check, "", stud.p.Material.Pos, Finding{
		What: stud.p.Title.Value + " is a stud and not of steel", Numbers: stud.p.Material.Value,
		Rule: "a stud is pulled as its nut is tightened: cast iron breaks, and soft metals stretch and strip", Fix: "a steel, or accept it where the nut is hardly tightened",
	})
}

// unequal looks for studs that keep two plates apart, three or more of them, and that nothing
// asks to be alike: by general tolerances the plates stand out of parallel.
func (stud *view) unequal(j *plan.JointPlan) {
	if slices.ContainsFunc(stud.p.Require, func(q parts.Requirement) bool { return q.Kind == parts.EqualLength }) || stud.p.Quantity < 3 || len(stud.outside) < 3 {
		return
	}
	body := stud.outside[1]
	stud.report(Check, body.Name, body.Drawn.Pos, Finding{
		What: "nothing asks that the " + number(float64(stud.p.Quantity)) + " of " + stud.p.Title.Value + " are alike in length, and they hold " + j.A.Title +
			" parallel to " + j.B.Title, Numbers: stud.mm(body.LengthMm()) + " by general tolerances",
		Rule: "what keeps two plates apart is made to one length", Fix: "require: equal, within " + stud.mm(0.05) + ", of " + body.Name,
	})
}
