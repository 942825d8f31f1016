package sheets

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// Every row that warns in a few words has its sentence on the cover, once, by
// machine; and no sentence is left out.
func TestDangersOnTheCover(t *testing.T) {
	t.Parallel()
	for _, job := range []string{"pugmill", "gatejack"} {
		pl := demoPlan(t, job)
		rows := dangerTable(pl).Rows
		cover := ""
		for _, s := range Cover(pl, nil, a4, nil, 0) {
			cover += strings.Join(allTexts(s.Draw), " ") + " "
		}
		for _, part := range pl.Parts {
			for _, op := range part.Operations {
				if (op.Caution == "") != (len(op.Dangers) == 0) {
					t.Errorf("%s, %s: warns %q of %q", part.Name, op.Title, op.Caution, op.Dangers)
				}
				for _, says := range op.Dangers {
					i := slices.IndexFunc(rows, func(r []string) bool { return r[0] == string(op.Machine) })
					if i < 0 || strings.Count(rows[i][1], says) != 1 || !wordsInOrder(cover, says) {
						t.Errorf("%s, %s: %q is not once on the cover", part.Name, op.Title, says)
					}
				}
			}
		}
	}
	if rows := dangerTable(&plan.Plan{}).Rows; len(rows) != 0 {
		t.Errorf("nothing warns, and the cover says %q", rows)
	}
}

// The cover heads its notes with heavy parts only where there are some, and sends to the
// rules that stand on the templates of the job's units.
func TestCoverSaysWhatIsThere(t *testing.T) {
	t.Parallel()
	for job, want := range map[string]string{"pugmill": "The 100 mm rules stand on every template.", "gatejack": "The 4 in rules stand on every template."} {
		cover := ""
		for _, s := range Cover(demoPlan(t, job), nil, a4, nil, 0) {
			cover += strings.Join(allTexts(s.Draw), " ") + " "
		}
		if !wordsInOrder(cover, want) {
			t.Errorf("%s: the cover does not say %q", job, want)
		}
	}
	for want, lifts := range map[string][]string{"Notes": nil, "Heavy parts, and notes": {"The housing is heavy."}} {
		if got := noteTable(&plan.Plan{Lifts: lifts}).Title; got != want {
			t.Errorf("%q: headed %q, want %q", lifts, got, want)
		}
	}
}
