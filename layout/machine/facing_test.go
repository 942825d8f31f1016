package machine_test

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// said are the problems of some kinds, in words.
func said(t *testing.T, files map[string]string, kinds ...plan.ProblemKind) string {
	t.Helper()
	return saidIn(t, t.TempDir(), files, kinds...)
}

// saidIn is said of a folder into which the files are put.
func saidIn(t *testing.T, dir string, files map[string]string, kinds ...plan.ProblemKind) string {
	t.Helper()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	m, _ := load(t, filepath.Join(dir, "job.yaml"))
	var out []string
	for _, p := range m.Problems {
		for _, k := range kinds {
			if p.Kind == k {
				out = append(out, words.Writer{Units: parts.Millimetres}.Says(p))
			}
		}
	}
	return strings.Join(out, "\n")
}

// Two plates are bolted face on face. What is beside the bolts goes on through both,
// ends in a thread, or is sunk on the side of its head; of one name it meets hole on hole.
func TestFacingHoles(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: %s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [200, %s]}\nholes:\n  - {name: bolts, at: [[-80, 0], [80, 0]], size: %s}\n"
		job   = "job: J\nunits: mm\nparts: [a.yaml, b.yaml]\njoints:\n  - name: j\n    bolt: {through: a.bolts, into: b.bolts, bolt: M8 8.8}\n    face: back-on-front\n"
	)
	for _, c := range []struct{ a, b, want string }{
		{"", "", ""},
		{"name: x, at: [[0, 0]], size: M8 clearance", "", "x of a are holes for screws in no joint, and b closes them"},
		{"name: x, at: [[0, 0]], size: M8 clearance, countersink: {diameter: 18, angle: 90}", "", "x of a are holes for screws in no joint, and b closes them"},
		{"name: x, face: back, at: [[0, 0]], size: M8 clearance, countersink: {diameter: 18, angle: 90}", "", ""},
		{"name: x, at: [[0, 0]], size: M8 tap", "", ""},
		{"name: x, face: back, at: [[0, 0]], size: M8 tap, depth: 6", "", "x of a are holes for screws in no joint, and b closes them"},
		{"name: x, face: front, at: [[0, 0]], size: M8 tap, depth: 6", "", ""},
		{"name: x, at: [[0, 0]], size: 9", "", ""},
		{"name: x, at: [[0, 0]], size: M8 clearance, depth: 5", "", ""},
		{"name: x, at: [[0, 0], [20, 70]], size: 9, depth: 5", "", ""},
		{"name: x, at: [[0, 0], [20, 0], [20, 70]], size: 9", "", "b closes 2 of the 3 x of a, which no joint uses"},
		{"name: x, at: [[0, 0], [20, 50], [20, 70]], size: 9", "", "b closes 1 of the 3 x of a, which no joint uses"}, // half of one is free
		{"name: x, at: [[0, 0]], size: M8 clearance", "name: y, at: [[0, 0]], size: 12", ""},
		{"name: x, at: [[20, 0]], size: M8 clearance", "name: y, at: [[29, 0]], size: M8 tap", "x of a are holes for screws in no joint, and b closes them"}, // beside the thread
		{"name: x, at: [[20, 0]], size: M8 clearance", "name: y, at: [[21.7, 0]], size: 12", ""},
		{"name: x, at: [[20, 0]], size: M8 clearance", "name: y, at: [[21.804, 0]], size: 12", "x of a and y of b face one another and miss by up to 1.8"},
		{"name: x, at: [[20, 0]], size: 9", "name: y, at: [[30.4, 0]], size: 12", "x of a and y of b face one another and miss by up to 10.4"},
		{"name: x, at: [[20, 0]], size: 9", "name: y, at: [[30.6, 0]], size: 12", ""},
		{"name: x, at: [[20, 0]], size: 9", "name: x, at: [[30.6, 0]], size: 12", "x of a and x of b face one another and miss by up to 10.6"},
		{"name: x, at: [[20, 0], [-20, 0]], size: 9", "name: x, at: [[20, 0]], size: 9", ""},
		{"name: x, at: [[20, 0]], size: M8 tap", "name: x, at: [[30.6, 0]], size: M8 tap", ""},
		{"name: x, at: [[20, 0]], size: M8 tap", "name: x, at: [[30.6, 0]], size: 9", "x of a and x of b face one another and miss by up to 10.6"},
		{"name: x, at: [[20, 0]], size: 9, depth: 5", "name: x, at: [[30.6, 0]], size: 9", ""},
		{"name: x, face: back, at: [[-20, 0]], size: 9, depth: 5", "name: x, at: [[20, 0]], size: 9", ""},
	} {
		hole := func(h string) string {
			if h == "" {
				return ""
			}
			return "  - {" + h + "}\n"
		}
		files := map[string]string{"job.yaml": job, "a.yaml": fmt.Sprintf(plate, "a", "160", "M8 clearance") + hole(c.a), "b.yaml": fmt.Sprintf(plate, "b", "100", "M8 tap") + hole(c.b)}
		if got := said(t, files, plan.HoleDeadEnd, plan.HolesPartShut, plan.HolesUnmet); got != c.want {
			t.Errorf("%q on %q: %q, want %q", c.a, c.b, got, c.want)
		}
	}
}

