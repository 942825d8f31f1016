package part

import (
	"strings"
	"testing"
)

// TestDowelOfTheOtherPart: holes for the same pins in two parts that are bolted together, 10 beside the bolts in both, however these are
// turned, are drilled in the one with the heads and reamed with it; those that do not lie alike by a tenth, are of another size or class, or
// blind where the drill has to pass, are made as drawn.
func TestDowelOfTheOtherPart(t *testing.T) {
	t.Parallel()
	plate := func(name, bolts, pegs, size, depth string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {square: 200}\nholes:\n  - {name: h, at: [" + bolts + "], size: M8 clearance}\n" +
			"  - {name: pegs, at: [" + pegs + "], size: {diameter: " + size + "}, for: pins" + depth + "}\n"
	}
	const bolts, pegs, blind = "[-50, 0], [50, 0]", "[-60, 0], [60, 10]", ", depth: 6"
	for _, c := range []struct {
		a, b     string
		together bool
	}{
		{plate("a", bolts, pegs, "8, fit: H7", ""), plate("b", bolts, pegs, "8, fit: H7", ""), true},
		{plate("a", bolts, pegs, "8, fit: H7", ""), plate("b", "[0, -50], [0, 50]", "[0, -60], [-10, 60]", "8, fit: H7", ""), true},
		{plate("a", bolts, pegs, "8, fit: H7", ""), plate("b", bolts, pegs, "8, fit: H7", blind), true},
		{plate("a", bolts, pegs, "8, fit: H7", blind), plate("b", bolts, pegs, "8, fit: H7", ""), false},
		{plate("a", bolts, pegs, "8, fit: H7", ""), plate("b", bolts, "[-60, 0], [60, 10.1]", "8, fit: H7", ""), false},
		{plate("a", bolts, pegs, "8, fit: H7", ""), plate("b", bolts, pegs, "10, fit: H7", ""), false},
		{plate("a", bolts, pegs, "8, fit: H7", ""), plate("b", bolts, pegs, "8, fit: F8", ""), false},
		{plate("a", bolts, pegs, "8, fit: H7", ""), plate("b", bolts, pegs, "8", ""), false},
	} {
		job := load(t, "mm\njoints:\n  - {name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-front}", c.a, c.b)
		for i, want := range []string{"drill Ø7.8, reamed with b", "drilled and reamed through a"} {
			g := Work(job, job.Parts[i]).GroupNamed("pegs")
			if got := g.Group.SizeText; strings.HasSuffix(got, want) != c.together || (g.Group.ReamedWith != "") != c.together {
				t.Errorf("%s%s: %q with %q", c.a, c.b, got, g.Group.ReamedWith)
			}
		}
	}
}
