package joint

import (
	"math"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
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

// standChecks are the places of a branch that is welded on, to measure: what is built on
// its free end stands by them.
func (t *joint) standChecks() []plan.Check {
	s := t.stand()
	if s == nil {
		return nil
	}
	main, w := t.b.title(), t.w
	length := func(what, wanted string, mm float64) plan.Check {
		off := weld.PlaceOff(mm)
		lo, hi := geom.Clean(mm-off), geom.Clean(mm+off)
		return plan.Check{What: what, Wanted: w.Size(mm) + wanted, Limits: w.Limits(lo, hi), MinMm: lo, MaxMm: hi, Gauge: "tape", Source: weld.PlaceSource}
	}
	apart := math.Min(s.ClockDeg, 360-s.ClockDeg)
	off := weld.PlaceOff(apart * math.Pi / 180 * s.MainMm / 2)
	set := "square, feeler"
	if s.AngleDeg != 90 {
		set = "bevel protractor, feeler"
	}
	return []plan.Check{
		length("axis of "+t.a.title(), " from the "+string(s.From)+" face", s.AxialMm),
		{What: "clock", Wanted: words.Trim(s.ClockDeg, 2) + "°, " + s.Way(main), Limits: "within " + w.Read(off) + " round", MaxMm: geom.Clean(off), Gauge: "rule", Source: weld.PlaceSource},
		{What: "angle", Wanted: words.Trim(s.AngleDeg, 3) + "° between the axes", Limits: "within " + w.Read(weld.LeanOff(s.LengthMm)) + " over " + w.Size(s.LengthMm), MaxMm: geom.Clean(weld.LeanOff(s.LengthMm)), Gauge: set, Source: weld.PlaceSource},
		length("middle of its free end", " from the far side", s.FarMm),
	}
}
