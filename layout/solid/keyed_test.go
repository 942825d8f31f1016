package solid_test

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/layouttest"
	"centrepop/layout/solid"
)

// A shaft of 40 has keyways 12 wide and 5 deep (DIN 6885), their floor at 15: one closed at both
// ends, round by an end mill; one open at the back face; one by a cutter of 63, which runs out
// √(63·5 − 25) = 17.03 beyond each end; and a disc of 28 for a key of 8 × 11 (DIN 6888) whose
// floor lies where the table has it. A bore of 40 has a floor at 23.3.
func TestKeyways(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm, length: 210 mm}\nprofile:\n  outside: [{name: seat, diameter: 40, length: 200}]\nkeyways:\n  - {name: key, in: seat, clock: 90, "
	for name, c := range map[string]struct {
		text       string
		gone, left [][3]float64 // along the clock angle of 90°, across it towards the top, and behind the front
	}{
		"closed": {shaft + "axial: 50, from: front, length: 40}\n", [][3]float64{{19, 0, 50}, {15.1, 0, 50}, {16, 5.9, 50}, {16, -5.9, 40}, {19, 0, 30.1}, {19, 0, 69.9}, {19, 3, 31}},
			[][3]float64{{14.9, 0, 50}, {16, 6.1, 50}, {16, -6.1, 50}, {19, 0, 29.9}, {19, 0, 70.1}, {16, 5.5, 31}, {16, -5.5, 69}, {-19, 0, 50}}},
		"open": {shaft + "axial: 20, from: back, length: 40}\n", [][3]float64{{16, 5.9, 199.9}, {16, -5.9, 199.9}, {19, 0, 160.1}},
			[][3]float64{{16, 5.5, 161}, {19, 0, 159.9}, {14.9, 0, 199.9}}},
		"open in front": {shaft + "axial: 20, from: front, length: 40}\n", [][3]float64{{16, 5.9, 0.1}, {16, -5.9, 0.1}, {19, 0, 39.9}},
			[][3]float64{{16, 5.5, 39}, {19, 0, 40.1}}},
		"cutter": {shaft + "axial: 100, from: front, length: 40, cutter: 63}\n", [][3]float64{{15.1, 5.9, 100}, {15.1, 0, 80.1}, {19.9, 0, 63.4}, {19.9, 0, 136.5}, {16, -5.9, 75}, {15.5, 0, 122}},
			[][3]float64{{19.9, 0, 62.8}, {19.9, 0, 137.2}, {14.9, 0, 100}, {15.2, 0, 70}, {15.2, 0, 130}, {19, 6.1, 100}}},
		"bore": {"part: p\nkind: turned\nmaterial: C45\nstock: {round: 80 mm, length: 60 mm}\nprofile:\n  outside: [{name: body, diameter: 76, length: 50}]\n  inside: [{name: seat, diameter: 40, length: 50}]\nkeyways:\n  - {name: key, in: seat, clock: 90}\n",
			[][3]float64{{23.2, 0, 25}, {23.2, 5.9, 0.1}, {23.2, -5.9, 49.9}, {19.9, 0, 25}}, [][3]float64{{23.4, 0, 25}, {22, 6.1, 25}, {-21, 0, 25}}},
	} {
		s := solid.Of(layouttest.Model(t, c.text))
		for metal, list := range [][][3]float64{c.gone, c.left} {
			for _, q := range list {
				if d := s.Dist(assembly.Vec{X: q[0], Y: q[1], Z: -q[2]}); d < 0 != (metal == 1) {
					t.Errorf("%s: %v has %v", name, q, d)
				}
			}
		}
	}
}

// The chamfers of a plate with round corners and of one with a corner that looks inward take
// their triangle off along the edge: 2 along and 1.15 across (30°) of 400 and of 360, within a
// tenth, which is how finely solids are summed up, and reach no further: not past a corner that looks inward.
func TestBevels(t *testing.T) {
	t.Parallel()
	up := 2 * math.Tan(math.Pi/6)
	for name, c := range map[string]struct {
		outline string
		round   float64 // length of the edge
	}{
		"rectangle": {"{rectangle: [120, 80]}", 400}, "round corners": {"{rectangle: [120, 80], corner: 20}", 400 - 160 + 40*math.Pi},
		"inward": {"{path: \"M0 0 L120 0 L120 40 L60 40 L60 80 L0 80 Z\"}", 400},
	} {
		text := "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: " + c.outline + "\nchamfers:\n"
		for _, edge := range []string{"outline-front", "outline-back"} {
			r := layouttest.Model(t, text+"  - {edge: "+edge+", size: 2, angle: 30}\n")
			whole := assembly.Of(assembly.Prism(solid.Outline(r), -20, 0)).Bulk().VolumeMm3
			s := solid.Of(r)
			taken := whole - s.Bulk().VolumeMm3
			if want := up * c.round; math.Abs(taken-want) > 0.1*want {
				t.Errorf("%s, %s: %.1f mm³, want %.1f", name, edge, taken, want)
			}
			z := func(deep float64) float64 {
				if edge == "outline-back" {
					return deep - 20
				}
				return -deep
			}
			mid := r.OutlinePath().Bounds()
			for _, q := range []struct {
				in, deep float64
				metal    bool
			}{{0.05, 0.1, false}, {up - 0.1, 0.05, false}, {0.05, 1.85, false}, {up + 0.05, 0.05, true}, {0.05, 2.1, true}, {0.05, 18, true}} {
				if d := s.Dist(assembly.Vec{X: mid.X0 + 59.5, Y: mid.Y0 + 39.7, Z: z(0.05)}); d >= 0 {
					t.Errorf("%s, %s: no metal past the corner", name, edge)
				}
				if d := s.Dist(assembly.Vec{X: mid.X0 + q.in, Y: (mid.Y0 + mid.Y1) / 2, Z: z(q.deep)}); d < 0 != q.metal {
					t.Errorf("%s, %s: %+v has %v", name, edge, q, d)
				}
			}
		}
	}
}

// What is chamfered elsewhere takes nothing off the outline: there is metal a tenth from both faces.
func TestNoBevels(t *testing.T) {
	t.Parallel()
	for _, edge := range []string{"bore-front, size: 2, angle: 45", "bore-back, size: 2, angle: 45"} {
		r := layouttest.Model(t, "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [120, 80]}\nbore: {diameter: 30.5}\nchamfers: [{edge: "+edge+"}]\n")
		s := solid.Of(r)
		for _, z := range []float64{-0.1, -19.9} {
			if p := (assembly.Vec{X: 59.9, Z: z}); s.Dist(p) >= 0 {
				t.Errorf("%s: no metal at %v", edge, p)
			}
		}
	}
}

// TestSlots: slots of 26 × 6 take 20 · 6 + π · 9 = 148.3 mm² off a plate of 12, as deep as they are said or through it.
func TestSlots(t *testing.T) {
	t.Parallel()
	for deep, want := range map[string]float64{"": 12, ", depth: 0.8": 0.8, ", depth: 5": 5} {
		s := solid.Of(layouttest.Model(t, "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 12}\noutline: {rectangle: [120, 80]}\nslots: [{name: slot, at: [[0, 25]], width: 6, length: 26, turn: 90"+deep+"}]\n"))
		if got := 120*80*12 - s.Bulk().VolumeMm3; math.Abs(got-want*(120+9*math.Pi)) > 0.01*got {
			t.Errorf("%q: %.1f mm³", deep, got)
		}
	}
}
