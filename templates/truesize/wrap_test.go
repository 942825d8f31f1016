package truesize

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
)

// scales are the marks of a scale, from where they begin, and its texts.
func scales(d *draw.Drawing) (marks [][4]float64, texts []draw.Text) {
	for _, item := range d.Items {
		switch it := item.(type) {
		case draw.Text:
			texts = append(texts, it)
		case draw.Shape:
			for _, part := range it.Path.Split() {
				c := part.Coords()
				marks = append(marks, [4]float64{c[0].X, c[0].Y, c[1].X, c[1].Y})
			}
		}
	}
	return marks, texts
}

// TestClockScale: a mark at every 5° of the clock, or 15° where these are closer than
// 1.5 mm, longer at 10° and 30°; the numbers at 30° or 90° are those of their marks;
// what is marked is kept clear on the page.
func TestClockScale(t *testing.T) {
	t.Parallel()
	const ox, oy, y = 7.0, 11.0, 3.0
	for _, c := range []struct {
		kind        plan.DevelopmentKind
		perDeg      float64
		from        float64
		step, named int
	}{
		{plan.WrapPattern, 0.5, 0, 5, 30}, {plan.WrapPattern, -0.5, 0, 5, 30}, {plan.WrapPattern, 0.5, 200, 5, 30}, {plan.WrapPattern, 0.3, 0, 5, 30}, {plan.WrapPattern, 0.29, 0, 15, 30},
		{plan.WrapPattern, 0.19, 0, 15, 90}, {plan.MainPattern, 0.9, 45, 5, 10}, {plan.MainPattern, 0.8, 45, 5, 30}, {plan.MainPattern, -0.9, 300, 5, 10},
	} {
		name := fmt.Sprint(c)
		half := math.Abs(c.perDeg) * 180
		edge := draw.R(-half, y, half, y)
		p := &pattern{pl: &plan.Plan{}, dev: &plan.Development{Kind: c.kind, ScaleMm: c.perDeg, ScaleFromDeg: c.from}}
		room := draw.NewOccupied(draw.R(-400, -50, 400, 100))
		var d draw.Drawing
		p.clockScale(laid{Occupied: room, lines: &d, ox: ox, oy: oy}, edge)
		marks, texts := scales(&d)
		at := map[int]float64{} // x by degrees from the start of the edge
		want := 0
		for deg := -1080; deg <= 1440; deg += c.step {
			x := (float64(deg) - c.from) * c.perDeg
			if x < -half-1e-6 || x > half+1e-6 {
				continue
			}
			want++
			long := 2.0
			if deg%10 == 0 {
				long = 3
			}
			if deg%30 == 0 {
				long = 4.5
			}
			found := false
			for _, m := range marks {
				found = found || math.Abs(m[0]-x) < 1e-6 && m[2] == m[0] && m[1] == y && math.Abs(m[3]-y-long) < 1e-9
			}
			if !found {
				t.Errorf("%s: no mark %g long at %d°, %g mm", name, long, deg, x)
			}
			if room.Free(draw.R(ox+x, oy+y+1, ox+x, oy+y+1)) || room.Free(draw.R(ox+x, oy+y+long-0.1, ox+x, oy+y+long-0.1)) {
				t.Errorf("%s: the mark at %d° is not kept clear", name, deg)
			}
			if deg%c.named == 0 {
				at[deg] = x
			}
		}
		if len(marks) != want || want < 20 {
			t.Errorf("%s: %d marks, want %d", name, len(marks), want)
		}
		if len(texts) < len(at)-2 || len(texts) > len(at) {
			t.Errorf("%s: %d numbers of %d", name, len(texts), len(at))
		}
		for _, text := range texts {
			clock, _ := strconv.Atoi(strings.TrimSuffix(text.Content, "°"))
			r := draw.TextRect(text)
			near := false
			for deg, x := range at {
				if ((deg%360)+360)%360 == clock && x > r.X0-5 && x < r.X1+1 {
					near = true
				}
			}
			if !near || r.Y0 < y+4.5 || text.Bold != (clock == 0) {
				t.Errorf("%s: %q at %v", name, text.Content, r)
			}
			if room.ClearOfTexts(draw.R(ox+r.X0, oy+r.Y0, ox+r.X1, oy+r.Y1)) {
				t.Errorf("%s: %q is not kept clear", name, text.Content)
			}
		}
	}
	var d draw.Drawing
	(&pattern{dev: &plan.Development{}}).clockScale(laid{Occupied: draw.NewOccupied(draw.R(0, 0, 1, 1)), lines: &d}, draw.R(0, 0, 10, 0))
	if len(d.Items) != 0 {
		t.Errorf("a scale of nothing: %v", d.Items)
	}
}

