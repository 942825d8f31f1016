package cutting

import (
	"fmt"
	"sort"
)

// maxCuts bounds the pieces of one plan, so that a mistyped count is refused
// and not worked at.
const maxCuts = 20000

// Piece is a length wanted from bar stock.
type Piece struct {
	Name     string  // part it is for; printed on the cut list
	LengthMm float64 // sawn length, mm, facing allowance included
	Count    int     // how many; 0 counts as 1
}

// Cut is one piece placed on a bar.
type Cut struct {
	Name     string  // of the piece
	LengthMm float64 // mm
	FromMm   float64 // start of the piece from the untrimmed end of the bar, mm
}

// Bar is one stock bar with its cuts in sawing order from the trimmed end.
type Bar struct {
	LengthMm float64 // of the whole bar, mm
	Cuts     []Cut   // longest first
	OffcutMm float64 // usable rest beyond the last saw cut, mm, never below 0
}

// PlanBars assigns pieces to bars of barMm each by first fit decreasing: pieces
// from longest to shortest, each on the first bar with room. trimMm is lost at
// the first end of each bar to square it, its saw cut included; each piece then
// costs its length, and one kerfMm lies between neighbours and before a remaining
// offcut. A piece may end flush with the bar. Pieces of equal length keep the
// order they came in, so the same input gives the same plan.
//
// First fit decreasing never needs more than 11/9 of the least possible number
// of bars plus 6/9 of a bar (Dosa 2007, from memory).
//
// It errs for a length that is not positive and finite, a kerf or trim below
// zero, a negative count, a piece longer than a trimmed bar (named), or more
// than 20000 pieces. No pieces give no bars.
func PlanBars(pieces []Piece, barMm, kerfMm, trimMm float64) ([]Bar, error) {
	if !positive(barMm) {
		return nil, fmt.Errorf("cutting: bar length %v mm is not a positive number", barMm)
	}
	if !notNegative(kerfMm) || !notNegative(trimMm) {
		return nil, fmt.Errorf("cutting: kerf %v mm and trim %v mm must be zero or more", kerfMm, trimMm)
	}
	const same = 1e-6 // mm; a sum that should just fit does
	total := 0
	for _, p := range pieces {
		switch {
		case !positive(p.LengthMm):
			return nil, fmt.Errorf("cutting: piece %q has length %v mm, want a positive number", p.Name, p.LengthMm)
		case p.Count < 0:
			return nil, fmt.Errorf("cutting: piece %q has count %d, want 0 or more", p.Name, p.Count)
		case p.LengthMm > barMm-trimMm+same:
			return nil, fmt.Errorf("cutting: piece %q of %.1f mm is longer than a bar of %.1f mm less %.1f mm trim", p.Name, p.LengthMm, barMm, trimMm)
		case max(p.Count, 1) > maxCuts-total:
			return nil, fmt.Errorf("cutting: more than %d pieces in one plan (at %q)", maxCuts, p.Name)
		}
		total += max(p.Count, 1)
	}
	sorted := append([]Piece(nil), pieces...)
	// Longest first is what first fit decreasing asks; stable keeps ties fixed.
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i].LengthMm > sorted[j].LengthMm })

	var bars []Bar
	var next []float64 // where the next piece would start on each bar
	for _, p := range sorted {
		first := 0 // bars before it have no room for this length
		for range max(p.Count, 1) {
			for first < len(bars) && next[first]+p.LengthMm > barMm+same {
				first++
			}
			if first == len(bars) {
				bars = append(bars, Bar{LengthMm: barMm})
				next = append(next, trimMm)
			}
			b := &bars[first]
			b.Cuts = append(b.Cuts, Cut{p.Name, p.LengthMm, next[first]})
			next[first] += p.LengthMm + kerfMm
		}
	}
	for i := range bars {
		bars[i].OffcutMm = max(0, barMm-next[i])
	}
	return bars, nil
}
