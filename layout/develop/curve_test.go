package develop

import (
	"math"
	"testing"

	"centrepop/parts/geom"
)

func (s Segment) lengthMm(start Point) float64 {
	if s.SweepDeg == 0 {
		return geom.Distance(s.To, start)
	}
	return math.Abs(rad(s.SweepDeg)) * geom.Distance(start, s.Center)
}

// LengthMm returns the length along the curve, exact for its pieces.
func (c Curve) LengthMm() float64 {
	sum, at := 0.0, c.Start
	for _, s := range c.Segments {
		sum += s.lengthMm(at)
		at = s.To
	}
	return sum
}

// Points returns the curve as points no further than tolMm from it, start
// and end included. A tolerance that is not positive means ToleranceMm.
func (c Curve) Points(tolMm float64) []Point {
	if !(tolMm > 0) {
		tolMm = ToleranceMm
	}
	out, at := []Point{c.Start}, c.Start
	for _, s := range c.Segments {
		if s.SweepDeg != 0 {
			// The rise of a chord over its arc is r(1-cos(step/2)).
			r := geom.Distance(at, s.Center)
			step := 90.0
			if tolMm < r {
				step = math.Min(step, 2*deg(math.Acos(1-tolMm/r)))
			}
			n := int(math.Ceil(math.Abs(s.SweepDeg) / step))
			for i := 1; i < n; i++ {
				out = append(out, s.at(at, float64(i)/float64(n)))
			}
		}
		out = append(out, s.To)
		at = s.To
	}
	return out
}

// TestFrustumNumbers works every number of a cone of 300 to 150 by 200 out by
// hand: slant √(200² + 75²) = 213.600, radii 427.200 and 213.600, sector
// 360·75/213.600 = 126.4044°, in two pieces of 63.2022°.
func TestFrustumNumbers(t *testing.T) {
	t.Parallel()
	f := Frustum{LargeDiameterMm: 300, SmallDiameterMm: 150, HeightMm: 200, OverlapMm: 10, SheetWidthMm: 500, SheetHeightMm: 500}
	p, err := f.Develop()
	if err != nil {
		t.Fatal(err)
	}
	slant := math.Hypot(200, 75)
	outer, inner, piece := 2*slant, slant, 2*math.Pi*75/slant/2
	for name, want := range map[string]float64{
		"large diameter, middle of plate": 300, "small diameter, middle of plate": 150, "slant": slant,
		"outer radius": outer, "inner radius": inner, "sector angle": 360 * 75 / slant, "pieces": 2, "angle of one piece": 180 * 75 / slant,
		"outer arc of one piece": math.Pi * 150, "outer chord of one piece": 2 * outer * math.Sin(piece/2),
		"inner arc of one piece": math.Pi * 75, "inner chord of one piece": 2 * inner * math.Sin(piece/2),
		"area of the whole cone": math.Pi * (150 + 75) * slant, "half apex angle": 20.556045,
		"height over square-cut edges": 200,
	} {
		got, ok := p.Piece.Result(name)
		if !ok {
			t.Errorf("there is no %s", name)
		}
		near(t, name, got, want, 1e-5)
	}
	if p.Piece.Tables[0].Columns[5].Name != "outer chord from left edge" {
		t.Fatalf("columns %v", p.Piece.Tables[0].Columns)
	}
	rows := p.Piece.Tables[0].Rows
	for i, row := range rows {
		a := piece * float64(i) / float64(len(rows)-1)
		from := 3*math.Pi/2 - piece/2 + a // anticlockwise about the apex, large end down
		for j, want := range []float64{a * 180 / math.Pi, outer * math.Cos(from), outer * math.Sin(from), inner * math.Cos(from), inner * math.Sin(from), 2 * outer * math.Sin(a/2)} {
			near(t, row.Label+" "+p.Piece.Tables[0].Columns[j].Name, row.Values[j], want, 1e-6)
		}
	}
	// The lap is a strip of 10 along the right edge, outside it.
	for _, c := range p.Piece.Curves {
		if c.Role != Tab {
			continue
		}
		edge := geom.Distance(c.Start, c.Segments[len(c.Segments)-1].To)
		near(t, "length of the lap", edge, slant, 1e-9)
		near(t, "width of the lap", geom.Distance(c.Start, c.Segments[0].To), 10, 1e-9)
		near(t, "way round the lap", c.LengthMm(), slant+20, 1e-9)
	}
	bare, err := Frustum{LargeDiameterMm: 300, SmallDiameterMm: 150, HeightMm: 200}.Develop()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range bare.Piece.Curves {
		if c.Role == Tab || c.Role == Seam {
			t.Errorf("%s is drawn though there is no lap", c.Name)
		}
	}
}

