// Package parts is the model of a job: its parts, how they meet, what the shop
// has, and what each of them answers. It knows nothing of files: package read
// makes it from YAML, complete and checked. Lengths are in millimetres, angles
// in degrees, forces in newton; what was written has its place, a Pos, and an
// Error says at such a place what is wrong.
package parts

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Pos is a place in an input file. Line and Column count from 1; a column
// counts characters, not bytes. File is as shown to the user: relative to the
// job file's folder.
type Pos struct {
	File         string
	Line, Column int
}

// Length is a length in millimetres, with the text it was written as.
type Length struct {
	Mm   float64
	Text string
	Pos  Pos
}

// Set tells whether the length was given in the input.
func (l Length) Set() bool { return l.Pos.Line > 0 }

// Angle is an angle in degrees.
type Angle struct {
	Deg float64
	Pos Pos
}

// Number is a plain number with its place: a count, a speed in rev/min.
type Number struct {
	Value float64
	Pos   Pos
}

// Text is a string with its place.
type Text struct {
	Value string
	Pos   Pos
}

// Units is the unit of bare numbers in a file and of printed sizes.
type Units string

// The units a job can be in.
const (
	Millimetres Units = "mm"
	Inches      Units = "in"
)

// By is one of two values: what holds in millimetres, or what holds in inches.
func By[T any](units Units, mm, inch T) T {
	if units == Inches {
		return inch
	}
	return mm
}

// Mm is one of the unit in millimetres.
func (u Units) Mm() float64 { return By(u, 1, geom.MmPerInch) }

// Paper is a sheet size, portrait or as written: WidthMm × HeightMm.
type Paper struct {
	Name              string // A4, A3, Letter, Tabloid, or custom
	WidthMm, HeightMm float64
}

// Job is a checked job: every part loaded, every reference resolvable.
type Job struct {
	File      string // base name of the job file
	Name      Text
	Revision  Text
	Date      Text // YYYY-MM-DD, or empty
	DrawnBy   Text
	CheckedBy Text
	Units     Units
	Paper     Paper
	Tools     bool // the list of tools to make is wanted
	Tolerance Text // ISO 2768-1 class f, m, c or v; empty if none is named
	Shop      Shop
	Notes     []Text
	Parts     []*Part
	Joints    []*Joint            // how the parts meet, as written
	Loose     []Loose             // parts that no joint fastens
	FrontUp   bool                // the front of the first part is up where the machine stands, else its TOP
	Accept    []Accept            // findings of the review that are taken as they are
	FirstRun  *FirstRun           // nil if the job says nothing of it
	Upkeep    *Upkeep             // the same
	Motor     *Motor              // the same
	Lines     map[string][]string // lines of every file read, for excerpts
}

// Shop is what the workshop has. Zero values mean "not said".
type Shop struct {
	PressN      Number // force in newton
	SwingMm     Length // lathe swing over the bed
	BetweenMm   Length // lathe distance between centres
	LatheRPM    []Number
	DrillRPM    []Number
	Drills      Length // largest drill held
	Bushes      []Bush // drill bushes at hand
	PaperThick  Length // thickness of the printing paper, 0.1 mm if unset
	CarbideTool bool   // lathe tools are carbide; HSS otherwise
}

// Bush is a size of drill bush: the drill it guides, its outside, and the limits of the
// hole that it is pressed into, unset for H7.
type Bush struct {
	Bore, Outside Length
	Hole          Fit
}

// Kind is a kind of part. It supplies defaults and checks.
type Kind string

// The kinds of part.
const (
	Flange          Kind = "flange"
	Ring            Kind = "ring"
	Plate           Kind = "plate"
	Tube            Kind = "tube"
	BearingHousing  Kind = "bearing-housing"
	BarrelEnd       Kind = "barrel-end"
	Shaft           Kind = "shaft"
	TurnedPart      Kind = "turned" // any turned part
	Cone            Kind = "cone"
	TransitionPiece Kind = "transition" // square to round
	Folded          Kind = "folded"     // a panel, guard, box or bracket of sheet
	FlightPart      Kind = "flight"     // auger flights of sheet
	BarPart         Kind = "bar"        // of a frame: tube, angle, channel or flat
)

