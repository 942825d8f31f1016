package part_test

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/read"
)

// cutJob loads a job of one part written in the test.
func cutJob(t *testing.T, pt string) *parts.Job {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"job.yaml": "job: Cut\nunits: mm\nparts:\n  - p.yaml\n",
		"p.yaml":   "part: p\nmaterial: S235\n" + pt,
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// The area of a convex shape moved outward by d is A + P d + π d², and its
// length P + 2 π d (Steiner's formula), with an arc at every corner.
func TestOffsetOutward(t *testing.T) {
	const d = 0.15
	for _, c := range []struct {
		name         string
		path         string
		area, length float64
		concave      int // right-angled inside corners
		within       float64
	}{
		{"rectangle", "M0 0L100 0L100 50L0 50Z", 5000, 300, 0, 1e-9},
		{"rectangle, clockwise", "M0 0L0 50L100 50L100 0Z", 5000, 300, 0, 1e-9},
		{"circle", canvas.Circle(40).ToSVG(), math.Pi * 1600, 80 * math.Pi, 0, 1e-6},
		{"rounded", canvas.RoundedRectangle(100, 60, 12).ToSVG(), 6000 - (4-math.Pi)*144, 320 - 8*12 + 24*math.Pi, 0, 1e-5},
		{"L", "M0 0L100 0L100 30L40 30L40 80L0 80Z", 100*30 + 40*50, 360, 1, 1e-9},
		{"U", "M0 0L90 0L90 60L60 60L60 30L30 30L30 60L0 60Z", 90*60 - 30*30, 360, 2, 1e-9},
	} {
		p, err := canvas.ParseSVGPath(c.path)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.name+" area", math.Abs(geom.NewContour(p).AreaMm2()), c.area, c.within)
		near(t, c.name+" length", geom.NewContour(p).LengthMm(), c.length, c.within)
		moved, err := geom.Outward(p, d)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		// A right-angled inside corner takes the place of an outside one: it
		// shortens both sides by d, and needs one outside corner more.
		wantLength := c.length + 2*math.Pi*d + float64(c.concave)*(math.Pi/2-2)*d
		wantArea := c.area + c.length*d + math.Pi*d*d + float64(c.concave)*(math.Pi/4-1)*d*d
		near(t, c.name+" moved length", geom.NewContour(moved).LengthMm(), wantLength, c.within)
		near(t, c.name+" moved area", geom.NewContour(moved).AreaMm2(), wantArea, c.within)
		if !moved.Closed() {
			t.Errorf("%s: moved contour is open", c.name)
		}
	}
	// A slit narrower than the kerf cannot be followed.
	slit, err := canvas.ParseSVGPath("M0 0L100 0L100 50L50.1 50L50.1 20L50.1 19.95L50 19.95L50 50L0 50Z")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := geom.Outward(slit, 0.3); !errors.Is(err, geom.ErrTight) {
		t.Errorf("slit: %v, want %v", err, geom.ErrTight)
	}
}

const cutFlange = `kind: flange
quantity: 2
stock: {plate: 10 mm, cut: laser}
outline: {circle: 200 mm, leave: 1 mm}
bore: {diameter: 100 mm, fit: H7, leave: 2 mm}
holes:
  - {name: bolts, circle: {pcd: 160, count: 4, first: 45}, size: M10 clearance}
  - {name: small, circle: {pcd: 160, count: 2, first: 0}, size: 9.9 mm}
  - {name: taps, angles: {pcd: 130, at: [20]}, size: M8 tap}
  - {name: dowel, angles: {pcd: 130, at: [70]}, size: {diameter: 12, fit: H7}}
  - {name: blind, angles: {pcd: 130, at: [110]}, size: 12 mm, depth: 4}
  - {name: rear, face: back, angles: {pcd: 160, at: [100]}, size: 10 mm}
  - {name: hidden, face: back, angles: {pcd: 130, at: [200]}, size: 12 mm, depth: 4}
slots:
  - {name: slot, at: [[-65, 0]], width: 12, length: 20, turn: 0}
`

