package machine

import (
	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// conveys finds flights on the shaft that the motor turns which move their load
// the other way than they are to: away from the motor, where nothing is said.
func (m *Machine) conveys() (found []plan.Problem) {
	motor := m.job.Motor
	if motor == nil || motor.Rotation == "either" || !motor.Drives.Set() {
		return nil
	}
	shaft := m.standing(named(motor.Drives))
	if shaft == nil {
		return nil
	}
	clockwise, turns := motor.TurnsClockwise(), "turns counter-clockwise seen from the motor's end"
	if clockwise {
		turns = "turns clockwise seen from the motor's end"
	}
	out := shaft.Pose.Z.Times(m.driven(motor.Drives)) // of the shaft, to the motor
	for b, r := range m.parts() {
		f, hand := r.Part.Flight, "right-hand"
		if r.Part.Kind != parts.FlightPart || !sameAxis(shaft.Pose, b.Pose) {
			continue
		}
		if f.Left {
			hand = "left-hand"
		}
		frontAtMotor, toMotor := b.Pose.Z.Dot(out) > 0, clockwise != f.Left
		if wanted := f.Moves != "" && (f.Moves == parts.Front) == frontAtMotor; toMotor == wanted {
			continue
		}
		ends := []string{"its end away from the motor", "the motor"}
		if !toMotor {
			ends[0], ends[1] = ends[1], ends[0]
		}
		found = append(found, problem(m.between(b.ID, ""), plan.FlightBackward, f.Pos, m.named(b.ID), plan.Named(hand), plan.Named(turns), plan.Named(ends[1]), plan.Named(ends[0])))
	}
	return found
}

// driven is 1 where the step that a motor turns is nearer the front end of its
// shaft, else −1.
func (m *Machine) driven(step parts.JointRef) float64 {
	r := m.model(step.Part)
	outside, _ := r.Sides()
	for _, s := range outside {
		if s.Name == step.Feature && s.FromMm+s.ToMm > r.LengthMm() {
			return -1
		}
	}
	return 1
}

// sameAxis tells whether two rounds turn about one line.
func sameAxis(a, b assembly.Pose) bool {
	const offMm = 1
	at := b.At.Sub(a.At)
	return a.Z.Cross(b.Z).Len() < 1e-6 && at.Cross(a.Z).Len() < offMm
}
