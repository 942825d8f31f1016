package sheets

import (
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
	"centrepop/templates/picture"
)

// PartsName heads the parts' sheets in the index and the bookmarks.
const PartsName = "Parts: operations and records"

// PartSheet is the name of a part's sheet.
const PartSheet = "Operations and record"

// Sizes of the part sheets, in millimetres.
const (
	turnedMm    = 100.0 // the most height of a turned part's pictures
	flatMm      = 78.0  // and of a flat part's
	besideRows  = 16    // the longest record that stands beside the holes
	mostPieces  = 4     // pieces that get a column of their own
	shareRoomMm = 6.0   // between parts that share a page
)

// Parts draws the sheets of the parts, one after the other: pictures with
// sizes, operations to tick, hole tables and the record to fill in. A part that
// fits under the one before shares its page. Missing are notes on templates
// that cannot be printed, by part name.
func Parts(pl *plan.Plan, list []*plan.PartPlan, paper draw.Frame, missing map[string][]string) []*draw.Sheet {
	var out []*draw.Sheet
	var open *draw.Flow
	for _, part := range list {
		alone, dense := tightest(pl, part, paper, missing[part.Name])
		used := alone.Body.Y1 - min(alone.Lowest, alone.Body.Y1)
		if open != nil && len(alone.Sheets) == 1 && open.Left() >= used+shareRoomMm {
			open.Columns(1)
			open.Skip(shareRoomMm)
			open.Add(partHead(part, open.Width()))
			dense.set(open, pl, part, missing[part.Name])
			last := open.Sheets[len(open.Sheets)-1]
			last.Parts = append(last.Parts, part.Title)
			last.Part += ", " + part.Title
			last.Starts = append(last.Starts, part.Title)
			continue
		}
		open = alone
		open.Columns(1)
		out = append(out, alone.Sheets...)
	}
	return out
}

// density is how close a part's sheets are set: 1 is roomy.
type density float64

// em is a size of text at a density, not under 7.5 pt.
func (d density) em(mm float64) float64 { return max(2.65, mm*float64(d)) }

// bodyMm is the em of operations, smallMm that of what stands beside them and
// of tables.
func (d density) bodyMm() float64  { return d.em(3.3) }
func (d density) smallMm() float64 { return d.em(2.9) }

// tight sets the lines of a table close where the density asks for it.
func (d density) tight(t draw.Table) draw.Table {
	t.Tight = d < 0.9
	return t
}

// tightest sets a part's sheets as roomy as the fewest pages allow.
func tightest(pl *plan.Plan, part *plan.PartPlan, paper draw.Frame, missing []string) (*draw.Flow, density) {
	var best *draw.Flow
	var at density
	for _, d := range []density{1, 0.85, 0.7, 0.5} {
		f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) { return partPage(part, paper, page) })
		d.set(f, pl, part, missing)
		if best == nil || len(f.Sheets) < len(best.Sheets) {
			best, at = f, d
		}
	}
	return best, at
}

// partPage is a new page of a part with its head.
func partPage(part *plan.PartPlan, paper draw.Frame, page int) (*draw.Sheet, draw.Piece) {
	s := &draw.Sheet{Frame: paper, Part: part.Title, Parts: []string{part.Title}, Name: PartSheet, Scale: "not to scale"}
	if page == 0 {
		s.Starts = []string{part.Title}
		return s, partHead(part, paper.Body().Width())
	}
	return s, draw.RunningHead(part.Title, "operations and record, continued", paper.Body().Width())
}

// partHead is the head of a part.
func partHead(part *plan.PartPlan, width float64) draw.Piece {
	return picture.Head(part, "make "+strconv.Itoa(part.Quantity), width)
}

