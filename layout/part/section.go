package part

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// section draws the half section from the steps, chamfers and undercuts.
func (r *Model) section() {
	s := &plan.Section{LengthMm: r.LengthMm()}
	r.Out.Section = s
	if f := r.Part.Frustum; f != nil {
		r.frustumSection(f, s)
		return
	}
	if t := r.Part.Transition; t != nil {
		r.transitionSection(t, s)
		return
	}
	if r.Part.Profile == nil {
		s.Flat = true
		b := r.OutlinePath().Bounds()
		s.MaxMm = geom.Clean(b.Y1)
		bore := r.StepNamed("bore")
		s.Outer = r.edge("outline", 0, s.LengthMm, s.MaxMm, 1)
		if bore != nil {
			s.Inner = r.edge("bore", 0, s.LengthMm, bore.Size.NominalMm/2, -1)
		}
		return
	}
	outside, inside := r.Sides()
	s.MaxMm = r.widest().Size.NominalMm / 2
	for i, st := range outside {
		s.Outer = append(s.Outer, r.stepLine(outside, i, 1)...)
		if st.Size.Thread != nil {
			s.Threads = append(s.Threads, plan.ThreadLine{FromMm: st.FromMm, ToMm: st.ToMm, RadiusMm: st.Size.Thread.MinorMm / 2, Inside: false})
		}
	}
	for i, st := range inside {
		s.Inner = append(s.Inner, r.stepLine(inside, i, -1)...)
		if st.Size.Thread != nil {
			s.Threads = append(s.Threads, plan.ThreadLine{FromMm: st.FromMm, ToMm: st.ToMm, RadiusMm: st.Size.NominalMm / 2, Inside: true})
		}
	}
	if n := len(inside); n > 0 && inside[n-1].ToMm < s.LengthMm-1e-9 {
		s.Inner = append(s.Inner, plan.XY{XMm: inside[n-1].ToMm, YMm: 0})
	}
}

func (r *Model) frustumSection(f *parts.Frustum, s *plan.Section) {
	large, small := f.Large.Mm/2, f.Small.Mm/2
	if f.Inside {
		large, small = large+f.Thickness.Mm, small+f.Thickness.Mm
	}
	s.MaxMm = large
	s.Outer = []plan.XY{{XMm: 0, YMm: large}, {XMm: s.LengthMm, YMm: small}}
	// The wall measured square to the axis.
	wall := f.Thickness.Mm * math.Hypot(f.Height.Mm, (f.Large.Mm-f.Small.Mm)/2) / f.Height.Mm
	s.Inner = []plan.XY{{XMm: 0, YMm: geom.Clean(large - wall)}, {XMm: s.LengthMm, YMm: geom.Clean(small - wall)}}
}

// drawnRadius is the radius a step is drawn with: an inside thread shows its
// minor diameter.
func (s *Step) drawnRadius() float64 {
	if s.Inside && s.Size.Thread != nil {
		return s.Size.Thread.MinorMm / 2
	}
	return s.Size.NominalMm / 2
}

// stepLine is the contour of one step. side is +1 outside and −1 inside; an
// undercut lies at the corner beside the shoulder: the neighbour that is
// larger outside, smaller inside.
func (r *Model) stepLine(steps []*Step, i int, side float64) []plan.XY {
	st := steps[i]
	radius := st.drawnRadius()
	line := r.edge(st.Name, st.FromMm, st.ToMm, radius, side)
	u := st.Undercut
	if u == nil {
		return line
	}
	groove := geom.Clean(radius - side*u.Depth.Mm)
	if shoulderAfter(steps, i, side) {
		z := geom.Clean(st.ToMm - u.Width.Mm)
		return append(line[:len(line)-1:len(line)-1], plan.XY{XMm: z, YMm: radius}, plan.XY{XMm: z, YMm: groove}, plan.XY{XMm: st.ToMm, YMm: groove})
	}
	z := geom.Clean(st.FromMm + u.Width.Mm)
	return append([]plan.XY{{XMm: st.FromMm, YMm: groove}, {XMm: z, YMm: groove}, {XMm: z, YMm: radius}}, line[1:]...)
}

