package truesize

import (
	"cmp"
	"slices"

	"centrepop/templates/draw"
)

// squeezed is the most sheets, the emptiest, whose templates are set anew together.
const squeezed = 24

// squeeze sets the templates of the emptiest sheets anew as long as that saves one,
// and puts all in the order of the parts.
func squeeze(pages []*page, ways []draw.Frame) []*page {
	byFill := slices.Clone(pages)
	slices.SortStableFunc(byFill, func(a, b *page) int { return cmp.Compare(a.fill(), b.fill()) })
	var tiles []*tile
	var room float64
	for n, p := range byFill[:min(squeezed, len(byFill))] {
		for i := range p.tiles {
			tiles = append(tiles, &p.tiles[i].tile)
		}
		if room += 1 - p.fill(); room < 1 {
			continue
		}
		if anew := fewer(tiles, ways, n); anew != nil {
			return squeeze(append(anew, byFill[n+1:]...), ways)
		}
	}
	return sorted(pages)
}

// sorted has the sheets, and the templates of each, in the order of the parts.
func sorted(pages []*page) []*page {
	for _, p := range pages {
		slices.SortStableFunc(p.tiles, func(a, b placed) int { return cmp.Or(cmp.Compare(a.of.rank, b.of.rank), cmp.Compare(a.n, b.n)) })
	}
	slices.SortStableFunc(pages, func(a, b *page) int {
		return cmp.Or(cmp.Compare(a.tiles[0].of.rank, b.tiles[0].of.rank), cmp.Compare(a.tiles[0].n, b.tiles[0].n))
	})
	return pages
}

// orders are the ways in which templates are tried on a sheet after its first.
var orders = []func(a, b *tile) int{
	func(a, b *tile) int { return cmp.Compare(area(b), area(a)) },
	func(a, b *tile) int { return cmp.Compare(b.window.Height(), a.window.Height()) },
	func(a, b *tile) int { return cmp.Compare(b.window.Width(), a.window.Width()) },
	func(a, b *tile) int {
		return cmp.Compare(max(b.window.Height(), b.window.Width()), max(a.window.Height(), a.window.Width()))
	},
}

// fewer sets on each of at most so many sheets the largest template that is left,
// and of the others what fills it best; it returns nil where they need more.
func fewer(tiles []*tile, ways []draw.Frame, most int) (out []*page) {
	rest := slices.Clone(tiles)
	slices.SortStableFunc(rest, orders[0])
	for len(rest) > 0 {
		var taken float64 // at least, of sheets that have the most room upright
		for _, one := range rest {
			taken += area(one)
		}
		if w := window(ways[0]); taken > float64(most-len(out))*w.Width()*w.Height() {
			return nil
		}
		var best *page
		var left []*tile
		for _, f := range ways {
			for _, order := range orders {
				others := slices.Clone(rest[1:])
				slices.SortStableFunc(others, order)
				p := newPage(f)
				if !p.put(*rest[0]) {
					continue
				}
				others = slices.DeleteFunc(others, func(one *tile) bool { return p.put(*one) })
				if best == nil || p.fill() > best.fill() {
					best, left = p, others
				}
			}
		}
		out, rest = append(out, best), left
		slices.SortStableFunc(rest, orders[0])
	}
	return out
}
