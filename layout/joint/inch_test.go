package joint_test

import (
	"encoding/json"
	"regexp"
	"slices"
	"testing"

	"centrepop/layout/plan"
)

// An inch job's steps, checks, cautions and problems speak inches: no length is
// left in millimetres but the size of a metric drill or key beside its inches.
func TestInchJobSpeaksInches(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "gatejack")
	mm := regexp.MustCompile(`[0-9] mm(/s|²)?`)
	row := regexp.MustCompile(`over [0-9]+ to [0-9]+ mm`)            // of a table, as its standard has it
	screw := regexp.MustCompile(`(?:M|DIN 471 )[0-9]+ × [0-9.]+ mm`) // of a metric screw or retaining ring, as it is sold
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

// Limits that lie 0.2 % or more off the ring at all sizes are of another size: no
// cone goes on, or none holds. Closer ones are a seat that is wrong.
func TestSeatOfAnotherSize(t *testing.T) {
	t.Parallel()
	for limits, want := range map[string]plan.ProblemKind{
		"1.3779, 1.3785": plan.BearingSize, "1.3777, 1.3785": plan.SeatTightness, "1.3710, 1.3720": plan.BearingSize, "1.3710, 1.3723": plan.SeatTightness,
	} {
		p, err := draft(editedDemo(t, "gatejack", "drive-nut.yaml", "1.3760, 1.3765", limits))
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(jointNamed(t, p, "lower-bearing").Problems, func(q plan.Problem) bool { return q.Kind == want }) {
			t.Errorf("%s: no %s in %+v", limits, want, jointNamed(t, p, "lower-bearing").Problems)
		}
	}
}
