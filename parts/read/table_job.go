package read

import (
	"slices"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// The keys of a job file and of the file of a measured flange.

// jointRefExample is how a joint points at a feature.
const jointRefExample = "part.feature, or part#2.feature for the second of equal parts"

// maxParts is the most part files in a job.
const maxParts = 2000

var jobGroup = &Group{Name: "job", Means: "A job file: the parts of a machine and how they meet.", Keys: []Key{
	{Name: "job", Type: TextType, Need: true, Means: "name of the job", Example: "a name, such as job: Pug mill"},
	{Name: "revision", Type: TextType, Means: "printed in every title block", Longest: 40},
	{Name: "date", Type: DateType, Means: "year-month-day; no output holds another date", Example: "year-month-day, such as 2025-03-14"},
	{Name: "drawn", Type: TextType, Means: "who drew it"},
	{Name: "checked", Type: TextType, Means: "who checked it"},
	{
		Name: "units", Type: WordType, Need: true, Means: "the unit of bare numbers, and of what is printed",
		Words: []string{string(parts.Millimetres), string(parts.Inches)}, Example: "units: mm or units: in, as every bare number depends on it",
	},
	{Name: "paper", Type: PaperType, Means: "A4, A3, Letter, Tabloid or a size", Default: "A4, in an inch job Letter", Example: parts.PaperForms},
	{Name: "tolerance", Type: WordType, Means: "ISO 2768-1 class of sizes that say nothing else", Words: []string{"f", "m", "c", "v"}},
	{
		Name: "tools", Type: YesType,
		Means:   "print sheets of the tools that the joints need: sleeves, rings, discs, plugs, draw bolts, and drill jigs; without, the cover lists those of the joints",
		Default: "no",
	},
	{Name: "shop", Type: KeysType, Means: "what the workshop has; the review compares with it", Group: shopGroup},
	{Name: "notes", Type: TextsType, Means: "lines printed on the cover", Longest: maxNote, Entries: [2]int{0, 100}, Example: "a list of texts"},
	{Name: "parts", Type: FilesType, Need: true, Means: "part files in the job's folder or below it", Entries: [2]int{1, maxParts}, Example: "parts: [cover.yaml, …]"},
	{Name: "joints", Type: ListType, Means: "how the parts meet", Group: jointGroup, Entries: [2]int{0, maxParts}},
	{Name: "loose", Type: ListType, Means: "parts that no joint fastens", Group: looseGroup, Entries: [2]int{0, maxParts}},
	{
		Name: "up", Type: WordType,
		Means:   "what is up where the machine stands, TOP or front of the part that the others are placed from: of the axis with the most parts on it, that which stands first under parts; for the general arrangement, tipping and lifting",
		Default: "top", Words: []string{"top", "front"},
	},
	{Name: "accept", Type: ListType, Means: "findings of the review that are taken as they are", Group: acceptGroup, Entries: [2]int{0, 1000}},
	{Name: "first-run", Type: KeysType, Means: "what the card of the first run needs; the joints give the rest", Group: firstRunGroup},
	{Name: "upkeep", Type: KeysType, Means: "what the card at the machine lists", Group: upkeepGroup},
	{Name: "motor", Type: KeysType, Means: "the motor's plate and what the electrician must know; no wiring is computed", Group: motorGroup},
}}

var shopGroup = &Group{Name: "shop", Means: "What the workshop has.", Keys: []Key{
	{Name: "press", Type: ForceType, Means: "force of the press, with its unit: N, kN or t", Unit: "none, say N, kN or t", Example: "a force such as 200 kN, 20 t or 20000 N"},
	{Name: "lathe", Type: KeysType, Means: "the lathe", Group: latheGroup},
	{Name: "drill", Type: KeysType, Means: "the drilling machine", Group: drillGroup},
	// 80 g/m² office paper: common practice, no source.
	{Name: "paper", Type: SizeType, Means: "thickness of one printed sheet, for wrap templates; at most 1 mm", Default: "0.1 mm"},
}}

// speedsKey is the list of a machine's spindle speeds.
var speedsKey = Key{
	Name: "speeds", Type: NumbersType, Means: "spindle speeds", Unit: "rev/min", Low: 1, High: 20_000, Entries: [2]int{1, 100},
	Example: "a list of speeds in rev/min, such as [70, 115, 190]",
}

var latheGroup = &Group{Name: "lathe", Means: "The lathe.", Keys: []Key{
	{Name: "swing", Type: SizeType, Means: "largest diameter over the bed"},
	{Name: "between", Type: SizeType, Means: "distance between centres"},
	speedsKey,
	{Name: "tool", Type: WordType, Means: "what the tools are made of", Default: "hss", Words: []string{"hss", "carbide"}},
}}

var drillGroup = &Group{Name: "drill", Means: "The drilling machine.", Keys: []Key{
	speedsKey, {Name: "largest", Type: SizeType, Means: "largest drill it holds"},
	{Name: "bushes", Type: ListType, Means: "drill bushes at hand; a jig for a drill of that bore has them", Group: bushGroup, Entries: [2]int{0, 100}},
}}

var bushGroup = &Group{Name: "bush", Means: "A size of drill bush, as its maker or a rule says.", Example: "{bore: 11, outside: 18}", Keys: []Key{
	{Name: "bore", Type: SizeType, Need: true, Means: "the drill that it guides", Example: "bore: 11"},
	{Name: "outside", Type: SizeType, Need: true, Means: "its outside diameter", Example: "outside: 18"},
	{
		Name: "hole", Type: ClassFitType, Means: "limits of the hole that it is pressed into, as its maker says", Default: "H7, for a bush ground to n6",
		Group: fitGroup, Example: "hole: H7, or {limits: [low, high]}",
	},
}}

var jointGroup = &Group{Name: "joint", Means: "How a first part meets a second; joints become the steps of the sequence.",
	Example: "{name: front-weld, weld: {part: flange.bore, to: tube.outside, type: fillet}}",
	OneOf:   append(seq.Map(parts.JointKinds, func(k parts.JointKind) string { return string(k) }), ballKey), Keys: []Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the joint", Example: "name: front-flange"},
		{Name: "press", Type: KeysType, Means: "an interference fit", Group: pressGroup},
		{Name: "weld", Type: KeysType, Means: "a weld along a round or a stated length", Group: weldGroup},
		{Name: "bolt", Type: KeysType, Means: "a ring of bolts", Group: boltGroup},
		{Name: "bearing", Type: KeysType, Means: "a tapered roller bearing between shaft and housing", Group: bearingGroup},
		{Name: ballKey, Type: KeysType, Means: "a deep-groove ball bearing between shaft and housing", Group: ballGroup},
		{Name: "slide", Type: KeysType, Means: "a hub that slides on a shaft with a key and is kept at a shoulder", Group: slideGroup},
		{Name: "screw", Type: KeysType, Means: "a part with a thread outside in one with that thread inside", Group: screwGroup},
		{
			Name: "face", Type: WordType,
			Means: "which face of the first touches which of the second; two parts that are bolted once more meet as before where nothing is said",
			Words: meetingWords("-on-"),
		},
		{Name: "level", Type: WordType, Means: "which faces lie level and look the same way; not with face, nor beside the place of a weld", Words: meetingWords("-with-")},
		{Name: "below", Type: DistanceType, Means: "with level: how far the inner part's end lies under the outer part's face, of what stands out of it place says the gap; of a flight, how far its end lies behind that of what it stands on"},
		{
			Name: "rotate", Type: AngleType,
			Means:   "of the first part's TOP from the second's, clockwise seen from the second's front; for holes on a flange TOP is its free edge, on a side of a bar its back, on the bottom its front",
			Default: "0",
		},
		{Name: "other-way-round", Type: YesType, Means: "the parts look opposite ways; only where neither face nor level says so", Default: "no"},
		{Name: "in-line", Type: InLineType, Means: "features that lie at one clock angle; with up, that angle is the assembly's TOP", Entries: [2]int{1, 40}, Example: "[part.feature, part.feature]"},
		{Name: "place", Type: KeysType, Means: "where the first part stands on the second, where the two share no axis", Group: standGroup},
		{Name: "anchored", Type: NameType, Means: "a part that is fixed to the floor before this step; it then neither tips nor is lifted", Example: "anchored: base-plate"},
		{Name: "before", Type: NamesType, Means: "joints that come later", Entries: [2]int{1, maxParts}, Example: "a joint's name or a list of them"},
		{Name: "after", Type: NamesType, Means: "joints that come earlier", Entries: [2]int{1, maxParts}, Example: "a joint's name or a list of them"},
		{Name: "do", Type: TextsType, Means: "what is done besides, once the joint is made: rows to tick", Longest: 300, Entries: [2]int{1, 10}, Example: "a list of texts"},
		{Name: "note", Type: TextType, Means: "a line under the step", Longest: maxNote},
	}}

