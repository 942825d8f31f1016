package read

import (
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// flats reads flats of a turned part. That their step exists and has room is
// checked with the geometry.
func (f *fields) flats() parts.Flats {
	sides, _ := parts.WholeOf(f.word("sides"))
	return parts.Flats{
		Pos: f.n.pos, Name: f.name("name"), In: f.name("in"), Sides: parts.Number{Value: sides, Pos: f.n.pos}, Across: f.length("across"),
		Clock: f.angle("clock"), Length: f.length("length"), From: f.face("from"),
	}
}

// flatsRoom checks that flats lie on an outside step.
func (r *reader) flatsRoom(p *parts.Part, f *parts.Flats) {
	names := p.FeatureNames(parts.OutsideFeature)
	if !slices.Contains(names, f.In.Value) {
		r.faultf(f.In.Pos, list(names), "the part has no outside step %s to mill flats on", f.In.Value)
		return
	}
	step, _, _ := stepNamed(p.Profile, f.In.Value)
	round := outerMm(step)
	least := 0.0
	if f.Sides.Value == 1 {
		least = round / 2
	}
	if round > 0 && (!geom.Over(round, f.Across.Mm) || f.Across.Mm <= least) {
		right := "less than " + r.said(round)
		if least > 0 {
			right += ", and more than half of it"
		}
		r.faultf(f.Across.Pos, right, "across is %s on a round of %s", f.Across.Text, r.said(round))
	}
	if geom.Over(f.Length.Mm, step.Length.Mm) {
		r.faultf(f.Length.Pos, "at most the length of the step", "the flats are %s long and %s only %s", f.Length.Text, f.In.Value, step.Length.Text)
	}
}
