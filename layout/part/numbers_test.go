package part_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"
)

// lookup follows a path such as "faces.0.holes.3.x_mm" through JSON; # is how
// many there are of a list.
func lookup(t *testing.T, v any, path string) any {
	t.Helper()
	for _, word := range strings.Split(path, ".") {
		switch at := v.(type) {
		case map[string]any:
			v = at[word]
		case []any:
			if word == "#" {
				v = float64(len(at))
				continue
			}
			i, err := strconv.Atoi(word)
			if err != nil || i >= len(at) {
				t.Fatalf("%s: no %s among %d", path, word, len(at))
			}
			v = at[i]
		default:
			t.Fatalf("%s: nothing at %s", path, word)
		}
	}
	return v
}

// sameNumbers compares the plan of one part, written as JSON, with numbers and
// texts by their paths.
func sameNumbers(t *testing.T, part any, want map[string]any) {
	t.Helper()
	text, err := json.Marshal(part)
	if err != nil {
		t.Fatal(err)
	}
	var plan any
	if err := json.Unmarshal(text, &plan); err != nil {
		t.Fatal(err)
	}
	for path, w := range want {
		got := lookup(t, plan, path)
		x, number := got.(float64)
		y, wanted := w.(float64)
		if number && wanted && math.Abs(x-y) <= 1e-6 || got == w {
			continue
		}
		t.Errorf("%s is %v, want %v", path, got, w)
	}
}

