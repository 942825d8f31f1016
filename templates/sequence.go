package templates

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// sequenceName heads the assembly's sheets in the index and the bookmarks.
const sequenceName = "Assembly"

// sequenceChapters draws the press and weld sequence: an overview, then the
// sheets of each joint in the order to make them. A plan without joints has
// none.
func sequenceChapters(pl *plan.Plan, paper frame) []chapter {
	if len(pl.Joints) == 0 {
		return nil
	}
	chapters := []chapter{{sequenceName, "Order of assembly", overviewSheets(pl, paper)}}
	for _, j := range pl.Joints {
		chapters = append(chapters, chapter{sequenceName, "Step " + strconv.Itoa(j.N) + ": " + j.Title, jointSheets(pl, j, paper)})
	}
	return chapters
}

// overviewSheets draws the order of assembly and the bars to saw.
func overviewSheets(pl *plan.Plan, paper frame) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: sequenceName, name: "Order of assembly", scale: "not to scale"}
		if page == 0 {
			return s, overviewHead(pl, paper.body().width())
		}
		return s, runningHead("Press and weld sequence", "continued", paper.body().width())
	})
	if len(pl.Lifts) > 0 {
		text := "Use a hoist or a second person for what is over " + trimmed(plan.LiftKg, 0) + " kg: all steps marked LIFT below"
		for _, lift := range pl.Lifts {
			if !strings.HasPrefix(lift, "after ") { // a single part, not an assembly
				text += ", " + lift
			}
		}
		f.add(cautionBox(text+".", f.width()), space(3))
	}
	f.table(orderTable(pl))
	f.add(notes("What the words mean", []string{
		"HOLD: stop, check and sign before the next step. What is covered later cannot be checked later.",
		"Clock angles are those of the assembly: 0° at TOP, clockwise, looking at the front of the part named under the dial.",
		"The numbers of a joint are computed from the drawings. Where a source is “common practice” or “from memory”, ask somebody who knows before relying on it.",
		"Welding: the welder’s qualification and the local code come before these sheets.",
	}, f.width())...)
	f.add(barPlans(pl, f.width())...)
	return f.sheets
}

func overviewHead(pl *plan.Plan, width float64) piece {
	var p piece
	title, size := shrink("Press and weld sequence", titleMm, true, width)
	p.draw.Add(Text{YMm: -7, SizeMm: size, Bold: true, Content: title})
	facts := joined("   ·   ", pl.Job, strconv.Itoa(len(pl.Joints))+" steps, in this order", "Tick each step when it is done")
	p.facts(facts, width)
	return p
}

func orderTable(pl *plan.Plan) table {
	t := table{title: "Order of assembly", rowMm: 9, columns: []column{
		{head: "Step", align: Centre, bold: true, size: 5.2},
		{head: "Kind", bold: true, size: 3.8},
		{head: "What", flex: true, size: 3.8},
		{head: "Hold before going on", flex: true},
		{head: "Mass then", align: Right},
		{head: "Done", align: Centre, least: 11, tick: true},
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
			kg = mass(j.MassKg)
			if j.MassKg > plan.LiftKg {
				kg += "\nLIFT"
			}
		}
		hold := ""
		if len(holds) > 0 {
			hold = "HOLD: " + strings.Join(holds, ", ")
		}
		t.rows = append(t.rows, []string{strconv.Itoa(j.N), strings.ToUpper(j.Kind), what, hold, kg, ""})
	}
	return t
}

// barPlans draws the bars of each size as they are sawn, the first cut at the
// left.
func barPlans(pl *plan.Plan, width float64) []piece {
	if len(pl.Cuts) == 0 {
		return nil
	}
	pieces := []piece{heading("Bars to saw, the first cut at the left", width)}
	said := ""
	for _, row := range pl.Cuts {
		lead := fmt.Sprintf("Bars of %s, saw cut %s, %s off the first end (%s).", sized(row.BarMm, pl.Units), sized(row.KerfMm, pl.Units), sized(row.TrimMm, pl.Units), row.Source)
		if lead != said {
			for _, line := range paragraph("", lead, 3.2, false, width) {
				line.keep = true
				pieces = append(pieces, line)
			}
			pieces = append(pieces, space(1.5))
			said = lead
		}
		for _, bar := range row.Bars {
			pieces = append(pieces, barPlan(row, bar, pl.Units, width)...)
		}
	}
	return append(pieces, space(3))
}

