package read

import (
	"slices"

	"centrepop/parts"
)

// The keys of a part file. Meaning, default and limits stand here and nowhere
// else.

// faceWords are the two sides of a part.
var faceWords = []string{string(parts.Front), string(parts.Back)}

// sideWords are the edges of the base of a folded part.
var sideWords = []string{string(parts.TopSide), string(parts.RightSide), string(parts.BottomSide), string(parts.LeftSide)}

// flapWords are the flanges of a folded part: on a side, and on the free edge of the one
// before.
var flapWords = append(slices.Clone(sideWords), "top-2", "right-2", "bottom-2", "left-2", "top-3", "right-3", "bottom-3", "left-3")

// unlessBar are the forms that need stock: that of a bar is its section.
const unlessBar = flat | turned | tubular | rolled | ruled | folded | helical

const (
	refExample  = "part.feature, such as tube.outside"
	holeExample = "M10 clearance, M8 tap, 11 mm, 7/16 in or {diameter: 10, fit: H7}"
	fitExample  = "a class such as H7, or {limits: [low, high]}, {plus-minus: 0.1}, {measured: [0.7, 0.9]} or {light-press: part.feature}"
)

var partGroup = &Group{Name: "part", Means: "A part file: one drawing.", Keys: []Key{
	{Name: "part", Type: NameType, Need: true, Means: "the name that jobs and other parts refer to", Example: "a name, such as part: cover"},
	{Name: "title", Type: TextType, Means: "the name for people", Default: "the name with spaces"},
	{Name: "kind", Type: WordType, Need: true, Means: "what the part is; turned serves any turned part, plate any flat one", Words: Kinds(), Example: "kind: " + list(Kinds())},
	{
		Name: "for", Type: WordType,
		Means: "what it is for: it keeps hands off, the machine stands on it, it goes into keyways, it holds one part on another, it lies between two that are bolted together and seals; not said, by its title",
		Words: useWords(parts.Guarding, parts.Leg, parts.AKey, parts.Brace, parts.Gasket),
	},
	{Name: "quantity", Type: CountType, Means: "how many are made", Default: "1", Low: 1, High: 10_000},
	{Name: "units", Type: WordType, Means: "the unit of bare numbers in this file", Words: []string{string(parts.Millimetres), string(parts.Inches)}},
	{Name: "material", Type: TextType, Means: "the grade, such as S235, 1.4301 or A36; the review says if it is not known"},
	{Name: "top", Type: WordType, Means: "how TOP (12 o'clock) is marked on the part", Words: []string{"scribe", "punch", "notch", "paint", "keyway"}},
	{Name: "stock", Type: KeysType, Means: "what it is made from", Group: stockGroup, forms: unlessBar, use: "parts that are no bars, whose section says it"},
	{
		Name: "outline", Type: KeysType,
		Means: "the contour of a flat part, seen on its front face; of a folded one its base, a square or rectangle over the outside of the flanges",
		Group: outlineGroup, forms: flat | folded, use: "flat and folded parts",
	},
	{Name: "thickness", Type: SizeType, Means: "of a flat or folded part", Default: "that of the plate or sheet", forms: flat | folded, use: "flat and folded parts"},
	{Name: "bends", Type: KeysType, Means: "what is folded up from the sides of the base", Group: bendsGroup, forms: folded, use: "kind folded"},
	{Name: "bore", Type: KeysType, Means: "the centre bore of a flat part, at the origin", Group: boreGroup, forms: flat, use: "flat parts; turned parts have inside steps"},
	{Name: "profile", Type: KeysType, Means: "a turned part: its steps along the axis", Group: profileGroup, forms: turned, use: "turned parts"},
	{Name: "tube", Type: KeysType, Means: "a tube; its features are called outside and bore", Group: tubeGroup, forms: tubular, use: "kind tube"},
	{Name: "cone", Type: KeysType, Means: "a cone rolled from sheet; its front is the large end", Group: coneGroup, forms: rolled, use: "kind cone"},
	{Name: "transition", Type: KeysType, Means: "a square-to-round of sheet; its front is the square end", Group: transitionGroup, forms: ruled, use: "kind transition"},
	{Name: "flight", Type: KeysType, Means: "auger flights along a shaft, pulled from flat rings", Group: flightGroup, forms: helical, use: "kind flight"},
	{Name: "bar", Type: KeysType, Means: "a length of square, rectangular or round tube, angle, channel, flat or solid bar", Group: barGroup, forms: linear, use: "kind bar"},
	{Name: "ends", Type: KeysType, Means: "ends of a tube cut to sit on another round (saddles)", Group: endsGroup, forms: tubular, use: "kind tube with the key tube"},
	{Name: "chamfers", Type: ListType, Means: "bevelled and rounded edges, spherical ends", Group: chamferGroup, Entries: [2]int{0, 200}, forms: flat | turned | tubular, use: "flat and turned parts"},
	{
		Name: "holes", Type: ListType, Means: "groups of equal holes on a face", Group: holeGroup, Entries: [2]int{0, 200},
		forms: flat | turned | tubular | folded | linear, use: "flat, turned and folded parts and bars",
	},
	{
		Name: "slots", Type: ListType, Means: "groups of equal slots with round ends on a face", Group: slotGroup, Entries: [2]int{0, 200},
		forms: flat | turned | tubular | folded | linear, use: "flat, turned and folded parts and bars",
	},
	{
		Name: "radial", Type: ListType, Means: "holes, slots and windows in the outside of a round", Group: radialGroup, Entries: [2]int{0, 200},
		forms: turned | tubular, use: "turned parts, which have a profile or a tube",
	},
	{
		Name: "keyways", Type: ListType, Means: "keyways for parallel and Woodruff keys, on shaft steps and in bores", Group: keywayGroup,
		Entries: [2]int{0, 50}, forms: flat | turned, use: "flat and turned parts",
	},
	{
		Name: "grooves", Type: ListType, Means: "grooves turned into steps, bores and end faces: for retaining rings, O-rings, grease, relief",
		Group: grooveGroup, Entries: [2]int{0, 50}, forms: flat | turned, use: "flat and turned parts",
	},
	{Name: "flats", Type: ListType, Means: "flats, squares and hexagons milled on outside steps", Group: flatsGroup, Entries: [2]int{0, 50}, forms: turned, use: "turned parts"},
	{Name: "centres", Type: KeysType, Means: "centre holes in the ends; a solid bar turned between centres has form A without it", Group: centresGroup, forms: turned, use: "turned parts"},
	{Name: "clamp", Type: KeysType, Means: "a ring split by a saw cut, with a screw across it", Group: clampGroup, forms: turned, use: "turned parts"},
	{Name: "require", Type: ListType, Means: "what has to be flat, square, parallel, true or equal, and within how much", Group: requireGroup, Entries: [2]int{0, 50}},
	{
		Name: "notes", Type: TextsType, Means: "lines printed on its sheets; after DRILL:, MILL:, LATHE: or BENCH: a row of the operations and of the record",
		Longest: maxNote, Entries: [2]int{0, 100}, Example: "a list of texts",
	},
}}