// TestPlateNumbers: places, distances from the edges, chords, depths, circles
// of the other side and mass of a plate of 200 × 120 × 30, worked out by hand.
func TestPlateNumbers(t *testing.T) {
	t.Parallel()
	pl := mustJob(t, "units: mm\ntolerance: m", `
part: plate
kind: plate
thickness: 30
material: S235
stock: {plate: 30, cut: laser}
outline: {rectangle: [200, 120]}
bore: {diameter: 40, fit: H7}
holes:
  - {name: ring, circle: {pcd: 80, count: 4, first: 45}, size: M10 tap, depth: 15}
  - {name: far, at: [[15, 10], [185, 110]], datum: left-bottom, size: 9}
  - {name: rear, face: back, at: [[30, 20]], size: 12, depth: 8}
slots:
  - {name: adjust, width: 10, length: 30, at: [[70, 0]], turn: 90}
`)
	r := 40 * math.Sqrt2 / 2
	d := math.Hypot(170, 100)
	want := map[string]any{
		"overall":       "200 × 120 × 30 thick",
		"faces.0.face":  "front",
		"faces.0.datum": "left and bottom edge", "faces.0.mirrored": false,
		// Hole 1 at 45° on a radius of 40; the edges lie 100 and 60 from the centre.
		"faces.0.holes.0.n": 1.0, "faces.0.holes.0.x_mm": r, "faces.0.holes.0.y_mm": r, "faces.0.holes.0.angle_deg": 45.0, "faces.0.holes.0.radius_mm": 40.0,
		"faces.0.holes.0.from_x_mm": 100 + r, "faces.0.holes.0.from_y_mm": 60 + r, "faces.0.holes.0.diameter_mm": 8.5,
		"faces.0.holes.2.x_mm": -r, "faces.0.holes.2.y_mm": -r, "faces.0.holes.2.angle_deg": 225.0, "faces.0.holes.2.from_x_mm": 100 - r, "faces.0.holes.2.from_y_mm": 60 - r,
		"faces.0.holes.4.x_mm": -85.0, "faces.0.holes.4.y_mm": -50.0, "faces.0.holes.4.from_x_mm": 15.0, "faces.0.holes.4.from_y_mm": 10.0,
		"faces.0.holes.4.radius_mm": math.Hypot(85, 50), "faces.0.holes.4.angle_deg": 180 + math.Atan2(85, 50)*180/math.Pi,
		"faces.0.holes.5.from_x_mm": 185.0, "faces.0.holes.5.from_y_mm": 110.0, "faces.0.holes.5.n": 6.0,
		// A slot 30 over its ends and 10 wide has its centres 20 apart.
		"faces.0.slots.0.n": 7.0, "faces.0.slots.0.ends.0.x_mm": 80.0, "faces.0.slots.0.ends.0.y_mm": 0.0, "faces.0.slots.0.ends.1.x_mm": 60.0,
		// Chords of the ring, side of a square and its diagonal, and of the two far holes.
		"faces.0.groups.0.chords.0.centre_mm": 80 / math.Sqrt2, "faces.0.groups.0.chords.0.over_mm": 80/math.Sqrt2 + 8.5, "faces.0.groups.0.chords.0.between_mm": 80/math.Sqrt2 - 8.5,
		"faces.0.groups.0.chords.0.kind": "neighbours", "faces.0.groups.0.chords.0.to": 2.0,
		"faces.0.groups.0.chords.1.centre_mm": 80.0, "faces.0.groups.0.chords.1.kind": "across", "faces.0.groups.0.chords.1.to": 3.0,
		"faces.0.groups.1.chords.0.from": 5.0, "faces.0.groups.1.chords.0.to": 6.0, "faces.0.groups.1.chords.0.centre_mm": d, "faces.0.groups.1.chords.0.over_mm": d + 9,
		// Room for the tap's chamfer below 15 of thread: 7.3 for M10, DIN 76-1.
		"faces.0.groups.0.depth": "thread 15 deep, drill 22.3 deep", "faces.0.groups.0.drill_mm": 8.5, "faces.0.groups.0.finished_mm": 10.0, "faces.0.groups.0.pcd_mm": 80.0,
		"faces.0.groups.1.first": 5.0, "faces.0.groups.1.count": 2.0, "faces.0.groups.1.depth": "through",
		// The bore is drawn, and the pitch circle, on the front; from behind
		// what comes through is mirrored and the blind ring is not seen.
		"faces.0.circles.0.diameter_mm": 40.0, "faces.0.circles.0.pitch": false, "faces.0.circles.1.diameter_mm": 80.0, "faces.0.circles.1.pitch": true,
		"faces.1.mirrored": true, "faces.1.circles.0.diameter_mm": 40.0,
		"faces.1.circles.1.centre.x_mm": 85.0, "faces.1.circles.1.centre.y_mm": -50.0, "faces.1.circles.1.diameter_mm": 9.0, "faces.1.circles.3.centre.x_mm": -70.0,
		// The front is set by its left edge, which is the right one of the back: 100 − 30.
		"faces.1.holes.0.x_mm": 30.0, "faces.1.holes.0.y_mm": 20.0, "faces.1.holes.0.from_x_mm": 70.0, "faces.1.holes.0.from_y_mm": 80.0, "faces.1.groups.0.depth": "8 deep",
		"section.length_mm": 30.0, "section.max_radius_mm": 60.0, "section.flat": true, "section.inner.0.y_mm": 20.0, "section.outer.1.x_mm": 30.0,
		"features.0.limits": "40.000 – 40.025", "features.0.balloon.x_mm": 15.0, "features.0.balloon.y_mm": 20.0,
		"features.4.limits": "8.8 – 9.2", // ± 0.2 over 6 to 30, ISO 2768-m
		"checks.0.min_mm":   40.0, "checks.0.max_mm": 40.025,
	}
	sameNumbers(t, pl.Parts[0], want)
	// Plate less bore, ring (to the depth of its thread), two holes, slot and blind hole;
	// 7850 kg/m³, EN 1991-1-1 Table A.4.
	mm3 := 200*120*30 - math.Pi/4*(40*40*30+4*8.5*8.5*15+2*9*9*30+12*12*8) - (20*10+math.Pi*25)*30
	if got := pl.Parts[0].MassKg; math.Abs(got/(mm3*7850e-9)-1) > 1e-6 {
		t.Errorf("mass %.4f kg, want %.4f", got, mm3*7850e-9)
	}
}

