package layout

import (
	"math"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// section draws the half section from the steps, chamfers and undercuts.
func (r *resolver) section() {
	s := &plan.Section{LengthMm: r.lengthMm()}
	r.out.Section = s
	if f := r.part.Frustum; f != nil {
		r.frustumSection(f, s)
		return
	}
	if t := r.part.Transition; t != nil {
		r.transitionSection(t, s)
		return
	}
	if r.part.Profile == nil {
		s.Flat = true
		b := r.outlinePath().Bounds()
		s.MaxMm = clean(b.Y1)
		bore := r.stepNamed("bore")
		s.Outer = r.edge("outline", 0, s.LengthMm, s.MaxMm, 1)
		if bore != nil {
			s.Inner = r.edge("bore", 0, s.LengthMm, bore.size.nominalMm/2, -1)
		}
		return
	}
	outside, inside := r.sides()
	s.MaxMm = r.widest().size.nominalMm / 2
	for i, st := range outside {
		s.Outer = append(s.Outer, r.stepLine(outside, i, 1)...)
		if st.size.thread != nil {
			s.Threads = append(s.Threads, plan.ThreadLine{FromMm: st.fromMm, ToMm: st.toMm, RadiusMm: st.size.thread.MinorMm / 2, Inside: false})
		}
	}
	for i, st := range inside {
		s.Inner = append(s.Inner, r.stepLine(inside, i, -1)...)
		if st.size.thread != nil {
			s.Threads = append(s.Threads, plan.ThreadLine{FromMm: st.fromMm, ToMm: st.toMm, RadiusMm: st.size.nominalMm / 2, Inside: true})
		}
	}
	if n := len(inside); n > 0 && inside[n-1].toMm < s.LengthMm-1e-9 {
		s.Inner = append(s.Inner, plan.XY{XMm: inside[n-1].toMm, YMm: 0})
	}
}

func (r *resolver) frustumSection(f *parts.Frustum, s *plan.Section) {
	large, small := f.Large.Mm/2, f.Small.Mm/2
	if f.Inside {
		large, small = large+f.Thickness.Mm, small+f.Thickness.Mm
	}
	s.MaxMm = large
	s.Outer = []plan.XY{{XMm: 0, YMm: large}, {XMm: s.LengthMm, YMm: small}}
	// The wall measured square to the axis.
	wall := f.Thickness.Mm * math.Hypot(f.Height.Mm, (f.Large.Mm-f.Small.Mm)/2) / f.Height.Mm
	s.Inner = []plan.XY{{XMm: 0, YMm: clean(large - wall)}, {XMm: s.LengthMm, YMm: clean(small - wall)}}
}

// drawnRadius is the radius a step is drawn with: an inside thread shows its
// minor diameter.
func (s *step) drawnRadius() float64 {
	if s.inside && s.size.thread != nil {
		return s.size.thread.MinorMm / 2
	}
	return s.size.nominalMm / 2
}

// stepLine is the contour of one step. side is +1 outside and −1 inside; an
// undercut lies at the corner beside the shoulder: the neighbour that is
// larger outside, smaller inside.
func (r *resolver) stepLine(steps []*step, i int, side float64) []plan.XY {
	st := steps[i]
	radius := st.drawnRadius()
	line := r.edge(st.name, st.fromMm, st.toMm, radius, side)
	u := st.undercut
	if u == nil {
		return line
	}
	groove := clean(radius - side*u.Depth.Mm)
	if shoulderAfter(steps, i, side) {
		z := clean(st.toMm - u.Width.Mm)
		return append(line[:len(line)-1:len(line)-1], plan.XY{XMm: z, YMm: radius}, plan.XY{XMm: z, YMm: groove}, plan.XY{XMm: st.toMm, YMm: groove})
	}
	z := clean(st.fromMm + u.Width.Mm)
	return append([]plan.XY{{XMm: st.fromMm, YMm: groove}, {XMm: z, YMm: groove}, {XMm: z, YMm: radius}}, line[1:]...)
}

// shoulderAfter tells whether the shoulder of a step lies at its back end.
func shoulderAfter(steps []*step, i int, side float64) bool {
	after, before := i+1 < len(steps), i > 0
	beyond := func(j int) bool { return side*(steps[j].size.nominalMm-steps[i].size.nominalMm) > 0 }
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
func (r *resolver) edge(name string, fromMm, toMm, radius, side float64) []plan.XY {
	front, back := plan.XY{XMm: fromMm, YMm: radius}, plan.XY{XMm: toMm, YMm: radius}
	line := []plan.XY{front, back}
	for _, c := range r.part.Chamfers {
		dr := clean(c.Size.Mm * tanDeg(c.Angle.Deg))
		switch c.Edge.Value {
		case name + "-front":
			line = append([]plan.XY{{XMm: fromMm, YMm: clean(radius - side*dr)}, {XMm: clean(fromMm + c.Size.Mm), YMm: radius}}, line[1:]...)
		case name + "-back":
			line = append(line[:len(line)-1], plan.XY{XMm: clean(toMm - c.Size.Mm), YMm: radius}, plan.XY{XMm: toMm, YMm: clean(radius - side*dr)})
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
func (r *resolver) chamferDiaMm(c parts.Chamfer) (st *step, diaMm float64) {
	name := c.Edge.Value
	for _, suffix := range []string{"-front", "-back"} {
		if len(name) > len(suffix) && name[len(name)-len(suffix):] == suffix {
			st = r.stepNamed(name[:len(name)-len(suffix)])
		}
	}
	if st == nil {
		return nil, 0
	}
	dd := 2 * c.Size.Mm * tanDeg(c.Angle.Deg)
	if st.inside {
		return st, clean(2*st.drawnRadius() + dd)
	}
	return st, clean(2*st.drawnRadius() - dd)
}

// mass in kilograms of one finished part: the section turned about its axis
// (Pappus), or the outline's area times the thickness, less the holes.
func (r *resolver) mass() float64 {
	if r.material == nil {
		return 0
	}
	if t := r.part.Transition; t != nil {
		return r.developedMassKg(t.Thickness.Mm)
	}
	volume := 0.0
	if r.part.Outline != nil {
		volume = math.Abs(geom.NewContour(r.outlinePath()).AreaMm2()) * r.part.Thickness.Mm
		if bore := r.stepNamed("bore"); bore != nil {
			volume -= math.Pi / 4 * bore.size.nominalMm * bore.size.nominalMm * r.part.Thickness.Mm
		}
	} else {
		volume = turnedVolumeMm3(r.out.Section.Outer) - turnedVolumeMm3(r.out.Section.Inner) - r.saddleVolumeMm3()
	}
	for _, m := range r.made {
		depth := r.lengthMm()
		if !m.through() {
			if m.hole != nil {
				depth = m.hole.Depth.Mm
			} else {
				depth = m.slot.Depth.Mm
			}
		} else if r.part.Profile != nil {
			depth = r.metalUnder(m.pts[0])
		}
		area := math.Pi / 4 * m.group.DrillMm * m.group.DrillMm
		if m.slot != nil {
			area += (m.slot.Length.Mm - m.slot.Width.Mm) * m.slot.Width.Mm
		}
		volume -= area * depth * float64(len(m.pts))
	}
	return clean(math.Max(0, volume) * 1e-9 * r.material.DensityKgM3)
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
func (r *resolver) metalUnder(p plan.XY) float64 {
	radius := math.Hypot(p.XMm, p.YMm)
	sum := 0.0
	for i := range r.steps {
		if s := &r.steps[i]; !s.inside && s.size.nominalMm/2 > radius {
			sum += s.toMm - s.fromMm
		}
	}
	for i := range r.steps {
		if s := &r.steps[i]; s.inside && s.size.nominalMm/2 > radius {
			sum -= s.toMm - s.fromMm
		}
	}
	return math.Max(0, sum)
}
