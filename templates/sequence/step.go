package sequence

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
)

// equalRuns gathers joints that follow one another and are the same work: equal
// parts on the same part, the same steps, checks and numbers.
func equalRuns(joints []*plan.JointPlan) [][]*plan.JointPlan {
	var out [][]*plan.JointPlan
	for _, j := range joints {
		if n := len(out); n > 0 && sameWork(out[n-1][0], j) {
			out[n-1] = append(out[n-1], j)
			continue
		}
		out = append(out, []*plan.JointPlan{j})
	}
	return out
}

// sameWork tells whether two joints differ in nothing but which of several
// equal parts they join.
func sameWork(a, b *plan.JointPlan) bool {
	if a.Kind != b.Kind || a.A.Part != b.A.Part || a.B.Part != b.B.Part || a.A.Feature != b.A.Feature || a.B.Feature != b.B.Feature ||
		len(a.Placed)+len(b.Placed) > 0 {
		return false
	}
	return sameLines(a, b) &&
		reflect.DeepEqual(a.Weld, b.Weld) && reflect.DeepEqual(a.Bolt, b.Bolt) && reflect.DeepEqual(a.Press, b.Press) && len(a.Problems)+len(b.Problems) == 0
}

// sameLines tells whether what is to do and to check differs in nothing but the
// names of the parts.
func sameLines(a, b *plan.JointPlan) bool {
	lines := func(j *plan.JointPlan) []string {
		var out []string
		for _, s := range j.Steps {
			out = append(append(out, s.Title, s.Hold, s.Caution), s.Do...)
		}
		for _, c := range j.Checks {
			out = append(out, c.What, c.Wanted, c.Limits, c.Gauge)
		}
		for i := range out {
			out[i] = strings.ReplaceAll(strings.ReplaceAll(out[i], j.A.Title, "A"), j.B.Title, "B")
		}
		return out
	}
	return slices.Equal(lines(a), lines(b))
}

// stepsWord is "Step 7" or "Steps 17–20".
func stepsWord(run []*plan.JointPlan) string {
	if len(run) == 1 {
		return "Step " + strconv.Itoa(run[0].N)
	}
	return "Steps " + figures.Span(run[0].N, len(run))
}

// titleOf is the title of a joint, of a run with all its parts.
func titleOf(run []*plan.JointPlan) string {
	title := run[0].Title
	for _, j := range run[1:] {
		title += "; " + j.A.Title
	}
	return title
}

// closeness is how tightly a step is set: 1 is roomy.
type closeness float64

func (c closeness) em(mm float64) float64 { return max(2.65, mm*float64(c)) }

// tight sets the lines of a table close where that is asked for.
func (c closeness) tight(t draw.Table) draw.Table {
	t.Tight = c < 0.85
	return t
}

// jointSheets draws a joint, or several that are the same work, on one page if
// it can be: what goes where, the numbers, how it lies on the clock, what to
// do and what to check.
func jointSheets(pl *plan.Plan, run []*plan.JointPlan, paper draw.Frame) []*draw.Sheet {
	var best []*draw.Sheet
	for _, c := range []closeness{1, 0.8, 0.6, 0.42} {
		if sheets := c.joint(pl, run, paper); best == nil || len(sheets) < len(best) {
			best = sheets
		}
	}
	return best
}

func (c closeness) joint(pl *plan.Plan, run []*plan.JointPlan, paper draw.Frame) []*draw.Sheet {
	j := run[0]
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: Name, Name: stepsWord(run) + ": " + j.Kind, Scale: "not to scale"}
		if page == 0 {
			return s, jointHead(run, len(pl.Joints), paper.Body().Width())
		}
		return s, draw.RunningHead(stepsWord(run)+" "+kindWord(j)+": "+j.Title, "continued", paper.Body().Width())
	})
	for _, problem := range j.Problems {
		f.Add(draw.CautionBox("Not right yet: "+problem.What+".", f.Width()), draw.Space(1.5))
	}
	f.Add(bigNumbers(keyNumbers(j, pl.Units), f.Width()), draw.Space(2))
	f.Add(c.pictures(pl, j, f.Width(), f.Body.Height()*0.27*float64(c))...)
	if text := strings.Join(clockLines(j), ".  "); text != "" {
		f.Add(draw.Paragraph("", text+".", c.em(2.9), false, f.Width())...)
		f.Add(draw.Space(2))
	}
	f.Table(c.tight(c.stepTable(run)))
	t := boltTable(j, pl.Units)
	t.Compact = true
	f.Table(c.tight(t))
	f.Table(c.tight(c.checkTable(run)))
	f.Add(holdLine(run, f.Width()), draw.Space(2))
	for _, text := range append(append([]string{trapLine(j)}, remedies(j)...), j.Cautions...) {
		if text != "" {
			f.Add(draw.Paragraph("⚠", upperFirst(text), c.em(2.9), false, f.Width())...)
		}
	}
	return f.Sheets
}

