package bolts

import (
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
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
			if got.ProofLoadN != value(t, r[3]) || !near(got.PreloadN, value(t, r[4]), 1e-6) || !near(got.TorqueNm, value(t, cell), 0.0501) {
				t.Errorf("%s %s %s = %+v, want %v", r[1], r[2], condition, got, r)
			}
		}
	}
}

// Section (g), last line: M12 8.8 at 70 percent, K 0.2: 34.2 kN, 82 N·m.
func TestWorkedSeventyPercent(t *testing.T) {
	got, err := find(t, "M12").Tighten(Tightening{Class: "8.8", Fraction: 0.7})
	if err != nil || !near(got.PreloadN, 34200, 50) || !near(got.TorqueNm, 82, 0.5) {
		t.Errorf("%+v, %v", got, err)
	}
}

// Section (g) lists each K with its source.
func TestNutFactors(t *testing.T) {
	for name, want := range map[string]float64{
		"black": 0.30, "zinc": 0.20, "oiled": 0.18, "cadmium": 0.16, "anti-seize": 0.12, "special grip nut": 0.09, "unknown": 0.20,
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

// Scatter 30 % on 75 % of proof reaches 97.5 %; on 90 % it passes the proof
// load.
func TestScatter(t *testing.T) {
	b := find(t, "M10")
	got, err := b.Tighten(Tightening{Class: "8.8"})
	if err != nil || got.OverProof || !near(got.PreloadLowN, 25275*0.7, 1e-6) || !near(got.PreloadHighN, 25275*1.3, 1e-6) || !near(got.TorqueLowNm, 50.55*0.7, 1e-6) || !near(got.TorqueHighNm, 50.55*1.3, 1e-6) {
		t.Errorf("0.75: %+v, %v", got, err)
	}
	if got, err = b.Tighten(Tightening{Class: "8.8", Fraction: 0.9}); err != nil || !got.OverProof {
		t.Errorf("0.90: %+v, %v", got, err)
	}
	text := strings.Join(got.Assumptions, "\n")
	for _, want := range []string{"K 0.2", "90 %", "±30 %", "8.8", "ISO 898-1"} {
		if !strings.Contains(text, want) {
			t.Errorf("assumptions lack %q:\n%s", want, text)
		}
	}
}

func TestTightenRefuses(t *testing.T) {
	b := find(t, "M10")
	for name, bad := range map[string]Tightening{
		"class": {Class: "9.9"}, "condition": {Class: "8.8", Condition: "rusty"},
		"K NaN": {Class: "8.8", K: math.NaN()}, "K large": {Class: "8.8", K: 2}, "K negative": {Class: "8.8", K: -0.2},
		"fraction": {Class: "8.8", Fraction: 1.1}, "fraction NaN": {Class: "8.8", Fraction: math.NaN()}, "fraction negative": {Class: "8.8", Fraction: -0.1},
		"scatter": {Class: "8.8", Scatter: 1}, "scatter NaN": {Class: "8.8", Scatter: math.NaN()},
	} {
		if got, err := b.Tighten(bad); err == nil {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// Torque is proportional to K and to the fraction, and the range holds it.
func TestTorqueProportional(t *testing.T) {
	sizes := []string{"M5", "M10", "M16", "M36"}
	rapid.Check(t, func(t *rapid.T) {
		b, err := Find(rapid.SampledFrom(sizes).Draw(t, "size"))
		if err != nil {
			t.Fatal(err)
		}
		k := rapid.Float64Range(0.05, 0.25).Draw(t, "K")
		fraction := rapid.Float64Range(0.1, 0.5).Draw(t, "fraction")
		scatter := rapid.Float64Range(0.01, 0.9).Draw(t, "scatter")
		one, err1 := b.Tighten(Tightening{Class: "10.9", K: k, Fraction: fraction, Scatter: scatter})
		two, err2 := b.Tighten(Tightening{Class: "10.9", K: 2 * k, Fraction: 2 * fraction, Scatter: scatter})
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if !near(two.TorqueNm/one.TorqueNm, 4, 1e-9) {
			t.Fatalf("%v and %v", one.TorqueNm, two.TorqueNm)
		}
		if !(one.PreloadLowN < one.PreloadN && one.PreloadN < one.PreloadHighN && one.TorqueLowNm < one.TorqueNm && one.TorqueNm < one.TorqueHighNm) {
			t.Fatalf("%+v", one)
		}
	})
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
		if err != nil || !near(e.E1Mm, value(t, r[2]), 0.0501) || !near(e.E2Mm, value(t, r[2]), 0.0501) || !near(e.P1Mm, value(t, r[3]), 0.0501) || !near(e.P2Mm, value(t, r[4]), 0.0501) {
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
	if err != nil || math.Abs(got.PreloadN-36561.4) > 0.1 || math.Abs(got.TorqueNm-116.996) > 0.001 || !strings.Contains(got.Assumptions[1], "75 % of the proof load of a proof stress of 310.5 MPa") {
		t.Errorf("%+v, %v", got, err)
	}
	for _, bad := range []Tightening{{ProofMPa: -1}, {ProofMPa: math.Inf(1)}, {ProofMPa: math.NaN()}, {ProofMPa: 300, Fraction: 1.1}} {
		if _, err := b.Tighten(bad); err == nil {
			t.Errorf("%+v taken", bad)
		}
	}
}
