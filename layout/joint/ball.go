package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// ballKind is a deep-groove ball bearing on its shaft and in its housing. Its rings do not come apart: it is pressed
// whole, by the ring that is tight on what it goes on.
type ballKind struct{ bearingKind }

func (ballKind) ends(_ *shop, t *joint) {
	t.need(t.a, round(t.a, false), "the shaft step that takes the inner ring")
	t.need(t.b, round(t.b, true), "the bore that takes the outer ring")
}

func (ballKind) title(t *joint) string {
	return "Ball bearing " + t.in.Bearing.Bearing.Value + ": " + t.a.title() + " in " + t.b.text()
}

func (ballKind) buy(_ *shop, t *joint, list *buying) {
	list.use(t, "Deep-groove ball bearing "+t.in.Bearing.Bearing.Value, 1, words.When(t.out.Bearing.Sealed, "sealed, with its grease"))
}

// pairs tells whether a joint is of a ball bearing and between the same two parts as another.
func (t *joint) pairs(o *joint) bool {
	return t.is(parts.BearingKind) && t.in.Bearing.Ball && t.joins(o)
}

// behind tells whether another bearing of the shaft lies in the same bore, nearer to its shoulder.
func (t *joint) behind(o *joint) bool {
	if o == t || t.refused() || o.refused() || o.a.step == nil || !t.pairs(o) || o.b.step != t.b.step {
		return false
	}
	return slices.ContainsFunc([]float64{1, -1}, func(dir float64) bool {
		return shoulder(t.b, dir) != nil && geom.Over(dir*t.sense()*o.a.step.MidMm(), dir*t.sense()*t.a.step.MidMm())
	})
}

// second tells whether another bearing between the same two parts lies on the same step of the shaft, nearer to its shoulder.
func (t *joint) second(o *joint) bool {
	if o == t || !t.pairs(o) || !o.pairs(t) || o.a.step != t.a.step {
		return false
	}
	m, _ := t.ballMount()
	way := t.sense() * m.coneDir
	return geom.Over(way*o.b.step.MidMm(), way*t.b.step.MidMm())
}

// place puts the shaft's shoulder against the face of a bearing that stands on that of the housing.
func (ballKind) place(t *joint) (placement, bool) {
	m, ok := t.ballMount()
	s, face := t.sense(), m.cupBackMm
	if s*m.coneDir != m.cupDir {
		face -= m.cupDir * t.in.Bearing.Width.Mm
	}
	return t.set(face, m.coneBackMm, s), ok && m.fixed != nil && !t.in.Meet.Set()
}

func (ballKind) work(j *making, t *joint) {
	p, ok := t.goesOn()
	if !ok {
		return
	}
	t.seats(p)
	t.ballAbutments(p)
	m, _ := t.ballMount()
	m = j.ballLies(t, p, m)
	t.judgeBall(p, m)
	t.heats(p)
	if !p.Sealed {
		p.GreaseG, p.Ports = greaseGrams(t.in.Bearing), j.greasePorts(t.b)
	}
	j.ballSteps(t, p, m)
	t.ballFigures(p)
	j.located(t, p)
}

