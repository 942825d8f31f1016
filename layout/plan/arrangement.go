package plan

// Arrangement is the heaviest assembly as a whole: cut along its axis with what
// stands behind, front at the left and TOP up; seen from its front; and seen from
// above, front at the left. One that stands with its front up is cut with TOP at the
// right, seen from its front so too, and from the side.
type Arrangement struct {
	Front, End, Top View
	Stands          Angle // empty where TOP is up
	// Beside are parts that stand in the machine and are not cut by the plane of
	// the front view, ByHand those that no joint fastens and a step puts in, Passing those that
	// come off again in their step, Floating those that nothing places; all by title.
	Beside, ByHand, Passing, Floating []string
	// Bought are the motors and couplings that stand in it, by title: the items after
	// the parts.
	Bought []string
	// Opposed tells that the shaft of a motor beside the one that it drives looks the other way than the driven end of that.
	Opposed bool
	// Anchors are the holes by which it is fixed to the floor, seen from above.
	Anchors []Anchor
	// Apart are the assemblies that no joint ties to it, the heaviest first. Of each of them Title is that
	// of its largest part, and Holds how many of each item stand in it.
	Apart []*Arrangement
	Title string
	Holds map[int]int
}

// Anchor is an upright hole for an anchor: where it lies in the view from above, and how far, in
// mm, from the machine's front end, of one that stands with its front up from its axis, and from
// its axis.
type Anchor struct {
	AtMm, FromMm XY
	DiameterMm   float64
	Slot         bool // a slot of that width
}

// View is what is seen in one direction: x to the right and y up on paper, in mm
// of the machine.
type View struct {
	Shapes       []Shape // cut surfaces
	Lines        [][]XY  // edges that are seen
	Centres      [][2]XY // centre lines
	Behind       []Place // of parts that are seen and not cut
	MinMm, MaxMm XY
}

// Place is a point on a part: Item is its place in the plan, from 1.
type Place struct {
	Item int
	AtMm XY
}

// Angle is how the views of a machine that stands with its front up lie about the one that is
// cut, by ISO 5456-2: in third angle the plan above it and the view from the right at the
// right, in first angle the plan below it and the view from the left at the right.
type Angle string

// The two angles.
const (
	FirstAngle Angle = "first"
	ThirdAngle Angle = "third"
)
