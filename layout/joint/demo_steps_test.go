package joint_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
)

// says fails unless the step texts of a joint hold all of want and none of not.
func says(t *testing.T, j *plan.JointPlan, want, not []string) {
	t.Helper()
	text := stepText(j) + strings.Join(j.Cautions, "\n")
	for _, c := range j.Checks {
		text += "\n" + c.What + ": " + c.Limits + ", " + c.Gauge
	}
	for _, f := range j.Figures {
		text += "\n" + f.Label + ": " + f.Value
	}
	for _, w := range want {
		if !strings.Contains(text, w) {
			t.Errorf("%s does not say %q:\n%s", j.Name, w, text)
		}
	}
	for _, n := range not {
		if strings.Contains(text, n) {
			t.Errorf("%s says %q:\n%s", j.Name, n, text)
		}
	}
}

// A branch is welded round itself: its own clock, and the gap its sheet asks for.
func TestBranchWeldAgreesWithTheBranch(t *testing.T) {
	t.Parallel()
	j := jointNamed(t, demoPlan(t, "pugmill"), "inlet-stub")
	says(t, j, []string{"clock of Inlet stub", "Gap 1.5.", "square butt weld", "groove filled: no edge of the gap"}, []string{"clock of Barrel tube", "No gap", "Weld gauge on the throat"})
	// Beyond its gap it opens by 5.465 at the flanks; 7.0 mm² of groove and cap and 4.6 on an average, over 468.55 mm, of steel 7850 kg/m³
	// are 0.0426 kg, of which MAG wastes 8 %.
	says(t, j, []string{"At its flanks, 90° and 270°, the outside of its wall stands up to 7 off Barrel tube: more runs there, from the root out"}, nil)
	if math.Abs(j.Weld.DepositedKg-0.0426) > 0.0006 || j.Weld.BuyKg != 0.046 && j.Weld.BuyKg != 0.047 {
		t.Errorf("weld metal %v kg, buy %v", j.Weld.DepositedKg, j.Weld.BuyKg)
	}
	if j.Weld.ClockOf != "Inlet stub" || j.Weld.GapMm != 1.5 {
		t.Errorf("clock of %s, gap %v", j.Weld.ClockOf, j.Weld.GapMm)
	}
	p, err := draft(editedDemo(t, "pugmill", "job.yaml", "to: barrel-tube.inlet, type: square, ground: inside", "to: barrel-tube.inlet, type: fillet"))
	if err != nil {
		t.Fatal(err)
	}
	// The gap takes from the leg (AWS D1.1 adds one over 1/16 in to it): 3 + 1.5.
	if w := jointNamed(t, p, "inlet-stub").Weld; w.LegMm != 4.5 || w.GapMm != 1.5 {
		t.Errorf("leg %v, gap %v", w.LegMm, w.GapMm)
	}
}

// A fillet stands on square faces: over a chamfer that is drawn for a weld its leg
// has no edge, and the groove is asked for.
func TestFilletOverAWeldChamfer(t *testing.T) {
	t.Parallel()
	p, err := draft(editedDemo(t, "gatejack", "job.yaml", "pedestal-flange#2.bore, to: guide-tube.outside, type: bevel", "pedestal-flange#2.bore, to: guide-tube.outside, type: fillet, size: 1/4"))
	if err != nil {
		t.Fatal(err)
	}
	found := func(j *plan.JointPlan, k plan.ProblemKind) (args []string) {
		for _, pr := range j.Problems {
			if pr.Kind == k {
				for _, a := range pr.Args {
					args = append(args, a.Text)
				}
			}
		}
		return args
	}
	if got := found(jointNamed(t, p, "foot-flange-weld"), plan.FilletOnChamfer); len(got) != 1 || got[0] != "bore back of Pedestal flange 2" {
		t.Errorf("the fillet over the chamfer: %v", got)
	}
	if got := found(jointNamed(t, p, "top-flange-weld"), plan.FilletOnChamfer); got != nil {
		t.Errorf("the groove in the chamfer: %v", got)
	}
	p, err = draft(editedDemo(t, "gatejack", "job.yaml", "UNC A2-70, head: socket, nut", "UNC grade 5, head: socket, nut"))
	if err != nil {
		t.Fatal(err)
	}
	if got := found(jointNamed(t, p, "housing"), plan.SocketGrade); !slices.Equal(got, []string{"socket", "grade 5"}) {
		t.Errorf("a socket head of grade 5: %v", got)
	}
	if got := found(jointNamed(t, p, "yoke"), plan.SocketGrade); got != nil {
		t.Errorf("a socket head of A2-70: %v", got)
	}
}

// Seals, O-rings, nipples and plugs go in at the first joint that bolts their part,
// and at no other; a retaining ring waits for what it holds.
func TestSmallPartsAreFitted(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "gland"), []string{"into inspection of Bearing housing: a greased rag takes the chips out of the hole, no air: bearings lie open behind it."}, []string{"clear the hole of chips"})
	says(t, jointNamed(t, p, "gland"), []string{"Fit small parts", "Press seal 60x80x8 into register of Gland ring: square, by its rim, the lip greased and to the front of Gland ring; nothing sharp may pass the lip.", "Retaining ring DIN 472 80 × 2.5 into seal ring of Gland ring over the seal, with its pliers, eyes protected: it snaps to the floor all round.", "Lay O-ring 92 × 1.5, greased, into face seal of Gland ring", "Grease nipple M10x1 into grease port of Bearing housing", "Plug G1/2 into inspection of Bearing housing"}, nil)
	for _, j := range p.Joints {
		if j.Name != "gland" && strings.Contains(stepText(j), "Fit small parts") {
			t.Errorf("%s fits small parts again:\n%s", j.Name, stepText(j))
		}
	}
}

// 1/4-20 UNC of F835, its countersunk head for 0.8 of A574's 140,000 psi, dry: 0.2 × 0.75 × 0.8 × 140,000 × 0.0318 in² ×
// 1/4 in = 133.6 lb in = 11.1 lb ft = 15.1 N m (ASTM A574 Table 3, T = K F d); its shares are read on the same wrench.
func TestTorqueIsRoundedOnce(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "cap"), []string{"First 3 lb ft (5 N m), second 8 lb ft (11 N m), third 11 lb ft (15 N m)", "oiled they take 8 lb ft (11 N m)"}, []string{"lb in", "16 N m"})
}

