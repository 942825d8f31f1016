package templates

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// panel is a picture with its balloons; the drawing's origin is its upper
// left corner.
type panel struct {
	draw          Drawing
	width, height float64
}

// Room in panels, in millimetres.
const (
	balloonStepMm = 2*balloonMm + 1.2
	balloonRowMm  = 2*balloonMm + 4
	captionMm     = 7.0
	sidePadMm     = 5.0
	facePadMm     = 2*balloonMm + 6 // a column of balloons at each side
	topPadMm      = 8.0             // the TOP arrow of a face
)

// pictures draws the section and the faces of a part, abreast where they fit
// at a useful size, else the section above the faces. Each is at most
// maxHeight tall.
func pictures(part *plan.PartPlan, width, maxHeight float64) []piece {
	onSection, onFace := balloonsOf(part)
	faces := part.Faces
	if len(faces) > 2 {
		faces = faces[:2]
	}
	hasSection := part.Section != nil && part.Section.LengthMm > 0 && part.Section.MaxMm > 0
	if !hasSection && len(faces) == 0 {
		return nil
	}
	sectionAspect := 0.0
	if hasSection {
		// A thin plate is drawn thicker than it is, so that its edges show, and
		// a long rod shorter.
		sectionAspect = min(max(part.Section.LengthMm/(2*part.Section.MaxMm), 0.2), 15)
	}
	if most := int(width / balloonStepMm); len(onSection) > most {
		onSection = onSection[:most] // the row is full: the table names the others
	}
	sum := sectionAspect
	for _, face := range faces {
		sum += aspect(face)
	}
	height := maxHeight - balloonRowMm - captionMm - topPadMm
	for rowWidth := width + 1; rowWidth > width && height > 1; height *= 0.98 {
		rowWidth = 0
		if hasSection {
			rowWidth = sectionWidth(height*sectionAspect, len(onSection))
		}
		for _, face := range faces {
			rowWidth += height*aspect(face) + 2*facePadMm
		}
	}
	if height >= 38 || !hasSection || len(faces) == 0 {
		row := piece{}
		var panels []panel
		if hasSection {
			panels = append(panels, sectionPanel(part, onSection, height*sectionAspect, height))
		}
		for _, face := range faces {
			panels = append(panels, facePanel(face, onFace[face.Face], height*aspect(face), height))
		}
		placeRow(&row, panels, width)
		return []piece{row, space(4)}
	}
	sectionHeight := min((width-2*sidePadMm)/sectionAspect, maxHeight*0.7)
	var upper, lower piece
	placeRow(&upper, []panel{sectionPanel(part, onSection, sectionHeight*sectionAspect, sectionHeight)}, width)
	sum -= sectionAspect
	height = min(maxHeight*0.5, (width-2*facePadMm*float64(len(faces)))/sum)
	var panels []panel
	for _, face := range faces {
		panels = append(panels, facePanel(face, onFace[face.Face], height*aspect(face), height))
	}
	placeRow(&lower, panels, width)
	return []piece{upper, space(2), lower, space(4)}
}

// placeRow sets panels side by side, the spare room shared among them, their
// captions at one height.
func placeRow(p *piece, panels []panel, width float64) {
	used := 0.0
	for _, q := range panels {
		used += q.width
		p.height = max(p.height, q.height)
	}
	gap := max(0, (width-used)/float64(len(panels)+1))
	x := gap
	for _, q := range panels {
		p.draw.Place(&q.draw, x, q.height-p.height)
		x += q.width + gap
	}
}

func aspect(face *plan.Face) float64 {
	w, h := face.MaxMm.XMm-face.MinMm.XMm, face.MaxMm.YMm-face.MinMm.YMm
	if !(w > 0 && h > 0) {
		return 1
	}
	return w / h
}

// balloonsOf sorts the features by the picture they point into. One that
// lies on a face without a picture points to that end of the section.
func balloonsOf(part *plan.PartPlan) (onSection []plan.Feature, onFace map[parts.Face][]plan.Feature) {
	drawn := map[parts.Face]bool{}
	for i, face := range part.Faces {
		drawn[face.Face] = i < 2
	}
	onFace = map[parts.Face][]plan.Feature{}
	for _, ft := range part.Features {
		switch {
		case ft.Face == "":
			onSection = append(onSection, ft)
		case drawn[ft.Face]:
			onFace[ft.Face] = append(onFace[ft.Face], ft)
		case part.Section != nil:
			z := 0.0
			if ft.Face == parts.Back {
				z = part.Section.LengthMm
			}
			ft.Balloon = plan.XY{XMm: z, YMm: min(math.Hypot(ft.Balloon.XMm, ft.Balloon.YMm), part.Section.MaxMm)}
			onSection = append(onSection, ft)
		}
	}
	return onSection, onFace
}

