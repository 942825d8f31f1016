package joint

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/lookup"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// boltKind is a ring of bolts, screws or studs.
type boltKind struct{ plain }

func (boltKind) ends(s *shop, t *joint) {
	for _, f := range s.stack(t) {
		t.need(f, !f.onWall(), "a group of holes on its front or back")
	}
	for _, f := range []feature{t.a, t.b} {
		t.need(f, !f.onWall() || t.in.Stud() == "" && len(t.in.Bolt.Stack) == 0, "bolts there that clamp these two parts alone")
		t.need(f, !f.onWall() || f.r.Part.Bar == nil || t.in.Meet.Set() || t.in.Place != nil,
			"face: which faces meet, such as front-on-front; the front of the "+f.wallName()+" is its "+f.lookOf(parts.Front))
	}
	through := func(f feature) bool { return f.group != nil && f.group.Size.Thread == nil }
	t.need(t.a, through(t.a), "a group of clearance or plain holes, or of slots")
	t.need(t.b, t.b.group != nil, "a group of holes or slots")
	for _, f := range s.stack(t) {
		t.need(f, through(f), "a group of clearance or plain holes, or of slots")
	}
	s.boltFits(t)
}

// boltFits finds the bolt and checks it against the holes.
func (j *shop) boltFits(t *joint) {
	in := t.in.Bolt
	b, err := bolts.With(in.Size, in.Wide)
	if err != nil {
		t.refuse(in.Pos, plan.NoBolt, plan.Named(in.Size), plan.Named(t.w.Refused(err)))
		return
	}
	t.bolt, t.boltMm = &b, b.Thread.MajorMm
	if t.a.group == nil || t.b.group == nil {
		return
	}
	j.heldIn(t)
	for _, f := range append([]feature{t.a, t.b}, j.stack(t)...) {
		if f.group != nil && f.group.Size.Thread == nil && !f.passes(&b) {
			unit := plan.Diameter
			if f.slotted() {
				unit = plan.Mm
			}
			t.refuse(f.ref.Pos, plan.HoleTooSmall, plan.Named(f.text()), plan.Of(unit, f.group.Size.FinishedMm), plan.Named(b.Thread.Designation), f.holes())
		}
	}
}

// heldIn checks that the bolts are held in part B by its thread or by nuts, one of the two, and that it is theirs.
func (j *shop) heldIn(t *joint) {
	in, thread := t.in.Bolt, t.b.group.Size.Thread
	if thread != nil && thread.Designation != t.bolt.Thread.Designation {
		t.refuse(in.Pos, plan.OtherThread, plan.Named(t.bolt.Thread.Designation), plan.Named(t.b.text()), plan.Named(thread.Designation))
	}
	switch {
	case in.Stud.Value != "":
	case thread == nil && !in.Nut:
		t.refuse(in.Pos, plan.NoThreadNoNut, plan.Named(t.b.text()))
	case thread != nil && in.Nut:
		cure := "nut: no"
		if slices.ContainsFunc(j.job.Of(parts.BoltKind), func(o *parts.Joint) bool {
			return o.Bolt.Through.Part == t.b.ref.Part && o.Bolt.Through.Feature == t.b.ref.Feature
		}) {
			cure = "clearance holes: another joint has its bolts go through them"
		}
		t.refuse(in.Pos, plan.TappedWithNut, plan.Named(t.b.text()), plan.Named(cure))
	}
}

// passes tells whether a bolt goes through the holes of a group, or fits its slots.
func (f feature) passes(b *bolts.Bolt) bool {
	mm, least := f.group.Size.FinishedMm, b.Thread.MajorMm
	if !f.group.Size.Size.Fitted() {
		least *= leastHoleShare
	}
	return mm >= least && !(f.slotted() && geom.Over(b.SlotMm(), mm))
}

func (boltKind) title(t *joint) string { return "Bolt " + t.a.title() + " to " + t.b.title() }

