package compare

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// marked is the plate with its lift holes, its slot and the blind hole to be
// marked, and one more pair of marks; nothing about it is symmetrical.
func marked(t testing.TB) *Part {
	t.Helper()
	p := plate(t)
	p.mark([]plan.CutMark{
		{AtMm: plan.XY{XMm: -85, YMm: 45}}, {AtMm: plan.XY{XMm: 70, YMm: 45}},
		{AtMm: plan.XY{XMm: 80, YMm: -20}}, {AtMm: plan.XY{XMm: 80, YMm: -40}},
		{AtMm: plan.XY{XMm: -85, YMm: -45}},
	})
	p.TopLine = []plan.XY{{XMm: 0, YMm: 59}, {XMm: 0, YMm: 49}}
	return p
}

// markLines draws the plate with its marks, each a line of its own from line 12
// on; mark draws one at a place of the sheet.
func markLines(mark func(x, y float64) string) []string {
	lines := append(drawing()[:8], `<g id="Pop marks">`)
	for _, m := range [][2]float64{{-85, 45}, {70, 45}, {80, -20}, {80, -40}, {-85, -45}} {
		lines = append(lines, mark(120+m[0], 80-m[1]))
	}
	return append(lines, `<path d="M120 31L120 21M118.75 23.5L120 21L121.25 23.5"/></g>`)
}

func cross(x, y float64) string {
	return fmt.Sprintf(`<path d="M%g %gh4m-2 -2v4"/>`, x-2, y)
}

// TestMarkOf: every mark has the name of its opening, and what is marked is
// made later.
func TestMarkOf(t *testing.T) {
	t.Parallel()
	p := marked(t)
	want := []Mark{{7, "lift", xy(-85, 45)}, {8, "lift", xy(70, 45)}, {9, "adjust", xy(80, -20)}, {9, "adjust", xy(80, -40)}, {10, "earth", xy(-85, -45)}}
	if !slices.Equal(p.Marks, want) || !p.Rounds[7].Later || p.Rounds[1].Later || !p.Slots[0].Later {
		t.Errorf("%+v %+v", p.Marks, p.Rounds)
	}
}

// TestMarksDrawn: a mark is a cross, a slanting one, two lines, a dot, a small
// circle or a small polygon.
func TestMarksDrawn(t *testing.T) {
	t.Parallel()
	for name, mark := range map[string]func(x, y float64) string{
		"cross": cross,
		"slant": func(x, y float64) string { return fmt.Sprintf(`<path d="M%g %gl3 3m0 -3l-3 3"/>`, x-1.5, y-1.5) },
		"lines": func(x, y float64) string {
			return fmt.Sprintf(`<line x1="%g" y1="%g" x2="%g" y2="%g"/><line x1="%g" y1="%g" x2="%g" y2="%g"/>`, x-2, y, x+2, y, x, y-2, x, y+2)
		},
		"dot":     func(x, y float64) string { return fmt.Sprintf(`<path d="M%g %gh0"/>`, x, y) },
		"circle":  func(x, y float64) string { return fmt.Sprintf(`<circle cx="%g" cy="%g" r="0.5"/>`, x, y) },
		"polygon": func(x, y float64) string { return fmt.Sprintf(`<path d="M%g %gl1 1 -1 1 -1 -1z"/>`, x, y-1) },
	} {
		r := compared(t, marked(t), svgFile(mmHead, markLines(mark)))
		if len(r.Findings) != 0 || r.Marks != 5 || r.MarksRight != 5 || r.MarksWanted != 5 || r.OtherLines != 2 || !slices.Equal(r.Layers, []string{"Pop marks"}) {
			t.Errorf("%s: %+v", name, r)
		}
		if want := []string{"hole 7 (lift)", "hole 8 (lift)", "slot 9 (adjust)"}; !slices.Equal(r.LeftOut, want) || len(r.Unmarked) != 0 {
			t.Errorf("%s: left out %v, unmarked %v", name, r.LeftOut, r.Unmarked)
		}
	}
}

