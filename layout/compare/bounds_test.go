package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// TestThing: a hexagon over corners of 20 is 20 · cos 30° = 17.32 wide, an octagon of 10 9.24.
func TestThing(t *testing.T) {
	t.Parallel()
	co := &comparison{want: plate(t)}
	for want, s := range map[string]Shape{
		"polygon of 6 sides, Ø20 over its corners and 17.32 mm between them": {Sides: 6, DiameterMm: 20},
		"polygon of 8 sides, Ø10 over its corners and 9.24 mm between them":  {Sides: 8, DiameterMm: 10},
		"circle Ø12.5":           {DiameterMm: 12.5, WidthMm: 12.5, HeightMm: 12.5},
		"contour of 30 × 7.5 mm": {WidthMm: 30, HeightMm: 7.5},
	} {
		if got := co.thing(&s); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestSaid: what is wrong with a drawing as a whole, to the digits that are said.
func TestSaid(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		code   Code
		report Report
		want   string
	}{
		{Turned, Report{TurnedDeg: -12.3456}, "the drawing is turned 12.35° anticlockwise"},
		{Turned, Report{TurnedDeg: 12.3456}, "the drawing is turned 12.35° clockwise"},
		{Turned, Report{TurnedDeg: -0.5}, "the drawing is turned 0.5° anticlockwise"},
		{Scale, Report{Scale: 1.234567}, "the drawing is 1.2346 times its size"},
		{Mirror, Report{}, "the drawing is a mirror image of the front"},
	} {
		co := &comparison{want: plate(t), report: &c.report}
		if got := co.say(&Finding{Code: c.code}); got != c.want {
			t.Errorf("%s: %q, want %q", c.code, got, c.want)
		}
	}
}

// An outline of half the size of the part's or twice is the outline, drawn wrongly; of
// less or more it is none. The plate is 200 by 120.
func TestOtherSize(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		w, h    string
		missing bool
	}{
		{"100", "120", false}, {"99.9", "120", true}, {"200", "60", false}, {"200", "59.9", true},
		{"400", "120", false}, {"400.1", "120", true}, {"200", "240", false}, {"200", "240.1", true},
	} {
		lines := drawing()
		lines[0] = `<rect x="20" y="20" width="` + c.w + `" height="` + c.h + `"/>`
		if got := slices.Contains(codes(compared(t, plate(t), svgFile(mmHead, lines))), OutlineMissing); got != c.missing {
			t.Errorf("an outline of %s × %s is missing: %v", c.w, c.h, got)
		}
	}
}

// A view box needs four numbers and no more.
func TestViewBox(t *testing.T) {
	t.Parallel()
	for box, good := range map[string]bool{"0 0 10 5": true, " 0,0 , 10 5 ": true, "0 0 10 5 1": false, "0 0 10 5x": false, "0 0 10 0": false, "0 0 0 5": false, "0 0 0.5 0.5": true, "0 0 -1 5": false} {
		if _, err := Read(strings.NewReader(`<svg viewBox="` + box + `"><rect width="1" height="1"/></svg>`)); (err == nil) != good {
			t.Errorf("view box %q: %v", box, err)
		}
	}
}

// bounded is a comparison of pieces that lie on the part already.
func bounded(want *Part, tol float64, closed ...*piece) *comparison {
	return &comparison{want: want, tol: tol, cut: map[string]bool{}, report: &Report{}, closed: closed}
}

func found(c *comparison) []Code {
	out := []Code{}
	for _, f := range c.report.Findings {
		out = append(out, f.Code)
	}
	return out
}

func rectangle(x, y, w, h float64) contour {
	return contour{closed: true, points: []point{xy(x, y), xy(x+w, y), xy(x+w, y+h), xy(x, y+h)}}
}

