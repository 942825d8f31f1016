package main

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/render/measure"
)

// paperTolMm is how near to the computed place a line must lie on the page.
const paperTolMm = 0.01

// sheetsWith are the pages at 1:1 whose text has the words.
func sheetsWith(t *testing.T, doc *measure.Doc, words string) []int {
	t.Helper()
	var out []int
	for page := range doc.Pages() {
		if text := doc.Text(page); strings.Contains(text, words) && strings.Contains(text, "1:1") && (strings.Contains(text, "100 mm") || strings.Contains(text, "4 in")) {
			out = append(out, page)
		}
	}
	if len(out) == 0 {
		t.Fatalf("no page at 1:1 says %q", words)
	}
	return out
}

// extent is the box of a path by the ends of its segments, which is exact for
// straight ones.
func extent(path []measure.Seg) (lo, hi measure.Point) {
	lo = measure.Point{X: math.Inf(1), Y: math.Inf(1)}
	hi = measure.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range path {
		lo.X, lo.Y = min(lo.X, s.End.X), min(lo.Y, s.End.Y)
		hi.X, hi.Y = max(hi.X, s.End.X), max(hi.Y, s.End.Y)
	}
	return lo, hi
}

// contours are the closed, stroked outlines of a pattern, largest first: the
// lines of 0.35 mm that are no rule, frame or letter.
func contours(doc *measure.Doc, page int) [][]measure.Seg {
	var out [][]measure.Seg
	for _, p := range doc.Paths(page) {
		if len(p) >= 4 && p[len(p)-1].Close && !p[0].Filled && math.Abs(p[0].WidthMm-0.35) < 0.01 {
			out = append(out, p)
		}
	}
	area := func(p []measure.Seg) float64 { lo, hi := extent(p); return (hi.X - lo.X) * (hi.Y - lo.Y) }
	slices.SortStableFunc(out, func(a, b []measure.Seg) int {
		return int(math.Copysign(1, area(b)-area(a)))
	})
	return out
}

// upright are the upright lines of a page that start at the height y, alone or with
// gaps for the crosses on them.
func upright(doc *measure.Doc, page int, y, widthMm float64) []measure.Seg {
	var out []measure.Seg
	for _, p := range doc.Paths(page) {
		if len(p) < 2 || len(p) > 2 && p[2].Kind != measure.Move || p[1].Kind != measure.Line || math.Abs(p[1].WidthMm-widthMm) > 0.01 {
			continue
		}
		if s := p[1]; math.Abs(s.Start.X-s.End.X) < 0.001 && math.Abs(s.Start.Y-y) < 0.002 && s.End.Y > y {
			out = append(out, s)
		}
	}
	return out
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.4f mm on the page, want %.4f within %g", what, got, want, tol)
	}
}

// TestWrapOnPaper measures the wrap of the bearing housing's body: 180 mm
// across, 104 long, paper 0.1 mm, set to the back face, so that clock angles
// run to the left. All places are worked out here from the YAML's numbers.
func TestWrapOnPaper(t *testing.T) {
	t.Parallel()
	doc := opened(t, "template", partsAlone(t, pugMill), "bearing-housing", "--apart", "--paper", "900x1200 mm")
	page := sheetsWith(t, doc, "Wrap template: body")[0]
	shapes := contours(doc, page)
	lo, hi := extent(shapes[0])
	girth := math.Pi * (180 + 0.1)
	near(t, "the wrap length", hi.X-lo.X, girth, paperTolMm)

	tops := upright(doc, page, lo.Y, 0.35)
	if len(tops) != 1 {
		t.Fatalf("%d TOP lines", len(tops))
	}
	top := tops[0].Start.X
	// Clock angle and distance from the back face of the body, which lies
	// 6 + 104 from the part's front; half size round and along.
	half := func(width float64) float64 { return 180.1 / 2 * math.Asin(width/180) }
	wants := []struct {
		name                 string
		clock, axial         float64
		halfRound, halfAlong float64
	}{
		{"grease port M10x1, drill 9", 0, 50, half(9), 4.5},
		{"inspection G1/2, drill 19", 270, 50, half(19), 9.5},
		{"drain", 150, 50, half(8), 10},
		{"drain", 210, 50, half(8), 10},
	}
	found := crosses(doc.Paths(page))
	if len(found) != len(wants) {
		t.Errorf("%d crosses, want %d: %v", len(found), len(wants), found)
	}
	for _, w := range wants {
		x := top - girth*w.clock/360
		for x < lo.X {
			x += girth
		}
		y := lo.Y + w.axial
		if !slices.ContainsFunc(found, func(c expectedHole) bool {
			return math.Abs(c.x-x) <= paperTolMm && math.Abs(c.y-y) <= paperTolMm
		}) {
			t.Errorf("no cross for %s at %.3f, %.3f: %v", w.name, x, y, found)
		}
		outlined := false
		for _, s := range shapes[1:] {
			a, b := extent(s)
			outlined = outlined || math.Abs(a.X-(x-w.halfRound)) <= paperTolMm && math.Abs(b.X-(x+w.halfRound)) <= paperTolMm &&
				math.Abs(a.Y-(y-w.halfAlong)) <= paperTolMm && math.Abs(b.Y-(y+w.halfAlong)) <= paperTolMm
		}
		if !outlined {
			t.Errorf("no outline of %s about %.3f, %.3f, %.3f by %.3f", w.name, x, y, 2*w.halfRound, 2*w.halfAlong)
		}
	}
}

