package compare

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// plate is a part with nothing symmetrical about it: a rectangle with one
// corner cut, a bore, a circle of six holes, two more holes and a slot; a
// blind hole besides.
func plate(t testing.TB) *Part {
	t.Helper()
	p := &Part{Name: "plate", Outline: "M-100 -60H100V40L80 60H-100Z"}
	p.Rounds = append(p.Rounds, Round{Group: "bore", DiameterMm: 58})
	for i := range 6 {
		sin, cos := math.Sincos(float64(30+60*i) * math.Pi / 180)
		p.Rounds = append(p.Rounds, Round{N: i + 1, Group: "bolts", Point: xy(45*sin, 45*cos), DiameterMm: 11})
	}
	p.Rounds = append(p.Rounds, Round{N: 7, Group: "lift", Point: xy(-85, 45), DiameterMm: 9}, Round{N: 8, Group: "lift", Point: xy(70, 45), DiameterMm: 9})
	p.Slots = []Slot{{N: 9, Group: "adjust", Point: xy(80, -30), WidthMm: 10, LengthMm: 30, EndsMm: [2]plan.XY{{XMm: 80, YMm: -20}, {XMm: 80, YMm: -40}}}}
	p.Blind = []Round{{N: 10, Group: "earth", Point: xy(-85, -45), DiameterMm: 6.8}}
	if err := p.setEdge(); err != nil {
		t.Fatal(err)
	}
	return p
}

// drawing is the plate as one would draw it: millimetres, y down, the corner
// of the sheet at 0, 0. Each piece is a line of its own.
func drawing() []string {
	lines := []string{`<path d="M20 140H220V40L200 20H20Z"/>`}
	for _, w := range [][3]float64{{0, 0, 29}} {
		lines = append(lines, circleAt(w[0], w[1], w[2]))
	}
	for i := range 6 {
		sin, cos := math.Sincos(float64(30+60*i) * math.Pi / 180)
		lines = append(lines, circleAt(45*sin, 45*cos, 5.5))
	}
	return append(lines, circleAt(-85, 45, 4.5), circleAt(70, 45, 4.5),
		`<path d="M195 100v20a5 5 0 0 0 10 0v-20a5 5 0 0 0 -10 0z"/>`)
}

// circleAt is a circle at a place of the part, y up from its middle.
func circleAt(x, y, r float64) string {
	return fmt.Sprintf(`<circle cx="%.4f" cy="%.4f" r="%g"/>`, 120+x, 80-y, r)
}

const mmHead = `<svg xmlns="http://www.w3.org/2000/svg" width="240mm" height="160mm" viewBox="0 0 240 160">`

func svgFile(head string, lines []string) string {
	return head + "\n" + strings.Join(lines, "\n") + "\n</svg>\n"
}

