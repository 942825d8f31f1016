package joint

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"centrepop/layout/bars"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// standsRound tells whether the first part stands with an end of a round outside on a face: its own, or the shoulder to which
// what lies before it is let in.
func (t *joint) standsRound() bool {
	p, s := t.in.Place, t.a.step
	if p == nil || s != nil && s.Inside {
		return false
	}
	if s == nil { // an end that is formed round
		return t.a.roundMm() > 0 && string(parts.EndFaces[t.a.ref.Feature]) == p.With && geom.Alike(p.Gap.Mm, 0)
	}
	at := map[string]float64{string(parts.Front): s.FromMm, string(parts.Back): t.a.r.LengthMm() - s.ToMm}
	off, end := at[p.With]
	return end && (geom.Alike(off, 0) || geom.Alike(off, -p.Gap.Mm))
}

// weldProcesses are the processes by the words of the job; where it says none, the worst.
var weldProcesses = map[string]weld.Process{
	"": weld.Stick, "MMA": weld.Stick, "MAG": weld.MAG, "MIG": weld.MIG, "TIG": weld.TIG,
	"flux-cored": weld.FluxCored, "metal-cored": weld.MetalCored, "self-shielded": weld.SelfShielded,
}

// weldDiameterMm is where the weld runs round: the smaller of two rounds that fit each other, the outside of a branch,
// or one that stands with an end on a face; 0 where the weld is no circle.
func (t *joint) weldDiameterMm() float64 {
	a, b := t.a.roundMm(), t.b.roundMm()
	switch {
	case t.helixMm() != 0 || t.overhangs():
		return 0
	case a > 0 && b > 0:
		return math.Min(a, b)
	case t.b.radial != nil:
		return t.branchMm()
	case t.standsRound():
		return a
	}
	return 0
}

// overhangs tells whether the first part is round and lies with its face on one that is narrower than it: they touch
// in what that one has, and the weld runs there.
func (t *joint) overhangs() bool {
	if !t.standsRound() || t.b.roundMm() != 0 {
		return false
	}
	wide, high := math.Inf(1), math.Inf(1)
	section, _, bar := t.b.r.Bar()
	_, end := t.b.barEnd()
	switch p := t.b.r.Part; {
	case bar && end:
		wide, high = section.WidthMm, section.DepthMm
	case bar:
		wide, high = t.b.r.Part.Bar.Length.Mm, section.WidthMm
		if on := parts.Side(t.in.Place.On); on == parts.TopSide || on == parts.BottomSide {
			high = section.DepthMm
		}
	case p.Flat() && t.onFlat():
		box := t.b.r.OutlinePath().Bounds()
		wide, high = box.W(), box.H()
	}
	return min(wide, high) < t.a.roundMm()-geom.CloseMm
}

// branchMm is the outside of the round that stands on an opening, whichever of its sides the job names; 0 where it is none.
func (t *joint) branchMm() float64 {
	if outside, _ := t.a.r.Sides(); t.branchEnd() != nil && len(outside) == 1 {
		return outside[0].Size.NominalMm
	}
	return t.a.roundMm()
}

// roundEndMm is the diameter of the end of a round bar, square to it, that is welded on; 0 for another weld.
func (t *joint) roundEndMm() float64 {
	bar, _, ok := t.onBarEnd()
	section, _, _ := bar.r.Bar()
	if _, cut := bar.mitre(); !ok || cut || section.Shape != bars.Round {
		return 0
	}
	return section.WidthMm
}

// sixteenthMm is a sixteenth of an inch.
const sixteenthMm = geom.MmPerInch / 16

