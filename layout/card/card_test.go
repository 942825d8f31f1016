package card_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/parts/read"
)

// demo is the plan of a demo job, its text edited: the old text, the new one.
func demo(t *testing.T, name string, edits ...string) *plan.Plan {
	t.Helper()
	src, err := os.ReadFile("../../testdata/" + name + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(edits); i += 2 {
		before, after, found := strings.Cut(text, edits[i])
		if !found {
			t.Fatalf("%s lacks %q", name, edits[i])
		}
		text = before + edits[i+1] + after
	}
	return resolved(t, name, text)
}

// less is the plan of the pug mill with other cards.
func less(t *testing.T, cards string) *plan.Plan {
	t.Helper()
	src, err := os.ReadFile("../../testdata/pugmill/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	head, _, _ := strings.Cut(string(src), "\nfirst-run:")
	return resolved(t, "pugmill", head+"\n"+cards)
}

func resolved(t *testing.T, name, text string) *plan.Plan {
	t.Helper()
	job, err := read.LoadText("job.yaml", []byte(text), "../../testdata/"+name)
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	worked.ArrangeAs(&plan.Plan{}) // quicker than with the machine
	return worked.Plan
}

// stage finds a stage of the first run by the start of its title.
func stage(t *testing.T, r *plan.FirstRun, title string) plan.RunStage {
	t.Helper()
	i := slices.IndexFunc(r.Stages, func(s plan.RunStage) bool { return strings.HasPrefix(s.Title, title) })
	if i < 0 {
		t.Fatalf("no stage %s", title)
	}
	return r.Stages[i]
}

// arranged is the plan of the pug mill with its machine looked at.
func arranged(t *testing.T) *plan.Plan {
	t.Helper()
	job, err := read.Load("../../testdata/pugmill/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	worked.Arrange()
	return worked.Plan
}

func titles(r *plan.FirstRun) (out []string) {
	for _, s := range r.Stages {
		out = append(out, s.Title)
	}
	return out
}

// A guard of sheet that the motor's page has stop the motor stands once; its screws are tight where a joint bolts it.
func TestGuardsOn(t *testing.T) {
	t.Parallel()
	for with, want := range map[string][]string{
		"  guards:\n":                       {"Coupling guard: on, all its screws tight"},
		"  guards:\n    - coupling guard\n": {"Coupling guard: on and shut"},
	} {
		var got []string
		for _, l := range stage(t, demo(t, "pugmill", "  guards:\n", with).FirstRun, "Guards").Lines {
			if strings.HasPrefix(l.Do, "Coupling guard") {
				got = append(got, l.Do)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q", with, got)
		}
	}
}

func TestFirstRun(t *testing.T) {
	t.Parallel()
	r := arranged(t).FirstRun
	want := []string{"Look at", "Oil, grease", "By hand", "Guards", "Direction", "Idle", "Under load", "After 8 h"}
	if got := titles(r); !slices.Equal(got, want) {
		t.Errorf("stages %q", got)
	}
	for _, c := range []struct{ stage, do, wanted string }{
		{"Look", "Supply locked off, but for the electrician’s trials, until guards are on and his page is signed", ""},
		{"Look", "Inside of barrel and hopper empty, no tool or swarf left", ""},
		{"Guards", "Hopper grille: on and shut", ""},
		{"Guards", "Coupling guard: on, all its screws tight", ""},
		{"Oil", "Front bearing 30210: filled at step 10, as signed there", ""},
		{"Oil", "Gear motor", "gear oil as on its plate, to the level plug"},
		{"By", "Auger shaft: turned by hand at step 42, before it was coupled, as signed there", ""},
		{"Direction", "Start for a moment, nobody in line with an open end: Auger shaft seen from its end away from the motor", "clockwise"},
		{"Direction", "Emergency stop tried, and let out: mushroom button at the hopper, in reach of who feeds it", "it stops, and stays off"},
		{"Idle", "Warm up first: coupled and empty, all guards on, to warm the oil of the gear motor", "15 min"},
		{"After", "6 × M10 x 35, Die ring to Barrel flange 1", "38 N m, threads lubricated"},
		{"After", "4 × Pillar, Motor adapter to Housing plate", "117 N m, threads dry"},
		{"After", "6 × M6 x 30, Gland ring to Bearing housing", "10 N m when Lantern is off"},
		{"After", "4 × M6 x 16, Rear cover to Bearing housing", "8 N m when Coupling guard, Gear motor 2.2 kW (48 kg, hoist, propped as in step 39) and Flexible coupling are off"},
		{"After", "8 × M10 x 30, Housing plate to Bearing housing", "51 N m when Coupling guard is off"},
		{"After", "2 × M8 x 16, Switch bracket to Housing plate", "25 N m when Coupling guard is off"},
		{"After", "2 × M6 x 12, Coupling guard to Housing plate", "10 N m, threads dry"},
		{"After", "4 × anchor M12, Stand foot floor anchor", "by its maker"},
		{"After", "4 × bolt M12 x 60 8.8, Gear motor 2.2 kW", "as step 42 has it"},
		{"After", "Rear bearing 30208: end play of Auger shaft; else all over Rear cover, and that, off, step 11", "none: preload 0.01 mm – 0.03 mm"},
	} {
		lines := stage(t, r, c.stage).Lines
		if !slices.ContainsFunc(lines, func(l plan.CardLine) bool { return l.Do == c.do && l.Wanted == c.wanted }) {
			t.Errorf("%s lacks %q, %q: %q", c.stage, c.do, c.wanted, lines)
		}
	}
	if got := stage(t, r, "Idle").Runs; !slices.Equal(got, []plan.RunRow{{What: "idle", After: "10 min", Speed: "32 rev/min"}, {What: "idle", After: "30 min in all", Speed: "32 rev/min"}, {What: "idle", After: "60 min in all", Speed: "32 rev/min"}}) {
		t.Errorf("idle: %q", got)
	}
	if got := stage(t, r, "Under").Runs; len(got) != 2 || got[1] != (plan.RunRow{What: "clay as worked", After: "60 min", Speed: "32 rev/min"}) {
		t.Errorf("load: %q", got)
	}
	if !slices.Equal(r.Watch, []plan.Watched{{Where: "front bearing", Most: "70 °C"}, {Where: "rear bearing", Most: "70 °C"}, {Where: "gear motor case", Most: "80 °C"}}) || r.Degrees != "°C" {
		t.Errorf("watch: %q in %s", r.Watch, r.Degrees)
	}
	if len(r.Cautions) != 1 || !strings.Contains(r.Cautions[0], "Isolate the supply") {
		t.Errorf("cautions: %q", r.Cautions)
	}
}

// What a job does not say is not on the card: no motor, no direction and no
// isolator; no runs, the usual ones.
func TestFirstRunOfLess(t *testing.T) {
	t.Parallel()
	if pl := less(t, ""); pl.FirstRun != nil || pl.Upkeep != nil || pl.Motor != nil {
		t.Errorf("a card that nobody asked for: %v, %v, %v", pl.FirstRun, pl.Upkeep, pl.Motor)
	}
	r := less(t, "first-run: {again-after: 2}\n").FirstRun
	if got := titles(r); !slices.Equal(got, []string{"Oil, grease", "By hand", "Idle", "Under load", "After 2 h"}) {
		t.Errorf("stages %q", got)
	}
	var after []string
	for _, row := range append(stage(t, r, "Idle").Runs, stage(t, r, "Under").Runs...) {
		after = append(after, row.What+" "+row.After)
	}
	if !slices.Equal(after, []string{"idle 10 min", "idle 30 min in all", "idle 60 min in all", "working load 60 min"}) {
		t.Errorf("usual runs: %q", after)
	}
	if !slices.Equal(r.Watch, []plan.Watched{{Where: "front bearing"}, {Where: "rear bearing"}}) {
		t.Errorf("watched: %q", r.Watch)
	}
	if strings.Contains(strings.Join(r.Cautions, ""), "Isolate") || len(r.Cautions) != 1 {
		t.Errorf("cautions: %q", r.Cautions)
	}
}

// An inch job: Fahrenheit by 9/5 and 32, ounces of 28.349523125 g (NIST SP 811),
// pound-feet, thousandths.
func TestInches(t *testing.T) {
	t.Parallel()
	pl := demo(t, "gatejack")
	if r := pl.FirstRun; r.Watch[0].Most != "149 °F (65 °C)" || r.Degrees != "°F" {
		t.Errorf("watch %q", r.Watch)
	}
	after := stage(t, pl.FirstRun, "After 4 h").Lines
	// The job says no torque for the screws of the hub, and its wheel is off when the motor is on.
	if !slices.Contains(after, plan.CardLine{Do: "3 × screw 3/8-16 UNC x 5/8 in, Handwheel hub", Wanted: "none turns further by hand, where it is on"}) {
		t.Errorf("screws of the hub: %q", after)
	}
	if last := after[len(after)-1]; last.Wanted != "0.001 in – 0.003 in" {
		t.Errorf("end play %q", last)
	}
	if start := stage(t, pl.FirstRun, "Direction").Lines[0]; start != (plan.CardLine{Do: "Start for a moment each way", Wanted: "both, as switched"}) {
		t.Errorf("either way: %q", start)
	}
	if got := pl.Motor.Machine[0]; got.Value != "either" { // whichever end it is seen from
		t.Errorf("%q", got)
	}
	// 0.005 × 2.5625 in × 0.71 in, each in mm: 5.87 g, 0.21 oz.
	if got := pl.Upkeep.Ports[0]; got.What != "calcium NLGI 2, 0.42 oz (0.21 oz and 0.21 oz)" || !strings.HasPrefix(got.Where, "Lower bearing LM48548/LM48510, Upper bearing LM48548/LM48510: grease port of Thrust housing") {
		t.Errorf("port %q", got)
	}
	if got := pl.Upkeep.Sources[0]; !strings.HasPrefix(got, "Grease of a bearing: 0.114 × outside × width in inches, in oz;") {
		t.Errorf("source %q", got)
	}
	if got := pl.Upkeep.Bolts[1]; got != (plan.UpkeepRow{Where: "4 × 1/2-13 UNC x 1 in, Pedestal flange 2 to Yoke plate", What: "35 lb ft (47 N m), threads anti-seize", Every: "season"}) {
		t.Errorf("bolts %q", got)
	}
	if got := pl.Upkeep.Wear[1].Where; got != "2 × Stop collar" {
		t.Errorf("wear %q", got)
	}
}

func TestUpkeep(t *testing.T) {
	t.Parallel()
	u := demo(t, "pugmill").Upkeep
	// 0.005 × 90 × 21.75 = 9.8 g and 0.005 × 80 × 19.75 = 7.9 g through one port.
	// Both drains lie at 60 from the front as the port does and are 20 long: open, they let out what is pumped in.
	// The plug's hole at 270° is tapped and shut.
	if len(u.Ports) > 0 && !strings.HasSuffix(u.Ports[0].Where, "at 0°, 60 from its front, drain at 150°, 210° plugged with a rag meanwhile, open again after") {
		t.Errorf("port %q", u.Ports[0].Where)
	}
	if len(u.Ports) != 2 || u.Ports[0].What != "lithium soap NLGI 2, 18 g (10 g and 8 g)" || u.Ports[1] != (plan.UpkeepRow{Where: "Gear motor", What: "gear oil as on its plate, to the level plug", Every: "year"}) {
		t.Errorf("ports %q", u.Ports)
	}
	if u.Bolts[0] != (plan.UpkeepRow{Where: "6 × M10 x 45, Barrel flange 2 to Lantern", What: "51 N m, threads dry; to part it: Hopper ring and Die nut, with all on it, off first; then 27 kg empty, what is in it on top, slung as in step 17", Every: "each cleaning"}) {
		t.Errorf("bolts %q", u.Bolts)
	}
	if len(u.Sources) != 3 || u.Wear[3].Where != "Emergency stop, hopper grille" || len(u.Cautions) != 1 || u.Wear[1].Where != "Seal of the gland" {
		t.Errorf("%+v", u)
	}
	// Other intervals, and amounts of the job's own, keep the bearings apart.
	u = demo(t, "pugmill", "{bearing: rear-bearing, every: 50 h}", "{bearing: rear-bearing, every: 25 h}").Upkeep
	if len(u.Ports) != 3 || !strings.HasSuffix(u.Ports[1].What, ", 8 g") || u.Ports[1].Every != "25 h" {
		t.Errorf("apart: %q", u.Ports)
	}
	u = demo(t, "pugmill", "{bearing: rear-bearing, every: 50 h}", "{bearing: rear-bearing, grease: oil, amount: 3 drops, every: 50 h}").Upkeep
	if len(u.Ports) != 3 || u.Ports[1].What != "oil, 3 drops" {
		t.Errorf("the job's own: %q", u.Ports)
	}
}

func TestMotor(t *testing.T) {
	t.Parallel()
	m := demo(t, "pugmill").Motor
	for _, want := range []plan.Fact{{Label: "Power", Value: "2.2 kW"}, {Label: "Voltage", Value: "230/400 V"}, {Label: "Current", Value: "4.8 A"}, {Label: "Speed at the output", Value: "32 rev/min"}, {Label: "Flange", Value: "gear flange 265, spigot 230"}} {
		if !slices.Contains(m.Plate, want) {
			t.Errorf("the plate lacks %q: %q", want, m.Plate)
		}
	}
	if !slices.Contains(m.Machine, plan.Fact{Label: "Guard interlocked", Value: "hopper grille"}) || !slices.Contains(m.Sign, "Auger shaft turns clockwise, seen from its end away from the motor") || !slices.Contains(m.Sign, "Opening it stops the motor, shutting it starts nothing: hopper grille") {
		t.Errorf("%q, %q", m.Machine, m.Sign)
	}
	if want := (plan.Fact{Label: "Rotation wanted", Value: "Auger shaft clockwise, seen from its end away from the motor; judge it there, not by the motor's fan"}); !slices.Contains(m.Machine, want) {
		t.Errorf("rotation: %q", m.Machine)
	}
	// Beside it by a belt, with both ends to one side: clockwise from behind the motor is clockwise from the far end; with
	// its shaft the other way it is against that from there.
	for opposed, want := range map[bool]string{false: "clockwise", true: "counter-clockwise"} {
		text, err := os.ReadFile("../../testdata/pugmill/job.yaml")
		if err != nil {
			t.Fatal(err)
		}
		job, err := read.LoadText("job.yaml", []byte(strings.NewReplacer("rotation: counter-clockwise\n", "rotation: clockwise\n  through: belt\n").Replace(string(text))), "../../testdata/pugmill")
		if err != nil {
			t.Fatal(err)
		}
		worked, err := layout.Resolve(job)
		if err != nil {
			t.Fatal(err)
		}
		worked.ArrangeAs(&plan.Plan{Arrangement: &plan.Arrangement{Opposed: opposed}})
		if want = "Auger shaft turns " + want + ", seen from its end away from the belt"; !slices.Contains(worked.Plan.Motor.Sign, want) {
			t.Errorf("%v: %q", opposed, worked.Plan.Motor.Sign)
		}
	}
	// Seen from where the other end of the motor is, or of no part that is named.
	for edit, want := range map[string]string{"rotation: clockwise\n": "Auger shaft turns counter-clockwise, seen from its end away from the motor", "rotation: counter-clockwise\n  seen-from: drive-end\n": "Auger shaft turns counter-clockwise, seen from its end away from the motor"} {
		old := "rotation: counter-clockwise\n"
		if strings.Contains(edit, "seen-from") {
			old += "  seen-from: non-drive-end\n"
		}
		if m := demo(t, "pugmill", old, edit).Motor; !slices.Contains(m.Sign, want) {
			t.Errorf("%s: %q", edit, m.Sign)
		}
	}
	if m := demo(t, "pugmill", "  drives: auger-shaft.drive\n", "").Motor; !slices.Contains(m.Sign, "Turns counter-clockwise, as wanted above") || !slices.Contains(m.Machine, plan.Fact{Label: "Rotation wanted", Value: "counter-clockwise, seen from the motor's non-drive end, looking to what it drives"}) {
		t.Errorf("no part named: %q, %q", m.Machine, m.Sign)
	}
	if m := demo(t, "pugmill", "rotation: counter-clockwise\n", "rotation: either\n").Motor; !slices.Contains(m.Machine, plan.Fact{Label: "Rotation wanted", Value: "either"}) {
		t.Errorf("either way: %q", m.Machine)
	}
	if !strings.Contains(m.Cautions[0], "licensed electrician") {
		t.Errorf("cautions %q", m.Cautions)
	}
	torque := func(m *plan.Motor) string { // 60 × 2200 / (2 π × 32) N m; 0.25 × 745.7 W at 18 rev/min
		i := slices.IndexFunc(m.Machine, func(f plan.Fact) bool { return f.Label == "Torque at the output" })
		text, _, _ := strings.Cut(m.Machine[i].Value, " at full power, losses left out")
		return text
	}
	if mill, jack := torque(m), torque(demo(t, "gatejack").Motor); mill != "657 N m" || jack != "73 lb ft (99 N m)" {
		t.Errorf("%s, %s", mill, jack)
	}
	m = demo(t, "gatejack").Motor
	if !slices.Contains(m.Plate, plan.Fact{Label: "Power", Value: "0.25 hp"}) || !slices.Contains(m.Plate, plan.Fact{Label: "Flange"}) || !slices.Contains(m.Sign, "Turns both ways as switched") || len(m.Notes) != 5 {
		t.Errorf("%+v", m)
	}
}

// Every table stands once, with the states that its rows carry.
func TestSources(t *testing.T) {
	t.Parallel()
	all := demo(t, "pugmill").Sources
	if len(all) != 3 || len(all[1].Rows) != len(material.Columns()) || len(all[2].Rows) != 29 {
		t.Fatalf("%d tables: %q", len(all), all)
	}
	seen := map[string]bool{}
	for _, table := range all {
		for _, r := range table.Rows {
			if r.What == "" || r.Source == "" || r.State == "" || seen[r.What+r.Source] {
				t.Errorf("%q", r)
			}
			seen[r.What+r.Source] = true
		}
	}
	for _, want := range []plan.SourceRow{
		{What: "S235", Source: "EN 10025-2:2004 Table 7", State: "checked"},
		{What: "1.4301", Source: "EN 10088-3 Table 13, lowest of 1.4301, 1.4306 and 1.4307", State: "from memory"},
		{What: "correlation factor of fillets", Source: "EN 1993-1-8 Table 4.1", State: "checked"},
		{What: "Woodruff keys", Source: "DIN 6888", State: "checked in part"},
		{What: "centre holes, sizes", Source: "ISO 6411", State: "checked"},
		{What: "thread ends, undercuts", Source: "DIN 76-1", State: "checked"},
		{What: "knurls", Source: "DIN 82:1973", State: "checked in part"},
		{What: "edges of butt welds", Source: "ISO 9692-1", State: "from memory"},
	} {
		if !slices.ContainsFunc(all, func(t plan.SourceTable) bool { return slices.Contains(t.Rows, want) }) {
			t.Errorf("no row %q", want)
		}
	}
}
