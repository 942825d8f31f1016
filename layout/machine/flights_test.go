package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// TestFlightsMeet: of two right-hand flights of pitch 100 on a shaft, the first 200 long, the second begins where that ends, at the same
// clock angle; half a pitch on it leaves as much as a hanger takes. A first of 150 ends half a turn round from where one
// placed there begins, one of 205 within 18°, and one of 204 14.4°; turned end for end, a flight winds on all the same.
func TestFlightsMeet(t *testing.T) {
	t.Parallel()
	const (
		shaft  = "part: shaft\ntitle: Shaft\nkind: turned\nmaterial: S235\nstock: {round: 75 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: 800}]\n"
		flight = "kind: flight\nmaterial: S235\nstock: {sheet: 6 mm, cut: plasma}\nflight: {shaft: 70, outside: 150, pitch: 100, thickness: 6, length: "
		weld   = ".inside, to: shaft.body, type: fillet, size: 4 mm, sides: 2}, level: front-with-front, below: "
		job    = "job: J\nunits: mm\nparts: [shaft.yaml, first.yaml, second.yaml]\njoints:\n  - {name: w1, weld: {part: first" + weld + "50}\n  - {name: w2, weld: {part: second" + weld + "AT}\n"
	)
	turned := []string{"level: front-with-front, below: 250", "place: {on: front, with: front, at: [0, 0], gap: -450, top: up}"}
	for _, c := range []struct {
		first, at, hand string
		edit            []string
		want            string
	}{
		{"200", "250", "", nil, ""}, {"200", "300", "", nil, ""}, {"200", "300.1", "", nil, "flight-gap First Second 50.1"}, {"200", "300.1", ", hand: left", nil, ""},
		{"150", "200", "", nil, "flight-apart First Second 180"}, {"150", "206", "", nil, ""}, {"150", "200", ", hand: left", nil, ""},
		{"204", "254", "", nil, ""}, {"205", "255", "", nil, "flight-apart First Second 18"},
		{"200", "244", "", nil, "flight-over First Second 6"}, {"200", "150", "", nil, "flight-over First Second 100"}, {"200", "149", "", nil, ""}, // two starts
		{"200", "250", "", turned, ""},
	} {
		edit := strings.NewReplacer(c.edit...)
		files := map[string]string{"shaft.yaml": shaft, "first.yaml": "part: first\ntitle: First\n" + flight + c.first + "}\n",
			"second.yaml": "part: second\ntitle: Second\n" + flight + "200" + c.hand + "}\n", "job.yaml": edit.Replace(strings.Replace(job, "AT}", c.at+"}", 1))}
		if got := found(t, files, plan.FlightGap, plan.FlightOver, plan.FlightApart); got != c.want {
			t.Errorf("first %s, second at %s%s %q: %q, want %q", c.first, c.at, c.hand, c.edit, got, c.want)
		}
	}
}

// A flight of 300 and pitch 100 begins 90 behind the front of its tube; openings of 80 stand at 120, over it, and behind it: of one at
// 480 it ends 390 + 40 + 50, half a pitch, before the middle; one with a flight under it is reached. A hole of 60 is no outlet of 150.
func TestFlightReachesItsOpenings(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ at, size, second, want string }{
		{"480", "80", "", ""}, {"481.04", "80", "", "flight-short First Tube outlet 51"}, {"550", "60", "", ""}, {"550", "80", "left", ""}, {"340", "80", "", ""},
	} {
		flight := func(name, more string) string {
			return "part: " + name + "\ntitle: " + words.Capital(name) + "\nkind: flight\nmaterial: S235\nstock: {sheet: 6 mm, cut: plasma}\nflight: {shaft: 70, outside: 150, pitch: 100, thickness: 6, length: " + more + "}\n"
		}
		files := map[string]string{
			"shaft.yaml": "part: shaft\nkind: turned\nmaterial: S235\nstock: {round: 75 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: 600}]\n",
			"tube.yaml":  "part: tube\ntitle: Tube\nkind: tube\nmaterial: S235\nstock: {tube: 168, wall: 4, length: 610}\ntube: {outside: 168, wall: 4, length: 600}\nradial:\n  - {name: inlet, clock: 0, axial: 120, size: 80}\n  - {name: outlet, clock: 180, axial: " + c.at + ", size: " + c.size + "}\n",
			"end.yaml":   "part: end\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {circle: 200}\nbore: {diameter: 70}\n",
			"first.yaml": flight("first", "300"), "second.yaml": flight("second", "100, hand: left"),
		}
		names, weld := "shaft.yaml, tube.yaml, end.yaml, first.yaml", "  - {name: second, weld: {part: second.inside, to: shaft.body, type: fillet}, level: front-with-front, below: 480}\n"
		if c.second == "" {
			weld = ""
		} else {
			names += ", second.yaml"
		}
		files["job.yaml"] = "job: J\nunits: mm\nparts: [" + names + "]\njoints:\n  - {name: end, weld: {part: end.bore, to: shaft.body, type: fillet}, level: front-with-front}\n" +
			"  - {name: tube, weld: {part: tube.outside, to: end.outline, type: fillet}, place: {on: back, with: front, at: [0, 0], top: up, gap: 0}}\n  - {name: first, weld: {part: first.inside, to: shaft.body, type: fillet}, level: front-with-front, below: 100}\n" + weld
		if got := found(t, files, plan.FlightShort); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}
