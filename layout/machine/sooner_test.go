package machine_test

import (
	"fmt"
	"testing"

	"centrepop/layout/plan"
)

// A lid of 4 holes of 21 goes over posts of 20 before collars of 30 are pressed on them, or a ring of 31 inside between foot and
// collar: the order is said in which it does, of the fewest joints, where neither the job nor the trade asks for another: no weld comes after a bearing.
func TestSooner(t *testing.T) {
	t.Parallel()
	const (
		post   = "  - {name: p%d, weld: {part: post#%[1]d.foot, to: base.outline, type: fillet}, place: {on: front, with: back, at: [%d, 0]}}\n"
		collar = "  - {name: c%[1]d, press: {shaft: post#%[1]d.crown, bore: collar#%[1]d.bore, method: heat}, level: front-with-front%[2]s}\n"
		lid    = "  - {name: lid, bolt: {through: lid.bolts, into: base.taps, bolt: M10 8.8}, face: back-on-front%s}\n"
		welded = "  - {name: c1, weld: {part: collar#1.bore, to: post#1.crown, type: fillet}, level: front-with-front, below: 5 mm}\n"
		wheel  = "  - {name: wheel, ball-bearing: {bearing: 6004-2RS, housing: wheel.seat, shaft: axle.seat, rotating: outer}}\n"
		ring   = "loose:\n  - {part: ring, how: laid on the plate, after: %s, lies: [{on: base.front, with: back, at: [-50, 0]}]}\n"
		other  = " another order of the joints"
	)
	posts := fmt.Sprintf(post, 1, -50) + fmt.Sprintf(post, 2, 50)
	both := fmt.Sprintf(collar, 1, "") + fmt.Sprintf(collar, 2, "")
	for name, c := range map[string]struct{ job, want string }{
		"lid first":                  {posts + fmt.Sprintf(lid, "") + both, ""},
		"lid last":                   {posts + both + fmt.Sprintf(lid, ""), "path-blocked lid collar 1 90 before: [c1, c2] at lid"},
		"lid between":                {posts + fmt.Sprintf(collar, 1, "") + fmt.Sprintf(lid, "") + fmt.Sprintf(collar, 2, ""), "path-blocked lid collar 1 90 before: c1 at lid"},
		"the job asks for one":       {posts + both + fmt.Sprintf(lid, ", after: c1"), "path-blocked lid collar 1 90" + other},
		"the job asks for one alone": {posts + fmt.Sprintf(collar, 1, "") + fmt.Sprintf(lid, ", after: c1"), "path-blocked lid collar 1 90 without after: c1 at lid"},
		"one asks to be before it":   {posts + fmt.Sprintf(collar, 1, ", before: lid") + fmt.Sprintf(lid, ""), "path-blocked lid collar 1 90 without before: lid at c1"},
		"another waits for it":       {posts + fmt.Sprintf(collar, 1, "") + fmt.Sprintf(collar, 2, ", after: c1") + fmt.Sprintf(lid, ""), "path-blocked lid collar 1 90 before: c1 at lid"},
		"a weld":                     {posts + welded + fmt.Sprintf(lid, ""), "path-blocked lid collar 1 95 before: c1 at lid"},
		"a weld after a bearing":     {posts + welded + wheel + fmt.Sprintf(lid, ""), "path-blocked lid collar 1 95" + other},
		"ring with the collar":       {posts + both + fmt.Sprintf(ring, "c2"), "path-blocked ring collar 1 90 after: p2 at ring"},
		"ring with its own collar":   {posts + both + fmt.Sprintf(ring, "c1"), "path-blocked ring collar 1 90 first: yes at ring"},
		"ring before it":             {posts + both + fmt.Sprintf(ring, "p2"), ""},
	} {
		got := found(t, map[string]string{
			"job.yaml":    "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, post.yaml, collar.yaml, lid.yaml, ring.yaml, axle.yaml, wheel.yaml]\njoints:\n" + c.job,
			"base.yaml":   "part: base\nkind: plate\nmaterial: S355\nstock: {plate: 30 mm}\noutline: {rectangle: [300, 200]}\nholes:\n  - {name: taps, at: [[-120, 0], [120, 0]], size: M10 tap, depth: through}\n",
			"post.yaml":   "part: post\nkind: shaft\nquantity: 2\nmaterial: C45\nstock: {round: 25, length: 110}\nprofile:\n  outside:\n    - {name: crown, diameter: 20, fit: s6, length: 30}\n    - {name: neck, diameter: 19.9, length: 30}\n    - {name: foot, diameter: 20, fit: s6, length: 30}\n",
			"collar.yaml": "part: collar\nkind: turned\nquantity: 2\nmaterial: S355\nstock: {round: 45, length: 30}\nprofile:\n  outside: [{name: rim, diameter: 40, length: 20}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 20}]\n",
			"lid.yaml":    "part: lid\nkind: plate\nmaterial: S355\nstock: {plate: 10 mm}\noutline: {rectangle: [280, 100]}\nholes:\n  - {name: over, at: [[-50, 0], [50, 0]], size: 21}\n  - {name: bolts, at: [[-120, 0], [120, 0]], size: M10 clearance}\n",
			"axle.yaml":   "part: axle\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 64}\nprofile:\n  outside: [{name: collar, diameter: 24, length: 40}, {name: seat, diameter: 20, fit: h6, length: 20}]\n",
			"wheel.yaml":  "part: wheel\nkind: turned\nmaterial: S355\nstock: {round: 85, length: 24}\nprofile:\n  outside: [{name: tread, diameter: 80, length: 20}]\n  inside: [{name: seat, diameter: 42, fit: N7, length: 14}, {name: web, diameter: 37, length: 6}]\n",
			"ring.yaml":   "part: ring\nkind: turned\nmaterial: S355\nstock: {round: 45, length: 20}\nprofile:\n  outside: [{name: rim, diameter: 44, length: 10}]\n  inside: [{name: bore, diameter: 31, length: 10}]\n",
		}, plan.PathBlocked)
		if got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