func compared(t *testing.T, p *Part, src string) *Report {
	t.Helper()
	sheet, err := Read(strings.NewReader(src))
	if err != nil {
		t.Fatal(err)
	}
	r, err := Compare(p, sheet, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Findings {
		marks := strings.HasPrefix(string(f.Code), "mark-") || f.Code == Doubled || f.Code == LinesUnread || f.Code == OthersUnread
		if want := map[bool]string{true: "check", false: "stop"}[marks]; f.Severity != want {
			t.Errorf("%s is a %q", f.Code, f.Severity)
		}
	}
	return r
}

func codes(r *Report) []Code {
	out := []Code{}
	for _, f := range r.Findings {
		out = append(out, f.Code)
	}
	slices.Sort(out)
	return out
}

// TestTrue: the right drawing, written in many ways, has no findings.
func TestTrue(t *testing.T) {
	plain := drawing()
	outlineAsLines := slices.Replace(drawing(), 0, 1,
		`<line x1="20" y1="140" x2="220" y2="140"/><line x1="220" y1="40" x2="220" y2="140"/>`,
		`<polyline points="220,40 200,20 20,20"/><path d="M20 140V20"/>`)
	four := drawing()
	four[1] = `<path d="M91 80a29 29 0 0 1 29-29 29 29 0 0129 29A29 29 0 0 1 120 109 29 29 0 0 1 91 80Z"/>`
	k := 29 * 0.5522847498
	cubics := drawing()
	cubics[1] = fmt.Sprintf(`<path d="M149 80C149 %[1]f %[2]f 109 120 109S91 %[1]f 91 80 %[3]f 51 120 51 149 %[4]f 149 80Z"/>`, 80+k, 120+k, 120-k, 80-k)
	var corners []string
	for i := range 90 {
		sin, cos := math.Sincos(float64(i) * 4 * math.Pi / 180)
		corners = append(corners, fmt.Sprintf("%.3f,%.3f", 120+29*cos, 80+29*sin))
	}
	many := drawing()
	many[1] = `<polygon points="` + strings.Join(corners, " ") + `"/>`
	var inGroups []string
	inGroups = append(inGroups, `<g transform="translate(200 100) rotate(90)"><g transform="scale(.5)"><g transform="matrix(0 -2 2 0 -200 -100)">`)
	inGroups = append(inGroups, `<g transform="translate(100,-100)">`)
	inGroups = append(inGroups, drawing()...)
	inGroups = append(inGroups, `</g></g></g></g>`)
	slot := drawing()
	slot[len(slot)-1] = `<rect x="195" y="95" width="10" height="30" rx="5"/>`
	used := append([]string{`<defs><circle id="h" r="4.5"/><circle id="h" r="3"/></defs>`}, drawing()...)
	used[9] = `<use href="#h" x="35" y="35"/>`
	for name, src := range map[string]string{
		"plain":     svgFile(mmHead, plain),
		"lines":     svgFile(mmHead, outlineAsLines),
		"four arcs": svgFile(mmHead, four),
		"cubics":    svgFile(mmHead, cubics),
		"polygon":   svgFile(mmHead, many),
		"groups":    svgFile(mmHead, inGroups),
		"rect slot": svgFile(mmHead, slot),
		"use":       svgFile(mmHead, used),
		"cm":        svgFile(`<svg width="24cm" height="16cm" viewBox="0 0 240 160">`, plain),
		"inches":    svgFile(fmt.Sprintf(`<svg width="%.9fin" height="%.9fin" viewBox="0 0 240 160">`, 240/25.4, 160/25.4), plain),
		"points":    svgFile(fmt.Sprintf(`<svg width="%.6fpt" viewBox="0 0 240 160">`, 240/25.4*72), plain),
		"pixels":    svgFile(fmt.Sprintf(`<svg width="%.6f" height="%.6fpx" viewBox="0 0 240 160">`, 240/25.4*96, 160/25.4*96), plain),
		"prefix":    `<?xml version="1.0" encoding="UTF-8"?><!DOCTYPE svg><!-- hi -->` + strings.ReplaceAll(strings.ReplaceAll(svgFile(mmHead, plain[1:]), "<", "<svg:"), "<svg:/", "</svg:") + "",
	} {
		if name == "prefix" {
			// Its outline was left out, and nothing else.
			src = strings.ReplaceAll(src, "<svg:?", "<?")
			src = strings.ReplaceAll(src, "<svg:!", "<!")
			if r := compared(t, plate(t), src); !slices.Equal(codes(r), []Code{OutlineMissing}) {
				t.Errorf("%s: %v", name, r.Findings)
			}
			continue
		}
		r := compared(t, plate(t), src)
		if len(r.Findings) != 0 {
			t.Errorf("%s: %+v", name, r.Findings)
		}
		if r.Matched != r.Wanted || r.Wanted != 10 {
			t.Errorf("%s: %d of %d matched", name, r.Matched, r.Wanted)
		}
	}
}

// TestWhole: what is wrong with all of a drawing is one finding.
func TestWhole(t *testing.T) {
	about := func(transform string) []string {
		return append(append([]string{`<g transform="` + transform + `">`}, drawing()...), "</g>")
	}
	for _, test := range []struct {
		name  string
		src   string
		code  Code
		check func(*Report) bool
		say   string
	}{
		{"no unit", svgFile(`<svg viewBox="0 0 240 160">`, drawing()), Scale,
			func(r *Report) bool { return math.Abs(r.Scale-25.4/96) < 1e-3 }, "millimetres are read as pixels, 96"},
		{"inch as mm", svgFile(mmHead, about("scale(0.03937007874)")), Scale,
			func(r *Report) bool { return math.Abs(r.Scale-1/25.4) < 1e-4 }, "inches are read as millimetres"},
		{"mm as inch", svgFile(mmHead, about("scale(25.4)")), Scale,
			func(r *Report) bool { return math.Abs(r.Scale-25.4) < 1e-2 }, "millimetres are read as inches"},
		{"72 dpi", svgFile(mmHead, about("scale(2.834645669)")), Scale,
			func(r *Report) bool { return math.Abs(r.Scale-72/25.4) < 1e-3 }, "points, 72 to the inch, are read"},
		{"96 dpi", svgFile(mmHead, about("scale(3.779527559)")), Scale,
			func(r *Report) bool { return math.Abs(r.Scale-96/25.4) < 1e-3 }, "pixels, 96 to the inch, are read"},
		{"fit to page", svgFile(mmHead, about("scale(0.97)")), Scale,
			func(r *Report) bool { return math.Abs(r.Scale-0.97) < 1e-3 }, "0.97 times"},
		{"mirror", svgFile(mmHead, about("translate(240) scale(-1 1)")), Mirror,
			func(r *Report) bool { return r.Mirrored && r.TurnedDeg == 0 }, "mirror image"},
		{"quarter", svgFile(mmHead, about("rotate(90)")), Turned,
			func(r *Report) bool { return r.TurnedDeg == 90 && !r.Mirrored }, "90° clockwise"},
		{"half", svgFile(mmHead, about("rotate(180)")), Turned,
			func(r *Report) bool { return math.Abs(r.TurnedDeg) == 180 }, "180°"},
		{"askew", svgFile(mmHead, about("rotate(-13.7)")), Turned,
			func(r *Report) bool { return math.Abs(r.TurnedDeg+13.7) < 0.05 }, "anticlockwise"},
	} {
		r := compared(t, plate(t), test.src)
		if len(r.Findings) != 1 || r.Findings[0].Code != test.code || !test.check(r) || !strings.Contains(r.Findings[0].What, test.say) {
			t.Errorf("%s: scale %g, turned %g, mirrored %v: %+v", test.name, r.Scale, r.TurnedDeg, r.Mirrored, r.Findings)
		}
		if r.Matched != r.Wanted {
			t.Errorf("%s: %d of %d matched", test.name, r.Matched, r.Wanted)
		}
	}
	// A scale and a mirror and a missing hole at once.
	lines := slices.Delete(about("scale(-25.4 25.4)"), 4, 5)
	if r := compared(t, plate(t), svgFile(mmHead, lines)); !slices.Equal(codes(r), []Code{HoleMissing, Mirror, Scale}) {
		t.Errorf("all at once: %+v", r.Findings)
	}
}

// TestFaults changes one thing each time and wants that and nothing else.
func TestFaults(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func([]string) []string
		want   []Code
		by     float64
		line   int
		n      int
	}{
		{"missing", func(d []string) []string { return slices.Delete(d, 3, 4) }, []Code{HoleMissing}, 0, 0, 2},
		{"missing bore", func(d []string) []string { return slices.Delete(d, 1, 2) }, []Code{HoleMissing}, 0, 0, 0},
		{"extra", func(d []string) []string { return append(d, circleAt(-60, 0, 4)) }, []Code{HoleExtra}, 8, 13, 0},
		{"moved", func(d []string) []string {
			d[7] = circleAt(45*math.Sin(330*math.Pi/180)+3, 45*math.Cos(330*math.Pi/180)-4, 5.5)
			return d
		}, []Code{HoleMoved}, 5, 9, 6},
		{"moved little", func(d []string) []string { d[8] = circleAt(-85.3, 45, 4.5); return d }, []Code{HoleMoved}, 0.3, 10, 7},
		{"bore final", func(d []string) []string { d[1] = circleAt(0, 0, 30); return d }, []Code{HoleDiameter}, 2, 3, 0},
		{"small hole", func(d []string) []string { d[9] = circleAt(70, 45, 4.25); return d }, []Code{HoleDiameter}, -0.5, 11, 8},
		{"square hole", func(d []string) []string {
			d[9] = `<rect x="185.5" y="30.5" width="9" height="9"/>`
			return d
		}, []Code{HoleShape}, 4.5 * (math.Sqrt2 - 1), 11, 8},
		{"open", func(d []string) []string { return append(d, `<path d="M60 100h20v10h-20v-9.5"/>`) }, []Code{Open}, 0.5, 13, 0},
		{"outline open", func(d []string) []string { d[0] = `<path d="M20 140H220V40L200 20H20V139.2"/>`; return d }, []Code{Open, OutlineMissing}, 0.8, 2, 0},
		{"doubled", func(d []string) []string { return append(d, d[4]) }, []Code{Doubled}, 0, 13, 0},
		{"doubled outline", func(d []string) []string { return append(d, d[0]) }, []Code{Doubled}, 0, 13, 0},
		{"doubled reversed", func(d []string) []string {
			return append(d, `<path d="M220 40V140H20V20H200Z"/>`)
		}, []Code{Doubled}, 0, 13, 0},
		{"doubled line", func(d []string) []string {
			d[0] = `<path d="M20 140H220V40L200 20H20"/><path d="M20 20V140"/><path d="M20 140V20"/>`
			return d
		}, []Code{Doubled}, 0, 2, 0},
		{"wide", func(d []string) []string { d[0] = `<path d="M15 140H225V40L205 20H15Z"/>`; return d }, []Code{OutlineSize}, 10, 2, 0},
		{"one side", func(d []string) []string { d[0] = `<path d="M20 140H223V40L203 20H20Z"/>`; return d }, []Code{OutlineSize}, 3, 2, 0},
		{"little wider", func(d []string) []string { d[0] = `<path d="M20 140H220.5V40L200.5 20H20Z"/>`; return d }, []Code{OutlineSize}, 0.5, 2, 0},
		{"other corner", func(d []string) []string { d[0] = `<path d="M20 140H220V50L190 20H20Z"/>`; return d }, []Code{OutlineShape}, 10 / math.Sqrt2, 2, 0},
		{"square slot", func(d []string) []string { d[10] = `<rect x="195" y="95" width="10" height="30"/>`; return d }, []Code{SlotShape}, 5 * (math.Sqrt2 - 1), 12, 9},
		{"rough hole", func(d []string) []string { d[9] = `<rect x="184" y="29" width="14.3" height="12"/>`; return d }, []Code{HoleShape}, math.Hypot(8.3, 6) - 4.5, 11, 8},
		{"rougher hole", func(d []string) []string { d[9] = `<rect x="184" y="29" width="14.5" height="12"/>`; return d }, []Code{Extra, HoleMissing}, 0, 0, 8},
		{"no slot", func(d []string) []string { return d[:10] }, []Code{SlotMissing}, 0, 0, 9},
		{"slot moved", func(d []string) []string {
			d[10] = `<rect x="195" y="97" width="10" height="30" rx="5"/>`
			return d
		}, []Code{SlotMoved}, 2, 12, 9},
		{"slot short", func(d []string) []string {
			d[10] = `<rect x="195" y="96" width="10" height="28" rx="5"/>`
			return d
		}, []Code{SlotShape}, 1, 12, 9},
		{"blind", func(d []string) []string { return append(d, circleAt(-85, -45, 3.4)) }, []Code{BlindCut}, 0, 13, 10},
		{"window", func(d []string) []string { return append(d, `<rect x="40" y="70" width="12" height="20"/>`) }, []Code{Extra}, 0, 13, 0},
		{"frame", func(d []string) []string { return append(d, `<rect x="0" y="0" width="240" height="160"/>`) }, []Code{Extra}, 0, 13, 0},
		{"doubled nearly", func(d []string) []string { return append(d, circleAt(70.09, 45, 4.5)) }, []Code{Doubled}, 0, 13, 0},
		{"doubled smaller", func(d []string) []string { return append(d, circleAt(70.05, 45, 4.46)) }, []Code{Doubled}, 0, 13, 0},
		{"beside", func(d []string) []string { return append(d, circleAt(70.07, 45, 4.46)) }, []Code{HoleExtra}, 8.92, 13, 0},
		{"doubled slot", func(d []string) []string { return append(d, `<rect x="195.09" y="95" width="10" height="30" rx="5"/>`) }, []Code{Doubled}, 0, 13, 0},
		{"slot beside", func(d []string) []string { return append(d, `<rect x="195.11" y="95" width="10" height="30" rx="5"/>`) }, []Code{Extra}, 0, 13, 0},
		{"holes off", func(d []string) []string { // the outline is right, so that they are not
			for i := 1; i < 10; i++ {
				d[i] = `<g transform="translate(0.3 0)">` + d[i] + "</g>"
			}
			return d
		}, slices.Repeat([]Code{HoleMoved}, 9), 0.3, 3, 0},
		{"nothing", func(d []string) []string { return nil }, []Code{Empty}, 0, 0, 0},
	} {
		r := compared(t, plate(t), svgFile(mmHead, test.change(drawing())))
		if !slices.Equal(codes(r), test.want) {
			t.Errorf("%s: %v: %+v", test.name, codes(r), r.Findings)
			continue
		}
		f := r.Findings[0]
		if math.Abs(f.ByMm-test.by) > 2e-3 || f.Line != test.line || f.N != test.n {
			t.Errorf("%s: by %g mm at line %d, hole %d; want %g, %d, %d", test.name, f.ByMm, f.Line, f.N, test.by, test.line, test.n)
		}
		if r.Scale != 1 || r.Mirrored || r.TurnedDeg != 0 {
			t.Errorf("%s: scale %g mirrored %v turned %g", test.name, r.Scale, r.Mirrored, r.TurnedDeg)
		}
	}
}

