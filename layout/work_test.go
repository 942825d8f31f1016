package layout

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/read"
)

// jobOf loads a job of one folder from its files.
func jobOf(t *testing.T, files map[string]string) *parts.Job {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

const (
	jobText = "job: Stand\nrevision: C\ndate: 2026-01-02\ndrawn: A. B.\nchecked: C. D.\nunits: mm\npaper: A3\ntolerance: f\nnotes: [Deburr all edges.]\nparts: [pin.yaml, pad.yaml]\n"
	pinText = "part: pin\nkind: turned\nquantity: 2\nmaterial: S235\nstock: {round: 25 mm}\nprofile:\n  outside: [{name: body, diameter: 20, length: 60}]\n"
	padText = "part: pad\nkind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {square: 80}\nbore: {diameter: 20.5}\nholes: [{name: feet, grid: {columns: 2, rows: 2, pitch: [50, 50]}, size: 9}]\n"
)

// TestHeading: the head of the plan is that of the job, its stock that of its parts, and each machine warns of each danger once.
func TestHeading(t *testing.T) {
	t.Parallel()
	job := jobOf(t, map[string]string{"job.yaml": jobText, "pin.yaml": pinText, "pad.yaml": padText})
	w, err := Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	pl := w.Plan
	if got := fmt.Sprint(pl.Job, pl.Revision, pl.Date, pl.DrawnBy, pl.CheckedBy, pl.Units, pl.Paper.Name, pl.Tolerance, pl.Notes); got != "StandC2026-01-02A. B.C. D.mmA3ISO 2768-f[Deburr all edges.]" {
		t.Errorf("head %s", got)
	}
	stock := ""
	for _, s := range pl.Stock {
		stock += fmt.Sprintf("%s %d %s %s %.2f kg; ", s.Part, s.Quantity, s.Material, s.Size, s.MassKg)
	}
	// π/4·20²·60·7.85e-6 and (80²·10 − π/4·(20.5² + 4·9²)·10)·7.85e-6
	if want := "pin 2 S235 round Ø25 0.15 kg; pad 1 S235 plate 10 0.46 kg; "; stock != want {
		t.Errorf("stock %q, want %q", stock, want)
	}
	machines := map[plan.Machine]bool{}
	for _, d := range pl.Dangers {
		says := map[string]bool{}
		for _, s := range d.Says {
			if says[s] {
				t.Errorf("%s says twice: %s", d.Machine, s)
			}
			says[s] = true
		}
		if machines[d.Machine] || len(d.Says) == 0 {
			t.Errorf("%s stands twice, or says nothing", d.Machine)
		}
		machines[d.Machine] = true
	}
	for _, p := range pl.Parts {
		for _, op := range p.Operations {
			if len(op.Dangers) > 0 && !machines[op.Machine] {
				t.Errorf("nothing is said of %s", op.Machine)
			}
		}
	}
	if len(machines) < 2 {
		t.Errorf("dangers of %v", machines)
	}
	plain := jobOf(t, map[string]string{"job.yaml": strings.Replace(jobText, "tolerance: f\n", "", 1), "pin.yaml": pinText, "pad.yaml": padText})
	if w, err := Work(plain); err != nil || w.Plan.Tolerance != "" {
		t.Errorf("tolerance %q, %v", w.Plan.Tolerance, err)
	}
}

// TestFaultsOfWork: a part that cannot be worked out is refused, and a joint is left out of the plan and refused by Resolve,
// each at its place.
func TestFaultsOfWork(t *testing.T) {
	t.Parallel()
	joints := "joints:\n  - {name: fit, press: {shaft: pin.body, bore: pad.bore, fit: H7/p6}, face: front-on-front}\n"
	job := jobOf(t, map[string]string{"job.yaml": jobText + joints, "pin.yaml": pinText, "pad.yaml": padText})
	w, err := Work(job)
	if err != nil || w.Faults() == nil {
		t.Fatalf("%v, faults %v", err, w.Faults())
	}
	var first *parts.Error
	if _, err = Resolve(job); !errors.As(err, &first) || first.File != "job.yaml" || first.Line != 12 || first.Right == "" || !strings.Contains(first.Excerpt, "press:") {
		t.Errorf("refused %v", err)
	}
	thread := jobOf(t, map[string]string{"job.yaml": jobText, "pin.yaml": pinText, "pad.yaml": strings.Replace(padText, "size: 9", "size: M12x9 tap", 1)})
	if w, err := Work(thread); w != nil || !errors.As(err, &first) || first.File != "pad.yaml" || first.Line != 7 {
		t.Errorf("%v, %v", w, err)
	}
}

// What the machine showed of a step stands in a plan arranged as before, all of it: the
// sheets of a step that has not changed are the same at once.
func TestArrangeAs(t *testing.T) {
	t.Parallel()
	trap := []plan.Trap{{TurnDeg: 180, Out: []plan.Out{{What: "Lug 1", Elsewhere: true}}}}
	before := &plan.Plan{Arrangement: &plan.Arrangement{}, Joints: []*plan.JointPlan{
		{Name: "lid", Ways: trap, Hold: &plan.Hold{UprightDeg: 4}, Pictures: []plan.Picture{{Cut: plan.CutFrame}}, Bolt: &plan.BoltPlan{Under: []string{"Hood"}}, Lift: &plan.Lift{MassKg: 30, Sling: &plan.Sling{HalfMm: 200}}},
	}}
	now := &plan.Plan{Joints: []*plan.JointPlan{{Name: "new"}, {Name: "lid", Bolt: &plan.BoltPlan{Size: "M8"}, Lift: &plan.Lift{MassKg: 31}}}}
	(&Worked{Job: &parts.Job{}, Plan: now}).ArrangeAs(before)
	if j := now.Joints[1]; now.Arrangement != before.Arrangement || !slices.EqualFunc(j.Ways, trap, func(a, b plan.Trap) bool { return a.TurnDeg == b.TurnDeg }) ||
		j.Hold != before.Joints[0].Hold || len(j.Pictures) != 1 || j.Lift.MassKg != 31 || j.Lift.Sling != before.Joints[0].Lift.Sling ||
		j.Bolt.Size != "M8" || !slices.Equal(j.Bolt.Under, []string{"Hood"}) {
		t.Errorf("arranged %+v", now.Joints[1])
	}
	now.Joints[1].StandAs(nil)
	if j := now.Joints[1]; j.Ways != nil || j.Hold != nil || j.Pictures != nil || j.Lift.Sling != nil || j.Lift.MassKg != 31 || j.Bolt.Under != nil || j.Bolt.Size != "M8" {
		t.Errorf("left over %+v", j)
	}
}
