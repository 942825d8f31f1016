package read

import "centrepop/parts"

// shape is which of outline, profile, tube, cone, transition, flight and bar gives a part its
// form; bends make a folded part of an outline.
type shape int

const (
	flat shape = 1 << iota
	turned
	tubular
	rolled
	ruled
	folded
	helical
	linear
)

var kinds = []struct {
	kind  parts.Kind
	forms shape
}{
	{parts.Flange, flat | turned},
	{parts.Ring, flat | turned},
	{parts.Plate, flat},
	{parts.Tube, turned | tubular},
	{parts.BearingHousing, turned},
	{parts.BarrelEnd, turned},
	{parts.Shaft, turned},
	{parts.TurnedPart, turned},
	{parts.Cone, rolled},
	{parts.TransitionPiece, ruled},
	{parts.Folded, folded},
	{parts.FlightPart, helical},
	{parts.BarPart, linear},
}

// Kinds lists the kinds of part in the order of the table.
func Kinds() []string {
	var words []string
	for _, k := range kinds {
		words = append(words, string(k.kind))
	}
	return words
}
