package measure_test

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"centrepop/render/measure"
)

// handmade is a file whose content is written out here, so that the engine is
// checked against known numbers and not against our own writer. 283.4646 pt
// are 100 mm.
func handmade() []byte {
	k := 40 / 3.0 * (math.Sqrt2 - 1)                                 // handles of a quarter circle of radius 10
	content := "0.7087 w 28.3465 28.3465 m 311.8110 28.3465 l S\n" + // 10,10 to 110,10 mm
		"q 0 2 -2 0 200 400 cm 1 w 0 0 m 10 0 l 10 5 l h B Q\n" + // turned and doubled
		"q 2.834646 0 0 2.834646 0 0 cm 1 0 0 1 60 150 cm " + // circle 20 mm at 60,150
		fmt.Sprintf("10 0 m 10 %[1]f %[1]f 10 0 10 c %[2]f 10 -10 %[1]f -10 0 c -10 %[2]f %[2]f -10 0 -10 c %[1]f -10 10 %[2]f 10 0 c h 0.5 w S Q\n", k, -k) +
		"q 1 0 0 1 0 100 cm /Fm Do Q\n" +
		"BT /F1 20 Tf 100 500 Td (Hi) Tj ET\n" +
		"BT /F1 10 Tf 0 1 -1 0 300 600 Tm (up) Tj ET\n" + // a quarter turn to the left
		"0 0 m 3 0 3 4 6 4 c 9 4 9 0 12 0 c f\n"
	form := "0 0 m 100 0 l S q 0 1 -1 0 20 0 cm 3 w 0 0 m 40 0 l S Q"
	objects := []string{
		"<</Type /Catalog /Pages 2 0 R /ViewerPreferences <</PrintScaling /None>> /Outlines 7 0 R /PageLabels <</Nums [0 <</P (T-1)>>]>>>>",
		"<</Type /Pages /Kids [3 0 R] /Count 1>>",
		"<</Type /Page /Parent 2 0 R /MediaBox [0 0 595.2756 841.8898] /Contents 4 0 R /Resources <</XObject <</Fm 5 0 R>> /Font <</F1 6 0 R>>>>>>",
		fmt.Sprintf("<</Length %d>>\nstream\n%s\nendstream", len(content), content),
		fmt.Sprintf("<</Type /XObject /Subtype /Form /BBox [-10 -10 200 200] /Matrix [0.5 0 0 0.5 10 0] /Length %d>>\nstream\n%s\nendstream", len(form), form),
		"<</Type /Font /Subtype /Type1 /BaseFont /Helvetica>>",
		"<</Type /Outlines /First 8 0 R /Last 10 0 R /Count 3>>",
		"<</Title (First) /Parent 7 0 R /Dest [3 0 R /Fit] /First 9 0 R /Last 9 0 R /Count 1 /Next 10 0 R>>",
		"<</Title (Below) /Parent 8 0 R>>",
		"<</Title (Second) /Parent 7 0 R /Prev 8 0 R /Dest [3 0 R /Fit]>>",
	}
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n")
	var offsets []int
	for i, o := range objects {
		offsets = append(offsets, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, o := range offsets {
		fmt.Fprintf(&b, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&b, "trailer\n<</Size %d /Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, start)
	return b.Bytes()
}

const mm = 25.4 / 72

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.5f, want %.5f", what, got, want)
	}
}

func TestPaths(t *testing.T) {
	paths := measure.Open(t, handmade()).Paths(0)
	if len(paths) != 6 {
		t.Fatalf("%d paths, want 6", len(paths))
	}
	line := paths[0]
	if len(line) != 2 || line[0].Kind != measure.Move || line[1].Kind != measure.Line {
		t.Fatalf("the line is %+v", line)
	}
	near(t, "the line's length", line[1].Length(), 100, 0.001)
	near(t, "its start x", line[1].Start.X, 10, 0.001)
	near(t, "its end y", line[1].End.Y, 10, 0.001)
	near(t, "its width", line[1].WidthMm, 0.25, 0.001)
	if line[1].Filled || line[1].Close {
		t.Errorf("the line is filled or closed: %+v", line[1])
	}
	turned := paths[1]
	near(t, "the turned end x", turned[2].End.X, (200-2*5)*mm, 1e-4)
	near(t, "the turned end y", turned[2].End.Y, (400+2*10)*mm, 1e-4)
	near(t, "the doubled width", turned[2].WidthMm, 2*mm, 1e-4)
	if last := turned[len(turned)-1]; !last.Filled || !last.Close || last.End != turned[0].End {
		t.Errorf("the triangle is open or empty: %+v", last)
	}
	inForm := paths[3]
	near(t, "the form's start x", inForm[1].Start.X, 10*mm, 1e-4)
	near(t, "the form's start y", inForm[1].Start.Y, 100*mm, 1e-4)
	near(t, "the form's length", inForm[1].Length(), 50*mm, 1e-4)
	for what, c := range map[string]struct {
		seg    measure.Seg
		kind   measure.Kind
		points [4][2]float64 // in points: start, handles, end
		width  float64
	}{
		"turned in the form": {paths[4][1], measure.Line, [4][2]float64{{20, 100}, {}, {}, {20, 120}}, 1.5},
		"the first curve":    {paths[5][1], measure.Curve, [4][2]float64{{0, 0}, {3, 0}, {3, 4}, {6, 4}}, 0},
		"the second curve":   {paths[5][2], measure.Curve, [4][2]float64{{6, 4}, {9, 4}, {9, 0}, {12, 0}}, 0},
	} {
		s := c.seg
		for i, p := range []measure.Point{s.Start, s.C1, s.C2, s.End} {
			near(t, what+", x", p.X, c.points[i][0]*mm, 1e-4)
			near(t, what+", y", p.Y, c.points[i][1]*mm, 1e-4)
		}
		near(t, what+", its line", s.WidthMm, c.width*mm, 1e-4)
		if s.Kind != c.kind || s.Filled != (c.width == 0) {
			t.Errorf("%s: %+v", what, s)
		}
	}
}

func TestCircles(t *testing.T) {
	circles := measure.Open(t, handmade()).Circles(0)
	if len(circles) != 1 {
		t.Fatalf("%d circles, want 1: %+v", len(circles), circles)
	}
	c := circles[0]
	near(t, "centre x", c.Centre.X, 60, 0.001)
	near(t, "centre y", c.Centre.Y, 150, 0.001)
	// A circle of four curves is up to 0.027 % too large between its ends.
	near(t, "diameter", c.DiameterMm, 20, 0.006)
	near(t, "line width", c.WidthMm, 0.5, 1e-4)
}

func TestText(t *testing.T) {
	d := measure.Open(t, handmade())
	if got := d.Text(0); got != "Hi\r\nup" {
		t.Errorf("the text is %q", got)
	}
	// Advances and boxes of Helvetica in thousandths of its size (Adobe's metrics file).
	want := []struct {
		char       rune
		x, y       float64 // origin in points
		box        [4]float64
		angle, tol float64
	}{
		{'H', 100, 500, [4]float64{101.54, 500, 112.92, 514.36}, 0, 0.02}, {'i', 100 + 20*0.722, 500, [4]float64{115.78, 500, 117.54, 514.36}, 0, 0.1},
		{'u', 300, 600, [4]float64{294.77, 600.68, 300.15, 604.89}, 90, 0.02}, {'p', 300, 605.56, [4]float64{294.62, 606.14, 302.07, 610.73}, 90, 0.02},
	}
	chars := d.Chars(0)
	if len(chars) != len(want) {
		t.Fatalf("the characters are %+v", chars)
	}
	for i, w := range want {
		c := chars[i]
		if c.Rune != w.char {
			t.Errorf("%c stands for %c", c.Rune, w.char)
		}
		for what, v := range map[string][2]float64{"x": {c.Origin.X, w.x}, "y": {c.Origin.Y, w.y}, "left": {c.Left, w.box[0]}, "bottom": {c.Bottom, w.box[1]}, "right": {c.Right, w.box[2]}, "top": {c.Top, w.box[3]}} {
			near(t, string(w.char)+", "+what, v[0]/mm, v[1], w.tol)
		}
		near(t, string(w.char)+", angle", c.AngleDeg, w.angle, 1e-4)
	}
}

func TestDocument(t *testing.T) {
	d := measure.Open(t, handmade())
	if got := d.Pages(); got != 1 {
		t.Errorf("%d pages", got)
	}
	w, h := d.Size(0)
	near(t, "page width", w, 210, 0.001)
	near(t, "page height", h, 297, 0.001)
	if d.ScalesWhenPrinted() {
		t.Error("print scaling is not off")
	}
	if got := d.Label(0); got != "T-1" {
		t.Errorf("label %q", got)
	}
	marks := d.Bookmarks()
	if fmt.Sprint(marks) != "[{First 0 [{Below -1 []}]} {Second 0 []}]" {
		t.Errorf("bookmarks %+v", marks)
	}
}

func TestRender(t *testing.T) {
	img := measure.Open(t, handmade()).Render(0, 254) // 10 px to the mm
	if b := img.Bounds(); b.Dx() < 2100 || b.Dx() > 2101 || b.Dy() < 2970 || b.Dy() > 2971 {
		t.Fatalf("the picture is %v", b)
	}
	if r, _, _, _ := img.At(600, 2970-100).RGBA(); r > 0x8000 {
		t.Error("no line where the line lies")
	}
	if r, _, _, a := img.At(600, 2970-200).RGBA(); r != 0xFFFF || a != 0xFFFF {
		t.Error("the paper beside the line is not white")
	}
}
