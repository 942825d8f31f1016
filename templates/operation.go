package templates

import (
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// wideMm is the room from which sheets are set in two columns.
const wideMm = 240.0

// operationSheets draws a part's operation sheet. Where its last page holds
// little, a smaller picture may save that page.
func operationSheets(pl *plan.Plan, part *plan.PartPlan, paper frame) []*sheet {
	f := operationFlow(pl, part, paper, 0.40)
	if len(f.sheets) > 1 && f.lowest > f.body.y0+0.6*f.body.height() {
		if small := operationFlow(pl, part, paper, 0.28); len(small.sheets) < len(f.sheets) {
			return small.sheets
		}
	}
	return f.sheets
}

// operationFlow sets what a part is, its picture, sizes, steps and tables. The
// picture takes at most a share of the page's height.
func operationFlow(pl *plan.Plan, part *plan.PartPlan, paper frame, share float64) *flow {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: part.Title, name: "Operation sheet", scale: "not to scale"}
		if page == 0 {
			return s, partHead(part, "Operation sheet", paper.body().width())
		}
		return s, runningHead(part.Title, "operation sheet, continued", paper.body().width())
	})
	f.add(pictures(part, f.width(), f.body.height()*share)...)
	if f.width() >= wideMm {
		f.columns(2)
	}
	for _, caution := range part.Cautions {
		f.add(cautionBox(caution, f.width()), space(2))
	}
	f.table(featureTable(part))
	f.add(notes("Notes", part.Notes, f.width())...)
	for i, op := range part.Operations {
		left := f.left()
		if i == 0 {
			left -= heading("", f.width()).height
		}
		pieces := operationBoxes(op, f.width(), left, f.tallest()-15)
		if i == 0 {
			pieces = append([]piece{heading("Operations", f.width())}, pieces...)
		}
		f.add(pieces...)
	}
	f.add(space(3))
	for _, face := range part.Faces {
		f.table(holeTable(face, pl.Units))
		f.table(slotTable(face, pl.Units))
		f.table(chordTable(face, pl.Units))
	}
	f.table(radialTable(part, pl.Units))
	for _, ladder := range part.Ladders {
		f.table(ladderTable(ladder, f.width()))
	}
	return f
}

// partHead is the head of the first sheet of a kind.
func partHead(part *plan.PartPlan, kind string, width float64) piece {
	var p piece
	kindWidth := textWidth(kind, headMm, true)
	title, size := shrink(part.Title, titleMm, true, width-kindWidth-6)
	p.draw.Add(Text{YMm: -7, SizeMm: size, Bold: true, Content: title})
	p.draw.Add(Text{XMm: width, YMm: -7, SizeMm: headMm, Bold: true, Align: Right, Content: kind})
	facts := joined("   ·   ", "Make "+strconv.Itoa(part.Quantity), part.Material, labelled("stock", part.StockText),
		labelled("size", part.Overall), labelled("mass", mass(part.MassKg)), labelled("TOP marked by", part.Top))
	p.facts(facts, width)
	return p
}

// facts closes a sheet's head: the line of facts under its title, and a rule.
func (p *piece) facts(facts string, width float64) {
	y := -10.0
	for _, line := range wrap(facts, 3.8, false, width) {
		y -= 3.8 * leading
		p.draw.Add(Text{YMm: y + 1.2, SizeMm: 3.8, Content: line})
	}
	y -= 1.2
	p.draw.Add(segment(0, y, width, y, thickMm))
	p.height = -y + 3
}

// notes sets a list of texts under a heading; none if there are none.
func notes(title string, texts []string, width float64) []piece {
	if len(texts) == 0 {
		return nil
	}
	pieces := []piece{heading(title, width)}
	for _, t := range texts {
		pieces = append(pieces, paragraph("–", t, textMm, false, width)...)
	}
	return append(pieces, space(4))
}

// cautionBox is a framed warning.
func cautionBox(text string, width float64) piece {
	lines := stack(paragraph("", text, 3.8, true, width-17)...)
	p := piece{height: max(10, lines.height+3)}
	p.draw.Add(box(rect{0, -p.height, width, 0}, 0.5))
	p.draw.Add(warning(2.5, -p.height/2-3.7, 8.5)...)
	p.draw.Place(&lines.draw, 14, -(p.height-lines.height)/2)
	return p
}

