package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A right-hand flight that turns counter-clockwise, seen from the motor, moves its
// load away from it, as a wood screw goes in when it is turned clockwise. Each other
// hand, sight, rotation or gear between turns that round, and two of them back.
func TestConveys(t *testing.T) {
	t.Parallel()
	const (
		shaft  = "part: shaft\ntitle: Shaft\nkind: turned\nmaterial: S235\nstock: {round: 75 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: 400}, {name: drive, diameter: 40, length: 60}]\n"
		flight = "part: flight\ntitle: Flight\nkind: flight\nmaterial: S235\nstock: {sheet: 6 mm, cut: plasma}\nflight: {shaft: 70, outside: 150, pitch: 110, thickness: 6, length: 330}\n"
		job    = "job: J\nunits: mm\nparts: [shaft.yaml, flight.yaml]\njoints:\n  - name: w\n    weld: {part: flight.inside, to: shaft.body, type: fillet, size: 4 mm, sides: 2}\n    place: {on: front, with: back, at: [0, 0], top: up, gap: -350 mm}\n" +
			"motor: {kw: 1, volts: 400, phases: 3, speed: 30, rotation: counter-clockwise, seen-from: non-drive-end, drives: shaft.drive, earth: e, emergency-stop: s}\n"
	)
	for _, c := range []struct {
		name     string
		changes  []string // old, new; of any file
		backward string   // where it moves its load to, and is to
	}{
		{"as it is", nil, ""},
		{"left", []string{"thickness: 6,", "thickness: 6, hand: left,"}, "the motor|its end away from the motor"},
		{"clockwise", []string{"counter-clockwise", "clockwise"}, "the motor|its end away from the motor"},
		{"drive end", []string{"non-drive-end", "drive-end"}, "the motor|its end away from the motor"},
		{"belt", []string{"shaft.drive,", "shaft.drive, through: belt,"}, "the motor|its end away from the motor"},
		{"belt, drive end", []string{"shaft.drive,", "shaft.drive, through: belt,", "non-drive-end", "drive-end"}, ""},
		{"reversing gear", []string{"shaft.drive,", "shaft.drive, through: reversing-gear,"}, "the motor|its end away from the motor"},
		{"gear pair", []string{"shaft.drive,", "shaft.drive, through: gear-pair,"}, ""},
		{"gear pair, left", []string{"shaft.drive,", "shaft.drive, through: gear-pair,", "thickness: 6,", "thickness: 6, hand: left,"}, "the motor|its end away from the motor"},
		{"both ways", []string{"counter-clockwise", "either", "thickness: 6,", "thickness: 6, hand: left,"}, ""},
		{"motor at the front", []string{"shaft.drive,", "shaft.body,"}, ""},
		{"to the motor at the front, not so", []string{"shaft.drive,", "shaft.body,", "thickness: 6,", "thickness: 6, moves: front,"}, "its end away from the motor|the motor"},
		{"to the back, meant", []string{"thickness: 6,", "thickness: 6, hand: left, moves: back,"}, ""},
		{"to the back, not so", []string{"thickness: 6,", "thickness: 6, moves: back,"}, "its end away from the motor|the motor"},
		{"to the front, so", []string{"thickness: 6,", "thickness: 6, moves: front,"}, ""},
		{"nothing driven", []string{"drives: shaft.drive, ", "", "thickness: 6,", "thickness: 6, hand: left,"}, ""},
	} {
		edit := strings.NewReplacer(c.changes...)
		m, _ := load(t, write(t, map[string]string{"shaft.yaml": shaft, "flight.yaml": edit.Replace(flight), "job.yaml": edit.Replace(job)}))
		said := ""
		for _, p := range m.Problems {
			if p.Kind == plan.FlightBackward {
				said += p.Args[3].Text + "|" + p.Args[4].Text
			}
		}
		if said != c.backward {
			t.Errorf("%s: %q, want %q", c.name, said, c.backward)
		}
	}
}
