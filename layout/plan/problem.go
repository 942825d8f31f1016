package plan

import "centrepop/parts"

// Severity sorts problems by what they cost.
type Severity string

// The severities, worst first. A job with an open problem of the first two is
// not ready to cut.
const (
	StopSeverity  Severity = "stop"  // the part would be scrap, or cannot be made
	CheckSeverity Severity = "check" // right only if somebody meant it so
	NoteSeverity  Severity = "note"  // worth knowing
)

// Problem is something wrong with a joint, as a value: what kind of thing, at
// which place of the input, with which numbers. Package words makes the
// sentence, the rule and the cure of it, in the job's units.
type Problem struct {
	Kind  ProblemKind `json:"kind"`
	Joint string      `json:"joint,omitempty"` // that it keeps from being worked out
	Pos   parts.Pos   `json:"-"`
	// Feature is that of a part, for a problem that is no joint's.
	Feature string `json:"feature,omitempty"`
	// Ends are the features that do not go together, of a spigot and its register alone: the spigot first.
	Ends []parts.JointRef `json:"-"`
	// Bodies are those, by their ids, that are in one another's way in the machine.
	Bodies []string `json:"-"`
	Args   []Arg    `json:"args,omitempty"` // what the sentence of the kind is filled with, in its order
	// Because is why, where several things were tried.
	Because []Because `json:"because,omitempty"`
	What    string    `json:"what"` // the sentence, as package words makes it
	// Accepted is the reason for which the job takes it as it is; empty while it is open.
	Accepted string `json:"accepted,omitempty"`
}

// ProblemKind tells one kind of problem from another.
type ProblemKind string

