package sequence

import (
	"slices"
	"testing"
)

// TestReasons: steps with one reason are named together.
func TestReasons(t *testing.T) {
	t.Parallel()
	got := reasons([]string{"after step 2: the job says so", "after step 3: weld before bolting", "after step 5: the job says so", "after step 9: the job says so"})
	if want := []string{"after steps 2, 5, 9: the job says so", "after step 3: weld before bolting"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}