// ways are the directions on a face, as seen by who looks at it.
var ways = []string{"up", "down", "left", "right"}

var standGroup = &Group{Name: "stand",
	Means:   "Where the first part of a joint stands on the second: a face on a face, distances to edges, and which way it looks.",
	Example: "place: {on: front, with: bottom, from-left: 120 mm, from-bottom: 10 mm, front: left}", Keys: []Key{
		{Name: "on", Type: WordType, Need: true, Means: "face of the second part", Words: parts.Sides},
		{Name: "with", Type: WordType, Need: true, Words: parts.Sides,
			Means: "face of the first part that lies on it, of a mitred end its cut, of a folded part what lies outermost on that side: " +
				"back is the free edges of flanges toward the back, not the base"},
		{Name: "from-left", Type: CoordinateType, Means: "from the left edge of that face, as seen by who looks at it, to the first part"},
		{Name: "from-right", Type: CoordinateType, Means: "from its right edge to the first part; not with from-left"},
		{Name: "from-bottom", Type: CoordinateType, Means: "from its bottom edge to the first part"},
		{Name: "from-top", Type: CoordinateType, Means: "from its top edge to the first part; not with from-bottom"},
		{Name: "at", Type: PointType, Means: "where the first part's origin lies, right and up from the second's, as seen on that face; an origin is in the plane of the front, so that at a top, bottom, left or right it counts across from the front, where holes in the side of a bar count from its middle and distances from the edges; not with the distances", Example: "at: [0, 0]"},
		{Name: "top", Type: WordType, Means: "which way the first part's TOP points on that face; where its front or back lies there", Words: ways},
		{Name: "front", Type: WordType, Means: "which way the first part's front looks on that face; where an edge lies there", Words: ways},
		{Name: "gap", Type: CoordinateType, Means: "between the two faces; below 0 the first part goes in", Default: "0"},
	}}

