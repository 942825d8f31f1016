// Package sequence draws the order in which parts are pressed, welded, bolted
// and fitted with bearings: an overview, then the sheets of each joint.
package sequence

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
)

// Name heads the assembly's sheets in the index and the bookmarks.
const Name = "Assembly"

// Chapters draws the press and weld sequence: an overview, then the
// sheets of each joint in the order to make them. A plan without joints has
// none.
func Chapters(pl *plan.Plan, paper draw.Frame) []draw.Chapter {
	if len(pl.Joints) == 0 {
		return nil
	}
	chapters := []draw.Chapter{{Part: Name, Name: "Order of assembly", Sheets: overviewSheets(pl, paper)}}
	for _, j := range pl.Joints {
		chapters = append(chapters, draw.Chapter{Part: Name, Name: "Step " + strconv.Itoa(j.N) + ": " + j.Title, Sheets: jointSheets(pl, j, paper)})
	}
	return chapters
}

// overviewSheets draws the order of assembly and the bars to saw.
func overviewSheets(pl *plan.Plan, paper draw.Frame) []*draw.Sheet {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: Name, Name: "Order of assembly", Scale: "not to scale"}
		if page == 0 {
			return s, overviewHead(pl, paper.Body().Width())
		}
		return s, draw.RunningHead("Press and weld sequence", "continued", paper.Body().Width())
	})
	if len(pl.Lifts) > 0 {
		text := "Use a hoist or a second person for what is over " + figures.Trimmed(plan.LiftKg, 0) + " kg: all steps marked LIFT below"
		for _, lift := range pl.Lifts {
			if !strings.HasPrefix(lift, "after ") { // a single part, not an assembly
				text += ", " + lift
			}
		}
		f.Add(draw.CautionBox(text+".", f.Width()), draw.Space(3))
	}
	f.Table(orderTable(pl))
	f.Add(draw.Notes("What the words mean", []string{
		"HOLD: stop, check and sign before the next step. What is covered later cannot be checked later.",
		"Clock angles are those of the assembly: 0° at TOP, clockwise, looking at the front of the part named under the dial.",
		"The numbers of a joint are computed from the drawings. Where a source is “common practice” or “from memory”, ask somebody who knows before relying on it.",
		"Welding: the welder’s qualification and the local code come before these sheets.",
	}, f.Width())...)
	f.Add(barPlans(pl, f.Width())...)
	return f.Sheets
}

func overviewHead(pl *plan.Plan, width float64) draw.Piece {
	var p draw.Piece
	title, size := draw.Shrink("Press and weld sequence", draw.TitleMm, true, width)
	p.Draw.Add(draw.Text{YMm: -7, SizeMm: size, Bold: true, Content: title})
	facts := figures.Joined("   ·   ", pl.Job, strconv.Itoa(len(pl.Joints))+" steps, in this order", "Tick each step when it is done")
	p.Facts(facts, width)
	return p
}

func orderTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "Order of assembly", RowMm: 9, Columns: []draw.Column{
		{Head: "Step", Align: draw.Centre, Bold: true, Size: 5.2},
		{Head: "Kind", Bold: true, Size: 3.8},
		{Head: "What", Flex: true, Size: 3.8},
		{Head: "Hold before going on", Flex: true},
		{Head: "Mass then", Align: draw.Right},
		{Head: "Done", Align: draw.Centre, Least: 11, Tick: true},
	}}
	for _, j := range pl.Joints {
		var holds []string
		for _, s := range j.Steps {
			if s.Hold != "" {
				holds = append(holds, s.Title)
			}
		}
		what := j.Title
		if b := j.Bolt; b != nil && b.Ordered != "" {
			what += "\n" + strconv.Itoa(b.Count) + " × " + b.Ordered
		}
		kg := ""
		if j.MassKg > 0 {
			kg = figures.Mass(j.MassKg)
			if j.MassKg > plan.LiftKg {
				kg += "\nLIFT"
			}
		}
		hold := ""
		if len(holds) > 0 {
			hold = "HOLD: " + strings.Join(holds, ", ")
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(j.N), strings.ToUpper(j.Kind), what, hold, kg, ""})
	}
	return t
}

