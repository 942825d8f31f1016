package plan

// Picture is a section through what stands at a step, cut to a window about the
// joint: x to the right and y up on paper, in mm of the machine.
type Picture struct {
	Cut     CutKind
	Shapes  []Shape
	MinMm   XY
	MaxMm   XY
	Centres [][2]XY // centre lines
	Arrows  []Arrow // how what is new comes to its place
	Corners []XY    // of a frame, in the order of its steps
}

// CutKind is how a section lies in the machine.
type CutKind string

// The sections: along an axis with TOP or with a bolt, and beside one lengthwise (front at the left),
// across (seen from the front) and level (seen from above, front at the left), and in the
// plane of a frame of bars.
const (
	CutAxis   CutKind = "axis"
	CutBolt   CutKind = "bolt"
	CutLength CutKind = "length"
	CutAcross CutKind = "across"
	CutLevel  CutKind = "level"
	CutTop    CutKind = "top"   // as level, of a machine that stands with its front up
	CutFrame  CutKind = "frame" // through the middle of a frame's bars, seen on their fronts
)

// ShapeKind says how a cut surface is drawn.
type ShapeKind string

// The kinds of shape. Screws, bars and rollers are not hatched, weld metal is filled.
const (
	ShapePart   ShapeKind = "part"
	ShapeScrew  ShapeKind = "screw"
	ShapeBar    ShapeKind = "bar" // a round part without a bore, cut lengthwise
	ShapeCup    ShapeKind = "cup"
	ShapeCone   ShapeKind = "cone"
	ShapeRoller ShapeKind = "roller"
	ShapeBead   ShapeKind = "bead"
)

// Shape is the cut surface of one thing.
type Shape struct {
	Kind  ShapeKind
	Item  int // place of the part in the plan, from 1; 0 for what is bought
	Title string
	New   bool   // comes in this step
	Named bool   // has its number in this picture
	Loops [][]XY // closed; outer ones anticlockwise, holes clockwise
}

// Arrow ends at a point and shows the direction in which something comes; none where it comes
// square to the picture.
type Arrow struct {
	Of        string // title of what comes
	AtMm, Dir XY
}