// lyingGroup is standGroup for a loose part: the face names its part.
var lyingGroup = &Group{
	Name: "lying", Means: "Where a copy of a loose part lies: a face of it, the first part, on a face of another, the second. Without at and distances its origin lies over the other's, on one axis with it; without top or front it looks up.",
	Example: "{on: tube.front, with: back, gap: -20 mm}",
	Keys:    append([]Key{{Name: "on", Type: RefType, Need: true, Means: "the second part and its face, front, back, left, right, top or bottom", Example: "on: tube.front"}}, standGroup.Keys[1:]...),
}

// meetingWords are the ways two faces can meet.
func meetingWords(between string) []string {
	return []string{"front" + between + "front", "front" + between + "back", "back" + between + "front", "back" + between + "back"}
}

var pressGroup = &Group{Name: "press", Means: "An interference fit.", Example: "press: {shaft: tube.outside, bore: flange.bore}", Keys: []Key{
	{Name: "shaft", Type: RefType, Need: true, Means: "the outside that goes in"},
	{Name: "bore", Type: RefType, Need: true, Means: "the bore that it goes into"},
	{Name: "fit", Type: FitPairType, Means: "classes of both, such as H7/p6", Default: "the limits of the two features", Longest: 20, Example: "a hole and a shaft class such as H7/p6"},
	{Name: "friction", Type: NumberType, Means: "coefficient of friction", Default: "the span of the materials", Low: 0.02, High: 0.5},
	{Name: "method", Type: WordType, Means: "cold in the press, or the bore heated, or the shaft cooled", Default: "press", Words: []string{"press", "heat", "cool"}},
	{Name: "clearance", Type: SizeType, Means: "on the diameter while joining hot or cold", Default: "what is usual for the size"},
	{Name: "length", Type: SizeType, Means: "length engaged", Default: "the shorter step"},
}}

var weldGroup = &Group{Name: "weld", Means: "A weld.", Example: "weld: {part: flange.bore, to: tube.outside, type: fillet}", Keys: []Key{
	{Name: "part", Type: RefType, Need: true, Means: "the part welded on"},
	{Name: "to", Type: RefType, Need: true, Means: "what it is welded to"},
	{Name: "type", Type: WordType, Need: true, Means: "form of the weld", Words: []string{"fillet", "v", "bevel", "square"}},
	{Name: "size", Type: SizeType, Means: "leg of a fillet", Default: "what is usual for the plate"},
	{Name: "process", Type: WordType, Means: "welding process", Default: "MAG", Words: []string{"MAG", "MIG", "MMA", "TIG", "flux-cored", "metal-cored", "self-shielded"}},
	{Name: "length", Type: SizeType, Means: "length of a straight weld, on each side", Default: "all round; in every corner of a fillet with a place; round a mitre"},
	{Name: "square-up", Type: DistanceType, Means: "what the plate has over its thickness, to be faced off after its last weld", Default: "what is usual"},
	{Name: "sides", Type: CountType, Means: "welded from one side or both; said, a plate on its edge is not welded round its ends", Default: "1", Low: 1, High: 2},
	{Name: "ground", Type: WordType, Means: "where a butt weld is ground flush with the metal beside it; not said, nowhere", Words: []string{"inside", "outside", "both"}},
}}

