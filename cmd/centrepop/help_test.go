package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// TestChapters: every command stands in one chapter of the help, with a line to
// type, and no chapter names another.
func TestChapters(t *testing.T) {
	t.Parallel()
	var all []string
	for _, cmd := range commands() {
		all = append(all, cmd.name)
	}
	names := commandNames()
	slices.Sort(names)
	slices.Sort(all)
	if !slices.Equal(names, all) {
		t.Errorf("the help has  %v\nthere are     %v", names, all)
	}
	for _, c := range chapters {
		for _, e := range c.commands {
			for _, line := range e.lines {
				if !strings.HasPrefix(line, "centrepop "+e.name) {
					t.Errorf("%s: example %q", e.name, line)
				}
			}
		}
	}
}

// runIn runs the built program, which is this test binary under another name,
// in a folder.
func runIn(t *testing.T, folder, stdin string, args ...string) (stdout, stderr string, status int) {
	t.Helper()
	cmd := program(t, args...)
	cmd.Dir = folder
	cmd.Env = append(cmd.Environ(), "HOME="+folder, "XDG_CONFIG_HOME="+folder)
	cmd.Stdin = strings.NewReader(stdin)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		exit, ok := err.(*exec.ExitError)
		if !ok {
			t.Fatal(err)
		}
		status = exit.ExitCode()
	}
	return out.String(), errs.String(), status
}

