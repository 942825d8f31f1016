package joint_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"centrepop/layout"
	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/read"
	"centrepop/parts/seq"
)

// demoPlan is the plan of a demo, worked out once for all tests: they only read it.
func demoPlan(t *testing.T, name string) *plan.Plan {
	t.Helper()
	p, err := demos[name]()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

var demos = map[string]func() (*plan.Plan, error){"pugmill": demo("pugmill"), "gatejack": demo("gatejack")}

func demo(name string) func() (*plan.Plan, error) {
	return sync.OnceValues(func() (*plan.Plan, error) {
		job, err := read.Load("../../testdata/" + name + "/job.yaml")
		if err != nil {
			return nil, err
		}
		w, err := layout.Resolve(job)
		if err != nil {
			return nil, err
		}
		return w.Plan, nil
	})
}

// Which way a cone goes follows from the cup's shoulder: its large end looks
// away from the cup's back. Worked out by hand from the drawings of the demos.
func TestConesFollowTheCups(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		job, joint, large, heldBy string
		adjusted                  bool
		keepOff                   string
	}{
		{"pugmill", "front-bearing", "front", "seal land", false, ""},
		{"pugmill", "rear-bearing", "back", "M40x1.5", true, "middle"},
		{"gatejack", "lower-bearing", "back", "collar", false, ""},
		{"gatejack", "upper-bearing", "front", "1 3/8-12 UNF", true, ""},
	} {
		j := jointNamed(t, demoPlan(t, c.job), c.joint)
		b := j.Bearing
		if b.LargeEnd != c.large || b.HeldBy != c.heldBy || b.Adjusted != c.adjusted || b.KeepOff != c.keepOff || b.Arrangement != "back to back" {
			t.Errorf("%s: large end %s against %s, adjusted %v, off %q, %s; want %+v", c.joint, b.LargeEnd, b.HeldBy, b.Adjusted, b.KeepOff, b.Arrangement, c)
		}
		if got := math.Abs(b.LargeEndMm - b.CupBackMm); math.Abs(got-b.WidthMm) > 1e-9 {
			t.Errorf("%s: the rings span %v, the bearing %v", c.joint, got, b.WidthMm)
		}
		text := stepText(j)
		if c.adjusted != strings.Contains(text, "Small end first") || c.adjusted == strings.Contains(text, "Large end first") {
			t.Errorf("%s: %s", c.joint, text)
		}
	}
}

// 30208 of width 19.75, cone 18: the large end of the rear cone lies at housing
// 94 + 19.75 = 113.75, that of the front one at 26 − 21.75 = 4.25 on the shaft's
// shoulder at 530. So the rear cone ends 18 before 639.5, at 621.5, and the
// shoulder stands at 551 + 69 = 620.
func TestConeStaysOffItsShoulder(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	rear := jointNamed(t, p, "rear-bearing")
	if math.Abs(rear.Bearing.KeepOffMm-1.5) > 1e-9 {
		t.Errorf("%v off the shoulder, want 1.5", rear.Bearing.KeepOffMm)
	}
	if !strings.Contains(stepText(rear), "It never reaches the shoulder middle: about 1.5 stays open") {
		t.Error(stepText(rear))
	}
}

// Both cups go in before the shaft, the shaft with its fixed cone before the
// cone that the nut holds.
func TestOrderOfABearingPair(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ job, first, second, shaft string }{
		{"pugmill", "front-bearing", "rear-bearing", "Enter Auger shaft from the front of Bearing housing, its back end leading"},
		{"gatejack", "lower-bearing", "upper-bearing", "Enter Drive nut from the back of Thrust housing, its front end leading"},
	} {
		p := demoPlan(t, c.job)
		first, second := jointNamed(t, p, c.first), jointNamed(t, p, c.second)
		var titles []string
		for _, s := range first.Steps {
			titles = append(titles, s.Title)
		}
		name := func(s string) string { return strings.ReplaceAll(s, "-", " ") }
		want := []string{"Cup of " + name(c.first), "Cup of " + name(c.second), "Cone of " + name(c.first), "Grease", "Shaft into the housing"}
		if !slices.Equal(titles, want) {
			t.Errorf("%s: %q, want %q", c.job, titles, want)
		}
		if !strings.Contains(stepText(first), c.shaft) {
			t.Errorf("%s: %s", c.job, stepText(first))
		}
		if strings.Contains(stepText(second), "Cup of") {
			t.Errorf("%s: a cup is pressed with the shaft in: %s", c.job, stepText(second))
		}
	}
}

// A cone that slides on by hand is not heated, so no step warns of its heat;
// and nothing waits for a machine that does not run yet.
func TestWarningsOfConesAreOfThisCone(t *testing.T) {
	t.Parallel()
	slight := []string{"drive-nut.yaml", "limits: [1.3760, 1.3765]", "limits: [1.3750, 1.3753]"} // as drawn it is pressed on, too tight for heat
	for _, c := range []struct {
		job, joint string
		edit       []string
		hot        string
	}{{"pugmill", "front-bearing", nil, "Not over 120 °C, no flame"}, {"gatejack", "lower-bearing", slight, "Not over 248 °F (120 °C), no flame"}, {"gatejack", "upper-bearing", slight, ""}, {"gatejack", "lower-bearing", nil, ""}} {
		p := demoPlan(t, c.job)
		if c.edit != nil {
			var err error
			if p, err = draft(editedDemo(t, c.job, c.edit[0], c.edit[1], c.edit[2])); err != nil {
				t.Fatal(err)
			}
		}
		j := jointNamed(t, p, c.joint)
		text := stepText(j)
		if hot := j.Bearing.HeatConeC > 0; hot != (c.hot != "") || strings.Contains(text, "Not over") != hot || !strings.Contains(text, c.hot) {
			t.Errorf("%s: heated %v: %s", c.joint, hot, text)
		}
		if strings.Contains(text, "ten minutes") {
			t.Errorf("%s: %s", c.joint, text)
		}
	}
}

