package templates

import (
	"fmt"
	"slices"
	"strings"

	"centrepop/layout/plan"
)

// The paper's edges, in millimetres. Office printers leave 3 to 6 mm blank.
const (
	marginMm     = 8.0
	titleRowMm   = 8.5
	titleGapMm   = 2.5
	titlePadMm   = 1.2   // beside the text of a field
	titleValueMm = 3.8   // em of a field's value, where there is room
	oneRowMm     = 250.0 // from this paper width on the title block is one row
)

// frame is a sheet of paper as it lies: width across, height up.
type frame struct {
	width, height float64
	name          string // A4, or the size
}

// body is the room above the title block and inside the margins.
func (f frame) body() rect {
	return rect{marginMm, marginMm + f.titleMm() + titleGapMm, f.width - marginMm, f.height - marginMm}
}

// titleMm is the height of the title block.
func (f frame) titleMm() float64 {
	if f.width >= oneRowMm {
		return titleRowMm
	}
	return 2 * titleRowMm
}

// turned is the same paper on its side.
func (f frame) turned() frame { return frame{f.height, f.width, f.name} }

// titleCell is a field of the title block: label above, value below.
type titleCell struct {
	label, value string
	share        float64 // of the row's width
}

// titleBlock draws the block at the foot of the sheet: the fields in two
// rows, or in one on wide paper.
func titleBlock(pl *plan.Plan, s *sheet, n, total int) {
	part := s.part
	if part == "" {
		part = "all parts"
	}
	rows := [][]titleCell{
		{{"Revision", pl.Revision, 13}, {"Date", pl.Date, 20}, {"General tolerance", pl.Tolerance, 27}, {"Scale", s.scale, 22}, {"Page", fmt.Sprintf("%d of %d", n, total), 18}},
		{{"Job", pl.Job, 30}, {"Part", part, 34}, {"Sheet", s.name, 36}},
	}
	if s.frame.titleMm() == titleRowMm {
		row := append(slices.Clone(rows[1]), rows[0]...)
		for i := range row {
			row[i].share /= 2
		}
		rows = [][]titleCell{row}
	}
	width := s.frame.width - 2*marginMm
	for i, row := range rows {
		x := marginMm
		for j, w := range titleWidths(row, width) {
			row[j].draw(&s.draw, x, marginMm+float64(i)*titleRowMm, w)
			x += w
		}
	}
	s.draw.Add(box(rect{marginMm, marginMm, s.frame.width - marginMm, marginMm + s.frame.titleMm()}, 0.5))
}

// titleWidths shares a row's width among its fields. A field whose value is
// wider than its share takes what it lacks from the spare width of the others.
func titleWidths(row []titleCell, total float64) []float64 {
	widths, spare := make([]float64, len(row)), make([]float64, len(row))
	lack, left := 0.0, 0.0
	for i, c := range row {
		widths[i] = total * c.share / 100
		need := max(textWidth(c.value, titleValueMm, true), textWidth(c.label, smallMm, false)) + 2*titlePadMm + 0.1
		spare[i] = widths[i] - need
		lack += max(-spare[i], 0)
		left += max(spare[i], 0)
	}
	given := min(lack, left)
	for i, room := range spare {
		switch {
		case given == 0:
		case room > 0:
			widths[i] -= room * given / left
		default:
			widths[i] -= room * given / lack
		}
	}
	return widths
}

// draw draws a field with its lower left corner at (x, y). A value too long
// becomes smaller, and then breaks into two lines; only what is too long for
// those is cut.
func (c titleCell) draw(d *Drawing, x, y, width float64) {
	d.Add(box(rect{x, y, x + width, y + titleRowMm}, 0.25))
	value, room := c.value, width-2*titlePadMm
	if value == "" {
		value = "–"
	}
	x += titlePadMm
	text, size := shrink(value, titleValueMm, true, room)
	lines := wrap(value, smallMm, true, room)
	if text == value || len(lines) < 2 {
		d.Add(Text{XMm: x, YMm: y + 5.6, SizeMm: smallMm, Content: c.label},
			Text{XMm: x, YMm: y + 1.5, SizeMm: size, Bold: true, Content: text})
		return
	}
	second, _ := shrink(strings.Join(lines[1:], " "), smallMm, true, room)
	d.Add(Text{XMm: x, YMm: y + 6.2, SizeMm: smallMm, Content: c.label},
		Text{XMm: x, YMm: y + 3.5, SizeMm: smallMm, Bold: true, Content: lines[0]},
		Text{XMm: x, YMm: y + 0.85, SizeMm: smallMm, Bold: true, Content: second})
}
