package joint_test

import (
	"path/filepath"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// TestWorked: everything that is worked out of small jobs, which together have every
// kind of joint, and of one whose joints are wrong, as text. The jobs stand in testdata/worked, what is wanted of each
// beside it. CENTREPOP_UPDATE=1 writes it anew: read
// the difference. What it claims is checked against sources by the other tests.
func TestWorked(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"barrel", "drive", "feeder", "formed", "frame", "inch", "screw", "sieve", "vice", "winch", "wrong"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			job, err := read.Load(golden.Job(t, filepath.Join("testdata", "worked", name+".yaml")))
			if err != nil {
				t.Fatal(err)
			}
			w, err := layout.Work(job)
			if err != nil {
				t.Fatal(err)
			}
			p := w.Plan
			golden.Whole(t, filepath.Join("testdata", "worked", name+".txt"), golden.Text(plan.Plan{
				Joints: p.Joints, Faults: p.Faults, Stock: p.Stock, Bought: p.Bought, Cuts: p.Cuts, Bars: p.Bars, Tools: p.Tools, Lifts: p.Lifts,
			}))
		})
	}
}
