package review

import (
	"math"
	"slices"

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
var sense = together((*view).leftToTurn, (*view).thickCut, (*view).senseOfHoles, (*view).senseOfForm, each(everyInside, (*view).lowShoulder))

// noMore and noLess report a length that is more, or less, than makes sense.
func (v *view) noMore(feature string, pos parts.Pos, gotMm, mostMm float64, what, rule, fix string) {
	v.atMost(feature, pos, gotMm, mostMm, Finding{What: what, Rule: rule, Fix: fix})
}
func (v *view) noLess(feature string, pos parts.Pos, gotMm, leastMm float64, what, rule, fix string) {
	v.atLeast(feature, pos, gotMm, leastMm, Finding{What: what, Numbers: ", wanted at least ", Rule: rule, Fix: fix})
}

// leftToTurn looks at what the cutter leaves for the lathe.
func (v *view) leftToTurn() {
	const rule = "metal left for the lathe is turned away in a few cuts"
	fix := "leave: " + v.mm(1) + " to " + v.mm(3)
	if b := v.p.Bore; b != nil {
		v.noMore("bore", b.Pos, b.Leave.Mm, mostLeaveMm, "far more is left in the bore than is turned", rule, fix)
	}
	if o := v.p.Outline; v.p.Flat() {
		v.noMore("outline", o.Pos, o.LeaveOnPart.Mm, mostLeaveMm, "far more is left on the outline than is turned", rule, fix)
	}
}

// thickCut looks for plate that its cutter does not go through.
func (v *view) thickCut() {
	cut := v.p.Stock.Cut
	if most := thickest[cut]; v.p.Flat() && most > 0 {
		v.noMore("", v.p.Stock.Pos, v.lengthMm, most, "the plate is thicker than a "+cut+" cuts", "a cutter goes through so much", "another cutter, or another thickness")
	}
}

// senseOfHoles looks at how deep holes are.
func (v *view) senseOfHoles() {
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.group != nil }) {
		deep, wide := h.toMm-h.fromMm, 2*h.radiusMm
		if h.drillMm > 0 {
			v.noMore(h.name, h.pos, deep, deepestHole*h.drillMm, h.name+" is deeper than a drill of its size goes well", "a twist drill goes ten diameters deep, twelve with care", "a larger hole, a shorter one, or drill it from both faces")
		}
		if !h.through && h.group.Size.Make == parts.PlainHole && deep > slackMm {
			v.noLess(h.name, h.pos, deep, shallowHole*wide, h.name+" is too shallow for anything to hold in it", "a pin or a bar goes into its hole by about its diameter", "a deeper hole")
		}
	}
}

// lowShoulder looks at the shoulder that a shaft seal lies against.
func (v *view) lowShoulder(c *cylinder) {
	if v.seal(c) != nil && slices.ContainsFunc(c.next(), func(o *cylinder) bool { return o.radiusMm != c.radiusMm }) {
		v.noLess(c.name, c.pos, seq.Max(0, c.next(), c.outBy), sealEdgeMm, "the shoulder behind the seal in "+c.name+" is low", "a seal lies against a shoulder that it does not slip over", "a smaller bore behind the seal")
	}
}

// senseOfForm looks at the numbers of a part formed from sheet, or of a flight.
func (v *view) senseOfForm() {
	rises := func(highMm, runMm float64) {
		v.noLess("", v.p.Name.Pos, highMm, leastRise*runMm, "its wall lies nearly flat", "a cone or transition rises by a quarter of what it widens at the least: a flatter one is hardly rolled, and nothing runs down it", "a greater height")
	}
	switch v.p.Kind {
	case parts.TransitionPiece:
		t := v.p.Transition
		rises(t.Height.Mm, math.Hypot(t.Width.Mm, t.Depth.Mm)/2-t.Diameter.Mm/2)
	case parts.Cone:
		f := v.p.Frustum
		rises(f.Height.Mm, (f.Large.Mm-f.Small.Mm)/2+math.Abs(f.Offset.Mm))
		v.noMore("", f.Pos, f.Overlap.Mm, mostLap*f.Thickness.Mm, "the seam laps over far", "a lap is as wide as its weld or rivets ask, ten thicknesses or so", "a shorter lap")
	case parts.FlightPart:
		f := v.p.Flight
		const far = "the pitch of the flight is far from its outside"
		const rule = "a flight rises by a third of its outside to one and a half in a turn: less is hardly formed, more throws its load"
		v.noLess("", f.Pos, f.Length.Mm, leastTurn*f.Pitch.Mm, "the flight is a fraction of a turn", "a flight moves its load by turns", "a longer flight")
		v.noLess("", f.Pos, f.Pitch.Mm, leastPitch*f.Outside.Mm, far, rule, "another pitch")
		v.noMore("", f.Pos, f.Pitch.Mm, mostPitch*f.Outside.Mm, far, rule, "another pitch")
	}
}
