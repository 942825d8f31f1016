package render_test

import (
	"math"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/render"
	"centrepop/templates"
	"centrepop/templates/typeface"
)

func TestLightness(t *testing.T) {
	last := -1.0
	for _, tone := range []templates.Tone{templates.Black, templates.Grey, templates.Pale, templates.White} {
		l := render.Lightness(tone)
		if l <= last || l > 1 {
			t.Errorf("tone %d is %v light, the one before %v", tone, l, last)
		}
		last = l
	}
	if render.Lightness(templates.Black) != 0 || last != 1 {
		t.Error("black and white are not the ends")
	}
}

// The aligned point of a text stands at its position, whatever its turn.
func TestTextMatrix(t *testing.T) {
	text := templates.Text{XMm: 30, YMm: 40, SizeMm: 5, Content: "12\t±", RotateDeg: 75}
	width := typeface.WidthMm("12□±", 5, false)
	for align, part := range map[templates.Align]float64{templates.Left: 0, templates.Centre: 0.5, templates.Right: 1} {
		text.Align = align
		m, content := render.TextMatrix(text)
		if content != "12□±" {
			t.Errorf("the content is %q", content)
		}
		p := m.Dot(canvas.Point{X: part * width})
		if math.Hypot(p.X-30, p.Y-40) > 1e-9 {
			t.Errorf("alignment %d stands at %v", align, p)
		}
	}
}

func TestChecks(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(-1)
	line := func(x float64) *canvas.Path {
		p := &canvas.Path{}
		p.MoveTo(0, 0)
		p.LineTo(x, 1)
		return p
	}
	arc := func(r float64) *canvas.Path {
		return canvas.NewPathFromData([]float64{canvas.MoveToCmd, 0, 0, canvas.MoveToCmd, canvas.ArcToCmd, r, r, 0, 0, 5, 5, canvas.ArcToCmd})
	}
	pen := templates.Shape{Path: line(1), Stroke: templates.Black, WidthMm: 0.2}
	withWidth, withDash := pen, pen
	withWidth.WidthMm = nan
	withDash.DashMm = []float64{1, nan}
	id := canvas.Identity
	for _, c := range []struct {
		what string
		err  error
		ok   bool
	}{
		{"nil path", render.CheckPath(nil), true},
		{"line", render.CheckPath(line(render.MaxMm)), true},
		{"far line", render.CheckPath(line(1.01 * render.MaxMm)), false},
		{"NaN line", render.CheckPath(line(nan)), false},
		{"circle", render.CheckPath(canvas.Circle(4)), true},
		{"arc", render.CheckPath(arc(4)), true},
		{"arc without radius", render.CheckPath(arc(0)), false},
		{"arc of NaN", render.CheckPath(arc(nan)), false},
		{"shape", render.CheckShape(pen), true},
		{"shape of NaN width", render.CheckShape(withWidth), false},
		{"shape of NaN dash", render.CheckShape(withDash), false},
		{"text", render.CheckText(templates.Text{SizeMm: 3}), true},
		{"text of no size", render.CheckText(templates.Text{}), false},
		{"text turned without end", render.CheckText(templates.Text{SizeMm: 3, RotateDeg: inf}), false},
		{"group", render.CheckGroup(templates.Group{Transform: id}, 0), true},
		{"flat group", render.CheckGroup(templates.Group{Transform: id.Scale(1, 0)}, 0), false},
		{"deep group", render.CheckGroup(templates.Group{Transform: id}, render.MaxDepth), false},
		{"group off the sheet", render.CheckGroup(templates.Group{Transform: id.Translate(inf, 0)}, 0), false},
		{"group of a bad clip", render.CheckGroup(templates.Group{Transform: id, Clip: line(nan)}, 0), false},
	} {
		if (c.err == nil) != c.ok {
			t.Errorf("%s: error %v", c.what, c.err)
		}
	}
}
