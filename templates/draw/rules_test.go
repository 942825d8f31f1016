package draw

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
)

// drawnLines are the straight lines of shapes, in order, each from its start to
// its end; groups are carried to where they lie.
func drawnLines(items []Item) (out [][4]float64) {
	for _, item := range items {
		switch it := item.(type) {
		case Group:
			for _, l := range drawnLines(it.Drawing.Items) {
				a, b := it.Transform.Dot(canvas.Point{X: l[0], Y: l[1]}), it.Transform.Dot(canvas.Point{X: l[2], Y: l[3]})
				out = append(out, [4]float64{a.X, a.Y, b.X, b.Y})
			}
		case Shape:
			for scan := it.Path.Scanner(); scan.Scan(); {
				if cmd := scan.Cmd(); cmd == canvas.LineToCmd || cmd == canvas.CloseCmd {
					a, b := scan.Start(), scan.End()
					out = append(out, [4]float64{a.X, a.Y, b.X, b.Y})
				}
			}
		}
	}
	return out
}

// written are the texts of items; those of groups are carried to where they lie.
func written(items []Item) (out []Text) {
	for _, item := range items {
		switch it := item.(type) {
		case Group:
			for _, t := range written(it.Drawing.Items) {
				at := it.Transform.Dot(canvas.Point{X: t.XMm, Y: t.YMm})
				t.XMm, t.YMm = at.X, at.Y
				out = append(out, t)
			}
		case Text:
			out = append(out, it)
		}
	}
	return out
}

