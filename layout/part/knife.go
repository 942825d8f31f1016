package part

import (
	"regexp"
	"slices"

	"centrepop/layout/material"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// namedMetal are the metals that gaskets are made of and the table of materials does not keep. Common practice, no source.
var namedMetal = regexp.MustCompile(`(?i)\b(?:copper|cu|lead|zinc|tin|nickel|silver|alumini?um|brass|bronze|iron|steel)\b`)

// Soft tells whether the part is a gasket of no metal, or of rubber: it gives way under bolts.
func (s *Sizes) Soft() bool {
	return s.Material == nil && (s.Part.For == parts.Gasket && !namedMetal.MatchString(s.Part.Material.Value) || s.Nonmetal != nil && s.Nonmetal.Kind == material.Rubber)
}

// knifeMm is the thickest soft sheet that a knife cuts square. Common practice, no source.
const knifeMm = 6.0

// knifed tells a part of soft sheet that a knife and hollow punches make, and neither saw, drill nor lathe: nothing of
// it is threaded, blind, fitted, grooved or bevelled, and no cutter that follows a file makes it.
func (s *Sizes) knifed() bool {
	p := s.Part
	if _, _, follows := LeastHoleMm(p.Stock.Cut, s.plateMm()); follows || !s.Flat() || !s.Soft() || geom.Over(s.plateMm(), knifeMm) {
		return false
	}
	worked := func(m Group) bool { return !m.Through || m.Size.Thread != nil || m.kind.finished(&m) != "" }
	fitted := func(st Step) bool { return st.Size.Fitted() || st.Size.Thread != nil || len(st.details) > 0 }
	return p.Outline.LeaveOnPart.Mm == 0 && len(p.Grooves) == 0 && !slices.ContainsFunc(s.Groups, worked) && !slices.ContainsFunc(s.Steps, fitted)
}