// Part is one part drawing. Exactly one of Outline, Profile, Frustum,
// Transition, Flight and Bar is set: a flat part cut from plate (folded, with
// Bends), a turned part, a rolled cone, a square-to-round, auger flights, or a bar.
type Part struct {
	File       string
	Pos        Pos
	Name       Text // the name in references: letters, digits and hyphens
	Title      Text // for people; Name with spaces if not given
	Kind       Kind
	For        Use // as the file says, or its title
	Quantity   int // 1 to 10 000
	Material   Text
	Top        Text // how TOP is marked on the part: scribe, punch, notch, paint, keyway; empty if not said
	Stock      Stock
	Outline    *Outline
	Bends      *Bends // folded part: its outline is the base, over the outside of the flanges
	Thickness  Length // flat part: finished plate thickness
	Bore       *Bore  // flat part: centre bore
	Profile    *Profile
	Rolled     *Formed // of a tube that is closed from sheet; nil of one that is bought as tube
	Frustum    *Frustum
	Transition *Transition
	Flight     *Flight
	Bar        *Bar
	Ends       []TubeEnd // saddles of a tube, at most one at each end
	Chamfers   []Chamfer
	Holes      []HoleGroup
	Slots      []FaceSlot
	Radials    []Radial
	Keyways    []Keyway
	Grooves    []Groove
	Flats      []Flats
	Centres    *Centres // nil if the drawing gives none
	Clamp      *Clamp   // nil for what is not split
	Require    []Requirement
	Notes      []Text
}

// RequirementKind names a tolerance of form, direction or place.
type RequirementKind string

// The kinds of requirement.
const (
	Flatness    RequirementKind = "flatness"
	Squareness  RequirementKind = "squareness" // perpendicularity in ISO 1101
	Parallelism RequirementKind = "parallelism"
	RunOut      RequirementKind = "run-out" // circular
	Coaxiality  RequirementKind = "coaxiality"
	EqualLength RequirementKind = "equal" // of all copies of the part
)

// RequirementKinds lists them in the order of the drawing.
var RequirementKinds = []RequirementKind{Flatness, Squareness, Parallelism, RunOut, Coaxiality, EqualLength}

// Alone tells whether a requirement has no datum.
func (k RequirementKind) Alone() bool { return k == Flatness || k == EqualLength }

// Requirement is a tolerance of a feature, and of what it is measured from.
// Features are front, back, length, and the names of steps, bore and outline.
type Requirement struct {
	Pos    Pos
	Kind   RequirementKind
	Within Length
	Of, To Text
}

// Stock is what the part is made from.
type Stock struct {
	Pos    Pos
	Form   string // plate, sheet, round, tube, square, flat, casting, bought; empty if not said
	Size   Length // plate thickness, round or square size, tube outside
	Named  Text   // of a casting that is given by its name in place of a size; what a bought part is ordered by
	Second Length // tube wall, flat thickness
	Pilot  Length // the bore that a bought part comes with, if it is opened here
	Length Length
	Cut    string // laser, plasma, waterjet, flame, saw, none
}

// ByArea tells whether it is plate or sheet, which is bought by its area.
func (s Stock) ByArea() bool { return s.Form == "plate" || s.Form == "sheet" }

// Bought tells whether it is an article that comes half finished, such as a sprocket with its teeth.
func (s Stock) Bought() bool { return s.Form == "bought" }

// OutlineShape names an outline.
type OutlineShape string

// The outline shapes.
const (
	CircleOutline    OutlineShape = "circle"
	SquareOutline    OutlineShape = "square"
	RectangleOutline OutlineShape = "rectangle"
	PolygonOutline   OutlineShape = "polygon" // regular, across flats, or points
	SlotOutline      OutlineShape = "slot"    // obround
	PathOutline      OutlineShape = "path"    // SVG path data, mm, y up
)

