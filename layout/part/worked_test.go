package part

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/golden"
	"centrepop/parts/read"
	"centrepop/parts/seq"
)

// TestWorked: everything that is worked out of small parts, which together have every
// form and most that a part can have, as text: faces, sections, operations, records,
// patterns, cutting files. The parts stand in testdata/worked, what is wanted beside
// them; of turned.yaml how they are made and measured. CENTREPOP_UPDATE=1 writes it anew: read the
// difference. What it claims is checked against sources by the other tests.
func TestWorked(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"mm", "turned", "inch", "small", "balls", "barrel", "drive", "feeder", "formed", "frame", "screw", "sieve", "stood", "vice", "winch"} {
		dir := "testdata"
		if _, err := os.Stat(filepath.Join(dir, "worked", name+".yaml")); err != nil {
			dir = filepath.Join("..", "joint", dir) // the parts of whole machines stand with their joints
		}
		job, err := read.Load(golden.Job(t, filepath.Join(dir, "worked", name+".yaml")))
		if err != nil {
			t.Fatal(err)
		}
		var out []worked
		for i, p := range job.Parts {
			m := Work(job, p)
			if len(m.Errs) > 0 {
				t.Fatal(m.Errs)
			}
			w := worked{Part: m.Out, Asked: asked(m)}
			w.Cut, _ = CutProfile(job, p.Name.Value, CutOptions{KerfMm: 0.3, Compensate: i%2 == 0, Piece: firstPiece(m)})
			if name == "turned" {
				w.Part = &plan.PartPlan{Name: m.Out.Name, Section: m.Out.Section, Operations: m.Out.Operations, Checks: m.Out.Checks, Problems: m.Out.Problems}
			}
			out = append(out, w)
		}
		golden.Whole(t, filepath.Join("testdata", "worked", name+".txt"), golden.Text(out))
	}
}

type worked struct {
	Part  *plan.PartPlan
	Asked []string
	Cut   *plan.Profile // nil where no file is cut
}

// asked is what a part answers other packages.
func asked(m *Model) (out []string) {
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	at := func(f parts.Face, z, thick float64, ok bool) string {
		return fmt.Sprintf("%s %.3f, %.3f thick %v; ", f, z, thick, ok)
	}
	for i := range m.Groups {
		g := &m.Groups[i]
		metal, travel := m.DrillMm(g)
		half, depth, slot := g.SlotMm()
		text := fmt.Sprintf("%s: through %v, drill %.3f of %.3f, slot %.3f %.3f %v, ", g.Group.Name, g.Through, metal, travel, half, depth, slot)
		for _, f := range []parts.Face{parts.Front, parts.Back} {
			z, thick, ok := m.PlaneOf(g, f)
			text += at(f, z, thick, ok)
		}
		if m.Part.Bar != nil {
			from, where := m.FromEnd(g)
			text += fmt.Sprintf("%.3f %s, both %v", from, where, g.BothWalls())
		}
		if fold, ok := m.FlapOf(g); ok {
			text += fmt.Sprintf("on a flange of %.2f°", fold.AngleDeg)
		}
		say("%s", text)
	}
	outside, inside := m.Sides()
	for _, st := range slices.Concat(outside, inside) {
		say("%s: %.3f long, round %.3f, undercut at its back %v", st.Name, st.LengthMm(), m.RoundMm(st.Name), m.UndercutAtBack(st))
		if st.Size.Thread != nil {
			say("%s: full thread %.3f, %.3f", st.Name, m.FullThreadMm(st, false), m.FullThreadMm(st, true))
		}
	}
	for i := range m.Keyways {
		item, note := m.Keyways[i].Bought(m.W)
		say("buy %s, %s", item, note)
	}
	for i := range m.Grooves {
		ring, thick, ok := m.Grooves[i].Ring(m.W)
		say("buy %s; %s %.3f %v", m.Grooves[i].Bought(m.W), ring, thick, ok)
	}
	if m.Clamp != nil {
		say("buy %s", m.Clamp.Bought())
	}
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		if reach, main, ok := m.ReachMm(f); ok {
			stands := ""
			if s := m.Stands(f); s != nil {
				stands = s.Text(m.W, "branch", "main")
			}
			say("reaches %.3f to a main of %.3f, stands: %s", reach, main, stands)
		}
		for _, end := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
			if c, ok := m.Cope(end); ok && f == parts.Front {
				say("cope %.4f", c)
			}
		}
	}
	if m.Part.Flight != nil {
		seam, turns := m.HelixMm()
		say("seam %.3f in %.4f turns", seam, turns)
	}
	if len(outside) > 0 {
		middle := m.LengthMm() / 2
		say("stretches %.3f", m.Stretches())
		say("wall %.3f, metal at %.3f: %.3f", m.WallMm(middle), m.Section.MaxMm-1, seq.Map(m.MetalAt(m.Section.MaxMm-1), func(on geom.Span) [2]float64 { return [2]float64{on.FromMm, on.ToMm} }))
	}
	return out
}
