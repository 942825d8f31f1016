package review

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/cutting"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// drilled is a hole of a size that a drill of mm leaves.
type drilled struct {
	parts.HoleSize
	name    string
	mm      float64
	through bool
}

func (d drilled) fitted() bool { return d.Size.Fit.Pos.Line > 0 }

// drilledSizes lists the holes of a part, one for each group.
func (v *view) drilledSizes() []drilled {
	inFaces := v.oneOfEach(func(h *hole) bool { return h.group != nil })
	out := seq.Map(inFaces, func(h *hole) drilled { return drilled{h.group.Size, h.name, h.drillMm, h.through} })
	for f := range seq.Refs(v.p.Radials) {
		// What the hole of a branch takes away is not shown, nor drilled; nor is what is cut in the flat.
		row := seq.First(v.q.Shown, func(row plan.RadialRow) bool { return row.Name == f.Name.Value && row.DiameterMm > 0 })
		if f.Shape == parts.RadialHole && row.DiameterMm > 0 && !row.InFlat {
			out = append(out, drilled{f.Size, f.Name.Value, row.DiameterMm, f.Through})
		}
	}
	return out
}

// asDrawnMm is how far from its drill the size of a hole may lie: inches are drawn to three decimals, 17/32 as 0.531.
const asDrawnMm = 0.0005 * geom.MmPerInch

// drillSize looks for plain holes of a size no common drill has. Clearance and
// tapped holes take theirs from tables, and a fitted hole is reamed.
func (v *view) drillSize(d drilled) {
	if d.Make != parts.PlainHole || d.fitted() {
		return
	}
	metric, inch := nearestDrill(cutting.Metric, d.mm), nearestDrill(cutting.Inch, d.mm)
	if math.Min(math.Abs(metric.DiaMm-d.mm), math.Abs(inch.DiaMm-d.mm)) < asDrawnMm || d.mm > 50 {
		return
	}
	near := parts.By(v.job.Units, metric.Name+" mm", inch.Name+" ("+v.mm(inch.DiaMm)+")")
	v.report(Note, d.name, d.Pos, Finding{
		What: d.name + ": no common drill has this size", Numbers: v.mm(d.mm) + "; the nearest drill is " + near,
		Rule: "metric drills as in ISO 235, inch drills as in ASME B94.11M", Source: "from memory; which sizes a shop keeps: " + practice,
		Fix: "take a drill's size, or bore the hole",
	})
}

// nearestDrill is the stock drill of a system nearest to a diameter.
func nearestDrill(s cutting.System, mm float64) cutting.DrillSize {
	return slices.MinFunc(cutting.StockDrills(s), func(a, b cutting.DrillSize) int { return cmp.Compare(math.Abs(a.DiaMm-mm), math.Abs(b.DiaMm-mm)) })
}

// drillLarge looks for holes over the shop's largest drill. One that is cut with
// the outline needs none.
func (v *view) drillLarge(d drilled) {
	most := v.job.Shop.Drills
	leastMm, _, ok := v.leastHole()
	cut := ok && d.through && !d.fitted() && d.Make != parts.TappedHole && !geom.Over(leastMm, d.mm)
	if !most.Set() || cut || !geom.Over(d.mm, most.Mm) {
		return
	}
	v.report(Check, d.name, d.Pos, Finding{
		What: d.name + ": larger than the shop's largest drill", Numbers: "drill " + v.mm(d.mm) + ", the shop has up to " + v.mm(most.Mm), OverMm: over(d.mm),
		Rule: "the hole must be bored, sawn or cut with the outline", Source: "shop: drill: largest",
		Fix: "have it cut with the outline, bore it, or take a smaller size",
	})
}

// leastHole is the smallest hole the part's cutter makes, by the rule of the
// cutting file; false if nothing is cut by one.
func (v *view) leastHole() (mm float64, source string, ok bool) {
	if !v.p.Flat() {
		return 0, "", false
	}
	return part.LeastHoleMm(v.p.Stock.Cut, v.lengthMm)
}
