package joint_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// foundIn is what is found against a job of some parts, with its arguments, of some kinds, where
// they are given; or in words why it is refused.
func foundIn(t *testing.T, kinds []plan.ProblemKind, joints string, partTexts ...string) string {
	t.Helper()
	p, err := draft(jobOf(t, joints, partTexts...))
	if err != nil {
		first, _, _ := strings.Cut(err.Error(), "\n")
		_, said, _ := strings.Cut(first, ": ")
		return said
	}
	all := slices.Clone(p.Faults)
	for _, j := range p.Joints {
		all = append(all, j.Problems...)
	}
	if kinds != nil {
		all = slices.DeleteFunc(all, func(q plan.Problem) bool { return !slices.Contains(kinds, q.Kind) })
	}
	return argued(all)
}

// argued is what is found, with its arguments.
func argued(all []plan.Problem) string {
	var out []string
	for _, q := range all {
		args := []string{string(q.Kind)}
		for _, a := range q.Args {
			if a.Text == "" {
				a.Text = words.Trim(a.Value, 4)
			}
			args = append(args, a.Text)
		}
		out = append(out, strings.Join(args, ", "))
	}
	return strings.Join(out, "; ")
}

// drilledPlate is a plate of 10 with four holes on a circle of 100 and what else is drilled.
func drilledPlate(name, size, more string) string {
	return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [200, 160]}\nholes:\n  - {name: h, circle: {pcd: 100, count: 4, first: 45}, size: " + size + "}\n" + more
}

