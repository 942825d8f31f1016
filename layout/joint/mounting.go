package joint

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// mounting is how a tapered roller bearing sits between its housing and its
// shaft. Its axial load runs from the large end of the cone through the rollers
// to the back of the cup, its thick side; so the large end looks away from the
// shoulder that the cup's back stands on. Directions are +1 towards the back
// face of the part named, −1 towards its front.
type mounting struct {
	cupDir, coneDir float64    // where the cup's back looks, in the housing; the cone's large end, on the shaft
	cupBackMm       float64    // the cup's shoulder, on the housing's axis
	coneBackMm      float64    // the end of the cone's seat on the large end's side, on the shaft's axis
	floats          bool       // of a ball bearing: it meets the shoulder of the shaft before that of the housing
	cupShoulder     *part.Step // the housing's step behind the cup, or the bore of a cover's spigot
	lid             *joint     // that bolts on the cover whose spigot is behind the cup; else nil
	fixed           *part.Step // the shaft's shoulder behind the large end; nil if there is none
	nut             *part.Step // else the thread that the nut of the large end runs on
	small           *part.Step // the shaft's shoulder before the small end, which the cone must not reach; nil if there is none
}

// mount finds how the bearing of a joint sits; false if no shoulder, or one at
// either end, holds the cup. Where the housing has none, the spigot of a cover that is bolted
// to it is one; and where its only shoulder leaves the large end of the cone to nothing, as one far
// inside before a seal does, and the shaft has its own for that of the cover.
func (t *joint) mount() (m mounting, held bool) {
	if t == nil {
		return m, false
	}
	if t.in.Bearing.Ball {
		return t.ballMount()
	}
	housing, shaft := t.b, t.a
	after, before := shoulder(housing, 1), shoulder(housing, -1)
	switch {
	case after != nil && before == nil:
		m = mounting{cupDir: 1, cupBackMm: housing.step.ToMm, cupShoulder: after}
	case before != nil && after == nil:
		m = mounting{cupDir: -1, cupBackMm: housing.step.FromMm, cupShoulder: before}
	case after == nil && t.lid.lid != nil:
		m = t.lid
	default:
		return mounting{}, false
	}
	m = t.onShaft(m)
	if l := t.onShaft(t.lid); l.lid != nil && l.cupDir == -m.cupDir && l.fixed != nil && m.fixed == nil && !m.nutBeside(shaft) {
		m = l
	}
	return m, true
}

// ballMount finds the shoulders that the rings of a ball bearing stand against: of the housing, or of a cover's spigot
// where that has none, and of the shaft. A direction is 0 where there is none; held is false where the housing has none.
func (t *joint) ballMount() (m mounting, held bool) {
	for _, dir := range []float64{1, -1} {
		if s := shoulder(t.b, dir); s != nil && m.cupShoulder == nil && !t.outer {
			m.cupDir, m.cupBackMm, m.cupShoulder = dir, end(t.b.step, dir), s
		}
		if s := shoulder(t.a, dir); s != nil && m.fixed == nil {
			m.coneDir, m.coneBackMm, m.fixed = dir, end(t.a.step, dir), s
		}
	}
	floats := m.fixed != nil && (t.in.Place != nil || t.in.Meet.Set()) // its place is said, and the cover only shuts its bore
	if l := t.lid; m.cupShoulder == nil && l.lid != nil && !floats {
		m.cupDir, m.cupBackMm, m.cupShoulder, m.lid = l.cupDir, l.cupBackMm, l.cupShoulder, l.lid
	}
	return m, m.cupShoulder != nil
}

// onShaft says where the large end of the cone looks for the back of a cup, and what holds it there.
func (t *joint) onShaft(m mounting) mounting {
	shaft := t.a
	if m.coneDir = -m.cupDir; t.in.OtherWay {
		m.coneDir = m.cupDir
	}
	m.coneBackMm = end(shaft.step, m.coneDir)
	m.fixed, m.small = shoulder(shaft, m.coneDir), shoulder(shaft, -m.coneDir)
	if m.fixed == nil {
		m.nut = threadBeyond(shaft, m.coneDir)
	}
	return m
}

// nutBeside tells whether the nut of the large end runs on a thread that begins where the seat ends.
func (m mounting) nutBeside(shaft feature) bool {
	return m.nut != nil && geom.Alike(end(m.nut, -m.coneDir), end(shaft.step, m.coneDir))
}

