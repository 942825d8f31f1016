package joint

import (
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
)

// pattern is a bolted group's points in the assembly.
func (j *assembly) pattern(f feature) []plan.XY {
	p := j.at(f.Instance())
	if p == nil || f.group == nil || f.onWall() {
		return nil
	}
	return seq.Map(f.points(), p.at.point)
}

// meets tells whether each point of a, displaced, finds a point of b within
// reach.
func meets(a, b []plan.XY, m placement, r leeway) bool {
	r.a = m.point(r.a)
	for _, p := range a {
		q := m.point(p)
		if !slices.ContainsFunc(b, func(o plan.XY) bool { return r.found(q, o) }) {
			return false
		}
	}
	return len(a) > 0
}

// motions lists every turn at which pattern a falls on pattern b, the right place left out: as it
// is, and with flips first end for end about the line through TOP.
func motions(a, b []plan.XY, r leeway, flips bool) (out []placement) {
	if len(a) == 0 {
		return nil
	}
	for _, s := range []float64{1, -1} {
		way := placement{s: s}
		if way.turned() && !flips {
			break
		}
		turns := r.turns(way.point(a[0]), b)
		slices.Sort(turns)
		for _, turn := range turns {
			m := placement{turn: turn, s: s}
			if (m.turned() || apart(turn, 0) > alignDeg) && meets(a, b, m, r) {
				out = append(out, m)
			}
		}
	}
	return out
}
