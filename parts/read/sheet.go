package read

import "centrepop/parts"

// formed reads the keys of every part formed from sheet.
func (f *fields) formed() parts.Formed {
	out := parts.Formed{
		Height: f.length("height"), Thickness: f.length("thickness"), Inside: f.word("measured") == "inside",
		Seam: f.angle("seam"), Overlap: f.length("overlap"),
	}
	if n := f.val("sheet"); n != nil && len(n.items) == 2 {
		n.items[0].label, n.items[1].label = "width of "+n.label, "height of "+n.label
	}
	out.SheetWidth, out.SheetHeight = f.pair("sheet")
	return out
}

func (f *fields) transition() *parts.Transition {
	t := &parts.Transition{
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
	if least := min(t.Width.Mm, t.Depth.Mm, t.Diameter.Mm); !t.Inside && least > 0 && least <= 2*t.Thickness.Mm {
		f.faultf(t.Thickness.Pos, "a sheet thinner than half the smallest end", "the sheet of %s leaves no opening", t.Thickness.Text)
	}
	return t
}