// Outline is the outside contour of a flat part, centred on the origin unless
// it is given by points or a path. Seen on the front face, y up.
type Outline struct {
	Pos         Pos
	Shape       OutlineShape
	Width       Length // circle: diameter; square: side; rectangle, slot: width; polygon: across flats
	Height      Length // rectangle, slot
	Corner      Length // corner radius of square and rectangle
	Sides       int    // regular polygon, 3 to 64
	First       Angle  // regular polygon: clock angle of the first corner
	Points      []Point
	Path        Text
	Size        Size // circle only: the diameter with its fit
	LeaveOnPart Length
}

// Point is a pair of lengths, x right and y up.
type Point struct {
	X, Y Length
	Pos  Pos
}

// Size is a diameter (or width) with what limits it.
type Size struct {
	Nominal Length
	Fit     Fit
	Thread  Text // designation, for a threaded step; then Fit is empty
}

// Fit says how a size is limited. At most one of the fields is set.
type Fit struct {
	Pos        Pos
	Class      Text     // ISO 286 class such as H7 or p6
	Measured   []Length // how much smaller an outside is than the bore it goes into as measured, a bore larger than its spigot: least and most
	LightPress Ref      // bore 0.01 to 0.03 mm under the measured outside of another feature
	Limits     []Length // lower and upper size
	PlusMinus  Length   // symmetric tolerance
}

// Ref points at a feature of a part, as "part.feature". A flat part has the
// features outline and bore; a turned part those of its steps' names.
type Ref struct {
	Part, Feature string
	Pos           Pos
}

// Set tells whether the reference was given.
func (r Ref) Set() bool { return r.Part != "" }

// Side names an edge of the base of a folded part, seen on its front face.
type Side string

// The sides, clockwise from TOP.
const (
	TopSide    Side = "top"
	RightSide  Side = "right"
	BottomSide Side = "bottom"
	LeftSide   Side = "left"
)

// Base is the side of the base that a flange hangs on, and how many flanges lie between:
// "top-2" is on the free edge of the one at the top.
func (s Side) Base() (side Side, nth int) {
	base, n, ok := Numbered(string(s))
	if !ok {
		return s, 0
	}
	return Side(base), n - 1
}

// Bends are the flanges of a folded part and how all of them are bent.
type Bends struct {
	Pos     Pos
	Radius  Length // inside
	K       Number // neutral line from the inside in thicknesses; unset takes DIN 6935
	Gap     Length // between two flanges at a corner
	Mitred  Pos    // of corners: mitred; unset where flanges that are turned in are cut back square
	Die     Length // opening of the die; unset takes the usual one of the thickness
	Punch   Length // thickness of the punch where a flange may touch it; unset if not known
	Flanges []Flap // at most one on each side and each free edge, those further out later
}

// Flap is a flange of a folded part, on its base or on the free edge of another.
type Flap struct {
	Pos    Pos
	Side   Side
	Height Length // along its outside, from the corner to the free edge or the next corner
	Angle  Angle  // the sheet turns through; 90 is square
	Radius Length // inside
	// Left and Right are how far it stays off the ends of its side, seen on
	// the front face with the side at the top.
	Left, Right Length
	Toward      Face // the face of the sheet that comes to lie inside its bend
}

// Bore is the centre bore of a flat part.
type Bore struct {
	Pos  Pos
	Size Size
	// Leave is left on the diameter by the cutter for the lathe; 0 if the
	// cut bore is final.
	Leave     Length
	AfterWeld bool // it is finished after the last weld on the part
	Waits     bool // its size is what it has until the welds; of BeforeWeld alone
}

// Profile is a turned part along its axis: steps from the front face
// (z = 0) to the back. Outside steps cover the whole length. Inside steps
// start at the front face; their sum may be shorter (a blind bore) or equal
// to the length (through).
type Profile struct {
	Pos     Pos
	Outside []Step
	Inside  []Step
	// OneSetting are the steps turned without letting the part go.
	OneSetting []Text
}

