package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A lug beside a plate's axis goes on turned and the other way round as its two
// holes allow, and what hangs on it with it, where nothing is in the way.
func TestWrongWays(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\noutline: {rectangle: [300, 200]}\nholes:\n  - {name: taps, face: front, at: [[-60, -20], [-60, 20]], size: M8 tap, depth: through}\n"
		lug   = "part: lug\ntitle: Lug\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 80]}\nholes:\n  - {name: screws, face: front, at: [[0, -20], [0, 20]], size: M8 clearance}\n"
		fin   = "part: fin\ntitle: Fin\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 80]}\n"
		job   = "job: J\nunits: mm\nparts: [plate.yaml, lug.yaml, fin.yaml]\njoints:\n  - name: w\n    weld: {part: fin.outline, to: lug.outline, type: fillet, length: 60 mm, sides: 2}\n    place: {on: front, with: bottom, from-left: 20 mm, from-top: 0, front: left}\n  - name: b\n    bolt: {through: lug.screws, into: plate.taps, bolt: M8 8.8}\n    face: back-on-front\n    after: w\n"
		bare  = "parts: [plate.yaml, lug.yaml]\njoints:\n  - name: b\n    bolt: {through: lug.screws, into: plate.taps, bolt: M8 8.8}\n    face: back-on-front\n"
	)
	alone := "job: J\nunits: mm\n" + bare
	for _, c := range []struct {
		name, job string
		changes   []string // old, new; of any part
		want      string   // turn, r for the other way round, parts elsewhere
	}{
		{"alike all round", alone, nil, "180:0 0r:0 180r:0"},
		{"a hole in a corner", alone, []string{"M8 clearance}", "M8 clearance}\n  - {name: mark, face: front, at: [[20, 30]], size: 5 mm, depth: through}"}, "180:1 0r:1 180r:1"},
		{"a hole beside the middle", alone, []string{"M8 clearance}", "M8 clearance}\n  - {name: mark, face: front, at: [[20, 0]], size: 5 mm, depth: through}"}, "180:1 0r:1 180r:0"},
		{"a blind hole in the middle", alone, []string{"M8 clearance}", "M8 clearance}\n  - {name: mark, face: front, at: [[0, 0]], size: 5 mm, depth: 5 mm}"}, "180:0 0r:1 180r:1"},
		{"a fin in the way on the back", job, nil, "180:1"},
		{"a fin beside the plate's edge", job, []string{"[-60, -20], [-60, 20]", "[-140, -20], [-140, 20]", "from-left: 20 mm", "from-left: 0"}, "180:1 180r:1"},
		{"a fin, three holes round", job, []string{"at: [[-60, -20], [-60, 20]]", "circle: {pcd: 40, count: 3, centre: [-60, 0]}", "at: [[0, -20], [0, 20]]", "circle: {pcd: 40, count: 3, centre: [0, 0]}"}, "120:1 240:1"},
		{"a fin, one hole", job, []string{"[-60, -20], [-60, 20]", "[-60, 0]", "[0, -20], [0, 20]", "[0, 0]"}, ""},
		{"a fin, on the top of a bar", job, []string{"kind: plate\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\noutline: {rectangle: [300, 200]}", "kind: bar\nmaterial: S235\nbar: {square: 100, wall: 5, length: 300}", "name: taps, face: front", "name: taps, on: top"}, "180:1"},
		{"with a bar, by the bottom of it", strings.Replace(job, "lug.outline", "lug.front", 1), []string{"kind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 80]}", "kind: bar\nmaterial: S235\nbar: {rectangle: [60, 80], wall: 5, length: 100}", "name: screws, face: front, at: [[0, -20], [0, 20]]", "name: screws, on: bottom, at: [[-20, 30], [20, 30]]", "[-60, -20], [-60, 20]", "[-80, 0], [-40, 0]", "face: back-on-front", "face: front-on-front"}, "180:1"},
		{"unlike holes", alone, []string{"[-60, -20], [-60, 20]", "[-60, -20], [-60, 20], [-40, 30]", "[0, -20], [0, 20]", "[0, -20], [0, 20], [20, 30]"}, ""},
	} {
		edit := strings.NewReplacer(c.changes...)
		m, _ := load(t, write(t, map[string]string{"plate.yaml": edit.Replace(plate), "lug.yaml": edit.Replace(lug), "fin.yaml": fin, "job.yaml": edit.Replace(c.job)}))
		if s := waysIn(m, "b"); s != c.want {
			t.Errorf("%s: %q, want %q", c.name, s, c.want)
		}
	}
}

