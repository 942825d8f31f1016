package part

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// TestRecordOfWhatRunsOut: of 30 along, from 15 to 45, the 5 before body at 20 are in the air: 25 are left, to the end
// at 45; from 55 to 85 the 5 behind it at 80: 25, from the end at 55, which is 45 from the back. Over a higher neck all 30 are
// there.
func TestRecordOfWhatRunsOut(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ neck, at, from, what, wanted, along string }{
		{"31", "30", "front", "way, its closed end, at 0°", "45 from FRONT", "8 × 25 × 4"},
		{"31", "70", "front", "way, its closed end, at 0°", "55 from FRONT", "8 × 25 × 4"},
		{"31", "30", "back", "way, its closed end, at 0°", "45 from BACK", "8 × 25 × 4"},
		{"36", "30", "front", "way at 0°", "30 from FRONT", "8 × 30 × 4"},
	} {
		m := work(t, "mm", "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm, length: 105 mm}\nprofile:\n  outside:\n    - {name: front, diameter: "+c.neck+", length: 20}\n    - {name: body, diameter: 40, length: 60}\n    - {name: rear, diameter: "+c.neck+
			", length: 20}\nradial:\n  - {name: way, clock: 0, axial: "+c.at+", from: "+c.from+", slot: {around: 8, along: 30}, depth: 4}\n")
		if at, size := check(m, c.what), check(m, "way around × along × deep"); at == nil || at.Wanted != c.wanted || size == nil || size.Wanted != c.along {
			t.Errorf("%+v: %+v, %+v", c, at, size)
		}
		if said := strings.Contains(lines(m), "open at that end, 25 mm of it in the metal."); said != (c.neck == "31") {
			t.Errorf("%+v: said %v in %s", c, said, lines(m))
		}
	}
}

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
			if said := strings.Contains(text, "It runs out over "+beyond+": open at that end, "); out == c.open || said != c.open {
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
