package part

import (
	"strings"
	"testing"
)

// Jaws hold the widest finished diameter that has no thread; what turns in a spindle has its speed,
// a counterbore half that of a drill (common practice, no source).
func TestHeldAndTurning(t *testing.T) {
	t.Parallel()
	job := demo(t, "pugmill")
	for name, want := range map[string][]string{
		"lantern":     {"on barrel face (the 4 mm before it free), soft jaws"},
		"barrel-end":  {"on shoulder (the 22 mm before it free), soft jaws", "Counterbore Ø15 × 8.6 deep, pilot Ø9, 200 rev/min."},
		"die-ring":    {"countersink Ø18 × 90°, 200 rev/min."},
		"auger-shaft": {"set true at the back end, in the chuck over copper, on no thread, or a steady", "slot drill Ø12, 340 rev/min"},
	} {
		for _, p := range job.Parts {
			if p.Name.Value == name {
				m := Work(job, p)
				text := lines(m)
				for _, o := range m.Out.Operations {
					text += "\n" + o.Holding + "\n" + o.Tool + "\n" + o.Caution
				}
				for _, w := range want {
					if !strings.Contains(text, w) {
						t.Errorf("%s: no %q in\n%s", name, w, text)
					}
				}
			}
		}
	}
}