// A gauge reads the throat of a fillet; of a groove it reads only that it is full.
func TestWeldsAreMeasuredByWhatReadsThem(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "front-flange-weld"), []string{"Straight edge on the back of Barrel flange 1, along a radius over the weld", "groove filled: level or proud all along, straight edge, eye"}, []string{"throat: ", "Weld gauge on the throat", "back to back"})
	says(t, jointNamed(t, p, "inlet-stub"), []string{"Set: Inlet stub on Barrel tube, its axis through the outside of Barrel tube at clock 0°, 140 from the back face, 90° between the axes, its TOP to the front of Barrel tube, the middle of its free end 274.9 from the far side of Barrel tube.", "Look along the weld all round, with a light: full, no edge of the gap to be seen, no undercut.", "groove filled: no edge of the gap to be seen, eye, weld gauge",
		// ISO 13920 class A: 1 up to 400, and 6 mm/m: 0.816 of 136
		"axis of Inlet stub: 140.0 – 142.0, tape", "clock: within 1 round, rule", "angle: within 0.82 over 136, square, feeler", // and the flanges stand 1 over the ends of both
		"middle of the front of Inlet flange: 274.9 – 276.9, tape"}, []string{"Straight edge", "straight edge"})
	for _, name := range []string{"front-flange-weld", "rear-flange-weld"} {
		says(t, jointNamed(t, p, name), []string{"Weld from the back of Barrel flange "}, nil)
	}
	says(t, jointNamed(t, p, "inlet-flange-weld"), []string{"Weld from the back of Inlet flange, where its groove is."}, nil)
	says(t, jointNamed(t, p, "hopper-cone"), []string{"Weld gauge on the throat at four places round", "throat: 1.41 or more, weld gauge"}, nil)
	says(t, jointNamed(t, p, "gusset-1"), []string{"at both ends and in the middle of each fillet"}, []string{"four places"})
}

// Tacks of straight seams have a number, a length and an order: two take a third of 125 and
// of 95; two of 50 (4 × 20 is over it) on 300; what is welded round a section is tacked by its side.
func TestStraightSeamsAreTackedByLength(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	for name, want := range map[string]string{
		"upright":        "Tack each seam 2 × 50 long: both ends; one tack on each seam in turn",
		"gusset-1":       "Tack each seam 2 × 21 long on 125, 2 × 16 long on 95: both ends; one tack on each seam in turn",
		"stand-corner-1": "Tack both ends of the cut on the front, 8 long.",
		"stand-leg-1":    "Tack the middle of each side of the section, each tack 12 long.",
		"stand-foot-1":   "Tack the middle of two opposite sides of the section, then of the other two, each tack 15 long.",
		"auger-flight":   "Tack 13 × 10 long, at both ends and every quarter turn",
	} {
		says(t, jointNamed(t, p, name), []string{want}, nil)
	}
	says(t, jointNamed(t, p, "auger-flight"), []string{"the outside true between cones in its bore"}, []string{"on centres"}) // a hub has none
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "frame-corner-1"), []string{"on the front, 0.438 in long"}, nil)
}

// What holds a finished bore true, as the job accepts it, is a step before the first
// weld on the part; after the last it is measured, not bored.
func TestAcceptedBoreIsHeldTrue(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	held, after := "A scrap plug is left in the bore while welding", "Still inside the limits: Housing plate bore 130.00 – 130.04; if not, force nothing into it"
	says(t, jointNamed(t, p, "upright"), []string{held}, []string{after})
	says(t, jointNamed(t, p, "gusset-1"), nil, []string{held, after})
	says(t, jointNamed(t, p, "gusset-4"), []string{after}, []string{held, "Measure what was finished"})
	job := editedDemo(t, "pugmill", "job.yaml", "finding: weld-first, at: gusset-4", "finding: weld-holes, at: gusset-4")
	q, err := draft(job)
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, q, "gusset-4"), []string{"Measure what was finished", "Still inside the limits: Housing plate bore 130.00 – 130.04; if not, force nothing into it"}, []string{"Measure what was held true"})
}

// A pin that was turned to its limits before its foot is welded in a plate is not bored where it stands; nor is
// it where the plate has a bore with limits too.
func TestOutsideOutOfSize(t *testing.T) {
	t.Parallel()
	const pin = "part: pin\nkind: turned\nmaterial: S355\nstock: {round: 40, cut: saw}\nprofile:\n  outside: [{name: tip, diameter: 30, fit: h8, length: 22}, {name: root, diameter: 36, length: 12}]\n"
	const flange = "part: flange\nkind: turned\nmaterial: S355\nstock: {round: 125, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 12}]\n  inside: [{name: hole, diameter: 36, length: 6}, {name: seat, diameter: 50LIMITS, length: 6}]\n"
	for fit, want := range map[string]string{"": "pin tip 29.97 – 30.00; if not, force nothing onto it: ask who drew it.", ", fit: H7": "if not, force nothing together: a bore is bored where it stands, of the rest ask who drew it."} {
		p := filed(t, "{name: foot, weld: {part: pin.root, to: flange.hole, type: fillet}, level: front-with-front, below: 0}\n", pin, strings.Replace(flange, "LIMITS", fit, 1))
		says(t, jointNamed(t, p, "foot"), []string{want}, []string{"force nothing into it"})
	}
}

// TestCupsSayTheirForce: Ø90 K7 (+10, −25 µm) about a cup of 90 0/−18, and Ø80 H7 about one
// of 80 0/−16 (ISO 286-1, ISO 492). 25 µm on a solid Ø90 in Ø180, E 210 GPa, Poisson's ratio
// 0.3: Lamé (Shigley eq. 3-57) gives 21.88 MPa, on 21.75 wide 134.5 kN, of which friction
// takes 0.12: 16.1 kN.
func TestCupsSayTheirForce(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "front-bearing"), []string{
		"It is between 28 µm loose and 25 µm tight: push or press it into Bearing housing front cup square until it sounds home, Bearing housing resting square on its back, the bore clear.", "Over 16.1 kN it is canted: knock it out and start again.",
		"It is loose by 0 – 46 µm: push it by hand into Bearing housing rear cup",
	}, []string{"Push it into"})
	for now, want := range map[string]string{"diameter: 90, fit: P7": "It is 6 – 59 µm tight: press it into", "diameter: 90": "\nPush it into Bearing housing front cup"} { // P7 is −24 to −59
		p, err := draft(editedDemo(t, "pugmill", "bearing-housing.yaml", "diameter: 90, fit: K7", now))
		if err != nil {
			t.Fatal(err)
		}
		says(t, jointNamed(t, p, "front-bearing"), []string{want}, nil)
	}
}

// Welding current goes through no bearing.
func TestReturnClampBesideTheWeld(t *testing.T) {
	t.Parallel()
	p, err := draft(editedDemo(t, "pugmill", "job.yaml", "    after: hopper-cone\n    before: hopper\n", "    after: hopper\n"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "hopper-throat"), []string{"Return clamp on Hopper, bright metal, beside the weld: bearings are in"}, nil)
	says(t, jointNamed(t, p, "hopper-cone"), nil, []string{"Return clamp"})
	for _, j := range demoPlan(t, "pugmill").Joints {
		if strings.Contains(stepText(j), "Return clamp") {
			t.Errorf("%s is welded with bearings in", j.Name)
		}
	}
}

