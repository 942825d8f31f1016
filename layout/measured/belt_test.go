package measured

import (
	"fmt"
	"math"
	"testing"
)

// A54 and B54 are 54 inches inside, 55.3 and 55.8 at the pitch line; 4L560 is 56 at its back and as long as A54; SPZ 1000 is that long at its
// pitch line, 3V500 50 inches at the rims; all to one in a hundred.
func TestParseBelt(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		words, name string
		mm          float64
		half        float64 // of what the number leaves open
	}{
		{"V-belt A54", "A54", 54*25.4 + 33, 0}, {"AX54 toothed", "AX54", 54*25.4 + 33, 0}, {"V-belt B54", "B54", 54*25.4 + 45, 0}, {"belt 4L560", "4L560", 1405.4, 0},
		{"V-belt SPZ 1000", "SPZ 1000", 1000, 0}, {"XPZ-1000", "XPZ-1000", 1000, 0}, {"3V500", "3V500", 1270, 0}, {"V-belt A 1250", "A 1250", 1266.5, 16.5}, {"B450", "B450", 450*25.4 + 45, 0},
	} {
		b, ok := ParseBelt(c.words)
		if least, most := (c.mm-c.half)*0.99, (c.mm+c.half)*1.01; !ok || b.Name != c.name || math.Abs(b.LeastMm-least) > 0.01 || math.Abs(b.MostMm-most) > 0.01 {
			t.Errorf("%s: %+v, want %.1f to %.1f", c.words, b, least, most)
		}
	}
	for _, words := range []string{"V-belt SPZ", "V-belt 4L"} {
		if b, ok := ParseBelt(words); !ok || b.MostMm != 0 {
			t.Errorf("%s: %+v", words, b)
		}
	}
	if b, ok := ParseBelt("chain 08B, toothed belt"); ok {
		t.Errorf("%+v", b)
	}
	if got := fmt.Sprintf("%.2f %.2f", RoundMm(100, 100, 200), RoundMm(96, 196, 200)); got != "714.16 871.24" {
		t.Error(got)
	}
}