// covered finds the cover on the open end of a bearing's bore: bolted to the housing there, with
// a spigot that goes into the bore before a wider step. Not one that would set a pair in tandem, nor of a
// pair whose bore has a shoulder between the two, which the cones of a shaft do not pass.
func (t *joint) covered(all []*joint) {
	if t.refused() || !t.is(parts.BearingKind) {
		return
	}
	tandem, p := 0.0, t.partner(all) // where the other cup's back looks
	if p != nil && !p.refused() {
		n, _ := p.mount()
		tandem = n.cupDir
	}
	for _, o := range ofKind(all, parts.BoltKind) {
		on, cover, ok := o.from(t.b.Instance())
		if !ok || o.refused() {
			continue
		}
		dir := on.group.Face.Outward()
		face := faceMm(on.r, dir)
		if dir == tandem || p != nil && shoulder(t.b, -dir) != nil || !geom.Alike(end(t.b.step, dir), face) {
			continue
		}
		if s, bore := o.spigotOf(cover, t.b.step.Size.NominalMm); s != nil {
			t.lid = mounting{cupDir: dir, cupBackMm: geom.Clean(face - dir*s.LengthMm()), cupShoulder: bore, lid: o}
		}
	}
}

// spigotMm is where the end of a spigot lies: of a step at an end of its part, before a wider one; ok is
// false for another step.
func spigotMm(r *part.Model, s *part.Step) (tipMm float64, ok bool) {
	for _, dir := range []float64{-1, 1} {
		if geom.Alike(end(s, dir), faceMm(r, dir)) && shoulder(feature{r: r, step: s}, -dir) != nil {
			return end(s, dir), true
		}
	}
	return 0, false
}

// spigotOf is the spigot of a diameter at the face of a cover that meets the other part of a joint, and the bore at its tip, one without a
// size if there is none; nil where there is no such spigot.
func (t *joint) spigotOf(cover feature, mm float64) (spigot, bore *part.Step) {
	face := t.meeting().First
	if cover.Instance() == t.b.Instance() {
		face = t.meeting().Second
	}
	for _, s := range cover.r.Side(false) {
		if tip, ok := spigotMm(cover.r, s); ok && geom.Alike(tip, faceMm(cover.r, face.Outward())) && geom.Alike(s.Size.NominalMm, mm) {
			spigot = s
			bore = cmp.Or(seq.At(cover.r.Steps, func(q *part.Step) bool { return q.Inside && q.FromMm <= tip && q.ToMm >= tip }), &part.Step{})
		}
	}
	return spigot, bore
}

// threadBeyond is the nearest outside thread beyond a seat in a direction that a
// nut can reach over nothing larger; nil if there is none. No nut is locked on that of a lead screw.
func threadBeyond(f feature, dir float64) *part.Step {
	var best *part.Step
	for s := range seq.Refs(f.r.Steps) {
		away := dir * (end(s, -dir) - end(f.step, dir))
		if !s.Inside && s.Size.Thread != nil && s.Size.Thread.Lead == nil && !geom.Over(0, away) && (best == nil || away < dir*(end(best, -dir)-end(f.step, dir))) {
			best = s
		}
	}
	return best
}

// place puts the shaft in the housing: the cup's back on its shoulder, the cone's large end the
// bearing's width away from it.
func (bearingKind) place(t *joint) (placement, bool) {
	m, ok := t.mount()
	return t.set(m.cupBackMm-m.cupDir*t.in.Bearing.Width.Mm, m.coneBackMm, t.sense()), ok && !t.in.Meet.Set()
}

// Abutments of single-row tapered roller bearings for want of the maker's, out of the bore,
// the outside and the section between them (outside less bore): common practice, drawn so that it lies
// on the safe side of the limits that a maker publishes for ten series, which the test holds.
const (
	smallEndShare = 0.16 // da: nothing before the small end is larger, or it touches the cage
	largeEndMm    = 2.8  // db: the shoulder at the large end is at least so much larger than the bore
	largeEndShare = 0.14
	cupBackMm     = 2.5 // Da: the middle of what holds the cup and clears the cage is so much under the outside
	cupBackShare  = 0.145
	cupBackSpread = 0.06
	cupFaceShare  = 0.09 // Db: a ring on the thin side of the cup is no smaller inside; within 1 mm of it, for a cup is pressed without its cone
)

