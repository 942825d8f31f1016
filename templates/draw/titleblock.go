package draw

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// The texts of a field, in millimetres.
const (
	titlePadMm   = 1.2 // beside the text
	titleValueMm = 3.8 // em of the value, where there is room
)

// titleCell is a field of the title block: label above, value below.
type titleCell struct {
	label, value string
	share        float64 // of the row's width
}

// titleBlock draws the block at the foot of the sheet: the fields in two
// rows, or in one on wide paper.
func titleBlock(job Job, s *Sheet, n, total int) {
	part := cmp.Or(s.Part, "all parts")
	rows := [][]titleCell{
		{{"Revision", job.Revision, 13}, {"Date", job.Date, 20}, {"General tolerance", job.Tolerance, 27}, {"Scale", s.Scale, 22}, {"Page", fmt.Sprintf("%d of %d", n, total), 18}},
		{{"Job", job.Name, 30}, {"Part", part, 34}, {"Sheet", s.Name, 36}},
	}
	if s.Frame.titleMm() == TitleRowMm {
		row := append(slices.Clone(rows[1]), rows[0]...)
		for i := range row {
			row[i].share /= 2
		}
		rows = [][]titleCell{row}
	}
	width := s.Frame.WidthMm - 2*MarginMm
	for i, row := range rows {
		x := MarginMm
		for j, w := range titleWidths(row, width) {
			row[j].draw(&s.Draw, x, MarginMm+float64(i)*TitleRowMm, w)
			x += w
		}
	}
	s.Draw.Add(Box(Rect{MarginMm, MarginMm, s.Frame.WidthMm - MarginMm, MarginMm + s.Frame.titleMm()}, 0.5))
}

// NotReleased is what stands on every sheet and in every cutting file of a part
// that has an open stop in the review.
const NotReleased = "NOT RELEASED"

// holds tells whether a part on the sheet is not released, of a sheet about all
// parts whether any is not.
func (job *Job) holds(s *Sheet) bool {
	return s.All && len(job.Held) > 0 || slices.ContainsFunc(append([]string{s.Part}, s.Parts...), func(part string) bool { return slices.Contains(job.Held, part) })
}

// stamp writes over the sheet that a part of it is not released, and once more
// up its left edge: one of them is in the reach of every printer.
func stamp(s *Sheet) {
	const sizeMm, clearMm, descentMm = 3.6, 0.8, 0.5
	text := NotReleased + ": a stop of the review is open"
	left := MarginMm - clearMm - descentMm
	if s.Revision != "" {
		left -= barGapMm
	}
	long := TextWidth(text, sizeMm, true)
	s.Draw.Add(
		Text{XMm: s.Frame.WidthMm/2 - long/2, YMm: s.Frame.HeightMm - MarginMm + clearMm, SizeMm: sizeMm, Bold: true, Content: text},
		Text{XMm: left, YMm: s.Frame.HeightMm/2 - long/2, SizeMm: sizeMm, Bold: true, RotateDeg: 90, Content: text},
	)
}

// titleWidths shares a row's width among its fields. A field whose value is
// wider than its share takes what it lacks from the spare width of the others.
func titleWidths(row []titleCell, total float64) []float64 {
	widths, spare := make([]float64, len(row)), make([]float64, len(row))
	var lack, left float64
	for i, c := range row {
		widths[i] = total * c.share / 100
		need := max(TextWidth(c.value, titleValueMm, true), TextWidth(c.label, SmallMm, false)) + 2*titlePadMm + 0.1
		spare[i] = widths[i] - need
		lack += max(-spare[i], 0)
		left += max(spare[i], 0)
	}
	given := min(lack, left)
	for i, room := range spare {
		switch {
		case room > 0:
			widths[i] -= room * given / left
		case room < 0:
			widths[i] -= room * given / lack
		}
	}
	return widths
}

// draw draws a field with its lower left corner at (x, y). A value too long
// becomes smaller, and then breaks into two lines; only what is too long for
// those is cut.
func (c titleCell) draw(d *Drawing, x, y, width float64) {
	d.Add(Box(Rect{x, y, x + width, y + TitleRowMm}, 0.25))
	value, room := c.value, width-2*titlePadMm
	value = cmp.Or(value, "–")
	x += titlePadMm
	text, size := Shrink(value, titleValueMm, true, room)
	lines := Wrap(value, SmallMm, true, room)
	if text == value || len(lines) < 2 {
		d.Add(Text{XMm: x, YMm: y + 5.6, SizeMm: SmallMm, Content: c.label},
			Text{XMm: x, YMm: y + 1.5, SizeMm: size, Bold: true, Content: text})
		return
	}
	second, _ := Shrink(strings.Join(lines[1:], " "), SmallMm, true, room)
	d.Add(Text{XMm: x, YMm: y + 6.2, SizeMm: SmallMm, Content: c.label},
		Text{XMm: x, YMm: y + 3.5, SizeMm: SmallMm, Bold: true, Content: lines[0]},
		Text{XMm: x, YMm: y + 0.85, SizeMm: SmallMm, Bold: true, Content: second})
}
