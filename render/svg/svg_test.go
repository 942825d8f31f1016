package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"

	"centrepop/render"
	"centrepop/render/svg"
	"centrepop/templates/draw"
)

func write(t testing.TB, w, h float64, items ...draw.Item) string {
	t.Helper()
	var b bytes.Buffer
	if err := svg.Write(&b, &draw.Drawing{Items: items}, w, h); err != nil {
		t.Fatal(err)
	}
	d := xml.NewDecoder(bytes.NewReader(b.Bytes()))
	for {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("not XML: %v\n%s", err, b.String())
		}
	}
	return b.String()
}

func cut(p *canvas.Path) draw.Shape {
	return draw.Shape{Path: p, Stroke: draw.Black, WidthMm: 0.1, Layer: draw.LayerCut}
}

func polyline(points ...float64) *canvas.Path {
	p := &canvas.Path{}
	p.MoveTo(points[0], points[1])
	for i := 2; i < len(points); i += 2 {
		p.LineTo(points[i], points[i+1])
	}
	return p
}

func TestWholeFile(t *testing.T) {
	arc := &canvas.Path{}
	arc.MoveTo(30, 10)
	arc.ArcTo(20, 20, 0, false, true, 10, 30) // anticlockwise, y up
	arc.Close()
	got := write(t, 120.5, 80,
		cut(arc),
		draw.Text{XMm: 5, YMm: 6, SizeMm: 3.5, Content: "Ø 12 < 13 & \"A\"", Layer: draw.LayerNotes, Align: draw.Centre, Bold: true},
		draw.Shape{Path: polyline(1, 2, 3, 4.123456), Stroke: draw.Grey, WidthMm: 0.2, DashMm: []float64{3, 1}},
		cut(polyline(0, 0, 120.5, 80)),
	)
	want := `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="120.5mm" height="80mm" viewBox="0 0 120.5 80">
<g id="cut">
<path d="M30 70A20 20 0 0 0 10 50Z" fill="none" stroke="#000000" stroke-width="0.1" stroke-miterlimit="10"/>
<path d="M0 80L120.5 0" fill="none" stroke="#000000" stroke-width="0.1" stroke-miterlimit="10"/>
</g>
<g id="notes">
<text x="5" y="74" font-family="'DejaVu Sans Condensed', sans-serif" font-stretch="condensed" font-kerning="none" font-size="3.5" font-weight="bold" text-anchor="middle" fill="#000000" xml:space="preserve">Ø 12 &lt; 13 &amp; &#34;A&#34;</text>
</g>
<g id="drawing">
<path d="M1 78L3 75.87654" fill="none" stroke="#737373" stroke-width="0.2" stroke-miterlimit="10" stroke-dasharray="3 1"/>
</g>
</svg>
`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// Transforms of groups are in the coordinates, circles stay arcs.
func TestGroupsAreWorkedIn(t *testing.T) {
	inner := &draw.Drawing{}
	inner.Add(cut(canvas.Circle(9)), draw.Text{SizeMm: 4, Content: "up", Layer: draw.LayerNotes})
	middle := &draw.Drawing{}
	middle.Add(draw.Group{Drawing: inner, Transform: canvas.Identity.Translate(50, 0)})
	got := write(t, 200, 100, draw.Group{Drawing: middle, Transform: canvas.Identity.Translate(100, 40).Rotate(90).Scale(0.5, 0.5)})
	// The centre lies at 100, 40 + 25, in the file 100, 35; the radius is 4.5.
	for _, want := range []string{
		`d="M100 30.5A4.5 4.5 0 0 0 100 39.5A4.5 4.5 0 0 0 100 30.5Z"`,
		`stroke-width="0.05"`,
		`transform="matrix(0 -0.5 0.5 0 100 35)"`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
	if strings.Contains(strings.Split(got, "<text")[0], "transform") {
		t.Errorf("a path carries a transform:\n%s", got)
	}
}

// A link is an area over all that is drawn, with a title to read out.
func TestLinks(t *testing.T) {
	got := write(t, 100, 50,
		draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{draw.Link{Path: polyline(0, 0, 10, 0, 10, 5), To: "Die ring & \"A\""}}}, Transform: canvas.Identity.Translate(2, 3)},
		cut(polyline(0, 0, 5, 5)))
	want := `<g id="links">
<a xlink:href="#Die%20ring%20&amp;%20%22A%22"><title>Die ring &amp; &#34;A&#34;</title><path d="M2 47L12 47L12 42" fill="none" pointer-events="all"/></a>
</g>
</svg>
`
	if !strings.HasSuffix(got, want) || !strings.Contains(got, ` xmlns:xlink="http://www.w3.org/1999/xlink"`) {
		t.Errorf("got\n%s\nwant at its end\n%s", got, want)
	}
	if plain := write(t, 100, 50, cut(polyline(0, 0, 5, 5))); strings.Contains(plain, "xlink") {
		t.Errorf("a drawing without links names them:\n%s", plain)
	}
}

