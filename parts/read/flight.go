package read

import "centrepop/parts"

func (f *fields) flight() *parts.Flight {
	a := &parts.Flight{
		Pos: f.n.pos, Shaft: f.length("shaft"), Outside: f.length("outside"), Pitch: f.length("pitch"),
		Thickness: f.length("thickness"), Length: f.length("length"), Left: f.word("hand") == "left", Moves: parts.Face(f.word("moves")),
	}
	if !f.given("length") {
		a.Length = a.Pitch
	}
	f.not(a.Outside, "<=", a.Shaft, "an outside above the shaft's diameter", "the flight of %s is not wider than its shaft of %s")
	return a
}
