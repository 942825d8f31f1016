package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/machine"
)

// waysIn writes the wrong ways of a joint: turn, r for the other way round, or the edge or the copy; parts elsewhere.
func waysIn(m *machine.Machine, joint string) string {
	var got []string
	for _, w := range m.Ways(joint) {
		round := ""
		if w.OtherWay {
			round = "r"
		}
		way := fmt.Sprintf("%v%s", w.TurnDeg, round)
		if w.Face+w.Instead != "" {
			way = w.Face + w.Instead
		}
		got = append(got, fmt.Sprintf("%s:%d", way, len(w.Out)))
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
		{"a wide bore at the other, against the step: it goes on where it was, and no further in", "", []string{"{name: bore, diameter: 40, length: 30, fit: H7}", "{name: wide, diameter: 50, length: 14}, {name: bore, diameter: 40, length: 30, fit: H7}", "diameter: 120, length: 30", "diameter: 120, length: 44", "length: 40 mm}", "length: 50 mm}"}, "0r:1"},
		{"a wide bore over the step: it goes on further out", "", []string{"diameter: 40, length: 30, fit: H7", "diameter: 40, length: 20, fit: H7}, {name: wide, diameter: 62, length: 20", "diameter: 120, length: 30", "diameter: 120, length: 40"}, "0r:1"},
		{"a wide bore before the nose: it goes on further in, over the step", "", []string{"{name: bore, diameter: 40, length: 30, fit: H7}", "{name: wide, diameter: 62, length: 20}, {name: bore, diameter: 40, length: 24, fit: H7}", "diameter: 120, length: 30", "diameter: 120, length: 44", "front-with-front\n", "front-with-front\n    below: 20 mm\n", "length: 40 mm}", "length: 50 mm}"}, "0r:1"},
		{"the same with the nose at the back", "", []string{"- {name: nose, diameter: 40, length: 30, fit: p6}\n    - {name: body, diameter: 60, length: 70}", "- {name: body, diameter: 60, length: 70}\n    - {name: nose, diameter: 40, length: 30, fit: p6}", "length: 30, fit: H7}", "length: 30, fit: H7}, {name: wide, diameter: 50, length: 14}", "diameter: 120, length: 30", "diameter: 120, length: 44", "length: 40 mm}", "length: 50 mm}", "front-with-front", "back-with-back"}, "0r:1"},
		{"a narrow bore before the nose", "", []string{"{name: bore, diameter: 40, length: 30", "{name: narrow, diameter: 20, length: 10}, {name: bore, diameter: 40, length: 20", "front-with-front\n", "front-with-front\n    below: 10 mm\n"}, ""},
	} {
		edit := strings.NewReplacer(c.changes...)
		m, _ := load(t, write(t, map[string]string{"pin.yaml": edit.Replace(pin), "ring.yaml": edit.Replace(ring) + c.add, "job.yaml": edit.Replace(job)}))
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
		stop  = "  - name: s\n    weld: {part: stop.outline, to: plate.outline, type: fillet, length: 10 mm, sides: 2}\n    place: {on: front, with: bottom, from-left: 20 mm, from-bottom: %d mm, front: left}\n    before: w\n"
		flat  = "job: J\nunits: mm\nparts: [plate.yaml, lug.yaml]\njoints:\n  - name: w\n    weld: {part: lug.outline, to: plate.outline, type: fillet, length: 60 mm, sides: 2}\n    place: {on: front, with: back, from-left: 20 mm, from-bottom: 30 mm, top: up}\n"
	)
	for _, c := range []struct {
		name, job, add string
		changes        []string
		want           string
	}{
		{"a plain lug on edge", edge, "", nil, "180:0 0r:0 180r:0 left:1 right:1"},
		{"an eye over its middle", edge, fmt.Sprintf(hole, "0, 20", "through"), nil, "180:0 0r:1 180r:1 left:1 right:1"},
		{"an eye beside it", edge, fmt.Sprintf(hole, "10, 20", "through"), nil, "180:1 0r:1 180r:1 left:1 right:1"},
		{"a blind hole in the middle", edge, fmt.Sprintf(hole, "0, 0", "5 mm"), nil, "180:1 0r:0 180r:1 left:1 right:1"},
		{"flat, an eye over its middle", flat, fmt.Sprintf(hole, "0, 20", "through"), nil, "180:1 0r:0 180r:1"},
		{"flat and square, an eye over its middle", flat, fmt.Sprintf(hole, "0, 20", "through"), []string{"[60, 80]", "[60, 60]"}, "90:1 180:1 270:1 0r:0 90r:1 180r:1 270r:1"},
		{"flat and as good as square", flat, fmt.Sprintf(hole, "0, 20", "through"), []string{"[60, 80]", "[60, 60.6]"}, "90:1 180:1 270:1 0r:0 90r:1 180r:1 270r:1"},
		{"flat, a millimetre longer than wide", flat, fmt.Sprintf(hole, "0, 20", "through"), []string{"[60, 80]", "[60, 61]"}, "180:1 0r:0 180r:1"},
		{"a stop beside it, over which the longer edge would go", strings.Replace(edge, "[plate.yaml, lug", "[plate.yaml, stop.yaml, lug", 1) + fmt.Sprintf(stop, 95), "", nil, "180:0 0r:0 180r:0 left:1 right:1"},
		{"a stop on the other side", strings.Replace(edge, "[plate.yaml, lug", "[plate.yaml, stop.yaml, lug", 1) + fmt.Sprintf(stop, 15), "", nil, "180:0 0r:0 180r:0 left:1 right:1"},
		{"an upper edge cut off", edge, "", []string{"{rectangle: [60, 80]}", "{polygon: {points: [[-30, -40], [30, -40], [10, 40], [-30, 40]]}}"}, "180:1 left:1"},
	} {
		m, _ := load(t, write(t, map[string]string{"plate.yaml": plate, "lug.yaml": strings.NewReplacer(c.changes...).Replace(lug) + c.add, "stop.yaml": strings.NewReplacer("lug", "stop", "[60, 80]", "[10, 20]").Replace(lug), "job.yaml": c.job}))
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
		"../../testdata/pugmill/job.yaml":  {"front-bearing": "", "front-flange": "0r:1", "auger-flight": "", "gusset-1": "180:1 bottom:1", "stand-foot-1": "180:1 0r:1 180r:0", "inlet-stub": "180:0"},
	} {
		m, _ := load(t, path)
		for joint, want := range want {
			if got := waysIn(m, joint); got != want {
				t.Errorf("%s: %q, want %q", joint, got, want)
			}
		}
	}
}

