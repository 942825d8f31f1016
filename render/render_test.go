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

// TestTonesAreTheSame: each tone is as light on every device; what has none is black.
func TestTonesAreTheSame(t *testing.T) {
	for tone, want := range map[draw.Tone]float64{draw.None: 0, draw.Black: 0, draw.Grey: 0.45, draw.Pale: 0.85, draw.White: 1} {
		if got := render.Lightness(tone); got != want {
			t.Errorf("tone %d is %v light, want %v", tone, got, want)
		}
	}
}

// TestBounds: every number of an item may be as large as MaxMm and no larger, and what is a length is more than 0.
func TestBounds(t *testing.T) {
	type values struct{ good, bad []float64 }
	const most = render.MaxMm
	nan, inf, over := math.NaN(), math.Inf(1), math.Nextafter(most, math.Inf(1))
	place := values{[]float64{0, -most, most, 0.5}, []float64{nan, inf, -inf, over, -over}}
	length := values{[]float64{1e-9, 0.5, 1, most}, []float64{0, -1, nan, inf, over}}
	line := func(x, y float64) *canvas.Path {
		return canvas.NewPathFromData([]float64{canvas.MoveToCmd, 0, 0, canvas.MoveToCmd, canvas.LineToCmd, x, y, canvas.LineToCmd})
	}
	arc := func(rx, ry float64) *canvas.Path {
		return canvas.NewPathFromData([]float64{canvas.MoveToCmd, 0, 0, canvas.MoveToCmd, canvas.ArcToCmd, rx, ry, 0, 0, 5, 5, canvas.ArcToCmd})
	}
	shape := func(width float64, dash ...float64) error {
		return render.CheckShape(draw.Shape{Path: line(1, 1), Stroke: draw.Black, WidthMm: width, DashMm: dash})
	}
	group := func(set func(m *canvas.Matrix)) error {
		m := canvas.Identity
		set(&m)
		return render.CheckGroup(draw.Group{Transform: m}, 0)
	}
	for name, c := range map[string]struct {
		of    values
		check func(v float64) error
	}{
		"x of a point":       {place, func(v float64) error { return render.CheckPath(line(v, 0)) }},
		"y of a point":       {place, func(v float64) error { return render.CheckPath(line(0, v)) }},
		"level radius":       {length, func(v float64) error { return render.CheckPath(arc(v, 3)) }},
		"upright radius":     {length, func(v float64) error { return render.CheckPath(arc(3, v)) }},
		"width":              {length, func(v float64) error { return shape(v) }},
		"dash alone":         {values{[]float64{0.001, 0.5, 1, most}, []float64{0, 0.0009, -1, nan, inf, over}}, func(v float64) error { return shape(1, v) }},
		"dash after another": {values{[]float64{0, 0.5, most}, []float64{-0.001, nan, inf, over}}, func(v float64) error { return shape(1, 2, v) }},
		"two short dashes":   {values{[]float64{0.0005}, []float64{0, 0.0004}}, func(v float64) error { return shape(1, v, v) }},
		"x of a text":        {place, func(v float64) error { return render.CheckText(draw.Text{XMm: v, SizeMm: 3}) }},
		"y of a text":        {place, func(v float64) error { return render.CheckText(draw.Text{YMm: v, SizeMm: 3}) }},
		"turn of a text":     {place, func(v float64) error { return render.CheckText(draw.Text{RotateDeg: v, SizeMm: 3}) }},
		"size of a text":     {length, func(v float64) error { return render.CheckText(draw.Text{SizeMm: v}) }},
		"place of a group":   {place, func(v float64) error { return group(func(m *canvas.Matrix) { m[0][2] = v }) }},
		"height of a group":  {place, func(v float64) error { return group(func(m *canvas.Matrix) { m[1][2] = v }) }},
		"lean of a group":    {place, func(v float64) error { return group(func(m *canvas.Matrix) { m[0][1] = v }) }},
		"scale of a group":   {values{[]float64{1.05e-12, -1.05e-12, 1, most}, []float64{0.95e-12, -0.95e-12, 0, nan, over}}, func(v float64) error { return group(func(m *canvas.Matrix) { m[0][0] = v }) }},
		"depth of a group":   {values{[]float64{0, 25}, []float64{26, 27}}, func(v float64) error { return render.CheckGroup(draw.Group{Transform: canvas.Identity}, int(v)) }},
		"clip of a group": {place, func(v float64) error {
			return render.CheckGroup(draw.Group{Transform: canvas.Identity, Clip: line(v, 0)}, 0)
		}},
	} {
		for _, v := range c.of.good {
			if err := c.check(v); err != nil {
				t.Errorf("%s of %v: %v", name, v, err)
			}
		}
		for _, v := range c.of.bad {
			if c.check(v) == nil {
				t.Errorf("%s of %v is let through", name, v)
			}
		}
	}
	if err := render.CheckShape(draw.Shape{Path: line(1, 1), Fill: draw.Black, DashMm: []float64{-1}}); err != nil {
		t.Errorf("what is not drawn of a shape without a line: %v", err)
	}
}

// TestEach: items are handed over in their order, each to what takes its kind, until the first error; a device without
// links is handed none.
func TestEach(t *testing.T) {
	line := draw.Segment(0, 0, 1, 1, 1)
	d := &draw.Drawing{Items: []draw.Item{line, draw.Text{Content: "a"}, draw.Link{To: "b"}, draw.Group{Drawing: &draw.Drawing{}}, draw.Text{Content: "c"}}}
	stop := errors.New("stop")
	for _, c := range []struct {
		at    string // where an error comes
		links bool
		want  string
	}{{"", true, "shape a link b group c"}, {"", false, "shape a group c"}, {"shape", true, "shape"}, {"a", true, "shape a"}, {"link b", true, "shape a link b"}, {"group", false, "shape a group"}, {"c", true, "shape a link b group c"}} {
		var seen []string
		see := func(name string) error {
			if seen = append(seen, name); name == c.at {
				return stop
			}
			return nil
		}
		var link func(draw.Link) error
		if c.links {
			link = func(l draw.Link) error { return see("link " + l.To) }
		}
		err := render.Each(d, func(draw.Shape) error { return see("shape") }, func(text draw.Text) error { return see(text.Content) }, func(draw.Group) error { return see("group") }, link)
		if got := strings.Join(seen, " "); got != c.want || (c.at != "") != errors.Is(err, stop) {
			t.Errorf("an error at %q: %q, %v, want %q", c.at, got, err, c.want)
		}
	}
	if err := render.Each(nil, nil, nil, nil, nil); err != nil {
		t.Errorf("no drawing: %v", err)
	}
	if err := render.Each(&draw.Drawing{Items: []draw.Item{draw.Pressed{}}}, nil, nil, nil, nil); err == nil {
		t.Error("an item of no known kind is let through")
	}
}
