package words

import (
	"regexp"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// About is what is said of one kind of problem. Says and Fix hold {0}, {1} …
// for the problem's arguments.
type About struct {
	Kind         plan.ProblemKind
	Code         string // the review's short name, by which a job accepts it
	Severity     plan.Severity
	Measure      *Measure // nil for a choice, such as a class or a metal, of which an acceptance is for good
	Says, Fix    string
	Rule, Source string
}

// Measure is the number of a problem that an acceptance holds it to: which of its arguments,
// and whether more of it is worse.
type Measure struct {
	Arg  int
	More bool
}

func less(arg int) *Measure { return &Measure{arg, false} }
func more(arg int) *Measure { return &Measure{arg, true} }

// Unusable tells problems that are wrong as input, whatever the geometry: the
// job is refused for them. The others are stops of the review.
func Unusable(kind plan.ProblemKind) bool {
	switch kind {
	case plan.NoClockAngle, plan.CannotJoin, plan.NoBolt, plan.TappedWithNut, plan.FitUnusable, plan.PressLength,
		plan.PressUnworkable, plan.WeldUnworkable, plan.NoTorque, plan.NoBoltChosen, plan.NoRoomKnown:
		return true
	}
	return false
}

const (
	practice   = NoSource
	byGeometry = "by geometry"
	byNumbers  = "see the numbers on the sequence sheet"
)

// Problems is what is said of every kind, in the order of package plan.
var Problems = []About{
	{plan.NoClockAngle, "in-line", plan.StopSeverity, nil, "{0} has no clock angle", "top, a hole group or a radial feature", "only features with a clock angle can line up", byGeometry},
	{plan.NotPlaced, "in-line", plan.StopSeverity, nil, "{0} is not placed by any joint", "a joint that puts it on the axis of the others", "what must line up lies at one clock angle of the assembly", byGeometry},
	{plan.OutOfLine, "in-line", plan.StopSeverity, nil, "these do not line up: {0}", "move a feature: no turn of the parts of this joint lines them up", "what must line up lies at one clock angle of the assembly", byGeometry},
	{plan.OutOfLineTurn, "in-line", plan.StopSeverity, nil, "these do not line up: {0}", "rotate: {1} lines them up", "what must line up lies at one clock angle of the assembly", byGeometry},
	{plan.NoFaceThere, "place", plan.StopSeverity, nil, "{0} has no face there to stand against", "level: front-with-front, or faces that touch", "a part stands against a face", byGeometry},
	{plan.PlaceIdle, "place", plan.StopSeverity, nil, "the place of {0} is not looked at: it is bolted by holes in a side or a flange", "delete place, the holes say where it stands", "what is given counts", byGeometry},
	{plan.TurnIdle, "place", plan.StopSeverity, nil, "rotate is not looked at: the cut end of {0} says where it stands on {1}", "delete rotate; a copy that stands elsewhere is a part with an end of its own", "what is given counts", byGeometry},
	{plan.TurnedRound, "place", plan.StopSeverity, nil, "other joints turn {0} the other way round", "the same faces here and there", "a part has one place", byGeometry},
	{plan.PlacedElsewhere, "place", plan.StopSeverity, nil, "other joints leave {0} {1} away from where this joint wants it", "lengths of the parts between that agree", "a part has one place", byGeometry},
	{plan.TurnedElsewhere, "place", plan.StopSeverity, nil, "other joints turn {0} by {1} and not {2}", "rotate: {3}", "a part has one place", byGeometry},
	{plan.WaitForEachOther, "order", plan.StopSeverity, nil, "the joints wait for each other: {0}", "a before or after that breaks the ring, or a drawing that lets the tool in", "every joint can be reached, by tool or torch, when its turn comes", byGeometry},
	{plan.CannotJoin, "joint", plan.StopSeverity, nil, "{0} cannot be joined so", "{1}", "the joint as drawn has a flaw", byGeometry},
	{plan.NoBolt, "joint", plan.StopSeverity, nil, "no bolt {0}", "{1}", "a bolt has a size that is made", byGeometry},
	{plan.OtherThread, "pattern", plan.StopSeverity, nil, "the bolt is {0} and {1} is tapped {2}", "the same thread", "bolt and tapped hole have one thread", byGeometry},
	{plan.TappedWithNut, "pattern", plan.StopSeverity, nil, "{0} is tapped and needs no nut", "{1}", "a bolt ends in a thread or a nut", byGeometry},
	{plan.NoThreadNoNut, "pattern", plan.StopSeverity, nil, "{0} has no thread and the joint no nuts", "nut: yes, or a tapped group", "a bolt ends in a thread or a nut", byGeometry},
	{plan.HoleTooSmall, "pattern", plan.StopSeverity, nil, "{0} has {3} of {1}, too small for {2}", "{3} for that bolt", "the hole lets the bolt through", "ISO 273, ASME B18.2.8"},
	{plan.NoMetalToClamp, "pattern", plan.StopSeverity, nil, "{0} has no metal for the bolt to clamp on that face", "face: the two faces that meet, such as back-on-front", "a bolt clamps metal", byGeometry},
	{plan.OtherCount, "pattern", plan.StopSeverity, nil, "{0} has {1} and {2} has {3}", "the same count on the same circle", "holes that take one bolt are as many on both parts", byGeometry},
	{plan.StackMisses, "pattern", plan.StopSeverity, nil, "the {2} of {0} do not meet those of {1}", "the same pattern", "holes that take one bolt lie on one line", byGeometry},
	{plan.HolesMiss, "pattern", plan.StopSeverity, nil, "the {4} of {0} miss those of {1} by up to {2}; the play allows {3}", "the same circle and angles; seen from the other face a pattern is mirrored", "holes that take one bolt lie on one line, within their play", byGeometry},
	{plan.HolesMissCircle, "pattern", plan.StopSeverity, nil, "the {4} of {0} miss those of {1} by up to {2}; the play allows {3}", "one pitch circle: {5} here and {6} there", "holes that take one bolt lie on one line, within their play", byGeometry},
	{plan.HolesMissApart, "pattern", plan.StopSeverity, nil, "the {4} of {0} are {2} apart where those of {1} are {5}; the play allows {3}", "one spacing on both", "holes that take one bolt lie on one line, within their play", byGeometry},
	{plan.HolesMissTurn, "pattern", plan.StopSeverity, nil, "the {4} of {0} miss those of {1} by up to {2}; the play allows {3}", "rotate: {5} makes them meet", "holes that take one bolt lie on one line, within their play", byGeometry},
	{plan.NotThrough, "pattern", plan.StopSeverity, nil, "{0} are {1} deep and do not go through {2}", "depth: through", "a bolt goes through what it clamps", byGeometry},
	{plan.ShiftShort, "slots", plan.StopSeverity, nil, "{0} can be shifted {1} each way along its slots, and is to be set by {2}", "longer slots, or a place that has the bolts in their middle", "a part goes as far as its slots let the bolts go", byGeometry},
	{plan.SlotUnbridged, "slots", plan.StopSeverity, nil, "the {0}, with what is under them {4} wide, bear on {2} beside the slots of {1}, {3} wide, where a bolt lies on the other side", "{5}", "what lies over a slot bears on both its sides, by a tenth of the bolt at least", practice},
	{plan.SlotBare, "slots", plan.CheckSeverity, nil, "the {0} lie on the slots of {1} without a washer", "washer: yes", "a washer lies over a slot", "EN 1090-2 for long slots, from memory"},
	{plan.OpensElsewhere, "pattern", plan.StopSeverity, nil, "{0} open on the {1} and the joint is on the {2}", "face: the faces that meet, with the tapped one last", "a tapped hole opens where the bolt comes from", byGeometry},
	{plan.BoreSinkWrongSide, "counterbore", plan.CheckSeverity, nil, "the counterbores or countersinks of {0} are on the face of the joint, and the heads on the other", "the other face", "a counterbore or a countersink takes the head", byGeometry},
	{plan.Countersunk, "counterbore", plan.CheckSeverity, nil, "{0} are countersunk, and a {1} head does not seat in them", "head: countersunk, or counterbores", "a countersink takes a countersunk head", byGeometry},
	{plan.NoBoltChosen, "joint", plan.StopSeverity, nil, "no bolt can be chosen", "{0}", "a bolt has a size that is made", byGeometry},
	{plan.NoTorque, "joint", plan.StopSeverity, nil, "no torque can be given", "{0}", "a bolt has a strength class that is known", byGeometry},
	{"thin-part", "engagement", plan.CheckSeverity, less(0), "the part is {0} thick, the thread needs {1} in {2}", "a deeper thread, a smaller bolt or a nut", "the bolt breaks before its thread strips", practice},
	{"short-thread", "engagement", plan.CheckSeverity, less(0), "full thread {0} is short: {1} in {3} and one pitch to spare need {2}", "a deeper thread, a smaller bolt or a nut", "the bolt breaks before its thread strips", practice},
	{"nut-not-filled", "engagement", plan.CheckSeverity, nil, "only {0} of the {1} nut is filled", "a longer bolt", "the bolt breaks before its thread strips", practice},
	{"short-engagement", "engagement", plan.CheckSeverity, less(0), "{0} of thread engaged, {1} needed", "a longer bolt, or thread of a made stud, or a deeper thread in the hole", "the bolt breaks before its thread strips", practice},
	{"short-protrusion", "bolt-length", plan.CheckSeverity, less(0), "{0} past the nut, two threads are {1}", "a longer bolt", "two threads stand past a nut", practice},
	{"long-past-nut", "bolt-length", plan.CheckSeverity, more(0), "{0} past the nut, more than one diameter", "a shorter bolt", "a bolt does not stick out more than its diameter", practice},
	{"long-past-hole", "bolt-length", plan.CheckSeverity, more(0), "{0} past the hole, more than one diameter", "a shorter bolt", "a bolt does not stick out more than its diameter", practice},
	{"stands-out", "bolt-length", plan.CheckSeverity, more(0), "{0} past the hole, and its part stands on the floor there", "a thicker plate, or depth: so that the thread ends inside", "nothing stands out of what stands on the floor", byGeometry},
	{plan.TipUnder, "bolt-length", plan.CheckSeverity, more(1), "{2}: its screws come out {1} under {0}, which stands on the floor", "a thicker plate, or depth: so that the thread ends inside", "nothing stands out of what stands on the floor", byGeometry},
	{"bottoms-out", "bolt-length", plan.CheckSeverity, more(0), "the screw is {0} longer than the thread in the hole: it jams before it clamps", "a shorter bolt or a deeper thread", "a bolt reaches its thread and does not bottom", practice},
	{"near-bottom", "bolt-length", plan.CheckSeverity, less(0), "{0} of thread left below the screw, less than one pitch", "a shorter bolt or a deeper thread", "a bolt reaches its thread and does not bottom", practice},
	{"shank-jams", "bolt-length", plan.CheckSeverity, more(0), "the plain shank is {0} long and meets the thread before the {1} grip clamps", "a bolt threaded to the head", "a bolt reaches its thread and does not bottom", practice},
	{"wall-near", "head", plan.CheckSeverity, less(0), "{2}: the wall is {0} from the hole centre, {3} needs {1}", "socket heads, the head on the other side, or move the holes", "head, nut and spanner have room", practice},
	{"neighbour-near", "head", plan.CheckSeverity, less(0), "{2}: the next bolt is {0} away, {3} needs {1}", "socket heads, the head on the other side, or move the holes", "head, nut and spanner have room", practice},
	{plan.NoStockLength, "bolt-length", plan.CheckSeverity, nil, "no stock length of {0} fits: {because}", "change the grip, the thread depth or the bolt", "a bolt reaches its thread and does not bottom", practice},
	{plan.StudThread, "bolt-length", plan.StopSeverity, nil, "the end {0} of {1} is not {2}", "the thread of the joint on both ends", "a stud takes the nuts of its joint", byGeometry},
	{plan.StudOff, "stud", plan.CheckSeverity, more(1), "the shoulder {0} stands {1} off {2}: the thread before it runs out there", "an undercut at the end of the thread", "a stud is tightened on its shoulder", byGeometry},
	{plan.StudShut, "stud", plan.CheckSeverity, nil, "{0} does not come between {1} and {2}, which {3} has brought together: it is thicker than their holes", "before: {3}", "a stud with shoulders is put in before the second of its parts comes", byGeometry},
	{plan.StudShort, "bolt-length", plan.StopSeverity, nil, "the thread {0} of {1} is {2} too short", "a longer thread", "the thread reaches through what it clamps", byGeometry},
	{plan.NoCountersink, "counterbore", plan.StopSeverity, nil, "the heads are countersunk, and {0} have no countersink", "countersink: {1} and {2}", "a countersunk head lies in its cone", "ISO 10642, ASME B18.3"},
	{plan.SunkProud, "counterbore", plan.CheckSeverity, more(1), "countersunk heads may stand {1} above {0}: the cones are {2} wide, a head up to {3}", "countersink: diameter {3}", "a countersunk head lies in its cone", "ISO 10642, ASME B18.3"},
	{plan.SocketGrade, "bolt-class", plan.CheckSeverity, nil, "{0} head screws are not made in {1}", "for a socket head A574 (alloy steel) or A2-70 (stainless), for a countersunk one F835 or A2-70, for hex grade 2, 5 or 8", "inch socket head screws are of ASTM A574, countersunk ones of F835, or of stainless steel; the grades of SAE J429 are hexagon", "ASTM A574, F835; SAE J429"},
	{plan.CounterboreTight, "counterbore", plan.CheckSeverity, less(0), "the counterbore {0} is tight for the head {1}", "open the counterbore", "a counterbore is wider than the head", byGeometry},
	{plan.NoRoomKnown, "joint", plan.StopSeverity, nil, "the room for the heads cannot be worked out", "{0}", "head, nut and spanner have room", byGeometry},
	{plan.HeadsCovered, "head", plan.CheckSeverity, less(3), "{0} need {1} and {2} leaves {3}", "socket heads, the head on the other side, or move the holes", "head, nut and spanner have room", practice},
	{plan.BearingBore, "seat", plan.StopSeverity, nil, "the bearing's bore is {0} and {1} is {2}", "the bearing that fits the seat", "a bearing fits its seat", byGeometry},
	{plan.BearingOutside, "seat", plan.StopSeverity, nil, "the bearing's outside is {0} and {1} is {2}", "the bearing that fits the seat", "a bearing fits its seat", byGeometry},
	{plan.CupNotHeld, "shoulder", plan.StopSeverity, nil, "no shoulder, or one at either end, holds the cup in {0}", "a shoulder at one end of the seat", "the back of a cup stands on a shoulder", byGeometry},
	{plan.RingNowhere, "shoulder", plan.CheckSeverity, nil, "nothing says where along {0} the bearing in {1} lies: no shoulder of it, place or level", "place: {on, with, at, top, gap}, level, or a shoulder", "a bearing lies against a shoulder, or a joint says where", byGeometry},
	{plan.BallsClamped, "shoulder", plan.CheckSeverity, less(3), "the bearings {0} and {1} may press on one another: {2} has {3} to {4} of play along between what holds it at one and at the other", "one bearing that holds the shaft both ways and one that floats, or shoulders and rings that leave play between them at all limits", "of the bearings of a shaft one alone holds it along, or all leave it play: lengths differ, and a warm shaft grows", byGeometry},
	{plan.RingNoRoom, "shoulder", plan.CheckSeverity, less(2), "the retaining ring in {0} of {1} has {2} of room beside the bearing or bush at the least, {3} at the most", "the groove further out, or closer limits for the lengths", "a ring goes into its groove beside what it keeps at all limits", byGeometry},
	{plan.BallLeft, "shoulder", plan.CheckSeverity, nil, "nothing keeps {0} from leaving {1} by {2}: no shoulder, retaining ring or cover stands against the rings of its bearings that way", "a retaining ring, a cover or a shoulder there", "a bearing keeps a shaft along where both its rings are held", byGeometry},
	{plan.RingShoulderLow, "shoulder", plan.CheckSeverity, more(3), "the shoulder beside {0} is {1} at its edge, {3} short of {2}, from which on it holds the ring", "a higher shoulder, or a smaller chamfer on it", "a shoulder reaches past the chamfer of the ring", "DIN 5418"},
	{plan.RingShoulderHigh, "shoulder", plan.CheckSeverity, more(3), "the shoulder beside {0} is {1}, {3} past the ring, which is high up to {2}: it may touch the other ring, the cage or a seal, and no puller gets behind the ring", "a lower shoulder", "a shoulder is no higher than its ring", practice},
	{plan.CupShoulderLow, "shoulder", plan.CheckSeverity, more(1), "the shoulder behind the cup in {0} has a bore of {1}: over {2} it hardly holds the cup", "a smaller bore behind the cup, or the maker's Da", "a shoulder takes the back of the cup over most of its height", practice},
	{plan.CupShoulderHigh, "shoulder", plan.CheckSeverity, less(1), "the shoulder behind the cup in {0} has a bore of {1}: under {2} the cage may touch, and no tool pushes the cup out through it", "a larger bore behind the cup, or the maker's Da", "a shoulder leaves room behind the cup", practice},
	{plan.CupCoverHigh, "shoulder", plan.CheckSeverity, less(2), "the spigot of {0} reaches in to {2} behind the cup in {1}: under {3} the cage may touch it", "a recess of that bore in the spigot, or the maker's Da", "a cover leaves room behind the cup", practice},
	{plan.ConeNotHeld, "shoulder", plan.StopSeverity, nil, "nothing holds the large end of the cone on {0}: neither a shoulder nor the thread of a nut stands at its {1} end", "a shoulder or a nut there, or the cup the other way round", "the axial load leaves the cone at its large end", byGeometry},
	{plan.ConeShoulderLow, "shoulder", plan.CheckSeverity, less(1), "the shoulder at the large end of the cone on {0} reaches up to {1}, under the {2} it needs", "a higher shoulder, or the maker's db", "a shoulder takes the large end over most of its height", practice},
	{plan.CageTouches, "shoulder", plan.CheckSeverity, more(2), "before the small end of the cone on {0}, {1} is {2}: over {3} the cage may touch it", "a smaller diameter there, or the maker's da", "nothing that stands still on the cone's side reaches the cage", practice},
	{plan.ConeTouches, "shoulder", plan.StopSeverity, nil, "the small end of the cone on {0} reaches its shoulder {1} by {2} before the bearing has its play", "a longer seat, or another spacing of the shoulders", "the nut moves the cone until the play is right", byGeometry},
	{plan.NutStops, "shoulder", plan.StopSeverity, nil, "the nut stops at the end of {0} with {1} of the seat standing out of the cone: it cannot push the cone", "a shorter seat, under the width of the cone", "a nut that adjusts meets the cone first", byGeometry},
	{plan.NutShort, "nut-short", plan.CheckSeverity, more(1), "the nut on {0} stops {1} short of the cone: its thread runs out beside the seat", "undercut: DIN 76-A on {0}, or a recess in the nut or a spacer under it", "the nut reaches the ring it holds", "DIN 76-1"},
	{plan.NutFew, "nut-short", plan.CheckSeverity, less(0), "{0} of full thread are left to {1} on {2}, wanted {3}", "a longer thread and nut, or a narrower undercut", "a nut that sets a bearing has five full turns", practice},
	{plan.SlotShort, "slot-short", plan.CheckSeverity, more(1), "{0} has its full width only {1} short of the cone: the tongue of the washer does not go in, or holds the washer off", "{0} longer by as much towards the cone; its round end may run under the cone", "a washer lies against the cone with its tongue in the slot", byGeometry},
	{plan.SeatShort, "shoulder", plan.CheckSeverity, less(1), "the seat {0} is {1} long, and the ring needs {2}", "a longer seat", "a ring stands on its seat over its width", practice},
	{plan.Tandem, "shoulder", plan.StopSeverity, nil, "both bearings take the axial load one way only: the backs of both cups look to the {0}", "a shoulder on the other side of one cup", "a pair takes load both ways: back to back, or face to face", byGeometry},
	{plan.SeatWithoutFit, "seat", plan.CheckSeverity, nil, "{0} has no fit for the bearing: {1} ({2})", "give the seat one of the advised classes", "a bearing seat has a fit for its load", "see the advice on the sequence sheet"},
	{plan.SeatNotAdvised, "seat", plan.CheckSeverity, nil, "{0} is {1}; advised {2} ({3})", "one of the advised classes, or the maker's own", "a bearing seat has a fit for its load", "see the advice on the sequence sheet"},
	{plan.PressSizes, "fit-side", plan.StopSeverity, nil, "{0} is {1} and {2} is {3}", "a shaft and a bore of one size", "a press fit has one nominal size", "ISO 286-1"},
	{plan.FitUnusable, "fit-side", plan.StopSeverity, nil, "the fit {0} cannot be used for {1}", "{2}", "a fit has limits at its size", "ISO 286-1"},
	{plan.NoLimits, "fit-side", plan.StopSeverity, nil, "{0} has no limits, so the fit is not known", "{1}", "a fit needs limits on both sides", "ISO 286-1"},
	{plan.NoStrength, "joint", plan.StopSeverity, nil, "no strength is known for the material of {0}", "{1}", "a press fit is judged by the strength of its parts", byGeometry},
	{plan.NoSectionStrength, "joint", plan.StopSeverity, nil, "no strength is known for {0} at a section of {1}: the table of {2} ends at {3}", "the thickness of {0} is wrong, or another material", "a press fit is judged by the strength of its parts", byGeometry},
	{plan.ClearanceFit, "fit-side", plan.StopSeverity, nil, "this is a clearance fit: the tightest pair has {0} play", "a fit such as H7/p6, or bolts instead of a press", "a press fit has interference at all limits", "ISO 286-1"},
	{plan.MayBeLoose, "fit-side", plan.CheckSeverity, more(0), "the joint may be loose: at the loosest limits there is {0} play", "a fit such as H7/p6 or H7/r6, or limits that leave interference throughout", "a press fit has interference at all limits", "ISO 286-1"},
	{plan.PressLength, "joint", plan.StopSeverity, nil, "the engaged length is longer than the shorter step, {0}", "at most {0}", "the parts overlap over the engaged length", byGeometry},
	{plan.PressUnworkable, "joint", plan.StopSeverity, nil, "the press fit cannot be worked out", "{0}", "the joint as drawn has a flaw", byGeometry},
	{plan.BushYields, "yield", plan.CheckSeverity, less(0), "at the tightest limits {1} yields, safety {0} at {2}: it grips less than worked out, and its bore closes more and not evenly", "a looser fit, a thicker or stronger {1}; or leave its bore to be finished once it is in", "von Mises stress at the tightest limits under yield", "Lamé equations; " + byNumbers},
	{plan.PressYields, "yield", plan.StopSeverity, nil, "at the tightest limits a part yields: safety hub {0}, shaft {1} at {2}", "a looser fit, a thicker hub or a stronger material", "von Mises stress at the tightest limits under yield", "Lamé equations; " + byNumbers},
	{plan.SealShut, "order", plan.StopSeverity, nil, "{0} in {1} goes over neither end of its shaft: {2} and {3} are larger", "the bore of the seal in a cover, or what is larger put on after it", "a closed seal comes over an end of its shaft", byGeometry},
	{plan.LeadInBehind, "lead-in", plan.CheckSeverity, nil, "{0} goes into {1} with its {2} first, and no lead-in is there: the chamfer is at the other end", "the chamfer at {3}, or the part the other way round", "a pressed part has a chamfer to start on", byGeometry},
	{plan.NoLeadIn, "lead-in", plan.CheckSeverity, nil, "neither {0} nor {1} has a lead-in chamfer: add {2} at {3} or the parts shave", "add the chamfer to one of the parts", "a pressed part has a chamfer to start on", practice},
	{plan.PressTooWeak, "press-force", plan.StopSeverity, nil, "the force may reach {0} and the shop's press gives {1}", "heat the hub to {2} where it stands that, or take a looser fit", "the force at the tightest limits under that of the press", "Coulomb friction on the pressure; " + byNumbers},
	{plan.PressFramed, "press-reach", plan.CheckSeverity, more(2), "{0} stands in {1} by then, {2} across: it goes into no shop press, and no screw draws {3} home", "method: cool or heat, so that it goes together by hand; or this press before what makes it so large", "a press, or a screw through both, reaches what is pressed", practice},
	{plan.CupFramed, "press-reach", plan.CheckSeverity, more(2), "{0} stands in {1} by then, {2} across: no shop press takes that with the cup of {3} in", "this bearing before what makes it so large; else cups cold enough to slip in by hand, or drawn in by a screw between two plates, and accept it", "a press, or a screw through both, reaches what is pressed", practice},
	{plan.GasketIn, "gasket", plan.CheckSeverity, more(1), "{0} reaches {1} into the opening that it seals round, where nothing bears it", "a bore of {2} or more", "a gasket lies on metal on both sides as far as its bore", practice},
	{plan.PinsLong, "pins", plan.CheckSeverity, more(1), "the pins {0} are longer than the metal that they are driven into, and stand {1} out of it", "shorter pins, or thicker parts", "a dowel pin ends inside both faces", practice},
	{plan.BarShort, "bar-end", plan.CheckSeverity, more(2), "the {1} end of {0} stops {2} before {3}, which it faces, and nothing joins them", "a length of {4} and a weld there, or accept it for an end that stands free", "a bar reaches what its end faces", practice},
	{plan.PressTooHot, "heat", plan.StopSeverity, nil, "{0} would have to be heated to {1}, and {2} stands {3}", "less clearance, a cold shaft as well, or a press", "no metal is heated past what it stands", "DIN 7190 and common practice, see the material table"},
	{plan.PressTooCold, "cold", plan.StopSeverity, nil, "{0} would have to be cooled to {1}, and {2} is the coldest for {3}", "heat the other part, or both", "nothing in a shop is colder than liquid nitrogen", "boiling point"},
	{plan.PressNoContact, "joint", plan.StopSeverity, nil, "{0} and {1} do not touch anywhere all round", "a longer seat, or a smaller chamfer", "a press fit has a length in contact", byGeometry},
	{plan.PressTooDeep, "joint", plan.StopSeverity, nil, "{0} and {1} do not touch anywhere all round, with one of them {2} below", "a smaller below, a longer seat, or a smaller chamfer", "a press fit has a length in contact", byGeometry},
	{plan.RegisterBottoms, "register", plan.StopSeverity, nil, "{0}: the spigot is {1} longer than its register, and meets the step behind it before the faces meet", "a deeper register, or a spigot shorter by more than {1}", "a spigot ends before the bottom of its register", byGeometry},
	{plan.RegisterBinds, "register", plan.CheckSeverity, more(1), "{0} may bind by {1}: a register needs clearance, or a press joint", "{2}", "a spigot goes into its register freely at all limits", "ISO 286-1"},
	{plan.RegisterLarger, "register", plan.StopSeverity, nil, "{1} of {0} does not go into {3} of {2}: it is drawn larger, by up to {4}", "{5}", "a spigot goes into its register freely at all limits", "ISO 286-1"},
	{plan.RegisterLoose, "register", plan.CheckSeverity, more(1), "{0} may have {1} of play: that centres nothing", "a fit such as H7/f7, or dowels", "a register centres its joint", practice},
	{plan.RegisterOff, "register", plan.CheckSeverity, more(3), "{0}: {1} in {2} centres nothing", "the same nominal size on both parts", "a spigot has the size of its register", byGeometry},
	{plan.RegisterTube, "register", plan.CheckSeverity, more(1), "{0} may bind: the tube is as bought, and its bore up to {1} smaller than drawn", "fit: {measured: [least, most]}, which has it turned to the tube's bore as measured; record and drill jig follow it", "a spigot goes into its register freely at all limits", "EN 10210-2, EN 10219-2"},
	{plan.OneBolt, "pattern", plan.CheckSeverity, nil, "one bolt holds {0}, which turns about it on {1}", "a second bolt or a dowel; where a face or an edge keeps it from turning, accept it and say which", "what is bolted does not turn", practice},
	{plan.PlayUsed, "pattern", plan.CheckSeverity, more(1), "the {4} of {0} lie {1} off those of {2}, and the play is {3}: nothing is left for the drill", "the same pattern on both parts", "the play of bolt holes is for making, not for drawing", practice},
	{plan.StudsMissing, "pattern", plan.StopSeverity, nil, "{0} holes and {1} of {2}", "quantity: {0}", "each hole has its stud", byGeometry},
	{plan.AgainstTheTrade, "order", plan.CheckSeverity, nil, "the job puts this before {0}, though {1}", "leave the order to the rules, or say in the note how it is done", "an order that the job gives is meant so", practice},
	{plan.WeldLate, "order", plan.CheckSeverity, nil, "it comes after {0} bolts something to what is welded here: heat pulls the joint face", "the weld first, or say in the note how it is done", "an order that the job gives is meant so", practice},
	{plan.SeatLimits, "seat", plan.CheckSeverity, nil, "{0} is {1} to {2}; the advised classes {3} lie between {4} and {5}", "limits of an advised class, or the maker's own", "a bearing seat has a fit for its load", "see the advice on the sequence sheet"},
	{plan.SeatTightness, "seat", plan.CheckSeverity, more(3), "{0} is {1} to {2}: {3} of the bearing's {4} apart", "limits from the bearing maker's table", "a seat lies within a few thousandths of its ring", practice},
	{plan.BearingSize, "seat", plan.StopSeverity, nil, "the bearing has {0} and {1} is drawn {2}", "the nominal size of the bearing", "a bearing fits its seat", byGeometry},
	{plan.WeldUnworkable, "joint", plan.StopSeverity, nil, "the weld cannot be worked out", "{0}", "the joint as drawn has a flaw", byGeometry},
	{plan.WeldNoLength, "joint", plan.StopSeverity, nil, "the weld has no length: it runs round no circle, and no place gives its parts a corner", "a place where they touch, or its length", "a weld has a length", byGeometry},
	{plan.FilletSmall, "weld-size", plan.CheckSeverity, less(0), "fillet leg {0} is under the least of {1} (AWS D1.1:2020 Table 7.7)", "a larger leg", "a fillet is large enough not to crack", "AWS D1.1:2020 Table 7.7"},
	{plan.FilletGap, "weld-gap", plan.CheckSeverity, more(0), "a gap of up to {0}{2} is left under the fillet, which bridges {1}", "sizes that lie closer, rolled instead of faceted, or a larger leg", "what is welded touches, or leaves a gap that one run bridges", "ISO 5817 no. 617, level C"},
	{plan.SquareTooThick, "weld-prep", plan.CheckSeverity, more(0), "a square butt does not go through {0}: bevel the edge", "bevel the edge", "a square edge is for thin metal", "ISO 9692-1"},
	{plan.ButtSteps, "weld-gap", plan.CheckSeverity, more(0), "the rounds that are butted differ: one stands {0} inside the other, where {1} may", "ends of one diameter, or a fillet where one goes over the other", "butted edges meet", "ISO 5817 no. 5072, level C, from memory"},
	{plan.MouthPast, "weld-gap", plan.CheckSeverity, more(2), "the mouth of {0} stands past the flat of {1}: at the worst {2} of air is left under its rim", "a mouth that lies on the flat all round, or a wider flat", "what is welded touches, or leaves a gap that one run bridges", byGeometry},
	{plan.NoWeldChamfer, "weld-prep", plan.CheckSeverity, nil, "no chamfer for the weld is drawn on {0} or {1}", "add the chamfer with for: weld", "a groove weld has a prepared edge", "ISO 9692-1"},
	{plan.FloatEarly, "order", plan.CheckSeverity, nil, "the end float of {0} is set here, and {1} and {2} are only fastened to one another by {3}, which moves it", "this joint after: {3}, or the last of those that hold the two", "what holds the cups apart is fastened before their play is set", practice},
	{plan.FloatUnset, "bearing", plan.CheckSeverity, nil, "an end float of {0} to {1} is asked for, and nothing sets it: no nut is on {2}, and both cups stand on shoulders of {3}", "the thread of a nut on {2}, or no end-float", "the play of a pair of bearings is set by a nut", practice},
	{plan.GrooveLacking, "weld-prep", plan.StopSeverity, nil, "{0} and {1} go round one another without a gap, and {2}", "type: bevel, with a chamfer for: weld at the bore's edge on each side that is welded; or type: fillet", "a groove weld has a prepared edge", "ISO 9692-1"},
	{plan.SquareUpStock, "allowance", plan.StopSeverity, nil, "square-up asks for {0} on a face of {1}, and its plate is {2} over its thickness", "a thicker plate with thickness: as it is to be, or no square-up", "what is faced off is there", byGeometry},
	{plan.SquareUpNowhere, "allowance", plan.CheckSeverity, nil, "square-up asks for {0}, and no step faces it: no plate has its last weld here", "square-up at the last weld on the plate, or none", "what is left on a part is taken off", byGeometry},
	{plan.FilletOnChamfer, "weld-prep", plan.CheckSeverity, nil, "the fillet lies over the chamfer {0} that is drawn for a weld: the leg has no edge to stand on, and the throat is short by the groove", "type: bevel, or no chamfer with for: weld", "a fillet stands on two square faces", "ISO 2553"},
	{plan.WeldHardens, "weld-metal", plan.CheckSeverity, nil, "{0} hardens beside the weld and is not readily weldable: {1}slow cooling and a proven procedure are needed, or join otherwise", "preheat by a procedure, another material, or bolts", "both metals take an ordinary weld", practice},
	{plan.WeldIron, "weld-metal", plan.CheckSeverity, nil, "{0} is not readily weldable: {1}nickel filler and a proven procedure are needed, or join otherwise", "preheat by a procedure, another material, or bolts", "both metals take an ordinary weld", practice},
	{plan.WeldOwnWay, "weld-metal", plan.CheckSeverity, nil, "{0} is not readily weldable like ordinary steel: it takes a filler and procedure of its own", "a procedure for this metal, another material, or bolts", "both metals take an ordinary weld", practice},
	{plan.WeldCracks, "weld-metal", plan.StopSeverity, nil, "{0} is not readily weldable: it cracks whatever is done; join otherwise", "another material, bolts or brazing", "neither metal cracks when it is welded", practice},
	{plan.BreaksOut, "breaks-out", plan.CheckSeverity, more(4), "{0} runs across the step from {1} to {2}, {3} from the front face: the tool is half in the air there", "move it {4} along the axis", "what is drilled or milled from outside comes out on one diameter", byGeometry},
	{plan.UndercutOver, "undercut-over", plan.CheckSeverity, more(3), "the undercut of {0} goes {1} up its shoulder, which is {2} high", "form E, which leaves the shoulder as it is, or a shoulder {3} higher", "an undercut of form F ends on its shoulder", "DIN 509"},
	{plan.JawsShort, "jaws", plan.CheckSeverity, less(0), "only {0} of the stock is left for the jaws, and {1} sticks out", "stock {2} long along the axis", "jaws hold what is turned in them by {3 mm|1/8 in} at least", practice},
	{plan.JawsThin, "jaws", plan.CheckSeverity, less(0), "turned round, it is held on {2} alone: {0} for the jaws, and {1} sticks out", "a longer {2}, or another step in front of it that the jaws can hold", "jaws hold what is turned in them by {3 mm|1/8 in} at least", practice},
	{plan.StockShort, "allowance", plan.CheckSeverity, less(1), "{0} are to be turned in one setting, and the stock is too short to stand whole out of the jaws: {1} long", "length: {2}, to be parted off, or require: [{is: run-out}] in place of one-setting", "what is turned in one setting stands free of the jaws", practice},
	{plan.SeatsUnproved, "coaxial", plan.CheckSeverity, nil, "{0} and {1} are turned in two settings, and nothing measures that they run true to one another", "require: [{is: run-out, within: {2}, of: {0}, to: {1}}], or one-setting: [{1}, {0}] where one face reaches both", "the seats of a shaft's bearings lie on one axis", practice},
	{plan.SlideSizes, "seat", plan.StopSeverity, nil, "{0} is {1} and {2} is {3}: no hub slides on that", "one diameter for both, with a fit such as H8/h7", "a hub slides on a seat of its own size", byGeometry},
	{plan.SlideTapers, "seat", plan.StopSeverity, nil, "{0} and {1} are not one cone: they bear at one end alone, or not at all", "one taper for both, its small end to what keeps the hub, or to where it is pressed on from", "a hub bears on its cone over its whole length", byGeometry},
	{plan.SlideTaperStop, "shoulder", plan.CheckSeverity, less(2), "{0} meets {1} before it sits on its cone, or nearly: {2} is left between them", "a smaller bore: for each millimetre that it is to stand off, one part in the taper's 1:x", "a hub on a cone stays off the shoulder, by a millimetre (0.04 in) at least", practice},
	{plan.SlideTaperLimits, "shoulder", plan.CheckSeverity, more(3), "{0} may meet {1} before it sits on its cone: {2} is left between them as drawn, and the limits of the two cones let it come {3} nearer", "limits for both cones, such as fit: {plus-minus: 0.02 mm}, or a smaller bore", "on a cone of 1:x a hub moves x times what a diameter is off", byGeometry},
	{plan.SlideBinds, "fit-side", plan.StopSeverity, more(2), "{0} does not slide on {1}: the tightest pair lacks {2}", "a clearance fit such as H8/h7, or press instead of slide", "a hub that slides has clearance at all limits", "ISO 286-1"},
	{plan.SeatAside, "off-seat", plan.StopSeverity, more(2), "{0} does not lie on {1}: it is {2} off its axis, as other joints place the two", "the joints and holes that place both on one axis", "a hub lies on its seat", byGeometry},
	{plan.SeatMissed, "off-seat", plan.StopSeverity, more(2), "{0} lies beside {1}, not on it: {2} along the axis between the two", "level, below, face or place as the hub is to stand on its seat: below is how far the inner part's end lies under the outer part's face", "a hub lies on its seat", byGeometry},
	{plan.SlidePlay, "fit-side", plan.CheckSeverity, more(3), "{0} has {2} to {3} of play on {1}, and a key turns it", "H7 on h6 or k6, H8 on h7 where it is to come off", "what is keyed sits without play, or the key works loose", practice},
	{plan.SlideNoKey, "keyway-mate", plan.CheckSeverity, nil, "no keyway in {0} and {1}: nothing turns the hub", "a keyway in both, or press instead of slide", "a hub that slides is turned by a key", byGeometry},
	{plan.SlideClosed, "keyway-mate", plan.StopSeverity, nil, "the keyway of {0} is closed at the {1}: it does not pass over the key", "length: through, or open the keyway at that end", "a hub passes over the key of its shaft", byGeometry},
	{plan.SlideKeyOff, "keyway-mate", plan.CheckSeverity, less(0), "only {0} of the key of {1} lies in {2}, of {3}", "a key that lies in the hub where the shoulder holds it", "a key bears over its whole length", byGeometry},
	{plan.SlideNoStop, "shoulder", plan.StopSeverity, nil, "no shoulder stops {0} on {1} at the {2}", "a larger step there", "a hub goes up to a shoulder", byGeometry},
	{plan.SlideNotHeld, "shoulder", plan.StopSeverity, nil, "no joint bolts a plate into {0}: nothing keeps the hub", "the joint that bolts the plate, or another kept-by", "a hub is kept on its shaft", byGeometry},
	{plan.LengthsEat, "chain", plan.CheckSeverity, less(3), "{0} is {1} as drawn, and {2} is wanted; inside the limits of the lengths it comes from it may be {3}", "length-limits on {4}, or lengths that make it more", "what a joint relies on is there at all limits of the lengths", "worst case of the lengths, ISO 2768-1 where they have no limits of their own"},
	{plan.ConeEats, "chain", plan.CheckSeverity, less(3), "{0} is {1} as drawn, and {2} is wanted; inside the limits of the diameters and lengths it comes from it may be {3}", "closer limits for the diameters of {4}, or lengths that make it more", "what a joint relies on is there at all limits of the sizes", "worst case of the lengths, and of the diameters by the taper; ISO 2768-1 where they have no limits of their own"},
	{plan.SlideNutShort, "nut-short", plan.CheckSeverity, more(1), "the nut on {0} stops {1} short of {2}: its thread runs out beside the seat", "undercut: DIN 76-A on {0}, or a recess in the nut or a spacer under it", "the nut reaches the hub it holds", "DIN 76-1"},
	{plan.SlideShoulderLow, "shoulder", plan.CheckSeverity, less(1), "{0} stands against {1} of {2}: the chamfers of both take the rest", "a smaller chamfer on either, or a wider shoulder at {2}", "a hub stands against half a millimetre (0.02 in) of its shoulder all round at least", practice},
	{plan.KeeperSmall, "shoulder", plan.StopSeverity, nil, "{0} goes into {1} of {2}, {3}, and keeps nothing there", "a larger {0}", "what keeps a hub stands before its end", byGeometry},
	{plan.SlideLoose, "shoulder", plan.CheckSeverity, more(2), "{0} meets the shaft before the hub: {1} keeps {2} of play along it", "a hub longer than its seat, by {0.5 mm|0.02 in} or so", "what clamps a hub touches it first", byGeometry},
	{plan.SlideUnlike, "bush", plan.CheckSeverity, more(4), "{0} is {1} and {2} that turns in it {3}, {4} apart, each with a class", "one diameter for both: the classes give the play", "the bore and the shaft of a fit have one nominal size", "ISO 286-1"},
	{plan.SlideNoRoom, "shoulder", plan.StopSeverity, more(1), "{0} covers the groove of its ring by {1}", "a shorter hub, or the groove further out", "a ring goes into its groove beside the hub", byGeometry},
	{plan.SlideFar, "shoulder", plan.CheckSeverity, more(1), "{0} stays free along the shaft by {1} and more before its ring", "the groove nearer to the hub, or a spacer ordered for the joint", "a ring keeps a hub against its shoulder", practice},
	{plan.SlideNoThread, "engagement", plan.StopSeverity, nil, "what {0} clamps reaches {1} beyond its thread", "a longer thread, or a thinner plate", "a nut has thread over its whole height", byGeometry},
	{plan.SlideNutUndercut, "engagement", plan.CheckSeverity, less(2), "the undercut of {0} lies under {1}: {2} of thread is left in it, of {3}", "a narrower undercut, such as DIN 76-B, or a plate or spacer under the nut", "a nut has thread in half its height at the least", practice},
	{plan.SlideDragged, "hand", plan.CheckSeverity, nil, "{0} drags its nut off: {1} is {2}-hand, and the shaft turns {3} seen from the nut", "a thread of the other hand, or accept it for the self-locking nut that is ordered, a new one each time", "a nut on a shaft that turns is of the hand that what it keeps tightens", practice},
	{plan.SlideLockRoom, "engagement", plan.CheckSeverity, less(0), "{0} of thread stays for {1}, and a self-locking one takes {2}: as high as its thread is thick, its locking ring last, and two threads past it", "a longer thread, or a thinner plate", "the ring that locks a nut lies on full thread", "DIN 985"},
	{plan.SlideNutRoom, "engagement", plan.CheckSeverity, less(0), "{0} of thread stays for {1}, which is {2} high", "a longer thread, or a thinner plate", "a nut has thread over its whole height", byGeometry},
	{plan.SlidePlate, "fit-side", plan.StopSeverity, nil, "{0} is {1} and does not go over {2}", "a bore {0.5 mm|0.02 in} larger than the thread", "a plate goes over the thread of its nut", byGeometry},
	{plan.SlideWide, "fit-side", plan.CheckSeverity, more(1), "{0} is {1}, and nut {2} hardly bears on it", "a bore {0.5 mm|0.02 in} larger than the thread", "what lies under a nut is borne all round", practice},
	{plan.PartsOverlap, "overlap", plan.StopSeverity, nil, "{0} and {1} lie in one another by {2}", "move or shorten one of them, or correct their places", "two parts cannot be in one place", byGeometry},
	{plan.OverlapBy, "overlap", plan.StopSeverity, nil, "{0}, joined to {3}, reaches {2} into {1}, which is bolted to {3}", "{4}move or shorten one of them", "two parts cannot be in one place", byGeometry},
	{plan.OverlapMany, "overlap", plan.StopSeverity, nil, "{0} lies by up to {2} in {1}", "a smaller {0}, or another place for it", "two parts cannot be in one place", byGeometry},
	{plan.OverlapTurned, "overlap", plan.StopSeverity, nil, "{0} and {1} lie in one another by {2}, and would not with {3} turned by {4}", "rotate: at {5}, with {3} turned by {4}", "two parts cannot be in one place", byGeometry},
	{plan.OverlapMisses, "overlap", plan.StopSeverity, nil, "{3} misses by {4} the place that {5} give its parts: {0} and {1} lie in one another by {2}", "make these agree: {because}", "two parts cannot be in one place", byGeometry},
	{plan.PartsFloat, "floats", plan.NoteSeverity, nil, "no joint names {0}", "a joint that fastens it, or loose: with what holds it", "what has no place is in no picture, and is not looked at for room", byGeometry},
	{plan.PlaceLacking, "floats", plan.NoteSeverity, nil, "nothing says where {0} stands on {1}", "place: {on: front, with: bottom, from-left: …, from-bottom: …, front: …} with the faces and distances of the drawing", "what has no place is in no picture, and is not looked at for room", byGeometry},
	{plan.AlongLacking, "floats", plan.NoteSeverity, nil, "nothing says how far {0} goes into {1}: it is drawn middle on middle", "level: with the faces that lie level and below:, or face: where a shoulder of it stops at a face; of a weld also place:, its gap below 0 where it goes through", "a part has one place", byGeometry},
	{plan.FlightLacking, "floats", plan.StopSeverity, nil, "nothing says where {0} stands on {1}: its hand, its room and its length are not looked at", "level: front-with-front and below: how far its end lies behind that of the shaft", "a flight has a place", byGeometry},
	{plan.PlaceOpen, "floats", plan.NoteSeverity, nil, "the place of {0} leaves something open: it lacks {1}", "{1} in place", "a part has one place", byGeometry},
	{plan.PlaceMisses, "place", plan.CheckSeverity, more(1), "{0} misses by {1} the place that {2} give its parts", "make these agree: {because}", "a part has one place", byGeometry},
	{plan.WeldOtherSide, "place", plan.CheckSeverity, more(3), "{0} is welded to the {1} of {2}, and ends {3} short of that side", "the side where the two meet", "a part is welded where it touches", byGeometry},
	{plan.LoopLength, "place", plan.CheckSeverity, nil, "{0} from {1} to {2}", "a length that agrees", "a part has one place", byGeometry},
	{plan.LoopTurn, "place", plan.CheckSeverity, nil, "and {0}, by their faces, turns and places", "faces and turns that agree", "a part has one place", byGeometry},
	{plan.PlaceTurned, "place", plan.StopSeverity, nil, "{0} misses by {1} the place that {2} give its parts", "make these agree: {because}", "a part lies one way round", byGeometry},
	{plan.FrameSkew, "place", plan.StopSeverity, nil, "{0} misses by {1} the place that {2} give its parts: {3} has its long points on two sides", "long: the same side at both ends of {3}", "a bar of a closed frame is longest along one side", byGeometry},
	{plan.WeldUnplaced, "weld-gap", plan.StopSeverity, nil, "{0} is welded to {1}, and nothing says where it stands on that", "place:, or of a saddled end onto: that part, and its place:", "what is welded has its place", byGeometry},
	{plan.WeldApart, "weld-gap", plan.StopSeverity, nil, "{0} stands {2} off {1}: there is nothing to weld", "a place where the two touch, or another size", "what is welded touches, or leaves a gap that one run bridges", byGeometry},
	{plan.OpeningCovered, "covered", plan.StopSeverity, nil, "{0} of {1} lies under {2}, {3} away", "move it along or round the part", "an opening is free when the parts are joined", byGeometry},
	{plan.FeedClosed, "opening", plan.CheckSeverity, nil, "{0} of {1} comes out on {2}, which has no opening there", "a hole or a groove in {2} there, or another place", "what opens into a bore goes on through what is pressed into it", byGeometry},
	{plan.PathBlocked, "way", plan.StopSeverity, nil, "{0} cannot come to its seat: {1} is in its way {2} before it", "{3}, a larger opening, or a part that comes off", "what is joined comes together along a straight line, from far or from beside the seat", byGeometry},
	{plan.LaidEarly, "early", plan.StopSeverity, nil, "{0} comes with {1} and lies on {2}, which comes only with {3}", "after: {3} at {0}, or a joint behind it", "what carries is there first", byGeometry},
	{plan.PinTight, "loose", plan.CheckSeverity, more(2), "{0} goes into {1} and may be {2} larger than it, inside the limits of both", "a larger hole, a smaller step, limits for both, or how: that says it is driven in", "what is put in by hand goes into its hole at all limits", byGeometry},
	{plan.PinUnlike, "loose", plan.CheckSeverity, nil, "{0} lies in {1}, and both have a fit, of {2} and of {3}", "one nominal size", "a step and the bore that it sits or runs in have one nominal size (ISO 286-1)", byGeometry},
	{plan.PinKeyless, "keyway-mate", plan.CheckSeverity, nil, "{0} has a keyway where {1} has none", "a keyway in both", "a key lies in shaft and hub", byGeometry},
	{plan.PressedLoose, "loose", plan.StopSeverity, nil, "{0} is to be pressed into {1}, and is smaller than it by {2} or more, inside the limits of both", "limits such as p6 in H7, or how: that says what holds it", "what is pressed in is larger than its hole", byGeometry},
	{plan.PinEarly, "order", plan.CheckSeverity, nil, "{0} comes with {2} and goes into {1}, which is finished only after {3}", "after: {3} at {0}, or a joint behind it", "what goes into a bore comes when that is finished", byGeometry},
	{plan.HeadPasses, "held", plan.CheckSeverity, more(3), "{0}, {2}, lies at {1}, {3}: too little of it stands over the hole to hold it there", "a larger head or a smaller hole, or a washer there", "a head stands over its hole all round", byGeometry},
	{plan.LaidPast, "held", plan.CheckSeverity, more(3), "{0} does not lie on the {2} of {1}: it goes {3} past that before it meets anything", "a size that bears there, another gap, or the face it lies on", "what lies on something touches it; a thing that is bought, drawn nowhere, may be between", byGeometry},
	{plan.LaidFalls, "held", plan.CheckSeverity, nil, "{0} does not lie on the {2} of {1}: nothing is under it there", "a size that bears there, another place, or the face it lies on", "what lies on something touches it; a thing that is bought, drawn nowhere, may be between", byGeometry},
	{plan.LaidFree, "held", plan.CheckSeverity, more(3), "{0} touches nothing where it lies, {3} off the {2} of {1}", "another gap, or the face it lies on", "what lies on something touches it; a thing that is bought, drawn nowhere, may be between", byGeometry},
	{plan.WeldLonger, "weld", plan.CheckSeverity, less(0), "{1} is {0} long, and once round there is {2}", "the length of the seam, or none for all of it", "a weld is no longer than its seam", byGeometry},
	{plan.TravelStrikes, "travel", plan.StopSeverity, more(2), "{0} strikes {1} after {2} of the {3} that it moves towards its {4}", "the part in its way, where it lies, or a shorter way", "what moves is free as far as it moves", byGeometry},
	{plan.TravelRuns, "travel", plan.CheckSeverity, more(2), "nothing stops {0} within {1} after the {2} that it moves towards its {3}", "a collar or a stop there, or the way as it is", "what moves by power or a screw is stopped before it runs out", practice},
	{plan.Overhangs, "overhang", plan.CheckSeverity, more(2), "{0} stands over the edge of {1} and reaches {2} beyond it", "another place, or a larger {1}", "what stands on a plate lies on it with most of its foot", byGeometry},
	{plan.HoleClosed, "covered", plan.StopSeverity, nil, "{2} stands on {3} of {0} of {1}, and {4} % of it stays free", "move the holes, or what stands there", "a hole is free at the face that something is welded to", byGeometry},
	{plan.OpeningPartly, "covered", plan.CheckSeverity, nil, "{2} closes {0} of {1} in part: {3} % of it stays free", "openings of one size in one place, or accept it where it is to hold back", "what comes through an opening finds the next as wide", practice},
	{plan.HoleDeadEnd, "dead-end", plan.CheckSeverity, nil, "{0} of {1} are holes for screws in no joint, and {2} closes them", "a thread, a hole in {2} too, or another place", "a screw gets into its hole, and on from it into a thread or a nut", byGeometry},
	{plan.PortShut, "dead-end", plan.CheckSeverity, nil, "{0} of {1} comes out on the metal of {2}", "a hole in {2} where {0} comes out, or another place for one of the two", "what runs in or out has an open way through all that it comes to", byGeometry},
	{plan.HolesPartShut, "dead-end", plan.CheckSeverity, nil, "{2} closes {3} of the {4} {0} of {1}, which no joint uses", "another place for {0}, or holes in {2} too", "holes of one group are for one use, and open or closed alike", practice},
	{plan.HeadShutIn, "heads", plan.CheckSeverity, more(2), "a head of {0} lies inside {1}, {2} from its farther end: no tool reaches it", "another place for {1}, or for the hole", "a bolt is reached when all is in its place", practice},
	{plan.ClosedIn, "heads", plan.CheckSeverity, nil, "{0} of {1} lies in what {2} closes by then: no hand and no tool reaches it", "{3}, tapped holes or nuts that are welded on before, or screws from outside", "a head and a nut are reached when their joint is made, by a hand or a straight tool", practice},
	{plan.FootBeyond, "overhang", plan.CheckSeverity, more(2), "{0} stands on edge on {1}, and its foot reaches {2} over the edge", "another place for {0}, a shorter one, or a larger {1}", "a plate on edge stands on its plate with its whole foot", practice},
	{plan.HolesUnmet, "facing", plan.CheckSeverity, more(4), "{0} of {1} and {2} of {3} face one another and miss by up to {4}", "one pattern on both, as seen from the same side", "holes that face one another meet", byGeometry},
	{plan.AnchoredHigh, "place", plan.CheckSeverity, more(1), "{0} is anchored to the floor, and lies {1} over the centre of gravity of the machine as it stands, the {2} up", "the other word for up:, or the place or the clock angle that turns the machine over", "what is anchored to the floor carries the machine", byGeometry},
	{plan.BracesOne, "weld-gap", plan.CheckSeverity, more(3), "{0} touches {1} alone and stands {3} off {2}: it stiffens neither", "a place where it touches both", "a gusset is welded to the two parts that it holds in their angle", byGeometry},
	{plan.SeamBeyond, "weld-gap", plan.CheckSeverity, less(2), "the weld is {0} long, and {1} lies on what it is welded to over {2}", "a place where the whole edge lies on it, or a shorter weld", "a weld runs where both parts are", byGeometry},
	{plan.FilletNoCorner, "weld-gap", plan.CheckSeverity, more(0), "the fillet is {0} long on its sides together, and {1} have a corner: {3} stands flush on its {2}", "no length, which takes that of the corners; or a place inside the edges by the leg and more", "a fillet lies in a corner", byGeometry},
	{plan.LiftsAside, "lift", plan.StopSeverity, more(1), "all of {0} lie on one side of the centre of gravity, {1} beside it at the least: it tips when it hangs in them", "eyes on both sides of the centre of gravity", "what hangs in eyes has its centre of gravity between them", byGeometry},
	{plan.LiftsLow, "lift", plan.StopSeverity, more(2), "{0} of {1} lie {2} under its centre of gravity as it stands: it turns over when it hangs in them", "holes over the centre of gravity", "what hangs in two points has its centre of gravity under them", byGeometry},
	{plan.WeldPast, "weld-gap", plan.StopSeverity, more(2), "{0} reaches {2} beyond the end of what it is welded to on {1}: nothing holds it there", "another place, a shorter {0}, or a longer {1}", "a weld runs where both parts are", byGeometry},
	{plan.BushSeizes, "bush", plan.StopSeverity, nil, "{0} does not turn in {1}: {2} of play at the least", "a running fit, such as f7 in H8", "a journal has play in its bush", "ISO 286-1"},
	{plan.BushCloses, "bush", plan.CheckSeverity, less(2), "{0} does not turn in {1}: {2} of play at the least, once it is pressed in and has closed by {3}", "a bore larger by what it closes; or accept it, where a note has it reamed to its limits after pressing", "a journal has play in its bush", "Lamé, ISO 286-1"},
	{plan.BushTight, "bush", plan.CheckSeverity, less(2), "{0} has {2} of play in {1} at the least, which closes by {3}: too little for oil", "a bore larger by what it closes, or a wider fit", "a journal has half a thousandth of its diameter of play at the least", practice},
	{plan.BushLoose, "bush", plan.CheckSeverity, more(2), "{0} may have {2} of play in {1}, and the loosest running fit has {3}", "a running fit, such as f7 in H8, or h9 in E9", "a journal runs in its bush, and does not knock", "ISO 286-1, H11/c11"},
	{plan.BushUnknown, "bush", plan.CheckSeverity, less(2), "{0} has {2} of play in {1} as drawn, which closes when it is pressed in: how far is worked out of a press joint alone", "a press joint in place of the words; or accept it, where a note has it reamed to its limits after pressing", "a journal has play in its bush", byGeometry},
	{plan.ShiftStrikes, "slots", plan.StopSeverity, less(2), "{0} strikes {1} after {2} of the {3} that it is to be set along the slots of {4}", "the part in its way, the slots turned, or less to be set", "what is set along slots is free as far as it is set", byGeometry},
	{plan.ShiftStops, "slots", plan.CheckSeverity, less(2), "{0} strikes {1} after {2} of the {3} that the slots of {4} let it be shifted", "shorter slots, adjust: for how far it is to be set, or the part in its way", "what is set along slots is free as far as it is set", byGeometry},
	{plan.ThreadStops, "engagement", plan.CheckSeverity, more(2), "{0} goes into {1} {2} less than it is drawn: its full thread ends {3} before its shoulder", "an undercut at the shoulder, or a counterbore or a countersink before the thread that it goes into", "a thread without an undercut runs out before its shoulder", "DIN 76-1"},
	{plan.ThreadJams, "engagement", plan.CheckSeverity, more(2), "{0} and {1} jam {2} before they lie as drawn: there the thread inside is no full thread any more", "a deeper thread, a groove or a wider bore behind it, or a shorter screw", "what screws in ends before the thread runs out", "DIN 76-1"},
	{plan.NutHangs, "engagement", plan.CheckSeverity, less(2), "{0} has {2} of {1} in its thread, wanted {3}", "another place of {0}, or a longer thread", "a nut engages as much as a standard one is high, or three quarters of its own thread", practice},
	{plan.NutPitch, "thread-mate", plan.StopSeverity, nil, "{0} is cut {2}, and {1} in it {3}", "the same thread on both drawings", "a nut has the thread of its screw", byGeometry},
	{plan.EndPlayNone, "bush", plan.CheckSeverity, less(5), "{0} has {5} of play along its bushes at the least, {6} as drawn, from {1} at {2} to {3} at {4}: it binds", "longer or closer limits for the steps between, or shorter bushes", "a shaft that turns between two faces has play along them at all limits", byGeometry},
	{plan.EndPlayUnsure, "bush", plan.CheckSeverity, less(5), "{0} has no more than {5} of play along its bushes at the least, {6} as drawn, from {1} at {2} to {3} at {4}: it binds", "longer or closer limits for the steps between, or shorter bushes; limits for what is counted as drawn", "a shaft that turns between two faces has play along them: of what holds those, a plate as bought and what is welded are counted as drawn", byGeometry},
	{plan.BushesByPlay, "bush", plan.NoteSeverity, nil, "only the play of {3} in the holes lets {0} and {1} come in line, in which {2} turns: the step has it put through both while the bolts are pulled", "a spigot in a bore, or dowels in fitted holes, if they are to come off and on again", "two bushes of one shaft are brought in line", practice},
	{plan.BushesEarly, "bush", plan.CheckSeverity, more(3), "only the play of {3} in the holes lets {0} and {1} come in line, in which {2} turns, and the bolts are pulled before both are there", "this joint after those of both; or a spigot in a bore, or dowels in fitted holes", "two bushes of one shaft are brought in line", practice},
	{plan.OneBush, "bush", plan.CheckSeverity, more(2), "{1} alone carries {0}, whose centre of gravity lies {2} beside it with all that is fixed to it: it tips in its play, and nothing holds its other end", "a second bush, the weld or the joint that fixes it to what turns in one, or a longer bush", "what turns lies between its bushes, or in one that is long enough", byGeometry},
	{plan.BushShort, "bush", plan.CheckSeverity, less(2), "{0} bears on {2} of the {3} of {1}", "another length of the steps before it, or another place of {1}", "a journal fills its bush", practice},
	{plan.FlightTight, "flight", plan.CheckSeverity, less(2), "{0} turns {2} off the inside of {1}: it rubs when it runs out of true", "a smaller outside, or a larger tube", "a flight leaves half a hundredth of its outside on a side", practice},
	{plan.FlightWide, "flight", plan.CheckSeverity, more(2), "{0} turns {2} off the inside of {1}: much of its load slips back there", "a larger outside, or a smaller tube", "a flight fills its tube but for a tenth of its outside on a side", practice},
	{plan.FlightGap, "flight", plan.CheckSeverity, more(2), "between {0} and {1}, of one hand, {2} of the shaft has no flight: what is moved stands there", "a longer flight, or another place; where it is to mix or to let something through there, accept it", "flights of one hand leave half a pitch between them at most, as a hanger takes", practice},
	{plan.FlightShort, "flight", plan.CheckSeverity, more(3), "{0} ends {3} before {2} of {1}: nothing moves the load there", "a longer flight, or the opening nearer to it; where nothing comes in or out there, accept it", "a flight reaches what fills and empties its tube, to half a pitch", practice},
	{plan.FlightOver, "flight", plan.CheckSeverity, more(2), "{0} and {1} lie over one another on {2} of the shaft", "another length, or another place", "one flight ends where the next begins", byGeometry},
	{plan.FlightApart, "flight", plan.CheckSeverity, more(2), "{1} begins where {0} ends, but {2} round the shaft from its edge: a step at which what is moved heaps up", "turn one of them, or a length of whole turns", "the ends of flights that follow one another meet", byGeometry},
	{plan.LegsShort, "tips", plan.CheckSeverity, more(1), "{0} ends {1} over the floor: the machine comes to stand on {2}, which reaches lower", "longer legs, or a shorter or higher {2}; of one that hangs or is set into a pit, accept it", "a machine stands on its legs", byGeometry},
	{plan.LegHigh, "tips", plan.CheckSeverity, more(1), "{0} ends {1} over the other legs, its foot with it: the machine rocks", "legs of one length, placed alike; on a floor that steps, accept it", "legs end on one floor", byGeometry},
	{plan.LegLow, "tips", plan.CheckSeverity, more(1), "{0} ends {1} under the other legs, its foot with it: the machine rocks", "legs of one length, placed alike; on a floor that steps, accept it", "legs end on one floor", byGeometry},
	{plan.FeetApart, "tips", plan.CheckSeverity, more(1), "{0} lies up to {1} out of the plane in which {2} stands: the machine rocks, and stands on edges", "legs whose lengths and mitres bring all feet into one plane; on a floor that steps, accept it", "feet stand on one floor", byGeometry},
	{plan.WouldTip, "tips", plan.StopSeverity, nil, "with this step {2} stand on {0}, unanchored, and their centre of gravity lies {1} beyond its edge: it tips", "anchored: the part that stands on the floor, at this step or before; or a longer base", "what stands has its centre of gravity over what it stands on", byGeometry},
	{plan.OnBead, "on-bead", plan.CheckSeverity, more(2), "{0} comes to stand where the weld of {1} lies, {2} high", "clip its corner clear of the weld, move it, or weld it before", "what is fitted over a weld is cut out for it, or stands off", practice},
	{plan.BodyUnknown, "floats", plan.NoteSeverity, nil, "of {0} only what its standard gives is known, and not its body", "stands: with diameter and length, as measured or from the maker's sheet", "what has no size is in no picture, and is not looked at for room", byGeometry},
	{plan.FlightBackward, "hand", plan.StopSeverity, nil, "{0} is {1}, and {2}: it moves its load to {3}, and is to move it to {4}", "the other hand, the other rotation of the motor, or moves: in the flight where it is meant so", "what lies in a flight and does not turn with it is moved to the end from which a right-hand one is seen to turn clockwise", byGeometry},
	{plan.MotorBeside, "motor-line", plan.StopSeverity, nil, "the axis of {0} stands {2} off that of {1}, which it drives in line", "another place of what the motor stands on, or through: belt or gear-pair", "what a coupling joins turns about one line", byGeometry},
	{plan.CouplingShort, "motor-line", plan.StopSeverity, nil, "{0} does not reach the shaft of {1}, {3} across, by half a diameter: {2} are lacking", "the plate nearer, a longer coupling, or stands: with the shaft-length of the motor", "a coupling holds both shafts", practice},
	{plan.NearBend, "near-bend", plan.CheckSeverity, less(1), "{0}: {1} off a bend a hole is drawn out of round", "{2} or more of flat between the hole and the bend, or drill after folding", "a hole keeps two thicknesses off the end of a bend", practice},
	{plan.PunchBlocked, "fold", plan.StopSeverity, less(1), "a flange that is folded before stands in the way of the punch when the {0} is folded: {1} are left beside the punch's middle", "a wider base, lower flanges, or two parts", "the punch gets to the line that is folded", byGeometry},
	{plan.FoldInRam, "fold-ram", plan.CheckSeverity, more(1), "{0}, {1} high, stands where the ram is when a later flange is folded", "a lower flange, a wider base, or two parts that are joined; in sheet up to {2} a flange that needs 20° or less is left open at first", "what is folded already stands clear of the ram, not only of the punch", practice},
	{plan.BendRadius, "bend-radius", plan.CheckSeverity, nil, "the die of {0} leaves about {1} inside, and {2} is drawn: the flanges come out of another length", "the radius that the die leaves, another die, or a k measured on a test strip", "the radius drawn is the one that the tools make", practice},
	{plan.BarHoleNear, "edge", plan.CheckSeverity, less(1), "{0}: {1} of metal to {2} of the bar, and {3} wanted beside {4}", "move them", "from a bolt hole's centre to an edge at least 1.2 times the hole, of a thread to an end once, of another 0.75 times", "EN 1993-1-8:2005 Table 3.3, used as guidance; common practice, no source"},
	{plan.BarHoleOut, "edge", plan.StopSeverity, nil, "{0} run {1} into {2} of the bar", "move them", "a hole keeps flat metal all round", byGeometry},
	{plan.BarTooDeep, "edge", plan.StopSeverity, nil, "{0} are {1} deep in {2} of metal", "a smaller depth, or depth: through", "a blind hole ends in the metal", byGeometry},
	{plan.BarNotSold, "stock", plan.NoteSeverity, nil, "{0}: the list of {1} has this section with walls of {2}", "a wall that the merchant has", "a bar is bought in a size that is made", "{1}"},
	{plan.BarTooThin, "stock", plan.CheckSeverity, less(3), "{0}: its wall of {3} is thinner than any that {1} lists for this section, which are {2}", "a wall that the merchant has", "a bar is bought in a size that is made", "{1}"},
	{plan.CentreThin, "centre", plan.CheckSeverity, nil, "{0} ends the part at {1}, and no centre hole is known up to {2}: the part is too long to turn without", "a thicker stub with the centre, cut off last; or the pilot in centres", "what is longer than three diameters is turned between centres", practice},
	{plan.BarTooLong, "stock", plan.StopSeverity, nil, "the bar is {0} long, and bars are sold {1} long", "a shorter bar, or a splice with its own joint", "a piece comes out of one bar", practice},
	{plan.CornerUnlike, "mitre", plan.CheckSeverity, more(2), "the cuts of {0} and {1} differ by {2} in length: the mitres are not those of their corner", "{3} on {0} and {4} on {1}", "each mitre runs from the inside corner to the outside one; of equal bars it is half of the corner", byGeometry},
	{plan.CornerSections, "mitre", plan.CheckSeverity, more(2), "the cuts of {0} and {1} differ by {2} in length: one bar is {5} wide there, and the other {6}", "one section for both; where unlike ones are meant, {3} on {0} and {4} on {1}", "each mitre runs from the inside corner to the outside one", byGeometry},
	{plan.WeldedSwings, "swing", plan.StopSeverity, nil, "{0} is finished after the weld, and what is welded then turns {1} across; the lathe takes {2}", "finish it before, with a fine size far enough from the weld, or weld less to it before", "what is turned swings over the bed", "shop: lathe: swing"},
	{plan.WeldedLong, "between", plan.StopSeverity, nil, "{0} is turned or bored after the weld, and what is welded then is {1} long; the lathe takes {2} between centres", "finish it before, with a fine size far enough from the weld, or have it turned elsewhere", "what is turned goes between the centres", "shop: lathe: between"},
	{plan.WeldMixed, "weld-metal", plan.StopSeverity, nil, "{0} is not readily weldable to the other metal: they do not mix; join otherwise", "bolts, or one metal for both", "a weld joins metals that mix", practice},
}

var aboutKind = func() map[plan.ProblemKind]About {
	m := make(map[plan.ProblemKind]About, len(Problems))
	for _, a := range Problems {
		m[a.Kind] = a
	}
	return m
}()

// AboutKind is the row of a kind; a kind without one is a fault of the program
// that the tests of this package find.
func AboutKind(kind plan.ProblemKind) About { return aboutKind[kind] }

// Says is the sentence of a problem, in the writer's units.
func (w Writer) Says(p plan.Problem) string { return w.fill(AboutKind(p.Kind).Says, p) }

// Rule is the rule that a problem breaks.
func (w Writer) Rule(p plan.Problem) string { return w.fill(AboutKind(p.Kind).Rule, p) }

// Source is where the rule of a problem is from.
func (w Writer) Source(p plan.Problem) string { return w.fill(AboutKind(p.Kind).Source, p) }

// Fix is what would put a problem right.
func (w Writer) Fix(p plan.Problem) string { return w.fill(AboutKind(p.Kind).Fix, p) }

// byUnits is a length of advice in a sentence, in millimetres and in inches.
var byUnits = regexp.MustCompile(`\{([^{}|]*)\|([^{}|]*)\}`)

// fill puts a problem's arguments in the places of a sentence, and its lengths into the job's units.
func (w Writer) fill(text string, p plan.Problem) string {
	because := seq.Map(p.Because, func(b plan.Because) string { return b.Name + " " + w.Says(b.Problem) })
	pairs := []string{"{because}", strings.Join(because, "; ")}
	for i, a := range p.Args {
		pairs = append(pairs, "{"+strconv.Itoa(i)+"}", w.Arg(a))
	}
	text = byUnits.ReplaceAllString(text, parts.By(w.Units, "$1", "$2"))
	return strings.NewReplacer(pairs...).Replace(text)
}

// Arg writes a name as it is and a number with its unit.
func (w Writer) Arg(a plan.Arg) string {
	switch a.Unit {
	case plan.Mm:
		return w.Size(a.Value)
	case plan.Diameter:
		return w.Dia(a.Value)
	case plan.Read:
		return w.Read(a.Value)
	case plan.Newton:
		return w.Force(a.Value, 0)
	case plan.MPa:
		return w.Stresses(a.Value, a.Value, 2)
	case plan.Kg:
		return w.RoundMass(a.Value, 1)
	case plan.Degree:
		return Trim(a.Value, 2) + "°"
	case plan.Celsius:
		return w.Heat(a.Value)
	case plan.Number:
		return Trim(a.Value, 2)
	case plan.Miss:
		mm, deg := w.Size(a.Value), Trim(a.High, 2)+"°"
		switch {
		case a.High == 0:
			return mm
		case a.Value == 0:
			return deg
		}
		return mm + " and " + deg
	case plan.Preheat:
		if a.High == 0 {
			return ""
		}
		return "preheat to " + w.Heats(a.Value, a.High) + " (a start, common practice), "
	}
	return a.Text
}
