package templates

// piece is a block of fixed height that is set into a column. Its drawing's
// origin is its upper left corner, so everything in it lies at negative y.
type piece struct {
	height float64
	draw   Drawing
	keep   bool // belongs to the next piece: not left alone at the foot
}

// space is an empty piece.
func space(height float64) piece { return piece{height: height} }

// flow sets pieces into columns and pages. Make one with newFlow; then choose
// columns and add pieces from the top down.
type flow struct {
	sheets []*sheet
	next   func(page int) (*sheet, piece) // a new page and its header
	body   rect
	count  int // columns
	column int
	top    float64 // of the columns on this page
	y      float64 // the next piece's upper edge
	lowest float64 // of all columns on this page
}

// gutterMm is the room between columns.
const gutterMm = 6.0

// newFlow begins a flow on its first page, in one column.
func newFlow(next func(page int) (*sheet, piece)) *flow {
	f := &flow{next: next, count: 1}
	f.turnPage()
	return f
}

func (f *flow) turnPage() {
	s, header := f.next(len(f.sheets))
	f.sheets = append(f.sheets, s)
	f.body = s.frame.body()
	s.draw.Place(&header.draw, f.body.x0, f.body.y1)
	f.top = f.body.y1 - header.height
	f.y, f.lowest, f.column = f.top, f.top, 0
}

// columns begins a region of n columns below what is set.
func (f *flow) columns(n int) {
	f.top = min(f.lowest, f.y)
	f.y, f.lowest, f.column, f.count = f.top, f.top, 0, n
}

// width is a column's width.
func (f *flow) width() float64 {
	return (f.body.width() - gutterMm*float64(f.count-1)) / float64(f.count)
}

// tallest is the height of a column on a page that has only its header.
func (f *flow) tallest() float64 {
	_, header := f.next(len(f.sheets))
	return f.body.height() - header.height
}

// turnColumn goes on in the next column, or on the next page.
func (f *flow) turnColumn() {
	if f.column+1 < f.count {
		f.column++
		f.y = f.top
		return
	}
	f.turnPage()
}

// fits tells whether a height is left in the column.
func (f *flow) fits(height float64) bool { return f.y-height >= f.body.y0-1e-6 }

// left is the height left in the column.
func (f *flow) left() float64 { return f.y - f.body.y0 }

// atTop tells whether nothing stands in the column yet.
func (f *flow) atTop() bool { return f.y == f.top }

// add sets pieces one below another. A piece with keep stays with the one
// after it.
func (f *flow) add(pieces ...piece) {
	for i, p := range pieces {
		if len(p.draw.Items) == 0 {
			f.skip(p.height)
			continue
		}
		need := p.height
		for j := i; pieces[j].keep && j+1 < len(pieces); j++ {
			need += pieces[j+1].height
		}
		if !f.fits(need) && !f.atTop() {
			f.turnColumn()
			if !f.fits(p.height) && f.top < f.body.y1-f.body.height()/2 {
				f.turnPage() // the columns begin too low on this page
			}
		}
		f.set(p)
	}
}

// skip leaves room, but neither at the head of a column nor past its foot.
func (f *flow) skip(height float64) {
	if !f.atTop() {
		f.y = max(f.y-height, f.body.y0)
		f.lowest = min(f.lowest, f.y)
	}
}

// set draws a piece where the flow stands.
func (f *flow) set(p piece) {
	x := f.body.x0 + float64(f.column)*(f.width()+gutterMm)
	f.sheets[len(f.sheets)-1].draw.Place(&p.draw, x, f.y)
	f.y -= p.height
	f.lowest = min(f.lowest, f.y)
}

// heading is a title over what follows it, with a rule under it.
func heading(text string, width float64) piece {
	p := piece{height: headMm*leading + 2.6, keep: true}
	shown, size := shrink(text, headMm, true, width)
	p.draw.Add(Text{YMm: -headMm * 1.05, SizeMm: size, Bold: true, Content: shown})
	p.draw.Add(segment(0, -headMm*leading, width, -headMm*leading, 0.5))
	return p
}

// paragraph is a text set in lines, one piece a line so that it may break
// over pages; lead, such as a dash, hangs before the first.
func paragraph(lead, text string, sizeMm float64, bold bool, width float64) []piece {
	indent := 0.0
	if lead != "" {
		indent = textWidth(lead+" ", sizeMm, bold) + 0.6
	}
	var pieces []piece
	for i, line := range wrap(text, sizeMm, bold, width-indent) {
		p := piece{height: sizeMm * leading}
		if i == 0 && lead != "" {
			p.draw.Add(Text{YMm: -sizeMm, SizeMm: sizeMm, Bold: bold, Content: lead})
		}
		if line != "" {
			p.draw.Add(Text{XMm: indent, YMm: -sizeMm, SizeMm: sizeMm, Bold: bold, Content: line})
		}
		pieces = append(pieces, p)
	}
	return pieces
}

// stack sets pieces one below another into one piece.
func stack(pieces ...piece) piece {
	var all piece
	for _, p := range pieces {
		all.draw.Place(&p.draw, 0, -all.height)
		all.height += p.height
	}
	return all
}
