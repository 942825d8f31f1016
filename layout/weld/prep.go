package weld

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
)

// Shape is the shape of a weld or its groove.
type Shape int

// The shapes this package prepares.
const (
	Square      Shape = iota // edges square, a gap
	SingleV                  // both edges bevelled from one side
	SingleY                  // single V with a broad root face
	SingleBevel              // one edge bevelled from one side
	DoubleV                  // both edges bevelled from both sides
	DoubleBevel              // one edge bevelled from both sides
	Fillet                   // no preparation
)

// Symbol returns the name of the elementary symbol in ISO 2553:2019 Table 1, or
// of the combination in its Table 2 (from memory).
func (s Shape) Symbol() string {
	return [...]string{Square: "square butt weld", SingleV: "single-V butt weld", SingleY: "single-V butt weld with broad root face",
		SingleBevel: "single-bevel butt weld", DoubleV: "double-V butt weld", DoubleBevel: "double-bevel butt weld", Fillet: "fillet weld"}[s]
}

// Choice is a range a standard allows and the value taken from it.
type Choice struct {
	Min, Use, Max float64
}

// Stepped takes the multiple of a step that is nearest to the value to use, where one
// lies in the range: a gap that a wire or strip of the shop sets.
func (c Choice) Stepped(step float64) Choice {
	if v := math.Round(c.Use/step) * step; v >= c.Min-1e-9 && v <= c.Max+1e-9 {
		c.Use = v
	}
	return c
}

// Prep is an edge preparation.
type Prep struct {
	Shape      Shape
	AngleDeg   Choice // included angle of a V or Y; bevel angle of one edge for bevels; zero for square and fillet
	GapMm      Choice // root gap after tacking, mm
	RootFaceMm Choice // unbevelled land, mm; zero for square and fillet
	Source     string
	Note       string // what to do besides, or empty
}

const iso9692 = "ISO 9692-1 (from memory)"

// Edges says what may be bevelled.
type Edges int

// The edges.
const (
	BothEdges Edges = iota // two plates or tube ends: V
	OneEdge                // a branch, or a tube on a flange: bevel
)

// Sides says from where the joint can be welded.
type Sides int

// The sides.
const (
	OneSide Sides = iota
	TwoSides
)

// maxPrepMm is the thickest butt joint prepared here: beyond it a U or narrow
// groove saves much filler and wants a written procedure.
const maxPrepMm = 40.0

// ButtPrep returns the preparation for a full-penetration butt joint of tMm (the
// thinner part, mm). Ranges are those of ISO 9692-1:2013 Tables 1 and 2 (from
// memory); the value to use inside a range is common practice for stick and MAG.
// It errs if tMm is not from above 0 to 40 mm.
func ButtPrep(tMm float64, e Edges, s Sides) (Prep, error) {
	if !(tMm > 0 && tMm <= maxPrepMm) {
		return Prep{}, lookup.Refuse("weld: no butt preparation for %v: thickness must be above 0 and at most %v", lookup.Mm(tMm), lookup.Mm(maxPrepMm))
	}
	if e != BothEdges && e != OneEdge || s != OneSide && s != TwoSides {
		return Prep{}, fmt.Errorf("weld: unknown edges %d or sides %d", int(e), int(s))
	}
	switch {
	case s == OneSide && tMm <= 4:
		return Prep{Shape: Square, GapMm: Choice{tMm / 2, tMm, tMm}, Source: iso9692 + ", gap about the thickness"}, nil
	case s == TwoSides && tMm <= 8:
		return Prep{Shape: Square, GapMm: Choice{0, tMm / 2, tMm / 2}, Source: iso9692 + ", both sides, gap about half the thickness", Note: "gouge or grind the root before the second side"}, nil
	case e == BothEdges && tMm <= 10:
		return Prep{Shape: SingleV, AngleDeg: Choice{40, 60, 60}, GapMm: Choice{0, 2, 4}, RootFaceMm: Choice{0, 1.5, 2}, Source: iso9692, Note: backRun(s)}, nil
	case e == BothEdges && s == OneSide:
		return Prep{Shape: SingleY, AngleDeg: Choice{60, 60, 60}, GapMm: Choice{1, 2.5, 4}, RootFaceMm: Choice{2, 2, 4}, Source: iso9692}, nil
	case e == BothEdges:
		return Prep{
			Shape: DoubleV, AngleDeg: Choice{60, 60, 60}, GapMm: Choice{1, 2, 3}, RootFaceMm: Choice{0, 2, 2}, Source: iso9692 + ", both sides",
			Note: "turn the work after each run, so that it stays flat",
		}, nil
	case tMm <= 10:
		return Prep{Shape: SingleBevel, AngleDeg: Choice{35, 45, 60}, GapMm: Choice{2, 2.5, 4}, RootFaceMm: Choice{1, 1.5, 2}, Source: iso9692, Note: backRun(s)}, nil
	case s == OneSide:
		return Prep{
			Shape: SingleBevel, AngleDeg: Choice{35, 45, 60}, GapMm: Choice{2, 3, 4}, RootFaceMm: Choice{1, 1.5, 2},
			Source: "common practice: thicker than the one-sided bevels of ISO 9692-1", Note: "weld from both sides if the back can be reached",
		}, nil
	}
	return Prep{
		Shape: DoubleBevel, AngleDeg: Choice{35, 45, 60}, GapMm: Choice{1, 2, 4}, RootFaceMm: Choice{0, 2, 2}, Source: iso9692 + ", both sides",
		Note: "change sides after each run, so that it stays square",
	}, nil
}