// TestSymmetrical: a round flange turned by one hole is the same flange.
func TestSymmetrical(t *testing.T) {
	p := &Part{Name: "ring", Outline: "M-130 0A130 130 0 0 0 130 0A130 130 0 0 0 -130 0Z"}
	p.Rounds = []Round{{Group: "bore", DiameterMm: 166.3}}
	for i := range 6 {
		sin, cos := math.Sincos(float64(60*i) * math.Pi / 180)
		p.Rounds = append(p.Rounds, Round{N: i + 1, Group: "bolts", Point: xy(110*sin, 110*cos), DiameterMm: 11})
	}
	if err := p.setEdge(); err != nil {
		t.Fatal(err)
	}
	ring := func(turn float64, r float64) string {
		lines := []string{`<circle r="130"/>`, `<circle r="83.15"/>`}
		for i := range 6 {
			sin, cos := math.Sincos((turn + float64(60*i)) * math.Pi / 180)
			lines = append(lines, fmt.Sprintf(`<circle cx="%f" cy="%f" r="%g"/>`, 110*cos, 110*sin, r))
		}
		return svgFile(`<svg width="300mm" height="300mm" viewBox="-150 -150 300 300">`, lines)
	}
	if r := compared(t, p, ring(30, 5.5)); len(r.Findings) != 0 {
		t.Errorf("%+v", r.Findings)
	}
	r := compared(t, p, ring(40, 5.5))
	if !slices.Equal(codes(r), []Code{Turned}) || math.Abs(math.Abs(r.TurnedDeg)-10) > 0.05 {
		t.Errorf("turned %g: %+v", r.TurnedDeg, r.Findings)
	}
	// All holes wrong is six findings and no turn.
	if r = compared(t, p, ring(30, 6.5)); len(r.Findings) != 6 || r.Findings[5].Code != HoleDiameter {
		t.Errorf("%+v", r.Findings)
	}
}