func TestCutProfile(t *testing.T) {
	p, err := part.CutProfile(cutJob(t, cutFlange), "p", part.CutOptions{})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for i, c := range p.Contours {
		if c.N != i+1 {
			t.Errorf("contour %s has number %d, want %d", c.Name, c.N, i+1)
		}
		names = append(names, c.Name)
	}
	want := "bolts 1,bolts 2,bolts 3,bolts 4,slot 10,rear 1 (from the back),bore,outline"
	if got := strings.Join(names, ","); got != want {
		t.Errorf("contours %s, want %s", got, want)
	}
	why := map[string]string{}
	for _, m := range p.Marks {
		why[strings.Fields(m.Name)[0]] += m.Why + ";"
	}
	for name, w := range map[string]string{"small": "9.9 is under the 10", "taps": "tapped M8", "dowel": "finished to H7 after drilling", "blind": "blind"} {
		if !strings.Contains(why[name], w) {
			t.Errorf("mark %s: %q, want %q", name, why[name], w)
		}
	}
	if len(p.Marks) != 5 || why["hidden"] != "" || !strings.Contains(strings.Join(p.Notes, " "), "hidden") {
		t.Errorf("marks %v, notes %v", p.Marks, p.Notes)
	}
	// M10 medium is 11 mm (ISO 273); π is left to the closed forms.
	holes := 4*11*math.Pi + 10*math.Pi + 98*math.Pi + 12*math.Pi + 2*8
	near(t, "length", p.LengthMm, holes+201*math.Pi, 1e-5)
	area := math.Pi/4*(201*201-4*11*11-10*10-98*98-12*12) - 8*12
	near(t, "area", p.AreaMm2, area, 1e-5)
	near(t, "net", p.NetKg, area*10*7850e-9, 1e-9) // 7850 kg/m³, EN 1991-1-1 table A.4
	near(t, "gross", p.GrossKg, 201*201*10*7850e-9, 1e-9)
	near(t, "blank", p.BlankXMm, 201, 1e-9)
	near(t, "smallest", p.Smallest.SizeMm, 10, 1e-9)
	near(t, "smallest against thickness", p.Smallest.Ratio, 1, 1e-9)
	// The hole from the back stands at clock 100° there, so at 260° here,
	// beside the lower end of the slot's axis at (−65, −4).
	sin, cos := math.Sincos(260 * math.Pi / 180)
	near(t, "web", p.Web.WidthMm, math.Hypot(80*sin+65, 80*cos+4)-5-6, 1e-9)
	// TOP: small hole 1 of Ø9.9 is not cut, so the line has its whole length.
	if len(p.TopLine) != 2 || p.TopLine[0] != (plan.XY{XMm: 0, YMm: 99.5}) || p.TopLine[1] != (plan.XY{XMm: 0, YMm: 89.5}) {
		t.Errorf("TOP line %v", p.TopLine)
	}

	// With the kerf, holes lose it on the diameter and the outline gains it;
	// what the part weighs stays.
	k, err := part.CutProfile(cutJob(t, cutFlange), "p", part.CutOptions{KerfMm: 0.4, Compensate: true})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "kerf length", k.LengthMm, p.LengthMm+0.4*math.Pi*(1-7), 1e-5)
	near(t, "kerf box", k.MaxMm.XMm, 100.7, 1e-9)
	near(t, "kerf mass", k.NetKg, p.NetKg, 0)
	stated, err := part.CutProfile(cutJob(t, cutFlange), "p", part.CutOptions{KerfMm: 0.4})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "kerf only stated", stated.LengthMm, p.LengthMm, 0)

	// Another cutter makes other holes.
	plasma, err := part.CutProfile(cutJob(t, cutFlange), "p", part.CutOptions{Cut: "plasma"})
	if err != nil {
		t.Fatal(err)
	}
	if len(plasma.Contours) != 2 {
		t.Errorf("plasma cuts %d contours, want the bore and the outline", len(plasma.Contours))
	}
}

