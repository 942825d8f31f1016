package plan

import (
	"testing"

	"centrepop/parts/geom"
)

// TestKey: a key of its own length lies in what is cut to its full depth, a Woodruff
// key, a part of a disc, over the run-out at both ends too.
func TestKey(t *testing.T) {
	t.Parallel()
	for of, want := range map[string]geom.Span{"": {FromMm: 20, ToMm: 30}, "6x9": {FromMm: 12, ToMm: 38}} {
		k := KeywayRow{FromMm: 20, ToMm: 30, RunoutMm: 8, Woodruff: of}
		if got := k.Key(); got != want {
			t.Errorf("%q: %v, want %v", of, got, want)
		}
	}
}

// TestRadiiAt: a step from 30 to 40 at 20, a cone from there to 30 at 60 with a bore of 10
// from 20 on. At a step the earlier radius holds, between places the line's: a quarter of
// the cone on, at 30, 40 − 10/4.
func TestRadiiAt(t *testing.T) {
	t.Parallel()
	s := Section{Outer: []XY{{XMm: 0, YMm: 30}, {XMm: 20, YMm: 30}, {XMm: 20, YMm: 40}, {XMm: 60, YMm: 30}}, Inner: []XY{{XMm: 20, YMm: 10}, {XMm: 60, YMm: 10}}}
	for _, c := range []struct {
		z, inner, outer float64
		ok              bool
	}{{-0.1, 0, 0, false}, {0, 0, 30, true}, {12, 0, 30, true}, {20, 10, 30, true}, {20.4, 10, 39.9, true}, {30, 10, 37.5, true}, {50, 10, 32.5, true}, {60, 10, 30, true}, {60.1, 0, 0, false}} {
		if inner, outer, ok := s.RadiiAt(c.z); inner != c.inner || outer != c.outer || ok != c.ok {
			t.Errorf("at %v: %v, %v, %v, want %v, %v, %v", c.z, inner, outer, ok, c.inner, c.outer, c.ok)
		}
	}
	if _, outer, ok := (&Section{Outer: []XY{{}, {YMm: 30}, {XMm: 20, YMm: 30}}}).RadiiAt(0); outer != 30 || !ok { // its end face first
		t.Errorf("at the end face: %v, %v", outer, ok)
	}
	if _, _, ok := (&Section{Outer: []XY{{XMm: 0, YMm: 30}}}).RadiiAt(0); ok {
		t.Error("a single place has no radius")
	}
}

// TestStandAs: a joint takes over what was shown of it, its sling where it is lifted
// still, and loses all of it for nil.
func TestStandAs(t *testing.T) {
	t.Parallel()
	sling, old := &Sling{}, &Sling{}
	for _, c := range []struct {
		name        string
		other, lift *Lift
		sling       *Sling
	}{
		{"the same lift", &Lift{Sling: sling}, &Lift{Sling: old}, sling},
		{"lifted no more", &Lift{Sling: sling}, nil, nil},
		{"not lifted before", nil, &Lift{Sling: old}, nil},
	} {
		o := &JointPlan{Pictures: make([]Picture, 2), Hold: &Hold{}, UpDeg: 90, Ways: make([]Trap, 3), Lift: c.other}
		j := &JointPlan{Lift: c.lift}
		if j.StandAs(o); len(j.Pictures) != 2 || j.Hold != o.Hold || j.UpDeg != 90 || len(j.Ways) != 3 || j.Lift != c.lift || c.lift != nil && c.lift.Sling != c.sling {
			t.Errorf("%s: %+v, %+v", c.name, j, j.Lift)
		}
		if j.StandAs(nil); j.Pictures != nil || j.Hold != nil || j.Ways != nil || c.lift != nil && c.lift.Sling != nil {
			t.Errorf("%s: nothing shown: %+v, %+v", c.name, j, j.Lift)
		}
	}
}

// TestNamed: parts and joints are found by their names, and nil for one that none has.
func TestNamed(t *testing.T) {
	t.Parallel()
	p := &Plan{Parts: []*PartPlan{{Name: "a"}, {Name: "b"}}, Joints: []*JointPlan{{Name: "c"}, {Name: "d"}}}
	for i, q := range p.Parts {
		if p.Part(q.Name) != q || p.Joint(p.Joints[i].Name) != p.Joints[i] {
			t.Errorf("%s, %s: %v, %v", q.Name, p.Joints[i].Name, p.Part(q.Name), p.Joint(p.Joints[i].Name))
		}
	}
	if p.Part("c") != nil || p.Joint("a") != nil {
		t.Error("a part by a joint's name, or a joint by a part's")
	}
}
