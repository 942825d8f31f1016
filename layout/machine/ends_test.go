package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/machine"
)

// waysIn writes the wrong ways of a joint: turn, r for the other way round, parts elsewhere.
func waysIn(m *machine.Machine, joint string) string {
	var got []string
	for _, w := range m.Ways(joint) {
		round := ""
		if w.OtherWay {
			round = "r"
		}
		got = append(got, fmt.Sprintf("%v%s:%d", w.TurnDeg, round, len(w.Out)))
	}
	return strings.Join(got, " ")
}

// A ring of 30 mm pressed on a pin of 40 goes on from its other end as well: the same
// where nothing tells its ends apart, wrong where a hole or a wider bore does, and not at
// all where a step of the pin or of the bore is in the way.
func TestPressedEnds(t *testing.T) {
	t.Parallel()
	const (
		pin  = "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 80 mm, length: 150 mm}\nprofile:\n  outside:\n    - {name: nose, diameter: 40, length: 30, fit: p6}\n    - {name: body, diameter: 60, length: 70}\n"
		ring = "part: ring\ntitle: Ring\nkind: turned\nmaterial: S235\nstock: {round: 125 mm, length: 40 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 30}]\n  inside: [{name: bore, diameter: 40, length: 30, fit: H7}]\n"
		job  = "job: J\nunits: mm\nparts: [pin.yaml, ring.yaml]\njoints:\n  - name: p\n    press: {shaft: pin.nose, bore: ring.bore}\n    level: front-with-front\n"
		hole = "holes:\n  - {name: mark, face: front, at: [[%s]], size: 5 mm, depth: %s}\n"
	)
	for _, c := range []struct {
		name, add string
		changes   []string
		want      string
	}{
		{"a plain ring", "", nil, "0r:0"},
		{"a hole on the line through TOP", fmt.Sprintf(hole, "0, 40", "through"), nil, "0r:0"},
		{"a hole beside it, which a turn brings back", fmt.Sprintf(hole, "30, 20", "through"), nil, "0r:0"},
		{"a blind hole", fmt.Sprintf(hole, "30, 20", "10 mm"), nil, "0r:1"},
		{"three holes that no turn brings back", fmt.Sprintf(hole, "0, 40], [40, 0], [28.284, -28.284", "through"), nil, "0r:1"},
		{"a wide bore at one end", "", []string{"diameter: 40, length: 30, fit: H7", "diameter: 40, length: 20, fit: H7}, {name: wide, diameter: 50, length: 10"}, "0r:1"},
		{"a wide bore over the step: it goes on further out", "", []string{"diameter: 40, length: 30, fit: H7", "diameter: 40, length: 20, fit: H7}, {name: wide, diameter: 62, length: 20", "diameter: 120, length: 30", "diameter: 120, length: 40"}, "0r:1"},
		{"a narrow bore before the nose", "", []string{"{name: bore, diameter: 40, length: 30", "{name: narrow, diameter: 20, length: 10}, {name: bore, diameter: 40, length: 20", "front-with-front\n", "front-with-front\n    below: 10 mm\n"}, ""},
	} {
		edit := strings.NewReplacer(c.changes...)
		m, _ := load(t, write(t, map[string]string{"pin.yaml": pin, "ring.yaml": edit.Replace(ring) + c.add, "job.yaml": edit.Replace(job)}))
		if got := waysIn(m, "p"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A lug stands with its lower edge on a plate: turned by 180° and on its upper edge it is
// the same while it is a plain rectangle; a hole beside its middle tells the ways apart,
// and what stands beside it leaves fewer. Worked by hand.
func TestWeldedWays(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\noutline: {rectangle: [300, 200]}\n"
		lug   = "part: lug\ntitle: Lug\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 80]}\n"
		hole  = "holes:\n  - {name: eye, face: front, at: [[%s]], size: 20 mm, depth: %s}\n"
		edge  = "job: J\nunits: mm\nparts: [plate.yaml, lug.yaml]\njoints:\n  - name: w\n    weld: {part: lug.outline, to: plate.outline, type: fillet, length: 60 mm, sides: 2}\n    place: {on: front, with: bottom, from-left: 20 mm, from-bottom: 30 mm, front: left}\n"
		flat  = "job: J\nunits: mm\nparts: [plate.yaml, lug.yaml]\njoints:\n  - name: w\n    weld: {part: lug.outline, to: plate.outline, type: fillet, length: 60 mm, sides: 2}\n    place: {on: front, with: back, from-left: 20 mm, from-bottom: 30 mm, top: up}\n"
	)
	for _, c := range []struct {
		name, job, add string
		changes        []string
		want           string
	}{
		{"a plain lug on edge", edge, "", nil, "180:0 0r:0 180r:0"},
		{"an eye over its middle", edge, fmt.Sprintf(hole, "0, 20", "through"), nil, "180:0 0r:1 180r:1"},
		{"an eye beside it", edge, fmt.Sprintf(hole, "10, 20", "through"), nil, "180:1 0r:1 180r:1"},
		{"a blind hole in the middle", edge, fmt.Sprintf(hole, "0, 0", "5 mm"), nil, "180:1 0r:0 180r:1"},
		{"flat, an eye over its middle", flat, fmt.Sprintf(hole, "0, 20", "through"), nil, "180:1 0r:0 180r:1"},
		{"flat and square, an eye over its middle", flat, fmt.Sprintf(hole, "0, 20", "through"), []string{"[60, 80]", "[60, 60]"}, "90:1 180:1 270:1 0r:0 90r:1 180r:1 270r:1"},
		{"an upper edge cut off", edge, "", []string{"{rectangle: [60, 80]}", "{polygon: {points: [[-30, -40], [30, -40], [10, 40], [-30, 40]]}}"}, "180:1"},
	} {
		m, _ := load(t, write(t, map[string]string{"plate.yaml": plate, "lug.yaml": strings.NewReplacer(c.changes...).Replace(lug) + c.add, "job.yaml": c.job}))
		if got := waysIn(m, "w"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// In the demos: a housing on two equal bearings goes on from its other end too, one on two
// unlike ones does not; flanges bevelled on one side are pressed on backwards; a gusset
// stands on its head, a foot with its anchor at the other end, and a stub that is alike all
// round turned by half.
func TestOtherEnds(t *testing.T) {
	t.Parallel()
	for path, want := range map[string]map[string]string{
		"../../testdata/gatejack/job.yaml": {"lower-bearing": "0r:1", "top-flange": "0r:1", "frame-corner-1": ""},
		"../../testdata/pugmill/job.yaml":  {"front-bearing": "", "front-flange": "0r:1", "auger-flight": "", "gusset-1": "180:1", "stand-foot-1": "180:1 0r:1 180r:0", "inlet-stub": "180:0"},
	} {
		m, _ := load(t, path)
		for joint, want := range want {
			if got := waysIn(m, joint); got != want {
				t.Errorf("%s: %q, want %q", joint, got, want)
			}
		}
	}
}
