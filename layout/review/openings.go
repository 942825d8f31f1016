package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// openRules looks for openings in the outside that open onto nothing or onto
// the wrong thing.
func (v *view) openRules(f *parts.Radial) {
	z := v.axialMm(f)
	if radiusAt(v.inside, z) == 0 {
		v.turnedSlot(f)
		return
	}
	v.stopsInWall(f, z)
	v.overSeat(f, z)
	v.highDrain(f, z)
	v.lowCup(f)
	v.bareNipple(f, z)
	v.tooMuchRound(f, z)
}

// stopsInWall finds holes, and slots for an opening, that stop in the wall of
// a hollow part.
func (v *view) stopsInWall(f *parts.Radial, z float64) {
	wall := v.wallAt(z)
	if f.Shape != parts.RadialHole && !f.For.Opens() || f.Through || !geom.Over(wall, f.Depth.Mm) {
		return
	}
	if _, tip := v.radialDrillMm(f); !f.For.Opens() && geom.Over(tip, wall) { // radialDepth has it
		return
	}
	v.report(Check, f.Name.Value, f.Depth.Pos, Finding{
		What: f.Name.Value + " ends in the wall and does not open inside", Numbers: v.mm(f.Depth.Mm) + " deep in a wall of " + v.mm(wall), LeftMm: left(f.Depth.Mm),
		Rule: "a port, vent or drain opens into the bore", Source: "by geometry", Fix: "depth: through, or accept it for a locating hole",
	})
}

// stopsInMetal finds holes for grease, a drain or the like in a face or a side that meet no bore and no other hole.
func (v *view) stopsInMetal(g *parts.HoleGroup) {
	if g.For.Opens() && !g.Through && v.machine().InMetal(v.p.Name.Value, g.Name.Value) {
		v.report(Check, g.Name.Value, g.Depth.Pos, Finding{
			What: g.Name.Value + " ends in the metal and opens into nothing", Numbers: v.mm(g.Depth.Mm) + " deep", LeftMm: left(g.Depth.Mm),
			Rule: "what is for grease, or to run out, opens into the bore or hole that it is for", Source: "by geometry", Fix: "a deeper hole, or another place",
		})
	}
}

// overSeat finds openings that come out in the seat of a bearing or of a
// spigot.
func (v *view) overSeat(f *parts.Radial, z float64) {
	half := words.Either(f.Shape == parts.RadialHole, v.radialHoleMm(f)/2, f.Along.Mm/2)
	for _, c := range v.inside {
		blind := !f.Through && geom.Over(radiusAt(v.outside, z)-c.RadiusMm(), f.Depth.Mm)
		if blind || c.Seat == "" || !fine(c.Drawn.Size.Fit, 9) || !c.Span().Meets(geom.Around(z, half)) || v.goesOnIn(f, c) {
			continue
		}
		v.report(Stop, f.Name.Value, f.Pos, Finding{
			What:    f.Name.Value + " comes out in the seat " + c.Name,
			Numbers: "it runs from " + v.mm(z-half) + " to " + v.mm(z+half) + " from the front face, " + c.Name + " from " + v.mm(c.FromMm) + " to " + v.mm(c.ToMm),
			Rule:    "what sits in a seat covers an opening there, and an edge cuts it", Source: "by geometry", Fix: "move it along the axis",
		})
	}
}

// goesOnIn tells whether a press brings a hole of what it puts into a seat in line with an opening there.
func (v *view) goesOnIn(f *parts.Radial, seat *cylinder) bool {
	return slices.ContainsFunc(v.job.Of(parts.PressKind), func(j *parts.Joint) bool {
		return j.Press.Bore.Part == v.p.Name.Value && j.Press.Bore.Feature == seat.Name && slices.ContainsFunc(j.InLine, func(l parts.LineRule) bool {
			own := func(r parts.JointRef) bool { return r.Part == v.p.Name.Value && r.Feature == f.Name.Value }
			its := func(r parts.JointRef) bool { return r.Part == j.Press.Shaft.Part }
			return slices.ContainsFunc(l.Refs, own) && slices.ContainsFunc(l.Refs, its)
		})
	})
}

// nippleThreads are those that grease nipples are sold with: IS 4009-2:1981 table 1 for the metric ones; of pipe and inch
// threads from memory, DIN 71412 and SAE J534.
var nippleThreads = []string{"M6", "M8x1", "M10x1", "M16x1.5", "G1/8", "G1/4", "Rc1/8", "Rc1/4", "1/8-27 NPT", "1/4-18 NPT", "1/4-28 UNF"}

