package sequence

import (
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"

	"github.com/tdewolff/canvas"
)

// apartPictures draws the two parts of a joint that share no axis side by
// side, each with its own picture.
func apartPictures(pl *plan.Plan, j *plan.JointPlan, width, maxHeight float64, more ...draw.Panel) []draw.Piece {
	const around, least = picture.TopPadMm + picture.CaptionMm + 8, 8.0 // a picture, and what stands above and below it
	const facePadMm = 2*draw.BalloonMm + 6                              // beside a face
	maxHeight = max(maxHeight, around+least)
	var panels []draw.Panel
	each := (width - 64) / 2
	if each < 56 {
		each = width/2 - 1
	}
	for i, e := range []plan.JointEnd{j.A, j.B} {
		part := pl.Part(e.Part)
		if part == nil || part.Section == nil || part.Section.LengthMm <= 0 || part.Section.MaxMm <= 0 {
			continue
		}
		title := strconv.Itoa(i+1) + "  " + e.Title
		p := draw.Panel{Width: each, Height: maxHeight}
		s := part.Section
		if len(part.Faces) > 0 {
			face := part.Faces[0]
			h := min(maxHeight-around, (p.Width-2*facePadMm)/picture.Aspect(face))
			q := picture.Face(face, h)
			p.Draw.Place(q.Drawn(), (p.Width-q.Width)/2, -7)
		} else if len(part.Profiles) > 0 {
			q := picture.Folded(&part.Profiles[0], p.Width, maxHeight-8)
			p.Draw.Place(&q.Draw, (p.Width-q.Width)/2, -7)
		} else {
			scale := min((p.Width-12)/s.LengthMm, (maxHeight-18)/(2*s.MaxMm))
			w, h := s.LengthMm*scale, 2*s.MaxMm*scale
			q := picture.Section(part, nil, w, h)
			p.Draw.Place(&q.Draw, (p.Width-q.Width)/2, -7+picture.BalloonRowMm-4)
		}
		p.Draw.Add(draw.Text{XMm: p.Width / 2, YMm: -4.4, SizeMm: 3.8, Bold: true, Align: draw.Centre, Content: title}.Within(p.Width))
		panels = append(panels, p)
	}
	return panelRows(append(panels, more...), width)
}

// weldPanel draws the weld across: a fillet in its corner with leg and
// throat, or the prepared edges of a butt.
func weldPanel(w *plan.WeldPlan, units parts.Units, small bool) draw.Panel {
	p, floor := draw.Panel{Width: 61, Height: 60}, -42.0
	mid, leg := 20.0, 13.0 // of a fillet its upright side, and how large it is drawn
	if small {
		p, floor, mid, leg = draw.Panel{Width: smallWeldMm, Height: 46}, -35.0, 13, 9
	}
	weldWords(&p, w)
	if w.LegMm == 0 {
		grooveAcross(&p.Draw, w, plan.XY{XMm: p.Width / 2, YMm: floor}, p.Width/2-2-leg/6, units)
		return p
	}
	under := [3]float64{4, p.Width - 8, leg * 0.6} // from, to and thick
	left, low, high := mid-leg*0.6, floor+0.6, floor+2.3*leg
	switch {
	case w.Lap:
		left, high = 4, floor+1.2*leg
	case w.OnEdge:
		under, low = [3]float64{mid + 0.6, mid + leg, leg * 0.6}, floor-leg*0.4
	}
	draw.HatchAt(&p.Draw, draw.Polygon(under[0], floor, under[1], floor, under[1], floor-under[2], under[0], floor-under[2]), 45, 2.4, draw.LineMm)
	draw.HatchAt(&p.Draw, draw.Polygon(left, low, mid, low, mid, high, left, high), 135, 2.4, draw.LineMm)
	p.Draw.Add(draw.Shape{Path: draw.Polygon(mid, floor, mid+leg, floor, mid, floor+leg), Fill: draw.Black})
	p.Draw.Add(draw.Segment(mid+leg/2, floor+leg/2, mid+leg, floor+leg, draw.ThinMm))
	p.Draw.Add(draw.Text{XMm: mid + leg/2, YMm: floor + leg + 1.5, SizeMm: 3.4, Content: "throat " + words.Sized(w.ThroatMm, units)}.Within(p.Width - mid - leg/2))
	p.Draw.Add(draw.Text{XMm: mid + leg + 1.5, YMm: floor + 1.4, SizeMm: 3.8, Bold: true, Content: "leg " + words.Sized(w.LegMm, units)}.Within(p.Width - mid - leg - 1.5))
	return p
}

