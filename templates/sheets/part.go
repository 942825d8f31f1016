package sheets

import (
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// PartsName heads the parts' sheets in the index and the bookmarks.
const PartsName = "Parts: operations and records"

// PartSheet is the name of a part's sheet.
const PartSheet = "Operations and record"

// Sizes of the part sheets, in millimetres.
const (
	turnedMm    = 92.0 // the most height of a turned part's pictures
	flatMm      = 72.0 // and of a flat part's
	plainMm     = 56.0 // and of one without holes that has few sizes
	fewSizes    = 8
	longOver    = 4.0  // a part is long over so many diameters
	mostPieces  = 4    // pieces that get a column of their own
	shareRoomMm = 3.5  // between parts that share a page
	overMm      = 14.0 // that the tables beside the views may be taller
	operationMm = 4.2  // the em of the numbers of operations
)

// partHead is the head of a part; low where it stands under another.
func partHead(pl *plan.Plan, part *plan.PartPlan, width float64, low bool) draw.Piece {
	head := picture.Head
	if low {
		head = picture.LowHead
	}
	return head(part, words.Writer{Units: pl.Units}, "make "+strconv.Itoa(part.Quantity), width)
}

// remarks are what the views do not show, each a few lines.
func (d density) remarks(part *plan.PartPlan, missing []string, width float64) [][]draw.Piece {
	var out [][]draw.Piece
	if text := otherSizes(part); text != "" {
		out = append(out, append(draw.Paragraph("", text, d.smallMm(), false, width), draw.Space(1)))
	}
	out = append(out, seq.Map(part.Cautions, func(note string) []draw.Piece { return draw.Paragraph("⚠", note, d.smallMm(), true, width) })...)
	for _, note := range slices.Concat(part.Notes, missing) {
		out = append(out, draw.Paragraph("–", note, d.smallMm(), false, width))
	}
	return out
}

// views are the section with its sizes and the faces beside it, at a scale of the largest.
func views(part *plan.PartPlan, scale, width float64) []draw.Piece {
	faces, s := part.Faces[:min(2, len(part.Faces))], part.Section
	sized := len(part.Dimensions) > 0
	most, rest := highestMm(part, sized)*scale, width
	var panels []draw.Panel
	if len(faces) > 0 {
		each, share := most, faceShare(part, sized, width)
		if sized { // as tall as its sizes make it at least
			section := picture.Dimensioned(part, width*(1-share), most)
			each = max(each, section.Height)
			if s.Flat && len(part.Profiles) == 0 {
				share = 1 - (section.Width+4)/width
			}
		}
		panels = facePanels(faces, width*share, each, !s.Flat && len(faces) == 2)
		rest -= seq.Sum(panels, func(p draw.Panel) float64 { return p.Width + 2 })
	}
	if sized {
		panels = slices.Insert(panels, 0, picture.Dimensioned(part, rest, most))
	}
	panels = append(cuts(part, rest, most), panels...)
	if len(panels) == 0 {
		return nil
	}
	var row draw.Piece
	draw.PlaceRow(&row, panels, width)
	return []draw.Piece{row, draw.Space(2 * scale)}
}

// highestMm is the most height of a part's views.
func highestMm(part *plan.PartPlan, sized bool) float64 {
	switch {
	case !sized || part.Section.Flat:
		return flatMm
	case len(part.Faces) == 0 && len(part.Dimensions) < fewSizes:
		return plainMm
	}
	return turnedMm
}

// faceShare is the share of the width that a part's faces take.
func faceShare(part *plan.PartPlan, sized bool, width float64) float64 {
	share, s := 0.62, part.Section
	if sized && !s.Flat {
		share = 0.34
	}
	if sized && s.LengthMm > longOver*2*s.MaxMm { // whose length has the sizes
		share = 0.2
	}
	if len(part.Profiles) > 0 { // beside its cuts and their sizes
		share = min(share, 1-picture.FoldedMm/width)
	}
	return share
}

// facePanels are faces in a width and height, one above the other in a column or beside it.
func facePanels(faces []*plan.Face, width, each float64, column bool) (out []draw.Panel) {
	if column {
		each /= 2
	} else {
		width /= float64(len(faces))
	}
	for _, face := range faces {
		h := min(each-picture.TopPadMm-picture.CaptionMm, (width-2*picture.FacePadMm)/picture.Aspect(face))
		out = append(out, picture.Face(face, h))
	}
	if column {
		out = []draw.Panel{over(out[0], out[1])}
	}
	return out
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
	width := max(a.Width, b.Width)
	return draw.Panel{Width: width, Height: a.Height + b.Height, Later: func() (d draw.Drawing) {
		d.Place(a.Drawn(), (width-a.Width)/2, 0)
		d.Place(b.Drawn(), (width-b.Width)/2, -a.Height)
		return d
	}}
}

// drawnKinds are the features whose sizes stand in the dimensions of the
// section.
var drawnKinds = []plan.FeatureKind{plan.StepFeature, plan.OutlineFeature, plan.BoreFeature, plan.LengthFeature, plan.ThicknessFeature, plan.HeightFeature}

// otherSizes are the features that the dimensions do not show, in a line.
func otherSizes(part *plan.PartPlan) string {
	var texts []string
	for _, ft := range part.Features {
		size := ft.Size
		if !ft.Within {
			size = words.Join(" ", size, ft.Limits)
		}
		if len(part.Dimensions) > 0 && !picture.Crowded(part) && slices.Contains(drawnKinds, ft.Kind) {
			size = ""
		}
		if ft.Face != "" || ft.Kind == plan.RadialFeature || saidInRows(part, ft) {
			continue // in the tables of holes or in the row of its operation
		}
		if text := words.Join(", ", size, ft.Note); text != "" {
			texts = append(texts, ft.Name+": "+text)
		}
	}
	return words.When(len(texts) != 0, strings.Join(texts, ".  ")+".")
}

// saidInRows tells whether the rows of the operations say all of a feature that
// the pictures leave out.
func saidInRows(part *plan.PartPlan, ft plan.Feature) bool {
	if part.Kind == string(parts.Tube) || picture.Crowded(part) {
		return false
	}
	switch ft.Kind {
	case plan.ChamferFeature, plan.KeywayFeature:
		return true
	case plan.StepFeature:
		return !part.Section.Flat
	case plan.ThicknessFeature: // in the head of the sheet and in the record
		return ft.Note == ""
	}
	return false
}

// operationTable has a row for each operation, with a box to tick for each
// piece.
func (d density) operationTable(part *plan.PartPlan) draw.Table {
	t := draw.Table{Fit: true, RowMm: 5.8, Columns: []draw.Column{
		{Head: "", Align: draw.Centre, Bold: true, Size: d.em(operationMm)},
		{Head: "Machine", Bold: true, Size: d.smallMm()},
		{Head: "Do", Flex: true, Size: d.em(3.2), Least: 50},
		{Head: "Hold · tool · speed", Flex: true, Size: d.em(2.8), Least: 30},
	}}
	pieces := pieceHeads(part.Quantity, "done")
	for _, head := range pieces {
		t.Columns = append(t.Columns, draw.Column{Head: head, Align: draw.Centre, Least: 10, Tick: true, Size: d.smallMm()})
	}
	for _, op := range part.Operations {
		do := words.Join("  ", draw.Bold(op.Title+"."), strings.Join(op.Do, " "), draw.Bold(strings.Join(op.Limits, "; ")))
		how := words.Join(" · ", op.Holding, op.Tool, op.Speed, op.Gauge)
		if op.Caution != "" {
			how = words.Join("  ", how, draw.Bold("⚠ "+op.Caution))
		}
		row := []string{strconv.Itoa(op.N), strings.ToUpper(string(op.Machine)), do, how}
		t.Rows = append(t.Rows, append(row, make([]string, len(pieces))...))
	}
	return t
}

func pieceHeads(quantity int, single string) []string {
	switch {
	case quantity <= 1:
		return []string{single}
	case quantity > mostPieces:
		return []string{"all " + strconv.Itoa(quantity)}
	}
	out := make([]string, quantity)
	for i := range out {
		out[i] = "pc " + strconv.Itoa(i+1)
	}
	return out
}

// measuredLines are the sums to fill in where a bore is turned to a measured
// counterpart: a line with a place for each piece, or more where it is too narrow.
func (d density) measuredLines(part *plan.PartPlan, width float64) []draw.Piece {
	var out []draw.Piece
	for _, l := range part.Ladders {
		text := l.Feature + " = " + words.Join(" ", l.Counterpart, l.Rule) + ". " + l.Note
		out = append(out, draw.Paragraph("", text, d.smallMm(), false, width)...)
		p, x := draw.Piece{Height: 7}, 0.0
		put := func(text string, blankMm float64) {
			p.Draw.Add(draw.Text{XMm: x, YMm: -5.2, SizeMm: d.bodyMm(), Bold: true, Content: text})
			x += draw.TextWidth(text, d.bodyMm(), true) + 1.5
			p.Draw.Add(draw.Segment(x, -5.8, x+blankMm, -5.8, draw.ThinMm))
			x += blankMm + 1.5
		}
		for _, head := range pieceHeads(part.Quantity, "") {
			if x > width/2+1 {
				out, p, x = append(out, p), draw.Piece{Height: 7}, 0
			}
			put(words.Join(": ", head, "measured"), 22)
			put("so "+l.Feature, 22)
			x = max(x, width/2)
		}
		out = append(out, p, draw.Space(2))
	}
	return out
}

// said are remarks one below the other.
func (d density) said(remarks [][]draw.Piece) []draw.Piece {
	if len(remarks) == 0 {
		return nil
	}
	return append(slices.Concat(remarks...), draw.Space(1.5*d.pictures()))
}