// UndercutAtBack tells whether the undercut of a step lies at its back end, beside
// the shoulder there.
func (r *Model) UndercutAtBack(s *Step) bool {
	outside, inside := r.Sides()
	if s.Inside {
		return shoulderAfter(inside, slices.Index(inside, s), -1)
	}
	return shoulderAfter(outside, slices.Index(outside, s), 1)
}

// shoulderAfter tells whether the shoulder of a step lies at its back end.
func shoulderAfter(steps []*Step, i int, side float64) bool {
	after, before := i+1 < len(steps), i > 0
	beyond := func(j int) bool { return side*(steps[j].Size.NominalMm-steps[i].Size.NominalMm) > 0 }
	if after && beyond(i+1) {
		return true
	}
	if before && beyond(i-1) {
		return false
	}
	// A blind bore's floor is a shoulder too.
	return !before || after
}

// edge is a straight stretch of contour with the chamfers at its two ends.
func (r *Model) edge(name string, fromMm, toMm, radius, side float64) []plan.XY {
	front, back := plan.XY{XMm: fromMm, YMm: radius}, plan.XY{XMm: toMm, YMm: radius}
	line := []plan.XY{front, back}
	for _, c := range r.Part.Chamfers {
		dr := geom.Clean(c.Size.Mm * tanDeg(c.Angle.Deg))
		switch c.Edge.Value {
		case name + "-front":
			line = append([]plan.XY{{XMm: fromMm, YMm: geom.Clean(radius - side*dr)}, {XMm: geom.Clean(fromMm + c.Size.Mm), YMm: radius}}, line[1:]...)
		case name + "-back":
			line = append(line[:len(line)-1], plan.XY{XMm: geom.Clean(toMm - c.Size.Mm), YMm: radius}, plan.XY{XMm: toMm, YMm: geom.Clean(radius - side*dr)})
		}
	}
	return line
}

func tanDeg(deg float64) float64 {
	if deg == 45 {
		return 1
	}
	return math.Tan(deg * math.Pi / 180)
}

// chamferDiaMm is the diameter that a chamfer leaves at its face, and the edge's
// step: larger than a bore, smaller than an outside.
func (r *Model) chamferDiaMm(c parts.Chamfer) (st *Step, diaMm float64) {
	name := c.Edge.Value
	for _, suffix := range []string{"-front", "-back"} {
		if len(name) > len(suffix) && name[len(name)-len(suffix):] == suffix {
			st = r.StepNamed(name[:len(name)-len(suffix)])
		}
	}
	if st == nil {
		return nil, 0
	}
	dd := 2 * c.Size.Mm * tanDeg(c.Angle.Deg)
	if st.Inside {
		return st, geom.Clean(2*st.drawnRadius() + dd)
	}
	return st, geom.Clean(2*st.drawnRadius() - dd)
}

