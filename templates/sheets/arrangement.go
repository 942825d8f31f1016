package sheets

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// ArrangementName is the sheet that shows the whole machine.
const ArrangementName = "General arrangement"

// arrangementScales are the reductions that drawings use (ISO 5455), and 1:1.
var arrangementScales = []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}

// Arrangement draws the machine cut along its axis, with item numbers, overall
// sizes and a rule; nothing where the plan has none.
func Arrangement(pl *plan.Plan, paper draw.Frame) []draw.Chapter {
	a := pl.Arrangement
	if a == nil {
		return nil
	}
	body := paper.Body()
	w := words.Writer{Units: pl.Units}
	long, high := a.MaxMm.XMm-a.MinMm.XMm, a.MaxMm.YMm-a.MinMm.YMm
	scale := arrangementScales[len(arrangementScales)-1]
	for _, s := range arrangementScales {
		if long/s <= body.Width()-24 && high/s <= body.Height()*0.55 {
			scale = s
			break
		}
	}
	f := draw.NewFlow(func(int) (*draw.Sheet, draw.Piece) {
		return &draw.Sheet{Frame: paper, All: true, Name: ArrangementName, Scale: "1:" + strconv.Itoa(int(scale))},
			draw.RunningHead(pl.Job, "general arrangement, cut along the axis", body.Width())
	})
	p := draw.Panel{Width: f.Width(), Height: picture.BalloonRowMm + high/scale + 22}
	x0, y0 := (p.Width-long/scale)/2, -picture.BalloonRowMm-high/scale-2
	at := func(q plan.XY) (float64, float64) {
		return x0 + (q.XMm-a.MinMm.XMm)/scale, y0 + (q.YMm-a.MinMm.YMm)/scale
	}
	var spots []picture.Spot
	var links []draw.Link
	seen := map[int]bool{}
	for i, c := range a.Cuts {
		path := &canvas.Path{}
		for _, loop := range c.Loops {
			for k, q := range loop {
				if x, y := at(q); k == 0 {
					path.MoveTo(x, y)
				} else {
					path.LineTo(x, y)
				}
			}
			path.Close()
		}
		draw.HatchAt(&p.Draw, path, []float64{45, 135, 30, 150}[i%4], []float64{1.6, 1.2, 2}[i%3], draw.ThinMm)
		if c.Item > 0 {
			links = append(links, draw.Link{Path: path, To: pl.Parts[c.Item-1].Title})
		}
		if c.Item > 0 && !seen[c.Item] {
			seen[c.Item] = true
			x, y := at(picture.Metal(c.Loops))
			spots = append(spots, picture.Spot{N: c.Item, X: x, Y: y, To: pl.Parts[c.Item-1].Title})
		}
	}
	left, bottom := at(a.MinMm)
	right, top := at(a.MaxMm)
	overall(&p.Draw, left, bottom-8, right, w.Size(long))
	p.Draw.Add(draw.Text{XMm: right + 2, YMm: (bottom + top) / 2, SizeMm: draw.TextMm, Content: w.Size(high) + " high"},
		draw.Text{XMm: left, YMm: bottom - 16, SizeMm: draw.TextMm, Content: "FRONT at the left, TOP up. Overall sizes are of what is cut."})
	addLinks(&p.Draw, links)
	picture.BalloonRow(&p, spots)
	f.Add(draw.Piece{Draw: p.Draw, Height: p.Height}, draw.Space(2))
	f.Table(itemTable(pl, seen))
	for _, list := range []struct {
		titles []string
		says   string
	}{{a.Beside, "Not cut by this plane: "}, {a.Floating, "Placed by no joint: "}} {
		if len(list.titles) > 0 {
			f.Add(draw.Paragraph("", list.says+strings.Join(list.titles, ", ")+".", draw.TextMm, false, f.Width())...)
		}
	}
	return []draw.Chapter{{Name: ArrangementName, Sheets: f.Sheets}}
}

// machinePicture is the machine cut along its axis, as large as it fits a width
// and a height, without numbers.
func machinePicture(a *plan.Arrangement, width, height float64) draw.Piece {
	long, high := a.MaxMm.XMm-a.MinMm.XMm, a.MaxMm.YMm-a.MinMm.YMm
	scale := min(width/long, height/high)
	p := draw.Piece{Height: high * scale}
	x0 := (width - long*scale) / 2
	for i, c := range a.Cuts {
		path := &canvas.Path{}
		for _, loop := range c.Loops {
			for k, q := range loop {
				if x, y := x0+(q.XMm-a.MinMm.XMm)*scale, (q.YMm-a.MaxMm.YMm)*scale; k == 0 {
					path.MoveTo(x, y)
				} else {
					path.LineTo(x, y)
				}
			}
			path.Close()
		}
		draw.HatchAt(&p.Draw, path, []float64{45, 135, 30, 150}[i%4], []float64{1.1, 0.9, 1.4}[i%3], draw.HairMm)
	}
	return p
}

// addLinks makes the parts lead to their sheets: the smaller lies over the
// larger, where a device knows only the rectangle about a part.
func addLinks(d *draw.Drawing, links []draw.Link) {
	area := func(l draw.Link) float64 { return l.Path.Bounds().Area() }
	slices.SortStableFunc(links, func(a, b draw.Link) int { return cmp.Compare(area(b), area(a)) })
	for _, l := range links {
		d.Add(l)
	}
}

// itemTable names the numbers of the balloons.
func itemTable(pl *plan.Plan, seen map[int]bool) draw.Table {
	t := draw.Table{Title: "Items", Compact: true, Columns: []draw.Column{
		{Head: "Item", Bold: true}, {Head: "Part", Flex: true, Leads: true}, {Head: "Make"}, {Head: "Material"},
		{Head: "Item", Bold: true}, {Head: "Part", Flex: true, Leads: true}, {Head: "Make"}, {Head: "Material"},
	}}
	var rows [][]string
	for i, p := range pl.Parts {
		if seen[i+1] {
			rows = append(rows, []string{strconv.Itoa(i + 1), p.Title, strconv.Itoa(p.Quantity), p.Material})
		}
	}
	half := (len(rows) + 1) / 2
	for i := range half {
		right := make([]string, 4)
		if i+half < len(rows) {
			right = rows[i+half]
		}
		t.Rows = append(t.Rows, append(rows[i : i+1 : i+1][0], right...))
	}
	return t
}

// overall is a level dimension line with its size above.
func overall(d *draw.Drawing, x0, y, x1 float64, size string) {
	d.Add(draw.Segment(x0, y, x1, y, draw.ThinMm), draw.Segment(x0, y-2, x0, y+6, draw.ThinMm), draw.Segment(x1, y-2, x1, y+6, draw.ThinMm),
		draw.Shape{Path: draw.Polygon(x0, y, x0+3, y+0.6, x0+3, y-0.6), Fill: draw.Black},
		draw.Shape{Path: draw.Polygon(x1, y, x1-3, y+0.6, x1-3, y-0.6), Fill: draw.Black},
		draw.Text{XMm: (x0 + x1) / 2, YMm: y + 1.2, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: size})
}
