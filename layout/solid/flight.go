package solid

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/flight"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// sectors is how many flat sectors stand for a turn of a flight.
const sectors = 12

// axialMm is how thick the sectors are, for them to weigh what the sheet does.
func axialMm(f *parts.Flight) float64 {
	run, err := flight.Flight{ShaftMm: f.Shaft.Mm, OutsideMm: f.Outside.Mm, PitchMm: f.Pitch.Mm, ThicknessMm: f.Thickness.Mm}.For(f.Length.Mm)
	if err != nil {
		return f.Thickness.Mm
	}
	return run.VolumeMm3 / (run.Turns * math.Pi / 4 * (f.Outside.Mm*f.Outside.Mm - f.Shaft.Mm*f.Shaft.Mm))
}

// helicoid stands flat sectors, one behind the other, for the turns of a flight:
// clockwise away from the front where it winds right.
func helicoid(f *parts.Flight) *assembly.Solid {
	inner, outer := f.Shaft.Mm/2, f.Outside.Mm/2
	half := axialMm(f) / 2
	step, turn := f.Pitch.Mm/sectors, 360.0/sectors
	bulge := math.Tan(turn * math.Pi / 720)
	if f.Left {
		turn = -turn
	}
	var add []assembly.Simple
	count := max(2, int(math.Round(f.Length.Mm/step)))
	for k := range count {
		a, b := (float64(k)-0.5)*turn, (float64(k)+0.5)*turn // so that no plane through the axis runs between two
		at := func(radius, clock float64) geom.Point {
			v := assembly.Clock(radius, clock)
			return geom.Point{XMm: v.X, YMm: v.Y}
		}
		if f.Left {
			a, b = b, a // clockwise from a to b
		}
		loop := geom.Loop{{Point: at(inner, a), Bulge: -bulge}, {Point: at(inner, b)}, {Point: at(outer, b), Bulge: bulge}, {Point: at(outer, a)}}
		z := -half - float64(k)*(f.Length.Mm-2*half)/float64(count-1) // from end to end
		add = append(add, assembly.Prism(assembly.Outline{loop}, z-half, z+half))
	}
	return assembly.Of(add...)
}
