package read

import (
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
)

var flatsGroup = &Group{
	Name: "flats", Means: "Flats milled on a round.", Example: "{name: hexagon, in: head, sides: 6, across: 24}",
	Keys: []Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the flats", Example: "name them, such as name: spanner"},
		{Name: "in", Type: NameType, Need: true, Means: "the outside step they are milled on", Example: "in: the name of an outside step"},
		{Name: "sides", Type: WordType, Means: "how many: one flat, two for a spanner, a square, a hexagon", Default: "2", Words: []string{"1", "2", "4", "6", "8", "10", "12"}},
		{Name: "across", Type: SizeType, Need: true, Means: "over opposite flats; of one flat to the far side of the round", Example: "across: 24"},
		{Name: "clock", Type: AngleType, Means: "clock angle of the middle of the first flat, seen from the front face", Default: "0"},
		{Name: "length", Type: SizeType, Means: "along the axis, from the end of the step that from names", Default: "the whole step"},
		{Name: "from", Type: WordType, Means: "the end of the step that the length starts at", Default: "front", Words: faceWords},
	},
}

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
	if round > 0 && (f.Across.Mm >= round-geom.CloseMm || f.Across.Mm <= least) {
		right := "less than " + r.said(round)
		if least > 0 {
			right += ", and more than half of it"
		}
		r.faultf(f.Across.Pos, right, "across is %s on a round of %s", f.Across.Text, r.said(round))
	}
	if f.Length.Set() && f.Length.Mm > step.Length.Mm+geom.CloseMm {
		r.faultf(f.Length.Pos, "at most the length of the step", "the flats are %s long and %s only %s", f.Length.Text, f.In.Value, step.Length.Text)
	}
}