// A sleeve that follows the small end stays inside the cage.
func TestSleeveClearsTheCage(t *testing.T) {
	t.Parallel()
	b := jointNamed(t, demoPlan(t, "pugmill"), "front-bearing").Bearing
	if b.ConeSleeveOutMm != 58 { // da of 30210, as the job gives it
		t.Errorf("sleeve %v outside", b.ConeSleeveOutMm)
	}
}

// draft is the plan of what can be worked out.
func draft(job *parts.Job) (*plan.Plan, error) {
	w, err := layout.Work(job)
	if err != nil {
		return nil, err
	}
	return w.Plan, nil
}

// What does not hold a ring is found, by the shoulders that the job says (db 57, Da 79; da 49) and the
// rules where it does not. The rear cone, 18 wide, stays 1.5 off its shoulder and so as far past its seat
// of 18; without its undercut a thread of pitch 1.5 is full from 4.5 on (DIN 76-1).
func TestMountingProblems(t *testing.T) {
	t.Parallel()
	edit := func(t *testing.T, part, from, to string) []plan.Problem {
		t.Helper()
		demo, part, ok := strings.Cut(part, "/")
		if !ok {
			demo, part = "pugmill", demo
		}
		job := editedDemo(t, demo, part, from, to)
		p, err := draft(job)
		if err != nil {
			t.Fatal(err)
		}
		var out []plan.Problem
		for _, j := range p.Joints {
			out = append(out, j.Problems...)
		}
		return append(out, p.Faults...)
	}
	for _, c := range []struct {
		part, from, to, want string
	}{
		{"bearing-housing.yaml", "front-shoulder, diameter: 80", "front-shoulder, diameter: 87", "cup-shoulder-low, Bearing housing front cup, 87, 84.1"},
		{"bearing-housing.yaml", "front-shoulder, diameter: 80", "front-shoulder, diameter: 76", "cup-shoulder-high, Bearing housing front cup, 76, 79"},
		{"bearing-housing.yaml", "front-shoulder, diameter: 80", "front-shoulder, diameter: 90", "cup-not-held, Bearing housing front cup"},
		{"auger-shaft.yaml", "seal-land, diameter: 60", "seal-land, diameter: 54", "cone-shoulder-low, Auger shaft front bearing, 54, 57; slide-shoulder-low, Auger hub, 0, seal land, 0.5"},
		{"auger-shaft.yaml", "{edge: seal-land-front, size: 5.5", "{edge: seal-land-back, size: 1.6 mm, angle: 45}\n  - {edge: seal-land-front, size: 5.5", "cone-shoulder-low, Auger shaft front bearing, 56.8, 57"}, // 60 less 3.2 of the 57 it needs
		{"lantern.yaml", "chamber, diameter: 119, length: 74}\n    - {name: register, diameter: 120, fit: H7, length: 8", "chamber, diameter: 119, length: 77}\n    - {name: register, diameter: 120, fit: H7, length: 5", "register-bottoms, Bearing housing front spigot in Lantern chamber, 1"},
		{"barrel-flange.yaml", "plate: 12 mm", "plate: 12 in", "no-stock-length, M10; no-stock-length, M10; no-section-strength, Barrel flange 1, 304.8, S235, 250; no-section-strength, Barrel flange 2, 304.8, S235, 250"},
		{"auger-shaft.yaml", "middle, diameter: 48, length: 69", "middle, diameter: 49.5, length: 69", "cage-touches, Auger shaft rear bearing, middle, 49.5, 49"},
		{"auger-shaft.yaml", "middle, diameter: 48, length: 69, length-limits: [68.9, 69.1]", "middle, diameter: 48, length: 71", "cone-touches, Auger shaft rear bearing, middle, 0.5"},
		{"auger-shaft.yaml", "nut-thread, thread: M40x1.5, length: 22, undercut: DIN 76-A", "nut-thread, diameter: 40, length: 22", "cone-not-held, Auger shaft rear bearing, back; float-unset, -0.03, -0.01, Auger shaft, Bearing housing"},
		{"auger-shaft.yaml", "fit: k6, length: 18", "fit: k6, length: 14", "seat-short, Auger shaft rear bearing, 14, 15.8"},
		{"auger-shaft.yaml", "fit: k6, length: 18", "fit: k6, length: 20.6", "nut-stops, Auger shaft rear bearing, 1.1; slot-short, washer slot, 0.1"},
		{"auger-shaft.yaml", "length: 22, undercut: DIN 76-A", "length: 22", "nut-short, nut thread, 3"},
		{"gatejack/drive-nut.yaml", "edge: lock-thread-front, size: 1/16", "edge: lock-thread-front, size: 1/2", "nut-few, 3.225, Lock collar, lock thread, 10.585"},
		{"gatejack/drive-nut.yaml", "edge: lock-thread-front, size: 1/16", "edge: lock-thread-front, size: 3/8", "nut-few, 6.4, Lock collar, lock thread, 10.585"},
		{"gatejack/lock-collar.yaml", "edge: lock-thread-back, size: 1/16", "edge: lock-thread-back, size: 5/16", "nut-few, 6.35, Lock collar, lock thread, 10.585"}, // 22.225 less two chamfers of 7.9375; five turns of a twelfth of an inch
	} {
		if got := argued(edit(t, c.part, c.from, c.to)); got != c.want {
			t.Errorf("%s to %q: %s, want %s", c.part, c.to, got, c.want)
		}
	}
}

