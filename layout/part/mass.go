package part

import (
	"math"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// massKg is the mass of one finished part, 0 if the material is not known: its form
// less holes, openings, keyways and flats, and in place of an opening inside it the whole
// hole of a branch. Broken edges are left out.
func (g *Shape) massKg() float64 {
	if g.DensityKgM3() == 0 {
		return 0
	}
	volume := g.form.volumeMm3(g)
	for m := range seq.Refs(g.Groups) {
		volume -= m.volumeMm3(g.Sizes)
	}
	for m := range seq.Refs(g.Radials) {
		left := seq.Keep(m.Rows, func(row plan.RadialRow) bool { return g.branchOver(row.N) == nil })
		volume -= m.volumeMm3(g.Sizes) * float64(len(left))
	}
	for _, h := range g.holed {
		volume -= h.volumeMm3()
	}
	for k := range seq.Refs(g.Keyways) {
		volume -= k.volumeMm3()
	}
	for f := range seq.Refs(g.Flats) {
		volume -= f.volumeMm3()
	}
	if g.Clamp != nil {
		volume -= g.Clamp.volumeMm3(g.LengthMm())
	}
	return geom.Clean(math.Max(0, volume) * 1e-9 * g.DensityKgM3())
}

// volumeMm3 is the metal that the saw takes; the screw fills its hole.
func (c *Clamp) volumeMm3(lengthMm float64) float64 {
	return c.Row.SlotMm * (c.Row.OutsideMm - c.Row.BoreMm) / 2 * lengthMm
}

func (k *Keyway) lengthMm() float64 { return geom.Clean(k.Row.ToMm - k.Row.FromMm) }

// volumeMm3 is the metal that the group takes off, drilled or milled, with what its
// holes are sunk by.
func (m *Group) volumeMm3(s *Sizes) float64 {
	d := m.Size.pinMm()
	deep, _ := s.DrillMm(m)
	each := sweptMm2(d, 2*geom.Distance(m.halfMm, plan.XY{})) * deep
	if m.Hole != nil {
		if c := m.Hole.Counterbore; c != nil {
			each += (sweptMm2(c.Diameter.Mm, 0) - sweptMm2(d, 0)) * math.Min(c.Depth.Mm, deep)
		}
		if c := m.Hole.Countersink; c != nil {
			rise := c.DepthMm(d)
			each += math.Pi/12*rise*(c.Diameter.Mm*c.Diameter.Mm+c.Diameter.Mm*d+d*d) - sweptMm2(d, 0)*rise
		}
	}
	return each * float64(len(m.Points))
}

// volumeMm3 is the metal that the hole takes off the wall of the main: what lies in the
// round of it along the axis of the branch, in strips along the main.
func (h *branchHole) volumeMm3() float64 {
	const strips = 720
	r, sum := h.throughMm/2, 0.0
	half := func(diaMm, sideMm float64) float64 { return math.Sqrt(math.Max(0, diaMm*diaMm/4-sideMm*sideMm)) }
	for i := range strips {
		u := r * ((2*float64(i)+1)/strips - 1)
		side := h.end.Offset.Mm + u
		sum += 2 * half(2*r, u) * (half(h.mainMm, side) - half(h.mainMm-2*h.wallMm, side))
	}
	return sum * 2 * r / strips / math.Sin(h.end.Angle.Deg*math.Pi/180)
}

// volumeMm3 is the metal that a feature takes off a round at each of its clock angles,
// to within the change of its wall along a break-out.
func (m *Radial) volumeMm3(s *Sizes) float64 {
	row := m.Rows[0]
	deep := s.radialMm(m, row.AxialMm)
	if m.In.Through && s.boreAt(row.AxialMm) != nil {
		deep = s.WallMm(row.AxialMm)
	}
	var area, across float64
	mean := 1.0 / 3 // of the fall beside the crown, over a strip
	switch m.In.Shape {
	case parts.RadialHole:
		across, mean = m.Size.pinMm(), 1.0/4 // over a disc
		area = sweptMm2(across, 0)
	case parts.RadialSlot:
		wide, long := math.Min(row.AroundMm, row.AlongMm), math.Max(row.AroundMm, row.AlongMm)
		across = row.AroundMm
		area = sweptMm2(wide, long-wide)
	default:
		// A window's size round the outside narrows towards the bore.
		area = (row.AroundMm*row.AlongMm - (4-math.Pi)*row.CornerMm*row.CornerMm) * (1 - deep/row.OutsideMm)
	}
	if !m.In.Through { // measured from the crown: the round falls away beside it
		deep -= crownMm(row.OutsideMm, across) * mean
	}
	return area * math.Max(0, deep)
}

// volumeMm3 is the metal that a keyway takes off: in a shaft with a round end for
// each that does not run out of the metal, or with what a disc takes beyond it.
func (k *Keyway) volumeMm3() float64 {
	w, fall := k.Row.WidthMm, crownMm(k.Row.DiameterMm, k.Row.WidthMm)
	area := w * k.lengthMm()
	if k.step.Inside {
		return area * (k.Row.DepthMm + fall/3)
	}
	if k.cutter != 0 {
		beyond := segmentMm2(k.cutter/2, k.Row.DepthMm) - 2*k.Row.RunoutMm*fall/3
		return area*(k.Row.DepthMm-fall/3) + w*beyond
	}
	area -= float64(2-k.open) * (w*w - sweptMm2(w, 0)) / 2
	return area * (k.Row.DepthMm - fall/3)
}

// volumeMm3 is the metal that the flats leave of a round: a segment each, or all round the
// polygon where they meet in sharp corners.
func (f *Flats) volumeMm3() float64 {
	n, round := float64(f.Row.Sides), f.Row.DiameterMm
	area := n * segmentMm2(round/2, f.Row.DepthMm)
	if f.Row.Full {
		area = sweptMm2(round, 0) - n/4*f.Row.AcrossMm*f.Row.AcrossMm*math.Tan(math.Pi/n)
	}
	return area * (f.Row.ToMm - f.Row.FromMm)
}

// segmentMm2 is what a cutter of some radius takes off a flat that it sinks into.
func segmentMm2(radiusMm, depthMm float64) float64 {
	up := radiusMm - depthMm
	return radiusMm*radiusMm*math.Acos(up/radiusMm) - up*math.Sqrt(depthMm*(2*radiusMm-depthMm))
}

// crownMm is how far a round falls away from its crown at the edges of a cut of some
// width, taken as a parabola.
func crownMm(diaMm, wideMm float64) float64 {
	r := diaMm / 2
	return r - math.Sqrt(math.Max(0, r*r-wideMm*wideMm/4))
}
