package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// lastStacks are the assemblies as they stand at the end, each part of each
// axis once.
func (r *reviewer) lastStacks() [][]*standingPart {
	var out [][]*standingPart
	for _, j := range slices.Backward(r.pl.Joints) {
		if s := r.stack(j); len(s) > 1 && !slices.ContainsFunc(out, func(t []*standingPart) bool { return holds(t, s) }) {
			out = append(out, s)
		}
	}
	return out
}

// lastStacksOf are those in which both ends of a joint stand.
func (r *reviewer) lastStacksOf(j *plan.JointPlan) [][]*standingPart {
	return seq.Keep(r.lastStacks(), func(s []*standingPart) bool {
		return standing(s, j.A.Instance()) != nil && standing(s, j.B.Instance()) != nil
	})
}

func holds(t, s []*standingPart) bool {
	return !slices.ContainsFunc(s, func(p *standingPart) bool {
		return standing(t, p.Instance()) == nil
	})
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
			Severity: Stop, Part: j.Name.Value, Pos: j.Meet.Pos, What: hub.p.Title.Value + " is level with the end of " + shaft.p.Title.Value + " by its " + string(j.Meet.Second) + ", and its " + string(face) + ", which " + strings.Join(with, " and ") + " lies on, looks back along " + shaft.p.Title.Value,
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

// overlapped is the deepest overlap on radius of two parts, and where; only
// stretches of some length count.
func overlapped(a, b *standingPart) (z, deep float64) {
	ends := make([]float64, 0, len(a.metal)+len(b.metal))
	for _, p := range []*standingPart{a, b} {
		ends = append(ends, seq.Map(p.metal, func(m plan.XY) float64 { return m.XMm })...)
	}
	slices.Sort(ends)
	for i := 0; i+1 < len(ends); i++ {
		if ends[i+1]-ends[i] <= overlapMm {
			continue
		}
		mid := (ends[i] + ends[i+1]) / 2
		ai, ao, ok := a.radii(mid)
		bi, bo, ok2 := b.radii(mid)
		if d := math.Min(ao, bo) - math.Max(ai, bi); ok && ok2 && d > deep {
			z, deep = mid, d
		}
	}
	return z, deep
}

// ringClash looks for parts that reach into a bearing, for cones that hang over
// the end of their seat, and for covers that leave a bearing open.
func (r *reviewer) ringClash(j *plan.JointPlan) {
	b := j.Bearing
	if _, other := otherWidth(b.Bearing, b.OutsideMm, b.WidthMm); b.LargeEndDir == 0 || other {
		return // said of the bearing: where it ends is not known
	}
	wide := geom.Between(b.CupBackMm, b.LargeEndMm)
	ring := ringOf(wide, b.BoreMm/2, b.OutsideMm/2)
	for _, stack := range r.lastStacksOf(j) {
		r.coneSeat(j, stack)
		r.openCover(j, stack)
		for _, p := range stack {
			if z, deep := overlapped(ring, p); deep > overlapMm && p.Part != j.A.Part && p.Part != j.B.Part {
				r.add(Finding{
					Severity: Stop, Part: p.Part, Pos: r.job.Part(p.Part).Name.Pos, What: p.Title + " reaches into the bearing " + b.Bearing,
					Numbers: r.mm(p.Own(z)) + " from its front face; the bearing is " + r.mm(wide.LengthMm()) + " wide there",
					Rule:    "a cover stays clear of the bearing", Source: "by geometry", Fix: "a shorter pilot, or a deeper seat",
				})
			}
		}
	}
}

// ringOf is a ring that stands on a stretch of the axis of an assembly.
func ringOf(on geom.Span, inner, outer float64) *standingPart {
	along := func(radius float64) []plan.XY {
		return []plan.XY{{XMm: on.FromMm, YMm: radius}, {XMm: on.ToMm, YMm: radius}}
	}
	return &standingPart{metal: along(0), section: &plan.Section{Outer: along(outer), Inner: along(inner)}}
}

// coneShare is the least width of a cone as a part of its bearing's, where the job
// does not give it. Common practice, no source.
const coneShare = 0.8

// coneSeat finds cones that stand beside their seat.
func (r *reviewer) coneSeat(j *plan.JointPlan, stack []*standingPart) {
	b, shaft := j.Bearing, standing(stack, j.A.Instance())
	if j.A.Inside || r.twoSizes(j) {
		return
	}
	wide, inner := cmp.Or(b.ConeWidthMm, coneShare*b.WidthMm), "cone"
	if b.Ball {
		wide, inner = b.WidthMm, "inner ring"
	}
	const least = 0.75
	if on := shaft.Span(j.A).OnMm(geom.Between(b.LargeEndMm, b.LargeEndMm-b.LargeEndDir*wide)); on < least*wide {
		r.ofJoint(j, Finding{
			Severity: Stop, What: "the " + inner + " of " + b.Bearing + " stands beside its seat " + j.A.Feature, Numbers: r.mm(max(0, on)) + " of " + r.mm(wide) + " sit on it",
			Rule: "a ring sits on its seat over three quarters of its width", Fix: "shoulders that agree: compare their distance on shaft and housing",
		})
	}
}

// openCover finds the end of a housing that is closed by parts with a bore wider
// than the bearing behind them: they neither hold the cup nor keep dirt out.
func (r *reviewer) openCover(j *plan.JointPlan, stack []*standingPart) {
	b, housing := j.Bearing, standing(stack, j.B.Instance())
	if b.Sealed {
		return
	}
	seat := housing.Span(j.B)
	end, out := seat.ToMm, 1.0 // the end of the seat that the back does not stand at
	if math.Abs(b.CupBackMm-end) < math.Abs(b.CupBackMm-seat.FromMm) {
		end, out = seat.FromMm, -1
	}
	const wider = 1.15 // what is far wider is no cover: it only stands round the bearing
	others := seq.Keep(stack, func(p *standingPart) bool { return p != housing && p.Part != j.A.Part })
	cover, least := narrowestBeyond(others, end, out)
	if cover == nil || 2*least < b.OutsideMm || 2*least > wider*b.OutsideMm {
		return
	}
	r.add(Finding{
		Part: cover.Part, Pos: r.job.Part(cover.Part).Name.Pos, What: cover.Title + " leaves the bearing " + b.Bearing + " open",
		Numbers: "its bore is " + r.mm(2*least) + ", the bearing " + r.mm(b.OutsideMm) + " outside", LeftMm: left(b.OutsideMm - 2*least),
		Rule: "a cover reaches over the ring of its bearing", Fix: "a smaller bore",
	})
}

// narrowestBeyond is which of some parts near a place on the axis is narrowest beyond that, outward, and its radius there;
// nil where none reaches so far.
func narrowestBeyond(all []*standingPart, end, out float64) (narrow *standingPart, least float64) {
	const nearMm, stepMm = 5, 0.5
	least = math.Inf(1)
	for _, p := range all {
		on := p.span()
		if max(on.FromMm*out, on.ToMm*out) <= end*out || !on.Holds(end) && min(math.Abs(on.FromMm-end), math.Abs(on.ToMm-end)) > nearMm {
			continue
		}
		for z := range middles(on.FromMm, on.ToMm, stepMm) {
			if inner, _, ok := p.radii(z); ok && z*out > end*out && inner < least {
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
	stacks, done := r.lastStacks(), map[string]bool{}
	for _, j := range r.planned(parts.BoltKind) {
		for k, e := range []plan.JointEnd{j.A, j.B} {
			v, other := r.viewOf(e.Part), r.viewOf([]string{j.B.Part, j.A.Part}[k])
			face, ok := r.faceOf(j.Name, e.Part)
			if !v.turned() || !ok {
				continue
			}
			for _, c := range v.spigotsAt(face, other) {
				for _, stack := range stacks {
					if me := standing(stack, e.Instance()); me != nil && !done[e.Part+"."+c.Name] {
						done[e.Part+"."+c.Name] = r.centres(v, c, me, stack)
					}
				}
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

// centres reports a spigot that reaches into no register, and tells whether it
// did.
func (r *reviewer) centres(v *view, c *cylinder, me *standingPart, stack []*standingPart) bool {
	const stepMm = 0.1
	if r.registerBeside(v, c) || r.tooLarge(v, c) {
		return false
	}
	var reach float64
	for z := range middles(c.FromMm, c.ToMm, stepMm) {
		for _, o := range stack {
			inner, _, ok := o.radii(me.Z(z))
			if o != me && ok && inner > c.RadiusMm()-overlapMm && inner < c.RadiusMm()*(1+spigotPart) {
				reach += stepMm
				break
			}
		}
	}
	if reach >= reachMm {
		return false
	}
	v.report(Check, c.Name, c.Drawn.Pos, Finding{
		What:    c.Name + " reaches into no register of its size",
		Numbers: r.mm(reach) + " of " + r.mm(c.LengthMm()) + " at " + r.mm(2*c.RadiusMm()) + ", wanted " + r.mm(reachMm), LeftMm: left(reach),
		Rule: "a fitted step at the face of a joint centres it", Fix: "a longer step, the size of the bore it goes into, or the part the other way round",
	})
	return true
}

// tooLarge tells whether a joint says already that a spigot is larger than its register.
func (r *reviewer) tooLarge(v *view, c *cylinder) bool {
	return slices.ContainsFunc(r.pl.Joints, func(j *plan.JointPlan) bool {
		return slices.ContainsFunc(j.Problems, func(p plan.Problem) bool {
			return p.Kind == plan.RegisterLarger && p.Ends[0].Part == v.p.Name.Value && p.Ends[0].Feature == c.Name
		})
	})
}

// registerOffMm is how far the middle of a spigot and of the hole it goes into may be drawn apart.
const registerOffMm = 0.5

// registers tells whether a hole of a part, off its middle, takes one of the steps of what a joint
// bolts there.
func registers(h *hole, steps []*cylinder, at *plan.Beside) bool {
	if h.group == nil || h.group.Size.Make != parts.PlainHole || h.group.Size.Size.Fit.Class.Value == "" || math.Hypot(h.a.XMm-at.XMm, h.a.YMm-at.YMm) >= registerOffMm {
		return false
	}
	radius := h.group.Size.Size.Nominal.Mm / 2
	return slices.ContainsFunc(steps, func(c *cylinder) bool { return radius > c.RadiusMm()-overlapMm && radius < c.RadiusMm()*(1+spigotPart) })
}

// registerBeside tells whether a step of a part goes into a hole off the middle of what it is bolted to.
func (r *reviewer) registerBeside(v *view, c *cylinder) bool {
	return slices.ContainsFunc(r.pl.Joints, func(j *plan.JointPlan) bool {
		return j.Beside != nil && j.A.Part == v.p.Name.Value && seq.At(r.viewOf(j.B.Part).holes, func(h *hole) bool { return registers(h, []*cylinder{c}, j.Beside) }) != nil
	})
}

// takesSpigot tells whether a group of holes of a part has a register of what is bolted there.
func (r *reviewer) takesSpigot(v *view, group string) bool {
	return slices.ContainsFunc(r.pl.Joints, func(j *plan.JointPlan) bool {
		return j.Beside != nil && j.B.Part == v.p.Name.Value && seq.At(v.holes, func(h *hole) bool { return h.name == group && registers(h, r.viewOf(j.A.Part).outside, j.Beside) }) != nil
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
			What: stud.p.Title.Value + " has no shoulder that stands against " + j.A.Title, Numbers: v.mm(wide) + " at a hole of " + v.mm(2*h.radiusMm),
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
		What: "nothing asks that the " + number(float64(stud.p.Quantity)) + " of " + stud.p.Title.Value + " are alike in length, and they hold " + j.A.Title + " parallel to " + j.B.Title, Numbers: stud.mm(body.LengthMm()) + " by general tolerances",
		Rule: "what keeps two plates apart is made to one length", Fix: "require: equal, within " + stud.mm(0.05) + ", of " + body.Name,
	})
}
