package machine_test

import (
	"cmp"
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A ring of 20 on a seat of 40 at the front of a pin, before a body of 60: its front so far over the pin's that it hangs
// before it, touches it with an edge, or lies on it; on a collar behind the body nothing of it lies on the seat.
func TestOffSeats(t *testing.T) {
	t.Parallel()
	const (
		pin  = "part: pin\ntitle: Pin\nkind: shaft\nmaterial: C45\nstock: {round: 80 mm, length: 160 mm}\nprofile:\n  outside:\n    - {name: nose, diameter: 40, length: 50, fit: h7}\n    - {name: body, diameter: 60, length: 70}\n"
		ring = "part: ring\ntitle: Ring\nkind: turned\nmaterial: S235\nstock: {round: 125 mm, length: 26 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 20}]\n  inside: [{name: bore, diameter: 40, length: 20, fit: H8}]\n"
	)
	for _, c := range []struct{ how, want string }{
		{"level: back-with-back, body: 40.7", ""}, {"level: back-with-back, body: 40.9", "Ring bore Pin nose 50"}, // a fiftieth is its diameter still
		{"level: front-with-front", ""}, {"level: front-with-front, below: 19", ""}, {"level: front-with-front, below: 20", "Ring bore Pin nose 0"},
		{"level: front-with-front, below: 99, housed", ""}, {"level: front-with-front, below: 101, housed", "Ring bore Pin nose 81"}, // a bush as far as four times its bore off was meant to reach its journal
		{"level: front-with-front, below: 25.004", "Ring bore Pin nose 5"}, {"level: back-with-back", "Ring bore Pin nose 50"},
	} {
		how, housed := strings.CutSuffix(c.how, ", housed")
		how, body, _ := strings.Cut(how, ", body: ")
		pressed := strings.NewReplacer()
		if housed {
			pressed = strings.NewReplacer("diameter: 120, length", "diameter: 120, fit: s6, length", "pin.yaml, ring", "pin.yaml, housing.yaml, ring", "joints:\n", "joints:\n  - {name: p, press: {shaft: ring.rim, bore: housing.bore}, level: front-with-front}\n")
		}
		m, _ := load(t, write(t, map[string]string{"pin.yaml": strings.Replace(pin, "diameter: 60", "diameter: "+cmp.Or(body, "60"), 1), "ring.yaml": pressed.Replace(ring), "housing.yaml": "part: housing\nkind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {square: 200}\nbore: {diameter: 120, fit: H7}\n",
			"job.yaml": pressed.Replace("job: J\nunits: mm\nparts: [pin.yaml, ring.yaml]\njoints:\n  - {name: s, slide: {hub: ring.bore, on: pin.nose}, " + how + "}\n")}))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.SeatMissed {
				got = fmt.Sprint(p.Args[0].Text, " ", p.Args[1].Text, " ", p.Args[2].Value)
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.how, got, c.want)
		}
	}
}

