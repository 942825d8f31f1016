package part

import (
	"path/filepath"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/golden"
)

// TestWorked: everything that is worked out of small parts, which together have every
// form and most that a part can have, as text: faces, sections, operations, records,
// patterns, cutting files. The parts stand in testdata/worked, what is wanted beside
// them; of turned.yaml how they are made and measured. CENTREPOP_UPDATE=1 writes it anew: read the
// difference. What it claims is checked against sources by the other tests.
func TestWorked(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"mm", "turned", "inch"} {
		job, err := parts.Load(golden.Job(t, filepath.Join("testdata", "worked", name+".yaml")))
		if err != nil {
			t.Fatal(err)
		}
		var out []worked
		for i, p := range job.Parts {
			m := Work(job, p)
			if len(m.Errs) > 0 {
				t.Fatal(m.Errs)
			}
			w := worked{Part: m.Out}
			w.Cut, _ = CutProfile(job, p.Name.Value, CutOptions{KerfMm: 0.3, Compensate: i%2 == 0, Piece: firstPiece(m)})
			if name == "turned" {
				w.Part = &plan.PartPlan{Name: m.Out.Name, Section: m.Out.Section, Operations: m.Out.Operations, Checks: m.Out.Checks, Problems: m.Out.Problems}
			}
			out = append(out, w)
		}
		golden.Compare(t, filepath.Join("testdata", "worked", name+".txt"), golden.Text(out))
	}
}

type worked struct {
	Part *plan.PartPlan
	Cut  *plan.Profile // nil where no file is cut
}