// abutments fills the sizes that may touch the rings: the maker's, as the job
// gives them, or the rule.
func (t *joint) abutments(p *plan.BearingPlan) {
	in := t.in.Bearing
	d, section := in.Bore.Mm, in.Outside.Mm-in.Bore.Mm
	rule := func(given, mm float64) float64 {
		if given > 0 {
			return given
		}
		p.ByRule = true
		return t.w.Even(mm, 0.1, 0.01)
	}
	p.SmallEndMaxMm = rule(in.Da.Mm, d+smallEndShare*section)
	p.LargeEndMinMm = rule(in.Db.Mm, d+largeEndMm+largeEndShare*section)
	back, spread := in.Outside.Mm-cupBackMm-cupBackShare*section, cupBackSpread*section
	p.CupBackMinMm, p.CupBackMaxMm = t.w.Even(back-spread, 0.1, 0.01), t.w.Even(back+spread, 0.1, 0.01)
	if in.CupDa.Set() {
		p.CupBackMinMm, p.CupBackMaxMm = in.CupDa.Mm, math.Max(in.CupDa.Mm, p.CupBackMaxMm)
	}
	p.CupFaceMinMm = rule(in.CupDb.Mm, in.Outside.Mm-cupFaceShare*section)
}

// cageMm is further than a cage stands out of the small end of its cone. Common practice, no source.
const cageMm = 5.0

// judgeMounting notes shoulders that do not hold the rings or that touch what
// turns, and seats that are too short; offMm is how far the small end stays off what is before it.
func (t *joint) judgeMounting(p *plan.BearingPlan, m mounting, offMm float64) {
	dia := func(s *part.Step) plan.Arg { return plan.Of(plan.Diameter, s.Size.NominalMm) }
	switch c := m.cupShoulder.Size.NominalMm; {
	case geom.Over(c, p.CupBackMaxMm):
		t.problem(plan.CupShoulderLow, plan.Named(t.b.text()), dia(m.cupShoulder), plan.Of(plan.Diameter, p.CupBackMaxMm))
	case geom.Over(p.CupBackMinMm, c) && m.lid != nil: // which comes off
		t.problem(plan.CupCoverHigh, plan.Named(m.lid.coverOf(t.b)), plan.Named(t.b.text()), dia(m.cupShoulder), plan.Of(plan.Diameter, p.CupBackMinMm))
	case geom.Over(p.CupBackMinMm, c):
		t.problem(plan.CupShoulderHigh, plan.Named(t.b.text()), dia(m.cupShoulder), plan.Of(plan.Diameter, p.CupBackMinMm))
	}
	switch {
	case m.fixed == nil && m.nut == nil:
		t.problem(plan.ConeNotHeld, plan.Named(t.a.text()), plan.Named(faceName(m.coneDir)))
	case m.fixed != nil:
		if high := geom.Clean(m.fixed.Size.NominalMm - 2*edgeMm(t.a, m.fixed, -m.coneDir)); geom.Over(p.LargeEndMinMm, high) {
			t.problem(plan.ConeShoulderLow, plan.Named(t.a.text()), plan.Of(plan.Diameter, high), plan.Of(plan.Diameter, p.LargeEndMinMm))
		}
	}
	if m.small != nil && geom.Over(m.small.Size.NominalMm, p.SmallEndMaxMm) && offMm < cageMm {
		t.problem(plan.CageTouches, plan.Named(t.a.text()), plan.Named(words.Spaced(m.small.Name)), dia(m.small), plan.Of(plan.Diameter, p.SmallEndMaxMm))
	}
	t.seatsLong()
}

// seatsLong notes seats that are too short for their rings.
func (t *joint) seatsLong() {
	least := seatShare * t.in.Bearing.Width.Mm
	for _, f := range []feature{t.a, t.b} {
		if long := f.step.ToMm - f.step.FromMm; geom.Over(least, long) {
			t.problem(plan.SeatShort, plan.Named(f.text()), plan.Of(plan.Mm, geom.Clean(long)), plan.Of(plan.Mm, least))
		}
	}
}

// edgeMm is how far the chamfer or rounding of a step's edge comes in from its diameter on
// the face in a direction, 0 without one.
func edgeMm(of feature, s *part.Step, dir float64) float64 {
	c := seq.First(of.r.Part.Chamfers, func(c parts.Chamfer) bool { return c.Edge.Value == s.Name+"-"+faceName(dir) })
	return c.AcrossMm()
}

// seatShare is how much of a bearing's width each ring needs as seat. Cones are
// about nine tenths and cups eight tenths as wide as the whole (302 series, from
// memory).
const seatShare = 0.8

func faceName(dir float64) string { return words.Either(back(dir), "back", "front") }

// partner is the other bearing between the same two parts; nil if there is none.
func (t *joint) partner(all []*joint) *joint {
	return seq.First(ofKind(all, parts.BearingKind), func(o *joint) bool { return o != t && o.joins(t) })
}

// arrangement names a pair by its cups: back to back where their backs look at
// each other, face to face where they look apart, in tandem where both look the
// same way.
func arrangement(m, n mounting) plan.Pair {
	apart := n.cupBackMm - m.cupBackMm
	switch {
	case m.cupDir == n.cupDir:
		return plan.InTandem
	case m.cupDir*apart > 0:
		return plan.BackToBack
	}
	return plan.FaceToFace
}

