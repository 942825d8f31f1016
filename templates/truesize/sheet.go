package truesize

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// Name heads the 1:1 sheets in the index and the bookmarks.
const Name = "Templates, 1:1"

// chapters draws the sheets, with a bookmark where each template begins.
func chapters(pl *plan.Plan, pages []*page, kept *draw.Kept) []draw.Chapter {
	if len(pages) == 0 {
		return nil
	}
	all := draw.Chapter{Name: Name}
	seen := map[*plan.PartPlan]map[string]bool{}
	for _, p := range pages {
		s := kept.Sheets(p.shown(pl), func() []*draw.Sheet { return []*draw.Sheet{p.draw(pl)} })[0]
		p.close(pl, s)
		kept.Complete([]*draw.Sheet{s})
		for _, t := range p.templates() {
			if seen[t.part] == nil {
				seen[t.part] = map[string]bool{}
			}
			if !seen[t.part][t.name] {
				seen[t.part][t.name] = true
				s.Starts = append(s.Starts, t.part.Title+": "+t.name)
			}
		}
		all.Sheets = append(all.Sheets, s)
	}
	return []draw.Chapter{all}
}

// templates are those that a sheet has a tile of, each followed by the others that
// it serves for.
func (p *page) templates() []*template {
	var out []*template
	for _, one := range p.tiles {
		out = append(append(out, one.of), one.of.also...)
	}
	return out
}

type shown struct {
	units parts.Units
	frame draw.Frame
	tiles []shownTile
}

// shownTile is a tile by the parts that its template is made of and serves for, and
// what these give it together.
type shownTile struct {
	tile       // without its template
	x, y       float64
	seams      []match
	parts      []*plan.PartPlan
	name, how  string
	legend     []string
	extra      []plan.Circle
	dev        *plan.Development
	face       *plan.Face
	full, core draw.Rect
}

func (p *page) shown(pl *plan.Plan) shown {
	out := shown{units: pl.Units, frame: p.frame}
	for _, one := range p.tiles {
		t := one.of
		show := shownTile{tile: one.tile, x: one.x, y: one.y, seams: one.seams(), parts: []*plan.PartPlan{t.part}, name: t.name, how: t.how, legend: t.legend, dev: t.dev, full: t.full, core: t.core}
		show.of = nil
		show.parts = append(show.parts, seq.Map(t.also, func(other *template) *plan.PartPlan { return other.part })...)
		if t.punch != nil {
			show.extra, show.face = t.punch.extra, t.punch.face
		}
		out.tiles = append(out.tiles, show)
	}
	return out
}

// close draws what needs the page's number.
func (p *page) close(pl *plan.Plan, s *draw.Sheet) {
	s.Close = func(n, total int) { p.strip(pl, s, fmt.Sprintf("page %d of %d", n, total)) }
}

// draw draws a sheet but for its strip.
func (p *page) draw(pl *plan.Plan) *draw.Sheet {
	s := &draw.Sheet{Frame: p.frame, Scale: draw.TrueScale, FillShare: p.fill()}
	var names []string
	for _, t := range p.templates() {
		if title := t.part.Title; len(s.Parts) == 0 || s.Parts[len(s.Parts)-1] != title {
			s.Parts = append(s.Parts, title)
		}
		names = append(names, t.name)
	}
	s.Part, s.Name = strings.Join(s.Parts, ", "), names[0]
	w := window(p.frame)
	rules(&s.Draw, w, pl.Units)
	alone := len(p.tiles) == 1
	if alone {
		one, texts := &p.tiles[0], []string(nil)
		if one.n <= 1 {
			texts = slices.DeleteFunc(append([]string{one.of.how, one.partial()}, one.of.legend...), func(text string) bool { return text == "" })
		}
		s.Unsaid = one.draw(s, w, notes(texts, false)...)
	} else {
		for one := range seq.Refs(p.tiles) {
			x, y, texts := w.X0+one.x, w.Y1-one.y, []draw.Text(nil)
			if !p.inside(one.captionedMm()) {
				y = one.drawCaption(s, x, y)
			} else if texts = notes(one.captionTexts(), true); one.x > 0 {
				s.Draw.Add(draw.Segment(x-gapMm/2, w.Y0, x-gapMm/2, w.Y1, draw.ThinMm))
			}
			one.draw(s, draw.R(x, y-one.window.Height(), x+one.window.Width(), y), texts...)
		}
	}
	return s
}

// drawCaption sets the caption of a tile from a place down, and returns where it ends.
func (one *tile) drawCaption(s *draw.Sheet, x, y float64) float64 {
	size := draw.TextMm
	for i, line := range one.captionLines() {
		y -= draw.TextMm * 1.25
		s.Draw.Add(draw.Text{XMm: x + captionPadMm, YMm: y + 0.8, SizeMm: size, Bold: i == 0, Content: line})
		size = draw.SmallMm
	}
	return y - 1.5
}

