package picture

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
)

// inPanel is a section 100 mm long and high, drawn 1:1 from x 3, in a panel 120 mm wide.
func inPanel() *dimensioned {
	return &dimensioned{s: &plan.Section{LengthMm: 100}, w: 100, h: 100, hi: 100, x0: 3, p: draw.Panel{Width: 120}, rows: [2]int{2, 1}}
}

// TestChainTexts: the texts of a chain stand over the middles of their lengths between the extension lines at the ends,
// every second one in a row 3.9 mm higher, with a line from under it past the texts of the first to the middle of what it
// measures; what has no room between the ends stands beyond one, on its line made longer; a length has arrows from 6.6 mm on.
func TestChainTexts(t *testing.T) {
	t.Parallel()
	width := func(digits int) float64 { return draw.TextWidth(strings.Repeat("8", digits), sizeEmMm, true) + 1.2 }
	for _, c := range []struct {
		ends   [][2]float64
		digits []int
		middle []float64 // of the texts
	}{
		{[][2]float64{{0, 40}, {40, 90}}, []int{12, 12}, []float64{23, 68}},
		{[][2]float64{{0, 4}, {10, 100}}, []int{12, 12}, []float64{3 + width(12)/2, 58}},
		{[][2]float64{{0, 60}, {90, 95}}, []int{1, 12}, []float64{33, 103 - width(12)/2}},
		{[][2]float64{{0, 100}}, []int{50}, []float64{10 + 103 + width(50)/2}},
	} {
		v := inPanel()
		var dims []plan.Dimension
		for i, e := range c.ends {
			dims = append(dims, plan.Dimension{FromMm: e[0], ToMm: e[1], Text: strings.Repeat("8", c.digits[i])})
		}
		if len(dims) == 1 { // no room between the ends
			v.x0, v.p.Width, v.rows[0] = 13, 13+100+2*width(50), 1
		}
		v.chain(dims, 50, 40, 0)
		over := &draw.Drawing{Items: v.over}
		for i, at := range textsIn(over) {
			row := float64(i % 2)
			if !near(at.XMm, c.middle[i]) || !near(at.YMm, 50.9+3.9*row) {
				t.Errorf("%v: text %d stands at %v, %v, want %v", c.ends, i, at.XMm, at.YMm, c.middle[i])
			}
			if led := hasLine(&v.p.Draw, at.XMm, 54.4, 3+(c.ends[i][0]+c.ends[i][1])/2, 50.9+draw.AscentMm*sizeEmMm+0.1, draw.HairMm); led != (row == 1) {
				t.Errorf("%v: text %d has a line: %v", c.ends, i, led)
			}
		}
		if longer := len(dims) == 1; hasLine(&v.p.Draw, v.x0, 50, v.x0+100+width(50), 50, draw.ThinMm) != longer {
			t.Errorf("%v: a line made longer: %v", c.ends, !longer)
		}
	}
	for long, arrows := range map[float64]int{6.59: 0, 6.61: 2} {
		v := inPanel()
		v.chain([]plan.Dimension{{FromMm: 0, ToMm: long, Text: "8"}}, 50, 40, 0)
		n := len(slices.DeleteFunc(slices.Clone(v.p.Draw.Items), func(item draw.Item) bool {
			s, ok := item.(draw.Shape)
			return !ok || s.Fill != draw.Black
		}))
		if n != arrows {
			t.Errorf("%v long: %d arrows", long, n)
		}
	}
}

