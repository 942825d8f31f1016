package layout

import (
	"path/filepath"
	"testing"

	"centrepop/parts/read"
)

// TestTemplatePolicy: one radial place and a large straight cone go without a
// template; several places, small and oblique cones keep theirs.
func TestTemplatePolicy(t *testing.T) {
	t.Parallel()
	job, err := read.Load(filepath.Join("..", "testdata", "pugmill", "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	worked, err := Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	pl := worked.Plan
	want := map[string]bool{ // part and pattern: printed
		"pillar wrap-body": false, "barrel-tube wrap-outside-front": true, "barrel-tube wrap-outside-back": false, "hopper cone": false,
		"bearing-housing wrap-body": true, "lantern wrap-waist": true, "water-funnel cone": true, "hopper-throat transition": true,
	}
	for _, p := range pl.Parts {
		for _, d := range p.Developments {
			printed, listed := want[p.Name+" "+d.Name]
			if listed && printed != (d.NoTemplate == "") {
				t.Errorf("%s %s: left out because %q, want printed %v", p.Name, d.Name, d.NoTemplate, printed)
			}
			delete(want, p.Name+" "+d.Name)
		}
	}
	if len(want) > 0 {
		t.Errorf("not in the job: %v", want)
	}
}