// prep is the groove of a butt weld of a thickness, as its joint asks for it.
func (t *joint) prep(thickMm float64) (weld.Prep, error) {
	edges, sides := weld.BothEdges, weld.OneSide
	if t.in.Weld.Type == "bevel" {
		edges = weld.OneEdge
	}
	if t.in.Weld.Sides == 2 {
		sides = weld.TwoSides
	}
	prep, err := weld.ButtPrep(thickMm, edges, sides)
	if t.w.Units == parts.Inches {
		prep.GapMm, prep.RootFaceMm = prep.GapMm.Stepped(sixteenthMm), prep.RootFaceMm.Stepped(sixteenthMm)
	}
	return prep, err
}

func weldChamfers(t *joint) (drawn []*parts.Chamfer, part string) {
	for k, f := range []feature{t.a, t.b} {
		for c := range seq.Refs(f.r.Part.Chamfers) {
			if of, end := c.On(); c.For == "weld" && of == f.ref.Feature && t.reaches(k == 1, end, c.Size.Mm) {
				drawn = append(drawn, c)
			}
		}
		if len(drawn) > 0 {
			return drawn, f.title()
		}
	}
	return nil, ""
}

// reaches tells whether a weld comes to a chamfer at one end of its step on B or on A: not where a
// saddle or a cope stands on the side of B, or what is round it ends before the chamfer, by more than
// the leg.
func (t *joint) reaches(onB bool, end parts.Face, sizeMm float64) bool {
	own, other, at := t.a.step, t.b.step, t.rel
	if onB {
		own, other, at = other, own, at.inverse()
	}
	switch {
	case onB && t.cutTo() && !t.corner():
		return false
	case !t.axis || own == nil || other == nil:
		return true
	}
	edge := parts.At(end, own.FromMm, own.ToMm)
	z, room := at.z0+at.s*edge, sizeMm+t.in.Weld.Size.Mm+agreeMm
	return other.FromMm-room < z && z < other.ToMm+room
}

// weldChamfer is the first of them; nil if none is drawn.
func weldChamfer(t *joint) (c *parts.Chamfer, part string) {
	if drawn, on := weldChamfers(t); len(drawn) > 0 {
		return drawn[0], on
	}
	return nil, ""
}

// buyFiller lists the weld metal of all joints and of the seams of parts, by process and by the
// metal that takes its own; of a seam without a process what the worst would take.
func (j *shop) buyFiller(made []*joint, list *buying) {
	kg := map[string]float64{}
	for _, t := range made {
		if p := t.out.Weld; p != nil {
			kg[words.Join(" on ", p.Process, p.Metal)] += p.BuyKg
		}
	}
	seamed := seq.Keep(j.models, func(r *part.Model) bool { return r.Seam() != nil })
	slices.SortStableFunc(seamed, func(a, b *part.Model) int { return cmp.Compare(b.Seam().Process, a.Seam().Process) }) // those without one last
	for _, r := range seamed {
		s, on := r.Seam(), ""
		if m := r.Material; m != nil && (s.Process == "" || m.Weld.Class == material.WeldOwn) {
			on = r.Part.Material.Value
		}
		if wire := slices.DeleteFunc(slices.Sorted(maps.Keys(kg)), func(k string) bool { return on == "" || !strings.HasSuffix(k, " on "+on) }); s.Process == "" && len(wire) > 0 {
			on = wire[0] // the one that is bought for that metal all the same
		}
		if f, err := weld.FillerFor(s.AreaMm2, s.LengthMm, densityOf(r), weldProcesses[s.Process]); err == nil {
			kg[words.Join(" on ", s.Process, on)] += f.BuyMaxKg * float64(r.Part.Quantity)
		}
	}
	for _, on := range slices.Sorted(maps.Keys(kg)) {
		list.add(words.Join(" ", "Filler for", on)+", to the welding procedure, "+j.w.RoundMass(kg[on], 2), 1, "welds", "")
	}
}

// densityOf is the density of the weld metal on a part, kg/m³: that of its metal, of steel where that is not known.
func densityOf(r *part.Model) float64 {
	if r.Material == nil {
		return steelKgMm3 * 1e9
	}
	return r.Material.DensityKgM3
}