// TestBoltsFound: threads, nuts, holes and studs that do not go together. An M8 has a nut of 6.8
// (ISO 4032), a washer of 1.6 (ISO 7089) and a pitch of 1.25: behind a plate of 10 a stud needs
// 10 + 6.8 + 2.5 = 19.3, with the washer 20.9, and 0.2 for the limits of its length (ISO 2768-1 m).
func TestBoltsFound(t *testing.T) {
	t.Parallel()
	stud := func(count, first, last string) string {
		return "part: stud\nkind: turned\nquantity: " + count + "\nmaterial: C45\nstock: {round: 16 mm, length: 80 mm}\nprofile:\n  outside: [{name: nose, " + first + "}, {name: shank, diameter: 12, length: 30}, {name: tail, " + last + "}]\n"
	}
	good := "thread: M8, length: 21.1"
	for _, c := range []struct{ name, bolt, a, b, stud, want string }{
		{"into a thread", "bolt: M8 8.8", "M8 clearance", "M8 tap", "", ""},
		{"another thread", "bolt: M8 8.8", "M8 clearance", "M10 tap", "", "other-thread, M8, b h, M10"},
		{"a nut behind a thread", "bolt: M8 8.8, nut: yes", "M8 clearance", "M8 tap", "", "tapped-with-nut, b h, nut: no"},
		{"no nut", "bolt: M8 8.8", "M8 clearance", "M8 clearance", "", "no-thread-no-nut, b h"},
		{"as large", "bolt: M8 8.8, nut: yes", "8", "8.2", "", "hole-too-small, a h, 8, M8, holes"},
		{"a fiftieth larger", "bolt: M8 8.8, nut: yes", "8.16", "8.2", "", ""},
		{"fitted", "bolt: M8 8.8, nut: yes", "{diameter: 8, fit: H7}", "8.2", "", ""},
		{"too small", "bolt: M8 8.8, nut: yes", "7.9", "8.2", "", "hole-too-small, a h, 7.9, M8, holes"},
		{"too small behind", "bolt: M8 8.8, nut: yes", "8.2", "8.1", "", "hole-too-small, b h, 8.1, M8, holes"},
		{"studs", "bolt: M8, stud: stud, washer: yes", "M8 clearance", "M8 clearance", stud("4", good, good), ""},
		{"three studs", "bolt: M8, stud: stud, washer: yes", "M8 clearance", "M8 clearance", stud("3", good, good), "studs-missing, 4, 3, stud"},
		{"another thread on it", "bolt: M8, stud: stud, washer: yes", "M8 clearance", "M8 clearance", stud("4", "thread: M10, length: 21", good), "stud-thread, nose, stud, M8"},
		{"no thread", "bolt: M8, stud: stud, washer: yes", "M8 clearance", "M8 clearance", stud("4", good, "diameter: 8, length: 21"), "stud-thread, tail, stud, M8"},
		{"short under a washer", "bolt: M8, stud: stud, washer: yes", "M8 clearance", "M8 clearance", stud("4", "thread: M8, length: 20.5", good), "stud-short, nose, stud, 0.4"},
		{"without one", "bolt: M8, stud: stud", "M8 clearance", "M8 clearance", stud("4", "thread: M8, length: 19.3", "thread: M8, length: 19.2"), "lengths-eat, the thread nose of stud, 19.3, 19.3, 19.1, nose; stud-short, tail, stud, 0.1"},
	} {
		texts := []string{drilledPlate("a", c.a, ""), drilledPlate("b", c.b, "")}
		if c.stud != "" {
			texts = append(texts, c.stud)
		}
		if got := foundIn(t, nil, "{name: j, bolt: {through: a.h, into: b.h, "+c.bolt+"}, face: back-on-front}", texts...); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestPressesFound: sizes, fits and lengths that make no press fit, and keyways out of line. By ISO
// 286-2 for 45 H7 is +25/0, p6 +42/+26, k6 +18/+2 and g6 −9/−25. A pin of 46.042 at the most in a hub of
// 90 is pressed by Lamé with 1.042 / 45 · 210 000 / (5/3 + 1) = 1823.5 MPa, 7/3 of that in the hub of
// 215 and as much in the pin of 305 (EN 10025-2, EN 10083-2).
func TestPressesFound(t *testing.T) {
	t.Parallel()
	const both = "level: front-with-front, in-line: [pin.key, hub.key]"
	for _, c := range []struct{ pin, bore, joint, want string }{
		{"45, fit: p6", "45, fit: H7", both, "out-of-line-turn, pin.key at 90°, hub.key at 30°, 300"},
		{"45, fit: p6", "45, fit: H7", both + ", rotate: 300", ""},
		{"45, fit: p6", "45, fit: H7", both + ", rotate: 60", "out-of-line-turn, pin.key at 150°, hub.key at 30°, 300"},
		{"45, fit: p6", "45, fit: H7", "level: front-with-front, in-line: [pin.key, up]", "out-of-line-turn, pin.key at 90°, up is 0°, 270"},
		{"45, fit: p6", "45, fit: H7", "level: front-with-front, in-line: [pin.seat, hub.key]", "no-clock-angle, pin seat"},
		{"45, fit: p6", "45, fit: H7", "level: front-with-front", ""},
		{"45, fit: k6", "45, fit: H7", "level: front-with-front", "may-be-loose, 0.023"},
		{"45, fit: g6", "45, fit: H7", "level: front-with-front", "clearance-fit, 0.009"},
		{"46, fit: p6", "45, fit: H7", "level: front-with-front", "press-yields, 0.05, 0.17, 1823.5"},
		{"46.1, fit: p6", "45, fit: H7", "level: front-with-front", "press-sizes, pin seat, 46.1, hub bore, 45"},
		{"45", "45, fit: H7", "level: front-with-front", "no-limits, pin seat, fit: H7/p6 in the joint, or limits on the part"},
		{"45, fit: p6", "45", "level: front-with-front", "no-limits, hub bore, fit: H7/p6 in the joint, or limits on the part"},
		{"45, fit: p6", "45, fit: H7", "level: front-with-front, below: 20", ""},
		{"45, fit: p6", "45, fit: H7", "level: back-with-front", ""},
		{"45, fit: p6", "45, fit: H7", "face: front-on-back", "no-face-there, pin"},
		{"45, fit: p6", "45, fit: H7", "level: front-with-front, below: 39.9", "press-too-deep, pin seat, hub bore, 39.9"},
		{"45, fit: p6", "45, fit: H7", "level: front-with-front, below: 41", "press-too-deep, pin seat, hub bore, 41"},
	} {
		press := "{name: j, press: {shaft: pin.seat, bore: hub.bore}, " + c.joint + "}"
		if got := foundIn(t, nil, press,
			"part: hub\nkind: turned\nmaterial: S235\nstock: {round: 95 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 90, length: 40}]\n  inside: [{name: bore, diameter: "+c.bore+", length: 40}]\nchamfers: [{edge: bore-front, size: 3, angle: 15}, {edge: bore-back, size: 3, angle: 15}]\nkeyways: [{name: key, in: bore, clock: 30}]\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: "+c.pin+", length: 40}]\nkeyways: [{name: key, in: seat, clock: 90, axial: 20, length: 20}]\n"); got != c.want {
			t.Errorf("%s in %s, %s: %q, want %q", c.pin, c.bore, c.joint, got, c.want)
		}
	}
}

// TestRegistersFound: of a spigot of a lid in the register of a body, by ISO 286-2: 80 H7 is +30/0, H9
// +74, H10 +120, f7 −30/−60, k6 +21/+2, d9 −100/−174, d10 −100/−220, and 81 f7 −36/−71; drawn without
// limits both are 0.3 off (ISO 2768-1 m).
func TestRegistersFound(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ spigot, bore, want string }{
		{"80, fit: f7", "80, fit: H7", ""}, {"80, fit: k6", "80, fit: H7", "register-binds, Lid spigot in Body register, 0.021, a fit such as H7/f7"}, {"80, fit: d10", "80, fit: H10", "register-loose, Lid spigot in Body register, 0.34"}, {"80, fit: d9", "80, fit: H9", ""},
		{"81, fit: f7", "80, fit: H7", "register-larger, Lid, spigot, Body, register, 0.964, a smaller spigot, or a larger register"}, {"79, fit: f7", "80, fit: H7", "register-loose, Lid spigot in Body register, 1.09"}, {"78.9, fit: f7", "80, fit: H7", "register-off, Lid spigot in Body register, 78.9, 80, 1.1"}, {"74, fit: f7", "80, fit: H7", "register-off, Lid spigot in Body register, 74, 80, 6"}, {"73.9, fit: f7", "80, fit: H7", ""},
		{"80", "80", "register-binds, Lid spigot in Body register, 0.6, a smaller spigot, or a larger register"}, {"79", "80", ""}, {"78.9", "80", ""}, {"78.9, fit: f7", "80", ""},
		{"80, fit: {measured: [0.1, 0.15]}", "80, fit: H7", ""},
	} {
		got := foundIn(t, []plan.ProblemKind{plan.RegisterBinds, plan.RegisterLarger, plan.RegisterLoose, plan.RegisterOff, plan.RegisterBottoms, plan.RegisterTube},
			"{name: j, bolt: {through: lid.h, into: body.h, bolt: M8 8.8}, face: back-on-front}",
			"part: body\ntitle: Body\nkind: turned\nmaterial: S235\nstock: {round: 150 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 140, length: 40}]\n  inside: [{name: register, diameter: "+c.bore+", length: 10}, {name: bore, diameter: 60, length: 30}]\nholes:\n  - {name: h, face: front, circle: {pcd: 110, count: 4}, size: M8 tap, depth: 20}\n",
			"part: lid\ntitle: Lid\nkind: turned\nmaterial: S235\nstock: {round: 150 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 140, length: 12}, {name: spigot, diameter: "+c.spigot+", length: 6}]\nholes:\n  - {name: h, face: front, circle: {pcd: 110, count: 4}, size: M8 clearance}\n")
		if got != c.want {
			t.Errorf("%s in %s: %q, want %q", c.spigot, c.bore, got, c.want)
		}
	}
}

// TestWeldsFound: metals that are not welded like ordinary steel, with their preheat (common practice,
// no source); a fillet on 20 of 6 at the least (AWS D1.1, from memory), and a square groove up to 4
// (ISO 9692-1, from memory).
func TestWeldsFound(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ metals, thick, weld, want string }{
		{"S235 S235", "20", "type: fillet, length: 100, process: MAG", ""},
		{"S235 S235", "20", "type: fillet, size: 5, length: 100, process: MAG", "fillet-small, 5, 6"},
		{"S235 S235", "20", "type: fillet, size: 5.9, length: 100, process: MAG", "fillet-small, 5.9, 6"},
		{"S235 S235", "20", "type: fillet, size: 6, length: 100, process: MAG", ""},
		{"S235 S235", "3", "type: square, length: 100, process: MAG", ""},
		{"S235 S235", "12", "type: square, length: 100, process: MAG", "square-too-thick, 12; no-weld-chamfer, a, b"},
		{"S235 S235", "4", "type: square, length: 100, process: MAG", ""},
		{"S235 S235", "4.1", "type: square, length: 100, process: MAG", "square-too-thick, 4.1; no-weld-chamfer, a, b"},
		{"S235 S235", "12", "type: v, length: 100, process: MAG", "no-weld-chamfer, a, b"},
		{"S235 42CrMo4", "12", "type: fillet, length: 100, process: MAG", "weld-hardens, 42CrMo4, 300"},
		{"S235 C45", "12", "type: fillet, length: 100, process: MAG", "weld-hardens, C45, 250"},
		{"S235 1.4301", "12", "type: fillet, length: 100, process: MAG", "weld-own-way, 1.4301, 0"},
		{"1.4301 1.4404", "12", "type: fillet, length: 100, process: MAG", ""},
		{"1.4301 1.4404", "12", "type: fillet, length: 100, process: self-shielded", "weld-own-way, 1.4301, 0"},
		{"1.4301 1.4016", "12", "type: fillet, length: 100, process: TIG", "weld-own-way, 1.4301, 0"},
		{"AlMg3 AlMg3", "12", "type: fillet, length: 100, process: MAG", "weld-own-way, AlMg3, 0"},
		{"AlMg3 AlMg3", "12", "type: fillet, length: 100, process: MIG", ""},
		{"S235 EN-GJL-250", "12", "type: fillet, length: 100, process: MAG", "weld-iron, EN-GJL-250, 300"},
		{"S235 AlMg3", "12", "type: fillet, length: 100, process: MAG", "weld-mixed, AlMg3, 0"},
		{"11SMn30 S235", "12", "type: fillet, length: 100, process: MAG", "weld-cracks, 11SMn30, 0"},
	} {
		text := func(name, metal string) string {
			return fmt.Sprintf("part: %s\nkind: plate\nmaterial: %s\nstock: {plate: %s mm, cut: saw}\noutline: {square: 100}\n", name, metal, c.thick)
		}
		a, b, _ := strings.Cut(c.metals, " ")
		if got := foundIn(t, nil, "{name: w, weld: {part: a.outline, to: b.outline, "+c.weld+"}}", text("a", a), text("b", b)); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.metals, c.weld, got, c.want)
		}
	}
	// A chamfer that is drawn for the weld is told, and of a bevel whose edge it is on.
	for kind, bevelled := range map[string]string{"bevel": "b", "v": ""} {
		plate := func(name, more string) string {
			return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm, cut: saw}\noutline: {square: 100}\n" + more
		}
		j := filed(t, "{name: w, weld: {part: a.outline, to: b.outline, type: "+kind+", length: 100, process: MAG}}", plate("a", ""), plate("b", "chamfers: [{edge: outline-front, size: 9 mm, angle: 45, for: weld}]\n")).Joints[0]
		drawn := slices.IndexFunc(j.Figures, func(f plan.Figure) bool { return f.Label == "chamfer drawn" })
		if len(j.Problems) > 0 || j.Weld.Bevelled != bevelled || drawn < 0 || j.Figures[drawn].Value != "9 × 45° on outline front of b" {
			t.Errorf("%s with a chamfer: of %q, %+v, %v", kind, j.Weld.Bevelled, j.Figures, j.Problems)
		}
	}
}