// A part that is set back by 1/32 in is measured by a depth gauge with the general
// tolerance of that length: ISO 2768-m, 0.5 to 3 mm, ±0.1 mm, and on the side that a stop does not meet by what the end of
// the tube may be out of square: by its drawing 0.2 mm; else its sheet asks for 0.1 (0.0313 in + 2 × 0.0039 in), before the
// other end is cut.
func TestPressedPlaceIsMeasured(t *testing.T) {
	t.Parallel()
	mm := jointNamed(t, demoPlan(t, "pugmill"), "front-flange")
	says(t, mm, []string{"seated: 0.9 – 1.3 below, at four places, depth gauge"}, []string{"joint closed", "finish it after pressing"})
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "top-flange"), []string{"seated: 0.028 – 0.039 in below, at four places, depth gauge"}, nil)
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "inlet-flange"), []string{"seated: 0.9 – 1.2 below, at four places, depth gauge"}, nil)
}

// The turn of a nut lies inside the wanted play: 0.001 to 0.003 in at 12 threads per
// inch is 4.32 to 12.96 degrees.
func TestTurnOfTheNutIsInside(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "upper-bearing"), []string{"Tighten Lock collar while turning Drive nut, until it drags", "From no play, 5° to 12° of Lock collar back"}, nil)
}

// Over 33.3 kg, two thirds of 2 × 25, no two people lift, in no list and on no part.
func TestHeavyIsForTheHoist(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	if len(p.Lifts) != 2 || !strings.HasPrefix(p.Lifts[0], "With a hoist or two people: ") || !strings.HasPrefix(p.Lifts[1], "With a hoist only: ") ||
		!strings.Contains(p.Lifts[1], "after step 15: 38") || !strings.Contains(p.Lifts[1], "after step 17: 74") || strings.Contains(p.Lifts[0], "after step 17") {
		t.Errorf("%q", p.Lifts)
	}
	for thick, want := range map[string]string{"20 mm": "", "25 mm": "30 kg: hoist or two people", "50 mm": "60 kg: hoist, with rated slings"} {
		q, err := draft(editedDemo(t, "pugmill", "base-plate.yaml", "stock: {plate: 20 mm", "stock: {plate: "+thick))
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(q.Part("base-plate").Cautions, "\n")
		if want == "" && strings.Contains(text, "hoist") || !strings.Contains(text, want) {
			t.Errorf("%s: %s", thick, text)
		}
	}
}

// A stud that is made is tightened by its material: S355 of 30 mm has 345 MPa
// (EN 10025-2:2004 Table 7), M16 157 mm² (ISO 898-1), K 0.2: 0.75 · 0.9 · 345 · 157 =
// 36.6 kN and 117 N m. Its shoulders hold each plate for itself.
func TestMadeStudHasTorqueAndShoulders(t *testing.T) {
	t.Parallel()
	j := jointNamed(t, demoPlan(t, "pugmill"), "motor")
	if b := j.Bolt; math.Abs(b.PreloadN-36561) > 1 || math.Abs(b.TorqueNm-117) > 0.1 || b.NutClass != "8" || b.GripMm != 20 || !b.Spacer {
		t.Errorf("%+v", b)
	}
	says(t, j, []string{"All 4 by hand through Housing plate, up to their shoulders, a washer and a nut on each.", "of Housing plate, over the studs, a washer and a nut on each.", "third 117 N m", "That is for threads dry; oiled they take 88 N m.", "Clean both faces and the shoulders of the studs", "enters between a shoulder and its face"}, []string{"spanner-tight", "Start the", "under each head", "anywhere round"})
}

// What is lifted weighs its bolts and bearings too. By hand: M10 x 30 hexagon, 16
// across flats and 6.4 high, shank at 9.025 mm, 26.2 g; six with a washer of 20/10.5 ×
// 2 mm (3.6 g) 178 g. A bearing 30208 weighs 0.42 kg, 30210 0.55 kg in makers' lists
// (from memory).
func TestAssembliesWeighTheirFasteners(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	kg := func(name string) float64 { return jointNamed(t, p, name).MassKg }
	if got := kg("lantern") - kg("rear-cover") - p.Part("lantern").MassKg; math.Abs(got-0.1785) > 0.0015 { // two masses to a gram
		t.Errorf("six bolts with washers weigh %v", got)
	}
	if got := kg("front-bearing") - p.Part("bearing-housing").MassKg - p.Part("auger-shaft").MassKg; math.Abs(got-0.55) > 0.02 {
		t.Errorf("bearing 30210 weighs %v", got)
	}
	if got := kg("rear-bearing") - kg("front-bearing"); math.Abs(got-0.42) > 0.02 {
		t.Errorf("bearing 30208 weighs %v", got)
	}
	// M8 x 16 socket: head 13 × 8 less half of its key's 6 mm hexagon, shank at 7.1875: 12.45 g.
	if got := kg("nozzle") - kg("delivery-die") - p.Part("barrel-end").MassKg; math.Abs(got-6*0.01245) > 0.001 {
		t.Errorf("six socket screws weigh %v", got)
	}
	// The coupling and the gear motor of 10 and 48 kg, which the job weighs, come with the guard and two
	// M6 x 12 of about 4 g; the links come off again.
	if got := kg("coupling-guard") - kg("motor") - p.Part("coupling-guard").MassKg - 58; got < 0.005 || got > 0.015 {
		t.Errorf("coupling and motor weigh %v more", got)
	}
	// Four pillars with two nuts M16 (24 × 14.8, 34.6 g) and two washers (30/17 × 3, 11.3 g) each.
	if got := kg("motor") - kg("switch-bracket") - p.Part("motor-adapter").MassKg; math.Abs(got-4*(p.Part("pillar").MassKg+0.0918)) > 0.002 {
		t.Errorf("four studs weigh %v", got)
	}
	// The jack's key bar goes in by hand once the stay is on.
	j := demoPlan(t, "gatejack")
	if got := jointNamed(t, j, "stay").MassKg - jointNamed(t, j, "foot-flange-weld").MassKg - j.Part("stay").MassKg; math.Abs(got-j.Part("key-bar").MassKg) > 0.001 {
		t.Errorf("the key bar weighs %v", got)
	}
}

// Nothing is faced where a rule only asks for the weld before the bolts.
func TestOrderSaysOnlyWhatIsDone(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		for _, j := range demoPlan(t, name).Joints {
			last := 1
			for _, why := range j.Why { // steps by their numbers, which alone stand on the sheets
				if n := why.Step; n < last || n >= j.N || why.Why == "" || strings.Contains(why.Why, "weld and face") {
					t.Errorf("%s: %+v", j.Name, why)
				}
				last = why.Step
			}
		}
	}
}

