package parts

// Transition is a square-to-round made from flat sheet. The rectangle is the
// front face, the circle the back. Sizes are at the outside of the sheet
// unless Inside is true.
type Transition struct {
	Pos          Pos
	Width, Depth Length // of the rectangle: from 9 to 3 o'clock, from 6 o'clock to TOP
	Diameter     Length
	Height       Length
	Thickness    Length
	Offset       Point // of the circle's centre from the rectangle's: x to the right, y to TOP
	Inside       bool
	Seam         Angle // 0, 90, 180 or 270: the side with the seam in its middle
	Overlap      Length
	Faceted      bool // bent in the press at each line; else rolled
	// The stock sheet; both 0 if not said. A blank too large for it is cut
	// in two or four pieces.
	SheetWidth, SheetHeight Length
}

// sheetSize reads the size of a stock sheet, such as [1000, 2000].
func (r *reader) sheetSize(n *node) (width, height Length) {
	items, ok := r.items(n, 2, 2, "the stock sheet's two sides, such as [1000, 2000]")
	if !ok {
		return Length{}, Length{}
	}
	items[0].label, items[1].label = "width of "+n.label, "height of "+n.label
	return r.length(items[0], positive), r.length(items[1], positive)
}

// transition reads a square-to-round.
func (r *reader) transition(n *node) *Transition {
	if !r.group(n, "width", "depth", "diameter", "height", "thickness", "offset", "measured", "seam", "overlap", "bend", "sheet") {
		return nil
	}
	const form = "transition: {width: 200, depth: 200, diameter: 150, height: 120, thickness: 2}"
	t := &Transition{
		Pos:       n.pos,
		Width:     r.length(r.need(n, "width", form), positive),
		Depth:     r.length(n.get("depth"), positive),
		Diameter:  r.length(r.need(n, "diameter", form), positive),
		Height:    r.length(r.need(n, "height", form), positive),
		Thickness: r.length(r.need(n, "thickness", form), positive),
		Inside:    r.word(n.get("measured"), "outside", "inside") == "inside",
		Seam:      Angle{Deg: 180},
		Overlap:   r.length(n.get("overlap"), fromZero),
		Faceted:   r.word(n.get("bend"), "faceted", "rolled") != "rolled",
	}
	if n.get("depth") == nil {
		t.Depth = t.Width // a square
	}
	if o := n.get("offset"); o != nil {
		t.Offset, _ = r.point(o)
	}
	if s := n.get("seam"); s != nil {
		t.Seam = r.clock(s)
		switch t.Seam.Deg {
		case 0, 90, 180, 270:
		default:
			r.fault(s.pos, "the seam is not in the middle of a side", "0, 90, 180 or 270")
		}
	}
	t.SheetWidth, t.SheetHeight = r.sheetSize(n.get("sheet"))
	least := min(t.Width.Mm, t.Depth.Mm, t.Diameter.Mm)
	if !t.Inside && t.Width.Set() && t.Depth.Set() && t.Diameter.Set() && t.Thickness.Set() && least <= 2*t.Thickness.Mm {
		r.faultf(t.Thickness.Pos, "a sheet thinner than half the smallest end", "the sheet of %s leaves no opening", t.Thickness.Text)
	}
	return t
}
