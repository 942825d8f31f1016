package review

import (
	"bytes"
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"centrepop/layout"
	"centrepop/layout/layouttest"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// load writes the files of a case into a folder and reads the job.
func load(t *testing.T, a *txtar.Archive) *parts.Job {
	t.Helper()
	files := map[string]string{}
	for _, f := range a.Files {
		files[f.Name] = string(f.Data)
	}
	job, err := read.Load(layouttest.Write(t, files))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// reviewOf are the findings of a job of some files.
func reviewOf(t *testing.T, files map[string]string) []Finding {
	t.Helper()
	job, err := read.Load(layouttest.Write(t, files))
	if err != nil {
		t.Fatal(err)
	}
	all, _, err := reviewed(job)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func text(findings []Finding) []byte {
	var b bytes.Buffer
	for _, f := range findings {
		fmt.Fprintf(&b, "%s:%d:%d %s %s [%s.%s] %s\n", f.Pos.File, f.Pos.Line, f.Pos.Column, f.Severity, f.Code, f.Part, f.Feature, f.What)
		fmt.Fprintf(&b, "  %s\n  %s (%s)\n  %s\n", words.Join("; number: ", f.Numbers, f.Number), f.Rule, f.Source, f.Fix)
		if f.Accepted {
			fmt.Fprintf(&b, "  accepted: %s\n", f.Reason)
		}
	}
	return b.Bytes()
}

// TestRules runs every case of testdata. Its name begins with the code of the
// rule it is about. Parts and joints whose name begins with bad must have that
// finding, all others must not; where the job itself is at fault, the archive
// has no such part, and the finding must be there. The findings in full are in
// the file beside it.
func TestRules(t *testing.T) {
	cases, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(cases) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, path := range cases {
		name := strings.TrimSuffix(filepath.Base(path), ".txtar")
		code, _, _ := strings.Cut(name, ".")
		t.Run(name, func(t *testing.T) {
			a, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			job := load(t, a)
			findings, _, err := reviewed(job)
			if err != nil {
				t.Fatal(err)
			}
			found := map[string]bool{}
			var each []Finding
			for _, f := range findings {
				each = append(each, f.Each()...)
			}
			for _, f := range each {
				if f.Code == code {
					found[f.Part] = true
					if f.Part != "" && !strings.HasPrefix(f.Part, "bad") {
						t.Errorf("%s found at %s: %s", code, f.Part, f.What)
					}
				}
				for _, s := range []string{f.What, f.Numbers, f.Rule, f.Fix} {
					if strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
						t.Errorf("no number: %s", s)
					}
				}
				if f.What == "" || f.Rule == "" || f.Source == "" || f.Fix == "" {
					t.Errorf("finding lacks something: %+v", f)
				}
				if f.Pos.File == "" || f.Pos.Line < 1 || f.Pos.Column < 1 {
					t.Errorf("finding without a place: %+v", f)
				}
			}
			bad := false
			for _, n := range names(job) {
				if strings.HasPrefix(n, "bad") {
					bad = true
					if !found[n] {
						t.Errorf("%s not found at %s", code, n)
					}
				}
			}
			if !bad && len(found) == 0 {
				t.Errorf("%s not found", code)
			}
			golden.Compare(t, strings.TrimSuffix(path, ".txtar")+".txt", text(each))
		})
	}
}

// TestRulesOnMachines: all that is found in the small jobs of layout/joint, four of them whole
// machines, with its numbers. CENTREPOP_UPDATE=1 writes testdata/worked anew: read the
// difference. That each finding is right is checked by the other tests.
func TestRulesOnMachines(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"barrel", "drive", "feeder", "formed", "frame", "inch", "screw", "sieve", "stood", "vice", "winch"} {
		job, err := read.Load(golden.Job(t, filepath.Join("..", "joint", "testdata", "worked", name+".yaml")))
		if err != nil {
			t.Fatal(err)
		}
		findings, _, err := reviewed(job)
		if err != nil {
			t.Fatal(err)
		}
		golden.Whole(t, filepath.Join("testdata", "worked", name+".txt"), text(findings))
	}
}

// names are those of parts and joints. Only joints are looked at where there
// are any that are meant to be bad.
func names(job *parts.Job) []string {
	var out []string
	for _, p := range job.Parts {
		out = append(out, p.Name.Value)
	}
	for _, j := range job.Joints {
		out = append(out, j.Name.Value)
	}
	return out
}

// codes lists the codes of all findings with what they are about, in the order
// of the rules.
func codes() [][2]string {
	var out [][2]string
	for _, r := range jobRules {
		out = append(out, [2]string{r.code, r.about})
	}
	for _, r := range partRules {
		out = append(out, [2]string{r.code, r.about})
	}
	for _, k := range words.Problems {
		if !slices.ContainsFunc(out, func(o [2]string) bool { return o[0] == k.Code }) {
			out = append(out, [2]string{k.Code, "not so: " + k.Rule})
		}
	}
	return append(out, [2]string{"accepted-nothing", "the job accepts a finding that is not there"})
}

// TestEveryRuleHasACase keeps rules and cases together.
func TestEveryRuleHasACase(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range codes() {
		code := c[0]
		if seen[code] || c[1] == "" {
			t.Errorf("code %s: listed twice or not explained", code)
		}
		seen[code] = true
	}
	var own []string
	for _, r := range partRules {
		own = append(own, r.code)
	}
	for _, code := range append(own, "tolerance", "counterpart", "fit-side", "trap", "weld-first", "weld-access", "accepted-nothing", "yield", "press-force", "press-reach", "in-line", "pattern", "weld-prep") {
		found, err := filepath.Glob("testdata/" + code + ".*txtar")
		if err != nil || len(found) == 0 && !slices.ContainsFunc(seeds(t, "seeded.txt", 5), func(s seed) bool { return s.code == code }) {
			t.Errorf("no case for %s", code)
		}
	}
}

// TestDemoJobsAreReady requires that the demo jobs have nothing open, and that a second
// review says the same, the worst first.
func TestDemoJobsAreReady(t *testing.T) {
	t.Parallel()
	for name, of := range demos {
		first, err := of()
		if err != nil {
			t.Fatal(err)
		}
		if n := Summary(first).Open(); n > 0 {
			t.Errorf("%s: %d findings are open", name, n)
		}
		if !slices.IsSortedFunc(first, func(a, b Finding) int { return rank(a.Severity) - rank(b.Severity) }) {
			t.Errorf("%s: not sorted by severity", name)
		}
		again, err := demo(name)
		if a, b := text(first), text(again); err != nil || !bytes.Equal(a, b) {
			t.Errorf("%s: two reviews differ: %v %s", name, err, golden.Diff(a, b))
		}
	}
}

// TestTitlesDecideNothing gives the parts of a demo titles that are full of the words of other things, wherever its files
// name them: the findings and their places stay.
func TestTitlesDecideNothing(t *testing.T) {
	t.Parallel()
	first, err := demos["pugmill"]()
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	var titles []string
	paths, _ := filepath.Glob("../../testdata/pugmill/*.yaml")
	for _, path := range paths {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files[filepath.Base(path)] = string(src)
		if m := regexp.MustCompile(`(?m)^title: (.+ .+)$`).FindSubmatch(src); m != nil {
			titles = append(titles, string(m[1]))
		}
	}
	words := []string{"Ring 3 holes and slot", "Belt stop", "Keyed motor weld", "Height", "Plate over bolts", "Bush with nut", "Dowel pin hinge", "Thread anchor", "Seal washer", "Press pulley"}
	slices.SortFunc(titles, func(a, b string) int { return cmp.Or(len(b)-len(a), strings.Compare(a, b)) })
	for i, title := range titles {
		for name, src := range files {
			files[name] = regexp.MustCompile(`(?i)\b`+title+`\b`).ReplaceAllString(src, fmt.Sprint(words[i%len(words)], " ", i))
		}
	}
	second := reviewOf(t, files)
	said := func(of []Finding) (out []string) {
		for _, f := range of {
			out = append(out, fmt.Sprint(f.Severity, " ", f.Code, " ", f.Part, " ", f.Feature, " ", f.Pos.File, " ", f.Pos.Line))
		}
		return slices.Sorted(slices.Values(out))
	}
	if want, got := said(first), said(second); !slices.Equal(got, want) {
		t.Errorf("other titles: %s%s", golden.Diff([]byte(strings.Join(want, "\n")), []byte(strings.Join(got, "\n"))), text(second))
	}
}

// TestRefusedJobIsNotAccepted keeps a job that cannot be made from being
// accepted into readiness.
func TestRefusedJobIsNotAccepted(t *testing.T) {
	a, err := txtar.ParseFile("testdata/in-line.txtar")
	if err != nil {
		t.Fatal(err)
	}
	job := &a.Files[0]
	job.Data = append(slices.Clone(job.Data), "accept:\n  - {finding: in-line, at: bad, reason: near enough}\n"...)
	findings, plan, err := reviewed(load(t, a))
	if err != nil || len(plan.Joints) != 0 || len(plan.Faults) != 1 {
		t.Fatalf("plan %v, error %v", plan, err)
	}
	if Summary(findings).Stop != 1 {
		t.Errorf("not stopped: %s", text(findings))
	}
}

// BenchmarkReview reviews the pug mill as resolved.
func BenchmarkReview(b *testing.B) {
	job, err := read.Load("../../testdata/pugmill/job.yaml")
	if err != nil {
		b.Fatal(err)
	}
	w, err := layout.Work(job)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		Review(w)
	}
}
