package joint_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// A shaft of 20 f7 (−20/−41 µm) turns in a bush bored 20 H8 (0/+33, ISO 286-1) that is pressed into a plate, a
// keyed wheel on its end: 20 to 74 µm of play as drawn, less what the bush closes by. Nothing clocks it or runs a
// nut against it, and it comes after the press, though the job says it first.
func TestShaftTurnsInBush(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: plate\nkind: turned\nmaterial: S235\nstock: {round: 85 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 80, length: 20}]\n  inside: [{name: bore, diameter: 28, fit: H7, length: 20}]\n"
		bush  = "part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 32 mm, cut: saw}\nprofile:\n  outside: [{name: outside, diameter: 28, fit: p6, length: 20}]\n  inside: [{name: bore, diameter: 20, fit: H8, length: 20}]\nchamfers: [{edge: outside-back, size: 2, angle: 15, for: lead-in}]\nradial: [{name: oil, clock: 0, axial: 10, size: 3}]\n"
		shaft = "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30 mm, cut: saw}\nprofile:\n  outside:\n    - {name: tip, thread: M12, length: 12}\n    - {name: seat, diameter: 16, fit: h6, length: 20}\n    - {name: journal, diameter: 20, fit: f7, length: 21}\n    - {name: collar, diameter: 28, length: 10}\nkeyways: [{name: key, in: seat, length: 14}]\n"
		wheel = "part: wheel\nkind: turned\nmaterial: S235\nstock: {round: 65 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 20.5}]\n  inside: [{name: bore, diameter: 16, fit: H7, length: 20.5}]\nkeyways: [{name: key, in: bore}]\n"
		turn  = "{name: turn, slide: {hub: bush.bore, on: shaft.journal}, face: back-on-front}"
		press = "\n  - {name: press, press: {shaft: bush.outside, bore: plate.bore}, level: front-with-front}"
		keyed = "\n  - {name: wheel, slide: {hub: wheel.bore, on: shaft.seat, kept-by: shaft.tip}, after: turn}"
	)
	p := filed(t, turn+press+keyed, plate, bush, shaft, wheel)
	j := jointNamed(t, p, "turn")
	closes := 1000 * jointNamed(t, p, "press").Press.BoreClosesMm
	if s := j.Slide; j.How != "back of bush against the shoulder collar of shaft" || closes <= 0 || s.Key+s.Keeper+s.HeldBy+s.From != "" ||
		s.PlayMm != (plan.Range{Min: geom.Clean(0.02 - closes/1000), Max: 0.074}) {
		t.Errorf("%q, closes %v, %+v", j.How, closes, s)
	}
	if len(j.Why) != 1 || !strings.Contains(j.Why[0].Why, "pressed in") || jointNamed(t, p, "press").N > j.N {
		t.Errorf("%d: %v", j.N, j.Why)
	}
	says(t, j, []string{"nothing is driven", "turns by hand all round"}, []string{"scribe", "nut", "key", "galvanic", "eaten"})
	says(t, jointNamed(t, p, "wheel"), []string{"Hold shaft by a strap"}, nil)
	// It closes too far for f7, and is finished to its limits; of d9 (−65/−117) enough is left, and nothing is reamed.
	says(t, jointNamed(t, p, "press"), []string{"finish it after pressing", "Its limits: 20.00 – 20.03."}, []string{"not reamed"})
	stepped := strings.Replace(bush, "{name: bore, diameter: 20, fit: H8, length: 20}", "{name: seal, diameter: 22, fit: H8, length: 8}, {name: bore, diameter: 20, fit: H8, length: 12}", 1)
	says(t, jointNamed(t, filed(t, turn+press, plate, stepped, shaft), "press"), []string{"Its limits: seal 22.00 – 22.03; bore 20.00 – 20.03."}, nil)
	loose := jointNamed(t, filed(t, turn+press, plate, bush, strings.Replace(shaft, "fit: f7", "fit: d9", 1)), "press")
	says(t, loose, []string{"shaft keeps 36.4 – 150 µm of play in it without reaming"}, []string{"finish it after pressing"})
	// Where nothing says how it lies along the bush, that is said, and it is drawn middle on middle.
	if free := jointNamed(t, filed(t, strings.Replace(turn, ", face: back-on-front", "", 1)+press, plate, bush, shaft), "turn"); free.How != "how far it goes in is not said" || len(free.Problems) == 0 || free.Problems[0].Kind != plan.AlongLacking {
		t.Errorf("%q, %v", free.How, free.Problems)
	}
	// The plate in which the bush is pressed weighs 70 kg (π/4 × 0.24² × 0.2 × 7850, less the bore), the shaft less than
	// one: that is brought to it, and nothing is lifted.
	heavy := strings.NewReplacer("round: 85", "round: 245", "diameter: 80, length: 20", "diameter: 240, length: 200", "fit: H7, length: 20", "fit: H7, length: 200").Replace(plate)
	if l := jointNamed(t, filed(t, turn+press, heavy, bush, shaft), "turn").Lift; l != nil {
		t.Errorf("%+v", l)
	}
	// Two bushes in one plate: the shaft goes through both at once, and lies in the second when its own step comes.
	const two = "{name: turn, slide: {hub: bush#1.bore, on: shaft.journal}, face: back-on-front}\n  - {name: turn-2, slide: {hub: bush#2.bore, on: shaft.journal}}" +
		"\n  - {name: press, press: {shaft: bush#1.outside, bore: plate.bore}, level: back-with-back}\n  - {name: press-2, press: {shaft: bush#2.outside, bore: plate.bore}, level: front-with-front}"
	long := strings.NewReplacer("diameter: 80, length: 20", "diameter: 80, length: 50", "fit: H7, length: 20", "fit: H7, length: 50").Replace(plate)
	pair := filed(t, two, long, strings.Replace(bush, "kind: turned\n", "kind: turned\nquantity: 2\n", 1), strings.Replace(shaft, "fit: f7, length: 21", "fit: f7, length: 52", 1))
	says(t, jointNamed(t, pair, "turn"), []string{"Wipe shaft journal, bush 1 bore and bush 2 bore clean", "nothing is driven"}, nil)
	says(t, jointNamed(t, pair, "turn-2"), []string{"shaft came into bush 2 with an earlier step", "turns by hand all round"}, []string{"Wipe", "nothing is driven"})
	// A shaft in bushes of what is fixed to the floor is not fixed by them: it turns, they do not.
	floor := filed(t, strings.Replace(two, "face: back-on-front}", "face: back-on-front, anchored: plate}", 1), long, strings.Replace(bush, "kind: turned\n", "kind: turned\nquantity: 2\n", 1), strings.Replace(shaft, "fit: f7, length: 21", "fit: f7, length: 52", 1))
	says(t, jointNamed(t, floor, "turn-2"), []string{"shaft turns by hand all round"}, []string{"bush 2 turns"})
	// What is screwed into a hub that nothing bolts is put in when its last joint is made.
	screwed := wheel + "radial: [{name: screw, clock: 90, axial: 10, size: M5 tap, note: set screw}]\n"
	says(t, jointNamed(t, filed(t, turn+press+keyed, plate, bush, shaft, screwed), "wheel"), []string{"Set screw M5 into screw of wheel"}, nil)
	// A wheel with a keyway has to be kept.
	w, err := layout.Work(jobOf(t, "{name: wheel, slide: {hub: wheel.bore, on: shaft.seat}, face: back-on-front}", shaft, wheel))
	if err != nil || !slices.ContainsFunc(w.Plan.Faults, func(f plan.Problem) bool {
		return f.Kind == plan.CannotJoin && strings.Contains(f.Args[1].Text, "kept-by")
	}) {
		t.Errorf("%v", err)
	}
}

