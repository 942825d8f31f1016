package read

import (
	"errors"
	"os"
	"strings"
	"testing"

	"centrepop/parts"
)

const flangeExample = `flange: motor
units: mm
caliper: 0.05
spigot: {diameter: 230.02, plus-minus: 0.02}
holes: {count: 4, diameter: [14.5, 14.5, 14.48, 14.52], first: 45, plus-minus: 0.1}
bolt: M12
readings:
  - {from: 1, to: 2, over: 201.9}
  - from: 2
    to: 3
    over: 201.86
  - {from: 3, to: 4, centres: 187.4 mm}
  - {from: 4, to: 1, over: 7.949 in}
  - {from: 1, to: 3, between: 250.5}
  - {from: 1, to: spigot, between: 10.2, plus-minus: 0.2}
`

// TestSurvey reads every key of the format.
func TestSurvey(t *testing.T) {
	t.Parallel()
	f, err := parseSurvey("x.yaml", []byte(flangeExample))
	if err != nil {
		t.Fatal(err)
	}
	if f.Name.Value != "motor" || f.Units != parts.Millimetres || f.Bolt.Value != "M12" || f.First.Deg != 45 || len(f.Holes) != 4 || len(f.Readings) != 6 {
		t.Fatalf("%+v", f)
	}
	if s := f.Spigot; s.Diameter.Mm != 230.02 || s.PlusMinus.Mm != 0.02 {
		t.Errorf("%+v", s)
	}
	if h := f.Holes[3]; h.Diameter.Mm != 14.52 || h.PlusMinus.Mm != 0.1 {
		t.Errorf("%+v", h)
	}
	for i, want := range []struct {
		from, to      int
		kind          string
		mm, plusMinus float64
		line          int
	}{
		{1, 2, "over", 201.9, 0.05, 8},
		{2, 3, "over", 201.86, 0.05, 9},
		{3, 4, "centres", 187.4, 0.05, 12},
		{4, 1, "over", 7.949 * 25.4, 0.05, 13},
		{1, 3, "between", 250.5, 0.05, 14},
		{1, 0, "between", 10.2, 0.2, 15},
	} {
		r := f.Readings[i]
		if r.From != want.from || r.To != want.to || r.Kind != want.kind || r.Length.Mm != want.mm || r.PlusMinus.Mm != want.plusMinus || r.Pos.Line != want.line {
			t.Errorf("reading %d is %+v, want %+v", i+1, r, want)
		}
	}
	// A single diameter stands for all holes; inches, and a tapped flange.
	f, err = parseSurvey("x.yaml", []byte("units: in\nholes: {count: 36, diameter: 27/64, thread: 1/2-13 UNC}\nspigot: 9\nreadings: [{from: 36, to: 1, centres: 3.889}]"))
	if err != nil || f.Units != parts.Inches || len(f.Holes) != 36 || f.Holes[35].Diameter.Mm != 27*25.4/64 || f.Holes[0].PlusMinus.Set() || f.Thread.Value != "1/2-13 UNC" || f.Spigot.Diameter.Mm != 9*25.4 {
		t.Errorf("%+v %v", f, err)
	}
}

// TestSurveyRefused wants the line of each fault.
func TestSurveyRefused(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		old, new string
		line     int
	}{
		{"units: mm", "units: furlong", 2},
		{"caliper: 0.05", "caliper: 0", 3},
		{"caliper: 0.05", "caliper: NaN", 3},
		{"diameter: 230.02", "diameter: .inf", 4},
		{"diameter: 230.02, ", "", 4},
		{"count: 4", "count: 2", 5},
		{"count: 4", "count: 3", 5},
		{"count: 4, ", "", 5},
		{"first: 45", "first: 400", 5},
		{"14.48, ", "x, ", 5},
		{"bolt: M12", "bolt: [M12]", 6},
		{"bolt: M12", "bolt: *alias", 6},
		{"bolt: M12", "units: mm", 6},
		{"{from: 1, to: 2, over: 201.9}", "{from: 1, to: 2, over: 201.9, between: 170}", 8},
		{"{from: 1, to: 2, over: 201.9}", "{from: 1, to: 2, over: 201.9", 0},
		{"{from: 1, to: 2, over: 201.9}", strings.Repeat("[", 40), 8},
		{"{from: 1, to: 2, over: 201.9}", strings.Repeat("x", maxLineChars+1), 8},
		{"{from: 1, to: 2, over: 201.9}", "\x00", 8},
		{"{from: 1, to: 2, over: 201.9}", "\xff", 8},
		{"from: 2\n", "from: 9\n", 9},
		{flangeExample, "", 1},
		{flangeExample, "just words", 1},
		{"readings:\n  - {from: 1, to: 2, over: 201.9}\n", "readings: 3\nholes2:\n", 7},
		{"to: spigot", "to: spigots", 15},
		{"count: 4", "count: 37", 5},
		{"flange: motor", "flange: [a]", 1},
		{"flange: motor", "flanges: a", 1},
		{flangeExample, "- a\n- b", 1},
		{flangeExample, "flange: a\n---\nflange: b\n", 2},
		{flangeExample, strings.Repeat("# a\n", maxFileBytes/4+1), 1},
	} {
		f, err := parseSurvey("x.yaml", []byte(strings.Replace(flangeExample, test.old, test.new, 1)))
		var located parts.Errors
		if !errors.As(err, &located) || len(located) == 0 || f != nil {
			t.Errorf("%.60q: %v", test.new, err)
			continue
		}
		if test.line > 0 && located[0].Line != test.line || located[0].File != "x.yaml" || located[0].What == "" || located[0].Right == "" {
			t.Errorf("%.60q: %v, want line %d", test.new, err, test.line)
		}
	}
}

func FuzzSurvey(f *testing.F) {
	f.Add(flangeExample)
	src, err := os.ReadFile("../../cmd/centrepop/testdata/script/flange.txtar")
	if err != nil {
		f.Fatal(err)
	}
	for _, part := range strings.Split(string(src), "\n-- ") {
		if _, body, ok := strings.Cut(part, " --\n"); ok {
			f.Add(body)
		}
	}
	f.Fuzz(func(t *testing.T, src string) {
		_, err := parseSurvey("x.yaml", []byte(src))
		if err == nil {
			return
		}
		var located parts.Errors
		if !errors.As(err, &located) || len(located) == 0 || located[0].Line < 1 || located[0].Column < 1 {
			t.Fatalf("%v", err)
		}
	})
}
