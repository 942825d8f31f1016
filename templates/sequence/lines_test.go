package sequence

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/picture"

	"github.com/tdewolff/canvas"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// straight are the lines of two points of items, those of groups carried to where they lie.
func straight(items []draw.Item, m canvas.Matrix) (out [][4]float64) {
	for _, item := range items {
		switch it := item.(type) {
		case draw.Group:
			out = append(out, straight(it.Drawing.Items, m.Mul(it.Transform))...)
		case draw.Shape:
			if c := it.Path.Coords(); len(c) == 2 {
				a, b := m.Dot(c[0]), m.Dot(c[1])
				out = append(out, [4]float64{a.X, a.Y, b.X, b.Y})
			}
		}
	}
	return out
}

func hasLine(d *draw.Drawing, want ...float64) bool {
	return slices.ContainsFunc(straight(d.Items, canvas.Identity), func(l [4]float64) bool {
		return near(l[0], want[0]) && near(l[1], want[1]) && near(l[2], want[2]) && near(l[3], want[3])
	})
}

// hasText tells whether a text of a size stands at a place.
func hasText(d *draw.Drawing, content string, x, y, size float64, align draw.Align) bool {
	return slices.ContainsFunc(d.Items, func(item draw.Item) bool {
		t, ok := item.(draw.Text)
		return ok && t.Content == content && near(t.XMm, x) && near(t.YMm, y) && near(t.SizeMm, size) && t.Align == align
	})
}

// polygons are the corners of the filled shapes of a drawing, in order.
func polygons(d *draw.Drawing) (out [][]canvas.Point) {
	for _, item := range d.Items {
		if s, ok := item.(draw.Shape); ok && s.Fill != draw.None {
			c := s.Path.Coords()
			if n := len(c); n > 1 && c[0] == c[n-1] {
				c = c[:n-1]
			}
			out = append(out, c)
		}
	}
	return out
}

func hasPolygon(d *draw.Drawing, xy ...float64) bool {
	return slices.ContainsFunc(polygons(d), func(c []canvas.Point) bool {
		if len(c) != len(xy)/2 {
			return false
		}
		for i, p := range c {
			if !near(p.X, xy[2*i]) || !near(p.Y, xy[2*i+1]) {
				return false
			}
		}
		return true
	})
}

// TestWayArrow: the arrow ends 0.4 mm before its point, is 8 mm long, its head 4.1 mm of that and 4.8 wide, its shaft
// 1.8; it points in its direction at its size.
func TestWayArrow(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		dir  plan.XY
		size float64
	}{{plan.XY{XMm: 1}, 1}, {plan.XY{YMm: -1}, 1}, {plan.XY{XMm: 0.6, YMm: 0.8}, 0.7}} {
		d := &draw.Drawing{}
		d.Add(wayArrow(10, 20, c.dir, c.size))
		var want []float64
		for _, q := range [][2]float64{{0.4, 0}, {4.5, 2.4}, {4.5, 0.9}, {8, 0.9}, {8, -0.9}, {4.5, -0.9}, {4.5, -2.4}} {
			want = append(want, 10-c.size*(q[0]*c.dir.XMm+q[1]*c.dir.YMm), 20-c.size*(q[0]*c.dir.YMm-q[1]*c.dir.XMm))
		}
		if !hasPolygon(d, want...) || d.Items[0].(draw.Shape).WidthMm != 0.3 {
			t.Errorf("%v: %v, want %v", c, polygons(d), want)
		}
	}
	// What comes square to the paper has a ring of 3.8 mm over its point, crossed from rim to rim.
	d := &draw.Drawing{}
	d.Add(endOn(10, 20)...)
	k, y := 1.9*math.Sqrt2/2, 22.5
	if b := d.Items[1].(draw.Shape).Path.Bounds(); !near(b.X0, 8.1) || !near(b.X1, 11.9) || !near(b.Y0, y-1.9) || !near(b.Y1, y+1.9) || !hasPolygon(d, 8.1, y-1.9, 11.9, y-1.9, 11.9, y+1.9, 8.1, y+1.9) ||
		!hasLine(d, 10-k, y-k, 10+k, y+k) || !hasLine(d, 10-k, y+k, 10+k, y-k) {
		t.Errorf("end on: %v, %v", b, straight(d.Items, canvas.Identity))
	}
}

