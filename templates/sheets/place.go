package sheets

import (
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// placeMm is the side of the picture of a place.
const placeMm = 32.0

// placePicture shows where a finding is: the face with its holes filled, the step
// with its feature pointed at, or the step of assembly. Empty where nothing of that is
// drawn. Its origin is the upper left corner.
func placePicture(pl *plan.Plan, f review.Finding) draw.Drawing {
	part := partOf(pl, f)
	if part == nil {
		return stepPicture(pl, f.Part)
	}
	if f.Feature == "" {
		return draw.Drawing{}
	}
	for _, face := range part.Faces {
		if slices.ContainsFunc(face.Groups, func(g plan.Group) bool { return g.Name == f.Feature }) {
			return holesPicture(face, f.Feature)
		}
	}
	for _, one := range part.Features {
		if s := part.Section; one.Name == words.Spaced(f.Feature) && one.Face == "" && s.LengthMm > 0 && s.MaxMm > 0 {
			one.N = 1
			room := placeMm - picture.BalloonRowMm - picture.CaptionMm
			scale := min((placeMm-2*picture.SidePadMm)/s.LengthMm, room/(2*s.MaxMm))
			panel := picture.Section(part, []plan.Feature{one}, s.LengthMm*scale, 2*s.MaxMm*scale)
			return *panel.Drawn()
		}
	}
	return draw.Drawing{}
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