// barPlan draws one bar and lists its pieces.
func barPlan(row plan.CutRow, bar plan.CutBar, units parts.Units, width float64) []piece {
	if row.BarMm <= 0 {
		return nil
	}
	scale := width / row.BarMm
	p := piece{height: 13, keep: true}
	p.draw.Add(box(rect{0, -12, width, -5.6}, lineMm))
	var list []string
	free := 0.0
	for i, c := range bar.Pieces {
		x0, x1 := c.FromMm*scale, min((c.FromMm+c.LengthMm)*scale, width)
		p.draw.Add(segment(x0, -12, x0, -5.6, thinMm), segment(x1, -12, x1, -5.6, thinMm))
		n := strconv.Itoa(i + 1)
		if w := textWidth(n, textMm, true); (x0+x1-w)/2 > free+0.4 && (x0+x1+w)/2 < width-0.5 {
			p.draw.Add(Text{XMm: (x0 + x1) / 2, YMm: -10, SizeMm: textMm, Bold: true, Align: Centre, Content: n})
			free = (x0 + x1 + w) / 2
		}
		list = append(list, n+" "+c.Part+" "+short(c.LengthMm, units))
	}
	end := "left over " + sized(bar.OffcutMm, units)
	if w := textWidth(end, textMm, false); bar.OffcutMm*scale > w+6 {
		p.draw.Add(Text{XMm: width - bar.OffcutMm*scale/2, YMm: -10, SizeMm: textMm, Align: Centre, Content: end})
	} else {
		list = append(list, end)
	}
	text := strings.Join(list, ";  ") + "."
	title, size := shrink(joined(", ", row.Stock, row.Material)+":", 3.8, true, width)
	p.draw.Add(Text{YMm: -4, SizeMm: size, Bold: true, Content: title})
	if at := textWidth(title, size, true) + 2; at+textWidth(text, 3.2, false) <= width {
		p.draw.Add(Text{XMm: at, YMm: -4, SizeMm: 3.2, Content: text})
		p.keep = false
		return []piece{p, space(1)}
	}
	pieces := append([]piece{p}, paragraph("", text, 3.2, false, width)...)
	return append(pieces, space(2))
}

// kindWord is the word over a joint's sheet.
func kindWord(j *plan.JointPlan) string { return strings.ToUpper(j.Kind) }

// jointSheets draws one joint: what goes where, the numbers, how it lies on
// the clock, what to do and what to check.
func jointSheets(pl *plan.Plan, j *plan.JointPlan, paper frame) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: sequenceName, name: "Step " + strconv.Itoa(j.N) + ": " + j.Kind, scale: "not to scale"}
		if page == 0 {
			return s, jointHead(j, len(pl.Joints), paper.body().width())
		}
		return s, runningHead("Step "+strconv.Itoa(j.N)+" "+kindWord(j)+": "+j.Title, "continued", paper.body().width())
	})
	for _, problem := range j.Problems {
		f.add(cautionBox("Not right yet: "+problem.What+".", f.width()), space(1.5))
	}
	f.add(bigNumbers(keyNumbers(j, pl.Units), f.width()), space(2))
	share := 0.29
	if j.Weld != nil && len(j.Placed) > 0 {
		share = 0.23 // leaves room for the weld's own pictures on the page
	}
	f.add(stackPictures(pl, j, f.width(), f.body.height()*share)...)
	if len(j.Placed) > 0 && j.Weld != nil {
		f.add(panelRows(weldPanels(j, pl.Units), f.width())...)
	}
	// A weld keeps what earlier steps have lined up, unless it says otherwise.
	clockLast := j.Weld != nil && len(j.Align) == 0
	if !clockLast {
		f.add(clockPieces(j, f.width())...)
	}
	if len(j.Cautions) > 0 {
		f.add(cautionsBox(j.Cautions, f.width()), space(2.5))
	}
	for i, step := range j.Steps {
		pieces := []piece{stepBox(step, kindWord(j), f.width()), space(1.5)}
		if i == 0 {
			pieces = append([]piece{heading("Do", f.width())}, pieces...)
		}
		f.add(pieces...)
	}
	f.add(space(2))
	// The dial of the tacks shows TOP already.
	if clockLast && (len(hourMarks(j.Clock)) > 1 || len(j.Weld.TacksDeg) == 0) {
		f.add(clockPieces(j, f.width())...)
	}
	f.table(boltTable(j, pl.Units))
	f.table(trapTable(j))
	f.add(notes("So that it cannot go wrong", remedies(j), f.width())...)
	f.table(goOnTable(j))
	f.table(figureTable(j))
	return f.sheets
}

