package review

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// material looks for parts that name none.
func material(v *view) {
	if v.p.Material.Value != "" {
		return
	}
	v.report(Check, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " has no material",
		Rule: "mass, speeds, thread depth and welding depend on it", Source: practice, Fix: "add material: S235, or what it is made of",
	})
}

// stock looks for parts that do not say what they are made from.
func stock(v *view) {
	if v.p.Stock.Form != "" {
		return
	}
	v.report(Check, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " does not say what stock it is made from",
		Rule: "the stock list and the first operation need it", Source: practice, Fix: "add stock: {plate: 8 mm, cut: laser}, or what it is made from",
	})
}

// top looks for parts that can be put on in a wrong turn without a mark for TOP:
// a round part whose holes do not repeat at all, and any part that some of its
// patterns let lie in a turn in which the others are out of place. A turn that
// the outline shows is no danger.
func top(v *view) {
	if v.p.Top.Value != "" || v.p.Frustum != nil {
		return
	}
	sets := v.patterns()
	if len(sets) == 0 {
		return
	}
	common, wrong := rightTurns(sets)
	wrong = slices.DeleteFunc(wrong, func(turn float64) bool { return !v.outlineTurns(turn) })
	lone := len(v.outside) > 0 && len(common) == 1 && sets[0].count() > 1
	if len(wrong) == 0 && !lone {
		return
	}
	numbers := "its holes come together again in no other turn"
	if len(wrong) > 0 {
		var list []string
		for _, t := range wrong {
			list = append(list, number(t)+"°")
		}
		numbers = "turned by " + few(list) + " some of its holes match and others do not"
	}
	v.report(Check, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " does not say how TOP is marked, and can be put on turned", Numbers: numbers,
		Rule: "a pattern that does not repeat all round needs TOP on the part", Source: practice, Fix: "add top: punch, or scribe, notch, paint or keyway",
	})
}

// rightTurns lists the turns that bring all patterns together again, and those
// that do so for some but not all; both rising.
func rightTurns(sets []*pattern) (common, wrong []float64) {
	for _, s := range sets {
		for _, t := range s.turns() {
			has := func(list []float64) bool {
				return slices.ContainsFunc(list, func(o float64) bool { return math.Abs(o-t) < 1e-6 })
			}
			all := true
			for _, o := range sets {
				all = all && o.fits(t)
			}
			switch {
			case all && !has(common):
				common = append(common, t)
			case !all && !has(wrong):
				wrong = append(wrong, t)
			}
		}
	}
	slices.Sort(common)
	slices.Sort(wrong)
	return common, wrong
}

// outlineTurns tells whether a part looks the same from outside in a turn.
func (v *view) outlineTurns(turn float64) bool {
	step := 360.0 // of a shape that repeats in no turn
	switch o := v.p.Outline; {
	case o == nil || o.Shape == parts.CircleOutline:
		return true
	case o.Shape == parts.SquareOutline:
		step = 90
	case o.Shape == parts.RectangleOutline || o.Shape == parts.SlotOutline:
		step = 180
	case o.Sides > 0:
		step = 360 / float64(o.Sides)
	}
	off := math.Mod(turn, step)
	return off < 1e-6 || step-off < 1e-6
}

// pattern is the places of one group, as clock angles with what else places
// them.
type pattern struct{ places []place }

type place struct{ deg, radiusMm, zMm float64 }

func (p *pattern) count() int { return len(p.places) }

// patterns lists the groups of holes and openings off the axis.
func (v *view) patterns() []*pattern {
	var out []*pattern
	byName := map[string]*pattern{}
	add := func(name string, at place) {
		if byName[name] == nil {
			byName[name] = &pattern{}
			out = append(out, byName[name])
		}
		byName[name].places = append(byName[name].places, at)
	}
	for i := range v.holes {
		h := &v.holes[i]
		middle := plan.XY{XMm: (h.a.XMm + h.b.XMm) / 2, YMm: (h.a.YMm + h.b.YMm) / 2}
		if r := math.Hypot(middle.XMm, middle.YMm); r > slackMm {
			add(h.name, place{clock(h), r, 0})
		}
	}
	for _, o := range v.openings() {
		add(o.radial.Name.Value, place{o.clockDeg, o.outerMm, o.zMm})
	}
	return out
}

// turns lists the turns, 0 first, that bring a pattern onto itself.
func (p *pattern) turns() []float64 {
	var out []float64
	first := p.places[0]
	for _, other := range p.places {
		turn := math.Mod(other.deg-first.deg+720, 360)
		if math.Abs(turn-360) < 1e-6 {
			turn = 0
		}
		if p.fits(turn) {
			out = append(out, math.Round(turn*1e6)/1e6)
		}
	}
	slices.Sort(out)
	return out
}

// fits tells whether a turn brings every place onto one of the pattern.
func (p *pattern) fits(turn float64) bool {
	for _, a := range p.places {
		met := false
		for _, b := range p.places {
			off := math.Abs(math.Mod(a.deg+turn-b.deg+1080+180, 360) - 180)
			met = met || off*math.Pi/180*a.radiusMm < 0.01 && math.Abs(a.radiusMm-b.radiusMm) < 0.01 && math.Abs(a.zMm-b.zMm) < 0.01
		}
		if !met {
			return false
		}
	}
	return true
}

// tolerance looks for a job without a general tolerance class.
func tolerance(r *reviewer) {
	if r.job.Tolerance.Value != "" {
		return
	}
	r.add(Finding{
		Severity: Check, Pos: parts.Pos{File: r.job.File, Line: 1, Column: 1},
		What: "the job names no general tolerance class, so sizes without a fit have no limits",
		Rule: "a class f, m, c or v limits every size that has no limits of its own", Source: "ISO 2768-1:1989",
		Fix: "add tolerance: m to the job",
	})
}
