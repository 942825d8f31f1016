package pdf

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/render"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

// through returns the rectangle about a after a transform.
func through(a draw.Rect, m canvas.Matrix) draw.Rect { return draw.Rect(canvas.Rect(a).Transform(m)) }

// pen is the part of the graphics state that items set: it is only written
// where it differs from what the file has set already.
type pen struct {
	line, fill     float64 // lightness
	widthMm        float64
	dash           []float64
	bold, lettered bool // the face in force, and whether there is one
	sizeMm         float64
}

// freshPen is how a page begins (table 52): black, lines of one point.
var freshPen = pen{widthMm: 1 / ptPerMm}

// link is a rectangle on the page that leads to a bookmark.
type link struct {
	draw.Rect
	to string
}

// taken is a drawing that was written, a page or what will stand on one: its streams in
// their order, compressed.
type taken struct {
	content [][]byte
	links   []link
	tags    []uint8
}

// painter writes the content of pages, one after the other, and notes the
// characters it has set.
type painter struct {
	b    []byte
	pack *packer
	done [][]byte // of the page, compressed; b follows
	used glyphs
	pen  pen
	// Drawings that were only moved are written moved: (dxMm, dyMm) leads
	// from an item's coordinates to those of the file, and seen is what can
	// be seen, in the latter. What lies off it is not written.
	dxMm, dyMm float64
	seen       draw.Rect
	// outer leads from the coordinates of the file to those of the page.
	outer canvas.Matrix
	links []link
	// tags are the parts of the page in the order to read them: the level of
	// a heading, or 0 for what lies between headings.
	tags  []uint8
	inTag bool
}

// page writes a page; endStream completes it.
func (p *painter) page(page *draw.Page) error {
	p.b, p.done, p.pen = p.b[:0], nil, freshPen
	p.dxMm, p.dyMm, p.seen = 0, 0, draw.R(0, 0, page.WidthMm, page.HeightMm)
	p.outer, p.links, p.tags = canvas.Identity, nil, nil
	if err := p.drawing(&page.Drawing, 0); err != nil {
		return err
	}
	p.endTag()
	return nil
}

// endStream compresses what was written since the last: a page's streams are read as
// one (clause 7.8.2).
func (p *painter) endStream() {
	p.done, p.b = append(p.done, p.pack.pack(p.b)), p.b[:0]
}

// apart returns the content of a drawing that will stand on a page not yet
// known; the next call overwrites it.
func (p *painter) apart(d *draw.Drawing) ([]byte, error) {
	p.b, p.pen = append(p.b[:0], "q 0 g 0 G 1 w []0 d\n"...), freshPen
	p.dxMm, p.dyMm, p.seen = 0, 0, draw.R(-render.MaxMm, -render.MaxMm, render.MaxMm, render.MaxMm)
	p.outer, p.links, p.tags = canvas.Identity, nil, nil
	if err := p.drawing(d, 1); err != nil {
		return nil, err
	}
	p.endTag()
	p.b = append(p.b, "Q\n"...)
	return p.b, nil
}

