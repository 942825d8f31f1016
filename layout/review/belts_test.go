package review

import (
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// The wheel on its shaft reaches from 40 to 60 behind a plate of 20, the pulley beside it as far as its gap is: 40 of it are
// in line. The shafts are 200 apart, and 1/120 of that is 1.67. The motor turns 1400: by rims of 100 on 200 that is 700, to
// 735 with a twentieth, by grooves of 80 on 180 less; at 1550 it is 775, of which 736 are not nineteen twentieths. The shafts of
// frames 80 and 90 are 19 and 24 (IEC 60072-1).
// A belt SPZ lies 2 under rims of 100 and 200 and goes round them at 96 and 196: 2 √(200² − 50²) + π (96 + 196)/2 + 100 asin(50/200) = 871.2; made to 1/100, one of 863 to
// 880 goes round. It is 9.7 at its top, of which 5/4 is 12.1; SPB is 14 in its middle (ISO 4183).
func TestBelts(t *testing.T) {
	t.Parallel()
	const drum = "pulley.yaml, drum.yaml]"
	const bore = "\n  inside: [{name: bore, diameter: 19, fit: H7, length: 20}]"
	const steps = "{name: rim-front, diameter: 100, length: 4}, {name: groove, diameter: 80, length: 12}, {name: rim-back, diameter: 100, length: 4}]" + bore
	out := []string{"18 mm out of line, shafts 200 mm apart, wanted at most 1.7 mm"}
	const key, unkeyed = "keyways: [{name: key, in: bore, clock: 0}]", "no keyway, no clamp, no cone"
	const screw = "radial: [{name: grub, clock: 0, axial: 2, size: M4 tap, fitted: set screw}]"
	const tight = "groove 12 mm wide, the belt 14 mm in its middle"
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
		{"through: belt", "through: coupling", "first-run", []string{"at most 736 rev/min, the output 1400"}}, {"speed: 736", "speed: 1471", "first-run", []string{"1471 rev/min, the output 700"}},
		{"speed: 1400", "speed: 1549", "first-run", nil}, {"speed: 1400", "speed: 1550", "first-run", []string{"at most 736 rev/min, the output 775"}},
		{steps, "{name: rim, diameter: 100, length: 20}]" + bore + "\ngrooves: [{name: v, in: rim, axial: 4, from: front, width: 12, depth: 10, for: other}]", "first-run", []string{"736 rev/min, the output 700"}},
		{steps, "{name: rim, diameter: 100, length: 20}]" + bore, "first-run", nil}, // no groove, and no pulley
		{"V-belt SPZ", "V-belt SPZ 863", "belt", out}, {"V-belt SPZ", "V-belt SPZ 880", "belt", out},
		{"V-belt SPZ", "V-belt SPZ 862", "belt", append([]string{"862 mm at its pitch line, wanted 871 mm round both pulleys"}, out...)},
		{"V-belt SPZ", "V-belt SPZ 881", "belt", append([]string{"881 mm at its pitch line, wanted 871 mm round both pulleys"}, out...)},
		{"V-belt SPZ", "V-belt SPB", "belt", []string{tight, out[0], tight}},
		{"diameter: 180, length: 12", "diameter: 184, length: 12", "belt", out}, {"diameter: 180, length: 12", "diameter: 184.2, length: 12", "belt", append([]string{"groove 7.9 mm deep, the belt 8 mm thick"}, out...)},
		{"V-belt SPZ", "V-belt XPA", "belt", out}, {"groove, diameter: 180, length: 12", "groove, diameter: 180, length: 12.2", "belt", []string{"groove 12.2 mm wide, the belt 9.7 mm at its top", "17.9 mm out of line, shafts 200 mm apart, wanted at most 1.7 mm"}},
		{"phases: 3", "phases: 3, frame: 80", "loose", nil}, {"phases: 3", "phases: 3, frame: 90S", "loose", []string{"19 mm on 24 mm"}},
		{"phases: 3", "phases: 3, frame: 90S, output-speed: 100", "loose", nil},
		{"  - {item: V-belt SPZ", "  - {item: \"motor 1 kW, IEC 90L B5\", how: bolted on, after: wheel-on}\n  - {item: V-belt SPZ", "loose", []string{"19 mm on 24 mm"}},
		{key, "", "loose", []string{unkeyed}}, {key, screw, "loose", nil}, {"slid on the motor shaft", "slid on the motor shaft with its key", "loose", nil},
		// A groove drawn with its flanks is as wide as they are apart at the rim.
		{"{name: groove, diameter: 180, length: 12}", "{name: flank-1, diameter: 200, taper: {to: 180}, length: 3}, {name: groove, diameter: 180, length: 6}, {name: flank-2, diameter: 200, taper: {to: 180, toward: front}, length: 3}", "belt", out},
		{"", "", "guard", []string{""}}, {"through: belt", "through: coupling", "guard", nil},
		{"V-belt SPZ", "V-belt SPZ with a belt guard of mesh", "guard", nil},
		// A drum of 694 inside, 60 long and open behind, over both wheels: an arm that leans 30° comes past its edge, 247 off, 143 behind the wheels; then
		// behind them, and beside the one: there the shaft is 25 thick, and at the plate 30, and the wall lies 347 from the middle of the drum.
		{drum, laid("0", ""), "guard", []string{"628 mm of it, 360°, wanted at most 180°", "314 mm of it, 360°, wanted at most 180°", "694 mm open, 0 mm off"}},
		{drum, laid("61", ""), "guard", []string{"628 mm of it, 360°, wanted at most 180°", "314 mm of it, 360°, wanted at most 180°", "694 mm open, 61 mm off"}},
		{drum, laid("0", ", at: [-400, 0]"), "guard", []string{"141 mm from the wheel on the motor, of 200 mm", "628 mm of it, 360°, wanted at most 180°", "314 mm of it, 360°, wanted at most 180°", "694 mm open, 387.5 mm off", "200 mm open, 385 mm off"}},
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

// Wheels of 38 and 17 teeth for a chain 10B, 200 apart: 2 · 200 / 15.875 + 55 / 2 + (21 / 2π)² · 15.875 / 200 = 53.58 links lie round them (makers' formula).
// 17 teeth of 15.875 are 90.14 to 96.71 over all (ISO 606, from memory).
func TestChainFits(t *testing.T) {
	t.Parallel()
	base := strings.NewReplacer("V-belt SPZ", "ITEM", "part: bad-wheel\n", "part: bad-wheel\ntitle: Wheel 10B, 38 teeth\n", "part: pulley\n", "part: pulley\ntitle: Small wheel 10B-1, 17 teeth\n",
		"{name: rim-front, diameter: 200, length: 4}, {name: groove, diameter: 180, length: 12}, {name: rim-back, diameter: 200, length: 4}", "{name: rim, diameter: 200, length: 20}",
		"{name: rim-front, diameter: 100, length: 4}, {name: groove, diameter: 80, length: 12}, {name: rim-back, diameter: 100, length: 4}", "{name: rim, diameter: RIM, length: 20}", "gap: 22", "gap: 40")
	const wanted = " links, wanted 53.6 at 200 mm"
	for _, c := range []struct{ item, rim, want string }{
		{"chain 10B-1, 54 links", "93", ""}, {"chain 10B-1, 55 links", "93", ""}, {"chain 10B-1, 53 links", "93", "53" + wanted}, {"chain 10B-1, 56 links", "93", "56" + wanted}, {"chain 10B-1", "93", ""},
		{"chain 08B-1, 60 links", "93", "08B on 10B"}, {"chain 08B-1", "93", "08B on 10B"}, {"chain 10B-1", "90.2", ""}, {"chain 10B-1", "96.7", ""},
		{"chain 10B-1", "90", "90 mm at its widest, 17 teeth of 10B have 90.14 mm to 96.71 mm"}, {"chain 10B-1", "97", "97 mm at its widest, 17 teeth of 10B have 90.14 mm to 96.71 mm"},
	} {
		a, err := txtar.ParseFile("testdata/belt.txtar")
		if err != nil {
			t.Fatal(err)
		}
		files := map[string]string{}
		for _, f := range a.Files {
			files[f.Name] = strings.NewReplacer("ITEM", c.item, "RIM", c.rim).Replace(base.Replace(string(f.Data)))
		}
		files["job.yaml"] = strings.Replace(files["job.yaml"], c.item, `"`+c.item+`"`, 1)
		var got []string
		for _, f := range reviewOf(t, files) {
			if f.Code == "belt" {
				got = append(got, f.Numbers)
			}
		}
		if got := strings.Join(got, "; "); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.item, c.rim, got, c.want)
		}
	}
}