// jointHead is the head of a joint's first sheet: the step's number large in
// a box, the kind of joint, and what is joined.
func jointHead(j *plan.JointPlan, of int, width float64) piece {
	const side = 22.0
	var p piece
	number, size := shrink(strconv.Itoa(j.N), 15, true, side-4)
	p.draw.Add(Shape{Path: rect{0, -side, side, 0}.path(), Stroke: Black, WidthMm: thickMm})
	p.draw.Add(Text{XMm: side / 2, YMm: -13.8, SizeMm: size, Bold: true, Align: Centre, Content: number})
	p.draw.Add(Text{XMm: side / 2, YMm: -19.4, SizeMm: textMm, Align: Centre, Content: "step of " + strconv.Itoa(of)})
	x := side + 4
	p.draw.Add(Text{XMm: x, YMm: -8, SizeMm: 10, Bold: true, Content: kindWord(j)})
	if j.MassKg > 0 {
		text := "then " + mass(j.MassKg)
		if j.MassKg > plan.LiftKg {
			text += ": LIFT"
		}
		text, at := shrink(text, headMm, true, width-x-textWidth(kindWord(j), 10, true)-14)
		p.draw.Add(Text{XMm: width, YMm: -7, SizeMm: at, Bold: true, Align: Right, Content: text})
		if j.MassKg > plan.LiftKg {
			p.draw.Add(warning(width-textWidth(text, at, true)-10, -8, 8)...)
		}
	}
	y := -10.5
	for _, line := range wrap(j.Title, 5.2, true, width-x) {
		y -= 5.2 * 1.25
		p.draw.Add(Text{XMm: x, YMm: y + 1.2, SizeMm: 5.2, Bold: true, Content: line})
	}
	y -= 0.4
	line := func(text string) {
		for _, part := range wrap(text, textMm, false, width-x) {
			y -= textMm * leading
			p.draw.Add(Text{XMm: x, YMm: y + 1, SizeMm: textMm, Content: part})
		}
	}
	line(upperFirst(j.How) + ".")
	if len(j.Why) > 0 {
		line("Its place in the order: " + strings.Join(reasons(j.Why), "; ") + ".")
	}
	y = min(y, -side)
	p.draw.Add(segment(0, y-2, width, y-2, thickMm))
	p.height = -y + 5
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
		out[i] = joined(": ", names[i], ends[i])
	}
	return out
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// stepBox draws one thing to do: number and tick box at the left, what to do,
// the caution, and where it says hold a box to sign.
func stepBox(step plan.JointStep, kind string, width float64) piece {
	var p piece
	x0 := stripMm + 2.5
	inner := width - x0 - 2.5
	y := -1.6
	for _, line := range wrap(step.Title, headMm, true, inner) {
		p.draw.Add(Text{XMm: x0, YMm: y - headMm, SizeMm: headMm, Bold: true, Content: line})
		y -= headMm * leading
	}
	y -= 0.8
	for _, text := range step.Do {
		lines := stack(paragraph("–", text, 3.8, false, inner)...)
		p.draw.Place(&lines.draw, x0, y)
		y -= lines.height + 0.4
	}
	if step.Caution != "" {
		c := cautionBox(step.Caution, inner)
		p.draw.Place(&c.draw, x0, y-1)
		y -= c.height + 1
	}
	if step.Hold != "" {
		h := holdBox(step.Hold, inner)
		p.draw.Place(&h.draw, x0, y-1)
		y -= h.height + 1
	}
	p.height = max(-y+1.8, 21)
	p.draw.Add(box(rect{0, -p.height, width, 0}, 0.5), segment(stripMm, -p.height, stripMm, 0, lineMm))
	p.draw.Add(Text{XMm: stripMm / 2, YMm: -7.2, SizeMm: 7, Bold: true, Align: Centre, Content: strconv.Itoa(step.N)})
	p.draw.Add(box(rect{stripMm/2 - 3.5, -16.5, stripMm/2 + 3.5, -9.5}, 0.5))
	p.draw.Add(Text{XMm: stripMm / 2, YMm: -19.4, SizeMm: smallMm, Align: Centre, Content: "done"})
	return p
}

// cautionsBox is one framed warning of several.
func cautionsBox(texts []string, width float64) piece {
	if len(texts) == 1 {
		return cautionBox(upperFirst(texts[0]), width)
	}
	var pieces []piece
	for _, t := range texts {
		pieces = append(pieces, paragraph("–", upperFirst(t), 3.6, true, width-17)...)
	}
	lines := stack(pieces...)
	p := piece{height: max(11, lines.height+3)}
	p.draw.Add(box(rect{0, -p.height, width, 0}, 0.5))
	p.draw.Add(warning(2.5, -p.height/2-3.7, 8.5)...)
	p.draw.Place(&lines.draw, 14, -(p.height-lines.height)/2)
	return p
}

// holdBox is a hold point: what to check, and who has.
func holdBox(text string, width float64) piece {
	const sign = 62.0
	tag := textWidth("HOLD", 5, true) + 4
	room := width - tag - 4
	beside := room-sign >= 60
	if beside {
		room -= sign
	}
	lines := stack(paragraph("", text, 3.8, true, room)...)
	p := piece{height: max(11, lines.height+3)}
	if !beside {
		p.height = lines.height + 13
	}
	p.draw.Add(box(rect{0, -p.height, width, 0}, 0.9))
	p.draw.Add(Shape{Path: rect{0, -p.height, tag, 0}.path(), Fill: Black})
	p.draw.Add(Text{XMm: tag / 2, YMm: -p.height/2 - 1.8, SizeMm: 5, Bold: true, Align: Centre, Tone: White, Content: "HOLD"})
	x, y := width-sign, -p.height+3.2
	if beside {
		p.draw.Place(&lines.draw, tag+2, -(p.height-lines.height)/2)
	} else {
		p.draw.Place(&lines.draw, tag+2, -1.5)
		x = max(tag+2, x)
	}
	p.draw.Add(Text{XMm: x, YMm: y, SizeMm: smallMm, Content: "Signed"}, segment(x+10, y-0.5, x+36, y-0.5, thinMm))
	p.draw.Add(Text{XMm: x + 38, YMm: y, SizeMm: smallMm, Content: "Date"}, segment(x+45, y-0.5, x+sign-2, y-0.5, thinMm))
	return p
}
