package read

const keyExample = "standard, width by height such as 10x8 or 1/4x1/4, or woodruff 5x6.5, woodruff 608"

var keywayGroup = &Group{
	Name: "keyway", Means: "A keyway for a parallel key or a Woodruff key, in a shaft step or in a bore.", Example: "{name: key, in: bore, clock: 0}",
	Keys: []Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the keyway", Example: "name it, such as name: key"},
		{Name: "in", Type: NameType, Need: true, Means: "bore of a flat part, or the step it is cut into: outside a shaft keyway, inside a hub keyway", Example: "in: bore, or the name of a step"},
		{Name: "clock", Type: AngleType, Means: "clock angle, seen from the front face", Default: "0"},
		{Name: "key", Type: TextType, Means: "the key: standard for that of the diameter (DIN 6885-1 in mm jobs, ASME B17.1 in inch jobs), width by height, or woodruff and its size (DIN 6888) or its number (ASME B17.2)", Default: "standard", Example: keyExample},
		{Name: "fit", Type: ClassFitType, Means: "limits of the keyway's width", Default: "N9 in shafts and JS9 in hubs, of inch keys those of ASME B17.1", Group: fitGroup, Example: "a class such as JS9 or P9, or {limits: [low, high]}"},
		{Name: "depth", Type: SizeType, Means: "from the crown of the round to the floor", Default: "that of the key's standard"},
		{Name: "length", Type: DepthType, Means: "at full depth, with the round ends of an end mill; not of a Woodruff key in a shaft, whose disc gives it", Default: "through"},
		{Name: "axial", Type: DistanceType, Means: "distance of its middle from the face of from", Default: "in a shaft the middle of the step; in a hub it is open at the face of from"},
		{Name: "from", Type: WordType, Means: "the face that axial starts at", Default: "front", Words: faceWords},
		{Name: "cutter", Type: SizeType, Means: "diameter of the side-and-face cutter, for the sled-runner ends it leaves; without it the ends are an end mill's"},
	},
}
