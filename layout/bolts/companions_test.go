package bolts

import "testing"

// ISO 898-2:2012: a nut of class 5 to 5.8, 6 to 6.8, 8 to 8.8, 10 to 10.9, 12 to
// 12.9; ISO 7089: 200 HV to 8.8 and 300 HV to 10.9; ISO 3506-2 and SAE J995. The table of the code
// again; of which rows a source was found for, tables.csv says.
func TestCompanions(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		size, class, nut, washer string
		beyond                   bool
	}{
		{"M10", "4.6", "5", "200 HV", false}, {"M10", "5.6", "5", "200 HV", false}, {"M10", "5.8", "5", "200 HV", false}, {"M10", "6.8", "6", "200 HV", false},
		{"M10", "8.8", "8", "200 HV", false}, {"M24", "8.8", "8", "200 HV", false}, {"M10", "10.9", "10", "300 HV", false},
		{"M10", "12.9", "12", "hardened, 380 HV or more", true},
		{"M10", "A2-50", "A2-50", "A2, 200 HV", false}, {"M10", "A2-70", "A2-70", "A2, 200 HV", false}, {"M10", "A4-70", "A4-70", "A4, 200 HV", false}, {"M10", "A4-80", "A4-80", "A4, 200 HV", false},
		{"1/2 UNC", "grade 2", "grade 2", "plain", false}, {"1/2 UNC", "SAE 5", "grade 5", "plain", false}, {"1/2 UNC", "8", "grade 8", "hardened (ASTM F436)", false},
	} {
		got, err := find(t, c.size).Companions(c.class)
		if err != nil || got.Nut != c.nut || got.Washer != c.washer || got.Beyond != c.beyond {
			t.Errorf("%s %s: %+v, %v", c.size, c.class, got, err)
		}
	}
	for _, row := range gradeRows {
		if companionRows[row.name].Nut == "" {
			t.Errorf("class %s has no nut", row.name)
		}
	}
	if c, err := find(t, "M10").Companions("7.3"); err == nil || c != (Companions{}) {
		t.Errorf("unknown class: %+v", c)
	}
}

// M10 8.8 at 0.75 of 33700 N: 0.20 x 25275 x 10 mm is 50.6 N m dry; oiled, K 0.15,
// 37.9 N m.
func TestTightenBoth(t *testing.T) {
	t.Parallel()
	got, err := find(t, "M10").TightenBoth(Tightening{Class: "8.8", Condition: "zinc"})
	if err != nil || !near(got.Dry.TorqueNm, 50.55, 1e-9) || !near(got.Oiled.TorqueNm, 37.9125, 1e-9) || got.Dry.PreloadN != got.Oiled.PreloadN || got.Dry.NutFactor.Name != "dry" || got.Oiled.NutFactor.Name != "lubricated" {
		t.Errorf("%+v, %v", got, err)
	}
	if got, err := find(t, "M10").TightenBoth(Tightening{Class: "7.3"}); err == nil || got.Dry.TorqueNm != 0 {
		t.Errorf("unknown class: %+v", got)
	}
	for name, want := range map[string]bool{"": false, "dry": false, "zinc": false, "black": false, "unknown": false, "Oiled": true, " lubricated ": true, "anti-seize": true, "cadmium": true, "special grip nut": true} {
		if Lubricated(name) != want {
			t.Errorf("%q: want %v", name, want)
		}
	}
}
