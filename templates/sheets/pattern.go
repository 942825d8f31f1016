package sheets

import (
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// sizeColumns is how many sizes of a flat pattern stand in a row.
const sizeColumns = 3

// Patterns are what becomes of a part's flat patterns on paper.
type Patterns struct {
	Printed []string // names of those that are printed at 1:1
	Notes   []string // of those that no paper takes
}

// patternTables are the sizes of a flat pattern and its tables to mark out by,
// without those that the print at 1:1 shows where it is printed.
func patternTables(d *plan.Development, units parts.Units, textMm float64, printed bool) []draw.Table {
	sizes := draw.Table{Title: d.Title, EmMm: textMm}
	for i := range sizeColumns {
		sizes.Columns = append(sizes.Columns, draw.Column{Head: "Size", Flex: true, Firm: 40, Spare: i > 0},
			draw.Column{Head: words.LengthWord(units), Align: draw.Right, Bold: true, Spare: i > 0})
	}
	if d.On != "" {
		sizes.Lead = "On " + d.On + "."
	}
	sizes.Lead += words.When(d.NoTemplate != "", " No template: "+d.NoTemplate+".")
	sizes.Lead += words.When(d.Copies > 1, " Cut "+strconv.Itoa(d.Copies)+" of this piece.")
	if !printed {
		sizes.Lead = words.Join(" ", sizes.Lead, d.Corners)
	}
	sizes.Rows = draw.Abreast(seq.Map(d.Sizes, func(s plan.PatternValue) []string { return []string{s.Name, s.Text} }), sizeColumns)
	out := []draw.Table{sizes}
	for _, t := range d.Tables {
		if t.Drawn && printed {
			out[0].Lead += " Its points are on the template."
			continue
		}
		table := draw.Table{Title: t.Title, EmMm: textMm, Rows: t.Rows}
		for j, head := range t.Heads {
			c := draw.Column{Head: head, Bold: j == 0, Flex: head == "Size" || head == "Name"}
			if j > 0 && !c.Flex {
				c.Align = draw.Right
			}
			table.Columns = append(table.Columns, c)
		}
		out = append(out, table)
	}
	if last := &out[len(out)-1]; len(d.Tables) > 0 && len(d.Rules) > 0 {
		last.Lead = words.Join(" ", last.Lead, "Worked out by "+words.Join("; ", d.Rules...)+".")
	}
	return out
}
