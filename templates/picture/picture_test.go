package picture

import (
	"math"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
)

// A leader ends in metal: not in a hole, and where the metal is widest.
func TestMetal(t *testing.T) {
	t.Parallel()
	square := func(x, y, w, h float64) []plan.XY {
		return []plan.XY{{XMm: x, YMm: y}, {XMm: x + w, YMm: y}, {XMm: x + w, YMm: y + h}, {XMm: x, YMm: y + h}}
	}
	for _, c := range []struct {
		loops, over [][]plan.XY
		low, high   plan.XY // where it ends
	}{
		{[][]plan.XY{square(100, 30, 40, 400)}, nil, plan.XY{XMm: 120, YMm: 50}, plan.XY{XMm: 120, YMm: 410}},
		{[][]plan.XY{square(0, 0, 100, 100), square(10, 40, 80, 20)}, nil, plan.XY{XMm: 50, YMm: 15}, plan.XY{XMm: 50, YMm: 85}},
		{[][]plan.XY{square(0, 0, 100, 10), square(0, 90, 60, 20)}, nil, plan.XY{XMm: 30, YMm: 95}, plan.XY{XMm: 30, YMm: 105}},
		{[][]plan.XY{square(0, 0, 100, 40)}, [][]plan.XY{square(20, -10, 60, 100)}, plan.XY{XMm: 10, YMm: 9}, plan.XY{XMm: 10, YMm: 31}}, // a screw goes through it
		{[][]plan.XY{square(0, 0, 100, 40)}, [][]plan.XY{square(-5, 10, 200, 90)}, plan.XY{XMm: 50, YMm: 3}, plan.XY{XMm: 50, YMm: 7}},
	} {
		if got := Metal(c.loops, []*plan.Shape{{Loops: c.over}}); got.XMm < c.low.XMm || got.XMm > c.high.XMm || got.YMm < c.low.YMm || got.YMm > c.high.YMm {
			t.Errorf("a leader to %v under %v ends at %v, want %v to %v", c.loops, c.over, got, c.low, c.high)
		}
	}
}

// No edge is seen between two equal chords of an arc; one is at a corner, at the
// ends, where a taper of 1:10 begins, and between chords that are not equal.
func TestOnArc(t *testing.T) {
	t.Parallel()
	line := []plan.XY{{XMm: 0, YMm: 10}}
	for i := range 7 { // R5, in sixths of a right angle, from the face at 10 up to 15
		a := float64(i) * math.Pi / 12
		line = append(line, plan.XY{XMm: 10 + 5*(1-math.Cos(a)), YMm: 10 + 5*math.Sin(a)})
	}
	line = append(line, plan.XY{XMm: 30, YMm: 15}, plan.XY{XMm: 50, YMm: 14})
	want := []bool{false, false, true, true, true, true, true, false, false, false}
	for i := range line {
		if got := onArc(line, i); got != want[i] {
			t.Errorf("%v: %v", line[i], got)
		}
	}
}

// A surface is shown where nothing is cut into it that has a label of its own: beside a keyway
// the longer rest, of what is all cut away the whole.
func TestStretch(t *testing.T) {
	t.Parallel()
	d := func(from, to float64) plan.Dimension { return plan.Dimension{FromMm: from, ToMm: to} }
	step := d(10, 60)
	for _, c := range []struct {
		cut      []plan.Dimension
		from, to float64
	}{
		{nil, 10, 60},
		{[]plan.Dimension{d(20, 30)}, 30, 60},
		{[]plan.Dimension{d(25, 55)}, 10, 25},
		{[]plan.Dimension{d(40, 50), d(0, 20)}, 20, 40},
		{[]plan.Dimension{d(60, 80), d(0, 200)}, 10, 60},
		{[]plan.Dimension{d(10, 35), d(35, 60)}, 10, 60},
	} {
		if from, to := stretch(step, append(c.cut, step)); from != c.from || to != c.to {
			t.Errorf("%v: from %v to %v, want %v to %v", c.cut, from, to, c.from, c.to)
		}
	}
}

// A number is read as that of a hole where no other hole lies as near and no circle
// between: of a hole at 10 in a bore line of 14, not from outside it; not from between two holes.
func TestOwnNumber(t *testing.T) {
	t.Parallel()
	f := &facePicture{scale: 1, face: &plan.Face{
		Holes:   []plan.Hole{{N: 1, XMm: 10, DiameterMm: 2}, {N: 2, XMm: 10, YMm: 8, DiameterMm: 2}},
		Circles: []plan.Circle{{DiameterMm: 28}, {DiameterMm: 20, Pitch: true}},
	}}
	for _, c := range []struct {
		x, y float64
		want bool
	}{{12.5, 0, true}, {16, 0, false}, {10, 4, false}, {7.5, 0, true}, {10, 7, false}} {
		if got := f.own(draw.R(c.x-0.5, c.y-0.5, c.x+0.5, c.y+0.5), 10, 0, 1); got != c.want {
			t.Errorf("a number at %g, %g: %v", c.x, c.y, got)
		}
	}
}

