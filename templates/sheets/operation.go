package sheets

import (
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
	"centrepop/templates/picture"
)

// Operations draws a part's operation sheet. Where its last page holds
// little, a smaller picture may save that page.
func Operations(pl *plan.Plan, part *plan.PartPlan, paper draw.Frame) []*draw.Sheet {
	f := operationFlow(pl, part, paper, 0.40)
	if len(f.Sheets) > 1 && f.Lowest > f.Body.Y0+0.6*f.Body.Height() {
		if small := operationFlow(pl, part, paper, 0.28); len(small.Sheets) < len(f.Sheets) {
			return small.Sheets
		}
	}
	return f.Sheets
}

// operationFlow sets what a part is, its picture, sizes, steps and tables. The
// picture takes at most a share of the page's height.
func operationFlow(pl *plan.Plan, part *plan.PartPlan, paper draw.Frame, share float64) *draw.Flow {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: part.Title, Name: "Operation sheet", Scale: "not to scale"}
		if page == 0 {
			return s, picture.Head(part, "Operation sheet", paper.Body().Width())
		}
		return s, draw.RunningHead(part.Title, "operation sheet, continued", paper.Body().Width())
	})
	f.Add(picture.Of(part, f.Width(), f.Body.Height()*share)...)
	if f.Width() >= draw.WideMm {
		f.Columns(2)
	}
	for _, caution := range part.Cautions {
		f.Add(draw.CautionBox(caution, f.Width()), draw.Space(2))
	}
	f.Table(featureTable(part))
	f.Add(draw.Notes("Notes", part.Notes, f.Width())...)
	for i, op := range part.Operations {
		left := f.Left()
		if i == 0 {
			left -= draw.Heading("", f.Width()).Height
		}
		pieces := operationBoxes(op, f.Width(), left, f.Tallest()-15)
		if i == 0 {
			pieces = append([]draw.Piece{draw.Heading("Operations", f.Width())}, pieces...)
		}
		f.Add(pieces...)
	}
	f.Add(draw.Space(3))
	for _, face := range part.Faces {
		f.Table(holeTable(face, pl.Units))
		f.Table(slotTable(face, pl.Units))
		f.Table(chordTable(face, pl.Units))
	}
	f.Table(radialTable(part, pl.Units))
	for _, ladder := range part.Ladders {
		f.Table(ladderTable(ladder, f.Width()))
	}
	return f
}

func featureTable(part *plan.PartPlan) draw.Table {
	t := draw.Table{Title: "Sizes", Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true, Size: 4.2},
		{Head: "Feature", Flex: true},
		{Head: "Size", Flex: true},
		{Head: "Limits", Flex: true, Firm: 42, Bold: true, Size: draw.LimitMm, Spare: true},
		{Head: "Note", Flex: true, Spare: true},
	}}
	for _, ft := range part.Features {
		name := ft.Name
		if ft.Face != "" && len(part.Faces) > 1 {
			name += " (" + string(ft.Face) + ")"
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(ft.N), name, ft.Size, ft.Limits, ft.Note})
	}
	return t
}

// stripMm is the width of an operation's number and tick box.
const stripMm = 14.0

// Only an operation of splitMm or more is parted to fill a page, and only into
// pieces of some height: a step is best read in one place.
const (
	splitMm      = 85.0
	splitLeastMm = 50.0
)

// operationBoxes draws an operation in one box if it fits into the room left
// on the page or is short, else in as few as its height asks; tallest is the
// room of a whole page.
func operationBoxes(op plan.Operation, width, left, tallest float64) []draw.Piece {
	p := operationBox(op, width)
	if p.Height <= left || (p.Height < splitMm || left < splitLeastMm) && p.Height <= tallest || len(op.Do) < 2 {
		return []draw.Piece{p, draw.Space(2)}
	}
	if left < splitLeastMm {
		left = tallest
	}
	k := len(op.Do) - 1
	for ; k > 1; k-- {
		if first, _ := partOperation(op, k); operationBox(first, width).Height <= left {
			break
		}
	}
	first, second := partOperation(op, k)
	if k < 4 && p.Height <= tallest {
		return []draw.Piece{p, draw.Space(2)}
	}
	return append([]draw.Piece{operationBox(first, width), draw.Space(2)}, operationBoxes(second, width, tallest, tallest)...)
}

// partOperation parts an operation after its first k lines. A limit stays with
// the lines that name its feature.
func partOperation(op plan.Operation, k int) (first, second plan.Operation) {
	first, second = op, op
	first.Do, second.Do = op.Do[:k], op.Do[k:]
	first.Limits, second.Limits = nil, nil
	done := strings.Join(first.Do, " ")
	for _, l := range op.Limits {
		name := strings.TrimRight(l, "0123456789.–− in±…")
		if strings.Contains(done, " "+name+" ") {
			first.Limits = append(first.Limits, l)
		} else {
			second.Limits = append(second.Limits, l)
		}
	}
	second.Caution, second.Holding, second.Tool, second.Speed = "", "", "", ""
	if !strings.HasSuffix(second.Title, "(continued)") {
		second.Title += " (continued)"
	}
	return first, second
}

