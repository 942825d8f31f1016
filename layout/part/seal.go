package part

import (
	"cmp"
	"regexp"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Seal is a rotary shaft seal that sits in a bore.
type Seal struct {
	*SealSize
	Bore *Step
	Lip  parts.Face // that its lip looks to: said by the drawing, else away from the open end of the bore
}

// SealSize is a shaft seal as a seat names it.
type SealSize struct {
	Name                     string // "60x80x8", "1-1/2x2x1/4"
	ShaftMm, BoreMm, WidthMm float64
	Inch                     bool // it is one of inches
}

// sealForm is how a shaft seal is written: shaft, bore and width.
var sealForm = regexp.MustCompile(`(\d+(?:\.\d+|/\d+|-\d+/\d+)?)x(\d+(?:\.\d+|/\d+|-\d+/\d+)?)x(\d+(?:\.\d+|/\d+|-\d+/\d+)?)`)

// inchSeal is the width under which the seal of a job in inches is one named
// in inches: no seal of millimetres is so narrow, and none of inches so wide. In any job one under
// narrowSeal is.
const inchSeal, narrowSeal = 3.0, 1.0

// SealOf finds a shaft seal in the words of a seat; nil if they name none. Its sizes are
// millimetres; inches are those of a seal in fractions or under 1 wide, and in a job in inches under 3.
func SealOf(seat string, units parts.Units) *SealSize {
	m := sealForm.FindStringSubmatch(seat)
	if m == nil {
		return nil
	}
	in := func(units parts.Units) *SealSize {
		out := &SealSize{Name: m[0], Inch: units == parts.Inches}
		for i, mm := range []*float64{&out.ShaftMm, &out.BoreMm, &out.WidthMm} {
			read, _ := parts.ParseLength(m[i+1], units)
			*mm = geom.Clean(read)
		}
		return out
	}
	out := in(parts.Millimetres)
	if strings.Contains(m[0], "/") || out.WidthMm < narrowSeal || units == parts.Inches && out.WidthMm < inchSeal {
		return in(parts.Inches)
	}
	return out
}

// Seals are the shaft seals in the bores of a part.
func (s *Sizes) Seals() (list []*Seal) {
	for _, st := range s.Side(true) {
		if q := SealOf(st.Seat, s.W.Units); q != nil && parts.SeatUse(st.Seat) == parts.ASeal {
			shoulder := parts.Front
			if s.UndercutAtBack(st) {
				shoulder = parts.Back
			}
			list = append(list, &Seal{q, st, cmp.Or(st.Lip, shoulder)})
		}
	}
	return list
}

// sealMarks are the seals as the section shows them, each up to its shoulder.
func (s *Sizes) sealMarks() []plan.SealMark {
	return seq.Map(s.Seals(), func(q *Seal) plan.SealMark {
		st := q.Bore
		m := plan.SealMark{FromMm: st.FromMm, ToMm: geom.Clean(st.FromMm + q.WidthMm), OuterMm: st.Size.NominalMm, InnerMm: q.ShaftMm, LipBack: q.Lip == parts.Back}
		if s.UndercutAtBack(st) {
			m.FromMm, m.ToMm = geom.Clean(st.ToMm-q.WidthMm), st.ToMm
		}
		return m
	})
}
