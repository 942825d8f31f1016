package templates

import (
	"fmt"
	"strconv"
	"strings"

	"centrepop/layout/plan"
)

// inspectionSheets draws a part's inspection record: every check with room
// for what was measured.
func inspectionSheets(pl *plan.Plan, part *plan.PartPlan, paper frame) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: part.Title, name: "Inspection record", scale: "not to scale"}
		if page == 0 {
			return s, partHead(part, "Inspection record", paper.body().width())
		}
		return s, runningHead(part.Title, "inspection record, continued", paper.body().width())
	})
	f.add(pieceLine(part.Quantity, pl.Tolerance, f.width()))
	f.table(checkTable(part, pl.Tolerance, f.width()))
	end := verdict(f.width(), false)
	if !f.fits(end.height) {
		end = verdict(f.width(), true)
	}
	f.add(end)
	return f.sheets
}

// pieceLine says which piece was measured and, once for all lines, which
// general tolerance applies.
func pieceLine(quantity int, general string, width float64) piece {
	p := piece{height: 10}
	text := "Measure clean and at workshop temperature, after deburring."
	if quantity > 1 {
		text = fmt.Sprintf("Piece number ______ of %d. One record for each piece. Measure clean, after deburring.", quantity)
	}
	text, size := shrink(text, 3.8, false, width)
	p.draw.Add(Text{YMm: -4.5, SizeMm: size, Content: text})
	if general != "" {
		p.draw.Add(Text{YMm: -9.5, SizeMm: textMm, Content: "Limits that name no source are those of " + general + "."})
		p.height += 5
	}
	return p
}

func checkTable(part *plan.PartPlan, general string, width float64) table {
	wide := width >= 160
	t := table{rowMm: 9, foot: verdict(width, true).height + 4, columns: []column{
		{head: "No.", align: Centre, bold: true},
		{head: "What", flex: true},
		{head: "Wanted", flex: true},
		{head: "Limits", flex: true, firm: 42, bold: true, size: limitMm},
	}}
	if wide {
		t.columns = append(t.columns, column{head: "Gauge", flex: true})
	}
	t.columns = append(t.columns,
		column{head: "Measured", align: Centre, least: 26},
		column{head: "Pass", align: Centre, least: 11, tick: true})
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
		t.rows = append(t.rows, append(row, "", ""))
	}
	return t
}

// verdict is the foot of the record: result and signatures; tight where the
// page has little room left.
func verdict(width float64, tight bool) piece {
	p := piece{height: 40}
	first, step := -19.0, 10.0
	if tight {
		p.height, first, step = 25, -14, 8
	}
	x := 0.0
	for _, word := range []string{"Passed", "To rework", "Scrap"} {
		p.draw.Add(box(rect{x, -7, x + 6, -1}, 0.5))
		p.draw.Add(Text{XMm: x + 8, YMm: -5.5, SizeMm: 4.2, Bold: true, Content: word})
		x += width / 3.2
	}
	for i, label := range []string{"Measured by", "Remarks"} {
		y := first - step*float64(i)
		p.draw.Add(Text{YMm: y, SizeMm: textMm, Content: label})
		from := 2 + textWidth(label, textMm, false)
		if i == 0 {
			p.draw.Add(segment(from, y-0.6, width*0.62, y-0.6, thinMm))
			p.draw.Add(Text{XMm: width*0.62 + 3, YMm: y, SizeMm: textMm, Content: "Date"})
			from = width*0.62 + 5 + textWidth("Date", textMm, false)
		}
		p.draw.Add(segment(from, y-0.6, width, y-0.6, thinMm))
	}
	if !tight {
		p.draw.Add(segment(0, -38, width, -38, thinMm))
	}
	return p
}