func (boltKind) work(j *making, t *joint) {
	in, m := t.in.Bolt, t.meeting()
	a, b := j.patterns(t)
	if !j.match(t, a, b) || !t.open(m) {
		return
	}
	p := &plan.BoltPlan{
		Size: t.bolt.Thread.Designation, Class: in.Class, Head: in.Head, Count: len(a),
		PCDMm: t.a.group.Group.PCDMm, PlayMm: geom.Clean(2 * t.reachMm()),
	}
	t.out.Bolt = p
	t.bolts = j.slots(t, a, b)
	layer := func(f feature, mate parts.Face) bool {
		_, thick, _ := f.plane(mate)
		if thick = geom.Clean(thick - t.headsMm(f)); thick <= 0 {
			t.refuse(f.ref.Pos, plan.NoMetalToClamp, plan.Named(f.text()))
			return false
		}
		p.Grip = append(p.Grip, plan.GripRow{What: f.title(), ThickMm: thick})
		p.GripMm = geom.Clean(p.GripMm + thick)
		if f.r.Soft() {
			p.Soft = &p.Grip[len(p.Grip)-1]
		}
		return true
	}
	if !layer(t.a, m.First) {
		return
	}
	p.SunkMm = words.Round(t.headsMm(t.a)-t.a.group.SunkMm(), 3)
	if slices.ContainsFunc(j.stack(t), func(s feature) bool { return !layer(s, parts.Front) }) {
		return
	}
	tapped := t.b.group.Size.Thread != nil
	if !tapped && !layer(t.b, m.Second) {
		return
	}
	j.overHub(t, p)
	if f := seq.First(append(j.stack(t), t.a, t.b), feature.creeps); f.r != nil {
		p.Creeps = f.title()
	}
	if in.Stud.Value != "" {
		j.stud(t, p)
		if by := j.tiedBy(t); p.Spacer && by != nil {
			t.problem(plan.StudShut, plan.Named(p.Ordered), plan.Named(t.a.title()), plan.Named(t.b.title()), plan.Named(by.in.Name.Value))
		}
	} else if !j.chooseBolt(t, p, tapped) {
		return
	}
	j.oneBolt(t)
	j.headRoom(t, p)
	p.ComesOff, p.Behind = titles(j.comesOff(t)), j.behind(t)
	j.hollow(t)
	p.Order, p.OrderMm = tightening(t.a.group.Group.First, t.clocked(t.bolts))
	p.OrderDeg = seq.Map(p.OrderMm, geom.ClockDeg)
	t.shifts = j.setAlong(t)
	t.boltFigures(p)
	j.fitSmall(t)
	j.boltSteps(t, p, tapped)
	j.fitPassed(t)
}

// overHub puts into the grip how far a hub stands past its seat where the bolts hold an end plate that keeps it: that lies
// on the hub, not on the shaft.
func (j *making) overHub(t *joint, p *plan.BoltPlan) {
	hub := seq.First(j.before, func(o *joint) bool { return o.is(parts.SlideKind) && o.in.Slide.KeptBy.Is(t.in.Bolt.Into) })
	if hub != nil && hub.out.Slide != nil && hub.out.Slide.FreeMm < 0 {
		t.hub = hub
		past := geom.Clean(-hub.out.Slide.FreeMm)
		p.Grip = append(p.Grip, plan.GripRow{What: hub.a.title() + ", past its seat", ThickMm: past})
		p.GripMm = geom.Clean(p.GripMm + past)
	}
}

// oneBolt says that a part turns about a single bolt where no other joint holds it; what is round about that may turn.
func (j *making) oneBolt(t *joint) {
	if _, tied := j.side(t, without(j.all, t)); tied || len(t.bolts) > 1 {
		return
	}
	for _, f := range []feature{t.a, t.b} {
		if f.middled() && (!f.r.Part.Flat() || f.r.RoundMm("outline") != 0) && !geom.Over(f.points()[0].LengthMm(), 0) {
			return
		}
	}
	t.problem(plan.OneBolt, plan.Named(t.a.title()), plan.Named(t.b.title()))
}

// playUsed is the share of the play that the drawing may use up. Common practice,
// no source.
const playUsed = 0.4

// farthest is how far a hole of a lies from its nearest hole of b, at the worst.
func (r leeway) farthest(a, b []plan.XY) float64 {
	return seq.Max(0, a, func(q plan.XY) float64 {
		return seq.Least(b, func(o plan.XY) float64 { return r.offMm(q, o) })
	})
}

// spacing is the shortest distance of two holes of a that no two holes of b have within
// the reach, and what they have; equal where the holes are as far apart.
func spacing(a, b []plan.XY, reachMm float64) (mm, other float64) {
	between := func(points []plan.XY) (out []float64) {
		for i, p := range points {
			out = append(out, seq.Map(points[:i], func(q plan.XY) float64 { return geom.Distance(p, q) })...)
		}
		slices.Sort(out)
		return out
	}
	as, bs := between(a), between(b)
	for i := range as {
		if geom.Over(math.Abs(as[i]-bs[i]), reachMm) {
			return as[i], bs[i]
		}
	}
	return 0, 0
}