// TestLater: what is drilled afterwards may be left out or cut small, but not
// in the wrong place or too large.
func TestLater(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func([]string) []string
		want   []Code
	}{
		{"as drilled", func(d []string) []string { return d }, []Code{}},
		{"left out", func(d []string) []string { return slices.Delete(d, 8, 10) }, []Code{}},
		{"one of two", func(d []string) []string { return slices.Delete(d, 9, 10) }, []Code{HoleMissing}},
		{"pilot", func(d []string) []string { d[8] = circleAt(-85, 45, 3); return d }, []Code{HoleDiameter}},
		{"too large", func(d []string) []string { d[8] = circleAt(-85, 45, 5); return d }, []Code{HoleDiameter}},
		{"elsewhere", func(d []string) []string { d[8] = circleAt(-80, 45, 4.5); return d }, []Code{HoleMoved}},
	} {
		p := plate(t)
		p.Rounds[7].Later, p.Rounds[8].Later = true, true
		r := compared(t, p, svgFile(mmHead, test.change(drawing())))
		if !slices.Equal(codes(r), test.want) || test.name == "left out" && (len(r.LeftOut) != 2 || r.Wanted != 8) {
			t.Errorf("%s: %+v", test.name, r)
		}
	}
}

func TestToleranceRefused(t *testing.T) {
	sheet, err := Read(strings.NewReader(svgFile(mmHead, drawing())))
	if err != nil {
		t.Fatal(err)
	}
	for _, tol := range []float64{-1, 10.01, 0.0009, math.NaN(), math.Inf(1), 1e-9} {
		if _, err := Compare(plate(t), sheet, tol); err == nil || err.Error() != fmt.Sprintf("compare: tolerance %g", tol) {
			t.Errorf("a tolerance of %v: %v", tol, err)
		}
	}
	for _, tol := range []float64{0.001, 10} {
		if _, err := Compare(plate(t), sheet, tol); err != nil {
			t.Errorf("a tolerance of %v: %v", tol, err)
		}
	}
	if r, err := Compare(plate(t), sheet, 0.02); err != nil || len(r.Findings) != 0 {
		t.Errorf("%v %v", r, err)
	}
}