// atRuleMm is the room that texts leave to the rule on the left.
const atRuleMm = 0.8

// draw draws a tile inside r: in its middle where r is larger; texts stand
// where it leaves room. It tells whether some are left for which there is none.
func (one *placed) draw(s *draw.Sheet, r draw.Rect, texts ...draw.Text) (left bool) {
	seen := one.window
	ox := r.X0 - seen.X0 + (r.Width()-seen.Width())/2
	oy := r.Y1 - seen.Y1 - (r.Height()-seen.Height())/2
	window := seen.Moved(ox, oy)
	l := laid{s, draw.NewOccupied(window), &draw.Drawing{}, ox, oy}
	l.AddText(draw.R(draw.MarginMm, window.Y0, draw.MarginMm+ruleMm+atRuleMm, window.Y1))
	one.seamLines(l)
	one.of.draw(l)
	one.seamLetters(l)
	one.seamNotes(l)
	if one.n > 0 {
		s.Holds = append(s.Holds, one.of.title(one.n))
	}
	const clear = 2.0 // of the lines at the rim of the template
	rooms := []*draw.Occupied{l.Occupied}
	for _, b := range []draw.Rect{draw.R(r.X0, r.Y0, r.X1, window.Y0-clear), draw.R(r.X0, window.Y1+clear, r.X1, r.Y1),
		draw.R(window.X1+clear, r.Y0, r.X1, r.Y1), draw.R(r.X0, r.Y0, window.X0-clear, r.Y1)} {
		rooms = append(rooms, draw.NewOccupied(b))
	}
	for _, text := range note(s, rooms, texts) {
		if text.Bold {
			headUpright(s, l.Occupied, text.Content)
		}
		left = true
	}
	one.pageMap(s, rooms)
	return left
}

// stripCell is a cell of the strip: lines from the top, the first bold; one size sets
// running text.
type stripCell struct {
	width float64
	lines []string
	sizes []float64
	more  string // where the rest of a text stands that does not fit

	arrow, mapped bool // TOP before its lines, the map of the tiles after them
}

func jobText(pl *plan.Plan) string {
	return words.Join(" ", pl.Job, words.When(pl.Revision != "", "rev "+pl.Revision))
}

func (p *page) strip(pl *plan.Plan, s *draw.Sheet, page string) {
	b := draw.R(draw.MarginMm, s.Frame.HeightMm-draw.MarginMm-stripMm, s.Frame.WidthMm-draw.MarginMm, s.Frame.HeightMm-draw.MarginMm)
	s.Draw.Add(draw.Box(b, 0.5))
	one, check := &p.tiles[0], draw.RuleCheck(pl.Units == parts.Inches)
	cells := sharedCells(s.Part, jobText(pl), page, check, b)
	if len(p.tiles) == 1 {
		cells = one.cells(jobText(pl), page, check, s.Unsaid, b)
	}
	x := b.X0
	for i, c := range cells {
		if i > 0 {
			s.Draw.Add(draw.Segment(x, b.Y0, x, b.Y1, draw.LineMm))
		}
		left, right := x+1.4, x+c.width*b.Width()-1.2
		if c.arrow {
			s.Draw.Add(draw.TopArrow(x+4, b.Y0+1.6, 7))
			left += 6.5
		}
		if c.mapped {
			right -= 9
			one.drawMap(&s.Draw, draw.R(right+1, b.Y0+1, right+9, b.Y1-1))
		}
		c.draw(s, left, right, b)
		x += c.width * b.Width()
	}
}

// cells are those of a template that has its sheet for itself: what it is, which side
// is out, how to join it and where it stands; what to drill, on further tiles and where
// notes are unsaid on the sheet.
func (one *tile) cells(job, page, check string, unsaid bool, b draw.Rect) []stripCell {
	t := one.of
	make := "make " + strconv.Itoa(t.part.Quantity)
	make += words.When(t.part.Quantity > 1, ", print as often")
	join := cmp.Or(one.joining(), "Check "+check+" on both rules with a steel rule before marking.")
	name, more := "Punch template", "more: see the part’s sheet"
	switch {
	case one.n > 0:
		name = fmt.Sprintf("Tile %d of %d", one.n, one.grid.count())
	case t.exact:
		name = "Template"
	}
	cells := []stripCell{
		{width: 0.21, lines: []string{t.part.Title, words.Join(" · ", make, job)}, sizes: []float64{4.2, 2.8}},
		{width: 0.17, lines: []string{"TOP", t.side}, sizes: []float64{4.2, 2.8}, arrow: true},
	}
	if t.exact && !t.topped() {
		cells[1] = stripCell{width: 0.17, lines: []string{t.name, t.side}, sizes: []float64{draw.TextMm}, more: "…"}
	}
	if draw.TextWidth(cells[0].lines[1], draw.SmallMm, false) > cells[0].width*b.Width()-cellPadMm {
		cells[0].lines, cells[0].sizes = []string{t.part.Title, make, job}, threeSizes
	}
	if one.n > 1 {
		unsaid, more = true, "more: see tile 1"
	}
	if unsaid {
		cells = append(cells, stripCell{width: 0.23, lines: t.legend, sizes: []float64{threeLinesMm}, more: more},
			stripCell{width: 0.20, lines: []string{join}, sizes: []float64{2.8}, more: more})
	} else {
		cells = append(cells, stripCell{width: 0.43, lines: []string{join}, sizes: []float64{draw.TextMm}, more: more})
	}
	return append(cells, stripCell{width: 0.19, lines: []string{name, "1:1 · " + page}, sizes: []float64{4.6, 3}, mapped: one.n > 0})
}