// The page of a bearing has the rings of the cups that go in with it, and no other: both cups
// of a pair between two shoulders are in before the shaft is.
func TestRingsOfTheStep(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	first, second := jointNamed(t, p, "front-bearing").Bearing, jointNamed(t, p, "rear-bearing").Bearing
	if want := []plan.PushRing{{InMm: 85, OutMm: 89}, {InMm: 74, OutMm: 79}}; !slices.Equal(first.Rings, want) || len(second.Rings) > 0 {
		t.Errorf("%v and %v, want %v and none", first.Rings, second.Rings, want)
	}
	if !first.Sleeve || !second.Sleeve || jointNamed(t, demoPlan(t, "gatejack"), "upper-bearing").Bearing.Sleeve {
		t.Error("a sleeve where the cone slides on, or none where it is pressed")
	}
}

// Rollers are packed while they can be reached: of a cone against its shoulder after it is on,
// of one that slides into its cup before, and of one that goes on hot from its large end when
// it is cold. Common practice, no source.
func TestGreaseWhileTheRollersAreOpen(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ job, joint, before, after, says string }{
		{"pugmill", "front-bearing", "Cone of", "Grease", "until all room there is full: lithium"},
		{"pugmill", "rear-bearing", "Cone of", "Grease", "When the cone is cold, work grease in by hand between rollers and cage from its large end"},
		{"gatejack", "upper-bearing", "Grease", "Cone of", "before the cone goes on: calcium"},
	} {
		j := jointNamed(t, demoPlan(t, c.job), c.joint)
		at := func(title string) int {
			return slices.IndexFunc(j.Steps, func(s plan.JointStep) bool { return strings.HasPrefix(s.Title, title) })
		}
		if at(c.before) > at(c.after) {
			t.Errorf("%s: %s after %s", c.joint, c.before, c.after)
		}
		says(t, j, []string{c.says}, nil)
	}
}

// The nut of the jack's bearings is a split ring: #8-32 of A574 takes K F d = 0.15 × 0.75 ×
// 0.0140 in² × 140 ksi × 0.164 in = 36.2 lb in, 4.1 N m. The mill's nut is bought with its lock.
func TestNutIsLockedOnItsStep(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "upper-bearing"), []string{"Lock it by the clamp of Lock collar: screw #8-32 UNC x 1/2 in, A574 to 36 lb in (4 N m), oiled"}, nil)
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "rear-bearing"), []string{"Lock the nut by its lock: if no slot meets a tab inside these limits, change the washer or the nut, do not go past them. Turn again."}, nil)
}

// Holes with a fit take pins, and no anchors.
func TestNoAnchorsInPinHoles(t *testing.T) {
	t.Parallel()
	anchors := "  - {name: floor-anchor, along: {from: right, first: 25}, size: M12 clearance coarse}\n"
	p := planned(t, editedDemo(t, "pugmill", "stand-foot.yaml", anchors, anchors+"  - {name: dowels, along: {from: right, first: 10}, size: {diameter: 8, fit: H7}}\n"))
	if i := slices.IndexFunc(p.Bought, func(r plan.BoughtRow) bool { return strings.HasPrefix(r.Item, "Anchor for holes") }); i >= 0 {
		t.Errorf("%+v", p.Bought[i])
	}
}

// A bush that is alike all round has no TOP to be turned to, and one with an oil hole has.
func TestNoTopOfARound(t *testing.T) {
	t.Parallel()
	const door = "part: door\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {square: 100}\nbore: {diameter: 35, fit: H7}\n"
	for more, want := range map[string]bool{"": false, "radial: [{name: oil, clock: 0, axial: 10, size: 4 mm}]\n": true, "top: scribe\n": true} {
		p := filed(t, "{name: j, press: {shaft: bush.body, bore: door.bore}, level: back-with-back}", door,
			"part: bush\nkind: turned\nmaterial: CuSn12-C\nstock: {round: 50 mm}\nprofile:\n  outside: [{name: body, diameter: 35, fit: n6, length: 20}]\n  inside: [{name: bore, diameter: 25, length: 20}]\n"+more)
		if j := jointNamed(t, p, "j"); strings.Contains(stepText(j)+j.How, "TOP") != want || (len(j.Clock) > 0) != want {
			t.Errorf("%q: %s\n%+v", more, stepText(j), j.Clock)
		}
	}
}

// What is put in by hand says of how many it is; one bolt has no order to be tightened in; anchors go through
// slots as well.
func TestHowMany(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "motor"), []string{"2 × Lifting link: to hoist"}, nil)
	p := filed(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M12 8.8, washer: yes}, face: back-on-front, anchored: b}",
		"part: a\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm, cut: laser}\noutline: {square: 150}\nholes:\n  - {name: h, at: [[0, 0]], size: M12 clearance}\n",
		"part: b\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: laser}\noutline: {square: 150}\nholes:\n  - {name: h, at: [[0, 0]], size: M12 tap}\nslots:\n  - {name: floor, at: [[60, 60], [-60, -60]], width: 14, length: 26}\n")
	says(t, jointNamed(t, p, "j"), []string{"to the floor, before anything more goes on: 2 × anchor for slots 14 wide, M12 at most (floor), the kind", "By hand through a into b, a washer", "First 26 N m, second 62 N m, third 88 N m, then once more."}, []string{"All 1", "Order", "round once more"})
}

