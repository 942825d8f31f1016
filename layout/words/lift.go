package words

import "centrepop/layout/plan"

// Carriers says who or what moves a mass, kg: empty for what one person can, two
// people up to plan.HoistKg (ISO 11228-1, from memory), a hoist above.
func Carriers(kg float64) string {
	switch {
	case kg <= plan.LiftKg:
		return ""
	case kg <= plan.HoistKg:
		return "hoist or two people (over " + Trim(plan.LiftKg, 0) + " kg, ISO 11228-1, from memory)"
	}
	return "hoist, with slings rated for it, by local lifting rules"
}

// Sling says where a lift is slung; empty where that is not known.
func (w Writer) Sling(l *plan.Lift) string {
	s := l.Sling
	if s == nil {
		return ""
	}
	on := s.On[0]
	if s.On[1] != on {
		on += " and " + s.On[1]
	}
	turns := ""
	if s.OverMm > 0 {
		turns = " It lies up to " + w.Read(s.OverMm) + " above those places: hold the top with a third sling, or the load turns over."
	}
	return "Its centre of gravity, as worked out, lies " + w.Read(s.CentreMm) + " from its " + s.End + " end: sling it " + w.Read(s.HalfMm) + " to each side of that, on " + on +
		", the hook " + w.Read(s.HookMm) + " above or more, legs " + Trim(plan.SlingDeg, 0) + "° to the level or steeper (common practice, no source); lift a hand's breadth and look." + turns
}