// match verifies that the two patterns, and those between, meet.
func (j *making) match(t *joint, a, b []plan.XY) bool {
	if len(a) != len(b) {
		t.refuse(t.in.Pos, plan.OtherCount, plan.Named(t.a.text()), plan.Named(words.Counted(len(a), t.a.place())), plan.Named(t.b.text()), plan.Of(plan.Number, float64(len(b))))
		return false
	}
	reach := j.leeway(t)
	if !meets(a, b, still, reach) {
		kind, args := j.misses(t, a, b, reach)
		t.refuse(t.in.Pos, kind, append([]plan.Arg{plan.Named(t.a.text()), plan.Named(t.b.text())}, args...)...)
		return false
	}
	for _, s := range j.stack(t) {
		of, at, run, room := t.a, a, reach.a, (t.a.group.Size.FinishedMm+s.group.Size.FinishedMm)/2-t.boltMm
		if t.b.group.Size.Thread != nil { // the threads say where the bolts are
			of, at, run, room = t.b, b, reach.b, (s.group.Size.FinishedMm-t.boltMm)/2
		} else if t.a.slotted() {
			of, at, run, room = t.b, b, reach.b, (t.b.group.Size.FinishedMm+s.group.Size.FinishedMm)/2-t.boltMm
		}
		if n := s.group.Group.Count; n < len(at) { // some bolts would go through no hole of it
			t.refuse(s.ref.Pos, plan.OtherCount, plan.Named(s.text()), plan.Named(words.Counted(n, s.place())), plan.Named(of.text()), plan.Of(plan.Number, float64(len(at))))
			return false
		}
		q, r := j.pattern(s), leeway{room, run, j.runIn(s)}
		if t.out.Beside != nil {
			q, r = j.laidOn(t, s, at, r)
		}
		if q == nil {
			continue
		}
		if !meets(at, q, still, r) {
			t.refuse(s.ref.Pos, plan.StackMisses, plan.Named(s.text()), plan.Named(of.text()), s.holes())
			return false
		}
		t.usesPlay(s, of, r.farthest(at, q), room)
	}
	t.usesPlay(t.a, t.b, reach.farthest(a, b), reach.mm)
	return true
}

// usesPlay notes that the drawing uses up too much of the room that the holes of one part have over those of another.
func (t *joint) usesPlay(f, of feature, off, room float64) {
	if geom.Over(off, playUsed*room) {
		t.problem(plan.PlayUsed, plan.Named(f.text()), plan.Of(plan.Mm, off), plan.Named(of.text()), plan.Of(plan.Mm, room), f.holes())
	}
}

// misses says what is wrong of two patterns that do not meet: the circle or the pitch, how the parts are turned, else
// by how much at the worst.
func (j *making) misses(t *joint, a, b []plan.XY, reach leeway) (plan.ProblemKind, []plan.Arg) {
	worst := []plan.Arg{plan.Of(plan.Mm, reach.farthest(a, b)), plan.Of(plan.Mm, geom.Clean(reach.mm)), t.a.holes()}
	if t.a.group.Pattern.AboutAxis() && t.b.group.Pattern.AboutAxis() {
		if ra, rb := geom.MeanRadiusMm(a), geom.MeanRadiusMm(b); geom.Over(math.Abs(ra-rb), reach.mm) {
			return plan.HolesMissCircle, append(worst, plan.Of(plan.Diameter, geom.Clean(2*ra)), plan.Of(plan.Diameter, geom.Clean(2*rb)))
		}
	} else {
		run := reach.mm + reach.a.LengthMm() + reach.b.LengthMm()
		mm, other := spacing(a, b, run)
		if mm == other && (t.beside != nil || !t.walls()) { // else nothing says how the slots lie to one another
			run = reach.mm
			mm, other = spacing(reach.across(a), reach.across(b), run)
		}
		if mm != other {
			return plan.HolesMissApart, []plan.Arg{plan.Of(plan.Mm, mm), plan.Of(plan.Mm, run), t.a.holes(), plan.Of(plan.Mm, other)}
		}
	}
	if ms := motions(a, b, reach, false); len(ms) > 0 && len(t.in.InLine) == 0 && t.in.Place == nil { // else a turn takes out of line what is in it, or is the place's own
		return plan.HolesMissTurn, append(worst, plan.Named(words.Trim(geom.OnClock(t.in.Rotate.Deg+j.way(t.b.Instance())*ms[0].turn), 3)))
	}
	return plan.HolesMiss, worst
}

// way is 1 for a part as it is drawn or without a place, −1 for one with its front the other way round.
func (j *assembly) way(i parts.Instance) float64 {
	if p := j.at(i); p != nil {
		return p.at.s
	}
	return 1
}