// What fixes the stand to the floor goes through the hole that no bolt of the job uses, one in
// each of four feet, and is on the list to buy; so are the sleeves in its tubes, 50 less two
// walls of 4 long. An angle of 2.5 in with a wall of 0.25 in stands 2.25 in high on the edge of
// its other leg; turned over it lies on the leg that its anchors hold.
// Threads that jack parts apart have screws two diameters longer than the part: of 12 M8 30,
// of 1/4 in 1/4-20 3/4 in.
func TestAnchorsAndSleevesAreBought(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]map[string]int{
		"pugmill": {"Anchor M12": 4, "Sleeve of pipe, Ø20 outside or more, bore Ø13.5 or more, 46 long": 6, "Sleeve of pipe, Ø10 outside or more, bore Ø6.6 or more, 46 long": 4, "Dowel pin 4 m6 × 16": 3, "Jacking screw M8 x 30, full thread": 2, "Jacking screw M8 x 25, full thread": 2, "Jacking screw M6 x 35, full thread": 2, "Screw M6 x 12 8.8 for the guard, with shims 6 x 12 from 0.1 to 2": 2, "Jacking screw M12 x 45, full thread": 4, "Screw M8 x 12 8.8 with two contact washers, for the earth": 1, "Screw M8 x 45 8.8, countersunk head, with nut and washer": 3},
		"gatejack": {"Anchor 3/8-16 UNC": 8, "Spacer of pipe, bore over Ø0.406 in, 2.25 in long": 8, "Screw 1/4-20 UNC x 3/8 in, hexagon head, grade 5, two contact washers, for earth": 1,
			"Jacking screw 1/4-20 UNC x 3/4 in, full thread": 2, "Jacking screw 5/16-18 UNC x 1 3/4 in, full thread": 2, "Jacking screw 3/8-16 UNC x 1 1/4 in, full thread": 2, "Screw 3/8-16 UNC x 5/8 in, hexagon head, grade 5": 3, "Set screw 1/4-20 UNC, cone point, 3/4 in long": 2, "Screw 1/4-20 UNC x 1-1/4 in, grade 5, 82° head, nut": 3, "Screw #8-32 UNC x 5/8 in, socket head, A574": 2},
	} {
		p := demoPlan(t, name)
		got := map[string]int{}
		for _, row := range p.Bought {
			if slices.ContainsFunc([]string{"Anchor", "Spacer", "Jacking", "Sleeve", "Set screw", "Screw", "Dowel"}, func(word string) bool { return strings.HasPrefix(row.Item, word) }) {
				got[row.Item] = row.Quantity
			}
		}
		if !maps.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "base-far"), []string{"Set the 4 × Stand foot level and fix them to the floor", "4 × anchor M12 (floor anchor), the kind, length and torque by its maker"}, nil)
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "yoke-near"), []string{"8 × anchor 3/8-16 UNC (ties)", "The leg that is bolted stands clear of the floor: a spacer of pipe, bore over Ø0.406 in, 2.25 in long by the drawing, cut to the gap there as it is levelled, round each anchor under it", "Start those of Yoke plate and Frame rail 2 too, before any is pulled tight"}, nil)
	p, err := draft(editedDemo(t, "gatejack", "job.yaml", "anchored: frame-rail", "anchored: frame-end"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "yoke-near"), []string{"no holes for anchors are drawn"}, nil)
	if p, err = draft(editedDemo(t, "gatejack", "job.yaml", "bolt: 5/8-11 UNC grade 5, washer: yes, nut: yes}\n    face: back-on-front\n    rotate: 180", "bolt: 5/8-11 UNC grade 5, washer: yes, nut: yes}\n    face: back-on-back\n    rotate: 180")); err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "yoke-near"), []string{"8 × anchor 3/8-16 UNC (ties)"}, []string{"spacer"})
}

// Two posts stand on the floor, and a beam ties them with the second of its joints: their anchors are tightened then, so that the posts come
// to stand as the beam has them. One post, and two that a plate under both ties before, have theirs tight at once; two that nothing
// ties too. Common practice, no source.
func TestAnchorsTightenedOnceTied(t *testing.T) {
	t.Parallel()
	const tight, later = "to the floor, before anything more goes on", "the nuts of their anchors run down by hand and no more until a later joint has tied them"
	plate := func(name, more string) string {
		return "part: " + name + "\ntitle: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm, cut: laser}\noutline: {rectangle: [600, 150]}\n" + more
	}
	const far = "\n  - {name: far, bolt: {through: beam.right, into: post#2.h, bolt: M12 8.8}, face: back-on-front}"
	for _, c := range []struct{ first, far, count, near, last string }{
		{"", far, "2", later, "Now that they are tied, tighten the anchors of the 2 × post crosswise"},
		{"", "", "2", tight, ""},
		{"", "", "1", tight, ""},
		{"{name: w1, weld: {part: post#1.outline, to: base.outline, type: fillet}, place: {on: front, with: back, at: [-350, 0], top: up}}\n  - {name: w2, weld: {part: post#2.outline, to: base.outline, type: fillet}, place: {on: front, with: back, at: [350, 0], top: up}}\n  - ", far, "2", tight, ""},
	} {
		p := filed(t, c.first+"{name: near, bolt: {through: beam.left, into: post#1.h, bolt: M12 8.8}, face: back-on-front, anchored: post}"+c.far,
			plate("beam", "holes:\n  - {name: left, at: [[-250, 0]], size: M12 clearance}\n  - {name: right, at: [[250, 0]], size: M12 clearance}\n"),
			plate("post", "quantity: "+c.count+"\nholes:\n  - {name: h, at: [[0, 0]], size: M12 tap}\n  - {name: floor, at: [[-100, 0], [100, 0]], size: M16 clearance}\n"), plate("base", ""))
		says(t, jointNamed(t, p, "near"), []string{c.near}, nil)
		for _, j := range p.Joints {
			if has := strings.Contains(stepText(j), "Now that they are tied"); has != (j.Name == "far" && c.last != "") || has && !strings.Contains(stepText(j), c.last) {
				t.Errorf("%+v: %s: %s", c, j.Name, stepText(j))
			}
		}
	}
}

// A part that came with an earlier step is not offered up again; the step that closed its
// faces has them cleaned. The pitch of a flight has the limits of its own sheet, ISO 13920 class A.
func TestWhatLiesIsNotOfferedUp(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "base-far"), []string{"Offer up", "The faces of Stand rail 1 and Base plate close here too: clean them as well."}, nil)
	says(t, jointNamed(t, p, "base-near"), []string{"See that it lies", "Stand rail 1 came to Base plate with an earlier step: front of Stand rail 1 on the back of Base plate"}, []string{"Offer up", "Clean both faces"})
	says(t, jointNamed(t, p, "auger-flight"), []string{"pitch of the flight: 109.0 – 111.0, rule along Auger hub", "opposite on Auger hub;"}, []string{"shaft"})
}

// A plate that stands on an edge is square within ISO 13920 class A of its height, 320 and 110:
// at most 20', 6 mm per m. What is bolted stands by it, so it is measured cold too; a gusset
// carries nothing.
func TestUprightPlatesAreSquare(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "upright"), []string{"Check square on both sides, within 1.9 over 320; knock straight now.", "Housing plate square to Base plate: within 1.9 over 320, square, feeler"}, nil)
	says(t, jointNamed(t, p, "gusset-1"), []string{"Check square on both sides, within 0.7 over 110"}, []string{"square to"})
}

// All tacks of a long round seam stand in words, in their order: each opposite the one before.
func TestAllTacksAreNamed(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "hopper-throat"), []string{"Tack 16 × 8 long at 0°, 180°, 90°, 270°, 45°, 225°, 135°, 315°, 112.5°, 292.5°, 67.5°, 247.5°, 22.5°, 202.5°, 337.5°, 157.5°, in this order"}, []string{"…"})
}

// A weld that the job wants ground flush is ground in its step, after it is cold, and that is
// looked for before going on; another is not.
func TestGroundWeld(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "inlet-stub"), []string{"Then grind the weld flush inside with the metal beside it, not below it.", "ground flush inside: no step that a finger finds, nothing below the metal beside it, eye, finger"}, nil)
	says(t, jointNamed(t, p, "inlet-flange-weld"), nil, []string{"grind the weld", "ground flush"})
	p, err := draft(editedDemo(t, "pugmill", "job.yaml", "ground: inside", "ground: both"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "inlet-stub"), []string{"flush inside and outside with", "ground flush inside and outside: no step"}, nil)
}

