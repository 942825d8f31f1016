package draw

import "centrepop/parts/seq"

// Piece is a block of fixed height that is set into a column. Its drawing's
// origin is its upper left corner, so everything in it lies at negative y.
type Piece struct {
	Height float64
	Draw   Drawing
	Later  func() Drawing // makes Draw where it is wanted; nil if it is there
	Keep   bool           // belongs to the next piece: not left alone at the foot
	Refers []PageOf
}

// Drawn is a piece's drawing.
func (p *Piece) Drawn() *Drawing { return drawn(&p.Draw, p.Later) }

// drawn is a drawing that may have to be made first.
func drawn(d *Drawing, later func() Drawing) *Drawing {
	if later == nil {
		return d
	}
	made := later()
	return &made
}

// Roomiest is the first of several ways to set something, of which the first is the roomiest, that takes the fewest pages,
// and what it came to when it was tried; of ways with as many pages that with the least of what else a trial costs. One
// page that costs nothing else is not bettered.
func Roomiest[W, T any](ways []W, try func(W) T, cost func(T) (pages int, rest float64)) (best W, tried T) {
	fewest, least := 0, 0.0
	for _, w := range ways {
		t := try(w)
		if n, rest := cost(t); fewest == 0 || n < fewest || n == fewest && rest < least {
			best, tried, fewest, least = w, t, n, rest
		}
		if fewest == 1 && least == 0 {
			break
		}
	}
	return best, tried
}

// PagesOf is what sheets cost that are set in several ways.
func PagesOf(sheets []*Sheet) (pages int, rest float64) { return len(sheets), 0 }

// Space is an empty piece.
func Space(height float64) Piece { return Piece{Height: height} }

// Flow sets pieces into columns and pages. Make one with newFlow; then choose
// columns and add pieces from the top down.
type Flow struct {
	Sheets  []*Sheet
	next    func(page int) (*Sheet, Piece) // a new page and its header
	Body    Rect
	count   int // columns
	column  int
	pageTop float64 // of the columns of a whole page
	top     float64 // of the columns on this page
	y       float64 // the next piece's upper edge
	Lowest  float64 // of all columns on this page
	Past    bool    // a piece ran past the foot of its page
	most    int     // pages of a trial
	tallest float64 // of the page after this many
	pages   int
}

// GutterMm is the room between columns.
const GutterMm = 6.0

// NewFlow begins a flow on its first page, in one column.
func NewFlow(next func(page int) (*Sheet, Piece)) *Flow { return NewTrial(next, 0) }

// NewTrial begins a flow that draws nothing: what is set in it only shows whether
// it takes more than some pages. With 0 pages it is no trial, and draws.
func NewTrial(next func(page int) (*Sheet, Piece), most int) *Flow {
	f := &Flow{next: next, count: 1, most: most}
	f.TurnPage()
	return f
}

// Pages makes the sheets of a flow, each like the given one and not to scale unless it
// says so for the first: the first below its head, the others below a running one.
func Pages(like Sheet, first Piece, title, rest string) func(page int) (*Sheet, Piece) {
	return func(page int) (*Sheet, Piece) {
		s, head := like, first
		if page > 0 {
			head = RunningHead(title, rest, s.Frame.Body().Width())
		}
		if page > 0 || s.Scale == "" {
			s.Scale = "not to scale"
		}
		return &s, head
	}
}

// RunningHead is the head of a further page.
func RunningHead(title, rest string, width float64) Piece {
	p, _ := HeadLine(title, rest, width)
	return p
}

// HeadLine is a running head; whole is false where its line is too short for all of it.
func HeadLine(title, rest string, width float64) (p Piece, whole bool) {
	p.Height = 10
	text := Text{YMm: -4.6, SizeMm: 4.6, Bold: true, Content: title + " – " + rest, Heading: 1}
	said := text.Within(width)
	p.Draw.Add(said)
	p.Draw.Add(Segment(0, -6.8, width, -6.8, 0.5))
	return p, said.Content == text.Content
}

// Over tells whether a trial has taken more pages than it may; what else is set
// in it does not matter then.
func (f *Flow) Over() bool { return f.most > 0 && len(f.Sheets) > f.most }

// TurnPage begins a new page.
func (f *Flow) TurnPage() {
	s, header := f.next(len(f.Sheets))
	f.Sheets = append(f.Sheets, s)
	f.Body = s.Frame.Body()
	if f.most == 0 {
		s.set(header, f.Body.X0, f.Body.Y1)
	}
	f.top = f.Body.Y1 - header.Height
	f.pageTop = f.top
	f.y, f.Lowest, f.column = f.top, f.top, 0
}

// Columns begins a region of n columns below what is set.
func (f *Flow) Columns(n int) {
	f.top = min(f.Lowest, f.y)
	f.y, f.Lowest, f.column, f.count = f.top, f.top, 0, n
}

// Column is the number of the column that is being filled, from 0.
func (f *Flow) Column() int { return f.column }

