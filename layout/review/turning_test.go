package review

import (
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// A window is as far off as the nearest of what turns with the driven shaft, 110 out: a plate 8 thick that is welded to
// the side of its hub and reaches 78 up, hypot(78, 8) = 78.41; where that stands clear of the window, the hub, 76 across.
// What is taken as it is opens again where it comes nearer.
func TestWindowOverWhatTurns(t *testing.T) {
	t.Parallel()
	job := "job: J\nunits: mm\ntolerance: m\nparts: [drum.yaml, housing.yaml, shaft.yaml, hub.yaml, fin.yaml, vane.yaml]\njoints:\n" +
		"  - {name: hub, slide: {hub: hub.bore, on: shaft.seat, kept-by: shaft.ring}}\n" +
		"  - {name: fin, weld: {part: fin.outline, to: hub.body, type: fillet, size: 3, length: 40, sides: 2}, place: {on: front, with: left, at: [0, 58], front: left, gap: -160}, before: hub}\n" +
		"  - {name: inner, bearing: {bearing: \"30207\", cup: housing.inner, cone: shaft.near, rotating: inner, bore: 35, outside: 72, width: 18.25}, other-way-round: yes}\n" +
		"  - {name: outer, bearing: {bearing: \"30207\", cup: housing.outer, cone: shaft.far, rotating: inner, bore: 35, outside: 72, width: 18.25, end-float: [0.02, 0.06]}, other-way-round: yes}\n" +
		"  - {name: drum, press: {shaft: housing.spigot, bore: drum.bore}, level: front-with-back, below: 0}\n" +
		"motor: {kw: 1, volts: \"230\", phases: 1, hz: 50, speed: 1400, rotation: either, seen-from: drive-end, drives: shaft.drive, earth: lug, emergency-stop: front}\n"
	files := map[string]string{
		"job.yaml":     job,
		"drum.yaml":    "part: drum\nkind: turned\nmaterial: S235\nstock: {round: 225, length: 310}\nprofile:\n  outside: [{name: body, diameter: 220, length: 300}]\n  inside: [{name: bore, diameter: 200, fit: H7, length: 300}]\nradial: [{name: gate, clock: 180, axial: 150, window: {around: 60, along: 60}}]\n",
		"housing.yaml": "part: housing\nkind: bearing-housing\nmaterial: S235\nstock: {round: 205, length: 60}\nprofile:\n  outside: [{name: spigot, diameter: 200, fit: p6, length: 52}]\n  inside: [{name: outer, diameter: 72, fit: H7, length: 20}, {name: web, diameter: 62, length: 12}, {name: inner, diameter: 72, fit: H7, length: 20}]\n",
		"shaft.yaml":   "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 500}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: h7, length: 240}, {name: collar, diameter: 56, length: 8}, {name: near, diameter: 35, fit: k6, length: 16}, {name: middle, diameter: 34.8, length: 15}, {name: far, diameter: 35, fit: k6, length: 16}, {name: nut, thread: M35x1.5, length: 16}, {name: drive, diameter: 30, fit: h6, length: 60}]\nkeyways: [{name: key, in: seat, length: 100}]\ngrooves: [{name: ring, in: seat, axial: 36, for: retaining-ring}]\n",
		"hub.yaml":     "part: hub\nkind: turned\nmaterial: S235\nstock: {round: 80, length: 205}\nprofile:\n  outside: [{name: body, diameter: 76, length: 200}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 200}]\nkeyways: [{name: key, in: bore}]\n",
		"fin.yaml":     "part: fin\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {rectangle: [120, 40]}\n",
		"vane.yaml":    "part: vane\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {rectangle: [120, 60]}\n",
	}
	found := func(edits ...string) (what, open string) {
		a := &txtar.Archive{}
		for name, text := range files {
			a.Files = append(a.Files, txtar.File{Name: name, Data: []byte(strings.NewReplacer(edits...).Replace(text))})
		}
		list, _, err := reviewed(load(t, a))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range list {
			if f.Code == "guard" && f.Part == "drum" && !f.Accepted {
				return f.What, f.Numbers
			}
		}
		return "", ""
	}
	for _, c := range []struct{ from, to, what, open string }{
		{"gap: -160", "gap: -160", "a hand gets through gate of drum to fin, which turns", "60 mm x 60 mm open, 31.59 mm off"},
		{"gap: -160", "gap: 40", "a hand gets through gate of drum to hub, which turns", "60 mm x 60 mm open, 72 mm off"},
		{"along: 60", "along: 10", "a finger gets through gate of drum to fin, which turns", "10 mm x 60 mm open, 31.59 mm off"},
		{"motor:", "loose: [{part: vane, how: hung on the fin, after: hub, lies: [{on: fin.front, with: back, at: [0, 0]}]}]\nmotor:", "a hand gets through gate of drum to vane, which turns", "60 mm x 60 mm open, 21.64 mm off"}, // on the far side of the fin: hypot(88, 8) = 88.36
		{"motor:", "loose: [{part: vane, how: hung on the fin, after: hub, off: yes, lies: [{on: fin.front, with: back, at: [0, 0]}]}]\nmotor:", "a hand gets through gate of drum to fin, which turns", "60 mm x 60 mm open, 31.59 mm off"},
		{"around: 60, along: 60", "around: 4, along: 60", "", ""},
		{"motor:", "accept: [{finding: guard, at: drum.gate, number: 31.5, reason: R}]\nmotor:", "", ""},
		{"motor:", "accept: [{finding: guard, at: drum.gate, number: 32, reason: R}]\nmotor:", "a hand gets through gate of drum to fin, which turns, worse than the 32 mm that was accepted", "60 mm x 60 mm open, 31.59 mm off"},
	} {
		if what, open := found(c.from, c.to); what != c.what || open != c.open {
			t.Errorf("%q: %q, %q", c.to, what, open)
		}
	}
}