func TestCutProfileRefuses(t *testing.T) {
	const plate = "kind: plate\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [100, 60]}\n"
	for _, c := range []struct {
		name, pt, want string
		opt            part.CutOptions
	}{
		{"hole over the edge", plate + "holes: [{name: h, at: [[46, 0]], size: 12 mm}]\n", "runs into the outline", part.CutOptions{}},
		{"holes meet", plate + "holes: [{name: h, at: [[0, 0], [11, 0]], size: 12 mm}]\n", "runs into h 1", part.CutOptions{}},
		{"slot across a slot", plate + "slots: [{name: a, at: [[0, 0]], width: 12, length: 40}, {name: b, at: [[0, 0]], width: 12, length: 40, turn: 90}]\n", "runs into a 1", part.CutOptions{}},
		{"kerf too wide", plate + "holes: [{name: h, at: [[0, 0]], size: 10 mm}]\n", "no wider than the kerf", part.CutOptions{KerfMm: 10, Compensate: true}},
		{"saw", strings.Replace(plate, "laser", "saw", 1), "cut: saw, which follows no file", part.CutOptions{}},
		{"not said", strings.Replace(plate, ", cut: laser", "", 1), "does not say how", part.CutOptions{}},
		{"unknown cutter", plate, `cutter "scissors"`, part.CutOptions{Cut: "scissors"}},
		{"kerf unknown", plate, "kerf must be known", part.CutOptions{Compensate: true}},
		{"kerf NaN", plate, "kerf NaN", part.CutOptions{KerfMm: math.NaN()}},
		{"kerf 11", plate, "kerf 11", part.CutOptions{KerfMm: 11}},
		{"turned", "kind: shaft\nprofile: {outside: [{diameter: 20, length: 50}]}\n", "not flat, and has no flat blank", part.CutOptions{}},
	} {
		p, err := part.CutProfile(cutJob(t, c.pt), "p", c.opt)
		if err == nil || !strings.Contains(err.Error(), c.want) || p != nil {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	if _, err := part.CutProfile(cutJob(t, plate), "q", part.CutOptions{}); err == nil {
		t.Error("an unknown part is no error")
	}
}

// TestWebBetweenSlots: the least metal is found between the ends of slots whose middles lie far apart,
// 120 − 100, whichever is drawn first and however long; and to the edge where that is nearer.
func TestWebBetweenSlots(t *testing.T) {
	for _, c := range []struct {
		slots, between string
		mm             float64
	}{
		{"{name: a, at: [[-60, 0]], width: 10, length: 100, turn: 90}, {name: b, at: [[60, 0]], width: 10, length: 100, turn: 90}", "b 2 and a 1", 20},
		{"{name: a, at: [[60, 0]], width: 10, length: 100, turn: 90}, {name: b, at: [[-60, 0]], width: 10, length: 100, turn: 90}", "b 2 and a 1", 20},
		{"{name: a, at: [[-60, 0]], width: 10, length: 100, turn: 90}, {name: b, at: [[15, 0]], width: 10, length: 12, turn: 90}", "b 2 and a 1", 19},
		{"{name: a, at: [[-15, 0]], width: 10, length: 12, turn: 90}, {name: b, at: [[60, 0]], width: 10, length: 100, turn: 90}", "b 2 and a 1", 19},
		{"{name: a, at: [[-65, 0]], width: 10, length: 100, turn: 90}, {name: b, at: [[65, 0]], width: 10, length: 100, turn: 90}", "a 1 and the outline", 25},
	} {
		p, err := part.CutProfile(cutJob(t, "kind: plate\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [300, 60]}\nslots: ["+c.slots+"]\n"), "p", part.CutOptions{})
		if err != nil {
			t.Fatal(c.slots, err)
		}
		if p.Web.Between != c.between || math.Abs(p.Web.WidthMm-c.mm) > 1e-6 {
			t.Errorf("%s: %+v", c.slots, p.Web)
		}
	}
}
