package joint_test

import (
	"fmt"
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

// Two walls stand on a floor, 1.5 or nothing between their ends, before they are butted: that is the gap of the butt, which its
// step cannot set any more. Where the joint itself places the wall, the gap is that of the groove: 3 of plates of 3.
func TestButtOfWhatStands(t *testing.T) {
	t.Parallel()
	plate := func(name string, wide int) string {
		return fmt.Sprintf("part: %s\nkind: plate\nmaterial: S235\nstock: {plate: 3, cut: laser}\noutline: {rectangle: [%d, 100]}\n", name, wide)
	}
	for apart, want := range map[string]float64{"101.5": 1.5, "100": 0, "": 3} {
		on := func(name, at string) string {
			return "{name: " + name + ", weld: {part: " + name + ".outline, to: floor.outline, type: fillet, size: 3}, place: {on: front, with: bottom, from-left: " + at + ", from-bottom: 48, front: down}}\n  - "
		}
		joints := on("one", "0") + on("two", apart)
		butt := "{name: butt, weld: {part: two.outline, to: one.outline, type: square, length: 100}}"
		if apart == "" {
			joints, butt = on("one", "0"), strings.Replace(butt, "}}", "}, place: {on: right, with: left, at: [0, 0], front: right}}", 1)
		}
		j := jointNamed(t, planned(t, jobOf(t, joints+butt, plate("floor", 210), plate("one", 100), plate("two", 100))), "butt")
		if j.Weld == nil || j.Weld.GapMm != want {
			t.Errorf("%q: %+v, want a gap of %g", apart, j.Weld, want)
		}
	}
}

// A post of 30 stands on the lower side of a rail of 50 × 100 × 1500, its middle 160 left of the rail's and 25 from its front: a
// tape goes from the nearer edges, and the tacks by the clock of the post, for the rail's front is another side. On a round plate it
// goes by the middle of that.
func TestPlaceFromTheEdges(t *testing.T) {
	t.Parallel()
	const post = "part: post\nkind: turned\nmaterial: S235\nstock: {round: 32, length: 104, cut: saw}\nprofile: {outside: [{name: body, diameter: 30, length: 100}]}\n"
	const rail = "part: rail\nkind: bar\nmaterial: S235\nbar: {rectangle: [50, 100], wall: 5, length: 1500}\n"
	plate := func(outline string) string {
		return "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {" + outline + "}\n"
	}
	for _, c := range []struct{ to, on, at, part, place, clock string }{
		{"rail.bottom", "bottom", "[-160, -25]", rail, "on the bottom of rail, 575 from its left edge, 10 from its top edge, TOP", "clock of post, seen from its front"},
		{"plate.outline", "front", "[60, -95]", plate("rectangle: [200, 200]"), "on the front of plate, 25 from its right edge, 10 past its bottom edge, TOP", "clock of plate, seen from its front"},
		{"plate.outline", "front", "[60, 0]", plate("circle: 200"), "on the front of plate, its middle on the other's, 60 to the right, TOP", "clock of plate, seen from its front"},
	} {
		j := jointNamed(t, planned(t, jobOf(t, "{name: on, weld: {part: post.body, to: "+c.to+", type: fillet, size: 4}, place: {on: "+c.on+", with: back, at: "+c.at+", top: up}}", post, c.part)), "on")
		says(t, j, []string{c.place, c.clock}, nil)
	}
}