// A weld is made along what it joins: both sides of a plate, one side, or round the section of a
// bar; and sleeves for bolts go into a tube before the weld that closes the end nearer to its holes,
// whatever copy of it is welded.
func TestSeamOfABarsSection(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	section := "Each side of the section from its middle outward, opposite sides in turn."
	says(t, jointNamed(t, p, "upright"), []string{"turn and turn about on the two sides", "in the middle, on each side."}, []string{section})
	says(t, jointNamed(t, p, "stand-leg-1"), []string{"then the flush sides, which have no corner: over the round corner of Stand rail 1, radius about 8, the gap opens to a flare: a seam filled", "in the middle of each fillet."}, []string{"two sides.", section})
	const sleeves = "Sleeves for the bolts go into Stand leg (1 and 2) now. Open the hole on the side of the head, there alone, to the outside of the sleeve; let it in down to the other wall"
	for _, name := range []string{"stand-leg-1", "stand-leg-4"} {
		says(t, jointNamed(t, p, name), []string{sleeves}, nil)
	}
	says(t, jointNamed(t, p, "stand-corner-4"), []string{"weld the rim round and dress it flush for the washer."}, nil) // on the heads
	says(t, jointNamed(t, p, "stand-leg-1"), []string{"dress it flush for what bears there."}, nil)                     // two cable brackets
	says(t, jointNamed(t, p, "stand-foot-1"), []string{section}, []string{"Sleeves"})
	p, err := draft(wholeDemo(t, "pugmill", [3]string{"stand-leg.yaml", "{from: left, first: 60,", "{from: right, first: 60,"}))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "stand-foot-4"), []string{sleeves}, nil)
	says(t, jointNamed(t, p, "stand-leg-4"), nil, []string{"Sleeves"})
	p, err = draft(editedDemo(t, "pugmill", "job.yaml", "size: 8 mm, sides: 2", "size: 8 mm"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "upright"), []string{"From the middle of its longest side outward both ways", "at both ends and in the middle of each side."}, []string{"two sides", ", on each side"})
}

// Faces meet where the bolts are: past the flange of the thrust housing its spigot stands out, past the body of the bearing housing another;
// the back of the lantern and the front of a flange are their ends.
func TestFacesThatMeet(t *testing.T) {
	t.Parallel()
	for _, c := range [][3]string{
		{"gatejack", "housing", "Put together: back of flange of Thrust housing on the front of Pedestal flange 1"},
		{"pugmill", "barrel", "Put together: front of Barrel flange 2 on the front of barrel face of Lantern"},
		{"pugmill", "lantern", "Put together: back of Lantern on the front of"},
	} {
		says(t, jointNamed(t, demoPlan(t, c[0]), c[1]), []string{c[2]}, nil)
	}
}

// What is done besides, by the job, is the last to tick of a step.
func TestDoneBesides(t *testing.T) {
	t.Parallel()
	steps := jointNamed(t, demoPlan(t, "gatejack"), "arm").Steps
	if last := steps[len(steps)-1]; last.Title != "Besides" || !slices.Equal(last.Do, []string{"Swing the arm from end to end: the cord runs free on its sheave and rubs nowhere."}) {
		t.Errorf("%+v", last)
	}
}

// What pushes a hub along its shaft is not in the job: its nut has no torque, and the step says why.
func TestNutOfAHubHasNoTorque(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "auger"), []string{"Put Auger lock plate under nut M36x3 LH, its 3 pins in their holes in Auger hub and flat on it before the nut goes on, and tighten it against Auger hub, spanner-tight: the job does not say what pushes the hub along"}, nil)
}

// An inch job reads its oven in Fahrenheit: 129 °C is 264 °F.
func TestInchJobHeatsInFahrenheit(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "foot-flange"), []string{"evenly to 264 °F (129 °C)"}, nil)
}

// A 12.9 screw is held by more of S235 than its own diameter, 11.3 of M8, for which the die ring's
// 10 of blind thread are too short.
func TestStrongScrewGoesIn(t *testing.T) {
	t.Parallel()
	p, err := draft(editedDemo(t, "pugmill", "job.yaml", "into: die-ring.nozzle-taps, bolt: M8 8.8", "into: die-ring.nozzle-taps, bolt: M8 12.9"))
	if err != nil {
		t.Fatal(err)
	}
	j := jointNamed(t, p, "nozzle")
	short := slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == "short-thread" })
	if b := j.Bolt; b.NeedMm != 11.3 || b.Ordered != "" || !short {
		t.Errorf("%s, %v needed, %v", b.Ordered, b.NeedMm, j.Problems)
	}
}

