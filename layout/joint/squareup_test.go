package joint_test

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// A welded flange is faced where its stock leaves metal for it, by geometry, down to its
// thickness. Where plate and flange are equally thick there is nothing to take off, whatever
// the job asks for: it is kept flat before and checked after. Both come after the last weld on
// the flange alone.
func TestSquaringUpHasStock(t *testing.T) {
	t.Parallel()
	const stock, weld = "stock: {plate: 12 mm", "barrel-flange#1.bore, to: barrel-tube.outside, type: bevel"
	thick := func(mm string) string { return "thickness: 12 mm\nstock: {plate: " + mm + " mm" }
	for _, c := range []struct {
		name, file, from, to, joint, leave, found string
		flat                                      bool
	}{
		{"as thick as its plate", "barrel-flange.yaml", stock, stock, "front-flange-weld", "", "", true},
		{"asked for all the same", "job.yaml", weld, weld + ", square-up: 2 mm", "front-flange-weld", "", "square-up-stock 2 0", true},
		{"from thicker plate", "barrel-flange.yaml", stock, thick("20"), "front-flange-weld", "3: 8 stands over it", "", false},
		{"just enough for one face", "barrel-flange.yaml", stock, thick("15"), "front-flange-weld", "3: 3 stands over it", "", false},
		{"too little", "barrel-flange.yaml", stock, thick("14"), "front-flange-weld", "", "", true},
		{"a plate with gussets to come", "gusset.yaml", "quantity: 4", "quantity: 4", "gusset-1", "", "", false},
		{"asked for where no plate is", "job.yaml", "type: fillet, size: 4 mm, sides: 2", "type: fillet, size: 4 mm, sides: 2, square-up: 2 mm", "auger-flight", "", "square-up-nowhere 2", false},
	} {
		p, err := draft(editedDemo(t, "pugmill", c.file, c.from, c.to))
		if err != nil {
			t.Fatal(err)
		}
		j := jointNamed(t, p, c.joint)
		text, found, last := stepText(j), "", ""
		for _, o := range p.Joints { // faced after the last weld of the barrel
			if o.Weld != nil && (strings.HasPrefix(o.Name, "front-") || strings.HasPrefix(o.Name, "rear-") || o.Name == "inlet-stub") {
				last = stepText(o)
			}
		}
		if got := strings.Contains(text, "Check that it is flat") && strings.Contains(text, "No tack on that face"); got != c.flat {
			t.Errorf("%s: kept flat %v, want %v: %s", c.name, got, c.flat, text)
		}
		if c.flat && (!strings.Contains(text, "if it stays so, cut it anew") || !strings.Contains(text, "A 0.1 mm feeler does not enter anywhere")) { // 0.1 and 0.04, below
			t.Errorf("%s: how flat: %s", c.name, text)
		}
		for _, pr := range j.Problems {
			if pr.Kind == plan.SquareUpStock || pr.Kind == plan.SquareUpNowhere {
				found = string(pr.Kind)
				for _, a := range pr.Args {
					if a.Unit == plan.Mm {
						found += " " + words.Trim(a.Value, 1)
					}
				}
			}
		}
		leave := ""
		for _, f := range j.Figures {
			if strings.Contains(f.Label, "squaring up") {
				_, over, _ := strings.Cut(last, "down to its thickness of 12: ")
				over, _, _ = strings.Cut(over, ".")
				leave = strings.TrimSuffix(f.Value, " on the joint face") + ": " + over
			}
		}
		if found != c.found || leave != c.leave || (j.Weld.Faced != "") != (c.leave != "") {
			t.Errorf("%s: %q, %q, faced %q; want %q, %q", c.name, found, leave, j.Weld.Faced, c.found, c.leave)
		}
		if press := jointNamed(t, p, "front-flange"); strings.Contains(strings.Join(press.Cautions, " "), "drawn 12") != (c.file == "barrel-flange.yaml" && c.to != stock) {
			t.Errorf("%s: %v", c.name, press.Cautions)
		}
	}
}