// TestRules: marks at every millimetre or eighth of an inch of true length (1 in
// = 25.4 mm, by definition), longer ones at halves and wholes, all to one side of
// the line; each number is that of its mark and stands at it, clear of it.
func TestRules(t *testing.T) {
	t.Parallel()
	const x, y = 31.0, 17.0
	for _, c := range []struct {
		name           string
		draw           func(d *Drawing)
		up             bool
		step           float64
		half, whole    int // marks
		ticks          [3]float64
		number         int // a whole is written as so many
		longMm, lastMm float64
		numbers        string
	}{
		{"mm across", func(d *Drawing) { RuleAcross(d, x, y) }, false, 1, 5, 10, [3]float64{2, 3, 4}, 10, 100, 100, "0 10 20 30 40 50 60 70 80 90 100 mm"},
		{"mm up", func(d *Drawing) { RuleUp(d, x, y) }, true, 1, 5, 10, [3]float64{2, 3, 4}, 10, 100, 100, "0 10 20 30 40 50 60 70 80 90 100"},
		{"inches across", func(d *Drawing) { InchRule(d, x, y, false) }, false, 25.4 / 8, 4, 8, [3]float64{2, 3, 4}, 1, 101.6, 101.6, "0 1 2 3 4 in"},
		{"inches up", func(d *Drawing) { InchRule(d, x, y, true) }, true, 25.4 / 8, 4, 8, [3]float64{2, 3, 4}, 1, 101.6, 101.6, "0 1 2 3 4"},
		{"edge across", func(d *Drawing) { EdgeRule(d, canvas.Point{X: x, Y: y}, 121.5, false, false) }, false, 1, 5, 10, [3]float64{1.6, 2.4, 3.2}, 10, 121.5, 121, "10 20 30 40 50 60 70 80 90 110 100 mm"},
		{"edge up", func(d *Drawing) { EdgeRule(d, canvas.Point{X: x, Y: y}, 112, false, true) }, true, 1, 5, 10, [3]float64{1.6, 2.4, 3.2}, 10, 112, 112, "10 20 30 40 50 60 70 80 90 110 100 mm"},
		{"its last number would lie past its end", func(d *Drawing) { EdgeRule(d, canvas.Point{X: x, Y: y}, 111.9, false, true) }, true, 1, 5, 10, [3]float64{1.6, 2.4, 3.2}, 10, 111.9, 111, "10 20 30 40 50 60 70 80 90 100 mm"},
		{"edge in inches", func(d *Drawing) { EdgeRule(d, canvas.Point{X: x, Y: y}, 130, true, false) }, false, 25.4 / 8, 4, 8, [3]float64{1.6, 2.4, 3.2}, 1, 130, 40 * 25.4 / 8, "1 2 3 5 4 in"},
		{"no room for 100 mm", func(d *Drawing) { EdgeRule(d, canvas.Point{X: x, Y: y}, 108, false, false) }, false, 1, 5, 10, [3]float64{1.6, 2.4, 3.2}, 10, 108, 108, "10 20 30 40 50 60 70 80 90"},
		{"just room for 100 mm", func(d *Drawing) { EdgeRule(d, canvas.Point{X: x, Y: y}, 109, false, false) }, false, 1, 5, 10, [3]float64{1.6, 2.4, 3.2}, 10, 109, 109, "10 20 30 40 50 60 70 80 90 100 mm"},
	} {
		var d Drawing
		c.draw(&d)
		along := func(px, py float64) (along, off float64) {
			if c.up {
				return py - y, x - px
			}
			return px - x, y - py
		}
		var marks, beside [][4]float64
		for _, l := range drawnLines(d.Items) {
			a0, o0 := along(l[0], l[1])
			a1, o1 := along(l[2], l[3])
			if math.Abs(a0-a1) < 1e-9 && o0 == 0 && o1 < 4.5 && len(marks) <= int(c.lastMm/c.step+1e-9) && math.Abs(a0-float64(len(marks))*c.step) < 1e-9 {
				marks = append(marks, [4]float64{a0, o0, a1, o1})
			} else {
				beside = append(beside, [4]float64{a0, o0, a1, o1})
			}
		}
		if n := int(c.lastMm/c.step+1e-9) + 1; len(marks) != n {
			t.Errorf("%s: %d marks, want %d", c.name, len(marks), n)
		}
		for i, m := range marks {
			want := c.ticks[0]
			if i%c.half == 0 {
				want = c.ticks[1]
			}
			if i%c.whole == 0 {
				want = c.ticks[2]
			}
			if math.Abs(m[3]-want) > 1e-9 {
				t.Errorf("%s: mark %d is %g long, want %g", c.name, i, m[3], want)
			}
		}
		// The line along the marks, or the bracket of the 100 mm.
		bracket := strings.HasPrefix(c.name, "edge") || strings.HasPrefix(c.name, "its last") || strings.HasPrefix(c.name, "just")
		check := 100.0
		if c.step != 1 {
			check = 101.6
		}
		switch {
		case bracket && fmt.Sprint(beside) != fmt.Sprint([][4]float64{{0, 4, 0, 0}, {0, 0, check, 0}, {check, 0, check, 4}}):
			t.Errorf("%s: the check mark is %v", c.name, beside)
		case c.name == "no room for 100 mm" && len(beside) != 0:
			t.Errorf("%s: %v", c.name, beside)
		case !bracket && c.name != "no room for 100 mm":
			if len(beside) != 1 || math.Abs(beside[0][0]+ThinMm/2) > 1e-9 || math.Abs(beside[0][2]-c.longMm-ThinMm/2) > 1e-9 || beside[0][1] != 0 || beside[0][3] != 0 {
				t.Errorf("%s: along it runs %v", c.name, beside)
			}
		}
		var numbers []string
		for _, text := range written(d.Items) {
			numbers = append(numbers, text.Content)
			var value float64
			unit, _ := fmt.Sscan(text.Content, &value)
			at := value / float64(c.number) * float64(c.whole) * c.step
			if text.Content == "100 mm" {
				at = 100
			}
			r := TextRect(text)
			if text.RotateDeg == 90 {
				w := r.Width()
				r = Rect{text.XMm - AscentMm*text.SizeMm, text.YMm - w/2, text.XMm, text.YMm + w/2}
			}
			a0, o0 := along(r.X0, r.Y1)
			a1, o1 := along(r.X1, r.Y0)
			if c.up {
				a0, a1 = a1, a0
				a0, o0 = along(r.X1, r.Y0)
				a1, o1 = along(r.X0, r.Y1)
			}
			if middle := (a0 + a1) / 2; unit != 1 || at < a0-0.1 || at > a1+0.1 || text.Align != Left && math.Abs(middle-at) > 0.35 {
				t.Errorf("%s: %q from %.2f to %.2f, its mark at %.2f", c.name, text.Content, a0, a1, at)
			}
			if o0 < c.ticks[2] || o1 > 9.5 {
				t.Errorf("%s: %q lies %.2f to %.2f off the line, the marks reach %g", c.name, text.Content, o0, o1, c.ticks[2])
			}
			if last := at > 99; text.Bold != last && (last || bracket) && text.Content != "110" && text.Content != "5" {
				t.Errorf("%s: %q bold %v", c.name, text.Content, text.Bold)
			}
		}
		if got := strings.Join(numbers, " "); got != c.numbers {
			t.Errorf("%s: numbers %q, want %q", c.name, got, c.numbers)
		}
	}
}

