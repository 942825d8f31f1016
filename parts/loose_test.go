package parts

import "testing"

// What is ordered as a motor is one, however it is written; what is only for one is not.
func TestIsMotor(t *testing.T) {
	t.Parallel()
	for item, want := range map[string]bool{"gear motor, 2 kW": true, "Gearmotor 2 hp, output face 145TC": true, "motor": true, "motor plate": false, "cover over the motor": false, "cable to the motor, 3 m": false} {
		if got := ItemUse(item, "") == AMotor; got != want {
			t.Errorf("%s: %v", item, got)
		}
	}
}
