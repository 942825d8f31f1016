package sequence

import (
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"
)

// figureSheets are all computed numbers of the joints with their sources, for
// the reader who wants to check: joints of one kind side by side.
func figureSheets(pl *plan.Plan, paper draw.Frame) []*draw.Sheet {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, All: true, Part: Name, Name: "All computed numbers", Scale: "not to scale"}
		return s, draw.RunningHead("Appendix", "all computed numbers of the steps, with their sources", paper.Body().Width())
	})
	beside := max(1, int(f.Width()/62)) // as many as leave room for their values
	var kinds []string
	runs := equalRuns(pl.Joints)
	for _, run := range runs {
		if !slices.Contains(kinds, run[0].Kind) {
			kinds = append(kinds, run[0].Kind)
		}
	}
	for _, kind := range kinds {
		of := slices.DeleteFunc(slices.Clone(runs), func(run []*plan.JointPlan) bool { return run[0].Kind != kind })
		for list := range slices.Chunk(of, beside) {
			f.Table(figureTable(list))
		}
	}
	if f.Width() >= 150 {
		f.Columns(4)
	}
	for _, part := range pl.Parts {
		for _, l := range part.Ladders {
			f.Table(ladderTable(part, l))
		}
	}
	return f.Sheets
}

// figureTable has the numbers of some joints of one kind side by side.
func figureTable(runs [][]*plan.JointPlan) draw.Table {
	t := draw.Table{Title: strings.ToUpper(runs[0][0].Kind), Compact: true, Tight: true, Fit: true, Columns: []draw.Column{{Head: "What", Size: 2.65, Flex: true, Most: 30}}}
	var rows []string
	for _, run := range runs {
		t.Columns = append(t.Columns, draw.Column{Head: stepsWord(run) + ": " + titleOf(run), Flex: true, Bold: true, Size: 2.65})
		for _, fig := range run[len(run)-1].Figures {
			if !slices.Contains(rows, fig.Label) {
				rows = append(rows, fig.Label)
			}
		}
	}
	t.Columns = append(t.Columns, draw.Column{Head: "From", Flex: true, Size: 2.65, Spare: true})
	for _, label := range rows {
		row := []string{upperFirst(label)}
		var from []string
		for _, run := range runs {
			values := ""
			for _, fig := range run[len(run)-1].Figures {
				if fig.Label != label {
					continue
				}
				values = words.Join("; ", values, fig.Value)
				if !slices.Contains(from, fig.Source) && fig.Source != "" {
					from = append(from, fig.Source)
				}
			}
			row = append(row, values)
		}
		t.Rows = append(t.Rows, append(row, strings.Join(from, "; ")))
	}
	return t
}

func ladderTable(part *plan.PartPlan, l plan.Ladder) draw.Table {
	t := draw.Table{Title: part.Title + ", " + l.Feature + ": bore for the measured " + l.Counterpart, Compact: true, Tight: true, Columns: []draw.Column{
		{Head: "Measured", Align: draw.Centre, Size: 2.65, Flex: true},
		{Head: "Turn the bore to", Align: draw.Centre, Bold: true, Size: 2.65, Flex: true},
	}}
	for _, rung := range l.Rungs {
		t.Rows = append(t.Rows, []string{rung.Measured, rung.Bore})
	}
	return t
}