// open verifies that the bolts can go through A and into B at the faces that
// meet, and that their heads seat.
func (t *joint) open(m parts.Meeting) bool {
	for i, f := range []feature{t.a, t.b} {
		if _, thick, _ := f.plane([]parts.Face{m.First, m.Second}[i]); f.group.Size.Thread == nil && !f.group.Through && geom.Over(thick, f.group.Depth.Mm) {
			t.refuse(f.ref.Pos, plan.NotThrough, plan.Named(f.text()), plan.Of(plan.Mm, f.group.Depth.Mm), plan.Of(plan.Mm, geom.Clean(thick)))
			return false
		}
	}
	if into := t.b.group; into.Size.Thread != nil && !into.Through && into.Face != m.Second {
		t.refuse(t.in.Pos, plan.OpensElsewhere, plan.Named(t.b.text()), plan.Named(string(into.Face)), plan.Named(string(m.Second)))
		return false
	}
	t.seated(m.First)
	return true
}

// seated judges how the heads sit in part A, which meets with a face what they clamp.
func (t *joint) seated(mate parts.Face) {
	h := cmp.Or(t.a.group.Hole, &parts.HoleGroup{}) // a slot has no sink
	if (h.Counterbore != nil || h.Countersink != nil) && t.a.group.Face == mate {
		t.problem(plan.BoreSinkWrongSide, plan.Named(t.a.text()))
	}
	sunk := t.head() == bolts.Countersunk
	switch s, ok := t.bolt.Sunk(); {
	case !sunk && h.Countersink != nil:
		t.problem(plan.Countersunk, plan.Named(t.a.text()), plan.Named(t.in.Bolt.Head))
	case sunk && h.Countersink == nil:
		t.problem(plan.NoCountersink, plan.Named(t.a.text()), plan.Of(plan.Diameter, s.DiameterMm), plan.Of(plan.Degree, s.AngleDeg))
	case sunk && ok && t.headsMm(t.a) < -geom.CloseMm:
		t.problem(plan.SunkProud, plan.Named(t.a.text()), plan.Of(plan.Mm, -t.headsMm(t.a)), plan.Of(plan.Diameter, h.Countersink.Diameter.Mm), plan.Of(plan.Diameter, s.DiameterMm))
	}
}

// onFloor tells whether what opens on a face of a plate opens on the floor: the plate is anchored, and nothing
// is put to that face.
func (j *making) onFloor(plate feature, face parts.Face) bool {
	return j.job.Anchors(plate.ref.Part) && plate.r.Part.Flat() && !slices.ContainsFunc(j.all, func(o *joint) bool {
		m, placed := o.meeting(), o.in.Place
		return o.a.Instance() == plate.Instance() && m.First == face || o.b.Instance() == plate.Instance() && (placed == nil && m.Second == face || placed != nil && placed.On == string(face))
	})
}

func (j *making) chooseBolt(t *joint, p *plan.BoltPlan, tapped bool) bool {
	in := t.in.Bolt
	if !t.bolt.MadeWith(in.Class, bolts.Head(in.Head)) {
		t.problem(plan.SocketGrade, plan.Named(in.Head), plan.Named(in.Class))
	}
	joint := bolts.Joint{Head: bolts.Head(in.Head), GripMm: p.GripMm, Class: in.Class}
	shims := j.shimsMm(t)
	if tapped {
		joint.MoreMm = t.flangeMoreMm() + shims
	}
	if in.Washer {
		joint.HeadWashers, p.WasherMm = 1, t.bolt.WasherThicknessMm
		if !tapped {
			joint.NutWashers, p.NutWasherMm = 1, t.bolt.WasherThicknessMm
		}
	}
	joint.Hole = t.tappedHole()
	if tapped {
		joint.Hole.Shut = j.onFloor(t.b, t.meeting().Second.Other())
	}
	choice, err := t.bolt.ChooseLength(joint)
	if err != nil {
		t.refuse(in.Pos, plan.NoBoltChosen, plan.Named(t.w.Refused(err)))
		return false
	}
	p.NeedMm, t.strips = words.Round(choice.NeedMm, 2), choice.Strips
	for _, pr := range choice.HoleProblems {
		t.add(boltProblem(pr))
	}
	if c := choice.Chosen; c != nil {
		p.Ordered, p.LengthMm = c.Name, c.LengthMm
		p.EngagementMm, p.SpareMm, p.ProtrusionMm = words.Round(c.EngagementMm, 2), words.Round(c.SpareMm, 2), words.Round(c.ProtrusionMm, 2)
		if more := joint.MoreMm; more > 0 { // the thickness of a turned flange
			t.rely(relied{what: "the thread engaged in " + t.b.text(), mm: p.EngagementMm, less: more, wantMm: p.NeedMm, of: "the flange of " + t.a.title() + words.When(shims > 0, " and the shims under it")})
		}
		if c.FullThread {
			t.figure("thread", "to the head (metric hexagon: ISO 4017)", t.bolt.Source)
		}
	} else {
		t.add(plan.Problem{Kind: plan.NoStockLength, Args: []plan.Arg{plan.Named(p.Size)}, Because: nearestFaults(choice)})
	}
	return t.tighten(p, bolts.Tightening{Head: t.head(), Class: in.Class, Condition: t.friction(t.screwKind())})
}

