package card_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/card"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// bearing is a joint that is a bearing of the designation 30208; its inner ring
// turns with A.
func bearing(name, turning string, b plan.BearingPlan) *plan.JointPlan {
	b.Bearing = "30208"
	return &plan.JointPlan{Name: name, A: plan.JointEnd{Part: strings.ToLower(turning), Title: turning}, B: plan.JointEnd{Part: "housing", Title: "Housing"}, Bearing: &b}
}

func bolted(name string, b plan.BoltPlan) *plan.JointPlan {
	b.Size, b.Threads = "M8", "dry"
	return &plan.JointPlan{Name: name, A: plan.JointEnd{Title: "Lid"}, B: plan.JointEnd{Title: "Box"}, Bolt: &b}
}

func filled(job *parts.Job, joints ...*plan.JointPlan) *plan.Plan {
	pl := &plan.Plan{Joints: joints}
	card.Fill(pl, job)
	return pl
}

func said(s string) parts.Text          { return parts.Text{Value: s} }
func amount(v float64) parts.Number     { return parts.Number{Value: v} }
func has[T comparable](l []T, v T) bool { return slices.Contains(l, v) }
func rows(r *plan.FirstRun, t string) (lines []plan.CardLine, runs []plan.RunRow) {
	for _, s := range r.Stages {
		if strings.HasPrefix(s.Title, t) {
			return s.Lines, s.Runs
		}
	}
	return nil, nil
}

// TestEndPlay: an end float below nothing is preload, from the smaller to the
// larger amount.
func TestEndPlay(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		float plan.Range
		want  string
	}{
		{plan.Range{Min: 0.02, Max: 0.05}, "0.02 mm – 0.05 mm"}, {plan.Range{Min: 0, Max: 0.05}, "0 mm – 0.05 mm"},
		{plan.Range{Min: -0.03, Max: -0.01}, "none: preload 0.01 mm – 0.03 mm"}, {plan.Range{Min: -0.03, Max: 0}, "none: preload 0 mm – 0.03 mm"},
		{plan.Range{Min: -0.02, Max: 0.01}, "preload 0.02 mm – play 0.01 mm"},
	} {
		pl := filled(&parts.Job{FirstRun: &parts.FirstRun{}}, bearing("front", "Shaft", plan.BearingPlan{EndFloatMm: test.float, HasEndFloat: true}), bearing("rear", "Shaft", plan.BearingPlan{Rotating: "outer"}))
		lines, _ := rows(pl.FirstRun, "By")
		if len(lines) != 3 || lines[2] != (plan.CardLine{Do: "Front 30208: end play of Shaft", Wanted: test.want, Source: "job file"}) {
			t.Errorf("%v: %q", test.float, lines)
		}
		// Each that turns, once: the shaft, and the housing about the outer ring.
		if want := "Turn Housing by hand, three turns each way: nothing rubs, no tight place"; lines[1].Do != want || lines[0].Do != strings.Replace(want, "Housing", "Shaft", 1) {
			t.Errorf("turning: %q", lines)
		}
	}
	// A motor goes on the shaft, whatever it is, and on no housing that turns about an axle.
	lines, _ := rows(filled(&parts.Job{FirstRun: &parts.FirstRun{}, Motor: &parts.Motor{}}, bearing("front", "Shaft", plan.BearingPlan{}), bearing("rear", "Shaft", plan.BearingPlan{Rotating: "outer"})).FirstRun, "By")
	if !strings.HasPrefix(lines[0].Do, "Turn Shaft by hand, before the motor is on it, three") || !strings.HasPrefix(lines[1].Do, "Turn Housing by hand, three") {
		t.Errorf("with a motor: %q", lines)
	}
}

