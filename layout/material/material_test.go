package material

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// Names of one grade in the standards of several countries: EN 10027-2 and EN
// 10025-2 Annex A for the old names and numbers of steels (looked up: a
// steelworks' comparison table), EN 1560 for irons, EN 573-3 and EN 1412 (from
// memory).
func TestFindNames(t *testing.T) {
	t.Parallel()
	for want, names := range map[string]string{
		"S235":               "S235JR, s235, S235J2+N, St37-2, RSt 37-2, St 37, 1.0038, 1.0114, Fe 360 B, mild steel, BS 4360 40A, S235JRH, S235JRC",
		"S275":               "S275, St 44-2, 1.0044, S275J0H, BS4360 43A",
		"S355":               "S355J2+N, S355 J2, St52-3, 1.0577, 1.0570, S355K2, S355J2H, Fe510D, S355NL, S355JRG2",
		"S275N":              "S275N, S275NL, S275NH, 1.0490, S275NLH",
		"S275M":              "S275M, S275MLH, 1.8843",
		"S355M":              "S355M, S355ML, S355MH, 1.8845",
		"S460":               "S460N, S460MH, 1.8953",
		"E295":               "E295, St 50-2, 1.0050",
		"E335":               "St 60-2, 1.0060, E335+N", // EN 10025-2: the same strength +AR and +N
		"P265":               "P265GH, P265TR1, 1.0425, P265 TR2, HII",
		"C45+N":              "C45, Ck45, 1.0503, 1.1191, C45E, C45+N, XC45",
		"C45+QT":             "C45+QT, C45E+QT",
		"C60+N":              "CK60, 1.0601",
		"42CrMo4+QT":         "42CrMo4, 42CrMo4+QT, 1.7225, 4140 QT, 42CD4",
		"34CrNiMo6+QT":       "1.6582",
		"11SMn30+C":          "11SMn30, 9SMnPb28, 1.0715, 1.0718, AISI 1215, 12L14, 230M07, EN1A",
		"080M40 normalized":  "EN8, EN 8, 080M40",
		"A36":                "A36, ASTM A36",
		"1018 hot rolled":    "AISI 1018, SAE 1020, EN3B",
		"1018 cold drawn":    "1018 CD",
		"1050 hot rolled":    "1050",
		"EN-GJL-250":         "EN-GJL-250, GG25, GG-25, GJL250, 0.6025, EN-JL1040, 5.1301",
		"EN-GJL-150":         "cast iron, Grey cast iron, gray iron, GG-15",
		"EN-GJS-400-15":      "EN-GJS-400-15, GGG40, GGG-40, ductile iron, SG iron, nodular iron, 0.7040",
		"EN-GJMB-350-10":     "malleable iron, GTS-35",
		"1.4301":             "304, 304L, 1.4307, X5CrNi18-10, V2A, stainless steel, AISI 304",
		"1.4404":             "316L, 1.4401, 1.4404, V4A, X2CrNiMo17-12-2",
		"EN AW-6082 T6":      "EN AW-6082 T6, 6082, AlMgSi1, 3.2315, 6082-T6",
		"EN AW-6061 T6":      "6061-T6, 6061",
		"EN AW-1050A":        "1050A, EN AW-1050A",
		"CuSn7Zn4Pb7-C":      "bronze, gunmetal, RG7, CC493K",
		"C93200":             "SAE 660, C932",
		"CuSn8":              "phosphor bronze, CW453K",
		"CuZn39Pb3":          "brass, CW614N, Ms58",
		"CuAl10Fe5Ni5-C":     "aluminium bronze, CuAl10Ni5Fe4, AB2",
		"709M40 condition R": "EN19, 709M40",
	} {
		for _, n := range strings.Split(names, ", ") {
			m, err := Find(n)
			if err != nil || m.Name != want {
				t.Errorf("Find(%q) = %q, %v; want %s", n, m.Name, err, want)
			} else if _, err := m.Strength(10); err != nil {
				t.Errorf("%q: %v", n, err)
			}
		}
	}
}

// A mark that the table does not know keeps what does not hang on the condition.
func TestFindMarks(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]string{
		"42CrMo4+A": "42CrMo4+QT", "6061-T4": "EN AW-6061 T6", "EN-GJL-400": "grey cast iron, grade unknown", "GGG35": "ductile cast iron, grade unknown",
		"S355MC": "S355", "A36N": "A36", "C10N": "C10", "EN-GJL-250M": "EN-GJL-250", "1050A-H14": "EN AW-1050A", "EN AW-3003": "aluminium, grade unknown", "304H": "1.4301", "CuSn12-C-GZ": "CuSn12-C",
	} {
		m, err := Find(name)
		if err != nil || m.Name != want {
			t.Errorf("Find(%q) = %q, %v; want %s", name, m.Name, err, want)
			continue
		}
		var e *SectionError
		if _, err := m.Strength(10); !errors.As(err, &e) || e.Condition != name || !strings.Contains(err.Error(), name) {
			t.Errorf("%q: strength error %v, want one that names the condition", name, err)
		}
	}
}

