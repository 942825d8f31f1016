package sheettest

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// heard is a test that keeps what it is told.
type heard struct {
	testing.TB
	said []string
}

func (h *heard) Helper() {}

func (h *heard) Errorf(format string, args ...any) {
	h.said = append(h.said, fmt.Sprintf(format, args...))
}

// full is a page of 100 × 80 with ten texts that are right, and further items.
func full(more ...draw.Item) *draw.Page {
	p := &draw.Page{WidthMm: 100, HeightMm: 80, Label: "3"}
	for i := range 10 {
		p.Drawing.Add(draw.Text{XMm: 10, YMm: 10 + 5*float64(i), SizeMm: 3, Content: fmt.Sprint("text ", i)})
	}
	p.Drawing.Add(more...)
	return p
}

// TestCheckPageFinds: what lies outside of the margins by more than half a thick line, text that is too small or empty,
// text over text and a page with hardly any are found; what a clip leaves out is not.
func TestCheckPageFinds(t *testing.T) {
	t.Parallel()
	text := func(x, y, size float64, content string) draw.Text {
		return draw.Text{XMm: x, YMm: y, SizeMm: size, Content: content}
	}
	inside := func(d draw.Item, x, y float64, clip *canvas.Path) draw.Item {
		return draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{d}}, Transform: canvas.Identity.Translate(x, y), Clip: clip}
	}
	box := draw.Box(draw.R(0, 0, 5, 5), 0.2)
	for _, c := range []struct {
		name string
		item draw.Item
		want string
	}{
		{"right", text(60, 40, 3, "more"), ""}, {"a line at the margin", draw.Segment(7.5, 20, 92.5, 20, 0.2), ""}, {"a line over it", draw.Segment(7.49, 20, 60, 20, 0.2), "a shape lies outside the margins"}, {"to the right", draw.Segment(60, 20, 92.51, 20, 0.2), "a shape lies outside the margins"},
		{"a thicker line", draw.Segment(7.5, 20, 60, 20, 0.3), "a shape lies outside the margins"}, {"above", draw.Segment(60, 20, 60, 72.51, 0.2), "a shape lies outside the margins"}, {"below", draw.Segment(60, 7.49, 60, 20, 0.2), "a shape lies outside the margins"},
		{"moved outside", inside(box, 90, 20, nil), "a shape lies outside the margins"}, {"moved inside", inside(box, 80, 20, nil), ""}, {"clipped", inside(box, 90, 20, canvas.Rectangle(10, 10).Translate(82, 18)), ""}, {"clipped in a group that moves", inside(inside(box, 88, 20, canvas.Rectangle(10, 10).Translate(80, 18)), 2, 0, nil), ""}, {"clipped there, and outside", inside(inside(box, 88, 20, canvas.Rectangle(10, 10).Translate(80, 18)), 8, 0, nil), "a shape lies outside the margins"},
		{"the lowest corner outside", draw.Text{XMm: 50, YMm: 7.7, SizeMm: 3, RotateDeg: 45, Content: "gap"}, `"gap" lies outside the margins`}, {"the lowest corner inside", draw.Text{XMm: 50, YMm: 8.2, SizeMm: 3, RotateDeg: 45, Content: "gap"}, ""}, {"clipped away", inside(box, 120, 20, canvas.Rectangle(10, 10).Translate(82, 18)), ""},
		{"a text outside", text(85, 40, 3, "over the margin"), `"over the margin" lies outside the margins`}, {"small", text(60, 40, draw.SmallMm-0.01, "small"), `"small" is only 2.59 mm`}, {"as small as may be", text(60, 40, draw.SmallMm, "small"), ""}, {"empty", text(60, 40, 3, "  "), "an empty text"},
		{"over another", text(12, 11, 3, "over"), `"over" over "text 0"`}, {"beside another", text(10+draw.TextWidth("text 0", 3, false), 10, 3, "beside"), ""}, {"turned over another", draw.Text{XMm: 15, YMm: 9, SizeMm: 3, RotateDeg: 90, Content: "up"}, `"up" over "text 0"`},
		{"turned past another", draw.Text{XMm: 13 + draw.TextWidth("text 0", 3, false), YMm: 9, SizeMm: 3, RotateDeg: 90, Content: "up"}, ""},
	} {
		h := &heard{TB: t}
		CheckPage(h, "job", full(c.item))
		if c.want == "" && len(h.said) > 0 || c.want != "" && (len(h.said) != 1 || !strings.HasPrefix(h.said[0], "job page 3: "+c.want)) {
			t.Errorf("%s: %q, want %q", c.name, h.said, c.want)
		}
	}
	h := &heard{TB: t}
	few := full()
	few.Drawing.Items = few.Drawing.Items[:9]
	if CheckPage(h, "job", few); !slices.Equal(h.said, []string{"job page 3: only 9 texts"}) {
		t.Errorf("few: %q", h.said)
	}
	if got := TextsOf(t, full(inside(text(0, 0, 3, "last"), 50, 50, nil))); len(got) != 11 || got[10] != "last" || got[0] != "text 0" {
		t.Errorf("texts %q", got)
	}
}