// TestFilletAcross: a fillet seen across: its two plates, the triangle of weld in their corner with its leg, the throat
// from the corner's middle out; lapped plates, a plate on an edge, and all of it smaller where a step shares its sheet.
func TestFilletAcross(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name            string
		weld            plan.WeldPlan
		small           bool
		wide, high      float64
		mid, floor, leg float64
		under, over     [4]float64 // x from and to, y from and to
	}{
		{"corner", plan.WeldPlan{}, false, 61, 60, 20, -42, 13, [4]float64{4, 53, -42, -49.8}, [4]float64{12.2, 20, -41.4, -12.1}},
		{"lap", plan.WeldPlan{Lap: true}, false, 61, 60, 20, -42, 13, [4]float64{4, 53, -42, -49.8}, [4]float64{4, 20, -41.4, -26.4}},
		{"on an edge", plan.WeldPlan{OnEdge: true}, false, 61, 60, 20, -42, 13, [4]float64{20.6, 33, -42, -49.8}, [4]float64{12.2, 20, -47.2, -12.1}},
		{"small", plan.WeldPlan{}, true, 44, 46, 13, -35, 9, [4]float64{4, 36, -35, -40.4}, [4]float64{7.6, 13, -34.4, -14.3}},
	} {
		w := c.weld
		w.LegMm, w.ThroatMm, w.Designation, w.Process = 6, 4.24, "z6", "MAG"
		p := weldPanel(&w, parts.Millimetres, c.small)
		d, u, o := &p.Draw, c.under, c.over
		if p.Width != c.wide || p.Height != c.high || !hasPolygon(d, u[0], u[2], u[1], u[2], u[1], u[3], u[0], u[3]) || !hasPolygon(d, o[0], o[2], o[1], o[2], o[1], o[3], o[0], o[3]) {
			t.Errorf("%s: %v x %v, plates %v", c.name, p.Width, p.Height, polygons(d))
		}
		if !hasPolygon(d, c.mid, c.floor, c.mid+c.leg, c.floor, c.mid, c.floor+c.leg) || !hasLine(d, c.mid+c.leg/2, c.floor+c.leg/2, c.mid+c.leg, c.floor+c.leg) {
			t.Errorf("%s: weld %v", c.name, polygons(d))
		}
		if !hasText(d, "throat 4.24 mm", c.mid+c.leg/2, c.floor+c.leg+1.5, 3.4, draw.Left) || !hasText(d, "leg 6 mm", c.mid+c.leg+1.5, c.floor+1.4, 3.8, draw.Left) ||
			!hasText(d, "Across the weld", c.wide/2, -4.2, 3.8, draw.Centre) || !hasText(d, "z6, MAG", c.wide/2, 1.4-c.high, 3.2, draw.Centre) {
			t.Errorf("%s: %v", c.name, texts(&p))
		}
	}
}

