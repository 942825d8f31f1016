package compare

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// read1 reads a drawing of one contour in millimetres, y down.
func read1(t *testing.T, body string) contour {
	t.Helper()
	s, err := Read(strings.NewReader(`<svg width="100mm" height="200mm" viewBox="0 0 100 200">` + body + `</svg>`))
	if err != nil || len(s.contours) != 1 {
		t.Fatalf("%s: %v", body, err)
	}
	return s.contours[0]
}

// TestShapes: box and area of every shape, worked out by hand; y is up.
func TestShapes(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		body           string
		x0, y0, x1, y1 float64
		area           float64
	}{
		{`<rect x="1" y="2" width="10" height="6"/>`, 1, -8, 11, -2, 60},
		{`<rect x="1" y="2" width="10" height="6" rx="2"/>`, 1, -8, 11, -2, 60 - (4-math.Pi)*4},
		{`<rect x="1" y="2" width="10" height="6" ry="1" rx="2"/>`, 1, -8, 11, -2, 60 - (4-math.Pi)*2},
		{`<rect x="1" y="2" width="10" height="6" rx="9"/>`, 1, -8, 11, -2, math.Pi * 15},
		{`<rect x="10%" y="10%" width="50%" height="50%"/>`, 10, -120, 60, -20, 5000},
		{`<circle cx="5" cy="7" r="3"/>`, 2, -10, 8, -4, math.Pi * 9},
		{`<circle cx="50%" cy="50%" r="10%"/>`, 50 - 15.8114, -115.8114, 50 + 15.8114, -100 + 15.8114, math.Pi * 250}, // 10 % of √((100² + 200²)/2)
		{`<ellipse cx="5" cy="7" rx="4" ry="2"/>`, 1, -9, 9, -5, math.Pi * 8},
		{`<circle cx="1cm" cy="1in" r="5"/>`, 10/mmPerPx - 5, -25.4/mmPerPx - 5, 10/mmPerPx + 5, -25.4/mmPerPx + 5, math.Pi * 25}, // lengths count in px
		{`<polygon points="0,0 10,0 10,5"/>`, 0, -5, 10, 0, 25},
		// An ellipse of 10 and 5 turned by 30°: half width √(100 cos² + 25 sin²).
		{`<path d="M8.660254 5A10 5 30 0 1 -8.660254 -5A10 5 30 0 1 8.660254 5Z"/>`, -9.01388, -6.61438, 9.01388, 6.61438, math.Pi * 50},
		// From 3 o'clock the long way round to 4, by 330°: a segment of 30° is left out.
		{`<path d="M5 0A5 5 0 1 0 4.330127 2.5Z"/>`, -5, -5, 5, 5, 25*math.Pi - 12.5*(math.Pi/6-0.5)},
		{`<path d="M0 0A5 5 0 0 1 0 10Z"/>`, 0, -10, 5, 0, 12.5 * math.Pi}, // half a circle, its ends one over the other
		// A parabola over 10 with its control at 10: area 2/3 of 10 × 5.
		{`<path d="M0 0Q5 10 10 0Z"/>`, 0, -5, 10, 0, 100.0 / 3},
		{`<path d="m0 0q5 10 10 0z"/>`, 0, -5, 10, 0, 100.0 / 3},
		// Twice that, the second below by the mirrored control.
		{`<path d="M0 0Q5 10 10 0T20 0L20 20 0 20Z"/>`, 0, -20, 20, 5, 400},
		{`<path d="m10 10m-10 -10q5 10 10 0t10 0l0 20 -20 0z"/>`, 0, -20, 20, 5, 400},
		// A cubic with controls straight up at both ends: 3/4 of 10 high, area 3/5 of 100.
		{`<path d="M0 0C0 10 10 10 10 0Z"/>`, 0, -7.5, 10, 0, 60},
		{`<path d="m0 0c0 10 10 10 10 0z"/>`, 0, -7.5, 10, 0, 60},
		{`<path d="M0 0C0 10 10 10 10 0S20 -10 20 0L20 20 0 20Z"/>`, 0, -20, 20, 7.5, 400},
		// A smooth curve after a line, or after one of the other kind, begins with its control where it is.
		{`<path d="M0 0L0 10T10 10L10 0Z"/>`, 0, -10, 10, 0, 100},
		{`<path d="M0 0C0 10 10 10 10 0T20 0L20 20 0 20Z"/>`, 0, -20, 20, 0, 340},
		{`<path d="M0 0L0 10S10 10 10 0Z"/>`, 0, -10, 10, 0, 80}, // y = 10 − 10 t³ over x = 30 t² − 20 t³
		{`<path d="m10 20q5 10 10 0z"/>`, 10, -25, 20, -20, 100.0 / 3},
		{`<path d="m10 20c0 10 10 10 10 0z"/>`, 10, -27.5, 20, -20, 60},
		{`<path d="m10 20a5 5 0 0 1 10 0a5 5 0 0 1 -10 0z"/>`, 10, -25, 20, -15, math.Pi * 25},
		{`<path d="m10 20l4 0 0 5 -4 0z"/>`, 10, -25, 14, -20, 20},
		{`<path d="M1 1m2 3h4v5h-4z"/>`, 3, -9, 7, -4, 20},
		{`<path d="M3 4H7V9H3Z"/>`, 3, -9, 7, -4, 20},
		{`<path d="M0 0a5 5 0 0 1 10 0a5 5 0 1 1 -10 0z"/>`, 0, -5, 10, 5, math.Pi * 25},
	} {
		c := read1(t, test.body)
		lo, hi := c.box().Min, c.box().Max
		area, _ := c.area()
		for _, d := range []float64{lo.XMm - test.x0, lo.YMm - test.y0, hi.XMm - test.x1, hi.YMm - test.y1} {
			if math.Abs(d) > 0.005 {
				t.Errorf("%s: box %v %v", test.body, lo, hi)
				break
			}
		}
		if math.Abs(area-test.area) > 0.02+0.0004*test.area {
			t.Errorf("%s: area %g, want %g", test.body, area, test.area)
		}
	}
	for _, nothing := range []string{`<rect width="0" height="5"/>`, `<rect width="5"/>`, `<circle/>`, `<ellipse rx="3"/>`, `<ellipse ry="3"/>`, `<ellipse rx="3" ry="0"/>`, `<path d="M0 0"/>`, `<path/>`, `<line/>`, `<polygon points="1 1"/>`} {
		if s, err := Read(strings.NewReader(`<svg>` + nothing + `</svg>`)); err != nil || len(s.contours) != 0 || len(s.others) != 0 {
			t.Errorf("%s: %v", nothing, err)
		}
	}
}

