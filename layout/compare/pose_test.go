package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
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
	if _, at := farthest(ring(xy(0, 0), 10, 20, 1), xy(0, 0)); len(at) != 16 {
		t.Errorf("%d of 20", len(at))
	}
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
		{"one for two", []target{hole(0, 10, false), hole(0.1, 10, false)}, []source{{xy(0, 0), 10, nil}}, 2 + closeCounts, false},
		{"the first of two alike", []target{hole(0, 10, false)}, []source{{xy(0.25, 0), 10, nil}, {xy(0, 0), 10, nil}}, 2 + closeCounts/2, false},
		{"just in place", []target{hole(0, 10, false)}, []source{{xy(0.5, 0), 10.5, nil}}, 2, true},
		{"a mark is no hole", []target{hole(0, 10, false)}, []source{{xy(0, 0), 0, nil}}, 0, false},
	} {
		s := &poser{want: test.want, got: test.got}
		if score, full := s.scoreHoles(pose{scale: 1}, edge); math.Abs(score-test.score) > 1e-12 || full != test.full {
			t.Errorf("%s: %g, %v; want %g, %v", test.name, score, full, test.score, test.full)
		}
	}
}

// TestSteps: a straight line is one piece, and one bent as nothing is in as many as a contour may have.
func TestSteps(t *testing.T) {
	t.Parallel()
	p := &pen{f: &file{}, e: &element{}, m: identity}
	for bend, want := range map[float64]int{0: 1, 1e-9: fewestSteps, 1e18: 4096, math.Inf(1): 4096, math.NaN(): 4096} {
		if got := p.steps(bend); got != want {
			t.Errorf("bent by %v: %d pieces, want %d", bend, got, want)
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
		{25.4 * 1.0035, "read as inches"}, {25.4 * 1.005, ""}, {25.4 * 0.99601, ""}, {25.4 * 0.9961, "read as inches"}, {25.4 * 0.995, ""}, {0.97, ""}, {2, ""},
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

// TestTurns: quarter turns, then what brings holes within reach on each other, of three at
// most that lie 5 mm out or more, and the outermost corner; none twice, 60 in all.
func TestTurns(t *testing.T) {
	t.Parallel()
	at := func(r, rad float64) point { return xy(r*math.Cos(rad), r*math.Sin(rad)) }
	quarters := []float64{0, math.Pi / 2, math.Pi, -math.Pi / 2}
	many := func(n int, r, from float64) (out []source) {
		for i := range n {
			out = append(out, source{at: at(r, from+0.05*float64(i)), diameterMm: 10})
		}
		return out
	}
	hole := func(p point) target { return target{at: p, diameterMm: 10} }
	triangle := contour{closed: true, points: []point{xy(0, 0), xy(30, 0), xy(0, 10)}}
	turned := pose{scale: 0.5, turn: -0.7}.lay(triangle.points)
	for _, c := range []struct {
		name     string
		s        poser
		edge     contour
		scale    float64
		mirrored bool
		more     []float64
	}{
		{"nothing to go by", poser{}, contour{}, 1, false, nil},
		{"as it lies", poser{want: []target{hole(xy(20, 0))}, got: many(1, 20, 0)}, contour{}, 1, false, nil},
		{"turned back", poser{want: []target{hole(at(20, 2/math.Pi))}, got: many(1, 20, 0)}, contour{}, 1, false, []float64{2 / math.Pi}},
		{"mirrored", poser{want: []target{hole(at(20, 0.4))}, got: many(1, 20, 0)}, contour{}, 1, true, []float64{0.4 - math.Pi}},
		{"beyond half a turn", poser{want: []target{hole(at(20, 3))}, got: many(1, 20, -3)}, contour{}, 1, false, []float64{6 - 2*math.Pi}},
		{"half a turn, either way round", poser{want: []target{hole(xy(-20, -1e-9))}, got: many(1, 20, 0)}, contour{}, 1, false, nil},
		{"half as large", poser{want: []target{hole(at(20, 0.4))}, got: []source{{at: xy(10, 0), diameterMm: 5}}}, contour{}, 2, false, []float64{0.4}},
		{"as near as it may be", poser{want: []target{hole(xy(16, 12))}, got: many(1, 20.5, 0)}, contour{}, 1, false, []float64{math.Atan(0.75)}},
		{"too far out", poser{want: []target{hole(at(20, 0.4))}, got: many(1, 20.6, 0)}, contour{}, 1, false, nil},
		{"5 mm out", poser{want: []target{hole(xy(0, 5))}, got: many(1, 5, 0.1)}, contour{}, 1, false, []float64{math.Pi/2 - 0.1}},
		{"less than 5 mm out", poser{want: []target{hole(xy(0, 4.9))}, got: many(1, 4.9, 0.1)}, contour{}, 1, false, nil},
		{"three of four", poser{want: []target{hole(at(20, 0.4)), hole(at(20, 0.5)), hole(at(20, 0.6)), hole(at(20, 0.7))}, got: many(1, 20, 0)}, contour{}, 1, false, []float64{0.4, 0.5, 0.6}},
		{"its outermost corner", poser{edge: triangle}, turned, 2, false, []float64{0.7}},
	} {
		for i := range c.s.got {
			c.s.got[i].piece = &piece{}
		}
		got := c.s.turns(c.scale, c.mirrored, point{}, &piece{contour: c.edge})
		want := append(append([]float64{}, quarters...), c.more...)
		if !slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("%s: %v, want %v", c.name, got, want)
		}
	}
	s := poser{want: []target{hole(xy(0, 20))}, got: many(70, 20, 0.1)}
	if got := s.turns(1, false, point{}, &piece{}); len(got) != 60 {
		t.Errorf("%d turns", len(got))
	}
}

// TestChosen: another pose than the drawing's own must find all where that does not, or
// four more.
func TestChosen(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		asIs, best try
		other      bool
	}{
		{try{score: 10}, try{score: 13.9}, false}, {try{score: 10}, try{score: 14}, true}, {try{score: 10}, try{score: 10.1, full: true}, true}, {try{score: 10}, try{score: 10, full: true}, false},
		{try{score: 10, full: true}, try{score: 12, full: true}, false}, {try{score: 10}, try{score: 12}, false},
	} {
		c.best.turn = 1
		if got := (&poser{asIs: c.asIs, best: c.best}).chosen(); (got.turn == 1) != c.other {
			t.Errorf("%+v or %+v: %+v", c.asIs, c.best, got)
		}
	}
}

// TestConsider: of two poses that find as much the one stands that changes less, a tenth of
// a hole for a change, then the one turned less; what finds all goes before. A square as
// the outline counts 4 however it is turned, and a hole is missing.
func TestConsider(t *testing.T) {
	t.Parallel()
	square := rectangle(-50, -50, 100, 100)
	half, quarter, twice := pose{scale: 1, turn: math.Pi}, pose{scale: 1, turn: math.Pi / 2}, pose{scale: 1, turn: math.Pi, mirrored: true}
	for _, c := range []struct {
		name  string
		best  try
		p     pose
		full  bool
		taken bool
	}{
		{"finds more", try{score: 3.98, pose: half}, half, false, true}, {"finds hardly more", try{score: 3.995, pose: half}, half, false, false},
		{"more by a change", try{score: 3.88, pose: half}, twice, false, true}, {"too little for a change", try{score: 3.95, pose: half}, twice, false, false},
		{"turned less", try{score: 4, pose: half}, quarter, false, true}, {"turned less, finds less", try{score: 4.02, pose: half}, quarter, false, false}, {"turned more", try{score: 4, pose: quarter}, half, false, false},
		{"finds all", try{score: 9, pose: half}, twice, true, true}, {"no more finds all", try{score: 3, full: true, pose: half}, twice, false, false}, {"both find all", try{score: 4.5, full: true, pose: half}, twice, true, false},
	} {
		s := &poser{edge: square, best: c.best, asIs: try{score: -1}}
		if !c.full {
			s.want = []target{{at: xy(20, 0), diameterMm: 10}}
		}
		s.consider(c.p, &piece{contour: square})
		if taken := s.best.edge != nil; taken != c.taken || taken && s.best.score != 4 || s.asIs.score != -1 {
			t.Errorf("%s: %+v", c.name, s.best)
		}
	}
	s := &poser{edge: square, asIs: try{score: 4.5}}
	s.consider(pose{scale: 1}, &piece{contour: square})
	if !s.asIs.full || s.asIs.score != 4 || s.best.edge != nil {
		t.Errorf("what is right as it lies: %+v", s.asIs)
	}
	s.consider(half, &piece{contour: square})
	if s.best.edge != nil {
		t.Errorf("nothing is better than right: %+v", s.best)
	}
}

// TestFindsEdgeAndSlots: an outline of 100 or 200 within 0.5 mm, its size within that or
// 0.4 %; a slot with its middle within 0.5 mm and its line within 1, or a tenth of its width.
func TestFindsEdgeAndSlots(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		want, got contour
		found     bool
	}{
		{rectangle(0, 0, 100, 50), rectangle(0.5, 0, 100, 50), true}, {rectangle(0, 0, 100, 50), rectangle(0.51, 0, 100, 50), false}, {rectangle(0, 0, 100, 50), rectangle(0, 0, 100.5, 50), true}, {rectangle(0, 0, 100, 50), rectangle(-0.3, 0, 100.6, 50), false},
		{rectangle(0, 0, 100, 50), rectangle(0, -0.3, 100, 50.6), false}, {rectangle(0, 0, 200, 50), rectangle(-0.375, 0, 200.75, 50), true}, {rectangle(0, 0, 200, 50), rectangle(-0.45, 0, 200.9, 50), false},
	} {
		s := &poser{edge: c.want}
		if got := s.findsEdge(pose{scale: 1}, &piece{contour: c.got}); got != c.found {
			t.Errorf("%v for %v: %v", c.got.points, c.want.points, got)
		}
	}
	slot := func(w float64) Slot {
		return Slot{WidthMm: w, LengthMm: w + 40, EndsMm: [2]plan.XY{{XMm: 20}, {XMm: -20}}}
	}
	for _, c := range []struct {
		w, got, off float64
		found       bool
	}{{20, 20, 0, true}, {20, 20, 0.5, true}, {20, 20, 0.51, false}, {20, 23.8, 0, true}, {20, 24.2, 0, false}, {4, 5.8, 0, true}, {4, 6.2, 0, false}} {
		p := &piece{contour: slot(c.got).contour()}
		p.contour = p.moved(xy(c.off, 0))
		other := &piece{contour: rectangle(-30, -30, 60, 60)}
		s := &poser{slots: []Slot{slot(c.w), slot(c.w)}, all: []*piece{other, p}, edge: rectangle(-30, -30, 60, 60)}
		if got := s.findsSlot(pose{scale: 1}, slot(c.w), other); got != c.found {
			t.Errorf("%+v: %v", c, got)
		}
		if score, full := s.score(pose{scale: 1}, other); (score == 6) != c.found || full != c.found || !c.found && score != 4 {
			t.Errorf("%+v: a score of %g, %v", c, score, full)
		}
		if score, full := s.score(pose{scale: 1}, nil); (score == 2) != c.found || full {
			t.Errorf("%+v: a score of %g, %v without an outline", c, score, full)
		}
		if s.findsSlot(pose{scale: 1}, slot(c.w), p) {
			t.Error("the outline is a slot")
		}
	}
}