// TestWrapTilesMeet joins the two A4 tiles of the lantern's wrap by their
// match marks and measures across the joint.
func TestWrapTilesMeet(t *testing.T) {
	t.Parallel()
	doc := opened(t, "template", partsAlone(t, pugMill), "lantern", "--apart", "--paper", "A4")
	pages := sheetsWith(t, doc, "Wrap template: waist")
	if len(pages) != 2 {
		t.Fatalf("%d tiles", len(pages))
	}
	left, right := diamonds(doc, pages[0]), diamonds(doc, pages[1])
	if len(left) != 2 || len(right) != 2 {
		t.Fatalf("match marks: %v and %v", left, right)
	}
	dx, dy := left[0].X-right[0].X, left[0].Y-right[0].Y
	near(t, "the second match mark", left[1].X-right[1].X, dx, 0.002)
	near(t, "the second match mark", left[1].Y-right[1].Y, dy, 0.002)
	start, _ := extent(contours(doc, pages[0])[0])
	low, end := extent(contours(doc, pages[1])[0])
	near(t, "the length over the joint", end.X+dx-start.X, math.Pi*(132+0.1), paperTolMm)
	near(t, "the step at the joint", low.Y+dy, start.Y, paperTolMm)
}

// diamonds are the match marks of a page, lowest first.
func diamonds(doc *measure.Doc, page int) []measure.Point {
	var out []measure.Point
	for _, p := range doc.Paths(page) {
		lo, hi := extent(p)
		if len(p) >= 4 && p[len(p)-1].Close && math.Abs(hi.X-lo.X-6.4) < 0.01 && math.Abs(hi.Y-lo.Y-6.4) < 0.01 {
			out = append(out, measure.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2})
		}
	}
	slices.SortFunc(out, func(a, b measure.Point) int { return int(math.Copysign(1, a.Y-b.Y)) })
	return out
}

// TestConeOnPaper measures sectors against testdata/reference/worked_examples.md
// section (d), of thin sheet so that its thickness does not count.
func TestConeOnPaper(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		large, small, height          float64
		outer, inner, angle, outerArc float64
	}{
		{300, 150, 200, 427.200, 213.600, 126.4044, 942.478},
		{500, 400, 120, 650.000, 520.000, 138.4615, 1570.796},
		{600, 100, 80, 314.986, 52.498, 342.8727, 1884.956},
	} {
		t.Run(fmt.Sprintf("%g to %g", c.large, c.small), func(t *testing.T) {
			job := jobOf(t, fmt.Sprintf("part: part\nkind: cone\nmaterial: S235\ncone: {large: %g, small: %g, height: %g, thickness: 0.001}\n", c.large, c.small, c.height))
			doc := opened(t, "template", job, "part", "--apart", "--paper", "1400x1400 mm")
			edge := contours(doc, sheetsWith(t, doc, "Cone development")[0])[0]
			var sides []measure.Seg
			arc, inner := 0.0, 0.0
			for _, s := range edge {
				if s.Kind == measure.Line && s.Length() > 0.01 {
					sides = append(sides, s)
				}
			}
			if len(sides) != 2 {
				t.Fatalf("%d straight edges", len(sides))
			}
			apex := crossing(sides[0], sides[1])
			for _, s := range edge {
				if s.Kind != measure.Curve {
					continue
				}
				want := c.outer
				if s.Start.Dist(apex) < (c.outer+c.inner)/2 {
					want = c.inner
					inner += s.Length()
				} else {
					arc += s.Length()
				}
				for _, at := range []float64{0, 0.3, 0.5, 0.8, 1} {
					near(t, "a radius", s.At(at).Dist(apex), want, paperTolMm)
				}
			}
			// The arcs must be the girths of the two ends.
			near(t, "the outer arc", arc, c.outerArc, 0.02)
			near(t, "the inner arc", inner, math.Pi*c.small, 0.02)
			if got := arc / c.outer * 180 / math.Pi; math.Abs(got-c.angle) > 0.005 {
				t.Errorf("the sector's angle is %.4f°, want %.4f°", got, c.angle)
			}
		})
	}
}

// crossing is where two lines meet.
func crossing(a, b measure.Seg) measure.Point {
	dx, dy := a.End.X-a.Start.X, a.End.Y-a.Start.Y
	ex, ey := b.End.X-b.Start.X, b.End.Y-b.Start.Y
	k := ((b.Start.X-a.Start.X)*ey - (b.Start.Y-a.Start.Y)*ex) / (dx*ey - dy*ex)
	return measure.Point{X: a.Start.X + k*dx, Y: a.Start.Y + k*dy}
}