// What stands for a hole of 10 that is alone: a circle of more than 4 and less than 25 up
// to 36 away (0.45 of 80), or another shape of 4 to 16 up to 10 away, that stands for
// nothing else.
func TestStandsForAHole(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		p    piece
		want []Code
	}{
		{piece{round: true, radius: 5}, []Code{}},
		{piece{round: true, radius: 2}, []Code{HoleMissing}}, {piece{round: true, radius: 2.01}, []Code{HoleDiameter}},
		{piece{round: true, radius: 12.5}, []Code{HoleMissing}}, {piece{round: true, radius: 12.49}, []Code{HoleDiameter}},
		{piece{round: true, radius: 5, centre: xy(36, 0)}, []Code{HoleMoved}}, {piece{round: true, radius: 5, centre: xy(36.01, 0)}, []Code{HoleMissing}},
		{piece{round: true, radius: 5.25, centre: xy(0, 0.5)}, []Code{}}, {piece{round: true, radius: 5.26, centre: xy(0, 0.51)}, []Code{HoleMoved, HoleDiameter}},
		{piece{round: true, radius: 5, used: true}, []Code{HoleMissing}},
		{piece{w: 4, h: 16}, []Code{HoleShape}}, {piece{w: 16, h: 4}, []Code{HoleShape}}, {piece{w: 3.99, h: 16}, []Code{HoleMissing}}, {piece{w: 4, h: 16.01}, []Code{HoleMissing}},
		{piece{w: 10, h: 10, mid: xy(10, 0)}, []Code{HoleShape}}, {piece{w: 10, h: 10, mid: xy(10.01, 0)}, []Code{HoleMissing}}, {piece{w: 10, h: 10, used: true}, []Code{HoleMissing}},
	} {
		c.p.contour = rectangle(-5, -5, 10, 10)
		co := bounded(&Part{Rounds: []Round{{DiameterMm: 10}}}, 0.5, &c.p)
		co.holes()
		if got := found(co); !slices.Equal(got, c.want) || (co.report.Matched == 1) != (len(c.want) == 0) || c.p.used == (len(got) > 0 && got[0] == HoleMissing) && !slices.Equal(c.want, []Code{HoleMissing}) {
			t.Errorf("%+v: %v, want %v", c.p, got, c.want)
		}
	}
}

// A circle that is 0.3 off and of the size stands for a hole rather than one in the place
// that is 4 smaller or larger: a fifth of that counts. One that is 0.9 off does not.
func TestNearestInSize(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		off, radius float64
		want        Code
	}{{0.3, 3, HoleMoved}, {0.3, 7, HoleMoved}, {0.9, 3, HoleDiameter}, {0.9, 7, HoleDiameter}} {
		co := bounded(&Part{Rounds: []Round{{DiameterMm: 10}}}, 0.1, &piece{round: true, radius: c.radius}, &piece{round: true, radius: 5, centre: xy(c.off, 0)})
		if co.holes(); !slices.Equal(found(co), []Code{c.want}) {
			t.Errorf("%+v: %v", c, found(co))
		}
	}
}

// What is left over lies on a blind hole within 1 mm, or a quarter of its width.
func TestLeftOver(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		blind, off float64
		round      bool
		want       Code
	}{{8, 1.99, true, BlindCut}, {8, 2, true, HoleExtra}, {8, 2, false, Extra}, {2, 0.99, false, BlindCut}, {2, 1, true, HoleExtra}} {
		co := bounded(&Part{Blind: []Round{{Point: xy(7, 9), DiameterMm: c.blind}}}, 0.1, &piece{round: c.round, radius: 3, mid: xy(7, 9+c.off)}, &piece{used: true, mid: xy(7, 9)})
		co.extras()
		if got := found(co); !slices.Equal(got, []Code{c.want}) || (c.want == HoleExtra) != (co.report.Findings[0].ByMm == 6) || (co.report.Circles == 1) != c.round {
			t.Errorf("%+v: %+v", c, co.report)
		}
	}
}

// An outline of 200 × 120 that may be 0.5 off: its size and its shape. Where it is
// missing, an open line more than 0.8 times as large both ways is shown.
func TestOutlineOnTheBound(t *testing.T) {
	t.Parallel()
	want := rectangle(-100, -60, 200, 120)
	for _, c := range []struct {
		w, h, off, by float64
		want          []Code
	}{
		{200.5, 120.5, 0.5, 0, []Code{}}, {200.75, 120, 0, 0.75, []Code{OutlineSize}}, {200, 119.25, 0, -0.75, []Code{OutlineSize}}, {199, 122, 0, 2, []Code{OutlineSize}}, {198, 121, 0, -2, []Code{OutlineSize}},
		{200, 120, 0.75, 0.75, []Code{OutlineShape}},
	} {
		co := bounded(&Part{edge: want}, 0.5)
		co.edge = &piece{contour: want.moved(xy(c.off, 0)), w: c.w, h: c.h}
		co.outline()
		if got := found(co); !slices.Equal(got, c.want) || len(got) > 0 && co.report.Findings[0].ByMm != c.by || !co.edge.used {
			t.Errorf("%+v: %+v", c, co.report.Findings)
		}
	}
	for _, c := range []struct {
		w, h  float64
		drawn bool
	}{{161, 97, true}, {161, 96, false}, {160, 97, false}, {199, 1, false}, {1, 119, false}} {
		co := bounded(&Part{edge: want}, 0.5)
		co.open = []*piece{{w: c.w, h: c.h}}
		co.outline()
		if f := co.report.Findings[0]; f.Code != OutlineMissing || (f.Drawn != nil) != c.drawn {
			t.Errorf("%+v: %+v", c, f)
		}
	}
}

