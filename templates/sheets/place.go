package sheets

import (
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// placeMm is the side of the picture of a place.
const placeMm = 32.0

// placePicture shows where a finding is: the feature of its part, the step of assembly, or where that
// could not be worked out what comes first in it. Empty where it has no place. Its origin is the upper
// left corner.
func placePicture(pl *plan.Plan, f review.Finding) draw.Drawing {
	if part := partOf(pl, f); part != nil {
		return partPicture(part, f.Feature)
	}
	if d := stepPicture(pl, f.Part); len(d.Items) > 0 {
		return d
	}
	if part := pl.Part(f.Meets[0].Part); part != nil {
		return partPicture(part, f.Meets[0].Feature)
	}
	return draw.Drawing{}
}

// partOf is the part that a finding is about; nil for one of a joint or the job.
func partOf(pl *plan.Plan, f review.Finding) *plan.PartPlan {
	if f.OfJoint {
		return nil
	}
	return pl.Part(f.Part)
}

// partPicture is a face with its holes of a feature filled, the step that it is or is an edge of pointed
// at, or a bar; else the whole part.
func partPicture(part *plan.PartPlan, feature string) draw.Drawing {
	if part.Bar != nil {
		return barPicture(part.Bar, feature)
	}
	for _, face := range part.Faces {
		if slices.ContainsFunc(face.Groups, func(g plan.Group) bool { return g.Name == feature }) {
			return holesPicture(face, feature)
		}
	}
	step, _ := parts.EdgeOf(feature)
	s, pointed := part.Section, []plan.Feature(nil)
	for _, one := range part.Features {
		if one.Face == "" && (one.Name == words.Spaced(feature) || one.Name == words.Spaced(step) && len(pointed) == 0) {
			one.N = 1
			pointed = []plan.Feature{one}
		}
	}
	if len(part.Faces) > 0 && len(pointed) == 0 && s.Flat {
		return holesPicture(part.Faces[0], feature)
	}
	room := placeMm - picture.BalloonRowMm - picture.CaptionMm
	scale := min((placeMm-2*picture.SidePadMm)/s.LengthMm, room/(2*s.MaxMm))
	panel := picture.Section(part, pointed, max(s.LengthMm*scale, leastSideMm), max(2*s.MaxMm*scale, leastSideMm))
	return *panel.Drawn()
}

// leastSideMm is how thin a long shaft or a wide plate is drawn at the least, mm.
const leastSideMm = 6.0

// barPicture is the side of a bar with the holes of a group filled, else its front, as long as the
// picture is wide.
func barPicture(b *plan.BarPlan, group string) (d draw.Drawing) {
	side, wide := "front", b.WidthMm
	if i := slices.IndexFunc(b.Holes, func(h plan.BarHole) bool { return h.Group == group }); i >= 0 {
		side = b.Holes[i].Side
	}
	if side == "top" || side == "bottom" {
		wide = b.DepthMm
	}
	along, across := (placeMm-2)/b.LengthMm, leastSideMm/wide
	at := func(x, y float64) (float64, float64) { return placeMm/2 + x*along, -placeMm/2 + y*across }
	x, y := at(-b.LengthMm/2, -wide/2)
	edge := draw.R(x, y, -x+placeMm, -y-placeMm).Path()
	if path, err := canvas.ParseSVGPath(string(b.Outline)); err == nil && side == "front" {
		edge = path.Transform(canvas.Identity.Translate(placeMm/2, -placeMm/2).Scale(along, across))
	}
	d.Add(draw.Shape{Path: edge, Stroke: draw.Black, WidthMm: draw.LineMm})
	for _, h := range b.Holes {
		if h.Side != side {
			continue
		}
		x, y := at(h.XMm, h.YMm)
		if r := max(0.7, h.DiameterMm/2*across); h.Group == group {
			d.Add(draw.Disc(x, y, r))
		} else {
			d.Add(draw.Ring(x, y, r, draw.ThinMm))
		}
	}
	_, low := at(0, -wide/2)
	d.Add(draw.Text{XMm: placeMm / 2, YMm: low - 4, SizeMm: draw.SmallMm, Align: draw.Centre, Content: side + ", left end at the left"})
	return d
}

// holesPicture is a face with the holes of a group filled.
func holesPicture(face *plan.Face, group string) draw.Drawing {
	h := min(1, 1/picture.Aspect(face)) * (placeMm - picture.TopPadMm - picture.CaptionMm)
	panel := picture.Face(face, h)
	pic := *panel.Drawn()
	scale := h / (face.MaxMm.YMm - face.MinMm.YMm)
	for _, hole := range face.Holes {
		if hole.Group == group {
			x, y := panel.Width/2+(hole.XMm-(face.MinMm.XMm+face.MaxMm.XMm)/2)*scale, -picture.TopPadMm-(face.MaxMm.YMm-hole.YMm)*scale
			pic.Add(draw.Disc(x, y, max(0.9, hole.DiameterMm/2*scale)))
		}
	}
	return pic
}

// stepPicture is the section of a joint's step, what comes in it heavy.
func stepPicture(pl *plan.Plan, joint string) (d draw.Drawing) {
	j := pl.Joint(joint)
	if j == nil || len(j.Pictures) == 0 {
		return d
	}
	pic := &j.Pictures[0]
	w, h := pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm
	v := &picture.Paper{Low: pic.MinMm, High: pic.MaxMm, Scale: (placeMm - 2) / max(w, h)}
	v.X, v.Y = (placeMm-w*v.Scale)/2, -(placeMm+h*v.Scale)/2
	for _, isNew := range []bool{false, true} {
		for k := range pic.Shapes {
			if s := &pic.Shapes[k]; s.New == isNew {
				line := draw.ThinMm
				if isNew {
					line = draw.ThickMm
				}
				v.Shape(&d, s, line)
			}
		}
	}
	v.Centres(&d, pic.Centres)
	return d
}

// pageTitle is where pages about a finding begin: its part's, or its joint's step.
func pageTitle(pl *plan.Plan, f review.Finding) string {
	if part := partOf(pl, f); part != nil {
		return part.Title
	}
	return draw.StepOf(f.Part)
}

func titleOf(pl *plan.Plan, f review.Finding) string {
	title := f.Part
	if part := partOf(pl, f); part != nil {
		title = part.Title
	}
	return words.Join(", ", title, f.Feature)
}
