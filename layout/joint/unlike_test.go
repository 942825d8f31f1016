package joint_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// The nozzle of the mill is 1.4301 on a die ring of S235, with screws of 8.8. Volts
// as in package material, whose test has their source.
func TestUnlikeMetals(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		file, from, to, joint string
		says, not             []string
	}{
		{"job.yaml", "revision: B", "revision: C", "nozzle", []string{
			"Die ring (S235) is eaten by Barrel end (1.4301) where it gets wet, 0.34 V apart in sea water: copper grease, thin, between the two, and paint over the edge once it is tight.",
			"The screws (8.8) are eaten by Barrel end (1.4301) where it gets wet, 0.34 V apart in sea water: copper grease on thread and head.",
		}, []string{"seize"}},
		{"job.yaml", "bolt: M8 8.8, head: socket}", "bolt: M8 A2-70, head: socket}", "nozzle", []string{"Die ring (S235) is eaten by the screws (A2-70)"}, []string{"seize", "are eaten"}},
		{"job.yaml", "bolt: M8 8.8, head: socket}", "bolt: M8 a2-70, head: socket}", "nozzle", []string{"Die ring (S235) is eaten by the screws"}, []string{"seize", "are eaten"}},
		{"barrel-end.yaml", "material: 1.4301", "material: EN AW-6082", "nozzle", []string{
			"Barrel end (EN AW-6082) is eaten by Die ring (S235) where it gets wet, 0.23 V apart in sea water: paint, a sleeve or zinc paste between the two, no copper grease.",
			"Barrel end (EN AW-6082) is eaten by the screws (8.8)",
		}, nil},
		{"barrel-end.yaml", "material: 1.4301", "material: S355", "nozzle", nil, []string{"eaten", "seize"}},
		{"die-ring.yaml", "material: S235", "material: 1.4301", "nozzle", []string{"The screws (8.8) are eaten by Barrel end (1.4301) and Die ring (1.4301) where it gets wet"}, []string{"seize"}},
		{"job.yaml", "bolt: M10 8.8, head: socket, nut: yes, friction: lubricated}", "bolt: M10 A2-70, head: socket, nut: yes}", "delivery-die", []string{"Stainless threads seize: anti-seize paste, by hand and slowly."}, nil},
		{"job.yaml", "bolt: M10 8.8, head: socket, nut: yes, friction: lubricated}", "bolt: M10 A2-70, head: socket, nut: yes, friction: dry}", "delivery-die", []string{"Stainless threads seize: anti-seize paste, by hand and slowly, to the torque for oiled threads."}, nil},
		{"job.yaml", "bolt: M10 8.8, head: socket, nut: yes, friction: lubricated}", "bolt: M10 A2-70, head: socket, nut: yes, friction: lubricated}", "delivery-die", []string{"by hand and slowly."}, nil},
		{"auger-hub.yaml", "material: S235", "material: 1.4301", "auger", []string{"Auger shaft (C45) is eaten by Auger hub (1.4301)"}, []string{"seizes"}},
		{"job.yaml", "revision: B", "revision: C", "front-flange-weld", nil, []string{"eaten"}},
	} {
		p, err := draft(editedDemo(t, "pugmill", c.file, c.from, c.to))
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(jointNamed(t, p, c.joint).Cautions, "\n")
		for _, s := range c.says {
			if !strings.Contains(text, s) {
				t.Errorf("%s %s: no %q in\n%s", c.file, c.to, s, text)
			}
		}
		for _, s := range c.not {
			if strings.Contains(text, s) {
				t.Errorf("%s %s: %q in\n%s", c.file, c.to, s, text)
			}
		}
	}
	slid, _ := slidPlan(t, "shaft.yaml|material: C45|material: 1.4301", "hub.yaml|material: C45|material: 1.4301")
	if text := strings.Join(slid.Cautions, "\n"); text != "Stainless on stainless seizes as it slides: grease or paste on both, slowly, and back at the first drag." {
		t.Error(text)
	}
}

// The step that asks for copper grease gives the torque of greased threads: M8 8.8 takes
// 0.12 × 0.75 × 600 MPa × 36.6 mm² × 8 mm = 16 N m as coarse, not the 26 of K = 0.2 (Shigley);
// a job that says dry is told which of the two torques it is.
func TestGreasedScrewsHaveTheirTorque(t *testing.T) {
	t.Parallel()
	nozzle := func(edit string) *plan.JointPlan {
		p, err := draft(editedDemo(t, "pugmill", "job.yaml", "bolt: M8 8.8, head: socket}", edit))
		if err != nil {
			t.Fatal(err)
		}
		return jointNamed(t, p, "nozzle")
	}
	greased, dry := nozzle("bolt: M8 8.8, head: socket }"), nozzle("bolt: M8 8.8, head: socket, friction: dry}")
	if a, b := greased.Bolt, dry.Bolt; a.Threads != "anti-seize" || b.Threads != "dry" || math.Abs(a.TorqueNm/b.TorqueNm-0.6) > 0.02 {
		t.Errorf("%s %v, %s %v", a.Threads, a.TorqueNm, b.Threads, b.TorqueNm)
	}
	if says := strings.Join(dry.Cautions, " "); !strings.Contains(says, "copper grease on thread and head, to the torque for oiled threads.") {
		t.Error(says)
	}
}

// Stainless screws in stainless nuts have the torque for anti-seize paste, K = 0.12
// (Shigley), unless the job says another state; other screws are dry. A574 is a class of
// alloy steel.
func TestStainlessThreadsAreNotDry(t *testing.T) {
	t.Parallel()
	const was = "bolt: M10 8.8, head: socket, nut: yes, friction: lubricated}"
	for to, want := range map[string]string{
		"bolt: M10 A2-70, head: socket, nut: yes}":                "anti-seize 0.12",
		"bolt: M10 A4-80, head: socket, nut: yes, friction: dry}": "dry 0.2",
		"bolt: M10 8.8, head: socket, nut: yes}":                  "dry 0.2",
	} {
		p, err := draft(editedDemo(t, "pugmill", "job.yaml", was, to))
		if err != nil {
			t.Fatal(err)
		}
		if b := jointNamed(t, p, "delivery-die").Bolt; fmt.Sprint(b.Threads, " ", b.K) != want {
			t.Errorf("%s: %s %v, want %s", to, b.Threads, b.K, want)
		}
	}
	p, err := draft(editedDemo(t, "gatejack", "job.yaml", "bolt: 1/2-13 UNC A2-70, head: socket, nut: yes}", "bolt: 1/2-13 UNC A574, head: socket, nut: yes}"))
	if err != nil {
		t.Fatal(err)
	}
	j := jointNamed(t, p, "housing")
	if text := strings.Join(j.Cautions, " "); j.Bolt.Threads != "dry" || strings.Contains(text, "seize") || strings.Contains(text, "the screws (A574)") {
		t.Errorf("%s: %s", j.Bolt.Threads, text)
	}
}