func (p *painter) drawing(d *draw.Drawing, depth int) error {
	if d == nil {
		return nil
	}
	for _, item := range d.Items {
		var err error
		switch item := item.(type) {
		case draw.Shape:
			err = p.shape(item)
		case draw.Text:
			err = p.text(item)
		case draw.Group:
			err = p.group(item, depth)
		case draw.Pressed:
			err = p.pressed(item)
		case draw.Link:
			err = p.link(item)
		default:
			err = fmt.Errorf("cannot draw a %T", item)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// pressed puts in a drawing that was written before.
func (p *painter) pressed(item draw.Pressed) error {
	done, ok := item.By.(taken)
	if !ok {
		return fmt.Errorf("a drawing was taken over by another device, as %T", item.By)
	}
	if len(p.tags) > 0 {
		return errors.New("a drawing that was taken over lies over another")
	}
	p.tags = slices.Clone(done.tags)
	for _, l := range done.links {
		p.addLink(l.Rect, l.to)
	}
	moved := p.dxMm != 0 || p.dyMm != 0
	if moved {
		p.b = append(p.b, "q\n"...)
		p.b = append(appendMatrix(p.b, canvas.Identity.Translate(p.dxMm, p.dyMm)), " cm\n"...)
	}
	if len(p.b) > 0 {
		p.endStream()
	}
	p.done = append(p.done, done.content...)
	if moved {
		p.b = append(p.b, "Q\n"...)
	}
	return nil
}

func (p *painter) group(g draw.Group, depth int) error {
	if err := render.CheckGroup(g, depth); err != nil {
		return err
	}
	m := canvas.Identity.Translate(p.dxMm, p.dyMm).Mul(g.Transform)
	moved := draw.OnlyMoves(m)
	pen, dxMm, dyMm, seen, outer := p.pen, p.dxMm, p.dyMm, p.seen, p.outer
	nested := g.Clip != nil || !moved
	if nested {
		p.b = append(p.b, "q\n"...)
	}
	if g.Clip != nil {
		p.clip(g.Clip)
	}
	if moved {
		p.dxMm, p.dyMm = m[0][2], m[1][2]
	} else {
		p.b = appendMatrix(p.b, m)
		p.b = append(p.b, " cm\n"...)
		p.dxMm, p.dyMm, p.seen, p.outer = 0, 0, through(p.seen, m.Inv()), outer.Mul(m)
	}
	err := p.drawing(g.Drawing, depth+1)
	p.dxMm, p.dyMm, p.seen, p.outer = dxMm, dyMm, seen, outer
	if nested {
		p.b, p.pen = append(p.b, "Q\n"...), pen
	}
	return err
}

// link notes where a link lies: the rectangle about its path.
func (p *painter) link(l draw.Link) error {
	if err := render.CheckPath(l.Path); err != nil || l.Path.Empty() {
		return err
	}
	b := l.Path.Bounds()
	p.addLink(draw.R(b.X0, b.Y0, b.X1, b.Y1), l.To)
	return nil
}

func (p *painter) addLink(r draw.Rect, to string) {
	p.links = append(p.links, link{through(r.Moved(p.dxMm, p.dyMm), p.outer), to})
}

// clip keeps what follows to the inside of a path.
func (p *painter) clip(path *canvas.Path) {
	before := len(p.b)
	far := math.Inf(1)
	bounds := draw.R(far, far, -far, -far) // nothing
	for s := range subpaths(path.Data()) {
		bounds = bounds.With(reach(s))
		p.b = p.appendPath(p.b, s)
	}
	if len(p.b) == before {
		p.b = append(p.b, "0 0 m h "...) // an empty path lets nothing through
	}
	p.b = append(p.b, "W n\n"...)
	p.seen = p.seen.Within(bounds.Moved(p.dxMm, p.dyMm))
}

func (p *painter) shape(s draw.Shape) error {
	if s.Path.Empty() || s.Fill == draw.None && s.Stroke == draw.None {
		return nil
	}
	if err := render.CheckShape(s); err != nil {
		return err
	}
	// A mitre reaches render.MiterLimit half widths beyond its corner.
	window, margin := p.seen.Moved(-p.dxMm, -p.dyMm), 0.0
	if s.Stroke != draw.None {
		margin = s.WidthMm / 2 * render.MiterLimit
	}
	drawn := false
	for sub := range subpaths(s.Path.Data()) {
		if !reach(sub).Grown(margin).Meets(window) {
			continue // it neither fills nor lines anything that is seen
		}
		if !drawn {
			p.take(s)
			drawn = true
		}
		p.b = p.appendPath(p.b, sub)
	}
	if drawn {
		p.b = append(p.b, operator(s)...)
	}
	return nil
}

// operator paints the path of a shape (clause 8.5.3).
func operator(s draw.Shape) string {
	switch {
	case s.Stroke == draw.None:
		return "f\n"
	case s.Fill == draw.None:
		return "S\n"
	}
	return "B\n"
}

func (p *painter) take(s draw.Shape) {
	if s.Fill != draw.None {
		p.fillWith(render.Lightness(s.Fill))
	}
	if s.Stroke == draw.None {
		return
	}
	if l := render.Lightness(s.Stroke); l != p.pen.line {
		p.pen.line = l
		p.b = append(render.AppendDecimal(p.b, l, 4), " G "...)
	}
	if s.WidthMm != p.pen.widthMm {
		p.pen.widthMm = s.WidthMm
		p.b = append(appendPt(p.b, s.WidthMm), " w "...)
	}
	if !slices.Equal(s.DashMm, p.pen.dash) {
		p.pen.dash = s.DashMm
		p.b = append(p.b, '[')
		for i, d := range s.DashMm {
			if i > 0 {
				p.b = append(p.b, ' ')
			}
			p.b = appendPt(p.b, d)
		}
		p.b = append(p.b, "]0 d "...)
	}
}

func (p *painter) fillWith(lightness float64) {
	if lightness != p.pen.fill {
		p.pen.fill = lightness
		p.b = append(render.AppendDecimal(p.b, lightness, 4), " g "...)
	}
}

// text sets a line of text (clause 9.4).
func (p *painter) text(t draw.Text) error {
	if err := render.CheckText(t); err != nil || t.Content == "" {
		return err
	}
	widthMm := typeface.WidthMm(t.Content, t.SizeMm, t.Bold)
	x, y := t.XMm+p.dxMm, t.YMm+p.dyMm
	// No glyph goes further from the line it stands on than its width and
	// the height of the face.
	if room := widthMm + 2*t.SizeMm; !draw.R(x, y, x, y).Grown(room).Meets(p.seen) {
		return nil
	}
	var shift float64
	switch t.Align {
	case draw.Centre:
		shift = -widthMm / 2
	case draw.Right:
		shift = -widthMm
	}
	p.fillWith(render.Lightness(t.Tone))
	p.letter(t.Bold, t.SizeMm)
	p.tag(t.Heading)
	p.b = append(p.b, "BT "...)
	if t.RotateDeg == 0 {
		p.b = append(p.appendPoint(p.b, t.XMm+shift, t.YMm), "Td("...)
	} else {
		m := canvas.Identity.Translate(x, y).Rotate(t.RotateDeg).Translate(shift, 0)
		p.b = append(appendMatrix(p.b, m), " Tm("...)
	}
	p.b = p.used.appendText(p.b, t.Content, t.Bold)
	p.b = append(p.b, ")Tj ET\n"...)
	if t.Heading > 0 {
		p.endTag()
	}
	return nil
}

// tag begins a part of the page to read, unless a text that is no heading goes on
// with the one before (clause 14.7.4.2).
func (p *painter) tag(heading uint8) {
	if p.inTag && heading == 0 {
		return
	}
	p.endTag()
	p.b = fmt.Appendf(p.b, "/%s <</MCID %d>> BDC\n", tagName(heading), len(p.tags))
	p.tags, p.inTag = append(p.tags, heading), true
}

func (p *painter) endTag() {
	if p.inTag {
		p.b, p.inTag = append(p.b, "EMC\n"...), false
	}
}

func (p *painter) letter(bold bool, sizeMm float64) {
	if p.pen.lettered && p.pen.bold == bold && p.pen.sizeMm == sizeMm {
		return
	}
	p.pen.lettered, p.pen.bold, p.pen.sizeMm = true, bold, sizeMm
	p.b = append(p.b, "/"+fontName(bold)+" "...)
	p.b = append(appendPt(p.b, sizeMm), " Tf "...)
}
