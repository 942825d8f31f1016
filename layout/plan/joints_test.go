package plan

import (
	"testing"

	"centrepop/parts"
)

// TestNeeded: each thing to hold asks for a row, and what only says where something lies does not.
func TestNeeded(t *testing.T) {
	t.Parallel()
	for i, h := range []Hold{{PieceDeg: 3}, {Against: "Post"}, {Hangs: true}, {Comes: "Housing"}, {UprightDeg: 4}, {GapMm: 2}, {On: [2]string{"Shaft", "Shaft"}}, {BeyondMm: 1}, {Foot: "Flange"}, {Slung: true}, {RunsOn: []string{"Rail"}}, {GapMm: -1}} {
		if !h.Needed() {
			t.Errorf("%d: nothing to hold: %+v", i, h)
		}
	}
	for _, h := range []Hold{{}, {Grips: true, Bolts: true, Lies: "Lid", Once: true, Cups: true, Out: "Shaft", TipsMm: 2, CentreMm: 3, At: "Hub", Later: []string{"motor"}}} {
		if h.Needed() {
			t.Errorf("to hold: %+v", h)
		}
	}
}

// TestHeatLimits: a limit is not yet too hot, or too cold, and none given is none.
func TestHeatLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		p         PressPlan
		hot, cold bool
	}{
		{PressPlan{HeatHubC: 300}, false, false}, {PressPlan{HeatHubC: 300, HeatLimitC: 300}, false, false}, {PressPlan{HeatHubC: 301, HeatLimitC: 300}, true, false},
		{PressPlan{CoolShaftC: -79, ColdLimitC: -78}, false, true}, {PressPlan{CoolShaftC: -78, ColdLimitC: -78}, false, false},
	} {
		if c.p.TooHot() != c.hot || c.p.TooCold() != c.cold {
			t.Errorf("%+v: too hot %v, too cold %v", c.p, c.p.TooHot(), c.p.TooCold())
		}
	}
}

// TestOneSided: a fillet from one side, with its corners on one side or unknown.
func TestOneSided(t *testing.T) {
	t.Parallel()
	top, back := Corner{Side: "top"}, Corner{Side: "back"}
	for i, c := range []struct {
		w    WeldPlan
		want bool
	}{
		{WeldPlan{Sides: 1}, true}, {WeldPlan{Sides: 1, Corners: []Corner{top, top}}, true}, {WeldPlan{Sides: 1, Corners: []Corner{top, back}}, false}, {WeldPlan{Sides: 2, Corners: []Corner{top}}, false},
	} {
		if c.w.OneSided() != c.want {
			t.Errorf("%d: %v", i, c.w.OneSided())
		}
	}
}

// TestNo: what is made has a number, what is not has none; names and numbers are made into arguments.
func TestNo(t *testing.T) {
	t.Parallel()
	if got := (&ToolRow{N: 3}).No() + (&ToolRow{}).No() + (&ToolRow{N: 1}).No(); got != "T3T1" {
		t.Error(got)
	}
	if got := Of(Mm, 2.5); got != (Arg{Unit: Mm, Value: 2.5}) {
		t.Errorf("%+v", got)
	}
}

// TestOfKind: joints of a kind, in their order.
func TestOfKind(t *testing.T) {
	t.Parallel()
	all := []*JointPlan{{Name: "a", Kind: "press"}, {Name: "b", Kind: "weld"}, {Name: "c", Kind: "press"}}
	if got := OfKind(all, parts.PressKind); len(got) != 2 || got[0].Name != "a" || got[1].Name != "c" {
		t.Errorf("%v", got)
	}
}
