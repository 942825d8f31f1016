package joint_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"centrepop/layout"
	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// TestWorked: everything that is worked out of small jobs, which together have every
// kind of joint, of one whose joints are wrong, and of the demos, as text. The jobs stand in testdata/worked, what is
// wanted of each beside it. CENTREPOP_UPDATE=1 writes it anew: read
// the difference. What it claims is checked against sources by the other tests.
func TestWorked(t *testing.T) {
	t.Parallel()
	work := func(name, path string) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			golden.Whole(t, filepath.Join("testdata", "worked", name+".txt"), workedOut(t, path))
		})
	}
	for _, name := range []string{"gatejack", "pugmill"} {
		work(name, filepath.Join("..", "..", "testdata", name, "job.yaml"))
	}
	for _, name := range []string{"barrel", "drive", "feeder", "formed", "frame", "inch", "screw", "sieve", "vice", "winch", "wrong"} {
		work(name, golden.Job(t, filepath.Join("testdata", "worked", name+".yaml")))
	}
}

// TestWorkedCases: the same of the cases of the review, most of which have a fault: of each a line.
func TestWorkedCases(t *testing.T) {
	t.Parallel()
	cases, err := filepath.Glob("../review/testdata/*.txtar")
	if err != nil || len(cases) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	var all strings.Builder
	for _, path := range cases {
		a, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files := map[string]string{}
		for _, f := range a.Files {
			files[f.Name] = string(f.Data)
		}
		for line := range strings.Lines(string(workedOut(t, layouttest.Write(t, files)))) {
			all.WriteString(strings.TrimSuffix(filepath.Base(path), ".txtar") + "\t" + line)
		}
	}
	golden.Whole(t, filepath.Join("testdata", "worked", "cases.txt"), []byte(all.String()))
}

// workedOut is what package joint works out of a job, as text.
func workedOut(t *testing.T, path string) []byte {
	t.Helper()
	job, err := read.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	w, err := layout.Work(job)
	if err != nil {
		t.Fatal(err)
	}
	p := w.Plan
	return golden.Text(plan.Plan{
		Joints: p.Joints, Faults: p.Faults, Stock: p.Stock, Bought: p.Bought, Cuts: p.Cuts, Bars: p.Bars, Tools: p.Tools, Lifts: p.Lifts,
	})
}
