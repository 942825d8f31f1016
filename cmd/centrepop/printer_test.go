package main

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/render/measure"
)

// lyingPrinter prints across 1.4 % short, up 1.1 % long, and its upright leans
// 0.4° to the right: worse than most office printers.
type lyingPrinter struct{ across, up, skewDeg float64 }

var liar = lyingPrinter{0.986, 1.011, 0.4}

// point is where a point of a page lands on paper. A page on its side is
// turned onto the upright paper, printed, and looked at turned back.
func (l lyingPrinter) point(p measure.Point, onItsSide bool) measure.Point {
	x, y := p.X, p.Y
	if onItsSide {
		x, y = -p.Y, p.X
	}
	s, c := math.Sincos(l.skewDeg * math.Pi / 180)
	x, y = l.across*x+l.up*s*y, l.up*c*y
	if onItsSide {
		return measure.Point{X: y, Y: -x}
	}
	return measure.Point{X: x, Y: y}
}

// print is what a ruler finds of the paths of a page on paper.
func (l lyingPrinter) print(doc *measure.Doc, page int) [][]measure.Seg {
	w, h := doc.Size(page)
	paths := doc.Paths(page)
	for _, p := range paths {
		for i := range p {
			for _, q := range []*measure.Point{&p[i].Start, &p[i].C1, &p[i].C2, &p[i].End} {
				*q = l.point(*q, w > h)
			}
		}
	}
	return paths
}

// landing is how far the crosses of a page lie off the expected points, at the
// best of the ways to lay the first of them on one.
func landing(found, want []expectedHole) float64 {
	best := math.Inf(1)
	for _, w := range want {
		dx, dy := w.x-found[0].x, w.y-found[0].y
		worst := 0.0
		for _, f := range found {
			nearest := math.Inf(1)
			for _, v := range want {
				nearest = math.Min(nearest, math.Hypot(f.x+dx-v.x, f.y+dy-v.y))
			}
			worst = math.Max(worst, nearest)
		}
		best = math.Min(best, worst)
	}
	return best
}

// do runs the program and fails the test if it does.
func do(t *testing.T, args ...string) string {
	t.Helper()
	var stdout, stderr bytes.Buffer
	if got := run(args, &stdout, &stderr); got != statusDone {
		t.Fatalf("%v: status %d: %s", args, got, &stderr)
	}
	return stdout.String()
}

func openPDF(t *testing.T, file string) *measure.Doc {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return measure.Open(t, data)
}

// userConfig gives the test a configuration folder of its own.
func userConfig(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	switch runtime.GOOS {
	case "windows":
		t.Setenv("AppData", dir)
	case "darwin":
		t.Setenv("HOME", dir)
	default: // HOME stays: PDFium keeps its compiled form there
		t.Setenv("XDG_CONFIG_HOME", dir)
	}
	return dir
}