// TestGrooveAcross: a butt seen across, 22 mm deep on paper: its edges 1.6 apart, their root faces to scale with the
// thinner plate and 2.2 at the least, each bevelled by half the angle, or one by all of it; a round that touches, the
// wall of a main and its branch.
func TestGrooveAcross(t *testing.T) {
	t.Parallel()
	const x, y, half = 30.0, -42.0, 26.0
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	for _, c := range []struct {
		name        string
		w           plan.WeldPlan
		left, right []float64
		over, under string
	}{
		{"square", plan.WeldPlan{GapMm: 1}, []float64{x - half, y, x - 0.8, y, x - 0.8, y, x - 0.8, y + 22, x - half, y + 22}, []float64{x + half, y, x + 0.8, y, x + 0.8, y, x + 0.8, y + 22, x + half, y + 22}, "no bevel", "gap 1 mm"},
		{"both", plan.WeldPlan{GapMm: 2, BevelDeg: 60, RootFaceMm: 1, ThinnerMm: 4}, []float64{x - half, y, x - 0.8, y, x - 0.8, y + 5.5, x - 0.8 - 16.5*tan(30), y + 22, x - half, y + 22}, []float64{x + half, y, x + 0.8, y, x + 0.8, y + 5.5, x + 0.8 + 16.5*tan(30), y + 22, x + half, y + 22}, "opened to 60°", "gap 2, root face 1 mm"},
		{"a little root face", plan.WeldPlan{GapMm: 2, BevelDeg: 50, RootFaceMm: 0.5, ThinnerMm: 10}, []float64{x - half, y, x - 0.8, y, x - 0.8, y + 2.2, x - 0.8 - 19.8*tan(25), y + 22, x - half, y + 22}, nil, "opened to 50°", "gap 2, root face 0.5 mm"},
		{"one edge", plan.WeldPlan{GapMm: 2, BevelDeg: 30, RootFaceMm: 1, ThinnerMm: 4, OneEdge: true, Bevelled: "Rib"}, []float64{x - half, y, x - 0.8, y, x - 0.8, y + 5.5, x - 0.8 - 16.5*tan(30), y + 22, x - half, y + 22}, []float64{x + half, y, x + 0.8, y, x + 0.8, y + 22, x + half, y + 22}, "Rib opened to 30°", "gap 2, root face 1 mm"},
		{"no more than 15 mm", plan.WeldPlan{GapMm: 2, BevelDeg: 80, RootFaceMm: 1, ThinnerMm: 10, OneEdge: true}, []float64{x - half, y, x - 0.8, y, x - 0.8, y + 2.2, x - 15.8, y + 22, x - half, y + 22}, nil, "opened to 80°", "gap 2, root face 1 mm"},
		{"a round", plan.WeldPlan{DepthMm: 3, BevelDeg: 45, OneEdge: true}, []float64{x - half, y, x, y, x, y + 11, x - 11, y + 22, x - half, y + 22}, nil, "opened to 45°", "no gap, 3 mm along the round"},
		{"set in", plan.WeldPlan{GapMm: 2, Branch: parts.SetIn, BevelDeg: 45}, []float64{x - half, y, x - 0.8, y, x - 0.8, y + 3, x - 5.8, y + 8, x - half, y + 8}, []float64{x + 0.8, y, x + 8.8, y, x + 8.8, y + 22, x + 0.8, y + 22}, "opened to 45°", "gap 2, root face 0 mm"},
		{"set on", plan.WeldPlan{GapMm: 2, Branch: parts.SetOn, BevelDeg: 45}, []float64{x - half, y, x + 4, y, x + 4, y + 8, x - half, y + 8}, []float64{x - 4, y + 22, x - 4, y + 14.6, x + 1, y + 9.6, x + 4, y + 9.6, x + 4, y + 22}, "opened to 45°", "gap 2, root face 0 mm"},
		{"set on, opening at its flanks", plan.WeldPlan{GapMm: 1.5, Branch: parts.SetOn, OpensMm: 7, OpensDeg: []float64{90, 270}}, nil, nil, "no bevel", "gap 1.5, to 7 mm at 90° and 270°"},
		{"leaning and off the axis", plan.WeldPlan{GapMm: 1.5, Branch: parts.SetOn, OpensMm: 7}, nil, nil, "no bevel", "gap 1.5, to 7 mm at the flanks"},
		{"set on, no bevel", plan.WeldPlan{GapMm: 2, Branch: parts.SetOn}, nil, []float64{x - 4, y + 22, x - 4, y + 9.6, x - 4, y + 9.6, x + 4, y + 9.6, x + 4, y + 22}, "no bevel", "gap 2 mm"},
	} {
		d := &draw.Drawing{}
		grooveAcross(d, &c.w, plan.XY{XMm: x, YMm: y}, half, parts.Millimetres)
		for _, want := range [][]float64{c.left, c.right} {
			if want != nil && !hasPolygon(d, clean(want)...) {
				t.Errorf("%s: %v, want %v", c.name, polygons(d), want)
			}
		}
		if !hasText(d, c.over, x, y+26, 3.4, draw.Centre) || !hasText(d, c.under, x, y-5.4, 3.4, draw.Centre) {
			t.Errorf("%s: %v", c.name, texts(&draw.Panel{Draw: *d}))
		}
	}
}

