package words

import "testing"

func TestCited(t *testing.T) {
	t.Parallel()
	for _, c := range [][4]string{
		{"ISO 2768-m", "ISO 2768-m", "", ""},
		{"ISO 2768-m", "", "ISO 2768-m", ""},
		{"ISO 286-1 H7; limits of the drawing", "ISO 2768-m", "ISO 286-1 H7", ""},
		{"DIN 6885-1 (depth of the hub), from memory", "", "DIN 6885-1", ""},
		{"EN 755-2, from memory", "", "EN 755-2", ""},
		{NoSource, "ISO 2768-m", "", NoSource}, {"drawing", "", "", "drawing"}, {"", "ISO 2768-m", "", ""},
	} {
		if standard, other := Cited(c[0], c[1]); standard != c[2] || other != c[3] {
			t.Errorf("%q under %q: %q, %q, want %q, %q", c[0], c[1], standard, other, c[2], c[3])
		}
	}
}
