package words

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/golden"
)

// TestProblemsSay: what is said of every kind, how grave it is, and which number an acceptance is held to and
// whether more or less of it is worse. Read a changed line: that number is the one that may get worse.
func TestProblemsSay(t *testing.T) {
	t.Parallel()
	var b strings.Builder
	for _, a := range Problems {
		held := "a choice"
		if m := a.Measure; m != nil {
			held = map[bool]string{true: "more", false: "less"}[m.More] + " of {" + strconv.Itoa(m.Arg) + "} is worse"
		}
		fmt.Fprintf(&b, "%s\t%s, %s, %s\n\t%s\n\t%s\n\t%s: %s\n", a.Kind, a.Code, a.Severity, held, a.Says, a.Fix, a.Source, a.Rule)
	}
	golden.Compare(t, filepath.Join("testdata", "problems.txt"), []byte(b.String()))
}

// TestUnits: numbers with the digits that a shop reads them to, in both units; by hand (1 in = 25.4 mm, 1 lbf = 4.44822 N).
func TestUnits(t *testing.T) {
	t.Parallel()
	mm, inch := Writer{parts.Millimetres}, Writer{parts.Inches}
	for _, c := range []struct{ got, want string }{
		{mm.Fine(12.34, 25), "12.3 – 25 µm"},
		{inch.Fine(12.34, 25.4), "0.0005 – 0.001 in"},
		{NarrowFine(plan.Range{Min: 0.012, Max: 0.034}, parts.Millimetres), "12–34 µm"},
		{NarrowFine(plan.Range{Min: -0.012, Max: 0.034}, parts.Millimetres), "-12 to 34 µm"},
		{NarrowFine(plan.Range{Min: -0.034, Max: -0.012}, parts.Millimetres), "-34 to -12 µm"},
		{NarrowFine(plan.Range{Min: 0.01234, Max: 0.0254}, parts.Inches), "0.0005–0.001 in"},
		{mm.ForcesRead(123456, 234567, 1), "123.5 – 234.6 kN"},
		{inch.ForcesRead(44482.2, 88964.4, 0), "10000 – 20000 lbf"},
		{mm.Mass(99.949), "99.9 kg"}, {mm.Mass(99.95), "100 kg"}, {mm.Mass(9.9949), "9.99 kg"}, {mm.Mass(9.995), "10.0 kg"}, {mm.Mass(0.9994), "0.999 kg"}, {mm.Mass(0.9995), "1.00 kg"},
		{mm.Grams(1.96), "2 g"}, {mm.Grams(2.4), "2 g"}, {mm.Grams(2), "2 g"}, {mm.Grams(1.44), "1.4 g"}, {mm.RoundMass(0, 1), "0 kg"}, {mm.RoundMass(0.04, 1), "40 g"}, {mm.RoundMass(0.06, 1), "0.1 kg"},
		{mm.HeatsRead(80.4, 120.6), "80 – 121 °C"}, {inch.HeatsRead(80, 120), "176 – 248 °F"},
		{mm.Size(0.9996), "1"}, {mm.Size(0.9994), "0.999"}, {mm.Size(1.006), "1.01"}, {mm.Size(-0.1234), "-0.123"}, {CountOf(1) + CountOf(12), "12 × "},
		{fmt.Sprint(mm.Even(12.3, 0.5, 0.1), mm.Up(12.1, 0.5, 0.1), mm.Up(12.5, 0.5, 0.1)), "12.5 12.5 12.5"},
		{fmt.Sprint(mm.Down(12.4, 0.5, 0.1), mm.Down(12.5, 0.5, 0.1), inch.Down(12.6, 0.5, 0.125), inch.Down(12.7, 0.5, 0.125)), "12 12.5 9.525 12.7"},
		{fmt.Sprint(inch.Even(12.3, 0.5, 0.125), inch.Up(12.8, 0.5, 0.125), inch.Up(12.7, 0.5, 0.125)), "12.7 15.875 12.7"},
		{inch.Limits(1.0001*25.4, 1.0109*25.4), "1.001 – 1.010 in"}, {inch.Limits(1.0001*25.4, 1.0099*25.4), "1.0001 – 1.0099 in"}, {mm.Limits(10.001, 10.109), "10.01 – 10.10"}, {mm.Limits(10.001, 10.099), "10.001 – 10.099"},
		{mm.Room(1000.2), "1001"}, {mm.Room(1000.0000001), "1000"},
		{inch.Room(25.4), "1 in"}, {inch.Room(25.5), "1.01 in"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
