// Package truesize draws what is true at 1:1: the punch templates of faces, the
// wraps and flat patterns, and the cutting file of a profile. A template that
// is larger than a sheet is cut into tiles; small ones, and the strips of a
// wrap, share a sheet. Face drawings keep the plan's coordinates: the part's
// origin, x right and TOP up as seen by who looks at that face. Nothing here is
// scaled.
package truesize

import (
	"fmt"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"
)

// Policy is which templates are printed.
type Policy uint8

// The policies: those that the plan does not call needless, every one, none.
const (
	Useful Policy = iota
	All
	None
)

// A TooLargeError says that a drawing at 1:1 needs more than maxTiles sheets.
type TooLargeError struct {
	Part string // the part's name
	what string
}

// Error names the part, its size and the paper.
func (e *TooLargeError) Error() string { return e.what + ": choose larger paper" }

// tooLarge is the error for the template of a face that no way fits.
func (t *template) tooLarge(paper draw.Frame) error {
	w, h := t.punch.hi.XMm-t.punch.lo.XMm, t.punch.hi.YMm-t.punch.lo.YMm
	return &TooLargeError{t.part.Name, fmt.Sprintf("%s: a template of %s × %s mm needs more than %d sheets of %s",
		t.where, words.Trim(w, 1), words.Trim(h, 1), maxTiles, paper.Name)}
}

// Choice are the templates of some parts that are printed on a paper.
type Choice struct {
	// Patterns and Missing are by part: the names of the flat patterns that are
	// printed, and what is said of those wanted that the paper does not take.
	Patterns, Missing [][]string

	pl      *plan.Plan
	paper   draw.Frame
	printed [][]*template // by part
}

// Choose keeps the templates of parts that a policy wants. A flat pattern of more
// than maxTiles is left out; a face that is too large is a *TooLargeError, and an
// outline that cannot be read is an error too.
func Choose(pl *plan.Plan, list []*plan.PartPlan, paper draw.Frame, which Policy) (*Choice, error) {
	c := &Choice{Patterns: make([][]string, len(list)), Missing: make([][]string, len(list)), pl: pl, paper: paper, printed: make([][]*template, len(list))}
	ways := waysOf(paper)
	for i, part := range list {
		wanted, err := templatesOf(pl, part, which)
		if err != nil {
			return nil, err
		}
		for _, t := range wanted {
			shown := t.orHalf(ways)
			switch fits := len(shown.fewest(ways)) > 0; {
			case !fits && !t.exact:
				return nil, t.tooLarge(paper)
			case !fits:
				c.Missing[i] = append(c.Missing[i], fmt.Sprintf("%s would take more than %d sheets of %s and is not printed: mark it out from its table, or print on larger paper.",
					t.name, maxTiles, paper.Name))
				continue
			case t.exact:
				c.Patterns[i] = append(c.Patterns[i], t.dev.Name)
			}
			c.printed[i] = append(c.printed[i], shown)
		}
	}
	return c, nil
}

// templatesOf are the templates of a part that the policy keeps.
func templatesOf(pl *plan.Plan, part *plan.PartPlan, which Policy) ([]*template, error) {
	var out []*template
	if which == None {
		return nil, nil
	}
	for _, face := range part.Faces {
		t, err := newPunch(pl, part, face, which == All)
		if err != nil {
			return nil, err
		}
		if face.NoTemplate == "" || which == All && len(t.marks) > 0 {
			out = append(out, t)
		}
	}
	for i := range part.Developments {
		dev := &part.Developments[i]
		t, err := newPattern(pl, part, dev)
		if err != nil {
			return nil, err
		}
		if which == All || dev.NoTemplate == "" {
			out = append(out, t)
		}
	}
	return out, nil
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
