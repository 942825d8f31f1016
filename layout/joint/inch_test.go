package joint_test

import (
	"encoding/json"
	"regexp"
	"testing"
)

// An inch job's steps, checks, cautions and problems speak inches: no length is
// left in millimetres but the size of a metric drill or key beside its inches.
func TestInchJobSpeaksInches(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "gatejack")
	mm := regexp.MustCompile(`[0-9] mm(/s|²)?`)
	row := regexp.MustCompile(`over [0-9]+ to [0-9]+ mm`) // of a table, as its standard has it
	screw := regexp.MustCompile(`M[0-9]+ × [0-9]+ mm`)    // of a metric screw, as it is sold
	for _, j := range p.Joints {
		text, err := json.Marshal([]any{j.Steps, j.Checks, j.Cautions, j.Problems, j.How, j.Remedies, j.Figures})
		if err != nil {
			t.Fatal(err)
		}
		text = screw.ReplaceAll(row.ReplaceAll(text, nil), nil)
		if at := mm.FindIndex(text); at != nil {
			t.Errorf("%s: … %s …", j.Name, text[max(0, at[0]-60):min(len(text), at[1]+20)])
		}
	}
}