// What the limits of ISO 2768-1 m leave of what a joint relies on, by hand. The housing's 68 between
// the cups is 120 ± 0.3 less 26 ± 0.2 twice, 0.7 less; the shaft's 90 from shoulder to shoulder without
// limits is 740.8 less 648.2 of the rest at its least, 2.6 more: 1.5 − 0.7 − 2.6. A hub of 371 ± 0.5 on a
// seat of 740.8 less 368.4, 2.4 more. A flange of 50.3 − 21.8 − 11.8 = 16.7, 0.7 more, takes it off 8.6 of thread. A
// thread of 259.5 − 180.5 − 38.3. The shaft is 740: its slot ends in full width at 649 − 7, the cone at 639.5.
func TestLengthsEat(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		file, from, to, joint string
		kind                  plan.ProblemKind
		arg                   int
		mm                    float64
	}{
		{"auger-shaft.yaml", ", length-limits: [68.9, 69.1]", "", "rear-bearing", plan.LengthsEat, 3, -1.8},
		{"auger-shaft.yaml", ", length-limits: [369.5, 370]", "", "auger", plan.LengthsEat, 3, -1.9},
		{"barrel-end.yaml", ", length-limits: [15.8, 16.2]", "", "nozzle", plan.LengthsEat, 3, 7.9},
		{"pillar.yaml", "M16, length: 44", "M16, length: 42", "motor", plan.LengthsEat, 3, 40.7},
		{"auger-shaft.yaml", "M36x3 LH, length: 50", "M36x3, length: 48.9", "auger", plan.SlideLockRoom, 2, 42},
		{"auger-shaft.yaml", "axial: 91.5, from: back, slot: {around: 6, along: 29}", "axial: 91, from: back, slot: {around: 6, along: 20}", "rear-bearing", plan.SlotShort, 1, 2.5},
	} {
		p, err := draft(editedDemo(t, "pugmill", c.file, c.from, c.to))
		if err != nil {
			t.Fatal(err)
		}
		found := jointNamed(t, p, c.joint).Problems
		i := slices.IndexFunc(found, func(p plan.Problem) bool { return p.Kind == c.kind })
		if i < 0 || math.Abs(found[i].Args[c.arg].Value-c.mm) > 1e-9 {
			t.Errorf("%s to %q: %+v, want %s %g", c.from, c.to, found, c.kind, c.mm)
		}
	}
}

// The nut on 48.9 of M36x3 that the load drags off is to lock itself, which 36 and two threads more fill, but where the job orders
// one that does not: that is locked. Heights of DIN 985 as in lockingNutMm; else by the words of the order.
func TestNutOrderedLocks(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		item  string
		locks bool
	}{{"hex jam nut M36x3", false}, {"nut M36x3, self-locking", true}, {"nut DIN 985 M36x3", true}, {"", true}} {
		edits := [][3]string{{"auger-shaft.yaml", "M36x3 LH, length: 50", "M36x3, length: 48.9"}}
		if c.item != "" {
			edits = append(edits, [3]string{"job.yaml", "\nloose:\n", "\nloose:\n  - {item: \"" + c.item + "\", how: against the lock plate, after: auger, as: nut}\n"})
		}
		p, err := draft(frameless(wholeDemo(t, "pugmill", edits...)))
		if err != nil {
			t.Fatal(err)
		}
		j := jointNamed(t, p, "auger")
		if got := slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == plan.SlideLockRoom }); got != c.locks {
			t.Errorf("%q: %+v", c.item, j.Problems)
		}
		take, lock := []string{"take a self-locking one"}, []string{"drags it off: lock it."}
		if !c.locks {
			take, lock = lock, take
		}
		says(t, j, take, lock)
	}
}

func stepText(j *plan.JointPlan) string {
	var b strings.Builder
	for _, s := range j.Steps {
		b.WriteString(s.Title + "\n" + strings.Join(s.Do, "\n") + "\n" + s.Hold + "\n" + s.Caution + "\n")
	}
	return b.String()
}

// editedDemo is a demo with one text of one file replaced, without the frame of the mill's stand.
func editedDemo(t *testing.T, name, file, from, to string) *parts.Job {
	t.Helper()
	return frameless(wholeDemo(t, name, [3]string{file, from, to}))
}

// frameless is a job without the joints of the mill's stand, which take longer to work out than all others: for what
// does not rest on them.
func frameless(job *parts.Job) *parts.Job {
	job.Joints = slices.DeleteFunc(job.Joints, func(j *parts.Joint) bool { return strings.HasPrefix(j.Name.Value, "stand-") })
	return job
}