// TestSigns: the box and the middle of each sign.
func TestSigns(t *testing.T) {
	t.Parallel()
	box := func(items ...Item) Rect {
		r := Rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
		for _, item := range items {
			if s, ok := item.(Shape); ok {
				b := s.Path.Bounds()
				r = Rect{min(r.X0, b.X0), min(r.Y0, b.Y0), max(r.X1, b.X1), max(r.Y1, b.Y1)}
			}
		}
		return r
	}
	h := 8 * math.Sqrt(3) / 2
	for _, c := range []struct {
		name  string
		items []Item
		want  Rect
	}{
		{"balloon", Balloon(10, 20, 7), Rect{6.6, 16.6, 13.4, 23.4}},
		{"match mark", MatchMark(10, 20), Rect{6.8, 16.8, 13.2, 23.2}},
		{"warning", Warning(10, 20, 8), Rect{10, 20, 18, 20 + h}},
		{"arrow", []Item{TopArrow(10, 20, 10)}, Rect{6.4, 20, 13.6, 30}},
		{"disc", []Item{Disc(10, 20, 2)}, Rect{8, 18, 12, 22}},
		{"box", []Item{Box(Rect{1, 2, 3, 5}, LineMm)}, Rect{1, 2, 3, 5}},
		{"ring", []Item{Ring(10, 20, 3, LineMm)}, Rect{7, 17, 13, 23}},
		{"slot across", []Item{Stadium(canvas.Point{X: 10, Y: 20}, canvas.Point{X: 6, Y: 0}, 2, LineMm)}, Rect{2, 18, 18, 22}},
		{"slot up", []Item{Stadium(canvas.Point{X: 10, Y: 20}, canvas.Point{X: 0, Y: 6}, 2, LineMm)}, Rect{8, 12, 12, 28}},
		{"slot at a slant", []Item{Stadium(canvas.Point{X: 10, Y: 20}, canvas.Point{X: 3, Y: 4}, 1, LineMm)}, Rect{6, 15, 14, 25}},
		{"slot of no length", []Item{Stadium(canvas.Point{X: 10, Y: 20}, canvas.Point{X: 0, Y: 0}, 2, LineMm)}, Rect{8, 18, 12, 22}},
	} {
		got := box(c.items...)
		for i, d := range []float64{got.X0 - c.want.X0, got.Y0 - c.want.Y0, got.X1 - c.want.X1, got.Y1 - c.want.Y1} {
			if math.Abs(d) > 1e-6 {
				t.Errorf("%s: %v, want %v (%d)", c.name, got, c.want, i)
				break
			}
		}
	}
	// The warning's mark stands in its triangle, the dot under the stroke.
	w := Warning(10, 20, 8)
	stroke, dot := box(w[1]), box(w[2])
	if math.Abs(stroke.X0+stroke.X1-28) > 1e-9 || math.Abs(dot.X0+dot.X1-28) > 1e-9 || dot.Y1 >= stroke.Y0 || dot.Y0 <= 20 || stroke.Y1 >= 20+h {
		t.Errorf("warning: stroke %v, dot %v", stroke, dot)
	}
	// The arrow's shaft is narrower than its head, which begins half way up.
	arrow := drawnLines([]Item{TopArrow(0, 0, 10)})
	if arrow[0][2]-arrow[0][0] >= 0.6*7.2 || arrow[1][3] != 5 || math.Abs(arrow[3][0]-3.6) > 1e-9 || arrow[3][1] != 5 || arrow[3][2] != 0 {
		t.Errorf("arrow: %v", arrow)
	}
	// Numbers stand in the middle of their balloon, inside it.
	for _, n := range []int{1, 42, 99, 100, 888} {
		text := written(Balloon(10, 20, n))[0]
		r := TextRect(text)
		if text.Content != strconv.Itoa(n) || math.Abs(r.X0+r.X1-20) > 1e-9 || math.Abs((r.Y0+r.Y1)/2-20) > 0.2 || math.Hypot(r.Width()/2, AscentMm*text.SizeMm/2) > BalloonMm {
			t.Errorf("balloon %d: %+v in %v", n, text, r)
		}
		if large := text.SizeMm > 3.5; large != (n <= 99) {
			t.Errorf("balloon %d is written %v high", n, text.SizeMm)
		}
	}
	// A leader runs from the rim to the feature; one inside is only a dot.
	l := drawnLines(Leader(10, 20, 13, 24))
	want := [4]float64{10 + BalloonMm*3/5, 20 + BalloonMm*4/5, 13, 24}
	for i := range want {
		if len(l) < 1 || math.Abs(l[0][i]-want[i]) > 1e-9 {
			t.Errorf("leader %v, want %v", l, want)
			break
		}
	}
	if got := Leader(10, 20, 12, 22); len(got) != 1 {
		t.Errorf("a leader inside its balloon: %v", got)
	}
}

