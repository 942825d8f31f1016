package joint_test

import (
	"strings"
	"testing"
)

// A plug of 30 in the end of a roller of 500, placed by the roller's far end: its front
// lies 470 under the back where its own back end is level with the front of the roller.
// What is measured is what can be: limits of ISO 2768-1 table 1, class m, ±0.1 to 6.
func TestSeatedByTheNearEnd(t *testing.T) {
	t.Parallel()
	const roller = `part: roller
kind: turned
material: S235
stock: {tube: 120 mm, wall: 12 mm}
profile:
  outside: [{name: outside, diameter: 120, length: 500}]
  inside: [{name: near, diameter: 100, length: 32}, {name: middle, diameter: 96, length: 468}]
`
	const stub = `part: stub
kind: shaft
material: C45
stock: {round: 105 mm}
profile:
  outside: [{name: plug, diameter: 100, length: 30}, {name: journal, diameter: 35, length: 60}]
`
	recessed := strings.Replace(roller, "{name: near, diameter: 100, length: 32}", "{name: mouth, diameter: 110, length: 5}, {name: near, diameter: 100, length: 27}", 1)
	for _, c := range []struct{ level, how, limits, tool string }{
		{"front-with-back, below: 470", "back end of plug of stub level with the front of roller", "a 0.05 mm feeler does not enter under a straight edge", "Flat plate wider than Ø100"},
		{"front-with-back, below: 468", "back end of plug of stub 2 mm below the front of roller", "1.9 – 2.1 below, at four places", "Flat plate wider than Ø100"},
		{"front-with-back, below: 473", "back end of plug of stub 3 mm out of the front of roller", "2.9 – 3.1 out, at four places", "Flat plate wider than Ø100"},
		{"front-with-front, below: 1", "front of stub 1 mm below the front of roller", "0.9 – 1.1 below, at four places", "Stop disc Ø99 × 1 thick, to lie on the end of stub"},
		// Behind a mouth 5 deep it stands in its own bore, and is measured from the front.
		{"front-with-front, below: 1 ", "front of stub 6 mm below the front of roller", "5.9 – 6.1 below, at four places", "Stop disc Ø99 × 1 thick, to lie on the end of stub"},
	} {
		in, home := roller, "level with roller."
		if strings.HasSuffix(c.level, " ") {
			in, home = recessed, "level with the end of roller near there."
		}
		p := filed(t, "{name: stub, press: {shaft: stub.plug, bore: roller.near, fit: H7/p6}, level: "+c.level+"}", in, stub)
		j := p.Joints[0]
		limits, tool := "", ""
		for _, k := range j.Checks {
			if k.What == "seated" {
				limits = k.Limits
			}
		}
		for _, r := range p.Tools {
			tool += r.Tool
		}
		if !strings.HasPrefix(j.How, c.how) || limits != c.limits || tool != c.tool || strings.Contains(stepText(j), home) != strings.HasPrefix(c.tool, "Stop") {
			t.Errorf("%s: %s; %q; %q %v", c.level, j.How, limits, tool, j.Problems)
		}
	}
}
