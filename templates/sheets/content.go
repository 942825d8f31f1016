package sheets

import (
	"maps"
	"sync"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
)

// origin is all that the sheets of a part are drawn from: the part, and of the plan
// what holds for all parts.
type origin struct {
	pl       *plan.Plan
	part     *plan.PartPlan
	patterns Patterns
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