// flangeMoreMm is how much thicker than drawn a turned flange may come that the bolts go through.
func (t *joint) flangeMoreMm() float64 {
	f := t.a
	z, thick, ok := f.plane(t.meeting().First)
	if !f.r.Part.Turned() || !ok {
		return 0
	}
	under := z - thick
	if t.meeting().First == parts.Front {
		under = z + thick
	}
	return moreMm(f.r, false, z, under)
}

// leastHoleShare is the least hole for a bolt that is not fitted to it, over its diameter. Common
// practice, no source: the fine holes of ISO 273 have 1.03 and more.
const leastHoleShare = 1.02

// nearestFaults says why the lengths around the range do not fit, at most four.
func nearestFaults(c bolts.Choice) []plan.Because {
	var out []plan.Because
	for _, k := range c.Candidates {
		if len(k.Problems) > 0 && len(out) < 4 {
			out = append(out, plan.Because{Name: k.Name, Problem: boltProblem(k.Problems[0])})
		}
	}
	return out
}

// tightening is a crosswise order: the second of each two is the farthest from the first,
// and each first one that from all tightened ones; of equals the farther from the latest,
// then the lowest number. Common practice, no source.
func tightening(first int, pts []plan.XY) (numbers []int, at []plan.XY) {
	var done []int
	for len(done) < len(pts) {
		best, most := -1, [2]float64{}
		for i, p := range pts {
			if slices.Contains(done, i) {
				continue
			}
			far := [2]float64{math.Inf(1), 0} // from all, from the latest
			for _, o := range done {
				far[1] = words.Round(geom.Distance(p, pts[o]), 6)
				far[0] = math.Min(far[0], far[1])
			}
			if len(done)%2 == 1 {
				far[0] = far[1]
			}
			if best < 0 || slices.Compare(far[:], most[:]) > 0 {
				best, most = i, far
			}
		}
		done = append(done, best)
		numbers, at = append(numbers, first+best), append(at, pts[best])
	}
	return numbers, at
}

func (t *joint) boltFigures(p *plan.BoltPlan) {
	layers := seq.Map(p.Layers(), func(g plan.GripRow) string { return g.What + " " + t.w.Size(g.ThickMm) })
	grip := words.Either(p.Spacer, strings.Join(layers, " at one end, ")+" at the other, each between shoulder and nut", t.w.Size(p.ClampedMm())+": "+strings.Join(layers, " + "))
	t.figure("grip", grip, "")
	if p.Ordered != "" {
		text := strconv.Itoa(p.Count) + " × " + p.Ordered
		text += words.When(p.Class != "", ", "+p.Class+", "+p.Head+" head")
		t.figure("bolts", text, t.bolt.SourceOf(t.head()))
		source := words.Either(t.strips, "thread as strong as the bolt: Machinery's Handbook, 24th edition, length of engagement", "rule of thumb by material")
		t.figure("engagement", t.w.Read(p.EngagementMm)+", "+t.w.Read(p.NeedMm)+" needed", source)
	}
	if p.SpareMm > 0 {
		t.figure("thread left below the end", t.w.Read(p.SpareMm), "")
	}
	if p.ProtrusionMm > 0 {
		t.figure("stands past the thread", t.w.Read(p.ProtrusionMm), "")
	}
	if p.TorqueNm != 0 {
		of := "0.75 of proof load, Shigley; scatter ±30 %, Bickford"
		if t.head() == bolts.Countersunk {
			of = "0.8 for the countersunk head, ISO 10642 and 14581, of " + of
		}
		if s := p.Seat; s != nil {
			of = words.Trim(100*s.Share, 0) + " % of what the bolt takes: more presses into " + s.What + ", which bears " + t.w.Stresses(s.MPa, s.MPa, 0) +
				" of " + s.Metal + " under heads and nuts, VDI 2230; scatter ±30 %, Bickford"
		}
		t.figure("preload wanted", t.w.Force(p.PreloadN, 1)+", scatter "+t.w.Forces(p.PreloadRangeN.Min, p.PreloadRangeN.Max, 1), of)
		t.figure("torque", t.w.Torque(p.TorqueNm)+" with K = "+words.Trim(p.K, 3)+", threads "+p.Threads+"; single bolts need "+
			t.w.Torques(p.TorqueRangeNm.Min, p.TorqueRangeNm.Max)+" for that preload", p.KSource)
		t.figure("torque, threads "+p.OtherThreads, t.w.TorqueAs(p.OtherTorqueNm, p.TorqueNm), "the same preload")
	}
	for i := range p.Shifts {
		t.figure("to be shifted", t.shiftText(i)+", from the place drawn", "slots as drawn, the play left out")
	}
	t.figure("play of the pattern", t.w.Read(p.PlayMm), "holes less bolt")
}