// A cap whose rim of 10 lies behind a hub of 20, in front of it or 5 behind the hub's front goes over a bore of 100 the other
// way round with the bush in it, its rim where it was: the screws are as good either way. What is wider than the bore keeps it out. Its
// turns the joint knows.
func TestWaysOfACap(t *testing.T) {
	t.Parallel()
	const quarters, round = "0r:1 90r:1 180r:1 270r:1", "{name: b, diameter: 160, length: 10}"
	for _, c := range []struct{ outside, long, want string }{
		{"{name: a, diameter: 80, length: 20}, " + round, "30", quarters}, {"{name: a, diameter: 80, length: 5}, " + round, "15", quarters},
		{"{name: a, diameter: 98, length: 20}, " + round, "30", quarters}, {"{name: a, diameter: 102, length: 20}, " + round, "30", ""},
	} {
		m, _ := load(t, write(t, map[string]string{
			"cap.yaml":  "part: cap\nkind: turned\nmaterial: S235\nstock: {round: 170, length: 60}\nprofile:\n  outside: [" + c.outside + "]\n  inside: [{name: bore, diameter: 30, fit: H7, length: " + c.long + "}]\nholes:\n  - {name: screws, circle: {pcd: 130, count: 4}, size: M8 clearance}\n  - {name: drain, circle: {pcd: 130, count: 1, first: 20}, size: 6, depth: through}\n",
			"ring.yaml": "part: ring\nkind: plate\nmaterial: S235\nstock: {plate: 40}\noutline: {square: 200}\nbore: {diameter: 100}\nholes:\n  - {name: taps, circle: {pcd: 130, count: 4}, size: M8 tap, depth: 20}\n",
			"bush.yaml": "part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 35, length: 20}\nprofile:\n  outside: [{name: outside, diameter: 30, fit: n6, length: 10}]\n  inside: [{name: bore, diameter: 20, length: 10}]\n",
			"job.yaml":  "job: J\nunits: mm\nparts: [cap.yaml, ring.yaml, bush.yaml]\njoints:\n  - {name: p, press: {shaft: bush.outside, bore: cap.bore}, level: front-with-front}\n  - {name: b, bolt: {through: cap.screws, into: ring.taps, bolt: M8 8.8}, face: back-on-front, after: p}\n",
		}))
		if s := waysIn(m, "b"); s != c.want {
			t.Errorf("%s: %q, want %q", c.outside, s, c.want)
		}
	}
}

// A lug turned so that it lies in the plate beside it is clear the other way about: the cure is
// its own joint's. One that lies on a fin either way does so from its own joint on. Two lugs turned the same way stay in one another, and so does one that holds
// another part besides, which would turn with it.
func TestTurnedFree(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\noutline: {rectangle: [300, 200]}\nholes:\n  - {name: taps, face: front, at: [[-60, -20], [-60, 20]], size: M8 tap, depth: through}\n  - {name: tap, face: front, at: [[-60, 0]], size: M8 tap, depth: through}\n  - {name: four, face: front, at: [[-75, -15], [-75, 15], [-45, -15], [-45, 15]], size: M8 tap, depth: through}\n"
		lug   = "part: lug\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [100, 80]}\nholes:\n  - {name: screws, face: front, at: [[-30, -20], [-30, 20]], size: M8 clearance}\n  - {name: one, face: front, at: [[-30, 0]], size: M8 clearance}\n  - {name: four, face: front, at: [[-45, -15], [-45, 15], [-15, -15], [-15, 15]], size: M8 clearance}\n"
		fin   = "part: fin\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 80]}\n"
		job   = "job: J\nunits: mm\nparts: [plate.yaml, lug.yaml, fin.yaml]\njoints:\n  - name: w\n    weld: {part: fin.outline, to: plate.outline, type: fillet, length: 60 mm, sides: 2}\n    place: {on: front, with: bottom, at: [%s, 0], front: left}\n  - name: b\n    bolt: {through: lug.screws, into: plate.taps, bolt: M8 8.8}\n    face: back-on-front\n    after: w\n"
	)
	const held = "  - name: c\n    weld: {part: fin#2.outline, to: lug.outline, type: fillet, length: 30 mm, sides: 2}\n    place: {on: front, with: bottom, at: [30, 0], front: left}\n    after: b\n"
	fins := func(at, front string) string {
		return "  - {name: w2, weld: {part: fin#2.outline, to: plate.outline, type: fillet, length: 60, sides: 2}, place: {on: front, with: bottom, at: [" + at + "], front: " + front + "}, before: b}\n"
	}
	four := strings.Replace(strings.ReplaceAll(job, "lug.screws", "lug.four"), "plate.taps", "plate.four", 1)
	one := strings.Replace(strings.ReplaceAll(job, "lug.screws", "lug.one"), "plate.taps", "plate.tap", 1)
	for _, c := range []struct{ at, job, want string }{
		{"-20", job, "overlap-turned 180 b"}, {"-20", one, "overlap-by 0 w"}, // of one hole nobody knows the turn
		{"-60", job, "parts-overlap 0 b"}, {"-20", job + held, "overlap-by 0 w"},
		{"0", job + fins("-120, 0", "left"), "overlap-by 0 w"}, // of two holes it is half a turn
		{"0", four + fins("-120, 0", "left"), "overlap-turned 90 b"}, {"0", four + fins("-120, 0", "left") + strings.NewReplacer("w2", "w3", "fin#2", "fin#3").Replace(fins("-60, -50", "up")), "overlap-turned 270 b"},
	} {
		at, want := c.at, c.want
		m, _ := load(t, write(t, map[string]string{"plate.yaml": plate, "lug.yaml": lug, "fin.yaml": fin + "quantity: 3\n", "job.yaml": strings.Replace(fmt.Sprintf(c.job, at), "fin.outline", "fin#1.outline", 1)}))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.OverlapTurned {
				got = fmt.Sprint(p.Kind, " ", p.Args[4].Value, " ", p.Joint)
			} else if p.Kind == plan.PartsOverlap || p.Kind == plan.OverlapBy {
				got = fmt.Sprint(p.Kind, " 0 ", p.Joint)
			}
		}
		if got != want {
			t.Errorf("at %s: %q, want %q", at, got, want)
		}
	}
}

