package png_test

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"math"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/render/measure"
	"centrepop/render/pdf"
	device "centrepop/render/png"
	"centrepop/templates/draw"
)

func page() *draw.Page {
	inner := &draw.Drawing{}
	inner.Add(draw.Shape{Path: canvas.Rectangle(60, 40), Fill: draw.Grey},
		draw.Text{XMm: 5, YMm: 5, SizeMm: 6, Content: "clip", Tone: draw.White})
	line := &canvas.Path{}
	line.MoveTo(10, 15)
	line.LineTo(90, 15)
	p := &draw.Page{WidthMm: 100, HeightMm: 150}
	p.Drawing.Add(
		draw.Shape{Path: canvas.Circle(20).Translate(50, 100), Fill: draw.Pale, Stroke: draw.Black, WidthMm: 1},
		draw.Shape{Path: canvas.Circle(12).Translate(50, 100), Stroke: draw.Black, WidthMm: 0.5, DashMm: []float64{6, 2}},
		draw.Text{XMm: 50, YMm: 98, SizeMm: 8, Bold: true, Align: draw.Centre, RotateDeg: 25, Content: "Ø 40 H7"},
		draw.Shape{Path: line, Stroke: draw.Black, WidthMm: 2, DashMm: []float64{10, 5}},
		draw.Group{Drawing: inner, Transform: canvas.Identity.Translate(20, 30).Rotate(10), Clip: canvas.Circle(15).Translate(40, 45)},
		draw.Shape{Path: canvas.Rectangle(500, 3).Translate(-200, 140), Fill: draw.Black}, // beyond the paper
	)
	return p
}

