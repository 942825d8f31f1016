package draw_test

import (
	"fmt"
	"math"
	"path/filepath"
	"testing"

	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"

	"github.com/tdewolff/canvas"
)

const words = "Clamp the plate flat, face the front clean, then turn it round and face the back to length; measure at three places before the last cut."

// written are pages of every kind of piece and table, with their title blocks, stamps
// and page numbers.
func written() *draw.Document {
	a4, least := draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}, draw.Frame{WidthMm: 140, HeightMm: 200}
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: a4, Part: "Barrel flange", Name: "Operations and record", Scale: "not to scale"}
		if page > 0 {
			return s, draw.RunningHead("Barrel flange", "operations and record, continued", a4.Body().Width())
		}
		var head draw.Piece
		head.Draw.Add(draw.Text{YMm: -7, SizeMm: draw.TitleMm, Bold: true, Content: "Barrel flange", Heading: 1})
		head.Facts(a4.Body().Width(), "S355", "stock plate 8", "mass 1.2 kg", "a line of facts that is far too long to stand in one line of this page and goes on")
		s.Refers = append(s.Refers, draw.PageOf{Title: "Barrel tube", XMm: 100, YMm: 20, SizeMm: 3})
		return s, head
	})
	f.Add(draw.Heading("Operations", f.Width()), draw.CautionBox(words, draw.TextMm, f.Width()), draw.Numbered("1, 2", words, f.Width()))
	f.Add(draw.Piece{Height: 6, Refers: []draw.PageOf{{Title: "Barrel tube", XMm: 31.5, YMm: -4, SizeMm: 3.1}}})
	f.Skip(3)
	f.Columns(2)
	f.Add(draw.Paragraph("Lead: ", words+" "+draw.Bold("Bold end")+" and more.", draw.TextMm, false, f.Width())...)
	f.TurnColumn()
	f.Add(draw.Notes("Notes", []string{words, "Short."}, f.Width())...)
	f.Columns(1)
	table := draw.Table{Title: "Record", Lead: "Measure at 20 °C.", Columns: []draw.Column{
		{Head: "No.", Align: draw.Right}, {Head: "What", Flex: true, Bold: true, Firm: 40}, {Head: "Limits", Align: draw.Centre, Least: 30},
		{Head: "Found", Most: 20}, {Head: "Page", Leads: true}, {Head: "", Tick: true}, {Head: "Spare", Spare: true}, {Head: "Note", Flex: true, Size: draw.SmallMm}}}
	for i := range 44 {
		table.Rows = append(table.Rows, []string{fmt.Sprint(i + 1), "bore " + words[:7*(i%9)], "114.57 – 114.59", "", "Barrel tube", "", "", words[:11*(i%7)]})
	}
	f.Table(table)
	tight := draw.Table{Title: "Tight", Tight: true, Compact: true, Fit: true, RowMm: 5, Foot: 6, Columns: []draw.Column{{Head: "Size", Flex: true}, {Head: "Said", Flex: true}}}
	tight.Lead = "Of both."
	tight.Rows = [][]string{{"18", words}, {"two\nlines", draw.Bold("bold.") + " plain"}, {"", ""}}
	f.Table(tight)
	plain := draw.Table{Title: "Plain", Compact: true, Lead: "A lead.", Fit: true, Columns: []draw.Column{{Head: "What", Flex: true}, {Head: "How", Flex: true, Size: 4.4}, {Head: "Why", Flex: true}}}
	for i := range 7 {
		plain.Rows = append(plain.Rows, []string{words[:13*i], words[11*i:], words[:120-15*i]})
	}
	f.Table(plain)
	small := draw.NewFlow(func(int) (*draw.Sheet, draw.Piece) {
		return &draw.Sheet{Frame: least, Part: "Barrel tube with a title that hardly fits", Name: "Wrap template: outside, Ø168.3, tile A1", Scale: "1:1", Revision: "in place of A", Starts: []string{"Wrap"}}, draw.Space(4)
	})
	panel := draw.Panel{Width: 40, Height: 30}
	panel.Draw.Add(draw.Box(draw.R(0, -30, 40, 0), draw.ThinMm))
	var row draw.Piece
	draw.PlaceRow(&row, []draw.Panel{panel, {Width: 30, Height: 22, Later: func() draw.Drawing { return panel.Draw }}}, small.Width())
	small.Add(row, draw.Stack(draw.Heading("Stacked", 60), draw.Space(5)))
	chapters := []draw.Chapter{{Part: "Barrel flange", Name: "Operations", Sheets: f.Sheets}, {Part: "Barrel tube", Name: "Templates", Sheets: small.Sheets}, {Name: "Cover", Sheets: []*draw.Sheet{{Frame: least.Turned(), All: true, Name: "Cover"}}}}
	return draw.Bind(draw.Job{Name: "Pug mill", Revision: "B", Date: "2025-03-14", Tolerance: "ISO 2768-m", Held: []string{"Barrel flange"}}, chapters, "Packet")
}

