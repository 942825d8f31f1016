package truesize

import (
	"math"
	"slices"

	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// gapMm is the paper between templates that share a sheet.
const gapMm = 4.0

// leastRoomMm is the least side of room that a template may take.
const leastRoomMm = 20.0

// openSheets is how many sheets back there may still be room for another
// template.
const openSheets = 30

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

// fill is the share of the window's area that templates take.
func (p *page) fill() float64 {
	used := seq.Sum(p.tiles, func(one placed) float64 { return one.window.Width() * one.window.Height() })
	w := window(p.frame)
	return used / (w.Width() * w.Height())
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

// place sets tiles on the last sheets of a packet or on new ones of a frame.
func place(pages []*page, tiles []tile, f draw.Frame) []*page {
	for _, one := range tiles {
		done := false
		for i := max(0, len(pages)-openSheets); i < len(pages) && !done; i++ {
			if p := pages[i]; p.frame == f && len(p.tiles) > 0 {
				if q := p.clone(); q.put(one) {
					pages[i], done = q, true
				}
			}
		}
		if !done {
			p := newPage(f)
			p.put(one)
			pages = append(pages, p)
		}
	}
	return pages
}

// price is what a way to set templates costs: those cut, sheets, tiles, and the paper
// that they take or leave out, in mm².
type price [4]float64

// What a price is made of.
const (
	cutCost = iota
	sheetCost
	tileCost
	paperCost
)

// less tells whether a price is lower, by what counts first.
func (p price) less(than price, first []int) bool {
	for _, i := range first {
		if p[i] != than[i] {
			return p[i] < than[i]
		}
	}
	return false
}

func (p *price) add(t *template, tiles []tile) {
	if len(tiles) == 0 {
		return
	}
	if len(tiles) > 1 {
		p[cutCost]++
	}
	p[tileCost] += float64(len(tiles))
	shown := tiles[0].grid.area
	p[paperCost] += t.full.Width()*t.full.Height() - shown.Width()*shown.Height()
	for _, one := range tiles {
		p[paperCost] += area(&one)
	}
}

// pack sets the templates of one part, each upright or on its side as costs least by
// what counts first. A template that no way fits is left out.
func pack(pages []*page, templates []*template, ways []draw.Frame, first []int) []*page {
	choices := 1
	for range templates {
		choices = min(choices*len(ways), 64)
	}
	best, least := pages, price{}
	for choice := range choices {
		try, n := slices.Clone(pages), choice
		fine, cost := true, price{}
		for _, t := range templates {
			f := ways[n%len(ways)]
			n /= len(ways)
			w := window(f)
			tiles := t.tiles(w.Width(), w.Height())
			fine = fine && (tiles != nil && len(tiles) <= maxTiles || choices == 1)
			try = place(try, tiles, f)
			cost.add(t, tiles)
		}
		cost[sheetCost], cost[paperCost] = float64(len(try)), math.Round(cost[paperCost])
		if fine && (least == price{} || cost.less(least, first)) {
			best, least = try, cost
		}
	}
	return best
}

// Sheets are the 1:1 sheets of the parts, in their order: the faces of each,
// then what is wrapped or developed. Small ones share a sheet. Sheets that show what
// they showed before are kept. Of a choice there is one set of sheets: it may not be
// used again.
func (c *Choice) Sheets(kept *draw.Kept) []draw.Chapter {
	ways := waysOf(c.paper)
	twins(c.printed)
	n := 0
	for _, t := range slices.Concat(c.printed...) {
		t.rank, n = n, n+1
	}
	var packed [2][]*page
	for i, first := range [][]int{{cutCost, tileCost, sheetCost, paperCost}, {cutCost, sheetCost, tileCost, paperCost}} {
		for _, own := range c.printed {
			packed[i] = pack(packed[i], own, ways, first)
		}
	}
	same := slices.EqualFunc(packed[0], packed[1], func(a, b *page) bool { return a.frame == b.frame && slices.Equal(a.tiles, b.tiles) })
	best := squeeze(packed[0], ways)
	if !same {
		if other := squeeze(packed[1], ways); len(other) < len(best) {
			best = other
		}
	}
	return chapters(c.pl, best, kept)
}

// Apart are the same templates, each on sheets of its own: a chapter for each.
func (c *Choice) Apart() []draw.Chapter {
	var out []draw.Chapter
	for _, t := range slices.Concat(c.printed...) {
		all := draw.Chapter{Part: t.part.Title, Name: t.name}
		for _, one := range t.fewest(waysOf(c.paper)) {
			p := &page{frame: one.frame, tiles: []placed{{tile: one.tile}}}
			s := p.draw(c.pl)
			p.close(c.pl, s)
			all.Sheets = append(all.Sheets, s)
		}
		out = append(out, all)
	}
	return out
}

// waysOf are the ways a sheet can lie.
func waysOf(paper draw.Frame) []draw.Frame {
	if side := paper.Turned(); window(side).Height() >= 100 && side != paper {
		return []draw.Frame{paper, side}
	}
	return []draw.Frame{paper}
}

// orHalf is the half of a pattern that is its own mirror image, where that saves
// sheets.
func (t *template) orHalf(ways []draw.Frame) *template {
	if t.half == nil {
		return t
	}
	if n := len(t.fewest(ways)); n == 1 || n > 0 && n <= len(t.half.fewest(ways)) {
		return t
	}
	return t.half
}

// framed is a tile and the sheet it is cut for.
type framed struct {
	tile
	frame draw.Frame
}

// fewest cuts the template the way that takes the fewest sheets; none if each
// takes more than maxTiles.
func (t *template) fewest(ways []draw.Frame) []framed {
	var best []tile
	var frame draw.Frame
	for _, f := range ways {
		w := window(f)
		if tiles := t.tiles(w.Width(), w.Height()); len(tiles) > 0 && len(tiles) <= maxTiles && (best == nil || len(tiles) < len(best)) {
			best, frame = tiles, f
		}
	}
	return seq.Map(best, func(one tile) framed { return framed{one, frame} })
}
