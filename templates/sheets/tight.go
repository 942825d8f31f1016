package sheets

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// Parts draws the sheets of the parts: pictures with sizes, operations to tick,
// hole tables and the record to fill in. Parts follow one another, but for one
// that stands whole on what another leaves of its last page. What is drawn of parts
// that are as they were is kept.
func Parts(pl *plan.Plan, list []*plan.PartPlan, paper draw.Frame, patterns map[string]Patterns, kept *draw.Kept) []*draw.Sheet {
	general := &plan.Plan{Units: pl.Units, Tolerance: pl.Tolerance}
	ready := seq.Map(list, func(part *plan.PartPlan) *content {
		return contentOf(origin{general, part, patterns[part.Name]}, paper)
	})
	on := &pages{paper, kept}
	groups := on.share(ready)
	drawn := make([][]*draw.Sheet, len(groups))
	seq.OnAll(len(groups), func(i int) {
		g := groups[i]
		drawn[i] = kept.Sheets(setOn{*g.best, 0, paper, origins(g.parts)}, func() []*draw.Sheet { return g.best.sheets(g.parts, paper) })
		kept.Complete(drawn[i])
		g.parts = nil
	})
	return slices.Concat(drawn...)
}

// pages are those that parts are set on.
type pages struct {
	paper draw.Frame
	kept  *draw.Kept
}

// setOn are parts that are set on paper in a way, if it is known, on the most pages
// that they may take.
type setOn struct {
	look
	most  int
	paper draw.Frame
	parts []origin
}

func origins(list []*content) (out []origin) {
	return seq.Map(list, func(c *content) origin { return c.origin })
}

// room is what a part takes that stands alone.
type room struct {
	look           // the roomiest that takes the fewest pages
	leftMm float64 // on the last page, set as close as can be
	highMm float64 // of the part, if it fits on a page
}

// sharing are parts that stand on pages of their own.
type sharing struct {
	parts []*content
	room
	best *look
	rank int // of its first part by height, the highest first
}

// share gives each part that fits on a page, the highest first, the room that it
// fills best.
func (on *pages) share(list []*content) []*sharing {
	groups := make([]*sharing, len(list))
	seq.OnAll(len(list), func(i int) {
		group := list[i : i+1 : i+1]
		on := draw.Keep(on.kept, setOn{paper: on.paper, parts: origins(group)}, func() room { return alone(list[i], on.paper) })
		groups[i] = &sharing{parts: group, room: on, best: &on.look}
	})
	byHeight := slices.Clone(groups)
	slices.SortStableFunc(byHeight, func(a, b *sharing) int { return cmp.Compare(b.highMm, a.highMm) })
	for i, g := range byHeight {
		g.rank = i
	}
	for i, small := range byHeight {
		if small.pages > 1 || len(small.parts) > 1 {
			continue
		}
		byRoom := slices.Clone(groups)
		slices.SortStableFunc(byRoom, func(a, b *sharing) int { return cmp.Compare(a.leftMm, b.leftMm) })
		for _, host := range byRoom {
			if host.leftMm < small.highMm || host.rank >= i && host.pages == 1 {
				continue
			}
			parts := append(slices.Clone(host.parts), small.parts[0])
			if l := on.tightest(parts, host.pages); l != nil && l.pages == host.pages {
				host.parts, host.best, host.leftMm = parts, l, host.leftMm-small.highMm-shareRoomMm
				groups = slices.DeleteFunc(groups, func(g *sharing) bool { return g == small })
				break
			}
		}
	}
	return groups
}

// alone is a part on pages of its own.
func alone(part *content, paper draw.Frame) (g room) {
	group := []*content{part}
	var best *draw.Flow
	for _, d := range densities {
		for _, beside := range besides(1) {
			l := look{density: d, beside: beside}
			if !l.possible(group, paper) {
				continue
			}
			f := draw.NewTrial(part.page(paper), math.MaxInt)
			l.set(f, group)
			if l.pages = len(f.Sheets); g.pages == 0 || l.pages < g.pages {
				g.look, best = l, f
			} else if l.pages == g.pages && f.Left() > best.Left() { // where a table breaks hangs on more than on how close it is set
				best = f
			}
		}
	}
	part.forget(g.density)
	g.leftMm = best.Left() - shareRoomMm
	if g.pages == 1 {
		g.highMm = best.Body.Height() - best.Left() - part.head().Height + part.low().Height
	}
	return g
}

// look is a way to set the parts of a page, and the pages that it takes.
type look struct {
	density
	beside uint64 // a bit for each part whose tables stand beside its views, the first lowest
	pages  int
	larger float64 // what the pictures are drawn at in place of what the density asks for, or 0
}

// tightest is that look of parts, kept where they are as they were.
func (on *pages) tightest(group []*content, most int) *look {
	return draw.Keep(on.kept, setOn{most: most, paper: on.paper, parts: origins(group)}, func() *look { return tightest(group, on.paper, most) })
}

