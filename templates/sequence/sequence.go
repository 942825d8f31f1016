// Package sequence draws the order in which parts are pressed, welded, bolted
// and fitted with bearings: an overview, then the sheets of each joint.
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

// Chapters draws the whole machine and how it is put together: the general
// arrangement, the order of assembly, the sheets of each joint in the order to
// make them. What the plan lacks is left out.
func Chapters(pl *plan.Plan, paper draw.Frame) []draw.Chapter {
	var whole, order, apart []*draw.Sheet
	var views *draw.Piece
	var chapters []draw.Chapter
	if len(pl.Joints) > 0 {
		order = overviewSheets(pl, paper, nil)
	}
	if a := pl.Arrangement; a != nil {
		whole, views = newArranger(pl, a, paper).arrangement(paper.Body().Width())
		apart = append(apart, seq.Flat(a.Apart, func(a *plan.Arrangement) []*draw.Sheet { return newArranger(pl, a, paper).apart() })...)
		if views != nil && order != nil {
			if with := overviewSheets(pl, paper, views); len(with) == len(order) {
				order, whole = with, whole[:1]
			}
		}
		chapters = []draw.Chapter{{Name: arrangementName, Sheets: append(whole, apart...)}}
	}
	if order == nil {
		return chapters
	}
	chapters = append(chapters, draw.Chapter{Part: Name, Name: "Order of assembly", Sheets: order})
	return append(chapters, steps(pl, paper)...)
}

// steps are the sheets of each joint, or run of equal ones; two that follow each other
// stand on one sheet where they are short enough.
func steps(pl *plan.Plan, paper draw.Frame) (out []draw.Chapter) {
	title := func(run []*plan.JointPlan) string { return stepsWord(run) + ": " + titleOf(run) }
	beside := halvesOf(pl, paper)
	for runs := equalRuns(pl.Joints); len(runs) > 0; runs = runs[1:] {
		run := runs[0]
		c := draw.Chapter{Part: Name, Name: title(run), Of: namesOf(run)}
		if len(runs) > 1 {
			c.Sheets = beside.abreast(run, runs[1])
		}
		if c.Sheets == nil {
			c.Sheets = jointSheets(pl, run, paper)
		} else {
			c.Sheets[0].Starts = []string{title(runs[1])}
			c.Of, runs = append(c.Of, namesOf(runs[1])...), runs[1:]
		}
		c.Sheets[0].Holds = append(c.Sheets[0].Holds, seq.Map(c.Of, draw.StepOf)...)
		out = append(out, c)
	}
	return out
}

// overviewSheets draws the order of assembly and under it the machine from
// outside, on one page if it can be.
func overviewSheets(pl *plan.Plan, paper draw.Frame, views *draw.Piece) []*draw.Sheet {
	return closest(func(c way) *draw.Flow {
		f := draw.NewTrial(draw.Pages(draw.Sheet{Frame: paper, All: true, Part: Name, Name: "Order of assembly"},
			overviewHead(pl, paper.Body().Width()), "Press and weld sequence", "continued"), c.trial)
		f.Table(c.tight(c.orderTable(pl)))
		lift := ""
		if slices.ContainsFunc(pl.Joints, func(j *plan.JointPlan) bool { return j.Lift != nil }) {
			lift = "LIFT: this step moves more than " + words.Writer{Units: pl.Units}.RoundMass(plan.LiftKg, 0) + "; over " +
				words.Writer{Units: pl.Units}.RoundMass(plan.HoistKg, 0) + " by hoist alone, nobody under it. "
		}
		f.Add(draw.Paragraph("", "HOLD: stop, check and sign before the next step; what is covered later cannot be checked later. "+lift+
			"Clock angles are those of the assembly, clockwise from TOP, seen as each page says. The numbers are computed from the drawings: "+
			"where the appendix calls a source “common practice” or “from memory”, ask somebody who knows before relying on it. "+
			"Welding: the welder’s qualification and the local code come before these sheets.", c.em(3.2), false, f.Width())...)
		if views != nil {
			f.Add(draw.Space(2), *views)
		}
		return f
	})
}

func overviewHead(pl *plan.Plan, width float64) draw.Piece {
	var p draw.Piece
	p.Draw.Add(draw.Text{YMm: -7, SizeMm: draw.TitleMm, Bold: true, Content: "Press and weld sequence", Heading: 1}.Within(width))
	p.Facts(width, pl.Job, strconv.Itoa(len(pl.Joints))+" steps, in this order")
	return p
}

func (c closeness) orderTable(pl *plan.Plan) draw.Table {
	t := draw.Table{RowMm: max(5.6, 7*float64(c)), Fit: true, Columns: []draw.Column{
		{Head: "Step", Align: draw.Centre, Bold: true, Size: c.em(4.4)},
		{Head: "Kind", Bold: true, Size: c.em(3.1)},
		{Head: "What", Flex: true, Size: c.em(3.1)},
		{Head: "Hold before going on", Flex: true, Size: c.em(2.9)},
		{Head: "Mass then", Align: draw.Right, Size: c.em(2.9)},
		{Head: "Done", Align: draw.Centre, Least: 11, Tick: true},
	}}
	for _, run := range equalRuns(pl.Joints) {
		j, last := run[0], run[len(run)-1]
		held := seq.Keep(last.Steps, func(s plan.JointStep) bool { return s.Hold != "" })
		holds := seq.Map(held, func(s plan.JointStep) string { return s.Title })
		what := titleOf(run)
		if b := j.Bolt; b != nil && b.Ordered != "" {
			what += ": " + strconv.Itoa(b.Count) + " × " + b.Ordered
		}
		what += words.When(len(last.PutIn) > 0, "; put in "+strings.Join(last.PutIn, ", "))
		kg := ""
		if last.MassKg > 0 {
			kg = words.Writer{Units: pl.Units}.Mass(last.MassKg)
		}
		kg += words.When(last.Lift != nil, " LIFT")
		t.Rows = append(t.Rows, []string{words.Span(j.N, len(run)), kindWord(j), what, strings.Join(holds, ", "), kg, ""})
	}
	return t
}
