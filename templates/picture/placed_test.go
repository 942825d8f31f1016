package picture

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/templates/draw"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// lines are the straight lines of a drawing of two points, with their widths.
func lines(d *draw.Drawing) (out [][5]float64) {
	for _, item := range d.Items {
		if s, ok := item.(draw.Shape); ok {
			if c := s.Path.Coords(); len(c) == 2 {
				out = append(out, [5]float64{c[0].X, c[0].Y, c[1].X, c[1].Y, s.WidthMm})
			}
		}
	}
	return out
}

func hasLine(d *draw.Drawing, x0, y0, x1, y1, width float64) bool {
	return slices.ContainsFunc(lines(d), func(l [5]float64) bool {
		return near(l[0], x0) && near(l[1], y0) && near(l[2], x1) && near(l[3], y1) && l[4] == width
	})
}

func textsIn(d *draw.Drawing) (out []draw.Text) {
	for _, item := range d.Items {
		if text, ok := item.(draw.Text); ok {
			out = append(out, text)
		}
	}
	return out
}

// TestLed: the line from a number begins at the number's edge, ends at its hole's, and is none where it comes within
// 0.5 mm of another hole, measured at points along it.
func TestLed(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(7, 8))
	both := map[bool]int{}
	for range 600 {
		f := &facePicture{scale: 0.5, ox: 3, oy: -4, face: &plan.Face{Holes: []plan.Hole{{DiameterMm: 8}, {XMm: rng.Float64()*80 - 40, YMm: rng.Float64()*80 - 40, DiameterMm: 2 + 10*rng.Float64()}}}, room: draw.NewOccupied(draw.R(-80, -80, 80, 80))}
		x, y, r, _ := f.hole(0)
		hx, hy, hr, _ := f.hole(1)
		at := draw.R(0, 0, 4, 2)
		dx, dy := rng.Float64()*40-20, rng.Float64()*40-20
		at = draw.R(at.X0+dx, at.Y0+dy, at.X1+dx, at.Y1+dy)
		x0, y0 := min(max(x, at.X0-0.4), at.X1+0.4), min(max(y, at.Y0-0.4), at.Y1+0.4)
		if math.Hypot(x0-x, y0-y) < r+1 {
			continue
		}
		close := math.Inf(1)
		for i := range 4001 {
			s := float64(i) / 4000
			close = min(close, math.Hypot(x+s*(x0-x)-hx, y+s*(y0-y)-hy)-hr-0.5)
		}
		if math.Abs(close) < 0.01 {
			continue
		}
		line, ok := f.led(at, x, y, r)
		both[ok]++
		if ok != (close > 0) {
			t.Errorf("a hole at %v, %v of %v is %v off the line from %v, %v: %v", hx, hy, hr, close, x0, y0, ok)
		}
		if !ok {
			continue
		}
		c := line.Path.Coords()
		if !near(c[0].X, x0) || !near(c[0].Y, y0) || !near(math.Hypot(c[1].X-x, c[1].Y-y), r) || !near((c[1].X-x)*(y0-y), (c[1].Y-y)*(x0-x)) || (c[1].X-x)*(x0-x) < -1e-9 {
			t.Errorf("the line goes %v to a hole of %v at %v, %v", c, r, x, y)
		}
	}
	if both[true] < 50 || both[false] < 20 {
		t.Errorf("lines that may be and may not: %v", both)
	}
}

