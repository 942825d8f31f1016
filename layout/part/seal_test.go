package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// A seal 60x80x8 in a bore of 80 lies up to its shoulder. Its lip looks to where the
// drawing says, else away from the open end of the bore. On a shaft, and where the size
// is not that of a seal, there is none.
func TestSeals(t *testing.T) {
	t.Parallel()
	const front = "{name: register, diameter: 80, fit: H8, length: 10, SEAT}, {name: land, diameter: 66, length: 7}"
	const back = "{name: land, diameter: 66, length: 7}, {name: register, diameter: 80, fit: H8, length: 10, SEAT}"
	for _, c := range []struct {
		inside, seat, clause string
		lip                  parts.Face
		from, to             float64
	}{
		{front, "seat: seal 60x80x8", "(seal 60x80x8)", parts.Back, 2, 10},
		{front, "seat: seal 60x80x8, lip: front", "(seal 60x80x8, lip to the front)", parts.Front, 2, 10},
		{back, "seat: Seal 60x80x7.5", "(Seal 60x80x7.5)", parts.Front, 7, 14.5},
		{back, "seat: seal 60x80x8, lip: back", "(seal 60x80x8, lip to the back)", parts.Back, 7, 15},
		{front, "seat: sealing ring", "(sealing ring)", "", 0, 0},
	} {
		m := work(t, "mm", "part: p\nkind: turned\nmaterial: S235\nstock: {round: 120 mm}\nprofile:\n  outside: [{name: rim, diameter: 116, length: 17, seat: seal 116x140x8}]\n  inside: ["+strings.Replace(c.inside, "SEAT", c.seat, 1)+"]\n")
		has(t, m, c.clause)
		seals := m.Seals()
		if c.lip == "" {
			if len(seals) > 0 || len(m.Section.Seals) > 0 {
				t.Errorf("%s: %+v, %v", c.seat, seals, m.Section.Seals)
			}
			continue
		}
		want := plan.SealMark{FromMm: c.from, ToMm: c.to, OuterMm: 80, InnerMm: 60, LipBack: c.lip == parts.Back}
		if q := seals[0]; len(seals) > 1 || q.Bore.Name != "register" || q.Lip != c.lip || q.ShaftMm != 60 || !slices.Equal(m.Section.Seals, []plan.SealMark{want}) {
			t.Errorf("%s: %+v, %+v, want %+v", c.seat, q, m.Section.Seals, want)
		}
	}
}

// A seal is named in millimetres; one in fractions or under 1 wide, and in a job in inches under 3, is named in inches.
func TestSealOf(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		seat  string
		units parts.Units
		want  *SealSize
	}{
		{"seal 60x80x8", parts.Millimetres, &SealSize{"60x80x8", 60, 80, 8, false}}, {"seal 60x80x7.5", parts.Inches, &SealSize{"60x80x7.5", 60, 80, 7.5, false}},
		{"seal 1.5x2x0.25", parts.Inches, &SealSize{"1.5x2x0.25", 38.1, 50.8, 6.35, true}}, {"seal 1-1/2x2x1/4", parts.Inches, &SealSize{"1-1/2x2x1/4", 38.1, 50.8, 6.35, true}},
		{"seal 3/4x1-1/8x1/4 outside", parts.Inches, &SealSize{"3/4x1-1/8x1/4", 19.05, 28.575, 6.35, true}},
		{"seal 10x20x3", parts.Inches, &SealSize{"10x20x3", 10, 20, 3, false}}, {"seal 10x20x2.5", parts.Millimetres, &SealSize{"10x20x2.5", 10, 20, 2.5, false}},
		{"seal 1-1/2x2x1/4", parts.Millimetres, &SealSize{"1-1/2x2x1/4", 38.1, 50.8, 6.35, true}}, {"seal 1.5x2x0.25", parts.Millimetres, &SealSize{"1.5x2x0.25", 38.1, 50.8, 6.35, true}},
		{"seal 8x12x1", parts.Millimetres, &SealSize{"8x12x1", 8, 12, 1, false}},
		{"bearing 30210 cone", parts.Millimetres, nil}, {"O-ring 20x2.62", parts.Millimetres, nil},
	} {
		got := SealOf(c.seat, c.units)
		if (got == nil) != (c.want == nil) || got != nil && *got != *c.want {
			t.Errorf("%s in %s: %+v, want %+v", c.seat, c.units, got, c.want)
		}
	}
}
