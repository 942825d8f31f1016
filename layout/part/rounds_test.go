package part

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

const roundPin = `part: pin
kind: turned
material: C45
stock: {round: 45 mm, length: 85 mm}
profile:
  outside:
    - {name: tip, diameter: 20, length: 30}
    - {name: head, diameter: 40, length: 50}
  inside: INSIDE
chamfers:
  - EDGE
`

func pin(edge, inside string) string {
	if inside == "" {
		return strings.NewReplacer("EDGE", edge, "  inside: INSIDE\n", "").Replace(roundPin)
	}
	return strings.NewReplacer("EDGE", edge, "INSIDE", inside).Replace(roundPin)
}

// Over a chord of 20 the sagitta of R25 is 25 − √(25² − 10²) = 2.0871, and the cap
// holds π·h²·(3R − h)/3; the quarter taken off an edge is R²(1 − π/4), its centroid
// R(10 − 3π)/(12 − 3π) from the corner (Bronshtein, Handbook of Mathematics, circle,
// spherical cap and centroids, from memory; recomputed here). The second theorem of
// Pappus makes a ring of it.
func TestRoundVolume(t *testing.T) {
	t.Parallel()
	full := math.Pi * (100*30 + 400*50)
	ring := func(r, dia float64) float64 {
		return 2 * math.Pi * (dia/2 - r*(10-3*math.Pi)/(12-3*math.Pi)) * r * r * (1 - math.Pi/4)
	}
	h := 25 - math.Sqrt(25*25-100)
	for _, c := range []struct {
		edge, inside string
		volume       float64
	}{
		{"{edge: tip-front, sphere: 25}", "", full - math.Pi*100*h + math.Pi*h*h*(75-h)/3},
		{"{edge: tip-front, sphere: 10}", "", full - math.Pi*100*10 + 2*math.Pi/3*1000},
		{"{edge: head-back, radius: 8}", "", full - ring(8, 40)},
		{"{edge: head-front, radius: 2}", "", full - ring(2, 40)},
		{"{edge: bore-front, radius: 2}", "[{name: bore, diameter: 10, length: 80}]",
			full - math.Pi*25*80 - 2*math.Pi*(5+2*(10-3*math.Pi)/(12-3*math.Pi))*4*(1-math.Pi/4)},
	} {
		m := work(t, "mm", pin(c.edge, c.inside))
		if got := m.Out.MassKg / 7.85e-6; math.Abs(got-c.volume) > 3e-4*c.volume {
			t.Errorf("%s: %v mm³, want %v", c.edge, got, c.volume)
		}
	}
}

// Every point of the contour lies on the arc, and no chord is further than 0.01 off
// its middle; the arc runs from the face to where the step goes on.
func TestRoundContour(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		edge         string
		z, y, radius float64 // centre
		first, last  plan.XY
	}{
		{"{edge: tip-front, sphere: 25}", 25, 0, 25, plan.XY{}, plan.XY{XMm: 2.087121525, YMm: 10}},
		{"{edge: head-front, radius: 4}", 34, 16, 4, plan.XY{XMm: 30, YMm: 16}, plan.XY{XMm: 34, YMm: 20}},
		{"{edge: head-back, radius: 20}", 60, 0, 20, plan.XY{XMm: 60, YMm: 20}, plan.XY{XMm: 80}},
	} {
		line, on := work(t, "mm", pin(c.edge, "")).Out.Section.Outer, []plan.XY{}
		for _, q := range line {
			if math.Abs(math.Hypot(q.XMm-c.z, q.YMm-c.y)-c.radius) < 1e-6 {
				on = append(on, q)
			}
		}
		near := func(a, b plan.XY) bool { return math.Hypot(a.XMm-b.XMm, a.YMm-b.YMm) < 1e-6 }
		if len(on) < 7 || !near(on[0], c.first) || !near(on[len(on)-1], c.last) {
			t.Errorf("%s: the arc is %v", c.edge, on)
			continue
		}
		for i := range len(on) - 1 {
			half := math.Hypot(on[i+1].XMm-on[i].XMm, on[i+1].YMm-on[i].YMm) / 2
			if off := c.radius - math.Sqrt(c.radius*c.radius-half*half); off > arcMm+1e-9 {
				t.Errorf("%s: a chord lies %v off its arc", c.edge, off)
			}
		}
	}
}

