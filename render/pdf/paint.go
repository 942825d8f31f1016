package pdf

import (
	"fmt"
	"strings"

	"github.com/go-pdf/fpdf"
	"github.com/tdewolff/canvas"

	"centrepop/render"
	"centrepop/templates"
)

// family is the name the faces go by inside the library.
const family = "dejavucondensed"

// nominalPt is the size every text is set in; the transform around it gives
// the true size, because the library rounds sizes to 0.01 point.
const nominalPt = 10.0

// painter writes the content of one page. It uses the library only to put out
// raw operators and to set text, since the library rounds lengths to 0.01 pt.
type painter struct {
	f        *fpdf.Fpdf
	heightMm float64
}

func (p *painter) drawing(d *templates.Drawing, depth int) error {
	return render.Each(d, p.shape, p.text, func(g templates.Group) error { return p.group(g, depth) })
}

func (p *painter) group(g templates.Group, depth int) error {
	if err := render.CheckGroup(g, depth); err != nil {
		return err
	}
	p.f.RawWriteStr("q")
	if g.Clip != nil {
		clip := pathOperators(g.Clip)
		if clip == "" {
			clip = "0 0 m h " // an empty path lets nothing through
		}
		p.f.RawWriteStr(clip + "W n")
	}
	p.f.RawWriteStr(matrixOperator(g.Transform))
	if err := p.drawing(g.Drawing, depth+1); err != nil {
		return err
	}
	p.f.RawWriteStr("Q")
	return nil
}

func (p *painter) shape(s templates.Shape) error {
	if s.Path == nil || s.Path.Empty() || s.Fill == templates.None && s.Stroke == templates.None {
		return nil
	}
	if err := render.CheckShape(s); err != nil {
		return err
	}
	var b strings.Builder
	b.WriteString("q ")
	paint := "B"
	if s.Fill != templates.None {
		b.WriteString(grey(s.Fill) + " g ")
	} else {
		paint = "S"
	}
	if s.Stroke != templates.None {
		b.WriteString(penOperators(s))
	} else {
		paint = "f"
	}
	b.WriteString(pathOperators(s.Path) + paint + " Q")
	p.f.RawWriteStr(b.String())
	return nil
}

// penOperators sets grey, width, butt ends, mitred joins and dashes.
func penOperators(s templates.Shape) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s G %s w 0 J 0 j %d M ", grey(s.Stroke), number(s.WidthMm*ptPerMm), render.MiterLimit)
	if len(s.DashMm) > 0 {
		dashes := make([]string, len(s.DashMm))
		for i, d := range s.DashMm {
			dashes[i] = number(d * ptPerMm)
		}
		b.WriteString("[" + strings.Join(dashes, " ") + "] 0 d ")
	}
	return b.String()
}

func (p *painter) text(t templates.Text) error {
	if err := render.CheckText(t); err != nil {
		return err
	}
	m, content := render.TextMatrix(t)
	if content == "" {
		return nil
	}
	scale := t.SizeMm * ptPerMm / nominalPt
	m = m.Scale(scale, scale)
	style := ""
	if t.Bold {
		style = "B"
	}
	p.f.RawWriteStr("q " + grey(t.Tone) + " g " + matrixOperator(m))
	p.f.SetFont(family, style, nominalPt)
	p.f.Text(0, p.heightMm, content) // the library counts y from the top
	p.f.RawWriteStr("Q")
	return p.f.Error()
}

// grey is the lightness of a tone in DeviceGray.
func grey(t templates.Tone) string { return number(render.Lightness(t)) }

// matrixOperator concatenates a transform of millimetres.
func matrixOperator(m canvas.Matrix) string {
	var b strings.Builder
	for _, v := range []float64{m[0][0], m[1][0], m[0][1], m[1][1]} {
		b.WriteString(render.Decimal(v, 9) + " ")
	}
	return b.String() + point(m[0][2], m[1][2]) + "cm"
}

// point is a place in millimetres as two numbers in points, space after each.
func point(xMm, yMm float64) string {
	return number(xMm*ptPerMm) + " " + number(yMm*ptPerMm) + " "
}

func number(v float64) string { return render.Decimal(v, 4) }
