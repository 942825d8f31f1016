package joint_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// What is said to come first stands before all else; a heavy thing bought says what it
// weighs, in the step, the list to buy and the mass from there on.
func TestBoughtThings(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	if s := jointNamed(t, p, "delivery-die").Steps[0]; s.Title != "Put in" || s.N != 1 || !strings.HasPrefix(s.Do[0], "Screw M8 x 45 8.8, countersunk head") {
		t.Errorf("%+v", s)
	}
	motor := jointNamed(t, p, "coupling-guard")
	if hold := motor.Steps[0].Hold; !strings.HasPrefix(hold, "Before that Auger shaft turned by hand") || motor.Steps[1].Hold != "" { // the coupling comes first
		t.Errorf("%q", hold)
	}
	last := motor.Steps[1]
	if !strings.HasPrefix(last.Do[0], "Gear motor 2.2 kW") || !strings.HasPrefix(last.Caution, "It is 48 kg: hoist, with rated slings") {
		t.Errorf("%+v", last)
	}
	for item, count := range map[string]int{"Gear motor 2.2 kW, 32 rev/min, flange 265, spigot 230": 1, "Bolt M12 x 60 8.8 with nut and two washers": 4, "Bolt M6 x 25 8.8 with lock nut, as stop of the wire cutter": 5} {
		if i := slices.IndexFunc(p.Bought, func(r plan.BoughtRow) bool { return r.Item == item }); i < 0 || p.Bought[i].Quantity != count {
			t.Errorf("%d × %s is not in the list to buy", count, item)
		}
	}
	job := wholeDemo(t, "pugmill", [3]string{"job.yaml", "kg: 48", "lb: 100"}) // 45.359 kg
	isMotor := func(e parts.Loose) bool { return e.As == parts.AMotor }
	if i := slices.IndexFunc(job.Loose, isMotor); i > 0 { // listed before the coupling on the shaft that it stands before
		job.Loose[i-1], job.Loose[i] = job.Loose[i], job.Loose[i-1]
	}
	pounds, err := draft(job)
	if err != nil {
		t.Fatal(err)
	}
	if again := jointNamed(t, pounds, "coupling-guard"); !strings.HasPrefix(again.Steps[0].Do[0], "Flexible coupling") || again.Steps[1].Do[0] != last.Do[0] {
		t.Errorf("the motor comes before its coupling: %+v", again.Steps[:2])
	}
	if got := motor.MassKg - jointNamed(t, pounds, "coupling-guard").MassKg; math.Abs(got-2.641) > 0.001 {
		t.Errorf("48 kg less 100 lb: %v kg", got)
	}
}

// TestCoupledBeforeItTurns: what the motor drives is not felt by hand in a step before it comes to turn.
func TestCoupledBeforeItTurns(t *testing.T) {
	t.Parallel()
	p := planned(t, editedDemo(t, "pugmill", "job.yaml", "after: coupling-guard, first: yes, kg: 10", "after: front-bearing, kg: 10"))
	for _, j := range p.Joints {
		says(t, j, nil, []string{"three turns each way"})
	}
}

