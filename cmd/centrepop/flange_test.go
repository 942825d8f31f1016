package main

import (
	"errors"
	"os"
	"strings"
	"testing"

	"centrepop/layout/measured"
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

// TestFlangeFile reads every key of the format.
func TestFlangeFile(t *testing.T) {
	t.Parallel()
	f, err := parseFlange("x.yaml", []byte(flangeExample))
	if err != nil {
		t.Fatal(err)
	}
	s := f.survey
	if f.name != "motor" || f.bolt != "M12" || s.FirstDeg != 45 || len(s.Holes) != 4 || len(s.Readings) != 6 {
		t.Fatalf("%+v", f)
	}
	if s.Spigot != (measured.Diameter{Mm: 230.02, PlusMinusMm: 0.02}) || s.Holes[3] != (measured.Diameter{Mm: 14.52, PlusMinusMm: 0.1}) {
		t.Errorf("%+v", s)
	}
	for i, want := range []measured.Reading{
		{From: 1, To: 2, Kind: measured.Over, Mm: 201.9, PlusMinusMm: 0.05},
		{From: 2, To: 3, Kind: measured.Over, Mm: 201.86, PlusMinusMm: 0.05},
		{From: 3, To: 4, Kind: measured.Centres, Mm: 187.4, PlusMinusMm: 0.05},
		{From: 4, To: 1, Kind: measured.Over, Mm: 7.949 * 25.4, PlusMinusMm: 0.05},
		{From: 1, To: 3, Kind: measured.Between, Mm: 250.5, PlusMinusMm: 0.05},
		{From: 1, To: measured.Spigot, Kind: measured.Between, Mm: 10.2, PlusMinusMm: 0.2},
	} {
		if s.Readings[i] != want {
			t.Errorf("reading %d is %+v, want %+v", i+1, s.Readings[i], want)
		}
	}
	if f.reading[1].Line != 9 || f.reading[5].Line != 15 {
		t.Errorf("readings at %+v", f.reading)
	}
}

// TestFlangeFileRefused wants the line of each fault.
func TestFlangeFileRefused(t *testing.T) {
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
		{"{from: 1, to: 2, over: 201.9}", strings.Repeat("x", 2000), 8},
		{"{from: 1, to: 2, over: 201.9}", "\x00", 8},
		{"{from: 1, to: 2, over: 201.9}", "\xff", 8},
		{"from: 2\n", "from: 9\n", 9},
		{flangeExample, "", 1},
		{flangeExample, "just words", 1},
		{flangeExample, "- a\n- b", 1},
		{flangeExample, "flange: a\n---\nflange: b\n", 3},
		{flangeExample, strings.Repeat("# a\n", maxFlangeBytes/4+1), 1},
	} {
		f, err := parseFlange("x.yaml", []byte(strings.Replace(flangeExample, test.old, test.new, 1)))
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

func FuzzFlangeFile(f *testing.F) {
	f.Add(flangeExample)
	src, err := os.ReadFile("testdata/script/flange.txtar")
	if err != nil {
		f.Fatal(err)
	}
	for _, part := range strings.Split(string(src), "\n-- ") {
		if _, body, ok := strings.Cut(part, " --\n"); ok {
			f.Add(body)
		}
	}
	f.Fuzz(func(t *testing.T, src string) {
		file, err := parseFlange("x.yaml", []byte(src))
		if err != nil {
			var located parts.Errors
			if !errors.As(err, &located) || len(located) == 0 || located[0].Line < 1 || located[0].Column < 1 {
				t.Fatalf("%v", err)
			}
			return
		}
		if _, err := measured.Fit(file.survey); err != nil {
			var located parts.Errors
			if err = file.locate(err); !errors.As(err, &located) || len(located) == 0 {
				t.Fatalf("%v has no place", err)
			}
		}
	})
}
