package joint_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// No joint presses into a hole off the axis: the fault says how such a part is put into the job.
func TestNoJointTakesIt(t *testing.T) {
	t.Parallel()
	const plate = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\nholes: [{name: h, at: [[-40, 0], [40, 0]], size: M10 tap}, {name: eye, at: [[0, 50]], size: {diameter: 20, fit: H7}}]\n"
	const pin = "part: pin\nkind: turned\nmaterial: C45\nstock: {round: 30, cut: saw}\nprofile: {outside: [{name: seat, diameter: 20, fit: p6, length: 20}]}\n"
	for joint, want := range map[string]string{
		"{name: x, press: {shaft: pin.seat, bore: plate.eye}, level: front-with-front}":     "no joint presses into one of its holes: list the part under loose:, with how: pressed into it",
		"{name: x, press: {shaft: pin.seat, bore: plate.outline}, level: front-with-front}": "a bore on the axis of the part",
	} {
		p, err := draft(jobOf(t, joint, plate, pin))
		if err != nil || len(p.Faults) == 0 || p.Faults[0].Kind != plan.CannotJoin || !strings.Contains(p.Faults[0].Args[1].Text, want) || strings.HasSuffix(want, "the part") && p.Faults[0].Args[1].Text != want {
			t.Errorf("%s: %v, %+v", joint, err, p)
		}
	}
}

// A sleeve for a bolt through both walls is let in from the side of its head down to the far wall: across a tube of 50 by 100 with
// walls of 5 it is 45 long through its bottom, and 95 through its front.
func TestSleeveGoesAcross(t *testing.T) {
	t.Parallel()
	const plate = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {rectangle: [200, 80]}\nholes: [{name: h, at: [[-60, 0], [60, 0]], size: M10 clearance}]\n"
	for on, want := range map[string]string{", on: bottom": "45 long", "": "95 long"} {
		rail := "part: rail\nkind: bar\nmaterial: S235\nbar: {rectangle: [50, 100], wall: 5, length: 400}\nholes: [{name: h" + on + ", at: [[-60, 0], [60, 0]], size: M10 clearance, walls: both}]\n"
		p := planned(t, jobOf(t, "{name: on, bolt: {through: plate.h, into: rail.h, bolt: M10 8.8, nut: yes}, face: back-on-front}", plate, rail))
		at := slices.IndexFunc(p.Bought, func(r plan.BoughtRow) bool { return strings.HasPrefix(r.Item, "Sleeve of pipe") })
		if at < 0 || !strings.HasSuffix(p.Bought[at].Item, want) || p.Bought[at].Quantity != 2 {
			t.Errorf("%q: %+v, want %s", on, p.Bought, want)
		}
		if said := strings.Join(jointNamed(t, p, "on").Cautions, " "); !strings.Contains(said, "round each, let in from the side of the head down to the other wall, ") {
			t.Error(said)
		}
	}
}