// allByHand is how many are started by hand, and under what washer.
func (t *joint) allByHand(p *plan.BoltPlan) (all, under string) {
	all = words.Either(p.Count == 1, "By hand ", "All "+strconv.Itoa(p.Count)+" by hand ")
	return all, words.When(t.in.Bolt.Washer, ", "+t.washer()+" under ")
}

func (t *joint) washer() string { return words.Either(t.in.Bolt.Wide, "a wide washer", "a washer") }

// setStuds puts studs with shoulders through the part that stands: between two parts that stand already none
// goes in. It says what goes on each of their ends.
func (t *joint) setStuds(p *plan.BoltPlan) string {
	all, _ := t.allByHand(p)
	nuts := words.When(t.in.Bolt.Washer, t.washer()+" and ") + "a nut on each."
	t.step("Set the studs", all+"through "+t.b.title()+", up to their shoulders, "+nuts, t.ends)
	return nuts
}

// startBolts puts the bolts in by hand, or the studs that do not stand yet with a nut at each end.
func (j *making) startBolts(t *joint, p *plan.BoltPlan, tapped bool) {
	a, b := t.a.title(), t.b.title()
	a += words.When(len(t.in.Bolt.Stack) > 0, ", "+j.between(t))
	all, wash := t.allByHand(p)
	switch stud := t.in.Stud() != ""; {
	case stud && p.Spacer && !tapped: // they stand
		return
	case stud && tapped:
		t.step("Start the nuts", all+"on the studs, over "+a+words.When(wash != "", wash+"each")+".", "Force none.")
		return
	case stud:
		t.step("Start the studs", all+"through "+a+" and "+b+", a nut on each end"+words.When(wash != "", wash+"it")+".", t.ends, "Force none.")
		return
	case wash != "":
		wash += words.Either(tapped, "each head", "each head and nut")
	}
	into := words.Either(!tapped, "with nuts on "+b, "into "+b)
	s := t.step("Start the bolts", all+"through "+a+" "+into+wash+".", "Force none.")
	if by := j.tiedBy(t); by != nil && by.is(parts.BoltKind) {
		s.Do = append(s.Do, "They were started when "+by.a.title()+" came to "+by.b.title()+": see that none is missing.")
	}
	if len(p.Shifts) > 0 && j.setBefore(t) {
		s.Do = append(s.Do, "Earlier steps hold "+t.a.title()+" and "+t.b.title()+" to one another already: nothing is set along the slots here.")
		return
	}
	for i := range p.Shifts {
		set, most := "Set "+t.shifts.title()+" at the place drawn, as far as nothing asks for another: from there it", t.in.Bolt.Adjust
		after := "."
		if belt := j.beltLater(t); belt != "" {
			set, after = "From the place drawn "+t.shifts.title(), "; it is set there when "+belt+" is on."
		}
		far := words.When(most.Set() && geom.Over(min(p.Shifts[i].Mm, p.Shifts[i].BackMm), most.Mm), ", and may be by "+t.w.Said(most.Mm)+" at most")
		s.Do = append(s.Do, set+" can be shifted "+t.shiftText(i)+far+after)
	}
}

func (j *making) boltSteps(t *joint, p *plan.BoltPlan, tapped bool) {
	c := t.closing(p)
	over := "."
	switch stud := t.in.Stud() != ""; {
	case stud && tapped:
		j.screwIn(t, p)
		c.each = "each nut"
	case stud && p.Spacer:
		over = ", over the studs, " + t.setStuds(p)
	}
	title, do := "Offer up", []string{"Clean " + c.clean + ", no burrs, no paint. Put together: " + ofPlace + over}
	if _, tied := j.side(t, j.before); tied {
		title, do[0] = "See that it lies", words.Capital(t.a.title())+" came to "+t.b.title()+" with an earlier step: "+ofPlace+". See that it is so"+
			words.When(!p.Spacer, ", and nothing "+words.When(len(t.in.Bolt.Stack) > 0, "else ")+"lies between the two faces")+"."
	}
	too := j.closesToo(t)
	if too != "" {
		do = append(do, "The faces "+too+" close here too: clean them as well.")
	}
	s := t.step(title, do...)
	if len(t.out.InLine) > 0 {
		lines := seq.Map(t.out.InLine, func(l plan.InLine) string { return l.What + " at " + words.Angle(l.Deg) })
		s.Hold = "In line: " + strings.Join(lines, "; ") + "."
	}
	j.startBolts(t, p, tapped)
	if too != "" {
		s := &t.out.Steps[len(t.out.Steps)-1]
		s.Do = append(s.Do, "Start those "+too+" too, before any is pulled tight: what is tight keeps the others out.")
	}
	if off := j.sweepNow(t); off != nil {
		j.sweep(t, off)
	}
	if !j.waits(t) {
		j.tighten(t, p, c)
	}
	j.dowels(t)
	j.shimSteps(t)
}

