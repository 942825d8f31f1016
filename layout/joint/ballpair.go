package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// ballStop is what stops a ring, or what lies on a shaft, in a direction along the axis of the part that it is on: the face of
// a shoulder, of a cover or of a retaining ring.
type ballStop struct {
	mm, dir float64      // where that face lies from the front of the part, and the direction in which it stops
	ring    *part.Groove // of a retaining ring; else nil
	drawn   bool         // no length of the part alone says where it lies
}

// beside tells whether a stop lies where it stops what is so wide and ends at a face, in its direction: nearer than half of
// its width.
func (s ballStop) beside(faceMm, wideMm float64) bool { return math.Abs(s.mm-faceMm) < wideMm/2 }

// ringStop is the retaining ring on the side of a feature that stops what is so wide and ends at a face, in a direction along the
// axis of its part; ok is false where there is none.
func (t *joint) ringStop(f feature, dir, faceMm, wideMm float64) (at ballStop, ok bool) {
	for g := range seq.Refs(f.r.Grooves) {
		wall := g.Row.FromMm
		if back(dir) {
			wall = g.Row.ToMm
		}
		_, thick, ring := g.Ring(t.w)
		s := ballStop{mm: geom.Clean(wall - dir*thick), dir: dir, ring: g}
		if under := dir*(faceMm-s.mm) > thick; ring && !under && g.Row.Inside == f.step.Inside && s.beside(faceMm, wideMm) {
			return s, true
		}
	}
	return at, false
}

// stopOf is what stops a ring of a ball bearing on its seat in a direction along the axis of that, where the face of the
// ring lies at mm: the shoulder of the seat, the spigot of a cover, or a retaining ring; ok is false where nothing does.
func (t *joint) stopOf(f feature, dir, faceMm float64) (at ballStop, ok bool) {
	wide := t.in.Bearing.Width.Mm
	if at = (ballStop{mm: end(f.step, dir), dir: dir}); shoulder(f, dir) != nil && at.beside(faceMm, wide) {
		return at, true
	}
	if at = (ballStop{mm: t.lid.cupBackMm, dir: dir, drawn: true}); f == t.b && t.lid.lid != nil && t.lid.cupDir == dir && at.beside(faceMm, wide) {
		return at, true
	}
	return t.ringStop(f, dir, faceMm, wide)
}

// apartMm is how far a stop of a part lies behind another inside the limits of its lengths, as drawn where those do not say it.
func (f feature) apartMm(w words.Writer, from, to ballStop) plan.Range {
	drawn := geom.Clean(to.mm - from.mm)
	out := plan.Range{Min: drawn, Max: drawn}
	own := func(to ballStop, atMm float64) plan.Range {
		_, thick, _ := to.ring.Ring(w)
		wall := f.r.ToWallMm(to.ring, atMm, back(to.dir))
		return plan.Range{Min: wall.Min - thick, Max: wall.Max - thick}
	}
	switch {
	case from.drawn || to.drawn || drawn == 0:
	case from.ring != nil && to.ring != nil:
		_, thin, _ := from.ring.Ring(w)
		_, thick, _ := to.ring.Ring(w)
		walls, rings := f.r.WallsApartMm(from.ring, back(from.dir), to.ring, back(to.dir)), from.dir*thin-to.dir*thick
		return plan.Range{Min: geom.Clean(walls.Min + rings), Max: geom.Clean(walls.Max + rings)}
	case from.ring == nil && to.ring == nil:
		out = f.r.BetweenMm(f.step.Inside, min(from.mm, to.mm), max(from.mm, to.mm))
	case from.ring == nil && back(to.dir) == (drawn > 0):
		out = own(to, from.mm)
	case to.ring == nil && back(from.dir) != (drawn > 0):
		out = own(from, to.mm)
	}
	switch {
	case out.Max <= 0 && drawn > 0: // of no steps of its own
		return plan.Range{Min: drawn, Max: drawn}
	case drawn < 0 && out.Max > 0:
		return plan.Range{Min: -out.Max, Max: -out.Min}
	}
	return out
}

type ballWidth struct{ toMm, mm float64 }

// ballWidths are how much narrower than its width B a ball bearing of the normal class is at the most, in mm up to a bore in mm.
// ISO 492, from memory.
var ballWidths = []ballWidth{{50, 0.12}, {80, 0.15}, {120, 0.2}, {180, 0.25}, {math.Inf(1), 0.3}}

