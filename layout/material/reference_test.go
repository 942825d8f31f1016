package material

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/parts/golden"
)

// The rows of testdata/reference/materials.csv: every figure of every kind and
// grade, each with its source and whether it was looked up. "unchecked" rows were
// entered with the table and guard it against slips only; TestKindByName works out
// those "by rule".
const referenceFile = "../../testdata/reference/materials.csv"

// row is a row of the reference file.
type row struct {
	subject, quantity, values, source, how string
}

func reference(t *testing.T) []row {
	t.Helper()
	var out []row
	for _, r := range golden.Table(t, referenceFile, 500) {
		out = append(out, row{r["subject"], r["quantity"], r["values"], r["source"], r["how"]})
	}
	return out
}

func span(s Span) string { return fmt.Sprintf("%g to %g", s.Min, s.Max) }

func hard(hrc float64) string {
	switch hrc {
	case 0:
		return "not known"
	case Unhardened:
		return "does not harden"
	}
	return fmt.Sprintf("%g HRC", hrc)
}

func micro(x float64) float64 { return math.Round(x*1e8) / 100 }

// elastic are the figures of heat, stiffness and weight by quantity.
func elastic(density, e, nu, heating, cooling, maxC, minC float64) map[string]string {
	return map[string]string{
		"density": fmt.Sprintf("%g kg/m3", density), "modulus": fmt.Sprintf("%g MPa", e), "Poisson": fmt.Sprintf("%g", nu),
		"heating": fmt.Sprintf("%g 1e-6/K", micro(heating)), "cooling": fmt.Sprintf("%g 1e-6/K", micro(cooling)),
		"limits": fmt.Sprintf("%g down to %g C", maxC, minC),
	}
}

// kindValues are the figures of a kind by quantity, as the file writes them.
func kindValues(k KindData) map[string]string {
	out := elastic(k.DensityKgM3, k.EMPa, k.Nu, k.AlphaPerK, k.ContractPerK, k.MaxHeatC, k.MinColdC)
	out["hardness"] = hard(k.HardHRC)
	out["family"] = [...]string{"steel", "cast iron", "copper alloy", "aluminium"}[k.Family]
	out["thread"] = fmt.Sprintf("%s, %g diameters", k.Thread.Name, k.Thread.Engagement)
	out["galvanic"] = span(k.GalvanicV) + " V"
	out["turn HSS"] = span(k.Speeds.TurnHSS.Span)
	out["turn carbide"] = span(k.Speeds.TurnCarbide.Span)
	out["drill HSS"] = span(k.Speeds.DrillHSS.Span)
	out["tap HSS"] = span(k.Speeds.TapHSS.Span)
	return out
}

// gradeValues are the figures of a grade by quantity; those its kind has too are
// left out.
func gradeValues(m Material) map[string]string {
	k := m.Kind.Data()
	of := kindValues(k)
	out := map[string]string{
		"kind": k.Name,
		"weld": fmt.Sprintf("%s; preheat %s C", [...]string{"readily", "preheated", "procedure", "own process", "never"}[m.Weld.Class], span(m.Weld.PreheatC)),
	}
	if m.Weld.CEV != 0 {
		out["CEV"] = fmt.Sprint(m.Weld.CEV)
	}
	if m.BetaW != 0 {
		out["beta"] = fmt.Sprint(m.BetaW)
	}
	if h := hard(m.HardHRC); h != of["hardness"] {
		out["hardness"] = h
	}
	for q, v := range elastic(m.DensityKgM3, m.EMPa, m.Nu, m.AlphaPerK, m.ContractPerK, m.MaxHeatC, m.MinColdC) {
		if of[q] != v {
			out[q] = v
		}
	}
	var steps []string
	for _, s := range m.Steps() {
		steps = append(steps, fmt.Sprintf("%g: %g/%g", s.UpToMm, s.YieldMPa, s.TensileMPa))
	}
	if steps != nil {
		out["strength"] = strings.Join(steps, ", ")
	}
	return out
}

// Every row of the table against the reference file, and every figure of the
// table has its row there. A cutting speed that is looked up is in section (i) of
// worked_examples.md.
func TestReference(t *testing.T) {
	t.Parallel()
	want := map[string]row{}
	for _, r := range reference(t) {
		key := r.subject + "/" + r.quantity
		if _, twice := want[key]; twice || r.source == "" || r.how != "looked up" && r.how != "by rule" && r.how != "unchecked" {
			t.Errorf("reference row %s: twice, or no source, or how %q", key, r.how)
		}
		want[key] = r
	}
	check := func(subject string, have map[string]string) {
		for quantity, v := range have {
			key := subject + "/" + quantity
			r, ok := want[key]
			if delete(want, key); !ok || r.values != v {
				t.Errorf("%s: %q, the reference has %q (%s)", key, v, r.values, r.source)
			}
		}
	}
	for k := Kind(0); k.Data().Name != ""; k++ {
		check(k.Data().Name, kindValues(k.Data()))
	}
	for _, g := range grades() {
		m := g.material("")
		if r, ok := want[m.Name+"/strength"]; ok && (r.how == "looked up") != (m.StrengthState() == lookup.Checked) {
			t.Errorf("%s: state %v, the reference says %s", m.Name, m.StrengthState(), r.how)
		}
		check(m.Name, gradeValues(m))
	}
	for key := range want {
		t.Errorf("reference row %s matches nothing in the table", key)
	}
}
