package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"

	"centrepop/render/measure"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

// content is what a painter writes for a page of 100 × 100 mm.
func content(t testing.TB, items ...draw.Item) string {
	t.Helper()
	p := &painter{pack: &packer{}}
	err := p.page(&draw.Page{WidthMm: 100, HeightMm: 100, Drawing: draw.Drawing{Items: items}})
	if err != nil {
		t.Fatal(err)
	}
	var out []byte
	for _, stream := range p.done {
		z, err := zlib.NewReader(bytes.NewReader(stream))
		if err != nil {
			t.Fatal(err)
		}
		b, err := io.ReadAll(z)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, b...)
	}
	return string(append(out, p.b...))
}

func path(svg string) *canvas.Path { return canvas.MustParseSVGPath(svg) }

func lined(svg string) draw.Shape {
	return draw.Shape{Path: path(svg), Stroke: draw.Black, WidthMm: 25.4 / 72}
}

// One point is 25.4/72 mm; the numbers are worked out by hand.
func TestOperators(t *testing.T) {
	t.Parallel()
	moved := &draw.Drawing{Items: []draw.Item{lined("M0 0L25.4 0")}}
	at := canvas.Identity.Translate(25.4, 50.8)
	grey := lined("M0 0H25.4")
	grey.Stroke, grey.DashMm = draw.Grey, []float64{25.4, 12.7}
	filled := draw.Shape{Path: path("M0 0H25.4V50.8H0Z"), Fill: draw.Pale}
	for name, c := range map[string]struct {
		items []draw.Item
		want  string
	}{
		"a line of the width that a page begins with": {[]draw.Item{lined("M0 0L25.4 50.8")}, "0 0 m 72 144 l S\n"},
		"what is set already is not set again":        {[]draw.Item{grey, grey}, "0.45 G [72 36]0 d 0 0 m 72 0 l S\n0 0 m 72 0 l S\n"},
		"full lines after dashes":                     {[]draw.Item{grey, lined("M0 0V25.4")}, "0.45 G [72 36]0 d 0 0 m 72 0 l S\n0 G []0 d 0 0 m 0 72 l S\n"},
		"a rectangle":                                 {[]draw.Item{filled}, "0.85 g 0 0 72 144 re f\n"},
		"a rectangle drawn the other way":             {[]draw.Item{draw.Shape{Path: path("M0 0V25.4H25.4V0Z"), Fill: draw.Black}}, "0 0 m 0 72 l 72 72 l 72 0 l h f\n"},
		"a quadratic curve":                           {[]draw.Item{lined("M0 0Q38.1 0 38.1 38.1")}, "0 0 m 72 0 108 36 108 108 c S\n"},
		"a cubic curve":                               {[]draw.Item{lined("M0 0C25.4 12.7 38.1 50.8 76.2 25.4")}, "0 0 m 72 36 108 144 216 72 c S\n"},
		"filled and lined":                            {[]draw.Item{draw.Shape{Path: path("M0 0L25.4 0"), Fill: draw.White, Stroke: draw.Black, WidthMm: 25.4}}, "1 g 72 w 0 0 m 72 0 l B\n"},
		"a dash alone":                                {[]draw.Item{draw.Shape{Path: path("M0 0L25.4 0"), Stroke: draw.Black, WidthMm: 25.4 / 72, DashMm: []float64{25.4}}}, "[72]0 d 0 0 m 72 0 l S\n"},
		"a drawing that is only moved":                {[]draw.Item{draw.Group{Drawing: moved, Transform: at}}, "72 144 m 144 144 l S\n"},
		"a drawing that is turned": {[]draw.Item{draw.Group{Drawing: moved, Transform: at.Rotate(90)}},
			"q\n0 1 -1 0 72 144 cm\n0 0 m 72 0 l S\nQ\n"},
		"what is set in a group ends with it": {[]draw.Item{draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{grey}}, Transform: canvas.Identity, Clip: path("M0 0H50.8V50.8H0Z")}, grey},
			"q\n0 0 144 144 re W n\n0.45 G [72 36]0 d 0 0 m 72 0 l S\nQ\n0.45 G [72 36]0 d 0 0 m 72 0 l S\n"},
		"an empty clip": {[]draw.Item{draw.Group{Drawing: moved, Transform: canvas.Identity, Clip: &canvas.Path{}}}, "q\n0 0 m h W n\nQ\n"},
		"off the sheet": {[]draw.Item{lined("M101.8 0V50"), lined("M0 -1.7H50"), draw.Text{XMm: 120, YMm: 50, SizeMm: 5, Content: "x"}}, "0 -4.8189 m 141.7323 -4.8189 l S\n"},
		"the part of a path that is on the sheet": {[]draw.Item{lined("M10 -20H20M10 12.7H25.4M10 120A5 5 0 0 0 20 120")}, "28.3465 36 m 72 36 l S\n"},
	} {
		if got := content(t, c.items...); got != c.want {
			t.Errorf("%s:\n%q, want\n%q", name, got, c.want)
		}
	}
}