// tightest is the roomiest look that takes the fewest pages to set parts one below
// the other; nil if that is more than most. Only the first may need more than one
// page.
func tightest(group []*content, paper draw.Frame, most int) *look {
	var best *look
	for _, d := range densities {
		for _, beside := range besides(len(group)) {
			l := look{density: d, beside: beside}
			if !l.possible(group, paper) {
				continue
			}
			f := draw.NewTrial(group[0].page(paper), most)
			if l.set(f, group); f.Over() {
				continue
			}
			if l.pages = len(f.Sheets); l.pages == 1 {
				return &l // there are no fewer
			}
			best, most = &l, l.pages-1
		}
	}
	return best
}

// besides are the ways in which the tables of n parts stand beside their views: none
// and all, then some of them if the parts are few.
func besides(n int) []uint64 {
	all := uint64(1)<<min(n, 63) - 1
	out := []uint64{0, all}
	for some := uint64(1); some < all && n <= 3; some++ {
		out = append(out, some)
	}
	return out
}

// besideViews tells whether the tables of the part at i stand beside its views.
func (l *look) besideViews(i int) bool { return l.beside>>i&1 == 1 }

// possible tells whether there is room for tables beside the views, where they stand
// there: a fold's sizes need the width.
func (l *look) possible(group []*content, paper draw.Frame) bool {
	for i, c := range group {
		if l.besideViews(i) && (len(c.part.Profiles) > 0 || paper.Body().Width() < twoColumnsMm) {
			return false
		}
	}
	return true
}

// sheets draws the parts of a page; a look that is kept stays as it was found.
func (l look) sheets(group []*content, paper draw.Frame) []*draw.Sheet {
	l.enlarge(group, paper)
	f := draw.NewFlow(group[0].page(paper))
	l.set(f, group)
	return f.Sheets
}

// enlarge draws the pictures larger where the pages stay as many.
func (l *look) enlarge(group []*content, paper draw.Frame) {
	for _, l.larger = range []float64{1.6, 1.35, 1.2, 1.1, 1, 0.9, 0.8, 0.7} {
		if l.larger <= l.pictures() {
			break
		}
		f := draw.NewTrial(group[0].page(paper), l.pages)
		if l.set(f, group); !f.Over() && !f.Past {
			return
		}
	}
	l.larger = 0
}

// set sets parts one below the other, until a trial is over.
func (l *look) set(f *draw.Flow, group []*content) {
	for i, c := range group {
		if i > 0 {
			c.under(f)
		}
		if f.Over() {
			return
		}
		c.at(l.density).drawnAt(cmp.Or(l.larger, l.pictures())).set(f, l.besideViews(i))
	}
}

// set sets all of a part but its head. The first tables of holes stand beside
// the views, or all of them below the operations.
func (d dense) set(f *draw.Flow, beside bool) {
	tables := d.tables()
	if beside {
		tables = d.top(f, tables)
	} else {
		f.Add(d.viewsAt(d.scale, d.widthMm)...)
		f.Add(d.said(d.remark[0]())...)
	}
	if f.Over() {
		return
	}
	f.Table(d.operationsAt(d.density))
	if f.Over() {
		return
	}
	f.Add(d.lines()...)
	d.below(f, tables)
}

// top sets the views at the left and beside them the tables that are no taller; the
// remarks under either where they leave both lowest, and under the views the tables
// that have room there. It returns the other tables.
func (d dense) top(f *draw.Flow, tables []*holes) []*holes {
	f.Columns(2)
	left, remarks := d.viewsAt(d.scale, d.columnMm()), d.remark[1]()
	views, said, used, n := draw.HeightMm(left...), draw.HeightMm(d.said(remarks)...), 0.0, 0
	for _, t := range tables {
		h := t.column().whole() + gapMm
		if t.leastMm > f.Width() || n > 0 && used+h > views+said+overMm {
			break
		}
		used, n = used+h, n+1
	}
	k, lowest := len(remarks), max(views+said, used)
	for at := k - 1; at >= 0; at-- {
		if high := max(views+draw.HeightMm(d.said(remarks[:at])...), used+draw.HeightMm(d.said(remarks[at:])...)); high < lowest {
			lowest, k = high, at
		}
	}
	left, right := slices.Concat(left, d.said(remarks[:k])), d.said(remarks[k:])
	views, used = draw.HeightMm(left...), used+draw.HeightMm(right...)
	f.Add(left...)
	under := n
	for _, t := range tables[n:] {
		h := t.column().whole() + gapMm
		if t.leastMm > f.Width() || views+h > used {
			break
		}
		f.Table(t.column().Table)
		views, under = views+h, under+1
	}
	if n+len(right) > 0 && f.Column() == 0 {
		f.TurnColumn()
	}
	for _, t := range tables[:n] {
		f.Table(t.column().Table)
	}
	f.Add(right...)
	f.Columns(1)
	return tables[under:]
}