// The play along that a retaining ring leaves a bush is felt with a feeler gauge, and measured with calipers where no leaf is so
// thick: the groove 1.6 mm further out, on a longer journal, leaves that much more than 0.001 – 0.03 in.
func TestPlayAlongGauge(t *testing.T) {
	t.Parallel()
	for length, want := range map[string]string{"7/8,": "feeler 0.001 in – 0.03 in", "15/16,": "calipers 0.063 in – 0.092 in"} {
		p, err := draft(editedDemo(t, "gatejack", "arm-post.yaml", "length: 7/8,", "length: "+length))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, c := range jointNamed(t, p, "arm").Checks {
			if c.What == "play along" {
				got = c.Gauge + " " + c.Limits
			}
		}
		if got != want {
			t.Errorf("%s %q, want %q", length, got, want)
		}
	}
}

// A bush of 20 behind a collar of 5, pressed into a plate of 20 with nothing else said, stands with the collar on the plate, and a joint that only guesses
// does not bring it elsewhere; in a plate of 22 it is drawn middle on middle, 1 off that, and that nothing says where is said.
func TestPressOnShoulder(t *testing.T) {
	t.Parallel()
	const bush = "part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 40 mm, cut: saw}\nprofile:\n  outside: [{name: collar, diameter: 34, length: 5}, {name: outside, diameter: 28, fit: p6, length: 20}]\n  inside: [{name: bore, diameter: 20, fit: H8, length: 25}]\nchamfers: [{edge: outside-back, size: 2, angle: 15, for: lead-in}]\n"
	for _, c := range []struct {
		long, how string
		front     float64
		lacking   bool
	}{
		{"20", "fronts looking the same way, the shoulder collar of bush on plate", -5, false}, {"22", "fronts looking the same way", -4, true},
	} {
		plate := "part: plate\nkind: turned\nmaterial: S235\nstock: {round: 85 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 80, length: " + c.long + "}]\n  inside: [{name: bore, diameter: 28, fit: H7, length: " + c.long + "}]\n"
		j := jointNamed(t, filed(t, "{name: press, press: {shaft: bush.outside, bore: plate.bore}}", plate, bush), "press")
		at := map[string]float64{}
		for _, p := range j.Placed {
			at[p.Part] = p.FrontMm
		}
		lacks := slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == plan.AlongLacking })
		if got := at["bush"] - at["plate"]; j.How != c.how || !geom.Alike(got, c.front) || lacks != c.lacking {
			t.Errorf("%s: %q, %v from the plate, %v", c.long, j.How, got, lacks)
		}
	}
}
