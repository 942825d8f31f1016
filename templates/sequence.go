package templates

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout"
	"centrepop/parts"
)

// sequenceName heads the assembly's sheets in the index and the bookmarks.
const sequenceName = "Assembly"

// sequenceChapters draws the press and weld sequence: an overview, then the
// sheets of each joint in the order to make them. A plan without joints has
// none.
func sequenceChapters(plan *layout.Plan, paper frame) []chapter {
	if len(plan.Joints) == 0 {
		return nil
	}
	chapters := []chapter{{sequenceName, "Order of assembly", overviewSheets(plan, paper)}}
	for _, j := range plan.Joints {
		chapters = append(chapters, chapter{sequenceName, "Step " + strconv.Itoa(j.N) + ": " + j.Title, jointSheets(plan, j, paper)})
	}
	return chapters
}

// overviewSheets draws the order of assembly and the bars to saw.
func overviewSheets(plan *layout.Plan, paper frame) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: sequenceName, name: "Order of assembly", scale: "not to scale"}
		if page == 0 {
			return s, overviewHead(plan, paper.body().width())
		}
		return s, runningHead("Press and weld sequence", "continued", paper.body().width())
	})
	if len(plan.Lifts) > 0 {
		text := "Use a hoist or a second person for what is over " + trimmed(layout.LiftKg, 0) + " kg: all steps marked LIFT below"
		for _, lift := range plan.Lifts {
			if !strings.HasPrefix(lift, "after ") { // a single part, not an assembly
				text += ", " + lift
			}
		}
		f.add(cautionBox(text+".", f.width()), space(3))
	}
	f.table(orderTable(plan))
	f.add(notes("What the words mean", []string{
		"HOLD: stop, check and sign before the next step. What is covered later cannot be checked later.",
		"Clock angles are those of the assembly: 0° at TOP, clockwise, looking at the front of the part named under the dial.",
		"The numbers of a joint are computed from the drawings. Where a source is “common practice” or “from memory”, ask somebody who knows before relying on it.",
		"Welding: the welder’s qualification and the local code come before these sheets.",
	}, f.width())...)
	f.add(barPlans(plan, f.width())...)
	return f.sheets
}

func overviewHead(plan *layout.Plan, width float64) piece {
	var p piece
	title, size := shrink("Press and weld sequence", titleMm, true, width)
	p.draw.Add(Text{YMm: -7, SizeMm: size, Bold: true, Content: title})
	y := -10.0
	facts := joined("   ·   ", plan.Job, strconv.Itoa(len(plan.Joints))+" steps, in this order", "Tick each step when it is done")
	for _, line := range wrap(facts, 3.8, false, width) {
		y -= 3.8 * leading
		p.draw.Add(Text{YMm: y + 1.2, SizeMm: 3.8, Content: line})
	}
	y -= 1.2
	p.draw.Add(segment(0, y, width, y, thickMm))
	p.height = -y + 3
	return p
}