// TestMetalPlace: the leader ends where there is most metal round it: in the middle of a tall bar, of what is not
// covered, of the wider end of a wedge.
func TestMetalPlace(t *testing.T) {
	t.Parallel()
	box := func(x0, y0, x1, y1 float64) [][]plan.XY {
		return [][]plan.XY{{{XMm: x0, YMm: y0}, {XMm: x1, YMm: y0}, {XMm: x1, YMm: y1}, {XMm: x0, YMm: y1}}}
	}
	over := []*plan.Shape{{Loops: box(-1, 40, 3, 101)}}
	wedge := [][]plan.XY{{{XMm: 0, YMm: 0}, {XMm: 100, YMm: -10}, {XMm: 100, YMm: 10}}}
	for _, c := range []struct {
		name  string
		loops [][]plan.XY
		over  []*plan.Shape
		want  plan.XY
	}{
		{"tall", box(0, 0, 2, 100), nil, plan.XY{XMm: 1, YMm: 11.53 / 24 * 100}},
		{"level", box(0, 0, 100, 4), nil, plan.XY{XMm: 50, YMm: 11.53 / 24 * 4}},
		{"covered above", box(0, 0, 2, 100), over, plan.XY{XMm: 1, YMm: 8.53 / 24 * 100}},
		{"wedge", wedge, nil, plan.XY{XMm: (100 + 100*(1-2*11.53/24)) / 2, YMm: -10 + 20*11.53/24}},
	} {
		if got := Metal(c.loops, c.over); !near(got.XMm, c.want.XMm) || !near(got.YMm, c.want.YMm) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestWave: a break line has a wave for each 4 mm of paper, 8 points each, leaves its line by 0.8 mm at most, or a
// fifth of what is short, to the inside, and begins on it.
func TestWave(t *testing.T) {
	t.Parallel()
	v := &Paper{Low: plan.XY{}, High: plan.XY{XMm: 100, YMm: 60}, Scale: 0.5}
	for _, c := range []struct {
		p, q  plan.XY
		waves int
		high  float64
	}{
		{plan.XY{XMm: 100, YMm: 10}, plan.XY{XMm: 100, YMm: 50}, 5, 0.8}, {plan.XY{XMm: 0, YMm: 50}, plan.XY{XMm: 0, YMm: 10}, 5, 0.8}, {plan.XY{XMm: 80, YMm: 60}, plan.XY{XMm: 60, YMm: 60}, 3, 0.8},
		{plan.XY{XMm: 60, YMm: 0}, plan.XY{XMm: 64, YMm: 0}, 1, 0.4}, {plan.XY{XMm: 60, YMm: 0}, plan.XY{XMm: 61, YMm: 0}, 1, 0.1},
	} {
		out := v.wave(c.p, c.q)
		if len(out) != 8*c.waves || out[0] != c.p {
			t.Errorf("%v to %v: %d points from %v, want %d", c.p, c.q, len(out), out[0], 8*c.waves)
		}
		way := c.q.Plus(c.p.Times(-1))
		long := math.Hypot(way.XMm, way.YMm)
		for i, o := range out {
			d := o.Plus(c.p.Times(-1))
			along, off := (d.XMm*way.XMm+d.YMm*way.YMm)/long, (way.XMm*d.YMm-way.YMm*d.XMm)/long*v.Scale
			in := v.Low.Plus(v.High).Times(0.5).Plus(c.p.Times(-1))
			if way.XMm*in.YMm-way.YMm*in.XMm < 0 {
				off = -off
			}
			if want := c.high * (1 - math.Cos(float64(i%8)*math.Pi/4)) / 2; !near(along, long*float64(i)/float64(len(out))) || !near(off, want) {
				t.Errorf("%v to %v: point %d is %v along and %v off, want %v off", c.p, c.q, i, along, off, want)
			}
		}
	}
}

// TestBarLines: the lengths of a bar reach from point to point: to the ends, or where a saw cut takes a side back by
// its width times the tangent of the angle. All views are at one scale, 11 mm for the front or less for 16 mm of another.
func TestBarLines(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		left, right     plan.BarEnd
		topMm, bottomMm [2]float64 // from the left end, of 400
	}{
		{plan.BarEnd{Name: "left"}, plan.BarEnd{Name: "right"}, [2]float64{0, 400}, [2]float64{0, 400}},
		{plan.BarEnd{Name: "left", SawDeg: 45, Long: "bottom"}, plan.BarEnd{Name: "right", SawDeg: 30, Long: "top"}, [2]float64{40, 400}, [2]float64{0, 400 - 40*math.Tan(math.Pi/6)}},
		{plan.BarEnd{Name: "left", SawDeg: 0.5, Long: "top"}, plan.BarEnd{Name: "right", SawDeg: 0.5, Long: "bottom"}, [2]float64{0, 400 - 40*math.Tan(math.Pi/360)}, [2]float64{40 * math.Tan(math.Pi/360), 400}},
	} {
		b := &plan.BarPlan{WidthMm: 40, DepthMm: 80, LengthMm: 400, TopMm: 1, BottomMm: 1, Length: "400", Top: "above", Bottom: "below", Outline: "M-200 -20L200 -20L200 20L-200 20z", Left: c.left, Right: c.right,
			Holes: []plan.BarHole{{N: 1, Side: "top", DiameterMm: 10, From: "200"}}}
		p := Bar(b, 140)
		v := &barView{bar: b, x0: 23, room: 94}
		if got := v.scale(); !near(got, 16.0/80) {
			t.Errorf("scale %v", got)
		}
		for text, ends := range map[string][2]float64{"top above": c.topMm, "bottom below": c.bottomMm, "400": {0, 400}} {
			i := slices.IndexFunc(textsIn(&p.Draw), func(q draw.Text) bool { return q.Content == text })
			at := textsIn(&p.Draw)[i]
			x0, x1, w := v.x(ends[0]-200), v.x(ends[1]-200), draw.TextWidth(text, sizeEmMm, true)
			if !near(at.XMm, (x0+x1)/2) || !hasLine(&p.Draw, x0, at.YMm+1, at.XMm-w/2-1, at.YMm+1, draw.ThinMm) || !hasLine(&p.Draw, at.XMm+w/2+1, at.YMm+1, x1, at.YMm+1, draw.ThinMm) ||
				!hasLine(&p.Draw, x0-0.8, at.YMm+0.2, x0+0.8, at.YMm+1.8, draw.ThinMm) || !hasLine(&p.Draw, x1-0.8, at.YMm+0.2, x1+0.8, at.YMm+1.8, draw.ThinMm) {
				t.Errorf("%s does not reach from %v to %v: %+v, %v", text, x0, x1, at, lines(&p.Draw))
			}
		}
	}
}

// TestBarHoles: each hole stands at its place, no smaller than can be seen, with its cross; its number beside it, under
// the line where the one before reaches so far; how far it lies is written over the side, beside the others, with a line to the hole.
func TestBarHoles(t *testing.T) {
	t.Parallel()
	b := &plan.BarPlan{WidthMm: 40, DepthMm: 40, LengthMm: 400, TopMm: 1, BottomMm: 1, Length: "400", Outline: "M-200 -20L200 -20L200 20L-200 20z", Left: plan.BarEnd{Name: "left"}, Right: plan.BarEnd{Name: "right"},
		Holes: []plan.BarHole{{N: 3, Side: "front", XMm: 100, YMm: 8, DiameterMm: 12, From: "300 from L"}, {N: 11, Side: "front", XMm: -20, DiameterMm: 1, From: "180 from L"}, {N: 2, Side: "front", XMm: -15, DiameterMm: 1, From: "185 from L"}}}
	p := Bar(b, 140)
	v := &barView{bar: b, x0: 23, room: 94}
	const scale, high = 11.0 / 40, 11.0
	texts := map[string]draw.Text{}
	for _, q := range textsIn(&p.Draw) {
		texts[q.Content] = q
	}
	y := -barRowMm - 2.6 - high // a row of lengths and the lines from it stand over the bar
	ends := map[plan.XY]bool{}
	for _, item := range p.Draw.Items {
		if shape, ok := item.(draw.Shape); ok && shape.WidthMm == draw.HairMm {
			at := shape.Path.Coords()
			ends[plan.XY{XMm: geom.Clean(at[len(at)-1].X), YMm: geom.Clean(at[len(at)-1].Y)}] = true
		}
	}
	one, two, three := texts["180 from L"], texts["185 from L"], texts["300 from L"]
	if wide := draw.TextWidth(one.Content, draw.SmallMm, false); one.YMm != two.YMm || one.YMm != three.YMm || two.XMm-one.XMm < wide || three.XMm-two.XMm < wide {
		t.Errorf("lengths at %v, %v and %v", one, two, three)
	}
	for _, h := range b.Holes {
		x, hy, r := v.x(h.XMm), y+high/2+h.YMm*scale, max(0.7, h.DiameterMm/2*scale)
		if !hasLine(&p.Draw, x-r-1, hy, x+r+1, hy, draw.HairMm) || !hasLine(&p.Draw, x, hy-r-1, x, hy+r+1, draw.HairMm) || !ends[plan.XY{XMm: geom.Clean(x), YMm: geom.Clean(hy)}] {
			t.Errorf("hole %d is not at %v, %v: %v", h.N, x, hy, lines(&p.Draw))
		}
		number := texts[map[int]string{3: "3", 11: "11", 2: "2"}[h.N]]
		want := hy + 0.5
		if h.N == 2 {
			want = hy - 0.5 - 0.8*draw.SmallMm
		}
		if !near(number.XMm, x+r+0.6) || !near(number.YMm, want) {
			t.Errorf("number %d stands at %v, %v, want %v, %v", h.N, number.XMm, number.YMm, x+r+0.6, want)
		}
	}
}

// TestBarLabels: holes one over the other have one length, with a line to the lower; more lengths than a row holds say once which end they
// count from, or stand in more rows, each with the numbers of its holes.
func TestBarLabels(t *testing.T) {
	t.Parallel()
	b := &plan.BarPlan{WidthMm: 40, DepthMm: 40, LengthMm: 400, Outline: "M-200 -20L200 -20L200 20L-200 20z", Left: plan.BarEnd{Name: "left"}, Right: plan.BarEnd{Name: "right"}}
	said := func() (out []string) {
		p := Bar(b, 120)
		for _, q := range textsIn(&p.Draw) {
			if strings.ContainsAny(q.Content, "0") || strings.Contains(q.Content, "from") {
				out = append(out, q.Content)
			}
		}
		return out
	}
	for k, x := range []float64{-150, -100, -150, -100} {
		b.Holes = append(b.Holes, plan.BarHole{N: k + 1, Side: "front", XMm: x, YMm: 8 - 16*float64(k/2), DiameterMm: 9, From: words.Trim(200+x, 0) + " from L"})
	}
	if got := said(); !slices.Equal(got, []string{"50 from L", "100 from L"}) {
		t.Errorf("%q", got)
	}
	b.Holes = nil
	for k := range 7 {
		b.Holes = append(b.Holes, plan.BarHole{N: k + 1, Side: "front", XMm: 20 * float64(k), DiameterMm: 9, From: words.Trim(200+20*float64(k), 0) + " from L"})
	}
	if got := said(); !slices.Equal(got, []string{"from L", "200", "220", "240", "260", "280", "300", "320"}) {
		t.Errorf("%q", got)
	}
	b.Holes[6].From = "80 from R"
	if got := said(); len(got) != 7 || got[0] != "1: 200 from L" || got[6] != "7: 80 from R" {
		t.Errorf("%q", got)
	}
}

// TestLowHeadPlaces: the facts stand 5 mm beside the title, on its line or half a line about it, the rule under them.
func TestLowHeadPlaces(t *testing.T) {
	t.Parallel()
	for n := range 8 * 50 {
		wide := 104 + 3*float64(n/8)
		part := &plan.PartPlan{Title: "Key bar", Material: "C45", StockText: strings.Repeat("flat 28 × 6, saw cut, ", n%8)}
		p := LowHead(part, words.Writer{}, "make 1", wide)
		width := wide - draw.TextWidth("make 1", draw.HeadMm, true) - draw.TextWidth("Key bar", draw.TitleMm, true) - 10
		rows := draw.WrapFacts(facts(part, words.Writer{}), draw.FactsMm, width)
		texts := textsIn(&p.Draw)
		if len(rows) > 2 || width < wide/2 {
			if high := Head(part, words.Writer{}, "make 1", wide); p.Height != high.Height {
				t.Errorf("%d lines: %v high, want %v", len(rows), p.Height, high.Height)
			}
			continue
		}
		if len(texts) != 2+len(rows) || !near(p.Height, 8+1.2*float64(len(rows))+2.4) || !hasLine(&p.Draw, 0, -p.Height+2.4, wide, -p.Height+2.4, draw.ThickMm) {
			t.Errorf("%d lines: %d texts, %v high", len(rows), len(texts), p.Height)
			continue
		}
		for i, row := range rows {
			up := map[int][]float64{1: {0}, 2: {0.6, -0.4}}[len(rows)][i]
			if got := texts[2+i]; got.Content != row || !near(got.XMm, draw.TextWidth("Key bar", draw.TitleMm, true)+5) || !near(got.YMm, -7+draw.FactsMm*draw.Leading*up) {
				t.Errorf("%d lines: %+v", len(rows), got)
			}
		}
	}
}

// TestLeaningEnd: of a section cut on both sides of its axis TOP stands at the left, and at the right how far the
// middle of its back end lies off the axis, between the axis and a line through that middle.
func TestLeaningEnd(t *testing.T) {
	t.Parallel()
	for _, off := range []float64{20, -15} {
		part := &plan.PartPlan{Section: &plan.Section{LengthMm: 100, MaxMm: 50, Whole: [][]plan.XY{{{YMm: -40}, {YMm: 40}, {XMm: 100, YMm: 50}, {XMm: 100, YMm: -10}}}},
			Dimensions: []plan.Dimension{{Kind: plan.OffsetDim, RadiusMm: off, Text: "20 off"}, {Kind: plan.OverallDim, ToMm: 100, Text: "100"}}}
		p := Dimensioned(part, 150, 90)
		d := *p.Drawn()
		// The line through the middle is 8 mm long, from 2 mm before the end; the axis ends 4 mm after it.
		var end, y float64
		for _, l := range lines(&d) {
			if near(l[1], l[3]) && near(l[2]-l[0], 8) {
				end, y = l[0]+2, l[1]
			}
		}
		i := slices.IndexFunc(lines(&d), func(l [5]float64) bool { return near(l[1], l[3]) && near(l[2], end+4) })
		if i < 0 {
			t.Fatalf("no axis to %v: %v", end+4, lines(&d))
		}
		zero := lines(&d)[i][1]
		start := lines(&d)[i][0] + 4
		b := d.Items[0].(draw.Shape).Path.Bounds()
		if !near(start, b.X0) || !near(end, b.X1) || !near((y-zero)/off, b.H()/90) || !near(zero-b.Y0, 40*b.H()/90) {
			t.Errorf("the middle of the end is marked at %v, the axis lies at %v, the metal at %v", y, zero, b)
		}
		if !hasLine(&d, end+5, zero, end+5, y, draw.ThinMm) || !hasLine(&d, end+4.2, zero-0.8, end+5.8, zero+0.8, draw.ThinMm) || !hasLine(&d, end+4.2, y-0.8, end+5.8, y+0.8, draw.ThinMm) {
			t.Errorf("no dimension line from %v to %v: %v", zero, y, lines(&d))
		}
		for _, want := range []draw.Text{{XMm: end + 6.8, YMm: (zero+y)/2 - sizeEmMm*0.36, SizeMm: sizeEmMm, Bold: true, Content: "20 off"}, {XMm: start - wholeSidePad/2 - 2, YMm: b.Y1 - 8.4, SizeMm: draw.SmallMm, Bold: true, Align: draw.Centre, Content: "TOP"}} {
			if !slices.ContainsFunc(textsIn(&d), func(q draw.Text) bool {
				return near(q.XMm, want.XMm) && near(q.YMm, want.YMm) && q.SizeMm == want.SizeMm && q.Bold && q.Align == want.Align && q.Content == want.Content
			}) {
				t.Errorf("no %+v in %+v", want, textsIn(&d))
			}
		}
	}
}

// TestClearOfLeaders: a text on a dimension line keeps 0.6 mm off every leader that passes its height, by the least
// whole millimetre, to the left first, and stays inside its line; where there is no such place it stays.
func TestClearOfLeaders(t *testing.T) {
	t.Parallel()
	upright := func(x float64) [4]float64 { return [4]float64{x, 20, x, -20} }
	for _, c := range []struct {
		name    string
		leaders [][4]float64
		a, b    float64
		want    float64
	}{
		{"none", nil, 0, 100, 50},
		{"through its middle", [][4]float64{upright(50)}, 0, 100, 44},
		{"through its right half", [][4]float64{upright(53)}, 0, 100, 47},
		{"through its left half", [][4]float64{upright(47)}, 0, 100, 53},
		{"just beside it", [][4]float64{upright(55.61)}, 0, 100, 50},
		{"just within 0.6 mm", [][4]float64{upright(55.59)}, 0, 100, 49},
		{"two", [][4]float64{upright(50), upright(40)}, 0, 100, 56},
		{"above it", [][4]float64{{50, 20, 50, 3.1}}, 0, 100, 50},
		{"ends in its height", [][4]float64{{50, 20, 50, 2.9}}, 0, 100, 44},
		{"ends under its line", [][4]float64{{50, -20, 50, -0.1}}, 0, 100, 50},
		{"leans over it", [][4]float64{{40, -8.5, 60, 11.5}}, 0, 100, 44},
		{"no room to the left", [][4]float64{upright(50)}, 38.5, 100, 56},
		{"no room at all", [][4]float64{upright(50)}, 42, 58, 50},
		{"hardly longer than the text", [][4]float64{upright(53)}, 45.5, 56.5, 50},
	} {
		v := &dimensioned{leaders: c.leaders}
		if got := v.clear(50, 10, 0, c.a, c.b); !near(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestStretchBetween: a diameter is shown where nothing with a label of its own is cut into its surface, on the longest such
// part; where all is cut away, over its whole length.
func TestStretchBetween(t *testing.T) {
	t.Parallel()
	dim := func(from, to float64) plan.Dimension { return plan.Dimension{FromMm: from, ToMm: to} }
	for _, c := range []struct {
		of   plan.Dimension
		cut  []plan.Dimension
		want [2]float64
	}{
		{dim(10, 60), nil, [2]float64{10, 60}},
		{dim(10, 60), []plan.Dimension{dim(20, 25)}, [2]float64{25, 60}},
		{dim(10, 60), []plan.Dimension{dim(50, 55)}, [2]float64{10, 50}},
		{dim(10, 60), []plan.Dimension{dim(50, 55), dim(20, 22)}, [2]float64{22, 50}},
		{dim(10, 60), []plan.Dimension{dim(0, 30)}, [2]float64{30, 60}},
		{dim(10, 60), []plan.Dimension{dim(61, 70), dim(0, 9)}, [2]float64{10, 60}},
		{dim(10, 60), []plan.Dimension{dim(10, 60)}, [2]float64{10, 60}},
		{dim(10, 60), []plan.Dimension{dim(5, 40), dim(30, 65)}, [2]float64{10, 60}},
		{dim(10, 60), []plan.Dimension{dim(20, 45), dim(22, 24)}, [2]float64{45, 60}},
	} {
		from, to := stretch(c.of, append(c.cut, c.of))
		if from != c.want[0] || to != c.want[1] {
			t.Errorf("%v under %v: %v to %v, want %v", c.of, c.cut, from, to, c.want)
		}
	}
}

// TestLabelRowsNeeded: labels stand in as many rows as each needs to have its room and the leaders of further rows
// theirs, alternating along the part; a row with limits is 8.6 mm high, one without 5.4.
func TestLabelRowsNeeded(t *testing.T) {
	t.Parallel()
	var dims []plan.Dimension
	for i := range 6 {
		dims = append(dims, plan.Dimension{FromMm: float64(50 - 10*i), ToMm: float64(60 - 10*i), Text: "Ø100"})
	}
	one := draw.TextWidth("Ø100", sizeEmMm, true) + 3.4
	for _, c := range []struct {
		wide float64
		rows int
	}{{6*one + 0.01, 1}, {6*one - 0.01, 2}, {3*(one+1.6) + 0.01, 2}, {3*(one+1.6) - 0.01, 3}, {one / 2, 6}} {
		if got := rowsFor(dims, c.wide); got != c.rows {
			t.Errorf("%v wide: %d rows, want %d", c.wide, got, c.rows)
		}
	}
	if rowsFor(nil, 100) != 0 || rowsFor(dims[:1], 1) != 1 {
		t.Error("rows for none or one")
	}
	for i, l := range labelled(dims, 2) {
		if l.row != i%2 || l.fromMm != 10*float64(i) || l.toMm != l.fromMm+10 {
			t.Errorf("the label at %d: %+v", i, l)
		}
	}
	dims[0].Limits = "99.9 – 100.1" // the last along the part, in the second row
	if got := labelsMm(dims, 2); !near(got, 5.4+8.6) {
		t.Errorf("%v high", got)
	}
	wide := max(one, draw.TextWidth(dims[0].Limits, limitEmMm, false)+3.4)
	if got := labelsWidth(dims, 2); !near(got, max(3*(one+1.6), 2*one+wide)) || !near(labelWidth(dims[0]), wide) {
		t.Errorf("%v wide", got)
	}
}

// TestLeadersPassBetween: labels of any number, above a part or below it, stand in the panel, do not meet, and no leader
// runs through one; each leader ends on the surface of its own diameter. In the rows that they have, the leaders lean no
// more than in rows by turns, and most less, and the rows are no higher.
func TestLeadersPassBetween(t *testing.T) {
	t.Parallel()
	at := rand.New(rand.NewPCG(7, 11))
	straighter, inRows := 0, 0
	for n := range 200 {
		v := inPanel()
		v.p.Width = 60 + 60*at.Float64()
		var dims []plan.Dimension
		from := 0.0
		for i := range 2 + n%9 {
			to := from + (100-from)*at.Float64()*0.6
			dims = append(dims, plan.Dimension{FromMm: from, ToMm: to, RadiusMm: 20 + float64(i), Text: strings.Repeat("8", 2+at.IntN(9))})
			from = to
		}
		side := []float64{1, -1}[n%2]
		rows := rowsFor(dims, v.p.Width)
		if at.IntN(2) == 0 {
			dims[len(dims)/2].Limits = "8"
		}
		byTurns, list := labelled(dims, rows), labelled(dims, rows)
		leans := v.placed(byTurns)
		if got := v.placed(v.settled(list, rows)); got > leans || highMm(list, rows) > highMm(byTurns, rows) {
			t.Errorf("case %d: leans %v, by turns %v", n, got, leans)
		} else if rows > 1 && leans > 0.5 {
			inRows++
			if got < leans-0.5 {
				straighter++
			}
		}
		v.labels(dims, side*130, rows, side)
		var labels []draw.Rect
		for _, q := range textsIn(&v.p.Draw) {
			r := draw.TextRect(q)
			if r.X0 < -1e-6 || r.X1 > v.p.Width+1e-6 {
				t.Errorf("case %d: a label from %v to %v in %v", n, r.X0, r.X1, v.p.Width)
			}
			for _, l := range v.leaders {
				for _, k := range [...]float64{0, 0.25, 0.5, 0.75, 1} {
					if x, y := l[0]+k*(l[2]-l[0]), l[1]+k*(l[3]-l[1]); x > r.X0 && x < r.X1 && y > r.Y0 && y < r.Y1 {
						t.Errorf("case %d: a leader through the label at %v", n, r)
					}
				}
			}
			for _, o := range labels {
				if r.Grown(-1e-6).Meets(o) {
					t.Errorf("case %d: labels %v and %v", n, r, o)
				}
			}
			labels = append(labels, r)
		}
		for _, d := range dims {
			if !slices.ContainsFunc(v.leaders, func(l [4]float64) bool {
				return near(l[3], v.y(d.RadiusMm)) && l[2] > v.x(d.FromMm)-1e-6 && l[2] < v.x(d.ToMm)+1e-6
			}) {
				t.Errorf("case %d: no leader ends on %+v", n, d)
			}
		}
	}
	if 2*straighter < inRows {
		t.Errorf("of %d only %d lean less", inRows, straighter)
	}
}

// TestEndsBeside: FRONT and BACK stand upright beside the ends of a half section, on the axis, clear of the metal.
func TestEndsBeside(t *testing.T) {
	t.Parallel()
	v := inPanel()
	v.axis, v.p.Height = -60, 90
	v.ends()
	for i, q := range textsIn(&v.p.Draw) {
		r := draw.TextRect(q)
		x0, x1 := q.XMm-(r.Y1-q.YMm), q.XMm // turned a quarter to the left
		if q.RotateDeg != 90 || q.YMm != -59 || q.Content != []string{"FRONT", "BACK"}[i] || i == 0 && x1 > v.x0-1 || i == 1 && x0 < v.x0+v.w+1 {
			t.Errorf("%q from %v to %v, at %v", q.Content, x0, x1, q.YMm)
		}
	}
	mid := 103 + 1.4 + draw.AscentMm*draw.SmallMm/2
	for _, c := range []struct {
		leader [4]float64
		up     float64
	}{
		{[4]float64{mid - 2, 14, mid + 2, 16}, 1},       // over it
		{[4]float64{mid - 2, 4.1, mid + 2, 6.1}, 6},     // through it
		{[4]float64{mid - 0.1, -10, mid + 0.1, 110}, 1}, // all along the end
	} {
		v = inPanel()
		v.leaders = [][4]float64{c.leader}
		v.ends()
		if got := textsIn(&v.p.Draw)[1].YMm; got != c.up {
			t.Errorf("a leader at %v: BACK at %v, want %v", c.leader, got, c.up)
		}
	}
	v = inPanel()
	v.s.Whole = [][]plan.XY{{}}
	v.p.Height = 90
	v.ends()
	for _, q := range textsIn(&v.p.Draw) {
		if q.RotateDeg != 0 || !near(q.YMm, -88.8) {
			t.Errorf("%q at %v, turned %v", q.Content, q.YMm, q.RotateDeg)
		}
	}
}

// TestOnArcOrCorner: a point between two equal chords that hardly turn is no edge; a corner, a step in length and an end are.
func TestOnArcOrCorner(t *testing.T) {
	t.Parallel()
	arc := func(r, step float64) (out []plan.XY) {
		for i := range 3 {
			s, c := math.Sincos(float64(i) * step)
			out = append(out, plan.XY{XMm: r * s, YMm: r * c})
		}
		return out
	}
	at := func(x, y float64) plan.XY { return plan.XY{XMm: x, YMm: y} }
	for _, c := range []struct {
		name string
		line []plan.XY
		want bool
	}{
		{"an arc", arc(10, 0.2), true}, {"a chord turns by 18°", arc(10, 18*math.Pi/180), true}, {"by 19°", arc(10, 19*math.Pi/180), false}, {"backwards", []plan.XY{at(0, 0), at(5, 0), at(0, 0)}, false},
		{"a corner", []plan.XY{at(0, 0), at(0, 5), at(5, 5)}, false}, {"another length", []plan.XY{at(0, 0), at(5, 0), at(10.001, 0)}, false}, {"all at one point", []plan.XY{at(1, 1), at(1, 1), at(1, 1)}, false},
	} {
		if got := onArc(c.line, 1); got != c.want || onArc(c.line, 0) || onArc(c.line, 2) {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestLabelsExchangeRows: a label that is as wide as all three surfaces does not stay in the row beside the part, where the
// others' leaders would go round it: two labels change rows, and every leader stands upright.
func TestLabelsExchangeRows(t *testing.T) {
	t.Parallel()
	v := inPanel()
	short := strings.Repeat("8", 12)
	list := labelled([]plan.Dimension{{FromMm: 5, ToMm: 7, RadiusMm: 9, Text: strings.Repeat("8", 34)},
		{FromMm: 7, ToMm: 37, RadiusMm: 10, Text: short}, {FromMm: 37, ToMm: 100, RadiusMm: 22, Text: short}}, 3)
	for i, l := range list {
		l.row = i
	}
	v.p.Width = labelWidth(list[0].Dimension) + 6
	before := v.placed(list)
	after := v.placed(v.settled(list, 3))
	if before < 1 || after > 0.5 {
		t.Errorf("leaders lean %v, before %v", after, before)
	}
}

// TestWayRoundTexts: a leader goes straight down where nothing stands in its way, else with knees past a text by the nearer
// end of it, clear of that and of the metal beside its surface.
func TestWayRoundTexts(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		texts  []draw.Rect
		points int
		past   float64 // where it passes the text
	}{
		{"nothing", nil, 2, 33}, {"a text beside it", []draw.Rect{draw.R(60, 116, 90, 119)}, 2, 33}, {"a narrow text", []draw.Rect{draw.R(30, 116, 34, 119)}, 2, 0},
		{"a wide text", []draw.Rect{draw.R(20, 116, 60, 119)}, 4, 20 - clearMm}, {"two texts", []draw.Rect{draw.R(5, 116, 37.5, 119), draw.R(38.6, 116, 90, 119)}, 4, 37.5 + clearMm},
	} {
		v := inPanel()
		v.s.Outer = []plan.XY{{YMm: 90}, {XMm: 60, YMm: 90}, {XMm: 60, YMm: 100}, {XMm: 100, YMm: 100}}
		v.texts = c.texts
		way := v.way(&label{Dimension: plan.Dimension{RadiusMm: 90, Text: "8888"}, fromMm: 20, toMm: 40, middle: 33, at: 125}, 1)
		if len(way) != c.points || c.past > 0 && !near(way[1].X, c.past) {
			t.Errorf("%s: %v", c.name, way)
		}
		for i := 1; i < len(way); i++ {
			if slices.ContainsFunc(c.texts, func(r draw.Rect) bool { return meets(way[i-1], way[i], r) }) {
				t.Errorf("%s: through a text: %v", c.name, way)
			}
		}
		if end := way[len(way)-1]; !near(end.Y, 90) || end.X < 23 || end.X > 43 {
			t.Errorf("%s: ends at %v", c.name, end)
		}
	}
	v := inPanel()
	v.s.Outer = []plan.XY{{YMm: 20}, {XMm: 50, YMm: 20}, {XMm: 50, YMm: 100}, {XMm: 100, YMm: 100}}
	l := &label{Dimension: plan.Dimension{RadiusMm: 20}}
	for x, through := range map[float64]bool{52: false, 70: true} {
		if got := v.throughMetal(l, canvas.Point{X: x, Y: 110}, canvas.Point{X: 50, Y: 20}); got != through {
			t.Errorf("from %v: through metal: %v", x, got)
		}
	}
}
