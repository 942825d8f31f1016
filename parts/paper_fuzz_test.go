package parts

import (
	"math"
	"testing"
)

// FuzzPaper: a sheet within bounds or a reason, never both.
func FuzzPaper(f *testing.F) {
	for _, seed := range []string{"A4", "letter", "300x400", "300x400 mm", "12x18 in", "11 in x 17 in", "300×400mm", "x", "0x0", "nanxnan", "1e3x1e3", "-300x400", "A4 landscape", "300x400x500"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, units := range []Units{Millimetres, Inches} {
			p, wrong := PaperOf(text, units)
			switch {
			case wrong != "" && p != (Paper{}):
				t.Fatalf("%q: both %+v and %q", text, p, wrong)
			case wrong == "" && !(min(p.WidthMm, p.HeightMm) >= 140 && max(p.WidthMm, p.HeightMm) >= 200 && max(p.WidthMm, p.HeightMm) <= 2000):
				t.Fatalf("%q: %+v", text, p)
			}
			if public, err := ParsePaper(text, units); (err == nil) != (wrong == "") || public != p {
				t.Fatalf("%q: ParsePaper gives %+v, %v and parsePaper %+v, %q", text, public, err, p, wrong)
			}
		}
	})
}

// FuzzAngleAndForce: a finite number within bounds or a reason.
func FuzzAngleAndForce(f *testing.F) {
	for _, seed := range []string{"30", "30 deg", "30°", "-360", "361", "nan", ".inf", "200 kN", "20 t", "1 N", "0 kN", "nan kN", "1/2 t", "9e9 N", "-1 N", "kN"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if deg, wrong := DegOf(text); wrong == "" && !(math.Abs(deg) <= 360) {
			t.Fatalf("angle %q = %g", text, deg)
		}
		if newton, wrong := NewtonOf(text); wrong == "" && !(newton >= 1 && newton <= 1e8) {
			t.Fatalf("force %q = %g", text, newton)
		}
	})
}