// TestBeltIsTensioned: what is bolted in slots before its belt comes is set when that is on; where the belt is there, now.
func TestBeltIsTensioned(t *testing.T) {
	t.Parallel()
	const (
		flat   = "kind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 160}\nholes: [{name: feet, at: [[-60, -40], [-60, 40]], size: M6 clearance}]\n"
		rail   = "part: rail\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {rectangle: [30, 120]}\nholes: [{name: h, at: [[0, -40], [0, 40]], size: M6 clearance}]\n"
		slide  = "{name: slide, bolt: {through: top.slots, into: rail.h, bolt: M6 8.8, washer: yes, nut: yes, adjust: 5}, face: front-on-back}"
		foot   = "{name: foot, bolt: {through: top.feet, into: base.feet, bolt: M6 8.8, nut: yes}, face: back-on-front, AFTER}"
		joints = slide + "\n  - " + foot + "\nloose:\n  - {item: V-belt SPZ 800, how: laid on, after: foot}"
	)
	top, base := "part: top\n"+flat+"slots: [{name: slots, at: [[0, -40], [0, 40]], width: 6.6, length: 20, turn: 0}]\n", "part: base\n"+flat
	p := planned(t, jobOf(t, strings.Replace(joints, "AFTER", "after: slide", 1), top, base, rail))
	says(t, jointNamed(t, p, "slide"), []string{"along the slots of top, and may be by 5 mm at most; it is set there when V-belt SPZ 800 is on."}, []string{"as far as nothing asks"})
	says(t, jointNamed(t, p, "foot"), []string{"Loosen the bolts that hold top and rail together, shift rail along the slots"}, nil)
	p = planned(t, jobOf(t, strings.NewReplacer("AFTER", "after: slide", "V-belt SPZ 800", "Roller chain 08B").Replace(joints), top, base, rail))
	says(t, jointNamed(t, p, "foot"), []string{"along the slots until the chain has the slack that its maker says"}, []string{"tension"})
	p = planned(t, jobOf(t, strings.Replace(joints, "AFTER", "before: slide", 1), top, base, rail))
	says(t, jointNamed(t, p, "slide"), []string{"as far as nothing asks for another"}, nil)
	says(t, jointNamed(t, p, "foot"), nil, []string{"Loosen the bolts"})
}

// TestBeltLeavesBearings: the belt is tensioned by the plate that its motor stands on, once with the bolts of both its joints loose,
// and not by the arm that carries a bearing of the shaft that it drives; where the motor is in no slots, by that.
func TestBeltLeavesBearings(t *testing.T) {
	t.Parallel()
	const (
		wall   = "part: wall\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {rectangle: [500, 200]}\nholes: [{name: arm, at: [[-150, -50], [-150, 50]], size: M8 clearance}, {name: one, at: [[50, -60], [50, 60]], size: M8 clearance}, {name: two, at: [[150, -60], [150, 60]], size: M8 clearance}]\n"
		arm    = "part: arm\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {rectangle: [80, 150]}\nbore: {diameter: 52, fit: H7}\nslots: [{name: slots, at: [[0, -50], [0, 50]], width: 9, length: 20, turn: 0}]\n"
		motor  = "part: motor\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [160, 180]}\nbore: {diameter: 60, fit: H8}\nholes: [{name: flange, circle: {pcd: 75, count: 4, first: 45}, size: M6 clearance}]\nslots: [{name: one, at: [[-50, -60], [-50, 60]], width: 9, length: 20, turn: 0}, {name: two, at: [[50, -60], [50, 60]], width: 9, length: 20, turn: 0}]\n"
		shaft  = "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 35, length: 90, cut: saw}\nprofile: {outside: [{name: body, diameter: 31, length: 40}, {name: seat, diameter: 25, fit: k6, length: 45}]}\n"
		bolted = ", bolt: M8 8.8, washer: yes, nut: yes, adjust: 4}, face: back-on-front}\n  - "
		joints = "{name: arm, bolt: {through: arm.slots, into: wall.arm" + bolted + "{name: one, bolt: {through: motor.one, into: wall.one" + bolted + "{name: two, bolt: {through: motor.two, into: wall.two" + bolted +
			"{name: bearing, ball-bearing: {bearing: 6205-2RS, housing: arm.bore, shaft: shaft.seat, rotating: inner}, level: front-with-front, below: 0, after: two}\n" +
			"loose:\n  - {item: V-belt SPZ 800, how: laid on, after: bearing}\n  - {item: motor 0.5 kW, how: bolted on, after: two, kg: 8, stands: {on: motor.flange, diameter: 100, length: 150}}\n" +
			"motor: {kw: 0.5, volts: 400, phases: 3, speed: 1400, rotation: either, seen-from: drive-end, drives: shaft.seat, through: belt, earth: foot, emergency-stop: front}\n"
	)
	p := planned(t, jobOf(t, joints, wall, arm, motor, shaft))
	says(t, jointNamed(t, p, "arm"), []string{"along the slots of arm, and may be by 4 mm at most."}, []string{"V-belt"})
	says(t, jointNamed(t, p, "two"), []string{"it is set there when V-belt SPZ 800 is on."}, nil)
	says(t, jointNamed(t, p, "bearing"), []string{"Loosen the bolts that hold motor and wall together, shift motor along the slots until the belt has the tension that its maker says, and tighten them again as in their own steps."}, []string{"shift arm"})
	fixed := strings.Replace(strings.Replace(joints, "one, bolt: M8 8.8, washer: yes, nut: yes, adjust: 4", "one, bolt: M8 8.8, washer: yes, nut: yes", 1), "two, bolt: M8 8.8, washer: yes, nut: yes, adjust: 4", "two, bolt: M8 8.8, washer: yes, nut: yes", 1)
	p = planned(t, jobOf(t, fixed, wall, arm, motor, shaft))
	says(t, jointNamed(t, p, "bearing"), []string{"shift arm along"}, []string{"shift motor"})
}