// TestCrossedFinds: a line of more than 0.5 mm through a text is found with its length, wherever groups carry it; not
// one that grazes the rim by 0.35 mm, that a later fill hides or a clip leaves out.
func TestCrossedFinds(t *testing.T) {
	t.Parallel()
	word := draw.Text{XMm: 20, YMm: 30, SizeMm: 4, Content: "1234"}
	r := draw.TextRect(word)
	upright := func(x, y0, y1 float64) draw.Shape { return draw.Segment(x, y0, x, y1, 0.2) }
	patch := draw.Shape{Path: r.Grown(0.5).Path(), Fill: draw.White}
	group := func(m canvas.Matrix, clip *canvas.Path, items ...draw.Item) draw.Item {
		return draw.Group{Drawing: &draw.Drawing{Items: items}, Transform: m, Clip: clip}
	}
	high := r.Height() - 2*grazeMm
	turned := word
	turned.RotateDeg = 90
	for _, c := range []struct {
		name  string
		items []draw.Item
		mm    float64
	}{
		{"upright", []draw.Item{word, upright(24, 0, 80)}, high}, {"before it", []draw.Item{upright(24, 0, 80), word}, high}, {"hidden by a patch", []draw.Item{upright(24, 0, 80), patch, word}, 0}, {"over the patch", []draw.Item{patch, word, upright(24, 0, 80)}, high},
		{"beside it", []draw.Item{word, upright(r.X1+0.1, 0, 80)}, 0}, {"at its rim", []draw.Item{word, upright(r.X1-0.3, 0, 80)}, 0}, {"inside its rim", []draw.Item{word, upright(r.X1-0.4, 0, 80)}, high},
		{"along it", []draw.Item{word, draw.Segment(0, 31, 80, 31, 0.2)}, r.Width() - 2*grazeMm}, {"ends in it", []draw.Item{word, upright(24, 0, r.Y0+grazeMm+0.6)}, 0.6}, {"hardly ends in it", []draw.Item{word, upright(24, 0, r.Y0+grazeMm+0.4)}, 0},
		{"in a group", []draw.Item{word, group(canvas.Identity.Translate(14, -50), nil, upright(10, 50, 130))}, high}, {"the text in a group", []draw.Item{group(canvas.Identity.Translate(5, 0), nil, word), upright(29, 0, 80)}, high},
		{"clipped away", []draw.Item{word, group(canvas.Identity, canvas.Rectangle(10, 10).Translate(50, 50), upright(24, 0, 80))}, 0}, {"clipped in two", []draw.Item{word, group(canvas.Identity, canvas.Rectangle(100, 31), upright(24, 0, 80))}, 31 - r.Y0 - grazeMm},
		{"a text clipped away", []draw.Item{group(canvas.Identity, canvas.Rectangle(10, 10), word), upright(24, 0, 80)}, 0}, {"turned", []draw.Item{turned, draw.Segment(0, 34, 80, 34, 0.2)}, high},
		{"black", []draw.Item{word, draw.Shape{Path: draw.R(23, 0, 24, 80).Path(), Fill: draw.Black}}, 2 * high}, {"neither line nor black", []draw.Item{word, draw.Shape{Path: draw.R(23, 0, 24, 80).Path(), Fill: draw.Pale}}, 0},
	} {
		got := Crossed(&draw.Page{Drawing: draw.Drawing{Items: c.items}})
		if c.mm == 0 {
			if len(got) != 0 {
				t.Errorf("%s: %q", c.name, got)
			}
			continue
		}
		var mm, x, y float64
		if len(got) != 1 {
			t.Errorf("%s: %q", c.name, got)
		} else if _, err := fmt.Sscanf(strings.TrimPrefix(got[0], `"1234" at `), "%f, %f: %f mm", &x, &y, &mm); err != nil || mm < c.mm-0.21 || mm > c.mm+0.21 {
			t.Errorf("%s: %q, %v, want %.2f", c.name, got, err, c.mm)
		}
		middle := canvas.Point{X: (r.X0 + r.X1) / 2, Y: (r.Y0 + r.Y1) / 2}
		switch c.name {
		case "the text in a group":
			middle.X += 5
		case "turned":
			middle = middle.Rot(math.Pi/2, canvas.Point{X: word.XMm, Y: word.YMm})
		}
		if math.Abs(x-middle.X) > 0.51 || math.Abs(y-middle.Y) > 0.51 {
			t.Errorf("%s: at %v, %v, want %v", c.name, x, y, middle)
		}
	}
}

