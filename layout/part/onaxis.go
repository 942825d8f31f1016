package part

import (
	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// onAxis are the holes drilled on the axis of a turned part, as the half section cuts them.
func (s *Sizes) onAxis() (out []plan.AxisHole) {
	for m := range seq.Refs(s.Groups) {
		z, thick, ok := s.Plane(m.Face, 0)
		if !ok || !s.central(m) {
			continue
		}
		in := 1.0 // the way into the metal
		if m.Face == parts.Back {
			in = -1
		}
		h := plan.AxisHole{Thread: m.axisThread(z, in, thick)}
		for _, q := range m.cutAlong(thick) {
			h.Line = append(h.Line, plan.XY{XMm: z + in*q.XMm, YMm: q.YMm})
		}
		out = append(out, h)
	}
	return out
}

// cutAlong is half of a hole cut along its axis, from the mouth in: how deep and how far from the axis. A
// blind one ends in the point of the drill, beyond the full thread or what is reamed.
func (m *Group) cutAlong(thickMm float64) (out []plan.XY) {
	r := m.Size.pinMm() / 2
	if c := m.Hole.Counterbore; c != nil {
		out = []plan.XY{{YMm: c.Diameter.Mm / 2}, {XMm: c.Depth.Mm, YMm: c.Diameter.Mm / 2}, {XMm: c.Depth.Mm, YMm: r}}
	} else if c := m.Hole.Countersink; c != nil {
		out = []plan.XY{{YMm: c.Diameter.Mm / 2}, {XMm: c.DepthMm(2 * r), YMm: r}}
	} else {
		out = []plan.XY{{YMm: r}}
	}
	deep := m.Depth.Mm
	if t := m.Size.Thread; t != nil {
		if full, err := t.BlindDrillMm(deep); err == nil {
			deep = full
		}
	} else if m.Size.Reamed {
		deep += cutting.ReamBeyondMm(m.Size.FinishedMm)
	}
	point := deep + cutting.PointMm(2*r)
	if m.Through || point > thickMm {
		return append(out, plan.XY{XMm: thickMm, YMm: r})
	}
	return append(out, plan.XY{XMm: deep, YMm: r}, plan.XY{XMm: point})
}

// axisThread is the full thread of a tapped hole, from its mouth at z in; nil where there is none.
func (m *Group) axisThread(z, in, thickMm float64) *plan.ThreadLine {
	t := m.Size.Thread
	if t == nil {
		return nil
	}
	to := thickMm
	if !m.Through {
		to = min(to, m.Depth.Mm)
	}
	return &plan.ThreadLine{FromMm: z, ToMm: z + in*to, RadiusMm: t.GroundMm() / 2, CrestMm: t.MinorMm / 2, Inside: true}
}