// TestFirstRunNumbers: what is given is said, with its digits, and what is not
// given is not.
func TestFirstRunNumbers(t *testing.T) {
	t.Parallel()
	in := &parts.FirstRun{AgainHours: 2.34, Runs: []parts.Run{{Minutes: amount(0.5), Speed: amount(0.5)}, {Minutes: amount(7.25), Speed: amount(12.34), Load: said("sand")}, {Minutes: amount(3)}},
		Watch: []parts.Watch{{Place: said("case"), MostC: amount(0.5)}, {Place: said("lid")}}}
	job := &parts.Job{FirstRun: in}
	r := filled(job, bolted("lid", plan.BoltPlan{Count: 4, TorqueNm: 0.8}), bolted("base", plan.BoltPlan{Count: 1})).FirstRun
	_, idle := rows(r, "Idle")
	_, load := rows(r, "Under")
	after, _ := rows(r, "After 2.3 h")
	if !slices.Equal(idle, []plan.RunRow{{What: "idle", After: "0.5 min", Speed: "0.5 rev/min"}, {What: "idle", After: "3 min"}}) || !slices.Equal(load, []plan.RunRow{{What: "sand", After: "7.3 min", Speed: "12.3 rev/min"}}) {
		t.Errorf("%q %q", idle, load)
	}
	if len(after) != 2 || after[0].Do != "4 × M8, Lid to Box" || after[0].Wanted != "0.8 N m, threads dry" || after[1].Do != "M8, Lid to Box" || after[1].Wanted != "tight; no torque is worked out" {
		t.Errorf("%q", after)
	}
	if !slices.Equal(r.Watch, []plan.Watched{{Where: "case", Most: "1 °C"}, {Where: "lid"}}) {
		t.Errorf("%q", r.Watch)
	}
	lines, _ := rows(r, "Idle")
	if len(lines) != 0 || len(r.Cautions) != 0 {
		t.Errorf("nothing is to be warmed, nothing turns: %q, %q", lines, r.Cautions)
	}
	in.WarmUp, in.WarmUpHow = amount(0.5), said("oil")
	if lines, _ = rows(filled(job).FirstRun, "Idle"); len(lines) != 1 || lines[0] != (plan.CardLine{Do: "Warm up first: oil", Wanted: "0.5 min"}) {
		t.Errorf("warmed: %q", lines)
	}
	// What turns is kept off; where a motor turns it, it is locked off as well.
	turning := bearing("front", "Shaft", plan.BearingPlan{})
	if r = filled(job, turning).FirstRun; len(r.Cautions) != 1 || !strings.HasPrefix(r.Cautions[0], "Keep hands") {
		t.Errorf("by hand: %q", r.Cautions)
	}
	job.Motor = &parts.Motor{Rotation: "clockwise", Hz: amount(0.1234), Guards: []parts.Text{said("door")}}
	pl := filled(job)
	if lines, _ = rows(pl.FirstRun, "Guards"); len(lines) != 1 || lines[0].Do != "Door: on and shut" {
		t.Errorf("guards: %q", lines)
	}
	if !has(pl.Motor.Plate, plan.Fact{Label: "Frequency", Value: "0.123 Hz"}) {
		t.Errorf("plate: %q", pl.Motor.Plate)
	}
	// 60 × 50 / (2 π × 1400) N m.
	job.Motor.KW, job.Motor.RPM = amount(0.05), amount(1400)
	if m := filled(job).Motor.Machine; !strings.HasPrefix(m[3].Value, "0.3 N m at full power") {
		t.Errorf("torque of a small motor: %q", m)
	}
	job.Motor.Guards = nil
	if lines, _ = rows(filled(job).FirstRun, "Guards"); len(lines) != 1 || !strings.HasPrefix(lines[0].Do, "The job names no guard") {
		t.Errorf("no guard: %q", lines)
	}
	// Fahrenheit: 66 °C × 9/5 + 32 = 150.8.
	in.Watch, job.Units = []parts.Watch{{Place: said("case"), MostC: amount(66)}}, parts.Inches
	if r = filled(job).FirstRun; r.Watch[0].Most != "151 °F (66 °C)" || r.Degrees != "°F" {
		t.Errorf("%q in %s", r.Watch, r.Degrees)
	}
}

