package templates

import (
	"path/filepath"
	"testing"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/parts/read"
	"centrepop/templates/sheettest"
)

// TestJobsAreClean checks every page of the packets of the two demonstration
// jobs on their own paper, and on the least paper.
func TestJobsAreClean(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "testdata", "*", "job.yaml"))
	if err != nil || len(files) < 2 {
		t.Fatalf("found %d jobs: %v", len(files), err)
	}
	for _, file := range files {
		job, err := read.Load(file)
		if err != nil {
			t.Fatal(err)
		}
		worked, err := layout.Resolve(job)
		if err != nil {
			t.Fatal(err)
		}
		plan := worked.Plan
		for _, paper := range []parts.Paper{{}, sheettest.Least} {
			doc, err := Packet(plan, Options{Paper: paper})
			if err != nil {
				t.Errorf("%s: %v", file, err)
				continue
			}
			for i := range doc.Pages {
				sheettest.CheckPage(t, job.Name.Value+" on "+paper.Name, &doc.Pages[i])
			}
		}
	}
}
