package machine_test

import (
	"fmt"
	"testing"

	"centrepop/layout/plan"
)

// A ring of 20 on a seat of 40 at the front of a pin, before a body of 60: its front so far over the pin's that it hangs
// before it, touches it with an edge, or lies on it; on a collar behind the body nothing of it lies on the seat.
func TestOffSeats(t *testing.T) {
	t.Parallel()
	const (
		pin  = "part: pin\ntitle: Pin\nkind: shaft\nmaterial: C45\nstock: {round: 80 mm, length: 160 mm}\nprofile:\n  outside:\n    - {name: nose, diameter: 40, length: 50, fit: h7}\n    - {name: body, diameter: 60, length: 70}\n"
		ring = "part: ring\ntitle: Ring\nkind: turned\nmaterial: S235\nstock: {round: 125 mm, length: 26 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 20}]\n  inside: [{name: bore, diameter: 40, length: 20, fit: H8}]\n"
	)
	for _, c := range []struct{ how, want string }{
		{"level: front-with-front", ""}, {"level: front-with-front, below: 19", ""}, {"level: front-with-front, below: 20", "Ring bore Pin nose 0"},
		{"level: front-with-front, below: 25", "Ring bore Pin nose 5"}, {"level: back-with-back", "Ring bore Pin nose 50"},
	} {
		m, _ := load(t, write(t, map[string]string{"pin.yaml": pin, "ring.yaml": ring, "job.yaml": "job: J\nunits: mm\nparts: [pin.yaml, ring.yaml]\njoints:\n  - {name: s, slide: {hub: ring.bore, on: pin.nose}, " + c.how + "}\n"}))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.SeatMissed {
				got = fmt.Sprint(p.Args[0].Text, " ", p.Args[1].Text, " ", p.Args[2].Value)
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.how, got, c.want)
		}
	}
}
