package fits

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// reference is the folder of the published values.
const reference = "../../testdata/reference/"

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestReferenceLimits runs every row of iso286.csv; each row names its source.
// A row without limits is a refusal.
func TestReferenceLimits(t *testing.T) {
	for _, r := range golden.Table(t, reference+"iso286.csv", 290) {
		nominal, kind, class := r.Number(t, "nominal_mm"), r["kind"], r["class"]
		got, err := Limit(nominal, class)
		if r["upper_um"] == "" {
			if !errors.Is(err, ErrNotDefined) || got != (Limits{}) {
				t.Errorf("%v %s: got %v, %v; want a refusal (%s)", nominal, class, got, err, r["source"])
			}
			continue
		}
		if err != nil {
			t.Errorf("%v %s: %v (%s)", nominal, class, err, r["source"])
			continue
		}
		if upper, lower := r.Number(t, "upper_um"), r.Number(t, "lower_um"); got.UpperUm != upper || got.LowerUm != lower {
			t.Errorf("%v %s: got %v %v, want %v %v (%s)", nominal, class, got.UpperUm, got.LowerUm, upper, lower, r["source"])
		}
		if got.Hole != (kind == "hole") || got.Class != class || got.NominalMm != nominal {
			t.Errorf("%v %s: described as %+v", nominal, class, got)
		}
	}
}

// TestReferenceTolerances runs every cell of it_grades.csv at the top, in the
// middle and just above the bottom of its step. An empty cell is a refusal.
func TestReferenceTolerances(t *testing.T) {
	rows := golden.Table(t, reference+"it_grades.csv", len(mainSteps))
	for _, r := range rows {
		over, upTo := r.Number(t, "over_mm"), r.Number(t, "up_to_mm")
		for grade := GradeIT01; grade <= GradeFinal; grade++ {
			column := "IT" + grades[grade-GradeIT01]
			bottom := math.Nextafter(over, upTo)
			if over == 0 && grade >= 14 {
				bottom = math.Nextafter(1, upTo) // IT14 and above begin above 1 mm
			}
			for _, nominal := range []float64{bottom, (over + upTo) / 2, upTo} {
				got, blank := tolerance(nominal, grade)
				if want := r.Number(t, column); got != want || (blank == "") != (r[column] != "") {
					t.Errorf("%v %s: got %v, %q; want %v (%s)", nominal, column, got, blank, want, r["source"])
				}
			}
		}
	}
}

// TestEveryDeviation holds every cell of the fundamental deviations against
// iso286_deviations.csv. Its last column names the letters of a step that no
// printed table was found for; they stand there so that they change only on
// purpose.
func TestEveryDeviation(t *testing.T) {
	rows := golden.Table(t, reference+"iso286_deviations.csv", len(deviationSteps))
	for i, r := range rows {
		if r.Number(t, "up_to_mm") != deviationSteps[i] {
			t.Fatalf("step %d ends at %v, in the file at %s", i, deviationSteps[i], r["up_to_mm"])
		}
		check := func(letter string, got float64) {
			want := float64(none)
			if r[letter] != "" {
				want = r.Number(t, letter)
			}
			if got != want {
				t.Errorf("up to %v mm %s: %v, want %v", deviationSteps[i], letter, got, want)
			}
		}
		for j, letter := range clearanceLetters {
			check(letter, clearanceTable[i][j])
		}
		for j, letter := range tightLetters {
			check(letter, tightTable[i][j])
		}
	}
}

