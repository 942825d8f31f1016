package part

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// TestWorked: everything that is worked out of small parts, which together have every
// form and most that a part can have, as text: faces, sections, operations, records,
// patterns. The parts stand in testdata/worked/mm.yaml and inch.yaml, apart by "---";
// what is wanted of each beside them. CENTREPOP_UPDATE=1 writes it anew: read the
// difference. What it claims is checked against sources by the other tests.
func TestWorked(t *testing.T) {
	t.Parallel()
	for _, units := range []string{"mm", "inch"} {
		text, err := os.ReadFile(filepath.Join("testdata", "worked", units+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		job := load(t, strings.TrimSuffix(units, "ch"), strings.Split(string(text), "\n---\n")...)
		for _, p := range job.Parts {
			t.Run(p.Name.Value, func(t *testing.T) {
				t.Parallel()
				m := Work(job, p)
				if len(m.Errs) > 0 {
					t.Fatal(m.Errs)
				}
				golden.Compare(t, filepath.Join("testdata", "worked", p.Name.Value+".txt"), golden.Text(m.Out))
			})
		}
	}
}