// clean leaves out a point that is the one before it, as a path does.
func clean(xy []float64) (out []float64) {
	for i := 0; i < len(xy); i += 2 {
		if n := len(out); n > 0 && near(out[n-2], xy[i]) && near(out[n-1], xy[i+1]) {
			continue
		}
		out = append(out, xy[i], xy[i+1])
	}
	return out
}

// TestExtent: a dimension line with its arrows 3 mm long inside, extension lines from 1 mm off the view to 1.5 past the
// line, its size over it; upright it is turned to the left.
func TestExtent(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ r draw.Rect }{{draw.Rect{X0: 10, Y0: 50, X1: 60, Y1: 40}}, {draw.Rect{X0: 10, Y0: 50, X1: 60, Y1: 58}}} {
		d, r := &draw.Drawing{}, c.r
		extent(d, r, "400")
		way := math.Copysign(1, r.Y1-r.Y0)
		if !hasLine(d, r.X0, r.Y1, r.X1, r.Y1) || !hasLine(d, r.X0, r.Y0+way, r.X0, r.Y1+1.5*way) || !hasLine(d, r.X1, r.Y0+way, r.X1, r.Y1+1.5*way) ||
			!hasPolygon(d, r.X0, r.Y1, r.X0+3, r.Y1+0.6, r.X0+3, r.Y1-0.6) || !hasPolygon(d, r.X1, r.Y1, r.X1-3, r.Y1+0.6, r.X1-3, r.Y1-0.6) || !hasText(d, "400", 35, r.Y1+1, 3.4, draw.Centre) {
			t.Errorf("%v: %v", r, d.Items)
		}
	}
	r := &arranger{w: words.Writer{Units: parts.Millimetres}, pl: &plan.Plan{Units: parts.Millimetres}, a: &plan.Arrangement{}}
	v := &plan.View{MinMm: plan.XY{XMm: -100, YMm: -50}, MaxMm: plan.XY{XMm: 300, YMm: 250}}
	p := &picture.Paper{Low: v.MinMm, X: 40, Y: -100, Scale: 0.1}
	d := &draw.Drawing{}
	if box := r.sized(d, p, v, [2]float64{5, 9}); box != draw.R(40, -100, 80, -70) {
		t.Errorf("the view stands at %v", box)
	}
	if !hasLine(d, 40, -115, 80, -115) || !hasLine(d, 40, -101, 40, -116.5) || !hasLine(d, 29, -100, 29, -70) || !hasLine(d, 34, -100, 27.5, -100) || !hasLine(d, 34, -70, 27.5, -70) {
		t.Errorf("sizes at %v", straight(d.Items, canvas.Identity))
	}
	d = &draw.Drawing{}
	clockRound(d, p, draw.R(40, -100, 80, -70))
	if !hasText(d, "TOP 0°", 53, -66, draw.TextMm, draw.Left) || !hasText(d, "90°", 81.5, -96, draw.TextMm, draw.Left) || !hasLine(d, 50, -101, 50, -68) || !hasLine(d, 39, -95, 81, -95) {
		t.Errorf("the hours: %v, %v", texts(&draw.Panel{Draw: *d}), straight(d.Items, canvas.Identity))
	}
}