// The kinds of problem with joints. The words, severity and cure of each stand
// in package words, in this order.
const (
	NoClockAngle      ProblemKind = "no-clock-angle"
	NotPlaced         ProblemKind = "not-placed"
	OutOfLine         ProblemKind = "out-of-line"
	OutOfLineTurn     ProblemKind = "out-of-line-turn"
	NoFaceThere       ProblemKind = "no-face-there"
	PlaceIdle         ProblemKind = "place-idle" // of a part bolted by holes in a side or a flange
	TurnIdle          ProblemKind = "turn-idle"  // of an end that is cut to what it stands on
	TurnedRound       ProblemKind = "turned-round"
	PlacedElsewhere   ProblemKind = "placed-elsewhere"
	TurnedElsewhere   ProblemKind = "turned-elsewhere"
	WaitForEachOther  ProblemKind = "wait-for-each-other"
	CannotJoin        ProblemKind = "cannot-join"
	NoBolt            ProblemKind = "no-bolt"
	OtherThread       ProblemKind = "other-thread"
	TappedWithNut     ProblemKind = "tapped-with-nut"
	NoThreadNoNut     ProblemKind = "no-thread-no-nut"
	HoleTooSmall      ProblemKind = "hole-too-small"
	NoMetalToClamp    ProblemKind = "no-metal-to-clamp"
	OtherCount        ProblemKind = "other-count"
	StackMisses       ProblemKind = "stack-misses"
	HolesMiss         ProblemKind = "holes-miss"
	HolesMissCircle   ProblemKind = "holes-miss-circle"
	HolesMissApart    ProblemKind = "holes-miss-apart" // not all on circles, and their distances differ
	HolesMissTurn     ProblemKind = "holes-miss-turn"
	NotThrough        ProblemKind = "not-through"
	ShiftHeld         ProblemKind = "shift-held"     // by other joints
	ShiftShort        ProblemKind = "shift-short"    // of parts that are to be shifted along slots
	SlotUnbridged     ProblemKind = "slot-unbridged" // by the washer or the head over it
	SlotBare          ProblemKind = "slot-bare"      // without a washer
	OpensElsewhere    ProblemKind = "opens-elsewhere"
	BoreSinkWrongSide ProblemKind = "counterbore-wrong-side"
	NoCountersink     ProblemKind = "no-countersink" // for countersunk heads
	SunkProud         ProblemKind = "sunk-proud"     // they stand out of their cones
	Countersunk       ProblemKind = "countersunk"
	NoBoltChosen      ProblemKind = "no-bolt-chosen"
	NoTorque          ProblemKind = "no-torque"
	NoStockLength     ProblemKind = "no-stock-length"
	StudThread        ProblemKind = "stud-thread"
	StudShort         ProblemKind = "stud-short"
	StudOff           ProblemKind = "stud-off"
	StudShut          ProblemKind = "stud-shut" // its body goes between two that stand there already
	CounterboreTight  ProblemKind = "counterbore-tight"
	NoRoomKnown       ProblemKind = "no-room-known"
	HeadsCovered      ProblemKind = "heads-covered"
	BearingBore       ProblemKind = "bearing-bore"
	BearingOutside    ProblemKind = "bearing-outside"
	CupNotHeld        ProblemKind = "cup-not-held"
	RingNowhere       ProblemKind = "ring-nowhere"
	BallsClamped      ProblemKind = "balls-clamped"
	ShaftLoose        ProblemKind = "shaft-loose"
	RingNoRoom        ProblemKind = "ring-no-room"
	BallRubs          ProblemKind = "ball-rubs" // of what a motor turns
	BallLeft          ProblemKind = "ball-left"
	BallUnborne       ProblemKind = "ball-unborne"
	RingShoulderLow   ProblemKind = "ring-shoulder-low"
	RingShoulderHigh  ProblemKind = "ring-shoulder-high"
	CupShoulderLow    ProblemKind = "cup-shoulder-low"
	CupShoulderHigh   ProblemKind = "cup-shoulder-high"
	CupCoverHigh      ProblemKind = "cup-cover-high"
	ConeNotHeld       ProblemKind = "cone-not-held"
	RegisterBottoms   ProblemKind = "register-bottoms"
	NoSectionStrength ProblemKind = "no-section-strength"
	ConeShoulderLow   ProblemKind = "cone-shoulder-low"
	CageTouches       ProblemKind = "cage-touches"
	ConeTouches       ProblemKind = "cone-touches"
	NutShort          ProblemKind = "nut-short"
	NutFew            ProblemKind = "nut-few"
	NutApart          ProblemKind = "nut-apart"
	CupLoose          ProblemKind = "cup-loose"
	SlotShort         ProblemKind = "slot-short"
	SeatShort         ProblemKind = "seat-short"
	NutStops          ProblemKind = "nut-stops"
	Tandem            ProblemKind = "tandem"
	SeatWithoutFit    ProblemKind = "seat-without-fit"
	SeatNotAdvised    ProblemKind = "seat-not-advised"
	PressSizes        ProblemKind = "press-sizes"
	FitUnusable       ProblemKind = "fit-unusable"
	NoLimits          ProblemKind = "no-limits"
	NoStrength        ProblemKind = "no-strength"
	ClearanceFit      ProblemKind = "clearance-fit"
	MayBeLoose        ProblemKind = "may-be-loose"
	PressLength       ProblemKind = "press-length"
	PressUnworkable   ProblemKind = "press-unworkable"
	PressYields       ProblemKind = "press-yields"
	BushYields        ProblemKind = "bush-yields"
	NoLeadIn          ProblemKind = "no-lead-in"
	SealShut          ProblemKind = "seal-shut"
	LeadInBehind      ProblemKind = "lead-in-behind"
	PressTooWeak      ProblemKind = "press-too-weak"
	PressFramed       ProblemKind = "press-framed"
	CupFramed         ProblemKind = "cup-framed"
	GasketIn          ProblemKind = "gasket-in"
	PinsLong          ProblemKind = "pins-long"
	BarShort          ProblemKind = "bar-short"
	PressTooHot       ProblemKind = "press-too-hot"
	PressTooCold      ProblemKind = "press-too-cold"
	PressNoContact    ProblemKind = "press-no-contact"
	PressTooDeep      ProblemKind = "press-too-deep"
	RegisterBinds     ProblemKind = "register-binds"
	RegisterLarger    ProblemKind = "register-larger"
	RegisterLoose     ProblemKind = "register-loose"
	RegisterOff       ProblemKind = "register-off"
	RegisterTube      ProblemKind = "register-tube"
	PlayUsed          ProblemKind = "play-used"
	BushesByPlay      ProblemKind = "bushes-by-play"
	BushesEarly       ProblemKind = "bushes-early"
	OneBolt           ProblemKind = "one-bolt"
	SocketGrade       ProblemKind = "socket-grade"
	StudsMissing      ProblemKind = "studs-missing"
	AgainstTheTrade   ProblemKind = "against-the-trade"
	WeldLate          ProblemKind = "weld-late"
	SeatLimits        ProblemKind = "seat-limits"
	SeatTightness     ProblemKind = "seat-tightness"
	BearingSize       ProblemKind = "bearing-size"
	WeldUnworkable    ProblemKind = "weld-unworkable"
	WeldNoLength      ProblemKind = "weld-no-length"
	FilletSmall       ProblemKind = "fillet-small"
	FilletGap         ProblemKind = "fillet-gap"
	SquareTooThick    ProblemKind = "square-too-thick"
	ButtSteps         ProblemKind = "butt-steps"
	MouthPast         ProblemKind = "mouth-past"
	NoWeldChamfer     ProblemKind = "no-weld-chamfer"
	FloatUnset        ProblemKind = "float-unset"
	ShimsAdd          ProblemKind = "shims-add"
	FloatEarly        ProblemKind = "float-early"
	GrooveLacking     ProblemKind = "groove-lacking"
	SquareUpStock     ProblemKind = "square-up-stock"
	SquareUpNowhere   ProblemKind = "square-up-nowhere"
	FilletOnChamfer   ProblemKind = "fillet-on-chamfer"
	WeldHardens       ProblemKind = "weld-hardens"
	WeldIron          ProblemKind = "weld-iron"
	WeldOwnWay        ProblemKind = "weld-own-way"
	WeldCracks        ProblemKind = "weld-cracks"
	// BreaksOut is of a part: what is cut from outside runs across a change of
	// diameter.
	BreaksOut ProblemKind = "breaks-out"
	// UndercutOver is of a part: an undercut of DIN 509 F goes up its shoulder further
	// than that is high. Arguments: step, how far up, height of the shoulder, and how
	// far over it.
	UndercutOver ProblemKind = "undercut-over"
	// SeatsUnproved is of a part: the seats of two bearings, turned in two settings.
	SeatsUnproved ProblemKind = "seats-unproved"
	// JawsShort and JawsThin are of a part: the chuck has hardly anything of its stock, or of what was turned before.
	JawsShort ProblemKind = "jaws-short"
	JawsThin  ProblemKind = "jaws-thin"
	// FitSplit and StockShort are of a part: an outside from end to end is limited closely, or is to be turned in one setting with others.
	FitSplit     ProblemKind = "fit-split"
	StockShort   ProblemKind = "stock-short"
	WeldMixed    ProblemKind = "weld-mixed"
	WeldedSwings ProblemKind = "welded-swings"
	WeldedLong   ProblemKind = "welded-long"
	// WeldedFixed is of a weld: what is finished after it is fixed to the floor by then. Argument: a part with its step.
	WeldedFixed ProblemKind = "welded-fixed"
	// A hub that slides on its shaft.
	SlideSizes       ProblemKind = "slide-sizes"
	SlideTapers      ProblemKind = "slide-tapers"       // a hub and its seat, or two pressed together, that are not one cone
	SlideTaperStop   ProblemKind = "slide-taper-stop"   // a hub that meets a shoulder before it sits on its cone
	SlideTaperLimits ProblemKind = "slide-taper-limits" // one that may, by the limits of the two diameters
	SlideBinds       ProblemKind = "slide-binds"
	SeatAside        ProblemKind = "seat-aside"   // a hub whose axis lies beside its shaft's, by the third argument
	LugsShut         ProblemKind = "lugs-shut"    // a retaining ring, by its groove and part, whose lugs lack room in a part that leaves the first of two diameters
	SecondBinds      ProblemKind = "second-binds" // a bore of a hub's body that binds on the shaft beside its seat, by the third argument
	SecondFree       ProblemKind = "second-free"  // one that has so much play there that the hub of the last argument holds all
	SeatMissed       ProblemKind = "seat-missed"  // a hub that lies beside its seat along the axis, by the third argument
	SlidePlay        ProblemKind = "slide-play"
	SlideNoKey       ProblemKind = "slide-no-key"
	SlideClosed      ProblemKind = "slide-keyway-closed"
	SlideKeyOff      ProblemKind = "slide-key-off"
	SlideNoStop      ProblemKind = "slide-no-stop"
	SlideNotHeld     ProblemKind = "slide-not-held"
	LengthsEat       ProblemKind = "lengths-eat"  // what a joint relies on, nominal and wanted, is not there at the limits of the lengths
	KeeperSmall      ProblemKind = "keeper-small" // what is bolted on to keep a hub is no larger than its bore
	ConeEats         ProblemKind = "cone-eats"    // the same of what sits on a cone, at the limits of the diameters too
	SlideNutShort    ProblemKind = "slide-nut-short"
	SlideShoulderLow ProblemKind = "slide-shoulder-low"
	SlideLoose       ProblemKind = "slide-loose"
	SlideNutUndercut ProblemKind = "slide-nut-undercut"
	SlideUnlike      ProblemKind = "slide-unlike"
	SlideNoRoom      ProblemKind = "slide-no-room"
	SlideFar         ProblemKind = "slide-far" // the ring is off its hub, by the second argument, at all limits
	SlideNutRoom     ProblemKind = "slide-nut-room"
	SlideLockRoom    ProblemKind = "slide-lock-room"
	SlideDragged     ProblemKind = "slide-dragged"
	SlideNoThread    ProblemKind = "slide-no-thread"
	SlidePlate       ProblemKind = "slide-plate"
	ScrewUnlike      ProblemKind = "screw-unlike"
	SlideWide        ProblemKind = "slide-plate-wide"
	// NearBend, PunchBlocked, FoldInRam and BendRadius are of a folded part.
	NearBend     ProblemKind = "near-bend"
	PunchBlocked ProblemKind = "punch-blocked"
	FoldInRam    ProblemKind = "fold-in-ram"
	BendRadius   ProblemKind = "bend-radius"
	CentreThin   ProblemKind = "centre-thin" // of what is turned between centres, an end too thin for a centre hole
	// Of a bar: a hole near its end or edge, in the corner or root of its section, or too deep;
	// a wall that is not sold, or thinner than any that is; longer than bars are. CornerUnlike is of two that meet.
	BarHoleNear    ProblemKind = "bar-hole-near"
	BarHoleOut     ProblemKind = "bar-hole-out"
	BarTooDeep     ProblemKind = "bar-too-deep"
	BarNotSold     ProblemKind = "bar-not-sold"
	BarTooThin     ProblemKind = "bar-too-thin"
	BarTooLong     ProblemKind = "bar-too-long"
	CornerUnlike   ProblemKind = "corner-unlike"
	CornerSections ProblemKind = "corner-sections"
)