// standsOut is how far the seat of an adjusted cone comes out of its large end,
// where the nut is to push it.
func (j *assembly) standsOut(t *joint, m mounting) float64 {
	if m.nut == nil || m.nut.Size.NominalMm > t.a.step.Size.NominalMm+1 {
		return 0
	}
	return geom.Clean(m.coneDir * (m.coneBackMm - j.largeEndMm(t, m)))
}

// clearance is how far the small end of an adjusted cone stays off the shoulder
// before it; ok is false where there is no such shoulder or the cone's own width
// is not known.
func (j *assembly) clearance(t *joint, m mounting) (mm float64, ok bool) {
	if m.small == nil || !t.in.Bearing.ConeWidth.Set() {
		return 0, false
	}
	small := j.largeEndMm(t, m) - m.coneDir*t.in.Bearing.ConeWidth.Mm
	return geom.Clean(m.coneDir * (small - end(m.small, m.coneDir))), true
}

// largeEndMm is where the large end of the cone lies on the shaft's axis.
func (j *assembly) largeEndMm(t *joint, m mounting) float64 {
	to := j.stands(t).inverse()
	return to.z0 + to.s*(m.cupBackMm-m.cupDir*t.in.Bearing.Width.Mm)
}

// nutShort notes a nut that stops before the cone it is to hold, because its thread
// runs out beside the seat, and a slot for the tongue of its washer that does not reach the cone
// in its full width.
func (j *assembly) nutShort(t *joint, m mounting) {
	if m.nut == nil {
		return
	}
	large := j.largeEndMm(t, m)
	out := t.a.r.FullThreadMm(m.nut, back(-m.coneDir))
	if short := geom.Clean(m.coneDir*(end(m.nut, -m.coneDir)-large) + out); out > 0 && geom.Over(short, 0) {
		t.problem(plan.NutShort, plan.Named(words.Spaced(m.nut.Name)), plan.Of(plan.Mm, short))
	}
	for slot := range seq.Refs(t.a.r.Radials) {
		at := slot.Rows[0].AxialMm
		if slot.In.Shape != parts.RadialSlot || at < m.nut.FromMm || at > m.nut.ToMm {
			continue
		}
		wide := at - m.coneDir*(slot.In.Along.Mm-slot.In.Around.Mm)/2
		if short := geom.Clean(m.coneDir * (wide - large)); geom.Over(short, 0) {
			t.problem(plan.SlotShort, plan.Named(words.Spaced(slot.In.Name.Value)), plan.Of(plan.Mm, short))
		}
	}
	j.nutEngages(t, m, large)
}

// fewTurns are the fewest turns of full thread that a nut which sets a bearing has on its
// shaft. Common practice, no source: locking nuts of ISO 2982-2 have 4 (KM1) to 12 (KM30).
const fewTurns = 5.0

// nutEngages notes a made nut of which hardly any full thread is left on its shaft: beside
// the undercut of that and within the chamfers of both.
func (j *assembly) nutEngages(t *joint, m mounting, largeMm float64) {
	made := j.nutMade(m.nut.Size.Thread.Designation)
	if made == nil {
		return
	}
	dir, under := m.coneDir, t.a.r.FullThreadMm(m.nut, back(-m.coneDir))
	if u := m.nut.Undercut; u != nil {
		under = u.WidthMm
	}
	_, inside := made.Sides()
	thread := inside[slices.IndexFunc(inside, func(s *part.Step) bool { return s.Size.Thread != nil })]
	bevel := max(made.Part.BevelMm(thread.Name+"-front"), made.Part.BevelMm(thread.Name+"-back"))
	from := max(dir*largeMm+bevel, dir*end(m.nut, -dir)+under)
	to := min(dir*largeMm+thread.LengthMm()-bevel, dir*end(m.nut, dir)-t.a.r.Part.BevelMm(m.nut.Name+"-"+faceName(dir)))
	if least := fewTurns * m.nut.Size.Thread.PitchMm; geom.Over(least, to-from) {
		t.problem(plan.NutFew, plan.Of(plan.Mm, geom.Clean(max(0, to-from))), plan.Named(made.Out.Title), plan.Named(words.Spaced(m.nut.Name)), plan.Of(plan.Mm, geom.Clean(least)))
	}
}

// nutMade is the part of the job that runs on a thread as its nut; nil if there is none.
func (s *shop) nutMade(thread string) *part.Model {
	return seq.First(s.models, func(m *part.Model) bool {
		return slices.ContainsFunc(m.Side(true), func(st *part.Step) bool { return st.Size.Thread != nil && st.Size.Thread.Designation == thread })
	})
}