// TestReadFaults wants the place of each fault.
func TestReadFaults(t *testing.T) {
	for _, test := range []struct {
		src          string
		line, column int
		say          string
	}{
		{"", 1, 1, "no element"},
		{"<html/>", 1, 1, "starts with <html>"},
		{"<svg>", 1, 1, "never closed"},
		{"<svg>\n  <g></svg>", 2, 6, "closes <g>"},
		{"<svg/><svg/>", 1, 7, "second drawing"},
		{"<svg>\n<path d=\"M0 0 L 10\"/></svg>", 2, 19, "a number within"},
		{"<svg>\n<path d=\"M0 0 X 10\"/></svg>", 2, 15, "a number within"},
		{"<svg><path d='L 1 1'/></svg>", 1, 15, "start with M"},
		{"<svg><path d='M0 0A1 1 0 2 0 3 3'/></svg>", 1, 26, "flag"},
		{"<svg><path d='M0 0Z 5 5'/></svg>", 1, 21, "command letter"},
		{"<svg><path d='M0 0L1e400 5'/></svg>", 1, 20, "a number within"},
		{"<svg><path d='M0 0L1e9 5'/></svg>", 1, 6, "further than"},
		{"<svg>\n\n<g transform=\"rotate(3) turn(5)\"/></svg>", 3, 25, "turn with 1"},
		{"<svg><g transform='scale(1'/></svg>", 1, 27, "closing bracket"},
		{"<svg width='3 ells'/>", 1, 13, "unit"},
		{"<svg width='3em'/>", 1, 13, "font"},
		{"<svg width='-3mm'/>", 1, 13, "more than 0"},
		{"<svg viewBox='0 0 0 5'/>", 1, 15, "above 0"},
		{"<svg viewBox='0 0 x 5'/>", 1, 19, "four numbers"},
		{"<svg><circle r='-4'/></svg>", 1, 6, "negative"},
		{"<svg><circle r='four'/></svg>", 1, 17, "number"},
		{"<svg><polygon points='1 2 3'/></svg>", 1, 28, "lacks its y"},
		{"<svg><use href='#a'/></svg>", 1, 17, "not in the file"},
		{"<svg><use href='other.svg#a'/></svg>", 1, 17, "other files"},
		{"<svg><g id='a'><use href='#a'/></g></svg>", 1, 16, "circle"},
		{"<svg><defs><use id='9' href='#8'/><use id='8' href='#7'/><use id='7' href='#6'/><use id='6' href='#5'/><use id='5' href='#4'/><use id='4' href='#3'/><use id='3' href='#2'/><use id='2' href='#1'/><g id='1'/></defs><use href='#9'/></svg>", 1, 173, "more than 8 deep"},
		{"<!DOCTYPE svg [<!ENTITY a 'b'>]><svg/>", 1, 1, "entities"},
		{"<!DOCTYPE svg [<!ELEMENT a ANY>]><svg/>", 1, 1, "entities"},
		{"<!ENTITY a 'b'><svg/>", 1, 1, "entities"},
		{"<svg><ellipse rx='-4' ry='1'/></svg>", 1, 6, "negative"},
		{"<svg><ellipse rx='4' ry='-0.5'/></svg>", 1, 6, "negative"},
		{"<svg><rect width='-4' height='2'/></svg>", 1, 6, "negative"},
		{"<svg><rect width='4' height='-2'/></svg>", 1, 6, "negative"},
		{"<svg><rect width='4' height='2' rx='-1'/></svg>", 1, 6, "negative"},
		{"<svg><rect width='4' height='2' rx='1' ry='-1'/></svg>", 1, 6, "negative"},
		{"<svg><path d='M0 0Z,M1 1'/></svg>", 1, 20, "command letter"},
		{"<svg><path d='m0 0z,m1 1'/></svg>", 1, 20, "command letter"},
		{"<svg><path d=',M1 1'/></svg>", 1, 15, "command letter"},
		{"<svg><text>&nothing;</text></svg>", 1, 21, "well-formed"},
		{"<svg>é<g a='\xff'/></svg>", 1, 13, "UTF-8"},
		{"<svg>é<path d='M'/></svg>", 1, 17, "number"},
		{"<svg height='-3mm'/>", 1, 14, "more than 0"},
		{"<svg><svg x='a'/></svg>", 1, 14, "number"},
		{"<svg><svg y='a'/></svg>", 1, 14, "number"},
		{"<svg><svg width='a'/></svg>", 1, 18, "number"},
		{"<svg><svg height='3em'/></svg>", 1, 19, "the unit em depends on a font"},
		{"<svg><svg viewBox='0 0 0 5'/></svg>", 1, 20, "above 0"},
		{"<svg><use x='a' href='#a'/><g id='a'/></svg>", 1, 14, "number"},
		{"<svg><use y='a' href='#a'/><g id='a'/></svg>", 1, 14, "number"},
		{"<svg><use/></svg>", 1, 6, "use points to \"\""},
		{"<svg><symbol id='a' transform='turn(5)'/><use href='#a'/></svg>", 1, 32, "turn with 1"},
		{"<svg><line x1='a'/></svg>", 1, 16, "number"},
		{"<svg><polyline points='1 2 x'/></svg>", 1, 28, "number belongs"},
		{"<svg><path d='M0 0 &amp; 1'/></svg>", 1, 15, "a number within"},
		{"<svg><path d='M0 0L1e9 5Z'/></svg>", 1, 6, "further than"},
		{"<svg><path d='M0 0L1e9 5M1 1'/></svg>", 1, 6, "further than"},
		{"<svg/></svg>", 1, 7, "</svg> closes nothing"},
		{strings.Repeat("<g>", 70), 1, 1 + 3*64, "deeper"},
		{"<svg" + strings.Repeat(" ", MaxBytes) + "/>", 1, 1, "larger than 16 MiB"},
	} {
		_, err := Read(strings.NewReader(test.src))
		var syntax *SyntaxError
		if !errors.As(err, &syntax) {
			t.Errorf("%.60q: %v", test.src, err)
			continue
		}
		if syntax.Line != test.line || syntax.Column != test.column || !strings.Contains(syntax.What, test.say) {
			t.Errorf("%.60q: %v, want %d:%d with %q", test.src, err, test.line, test.column, test.say)
		}
	}
}

