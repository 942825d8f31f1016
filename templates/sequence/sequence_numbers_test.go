package sequence

import (
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/sheettest"
)

// An inch job reads a press and a wrench in pounds: 1 lbf is 4.448 N, 1 lb ft is 1.356
// N m (NIST SP 811).
func TestKeyNumbersInTheJobsUnits(t *testing.T) {
	t.Parallel()
	press := &plan.JointPlan{Press: &plan.PressPlan{ForceN: plan.Range{Min: 444.8, Max: 1779.3}, ShopPressN: 196133}}
	bolt := &plan.JointPlan{Bolt: &plan.BoltPlan{TorqueNm: 11.45, OtherTorqueNm: 8.59, Threads: "dry", OtherThreads: "oiled"}}
	washered := &plan.JointPlan{Bolt: &plan.BoltPlan{Ordered: "M12 x 60", Class: "8.8", Head: "hexagon", GripMm: 35, WasherMm: 2.5, Grip: []plan.GripRow{{ThickMm: 20}, {ThickMm: 15}}}}
	studs := &plan.JointPlan{Bolt: &plan.BoltPlan{GripMm: 20, Spacer: true, Grip: []plan.GripRow{{ThickMm: 20}, {ThickMm: 15}}}}
	weld := &plan.JointPlan{Weld: &plan.WeldPlan{Runs: 3, Process: "MAG", BuyKg: 0.25}}
	for n, want := range map[int]string{1: "MAG, buy 0.25 kg", 2: "MAG, buy 0.5 kg for 2"} {
		if got := weldNumbers(weld.Weld, n, words.Writer{}); !slices.Contains(got, keyNumber{"Runs", "3", want}) {
			t.Errorf("of %d pieces: %v", n, got)
		}
	}
	for _, c := range []struct {
		j     *plan.JointPlan
		units parts.Units
		want  keyNumber
	}{
		{press, parts.Millimetres, keyNumber{"Press force", "0.4–1.8 kN", "the shop's press: 196 kN"}},
		{press, parts.Inches, keyNumber{"Press force", "100–400 lbf", "the shop's press: 44100 lbf"}},
		{&plan.JointPlan{Slide: &plan.SlidePlan{Cone: 10, Key: "A10×8×40", KeyOnMm: 38}}, parts.Millimetres, keyNumber{"Cone", "1:10", "it bears all round"}},
		{&plan.JointPlan{Slide: &plan.SlidePlan{Cone: 19.2546}}, parts.Inches, keyNumber{"Cone", "1:19.255", "it bears all round"}},
		{washered, parts.Millimetres, keyNumber{"Grip", "37.5 mm", "from the head 2.5 + 20 + 15"}},
		{studs, parts.Millimetres, keyNumber{"Grip", "20 mm", "each end its own: 20, 15"}},
		{bolt, parts.Millimetres, keyNumber{"Torque", "11 N m", "threads dry; oiled 9"}},
		{bolt, parts.Inches, keyNumber{"Torque", "101 lb in", "threads dry; oiled 76"}},
		{&plan.JointPlan{Bolt: &plan.BoltPlan{Count: 4, Size: "M8", Class: "8.8", Soft: &plan.GripRow{What: "gasket", ThickMm: 2}}}, parts.Millimetres, keyNumber{"gasket", "2 mm", "free; no torque is known"}},
		{&plan.JointPlan{Bolt: &plan.BoltPlan{Count: 4, Size: "M8", StudStandsMm: 22}}, parts.Millimetres, keyNumber{"Studs", "4 × M8", "made here, 22 mm stand out"}},
		{&plan.JointPlan{Bolt: &plan.BoltPlan{Count: 4, Size: "M8"}}, parts.Millimetres, keyNumber{"Studs", "4 × M8", "made here, a nut at each end"}},
	} {
		if got := keyNumbers([]*plan.JointPlan{c.j}, words.Writer{Units: c.units}); !slices.Contains(got, c.want) {
			t.Errorf("%v, want %v", got, c.want)
		}
	}
}

// TestKindsHaveNumbers: every kind of joint has numbers for the bench on its sheet, in small jobs
// that have them all.
func TestKindsHaveNumbers(t *testing.T) {
	t.Parallel()
	seen := map[parts.JointKind]bool{}
	for _, name := range []string{"barrel", "feeder", "formed", "jack"} {
		for _, j := range sheettest.Worked(t, "joint", name).Plan.Joints {
			seen[j.Kind] = true
			if len(keyNumbers([]*plan.JointPlan{j}, words.Writer{})) == 0 {
				t.Errorf("%s %s, a %s, has no numbers", name, j.Name, j.Kind)
			}
		}
	}
	for _, kind := range parts.JointKinds {
		if !seen[kind] {
			t.Errorf("no joint is a %s", kind)
		}
	}
}

// TestRingFor: what a press ring of a ball bearing bears on, whose outer ring is 55 inside; of another bearing the ring that is
// pressed.
func TestRingFor(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		ball    bool
		in, out float64
		want    string
	}{{true, 32, 54.9, "Ring for the inner ring"}, {true, 32, 55, "Ring for both rings"}, {true, 54.9, 62, "Ring for both rings"}, {true, 55, 62, "Ring for the cup"}, {false, 32, 50, "Ring for the cup"}} {
		if got := ringFor(&plan.BearingPlan{Ball: c.ball, CupRingInMm: 55}, plan.PushRing{InMm: c.in, OutMm: c.out}, "cup"); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}