// sectionWidth is the width of a section's panel: of the section or of its
// row of balloons.
func sectionWidth(w float64, balloons int) float64 {
	return max(w+2*sidePadMm, balloonStepMm*float64(balloons), 30)
}

// sectionPanel draws the part cut along its axis: the upper half hatched, the
// lower half hatched too in a flat part and seen from outside in a round one.
// Balloons stand in a row above.
func sectionPanel(part *plan.PartPlan, features []plan.Feature, w, h float64) panel {
	s := part.Section
	sx, sy := w/s.LengthMm, h/(2*s.MaxMm)
	p := panel{width: sectionWidth(w, len(features)), height: balloonRowMm + h + captionMm}
	x0, axis := (p.width-w)/2, -balloonRowMm-h/2
	at := func(q plan.XY, side float64) (float64, float64) { return x0 + q.XMm*sx, axis + side*q.YMm*sy }

	upper := cutPath(s, at, 1)
	hatch(&p.draw, upper, rect{x0 - 1, axis, x0 + w + 1, axis + h/2 + 1})
	if s.Flat {
		lower := cutPath(s, at, -1)
		hatch(&p.draw, lower, rect{x0 - 1, axis - h/2 - 1, x0 + w + 1, axis})
	} else {
		p.draw.Add(Shape{Path: outsidePath(s, at), Stroke: Black, WidthMm: lineMm})
		edges := &canvas.Path{}
		for _, q := range s.Outer {
			x, y := at(q, -1)
			edges.MoveTo(x, axis)
			edges.LineTo(x, y)
		}
		p.draw.Add(Shape{Path: edges, Stroke: Black, WidthMm: thinMm})
	}
	for _, t := range s.Threads {
		off := -0.9
		if t.Inside {
			off = 0.9
		}
		fx, fy := at(plan.XY{XMm: t.FromMm, YMm: t.RadiusMm}, 1)
		tx, _ := at(plan.XY{XMm: t.ToMm, YMm: t.RadiusMm}, 1)
		p.draw.Add(segment(fx, fy+off, tx, fy+off, thinMm))
		if !t.Inside && !s.Flat {
			p.draw.Add(segment(fx, 2*axis-fy-off, tx, 2*axis-fy-off, thinMm))
		}
	}
	for _, r := range part.Radials {
		x, y := at(plan.XY{XMm: r.AxialMm, YMm: r.OutsideMm / 2}, 1)
		p.draw.Add(segment(x, y+2, x, y-min(9, 0.6*(y-axis)), thinMm, chainDash...))
	}
	p.draw.Add(segment(x0-4, axis, x0+w+4, axis, thinMm, chainDash...))

	y := -p.height + 1.6
	caption := "Section, FRONT at the left"
	if textWidth(caption, textMm, false) > p.width {
		caption = "Section"
	}
	caption, size := shrink(caption, textMm, false, p.width)
	p.draw.Add(Text{XMm: p.width / 2, YMm: y, SizeMm: size, Align: Centre, Content: caption})

	var spots []spot
	for _, ft := range features {
		x, y := at(ft.Balloon, 1)
		spots = append(spots, spot{ft.N, x, y})
	}
	balloonRow(&p, spots)
	return p
}

// spot is what a balloon points at.
type spot struct {
	n    int
	x, y float64
}

// balloonRow sets balloons in a row along a panel's upper edge.
func balloonRow(p *panel, spots []spot) {
	slices.SortStableFunc(spots, func(a, b spot) int { return cmp.Compare(a.x, b.x) })
	wanted := make([]float64, len(spots))
	for i, q := range spots {
		wanted[i] = q.x
	}
	places := spread(wanted, balloonStepMm, balloonMm, p.width-balloonMm)
	rowY := -balloonMm - 0.5
	// Two leaders that cross change their balloons.
	for range spots {
		for i := range spots {
			for j := i + 1; j < len(spots); j++ {
				if cross(places[i], rowY, spots[i].x, spots[i].y, places[j], rowY, spots[j].x, spots[j].y) {
					spots[i], spots[j] = spots[j], spots[i]
				}
			}
		}
	}
	for i, q := range spots {
		p.draw.Add(leader(places[i], rowY, q.x, q.y)...)
		p.draw.Add(balloon(places[i], rowY, q.n)...)
	}
}

// cutPath is the closed path of the metal on one side of the axis.
func cutPath(s *plan.Section, at func(plan.XY, float64) (float64, float64), side float64) *canvas.Path {
	p := &canvas.Path{}
	for i, q := range cutPoints(s) {
		x, y := at(q, side)
		if i == 0 {
			p.MoveTo(x, y)
		} else {
			p.LineTo(x, y)
		}
	}
	p.Close()
	return p
}