// A flight of 330 turns in a tube of 160 inside: half a hundredth of its outside off it at the least, a tenth at the most,
// by their radii. The tube stands on the plate of 20 that the end of the shaft of 400 is pressed into, and of 200 it holds
// 170 of the flight, which ends 30 before the plate; what holds less than half of it is no trough.
func TestFlightInTube(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ outside, tube, want string }{
		{"158.4", "200", ""}, // 0.8, of 0.792
		{"158.43", "200", "flight-tight Flight Tube 0.79"}, // 0.785, of 0.792
		{"158.43", "100", "flight-tight Flight Tube 0.79"},
		{"158.43", "30.6", "flight-tight Flight Tube 0.79"}, {"158.43", "29.4", ""}, // 0.6 of it in the tube, and none
		{"133.4", "200", ""}, // 13.3, of 13.34
		{"133.2", "200", "flight-wide Flight Tube 13.4"},
		{"133.2", "195", "flight-wide Flight Tube 13.4"},
		{"133.2", "194.9", ""},
		{"170", "200", ""}, // it does not go in, which is said elsewhere
	} {
		got := found(t, map[string]string{
			"end.yaml":    "part: end\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {circle: 200}\nbore: {diameter: 70, fit: H7, leave: 2}\n",
			"tube.yaml":   "part: tube\ntitle: Tube\nkind: tube\nmaterial: S235\nstock: {tube: 180, wall: 10, length: 210}\ntube: {outside: 180, wall: 10, length: " + c.tube + "}\n",
			"shaft.yaml":  "part: shaft\nkind: turned\nmaterial: S235\nstock: {round: 75 mm}\nprofile:\n  outside: [{name: body, diameter: 70, fit: s6, length: 400}]\n",
			"flight.yaml": "part: flight\ntitle: Flight\nkind: flight\nmaterial: S235\nstock: {sheet: 6 mm, cut: plasma}\nflight: {shaft: 70, outside: " + c.outside + ", pitch: 110, thickness: 6, length: 330}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [end.yaml, tube.yaml, shaft.yaml, flight.yaml]\njoints:\n  - {name: p, press: {shaft: shaft.body, bore: end.bore, method: heat}, level: back-with-back}\n" +
				"  - {name: t, weld: {part: tube.outside, to: end.outline, type: fillet, size: 4}, place: {on: front, with: back, at: [0, 0], top: up}}\n" +
				"  - {name: f, weld: {part: flight.inside, to: shaft.body, type: fillet, size: 4 mm, sides: 2}, place: {on: front, with: back, at: [0, 0], top: up, gap: -350}}\n",
		}, plan.FlightTight, plan.FlightWide)
		if got != c.want {
			t.Errorf("%s in %s: %q, want %q", c.outside, c.tube, got, c.want)
		}
	}
}