// Of a group of holes none of whose numbers has room beside it the first has it at the end of a line,
// which runs over no other hole.
func TestFirstNumber(t *testing.T) {
	t.Parallel()
	face := &plan.Face{Face: "front", MinMm: plan.XY{XMm: -160, YMm: -160}, MaxMm: plan.XY{XMm: 160, YMm: 160}, Circles: []plan.Circle{{DiameterMm: 230}, {DiameterMm: 265, Pitch: true}, {DiameterMm: 348, Pitch: true}}}
	for i, q := range []plan.XY{{XMm: 94, YMm: 94}, {XMm: 94, YMm: -94}, {XMm: -94, YMm: -94}, {XMm: -94, YMm: 94}} {
		face.Holes = append(face.Holes, plan.Hole{N: 1 + i, Group: "motor", XMm: q.XMm, YMm: q.YMm, DiameterMm: 14.5})
	}
	for i, q := range []plan.XY{{XMm: 123, YMm: 123}, {XMm: 123, YMm: -123}, {XMm: -123, YMm: -123}, {XMm: -123, YMm: 123}} {
		face.Holes = append(face.Holes, plan.Hole{N: 5 + i, Group: "pillars", XMm: q.XMm, YMm: q.YMm, DiameterMm: 17.5})
	}
	p := Face(face, 26)
	said := map[string]bool{}
	for _, item := range p.Drawn().Items {
		if text, ok := item.(draw.Text); ok {
			said[text.Content] = true
		}
	}
	if !said["1"] || !said["5"] {
		t.Errorf("numbers %v", said)
	}
	f := &facePicture{scale: 1, face: &plan.Face{Holes: []plan.Hole{{N: 1, XMm: 10, DiameterMm: 2}, {N: 2, XMm: 20, DiameterMm: 2}}}, room: draw.NewOccupied(draw.R(-40, -40, 40, 40))}
	f.room.AddText(draw.R(4, -1, 5, 1))
	for x, want := range map[float64]bool{0: false, 7: true, 15: true, 30: false} {
		if _, ok := f.led(draw.R(x-1, -1, x+1, 1), 10, 0, 1); ok != want {
			t.Errorf("a line from a number at %g: %v", x, ok)
		}
	}
}

// Between a rim and a spigot's circle there is no room for a number: two holes and a slot there have
// theirs beside the face, at the end of a line.
func TestNumberBesideTheFace(t *testing.T) {
	t.Parallel()
	const rim = 89.0
	face := &plan.Face{Face: "back", Outline: "M89 0A89 89 0 0 1 -89 0A89 89 0 0 1 89 0z", MinMm: plan.XY{XMm: -rim, YMm: -rim}, MaxMm: plan.XY{XMm: rim, YMm: rim},
		Circles: []plan.Circle{{DiameterMm: 110}, {DiameterMm: 77}}, Holes: []plan.Hole{{N: 5, Group: "vent", XMm: 72, DiameterMm: 6}, {N: 6, Group: "arm", XMm: -72, DiameterMm: 8}},
		Slots: []plan.Slot{{N: 7, YMm: -72, WidthMm: 8, EndsMm: [2]plan.XY{{XMm: 10, YMm: -72}, {XMm: -10, YMm: -72}}}}}
	p := Face(face, 18)
	said := map[string]draw.Text{}
	for _, item := range p.Drawn().Items {
		if text, ok := item.(draw.Text); ok {
			said[text.Content] = text
		}
	}
	for number, side := range map[string]float64{"5": 1, "6": -1} {
		if text, ok := said[number]; !ok || side*(text.XMm+0.7-p.Width/2) < 9 || text.XMm < 0 || text.XMm+1.4 > p.Width {
			t.Errorf("%s stands at %v in a picture %g wide", number, text, p.Width)
		}
	}
	if _, ok := said["7"]; !ok {
		t.Error("the slot has no number")
	}
}