var boltGroup = &Group{Name: "bolt", Means: "A ring of bolts through one part, perhaps others, into threads or nuts.",
	Example: `bolt: {through: flange.bolts, into: housing.taps, bolt: "M10 8.8"}`, Keys: []Key{
		{Name: "through", Type: RefType, Need: true, Means: "group of clearance holes, or of slots, under the heads"},
		{Name: "into", Type: RefType, Need: true, Means: "group of tapped holes, or of clearance holes or slots with nuts"},
		{Name: "stack", Type: RefsType, Means: "groups between the two, in order", Entries: [2]int{0, 20}, Example: "a list of part.group"},
		{Name: "bolt", Type: BoltType, Need: true, Means: "size and strength class; of a made stud the size alone", Longest: 60},
		{Name: "head", Type: WordType, Means: "form of the head: countersunk with a hexagon socket, in a countersink", Default: "hex", Words: []string{"hex", "socket", "countersunk"}},
		{Name: "washer", Type: YesType, Means: "a washer under the head", Default: "no"},
		{Name: "wide", Type: YesType, Means: "the washers are wide ones, ISO 7093-1 or ASME B18.21.1 wide, as over a wide slot", Default: "no"},
		{Name: "nut", Type: YesType, Means: "nuts on the far side", Default: "no"},
		{Name: "adjust", Type: SizeType, Means: "how far the first part is to be set each way along slots, from its place"},
		{Name: "friction", Type: TextType, Means: "state of the threads: dry, lubricated; not said, anti-seize where stainless runs in stainless, else dry", Longest: 40},
		{Name: "stud", Type: NameType, Means: "the part that serves as stud, in place of bought bolts: a nut at each end, or screwed into tapped holes"},
	}}

var bearingGroup = &Group{Name: "bearing", Means: "A tapered roller bearing; a ball bearing has a joint of its own.",
	Example: `bearing: {bearing: "30210", cup: housing.front-cup, cone: shaft.seat, rotating: inner, bore: 50, outside: 90, width: 21.75}`, Keys: []Key{
		{Name: "bearing", Type: TextType, Need: true, Means: "designation, as ordered", Longest: 60},
		{Name: "cup", Type: RefType, Need: true, Means: "bore of the housing for the cup"},
		{Name: "cone", Type: RefType, Need: true, Means: "seat of the shaft for the cone"},
		{Name: "rotating", Type: WordType, Need: true, Means: "the ring that turns against the load", Words: []string{"inner", "outer"}},
		{Name: "load", Type: WordType, Means: "for the choice of fits", Default: "normal", Words: []string{"light", "normal", "heavy"}},
		{Name: "bore", Type: SizeType, Need: true, Means: "of the bearing"},
		{Name: "outside", Type: SizeType, Need: true, Means: "of the bearing"},
		{Name: "width", Type: SizeType, Need: true, Means: "of the bearing over both rings, the maker's T"},
		{Name: "cone-width", Type: SizeType, Means: "of the cone alone, the maker's B"},
		{Name: "da", Type: SizeType, Means: "largest diameter before the small end of the cone, by the maker", Default: "a rule of thumb"},
		{Name: "db", Type: SizeType, Means: "least shoulder at the large end of the cone, by the maker", Default: "a rule of thumb"},
		{Name: "Da", Type: SizeType, Means: "least shoulder bore behind the cup, by the maker", Default: "a rule of thumb"},
		{Name: "Db", Type: SizeType, Means: "least bore before the thin side of the cup, by the maker", Default: "a rule of thumb"},
		{Name: "grease", Type: TextType, Means: "grease and quantity"},
		{
			Name: "end-float", Type: FloatsType, Means: "least and most; negative is preload", Default: "set by another bearing",
			Example: "least and most, such as [0.02 mm, 0.06 mm]; negative is preload",
		},
	}}

// ballKey is the key of a joint for a ball bearing, which is a joint of the kind bearing.
const ballKey = "ball-bearing"

var ballGroup = &Group{Name: ballKey,
	Means:   "A deep-groove ball bearing. A shoulder of the housing or of the shaft says where it lies; where the shaft has none, place or level says where that lies.",
	Example: "ball-bearing: {bearing: 6004-2RS, housing: roller.bore, shaft: axle.seat, rotating: outer}", Keys: []Key{
		{Name: "bearing", Type: TextType, Need: true, Means: "designation, as ordered; 2RS, 2RZ, 2Z and ZZ say that it is sealed on both sides and greased", Longest: 60},
		{Name: "housing", Type: RefType, Need: true, Means: "bore of the housing for the outer ring"},
		{Name: "shaft", Type: RefType, Need: true, Means: "seat of the shaft for the inner ring"},
		{Name: "rotating", Type: WordType, Need: true, Means: "the ring that turns against the load", Words: []string{"inner", "outer"}},
		{Name: "load", Type: WordType, Means: "for the choice of fits", Default: "normal", Words: []string{"light", "normal", "heavy"}},
		{Name: "bore", Type: SizeType, Means: "of the bearing", Default: "by the designation: 6000 to 6020, 6200 to 6220, 6300 to 6320"},
		{Name: "outside", Type: SizeType, Means: "of the bearing", Default: "by the designation"},
		{Name: "width", Type: SizeType, Means: "of the bearing", Default: "by the designation"},
		{Name: "grease", Type: TextType, Means: "grease of an open bearing"},
	}}

