package part

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// Seal is a rotary shaft seal that sits in a bore.
type Seal struct {
	Size             string // as it is ordered: "60x80x8"
	ShaftMm, WidthMm float64
	Lip              parts.Face // that its lip looks to
	Said             bool       // by the drawing; else away from the open end of the bore
}

// sealSeat is how the seat of a shaft seal is written: shaft, bore and width.
var sealSeat = regexp.MustCompile(`(?i)^seal\s+((\d+(?:\.\d+)?)x\d+(?:\.\d+)?x(\d+(?:\.\d+)?))\b`)

// SealIn is the shaft seal of a bore, nil for another step. Its sizes are millimetres,
// as seals are named.
func (s *Sizes) SealIn(st *Step) *Seal {
	m := sealSeat.FindStringSubmatch(strings.TrimSpace(st.Seat))
	if m == nil || !st.Inside {
		return nil
	}
	out := &Seal{Size: m[1], Lip: st.Lip, Said: st.Lip != ""}
	out.ShaftMm, _ = strconv.ParseFloat(m[2], 64)
	out.WidthMm, _ = strconv.ParseFloat(m[3], 64)
	if !out.Said {
		if out.Lip = parts.Front; s.sealBehind(st) {
			out.Lip = parts.Back
		}
	}
	return out
}

// sealBehind tells whether the shoulder that a seal is pressed up to lies behind it.
func (s *Sizes) sealBehind(st *Step) bool {
	_, inside := s.Sides()
	return shoulderAfter(inside, slices.Index(inside, st), -1)
}

// sealMarks are the seals as the section shows them, each up to its shoulder.
func (s *Sizes) sealMarks() []plan.SealMark {
	var out []plan.SealMark
	for i := range s.Steps {
		st := &s.Steps[i]
		q := s.SealIn(st)
		if q == nil {
			continue
		}
		m := plan.SealMark{FromMm: st.FromMm, ToMm: geom.Clean(st.FromMm + q.WidthMm), OuterMm: st.Size.NominalMm, InnerMm: q.ShaftMm, LipBack: q.Lip == parts.Back}
		if s.sealBehind(st) {
			m.FromMm, m.ToMm = geom.Clean(st.ToMm-q.WidthMm), st.ToMm
		}
		out = append(out, m)
	}
	return out
}