// The nut of a bearing that the job orders itself is bought once, and is on before the cone is set by it.
func TestNutIsOrdered(t *testing.T) {
	t.Parallel()
	for item, own := range map[string]bool{"shaft nut KMK 8 (M40 × 1.5)": true, "shaft nut KM 8 with its washer": true, "shaft nut KM80": false, "shaft nut M40x15": false, "washer M40x1.5": false} {
		p := planned(t, editedDemo(t, "pugmill", "job.yaml", "loose:\n", "loose:\n  - {item: \""+item+"\", how: on the thread, after: rear-bearing}\n"))
		bought := slices.ContainsFunc(p.Bought, func(r plan.BoughtRow) bool { return r.Item == "Nut M40x1.5" })
		steps := jointNamed(t, p, "rear-bearing").Steps
		put := slices.IndexFunc(steps, func(s plan.JointStep) bool { return s.Title == "Put in" })
		if bought == own || own == (put == len(steps)-1) {
			t.Errorf("%s: %v, row %d of %d", item, bought, put, len(steps))
		}
	}
}

// What is put in for one step alone comes off in it, where its own words do not say so.
func TestComesOffAgain(t *testing.T) {
	t.Parallel()
	for how, want := range map[string]bool{"stood in a hole of the hopper grille by hand to pour water": true, "stood in a hole of the hopper grille by hand to pour water; out before clay goes in": false} {
		p := planned(t, editedDemo(t, "pugmill", "job.yaml", "stood in a hole of the hopper grille by hand to pour water; out before clay goes in.", how))
		if got := strings.Contains(stepText(jointNamed(t, p, "hopper")), "It comes off again before the next step."); got != want {
			t.Errorf("%s: %v", how, got)
		}
	}
}

// The nut that keeps a hub, ordered by the job, is bought once and comes before it is tightened.
func TestNutOfAHubIsOrdered(t *testing.T) {
	t.Parallel()
	for item, own := range map[string]bool{"hexagon nut M36 × 3 LH": true, "hexagon nut M36 × 3": false, "hexagon nut M36": false} {
		p := planned(t, editedDemo(t, "pugmill", "job.yaml", "loose:\n", "loose:\n  - {item: \""+item+"\", how: on the nose, after: auger}\n"))
		bought := slices.ContainsFunc(p.Bought, func(r plan.BoughtRow) bool { return strings.HasPrefix(r.Item, "Nut M36x3") })
		var order []string
		for _, s := range jointNamed(t, p, "auger").Steps {
			order = append(order, s.Title)
		}
		if put := slices.Index(order, "Put in"); bought == own || own != (put == slices.Index(order, "Keep")-1) {
			t.Errorf("%s: bought %v, %v", item, bought, order)
		}
	}
}

