package sheets

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// indexTables list the pages of each part, and those of the other chapters;
// own is how many pages the cover has. Their names lead to the pages.
func indexTables(pl *plan.Plan, chapters []draw.Chapter, own int) (t, rest draw.Table) {
	t = draw.Table{Title: "Parts, and where to find them", Columns: []draw.Column{
		{Head: "Part", Flex: true, Bold: true, Leads: true},
		{Head: "No. off", Align: draw.Centre, Bold: true},
		{Head: "Material", Flex: true},
		{Head: "Stock", Flex: true},
		{Head: "Mass each", Align: draw.Right},
		{Head: "Page", Align: draw.Centre, Bold: true},
		{Head: "Templates", Align: draw.Centre, Bold: true, Spare: true},
	}}
	pages := map[string]*[2]runs{} // by title: operations, templates
	for _, part := range pl.Parts {
		pages[part.Title] = &[2]runs{}
	}
	n := own
	var others [][]string
	part, run := "", [2]int{}
	for _, c := range chapters {
		first := n + 1
		for _, s := range c.Sheets {
			n++
			for _, title := range s.Parts {
				if at := pages[title]; at != nil && s.Scale == "1:1" {
					at[1] = at[1].and(n)
				} else if at != nil {
					at[0] = at[0].and(n)
				}
			}
		}
		switch {
		case c.Name == PartsName:
		case c.Part != "" && c.Part == part: // a chapter of several
			run[1] = n
			others[len(others)-1][1] = words.Span(run[0], n-run[0]+1)
		default:
			part, run = c.Part, [2]int{first, n}
			name := cmp.Or(c.Part, c.Name)
			others = append(others, []string{name, words.Span(first, n-first+1)})
		}
	}
	for _, part := range pl.Parts {
		at := pages[part.Title]
		t.Rows = append(t.Rows, []string{part.Title, strconv.Itoa(part.Quantity), part.Material, part.StockText, words.Writer{Units: pl.Units}.Mass(part.MassKg), at[0].text(), at[1].text()})
	}
	for i := range chapterColumns {
		rest.Columns = append(rest.Columns, draw.Column{Head: "Sheets", Flex: true, Bold: true, Leads: true, Spare: i > 0}, draw.Column{Head: "Page", Align: draw.Centre, Bold: true, Spare: i > 0})
	}
	rest.Rows = draw.Abreast(others, chapterColumns)
	return t, rest
}

// chapterColumns is how many chapters stand in a row of the index.
const chapterColumns = 3

// runs are pages in rising order, as first and last of each run.
type runs [][2]int

func (r runs) and(n int) runs {
	if k := len(r); k > 0 && r[k-1][1] >= n-1 {
		r[k-1][1] = n
		return r
	}
	return append(r, [2]int{n, n})
}

func (r runs) text() string {
	return strings.Join(seq.Map(r, func(run [2]int) string { return words.Span(run[0], run[1]-run[0]+1) }), ", ")
}

func boughtTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "To buy", Columns: []draw.Column{
		{Head: "Item", Flex: true, Bold: true},
		{Head: "No. off", Align: draw.Centre, Bold: true},
		{Head: "For", Flex: true},
	}}
	for _, b := range pl.Bought {
		t.Rows = append(t.Rows, []string{words.Join(", ", b.Item, b.Note), strconv.Itoa(b.Quantity), b.For})
	}
	return t
}

// cutTable is the list of stock: a row for each bar with its pieces in order, or for the
// blanks of a thickness; what frames are sawn from leads to its own list.
func cutTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "Stock to order, in " + words.LengthWord(pl.Units), Columns: []draw.Column{
		{Head: "Stock", Flex: true, Bold: true},
		{Head: "Material", Flex: true},
		{Head: "Pieces, as cut", Flex: true},
		{Head: "Whole bar", Align: draw.Right, Spare: true},
		{Head: "Left over", Align: draw.Right, Spare: true},
	}}
	for _, c := range pl.Cuts {
		for _, bar := range c.Bars {
			pieces := seq.Map(bar.Pieces, func(p plan.CutPiece) string { return pieceText(p, pl.Units) })
			row := []string{c.Stock, c.Material, strings.Join(pieces, "; "), "", ""}
			if c.BarMm > 0 {
				row[3], row[4] = words.Short(c.BarMm, pl.Units), words.Short(bar.OffcutMm, pl.Units)
			}
			t.Rows = append(t.Rows, row)
		}
	}
	t.Title += words.When(len(t.Rows) > 0 && len(Unbarred(pl.Parts)) < len(pl.Parts), "; bars: their own list")
	return t
}

// pieceText names pieces of stock: "2 × Barrel flange Ø260", "Gusset 120 × 100".
func pieceText(p plan.CutPiece, units parts.Units) string {
	text := words.CountOf(p.Count) + p.Part + " "
	switch {
	case p.LengthMm == 0: // a casting
		return words.CountOf(p.Count) + p.Part
	case p.Round:
		return text + "Ø" + words.Short(p.LengthMm, units)
	case p.AcrossMm > 0:
		return text + words.Short(p.LengthMm, units) + " × " + words.Short(p.AcrossMm, units)
	default:
		return text + words.Short(p.LengthMm, units)
	}
}

// toolTable lists what the workshop makes for itself before it joins, with the pages
// of those that have a sheet; own is how many pages the cover has.
func toolTable(pl *plan.Plan, chapters []draw.Chapter, own int) draw.Table {
	t := draw.Table{Title: "To have ready, from scrap", Columns: []draw.Column{
		{Head: "No.", Bold: true, Align: draw.Centre}, {Head: "Tool, in " + words.LengthWord(pl.Units), Flex: true, Bold: true},
		{Head: "For", Flex: true}, {Head: "Page", Bold: true, Align: draw.Centre, Spare: true},
	}}
	pages, n := map[string]runs{}, own
	for _, c := range chapters {
		for _, s := range c.Sheets {
			n++
			for _, title := range s.Starts {
				pages[title] = pages[title].and(n)
			}
		}
	}
	for _, r := range pl.Tools {
		tool := r.Tool
		if r.Sheet != nil {
			tool += "; from " + r.Sheet.StockText
		}
		t.Rows = append(t.Rows, []string{r.No(), tool, r.For, pages[r.Name].text()})
	}
	return t
}

// dangerTable says once what the rows of the operations warn of in a few words.
func dangerTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "Where a row shows ⚠", Columns: []draw.Column{{Head: "Machine", Bold: true}, {Head: "Mind", Flex: true}}}
	if len(pl.Dangers) > 0 {
		t.Rows = append(t.Rows, []string{"Every machine", "Eye protection; no gloves, sleeves or rags near what turns; take the chuck key out; let hot parts cool. Local rules come first."})
	}
	for _, d := range pl.Dangers {
		t.Rows = append(t.Rows, []string{string(d.Machine), strings.Join(d.Says, " ")})
	}
	return t
}

// noteTable lists what is heavy, if anything is, and the notes of the job.
func noteTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "Notes", Columns: []draw.Column{{Head: "Mind", Flex: true}}}
	if len(pl.Lifts) > 0 {
		t.Title = "Heavy parts, and notes"
	}
	t.Rows = seq.Map(slices.Concat(pl.Lifts, pl.Notes), func(text string) []string { return []string{text} })
	return t
}
