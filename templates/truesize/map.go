package truesize

import (
	"strconv"

	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// The cells of a map of tiles, and how many tiles it is drawn for.
const (
	mapCellMm  = 16.5
	mapRowMm   = 8.2
	mapLeast   = 3
	mapMost    = 60
	mapPlaceMm = 1.0 // round it
)

// pageMap is a map of the tiles on the first of them: which lies where, and on which
// page it is printed.
func (one *tile) pageMap(s *draw.Sheet, rooms []*draw.Occupied) {
	g := one.grid
	if n := g.count(); one.n != 1 || n < mapLeast || n > mapMost {
		return
	}
	rows, cols := len(g.shown), len(g.shown[0])
	for _, room := range rooms {
		at, ok := placeFor(room, float64(cols)*mapCellMm+2*mapPlaceMm, float64(rows)*mapRowMm+2*mapPlaceMm)
		if !ok {
			continue
		}
		room.AddText(at)
		for col, row := range g.cells() {
			x, y := at.X0+mapPlaceMm+float64(col)*mapCellMm, at.Y1-mapPlaceMm-float64(row+1)*mapRowMm
			n := g.number(col, row)
			s.Draw.Add(draw.Box(draw.R(x, y, x+mapCellMm, y+mapRowMm), draw.ThinMm),
				draw.Text{XMm: x + 1, YMm: y + mapRowMm/2 + 0.9, SizeMm: draw.TextMm, Content: "tile " + strconv.Itoa(n)})
			s.Refers = append(s.Refers, draw.PageOf{Title: one.of.title(n), XMm: x + 1, YMm: y + 1.2, SizeMm: draw.SmallMm})
		}
		return
	}
}

// drawMap draws the template small with its tiles inside r, this one dark.
func (one *tile) drawMap(d *draw.Drawing, r draw.Rect) {
	g := one.grid
	scale := min(r.Width()/g.area.Width(), r.Height()/g.area.Height())
	ox := (r.X0+r.X1)/2 - (g.area.X0+g.area.X1)/2*scale
	oy := (r.Y0+r.Y1)/2 - (g.area.Y0+g.area.Y1)/2*scale
	small := func(c draw.Rect) draw.Rect {
		return draw.R(ox+c.X0*scale, oy+c.Y0*scale, ox+c.X1*scale, oy+c.Y1*scale)
	}
	d.Add(draw.Shape{Path: small(one.cell).Path(), Fill: draw.Grey})
	outline := &draw.Drawing{}
	outline.Add(draw.Shape{Path: one.of.outline.Copy().Transform(canvas.Identity.Translate(ox, oy).Scale(scale, scale)), Stroke: draw.Black, WidthMm: draw.ThinMm})
	d.Add(draw.Group{Drawing: outline, Transform: canvas.Identity, Clip: r.Path()})
	for col, row := range g.cells() {
		d.Add(draw.Box(small(g.cell(col, row)), draw.HairMm))
	}
}