// TestBomb: elements that use each other three times over are cut off: 3⁹ is few enough elements,
// and too deep; 5⁸ are too many.
func TestBomb(t *testing.T) {
	for times, say := range map[int]string{3: "more than 8 deep", 5: "more than 200000 elements"} {
		var b strings.Builder
		b.WriteString(`<svg><g id="a0"/>`)
		for i := 1; i < 30; i++ {
			fmt.Fprintf(&b, `<g id="a%d">%s</g>`, i, strings.Repeat(fmt.Sprintf(`<use href="#a%d"/>`, i-1), times))
		}
		b.WriteString("</svg>")
		if _, err := Read(strings.NewReader(b.String())); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%d times over: %v, want %q", times, err, say)
		}
	}
	fault := errors.New("no disk")
	if _, err := Read(iotest.ErrReader(fault)); !errors.Is(err, fault) {
		t.Errorf("a file that cannot be read: %v", err)
	}
}

// TestTooMuch: the last element, contour and point that are read, and the first that is not.
func TestTooMuch(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		what string
		f    file
		want string
	}{
		{"elements", file{elements: maxElements - 3}, ""}, {"elements", file{elements: maxElements - 2}, "there are more than 200000 elements"},
		{"contours", file{elements: 1, sheet: &Sheet{contours: make([]contour, maxContours-1)}}, ""}, {"contours", file{sheet: &Sheet{contours: make([]contour, maxContours)}}, "more than 20000 contours"},
		{"points", file{points: maxPoints - 3}, ""}, {"points", file{points: maxPoints - 2}, "more than 4000000 points"},
	} {
		f := c.f
		if f.sheet == nil {
			f.sheet = &Sheet{}
		}
		f.src, f.byID = []byte("<svg><g><path d='M0 0 4 0 0 3'/></g></svg>"), map[string]*element{}
		f.survey()
		root, err := f.tree()
		if err == nil {
			err = f.svg(root)
		}
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.what, err, c.want)
		}
	}
}