// A slot that is just as far off as it may be is in its place.
func TestSlotOnTheBound(t *testing.T) {
	t.Parallel()
	s := Slot{WidthMm: 10, LengthMm: 30, EndsMm: [2]plan.XY{{XMm: 10}, {XMm: -10}}}
	for off, want := range map[float64][]Code{0: {}, 0.5: {}, 0.51: {SlotMoved}} {
		co := bounded(&Part{}, 0.5)
		co.slot(s, &piece{contour: s.contour()}, off)
		if got := found(co); !slices.Equal(got, want) || (co.report.Matched == 1) != (len(want) == 0) {
			t.Errorf("%g off: %v", off, got)
		}
	}
}

// An open line of 10 mm lies on another where both ends are nearer than 0.05 mm, either way
// round, and no place further than 0.1 from it.
func TestOnLine(t *testing.T) {
	t.Parallel()
	line := func(p ...point) contour { return contour{points: p} }
	long := line(xy(0, 0), xy(10, 0))
	for _, c := range []struct {
		a, b contour
		want bool
	}{
		{long, long, true}, {long, line(xy(10, 0), xy(0, 0)), true}, {long, line(xy(0.04, 0), xy(10, 0)), true}, {long, line(xy(0.05, 0), xy(10, 0)), false}, {long, line(xy(0, 0), xy(10.06, 0)), false},
		{long, line(xy(10, 0), xy(0.06, 0)), false}, {long, line(xy(10.06, 0), xy(0, 0)), false}, {long, line(xy(10, 0), xy(0, 0.05)), false}, {long, line(xy(0, 0.06), xy(10, 0.06)), false}, {long, line(xy(0, 0), xy(10, 0.05)), false}, {long, line(xy(10, 0.05), xy(0, 0)), false},
		{long, line(xy(0, 0), xy(5, 0.09), xy(10, 0)), true}, {long, line(xy(0, 0), xy(5, 0.1), xy(10, 0)), false},
		{line(xy(0, 0), xy(0.04, 0)), line(xy(0, 0), xy(0.04, 0)), false}, {line(xy(0, 0), xy(0.05, 0)), line(xy(0, 0), xy(0.05, 0)), true},
	} {
		if got := c.a.onLine(&c.b); got != c.want {
			t.Errorf("%v on %v: %v", c.a.points, c.b.points, got)
		}
	}
}

// Two closed contours up to 0.1 mm apart are one cut twice, the later of them; of circles the places
// and the radii count together.
func TestDoubledOnTheBound(t *testing.T) {
	t.Parallel()
	round := func(x, r float64) *piece {
		return &piece{contour: contour{points: ring(xy(x, 0), r, 60, 1), closed: true}, round: true, centre: xy(x, 0), radius: r}
	}
	square := func(x, w float64) *piece { return &piece{contour: rectangle(x, 0, w, 20)} }
	for name, c := range map[string]struct {
		a, b *piece
		want bool
	}{
		"narrow ones 0.1 apart": {square(0, 0.1), square(0.1, 0.1), true}, "squares 0.11 apart": {square(0, 20), square(0.11, 20), false}, "the later is further left": {square(0.1, 0.1), square(0, 0.1), true},
		"wider on both sides": {square(0, 20), square(-0.1, 20.2), true}, "wider": {square(0, 20), square(0, 20.3), false},
		"circles 0.1 apart": {round(0, 5), round(0.1, 5), true}, "circles 0.11 apart": {round(0, 5), round(0.11, 5), false}, "off by both": {round(0, 5), round(0.06, 5.06), false}, "larger": {round(0, 5), round(0, 5.09), true},
	} {
		co := bounded(&Part{}, 0.1, c.a, c.b)
		co.edge = c.b
		co.doubles()
		if c.a.used || c.b.used != c.want || (len(co.report.Findings) == 1) != c.want || (co.edge == c.a) != c.want {
			t.Errorf("%s: %+v", name, co.report.Findings)
		}
	}
	co := bounded(&Part{}, 0.1, round(0, 5), round(0, 5), round(0, 5))
	co.edge = co.closed[2]
	if co.doubles(); co.edge != co.closed[0] || len(co.report.Findings) != 2 {
		t.Errorf("of three the first is left: %+v", co.report.Findings)
	}
}

