package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"slices"
	"testing"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"

	"centrepop/render/measure"
	"centrepop/templates/draw"
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
		saving := &painter{pen: freshPen, seen: area{0, 0, 100, 100}}
		full := &painter{pen: freshPen, seen: area{-9000, -9000, 9000, 9000}}
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
