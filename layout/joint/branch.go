package joint

import (
	"math"
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// stand is how a branch stands on its main; nil for another weld, and where no place is said.
func (t *joint) stand() *part.Stand {
	e := t.branchEnd()
	if e == nil {
		return nil
	}
	return t.a.r.Stands(e.Face)
}

// branchEnd is the saddled end of a branch that is welded to its main, nil for
// another weld.
func (t *joint) branchEnd() *parts.TubeEnd {
	ends := t.a.r.Part.Ends
	i := slices.IndexFunc(ends, func(e parts.TubeEnd) bool { return t.b.radial != nil && e.Onto.Part == t.b.ref.Part })
	if i < 0 {
		return nil
	}
	return &ends[i]
}

// cutTo tells whether an end of A is cut to B and says where A stands: a saddle, a cope or a mitre.
func (t *joint) cutTo() bool {
	return t.in.Weld != nil && t.in.Place == nil && (t.stand() != nil || t.copeText() != "" || t.corner())
}

// standChecks are the places of a branch or of a round in a bore that is welded on, to measure: what is built on
// its free end stands by them.
func (j *making) standChecks(t *joint) []plan.Check {
	s, w := t.stand(), t.w
	length := func(what, from, gauge string, mm float64) plan.Check {
		off, at := weld.PlaceOff(mm), math.Abs(mm)
		lo, hi := geom.Clean(at-off), geom.Clean(at+off)
		limits := words.Either(lo > 0, w.Limits(lo, hi), "within "+w.Said(off))
		return plan.Check{What: what, Wanted: w.Size(at) + words.Either(mm < 0, " beyond ", " from ") + from, Limits: limits, MinMm: lo, MaxMm: hi, Gauge: gauge, Source: weld.PlaceSource}
	}
	if p := t.in.Place; p != nil && t.axis && t.enters() && p.Gap.Mm != 0 {
		return []plan.Check{length(p.With+" of "+t.a.title(), "the "+p.On+" of "+t.b.title(), "tape", math.Abs(p.Gap.Mm))}
	}
	if s == nil {
		return nil
	}
	end := t.branchEnd()
	face, mm := j.outermost(t.a.Instance(), end.Face.Other(), "its free end")
	from, past := j.outermost(t.b.Instance(), s.From, "the "+string(s.From)+" face")
	main := t.b.title()
	apart := math.Min(s.ClockDeg, 360-s.ClockDeg)
	off := weld.PlaceOff(apart * math.Pi / 180 * s.MainMm / 2)
	lean := s.AngleDeg * math.Pi / 180
	set, gauge := "square, feeler", words.Either(s.PointsDeg != s.ClockDeg, "square, rule", "tape")
	along := length("axis of "+t.a.title(), from, "tape", geom.Clean(s.AxialMm+past))
	if s.AngleDeg != 90 { // where the axis goes in is inside the branch, and its sides lean
		set, gauge = "bevel protractor, feeler", "square, rule"
		along = length("middle of "+face, from, gauge, words.Round(s.FreeMm+past+words.Either(s.Leans == s.From, -mm, mm)*math.Cos(lean), 1))
	}
	return []plan.Check{
		along,
		{What: "clock", Wanted: words.Angle(s.ClockDeg) + ", " + s.Way(main), Limits: "within " + w.Read(off) + " round", MaxMm: geom.Clean(off), Gauge: "rule", Source: weld.PlaceSource},
		{
			What: "angle", Wanted: words.FineAngle(s.AngleDeg) + " between the axes",
			Limits: "within " + w.Read(weld.LeanOff(s.LengthMm)) + " over " + w.Size(s.LengthMm), MaxMm: geom.Clean(weld.LeanOff(s.LengthMm)), Gauge: set,
			Source: weld.PlaceSource,
		},
		length("middle of "+face, "the far side", gauge, words.Round(s.FarMm+mm*math.Sin(lean), 1)),
	}
}

// outermost is the face that is farthest out at the end of a part: of what is on it
// already, mm beyond that end, or the end itself, by its name.
func (j *making) outermost(of parts.Instance, free parts.Face, end string) (face string, mm float64) {
	face = end
	branch := j.at(of)
	for _, i := range j.members(of, j.before) {
		on := j.at(i)
		if on == nil || branch == nil || on.group != branch.group {
			continue
		}
		is := on.at.seenFrom(branch.at)
		for _, f := range []parts.Face{parts.Front, parts.Back} {
			out := free.Outward() * (is.z0 + is.s*faceMm(on.r, f.Outward()) - faceMm(branch.r, free.Outward()))
			if geom.Over(out, mm) {
				face, mm = "the "+string(f)+" of "+copyTitle(on.r, on.Copy), out
			}
		}
	}
	return face, geom.Clean(mm)
}