// TestBranchPlaces: what is measured of where a branch stands, within ISO 13920 class A: 1 up to
// 400 and 2 up to 1000, and 6 mm in a metre of lean up to 400, 4.5 up to 1000. The middle of
// what leans lies (913.9 − 250)/tan 60° from where the axes cross, 300. On a main of 500 a
// clock angle of 110° is 480 round, 250° the same the other way, 80° 349.
func TestBranchPlaces(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ ends, clock, want string }{
		{"angle: 60, offset: 20, joint: set-on, gap: 1, clock: 0, place: {clock: 110, axial: 300, leans: back}", "110", "683.3 from the front face 681.3 – 685.3 square, rule; 114.59°, its TOP to the back of Main within 2 round rule; 60° between the axes within 2.25 over 500 bevel protractor, feeler; 913.9 from the far side 911.9 – 915.9 square, rule"},
		{"angle: 90, joint: set-on, gap: 1, clock: 0, place: {clock: 250, axial: 450, leans: front}", "250", "450 from the front face 448.0 – 452.0 tape; 250°, its TOP to the front of Main within 2 round rule; 90° between the axes within 2.25 over 500 square, feeler; 998.1 from the far side 996.1 – 1000.1 tape"},
		{"angle: 90, joint: set-on, gap: 1, clock: 30, place: {clock: 80, axial: 300, leans: front}", "80", "300 from the front face 299.0 – 301.0 tape; 80°, 30° of its clock to the front of Main within 1 round rule; 90° between the axes within 2.25 over 500 square, feeler; 998.1 from the far side 996.1 – 1000.1 tape"},
	} {
		main := "part: main\ntitle: Main\nkind: tube\nmaterial: S235\nstock: {tube: 500 mm, wall: 8 mm, length: 904 mm}\ntube: {outside: 500, wall: 8, length: 900}\nradial: [{name: opening, clock: " + c.clock + ", axial: 300, size: 20 mm, depth: through}]\n"
		branch := "part: branch\ntitle: Branch\nkind: tube\nmaterial: S235\nstock: {tube: 80 mm, wall: 2 mm, length: 520 mm}\ntube: {outside: 80, wall: 2, length: 500}\nends:\n  back: {onto: main.outside, " + c.ends + "}\n"
		var got []string
		for _, k := range filed(t, "{name: w, weld: {part: branch.outside, to: main.opening, type: square, process: TIG}}", main, branch).Joints[0].Checks[:4] {
			got = append(got, k.Wanted+" "+k.Limits+" "+k.Gauge)
			if off := k.MaxMm - k.MinMm; strings.Contains(k.Wanted, " from ") && math.Abs(off-2) > 1e-9 && math.Abs(off-4) > 1e-9 {
				t.Errorf("%s: within %g", k.What, off)
			}
		}
		if text := strings.Join(got, "; "); text != c.want {
			t.Errorf("%s: %s", c.ends, text)
		}
	}
}

