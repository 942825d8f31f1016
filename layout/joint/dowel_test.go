package joint_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// TestDowelsAreReamedTogether: holes for the same pins in two parts that are bolted together are drilled in the one that
// the bolts go through, and through these into the other and reamed in the step; neither sheet has their size or the
// distance between them. What does not lie alike, is of another size, or is blind where the drill has to pass is made on
// each part as it is drawn.
func TestDowelsAreReamedTogether(t *testing.T) {
	t.Parallel()
	pins := func(at, size, depth string) string {
		return "  - {name: pegs, at: [" + at + "], size: {" + size + "}, for: pins" + depth + ", fitted: dowel pin 8 m6 x 20}\n"
	}
	const places, reamed = "[-80, 0], [80, 10]", "diameter: 8, fit: H7"
	for name, c := range map[string]struct {
		a, b     string
		together bool
	}{
		"alike":         {pins(places, reamed, ""), pins(places, reamed, ""), true},
		"blind behind":  {pins(places, reamed, ""), pins(places, reamed, ", depth: 6"), true},
		"blind before":  {pins(places, reamed, ", depth: 6"), pins(places, reamed, ""), false},
		"one apart":     {pins(places, reamed, ""), pins("[-80, 0], [80, 10.2]", reamed, ""), false},
		"other pins":    {pins(places, reamed, ""), pins(places, "diameter: 10, fit: H7", ""), false},
		"one is looser": {pins(places, reamed, ""), pins(places, "diameter: 8, fit: F8", ""), false},
		"one is plain":  {pins(places, reamed, ""), pins(places, "diameter: 8", ""), false},
		"not for pins":  {pins(places, reamed, ""), strings.Replace(pins(places, reamed, ""), "for: pins, fitted: dowel pin 8 m6 x 20", "for: opening", 1), false},
	} {
		p := filed(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-front}", drilledPlate("a", "M8 clearance", c.a), drilledPlate("b", "M8 clearance", c.b))
		j, text := p.Joints[0], stepText(p.Joints[0])
		deep := "through it"
		if strings.Contains(c.b, "depth") {
			deep = "so deep that 6 mm are of full size"
		}
		if got := strings.Contains(text, "drill Ø7.8 through the holes pegs of a into b, "+deep) && strings.Contains(text, "Ream Ø8 H7 through both parts in one pass.") && strings.Contains(text, "Drive in 2 × dowel pin 8 m6 x 20.") &&
			strings.Contains(text, "All 2 pins are in, and "); got != c.together {
			t.Errorf("%s: %v\n%s", name, got, text)
		}
		size := func(c plan.Check) bool { return strings.Contains(c.What, "pegs") && c.Gauge == "plug gauge" }
		if slices.ContainsFunc(j.Checks, size) != c.together {
			t.Errorf("%s: %+v", name, j.Checks)
		}
		for i, q := range []*plan.PartPlan{p.Part("a"), p.Part("b")} {
			var do []string
			for _, o := range q.Operations {
				do = append(do, o.Title+": "+strings.Join(o.Do, " "))
			}
			said := strings.Join(do, "\n")
			ops := []string{"Not reamed here: once b is bolted to it, both are, in that step.", "once a is bolted to it, drilled through its holes pegs and reamed with them, in that step."}
			if strings.Contains(said, ops[i]) != c.together || strings.Contains(said, "Ream Ø8 H7, at half") && c.together {
				t.Errorf("%s, %s: %s", name, q.Name, said)
			}
			if recorded := slices.ContainsFunc(q.Checks, func(c plan.Check) bool { return strings.Contains(c.What, "pegs") }); recorded == c.together {
				t.Errorf("%s, %s: %+v", name, q.Name, q.Checks)
			}
		}
	}
}