func backRun(s Sides) string {
	if s == TwoSides {
		return "gouge or grind the root and put a back run"
	}
	return ""
}

// capArea is the area of a cap over its mouth and height: a parabola.
const capArea = 2.0 / 3

// CapMm is the cap over a groove: a tenth of the thickness, 1 to 3 mm (common
// practice, no source).
func CapMm(thickMm float64) float64 { return math.Min(3, math.Max(1, thickMm/10)) }

// GrooveArea returns the cross-section in mm2 to fill in a butt joint of tMm with
// the chosen values of p, and a cap of capMm (mm, excess height, 0 for flush) on
// each welded side, taken as a parabola over the groove's mouth. It errs for a
// fillet (see FilletArea), a root face not under the thickness, or values not
// finite or negative.
func (p Prep) GrooveArea(tMm, capMm float64) (float64, error) {
	b, c, deg := p.GapMm.Use, p.RootFaceMm.Use, p.AngleDeg.Use
	if !positive(tMm) || !notNegative(capMm) || !notNegative(b) || !notNegative(c) || !(deg >= 0 && deg < 90) {
		return 0, fmt.Errorf("weld: cannot fill a groove of thickness %v, cap %v, gap %v, root face %v mm, angle %v degrees", tMm, capMm, b, c, deg)
	}
	if c >= tMm {
		return 0, lookup.Refuse("weld: root face %v leaves no groove in %v", lookup.Mm(c), lookup.Mm(tMm))
	}
	h := tMm - c // depth of bevel, all sides together
	flank := 0.0 // width of mouth beyond the gap, over depth
	capSides := 1.0
	switch p.Shape {
	case Square:
		h = 0
	case SingleV, SingleY:
		flank = 2 * math.Tan(deg/2*math.Pi/180)
	case SingleBevel:
		flank = math.Tan(deg * math.Pi / 180)
	case DoubleV:
		flank, h, capSides = 2*math.Tan(deg/2*math.Pi/180), h/2, 2
	case DoubleBevel:
		flank, h, capSides = math.Tan(deg*math.Pi/180), h/2, 2
	default:
		return 0, fmt.Errorf("weld: no groove area for a %s", p.Shape.Symbol())
	}
	mouth := b + flank*h
	return b*tMm + capSides*(flank*h*h/2+capArea*mouth*capMm), nil
}

// FilletArea returns the cross-section in mm2 of an equal-leg fillet of leg legMm:
// z^2/2, with a tenth more for the convex face welds have (common practice) if
// convex. 0 if the leg is not positive and finite.
func FilletArea(legMm float64, convex bool) float64 {
	a := legMm * legMm / 2
	if convex {
		a *= 1.1
	}
	if !positive(legMm) || !positive(a) {
		return 0
	}
	return a
}

// ChamferArea returns the cross-section in mm2 of the groove that a chamfer makes
// against a square part: depthMm along that part, angleDeg between them, so
// depth^2 tan(angle)/2. For a flange chamfered for welding on a tube, depthMm is
// along the tube. It errs unless the depth is positive and the angle from 30 to
// 60 degrees.
func ChamferArea(depthMm, angleDeg float64) (float64, error) {
	area := depthMm * depthMm * math.Tan(angleDeg*math.Pi/180) / 2
	if !positive(depthMm) || !(angleDeg >= 30 && angleDeg <= 60) || !positive(area) {
		return 0, lookup.Refuse("weld: chamfer of %v at %v degrees: want a positive depth and 30 to 60 degrees", lookup.Mm(depthMm), angleDeg)
	}
	return area, nil
}