var requireGroup = &Group{Name: "require", Means: "A tolerance of form, direction or place (ISO 1101), or equal lengths of all copies.",
	Example: "{is: squareness, within: 0.1, of: back, to: bore}", Keys: []Key{
		{Name: "is", Type: WordType, Need: true, Means: "what is required; equal: the same on all copies", Words: plain(parts.RequirementKinds), Example: "is: squareness"},
		{Name: "within", Type: SizeType, Need: true, Means: "width of the tolerance zone; of equal: the largest less the smallest", Example: "within: 0.05 mm"},
		{Name: "of", Type: NameType, Need: true, Means: "a face (front, back), a step, the bore or the outline; for equal a step or length", Example: "of: front"},
		{Name: "to", Type: NameType, Means: "the datum: a face, a step, the bore or the outline; not with flatness or equal", Example: "to: bore"},
	}}

var stockGroup = &Group{Name: "stock", Means: "What a part is made from.", Example: "stock: {plate: 8 mm, cut: laser}",
	OneOf: []string{"plate", "sheet", "round", "tube", "square", "flat", "casting", "bought"}, Keys: []Key{
		{Name: "plate", Type: SizeType, Means: "thickness of the plate"},
		{Name: "sheet", Type: SizeType, Means: "thickness of the sheet"},
		{Name: "round", Type: SizeType, Means: "diameter of the bar"},
		{Name: "tube", Type: SizeType, Means: "outside diameter of the tube; wall goes with it"},
		{Name: "square", Type: SizeType, Means: "side of the square bar"},
		{Name: "flat", Type: SizeType, Means: "width of the flat bar; wall, its thickness, goes with it"},
		{Name: "casting", Type: StockNameType, Means: "name of the casting, or its largest size"},
		{Name: "bought", Type: TextType, Means: "words that order an article which comes half finished, such as a sprocket with its teeth: of its profile only what has limits, a finish or a thread of its own is turned here, with pilot every bore; what is on it is made here", Example: `bought: "Sprocket 10B-1, 17 teeth, hub 60"`},
		{Name: "pilot", Type: SizeType, Means: "bore that a bought article comes with", Example: "pilot: 16 mm"},
		{Name: "wall", Type: SizeType, Means: "wall of a tube, thickness of a flat"},
		{Name: "length", Type: SizeType, Means: "length to saw"},
		{Name: "cut", Type: WordType, Means: "how the blank is cut", Words: []string{"laser", "plasma", "waterjet", "flame", "saw", "none"}},
	}}

var outlineGroup = &Group{Name: "outline", Means: "The contour of a flat part, centred on the origin unless given by points or a path; x right, y up.",
	OneOf: []string{"circle", "square", "rectangle", "polygon", "slot", "path"}, Example: "outline: {circle: 165}", Keys: []Key{
		{Name: "circle", Type: SizeType, Means: "diameter"},
		{Name: "square", Type: SizeType, Means: "side"},
		{Name: "rectangle", Type: PairType, Means: "width and height", Example: "the width and the height, such as [200, 120]"},
		{Name: "polygon", Type: KeysType, Means: "a regular polygon, or listed corners", Group: polygonGroup},
		{Name: "slot", Type: PairType, Means: "overall length and width of a shape with round ends", Example: "the width and the height, such as [200, 120]"},
		{Name: "path", Type: PathType, Means: "SVG path data of one closed contour in mm, y up, whatever the units of the file", Unit: "mm", Example: `"M0 0 L100 0 L100 50 Z"`},
		{Name: "corner", Type: DistanceType, Means: "corner radius of a square or rectangle"},
		{Name: "fit", Type: ClassFitType, Means: "limits of a circle", Group: fitGroup, Example: fitExample},
		{Name: "leave", Type: DistanceType, Means: "what the cutter leaves on the diameter or width for the lathe"},
	}}

var polygonGroup = &Group{Name: "polygon", Means: "A regular polygon (sides, across-flats, first), or points in order round the outline.",
	Example: "polygon: {sides: 6, across-flats: 50, first: 0}, or polygon: {points: [[0, 0], [50, 0], [0, 50]]}", Keys: []Key{
		{Name: "sides", Type: CountType, Means: "number of sides", Low: 3, High: 64},
		{Name: "across-flats", Type: SizeType, Means: "twice the distance of a side from the middle"},
		{Name: "first", Type: AngleType, Means: "clock angle of a corner, not of a side, from TOP", Default: "0"},
		{Name: "points", Type: PointsType, Means: "corners [x, y], three or more", Entries: [2]int{3, maxCount}, Example: "a list of points, such as [[0, 60], [0, -60]]"},
	}}

