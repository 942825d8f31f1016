package plan

import (
	"slices"
	"strconv"

	"centrepop/layout/lookup"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// JointPlan is one joint worked out. Plan.Joints is in the order to make them.
// A is the first part of the joint (shaft, part welded on, part bolted on, or
// the one with the bearing's cone), B the part it goes to.
type JointPlan struct {
	N        int             `json:"n"` // step of the sequence, from 1
	Name     string          `json:"joint"`
	Title    string          `json:"title"`
	Kind     parts.JointKind `json:"kind"` // press, weld, bolt, bearing, slide, screw
	A        JointEnd        `json:"a"`
	B        JointEnd        `json:"b"`
	How      string          `json:"how"`              // "back of Lantern on front of Bearing housing, TOP at 0°"
	Told     bool            `json:"-"`                // a step says How
	Why      []Reason        `json:"why,omitempty"`    // why it comes at this place of the order
	Placed   []Placed        `json:"placed,omitempty"` // the assembly once this joint is made; empty where the parts do not share an axis
	Beside   *Beside         `json:"beside,omitempty"` // of a bolted part whose axis is not the other's
	Stack    []Beside        `json:"stack,omitempty"`  // of that the parts between the two, in the job's order: how each lies to part A as A does to B
	Figures  []Figure        `json:"figures"`          // every number of the joint, in reading order
	Clock    []ClockMark     `json:"clock,omitempty"`  // what lies where, seen from the front of the assembly
	InLine   []InLine        `json:"in_line,omitempty"`
	Press    *PressPlan      `json:"press,omitempty"`
	Weld     *WeldPlan       `json:"weld,omitempty"`
	Bolt     *BoltPlan       `json:"bolt,omitempty"`
	Bearing  *BearingPlan    `json:"bearing,omitempty"`
	Slide    *SlidePlan      `json:"slide,omitempty"`
	Screw    *ScrewPlan      `json:"screw,omitempty"`
	Frame    string          `json:"frame,omitempty"` // of a corner of a frame: the joint that is its last corner
	Traps    []Trap          `json:"traps,omitempty"`
	Remedies []string        `json:"remedies,omitempty"` // witness mark, stamps
	Offset   []Out           `json:"offset,omitempty"`   // a hole and its mate that leave one way when the job puts both elsewhere
	Steps    []JointStep     `json:"steps"`
	PutIn    []string        `json:"put_in,omitempty"` // titles of the parts that no joint fastens and that go in now
	Checks   []Check         `json:"checks"`           // before going on
	Problems []Problem       `json:"problems,omitempty"`
	Unlike   []string        `json:"unlike,omitempty"` // which metal eats which
	Cautions []string        `json:"cautions,omitempty"`
	Keepers  []Keeper        `json:"-"`               // the retaining rings beside what the joint puts on
	Tools    []string        `json:"tools,omitempty"` // names of those the workshop makes for it
	MassKg   float64         `json:"mass_kg"`         // of everything joined so far in this assembly; 0 if a mass is not known
	Lift     *Lift           `json:"lift,omitempty"`
	Ways     []Trap          `json:"-"`              // more of them, of whole assemblies and of parts beside the axis; filled with the pictures
	Hold     *Hold           `json:"hold,omitempty"` // filled by Arrange; nil where all stands by itself
	UpDeg    float64         `json:"-"`              // with Beside: the clock angle there at which the machine's TOP lies, 0 ≤ t < 360; filled by Arrange
	Pictures []Picture       `json:"-"`              // of the machine as far as it stands, filled by Arrange of what layout worked out
}

// Keeper is a retaining ring that comes with a joint: the groove of a part, and the face of that to which the ring is pressed in it.
type Keeper struct {
	On     parts.Instance
	Groove string
	ToBack bool
}

// OfKind are those of some joints that are of a kind.
func OfKind(joints []*JointPlan, kind parts.JointKind) []*JointPlan {
	return seq.Keep(joints, func(j *JointPlan) bool { return j.Kind == kind })
}

// StandAs gives a joint what the machine in space showed of it in another plan: pictures,
// what is held, which way up it stands, the ways that it also goes together, what hoods
// its bolts and where it is slung; none of it for nil.
func (j *JointPlan) StandAs(o *JointPlan) {
	if o == nil {
		o = &JointPlan{}
	}
	j.Pictures, j.Hold, j.Ways, j.UpDeg = o.Pictures, o.Hold, o.Ways, o.UpDeg
	if j.Bolt != nil {
		j.Bolt.Under = nil
		if o.Bolt != nil {
			j.Bolt.Under = o.Bolt.Under
		}
	}
	if j.Lift == nil {
		return
	}
	if j.Lift.Sling = nil; o.Lift != nil {
		j.Lift.Sling = o.Lift.Sling
	}
}

// Lift is what hangs in the hook at a step: the lighter of the two sides that
// the step joins, or what it tries on, where it is heavier than LiftKg; or else what it puts in that is.
type Lift struct {
	What    string  `json:"what"`
	MassKg  float64 `json:"mass_kg"`
	AtLeast bool    `json:"at_least,omitempty"` // the mass of something on it is not known
	How     string  `json:"how"`
	Loose   bool    `json:"loose,omitempty"` // something bought that the step puts in, not a side of the joint
	Sling   *Sling  `json:"sling,omitempty"` // where to sling it; nil where that is not known
	// Tried and TriedCopy are the part that is lifted on to try it; empty for a side of the joint.
	Tried     string `json:"tried,omitempty"`
	TriedCopy int    `json:"tried_copy,omitempty"`
}

// Sling is a pair of places to lift by, level with the load as it is put on, at
// equal distances either side of the centre of gravity; or that centre alone, HalfMm 0, and
// the eye bolts that go in about it, if any.
type Sling struct {
	End      string    `json:"end"`                // of what hangs, that CentreMm is measured from: "front" or "left", seen from the front; with the front up "TOP" or "9 o'clock"
	At       string    `json:"at"`                 // title of the part at that end
	FrontUp  bool      `json:"front_up,omitempty"` // End is then the side that lies at so much of the clock
	CentreMm float64   `json:"centre_mm"`
	HalfMm   float64   `json:"half_mm"`            // from the centre of gravity to each place
	StrapMm  float64   `json:"strap_mm,omitempty"` // the widest strap that lies there clear of edges, ports and the joint
	On       [2]string `json:"on"`                 // the parts there
	HookMm   float64   `json:"hook_mm"`            // least height of the hook above the places, for legs at SlingDeg
	Eyes     string    `json:"eyes,omitempty"`     // thread of the holes of On[0] that eye bolts go into, where no strap keeps clear
	Holes    string    `json:"holes,omitempty"`    // their name on the sheet of On[0]
	For      bool      `json:"for,omitempty"`      // they are made to lift by; without a thread they are eyes of all copies of On[0]
	Through  bool      `json:"through,omitempty"`  // the holes are: a thread too long stands out below
	OverMm   float64   `json:"over_mm"`            // by which the centre of gravity lies above the lower place; 0 if it hangs below
}

// Hold is what to hold at a step until its joint does.
type Hold struct {
	PieceDeg   float64   `json:"piece_falls_deg,omitempty"`   // off the level at which a piece to tack falls over; 0 if it stands
	Against    string    `json:"against,omitempty"`           // title of the upright part whose face it lies flat against
	Hangs      bool      `json:"hangs,omitempty"`             // it meets an upright face, and nothing is under it
	Comes      string    `json:"comes,omitempty"`             // title of what is bolted on from below, or to an upright face that does not carry it
	GapMm      float64   `json:"gap_mm,omitempty"`            // that it stands off what it is tacked to
	RunsOn     []string  `json:"runs_on,omitempty"`           // parts that a seam longer than what it is said to join runs on to
	UprightDeg float64   `json:"upright_falls_deg,omitempty"` // at which what stands under the ram falls over; 0 if it stands
	Grips      bool      `json:"grips,omitempty"`             // a hot hub takes hold of it there, no ram
	Hot        bool      `json:"hot,omitempty"`               // what is joined hot or cold grips it there by itself, no ram
	Bolts      bool      `json:"bolts,omitempty"`             // its bolts hold it there, no ram
	Lies       string    `json:"lies,omitempty"`              // title of a part that is on it by its weight alone
	Foot       string    `json:"foot,omitempty"`              // title of the part that it stands upright on
	On         [2]string `json:"on"`                          // the parts that lie in V-blocks where nothing stands on end; one twice where both its ends do; else empty
	Packed     bool      `json:"packed,omitempty"`            // nothing round lies in blocks: what falls over is packed up and clamped
	Once       bool      `json:"once,omitempty"`              // it stands until the joint is made
	Cups       bool      `json:"cups,omitempty"`              // cups are pressed in first, along its axis
	Out        string    `json:"out,omitempty"`               // the part whose block is in the way of what comes
	TipsMm     float64   `json:"tips_mm,omitempty"`           // that the centre of gravity lies beyond On[0] while that block is out; 0 if over it
	CentreMm   float64   `json:"centre_mm,omitempty"`         // of gravity then, from the front end of what lies
	At         string    `json:"at,omitempty"`                // title of the part at that end
	BeyondMm   float64   `json:"beyond_mm,omitempty"`         // that the centre of gravity lies beyond the feet on the floor then, without what is put in later: anchors alone hold it
	Free       bool      `json:"free,omitempty"`              // nothing is anchored by then
	Later      []string  `json:"later,omitempty"`             // that is: what is bought and weighed
	Slung      bool      `json:"slung,omitempty"`             // the sling carries what is lifted until the joint does
}

// Needed tells whether something is to be held.
func (h *Hold) Needed() bool {
	return h.PieceDeg > 0 || h.Against != "" || h.Hangs || h.Comes != "" || h.UprightDeg > 0 || h.GapMm != 0 || h.On[0] != "" || h.BeyondMm > 0 || h.Packed ||
		h.Foot != "" || h.Slung || len(h.RunsOn) > 0
}

// SlingDeg is the least angle of a sling's legs to the level. Common practice,
// no source.
const SlingDeg = 60.0

// JointEnd is one side of a joint.
type JointEnd struct {
	Part       string  `json:"part"` // name, to find its PartPlan
	Copy       int     `json:"copy"` // which of several equal parts, from 1
	Title      string  `json:"title"`
	PartTitle  string  `json:"-"` // the same without the number of the copy
	Feature    string  `json:"feature"`
	DiameterMm float64 `json:"diameter_mm,omitempty"` // of a round feature
	MinMm      float64 `json:"min_mm,omitempty"`      // its limits, equal where nothing limits it
	MaxMm      float64 `json:"max_mm,omitempty"`
	Inside     bool    `json:"inside"`  // a bore
	FromMm     float64 `json:"from_mm"` // where it lies on the part's axis, from its front face
	ToMm       float64 `json:"to_mm"`
}

// Instance is the copy that is joined.
func (e *JointEnd) Instance() parts.Instance { return parts.Instance{Part: e.Part, Copy: e.Copy} }

// Span is where it lies on the part's axis, from its front face.
func (e *JointEnd) Span() geom.Span { return geom.Between(e.FromMm, e.ToMm) }

// Placed is a part in its place in an assembly. The frame is that of the first
// part of the finished assembly and is the same in every step: z grows from that part's front face to its back; clock
// angles are seen from the assembly's front (looking along +z), 0 at the first
// part's TOP. A point of the part at z from its front face and clock angle a
// seen from its front lies at FrontMm + z and TurnDeg + a, or, where the part
// is OtherWay, at FrontMm − z and TurnDeg − a.
type Placed struct {
	Part     string  `json:"part"`
	Copy     int     `json:"copy"`
	Title    string  `json:"title"`
	FrontMm  float64 `json:"front_mm"`
	TurnDeg  float64 `json:"turn_deg"`        // 0 ≤ t < 360
	OtherWay bool    `json:"other_way_round"` // its front looks to the assembly's back
	New      bool    `json:"new"`             // joined in this step
}

// Instance is the copy that stands there.
func (p *Placed) Instance() parts.Instance { return parts.Instance{Part: p.Part, Copy: p.Copy} }

// Beside is where part A of a bolted joint stands in the frame of part B, where
// the two share no axis: A's origin at x and y of B's front view, its front at a
// depth behind B's front, and its TOP at a clock angle. Holes on a flange or on a
// side of a bar have the frame of that.
type Beside struct {
	XMm      float64 `json:"x_mm"`
	YMm      float64 `json:"y_mm"`
	FrontMm  float64 `json:"front_mm"`
	TurnDeg  float64 `json:"turn_deg"`
	OtherWay bool    `json:"other_way_round"`
	On       string  `json:"on,omitempty"` // the flange or side of B with the holes, whose clock it is; empty is B's front
	Up       string  `json:"up,omitempty"` // what lies at 12 o'clock there
}

// Figure is a number of a joint with where it comes from.
type Figure struct {
	Label  string `json:"label"`
	Value  string `json:"value"`
	Source string `json:"source,omitempty"`
}

// ClockMark is something at a clock angle of the assembly.
type ClockMark struct {
	Label string  `json:"label"`
	Part  string  `json:"part"`
	Deg   float64 `json:"deg"`
	Key   bool    `json:"key"` // named in an align rule of the joint
}

// InLine is a rule of what must line up, found true.
type InLine struct {
	What string  `json:"what"`
	Deg  float64 `json:"deg"` // of the assembly
}

// Reason is why a joint comes after another.
type Reason struct {
	Step int    `json:"step"` // that it comes after
	Why  string `json:"why"`  // "weld before bolting"
}

// Trap is a wrong way in which the holes still match.
type Trap struct {
	TurnDeg  float64 `json:"turn_deg"`          // of the added part from its right place, clockwise from the assembly's front
	OtherWay bool    `json:"other_way_round"`   // put on the wrong way round besides
	Instead  string  `json:"instead,omitempty"` // the copy of a part that it also goes together with
	Face     string  `json:"face,omitempty"`    // the edge or side that it also stands on, e.g. "left"
	Breaks   bool    `json:"breaks"`            // a rule of what must line up
	Out      []Out   `json:"out"`               // what would then be out of place
}

// Out is what lies out of place when a joint is made a wrong way.
type Out struct {
	What      string  `json:"what"`                // "Barrel tube inlet"; with nothing else set all of it, "heads on the wrong side of …"
	Clocked   bool    `json:"clocked,omitempty"`   // it lies at AtDeg instead of RightDeg
	AtDeg     float64 `json:"at_deg,omitempty"`    // clockwise from the assembly's TOP
	RightDeg  float64 `json:"right_deg,omitempty"` // the same of its right place
	Elsewhere bool    `json:"elsewhere,omitempty"` // it lies elsewhere
	Unruled   bool    `json:"unruled,omitempty"`   // no rule of the job says where it belongs
}

// JointStep is one thing to do.
type JointStep struct {
	N       int      `json:"n"`
	Title   string   `json:"title"`
	Do      []string `json:"do"`
	Hold    string   `json:"hold,omitempty"` // check this before going on
	Caution string   `json:"caution,omitempty"`
	Alike   string   `json:"-"` // Do, as it is said of each of several equal pieces: no copies, and the place is told below
}

// Range is a least and a greatest value.
type Range = lookup.Range

// PressPlan is the numbers of an interference fit: Min at the least
// interference, Max at the greatest.
type PressPlan struct {
	Inward         bool    `json:"inward,omitempty"` // the shaft, which is the lighter by then, is pressed into the hub
	Method         string  `json:"method"`           // press, heat, cool
	InterferenceMm Range   `json:"interference_mm"`
	LengthMm       float64 `json:"length_mm"`
	PressureMPa    Range   `json:"pressure_mpa"`
	HubMPa         Range   `json:"hub_von_mises_mpa"`
	ShaftMPa       Range   `json:"shaft_von_mises_mpa"`
	HubSafety      float64 `json:"hub_safety"`   // at the tightest
	ShaftSafety    float64 `json:"shaft_safety"` // at the tightest
	ForceN         Range   `json:"force_n"`
	TorqueNm       Range   `json:"torque_nm"`
	Friction       Range   `json:"friction"`
	HeatHubC       float64 `json:"heat_hub_c"`
	LetDown        bool    `json:"let_down,omitempty"` // the shaft goes down into the hot hub, which lies on a plate
	CoolShaftC     float64 `json:"cool_shaft_c"`
	HeatLimitC     float64 `json:"heat_limit_c,omitempty"` // what the hub's material stands; 0 if not known
	ColdLimitC     float64 `json:"cold_limit_c,omitempty"` // how cold the shaft can be had
	ClearanceMm    float64 `json:"joining_clearance_mm"`
	BoreClosesMm   float64 `json:"bore_closes_mm,omitempty"` // on diameter, of the inner part at the tightest
	LeadInMm       float64 `json:"lead_in_mm,omitempty"`     // of the chamfer that is drawn
	LeadInDeg      float64 `json:"lead_in_deg,omitempty"`
	LeadInOn       string  `json:"lead_in_on,omitempty"`   // the part that has it; empty where none is drawn
	ShopPressN     float64 `json:"shop_press_n,omitempty"` // 0 where it goes into no press
	DrawNm         float64 `json:"draw_nm,omitempty"`      // at the nut of the screw that draws it in, for the greatest force; 0 for none
}

// TooHot tells whether the hub would have to be hotter than its material stands.
func (p *PressPlan) TooHot() bool { return p.HeatLimitC > 0 && p.HeatHubC > p.HeatLimitC }

// TooCold tells whether the shaft would have to be colder than it can be had.
func (p *PressPlan) TooCold() bool { return p.CoolShaftC < p.ColdLimitC }

// WeldPlan is the numbers of a weld.
type WeldPlan struct {
	Lap          bool      `json:"lap,omitempty"`     // the first part lies flat on the other, welded round its edge
	OnEdge       bool      `json:"on_edge,omitempty"` // the fillet lies on the edge of the second part's sheet, in whose end the first stands
	Type         string    `json:"type"`
	Symbol       string    `json:"symbol"`      // name of the ISO 2553 symbol
	Designation  string    `json:"designation"` // "z5", for fillets
	Process      string    `json:"process"`
	Metal        string    `json:"metal,omitempty"` // that takes a filler of its own, in words
	Sides        int       `json:"sides"`           // welded from one side or from both
	ThinnerMm    float64   `json:"thinner_mm"`
	ThickerMm    float64   `json:"thicker_mm"`
	LegMm        float64   `json:"leg_mm,omitempty"`
	ThroatMm     float64   `json:"throat_mm,omitempty"`
	BevelDeg     float64   `json:"bevel_deg,omitempty"` // included angle of a V, or of the one edge that is bevelled
	OneEdge      bool      `json:"one_edge,omitempty"`  // only one edge is bevelled, against the other's square side
	Branch       string    `json:"branch,omitempty"`    // parts.SetOn or parts.SetIn, of a branch on its main
	Bevelled     string    `json:"bevelled,omitempty"`  // title of the part with that edge, where its drawing has it
	DepthMm      float64   `json:"depth_mm,omitempty"`  // of a bevel against a round, along it; 0 where the bevel goes through
	GapMm        float64   `json:"gap_mm"`              // the most that is left open
	GapLeastMm   float64   `json:"gap_least_mm"`        // less where the sizes of a round in a round have limits
	RootFaceMm   float64   `json:"root_face_mm,omitempty"`
	AreaMm2      float64   `json:"area_mm2"`
	LengthMm     float64   `json:"length_mm"`
	DiameterMm   float64   `json:"diameter_mm,omitempty"` // of a weld all round
	Corners      []Corner  `json:"corners,omitempty"`     // of a straight fillet whose parts have a place
	CornerMm     float64   `json:"corner_mm,omitempty"`   // length of all corners that its parts make, whether it is laid in them or not; 0 where that is not known
	Round        bool      `json:"round,omitempty"`       // they go round the ends of sheet that stands on its edge
	Flush        []string  `json:"flush,omitempty"`       // sides of the first part that stand flush, without a corner
	FlareMm2     float64   `json:"flare_mm2,omitempty"`   // section of their seams over the round corner of a hollow section
	FlareMm      float64   `json:"flare_mm,omitempty"`    // length of these seams; 0 for none
	FlareRuns    int       `json:"flare_runs,omitempty"`  // of each
	OpensMm      float64   `json:"opens_mm,omitempty"`    // to which the gap of a branch opens at the outside of its flanks; 0 where it stays
	OpensDeg     []float64 `json:"opens_deg,omitempty"`   // where, on the branch's clock; empty where that is not said
	DepositedKg  float64   `json:"deposited_kg"`
	BuyKg        float64   `json:"buy_kg"`
	Runs         int       `json:"runs"`
	TackLengthMm float64   `json:"tack_length_mm,omitempty"`
	ClockOf      string    `json:"clock_of,omitempty"`  // title of the part whose clock tacks and runs go by, seen from its front
	TacksDeg     []float64 `json:"tacks_deg,omitempty"` // in the order to weld them
	Order        []WeldRun `json:"order,omitempty"`
	Besides      string    `json:"besides,omitempty"`    // what is done beside welding, such as gouging the root
	SquareUpMm   float64   `json:"square_up_mm"`         // to leave on a face that is faced afterwards
	BackingMm    float64   `json:"backing_mm,omitempty"` // thickness of the plate that keeps a face flat meanwhile; 0: none
	BackingOn    string    `json:"backing_on,omitempty"` // title of the part that it is bolted to
	Faced        string    `json:"faced,omitempty"`      // part that is faced to its thickness after this weld, here or after the last of its body
	BoreLeaveMm  float64   `json:"bore_leave_mm"`
	Finish       []string  `json:"finish_after,omitempty"` // fine sizes to finish after welding
}

// Corner is a stretch of a seam along which a part ends on another that goes on: a fillet
// lies in it.
type Corner struct {
	Side     string  `json:"side"`  // of the part that ends there
	Of       string  `json:"of"`    // its title
	Along    string  `json:"along"` // title of the part that goes on
	LengthMm float64 `json:"length_mm"`
}

// OneSided tells whether a fillet from one side lies in corners on one side alone, or where it lies is not known.
func (w *WeldPlan) OneSided() bool {
	return w.Sides == 1 && !slices.ContainsFunc(w.Corners, func(c Corner) bool { return c.Side != w.Corners[0].Side })
}

// WeldRun is one stretch of weld on a circle.
type WeldRun struct {
	N         int     `json:"n"`
	Layer     int     `json:"layer"`
	StartDeg  float64 `json:"start_deg"`
	EndDeg    float64 `json:"end_deg"`
	Clockwise bool    `json:"clockwise"`
}

// Layers is what its bolts clamp, from the head down, with their washers.
func (p *BoltPlan) Layers() []GripRow {
	washer := func(mm float64) []GripRow {
		if mm == 0 {
			return nil
		}
		return []GripRow{{What: "washer", ThickMm: mm}}
	}
	return slices.Concat(washer(p.WasherMm), p.Grip, washer(p.NutWasherMm))
}

// ClampedMm is how thick all of them are together, in mm.
func (p *BoltPlan) ClampedMm() float64 { return p.WasherMm + p.GripMm + p.NutWasherMm }

// Shift is how far a part that is bolted by slots can be set off from where it is drawn, along the slots of one
// of the two, until a bolt meets the end of its slot; the play of the holes is left out.
type Shift struct {
	Of         string  `json:"of"`          // the group with the slots, for people
	TowardsDeg float64 `json:"towards_deg"` // clock angle of its part, seen on the front of that
	Mm         float64 `json:"mm"`          // that way
	BackMm     float64 `json:"back_mm"`     // the other way
	Along      XY      `json:"-"`           // that way in the frame of the joint's patterns, 1 long
}

// BoltPlan is the numbers of a ring of bolts.
type BoltPlan struct {
	Size           string    `json:"size"`
	Class          string    `json:"class,omitempty"`
	Head           string    `json:"head"`
	Count          int       `json:"count"`
	PCDMm          float64   `json:"pcd_mm,omitempty"`
	Grip           []GripRow `json:"grip"`                    // from the head down
	WasherMm       float64   `json:"washer_mm,omitempty"`     // under the head
	NutWasherMm    float64   `json:"nut_washer_mm,omitempty"` // under the nut
	SunkMm         float64   `json:"sunk_mm,omitempty"`       // how deep the tops of countersunk heads lie under the face; below 0 proud
	Spacer         bool      `json:"spacer,omitempty"`        // studs with shoulders: each end holds the plate at its shoulder alone
	GripMm         float64   `json:"grip_mm"`
	StudTipMm      float64   `json:"stud_tip_mm,omitempty"`    // of a made stud, beyond the face by which A meets it or B
	StudBack       bool      `json:"stud_back,omitempty"`      // its back end goes through A
	StudStandsMm   float64   `json:"stud_stands_mm,omitempty"` // out of the tapped hole that it is screwed into
	Ordered        string    `json:"ordered"`                  // "M10 x 40"
	LengthMm       float64   `json:"length_mm"`
	EngagementMm   float64   `json:"engagement_mm"`
	NeedMm         float64   `json:"engagement_needed_mm"`
	SpareMm        float64   `json:"spare_thread_mm,omitempty"`
	ProtrusionMm   float64   `json:"protrusion_mm,omitempty"`
	WallGapMm      float64   `json:"wall_gap_mm,omitempty"`      // head or spanner to the nearest wall; 0 if there is none
	NeighbourGapMm float64   `json:"neighbour_gap_mm,omitempty"` // spanner to the next bolt
	PlayMm         float64   `json:"play_mm"`                    // how far the holes may be out before the bolt binds
	OffMm          []XY      `json:"off_mm,omitempty"`           // with slots: how far each bolt stands from the middle of A's hole or slot, seen from A's front
	Shifts         []Shift   `json:"shifts,omitempty"`           // with slots: how far A can be shifted from where it is drawn
	PreloadN       float64   `json:"preload_n,omitempty"`
	PreloadRangeN  Range     `json:"preload_range_n"`
	Soft           *GripRow  `json:"soft,omitempty"`   // a soft gasket between the parts, free: no preload or torque is known then
	Creeps         string    `json:"creeps,omitempty"` // a part of plastic between the bolts' ends: no preload or torque is known then
	Seat           *SeatRow  `json:"seat,omitempty"`   // what limits the preload, where the bolt takes more than what it presses on
	TorqueNm       float64   `json:"torque_nm,omitempty"`
	TorqueRangeNm  Range     `json:"torque_range_nm"`
	Threads        string    `json:"threads,omitempty"`         // the condition TorqueNm is for: "dry", "oiled", …
	OtherThreads   string    `json:"other_threads,omitempty"`   // the other of dry and oiled
	OtherTorqueNm  float64   `json:"other_torque_nm,omitempty"` // for it
	NutClass       string    `json:"nut_class,omitempty"`
	WasherClass    string    `json:"washer_class,omitempty"`
	K              float64   `json:"k,omitempty"`
	KSource        string    `json:"k_source,omitempty"`
	Order          []int     `json:"order"`     // hole numbers of A's group in tightening order
	OrderDeg       []float64 `json:"order_deg"` // the same as clock angles of the assembly
	OrderMm        []XY      `json:"order_mm"`  // the same as places about the middle of that clock
	// ComesOff are the titles of what is put on later over the heads, the last first.
	ComesOff []string `json:"comes_off,omitempty"`
	// Behind is what later joints, or a motor, bring over the heads: no hand takes it off.
	Behind []Off `json:"behind,omitempty"`
	// Under are the titles of guards and hoods that later joints put over the heads.
	Under []string `json:"under,omitempty"`
}

// SeatRow is a part that bears less under heads or nuts than their bolts take.
type SeatRow struct {
	What  string  `json:"what"`
	Metal string  `json:"metal"`
	MPa   float64 `json:"mpa"`   // what that bears
	Share float64 `json:"share"` // of the preload that the bolt takes
}

// GripRow is one layer under the head.
type GripRow struct {
	What    string  `json:"what"`
	ThickMm float64 `json:"thick_mm"`
}

// SlidePlan is the numbers of a hub that slides on its shaft.
type SlidePlan struct {
	PlayMm    Range   `json:"play_mm"`               // of the bore on the shaft, on diameter
	Key       string  `json:"key"`                   // width by height by length; empty where the two have no keyways
	KeyOnMm   float64 `json:"key_engaged_mm"`        // how much of the key lies in the hub's keyway
	OverMm    float64 `json:"over_key_mm"`           // between the key's top and the hub
	HeldBy    string  `json:"held_by"`               // the shoulder; empty if there is none, and of a hub on a cone
	Cone      float64 `json:"cone,omitempty"`        // x of 1:x of the cone that it sits on; 0 on a cylinder
	From      string  `json:"from"`                  // the end of the shaft that the hub comes from: front or back
	Keeper    string  `json:"keeper"`                // what keeps it: "nut M36x3", a ring, a plate's title
	Ring      bool    `json:"ring,omitempty"`        // that is a retaining ring
	Nut       string  `json:"nut,omitempty"`         // its thread
	MadeNut   string  `json:"made_nut,omitempty"`    // the part that is that nut; empty where one is bought
	NutFromMm float64 `json:"nut_from_mm,omitempty"` // the nut's face, on the shaft's axis
	NutDir    float64 `json:"nut_dir,omitempty"`     // from there towards the shaft's back 1, front −1
	PlateMm   float64 `json:"plate_mm,omitempty"`    // what lies under the nut
	Dragged   bool    `json:"dragged_off,omitempty"` // the load on the hub drags the nut off
	FreeMm    float64 `json:"free_mm"`               // how far the hub can move along the shaft; below 0 it is clamped by so much
	Gripped   bool    `json:"gripped,omitempty"`     // the hub is split, and its screw closes it on the shaft
	FreeAtMm  *Range  `json:"free_at_mm,omitempty"`  // the same of one kept by a ring, inside the limits of the lengths; nil where none have limits
}

// ScrewPlan is the numbers of a screw in its nut.
type ScrewPlan struct {
	Thread    string  `json:"thread"`
	EngagedMm float64 `json:"engaged_mm"`     // of the thread, as drawn
	Turns     float64 `json:"turns"`          // from where it bites to where it stands
	Home      bool    `json:"home,omitempty"` // face on face, else it runs
	Onto      bool    `json:"onto,omitempty"` // the nut is brought to the screw
	Leads     string  `json:"leads"`          // the end of the screw that goes in first: front or back
}

// Pair is how two bearings look at each other, by the backs of their cups; empty where there is one alone.
type Pair string

// The pairs, in words of the trade.
const (
	BackToBack Pair = "back to back"
	FaceToFace Pair = "face to face"
	InTandem   Pair = "tandem"
)

// Off is something that comes off again; as text its title.
type Off struct {
	Title string
	Of    parts.Instance // the part that joints have put on; none of what a hand has
	Loose *parts.Loose   // what a hand has put on, else nil
}

// MarshalText gives the title.
func (o Off) MarshalText() ([]byte, error) { return []byte(o.Title), nil }

// BearingPlan is the numbers of a bearing.
type BearingPlan struct {
	Bearing         string       `json:"bearing"`
	Ball            bool         `json:"ball,omitempty"` // a ball bearing: cone is its inner ring, cup its outer one
	Sealed          bool         `json:"sealed,omitempty"`
	Leaves          []parts.Face `json:"leaves,omitempty"` // of the last ball bearing of a shaft in its housing: the faces of the shaft by which no shoulder, ring or cover of theirs keeps that in
	OnShaft         bool         `json:"-"`                // of a ball bearing: it goes on the shaft before that goes into the housing
	Last            bool         `json:"-"`                // of a ball bearing: the shaft goes into the housing before it
	Rotating        string       `json:"rotating"`
	ConeClass       string       `json:"cone_seat"`        // as drawn
	CupClass        string       `json:"cup_seat"`         // as drawn
	ConeAdvice      string       `json:"cone_seat_advice"` // recommended classes
	CupAdvice       string       `json:"cup_seat_advice"`
	ConeFitUm       Range        `json:"cone_interference_um"` // negative is clearance
	CupFitUm        Range        `json:"cup_interference_um"`
	ConeSleeveInMm  float64      `json:"cone_sleeve_inside_mm"`
	ConeSleeveOutMm float64      `json:"cone_sleeve_outside_mm"`
	CupRingInMm     float64      `json:"cup_ring_inside_mm"`
	CupRingOutMm    float64      `json:"cup_ring_outside_mm"`
	Rings           []PushRing   `json:"rings_here,omitempty"`   // for the cups that go in at this step
	CupsHere        []string     `json:"-"`                      // the joints whose cups go in at this step
	ConesHere       []string     `json:"-"`                      // and whose cones go on
	Sleeve          bool         `json:"sleeve_here,omitempty"`  // the cone goes on at this step, and needs its sleeve
	HeatConeC       float64      `json:"heat_cone_c,omitempty"`  // 0 if it goes on cold
	HeatLeftUm      float64      `json:"heat_left_um,omitempty"` // least play at that temperature
	EndFloatMm      Range        `json:"end_float_mm"`
	HasEndFloat     bool         `json:"has_end_float"`
	ShimMm          float64      `json:"shim_mm,omitempty"` // shims under a cover that give it, by the lengths as drawn; 0 for none
	SetBy           string       `json:"set_by,omitempty"`  // the joint in whose step it is set, of a cover; empty for its own
	ShutBy          []Off        `json:"shut_by,omitempty"` // what comes off before it is set anew, in that order
	GreaseG         float64      `json:"grease_g"`
	Grease          string       `json:"grease,omitempty"`
	Ports           []string     `json:"ports,omitempty"`

	// How it sits. The large end of the cone looks away from the cup's back, its
	// thick side, which stands on the housing's shoulder.
	BoreMm        float64 `json:"bore_mm"`
	OutsideMm     float64 `json:"outside_mm"`
	WidthMm       float64 `json:"width_mm"`
	ConeWidthMm   float64 `json:"cone_width_mm,omitempty"`   // 0 if the job does not give it
	Arrangement   Pair    `json:"arrangement,omitempty"`     // of the pair
	LargeEnd      string  `json:"large_end,omitempty"`       // the face of the shaft it looks at: front or back; empty if no shoulder holds the cup
	HeldBy        string  `json:"held_by,omitempty"`         // the step of the shaft behind the large end: a shoulder, or the thread of the nut
	Adjusted      bool    `json:"adjusted"`                  // a nut holds it, and not a shoulder
	KeepOff       string  `json:"keep_off,omitempty"`        // the shoulder that the small end must not reach
	KeepOffMm     float64 `json:"keep_off_mm,omitempty"`     // how far it stays off, where the cone's own width is known
	CupFromCover  bool    `json:"cup_from_cover,omitempty"`  // its thin side goes first, from the side of a cover that is bolted on behind it later
	CupBackMm     float64 `json:"cup_back_mm"`               // on the assembly's axis
	LargeEndMm    float64 `json:"large_end_mm"`              // the same of the large end's face
	LargeEndDir   float64 `json:"large_end_direction"`       // +1 towards the assembly's back, −1 towards its front
	SmallEndMaxMm float64 `json:"abutment_small_end_max_mm"` // da
	LargeEndMinMm float64 `json:"abutment_large_end_min_mm"` // db
	CupBackMinMm  float64 `json:"abutment_cup_back_min_mm"`  // Da
	CupBackMaxMm  float64 `json:"abutment_cup_back_max_mm"`
	CupFaceMinMm  float64 `json:"abutment_cup_face_min_mm"` // Db
	ByRule        bool    `json:"abutments_by_rule"`        // some of them are a rule of thumb and not the maker's
}

// Names are how the rings of a bearing are called, that on the shaft and that in the housing.
func (b *BearingPlan) Names() (inner, outer string) {
	if b.Ball {
		return "inner ring", "outer ring"
	}
	return "cone", "cup"
}

// PushRing is a ring to push a cup home with.
type PushRing struct {
	InMm  float64 `json:"inside_mm"`
	OutMm float64 `json:"outside_mm"`
	Over  bool    `json:"over_the_shaft,omitempty"` // the shaft stands in it then
}

// BoughtRow is something to buy for the joints.
type BoughtRow struct {
	Item     string `json:"item"`
	Quantity int    `json:"quantity"`
	For      string `json:"for"`
	Note     string `json:"note,omitempty"`
	Anchor   bool   `json:"anchor,omitempty"` // it fixes the machine to the floor
}

// ToolRow is something that the workshop makes for itself, with its sizes.
type ToolRow struct {
	N     int       `json:"-"`               // from 1; 0 for one that is not made, and why
	Name  string    `json:"name"`            // "T3 Cone driver": the title of its sheet
	Tool  string    `json:"tool"`            // with its sizes
	For   string    `json:"for"`             // the steps
	Sheet *PartPlan `json:"sheet,omitempty"` // nil where the job asks for none, or any plate does
}

// No is its number, "T3"; empty for one that is not made.
func (r *ToolRow) No() string {
	if r.N == 0 {
		return ""
	}
	return "T" + strconv.Itoa(r.N)
}

// CutRow is one size of stock and what is cut from it. BarMm is 0 where no whole bar
// is bought: pieces that the merchant saws, blanks of plate and sheet, castings.
type CutRow struct {
	Stock    string   `json:"stock"`
	Material string   `json:"material"`
	BarMm    float64  `json:"bar_mm,omitempty"`
	KerfMm   float64  `json:"kerf_mm,omitempty"`
	TrimMm   float64  `json:"trim_mm,omitempty"` // lost at the first end
	Bars     []CutBar `json:"bars"`
	Source   string   `json:"source,omitempty"`
}

// CutBar is one bar with its pieces in sawing order.
type CutBar struct {
	Pieces   []CutPiece `json:"pieces"`
	OffcutMm float64    `json:"offcut_mm,omitempty"`
}

// CutPiece are equal pieces: sawn to LengthMm, or blanks of plate of LengthMm by
// AcrossMm, round ones where Round is set; of a casting its length, the first of a bar
// FromMm from its end.
type CutPiece struct {
	Part     string  `json:"part"` // its title
	Name     string  `json:"-"`
	Count    int     `json:"count"`
	LengthMm float64 `json:"length_mm"`
	AcrossMm float64 `json:"across_mm,omitempty"`
	Round    bool    `json:"round,omitempty"`
	FromMm   float64 `json:"from_mm,omitempty"`
}

// LiftKg is the mass above which one person should not lift unaided: the
// reference mass of ISO 11228-1 for ideal conditions, of men; it has 20 for women.
const LiftKg = 25.0

// HoistKg is the mass above which two people do not lift either: a team of two lifts two thirds
// of what both lift alone (HSE guidance on manual handling, as safety.networkrail.co.uk has it).
const HoistKg = 2 * LiftKg * 2 / 3
