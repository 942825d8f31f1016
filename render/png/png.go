// Package png draws a page as a grey PNG picture, for a look before printing.
// It is no measure: use the PDF for 1:1.
//
// In comes a page in millimetres with the origin at the lower left corner, y
// up; out goes a picture of dpi dots to the inch on white paper. Text is
// filled with the outlines of package typeface. Errors say which number is out
// of range or not finite; nothing is written to w before the picture is drawn.
package png

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	imgdraw "image/draw"
	"image/png"
	"io"
	"math"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"

	"centrepop/parts/geom"
	"centrepop/render"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

// maxPixels bounds a picture to 400 MB of memory: A3 at 600 dpi has 70 million.
const maxPixels = 1e8

// Write writes the page to w with dpi dots to the inch.
func Write(w io.Writer, page *draw.Page, dpi float64) error {
	if page == nil {
		return fmt.Errorf("png: there is no page")
	}
	width, height := math.Round(page.WidthMm/geom.MmPerInch*dpi), math.Round(page.HeightMm/geom.MmPerInch*dpi)
	if !(width >= 1) || !(height >= 1) || !(width*height <= maxPixels) || !(dpi > 0) {
		return fmt.Errorf("png: %v x %v mm at %v dpi is no picture of 1 to %.0f dots", page.WidthMm, page.HeightMm, dpi, maxPixels)
	}
	p := newPainter(int(width), int(height), page.HeightMm, dpi)
	imgdraw.Draw(p.img, p.img.Bounds(), image.White, image.Point{}, imgdraw.Src)
	if err := p.drawing(&page.Drawing, canvas.Identity, 0); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	grey := image.NewGray(p.img.Bounds())
	imgdraw.Draw(grey, grey.Bounds(), p.img, image.Point{}, imgdraw.Src)
	var b bytes.Buffer
	if err := png.Encode(&b, grey); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	if _, err := w.Write(b.Bytes()); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	return nil
}

// painter draws on one picture. Matrices lead from a drawing's millimetres to
// those of the page.
type painter struct {
	img      *image.RGBA
	ras      *rasterizer.Rasterizer
	heightMm float64
	dpi      float64
}

func newPainter(width, height int, heightMm, dpi float64) *painter {
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	return &painter{
		img:      img,
		ras:      rasterizer.FromImage(img, canvas.DPI(dpi), canvas.LinearColorSpace{}),
		heightMm: heightMm,
		dpi:      dpi,
	}
}

// layer is a clear picture of the same size.
func (p *painter) layer() *painter {
	return newPainter(p.img.Rect.Dx(), p.img.Rect.Dy(), p.heightMm, p.dpi)
}

func (p *painter) drawing(d *draw.Drawing, m canvas.Matrix, depth int) error {
	return render.Each(d,
		func(s draw.Shape) error { return p.shape(s, m) },
		func(t draw.Text) error { return p.text(t, m) },
		func(g draw.Group) error { return p.group(g, m, depth) }, nil)
}

// group draws a clipped group on a picture of its own and lays that on through
// the shape of the clip.
func (p *painter) group(g draw.Group, m canvas.Matrix, depth int) error {
	if err := render.CheckGroup(g, depth); err != nil {
		return err
	}
	if g.Clip == nil {
		return p.drawing(g.Drawing, m.Mul(g.Transform), depth+1)
	}
	inside, mask := p.layer(), p.layer()
	if err := inside.drawing(g.Drawing, m.Mul(g.Transform), depth+1); err != nil {
		return err
	}
	if err := mask.fill(g.Clip, m, color.RGBA{A: 255}); err != nil {
		return err
	}
	imgdraw.DrawMask(p.img, p.img.Bounds(), inside.img, image.Point{}, mask.img, image.Point{}, imgdraw.Over)
	return nil
}

func (p *painter) shape(s draw.Shape, m canvas.Matrix) error {
	if s.Path.Empty() {
		return nil
	}
	if err := render.CheckShape(s); err != nil {
		return err
	}
	if s.Fill != draw.None {
		if err := p.fill(s.Path, m, colour(s.Fill)); err != nil {
			return err
		}
	}
	if s.Stroke == draw.None {
		return nil
	}
	path := s.Path
	if len(s.DashMm) > 0 {
		path = path.Dash(0, s.DashMm...)
	}
	return p.paint(path, canvas.Style{
		Stroke:       canvas.Paint{Color: colour(s.Stroke)},
		StrokeWidth:  s.WidthMm,
		StrokeCapper: canvas.ButtCap,
		StrokeJoiner: canvas.MiterJoiner{GapJoiner: canvas.BevelJoin, Limit: render.MiterLimit},
	}, m)
}

func (p *painter) text(t draw.Text, m canvas.Matrix) error {
	if err := render.CheckText(t); err != nil {
		return err
	}
	outline, err := typeface.Outline(t.Content, t.SizeMm, t.Bold)
	if err != nil || outline.Empty() {
		return err
	}
	return p.fill(outline, m.Mul(render.TextMatrix(t)), colour(t.Tone))
}

func (p *painter) fill(path *canvas.Path, m canvas.Matrix, c color.RGBA) error {
	return p.paint(path, canvas.Style{Fill: canvas.Paint{Color: c}}, m)
}

// paint puts a path on the picture. Stroking rests on path intersections,
// which on degenerate input can panic in the path library: that is told as an
// error, for a preview must not bring the program down.
func (p *painter) paint(path *canvas.Path, style canvas.Style, m canvas.Matrix) (err error) {
	if path.Empty() {
		return nil
	}
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("a path cannot be drawn: %v", r)
		}
	}()
	p.ras.RenderPath(path, style, m)
	return nil
}

func colour(t draw.Tone) color.RGBA {
	v := uint8(math.Round(255 * render.Lightness(t)))
	return color.RGBA{R: v, G: v, B: v, A: 255}
}