// TestUnknownMetal: of a metal that no table has, every kind of joint is worked out all the same:
// threads and welds as in steel, with its 7850 kg/m³, and nothing that its strength decides.
func TestUnknownMetal(t *testing.T) {
	t.Parallel()
	const stud = "part: stud\nkind: turned\nquantity: 4\nmaterial: METAL\nstock: {round: 16 mm, length: 80 mm}\nprofile:\n  outside: [{name: nose, thread: M8, length: 21.1}, {name: shank, diameter: 12, length: 30}, {name: tail, thread: M8, length: 21.1}]\n"
	const unknown = "The strength of the made stud is not known, and no torque is given: tighten alternately, spanner-tight."
	for _, c := range []struct {
		joint string
		texts []string
		want  string
	}{
		{"{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8}, face: back-on-front}", []string{drilledPlate("a", "M8 clearance", ""), drilledPlate("b", "M8 tap", "")}, ""},
		{"{name: j, bolt: {through: a.h, into: b.h, bolt: M8 A2-70}, face: back-on-front}", []string{drilledPlate("a", "M8 clearance", ""), drilledPlate("b", "M8 tap", "")}, ""},
		{"{name: j, bolt: {through: a.h, into: b.h, bolt: M8, stud: stud, washer: yes}, face: back-on-front}", []string{drilledPlate("a", "M8 clearance", ""), drilledPlate("b", "M8 clearance", ""), stud}, unknown},
		{"{name: j, weld: {part: a.outline, to: b.outline, type: fillet, length: 100, process: MAG}}", []string{drilledPlate("a", "8", ""), drilledPlate("b", "8", "")}, ""},
	} {
		one := func(metal string) *plan.JointPlan {
			var texts []string
			for _, s := range c.texts {
				texts = append(texts, strings.NewReplacer("METAL", metal, "S235", metal).Replace(s))
			}
			return filed(t, c.joint, texts...).Joints[0]
		}
		got, steel := one("Unobtanium"), one("S235")
		said := ""
		for _, s := range got.Cautions {
			if strings.Contains(s, "strength") || strings.Contains(s, "eaten") || strings.Contains(s, "seize") {
				said += s
			}
		}
		if said != c.want || len(got.Problems) > 0 {
			t.Errorf("%s: %q, %v", c.joint, said, got.Problems)
		}
		if b := got.Bolt; b != nil && c.want == "" && (b.EngagementMm != steel.Bolt.EngagementMm || b.NeedMm != steel.Bolt.NeedMm || b.TorqueNm != steel.Bolt.TorqueNm) || b != nil && c.want != "" && (b.TorqueNm != 0 || steel.Bolt.TorqueNm == 0) {
			t.Errorf("%s: %+v, of steel %+v", c.joint, b, steel.Bolt)
		}
		if w := got.Weld; w != nil && (w.DepositedKg != steel.Weld.DepositedKg || w.DepositedKg == 0) {
			t.Errorf("%s: %g kg, of steel %g", c.joint, w.DepositedKg, steel.Weld.DepositedKg)
		}
	}
}