// TestSaddleOnPaper measures the ordinates of branches against
// testdata/reference/worked_examples.md section (e); the wall is so thin that
// it does not count.
func TestSaddleOnPaper(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		main, branch, angle, offset float64
		drop                        [7]float64 // at 0, 30 … 180°
	}{
		{600, 300, 90, 0, [7]float64{0, 9.526, 29.584, 40.192, 29.584, 9.526, 0}},
		{100, 60, 90, 0, [7]float64{0, 2.303, 7.280, 10.000, 7.280, 2.303, 0}},
		{219.1, 114.3, 90, 0, [7]float64{0, 3.792, 11.818, 16.088, 11.818, 3.792, 0}},
		{100, 60, 45, 0, [7]float64{0, 7.276, 25.295, 44.142, 55.295, 59.238, 60.000}},
		{219.1, 114.3, 45, 0, [7]float64{0, 13.020, 45.288, 79.902, 102.438, 112.007, 114.300}},
		// The axes 15 apart, w = √(50² − (15 + 30·sin t)²), worked out here.
		{100, 60, 90, 15, [7]float64{2.303, 10.000, 21.354, 28.206, 21.354, 10.000, 2.303}},
	} {
		t.Run(fmt.Sprintf("%g on %g at %g off %g", c.branch, c.main, c.angle, c.offset), func(t *testing.T) {
			job := jobOf(t, fmt.Sprintf("part: part\nkind: tube\nmaterial: S235\ntube: {outside: %g, wall: 0.001, length: 600}\nends: {back: {onto: {diameter: %g}, angle: %g, offset: %g}}\n", c.branch, c.main, c.angle, c.offset))
			doc := opened(t, "template", job, "part", "--apart", "--paper", "1400x1400 mm")
			page := sheetsWith(t, doc, "Saddle cut")[0]
			lo, hi := extent(contours(doc, page)[0])
			girth := math.Pi * (c.branch + 0.1)
			near(t, "the girth", hi.X-lo.X, girth, paperTolMm)
			lines := append(upright(doc, page, lo.Y, 0.13), upright(doc, page, lo.Y, 0.35)...)
			if len(lines) < 24 {
				t.Fatalf("%d ordinates", len(lines))
			}
			const margin = 25 // of paper beyond the longest point of the cut
			for i, want := range c.drop {
				// Line 0 lies in the middle, the seam being opposite.
				x := (lo.X+hi.X)/2 + girth*float64(i)*30/360
				j := slices.IndexFunc(lines, func(s measure.Seg) bool { return math.Abs(s.Start.X-x) <= paperTolMm })
				if j < 0 {
					t.Errorf("no ordinate at %d°", 30*i)
					continue
				}
				near(t, fmt.Sprintf("the ordinate at %d°", 30*i), lines[j].Length(), margin+want, paperTolMm)
			}
		})
	}
}

// TestMainHoleOnPaper lays the hole in the pug mill's barrel back on the tube:
// every point of the printed curve must lie on the stub's bore, 131.7 across,
// square to the barrel of 168.3.
func TestMainHoleOnPaper(t *testing.T) {
	t.Parallel()
	doc := opened(t, "template", partsAlone(t, pugMill), "inlet-stub", "--apart", "--paper", "900x1200 mm")
	shapes := contours(doc, sheetsWith(t, doc, "Hole in the main")[0])
	if len(shapes) < 2 || len(shapes[1]) < 50 {
		t.Fatalf("%d contours", len(shapes))
	}
	lo, hi := extent(shapes[0])
	cx, cy := (lo.X+hi.X)/2, (lo.Y+hi.Y)/2
	for _, s := range shapes[1] {
		across := 168.3 / 2 * math.Sin((s.End.X-cx)/(168.4/2))
		near(t, "the radius from the branch's axis", math.Hypot(across, s.End.Y-cy), 131.7/2, paperTolMm)
	}
}

// TestTransitionOnPaper checks that the blank's edges are as long as what they
// become: the mouth's girth and the circle of the round end, rolled, at mid-thickness.
func TestTransitionOnPaper(t *testing.T) {
	t.Parallel()
	doc := opened(t, "template", partsAlone(t, pugMill), "hopper-throat", "--apart", "--paper", "1400x1400 mm")
	page := sheetsWith(t, doc, "Square to round")[0]
	edge := contours(doc, page)[0]
	total := 0.0
	for _, s := range edge {
		total += s.Length()
	}
	// Mouth 340 × 300 and circle 295.3 outside, sheet 2, no lap; the
	// two seam edges run square to the side's middle, from 150 below the centre
	// to the circle's lowest point, 20 mm higher than that of a centred one.
	mouth := 2 * (338.0 + 298.0)
	round := math.Pi * 293.3
	seam := math.Hypot(120, 149-146.65+20)
	near(t, "the way round the blank", total, mouth+round+2*seam, 0.02)
}
