package grooves

import "testing"

// Bores for inch seals by RMA OS-4 as makers print it: ±0.001 in to 3 in, ±0.0015 to 6, and over 10 in 0.002 over and
// 0.004 under; over 60 in none.
func TestInchSealBore(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ bore, less, more float64 }{{2.502, 0.001, 0.001}, {3, 0.001, 0.001}, {3.001, 0.0015, 0.0015}, {10, 0.002, 0.002}, {12, 0.004, 0.002}, {60, 0.010, 0.002}, {61, 0, 0}} {
		if less, more, source := InchSealBore(c.bore * 25.4); less != c.less*25.4 || more != c.more*25.4 || (source.Name == "") != (c.less == 0) {
			t.Errorf("%v in: %v and %v by %v", c.bore, less, more, source)
		}
	}
}
