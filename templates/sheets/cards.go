package sheets

import (
	"slices"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// Names of the sheets at the end of the packet.
const (
	FirstRunName = "First run"
	UpkeepName   = "Upkeep"
	MotorName    = "Motor, for the electrician"
)

// Cards draws the cards that the job asks for.
func Cards(pl *plan.Plan, paper draw.Frame) []draw.Chapter {
	var out []draw.Chapter
	for _, c := range []struct {
		name, rest string
		asked      bool
		fill       func(*draw.Flow, *plan.Plan, float64)
	}{
		{FirstRunName, "first run, to fill in and keep", pl.FirstRun != nil, firstRun},
		{UpkeepName, "upkeep, to hang at the machine", pl.Upkeep != nil, upkeep},
		{MotorName, "motor, for the licensed electrician", pl.Motor != nil, motor},
	} {
		if !c.asked {
			continue
		}
		_, sheets := draw.Roomiest(cardSizes, func(sizeMm float64) []*draw.Sheet {
			head := draw.RunningHead(pl.Job, c.rest, paper.Body().Width())
			f := draw.NewFlow(draw.Pages(draw.Sheet{Frame: paper, Name: c.name}, head, pl.Job, "continued"))
			c.fill(f, pl, sizeMm)
			return f.Sheets
		}, draw.PagesOf)
		out = append(out, draw.Chapter{Name: c.name, Sheets: sheets})
	}
	return out
}

// largestTextMm is the text of a card that has the room for it.
const largestTextMm = 3.8

// leastCardMm is the least: a card is read at the machine.
const leastCardMm = 3.0

// leastTickMm is the least height of a row with a box to tick.
const leastTickMm = 5.0

// cardSizes are the sizes of text that are tried, the largest first.
var cardSizes = []float64{largestTextMm, draw.TextMm, 3.2, leastCardMm}

// sized sets all cells of a table in one size of text, and its rows as much
// lower; below the usual size its lines stand close.
func sized(t draw.Table, sizeMm float64) draw.Table {
	t.RowMm *= sizeMm / largestTextMm
	t.Tight, t.Compact, t.Fit, t.EmMm = sizeMm < largestTextMm, true, true, sizeMm
	if slices.ContainsFunc(t.Columns, func(c draw.Column) bool { return c.Tick }) {
		t.RowMm = max(t.RowMm, leastTickMm)
	}
	return t
}

// cautions are framed, one box each.
func cautions(f *draw.Flow, texts []string) {
	for _, text := range texts {
		f.Add(draw.CautionBox(text, 3.8, f.Width()), draw.Space(1))
	}
}

// firstRun sets the stages in order: lines to tick in one table, runs with
// their temperatures in another.
func firstRun(f *draw.Flow, pl *plan.Plan, sizeMm float64) {
	r := pl.FirstRun
	cautions(f, r.Cautions)
	lines, runs := linesTable(), runsTable(r)
	set := func() {
		f.Table(sized(lines, sizeMm))
		f.Table(sized(runs, sizeMm))
		lines.Rows, runs.Rows = nil, nil
	}
	for i, s := range r.Stages {
		title := strconv.Itoa(i+1) + " " + s.Title
		if len(runs.Rows) > 0 && len(s.Lines) > 0 {
			set()
		}
		for k, l := range s.Lines {
			lines.Rows = append(lines.Rows, []string{once(title, k), l.Do, l.Wanted, "", ""})
		}
		for k, run := range s.Runs {
			runs.Rows = append(runs.Rows, append([]string{once(title, k), run.What, run.After, run.Speed}, make([]string, len(r.Watch)+1)...))
		}
	}
	set()
	f.Add(signLine("Run by, signature", f.Width()))
}

// once is a label in the first of its rows, and nothing in the others.
func once(label string, row int) string { return words.When(row == 0, label) }

func linesTable() draw.Table {
	return draw.Table{RowMm: 6, Columns: []draw.Column{
		{Head: "Stage", Flex: true, Bold: true, Least: 25, Most: 36}, {Head: "Do, and look", Flex: true}, {Head: "Wanted", Flex: true, Most: 52},
		{Head: "Found", Least: 20}, {Head: "Done", Align: draw.Centre, Least: 11, Tick: true},
	}}
}

// runsTable has a column for each place that is watched.
func runsTable(r *plan.FirstRun) draw.Table {
	t := draw.Table{RowMm: 6.5, Columns: []draw.Column{
		{Head: "Stage", Flex: true, Bold: true, Most: 24}, {Head: "Run", Flex: true}, {Head: "Read after"}, {Head: "Speed"},
	}}
	for _, w := range r.Watch {
		head := w.Where + ", " + r.Degrees
		head += words.When(w.Most != "", ": stop above "+w.Most)
		t.Columns = append(t.Columns, draw.Column{Head: head, Least: 25})
	}
	t.Columns = append(t.Columns, draw.Column{Head: "Done", Align: draw.Centre, Least: 11, Tick: true})
	return t
}

// upkeepMarks is the number of columns to tick.
const upkeepMarks = 8

// upkeep sets one table: what is greased, tightened and worn, with its grid.
func upkeep(f *draw.Flow, pl *plan.Plan, sizeMm float64) {
	cautions(f, pl.Upkeep.Cautions)
	f.Table(sized(upkeepTable(pl.Upkeep), sizeMm))
	f.Add(draw.Notes("Where the numbers are from", pl.Upkeep.Sources, f.Width())...)
}

// upkeepTable begins with the rows to date and to sign.
func upkeepTable(u *plan.Upkeep) draw.Table {
	t := draw.Table{RowMm: 13, Columns: []draw.Column{
		{Flex: true, Bold: true, Most: 18}, {Head: "Where", Flex: true, Bold: true}, {Head: "What", Flex: true}, {Head: "Every", Flex: true, Most: 22},
	}}
	t.Columns = append(t.Columns, slices.Repeat([]draw.Column{{Least: 8.5}}, upkeepMarks)...)
	marks := make([]string, upkeepMarks)
	t.Rows = seq.Map([]string{"Date", "Initials"}, func(label string) []string { return slices.Concat([]string{label, "", "", ""}, marks) })
	for _, g := range []struct {
		label string
		rows  []plan.UpkeepRow
	}{{"Grease, oil", u.Ports}, {"Bolts", u.Bolts}, {"Wear", u.Wear}} {
		for i, r := range g.rows {
			t.Rows = append(t.Rows, slices.Concat([]string{once(g.label, i), r.Where, r.What, r.Every}, marks))
		}
	}
	return t
}

// motor sets the plate with room for what is found, what the machine asks, and
// what is to be signed.
func motor(f *draw.Flow, pl *plan.Plan, sizeMm float64) {
	m := pl.Motor
	cautions(f, m.Cautions)
	plate := draw.Table{
		Title: "Plate of the motor", RowMm: 6.5,
		Columns: []draw.Column{{Head: "On the plate", Flex: true, Most: 52}, {Head: "As the job says", Flex: true, Bold: true}, {Head: "On the motor", Least: 55}},
	}
	plate.Rows = seq.Map(m.Plate, func(fact plan.Fact) []string { return []string{fact.Label, fact.Value, ""} })
	machine := draw.Table{Title: "What the machine asks", RowMm: 6.5, Columns: []draw.Column{{Head: "Asked", Flex: true, Most: 52}, {Head: "As the job says", Flex: true, Bold: true}}}
	machine.Rows = seq.Map(m.Machine, func(fact plan.Fact) []string { return []string{fact.Label, fact.Value} })
	sign := draw.Table{Title: "To sign", RowMm: 6.5, Columns: []draw.Column{{Head: "Done, tried or measured", Flex: true}, {Head: "Measured", Least: 34},
		{Head: "Initials", Least: 24}, {Head: "Done", Align: draw.Centre, Least: 12, Tick: true}}}
	sign.Rows = seq.Map(m.Sign, func(what string) []string { return []string{what, "", "", ""} })
	for _, t := range []draw.Table{plate, machine, sign} {
		f.Table(sized(t, sizeMm))
	}
	f.Add(draw.Notes("Notes of the job", m.Notes, f.Width())...)
	f.Add(signLine("Licensed electrician, licence and signature", f.Width()))
}