// What is cut on both sides of the axis is drawn so, at one scale: a cone of radii 60 to 15 and
// 90 high, its end 20 to TOP, is at TOP 60 to 35 and at 180° 60 to -5 below the axis.
func TestWholeSection(t *testing.T) {
	t.Parallel()
	xy := func(z, y float64) plan.XY { return plan.XY{XMm: z, YMm: y} }
	part := &plan.PartPlan{Section: &plan.Section{LengthMm: 90, MaxMm: 60, Outer: []plan.XY{xy(0, 60), xy(90, 15)}, Inner: []plan.XY{xy(0, 58), xy(90, 13)},
		Whole: [][]plan.XY{{xy(0, 60), xy(90, 35), xy(90, 33), xy(0, 58)}, {xy(0, -60), xy(90, 5), xy(90, 7), xy(0, -58)}}},
		Dimensions: []plan.Dimension{{Kind: plan.OverallDim, ToMm: 90, Text: "(90)"}, {Kind: plan.OffsetDim, FromMm: 90, ToMm: 90, RadiusMm: 20, Text: "20"}}}
	p := Dimensioned(part, 90, 70)
	walls, said := []draw.Rect{}, map[string]bool{}
	for _, item := range p.Drawn().Items {
		if s, ok := item.(draw.Shape); ok && s.Fill == draw.Pale {
			b := s.Path.Bounds()
			walls = append(walls, draw.R(b.X0, b.Y0, b.X1, b.Y1))
		}
		if text, ok := item.(draw.Text); ok {
			said[text.Content] = true
		}
	}
	if len(walls) != 2 || !said["TOP"] || !said["20"] {
		t.Fatalf("%v, %v", walls, said)
	}
	part.Section.Up = "3 o'clock" // the cut from 9 o'clock to there
	side := Dimensioned(part, 90, 70)
	if said := textsIn(side.Drawn()); !slices.ContainsFunc(said, func(q draw.Text) bool { return q.Content == "3 o'clock" }) || slices.ContainsFunc(said, func(q draw.Text) bool { return q.Content == "TOP" }) {
		t.Errorf("%v", said)
	}
	k := walls[0].Width() / 90
	if math.Abs(walls[0].Height()-27*k) > 1e-9 || math.Abs(walls[1].Height()-67*k) > 1e-9 || math.Abs(walls[0].Y1-walls[1].Y0-120*k) > 1e-9 {
		t.Errorf("%v at %g", walls, k)
	}
}

// The texts of lengths that have no room over their own lines stand in further rows, each over
// the middle of its own.
func TestChainRows(t *testing.T) {
	t.Parallel()
	part := &plan.PartPlan{Section: &plan.Section{LengthMm: 80, MaxMm: 80, Outer: []plan.XY{{YMm: 80}, {XMm: 80, YMm: 80}}},
		Dimensions: []plan.Dimension{{Kind: plan.OverallDim, ToMm: 80, Text: "2.8125 in"}}}
	for i, text := range []string{"(2 in)", "0.625 in", "0.1875 in", "0.25 in"} {
		part.Dimensions = append(part.Dimensions, plan.Dimension{Kind: plan.LengthDim, FromMm: []float64{0, 50, 68, 73}[i], ToMm: []float64{50, 68, 73, 80}[i], Text: text})
	}
	at := map[string]draw.Text{}
	p := Dimensioned(part, 120, 64)
	for _, item := range p.Drawn().Items {
		if text, ok := item.(draw.Text); ok {
			at[text.Content] = text
		}
	}
	a, b := at["0.625 in"], at["0.1875 in"]
	if a.YMm == b.YMm || math.Abs(a.XMm-b.XMm) > 13.5/80*70+6 {
		t.Errorf("%+v, %+v", a, b)
	}
}

// The words under a narrow face, 10 of 100, stand whole.
func TestNarrowFace(t *testing.T) {
	t.Parallel()
	p := Face(&plan.Face{Face: parts.Front, Outline: "M0 0L10 0L10 100L0 100Z", MaxMm: plan.XY{XMm: 10, YMm: 100}}, 20)
	for _, item := range p.Drawn().Items {
		if text, ok := item.(draw.Text); ok && text.Content == "FRONT face" {
			if r := draw.TextRect(text); r.X0 < 0 || r.X1 > p.Width {
				t.Errorf("%v in %g", r, p.Width)
			}
			return
		}
	}
	t.Error("no FRONT face")
}