// TestFaces: a face is named where it or its size changes, and only there.
func TestFaces(t *testing.T) {
	t.Parallel()
	var items []draw.Item
	for _, c := range []struct {
		inches float64
		bold   bool
	}{{1, false}, {1, false}, {2, false}, {2, true}, {2, true}, {1, true}, {1, false}} {
		items = append(items, draw.Text{XMm: 10, YMm: 10, SizeMm: 25.4 * c.inches, Bold: c.bold, Content: "x"})
	}
	got := regexp.MustCompile(`/F\d [\d.]+ Tf`).FindAllString(content(t, items...), -1)
	if want := []string{"/F1 72 Tf", "/F1 144 Tf", "/F2 144 Tf", "/F2 72 Tf", "/F1 72 Tf"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestPressedOperators: a drawing written before goes in as it is where it was drawn, and by a transform elsewhere.
func TestPressedOperators(t *testing.T) {
	t.Parallel()
	done, err := new(Press).Take(&draw.Drawing{Items: []draw.Item{lined("M0 0H25.4")}})
	if err != nil {
		t.Fatal(err)
	}
	const own = "q 0 g 0 G 1 w []0 d\n0 0 m 72 0 l S\nQ\n"
	for _, c := range []struct {
		x, y float64
		want string
	}{{0, 0, own}, {25.4, 0, "q\n1 0 0 1 72 0 cm\n" + own + "Q\n"}, {0, 50.8, "q\n1 0 0 1 0 144 cm\n" + own + "Q\n"}} {
		at := draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{done}}, Transform: canvas.Identity.Translate(c.x, c.y)}
		if got := content(t, at); got != c.want {
			t.Errorf("at %v, %v: %q, want %q", c.x, c.y, got, c.want)
		}
	}
}

// A parenthesis, a backslash and a carriage return among the bytes of glyph
// numbers are written so that a string keeps them.
func TestGlyphNumbersInStrings(t *testing.T) {
	t.Parallel()
	var g glyphs
	for r := rune(0x20); r < 0x2800; r++ {
		g.appendText(nil, string(r), false)
	}
	seen := map[byte]bool{}
	for _, s := range g.set(false) {
		if s.id>>8 != 0 {
			continue
		}
		got := string(g.appendText(nil, string(s.char), false))
		want, ok := map[byte]string{'(': "\x00\\(", ')': "\x00\\)", '\\': "\x00\\\\", '\r': "\x00\\r"}[byte(s.id)]
		if !ok {
			want = "\x00" + string([]byte{byte(s.id)})
		}
		if seen[byte(s.id)] = true; got != want {
			t.Errorf("glyph %d is written %q, want %q", s.id, got, want)
		}
	}
	for _, c := range []byte("()\\\r") {
		if !seen[c] {
			t.Errorf("no character has the glyph %d", c)
		}
	}
}

