package part

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// The corners of an outline that lists them, from its left and bottom edge wherever its
// origin lies, and what each straight cut takes off a corner of its box: 90 × 120 at the
// top right, 15 × 15 at the bottom left. ISO 2768-m has ± 0.2 on 15, ± 0.3 on 90 and 120.
func TestOutlineCorners(t *testing.T) {
	t.Parallel()
	plate := func(outline string) string {
		return "part: rib\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: saw}\noutline: {" + outline + "}\n"
	}
	for _, c := range []struct {
		outline, want string
		cuts          []string
	}{
		{"polygon: {points: [[10, -5], [105, -5], [105, 15], [15, 135], [-5, 135], [-5, 10]]}", "corners from the left and the bottom edge: (110, 0), (110, 20), (20, 140), (0, 140), (0, 15), (15, 0)",
			[]string{"corner cut off, top right 90 × 120 89.7 – 90.3 × 119.7 – 120.3", "corner cut off, bottom left 15 × 15 14.8 – 15.2 × 14.8 – 15.2"}},
		{`path: "M0 0 L120 0 L120 30 L50 30 A20 20 0 0 0 30 50 L30 120 L0 120 Z"`, "(120, 30), (50, 30), R20 to (30, 50), (30, 120), (0, 120), (0, 0)", nil},
		{`path: "M0 0 L120 0 L120 30 L50 30 C38 30 30 38 30 50 L30 120 L0 120 Z"`, "(50, 30), curve to (30, 50), (30, 120)", nil},
		{"polygon: {points: [[0, 0], [50, 20], [100, 0], [100, 80], [0, 80], [0, 60], [20, 40], [0, 20]]}", "(0, 60), (20, 40), (0, 20)", nil}, // notches are no corners
		{"rectangle: [120, 80], corner: 5", "", nil},
		{"polygon: {points: [[0, 0], [100, 0], [0, -30]]}", "(100, 30), (0, 0), (0, 30)", []string{"corner cut off, bottom right 100 × 30 99.7 – 100.3 × 29.8 – 30.2"}}, // nothing of it lies above its origin
		{"polygon: {sides: 6, across-flats: 60}", "", nil},
	} {
		m := work(t, "mm", plate(c.outline))
		note := feature(m, "outline").Note
		if high := m.Out.Section.MaxMm; !(high >= 15) {
			t.Errorf("%s: the section is %g high", c.outline, high)
		}
		if !strings.Contains(note, c.want) || c.want == "" && strings.Contains(note, "(") {
			t.Errorf("%s: %q, want %q", c.outline, note, c.want)
		}
		var got []string
		for _, k := range m.Out.Checks {
			if strings.HasPrefix(k.What, "corner") {
				got = append(got, k.What+" "+k.Wanted+" "+k.Limits)
			}
		}
		if strings.Join(got, "; ") != strings.Join(c.cuts, "; ") {
			t.Errorf("%s: %q, want %q", c.outline, got, c.cuts)
		}
	}
}

// An opening that is cut away by the hole of a branch is not asked for at the end.
func TestOpeningInBranchHole(t *testing.T) {
	t.Parallel()
	text := func(list []plan.Check) (out string) {
		for _, c := range list {
			out += c.What + "; "
		}
		return out
	}
	const opening = "radial:\n  - {name: inlet, clock: 0, axial: 300, window: {around: %s, along: 40 mm, corner: 5 mm}}\n"
	for around, asked := range map[string]bool{"30 mm": false, "120 mm": true} {
		m := work(t, "mm", mainTube+strings.Replace(opening, "%s", around, 1), branch("angle: 90, place: {clock: 0, axial: 300}"))
		if got := text(m.Out.Checks); strings.Contains(got, "inlet") != asked || !strings.Contains(got, "hole for") {
			t.Errorf("%s round: %s", around, got)
		}
	}
}