// TestTransforms carries the point 3, 5 through every step.
func TestTransforms(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]point{
		"":                            xy(3, 5),
		"translate(2)":                xy(5, 5),
		"translate(2 -7)":             xy(5, -2),
		"scale(2)":                    xy(6, 10),
		"scale(2,3)":                  xy(6, 15),
		"rotate(90)":                  xy(-5, 3),
		"rotate(90 3 4)":              xy(2, 4),
		"rotate(90 2 4)":              xy(1, 5),
		"skewX(45)":                   xy(8, 5),
		"skewY(45)":                   xy(3, 8),
		"matrix(1 2 3 4 5 6)":         xy(23, 32),
		"translate(1 1) scale(2)":     xy(7, 11),
		" scale(2) , translate(1,1) ": xy(8, 12),
	} {
		m, _, bad := transform(text)
		if got := m.apply(3, 5); bad != "" || geom.Distance(got, want) > 1e-9 {
			t.Errorf("%q: %v %s, want %v", text, got, bad, want)
		}
	}
	for text, at := range map[string]int{"turn(3)": 0, "scale(1 2 3)": 0, "scale": 0, "scale(": 6, "scale(1 x)": 8, "scale(1) rotate(1 2)": 9, "matrix(1 2 3 4 5 6 7)": 0, strings.Repeat("scale(1)", 1001): 0} {
		if _, got, bad := transform(text); bad == "" || got != at && text != "matrix(1 2 3 4 5 6 7)" {
			t.Errorf("%q: %q at %d", text, bad, got)
		}
	}
	if s := (matrix{3, 4, 0, 2, 9, 9}).stretch(); math.Abs(s-5*math.Sqrt2) > 1e-12 {
		t.Errorf("stretch %g", s)
	}
}