// What is not written because it cannot be seen is not seen: the picture of
// any drawing is the same without that saving.
func TestUnseenIsUnseen(t *testing.T) {
	t.Parallel()
	at := rapid.Float64Range(-60, 160)
	outer, saved := t, 0
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.Custom(func(t *rapid.T) draw.Item {
			x, y, r := at.Draw(t, "x"), at.Draw(t, "y"), rapid.Float64Range(0.1, 40).Draw(t, "r")
			s := draw.Shape{Stroke: draw.Tone(rapid.IntRange(0, 2).Draw(t, "stroke")), Fill: draw.Tone(rapid.IntRange(0, 3).Draw(t, "fill")), WidthMm: rapid.Float64Range(0.1, 6).Draw(t, "width")}
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				s.Path = canvas.EllipticalArc(r, r/3, 30, 10, 300).Translate(x, y)
			case 1:
				s.Path = path(fmt.Sprintf("M%f %fL%f %fL%f %f", x, y, x+r, y+0.1*r, x, y+0.2*r)) // a long mitre
			case 2:
				s.Path = canvas.Circle(r).Translate(x, y).Append(path("M0 0H9L3 9Z").Translate(y, x)) // no rectangle: alone it is drawn to whole dots
			default:
				return draw.Text{XMm: x, YMm: y, SizeMm: r / 2, RotateDeg: 9 * r, Align: draw.Align(int(r) % 3), Content: "Øg"}
			}
			if rapid.Bool().Draw(t, "dashed") {
				s.DashMm = []float64{2, 1}
			}
			return s
		})
		d := &draw.Drawing{Items: rapid.SliceOfN(shape, 1, 6).Draw(t, "items")}
		m := canvas.Identity.Translate(at.Draw(t, "dx")/4, at.Draw(t, "dy")/4).Rotate(rapid.SampledFrom([]float64{0, 0, 30, 200}).Draw(t, "turn"))
		group := draw.Group{Drawing: d, Transform: m}
		whole := group
		if rapid.Bool().Draw(t, "clipped") {
			group.Clip = canvas.Circle(20).Translate(at.Draw(t, "cx")/2, 50)
			// The same clip with specks far off, so that nothing lies off it.
			whole.Clip = group.Clip.Append(canvas.Rectangle(1, 1).Translate(-9000, -9000)).Append(canvas.Rectangle(1, 1).Translate(9000, 9000))
		}
		saving := &painter{pen: freshPen, seen: draw.R(0, 0, 100, 100)}
		full := &painter{pen: freshPen, seen: draw.R(-9000, -9000, 9000, 9000)}
		for p, g := range map[*painter]draw.Group{saving: group, full: whole} {
			if err := p.drawing(&draw.Drawing{Items: []draw.Item{g, g}}, 0); err != nil {
				t.Fatal(err)
			}
		}
		if len(saving.b) < len(full.b)-20 {
			saved++
		}
		if !bytes.Equal(picture(outer, saving), picture(outer, full)) {
			t.Fatalf("the pictures of\n%s\nand\n%s\ndiffer", saving.b, full.b)
		}
	})
	if saved == 0 {
		t.Error("nothing was ever left out")
	}
}

// picture draws the content a painter has written on a page of 100 × 100 mm.
func picture(t testing.TB, p *painter) []byte {
	t.Helper()
	var b bytes.Buffer
	f := newFile(&b, &packer{})
	resources, err := f.fonts(&p.used)
	if err != nil {
		t.Fatal(err)
	}
	tree := f.reserve()
	page := f.object(fmt.Sprintf("<</Type /Page /Parent %d 0 R /MediaBox [0 0 283.4646 283.4646] /Resources %d 0 R /Contents %d 0 R>>", tree, resources, f.stream("", p.b)))
	f.put(tree, fmt.Sprintf("<</Type /Pages /Count 1 /Kids [%d 0 R]>>", page))
	if err := f.complete(&draw.Document{Pages: make([]draw.Page, 1)}, undated, tree, []int{page}, f.structure(make([]taken, 1), []int{page})); err != nil {
		t.Fatal(err)
	}
	return measure.Open(t, b.Bytes()).Render(0, 60).Pix
}

