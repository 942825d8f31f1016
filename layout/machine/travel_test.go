package machine_test

import (
	"testing"

	"centrepop/layout/plan"
)

// A pin of 40, 15 long, sits in a room of 40 between two lips of 30, 13 behind the one and 4 before the other: out of its front
// it would be clear after 13 + 10 + 15. The collar of 38 that is pressed on its nose lies 5 before it; that the pin itself
// stops is said, not that its collar does.
func TestStopsByItself(t *testing.T) {
	t.Parallel()
	for collar, want := range map[string]string{"": "path-blocked Pin Hub 38 another order of the joints", "  - {name: collar, press: {shaft: pin.nose, bore: collar.bore, method: heat}, level: front-with-front, before: pin}\n": "path-blocked Pin Hub 38 another order of the joints"} {
		got := found(t, map[string]string{
			"job.yaml":    "job: J\nunits: mm\ntolerance: m\nparts: [hub.yaml, pin.yaml, collar.yaml]\njoints:\n" + collar + "  - {name: pin, press: {shaft: pin.seat, bore: hub.room, method: heat}, level: front-with-front, below: 23}\n",
			"hub.yaml":    "part: hub\ntitle: Hub\nkind: turned\nmaterial: S235\nstock: {round: 130, length: 60}\nprofile:\n  outside: [{name: outside, diameter: 120, length: 52}]\n  inside: [{name: lip, diameter: 30, length: 10}, {name: room, diameter: 40, fit: H7, length: 32}, {name: end, diameter: 30, length: 10}]\n",
			"pin.yaml":    "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 45, length: 30}\nprofile:\n  outside: [{name: nose, diameter: 20, fit: p6, length: 5}, {name: seat, diameter: 40, fit: s6, length: 15}]\n",
			"collar.yaml": "part: collar\ntitle: Collar\nkind: turned\nmaterial: S235\nstock: {round: 45, length: 10}\nprofile:\n  outside: [{name: outside, diameter: 38, length: 5}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 5}]\n",
		}, plan.PathBlocked)
		if got != want {
			t.Errorf("%q: %q, want %q", collar, got, want)
		}
	}
}

// A bearing moves with the shaft and the housing that carry it: with the shaft alone its inner ring strikes what lies before it.
func TestBearingsTravel(t *testing.T) {
	t.Parallel()
	for with, want := range map[string]string{
		"[housing, shaft]": "",
		"[shaft]":          "travel-strikes bearing inner ring housing 0 40 front",
		"[housing]":        "",
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [housing.yaml, shaft.yaml, knob.yaml]\njoints:\n  - {name: bearing, ball-bearing: {bearing: 6206-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}}\n" +
				"loose:\n  - {part: knob, how: by hand, after: bearing, lies: [{on: housing.front, with: back}], travels: {front: 40, with: " + with + "}}\n",
			"housing.yaml": "part: housing\nkind: turned\nmaterial: S235\nstock: {round: 95, length: 40}\nprofile:\n  outside: [{name: outside, diameter: 90, length: 31}]\n  inside: [{name: lip, diameter: 46, length: 10}, {name: bore, diameter: 62, fit: H7, length: 16}, {name: end, diameter: 70, length: 5}]\n",
			"shaft.yaml":   "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 40, length: 60}\nprofile:\n  outside: [{name: seat, diameter: 30, fit: k5, length: 16}, {name: body, diameter: 36, length: 30}]\n",
			"knob.yaml":    "part: knob\nkind: turned\nmaterial: S235\nstock: {round: 85, length: 20}\nprofile:\n  outside: [{name: outside, diameter: 80, length: 10}]\n",
		}, plan.TravelStrikes)
		if got != want {
			t.Errorf("%s: %q, not %q", with, got, want)
		}
	}
}