// The mill's flight, 151 outside, turns (159.3 − 151)/2 off its barrel; what is no flight off nothing.
func TestFlightGap(t *testing.T) {
	t.Parallel()
	m, _ := load(t, "../../testdata/pugmill/job.yaml")
	for part, want := range map[string]struct {
		in string
		mm float64
	}{"auger-flight": {"Barrel tube", 4.15}, "auger-hub": {}} {
		if in, mm := m.FlightGapMm(part); in != want.in || math.Abs(mm-want.mm) > 1e-9 {
			t.Errorf("%s: %g off %q", part, mm, in)
		}
	}
}

// An upright of 100 stands on a plate of 120 and is welded along 100; where it reaches over
// the edge, or the weld is longer, less lies there than is to be welded. What it touches is
// counted once it is welded on, nothing that is bolted on, or comes later.
func TestSeamBeyond(t *testing.T) {
	t.Parallel()
	const (
		plate  = "part: %s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [%s]}\n"
		job    = "job: J\nunits: mm\nparts: [a.yaml, b.yaml, c.yaml]\njoints:\n%s  - name: w\n    weld: {part: a.outline, to: b.outline, type: fillet, length: %s, sides: 2, process: MAG}\n    place: {on: front, with: bottom, from-left: 100, from-bottom: %s, front: left}\n%s"
		bolted = "  - {name: c, bolt: {through: c.h, into: b.h, bolt: M8 8.8}, face: back-on-front}\n"
		welded = "  - {name: c, weld: {part: c.outline, to: b.outline, type: fillet, length: 40}, place: {on: front, with: back, at: [30, 0], top: up}}\n"
	)
	for _, c := range []struct{ length, bottom, before, after, want string }{
		{"100", "10", bolted, "", ""},
		{"100", "20", bolted, "", ""},
		{"100", "21", bolted, "", ""},
		{"100", "22", welded, "", ""},
		{"100", "22", "", welded, "the weld is 100 long, and a lies on what it is welded to over 98"},
		{"100", "22", bolted, "", "the weld is 100 long, and a lies on what it is welded to over 98"},
		{"98", "22", bolted, "", ""},
		{"102", "10", bolted, "", "the weld is 102 long, and a lies on what it is welded to over 100"},
	} {
		files := map[string]string{"job.yaml": fmt.Sprintf(job, c.before, c.length, c.bottom, c.after), "a.yaml": fmt.Sprintf(plate, "a", "100, 80"),
			"b.yaml": fmt.Sprintf(plate, "b", "200, 120") + "holes: [{name: h, at: [[30, -15], [30, 15]], size: M8 tap}]\n",
			"c.yaml": fmt.Sprintf(plate, "c", "40, 60") + "holes: [{name: h, at: [[0, -15], [0, 15]], size: M8 clearance}]\n"}
		if got := said(t, files, plan.SeamBeyond); got != c.want {
			t.Errorf("%s from %s: %q, want %q", c.length, c.bottom, got, c.want)
		}
	}
}

