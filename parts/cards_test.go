package parts

import "testing"

// The unit of the voltage is printed once, whether the job writes it or not.
func TestOnPlate(t *testing.T) {
	t.Parallel()
	for in, want := range map[string]string{"400": "400 V", "400 V": "400 V", "230/400V": "230/400 V", " 230/460 V ": "230/460 V"} {
		if got := (&Motor{Volts: Text{Value: in}}).OnPlate(); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}