// TestAnchorRows: crosses at the holes; how far each row lies from the machine's lines is written above or below the
// view and at its right, in order, no text over another, a line leading from each to its row.
func TestAnchorRows(t *testing.T) {
	t.Parallel()
	at := func(x, y, fx, fy float64) plan.Anchor {
		return plan.Anchor{AtMm: plan.XY{XMm: x, YMm: y}, FromMm: plan.XY{XMm: fx, YMm: fy}, DiameterMm: 14}
	}
	r := &arranger{w: words.Writer{Units: parts.Millimetres}, pl: &plan.Plan{}, a: &plan.Arrangement{Anchors: []plan.Anchor{at(0, 0, 20, 30), at(100, 0, 120, 30), at(0, 12, 20, 42), at(110, 60, 130, 90)}}}
	p := &picture.Paper{X: 50, Y: 60, Scale: 0.2}
	box := draw.R(48, 58, 80, 80)
	for _, below := range []bool{false, true} {
		d := &draw.Drawing{}
		right := r.anchors(d, p, box, below)
		for _, a := range r.a.Anchors {
			x, y := p.At(a.AtMm)
			if !hasLine(d, x-1.6, y, x+1.6, y) || !hasLine(d, x, y-1.6, x, y+1.6) {
				t.Errorf("no cross at %v, %v", x, y)
			}
		}
		edge, way, foot := 81.5, 1.0, 0.0
		if below {
			edge, way, foot = 56.5, -1, draw.TextMm
		}
		wide := func(s string) float64 { return draw.TextWidth(s, draw.TextMm, false) }
		last := 70 + wide("120")/2 + 1.2 + wide("130")/2
		for text, x := range map[string][2]float64{"20": {50, 50}, "120": {70, 70}, "130": {72, last}} {
			if !hasText(d, text, x[1], edge+way*(2.1+foot*0.8), draw.TextMm, draw.Centre) || !hasLine(d, x[0], edge, x[1], edge+1.5*way) || !hasLine(d, x[0], edge-way, x[0], edge) {
				t.Errorf("below %v: %s is not at %v: %v", below, text, x, texts(&draw.Panel{Draw: *d}))
			}
		}
		step := draw.TextMm + 1.2
		want := []float64{61.2 - step/2, 61.2 + step/2, 72}
		for i, text := range []string{"30", "42", "90"} {
			y := []float64{60, 62.4, 72}[i]
			if !near(right[i], want[i]) || !hasText(d, text, 83.6, right[i]-draw.TextMm*0.35, draw.TextMm, draw.Left) || !hasLine(d, 80.5, y, 81.5, y) || !hasLine(d, 81.5, y, 83, right[i]) {
				t.Errorf("below %v: %s at %v, want %v: %v", below, text, right[i], want[i], texts(&draw.Panel{Draw: *d}))
			}
		}
	}
}

// TestUprightViews: the plan of a machine that stands has its hours, title and height where they say, TOP off the anchors'
// texts; the view from the side its length and title; both with lines to scale.
func TestUprightViews(t *testing.T) {
	t.Parallel()
	v := plan.View{MinMm: plan.XY{XMm: -100, YMm: -150}, MaxMm: plan.XY{XMm: 100, YMm: 50}}
	for _, stands := range []plan.Angle{plan.FirstAngle, plan.ThirdAngle} {
		r := &arranger{w: words.Writer{Units: parts.Millimetres}, pl: &plan.Plan{Units: parts.Millimetres}, a: &plan.Arrangement{Stands: stands, End: v, Top: v}}
		p := &picture.Paper{Low: v.MinMm, X: 40, Y: -100, Scale: 0.2}
		d := &draw.Drawing{}
		r.plan(d, p, 5)
		if !hasText(d, "TOP 0° ►", 82.5, -71, draw.TextMm, draw.Left) || !hasText(d, "270°", 60, -57, draw.TextMm, draw.Centre) || !hasText(d, "Seen from above, 1:5", 60, -52, draw.TextMm, draw.Centre) ||
			!hasLine(d, 60, -101, 60, -58) || !hasLine(d, 39, -70, 82, -70) || !hasLine(d, 34, -100, 34, -60) {
			t.Errorf("the plan: %v, %v", texts(&draw.Panel{Draw: *d}), straight(d.Items, canvas.Identity))
		}
		d = &draw.Drawing{}
		r.side(d, p, 5)
		says := map[plan.Angle]string{plan.FirstAngle: "Seen from the side opposite TOP, 1:5", plan.ThirdAngle: "Seen from the side of TOP, 1:5"}[stands]
		if !hasText(d, says, 60, -114, 3.4, draw.Centre) || !hasLine(d, 40, -107, 80, -107) {
			t.Errorf("the side: %v, %v", texts(&draw.Panel{Draw: *d}), straight(d.Items, canvas.Identity))
		}
	}
}