// wholeDemo is a demo with texts of its files replaced: file, from, to.
func wholeDemo(t *testing.T, name string, edits ...[3]string) *parts.Job {
	t.Helper()
	job, err := read.Load(layouttest.Edited(t, name, edits...))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// Face to face both cones stand large end on shoulders of the shaft (by geometry): each goes on
// as one does, hot, with a hold at its shoulder, and is not told to go on again with its cup.
func TestFaceToFace(t *testing.T) {
	t.Parallel()
	axle := "part: axle\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: left-seat, diameter: 30, fit: k6, length: 20}\n    - {name: shoulder, diameter: 38, length: 45}\n    - {name: right-seat, diameter: 30, fit: k6, length: 20}\n"
	hub := "part: hub\nkind: bearing-housing\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 100, length: 100}\n  inside:\n    - {name: left-lip, diameter: 54, length: 5}\n    - {name: left-cup, diameter: 62, fit: H7, length: 40}\n    - {name: mid, diameter: 62.5, length: 10}\n    - {name: right-cup, diameter: 62, fit: H7, length: 40}\n    - {name: right-lip, diameter: 54, length: 5}\n"
	of := func(name, more string) string {
		return "{name: " + name + ", bearing: {bearing: \"32206\", cup: hub." + name + "-cup, cone: axle." + name + "-seat, rotating: inner, bore: 30, outside: 62, width: 21.25" + more + "}}\n"
	}
	p, err := draft(jobOf(t, of("left", ", end-float: [0.02, 0.08]")+"  - "+of("right", ""), axle, hub))
	if err != nil {
		t.Fatal(err)
	}
	first, second := p.Joints[0], p.Joints[1]
	says(t, first, []string{"Cone of left", "Cone of right"}, []string{"end float", "shims"})
	if text := stepText(first); strings.Count(text, "Large end first, to the step shoulder of axle") != 2 || strings.Count(text, "Heat the cone to 110 °C") != 2 || strings.Count(text, "between large end and shoulder when it is cold") != 2 {
		t.Errorf("two cones: %s", text)
	}
	// Nothing on either part can move a ring: the play is measured once both are on, and found.
	says(t, second, []string{"Measure the end float", "0.02 mm to 0.08 mm"}, []string{"shims", "Cone of", "Heat"})
	if second.Bearing.HeatConeC != 0 || first.Bearing.HeatConeC != 110 || first.Bearing.HasEndFloat || second.Bearing.Arrangement != "face to face" {
		t.Errorf("%+v, then %+v", first.Bearing, second.Bearing)
	}
	if !slices.ContainsFunc(second.Problems, func(p plan.Problem) bool { return p.Kind == plan.FloatUnset }) {
		t.Errorf("nothing sets it: %+v", second.Problems)
	}
	// In two housings, one of which is shimmed, something does.
	p, err = draft(jobOf(t, strings.NewReplacer("hub.left", "hub#1.left", "hub.right", "hub#2.right").Replace(of("left", "")+"  - "+of("right", ", end-float: [0.02, 0.08]")), axle, strings.Replace(hub, "kind:", "quantity: 2\nkind:", 1)))
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range p.Joints {
		if slices.ContainsFunc(o.Problems, func(p plan.Problem) bool { return p.Kind == plan.FloatUnset }) {
			t.Errorf("%s: shims under one housing set it: %+v", o.Name, o.Problems)
		}
	}
}

// The end float between two housings is set when both are fastened to one another, not before the second is
// bolted to their base. That the shaft goes from one to the other fastens nothing.
func TestFloatBetweenHousings(t *testing.T) {
	t.Parallel()
	const axle = "part: axle\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: left-seat, diameter: 30, fit: k6, length: 20}\n    - {name: shoulder, diameter: 38, length: 60}\n    - {name: right-seat, diameter: 30, fit: k6, length: 20}\n"
	const housing = "part: housing\nkind: plate\nquantity: 2\nmaterial: S355\nstock: {plate: 30, cut: laser}\noutline: {square: 120}\nbore: {diameter: 62, fit: H7, leave: 3}\nholes: [{name: feet, face: front, at: [[-45, -45], [45, -45]], size: M8 clearance}]\n"
	const base = "part: base\nkind: plate\nmaterial: S355\nstock: {plate: 50, cut: flame}\noutline: {square: 300}\nbore: {diameter: 80}\nholes: [{name: one, face: front, at: [[-45, -45], [45, -45]], size: M8 tap, depth: 16}, {name: two, face: back, at: [[-45, -45], [45, -45]], size: M8 tap, depth: 16}]\n"
	bearing := func(name, n, more string) string {
		return "{name: " + name + ", bearing: {bearing: \"32206\", cup: housing#" + n + ".bore, cone: axle." + name + "-seat, rotating: inner, bore: 30, outside: 62, width: 21.25" + more + "}}\n"
	}
	for _, c := range []struct{ more, want string }{{"", ""}, {", after: right", "axle, housing 2, housing 1, feet-2"}, {", before: right", ""}} {
		feet := "  - {name: feet-1, bolt: {through: housing#1.feet, into: base.one, bolt: M8 8.8}, face: back-on-front, before: left}\n"
		if c.more != "" {
			feet += "  - {name: feet-2, bolt: {through: housing#2.feet, into: base.two, bolt: M8 8.8}, face: front-on-back" + c.more + "}\n"
		}
		p, err := draft(jobOf(t, bearing("left", "1", "")+"  - "+bearing("right", "2", ", end-float: [0.02, 0.08]")+feet, axle, housing, base))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, j := range p.Joints {
			for _, q := range j.Problems {
				if q.Kind == plan.FloatEarly {
					got = strings.Join(seq.Map(q.Args, func(a plan.Arg) string { return a.Text }), ", ")
				}
			}
		}
		if got != c.want {
			t.Errorf("%q: %q, want %q", c.more, got, c.want)
		}
	}
}

// The play of a pair is set once, with the nut, when both cones are on, at whichever bearing the
// job says it.
func TestFloatOfAPair(t *testing.T) {
	t.Parallel()
	const float = ", end-float: [-0.03, -0.01]"
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "pugmill", "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	all := string(text)
	i, k := strings.Index(all, "- name: front-bearing"), strings.Index(all, float)
	moved := strings.Replace(all[i:k]+all[k+len(float):], ", grease:", float+", grease:", 1)
	p, err := draft(editedDemo(t, "pugmill", "job.yaml", all[i:], moved))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "front-bearing"), nil, []string{"end float", "preload", "shims"})
	says(t, jointNamed(t, p, "rear-bearing"), []string{"Set the preload", "more on M40"}, []string{"shims"})
}