// TestDowelsAfterTheLastBolts: of two joints between the same two parts the later one drives the pins, and of parts in
// several copies each pair is stamped.
func TestDowelsAfterTheLastBolts(t *testing.T) {
	t.Parallel()
	more := func(size string) string {
		return "  - {name: two, at: [[0, 70], [10, -70]], size: " + size + "}\n  - {name: pegs, at: [[-80, 0], [80, 10]], size: {diameter: 8, fit: H7}, for: pins}\n"
	}
	plates := []string{drilledPlate("a", "M8 clearance", more("M8 clearance")), drilledPlate("b", "M8 clearance", more("M8 clearance"))}
	p := filed(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-front}\n  - {name: k, bolt: {through: a.two, into: b.two, bolt: M8 8.8, nut: yes}, face: back-on-front}", plates...)
	if first, last := stepText(jointNamed(t, p, "j")), stepText(jointNamed(t, p, "k")); strings.Contains(first, "Ream") || strings.Count(last, "Drive in 2 × dowel pin Ø8.") != 1 || strings.Contains(last, "Stamp both") {
		t.Errorf("%s\n%s", first, last)
	}
	const lid = "part: c\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [100, 60]}\nholes: [{name: two, at: [[0, 20], [10, -20]], size: M8 clearance}]\n"
	p = filed(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-front}\n  - {name: l, bolt: {through: c.two, into: a.lid, bolt: M8 8.8}, face: back-on-front}", plates[0]+"  - {name: lid, at: [[0, 20], [10, -20]], size: M8 tap}\n", plates[1], lid)
	if text := stepText(jointNamed(t, p, "j")); !strings.Contains(text, "Drive in 2 × dowel pin Ø8.") {
		t.Errorf("with a lid after it: %s", text)
	}
	plates[0] = strings.Replace(plates[0], "kind: plate\n", "kind: plate\nquantity: 2\n", 1)
	p = filed(t, "{name: j, bolt: {through: a#1.h, into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-front}", plates...)
	if text := stepText(p.Joints[0]); !strings.Contains(text, "Stamp both alike") {
		t.Error(text)
	}
}

// TestDowelsThatStandOut: what is signed of pins that are longer than the metal is how far they stand out, and where.
func TestDowelsThatStandOut(t *testing.T) {
	t.Parallel()
	const gasket = "part: g\nkind: plate\nfor: gasket\nmaterial: cork\nstock: {sheet: 2 mm, cut: none}\noutline: {rectangle: [200, 160]}\nholes:\n  - {name: h, circle: {pcd: 100, count: 4, first: 45}, size: M8 clearance}\n"
	for _, c := range []struct{ pin, depth, between, says string }{
		{"dowel pin 8 m6 x 20", "", "", "no end stands over a face."},
		{"dowel pin 8 m6 x 24", "", "", "none stands over a, and each stands 4 mm out of b."},
		{"dowel pin 8 m6 x 24", "", gasket, "none stands over a, and each stands 2 mm out of b."},
		{"dowel pin 8 m6 x 20", ", depth: 6", "", "each is on the ground of its hole, and stands 4 mm out of a."},
		{"dowel pin 8", "", "", "no end stands over a face."},
	} {
		hole := func(depth string) string {
			return "  - {name: pegs, at: [[-80, 0], [80, 10]], size: {diameter: 8, fit: H7}, for: pins" + depth + ", fitted: " + c.pin + "}\n"
		}
		plates, stack := []string{drilledPlate("a", "M8 clearance", hole("")), drilledPlate("b", "M8 clearance", hole(c.depth))}, ""
		if c.between != "" {
			plates, stack = append(plates, c.between), ", stack: [g.h]"
		}
		p := filed(t, "{name: j, bolt: {through: a.h"+stack+", into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-front}", plates...)
		long := func(q plan.Problem) bool { return q.Kind == plan.PinsLong }
		if found := slices.ContainsFunc(p.Joints[0].Problems, long); found == strings.Contains(c.says, "no end") {
			t.Errorf("%+v: found %v", c, found)
		}
		if text := stepText(p.Joints[0]); !strings.Contains(text, "All 2 pins are in, and "+c.says) {
			t.Errorf("%+v:\n%s", c, text)
		}
	}
}

