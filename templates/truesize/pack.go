package truesize

import (
	"math"
	"slices"

	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// openSheets is how many sheets back there may still be room for another
// template.
const openSheets = 30

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