// barPlans draws the bars of each size as they are sawn, the first cut at the
// left.
func barPlans(pl *plan.Plan, width float64) []draw.Piece {
	if len(pl.Cuts) == 0 {
		return nil
	}
	pieces := []draw.Piece{draw.Heading("Bars to saw, the first cut at the left", width)}
	said := ""
	for _, row := range pl.Cuts {
		lead := fmt.Sprintf("Bars of %s, saw cut %s, %s off the first end (%s).", sized(row.BarMm, pl.Units), sized(row.KerfMm, pl.Units), sized(row.TrimMm, pl.Units), row.Source)
		if lead != said {
			for _, line := range draw.Paragraph("", lead, 3.2, false, width) {
				line.Keep = true
				pieces = append(pieces, line)
			}
			pieces = append(pieces, draw.Space(1.5))
			said = lead
		}
		for _, bar := range row.Bars {
			pieces = append(pieces, barPlan(row, bar, pl.Units, width)...)
		}
	}
	return append(pieces, draw.Space(3))
}

// barPlan draws one bar and lists its pieces.
func barPlan(row plan.CutRow, bar plan.CutBar, units parts.Units, width float64) []draw.Piece {
	if row.BarMm <= 0 {
		return nil
	}
	scale := width / row.BarMm
	p := draw.Piece{Height: 13, Keep: true}
	p.Draw.Add(draw.Box(draw.R(0, -12, width, -5.6), draw.LineMm))
	var list []string
	free := 0.0
	for i, c := range bar.Pieces {
		x0, x1 := c.FromMm*scale, min((c.FromMm+c.LengthMm)*scale, width)
		p.Draw.Add(draw.Segment(x0, -12, x0, -5.6, draw.ThinMm), draw.Segment(x1, -12, x1, -5.6, draw.ThinMm))
		n := strconv.Itoa(i + 1)
		if w := draw.TextWidth(n, draw.TextMm, true); (x0+x1-w)/2 > free+0.4 && (x0+x1+w)/2 < width-0.5 {
			p.Draw.Add(draw.Text{XMm: (x0 + x1) / 2, YMm: -10, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: n})
			free = (x0 + x1 + w) / 2
		}
		list = append(list, n+" "+c.Part+" "+figures.Short(c.LengthMm, units))
	}
	end := "left over " + sized(bar.OffcutMm, units)
	if w := draw.TextWidth(end, draw.TextMm, false); bar.OffcutMm*scale > w+6 {
		p.Draw.Add(draw.Text{XMm: width - bar.OffcutMm*scale/2, YMm: -10, SizeMm: draw.TextMm, Align: draw.Centre, Content: end})
	} else {
		list = append(list, end)
	}
	text := strings.Join(list, ";  ") + "."
	title, size := draw.Shrink(figures.Joined(", ", row.Stock, row.Material)+":", 3.8, true, width)
	p.Draw.Add(draw.Text{YMm: -4, SizeMm: size, Bold: true, Content: title})
	if at := draw.TextWidth(title, size, true) + 2; at+draw.TextWidth(text, 3.2, false) <= width {
		p.Draw.Add(draw.Text{XMm: at, YMm: -4, SizeMm: 3.2, Content: text})
		p.Keep = false
		return []draw.Piece{p, draw.Space(1)}
	}
	pieces := append([]draw.Piece{p}, draw.Paragraph("", text, 3.2, false, width)...)
	return append(pieces, draw.Space(2))
}

// kindWord is the word over a joint's sheet.
func kindWord(j *plan.JointPlan) string { return strings.ToUpper(j.Kind) }

