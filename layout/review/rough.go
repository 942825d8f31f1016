package review

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// roughOpening looks for an opening that is cut before its branch is there and
// reaches beyond the hole that the branch needs: what is cut away there is gone.
func (r *reviewer) roughOpening(p *parts.Part, end *parts.TubeEnd, main *view) {
	square := *end
	square.Angle.Deg = 90
	hole, outer, _ := midRadii(r.pl.Part(p.Name.Value).Section)
	needs := "the bore of " + p.Title.Value
	if end.SetIn {
		hole, needs = outer+end.Gap.Mm, p.Title.Value+" with its gap"
	}
	off := func(row plan.RadialRow, end *parts.TubeEnd, round, on float64) float64 {
		from, along, _ := stand.BranchAxis(end, main.lengthMm)
		at := assembly.Clock(row.OutsideMm/2, row.ClockDeg+2*round/row.OutsideMm*180/math.Pi)
		at.Z = -(row.AxialMm + on)
		return at.Sub(from).Cross(along).Len()
	}
	_, along, _ := stand.BranchAxis(end, main.lengthMm)
	for _, row := range main.q.Radials {
		top := assembly.Clock(1, row.ClockDeg)
		if !r.weldedTo(p, main, row.Name) && (top.Dot(along) <= 0 || off(row, end, 0, 0) >= hole) {
			continue // of another branch, or no branch's
		}
		most, leans, fix := 0.0, 0.0, "a smaller opening, or one that is moved with the branch"
		for _, e := range edgeOfOpening(row) {
			most, leans = math.Max(most, off(row, end, e.XMm, e.YMm)), math.Max(leans, off(row, &square, e.XMm, e.YMm))
		}
		if !geom.Over(leans, hole) {
			fix = "angle: 90, for which the opening is cut, or an opening for a branch that leans"
		}
		if !geom.Over(most, hole) {
			continue
		}
		r.add(Finding{
			Severity: Stop, Part: p.Name.Value, Pos: end.Pos, What: row.Name + " of " + main.p.Title.Value + " is cut beyond the hole that " + p.Title.Value + " needs",
			Numbers: "by " + r.mm(most-hole) + " at the worst place; the hole is that of " + needs + ", " + r.mm(2*hole), OverMm: over(most - hole),
			Rule: "a rough opening lies within the finished hole", Source: "by geometry", Fix: fix,
		})
	}
}

// weldedTo tells whether a joint welds a branch to an opening of its main.
func (r *reviewer) weldedTo(branch *parts.Part, main *view, opening string) bool {
	return slices.ContainsFunc(r.job.Of(parts.WeldKind), func(j *parts.Joint) bool {
		to := j.Weld.To
		base, _, _ := parts.Numbered(to.Feature)
		return j.Weld.Part.Part == branch.Name.Value && to.Part == main.p.Name.Value && (to.Feature == opening || base == opening)
	})
}

// edgeOfOpening is the edge of an opening on the unrolled outside, from its
// middle: x round, y along, in mm.
func edgeOfOpening(row plan.RadialRow) []plan.XY {
	around, along, corner := row.Sides()
	x, y := around/2, along/2
	const stepDeg = 5
	var out []plan.XY
	for deg := 0.0; deg < 360; deg += stepDeg {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		out = append(out, plan.XY{XMm: math.Copysign(x-corner, cos) + corner*cos, YMm: math.Copysign(y-corner, sin) + corner*sin})
	}
	return out
}
