package pdf

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/go-pdf/fpdf"
	"github.com/tdewolff/canvas"

	"centrepop/templates"
	"centrepop/templates/typeface"
)

// family is the name the faces go by inside the library.
const family = "dejavucondensed"

// nominalPt is the size every text is set in; the transform around it gives
// the true size, because the library rounds sizes to 0.01 point.
const nominalPt = 10.0

// maxDepth bounds groups within groups: 28 saved graphics states are the
// least every reader takes (annex C.2), and a group needs one, its text one.
const maxDepth = 26

// maxMm bounds coordinates: far off any page, near enough for the single
// precision readers count in.
const maxMm = 1e5

// painter writes the content of one page. It uses the library only to put out
// raw operators and to set text, since the library rounds lengths to 0.01 pt.
type painter struct {
	f        *fpdf.Fpdf
	heightMm float64
}

func (p *painter) drawing(d *templates.Drawing, depth int) error {
	if d == nil {
		return nil
	}
	if depth > maxDepth {
		return fmt.Errorf("groups lie more than %d deep", maxDepth)
	}
	for _, item := range d.Items {
		var err error
		switch item := item.(type) {
		case templates.Shape:
			err = p.shape(item)
		case templates.Text:
			err = p.text(item)
		case templates.Group:
			err = p.group(item, depth)
		default:
			err = fmt.Errorf("cannot draw a %T", item)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (p *painter) group(g templates.Group, depth int) error {
	m := g.Transform
	if !finite(m[0][0], m[0][1], m[0][2], m[1][0], m[1][1], m[1][2]) || m.Det() == 0 {
		return fmt.Errorf("a group's transform %v cannot be drawn", m)
	}
	p.f.RawWriteStr("q")
	if g.Clip != nil {
		clip, err := pathOperators(g.Clip)
		if err != nil {
			return fmt.Errorf("clip: %w", err)
		}
		if clip == "" {
			clip = "0 0 m h " // an empty path lets nothing through
		}
		p.f.RawWriteStr(clip + "W n")
	}
	p.f.RawWriteStr(matrixOperator(m))
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
	path, err := pathOperators(s.Path)
	if err != nil {
		return err
	}
	var b strings.Builder
	b.WriteString("q ")
	paint := ""
	if s.Fill != templates.None {
		b.WriteString(grey(s.Fill) + " g ")
		paint = "f"
	}
	if s.Stroke != templates.None {
		pen, err := penOperators(s)
		if err != nil {
			return err
		}
		b.WriteString(pen)
		paint = map[string]string{"": "S", "f": "B"}[paint]
	}
	b.WriteString(path)
	b.WriteString(paint + " Q")
	p.f.RawWriteStr(b.String())
	return nil
}

// penOperators sets grey, width, butt ends, mitred joins and dashes.
func penOperators(s templates.Shape) (string, error) {
	if !(s.WidthMm > 0) || s.WidthMm > maxMm {
		return "", fmt.Errorf("a line of width %v mm cannot be drawn", s.WidthMm)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s G %s w 0 J 0 j ", grey(s.Stroke), number(s.WidthMm*ptPerMm))
	if len(s.DashMm) > 0 {
		sum := 0.0
		b.WriteString("[")
		for i, d := range s.DashMm {
			if !(d >= 0) || d > maxMm {
				return "", fmt.Errorf("a dash of %v mm cannot be drawn", d)
			}
			sum += d
			if i > 0 {
				b.WriteString(" ")
			}
			b.WriteString(number(d * ptPerMm))
		}
		if sum < 1e-3 {
			return "", errors.New("the dashes have no length")
		}
		b.WriteString("] 0 d ")
	}
	return b.String(), nil
}

func (p *painter) text(t templates.Text) error {
	if !finite(t.XMm, t.YMm, t.RotateDeg) || math.Abs(t.XMm) > maxMm || math.Abs(t.YMm) > maxMm {
		return fmt.Errorf("text %q stands at %v, %v turned %v", t.Content, t.XMm, t.YMm, t.RotateDeg)
	}
	if !(t.SizeMm > 0) || t.SizeMm > maxMm {
		return fmt.Errorf("text %q has the size %v mm", t.Content, t.SizeMm)
	}
	content := typeface.Printable(t.Content)
	if content == "" {
		return nil
	}
	m := canvas.Identity.Translate(t.XMm, t.YMm).Rotate(t.RotateDeg)
	width := typeface.WidthMm(content, t.SizeMm, t.Bold)
	switch t.Align {
	case templates.Centre:
		m = m.Translate(-width/2, 0)
	case templates.Right:
		m = m.Translate(-width, 0)
	}
	scale := t.SizeMm * ptPerMm / nominalPt
	m = m.Scale(scale, scale)
	tone := t.Tone
	if tone == templates.None {
		tone = templates.Black
	}
	style := ""
	if t.Bold {
		style = "B"
	}
	p.f.RawWriteStr("q " + grey(tone) + " g " + matrixOperator(m))
	p.f.SetFont(family, style, nominalPt)
	p.f.Text(0, p.heightMm, content) // the library counts y from the top
	p.f.RawWriteStr("Q")
	return p.f.Error()
}

// grey is the lightness of a tone in DeviceGray.
func grey(t templates.Tone) string {
	switch t {
	case templates.Grey:
		return "0.45"
	case templates.Pale:
		return "0.85"
	case templates.White:
		return "1"
	}
	return "0"
}

// matrixOperator concatenates a transform of millimetres.
func matrixOperator(m canvas.Matrix) string {
	var b strings.Builder
	for _, v := range []float64{m[0][0], m[1][0], m[0][1], m[1][1]} {
		b.WriteString(trimmed(v, 9) + " ")
	}
	return b.String() + point(m[0][2], m[1][2]) + "cm"
}

// point is a place in millimetres as two numbers in points, space after each.
func point(xMm, yMm float64) string {
	return number(xMm*ptPerMm) + " " + number(yMm*ptPerMm) + " "
}

func number(v float64) string { return trimmed(v, 4) }

// trimmed is v with so many decimals, without the zeros at the end.
func trimmed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "" || s == "-" || s == "-0" {
		return "0"
	}
	return s
}