// sharedCells are those of a sheet that several templates share: their parts, in bold
// over the job where they fit on a line, else alone in small letters.
func sharedCells(names, job, page, check string, b draw.Rect) []stripCell {
	parts := stripCell{width: 0.26, lines: []string{names, job}, sizes: []float64{4.2, 2.8}}
	last := stripCell{width: 0.22, lines: []string{page, "templates, 1:1"}, sizes: []float64{4.2, 2.8}}
	if draw.TextWidth(names, draw.TextMm, true) > parts.width*b.Width()-cellPadMm {
		parts.lines, parts.sizes, parts.more = []string{names}, []float64{draw.TextMm}, "…"
		last.lines, last.sizes = append(last.lines, job), threeSizes
	}
	return []stripCell{parts, {
		width: 0.52, lines: []string{"Cut the templates apart. Each lies with the printed side out.", "Check " + check + " on both rules with a steel rule."},
		sizes: []float64{3.2, 2.8},
	}, last}
}

// cellPadMm is the room at the sides of a cell, threeSizes the text of three lines in
// it.
const cellPadMm = 2.6

// threeLinesMm is the largest text of which three lines stand in the strip.
const threeLinesMm = 2.9

var threeSizes = []float64{2.8, 2.65, 2.65}

// draw sets the lines of a cell; a single line may break into three.
func (c stripCell) draw(s *draw.Sheet, left, right float64, b draw.Rect) {
	width := right - left
	lines, sizes := c.lines, c.sizes
	switch {
	case len(sizes) == 1:
		lines, sizes = c.running(width)
	case len(sizes) == 2 && draw.TextWidth(lines[0], draw.SmallMm, true) > width: // a long name takes two lines
		name := draw.Wrap(lines[0], draw.SmallMm, true, width)
		lines, sizes = []string{name[0], strings.Join(name[1:], " "), lines[1]}, threeSizes
	}
	step := stripMm / float64(max(2, len(lines)))
	for i, line := range lines {
		bold := len(c.sizes) > 1 && i <= len(lines)-len(c.lines)
		text, size := draw.Shrink(line, sizes[i], bold, width)
		s.Draw.Add(draw.Text{XMm: left, YMm: b.Y1 - step*(float64(i)+0.5) - size*0.36, SizeMm: size, Bold: bold, Content: text})
	}
}

// running breaks the text of a cell into three lines at the most, the smaller the longer it is; what has
// no room is left out by whole texts, if the first has room.
func (c stripCell) running(width float64) (all []string, sizes []float64) {
	broken := func(size float64, texts ...string) []string {
		return seq.Flat(texts, func(text string) []string { return draw.Wrap(text, size, false, width) })
	}
	size := c.sizes[0]
	for all = broken(size, c.lines...); len(all) > 2 && (len(all) > 3 || size > threeLinesMm) && size > draw.SmallMm; all = broken(size, c.lines...) {
		size = max(draw.SmallMm, size-0.1)
	}
	if len(all) > 3 {
		whole := len(broken(size, c.lines[0]))
		if whole > 2 || len(c.lines) > 1 && len(broken(size, c.lines[:2]...)) <= 2 {
			whole = 2
		}
		all = append(all[:whole], c.more)
	}
	return all, []float64{size, size, size}
}

// rules draws rules along the left and the lower edge of a window: millimetres,
// or eighths of an inch in an inch job. What to check by stands out on
// both.
func rules(d *draw.Drawing, w draw.Rect, units parts.Units) {
	zero := canvas.Point{X: w.X0, Y: w.Y0}
	draw.EdgeRule(d, zero, w.Width(), units == parts.Inches, false)
	draw.EdgeRule(d, zero, w.Height(), units == parts.Inches, true)
}