// A nut that is turned back moves no cone that sits a thousandth or more over the 1.375 in of its bore.
func TestTightConeIsNotSlackedOff(t *testing.T) {
	t.Parallel()
	for fit, want := range map[string]string{"1.3760, 1.3765": "does not follow Lock collar back", "1.3744, 1.3750": "then slack off"} {
		p, err := draft(editedDemo(t, "gatejack", "drive-nut.yaml", "[1.3745, 1.3750]", "["+fit+"]"))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, j := range p.Joints {
			for _, s := range j.Steps {
				if s.Title == "Set the end float" {
					got += strings.Join(s.Do, " ")
				}
			}
		}
		if !strings.Contains(got, want) || strings.Contains(got, "slack off") != (want == "then slack off") {
			t.Errorf("%s: %q", fit, got)
		}
	}
}

// A sliding seat that may also be a little tight (ISO 286-1 g6 under a bore 12 µm small) is
// tried by hand before anything is heated.
func TestSlidingConeIsTriedCold(t *testing.T) {
	t.Parallel()
	for fit, want := range map[string]string{"1.3756, 1.3758": "shaft. Heat the cone to", "1.3746, 1.3753": "If it does not slide on by hand: heat the cone to", "1.3740, 1.3745": "It slides on by hand."} {
		p, err := draft(editedDemo(t, "gatejack", "drive-nut.yaml", "[1.3745, 1.3750]", "["+fit+"]"))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, s := range jointNamed(t, p, "upper-bearing").Steps {
			if strings.HasPrefix(s.Title, "Cone of upper") {
				got = "shaft. " + strings.Join(s.Do[1:], " ")
			}
		}
		if !strings.Contains(got, want) {
			t.Errorf("%s: %q", fit, got)
		}
	}
}

