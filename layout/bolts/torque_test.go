package bolts

import (
	"math"
	"os"
	"regexp"
	"strings"
	"testing"
)

// section returns one lettered section of the worked examples.
func section(t *testing.T, letter string) string {
	t.Helper()
	text, err := os.ReadFile("../../testdata/reference/worked_examples.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(text), "## ("+letter+")")
	if !ok {
		t.Fatalf("no section (%s)", letter)
	}
	part, _, _ := strings.Cut(rest, "\n## ")
	return part
}

// Section (g): each row of the table, T = K F d with 0.75 of the ISO 898-1
// proof load.
func TestWorkedTorques(t *testing.T) {
	row := regexp.MustCompile(`\| (M\d+) \| ([\d.]+) \| (\d+) \| (\d+) \| ([\d.]+) \| ([\d.]+) \|`)
	rows := row.FindAllStringSubmatch(section(t, "g"), -1)
	if len(rows) < 8 {
		t.Fatalf("%d rows", len(rows))
	}
	for _, r := range rows {
		b := find(t, r[1])
		for condition, cell := range map[string]string{"dry": r[5], "lubricated": r[6]} {
			got, err := b.Tighten(Tightening{Class: r[2], Condition: condition})
			if err != nil {
				t.Error(err)
				continue
			}
			if !near(got.PreloadN, value(t, r[4]), 1e-6) || !near(got.TorqueNm, value(t, cell), 0.0501) {
				t.Errorf("%s %s %s = %+v, want %v", r[1], r[2], condition, got, r)
			}
		}
	}
}

// Section (g) lists each K with its source.
func TestNutFactors(t *testing.T) {
	for name, want := range map[string]float64{
		"black": 0.30, "zinc": 0.20, "oiled": 0.15, "cadmium": 0.16, "anti-seize": 0.12, "special grip nut": 0.09, "unknown": 0.20,
		"dry": 0.20, "": 0.20, "Lubricated": 0.15, "bare steel": 0.20, "zinc dry": 0.295,
	} {
		if got, err := FindNutFactor(name); err != nil || got.K != want || got.Source == "" {
			t.Errorf("%q: %+v, %v, want %v", name, got, err, want)
		}
	}
	if _, err := FindNutFactor("rusty"); err == nil || !strings.Contains(err.Error(), "anti-seize") {
		t.Errorf("rusty: %v", err)
	}
}

// The proof load of M10 8.8 is 33.7 kN; the preload 0.75 of it, and 30 % more or less.
func TestScatter(t *testing.T) {
	got, err := find(t, "M10").Tighten(Tightening{Class: "8.8"})
	if err != nil || !near(got.PreloadN, 25275, 1e-6) || !near(got.PreloadLowN, 25275*0.7, 1e-6) || !near(got.PreloadHighN, 25275*1.3, 1e-6) || !near(got.TorqueLowNm, 50.55*0.7, 1e-6) || !near(got.TorqueHighNm, 50.55*1.3, 1e-6) {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestTightenRefuses(t *testing.T) {
	b := find(t, "M10")
	for name, bad := range map[string]Tightening{
		"class": {Class: "9.9"}, "condition": {Class: "8.8", Condition: "rusty"},
	} {
		if got, err := b.Tighten(bad); err == nil {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// Section (k): the [D] examples, "M12, d0 13.5 (…) -> e 16.2, p1 29.7, p2
// 32.4; M16, d0 17.5 -> 21.0, 38.5, 42.0; …".
func TestWorkedEdges(t *testing.T) {
	row := regexp.MustCompile(`M\d+, d0 ([\d.]+)[^>;]*-> (?:e )?([\d.]+), (?:p1 )?([\d.]+), (?:p2 )?(\d+\.\d)`)
	rows := row.FindAllStringSubmatch(section(t, "k"), -1)
	if len(rows) != 3 {
		t.Fatalf("%d examples: %q", len(rows), rows)
	}
	for _, r := range rows {
		e, err := EdgeDistances(value(t, r[1]))
		if err != nil || !near(e.E1Mm, value(t, r[2]), 0.0501) || !near(e.P1Mm, value(t, r[3]), 0.0501) {
			t.Errorf("d0 %s: %+v, %v, want %v", r[1], e, err, r)
		}
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := EdgeDistances(bad); err == nil {
			t.Errorf("d0 %v accepted", bad)
		}
	}
}

// A stud that is made goes by its own proof stress: 0.75 · 310.5 MPa · 157 mm² (ISO
// 898-1 for M16) = 36.56 kN; K 0.2 and 16 mm give 117.0 N m.
func TestTightenByProofStress(t *testing.T) {
	t.Parallel()
	b, err := Find("M16")
	if err != nil {
		t.Fatal(err)
	}
	got, err := b.Tighten(Tightening{ProofMPa: 310.5})
	if err != nil || math.Abs(got.PreloadN-36561.4) > 0.1 || math.Abs(got.TorqueNm-116.996) > 0.001 {
		t.Errorf("%+v, %v", got, err)
	}
	for _, bad := range []Tightening{{ProofMPa: -1}, {ProofMPa: math.Inf(1)}, {ProofMPa: math.NaN()}} {
		if _, err := b.Tighten(bad); err == nil {
			t.Errorf("%+v taken", bad)
		}
	}
}
