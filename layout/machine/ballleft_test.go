package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A ball bearing stands on the lip of 44 at an end of its housing, the shoulder of its shaft on that side of it: nothing keeps the shaft from
// leaving by its other end. A cheek beside its axis, bolted on the end that would go through the housing, keeps it; one on the other end does not.
func TestBallLeft(t *testing.T) {
	t.Parallel()
	step := func(name, size string, length int) string {
		return fmt.Sprintf("{name: %s, diameter: %s, length: %d}", name, size, length)
	}
	row := func(lip string, steps ...string) string { // from the end with the lip on
		if lip == "back" {
			steps[0], steps[len(steps)-1] = steps[len(steps)-1], steps[0]
		}
		return strings.Join(steps, ", ")
	}
	for lip, other := range map[string]string{"front": "back", "back": "front"} {
		for cheek, keeps := range map[string]bool{"": false, lip: true, other: false} {
			files := map[string]string{
				"housing.yaml": "part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [" + step("body", "80", 40) + "]\n  inside: [" + row(lip, step("lip", "44", 5), step("bore", "52, fit: H7", 35)) + "]\n",
				"shaft.yaml": "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 45, length: 84, cut: saw}\nprofile:\n  outside: [" + row(lip, step("head", "40", 15), step("neck", "31", 20), step("seat", "25, fit: k6", 45)) + "]\n" +
					"holes:\n  - {name: front, face: front, at: [[-8, 0], [8, 0]], size: M4 tap, depth: 8}\n  - {name: back, face: back, at: [[-8, 0], [8, 0]], size: M4 tap, depth: 8}\n",
				"cheek.yaml": "part: cheek\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 80}\nholes: [{name: h, at: [[-8, 20], [8, 20]], size: M4 clearance}]\n",
				"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [housing.yaml, shaft.yaml, cheek.yaml]\njoints:\n  - {name: one, ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}}\n",
			}
			if cheek != "" {
				files["job.yaml"] += "  - {name: cheek, bolt: {through: cheek.h, into: shaft." + cheek + ", bolt: M4 8.8}, face: back-on-" + cheek + "}\n"
			}
			want := "ball-left shaft housing its " + other
			if keeps {
				want = ""
			}
			if got := found(t, files, plan.BallLeft); got != want {
				t.Errorf("lip at the %s, cheek on the %s: %q", lip, cheek, got)
			}
		}
	}
}

// The shaft of a fan goes to its back, which nothing at its bearing keeps it from, until the disc on its front, 20 before the housing, meets that: of one that a motor
// turns this is found.
func TestBallRubs(t *testing.T) {
	t.Parallel()
	const motor = "motor: {kw: 1, volts: 400, phases: 3, hz: 50, amps: 2.4, speed: 1400, rotation: clockwise, seen-from: drive-end, drives: %s, through: belt, earth: a screw in the terminal box, emergency-stop: front}\n"
	for more, want := range map[string]string{"": "", fmt.Sprintf(motor, "shaft.seat"): "ball-rubs shaft disc housing 20 back", fmt.Sprintf(motor, "other.seat"): ""} {
		got := found(t, map[string]string{
			"housing.yaml": "part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 40}]\n" +
				"  inside: [{name: lip, diameter: 44, length: 5}, {name: bore, diameter: 52, fit: H7, length: 35}]\n",
			"shaft.yaml": "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 45, length: 84, cut: saw}\nprofile:\n  outside: [{name: head, diameter: 40, length: 15}, {name: neck, diameter: 31, length: 10}, {name: seat, diameter: 25, fit: k6, length: 45}]\n" +
				"holes: [{name: taps, at: [[-8, 0], [8, 0]], size: M4 tap, depth: 8}]\n",
			"other.yaml": "part: other\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 44}\nprofile:\n  outside: [{name: seat, diameter: 25, length: 40}]\n",
			"disc.yaml":  "part: disc\nkind: turned\nmaterial: S235\nstock: {round: 75, length: 14}\nprofile:\n  outside: [{name: rim, diameter: 70, length: 10}]\nholes: [{name: h, at: [[-8, 0], [8, 0]], size: M4 clearance}]\n",
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [housing.yaml, shaft.yaml, disc.yaml, other.yaml]\njoints:\n  - {name: one, ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}}\n" +
				"  - {name: disc, bolt: {through: disc.h, into: shaft.taps, bolt: M4 8.8}, face: back-on-front}\n" + more,
		}, plan.BallRubs, plan.BallLeft)
		if got != want {
			t.Errorf("%s: %q, want %q", more, got, want)
		}
	}
}