// TestOneUnknownMetal: of two metals that are welded one may be unknown: nothing is said of the two.
func TestOneUnknownMetal(t *testing.T) {
	t.Parallel()
	plate := func(name, metal string) string {
		return "part: " + name + "\nkind: plate\nmaterial: " + metal + "\nstock: {plate: 12, cut: saw}\noutline: {square: 100}\n"
	}
	for _, c := range [][2]string{{"Unobtanium", "C45"}, {"C45", "Unobtanium"}} {
		if got := foundIn(t, nil, "{name: w, weld: {part: a.outline, to: b.outline, type: fillet, length: 100, process: MAG}}", plate("a", c[0]), plate("b", c[1])); got != "" {
			t.Errorf("%s to %s: %s", c[0], c[1], got)
		}
	}
}

// TestSmallTorque: a torque under 1 N m is one. M3 4.6 is tightened to 0.75 of 225 MPa on 5.03 mm² (ISO 898-1), 849 N
// of preload, 0.51 N m with K = 0.2.
func TestSmallTorque(t *testing.T) {
	t.Parallel()
	p := filed(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M3 4.6}, face: back-on-front}", drilledPlate("a", "M3 clearance", ""), drilledPlate("b", "M3 tap", ""))
	says(t, jointNamed(t, p, "j"), []string{"third 0.5 N m", "torque: 0.5 N m", "torque: each bolt"}, nil)
}