// TestHatching: lines at their angle and distance, over the whole surface.
func TestHatching(t *testing.T) {
	t.Parallel()
	cut := canvas.Rectangle(40, 25).Translate(7, 11)
	for _, deg := range []float64{45, -45, 30, 0, 90} {
		for _, pitch := range []float64{2.4, 3} {
			var d, moved Drawing
			HatchAt(&d, cut, deg, pitch, LineMm)
			HatchAt(&moved, canvas.Rectangle(13, 25).Translate(7, 11), deg, pitch, LineMm)
			sin, cos := math.Sincos(deg * math.Pi / 180)
			across := func(items []Item) (out []float64) {
				for _, l := range drawnLines(items[1:2]) {
					if math.Abs((l[2]-l[0])*sin-(l[3]-l[1])*cos) > 1e-9 {
						t.Fatalf("%v does not run at %v°", l, deg)
					}
					out = append(out, -l[0]*sin+l[1]*cos)
				}
				slices.Sort(out)
				return out
			}
			at := across(d.Items)
			for i := range at {
				if i > 0 && math.Abs(at[i]-at[i-1]-pitch) > 1e-9 {
					t.Fatalf("%v°: lines %v apart, want %v", deg, at[i]-at[i-1], pitch)
				}
			}
			low, high := math.Inf(1), math.Inf(-1)
			for _, p := range [][2]float64{{7, 11}, {47, 11}, {7, 36}, {47, 36}} {
				low, high = min(low, -p[0]*sin+p[1]*cos), max(high, -p[0]*sin+p[1]*cos)
			}
			if at[0] > low+pitch || at[len(at)-1] < high-pitch {
				t.Errorf("%v°: lines from %v to %v, the surface from %v to %v", deg, at[0], at[len(at)-1], low, high)
			}
			for _, l := range drawnLines(d.Items[1:2]) {
				if math.Hypot(l[2]-l[0], l[3]-l[1]) < math.Hypot(40, 25) {
					t.Fatalf("%v is shorter than the surface", l)
				}
			}
			// Two surfaces of one part lie on one grid.
			if off := math.Remainder(across(moved.Items)[0]-at[0], pitch); math.Abs(off) > 1e-9 {
				t.Errorf("%v°: the grids are %v apart", deg, off)
			}
		}
	}
	var d Drawing
	Hatch(&d, cut, R(7, 11, 47, 36))
	lines := drawnLines(d.Items[1:2])
	for i, l := range lines {
		if math.Abs(l[1]-11) > 1e-9 || math.Abs(l[3]-36) > 1e-9 || math.Abs(l[2]-l[0]-25) > 1e-9 || math.Abs(l[0]-(7-25+2.4*float64(i))) > 1e-9 {
			t.Errorf("line %d runs %v", i, l)
		}
	}
	if last := lines[len(lines)-1][0]; last >= 47 || last+2.4 < 47 {
		t.Errorf("the last line begins at %v", last)
	}
}