// LengthMm is the overall length, the sum of the outside steps.
func (p *Profile) LengthMm() float64 { return lengthMm(p.Outside) }

// InsideMm is how deep the inside steps go from the front face.
func (p *Profile) InsideMm() float64 { return lengthMm(p.Inside) }

func lengthMm(steps []Step) float64 {
	return seq.Sum(steps, func(s Step) float64 { return s.Length.Mm })
}

// Through tells whether the inside steps go through the part.
func (p *Profile) Through() bool { return len(p.Inside) > 0 && !geom.Over(p.LengthMm(), p.InsideMm()) }

// Flat tells whether a part is cut from plate by an outline, bent or not, and Turned whether it has steps.
func (p *Part) Flat() bool   { return p.Outline != nil }
func (p *Part) Turned() bool { return p.Profile != nil }

// AllRound tells whether a part is turned, or a tube, and has nothing on one side of it.
func (p *Part) AllRound() bool {
	return (p.Turned() || p.Kind == Tube) && len(p.Holes)+len(p.Slots)+len(p.Radials)+len(p.Keyways)+len(p.Flats)+len(p.Ends) == 0 && p.Clamp == nil
}

// OfSheet tells whether a kind of part is sheet that is rolled, bent or wound.
func (k Kind) OfSheet() bool {
	return k == Cone || k == TransitionPiece || k == Folded || k == FlightPart
}

// Step is one cylinder of a profile.
type Step struct {
	Pos      Pos
	Name     Text // unique in the part; "outside-1", "inside-2" if not given
	Size     Size
	Length   Length
	Limits   []Length // of the length, the shorter first; empty where the general tolerance holds
	Seat     Text     // what sits here: bearing, seal, tube, ring, ...; free words
	Undercut *Undercut
	Taper    *Taper
	Knurl    *Knurl
	Finish   Text   // surface, such as "Ra 1.6"
	Lip      Face   // of a shaft seal in this bore: where its lip looks; empty if not said
	Hardness Number // HRC, at least; unset if not said
	// AfterWeld: it is finished after the last weld on the part, with what is cut into it.
	AfterWeld bool
}

// Taper makes a step a cone. The step's diameter is that of the large end.
type Taper struct {
	Pos    Pos
	To     Length // the small diameter; unset where Ratio or Angle is given
	Ratio  Number // x of 1:x
	Angle  Angle  // included
	Toward Face   // the end that is small
}

// SmallMm is the small diameter for a large one and a length, all in mm; 0 or
// less where the cone comes to a point before its end.
func (t *Taper) SmallMm(largeMm, lengthMm float64) float64 {
	switch {
	case t.To.Set():
		return t.To.Mm
	case t.Ratio.Pos.Line > 0:
		return largeMm - lengthMm/t.Ratio.Value
	}
	return largeMm - 2*lengthMm*math.Tan(t.Angle.Deg*math.Pi/360)
}

// Knurl is a knurl of DIN 82: its type and pitch in mm.
type Knurl struct {
	Pos     Pos
	Type    string
	PitchMm float64
}

// Centres are the centre holes of a part.
type Centres struct {
	Pos   Pos
	Form  string // A, B or R
	Pilot Length // unset for that of the diameter
	Ends  string // both, front or back
}

// Undercut is a relief groove at a step's inner corner.
type Undercut struct {
	Pos          Pos
	Width, Depth Length  // unset where Named
	Named        string  // ReliefUndercut or ThreadUndercut; empty for one with sizes of its own
	Form         string  // E or F of DIN 509; A to D of DIN 76-1
	Radius, Deep float64 // mm, of DIN 509; 0 for those of the diameter
}

// The standards that undercuts are named by.
const (
	ReliefUndercut = "DIN 509"
	ThreadUndercut = "DIN 76"
)

// Face names a side of a part.
type Face string

// The faces.
const (
	Front Face = "front"
	Back  Face = "back"
)

