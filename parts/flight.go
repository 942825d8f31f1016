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

// flight reads the flights of an auger.
func (f *fields) flight() *Flight {
	if f == nil {
		return nil
	}
	a := &Flight{
		Pos: f.n.pos, Shaft: f.length("shaft"), Outside: f.length("outside"), Pitch: f.length("pitch"),
		Thickness: f.length("thickness"), Length: f.length("length"), Left: f.word("hand") == "left", Moves: Face(f.word("moves")),
	}
	if !f.given("length") {
		a.Length = a.Pitch
	}
	if a.Shaft.Set() && a.Outside.Set() && a.Outside.Mm <= a.Shaft.Mm {
		f.faultf(a.Outside.Pos, "an outside above the shaft's diameter", "the flight of %s is not wider than its shaft of %s", a.Outside.Text, a.Shaft.Text)
	}
	return a
}