func TestUnknown(t *testing.T) {
	t.Parallel()
	for name, nearest := range map[string]string{"S2350": "S235", "C450": "C45+N", "42CrM4": "42CrMo4+QT", "": "", "S": "", "oak": "", "SAE": "", "3044": ""} {
		m, err := Find(name)
		var e *UnknownError
		if !errors.As(err, &e) || m.Name != "" || e.Name != name || len(e.Nearest) != 3 {
			t.Errorf("Find(%q) = %q, %v; want an UnknownError with three names", name, m.Name, err)
			continue
		}
		if !strings.Contains(strings.Join(e.Nearest, "|"), nearest) || !strings.Contains(err.Error(), e.Nearest[2]) {
			t.Errorf("Find(%q): nearest %v, want %s among them", name, e.Nearest, nearest)
		}
	}
}

func TestStrength(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name           string
		section        float64
		yield, tensile float64
		brittle        bool
	}{
		{"S235", 16, 235, 360, false}, {"S235", 16.01, 225, 360, false}, {"P265GH", 10, 265, 410, false}, {"GG25", 20, 0, 225, true}, {"1.0503", 100, 305, 580, false},
	} {
		m, _ := Find(c.name)
		s, err := m.Strength(c.section)
		if err != nil || s.YieldMPa != c.yield || s.TensileMPa != c.tensile || s.Brittle != c.brittle || s.Source == "" {
			t.Errorf("%s at %v: %+v, %v", c.name, c.section, s, err)
		}
	}
	for name, section := range map[string]float64{"S235": 251, "S355": 0, "S275": math.NaN(), "16MnCr5": 10, "CuSn8": -3} {
		m, _ := Find(name)
		var e *SectionError
		if s, err := m.Strength(section); !errors.As(err, &e) || s != (Strength{}) || e.Material != m.Name || err.Error() == "" {
			t.Errorf("%s at %v: %+v, %v; want a SectionError", name, section, s, err)
		}
	}
	s235, _ := Find("S235")
	c35, _ := Find("C35")
	if a, b := s235.StrengthSource(), c35.StrengthSource(); a != en10025 || b != isoN+" (from memory)" {
		t.Errorf("sources %q and %q", a, b)
	}
}

// The table is whole: names in normal form and of one grade only, sections and
// strengths in order, and each figure in the range of its kind of metal.
func TestTable(t *testing.T) {
	t.Parallel()
	seen := map[string]string{}
	for _, g := range grades() {
		for _, n := range g.known() {
			if n != normal(n) || seen[n] != "" {
				t.Errorf("%s: name %s is not in normal form, or stands for %s too", g.name, n, seen[n])
			}
			seen[n] = g.name
		}
		m := g.material("")
		if !(m.ContractPerK > 0 && m.ContractPerK < m.AlphaPerK && m.MaxHeatC >= 150 && m.MinColdC == liquidNitrogenC && m.Nu > 0.2 && m.Nu < 0.4) {
			t.Errorf("%s: %+v", m.Name, m)
		}
		if (len(g.steps) == 0) != (g.src == "") || (m.Weld.PreheatC.Max > 0) != (m.Weld.Class == WeldPreheated || m.Weld.Class == WeldProcedure) || m.Weld.PreheatC.Min > m.Weld.PreheatC.Max {
			t.Errorf("%s: source %q, weld %+v", m.Name, g.src, m.Weld)
		}
		for i, s := range g.steps {
			if i > 0 && s.UpToMm <= g.steps[i-1].UpToMm || s.TensileMPa != 0 && s.YieldMPa >= s.TensileMPa || (s.YieldMPa == 0) != (g.kind == GreyIron) {
				t.Errorf("%s: step %+v", m.Name, s)
			}
		}
	}
	for _, c := range Columns() {
		if c.Name == "" || c.Source == "" || c.State.String() == "" {
			t.Errorf("column %+v", c)
		}
	}
	if Kind(99).Data().Name != "" || Kind(-1).Data().Name != "" {
		t.Error("a value that is none of the constants must give nothing")
	}
}