// A dot is as wide as high to 1.25, of four corners and more, all as far from its middle
// to 15 %. Two strokes are a cross while neither is 1.25 times as long, and they meet at
// 60° or more.
func TestDotAndCross(t *testing.T) {
	t.Parallel()
	diamond := func(w, h float64) contour {
		return contour{closed: true, points: []point{xy(w/2, 0), xy(0, h/2), xy(-w/2, 0), xy(0, -h/2)}}
	}
	for _, c := range []struct {
		c    contour
		want bool
	}{
		{rectangle(0, 0, 5, 4), true}, {rectangle(0, 0, 4, 5), true}, {rectangle(0, 0, 5.01, 4), false}, {rectangle(0, 0, 4, 5.01), false},
		{diamond(5, 4.25), true}, {diamond(4.24, 5), false}, {contour{points: rectangle(0, 0, 4, 4).points}, false}, {contour{closed: true, points: []point{xy(0, 0), xy(4, 0), xy(2, 3.5)}}, false},
	} {
		p := &piece{contour: c.c}
		p.measure()
		if got := p.dot(); got != c.want {
			t.Errorf("%v closed %v: %v", c.c.points, c.c.closed, got)
		}
	}
	stroke := func(long, deg float64) *piece {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return &piece{contour: contour{points: []point{xy(-long/2*cos, -long/2*sin), xy(long/2*cos, long/2*sin)}}}
	}
	for _, c := range []struct {
		long, deg float64
		want      bool
	}{{4, 90, true}, {4, 61, true}, {4, 119, true}, {4, 59, false}, {4, 121, false}, {5, 90, true}, {3.2, 90, true}, {5.01, 90, false}, {3.19, 90, false}} {
		for _, turn := range []float64{0, 180} {
			if got := crosses(stroke(4, 0), stroke(c.long, c.deg+turn)); got != c.want {
				t.Errorf("4 and %g at %g°: %v", c.long, c.deg+turn, got)
			}
		}
	}
}

// A mark for nothing: none within the tolerance of a hole's middle; a line over 10 mm. By
// the TOP line its arrow head may reach 3 mm.
func TestMoreMarks(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		spot spot
		want []Code
	}{
		{spot{at: xy(0.5, 0)}, []Code{}}, {spot{at: xy(0.51, 0)}, []Code{MarkExtra}}, {spot{at: xy(9, 0), used: true}, []Code{}},
		{spot{at: xy(9, 0), size: 10}, []Code{MarkExtra}}, {spot{at: xy(9, 0), size: 10.01}, []Code{LinesUnread}},
	} {
		co := bounded(&Part{Rounds: []Round{{DiameterMm: 8}}}, 0.5)
		co.spots = []*spot{&c.spot}
		if co.moreMarks(); !slices.Equal(found(co), c.want) {
			t.Errorf("%+v: %v", c.spot, found(co))
		}
	}
	for x, want := range map[float64][]Code{3: {}, -3: {}, 3.01: {LinesUnread}} {
		co := bounded(&Part{TopLine: []plan.XY{{YMm: 50}, {YMm: 60}}}, 0.5)
		co.lines = []*piece{{contour: contour{points: []point{xy(0, 50), xy(0, 60)}}}, {contour: contour{points: []point{xy(x, 55), xy(0, 60)}}}}
		if co.moreMarks(); !slices.Equal(found(co), want) {
			t.Errorf("an arrow head of %g: %v", x, found(co))
		}
	}
}

// Of a drawing in which nothing closes the largest line shows the place, whichever comes first,
// and is shown for the outline.
func TestNothingCloses(t *testing.T) {
	t.Parallel()
	lines := []string{`<path d="M20 30V45"/>`, `<path d="M20 140H220V40L200 20H20V120"/>`}
	for range lines {
		slices.Reverse(lines)
		var got []string
		for _, f := range compared(t, plate(t), svgFile(mmHead, lines)).Findings {
			if f.Drawn != nil {
				got = append(got, fmt.Sprintf("%s at %g, %g by %g: %g × %g about %g, %g", f.Code, f.XMm, f.YMm, f.ByMm, f.Drawn.WidthMm, f.Drawn.HeightMm, f.Drawn.XMm, f.Drawn.YMm))
			}
		}
		slices.Sort(got)
		if want := []string{"open-contour at -100, -60 by 20: 200 × 120 about 0, 0", "open-contour at -100, 50 by 15: 0 × 15 about -100, 42.5", "outline-missing at 0, 0 by 0: 200 × 120 about 0, 0"}; !slices.Equal(got, want) {
			t.Errorf("%q", got)
		}
	}
}

// A circle that goes on past its beginning is none once it adds 2 % to its area: a quarter more
// adds (π/2 − 1) / 2π, 9 %; a hundredth hardly anything.
func TestRunOn(t *testing.T) {
	t.Parallel()
	for share, want := range map[float64]bool{1: true, 1.01: true, 1.25: false, 2: false} {
		c := contour{closed: true, points: ring(xy(7, 9), 20, 360, share)}
		if _, _, round, _ := c.circle(); round != want {
			t.Errorf("%g times round is a circle: %v", share, round)
		}
	}
}
