package review

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/parts"
)

// TestKeywayEnds: on a seat of 60 with a DIN 509-F undercut 2.5 wide beside its shoulder, keys 12 × 8
// of DIN 6885-1 are 28 to 140 long in the series ... 45, 50, 56, 63 ...; by hand.
func TestKeywayEnds(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 65, length: 108, cut: saw}\nprofile:\n  outside:\n    - {name: seat, diameter: 40, fit: h6, length: 60%s}\n    - {name: land, diameter: 60, length: 40}\nkeyways:\n  - {name: key, in: seat, %s}\n"
	const relief = ", undercut: DIN 509-F"
	for _, c := range []struct{ undercut, key, want string }{
		{relief, "length: 45", ""},
		{relief, "length: 58", "runs through the undercut of seat; nearly runs out at the end of seat, 1 mm of metal left; no key with round ends is sold, 58 mm, the nearest is 56 mm"},
		{relief, "length: 59", "runs through the undercut of seat; nearly runs out at the end of seat, 0.5 mm of metal left; no key with round ends is sold, 59 mm, the nearest is 56 mm"},
		{relief, "length: 60", "runs through the undercut of seat"},
		{relief, "length: 50, axial: 27, from: front", ""},
		{relief, "length: 50, axial: 33, from: front", "runs through the undercut of seat, 2 mm before its shoulder"},
		{relief, "length: 50, axial: 32.5, from: front", ""},
		{relief, "length: 50, axial: 32.6, from: front", "runs through the undercut of seat, 2.4 mm before its shoulder"},
		{"", "length: 56", ""},
		{"", "length: 48", "no key with round ends is sold, 48 mm, the nearest is 50 mm"},
		{"", "length: 48, cutter: 63", ""},
		{"", "length: 60", ""},
	} {
		got := ""
		for _, f := range alone(t, "keyway", fmt.Sprintf(shaft, c.undercut, c.key)) {
			got += f.What + ", " + f.Numbers + "\n"
		}
		for _, want := range strings.Split(c.want, "; ") {
			if a, b, _ := strings.Cut(want, ", "); !strings.Contains(got, a) || !strings.Contains(got, b) {
				t.Errorf("%s: %q lacks %q", c.key, got, want)
			}
		}
		if n := strings.Count(got, "\n"); c.want == "" && n > 0 || c.want != "" && n != 1+strings.Count(c.want, "; ") {
			t.Errorf("%s: %d findings %q", c.key, n, got)
		}
	}
}

// What slides over a key travels by the length of its keyway less that of the key, not less its thickness.
func TestTravelOverAKey(t *testing.T) {
	t.Parallel()
	text := func(s string) parts.Text { return parts.Text{Value: s} }
	mm := func(v float64) parts.Length { return parts.Length{Mm: v} }
	key := &parts.Part{Name: text("key-bar"), Title: text("Key bar"), For: parts.AKey, Kind: parts.BarPart, Bar: &parts.Bar{Width: mm(28), Depth: mm(6), Length: mm(60)}}
	stem := &parts.Part{Name: text("stem"), Title: text("Stem"), Radials: []parts.Radial{
		{Name: text("keyway"), Shape: parts.RadialSlot, Around: mm(6), Along: mm(260)}, {Name: text("other"), Shape: parts.RadialSlot, Around: mm(8), Along: mm(100)},
	}}
	r := &reviewer{job: &parts.Job{Parts: []*parts.Part{key, stem}, Loose: []parts.Loose{{Part: key.Name}}}, views: map[string]*view{}}
	r.views["key-bar"] = &view{reviewer: r, p: key}
	if most, by := r.mostTravelMm(""); most != 200 || by != "Key bar has in keyway of Stem" {
		t.Errorf("%v, %q", most, by)
	}
}

// TestTongueOfAWasher: the slot for the tongue of a locking washer lies in the thread of its nut, open at the end that both
// come from; one beside it is found with how far it is out of it.
func TestTongueOfAWasher(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside: [{name: seat, diameter: 38, length: 40}, {name: end, thread: M35x1.5, length: 30}]\nradial: [{name: washer, clock: 0, axial: %g, slot: {around: 6, along: 20}, depth: 4}]\n"
	if found := alone(t, "keyway", fmt.Sprintf(shaft, 63.0)); len(found) > 0 {
		t.Errorf("in its thread: %+v", found[0])
	}
	found := alone(t, "keyway", fmt.Sprintf(shaft, 28.0))
	if len(found) != 1 || found[0].What != "washer is not in the thread of the nut whose washer it holds" || found[0].Numbers != "it lies on seat, 38 mm" || found[0].OverMm == nil || *found[0].OverMm != 12 {
		t.Errorf("12 mm before its thread: %+v", found)
	}
}
