package main

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"centrepop/testdata/measure"
)

// expectedHole is a row of testdata/expected, worked out from the YAML by
// other means than this program.
type expectedHole struct{ x, y float64 }

// expected reads the hole centres by part title and face.
func expected(t *testing.T, file string) map[string][]expectedHole {
	t.Helper()
	f, err := os.Open(filepath.Join("../../testdata/expected", file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 10 {
		t.Fatalf("%s: %d rows, %v", file, len(rows), err)
	}
	out := map[string][]expectedHole{}
	for _, r := range rows[1:] {
		x, errX := strconv.ParseFloat(r[4], 64)
		y, errY := strconv.ParseFloat(r[5], 64)
		if errX != nil || errY != nil {
			t.Fatalf("%s: bad row %v", file, r)
		}
		key := r[0] + " " + r[1]
		out[key] = append(out[key], expectedHole{x, y})
	}
	return out
}

// crosses finds the centre-pop crosses on a page: path objects of four
// separate strokes whose inner ends lie at 0.8 mm from a common centre.
func crosses(paths [][]measure.Seg) []expectedHole {
	var out []expectedHole
	for _, p := range paths {
		if c, ok := cross(p); ok {
			out = append(out, c)
		}
	}
	return out
}

func cross(p []measure.Seg) (expectedHole, bool) {
	if len(p) != 8 {
		return expectedHole{}, false
	}
	var c expectedHole
	for i, s := range p {
		if (i%2 == 0) != (s.Kind == measure.Move) {
			return c, false
		}
		c.x += s.XMm / 8
		c.y += s.YMm / 8
	}
	for i := 0; i < 8; i += 2 {
		a := math.Hypot(p[i].XMm-c.x, p[i].YMm-c.y)
		b := math.Hypot(p[i+1].XMm-c.x, p[i+1].YMm-c.y)
		if math.Abs(math.Min(a, b)-0.8) > 0.02 {
			return c, false
		}
	}
	return c, true
}

// matchTile finds the shift that lays every cross of a page on an expected hole
// within 0.01 mm, and marks those holes as seen.
func matchTile(found, want []expectedHole, seen []bool) bool {
	const tolMm = 0.01
	for _, w := range want {
		dx, dy := w.x-found[0].x, w.y-found[0].y
		var hit []int
		for _, f := range found {
			for i, v := range want {
				if math.Abs(f.x+dx-v.x) <= tolMm && math.Abs(f.y+dy-v.y) <= tolMm {
					hit = append(hit, i)
					break
				}
			}
		}
		if len(hit) == len(found) {
			for _, i := range hit {
				seen[i] = true
			}
			return true
		}
	}
	return false
}

// TestHoleCentresOnPaper prints the templates of both demo jobs on several
// papers and measures every centre-pop cross in the PDF with PDFium.
func TestHoleCentresOnPaper(t *testing.T) {
	for _, job := range []string{"pugmill", "gatejack"} {
		want := expected(t, job+"-holes.csv")
		for _, paper := range []string{"A4", "Letter", "A3", "Tabloid", "160x220"} {
			t.Run(job+" "+paper, func(t *testing.T) {
				for key, holes := range want {
					part, face, _ := strings.Cut(key, " ")
					measurePart(t, job, part, face, paper, holes)
				}
			})
		}
	}
}

func measurePart(t *testing.T, job, part, face, paper string, want []expectedHole) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "t.pdf")
	var stdout, stderr bytes.Buffer
	if got := run([]string{"template", "../../testdata/" + job + "/job.yaml", part, "--paper", paper, "-o", file}, &stdout, &stderr); got != 0 {
		t.Fatalf("status %d: %s", got, &stderr)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	doc := measure.Open(t, data)
	defer doc.Close()
	seen := make([]bool, len(want))
	for page := range doc.Pages() {
		if !strings.Contains(strings.ToUpper(doc.Text(page)), strings.ToUpper(face)+" FACE") {
			continue
		}
		found := crosses(doc.Paths(page))
		if len(found) == 0 {
			continue // a tile between the holes
		}
		if !matchTile(found, want, seen) {
			t.Errorf("%s %s %s: the crosses of page %d do not lie on the expected holes within 0.01 mm: %v", part, face, paper, page+1, found)
		}
	}
	for i, s := range seen {
		if !s {
			t.Errorf("%s %s %s: hole at %v is on no tile", part, face, paper, want[i])
		}
	}
}
