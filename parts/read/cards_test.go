package read

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts"
)

// cardJob is a job with a bolt and a bearing joint less its cards; the parts
// are those of the pug mill.
func cardJob(t *testing.T, cards string) (*parts.Job, error) {
	t.Helper()
	src, err := os.ReadFile("../../testdata/pugmill/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	head, _, found := strings.Cut(string(src), "\nfirst-run:")
	if !found {
		t.Fatal("the pug mill has no first-run")
	}
	return LoadText("job.yaml", []byte(head+"\n"+cards), "../../testdata/pugmill")
}

func TestCardsOfTheDemos(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		j, err := Load(filepath.Join("../../testdata", name, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		if j.FirstRun == nil || j.Upkeep == nil || j.Motor == nil {
			t.Fatalf("%s lacks a card", name)
		}
		if r := j.FirstRun; len(r.Checks) != map[string]int{"pugmill": 3, "gatejack": 4}[name] || name == "pugmill" && (r.WarmUp.Value == 0 || r.WarmUpHow.Value == "") || r.Runs[0].Minutes.Value != 10 || name == "pugmill" && r.Runs[0].Load.Value != "" || r.Runs[len(r.Runs)-1].Load.Value == "" {
			t.Errorf("%s, first run: %+v", name, r)
		}
		if u := j.Upkeep; u.Ports[0].Bearing.Value == "" || u.Ports[2].Amount.Value == "" || u.Bolts[0].Joint.Value == "" || u.Wear[0].Part.Value == "" {
			t.Errorf("%s, upkeep: %+v", name, u)
		}
		if m := j.Motor; (m.KW.Value == 0) == (m.HP.Value == 0) || m.Phases != 3 || m.Rotation == "" || len(m.Guards) != map[string]int{"pugmill": 1, "gatejack": 2}[name] {
			t.Errorf("%s, motor: %+v", name, m)
		}
	}
	// 60 × 2200 W / (2 π × 32); at the speed of the motor where that of the output is not given.
	for _, c := range []struct{ kw, hp, out, rpm, nm float64 }{{2.2, 0, 32, 1420, 656.51}, {2.2, 0, 0, 1420, 14.795}, {0, 1, 60, 0, 118.68}, {2.2, 0, 0, 0, 0}} {
		m := parts.Motor{KW: parts.Number{Value: c.kw}, HP: parts.Number{Value: c.hp}, OutRPM: parts.Number{Value: c.out}, RPM: parts.Number{Value: c.rpm}}
		if got := m.OutputNm(); math.Abs(got-c.nm) > 0.005 {
			t.Errorf("%+v: %v", c, got)
		}
	}
	j, err := cardJob(t, "first-run: {}\n")
	if err != nil || j.FirstRun == nil || j.FirstRun.AgainHours != 8 || j.Upkeep != nil || j.Motor != nil {
		t.Errorf("an empty first run: %+v, %v", j, err)
	}
}

// TestCardFaults: one fault each, with what is said of it.
func TestCardFaults(t *testing.T) {
	t.Parallel()
	const plate = "volts: 400, phases: 3, speed: 1420, rotation: clockwise, seen-from: a, earth: b, emergency-stop: c"
	for _, c := range []struct{ text, want string }{
		{"first-run: {watch: [{bearing: front-baering}]}", "there is no bearing joint front-baering; perhaps front-bearing is meant"},
		{"first-run: {watch: [{bearing: barrel}]}", "there is no bearing joint barrel"},
		{"first-run: {watch: [{most: 70}]}", "has none of the keys bearing or place"},
		{"first-run: {watch: [{bearing: front-bearing, place: x}]}", "has both bearing and place"},
		{"first-run: {watch: [{place: x, most: 10}]}", "a number from 20 to 300"},
		{"first-run: {runs: [{speed: 40}]}", "lacks the key minutes"},
		{"first-run: {runs: [{minutes: 0}]}", "a number from 1 to 1440"},
		{"first-run: {runs: [{minutes: 5, load: clay}, {minutes: 5}]}", "an idle run comes after one under load"},
		{"first-run: {warm-up: {minutes: 5}}", "lacks the key how"},
		{"first-run: {again-after: 0}", "a number from 0.5 to 1000"},
		{"upkeep: {ports: [{bearing: front-bearing}]}", "lacks the key every"},
		{"upkeep: {ports: [{place: chain, grease: oil, every: day}]}", "a port without a bearing needs grease and amount"},
		{"upkeep: {bolts: [{joint: front-bearing, every: 8}]}", "8 says how many, and not of what"},
		{"upkeep: {bolts: [{joint: front-bearing, every: day}]}", "there is no bolt joint front-bearing"},
		{"upkeep: {wear: [{part: die-rnig, look: x, every: day}]}", "there is no part die-rnig in the job; perhaps die-ring is meant"},
		{"upkeep: {wear: [{part: die-ring, every: day}]}", "lacks the key look"},
		{"motor: {" + plate + "}", "has none of the keys kw or hp"},
		{"motor: {kw: 1, hp: 1, " + plate + "}", "has both kw and hp"},
		{"motor: {kw: 1, " + strings.Replace(plate, "clockwise", "left", 1) + "}", "rotation is \"left\", which is not known"},
		{"motor: {kw: 1, " + strings.Replace(plate, "phases: 3", "phases: 4", 1) + "}", "a whole number from 1 to 3"},
		{"motor: {kw: 1, " + strings.Replace(plate, ", earth: b", "", 1) + "}", "motor lacks the key earth"},
	} {
		_, err := cardJob(t, c.text+"\n")
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.text, err, c.want)
		}
	}
}