// set sets all of a part but its head.
func (d density) set(f *draw.Flow, pl *plan.Plan, part *plan.PartPlan, missing []string) {
	f.Add(d.views(part, f.Width())...)
	if text := otherSizes(part); text != "" {
		f.Add(draw.Paragraph("", text, d.smallMm(), false, f.Width())...)
		f.Add(draw.Space(1.5))
	}
	for _, note := range slices.Concat(part.Notes, missing) {
		f.Add(draw.Paragraph("–", note, d.smallMm(), false, f.Width())...)
	}
	f.Add(draw.Space(1.5))
	f.Table(d.tight(d.operationTable(part)))
	f.Add(d.measuredLines(part, f.Width())...)
	left := d.partTables(pl, part)
	beside := len(left) > 0 && len(part.Checks) <= besideRows && f.Width() >= 150
	record := d.recordTable(pl, part, !beside)
	end := d.verdict(part.Quantity, f.Width())
	record.Foot = end.Height
	if len(left) > 0 && f.Width() >= 150 {
		if f.Left() < 40 {
			f.TurnPage()
		}
		f.Columns(2)
	}
	total, used := 0.0, 0.0
	for _, t := range left {
		total += d.height(t, f.Width())
	}
	for i, t := range left {
		f.Table(d.tight(t))
		used += d.height(t, f.Width())
		// Where the record stands below, the tables share both columns.
		if !beside && f.Columns2() && f.Column() == 0 && used >= total*0.45 && i < len(left)-1 {
			f.TurnColumn()
			used = -total
		}
	}
	if beside && len(record.Rows) > 0 && f.Column() == 0 {
		f.TurnColumn()
	}
	if !beside {
		f.Columns(1)
	}
	f.Table(d.tight(record))
	f.Columns(1)
	if len(record.Rows) > 0 {
		f.Add(end)
	}
}

// height is about how tall a table is.
func (d density) height(t draw.Table, width float64) float64 {
	t = d.tight(t)
	return draw.Stack(t.Pieces(width)...).Height + 14
}

// views are the section with its sizes and the faces beside it.
func (d density) views(part *plan.PartPlan, width float64) []draw.Piece {
	faces := part.Faces
	if len(faces) > 2 {
		faces = faces[:2]
	}
	s := part.Section
	hasSection := s != nil && s.LengthMm > 0 && s.MaxMm > 0 && len(part.Dimensions) > 0
	most := flatMm * float64(d)
	if hasSection && !s.Flat {
		most = turnedMm * float64(d)
	}
	var panels []draw.Panel
	rest := width
	if len(faces) > 0 {
		column := !s.Flat && len(faces) == 2 // one above the other
		share := 0.62
		if hasSection && !s.Flat {
			share = 0.34
		}
		each := most
		if column {
			each = most / 2
		}
		var stack []draw.Panel
		for _, face := range faces {
			room := width * share
			if !column {
				room /= float64(len(faces))
			}
			h := min(each-picture.TopPadMm-picture.CaptionMm, (room-6)/picture.Aspect(face))
			stack = append(stack, picture.Face(face, nil, h*picture.Aspect(face), h))
		}
		if column {
			stack = []draw.Panel{over(stack[0], stack[1])}
		}
		for _, p := range stack {
			rest -= p.Width + 2
		}
		panels = stack
	}
	if hasSection {
		panels = append([]draw.Panel{picture.Dimensioned(part, rest, most)}, panels...)
	}
	panels = append(cuts(part, rest, most), panels...)
	if len(panels) == 0 {
		return nil
	}
	var row draw.Piece
	draw.PlaceRow(&row, panels, width)
	return []draw.Piece{row, draw.Space(2)}
}

// cuts are a folded part cut across, one above the other.
func cuts(part *plan.PartPlan, width, most float64) []draw.Panel {
	var out []draw.Panel
	for i := range part.Profiles {
		p := picture.Folded(&part.Profiles[i], width, most/float64(len(part.Profiles)))
		if i > 0 {
			p = over(out[0], p)
		}
		out = []draw.Panel{p}
	}
	return out
}

// over sets a panel above another.
func over(a, b draw.Panel) draw.Panel {
	p := draw.Panel{Width: max(a.Width, b.Width), Height: a.Height + b.Height}
	p.Draw.Place(&a.Draw, (p.Width-a.Width)/2, 0)
	p.Draw.Place(&b.Draw, (p.Width-b.Width)/2, -a.Height)
	return p
}