func drawn(t *testing.T, p *draw.Page, dpi float64) image.Image {
	t.Helper()
	var b bytes.Buffer
	if err := device.Write(&b, p, dpi); err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

func light(img image.Image, x, y int) int {
	r, _, _, _ := img.At(x, y).RGBA()
	return int(math.Round(float64(r) / 0xFFFF * 100))
}

func TestPlacesAndTones(t *testing.T) {
	img := drawn(t, page(), 254) // 10 dots to the mm
	if got := img.Bounds().Size(); got != (image.Point{X: 1000, Y: 1500}) {
		t.Fatalf("the picture is %v", got)
	}
	for _, c := range []struct {
		what string
		x, y float64 // mm
		want int
	}{
		{"paper", 5, 5, 100},
		{"bar", 50, 141, 0},
		{"disc", 50, 83, 85},
		{"rim", 50, 80, 0},
		{"dash", 15, 15, 0},
		{"gap", 22, 15, 100},
		{"group", 40, 55, 45},
		{"clipped", 65, 50, 100},
	} {
		if got := light(img, int(c.x*10), int((150-c.y)*10)); got < c.want-1 || got > c.want+1 {
			t.Errorf("%s at %v, %v is %d %% light, want %d", c.what, c.x, c.y, got, c.want)
		}
	}
}

// The picture is that of the PDF, as another engine draws it: the same but
// for the smoothing at edges.
func TestLikeThePDF(t *testing.T) {
	p := page()
	ours := drawn(t, p, 100)
	var file bytes.Buffer
	if err := pdf.Write(&file, &draw.Document{Pages: []draw.Page{*p}}); err != nil {
		t.Fatal(err)
	}
	theirs := measure.Open(t, file.Bytes()).Render(0, 100)
	size := ours.Bounds().Size()
	if other := theirs.Bounds().Size(); size.X > other.X || size.Y > other.Y+1 || other.X > size.X+1 || other.Y > size.Y+1 {
		t.Fatalf("sizes %v and %v", size, other)
	}
	sum, far := 0, 0
	for y := range size.Y - 1 {
		for x := range size.X {
			off := light(ours, x, y) - light(theirs, x, y)
			sum += off * off
			if off > 60 || off < -60 {
				far++
			}
		}
	}
	n := size.X * size.Y
	if rms := math.Sqrt(float64(sum) / float64(n)); rms > 6 || far > n/200 {
		t.Errorf("the pictures differ by %.1f %% rms, %d of %d dots by much", rms, far, n)
	}
}

func TestRefused(t *testing.T) {
	bad := &canvas.Path{}
	bad.MoveTo(0, 0)
	bad.LineTo(math.Inf(1), 0)
	with := func(item draw.Item) *draw.Page {
		return &draw.Page{WidthMm: 10, HeightMm: 10, Drawing: draw.Drawing{Items: []draw.Item{item}}}
	}
	for name, c := range map[string]struct {
		page *draw.Page
		dpi  float64
	}{
		"nil":       {nil, 100},
		"no size":   {&draw.Page{}, 100},
		"no dpi":    {page(), 0},
		"minus":     {&draw.Page{WidthMm: -10, HeightMm: -10}, -100},
		"NaN":       {page(), math.NaN()},
		"too large": {page(), 1e5},
		"path":      {with(draw.Shape{Path: bad, Fill: draw.Black}), 100},
		"text":      {with(draw.Text{Content: "x", SizeMm: -1}), 100},
		"group":     {with(draw.Group{}), 100},
		"nothing":   {with(nil), 100},
	} {
		var b bytes.Buffer
		if err := device.Write(&b, c.page, c.dpi); err == nil {
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
	if err := device.Write(full{}, page(), 20); !errors.Is(err, errFull) {
		t.Errorf("error %v, want the writer's", err)
	}
}

// nested is a drawing within so many groups, every second or each of them clipped.
func nested(deep int, clipped bool) *draw.Page {
	d := draw.Drawing{Items: []draw.Item{draw.Shape{Path: canvas.Rectangle(2, 2), Fill: draw.Black}}}
	for range deep {
		g := draw.Group{Drawing: &draw.Drawing{Items: d.Items}, Transform: canvas.Identity}
		if clipped {
			g.Clip = canvas.Rectangle(2, 2)
		}
		d = draw.Drawing{Items: []draw.Item{g}}
	}
	return &draw.Page{WidthMm: 4, HeightMm: 4, Drawing: d}
}

// TestDepth: groups lie 26 deep and no deeper, with clips or without.
func TestDepth(t *testing.T) {
	for _, clipped := range []bool{false, true} {
		if img := drawn(t, nested(26, clipped), 50); light(img, 1, 6) != 0 || light(img, 6, 1) != 100 {
			t.Errorf("clipped %v: 26 deep it is %d and %d %% light", clipped, light(img, 1, 6), light(img, 6, 1))
		}
		var b bytes.Buffer
		if err := device.Write(&b, nested(27, clipped), 50); err == nil {
			t.Errorf("clipped %v: 27 groups deep", clipped)
		}
	}
}

// TestSizes: a picture has one dot at the least and 100 million at most, at any number of dots to the inch above 0.
func TestSizes(t *testing.T) {
	for _, c := range []struct {
		w, h, dpi float64
		want      image.Point
	}{{25.4, 25.4, 1, image.Pt(1, 1)}, {25.4, 50.8, 1, image.Pt(1, 2)}, {50.8, 25.4, 1, image.Pt(2, 1)}, {254, 127, 0.4, image.Pt(4, 2)}, {25.4, 25.4, 2, image.Pt(2, 2)}} {
		if got := drawn(t, &draw.Page{WidthMm: c.w, HeightMm: c.h}, c.dpi).Bounds().Size(); got != c.want {
			t.Errorf("%v x %v mm at %v: %v, want %v", c.w, c.h, c.dpi, got, c.want)
		}
	}
	for _, c := range [][3]float64{{12, 25.4, 1}, {25.4, 12, 1}, {254, 254, 1010}, {-25.4, -25.4, -1}, {25.4, 25.4, 0}} {
		var b bytes.Buffer
		if err := device.Write(&b, &draw.Page{WidthMm: c[0], HeightMm: c[1]}, c[2]); err == nil {
			t.Errorf("%v x %v mm at %v is let through", c[0], c[1], c[2])
		}
	}
}

// TestDashes: a line with one length of dash has gaps as long; one without dashes has none.
func TestDashes(t *testing.T) {
	for _, c := range []struct {
		dash []float64
		want [3]int // how light it is 2, 7 and 12 mm from its start
	}{{nil, [3]int{0, 0, 0}}, {[]float64{5}, [3]int{0, 100, 0}}, {[]float64{5, 6}, [3]int{0, 100, 0}}, {[]float64{9, 2}, [3]int{0, 0, 0}}} {
		line := draw.Segment(0, 5, 20, 5, 2, c.dash...)
		img := drawn(t, &draw.Page{WidthMm: 20, HeightMm: 10, Drawing: draw.Drawing{Items: []draw.Item{line}}}, 254)
		for i, x := range []int{20, 70, 120} {
			if got := light(img, x, 50); got != c.want[i] {
				t.Errorf("dashes of %v: %d %% light at %d", c.dash, got, x)
			}
		}
	}
}

// TestNothingToDraw: shapes without a path and texts without words leave the paper white, whatever else is said of them.
func TestNothingToDraw(t *testing.T) {
	one := &draw.Page{WidthMm: 5, HeightMm: 5, Drawing: draw.Drawing{Items: []draw.Item{draw.Shape{Stroke: draw.Black}, draw.Shape{Path: &canvas.Path{}, Fill: draw.Black}, draw.Text{SizeMm: 3}, draw.Text{SizeMm: 3, Content: " "}}}}
	img := drawn(t, one, 50)
	for i := range 100 {
		if got := light(img, i%10, i/10); got != 100 {
			t.Errorf("%d %% light at %d", got, i)
		}
	}
}