// TestParse checks the spellings that are taken and their spelling back.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		want Class
		back string
	}{
		{"H7", Class{"H", 7, true}, "H7"},
		{"js6", Class{"js", 6, false}, "js6"},
		{" ZC11 ", Class{"ZC", 11, true}, "ZC11"},
		{"h01", Class{"h", -1, false}, "h01"},
		{"H0", Class{"H", 0, true}, "H0"},
		{"cd18", Class{"cd", 18, false}, "cd18"},
	} {
		got, err := Parse(c.text)
		if err != nil || got != c.want || got.String() != c.back {
			t.Errorf("%q: got %+v, %v", c.text, got, err)
		}
	}
	for text, says := range map[string]string{
		"":                     "empty",
		"7":                    "does not begin with a letter",
		"90H7":                 "without the size",
		"I7":                   "without I, L, O, Q, W",
		"HH7":                  `"HH"`,
		"Js7":                  "write JS7 for a hole or js7 for a shaft",
		"H":                    "01, 0 and 1 to 18",
		"H19":                  "01, 0 and 1 to 18",
		"H07":                  `"07"`,
		"H+7":                  `"+7"`,
		"H 7":                  `" 7"`,
		"H7/p6":                `"7/p6"`,
		"H9999999999999999999": "is not a tolerance grade",
		"µ7":                   "does not begin with a letter",
	} {
		got, err := Parse(text)
		if err == nil || got != (Class{}) || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %+v, %v; want %q", text, got, err, says)
		}
	}
}

// TestRefusals checks what the standard leaves blank and what is offered.
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		nominal float64
		class   string
		nearest string // "" where only words are expected
		says    string
	}{
		{1, "A11", "C11", "not used up to and including 1 mm"},
		{1, "b11", "c11", "not used up to and including 1 mm"},
		{1, "H14", "H13", "IT14 to IT18"},
		{1, "N9", "N8", "not used above grade 8"},
		{20, "t6", "s6", "above 24 mm"},
		{24, "T7", "S7", "above 24 mm"},
		{14, "v6", "u6", "above 14 mm"},
		{18, "Y7", "X7", "above 18 mm"},
		{20, "j8", "j7", "grades 5, 6 and 7"},
		{3, "j9", "j8", "grades 5, 6 and 7"},
		{20, "j4", "j5", "grades 5, 6 and 7"},
		{20, "J9", "J8", "grades 6, 7 and 8"},
		{20, "J5", "J6", "grades 6, 7 and 8"},
		{600, "j6", "js6", "500 mm"},
		{600, "J7", "JS7", "500 mm"},
		{20, "K9", "K8", "up to grade 8"},
		{600, "K9", "K8", "up to grade 8"},
		{20, "K2", "K3", "from grade 3"},
		{20, "P2", "P3", "from grade 3"},
		{60, "ef7", "e7", "50 mm"},
		{60, "CD9", "C9", "50 mm"},
		{60, "fg6", "f6", "50 mm"},
		{600, "a11", "d11", "500 mm"},
		{600, "ZC7", "U7", "500 mm"},
		{600, "v6", "u6", "500 mm"},
		{600, "H01", "H1", "IT01 and IT0"},
		{0.05, "c11", "cd8", "not be above zero"},
		{3150.5, "H7", "", "3150 mm, the largest size"},
	} {
		got, err := Limit(c.nominal, c.class)
		if !errors.Is(err, ErrNotDefined) || got != (Limits{}) {
			t.Errorf("%v %s: got %+v, %v; want a refusal", c.nominal, c.class, got, err)
			continue
		}
		_, nearest, _ := strings.Cut(err.Error(), "nearest defined: ")
		if nearest != c.nearest || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v %s: %v; want %q and nearest %q", c.nominal, c.class, err, c.says, c.nearest)
		}
	}
	for _, nominal := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, err := Limit(nominal, "H7"); err == nil || errors.Is(err, ErrNotDefined) || got != (Limits{}) {
			t.Errorf("%v: got %+v, %v", nominal, got, err)
		}
	}
}

