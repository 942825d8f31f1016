package templates

import (
	"errors"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestCheckRules: the largest rules in steps of 50 mm that leave 14 mm at each end, by hand; smaller paper has none.
func TestCheckRules(t *testing.T) {
	t.Parallel()
	for paper, want := range map[[2]float64][2]float64{
		{210, 297}: {150, 250}, {297, 210}: {150, 250}, {297, 420}: {250, 350}, {215.9, 279.4}: {150, 250}, {279.4, 431.8}: {250, 400},
		{178, 278}: {150, 250}, {227.9, 328}: {150, 300}, {228, 327.9}: {200, 250}, {1000, 2000}: {950, 1950},
		{177.9, 297}: {}, {210, 277.9}: {}, {1000, 2000.1}: {},
	} {
		across, up, err := CheckRules(parts.Paper{WidthMm: paper[0], HeightMm: paper[1]})
		if got := [2]float64{across, up}; got != want || (err == nil) != (across > 0) {
			t.Errorf("%v: rules %v, %v; want %v", paper, got, err, want)
		}
		if doc, err := CheckPage(parts.Paper{WidthMm: paper[0], HeightMm: paper[1]}, nil); (err == nil) != (across > 0) || (doc == nil) != (err != nil) {
			t.Errorf("%v: a page %v, %v", paper, doc != nil, err)
		}
	}
}

// short prints 2 % short across and 1 % long up, and leans 0.5° to the right.
var short = &layout.Correction{Name: "office", AcrossFactor: 1 / 0.98, UpFactor: 1 / 1.01, SkewDeg: 0.5}

// TestRecordedCheckPage: the page that a printer is measured from, and the one that proves it, whole.
func TestRecordedCheckPage(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		paper parts.Paper
		by    *layout.Correction
	}{"check-a4": {sheettest.A4, nil}, "check-large": {parts.Paper{Name: "custom", WidthMm: 320, HeightMm: 450}, nil}, "proof-a4": {sheettest.A4, short}} {
		doc, err := CheckPage(c.paper, c.by)
		if err != nil {
			t.Fatal(err)
		}
		golden.Whole(t, filepath.Join("testdata", name+".txt"), []byte(sheettest.RecordDrawing(t, &doc.Pages[0].Drawing)))
	}
	if _, err := CheckPage(sheettest.A4, &layout.Correction{AcrossFactor: 1.2, UpFactor: 1}); err == nil {
		t.Error("a correction by 20 % is taken")
	}
}

// TestCorrected: a corrected sheet keeps the margins of its paper, states the correction, and its middle is that of the paper.
func TestCorrected(t *testing.T) {
	t.Parallel()
	f := draw.Frame{WidthMm: 210, HeightMm: 297}
	if got := room(nil, f); got != f {
		t.Errorf("without a correction %v", got)
	}
	if got := room(&layout.Correction{AcrossFactor: 2, UpFactor: 1}, f); got != f {
		t.Errorf("with one that is refused %v", got)
	}
	// 194 × 281 inside the margins of 8; drawn 281 high (it shrinks by 1/1.01), and so wide that its width and its lean of
	// 281·tan 0.5°/0.98 across still fit; 4.5 are for the statement.
	wide := (194 - 281*math.Tan(0.5*math.Pi/180)/0.98) * 0.98
	if got := room(short, f); math.Abs(got.WidthMm-(wide+16-4.5)) > 1e-9 || math.Abs(got.HeightMm-(281+16-4.5)) > 1e-9 {
		t.Errorf("room %v, want %.3f wide", got, wide+11.5)
	}
	grows := &layout.Correction{Name: "small", AcrossFactor: 1, UpFactor: 1.02}
	if got := room(grows, f); math.Abs(got.HeightMm-(281/1.02+11.5)) > 1e-9 || math.Abs(got.WidthMm-205.5) > 1e-9 {
		t.Errorf("room %v", got)
	}
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart(), sheettest.HousingPart())
	doc, err := Packet(pl, Options{Paper: sheettest.A4, Printer: short})
	if err != nil {
		t.Fatal(err)
	}
	sides := 0
	for i, p := range doc.Pages {
		w, h := 210.0, 297.0
		across, up := 1/0.98, 1/1.01/math.Cos(0.5*math.Pi/180)
		if p.WidthMm > p.HeightMm {
			w, h, across, up, sides = h, w, up, across, sides+1
		}
		g, _ := p.Drawing.Items[0].(draw.Group)
		m := g.Transform
		if len(p.Drawing.Items) != 1 || p.WidthMm != w || p.HeightMm != h || math.Abs(m[0][0]-across) > 1e-9 || math.Abs(m[1][1]-up) > 1e-9 {
			t.Fatalf("page %d of %g × %g: %v", i+1, p.WidthMm, p.HeightMm, m)
		}
		in := room(short, f)
		x, y := (in.WidthMm+4.5)/2, (in.HeightMm+4.5)/2
		if w > h {
			x, y = y, x
		}
		if midX, midY := m[0][0]*x+m[0][1]*y+m[0][2], m[1][0]*x+m[1][1]*y+m[1][2]; math.Abs(midX-w/2) > 1e-9 || math.Abs(midY-h/2) > 1e-9 {
			t.Errorf("page %d: the middle lies at %.3f, %.3f", i+1, midX, midY)
		}
		foot, _ := g.Drawing.Items[len(g.Drawing.Items)-1].(draw.Text)
		if !strings.HasPrefix(foot.Content, "Corrected for printer office: across ×1.0204, up ×0.9901, skew 0.5°. True on this printer only") || foot.YMm != 8.9 || foot.XMm != 10.25 {
			t.Errorf("page %d states %+v", i+1, foot)
		}
	}
	if sides == 0 {
		t.Error("no page lies on its side")
	}
	if _, err := Packet(pl, Options{Paper: sheettest.A4, Printer: &layout.Correction{AcrossFactor: 2, UpFactor: 1}}); err == nil {
		t.Error("a correction by half is taken")
	}
}

// TestPaperArgument: a paper is named as --paper takes it.
func TestPaperArgument(t *testing.T) {
	t.Parallel()
	for want, f := range map[string]draw.Frame{"A4": {Name: "A4"}, "A3": {Name: "A3"}, "Letter": {Name: "Letter"}, "Tabloid": {Name: "Tabloid"}, "305.5x400": {Name: "305.5 × 400 mm", WidthMm: 305.5, HeightMm: 400}} {
		if got := paperArgument(f); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// TestPress: each sheet is handed over once, and a device that fails is told with the part and the sheet.
func TestPress(t *testing.T) {
	t.Parallel()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	plain, err := Packet(pl, Options{Paper: sheettest.A4})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	doc, err := Packet(pl, Options{Paper: sheettest.A4, Press: func(d *draw.Drawing) (draw.Pressed, error) {
		n++
		return draw.Pressed{}, nil
	}, Kept: &draw.Kept{}})
	if err != nil || n == 0 || len(doc.Pages) != len(plain.Pages) {
		t.Errorf("%d handed over, %v", n, err)
	}
	_, err = Packet(pl, Options{Paper: sheettest.A4, Press: func(*draw.Drawing) (draw.Pressed, error) { return draw.Pressed{}, errors.New("out of paper") }})
	if err == nil || !strings.HasPrefix(err.Error(), "templates: ") || !strings.HasSuffix(err.Error(), ": out of paper") {
		t.Errorf("%v", err)
	}
}
