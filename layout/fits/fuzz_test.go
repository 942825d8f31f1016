package fits

import (
	"math"
	"testing"

	"centrepop/parts/golden"
)

// FuzzParse: a class or an error, never both; what is read is written back and
// reads the same.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"H7", "js6", "ZC11", "h01", "H0", "", "Js7", "H007", "90H7", "µ6", " p6 "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := Parse(s)
		if err != nil {
			if c != (Class{}) {
				t.Fatalf("%q: both %+v and %v", s, c, err)
			}
			return
		}
		again, err := Parse(c.String())
		if err != nil || again != c {
			t.Fatalf("%q reads as %+v, written %q reads as %+v, %v", s, c, c, again, err)
		}
	})
}

// FuzzLimit: limits or an error, never both; limits are finite numbers in
// order. The same for the fit with a basic hole and the general tolerance.
func FuzzLimit(f *testing.F) {
	rows := golden.Table(f, reference+"iso286.csv", 290)
	for i, r := range rows {
		if i%10 == 0 {
			f.Add(r.Number(f, "nominal_mm"), r["class"])
		}
	}
	f.Add(math.NaN(), "H7")
	f.Add(math.Inf(1), "p6")
	f.Add(1e-9, "h18")
	f.Add(-1.0, "m")
	f.Fuzz(func(t *testing.T, nominal float64, class string) {
		l, err := Limit(nominal, class)
		if err != nil {
			if l != (Limits{}) {
				t.Fatalf("%v %q: both %+v and %v", nominal, class, l, err)
			}
		} else {
			for _, v := range [...]float64{l.NominalMm, l.UpperUm, l.LowerUm, l.MaxMm, l.MinMm} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%v %q: %+v", nominal, class, l)
				}
			}
			if l.UpperUm <= l.LowerUm || l.MaxMm < l.MinMm || l.MinMm <= 0 {
				t.Fatalf("%v %q: %+v", nominal, class, l)
			}
		}
		fit, err := Between(nominal, "H7/"+class)
		if (err != nil) == (fit.Kind != "") {
			t.Fatalf("%v H7/%s: %+v and %v", nominal, class, fit, err)
		}
		v, err := General(nominal, class)
		if (err == nil) != (v > 0) || math.IsNaN(v) {
			t.Fatalf("%v general %q: %v and %v", nominal, class, v, err)
		}
	})
}
