package sheets

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"sync"

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

// origin is all that the sheets of a part are drawn from: the part, and of the plan
// what holds for all parts.
type origin struct {
	pl       *plan.Plan
	part     *plan.PartPlan
	patterns Patterns
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

// content is what the sheets of a part hold. What of it has been made for one
// trial serves all others.
type content struct {
	origin
	widthMm       float64 // of a page
	head, running func() draw.Piece
	low           func() draw.Piece // its head under another part
	texts         map[density]*texts
	operations    map[float64]draw.Table // by the em of their numbers
	views         map[[2]float64][]draw.Piece
}

func contentOf(from origin, paper draw.Frame) *content {
	width, part := paper.Body().Width(), from.part
	return &content{
		origin: from, widthMm: width,
		head: sync.OnceValue(func() draw.Piece { return partHead(from.pl, part, width, false) }),
		low:  sync.OnceValue(func() draw.Piece { return partHead(from.pl, part, width, true) }),
		running: sync.OnceValue(func() draw.Piece {
			return draw.RunningHead(part.Title, "operations and record, continued", width)
		}),
		texts: map[density]*texts{}, operations: map[float64]draw.Table{}, views: map[[2]float64][]draw.Piece{},
	}
}

// page makes the pages of a part with their heads.
func (c *content) page(paper draw.Frame) func(page int) (*draw.Sheet, draw.Piece) {
	return func(page int) (*draw.Sheet, draw.Piece) {
		title := c.part.Title
		s := &draw.Sheet{Frame: paper, Part: title, Parts: []string{title}, Name: PartSheet, Scale: "not to scale"}
		if page == 0 {
			s.Starts = []string{title}
			return s, c.head()
		}
		return s, c.running()
	}
}

// under begins a further part on a page.
func (c *content) under(f *draw.Flow) {
	f.Columns(1)
	rule := draw.Piece{Height: shareRoomMm, Keep: true}
	rule.Draw.Add(draw.Segment(0, -shareRoomMm/2, c.widthMm, -shareRoomMm/2, draw.LineMm, draw.ChainDash...))
	f.Add(rule, c.low())
	last := f.Sheets[len(f.Sheets)-1]
	last.Parts = append(last.Parts, c.part.Title)
	last.Part += ", " + c.part.Title
	last.Starts = append(last.Starts, c.part.Title)
}

// dense is the content of a part at a density.
type dense struct {
	density
	*content
	*texts
	scale float64 // of its pictures
}

// drawnAt is the content with its pictures at a scale.
func (d dense) drawnAt(scale float64) dense {
	d.scale = scale
	return d
}

// texts are what a part has but its pictures and operations, in a size of text, each
// made when it is first asked for.
type texts struct {
	remark [2]func() [][]draw.Piece // over the page, and in a column
	lines  func() []draw.Piece
	tables func() []*holes
	record func() recording
}

// smallest is a density at which these have the least size, as below it.
const smallest = 0.77

func (c *content) at(d density) dense {
	size := max(d, smallest)
	if c.texts[size] == nil {
		one := &texts{}
		for i, width := range []float64{c.widthMm, c.columnMm()} {
			one.remark[i] = sync.OnceValue(func() [][]draw.Piece { return size.remarks(c.part, c.patterns.Notes, width) })
		}
		one.lines = sync.OnceValue(func() []draw.Piece { return size.measuredLines(c.part, c.widthMm) })
		one.tables = sync.OnceValue(func() []*holes { return c.holes(size) })
		one.record = sync.OnceValue(func() recording { return c.recording(size) })
		c.texts[size] = one
	}
	return dense{d, c, c.texts[size], d.pictures()}
}

// forget lets go of what was made for other densities than one.
func (c *content) forget(but density) {
	maps.DeleteFunc(c.texts, func(d density, _ *texts) bool { return d != max(but, smallest) })
	maps.DeleteFunc(c.operations, func(em float64, _ draw.Table) bool { return em != but.em(operationMm) })
	maps.DeleteFunc(c.views, func(k [2]float64, _ []draw.Piece) bool { return k[0] != but.pictures() })
}

// operationsAt are the rows of the operations; densities share those of a size.
func (c *content) operationsAt(d density) draw.Table {
	key := d.em(operationMm)
	if _, known := c.operations[key]; !known {
		c.operations[key] = d.tight(d.operationTable(c.part)).Laid(c.widthMm)
	}
	return c.operations[key]
}

// columnMm is the width of one of two columns.
func (c *content) columnMm() float64 { return (c.widthMm - draw.GutterMm) / 2 }

func (c *content) viewsAt(scale, width float64) []draw.Piece {
	key := [2]float64{scale, width}
	if _, known := c.views[key]; !known {
		c.views[key] = views(c.part, scale, width)
	}
	return c.views[key]
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

// said are remarks one below the other.
func (d density) said(remarks [][]draw.Piece) []draw.Piece {
	if len(remarks) == 0 {
		return nil
	}
	return append(slices.Concat(remarks...), draw.Space(1.5*d.pictures()))
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

// holes is a table of where things are, as it is laid out over the page and in a
// column.
type holes struct {
	leastMm float64
	page    func() draw.Table
	column  func() measured
}

// holes are the tables to work by.
func (c *content) holes(d density) []*holes {
	var out []*holes
	for _, t := range d.partTables(c.pl, c.part, c.patterns.Printed) {
		if c.widthMm >= twoColumnsMm {
			t = d.tight(t)
		}
		t = t.Measured()
		out = append(out, &holes{
			leastMm: t.LeastWidth(),
			page:    sync.OnceValue(func() draw.Table { return t.Laid(c.widthMm) }),
			column:  sync.OnceValue(func() measured { return measure(t, c.columnMm()) }),
		})
	}
	return out
}

// recording is the record of a part and what stands over and under it.
type recording struct {
	measured          // in a column
	wide     measured // over the page
	head     []draw.Piece
	verdict  draw.Piece
}

func (c *content) recording(d density) recording {
	t := d.tight(d.recordTable(c.pl, c.part)).Measured()
	r := recording{wide: measure(t, c.widthMm), head: t.Head(c.widthMm), verdict: d.verdict(c.part.Quantity, c.widthMm)}
	if c.widthMm >= twoColumnsMm {
		r.measured = measure(t, c.columnMm())
	}
	return r
}
