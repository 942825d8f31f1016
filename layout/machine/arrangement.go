package machine

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
)

// alongAxis is the plane of the axis and TOP: front at the left, TOP up.
var alongAxis = assembly.Pose{X: assembly.Vec{Z: -1}, Y: assembly.Vec{Y: 1}, Z: assembly.Vec{X: 1}}

// arrangement cuts the machine along its axis. It is nil where nothing is placed.
func (s *stage) arrangement() *plan.Arrangement {
	m, out := s.Machine, &plan.Arrangement{}
	title := func(name string) string { return m.model(name).Out.Title }
	var cut []string
	var all []plan.XY
	for i := range m.Bodies {
		b := &m.Bodies[i]
		a := plan.ArrangedPart{Loops: s.cut(alongAxis, b)}
		if len(a.Loops) == 0 {
			continue
		}
		if of, ok := m.Of[b.ID]; ok {
			a.Item, a.Title = s.item[of.Part], title(of.Part)
			cut = append(cut, a.Title)
		}
		for _, loop := range a.Loops {
			all = append(all, loop...)
		}
		out.Cuts = append(out.Cuts, a)
	}
	if len(all) == 0 {
		return nil
	}
	out.MinMm, out.MaxMm = all[0], all[0]
	for _, p := range all {
		out.MinMm = plan.XY{XMm: min(out.MinMm.XMm, p.XMm), YMm: min(out.MinMm.YMm, p.YMm)}
		out.MaxMm = plan.XY{XMm: max(out.MaxMm.XMm, p.XMm), YMm: max(out.MaxMm.YMm, p.YMm)}
	}
	add := func(list *[]string, name string) {
		if t := title(name); !slices.Contains(cut, t) && !slices.Contains(*list, t) {
			*list = append(*list, t)
		}
	}
	for _, b := range m.Bodies {
		if of, ok := m.Of[b.ID]; ok {
			add(&out.Beside, of.Part)
		}
	}
	for _, i := range m.Floating {
		add(&out.Floating, i.Part)
	}
	return out
}
