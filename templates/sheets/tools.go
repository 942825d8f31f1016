package sheets

import (
	"cmp"
	"slices"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// ToolsName heads the sheets of the tools that the workshop makes for itself.
const ToolsName = "Tools to make: operations and records"

// toolDensity is how close the sheets of tools are set: small plain things.
const toolDensity density = 0.6

// pictureShare is how much of the width the picture of a tool takes, toolMm its
// height, toolGapMm the room to the next.
const (
	pictureShare = 0.26
	toolMm       = 28.0
	toolGapMm    = 1.8
)

// Tools draws the sheets of the tools that have one: of the same pieces as those of
// the parts, several on a page.
func Tools(pl *plan.Plan, paper draw.Frame) []draw.Chapter {
	list := seq.Keep(seq.Map(pl.Tools, func(t plan.ToolRow) *plan.PartPlan { return t.Sheet }), func(sheet *plan.PartPlan) bool { return sheet != nil })
	if len(list) == 0 {
		return nil
	}
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		return &draw.Sheet{Frame: paper, Name: ToolsName, Scale: "not to scale"}, draw.RunningHead(pl.Job, "tools to make for the joints, from scrap", paper.Body().Width())
	})
	lead := toolDensity.recordTable(pl, &plan.PartPlan{Quantity: 1}).Lead
	f.Add(draw.Paragraph("", lead, toolDensity.smallMm(), false, f.Width())...)
	pieces := seq.Map(list, func(t *plan.PartPlan) []draw.Piece { return toolDensity.tool(pl, t, f.Width()) })
	for n, page := range packed(pieces, f.Left(), f.Tallest()) {
		if n > 0 {
			f.TurnPage()
		}
		last := f.Sheets[len(f.Sheets)-1]
		for _, i := range page {
			f.Add(pieces[i]...)
			f.Skip(toolGapMm)
			last.Starts = append(last.Starts, list[i].Title)
		}
	}
	return []draw.Chapter{{Name: ToolsName, Sheets: f.Sheets}}
}

// packed puts pieces on pages, the first of which has less room than the others: each
// on the first page that has room, in their order or, where that saves a page, the
// highest first; on a page they keep their order.
func packed(pieces [][]draw.Piece, firstMm, roomMm float64) [][]int {
	order := make([]int, len(pieces))
	for i := range order {
		order[i] = i
	}
	pages := firstFit(pieces, order, firstMm, roomMm)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(draw.HeightMm(pieces[b]...), draw.HeightMm(pieces[a]...)) })
	if fewer := firstFit(pieces, order, firstMm, roomMm); len(fewer) < len(pages) {
		pages = fewer
	}
	return pages
}

// firstFit puts pieces, in an order, each on the first page that has room.
func firstFit(pieces [][]draw.Piece, order []int, firstMm, roomMm float64) [][]int {
	pages, left := [][]int{nil}, []float64{firstMm}
	for _, i := range order {
		high := draw.HeightMm(pieces[i]...)
		k := slices.IndexFunc(left, func(mm float64) bool { return mm >= high })
		if k < 0 {
			k, pages, left = len(pages), append(pages, nil), append(left, roomMm)
		}
		pages[k], left[k] = append(pages[k], i), left[k]-high-toolGapMm
	}
	for _, page := range pages {
		slices.Sort(page)
	}
	return pages
}

// tool is the sheet of a tool, in one piece: its operations beside the picture, and
// the record below in two halves; on narrow paper one below another, to be parted.
func (d density) tool(pl *plan.Plan, t *plan.PartPlan, width float64) []draw.Piece {
	operations, record := d.operationTable(t), d.recordTable(pl, t)
	record.Rows = append(record.Rows, append([]string{"passed, by"}, make([]string, len(record.Columns)-1)...))
	if width < twoColumnsMm {
		return slices.Concat([]draw.Piece{toolHead(pl, t, width), d.picture(t, width), d.told(t, width)}, d.tight(operations).Pieces(width), []draw.Piece{draw.Space(1)}, d.tight(record).Pieces(width))
	}
	left, half := width*pictureShare, (width-draw.GutterMm)/2
	right := width - left - draw.GutterMm
	seen, work := d.picture(t, left), d.rows(operations, right)
	if under := draw.Stack(seen, d.told(t, left)); under.Height <= max(seen.Height, work.Height+d.told(t, right).Height) {
		seen = under
	} else {
		work = draw.Stack(work, draw.Space(1), d.told(t, right))
	}
	first, second := record, record
	k := (len(record.Rows) + 1) / 2
	first.Rows, second.Rows = record.Rows[:k], record.Rows[k:]
	return []draw.Piece{draw.Stack(toolHead(pl, t, width), abreast(seen, work, left+draw.GutterMm), draw.Space(1),
		abreast(d.rows(first, half), d.rows(second, half), half+draw.GutterMm))}
}

// toolHead is the name of a tool, and its facts in the same line.
func toolHead(pl *plan.Plan, t *plan.PartPlan, width float64) draw.Piece {
	p := draw.Piece{Height: 8}
	p.Draw.Add(draw.Text{YMm: -5, SizeMm: draw.HeadMm, Bold: true, Content: t.Title, Heading: 1})
	facts := words.Join("  ·  ", t.Material, draw.Labelled("stock", t.StockText), t.Overall, words.Writer{Units: pl.Units}.Mass(t.MassKg), "make "+strconv.Itoa(t.Quantity))
	facts, size := draw.Shrink(facts, draw.TextMm, false, width-draw.TextWidth(t.Title, draw.HeadMm, true)-4)
	p.Draw.Add(draw.Text{XMm: width, YMm: -5, SizeMm: size, Align: draw.Right, Content: facts}, draw.Segment(0, -6.6, width, -6.6, draw.ThickMm))
	return p
}

// picture is a tool cut along its axis, or its faces where they have holes.
func (d density) picture(t *plan.PartPlan, width float64) draw.Piece {
	if len(t.Faces) > 0 {
		return draw.Stack(views(t, d.pictures(), width)...)
	}
	var p draw.Piece
	draw.PlaceRow(&p, []draw.Panel{picture.Dimensioned(t, width, toolMm)}, width)
	return p
}

func (d density) told(t *plan.PartPlan, width float64) draw.Piece {
	return draw.Stack(d.said(d.remarks(t, nil, width))...)
}

// rows are a table without title and lead, in one piece.
func (d density) rows(t draw.Table, width float64) draw.Piece {
	return draw.Stack(d.tight(t).Pieces(width)...)
}

// abreast sets two pieces side by side, the second at x.
func abreast(a, b draw.Piece, x float64) draw.Piece {
	p := draw.Piece{Height: max(a.Height, b.Height)}
	p.Draw.Place(a.Drawn(), 0, 0)
	p.Draw.Place(b.Drawn(), x, 0)
	return p
}
