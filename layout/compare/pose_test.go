package compare

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestFits: what may be a hole by its diameter, within 0.5 mm or a share.
func TestFits(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		want, got, scale float64
		fits             bool
	}{
		{10, 10, 1, true}, {10, 5, 2, true}, {10, 20, 2, false}, {10, 20, 0.5, true}, {10, 10.49, 1, true}, {10, 10.51, 1, false}, {10, 9.51, 1, true},
		{100, 104.9, 1, true}, {100, 105.1, 1, false}, {0, 0, 3, true}, {0, 0.3, 1, false}, {0.3, 0, 1, false},
	} {
		if got := (target{diameterMm: test.want}).fits(source{diameterMm: test.got}, test.scale, poseMm, 0.05); got != test.fits {
			t.Errorf("Ø%g times %g for Ø%g: %v", test.got, test.scale, test.want, got)
		}
	}
}

// TestVote: the shift that three holes share is their mean, whatever a fourth
// one 0.3 mm beside says; two prove nothing.
func TestVote(t *testing.T) {
	t.Parallel()
	for _, scale := range []float64{1, 2, 0.5} {
		s := &poser{}
		for i, at := range []point{xy(0, 0), xy(50, 0), xy(0, 70), xy(-90, 10)} {
			dia := 10 + float64(i)
			s.want = append(s.want, target{at: at, diameterMm: dia})
			off := xy(3, 4)
			switch i {
			case 0:
				off.XMm += 0.09
			case 3:
				off.XMm += 0.3
			}
			s.got = append(s.got, source{at: at.Plus(off).Times(1 / scale), diameterMm: dia / scale})
		}
		by, ok := s.vote(pose{scale: scale})
		if !ok || geom.Distance(by, xy(-3.03, -4)) > 1e-9 {
			t.Errorf("scale %g: shifted by %v, %v", scale, by, ok)
		}
		s.want = s.want[1:3]
		if by, ok = s.vote(pose{scale: scale}); ok {
			t.Errorf("two holes shift by %v", by)
		}
	}
}

// TestFarthest: the corners that are as far out as the outermost.
func TestFarthest(t *testing.T) {
	t.Parallel()
	r, at := farthest([]point{xy(1, 1), xy(11, 1), xy(1, 10.99), xy(1, -8.97), xy(-4, 1)}, xy(1, 1))
	if r != 10 || len(at) != 2 || at[0] != xy(10, 0) || at[1] != xy(0, 9.99) {
		t.Errorf("%g: %v", r, at)
	}
}

// TestScore: 2 for a hole in place and size, 1 for one in place, 1 for a mark,
// and a little for how near; full where all that must be there is, and no more.
func TestScore(t *testing.T) {
	t.Parallel()
	edge := &piece{}
	hole := func(x, dia float64, later bool) target { return target{xy(x, 0), dia, later} }
	for _, test := range []struct {
		name  string
		want  []target
		got   []source
		score float64
		full  bool
	}{
		{"right", []target{hole(0, 10, false), hole(30, 10, false)}, []source{{xy(30, 0), 10, nil}, {xy(0, 0), 10, nil}}, 2 * (2 + closeCounts), true},
		{"half way off", []target{hole(0, 10, false)}, []source{{xy(0.25, 0), 10, nil}}, 2 + closeCounts/2, true},
		{"just off", []target{hole(0, 10, false)}, []source{{xy(0.51, 0), 10, nil}}, 0, false},
		{"other size", []target{hole(0, 10, false)}, []source{{xy(0, 0), 10.6, nil}}, 1 + closeCounts, false},
		{"nearly the size", []target{hole(0, 10, false)}, []source{{xy(0, 0), 10.4, nil}}, 2 + closeCounts, true},
		{"the better of two", []target{hole(0, 10, false)}, []source{{xy(0, 0), 12, nil}, {xy(0, 0), 10, nil}}, 2 + closeCounts, false},
		{"missing", []target{hole(0, 10, false)}, nil, 0, false},
		{"missing, made later", []target{hole(0, 10, true)}, nil, 0, true},
		{"one too many", nil, []source{{xy(0, 0), 10, nil}}, 0, false},
		{"the outline", nil, []source{{xy(0, 0), 10, edge}}, 0, true},
		{"a mark", []target{hole(0, 0, true)}, []source{{xy(0, 0), 0, nil}}, 1 + closeCounts, true},
		{"a mark is no hole", []target{hole(0, 10, false)}, []source{{xy(0, 0), 0, nil}}, 0, false},
	} {
		s := &poser{want: test.want, got: test.got}
		if score, full := s.scoreHoles(pose{scale: 1}, edge); math.Abs(score-test.score) > 1e-12 || full != test.full {
			t.Errorf("%s: %g, %v; want %g, %v", test.name, score, full, test.score, test.full)
		}
	}
}

