package words

import (
	"testing"

	"centrepop/layout/lookup"
)

func TestCited(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		s                          lookup.Source
		tolerance, standard, other string
	}{
		{lookup.Standard("ISO 2768-m"), "ISO 2768-m", "", ""},
		{lookup.Standard("ISO 2768-m"), "", "ISO 2768-m", ""},
		{lookup.Source{Name: "ISO 2768-m", Of: " (radii)", State: lookup.Checked}, "ISO 2768-m", "", ""},
		{lookup.Source{Name: "ISO 261, ISO 724", Of: "; clearance ISO 273:1979", State: lookup.Checked}, "ISO 2768-m", "ISO 261, ISO 724", ""},
		{lookup.Source{Name: "EN 755-2", State: lookup.FromMemory}, "", "EN 755-2", ""},
		{lookup.Source{Name: "DIN 76-1, next larger pitch", State: lookup.Practice}, "", "DIN 76-1, next larger pitch, " + NoSource, ""},
		{lookup.Source{Name: "as the laser cuts", State: lookup.Practice, Told: true}, "ISO 2768-m", "", "as the laser cuts, " + NoSource},
		{lookup.Source{Name: "tables", Of: "; fill by practice", State: lookup.Checked, Told: true}, "", "", "tables"},
		{lookup.NoSource, "ISO 2768-m", "", NoSource}, {lookup.Told("drawing"), "", "", "drawing"}, {lookup.Source{}, "ISO 2768-m", "", ""}, {lookup.Source{}, "", "", ""},
	} {
		if standard, other := Cited(c.s, c.tolerance); standard != c.standard || other != c.other {
			t.Errorf("%v under %q: %q, %q, want %q, %q", c.s, c.tolerance, standard, other, c.standard, c.other)
		}
	}
}
