package part

import (
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// topMark is how TOP is marked: as the part says, or on soft sheet, which no punch or scriber marks, with a pen.
func (s *Sizes) topMark() string {
	return words.Either(s.Part.Top.Value != "" && s.knifed(), "pen", s.Part.Top.Value)
}

// topFace is the face that TOP is marked on.
func (g *Shape) topFace() string {
	if len(g.Faces) > 0 {
		return string(g.Faces[0].Face)
	}
	if g.saddledEnd(parts.Front) {
		return string(parts.Back)
	}
	return string(parts.Front)
}

// topAt is the face that TOP stands on, or the step on whose outside.
func (s *Shape) topAt() (face parts.Face, in string) {
	face = parts.Face(s.topFace())
	if s.Part.Top.Value != topKeyway {
		return face, ""
	}
	if k := s.topKeyway(); k != nil {
		from, to := k.Row.FromMm-k.Row.RunoutMm, k.Row.ToMm+k.Row.RunoutMm
		reached := map[parts.Face]bool{parts.Front: from < geom.CloseMm, parts.Back: to > s.LengthMm()-geom.CloseMm}
		switch {
		case reached[face] || k.Row.Inside:
			return face, ""
		case reached[face.Other()]:
			return face.Other(), ""
		}
		in = k.Row.In
	}
	for _, m := range s.Radials {
		for _, row := range m.Rows {
			if st := s.outsideAt(row.AxialMm); in == "" && row.ClockDeg == 0 && st != nil && row.AroundMm != 0 {
				in = st.Name
			}
		}
	}
	return face, in
}

// topPlace is where TOP stands on a part: on the face that its marks are made on, and a
// keyway that is TOP where it comes out, or else on the outside round it.
func (s *Shape) topPlace() string {
	face, in := s.topAt()
	switch {
	case in != "":
		return "on the outside of " + words.Spaced(in)
	case s.saddledEnd(face): // as both ends are then
		return "along the outside"
	}
	return "on the " + string(face) + " face"
}