// cutPoints are the corners of the metal on one side of the axis, z and r.
func cutPoints(s *plan.Section) []plan.XY {
	points := slices.Clone(s.Outer)
	switch n := len(s.Inner); {
	case n == 0:
		points = append(points, plan.XY{XMm: s.LengthMm}, plan.XY{})
	default:
		if s.Inner[n-1].YMm == 0 {
			points = append(points, plan.XY{XMm: s.LengthMm})
		}
		for i := n - 1; i >= 0; i-- {
			points = append(points, s.Inner[i])
		}
	}
	return points
}

// outsidePath is the lower half seen from outside, from the axis round.
func outsidePath(s *plan.Section, at func(plan.XY, float64) (float64, float64)) *canvas.Path {
	p := &canvas.Path{}
	p.MoveTo(at(plan.XY{}, -1))
	for _, q := range s.Outer {
		p.LineTo(at(q, -1))
	}
	p.LineTo(at(plan.XY{XMm: s.LengthMm}, -1))
	return p
}

// hatch fills a cut surface pale, hatches it at 45° inside bounds, and draws
// its edge.
func hatch(d *Drawing, cut *canvas.Path, bounds rect) {
	const pitch = 2.4
	d.Add(Shape{Path: cut, Fill: Pale})
	lines := &canvas.Path{}
	h := bounds.height()
	for x := bounds.x0 - h; x < bounds.x1; x += pitch {
		lines.MoveTo(x, bounds.y0)
		lines.LineTo(x+h, bounds.y1)
	}
	inner := &Drawing{Items: []Item{Shape{Path: lines, Stroke: Black, WidthMm: hairMm}}}
	d.Add(Group{Drawing: inner, Transform: canvas.Identity, Clip: cut})
	d.Add(Shape{Path: cut, Stroke: Black, WidthMm: lineMm})
}

// spread moves wanted positions (in rising order) apart to at least step,
// between lo and hi, as little as it can.
func spread(wanted []float64, step, lo, hi float64) []float64 {
	n := len(wanted)
	if n > 1 {
		step = min(step, (hi-lo)/float64(n-1))
	}
	places := make([]float64, n)
	for i, w := range wanted {
		places[i] = max(w, lo)
		if i > 0 {
			places[i] = max(places[i], places[i-1]+step)
		}
	}
	for i := n - 1; i >= 0; i-- {
		limit := hi
		if i < n-1 {
			limit = places[i+1] - step
		}
		places[i] = min(places[i], limit)
	}
	return places
}

// cross tells whether two straight lines cross between their ends.
func cross(ax, ay, bx, by, cx, cy, dx, dy float64) bool {
	side := func(px, py, qx, qy, rx, ry float64) float64 { return (qx-px)*(ry-py) - (qy-py)*(rx-px) }
	return side(ax, ay, bx, by, cx, cy)*side(ax, ay, bx, by, dx, dy) < 0 &&
		side(cx, cy, dx, dy, ax, ay)*side(cx, cy, dx, dy, bx, by) < 0
}