// TestSpindleNumbers: the section, limits, chamfer, thread, wrap and openings
// of a turned part, worked out by hand.
func TestSpindleNumbers(t *testing.T) {
	t.Parallel()
	pl := mustJob(t, "units: mm\ntolerance: m\nshop: {paper: 0.1 mm}", `
part: spindle
kind: shaft
material: C45
stock: {round: 70, length: 170}
profile:
  outside:
    - {name: head, diameter: 60, length: 40}
    - {name: seat, diameter: 40, fit: k6, length: 60}
    - {name: nose, thread: M30x2, length: 50}
  inside:
    - {name: socket, diameter: 20, fit: H8, length: 25}
radial:
  - {name: oil, clock: 90, axial: 70, from: front, size: 6, depth: 12}
chamfers:
  - {edge: head-front, size: 1.5}
`)
	girth := math.Pi * (40 + 0.1)
	want := map[string]any{
		"overall": "Ø60 × 150 long", "section.length_mm": 150.0, "section.max_radius_mm": 30.0, "section.flat": false,
		// The chamfer takes 1.5 off the radius at the face.
		"section.outer.0.x_mm": 0.0, "section.outer.0.y_mm": 28.5, "section.outer.1.x_mm": 1.5, "section.outer.1.y_mm": 30.0,
		"section.outer.2.x_mm": 40.0, "section.outer.3.y_mm": 20.0, "section.outer.4.x_mm": 100.0, "section.outer.5.y_mm": 15.0, "section.outer.6.x_mm": 150.0,
		"section.inner.0.y_mm": 10.0, "section.inner.1.x_mm": 25.0, "section.inner.2.y_mm": 0.0,
		// D1 of M30x2 is 30 − 1.0825·2 = 27.835.
		"section.threads.0.FromMm": 100.0, "section.threads.0.ToMm": 150.0, "section.threads.0.RadiusMm": 27.835 / 2, "section.threads.0.Inside": false,
		// ISO 2768-m: ± 0.3 over 30 to 120, ± 0.5 over 120; ISO 286: 40 k6 +2 +18, 20 H8 0 +33.
		"features.0.limits": "59.7 – 60.3", "features.0.balloon.x_mm": 20.0, "features.0.balloon.y_mm": 30.0,
		"features.1.limits": "40.002 – 40.018", "features.1.balloon.x_mm": 70.0, "features.1.balloon.y_mm": 20.0,
		"features.2.balloon.x_mm": 125.0, "features.3.limits": "20.00 – 20.03", "features.3.balloon.x_mm": 12.5,
		"features.4.size": "150", "features.4.limits": "149.5 – 150.5", "features.5.size": "1.5 × 45°: Ø57 at the face",
		"checks.1.min_mm": 40.002, "checks.1.max_mm": 40.018, "checks.2.what": "seat length", "checks.2.min_mm": 59.7, // the head is the auxiliary link
		"radials.0.clock_deg": 90.0, "radials.0.axial_mm": 70.0, "radials.0.outside_mm": 40.0, "radials.0.diameter_mm": 6.0, "radials.0.depth": "12 deep",
		"radials.0.arc_from_top_mm": math.Pi * 40 / 4,
		"developments.0.wrap_mm":    girth, "developments.0.per_deg_mm": girth / 360, "developments.0.paper_mm": 0.1,
	}
	sameNumbers(t, pl.Parts[0], want)
	// Three cylinders less a socket, a chamfer's ring (Pappus) and the oil hole, over
	// which a round of 40 falls away by 3²/(4·20)/2 = 0.056 on average.
	mm3 := math.Pi/4*(60*60*40+40*40*60+30*30*50-20*20*25) - math.Pi*2*(30-0.5)*1.5*1.5/2 - math.Pi/4*36*(12-0.05625)
	if got := pl.Parts[0].MassKg; math.Abs(got/(mm3*7850e-9)-1) > 1e-6 {
		t.Errorf("mass %.4f kg, want %.4f", got, mm3*7850e-9)
	}
}