// The usual gearbox: a through bore, each cup held by the spigot of a cover bolted on there. The
// cups' backs look apart, 6 below the faces, and shims under a cover set the play. A cover without
// a spigot that fits the bore holds none.
func TestCoverHoldsTheCup(t *testing.T) {
	t.Parallel()
	const bearing = ", rotating: inner, bore: 30, outside: 62, width: 17.25"
	joints := strings.Join([]string{
		`{name: left, bearing: {bearing: "30206", cup: housing.left-cup, cone: shaft.left-seat` + bearing + `}}`,
		`{name: right, bearing: {bearing: "30206", cup: housing.right-cup, cone: shaft.right-seat` + bearing + `, end-float: [0.02, 0.08]}, after: left}`,
		"{name: on-left, bolt: {through: cover.bolts, into: housing.taps, bolt: M6 8.8}, face: front-on-front, after: right}",
		"{name: on-right, bolt: {through: cap.bolts, into: housing.taps2, bolt: M6 8.8}, after: right}"}, "\n  - ")
	shaft := "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside: [{name: left-end, diameter: 25, length: 40}, {name: left-seat, diameter: 30, fit: k6, length: 18}, {name: mid, diameter: 38, length: 73.5}, {name: right-seat, diameter: 30, fit: k6, length: 18}, {name: right-end, diameter: 25, length: 40}]\n"
	housing := "part: housing\nkind: bearing-housing\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside: [{name: body, diameter: 100, length: 120}]\n  inside: [{name: left-cup, diameter: 62, fit: H7, length: 24}, {name: mid, diameter: 62.5, length: 72}, {name: right-cup, diameter: 62, fit: H7, length: 24}]\nholes:\n  - {name: taps, size: M6 tap, depth: 15, circle: {pcd: 80, count: 4}}\n  - {name: taps2, face: back, size: M6 tap, depth: 15, circle: {pcd: 80, count: 4}}\n"
	lid := func(name, spigot string) string {
		return "part: " + name + "\nkind: flange\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside: [{name: spigot, diameter: " + spigot + ", length: 6}, {name: rim, diameter: 100, length: 10}]\n  inside: [{name: b, diameter: 54, length: 16}]\nholes:\n  - {name: bolts, face: back, size: M6 clearance, circle: {pcd: 80, count: 4}}\n"
	}
	p := filed(t, joints, shaft, housing, lid("cover", "62, fit: g7"), lid("cap", "62, fit: g7"))
	left, right := jointNamed(t, p, "left"), jointNamed(t, p, "right")
	// 120 less 12 of spigots, 34.5 of bearings and 73.5 of shaft is no play. ISO 2768-m lets the housing be 0.3 longer, the spigots 0.1
	// shorter each, and the shaft between its shoulders, which follows from its 0.5 and the 0.3, 0.2, 0.2 and 0.3 of its other steps, 1.5.
	if got := argued(right.Problems); got != "shims-add, 2, 0.08, shaft, cap and cover, 1.92" {
		t.Error(got)
	}
	if len(left.Problems) > 0 || right.Bearing.Arrangement != "face to face" || left.Bearing.LargeEnd != "back" || right.Bearing.LargeEnd != "front" {
		t.Errorf("%+v %+v, %s", left.Problems, right.Problems, right.Bearing.Arrangement)
	}
	says(t, left, []string{"on the thick side of the cup, its back; its thin side goes first.", "until its back is 6 mm below the face, housing resting square on its back", "Kept from sliding out until cover is bolted on"}, []string{"sounds home", "its thick side, the back, goes first"})
	says(t, right, []string{"until its back is 6 mm below the face"}, []string{"Nothing sets it", "shims", "dial gauge"})
	if ring := seq.First(p.Tools, func(r plan.ToolRow) bool { return strings.HasPrefix(r.Tool, "Press ring") }); !left.Bearing.CupFromCover || !strings.Contains(ring.Tool, " 20 long") { // from the face: what stands out of the housing alone
		t.Errorf("%+v", ring)
	}
	// A cover that is not bored out behind the cup: 62 − 2.5 − 0.205 × 32 is 52.94.
	p = filed(t, joints, shaft, housing, strings.Replace(lid("cover", "62, fit: g7"), "diameter: 54", "diameter: 40", 1), lid("cap", "62, fit: g7"))
	if got := argued(jointNamed(t, p, "left").Problems); got != "cup-cover-high, cover, housing left cup, 40, 52.9" {
		t.Error(got)
	}
	p = filed(t, joints, shaft, housing, lid("cover", "62, fit: g7"), lid("cap", "58"))
	if q := jointNamed(t, p, "right").Problems; len(q) == 0 || q[0].Kind != plan.CupNotHeld {
		t.Errorf("nothing holds the cup: %+v", q)
	}
	// Nor does the spigot of a cover that is put on with its other face.
	p = filed(t, strings.Replace(joints, "face: front-on-front", "face: back-on-front", 1), shaft, housing, lid("cover", "62, fit: g7"), lid("cap", "62, fit: g7"))
	if got := argued(jointNamed(t, p, "left").Problems); !strings.HasPrefix(got, "cup-not-held") {
		t.Errorf("a spigot outside holds the cup: %q", got)
	}
	// With no shoulder and no thread nothing holds the cones: no nut without a thread is named or bought.
	p = filed(t, joints, strings.Replace(shaft, "diameter: 38", "diameter: 29", 1), housing, lid("cover", "62, fit: g7"), lid("cap", "62, fit: g7"))
	if q := jointNamed(t, p, "left"); !slices.ContainsFunc(q.Problems, func(q plan.Problem) bool { return q.Kind == plan.ConeNotHeld }) ||
		!strings.Contains(stepText(q), "into its cup; nothing of the job holds its large end.") || strings.Contains(stepText(q), "the nut on ") {
		t.Errorf("nothing holds the cone: %+v, %s", q.Problems, stepText(q))
	}
	if i := slices.IndexFunc(p.Bought, func(b plan.BoughtRow) bool { return strings.HasPrefix(b.Item, "Nut ") }); i >= 0 {
		t.Errorf("bought: %+v", p.Bought[i])
	}
}

