package review

import (
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// caseSays are the findings under a code of a case in testdata with texts of it replaced and files added, what each says and its numbers.
func caseSays(t *testing.T, name, code string, edit *strings.Replacer, more map[string]string) string {
	t.Helper()
	a, err := txtar.ParseFile("testdata/" + name + ".txtar")
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, f := range a.Files {
		files[f.Name] = edit.Replace(string(f.Data))
	}
	for name, text := range more {
		files[name] = text
	}
	var out []string
	for _, f := range reviewOf(t, files) {
		if f.Code == code {
			out = append(out, f.What+": "+f.Numbers)
		}
	}
	slices.Sort(out)
	return strings.Join(out, "; ")
}

// TestGuardMouths: a collar of 8 round the hole of 60 in a flat guard, 42 before a disc, leaves its own bore open, and that
// lies 10 further out than the middle of the sheet; one that a plate shuts is shut. One that is a guard itself is looked at
// by its own bore, whose middle is 48 off. ISO 13857 table 4: a round hole over 10 wants 80, up to 10 it wants 20.
func TestGuardMouths(t *testing.T) {
	t.Parallel()
	const says = " gets through view of bad cover guard to shaft, which turns: "
	for _, c := range []struct{ name, bore, want string }{
		{"collar", "bore: {diameter: 40}", "a hand" + says + "40 mm open, 52 mm off"}, {"collar", "bore: {diameter: 12}", "a finger" + says + "12 mm open, 52 mm off"},
		{"collar", "bore: {diameter: 10}", ""}, {"collar", "", ""}, {"collar-guard", "bore: {diameter: 40}", "a hand gets through bore of collar guard to shaft, which turns: 40 mm open, 48 mm off"}, {"collar-guard", "", ""},
	} {
		collar := "part: " + c.name + "\nkind: plate\nmaterial: S235\ntop: scribe\nstock: {plate: 8, cut: laser}\noutline: {circle: 90}\n" + c.bore + "\n"
		edit := strings.NewReplacer("guard.yaml]", "guard.yaml, collar.yaml]", "\nmotor:", "\n  - {name: collar, weld: {part: "+c.name+".outline, to: bad-cover-guard.outline, type: fillet, size: 3}, place: {on: front, with: back, at: [0, 60], top: up}}\nmotor:",
			"  - {name: look, at: [[0, -60]], size: 40}\n", "")
		if got := caseSays(t, "guard.flat", "guard", edit, map[string]string{"collar.yaml": collar}); got != c.want {
			t.Errorf("%s with %s: %q", c.name, c.bore, got)
		}
	}
}

// TestGuardSides: a guard over the end of a shaft that lacks the flanges on both its sides leaves both open, one that lacks
// one that side, and neither where it has no others that face one another or the shaft goes on beyond its sheet.
func TestGuardSides(t *testing.T) {
	t.Parallel()
	const both = "both sides open at the height of the shaft: its flanges end before it, or stand away from it: "
	for _, c := range []struct {
		lacks []string
		high  string
		says  string
	}{{nil, "130", ""}, {[]string{"left"}, "130", "one side open at the height of the shaft: to its left: 850 mm open, wanted at most 20 mm"}, {[]string{"left", "right"}, "130", both}, {[]string{"left", "right"}, "120.1", both}, {[]string{"left", "right"}, "120", ""}, {[]string{"left", "right", "bottom"}, "130", ""}} {
		edit := []string{", rotate: 180", "", "[[-100, 120], [100, 120]]", "[[-100, 140], [100, 140]]", "height: 80", "height: " + c.high}
		for _, flange := range c.lacks {
			edit = append([]string{"    - {side: " + flange + ", height: 80}\n", ""}, edit...)
		}
		want := ""
		if c.says != "" {
			want = "bad belt guard leaves " + c.says
		}
		if got := caseSays(t, "guard.beside", "guard", strings.NewReplacer(edit...), nil); got != want {
			t.Errorf("without %q, %s: %q", c.lacks, c.high, got)
		}
	}
}

// TestGuardRings: of a hole that a shaft of 30 comes out of, the ring round it is what a finger gets through, 42 before a
// disc: 15 wide it is a slot that wants 120 off, 2 wide one that wants 2 (ISO 13857 table 4).
func TestGuardRings(t *testing.T) {
	t.Parallel()
	const disc = "part: disc\nkind: turned\nmaterial: S235\nstock: {round: 210}\nprofile: {outside: [{name: rim, diameter: 200, length: 20}], inside: [{name: bore, diameter: 34, fit: H7, length: 20}]}\n"
	for hole, want := range map[string]string{"60": "a finger gets through bore of bad cover guard to disc, which turns: 15 mm x 141.37 mm open, 42 mm off", "34": "", "29": ""} {
		edit := strings.NewReplacer("    - {name: disc, diameter: 200, length: 20}", "    - {name: nose, diameter: 30, length: 90}\n    - {name: seat, diameter: 34, fit: r6, length: 20}", "round: 210, length: 86", "round: 40, length: 176",
			"shaft.yaml, ", "shaft.yaml, disc.yaml, ", "joints:\n", "joints:\n  - {name: disc, press: {shaft: shaft.seat, bore: disc.bore}, level: front-with-front}\n",
			"bore: {diameter: 6}", "bore: {diameter: "+hole+"}", "  - {name: look, at: [[0, -60]], size: 40}\n", "", "  - {name: view, at: [[0, 60]], size: 60}\n", "")
		if got := caseSays(t, "guard.flat", "guard", edit, map[string]string{"disc.yaml": disc}); got != want {
			t.Errorf("hole of %s: %q", hole, got)
		}
	}
}

// TestGuardRingOfOnePiece: so it is where the disc is of one piece with the shaft that comes out.
func TestGuardRingOfOnePiece(t *testing.T) {
	t.Parallel()
	for hole, want := range map[string]string{"60": "a finger gets through bore of bad cover guard to shaft, which turns: 15 mm x 141.37 mm open, 42 mm off", "34": "", "29": ""} {
		edit := strings.NewReplacer("    - {name: disc, diameter: 200, length: 20}", "    - {name: nose, diameter: 30, length: 90}\n    - {name: disc, diameter: 200, length: 20}", "length: 86", "length: 176",
			"bore: {diameter: 6}", "bore: {diameter: "+hole+"}", "  - {name: look, at: [[0, -60]], size: 40}\n", "", "  - {name: view, at: [[0, 60]], size: 60}\n", "")
		if got := caseSays(t, "guard.flat", "guard", edit, nil); got != want {
			t.Errorf("hole of %s: %q", hole, got)
		}
	}
}

// TestFoldedGuardHoles: a hole in the sheet of a folded guard is held against the end of the shaft that turns behind it;
// one in a flange is farther off.
func TestFoldedGuardHoles(t *testing.T) {
	t.Parallel()
	for hole, want := range map[string]string{"at: [[0, 0]], size: 30": "a hand gets through eye of bad belt guard to shaft, which turns: ", "at: [[0, 0]], size: 4": "", "on: left, at: [[0, 40]], size: 30": ""} {
		edit := strings.NewReplacer(", rotate: 180", "", "[[-100, 120], [100, 120]]", "[[-100, 140], [100, 140]]", "height: 80", "height: 130", "holes: [{name: feet", "holes: [{name: eye, "+hole+"}, {name: feet")
		if got := caseSays(t, "guard.beside", "guard", edit, nil); !strings.HasPrefix(got, want) || want == "" && got != "" {
			t.Errorf("%s: %q", hole, got)
		}
	}
}

// TestGuardFeet: a flange of 80 over the end of a shaft of 28, 136 before it, leaves a slot to its plate where it is lower. ISO
// 13857 table 4: one of 20 wants 120, a wider one 850; so do a hole of more than 40 in a flange and a slot of more than 20. One
// flange is no open side for a hole in it at the height of the shaft.
func TestGuardFeet(t *testing.T) {
	t.Parallel()
	const left, says = "    - {side: left, height: 80}\n", " gets through "
	hole := func(text string) []string { return []string{"holes: [{name: feet", text + "{name: feet"} }
	slot := func(wide string) []string {
		return []string{"size: M6 clearance}]\n-- ", "", "holes: [{name: feet", "slots: [{name: look, on: left, at: [[0, 40]], width: " + wide + ", length: 100, turn: 0}]\nholes: [{name: feet"}
	}
	for _, c := range []struct {
		edit []string
		want string
	}{
		{nil, ""},
		{[]string{left, strings.Replace(left, "80", "60", 1)}, ""},
		{[]string{left, strings.Replace(left, "80", "59.9", 1)}, "a hand" + says + "foot of the left flange of bad belt guard to shaft, which turns: 20.1 mm x 236 mm open"},
		{hole("holes: [{name: look, on: left, at: [[0, 40]], size: 40}, "), ""},
		{hole("holes: [{name: look, on: left, at: [[0, 40]], size: 41}, "), "a hand" + says + "look of bad belt guard to shaft, which turns: 41 mm open"},
		{slot("20"), ""},
		{slot("20.5"), "a hand" + says + "look of bad belt guard to shaft, which turns: 20.5 mm x 100 mm open"},
	} {
		edit := append([]string{", rotate: 180", "", "[[-100, 120], [100, 120]]", "[[-100, 140], [100, 140]]"}, c.edit...)
		got := caseSays(t, "guard.beside", "guard", strings.NewReplacer(edit...), nil)
		if said, _, _ := strings.Cut(got, " open, "); said != strings.TrimSuffix(c.want, " open") {
			t.Errorf("%q: %q, want %q", c.edit, got, c.want)
		}
	}
}