// The kinds of problem of the machine in space.
const (
	PartsOverlap   ProblemKind = "parts-overlap"
	PassingInWay   ProblemKind = "passing-in-way" // of what comes off once its joint is made
	OverlapBy      ProblemKind = "overlap-by"     // of two that one part holds
	OverlapMany    ProblemKind = "overlap-many"   // of one part with several
	OverlapTurned  ProblemKind = "overlap-turned" // of what is bolted on another way about
	OverlapMisses  ProblemKind = "overlap-misses" // of two whose joint does not meet
	Overhangs      ProblemKind = "overhangs"
	HoleClosed     ProblemKind = "hole-closed"
	OpeningPartly  ProblemKind = "opening-partly" // under what is bolted on it
	HoleDeadEnd    ProblemKind = "hole-dead-end"
	HolesPartShut  ProblemKind = "holes-part-shut"
	PortShut       ProblemKind = "port-shut"
	HeadShutIn     ProblemKind = "head-shut-in"
	ClosedIn       ProblemKind = "closed-in"
	FootBeyond     ProblemKind = "foot-beyond"
	HolesUnmet     ProblemKind = "holes-unmet"
	TipUnder       ProblemKind = "tip-under"
	LegsShort      ProblemKind = "legs-short"
	LegsHigh       ProblemKind = "legs-high"
	OnEdge         ProblemKind = "on-edge"  // of a foot
	LegHigh        ProblemKind = "leg-high" // than the others end
	LegLow         ProblemKind = "leg-low"
	FeetApart      ProblemKind = "feet-apart"
	AnchoredHigh   ProblemKind = "anchored-high"
	UnderFloor     ProblemKind = "under-floor"
	FilletNoCorner ProblemKind = "fillet-no-corner"
	SeamBeyond     ProblemKind = "seam-beyond"
	LiftsLow       ProblemKind = "lifts-low"
	LiftsAside     ProblemKind = "lifts-aside" // eyes that all lie on one side of the centre of gravity, by the second argument
	BushSeizes     ProblemKind = "bush-seizes"
	BushCloses     ProblemKind = "bush-closes"
	BushTight      ProblemKind = "bush-tight"
	BushLoose      ProblemKind = "bush-loose"
	BushUnknown    ProblemKind = "bush-unknown" // how far it closes
	BushShort      ProblemKind = "bush-short"
	EndPlayNone    ProblemKind = "end-play-none"
	ComesOff       ProblemKind = "comes-off"       // a bush, over one end of its shaft
	EndPlayUnsure  ProblemKind = "end-play-unsure" // not all that counts has limits
	OneBush        ProblemKind = "one-bush"        // what turns has its centre of gravity beside the one bush that carries it
	FlightTight    ProblemKind = "flight-tight"
	WeldPast       ProblemKind = "weld-past"
	ThroughBinds   ProblemKind = "through-binds"
	WeldOtherSide  ProblemKind = "weld-other-side" // named, but it is not where the two meet
	FlightWide     ProblemKind = "flight-wide"
	PartsFloat     ProblemKind = "parts-float"
	BodyUnknown    ProblemKind = "body-unknown"
	PlaceLacking   ProblemKind = "place-lacking"
	AlongLacking   ProblemKind = "along-lacking"
	FlightLacking  ProblemKind = "flight-lacking"
	PlaceOpen      ProblemKind = "place-open"
	PlaceMisses    ProblemKind = "place-misses"
	SheetTight     ProblemKind = "sheet-tight"  // of a folded part between two others
	PlaceTurned    ProblemKind = "place-turned" // by more than sizes are rounded by
	LoopLength     ProblemKind = "loop-length"  // that of a part between two joints of a loop
	LoopTurn       ProblemKind = "loop-turn"    // of the joints of a loop
	LoopFolded     ProblemKind = "loop-folded"  // of two joints on one folded part
	LoopTurned     ProblemKind = "loop-turned"  // of a joint in it, whose part lies turned
	LoopFlips      ProblemKind = "loop-flips"   // of a bearing in it, which way round it looks
	LoopFloats     ProblemKind = "loop-floats"  // of one, where its shaft lies along it
	FrameSkew      ProblemKind = "frame-skew"   // a bar of it has its long points on two sides
	WeldApart      ProblemKind = "weld-apart"
	WeldUnplaced   ProblemKind = "weld-unplaced" // a weld of parts of which no joint gives the one a place on the other
	BracesOne      ProblemKind = "braces-one"
	OpeningCovered ProblemKind = "opening-covered"
	FeedClosed     ProblemKind = "feed-closed"
	PathBlocked    ProblemKind = "path-blocked"
	LaidEarly      ProblemKind = "laid-early"
	LaidFree       ProblemKind = "laid-free"
	LaidPast       ProblemKind = "laid-past"     // at the height of its face, beside the metal of that
	LaidFalls      ProblemKind = "laid-falls"    // the same with nothing under it
	HeadPasses     ProblemKind = "head-passes"   // a head that goes through the hole at its shoulder, by both diameters
	PinUnlike      ProblemKind = "pin-unlike"    // a fit of one nominal size in one of another
	PinKeyless     ProblemKind = "pin-keyless"   // a keyway that meets none in what it lies in
	PressedLoose   ProblemKind = "pressed-loose" // by words, into a hole that it is never larger than
	PinTight       ProblemKind = "pin-tight"
	PinEarly       ProblemKind = "pin-early"
	WeldLonger     ProblemKind = "weld-longer"
	TravelStrikes  ProblemKind = "travel-strikes"
	TravelRuns     ProblemKind = "travel-runs"
	ShiftStrikes   ProblemKind = "shift-strikes" // of what is to be set along slots
	ShiftStops     ProblemKind = "shift-stops"   // of what can be
	NutHangs       ProblemKind = "nut-hangs"
	ThreadStops    ProblemKind = "thread-stops"
	ThreadJams     ProblemKind = "thread-jams"
	NutPitch       ProblemKind = "nut-pitch"
	WouldTip       ProblemKind = "would-tip"
	OnBead         ProblemKind = "on-bead"
	FlightBackward ProblemKind = "flight-backward"
	FlightGap      ProblemKind = "flight-gap"
	FlightShort    ProblemKind = "flight-short"
	FlightOver     ProblemKind = "flight-over"
	FlightApart    ProblemKind = "flight-apart"
	MotorBeside    ProblemKind = "motor-beside"
	CouplingShort  ProblemKind = "coupling-short"
)

