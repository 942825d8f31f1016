package words

import "centrepop/layout/press"

// PressCaution says what a caution of a press fit is about, in the writer's units.
func (w Writer) PressCaution(c press.Caution) string {
	who := string(c.Who)
	switch c.Code {
	case press.Loose:
		return "No interference: " + w.Said(c.Mm) + " of play at the loosest limits, where the joint holds nothing."
	case press.Flattened:
		return "Roughness of " + w.Said(c.Mm) + " takes up the whole interference of " + w.Said(c.OfMm) + ": the joint holds nothing by friction."
	case press.Breaks:
		return "The " + who + " breaks: " + c.Material + " stands " + Trim(c.Safety, 2) + " of this stress."
	case press.Yields:
		return "The " + who + " yields: " + c.Material + " stands " + Trim(c.Safety, 2) + " of this stress elastically; pressure, force and torque are then upper bounds."
	case press.Brittle:
		return "The " + who + " of brittle " + c.Material + " has a safety of " + Trim(c.Safety, 2) + " only; " + Trim(c.LeastSafety, 1) + " is usual (common practice, no source)."
	case press.BoreCloses:
		return "The inner part's bore closes by " + w.Said(c.Mm) + ": finish it after pressing, or make it larger by this."
	case press.TooHot:
		return w.Heat(c.C) + " is above the " + w.Heat(c.LimitC) + " for " + c.Material + ": use less clearance, cool the shaft as well, or press."
	case press.TooCold:
		return w.Heat(c.C) + " is below the " + w.Heat(c.LimitC) + " to be had for " + c.Material + ": cooling alone will not do, heat the hub as well."
	case press.NeedsNitrogen:
		return w.Heat(c.C) + " is colder than dry ice: it needs liquid nitrogen, or heat the hub as well."
	case press.Frost:
		return "Frost forms on the cold part: work fast, dry and oil the joint's ends after; it burns skin, and boiling gas takes the air."
	case press.HeatSlowly:
		return "Cast iron: heat slowly and all round, in an oven if there is one."
	}
	return ""
}