var bendsGroup = &Group{Name: "bends", Means: "The flanges of a folded part.", Example: "bends: {radius: 2, flanges: [{side: top, height: 30}]}", Keys: []Key{
	{Name: "radius", Type: SizeType, Need: true, Means: "inside radius of the bends"},
	{Name: "k", Type: NumberType, Means: "how far the neutral line lies from the inside, in thicknesses, from a test strip", Default: "that of DIN 6935", Low: 0.1, High: 0.6},
	{Name: "gap", Type: DistanceType, Means: "left open between two flanges at a corner", Default: "0.5 mm"},
	{
		Name: "corners", Type: WordType,
		Means:   "where flanges that are turned in meet at a corner, on the free edges of two walls: square cuts back those of the left and the right side, mitred cuts both at 45 degrees",
		Default: "square", Words: []string{"square", "mitred"}, Example: "corners: mitred",
	},
	{Name: "die", Type: SizeType, Means: "opening of the die", Default: "the usual one of the thickness"},
	{Name: "punch", Type: SizeType, Means: "thickness of the punch over its tip, for what stands beside it"},
	{Name: "flanges", Type: ListType, Need: true, Means: "at most one on each side of the base, and on the free edge of each", Group: flapGroup, Entries: [2]int{1, 12}},
}}

var flapGroup = &Group{Name: "flange", Means: "A flange on a side of the base.", Example: "{side: top, height: 30}", Keys: []Key{
	{Name: "side", Type: WordType, Need: true, Means: "the edge of the base, seen on the front face; top-2 is the free edge of the flange at the top, top-3 that of top-2", Words: flapWords},
	{Name: "height", Type: SizeType, Need: true, Means: "along the outside, from the corner to the free edge or the next corner; beyond 90 degrees from the outside of the bend"},
	{Name: "angle", Type: AngleType, Means: "what the sheet turns through; 90 is square", Default: "90", Low: 1, High: 150},
	{
		Name: "toward", Type: WordType, Means: "the face of the sheet that comes to lie inside its bend; of a flange on the base the face that it stands on",
		Default: "back", Words: []string{string(parts.Back), string(parts.Front)},
	},
	{Name: "radius", Type: SizeType, Means: "its own inside radius", Default: "that of bends"},
	{Name: "left", Type: DistanceType, Means: "how far it stays off the left end of its side, with the side at the top", Default: "0, or as the flange it is on"},
	{Name: "right", Type: DistanceType, Means: "how far it stays off the right end", Default: "0, or as the flange it is on"},
}}

const afterWeldMeans = "finished after the last weld on the part, with its keyways: until then some is left on the diameter"

var boreGroup = &Group{Name: "bore", Means: "The centre bore of a flat part.", Example: "bore: {diameter: 114.3 mm, fit: H7, leave: 2 mm}", Keys: []Key{
	{Name: "diameter", Type: SizeType, Need: true, Means: "finished diameter"},
	{Name: "fit", Type: ClassFitType, Means: "its limits", Group: fitGroup, Example: fitExample},
	{Name: "leave", Type: DistanceType, Means: "what the cutter leaves on the diameter for the lathe"},
	{Name: "after-weld", Type: YesType, Means: afterWeldMeans},
}}

var diameterGroup = &Group{Name: "diameter", Means: "A diameter with its fit.", Example: "{diameter: 10, fit: H7}", Keys: []Key{
	{Name: "diameter", Type: SizeType, Need: true, Means: "the size"},
	{Name: "fit", Type: ClassFitType, Means: "its limits", Group: fitGroup, Example: fitExample},
}}

var fitGroup = &Group{Name: "fit", Means: "How a size is limited: an ISO 286 class (H7 for bores, h9 for outsides), or one of these keys.",
	Example: fitExample, OneOf: []string{"light-press", "measured", "limits", "plus-minus"}, Keys: []Key{
		{Name: "light-press", Type: RefType, Means: "bores only: turned 0.01 to 0.03 mm under the outside of that feature as measured", Example: refExample},
		{
			Name: "measured", Type: PairType,
			Means:   "how much smaller an outside is turned than the bore it goes into as measured, or a bore larger than its spigot",
			Example: "the least and the most play on diameter, such as [0.7, 0.9]",
		},
		{Name: "limits", Type: PairType, Means: "the two sizes to machine to, smaller first", Example: "the lower and the upper size, such as [90.000, 90.035]"},
		{Name: "plus-minus", Type: SizeType, Means: "symmetric tolerance, at most a tenth of the size"},
	}}

var profileGroup = &Group{Name: "profile", Means: "A turned part along its axis, from the front face to the back.", Keys: []Key{
	{Name: "one-setting", Type: NamesType, Means: "steps that are turned without letting the part go", Entries: [2]int{2, 100}, Example: "a list of steps of this profile"},
	{
		Name: "outside", Type: ListType, Need: true, Means: "steps of the outside; they make up the whole length", Group: stepGroup, Entries: [2]int{1, 100},
		Example: "the steps from the front face to the back",
	},
	{Name: "inside", Type: ListType, Means: "steps of the bore from the front face; shorter than the part is a blind bore", Group: stepGroup, Entries: [2]int{1, 100}},
}}

const knurlExample = "type and pitch in mm, such as RAA 1 or RGE 0.8"

const undercutExample = "DIN 509-F, DIN 509-F 0.6x0.3, behind a thread DIN 76-A, or {width: 3, depth: 0.3}"

