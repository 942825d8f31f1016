package part

import "testing"

// TestWallsOfTwoGrooves: of a shaft of 100 ± 0.3 two grooves for rings DIN 471 25 × 1.2, 1.3 to 1.44 wide (H13), at 20 ± 0.2 and
// 70 ± 0.3 from the front or, of the same places, from the back: 28.7 ± 0.2 and 78.7 ± 0.3 to their back walls.
func TestWallsOfTwoGrooves(t *testing.T) {
	for _, c := range []struct {
		first, second string
		outer, inner  [2]float64 // from the front wall of the first to the back wall of the second, and between them
	}{
		{"axial: 20", "axial: 70", [2]float64{50.8, 51.94}, [2]float64{48.06, 49.2}},
		{"axial: 20", "axial: 28.7, from: back", [2]float64{50.6, 52}, [2]float64{47.72, 49.4}},
		{"axial: 78.7, from: back", "axial: 28.7, from: back", [2]float64{50.8, 51.94}, [2]float64{49.5 - 1.44, 50.5 - 1.3}},
	} {
		m := work(t, "mm", "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 30}\nprofile: {outside: [{name: seat, diameter: 25, fit: k6, length: 100}]}\ngrooves:\n  - {name: a, in: seat, "+c.first+", for: retaining-ring}\n  - {name: b, in: seat, "+c.second+", for: retaining-ring}\n")
		a, b := &m.Grooves[0], &m.Grooves[1]
		for k, want := range [][2]float64{c.outer, c.inner} {
			got := m.WallsApartMm(a, k == 1, b, k == 0)
			if near := func(x, y float64) bool { return x-y < 1e-6 && y-x < 1e-6 }; !near(got.Min, want[0]) || !near(got.Max, want[1]) {
				t.Errorf("%s, %s, %d: %v, want %v", c.first, c.second, k, got, want)
			}
		}
	}
}