// The picture across a bevel says whose edge it is: the flange's bore has the chamfer drawn for it.
func TestBevelHasItsPart(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	for name, want := range map[string]string{"front-flange-weld": "Barrel flange 1", "inlet-flange-weld": "Inlet flange", "inlet-stub": "", "upright": ""} {
		if got := jointNamed(t, p, name).Weld.Bevelled; got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// A force under a tenth of the press's is told where it is weighed; 1054 N is 0.5 % of
// 200 kN, 8.8 % of 12 kN and 10.5 % of 10 kN, whose gauge shows it.
func TestSmallForceIsWeighed(t *testing.T) {
	t.Parallel()
	const weigh = "The gauge of the shop's press does not show so little: stand the work on a load cell or a scale."
	for press, small := range map[string]bool{"200 kN": true, "12 kN": true, "10 kN": false} {
		p, err := draft(editedDemo(t, "pugmill", "job.yaml", "press: 200 kN", "press: "+press))
		if err != nil {
			t.Fatal(err)
		}
		j := jointNamed(t, p, "front-flange")
		if got := strings.Contains(stepText(j), weigh); got != small || j.Press.ForceN.Max < 1050 || j.Press.ForceN.Max > 1150 {
			t.Errorf("%s, %v N: %v", press, j.Press.ForceN, got)
		}
	}
}

// Before bolts are tightened again what lies over their heads comes off, the last first: the hub
// of 4 in over heads on a pitch circle of 3-1/2 in, not over those on 5-1/2 in, the wheel and the
// cone that lie on it, the motor that its notes set on it and the guard over that. What has no seat there is
// over none, nor is what is on before.
func TestComesOff(t *testing.T) {
	t.Parallel()
	off := func(p *plan.Plan, name string) string {
		return strings.Join(jointNamed(t, p, name).Bolt.ComesOff, ", ")
	}
	titles := func(off []plan.Off) []string { return seq.Map(off, func(o plan.Off) string { return o.Title }) }
	p := demoPlan(t, "gatejack")
	if cap, housing, yoke := off(p, "cap"), off(p, "housing"), off(p, "yoke"); cap != "Cover over the hub, the motor, Rain cone, Hand wheel 8 in, Handwheel hub" || housing != "" || yoke != "" {
		t.Errorf("cap %q, housing %q, yoke %q", cap, housing, yoke)
	}
	// What no hand takes off: the lantern of Ø160 and more over heads on Ø106, the coupling of Ø130
	// 2 behind those on Ø105; before its end play is set anew what shuts a bearing comes off.
	mm := demoPlan(t, "pugmill")
	for name, want := range map[string]string{"gland": "Lantern", "rear-cover": "Flexible coupling", "lantern": "", "housing": ""} {
		if got := strings.Join(titles(jointNamed(t, mm, name).Bolt.Behind), ", "); got != want {
			t.Errorf("%s is behind %q, want %q", name, got, want)
		}
	}
	if a, b := titles(jointNamed(t, mm, "rear-bearing").Bearing.ShutBy), titles(jointNamed(t, p, "upper-bearing").Bearing.ShutBy); !slices.Equal(a, []string{"Flexible coupling", "Rear cover"}) || !slices.Equal(b, []string{"Cover over the hub", "the motor", "Rain cone", "Hand wheel 8 in", "Handwheel hub", "Cap ring"}) {
		t.Errorf("%q, %q", a, b)
	}
	// The mark that bears witness comes when all is tight, and the end of a part tells two copies apart.
	if s := jointNamed(t, p, "cap").Steps; s[len(s)-1].Title != "Mark the clock" {
		t.Errorf("%+v", s)
	}
	if r := jointNamed(t, mm, "delivery-die").Remedies; !slices.Contains(r, "Barrel flange 1 is the one at the front of Barrel tube.") {
		t.Errorf("%q", r)
	}
	for _, edit := range [][3]string{{"drive-nut.yaml", "seat: handwheel hub", "seat: half of a coupling"}, {"job.yaml", "to reach the screws of the cap ring.\", after: housing", "as for the screws of the cap ring under it.\", after: upper-bearing"}} {
		if got := off(planned(t, editedDemo(t, "gatejack", edit[0], edit[1], edit[2])), "cap"); got != "" {
			t.Errorf("%s: %q", edit[2], got)
		}
	}
}

// What is pressed has its greatest force, what it stands on and the limits that the record allows; what may be heated instead
// is not oiled then; no grease between is asked for that the seats do not get. How a bearing is greased later stands with its
// upkeep alone.
func TestPressedAndGreased(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "gatejack")
	bush := jointNamed(t, p, "arm-bush")
	says(t, bush, []string{"Heated instead: both degreased and no oil, gloves", "Interference must be 0.0002 – 0.0016 in."}, nil)
	if c := strings.Join(bush.Cautions, " "); strings.Contains(c, "copper grease") || !strings.Contains(c, "none on what runs") {
		t.Error(c)
	}
	says(t, jointNamed(t, p, "lower-bearing"), []string{"Drive nut stands on its back.", "Pressed over 3520 lbf", "until all room there is full"}, []string{"plugged with a rag"})
	p = planned(t, editedDemo(t, "gatejack", "job.yaml", "    - {bearing: lower-bearing, every: season}\n", ""))
	says(t, jointNamed(t, p, "frame-corner-4"), []string{"two straight edges along the outsides show each corner"}, nil)
	says(t, jointNamed(t, p, "lower-bearing"), []string{"drain at 120°, 240° plugged with a rag meanwhile"}, nil)
}

// What words set between two numbers has its row in the record; off an axis, which nothing touches, from the wall beyond it.
func TestSetBetween(t *testing.T) {
	t.Parallel()
	checks := jointNamed(t, demoPlan(t, "gatejack"), "stay").Checks
	if c := checks[len(checks)-1]; c.What != "Key bar: its lower edge from the opposite wall of the bore, at both its ends" || c.Limits != "half the bore as measured and 0.38 – 0.39 in" || !strings.Contains(c.Gauge, "telescoping") {
		t.Errorf("%+v", c)
	}
}

// Where a tacked round has nothing ruled in line, nothing is checked for it.
func TestTackedInLine(t *testing.T) {
	t.Parallel()
	const weld = "weld: {part: pedestal-flange#1.bore, to: guide-tube.outside, type: bevel, process: MMA}"
	ruled := planned(t, editedDemo(t, "gatejack", "job.yaml", weld, weld+"\n    in-line: [guide-tube.key-screws, pedestal-flange#1.top]"))
	for want, p := range map[bool]*plan.Plan{false: demoPlan(t, "gatejack"), true: ruled} {
		if text := stepText(jointNamed(t, p, "top-flange-weld")); strings.Contains(text, "what must line up") != want {
			t.Error(text)
		}
	}
}

// The motor of a job is bought, unless it is among the things put on: then by its words there.
func TestMotorIsBought(t *testing.T) {
	t.Parallel()
	motors := func(p *plan.Plan) (out []string) {
		for _, row := range p.Bought {
			if strings.Contains(strings.ToLower(row.Item), "motor") && !strings.Contains(row.Item, "over the motor") {
				out = append(out, row.Item)
			}
		}
		return out
	}
	if got := motors(demoPlan(t, "gatejack")); !slices.Equal(got, []string{"Gear motor with torque limiter, by its page"}) {
		t.Errorf("%q", got)
	}
	for _, item := range motors(demoPlan(t, "pugmill")) {
		if strings.Contains(item, "page") {
			t.Errorf("%q", item)
		}
	}
	for edit, want := range map[string]string{"maker: Any": "Motor Any, by its page", "": "Motor, by its page"} {
		if got := motors(planned(t, editedDemo(t, "gatejack", "job.yaml", "maker: gear motor with torque limiter", edit))); !slices.Equal(got, []string{want}) {
			t.Errorf("%q, want %q", got, want)
		}
	}
	// What stands on the holes of its flange is the motor, whatever it is called.
	for _, item := range motors(planned(t, editedDemo(t, "pugmill", "job.yaml", "gear motor 2.2 kW, 32 rev/min, flange 265, spigot 230", "drive unit"))) {
		if strings.Contains(item, "page") {
			t.Errorf("%q is bought too", item)
		}
	}
}

// What a step asks for can be had: a press of a cone that no shoulder stops says where to
// stop, a joint face gets no tack, a tube out of round is measured at its largest, rolled
// faces close at their bolts, and a bore that is done before the weld is measured cold.
func TestStepsAskForWhatCanBeHad(t *testing.T) {
	t.Parallel()
	mm := demoPlan(t, "pugmill")
	press := "Or press it: sleeve"
	says(t, jointNamed(t, mm, "rear-bearing"), []string{"Or draw it on: "}, []string{press})
	says(t, jointNamed(t, mm, "front-bearing"), []string{press}, []string{"stop while there is still end play"})
	noThread, err := draft(editedDemo(t, "pugmill", "auger-shaft.yaml", "size: M12 tap, depth: 28 mm", "size: M3 tap, depth: 8 mm"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, noThread, "rear-bearing"), []string{press, "Hold Auger shaft at its front end, and stop while there is still end play."}, []string{"Or draw it on: "})
	says(t, jointNamed(t, mm, "front-flange-weld"), []string{"Bolt a plate 20 thick or more to the free face of Barrel flange 1, its holes drilled through those of that. No tack on that face"}, nil)
	says(t, jointNamed(t, mm, "front-flange"), []string{"The largest of Barrel tube outside less the bore must be 10 – 30 µm."}, nil)
	says(t, jointNamed(t, mm, "rear-bearing"), nil, []string{"The largest of"})
	says(t, jointNamed(t, mm, "lantern"), []string{"no feeler of 0.05 mm enters anywhere round", "joint gap: 0.05 mm feeler does not enter, feeler"}, nil)
	says(t, jointNamed(t, mm, "hopper"), []string{"Joint closed: a 0.1 mm feeler does not enter beside a bolt.", "joint gap: 0.1 mm feeler does not enter beside a bolt, feeler"}, []string{"anywhere round"})
	says(t, jointNamed(t, mm, "auger-flight"), []string{"Auger hub bore Ø50 H11, to the limits below", "for bore hold it, and set the tool, as in operation 4 of its sheet, clear of what is welded on", "length: 737.7, on each side"}, []string{"plug"})
	says(t, jointNamed(t, plugged(t), "auger-flight"), []string{"bore of Auger hub, cold, plugs out: 50.00 – 50.16, bore gauge", "length: 737.7, on each side"}, []string{"Finish after welding"})
	says(t, jointNamed(t, mm, "rear-bearing"), []string{"slip it on, stop with 0.2 mm to 0.3 mm of end play left"}, nil)
	says(t, jointNamed(t, mm, "rear-flange"), []string{"over its rim: the front lies down now.", "Lay it front down on a flat plate, the stop disc in it; let Barrel tube down onto the disc"}, []string{"Slip it on"})
	says(t, jointNamed(t, mm, "inlet-flange"), []string{"Its saddle stands on Barrel tube, that in V-blocks, or it tilts."}, nil)
	says(t, jointNamed(t, mm, "front-flange"), nil, []string{"saddle"})
	says(t, jointNamed(t, mm, "auger"), []string{"Hold Auger shaft by a strap wrench on its drive."}, nil)
	says(t, jointNamed(t, mm, "coupling-guard"), []string{"Use 4 × bolt M12 x 60 8.8 with nut and two washers."}, nil)
	const drawn = "Bore of Barrel tube, cold, the least of four places: ________ to the lathe, for nose of Lantern."
	says(t, jointNamed(t, mm, "rear-flange-weld"), []string{drawn}, nil)
	says(t, jointNamed(t, mm, "front-flange-weld"), nil, []string{"to the lathe"}) // nothing turned to measure goes in there
	const bore = "bore of Housing plate, cold, plugs out: 130.00 – 130.04, bore gauge"
	says(t, jointNamed(t, mm, "gusset-4"), []string{bore}, nil)
	says(t, jointNamed(t, mm, "gusset-3"), nil, []string{bore})
}

// The two flanges of a tube are measured after the last weld on it: Ø260 and Ø178 may be 1 out of
// parallel (ISO 13920 table 3, class E), the tube 6 mm/m of 260, and 4.5 mm/m of
// nothing shorter than 400, out of square (table 2, class A).
func TestFlangesOfOneTubeAreMeasured(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "inlet-stub"), []string{"stand it on the outer face of Barrel flange 2 on a flat plate", "Heights alike within 1, distances within 1.6", "Barrel flange 1 parallel to Barrel flange 2: within 1, flat plate, height gauge", "Barrel tube square to Barrel flange 2: within 1.6, square, rule"}, nil)
	for _, name := range []string{"front-flange-weld", "rear-flange-weld", "inlet-flange-weld", "hopper-cone"} {
		says(t, jointNamed(t, p, name), nil, []string{"parallel to"})
	}
	jack := demoPlan(t, "gatejack")
	says(t, jointNamed(t, jack, "stay"), nil, []string{"parallel to"})
	says(t, jointNamed(t, jack, "oil-spout"), []string{"Pedestal flange 1 parallel to Pedestal flange 2: within 0.039 in",
		// A branch that leans is not square to its main.
		"Check 60° to Guide tube where it leans, and square across that"}, []string{"Check square"})
	// With the spout past its flange it does not stand on that.
	far, err := draft(editedDemo(t, "gatejack", "oil-spout.yaml", "wall: 0.113, length: 4}", "wall: 0.113, length: 40}"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, far, "oil-spout"), []string{"Measure over the outer faces of Pedestal flange 1 and Pedestal flange 2 at four places", "Lengths alike within 0.039 in", "within 0.039 in, tape, straight edges"}, []string{"stand it on the outer face"})
	q, err := draft(editedDemo(t, "pugmill", "barrel-flange.yaml", "stock: {plate: 12 mm, cut", "thickness: 12 mm\nstock: {plate: 12.5 mm, cut"))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, q, "inlet-stub"), []string{"parallel to Barrel flange 2: within 0.5"}, nil)
}