var stepGroup = &Group{Name: "step", Means: "One cylinder of a profile.",
	Example: "{name: body, diameter: 165, fit: h9, length: 48} or {name: nose, thread: M40x1.5, length: 20}", OneOf: []string{"diameter", "thread"},
	Keys: []Key{
		{Name: "name", Type: NameType, Means: "name for references, chamfers and sheets", Default: "outside-1, inside-2 and so on"},
		{Name: "diameter", Type: SizeType, Means: "finished diameter"},
		{Name: "fit", Type: ClassFitType, Means: "its limits; not with a thread", Group: fitGroup, Example: fitExample},
		{
			Name: "thread", Type: ThreadType,
			Means:   "a threaded step: its designation; of a lead screw or its nut Tr24x5, Tr24x10P5 LH (lead 10, two starts) or 3/4-6 ACME, with a class where it is not the usual one: -7e, -8e, -8c outside and -7H, -8H inside, ACME-2G, -3G, -4G",
			Example: "M40x1.5",
		},
		{Name: "length", Type: SizeType, Need: true, Means: "along the axis"},
		{
			Name: "length-limits", Type: PairType, Means: "the two limits of that length, smaller first; of a single step those of the whole part",
			Default: "the general tolerance", Example: "the shorter and the longer, such as [68.9, 69.1]",
		},
		{Name: "seat", Type: TextType, Means: "what sits here: bearing, seal, tube"},
		{Name: "lip", Type: WordType, Means: "of a bore whose seat is a seal: the face that its lip looks to; not said, away from the open end of the bore", Words: faceWords},
		{Name: "undercut", Type: NamedType, Means: "relief groove at the step's inner corner: as drawings name it, or its keys", Group: undercutGroup, Example: undercutExample},
		{Name: "taper", Type: KeysType, Means: "the step is a cone, its diameter that of the large end", Group: taperGroup},
		{Name: "knurl", Type: TextType, Means: "knurl of DIN 82 on an outside: type and pitch in mm; the diameter is that over the points", Example: knurlExample},
		{Name: "finish", Type: TextType, Means: "surface, such as Ra 1.6 (µm) or Ra 63 uin; in inch jobs a bare number from 8 up is in µin"},
		{Name: "hardness", Type: NumberType, Unit: "HRC", Low: 20, High: 68, Means: "hardened to at least this, and ground"},
		{Name: "after-weld", Type: YesType, Means: afterWeldMeans},
	}}

var taperGroup = &Group{Name: "taper", Means: "A cone.", Example: "taper: {to: 40} or {ratio: 10} or {angle: 8}", OneOf: []string{"to", "ratio", "angle"}, Keys: []Key{
	{Name: "to", Type: SizeType, Means: "diameter of the small end"},
	{Name: "ratio", Type: NumberType, Low: 0.3, High: 1000, Means: "x of 1:x: the length in which the diameter changes by 1"},
	{Name: "angle", Type: AngleType, Low: 0.05, High: 120, Means: "between opposite flanks"},
	{Name: "toward", Type: WordType, Means: "the end that is small", Default: "back", Words: faceWords},
}}

var centresGroup = &Group{Name: "centres", Means: "Centre holes, ISO 6411.", Example: "centres: {form: B}", Keys: []Key{
	{Name: "form", Type: WordType, Means: "A plain, B with a protecting chamfer, R curved", Default: "A", Words: []string{"A", "B", "R"}},
	{Name: "pilot", Type: SizeType, Means: "diameter of the pilot", Default: "by the diameter of the end"},
	{Name: "ends", Type: WordType, Means: "the ends that have one", Default: "both", Words: []string{"both", "front", "back"}},
}}

var undercutGroup = &Group{Name: "undercut", Means: "A relief groove with sizes of its own.", Example: "undercut: {width: 3, depth: 0.3}", Keys: []Key{
	{Name: "width", Type: SizeType, Need: true, Means: "along the axis"},
	{Name: "depth", Type: SizeType, Need: true, Means: "on one side, not on diameter"},
}}

var tubeGroup = &Group{Name: "tube", Means: "A tube.", Example: "tube: {outside: 114.3 mm, wall: 4 mm, length: 600 mm}", Keys: []Key{
	{Name: "outside", Type: EitherType, Need: true, Means: "outside diameter, alone or with its fit", Group: diameterGroup},
	{Name: "fit", Type: ClassFitType, Means: "limits of the outside", Group: fitGroup, Example: fitExample},
	{Name: "wall", Type: SizeType, Need: true, Means: "wall thickness"},
	{Name: "length", Type: SizeType, Need: true, Means: "overall length"},
	{Name: "seam", Type: AngleType, Means: "of a tube rolled from sheet: the clock angle of its seam, seen from the front", Default: "180"},
	{Name: "overlap", Type: DistanceType, Means: "of a tube rolled from sheet: what one edge laps over the other at the seam, clockwise of it"},
}}

// formedKeys are the keys of every part formed from sheet.
func formedKeys(seam string) []Key {
	return []Key{
		{Name: "height", Type: SizeType, Need: true, Means: "distance between the planes of the two ends"},
		{Name: "thickness", Type: SizeType, Need: true, Means: "of the sheet"},
		{Name: "measured", Type: WordType, Means: "the surface of the sheet that the sizes of the ends are taken on", Default: "outside", Words: []string{"outside", "inside"}},
		{Name: "seam", Type: AngleType, Means: seam, Default: "180"},
		{Name: "overlap", Type: DistanceType, Means: "what one edge laps over the other at the seam"},
		{Name: "sheet", Type: PairType, Means: "sides of the stock sheet; a larger blank is cut in pieces", Example: "the stock sheet's two sides, such as [1000, 2000]"},
	}
}

