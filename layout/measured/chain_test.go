package measured

import (
	"fmt"
	"math"
	"testing"
)

// Pitches as makers table them (ISO 606, ASME B29.1); links by hand: of 15.875, 341 apart with 17 teeth on both 2 · 341 / 15.875 + 17 = 59.96, with 17 and 38
// (21 / 2π)² · 15.875 / 341 = 0.52 more than 70.46 (makers' formula). Over 17 teeth 10B is 94.5 by the formula of makers, p (0.6 + cot 180°/z), and no. 40 over 32 teeth 135.4.
func TestChains(t *testing.T) {
	t.Parallel()
	for words, want := range map[string]string{
		"Roller chain 10B-1, 60 links": "10B 15.875 60", "roller chain 08B": "08B 12.7 0", "chain 05B-1": "05B 8 0",
		"16A-2 chain": "16A 25.4 0", "roller chain no. 40 with link": "08A 12.7 0", "chain #35, 90 pitches": "no. 35 9.525 90",
		"ANSI 100": "20A 31.75 0", "Sprocket 17 teeth no 60": "12A 19.05 0", "chain number 41": "no. 41 12.7 0", "chain 8 mm": "", "anchor chain no. 4": "", "chain guard": "", "no. 4000": "",
	} {
		c, ok := ParseChain(words)
		got := fmt.Sprint(c.Name, " ", math.Round(c.PitchMm*1e6)/1e6, " ", c.Links)
		if ok != (want != "") || ok && got != want {
			t.Errorf("%s: %q, want %q", words, got, want)
		}
	}
	ten, _ := ParseChain("10B")
	if got := fmt.Sprintf("%.2f %.2f", ten.LinksRound(17, 17, 341), ten.LinksRound(17, 38, 341)); got != "59.96 70.98" {
		t.Error(got)
	}
	forty, _ := ParseChain("no. 40")
	for _, c := range []struct {
		of    Chain
		teeth int
		overs float64
	}{{ten, 17, 94.5}, {forty, 32, 135.4}, {forty, 9, 41.9}} {
		if least, most := c.of.RimMm(c.teeth); c.overs < least || c.overs > most || most-least > 0.6*c.of.PitchMm {
			t.Errorf("%d teeth: %.2f to %.2f", c.teeth, least, most)
		}
	}
}