// TestGuardsThatArePutOn: what keeps hands off, folded or not, goes on, unless the motor's page has it stop the
// motor; its screws are tight where a bolted joint holds it.
func TestGuardsThatArePutOn(t *testing.T) {
	t.Parallel()
	part := func(name string, use parts.Use, bends *parts.Bends) *parts.Part {
		return &parts.Part{Name: said(name), Title: said("The " + name), For: use, Bends: bends}
	}
	ends := func(a, b string) *parts.BoltJoint {
		return &parts.BoltJoint{Through: parts.JointRef{Part: a}, Into: parts.JointRef{Part: b}}
	}
	job := &parts.Job{FirstRun: &parts.FirstRun{}, Motor: &parts.Motor{Guards: []parts.Text{said("the door")}},
		Parts:  []*parts.Part{part("hood", parts.Guarding, &parts.Bends{}), part("cover", parts.Guarding, &parts.Bends{}), part("disc", parts.Guarding, nil), part("tray", "", &parts.Bends{}), part("door", parts.Guarding, &parts.Bends{})},
		Joints: []*parts.Joint{{Kind: parts.BoltKind, Bolt: ends("hood", "frame")}, {Kind: parts.WeldKind, Weld: &parts.WeldJoint{Part: parts.JointRef{Part: "cover"}}}}}
	lines, _ := rows(filled(job).FirstRun, "Guards")
	if want := []plan.CardLine{{Do: "The door: on and shut"}, {Do: "The hood: on, all its screws tight"}, {Do: "The cover: on"}, {Do: "The disc: on"}}; !slices.Equal(lines, want) {
		t.Errorf("%q, want %q", lines, want)
	}
}

// TestUpkeepOf: rules are named where they were used and once; bearings share a
// row where port, grease, interval and rule are the same.
func TestUpkeepOf(t *testing.T) {
	t.Parallel()
	port := func(name, grease, amount, every string) parts.Port {
		return parts.Port{Bearing: said(name), Grease: said(grease), Amount: said(amount), Every: said(every)}
	}
	at := func(name, where string, g float64) *plan.JointPlan {
		return bearing(name, "Shaft", plan.BearingPlan{Grease: "lithium", GreaseG: g, Ports: slices.DeleteFunc([]string{where}, func(s string) bool { return s == "" })})
	}
	joints := []*plan.JointPlan{at("a", "top", 1.94), at("b", "top", 2), at("c", "side", 9.6), at("d", "", 3), at("e", "", 4), bolted("lid", plan.BoltPlan{Count: 4, TorqueNm: 0.6}), bolted("base", plan.BoltPlan{Count: 2})}
	const grease, torque = "Grease of a bearing", "Torques hold"
	for _, test := range []struct {
		ports   []parts.Port
		bolts   []string
		want    []string // port, what
		sources []string
	}{
		{[]parts.Port{port("a", "", "", "10 h"), port("b", "", "", "10 h")}, nil, []string{"A 30208, B 30208: top, lithium, 4 g (1.9 g and 2 g)"}, []string{grease}},
		{[]parts.Port{port("a", "", "", "10 h"), port("b", "", "", "20 h")}, nil, []string{"A 30208: top, lithium, 1.9 g", "B 30208: top, lithium, 2 g"}, []string{grease}},
		{[]parts.Port{port("a", "", "", "10 h"), port("c", "", "", "10 h")}, []string{"lid", "base"}, []string{"A 30208: top, lithium, 1.9 g", "C 30208: side, lithium, 10 g"}, []string{grease, torque}},
		{[]parts.Port{port("a", "", "", "10 h"), port("b", "calcium", "", "10 h")}, nil, []string{"A 30208: top, lithium, 1.9 g", "B 30208: top, calcium, 2 g"}, []string{grease}},
		{[]parts.Port{port("a", "", "2 strokes", "10 h"), port("b", "", "", "10 h")}, []string{"base"}, []string{"A 30208: top, lithium, 2 strokes", "B 30208: top, lithium, 2 g"}, []string{grease}},
		{[]parts.Port{port("a", "", "", "10 h"), port("b", "", "2 strokes", "10 h")}, nil, []string{"A 30208: top, lithium, 1.9 g", "B 30208: top, lithium, 2 strokes"}, []string{grease}},
		{[]parts.Port{port("d", "", "", "10 h"), port("e", "", "", "10 h")}, nil, []string{"D 30208: no port in the job: packed by hand, lithium, 3 g", "E 30208: no port in the job: packed by hand, lithium, 4 g"}, []string{grease}},
		{[]parts.Port{port("a", "", "2 strokes", "10 h"), port("lid", "", "", ""), port("none", "", "", "")}, []string{"lid", "lid", "a", "none"}, []string{"A 30208: top, lithium, 2 strokes"}, []string{torque}},
	} {
		job := &parts.Job{Upkeep: &parts.Upkeep{Ports: test.ports}}
		for _, name := range test.bolts {
			job.Upkeep.Bolts = append(job.Upkeep.Bolts, parts.Retighten{Joint: said(name), Every: said("year")})
		}
		u := filled(job, joints...).Upkeep
		var got []string
		for _, p := range u.Ports {
			got = append(got, p.Where+", "+p.What)
		}
		same := len(u.Sources) == len(test.sources)
		for i := 0; same && i < len(u.Sources); i++ {
			same = strings.HasPrefix(u.Sources[i], test.sources[i])
		}
		if !slices.Equal(got, test.want) || !same {
			t.Errorf("%q from %q, want %q from %q", got, u.Sources, test.want, test.sources)
		}
		if bolts := len(slices.DeleteFunc(slices.Clone(test.bolts), func(s string) bool { return s == "a" || s == "none" })); len(u.Bolts) != bolts {
			t.Errorf("%d bolts of %q", len(u.Bolts), test.bolts)
		}
		if len(u.Cautions) != 1 || !strings.HasPrefix(u.Cautions[0], "Only at a standstill") {
			t.Errorf("something turns: %q", u.Cautions)
		}
	}
	if u := filled(&parts.Job{Upkeep: &parts.Upkeep{}}, joints[5]).Upkeep; len(u.Cautions) != 0 {
		t.Errorf("nothing turns: %q", u.Cautions)
	}
	if u := filled(&parts.Job{Upkeep: &parts.Upkeep{}, Motor: &parts.Motor{}}).Upkeep; len(u.Cautions) != 1 || !strings.HasPrefix(u.Cautions[0], "Isolate") {
		t.Errorf("a motor: %q", u.Cautions)
	}
	// A job without materials has no table of strengths.
	if all := filled(&parts.Job{}).Sources; len(all) != 2 {
		t.Errorf("%d tables", len(all))
	}
}