// What is asked of holes by the review, on a plate of 300 × 200 × 20 that lies with its front up: a roof of 60 × 40
// lies 12 over it round (30, 0), another round (−90, 0), a foot of 40 × 40 lies 7 under it round (120, 0), and a
// cap of 10 lies 30 over its middle.
func TestAskedOfHoles(t *testing.T) {
	t.Parallel()
	plate := func(name, count, thick, size, holes string) string {
		return "part: " + name + "\ntitle: " + name + "\nkind: plate\nquantity: " + count + "\nmaterial: S235\nstock: {plate: " + thick + " mm, cut: laser}\noutline: {rectangle: [" + size + "]}\n" + holes
	}
	weld := func(name, part, place string) string {
		return "  - {name: " + name + ", weld: {part: " + part + ".outline, to: seat.outline, type: fillet, size: 4, length: 40}, place: {" + place + "}}\n"
	}
	const up = "on: front, with: back, top: up, "
	m, _ := load(t, write(t, map[string]string{
		"job.yaml": "job: J\nunits: mm\nup: front\nparts: [seat.yaml, roof.yaml, foot.yaml, cap.yaml]\njoints:\n" + weld("one", "roof#1", up+"at: [30, 0], gap: 12") + weld("two", "roof#2", up+"at: [-90, 0], gap: 12") +
			weld("three", "foot", "on: back, with: front, top: up, at: [-120, 0], gap: 7") + weld("four", "cap", up+"at: [0, 0], gap: 30"),
		"seat.yaml": plate("seat", "1", "20", "300, 200", "holes:\n  - {name: x, at: [[20, 0], [70, 0], [120, 0]], size: 9}\n  - {name: rim, at: [[30, 24]], size: 9}\n  - {name: off, at: [[30, 24.1]], size: 9}\n  - {name: up, at: [[-130, 80], [30, 24]], size: 9}\n  - {name: down, at: [[-130, 80], [30, -24]], size: 9}\n  - {name: both, at: [[30, 0], [30, 15]], size: 9}\n  - {name: back-again, at: [[30, 15], [30, 0]], size: 9}\n  - {name: mixed, at: [[-1, 0]], size: 9}\n"+
			"  - {name: edge, at: [[70, 10]], size: 9}\n  - {name: under, at: [[120, 12]], size: 9}\n  - {name: near, at: [[12, 95]], size: 4}\n"),
		"roof.yaml": plate("roof", "2", "10", "60, 40", "holes: [{name: y, at: [[-20, 0], [26, 0]], size: 6}]\n"), "foot.yaml": plate("foot", "1", "10", "40, 40", ""), "cap.yaml": plate("cap", "1", "5", "10, 10", "")}))
	items := m.Stage().ItemOf
	round := func(mm float64) string { return words.Trim(mm, 3) }
	before := func(group string) string {
		over, up := m.Above("seat", group)
		under, down := m.Below("seat", group)
		return over + " " + round(up) + " " + under + " " + round(down)
	}
	uneven := func(group string, radius, reach float64) string {
		mm, on := m.Uneven("seat", group, radius, reach)
		return on + " " + round(mm)
	}
	over := func(group string, radius, high float64) string {
		other, mm := m.Over("seat", group, radius, high)
		return other + " " + round(mm)
	}
	under := func(group string, reach float64) string { return strings.Join(m.Under("seat", group, reach), ",") }
	leaning := func(deg float64) string { // mouths look up or down as far as 60° off that
		up := m.Up
		defer func() { m.Up = up }()
		m.Up = assembly.Rotate(assembly.AxisX, deg).Turn(up)
		return before("x")
	}
	off := func(part, other, group string) string {
		mm, ok := m.Off(part, other, group)
		return fmt.Sprint(round(mm), " ", ok)
	}
	for _, c := range []struct{ what, got, want string }{
		{"over and under the holes", before("x"), "roof 1 12 foot 7"}, {"59° off", leaning(59), "roof 1 12 foot 7"}, {"61° off", leaning(61), " +Inf  +Inf"}, {"over their rim", before("rim"), "roof 1 12  +Inf"}, {"just beside it", before("off"), " +Inf  +Inf"}, {"over the rim of the second", before("up"), "roof 1 12  +Inf"}, {"on its other side", before("down"), "roof 1 12  +Inf"}, {"under another", before("under"), " +Inf foot 7"},
		{"before each, 12 off", under("x", 12), "roof,,foot"}, {"11.9 off", under("x", 11.9), ",,foot"}, {"7 off", under("x", 7), ",,foot"}, {"6.9 off", under("x", 6.9), ",,"}, {"before two", under("both", 20), "roof,roof"}, {"copy by copy", strings.Join(m.Under("roof", "y", 12), ","), "seat,seat,seat,seat"},
		// 15 and 8 of radius leave the roof's edge at 20; what lies nearest counts.
		{"even", uneven("both", 4, 50), "roof 1 0"}, {"over an edge", uneven("both", 8, 50), "roof 1 38"}, {"over one first", uneven("back-again", 8, 50), "roof 1 38"}, {"on the roof beside the cap, 18 over it", uneven("mixed", 3, 50), "roof 1 18"}, {"no further than asked", uneven("both", 8, 20), "roof 1 8"}, {"nearest on the foot", uneven("x", 8, 50), "foot 0"}, {"over the foot's edge", uneven("under", 8.5, 50), "foot 43"}, {"just on it", uneven("under", 7.9, 50), "foot 0"}, {"nothing so near", uneven("x", 8, 6), " 0"},
		// The edge of the roof lies 10 from the hole at 70, looked for in 48 rounds.
		{"right over it", over("x", 20, 12), "roof 0"}, {"beside it", over("edge", 20, 12), "roof 10.417"}, {"finer", over("edge", 12, 12), "roof 10.25"}, {"not so far round", over("edge", 10, 12), " 0"}, {"not so high", over("edge", 20, 11.9), " 0"}, {"what lies under it", over("under", 20, 50), " 0"}, {"high over the middle", over("x", 25, 31), "roof 0"},
		// Of the hole at 30 − 20 that at 20 is 10 off; of the other copy's at 26 − 90 it is 84, and that at (12, 95) √(76² + 95²).
		{"the farther copy's nearest hole", off("roof", "seat", "x"), "84 true"}, {"of two", off("roof", "seat", "both"), "94 true"}, {"of one", off("roof", "seat", "near"), "121.659 true"}, {"the other way", off("seat", "roof", "y"), "10 true"}, {"no holes", off("cap", "seat", "x"), "+Inf false"},
		{"the numbers of parts", fmt.Sprint(items["seat"], items["roof"], items["foot"], items["cap"]), "1 2 3 4"},
		{"on the axis of another", fmt.Sprint(m.On("cap", assembly.Vec{X: 1, Y: 2, Z: 3}, "seat"), m.On("seat", assembly.Vec{X: 1, Y: 2, Z: 3}, "cap"), m.On("roof", assembly.Vec{}, "seat"), m.On("seat", assembly.Vec{}, "seat")), "[{1 2 38}] [{1 2 -32}] [] []"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
}

// What runs through a hub of 30 stands before its front as thick as its thickest step there, and nowhere does it
// where it ends in the hub, or is not on it.
func TestBeyondTheFront(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		nose, seat, level string
		want              map[string]float64
	}{
		{"{name: nose, diameter: 30, length: 20}", "50", "back-with-back", map[string]float64{"pin": 40}}, {"{name: nose, diameter: 30, length: 20}", "30", "back-with-back", map[string]float64{"pin": 30}}, {"{name: nose, diameter: 60, length: 20}", "30", "back-with-back", map[string]float64{"pin": 60}},
		{"{name: nose, diameter: 30, length: 20}", "20", "front-with-front", map[string]float64{"pin": 30}}, {"{name: nose, diameter: 30, length: 20}", "20", "front-with-front, below: 20", map[string]float64{}},
	} {
		m, _ := load(t, write(t, map[string]string{"job.yaml": "job: J\nunits: mm\nparts: [pin.yaml, hub.yaml]\njoints:\n  - {name: j, press: {shaft: pin.seat, bore: hub.bore, fit: H7/p6}, level: " + c.level + "}\n",
			"hub.yaml": "part: hub\ntitle: hub\nkind: turned\nquantity: 1\nmaterial: S235\nstock: {round: 95 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 90, length: 30}]\n  inside: [{name: bore, diameter: 40, length: 30}]\n",
			"pin.yaml": "part: pin\ntitle: pin\nkind: shaft\nquantity: 1\nmaterial: C45\nstock: {round: 70 mm, cut: saw}\nprofile:\n  outside: [" + c.nose + ", {name: seat, diameter: 40, length: " + c.seat + "}]\n"}))
		if got := m.Beyond("hub"); fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s, %s: %v, want %v", c.nose, c.seat, got, c.want)
		}
		if got := m.Beyond("pin"); len(got) > 0 {
			t.Errorf("before the pin: %v", got)
		}
	}
}

