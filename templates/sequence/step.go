package sequence

import (
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// jointSheets draws a joint, or several that are the same work, on one page if
// it can be: what goes where, the numbers, how it lies on the clock, what to
// do and what to check.
func jointSheets(pl *plan.Plan, run []*plan.JointPlan, paper draw.Frame) []*draw.Sheet {
	tables := map[closeness][]draw.Table{} // laid out, for all ways to set them
	return closest(func(w way) *draw.Flow {
		if tables[w.closeness] == nil {
			tables[w.closeness] = w.tables(run, paper.Body().Width())
		}
		return w.joint(pl, run, paper, tables[w.closeness])
	})
}

// tables are what to do, which parts take which place, and what to check.
func (c closeness) tables(run []*plan.JointPlan, width float64) (laid []draw.Table) {
	return seq.Map(c.inOrder(run, c.stepTable(run), c.checkTable(run)), func(t draw.Table) draw.Table { return c.tight(t).Laid(width) })
}

// inOrder are the tables of a run in their order, with the places of several pieces.
func (c closeness) inOrder(run []*plan.JointPlan, do, check draw.Table) []draw.Table {
	if len(run) == 1 {
		return []draw.Table{do, check}
	}
	return []draw.Table{do, c.placeTable(run), check}
}

func (c way) joint(pl *plan.Plan, run []*plan.JointPlan, paper draw.Frame, tables []draw.Table) *draw.Flow {
	j := run[len(run)-1]
	f := draw.NewTrial(draw.Pages(draw.Sheet{Frame: paper, All: true, Part: Name, Name: stepsWord(run) + ": " + string(j.Kind)},
		jointHead(pl, run, paper.Body().Width()), stepsWord(run)+" "+kindWord(j)+": "+j.Title, "continued"), c.trial)
	f.Add(c.warnings(pl, run, f.Width())...)
	f.Add(bigNumbers(keyNumbers(run, words.Writer{Units: pl.Units}), f.Width()), draw.Space(2))
	f.Add(c.pictures(pl, j, f.Width(), f.Body.Height()*0.27*float64(c.closeness)+min(c.spareMm, f.Body.Height()*0.2))...)
	f.Add(c.told(run, f.Width())...)
	for _, t := range tables {
		f.Table(t)
	}
	f.Add(c.closing(run, f.Width())...)
	return f
}

// warnings are what is not right with a run, that it lifts, and what it has to hold.
func (c closeness) warnings(pl *plan.Plan, run []*plan.JointPlan, width float64) (out []draw.Piece) {
	j := run[len(run)-1]
	for _, problem := range j.Problems {
		text := words.Either(problem.Accepted != "", "Taken as it is: "+problem.What+". "+problem.Accepted, "Not right yet: "+problem.What+".")
		out = append(out, draw.CautionBox(text, c.em(3.8), width), draw.Space(1.5))
	}
	if l := j.Lift; l != nil {
		text := words.Join(" ", "LIFT "+words.AtLeast(l.AtLeast)+words.Writer{Units: pl.Units}.Mass(l.MassKg)+": "+l.What+". "+words.Capital(l.How)+".", words.Writer{Units: pl.Units}.Sling(l))
		out = append(out, draw.CautionBox(text, c.em(3.8), width), draw.Space(2*float64(c)))
	}
	if text := (words.Writer{Units: pl.Units}).Holds(j.Hold, pieceWords(run)); text != "" {
		out = append(out, draw.CautionBox("SUPPORT: "+text, c.em(3.8), width), draw.Space(2*float64(c)))
	}
	return out
}

// told is what lies where on the clock of a run, and what to have ready.
func (c closeness) told(run []*plan.JointPlan, width float64) (out []draw.Piece) {
	if text := strings.Join(clockLines(run[len(run)-1]), ".  "); text != "" {
		out = append(draw.Paragraph("", text+".", c.em(2.9), false, width), draw.Space(2*float64(c)))
	}
	return append(out, c.ready(run, width)...)
}

// closing is the signature of a run, and under it its traps and cautions.
func (c closeness) closing(run []*plan.JointPlan, width float64) []draw.Piece {
	j := run[len(run)-1]
	out := []draw.Piece{holdLine(run, width), draw.Space(2 * float64(c))}
	lists := [][]string{append([]string{trapLine(j)}, remedies(j)...), j.Cautions}
	switch {
	case j.Bolt == nil && len(run) > 1: // each has its place under the picture
		lists = [][]string{remedies(j), j.Cautions}
	case j.Bolt == nil:
		lists = [][]string{slices.Concat(j.Cautions, lists[0])}
	}
	for _, list := range lists {
		if text := words.Join(" ", list...); text != "" {
			out = append(out, draw.Paragraph("⚠", words.Capital(text), c.em(2.9), false, width)...)
		}
	}
	return out
}

// stepTable has a row for each thing to do, with a box for each joint.
func (c closeness) stepTable(run []*plan.JointPlan) draw.Table {
	t := draw.Table{RowMm: 8 * float64(c), Columns: []draw.Column{
		{Head: "", Align: draw.Centre, Bold: true, Size: c.em(4.6)},
		{Head: "", Bold: true, Flex: true, Most: 26, Size: c.em(3.2)},
		{Head: "Do, and tick", Flex: true, Size: c.em(3.3)},
	}}
	for _, j := range run {
		t.Columns = append(t.Columns, draw.Column{Head: pieceWord(run, j, "done"), Align: draw.Centre, Least: 11, Tick: true})
	}
	last := run[len(run)-1]
	for _, step := range last.Steps {
		lines := []string{strings.Join(step.Do, " ")}
		if len(run) > 1 {
			lines[0] = step.Alike
		}
		if step.Caution != "" {
			lines = append(lines, "⚠ "+step.Caution)
		}
		if step.Hold != "" {
			lines = append(lines, draw.Bold("HOLD: "+step.Hold))
		}
		row := []string{strconv.Itoa(step.N), step.Title, strings.Join(lines, "\n")}
		row = append(row, seq.Map(run, func(j *plan.JointPlan) string { return tickFor(j, step.Title) })...)
		t.Rows = append(t.Rows, row)
	}
	return t
}

// tickFor is the box of a joint in the row of a step: none where it has no such step.
func tickFor(j *plan.JointPlan, step string) string {
	return words.When(!slices.ContainsFunc(j.Steps, func(s plan.JointStep) bool { return s.Title == step }), "–")
}

// placeTable says of equal pieces where each one goes.
func (c closeness) placeTable(run []*plan.JointPlan) draw.Table {
	t := draw.Table{RowMm: 6 * float64(c), Columns: []draw.Column{
		{Head: "Piece", Align: draw.Centre, Bold: true, Size: c.em(3.2)},
		{Head: "Its place", Flex: true, Size: c.em(3.2)},
	}}
	for i, j := range run {
		name := words.Either(frameRun(run), strconv.Itoa(i+1)+", "+words.Spaced(j.Name), strconv.Itoa(j.A.Copy))
		t.Rows = append(t.Rows, []string{name, words.Capital(j.How)})
	}
	return t
}

// checkTable lists what to check before the next joint.
func (c closeness) checkTable(run []*plan.JointPlan) draw.Table {
	t := draw.Table{Title: "Check before going on", Compact: true, RowMm: 7 * float64(c), Columns: []draw.Column{
		{Head: "What", Flex: true, Size: c.em(3.2)},
		{Head: "Limits", Flex: true, Bold: true, Size: c.em(3.2)},
		{Head: "With", Flex: true, Size: c.em(3.2)},
	}}
	for _, j := range run {
		t.Columns = append(t.Columns, draw.Column{Head: pieceWord(run, j, "Measured"), Align: draw.Centre, Least: 18})
	}
	for i, check := range run[len(run)-1].Checks {
		if i < len(run[0].Checks) && !frameRun(run) { // by the names of the first
			check = run[0].Checks[i]
		}
		wanted := check.Wanted
		if check.Joins {
			wanted = words.Join(" ", wanted, joined(run))
		}
		what := words.Join(": ", words.Capital(check.What), wanted)
		row := []string{what, check.Limits, check.Gauge}
		for k, j := range run {
			switch {
			case k < len(check.Boxes):
				row = append(row, check.Boxes[k]+":")
			case len(check.Boxes) > 0 || len(j.Checks) <= i && !frameRun(run):
				row = append(row, "–")
			default:
				row = append(row, "")
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// holdLine is the one signature of a step.
func holdLine(run []*plan.JointPlan, width float64) draw.Piece {
	p := draw.Piece{Height: 8.5}
	p.Draw.Add(draw.Box(draw.R(0, -8, width, 0), 0.7))
	p.Draw.Add(draw.Text{XMm: 2.5, YMm: -5.8, SizeMm: 4.4, Bold: true, Content: "HOLD"})
	text := words.Either(len(run) > 1, "All "+strconv.Itoa(len(run))+" done and inside the limits: go on.", "All done and inside the limits: go on.")
	p.Draw.Add(draw.Text{XMm: 18, YMm: -5.6, SizeMm: 3.4, Content: text}.Within(width*0.56 - 20))
	x := width * 0.56
	p.Draw.Add(draw.Text{XMm: x, YMm: -5.6, SizeMm: 3.4, Content: "Signed"}, draw.Segment(x+12, -6.2, width*0.8, -6.2, draw.ThinMm),
		draw.Text{XMm: width*0.8 + 2, YMm: -5.6, SizeMm: 3.4, Content: "Date"}, draw.Segment(width*0.8+11, -6.2, width-2, -6.2, draw.ThinMm))
	return p
}