// ballLies says in the plan where the bearing stands: on the shoulder of the housing, or of the shaft where that has none or
// the other comes first, or in the middle of its bore; and how it sits, without a shoulder of the shaft that it does not reach.
func (j *making) ballLies(t *joint, p *plan.BearingPlan, m mounting) mounting {
	housing, shaft := j.at(t.b.Instance()).at, j.at(t.a.Instance()).at
	if m.fixed != nil && m.cupShoulder != nil {
		way := housing.way(m.cupDir)
		apart := way * (housing.z0 + housing.s*m.cupBackMm - shaft.z0 - shaft.s*m.coneBackMm)
		if m.floats = geom.Over(apart, 0); way != shaft.way(m.coneDir) { // the ring that is tight stays at its shoulder
			m.floats = geom.Over(apart, p.WidthMm) && tight(p.ConeFitUm) && !tight(p.CupFitUm)
		}
	}
	switch {
	case m.cupDir != 0 && !m.floats:
		p.CupBackMm, p.LargeEndDir = housing.z0+housing.s*m.cupBackMm, -housing.way(m.cupDir)
	case m.coneDir != 0:
		p.CupBackMm, p.LargeEndDir = shaft.z0+shaft.s*m.coneBackMm, -shaft.way(m.coneDir)
	default:
		p.CupBackMm, p.LargeEndDir = housing.z0+housing.s*(t.b.step.MidMm())-housing.s*p.WidthMm/2, housing.s
	}
	p.CupBackMm = geom.Clean(p.CupBackMm)
	p.LargeEndMm = geom.Clean(p.CupBackMm + p.LargeEndDir*p.WidthMm)
	p.LargeEnd = faceName(shaft.way(p.LargeEndDir))
	said := func(o *joint) bool {
		n, held := o.ballMount()
		return o.in.Place != nil || o.in.Meet.Set() || held && n.fixed != nil
	}
	other := slices.ContainsFunc(j.carrying(t), func(o *joint) bool { return o != t && (!o.in.Bearing.Ball || said(o)) })
	if !said(t) && !other {
		t.problem(plan.RingNowhere, plan.Named(t.a.text()), plan.Named(t.b.text()))
	}
	if at := shaft.z0 + shaft.s*m.coneBackMm; min(math.Abs(at-p.CupBackMm), math.Abs(at-p.LargeEndMm)) > agreeMm {
		m.coneDir, m.fixed = 0, nil
	}
	return m
}

// shoulderHigh is how high a shoulder is at the least for the chamfer of its ring, mm: in light series and in others.
// DIN 5418, from memory; the rows of 0.6 and 1 mm agree with makers' da and Da of 6300, 6301 and a bearing 25 × 52.
var shoulderHigh = []struct{ chamferMm, lightMm, mm float64 }{
	{0.3, 1, 1.2}, {0.6, 1.6, 2.1}, {1, 2.3, 2.8}, {1.1, 3, 3.5}, {1.5, 3.5, 4.5}, {2, 4.4, 5.5}, {2.1, 5.1, 6}, {3, 6.2, 7},
}

// Shares of the section of a ball bearing, outside less bore: a shoulder for want of a designation that a table knows, the
// height of its rings as far as they are thick, and of their faces that a tool presses on, inside the seals. Common practice, no
// source: makers have rings of 0.30 to 0.33 and, of sealed ones, faces of 0.21 to 0.23.
const (
	ballLeastShare = 0.2
	ballRingShare  = 0.3
	ballFaceShare  = 0.2
)

// ballAbutments fills the sizes that may touch the rings, and what presses on them.
func (t *joint) ballAbutments(p *plan.BearingPlan) {
	d, D := p.BoreMm, p.OutsideMm
	least := ballLeastShare * (D - d)
	own, known := parts.DeepGrooveOf(p.Bearing)
	for _, row := range shoulderHigh {
		if known && geom.Alike(row.chamferMm, own.ChamferMm) {
			least = 2 * row.mm
			if strings.HasPrefix(p.Bearing, "60") {
				least = 2 * row.lightMm
			}
		}
	}
	p.ByRule = !known
	p.LargeEndMinMm, p.SmallEndMaxMm = geom.Clean(d+least), geom.Clean(d+ballRingShare*(D-d))
	p.CupBackMaxMm, p.CupBackMinMm = geom.Clean(D-least), geom.Clean(D-ballRingShare*(D-d))
	p.ConeSleeveInMm, p.ConeSleeveOutMm = t.w.Even(d+0.5, 0.1, 0.01), t.w.Even(d+ballFaceShare*(D-d), 0.1, 0.01)
	p.CupRingInMm, p.CupRingOutMm = t.w.Even(D-ballFaceShare*(D-d), 0.1, 0.01), t.w.Even(D-1, 0.1, 0.01)
}