func TestClip(t *testing.T) {
	inner := &draw.Drawing{}
	inner.Add(draw.Shape{Path: canvas.Rectangle(50, 50), Fill: draw.Pale})
	outer := &draw.Drawing{}
	outer.Add(draw.Group{Drawing: inner, Transform: canvas.Identity, Clip: canvas.Rectangle(10, 10)})
	got := write(t, 100, 100, draw.Group{Drawing: outer, Transform: canvas.Identity.Translate(5, 5), Clip: canvas.Rectangle(12, 12)})
	for _, want := range []string{
		`<clipPath id="clip1"><path d="M0 100L12 100L12 88L0 88Z"/></clipPath>`,
		`<clipPath id="clip2" clip-path="url(#clip1)"><path d="M5 95L15 95L15 85L5 85Z"/></clipPath>`,
		`<path d="M5 95L55 95L55 45L5 45Z" fill="#d9d9d9" clip-path="url(#clip2)"/>`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
	inner.Add(cut(polyline(0, 0, 1, 1)))
	var b bytes.Buffer
	if err := svg.Write(&b, outer, 10, 10); err == nil {
		t.Error("a clipped cut was written")
	}
}

var lineData = regexp.MustCompile(`d="M(\S+) (\S+)L(\S+) (\S+)"`)

// Any line comes out with its length, to the last decimal of the file.
func TestLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.SliceOfN(rapid.Float64Range(-900, 900), 4, 4).Draw(t, "points")
		want := math.Hypot(v[2]-v[0], v[3]-v[1])
		if want < 0.01 {
			t.Skip("no line")
		}
		deg := rapid.Float64Range(-720, 720).Draw(t, "turn")
		inner := &draw.Drawing{}
		inner.Add(cut(polyline(v...)))
		d := &draw.Drawing{}
		d.Add(draw.Group{Drawing: inner, Transform: canvas.Identity.Translate(v[1], v[0]).Rotate(deg)})
		var b bytes.Buffer
		if err := svg.Write(&b, d, 100, 100); err != nil {
			t.Fatal(err)
		}
		m := lineData.FindStringSubmatch(b.String())
		if m == nil {
			t.Fatalf("no line in\n%s", b.String())
		}
		var c [4]float64
		for i := range c {
			var err error
			if c[i], err = strconv.ParseFloat(m[i+1], 64); err != nil {
				t.Fatal(err)
			}
		}
		if got := math.Hypot(c[2]-c[0], c[3]-c[1]); math.Abs(got-want) > 2e-5 {
			t.Fatalf("length %v, want %v", got, want)
		}
	})
}

func TestRefused(t *testing.T) {
	nan := math.NaN()
	flat := draw.Group{Drawing: &draw.Drawing{}}
	for name, c := range map[string]struct {
		w, h float64
		item draw.Item
	}{
		"zero":         {0, 10, nil},
		"NaN":          {nan, 10, nil},
		"infinite":     {10, math.Inf(1), nil},
		"path":         {10, 10, cut(polyline(0, 0, nan, 1))},
		"no width":     {10, 10, draw.Shape{Path: polyline(0, 0, 1, 1), Stroke: draw.Black}},
		"text":         {10, 10, draw.Text{Content: "a", SizeMm: nan}},
		"flat":         {10, 10, flat},
		"unknown item": {10, 10, nil},
		"blown up":     {10, 10, draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{cut(polyline(0, 0, 9e4, 1))}}, Transform: canvas.Identity.Scale(9, 9)}},
	} {
		var b bytes.Buffer
		if err := svg.Write(&b, &draw.Drawing{Items: []draw.Item{c.item}}, c.w, c.h); err == nil {
			t.Errorf("%s: no error", name)
		} else if b.Len() > 0 {
			t.Errorf("%s: %d bytes written beside the error", name, b.Len())
		}
	}
}

