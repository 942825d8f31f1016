package render_test

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"

	"centrepop/render"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

func TestLightness(t *testing.T) {
	last := -1.0
	for _, tone := range []draw.Tone{draw.Black, draw.Grey, draw.Pale, draw.White} {
		l := render.Lightness(tone)
		if l <= last || l > 1 {
			t.Errorf("tone %d is %v light, the one before %v", tone, l, last)
		}
		last = l
	}
	if render.Lightness(draw.Black) != 0 || last != 1 {
		t.Error("black and white are not the ends")
	}
}

// The aligned point of a text stands at its position, whatever its turn.
func TestTextMatrix(t *testing.T) {
	text := draw.Text{XMm: 30, YMm: 40, SizeMm: 5, Content: "12 ±", RotateDeg: 75}
	width := typeface.WidthMm("12 ±", 5, false)
	for align, part := range map[draw.Align]float64{draw.Left: 0, draw.Centre: 0.5, draw.Right: 1} {
		text.Align = align
		p := render.TextMatrix(text).Dot(canvas.Point{X: part * width})
		if math.Hypot(p.X-30, p.Y-40) > 1e-9 {
			t.Errorf("alignment %d stands at %v", align, p)
		}
	}
}

// A character that the typeface lacks is named, with its text.
func TestLackingCharacter(t *testing.T) {
	for content, want := range map[string]rune{"Ring 漢": '漢', "a\tb": '\t', "😀": '😀', "\xff": utf8.RuneError, "12 □ ±": 0} {
		err := render.CheckText(draw.Text{SizeMm: 3, Content: content})
		var lacking *render.LackingError
		if got := errors.As(err, &lacking); got != (want != 0) {
			t.Errorf("%q: error %v", content, err)
		} else if got && (lacking.Char != want || lacking.Text != content) {
			t.Errorf("%q: %+v", content, lacking)
		}
	}
}

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		v    float64
		n    int
		want string
	}{
		{0, 4, "0"}, {math.Copysign(0, -1), 4, "0"}, {-0.00001, 4, "0"}, {1, 4, "1"}, {10, 4, "10"}, {-0.5, 4, "-0.5"},
		{1.23456, 4, "1.2346"}, {100.10004, 4, "100.1"}, {0.0007, 4, "0.0007"}, {-12.999999, 4, "-13"}, {7.5, 0, "8"},
		{0.123456789, 9, "0.123456789"}, {1e5, 9, "100000"}, {1e30, 2, "1000000000000000019884624838656"},
	} {
		if got := render.Decimal(c.v, c.n); got != c.want {
			t.Errorf("Decimal(%v, %d) = %q, want %q", c.v, c.n, got, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		v, n := rapid.Float64Range(-render.MaxMm, render.MaxMm).Draw(t, "v"), rapid.IntRange(0, 9).Draw(t, "n")
		got := render.Decimal(v, n)
		back, err := strconv.ParseFloat(got, 64)
		if err != nil || math.Abs(back-v) > 0.5000001*math.Pow10(-n)+1e-11 {
			t.Fatalf("Decimal(%v, %d) = %q", v, n, got)
		}
		if whole, rest, ok := strings.Cut(got, "."); ok && (len(rest) > n || rest[len(rest)-1] == '0') || got == "-0" || whole == "" {
			t.Fatalf("Decimal(%v, %d) = %q", v, n, got)
		}
	})
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
	pen := draw.Shape{Path: line(1), Stroke: draw.Black, WidthMm: 0.2}
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
		{"text", render.CheckText(draw.Text{SizeMm: 3}), true},
		{"text of no size", render.CheckText(draw.Text{}), false},
		{"text turned without end", render.CheckText(draw.Text{SizeMm: 3, RotateDeg: inf}), false},
		{"group", render.CheckGroup(draw.Group{Transform: id}, 0), true},
		{"flat group", render.CheckGroup(draw.Group{Transform: id.Scale(1, 0)}, 0), false},
		{"deep group", render.CheckGroup(draw.Group{Transform: id}, render.MaxDepth), false},
		{"group off the sheet", render.CheckGroup(draw.Group{Transform: id.Translate(inf, 0)}, 0), false},
		{"group of a bad clip", render.CheckGroup(draw.Group{Transform: id, Clip: line(nan)}, 0), false},
	} {
		if (c.err == nil) != c.ok {
			t.Errorf("%s: error %v", c.what, c.err)
		}
	}
}