var coneGroup = &Group{
	Name: "cone", Means: "A cone rolled from sheet, the large end in front.", Example: "cone: {large: 300, small: 150, height: 200, thickness: 2}",
	Keys: append([]Key{
		{Name: "large", Type: SizeType, Need: true, Means: "diameter of the large end"},
		{Name: "small", Type: SizeType, Need: true, Means: "diameter of the small end"},
		{Name: "offset", Type: DistanceType, Means: "how far the small end lies to the side of the large one"},
	}, formedKeys("clock angle of the seam, seen from the front")...),
}

var transitionGroup = &Group{
	Name: "transition", Means: "A square-to-round of sheet: a rectangle in front, a circle at the back.",
	Example: "transition: {width: 200, depth: 200, diameter: 150, height: 120, thickness: 2}",
	Keys: append([]Key{
		{Name: "width", Type: SizeType, Need: true, Means: "of the rectangle, from 9 to 3 o'clock"},
		{Name: "depth", Type: SizeType, Means: "of the rectangle, from 6 o'clock to TOP", Default: "the width"},
		{Name: "diameter", Type: SizeType, Need: true, Means: "of the circle"},
		{Name: "offset", Type: PointType, Means: "of the circle's centre from the rectangle's: x to the right, y to TOP", Example: "a point [x, y]"},
		{Name: "bend", Type: WordType, Means: "faceted: bent in the press at each line; rolled: curved without lines", Default: "faceted", Words: []string{"faceted", "rolled"}},
	}, formedKeys("the side with the seam in its middle: 0, 90, 180 or 270")...),
}

var flightGroup = &Group{Name: "flight", Means: "The flights of an auger.", Example: "flight: {shaft: 60, outside: 160, pitch: 120, thickness: 6, length: 480}", Keys: []Key{
	{Name: "shaft", Type: SizeType, Need: true, Means: "diameter of the shaft or tube it is welded to"},
	{Name: "outside", Type: SizeType, Need: true, Means: "outside diameter"},
	{Name: "pitch", Type: SizeType, Need: true, Means: "advance along the axis in one turn"},
	{Name: "thickness", Type: SizeType, Need: true, Means: "of the sheet"},
	{Name: "length", Type: SizeType, Means: "along the axis", Default: "the pitch, one turn"},
	{Name: "hand", Type: WordType, Means: "right winds like a common screw", Default: "right", Words: []string{"right", "left"}},
	{Name: "moves", Type: WordType, Means: "the face that it moves its load to; away from the motor where it is not said", Words: []string{string(parts.Front), string(parts.Back)}},
}}

var endsGroup = &Group{Name: "ends", Means: "The ends of a tube that are cut to sit on another round.", Keys: []Key{
	{Name: string(parts.Front), Type: KeysType, Means: "the front end", Group: endGroup},
	{Name: string(parts.Back), Type: KeysType, Means: "the back end", Group: endGroup},
}}

var endGroup = &Group{Name: "end", Means: "A saddle: how one end of a tube sits on a main.", Example: "back: {onto: main-tube.outside, angle: 90, joint: set-on, gap: 1.5}", Keys: []Key{
	{Name: "onto", Type: OntoType, Need: true, Means: "the main: an outside of another part, or its diameter and wall", Group: ontoGroup},
	{Name: "angle", Type: AngleType, Means: "between the two axes; 90 is square", Default: "90", Low: 30, High: 90},
	{Name: "offset", Type: CoordinateType, Means: "of this axis from the main's; positive to the right, seen from the free end with the acute side up"},
	{Name: "joint", Type: WordType, Means: "set-on: on the outside of the main; set-in: through its wall", Default: "set-on", Words: []string{"set-on", "set-in"}},
	{Name: "gap", Type: DistanceType, Means: "root gap for the weld"},
	{Name: "clock", Type: AngleType, Means: "clock angle of this tube that lies on the acute side; at 90° towards the main's front", Default: "0"},
	{Name: "place", Type: KeysType, Means: "where on the main the two axes cross, for the opening and its template", Group: placeGroup},
}}

var ontoGroup = &Group{Name: "onto", Means: "A main that is no part of the job.", Example: "onto: {diameter: 168.3, wall: 4.5}", Keys: []Key{
	{Name: "diameter", Type: SizeType, Need: true, Means: "outside diameter of the main"},
	{Name: "wall", Type: SizeType, Means: "its wall, for set-in joints"},
}}

var placeGroup = &Group{Name: "place", Means: "A place on the outside of a main.", Example: "place: {clock: 0, axial: 140, from: back}", Keys: []Key{
	{Name: "clock", Type: AngleType, Means: "clock angle on the main, seen on its front face", Default: "0"},
	{
		Name: "axial", Type: DistanceType, Need: true,
		Means: "distance along the main from the face of from to where the two axes cross, also beyond its other end: a branch that leans comes out nearer its leans",
	},
	{Name: "from", Type: WordType, Means: "the face of the main that axial starts at", Default: "front", Words: faceWords},
	{Name: "leans", Type: WordType, Means: "the face of the main that the free end of this tube leans to, its acute side; at 90 degrees that of line 0", Default: "front", Words: faceWords},
}}

var chamferGroup = &Group{Name: "chamfer", Means: "A bevelled or rounded edge, or a spherical end.",
	Example: "{edge: bore-back, size: 5 mm, angle: 45, for: weld}", OneOf: []string{"size", "radius", "sphere"}, Keys: []Key{
		{Name: "edge", Type: NameType, Need: true, Means: "bore-front, bore-back, outline-front, outline-back; of turned parts STEP-front and STEP-back"},
		{Name: "size", Type: SizeType, Means: "of a bevel: depth along the axis"},
		{Name: "radius", Type: SizeType, Means: "of a rounded edge of a turned part, a quarter of a circle"},
		{Name: "sphere", Type: SizeType, Means: "spherical radius of a crowned end of a solid turned part, at least half of its diameter"},
		{Name: "angle", Type: AngleType, Means: "of a bevel, from the axis; at 45 the diameter changes by twice the size", Default: "45", Low: 1, High: 89},
		{Name: "for", Type: WordType, Means: "what it is for", Words: []string{"weld", "lead-in", "deburr"}},
	}}