// TestExamplesRun types every example of the help in the order of the help, in
// an empty folder.
func TestExamplesRun(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	flange := "flange: motor\nholes: {count: 4, diameter: 9, first: 45}\nbolt: M8\nreadings:\n  - {from: 1, to: 2, over: 79.7}\n  - {from: 2, to: 3, over: 79.7}\n  - {from: 3, to: 4, over: 79.7}\n  - {from: 4, to: 1, over: 79.7}\n  - {from: 1, to: 3, over: 109}\n"
	if err := os.WriteFile(filepath.Join(folder, "motor.yaml"), []byte(flange), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, c := range chapters {
		for _, e := range c.commands {
			for _, line := range e.lines {
				if e.name == "watch" {
					continue // it ends with Ctrl-C; TestWatchCommand runs it
				}
				args := strings.Fields(line)[1:]
				if e.name == "thread" {
					args = []string{"thread", strings.Join(args[1:], " ")}
				}
				out, errs, status := runIn(t, folder, "", args...)
				if status == statusBad || out+errs == "" {
					t.Errorf("%s: status %d\n%s%.200s", line, status, errs, out)
				}
			}
		}
	}
}

// TestStart: a job to begin with of every kind, in both units, has nothing open
// and prints.
func TestStart(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	for _, units := range []string{"mm", "in"} {
		if _, errs, status := runIn(t, folder, "", "start", units, "--kind", "all", "--units", units); status != 0 {
			t.Fatalf("%s: %s", units, errs)
		}
		job := filepath.Join(units, "job.yaml")
		out, errs, status := runIn(t, folder, "", "review", job)
		if status != 0 || !strings.Contains(out, "0 to stop at, 0 to check, ") {
			t.Errorf("%s: status %d, %s%s", units, status, errs, out)
		}
		uncomment(t, filepath.Join(folder, units), "turned.yaml", "clamp", "job.yaml", "tools")
		out, errs, status = runIn(t, folder, "", "review", job)
		if status == statusBad || !strings.Contains("\n"+out, "\n0 to stop at") {
			t.Errorf("%s, with what was commented out: %s%s", units, errs, out)
		}
		out, errs, status = runIn(t, folder, "", "sheets", job, "-o", units+".pdf")
		if status != 0 || !strings.Contains(out, fmt.Sprintf(", %d parts\n", len(read.Kinds()))) {
			t.Errorf("%s: %s%s", units, errs, out)
		}
	}
	_, errs, status := runIn(t, folder, "", "start", "mm")
	if status != statusBad || !strings.Contains(errs, "is there already") {
		t.Errorf("a second start: status %d, %s", status, errs)
	}
}

// uncomment makes keys count that a file to begin with shows in a comment: file and
// key in turn.
func uncomment(t *testing.T, folder string, list ...string) {
	t.Helper()
	for i := 0; i < len(list); i += 2 {
		path, key := filepath.Join(folder, list[i]), "\n"+list[i+1]+": "
		src := fileText(t, path)
		if !strings.Contains(src, "\n# "+key[1:]) {
			t.Errorf("%s shows no %s", list[i], list[i+1])
		}
		write(t, path, strings.Replace(src, "\n# "+key[1:], key, 1))
	}
}

// TestStreams: a job from standard input, outputs to standard output, and what
// there is to say then on standard error.
func TestStreams(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	if _, errs, status := runIn(t, folder, "", "start", ".", "--kind", "flange"); status != 0 {
		t.Fatal(errs)
	}
	job, err := os.ReadFile(filepath.Join(folder, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ args, begins string }{
		{"sheets - -o -", "%PDF-"}, {"template - flange -o -", "%PDF-"}, {"profile - flange -o -", "<?xml"}, {"preview - --part flange -o -", "\x89PNG"},
	} {
		out, errs, status := runIn(t, folder, string(job), strings.Fields(c.args)...)
		if status != 0 || !strings.HasPrefix(out, c.begins) || !strings.Contains(errs, "wrote -: ") {
			t.Errorf("%s: status %d, %.20q, %s", c.args, status, out, errs)
		}
	}
	_, errs, status := runIn(t, folder, "job: a\nunits: mm\nparts: [none.yaml]\n", "review", "-")
	if status != statusBad || !strings.HasPrefix(errs, "standard-input.yaml:3:9: there is no file") {
		t.Errorf("status %d, %s", status, errs)
	}
	_, errs, status = runIn(t, folder, "", "review", "flange.yaml")
	if status != statusBad || !strings.HasPrefix(errs, "flange.yaml:2:1: this is a part file, and a job is asked for") {
		t.Errorf("a part for a job: status %d, %s", status, errs)
	}
}

// TestCompletions: each shell's script names every command; bash takes its own
// and completes.
func TestCompletions(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	for _, shell := range []string{"bash", "zsh", "fish"} {
		out, errs, status := runIn(t, folder, "", "completion", shell)
		if status != 0 {
			t.Fatal(errs)
		}
		for _, name := range commandNames() {
			if !regexp.MustCompile(`\b` + name + `\b`).MatchString(out) {
				t.Errorf("%s: no %s", shell, name)
			}
		}
		if path, err := exec.LookPath(shell); err == nil {
			cmd := exec.Command(path, "-n")
			cmd.Stdin = strings.NewReader(out)
			if text, err := cmd.CombinedOutput(); err != nil {
				t.Errorf("%s does not take it: %s", shell, text)
			}
		}
	}
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no bash")
	}
	script, _, _ := runIn(t, folder, "", "completion", "bash")
	for _, c := range []struct{ words, want string }{{"centrepop she", "sheets"}, {"centrepop circle --pc", "--pcd"}, {"centrepop help lic", "licences"}} {
		words := strings.Fields(c.words)
		cmd := exec.Command(bash, "-c", script+"\nCOMP_WORDS=("+c.words+"); COMP_CWORD="+string(rune('0'+len(words)-1))+"; _centrepop; echo ${COMPREPLY[@]}")
		out, err := cmd.Output()
		if err != nil || strings.TrimSpace(string(out)) != c.want {
			t.Errorf("%s completes to %q, %v", c.words, out, err)
		}
	}
}

// TestManual compares the manual page and the list of the input's keys with
// what was read before.
func TestManual(t *testing.T) {
	t.Parallel()
	golden.Compare(t, "testdata/centrepop.1", []byte(manual(commands())))
	var b bytes.Buffer
	c := newCall("input", &b)
	if err := inputCmd(c); err != nil {
		t.Fatal(err)
	}
	golden.Compare(t, "testdata/input.txt", b.Bytes())
}

func TestRounded(t *testing.T) {
	t.Parallel()
	for in, want := range map[string]string{
		`{"a":1.23456789,"b":-0.0000001,"c":[1,2.5],"d":"1.23456789 \"2.3456789\"","e":12,"f":1e-7,"g":true}`: `{"a":1.234568,"b":0,"c":[1,2.5],"d":"1.23456789 \"2.3456789\"","e":12,"f":0,"g":true}`,
		`{"a":123456789012.5}`: `{"a":123456789012.5}`,
	} {
		if got := string(rounded([]byte(in))); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	var b bytes.Buffer
	for _, v := range []any{map[string]int{"a": 1}, []int{1}, map[string]int{}} {
		if err := writeAnswer(&b, "x", v); err != nil {
			t.Fatal(err)
		}
	}
	if want := "{\"schema\":\"centrepop x 1\",\"a\":1}\n{\"schema\":\"centrepop x 1\",\"answer\":[1]}\n{\"schema\":\"centrepop x 1\",\"answer\":{}}\n"; b.String() != want {
		t.Errorf("%s", b.String())
	}
}

// TestPlanAsData reads the answer of explain for a whole job as another program
// would.
func TestPlanAsData(t *testing.T) {
	t.Parallel()
	out, errs, status := runIn(t, "../../testdata/pugmill", "", "explain", "job.yaml", "--json")
	if status != 0 {
		t.Fatal(errs)
	}
	var plan struct {
		Schema string `json:"schema"`
		Units  string `json:"units"`
		Parts  []struct {
			Part  string `json:"part"`
			Faces []struct {
				Face  string `json:"face"`
				Holes []struct {
					N     int     `json:"n"`
					Group string  `json:"group"`
					X     float64 `json:"x_mm"`
					Y     float64 `json:"y_mm"`
				} `json:"holes"`
			} `json:"faces"`
		} `json:"parts"`
	}
	if err := json.Unmarshal([]byte(out), &plan); err != nil {
		t.Fatal(err)
	}
	if plan.Schema != "centrepop explain 1" || plan.Units != "mm" || len(plan.Parts) < 20 {
		t.Fatalf("%s, %s, %d parts", plan.Schema, plan.Units, len(plan.Parts))
	}
	for _, p := range plan.Parts {
		if p.Part == "barrel-flange" {
			// Hole 1 of the bolts lies at 30° on a radius of 110 mm.
			if h := p.Faces[0].Holes[0]; h.X != 55 || h.Y != 95.262794 {
				t.Errorf("hole 1 at %g, %g", h.X, h.Y)
			}
		}
	}
}