// operationBox draws one step: number and tick box at the left, what to do in
// the middle, and how at the right, or below where there is no room.
func operationBox(op plan.Operation, width float64) draw.Piece {
	var p draw.Piece
	x0 := stripMm + 2.5
	inner := width - x0 - 2.5
	tag := strings.ToUpper(op.Machine)
	tagWidth := draw.TextWidth(tag, 3.6, true) + 3
	p.Draw.Add(draw.Box(draw.R(x0, -7.8, x0+tagWidth, -2), draw.LineMm))
	p.Draw.Add(draw.Text{XMm: x0 + 1.5, YMm: -6.2, SizeMm: 3.6, Bold: true, Content: tag})
	y := -2.0
	for _, line := range draw.Wrap(op.Title, draw.HeadMm, true, inner-tagWidth-3) {
		p.Draw.Add(draw.Text{XMm: x0 + tagWidth + 3, YMm: y - draw.HeadMm, SizeMm: draw.HeadMm, Bold: true, Content: line})
		y -= draw.HeadMm * draw.Leading
	}
	y -= 2

	leftWidth, rightWidth := inner, inner
	two := inner >= 140
	if two {
		leftWidth = inner * 0.58
		rightWidth = inner - leftWidth - 4
	}
	var left []draw.Piece
	for _, line := range op.Do {
		left = append(left, draw.Paragraph("–", line, 3.8, false, leftWidth)...)
		left = append(left, draw.Space(0.6))
	}
	for i, line := range op.Limits {
		if i == 0 {
			left = append(left, draw.Space(1.2))
		}
		left = append(left, draw.Paragraph("", line, draw.LimitMm, true, leftWidth)...)
	}
	var right []draw.Piece
	for _, how := range [][2]string{{"Hold", op.Holding}, {"Tool", op.Tool}, {"Speed", op.Speed}, {"Gauge", op.Gauge}, {"See", refs(op.Refs)}} {
		if how[1] == "" {
			continue
		}
		right = append(right, draw.Hanging(how[0], how[1], rightWidth), draw.Space(0.6))
	}
	l, r := draw.Stack(left...), draw.Stack(right...)
	p.Draw.Place(&l.Draw, x0, y)
	if two {
		if len(right) > 0 {
			x := x0 + leftWidth + 2
			p.Draw.Add(draw.Segment(x, y, x, y-max(l.Height, r.Height), draw.HairMm))
		}
		p.Draw.Place(&r.Draw, x0+leftWidth+4, y)
		y -= max(l.Height, r.Height)
	} else {
		y -= l.Height + 1.2
		p.Draw.Place(&r.Draw, x0, y)
		y -= r.Height
	}
	if op.Caution != "" {
		y -= 1.5
		c := draw.CautionBox(op.Caution, inner)
		p.Draw.Place(&c.Draw, x0, y)
		y -= c.Height
	}
	p.Height = max(-y+1.5, 24.5)

	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), 0.5), draw.Segment(stripMm, -p.Height, stripMm, 0, draw.LineMm))
	p.Draw.Add(draw.Text{XMm: stripMm / 2, YMm: -9, SizeMm: 8, Bold: true, Align: draw.Centre, Content: strconv.Itoa(op.N)})
	p.Draw.Add(draw.Box(draw.R(stripMm/2-4, -20.5, stripMm/2+4, -12.5), 0.5))
	p.Draw.Add(draw.Text{XMm: stripMm / 2, YMm: -23.6, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "done"})
	return p
}

// refs names feature numbers.
func refs(numbers []int) string {
	if len(numbers) == 0 {
		return ""
	}
	var texts []string
	for _, n := range numbers {
		texts = append(texts, strconv.Itoa(n))
	}
	if len(texts) == 1 {
		return "size no. " + texts[0]
	}
	return "sizes no. " + strings.Join(texts, ", ")
}

