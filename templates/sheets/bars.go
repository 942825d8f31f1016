package sheets

import (
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// BarsName heads the cut list of the bars.
const BarsName = "Bars: cut list and record"

// barSplit is the share of a page's width that the picture of a bar gets.
const barSplit = 0.54

// Bars draws the cut list: what is sawn from each bar as bought, every bar with its
// points, saw angles and holes, and a record for all. Plans without bars have none.
func Bars(pl *plan.Plan, list []*plan.PartPlan, paper draw.Frame) []draw.Chapter {
	bars := seq.Keep(list, func(part *plan.PartPlan) bool { return part.Bar != nil })
	if len(bars) == 0 {
		return nil
	}
	_, sheets := draw.Roomiest(densities, func(d density) []*draw.Sheet { return d.bars(pl, bars, paper) }, draw.PagesOf)
	return []draw.Chapter{{Name: BarsName, Sheets: sheets}}
}

// Unbarred are the parts that have sheets of their own.
func Unbarred(list []*plan.PartPlan) []*plan.PartPlan {
	return seq.Keep(list, func(part *plan.PartPlan) bool { return part.Bar == nil })
}

func (d density) bars(pl *plan.Plan, bars []*plan.PartPlan, paper draw.Frame) []*draw.Sheet {
	head := draw.RunningHead("Bars", "cut list and record", paper.Body().Width())
	f := draw.NewFlow(draw.Pages(draw.Sheet{Frame: paper, Name: BarsName}, head, "Bars", "cut list and record, continued"))
	f.Add(draw.Paragraph("", barLead(bars), d.smallMm(), false, f.Width())...)
	f.Add(draw.Space(1.5))
	for i, part := range bars {
		f.Add(d.bar(pl, bars, i, f.Width()))
		s := f.Sheets[len(f.Sheets)-1]
		s.Parts, s.Starts = append(s.Parts, part.Title), append(s.Starts, part.Title)
	}
	f.Table(d.tight(d.barStock(pl, bars)))
	f.Table(d.tight(d.barRecord(bars)))
	return f.Sheets
}

func barLead(bars []*plan.PartPlan) string {
	slotted := slices.ContainsFunc(bars, func(p *plan.PartPlan) bool {
		return slices.ContainsFunc(p.Bar.Holes, func(h plan.BarHole) bool { return h.EndMm != plan.XY{} })
	})
	return "Every bar lies as in its picture, seen from its front: chalk L on its left end, R on its right one, T on its top. Lengths go over the outermost points, saw angles are from a square cut. " +
		"Saw one, measure, then set the stop. Holes" + words.When(slotted, ", and slots to their middles,") + " are marked and measured with a tape or rule " +
		"hooked on the outermost point of the end that is named, L or R, on the side that is named." +
		words.When(sameLast(bars), " Last of each: "+lastText(bars[0])) + barCautions(bars)
}

// letter names a bar on its cut list: A to Z, then A2 and on.
func letter(i int) string {
	text := string(rune('A' + i%26))
	if i >= 26 {
		text += strconv.Itoa(i/26 + 1)
	}
	return text
}

// bar is the block of one bar: its picture, and beside it what to do, with boxes.
func (d density) bar(pl *plan.Plan, bars []*plan.PartPlan, i int, width float64) draw.Piece {
	part := bars[i]
	b := part.Bar
	pic := picture.Bar(b, width*barSplit)
	x := width*barSplit + 3
	rest := width - x
	head := draw.Paragraph("", letter(i)+"  "+part.Title+"  × "+strconv.Itoa(part.Quantity), d.em(3.8), true, rest)
	facts := words.Join(", ", b.Section, part.Material, words.Writer{Units: pl.Units}.Mass(part.MassKg))
	text := append(head, draw.Paragraph("", facts, d.smallMm(), false, rest)...)
	last := len(part.Operations)
	if sameLast(bars) {
		last--
	}
	for _, op := range part.Operations[:last] {
		text = append(text, draw.Paragraph(strconv.Itoa(op.N), operationText(op), d.smallMm(), false, rest)...)
	}
	for _, line := range part.Notes {
		text = append(text, draw.Paragraph("–", line, d.smallMm(), false, rest)...)
	}
	for _, note := range part.Cautions {
		text = append(text, draw.Paragraph("⚠", note, d.smallMm(), true, rest)...)
	}
	body := draw.Stack(append(text, draw.Space(0.6), ticks(barJobs(part), part.Quantity, rest))...)
	p := draw.Piece{Height: max(pic.Height, body.Height) + 2.5}
	p.Draw.Place(&pic.Draw, 0, 0)
	p.Draw.Place(&body.Draw, x, 0)
	p.Draw.Add(draw.Segment(0, -p.Height+1, width, -p.Height+1, draw.HairMm))
	return p
}

// sameLast tells whether all bars end with the same operation, which is then said once.
func sameLast(bars []*plan.PartPlan) bool {
	return !slices.ContainsFunc(bars, func(part *plan.PartPlan) bool {
		return len(part.Operations) == 0 || lastText(part) != lastText(bars[0])
	})
}

// lastText is what is done last of a bar, and by what.
func lastText(part *plan.PartPlan) string {
	op := part.Operations[len(part.Operations)-1]
	return op.Title + " (" + op.Tool + "). " + strings.Join(op.Do, " ")
}

// barCautions are the warnings of all bars, each once with what it is for.
func barCautions(bars []*plan.PartPlan) string {
	var out []string
	for _, part := range bars {
		for _, op := range part.Operations {
			out = seq.Add(out, words.When(op.Caution != "", " ⚠ "+string(op.Machine)+": "+op.Caution+"."))
		}
	}
	return strings.Join(out, "")
}

// operationText is an operation of a bar in a paragraph: its sawn length and its limits stand in the picture and the record, what all are
// marked by at the head of the sheet.
func operationText(op plan.Operation) string {
	name := strings.ToUpper(string(op.Machine)) + "  "
	if op.Machine == plan.Saw {
		return name + strings.Join(op.Do[1:], " ")
	}
	how := words.Join(" · ", op.Holding, words.When(op.Machine != plan.Bench, op.Tool))
	return name + words.Join(" ", op.Title+".", strings.Join(op.Do, " "), words.When(how != "", words.Capital(how)+"."))
}

// barJobs are what is ticked for each piece.
func barJobs(part *plan.PartPlan) []string {
	out := []string{"sawn"}
	if part.Bar.Left.Cope+part.Bar.Right.Cope != "" {
		out = append(out, "coped")
	}
	for _, job := range []struct {
		by   plan.Machine
		word string
	}{{plan.Drill, "drilled"}, {plan.Mill, "milled"}} {
		if slices.ContainsFunc(part.Operations, func(op plan.Operation) bool { return op.Machine == job.by }) {
			out = append(out, job.word)
		}
	}
	return append(out, "deburred")
}

// ticks are boxes to tick: for each job one for each piece, or one for all of many.
func ticks(jobs []string, quantity int, width float64) draw.Piece {
	n := quantity
	if n > 2*mostPieces {
		n = 1
	}
	const boxMm, size = 3.4, draw.SmallMm
	p := draw.Piece{Height: 4.6}
	var x float64
	for _, job := range jobs {
		need := draw.TextWidth(job, size, false) + 1 + float64(n)*(boxMm+0.6) + 2
		if x > 0 && x+need > width {
			x, p.Height = 0, p.Height+4.6
		}
		y := -p.Height + 0.8
		p.Draw.Add(draw.Text{XMm: x, YMm: y + 0.7, SizeMm: size, Content: job})
		x += draw.TextWidth(job, size, false) + 1
		for range n {
			p.Draw.Add(draw.Box(draw.R(x, y, x+boxMm, y+boxMm), draw.ThinMm))
			x += boxMm + 0.6
		}
		x += 2
	}
	return p
}

// cutSign is a sign in an order of sawing, and what it means.
type cutSign struct{ sign, means string }

var (
	oneCut     = cutSign{"/", "one cut for both"}
	turnedOver = cutSign{"⟲", "turned over"}
	endForEnd  = cutSign{"⇄", "end for end"}
)

// barStock is what is sawn from each bar as bought.
func (d density) barStock(pl *plan.Plan, bars []*plan.PartPlan) draw.Table {
	t := draw.Table{Title: "Bars to buy, and what is sawn from each, in " + words.LengthWord(pl.Units), Compact: true, Fit: true, EmMm: d.smallMm(), Columns: []draw.Column{
		{Head: "Section", Flex: true, Bold: true, Least: 26}, {Head: "Material"}, {Head: "Length", Align: draw.Right},
		{Head: "Sawn in this order", Flex: true}, {Head: "Left over", Align: draw.Right},
		{Head: "done", Align: draw.Centre, Tick: true, Least: 9},
	}}
	names := map[string]string{}
	for i, part := range bars {
		names[part.Name] = letter(i)
	}
	var signs []cutSign
	for _, k := range pl.Bars {
		for _, bar := range k.Bars {
			text, used, wanted := barPieces(pl, bar, names)
			if wanted {
				signs = append(signs, used...)
				t.Rows = append(t.Rows, []string{k.Section, k.Material, words.Short(k.BarMm, pl.Units), text, words.Short(bar.OffcutMm, pl.Units), ""})
			}
		}
		if len(k.Bars) == 0 {
			t.Rows = append(t.Rows, []string{k.Section, k.Material, "", k.Source, "", ""})
		}
	}
	var means []string
	for _, sign := range []cutSign{oneCut, turnedOver, endForEnd} {
		if slices.Contains(signs, sign) {
			means = append(means, sign.sign+" "+sign.means)
		}
	}
	t.Columns[3].Head += words.When(len(means) > 0, " ("+strings.Join(means, ", ")+")")
	if len(pl.Bars) > 0 {
		k := pl.Bars[0]
		t.Lead = "Reckoned with a saw cut of " + words.Short(k.KerfMm, pl.Units) + " and " + words.Short(k.TrimMm, pl.Units) + " lost at the first end (" + k.Source + ")."
	}
	return t
}

// barPieces are the pieces of a bar as bought, the signs in them, and whether one of
// those listed is among them.
func barPieces(pl *plan.Plan, bar plan.StockBar, names map[string]string) (text string, signs []cutSign, wanted bool) {
	for i, c := range bar.Cuts {
		name := names[c.Part]
		if wanted = wanted || name != ""; name == "" {
			name = c.Name
		}
		sign := ""
		if c.Turned {
			sign, signs = " "+turnedOver.sign, append(signs, turnedOver)
		}
		if c.Reversed {
			sign, signs = sign+" "+endForEnd.sign, append(signs, endForEnd)
		}
		switch {
		case i == 0:
		case c.Shared && (c.StartDeg != 0 || bar.Cuts[i-1].EndDeg != 0):
			text, signs = text+" "+oneCut.sign+" ", append(signs, oneCut)
		default:
			text += ", "
		}
		text += name + " " + words.Short(c.LengthMm, pl.Units) + sign
	}
	return text, signs, wanted
}

// barRecord has a row for each length to measure.
func (d density) barRecord(bars []*plan.PartPlan) draw.Table {
	t := draw.Table{Title: "Record", Compact: true, EmMm: d.smallMm(), Columns: []draw.Column{
		{Head: "Bar", Bold: true}, {Head: "What", Flex: true}, {Head: "Wanted", Bold: true}, {Head: "Limits", Flex: true},
	}}
	pieces := min(mostPieces, seq.Max(1, bars, func(part *plan.PartPlan) int { return part.Quantity }))
	for i := range pieces {
		t.Columns = append(t.Columns, draw.Column{Head: "pc " + strconv.Itoa(i+1), Least: 17})
	}
	for i, part := range bars {
		b := part.Bar
		row := func(what, wanted, limits string) {
			cells := []string{letter(i), what, wanted, limits}
			for n := range pieces {
				cell := words.When(n >= part.Quantity, "–")
				cells = append(cells, cell)
			}
			t.Rows = append(t.Rows, cells)
		}
		row(part.Title+", over all", b.Length, b.Limits)
		for _, m := range b.Measures {
			row(m.What, m.Wanted, m.Limits)
		}
	}
	return t
}
