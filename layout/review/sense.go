package review

import (
	"math"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
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

// leftToTurn looks at what the cutter leaves for the lathe.
func (v *view) leftToTurn() {
	const rule = "metal left for the lathe is turned away in a few cuts"
	fix := "leave: " + v.mm(1) + " to " + v.mm(3)
	if b := v.p.Bore; b != nil {
		v.atMost("bore", b.Pos, b.Leave.Mm, mostLeaveMm, Finding{What: "far more is left in the bore than is turned", Rule: rule, Fix: fix})
	}
	if o := v.p.Outline; v.p.Flat() {
		v.atMost("outline", o.Pos, o.LeaveOnPart.Mm, mostLeaveMm, Finding{What: "far more is left on the outline than is turned", Rule: rule, Fix: fix})
	}
}

// thickCut looks for plate that its cutter does not go through, that of a ring or a disc that is turned from it too.
func (v *view) thickCut() {
	k, thick := v.p.Stock, v.lengthMm
	switch {
	case v.p.Flat():
	case k.ByArea() && v.p.Turned():
		thick = k.Size.Mm
	default:
		return
	}
	if most := thickest[k.Cut]; most > 0 {
		v.atMost("", k.Pos, thick, most, Finding{What: "the plate is thicker than a " + k.Cut + " cuts", Rule: "a cutter goes through so much", Fix: "another cutter, or another thickness"})
	}
}

// senseOfHoles looks at how deep holes are.
func (v *view) senseOfHoles() {
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.group != nil }) {
		deep, wide := h.span().LengthMm(), 2*h.radiusMm
		if h.drillMm > 0 {
			v.atMost(h.name, h.pos, deep, deepestHole*h.drillMm, Finding{
				What: h.name + " is deeper than a drill of its size goes well", Rule: "a twist drill goes ten diameters deep, twelve with care",
				Fix: "a larger hole, a shorter one, or drill it from both faces",
			})
		}
		if !h.through && h.group.Size.Make == parts.PlainHole && geom.Some(deep) {
			v.atLeast(h.name, h.pos, deep, shallowHole*wide, Finding{
				What: h.name + " is too shallow for anything to hold in it", Numbers: ", wanted at least ",
				Rule: "a pin or a bar goes into its hole by about its diameter", Fix: "a deeper hole",
			})
		}
	}
}

// lowShoulder looks at the shoulder that a shaft seal lies against.
func (v *view) lowShoulder(c *cylinder) {
	if v.seal(c) != nil && slices.ContainsFunc(c.next(), func(o *cylinder) bool { return o.RadiusMm() != c.RadiusMm() }) {
		v.atLeast(c.Name, c.Drawn.Pos, seq.Max(0, c.next(), c.outBy), sealEdgeMm, Finding{
			What: "the shoulder behind the seal in " + c.Name + " is low", Numbers: ", wanted at least ",
			Rule: "a seal lies against a shoulder that it does not slip over", Fix: "a smaller bore behind the seal",
		})
	}
}

// senseOfForm looks at the numbers of a part formed from sheet, or of a flight.
func (v *view) senseOfForm() {
	rises := func(highMm, runMm float64) {
		v.atLeast("", v.p.Name.Pos, highMm, leastRise*runMm, Finding{
			What: "its wall lies nearly flat", Numbers: ", wanted at least ",
			Rule: "a cone or transition rises by a quarter of what it widens at the least: a flatter one is hardly rolled, and nothing runs down it",
			Fix:  "a greater height",
		})
	}
	if f := v.p.Formed(); f != nil && v.p.Kind != parts.TransitionPiece {
		v.atMost("", f.Overlap.Pos, f.Overlap.Mm, mostLap*f.Thickness.Mm,
			Finding{What: "the seam laps over far", Rule: "a lap is as wide as its weld or rivets ask, ten thicknesses or so", Fix: "a shorter lap"})
	}
	switch v.p.Kind {
	case parts.TransitionPiece:
		t := v.p.Transition
		rises(t.Height.Mm, math.Hypot(t.Width.Mm, t.Depth.Mm)/2-t.Diameter.Mm/2)
	case parts.Cone:
		f := v.p.Frustum
		rises(f.Height.Mm, (f.Large.Mm-f.Small.Mm)/2+math.Abs(f.Offset.Mm))
	case parts.FlightPart:
		f := v.p.Flight
		const far = "the pitch of the flight is far from its outside"
		const rule = "a flight rises by a third of its outside to one and a half in a turn: less is hardly formed, more throws its load"
		v.atLeast("", f.Pos, f.Length.Mm, leastTurn*f.Pitch.Mm,
			Finding{What: "the flight is a fraction of a turn", Numbers: ", wanted at least ", Rule: "a flight moves its load by turns", Fix: "a longer flight"})
		v.atLeast("", f.Pos, f.Pitch.Mm, leastPitch*f.Outside.Mm, Finding{What: far, Numbers: ", wanted at least ", Rule: rule, Fix: "another pitch"})
		v.atMost("", f.Pos, f.Pitch.Mm, mostPitch*f.Outside.Mm, Finding{What: far, Rule: rule, Fix: "another pitch"})
	}
}