// TestPathCommands draws the same square or circle with every command.
func TestPathCommands(t *testing.T) {
	square := []string{
		"M0 0L10 0 10 10 0 10Z", "m0 0l10 0 0 10-10 0z", "M0,0H10V10H0Z", "m0 0h10v10h-10z",
		"M0 0C0 0 10 0 10 0S10 10 10 10L0 10Z", "m0 0c0 0 10 0 10 0s0 10 0 10l-10 0z",
		"M0 0Q5 0 10 0T10 10L0 10Z", "m0 0q5 0 10 0t-10 10", "M0 0A0 5 0 0 0 10 0L10 10 0 10z", "M0 0 10 0 10 10 0 10Z",
		"M.0.0L1e1-0 10,10+0,10Z",
	}
	for i, d := range square {
		s, err := Read(strings.NewReader(`<svg width="10mm" viewBox="0 0 10 10"><path d="` + d + `"/></svg>`))
		if err != nil {
			t.Errorf("%s: %v", d, err)
			continue
		}
		if i == 6 || i == 7 {
			continue // smooth curves bulge; they are read all the same
		}
		if len(s.contours) != 1 || !s.contours[0].closed {
			t.Errorf("%s: %+v", d, s.contours)
			continue
		}
		if a, c := s.contours[0].area(); math.Abs(a-100) > 1e-3 || geom.Distance(c, xy(5, -5)) > 1e-3 {
			t.Errorf("%s: area %g about %v", d, a, c)
		}
	}
	for _, d := range []string{
		"M0 5A5 5 0 1 0 10 5 5 5 0 1 0 0 5Z", "M0 5a5 5 0 01 5-5 5 5 0 015 5A5 5 0 0 1 0 5Z",
		"M10 5A5 5 0 0 1 8.535534 8.535534 5 5 0 0 1 5 10 5 5 0 0 1 1.464466 8.535534 5 5 0 0 1 0 5 5 5 0 0 1 1.464466 1.464466 5 5 0 0 1 5 0 5 5 0 0 1 8.535534 1.464466 5 5 0 0 1 10 5Z", // eighths
		"M0 5A5 5 45 1 1 10 5A1 1 0 0 1 0 5Z", "M0 5A4.6 4.6 0 1 1 10 5A4.9 4.9 0 0 1 0 5Z", // radii too small grow (F.6.6)
	} {
		s, err := Read(strings.NewReader(`<svg width="10mm" viewBox="0 0 10 10"><path d="` + d + `"/></svg>`))
		if err != nil || len(s.contours) != 1 {
			t.Errorf("%s: %v", d, err)
			continue
		}
		if c, r, ok, _ := s.contours[0].circle(); !ok || math.Abs(r-5) > 2e-3 || geom.Distance(c, xy(5, -5)) > 2e-3 {
			t.Errorf("%s: centre %v radius %g %v", d, c, r, ok)
		}
	}
}

