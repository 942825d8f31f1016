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
