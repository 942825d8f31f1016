package part

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// How ends are rounded (common practice, no source): a form tool larger than this
// chatters on a small lathe; larger rounds are turned in so many steps and filed; a
// set of radius gauges ends here.
const (
	formToolMm    = 3.0
	roundSteps    = 6
	radiusGaugeMm = 25.0
	arcMm         = 0.01 // the drawn chords lie this near to the arc
)

// roundRoom checks that a quarter of a circle has room on its step: that an edge
// stands there, and that it goes neither past the axis nor past the next step.
func (s *shaper) roundRoom(c *chamfer) {
	if !c.Radius.Set() || c.Sphere {
		return
	}
	most, than := c.step.Size.NominalMm/2, "half of the diameter"
	if c.step.Inside {
		most = math.Inf(1)
	}
	next, after := s.neighbours(c.step)
	if c.back {
		next = after
	}
	switch {
	case next != nil:
		most = math.Min(most, c.step.side()*(c.step.Size.NominalMm-next.Size.NominalMm)/2)
		than = "the step to " + words.Spaced(next.Name)
	case c.back && s.blind(c.step):
		most = 0 // the floor of a blind bore
	}
	switch {
	case most <= geom.CloseMm:
		s.fault(c.Edge.Pos, "no edge stands free at "+c.Edge.Value, "an edge beside a smaller outside or a larger bore")
	case c.Radius.Mm > most+geom.CloseMm:
		s.fault(c.Radius.Pos, "the radius "+c.Radius.Text+" is larger than "+than, "at most "+s.W.Size(most))
	}
}

// onArcMm is the radius on the arc of a step of some radius at a distance from the
// face, by the chord of a circle: half of it at a sagitta z is √(2Rz − z²).
func onArcMm(c *parts.Chamfer, radius, zMm float64, inside bool) float64 {
	half := func(z float64) float64 { return math.Sqrt(math.Max(0, z*(2*c.Radius.Mm-z))) }
	drop := half(c.Size.Mm) - half(zMm)
	if inside {
		drop = -drop
	}
	return radius - drop
}

// arc is a rounded edge of a step of some radius: how far from the face and the
// radius there, in chords no further than arcMm off.
func arc(c *parts.Chamfer, radius float64, inside bool) []plan.XY {
	end := math.Acos(1 - c.Size.Mm/c.Radius.Mm) // how much of a circle it takes, from the face to the step
	n := max(6, int(math.Ceil(end/2/math.Acos(max(0, 1-arcMm/c.Radius.Mm)))))
	var out []plan.XY
	for i := range n + 1 {
		z := c.Radius.Mm * (1 - math.Cos(end*float64(i)/float64(n)))
		out = append(out, plan.XY{XMm: geom.Clean(z), YMm: geom.Clean(onArcMm(c, radius, z, inside))})
	}
	return out
}

// dimension labels the middle of the arc with R or SR (ISO 129-1).
func (c *chamfer) dimension(w words.Writer) plan.Dimension {
	mid := arc(&c.Chamfer, c.step.RadiusMm(), c.step.Inside)
	d := plan.Dimension{
		Kind: plan.DiameterDim, FromMm: c.step.FromMm, ToMm: geom.Clean(c.step.FromMm + c.Size.Mm), RadiusMm: mid[len(mid)/2].YMm,
		Inside: c.step.Inside, Text: c.sizeText(w),
	}
	if c.back {
		d.FromMm, d.ToMm = geom.Clean(c.step.ToMm-c.Size.Mm), c.step.ToMm
	}
	return d
}

// sizeText is how a drawing gives it: "2 × 45°", "R2", "SR20" (ISO 129-1).
func (c *chamfer) sizeText(w words.Writer) string {
	switch {
	case c.Sphere:
		return "SR" + w.Size(c.Radius.Mm)
	case c.Radius.Set():
		return "R" + w.Size(c.Radius.Mm)
	}
	return w.Size(c.Size.Mm) + " × " + words.Trim(c.Angle.Deg, 1) + "°"
}

// tool is what the lathe bevels or rounds it with, beside the turning tool.
func (c *chamfer) tool() string {
	if c.Radius.Set() {
		return words.When(c.Radius.Mm <= formToolMm+geom.CloseMm, "form tool")
	}
	return "chamfer tool"
}