// TestAxialRule: a mark at every millimetre, or eighth of an inch, from the seat edge
// up, numbered at its tens or inches, but not at the far edge.
func TestAxialRule(t *testing.T) {
	t.Parallel()
	const ox, oy, left = 7.0, 11.0, -30.0
	for _, c := range []struct {
		units       parts.Units
		wide        float64
		step        float64
		half, whole int
		numbers     string
	}{
		{parts.Millimetres, 32, 1, 5, 10, "10 20 30"}, {parts.Millimetres, 31.9, 1, 5, 10, "10 20"}, {parts.Millimetres, 25.5, 1, 5, 10, "10 20"}, {parts.Inches, 60, 25.4 / 8, 4, 8, "1 2"}, {parts.Inches, 52, 25.4 / 8, 4, 8, "1"},
	} {
		p := &pattern{pl: &plan.Plan{Units: c.units}, dev: &plan.Development{MinMm: plan.XY{XMm: left}, WidthMm: c.wide}}
		room := draw.NewOccupied(draw.R(-100, -50, 100, 100))
		var d draw.Drawing
		p.axialRule(laid{Occupied: room, lines: &d, ox: ox, oy: oy})
		marks, texts := scales(&d)
		if n := int(c.wide/c.step + 1e-9); len(marks) != n {
			t.Errorf("%v: %d marks, want %d", c, len(marks), n)
		}
		for i, m := range marks {
			y, long := float64(i+1)*c.step, 1.5
			if (i+1)%c.half == 0 {
				long = 2.5
			}
			if (i+1)%c.whole == 0 {
				long = 4
			}
			if m[0] != left || math.Abs(m[1]-y) > 1e-9 || m[3] != m[1] || math.Abs(m[2]-left-long) > 1e-9 {
				t.Errorf("%v: mark %d is %v, want %g long at %g", c, i+1, m, long, y)
			}
			if x := ox + left + long - 0.1; room.Free(draw.R(x, oy+y, x, oy+y)) || !room.Free(draw.R(ox+left-1.5, oy+y, ox+left-1, oy+y)) {
				t.Errorf("%v: mark %d is not kept clear", c, i+1)
			}
		}
		var numbers []string
		for _, text := range texts {
			numbers = append(numbers, text.Content)
			n, _ := strconv.Atoi(text.Content)
			y := float64(n) * c.step
			if c.units == parts.Inches {
				y = float64(n) * 25.4
			}
			r := draw.TextRect(text)
			if math.Abs((r.Y0+r.Y1)/2-y) > 0.2 || r.X0 < left+4 {
				t.Errorf("%v: %q at %v, its mark at %g", c, text.Content, r, y)
			}
			if room.ClearOfTexts(draw.R(ox+r.X0, oy+r.Y0, ox+r.X1, oy+r.Y1)) {
				t.Errorf("%v: %q is not kept clear", c, text.Content)
			}
		}
		if got := strings.Join(numbers, " "); got != c.numbers {
			t.Errorf("%v: numbers %q", c, got)
		}
	}
}

// TestSeatText: the words stand between two places, as near their middle as a line
// across it leaves room, and inside the wrap.
func TestSeatText(t *testing.T) {
	t.Parallel()
	const words = "SEAT EDGE: front"
	w := draw.TextWidth(words, draw.TextMm, true)
	for _, c := range []struct {
		wide, lo, hi float64
		line         bool // across the middle
		want         bool
	}{{40, 0, 100, false, true}, {40, 0, 100, true, true}, {40, 0, w + 2, false, true}, {40, 0, w - 1, false, false}, {10.9, 0, 100, false, false}, {11, 0, 100, false, true}, {40, 0, w + 2, true, false}} {
		p := &pattern{dev: &plan.Development{WidthMm: c.wide}}
		room := draw.NewOccupied(draw.R(-50, -50, 200, 200))
		if c.line {
			room.AddLine((c.lo+c.hi)/2, 0, (c.lo+c.hi)/2, 100)
		}
		s := &draw.Sheet{}
		got := p.seatText(laid{Sheet: s, Occupied: room, oy: 20}, words, c.lo, c.hi)
		if got != c.want || got != (len(s.Draw.Items) == 1) {
			t.Errorf("%+v: %v", c, got)
			continue
		}
		if !got {
			continue
		}
		r := draw.TextRect(s.Draw.Items[0].(draw.Text))
		off := math.Abs((r.X0+r.X1)/2 - (c.lo+c.hi)/2)
		if r.X0 < c.lo || r.X1 > c.hi+1 || r.Y0 < 20+4.5 || r.Y1 > 20+c.wide || c.line && (off < w/2+0.4 || off > w/2+4) || !c.line && off > 0.6 {
			t.Errorf("%+v: at %v, %g off the middle", c, r, off)
		}
		if room.ClearOfTexts(r) {
			t.Errorf("%+v: not kept clear", c)
		}
	}
}

// The number of an hour of the scale stands over its mark at 100, else right or left of it, else lower beside it;
// where all these places have lines it is left out, and never lies over one.
func TestHourKeepsOffOutlines(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		lines [][4]float64
		x, y  float64 // of the text's lower left; 0 for none
	}{
		{nil, 100 - draw.TextWidth("240°", draw.SmallMm, false)/2, 20},
		{[][4]float64{{100, 15, 100, 30}}, 100.8, 20},
		{[][4]float64{{100, 15, 100, 30}, {103, 15, 103, 30}}, 99.2 - draw.TextWidth("240°", draw.SmallMm, false), 20},
		{[][4]float64{{100, 15, 100, 30}, {90, 21.5, 110, 21.5}}, 100.8, 18.4},
		{[][4]float64{{90, 19, 110, 19}, {90, 20.5, 110, 20.5}}, 0, 0},
	} {
		l := laid{Occupied: draw.NewOccupied(draw.R(0, 0, 200, 200)), lines: &draw.Drawing{}}
		for _, q := range c.lines {
			l.AddLine(q[0], q[1], q[2], q[3])
		}
		l.hour(draw.Text{XMm: 100, YMm: 20, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "240°"}, 100)
		if c.x == 0 {
			if len(l.lines.Items) > 0 {
				t.Errorf("%v: %v", c.lines, l.lines.Items)
			}
			continue
		}
		if len(l.lines.Items) != 1 {
			t.Errorf("%v: %v", c.lines, l.lines.Items)
			continue
		}
		if r := draw.TextRect(l.lines.Items[0].(draw.Text)); math.Abs(r.X0-c.x) > 0.01 || math.Abs(l.lines.Items[0].(draw.Text).YMm-c.y) > 1e-9 {
			t.Errorf("%v: at %v, want %v, %v", c.lines, r, c.x, c.y)
		}
	}
}
