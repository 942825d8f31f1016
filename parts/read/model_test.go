package read

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/parts"
)

// parse reads a part that must be right.
func parse(t *testing.T, src string, units parts.Units) *parts.Part {
	t.Helper()
	p, err := ParsePart("part.yaml", []byte(src), units)
	if err != nil {
		t.Fatalf("%v", err)
	}
	checkPart(t, p)
	return p
}

func TestFlatPart(t *testing.T) {
	p := parse(t, `part: barrel-flange
kind: flange
quantity: 2
material: S235
top: scribe
stock: {plate: 8 mm, cut: laser, length: 200}
outline: {circle: 165 mm, fit: h9, leave: 1 mm}
bore: {diameter: 114.3 mm, fit: {light-press: barrel-tube.outside}, leave: 2 mm}
chamfers: [{edge: bore-back, size: 5 mm, for: weld}]
holes:
  - {name: bolts, circle: {pcd: 140, count: 6, first: 30}, size: M10 clearance, countersink: {diameter: 20, angle: 90}}
  - {name: part-arc, face: back, arc: {pcd: 140, count: 4, first: 300, last: 60}, size: {diameter: 11, fit: H7}}
  - {name: pry, at: [[0, 60], [0, -60]], size: M8 tap, depth: 6 mm, note: for pulling}
  - {name: inch, at: [[60, 0]], size: 1/4 clearance coarse}
slots:
  - {name: adjust, at: [[65, 0]], width: 5, length: 12, turn: 90°}
notes: [one, "two: three"]
`, parts.Millimetres)
	for _, c := range []struct{ what, got, want string }{
		{"title", p.Title.Value, "barrel flange"},
		{"stock", fmt.Sprint(p.Stock.Form, p.Stock.Size.Mm, p.Stock.Length.Mm, p.Stock.Cut), "plate 8 200 laser"},
		{"thickness from the stock", fmt.Sprint(p.Thickness.Mm), "8"},
		{"outline", fmt.Sprint(p.Outline.Shape, p.Outline.Width.Mm, p.Outline.Size.Fit.Class.Value, p.Outline.LeaveOnPart.Mm), "circle165h91"},
		{"bore", fmt.Sprint(p.Bore.Size.Nominal.Mm, p.Bore.Size.Fit.LightPress.Part, p.Bore.Size.Fit.LightPress.Feature, p.Bore.Leave.Mm), "114.3barrel-tubeoutside2"},
		{"chamfer", fmt.Sprint(p.Chamfers[0].Edge.Value, p.Chamfers[0].Size.Mm, p.Chamfers[0].Angle.Deg, p.Chamfers[0].For), "bore-back 5 45 weld"},
		{"clearance", fmt.Sprint(p.Holes[0].Size.Make, p.Holes[0].Size.Thread, p.Holes[0].Size.Series, p.Holes[0].Through), "clearanceM10mediumtrue"},
		{"clearance for inches of any pitch", fmt.Sprint(p.Holes[3].Size.Make, p.Holes[3].Size.Thread, p.Holes[3].Size.Series), "clearance1/4UNCcoarse"},
		{"pattern", fmt.Sprint(p.Holes[0].Pattern.Count, p.Holes[0].Pattern.Shape), "6 {140 6 30 {0 0}}"},
		{"back face", fmt.Sprint(p.Holes[1].Face, p.Holes[1].Size.Make, p.Holes[1].Size.Size.Fit.Class.Value), "backplainH7"},
		{"tapped", fmt.Sprint(p.Holes[2].Size.Make, p.Holes[2].Size.Thread, p.Holes[2].Through, p.Holes[2].Depth.Mm, p.Holes[2].Note.Value), "tapM8false6for pulling"},
		{"place", fmt.Sprint(p.Holes[2].Pattern.Shape, p.Holes[2].Pattern.PosOf(1)), fmt.Sprint("{[{0 60} {0 -60}] centre} ", parts.Pos{File: "part.yaml", Line: 13, Column: 31})},
		{"slot", fmt.Sprint(p.Slots[0].Turn.Deg, p.Slots[0].Through), "90 true"},
		{"notes", p.Notes[1].Value, "two: three"},
	} {
		if strings.ReplaceAll(c.got, " ", "") != strings.ReplaceAll(c.want, " ", "") {
			t.Errorf("%s: %s, want %s", c.what, c.got, c.want)
		}
	}
}