// narrowerMm is that of a bearing by its bore in mm.
func narrowerMm(boreMm float64) float64 {
	return seq.First(ballWidths, func(row ballWidth) bool { return boreMm <= row.toMm }).mm
}

// faceOf is where a ball bearing ends in a direction along the axis of the shaft or the housing, whichever the feature is of.
func (j *assembly) faceOf(t *joint, f feature, dir float64) float64 {
	p, to := t.out.Bearing, j.at(f.Instance()).at.inverse()
	on := to.span(geom.Between(p.CupBackMm, p.LargeEndMm))
	if back(dir) {
		return geom.Clean(on.ToMm)
	}
	return geom.Clean(on.FromMm)
}

// tight tells whether the inner or the outer ring of a ball bearing is tight by the middle of its limits.
func tight(fit plan.Range) bool { return fit.Min+fit.Max > 0 }

// holds is what a bearing stands against that is pushed along its shaft in a direction of that: what of the shaft pushes its inner ring,
// and what of the housing its outer ring meets. A tight ring stays where it is. ok is false where one of them finds nothing.
func (j *making) holds(t *joint, dir float64) (shaft, housing ballStop, ok bool) {
	p, s := t.out.Bearing, j.stands(t).s
	find := func(f feature, dir float64, fit plan.Range) (ballStop, bool) {
		face := j.faceOf(t, f, dir)
		at, ok := t.stopOf(f, dir, face)
		if tight(fit) && (!ok || !geom.Alike(at.mm, face)) {
			return ballStop{mm: face, dir: dir, drawn: true}, true
		}
		return at, ok
	}
	shaft, a := find(t.a, -dir, p.ConeFitUm)
	housing, b := find(t.b, s*dir, p.CupFitUm)
	return shaft, housing, a && b
}

// giveMm is how far a shaft goes along between two bearings before one of them holds it to its back and the other to its front,
// inside the limits of the lengths: what keeps the two from pushing one another. ok is false where they do not both hold it so.
func (j *making) giveMm(backward, forward *joint) (mm plan.Range, ok bool) {
	sa, ha, one := j.holds(backward, 1)
	sb, hb, two := j.holds(forward, -j.sameWay(backward, forward))
	if !one || !two {
		return mm, false
	}
	shaft, housing := j.apartMm(backward, backward.a, forward.a, sa, sb), j.apartMm(backward, backward.b, forward.b, ha, hb)
	wide, narrower := 0.0, 0.0
	for _, t := range []*joint{backward, forward} {
		wide, narrower = wide+t.in.Bearing.Width.Mm, narrower+narrowerMm(t.in.Bearing.Bore.Mm)
	}
	if backward == forward { // how far its stops lie apart and how wide it is go by the one ring
		narrower /= 2
	}
	return plan.Range{Min: geom.Clean(shaft.Min - housing.Max - wide), Max: geom.Clean(shaft.Max - housing.Min - wide + narrower)}, true
}

// sameWay is 1 where the shafts of two bearings look the same way along, else -1.
func (j *making) sameWay(t, o *joint) float64 {
	return j.at(t.a.Instance()).at.s * j.at(o.a.Instance()).at.s
}

// apartMm is how far a stop of one part lies behind that of another along the shaft of a bearing: in one part inside the limits
// of its lengths, between two inside the general tolerance of the distance as drawn, or as far as coarser lengths between them go.
func (j *making) apartMm(t *joint, from, to feature, at, other ballStop) (mm plan.Range) {
	one, two, shaft := j.at(from.Instance()).at, j.at(to.Instance()).at, j.at(t.a.Instance()).at
	turned := one.s != shaft.s
	if from.Instance() == to.Instance() {
		mm = from.apartMm(j.w, at, other)
	} else {
		drawn := shaft.s * (two.z0 + two.s*other.mm - one.z0 - one.s*at.mm)
		limits, coarse := from.r.General(geom.Clean(math.Abs(drawn))), j.coarseMm(from.Instance(), geom.Between(one.z0+one.s*at.mm, two.z0+two.s*other.mm))
		mm, turned = plan.Range{Min: geom.Clean(limits.MinMm - coarse), Max: geom.Clean(limits.MaxMm + coarse)}, drawn < 0
	}
	if turned {
		return plan.Range{Min: -mm.Max, Max: -mm.Min}
	}
	return mm
}

