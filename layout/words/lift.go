package words

import (
	"strings"

	"centrepop/layout/plan"
)

// Carriers says who or what moves a mass, kg: empty for what one person can, two
// people up to plan.HoistKg, a hoist above.
func (w Writer) Carriers(kg float64) string {
	switch {
	case kg <= plan.LiftKg:
		return ""
	case kg <= plan.HoistKg:
		return "hoist or two people (over " + w.RoundMass(plan.LiftKg, 0) + ", ISO 11228-1)"
	}
	return "hoist, with rated slings, by local lifting rules"
}

// AtLeast stands before a mass of which something is not known.
func AtLeast(so bool) string { return When(so, "at least ") }

// Out says what lies out of place.
func Out(o plan.Out) string {
	text := o.What
	switch {
	case o.Clocked:
		text += " at " + Angle(o.AtDeg) + " instead of " + Angle(o.RightDeg)
	case o.Elsewhere:
		text += " elsewhere"
	}
	text += When(o.Unruled, " (no rule says where it belongs)")
	return text
}

// Sling says where a lift is slung; empty where that is not known.
func (w Writer) Sling(l *plan.Lift) string {
	s := l.Sling
	switch {
	case s == nil:
		return ""
	case l.Tried != "":
		return "Sling it as in the step that bolts it on."
	}
	tape := func(mm float64) string { return w.Read(w.Even(mm, 1, 0.1)) }
	atMost := func(mm float64) string { return w.Read(-w.Up(-mm, 1, 0.1)) }
	atLeast := func(mm float64) string { return w.Read(w.Up(mm, 1, 0.1)) }
	on := s.On[0]
	on += When(s.On[1] != on && !s.For, " and "+s.On[1])
	turns := When(s.OverMm > 0, " It lies up to "+atLeast(s.OverMm)+" above those places: hold the top with a third sling, or the load turns over.")
	how := "sling it " + tape(s.HalfMm) + " to each side of that, straps at most " + atMost(s.StrapMm) + " wide, on " + on + ", the hook " +
		atLeast(s.HookMm) + " or more above the upper strap, legs " + Trim(plan.SlingDeg, 0) + "° to the level or steeper (common practice, no source)"
	switch {
	case s.For && s.Eyes == "":
		how = "shackles rated for it in " + s.Holes + " of each " + on + " to both sides of that, legs " + Trim(plan.SlingDeg, 0) + "° to the level or steeper"
	case s.Eyes != "":
		below := When(s.Through, ", no thread out below")
		how = When(!s.For, "a strap would be caught: ") + "eye bolts rated for it, home in the " + s.Eyes + " holes " + s.Holes + " of " + on +
			" to both sides of that" + below + ", legs " + Trim(plan.SlingDeg, 0) +
			"° to the level or steeper, the hook so high that none touches what stands there"
	case s.HalfMm == 0:
		how = "hold it to both sides of that, the straps clear of the joint"
	}
	end := Either(s.FrontUp, "side at "+s.End+", front up", s.End+" end")
	return "On the hoist: its centre of gravity, as worked out, lies " + tape(s.CentreMm) + " from its " + end + ", that of " + s.At + ": " + how + "; lift a hand's breadth and look." + turns
}

// Holds says what to hold at a step until its joint does; piece is what is tacked.
func (w Writer) Holds(h *plan.Hold, piece string) string {
	if h == nil {
		return ""
	}
	return Join(" ", w.holdsPiece(h, piece),
		When(len(h.RunsOn) > 0, "Its seam runs on along "+strings.Join(h.RunsOn, " and ")+"."),
		When(h.UprightDeg > 0, "Upright, it falls over when it leans "+Trim(h.UprightDeg, 0)+"°"+guided(h)+"."),
		When(h.Foot != "", "It stands upright on "+h.Foot+"."),
		When(h.Packed, Either(h.Once, "Once together it falls over", "By itself it falls over")+": pack it up level on what is firm and clamp it, or leave it in the sling, until the step is done."),
		When(h.On[0] != "", w.inBlocks(h)),
		When(h.BeyondMm > 0, w.tipsBeyond(h)),
		When(h.Slung, "What hangs in the sling stays in it until the joint is tight."))
}

// holdsPiece says how a piece is held until it is tacked, or what comes until it is bolted.
func (w Writer) holdsPiece(h *plan.Hold, piece string) string {
	switch {
	case h.GapMm > 0:
		return "Pack the gap of " + w.Read(h.GapMm) + " and clamp " + piece + " until its tacks hold."
	case h.Against != "":
		return "Loose, " + piece + " comes off the upright face of " + h.Against + ": clamp it to that until its tacks hold."
	case h.Comes != "":
		return "Nothing carries " + h.Comes + " there: prop it or hold it to the face until two bolts are home."
	case h.Hangs:
		return "Nothing is under " + piece + ": prop it, or clamp it to an angle plate, until its tacks hold."
	case h.PieceDeg > 0:
		return "Loose, " + piece + " falls over when it leans " + Trim(h.PieceDeg, 0) + "°: clamp it to an angle plate or a block until its tacks hold."
	}
	return ""
}

// inBlocks says what lies in V-blocks, and why.
func (w Writer) inBlocks(h *plan.Hold) string {
	under := Either(h.On[0] == h.On[1], "both ends of "+h.On[0]+", its centre of gravity between them", h.On[0]+" and "+h.On[1]+", astride its centre of gravity")
	how := When(h.Cups, "For the cups upright on the table, as their rows say. ") + Either(h.Once, "Once together it rolls or falls over: ", "By itself it rolls or falls over: ")
	if h.Out != "" {
		how = w.takesOut(h)
	}
	return how + "chocked V-blocks under " + under + ", " + w.Read(h.CentreMm) + " from its front end, that of " + h.At + "."
}

// tipsBeyond says towards what something tips, and what keeps it.
func (w Writer) tipsBeyond(h *plan.Hold) string {
	keeps, hold := "Only the anchors keep it from tipping", "Until they are tight a"
	if h.Free {
		keeps, hold = "By itself it tips", "A"
	}
	when := When(len(h.Later) > 0, "; so again whenever "+strings.Join(h.Later, " and ")+" is off")
	return keeps + ": the centre of gravity lies " + w.Read(h.BeyondMm) + " beyond its feet, towards " + h.At + ". " + hold + " prop under it there" + when + "."
}

// guided says how what falls over is kept upright.
func guided(h *plan.Hold) string {
	guide := ": guide it until the ram holds it"
	switch {
	case h.Bolts:
		guide = ": one holds it until two bolts are home"
	case h.Lies != "":
		guide = ": clamp its foot down, do not lay it down"
	case h.Hot:
		guide = ": clamp its foot down until the two have gripped and are cold"
	case h.Grips:
		guide = ", and it is let down once: two hold it, or a sling, until the hub grips"
	}
	switch {
	case h.Lies != "" && h.Bolts:
		guide += "; " + h.Lies + " only lies on it: off first, then on again"
	case h.Lies != "":
		guide += "; never hold it by " + h.Lies + ", which only lies on it"
	}
	return guide
}

// takesOut says that a block comes out while something slides over the part that lay on it.
func (w Writer) takesOut(h *plan.Hold) string {
	tips := When(h.TipsMm > 0, ", or it tips")
	return "Clamp " + h.On[0] + " down" + tips + ". Take the block out from under " + h.Out + " as this goes over it. Then "
}