// TestDowelsGoThroughWhatTouches: two plates that studs hold apart share no pins, be their holes as alike as they may; those
// of a housing in two copies are reamed with the one or the other plate that it is bolted to, and each step does its own.
func TestDowelsGoThroughWhatTouches(t *testing.T) {
	t.Parallel()
	const pegs = "  - {name: pegs, at: [[-80, 0], [80, 10]], size: {diameter: 8, fit: H7}, for: pins}\n"
	plate := func(name string) string {
		return drilledPlate(name, "M8 clearance", pegs+"  - {name: foot, at: [[0, 20], [10, -20]], size: M6 clearance}\n")
	}
	stud := func(body string) string {
		return "part: s\nkind: turned\nquantity: 4\nmaterial: S235\nstock: {round: 14 mm}\nprofile: {outside: [{thread: M8, length: 35}, {diameter: " + body + ", length: 90}, {thread: M8, length: 35}]}\n"
	}
	const foot = "part: f\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [200, 160]}\nholes:\n  - {name: foot, at: [[0, 20], [10, -20]], size: M6 tap}\n" + pegs
	const joints = "{name: j, bolt: {through: a.h, into: b.h, bolt: M8, stud: s, nut: yes}, face: back-on-back}\n" +
		"  - {name: k, bolt: {through: a.foot, into: f#1.foot, bolt: M6 8.8}, face: front-on-back}\n  - {name: l, bolt: {through: b.foot, into: f#2.foot, bolt: M6 8.8}, face: front-on-back}"
	p := filed(t, joints, plate("a"), plate("b"), stud("12"), foot)
	for name, want := range map[string]string{"j": "", "k": "pegs of a into f 1", "l": "pegs of b into f 2"} {
		if text := stepText(jointNamed(t, p, name)); strings.Contains(text, "Drive in") != (want != "") || !strings.Contains(text, want) {
			t.Errorf("%s: %s", name, text)
		}
	}
	for name, want := range map[string]string{"a": "once f is bolted", "b": "once f is bolted", "f": "once a or b is bolted"} {
		if said := p.Part(name).Operations; !slices.ContainsFunc(said, func(o plan.Operation) bool { return strings.Contains(strings.Join(o.Do, " "), want) }) {
			t.Errorf("%s: %+v", name, said)
		}
	}
	const flush = "{name: j, bolt: {through: a.h, into: b.h, bolt: M8, stud: s, nut: yes}, face: back-on-back}"
	if text := stepText(jointNamed(t, filed(t, flush, plate("a"), plate("b"), stud("7.8")), "j")); !strings.Contains(text, "Drive in 2 × dowel pin Ø8.") {
		t.Errorf("studs that pull them together: %s", text)
	}
}

// TestFittingsWaitForWhatPasses: a nipple in the spigot of a housing goes in once the plate has come over the spigot, by a
// bore without room for it; with room, or under the plate's face on the other side, it goes in before.
func TestFittingsWaitForWhatPasses(t *testing.T) {
	t.Parallel()
	housing := func(axial string) string {
		return "part: n\nkind: turned\nmaterial: S235\nstock: {round: 150 mm}\nprofile: {outside: [{name: spigot, diameter: 60, length: 40}, {name: flange, diameter: 140, length: 30}], inside: [{name: bore, diameter: 30, length: 70}]}\n" +
			"holes: [{name: h, face: back, circle: {pcd: 100, count: 4, first: 45}, size: M8 tap}]\nradial: [{name: nipple, clock: 0, axial: " + axial + ", size: M10x1 tap, fitted: grease nipple}]\n"
	}
	for _, c := range []struct {
		bore, axial string
		after       bool
	}{{"60.5", "10", true}, {"90", "10", false}, {"60.5", "55", false}} {
		plate := strings.Replace(drilledPlate("a", "M8 clearance", ""), "holes:", "bore: {diameter: "+c.bore+"}\nholes:", 1)
		text := stepText(filed(t, "{name: j, bolt: {through: a.h, into: n.h, bolt: M8 8.8}, face: back-on-front}", plate, housing(c.axial)).Joints[0])
		if i, k := strings.Index(text, "Grease nipple M10x1 into nipple of n"), strings.Index(text, "Tighten"); i < 0 || i > k != c.after {
			t.Errorf("%+v: %s", c, text)
		}
	}
}