// TestMarksToScale: how large a shape is, is measured on the part: of a drawing at half of
// its size too a circle of Ø9.8 where nothing is wanted is a mark too many, and one of
// Ø10.2 a line.
func TestMarksToScale(t *testing.T) {
	t.Parallel()
	for _, head := range []string{mmHead, strings.Replace(mmHead, `width="240mm" height="160mm"`, `width="120mm" height="80mm"`, 1)} {
		for radius, want := range map[string]Code{"4.9": MarkExtra, "5.1": LinesUnread} {
			lines := append(markLines(cross), `<g class="scribe"><circle cx="60" cy="70" r="`+radius+`"/></g>`)
			if got := codes(compared(t, marked(t), svgFile(head, lines))); !slices.Contains(got, want) || slices.Contains(got, MarkExtra) != (want == MarkExtra) {
				t.Errorf("%.60s, radius %s: %v, want %v", head, radius, got, want)
			}
		}
	}
}

// TestNoMarks: other shapes on a marking layer are lines that are not compared.
func TestNoMarks(t *testing.T) {
	t.Parallel()
	for name, shape := range map[string]string{
		"one line":     `<path d="M60 60h4"/>`,
		"an angle":     `<path d="M60 60h4m0 0v4"/>`,
		"unequal":      `<path d="M60 60h4m-2 -4v8"/>`,
		"off centre":   `<path d="M60 60h4m-3 -2v4"/>`,
		"too slanting": `<path d="M60 60l4 1m0 -1l-4 1"/>`,
		"triangle":     `<path d="M60 60h2l-1 1.8z"/>`,
		"right angle":  `<path d="M60 60h2l-2 2z"/>`, // all corners as far from the middle of its box
		"square, open": `<path d="M60 60h4v4h-4"/>`,
		"oblong":       `<rect x="60" y="60" width="3" height="2"/>`,
		"large circle": `<circle cx="60" cy="60" r="5.1"/>`,
		"open":         `<path d="M60 60h4v4h-4v-3"/>`,
	} {
		lines := append(markLines(cross), `<g class="scribe">`+shape+`</g>`)
		r := compared(t, marked(t), svgFile(mmHead, lines))
		if len(r.Findings) != 1 || r.Findings[0].Code != LinesUnread || r.Findings[0].Line != 17 || r.Findings[0].Count < 1 || r.Findings[0].Count > 2 {
			t.Errorf("%s: %+v", name, r.Findings)
		}
	}
}