// coarseMm is how much farther than the general tolerance lengths with limits of their own go, of the parts that are held together with
// one and lie on a stretch of its axis, and of made studs between two of those.
func (j *making) coarseMm(i parts.Instance, on geom.Span) (mm float64) {
	held, group := j.job.Turning(i), j.at(i).group
	over := func(r *part.Model, lies func(*part.Step) bool) {
		for s := range seq.Refs(r.Steps) {
			if l, long := s.Drawn.Limits, s.Drawn.Length.Mm; len(l) == 2 && lies(s) {
				mm += max(0, max(long-l[0].Mm, l[1].Mm-long)-(r.General(long).MaxMm-long))
			}
		}
	}
	for p := range seq.Refs(j.placed) {
		if held[p.Instance] && p.group == group {
			over(p.r, func(s *part.Step) bool { return p.at.span(s.Span()).Meets(on) })
		}
	}
	for _, t := range j.all {
		a, b := j.at(t.a.Instance()), j.at(t.b.Instance())
		if t.in.Stud() != "" && held[t.a.Instance()] && a.group == group && b.group == group && geom.Between(a.along().MidMm(), b.along().MidMm()).Meets(on) {
			over(j.model(t.in.Stud()), func(s *part.Step) bool { return s.Size.Thread == nil })
		}
	}
	return mm
}

// carrying are the bearings of a shaft as one is, or of what is one with that, in its housing or in one that does not move to it
// once all joints are made.
func (j *making) carrying(t *joint) []*joint {
	shaft, still := j.job.Turning(t.a.Instance()), j.job.Turning(t.b.Instance())
	return seq.Keep(j.all, func(o *joint) bool {
		return !o.refused() && o.is(parts.BearingKind) && shaft[o.a.Instance()] && still[o.b.Instance()] && j.onOneAxis(t.a, o.a)
	})
}

// shaftPlayMm is the most that ball bearings leave a shaft free along at all limits. Common practice, no source.
const shaftPlayMm = 0.5

// plays are the least that bearings leave their shaft along between two of them, and however it is held; nil where nothing holds it so.
// Where two of them clamp it that is noted.
func (j *making) plays(t *joint, all []*joint) (between, least *plan.Range, clamped bool) {
	for _, b := range all {
		for _, f := range all {
			mm, ok := j.giveMm(b, f)
			if !ok {
				continue
			}
			if least == nil || mm.Min < least.Min {
				least = &mm
			}
			switch {
			case b == f:
			case !geom.Over(mm.Min, 0):
				t.problem(plan.BallsClamped, plan.Named(b.in.Name.Value), plan.Named(f.in.Name.Value), plan.Named(t.a.title()), plan.Of(plan.Mm, mm.Min), plan.Of(plan.Mm, mm.Max))
				return nil, nil, true
			case between == nil || mm.Min < between.Min:
				between = &mm
			}
		}
	}
	return between, least, false
}

// located says at the last bearing of a shaft which of them holds the shaft along, and judges the play that they leave it.
func (j *making) located(t *joint, p *plan.BearingPlan) {
	all := j.carrying(t)
	if slices.Index(all, t) != len(all)-1 || slices.ContainsFunc(all, func(o *joint) bool { return !o.in.Bearing.Ball }) { // the last says it, or others hold the shaft
		return
	}
	all = seq.Keep(all, func(o *joint) bool { return o.out != nil && o.out.Bearing != nil })
	between, least, clamped := j.plays(t, all)
	if clamped {
		return
	}
	if least != nil && geom.Over(least.Min, shaftPlayMm) {
		t.problem(plan.ShaftLoose, plan.Named(t.a.title()), plan.Of(plan.Mm, least.Min), plan.Of(plan.Mm, least.Max), plan.Of(plan.Mm, shaftPlayMm))
	}
	for _, dir := range []float64{1, -1} {
		if !slices.ContainsFunc(all, func(o *joint) bool { _, _, ok := j.holds(o, dir*j.sameWay(t, o)); return ok }) {
			p.Leaves = append(p.Leaves, parts.Face(faceName(dir)))
		}
	}
	j.locatedSaid(t, p, all, between)
}