func featureTable(part *plan.PartPlan) table {
	t := table{title: "Sizes", columns: []column{
		{head: "No.", align: Centre, bold: true, size: 4.2},
		{head: "Feature", flex: true},
		{head: "Size", flex: true},
		{head: "Limits", flex: true, firm: 42, bold: true, size: limitMm, spare: true},
		{head: "Note", flex: true, spare: true},
	}}
	for _, ft := range part.Features {
		name := ft.Name
		if ft.Face != "" && len(part.Faces) > 1 {
			name += " (" + string(ft.Face) + ")"
		}
		t.rows = append(t.rows, []string{strconv.Itoa(ft.N), name, ft.Size, ft.Limits, ft.Note})
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
func operationBoxes(op plan.Operation, width, left, tallest float64) []piece {
	p := operationBox(op, width)
	if p.height <= left || (p.height < splitMm || left < splitLeastMm) && p.height <= tallest || len(op.Do) < 2 {
		return []piece{p, space(2)}
	}
	if left < splitLeastMm {
		left = tallest
	}
	k := len(op.Do) - 1
	for ; k > 1; k-- {
		if first, _ := partOperation(op, k); operationBox(first, width).height <= left {
			break
		}
	}
	first, second := partOperation(op, k)
	if k < 4 && p.height <= tallest {
		return []piece{p, space(2)}
	}
	return append([]piece{operationBox(first, width), space(2)}, operationBoxes(second, width, tallest, tallest)...)
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
func operationBox(op plan.Operation, width float64) piece {
	var p piece
	x0 := stripMm + 2.5
	inner := width - x0 - 2.5
	tag := strings.ToUpper(op.Machine)
	tagWidth := textWidth(tag, 3.6, true) + 3
	p.draw.Add(box(rect{x0, -7.8, x0 + tagWidth, -2}, lineMm))
	p.draw.Add(Text{XMm: x0 + 1.5, YMm: -6.2, SizeMm: 3.6, Bold: true, Content: tag})
	y := -2.0
	for _, line := range wrap(op.Title, headMm, true, inner-tagWidth-3) {
		p.draw.Add(Text{XMm: x0 + tagWidth + 3, YMm: y - headMm, SizeMm: headMm, Bold: true, Content: line})
		y -= headMm * leading
	}
	y -= 2

	leftWidth, rightWidth := inner, inner
	two := inner >= 140
	if two {
		leftWidth = inner * 0.58
		rightWidth = inner - leftWidth - 4
	}
	var left []piece
	for _, line := range op.Do {
		left = append(left, paragraph("–", line, 3.8, false, leftWidth)...)
		left = append(left, space(0.6))
	}
	for i, line := range op.Limits {
		if i == 0 {
			left = append(left, space(1.2))
		}
		left = append(left, paragraph("", line, limitMm, true, leftWidth)...)
	}
	var right []piece
	for _, how := range [][2]string{{"Hold", op.Holding}, {"Tool", op.Tool}, {"Speed", op.Speed}, {"Gauge", op.Gauge}, {"See", refs(op.Refs)}} {
		if how[1] == "" {
			continue
		}
		right = append(right, hanging(how[0], how[1], rightWidth), space(0.6))
	}
	l, r := stack(left...), stack(right...)
	p.draw.Place(&l.draw, x0, y)
	if two {
		if len(right) > 0 {
			x := x0 + leftWidth + 2
			p.draw.Add(segment(x, y, x, y-max(l.height, r.height), hairMm))
		}
		p.draw.Place(&r.draw, x0+leftWidth+4, y)
		y -= max(l.height, r.height)
	} else {
		y -= l.height + 1.2
		p.draw.Place(&r.draw, x0, y)
		y -= r.height
	}
	if op.Caution != "" {
		y -= 1.5
		c := cautionBox(op.Caution, inner)
		p.draw.Place(&c.draw, x0, y)
		y -= c.height
	}
	p.height = max(-y+1.5, 24.5)

	p.draw.Add(box(rect{0, -p.height, width, 0}, 0.5), segment(stripMm, -p.height, stripMm, 0, lineMm))
	p.draw.Add(Text{XMm: stripMm / 2, YMm: -9, SizeMm: 8, Bold: true, Align: Centre, Content: strconv.Itoa(op.N)})
	p.draw.Add(box(rect{stripMm/2 - 4, -20.5, stripMm/2 + 4, -12.5}, 0.5))
	p.draw.Add(Text{XMm: stripMm / 2, YMm: -23.6, SizeMm: smallMm, Align: Centre, Content: "done"})
	return p
}

// hanging sets a bold label and its text, hung in from the label.
func hanging(label, text string, width float64) piece {
	const indent = 13.5
	body := stack(paragraph("", text, textMm, false, width-indent)...)
	body.draw = Drawing{Items: []Item{
		Text{YMm: -textMm, SizeMm: textMm, Bold: true, Content: label},
		moved(body.draw, indent, 0),
	}}
	return body
}

// moved is a drawing as one item, moved.
func moved(d Drawing, x, y float64) Item {
	var e Drawing
	e.Place(&d, x, y)
	return e.Items[0]
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

// upper writes a face's name in capitals.
func upper(f parts.Face) string { return strings.ToUpper(string(f)) }

// holeTable says where the holes are: from the centre and, unless the outline
// is round, from two edges.
func holeTable(face *plan.Face, units parts.Units) table {
	fromX, fromY := edgeNames(face.Datum)
	t := table{title: upper(face.Face) + " face: where the holes are, in " + lengthWord(units), columns: []column{
		{head: "No.", align: Centre, bold: true, size: 4.0},
		{head: "Pattern", flex: true},
		{head: "Angle from TOP", align: Right},
		{head: "From centre", align: Right},
		{head: "x", align: Right, size: 3.8, bold: face.Round},
		{head: "y", align: Right, size: 3.8, bold: face.Round},
		{head: "from " + fromX, align: Right, size: 3.8, bold: true, spare: true},
		{head: "from " + fromY, align: Right, size: 3.8, bold: true, spare: true},
		{head: "Drill Ø", align: Right},
	}}
	for _, h := range face.Holes {
		row := []string{strconv.Itoa(h.N), h.Group, degrees(h.AngleDeg), fixed(h.RadiusMm, units),
			fixed(h.XMm, units), fixed(h.YMm, units), "", "", short(h.DiameterMm, units)}
		if !face.Round {
			row[6], row[7] = fixed(h.FromXMm, units), fixed(h.FromYMm, units)
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// lengthWord names the unit of a table's lengths.
func lengthWord(units parts.Units) string {
	if units == parts.Inches {
		return "inches"
	}
	return "mm"
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

func slotTable(face *plan.Face, units parts.Units) table {
	t := table{title: upper(face.Face) + " face: slots, in " + lengthWord(units), columns: []column{
		{head: "No.", align: Centre, bold: true, size: 4.0},
		{head: "Name", flex: true},
		{head: "Width × length", align: Centre},
		{head: "Long axis", align: Right},
		{head: "Centre x, y", align: Centre},
		{head: "One end x, y", align: Centre},
		{head: "Other end x, y", align: Centre},
	}}
	for _, s := range face.Slots {
		t.rows = append(t.rows, []string{strconv.Itoa(s.N), s.Group,
			short(s.WidthMm, units) + " × " + short(s.LengthMm, units), degrees(s.TurnDeg),
			fixed(s.XMm, units) + ", " + fixed(s.YMm, units),
			fixed(s.EndsMm[0].XMm, units) + ", " + fixed(s.EndsMm[0].YMm, units),
			fixed(s.EndsMm[1].XMm, units) + ", " + fixed(s.EndsMm[1].YMm, units)})
	}
	return t
}

func chordTable(face *plan.Face, units parts.Units) table {
	t := table{title: upper(face.Face) + " face: distances between holes, in " + lengthWord(units), columns: []column{
		{head: "Pattern", flex: true},
		{head: "Holes", align: Centre, bold: true},
		{head: "Which", flex: true},
		{head: "Centres (dividers)", align: Right, size: 3.8, bold: true},
		{head: "Over pins", align: Right, size: 3.8},
		{head: "Between pins", align: Right, size: 3.8},
	}}
	for _, g := range face.Groups {
		for _, c := range g.Chords {
			t.rows = append(t.rows, []string{g.Name, strconv.Itoa(c.From) + " to " + strconv.Itoa(c.To), c.Kind,
				fixed(c.CentreMm, units), fixed(c.OverMm, units), fixed(c.BetweenMm, units)})
		}
	}
	return t
}

func radialTable(part *plan.PartPlan, units parts.Units) table {
	t := table{title: "On the outside: holes, slots and windows, in " + lengthWord(units), columns: []column{
		{head: "No.", align: Centre, bold: true, size: 4.0},
		{head: "Name", flex: true},
		{head: "Clock angle", align: Right, size: 3.8, bold: true},
		{head: "Arc from TOP", align: Right, size: 3.8},
		{head: "From front face", align: Right, size: 3.8, bold: true},
		{head: "Size", flex: true},
		{head: "Depth", flex: true},
		{head: "On Ø", align: Right},
	}}
	for _, r := range part.Radials {
		t.rows = append(t.rows, []string{strconv.Itoa(r.N), r.Name, degrees(r.ClockDeg), fixed(r.ArcMm, units), fixed(r.AxialMm, units),
			r.SizeText, r.DepthText, short(r.OutsideMm, units)})
	}
	return t
}

// ladderTable sets the rungs, two abreast where there is room.
func ladderTable(l plan.Ladder, width float64) table {
	abreast := 1
	if width >= 130 {
		abreast = 2
	}
	t := table{
		title: "Turn to the measured mate: " + l.Feature,
		lead:  joined(" ", "Mate: "+l.Mate+".", l.Note),
	}
	for range abreast {
		t.columns = append(t.columns,
			column{head: "Measured", align: Centre, size: 4.2},
			column{head: "Turn the bore to", align: Centre, size: limitMm, bold: true, flex: true})
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
		t.rows = append(t.rows, row)
	}
	return t
}