// The corners of the steps touch the arc: 1.74 from the top of R25 it is
// 2·√(1.74·48.26) = 18.33 wide, 6.67 into R8 on 40 it is 24 + 2·√(6.67·9.33) = 39.78,
// and a bore of 10 opens 2·(4 − √(2·0.67·4 − 0.67²)) = 3.56 over it, 0.67 into R4.
func TestRoundWork(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		edge, inside, line, dim, what, limits, gauge string
		radiusMm                                     float64
	}{
		{"{edge: tip-front, sphere: 25}", "", "Round tip front SR25, turned in steps from the face: 1.74 to Ø18.33, 1.39 to Ø16.44, ", "SR25", "crown tip front", "24.0 – 26.0", "radius gauge", 0},
		{"{edge: tip-front, sphere: 26}", "", "clear of the chuck, to the sheet template cut to the radius.", "SR26", "crown tip front", "25.0 – 27.0", "sheet template cut to the radius", 0},
		{"{edge: head-back, radius: 8}", "", "Round head back R8, turned in steps from the face: 6.67 to Ø39.78, 5.33 to Ø39.08, 4 to Ø37.86, 2.67 to Ø35.93, 1.33 to Ø32.83; then blend", "R8", "radius head back", "7.0 – 9.0", "radius gauge", 0},
		{"{edge: head-front, radius: 3}", "", "Round head front R3 with a form tool, to the radius gauge.", "R3", "radius head front", "2.8 – 3.2", "radius gauge", 0},
		{"{edge: bore-front, radius: 4}", "[{name: bore, diameter: 10, length: 80}]", "Round bore front R4, bored in steps from the face: 3.33 to Ø10.11, 2.67 to Ø10.46, 2 to Ø11.07, 1.33 to Ø12.04, 0.67 to Ø13.57; then", "R4", "radius bore front", "3.5 – 4.5", "radius gauge", 0},
	} {
		m := work(t, "mm", pin(c.edge, c.inside))
		has(t, m, c.line, "Break every edge that has no chamfer or radius")
		if got := check(m, c.what); got == nil || got.Wanted != c.dim || got.Limits != c.limits || got.Gauge != c.gauge || got.Source.String() != "ISO 2768-m (radii)" {
			t.Errorf("%s: the record has %+v", c.edge, got)
		}
		labels := 0
		for _, d := range m.Out.Dimensions {
			if d.Text == c.dim && d.ToMm > d.FromMm && d.RadiusMm > 0 {
				labels++
			}
		}
		if labels != 1 {
			t.Errorf("%s: %d labels %s", c.edge, labels, c.dim)
		}
	}
	inch := work(t, "in", strings.NewReplacer(" mm", " in", "45", "2", "85", "4", "diameter: 20", "diameter: 0.6", "length: 30", "length: 1", "diameter: 40", "diameter: 1", "length: 50", "length: 2").
		Replace(pin("{edge: tip-front, sphere: 3/8}", "")))
	has(t, inch, "Round tip front SR0.375 in, turned in steps from the face: 0.125 in to Ø0.559 in, 0.1 in to Ø0.51 in, ")
}

// A radius has room on an edge that stands free: head stands 10 over tip, and tip
// has none at its back.
func TestRoundRoom(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ edge, inside, want string }{
		{"{edge: head-front, radius: 10}", "", ""},
		{"{edge: head-front, radius: 10.1}", "", "a.yaml:10:32: the radius 10.1 is larger than the step to tip"},
		{"{edge: tip-back, radius: 1}", "", "a.yaml:10:12: no edge stands free at tip-back"},
		{"{edge: head-back, radius: 20}", "", ""},
		{"{edge: head-back, radius: 20.1}", "", "is larger than half of the diameter"},
		{"{edge: a-back, radius: 1}", "[{name: a, diameter: 8, length: 20}]", "no edge stands free at a-back"},
		{"{edge: a-back, radius: 2}", "[{name: a, diameter: 8, length: 20}, {name: b, diameter: 12, length: 20}]", ""},
		{"{edge: a-back, radius: 2.1}", "[{name: a, diameter: 8, length: 20}, {name: b, diameter: 12, length: 20}]", "is larger than the step to b"},
		{"{edge: a-back, radius: 1}", "[{name: a, diameter: 8, length: 80}]", ""},
	} {
		j := load(t, "mm", pin(c.edge, c.inside))
		errs := Work(j, j.Parts[0]).Errs
		if c.want == "" && len(errs) > 0 || c.want != "" && (len(errs) != 1 || !strings.Contains(errs.Error(), c.want)) {
			t.Errorf("%s: %v, want %q", c.edge, errs, c.want)
		}
	}
}

// The mouth of a centre is measured before a crown takes it away.
func TestCrownedCentre(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", pin("{edge: tip-front, sphere: 25}", "")+"centres: {form: A}\n")
	for what, want := range map[string]string{"centre front": "cone whole to Ø4.25 at the face, before its crown", "centre back": "cone whole to Ø6.7 at the face"} {
		if c := check(m, what); c == nil || c.Limits != want {
			t.Errorf("%s: %+v", what, c)
		}
	}
}

