package main

import (
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/parts/golden"
	"centrepop/render/measure"
)

// expectedHole is a row of testdata/expected, worked out from the YAML by
// other means than this program.
type expectedHole struct{ x, y float64 }

// expected reads the hole centres and slot ends of a job by part and face.
func expected(t *testing.T, job string) map[string][]expectedHole {
	t.Helper()
	out := map[string][]expectedHole{}
	name := filepath.Base(filepath.Dir(job))
	for _, file := range []string{"-holes.csv", "-slots.csv"} {
		for _, r := range golden.Table(t, filepath.Join("../../testdata/expected", name+file), 4) {
			key := r["part"] + " " + r["face"]
			out[key] = append(out[key], expectedHole{r.Number(t, "x_mm"), r.Number(t, "y_mm")})
		}
	}
	return out
}

// crosses finds the centre-pop crosses on a page: four straight strokes that
// point at a common centre and stop 0.8 mm short of it, in one path object.
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
	var c expectedHole
	var lines []measure.Seg
	for _, s := range p {
		if s.Kind == measure.Line {
			lines = append(lines, s)
			c.x += (s.Start.X + s.End.X) / 8
			c.y += (s.Start.Y + s.End.Y) / 8
		}
	}
	if len(lines) != 4 || len(p) != 8 {
		return c, false
	}
	centre := measure.Point{X: c.x, Y: c.y}
	for _, s := range lines {
		inner := math.Min(s.Start.Dist(centre), s.End.Dist(centre))
		if math.Abs(inner-0.8) > 0.02 {
			return c, false
		}
	}
	return c, true
}

// placings lists every way to lay the crosses of a page on expected points within
// 0.01 mm, each as the set of points it covers. A symmetric pattern on a tile
// can lie in more than one way.
func placings(found, want []expectedHole) [][]int {
	const tolMm = 0.01
	var ways [][]int
	for _, w := range want {
		dx, dy := w.x-found[0].x, w.y-found[0].y
		var hit []int
		lying := 0
		for _, f := range found {
			before := len(hit)
			for i, v := range want {
				if math.Abs(f.x+dx-v.x) <= tolMm && math.Abs(f.y+dy-v.y) <= tolMm {
					hit = append(hit, i) // a hole through a plate is one of either face
				}
			}
			if len(hit) > before {
				lying++
			}
		}
		if lying == len(found) {
			ways = append(ways, hit)
		}
	}
	return ways
}

// cover tries to choose one way for each page so that every point is covered;
// it returns the points left out by the best choice it finds.
func cover(pages [][][]int, seen []int) int {
	if len(pages) == 0 {
		left := 0
		for _, n := range seen {
			if n == 0 {
				left++
			}
		}
		return left
	}
	best := len(seen) + 1
	for _, way := range pages[0] {
		for _, i := range way {
			seen[i]++
		}
		best = min(best, cover(pages[1:], seen))
		for _, i := range way {
			seen[i]--
		}
		if best == 0 {
			return 0
		}
	}
	return best
}

// TestHoleCentresOnPaper prints the templates of both demo jobs on several
// papers and measures every centre-pop cross in the PDF with PDFium.
func TestHoleCentresOnPaper(t *testing.T) {
	t.Parallel()
	for _, job := range []string{pugMill, gateJack} {
		want := expected(t, job)
		for _, paper := range []string{"A4", "Letter", "A3", "Tabloid", "160x220 mm"} {
			t.Run(job+" "+paper, func(t *testing.T) {
				t.Parallel()
				doc, pages := faceTemplates(t, job, partsOf(want), paper)
				for _, part := range partsOf(want) {
					holes := bothFaces(want, part)
					var ways [][][]int
					for _, face := range []string{"front", "back"} {
						ways = append(ways, laidOn(t, doc, pages[part+" "+face], holes[face])...)
					}
					// Pages with fewer ways first: they decide the most.
					slices.SortStableFunc(ways, func(a, b [][]int) int { return len(a) - len(b) })
					if left := cover(ways, make([]int, len(holes["front"]))); left > 0 {
						t.Errorf("%s: %d of %d holes are on no tile", part, left, len(holes["front"]))
					}
				}
			})
		}
	}
}

// bothFaces are the holes of a part as each face shows them, in one order: those of
// the other face, which may go through, lie the other way round in x.
func bothFaces(want map[string][]expectedHole, part string) map[string][]expectedHole {
	out := map[string][]expectedHole{}
	for _, of := range []string{"front", "back"} {
		for _, h := range want[part+" "+of] {
			turned := h
			turned.x = -h.x
			for _, face := range []string{"front", "back"} {
				if face == of {
					out[face] = append(out[face], h)
				} else {
					out[face] = append(out[face], turned)
				}
			}
		}
	}
	return out
}

// partsOf are the parts of what expected gives, sorted.
func partsOf(want map[string][]expectedHole) []string {
	var names []string
	for key := range want {
		name, _, _ := strings.Cut(key, " ")
		names = append(names, name)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// laidOn are the ways to lay the crosses of each page on the holes of a face.
func laidOn(t *testing.T, doc *measure.Doc, pages []int, holes []expectedHole) (ways [][][]int) {
	t.Helper()
	for _, page := range pages {
		found := crosses(doc.Paths(page))
		if len(found) == 0 {
			continue // a tile between the holes
		}
		laid := placings(found, holes)
		if len(laid) == 0 {
			t.Errorf("the crosses of page %d do not lie on the expected holes within 0.01 mm: %v", page+1, found)
			continue
		}
		ways = append(ways, laid)
	}
	return ways
}
