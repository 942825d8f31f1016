package sequence

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
	"centrepop/templates/typeface"
)

// onDial is the clock angle and the radius of a point about the middle of a dial.
func onDial(cx, cy, x, y float64) (deg, r float64) {
	deg = math.Atan2(x-cx, y-cy) * 180 / math.Pi
	if deg < -1e-9 {
		deg += 360
	}
	return deg, math.Hypot(x-cx, y-cy)
}

func turnsApart(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 360)) }

// dialOf finds the ring of a panel: its largest circle of that line.
func dialOf(t *testing.T, p *draw.Panel) (cx, cy, r float64) {
	t.Helper()
	for _, item := range p.Draw.Items {
		if s, ok := item.(draw.Shape); ok && s.WidthMm == draw.LineMm {
			b := s.Path.Bounds()
			return (b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2, b.W() / 2
		}
	}
	t.Fatal("no dial")
	return 0, 0, 0
}

func texts(p *draw.Panel) (out []draw.Text) {
	for _, item := range p.Draw.Items {
		if text, ok := item.(draw.Text); ok {
			out = append(out, text)
		}
	}
	return out
}

// middle is where the middle of a text stands.
func middle(t draw.Text) (x, y float64) {
	r := draw.TextRect(t)
	return (r.X0 + r.X1) / 2, t.YMm + 0.36*t.SizeMm
}

// TestClockOfMarks: each place stands on the dial at its angle, its letter inside at
// the same angle where there is room, the others as near as they can; marks stand
// every 30°, and the quarters where nothing else does.
func TestClockOfMarks(t *testing.T) {
	t.Parallel()
	marks := []plan.ClockMark{{Label: "TOP", Part: "A", Key: true}, {Label: "port", Part: "A", Deg: 100, Key: true}, {Label: "drain", Part: "A", Deg: 240}, {Label: "hole", Part: "B", Deg: 240.2}, {Label: "key", Part: "B", Deg: 244}}
	j := &plan.JointPlan{Clock: marks, Placed: []plan.Placed{{Title: "Ring"}}}
	p, ok := clockPanel(j, 18)
	if !ok {
		t.Fatal("no clock")
	}
	cx, cy, r := dialOf(t, &p)
	if r != 18 || math.Abs(cx-p.Width/2) > 1e-9 || cy-r < -p.Height+8 || cy+r > -5 {
		t.Errorf("a dial of %g at %g, %g in %g × %g", r, cx, cy, p.Width, p.Height)
	}
	want := []float64{0, 100, 240, 244}
	var at []float64
	var ticks int
	for _, item := range p.Draw.Items {
		s, ok := item.(draw.Shape)
		if !ok {
			continue
		}
		b := s.Path.Bounds()
		deg, out := onDial(cx, cy, (b.X0+b.X1)/2, (b.Y0+b.Y1)/2)
		switch c := s.Path.Coords(); {
		case math.Abs(out-r) < 1e-6 && b.W() < 4:
			at = append(at, deg)
			if key := len(at) <= 2; key != (s.Fill == draw.Black) || math.Abs(b.W()-map[bool]float64{true: 3, false: 2.4}[key]) > 1e-6 {
				t.Errorf("the mark at %g is %v, %g wide", deg, s.Fill, b.W())
			}
		case len(c) == 2 && s.WidthMm == draw.ThinMm:
			a, in := onDial(cx, cy, c[0].X, c[0].Y)
			_, end := onDial(cx, cy, c[1].X, c[1].Y)
			long := 1.6
			if ticks%3 == 0 {
				long = 2.8
			}
			if turnsApart(a, float64(30*ticks)) > 1e-6 || math.Abs(end-r) > 1e-6 || math.Abs(r-in-long) > 1e-6 {
				t.Errorf("mark %d at %g°, from %g to %g", ticks, a, in, end)
			}
			ticks++
		}
	}
	if ticks != 12 || len(at) != len(want) {
		t.Fatalf("%d marks of hours, places at %v", ticks, at)
	}
	for i := range want {
		if turnsApart(at[i], want[i]) > 1e-6 {
			t.Errorf("place %d at %g°, want %g°", i, at[i], want[i])
		}
	}
	var letters []string
	var quarters []string
	for _, text := range texts(&p) {
		x, y := middle(text)
		deg, out := onDial(cx, cy, x, y)
		switch {
		case len(text.Content) == 1:
			i := int(text.Content[0] - 'A')
			letters = append(letters, text.Content)
			if off := turnsApart(deg, want[i]); out > r-3 || i < 2 && off > 2 || off > 20 {
				t.Errorf("%s of %g° stands at %g°, %g out", text.Content, want[i], deg, out)
			}
		case strings.HasSuffix(text.Content, "°"):
			var q float64
			fmt.Sscanf(text.Content, "%g", &q)
			quarters = append(quarters, text.Content)
			if turnsApart(deg, q) > 2 || out > r-4 {
				t.Errorf("%s stands at %g°, %g out", text.Content, deg, out)
			}
		}
	}
	if !slices.Equal(letters, []string{"A", "B", "C", "D"}) || !slices.Equal(quarters, []string{"180°", "270°"}) {
		t.Errorf("letters %q, quarters %q", letters, quarters)
	}
	lines := clockLines(j)
	if len(lines) != 4 || !strings.HasPrefix(lines[2], "C  240°") || !strings.HasSuffix(lines[2], "A drain, B hole") {
		t.Errorf("%q", lines)
	}
	if h := hourMarks(make([]plan.ClockMark, 1)); h[0].letter != "A" {
		t.Errorf("%+v", h)
	}
	var many []plan.ClockMark
	for i := range 30 {
		many = append(many, plan.ClockMark{Deg: float64(12 * i)})
	}
	if h := hourMarks(many); h[25].letter != "Z" || h[26].letter != "A2" || h[29].letter != "D2" {
		t.Errorf("%+v", h[25:])
	}
}

// TestClockOfBolts: the balloons of the tightening order touch the dial at the bolts'
// angles, numbered in their order.
func TestClockOfBolts(t *testing.T) {
	t.Parallel()
	order := []float64{45, 225, 135, 315, 0}
	for _, up := range []float64{0, 180, 30} {
		j := &plan.JointPlan{Bolt: &plan.BoltPlan{OrderDeg: order}, B: plan.JointEnd{Title: "Plate"}, UpDeg: up}
		clockOfBolts(t, j)
		if p, _ := clockPanel(j, smallDialMm); slices.ContainsFunc(texts(&p), func(x draw.Text) bool { return strings.HasPrefix(x.Content, "machine’s TOP up") }) != (up != 0) {
			t.Errorf("%g: what is up: %v", up, texts(&p))
		}
	}
	if _, ok := clockPanel(&plan.JointPlan{Bolt: &plan.BoltPlan{OrderDeg: order[:1]}}, 18); ok {
		t.Error("one bolt has an order")
	}
	if p, ok := clockPanel(&plan.JointPlan{Bolt: &plan.BoltPlan{OrderDeg: []float64{0}}, Clock: []plan.ClockMark{{Part: "Plate", Label: "TOP"}}}, 18); !ok || slices.ContainsFunc(texts(&p), func(x draw.Text) bool { return x.Content == "1" }) {
		t.Errorf("one bolt beside what lies at TOP: %v", texts(&p))
	}
}

func clockOfBolts(t *testing.T, j *plan.JointPlan) {
	t.Helper()
	p, _ := clockPanel(j, 18)
	order := j.Bolt.OrderDeg
	cx, cy, r := dialOf(t, &p)
	for _, text := range texts(&p) {
		var n int
		c, _ := fmt.Sscanf(text.Content, "%d", &n)
		if c != 1 {
			continue
		}
		x, y := middle(text)
		if strings.HasSuffix(text.Content, "°") { // a quarter, inside
			if deg, out := onDial(cx, cy, x, y); turnsApart(deg, float64(n)-j.UpDeg) > 3 || out > r-4 {
				t.Errorf("%s at %g°, %g out, less %g", text.Content, deg, out, j.UpDeg)
			}
			continue
		}
		if deg, out := onDial(cx, cy, x, y); turnsApart(deg, order[n-1]-j.UpDeg) > 1 || math.Abs(out-r-draw.BalloonMm) > 0.1 {
			t.Errorf("bolt %d at %g°, %g out, want %g° less %g", n, deg, out, order[n-1], j.UpDeg)
		}
		if x < draw.BalloonMm-0.1 || x > p.Width-draw.BalloonMm+0.1 || y > -draw.BalloonMm-4 || y < -p.Height+draw.BalloonMm+6 {
			t.Errorf("bolt %d leaves its panel: %g, %g", n, x, y)
		}
	}
}

// TestClockOfWeld: tacks lie on the dial at their angles and as long as they are,
// runs outside from start to stop the way they are welded, the head at the stop.
func TestClockOfWeld(t *testing.T) {
	t.Parallel()
	w := &plan.WeldPlan{DiameterMm: 200, TackLengthMm: 20, TacksDeg: []float64{0, 180, 90, 270}, ClockOf: "Flange", Order: []plan.WeldRun{
		{N: 1, Layer: 1, StartDeg: 0, EndDeg: 90, Clockwise: true}, {N: 2, Layer: 1, StartDeg: 180, EndDeg: 90}, {N: 3, Layer: 1, StartDeg: 270, EndDeg: 0, Clockwise: true},
		{N: 4, Layer: 2, StartDeg: 30, EndDeg: 300}, {N: 5, Layer: 3, StartDeg: 0, EndDeg: 90, Clockwise: true}}}
	p, _ := clockPanel(&plan.JointPlan{Weld: w}, 18)
	cx, cy, r := dialOf(t, &p)
	var tacks, runs [][2]float64 // from, to
	var outs []float64
	var heads, starts []float64
	for _, item := range p.Draw.Items {
		s, ok := item.(draw.Shape)
		if !ok {
			continue
		}
		c := s.Path.Coords()
		b := s.Path.Bounds()
		from, out := onDial(cx, cy, c[0].X, c[0].Y)
		to, _ := onDial(cx, cy, c[len(c)-1].X, c[len(c)-1].Y)
		if b.X0 < 0 || b.X1 > p.Width || b.Y1 > -5 || b.Y0 < -p.Height+7 {
			t.Errorf("something leaves the panel: %v", b)
		}
		switch {
		case s.WidthMm == 1.8:
			tacks = append(tacks, [2]float64{from, to})
			if math.Abs(out-r) > 1e-6 {
				t.Errorf("a tack lies %g out", out)
			}
		case s.WidthMm == 0.7:
			runs, outs = append(runs, [2]float64{from, to}), append(outs, out)
			for _, q := range c {
				if _, o := onDial(cx, cy, q.X, q.Y); math.Abs(o-out) > 1e-6 {
					t.Errorf("run %d leaves its circle", len(runs))
				}
			}
			// It goes the short way that is said: its second point lies on.
			on, _ := onDial(cx, cy, c[1].X, c[1].Y)
			if clockwise := math.Remainder(on-from, 360) > 0; clockwise != w.Order[len(runs)-1].Clockwise {
				t.Errorf("run %d goes clockwise: %v", len(runs), clockwise)
			}
		case s.Fill == draw.Black && len(c) == 4 && out > r+5:
			heads = append(heads, from)
			a, _ := onDial(cx, cy, c[1].X, c[1].Y)
			if way := math.Remainder(from-a, 360) > 0; way != w.Order[len(heads)-1].Clockwise {
				t.Errorf("the head of run %d points clockwise: %v", len(heads), way)
			}
		case s.Fill == draw.Black && math.Abs(b.W()-1.6) < 1e-6:
			deg, _ := onDial(cx, cy, (b.X0+b.X1)/2, (b.Y0+b.Y1)/2)
			starts = append(starts, deg)
		}
	}
	const half = 20 / (math.Pi * 200) * 360 / 2
	if len(tacks) != 4 || len(runs) != 4 || len(heads) != 4 || len(starts) != 4 {
		t.Fatalf("%d tacks, %d runs, %d heads, %d starts", len(tacks), len(runs), len(heads), len(starts))
	}
	for i, deg := range w.TacksDeg {
		if turnsApart(tacks[i][0], deg-half) > 1e-6 || turnsApart(tacks[i][1], deg+half) > 1e-6 {
			t.Errorf("tack %d from %g to %g, want %g ± %g", i+1, tacks[i][0], tacks[i][1], deg, half)
		}
	}
	for i, run := range w.Order[:4] {
		if turnsApart(starts[i], run.StartDeg) > 2.01 || turnsApart(runs[i][0], run.StartDeg) > 2.01 || turnsApart(heads[i], run.EndDeg) > 1.01 || turnsApart(runs[i][1], run.EndDeg) > 9.01 || turnsApart(runs[i][1], run.EndDeg) < 2 {
			t.Errorf("run %d from %g (%g) to %g, head at %g; want %g to %g", i+1, starts[i], runs[i][0], runs[i][1], heads[i], run.StartDeg, run.EndDeg)
		}
		if want := outs[0]; run.Layer == 1 && math.Abs(outs[i]-want) > 1e-6 || run.Layer == 2 && math.Abs(outs[i]-want-runRoomMm) > 1e-6 || outs[0] < r+6 {
			t.Errorf("run %d lies %g out, the first %g", i+1, outs[i], want)
		}
	}
	named := map[string][2]float64{"a": {45, 0}, "b": {135, 0}, "c": {315, 0}, "d": {345, 1}} // the middle of each, and its layer
	for _, text := range texts(&p) {
		x, y := middle(text)
		deg, out := onDial(cx, cy, x, y)
		if want, ok := named[text.Content]; ok {
			if turnsApart(deg, want[0]) > 2 || out < outs[0]+want[1]*runRoomMm+1 || out > outs[0]+want[1]*runRoomMm+6 {
				t.Errorf("%s stands at %g°, %g out; want %g°", text.Content, deg, out, want[0])
			}
			delete(named, text.Content)
		}
		if i := slices.Index([]string{"1", "2", "3", "4"}, text.Content); i >= 0 && (turnsApart(deg, w.TacksDeg[i]) > 2 || out < r+2 || out > outs[0]-1.5) {
			t.Errorf("tack %s stands at %g°, %g out", text.Content, deg, out)
		}
	}
	if len(named) != 0 {
		t.Errorf("no letter for %v", named)
	}
	if n := layers(w); n != 2 || layers(&plan.WeldPlan{}) != 0 {
		t.Errorf("%d layers", n)
	}
}

// TestCornersAreNumbered: beside the picture at the height of its corner, in the order of
// the steps.
func TestCornersAreNumbered(t *testing.T) {
	t.Parallel()
	pic := &plan.Picture{Cut: plan.CutFrame, MinMm: plan.XY{XMm: -110, YMm: -60}, MaxMm: plan.XY{XMm: 110, YMm: 60},
		Corners: []plan.XY{{XMm: 100, YMm: -50}, {XMm: 100, YMm: 50}, {XMm: -100, YMm: 50}, {XMm: -100, YMm: -50}}}
	p := pictureOf(pic, 120, 100)
	p.Draw = *p.Drawn()
	k := (120 - 2*cornerMm) / 220
	low := texts(&p)[0].YMm
	for i, text := range texts(&p)[:4] {
		right := i < 2
		if text.Content != strconv.Itoa(i+1) || right != (text.XMm > 120-cornerMm) || right == (text.XMm < cornerMm) {
			t.Errorf("corner %d: %+v", i+1, text)
		}
		if out := typeface.WidthMm(text.Content, text.SizeMm, text.Bold) + 1; text.XMm < out || text.XMm > 120-out {
			t.Errorf("corner %d at %g stands out of the panel", i+1, text.XMm)
		}
		if up := text.YMm - low; math.Abs(up-k*(pic.Corners[i].YMm+50)) > 1e-6 {
			t.Errorf("corner %d stands %g above the first", i+1, up)
		}
	}
}

// TestPictureOf: cut surfaces to scale, an arrow with its point at its place and its
// shaft behind, room for it and the balloons.
func TestPictureOf(t *testing.T) {
	t.Parallel()
	loop := func(x0, y0, x1, y1 float64) [][]plan.XY {
		return [][]plan.XY{{{XMm: x0, YMm: y0}, {XMm: x1, YMm: y0}, {XMm: x1, YMm: y1}, {XMm: x0, YMm: y1}}}
	}
	pic := &plan.Picture{Cut: plan.CutAxis, MinMm: plan.XY{XMm: -100, YMm: -50}, MaxMm: plan.XY{XMm: 300, YMm: 150},
		Shapes: []plan.Shape{{Kind: plan.ShapePart, Item: 1, Loops: loop(-100, -50, 100, 50)}, {Kind: plan.ShapePart, Item: 2, New: true, Loops: loop(100, 0, 300, 150)}, {Kind: plan.ShapeScrew, Loops: loop(0, 0, 20, 5)}},
		Arrows: []plan.Arrow{{AtMm: plan.XY{XMm: 300, YMm: 75}, Dir: plan.XY{XMm: -1}}}}
	for _, room := range [][2]float64{{150, 120}, {100, 300}, {300, 80}} {
		p := pictureOf(pic, room[0], room[1])
		p.Draw = *p.Drawn()
		if p.Width > room[0]+1e-9 || p.Height > room[1]+1e-9 {
			t.Errorf("%v: %g × %g", room, p.Width, p.Height)
		}
		b := p.Draw.Items[0].(draw.Shape).Path.Bounds()
		k := b.W() / 200
		if math.Abs(b.H()-100*k) > 1e-6 || k <= 0 {
			t.Errorf("%v: %v is out of scale", room, b)
		}
		if b.X0 < 2-1e-6 || b.X0+400*k > p.Width-besideMm+1e-6 || b.Y0 < -p.Height+6 || b.Y0+200*k > -6 {
			t.Errorf("%v: the picture stands from %g, %g, %g wide", room, b.X0, b.Y0, 400*k)
		}
		// As large as the room lets it.
		if spare := p.Width - 400*k - 2 - besideMm; spare > 0.1 && p.Height < room[1]-0.1 {
			t.Errorf("%v: %g are left beside it, %g below", room, spare, room[1]-p.Height)
		}
		found := false
		for _, item := range p.Draw.Items {
			s, ok := item.(draw.Shape)
			if !ok || s.Stroke != draw.White {
				continue
			}
			found = true
			a := s.Path.Bounds()
			if tip := b.X0 + 400*k; math.Abs(a.X0-tip-0.4) > 1e-6 || math.Abs(a.X1-tip-arrowMm) > 1e-6 || math.Abs((a.Y0+a.Y1)/2-(b.Y0+125*k)) > 1e-6 || a.X1 > p.Width+1e-9 || a.H() >= a.W() {
				t.Errorf("%v: the arrow is %v at %g", room, a, tip)
			}
		}
		if !found {
			t.Errorf("%v: no arrow", room)
		}
	}
}

// Letters on a small dial stand apart by what they are high, also over 12 o'clock, and get
// smaller where many stand on it.
func TestLettersStandApart(t *testing.T) {
	t.Parallel()
	for _, degs := range [][]float64{{0, 300}, {0, 60, 150, 180, 210, 270, 300}, {0, 10, 20, 30, 40, 50, 60, 350, 352, 355}} {
		var marks []hourMark
		for i, deg := range degs {
			marks = append(marks, hourMark{letter: string(rune('A' + i)), deg: deg})
		}
		var d draw.Drawing
		dial{0, 0, smallDialMm, "TOP", 0}.marked(&d, marks)
		var texts []draw.Text
		for _, m := range d.Items {
			if x, ok := m.(draw.Text); ok && len(x.Content) == 1 {
				texts = append(texts, x)
			}
		}
		if len(texts) != len(degs) {
			t.Fatalf("%d letters of %d", len(texts), len(degs))
		}
		for i, a := range texts {
			b := texts[(i+1)%len(texts)]
			if apart := math.Hypot(a.XMm-b.XMm, a.YMm-b.YMm); apart < 0.95*a.SizeMm || (a.SizeMm < 3.6-1e-9) != (len(degs) > 7) || a.SizeMm > 3.6+1e-9 {
				t.Errorf("%v: %s and %s of %.1f are %.1f apart", degs, a.Content, b.Content, a.SizeMm, apart)
			}
		}
	}
	var d draw.Drawing // 30° of the clock up, what is at 75° stands 45° on
	dial{10, -5, 18, "port", 30}.marked(&d, []hourMark{{letter: "A", deg: 75, key: true}})
	at := (18 - 4.6) * math.Sqrt2 / 2
	if !slices.ContainsFunc(d.Items, func(item draw.Item) bool {
		x, ok := item.(draw.Text)
		return ok && x.Content == "A" && math.Hypot(x.XMm-10-at, x.YMm+0.36*x.SizeMm+5-at) < 1e-9
	}) {
		t.Errorf("no letter 45° on: %q", allTexts(d))
	}
}

// An arrow of 8 stands back from metal that it would lie over, here of a plate from 0 to 10 at 1:1,
// in steps of half a millimetre from 0.6 on: with its tip at 20 it is clear, at 15 and 8 it begins
// beside the plate. Of two pictures the wider has up to twice the width of the other, but for the room of the other's numbers,
// if that leaves its own.
func TestArrowsClearOfMetal(t *testing.T) {
	t.Parallel()
	box := func(x0, x1 float64) plan.Shape {
		return plan.Shape{Kind: plan.ShapePart, Item: 1, Loops: [][]plan.XY{{{XMm: x0}, {XMm: x1}, {XMm: x1, YMm: 20}, {XMm: x0, YMm: 20}}}}
	}
	pic := &plan.Picture{MaxMm: plan.XY{XMm: 60, YMm: 20}, Shapes: []plan.Shape{box(0, 10), box(20, 30)}}
	for _, c := range []struct{ x, dir, want float64 }{{20, 1, 0}, {30, -1, 0}, {60, 1, 0}, {0, 1, 0}, {15, 1, 15.1}, {8, 1, 8.1}} {
		if got := clearOf(pic, plan.Arrow{AtMm: plan.XY{XMm: c.x, YMm: 10}, Dir: plan.XY{XMm: c.dir}}, 1); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("at %v to %v: %v back, want %v", c.x, c.dir, got, c.want)
		}
	}
	wide, square, tall := plan.Picture{MaxMm: plan.XY{XMm: 90, YMm: 30}}, plan.Picture{MaxMm: plan.XY{XMm: 15, YMm: 10}}, plan.Picture{MaxMm: plan.XY{XMm: 10, YMm: 90}}
	numbered := func(p plan.Picture, n int) plan.Picture {
		for i := range n {
			p.Shapes = append(p.Shapes, plan.Shape{Named: true, Item: i + 1})
		}
		return p
	}
	const four = 4 * picture.BalloonStepMm // 32, as 7 take 56 and 8 take 64
	for _, c := range []struct {
		pics []plan.Picture
		want []float64
	}{{[]plan.Picture{wide, numbered(tall, 4)}, []float64{90 - four, four}}, {[]plan.Picture{numbered(wide, 7), numbered(tall, 4)}, []float64{90 - four, four}}, {[]plan.Picture{numbered(wide, 8), numbered(tall, 4)}, []float64{60, 30}}, {[]plan.Picture{wide, tall}, []float64{60, 30}}, {[]plan.Picture{square, tall}, []float64{54, 36}}, {[]plan.Picture{tall}, []float64{90}}} {
		if got := shares(c.pics, 90); !slices.Equal(got, c.want) {
			t.Errorf("%v, want %v", got, c.want)
		}
	}
}