// tighten pulls the bolts of a joint, and those of the joints that wait for it, and asks for what shows that they are tight.
func (j *making) tighten(t *joint, p *plan.BoltPlan, c closing) {
	with, gauge := j.tightenWith(t, p)
	at := []*joint{t}
	last, all := j.atOnce(t)
	if last != nil {
		at, all = last, "at both ends of "+all
	}
	loose := words.When(last != nil, "All "+all+", that are loose till now: each round through all of them.")
	s := t.step("Tighten", slices.Concat([]string{loose, j.throughBoth(t, p)}, j.order(t, p), t.rounds(p), []string{j.holdsRound(t), with})...)
	s.Hold = c.shut
	each := map[float64]bool{0: true}
	for _, o := range at {
		if p := o.out.Bolt; !each[p.TorqueNm] {
			each[p.TorqueNm] = true
			t.out.Checks = append(t.out.Checks, plan.Check{
				What: "torque", Wanted: t.w.Torque(p.TorqueNm), Limits: words.Join(", ", c.each, all, "threads "+p.Threads, "K = "+words.Trim(p.K, 3)+" assumed"),
				Gauge: gauge, Source: lookup.Told(p.KSource),
			})
		}
	}
	t.out.Checks = append(t.out.Checks, plan.Check{What: c.gap, Wanted: c.wanted, Limits: words.Join(", ", c.limits, all), Gauge: "feeler", Source: lookup.NoSource})
}

// closesToo names what closes between the same faces as a bolted joint.
func (j *making) closesToo(t *joint) string {
	var closed []string
	for _, o := range j.closedBy(t) {
		with := ""
		if len(o.in.Bolt.Stack) > 0 {
			with = " over " + j.between(o)
		}
		a, b := o.a.title(), o.b.title()
		if with == "" && a == t.a.title() && b == t.b.title() { // the same two again: by their holes
			a, b = o.a.text(), o.b.text()
		}
		closed = seq.Add(closed, "of "+a+" and "+b+with)
	}
	return strings.Join(closed, ", ")
}

// order says in which order bolts are tightened: of studs that hold two plates apart the nuts of both ends, one after the other.
func (j *making) order(t *joint, p *plan.BoltPlan) []string {
	numbers := func(order []int) string { return strings.Join(seq.Map(order, strconv.Itoa), ", ") }
	if len(p.Order) < 2 {
		return nil
	}
	if p.Spacer && p.StudStandsMm == 0 {
		a, b := j.patterns(t)
		far := seq.Map(p.Order, func(n int) int {
			at := a[n-t.a.group.Group.First]
			return t.b.group.Group.First + slices.IndexFunc(b, func(q plan.XY) bool {
				return geom.Distance(at, q) == seq.Least(b, func(o plan.XY) float64 { return geom.Distance(at, o) })
			})
		})
		s := j.studded(t)
		return []string{"First the nuts on " + t.b.title() + ", all rounds, order " + numbers(far) + ", each stud held by " + s.holds(t.w) + "; then those on " +
			t.a.title() + ", order " + numbers(p.Order) + " (" + t.a.place() + " numbers of each)."}
	}
	return []string{"Order " + numbers(p.Order) + " (" + t.a.place() + " numbers of " + t.a.title() + ")."}
}