// Because is a problem of a named thing that is the reason for another.
type Because struct {
	Name    string  `json:"name"`
	Problem Problem `json:"problem"`
}

// Unit says what the number of an Arg is.
type Unit string

// The units of numbers in problems. Text is what stands in the input or is the
// name of a thing, and is printed as it is.
const (
	Text     Unit = ""
	Mm       Unit = "mm"
	Diameter Unit = "diameter" // mm, printed with Ø
	Read     Unit = "read"     // mm, as callipers read it
	Newton   Unit = "N"        // printed in kilonewtons
	MPa      Unit = "MPa"
	Kg       Unit = "kg"
	Degree   Unit = "deg"
	Celsius  Unit = "°C"
	Number   Unit = "number"
	Preheat  Unit = "preheat" // °C from Value to High; nothing where High is 0
	Miss     Unit = "miss"    // mm by Value and degrees by High; what is 0 is not said
)

// Arg is a name, or a number with its unit.
type Arg struct {
	Unit  Unit    `json:"unit,omitempty"`
	Value float64 `json:"value,omitempty"`
	High  float64 `json:"high,omitempty"` // of a range
	Text  string  `json:"text,omitempty"`
}

// Named is an Arg of a name.
func Named(text string) Arg { return Arg{Text: text} }

// Of is an Arg of a number.
func Of(unit Unit, value float64) Arg { return Arg{Unit: unit, Value: value} }