// A flange round a tube is to be so flat that its bolts close it: 0.1, and what they bend down from the weld; but no flatter plate is
// asked for than comes.
func TestFlangeAsFlatAsItsBoltsClose(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ from, to, joint, want string }{
		// 8 M8 8.8 of 15900 N, 30.15 from the stub, each a strip of 78.5 × 8: 4·15900·30.15³/(210000·78.5·8³) = 0.21
		{"part: inlet-flange", "part: inlet-flange", "inlet-flange-weld", "A 0.3 mm feeler"},
		{"plate: 8 mm", "plate: 6 mm", "inlet-flange-weld", "A 0.5 mm feeler"},               // 0.49
		{"plate: 8 mm", "plate: 5 mm", "inlet-flange-weld", "A 0.7 mm feeler"},               // 0.95; Ø230 by 3 in 1000: 0.69
		{"pcd: 200, count: 8", "pcd: 180, count: 8", "inlet-flange-weld", "A 0.1 mm feeler"}, // 20.15: 0.07
	} {
		p, err := draft(editedDemo(t, "pugmill", "inlet-flange.yaml", c.from, c.to))
		if err != nil {
			t.Fatal(err)
		}
		says(t, jointNamed(t, p, c.joint), []string{c.want}, nil)
	}
}

// A plate is faced after the last weld of its body, with the others, for each weld pulls what is
// faced before it (common practice, no source); before it if something is bolted to it sooner.
func TestFacedAfterTheLastWeldOfTheBody(t *testing.T) {
	t.Parallel()
	const w = ", type: fillet, process: MAG, square-up: 1.5}, "
	const one, two = "{name: w1, weld: {part: flg#1.bore, to: tube.outside" + w + "level: front-with-front, below: 5}", "{name: w2, weld: {part: flg#2.bore, to: tube.outside" + w + "level: back-with-front, below: 5}"
	const bolted = "{name: b, bolt: {through: flg#1.bolts, into: cap.bolts, bolt: M10 8.8, nut: yes}, after: [w1]}"
	flg := "part: flg\nkind: flange\nquantity: 2\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\nthickness: 12\noutline: {circle: 200}\nbore: {diameter: 114.6}\nholes:\n  - {name: bolts, circle: {pcd: 170, count: 6}, size: M10 clearance}\n"
	cap := "part: cap\nkind: flange\nmaterial: S235\nstock: {plate: 12 mm, cut: laser}\noutline: {circle: 200}\nholes:\n  - {name: bolts, circle: {pcd: 170, count: 6}, size: M10 clearance}\n"
	tube := "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 114.3 mm, wall: 5 mm}\ntube: {outside: 114.3, wall: 5, length: 300}\n"
	for _, c := range []struct{ joints, first, last string }{
		{one + "\n  - " + two, "", "flg 1 true flg 2 true"},
		{one + "\n  - " + bolted + "\n  - " + strings.Replace(two, "below: 5}", "below: 5, after: [b]}", 1), "flg 1 true", "flg 2 true"},
	} {
		files := []string{tube, flg}
		if strings.Contains(c.joints, "cap") {
			files = append(files, cap)
		}
		p, err := draft(jobOf(t, c.joints, files...))
		if err != nil {
			t.Fatal(err)
		}
		for name, want := range map[string]string{"w1": c.first, "w2": c.last} {
			var got []string
			for _, s := range jointNamed(t, p, name).Steps {
				for _, d := range s.Do {
					if what, faced := strings.CutPrefix(d, "Face the joint face of "); faced {
						got = append(got, strings.Split(what, ",")[0])
					}
				}
			}
			if strings.Join(got, " ") != want {
				t.Errorf("%s: %s faces %q, want %q", c.joints, name, got, want)
			}
		}
	}
}

// A bore on a round has one groove, its own chamfer against the round without a gap (AWS D1.1
// partial penetration bevels, from memory): a V or square edges are refused there, and a bevel
// whose chamfer is not drawn, on each side that is welded; nothing is said of a gap or a root face.
func TestGrooveAgainstARound(t *testing.T) {
	t.Parallel()
	tube := "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 8 mm, length: 204 mm}\ntube: {outside: 100, wall: 8, length: 200}\n"
	const back, front = "{edge: bore-back, size: 6 mm, angle: 45, for: weld}", "{edge: bore-front, size: 6 mm, angle: 45, for: weld}"
	for _, c := range []struct{ weld, chamfers, lacks string }{
		{"bevel", back, ""},
		{"bevel, sides: 2", back + ", " + front, ""},
		{"bevel, sides: 2", back, "only one of its two sides"},
		{"bevel", "", "no chamfer is drawn"},
		{"v", back, "other half of a V"},
		{"square", back, "square edges leave nothing"},
	} {
		flange := "part: flange\nkind: flange\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {circle: 200}\nbore: {diameter: 100, fit: {light-press: tube.outside}, leave: 2}\nchamfers: [" + c.chamfers + "]\n"
		p, err := draft(jobOf(t, "{name: w, weld: {part: flange.bore, to: tube.outside, type: "+c.weld+", process: MAG}}", tube, flange))
		if err != nil {
			t.Fatal(err)
		}
		if c.lacks != "" {
			if len(p.Joints) != 0 || len(p.Faults) != 1 || p.Faults[0].Kind != plan.GrooveLacking || !strings.Contains(p.Faults[0].What, c.lacks) {
				t.Errorf("%s: %+v", c.weld, p.Faults)
			}
			continue
		}
		if len(p.Joints) != 1 {
			t.Fatalf("%s: %+v", c.weld, p.Faults)
		}
		w := p.Joints[0].Weld
		says(t, p.Joints[0], []string{"No gap."}, []string{"root face"})
		if w.Sides == 2 {
			says(t, p.Joints[0], []string{"the front and the back of flange", "turn and turn about"}, nil)
		}
		// 18 mm² and a cap of 2/3 × 6 × 1, 314.2 round, of 7850 kg/m³, on each side.
		if kg := w.DepositedKg / float64(w.Sides); math.Abs(kg-0.0543) > 0.0006 {
			t.Errorf("%s: %v kg on a side", c.weld, kg)
		}
	}
}