// TestMirrored: a part turned end for end looks the same at an edge where its other end has the like of it: as large, round
// as much, on a step as wide, as far from its end, for the same.
func TestMirrored(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm, cut: saw}\nprofile:\n  outside: [{name: a, diameter: 30, length: 20}, {name: body, diameter: 40, length: 60}, {name: b, diameter: 30, length: 20}]\nchamfers: [{edge: a-front, size: 1}, {edge: b-back, size: 1}]\n"
	for _, c := range []struct {
		old, new, edge string
		want           bool
	}{
		{"", "", "a-front", true}, {"", "", "b-back", true}, {"", "", "body-front", false},
		{", {edge: b-back, size: 1}", "", "a-front", false}, {"b-back, size: 1", "b-back, size: 2", "a-front", false}, {"a-front, size: 1}, {edge: b-back, size: 1", "a-front, radius: 1}, {edge: b-back, radius: 1", "a-front", true},
		{"b-back, size: 1", "b-back, size: 1, for: lead-in", "a-front", false}, {"b, diameter: 30", "b, diameter: 28", "a-front", false},
		{"a-front, size: 1}, {edge: b-back", "body-front, size: 1}, {edge: body-back", "body-front", true}, {"a-front, size: 1}, {edge: b-back", "body-front, size: 1}, {edge: b-back", "body-front", false},
		{"length: 20}]\nchamfers: [{edge: a-front, size: 1}, {edge: b-back", "length: 20.1}]\nchamfers: [{edge: body-front, size: 1}, {edge: body-back", "body-front", false},
		{"b-back", "a-back", "a-front", false},
	} {
		if !strings.Contains(shaft, c.old) {
			t.Fatalf("no %q", c.old)
		}
		if got := work(t, "mm", strings.Replace(shaft, c.old, c.new, 1)).Mirrored(c.edge); got != c.want {
			t.Errorf("%s, %q: %v", c.edge, c.new, got)
		}
	}
}

// TestInRow: of the holes on one line along a round that take the same bolt each is held to the nearest before it, not one
// at another clock angle, of another size or beyond.
func TestInRow(t *testing.T) {
	t.Parallel()
	const tube = "part: p\nkind: tube\nmaterial: S235\nstock: {tube: 200, wall: 8}\ntube: {outside: 200, wall: 8, length: 600}\nradial:\n"
	hole := func(name string, clock, axial float64, size string) string {
		return fmt.Sprintf("  - {name: %s, clock: %g, axial: %g, size: %s, depth: through}\n", name, clock, axial, size)
	}
	for _, c := range []struct {
		rows, want string
	}{
		{hole("z", 0, 500, "M8 clearance"), ""}, {hole("a", 0, 100, "M8 clearance") + hole("z", 0, 500, "M8 clearance"), "a 400"}, {hole("a", 90, 100, "M8 clearance") + hole("z", 0, 500, "M8 clearance"), ""},
		{hole("a", 0, 100, "M10 clearance") + hole("z", 0, 500, "M8 clearance"), ""}, {hole("a", 0, 550, "M8 clearance") + hole("z", 0, 500, "M8 clearance"), ""},
		{hole("a", 0, 100, "M8 clearance") + hole("b", 0, 300, "M8 clearance") + hole("z", 0, 500, "M8 clearance"), "b 200"}, {hole("b", 0, 300, "M8 clearance") + hole("a", 0, 100, "M8 clearance") + hole("z", 0, 500, "M8 clearance"), "b 200"},
	} {
		m, got := work(t, "mm", tube+c.rows), ""
		if o, mm := m.inRow(&m.Radials[len(m.Radials)-1]); o != nil {
			got = fmt.Sprintf("%s %g", o.In.Name.Value, mm)
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.rows, got, c.want)
		}
	}
}

// Two edges broken 0.5 leave nothing of a sheet or a wall of 1.
func TestThinEdges(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{
		"kind: plate\nstock: {sheet: 1 mm, cut: laser}\noutline: {square: 100}\n": "0.1 mm at the most", "kind: plate\nstock: {sheet: 1.01 mm, cut: laser}\noutline: {square: 100}\n": "0.3 to 0.5 mm",
		"kind: tube\nstock: {tube: 20 mm, wall: 1 mm, length: 106, cut: saw}\ntube: {outside: 20, wall: 1, length: 100}\n": "0.1 mm at the most", "kind: shaft\nstock: {round: 25 mm}\nprofile: {outside: [{name: a, diameter: 20, length: 50}]}\n": "0.3 to 0.5 mm",
	} {
		has(t, work(t, "mm", "part: p\nmaterial: S235\n"+text), "Break every edge that has no chamfer, "+want+".")
	}
}