// TestChords: which pairs of holes are listed to check a layout by, and their
// distances, by hand.
func TestChords(t *testing.T) {
	t.Parallel()
	pl := mustJob(t, "units: mm\ntolerance: m", `
part: plate
kind: plate
thickness: 10
material: S235
stock: {plate: 10, cut: laser}
outline: {rectangle: [400, 400]}
holes:
  - {name: two, circle: {pcd: 60, count: 2, first: 0}, size: 5}
  - {name: three, circle: {pcd: 120, count: 3, first: 10}, size: 5}
  - {name: four, circle: {pcd: 160, count: 4, first: 20}, size: 5}
  - {name: five, circle: {pcd: 200, count: 5, first: 0}, size: 5}
  - {name: line, at: [[-100, 150], [-90, 150], [-60, 150]], size: 5}
  - {name: bend, at: [[120, 150], [150, 150], [150, 110], [130, 110]], size: 5}
  - {name: pair, at: [[-150, -150], [-120, -110]], size: 5}
  - {name: row, grid: {columns: 30, rows: 1, pitch: [10, 10], centre: [0, -180]}, size: 5}
`)
	sin := func(deg float64) float64 { return math.Sin(deg * math.Pi / 180) }
	g := func(n int, rest string) string { return "faces.0.groups." + strconv.Itoa(n) + "." + rest }
	sameNumbers(t, pl.Parts[0], map[string]any{
		// In a ring of two or three every pair are neighbours.
		g(0, "chords.#"): 1.0, g(0, "chords.0.centre_mm"): 60.0, g(0, "chords.0.between_mm"): 55.0, g(0, "chords.0.over_mm"): 65.0,
		g(1, "chords.#"): 1.0, g(1, "chords.0.centre_mm"): 120 * sin(60), g(1, "chords.0.from"): 3.0, g(1, "chords.0.to"): 4.0,
		g(2, "chords.#"): 2.0, g(2, "chords.0.centre_mm"): 160 * sin(45), g(2, "chords.1.centre_mm"): 160.0, g(2, "chords.1.from"): 6.0, g(2, "chords.1.to"): 8.0,
		g(3, "chords.#"): 2.0, g(3, "chords.0.centre_mm"): 200 * sin(36), g(3, "chords.1.centre_mm"): 200 * sin(72), g(3, "chords.1.from"): 10.0, g(3, "chords.1.to"): 12.0,
		// Listed ones: each to the next, and the two farthest apart.
		g(4, "chords.#"): 3.0, g(4, "chords.0.centre_mm"): 10.0, g(4, "chords.1.centre_mm"): 30.0, g(4, "chords.2.centre_mm"): 40.0,
		g(4, "chords.2.kind"): "across", g(4, "chords.2.from"): 15.0, g(4, "chords.2.to"): 17.0,
		g(5, "chords.#"): 4.0, g(5, "chords.2.centre_mm"): 20.0, g(5, "chords.3.from"): 18.0, g(5, "chords.3.to"): 20.0, g(5, "chords.3.centre_mm"): 50.0,
		g(6, "chords.#"): 1.0, g(6, "chords.0.centre_mm"): 50.0,
		// No more than 24 neighbours of a long row, and its ends.
		g(7, "chords.#"): 25.0, g(7, "chords.23.kind"): "neighbours", g(7, "chords.24.kind"): "across", g(7, "chords.24.centre_mm"): 290.0,
	})
}

// TestTubeNumbers: section, openings, wrap and mass of a tube, by hand.
func TestTubeNumbers(t *testing.T) {
	t.Parallel()
	pl := mustJob(t, "units: mm\ntolerance: m\nshop: {paper: 0.1 mm}", `
part: pipe
kind: tube
material: S235
tube: {outside: 100, wall: 5, length: 300}
radial:
  - {name: vents, clock: [0, 120, 240], axial: 40, from: back, size: 10}
  - {name: window, clock: 90, axial: 150, from: front, window: {around: 40, along: 60}}
`)
	sameNumbers(t, pl.Parts[0], map[string]any{
		"section.length_mm": 300.0, "section.max_radius_mm": 50.0, "section.outer.0.y_mm": 50.0, "section.inner.0.y_mm": 45.0, "section.inner.1.x_mm": 300.0,
		"radials.0.clock_deg": 0.0, "radials.0.outside_mm": 100.0, "radials.0.arc_from_top_mm": 0.0, "radials.1.clock_deg": 120.0,
		"radials.1.arc_from_top_mm": math.Pi * 100 / 3, "radials.2.arc_from_top_mm": math.Pi * 100 * 2 / 3, "radials.#": 4.0,
		"developments.0.wrap_mm": math.Pi * 100.1, "developments.0.per_deg_mm": math.Pi * 100.1 / 360,
	})
	// The bare tube less three vents and a window, which is 40 round the outside and
	// 38 half through the wall.
	mm3 := math.Pi/4*(100*100-90*90)*300 - 3*math.Pi/4*100*5 - 38*60*5
	if got := pl.Parts[0].MassKg; math.Abs(got/(mm3*7850e-9)-1) > 1e-6 {
		t.Errorf("mass %.4f kg, want %.4f", got, mm3*7850e-9)
	}
}