// TestBrokenFinds: a straight line that the paper of a text hides is found; not one that is drawn over it, ends before it, is
// hidden by more, is dashed or one of many, nor what a text without paper crosses.
func TestBrokenFinds(t *testing.T) {
	t.Parallel()
	word := draw.Text{XMm: 20, YMm: 30, SizeMm: 4, Content: "1234"}
	line := draw.Segment(24, 0, 24, 80, 0.13)
	two := line
	two.Path = line.Path.Copy().Append(draw.Segment(26, 0, 26, 80, 0.13).Path)
	for name, c := range map[string]struct {
		before []draw.Item
		text   []draw.Item
		broken bool
	}{
		"through it": {[]draw.Item{line}, draw.Over(word), true}, "in a group": {[]draw.Item{draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{line}}, Transform: canvas.Identity}}, draw.Over(word), true},
		"beside it": {[]draw.Item{draw.Segment(60, 0, 60, 80, 0.13)}, draw.Over(word), false}, "over it": {nil, append(draw.Over(word), line), false}, "ends before it": {[]draw.Item{draw.Segment(24, 0, 24, 30, 0.13)}, draw.Over(word), false},
		"dashed": {[]draw.Item{draw.Segment(24, 0, 24, 80, 0.13, 1, 2)}, draw.Over(word), false}, "one of many": {[]draw.Item{two}, draw.Over(word), false}, "no paper": {[]draw.Item{line}, []draw.Item{word}, false},
		"hidden before": {[]draw.Item{line, draw.Shape{Path: draw.R(0, 0, 60, 60).Path(), Fill: draw.White}}, draw.Over(word), false},
	} {
		if got := Broken(&draw.Page{Drawing: draw.Drawing{Items: append(c.before, c.text...)}}); (len(got) > 0) != c.broken {
			t.Errorf("%s: %q", name, got)
		}
	}
}

// TestPaths: how a path is recorded: every kind of stretch, a rectangle by two corners, places to a tenth.
func TestPaths(t *testing.T) {
	t.Parallel()
	for svg, want := range map[string]string{
		"M1 2L3 4.25Z": "M2 4L4 6.2Z", "M0 0H4V3H0Z": "□ 1 2 5 5", "M0 0H4V3H1Z": "M1 2L5 2L5 5L2 5Z", "M0 0V3H4V0Z": "M1 2L1 5L5 5L5 2Z", "M0 0Q3 9 6 0": "M1 2Q4 11 7 2", "M0 0C1 2 5 6 7 0": "M1 2C2 4 6 8 8 2",
		"M0 0A5 5 0 0 1 6 0": "M1 2A5< 7 2", "M0 0A5 4 0 1 0 6 0": "M1 2A5/4+ 7 2", "M0 0A5 5 0 1 1 6 0": "M1 2A5+< 7 2",
	} {
		if got := points(canvas.MustParseSVGPath(svg), 1, 2); got != want {
			t.Errorf("%s: %q, want %q", svg, got, want)
		}
	}
	for mm, want := range map[float64]string{0: "0", -0.04: "0", 0.05: "0.1", 12.34: "12.3", -7: "-7", -0.06: "-0.1", 10: "10"} {
		if got := Tenth(mm); got != want {
			t.Errorf("%v: %q, want %q", mm, got, want)
		}
	}
}