// TestComesOff: a shaft that is coupled in a step was turned by hand there, the first one too, and
// has its end play no more; what comes off to set a bearing is hoisted over 25 kg.
func TestComesOff(t *testing.T) {
	t.Parallel()
	front := func() *plan.JointPlan {
		j := bearing("front", "Shaft", plan.BearingPlan{HasEndFloat: true, EndFloatMm: plan.Range{Min: 0.02, Max: 0.05}, ShutBy: []plan.Off{{Title: "Guard"}}})
		j.N = 1
		return j
	}
	job := &parts.Job{FirstRun: &parts.FirstRun{AgainHours: 2}, Loose: []parts.Loose{{Item: said("coupling"), After: said("front"), Stands: &parts.Stands{}}}}
	if lines, _ := rows(filled(job, front()).FirstRun, "By"); len(lines) != 1 || lines[0].Do != "Shaft: turned by hand at step 1, before it was coupled, as signed there" {
		t.Errorf("coupled at the first step: %q", lines)
	}
	// The step asks for the shaft that the motor drives alone: what else turns is turned by hand now.
	pl := &plan.Plan{Joints: []*plan.JointPlan{front(), bearing("roll", "Roll", plan.BearingPlan{})}, Parts: []*plan.PartPlan{{Name: "shaft", Title: "Shaft"}}}
	driven := *job
	driven.Motor = &parts.Motor{Drives: parts.JointRef{Part: "shaft", Pos: parts.Pos{Line: 1}}}
	card.Fill(pl, &driven)
	if lines, _ := rows(pl.FirstRun, "By"); len(lines) != 2 || lines[0].Do != "Shaft: turned by hand at step 1, before it was coupled, as signed there" || !strings.HasPrefix(lines[1].Do, "Turn Roll by hand, three turns") {
		t.Errorf("one of two is driven: %q", lines)
	}
	// What is pressed together turns as one, and goes by the name of what is driven.
	driven.Joints = []*parts.Joint{{Kind: parts.PressKind, Press: &parts.PressJoint{Shaft: parts.JointRef{Part: "roll"}, Bore: driven.Motor.Drives}}}
	pl.Joints = []*plan.JointPlan{bearing("roll", "Roll", plan.BearingPlan{}), front()}
	card.Fill(pl, &driven)
	if lines, _ := rows(pl.FirstRun, "By"); len(lines) != 1 || !strings.HasPrefix(lines[0].Do, "Shaft: turned by hand at step 1") {
		t.Errorf("two in one: %q", lines)
	}
	for kg, want := range map[float64]string{25: "Guard off, step 1", 25.16: "Guard (25.2 kg, hoist) off, step 1"} {
		job.Loose = []parts.Loose{{Item: said("Guard"), MassKg: kg}}
		j := front()
		j.Bearing.ShutBy[0].Loose = &job.Loose[0]
		lines, _ := rows(filled(job, j).FirstRun, "After 2 h")
		if want = "Front 30208: end play of Shaft; else " + want; !slices.ContainsFunc(lines, func(l plan.CardLine) bool { return l.Do == want }) {
			t.Errorf("%g kg: no %q in %q", kg, want, lines)
		}
	}
}

