package joint_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/read"
)

// A seat that is welded afterwards is not oiled: oil in the root is porosity; nor does
// it rest a day, as one that is only pressed.
// More than two people lift by ISO 11228-1 (25 kg each) is not
// lifted by two people. What is lifted is the lighter of two sides.
func TestStepsHurtNobody(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	if text := stepText(jointNamed(t, p, "front-flange")); strings.Contains(text, "oil them") || !strings.Contains(text, "no oil") || strings.Contains(text, "24 h") {
		t.Errorf("pressed, then welded: %s", text)
	}
	// No oil, so the friction is that of dry steel, 0.1 to 0.2 (textbooks), and the force
	// at which the ram stops with it.
	if f := jointNamed(t, p, "front-flange").Press; f.Friction != (plan.Range{Min: 0.1, Max: 0.2}) || f.LeadInOn != "Barrel tube" || f.LeadInMm != 0.5 || f.LeadInDeg != 15 {
		t.Errorf("%+v", f)
	}
	bare, err := draft(editedDemo(t, "pugmill", "inlet-stub.yaml", "chamfers:\n  - {edge: outside-front, size: 0.5 mm, angle: 15, for: lead-in}\n", ""))
	if err != nil {
		t.Fatal(err)
	}
	if f := jointNamed(t, bare, "inlet-flange"); f.Press.LeadInOn != "" || !slices.ContainsFunc(f.Problems, func(q plan.Problem) bool { return q.Kind == plan.NoLeadIn }) {
		t.Errorf("the weld chamfer is no lead-in: %+v", f.Press)
	}
	for name, want := range map[string]plan.Lift{
		"nozzle":         {}, // 2.9 kg onto 24.3 kg
		"lantern":        {}, // 8.1 kg onto 30.5 kg
		"gland":          {},
		"barrel":         {What: "Barrel flange 2 with all that is on it", MassKg: 26.976, How: carriers2},
		"housing":        {What: "Bearing housing with all that is on it", MassKg: 74.051, How: "hoist, with rated slings, by local lifting rules"}, // heavier, but the base is anchored
		"coupling-guard": {What: "Gear motor 2.2 kW", MassKg: 48, How: "hoist, with rated slings, by local lifting rules", Loose: true},             // put in at that step, and heavier than the guard
	} {
		got := jointNamed(t, p, name).Lift
		if got == nil {
			got = &plan.Lift{}
		}
		if got.What != want.What || got.How != want.How || got.Loose != want.Loose || math.Abs(got.MassKg-want.MassKg) > 0.05 { // what is drawn finer weighs grams less
			t.Errorf("%s lifts %+v, want %+v", name, *got, want)
		}
	}
	if got := p.Lifts[1]; !strings.HasPrefix(got, "With a hoist only: Gear motor 2.2 kW: 48 kg; ") {
		t.Error(got)
	}
	for name, want := range map[string]string{"delivery-die": "", "nozzle": "27 kg: " + carriers2, "lantern": "", "barrel": ""} {
		text := strings.Join(jointNamed(t, p, name).Cautions, " ")
		if !strings.Contains(text, want) || want == "" && strings.Contains(text, " kg:") {
			t.Errorf("%s: %q, want %q", name, text, want)
		}
	}
}

const carriers2 = "hoist or two people (over 25 kg, ISO 11228-1)"

// A block of 300 × 300 × 60, 42.4 kg, is bolted on a table of 10 kg with legs of 1.7 kg: on four legs the table stands,
// and the block is what is lifted, though it is the heavier; on two it does not, and is brought to the block.
func TestWhatStandsOnItsLegsStays(t *testing.T) {
	t.Parallel()
	leg := func(n int) string {
		return fmt.Sprintf("  - {name: leg-%d, weld: {part: leg#%d.left, to: table.outline, type: fillet, size: 3}, place: {on: back, with: left, from-%s: 20, from-%s: 20, front: down}}\n",
			n, n, []string{"left", "right"}[n%2], []string{"bottom", "top"}[(n-1)/2])
	}
	for n, want := range map[int]string{4: "Block", 2: ""} {
		dir, legs := t.TempDir(), ""
		for i := range n {
			legs += leg(i + 1)
		}
		for name, text := range map[string]string{
			"block": "part: block\ntitle: Block\nkind: plate\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {square: 300}\nholes: [{name: bolts, grid: {columns: 2, rows: 2, pitch: [200, 200]}, size: M10 clearance}]\n",
			"table": "part: table\ntitle: Table\nkind: plate\nmaterial: S235\nstock: {plate: 8 mm}\noutline: {square: 400}\nholes: [{name: holes, grid: {columns: 2, rows: 2, pitch: [200, 200]}, size: M10 clearance}]\n",
			"leg":   fmt.Sprintf("part: leg\ntitle: Leg\nkind: bar\nquantity: %d\nmaterial: S235\nbar: {square: 40, wall: 3, length: 500}\n", n),
			"job":   "job: J\nunits: mm\ntolerance: m\nparts: [table.yaml, leg.yaml, block.yaml]\njoints:\n" + legs + "  - {name: on, bolt: {through: block.bolts, into: table.holes, bolt: M10 8.8, nut: yes}, face: back-on-front}\n",
		} {
			if err := os.WriteFile(filepath.Join(dir, name+".yaml"), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		job, err := read.Load(filepath.Join(dir, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		if l := jointNamed(t, planned(t, job), "on").Lift; l != nil {
			got = l.What
		}
		if got != want {
			t.Errorf("on %d legs it lifts %q, want %q", n, got, want)
		}
	}
}