// drawnKinds are the features whose sizes stand in the dimensions of the
// section.
var drawnKinds = []plan.FeatureKind{plan.StepFeature, plan.OutlineFeature, plan.BoreFeature, plan.LengthFeature, plan.ThicknessFeature, plan.HeightFeature}

// otherSizes are the features that the dimensions do not show, in a line.
func otherSizes(part *plan.PartPlan) string {
	var texts []string
	for _, ft := range part.Features {
		size := figures.Joined(" ", ft.Size, ft.Limits)
		if len(part.Dimensions) > 0 && !picture.Crowded(part) && slices.Contains(drawnKinds, ft.Kind) {
			size = ""
		}
		if ft.Face != "" || ft.Kind == plan.RadialFeature {
			continue // in the tables of holes
		}
		if text := figures.Joined(", ", size, ft.Note); text != "" {
			texts = append(texts, ft.Name+": "+text)
		}
	}
	if len(texts) == 0 {
		return ""
	}
	return strings.Join(texts, ".  ") + "."
}

// operationTable has a row for each operation, with a box to tick for each
// piece.
func (d density) operationTable(part *plan.PartPlan) draw.Table {
	t := draw.Table{Columns: []draw.Column{
		{Head: "", Align: draw.Centre, Bold: true, Size: 4.6 * float64(d)},
		{Head: "Machine", Bold: true, Size: d.smallMm()},
		{Head: "Do", Flex: true, Size: d.em(3.2), Least: 60, Most: 96},
		{Head: "Hold · tool · speed", Flex: true, Size: d.em(2.8), Least: 40, Most: 62},
	}}
	pieces := pieceHeads(part.Quantity, "done")
	for _, head := range pieces {
		t.Columns = append(t.Columns, draw.Column{Head: head, Align: draw.Centre, Least: 10, Tick: true, Size: d.smallMm()})
	}
	for _, op := range part.Operations {
		do := []string{draw.BoldLine + op.Title}
		if len(op.Do) > 0 {
			do = append(do, strings.Join(op.Do, " "))
		}
		if len(op.Limits) > 0 {
			do = append(do, draw.BoldLine+strings.Join(op.Limits, "   "))
		}
		how := []string{figures.Joined(" · ", op.Holding, op.Tool, op.Speed, op.Gauge)}
		if op.Caution != "" {
			how = append(how, "⚠ "+op.Caution)
		}
		row := []string{strconv.Itoa(op.N), strings.ToUpper(op.Machine), strings.Join(do, "\n"), strings.Join(how, "\n")}
		t.Rows = append(t.Rows, append(row, make([]string, len(pieces))...))
	}
	return t
}

// pieceHeads are the heads of the columns of the pieces.
func pieceHeads(quantity int, single string) []string {
	switch {
	case quantity <= 1:
		return []string{single}
	case quantity > mostPieces:
		return []string{"all " + strconv.Itoa(quantity)}
	}
	var out []string
	for i := range quantity {
		out = append(out, "pc "+strconv.Itoa(i+1))
	}
	return out
}

// measuredLines are the sums to fill in where a bore is turned to a measured
// counterpart, a line for each piece.
func (d density) measuredLines(part *plan.PartPlan, width float64) []draw.Piece {
	var out []draw.Piece
	for _, l := range part.Ladders {
		out = append(out, draw.Paragraph("", l.Note, d.smallMm(), false, width)...)
		for _, head := range pieceHeads(part.Quantity, "") {
			p := draw.Piece{Height: 8}
			x := 0.0
			put := func(text string, bold bool) {
				p.Draw.Add(draw.Text{XMm: x, YMm: -5.6, SizeMm: d.bodyMm(), Bold: bold, Content: text})
				x += draw.TextWidth(text, d.bodyMm(), bold) + 1
			}
			blank := func() {
				p.Draw.Add(draw.Segment(x, -6.2, x+24, -6.2, draw.ThinMm))
				x += 25
			}
			put(figures.Joined(": ", head, l.Counterpart), false)
			blank()
			put(l.Rule+" =", true)
			blank()
			put("for the "+l.Feature, false)
			if x <= width {
				out = append(out, p)
			}
		}
	}
	if len(out) > 0 {
		out = append(out, draw.Space(3))
	}
	return out
}