// bareNipple finds holes for a grease nipple without its thread, or with one that none is sold with; one in what is pressed into a bore there only goes on
// from the hole of its housing.
func (v *view) bareNipple(f *parts.Radial, z float64) {
	pressed := func(j *parts.Joint) bool {
		s := j.Press.Shaft
		return s.Part == v.p.Name.Value && slices.ContainsFunc(v.outside, func(c *cylinder) bool { return c.Name == s.Feature && c.FromMm <= z && z <= c.ToMm })
	}
	if f.For != parts.Grease || slices.ContainsFunc(v.job.Of(parts.PressKind), pressed) {
		return
	}
	if t := radialThread(f); t != nil {
		if !slices.Contains(nippleThreads, t.Designation) {
			v.report(Check, f.Name.Value, f.Pos, Finding{
				What: f.Name.Value + " has a thread that no grease nipple has", Numbers: t.Designation + "; nipples have " + strings.Join(nippleThreads, ", "),
				Rule: "a grease nipple is screwed in", Source: "IS 4009-2:1981 table 1; DIN 71412 and SAE J534, from memory", Fix: "the thread of the nipple, or accept it for an adapter",
			})
		}
		return
	}
	v.report(Check, f.Name.Value, f.Pos, Finding{
		What: f.Name.Value + " has no thread for its nipple", Rule: "a grease nipple is screwed in", Fix: "a tapped hole, or accept it for a nipple that is driven in",
	})
}

// highDrain finds drains of which none lies in the lower half of the part as it stands in
// the machine: below its axis, or out of its upper third where the axis is upright.
func (v *view) highDrain(f *parts.Radial, z float64) {
	if f.For != parts.Drain {
		return
	}
	pose, up := v.stands()
	upright := math.Abs(pose.Z.Dot(up)) > 0.5
	highest := words.Either(upright, 1.0/6, -geom.CloseMm)
	if slices.ContainsFunc(f.Clock, func(c parts.Angle) bool {
		at := pose.Turn(assembly.Clock(1, c.Deg).Add(assembly.AxisZ.Times((v.lengthMm/2 - z) / v.lengthMm)))
		return at.Dot(up) < highest
	}) {
		return
	}
	found := Finding{
		What: f.Name.Value + " lies in the upper half", Numbers: "at " + number(f.Clock[0].Deg) + "° from TOP", Rule: "a drain lies at the lowest point",
		Source: practice, Fix: "clock: 180",
	}
	if upright {
		found.Numbers, found.Fix = v.mm(z)+" from the front of "+v.mm(v.lengthMm), "near the end that is down"
	}
	v.report(Check, f.Name.Value, f.Pos, found)
}

// stands is how the first copy of a part lies in the machine, and which way is up there; as it is drawn where it has no place.
func (v *view) stands() (pose assembly.Pose, up assembly.Vec) {
	if b := v.bodyOf(v.p.Name.Value); b != nil {
		return b.Pose, v.machine().Up
	}
	return assembly.Still, assembly.AxisY
}

// lowCup finds cups of oil that hang from the lower half of the part as it stands in the machine.
func (v *view) lowCup(f *parts.Radial) {
	pose, up := v.stands()
	for _, c := range f.Clock {
		if oilCup().MatchString(f.Fitted.Value+" "+f.Note.Value) && pose.Turn(assembly.Clock(1, c.Deg)).Dot(up) < -geom.CloseMm {
			v.report(Check, f.Name.Value, f.Pos, Finding{
				What: "the oil cup of " + f.Name.Value + " hangs upside down", Numbers: "at " + number(c.Deg) + "° from TOP",
				Rule: "oil runs down out of its cup", Source: "by geometry", Fix: "clock: in the upper half, or a grease nipple",
			})
		}
	}
}

// tooMuchRound finds openings that leave too little of the round standing.
func (v *view) tooMuchRound(f *parts.Radial, z float64) {
	const most = 0.75
	round := 2 * math.Pi * radiusAt(v.outside, z)
	open := float64(len(f.Clock)) * f.Around.Mm
	if round == 0 || open <= most*round {
		return
	}
	v.report(Check, f.Name.Value, f.Pos, Finding{
		What: f.Name.Value + " leaves little of the round standing", Numbers: v.mm(open) + " of " + v.mm(round) + " cut away", OverMm: over(open),
		Rule: "openings take at most three quarters of the round", Fix: "narrower openings",
	})
}

// turnedSlot finds keyways that lie round the shaft instead of along it, and
// ones that are cut along a thread.
func (v *view) turnedSlot(f *parts.Radial) {
	step := at(v.outside, v.axialMm(f))
	if f.Shape != parts.RadialSlot || step == nil {
		return
	}
	common := v.here(f.Name.Value, f.Pos)
	common.Rule, common.Source = "a key lies along its seat", "DIN 6885-1"
	v.firstOf(common,
		flaw{geom.Over(f.Around.Mm, f.Along.Mm) && step.fitted(), Finding{
			What: f.Name.Value + " lies round the shaft", Numbers: v.mm(f.Around.Mm) + " round and " + v.mm(f.Along.Mm) + " along", Fix: "exchange around and along"}},
		flaw{step.threaded() && geom.Over(f.Along.Mm, 2*step.RadiusMm()), Finding{
			What: f.Name.Value + " is cut along the thread " + step.Name, Numbers: v.mm(f.Along.Mm) + " long in a thread of " + v.mm(2*step.RadiusMm()),
			Fix: "move it along the axis: is it measured from the right face?"}},
	)
}