// judgeBall notes shoulders that do not hold the rings or reach past them, and seats that are too short.
func (t *joint) judgeBall(p *plan.BearingPlan, m mounting) {
	judge := func(f feature, s *part.Step, dir, least, most float64) {
		sense, mm := 1.0, s.Size.NominalMm // a shoulder in a housing is the higher the smaller it is
		if f.step.Inside {
			sense = -1
		}
		at := geom.Clean(mm - 2*sense*edgeMm(f, s, -dir))
		if geom.Over(sense*least, sense*at) {
			t.problem(plan.RingShoulderLow, plan.Named(f.text()), plan.Of(plan.Diameter, at), plan.Of(plan.Diameter, least), plan.Of(plan.Mm, geom.Clean(math.Abs(at-least))))
		} else if geom.Over(sense*mm, sense*most) {
			t.problem(plan.RingShoulderHigh, plan.Named(f.text()), plan.Of(plan.Diameter, mm), plan.Of(plan.Diameter, most), plan.Of(plan.Mm, geom.Clean(math.Abs(mm-most))))
		}
	}
	if m.fixed != nil {
		judge(t.a, m.fixed, m.coneDir, p.LargeEndMinMm, p.SmallEndMaxMm)
	}
	if m.cupShoulder != nil && m.lid == nil {
		judge(t.b, m.cupShoulder, m.cupDir, p.CupBackMaxMm, p.CupBackMinMm)
	}
	t.seatsLong()
}

// ballSteps mounts a ball bearing: on the shaft first where its inner ring is tight by the middle of its limits, else into the
// housing first; on both at once where the shaft stands in that; by the ring that is tight there, or may be. Common practice,
// no source.
func (j *making) ballSteps(t *joint, p *plan.BearingPlan, m mounting) {
	t.caution("Press only on the ring that is tight, on both at once where both are: a force through the balls dents the raceways.")
	inner, outer := p.ConeFitUm.Max > 0, p.CupFitUm.Max > 0
	tight := tight(p.ConeFitUm)
	if !p.Sealed {
		j.greaseStep(t, p)
	}
	_, shut := j.side(t, j.before) // the shaft stands in the housing, and the bearing goes on both at once
	j.ringsKept(t, t.a, true)
	j.ringsKept(t, t.b, true)
	switch {
	case t.through != nil:
		j.wentIn(t)
	case shut, j.comesThrough(t, m):
		if p.Last = !shut; p.Last {
			t.step("Shaft into the housing", "Enter "+t.a.title()+" from the "+faceName(m.cupDir)+" of "+t.b.title()+", straight, through "+
				words.Spaced(m.cupShoulder.Name)+" to its place, and hold it there: the bearing goes on last, from the "+faceName(-m.cupDir)+".")
		}
		j.bothOn(t, p, m, inner, outer)
		j.ringsKept(t, t.b, false)
		j.ringsKept(t, t.a, false)
	case tight:
		p.OnShaft = true
		t.ballOnShaft(p, m)
		j.ringsKept(t, t.a, false)
		t.ballInHousing(t, p, m, t.a.title()+" with its bearing")
		j.ringsKept(t, t.b, false)
	default:
		t.ballInHousing(t, p, m, "the bearing")
		j.ringsKept(t, t.b, false)
		j.shaftThrough(t, p, m)
	}
	j.putIn(t, putNut)
	j.fitSeals(t)
	last := &t.out.Steps[len(t.out.Steps)-1]
	last.Hold = words.Join(" ", last.Hold, "Turns freely by hand"+words.When(p.Sealed, ", but for the drag of its seals")+".")
	if o := j.otherBearing(t); o != nil {
		last.Do = append(last.Do, "One bearing does not hold "+t.a.title()+" straight: its other end stays in the sling or on blocks until its bearing in "+o.b.title()+" is in.")
	}
}

// otherBearing is the joint that puts the second bearing on a shaft, in another housing; nil where a shaft has one already, and
// where none comes.
func (j *making) otherBearing(t *joint) *joint {
	if bearingOn(j.before, t.a.Instance()) != nil {
		return nil
	}
	return seq.First(j.later(t), func(o *joint) bool {
		return o.is(parts.BearingKind) && o.a.Instance() == t.a.Instance() && o.b.Instance() != t.b.Instance()
	})
}

// comesThrough tells whether the shaft has to stand in the housing before a bearing whose two shoulders lie on one side of it: what
// is behind that of the shaft is too wide for that of the housing, and so is on the side that the bearing does not come from.
func (j *making) comesThrough(t *joint, m mounting) bool {
	shaft, housing := j.at(t.a.Instance()).at, j.at(t.b.Instance()).at
	if m.fixed == nil || m.cupShoulder == nil || m.lid != nil || shaft.way(m.coneDir) != housing.way(m.cupDir) {
		return false
	}
	from, dir := shaft.z0+shaft.s*m.coneBackMm, shaft.way(m.coneDir)
	return slices.ContainsFunc(j.members(t.a.Instance(), j.before), func(i parts.Instance) bool {
		q := j.at(i)
		return q != nil && slices.ContainsFunc(rounds(q.r), func(s roundOf) bool {
			return geom.Over(dir*(q.at.z0+q.at.s*s.midMm), dir*from) && geom.Over(s.diameterMm, m.cupShoulder.Size.NominalMm)
		})
	})
}