// holeTable says where the holes are: from the centre and, unless the outline
// is round, from two edges.
func holeTable(face *plan.Face, units parts.Units) draw.Table {
	fromX, fromY := edgeNames(face.Datum)
	t := draw.Table{Title: figures.Upper(face.Face) + " face: where the holes are, in " + figures.LengthWord(units), Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true, Size: 4.0},
		{Head: "Pattern", Flex: true},
		{Head: "Angle from TOP", Align: draw.Right},
		{Head: "From centre", Align: draw.Right},
		{Head: "x", Align: draw.Right, Size: 3.8, Bold: face.Round},
		{Head: "y", Align: draw.Right, Size: 3.8, Bold: face.Round},
		{Head: "from " + fromX, Align: draw.Right, Size: 3.8, Bold: true, Spare: true},
		{Head: "from " + fromY, Align: draw.Right, Size: 3.8, Bold: true, Spare: true},
		{Head: "Drill Ø", Align: draw.Right},
	}}
	for _, h := range face.Holes {
		row := []string{strconv.Itoa(h.N), h.Group, figures.Degrees(h.AngleDeg), figures.Fixed(h.RadiusMm, units),
			figures.Fixed(h.XMm, units), figures.Fixed(h.YMm, units), "", "", figures.Short(h.DiameterMm, units)}
		if !face.Round {
			row[6], row[7] = figures.Fixed(h.FromXMm, units), figures.Fixed(h.FromYMm, units)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// edgeNames splits a datum such as "left-bottom" into the edges that x and y
// are measured from.
func edgeNames(datum string) (x, y string) {
	x, y = "side edge", "lower edge"
	for _, word := range strings.FieldsFunc(datum, func(r rune) bool { return r < 'a' || r > 'z' }) {
		switch word {
		case "left", "right":
			x = word + " edge"
		case "top", "bottom":
			y = word + " edge"
		}
	}
	return x, y
}

func slotTable(face *plan.Face, units parts.Units) draw.Table {
	t := draw.Table{Title: figures.Upper(face.Face) + " face: slots, in " + figures.LengthWord(units), Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true, Size: 4.0},
		{Head: "Name", Flex: true},
		{Head: "Width × length", Align: draw.Centre},
		{Head: "Long axis", Align: draw.Right},
		{Head: "Centre x, y", Align: draw.Centre},
		{Head: "One end x, y", Align: draw.Centre},
		{Head: "Other end x, y", Align: draw.Centre},
	}}
	for _, s := range face.Slots {
		t.Rows = append(t.Rows, []string{strconv.Itoa(s.N), s.Group,
			figures.Short(s.WidthMm, units) + " × " + figures.Short(s.LengthMm, units), figures.Degrees(s.TurnDeg),
			figures.Fixed(s.XMm, units) + ", " + figures.Fixed(s.YMm, units),
			figures.Fixed(s.EndsMm[0].XMm, units) + ", " + figures.Fixed(s.EndsMm[0].YMm, units),
			figures.Fixed(s.EndsMm[1].XMm, units) + ", " + figures.Fixed(s.EndsMm[1].YMm, units)})
	}
	return t
}

func chordTable(face *plan.Face, units parts.Units) draw.Table {
	t := draw.Table{Title: figures.Upper(face.Face) + " face: distances between holes, in " + figures.LengthWord(units), Columns: []draw.Column{
		{Head: "Pattern", Flex: true},
		{Head: "Holes", Align: draw.Centre, Bold: true},
		{Head: "Which", Flex: true},
		{Head: "Centres (dividers)", Align: draw.Right, Size: 3.8, Bold: true},
		{Head: "Over pins", Align: draw.Right, Size: 3.8},
		{Head: "Between pins", Align: draw.Right, Size: 3.8},
	}}
	for _, g := range face.Groups {
		for _, c := range g.Chords {
			t.Rows = append(t.Rows, []string{g.Name, strconv.Itoa(c.From) + " to " + strconv.Itoa(c.To), c.Kind,
				figures.Fixed(c.CentreMm, units), figures.Fixed(c.OverMm, units), figures.Fixed(c.BetweenMm, units)})
		}
	}
	return t
}

func radialTable(part *plan.PartPlan, units parts.Units) draw.Table {
	t := draw.Table{Title: "On the outside: holes, slots and windows, in " + figures.LengthWord(units), Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true, Size: 4.0},
		{Head: "Name", Flex: true},
		{Head: "Clock angle", Align: draw.Right, Size: 3.8, Bold: true},
		{Head: "Arc from TOP", Align: draw.Right, Size: 3.8},
		{Head: "From front face", Align: draw.Right, Size: 3.8, Bold: true},
		{Head: "Size", Flex: true},
		{Head: "Depth", Flex: true},
		{Head: "On Ø", Align: draw.Right},
	}}
	for _, r := range part.Radials {
		t.Rows = append(t.Rows, []string{strconv.Itoa(r.N), r.Name, figures.Degrees(r.ClockDeg), figures.Fixed(r.ArcMm, units), figures.Fixed(r.AxialMm, units),
			r.SizeText, r.DepthText, figures.Short(r.OutsideMm, units)})
	}
	return t
}

// ladderTable sets the rungs, two abreast where there is room.
func ladderTable(l plan.Ladder, width float64) draw.Table {
	abreast := 1
	if width >= 130 {
		abreast = 2
	}
	t := draw.Table{
		Title: "Turn to the measured counterpart: " + l.Feature,
		Lead:  figures.Joined(" ", "Counterpart: "+l.Counterpart+".", l.Note),
	}
	for range abreast {
		t.Columns = append(t.Columns,
			draw.Column{Head: "Measured", Align: draw.Centre, Size: 4.2},
			draw.Column{Head: "Turn the bore to", Align: draw.Centre, Size: draw.LimitMm, Bold: true, Flex: true})
	}
	rows := (len(l.Rungs) + abreast - 1) / abreast
	for i := range rows {
		var row []string
		for k := range abreast {
			if j := i + k*rows; j < len(l.Rungs) {
				row = append(row, l.Rungs[j].Measured, l.Rungs[j].Bore)
			} else {
				row = append(row, "", "")
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