// TestPlaceRow: what room is left stands before, between and behind the panels,
// all on one foot.
func TestPlaceRow(t *testing.T) {
	t.Parallel()
	panels := []Panel{{Width: 20, Height: 30}, {Width: 40, Height: 50}}
	var p Piece
	PlaceRow(&p, panels, 120)
	p.Draw = *p.Drawn()
	if p.Height != 50 {
		t.Errorf("%v high", p.Height)
	}
	for i, want := range []canvas.Point{{X: 20, Y: -20}, {X: 60, Y: 0}} {
		if got := p.Draw.Items[i].(Group).Transform.Dot(canvas.Point{}); got != want {
			t.Errorf("panel %d at %v, want %v", i, got, want)
		}
	}
	p = Piece{}
	PlaceRow(&p, panels, 50)
	p.Draw = *p.Drawn()
	if got := p.Draw.Items[1].(Group).Transform.Dot(canvas.Point{}); got.X != 20 {
		t.Errorf("without room the second stands at %v", got)
	}
}

// TestTextRect: from the baseline by 0.24 of the em down, where a letter goes
// there, and 0.76 up; as wide as the typeface says.
func TestTextRect(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		content string
		align   Align
		left    float64 // of the width
		drop    float64
	}{{"Hook", Left, 0, 0.02}, {"Hook", Centre, 0.5, 0.02}, {"Hook", Right, 1, 0.02}, {"gauge", Left, 0, DropMm}, {"12, 5", Left, 0, DropMm}, {"(3)", Left, 0, DropMm}} {
		text := Text{XMm: 50, YMm: 20, SizeMm: 4, Align: c.align, Content: c.content}
		w := TextWidth(c.content, 4, false)
		want := Rect{50 - c.left*w, 20 - 4*c.drop, 50 - c.left*w + w, 20 + 4*AscentMm}
		if got := TextRect(text); got != want || w <= 4 {
			t.Errorf("%q: %v, want %v", c.content, got, want)
		}
	}
	// A line becomes smaller, and is cut only where it may be no smaller.
	const words = "A line of many words"
	whole := TextWidth(words, 4, false)
	for _, c := range []struct {
		room, size float64
		cut        bool
	}{{whole, 4, false}, {whole + 1, 4, false}, {whole * 0.9, 3.6, false}, {whole * SmallMm / 4, SmallMm, false}, {whole * 0.5, SmallMm, true}} {
		text, size := Shrink(words, 4, false, c.room)
		if math.Abs(size-c.size) > 1e-9 || (text != words) != c.cut || TextWidth(text, size, false) > c.room+1e-6 || c.cut && (!strings.HasSuffix(text, "…") || len(text) < 6) {
			t.Errorf("in %v: %q at %v", c.room, text, size)
		}
	}
}