// TestFoldedSides: a length lies over or under the metal where its flange looks up or down by more than 30°, and has
// its room there; its text stands at that side of its line, or beside it where the flange looks more to a side.
func TestFoldedSides(t *testing.T) {
	t.Parallel()
	for deg := 0.0; deg < 360; deg += 7 {
		for _, limits := range []string{"", "29 – 31"} {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			v := &plan.FoldView{MinMm: plan.XY{XMm: -50}, MaxMm: plan.XY{XMm: 50, YMm: 40},
				Dims: []plan.FoldLength{{FromMm: plan.XY{XMm: 10, YMm: 20}, ToMm: plan.XY{XMm: 16, YMm: 24}, Out: plan.XY{XMm: cos, YMm: sin}, Text: "30", Limits: limits}}}
			p := Folded(v, 152, 200) // 1:1
			above, below := 2.0, 2.0
			if sin > 0.5 {
				above = 13.6
			} else if sin < -0.5 {
				below = 13.6
			}
			if !near(p.Height, 40+above+below+6.2) || !near(p.Width, 152) {
				t.Errorf("%v°: %v high, %v wide", deg, p.Height, p.Width)
			}
			// The line, 5 mm off, and the text 1.2 mm further.
			ax, ay := 26+60+5*cos, -above-20+5*sin
			if !hasLine(&p.Draw, ax, ay, ax+6, ay+4, draw.ThinMm) {
				t.Errorf("%v°: no line from %v, %v in %v", deg, ax, ay, lines(&p.Draw))
			}
			x, y, align := ax+3+1.2*cos, ay+2+1.2*sin, draw.Centre
			if cos > 0.5 {
				x, align = ax+6+1.2, draw.Left
			} else if cos < -0.5 {
				x, align = ax-1.2, draw.Right
			}
			base := []float64{y + 0.4, y - 2.7}
			switch {
			case sin > 0.5 && limits == "":
				base[0] = y
			case sin > 0.5:
				base = []float64{y + 3.24, y}
			case sin < -0.5:
				base = []float64{y - 3.4, y - 6.64}
			}
			texts := textsIn(&p.Draw)
			for i, want := range []string{"30", limits} {
				if want != "" && (texts[i].Content != want || !near(texts[i].XMm, x) || !near(texts[i].YMm, base[i]) || texts[i].Align != align) {
					t.Errorf("%v°: %+v, want it at %v, %v", deg, texts[i], x, base[i])
				}
			}
		}
	}
}

// TestLipsApart: the lengths of two lips that turn to each other stand 1.5 mm apart, each as far aside as the other;
// those that have room, or lie at other heights or on the other side of the metal, stay over their lines.
func TestLipsApart(t *testing.T) {
	t.Parallel()
	const limits = "29 – 31"
	wide := draw.TextWidth(limits, draw.SmallMm, false)
	for _, c := range []struct {
		apart, y, out float64 // of the second line from the first
		aside         float64
	}{{10, 0, -1, (wide + 1.5 - 10) / 2}, {wide + 1.4, 0, -1, 0.05}, {wide + 1.6, 0, -1, 0}, {10, 8.5, -1, (wide + 1.5 - 10) / 2}, {10, 8.7, -1, 0}, {10, 0, 1, 0}} {
		v := &plan.FoldView{MinMm: plan.XY{XMm: -50}, MaxMm: plan.XY{XMm: 50, YMm: 40}}
		for i, out := range []float64{-1, c.out} {
			from := plan.XY{XMm: float64(i) * c.apart, YMm: float64(i) * c.y}
			v.Dims = append(v.Dims, plan.FoldLength{FromMm: from, ToMm: from.Plus(plan.XY{XMm: 6}), Out: plan.XY{YMm: out}, Text: "30", Limits: limits})
		}
		p := Folded(v, 152, 200) // 1:1
		var got []float64
		for _, q := range textsIn(&p.Draw) {
			if q.Content == limits {
				got = append(got, q.XMm)
			}
		}
		if want := []float64{76 + 3 - c.aside, 76 + 3 + c.apart + c.aside}; len(got) != 2 || !near(got[0], want[0]) || !near(got[1], want[1]) {
			t.Errorf("%+v: %v, want %v", c, got, want)
		}
	}
}

