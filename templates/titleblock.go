package templates

import (
	"fmt"
	"slices"

	"centrepop/layout"
)

// The paper's edges, in millimetres. Office printers leave 3 to 6 mm blank.
const (
	marginMm   = 8.0
	titleRowMm = 8.5
	titleGapMm = 2.5
	oneRowMm   = 250.0 // from this paper width on the title block is one row
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
func titleBlock(plan *layout.Plan, s *sheet, n, total int) {
	part := s.part
	if part == "" {
		part = "all parts"
	}
	rows := [][]titleCell{
		{{"Revision", plan.Revision, 13}, {"Date", plan.Date, 20}, {"General tolerance", plan.Tolerance, 27}, {"Scale", s.scale, 22}, {"Page", fmt.Sprintf("%d of %d", n, total), 18}},
		{{"Job", plan.Job, 30}, {"Part", part, 34}, {"Sheet", s.name, 36}},
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
		y := marginMm + float64(i)*titleRowMm
		x := marginMm
		for _, c := range row {
			w := width * c.share / 100
			s.draw.Add(box(rect{x, y, x + w, y + titleRowMm}, 0.25))
			s.draw.Add(Text{XMm: x + 1.2, YMm: y + titleRowMm - 2.9, SizeMm: smallMm, Content: c.label})
			value := c.value
			if value == "" {
				value = "–"
			}
			text, size := shrink(value, 3.8, true, w-2.4)
			s.draw.Add(Text{XMm: x + 1.2, YMm: y + 1.5, SizeMm: size, Bold: true, Content: text})
			x += w
		}
	}
	s.draw.Add(box(rect{marginMm, marginMm, s.frame.width - marginMm, marginMm + s.frame.titleMm()}, 0.5))
}
