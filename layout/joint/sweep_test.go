package joint_test

import (
	"strings"
	"testing"
)

// TestMotorIsSweptTrue: four M16 in holes of 17.5 (ISO 273, medium) at both plates leave (1.5 + 1.5) / 2 = 1.5 mm, which no
// spigot takes, and 16.4 in one of them (1.5 + 0.4) / 2. What a spigot holds is not swept, nor
// what a belt drives or a fitted bolt holds.
func TestMotorIsSweptTrue(t *testing.T) {
	t.Parallel()
	const sweep = "Sweep true"
	for _, c := range []struct{ name, file, old, now, says string }{
		{"two plates", "", "", "", "No spigot centres Motor adapter on Auger shaft: by the play of its holes it can stand 1.5 off the axis, and the motor with it."},
		{"closer holes", "housing-plate.yaml", "first: 45}, size: M16 clearance}", "first: 45}, size: 16.4 mm}", "it can stand 0.95 off the axis"},
		{"a belt", "job.yaml", "drives: auger-shaft.drive", "drives: auger-shaft.drive\n  through: belt", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			p := demoPlan(t, "pugmill")
			if c.file != "" {
				p = planned(t, editedDemo(t, "pugmill", c.file, c.old, c.now))
			}
			for _, j := range p.Joints {
				if got := strings.Contains(stepText(j), sweep); got != (j.Name == "motor" && c.says != "") {
					t.Errorf("%s is swept: %v", j.Name, got)
				}
			}
			if c.says != "" {
				says(t, jointNamed(t, p, "motor"), []string{c.says, "Light meanwhile: the nuts at both ends, Motor adapter to Housing plate. A dial on Auger shaft, its plunger in the bore of Motor adapter", "twice the coupling maker's offset at most, dial on Auger shaft"}, nil)
			}
		})
	}
}

// TestBothEndsOfStuds: the holes of the motor adapter and the housing plate lie on each other, 5 on 9; the tommy hole of the
// pillar is 8 mm. What has none is held by a strap, or by a spanner on its flats.
func TestBothEndsOfStuds(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "motor"), []string{"First the nuts on Housing plate, all rounds, order 9, 11, 10, 12, each stud held by a bar in its tommy hole, Ø8; " +
		"then those on Motor adapter, order 5, 7, 6, 8 (hole numbers of each)."}, []string{"hole numbers of Motor adapter"})
	p := planned(t, editedDemo(t, "pugmill", "pillar.yaml", "size: 8 mm, depth: 15 mm}", "size: M8 tap, depth: 15 mm}"))
	says(t, jointNamed(t, p, "motor"), []string{"each stud held by a strap wrench on its body"}, []string{"tommy"})
	p = planned(t, editedDemo(t, "pugmill", "pillar.yaml", "size: 8 mm, depth: 15 mm}", "size: M8 tap, depth: 15 mm}\nflats:\n  - {name: jaws, in: body, sides: 2, across: 27, clock: 0, length: 12, from: front}"))
	says(t, jointNamed(t, p, "motor"), []string{"each stud held by a spanner 27 on jaws"}, []string{"strap"})
}

// TestSeatsAreFlatAfterWelding: 3 mm in 1000 (EN 10029 class S) over the bolts of each face, to 0.1 mm: of 156 across
// 0.468, of 348 1.044, of 280 along a rail 0.84. Only the last weld of the body says it, and what is folded lies as it is.
func TestSeatsAreFlatAfterWelding(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	for _, j := range p.Joints {
		if got := strings.Contains(stepText(j), "No feeler enters under it: "); got != (j.Name == "gusset-4") {
			t.Errorf("%s has its faces felt: %v", j.Name, got)
		}
	}
	says(t, jointNamed(t, p, "gusset-4"), []string{"under it: 0.5 mm, Bearing housing on Housing plate; 1 mm, Motor adapter on Housing plate; 0.9 mm, Stand rail 2 on Base plate; 0.9 mm, Stand rail 1 on Base plate."}, []string{"Switch bracket", "Coupling guard"})
}

// TestWeldsKeepOffOpenBearings: the flight is welded between the bearings and the covers of their housing, the flanges of the barrel
// before them and the hopper after.
func TestWeldsKeepOffOpenBearings(t *testing.T) {
	t.Parallel()
	for _, j := range demoPlan(t, "pugmill").Joints {
		const says = "Greased bearings lie open in Bearing housing: wrap it up tight, and weld and grind away from it"
		if got := strings.Contains(strings.Join(j.Cautions, "\n"), says); got != (j.Name == "auger-flight") {
			t.Errorf("%s: %v, %q", j.Name, got, j.Cautions)
		}
	}
}

// TestShoulderThatSeats: a bush with a flange is home when that lies on the face, while its other end comes out behind; one without
// is when its end does.
func TestShoulderThatSeats(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "arm-bush"), []string{"to: the shoulder flange of Arm bush on the back of Cord arm"}, []string{"back of Arm bush on"})
}

// TestRoundPartIsHeld: what one screw in its axis would turn is held by its widest step without a fit, or by its flats; what other
// joints hold is not.
func TestRoundPartIsHeld(t *testing.T) {
	t.Parallel()
	const held = "Meanwhile hold Arm post, which is round and turns with the screw, "
	p := demoPlan(t, "gatejack")
	for _, j := range p.Joints {
		if got := strings.Contains(stepText(j), "Meanwhile hold "); got != (j.Name == "arm-post" || j.Name == "sheave-axle") {
			t.Errorf("%s has something held: %v", j.Name, got)
		}
	}
	says(t, jointNamed(t, p, "arm-post"), []string{held + "in lined vice jaws on collar."}, []string{"strap wrench"}) // against 75 lb ft
	p = planned(t, editedDemo(t, "gatejack", "arm-post.yaml", "grooves:", "flats:\n  - {name: spanner, in: collar, sides: 2, across: 1-1/2, length: 1/2, from: back}\ngrooves:"))
	says(t, jointNamed(t, p, "arm-post"), []string{held + "by a spanner 1.5 in on spanner."}, nil)
}