// TestMarksOfAWeld: the clock of a weld that is tacked is that of the part welded to, and has no marks where that lies
// another way than the assembly does.
func TestMarksOfAWeld(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		tacks  []float64
		placed plan.Placed
		marks  int
	}{
		{nil, plan.Placed{Title: "Tube", TurnDeg: 30}, 1}, {[]float64{0}, plan.Placed{Title: "Tube", TurnDeg: 30}, 0}, {[]float64{0}, plan.Placed{Title: "Tube", OtherWay: true}, 0},
		{[]float64{0, 180}, plan.Placed{Title: "Tube"}, 1}, {[]float64{0, 180}, plan.Placed{Title: "Flange", TurnDeg: 30}, 1}, {[]float64{0, 180}, plan.Placed{Title: "Tube", TurnDeg: -1}, 0},
	} {
		j := &plan.JointPlan{Weld: &plan.WeldPlan{TacksDeg: c.tacks, ClockOf: "Tube"}, Placed: []plan.Placed{c.placed}, Clock: []plan.ClockMark{{Label: "TOP", Part: "A"}}}
		if got := len(clockMarks(j)); got != c.marks {
			t.Errorf("%d tacks, %+v: %d marks, want %d", len(c.tacks), c.placed, got, c.marks)
		}
	}
}