// TestLengths: the units of CSS Values 3, absolute lengths.
func TestLengths(t *testing.T) {
	t.Parallel()
	for unit, want := range map[string]float64{"": 25.4 / 96, "px": 25.4 / 96, "mm": 1, "cm": 10, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6, "q": 0.25} {
		if got, ok := mmPer[unit]; !ok || got != want {
			t.Errorf("%s: %g", unit, got)
		}
	}
	for text, want := range map[string]float64{"12": 12, " -.5e1mm": -5, "+3.25 Q": 3.25, "1e3px": 1000, "7em": 7, "5%": 5, "1e9": 1e9, "25e-1mm": 2.5, "2E+1": 20, "-4e-2in": -0.04, "1.": 1} {
		if got, _, bad := length(text); bad != "" || got != want {
			t.Errorf("%q: %g %s", text, got, bad)
		}
	}
	for _, text := range []string{"", "mm", "1e10", ".", "-", "3furlong", "NaN", "1e", "1e-", "+", " ", "-.", "1000000001"} {
		if got, _, bad := length(text); bad == "" {
			t.Errorf("%q is %g", text, got)
		}
	}
}

// TestViews: where the point 10, 20 of a view of 100 × 50 from 2, 4 comes to lie.
func TestViews(t *testing.T) {
	t.Parallel()
	px := mmPerPx
	for head, want := range map[string]point{
		`viewBox="2 4 100 50"`:                                                                  xy(8*px, -16*px),
		`viewBox="2 4 100 50" width="200mm"`:                                                    xy(16, -32),
		`viewBox="2 4 100 50" height="200mm"`:                                                   xy(32, -64),
		`viewBox="2 4 100 50" width="200mm" height="60mm"`:                                      xy(9.6, -19.2),
		`viewBox="2 4 100 50" width="200mm" height="60mm" preserveAspectRatio="none"`:           xy(16, -19.2),
		`viewBox="2 4 100 50" width="200mm" height="60mm" preserveAspectRatio="xMidYMid slice"`: xy(16, -32),
		`viewBox="2 4 100 50" width="100%" height="auto"`:                                       xy(8*px, -16*px),
		`viewBox="2 4 100 50" width=" " height=""`:                                              xy(8*px, -16*px),
		`width="50mm" height="50mm"`:                                                            xy(10*px, -20*px),
		``:                                                                                      xy(10*px, -20*px),
	} {
		s, err := Read(strings.NewReader(`<svg ` + head + `><line x1="10" y1="20" x2="90" y2="20"/></svg>`))
		if err != nil || geom.Distance(s.contours[0].points[0], want) > 1e-9 {
			t.Errorf("%s: %v %v, want %v", head, s, err, want)
		}
	}
	// Half of the sheet, without a view.
	s, err := Read(strings.NewReader(`<svg width="80mm" height="60mm"><line x1="50%" y1="50%" x2="90%" y2="0"/></svg>`))
	if err != nil || geom.Distance(s.contours[0].points[0], xy(40, -30)) > 1e-9 {
		t.Errorf("%v %v", s.contours, err)
	}
	// A drawing inside another: its own view, and its own percentages.
	for inner, want := range map[string]point{
		`<svg x="5" y="6" width="20" height="40" viewBox="1 1 10 10"><line x1="2" y1="3" x2="9" y2="9"/></svg>`:                            xy(7, -10),
		`<svg x="5" y="6" width="20" height="40" viewBox="1 1 10 10" preserveAspectRatio="none"><line x1="2" y1="3" x2="9" y2="9"/></svg>`: xy(7, -14),
		`<svg x="5" y="6" width="20" height="40"><line x1="50%" y1="50%" x2="19" y2="9"/></svg>`:                                           xy(15, -26),
		`<svg x="10%" y="10%"><line x1="50%" y1="50%" x2="19" y2="9"/></svg>`:                                                              xy(60, -120),
	} {
		if c := read1(t, inner); geom.Distance(c.points[0], want) > 1e-9 {
			t.Errorf("%s: %v, want %v", inner, c.points[0], want)
		}
	}
	// Another vocabulary is not drawn, that of SVG is by its own name too; what is UTF-8 is read, whatever it calls itself.
	s, err = Read(strings.NewReader(`<?xml version="1.0" encoding="latin-1"?><svg:svg width="80mm" height="60mm"><x:g><x:line x2="50%"/></x:g><svg:line x1="50%" y1="50%" x2="90%" y2="0"/></svg:svg>`))
	if err != nil || len(s.contours) != 1 || geom.Distance(s.contours[0].points[0], xy(40, -30)) > 1e-9 {
		t.Errorf("%v %v", s, err)
	}
	// Elements used again: shifted, and a symbol with the size of its use.
	for body, want := range map[string]point{
		`<defs><line id="a" x1="1" y1="2" x2="9" y2="9"/></defs><use href="#a" x="3" y="4"/>`:                                                                         xy(4, -6),
		`<symbol id="a" viewBox="0 0 10 10" width="99"><line x1="1" y1="2" x2="9" y2="9"/></symbol><use href="#a" x="3" y="4" width="20" height="20"/>`:               xy(5, -8),
		`<symbol id="a" viewBox="0 0 10 10" transform="translate(1 0)"><line x1="1" y1="2" x2="9" y2="9"/></symbol><use href="#a" width="20" height="20"/>`:           xy(3, -4),
		`<defs><g id="a" transform="scale(2)"><line x1="1" y1="2" x2="9" y2="9"/></g></defs><g transform="translate(10 0)"><use href="#a" transform="scale(3)"/></g>`: xy(16, -12),
	} {
		if c := read1(t, body); geom.Distance(c.points[0], want) > 1e-9 {
			t.Errorf("%s: %v, want %v", body, c.points[0], want)
		}
	}
}