// The room that a port feeds is filled before the second cone shuts it: Ø80 and Ø70, 34 long each, less
// the shaft of Ø48 over 69 of it are 177 cm³, 159 g at 0.9 g/cm³.
func TestRoomIsPacked(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "front-bearing"), []string{"Then pack the room behind it full by hand, its holes shut, about 160 g of the same grease: what is fed later reaches rollers only through it."}, nil)
	says(t, jointNamed(t, p, "rear-bearing"), nil, []string{"ack the room"})
	fast := planned(t, editedDemo(t, "pugmill", "job.yaml", "output-speed: 32", "output-speed: 1430"))
	says(t, jointNamed(t, fast, "front-bearing"), nil, []string{"ack the room"})
	if e := jointNamed(t, p, "hopper-throat").Weld; !e.OnEdge || jointNamed(t, p, "gusset-1").Weld.OnEdge {
		t.Errorf("a fillet on the edge of the cone: %v", e.OnEdge)
	}
}

// TestTurnOfACutEnd: the end of the stay is coped to the tube and says where it stands, which no turn
// changes; nor does a chamfer at the end of the tube lie under its fillet.
func TestTurnOfACutEnd(t *testing.T) {
	t.Parallel()
	p, err := draft(editedDemo(t, "gatejack", "job.yaml", "type: fillet, length: 5-1/2, process: MMA}", "type: fillet, length: 5-1/2, process: MMA}\n    rotate: 90"))
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(p.Faults, func(f plan.Problem) bool { return f.Kind == plan.TurnIdle && f.Joint == "stay" }) {
		t.Errorf("the turn of the stay: %v", p.Faults)
	}
	p, err = draft(editedDemo(t, "gatejack", "guide-tube.yaml", "{edge: outside-back, size: 1/64, angle: 15, for: lead-in}", "{edge: outside-back, size: 1/8, angle: 45, for: weld}"))
	if err != nil {
		t.Fatal(err)
	}
	if slices.ContainsFunc(jointNamed(t, p, "stay").Problems, func(f plan.Problem) bool { return f.Kind == plan.FilletOnChamfer }) {
		t.Error("the fillet of the stay lies over a chamfer 16 in away")
	}
}
