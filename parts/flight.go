package parts

// Flight is the flights of an auger along a length of its shaft, in turns of a
// helicoid. The front is the end that the length starts at.
type Flight struct {
	Pos            Pos
	Shaft, Outside Length // diameters inside and outside
	Pitch          Length // along the axis in one turn
	Thickness      Length // of the sheet
	Length         Length // along the axis
	Left           bool   // the helix winds like a left-hand screw
	Moves          Face   // towards which of its faces it is to move; "" is away from the motor
}
