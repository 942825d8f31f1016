package joint

import (
	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// gripSteps set a split ring on a shaft on which nothing else keeps it, and close it there.
func (j *making) gripSteps(t *joint, p *plan.SlidePlan) {
	hub, shaft := t.a.title(), t.b.title()
	p.From = ""
	t.playFigure(p, ", before the screw closes it")
	if _, tied := j.side(t, j.before); tied {
		t.step("See where it stands", words.Capital(hub)+" came onto "+shaft+" with an earlier step: "+ofPlace+".")
	} else {
		t.step("Slide on", t.wipedDry(),
			"Bring "+hub+" along "+shaft+" to its place: "+ofPlace+".")
	}
	j.clampStep(t, p)
}

// wipedDry has shaft and bore wiped before a split hub goes on.
func (t *joint) wipedDry() string {
	return "Wipe " + t.b.text() + " and " + t.a.text() + " clean and dry: no oil or grease between the two. The screw of " + t.a.title() + " in its thread, slack."
}

// clampStep closes a split hub on its shaft by its screw.
func (j *making) clampStep(t *joint, p *plan.SlidePlan) {
	c, hub := t.a.r.Clamp, t.a.title()
	p.Gripped = true
	t.figure("clamp holds", t.w.Torques(c.Row.HoldsNm.Min, c.Row.HoldsNm.Max), "common practice, no source")
	t.step("Clamp", "Tighten "+clampScrew(t.a.r)+".").Hold = words.Capital(hub) + " neither turns nor slides on " + t.b.title() + " by hand, and its cut is still open."
	k := c.NutFactor()
	t.out.Checks = append(t.out.Checks,
		plan.Check{
			What: "torque of the clamp", Wanted: t.w.Torque(c.Row.TorqueNm), Limits: "threads oiled, K = " + words.Trim(k.K, 3) + " assumed",
			Gauge: "torque wrench", Source: lookup.Told(k.Source),
		},
		plan.Check{What: "cut of the clamp", Wanted: hub, Limits: "still open all along", Gauge: "feeler", Source: lookup.NoSource})
}

// clampScrew says which screw of a split ring is tightened to what, and what that then holds.
func clampScrew(r *part.Model) string {
	return "its " + r.Clamp.Tighten(r.W) + "; " + r.Clamp.Grips(r.W)
}

// looseClamp says what screw closes a split ring that comes loose; empty of anything else, and of a nut, which its
// bearing has locked.
func (j *making) looseClamp(e *parts.Loose) string {
	if e.Part.Value == "" {
		return ""
	}
	r := j.model(e.Part.Value)
	if r.Clamp == nil || r.StepNamed(r.Clamp.Row.In).Size.Thread != nil {
		return ""
	}
	return "Tighten " + clampScrew(r) + "."
}