// covered looks for openings in a tube or shaft that a part on it closes.
func covered(r *reviewer) {
	done := map[string]bool{}
	for _, j := range r.planned(parts.PressKind) {
		v, tube, ring := r.viewOf(j.A.Part), r.machine().At(j.A), r.machine().At(j.B)
		if tube == nil || ring == nil {
			continue
		}
		on := stand.On(tube.Pose, ring, r.machine().PartOf(ring.ID)).Whole()
		for _, o := range v.openings() {
			lo, hi := o.zMm-o.alongMm, o.zMm+o.alongMm
			if done[v.p.Name.Value+o.radial.Name.Value] || !on.Meets(geom.Span{FromMm: lo, ToMm: hi}) || o.opensPast(tube, ring, on) {
				continue
			}
			done[v.p.Name.Value+o.radial.Name.Value] = true
			v.report(Stop, o.radial.Name.Value, o.radial.Pos, Finding{
				What:    o.radial.Name.Value + " lies under " + j.B.Title,
				Numbers: "it runs from " + r.mm(lo) + " to " + r.mm(hi) + " from the front face, " + j.B.Title + " from " + r.mm(on.FromMm) + " to " + r.mm(on.ToMm),
				Rule:    "an opening is free when the parts are joined", Source: "by geometry", Fix: "move it along the axis",
			})
		}
	}
}

// opensPast tells whether no metal of what is round a tube, on a stretch of its axis, lies over the middle of an opening, or
// over what is nearest to that where only its end lies there.
func (o *opening) opensPast(tube, ring *assembly.Body, on geom.Span) bool {
	const inMm = 0.05 // into the ring, and off its bore
	at := assembly.Clock(o.outerMm+inMm, o.clockDeg)
	at.Z = -min(max(o.zMm, on.FromMm+inMm), on.ToMm-inMm)
	out := tube.Pose.Turn(assembly.ClockWay(o.clockDeg))
	return len(assembly.Crossings([]assembly.Body{*ring}, tube.Pose.Apply(at), out)) == 0
}

// branchOpening looks for a branch with no opening under it.
func (r *reviewer) branchOpening(p *parts.Part, end *parts.TubeEnd, main *view, z, near float64) {
	r.narrowOpening(p, end, main, z)
	if !math.IsInf(near, 1) || len(main.q.Radials) == 0 {
		return
	}
	r.add(Finding{
		Part: p.Name.Value, Pos: end.Place.Pos, What: "no opening in " + main.p.Title.Value + " lies under " + p.Title.Value,
		Numbers: "the branch stands " + r.mm(z) + " from the front face at " + number(end.Place.Clock.Deg) + "°",
		Rule:    "a branch opens into its tube", Source: "by geometry", Fix: r.branchCure(end, main, z),
	})
}

// branchCure says where the opening under a branch is wanted, z from the front of its main.
func (r *reviewer) branchCure(end *parts.TubeEnd, main *view, z float64) string {
	return "the opening in " + main.p.Title.Value + " at clock: " + number(end.Place.Clock.Deg) + ", " + r.mm(z) + " from its front or " +
		r.mm(main.lengthMm-z) + " from its back; or place: of the branch where the opening is"
}

// openShare is the least part of a branch's bore that the opening under it
// leaves open. Common practice, no source: what is left is cut out to the
// template of the branch by hand.
const openShare = 0.4

// narrowOpening finds an opening under a branch that leaves most of its bore
// closed.
func (r *reviewer) narrowOpening(p *parts.Part, end *parts.TubeEnd, main *view, z float64) {
	section := r.pl.Part(p.Name.Value).Section
	bore, _, ok := midRadii(section)
	if !ok {
		return
	}
	for _, row := range main.q.Radials {
		if row.Shape == string(parts.RadialHole) || math.IsInf(offBranch(row, z, end.Place.Clock.Deg, section.MaxMm), 1) {
			continue
		}
		if open := row.AroundMm * row.AlongMm; open < openShare*math.Pi*bore*bore {
			r.add(Finding{
				Part: p.Name.Value, Pos: end.Place.Pos, What: row.Name + " of " + main.p.Title.Value + " leaves " + p.Title.Value + " half closed",
				Numbers: r.mm(row.AroundMm) + " by " + r.mm(row.AlongMm) + " under a bore of " + r.mm(2*bore), LeftMm: left(math.Min(row.AroundMm, row.AlongMm)),
				Rule: "what comes through a branch passes the opening under it", Fix: "a larger opening",
			})
		}
	}
}