func TestTurnedPart(t *testing.T) {
	p := parse(t, `part: housing
kind: bearing-housing
units: in
profile:
  outside:
    - {diameter: 4, fit: f7, length: 1/4}
    - {name: body, diameter: 6-1/2, length: 2, finish: Ra 3.2}
    - {name: nose, thread: M40x1.5, length: 20 mm}
  inside:
    - {name: register, diameter: 1, fit: {limits: [1, 1.001]}, length: 1, seat: bearing 30210 cup, undercut: {width: 1/8, depth: 0.3 mm}}
    - {thread: G1/2, length: 1/2}
radial:
  - {name: port, clock: [0, 180], axial: 1, from: back, size: M10x1 tap}
  - {name: drain, clock: -30, axial: 1, slot: {around: 8 mm, along: 20 mm}, depth: 5 mm}
  - {name: window, clock: 180, axial: 30 mm, window: {around: 40 mm, along: 25 mm, corner: 3 mm}}
`, parts.Millimetres)
	if got, want := p.Profile.LengthMm(), 2.25*25.4+20; math.Abs(got-want) > 1e-9 {
		t.Errorf("length %g, want %g", got, want)
	}
	out, in := p.Profile.Outside, p.Profile.Inside
	if out[0].Name.Value != "outside-1" || in[1].Name.Value != "inside-2" || out[1].Size.Nominal.Mm != 165.1 {
		t.Errorf("steps %+v %+v", out, in)
	}
	if out[2].Size.Thread.Value != "M40x1.5" || out[2].Size.Nominal.Set() || outerMm(&out[2]) != 40 {
		t.Errorf("thread %+v", out[2].Size)
	}
	if f := in[0].Size.Fit; len(f.Limits) != 2 || math.Abs(f.Limits[1].Mm-25.4254) > 1e-12 || in[0].Undercut.Width.Mm != 3.175 {
		t.Errorf("register %+v", in[0])
	}
	if r := p.Radials; len(r[0].Clock) != 2 || r[0].From != parts.Back || !r[0].Through || r[1].Through || r[1].Shape != parts.RadialSlot || r[2].Shape != parts.RadialWindow || r[2].Corner.Mm != 3 {
		t.Errorf("radials %+v", r)
	}
}

func TestTubeExpands(t *testing.T) {
	p := parse(t, "part: pipe\nkind: tube\ntube: {outside: {diameter: 114.3, fit: h9}, wall: 4, length: 600}\nchamfers: [{edge: bore-front, size: 1}]\n", parts.Millimetres)
	out, in := p.Profile.Outside[0], p.Profile.Inside[0]
	if out.Name.Value != "outside" || out.Size.Fit.Class.Value != "h9" || in.Name.Value != "bore" || math.Abs(in.Size.Nominal.Mm-106.3) > 1e-9 || in.Length.Mm != 600 {
		t.Errorf("steps %+v, %+v", out, in)
	}
}

func TestFormDefaults(t *testing.T) {
	turn := "part: screw\nkind: flight\nflight: {shaft: 60, outside: 150, pitch: 120, thickness: 4, hand: right, moves: front}\n"
	if one, long := parse(t, turn, parts.Millimetres).Flight, parse(t, strings.Replace(turn, "thickness", "length: 300, thickness", 1), parts.Millimetres).Flight; one.Length.Mm != 120 || long.Length.Mm != 300 {
		t.Errorf("flights of %+v and %+v, want one turn and 300", one.Length, long.Length)
	}
	f := parse(t, "part: hopper\nkind: cone\ncone: {large: 300, small: 150, height: 200, thickness: 2}\n", parts.Millimetres).Frustum
	if f.Seam.Deg != 180 || f.Inside || f.Overlap.Mm != 0 || f.Large.Mm != 300 {
		t.Errorf("cone %+v", f)
	}
}