// TestTightenedAgain: what is tightened after the first hours, and how: a torque where nothing is over the
// bolts, or what comes off for it; of what is bought only what holds by a thread and stays on.
func TestTightenedAgain(t *testing.T) {
	t.Parallel()
	after := func(job *parts.Job, joints ...*plan.JointPlan) (out []string) {
		job.FirstRun = &parts.FirstRun{AgainHours: 2}
		lines, _ := rows(filled(job, joints...).FirstRun, "After 2 h")
		for _, l := range lines {
			out = append(out, l.Do+": "+l.Wanted)
		}
		return out
	}
	tight := func(b plan.BoltPlan) *plan.JointPlan {
		b.TorqueNm, b.Count = 20, 2
		j := bolted("lid", b)
		j.N = 3
		return j
	}
	for _, c := range []struct {
		bolt plan.BoltPlan
		want string
	}{
		{plan.BoltPlan{}, "20 N m, threads dry"},
		{plan.BoltPlan{Under: []string{"Hood"}}, "20 N m when Hood is off"},
		{plan.BoltPlan{Behind: []plan.Off{{Title: "Hood"}}}, "20 N m when Hood is off"},
		{plan.BoltPlan{Under: []string{"Hood"}, Behind: []plan.Off{{Title: "Fan"}}}, "20 N m when Hood and Fan are off"},
		{plan.BoltPlan{Under: []string{"Hood"}, Behind: []plan.Off{{Title: "Fan"}, {Title: "Cowl"}}}, "20 N m when Hood, Fan and Cowl are off"},
		{plan.BoltPlan{ComesOff: []string{"Chain"}}, "20 N m, threads dry; first off, if on: Chain"},
		{plan.BoltPlan{ComesOff: []string{"Chain", "Belt"}}, "20 N m, threads dry; first off, if on: Chain, Belt"},
	} {
		if got := after(&parts.Job{}, tight(c.bolt)); !slices.Equal(got, []string{"2 × M8, Lid to Box: " + c.want}) {
			t.Errorf("%+v: %q, want %q", c.bolt, got, c.want)
		}
	}
	// Two that join equal parts alike are one line, by the parts without their numbers.
	first, second := tight(plan.BoltPlan{}), tight(plan.BoltPlan{})
	for i, j := range []*plan.JointPlan{first, second} {
		j.A, j.B = plan.JointEnd{Part: "foot", PartTitle: "Foot", Title: fmt.Sprint("Foot ", i+1)}, plan.JointEnd{Part: "box", PartTitle: "Box", Title: "Box"}
	}
	if got := after(&parts.Job{}, first, second); !slices.Equal(got, []string{"4 × M8, Foot to Box: 20 N m, threads dry"}) {
		t.Errorf("alike: %q", got)
	}
	for _, c := range []struct {
		loose parts.Loose
		want  []string
	}{
		{parts.Loose{Item: said("name plate"), After: said("lid"), Buy: said("screw M4"), Count: 4}, []string{"4 × screw M4, Name plate: none turns further by hand"}},
		{parts.Loose{Item: said("name plate"), After: said("lid"), Buy: said("screw M4"), How: said("by its torque"), Count: 4}, []string{"4 × screw M4, Name plate: as step 3 has it"}},
		{parts.Loose{Item: said("name plate"), After: said("lid"), Buy: said("rivet"), Count: 4}, nil},
		{parts.Loose{Item: said("name plate"), After: said("none"), Buy: said("screw M4"), Count: 4}, nil},
		{parts.Loose{Item: said("name plate"), After: said("lid"), Buy: said("screw M4"), Count: 4, Off: true}, nil},
	} {
		if got := after(&parts.Job{Loose: []parts.Loose{c.loose}}, tight(plan.BoltPlan{})); !slices.Equal(got[1:], c.want) {
			t.Errorf("%s, %s: %q, want %q", c.loose.Buy.Value, c.loose.How.Value, got[1:], c.want)
		}
	}
	// What shuts a bearing comes off by name; of more than two things the last names the rest.
	for n, want := range []string{"; else step 0", "; else A off, step 0", "; else A, B off, step 0", "; else all over C, and that, off, step 0"} {
		j := bearing("front", "Shaft", plan.BearingPlan{HasEndFloat: true, ShutBy: []plan.Off{{Title: "A"}, {Title: "B"}, {Title: "C"}}[:n]})
		if got := after(&parts.Job{}, j); len(got) != 1 || !strings.Contains(got[0], "end play of Shaft"+want+":") {
			t.Errorf("%q, want %q", got, want)
		}
	}
	// What shims under a cover set is set again in the step of that.
	lid := &plan.JointPlan{Name: "cap", N: 7}
	if got := after(&parts.Job{}, bearing("front", "Shaft", plan.BearingPlan{HasEndFloat: true, SetBy: "cap"}), lid); len(got) != 1 || !strings.Contains(got[0], "; else step 7:") {
		t.Errorf("%q", got)
	}
	// Before a coupling comes off, the motor that is on another part does, which may have kept it all from tipping.
	on := func(part string) *parts.Stands { return &parts.Stands{On: parts.JointRef{Part: part}} }
	job := &parts.Job{Loose: []parts.Loose{{Item: said("Coupling"), Stands: on("shaft")}, {Item: said("Motor"), MassKg: 40, Stands: on("plate")}}}
	if got := after(job, bearing("front", "Shaft", plan.BearingPlan{HasEndFloat: true, ShutBy: []plan.Off{{Title: "Coupling", Loose: &job.Loose[0]}}})); len(got) != 1 || !strings.Contains(got[0], "; else Motor (40 kg, hoist), Coupling off, step 0:") {
		t.Errorf("%q", got)
	}
	over := tight(plan.BoltPlan{Behind: []plan.Off{{Title: "Coupling", Loose: &job.Loose[0]}}})
	over.Hold = &plan.Hold{Later: []string{"Motor"}}
	if got := after(job, over); !slices.Equal(got, []string{"2 × M8, Lid to Box: 20 N m when Motor (40 kg, hoist, propped as in step 3) and Coupling are off"}) {
		t.Errorf("%q", got)
	}
}

