package joint_test

import (
	"strings"
	"testing"
)

// What a weld draws in is the rule of TWI for its own length: 0.8 mm along for
// 3 m. The pug mill's front flange is welded by a groove, the stub's flange here by a
// fillet of 4 round 139.7 mm, on a wall of 4: over three quarters of it, so in
// proportion 0.8 × 4/3 across (common practice).
func TestWeldSaysWhatItDrawsIn(t *testing.T) {
	t.Parallel()
	p, err := draft(editedDemo(t, "pugmill", "job.yaml", "to: inlet-stub.outside, type: bevel", "to: inlet-stub.outside, type: fillet, size: 4 mm"))
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"inlet-flange-weld": "0.8 to 1.07 across, 0.12 along", "front-flange-weld": ""} {
		got := ""
		for _, f := range jointNamed(t, p, name).Figures {
			if strings.HasPrefix(f.Label, "draws in") {
				got = f.Value
			}
		}
		if got != want {
			t.Errorf("%s draws in %q, want %q", name, got, want)
		}
	}
}
