package templates

import (
	"fmt"
	"strconv"

	"centrepop/layout"
)

// inspectionSheets draws a part's inspection record: every check with room
// for what was measured.
func inspectionSheets(plan *layout.Plan, part *layout.PartPlan, paper frame) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: part.Title, name: "Inspection record", scale: "not to scale"}
		if page == 0 {
			return s, partHead(part, "Inspection record", paper.body().width())
		}
		return s, runningHead(part.Title, "inspection record, continued", paper.body().width())
	})
	f.add(pieceLine(part.Quantity, f.width()))
	f.table(checkTable(part, f.width()))
	f.add(verdict(f.width()))
	return f.sheets
}

// pieceLine is the line that says which piece was measured.
func pieceLine(quantity int, width float64) piece {
	p := piece{height: 10}
	text := "Measure clean and at workshop temperature, after deburring."
	if quantity > 1 {
		text = fmt.Sprintf("Piece number ______ of %d. One record for each piece. Measure clean, after deburring.", quantity)
	}
	text, size := shrink(text, 3.8, false, width)
	p.draw.Add(Text{YMm: -4.5, SizeMm: size, Content: text})
	return p
}

func checkTable(part *layout.PartPlan, width float64) table {
	wide := width >= 160
	t := table{rowMm: 10, columns: []column{
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
		if c.Source != "" {
			what += "\n(" + c.Source + ")"
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

// verdict is the foot of the record: result and signatures.
func verdict(width float64) piece {
	p := piece{height: 40}
	x := 0.0
	for _, word := range []string{"Passed", "To rework", "Scrap"} {
		p.draw.Add(box(rect{x, -7, x + 6, -1}, 0.5))
		p.draw.Add(Text{XMm: x + 8, YMm: -5.5, SizeMm: 4.2, Bold: true, Content: word})
		x += width / 3.2
	}
	for i, label := range []string{"Measured by", "Remarks"} {
		y := -19 - 10*float64(i)
		p.draw.Add(Text{YMm: y, SizeMm: textMm, Content: label})
		from := 2 + textWidth(label, textMm, false)
		if i == 0 {
			p.draw.Add(segment(from, y-0.6, width*0.62, y-0.6, thinMm))
			p.draw.Add(Text{XMm: width*0.62 + 3, YMm: y, SizeMm: textMm, Content: "Date"})
			from = width*0.62 + 5 + textWidth("Date", textMm, false)
		}
		p.draw.Add(segment(from, y-0.6, width, y-0.6, thinMm))
	}
	p.draw.Add(segment(0, -38, width, -38, thinMm))
	return p
}