// TestMarkFaults changes one thing each time and wants that and nothing else.
func TestMarkFaults(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		name   string
		change func([]string) []string
		want   []Code
		by     float64
		line   int
		n      int
		say    string
	}{
		{"missing", func(d []string) []string { return slices.Delete(d, 10, 11) }, []Code{MarkMissing}, 0, 0, 8, "the mark for hole 8 (lift) at 70, 45 mm is missing"},
		{"half a slot", func(d []string) []string { return slices.Delete(d, 12, 13) }, []Code{MarkMissing}, 0, 0, 9, "the mark for slot 9 (adjust) at 80, -40 mm is missing"},
		{"moved", func(d []string) []string { d[9] = cross(35, 35.2); return d }, []Code{MarkMoved}, 0.2, 11, 7, "the mark for hole 7 (lift) is 0.2 mm from its place: at -85, 44.8 mm, not -85, 45 mm"},
		{"far", func(d []string) []string { d[9] = cross(35, 60); return d }, []Code{MarkMoved}, 25, 11, 7, ""},
		{"within", func(d []string) []string { d[9] = cross(35, 35.09); return d }, []Code{}, 0, 0, 0, ""},
		{"extra", func(d []string) []string { d[9] += cross(60, 70); return d }, []Code{MarkExtra}, 0, 11, 0, "the mark at -60, 10 mm is for nothing of the part"},
		{"on a cut hole", func(d []string) []string { d[9] += cross(165, 80); return d }, []Code{}, 0, 0, 0, ""},
		{"group left out", func(d []string) []string { return slices.Delete(d, 9, 11) }, []Code{}, 0, 0, 0, ""},
		{"top elsewhere", func(d []string) []string {
			d[14] = `<path d="M121 31V21"/></g>`
			return d
		}, []Code{LinesUnread}, 0, 16, 0, "1 line on marking layers"},
		{"no top", func(d []string) []string { d[14] = "</g>"; return d }, []Code{}, 0, 0, 0, ""},
		{"far arrow", func(d []string) []string {
			d[14] = `<path d="M120 31V21M116.9 23L120 21L123.1 23"/></g>`
			return d
		}, []Code{LinesUnread}, 0, 16, 0, ""},
		{"mirrored", func(d []string) []string {
			return append(append([]string{`<g transform="translate(240) scale(-1 1)">`}, d...), "</g>")
		}, []Code{Mirror}, 0, 3, 0, "mirror image"},
		{"text", func(d []string) []string { d[0] += `<text>a</text>`; return d }, []Code{OthersUnread}, 0, 2, 0, "1 element, the first here"},
		{"picture and more", func(d []string) []string {
			d[0] += `<image/><foreignObject/><flowRoot/><g display="none"/><g visibility="collapse"/><path clip-path="url(#c)" d="M0 0h4"/><path mask="url(#c)" d="M0 0h4"/>`
			return d
		}, []Code{OthersUnread}, 0, 2, 0, "7 elements, the first here"},
		{"not clipped", func(d []string) []string {
			d[0] = strings.Replace(d[0], "<path", `<path clip-path="none"`, 1)
			return d
		}, []Code{}, 0, 0, 0, ""},
		{"not hidden", func(d []string) []string {
			d[0] = strings.Replace(d[0], "<path", `<path display="inline" visibility="visible" overflow="hidden" fill="none"`, 1)
			return d
		}, []Code{}, 0, 0, 0, ""},
		{"a label names the layer", func(d []string) []string {
			d[8] = `<g label="Pop marks" title="cut">`
			return d
		}, []Code{}, 0, 0, 0, ""},
		{"a title does not", func(d []string) []string {
			d[0] = strings.Replace(d[0], "<path", `<path title="marks"`, 1)
			return d
		}, []Code{}, 0, 0, 0, ""},
	} {
		r := compared(t, marked(t), svgFile(mmHead, test.change(markLines(cross))))
		if !slices.Equal(codes(r), test.want) {
			t.Errorf("%s: %v: %+v", test.name, codes(r), r.Findings)
			continue
		}
		if len(test.want) == 0 {
			if test.name == "group left out" && (!slices.Equal(r.Unmarked, []string{"hole 7 (lift)", "hole 8 (lift)"}) || r.MarksWanted != 3) {
				t.Errorf("%s: %+v", test.name, r)
			}
			continue
		}
		if f := r.Findings[0]; f.ByMm < test.by-2e-3 || f.ByMm > test.by+2e-3 || f.Line != test.line || f.N != test.n || !strings.Contains(f.What, test.say) {
			t.Errorf("%s: %+v", test.name, f)
		}
	}
}

// TestMarksAlone: the base plate of the demo, all of whose holes are marked and
// whose outline is symmetrical, is found out mirrored, turned and scaled by its
// marks.
func TestMarksAlone(t *testing.T) {
	t.Parallel()
	p, err := demo(t, "pugmill", "base-plate")
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Marks) != 19 || p.Marks[4] != (Mark{5, "earth", xy(205, 0)}) || p.Marks[15] != (Mark{14, "skid-holes", xy(140, 25)}) {
		t.Fatalf("%+v", p.Marks)
	}
	for transform, want := range map[string][]Code{
		"scale(1 1)":                {},
		"scale(-1 1)":               {Mirror},
		"rotate(180)":               {Turned},
		"scale(0.0393700787)":       {Scale},
		"scale(1 -1) rotate(-1.5)":  {Mirror, Turned}, // the slant of a half turn less
		"translate(7 9) rotate(90)": {Turned},
	} {
		var b strings.Builder
		fmt.Fprintf(&b, `<svg width="1000mm" height="1000mm" viewBox="-500 -500 1000 1000"><g transform="%s scale(1 -1)"><path d="%s"/><g id="marks">`, transform, p.Outline)
		for _, m := range p.Marks {
			b.WriteString(cross(m.XMm, m.YMm))
		}
		b.WriteString("</g></g></svg>")
		r := compared(t, p, b.String())
		if got := codes(r); !slices.Equal(got, want) || r.MarksRight != 19 {
			t.Errorf("%s: %v, %d marks right: %+v", transform, got, r.MarksRight, r.Findings)
		}
	}
}

