package read

const oringExample = "inside diameter by section, such as 50x3.53"

var grooveGroup = &Group{
	Name: "groove", Means: "A groove turned into a step or a bore, or into an end face.", Example: "{name: circlip, in: drive, axial: 5, from: back, for: retaining-ring}",
	Keys: []Key{
		{Name: "name", Type: NameType, Need: true, Means: "name of the groove", Example: "name it, such as name: circlip"},
		{Name: "in", Type: NameType, Need: true, Means: "the step it is cut into; bore or outline of a flat part; front or back, the face that an O-ring lies in", Example: "in: bore, the name of a step, or front"},
		{Name: "for", Type: WordType, Need: true, Means: "retaining-ring of the diameter (outside DIN 471, inside DIN 472), o-ring, or a plain groove: grease, or relief for a tool that runs out", Words: []string{"retaining-ring", "o-ring", "grease", "relief"}, Example: "for: retaining-ring, o-ring, grease or relief"},
		{Name: "axial", Type: DistanceType, Means: "from the face of from to the nearer side of the groove; not in a face", Example: "the distance of its nearer side from the face"},
		{Name: "from", Type: WordType, Means: "the face that axial starts at", Default: "front", Words: faceWords},
		{Name: "o-ring", Type: TextType, Means: "the O-ring: its inside diameter by section", Example: oringExample},
		{Name: "against", Type: SizeType, Means: "diameter that the O-ring seals against", Default: "that of the step"},
		{Name: "moving", Type: YesType, Means: "what the O-ring seals against slides along it", Default: "no"},
		{Name: "pressure", Type: WordType, Means: "where the pressure stands, of an O-ring in a face", Default: "inside", Words: []string{"inside", "outside"}},
		{Name: "width", Type: SizeType, Means: "along the axis, of a plain groove", Example: "width: 4"},
		{Name: "depth", Type: SizeType, Means: "on one side, of a plain groove", Example: "depth: 1"},
	},
}