// TestClampIsTightenedAgain: the screw of a split hub is in the list of what is tightened once more; a hub that is kept
// otherwise is not.
func TestClampIsTightenedAgain(t *testing.T) {
	t.Parallel()
	slid := func(gripped bool) *plan.JointPlan {
		return &plan.JointPlan{Name: "hub", A: plan.JointEnd{Part: "ring", Title: "Ring"}, B: plan.JointEnd{Part: "post", Title: "Post"}, Slide: &plan.SlidePlan{Gripped: gripped}}
	}
	for gripped, want := range map[bool][]plan.CardLine{true: {{Do: "M8 x 35, 8.8, Ring on Post", Wanted: "19 N m, threads oiled"}}, false: nil} {
		pl := &plan.Plan{Joints: []*plan.JointPlan{slid(gripped)}, Parts: []*plan.PartPlan{{Name: "ring", Title: "Ring", Clamp: &plan.ClampRow{Screw: "M8 x 35, 8.8", TorqueNm: 19.3}}}}
		card.Fill(pl, &parts.Job{FirstRun: &parts.FirstRun{AgainHours: 8}})
		if after, _ := rows(pl.FirstRun, "After 8 h"); !slices.Equal(after, want) {
			t.Errorf("%v: %q", gripped, after)
		}
	}
}
