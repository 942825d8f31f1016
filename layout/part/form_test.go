package part

import (
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

// demo loads the job of a demo.
func demo(t *testing.T, name string) *parts.Job {
	t.Helper()
	job, err := read.Load(filepath.Join("../../testdata", name, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// load makes a job of parts, each a part file; the first is the one tested.
func load(t *testing.T, units string, files ...string) *parts.Job {
	t.Helper()
	dir := t.TempDir()
	job := "job: Test\nunits: " + units + "\ntolerance: m\nparts:\n"
	for i, text := range files {
		name := string(rune('a'+i)) + ".yaml"
		job += "  - " + name + "\n"
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(dir, "job.yaml")
	if err := os.WriteFile(path, []byte(job), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := read.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// work works out the first part of such a job.
func work(t *testing.T, units string, files ...string) *Model {
	t.Helper()
	job := load(t, units, files...)
	m := Work(job, job.Parts[0])
	if len(m.Errs) > 0 {
		t.Fatal(m.Errs)
	}
	return m
}

// TestForms: every form answers every stage, on the parts of the demos. A new
// form needs a part there, and something to say at each stage.
func TestForms(t *testing.T) {
	t.Parallel()
	seen := map[string]bool{}
	for _, name := range []string{"pugmill", "gatejack"} {
		job := demo(t, name)
		for _, p := range job.Parts {
			m := Work(job, p)
			form := strings.TrimPrefix(fmt.Sprintf("%T", m.form), "*part.")
			seen[form] = true
			cut, err := CutProfile(job, p.Name.Value, CutOptions{Cut: "laser", Piece: firstPiece(m)})
			for stage, ok := range map[string]bool{
				"length":       m.LengthMm() > 0,
				"outline":      m.OutlinePath().Bounds().W() > 0,
				"no round":     m.RoundMm("") == 0,
				"section":      len(m.Section.Outer) > 1 && m.Section.MaxMm > 0,
				"overall":      m.Out.Overall != "",
				"volume":       m.form.volumeMm3(m.Shape) > 0 && m.Out.MassKg > 0,
				"features":     len(m.refs(plan.LengthFeature, plan.ThicknessFeature, plan.HeightFeature)) == 1,
				"operations":   len(m.Out.Operations) > 1,
				"checks":       len(m.Out.Checks) > 1,
				"cutting file": cut != nil && cut.BlankXMm > 0 || err != nil && (form == "turned" || form == "tube" || form == "bar"),
				"developments": len(m.Developments) > 0 || form == "flat" || form == "turned" || form == "tube" || form == "bar",
			} {
				if !ok {
					t.Errorf("%s, which is %s, has no %s", p.Name.Value, form, stage)
				}
			}
		}
	}
	for _, form := range []string{"folded", "flat", "rolled", "tube", "turned", "cone", "helix", "bar", "transition"} {
		if !seen[form] {
			t.Errorf("no demo has a part that is %s", form)
		}
	}
}

// TestRoundsOfForms: the ends of a cone, a transition and a flight that are round have a diameter of
// their own, and nothing else of them or of another form has.
func TestRoundsOfForms(t *testing.T) {
	t.Parallel()
	mm := func(v float64) parts.Length { return parts.Length{Mm: v} }
	rounds := map[form]map[string]float64{
		&cone{in: &parts.Frustum{Large: mm(300), Small: mm(200)}}: {"large-end": 300, "small-end": 200},
		&transition{in: &parts.Transition{Diameter: mm(150)}}:     {"round-end": 150},
		&helix{in: &parts.Flight{Shaft: mm(60), Outside: mm(99)}}: {"inside": 60},
		&bar{}: {}, &flat{}: {}, &turned{}: {},
	}
	for f, want := range rounds {
		for _, feature := range []string{"large-end", "small-end", "mouth", "round-end", "inside", "top", "left"} {
			if got := f.roundMm(feature); got != want[feature] {
				t.Errorf("%s of %T: %g, want %g", feature, f, got, want[feature])
			}
		}
	}
}

func firstPiece(m *Model) string {
	for _, d := range m.Developments {
		if d.Kind == plan.ConePattern || d.Kind == plan.TransitionPattern {
			return d.Name
		}
	}
	return ""
}

// TestNamesAreNotKinds: groups of holes that are called like a size of the part
// get no limits of that size in the record, nor its number in an operation.
func TestNamesAreNotKinds(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", `part: plate
kind: plate
material: S235
stock: {plate: 12, cut: saw}
outline: {rectangle: [200, 150]}
holes:
  - {name: height, at: [[50, 0]], size: 9 mm}
  - {name: length, at: [[-50, 0]], size: 9 mm}
  - {name: thickness, at: [[0, 50]], size: 9 mm}
`)
	rows := map[string]int{}
	for _, c := range m.Out.Checks {
		rows[c.What]++
	}
	// One row each for the hole sizes; the plate's own thickness and edge besides.
	if rows["height"] != 1 || rows["length"] != 1 || rows["thickness"] != 2 || rows["outline"] != 1 {
		t.Errorf("rows of the record: %v", rows)
	}
	if refs := m.Out.Operations[0].Refs; !slices.Equal(refs, []int{1, 2}) {
		t.Errorf("the blank refers to %v, want the edge and the thickness", refs)
	}
}

// TestEdgesOfSteps: a step that is called like an edge of another has edges of its own. Its
// chamfer of 2 at 45° takes Ø50 to Ø46 at the back, and the seat beside it keeps its edges.
func TestEdgesOfSteps(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", `part: pin
kind: shaft
material: S355
stock: {round: 60, cut: saw}
profile:
  outside:
    - {name: seat, diameter: 40, length: 40}
    - {name: seat-front, diameter: 50, length: 40}
chamfers: [{edge: seat-front-back, size: 2, angle: 45}]
`)
	c := m.bevels[0]
	if c.step.Name != "seat-front" || !c.back || c.diaMm != 46 {
		t.Errorf("the chamfer is on %s, at its back %v, down to Ø%v", c.step.Name, c.back, c.diaMm)
	}
}
