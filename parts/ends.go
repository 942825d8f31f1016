package parts

// TubeEnd says how an end of a tube is cut to sit on another round: a saddle.
type TubeEnd struct {
	Pos  Pos
	Face Face // the end of this tube that is cut
	// Onto is the main: an outside of another part, or, if that is not set,
	// a tube of Diameter and Wall.
	Onto           Ref
	Diameter, Wall Length
	Angle          Angle  // between the axes, 30° to 90°
	Offset         Length // of the axes; positive to the right, seen from the free end with the acute side up
	SetIn          bool   // through the main's wall; else on its outside
	Gap            Length // root gap for the weld
	Clock          Angle  // clock angle of this tube that lies on the acute side; at 90° towards the main's front
	// Place says where on the main the axes cross; nil if not said.
	Place *EndPlace
}

// EndPlace is a place on the outside of a main tube.
type EndPlace struct {
	Pos   Pos
	Clock Angle  // of the main, seen on its front face
	Axial Length // from the face From of the main
	From  Face
	Leans Face // the face of the main that the free end leans to: the acute side; at 90° that of line 0
}

// AxialMm is where the place lies, in mm from the front face of a main of a length.
func (p *EndPlace) AxialMm(lengthMm float64) float64 { return p.From.FromFront(p.Axial.Mm, lengthMm) }

// How a branch meets its main: on its outside, or through its wall.
const (
	SetOn = "set on"
	SetIn = "set in"
)

// Joint is SetOn or SetIn.
func (e *TubeEnd) Joint() string {
	if e.SetIn {
		return SetIn
	}
	return SetOn
}
