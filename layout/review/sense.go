package review

import (
	"math"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// thickest is what the cutters of a shop go through. Common practice, no source.
var thickest = map[string]float64{"laser": 30, "plasma": 60, "waterjet": 200, "flame": 300}

// What is drawn once in a while and meant hardly ever. Common practice, no source.
const (
	mostLeaveMm = 10.0    // left on the diameter for the lathe
	deepestHole = 12.0    // of a drilled hole, in diameters
	shallowHole = 0.75    // of a plain blind one
	leastPitch  = 1.0 / 3 // of a flight, of its outside
	mostPitch   = 1.5
	leastTurn   = 0.5  // of a flight, of its pitch
	leastRise   = 0.25 // of a cone, of the most that its wall runs out
	mostLap     = 20.0 // of a rolled seam, in thicknesses
	sealEdgeMm  = 1.5  // on a side, of the shoulder that a shaft seal lies against
)

// sense looks for numbers that are possible and make no sense: most have a digit too
// many, too few, or in the wrong place.
func sense(v *view) {
	is := func(feature string, pos parts.Pos, what string, gotMm, leastMm, mostMm float64, rule, fix string) {
		f := Finding{What: what, Rule: rule, Fix: fix, Numbers: v.mm(gotMm) + ", wanted at least " + v.mm(leastMm), LeftMm: left(gotMm)}
		if gotMm > mostMm+slackMm {
			f.Numbers, f.LeftMm, f.OverMm = v.mm(gotMm)+", wanted at most "+v.mm(mostMm), nil, over(gotMm)
		} else if gotMm >= leastMm-slackMm {
			return
		}
		v.report(Check, feature, pos, f)
	}
	const left = "metal left for the lathe is turned away in a few cuts"
	if b := v.p.Bore; b != nil {
		is("bore", b.Pos, "far more is left in the bore than is turned", b.Leave.Mm, 0, mostLeaveMm, left, "leave: "+v.mm(1)+" to "+v.mm(3))
	}
	if o := v.p.Outline; v.p.Flat() {
		is("outline", o.Pos, "far more is left on the outline than is turned", o.LeaveOnPart.Mm, 0, mostLeaveMm, left, "leave: "+v.mm(1)+" to "+v.mm(3))
		if most := thickest[v.p.Stock.Cut]; most > 0 {
			is("", v.p.Stock.Pos, "the plate is thicker than a "+v.p.Stock.Cut+" cuts", v.lengthMm, 0, most, "a cutter goes through so much", "another cutter, or another thickness")
		}
	}
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.group != nil }) {
		deep, wide := h.toMm-h.fromMm, 2*h.radiusMm
		if h.drillMm > 0 {
			is(h.name, h.pos, h.name+" is deeper than a drill of its size goes well", deep, 0, deepestHole*h.drillMm, "a twist drill goes ten diameters deep, twelve with care", "a larger hole, a shorter one, or drill it from both faces")
		}
		if !h.through && h.group.Size.Make == parts.PlainHole && deep > slackMm {
			is(h.name, h.pos, h.name+" is too shallow for anything to hold in it", deep, shallowHole*wide, math.Inf(1), "a pin or a bar goes into its hole by about its diameter", "a deeper hole")
		}
	}
	v.senseOfForm(is)
	for _, c := range v.inside {
		if v.seal(c) == nil {
			continue
		}
		high := seq.Max(0, c.next(), c.outBy)
		if high > 0 || mostMm(c.next()) > c.radiusMm {
			is(c.name, c.pos, "the shoulder behind the seal in "+c.name+" is low", high, sealEdgeMm, math.Inf(1), "a seal lies against a shoulder that it does not slip over", "a smaller bore behind the seal")
		}
	}
}

// senseOfForm looks at the numbers of a part formed from sheet, or of a flight.
func (v *view) senseOfForm(is func(feature string, pos parts.Pos, what string, gotMm, leastMm, mostMm float64, rule, fix string)) {
	rises := func(highMm, runMm float64) {
		is("", v.p.Name.Pos, "its wall lies nearly flat", highMm, leastRise*runMm, math.Inf(1), "a cone or transition rises by a quarter of what it widens at the least: a flatter one is hardly rolled, and nothing runs down it", "a greater height")
	}
	switch v.p.Kind {
	case parts.TransitionPiece:
		t := v.p.Transition
		rises(t.Height.Mm, math.Hypot(t.Width.Mm, t.Depth.Mm)/2-t.Diameter.Mm/2)
	case parts.Cone:
		f := v.p.Frustum
		rises(f.Height.Mm, (f.Large.Mm-f.Small.Mm)/2+math.Abs(f.Offset.Mm))
		is("", f.Pos, "the seam laps over far", f.Overlap.Mm, 0, mostLap*f.Thickness.Mm, "a lap is as wide as its weld or rivets ask, ten thicknesses or so", "a shorter lap")
	case parts.FlightPart:
		f := v.p.Flight
		is("", f.Pos, "the flight is a fraction of a turn", f.Length.Mm, leastTurn*f.Pitch.Mm, math.Inf(1), "a flight moves its load by turns", "a longer flight")
		is("", f.Pos, "the pitch of the flight is far from its outside", f.Pitch.Mm, leastPitch*f.Outside.Mm, mostPitch*f.Outside.Mm, "a flight rises by a third of its outside to one and a half in a turn: less is hardly formed, more throws its load", "another pitch")
	}
}
