package draw

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"
)

// Panel is a picture with its balloons; the drawing's origin is its upper
// left corner.
type Panel struct {
	Draw          Drawing
	Later         func() Drawing // makes Draw where it is wanted; nil if it is there
	Width, Height float64
}

// Drawn is a panel's drawing.
func (p *Panel) Drawn() *Drawing { return drawn(&p.Draw, p.Later) }

// PlaceRow sets panels side by side, the spare room shared among them, their
// captions at one height; they are drawn with the piece.
func PlaceRow(p *Piece, panels []Panel, width float64) {
	var used float64
	for _, q := range panels {
		used += q.Width
		p.Height = max(p.Height, q.Height)
	}
	gap := max(0, (width-used)/float64(len(panels)+1))
	high := p.Height
	p.Later = func() Drawing {
		var row Drawing
		x := gap
		for i := range panels {
			row.Place(panels[i].Drawn(), x, panels[i].Height-high)
			x += panels[i].Width + gap
		}
		return row
	}
}

// Hatch fills a cut surface pale, hatches it at 45° inside bounds, and draws
// its edge.
func Hatch(d *Drawing, cut *canvas.Path, bounds Rect) {
	const pitch = 2.4
	h := bounds.Height()
	lines := &canvas.Path{}
	for x := bounds.X0 - h; x < bounds.X1; x += pitch {
		lines.MoveTo(x, bounds.Y0)
		lines.LineTo(x+h, bounds.Y1)
	}
	hatched(d, cut, Pale, lines, LineMm)
}

// hatched is a filled surface with lines on it, and its edge.
func hatched(d *Drawing, cut *canvas.Path, fill Tone, lines *canvas.Path, edgeMm float64) {
	inner := &Drawing{Items: []Item{Shape{Path: lines, Stroke: Black, WidthMm: HairMm}}}
	d.Add(Shape{Path: cut, Fill: fill}, Group{Drawing: inner, Transform: canvas.Identity, Clip: cut}, Shape{Path: cut, Stroke: Black, WidthMm: edgeMm})
}

// Spread moves wanted positions (in rising order) apart to at least step,
// between lo and hi, as little as it can in all (least squares); closer where there
// is no room for the step.
func Spread(wanted []float64, step, lo, hi float64) []float64 {
	if n := len(wanted); n > 1 {
		step = min(step, (hi-lo)/float64(n-1))
	}
	return Apart(wanted, slices.Repeat([]float64{step}, len(wanted)), lo-step/2, hi+step/2)
}

// Apart moves the middles of what is so wide (in rising order) to where none lies over
// another, between lo and hi, as little as it can in all (least squares); beyond hi where
// there is no room.
func Apart(wanted, widths []float64, lo, hi float64) []float64 {
	// Without the widths they only have to rise: neighbours that would fall share
	// their mean, which is the least in squares.
	type block struct{ mean, count float64 }
	var blocks []block
	before := make([]float64, len(wanted)) // from the first middle to each, set close
	for i, w := range wanted {
		if i > 0 {
			before[i] = before[i-1] + (widths[i-1]+widths[i])/2
		}
		b := block{w - before[i], 1}
		for k := len(blocks) - 1; k >= 0 && blocks[k].mean > b.mean; k-- {
			both := blocks[k].count + b.count
			b = block{(blocks[k].mean*blocks[k].count + b.mean*b.count) / both, both}
			blocks = blocks[:k]
		}
		blocks = append(blocks, b)
	}
	places := make([]float64, 0, len(wanted))
	for _, b := range blocks {
		for range int(b.count) {
			last := len(wanted) - 1
			places = append(places, max(lo+widths[0]/2, min(b.mean, hi-widths[last]/2-before[last]))+before[len(places)])
		}
	}
	return places
}

// Cross tells whether two straight lines, from a to b and from c to d, cross between their ends.
func Cross(a, b, c, d canvas.Point) bool {
	side := func(p, q, r canvas.Point) float64 { return q.Sub(p).PerpDot(r.Sub(p)) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// HatchAt draws a cut surface white with lines at an angle.
func HatchAt(d *Drawing, cut *canvas.Path, deg, pitch, edgeMm float64) {
	b := cut.Bounds()
	cx, cy := (b.X0+b.X1)/2, (b.Y0+b.Y1)/2
	sin, cos := math.Sincos(deg * math.Pi / 180)
	half := math.Hypot(b.W(), b.H())/2 + pitch
	lines := &canvas.Path{}
	// The lines lie on a grid of the paper, so that the two halves of a part
	// match.
	off := math.Mod(-cx*sin+cy*cos, pitch)
	for k := -math.Ceil(half/pitch) * pitch; k <= half; k += pitch {
		ox, oy := cx-sin*(k-off), cy+cos*(k-off)
		lines.MoveTo(ox-cos*half, oy-sin*half)
		lines.LineTo(ox+cos*half, oy+sin*half)
	}
	hatched(d, cut, White, lines, edgeMm)
}
