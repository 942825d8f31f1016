package part

import (
	"strings"
	"testing"
)

// TestKnife: soft sheet is cut with a knife and punched, not sawn, drilled or bored; metal, thick rubber and what is fitted are not.
func TestKnife(t *testing.T) {
	soft := func(material, stock, more string) string {
		return "part: g\nkind: ring\nfor: gasket\nmaterial: " + material + "\ntop: punch\nstock: {" + stock + ", cut: none}\noutline: {circle: 120}\nbore: {diameter: 80" + more + "}\nholes: [{name: rim, circle: {pcd: 100, count: 6}, size: M8 clearance}]\n"
	}
	knife := "Tape the front template on it whole; do not cut it out. Punch rim, holes 1 to 6: 6 × Ø9 for M8. Cut out the bore Ø80. Last the outside, Ø120: several light cuts"
	for name, c := range map[string]struct {
		part  string
		knife bool
	}{
		"cork":         {soft("cork", "sheet: 2 mm", ""), true},
		"NBR":          {soft("NBR", "sheet: 3 mm", ""), true},
		"copper":       {soft("Cu-DHP", "sheet: 2 mm", ""), false},
		"thick":        {soft("NBR", "plate: 12 mm", ""), false},
		"water jet":    {strings.Replace(soft("NBR", "sheet: 3 mm", ""), "cut: none", "cut: waterjet", 1), false},
		"fitted":       {soft("cork", "sheet: 2 mm", ", fit: H7"), false},
		"of no gasket": {strings.Replace(soft("cork", "sheet: 2 mm", ""), "for: gasket\n", "", 1), false},
	} {
		m := work(t, "mm", c.part)
		text := strings.Join(strings.Fields(lines(m)), " ")
		if got := strings.Contains(text, knife); got != c.knife {
			t.Errorf("%s: knife %v, want %v:\n%s", name, got, c.knife, text)
		}
		for _, s := range []string{"Drill", "Centre-drill", "Deburr"} {
			if c.knife && strings.Contains(text, s) {
				t.Errorf("%s: %q in\n%s", name, s, text)
			}
		}
	}
}