// TestRoundTurned: a round flange with nothing but marks is found out turned.
func TestRoundTurned(t *testing.T) {
	t.Parallel()
	p := &Part{Name: "ring", Outline: "M-130 0A130 130 0 0 0 130 0A130 130 0 0 0 -130 0Z"}
	p.Marks = []Mark{{1, "a", xy(100, 0)}, {2, "a", xy(0, 100)}, {3, "b", xy(-80, 20)}}
	if err := p.setEdge(); err != nil {
		t.Fatal(err)
	}
	r := compared(t, p, `<svg width="300mm" height="300mm" viewBox="-150 -150 300 300"><circle r="130"/><g id="etch" transform="rotate(20)">`+
		cross(100, 0)+cross(0, -100)+cross(-80, -20)+`</g></svg>`)
	if !slices.Equal(codes(r), []Code{Turned}) || r.TurnedDeg < 19.9 || r.TurnedDeg > 20.1 || r.MarksRight != 3 {
		t.Errorf("turned %g: %+v", r.TurnedDeg, r.Findings)
	}
}

func TestMarking(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]bool{
		"mark": true, "Marking": true, "Pop marks": true, "layer-mark_2": true, "EngraveLayer": true, "punch1": true, "ETCH": true, "centre scribing": true,
		"uncut": false, "remarks": false, "unmarked": false, "Denmark": false, "market": false, "benchmark": false, "cut": false, "": false,
		"popMarks": true, "scratch": false, "PUNCHED": true,
	} {
		if marking(name) != want {
			t.Errorf("%q: %v", name, !want)
		}
	}
}

// TestInches: a part of a job in inches is spoken of in inches.
func TestInches(t *testing.T) {
	t.Parallel()
	p := marked(t)
	p.Units = parts.Inches
	d := markLines(cross)
	d[0] = `<path d="M15 140H225V40L205 20H15Z"/>`
	d[1] = circleAt(2, 0, 31)
	d[3] = `<rect x="155" y="75" width="10" height="10"/>`
	d[9] = cross(35, 36)
	r := compared(t, p, svgFile(mmHead, slices.Delete(d, 4, 5)))
	if len(r.Findings) < 5 {
		t.Errorf("%+v", r.Findings)
	}
	for _, f := range r.Findings {
		if strings.Contains(f.What, "mm") {
			t.Errorf("%s", f.What)
		}
	}
	if lines := strings.Join(r.Lines("x.svg"), "\n"); !strings.Contains(lines, "(to 0.0039 in)") || strings.Contains(lines, "mm") || !strings.Contains(lines, "the outline is 8.268 × 4.724 in, not 7.874 × 4.724 in") {
		t.Errorf("%s", lines)
	}
}

// TestCrossesOutOfTheMiddle: two strokes of 4 mm are a cross while their middles are
// within a tenth of that, whichever way; beyond it they are two lines.
func TestCrossesOutOfTheMiddle(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		x, y float64
		want int
	}{{0, 0, 1}, {0.38, 0, 1}, {-0.38, 0, 1}, {0, 0.38, 1}, {0, -0.38, 1}, {0.42, 0, 0}, {-0.42, 0, 0}, {0, 0.42, 0}, {0.3, 0.3, 0}} {
		found, rest := spots([]contour{
			{points: []point{xy(8, 5), xy(12, 5)}},
			{points: []point{xy(10+c.x, 3+c.y), xy(10+c.x, 7+c.y)}},
		})
		if len(found) != c.want || len(rest) != 2-2*c.want {
			t.Errorf("%+v: %d marks, %d lines", c, len(found), len(rest))
			continue
		}
		if c.want == 1 && (geom.Distance(found[0].at, xy(10+c.x/2, 5+c.y/2)) > 1e-9 || found[0].size != 4) {
			t.Errorf("%+v: %+v", c, found[0])
		}
	}
}