// TestContactLength: of a pin of 40 in a hub of 40, what the chamfers of both and an undercut
// beside a shoulder take away at its end, the longer of two that lie on one another.
func TestContactLength(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		hub, pin, joint string
		want            float64
	}{
		{"", "", "level: front-with-front", 40},
		{"chamfers: [{edge: bore-front, size: 3, angle: 15}]", "", "level: front-with-front", 37},
		{"chamfers: [{edge: bore-front, size: 3, angle: 15}, {edge: bore-back, size: 4, angle: 15}]", "", "level: front-with-front", 33},
		{"chamfers: [{edge: bore-front, size: 3, angle: 15}]", "chamfers: [{edge: seat-front, size: 5, angle: 15}]", "level: front-with-front", 35},
		{"chamfers: [{edge: bore-front, size: 3, angle: 15}]", "chamfers: [{edge: seat-front, size: 5, angle: 15}]", "level: front-with-front, below: 10", 25},
		{"chamfers: [{edge: bore-back, size: 3, angle: 15}]", "", "level: front-with-front, below: 10", 27},
		{"", "UNDERCUT", "level: front-with-front", 37.5},
		{"chamfers: [{edge: bore-back, size: 2, angle: 15}]", "UNDERCUT", "level: front-with-front", 37.5},
	} {
		pin, under := c.pin, ""
		if pin == "UNDERCUT" {
			pin, under = "", ", undercut: {width: 2.5, depth: 0.3}}, {name: head, diameter: 60, length: 10"
		}
		p := filed(t, "{name: j, press: {shaft: pin.seat, bore: hub.bore}, "+c.joint+"}",
			"part: hub\nkind: turned\nmaterial: S235\nstock: {round: 95 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 90, length: 40}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 40}]\n"+c.hub+"\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 65 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: p6, length: 40"+under+"}]\n"+pin+"\n")
		if j := p.Joints[0]; j.Press == nil || j.Press.LengthMm != c.want {
			t.Errorf("%s, %s, %s: %+v, want %g", c.hub, c.pin, c.joint, j.Press, c.want)
		}
	}
}

