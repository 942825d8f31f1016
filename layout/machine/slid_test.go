package machine_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
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

// A hub of 40.5 on a seat of 40 stands 0.5 past it: the plate on the end of its shaft presses on it, and
// lies in nothing. It bears on the hub by 0.5 on the radius at least: one of 40.9 goes into the bore. A cone of 1 in 10 is
// smaller by 3.8 at the end of a hub of 38, where the plate lies: 36.2.
func TestPlateOnHub(t *testing.T) {
	t.Parallel()
	const cone = ", taper: {ratio: 10, toward: front}"
	for _, c := range []struct{ long, wide, fits, want string }{
		{"38", "55", ", fit: h6", ""}, {"40", "55", ", fit: h6", ""}, {"40.5", "55", ", fit: h6", ""}, {"40.5", "41.1", ", fit: h6", ""}, {"40.5", "40.9", ", fit: h6", "keeper-small plate bore hub 40"},
		{"38", "37.3", cone, ""}, {"38", "37.1", cone, "keeper-small plate bore hub 36.2"},
	} {
		m, _ := load(t, write(t, map[string]string{
			"pin.yaml":   "part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 70 mm, length: 120 mm}\nprofile:\n  outside:\n    - {name: seat, diameter: 40, length: 40" + c.fits + "}\n    - {name: body, diameter: 60, length: 70}\nholes: [{name: tap, face: front, at: [[0, 0]], size: M8 tap, depth: 20 mm}]\n",
			"hub.yaml":   "part: hub\nkind: turned\nmaterial: S235\nstock: {round: 85 mm, length: 46 mm}\nprofile:\n  outside: [{name: rim, diameter: 80, length: " + c.long + "}]\n  inside: [{name: bore, diameter: 40, length: " + c.long + strings.Replace(c.fits, "h6", "H7", 1) + "}]\n",
			"plate.yaml": "part: plate\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 5 mm, cut: saw}\noutline: {circle: " + c.wide + "}\nholes: [{name: hole, at: [[0, 0]], size: M8 clearance}]\n",
			"job.yaml":   "job: J\nunits: mm\nparts: [pin.yaml, hub.yaml, plate.yaml]\njoints:\n  - name: s\n    slide: {hub: hub.bore, on: pin.seat, kept-by: pin.tap}\n  - name: b\n    bolt: {through: plate.hole, into: pin.tap, bolt: M8 8.8}\n    face: back-on-front\n",
		}))
		if slices.ContainsFunc(m.Problems, func(p plan.Problem) bool { return p.Kind == plan.PartsOverlap }) {
			t.Errorf("hub of %s: %+v", c.long, m.Problems)
		}
		if got := argued(m, plan.KeeperSmall); got != c.want {
			t.Errorf("a plate of %s: %q, want %q", c.wide, got, c.want)
		}
	}
}
