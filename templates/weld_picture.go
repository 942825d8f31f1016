package templates

import (
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// apartPictures draws the two parts of a joint that share no axis side by
// side, each with its own picture.
func apartPictures(pl *plan.Plan, j *plan.JointPlan, width, maxHeight float64) []piece {
	var panels []panel
	each := (width - 64) / 2
	if each < 56 {
		each = width/2 - 1
	}
	for i, e := range []plan.JointEnd{j.A, j.B} {
		part := partNamed(pl, e.Part)
		if part == nil || part.Section == nil || part.Section.LengthMm <= 0 || part.Section.MaxMm <= 0 {
			continue
		}
		title := strconv.Itoa(i+1) + "  " + e.Title
		p := panel{width: each, height: maxHeight}
		s := part.Section
		if len(part.Faces) > 0 {
			face := part.Faces[0]
			h := min(maxHeight-topPadMm-captionMm-8, (p.width-2*facePadMm)/aspect(face))
			q := facePanel(face, nil, h*aspect(face), h)
			p.draw.Place(&q.draw, (p.width-q.width)/2, -7)
		} else {
			scale := min((p.width-12)/s.LengthMm, (maxHeight-18)/(2*s.MaxMm))
			w, h := s.LengthMm*scale, 2*s.MaxMm*scale
			q := sectionPanel(part, nil, w, h)
			p.draw.Place(&q.draw, (p.width-q.width)/2, -7+balloonRowMm-4)
		}
		text, size := shrink(title, 3.8, true, p.width)
		p.draw.Add(Text{XMm: p.width / 2, YMm: -4.4, SizeMm: size, Bold: true, Align: Centre, Content: text})
		panels = append(panels, p)
	}
	if j.Weld != nil {
		panels = append(panels, weldPanels(j, pl.Units)...)
	}
	if b := j.Bolt; b != nil && len(b.OrderDeg) > 1 {
		panels = append(panels, tightenPanel(j, b))
	}
	return panelRows(panels, width)
}

// weldPanels are the small pictures of a weld: across it, the tacks, the runs.
func weldPanels(j *plan.JointPlan, units parts.Units) []panel {
	var panels []panel
	if w := j.Weld; w != nil {
		panels = append(panels, weldPanel(j, w, units))
		layers := 0
		for _, run := range w.Order {
			layers = max(layers, run.Layer)
		}
		r := dialPanelMm
		if layers > 1 {
			r = dialSmallMm
		}
		if len(w.TacksDeg) > 0 && w.DiameterMm > 0 {
			panels = append(panels, tackPanel(j, w, r, short(w.TackLengthMm, units)))
		}
		// Further layers go on in turn like the first two.
		for layer := 1; layer <= min(layers, 2); layer++ {
			panels = append(panels, runsPanel(j, w, r, layer, layers))
		}
	}
	return panels
}

// weldPanel draws the weld across: a fillet in its corner with leg and
// throat, or the prepared edges of a butt.
func weldPanel(j *plan.JointPlan, w *plan.WeldPlan, units parts.Units) panel {
	p := panel{width: 61, height: 60}
	p.draw.Add(Text{XMm: 31, YMm: -4.2, SizeMm: 3.8, Bold: true, Align: Centre, Content: "Across the weld"})
	const mid, floor = 20.0, -42.0
	if w.LegMm > 0 {
		hatchAt(&p.draw, polygon(6, floor, 52, floor, 52, floor-9, 6, floor-9), 45, 2.4, lineMm)
		hatchAt(&p.draw, polygon(mid-9, floor+0.6, mid, floor+0.6, mid, floor+30, mid-9, floor+30), 135, 2.4, lineMm)
		const leg = 13.0
		p.draw.Add(Shape{Path: polygon(mid, floor, mid+leg, floor, mid, floor+leg), Fill: Black})
		p.draw.Add(segment(mid+leg/2, floor+leg/2, mid+leg/2+8, floor+leg/2+8, thinMm))
		p.draw.Add(Text{XMm: mid + leg/2 + 6, YMm: floor + leg/2 + 10, SizeMm: 3.4, Content: "throat " + sized(w.ThroatMm, units)})
		p.draw.Add(Text{XMm: mid + leg + 2, YMm: floor + 1.4, SizeMm: 3.8, Bold: true, Content: "leg " + sized(w.LegMm, units)})
	} else {
		gap, face, depth := 1.6, 0.0, 22.0
		if w.RootFaceMm > 0 {
			face = max(2.2, depth*w.RootFaceMm/max(w.ThinnerMm, w.RootFaceMm))
		}
		run := math.Min(15, (depth-face)*math.Tan(w.BevelDeg/2*math.Pi/180))
		x, y := 31.0, floor
		hatchAt(&p.draw, polygon(4, y, x-gap/2, y, x-gap/2, y+face, x-gap/2-run, y+depth, 4, y+depth), 45, 2.4, lineMm)
		hatchAt(&p.draw, polygon(58, y, x+gap/2, y, x+gap/2, y+face, x+gap/2+run, y+depth, 58, y+depth), 135, 2.4, lineMm)
		text := "no bevel"
		if w.BevelDeg > 0 {
			text = "opened to " + degrees(w.BevelDeg)
		}
		p.draw.Add(Text{XMm: x, YMm: y + depth + 4, SizeMm: 3.4, Align: Centre, Content: text})
		text, size := shrink("gap "+short(w.GapMm, units)+", root face "+sized(w.RootFaceMm, units), 3.4, false, 58)
		p.draw.Add(Text{XMm: x, YMm: y - 5.4, SizeMm: size, Align: Centre, Content: text})
	}
	note, size := shrink(joined(" ", w.Symbol, w.Designation)+", "+w.Process, 3.2, false, 60)
	p.draw.Add(Text{XMm: 31, YMm: -p.height + 1.4, SizeMm: size, Align: Centre, Content: note})
	return p
}