// A right-hand nut on a shaft that turns clockwise seen from it lags behind and comes off, a left-hand one on a shaft that
// turns the other way;
// the thicker plate has the longer thread of a made stud.
func TestNutsAndStudsSayTheirSide(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "motor"), []string{"Back thread, 44 long, through Motor adapter; front thread, 38 long, through Housing plate."}, nil)
	for _, c := range []struct{ file, from, to, turns, bought string }{
		{"job.yaml", "rotation: counter-clockwise", "rotation: counter-clockwise", "", "Nut M36x3 LH"},
		{"auger-shaft.yaml", "M36x3 LH", "M36x3", "clockwise", "Nut M36x3, self-locking"},
		{"job.yaml", "rotation: counter-clockwise", "rotation: clockwise", "counter-clockwise", "Nut M36x3 LH, self-locking"},
		{"job.yaml", "seen-from: non-drive-end", "seen-from: drive-end", "counter-clockwise", "Nut M36x3 LH, self-locking"},
		{"job.yaml", "rotation: counter-clockwise", "rotation: either", "", "Nut M36x3 LH"},
		{"job.yaml", "drives: auger-shaft.drive", "drives: auger-shaft.nose", "counter-clockwise", "Nut M36x3 LH, self-locking"},
	} {
		p, err := draft(editedDemo(t, "pugmill", c.file, c.from, c.to))
		if err != nil {
			t.Fatal(err)
		}
		if c.turns != "" {
			says(t, jointNamed(t, p, "auger"), []string{"The shaft turns " + c.turns + " seen from this nut", "self-locking"}, nil)
		} else {
			says(t, jointNamed(t, p, "auger"), nil, []string{"seen from this nut"})
		}
		if !slices.ContainsFunc(p.Bought, func(r plan.BoughtRow) bool { return r.Item == c.bought }) {
			t.Errorf("%s: no %s is bought", c.to, c.bought)
		}
	}
	p, err := draft(editedDemo(t, "pugmill", "pillar.yaml", "thread: M16, length: 38", "thread: M16, length: 44"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "motor"), nil, []string{"long, through"})
}

// EN 10210-2: the outside of a tube of 168.3 lies within ±1 %, and its bore with it.
func TestRegisterInATubeAsBought(t *testing.T) {
	t.Parallel()
	const fixed, seat = "fit: {plus-minus: 0.1}", ", length: 4, seat: barrel tube bore"
	const drawn = "fit: {measured: [0.7, 0.9]}" + seat + " as measured"
	for to, want := range map[string][]plan.Problem{fixed + seat: {{Kind: plan.RegisterTube}}, fixed + seat + " as measured": {{Kind: plan.RegisterTube}}, "fit: {measured: [0.7, 0.8]}" + seat: nil} {
		p, err := draft(editedDemo(t, "pugmill", "lantern.yaml", drawn, to))
		if err != nil {
			t.Fatal(err)
		}
		got := jointNamed(t, p, "barrel").Problems
		if len(got) != len(want) || len(got) > 0 && (got[0].Kind != want[0].Kind || math.Abs(got[0].Args[1].Value-1.683) > 1e-9) {
			t.Errorf("%s: %+v", to, got)
		}
	}
}

// What is put on after the very first joint is bought too, for its step.
func TestBoughtForTheFirstStep(t *testing.T) {
	t.Parallel()
	job := jobOf(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8}, face: back-on-front}", drilledPlate("a", "M8 clearance", ""), drilledPlate("b", "M8 tap", ""))
	job.Loose = []parts.Loose{{Item: parts.Text{Value: "motor, 2 kW"}, How: parts.Text{Value: "on its foot"}, After: parts.Text{Value: "j"}, Count: 3}}
	p := planned(t, job)
	i := slices.IndexFunc(p.Bought, func(r plan.BoughtRow) bool { return r.Item == "Motor, 2 kW" })
	if i < 0 || p.Bought[i].Quantity != 3 || p.Bought[i].For != "step 1" {
		t.Errorf("%+v", p.Bought)
	}
}

// What is turned and lies loose along the axis of a part says which way its front looks where its ends are not
// alike: the back of the stop collars on the front of the guide tube, and their front on its back. The lock collar is
// alike both ways, the rain cone is not turned.
func TestLooseLooks(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "gatejack")
	says(t, jointNamed(t, p, "yoke"), []string{"The front of Stop collar looks the same way as that of Guide tube."}, []string{"front of Rain cone looks"})
	says(t, jointNamed(t, p, "upper-bearing"), nil, []string{"front of Lock collar looks"})
	vice, err := read.Load(golden.Job(t, "testdata/worked/vice.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, planned(t, vice), "nut"), []string{"The front of Spindle looks the other way than that of Spindle nut."}, nil)
}