var holeGroup = &Group{
	Name: "holes", Means: "A group of equal holes on a face, with one pattern.", Example: "{name: bolts, circle: {pcd: 140, count: 6}, size: M10 clearance}",
	OneOf: patternKeys(),
	Keys: withPatterns([]Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the group", Example: "name the holes, such as name: bolts"},
		{Name: "face", Type: WordType, Means: "the face it is marked on and looked at from", Default: "front", Words: faceWords},
		{Name: "on", Type: WordType, Means: "of a folded part: the side whose flange it is on; its places then count along the side from the middle and up the outside of the flange from the corner, with the side at the top; of a bar: top or bottom, looked at with the left end at the left", Words: flapWords},
		{Name: "walls", Type: WordType, Means: "of a tube bar: through the wall that is marked, or through both", Default: "one", Words: []string{"one", parts.BothWalls}},
	}, []Key{
		{
			Name: "size", Type: HoleType, Need: true,
			Means: "what the holes are: clearance for a screw, with fine, medium or coarse behind it (medium if not said; ISO 273, ASME B18.2.8), " +
				"where an inch screw may go without its pitch, as in 1/2 clearance fine; a tapped hole; or a diameter", Group: diameterGroup,
			Example: holeExample,
		},
		{Name: "depth", Type: DepthType, Means: "full diameter or full thread", Default: "through"},
		{Name: "counterbore", Type: KeysType, Means: "flat-bottomed enlargement at the face", Group: counterboreGroup},
		{Name: "countersink", Type: KeysType, Means: "conical enlargement at the face; not with a counterbore", Group: countersinkGroup},
		{Name: "note", Type: TextType, Means: "a line beside the size"},
		forKey, fittedKey,
	}),
}

// forKey and fittedKey say what holes are there for, and what goes into them.
var (
	forKey = Key{
		Name: "for", Type: WordType,
		Means: "what it is for besides the bolts of joints: the part hangs by it, screws push parts apart or draw along it, a grease nipple, what runs out, what opens into the part, pins; not said, by its name and note",
		Words: useWords(parts.Lifting, parts.Jacking, parts.Drawing, parts.Grease, parts.Drain, parts.Opening, parts.Pins),
	}
	fittedKey = Key{
		Name: "fitted", Type: TextType, Means: "what is screwed or pressed into each, as ordered but for its thread: a line of the list to buy",
		Default: "the nipple, plug, set screw or dowel pin that the note names", Longest: 100,
		Example: "fitted: grease nipple, or set screw, cone point, 3/4 in long",
	}
)

// useWords are uses as the file says them, and that something is for none of them.
func useWords(of ...parts.Use) []string { return plain(append(of, parts.NoUse)) }

var counterboreGroup = &Group{Name: "counterbore", Means: "A flat-bottomed enlargement.", Example: "counterbore: {diameter: 18, depth: 11}", Keys: []Key{
	{Name: "diameter", Type: SizeType, Need: true, Means: "wider than the hole"},
	{Name: "depth", Type: SizeType, Need: true, Means: "from the face"},
}}

var countersinkGroup = &Group{Name: "countersink", Means: "A conical enlargement.", Example: "countersink: {diameter: 20, angle: 90}", Keys: []Key{
	{Name: "diameter", Type: SizeType, Need: true, Means: "at the face"},
	{Name: "angle", Type: AngleType, Need: true, Means: "included angle of the screw head", Low: 30, High: 150, Example: "the included angle of the screw head, such as 90"},
}}

var slotGroup = &Group{
	Name: "slots", Means: "A group of equal slots with round ends on a face, with one pattern of their centres.", Example: "{name: adjust, at: [[0, 60]], width: 9, length: 30, turn: 90}",
	OneOf: patternKeys(),
	Keys: withPatterns([]Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the group", Example: "name the slot, such as name: adjust"},
		{Name: "face", Type: WordType, Means: "the face it is marked on and looked at from", Default: "front", Words: faceWords},
		{Name: "on", Type: WordType, Means: "as of holes", Words: flapWords},
		{Name: "walls", Type: WordType, Means: "as of holes", Default: "one", Words: []string{"one", parts.BothWalls}},
	}, []Key{
		{Name: "width", Type: SizeType, Need: true, Means: "across the slot", Example: "the width across the slot"},
		{Name: "length", Type: SizeType, Need: true, Means: "overall, with both round ends; more than the width", Example: "the overall length of the slot"},
		{Name: "turn", Type: AngleType, Means: "clock angle of its long axis: 0 upright, 90 across, which is along a bar", Default: "0"},
		{Name: "depth", Type: DepthType, Means: "from the face", Default: "through"},
		forKey,
	}),
}

var radialGroup = &Group{Name: "radial", Means: "Holes, slots or windows in the outside of a round, one at each clock angle.",
	Example: "{name: grease-port, clock: 0, axial: 40, size: G1/8 tap}", OneOf: []string{"size", "slot", "window"}, Keys: []Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the feature; of several, name-2 is the second from TOP", Example: "name it, such as name: grease-port"},
		{
			Name: "clock", Type: ClocksType, Need: true, Means: "clock angle or list of them, always seen from the front face, also where from is back",
			Entries: [2]int{1, maxCount}, Example: "a clock angle, or a list of them",
		},
		{Name: "axial", Type: DistanceType, Need: true, Means: "distance of its centre from a face", Example: "the distance of its centre from the face"},
		{Name: "from", Type: WordType, Means: "the face that axial starts at", Default: "front", Words: faceWords},
		{Name: "size", Type: HoleType, Means: "a hole, as in holes", Group: diameterGroup, Example: holeExample},
		{Name: "slot", Type: KeysType, Means: "a slot with round ends", Group: openingGroup},
		{Name: "window", Type: KeysType, Means: "a rectangular opening", Group: windowGroup},
		{Name: "depth", Type: DepthType, Means: "from the outside; through goes into the bore", Default: "through"},
		{Name: "note", Type: TextType, Means: "a line beside the size"},
		forKey, fittedKey,
	}}

