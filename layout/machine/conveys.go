package machine

import (
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
)

// conveys finds flights on the shaft that the motor turns which move their load
// the other way than they are to: away from the motor, where nothing is said.
func (m *Machine) conveys() (found []plan.Problem) {
	motor := m.Job.Motor
	if motor == nil || motor.Rotation == "either" || !motor.Drives.Set() {
		return nil
	}
	shaft := m.Standing(motor.Drives.Instance())
	if shaft == nil {
		return nil
	}
	clockwise := motor.TurnsClockwise() != m.Opposed()
	turns := words.Either(clockwise, "turns clockwise seen from the motor's end", "turns counter-clockwise seen from the motor's end")
	out := shaft.Pose.Z.Times(m.Driven(motor.Drives)) // of the shaft, to the motor
	for _, b := range m.Along(shaft.Pose) {
		if b.Of.Part.Kind != parts.FlightPart {
			continue
		}
		f := b.Of.Part.Flight
		hand := words.Either(f.Left, "left-hand", "right-hand")
		frontAtMotor, toMotor := b.Pose.Z.Dot(out) > 0, clockwise != f.Left
		if wanted := f.Moves != "" && (f.Moves == parts.Front) == frontAtMotor; toMotor == wanted {
			continue
		}
		ends := []string{"its end away from the motor", "the motor"}
		if !toMotor {
			ends[0], ends[1] = ends[1], ends[0]
		}
		found = append(found, stand.Problem(m.between(b.ID, ""), plan.FlightBackward, f.Pos, m.Named(b.ID), plan.Named(hand), plan.Named(turns), plan.Named(ends[1]), plan.Named(ends[0])))
	}
	return found
}