// TestWhere: lines and columns far into a file, counted in characters.
func TestWhere(t *testing.T) {
	t.Parallel()
	src := "<svg>\n" + strings.Repeat("<!-- é -->\n", 1500) + "<g>éé<path d=\"x\"/></g></svg>"
	_, err := Read(strings.NewReader(src))
	if err == nil || !strings.HasPrefix(err.Error(), "1502:15: ") {
		t.Errorf("%v", err)
	}
	f := &file{src: []byte(src)}
	f.survey()
	for at := 0; at <= len(src); at += 977 {
		before := src[:at]
		want := place{1 + strings.Count(before, "\n"), 1 + len([]rune(before[strings.LastIndex(before, "\n")+1:]))}
		if src[min(at, len(src)-1)]&0xC0 == 0x80 {
			continue // inside a character
		}
		if got := f.where(int64(at)); got != want {
			t.Errorf("byte %d is at %v, want %v", at, got, want)
		}
	}
	long := &file{src: []byte(strings.Repeat("x", 9000))}
	if long.survey(); long.where(5000) != (place{1, 5001}) || long.where(9999) != (place{1, 9001}) {
		t.Errorf("in a long line: %v", long.where(5000))
	}
	// A line that ends before the file's first block, and one at its end.
	for _, test := range []struct {
		src  string
		want place
	}{{"\n" + strings.Repeat("x", 5000), place{2, 4500}}, {strings.Repeat("x", blockBytes) + "\n" + strings.Repeat("x", 900), place{2, 4500 - blockBytes}}} {
		g := &file{src: []byte(test.src)}
		if g.survey(); g.where(4500) != test.want {
			t.Errorf("byte 4500 is at %v, want %v", g.where(4500), test.want)
		}
	}
	if f.where(-5) != (place{1, 1}) || (&file{}).where(3) != (place{1, 1}) {
		t.Error("a byte before the file")
	}
}