// shaftThrough puts the shaft through a bearing that is in its housing, and first into the same housing the other bearings
// that it goes through with no shoulder between: an axle that stands still.
func (j *making) shaftThrough(t *joint, p *plan.BearingPlan, m mounting) {
	p.HeatConeC, p.Sleeve = 0, false
	with := j.throughWith(t)
	for _, o := range with {
		n, _ := o.ballMount()
		q := o.ballRings()
		o.through = t
		t.ballInHousing(o, q, n, "its bearing")
		p.Rings = seq.Add(p.Rings, q.Rings...)
		p.CupsHere = append(p.CupsHere, o.in.Name.Value)
		if m.fixed == nil {
			m.fixed, m.coneDir = n.fixed, n.coneDir
		}
	}
	if len(with) > 0 {
		p.CupsHere = append(p.CupsHere, t.in.Name.Value)
		p.ConesHere = p.CupsHere
	}
	to, rings := j.outOf(t), words.Either(len(with) > 0, "the inner rings", "the inner ring")
	if m.fixed != nil {
		to = shoulderOf(words.Spaced(m.fixed.Name))
	}
	do := "Enter " + t.a.title() + words.When(m.coneDir != 0, ", its "+faceName(-m.coneDir)+" leading,") + " through " + rings + " by hand, straight, to " +
		to + "; no blow: it goes through the balls."
	press := words.When(p.ConeFitUm.Max > 0, "It is "+t.tightness(p.ConeFitUm)+". If it does not go by hand, polish its seat inside its limits until it does: pressed, it dents the raceways.")
	t.step("Shaft through the bearing"+words.When(len(with) > 0, "s"), do, press)
	if len(with) == 0 {
		j.ringsKept(t, t.a, false)
	}
}

// outOf says how far a shaft that no shoulder stops goes through its housing: where its front then lies to that of the housing.
func (j *making) outOf(t *joint) string {
	out := -j.stands(t).z0
	return "its place, its front " + words.Either(geom.Alike(out, 0), "level with", t.w.Size(math.Abs(out))+words.Either(out > 0, " before", " behind")) + " the front of " + t.b.title()
}

// throughWith are the bearings to come of the same shaft and housing that the shaft goes through together with one: no inner ring
// is tight, and the shaft is nowhere between them thicker than their bores.
func (j *making) throughWith(t *joint) (with []*joint) {
	for _, o := range j.later(t) {
		if o.refused() || !o.pairs(t) {
			continue
		}
		between := geom.Between(t.a.step.MidMm(), o.a.step.MidMm())
		thick := slices.ContainsFunc(t.a.r.Side(false), func(s *part.Step) bool {
			return s.Span().OnMm(between) > 0 && geom.Over(s.Size.NominalMm, min(t.in.Bearing.Bore.Mm, o.in.Bearing.Bore.Mm))
		})
		if !thick && !tight(o.ballRings().ConeFitUm) {
			with = append(with, o)
		}
	}
	return with
}

// wentIn says of a bearing that it went into the housing with another.
func (j *making) wentIn(t *joint) {
	t.out.Bearing.HeatConeC = 0
	t.step("See that it stands", "It went into "+t.b.text()+" when the other went into "+t.through.b.text()+", before "+t.a.title()+" came through both.")
	j.ringsKept(t.through, t.a, false)
	j.ringsKept(t, t.a, false)
}

