package sheets

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// partTables say where the holes are, and how to set out what is round or
// developed.
func (d density) partTables(pl *plan.Plan, part *plan.PartPlan, printed []string) []draw.Table {
	var out []draw.Table
	add := func(t draw.Table) {
		if len(t.Rows) > 0 {
			t.Compact = true
			out = append(out, t)
		}
	}
	for _, face := range part.Faces {
		holes := d.holeTable(face, pl.Units)
		chords := d.chordTable(face, pl.Units)
		if part.Knifed { // pins stretch it
			holes.Columns[6].Head, chords.Columns = "Punch Ø", chords.Columns[:2]
			for i := range chords.Rows {
				chords.Rows[i] = chords.Rows[i][:2]
			}
		}
		if d < 0.9 && len(holes.Rows) > 0 { // the distances in a line
			holes.Lead += chordLine(chords)
		}
		add(holes)
		add(d.slotTable(face, pl.Units))
		if d >= 0.9 || len(holes.Rows) == 0 {
			add(chords)
		}
	}
	add(d.radialTable(part, pl.Units))
	for dev := range seq.Refs(part.Developments) {
		if dev.Kind == plan.WrapPattern {
			continue // its arcs stand in the table of what is on the outside
		}
		for _, t := range patternTables(dev, pl.Units, d.smallMm(), slices.Contains(printed, dev.Name)) {
			add(t)
		}
	}
	return out
}

// holeTable says where the holes are: from the centre and, unless the outline
// is round, from two edges.
func (d density) holeTable(face *plan.Face, units parts.Units) draw.Table {
	t := draw.Table{Title: words.Upper(face.Face) + " face: holes, x right, y to TOP, " + words.LengthWord(units), Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true, Size: d.em(3.4)},
		{Head: "Angle", Align: draw.Right, Size: d.smallMm()},
		{Head: "x", Align: draw.Right, Size: d.em(3.2), Bold: face.Round},
		{Head: "y", Align: draw.Right, Size: d.em(3.2), Bold: face.Round},
		{Head: "from " + face.FromX, Align: draw.Right, Size: d.em(3.2), Bold: true, Spare: true},
		{Head: "from " + face.FromY, Align: draw.Right, Size: d.em(3.2), Bold: true, Spare: true},
		{Head: "Drill Ø", Align: draw.Right, Size: d.smallMm()},
	}}
	short := func(mm float64) string { return words.Short(mm, units) }
	lead := seq.Map(face.Groups, func(g plan.Group) string {
		return words.Span(g.First, g.Count) + ": " + words.Join(", ", g.SizeText, g.DepthText, g.Extra, words.PitchCircle(g.PCDMm, g.PCDAboutMm, short)) + "."
	})
	t.Lead = strings.Join(append(lead, countedFrom(face, units)...), " ")
	for _, h := range face.Holes {
		row := []string{strconv.Itoa(h.N), words.Angle(h.AngleDeg),
			words.Fixed(h.XMm, units), words.Fixed(h.YMm, units), "", "", words.Short(h.DiameterMm, units)}
		if !face.Round {
			row[4], row[5] = words.Fixed(h.FromXMm, units), words.Fixed(h.FromYMm, units)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// countedFrom says where x and y are counted from where that is not the middle of what is drawn.
func countedFrom(face *plan.Face, units parts.Units) []string {
	if middle := face.MinMm.Plus(face.MaxMm); face.Round || math.Hypot(middle.XMm, middle.YMm) < 0.01 {
		return nil
	}
	if math.Hypot(face.MinMm.XMm, face.MinMm.YMm) < 0.01 {
		return []string{"x, y from the bottom left corner."}
	}
	return []string{"x, y from a point " + words.Fixed(-face.MinMm.XMm, units) + " from left, " + words.Fixed(-face.MinMm.YMm, units) + " from bottom."}
}

func (d density) slotTable(face *plan.Face, units parts.Units) draw.Table {
	t := draw.Table{Title: words.Upper(face.Face) + " face: slots, in " + words.LengthWord(units), Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true, Size: d.em(3.4)},
		{Head: "Width × length", Align: draw.Centre, Size: d.smallMm()},
		{Head: "Long axis", Align: draw.Right, Size: d.smallMm()},
		{Head: "One end x, y", Align: draw.Centre, Size: d.smallMm()},
		{Head: "Other end x, y", Align: draw.Centre, Size: d.smallMm()},
	}}
	if len(face.Holes) == 0 {
		t.Lead = strings.Join(countedFrom(face, units), "")
	}
	for _, s := range face.Slots {
		t.Rows = append(t.Rows, []string{strconv.Itoa(s.N),
			words.Short(s.WidthMm, units) + " × " + words.Short(s.LengthMm, units), words.Angle(s.TurnDeg),
			words.Fixed(s.EndsMm[0].XMm, units) + ", " + words.Fixed(s.EndsMm[0].YMm, units),
			words.Fixed(s.EndsMm[1].XMm, units) + ", " + words.Fixed(s.EndsMm[1].YMm, units)})
	}
	return t
}

func (d density) chordTable(face *plan.Face, units parts.Units) draw.Table {
	t := draw.Table{Title: words.Upper(face.Face) + " face: between holes", Columns: []draw.Column{
		{Head: "Holes", Align: draw.Centre, Bold: true, Size: d.smallMm(), Flex: true},
		{Head: "Dividers", Align: draw.Right, Size: d.em(3.2), Bold: true},
		{Head: "Over pins", Align: draw.Right, Size: d.smallMm()},
		{Head: "Between pins", Align: draw.Right, Size: d.smallMm()},
	}}
	for _, g := range face.Groups {
		for _, equal := range words.EqualChords(g.Chords) {
			c := equal[0]
			t.Rows = append(t.Rows, []string{words.Pairs(equal),
				words.Fixed(c.CentreMm, units), words.Fixed(c.OverMm, units), words.Fixed(c.BetweenMm, units)})
		}
	}
	return t
}

