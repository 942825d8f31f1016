package joint_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"centrepop/layout"
	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

func TestMain(m *testing.M) { layouttest.Main(m) }

// TestWorked: everything that is worked out of small jobs, which together have every
// kind of joint, of one whose joints are wrong, and of the demos, as text. The jobs stand in testdata/worked, what is
// wanted of each beside it. CENTREPOP_UPDATE=1 writes it anew: read
// the difference. What it claims is checked against sources by the other tests.
func TestWorked(t *testing.T) {
	t.Parallel()
	work := func(name, path string) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			text, err := workedOut(path)
			if err != nil {
				t.Fatal(err)
			}
			golden.Whole(t, filepath.Join("testdata", "worked", name+".txt"), text)
		})
	}
	for _, name := range []string{"gatejack", "pugmill"} {
		work(name, filepath.Join("..", "..", "testdata", name, "job.yaml"))
	}
	for _, name := range []string{"balls", "barrel", "drive", "feeder", "formed", "frame", "inch", "jack", "screw", "sieve", "stood", "vice", "winch", "wrong"} {
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
		text, err := workedOut(layouttest.Write(t, files))
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(text)) {
			all.WriteString(strings.TrimSuffix(filepath.Base(path), ".txtar") + "\t" + line)
		}
	}
	golden.Whole(t, filepath.Join("testdata", "worked", "cases.txt"), []byte(all.String()))
}

// copies is how many copies of a demo share its faults.
const copies = 16

// TestWorkedFaults: the same of copies of the demos with the faults of joints that the review is seeded with, dealt out
// in turn, so that those of one kind or place, which stand together there, come apart; of each copy a line.
func TestWorkedFaults(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("../review/testdata/seeded.txt")
	if err != nil {
		t.Fatal(err)
	}
	edits, dealt := map[string][][3]string{}, map[string]int{}
	for line := range strings.Lines(string(text)) {
		f := strings.Split(strings.NewReplacer(`\n`, "\n").Replace(strings.TrimSuffix(line, "\n")), " | ")
		if len(f) != 5 || !slices.ContainsFunc(words.Problems, func(p words.About) bool { return p.Code == f[4] }) {
			continue
		}
		name := fmt.Sprintf("%s %d", f[0], dealt[f[0]]%copies)
		dealt[f[0]]++
		edits[name] = append(edits[name], [3]string{f[1], f[2], f[3]})
	}
	names := slices.Sorted(maps.Keys(edits))
	out := make([]string, len(names))
	t.Run("of", func(t *testing.T) {
		for i, name := range names {
			t.Run(name, func(t *testing.T) {
				t.Parallel()
				demo, _, _ := strings.Cut(name, " ")
				text, err := workedOut(layouttest.EditedOnce(t, demo, edits[name]...))
				if err != nil {
					t.Fatalf("two of the faults do not go together: %v", err)
				}
				var b strings.Builder
				for line := range strings.Lines(string(text)) {
					b.WriteString(name + "\t" + line)
				}
				out[i] = b.String()
			})
		}
	})
	golden.Whole(t, filepath.Join("testdata", "worked", "faults.txt"), []byte(strings.Join(out, "")))
}

// workedOut is what package joint works out of a job, as text.
func workedOut(path string) ([]byte, error) {
	job, err := read.Load(path)
	if err != nil {
		return nil, err
	}
	w, err := layout.Work(job)
	if err != nil {
		return nil, err
	}
	p := w.Plan
	return golden.Text(plan.Plan{
		Joints: p.Joints, Faults: p.Faults, Stock: p.Stock, Bought: p.Bought, Cuts: p.Cuts, Bars: p.Bars, Tools: p.Tools, Lifts: p.Lifts,
	}), nil
}