// Width is a column's width.
func (f *Flow) Width() float64 {
	return (f.Body.Width() - GutterMm*float64(f.count-1)) / float64(f.count)
}

// Tallest is the height of a column on a page that has only its header.
func (f *Flow) Tallest() float64 {
	if f.pages != len(f.Sheets) {
		_, header := f.next(len(f.Sheets))
		f.pages, f.tallest = len(f.Sheets), f.Body.Height()-header.Height
	}
	return f.tallest
}

// TurnColumn goes on in the next column, or on the next page.
func (f *Flow) TurnColumn() {
	if f.column+1 < f.count {
		f.column++
		f.y = f.top
		return
	}
	f.TurnPage()
}

// advance leaves a column that has too little room: for the next one, or for a
// new page where the columns begin low on this one. At the head of a page it
// stays.
func (f *Flow) advance() {
	switch {
	case !f.AtTop():
		f.TurnColumn()
	case f.top < f.pageTop:
		f.TurnPage()
	}
}

// Fits tells whether a height is left in the column.
func (f *Flow) Fits(height float64) bool { return f.y-height >= f.Body.Y0-1e-6 }

// Left is the height left in the column.
func (f *Flow) Left() float64 { return f.y - f.Body.Y0 }

// AtTop tells whether nothing stands in the column yet.
func (f *Flow) AtTop() bool { return f.y == f.top }

// Add sets pieces one below another. A piece with keep stays with the one
// after it.
func (f *Flow) Add(pieces ...Piece) {
	for i, p := range pieces {
		if len(p.Draw.Items) == 0 && p.Later == nil {
			f.Skip(p.Height)
			continue
		}
		need := p.Height
		for j := i; pieces[j].Keep && j+1 < len(pieces); j++ {
			need += pieces[j+1].Height
		}
		if !f.Fits(need) {
			f.advance()
			if !f.Fits(p.Height) && f.top < f.Body.Y1-f.Body.Height()/2 {
				f.TurnPage() // the columns begin too low on this page
			}
		}
		f.Set(p)
	}
}

// Skip leaves room, but neither at the head of a column nor past its foot.
func (f *Flow) Skip(height float64) {
	if !f.AtTop() {
		f.y = max(f.y-height, f.Body.Y0)
		f.Lowest = min(f.Lowest, f.y)
	}
}

// Set sets a piece where the flow stands.
func (f *Flow) Set(p Piece) { f.draw(p.Height, func() Piece { return p }) }

func (f *Flow) draw(high float64, piece func() Piece) {
	if f.most == 0 {
		x := f.Body.X0 + float64(f.column)*(f.Width()+GutterMm)
		f.Sheets[len(f.Sheets)-1].set(piece(), x, f.y)
	}
	f.y -= high
	f.Lowest = min(f.Lowest, f.y)
	f.Past = f.Past || !f.Fits(0)
}

// set places a piece by its upper left corner.
func (s *Sheet) set(p Piece, x, top float64) {
	d := p.Drawn()
	s.Draw.Place(d, x, top)
	s.Blocks = append(s.Blocks, Block{x, top, p.Height, d})
	for _, r := range p.Refers {
		r.XMm, r.YMm = r.XMm+x, r.YMm+top
		s.Refers = append(s.Refers, r)
	}
}

// Heading is a title over what follows it, with a rule under it.
func Heading(text string, width float64) Piece {
	p := Piece{Height: HeadMm*Leading + 2.6, Keep: true}
	p.Draw.Add(Text{YMm: -HeadMm * 1.05, SizeMm: HeadMm, Bold: true, Content: text, Heading: 2}.Within(width))
	p.Draw.Add(Segment(0, -HeadMm*Leading, width, -HeadMm*Leading, 0.5))
	return p
}

// Paragraph is a text set in lines, one piece a line so that it may break
// over pages; lead, such as a dash, hangs before the first.
func Paragraph(lead, text string, sizeMm float64, bold bool, width float64) []Piece {
	var indent float64
	if lead != "" {
		indent = TextWidth(lead+" ", sizeMm, bold) + 0.6
	}
	var pieces []Piece
	for i, line := range Wrap(text, sizeMm, bold, width-indent) {
		p := Piece{Height: sizeMm * Leading}
		if i == 0 && lead != "" {
			p.Draw.Add(Text{YMm: -sizeMm, SizeMm: sizeMm, Bold: bold, Content: lead})
		}
		if line != "" {
			p.Draw.Add(Text{XMm: indent, YMm: -sizeMm, SizeMm: sizeMm, Bold: bold, Content: line})
		}
		pieces = append(pieces, p)
	}
	return pieces
}

// HeightMm is how high pieces are one below another.
func HeightMm(pieces ...Piece) float64 {
	return seq.Sum(pieces, func(p Piece) float64 { return p.Height })
}

// Stack sets pieces one below another into one piece.
func Stack(pieces ...Piece) Piece {
	var all Piece
	for _, p := range pieces {
		all.Draw.Place(p.Drawn(), 0, -all.Height)
		all.Height += p.Height
	}
	return all
}
