package joint_test

import (
	"strings"
	"testing"

	"centrepop/layout/layouttest"
)

// TestCollarStops: a stub whose end lies 1 deep in its bore, where no disc comes out again, is stopped by its collar; one without
// a collar that is to lie below its hub's face is stopped by a disc.
func TestCollarStops(t *testing.T) {
	t.Parallel()
	for meet, discs := range map[string]int{"face: back-on-front": 0, "level: front-with-front, below: 2": 1} {
		collar := ""
		if discs == 0 {
			collar = "{name: collar, diameter: 48, length: 15}, "
		}
		_, p := layouttest.Load(t, layouttest.Write(t, map[string]string{
			"job.yaml":  "job: J\nunits: mm\ntolerance: m\nparts: [pipe.yaml, stub.yaml]\njoints:\n  - {name: in, press: {shaft: stub.fit, bore: pipe.mouth}, " + meet + "}\n",
			"pipe.yaml": "part: pipe\nkind: turned\nmaterial: S355\nstock: {round: 60, length: 154, cut: saw}\nprofile:\n  outside: [{name: round, diameter: 50, length: 150}]\n  inside: [{name: mouth, diameter: 40, fit: H7, length: 31}, {name: middle, diameter: 30, length: 119}]\n",
			"stub.yaml": "part: stub\nkind: shaft\nmaterial: C45\nstock: {round: 55, length: 49, cut: saw}\nprofile:\n  outside: [" + collar + "{name: fit, diameter: 40, fit: p6, length: 30}]\n",
		}))
		got := 0
		for _, row := range p.Tools {
			got += strings.Count(row.Tool, "Stop disc")
		}
		for _, s := range jointNamed(t, p, "in").Steps {
			got += 10 * strings.Count(strings.Join(s.Do, " "), "stop disc")
		}
		if got != 11*discs {
			t.Errorf("%s: %d %v", meet, got, p.Faults)
		}
	}
}
