package layout

import (
	"centrepop/layout/material"
	"centrepop/layout/words"
)

// weldMetals judges the two materials of a weld. ok is false if one of them is
// not known, which the review of the part reports.
func weldMetals(t *joint) (j material.Join, ok bool) {
	a, b := t.a.r.material, t.b.r.material
	if a == nil || b == nil {
		return j, false
	}
	return material.JoinOf(*a, *b), true
}

// weldMetalProblem says by name what is not welded like ordinary steel; empty if
// nothing speaks against it.
func weldMetalProblem(j material.Join) string {
	preheat := ""
	if j.PreheatC.Max > 0 {
		preheat = "preheat to " + words.Trim(j.PreheatC.Min, 0) + " – " + words.Trim(j.PreheatC.Max, 0) + " °C (a start, common practice), "
	}
	name := j.Worse.Name
	switch j.Reason {
	case material.JoinHardens:
		if j.Class == material.WeldPreheated {
			return ""
		}
		return name + " hardens beside the weld and is not readily weldable: " + preheat + "slow cooling and a proven procedure are needed, or join otherwise"
	case material.JoinIron:
		return name + " is not readily weldable: " + preheat + "nickel filler and a proven procedure are needed, or join otherwise"
	case material.JoinOwn, material.JoinStainless:
		return name + " is not readily weldable like ordinary steel: it takes a filler and procedure of its own"
	case material.JoinCracks:
		return name + " is not readily weldable: it cracks whatever is done; join otherwise"
	case material.JoinMetals:
		return name + " is not readily weldable to the other metal: they do not mix; join otherwise"
	}
	return ""
}