func orderTable(plan *layout.Plan) table {
	t := table{title: "Order of assembly", rowMm: 9, columns: []column{
		{head: "Step", align: Centre, bold: true, size: 5.2},
		{head: "Kind", bold: true, size: 3.8},
		{head: "What", flex: true, size: 3.8},
		{head: "Hold before going on", flex: true},
		{head: "Mass then", align: Right},
		{head: "Done", align: Centre, least: 11, tick: true},
	}}
	for _, j := range plan.Joints {
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
			if j.MassKg > layout.LiftKg {
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
func barPlans(plan *layout.Plan, width float64) []piece {
	if len(plan.Cuts) == 0 {
		return nil
	}
	pieces := []piece{heading("Bars to saw, the first cut at the left", width)}
	said := ""
	for _, row := range plan.Cuts {
		lead := fmt.Sprintf("Bars of %s, saw cut %s, %s off the first end (%s).", sized(row.BarMm, plan.Units), sized(row.KerfMm, plan.Units), sized(row.TrimMm, plan.Units), row.Source)
		if lead != said {
			for _, line := range paragraph("", lead, 3.2, false, width) {
				line.keep = true
				pieces = append(pieces, line)
			}
			pieces = append(pieces, space(1.5))
			said = lead
		}
		for _, bar := range row.Bars {
			pieces = append(pieces, barPlan(row, bar, plan.Units, width)...)
		}
	}
	return append(pieces, space(3))
}

// barPlan draws one bar and lists its pieces.
func barPlan(row layout.CutRow, bar layout.CutBar, units parts.Units, width float64) []piece {
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
func kindWord(j *layout.JointPlan) string { return strings.ToUpper(j.Kind) }

// jointSheets draws one joint: what goes where, the numbers, how it lies on
// the clock, what to do and what to check.
func jointSheets(plan *layout.Plan, j *layout.JointPlan, paper frame) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: sequenceName, name: "Step " + strconv.Itoa(j.N) + ": " + j.Kind, scale: "not to scale"}
		if page == 0 {
			return s, jointHead(j, len(plan.Joints), paper.body().width())
		}
		return s, runningHead("Step "+strconv.Itoa(j.N)+" "+kindWord(j)+": "+j.Title, "continued", paper.body().width())
	})
	for _, problem := range j.Problems {
		f.add(cautionBox("Not right yet: "+problem+".", f.width()), space(1.5))
	}
	f.add(bigNumbers(keyNumbers(j, plan.Units), f.width()), space(2))
	share := 0.29
	if j.Weld != nil && len(j.Placed) > 0 {
		share = 0.23 // leaves room for the weld's own pictures on the page
	}
	f.add(stackPictures(plan, j, f.width(), f.body.height()*share)...)
	if len(j.Placed) > 0 && j.Weld != nil {
		f.add(panelRows(weldPanels(j, plan.Units), f.width())...)
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
	f.table(boltTable(j, plan.Units))
	f.table(trapTable(j))
	f.add(notes("So that it cannot go wrong", remedies(j), f.width())...)
	f.table(goOnTable(j))
	f.table(figureTable(j))
	return f.sheets
}

// jointHead is the head of a joint's first sheet: the step's number large in
// a box, the kind of joint, and what is joined.
func jointHead(j *layout.JointPlan, of int, width float64) piece {
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
		if j.MassKg > layout.LiftKg {
			text += ": LIFT"
		}
		text, at := shrink(text, headMm, true, width-x-textWidth(kindWord(j), 10, true)-14)
		p.draw.Add(Text{XMm: width, YMm: -7, SizeMm: at, Bold: true, Align: Right, Content: text})
		if j.MassKg > layout.LiftKg {
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

// keyNumber is a number to read from across the bench.
type keyNumber struct{ label, value, rest string }

// keyNumbers are the few numbers of a joint that the hands need.
func keyNumbers(j *layout.JointPlan, units parts.Units) []keyNumber {
	var out []keyNumber
	add := func(label, value, rest string) { out = append(out, keyNumber{label, value, rest}) }
	switch {
	case j.Press != nil:
		p := j.Press
		force := func() {
			rest := "at the end of travel"
			if p.ShopPressN > 0 {
				rest = "the shop's press: " + trimmed(p.ShopPressN/1000, 0) + " kN"
			}
			add("Press force", span2(p.ForceN.Min/1000, p.ForceN.Max/1000, 1)+" kN", rest)
		}
		heat := func() {
			add("Heat the hub to", trimmed(p.HeatHubC, 0)+" °C", "clearance "+sized(p.ClearanceMm, units))
		}
		switch p.Method {
		case "heat":
			heat()
		case "cool":
			add("Cool the shaft to", trimmed(p.CoolShaftC, 0)+" °C", "clearance "+sized(p.ClearanceMm, units))
		default:
			force()
			heat()
			out[1].label = "Or heat the hub to"
		}
		value, other := smallRange(p.InterferenceMm, units)
		add("Interference", value, joined(" ", other, "on diameter"))
		add("Lead-in", sized(p.LeadInMm, units)+" × "+degrees(p.LeadInDeg), "on the edge that enters")
	case j.Weld != nil:
		w := j.Weld
		if w.Designation != "" {
			add("Fillet", w.Designation, "leg "+short(w.LegMm, units)+", throat "+sized(w.ThroatMm, units))
		} else {
			rest := ""
			if w.BevelDeg > 0 {
				rest = degrees(w.BevelDeg) + ", root face " + sized(w.RootFaceMm, units)
			}
			add("Butt", w.Symbol, rest)
		}
		add("Gap", sized(w.GapMm, units), "when set up")
		if n := len(w.TacksDeg); n > 0 {
			add("Tacks", strconv.Itoa(n)+" × "+sized(w.TackLengthMm, units), "in the order shown")
		}
		add("Runs", strconv.Itoa(w.Runs), w.Process+", buy "+trimmed(w.BuyKg, 2)+" kg")
	case j.Bolt != nil:
		b := j.Bolt
		add("Bolts", strconv.Itoa(b.Count)+" × "+b.Ordered, joined(", ", b.Class, b.Head+" head"))
		if b.Ordered == "" {
			out[0].value = strconv.Itoa(b.Count) + " × " + b.Size
		}
		if b.Class == "" {
			out[0].label, out[0].rest = "Studs", "made here, a nut at each end"
		}
		if b.TorqueNm > 0 {
			value, rest := trimmed(b.TorqueNm, 0)+" N m", span2(b.TorqueRangeNm.Min, b.TorqueRangeNm.Max, 0)+" by scatter"
			if units == parts.Inches {
				value, rest = trimmed(b.TorqueNm/nmPerLbFt, 0)+" lb ft", value+"; "+rest
			}
			add("Torque", value, rest)
		}
		add("Thread engaged", sized(b.EngagementMm, units), "needs "+sized(b.NeedMm, units))
	case j.Bearing != nil:
		b := j.Bearing
		if b.HasEndFloat {
			label, rest := "End float", "dial gauge on the shaft end"
			if b.EndFloatMm.Max <= 0 {
				label, rest = "Preload", "tighter than no play"
			}
			value, other := smallRange(b.EndFloatMm, units)
			add(label, value, joined(", ", other, rest))
		}
		if b.HeatConeC > 0 {
			add("Cone goes on at", trimmed(b.HeatConeC, 0)+" °C", "")
		}
		add("Sleeve for the cone", "Ø"+short(b.ConeSleeveInMm, units)+" / "+short(b.ConeSleeveOutMm, units), "inside / outside, "+lengthWord(units))
		add("Ring for the cup", "Ø"+short(b.CupRingInMm, units)+" / "+short(b.CupRingOutMm, units), "inside / outside, "+lengthWord(units))
		add("Grease", trimmed(b.GreaseG, 0)+" g", "when regreasing")
	}
	return out
}

// nmPerLbFt is a pound-force foot in newton metres (0.45359237 kg, standard
// gravity, 1 ft = 0.3048 m: exact by definition, rounded).
const nmPerLbFt = 1.3558179483

// smallRange writes a range of hundredths: in micrometres, or in inches with
// the micrometres for the line below.
func smallRange(r layout.Range, units parts.Units) (value, other string) {
	um := span2(r.Min*1000, r.Max*1000, 0) + " µm"
	if units == parts.Inches {
		return span2(r.Min/mmPerInch, r.Max/mmPerInch, 4) + " in", um
	}
	return um, ""
}

// sized writes a length with its unit.
func sized(mm float64, units parts.Units) string {
	if units == parts.Inches {
		return short(mm, units) + " in"
	}
	return short(mm, units) + " mm"
}

// span2 writes a range without a unit.
func span2(lo, hi float64, decimals int) string {
	a, b := trimmed(lo, decimals), trimmed(hi, decimals)
	switch {
	case a == b:
		return a
	case strings.HasPrefix(a, "-") || strings.HasPrefix(b, "-"):
		return a + " to " + b
	}
	return a + "–" + b
}

// bigNumbers sets numbers in a row of boxes.
func bigNumbers(list []keyNumber, width float64) piece {
	var p piece
	if len(list) == 0 {
		return p
	}
	perRow := min(len(list), max(1, int(width/38)))
	rows := (len(list) + perRow - 1) / perRow
	perRow = (len(list) + rows - 1) / rows
	const high = 18.5
	w := width / float64(perRow)
	for i, k := range list {
		x, y := w*float64(i%perRow), -high*float64(i/perRow)
		p.draw.Add(box(rect{x, y - high, x + w, y}, 0.5))
		label, size := shrink(k.label, textMm, false, w-4)
		p.draw.Add(Text{XMm: x + 2, YMm: y - 4.4, SizeMm: size, Content: label})
		value, size := shrink(k.value, 6.6, true, w-4)
		p.draw.Add(Text{XMm: x + w/2, YMm: y - 11, SizeMm: size, Bold: true, Align: Centre, Content: value})
		rest, size := shrink(k.rest, 3.2, false, w-4)
		if k.rest != "" {
			p.draw.Add(Text{XMm: x + w/2, YMm: y - 16.2, SizeMm: size, Align: Centre, Content: rest})
		}
	}
	p.height = high * float64(rows)
	return p
}

// stepBox draws one thing to do: number and tick box at the left, what to do,
// the caution, and where it says hold a box to sign.
func stepBox(step layout.JointStep, kind string, width float64) piece {
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

// goOnTable lists what to check before the next joint.
func goOnTable(j *layout.JointPlan) table {
	t := table{title: "Check before going on", rowMm: 9, columns: []column{
		{head: "What", flex: true, bold: true},
		{head: "Wanted", flex: true, firm: 24},
		{head: "Limits", flex: true, bold: true},
		{head: "With", flex: true},
		{head: "Measured", align: Centre, least: 22},
		{head: "Right", align: Centre, least: 11, tick: true},
	}}
	for _, c := range j.Checks {
		t.rows = append(t.rows, []string{upperFirst(c.What), c.Wanted, c.Limits, c.Gauge, "", ""})
	}
	return t
}

func figureTable(j *layout.JointPlan) table {
	t := table{title: "All numbers of this joint", columns: []column{
		{head: "What", size: 2.9, firm: 40, flex: true},
		{head: "Value", flex: true, bold: true, size: 2.9, firm: 75},
		{head: "From", flex: true, size: smallMm, spare: true},
	}}
	for _, fig := range j.Figures {
		t.rows = append(t.rows, []string{upperFirst(fig.Label), fig.Value, fig.Source})
	}
	return t
}

func boltTable(j *layout.JointPlan, units parts.Units) table {
	t := table{title: "Bolts: lengths in " + lengthWord(units) + ", preload in kN, torque in N m", columns: []column{
		{head: "No. off", align: Centre, bold: true},
		{head: "Order", bold: true, size: 4.2, least: 24},
		{head: "Grip", flex: true, least: 30},
		{head: "Engaged / needed", align: Centre, size: 3.8},
		{head: "Spare thread", align: Centre, spare: true},
		{head: "Stands out", align: Centre, spare: true},
		{head: "Preload", align: Centre, spare: true},
		{head: "Torque", align: Centre, spare: true, bold: true, size: 3.8},
		{head: "Friction", align: Centre, spare: true},
	}}
	b := j.Bolt
	if b == nil {
		return t
	}
	var grip []string
	for _, g := range b.Grip {
		grip = append(grip, g.What+" "+short(g.ThickMm, units))
	}
	grip = append(grip, "together "+short(b.GripMm, units))
	row := []string{strconv.Itoa(b.Count), joined("\n", b.Ordered, classOf(b)), strings.Join(grip, "\n"),
		short(b.EngagementMm, units) + " / " + short(b.NeedMm, units), lengthIf(b.SpareMm, units), lengthIf(b.ProtrusionMm, units), "", "", ""}
	if b.TorqueNm > 0 {
		row[6] = trimmed(b.PreloadN/1000, 1) + "\n" + span2(b.PreloadRangeN.Min/1000, b.PreloadRangeN.Max/1000, 1)
		row[7] = trimmed(b.TorqueNm, 0) + "\n" + span2(b.TorqueRangeNm.Min, b.TorqueRangeNm.Max, 0)
		row[8] = "K = " + trimmed(b.K, 3)
	}
	t.rows = append(t.rows, row)
	return t
}

// classOf is a bolt's class and head; a stud's has neither.
func classOf(b *layout.BoltPlan) string {
	if b.Class == "" {
		return "stud"
	}
	return joined(" ", b.Class, b.Head)
}

// lengthIf writes a length, nothing where there is none.
func lengthIf(mm float64, units parts.Units) string {
	if mm <= 0 {
		return ""
	}
	return short(mm, units)
}

// trapTable lists the wrong ways in which the holes still match.
func trapTable(j *layout.JointPlan) table {
	t := table{
		title:   "Traps: it also fits like this, and is wrong",
		columns: []column{{head: "Turned clockwise by", align: Centre, bold: true, size: 4.2, firm: 52}, {head: "Then", flex: true}},
	}
	for _, trap := range j.Traps {
		turn := degrees(trap.TurnDeg)
		if trap.Flip {
			turn += ", wrong way round"
			if trap.TurnDeg == 0 {
				turn = "wrong way round"
			}
		}
		var lines, loose []string
		for _, out := range trap.Out {
			if name, ok := strings.CutSuffix(out, " elsewhere (no rule says where it belongs)"); ok {
				loose = append(loose, name)
				continue
			}
			lines = append(lines, upperFirst(withHour(out)))
		}
		if len(loose) > 0 {
			lines = append(lines, "Elsewhere, with no rule to say where: "+strings.Join(loose, ", "))
		}
		then := strings.Join(lines, "\n")
		if i := slices.IndexFunc(t.rows, func(row []string) bool { return row[1] == then }); i >= 0 {
			t.rows[i][0] += "\n" + turn
			continue
		}
		t.rows = append(t.rows, []string{turn, then})
	}
	return t
}

var clockAngle = regexp.MustCompile(` at ([0-9.]+)°`)

// withHour says the first clock angle of a text by the hours too.
func withHour(text string) string {
	m := clockAngle.FindStringSubmatchIndex(text)
	if m == nil {
		return text
	}
	deg, err := strconv.ParseFloat(text[m[2]:m[3]], 64)
	if err != nil {
		return text
	}
	return text[:m[1]] + " (" + oclock(deg) + ")" + text[m[1]:]
}

// remedies are those that no step of the joint has said already.
func remedies(j *layout.JointPlan) []string {
	var out []string
	for _, r := range j.Remedies {
		if !slices.ContainsFunc(j.Steps, func(s layout.JointStep) bool { return slices.Contains(s.Do, r) }) {
			out = append(out, r)
		}
	}
	return out
}

// oclock says a clock angle by the hours, "4 o'clock"; between hours the
// nearer half, "half past 4".
func oclock(deg float64) string {
	halves := int(math.Round(deg/15)) % 24
	hour := halves / 2
	if hour == 0 {
		hour = 12
	}
	if halves%2 == 1 {
		return fmt.Sprintf("half past %d", hour)
	}
	return fmt.Sprintf("%d o’clock", hour)
}