// TestNewPoser: what is looked at of a drawing of any size.
func TestNewPoser(t *testing.T) {
	t.Parallel()
	want := &Part{edge: rectangle(0, 0, 100, 50), Rounds: make([]Round, 61), Marks: make([]Mark, 61), Slots: make([]Slot, 21)}
	c := bounded(want, 0.1, &piece{contour: rectangle(0, 0, 9, 9)})
	for range 151 {
		c.closed = append(c.closed, &piece{contour: rectangle(0, 0, 8, 8), round: true, radius: 4})
		c.spots = append(c.spots, &spot{})
	}
	s := c.newPoser()
	circles := 0
	for _, g := range s.got {
		if g.piece != nil {
			circles++
		}
	}
	if len(s.want) != 120 || len(s.slots) != 20 || len(s.got) != 300 || circles != 150 || s.got[0].diameterMm != 8 || len(s.all) != 40 || s.all[0] != c.closed[0] || s.area != 5000 {
		t.Errorf("%d places of %d and %d slots, of %d contours and %d circles", len(s.want), len(s.got), len(s.slots), len(s.all), circles)
	}
}

// TestEdgeShift: an outline is right where its size is within the tolerance and no place of
// it further off than twice that.
func TestEdgeShift(t *testing.T) {
	t.Parallel()
	dented := func(by float64) contour {
		return contour{closed: true, points: []point{xy(0, 0), xy(50, by), xy(100, 0), xy(100, 100), xy(50, 100-by), xy(0, 100)}}
	}
	for _, c := range []struct {
		edge contour
		good bool
	}{
		{rectangle(7, 8, 100, 100), true}, {rectangle(7, 8, 100.5, 100), true}, {rectangle(7, 8, 100, 100.5), true}, {rectangle(7, 8, 100.51, 100), false}, {rectangle(7, 8, 100, 99.49), false},
		{dented(0.9), true}, {dented(1.1), false},
	} {
		co := bounded(&Part{edge: rectangle(0, 0, 100, 100)}, 0.5)
		co.edge = &piece{contour: c.edge}
		if _, good := co.edgeShift(); good != c.good {
			t.Errorf("%v: %v", c.edge.points, good)
		}
	}
}