// Other is the other face.
func (f Face) Other() Face {
	if f == Front {
		return Back
	}
	return Front
}

// At is what holds at a face, of what holds at the front and at the back.
func At[T any](f Face, front, back T) T {
	if f == Back {
		return back
	}
	return front
}

// FromFront is how far a place lies from the front face of a part of a length, given how far it lies from
// this face; and from this face, given the other.
func (f Face) FromFront(mm, lengthMm float64) float64 { return At(f, mm, lengthMm-mm) }

// Outward is the direction along the part's axis that a face looks in, -1 or 1.
func (f Face) Outward() float64 {
	if f == Front {
		return -1
	}
	return 1
}

// Chamfer is a bevel on an edge. Edges of flat parts: bore-front, bore-back,
// outline-front, outline-back. Of turned parts: STEP-front and STEP-back.
// Size is measured along the axis (the depth), Angle from the axis: at 45° the
// diameter changes by twice the size. With Radius set the edge is rounded, or with
// Sphere the whole end of a turned part is; Size and Angle are then those of the
// arc's chord.
type Chamfer struct {
	Edge   Text
	Size   Length
	Angle  Angle
	Radius Length
	Sphere bool
	For    string // weld, lead-in, deburr, or empty
}

// On is what its edge belongs to, and at which end of that.
func (c *Chamfer) On() (feature string, end Face) { return EdgeOf(c.Edge.Value) }

// EdgeOf takes the name of an edge apart. A step may be called "seat-front": its back edge is
// "seat-front-back". What is no edge is all feature.
func EdgeOf(name string) (feature string, end Face) {
	for _, end := range []Face{Front, Back} {
		if feature, is := strings.CutSuffix(name, "-"+string(end)); is {
			return feature, end
		}
	}
	return name, ""
}

// Numbered splits window-2 into window and 2: the second of several equal
// radial features, in clock order from TOP.
func Numbered(feature string) (name string, n int, ok bool) {
	cut := strings.LastIndexByte(feature, '-')
	if cut < 1 {
		return "", 0, false
	}
	n, err := strconv.Atoi(feature[cut+1:])
	return feature[:cut], n, err == nil && n > 0
}

// AcrossMm is how far it comes in from the round that its edge is on.
func (c *Chamfer) AcrossMm() float64 {
	if c.Radius.Set() && !c.Sphere {
		return c.Radius.Mm
	}
	return c.Size.Mm * math.Tan(c.Angle.Deg*math.Pi/180)
}

// Word is what the edge is called: chamfer, radius or crown.
func (c *Chamfer) Word() string {
	switch {
	case c.Sphere:
		return "crown"
	case c.Radius.Set():
		return "radius"
	}
	return "chamfer"
}

// Pattern gives hole centres on a face, looking at that face: clock angles
// from TOP clockwise, x right, y up.
type Pattern struct {
	Pos   Pos
	Shape geom.Pattern
	Count int    // of places, 1 to 1000
	PCD   Length // pitch circle; unset for patterns without one
	// Centre is the middle of the pitch circle, in mm.
	Centre geom.Point
	// Datum is where listed points are measured from: "centre", or an edge
	// pair such as "left-bottom" of the outline's bounding box, as seen on
	// the face. From an edge pair both lengths go inward: from the right
	// edge x to the left, from the top edge y downward.
	Datum string
	// Blame is where in the input each place comes from; none if all come
	// from Pos.
	Blame []Pos
}

// AboutAxis tells whether the places lie on a pitch circle about the part's axis.
func (p Pattern) AboutAxis() bool { return p.PCD.Mm > 0 && p.Centre == geom.Point{} }

// PosOf is the place in the input that put hole i (from 0) where it is.
func (p Pattern) PosOf(i int) Pos {
	if i < len(p.Blame) {
		return p.Blame[i]
	}
	if p.PCD.Set() {
		return p.PCD.Pos
	}
	return p.Pos
}

// HoleMake says what a hole is.
type HoleMake string

