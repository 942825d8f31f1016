package part

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A keyway 4 deep in Ø40 has its floor at Ø32: over a step of 31 or
// 32 it ends in the air, over one of 32.2 it cuts 0.1 deep, and where it goes through it has no floor.
func TestKeywayRunsOut(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		neck, depth string
		open        bool
	}{{"31", "4", true}, {"32", "4", true}, {"32.2", "4", false}, {"40.5", "4", false}, {"31", "through", false}} {
		for _, at := range []string{"30", "70"} {
			q := work(t, "mm", "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm, length: 105 mm}\nprofile:\n  outside:\n    - {name: front, diameter: "+c.neck+", length: 20}\n    - {name: body, diameter: 40, length: 60}\n    - {name: rear, diameter: "+c.neck+
				", length: 20}\nradial:\n  - {name: way, clock: 0, axial: "+at+", from: front, slot: {around: 8, along: 30}, depth: "+c.depth+"}\n")
			out := false
			for _, p := range q.Out.Problems {
				out = out || p.Kind == plan.BreaksOut
			}
			if n := len(q.Out.Notes); n > 0 && c.depth == "4" {
				t.Errorf("%+v at %s: %q", c, at, q.Out.Notes)
			}
			text := ""
			for _, o := range q.Out.Operations {
				text += strings.Join(o.Do, " ")
			}
			beyond := map[string]string{"30": "front", "70": "rear"}[at]
			if said := strings.Contains(text, "It runs out over "+beyond+": open at that end."); out == c.open || said != c.open {
				t.Errorf("%+v at %s: breaks out %v, said open %v", c, at, out, said)
			}
		}
	}
}

// A neck into which the widest thread runs out is turned in the setting of the thread, and so before it; one that is
// thicker than its root, or that nothing larger stands behind, in its own.
func TestNeckBeforeItsThread(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ neck, behind, want string }{{"18", "20", "front"}, {"19", "20", "back"}, {"18", "17", "back"}} {
		q := work(t, "mm", "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 30 mm, length: 224 mm, cut: saw}\nprofile:\n  outside: [{name: tip, diameter: 16, length: 20}, {name: screw, thread: Tr24x5, length: 150}, {name: neck, diameter: "+c.neck+", length: 10}, {name: end, diameter: "+c.behind+", length: 40}]\n")
		for _, o := range q.Out.Operations {
			do := strings.Join(o.Do, " ")
			if neck := strings.Index(do, "Turn neck"); neck >= 0 && (!strings.Contains(o.Title, c.want) || neck > strings.Index(do+"Cut screw", "Cut screw") || strings.Contains(o.Holding, "face driver")) {
				t.Errorf("%+v: %s, %s: %q", c, o.Title, o.Holding, o.Do)
			}
		}
	}
}