// TestPanelRows: panels stand side by side as long as they fit, then in another row, the rows 3 mm apart.
func TestPanelRows(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		wides []float64
		want  []float64 // height of the rows
	}{{nil, nil}, {[]float64{40}, []float64{10}}, {[]float64{40, 60}, []float64{11}}, {[]float64{40, 60.1}, []float64{10, 11}}, {[]float64{150, 30, 70, 20}, []float64{10, 12, 13}}, {[]float64{30, 30, 30, 30}, []float64{12, 13}}} {
		var panels []draw.Panel
		for i, w := range c.wides {
			panels = append(panels, draw.Panel{Width: w, Height: 10 + float64(i)})
		}
		var got []float64
		for i, p := range panelRows(panels, 100) {
			if i%2 == 0 {
				got = append(got, p.Height)
			} else if p.Height != 3 {
				t.Errorf("%v: a gap of %v", c.wides, p.Height)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.wides, got, c.want)
		}
	}
}

// TestNumberBoxes: numbers stand in rows of equal boxes over the width, as many as have 38 mm, label at the left, value
// and the rest in the middle; what is empty is left out.
func TestNumberBoxes(t *testing.T) {
	t.Parallel()
	list := []keyNumber{{"Heat", "180 °C", "clear"}, {"Gap", "2 mm", ""}, {"Runs", "3", "MAG"}, {"Torque", "51 N m", "dry"}, {"Grip", "24 mm", "from"}}
	for _, c := range []struct {
		n            int
		width        float64
		perRow, rows int
	}{{1, 190, 1, 1}, {4, 190, 4, 1}, {5, 190, 5, 1}, {5, 189, 3, 2}, {4, 150, 2, 2}, {3, 30, 1, 3}, {5, 80, 2, 3}} {
		p := bigNumbers(list[:c.n], c.width)
		w := c.width / float64(c.perRow)
		if !near(p.Height, 16.5*float64(c.rows)) {
			t.Errorf("%d in %v: %v high", c.n, c.width, p.Height)
		}
		boxes := 0
		for _, item := range p.Draw.Items {
			s, ok := item.(draw.Shape)
			if !ok {
				continue
			}
			x, y := w*float64(boxes%c.perRow), -16.5*float64(boxes/c.perRow)
			if b := s.Path.Bounds(); !near(b.X0, x) || !near(b.X1, x+w) || !near(b.Y1, y) || !near(b.Y0, y-16.5) {
				t.Errorf("%d in %v: box %d is %v", c.n, c.width, boxes, b)
			}
			k := list[boxes]
			boxes++
			if w < 60 {
				continue // its texts may be smaller
			}
			if !hasText(&p.Draw, k.label, x+2, y-4.4, draw.TextMm, draw.Left) || !hasText(&p.Draw, k.value, x+w/2, y-10.4, 6.6, draw.Centre) || (k.rest != "") != hasText(&p.Draw, k.rest, x+w/2, y-14.8, 3.2, draw.Centre) {
				t.Errorf("%d in %v: %v in box %d", c.n, c.width, texts(&draw.Panel{Draw: p.Draw}), boxes)
			}
		}
		if boxes != c.n {
			t.Errorf("%d in %v: %d boxes", c.n, c.width, boxes)
		}
	}
	if p := bigNumbers(nil, 190); p.Height != 0 || len(p.Draw.Items) != 0 {
		t.Error("a row of no numbers")
	}
}

// TestHoldLine: the signature of a step is a box over the width with its words, a line for the name from 0.56 of the
// width to 0.8, and one for the date behind it.
func TestHoldLine(t *testing.T) {
	t.Parallel()
	for n, says := range map[int]string{1: "All done and inside the limits: go on.", 2: "All 2 done and inside the limits: go on."} {
		for _, w := range []float64{190, 240} {
			p := holdLine(make([]*plan.JointPlan, n), w)
			d, x := &p.Draw, w*0.56
			if b := d.Items[0].(draw.Shape).Path.Bounds(); p.Height != 8.5 || !near(b.X1, w) || !near(b.Y0, -8) {
				t.Errorf("%v: %v, %v high", w, b, p.Height)
			}
			if !hasText(d, "HOLD", 2.5, -5.8, 4.4, draw.Left) || !hasText(d, says, 18, -5.6, 3.4, draw.Left) || !hasText(d, "Signed", x, -5.6, 3.4, draw.Left) || !hasText(d, "Date", w*0.8+2, -5.6, 3.4, draw.Left) ||
				!hasLine(d, x+12, -6.2, w*0.8, -6.2) || !hasLine(d, w*0.8+11, -6.2, w-2, -6.2) {
				t.Errorf("%v: %v, %v", w, texts(&draw.Panel{Draw: *d}), straight(d.Items, canvas.Identity))
			}
		}
	}
}

