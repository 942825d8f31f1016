package review

import (
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// The wheel on its shaft reaches from 40 to 60 behind a plate of 20, the pulley beside it as far as its gap is: 40 of it are
// in line. The shafts are 200 apart, and 1/120 of that is 1.67. The motor turns 1400: by rims of 100 on 200 that is 700, to
// 735 with a twentieth, by grooves of 80 on 180 less.
func TestBelts(t *testing.T) {
	t.Parallel()
	const drum = "pulley.yaml, drum.yaml]"
	laid := func(gap, more string) string {
		return "loose:\n  - {part: drum, how: laid over the wheels, after: wheel-on, lies: [{on: plate.back, with: front, gap: " + gap + more + "}]}\n"
	}
	for _, c := range []struct {
		old, new, code string
		want           []string
	}{
		{"gap: 22", "gap: 40", "belt", nil}, {"gap: 22", "gap: 38.4", "belt", nil},
		{"gap: 22", "gap: 38.2", "belt", []string{"1.8 mm out of line, shafts 200 mm apart, wanted at most 1.7 mm"}},
		{"the motor shaft", "its shaft", "belt", nil}, {"through: belt", "through: gear-pair", "belt", nil},
		{"gap: 22", "gap: 22", "first-run", []string{"736 rev/min, the output 700"}},
		{"diameter: 100, length: 4}, {name: groove", "diameter: 101, length: 4}, {name: groove", "first-run", nil},
		{"the motor shaft", "its shaft", "first-run", nil},
		{"through: belt", "through: coupling", "first-run", nil}, {"speed: 736", "speed: 1471", "first-run", []string{"1471 rev/min, the output 700"}},
		{"", "", "guard", []string{""}}, {"through: belt", "through: coupling", "guard", nil},
		{"V-belt SPZ", "V-belt SPZ with a belt guard of mesh", "guard", nil},
		// A drum of 694 inside, open behind, over both wheels; then behind them, and beside the one.
		{drum, laid("0", ""), "guard", []string{"694 mm open, 0 mm off"}},
		{drum, laid("61", ""), "guard", []string{"360°, wanted at most 180°", "360°, wanted at most 180°", "694 mm open, 61 mm off"}},
		{drum, laid("0", ", at: [-400, 0]"), "guard", []string{"225°, wanted at most 180°", "694 mm open, 385 mm off", "200 mm open, 385 mm off"}},
	} {
		a, err := txtar.ParseFile("testdata/belt.txtar")
		if err != nil {
			t.Fatal(err)
		}
		files := map[string]string{}
		for _, f := range a.Files {
			files[f.Name] = strings.Replace(string(f.Data), c.old, c.new, 1)
		}
		if c.old == drum {
			files["job.yaml"] = strings.NewReplacer("pulley.yaml]", drum, "loose:\n", c.new, "press: {shaft: shaft.root, bore: plate.bore}", "slide: {hub: plate.bore, on: shaft.root}").Replace(string(a.Files[0].Data))
		}
		var got []string
		for _, f := range reviewOf(t, files) {
			if f.Code == c.code {
				got = append(got, f.Numbers)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.new, got, c.want)
		}
	}
}