// checkCorners are the ringed crosses of a check page as printed, by rows from
// below, left before right.
func checkCorners(t *testing.T, doc *measure.Doc, l lyingPrinter) [4]measure.Point {
	t.Helper()
	// On the page of a corrected check the rings are no circles: take the
	// small closed paths of curves, and their middle.
	var at []measure.Point
	for _, p := range l.print(doc, 0) {
		curves, box := 0, [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
		for _, s := range p {
			if s.Kind == measure.Curve {
				curves++
			}
			for i := range 65 {
				q := s.At(float64(i) / 64)
				box = [4]float64{min(box[0], q.X), min(box[1], q.Y), max(box[2], q.X), max(box[3], q.Y)}
			}
		}
		if curves >= 2 && box[2]-box[0] < 6 {
			at = append(at, measure.Point{X: (box[0] + box[2]) / 2, Y: (box[1] + box[3]) / 2})
		}
	}
	if len(at) != 4 {
		t.Fatalf("%d ringed crosses, want 4", len(at))
	}
	slices.SortFunc(at, func(a, b measure.Point) int {
		if math.Abs(a.Y-b.Y) > 50 {
			return int(math.Copysign(1, a.Y-b.Y))
		}
		return int(math.Copysign(1, a.X-b.X))
	})
	return [4]measure.Point(at)
}

// lengths are across, up and both diagonals between the corners.
func lengths(c [4]measure.Point) [4]float64 {
	return [4]float64{c[0].Dist(c[1]), c[0].Dist(c[2]), c[0].Dist(c[3]), c[1].Dist(c[2])}
}

// lyingParts have templates on one sheet and on many, upright and on its side.
var lyingParts = []string{"barrel-flange", "hopper-ring", "gusset", "guard-bracket", "lifting-link", "cap-ring", "pedestal-flange"}

// TestLyingPrinter goes the user's way: print the check page on a printer that
// lies, read it to 0.05 mm, set the printer, print templates of both
// jobs. On the paper every hole must then land within 0.1 mm of where the part
// needs it, though without correction they do not, and the 100 mm rules must
// show 100 mm.
func TestLyingPrinter(t *testing.T) {
	userConfig(t)
	dir := t.TempDir()
	file := filepath.Join(dir, "a.pdf")
	do(t, "printer", "check", "-o", file)
	read := lengths(checkCorners(t, openPDF(t, file), liar))
	text := func(i int) string { return fmt.Sprintf("%.2f", math.Round(read[i]*20)/20) }
	do(t, "printer", "set", "liar", "--across", text(0), "--up", text(1), "--diagonal1", text(2), "--diagonal2", text(3))

	// The check page printed again proves it.
	do(t, "printer", "check", "--printer", "liar", "-o", file)
	diagonal := math.Hypot(150, 250)
	for i, got := range lengths(checkCorners(t, openPDF(t, file), liar)) {
		if want := [4]float64{150, 250, diagonal, diagonal}[i]; math.Abs(got-want) > 0.1 {
			t.Errorf("corrected check page: length %d is %.3f, want %.3f", i+1, got, want)
		}
	}

	sheets := measuredSheets{}
	for job, paper := range map[string]string{pugMill: "A4", gateJack: "Letter"} {
		want := expected(t, job)
		names := slices.DeleteFunc(partsOf(want), func(name string) bool { return !slices.Contains(lyingParts, name) })
		doc, pages := faceTemplates(t, job, names, paper, "--printer", "liar")
		for face, on := range pages {
			sheets.faces(t, doc, face, on, want[face])
		}
	}
	if sheets.pages < 9 || sheets.onSide == 0 {
		t.Errorf("%d pages, %d of them on their side: too few to tell", sheets.pages, sheets.onSide)
	}
	doc, pages := faceTemplates(t, pugMill, []string{"barrel-flange"}, "A4")
	worst, want := 0.0, expected(t, pugMill)["barrel-flange front"]
	for _, page := range pages["barrel-flange front"] {
		if found := crosses(liar.print(doc, page)); len(found) > 0 {
			worst = max(worst, landing(found, want))
		}
	}
	if worst < 1 {
		t.Errorf("without correction the worst hole is only %.3f mm off: the printer is too good for this test", worst)
	}
	do(t, "template", partsAlone(t, pugMill), "inlet-stub", "hopper", "--printer", "liar", "-o", file)
	tubes, tiles := openPDF(t, file), 0
	for page := range tubes.Pages() {
		if strings.Contains(tubes.Text(page), "Tile ") {
			tiles++
			trueRules(t, "wrap or cone", liar.print(tubes, page))
		}
	}
	if tiles < 3 {
		t.Errorf("%d tiles of wraps and cones", tiles)
	}
}

// measuredSheets counts the corrected pages that TestLyingPrinter has measured.
type measuredSheets struct{ pages, onSide int }

// faces measures the corrected templates of one face of a part.
func (m *measuredSheets) faces(t *testing.T, doc *measure.Doc, face string, pages []int, want []expectedHole) {
	t.Helper()
	for _, page := range pages {
		paths := liar.print(doc, page)
		found := crosses(paths)
		if len(found) == 0 {
			continue
		}
		m.pages++
		if w, h := doc.Size(page); w > h {
			m.onSide++
		}
		if off := landing(found, want); off > 0.1 {
			t.Errorf("%s, page %d: a hole lands %.3f mm off", face, page+1, off)
		}
		if !strings.Contains(doc.Text(page), "Corrected for printer liar: across ×1.01") {
			t.Errorf("%s, page %d does not state the correction", face, page+1)
		}
		trueRules(t, face, paths)
	}
}

// trueRules requires a page to have the mark of 100 mm, or 4 in, each way: a bracket
// about 4 mm deep along the rule.
func trueRules(t *testing.T, part string, paths [][]measure.Seg) {
	t.Helper()
	across, up := 0, 0
	for _, p := range paths {
		if len(p) != 4 || p[1].Kind != measure.Line || math.Abs(p[1].Length()-4) > 0.1 || math.Abs(p[3].Length()-4) > 0.1 || p[2].Length() < 90 {
			continue
		}
		if d := p[2].Length(); math.Abs(d-100) > 0.05 && math.Abs(d-101.6) > 0.05 {
			t.Errorf("%s: a rule of 100 mm or 4 in measures %.3f", part, d)
		}
		if math.Abs(p[2].End.X-p[2].Start.X) > 50 {
			across++
		} else {
			up++
		}
	}
	if across != 1 || up != 1 {
		t.Errorf("%s: %d rules across and %d up", part, across, up)
	}
}

// TestCorrectedSheetsFit requires every line of a corrected packet to keep at
// least 7.5 mm from the edges of the page, for printers at the end of the
// range either way.
func TestCorrectedSheetsFit(t *testing.T) {
	userConfig(t)
	file := filepath.Join(t.TempDir(), "a.pdf")
	for _, r := range [][4]string{{"143", "238", "278.4", "277"}, {"157", "262", "304.8", "306.1"}} {
		do(t, "printer", "set", "edge", "--across", r[0], "--up", r[1], "--diagonal1", r[2], "--diagonal2", r[3])
		do(t, "template", partsAlone(t, pugMill), "barrel-flange", "base-plate", "guard-bracket", "--printer", "edge", "-o", file)
		doc := openPDF(t, file)
		for page := range doc.Pages() {
			w, h := doc.Size(page)
			if short, long := math.Min(w, h), math.Max(w, h); math.Abs(short-210) > 0.01 || math.Abs(long-297) > 0.01 {
				t.Errorf("page %d is %.2f × %.2f mm, not A4", page+1, w, h)
			}
			for _, c := range doc.Chars(page) {
				if c.Left < 7.5 || c.Bottom < 7.5 || c.Right > w-7.5 || c.Top > h-7.5 {
					t.Fatalf("page %d: %q stands at %.1f, %.1f on %.0f × %.0f", page+1, c.Rune, c.Left, c.Bottom, w, h)
				}
			}
		}
	}
}

// TestPrintersFile reads good and damaged files of printers.
func TestPrintersFile(t *testing.T) {
	const good = `{"name":"a","paper":"A4","across_of_mm":150,"across_mm":149.6,"up_of_mm":250,"up_mm":250.3}`
	list, err := readPrinters("p.json", []byte("[\n  "+strings.Replace(good, `"a"`, `"b"`, 1)+",\n  "+good+"\n]\n"))
	if err != nil || len(list) != 2 || list[0].Name != "a" || list[1].Name != "b" {
		t.Fatalf("%v, %v", list, err)
	}
	for _, c := range []struct {
		name, text string
		line, col  int
		what       string
	}{
		{"empty", "", 1, 1, "ends too soon"},
		{"cut off", "[\n  " + good, 2, 3 + len(good), "ends too soon"},
		{"object", "{}", 1, 1, "no list"},
		{"no JSON", "[\n  nonsense\n]", 2, 3, "invalid character"},
		{"goes on", "[]\n[]", 2, 1, "goes on"},
		{"unknown key", "[\n  {\"nmae\": 1}\n]", 2, 3, "unknown field"},
		{"text for number", "[\n  {\"name\": \"a\", \"up_mm\": \"x\"}\n]", 2, 3, "up_mm is a string"},
		{"twice", "[\n" + good + ",\n" + good + "\n]", 3, 1, "twice"},
		{"absurd reading", "[\n" + strings.Replace(good, "149.6", "14.96", 1) + "\n]", 2, 1, "more than 5 %"},
		{"bad name", "[" + strings.Replace(good, `"a"`, `"\u001b[31m"`, 1) + "]", 1, 2, "the name"},
		{"not text", "[\xff]", 1, 1, "not UTF-8"},
		{"too large", "[" + strings.Repeat(" ", maxPrinterFile) + "]", 1, 1, "larger than 1 MB"},
		{"nothing in it", "[{}]", 1, 2, "the name"},
	} {
		_, err := readPrinters("p.json", []byte(c.text))
		var located parts.Errors
		if !errors.As(err, &located) || len(located) != 1 {
			t.Errorf("%s: %v, want one located error", c.name, err)
			continue
		}
		if e := located[0]; e.Line != c.line || e.Column != c.col || !strings.Contains(e.What, c.what) {
			t.Errorf("%s: %d:%d %s, want %d:%d %s", c.name, e.Line, e.Column, e.What, c.line, c.col, c.what)
		}
	}
}

// FuzzPrintersFile requires that what is read is usable, and what is refused
// is located in the file.
func FuzzPrintersFile(f *testing.F) {
	f.Add([]byte(`[{"name":"a","paper":"A4","across_of_mm":150,"across_mm":149.6,"up_of_mm":250,"up_mm":250.3}]`))
	f.Add([]byte("[\n {\"name\": \"\"}]"))
	f.Add([]byte("[{}"))
	f.Fuzz(func(t *testing.T, data []byte) {
		list, err := readPrinters("p.json", data)
		var located parts.Errors
		if err != nil {
			if !errors.As(err, &located) || located[0].Line < 1 || located[0].Column < 1 || list != nil {
				t.Fatalf("%v, %v", list, err)
			}
			return
		}
		for _, p := range list {
			fix, err := p.correction()
			if err != nil || !(math.Abs(fix.AcrossFactor-1) < 0.06 && math.Abs(fix.UpFactor-1) < 0.06 && math.Abs(fix.SkewDeg) <= 2) {
				t.Fatalf("%v: %v, %v", p, fix, err)
			}
		}
	})
}