// holdsRound says by what a round part is held that turns with the one screw in its axis; empty where other joints hold it.
func (j *making) holdsRound(t *joint) string {
	f := t.b
	if len(t.bolts) != 1 || t.in.Stud() != "" || t.tappedHole() == nil || f.r.Part.Flat() || len(j.members(f.Instance(), j.before)) > 1 || geom.Over(f.points()[0].LengthMm(), 0) {
		return ""
	}
	hold := "Meanwhile hold " + f.title() + ", which is round and turns with the screw, "
	if flats := seq.At(f.r.Flats, func(q *part.Flats) bool { return q.In.Sides.Value > 1 && q.In.Sides.Value < 8 }); flats != nil {
		return hold + "by a spanner " + t.w.Size(flats.In.Across.Mm) + " on " + words.Spaced(flats.In.Name.Value) + "."
	}
	steps := seq.Keep(f.r.Side(false), func(s *part.Step) bool { return s.Size.Thread == nil })
	rough := seq.Keep(steps, func(s *part.Step) bool { return !s.Size.Fitted() })
	if len(rough) > 0 {
		steps = rough
	}
	if len(steps) == 0 {
		return ""
	}
	widest := slices.MaxFunc(steps, func(a, b *part.Step) int { return cmp.Compare(a.Size.NominalMm, b.Size.NominalMm) })
	strap := widest.LengthMm() >= strapWideMm && t.out.Bolt.TorqueNm <= strapNm
	return hold + words.When(strap, "by a strap wrench or ") + "in lined vice jaws on " + words.Spaced(widest.Name) + "."
}

// A strap wrench holds on so long a round, and against so much. Common practice, no source.
const strapWideMm, strapNm = 25.0, 40.0

// rounds are the words of tightening: to what in each round.
func (t *joint) rounds(p *plan.BoltPlan) (do []string) {
	again := words.Either(len(p.Order) > 1, "then round once more.", "then once more.")
	switch round := func(part float64) string { return t.w.TorqueAs(p.TorqueNm*part, p.TorqueNm) }; {
	case p.TorqueNm != 0:
		return append(do, "First "+round(0.3)+", second "+round(0.7)+", third "+round(1)+", "+again,
			"That is for threads "+p.Threads+"; "+p.OtherThreads+" they take "+t.w.TorqueAs(p.OtherTorqueNm, p.TorqueNm)+".")
	case p.Soft != nil:
		return append(do, "Round by round, each a little tighter, until "+p.Soft.What+
			" is compressed as its maker says, alike at every bolt. No torque is worked out: what the screws stand is no measure of what a soft gasket does. It settles: once more the next day (common practice, no source).")
	case p.Creeps != "":
		return append(do, "Round by round, each a little tighter, until the joint is closed, and no further. No torque is worked out: "+p.Creeps+
			" is of a plastic, which gives way and creeps under what the screws stand. It settles: once more the next day (common practice, no source).")
	}
	return append(do, "Three rounds, each a little tighter.")
}

// closing is what a bolted joint is when it is tight: what meets, on what each torque is, and how that is seen.
type closing struct{ clean, each, shut, gap, wanted, limits string }

// evenShare of its thickness is what a soft gasket may differ by from bolt to bolt. Common practice, no source.
const evenShare = 0.1

func (t *joint) closing(p *plan.BoltPlan) closing {
	c := closing{"both faces", "each bolt", "Joint closed: no feeler of " + t.w.Near(0.05) + " enters anywhere round.", "joint gap", "closed", t.w.Near(0.05) + " feeler does not enter"}
	switch {
	case p.Soft != nil:
		c.gap, c.wanted = p.Soft.What+", face to face", "what its maker says, of "+t.w.Size(p.Soft.ThickMm)+" free"
		c.limits = "alike at every bolt within " + t.w.Near(evenShare*p.Soft.ThickMm)
		c.shut = "Face to face over " + p.Soft.What + " " + c.limits + "."
	case p.Spacer: // the faces stand apart by the shoulders
		c.clean, c.each, c.shut, c.gap = "both faces and the shoulders of the studs", "each nut", "No feeler of "+t.w.Near(0.05)+
			" enters between a shoulder and its face, at both ends of each stud.", "gap at the shoulders"
	case t.hub != nil:
		c.gap, c.limits = t.a.title()+" on "+t.hub.a.title(), c.limits+" between them"
		c.shut = t.a.title() + " lies on " + t.hub.a.title() + ", off the end of " + t.b.title() + ": a " + c.limits + "."
	case !t.a.turned() || !t.b.turned(): // rolled, drawn or folded faces are no closer between the bolts than they are flat
		c.limits = t.w.Near(closedMm) + " feeler does not enter beside a bolt"
		c.shut = "Joint closed: a " + c.limits + "."
	}
	return c
}

// creeps tells whether a part is of a plastic.
func (f feature) creeps() bool { return f.r.Nonmetal != nil && f.r.Nonmetal.Kind == material.Plastic }

// turned tells whether the faces of a part come from the lathe, and not from the mill, the
// folder or the saw as those of a plate, a bar or a tube do.
func (f feature) turned() bool { return f.r.Part.Turned() && f.r.Part.Kind != parts.Tube }
