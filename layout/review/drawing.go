package review

import (
	"math"
	"sort"

	"centrepop/layout"
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

// top looks for parts that can be put on in a wrong turn without a mark for TOP.
func top(v *view) {
	if v.p.Top.Value != "" {
		return
	}
	turns := v.rightTurns()
	if turns == nil {
		return
	}
	numbers := "no turn but the right one brings all its features together again"
	if len(turns) > 1 {
		numbers = "it comes together again in " + number(float64(len(turns))) + " turns, yet others match in part"
	}
	v.report(Check, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " does not say how TOP is marked, and can be put on turned", Numbers: numbers,
		Rule: "a pattern that does not repeat all round needs TOP on the part", Source: practice, Fix: "add top: punch, or scribe, notch, paint or keyway",
	})
}

// rightTurns lists the turns of a round part that bring holes and openings
// together again, if they are not those of all its patterns. It is nil if TOP
// does not matter: no pattern, one regular pattern alone, a plate whose outline
// shows how it lies, or patterns that all repeat together.
func (v *view) rightTurns() []float64 {
	if len(v.outside) == 0 || v.p.Frustum != nil {
		return nil
	}
	sets := v.patterns()
	if len(sets) == 0 {
		return nil
	}
	var common []float64
	least := math.Inf(1)
	for i, s := range sets {
		turns := s.turns()
		least = math.Min(least, 360/float64(len(turns)))
		if i == 0 {
			common = turns
			continue
		}
		var both []float64
		for _, a := range common {
			for _, b := range turns {
				if math.Abs(a-b) < 1e-6 {
					both = append(both, a)
				}
			}
		}
		common = both
	}
	// One turn off some pattern's own must be off for all of them.
	for _, s := range sets {
		if len(s.turns()) > len(common) {
			return common
		}
	}
	if len(common) == 1 && sets[0].count() > 1 {
		return common
	}
	return nil
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
		middle := layout.XY{XMm: (h.a.XMm + h.b.XMm) / 2, YMm: (h.a.YMm + h.b.YMm) / 2}
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
	sort.Float64s(out)
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