// locatedSaid says which bearings hold a shaft along and which leave it free, and how much play it is left.
func (j *making) locatedSaid(t *joint, p *plan.BearingPlan, all []*joint, play *plan.Range) {
	held, free := j.locating(all)
	text := words.Join("; ", words.When(len(held) > 0, strings.Join(held, ", ")+" both ways"), words.When(len(free) > 0, strings.Join(free, ", ")+" floats"))
	if len(p.Leaves) > 0 || len(all) < 2 {
		return
	}
	if text == "" {
		text = "each of the bearings one way"
	}
	t.figure("held along", text, "shoulders, rings and covers as drawn; a ring that is tight by the middle of its limits stays")
	if play == nil {
		return
	}
	limits := t.w.ReadLimits(play.Min, play.Max)
	housings := words.When(slices.ContainsFunc(all, func(o *joint) bool { return !o.joins(t) }), ", where the housings stand to each other by the general tolerance")
	if slices.ContainsFunc(all, func(o *joint) bool {
		return !o.joins(t) && j.coarseMm(t.b.Instance(), geom.Between(j.at(t.b.Instance()).along().MidMm(), j.at(o.b.Instance()).along().MidMm())) > 0
	}) {
		housings += " and the coarser limits of lengths between"
	}
	t.figure("play along between the bearings", limits, "lengths inside their limits"+housings+"; widths of rings by ISO 492, from memory")
	if len(held) == 0 {
		t.out.Checks = append(t.out.Checks, plan.Check{
			What:   "play of " + words.Either(t.in.Bearing.Rotating == "outer", t.b.title(), t.a.title()) + " along",
			Wanted: "some, no bearing pushes the other", Limits: limits, Gauge: "dial", Source: lookup.NoSource,
		})
	}
}

// locating are the bearings of a shaft that hold it along both ways, and those that leave it free both ways, by their seats in the housing.
func (j *making) locating(all []*joint) (held, free []string) {
	for _, o := range all {
		_, _, one := j.holds(o, 1)
		_, _, other := j.holds(o, -1)
		switch {
		case one && other:
			held = append(held, o.b.text())
		case !one && !other:
			free = append(free, o.b.text())
		}
	}
	return held, free
}

// ringsKept puts the retaining rings beside a bearing on one of its parts, of two that which looks to the front first, before the
// bearing comes.
func (j *making) ringsKept(t *joint, f feature, first bool) {
	wide := t.in.Bearing.Width.Mm
	var kept []ballStop
	for _, dir := range []float64{-1, 1} {
		face := j.faceOf(t, f, dir)
		at, ok := t.ringStop(f, dir, face, wide)
		if !ok {
			continue
		}
		kept = append(kept, at)
		if other, ok := t.stopOf(f, -dir, j.faceOf(t, f, -dir)); first && ok && (other.ring == nil || back(dir)) {
			t.ringRoom(f, other, at, plan.Range{Min: wide, Max: wide})
		}
	}
	if len(kept) == 2 {
		kept = kept[:1]
		if !first {
			kept = kept[1:2]
		}
	} else if first {
		return
	}
	for _, at := range kept {
		t.ringKept(f, at)
	}
}

// ringRoom notes a retaining ring that does not go into its groove at all limits, beside what is so wide and stands against another stop.
func (t *joint) ringRoom(f feature, from, to ballStop, wide plan.Range) (room plan.Range) {
	apart := f.apartMm(t.w, from, to)
	if !back(to.dir) {
		apart = plan.Range{Min: -apart.Max, Max: -apart.Min}
	}
	room = plan.Range{Min: geom.Clean(apart.Min - wide.Max), Max: geom.Clean(apart.Max - wide.Min)}
	if geom.Over(0, room.Min) {
		t.problem(plan.RingNoRoom, plan.Named(words.Spaced(to.ring.Row.Name)), plan.Named(f.title()), plan.Of(plan.Mm, room.Min), plan.Of(plan.Mm, room.Max))
	}
	return room
}

// ringKept is the row in which a retaining ring goes into its groove.
func (t *joint) ringKept(f feature, at ballStop) *plan.JointStep {
	item, _, _ := at.ring.Ring(t.w)
	t.out.Keepers = append(t.out.Keepers, plan.Keeper{On: f.Instance(), Groove: at.ring.Row.Name, ToBack: back(at.dir)})
	return t.ringStep(item, words.Spaced(at.ring.Row.Name)+" of "+f.title())
}

// ringStep is the row in which a retaining ring goes into a groove.
func (t *joint) ringStep(item, groove string) *plan.JointStep {
	s := t.step("Keep", "Spring the "+words.Lower(item)+" into "+groove+" with its pliers and turn it: it sits on the floor of the groove all round.")
	s.Caution = "A ring springs off its pliers: eyes protected."
	return s
}
