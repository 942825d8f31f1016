package measured

import (
	"fmt"
	"math"
	"testing"
)

// The sections as ISO 4183 and ISO 4184 have them and, in inches, as makers do (RMA IP-20 and IP-22): top width to the half millimetre that
// inch and metric tables differ by, pitch width and thickness; of metric ones the least depth of the pitch line too, ISO 4183:1995 table 1.
// Narrow sections, widths of light belts and all depths from memory.
func TestBeltSections(t *testing.T) {
	t.Parallel()
	for name, want := range map[string][4]float64{
		"Z": {10, 8.5, 2, 6}, "A": {13, 11, 2.75, 8}, "B": {17, 14, 3.5, 11}, "C": {22, 19, 4.8, 14},
		"SPZ": {9.7, 8.5, 2, 8}, "SPA": {12.7, 11, 2.75, 10}, "SPB": {16.3, 14, 3.5, 13}, "SPC": {22, 19, 4.8, 18},
		"3L": {9.5, 7.5, 2, 5.6}, "4L": {12.7, 11, 2.75, 7.9}, "5L": {16.7, 14, 3.5, 9.5},
		"3V": {9.5, 8.5, 0, 8}, "5V": {15.9, 14, 0, 13.5}, "8V": {25.4, 22, 0, 23},
	} {
		b, ok := ParseBelt("V-belt " + name)
		if !ok || math.Abs(b.TopMm-want[0]) > 0.35 || b.PitchWidthMm != want[1] || b.DeepMm != want[2] || b.ThickMm != want[3] {
			t.Errorf("%s: %+v, want %v", name, b, want)
		}
	}
}

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