// openingKeys are the sizes of what is cut into a round.
func openingKeys(more ...Key) []Key {
	return append([]Key{
		{Name: "around", Type: SizeType, Need: true, Means: "round the circumference, an arc at the outside", Example: "the length round the outside"},
		{Name: "along", Type: SizeType, Need: true, Means: "along the axis", Example: "the length along the axis"},
	}, more...)
}

var (
	openingGroup = &Group{Name: "radial slot", Means: "A slot in the outside of a round.", Example: "slot: {around: 30, along: 8}", Keys: openingKeys()}
	windowGroup  = &Group{
		Name: "window", Means: "A rectangular opening in a round.", Example: "window: {around: 60, along: 40, corner: 8}",
		Keys: openingKeys(Key{Name: "corner", Type: DistanceType, Means: "corner radius, at most half the smaller side"}),
	}
)

var barGroup = &Group{Name: "bar",
	Means:   "A length of tube or rolled section. In its front view it lies level, its left end at the left; without wall it is solid. Its origin is the middle of its front side; what is in another side is measured from the middle of that.",
	Example: "bar: {square: 50, wall: 4, length: 460}", OneOf: []string{"square", "rectangle", "round", "angle", "channel", "flat"}, Keys: []Key{
		{Name: "square", Type: SizeType, Means: "side of a square tube or bar"},
		{Name: "rectangle", Type: PairType, Means: "of a rectangular tube or bar: across the front view, and behind it", Example: "the two sides, such as [60, 40]"},
		{Name: "round", Type: SizeType, Means: "outside diameter of a tube or bar"},
		{Name: "angle", Type: PairType, Means: "the leg in front, and the one that goes back from its lower edge", Example: "the two legs, such as [60, 60]"},
		{Name: "channel", Type: PairType, Means: "height of the web, and width of the flanges", Example: "web and flanges, such as [80, 45]"},
		{Name: "flat", Type: PairType, Means: "width across the front view, and thickness", Example: "width and thickness, such as [80, 8]"},
		{Name: "wall", Type: SizeType, Means: "wall of a tube, thickness of an angle or of a channel's web"},
		{Name: "flange", Type: SizeType, Means: "thickness of a channel's flanges at their middle", Default: "that of the web"},
		{
			Name: "corner", Type: DistanceType, Means: "outside corner radius of a square or rectangular tube",
			Default: "twice the wall, of metric tube 2.5 times one over 6 mm and three times one over 10 mm",
		},
		{
			Name: "open", Type: WordType, Means: "the side that a channel's flanges point to", Default: "back",
			Words: []string{string(parts.Back), string(parts.Front), string(parts.TopSide), string(parts.BottomSide)},
		},
		{Name: "length", Type: SizeType, Need: true, Means: "over all, between the outermost points"},
		{Name: string(parts.LeftSide), Type: KeysType, Means: "how the left end is cut", Default: "square", Group: barEndGroup},
		{Name: string(parts.RightSide), Type: KeysType, Means: "how the right end is cut", Default: "square", Group: barEndGroup},
	}}

var barEndGroup = &Group{Name: "bar end",
	Means:   "An end of a bar: a mitre seen in the front view, or a cope onto a round that crosses the bar squarely from front to back.",
	Example: "left: {mitre: 45, long: bottom}, or right: {onto: post.outside}", OneOf: []string{"mitre", "onto"}, Keys: []Key{
		{Name: "mitre", Type: AngleType, Means: "from a square cut, as a saw is set", Low: 0, High: 75},
		{Name: "long", Type: WordType, Means: "of a mitre: the side of the long point", Words: []string{string(parts.TopSide), string(parts.BottomSide)}},
		{Name: "onto", Type: OntoType, Means: "of a cope: the round, as an outside of another part or its diameter", Group: copeGroup},
		{Name: "place", Type: KeysType, Means: "of a cope: where the bar stands on the round, its front the way the round's looks", Group: copePlaceGroup},
	}}

var copeGroup = &Group{
	Name: "cope onto", Means: "A round that is no part of the job.", Example: "onto: {diameter: 114.3}",
	Keys: []Key{{Name: "diameter", Type: SizeType, Need: true, Means: "outside diameter of the round"}},
}

var copePlaceGroup = &Group{Name: "cope place", Means: "A place on the outside of a round.", Example: "place: {clock: 0, axial: 140, from: back}", Keys: []Key{
	{Name: "clock", Type: AngleType, Means: "clock angle on the round, seen on its front face", Default: "0"},
	{Name: "axial", Type: DistanceType, Need: true, Means: "from the face of from to the middle of the bar"},
	{Name: "from", Type: WordType, Means: "the face that axial starts at", Default: "front", Words: faceWords},
}}

const oringExample = "inside diameter by section, such as 50x3.53"