// TestHolesOnOutlines: places just inside are taken, places just outside are
// not, on each shape.
func TestHolesOnOutlines(t *testing.T) {
	for _, c := range []struct {
		outline, face string
		in, out       string
	}{
		{"circle: 100", "front", "[35, 35]", "[36, 36]"},
		{"square: 100", "front", "[49, 49]", "[50, 0]"},
		{"square: 100, corner: 20", "front", "[44, 44]", "[45, 45]"},
		{"rectangle: [100, 40]", "front", "[49, 19]", "[19, 49]"},
		{"slot: [100, 40]", "front", "[44, 14]", "[45, 15]"},
		// Hexagon with a corner at TOP: across corners 100 / cos 30° = 115.47.
		{"polygon: {sides: 6, across-flats: 100}", "front", "[0, 57]", "[0, 58]"},
		{"polygon: {sides: 6, across-flats: 100, first: 30}", "front", "[57, 0]", "[0, 51]"},
		{"polygon: {points: [[0, 0], [100, 0], [100, 50]]}", "back", "[-90, 10]", "[90, 10]"},
		{`path: "M0 0 H100 V50 Z"`, "front", "[90, 10]", "[10, 10]"},
		// Half disc of radius 50 above the x axis.
		{`path: "M50 0 A50 50 0 0 1 -50 0 Z"`, "front", "[35, 35]", "[36, 36]"},
	} {
		src := "part: a\nkind: plate\nthickness: 8\noutline: {" + c.outline + "}\nholes:\n  - {name: h, face: " + c.face + ", at: [%s], size: 1}\n"
		if _, err := ParsePart("a", fmt.Appendf(nil, src, c.in), parts.Millimetres); err != nil {
			t.Errorf("%s refuses %s: %v", c.outline, c.in, err)
		}
		if _, err := ParsePart("a", fmt.Appendf(nil, src, c.out), parts.Millimetres); err == nil || !strings.Contains(err.Error(), "outside it") {
			t.Errorf("%s takes %s: %v", c.outline, c.out, err)
		}
	}
}

func TestJobModel(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, map[string]string{"disc.yaml": disc, "job.yaml": `job: Pug mill
revision: 2
date: 2025-03-14
drawn: A. R.
units: in
paper: 300x400 mm
tolerance: m
shop: {press: 20 t, lathe: {swing: 13, between: 30, speeds: [70, 115.5], tool: carbide}, drill: {speeds: [500], largest: 3/4}, paper: 0.004}
notes: [one]
parts: [disc.yaml]
`})
	j, err := Load(dir + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s := j.Shop
	for _, c := range []struct{ what, got, want string }{
		{"texts", fmt.Sprint(j.Name.Value, j.Revision.Value, j.Date.Value, j.DrawnBy.Value, j.Tolerance.Value, j.Units), "Pug mill 2 2025-03-14 A. R. m in"},
		{"paper", fmt.Sprint(j.Paper.Name, j.Paper.WidthMm, j.Paper.HeightMm), "custom 300 400"},
		{"shop", fmt.Sprintf("%.0f %.1f %.0f %v %.2f %.4f", s.PressN.Value, s.SwingMm.Mm, s.BetweenMm.Mm, s.CarbideTool, s.Drills.Mm, s.PaperThick.Mm), "196133 330.2 762 true 19.05 0.1016"},
		{"speeds", fmt.Sprint(s.LatheRPM[0].Value, s.LatheRPM[1].Value, s.DrillRPM[0].Value), "70 115.5 500"},
	} {
		if strings.ReplaceAll(c.got, " ", "") != strings.ReplaceAll(c.want, " ", "") {
			t.Errorf("%s: %s, want %s", c.what, c.got, c.want)
		}
	}
}

func TestPaper(t *testing.T) {
	for _, c := range []struct {
		units, paper  string
		width, height float64
	}{
		{"mm", "", 210, 297},
		{"in", "", 215.9, 279.4},
		{"mm", "paper: a3\n", 297, 420},
		{"mm", "paper: Tabloid\n", 279.4, 431.8},
		{"in", "paper: 12x18\n", 304.8, 457.2},
		{"mm", "paper: 12 in x 18 in\n", 304.8, 457.2},
		{"mm", "paper: 12x18 in\n", 304.8, 457.2},
	} {
		dir := t.TempDir()
		write(t, dir, map[string]string{"disc.yaml": disc, "job.yaml": "job: a\nunits: " + c.units + "\n" + c.paper + "parts: [disc.yaml]\n"})
		j, err := Load(dir + "/job.yaml")
		if err != nil {
			t.Errorf("%q: %v", c.paper, err)
		} else if math.Abs(j.Paper.WidthMm-c.width) > 1e-9 || math.Abs(j.Paper.HeightMm-c.height) > 1e-9 {
			t.Errorf("%q in %s is %g × %g mm, want %g × %g", c.paper, c.units, j.Paper.WidthMm, j.Paper.HeightMm, c.width, c.height)
		}
	}
}