// Two rings welded on a plate 100 apart, and two pins screwed to a strap: the first ring slides on the first pin, and the
// second closes the loop of joints, at 100 and within what sizes are rounded by; 4 further on, or with the strap turned by 90°, 100 √2 off.
func TestSeatsAside(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		at, rotate string
		off        float64
	}{{"[100, 0]", "0", 0}, {"[100.08, 0]", "0", 0}, {"[104, 0]", "0", 4}, {"[0, 104]", "90", 4}, {"[100, 0]", "90", 141.42}, {"[800, 0]", "0", 700}} {
		files := map[string]string{
			"base.yaml":  "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 300}\n",
			"strap.yaml": "part: strap\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 300}\nholes:\n  - {name: one, at: [[0, 0]], size: M8 clearance}\n  - {name: two, at: [[100, 0]], size: M8 clearance}\n",
			"ring.yaml":  "part: ring\nquantity: 2\nkind: turned\nmaterial: S235\nstock: {round: 65 mm, length: 26 mm}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 20}]\n  inside: [{name: bore, diameter: 20, length: 20, fit: H8}]\n",
			"pin.yaml":   "part: pin\nquantity: 2\nkind: shaft\nmaterial: C45\nstock: {round: 25 mm, length: 60 mm}\nprofile:\n  outside: [{name: run, diameter: 20, length: 50, fit: f7}]\nholes:\n  - {name: tap, face: back, at: [[0, 0]], size: M8 tap, depth: 16}\n",
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, strap.yaml, ring.yaml, pin.yaml]\njoints:\n" +
				"  - {name: r1, weld: {part: ring#1.rim, to: base.outline, type: fillet, process: MAG}, place: {on: front, with: back, at: [0, 0], top: up}}\n" +
				"  - {name: r2, weld: {part: ring#2.rim, to: base.outline, type: fillet, process: MAG}, place: {on: front, with: back, at: " + c.at + ", top: up}}\n" +
				"  - {name: s1, slide: {hub: ring#1.bore, on: pin#1.run}, level: front-with-front, rotate: " + c.rotate + "}\n" +
				"  - {name: p1, bolt: {through: strap.one, into: pin#1.tap, bolt: M8 8.8}, face: front-on-back}\n" +
				"  - {name: p2, bolt: {through: strap.two, into: pin#2.tap, bolt: M8 8.8}, face: front-on-back}\n" +
				"  - {name: s2, slide: {hub: ring#2.bore, on: pin#2.run}}\n",
		}
		m, _ := load(t, write(t, files))
		for _, p := range m.Problems {
			if p.Kind == plan.SeatAside {
				c.off -= p.Args[2].Value
			}
		}
		if c.off != 0 {
			t.Errorf("%+v", c)
		}
	}
}

// A pin slides in two bushes, each pressed into a plate, and no joint says how far it goes in: the first bush has it in its
// middle; where the weld of the second plate lacks its place, that stands by chance, which is said of the weld alone.
func TestSeatsUntied(t *testing.T) {
	t.Parallel()
	for place, tied := range map[string]bool{", place: {on: front, with: bottom, at: [25, 0], front: right}": true, "": false} {
		m, _ := load(t, write(t, map[string]string{
			"plate.yaml":   "part: plate\nquantity: 2\nkind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {square: 150}\nbore: {diameter: 60, fit: H7}\n",
			"ring.yaml":    "part: ring\nquantity: 2\nkind: turned\nmaterial: S235\nstock: {round: 65 mm, length: 26 mm}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 20, fit: s6}]\n  inside: [{name: bore, diameter: 40, length: 20, fit: H8}]\n",
			"pin.yaml":     "part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm, length: 310 mm}\nprofile:\n  outside: [{name: run, diameter: 40, length: 300, fit: f7}]\n",
			"bracket.yaml": "part: bracket\nkind: plate\nmaterial: S235\nstock: {plate: 12}\noutline: {square: 200}\n",
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, ring.yaml, pin.yaml, bracket.yaml]\njoints:\n" +
				"  - {name: p1, press: {shaft: ring#1.rim, bore: plate#1.bore}, level: front-with-front}\n" +
				"  - {name: p2, press: {shaft: ring#2.rim, bore: plate#2.bore}, level: front-with-front}\n" +
				"  - {name: w1, weld: {part: plate#1.outline, to: bracket.outline, type: fillet}, place: {on: front, with: bottom, at: [-25, 0], front: right}}\n" +
				"  - {name: w2, weld: {part: plate#2.outline, to: bracket.outline, type: fillet}" + place + "}\n" +
				"  - {name: s1, slide: {hub: ring#1.bore, on: pin.run}}\n  - {name: s2, slide: {hub: ring#2.bore, on: pin.run}}\n",
		}))
		for _, p := range m.Problems {
			if p.Kind == plan.SeatAside || p.Kind == plan.SeatMissed {
				t.Errorf("%s: %s %v", place, p.Kind, p.Args)
			}
		}
		ring, pin := body(t, m, "ring#1"), body(t, m, "pin#1")
		if mid := pin.Pose.Inverse().Of(ring.Pose).At.Z; mid != -140 || m.Tied(body(t, m, "ring#2"), pin) != tied {
			t.Errorf("%s: %g along the pin, %v %v", place, mid, ring.Pose.At, pin.Pose.At)
		}
	}
}