// A long text over a narrow groove at the end of a shaft ends at the edge of the picture, and its leader goes
// straight down from it.
func TestLabelsStraight(t *testing.T) {
	t.Parallel()
	part := &plan.PartPlan{Section: &plan.Section{LengthMm: 100, MaxMm: 20, Outer: []plan.XY{{YMm: 20}, {XMm: 100, YMm: 20}}},
		Dimensions: []plan.Dimension{{Kind: plan.OverallDim, ToMm: 100, Text: "100"}, {Kind: plan.DiameterDim, FromMm: 97, ToMm: 98, RadiusMm: 20, Text: "Ø38 h11 × 1.3 H13 in the seat"},
			{Kind: plan.DiameterDim, FromMm: 0, ToMm: 90, RadiusMm: 20, Text: "Ø40 k6 (40.002 – 40.018) hardened and ground"}}}
	p := Dimensioned(part, 100, 60)
	n := 0
	for _, item := range p.Drawn().Items {
		if s, ok := item.(draw.Shape); ok && s.Fill == draw.Black && s.Path.Bounds().H() > s.Path.Bounds().W() {
			if n++; s.Path.Bounds().W() > 0.8 {
				t.Errorf("a leader leans: its arrow is %g wide", s.Path.Bounds().W())
			}
		}
	}
	if n != 2 {
		t.Errorf("%d leaders", n)
	}
}

// A tapped hole on the axis is cut out of the metal up to its drill; its thread has a thin line at the root,
// 0.9 mm off the crest at least, and a thick one across at the end of the full thread, ISO 6410-1.
func TestHoleOnTheAxis(t *testing.T) {
	t.Parallel()
	xy := func(z, y float64) plan.XY { return plan.XY{XMm: z, YMm: y} }
	for scale, root := range map[float64]float64{1: 5.1 + 0.9, 2: 12} {
		at := func(q plan.XY) (x, y float64) { return q.XMm * scale, q.YMm * scale }
		hole := plan.AxisHole{Line: []plan.XY{xy(100, 5.1), xy(64, 5.1), xy(61, 0)}, Thread: &plan.ThreadLine{FromMm: 100, ToMm: 72, RadiusMm: 6, CrestMm: 5.1, Inside: true}}
		if scale == 1 {
			hole.Thread.RadiusMm = 5.5
		}
		part := &plan.PartPlan{Section: &plan.Section{OnAxis: []plan.AxisHole{hole}}}
		d := draw.Drawing{}
		cutIn(&d, part, at)
		var thin, across, white bool
		for _, item := range d.Items {
			s := item.(draw.Shape)
			b := s.Path.Bounds()
			white = white || s.Fill == draw.White && b.X0 == 61*scale && b.X1 == 100*scale && b.Y0 == 0 && b.Y1 == 5.1*scale
			thin = thin || s.WidthMm == draw.ThinMm && b.X0 == 72*scale && b.X1 == 100*scale && b.Y0 == root && b.Y1 == root
			across = across || s.WidthMm == draw.LineMm && b.X0 == 72*scale && b.X1 == 72*scale && b.Y0 == 0 && b.Y1 == root
		}
		if !white || !thin || !across {
			t.Errorf("at %g: cut %v, thread line %v, its end %v", scale, white, thin, across)
		}
	}
}

// Balloons for two spots one over the other stand a step apart about them, their leaders straight to them, in a row or in a column;
// one that leads to a bookmark does so over all of its circle.
func TestBalloons(t *testing.T) {
	t.Parallel()
	if got, want := LeadersMm([]Spot{{X: 50}, {X: 50}, {X: 90, Y: 5}}, 20, 0, 100), 2*math.Hypot(BalloonStepMm/2, 20)+15; math.Abs(got-want) > 1e-9 {
		t.Errorf("leaders of %v, want %v", got, want)
	}
	for column, want := range map[bool][2]plan.XY{false: {{XMm: 20, YMm: 70}, {XMm: 60, YMm: 70}}, true: {{XMm: 70, YMm: 3.4}, {XMm: 70, YMm: 40}}} {
		var d draw.Drawing
		spots := []Spot{{N: 2, X: 60, Y: 40, To: "b"}, {N: 1, X: 20, To: "a"}}
		if column {
			BalloonColumn(&d, spots, 70, 0, 100)
		} else {
			BalloonLine(&d, spots, 70, 0, 100)
		}
		n := 0
		for _, item := range d.Items {
			if link, ok := item.(draw.Link); ok {
				b := link.Path.Bounds()
				if mid := (plan.XY{XMm: (b.X0 + b.X1) / 2, YMm: (b.Y0 + b.Y1) / 2}); n > 1 || link.To != "ab"[n:n+1] || math.Hypot(mid.XMm-want[n].XMm, mid.YMm-want[n].YMm) > 1e-9 || math.Abs(b.W()-2*draw.BalloonMm) > 1e-9 {
					t.Errorf("column %v: link %d to %s about %v, %g wide", column, n, link.To, mid, b.W())
				}
				n++
			}
		}
		if n != 2 || spots[0] != (Spot{N: 1, X: 20, To: "a"}) || spots[1].X != 60 {
			t.Errorf("column %v: %d links, %+v", column, n, spots)
		}
	}
}