// TestSpecialCases checks the corners of ISO 286-1 that no reference row
// reaches: ISO 286-2:1988 limit deviations, from memory, or worked by hand from
// the fundamental deviation and the standard tolerance named beside.
func TestSpecialCases(t *testing.T) {
	for _, c := range []struct {
		nominal      float64
		class        string
		upper, lower float64
	}{
		{8, "N9", 0, -36},      // the keyway width; N above grade 8 begins at zero
		{500, "N11", 0, -400},  // the same at the top of the rule
		{3, "N9", -4, -29},     // up to 3 mm N keeps its -4
		{501, "N9", -44, -219}, // above 500 mm it keeps its -44
		{1, "N8", -4, -18},     // the last grade of N up to 1 mm
		{3, "K9", 0, -25},      // K above grade 8 exists only up to 3 mm
		{501, "K8", 0, -110},   // above 500 mm K begins at zero, no Δ
		{20, "M9", -8, -60},    // M above grade 8: no Δ
		{250, "M6", -8, -37},   // -17 + 9, just below the special case
		{280, "M5", -13, -36},  // -20 + 7: the special case is M6 alone
		{280, "M7", 0, -52},    // -20 + 20
		{20, "K3", -0.5, -4.5}, // -2 + 1.5, the finest grade with Δ
		{20, "P8", -22, -55},   // P above grade 7: no Δ
		{20, "k3", 4, 0},       // k outside grades 4 to 7
		{20, "k4", 8, 2},
		{501, "k6", 44, 0},
		{3, "j8", 8, -6},
		{20, "J7", 12, -9},
		{20, "JS01", 0.3, -0.3},
		{2, "js01", 0.15, -0.15}, // half of 0.3
		{8, "CD9", 92, 56},
		{2, "ef7", -10, -20},
		{4, "FG6", 14, 6},
		{45, "cd10", -100, -200}, // 2010 edition: cd, ef, fg go on to 50 mm
		{25, "EF8", 61, 28},
		{25, "ef8", -28, -61},
		{3150, "H18", 33000, 0},
		{501, "T7", -400, -470},
	} {
		got, err := Limit(c.nominal, c.class)
		if err != nil || got.UpperUm != c.upper || got.LowerUm != c.lower {
			t.Errorf("%v %s: got %v %v, %v; want %v %v", c.nominal, c.class, got.UpperUm, got.LowerUm, err, c.upper, c.lower)
		}
	}
}

// TestBetween checks the three kinds and their edges. The deviations are those
// of ISO 286-2:1988; the clearances are worked by hand.
func TestBetween(t *testing.T) {
	for _, c := range []struct {
		nominal  float64
		fit      string
		kind     string
		max, min float64
	}{
		{90, "H7/p6", KindInterference, -2, -59},
		{90, "H7 / h6", KindClearance, 57, 0},
		{90, "H7/k6", KindTransition, 32, -25},
		{50, "H7/g6", KindClearance, 50, 9},
		{50, "P7/h6", KindInterference, -1, -42},
		{20, "H8/s7", KindInterference, -2, -56},
		{20, "JS7/js6", KindTransition, 17, -17},
		{2, "H6/p5", KindInterference, 0, -10},
	} {
		got, err := Between(c.nominal, c.fit)
		if err != nil || got.Kind != c.kind || got.ClearanceMaxUm != c.max || got.ClearanceMinUm != c.min {
			t.Errorf("%v %s: got %+v, %v; want %s %v %v", c.nominal, c.fit, got, err, c.kind, c.max, c.min)
		}
	}
	f, err := Between(90, "H7/p6")
	if err != nil {
		t.Fatal(err)
	}
	if f.Hole.MinMm != 90 || f.Hole.MaxMm != 90.035 || f.Shaft.MinMm != 90.037 || f.Shaft.MaxMm != 90.059 {
		t.Errorf("90 H7/p6: %+v", f)
	}
	for fit, says := range map[string]string{
		"H7":       "write hole/shaft",
		"p6/H7":    `write "H7/p6"`,
		"H7/P7":    "one hole class",
		"h7/p6":    "one hole class",
		"H7/":      "empty",
		"/p6":      "empty",
		"H7/p6/g6": `"6/g6"`,
		"H7/j9":    "nearest defined: j7",
		"J9/h6":    "nearest defined: J8",
	} {
		got, err := Between(90, fit)
		if err == nil || got != (Fit{}) || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: got %+v, %v; want %q", fit, got, err, says)
		}
	}
}

func BenchmarkLimit(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Limit(90, "P7"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLimitRefused(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Limit(20, "t6"); err == nil {
			b.Fatal("20 t6 was not refused")
		}
	}
}
