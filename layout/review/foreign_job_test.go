package review

import (
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// foreign reviews a job of testdata/foreign with one text of one file replaced: its findings, notes too.
func foreign(t *testing.T, name, file, from, to string) (said []string) {
	t.Helper()
	text, err := os.ReadFile("testdata/foreign/" + name + ".txtar")
	if err != nil {
		t.Fatal(err)
	}
	a := txtar.Parse(text)
	for i := range a.Files {
		if f := &a.Files[i]; f.Name == file {
			if from != "" && strings.Count(string(f.Data), from) != 1 {
				t.Fatalf("%s has %q %d times", file, from, strings.Count(string(f.Data), from))
			}
			f.Data = []byte(strings.Replace(string(f.Data), from, to, 1))
		}
	}
	found, _, err := reviewed(load(t, a))
	if err != nil {
		t.Fatalf("%s: %v", to, err)
	}
	for _, f := range found {
		for _, each := range f.Each() {
			said = append(said, string(each.Severity)+" "+each.Code+": "+each.What+"; "+each.Numbers)
		}
	}
	return said
}

// What is wrong on machines of others is found by its own name, and what is sound is not.
func TestForeign(t *testing.T) {
	t.Parallel()
	clean := map[string]string{}
	for _, c := range []struct{ job, file, from, to, want string }{
		{"sieve", "job.yaml", `"30210"`, `"32210"`, "stop bearing: 32210 has other sizes than the joint gives; 90 mm × 24.75 mm"}, // ISO 355
		{"sieve", "job.yaml", `"30208"`, `"30208 J2"`, ""},
		{"sieve", "job.yaml", "NLGI 2, 50 g\"}\n", "NLGI 2, 40 g\"}\n", ""},
		{"sieve", "job.yaml", "\"lithium NLGI 2, 50 g\"}\n", "\"polyurea NLGI 2, 50 g\"}\n", "check bearing: the bearings in housing are greased unlike"},
		{"sieve", "job.yaml", "face: back-on-front\n", "face: front-on-front\n", "check spigot: spigot reaches into no register of its size; 0 mm of 3 mm at 90 mm"},
		{"sieve", "shaft.yaml", "diameter: 60, fit: h11,", "diameter: 60,", "check seal-fit: land has no limits, and the lip of a seal runs on it; wanted 59.81 – 60.00"}, // DIN 3760: h11
		{"sieve", "branch.yaml", "axial: 140", "axial: 60", "stop saddle: oblique inlet runs off the end of inlet tube; it covers -54.21 mm to 78.17 mm"},                 // 60 − √(84.15² − …)/tan 60° ∓ 57.15/sin 60°
		{"sieve", "housing.yaml", "  - {name: vent, clock: 180, axial: 93, size: G1/8 tap, note: vent plug G1/8}\n", "", "note bearing: one hole alone lets grease into housing and out again"},
		{"sieve", "shaft.yaml", "thread: M30x1.5", "thread: M42x1.5", "stop joint: shaft nose cannot be joined so"}, // the hub does not pass the thread of its nut
		{"sieve", "inlet.yaml", "{tube: 168.3, wall: 4, length: 326, cut: saw}", "{sheet: 4, cut: laser}", ""},
		{"sieve", "inlet.yaml", "{tube: 168.3, wall: 4, length: 326, cut: saw}", "{sheet: 3, cut: laser}", "stop allowance: the sheet is thinner than the part; 3 mm for 4 mm"},
		{"sieve", "cover-front.yaml", "lip: back", "lip: front", ""},
	} {
		if _, known := clean[c.job]; !known {
			clean[c.job] = strings.Join(foreign(t, c.job, "", "", ""), "\n")
		}
		var fresh []string
		for _, s := range foreign(t, c.job, c.file, c.from, c.to) {
			if !strings.HasPrefix(s, "note trap") && !strings.Contains(clean[c.job], s) {
				fresh = append(fresh, s)
			}
		}
		if got := strings.Join(fresh, "\n"); c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s → %s: %q", c.from, c.to, got)
		}
	}
}
