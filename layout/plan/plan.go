// Package plan is the read-only data that every sheet, answer and check of the
// review is made from: what package layout worked out of a job. It computes
// nothing. Lengths are millimetres and angles degrees; clock angles are 0 at
// TOP and run clockwise looking at the named face; x is to the right and y up.
package plan

import (
	"slices"

	"centrepop/layout/grooves"
	"centrepop/layout/lookup"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Plan holds every number that any sheet prints. Lengths are millimetres and
// angles degrees; strings that show sizes are already written in the job's
// units.
type Plan struct {
	Job         string       `json:"job"`
	Revision    string       `json:"revision,omitempty"`
	Date        string       `json:"date,omitempty"`
	DrawnBy     string       `json:"drawn_by,omitempty"`
	CheckedBy   string       `json:"checked_by,omitempty"`
	Units       parts.Units  `json:"units"`
	Paper       parts.Paper  `json:"-"`
	Tolerance   string       `json:"general_tolerance,omitempty"` // "ISO 2768-m", or empty
	Notes       []string     `json:"notes,omitempty"`
	Parts       []*PartPlan  `json:"parts"`
	Stock       []StockRow   `json:"stock"`
	Joints      []*JointPlan `json:"joints,omitempty"` // in the order to make them
	Arrangement *Arrangement `json:"-"`                // nil where nobody asked for it
	Faults      []Problem    `json:"faults,omitempty"` // what keeps joints from being worked out: they are missing in Joints
	Bought      []BoughtRow  `json:"bought,omitempty"`
	Cuts        []CutRow     `json:"cuts,omitempty"`
	Bars        []BarStock   `json:"bars,omitempty"`    // what the bars of frames are sawn from
	Tools       []ToolRow    `json:"tools,omitempty"`   // that the workshop makes for itself
	Lifts       []string     `json:"lifts,omitempty"`   // sentences: parts and assemblies over LiftKg, and those over HoistKg
	Dangers     []Danger     `json:"dangers,omitempty"` // of the operations, by machine
	FirstRun    *FirstRun    `json:"first_run,omitempty"`
	Upkeep      *Upkeep      `json:"upkeep,omitempty"`
	Motor       *Motor       `json:"motor,omitempty"`
	// Sources are those of the tables, once for all sheets.
	Sources []SourceTable `json:"sources,omitempty"`
}

// StockRow is a line of the material list on the cover.
type StockRow struct {
	Part     string  `json:"part"`
	Quantity int     `json:"quantity"`
	Material string  `json:"material"`
	Size     string  `json:"size"`
	MassKg   float64 `json:"mass_kg"` // of one finished part, holes subtracted
}

// PartPlan is one part, worked out.
type PartPlan struct {
	Name       string      `json:"part"`
	Title      string      `json:"title"`
	Kind       string      `json:"kind"`
	Quantity   int         `json:"quantity"`
	Material   string      `json:"material"`
	StockText  string      `json:"stock"`
	Top        string      `json:"top,omitempty"`
	MassKg     float64     `json:"mass_kg"`
	Overall    string      `json:"overall"` // outside size in words
	Faces      []*Face     `json:"faces,omitempty"`
	Section    *Section    `json:"section"`
	Dimensions []Dimension `json:"dimensions,omitempty"` // of the section
	Profiles   []FoldView  `json:"folded,omitempty"`     // a folded part cut across, in place of its section
	Bar        *BarPlan    `json:"bar,omitempty"`        // of a bar, which stands on the cut list and has no sheet of its own
	Features   []Feature   `json:"features"`
	Operations []Operation `json:"operations"`
	Checks     []Check     `json:"checks"`
	Ladders    []Ladder    `json:"ladders,omitempty"`
	Radials    []RadialRow `json:"radials,omitempty"`
	Knifed     bool        `json:"-"` // of soft sheet, cut and punched to its template
	Shown      []RadialRow `json:"-"` // Radials as a drawing shows them, with the holes of branches
	Keyways    []KeywayRow `json:"keyways,omitempty"`
	Grooves    []GrooveRow `json:"grooves,omitempty"`
	Flats      []FlatsRow  `json:"flats,omitempty"`
	Centres    []CentreRow `json:"centres,omitempty"`
	Clamp      *ClampRow   `json:"clamp,omitempty"`
	// Developments are the flat patterns at true size: wraps, saddles, blanks.
	Developments []Development `json:"developments,omitempty"`
	Notes        []string      `json:"notes,omitempty"`
	Cautions     []string      `json:"cautions,omitempty"`
	Problems     []Problem     `json:"problems,omitempty"`
}

// XY is a point in millimetres, x right, y up.
type XY = geom.Point

// Face is one face of a part with something to mark on it, as seen by who
// looks at that face: x right, y up, TOP up, origin at the part's origin.
// What was defined on the front and cuts through is mirrored in x on the back.
type Face struct {
	Part    string     `json:"-"`
	Face    parts.Face `json:"face"`
	Outline Contour    `json:"-"`
	Circles []Circle   `json:"circles,omitempty"` // bores, spigots and pitch circles
	Holes   []Hole     `json:"holes"`
	Slots   []Slot     `json:"slots,omitempty"`
	Notches [][]XY     `json:"-"` // keyways that run out at the face, from the round down to the floor and back
	Groups  []Group    `json:"groups"`
	Folds   []Contour  `json:"-"` // fold lines, open
	Hidden  [][]XY     `json:"-"` // edges behind the face, drawn dashed
	MinMm   XY         `json:"-"` // bounding box of the outline
	MaxMm   XY         `json:"-"`
	Datum   string     `json:"datum"`              // the two edges that FromXMm and FromYMm are measured from
	FromX   string     `json:"-"`                  // left or right
	FromY   string     `json:"-"`                  // top or bottom
	DatumAt XY         `json:"-"`                  // where these edges cross
	SetAt   XY         `json:"-"`                  // where the edges cross that a template is set by
	Round   bool       `json:"-"`                  // a circle outside and no datum named: nothing to measure FromXMm and FromYMm from
	NoClock bool       `json:"no_clock,omitempty"` // nothing on the part has a clock: it has no TOP to draw
	// NoTemplate is why no template is printed unless all are asked for; empty
	// where it is the best way to mark the holes.
	NoTemplate string `json:"no_template,omitempty"`
	Mirrored   bool   `json:"mirrored"` // true where the face is the back of a part drawn from the front
	// Carried are the through holes of the other face that this face's template marks
	// as well: mirrored, under their numbers there. Nil where there are none.
	Carried *Face `json:"carried,omitempty"`
	// Shares is the name of a part that is bolted on and whose template of the same
	// face has all of these holes, unmirrored; Serves are the parts that share this one.
	Shares string   `json:"shares,omitempty"`
	Serves []Served `json:"serves,omitempty"`
	// Cuts are the steps along which a template is cut out, so that each piece
	// lies on its own level, from small to large.
	Cuts []FaceCut `json:"cuts,omitempty"`
}

// Served is a part that is punched from the template of another: its name, title and
// number off, and the numbers of its holes.
type Served struct {
	Part     string `json:"part"`
	Title    string `json:"title"`
	Quantity int    `json:"quantity"`
	Holes    string `json:"holes"`
}

// FaceCut is a step of a face about the part's axis. What lies inside it stands
// ProudMm, mm, over what lies outside, or under it where negative; Inside and Outside
// tell whether holes are marked there.
type FaceCut struct {
	DiameterMm float64 `json:"diameter_mm"`
	ProudMm    float64 `json:"proud_mm"`
	Inside     bool    `json:"inside"`
	Outside    bool    `json:"outside"`
}

// Contour is a closed outline in SVG path data, millimetres, y up (not down).
type Contour string

// Circle is a circle on a face other than a hole to mark.
type Circle struct {
	Label      string  `json:"label"`
	DiameterMm float64 `json:"diameter_mm"`
	CentreMm   XY      `json:"centre"`
	HalfMm     XY      `json:"half,omitzero"` // of a slot: from its centre to that of one end
	Pitch      bool    `json:"pitch"`         // a pitch circle, drawn as a chain line
}

// Hole is one hole on a face. N is its number on the template, table,
// operation sheet and inspection record; unique on the face.
type Hole struct {
	N          int     `json:"n"`
	Group      string  `json:"group"`
	XMm        float64 `json:"x_mm"`
	YMm        float64 `json:"y_mm"`
	AngleDeg   float64 `json:"angle_deg"` // clock angle, 0 ≤ a < 360
	RadiusMm   float64 `json:"radius_mm"` // from the origin
	FromXMm    float64 `json:"from_x_mm"` // from the datum edges, always positive inward
	FromYMm    float64 `json:"from_y_mm"`
	DiameterMm float64 `json:"diameter_mm"` // the last drill: before reaming or tapping
}

// Slot is an obround slot on a face; its centre carries number N.
type Slot struct {
	N        int     `json:"n"`
	Group    string  `json:"group"`
	XMm      float64 `json:"x_mm"`
	YMm      float64 `json:"y_mm"`
	WidthMm  float64 `json:"width_mm"`
	LengthMm float64 `json:"length_mm"`
	TurnDeg  float64 `json:"turn_deg"` // clock angle of the long axis
	EndsMm   [2]XY   `json:"ends"`     // centres of the end radii
}

// Group is a hole pattern: its size in words and the distances for setting
// dividers and for checking over pins.
type Group struct {
	Name      string     `json:"name"`
	First     int        `json:"first"` // number of its first hole
	Count     int        `json:"count"`
	SizeText  string     `json:"size"`   // "M10 tap, drill 8.5"
	DepthText string     `json:"depth"`  // "through", "20 deep, drill 26"
	Marked    parts.Face `json:"marked"` // the face it is drawn on
	// PunchedFrom is the face whose template marks it, where that is the other one.
	PunchedFrom parts.Face `json:"punched_from,omitempty"`
	// Placed is what makes it instead of punch marks: ByCutter, or the name of a drill jig.
	Placed     string  `json:"placed,omitempty"`
	ReamedWith string  `json:"reamed_with,omitempty"` // the part whose holes for the same pins are reamed together with these
	PCDMm      float64 `json:"pcd_mm,omitempty"`
	PCDAboutMm XY      `json:"pcd_about,omitzero"` // middle of the pitch circle, as Marked is seen
	DrillMm    float64 `json:"drill_mm"`
	FinishedMm float64 `json:"finished_mm"` // clearance or reamed size; major diameter of a tapped hole
	Thread     string  `json:"thread,omitempty"`
	Chords     []Chord `json:"chords,omitempty"`
	Extra      string  `json:"extra,omitempty"` // counterbore, countersink, note
}

// ByCutter is what places a group that the cutter of the blank makes to its size.
const ByCutter = "cutter"

// Chord is the distance between two holes of a group. Over is measured across
// the far sides of pins in both holes, Between between their near sides; Pin
// diameter is the hole as drilled.
type Chord struct {
	From      int     `json:"from"`
	To        int     `json:"to"`
	Kind      string  `json:"kind"` // neighbours, across
	CentreMm  float64 `json:"centre_mm"`
	OverMm    float64 `json:"over_mm"`
	BetweenMm float64 `json:"between_mm"`
}

// Section is the half section of a part for the pictures, z right from the
// front face (0) to the back, r up from the axis. Flat parts are cut through
// the origin.
type Section struct {
	LengthMm float64      `json:"length_mm"`
	MaxMm    float64      `json:"max_radius_mm"`
	Flat     bool         `json:"flat"`
	Outer    []XY         `json:"outer"` // outside contour, z and r, front to back, chamfers and undercuts included
	Inner    []XY         `json:"inner"` // bore contour, front to back; empty if solid. A blind bore ends on the axis.
	Threads  []ThreadLine `json:"threads,omitempty"`
	OnAxis   []AxisHole   `json:"on_axis,omitempty"`
	Whole    [][]XY       `json:"whole,omitempty"` // closed contours of the metal cut from TOP to 180°, y up from the axis, where it differs above and below
	Up       string       `json:"up,omitempty"`    // what is up in that cut, if not TOP: it goes from there to the other side
	Seen     [][]XY       `json:"seen,omitempty"`  // and the edges seen behind that cut
	Seals    []SealMark   `json:"seals,omitempty"`
}

// SealMark is a shaft seal in its bore: from and to along the axis, its two
// diameters, and whether its lip looks to the back or else to the front.
type SealMark struct {
	FromMm  float64 `json:"from_mm"`
	ToMm    float64 `json:"to_mm"`
	OuterMm float64 `json:"outer_mm"`
	InnerMm float64 `json:"inner_mm"`
	LipBack bool    `json:"lip_back"`
}

// Span is where it lies behind the front face.
func (s *SealMark) Span() geom.Span { return geom.Span{FromMm: s.FromMm, ToMm: s.ToMm} }

// FoldView is a folded part cut across its middle: x along the cut from the
// middle of the base, y towards who looks at its front, 0 on the front.
type FoldView struct {
	Name  string       `json:"name"` // "cut from left to right"
	Metal []Contour    `json:"-"`    // the base and each flange
	Dims  []FoldLength `json:"lengths"`
	Turns []FoldTurn   `json:"turns"`
	MinMm XY           `json:"-"`
	MaxMm XY           `json:"-"`
}

// FoldLength is a length of a folded part: from one point to another, drawn
// beside them on the side that Out points to.
type FoldLength struct {
	FromMm XY     `json:"from"`
	ToMm   XY     `json:"to"`
	Out    XY     `json:"-"` // a direction of length 1
	Text   string `json:"text"`
	Limits string `json:"limits,omitempty"`
}

// FoldTurn is what is written at a bend.
type FoldTurn struct {
	AtMm XY     `json:"at"`
	Text string `json:"text"` // "90° R2"
}

// ThreadLine is a stretch of the section that is threaded: its root lies at RadiusMm from the axis, its
// crest, which the contour shows, at CrestMm.
type ThreadLine struct {
	FromMm, ToMm, RadiusMm, CrestMm float64
	Inside                          bool
}

// AxisHole is a hole drilled on the axis of a turned part: the line of its half from the mouth in, z from the
// front face and r, and its thread, from the mouth to the end of the full thread; nil without one.
type AxisHole struct {
	Line   []XY        `json:"line"`
	Thread *ThreadLine `json:"thread,omitempty"`
}

// Feature is one numbered thing in the picture and in the list beside it.
// Balloon places its leader's end: on the section (z, r) if Face is empty,
// else on that face (x, y).
type Feature struct {
	N       int         `json:"n"`
	Kind    FeatureKind `json:"kind"`
	Name    string      `json:"name"`
	Size    string      `json:"size"`   // nominal and class in words: "Ø90 H7"
	Limits  string      `json:"limits"` // "90.000 – 90.035", or ""
	Within  bool        `json:"-"`      // Size says the limits too
	Note    string      `json:"note,omitempty"`
	Face    parts.Face  `json:"face,omitempty"`
	Balloon XY          `json:"balloon"`
}

// FeatureKind tells one kind of feature from another, whatever it is named.
type FeatureKind string

// The kinds of feature.
const (
	StepFeature      FeatureKind = "step"    // a cylinder of a turned part
	OutlineFeature   FeatureKind = "outline" // the round outside of a flat part
	EdgeFeature      FeatureKind = "edge"    // the outside of a flat part that is not round
	BoreFeature      FeatureKind = "bore"    // of a flat part
	LengthFeature    FeatureKind = "length"
	HeightFeature    FeatureKind = "height"
	OffsetFeature    FeatureKind = "offset" // of the middle of an end from that of the other
	ThicknessFeature FeatureKind = "thickness"
	EndFeature       FeatureKind = "end" // of what is formed from sheet
	SeamFeature      FeatureKind = "seam"
	ChamferFeature   FeatureKind = "chamfer"
	HolesFeature     FeatureKind = "holes"
	SlotsFeature     FeatureKind = "slots"
	RadialFeature    FeatureKind = "radial"
	SaddleFeature    FeatureKind = "saddle"
	// RequirementFeature is a tolerance of form, direction or place.
	RequirementFeature FeatureKind = "requirement"
	KeywayFeature      FeatureKind = "keyway"
	GrooveFeature      FeatureKind = "groove"
	FoldFeature        FeatureKind = "fold"
	FlatsFeature       FeatureKind = "flats"
	CentreFeature      FeatureKind = "centre hole"
	ClampFeature       FeatureKind = "clamp"
)

// Operation is one step at the bench.
type Operation struct {
	N       int      `json:"n"`
	Machine Machine  `json:"machine"`
	Title   string   `json:"title"` // few words
	Do      []string `json:"do"`    // short lines
	Holding string   `json:"holding,omitempty"`
	Tool    string   `json:"tool,omitempty"`
	Speed   string   `json:"speed,omitempty"` // "300 rev/min (25 m/min, Ø26)"
	Limits  []string `json:"limits,omitempty"`
	Gauge   string   `json:"gauge,omitempty"`
	Caution string   `json:"caution,omitempty"` // a few words
	Dangers []string `json:"dangers,omitempty"` // the same in sentences
	Refs    []int    `json:"refs,omitempty"`    // feature numbers
	Bores   bool     `json:"-"`                 // on the mill, in place of the lathe
}

// Machine is where an operation is done.
type Machine string

// The machines of a shop.
const (
	Bench  Machine = "Bench"
	Cutter Machine = "Cutter"
	Drill  Machine = "Drill"
	Grind  Machine = "Grind"
	Lathe  Machine = "Lathe"
	Mill   Machine = "Mill"
	Press  Machine = "Press"
	Roll   Machine = "Roll"
	Saw    Machine = "Saw"
	Weld   Machine = "Weld"
)

// Danger is what operations of one kind of machine warn of, once for all parts.
type Danger struct {
	Machine Machine  `json:"machine"`
	Says    []string `json:"says"`
}

// Check is a line of the inspection record.
type Check struct {
	Ref    int           `json:"ref"` // feature number, 0 if none
	What   string        `json:"what"`
	Wanted string        `json:"wanted"` // size as drawn
	Limits string        `json:"limits"` // the two limits, or a single rule
	MinMm  float64       `json:"min_mm"`
	MaxMm  float64       `json:"max_mm"`
	Gauge  string        `json:"gauge"`
	Source lookup.Source `json:"source,omitzero"`
	Joins  bool          `json:"joins,omitempty"` // it is of what the joint joins, which the sheet names
	// Boxes name what is measured, one box each, of a frame that its corners have in common.
	Boxes []string `json:"boxes,omitempty"`
}

// Ladder reads the bore to turn from the measured counterpart.
type Ladder struct {
	// Rule is what to take off the measured counterpart, to fill in: "− 0.02 (− 0.03 … − 0.01)".
	Rule        string `json:"rule"`
	Feature     string `json:"feature"`
	Counterpart string `json:"counterpart"`
	Note        string `json:"note"`
	Rungs       []Rung `json:"rungs,omitempty"`
}

// Rung is one line of a ladder.
type Rung struct {
	MeasuredMm float64 `json:"measured_mm"`
	BoreMinMm  float64 `json:"bore_min_mm"`
	BoreMaxMm  float64 `json:"bore_max_mm"`
	Measured   string  `json:"measured"` // in the job's units
	Bore       string  `json:"bore"`     // "lo – hi" in the job's units
}

// RadialRow is a hole, slot or window on the outside of a round.
type RadialRow struct {
	N          int     `json:"n"`
	Name       string  `json:"name"`
	Shape      string  `json:"shape"` // hole, slot, window
	ClockDeg   float64 `json:"clock_deg"`
	AxialMm    float64 `json:"axial_mm"` // from the front face to the centre
	Datum      string  `json:"datum"`    // face that the drawing measures it from: front, back
	DatumMm    float64 `json:"datum_mm"` // from that face to the centre
	SizeText   string  `json:"size"`
	DepthText  string  `json:"depth"`
	DiameterMm float64 `json:"diameter_mm"`         // of the hole, or 0
	AroundMm   float64 `json:"around_mm,omitempty"` // arc at the outside surface
	AlongMm    float64 `json:"along_mm,omitempty"`
	CornerMm   float64 `json:"corner_mm,omitempty"`
	DepthMm    float64 `json:"depth_mm"`          // of the metal that it goes into or through, at most
	OutsideMm  float64 `json:"outside_mm"`        // diameter of the surface it starts on
	ArcMm      float64 `json:"arc_from_top_mm"`   // on that surface, clockwise seen from the front
	InFlat     bool    `json:"in_flat,omitempty"` // it is cut in the blank that the part is rolled from
}

// Sides are how wide a radial feature is round the outside and along the axis, and the radius of its corners, mm: of a
// hole its diameter, of a slot half its width.
func (r RadialRow) Sides() (aroundMm, alongMm, cornerMm float64) {
	switch r.Shape {
	case "hole":
		return r.DiameterMm, r.DiameterMm, r.DiameterMm / 2
	case "slot":
		return r.AroundMm, r.AlongMm, min(r.AroundMm, r.AlongMm) / 2
	}
	return r.AroundMm, r.AlongMm, r.CornerMm
}

// KeywayRow is a keyway for a parallel or a Woodruff key, on a shaft or in a bore.
type KeywayRow struct {
	Name       string  `json:"name"`
	In         string  `json:"in"` // the step
	Inside     bool    `json:"inside,omitempty"`
	ClockDeg   float64 `json:"clock_deg"`
	FromMm     float64 `json:"from_mm"` // full depth, from the front face
	ToMm       float64 `json:"to_mm"`
	DiameterMm float64 `json:"diameter_mm"` // of the step
	WidthMm    float64 `json:"width_mm"`
	Width      Range   `json:"-"` // limits of the slot
	HeightMm   float64 `json:"key_height_mm"`
	DepthMm    float64 `json:"depth_mm"`             // from the crown of the round
	DeeperMm   float64 `json:"-"`                    // how much deeper its limits let it be
	RoundEnds  int     `json:"-"`                    // how many round ends its key has, each half its width long, that do not bear
	RunoutMm   float64 `json:"run_out_mm,omitempty"` // of a side-and-face or Woodruff cutter beyond each end
	Woodruff   string  `json:"woodruff,omitempty"`   // size or number of a Woodruff key, whose pocket in a shaft is all run-out
}

// Span is where it has its full depth, from the front face.
func (k *KeywayRow) Span() geom.Span { return geom.Span{FromMm: k.FromMm, ToMm: k.ToMm} }

// Key is where the key lies along the axis, from the front face.
func (k *KeywayRow) Key() geom.Span {
	if k.Woodruff == "" {
		return k.Span()
	}
	return geom.Span{FromMm: k.FromMm - k.RunoutMm, ToMm: k.ToMm + k.RunoutMm}
}

// GrooveRow is a groove in a round or in an end face.
type GrooveRow struct {
	Name       string     `json:"name"`
	Kind       string     `json:"for"` // retaining-ring, o-ring, grease, relief
	In         string     `json:"in"`  // the step, or the face
	Inside     bool       `json:"inside,omitempty"`
	Face       parts.Face `json:"face,omitempty"` // empty in a round
	FromMm     float64    `json:"from_mm"`        // from the front face
	ToMm       float64    `json:"to_mm"`
	DiameterMm float64    `json:"diameter_mm,omitempty"` // of the step
	FloorMm    float64    `json:"floor_mm,omitempty"`    // diameter of the floor
	WidthMm    float64    `json:"width_mm"`
	DepthMm    float64    `json:"depth_mm"`           // on one side; in a face along the axis
	InnerMm    float64    `json:"inner_mm,omitempty"` // diameters of the walls in a face
	OuterMm    float64    `json:"outer_mm,omitempty"`
	EdgeMm     float64    `json:"edge_mm,omitempty"`    // of a retaining ring: least from the groove to an end or another groove
	ClearMm    float64    `json:"clear_mm,omitempty"`   // and the diameter to keep free for its lugs
	AgainstMm  float64    `json:"against_mm,omitempty"` // what an O-ring seals against
	LeadInMm   float64    `json:"lead_in_mm,omitempty"` // length of the chamfer it is pushed over
	ORing      *ORingFit  `json:"o_ring,omitempty"`
}

// Span is where the groove lies along the axis, from the front face.
func (g *GrooveRow) Span() geom.Span { return geom.Span{FromMm: g.FromMm, ToMm: g.ToMm} }

// FlatsRow is a set of equal flats milled on an outside.
type FlatsRow struct {
	Name       string  `json:"name"`
	In         string  `json:"in"` // the step
	Sides      int     `json:"sides"`
	AcrossMm   float64 `json:"across_mm"` // of one flat to the far side of the round
	ClockDeg   float64 `json:"clock_deg"` // of the middle of the first
	FromMm     float64 `json:"from_mm"`   // from the front face
	ToMm       float64 `json:"to_mm"`
	DiameterMm float64 `json:"diameter_mm"`    // of the step
	DepthMm    float64 `json:"depth_mm"`       // from the crown
	WidthMm    float64 `json:"width_mm"`       // of one flat
	Full       bool    `json:"full,omitempty"` // the corners are sharp
}

// ClampRow is the split of a ring with its screw. Along the screw lengths are from the
// middle of the slot.
type ClampRow struct {
	In        string  `json:"in"` // the bore it closes
	ClockDeg  float64 `json:"clock_deg"`
	SlotMm    float64 `json:"slot_mm"`
	OutsideMm float64 `json:"outside_mm"` // diameters at the screw
	BoreMm    float64 `json:"bore_mm"`
	Thread    string  `json:"thread"`
	Class     string  `json:"class"`
	MajorMm   float64 `json:"major_mm"`
	LongMm    float64 `json:"long_mm"`
	AtMm      float64 `json:"at_mm"`    // of the screw's axis, from the ring's
	AxialMm   float64 `json:"axial_mm"` // from the front face
	HoleMm    float64 `json:"hole_mm"`
	HeadMm    float64 `json:"counterbore_mm"`
	SeatMm    float64 `json:"seat_mm"`
	DeepMm    float64 `json:"deep_mm"` // of the counterbore, from the round
	GripMm    float64 `json:"grip_mm"` // metal under the head
	HoldsMm   float64 `json:"thread_mm"`
	InnerMm   float64 `json:"inner_mm"` // metal between hole and bore
	OuterMm   float64 `json:"outer_mm"` // and between hole and outside
	ProudMm   float64 `json:"proud_mm"` // the head over the round; below 0 under it
	Screw     string  `json:"screw"`    // as it is ordered
	TorqueNm  float64 `json:"torque_nm"`
	HoldsNm   Range   `json:"holds_nm"` // on the bore then
}

// CentreRow is a centre hole in an end.
type CentreRow struct {
	Face        parts.Face `json:"face"`
	Designation string     `json:"designation"` // "ISO 6411-B 2.5/8"
	PilotMm     float64    `json:"pilot_mm"`
	MouthMm     float64    `json:"mouth_mm"` // diameter at the face
}

// ORingFit is how an O-ring lies in its groove; shares are of 1.
type ORingFit struct {
	InsideMm   float64           `json:"inside_mm"`
	SectionMm  float64           `json:"section_mm"`
	Moving     bool              `json:"moving,omitempty"`
	SqueezeMin float64           `json:"squeeze_min"`
	SqueezeMax float64           `json:"squeeze_max"`
	Fill       float64           `json:"fill"`
	Stretch    float64           `json:"stretch"`
	Problems   []grooves.Problem `json:"problems,omitempty"`
}

// Part finds a part of the plan by name, or nil.
func (p *Plan) Part(name string) *PartPlan {
	return seq.First(p.Parts, func(q *PartPlan) bool { return q.Name == name })
}

// Joint finds a joint of the plan by name, or nil.
func (p *Plan) Joint(name string) *JointPlan {
	return seq.First(p.Joints, func(j *JointPlan) bool { return j.Name == name })
}

// RadiiAt are the bore's and the outside's radius, in mm, at a distance from the
// front face; ok is false beyond the part's ends.
func (s *Section) RadiiAt(zMm float64) (innerMm, outerMm float64, ok bool) {
	outerMm, ok = radiusAt(s.Outer, zMm)
	innerMm, _ = radiusAt(s.Inner, zMm)
	return innerMm, outerMm, ok
}

// Metal are the corners of the metal on one side of the axis, z from the front face and r, closed
// by the last to the first.
func (s *Section) Metal() []XY {
	points := slices.Clone(s.Outer)
	switch n := len(s.Inner); {
	case n == 0:
		return append(points, XY{XMm: s.LengthMm}, XY{})
	case s.Inner[n-1].YMm == 0:
		points = append(points, XY{XMm: s.LengthMm})
	}
	for _, p := range slices.Backward(s.Inner) {
		points = append(points, p)
	}
	return points
}

// radiusAt is the radius of a contour at z.
func radiusAt(line []XY, z float64) (float64, bool) {
	for i := 0; i+1 < len(line); i++ {
		a, b := line[i], line[i+1]
		if a.XMm <= z && z <= b.XMm && b.XMm > a.XMm {
			return a.YMm + (b.YMm-a.YMm)*(z-a.XMm)/(b.XMm-a.XMm), true
		}
	}
	return 0, false
}