// TestShims: the play of a pair under two covers is set with the last of them, by shims as thick as the lengths leave too little: 0.5 of
// a shaft that is 74 between its shoulders, and the middle of what is asked for. The longest that the lengths leave is 120.3 less 11.8
// of spigots, 34.5 and 74, nothing. Of more than 2 of shims nothing is said: the lengths are wrong.
func TestShims(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		float, mid, own string
		shim            float64
		says            []string
		problem         string
	}{
		{"[0.02, 0.08]", "length: 74, length-limits: [74, 74.1]", "", 0.55, []string{"Set the end float of shaft", "shims under cap do, about 0.55 mm in all", "shows 0.02 mm to 0.08 mm", "end float: 0.02 mm to 0.08 mm, dial gauge"}, ""},
		{"[-0.06, -0.02]", "length: 74, length-limits: [74, 74.1]", "", 0.46, []string{"Set the preload of shaft", "about 0.46 mm in all", "take out as much, and 0.02 mm to 0.06 mm more", "preload: 0.02 mm to 0.06 mm past no play, micrometer on the shims"}, "shims-add, 0, -0.02, shaft, cap and cover, 0.02"},
		{"[0.02, 0.08]", "length: 75.6, length-limits: [75.6, 75.7]", "loose:\n  - {item: shims 62x80, how: under the cap, after: on-right}\n", 0, []string{"shims under cap do. Begin"}, ""},
	} {
		const bearing = ", rotating: inner, bore: 30, outside: 62, width: 17.25"
		joints := strings.Join([]string{
			`{name: left, bearing: {bearing: "30206", cup: housing.left-cup, cone: shaft.left-seat` + bearing + `}}`,
			`{name: right, bearing: {bearing: "30206", cup: housing.right-cup, cone: shaft.right-seat` + bearing + `, end-float: ` + c.float + `}, after: left}`,
			"{name: on-left, bolt: {through: cover.bolts, into: housing.taps, bolt: M6 8.8}, face: front-on-front, after: right}",
			"{name: on-right, bolt: {through: cap.bolts, into: housing.taps2, bolt: M6 8.8}, after: right}\n" + c.own}, "\n  - ")
		shaft := "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside: [{name: left-seat, diameter: 30, fit: k6, length: 18}, {name: mid, diameter: 38, " + c.mid + "}, {name: right-seat, diameter: 30, fit: k6, length: 18}]\n"
		housing := "part: housing\nkind: bearing-housing\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside: [{name: body, diameter: 100, length: 120}]\n  inside: [{name: left-cup, diameter: 62, fit: H7, length: 24}, {name: mid, diameter: 62.5, length: 72}, {name: right-cup, diameter: 62, fit: H7, length: 24}]\nholes:\n  - {name: taps, size: M6 tap, depth: 15, circle: {pcd: 80, count: 4}}\n  - {name: taps2, face: back, size: M6 tap, depth: 15, circle: {pcd: 80, count: 4}}\n"
		lid := func(name string) string {
			return "part: " + name + "\nkind: flange\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside: [{name: spigot, diameter: 62, fit: g7, length: 6}, {name: rim, diameter: 100, length: 10}]\n  inside: [{name: b, diameter: 54, length: 16}]\nholes:\n  - {name: bolts, face: back, size: M6 clearance, circle: {pcd: 80, count: 4}}\n"
		}
		p := filed(t, joints, shaft, housing, lid("cover"), lid("cap"))
		right, last := jointNamed(t, p, "right"), jointNamed(t, p, "on-right")
		says(t, last, c.says, nil)
		says(t, right, nil, []string{"shims", "dial gauge"})
		says(t, jointNamed(t, p, "on-left"), nil, []string{"shims", "dial gauge"})
		foil := slices.ContainsFunc(p.Bought, func(b plan.BoughtRow) bool { return strings.HasPrefix(b.Item, "Shim foil") })
		if got := argued(right.Problems); got != c.problem || math.Abs(right.Bearing.ShimMm-c.shim) > 1e-9 || right.Bearing.SetBy != "on-right" || foil != (c.own == "") {
			t.Errorf("%s: %q, shims %v, set by %q, foil %v", c.mid, got, right.Bearing.ShimMm, right.Bearing.SetBy, foil)
		}
	}
}

// Each cup of a shaft in two housings is held by a cover, though a step that is narrower lies 12 inside of it,
// before a seal: both shoulders of the shaft lie inside, and neither cone has a nut. With a nut next to its
// seat in place of the shoulder, the step holds the cup.
func TestCoverHoldsTheCupBeforeAStep(t *testing.T) {
	t.Parallel()
	const housing = "part: housing\nkind: bearing-housing\nquantity: 2\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside: [{name: body, diameter: 100, length: 50}]\n  inside: [{name: cup, diameter: 62, fit: H7, length: 36}, {name: seal, diameter: 54, length: 14}]\nholes: [{name: taps, size: M6 tap, depth: 15, circle: {pcd: 80, count: 4}}]\n"
	const cover = "part: cover\nkind: flange\nquantity: 2\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside: [{name: spigot, diameter: 62, fit: g7, length: 6}, {name: rim, diameter: 100, length: 10}]\n  inside: [{name: b, diameter: 54, length: 16}]\nholes: [{name: bolts, face: back, size: M6 clearance, circle: {pcd: 80, count: 4}}]\n"
	const shaft = "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside: [{name: nose, thread: M27x2, length: 20}, {name: land, diameter: 28, length: 20}, {name: left-seat, diameter: 30, fit: k6, length: 18}, {name: mid, diameter: 38, length: 200}, {name: right-seat, diameter: 30, fit: k6, length: 18}]\n"
	bearing := func(name, n, more string) string {
		return "{name: " + name + ", bearing: {bearing: \"30206\", cup: housing#" + n + ".cup, cone: shaft." + name + "-seat, rotating: inner, bore: 30, outside: 62, width: 17.25}" + more + "}\n"
	}
	joints := bearing("left", "1", "") + "  - " + bearing("right", "2", ", other-way-round: yes") +
		"  - {name: on-left, bolt: {through: cover#1.bolts, into: housing#1.taps, bolt: M6 8.8}, face: front-on-front}\n  - {name: on-right, bolt: {through: cover#2.bolts, into: housing#2.taps, bolt: M6 8.8}, face: front-on-front}\n"
	p := filed(t, joints, shaft, housing, cover)
	for name, large := range map[string]string{"left": "back", "right": "front"} {
		if j := jointNamed(t, p, name); len(j.Problems) > 0 || j.Bearing.LargeEnd != large || !j.Bearing.CupFromCover {
			t.Errorf("%s: large end to the %s, %+v", name, j.Bearing.LargeEnd, j.Problems)
		}
	}
	nut := strings.Replace(shaft, "{name: nose, thread: M27x2, length: 20}, {name: land, diameter: 28, length: 20}", "{name: nose, diameter: 25, length: 20}, {name: thread, thread: M30x1.5, length: 20}", 1)
	p = filed(t, joints, nut, housing, cover)
	if j := jointNamed(t, p, "left"); j.Bearing.LargeEnd != "front" || j.Bearing.CupFromCover || j.Bearing.HeldBy != "M30x1.5" {
		t.Errorf("large end to the %s, %+v", j.Bearing.LargeEnd, j.Bearing)
	}
}