func TestOutlineTree(t *testing.T) {
	t.Parallel()
	doc := &draw.Document{Pages: []draw.Page{
		{Bookmarks: []draw.Bookmark{{Title: "a"}, {Title: "b", Level: 1}}},
		{Bookmarks: []draw.Bookmark{{Title: "c", Level: 1}, {Title: "d"}}},
	}}
	want := []entry{
		{title: "a", page: 0, parent: -1, prev: -1, next: 3, first: 1, end: 2, open: 2},
		{title: "b", page: 0, parent: 0, prev: -1, next: 2, first: -1, end: -1},
		{title: "c", page: 1, parent: 0, prev: 1, next: -1, first: -1, end: -1},
		{title: "d", page: 1, parent: -1, prev: 0, next: -1, first: -1, end: -1},
	}
	if got := outlineTree(doc); !slices.Equal(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
}

// TestCubics: an arc is as many curves of equal turn as 45 degrees each need, and no more; all of them lie on the ellipse
// that SVG 1.1 F.6 describes, also where its radii are too small and grow, and the last ends where the arc does.
func TestCubics(t *testing.T) {
	t.Parallel()
	point := func(x, y float64) canvas.Point { return canvas.Point{X: x, Y: y} }
	for _, c := range []struct {
		name       string
		arc        arc
		start, end canvas.Point
		n          int
		centre     canvas.Point
		rx, ry     float64
	}{
		{"an eighth", arc{10, 10, 0, false, true}, point(10, 0), point(10*math.Sqrt2/2, 10*math.Sqrt2/2), 1, point(0, 0), 10, 10},
		{"a quarter", arc{10, 10, 0, false, true}, point(10, 0), point(0, 10), 2, point(0, 0), 10, 10},
		{"a quarter the other way", arc{10, 10, 0, false, false}, point(0, 10), point(10, 0), 2, point(0, 0), 10, 10},
		{"three quarters", arc{10, 10, 0, true, true}, point(10, 0), point(0, -10), 6, point(0, 0), 10, 10},
		{"three quarters the other way", arc{10, 10, 0, true, false}, point(10, 0), point(0, 10), 6, point(0, 0), 10, 10},
		{"a half", arc{10, 10, 0, false, true}, point(10, 0), point(-10, 0), 4, point(0, 0), 10, 10},
		{"a little", arc{10, 10, 0, false, true}, point(10, 0), point(10*math.Cos(0.1), 10*math.Sin(0.1)), 1, point(0, 0), 10, 10},
		{"over an eighth", arc{10, 10, 0, false, true}, point(10, 0), point(10*math.Cos(0.8), 10*math.Sin(0.8)), 2, point(0, 0), 10, 10},
		{"an ellipse", arc{20, 10, 0, false, true}, point(25, 3), point(5, 13), 2, point(5, 3), 20, 10},
		{"an ellipse on its side", arc{20, 10, math.Pi / 2, false, true}, point(5, 23), point(-5, 3), 2, point(5, 3), 20, 10},
		{"radii too small", arc{1, 1, 0, false, true}, point(10, 0), point(-10, 0), 4, point(0, 0), 10, 10},
		{"radii of an ellipse too small", arc{2, 1, 0, false, true}, point(8, 0), point(-8, 0), 4, point(0, 0), 8, 4},
		{"upright and too small", arc{2, 1, 0, true, false}, point(3, 6), point(3, -6), 4, point(3, 0), 12, 6},
		{"nowhere", arc{2, 1, 0, false, true}, point(3, 6), point(3, 6), 0, point(0, 0), 0, 0},
	} {
		curves := c.arc.cubics(c.start, c.end)
		if len(curves) != c.n {
			t.Errorf("%s: %d curves, want %d", c.name, len(curves), c.n)
			continue
		}
		sin, cos := math.Sincos(c.arc.rot)
		turn := func(p canvas.Point) (deg, r float64) {
			x, y := p.X-c.centre.X, p.Y-c.centre.Y
			u, v := (cos*x+sin*y)/c.rx, (cos*y-sin*x)/c.ry
			return math.Atan2(v, u) * 180 / math.Pi, math.Hypot(u, v)
		}
		from := c.start
		each := math.NaN()
		for i, k := range curves {
			for s := 0.0; s <= 1; s += 0.125 {
				q := func(a, b, d, e float64) float64 {
					return (1-s)*(1-s)*(1-s)*a + 3*s*(1-s)*(1-s)*b + 3*s*s*(1-s)*d + s*s*s*e
				}
				if _, r := turn(point(q(from.X, k[0].X, k[1].X, k[2].X), q(from.Y, k[0].Y, k[1].Y, k[2].Y))); math.Abs(r-1) > 5e-6 {
					t.Errorf("%s: curve %d is off its ellipse by %v at %v", c.name, i, r-1, s)
				}
			}
			a, _ := turn(from)
			b, _ := turn(k[2])
			step := math.Mod(b-a+720, 360)
			if !c.arc.sweep {
				step = 360 - step
			}
			if step > 45+1e-6 || i > 0 && math.Abs(step-each) > 1e-6 {
				t.Errorf("%s: curve %d turns by %v, the first by %v", c.name, i, step, each)
			}
			from, each = k[2], step
		}
		if c.n > 0 && curves[c.n-1][2] != c.end {
			t.Errorf("%s: it ends at %v, want %v", c.name, curves[c.n-1][2], c.end)
		}
	}
}

// TestReach: what a subpath cannot leave: its points and handles, and about an arc twice its larger radius, grown where
// it is too small.
func TestReach(t *testing.T) {
	t.Parallel()
	for svg, want := range map[string]draw.Rect{
		"M1 2L5 -3": draw.R(1, -3, 5, 2), "M1 2L-5 3Z": draw.R(-5, 2, 1, 3), "M0 0Q3 9 6 0": draw.R(0, 0, 6, 9), "M0 0C-4 1 5 -6 2 2": draw.R(-4, -6, 5, 2),
		"M0 0A5 5 0 0 1 6 0": draw.R(-4, -10, 16, 10), "M0 0A5 2 0 0 1 2 0": draw.R(-8, -10, 12, 10), "M0 0A2 5 0 0 1 2 0": draw.R(-8, -10, 12, 10), "M0 0A2 2 0 0 1 8 0": draw.R(0, -8, 16, 8),
	} {
		for s := range subpaths(path(svg).Data()) {
			if got := reach(s); math.Abs(got.X0-want.X0)+math.Abs(got.Y0-want.Y0)+math.Abs(got.X1-want.X1)+math.Abs(got.Y1-want.Y1) > 1e-6 {
				t.Errorf("%s: %v, want %v", svg, got, want)
			}
		}
	}
}

// TestLinkEntries: the rectangles of a page's links in points, each to the page that its title stands on; a page without
// one that leads anywhere has no entry for them.
func TestLinkEntries(t *testing.T) {
	t.Parallel()
	var b bytes.Buffer
	f := newFile(&b, &packer{})
	to := func(title string) link { return link{draw.R(25.4, 50.8, 76.2, 101.6), title} }
	targets, kids := map[string]int{"a": 0, "b": 1}, []int{11, 12}
	for _, c := range []struct {
		links []link
		want  string
	}{{nil, ""}, {[]link{to("none")}, ""}, {[]link{to("a")}, " /Annots [1 0 R ]"}, {[]link{to("b"), to("none"), to("a")}, " /Annots [2 0 R 3 0 R ]"}} {
		if got := f.annotations(c.links, targets, kids); got != c.want {
			t.Errorf("%v: %q, want %q", c.links, got, c.want)
		}
	}
	if err := f.w.Flush(); err != nil || !bytes.Contains(b.Bytes(), []byte("/Rect [72 144 216 288] /Contents (a) /Dest [11 0 R /Fit]>>")) || !bytes.Contains(b.Bytes(), []byte("/Contents (b) /Dest [12 0 R /Fit]>>")) {
		t.Errorf("%v\n%s", err, b.Bytes())
	}
}

// TestRefusalsSayWhere: what a document cannot say is named with its page, counted from 1, and its numbers.
func TestRefusalsSayWhere(t *testing.T) {
	t.Parallel()
	page := func(w, h float64, levels ...int) draw.Page {
		p := draw.Page{WidthMm: w, HeightMm: h}
		for _, l := range levels {
			p.Bookmarks = append(p.Bookmarks, draw.Bookmark{Title: "b", Level: l})
		}
		return p
	}
	for _, c := range []struct {
		pages []draw.Page
		want  string
	}{
		{[]draw.Page{page(10, 10, 0, 1, 2, 0), page(10, 10, 1)}, ""},
		{[]draw.Page{page(10, 10), page(0, 10)}, "page 2: 0 x 10 mm is no page size"}, {[]draw.Page{page(10, -1)}, "page 1: 10 x -1 mm is no page size"}, {[]draw.Page{page(maxPageMm, maxPageMm)}, ""}, {[]draw.Page{page(maxPageMm+1, 5)}, fmt.Sprintf("page 1: %v x 5 mm is no page size", maxPageMm+1)},
		{[]draw.Page{page(10, 10, 1)}, `page 1: bookmark "b" at level 1 follows one at level -1`}, {[]draw.Page{page(10, 10, 0), page(10, 10, 2)}, `page 2: bookmark "b" at level 2 follows one at level 0`}, {[]draw.Page{page(10, 10, 0, 1, -1)}, `page 1: bookmark "b" at level -1 follows one at level 1`},
	} {
		got := ""
		if _, err := check(&draw.Document{Pages: c.pages}); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestDepth: groups lie 26 deep and no deeper, whether they move, turn or clip what is in them.
func TestDepth(t *testing.T) {
	t.Parallel()
	for name, g := range map[string]draw.Group{"moved": {Transform: canvas.Identity.Translate(1, 0)}, "turned": {Transform: canvas.Identity.Rotate(1)}, "clipped": {Transform: canvas.Identity, Clip: canvas.Rectangle(50, 50)}} {
		for deep, ok := range map[int]bool{1: true, 26: true, 27: false} {
			item := draw.Item(lined("M0 0L25.4 0"))
			for range deep {
				g.Drawing = &draw.Drawing{Items: []draw.Item{item}}
				item = g
			}
			p := &painter{pack: &packer{}}
			if err := p.page(&draw.Page{WidthMm: 100, HeightMm: 100, Drawing: draw.Drawing{Items: []draw.Item{item}}}); (err == nil) != ok {
				t.Errorf("%s, %d deep: %v", name, deep, err)
			}
		}
	}
}

// TestTextsAtTheEdge: a text is written as long as it may reach the sheet: its width and twice its size round where it stands.
func TestTextsAtTheEdge(t *testing.T) {
	t.Parallel()
	const size = 10.0
	room := typeface.WidthMm("il", size, false) + 2*size
	for off, seen := range map[float64]bool{0: true, room - 0.1: true, room + 0.1: false} {
		for _, at := range [][2]float64{{-off, 50}, {100 + off, 50}, {50, -off}, {50, 100 + off}} {
			text := draw.Text{XMm: at[0], YMm: at[1], SizeMm: size, Content: "il"}
			if got := content(t, text); (got != "") != seen {
				t.Errorf("%v off at %v: written %v", off, at, got != "")
			}
			text.XMm, text.YMm = text.XMm-30, text.YMm+200
			moved := draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{text}}, Transform: canvas.Identity.Translate(30, -200)}
			if got := content(t, moved); strings.Contains(got, "Tj") != seen {
				t.Errorf("%v off at %v, moved there: %s", off, at, got)
			}
		}
	}
}