// Of a shaft with a head of 28 that lies in the bore of a plate what is thickest before its front is told, not of one
// that ends before it, stands behind it or is too thick for it.
func TestBeyondAsItLies(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		bore, lies string
		want       float64
	}{
		{"26", "with: front, gap: -20", 28}, {"26", "with: front, gap: -60", 28}, {"26", "with: front, gap: 5", 0}, {"24", "with: front, gap: -20", 0}, {"30", "with: back, gap: -20", 25}, {"30", "with: back, gap: -60", 25}, {"30", "with: back, gap: -80", 0}, {"30", "with: back, gap: -110", 0},
	} {
		m, _ := load(t, write(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, base.yaml, shaft.yaml]\njoints:\n  - {name: on, weld: {part: plate.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, from-left: 50, from-bottom: 20, front: left}}\nloose:\n  - {part: shaft, how: by hand, after: on, lies: [{on: plate.front, " + c.lies + "}]}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nbore: {diameter: " + c.bore + "}\n",
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\n",
			"shaft.yaml": "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 86}\nprofile:\n  outside: [{name: run, diameter: 25, length: 60}, {name: head, diameter: 28, length: 20}]\n",
		}))
		if got := m.Beyond("plate"); got["Shaft"] != c.want || len(got) > 1 {
			t.Errorf("%+v: %v", c, got)
		}
		if got := m.Beyond("none"); len(got) > 0 {
			t.Errorf("of a part that stands nowhere: %v", got)
		}
	}
}