// A bearing 40 × 80 × 20 goes into its housing from the back. A seal with a lip of 60 in the back's bore
// of 90 lets no ring of 80 pass: bolted on first, the housing gets it after the bearing. One in the front,
// behind the shoulder, waits for nothing; and a housing that has its bearing is bolted on with both.
func TestSealsWaitForTheBearing(t *testing.T) {
	t.Parallel()
	const (
		housing = "part: housing\ntitle: Housing\nkind: turned\nmaterial: S355\nprofile:\n  outside: [{name: outside, diameter: 160, length: 80}]\n" +
			"  inside: [{name: far, diameter: 70, fit: H8, length: 10, seat: seal 50x70x10, lip: front}, {name: hole, diameter: 65, length: 40}, {name: cup, diameter: 80, fit: N7, length: 20, seat: bearing}, {name: near, diameter: 90, fit: H8, length: 10, seat: seal 60x90x10, lip: back}]\n" +
			"holes: [{name: bolts, circle: {pcd: 130, count: 4, first: 45}, size: M8 clearance}]\n"
		shaft = "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nprofile:\n  outside: [{name: seat, diameter: 40, fit: k6, length: 20, seat: bearing}, {name: land, diameter: 60, length: 60}]\n"
		plate = "part: wall\ntitle: Wall\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: laser}\noutline: {square: 300}\nbore: {diameter: 60}\nholes: [{name: taps, circle: {pcd: 130, count: 4, first: 45}, size: M8 tap}]\n"
		job   = "job: J\nunits: mm\ntolerance: m\nparts: [housing.yaml, shaft.yaml, wall.yaml]\njoints:\n" +
			"  - {name: bolts, bolt: {through: housing.bolts, into: wall.taps, bolt: M8 8.8}, face: front-on-front, %s: bearing}\n" +
			"  - {name: bearing, bearing: {bearing: \"32008\", cup: housing.cup, cone: shaft.seat, rotating: inner, bore: 40, outside: 80, width: 20}}\n"
		near, far = "Press seal 60x90x10 into near", "Press seal 50x70x10 into far"
	)
	for order, want := range map[string][2][]string{
		"before": {{far}, {near}},
		"after":  {{far, near}, nil},
	} {
		dir := t.TempDir()
		for name, text := range map[string]string{"housing": housing, "shaft": shaft, "wall": plate, "job": strings.Replace(job, "%s", order, 1)} {
			if err := os.WriteFile(filepath.Join(dir, name+".yaml"), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		loaded, err := read.Load(filepath.Join(dir, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		p := planned(t, loaded)
		for i, name := range []string{"bolts", "bearing"} {
			text := stepText(jointNamed(t, p, name))
			for _, seal := range []string{near, far} {
				if strings.Contains(text, seal) != slices.Contains(want[i], seal) {
					t.Errorf("%s the bearing, %s says of %q:\n%s", order, name, seal, text)
				}
			}
		}
	}
}

// Two cones on one seat, back to back: the collar at the large end of the one is no shoulder before the small end of
// the other, however high.
func TestConesOnOneSeat(t *testing.T) {
	t.Parallel()
	bearing := func(name, cup, float string) string {
		return "{name: " + name + ", bearing: {bearing: \"32206\", cup: hub." + cup + ", cone: axle.seat, rotating: outer, bore: 30, outside: 62, width: 21.25" + float + "}}"
	}
	for _, collar := range []string{"38", "46"} {
		p := filed(t, bearing("fixed", "left-cup", "")+"\n  - "+bearing("set", "right-cup", ", end-float: [0.02, 0.08]"),
			"part: hub\nkind: bearing-housing\nmaterial: S355\nstock: {round: 105 mm}\nprofile:\n  outside: [{name: body, diameter: 100, length: 50}]\n  inside: [{name: left-cup, diameter: 62, fit: N7, length: 20}, {name: mid, diameter: 54, length: 10}, {name: right-cup, diameter: 62, fit: N7, length: 20}]\n",
			"part: axle\nkind: shaft\nmaterial: C45\nstock: {round: 55 mm}\nprofile:\n  outside: [{name: collar, diameter: "+collar+", length: 20}, {name: seat, diameter: 30, fit: g6, length: 52}, {name: nut, thread: M30x1.5, length: 20}]\n")
		for _, j := range p.Joints {
			if slices.ContainsFunc(j.Problems, func(q plan.Problem) bool { return q.Kind == plan.CageTouches || q.Kind == plan.ConeTouches }) || j.Bearing == nil || j.Bearing.Arrangement != "back to back" {
				t.Errorf("collar %s, %s: %v, %+v", collar, j.Name, argued(j.Problems), j.Bearing)
			}
		}
	}
}