// mass in kilograms of one finished part: the section turned about its axis
// (Pappus), or the outline's area times the thickness, less the holes.
func (r *Model) mass() float64 {
	if r.Material == nil {
		return 0
	}
	if t := r.Part.Transition; t != nil {
		return r.developedMassKg(t.Thickness.Mm)
	}
	volume := 0.0
	if r.Part.Outline != nil {
		volume = math.Abs(geom.NewContour(r.OutlinePath()).AreaMm2()) * r.Part.Thickness.Mm
		if bore := r.StepNamed("bore"); bore != nil {
			volume -= math.Pi / 4 * bore.Size.NominalMm * bore.Size.NominalMm * r.Part.Thickness.Mm
		}
	} else {
		volume = turnedVolumeMm3(r.Out.Section.Outer) - turnedVolumeMm3(r.Out.Section.Inner) - r.saddleVolumeMm3()
	}
	for _, m := range r.Groups {
		depth := r.LengthMm()
		if !m.Through() {
			if m.Hole != nil {
				depth = m.Hole.Depth.Mm
			} else {
				depth = m.Slot.Depth.Mm
			}
		} else if r.Part.Profile != nil {
			depth = r.metalUnder(m.Points[0])
		}
		area := math.Pi / 4 * m.Group.DrillMm * m.Group.DrillMm
		if m.Slot != nil {
			area += (m.Slot.Length.Mm - m.Slot.Width.Mm) * m.Slot.Width.Mm
		}
		volume -= area * depth * float64(len(m.Points))
	}
	return geom.Clean(math.Max(0, volume) * 1e-9 * r.Material.DensityKgM3)
}

// turnedVolumeMm3 sums the cones between the points of a contour.
func turnedVolumeMm3(line []plan.XY) float64 {
	sum := 0.0
	for i := 0; i+1 < len(line); i++ {
		a, b := line[i], line[i+1]
		sum += math.Pi / 3 * (b.XMm - a.XMm) * (a.YMm*a.YMm + a.YMm*b.YMm + b.YMm*b.YMm)
	}
	return sum
}

// metalUnder is the length of metal that an axial hole at p goes through.
func (r *Model) metalUnder(p plan.XY) float64 {
	radius := math.Hypot(p.XMm, p.YMm)
	sum := 0.0
	for i := range r.Steps {
		if s := &r.Steps[i]; !s.Inside && s.Size.NominalMm/2 > radius {
			sum += s.ToMm - s.FromMm
		}
	}
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Inside && s.Size.NominalMm/2 > radius {
			sum -= s.ToMm - s.FromMm
		}
	}
	return math.Max(0, sum)
}

// metal lists the stretches of a part's axis where there is metal at a radius.
func (r *Model) MetalAt(radiusMm float64) [][2]float64 {
	if r.Part.Profile == nil {
		if bore := r.StepNamed("bore"); bore != nil && bore.Size.NominalMm/2 >= radiusMm {
			return nil
		}
		if out := r.StepNamed("outline"); out != nil && out.Size.NominalMm/2 <= radiusMm {
			return nil
		}
		return [][2]float64{{0, r.LengthMm()}}
	}
	var cuts []float64
	for i := range r.Steps {
		cuts = append(cuts, r.Steps[i].FromMm, r.Steps[i].ToMm)
	}
	slices.Sort(cuts)
	var out [][2]float64
	for i := 0; i+1 < len(cuts); i++ {
		if cuts[i+1]-cuts[i] < 1e-9 {
			continue
		}
		mid, outside, inside := (cuts[i]+cuts[i+1])/2, 0.0, 0.0
		for k := range r.Steps {
			s := &r.Steps[k]
			if s.FromMm < mid && mid < s.ToMm {
				if s.Inside {
					inside = s.Size.NominalMm / 2
				} else {
					outside = s.Size.NominalMm / 2
				}
			}
		}
		if outside <= radiusMm || inside > radiusMm {
			continue
		}
		if n := len(out); n > 0 && cuts[i]-out[n-1][1] < 1e-9 {
			out[n-1][1] = cuts[i+1]
		} else {
			out = append(out, [2]float64{cuts[i], cuts[i+1]})
		}
	}
	return out
}

// plane is where a face lies on the part's axis at a radius, and how much
// metal lies behind it there.
func (r *Model) Plane(f parts.Face, radiusMm float64) (zMm, thickMm float64, ok bool) {
	m := r.MetalAt(radiusMm)
	if len(m) == 0 {
		return 0, 0, false
	}
	if f == parts.Front {
		return m[0][0], m[0][1] - m[0][0], true
	}
	last := m[len(m)-1]
	return last[1], last[1] - last[0], true
}