// facePanel draws a face with its holes and numbers. Balloons stand in
// columns at the left and the right.
func facePanel(face *plan.Face, features []plan.Feature, w, h float64) panel {
	p := panel{width: w + 2*facePadMm, height: topPadMm + h + captionMm}
	mid := (face.MinMm.XMm + face.MaxMm.XMm) / 2
	type spot struct {
		ft   plan.Feature
		x, y float64
	}
	var sides [2][]spot
	for i, ft := range features {
		k := 0
		if ft.Balloon.XMm > mid || (ft.Balloon.XMm == mid && i%2 == 1) {
			k = 1
		}
		sides[k] = append(sides[k], spot{ft: ft})
	}
	// A long list on one side makes the panel taller.
	need := balloonStepMm * float64(max(len(sides[0]), len(sides[1])))
	if need > h+captionMm {
		p.height += need - h - captionMm
	}
	scale := h / (face.MaxMm.YMm - face.MinMm.YMm)
	top := -topPadMm - (p.height-topPadMm-h-captionMm)/2
	ox, oy := facePadMm-face.MinMm.XMm*scale, top-face.MaxMm.YMm*scale

	room := newOccupied(rect{facePadMm - 1, top - h - 1, facePadMm + w + 1, top + 1})
	if outline, err := canvas.ParseSVGPath(string(face.Outline)); err == nil {
		outline = outline.Transform(canvas.Identity.Translate(ox, oy).Scale(scale, scale))
		p.draw.Add(Shape{Path: outline, Stroke: Black, WidthMm: lineMm})
		room.addPath(outline)
	}
	for _, c := range face.Circles {
		x, y, r := ox+c.CentreMm.XMm*scale, oy+c.CentreMm.YMm*scale, c.DiameterMm/2*scale
		if c.Pitch {
			// A pitch circle may run out over the edges of a plate.
			circle := &Drawing{Items: []Item{ring(x, y, r, hairMm, chainDash...)}}
			p.draw.Add(Group{Drawing: circle, Transform: canvas.Identity, Clip: room.window.path()})
		} else {
			p.draw.Add(ring(x, y, r, lineMm))
		}
		room.addCircle(x, y, r)
	}
	for _, hole := range face.Holes {
		x, y, r := ox+hole.XMm*scale, oy+hole.YMm*scale, max(0.6, hole.DiameterMm/2*scale)
		p.draw.Add(ring(x, y, r, 0.25), segment(x-r-0.8, y, x+r+0.8, y, hairMm), segment(x, y-r-0.8, x, y+r+0.8, hairMm))
		room.addCircle(x, y, r)
	}
	for _, s := range face.Slots {
		path := slotPath(s).Transform(canvas.Identity.Translate(ox, oy).Scale(scale, scale))
		p.draw.Add(Shape{Path: path, Stroke: Black, WidthMm: 0.25})
		room.addPath(path)
	}
	p.draw.Add(topArrow(facePadMm+w/2, top+1.4, 5))
	p.draw.Add(Text{XMm: facePadMm + w/2 + 3, YMm: top + 2.2, SizeMm: textMm, Bold: true, Content: "TOP"})
	caption := upper(face.Face) + " face"
	if face.Mirrored {
		caption += ", seen from the back"
	}
	caption, size := shrink(caption, textMm, true, p.width-1)
	p.draw.Add(Text{XMm: p.width / 2, YMm: top - h - 5, SizeMm: size, Bold: true, Align: Centre, Content: caption})

	for k, side := range sides {
		for i := range side {
			side[i].x, side[i].y = ox+side[i].ft.Balloon.XMm*scale, oy+side[i].ft.Balloon.YMm*scale
		}
		slices.SortStableFunc(side, func(a, b spot) int { return cmp.Compare(a.y, b.y) })
		wanted := make([]float64, len(side))
		for i := range side {
			wanted[i] = side[i].y
		}
		low := top - h - captionMm + balloonMm
		places := spread(wanted, balloonStepMm, min(low, -p.height+balloonMm), -balloonMm-1)
		bx := balloonMm + 0.5
		if k == 1 {
			bx = p.width - bx
		}
		for range side {
			for i := range side {
				for j := i + 1; j < len(side); j++ {
					if cross(bx, places[i], side[i].x, side[i].y, bx, places[j], side[j].x, side[j].y) {
						side[i], side[j] = side[j], side[i]
					}
				}
			}
		}
		for i, q := range side {
			p.draw.Add(leader(bx, places[i], q.x, q.y)...)
			p.draw.Add(balloon(bx, places[i], q.ft.N)...)
			room.addLine(bx, places[i], q.x, q.y)
		}
	}
	for _, hole := range face.Holes {
		x, y, r := ox+hole.XMm*scale, oy+hole.YMm*scale, max(0.6, hole.DiameterMm/2*scale)
		smallNumber(&p.draw, room, x, y, r, hole.XMm, hole.YMm, hole.N)
	}
	for _, s := range face.Slots {
		smallNumber(&p.draw, room, ox+s.XMm*scale, oy+s.YMm*scale, s.WidthMm/2*scale, s.XMm, s.YMm, s.N)
	}
	return p
}

// smallNumber writes a hole's number beside it in a picture, if there is
// room; the template has them all.
func smallNumber(d *Drawing, room *occupied, x, y, r, dirX, dirY float64, n int) {
	text := strconv.Itoa(n)
	w, h := textWidth(text, smallMm, true), ascentMm*smallMm
	spot, ok := room.find(x, y, w, h, r+1.2, r+4.5, math.Atan2(dirY, dirX), room.free)
	if !ok {
		return
	}
	room.addText(spot)
	d.Add(Text{XMm: spot.x0, YMm: spot.y0, SizeMm: smallMm, Bold: true, Content: text})
}

// slotPath is a slot's outline in face coordinates: half circles about the
// ends, joined by straight sides.
func slotPath(s plan.Slot) *canvas.Path {
	r := s.WidthMm / 2
	a, b := s.EndsMm[0], s.EndsMm[1]
	dx, dy := b.XMm-a.XMm, b.YMm-a.YMm
	d := math.Hypot(dx, dy)
	if d == 0 {
		return canvas.Circle(r).Translate(a.XMm, a.YMm)
	}
	nx, ny := -dy/d*r, dx/d*r
	p := &canvas.Path{}
	p.MoveTo(a.XMm-nx, a.YMm-ny)
	p.LineTo(b.XMm-nx, b.YMm-ny)
	p.ArcTo(r, r, 0, false, true, b.XMm+nx, b.YMm+ny)
	p.LineTo(a.XMm+nx, a.YMm+ny)
	p.ArcTo(r, r, 0, false, true, a.XMm-nx, a.YMm-ny)
	p.Close()
	return p
}