// TestContours: the geometry that everything stands on.
func TestContours(t *testing.T) {
	t.Parallel()
	l := contour{closed: true, points: []point{xy(0, 0), xy(4, 0), xy(4, 1), xy(1, 1), xy(1, 5), xy(0, 5)}}
	if area, at := l.area(); area != 8 || geom.Distance(at, xy(1.25, 1.75)) > 1e-12 {
		t.Errorf("area %g about %v", area, at) // 4·1 about 2, 0.5 and 1·4 about 0.5, 3
	}
	if l.length() != 18 {
		t.Errorf("length %g", l.length())
	}
	open := contour{points: l.points[:3]}
	if open.length() != 5 {
		t.Errorf("open length %g", open.length())
	}
	for _, test := range []struct {
		p    point
		want float64
	}{{xy(2, 3), 3}, {xy(-3, -4), 5}, {xy(13, 4), 5}, {xy(5, 0), 0}} {
		if d := geom.ToSegment(test.p, xy(0, 0), xy(10, 0)); d != test.want {
			t.Errorf("%v is %g off", test.p, d)
		}
	}
	if d := geom.ToSegment(xy(3, 4), point{}, point{}); d != 5 {
		t.Errorf("a segment of no length is %g off", d)
	}
	moved := l.moved(xy(0, 0.3))
	if d, _ := apart(&l, &moved, 100); math.Abs(d-0.3) > 1e-12 {
		t.Errorf("0.3 is %g", d)
	}
	bulge := contour{closed: true, points: []point{xy(0, 0), xy(4, 0), xy(5, 0.5), xy(4, 1), xy(1, 1), xy(1, 5), xy(0, 5)}}
	for _, pair := range [][2]*contour{{&l, &bulge}, {&bulge, &l}} {
		if d, at := apart(pair[0], pair[1], 100); d != 1 || at != (xy(5, 0.5)) {
			t.Errorf("a bulge of 1 is %g at %v", d, at)
		}
	}
	if got := thin([]point{xy(0, 0), xy(0, 0), xy(1, 0.001), xy(2, 0), xy(2, 2), xy(0, 2), xy(0, 0)}, true, 0.01); fmt.Sprint(got) != "[{0 0} {2 0} {2 2} {0 2}]" {
		t.Errorf("%v", got)
	}
	if got := thin([]point{xy(0, 0), xy(1, 0.02), xy(2, 0), xy(2, 2), xy(0, 0)}, false, 0.01); len(got) != 5 {
		t.Errorf("%v", got)
	}
	if got := sampled(make([]point, 10), 4); len(got) != 4 {
		t.Errorf("%d samples", len(got))
	}
	if roundness(10) != 0.03 || roundness(100) != 0.1 {
		t.Error("roundness")
	}
}