// chordLine says the distances between holes in a line.
func chordLine(t draw.Table) string {
	line := ""
	for _, row := range t.Rows {
		line += " " + row[0]
		for i, what := range []string{" dividers ", ", over pins ", ", between "}[:len(row)-1] {
			line += what + row[i+1]
		}
		line += "."
	}
	return line
}

func (d density) radialTable(part *plan.PartPlan, units parts.Units) draw.Table {
	head, back := "From FRONT", slices.ContainsFunc(part.Shown, func(r plan.RadialRow) bool { return r.Datum == "back" })
	if back {
		head = "From"
	}
	t := draw.Table{Title: "On the outside, in " + words.LengthWord(units), Columns: []draw.Column{
		{Head: "No.", Align: draw.Centre, Bold: true, Size: d.em(3.4)},
		{Head: "What", Flex: true, Size: d.em(2.7)},
		{Head: "Clock", Align: draw.Right, Size: d.em(3.2), Bold: true},
		{Head: "Arc from TOP", Align: draw.Right, Size: d.smallMm()},
		{Head: head, Align: draw.Right, Size: d.em(3.2), Bold: true},
		{Head: "On Ø", Align: draw.Right, Size: d.smallMm()},
	}}
	for _, r := range part.Shown {
		from := words.Fixed(r.DatumMm, units)
		if back {
			from = strings.ToUpper(r.Datum) + " " + from
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(r.N), words.Join(", ", r.Name, r.SizeText), words.Angle(r.ClockDeg),
			words.Fixed(r.ArcMm, units), from, words.Short(r.OutsideMm, units)})
	}
	return t
}

// recordTable is the inspection record: a row for each check, a column for
// each piece.
func (d density) recordTable(pl *plan.Plan, part *plan.PartPlan) draw.Table {
	t := draw.Table{Title: "Record, in " + words.LengthWord(pl.Units) + ": measure clean, deburred", Compact: true, Fit: true, RowMm: 5.6 * max(0.8, float64(d)), Columns: []draw.Column{
		{Head: "What", Flex: true, Size: d.smallMm()},
		{Head: "Limits", Flex: true, Bold: true, Size: d.em(3.1), Firm: 31},
	}}
	pieces := pieceHeads(part.Quantity, "measured")
	for _, head := range pieces {
		t.Columns = append(t.Columns, draw.Column{Head: head, Align: draw.Centre, Least: 12.5, Most: 13, Size: d.smallMm()})
	}
	var standards []string
	practice := ""
	for _, c := range part.Checks {
		what := words.Join(" ", c.What, c.Wanted)
		switch standard, other := words.Cited(c.Source, pl.Tolerance); {
		case standard != "" && !slices.Contains(standards, standard):
			standards = append(standards, standard)
		case other == words.NoSource:
			what, practice = what+" *", " * "+other+"."
		case other != "":
			what += " (" + other + ")"
		}
		what += words.When(c.Gauge != "" && c.Gauge != usualGauge, " · "+c.Gauge)
		t.Rows = append(t.Rows, append([]string{what, c.Limits}, make([]string, len(pieces))...))
	}
	if pl.Tolerance != "" {
		t.Lead = "Without a source: " + pl.Tolerance + "."
	}
	if len(standards) > 0 {
		t.Lead = words.Join(" ", t.Lead, "Others: "+strings.Join(standards, ", ")+".")
	}
	t.Lead = words.Join(" ", t.Lead, "Calipers unless a gauge is named.") + practice
	return t
}

// usualGauge is what measures a row of the record that names nothing else.
const usualGauge = "calipers"

// verdictMm is the height of the result of a piece.
const verdictMm = 5.7

// verdict is the foot of the record: result and signature of each piece.
func (d density) verdict(quantity int, width float64) draw.Piece {
	heads := pieceHeads(quantity, "")
	p := draw.Piece{Height: verdictMm*float64(len(heads)) + 0.8}
	for i, head := range heads {
		y := -4.6 - verdictMm*float64(i)
		var x float64
		if head != "" {
			p.Draw.Add(draw.Text{YMm: y, SizeMm: d.bodyMm(), Bold: true, Content: head})
			x = 13
		}
		for _, word := range []string{"Passed", "To rework", "Scrap"} {
			p.Draw.Add(draw.Box(draw.R(x, y-0.9, x+4.4, y+3.5), draw.LineMm))
			p.Draw.Add(draw.Text{XMm: x + 5.6, YMm: y, SizeMm: d.bodyMm(), Content: word})
			x += draw.TextWidth(word, d.bodyMm(), false) + 10
		}
		for j, label := range []string{"By", "Date", "Remarks"} {
			p.Draw.Add(draw.Text{XMm: x, YMm: y, SizeMm: d.bodyMm(), Content: label})
			x += draw.TextWidth(label, d.bodyMm(), false) + 1
			to := x + [3]float64{30, 18, width}[j]
			if to = min(to, width); to-x > 6 {
				p.Draw.Add(draw.Segment(x, y-0.6, to, y-0.6, draw.ThinMm))
			}
			x = to + 2
			if x > width-14 {
				break
			}
		}
	}
	return p
}
