package read

import "centrepop/parts"

// flight reads the flights of an auger.
func (f *fields) flight() *parts.Flight {
	if f == nil {
		return nil
	}
	a := &parts.Flight{
		Pos: f.n.pos, Shaft: f.length("shaft"), Outside: f.length("outside"), Pitch: f.length("pitch"),
		Thickness: f.length("thickness"), Length: f.length("length"), Left: f.word("hand") == "left", Moves: parts.Face(f.word("moves")),
	}
	if !f.given("length") {
		a.Length = a.Pitch
	}
	if a.Shaft.Set() && a.Outside.Set() && a.Outside.Mm <= a.Shaft.Mm {
		f.faultf(a.Outside.Pos, "an outside above the shaft's diameter", "the flight of %s is not wider than its shaft of %s", a.Outside.Text, a.Shaft.Text)
	}
	return a
}