var slideGroup = &Group{Name: "slide",
	Means:   "A hub that slides on a shaft with a key, up to a shoulder, and is kept there; or a plain bush, in which the shaft turns. The keyways of the two give the clock angle of a hub.",
	Example: "slide: {hub: pulley.bore, on: shaft.seat, kept-by: shaft.nose}", Keys: []Key{
		{Name: "hub", Type: RefType, Need: true, Means: "bore that slides"},
		{Name: "on", Type: RefType, Need: true, Means: "step of the shaft that it slides on"},
		{Name: "kept-by", Type: RefType, Means: "of the shaft: the thread that a nut runs on, the groove of a retaining ring, or tapped holes in its end that a joint bolts a plate into; without it the shaft turns in the bore, or a hub with clamp grips it, and lies along it by face, level or place where no other joint says it"},
		{Name: "plate", Type: RefType, Means: "bore of a part that lies between the nut and the hub"},
	}}

var screwGroup = &Group{Name: "screw",
	Means:   "A thread outside a part in that of a bore. With face the one is screwed home on the other; else it runs in it, as a jack screw in its nut does, and stands as level or place say.",
	Example: "screw: {screw: spindle.thread, nut: bridge.thread}", Keys: []Key{
		{Name: "screw", Type: RefType, Need: true, Means: "thread outside"},
		{Name: "nut", Type: RefType, Need: true, Means: "thread of a bore, in which it runs"},
	}}

var looseGroup = &Group{Name: "loose", Means: "A part, or a thing bought, that is laid, hung or screwed on by hand.", OneOf: []string{"part", "item"},
	Example: "{part: funnel, how: hung into the mouth to fill in water, after: hopper}", Keys: []Key{
		{Name: "part", Type: NameType, Means: "name of the part, which is in no joint"},
		{Name: "item", Type: TextType, Means: "what is bought, as ordered: a line of the list to buy", Longest: 100, Example: "gear motor 2.2 kW, 32 rev/min"},
		{Name: "how", Type: TextType, Need: true, Means: "where it goes and what holds it; a line on the step", Longest: maxNote, Example: "where it goes and what holds it, in a line of text"},
		{Name: "after", Type: NameType, Need: true, Means: "the joint with whose step it comes"},
		{Name: "off", Type: YesType, Means: "it comes off again in that step, and weighs nothing after it", Default: "no"},
		{Name: "first", Type: YesType, Means: "it is put in before the two of that joint meet", Default: "no"},
		{
			Name: "as", Type: WordType,
			Means: "what the item is: a motor, the nut of the thread that it names, what fills the room beside a retaining ring; not said, by its words",
			Words: useWords(parts.AMotor, parts.ANut, parts.ASpacer),
		},
		{Name: "held", Type: WordType, Means: "by its weight alone, or pressed or driven in; not said, by how", Words: plain([]parts.Held{parts.ByWeight, parts.ByForce, parts.Held(parts.NoUse)})},
		{Name: "turned", Type: YesType, Means: "it comes on edge or turned, by an opening", Default: "what how says"},
		{Name: "kg", Type: NumberType, Means: "mass of the item", Unit: "kg", Low: 0.01, High: 100_000},
		{Name: "lb", Type: NumberType, Means: "mass of the item, in pounds", Unit: "lb", Low: 0.01, High: 200_000},
		{Name: "stands", Type: KeysType, Means: "where the item stands and how large it is, for one that is round and runs with a shaft: a motor or a coupling", Group: standsGroup},
		{Name: "buy", Type: TextType, Means: "what it is fastened with, as ordered: a line of the list to buy", Example: "screw #8-32 UNC x 5/8 in, socket head"},
		{Name: "count", Type: CountType, Means: "how many of buy, for all copies; without buy, of the item", Default: "1", Low: 1, High: maxCount},
		{
			Name: "lies", Type: ListType,
			Means: "where each copy of the part lies, for the pictures and to see whether it goes there; without it the part is not drawn", Group: lyingGroup,
			Entries: [2]int{1, maxCount},
		},
		{Name: "travels", Type: KeysType, Means: "how far the part moves when the machine is used, to see whether it is free so far and then stopped", Group: travelsGroup},
	}}

var travelsGroup = &Group{Name: "travels", Means: "How far a loose part moves along its axis in use, from where it lies.", Example: "{front: 80 mm, back: 80 mm, with: [collar]}", Keys: []Key{
	{Name: "front", Type: DistanceType, Means: "towards its front", Default: "0"},
	{Name: "back", Type: DistanceType, Means: "towards its back", Default: "0"},
	{Name: "with", Type: NamesType, Means: "the parts that move with it, all their copies", Entries: [2]int{1, maxCount}},
}}

