package joint

import (
	"math"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// The inverse undoes a placement, and placements chain, for any of them.
func TestPlacementAlgebra(t *testing.T) {
	for i := range 200 {
		v := float64(i)
		p := placement{v*1.7 - 100, geom.OnClock(v * 37.3), 1 - 2*float64(i%2)}
		q := placement{50 - v, geom.OnClock(v * 91.7), 1 - 2*float64(i/2%2)}
		back := p.then(p.inverse())
		if math.Abs(back.z0) > 1e-9 || apart(back.turn, 0) > 1e-6 || back.s != 1 {
			t.Fatalf("%v and back is %v", p, back)
		}
		at := plan.XY{XMm: math.Cos(v) * 30, YMm: math.Sin(v) * 30}
		one, two := p.then(q).point(at), q.point(p.point(at))
		if geom.Distance(one, two) > 1e-6 {
			t.Fatalf("%v then %v takes %v to %v, in one step %v", p, q, at, two, one)
		}
		if a := geom.ClockDeg(at); apart(geom.ClockDeg(p.point(at)), p.clock(a)) > 1e-6 {
			t.Fatalf("%v: point at %v°, clock %v°", p, geom.ClockDeg(p.point(at)), p.clock(a))
		}
	}
}

// The offset hole that is proposed leaves one way of assembly: the same job
// with that hole moved has no trap.
func TestOffsetHoleWorks(t *testing.T) {
	circle := func(last float64) []plan.XY {
		var out []plan.XY
		for _, a := range []float64{45, 135, 225, last} {
			out = append(out, geom.Clock(80, a))
		}
		return out
	}
	if n := len(motions(circle(315), circle(315), leeway{mm: 0.5}, true)); n != 7 {
		t.Errorf("equal holes match in %d wrong ways, want 7", n)
	}
	if m := motions(circle(317), circle(317), leeway{mm: 0.5}, true); len(m) != 0 {
		t.Errorf("with hole 4 at 317° still %v", m)
	}
}

// motions finds what trying every tenth of a degree finds.
func TestMotionsAgainstTrying(t *testing.T) {
	patterns := [][]float64{{0}, {0, 180}, {0, 90, 180}, {10, 130, 250}, {0, 60, 120, 180, 240, 300}, {0, 72.5, 144, 216, 288}, {20, 40}}
	for _, angles := range patterns {
		var pts []plan.XY
		for _, a := range angles {
			pts = append(pts, geom.Clock(100, a))
		}
		found := motions(pts, pts, leeway{mm: 0.3}, true)
		for _, s := range []float64{1, -1} {
			tried := map[int]bool{} // whole degrees at which a match was met
			for tenth := range 3600 {
				m := placement{turn: float64(tenth) / 10, s: s}
				if (s < 0 || apart(m.turn, 0) > alignDeg) && meets(pts, pts, m, leeway{mm: 0.3}) {
					tried[int(math.Round(m.turn))%360] = true
				}
			}
			listed := map[int]bool{}
			for _, m := range found {
				if m.s == s {
					listed[int(math.Round(m.turn))%360] = true
				}
			}
			for turn := range tried {
				if !listed[turn] && !listed[(turn+1)%360] && !listed[(turn+359)%360] {
					t.Errorf("%v, s %v: a match near %d° is not listed (%v)", angles, s, turn, found)
				}
			}
			for turn := range listed {
				if !tried[turn] && !tried[(turn+1)%360] && !tried[(turn+359)%360] {
					t.Errorf("%v, s %v: %d° is listed and does not match", angles, s, turn)
				}
			}
		}
	}
}

// General bearing fit table on ISO 286 classes (roller column), as collected in
// testdata/reference/worked_examples.md (j).
func TestSeatAdvice(t *testing.T) {
	for _, c := range []struct {
		rotating, load string
		d              float64
		cone, cup      string
	}{
		{"inner", "light", 30, "js6", "H7"}, {"inner", "light", 60, "k6", "H7"},
		{"inner", "normal", 30, "k5", "H7"}, {"inner", "normal", 50, "m5", "H7"}, {"inner", "normal", 120, "m6", "H7"},
		{"inner", "heavy", 80, "n6", "H7"}, {"inner", "heavy", 150, "p6", "H7"},
		{"outer", "normal", 50, "g6", "N7"}, {"outer", "heavy", 50, "g6", "P7"}, {"outer", "light", 50, "g6", "M7"},
	} {
		in := &parts.BearingJoint{Rotating: c.rotating, Load: c.load, Bore: length(c.d)}
		cone, cup := seatOf(coneSeats, in).classes, seatOf(cupSeats, in).classes
		if cone[0] != c.cone || cup[0] != c.cup {
			t.Errorf("%s ring, %s load, %v mm: %v and %v, want %s and %s", c.rotating, c.load, c.d, cone, cup, c.cone, c.cup)
		}
	}
}
