package sheets

import (
	"strconv"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
)

// patternTables are the sizes of a flat pattern and its tables to mark out by.
func patternTables(d *plan.Development, units parts.Units) []draw.Table {
	sizes := draw.Table{Title: d.Title, Columns: []draw.Column{{Head: "Size", Flex: true}, {Head: figures.LengthWord(units), Align: draw.Right, Bold: true},
		{Head: "Size", Flex: true, Spare: true}, {Head: figures.LengthWord(units), Align: draw.Right, Bold: true, Spare: true}}}
	if d.On != "" {
		sizes.Lead = "On " + d.On + "."
	}
	if d.NoTemplate != "" {
		sizes.Lead += " No template: " + d.NoTemplate + "."
	}
	if d.Copies > 1 {
		sizes.Lead += " Cut " + strconv.Itoa(d.Copies) + " of this piece."
	}
	rows := (len(d.Sizes) + 1) / 2
	for i := range rows {
		row := []string{d.Sizes[i].Name, d.Sizes[i].Text, "", ""}
		if j := i + rows; j < len(d.Sizes) {
			row[2], row[3] = d.Sizes[j].Name, d.Sizes[j].Text
		}
		sizes.Rows = append(sizes.Rows, row)
	}
	out := []draw.Table{sizes}
	for i, t := range d.Tables {
		table := draw.Table{Title: t.Title, Rows: t.Rows}
		for j, head := range t.Heads {
			c := draw.Column{Head: head, Bold: j == 0, Flex: head == "Size" || head == "Name"}
			if j > 0 && !c.Flex {
				c.Align = draw.Right
			}
			table.Columns = append(table.Columns, c)
		}
		if i == len(d.Tables)-1 && len(d.Rules) > 0 {
			table.Lead = "Worked out by " + figures.Joined("; ", d.Rules...) + "."
		}
		out = append(out, table)
	}
	return out
}
