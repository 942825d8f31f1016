package card

import (
	"cmp"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// motor is the page for the electrician; nil if the job has no motor. It
// repeats what the job says, and computes the torque at the output.
func (c cards) motor() *plan.Motor {
	m := c.job.Motor
	if m == nil {
		return nil
	}
	out := &plan.Motor{
		Plate: []plan.Fact{
			{Label: "Maker and type", Value: m.Maker.Value}, {Label: "Power", Value: words.Join("", plate(m.KW, " kW"), plate(m.HP, " hp"))},
			{Label: "Voltage", Value: m.OnPlate()}, {Label: "Phases", Value: strconv.Itoa(m.Phases)},
			{Label: "Frequency", Value: plate(m.Hz, " Hz")}, {Label: "Current", Value: plate(m.Amps, " A")},
			{Label: "Speed of the motor", Value: plate(m.RPM, " rev/min")}, {Label: "Speed at the output", Value: plate(m.OutRPM, " rev/min")},
			{Label: "Frame", Value: m.Frame.Value}, {Label: "Flange", Value: m.Flange.Value}, {Label: "Enclosure", Value: m.Enclosure.Value},
		},
		Machine: []plan.Fact{
			{Label: "Rotation wanted", Value: c.wanted()},
			{Label: "Earth point", Value: m.Earth.Value}, {Label: "Emergency stop", Value: m.EmergencyStop.Value},
		},
		Sign: []string{"Plate compared with this page", "Supply, protection and cable chosen by local code", "Earth connected and its continuity measured",
			"Insulation of motor and cable measured", c.rotationSign(), "Emergency stop stops it; letting it out does not start it", "After a power failure it does not start by itself"},
		Cautions: []string{"Wiring only by a licensed electrician, by the code of the place. This page gives what the plate and the machine say; supply, protection, cable and control are not worked out here."},
	}
	if nm := m.OutputNm(); nm > 0 {
		out.Machine = append(out.Machine, plan.Fact{Label: "Torque at the output", Value: c.w.Torque(nm) + " at full power, losses left out: no key, screw or thread of this job is checked for it"})
	}
	for _, g := range m.Guards {
		out.Machine = append(out.Machine, plan.Fact{Label: "Guard interlocked", Value: g.Value})
		out.Sign = append(out.Sign, "Opening it stops the motor, shutting it starts nothing: "+g.Value)
	}
	out.Notes = seq.Map(m.Notes, func(n parts.Text) string { return n.Value })
	return out
}

// seenFrom says where one stands and which way one looks.
var seenFrom = map[string]string{"drive-end": "the motor's drive end, looking at its shaft", "non-drive-end": "the motor's non-drive end, looking to what it drives"}

// plate writes a number of the plate; empty if the job does not give it.
func plate(v parts.Number, unit string) string {
	if v.Value == 0 {
		return ""
	}
	return words.Trim(v.Value, 3) + unit
}

// driven is the title of the part that the motor turns; empty if the job does not say it.
func (c cards) driven() string {
	if m := c.job.Motor; m != nil && m.Drives.Set() {
		return c.pl.Part(m.Drives.Part).Title
	}
	return ""
}

// rotation is which way the driven part turns, seen from its end away from the motor: behind a
// motor nobody sees it, and a gear may turn it the other way than its fan; of a motor beside it that is the end away
// from what it is driven by. Where the job names no such part, or no one way, it is the motor's, and the shaft is empty.
func (c cards) rotation() (shaft, turns, from string) {
	m := c.job.Motor
	if shaft = c.driven(); shaft == "" || m.Rotation == "either" {
		return "", m.Rotation, seenFrom[m.SeenFrom]
	}
	opposed := c.pl.Arrangement != nil && c.pl.Arrangement.Opposed
	turns = words.Either(m.TurnsClockwise() != opposed, "counter-clockwise", "clockwise") // seen from the other end
	return shaft, turns, "its end away from " + cmp.Or(map[string]string{"belt": "the belt", "gear-pair": "the gears"}[m.Through], "the motor")
}

// wanted are the words for the rotation on the page for the electrician.
func (c cards) wanted() string {
	shaft, turns, from := c.rotation()
	switch {
	case turns == "either": // from wherever it is seen
		return turns
	case shaft == "":
		return turns + ", seen from " + from
	}
	return shaft + " " + turns + ", seen from " + from + "; judge it there, not by the motor's fan"
}

func (c cards) rotationSign() string {
	shaft, turns, from := c.rotation()
	switch {
	case turns == "either":
		return "Turns both ways as switched"
	case shaft == "":
		return "Turns " + turns + ", as wanted above"
	}
	return shaft + " turns " + turns + ", seen from " + from
}
