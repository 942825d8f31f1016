package parts

// Formed is what every part formed from sheet has. Sizes of the ends are at the
// outside of the sheet unless Inside is true.
type Formed struct {
	Height    Length
	Thickness Length
	Inside    bool
	Seam      Angle // clock angle of the seam
	Overlap   Length
	// The stock sheet; both 0 if not said. A blank too large for it is cut
	// in pieces.
	SheetWidth, SheetHeight Length
}

// Frustum is a rolled cone from flat sheet.
type Frustum struct {
	Pos          Pos
	Large, Small Length
	Offset       Length // eccentric: small end moved sideways by this much
	Formed
}

// Transition is a square-to-round made from flat sheet. The rectangle is the
// front face, the circle the back. Its seam lies at 0, 90, 180 or 270: the side
// with the seam in its middle.
type Transition struct {
	Pos          Pos
	Width, Depth Length // of the rectangle: from 9 to 3 o'clock, from 6 o'clock to TOP
	Diameter     Length
	Offset       Point // of the circle's centre from the rectangle's: x to the right, y to TOP
	Faceted      bool  // bent in the press at each line; else rolled
	Formed
}

// formed reads the keys of every part formed from sheet.
func (f *fields) formed() Formed {
	out := Formed{
		Height: f.length("height"), Thickness: f.length("thickness"), Inside: f.word("measured") == "inside",
		Seam: f.angle("seam"), Overlap: f.length("overlap"),
	}
	if n := f.val("sheet"); n != nil && len(n.items) == 2 {
		n.items[0].label, n.items[1].label = "width of "+n.label, "height of "+n.label
	}
	out.SheetWidth, out.SheetHeight = f.pair("sheet")
	return out
}

// transition reads a square-to-round.
func (f *fields) transition() *Transition {
	if f == nil {
		return nil
	}
	t := &Transition{
		Pos: f.n.pos, Width: f.length("width"), Depth: f.length("depth"), Diameter: f.length("diameter"),
		Offset: f.point("offset"), Faceted: f.word("bend") != "rolled", Formed: f.formed(),
	}
	if !f.given("depth") {
		t.Depth = t.Width // a square
	}
	if t.Seam.Pos.Line > 0 {
		switch t.Seam.Deg {
		case 0, 90, 180, 270:
		default:
			f.fault(t.Seam.Pos, "the seam is not in the middle of a side", "0, 90, 180 or 270")
		}
	}
	least := min(t.Width.Mm, t.Depth.Mm, t.Diameter.Mm)
	if !t.Inside && t.Width.Set() && t.Depth.Set() && t.Diameter.Set() && t.Thickness.Set() && least <= 2*t.Thickness.Mm {
		f.faultf(t.Thickness.Pos, "a sheet thinner than half the smallest end", "the sheet of %s leaves no opening", t.Thickness.Text)
	}
	return t
}