// TestBothSides: a leader goes to the metal above the axis and to that below it where no contour crosses it.
func TestBothSides(t *testing.T) {
	t.Parallel()
	loop := func(y0, y1 float64) []plan.XY { return []plan.XY{{YMm: y0}, {XMm: 1, YMm: y0}, {XMm: 1, YMm: y1}} }
	for _, c := range []struct {
		name  string
		loops [][]plan.XY
		want  string // loops of each side
	}{{"one above", [][]plan.XY{loop(1, 2)}, "[1]"}, {"above and below", [][]plan.XY{loop(1, 2), loop(-2, -1)}, "[1 1]"}, {"two above", [][]plan.XY{loop(1, 2), loop(3, 4), loop(-2, 0)}, "[2 1]"}, {"across", [][]plan.XY{loop(-1, 1)}, "[1]"}, {"one across", [][]plan.XY{loop(1, 2), loop(-2, -1), loop(-1, 1)}, "[3]"}} {
		var got []int
		for _, side := range bothSides(c.loops) {
			got = append(got, len(side))
		}
		if fmt.Sprint(got) != c.want {
			t.Errorf("%s: %v, want %s", c.name, got, c.want)
		}
	}
}

// TestListInCorner: the list of parts goes into the upper right corner in the widest of its widths that leaves
// 4 mm to what is drawn there and 3 balloons to the spots above the middle, at the edge of the room; lower down
// nothing is in its way.
func TestListInCorner(t *testing.T) {
	t.Parallel()
	room := draw.Rect{X0: 0, Y0: 0, X1: 300, Y1: 200}
	for _, c := range []struct {
		name string
		free float64 // from the right edge, of what is drawn there
		y    float64
		spot float64 // from the right edge, 0 for none
		want float64 // 0 where none has room
	}{
		{"half", 155, 190, 0, 150}, {"half, hardly", 154, 190, 0, 150}, {"no half", 153.9, 190, 0, 122}, {"hardly 122", 126, 190, 0, 122}, {"no 122", 125.9, 190, 0, 108},
		{"hardly 108", 112, 190, 0, 108}, {"no 108", 111.9, 190, 0, 96}, {"hardly 96", 100, 190, 0, 96}, {"no 96", 99.9, 190, 0, 0}, {"below it", 50, 150, 0, 150},
		{"a spot", 160, 190, 154 + 3*picture.BalloonStepMm, 150}, {"a spot too near", 160, 190, 153.9 + 3*picture.BalloonStepMm, 122}, {"one that is too near for any", 160, 190, 90, 0},
	} {
		line := []plan.XY{{XMm: room.X1 - c.free, YMm: c.y}, {XMm: room.X1 - c.free, YMm: c.y + 1}}
		a := &plan.Arrangement{Front: plan.View{MaxMm: plan.XY{XMm: 300, YMm: 200}, Lines: [][]plan.XY{line}}}
		r := &arranger{pl: &plan.Plan{Parts: []*plan.PartPlan{{Title: "Plate", Quantity: 1, Material: "S235"}}}, a: a}
		var spots []picture.Spot
		if c.spot > 0 {
			spots = []picture.Spot{{X: room.X1 - c.spot, Y: 101}, {X: room.X1 - 10, Y: 99}}
		}
		s, got, want := &draw.Sheet{}, [2]float64{}, [2]float64{c.want, 1} // the list's left and upper edge, from the room's right and upper
		if c.want == 0 {
			want = got
		}
		if r.corner(s, &picture.Paper{Scale: 1}, spots, room) {
			at := s.Draw.Items[0].(draw.Group).Transform
			got = [2]float64{room.X1 - at[0][2], room.Y1 - at[1][2]}
		}
		if math.Abs(got[0]-want[0])+math.Abs(got[1]-want[1]) > 1e-6 {
			t.Errorf("%s: %v, want %v", c.name, got, want)
		}
	}
}
