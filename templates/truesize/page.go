package truesize

import (
	"slices"

	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// The frame of a template sheet, in millimetres: a strip along the upper edge
// and thin rules along the left and lower ones.
const (
	stripMm = 10.0
	ruleMm  = 8.0
)

// window is the room for templates on a sheet.
func window(f draw.Frame) draw.Rect {
	return draw.R(draw.MarginMm+ruleMm, draw.MarginMm+ruleMm, f.WidthMm-draw.MarginMm, f.HeightMm-draw.MarginMm-stripMm-1.5)
}

// gapMm is the paper between templates that share a sheet.
const gapMm = 4.0

// placed is a tile on a sheet: its upper left corner in the sheet's window.
type placed struct {
	tile
	x, y float64 // from the upper left corner of the window, downwards
}

// page is a sheet in the making.
type page struct {
	frame draw.Frame
	free  []draw.Rect // the largest rooms left, which may overlap, y downwards from the upper left corner
	tiles []placed
}

// newPage is an empty sheet.
func newPage(f draw.Frame) *page {
	w := window(f)
	return &page{frame: f, free: []draw.Rect{draw.R(0, 0, w.Width(), w.Height())}}
}

func (p *page) clone() *page {
	q := *p
	q.free, q.tiles = slices.Clone(p.free), slices.Clone(p.tiles)
	return &q
}

// leastRoomMm is the least side of room that a template may take.
const leastRoomMm = 20.0

// put sets a tile where it leaves the least room beside it, and tells whether
// it fits. A tile that shares a sheet has a caption over it.
func (p *page) put(one tile) bool {
	if len(p.free) == 0 {
		return false
	}
	w, h := max(one.window.Width(), captionLeastMm), one.captionedMm()
	if p.inside(h) {
		w, h = one.window.Width(), one.window.Height()
	}
	best, least := -1, 0.0
	for i, r := range p.free {
		if w > r.Width()+1e-9 || h > r.Height()+1e-9 {
			continue
		}
		if spare := min(r.Width()-w, r.Height()-h); best < 0 || spare < least {
			best, least = i, spare
		}
	}
	if best < 0 {
		return false
	}
	r := p.free[best]
	p.tiles = append(p.tiles, placed{one, r.X0, r.Y0})
	p.take(draw.R(r.X0, r.Y0, r.X0+w, r.Y0+h).Grown(gapMm - 1e-9))
	return true
}

// inside tells whether a tile that shares its sheet is so tall with its caption that
// this stands in it.
func (p *page) inside(captionedMm float64) bool { return captionedMm > window(p.frame).Height()+1e-9 }

// take leaves of each room what lies beside what is taken.
func (p *page) take(r draw.Rect) {
	var rooms []draw.Rect
	for _, f := range p.free {
		if !f.Meets(r) {
			rooms = append(rooms, f)
			continue
		}
		for _, rest := range []draw.Rect{draw.R(f.X0, f.Y0, r.X0, f.Y1), draw.R(r.X1, f.Y0, f.X1, f.Y1), draw.R(f.X0, f.Y0, f.X1, r.Y0), draw.R(f.X0, r.Y1, f.X1, f.Y1)} {
			if rest.X1-rest.X0 > leastRoomMm && rest.Y1-rest.Y0 > leastRoomMm {
				rooms = append(rooms, rest)
			}
		}
	}
	p.free = p.free[:0:0]
	for i, f := range rooms {
		if !slices.ContainsFunc(rooms[:i], func(g draw.Rect) bool { return g.Holds(f) }) &&
			!slices.ContainsFunc(rooms[i+1:], func(g draw.Rect) bool { return g.Holds(f) && g != f }) {
			p.free = append(p.free, f)
		}
	}
}

// fill is the share of the window's area that templates take.
func (p *page) fill() float64 {
	used := seq.Sum(p.tiles, func(one placed) float64 { return one.window.Width() * one.window.Height() })
	w := window(p.frame)
	return used / (w.Width() * w.Height())
}

func area(one *tile) float64 { return one.window.Width() * one.window.Height() }