// A fillet of two sides round a tube is laid and gauged on both (ISO 2553: the symbol on both
// sides of the line), and what it takes is bought as more than nothing.
func TestRoundFilletOfTwoSides(t *testing.T) {
	t.Parallel()
	job := func(sides string) *plan.JointPlan {
		return filed(t, "{name: w, weld: {part: ring.bore, to: tube.outside, type: fillet, process: TIG"+sides+"}, level: front-with-front, below: 5}",
			"part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 60.3 mm, wall: 1.5 mm, length: 204 mm}\ntube: {outside: 60.3, wall: 1.5, length: 200}\n",
			"part: ring\nkind: ring\nmaterial: S235\nstock: {sheet: 2 mm, cut: laser}\noutline: {circle: 90}\nbore: {diameter: 60.5}\n").Joints[0]
	}
	says(t, job(", sides: 2"), []string{"Weld on the front and the back of ring", "at four places round, on each side"}, nil)
	says(t, job(""), []string{"at four places round."}, []string{"the front and the back"})
}

// What a metal that hardens takes stands in the steps: preheat before the tacks, slow cooling
// after (common practice, no source; as figures of layout/material); ordinary steel has neither.
func TestPreheatIsAStep(t *testing.T) {
	t.Parallel()
	plate := func(name, metal string) string {
		return "part: " + name + "\nkind: plate\nmaterial: " + metal + "\nstock: {plate: 12 mm, cut: saw}\noutline: {square: 100}\n"
	}
	job := func(metal string) *plan.JointPlan {
		return filed(t, "{name: w, weld: {part: a.outline, to: b.outline, type: fillet, size: 6, sides: 2, length: 100}}", plate("a", metal), plate("b", "S235")).Joints[0]
	}
	says(t, job("C45"), []string{"preheat to 250 – 400 °C", "before the tacks too", "cool slowly"}, []string{"still air"})
	says(t, job("S235"), []string{"still air"}, []string{"preheat", "slowly"})
}

// TestNoFoldedJointFace: what is welded to a tray that is bolted by its flanges has no joint face felt on a plate, and none
// cut anew from thicker plate: a sheet is folded as it is.
func TestNoFoldedJointFace(t *testing.T) {
	t.Parallel()
	const tray = "part: tray\nkind: folded\nmaterial: S235\nstock: {sheet: 2 mm, cut: laser}\noutline: {rectangle: [200, 160]}\nbends: {radius: 2, flanges: [{side: left, height: 40, toward: front}]}\nholes: [{name: h, on: left, at: [[-40, 20], [40, 20]], size: M6 clearance}]\n"
	const boss = "part: boss\nkind: turned\nmaterial: S235\nstock: {round: 45 mm}\nprofile: {outside: [{name: body, diameter: 40, length: 20}]}\n"
	const wall = "part: wall\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [300, 200]}\nholes: [{name: h, at: [[-40, 0], [40, 0]], size: M6 tap}]\n"
	const joints = "{name: boss, weld: {part: boss.body, to: tray.outline, type: fillet, size: 3}, place: {on: back, with: front, at: [0, 0], top: up}}\n" +
		"  - {name: side, bolt: {through: tray.h, into: wall.h, bolt: M6 8.8}, face: back-on-front}"
	if text := stepText(jointNamed(t, filed(t, joints, tray, boss, wall), "boss")); strings.Contains(text, "joint face") || strings.Contains(text, "free face") || !strings.Contains(text, "Tack") {
		t.Error(text)
	}
}