// TestWidestGap: the seam goes to the middle of the widest free stretch, of
// equal ones the first. The girth is 360 mm, so a millimetre is a degree.
func TestWidestGap(t *testing.T) {
	t.Parallel()
	c := Cylinder{DiameterMm: 360 / math.Pi, WidthMm: 80}
	for _, w := range []struct {
		at   [][2]float64
		want float64
	}{
		{nil, 180},
		{[][2]float64{{-10, 10}}, 180},
		{[][2]float64{{80, 100}}, 270},
		{[][2]float64{{-10, 10}, {90, 110}}, 230},            // free 10 to 90 and 110 to 350
		{[][2]float64{{10, 20}, {100, 120}, {200, 300}}, 60}, // 80, 80 and 70: the first
		{[][2]float64{{10, 20}, {101, 120}, {200, 300}}, 60.5},
		{[][2]float64{{10, 150}, {20, 40}, {200, 300}}, 335}, // the second lies inside the first
		{[][2]float64{{370, 380}, {-170, -160}}, 105},        // 10 to 20 and 190 to 200
	} {
		var all []outline
		for _, s := range w.at {
			all = append(all, outline{lo: s[0], hi: s[1]})
		}
		near(t, "the seam", c.widestGapDeg(all), w.want, 1e-9)
	}
}

// TestClipByHand cuts a diamond at both sides of a strip: two pieces, each from
// border to border with its corner between.
func TestClipByHand(t *testing.T) {
	t.Parallel()
	diamond := []Point{{XMm: 0, YMm: -10}, {XMm: 10, YMm: 0}, {XMm: 0, YMm: 10}, {XMm: -10, YMm: 0}, {XMm: 0, YMm: -10}}
	got := clipX(diamond, -4, 4)
	if len(got) != 2 {
		t.Fatalf("%v", got)
	}
	want := map[float64]bool{10: false, -10: false}
	for _, piece := range got {
		if len(piece) != 3 || math.Abs(piece[0].XMm) != 4 || math.Abs(piece[2].XMm) != 4 || piece[0].XMm != -piece[2].XMm || math.Abs(piece[0].YMm) != 6 {
			t.Errorf("%v", piece)
			continue
		}
		want[piece[1].YMm] = true
	}
	if !want[10] || !want[-10] {
		t.Errorf("%v", got)
	}
	// One side alone: what is left of −4 comes in one piece of its corner.
	left := clipX(diamond, -20, -4)
	if len(left) != 1 || len(left[0]) != 3 || left[0][1] != (Point{XMm: -10}) {
		t.Errorf("%v", left)
	}
}

// TestSampleKeepsToTheCurve: the points of a circle's quarter lie on it, and
// their chords within the tolerance.
func TestSampleKeepsToTheCurve(t *testing.T) {
	t.Parallel()
	const r = 100.0
	points := sample(func(a float64) Point { return polar(r, a) }, 0, 90, 2)
	if points[0] != polar(r, 0) || geom.Distance(points[len(points)-1], polar(r, 90)) > 1e-9 {
		t.Errorf("from %v to %v", points[0], points[len(points)-1])
	}
	for i := range points[1:] {
		chord := geom.Distance(points[i], points[i+1])
		if rise := r - math.Sqrt(r*r-chord*chord/4); rise > ToleranceMm*1.0001 {
			t.Errorf("chord %d rises %g", i, rise)
		}
	}
	// Not finer than needed either: a chord may be as long as its rise allows,
	// and halving gives at worst a quarter of that rise.
	if n := float64(len(points) - 1); n > 2*math.Ceil(math.Pi/4*r/math.Sqrt(2*r*ToleranceMm)) {
		t.Errorf("%g chords", n)
	}
}
