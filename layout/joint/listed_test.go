package joint_test

import (
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