// jointSheets draws one joint: what goes where, the numbers, how it lies on
// the clock, what to do and what to check.
func jointSheets(pl *plan.Plan, j *plan.JointPlan, paper draw.Frame) []*draw.Sheet {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: Name, Name: "Step " + strconv.Itoa(j.N) + ": " + j.Kind, Scale: "not to scale"}
		if page == 0 {
			return s, jointHead(j, len(pl.Joints), paper.Body().Width())
		}
		return s, draw.RunningHead("Step "+strconv.Itoa(j.N)+" "+kindWord(j)+": "+j.Title, "continued", paper.Body().Width())
	})
	for _, problem := range j.Problems {
		f.Add(draw.CautionBox("Not right yet: "+problem.What+".", f.Width()), draw.Space(1.5))
	}
	f.Add(bigNumbers(keyNumbers(j, pl.Units), f.Width()), draw.Space(2))
	share := 0.29
	if j.Weld != nil && len(j.Placed) > 0 {
		share = 0.23 // leaves room for the weld's own pictures on the page
	}
	f.Add(stackPictures(pl, j, f.Width(), f.Body.Height()*share)...)
	if len(j.Placed) > 0 && j.Weld != nil {
		f.Add(panelRows(weldPanels(j, pl.Units), f.Width())...)
	}
	// A weld keeps what earlier steps have lined up, unless it says otherwise.
	clockLast := j.Weld != nil && len(j.InLine) == 0
	if !clockLast {
		f.Add(clockPieces(j, f.Width())...)
	}
	if len(j.Cautions) > 0 {
		f.Add(cautionsBox(j.Cautions, f.Width()), draw.Space(2.5))
	}
	for i, step := range j.Steps {
		pieces := []draw.Piece{stepBox(step, kindWord(j), f.Width()), draw.Space(1.5)}
		if i == 0 {
			pieces = append([]draw.Piece{draw.Heading("Do", f.Width())}, pieces...)
		}
		f.Add(pieces...)
	}
	f.Add(draw.Space(2))
	// The dial of the tacks shows TOP already.
	if clockLast && (len(hourMarks(j.Clock)) > 1 || len(j.Weld.TacksDeg) == 0) {
		f.Add(clockPieces(j, f.Width())...)
	}
	f.Table(boltTable(j, pl.Units))
	f.Table(trapTable(j))
	f.Add(draw.Notes("So that it cannot go wrong", remedies(j), f.Width())...)
	f.Table(goOnTable(j))
	f.Table(figureTable(j))
	return f.Sheets
}

// jointHead is the head of a joint's first sheet: the step's number large in
// a box, the kind of joint, and what is joined.
func jointHead(j *plan.JointPlan, of int, width float64) draw.Piece {
	const side = 22.0
	var p draw.Piece
	number, size := draw.Shrink(strconv.Itoa(j.N), 15, true, side-4)
	p.Draw.Add(draw.Shape{Path: draw.R(0, -side, side, 0).Path(), Stroke: draw.Black, WidthMm: draw.ThickMm})
	p.Draw.Add(draw.Text{XMm: side / 2, YMm: -13.8, SizeMm: size, Bold: true, Align: draw.Centre, Content: number})
	p.Draw.Add(draw.Text{XMm: side / 2, YMm: -19.4, SizeMm: draw.TextMm, Align: draw.Centre, Content: "step of " + strconv.Itoa(of)})
	x := side + 4
	p.Draw.Add(draw.Text{XMm: x, YMm: -8, SizeMm: 10, Bold: true, Content: kindWord(j)})
	if j.MassKg > 0 {
		text := "then " + figures.Mass(j.MassKg)
		if j.MassKg > plan.LiftKg {
			text += ": LIFT"
		}
		text, at := draw.Shrink(text, draw.HeadMm, true, width-x-draw.TextWidth(kindWord(j), 10, true)-14)
		p.Draw.Add(draw.Text{XMm: width, YMm: -7, SizeMm: at, Bold: true, Align: draw.Right, Content: text})
		if j.MassKg > plan.LiftKg {
			p.Draw.Add(draw.Warning(width-draw.TextWidth(text, at, true)-10, -8, 8)...)
		}
	}
	y := -10.5
	for _, line := range draw.Wrap(j.Title, 5.2, true, width-x) {
		y -= 5.2 * 1.25
		p.Draw.Add(draw.Text{XMm: x, YMm: y + 1.2, SizeMm: 5.2, Bold: true, Content: line})
	}
	y -= 0.4
	line := func(text string) {
		for _, part := range draw.Wrap(text, draw.TextMm, false, width-x) {
			y -= draw.TextMm * draw.Leading
			p.Draw.Add(draw.Text{XMm: x, YMm: y + 1, SizeMm: draw.TextMm, Content: part})
		}
	}
	line(upperFirst(j.How) + ".")
	if len(j.Why) > 0 {
		line("Its place in the order: " + strings.Join(reasons(j.Why), "; ") + ".")
	}
	y = min(y, -side)
	p.Draw.Add(draw.Segment(0, y-2, width, y-2, draw.ThickMm))
	p.Height = -y + 5
	return p
}