var grooveGroup = &Group{Name: "groove", Means: "A groove turned into a step or a bore, or into an end face.",
	Example: "{name: circlip, in: drive, axial: 5, from: back, for: retaining-ring}", Keys: []Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the groove", Example: "name it, such as name: circlip"},
		{
			Name: "in", Type: NameType, Need: true,
			Means:   "the step it is cut into; bore or outline of a flat part; front or back, the face that an O-ring lies in",
			Example: "in: bore, the name of a step, or front",
		},
		{
			Name: "for", Type: WordType, Need: true,
			Means: "retaining-ring of the diameter (outside DIN 471, inside DIN 472), o-ring, or a plain groove: grease, relief for a tool that runs out, or other, whose name says it",
			Words: []string{"retaining-ring", "o-ring", "grease", "relief", "other"}, Example: "for: retaining-ring, o-ring, grease, relief or other",
		},
		{Name: "axial", Type: DistanceType, Means: "from the face of from to the nearer side of the groove; not in a face", Example: "the distance of its nearer side from the face"},
		{Name: "from", Type: WordType, Means: "the face that axial starts at", Default: "front", Words: faceWords},
		{Name: "o-ring", Type: TextType, Means: "the O-ring: its inside diameter by section", Example: oringExample},
		{Name: "against", Type: SizeType, Means: "diameter that the O-ring seals against", Default: "that of the step"},
		{Name: "moving", Type: YesType, Means: "what the O-ring seals against slides along it", Default: "no"},
		{Name: "pressure", Type: WordType, Means: "where the pressure stands, of an O-ring in a face", Default: "inside", Words: []string{"inside", "outside"}},
		{Name: "width", Type: SizeType, Means: "along the axis, of a plain groove", Example: "width: 4"},
		{Name: "depth", Type: SizeType, Means: "on one side, of a plain groove", Example: "depth: 1"},
	}}

const keyExample = "standard, width by height such as 10x8 or 1/4x1/4, or woodruff 5x6.5, woodruff 608"

var keywayGroup = &Group{Name: "keyway", Means: "A keyway for a parallel key or a Woodruff key, in a shaft step or in a bore.", Example: "{name: key, in: bore, clock: 0}", Keys: []Key{
	{Name: "name", Type: NameType, Need: true, Means: "name of the keyway", Example: "name it, such as name: key"},
	{Name: "in", Type: NameType, Need: true, Means: "bore of a flat part, or the step it is cut into: outside a shaft keyway, inside a hub keyway", Example: "in: bore, or the name of a step"},
	{Name: "clock", Type: AngleType, Means: "clock angle, seen from the front face", Default: "0"},
	{
		Name: "key", Type: TextType,
		Means:   "the key: standard for that of the diameter (DIN 6885-1 in mm jobs, ASME B17.1 in inch jobs), width by height, or woodruff and its size (DIN 6888) or its number (ASME B17.2)",
		Default: "standard", Example: keyExample,
	},
	{
		Name: "fit", Type: ClassFitType, Means: "limits of the keyway's width", Default: "N9 in shafts and JS9 in hubs, of inch keys those of ASME B17.1",
		Group: fitGroup, Example: "a class such as JS9 or P9, or {limits: [low, high]}",
	},
	{Name: "depth", Type: SizeType, Means: "from the crown of the round to the floor", Default: "that of the key's standard"},
	{Name: "length", Type: DepthType, Means: "at full depth, with the round ends of an end mill; not of a Woodruff key in a shaft, whose disc gives it", Default: "through"},
	{Name: "axial", Type: DistanceType, Means: "distance of its middle from the face of from", Default: "in a shaft the middle of the step; in a hub it is open at the face of from"},
	{Name: "from", Type: WordType, Means: "the face that axial starts at", Default: "front", Words: faceWords},
	{Name: "cutter", Type: SizeType, Means: "diameter of the side-and-face cutter, for the sled-runner ends it leaves; without it the ends are an end mill's"},
}}

var clampGroup = &Group{Name: "clamp", Means: "A ring split by a saw cut, with a screw across the cut that closes it.", Example: "{in: bore, slot: 2, screw: M6 8.8, clock: 90}", Keys: []Key{
	{Name: "in", Type: NameType, Need: true, Means: "the inside step that closes on what goes through it", Example: "in: bore"},
	{Name: "slot", Type: SizeType, Need: true, Means: "width of the saw cut", Example: "slot: 2"},
	{Name: "screw", Type: TextType, Need: true, Means: "size and class of the socket head screw", Example: "screw: M6 8.8"},
	{Name: "at", Type: SizeType, Means: "from the part's axis to that of the screw", Default: "the middle of the wall"},
	{Name: "axial", Type: SizeType, Means: "from the face that from names to the screw", Default: "half the length"},
	{Name: "from", Type: WordType, Means: "the face that axial is measured from", Default: "front", Words: faceWords},
	{Name: "clock", Type: AngleType, Means: "clock angle of the cut, seen from the front face; the head lies clockwise of it", Default: "0"},
}}

var flatsGroup = &Group{Name: "flats", Means: "Flats milled on a round.", Example: "{name: hexagon, in: head, sides: 6, across: 24}", Keys: []Key{
	{Name: "name", Type: NameType, Need: true, Means: "name of the flats", Example: "name them, such as name: spanner"},
	{Name: "in", Type: NameType, Need: true, Means: "the outside step they are milled on", Example: "in: the name of an outside step"},
	{Name: "sides", Type: WordType, Means: "how many: one flat, two for a spanner, a square, a hexagon", Default: "2", Words: []string{"1", "2", "4", "6", "8", "10", "12"}},
	{Name: "across", Type: SizeType, Need: true, Means: "over opposite flats; of one flat to the far side of the round", Example: "across: 24"},
	{Name: "clock", Type: AngleType, Means: "clock angle of the middle of the first flat, seen from the front face", Default: "0"},
	{Name: "length", Type: SizeType, Means: "along the axis, from the end of the step that from names", Default: "the whole step"},
	{Name: "from", Type: WordType, Means: "the end of the step that the length starts at", Default: "front", Words: faceWords},
}}