// TestRecordSays: items in their order with what is set of them; groups that move are resolved, others say how they turn.
func TestRecordSays(t *testing.T) {
	t.Parallel()
	line := draw.Segment(0, 0, 5, 0, 0.25, 1, 2)
	d := &draw.Drawing{Items: []draw.Item{
		draw.Text{XMm: 1, YMm: 2, SizeMm: 3.456, Content: "a"}, draw.Text{XMm: 1, YMm: 2, SizeMm: 3, Bold: true, Align: draw.Right, RotateDeg: 90, Tone: draw.Grey, Heading: 2, Layer: "cut", Content: "b"},
		line, draw.Shape{Path: line.Path, Fill: draw.Pale}, draw.Shape{Path: line.Path, Stroke: draw.Grey, WidthMm: 1, Layer: "mark"}, draw.Link{Path: line.Path, To: "x"},
		draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{draw.Disc(0, 0, 1)}}, Transform: canvas.Identity.Translate(10, 20), Clip: line.Path},
		draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{draw.Text{SizeMm: 2, Content: "c"}}}, Transform: canvas.Identity.Translate(10, 20).Rotate(90)},
	}}
	want := "text 3.46\t1 2 \"a\"\ntext 3 bold align 2 turned 90.0 tone 2 heading 2 on cut\t1 2 \"b\"\nline 0.25 dash [1.0 2.0]\tM0 0L5 0\nno line fill 3\tM0 0L5 0\nline 1.00 tone 2 on mark\tM0 0L5 0\n" +
		"no line fill 1 clipped\tM11 20A1< 9 20A1< 11 20Z\nby\t0.0000 -1.0000 1.0000 0.0000 at 10 20\ntext 2\t0 0 \"c\"\nby\tas before\n"
	if got := RecordDrawing(t, d); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// TestCrossAt: a cross to pop is known wherever it lies; another shape as large is none.
func TestCrossAt(t *testing.T) {
	t.Parallel()
	if x, y, ok := CrossAt(draw.PopCross(12, 34)); !ok || x != 12 || y != 34 {
		t.Errorf("%v, %v, %v", x, y, ok)
	}
	turned := draw.PopCross(0, 0)
	turned.Path = turned.Path.Transform(canvas.Identity.Rotate(45))
	for i, s := range []draw.Shape{draw.Disc(1, 2, 3), draw.Segment(0, 0, 1, 1, 1), turned} {
		if _, _, ok := CrossAt(s); ok {
			t.Errorf("shape %d is a cross", i)
		}
	}
}

// TestPlansRecorded: the plans by hand that sheets are tried with are as recorded.
func TestPlansRecorded(t *testing.T) {
	t.Parallel()
	samples := Samples()
	all := []any{samples[0], samples[3], JoinedPlan(), RingPart(620), CrowdedPart(), PlatePart(), SleevePart()}
	for i, one := range all {
		golden.Whole(t, filepath.Join("testdata", fmt.Sprint("plan-", i, ".txt")), golden.Text(one))
	}
}

// TestPapers: sizes by ISO 216 and ANSI/ASME Y14.1, which are 8.5 × 11 and 11 × 17 in.
func TestPapers(t *testing.T) {
	t.Parallel()
	for paper, want := range map[parts.Paper][2]float64{A4: {210, 297}, A3: {297, 420}, Letter: {8.5 * 25.4, 11 * 25.4}, Tabloid: {11 * 25.4, 17 * 25.4}, Least: {140, 200}} {
		if math.Abs(paper.WidthMm-want[0])+math.Abs(paper.HeightMm-want[1]) > 1e-9 {
			t.Errorf("%s is %v × %v, want %v", paper.Name, paper.WidthMm, paper.HeightMm, want)
		}
	}
}
