package sequence

import (
	"slices"
	"testing"

	"centrepop/layout/plan"
)

// TestReasons: steps with one reason are named together, and each once.
func TestReasons(t *testing.T) {
	t.Parallel()
	got := reasons([]plan.Reason{{Step: 2, Why: "the job says so"}, {Step: 3, Why: "weld before bolting"}, {Step: 5, Why: "the job says so"}, {Step: 9, Why: "the job says so"}, {Step: 9, Why: "the job says so"}})
	if want := []string{"after steps 2, 5, 9: the job says so", "after step 3: weld before bolting"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}