var standsGroup = &Group{Name: "stands", Means: "Where a motor or a coupling stands, and its sizes, measured or from the maker's sheet.",
	Example: "{on: motor-adapter.motor, diameter: 220, length: 400}", Keys: []Key{
		{
			Name: "on", Type: RefType, Need: true,
			Means:   "the holes in a face of a plate or a turned part that its flange is bolted to, or the outside step of a shaft that it sits on from its shoulder outward",
			Example: "on: motor-adapter.motor, or auger-shaft.drive",
		},
		{
			Name: "face", Type: WordType, Means: "of the plate, the one it stands on; where the job has a motor that drives a shaft, the one away from that",
			Words: []string{string(parts.Front), string(parts.Back)},
		},
		{Name: "diameter", Type: SizeType, Means: "the largest of its body", Default: "the body is left out"},
		{Name: "length", Type: SizeType, Means: "of a motor from the plate to its end, of a coupling as a whole", Default: "the body is left out"},
		{Name: "flange", Type: SizeType, Means: "outside diameter of its flange", Default: "by IEC 60072-1 or NEMA MG 1 for those holes"},
		{Name: "shaft", Type: SizeType, Means: "diameter of its shaft end", Default: "by the frame of a motor without gear"},
		{Name: "shaft-length", Type: SizeType, Means: "of its shaft end, from the plate's face", Default: "by the frame of a motor without gear"},
	}}

var acceptGroup = &Group{Name: "accept", Means: "A finding that is taken as it is.", Example: "{finding: edge, at: cover.pry, number: 4 mm, reason: only jacks the joint apart}", Keys: []Key{
	{Name: "finding", Type: NameType, Need: true, Means: "code of the finding", Example: "the code the review prints, such as finding: edge"},
	{
		Name: "at", Type: PlaceType, Need: true, Means: "part, part.feature or joint; job for what is about the whole job",
		Example: "a part such as cover, its feature such as cover.pry, a joint, or job",
	},
	{
		Name: "number", Type: CoordinateType, Means: "the number that the review prints with the finding; if it gets worse the finding opens again, and what is found there without a number stays open",
		Example: "the number the review prints, such as number: 4 mm",
	},
	{Name: "reason", Type: TextType, Need: true, Means: "why it is right all the same; printed on the review", Longest: maxNote, Example: "why it is right all the same, in a line of text"},
}}

// bearingKey and everyKey are common to the rows of the cards.
var (
	bearingKey = Key{Name: "bearing", Type: NameType, Means: "name of a bearing joint"}
	placeKey   = Key{Name: "place", Type: TextType, Means: "another place, in words", Longest: 60}
	everyKey   = Key{Name: "every", Type: TextType, Need: true, Means: "how often", Longest: 30, Example: "every: 50 h, or every: month"}
)

var firstRunGroup = &Group{Name: "first run", Means: "The first run of the machine.", Example: "first-run: {runs: [{minutes: 10}], watch: [{bearing: front, most: 70}]}", Keys: []Key{
	{Name: "checks", Type: TextsType, Means: "what to look at before it turns", Entries: [2]int{0, 12}, Example: "a list of texts"},
	{Name: "warm-up", Type: KeysType, Means: "what is warmed before the start", Group: warmUpGroup},
	{Name: "runs", Type: ListType, Means: "the runs in order, idle before load", Default: "idle 10, 30 and 60 min, then under load", Group: runGroup, Entries: [2]int{0, 8}},
	{Name: "watch", Type: ListType, Means: "where the temperature is taken", Default: "at each bearing, without a limit", Group: watchGroup, Entries: [2]int{0, 8}},
	// Settling of bolted joints: common practice, no source.
	{Name: "again-after", Type: NumberType, Means: "when bolts and end play are looked at again", Unit: "hours", Default: "8", Low: 0.5, High: 1000},
}}

var warmUpGroup = &Group{Name: "warm-up", Means: "What is warmed before the start.", Example: "{minutes: 20, how: heater of the gear oil}", Keys: []Key{
	{Name: "minutes", Type: NumberType, Need: true, Means: "how long", Unit: "minutes", Low: 1, High: 1440},
	{Name: "how", Type: TextType, Need: true, Means: "what is warmed, and by what", Longest: 100},
}}

var runGroup = &Group{Name: "run", Means: "One stretch of the first run.", Example: "{minutes: 10, speed: 40}", Keys: []Key{
	{Name: "minutes", Type: NumberType, Need: true, Means: "when the temperatures are read, from the start of idling or of this load", Unit: "minutes", Low: 1, High: 1440},
	{Name: "speed", Type: NumberType, Means: "of what turns", Unit: "rev/min", Low: 0.1, High: 50_000},
	{Name: "load", Type: TextType, Means: "what loads it", Default: "it runs idle", Longest: 60},
}}

var watchGroup = &Group{Name: "watch", Means: "A temperature to watch.", Example: "{bearing: front-bearing, most: 70}", OneOf: []string{"bearing", "place"}, Keys: []Key{
	bearingKey, placeKey,
	{Name: "most", Type: NumberType, Means: "stop above it", Unit: "°C", Low: 20, High: 300},
}}