type full struct{}

var errFull = errors.New("disk full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWriterFails(t *testing.T) {
	if err := svg.Write(full{}, &draw.Drawing{}, 1, 1); !errors.Is(err, errFull) {
		t.Errorf("error %v, want the writer's", err)
	}
}

// TestDepth: groups lie 26 deep and no deeper; each moves what is in it.
func TestDepth(t *testing.T) {
	for deep, ok := range map[int]bool{1: true, 25: true, 26: true, 27: false} {
		item := draw.Item(cut(polyline(0, 0, 1, 1)))
		for range deep {
			item = draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{item}}, Transform: canvas.Identity.Translate(1, 0)}
		}
		var b bytes.Buffer
		if err := svg.Write(&b, &draw.Drawing{Items: []draw.Item{item}}, 100, 100); (err == nil) != ok {
			t.Errorf("%d deep: %v", deep, err)
		} else if want := fmt.Sprintf(`d="M%d 100L%d 99"`, deep, deep+1); ok && !strings.Contains(b.String(), want) {
			t.Errorf("%d deep: no %s in\n%s", deep, want, b.String())
		}
	}
}

// TestSizes: each side is more than 0 and at most MaxMm.
func TestSizes(t *testing.T) {
	for side, ok := range map[float64]bool{0: false, -1: false, 0.001: true, 1: true, render.MaxMm: true, math.Nextafter(render.MaxMm, math.Inf(1)): false} {
		for _, size := range [][2]float64{{side, 10}, {10, side}} {
			var b bytes.Buffer
			if err := svg.Write(&b, &draw.Drawing{}, size[0], size[1]); (err == nil) != ok {
				t.Errorf("%v: %v", size, err)
			}
		}
	}
}

// TestOnlyWhatIsSaid: one clip, one dash and one link are written, and none where there is none.
func TestOnlyWhatIsSaid(t *testing.T) {
	line := draw.Shape{Path: polyline(0, 0, 5, 0), Stroke: draw.Black, WidthMm: 0.2}
	dashed := line
	dashed.DashMm = []float64{1.5}
	clipped := draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{line}}, Transform: canvas.Identity, Clip: canvas.Rectangle(2, 2)}
	for _, c := range []struct {
		name string
		item draw.Item
		says [4]int // clips defined, clips used, dashes, paths
	}{
		{"line", line, [4]int{0, 0, 0, 1}}, {"dashes", dashed, [4]int{0, 0, 1, 1}}, {"clip", clipped, [4]int{1, 1, 0, 2}},
		{"no path", draw.Shape{Stroke: draw.Black, WidthMm: 1}, [4]int{}}, {"empty path", draw.Shape{Path: &canvas.Path{}, Fill: draw.Black}, [4]int{}}, {"neither line nor fill", draw.Shape{Path: polyline(0, 0, 5, 0)}, [4]int{}},
		{"filled alone", draw.Shape{Path: polyline(0, 0, 5, 0), Fill: draw.Black}, [4]int{0, 0, 0, 1}},
	} {
		got := write(t, 10, 10, c.item)
		if n := [4]int{strings.Count(got, "<clipPath"), strings.Count(got, "url(#clip1)"), strings.Count(got, `stroke-dasharray="1.5"`), strings.Count(got, "<path")}; n != c.says {
			t.Errorf("%s: %v, want %v in\n%s", c.name, n, c.says, got)
		}
		if defs := strings.Count(got, "<defs>"); defs != c.says[0] {
			t.Errorf("%s: %d definitions", c.name, defs)
		}
	}
}