// roundLine rounds it: small with a form tool, else in steps that touch the arc
// with their corners, the deepest first, and a file.
func (c *chamfer) roundLine(w words.Writer) string {
	line := "Round " + words.Spaced(c.Edge.Value) + " " + c.sizeText(w)
	if c.Radius.Mm <= formToolMm+geom.CloseMm {
		return line + " with a form tool, to the " + c.gauge() + "."
	}
	unit, decimals := w.Units.Mm(), parts.By(w.Units, 2, 3)
	var cuts []string
	for i := roundSteps - 1; i > 0; i-- {
		z := words.Round(c.Size.Mm*float64(i)/roundSteps/unit, decimals) * unit
		cuts = append(cuts, w.Read(z)+" to Ø"+w.Read(2*onArcMm(&c.Chamfer, c.step.RadiusMm(), z, c.step.Inside)))
	}
	way := words.Either(c.step.Inside, "bor", "turn")
	return line + ", " + way + "ed in steps from the face: " + strings.Join(cuts, ", ") + "; then blend them with a file, its handle on and sleeves clear of the chuck, to the " + c.gauge() + "."
}

// brokenBy is what an edge has that is not broken by hand.
func (b *bench) brokenBy() string {
	return words.Either(slices.ContainsFunc(b.bevels, func(c *chamfer) bool { return c.Radius.Set() }), "chamfer or radius", "chamfer")
}

// BrokenMm is what is broken off an edge without a chamfer at the most. Common practice, no source.
const BrokenMm = 0.5

// brokenText is what is broken off them: of a sheet or a wall no thicker than two of BrokenMm as little as off a narrow land.
func (b *bench) brokenText() string {
	return words.Either(geom.Over(b.WallMm(b.LengthMm()/2), leastLandMm), b.W.NearBetween(0.3, BrokenMm), b.W.Near(hardlyMm)+" at the most")
}

// What is broken off the edges of a land which has no room for two of BrokenMm. Common practice,
// no source.
const (
	hardlyMm    = 0.1
	leastLandMm = 2 * BrokenMm
)

// narrowLands names the grooves whose edges are not broken as the others are: the ring bears on them, or a land beside
// them is too narrow.
func (b *bench) narrowLands() (out []string) {
	for g := range seq.Refs(b.Grooves) {
		ring, land := "", ""
		if g.In.Kind == parts.RingGroove {
			ring = "the ring bears on them"
		}
		if mm := b.landMm(g); mm > 0 && mm < leastLandMm-geom.CloseMm {
			land = "the land beside it is " + b.W.Size(math.Floor(100*mm+1e-6)/100) + " wide" + words.When(g.step == nil, " at the limits")
		}
		if why := words.Join(", and ", ring, land); why != "" {
			out = append(out, "Those of "+words.Spaced(g.Row.Name)+" "+words.Either(ring != "", "the burr alone", "only "+b.W.Near(hardlyMm))+": "+why+".")
		}
	}
	return out
}

// landMm is the narrowest land beside a groove: along the axis to the end of its step, or in
// a face, at the limits of both, to the next round that ends there.
func (b *bench) landMm(g *Groove) float64 {
	if g.step != nil {
		return math.Min(g.Row.FromMm-g.step.FromMm, g.step.ToMm-g.Row.ToMm)
	}
	face, least, ring := parts.At(g.Row.Face, g.Row.FromMm, g.Row.ToMm), math.Inf(1), g.wallsMm()
	for s := range seq.Refs(b.Steps) {
		if d := 2 * s.RadiusMm(); math.Abs(s.FromMm-face) < geom.CloseMm || math.Abs(s.ToMm-face) < geom.CloseMm {
			least = math.Min(least, math.Max(ring.Min-d-math.Max(0, s.Size.MaxMm-s.Size.NominalMm), d-math.Max(0, s.Size.NominalMm-s.Size.MinMm)-ring.Max)/2)
		}
	}
	return least
}

// gauge is what a radius is held against.
func (c *chamfer) gauge() string {
	return words.Either(c.Radius.Mm > radiusGaugeMm, "sheet template cut to the radius", "radius gauge")
}