func TestNoCircles(t *testing.T) {
	for name, body := range map[string]string{
		"ellipse":   `<ellipse rx="10" ry="9.5"/>`,
		"sixteen":   `<polygon points="29,0 26.793,11.098 20.506,20.506 11.098,26.793 0,29 -11.098,26.793 -20.506,20.506 -26.793,11.098 -29,0 -26.793,-11.098 -20.506,-20.506 -11.098,-26.793 0,-29 11.098,-26.793 20.506,-20.506 26.793,-11.098"/>`,
		"twelve":    `<polygon points="10,0 8.66,5 5,8.66 0,10 -5,8.66 -8.66,5 -10,0 -8.66,-5 -5,-8.66 0,-10 5,-8.66 8.66,-5"/>`,
		"half":      `<path d="M-10 0A10 10 0 0 1 10 0Z"/>`,
		"run twice": `<path d="M-10 0A10 10 0 0 1 10 0 10 10 0 0 1 -10 0 10 10 0 0 1 10 0 10 10 0 0 1 -10 0Z"/>`,
		"back":      `<path d="M-10 0A10 10 0 0 1 10 0A10 10 0 0 0 -10 0Z"/>`,
	} {
		s, err := Read(strings.NewReader(`<svg width="10mm" viewBox="0 0 10 10">` + body + `</svg>`))
		if err != nil || len(s.contours) != 1 {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if _, r, ok, _ := s.contours[0].circle(); ok {
			t.Errorf("%s is taken for a circle of radius %g", name, r)
		}
	}
}

// TestSeeds reads drawings in the manner of several programs.
func TestSeeds(t *testing.T) {
	for name, want := range map[string][]Code{
		"nested": {HoleMissing, HoleMissing, HoleMissing, HoleMissing, HoleMissing, HoleMissing, OthersUnread}, // a hidden frame
		"pieces": {Extra, HoleMissing, HoleMissing, HoleMissing, HoleMissing, HoleMissing, HoleMissing, HoleMissing, HoleMissing, SlotMissing},
	} {
		src, err := os.ReadFile("testdata/seeds/" + name + ".svg")
		if err != nil {
			t.Fatal(err)
		}
		if r := compared(t, plate(t), string(src)); !slices.Equal(codes(r), want) {
			t.Errorf("%s: %+v", name, r.Findings)
		}
	}
}

func FuzzRead(f *testing.F) {
	seeds, err := filepath.Glob("testdata/seeds/*.svg")
	if err != nil || len(seeds) < 4 {
		f.Fatalf("%d seeds: %v", len(seeds), err)
	}
	for _, name := range seeds {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(src))
	}
	f.Add(svgFile(mmHead, drawing()))
	f.Add(`<svg viewBox="0 0 1 1" preserveAspectRatio="none" width="3in"><svg x="10%" viewBox="0 0 5 5"><rect width="50%" height="2" rx="9"/></svg></svg>`)
	f.Add(`<svg><path d="M0 0C1 1 2 2 3 3S4 4 5 5Q6 6 7 7T8 8A1 2 3 0 1 9 9Z m1 1zl2 2"/></svg>`)
	f.Add(`<svg><defs><symbol id="s" viewBox="0 0 2 2"><circle r="1"/></symbol></defs><use href="#s" width="4" height="4" transform="skewX(20)"/></svg>`)
	f.Add(`<svg><g transform="scale(0) rotate(1 2 3)"><polygon points="0,0 1,1 2,0"/></g></svg>`)
	f.Fuzz(func(t *testing.T, src string) {
		sheet, err := Read(strings.NewReader(src))
		if err != nil {
			var syntax *SyntaxError
			if !errors.As(err, &syntax) || syntax.Line < 1 || syntax.Column < 1 || sheet != nil {
				t.Fatalf("%v", err)
			}
			return
		}
		for _, c := range sheet.contours {
			if len(c.points) < 2 && !c.mark || len(c.points) == 0 || c.closed && len(c.points) < 3 {
				t.Fatalf("a contour of %d points", len(c.points))
			}
			for _, p := range c.points {
				if !(math.Abs(p.XMm) <= maxMm && math.Abs(p.YMm) <= maxMm) {
					t.Fatalf("a point at %v", p)
				}
			}
		}
		r, err := Compare(plate(t), sheet, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range r.Findings {
			for _, v := range []float64{f.XMm, f.YMm, f.ByMm, r.Scale, r.TurnedDeg} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%+v", r)
				}
			}
		}
	})
}