// smallWeldMm is the width of a weld seen across on a step that shares its sheet.
const smallWeldMm = 44.0

// weldWords are the title and the foot of a weld seen across.
func weldWords(p *draw.Panel, w *plan.WeldPlan) {
	x := p.Width / 2
	note := words.Join(" ", w.Symbol, w.Designation) + ", " + w.Process
	p.Draw.Add(draw.Text{XMm: x, YMm: -4.2, SizeMm: 3.8, Bold: true, Align: draw.Centre, Content: "Across the weld"},
		draw.Text{XMm: x, YMm: -p.Height + 1.4, SizeMm: 3.2, Align: draw.Centre, Content: note}.Within(p.Width-1))
}

// grooveAcross draws the prepared edges of a butt, about the foot of its middle and so
// far to either side: both bevelled, or the left one
// alone against a square side, and for a bevel against a round the metal that
// touches under it.
func grooveAcross(d *draw.Drawing, w *plan.WeldPlan, at plan.XY, half float64, units parts.Units) {
	gap, face, depth, halves := 1.6, 0.0, 22.0, 2.0
	says := "gap " + words.Sized(w.GapMm, units)
	if w.OpensMm > 0 { // which the cut drawn does not show
		flanks := words.Join(" and ", seq.Map(w.OpensDeg, words.Angle)...)
		says = "gap " + words.Short(w.GapMm, units) + ", to " + words.Sized(w.OpensMm, units) + " at " + words.Either(flanks != "", flanks, "the flanks")
	} else if w.BevelDeg > 0 {
		says = "gap " + words.Short(w.GapMm, units) + ", root face " + words.Sized(w.RootFaceMm, units)
	}
	if w.RootFaceMm > 0 {
		face = max(2.2, depth*w.RootFaceMm/max(w.ThinnerMm, w.RootFaceMm))
	}
	if w.OneEdge {
		halves = 1
	}
	if w.DepthMm > 0 {
		gap, face = 0, depth/2
		says = "no gap, " + words.Sized(w.DepthMm, units) + " along the round"
	}
	run := math.Min(15, (depth-face)*math.Tan(w.BevelDeg/halves*math.Pi/180))
	x, y := at.XMm, at.YMm
	right := run
	if w.OneEdge {
		right = 0
	}
	left := draw.Polygon(x-half, y, x-gap/2, y, x-gap/2, y+face, x-gap/2-run, y+depth, x-half, y+depth)
	edge := draw.Polygon(x+half, y, x+gap/2, y, x+gap/2, y+face, x+gap/2+right, y+depth, x+half, y+depth)
	if w.Branch != "" {
		left, edge = branchAcross(w, at, half, depth, gap)
	}
	draw.HatchAt(d, left, 45, 2.4, draw.LineMm)
	draw.HatchAt(d, edge, 135, 2.4, draw.LineMm)
	text := words.Either(w.BevelDeg > 0, "opened to "+words.Angle(w.BevelDeg), "no bevel")
	d.Add(draw.Text{XMm: x, YMm: y + depth + 4, SizeMm: 3.4, Align: draw.Centre, Content: words.Join(" ", w.Bevelled, text)}.Within(2*half + 4))
	d.Add(draw.Text{XMm: x, YMm: y - 5.4, SizeMm: 3.4, Align: draw.Centre, Content: says}.Within(2*half + 4))
}

// branchAcross are the wall of a main, cut at its hole, and that of the branch on it or
// in it, upright, its bore at the right: the bevel is on what is cut to fit.
func branchAcross(w *plan.WeldPlan, at plan.XY, half, depth, gap float64) (main, branch *canvas.Path) {
	const wallMm, bevelMm = 8.0, 5.0
	x, y, bevel := at.XMm, at.YMm, 0.0
	if w.BevelDeg > 0 {
		bevel = bevelMm
	}
	if w.Branch == parts.SetIn {
		in := x + gap/2
		return draw.Polygon(x-half, y, x-gap/2, y, x-gap/2, y+wallMm-bevel, x-gap/2-bevel, y+wallMm, x-half, y+wallMm),
			draw.Polygon(in, y, in+wallMm, y, in+wallMm, y+depth, in, y+depth)
	}
	foot, inner := y+wallMm+gap, x+wallMm/2
	return draw.Polygon(x-half, y, inner, y, inner, y+wallMm, x-half, y+wallMm),
		draw.Polygon(inner-wallMm, y+depth, inner-wallMm, foot+bevel, inner-wallMm+bevel, foot, inner, foot, inner, y+depth)
}