var upkeepGroup = &Group{Name: "upkeep", Means: "Greasing, bolts and what wears.", Example: "upkeep: {ports: [{bearing: front, every: 50 h}]}", Keys: []Key{
	{Name: "ports", Type: ListType, Means: "where grease or oil goes", Group: portGroup, Entries: [2]int{0, 10}},
	{Name: "bolts", Type: ListType, Means: "bolts to look at", Group: retightenGroup, Entries: [2]int{0, 10}},
	{Name: "wear", Type: ListType, Means: "what wears", Group: wearGroup, Entries: [2]int{0, 10}},
}}

var portGroup = &Group{Name: "port", Means: "A place for grease or oil.", Example: "{bearing: front-bearing, every: 50 h}", OneOf: []string{"bearing", "place"}, Keys: []Key{
	bearingKey, placeKey,
	{Name: "grease", Type: TextType, Means: "grease or oil; of another place needed", Default: "that of the bearing", Longest: 60},
	{Name: "amount", Type: TextType, Means: "how much at a time; of another place needed", Default: "by the bearing's outside and width", Longest: 30},
	everyKey,
}}

var retightenGroup = &Group{
	Name: "retighten", Means: "Bolts to look at; the torque is that of the joint.", Example: "{joint: barrel, every: month}",
	Keys: []Key{{Name: "joint", Type: NameType, Need: true, Means: "name of a bolt joint"}, everyKey},
}

var wearGroup = &Group{Name: "wear", Means: "What wears.", Example: "{part: die-ring, look: bore worn oval, every: month}", OneOf: []string{"part", "item"}, Keys: []Key{
	{Name: "part", Type: NameType, Means: "name of a part of the job"},
	{Name: "item", Type: TextType, Means: "something bought, in words", Longest: 60},
	{Name: "look", Type: TextType, Need: true, Means: "what to look at, and when to change it", Longest: 120},
	everyKey,
}}

var motorGroup = &Group{Name: "motor", Means: "The plate of a motor, as its maker wrote it, and what the machine asks of it.", OneOf: []string{"kw", "hp"},
	Example: "motor: {kw: 1.5, volts: 400, phases: 3, speed: 1420, rotation: clockwise, seen-from: drive-end, earth: foot, emergency-stop: front}", Keys: []Key{
		{Name: "maker", Type: TextType, Means: "maker and type", Longest: 60},
		{Name: "kw", Type: NumberType, Means: "power on the plate", Unit: "kW", Low: 0.01, High: 1000},
		{Name: "hp", Type: NumberType, Means: "power on the plate", Unit: "hp", Low: 0.01, High: 1500},
		{Name: "volts", Type: TextType, Need: true, Means: "voltage on the plate", Longest: 30},
		{Name: "phases", Type: CountType, Need: true, Means: "phases on the plate", Low: 1, High: 3},
		{Name: "hz", Type: NumberType, Means: "frequency on the plate", Unit: "Hz", Low: 1, High: 400},
		{Name: "amps", Type: NumberType, Means: "current on the plate", Unit: "A", Low: 0.01, High: 5000},
		{Name: "speed", Type: NumberType, Need: true, Means: "speed on the plate", Unit: "rev/min", Low: 1, High: 50_000},
		{Name: "output-speed", Type: NumberType, Means: "at the output of the gear", Unit: "rev/min", Low: 0.01, High: 50_000},
		{Name: "frame", Type: TextType, Means: "frame on the plate", Longest: 30},
		{Name: "flange", Type: TextType, Means: "flange on the plate", Longest: 30},
		{Name: "enclosure", Type: TextType, Means: "degree of protection on the plate", Longest: 30},
		{Name: "rotation", Type: WordType, Need: true, Means: "which way it is to turn", Words: []string{"clockwise", "counter-clockwise", "either"}},
		{
			Name: "seen-from", Type: WordType, Need: true,
			Means: "where one stands to see it turn so: drive-end looks at the shaft that comes out of it, non-drive-end from behind it to what it turns",
			Words: []string{"drive-end", "non-drive-end"},
		},
		{Name: "drives", Type: RefType, Means: "the step of a shaft that it turns, at the nearer end of which it stands", Example: "auger-shaft.drive"},
		{
			Name: "through", Type: WordType,
			Means:   "what is between the two: a coupling and a reversing-gear in line, a belt (or chain) and a gear-pair beside, with both shaft ends to one side; the two gears turn it the other way round",
			Default: "coupling", Words: []string{"coupling", "reversing-gear", "belt", "gear-pair"},
		},
		{Name: "earth", Type: TextType, Need: true, Means: "where the earth goes on", Longest: 100},
		{Name: "emergency-stop", Type: TextType, Need: true, Means: "where the emergency stop is", Longest: 100},
		{Name: "guards", Type: TextsType, Means: "guards that stop the motor when opened", Longest: 100, Entries: [2]int{0, 8}, Example: "a list of texts"},
		{Name: "notes", Type: TextsType, Means: "what else the electrician must know", Longest: 200, Entries: [2]int{0, 6}, Example: "a list of texts"},
	}}