// TestDatums: the same hole written from each corner, on both faces.
func TestDatums(t *testing.T) {
	for _, c := range []struct {
		outline, face, datum string
		inside, outside      string
	}{
		// A right triangle that fills the right and lower half of its box,
		// 100 × 50; seen from behind it fills the left and lower half.
		{"polygon: {points: [[0, 0], [100, 0], [100, 50]]}", "front", "right-bottom", "[10, 10]", "[90, 10]"},
		{"polygon: {points: [[0, 0], [100, 0], [100, 50]]}", "front", "left-bottom", "[90, 10]", "[10, 10]"},
		{"polygon: {points: [[0, 0], [100, 0], [100, 50]]}", "front", "right-top", "[10, 30]", "[90, 30]"},
		{"polygon: {points: [[0, 0], [100, 0], [100, 50]]}", "front", "left-top", "[90, 40]", "[10, 40]"},
		{"polygon: {points: [[0, 0], [100, 0], [100, 50]]}", "back", "left-bottom", "[10, 10]", "[90, 10]"},
		{"polygon: {points: [[0, 0], [100, 0], [100, 50]]}", "back", "right-top", "[90, 40]", "[10, 40]"},
		{`path: "M0 0H100V50Z"`, "back", "left-bottom", "[10, 10]", "[90, 10]"},
		// A hexagon with a corner at TOP is 100 wide and 115.47 high.
		{"polygon: {sides: 6, across-flats: 100}", "front", "left-top", "[50, 1]", "[1, 1]"},
		{"polygon: {sides: 6, across-flats: 100}", "front", "left-top", "[1, 57]", "[50, 115.5]"},
		{"circle: 100", "front", "left-bottom", "[15, 15]", "[14, 14]"},
	} {
		src := "part: a\nkind: plate\nthickness: 8\noutline: {" + c.outline + "}\nholes:\n  - {name: h, face: " + c.face + ", datum: " + c.datum + ", at: [%s], size: 1}\n"
		if _, err := ParsePart("a", fmt.Appendf(nil, src, c.inside), parts.Millimetres); err != nil {
			t.Errorf("%s, %s, %s refuses %s: %v", c.outline, c.face, c.datum, c.inside, err)
		}
		if _, err := ParsePart("a", fmt.Appendf(nil, src, c.outside), parts.Millimetres); err == nil || !strings.Contains(err.Error(), "outside it") {
			t.Errorf("%s, %s, %s takes %s: %v", c.outline, c.face, c.datum, c.outside, err)
		}
	}
}

// TestBoreRoom: the largest bore about the origin of each outline.
func TestBoreRoom(t *testing.T) {
	for _, c := range []struct {
		outline string
		room    float64
	}{
		{"circle: 100", 100},
		{"square: 100, corner: 20", 100},
		{"rectangle: [100, 40]", 40},
		{"slot: [100, 40]", 40},
		{"polygon: {sides: 6, across-flats: 50}", 50},
		{"polygon: {points: [[-10, -20], [30, -20], [30, 40], [-10, 40]]}", 20},
		{`path: "M-30 -20H50V40H-30Z"`, 40},
		// The nearest place of this triangle's long side, x + y = 60, is
		// 60/√2 away; its other sides are 20 away.
		{`path: "M-20 -20H80L-20 80Z"`, 40},
		{`path: "M-50 -50H60L-50 60Z"`, 2 * 10 / math.Sqrt2},
	} {
		src := "part: a\nkind: plate\nthickness: 8\noutline: {" + c.outline + "}\nbore: {diameter: %.6f}\n"
		if _, err := ParsePart("a", fmt.Appendf(nil, src, c.room-0.001), parts.Millimetres); err != nil {
			t.Errorf("%s refuses a bore just under %g: %v", c.outline, c.room, err)
		}
		if _, err := ParsePart("a", fmt.Appendf(nil, src, c.room+0.001), parts.Millimetres); err == nil || !strings.Contains(err.Error(), "as large as the outline") {
			t.Errorf("%s takes a bore just over %g: %v", c.outline, c.room, err)
		}
	}
}
