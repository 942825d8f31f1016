package joint_test

import "testing"

// A torque wrench on its socket, 53 mm over the seat of a head to M10 and 34 mm across (common
// practice, no source), has 12 mm beside it and 68 mm over it in the waist of the lantern; the
// cone of the hopper leans over the heads but not the nuts. Some 50.6 N m, printed as 51, is 253 N at 20 diameters
// of an M10.
func TestWhatGetsAtTheHeads(t *testing.T) {
	t.Parallel()
	crow, nuts := "Lantern bars a socket on the heads: a crow-foot, square to the wrench.", "Hopper bars a socket on the heads: tighten the nuts, a ring spanner on the heads."
	for _, c := range []struct {
		file, from, to, joint string
		says, not             []string
	}{
		{"pillar.yaml", "quantity: 4", "quantity: 4", "lantern", []string{crow}, nil},
		{"lantern.yaml", "{name: waist, diameter: 132,", "{name: waist, diameter: 121,", "lantern", nil, []string{"bars a socket"}},
		{"lantern.yaml", "{name: waist, diameter: 132,", "{name: waist, diameter: 123,", "lantern", []string{crow}, nil},
		{"job.yaml", "bearing-housing.lantern-taps, bolt: M10 8.8,", "bearing-housing.lantern-taps, bolt: M10 8.8, head: socket,", "lantern",
			[]string{"Lantern bars a socket on the heads: pull a hexagon key in a tube with a spring balance, square to it. 0.25 kN at 200 is the full torque."}, []string{"crow-foot"}},
		{"pillar.yaml", "quantity: 4", "quantity: 4", "hopper", []string{nuts}, nil},
		{"job.yaml", "gap: -1 mm", "gap: 90 mm", "hopper", nil, []string{"bars a socket"}},
		{"pillar.yaml", "quantity: 4", "quantity: 4", "barrel", nil, []string{"bars a socket"}},
		{"pillar.yaml", "quantity: 4", "quantity: 4", "gland", nil, []string{"bars a socket"}},
	} {
		p, err := draft(editedDemo(t, "pugmill", c.file, c.from, c.to))
		if err != nil {
			t.Fatal(err)
		}
		says(t, jointNamed(t, p, c.joint), c.says, c.not)
	}
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "housing"), []string{"third 35 lb ft"}, []string{"bars a socket"})
}

// What is shrunk on says so in its title.
func TestPressTitles(t *testing.T) {
	t.Parallel()
	for method, want := range map[string]string{
		"press": "Press Barrel flange 2 on Barrel tube", "heat": "Shrink Barrel flange 2 on Barrel tube", "cool": "Shrink Barrel tube, cooled, into Barrel flange 2",
	} {
		p, err := draft(editedDemo(t, "pugmill", "job.yaml", "method: heat", "method: "+method))
		if err != nil {
			t.Fatal(err)
		}
		if got := jointNamed(t, p, "rear-flange").Title; got != want {
			t.Errorf("%s: %s", method, got)
		}
	}
}
