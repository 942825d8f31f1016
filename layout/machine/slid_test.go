package machine_test

import (
	"strings"
	"testing"
)

// A ring that slides on a pin up to a shoulder goes on from its other end as well: the
// same where it is plain, wrong where a blind hole tells its ends apart. A key tells the
// turn; whether a keyed ring goes on backwards is its joint's to say, not of the solids.
func TestSlidEnds(t *testing.T) {
	t.Parallel()
	const (
		pin   = "part: pin\ntitle: Pin\nkind: shaft\nmaterial: C45\nstock: {round: 80 mm, length: 160 mm}\nprofile:\n  outside:\n    - {name: nose, diameter: 40, length: 50, fit: h6}\n    - {name: body, diameter: 60, length: 70}\ngrooves: [{name: ring, in: nose, axial: 10, from: front, for: retaining-ring}]\n"
		ring  = "part: ring\ntitle: Ring\nkind: turned\nmaterial: S235\nstock: {round: 125 mm, length: 46 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 38}]\n  inside: [{name: bore, diameter: 40, length: 38, fit: H8}]\n"
		job   = "job: J\nunits: mm\nparts: [pin.yaml, ring.yaml]\njoints:\n  - name: s\n    slide: {hub: ring.bore, on: pin.nose, kept-by: pin.ring}\n"
		hole  = "holes:\n  - {name: mark, face: front, at: [[30, 20]], size: 5 mm, depth: 10 mm}\n"
		pkey  = "keyways: [{name: key, in: nose, clock: 0, axial: 30, length: 20}]\n"
		rkey  = "keyways: [{name: key, in: bore, clock: 0}]\n"
		blind = hole + rkey
	)
	for _, c := range []struct{ name, pin, ring, want string }{
		{"a plain ring", "", "", "0r:0"}, {"a blind hole", "", hole, "0r:1"}, {"keyed", pkey, blind, ""},
	} {
		m, _ := load(t, write(t, map[string]string{"pin.yaml": pin + c.pin, "ring.yaml": strings.Replace(ring, "kind", "top: keyway\nkind", 1) + c.ring, "job.yaml": job}))
		if got := waysIn(m, "s"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