// A foot lies on a plate with its slot, 9 × 29 and so 10 from its middle to the centre of an end, in
// the middle of the plate: a hole of the plate is off by what it lies beside that line.
func TestOffSlots(t *testing.T) {
	t.Parallel()
	for at, want := range map[string]float64{"[0, 0]": 0, "[0, 8]": 0, "[0, -10]": 0, "[3, 8]": 3, "[0, 14]": 4, "[3, -14]": 5} {
		dir := t.TempDir()
		for name, text := range map[string]string{
			"job.yaml":   "job: J\nunits: mm\nparts: [plate.yaml, base.yaml, foot.yaml]\njoints:\n  - {name: on, weld: {part: plate.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, from-left: 50, from-bottom: 20, front: left}}\nloose:\n  - {part: foot, how: bolted on, after: on, lies: [{on: plate.front, with: back, at: [5, 0], top: up}]}\n",
			"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nholes: [{name: hole, at: [" + at + "], size: 9 mm}]\n",
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\n",
			"foot.yaml":  "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 60}\nslots: [{name: slide, at: [[-5, 0]], width: 9, length: 29}]\n",
		} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		m, _ := load(t, filepath.Join(dir, "job.yaml"))
		if mm, ok := m.Off("foot", "plate", "hole"); !ok || math.Abs(mm-want) > 1e-6 {
			t.Errorf("%s: %v %v", at, mm, ok)
		}
	}
}