// ChamferThroat returns the throat in mm to count on in a groove as in
// ChamferArea, welded flush from one side: the depth when the angle is 60 degrees
// or the process is a gas-shielded or cored wire in the flat or horizontal
// position, else 3 mm less, for the root is not reached (AWS D1.1 partial
// penetration bevels, 45 to 60 degrees, from memory). It errs as ChamferArea, for an angle
// below 45 degrees, for an unknown process, and if nothing is left.
func ChamferThroat(depthMm, angleDeg float64, p Process, flat bool) (float64, error) {
	if _, err := ChamferArea(depthMm, angleDeg); err != nil {
		return 0, err
	}
	if angleDeg < 45 {
		return 0, fmt.Errorf("weld: no throat known for a groove of %v degrees: want 45 to 60", angleDeg)
	}
	if _, ok := laidBy[p]; !ok {
		return 0, fmt.Errorf("weld: unknown process %d", int(p))
	}
	wire := p == MAG || p == MIG || p == FluxCored || p == MetalCored || p == SelfShielded
	if angleDeg == 60 || wire && flat {
		return depthMm, nil
	}
	const lost = 3.0
	if depthMm <= lost {
		return 0, lookup.Refuse("weld: chamfer of %v: the root's %v cannot be counted, nothing is left", lookup.Mm(depthMm), lookup.Mm(lost))
	}
	return depthMm - lost, nil
}

// Pressed is the groove of a flange or ring that is pressed on a round and welded
// to it: the chamfer in its bore against the round, without a gap and without a
// root face of its own, for the rest of the bore touches.
type Pressed struct {
	Prep
	AreaMm2  float64 // cross-section to fill, cap included, mm2
	ThroatMm float64 // to count on; 0 where no rule gives one (under 45 degrees, or nothing left)
}

// PressedGroove returns the groove of a chamfer depthMm deep along the round and
// angleDeg from it, with a cap of capMm over its mouth, welded by p; flat tells
// that it lies flat or horizontal. It errs as ChamferArea, for a cap below zero and
// an unknown process.
func PressedGroove(depthMm, angleDeg, capMm float64, p Process, flat bool) (Pressed, error) {
	area, err := ChamferArea(depthMm, angleDeg)
	if err != nil {
		return Pressed{}, err
	}
	if _, ok := laidBy[p]; !ok || !notNegative(capMm) {
		return Pressed{}, fmt.Errorf("weld: unknown process %d or cap %v mm", int(p), capMm)
	}
	mouth := depthMm * math.Tan(angleDeg*math.Pi/180)
	g := Pressed{
		Prep:    Prep{Shape: SingleBevel, AngleDeg: Choice{45, angleDeg, 60}, Source: "bevel against the round without a gap; angles of AWS D1.1 partial penetration bevels (from memory)"},
		AreaMm2: area + capArea*mouth*capMm,
	}
	if throat, err := ChamferThroat(depthMm, angleDeg, p, flat); err == nil {
		g.ThroatMm = throat
	}
	return g, nil
}

// Designation returns the main dimensions written before and behind a fillet's
// symbol as ISO 2553 has it: "a4" or "z6", and for intermittent welds the count,
// length and gap, "a4  3 x 50 (100)". The symbol itself is left to the drawing.
// legs true writes z with the leg, else a with the throat. count 0 is a continuous
// weld. It errs for sizes that are not positive and finite or a negative count.
func Designation(sizeMm float64, legs bool, count int, lengthMm, gapMm float64) (string, error) {
	if !positive(sizeMm) || count < 0 || count > 0 && (!positive(lengthMm) || !positive(gapMm)) {
		return "", fmt.Errorf("weld: designation needs positive sizes, has %v mm, %d x %v (%v) mm", sizeMm, count, lengthMm, gapMm)
	}
	letter := "a"
	if legs {
		letter = "z"
	}
	text := letter + trim(sizeMm)
	if count > 0 {
		text += fmt.Sprintf("  %d x %s (%s)", count, trim(lengthMm), trim(gapMm))
	}
	return text, nil
}

// trim writes a size with at most one decimal.
func trim(x float64) string { return fmt.Sprintf("%g", math.Round(x*10)/10) }
