package machine_test

import (
	"testing"

	"centrepop/layout/plan"
)

// A cap of 20 of M30x2 is screwed on a pin of 36 that stands in a plate: home on its collar, with the shoulder's undercut, as far as its thread goes (DIN 76-1),
// or drawn where less than 0.75 of its own thread engages. Another part with that thread on the axis is none of its business. Common
// practice, no source, for the share. Of its full thread, less undercuts, half of it engages at the least: 8 of 20 is less.
func TestScrewJoints(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ long, inside, how, undercut, want string }{
		{"20", "{name: t, thread: M30x2, length: 20}", "face: back-on-front", ", undercut: DIN 76-A", ""},
		{"20", "{name: t, thread: M30x2, length: 20}", "face: back-on-front", "", "thread-stops Pin Cap 6 6"},
		{"20", "{name: t, thread: M30x2, length: 20}", "level: back-with-back, below: 6", ", undercut: DIN 76-A", "nut-hangs Pin Cap t 14 15"},
		{"20", "{name: t, thread: M30x2, length: 20}", "level: back-with-back, below: 5", ", undercut: DIN 76-A", ""},
		{"24", "{name: t, thread: M30x2, length: 20, undercut: {width: 12, depth: 1}}, {name: lip, diameter: 24, length: 4}", "face: back-on-front", "", "nut-hangs Pin Cap t 8 10; thread-stops Pin Cap 6 6; thread-jams Pin Cap 12"},
		{"46", "{name: t, thread: M30x2, length: 36}, {name: way, diameter: 20, length: 10}", "face: back-on-front", ", undercut: DIN 76-A", "thread-jams Pin Cap 7.3"},
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, pin.yaml, cap.yaml]\njoints:\n  - {name: stand, press: {shaft: pin.seat, bore: plate.bore}, level: front-with-front}\n" +
				"  - {name: cap, screw: {screw: pin.end, nut: cap.t}, " + c.how + "}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 40, fit: H7, leave: 2}\n",
			"pin.yaml":   "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 90}\nprofile:\n  outside: [{name: seat, diameter: 40, fit: s6, length: 20}, {name: collar, diameter: 55, length: 10}, {name: end, thread: M30x2, length: 36" + c.undercut + "}]\nchamfers: [{edge: seat-front, size: 1, angle: 15, for: lead-in}, {edge: end-back, size: 2}]\n",
			"cap.yaml":   "part: cap\ntitle: Cap\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 54}\nprofile:\n  outside: [{name: body, diameter: 55, length: " + c.long + "}]\n  inside: [" + c.inside + "]\n",
		}, plan.ThreadJams, plan.ThreadStops, plan.NutHangs)
		if got != c.want {
			t.Errorf("%s, %s%s: %q, want %q", c.inside, c.how, c.undercut, got, c.want)
		}
	}
}