// TestBendsAreClose: the pieces of a curve stray from it by flatMm at most, and
// are no more than that takes: by half of it at least on a parabola, which bends
// alike all along, by a third on a cubic. The curve is taken by the construction
// of de Casteljau.
func TestBendsAreClose(t *testing.T) {
	t.Parallel()
	between := func(a, b point, t float64) point { return a.Plus(b.Minus(a).Times(t)) }
	for _, at := range [][]point{{xy(0, 0), xy(500, 900), xy(1000, 0)}, {xy(10, 5), xy(10, 805), xy(900, 805)}, {xy(0, 0), xy(0, 800), xy(800, 800), xy(800, 0)}, {xy(0, 0), xy(0, 900), xy(700, 0), xy(700, 900)}} {
		p := &pen{f: &file{}, e: &element{}, m: identity}
		p.to(at[0].XMm, at[0].YMm)
		if len(at) == 3 {
			p.quad(at[1], at[2])
		} else {
			p.cubic(at[1], at[2], at[3])
		}
		worst, least, n := 0.0, flatMm/float64(len(at)-1), len(p.line)-1
		for i := range n {
			u := (float64(i) + 0.5) / float64(n)
			row := append([]point{}, at...)
			for len(row) > 1 {
				for k := range len(row) - 1 {
					row[k] = between(row[k], row[k+1], u)
				}
				row = row[:len(row)-1]
			}
			worst = math.Max(worst, geom.ToSegment(row[0], p.line[i], p.line[i+1]))
		}
		if worst > flatMm || worst < least || p.line[n] != at[len(at)-1] {
			t.Errorf("%v: %g mm in %d pieces, to %v", at, worst, n, p.line[n])
		}
	}
}

// TestLines: each line of a report stands there where it has something to say.
func TestLines(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		r    Report
		want string
	}{
		{Report{Contours: 3, Circles: 2, Matched: 1, Wanted: 2}, "no differences"},
		{Report{LeftOut: []string{"hole 1 (a)"}}, "not cut, to be drilled: hole 1 (a)\nno differences"},
		{Report{Unmarked: []string{"hole 1 (a)"}}, "neither cut nor marked: hole 1 (a)\nno differences"},
		{Report{Marks: 1, MarksWanted: 2, MarksRight: 1, Layers: []string{"pop"}}, "marks: 1 of 2 in place, 1 drawn; 0 other lines on the marking layers pop\nno differences"},
		{Report{OtherLines: 1, Layers: []string{"pop", "top"}}, "marks: 0 of 0 in place, 0 drawn; 1 other line on the marking layers pop, top\nno differences"},
		{Report{Findings: []Finding{{Code: Extra, What: "a", Line: 1, Column: 3}}}, "x.svg:1:3: extra-contour: a\n1 finding"},
		{Report{Findings: []Finding{{Code: Empty, What: "a"}, {Code: Extra, What: "b"}}}, "x.svg: empty: a\nx.svg: extra-contour: b\n2 findings"},
	} {
		test.r.Part, test.r.ToleranceMm, test.r.units = "plate", 0.1, parts.Millimetres
		head := fmt.Sprintf("x.svg against plate: %d closed contours, %d of them round; %d of %d openings in place and size (to 0.1 mm)\n", test.r.Contours, test.r.Circles, test.r.Matched, test.r.Wanted)
		if got := strings.Join(test.r.Lines("x.svg"), "\n"); got != head+test.want {
			t.Errorf("%s\nwant\n%s%s", got, head, test.want)
		}
	}
}