// ballOnShaft presses the bearing on its shaft by its inner ring, or slips it on hot.
func (t *joint) ballOnShaft(p *plan.BearingPlan, m mounting) {
	p.Sleeve = true
	to := "to its place on " + t.a.text()
	if m.fixed != nil {
		to = "to the shoulder " + words.Spaced(m.fixed.Name) + " of " + t.a.title()
		t.shoulderCheck("inner ring", words.When(p.HeatConeC != 0, ", cold"))
	}
	cold := "Sleeve Ø" + t.w.Read(p.ConeSleeveInMm) + " inside, at most Ø" + t.w.Read(p.ConeSleeveOutMm) + " outside, on the inner ring; it is " +
		t.tightness(p.ConeFitUm) + ": press it square " + to + "."
	if p.HeatConeC == 0 {
		t.step("Bearing on the shaft", cold)
		return
	}
	hottest := press.OpenBearingC
	if p.Sealed {
		hottest = press.SealedBearingC
	}
	in := words.Either(p.Sealed, "on a plate or by induction, not in oil: it is sealed", "in oil or on a plate")
	s := t.step("Bearing on the shaft", "Heat the bearing to "+t.w.Heat(p.HeatConeC)+", "+in+"; slip it on "+to+", hold until it grips.", "Or cold: "+words.Lower(cold))
	s.Caution = "Not over " + t.w.Heat(hottest) + ", no flame; gloves."
}

// tightness says how tight a ring is on its seat.
func (t *joint) tightness(fit plan.Range) string {
	if fit.Min < 0 {
		return "between " + t.w.Fine(-fit.Min, -fit.Min) + " loose and " + t.w.Fine(fit.Max, fit.Max) + " tight"
	}
	return t.w.Fine(fit.Min, fit.Max) + " tight"
}

// ballInHousing puts what comes, the bearing of a joint or the shaft with it, into the housing: by a ring on the outer ring where
// that is tight.
func (t *joint) ballInHousing(of *joint, p *plan.BearingPlan, m mounting, what string) {
	tool, ring := "", "By hand: a blow or a press is not needed."
	outer := p.CupFitUm.Max > 0
	if outer {
		r := plan.PushRing{InMm: p.CupRingInMm, OutMm: p.CupRingOutMm, Over: p.OnShaft}
		p.Rings = append(p.Rings, r)
		tool, ring = t.ringText(r)+" on the outer ring.", ""
	}
	home := of.home(m)
	if p.OnShaft && (m.cupShoulder == nil || m.floats) { // it stands on its shaft already
		home = inPlace
	}
	before, hold := of.homeMeasured(m)
	s := t.step("Bearing into the housing", before, tool, t.pushText(p)+" into "+of.b.text()+" square, "+what+" "+home+of.borne(m)+".", ring)
	if most := of.cupForceN(p); outer && most > 0 {
		s.Caution = "Over " + t.w.Force(most, 1) + " it is canted: take it out and start again."
	}
	s.Hold = hold
	if of == t {
		t.homeCheck(m)
	} else {
		t.depthCheck(of, m)
	}
}

// depthCheck has it measured that the outer ring of a bearing stands on its shoulder where another bearing lies behind that and no
// feeler gets there: by how far it lies under the face of its housing. Nothing where no length says that.
func (t *joint) depthCheck(of *joint, m mounting) {
	if !m.home() {
		return
	}
	face := faceMm(of.b.r, -m.cupDir)
	deep := of.b.r.BetweenMm(true, min(face, m.cupBackMm), max(face, m.cupBackMm))
	wide := of.in.Bearing.Width.Mm
	if deep.Min < wide {
		if of == t {
			t.homeCheck(m)
		}
		return
	}
	limits := t.w.ReadLimits(deep.Min-wide, deep.Max-wide+narrowerMm(of.in.Bearing.Bore.Mm))
	t.out.Checks = append(t.out.Checks, plan.Check{
		What: "outer ring in " + words.Spaced(of.b.step.Name) + " on its shoulder", Wanted: "under the " + faceName(-m.cupDir) + " of " + of.b.title(),
		Limits: limits, Gauge: "depth gauge", Source: lookup.Source{Name: "ISO 492", State: lookup.FromMemory},
	})
}

// ballRings are the sizes of a ball bearing and what presses on it, which another joint mounts.
func (t *joint) ballRings() *plan.BearingPlan {
	in := t.in.Bearing
	p := &plan.BearingPlan{Bearing: in.Bearing.Value, BoreMm: in.Bore.Mm, OutsideMm: in.Outside.Mm, WidthMm: in.Width.Mm}
	t.fits(p)
	t.ballAbutments(p)
	return p
}