// TestTurnsWhereTheyFit: the turn of a bend is written beside it, towards the middle, where the part is high enough and
// each bend has the width for it.
func TestTurnsWhereTheyFit(t *testing.T) {
	t.Parallel()
	const says = "90° R2"
	wide := draw.TextWidth(says, draw.SmallMm, false) + 3
	for _, c := range []struct {
		wide, high float64
		turns      int
		shown      bool
	}{
		{wide + 0.01, 20, 1, true}, {wide - 0.01, 20, 1, false}, {2*wide + 0.01, 20, 2, true}, {2*wide - 0.01, 20, 2, false},
		{60, 3*draw.SmallMm + 0.01, 1, true}, {60, 3*draw.SmallMm - 0.01, 1, false},
	} {
		v := &plan.FoldView{MinMm: plan.XY{XMm: -c.wide, YMm: -c.high}, MaxMm: plan.XY{XMm: c.wide, YMm: c.high}} // drawn 1:2
		for i := range c.turns {
			side := float64(2*i - 1)
			v.Turns = append(v.Turns, plan.FoldTurn{AtMm: plan.XY{XMm: side * c.wide, YMm: side * c.high}, Text: says})
		}
		p := Folded(v, c.wide+52, 300)
		texts := slices.DeleteFunc(textsIn(&p.Draw), func(q draw.Text) bool { return q.Content != says })
		if len(texts) > 0 != c.shown {
			t.Errorf("%v × %v: %d turns are written", c.wide, c.high, len(texts))
		}
		middle := -(2 + max(c.high, 17.2)/2)
		for i, at := range texts {
			side, align, up := float64(2*i-1), draw.Align(draw.Left), -1.5-draw.AscentMm*draw.SmallMm
			if i == 1 {
				align, up = draw.Right, 1.5
			}
			if !near(at.XMm, p.Width/2+side*(c.wide/2-1.5)) || !near(at.YMm, middle+side*c.high/2+up) || at.Align != align {
				t.Errorf("%v × %v: turn %d at %v, %v", c.wide, c.high, i, at.XMm, at.YMm)
			}
		}
	}
}

// TestBroken: a contour keeps its points and their order, from its first on where a wave ends there; each stretch along the
// window becomes a wave, and the rest are edges from wave to wave.
func TestBroken(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) plan.XY { return plan.XY{XMm: x, YMm: y} }
	v := &Paper{High: at(20, 12), Scale: 1}
	wave := func(p, q plan.XY) []plan.XY { return v.wave(p, q) }
	for name, c := range map[string]struct{ loop, closed, edges []plan.XY }{
		"inside":        {[]plan.XY{at(2, 4), at(9, 4), at(9, 8)}, []plan.XY{at(2, 4), at(9, 4), at(9, 8)}, nil},
		"at both sides": {[]plan.XY{at(0, 4), at(20, 4), at(20, 10), at(0, 10)}, slices.Concat([]plan.XY{at(0, 4)}, wave(at(20, 4), at(20, 10)), []plan.XY{at(20, 10)}, wave(at(0, 10), at(0, 4))), []plan.XY{at(0, 4), at(20, 4), at(20, 10), at(0, 10)}},
		"at the right":  {[]plan.XY{at(2, 4), at(20, 4), at(20, 10)}, slices.Concat(wave(at(20, 4), at(20, 10)), []plan.XY{at(20, 10), at(2, 4)}), []plan.XY{at(20, 10), at(2, 4), at(20, 4)}},
		"in a corner":   {[]plan.XY{at(20, 4), at(20, 12), at(2, 12)}, slices.Concat([]plan.XY{at(2, 12)}, wave(at(20, 4), at(20, 12)), wave(at(20, 12), at(2, 12))), []plan.XY{at(2, 12), at(20, 4)}},
		"all round":     {[]plan.XY{at(0, 0), at(20, 0), at(20, 12), at(0, 12)}, slices.Concat(wave(at(0, 0), at(20, 0)), wave(at(20, 0), at(20, 12)), wave(at(20, 12), at(0, 12)), wave(at(0, 12), at(0, 0))), nil},
	} {
		closed, edges := v.broken([][]plan.XY{c.loop})
		got := slices.Clone(closed[0])
		if name == "at the right" || name == "in a corner" { // it may begin at either wave
			got, c.closed = turnedTo(got, got[0]), turnedTo(c.closed, got[0])
		}
		if !slices.Equal(got, c.closed) || !slices.Equal(slices.Concat(edges...), c.edges) {
			t.Errorf("%s: %v with the edges %v, want %v and %v", name, got, edges, c.closed, c.edges)
		}
	}
}

// turnedTo is a loop from one of its points on.
func turnedTo(loop []plan.XY, first plan.XY) []plan.XY {
	i := max(0, slices.Index(loop, first))
	return slices.Concat(loop[i:], loop[:i])
}