// TestBoughtForAll: what goes into each copy of a part is bought for all of them: two pins for each of three plates,
// and the filler for the seams of three cones, √(70² + 100²) = 122 long each.
func TestBoughtForAll(t *testing.T) {
	t.Parallel()
	count := map[string][]string{}
	for _, n := range []string{"1", "3"} {
		p := filed(t, "{name: j, bolt: {through: a#1.h, into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-front}",
			strings.Replace(drilledPlate("a", "M8 clearance", "  - {name: pins, at: [[-80, 0], [80, 0]], size: {diameter: 8, fit: H7}, note: \"dowel pin 8 m6 x 24, pressed in\"}\n"), "kind: plate\n", "kind: plate\nquantity: "+n+"\n", 1), drilledPlate("b", "M8 clearance", ""),
			"part: cone\nkind: cone\nquantity: "+n+"\nmaterial: S235\nstock: {sheet: 6, cut: laser}\ncone: {large: 300, small: 160, height: 100, thickness: 6}\n")
		for _, row := range p.Bought {
			if name, kg, filler := strings.Cut(row.Item, ", to the welding procedure, "); filler {
				count[name] = append(count[name], kg)
			} else if strings.HasPrefix(row.Item, "Dowel") {
				count[row.Item] = append(count[row.Item], fmt.Sprint(row.Quantity))
			}
		}
	}
	if got := fmt.Sprint(count); got != "map[Dowel pin 8 m6 x 24:[2 6] Filler for S235:[0.03 kg 0.1 kg]]" {
		t.Error(got)
	}
}

// TestNoContact: a seat of 3 that lies in a chamfer of 3 touches nothing of its bore; of 3.5 half a millimetre.
func TestNoContact(t *testing.T) {
	t.Parallel()
	for _, c := range [][3]string{{"3", "", "press-no-contact, pin seat, hub bore"}, {"3.5", "", ""}, {"10", ", below: 0.5", ""}, {"2", ", below: 0.5", "press-too-deep, pin seat, hub bore, 0.5"}} {
		long, below, want := c[0], c[1], c[2]
		got := foundIn(t, []plan.ProblemKind{plan.PressNoContact, plan.PressTooDeep}, "{name: j, press: {shaft: pin.seat, bore: hub.bore}, level: front-with-front"+below+"}",
			"part: hub\nkind: turned\nmaterial: S235\nstock: {round: 95 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 90, length: 40}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 40}]\nchamfers: [{edge: bore-front, size: 3, angle: 15}]\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 65 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: p6, length: "+long+"}, {name: nose, diameter: 40, length: 30}]\n")
		if got != want {
			t.Errorf("%s long%s: %q, want %q", long, below, got, want)
		}
	}
}

// TestLeadInOfAnotherStep: the chamfer of a step that is called like an edge of the seat, or begins
// with its name, is none of the seat's.
func TestLeadInOfAnotherStep(t *testing.T) {
	t.Parallel()
	hub := "part: hub\nkind: ring\nmaterial: S355\nstock: {plate: 25, cut: laser}\noutline: {circle: 90}\nbore: {diameter: 40, fit: H7, leave: 2}\nthickness: 25\n"
	for _, c := range []struct{ step, edge, want string }{
		{"seat-2", "seat-back", ""},
		{"seat-2", "seat-2-back", "no-lead-in"},
		{"seat-front", "seat-front-back", "no-lead-in"},
	} {
		pin := "part: pin\nkind: shaft\nmaterial: S355\nstock: {round: 60, cut: saw}\nprofile:\n  outside:\n    - {name: " + c.step + ", diameter: 50, length: 40}\n    - {name: seat, diameter: 40, fit: s6, length: 40}\nchamfers: [{edge: " + c.edge + ", size: 2, angle: 15, for: lead-in}]\n"
		got := foundIn(t, []plan.ProblemKind{plan.NoLeadIn, plan.LeadInBehind}, "{name: in, press: {shaft: pin.seat, bore: hub.bore}, level: back-with-back}", pin, hub)
		if got, _, _ = strings.Cut(got, ","); got != c.want {
			t.Errorf("%s beside a step %s: %q, want %q", c.edge, c.step, got, c.want)
		}
	}
}