// TestJoin: lines whose ends are within 0.05 mm become one, either way round.
func TestJoin(t *testing.T) {
	t.Parallel()
	line := func(p ...point) contour { return contour{points: p} }
	got := join([]contour{line(xy(0, 0), xy(10, 0)), line(xy(0, 10), xy(10, 10)), line(xy(10.04, 0), xy(10, 10)), line(xy(30, 0), xy(40, 0)), line(xy(0, 0.04), xy(0, 10)), line(xy(40.06, 0), xy(50, 0))})
	if len(got) != 3 || !got[0].closed || len(got[0].points) != 4 || got[1].closed || len(got[1].points) != 2 {
		t.Errorf("%+v", got)
	}
	// The nearest of two ends is taken.
	got = join([]contour{line(xy(0, 0), xy(10, 0)), line(xy(10.03, 0), xy(20, 5)), line(xy(10.01, 0), xy(20, 0))})
	if len(got) != 2 || got[0].points[2] != (xy(20, 0)) {
		t.Errorf("%+v", got)
	}
	// So it is wherever the nearest lies, of equally near ones the first drawn; one that is 0.05 off is none.
	for _, c := range []struct {
		first, second, want point
	}{
		{xy(0.04, 0), xy(-0.01, 0), xy(20, 2)}, {xy(-0.01, 0), xy(0.04, 0), xy(20, 1)}, {xy(0.03, 0), xy(-0.03, 0), xy(20, 1)}, {xy(-0.03, 0), xy(0.03, 0), xy(20, 1)},
		{xy(0, 0.03), xy(0, 0.03), xy(20, 1)}, {xy(0, -0.05), xy(0.04, 0), xy(20, 2)}, {xy(0, -0.05), xy(0, -0.06), xy(0, 0)}, {xy(0.05, 0), xy(-0.05, 0), xy(0, 0)},
	} {
		got = join([]contour{line(xy(-10, 0), xy(0, 0)), line(c.first, xy(20, 1)), line(c.second, xy(20, 2))})
		if at := got[0].points[len(got[0].points)-1]; at != c.want {
			t.Errorf("%v and %v: on to %v, want %v", c.first, c.second, at, c.want)
		}
	}
	for i := range 18 { // ends in two cells of the search, in every direction
		from := 10.005 + 0.04*float64(i/9)
		to := xy(from+0.03*float64(i%3-1), from+0.03*float64(i/3%3-1))
		if got = join([]contour{line(xy(0, 0), xy(from, from)), line(to, xy(20, 0))}); len(got) != 1 {
			t.Errorf("from %g to %v: %d lines", from, to, len(got))
		}
	}
	for _, c := range []struct {
		points []point
		want   bool
	}{{[]point{xy(0, 0), xy(9, 0), xy(0, 0.05)}, true}, {[]point{xy(0, 0), xy(9, 0), xy(0, 0.06)}, false}, {[]point{xy(0, 0), xy(0, 0)}, false}} {
		if meets(c.points) != c.want {
			t.Errorf("%v closes: %v", c.points, !c.want)
		}
	}
}

// TestReaches: a hole is looked for less than half way to its neighbour.
func TestReaches(t *testing.T) {
	t.Parallel()
	for i, want := range []float64{2.94, 2.94, 18, 36} { // 0.49·6; 0.45·40; 0.45·80
		if got := reaches([]point{xy(0, 0), xy(6, 0), xy(46, 0), xy(500, 0)})[i]; math.Abs(got-want) > 1e-12 {
			t.Errorf("%d: %g, want %g", i, got, want)
		}
	}
	if got := reaches([]point{xy(0, 0), xy(6.4, 0)})[0]; got != 3 { // at least 3 mm where that is short of half way
		t.Errorf("%g", got)
	}
	got := pairUp(2, 3, func(i, k int) (float64, bool) {
		return [][]float64{{1, 2, 9}, {0.5, 3, 9}}[i][k], k < 2
	})
	if fmt.Sprint(got) != "[1 0]" {
		t.Errorf("%v", got)
	}
}

// TestSlotsAskew: a slot's edge is half its width from the line between the centres of its
// ends, whichever way that runs.
func TestSlotsAskew(t *testing.T) {
	t.Parallel()
	for _, to := range []point{xy(10, 0), xy(0, 10), xy(6, 8), xy(-6, 8), xy(6, -8)} {
		c := Slot{WidthMm: 8, EndsMm: [2]plan.XY{to, to.Times(-1)}}.contour()
		for _, p := range c.points {
			if off := geom.ToSegment(p, to, to.Times(-1)); math.Abs(off-4) > 1e-9 {
				t.Errorf("from %v: %v lies %g from the middle line", to, p, off)
				break
			}
		}
		if mm2, _ := c.area(); math.Abs(mm2-(20*8+math.Pi*16)) > 0.02 {
			t.Errorf("from %v: %g mm²", to, mm2)
		}
	}
}

// TestPose: mirror, then scale, then turn, then shift.
func TestPose(t *testing.T) {
	t.Parallel()
	p := pose{scale: 2, turn: math.Pi / 2, mirrored: true, dx: 10, dy: 20}
	if got := p.apply(xy(3, 5)); geom.Distance(got, xy(0, 14)) > 1e-12 {
		t.Errorf("%v", got)
	}
	if p.changes() != 3 || (pose{scale: 1}).changes() != 0 || (pose{scale: 1, turn: 0.3}).changes() != 2 {
		t.Error("changes")
	}
}