// A slot under a square tube of 60 × 4 that stands on its plate: 20 beside its outside it is free so far, looked for by halves of a millimetre, in its wall and
// anywhere in the tube not at all, though the wall is 26 off.
func TestOverInATube(t *testing.T) {
	t.Parallel()
	for at, want := range map[string]string{"50": "leg 20.5", "28": "leg 0", "0": "leg 0", "90": " 0", "50 leaning 59": "leg 20.5", "50 leaning 61": " 0", "0 leaning 59": "leg 0", "0 leaning 61": " 0", "0 under 71": " 0", "0 under 73": "leg 0"} {
		at, long, _ := strings.Cut(at, " under ") // a socket three times as high as the bolt, 24, reaches through what is no longer
		at, leans, _ := strings.Cut(at, " leaning ")
		m, _ := load(t, write(t, map[string]string{
			"foot.yaml": "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [260, 100]}\nslots: [{name: anchor, at: [[" + at + ", 0]], width: 12, length: 20, turn: 0}]\n",
			"leg.yaml":  "part: leg\nkind: bar\nmaterial: S235\nbar: {square: 60, wall: 4, length: " + cmp.Or(long, "300") + "}\n",
			"job.yaml":  "job: J\nunits: mm\nup: front\nparts: [foot.yaml, leg.yaml]\njoints:\n  - {name: leg, weld: {part: leg.left, to: foot.outline, type: fillet, size: 4}, place: {on: front, with: left, at: [0, -30], front: down}}\n",
		}))
		if deg, err := strconv.ParseFloat(leans, 64); err == nil { // a mouth looks up as far as 60° off that
			m.Up = assembly.Rotate(assembly.AxisX, deg).Turn(m.Up)
		}
		if other, mm := m.Over("foot", "anchor", 24, 24); other+" "+words.Trim(mm, 3) != want {
			t.Errorf("at %s: %s %v, want %s", at, other, mm, want)
		}
	}
}

// A blind hole of 10, 10 deep in a plate of 20, ends in metal where 0.3 beside its wall no other opening of the plate lies, from 2.2 under
// its mouth down to its end: beside one of 8 that is 5 + 0.3 + 4 from middle to middle. A tapped hole is as wide as its thread.
func TestInMetal(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		hole, other string
		want        bool
	}{
		{"size: 10, depth: 10", "", true}, {"size: 10", "", false}, {"face: back, size: 10, depth: 10", "", true},
		{"size: 10, depth: 10", "at: [[9.4, 0], [-9.4, 0], [0, 9.4], [0, -9.4]], size: 8", true},
		{"size: 10, depth: 10", "at: [[9.2, 0]], size: 8", false}, {"size: 10, depth: 10", "at: [[-9.2, 0]], size: 8", false}, {"size: 10, depth: 10", "at: [[0, 9.2]], size: 8", false}, {"size: 10, depth: 10", "at: [[0, -9.2]], size: 8", false},
		{"size: M10 tap, depth: 10", "at: [[9.4, 0]], size: 8", true}, {"size: M10 tap, depth: 10", "at: [[9.2, 0]], size: 8", false},
		{"size: 10, depth: 10", "at: [[9.2, 0]], size: 8, depth: 2.1", true}, {"size: 10, depth: 10", "at: [[9.2, 0]], size: 8, depth: 2.3", false},
		{"size: 10, depth: 10", "face: back, at: [[-9.2, 0]], size: 8, depth: 9.9", true}, {"size: 10, depth: 10", "face: back, at: [[-9.2, 0]], size: 8, depth: 10.1", false},
	} {
		holes := "holes:\n  - {name: x, at: [[0, 0]], " + c.hole + "}\n"
		if c.other != "" {
			holes += "  - {name: other, " + c.other + "}\n"
		}
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart + holes, "rib.yaml": ribPart, "job.yaml": ribJob + strings.Replace(ribWeld, "rib.outline", "rib#1.outline", 1) + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n"}))
		if got := m.InMetal("base", "x"); got != c.want {
			t.Errorf("%s beside %q: %v", c.hole, c.other, got)
		}
		if m.InMetal("base", "none") || m.InMetal("none", "x") {
			t.Error("what is not there ends in metal")
		}
	}
}
