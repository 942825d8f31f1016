package picture_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
	"centrepop/templates/sheettest"
)

// drawn are the items of a panel with its groups resolved.
func drawn(t *testing.T, d *draw.Drawing) (shapes []draw.Shape, texts []sheettest.Placed) {
	t.Helper()
	for _, p := range sheettest.Flatten(t, d, 0, 0, nil) {
		switch item := p.Item.(type) {
		case draw.Shape:
			shapes = append(shapes, item)
		case draw.Text:
			texts = append(texts, p)
		}
	}
	return shapes, texts
}

// rings are the circles among shapes: their middle and radius.
func rings(shapes []draw.Shape, keep func(draw.Shape) bool) (out [][3]float64) {
	for _, s := range shapes {
		if b := s.Path.Bounds(); keep(s) && math.Abs(b.W()-b.H()) < 1e-6 && b.W() > 0.1 && len(s.Path.Coords()) > 2 {
			if l := s.Path.Length(); math.Abs(l-math.Pi*b.W()) < 0.02*l {
				out = append(out, [3]float64{(b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2, b.W() / 2})
			}
		}
	}
	return out
}

// straight are the two-point lines of a width.
func straight(shapes []draw.Shape, width float64) (out [][4]float64) {
	for _, s := range shapes {
		if c := s.Path.Coords(); len(c) == 2 && s.WidthMm == width {
			out = append(out, [4]float64{c[0].X, c[0].Y, c[1].X, c[1].Y})
		}
	}
	return out
}

func has(list [][4]float64, want [4]float64) bool {
	return slices.ContainsFunc(list, func(l [4]float64) bool {
		for i := range l {
			if math.Abs(l[i]-want[i]) > 1e-6 {
				return false
			}
		}
		return true
	})
}

// within checks that texts are written inside the panel and not over each other.
func within(t *testing.T, name string, p draw.Panel, texts []sheettest.Placed) {
	t.Helper()
	paper := draw.R(0, -p.Height, p.Width, 0).Grown(1e-6)
	for i, a := range texts {
		if !paper.Holds(a.Room()) {
			t.Errorf("%s: %q at %v leaves %v", name, a.Item.(draw.Text).Content, a.Room(), paper)
		}
		for _, b := range texts[:i] {
			if sheettest.Overlap(a, b) {
				t.Errorf("%s: %q lies over %q", name, a.Item.(draw.Text).Content, b.Item.(draw.Text).Content)
			}
		}
	}
}

func text(t *testing.T, texts []sheettest.Placed, start string) draw.Rect {
	t.Helper()
	i := slices.IndexFunc(texts, func(p sheettest.Placed) bool { return strings.HasPrefix(p.Item.(draw.Text).Content, start) })
	if i < 0 {
		t.Fatalf("no text %q", start)
	}
	return texts[i].Room()
}

// TestFaceIsToScale: outline, holes, slots and circles lie where the plan has them, at
// one scale, and fill the panel but for 3 mm a side; TOP above, the caption below.
func TestFaceIsToScale(t *testing.T) {
	t.Parallel()
	folded := *sheettest.PlatePart().Faces[0]
	folded.Folds = []plan.Contour{"M-250 100L250 100"}
	for name, c := range map[string]struct {
		face    *plan.Face
		h       float64
		caption string
	}{
		"flange":    {sheettest.FlangePart().Faces[0], 70, "FRONT face"},
		"plate":     {sheettest.PlatePart().Faces[0], 66, "FRONT face"},
		"mirrored":  {sheettest.HousingPart().Faces[1], 80, "BACK face, seen from the back"},
		"crowded":   {sheettest.CrowdedPart().Faces[0], 69.85, "FRONT face"},
		"narrow":    {sheettest.HousingPart().Faces[1], 25, "BACK face"},
		"with fold": {&folded, 66, "Flat blank, FRONT face"},
	} {
		p := picture.Face(c.face, c.h)
		p.Draw = *p.Drawn()
		shapes, texts := drawn(t, &p.Draw)
		within(t, name, p, texts[:0])
		b := shapes[0].Path.Bounds()
		if math.Abs(p.Width-b.W()-6) > 1e-6 {
			t.Errorf("%s: %v in a panel of %g", name, b, p.Width)
		}
		if math.Abs(b.W()-c.h*picture.Aspect(c.face)) > 1e-6 || math.Abs(b.H()-c.h) > 1e-6 || math.Abs(b.X0+b.X1-p.Width) > 1e-6 || b.Y1 > -picture.TopPadMm+1e-6 || b.Y0 < -p.Height+picture.CaptionMm-1e-6 {
			t.Errorf("%s: the outline is %v in a panel of %g × %g", name, b, p.Width, p.Height)
		}
		scale := c.h / (c.face.MaxMm.YMm - c.face.MinMm.YMm)
		at := func(q plan.XY) (x, y float64) {
			return b.X0 + (q.XMm-c.face.MinMm.XMm)*scale, b.Y0 + (q.YMm-c.face.MinMm.YMm)*scale
		}
		holes := rings(shapes, func(s draw.Shape) bool { return s.WidthMm == 0.25 })
		hairs := straight(shapes, draw.HairMm)
		if len(holes) != len(c.face.Holes) {
			t.Fatalf("%s: %d holes of %d", name, len(holes), len(c.face.Holes))
		}
		for i, hole := range c.face.Holes {
			x, y := at(plan.XY{XMm: hole.XMm, YMm: hole.YMm})
			r := max(0.6, hole.DiameterMm/2*scale)
			if math.Hypot(holes[i][0]-x, holes[i][1]-y) > 1e-6 || math.Abs(holes[i][2]-r) > 1e-6 {
				t.Errorf("%s: hole %d is drawn as %v, want %g, %g, %g", name, hole.N, holes[i], x, y, r)
			}
			if !has(hairs, [4]float64{x - r - 0.8, y, x + r + 0.8, y}) || !has(hairs, [4]float64{x, y - r - 0.8, x, y + r + 0.8}) {
				t.Errorf("%s: hole %d has no centre lines", name, hole.N)
			}
		}
		for _, q := range c.face.Circles {
			x, y := at(q.CentreMm)
			if q.HalfMm == (plan.XY{}) && !slices.ContainsFunc(rings(shapes, func(s draw.Shape) bool { return true }), func(r [3]float64) bool {
				return math.Hypot(r[0]-x, r[1]-y) < 1e-6 && math.Abs(r[2]-q.DiameterMm/2*scale) < 1e-6
			}) {
				t.Errorf("%s: no circle for %s", name, q.Label)
			}
		}
		for _, s := range c.face.Slots {
			x, y := at(plan.XY{XMm: s.XMm, YMm: s.YMm})
			if !slices.ContainsFunc(shapes, func(q draw.Shape) bool {
				b := q.Path.Bounds()
				return math.Hypot((b.X0+b.X1)/2-x, (b.Y0+b.Y1)/2-y) < 1e-6 && math.Abs(max(b.W(), b.H())-s.LengthMm*scale) < 1e-6 && math.Abs(min(b.W(), b.H())-s.WidthMm*scale) < 1e-6
			}) {
				t.Errorf("%s: no slot %d", name, s.N)
			}
		}
		top, caption := text(t, texts, "TOP"), text(t, texts, c.caption)
		if top.Y0 < b.Y1 || top.Y1 > 1e-6 || top.X0 < p.Width/2+2 || math.Abs(caption.X0+caption.X1-p.Width) > 1e-6 || caption.Y1 > b.Y0 || caption.Y0 < -p.Height {
			t.Errorf("%s: TOP at %v, caption at %v about %v", name, top, caption, b)
		}
		if words := texts[slices.IndexFunc(texts, func(p sheettest.Placed) bool { return strings.Contains(p.Item.(draw.Text).Content, "face") })].Item.(draw.Text).Content; words != c.caption {
			t.Errorf("%s: captioned %q, want %q", name, words, c.caption)
		}
		arrow := shapes[slices.IndexFunc(shapes, func(s draw.Shape) bool {
			return s.Fill == draw.Black && len(s.Path.Coords()) > 6 && s.Path.Bounds().Y0 >= b.Y1
		})].Path.Bounds()
		if math.Abs(arrow.X0+arrow.X1-p.Width) > 1e-6 || arrow.Y1 > 1e-6 || arrow.Y0-b.Y1 > 2 {
			t.Errorf("%s: the arrow is %v over %v", name, arrow, b)
		}
	}
}

// housing is a turned part with a thread inside and one outside, a keyway and a
// groove in its front.
func housing() *plan.PartPlan {
	p := sheettest.HousingPart()
	p.Section.Threads = append(p.Section.Threads, plan.ThreadLine{FromMm: 26, ToMm: 40, RadiusMm: 48, CrestMm: 50})
	p.Keyways = []plan.KeywayRow{{FromMm: 30, ToMm: 50, DiameterMm: 100, DepthMm: 6, RunoutMm: 8}}
	p.Grooves = []plan.GrooveRow{{Face: "front", ToMm: 3, InnerMm: 96, OuterMm: 110}}
	return p
}

// TestSectionIsToScale: corners, threads, keyway, groove and openings of a
// section lie where the plan has them, on both sides of the axis.
// TestCrossesKeepApart: the crosses of two holes that lie 2 mm apart on paper, or 1 mm,
// end before they meet, and their circles do not touch.
func TestCrossesKeepApart(t *testing.T) {
	t.Parallel()
	for apart, want := range map[float64][2]float64{16: {0.6, 0.85}, 8: {0.4, 0.4}, 40: {0.6, 1.4}} { // radius and arm
		r, arm := want[0], want[1]
		face := &plan.Face{Face: "front", MinMm: plan.XY{XMm: -200, YMm: -100}, MaxMm: plan.XY{XMm: 200, YMm: 100},
			Holes: []plan.Hole{{N: 1, DiameterMm: 3}, {N: 2, XMm: apart, DiameterMm: 3}}, Outline: "M-200 -100L200 -100L200 100L-200 100Z"}
		p := picture.Face(face, 25)
		shapes, _ := drawn(t, p.Drawn())
		var ends []float64
		for _, h := range straight(shapes, draw.HairMm) {
			if h[1] == h[3] {
				ends = append(ends, h[0], h[2])
			}
		}
		holes := rings(shapes, func(s draw.Shape) bool { return s.WidthMm == 0.25 })
		if len(ends) != 4 || ends[1] > ends[2]-0.2 || math.Abs(holes[0][2]-r) > 1e-9 || math.Abs(ends[1]-holes[0][0]-arm) > 1e-9 {
			t.Errorf("%g apart: crosses from and to %v, circles %v", apart, ends, holes)
		}
	}
}

func TestSectionIsToScale(t *testing.T) {
	t.Parallel()
	part := housing()
	features := part.Features[:6]
	const w, h = 84.0, 90.0 // 1.5 along, 0.75 across
	p := picture.Section(part, features, w, h)
	shapes, texts := drawn(t, &p.Draw)
	within(t, "section", p, texts)
	axis := straight(shapes, draw.ThinMm)
	i := slices.IndexFunc(axis, func(l [4]float64) bool { return l[1] == l[3] && math.Abs(l[2]-l[0]-w-8) < 1e-6 })
	if i < 0 {
		t.Fatal("no axis")
	}
	x0, y0 := axis[i][0]+4, axis[i][1]
	at := func(z, r float64) (x, y float64) { return x0 + z*w/56, y0 + r*h/120 }
	line := func(z0, r0, dy0, z1, r1, dy1 float64) [4]float64 {
		ax, ay := at(z0, r0)
		bx, by := at(z1, r1)
		return [4]float64{ax, ay + dy0, bx, by + dy1}
	}
	if math.Abs(2*x0+w-p.Width) > 1e-6 || y0+h/2 > -picture.BalloonRowMm+1e-6 || y0-h/2 < -p.Height+picture.CaptionMm-1e-6 {
		t.Errorf("the section stands at %g, %g in %g × %g", x0, y0, p.Width, p.Height)
	}
	corner := func(c canvas.Point, z, r float64) bool {
		x, y := at(z, r)
		return math.Hypot(c.X-x, c.Y-y) < 1e-6
	}
	path := func(what string, want ...plan.XY) {
		t.Helper()
		if !slices.ContainsFunc(shapes, func(s draw.Shape) bool {
			c := s.Path.Coords()
			for k, q := range want {
				if k >= len(c) || !corner(c[k], q.XMm, q.YMm) {
					return false
				}
			}
			return true
		}) {
			t.Errorf("no %s", what)
		}
	}
	cut := slices.Concat(part.Section.Outer, []plan.XY{{XMm: 56, YMm: 30}, {XMm: 25, YMm: 30}, {XMm: 25, YMm: 45}, {YMm: 45}})
	path("metal", cut...)
	path("outside", plan.XY{}, plan.XY{YMm: -59}, plan.XY{XMm: 1, YMm: -60}, plan.XY{XMm: 26, YMm: -60}, plan.XY{XMm: 26, YMm: -50}, plan.XY{XMm: 56, YMm: -50}, plan.XY{XMm: 56})
	// The cutter has a radius of (8² + 6²) / (2 × 6), its middle over the ends of the floor.
	r := 25.0 / 3
	var pocket []plan.XY
	for i := range 26 {
		z, off := 30.0, float64(i-12)*2/3
		if i > 12 {
			z, off = 50, off-2.0/3
		}
		pocket = append(pocket, plan.XY{XMm: z + off, YMm: 44 + r - math.Sqrt(r*r-off*off)})
	}
	path("keyway", pocket...)
	path("port", plan.XY{XMm: 35.5, YMm: 50}, plan.XY{XMm: 44.5, YMm: 50}, plan.XY{XMm: 44.5, YMm: 30}, plan.XY{XMm: 35.5, YMm: 30})
	path("groove", plan.XY{YMm: 48}, plan.XY{XMm: 3, YMm: 48}, plan.XY{XMm: 3, YMm: 55}, plan.XY{YMm: 55})
	for what, want := range map[string][4]float64{
		"thread inside": line(36, 30, 0.9, 56, 30, 0.9), "thread outside": line(26, 48, 0, 40, 48, 0), "thread outside, below": line(26, -48, 0, 40, -48, 0),
		"port": line(40, 50, 1.5, 40, 30, -1.5),
	} {
		if !has(axis, want) {
			t.Errorf("no %s at %v", what, want)
		}
	}
	dots := rings(shapes, func(s draw.Shape) bool { return s.Fill == draw.Black })
	for _, f := range features {
		x, y := at(f.Balloon.XMm, f.Balloon.YMm)
		if !slices.ContainsFunc(dots, func(d [3]float64) bool { return math.Hypot(d[0]-x, d[1]-y) < 1e-6 }) {
			t.Errorf("no leader to %s", f.Name)
		}
	}
	balloons := rings(shapes, func(s draw.Shape) bool { return s.Fill == draw.White })
	for i, o := range balloons {
		if math.Abs(o[1]+draw.BalloonMm+0.5) > 1e-6 || o[0] < draw.BalloonMm-1e-6 || o[0] > p.Width-draw.BalloonMm+1e-6 {
			t.Errorf("a balloon stands at %v", o)
		}
		for _, q := range balloons[:i] {
			if math.Abs(q[0]-o[0]) < picture.BalloonStepMm-1e-6 {
				t.Errorf("balloons at %v and %v", o, q)
			}
		}
	}
	// A flat part is cut on both sides.
	ring := sheettest.RingPart(600)
	p = picture.Section(ring, nil, 10, 80)
	shapes, _ = drawn(t, &p.Draw)
	if n := len(slices.DeleteFunc(slices.Clone(shapes), func(s draw.Shape) bool { return s.Fill != draw.Pale })); n != 2 {
		t.Errorf("%d cut surfaces", n)
	}
	if a, b := shapes[0].Path.Bounds(), shapes[3].Path.Bounds(); math.Abs(a.Y1-a.Y0-8) > 1e-6 || math.Abs(a.Y1-b.Y0-80) > 1e-6 || math.Abs(b.H()-8) > 1e-6 {
		t.Errorf("cut surfaces %v and %v", a, b) // 60 of 600 mm is a tenth of 80
	}
}

// TestPaper: what is low stands at its place, the rest to scale.
func TestPaper(t *testing.T) {
	t.Parallel()
	v := picture.Paper{Low: plan.XY{XMm: -100, YMm: 50}, X: 7, Y: -90, Scale: 0.25}
	for q, want := range map[plan.XY][2]float64{{XMm: -100, YMm: 50}: {7, -90}, {XMm: 0, YMm: 50}: {32, -90}, {XMm: -100, YMm: 90}: {7, -80}} {
		if x, y := v.At(q); x != want[0] || y != want[1] {
			t.Errorf("%v is at %g, %g", q, x, y)
		}
	}
	loop := []plan.XY{{XMm: -100, YMm: 50}, {XMm: 0, YMm: 50}, {XMm: 0, YMm: 90}}
	for kind, want := range map[plan.ShapeKind]struct{ width, least float64 }{plan.ShapePart: {0.7, 3}, plan.ShapeCup: {0.45, 3}, plan.ShapeCone: {0.45, 3}, plan.ShapeBead: {0, 1}, plan.ShapeScrew: {0.45, 1}} {
		var d draw.Drawing
		v.Shape(&d, &plan.Shape{Kind: kind, Loops: [][]plan.XY{loop}}, 0.7)
		last := d.Items[len(d.Items)-1].(draw.Shape)
		if b := last.Path.Bounds(); b.X0 != 7 || b.Y0 != -90 || b.X1 != 32 || b.Y1 != -80 || last.WidthMm != want.width || len(d.Items) != int(want.least) {
			t.Errorf("%v: %v, %v wide, %d items", kind, b, last.WidthMm, len(d.Items))
		}
	}
	var d draw.Drawing
	v.Lines(&d, [][]plan.XY{loop[:2]}, 0.5)
	v.Centres(&d, [][2]plan.XY{{loop[1], loop[2]}})
	for i, want := range [][4]float64{{7, -90, 32, -90}, {32, -90, 32, -80}} {
		if c := d.Items[i].(draw.Shape).Path.Coords(); [4]float64{c[0].X, c[0].Y, c[1].X, c[1].Y} != want {
			t.Errorf("line %d: %v", i, c)
		}
	}
	// Two parts that lie beside each other are not hatched alike.
	seen := map[string]bool{}
	for item := range 6 {
		var d draw.Drawing
		v.Shape(&d, &plan.Shape{Kind: plan.ShapePart, Item: item, Loops: [][]plan.XY{loop}}, 0.7)
		seen[d.Items[1].(draw.Group).Drawing.Items[0].(draw.Shape).Path.ToSVG()] = true
	}
	if len(seen) != 6 {
		t.Errorf("%d hatchings of 6", len(seen))
	}
}

// TestPaperBreaks: what goes on past the window has no edge there but a thin wave, which ends where the
// edges do; without a window all is edge.
func TestPaperBreaks(t *testing.T) {
	t.Parallel()
	loop := []plan.XY{{XMm: 2, YMm: 4}, {XMm: 20, YMm: 4}, {XMm: 20, YMm: 10}, {XMm: 2, YMm: 10}}
	for high, want := range map[plan.XY][]float64{{}: {0.7}, {XMm: 30, YMm: 12}: {0.7}, {XMm: 20, YMm: 12}: {draw.HairMm, 0.7}} {
		v := picture.Paper{High: high, Scale: 1}
		var d draw.Drawing
		v.Shape(&d, &plan.Shape{Kind: plan.ShapePart, Loops: [][]plan.XY{loop}}, 0.7)
		var got []float64
		var last draw.Shape
		for _, item := range d.Items {
			if s, ok := item.(draw.Shape); ok && s.WidthMm > 0 {
				got, last = append(got, s.WidthMm), s
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("window to %v: lines %v wide, want %v", high, got, want)
		}
		if c := last.Path.Coords(); len(want) > 1 && (last.Path.Closed() || c[0].X != 20 || c[0].Y != 10 || c[len(c)-1].X != 20 || c[len(c)-1].Y != 4) {
			t.Errorf("the edge goes %v", c)
		}
	}
}
