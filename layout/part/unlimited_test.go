package part

import (
	"path/filepath"
	"testing"

	"centrepop/layout/words"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// TestNoLimits: what nothing limits has no limits in the data either.
func TestNoLimits(t *testing.T) {
	t.Parallel()
	seen := 0
	for _, name := range []string{"mm", "inch", "turned"} {
		job, err := read.Load(golden.Job(t, filepath.Join("testdata", "worked", name+".yaml")))
		if err != nil {
			t.Fatal(err)
		}
		job.Tolerance.Value = ""
		for _, p := range job.Parts {
			for _, c := range Work(job, p).Out.Checks {
				if c.Limits == words.OrNone("") {
					if seen++; c.MinMm != 0 || c.MaxMm != 0 {
						t.Errorf("%s of %s: %v to %v, and %q", c.What, p.Name.Value, c.MinMm, c.MaxMm, c.Limits)
					}
				}
			}
		}
	}
	if seen < 50 {
		t.Errorf("%d checks without limits", seen)
	}
}