// What is fixed to a bar, a round or one of several like parts: a mitred bar goes to its
// corner with its other end, a coped one turned half round, a leaning branch leaning the
// other way, an angle on its other leg, a pin in another of the bushes. Worked by hand.
func TestOtherSides(t *testing.T) {
	t.Parallel()
	const (
		head   = "job: J\nunits: mm\n"
		rail   = "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 400, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: %s}}\n%s"
		end    = "part: end\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 600, left: {mitre: 45, long: top}}\n"
		corner = head + "parts: [rail.yaml, end.yaml]\njoints:\n  - name: w\n    weld: {part: rail.left, to: end.left, type: square, process: MAG}\n"
		bolt   = "holes:\n  - {name: eye, face: %s, at: [[%s]], size: 13 mm, depth: 4 mm}\n"
		post   = "part: post\nkind: tube\nmaterial: S235\nstock: {tube: 89 mm, wall: 5 mm, length: 410 mm}\ntube: {outside: 89, wall: 5, length: 400}\nradial:\n  - {name: inlet, clock: 0, axial: 140, from: back, size: 20 mm}\n"
		arm    = "part: arm\nkind: bar\nmaterial: S235\nbar: {rectangle: [60, 40], wall: 3, length: 300, right: {onto: post.outside, place: {clock: 90, axial: 120}}}\n%s"
		onPost = head + "parts: [post.yaml, arm.yaml]\njoints:\n  - name: w\n    weld: {part: arm.right, to: post.outside, type: fillet, length: 100, process: MAG}\n"
		stub   = "part: stub\nkind: tube\nmaterial: S235\nstock: {tube: 48.3 mm, wall: 3 mm, length: 260 mm}\ntube: {outside: 48.3, wall: 3, length: 200}\nends:\n  back: {onto: post.outside, angle: %s, offset: %s, joint: set-on, gap: 1, clock: 0, place: {clock: 0, axial: 140, from: back, leans: front}}\n"
		stubOn = head + "parts: [post.yaml, stub.yaml]\njoints:\n  - name: w\n    weld: {part: stub.outside, to: post.inlet, type: square, process: MAG}\n"
		plate  = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\noutline: {rectangle: [300, 200]}\n"
		angle  = "part: leg\nkind: bar\nmaterial: S235\nbar: {angle: [%s], wall: 5, length: 120}\n"
		flat   = head + "parts: [plate.yaml, leg.yaml]\njoints:\n  - name: w\n    weld: {part: leg.bottom, to: plate.outline, type: fillet, size: 3 mm, length: 100, process: MAG}\n    place: {on: front, with: bottom, from-left: 20 mm, from-bottom: 30 mm, front: up}\n"
		bush   = "part: bush\nkind: turned\nquantity: 2\nmaterial: C45\nstock: {round: 35 mm, length: 40 mm}\nprofile:\n  outside: [{name: rim, diameter: 30, length: 30}]\n  inside: [{name: bore, diameter: 20, length: 30, fit: H7}]\n"
		pin    = "part: pin\nkind: turned\nquantity: %d\nmaterial: C45\nstock: {round: 25 mm, length: 70 mm}\nprofile: {outside: [{name: nose, diameter: 20, length: 25, fit: p6}]}\n"
		bushes = head + "parts: [plate.yaml, bush.yaml, pin.yaml]\njoints:\n"
		onto   = "  - name: b%[1]d\n    weld: {part: bush#%[1]d.rim, to: plate.outline, type: fillet, size: 3 mm, process: MAG}\n    place: {on: front, with: back, at: [%[2]d, 0], top: up}\n"
		into   = "  - name: %s\n    press: {shaft: pin%s.nose, bore: bush#%d.bore}\n    level: front-with-front\n"
	)
	const ring = "part: ring\nkind: turned\nmaterial: S235\nstock: {round: 200 mm, length: 15 mm}\nprofile:\n  outside: [{name: rim, diameter: 190, length: 10}]\n  inside: [{name: bore, diameter: 170, length: 10}]\n"
	ringed := strings.NewReplacer("leg.yaml]\njoints:\n", "leg.yaml, ring.yaml]\njoints:\n  - name: r\n    weld: {part: ring.rim, to: plate.outline, type: fillet, size: 3 mm, length: 100, process: MAG}\n    place: {on: front, with: back, at: [-70, -45], top: up}\n").Replace(flat)
	two := bushes + fmt.Sprintf(onto, 1, -60) + fmt.Sprintf(onto, 2, 60)
	for _, c := range []struct {
		name  string
		files []string
		want  string
	}{
		{"a plain mitred bar", []string{"rail.yaml", fmt.Sprintf(rail, "bottom", ""), "end.yaml", end, "job.yaml", corner}, "0r:0"},
		{"a hole nearer one of its ends", []string{"rail.yaml", fmt.Sprintf(rail, "bottom", fmt.Sprintf(bolt, "front", "50, 0")), "end.yaml", end, "job.yaml", corner}, "0r:1"},
		{"a hole nearer one end of the other bar", []string{"rail.yaml", fmt.Sprintf(rail, "bottom", ""), "end.yaml", strings.Replace(end, "long: top}}", "long: top}, right: {mitre: 45, long: top}}", 1) + fmt.Sprintf(bolt, "front", "50, 0"), "job.yaml", corner}, "0r:0 0r:1"},
		{"its long sides unlike", []string{"rail.yaml", fmt.Sprintf(rail, "top", ""), "end.yaml", end, "job.yaml", corner}, "180r:0"},
		{"a plain coped bar", []string{"post.yaml", post, "arm.yaml", fmt.Sprintf(arm, ""), "job.yaml", onPost}, "180:0"},
		{"a hole in its front", []string{"post.yaml", post, "arm.yaml", fmt.Sprintf(arm, fmt.Sprintf(bolt, "front", "0, 0")), "job.yaml", onPost}, "180:1"},
		{"a square branch", []string{"post.yaml", post, "stub.yaml", fmt.Sprintf(stub, "90", "0"), "job.yaml", stubOn}, "180:0"},
		{"a leaning branch", []string{"post.yaml", post, "stub.yaml", fmt.Sprintf(stub, "60", "0"), "job.yaml", stubOn}, "180:1"},
		{"a branch beside the middle", []string{"post.yaml", post, "stub.yaml", fmt.Sprintf(stub, "90", "12"), "job.yaml", stubOn}, "180:1"},
		{"an angle of unlike legs", []string{"plate.yaml", plate, "leg.yaml", fmt.Sprintf(angle, "50, 30"), "job.yaml", flat}, "180:1 front:1"},
		{"an angle of unlike legs in a ring that it does not touch", []string{"plate.yaml", plate, "leg.yaml", fmt.Sprintf(angle, "50, 30"), "ring.yaml", ring, "job.yaml", ringed}, "180:1 front:1"},
		{"an angle of like legs", []string{"plate.yaml", plate, "leg.yaml", fmt.Sprintf(angle, "50, 50"), "job.yaml", flat}, "180:1 front:0"},
		{"one pin for two bushes", []string{"plate.yaml", plate, "bush.yaml", bush, "pin.yaml", fmt.Sprintf(pin, 1), "job.yaml", two + fmt.Sprintf(into, "w", "", 1)}, "0r:0 bush 2:1"},
		{"a pin for each", []string{"plate.yaml", plate, "bush.yaml", bush, "pin.yaml", fmt.Sprintf(pin, 2), "job.yaml", two + fmt.Sprintf(into, "w", "#1", 1) + fmt.Sprintf(into, "p2", "#2", 2)}, "0r:0"},
	} {
		files := map[string]string{}
		for i := 0; i < len(c.files); i += 2 {
			files[c.files[i]] = c.files[i+1]
		}
		m, _ := load(t, write(t, files))
		if got := waysIn(m, "w"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