// TestWhy: each usual wrong scale is explained by the one factor that makes it,
// to 0.4 %; 1 in = 25.4 mm.
func TestWhy(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		scale float64
		want  string
	}{
		{1 / 25.4, "inches are read as millimetres"}, {25.4, "millimetres are read as inches"}, {25.4 / 96, "millimetres are read as pixels, 96"}, {96 / 25.4, "pixels, 96 to the inch, are read"},
		{25.4 / 72, "millimetres are read as points, 72"}, {72 / 25.4, "points, 72 to the inch"}, {25.4 / 90, "millimetres are read as pixels, 90"}, {90 / 25.4, "pixels, 90 to the inch, are read"},
		{72.0 / 96, "72 and 96 dots"}, {96.0 / 72, "72 and 96 dots"}, {90.0 / 96, "90 and 96 dots"}, {96.0 / 90, "90 and 96 dots"}, {0.1, "centimetres"}, {10, "centimetres"},
		{25.4 * 1.0035, "read as inches"}, {25.4 * 1.005, ""}, {25.4 * 0.995, ""}, {0.97, ""}, {2, ""},
	} {
		c := &comparison{report: &Report{Scale: test.scale}}
		if got := c.why(); (got == "") != (test.want == "") || !strings.Contains(got, test.want) {
			t.Errorf("%g times: %q, want %q", test.scale, got, test.want)
		}
	}
	if got := short(strings.Repeat("é", 40)); got != strings.Repeat("é", 40) {
		t.Errorf("40 characters are cut to %q", got)
	}
	if got := short(strings.Repeat("é", 41)); got != strings.Repeat("é", 40)+"…" {
		t.Errorf("41 characters are %q", got)
	}
}

// TestCentreUp: a right outline says where the drawing lies, to the hundredth; of
// a wrong one the holes do; a shift over 1.5 mm is no rounding.
func TestCentreUp(t *testing.T) {
	t.Parallel()
	square := func(x, w float64) contour {
		return contour{closed: true, points: []point{xy(x, 0), xy(x+w, 0), xy(x+w, 50), xy(x, 50)}}
	}
	for _, test := range []struct {
		name         string
		edge, wide   float64 // the outline lies so far off, and is so wide
		hole         float64 // and the holes
		edgeX, holeX float64 // where they come to lie
	}{
		{"both off alike", 0.3, 100, 0.3, 0, 0}, {"the outline decides", 0.3, 100, 0, 0, -0.3}, {"of a wide one the holes do", 0.3, 101, 0.1, 0.2, 0},
		{"far off", 1.49, 100, 0.2, 0, -1.29}, {"too far off", 1.51, 100, 0.2, 1.51, 0.2}, {"no hole is near", 0.3, 101, 5, -0.5, 4.2},
	} {
		edge := &piece{contour: square(test.edge, test.wide)}
		hole := &piece{round: true, centre: xy(20+test.hole, 25), radius: 5, contour: contour{closed: true, points: ring(xy(20+test.hole, 25), 5, 60, 1)}}
		want := &Part{edge: square(0, 100), Rounds: []Round{{Point: xy(20, 25), DiameterMm: 10}}}
		c := &comparison{want: want, tol: 0.1, closed: []*piece{edge, hole}, edge: edge}
		c.centreUp()
		if got := edge.points[0].XMm; math.Abs(got-test.edgeX) > 1e-9 {
			t.Errorf("%s: the outline begins at %g, want %g", test.name, got, test.edgeX)
		}
		if got := hole.centre.XMm - 20; math.Abs(got-test.holeX) > 1e-9 {
			t.Errorf("%s: the hole is %g off, want %g", test.name, got, test.holeX)
		}
	}
}