// reasons joins the names of those that have the same reason: "after a: why"
// and "after b: why" become "after a, b: why".
func reasons(why []string) []string {
	var names, ends []string
	for _, w := range why {
		name, end, _ := strings.Cut(w, ": ")
		if i := slices.Index(ends, end); i >= 0 && end != "" {
			names[i] += ", " + strings.TrimPrefix(name, "after ")
			continue
		}
		names, ends = append(names, name), append(ends, end)
	}
	out := make([]string, len(names))
	for i := range names {
		out[i] = figures.Joined(": ", names[i], ends[i])
	}
	return out
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// tickStripMm is the width of the number and tick box of a step.
const tickStripMm = 14.0

// stepBox draws one thing to do: number and tick box at the left, what to do,
// the caution, and where it says hold a box to sign.
func stepBox(step plan.JointStep, kind string, width float64) draw.Piece {
	var p draw.Piece
	x0 := tickStripMm + 2.5
	inner := width - x0 - 2.5
	y := -1.6
	for _, line := range draw.Wrap(step.Title, draw.HeadMm, true, inner) {
		p.Draw.Add(draw.Text{XMm: x0, YMm: y - draw.HeadMm, SizeMm: draw.HeadMm, Bold: true, Content: line})
		y -= draw.HeadMm * draw.Leading
	}
	y -= 0.8
	for _, text := range step.Do {
		lines := draw.Stack(draw.Paragraph("–", text, 3.8, false, inner)...)
		p.Draw.Place(&lines.Draw, x0, y)
		y -= lines.Height + 0.4
	}
	if step.Caution != "" {
		c := draw.CautionBox(step.Caution, inner)
		p.Draw.Place(&c.Draw, x0, y-1)
		y -= c.Height + 1
	}
	if step.Hold != "" {
		h := holdBox(step.Hold, inner)
		p.Draw.Place(&h.Draw, x0, y-1)
		y -= h.Height + 1
	}
	p.Height = max(-y+1.8, 21)
	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), 0.5), draw.Segment(tickStripMm, -p.Height, tickStripMm, 0, draw.LineMm))
	p.Draw.Add(draw.Text{XMm: tickStripMm / 2, YMm: -7.2, SizeMm: 7, Bold: true, Align: draw.Centre, Content: strconv.Itoa(step.N)})
	p.Draw.Add(draw.Box(draw.R(tickStripMm/2-3.5, -16.5, tickStripMm/2+3.5, -9.5), 0.5))
	p.Draw.Add(draw.Text{XMm: tickStripMm / 2, YMm: -19.4, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "done"})
	return p
}

// cautionsBox is one framed warning of several.
func cautionsBox(texts []string, width float64) draw.Piece {
	if len(texts) == 1 {
		return draw.CautionBox(upperFirst(texts[0]), width)
	}
	var pieces []draw.Piece
	for _, t := range texts {
		pieces = append(pieces, draw.Paragraph("–", upperFirst(t), 3.6, true, width-17)...)
	}
	lines := draw.Stack(pieces...)
	p := draw.Piece{Height: max(11, lines.Height+3)}
	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), 0.5))
	p.Draw.Add(draw.Warning(2.5, -p.Height/2-3.7, 8.5)...)
	p.Draw.Place(&lines.Draw, 14, -(p.Height-lines.Height)/2)
	return p
}

// holdBox is a hold point: what to check, and who has.
func holdBox(text string, width float64) draw.Piece {
	const sign = 62.0
	tag := draw.TextWidth("HOLD", 5, true) + 4
	room := width - tag - 4
	beside := room-sign >= 60
	if beside {
		room -= sign
	}
	lines := draw.Stack(draw.Paragraph("", text, 3.8, true, room)...)
	p := draw.Piece{Height: max(11, lines.Height+3)}
	if !beside {
		p.Height = lines.Height + 13
	}
	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), 0.9))
	p.Draw.Add(draw.Shape{Path: draw.R(0, -p.Height, tag, 0).Path(), Fill: draw.Black})
	p.Draw.Add(draw.Text{XMm: tag / 2, YMm: -p.Height/2 - 1.8, SizeMm: 5, Bold: true, Align: draw.Centre, Tone: draw.White, Content: "HOLD"})
	x, y := width-sign, -p.Height+3.2
	if beside {
		p.Draw.Place(&lines.Draw, tag+2, -(p.Height-lines.Height)/2)
	} else {
		p.Draw.Place(&lines.Draw, tag+2, -1.5)
		x = max(tag+2, x)
	}
	p.Draw.Add(draw.Text{XMm: x, YMm: y, SizeMm: draw.SmallMm, Content: "Signed"}, draw.Segment(x+10, y-0.5, x+36, y-0.5, draw.ThinMm))
	p.Draw.Add(draw.Text{XMm: x + 38, YMm: y, SizeMm: draw.SmallMm, Content: "Date"}, draw.Segment(x+45, y-0.5, x+sign-2, y-0.5, draw.ThinMm))
	return p
}