var flangeGroup = &Group{Name: "measured flange", Means: "A motor flange measured with calipers: the file of centrepop flange.", Keys: []Key{
	{Name: "flange", Type: TextType, Means: "name of the flange"},
	{Name: "units", Type: WordType, Means: "the unit of bare numbers", Default: "mm", Words: []string{string(parts.Millimetres), string(parts.Inches)}},
	{Name: "caliper", Type: SizeType, Means: "± of every reading that says nothing else"},
	{Name: "spigot", Type: EitherType, Means: "the centring diameter, alone or with its ±", Group: measuredGroup},
	{Name: "holes", Type: KeysType, Need: true, Means: "the holes", Group: flangeHolesGroup, Example: "holes: {count: 4, diameter: 14.5}"},
	{Name: "bolt", Type: ThreadType, Means: "the bolt that goes through, such as M12"},
	{
		Name: "readings", Type: ListType, Need: true, Means: "the distances measured", Group: readingGroup, Entries: [2]int{1, maxFlangeReadings},
		Example: "readings: [{from: 1, to: 2, over: 201.9}, ...]",
	},
}}

var measuredGroup = &Group{Name: "measured diameter", Means: "A diameter with its own ±.", Example: "{diameter: 230.02, plus-minus: 0.02}", Keys: []Key{
	{Name: "diameter", Type: SizeType, Need: true, Means: "as measured"},
	{Name: "plus-minus", Type: SizeType, Means: "of this reading", Default: "the caliper's"},
}}

// Bounds on a file of a measured flange: nobody writes more by hand.
const (
	maxFlangeHoles    = 36
	maxFlangeReadings = 400
)

var flangeHolesGroup = &Group{Name: "measured holes", Means: "The holes of a measured flange.", Keys: []Key{
	{Name: "count", Type: CountType, Need: true, Means: "number of holes", Low: 3, High: maxFlangeHoles, Example: "count: 4"},
	{Name: "diameter", Type: SizesType, Need: true, Means: "of all, or a list with one for each", Entries: [2]int{3, maxFlangeHoles}, Example: "diameter: 14.5, or a list of one for each hole"},
	{Name: "plus-minus", Type: SizeType, Means: "of the diameters", Default: "the caliper's"},
	{Name: "first", Type: AngleType, Means: "clock angle of hole 1", Default: "0"},
	{Name: "thread", Type: ThreadType, Means: "of tapped holes"},
}}

var readingGroup = &Group{Name: "reading", Means: "One distance, from hole to hole or to the spigot.", Example: "{from: 1, to: 2, over: 201.9}",
	OneOf: []string{"over", "between", "centres"}, Keys: []Key{
		{Name: "from", Type: CountType, Need: true, Means: "number of a hole", Low: 1, High: maxFlangeHoles},
		{Name: "to", Type: HoleOrSpigot, Need: true, Means: "number of another hole, or spigot", Low: 1, High: maxFlangeHoles},
		{Name: "over", Type: SizeType, Means: "from the far edge of the one hole to that of the other, or over pins that fill them; to the spigot, from the far edge to its outside"},
		{Name: "between", Type: SizeType, Means: "from the near edge of the one hole to that of the other; to the spigot, from the near edge to its outside"},
		{Name: "centres", Type: SizeType, Means: "from centre to centre, worked out already from pins of another size"},
		{Name: "plus-minus", Type: SizeType, Means: "of this reading", Default: "the caliper's"},
	}}

// Groups lists every group of keys, a group before those in it: the job, the
// part, and the file of a measured flange with all that they hold.
func Groups() []*Group { return groupsFrom(jobGroup, partGroup, flangeGroup) }

// groupsFrom lists groups with all that they hold.
func groupsFrom(first ...*Group) []*Group {
	var out []*Group
	seen := map[*Group]bool{}
	var add func(g *Group)
	add = func(g *Group) {
		if seen[g] {
			return
		}
		seen[g] = true
		out = append(out, g)
		for _, k := range g.Keys {
			if k.Group != nil {
				add(k.Group)
			}
		}
	}
	for _, g := range first {
		add(g)
	}
	return out
}

// GroupsOf lists the groups of keys of one kind of part, with only the keys
// that it takes, or one named group with those in it; nil if there is neither.
// known are the names that it takes.
func GroupsOf(name string) (groups []*Group, known []string) {
	known = Kinds()
	for _, k := range kinds {
		if string(k.kind) == name {
			own := *partGroup
			own.Keys = slices.DeleteFunc(slices.Clone(own.Keys), func(key Key) bool { return key.forms != 0 && key.forms&k.forms == 0 })
			return groupsFrom(&own), known
		}
	}
	for _, g := range Groups() {
		known = append(known, g.Name)
		if g.Name == name {
			return groupsFrom(g), known
		}
	}
	return nil, known
}
