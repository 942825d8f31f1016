package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// Inspection draws a part's inspection record: every check with room
// for what was measured.
func Inspection(pl *plan.Plan, part *plan.PartPlan, paper draw.Frame) []*draw.Sheet {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: part.Title, Name: "Inspection record", Scale: "not to scale"}
		if page == 0 {
			return s, picture.Head(part, "Inspection record", paper.Body().Width())
		}
		return s, draw.RunningHead(part.Title, "inspection record, continued", paper.Body().Width())
	})
	f.Add(pieceLine(part.Quantity, pl.Tolerance, f.Width()))
	f.Table(checkTable(part, pl.Tolerance, f.Width()))
	end := verdict(f.Width(), false)
	if !f.Fits(end.Height) {
		end = verdict(f.Width(), true)
	}
	f.Add(end)
	return f.Sheets
}

// pieceLine says which piece was measured and, once for all lines, which
// general tolerance applies.
func pieceLine(quantity int, general string, width float64) draw.Piece {
	p := draw.Piece{Height: 10}
	text := "Measure clean and at workshop temperature, after deburring."
	if quantity > 1 {
		text = fmt.Sprintf("Piece number ______ of %d. One record for each piece. Measure clean, after deburring.", quantity)
	}
	text, size := draw.Shrink(text, 3.8, false, width)
	p.Draw.Add(draw.Text{YMm: -4.5, SizeMm: size, Content: text})
	if general != "" {
		p.Draw.Add(draw.Text{YMm: -9.5, SizeMm: draw.TextMm, Content: "Limits that name no source are those of " + general + "."})
		p.Height += 5
	}
	return p
}

func checkTable(part *plan.PartPlan, general string, width float64) draw.Table {
	wide := width >= 160
	t := draw.Table{RowMm: 9, Foot: verdict(width, true).Height + 4, Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true},
		{Head: "What", Flex: true},
		{Head: "Wanted", Flex: true},
		{Head: "Limits", Flex: true, Firm: 42, Bold: true, Size: draw.LimitMm},
	}}
	if wide {
		t.Columns = append(t.Columns, draw.Column{Head: "Gauge", Flex: true})
	}
	t.Columns = append(t.Columns,
		draw.Column{Head: "Measured", Align: draw.Centre, Least: 26},
		draw.Column{Head: "Pass", Align: draw.Centre, Least: 11, Tick: true})
	for _, c := range part.Checks {
		number := ""
		if c.Ref > 0 {
			number = strconv.Itoa(c.Ref)
		}
		what := c.What
		if source, _, _ := strings.Cut(c.Source, ";"); source != "" && (general == "" || !strings.HasPrefix(source, general)) {
			what += "\n(" + source + ")"
		}
		row := []string{number, what, c.Wanted, c.Limits}
		if wide {
			row = append(row, c.Gauge)
		} else if c.Gauge != "" {
			row[1] += "\n" + c.Gauge
		}
		t.Rows = append(t.Rows, append(row, "", ""))
	}
	return t
}

// verdict is the foot of the record: result and signatures; tight where the
// page has little room left.
func verdict(width float64, tight bool) draw.Piece {
	p := draw.Piece{Height: 40}
	first, step := -19.0, 10.0
	if tight {
		p.Height, first, step = 25, -14, 8
	}
	x := 0.0
	for _, word := range []string{"Passed", "To rework", "Scrap"} {
		p.Draw.Add(draw.Box(draw.R(x, -7, x+6, -1), 0.5))
		p.Draw.Add(draw.Text{XMm: x + 8, YMm: -5.5, SizeMm: 4.2, Bold: true, Content: word})
		x += width / 3.2
	}
	for i, label := range []string{"Measured by", "Remarks"} {
		y := first - step*float64(i)
		p.Draw.Add(draw.Text{YMm: y, SizeMm: draw.TextMm, Content: label})
		from := 2 + draw.TextWidth(label, draw.TextMm, false)
		if i == 0 {
			p.Draw.Add(draw.Segment(from, y-0.6, width*0.62, y-0.6, draw.ThinMm))
			p.Draw.Add(draw.Text{XMm: width*0.62 + 3, YMm: y, SizeMm: draw.TextMm, Content: "Date"})
			from = width*0.62 + 5 + draw.TextWidth("Date", draw.TextMm, false)
		}
		p.Draw.Add(draw.Segment(from, y-0.6, width, y-0.6, draw.ThinMm))
	}
	if !tight {
		p.Draw.Add(draw.Segment(0, -38, width, -38, draw.ThinMm))
	}
	return p
}