// bothOn puts the bearing over a shaft that stands in the housing and into that, by the ring or the rings that are tight.
func (j *making) bothOn(t *joint, p *plan.BearingPlan, m mounting, inner, outer bool) {
	p.HeatConeC = 0 // what is slipped on hot is not pressed in
	r := plan.PushRing{InMm: p.CupRingInMm, OutMm: p.CupRingOutMm}
	on := " on the outer ring alone: the inner one slides."
	borne, end := t.borne(m), t.a.title()+" borne at its "+words.Either(m.coneDir != 0, faceName(m.coneDir), "far")+" end"
	switch {
	case inner && outer:
		r.InMm, on = p.ConeSleeveInMm, ", its face flat, on both rings at once: both are tight, or may be."
		borne = words.Join(" and ", words.Either(borne != "", borne, ", "+t.b.title()+" borne"), end)
	case inner:
		r, on = plan.PushRing{InMm: p.ConeSleeveInMm, OutMm: p.ConeSleeveOutMm}, " on the inner ring alone: the outer one slides."
		borne = ", " + end + " and not " + t.b.title() + ": else the force goes through the balls of the other bearing"
	case !outer:
		r, on = plan.PushRing{}, "It slides on both by hand: no blow."
	}
	if shut := j.endShut(t, m.coneDir); shut != "" && inner {
		borne = "; the " + faceName(m.coneDir) + " end of " + t.a.title() + " lies in " + shut + ", where nothing bears it"
		t.problem(plan.BallUnborne, plan.Named(p.Bearing), plan.Named(t.a.title()), plan.Named(faceName(m.coneDir)), plan.Named(shut))
	}
	do := []string{"Over the end of " + t.a.title() + " and into " + t.b.text() + ", square, " + t.home(m) + borne + "."}
	if r.Over = true; r.OutMm > 0 {
		p.Rings = append(p.Rings, r)
		on = t.ringText(r) + on
	}
	before, hold := t.homeMeasured(m)
	t.step("Bearing on shaft and into the housing", append([]string{before}, append(do, on)...)...).Hold = hold
	if t.depthCheck(t, m); m.fixed != nil {
		t.shoulderCheck("inner ring", "")
	}
}

// endShut is the part that shuts the end of a shaft, in a direction along its axis, and of all that is fixed to it: nothing half as thick as
// its seat comes there to bear it. Empty where none does. Common practice, no source.
func (j *making) endShut(t *joint, dir float64) string {
	fixed := seq.Keep(j.before, func(o *joint) bool { return !o.is(parts.BearingKind) && !o.runs() })
	shaft, body := j.at(t.a.Instance()), j.members(t.a.Instance(), fixed)
	if dir == 0 || shaft == nil {
		return ""
	}
	way, far := shaft.at.s*dir, math.Inf(-1)
	reach := func(q *placedPart) float64 { s := q.along(); return max(way*s.FromMm, way*s.ToMm) }
	for _, i := range body {
		if q := j.at(i); q != nil && q.group == shaft.group {
			far = max(far, reach(q))
		}
	}
	for _, i := range j.there(t) {
		q := j.at(i)
		if q == nil || q.group != shaft.group || slices.Contains(body, i) || !geom.Over(reach(q), far) {
			continue
		}
		if _, _, metal := q.r.Plane(parts.Face(faceName(q.at.way(way))), t.a.step.Size.NominalMm/4); metal {
			return copyTitle(q.r, i.Copy)
		}
	}
	return ""
}

func (t *joint) ringText(r plan.PushRing) string {
	return "Press ring Ø" + t.w.Read(r.InMm) + " / Ø" + t.w.Read(r.OutMm)
}

const inPlace = "until it stands in its place"

// home says how far the bearing goes in, borne on what its housing stands meanwhile.
func (t *joint) home(m mounting) string {
	if (m.cupShoulder == nil || m.floats) && m.fixed != nil {
		return "until it stands on the shoulder " + words.Spaced(m.fixed.Name) + " of " + t.a.title()
	}
	return words.Either(m.cupShoulder != nil && (m.lid == nil || m.lid.out != nil), "until it sounds home on its shoulder", inPlace)
}

func (t *joint) borne(m mounting) string {
	return words.When(m.cupDir != 0, ", "+t.b.title()+" resting square on its "+faceName(m.cupDir)+", the bore clear")
}

