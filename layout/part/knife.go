package part

import (
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
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

// topMark is how TOP is marked: as the part says, or on soft sheet, which no punch or scriber marks, with a pen.
func (s *Sizes) topMark() string {
	return words.Either(s.Part.Top.Value != "" && s.knifed(), "pen", s.Part.Top.Value)
}

// knife makes a part of soft sheet: the template on it, its holes punched while the sheet is whole, then its bore cut
// and last its outside.
func (b *bench) knife() {
	do := []string{"Lay " + b.StockText() + " on end-grain wood or a cutting board."}
	if faces, _ := b.punched(); len(faces) > 0 && slices.ContainsFunc(b.Faces, func(f *plan.Face) bool { return f.NoTemplate == "" }) {
		do = append(do, "Check the printed rules of the template. Tape the "+strings.Join(faces, " and the ")+" template on it whole; do not cut it out.")
		do = append(do, b.carriedLines()...)
	}
	for m := range seq.Refs(b.Groups) {
		by := words.Either(m.Hole != nil, "Punch ", "Punch the ends of, and cut between them, ")
		do = append(do, by+words.Spaced(m.Name.Value)+", "+strings.TrimSuffix(m.placesWords(), ".")+": "+words.CountOf(m.Group.Count)+m.Group.SizeText+".")
	}
	if bore := b.StepNamed(boreStep); bore != nil {
		do = append(do, "Cut out the bore "+b.sizeText(bore)+".")
	}
	do = append(do, "Last the outside, "+b.cut.size+": several light cuts, the knife upright; what is round with a compass cutter.", "Write TOP with a pen "+b.topPlace()+".")
	b.op(warn(plan.Operation{Machine: plan.Bench, Title: "Cut to the template", Do: do, Tool: "hollow punches and mallet, knife with a new blade, compass cutter", Gauge: "rule, calipers",
		Refs: seq.Map(b.Features, func(f plan.Feature) int { return f.N })}, blade))
	b.op(plan.Operation{Machine: plan.Bench, Title: "Inspect", Do: []string{"No cut runs past a corner, no hole is torn: else make it new.", "Fill in the record."}})
}
