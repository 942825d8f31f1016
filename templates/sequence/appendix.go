package sequence

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"
)

// AppendixName is the chapter for the reader who wants to check.
const AppendixName = "Appendix"

// Appendix draws all computed numbers of the joints with their sources, joints of
// one kind side by side, the ladders of the parts, more tables, and where the values
// of the tables are from, on the fewest pages; nothing where there is none of them.
func Appendix(pl *plan.Plan, paper draw.Frame, more []draw.Table) []draw.Chapter {
	set := func(w spread, trial int) *draw.Flow {
		f := draw.NewTrial(func(page int) (*draw.Sheet, draw.Piece) {
			s := &draw.Sheet{Frame: paper, All: true, Name: AppendixName, Scale: "not to scale"}
			rest := "all computed numbers, with their sources"
			if page > 0 {
				rest = "continued"
			}
			return s, draw.RunningHead(AppendixName, rest, paper.Body().Width())
		}, trial)
		if w.laddersFirst {
			ladders(f, pl)
		}
		figures(f, pl, max(1, int(f.Width()/62))+w.beside)
		if !w.laddersFirst {
			ladders(f, pl)
		}
		small(f, more)
		if f.Width() >= 150 {
			f.Columns(2)
		}
		small(f, sources(pl))
		return f
	}
	var best *draw.Flow
	at := spread{}
	for i := range 6 {
		w := spread{i % 3, i > 2}
		if f := set(w, math.MaxInt); best == nil || len(f.Sheets) < len(best.Sheets) || len(f.Sheets) == len(best.Sheets) && f.Left() > best.Left() {
			best, at = f, w
		}
	}
	drawn := set(at, 0).Sheets
	if len(drawn[0].Blocks) == 1 {
		return nil
	}
	return []draw.Chapter{{Name: AppendixName, Sheets: drawn}}
}

// spread is how the numbers are set: how many more joints than usual side by side, and
// whether the ladders come first.
type spread struct {
	beside       int
	laddersFirst bool
}

// figureMm is the em of the numbers.
const figureMm = 2.65

func sum(list []float64) (all float64) {
	for _, one := range list {
		all += one
	}
	return all
}

// small sets tables in the size of the numbers.
func small(f *draw.Flow, list []draw.Table) {
	for _, t := range list {
		t.Tight, t.Compact, t.Fit = true, true, true
		for i := range t.Columns {
			t.Columns[i].Size = figureMm
		}
		f.Table(t)
	}
}

// sources say where the values of the tables are from.
func sources(pl *plan.Plan) []draw.Table {
	var out []draw.Table
	for _, s := range pl.Sources {
		t := draw.Table{Title: s.Title, Columns: []draw.Column{{Head: "Table", Flex: true, Bold: true}, {Head: "Source", Flex: true}, {Head: "State", Flex: true}}}
		for _, r := range s.Rows {
			t.Rows = append(t.Rows, []string{r.What, r.Source, r.State})
		}
		out = append(out, t)
	}
	return out
}

// figures sets the numbers of the joints, of each kind so many side by side, or up
// to two more, as is lowest.
func figures(f *draw.Flow, pl *plan.Plan, beside int) {
	var kinds []string
	runs := equalRuns(pl.Joints)
	for _, run := range runs {
		if !slices.Contains(kinds, run[0].Kind) {
			kinds = append(kinds, run[0].Kind)
		}
	}
	for _, kind := range kinds {
		of := slices.DeleteFunc(slices.Clone(runs), func(run []*plan.JointPlan) bool { return run[0].Kind != kind })
		var best []draw.Table
		least := math.Inf(1)
		for more := range 3 {
			n := (len(of) + beside + more - 1) / (beside + more) // tables, of about as many joints
			var tables []draw.Table
			high := 0.0
			for list := range slices.Chunk(of, (len(of)+n-1)/n) {
				t := figureTable(list).Laid(f.Width())
				head, rows := t.Measure(f.Width())
				tables, high = append(tables, t), high+head+sum(rows)
			}
			if high < least-0.1 {
				best, least = tables, high
			}
		}
		for _, t := range best {
			f.Table(t)
		}
	}
}

// ladders sets the ladders of the parts in narrow columns, a long one in several.
func ladders(f *draw.Flow, pl *plan.Plan) {
	n := max(1, int(f.Width()/46))
	for _, part := range pl.Parts {
		for _, l := range part.Ladders {
			t := ladderTable(part, l)
			head := t.Head(f.Width())
			t.Title = ""
			each := max(draw.LeastRows, (len(t.Rows)+n-1)/n)
			first := t
			first.Rows = t.Rows[:min(each, len(t.Rows))]
			if headMm, rowsMm := first.Measure(f.Width() / float64(n)); !f.Fits(draw.HeightMm(head...) + headMm + sum(rowsMm)) {
				f.TurnPage()
			}
			f.Add(head...)
			f.Columns(n)
			for rows := range slices.Chunk(t.Rows, each) {
				if !f.AtTop() {
					f.TurnColumn()
				}
				t.Rows = rows
				f.Table(t)
			}
			f.Columns(1)
		}
	}
}

// figureTable has the numbers of some joints of one kind side by side.
func figureTable(runs [][]*plan.JointPlan) draw.Table {
	t := draw.Table{Title: strings.ToUpper(runs[0][0].Kind), Compact: true, Tight: true, Fit: true, Columns: []draw.Column{{Head: "What", Size: figureMm, Flex: true, Bold: true, Most: 36}}}
	var rows []string
	for _, run := range runs {
		t.Columns = append(t.Columns, draw.Column{Head: stepsWord(run) + ": " + strings.TrimSuffix(titleOf(run), frameWork), Flex: true, Size: figureMm})
		for _, fig := range run[len(run)-1].Figures {
			if !slices.Contains(rows, fig.Label) {
				rows = append(rows, fig.Label)
			}
		}
	}
	t.Columns = append(t.Columns, draw.Column{Head: "From", Flex: true, Size: figureMm, Spare: true})
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
		{Head: "Measured", Align: draw.Centre, Size: figureMm, Flex: true},
		{Head: "Turn the bore to", Align: draw.Centre, Bold: true, Size: figureMm, Flex: true},
	}}
	for _, rung := range l.Rungs {
		t.Rows = append(t.Rows, []string{rung.Measured, rung.Bore})
	}
	return t
}
