package solid_test

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
)

// The auger's flight stands on its hub: metal at a quarter turn, 27.5 of its
// pitch of 110 behind its front at 3 o'clock, none on the other side.
func TestFlight(t *testing.T) {
	t.Parallel()
	m, pl := load(t, "../../testdata/pugmill/job.yaml")
	b := body(t, m, "auger-flight#1")
	for _, c := range []struct {
		clock, z float64
		metal    bool
	}{{90, -27.5, true}, {270, -27.5, false}, {270, -82.5, true}, {0, -110, true}, {180, -110, false}, {180, -275, true}} {
		at := assembly.Clock(55, c.clock+7)
		at.Z = c.z
		// A flat sector stands for 30° and 9 mm of the rise.
		found := false
		for dz := -5.0; dz <= 5; dz++ {
			found = found || b.Solid.Dist(at.Add(assembly.Vec{Z: dz})) < 0
		}
		if found != c.metal {
			t.Errorf("clock %v, %v behind the front: metal %v", c.clock, -c.z, found)
		}
	}
	for _, p := range pl.Parts {
		if kg := assembly.Together([]assembly.Body{*b}).MassKg; p.Name == "auger-flight" && math.Abs(kg-p.MassKg) > 0.01*p.MassKg {
			t.Errorf("solid of %v kg, sheet of %v kg", kg, p.MassKg)
		}
	}
	hub, own := body(t, m, "auger-hub#1"), b.Pose
	if at := hub.Pose.Inverse().Of(own).At; math.Abs(at.Z+20) > 1e-6 || math.Hypot(at.X, at.Y) > 1e-6 {
		t.Errorf("the flight begins at %v on its hub", at)
	}
}
