package read

import "centrepop/parts"

var barGroup = &Group{
	Name: "bar", Means: "A length of tube or rolled section. In its front view it lies level, its left end at the left; without wall it is solid.",
	Example: "bar: {square: 50, wall: 4, length: 460}",
	OneOf:   []string{"square", "rectangle", "round", "angle", "channel", "flat"},
	Keys: []Key{
		{Name: "square", Type: SizeType, Means: "side of a square tube or bar"},
		{Name: "rectangle", Type: PairType, Means: "of a rectangular tube or bar: across the front view, and behind it", Example: "the two sides, such as [60, 40]"},
		{Name: "round", Type: SizeType, Means: "outside diameter of a tube or bar"},
		{Name: "angle", Type: PairType, Means: "the leg in front, and the one that goes back from its lower edge", Example: "the two legs, such as [60, 60]"},
		{Name: "channel", Type: PairType, Means: "height of the web, and width of the flanges", Example: "web and flanges, such as [80, 45]"},
		{Name: "flat", Type: PairType, Means: "width across the front view, and thickness", Example: "width and thickness, such as [80, 8]"},
		{Name: "wall", Type: SizeType, Means: "wall of a tube, thickness of an angle or of a channel's web"},
		{Name: "flange", Type: SizeType, Means: "thickness of a channel's flanges at their middle", Default: "that of the web"},
		{Name: "corner", Type: DistanceType, Means: "outside corner radius of a square or rectangular tube", Default: "twice the wall, of metric tube 2.5 times one over 6 mm and three times one over 10 mm"},
		{Name: "open", Type: WordType, Means: "the side that a channel's flanges point to", Default: "back", Words: []string{string(parts.Back), string(parts.Front), string(parts.TopSide), string(parts.BottomSide)}},
		{Name: "length", Type: SizeType, Need: true, Means: "over all, between the outermost points"},
		{Name: string(parts.LeftSide), Type: KeysType, Means: "how the left end is cut", Default: "square", Group: barEndGroup},
		{Name: string(parts.RightSide), Type: KeysType, Means: "how the right end is cut", Default: "square", Group: barEndGroup},
	},
}

var barEndGroup = &Group{
	Name: "bar end", Means: "An end of a bar: a mitre seen in the front view, or a cope onto a round that crosses the bar squarely from front to back.",
	Example: "left: {mitre: 45, long: bottom}, or right: {onto: post.outside}",
	OneOf:   []string{"mitre", "onto"},
	Keys: []Key{
		{Name: "mitre", Type: AngleType, Means: "from a square cut, as a saw is set", Low: 0, High: 75},
		{Name: "long", Type: WordType, Means: "of a mitre: the side of the long point", Words: []string{string(parts.TopSide), string(parts.BottomSide)}},
		{Name: "onto", Type: OntoType, Means: "of a cope: the round, as an outside of another part or its diameter", Group: copeGroup},
		{Name: "place", Type: KeysType, Means: "of a cope: where the bar stands on the round, its front the way the round's looks", Group: copePlaceGroup},
	},
}

var copeGroup = &Group{
	Name: "cope onto", Means: "A round that is no part of the job.", Example: "onto: {diameter: 114.3}",
	Keys: []Key{{Name: "diameter", Type: SizeType, Need: true, Means: "outside diameter of the round"}},
}

var copePlaceGroup = &Group{
	Name: "cope place", Means: "A place on the outside of a round.", Example: "place: {clock: 0, axial: 140, from: back}",
	Keys: []Key{
		{Name: "clock", Type: AngleType, Means: "clock angle on the round, seen on its front face", Default: "0"},
		{Name: "axial", Type: DistanceType, Need: true, Means: "from the face of from to the middle of the bar"},
		{Name: "from", Type: WordType, Means: "the face that axial starts at", Default: "front", Words: faceWords},
	},
}

var alongGroup = &Group{
	Name: "along", Means: "Places in a row along a side, from a named end.", Example: "along: {from: left, first: 50, pitch: 200, count: 2}",
	Keys: []Key{
		{Name: "from", Type: WordType, Means: "the end that they count from, as named on the front view", Default: string(parts.LeftSide), Words: []string{string(parts.LeftSide), string(parts.RightSide)}},
		{Name: "first", Type: SizeType, Need: true, Means: "from that end, a bar's outermost point there, to the first"},
		{Name: "pitch", Type: SizeType, Means: "from each to the next"},
		{Name: "count", Type: CountType, Means: "number of places", Default: "1", Low: 1, High: maxCount},
		{Name: "up", Type: SizeType, Means: "from the lower edge of the side as seen", Default: "the middle of the side"},
	},
}