// The frame of the pug mill goes onto its housing the other way round as well, and
// its hopper onto the inlet in seven turns that leave the throat elsewhere.
func TestWholeWays(t *testing.T) {
	t.Parallel()
	m, _ := load(t, "../../testdata/pugmill/job.yaml")
	if w := m.Ways("none"); w != nil {
		t.Errorf("of no joint: %v", w)
	}
	for joint, want := range map[string][2]int{"housing": {0, 5}, "hopper": {7, 0}, "barrel": {}, "lantern": {}} {
		var got [2]int
		for _, w := range m.Ways(joint) {
			if len(w.Out) == 0 {
				t.Errorf("%s: %v does no harm", joint, w)
			}
			if w.OtherWay {
				got[1]++
			} else {
				got[0]++
			}
		}
		if got != want {
			t.Errorf("%s: %v turned and the other way round, want %v", joint, got, want)
		}
	}
}

// A coupling of 60 sits on the end of a spindle under a lid of 200 × 200 on which a motor stands. Over it the coupling comes in halves,
// round the shafts of both; in the lid's bore of 70 only along its axis, before the motor or with it. Else the lid stops it, as far out as its side at 100.
func TestCouplingComesRound(t *testing.T) {
	t.Parallel()
	const motor, coupling = "  - {item: gear motor, how: on its flange, kg: 20, stands: {on: lid.motor, flange: 120, face: front%s}, after: %s}\n", "  - {item: coupling, how: on both shafts, kg: 2, stands: {on: spindle.drive, diameter: 60, length: %s}, after: %s}\n"
	over, in := "100", "30"
	for _, c := range []struct{ gap, shaft, long, motor, coupling, want string }{
		{over, ", shaft: 28, shaft-length: 65", "40", "lid", "tag", ""},
		{in, "", "20", "tag", "tag", ""}, {in, "", "20", "tag, first: yes", "tag, first: yes", ""}, {in, "", "20", "tag", "tag, first: yes", ""}, {in, "", "20", "tag", "lid", ""},
		{in, "", "20", "lid", "tag", "path-blocked Coupling Lid 130 another order of the joints"}, {in, "", "20", "tag, first: yes", "tag", "path-blocked Coupling Lid 130 another order of the joints"}, {in, "", "20", "lid, first: yes", "tag, first: yes", "path-blocked Coupling Lid 130 another order of the joints"},
	} {
		got := found(t, map[string]string{
			"spindle.yaml": "part: spindle\ntitle: Spindle\nkind: turned\nmaterial: C45\nstock: {round: 310, length: 90}\nprofile:\n  outside: [{name: drive, diameter: 38, length: 20}, {name: neck, diameter: 50, length: 40}, {name: flange, diameter: 300, length: 20}]\nholes:\n  - {name: taps, face: front, circle: {pcd: 260, count: 4}, size: M10 tap}\n",
			"adapter.yaml": "part: adapter\ntitle: Adapter\nkind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {square: 300}\nbore: {diameter: 100}\nholes:\n  - {name: screws, circle: {pcd: 260, count: 4}, size: M10 clearance}\n  - {name: tag, at: [[135, 135]], size: M5 tap}\n",
			"lid.yaml":     "part: lid\ntitle: Lid\nkind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {square: 200}\nbore: {diameter: 70}\nholes:\n  - {name: motor, circle: {pcd: 90, count: 4}, size: 9}\n",
			"tag.yaml":     "part: tag\ntitle: Tag\nkind: plate\nmaterial: S235\nstock: {plate: 5}\noutline: {square: 20}\nholes:\n  - {name: h, at: [[0, 0]], size: M5 clearance}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [spindle.yaml, adapter.yaml, lid.yaml, tag.yaml]\njoints:\n  - {name: plate, bolt: {through: adapter.screws, into: spindle.taps, bolt: M10 8.8}, face: back-on-front}\n" +
				"  - {name: lid, weld: {part: lid.outline, to: adapter.outline, type: fillet, size: 4, length: 40}, place: {on: front, with: back, at: [0, 0], top: up, gap: " + c.gap + "}}\n" +
				"  - {name: tag, bolt: {through: tag.h, into: adapter.tag, bolt: M5 8.8}, face: back-on-front, after: plate}\n" +
				"loose:\n" + fmt.Sprintf(motor, c.shaft, c.motor) + fmt.Sprintf(coupling, c.long, c.coupling),
		}, plan.PathBlocked)
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}