// Carbon equivalents against the IIW formula on the middle of the analysis (EN
// ISO 683-1 and -2, ASTM A29; from memory): C, Mn, Cr, Mo, Ni in percent.
func TestCarbonEquivalent(t *testing.T) {
	t.Parallel()
	for name, a := range map[string][5]float64{
		"C22": {0.20, 0.55, 0, 0, 0}, "C35": {0.355, 0.65, 0, 0, 0}, "C40": {0.405, 0.65, 0, 0, 0}, "C45": {0.46, 0.65, 0, 0, 0}, "C50": {0.51, 0.75, 0, 0, 0}, "C55": {0.56, 0.75, 0, 0, 0}, "C60": {0.61, 0.75, 0, 0, 0},
		"25CrMo4": {0.255, 0.75, 1.05, 0.225, 0}, "34CrMo4": {0.335, 0.75, 1.05, 0.225, 0}, "42CrMo4": {0.415, 0.75, 1.05, 0.225, 0}, "34CrNiMo6": {0.34, 0.65, 1.5, 0.225, 1.5},
		"30CrNiMo8": {0.30, 0.65, 2.0, 0.40, 2.0}, "16MnCr5": {0.165, 1.15, 0.95, 0, 0}, "18CrNiMo7-6": {0.18, 0.70, 1.65, 0.30, 1.55},
		"1018": {0.18, 0.75, 0, 0, 0}, "1035": {0.35, 0.75, 0, 0, 0}, "1045": {0.465, 0.75, 0, 0, 0}, "4130": {0.305, 0.5, 0.95, 0.2, 0}, "4140": {0.405, 0.875, 0.95, 0.2, 0}, "4340": {0.405, 0.7, 0.8, 0.25, 1.825}, "8620": {0.205, 0.8, 0.5, 0.2, 0.55},
	} {
		m, err := Find(name)
		want := a[0] + a[1]/6 + (a[2]+a[3])/5 + a[4]/15
		if err != nil || math.Abs(m.Weld.CEV-want) > 0.02 {
			t.Errorf("%s: CEV %v, the formula gives %.3f (%v)", name, m.Weld.CEV, want, err)
		}
	}
}

func TestJoin(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		a, b   string
		class  WeldClass
		reason JoinReason
		worse  string
		hotC   float64
	}{
		{"S235", "S355", WeldReadily, JoinPlain, "S235", 0},
		{"S235", "S460", WeldPreheated, JoinHardens, "S460", 150},
		{"S235", "C45", WeldProcedure, JoinHardens, "C45+N", 400},
		{"42CrMo4", "S355", WeldProcedure, JoinHardens, "42CrMo4+QT", 350},
		{"S235", "GG25", WeldProcedure, JoinIron, "EN-GJL-250", 600},
		{"GGG-40", "S235", WeldProcedure, JoinIron, "EN-GJS-400-15", 330},
		{"C45", "malleable iron", WeldProcedure, JoinIron, "EN-GJMB-350-10", 400},
		{"S235", "11SMn30", WeldNever, JoinCracks, "11SMn30+C", 0},
		{"12L14", "S235", WeldNever, JoinCracks, "11SMn30+C", 0},
		{"S235", "bronze", WeldNever, JoinCracks, "CuSn7Zn4Pb7-C", 0},
		{"S235", "6082", WeldNever, JoinMetals, "EN AW-6082 T6", 0},
		{"CuSn8", "GG25", WeldNever, JoinMetals, "CuSn8", 600},
		{"6082", "5083", WeldOwn, JoinOwn, "EN AW-6082 T6", 0},
		{"304", "316", WeldOwn, JoinOwn, "1.4301", 0},
		{"S235", "304", WeldOwn, JoinStainless, "1.4301", 0},
		{"303", "304", WeldNever, JoinCracks, "1.4305", 0},
	} {
		a, _ := Find(c.a)
		b, _ := Find(c.b)
		if j := JoinOf(a, b); j.Class != c.class || j.Reason != c.reason || j.Worse.Name != c.worse || j.PreheatC.Max != c.hotC {
			t.Errorf("%s to %s: class %d, reason %d, %s, preheat %v", c.a, c.b, j.Class, j.Reason, j.Worse.Name, j.PreheatC)
		}
	}
}

// Any name gives a material or an error, never both, and never a panic.
func FuzzFind(f *testing.F) {
	for _, seed := range []string{"S355J2+N", "ASTM A36", "SAE 660", "", "SAE", "42CrMo4", "S235\x00", "ß", "BSBSBS"} {
		f.Add(seed, 20.0)
	}
	f.Fuzz(func(t *testing.T, name string, sectionMm float64) {
		m, err := Find(name)
		if (err == nil) != (m.Name != "") {
			t.Fatalf("%q: material %q and error %v", name, m.Name, err)
		}
		if err != nil {
			return
		}
		if s, err := m.Strength(sectionMm); err == nil && !(s.YieldMPa >= 0 && s.YieldMPa < 1200 && s.YieldMPa+s.TensileMPa > 50) {
			t.Fatalf("%q at %v: %+v", name, sectionMm, s)
		}
	})
}