// marked is a drawing of every mark of the trade.
func marked() *draw.Drawing {
	d := &draw.Drawing{}
	d.Add(draw.PopCross(20, 20), draw.Disc(30, 20, 1.5), draw.Ring(40, 20, 5, draw.ThinMm, draw.ChainDash...), draw.Stadium(canvas.Point{X: 60, Y: 20}, canvas.Point{X: 8, Y: 3}, 3, draw.ThickMm),
		draw.Segment(0, 0, 10, 5, draw.HairMm, draw.CutDash...), draw.TopArrow(80, 20, 120), draw.Shape{Path: draw.SlotPath(90, 10, 100, 17.5, 6), Stroke: draw.Black, WidthMm: draw.ThinMm})
	for _, items := range [][]draw.Item{draw.Balloon(20, 40, 7), draw.Balloon(35, 40, 128), draw.Leader(20, 40, 50, 55), draw.MatchMark(60, 40), draw.Warning(75, 40, 60), draw.Over(draw.Text{XMm: 90, YMm: 40, SizeMm: 3, RotateDeg: 30, Content: "Ø11"})} {
		d.Add(items...)
	}
	draw.RuleAcross(d, 10, 70)
	draw.RuleUp(d, 150, 20)
	draw.InchRule(d, 10, 90, false)
	draw.EdgeRule(d, canvas.Point{X: 10, Y: 105}, 33, false, true)
	draw.EdgeRule(d, canvas.Point{X: 160, Y: 20}, 112, false, true)
	draw.EdgeRule(d, canvas.Point{X: 10, Y: 110}, 112, false, false)
	draw.EdgeRule(d, canvas.Point{X: 10, Y: 115}, 40, true, false)
	cut := draw.Polygon(10, 130, 40, 130, 40, 150, 25, 144, 10, 150)
	draw.Hatch(d, cut, draw.R(10, 130, 40, 150))
	draw.HatchAt(d, cut.Copy().Translate(50, 0), 30, 2.5, 0.7)
	return d
}

// labelled is a ring of holes and what was left for labels beside a line and a circle.
func labelled() *draw.Drawing {
	s := &draw.Sheet{}
	room := draw.NewOccupied(draw.R(0, 0, 120, 100))
	room.AddCircle(60, 50, 30)
	room.AddLine(5, 5, 118, 95)
	room.AddPath(draw.SlotPath(30, 80, 60, 88, 8))
	room.AddText(draw.R(86, 60, 112, 66))
	var marks []draw.Mark
	for i := range 9 {
		a := 0.3 + 2*math.Pi*float64(i)/9
		marks = append(marks, draw.Mark{Number: fmt.Sprint(i + 1), Group: "bolts", Size: "Ø11", X: 60 + 30*math.Cos(a), Y: 50 + 30*math.Sin(a), Radius: 4, Outward: a})
	}
	marks = append(marks, draw.Mark{Number: "10", Group: "pry", Size: "M8 tap, drill 6.8", X: 60, Y: 50, Radius: 2})
	draw.LabelMarks(s, room, marks)
	// So many, and so much in the way, that numbers stand far off with a leader.
	crowded, tight := &draw.Sheet{}, draw.NewOccupied(draw.R(0, 0, 90, 60))
	tight.AddText(draw.R(8, 12, 80, 42))
	for i := range 6 {
		tight.AddLine(0, 44+1.5*float64(i), 88, 44+1.5*float64(i))
	}
	var close []draw.Mark
	for i := range 14 {
		close = append(close, draw.Mark{Number: fmt.Sprint(60 + i), Group: "grid", Size: "Ø6", X: 12 + 10*float64(i%7), Y: 20 + 14*float64(i/7), Radius: 3, Outward: float64(i)})
	}
	draw.LabelMarks(crowded, tight, close)
	s.Draw.Place(&crowded.Draw, 0, 100)
	return &s.Draw
}

// TestRecorded: pages, tables, marks and labels are drawn as recorded: each text and
// each line with its place to 0.1 mm. CENTREPOP_UPDATE=1 writes testdata anew: read the
// difference, and look at the page.
func TestRecorded(t *testing.T) {
	t.Parallel()
	for name, got := range map[string]string{
		"pages": sheettest.Record(t, written()), "marks": sheettest.RecordDrawing(t, marked()), "labels": sheettest.RecordDrawing(t, labelled()),
	} {
		golden.Whole(t, filepath.Join("testdata", name+".txt"), []byte(got))
	}
}
