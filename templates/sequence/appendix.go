package sequence

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// AppendixName is the chapter for the reader who wants to check.
const AppendixName = "Appendix"

// Appendix draws all computed numbers of the joints with their sources, joints of
// one kind side by side, the ladders of the parts, more tables, and where the values
// of the tables are from, on the fewest pages; nothing where there is none of them.
func Appendix(pl *plan.Plan, paper draw.Frame, more []draw.Table) []draw.Chapter {
	numbers := figuresOf(pl, paper.Body().Width())
	head := draw.RunningHead(AppendixName, "all computed numbers, with their sources", paper.Body().Width())
	set := func(w spread, trial int) *draw.Flow {
		f := draw.NewTrial(draw.Pages(draw.Sheet{Frame: paper, All: true, Name: AppendixName}, head, AppendixName, "continued"), trial)
		if w.laddersFirst {
			ladders(f, pl)
		}
		numbers.set(f, max(1, int(f.Width()/62))+w.beside)
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
	ways := []spread{{0, false}, {1, false}, {2, false}, {0, true}, {1, true}, {2, true}}
	at, _ := draw.Roomiest(ways, func(w spread) *draw.Flow { return set(w, math.MaxInt) }, func(f *draw.Flow) (pages int, rest float64) { return len(f.Sheets), -f.Left() })
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
	return seq.Sum(list, func(one float64) float64 { return one })
}

// small sets tables in the size of the numbers.
func small(f *draw.Flow, list []draw.Table) {
	for _, t := range list {
		t.Tight, t.Compact, t.Fit, t.EmMm = true, true, true, figureMm
		f.Table(t)
	}
}

// sources say where the values of the tables are from.
func sources(pl *plan.Plan) []draw.Table {
	var out []draw.Table
	for _, s := range pl.Sources {
		t := draw.Table{Title: s.Title, Columns: []draw.Column{{Head: "Table", Flex: true, Bold: true}, {Head: "Source", Flex: true}, {Head: "State", Flex: true, Firm: 26}}}
		t.Rows = seq.Map(s.Rows, func(r plan.SourceRow) []string { return []string{r.What, r.Source, r.State} })
		out = append(out, t)
	}
	return out
}

// figures are the numbers of the joints, kind by kind, laid out for a width.
type figures struct {
	kinds   [][][]*plan.JointPlan // the runs of each
	widthMm float64
	laid    map[[2]int]stacked // by kind and joints side by side
}

// stacked are tables that stand under each other.
type stacked struct {
	tables []draw.Table
	highMm float64
}

func figuresOf(pl *plan.Plan, widthMm float64) *figures {
	f := &figures{widthMm: widthMm, laid: map[[2]int]stacked{}}
	place := map[parts.JointKind]int{}
	for _, run := range equalRuns(pl.Joints) {
		k, ok := place[run[0].Kind]
		if !ok {
			k = len(f.kinds)
			place[run[0].Kind] = k
			f.kinds = append(f.kinds, nil)
		}
		f.kinds[k] = append(f.kinds[k], run)
	}
	return f
}

// beside are the tables of a kind with about so many joints side by side.
func (f *figures) beside(kind, n int) stacked {
	key := [2]int{kind, n}
	if s, ok := f.laid[key]; ok {
		return s
	}
	of := f.kinds[kind]
	tables := (len(of) + n - 1) / n
	var s stacked
	for list := range slices.Chunk(of, (len(of)+tables-1)/tables) {
		t := figureTable(list).Laid(f.widthMm)
		head, rows := t.Measure(f.widthMm)
		s.tables, s.highMm = append(s.tables, t), s.highMm+head+sum(rows)
	}
	f.laid[key] = s
	return s
}

// set sets each kind with so many side by side, or up to two more, as is lowest.
func (f *figures) set(on *draw.Flow, beside int) {
	for kind := range f.kinds {
		best := f.beside(kind, beside)
		for more := 1; more < 3; more++ {
			if s := f.beside(kind, beside+more); s.highMm < best.highMm-0.1 {
				best = s
			}
		}
		for _, t := range best.tables {
			on.Table(t)
		}
	}
}

// ladders sets the ladders of the parts in narrow columns, a long one in several.
func ladders(f *draw.Flow, pl *plan.Plan) {
	n := max(1, int(f.Width()/46))
	for _, part := range pl.Parts {
		for _, l := range part.Ladders {
			if len(l.Rungs) == 0 {
				continue
			}
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
	t := draw.Table{Title: strings.ToUpper(string(runs[0][0].Kind)), Compact: true, Tight: true, Fit: true, EmMm: figureMm,
		Columns: []draw.Column{{Head: "What", Flex: true, Bold: true, Most: 36}}}
	var rows []string
	for _, run := range runs {
		t.Columns = append(t.Columns, draw.Column{Head: stepsWord(run) + ": " + runTitle(run), Flex: true})
		for _, fig := range run[len(run)-1].Figures {
			rows = seq.Add(rows, fig.Label)
		}
	}
	t.Columns = append(t.Columns, draw.Column{Head: "From", Flex: true, Spare: true})
	for _, label := range rows {
		row := []string{words.Capital(label)}
		var from []string
		for _, run := range runs {
			values := ""
			for _, fig := range run[len(run)-1].Figures {
				if fig.Label != label {
					continue
				}
				values = words.Join("; ", values, fig.Value)
				for _, source := range strings.Split(fig.Source, "; ") {
					from = seq.Add(from, source)
				}
			}
			row = append(row, values)
		}
		t.Rows = append(t.Rows, append(row, words.Join("; ", from...)))
	}
	return t
}

func ladderTable(part *plan.PartPlan, l plan.Ladder) draw.Table {
	t := draw.Table{Title: part.Title + ", " + l.Feature + ": bore for the measured " + l.Counterpart, Compact: true, Tight: true, EmMm: figureMm, Columns: []draw.Column{
		{Head: "Measured", Align: draw.Centre, Flex: true},
		{Head: "Turn the bore to", Align: draw.Centre, Bold: true, Flex: true},
	}}
	t.Rows = seq.Map(l.Rungs, func(rung plan.Rung) []string { return []string{rung.Measured, rung.Bore} })
	return t
}