// homeMeasured is that of an outer ring that goes up to a shoulder; empty of another.
func (t *joint) homeMeasured(m mounting) (before, hold string) {
	if m.home() {
		before, hold = t.asMeasured("the outer ring", m)
	}
	return before, hold
}

// home tells whether the outer ring goes up to a shoulder of its housing.
func (m mounting) home() bool { return m.cupShoulder != nil && m.lid == nil && !m.floats }

// homeCheck records that the outer ring stands on the shoulder of its housing.
func (t *joint) homeCheck(m mounting) {
	if m.home() {
		t.out.Checks = append(t.out.Checks, plan.Check{What: "outer ring on its shoulder", Wanted: "no gap", Limits: t.asDeep(), Gauge: "depth micrometer", Source: lookup.NoSource})
	}
}

// shoulderCheck has it felt that a ring on the shaft stands on its shoulder.
func (t *joint) shoulderCheck(ring, when string) {
	t.out.Checks = append(t.out.Checks, plan.Check{What: ring + " on its shoulder" + when, Wanted: "no gap", Limits: t.w.Near(0.05) + " does not enter", Gauge: "feeler", Source: lookup.NoSource})
}

// ballFigures are the numbers of a ball bearing.
func (t *joint) ballFigures(p *plan.BearingPlan) {
	sizes := "job file"
	if own, known := parts.DeepGrooveOf(p.Bearing); known {
		sizes = words.Either(own.Checked, "ISO 15", "ISO 15, from memory")
	}
	t.figure("bearing", p.Bearing+", "+t.w.Size(p.BoreMm)+" × "+t.w.Size(p.OutsideMm)+" × "+t.w.Size(p.WidthMm)+", "+p.Rotating+" ring turns", sizes)
	source := words.Either(p.ByRule, "shares of the section, common practice, no source", "least by DIN 5418, from memory; most by a share of the section, common practice, no source")
	t.figure("shoulder of the shaft", "Ø"+t.w.Read(p.LargeEndMinMm)+" to "+t.w.Read(p.SmallEndMaxMm), source)
	t.figure("shoulder of the housing", "Ø"+t.w.Read(p.CupBackMinMm)+" to "+t.w.Read(p.CupBackMaxMm), source)
	if p.HeatConeC != 0 {
		t.figure("inner ring slips on at", t.w.Heat(p.HeatConeC)+" with "+t.w.Fine(p.HeatLeftUm, p.HeatLeftUm)+" or more to spare", "expansion 12e-6 /K; bearing steel has 12.5e-6")
	}
	if !p.Sealed {
		t.figure("grease", t.w.Grams(p.GreaseG)+" when regreasing; first fill: all spaces between the balls", "0.005 D B, bearing makers' rule")
	}
}

// tools are what presses on the rings: a sleeve on the inner one, a ring on the outer one or on both.
func (ballKind) tools(j *assembly, t *joint, _ []*joint, list *tooling) {
	p, m, _ := t.mounted()
	if p == nil {
		return
	}
	if p.Sleeve {
		long := t.a.step.LengthMm() + reachMm(t.a, -m.coneDir) + endMm
		list.add(t, tool{"Sleeve", j.hollow(p.ConeSleeveInMm, p.ConeSleeveOutMm, long) + "on the inner ring",
			j.sleeve(atLeast(p.ConeSleeveInMm, pressWideMm), atMost(p.ConeSleeveOutMm, pressWideMm), long), nil})
	}
	for _, r := range p.Rings {
		on, long := "on the outer ring", t.b.step.LengthMm()+reachMm(t.b, -m.cupDir)+endMm
		if r.InMm < p.CupRingInMm {
			on = words.Either(r.OutMm < p.CupRingInMm, "on the inner ring", "on both rings")
		}
		if r.Over { // and out over the shaft
			face, shaft := m.cupBackMm-m.cupDir*p.WidthMm, j.stands(t).span(geom.Span{ToMm: t.a.r.LengthMm()})
			long = max(long, words.Either(m.cupDir > 0, face-shaft.FromMm, shaft.ToMm-face)+endMm)
		}
		list.add(t, tool{"Press ring", j.hollow(r.InMm, r.OutMm, long) + on, j.sleeve(atLeast(r.InMm, pressWideMm), within(r.OutMm, pressWideMm), long), nil})
	}
}