// The makes of hole.
const (
	PlainHole     HoleMake = "plain"     // Size.Nominal, perhaps with a fit
	ClearanceHole HoleMake = "clearance" // for Thread, by Series
	TappedHole    HoleMake = "tap"       // for Thread
)

// HoleSize is the size of a hole as written, such as "M10 clearance",
// "M8 tap", "11 mm" or "7/16 in".
type HoleSize struct {
	Pos    Pos
	Make   HoleMake
	Thread string // thread designation
	Series string // fine, medium or coarse; medium if not said
	Size   Size   // plain holes
}

// FaceGroup is what equal holes and equal slots on a face have in common.
type FaceGroup struct {
	Pos     Pos
	Name    Text
	Face    Face
	On      Side    // of a folded part: the flange it is on; of a bar its top or bottom; empty is the base, or Face
	Walls   string  // of a tube bar: one or both; empty is one
	Pattern Pattern // of the centres
	Through bool
	Depth   Length // blind depth (full diameter or full thread); unset if Through
	For     Use    // as the file says, or its name and note
}

// Anchors tells whether anchors to the floor go through what no joint puts bolts through: it goes through
// the part, and is for no other use.
func (g *FaceGroup) Anchors() bool { return g.Through && g.For.free() }

// Side is the side of a bar, or the flange or face, that it is on.
func (g *FaceGroup) Side() Side { return cmp.Or(g.On, Side(g.Face)) }

// HoleGroup is a named set of equal holes on a face.
type HoleGroup struct {
	FaceGroup
	Size        HoleSize
	Counterbore *Counterbore
	Countersink *Countersink
	Note        Text // beside the size: what is fitted, and the note
	Fitted      Text // what is screwed or pressed into each, as ordered but for its thread; at the note where that says it
	ByTable     bool // placed by the co-ordinates of a mill table, not punched; of shop-made tools alone
}

// Anchors is FaceGroup.Anchors of plain or clearance holes, and not of those of pins, which have a fit.
func (g *HoleGroup) Anchors() bool {
	return g.FaceGroup.Anchors() && g.Size.Make != TappedHole && g.Size.Size.Fit.Pos.Line == 0
}

// Counterbore is a flat-bottomed enlargement at the marked face.
type Counterbore struct{ Diameter, Depth Length }

// Countersink is a conical enlargement at the marked face; Angle is the
// included angle.
type Countersink struct {
	Diameter Length
	Angle    Angle
}

// DepthMm is how deep its cone goes, in mm, down to a hole of a diameter.
func (c *Countersink) DepthMm(holeMm float64) float64 {
	return (c.Diameter.Mm - holeMm) / 2 / math.Tan(c.Angle.Deg*math.Pi/360)
}

// FaceSlot is a named set of obround slots on a face. Turn is the clock angle of their long
// axis.
type FaceSlot struct {
	FaceGroup
	Width, Length Length
	Turn          Angle
}

// AsHoles are the slots as holes of their width.
func (s *FaceSlot) AsHoles() HoleGroup {
	return HoleGroup{FaceGroup: s.FaceGroup, Size: HoleSize{Size: Size{Nominal: s.Width}}}
}

// RadialShape names what is cut into a round from outside.
type RadialShape string

// The radial shapes.
const (
	RadialHole   RadialShape = "hole"
	RadialSlot   RadialShape = "slot"
	RadialWindow RadialShape = "window"
)

// Radial is a hole, slot or window on the outside of a turned part, at clock
// angles seen from the front face and an axial distance from a face.
type Radial struct {
	Pos     Pos
	Name    Text
	Clock   []Angle
	Axial   Length // from AxialFrom to the feature's centre
	From    Face
	Shape   RadialShape
	Size    HoleSize // holes
	Around  Length   // slot, window: length round the circumference, an arc at the outside surface
	Along   Length   // slot, window: length along the axis
	Corner  Length   // window corner radius
	Through bool     // into the bore
	Depth   Length
	Note    Text // as of holes
	For     Use  // as of holes
	Fitted  Text // as of holes
}