// pictures are the assembled section with the clock at its right, and the small
// pictures of a weld.
func (c closeness) pictures(pl *plan.Plan, j *plan.JointPlan, width, height float64) []draw.Piece {
	var clocks []draw.Panel
	if clock, ok := clockPanel(j, max(14.5, 20*float64(c)), max(44, 54*float64(c))); ok {
		clocks = append(clocks, clock)
	}
	pieces := stackPictures(pl, j, width, height, clocks...)
	if len(j.Placed) > 0 && j.Weld != nil {
		pieces = append(pieces, panelRows(weldPanels(j, pl.Units), width)...)
	}
	return pieces
}

// stepTable has a row for each thing to do, with a box for each joint.
func (c closeness) stepTable(run []*plan.JointPlan) draw.Table {
	t := draw.Table{RowMm: 8 * float64(c), Columns: []draw.Column{
		{Head: "", Align: draw.Centre, Bold: true, Size: 4.6},
		{Head: "Do, and tick", Flex: true, Size: c.em(3.4)},
	}}
	for _, j := range run {
		head := "done"
		if len(run) > 1 {
			head = "step " + strconv.Itoa(j.N)
		}
		t.Columns = append(t.Columns, draw.Column{Head: head, Align: draw.Centre, Least: 11, Tick: true})
	}
	for _, step := range run[0].Steps {
		lines := []string{draw.BoldLine + step.Title, strings.Join(step.Do, " ")}
		if step.Caution != "" {
			lines = append(lines, "⚠ "+step.Caution)
		}
		if step.Hold != "" {
			lines = append(lines, draw.BoldLine+"HOLD: "+step.Hold)
		}
		t.Rows = append(t.Rows, append([]string{strconv.Itoa(step.N), strings.Join(lines, "\n")}, make([]string, len(run))...))
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
		head := "Measured"
		if len(run) > 1 {
			head = "step " + strconv.Itoa(j.N)
		}
		t.Columns = append(t.Columns, draw.Column{Head: head, Align: draw.Centre, Least: 18})
	}
	for _, check := range run[0].Checks {
		what := upperFirst(check.What)
		if check.Wanted != "" {
			what += ": " + check.Wanted
		}
		t.Rows = append(t.Rows, append([]string{what, check.Limits, check.Gauge}, make([]string, len(run))...))
	}
	return t
}

// holdLine is the one signature of a step.
func holdLine(run []*plan.JointPlan, width float64) draw.Piece {
	p := draw.Piece{Height: 9.5}
	p.Draw.Add(draw.Box(draw.R(0, -9, width, 0), 0.7))
	p.Draw.Add(draw.Text{XMm: 2.5, YMm: -6.6, SizeMm: 4.4, Bold: true, Content: "HOLD"})
	text := "All done and inside the limits: go on."
	if len(run) > 1 {
		text = "All " + strconv.Itoa(len(run)) + " done and inside the limits: go on."
	}
	shown, size := draw.Shrink(text, 3.4, false, width*0.56-20)
	p.Draw.Add(draw.Text{XMm: 18, YMm: -6.4, SizeMm: size, Content: shown})
	x := width * 0.56
	p.Draw.Add(draw.Text{XMm: x, YMm: -6.4, SizeMm: 3.4, Content: "Signed"}, draw.Segment(x+12, -7, width*0.8, -7, draw.ThinMm),
		draw.Text{XMm: width*0.8 + 2, YMm: -6.4, SizeMm: 3.4, Content: "Date"}, draw.Segment(width*0.8+11, -7, width-2, -7, draw.ThinMm))
	return p
}

// figureSheets are all computed numbers of the joints with their sources, for
// the reader who wants to check.
func figureSheets(pl *plan.Plan, paper draw.Frame) []*draw.Sheet {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: Name, Name: "All computed numbers", Scale: "not to scale"}
		return s, draw.RunningHead("Appendix", "all computed numbers of the steps, with their sources", paper.Body().Width())
	})
	if f.Width() >= 150 {
		f.Columns(2)
	}
	for _, run := range equalRuns(pl.Joints) {
		t := draw.Table{Title: stepsWord(run) + ": " + run[0].Title, Compact: true, Columns: []draw.Column{
			{Head: "What", Size: 2.65, Flex: true},
			{Head: "Value", Flex: true, Bold: true, Size: 2.65},
			{Head: "From", Flex: true, Size: 2.65, Spare: true},
		}}
		for _, fig := range run[0].Figures {
			t.Rows = append(t.Rows, []string{upperFirst(fig.Label), fig.Value, fig.Source})
		}
		f.Table(t)
	}
	for _, part := range pl.Parts {
		for _, l := range part.Ladders {
			t := draw.Table{Title: part.Title + ", " + l.Feature + ": bore for the measured " + l.Counterpart, Compact: true, Columns: []draw.Column{
				{Head: "Measured", Align: draw.Centre, Size: 2.9},
				{Head: "Turn the bore to", Align: draw.Centre, Bold: true, Size: 2.9, Flex: true},
			}}
			for _, rung := range l.Rungs {
				t.Rows = append(t.Rows, []string{rung.Measured, rung.Bore})
			}
			f.Table(t)
		}
	}
	return f.Sheets
}