// TestScaleBelieved: the outline gives any scale where it is one of the two largest
// contours; of an outline that is wrong besides, a usual scale is found by its holes.
func TestScaleBelieved(t *testing.T) {
	t.Parallel()
	small := func(by string, lines []string) []string {
		return append(append([]string{`<g transform="scale(` + by + `)">`}, lines...), "</g>")
	}
	frame := func(w int) string {
		return fmt.Sprintf(`<rect x="-%d" y="-%d" width="%d" height="%d"/>`, w, w, 9*w, 7*w)
	}
	wide := drawing()
	wide[0] = `<path d="M14 144H226V36L204 16H14Z"/>`
	for _, c := range []struct {
		name  string
		lines []string
		scale float64
	}{
		{"alone", small("0.83", drawing()), 0.83}, {"in a frame", append(small("0.83", drawing()), frame(60)), 0.83}, {"in two", append(small("0.83", drawing()), frame(60), frame(70)), 1},
		{"inches", small("0.0393700787", drawing()), 0.0394}, {"inches, and another outline", small("0.0393700787", wide), 0.0394}, {"pixels, and another outline", small("3.7795275591", wide), 3.7795},
	} {
		if r := compared(t, plate(t), svgFile(mmHead, c.lines)); r.Scale != c.scale {
			t.Errorf("%s: %g times, want %g", c.name, r.Scale, c.scale)
		}
	}
}