// TestBoltsInRows: bolts in a row, whose balloons would meet on a dial, stand as they lie, whichever way the machine
// has its TOP, beside an arrow; on a circle, or where hours are marked, or where they would meet so too, they stand
// round the dial.
func TestBoltsInRows(t *testing.T) {
	t.Parallel()
	spots := func(marks []plan.ClockMark, upDeg float64, at ...plan.XY) (out []plan.XY, dials int) {
		j := &plan.JointPlan{UpDeg: upDeg, Clock: marks, Bolt: &plan.BoltPlan{OrderMm: at, OrderDeg: seq.Map(at, geom.ClockDeg)}}
		p, _ := clockPanel(j, 18)
		var middle plan.XY
		for i := range at {
			for _, q := range texts(&p) {
				if q.Content == strconv.Itoa(i+1) {
					out = append(out, plan.XY{XMm: q.XMm, YMm: q.YMm})
					middle = middle.Plus(out[i].Times(1 / float64(len(at))))
				}
			}
		}
		if slices.ContainsFunc(texts(&p), func(q draw.Text) bool { return q.Content == "90°" || q.Content == "TOP" }) {
			dials = 1
		}
		return seq.Map(out, func(q plan.XY) plan.XY { return q.Minus(middle) }), dials
	}
	row := []plan.XY{{XMm: 152.4}, {XMm: -152.4}, {}}
	for _, c := range []struct {
		name  string
		marks []plan.ClockMark
		upDeg float64
		at    []plan.XY
		want  string
	}{
		{"a row", nil, 0, row, "21,0 -21,0 0,0 0"}, {"TOP of the machine at 90°", nil, 90, row, "0,21 0,-21 0,0 0"},
		{"hours marked", []plan.ClockMark{{Part: "a", Label: "TOP"}}, 0, row, "21,-7 -21,-7 0,14 1"},
		{"on a circle", nil, 0, []plan.XY{{YMm: 30}, {YMm: -30}, {XMm: 30}, {XMm: -30}}, "0,21 0,-21 21,0 -21,0 1"},
		{"too near as they lie", nil, 0, []plan.XY{{XMm: 200}, {XMm: -200}, {XMm: 195}}, "14,0 -29,0 14,0 1"},
	} {
		at, dials := spots(c.marks, c.upDeg, c.at...)
		got := ""
		for _, q := range at {
			got += fmt.Sprintf("%.0f,%.0f ", math.Round(q.XMm)+0, math.Round(q.YMm)+0)
		}
		if got += strconv.Itoa(dials); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// TestTackNumbers: tacks are numbered on their dial in the order in which they are set, so that none meets another and none
// is smaller than the least text; of more than have room so the first are, as many on the larger dial as there are.
func TestTackNumbers(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		tacks    int
		r        float64
		numbered int
		em       float64
	}{{8, 18, 8, 4.2}, {9, 18, 9, 4.2}, {10, 18, 10, 3}, {32, 18, 32, 2.914}, {16, smallDialMm, 16, 3}, {32, smallDialMm, 16, draw.SmallMm}, {64, 18, 32, draw.SmallMm}} {
		w := &plan.WeldPlan{DiameterMm: 500, TackLengthMm: 8}
		for i := range c.tacks { // halves of what lies between: 0, 1/2, 1/4, 3/4, 1/8 …
			share, half := 0.0, 0.5
			for k := i; k > 0; k, half = k/2, half/2 {
				share += float64(k%2) * half
			}
			w.TacksDeg = append(w.TacksDeg, 360*share)
		}
		p, _ := clockPanel(&plan.JointPlan{Weld: w}, c.r)
		n := 0
		var rooms []draw.Rect
		for _, q := range texts(&p) {
			if q.Content != strconv.Itoa(n+1) {
				continue
			}
			n++
			room := draw.TextRect(q)
			if math.Abs(q.SizeMm-c.em) > 0.002 || slices.ContainsFunc(rooms, room.Grown(-0.05).Meets) {
				t.Errorf("%+v: %s is %v high at %v", c, q.Content, q.SizeMm, room)
			}
			rooms = append(rooms, room)
		}
		if n != c.numbered {
			t.Errorf("%+v: %d are numbered", c, n)
		}
	}
}

// The quarter angles of a dial keep clear of its marks, which go in to 2.8 from the ring.
func TestQuartersKeepOffTheirMarks(t *testing.T) {
	t.Parallel()
	var d draw.Drawing
	dial{cx: 30, cy: 30, r: 14.5, up: "TOP"}.draw(&d, nil)
	n := 0
	for _, text := range texts(&draw.Panel{Draw: d}) {
		r := draw.TextRect(text)
		for _, mark := range []draw.Rect{draw.R(41.7, 29.9, 44.5, 30.1), draw.R(15.5, 29.9, 18.3, 30.1), draw.R(29.9, 15.5, 30.1, 18.3)} {
			if r.Grown(0.5).Meets(mark) {
				t.Errorf("%s at %v touches the mark %v", text.Content, r, mark)
			}
		}
		n++
	}
	if n != 4 {
		t.Errorf("%d texts", n)
	}
}
