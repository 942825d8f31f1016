package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// found are the problems of some kinds with their arguments.
func found(t *testing.T, files map[string]string, kinds ...plan.ProblemKind) string {
	t.Helper()
	m, _ := load(t, write(t, files))
	var out []string
	for _, p := range m.Problems {
		for _, k := range kinds {
			if p.Kind != k {
				continue
			}
			args := []string{string(k)}
			for _, a := range p.Args {
				if a.Text == "" {
					a.Text = words.Trim(a.Value, 3)
				}
				args = append(args, a.Text)
			}
			out = append(out, strings.Join(args, " "))
		}
	}
	return strings.Join(out, "; ")
}

// The foot of a rib of 100 whose weld has no length said reaches over the edge of its plate by
// 5 or more, with 70 of it on the plate; one by less is a rounded corner's, and of one with
// less on it that is said.
func TestFootBeyond(t *testing.T) {
	t.Parallel()
	for left, want := range map[string]string{
		"0": "", "-4.9": "", "-5": "foot-beyond rib base 5", "-29": "foot-beyond rib base 29", "-31": "overhangs rib base 31", "305.1": "foot-beyond rib base 5.1", "304.9": "", "330.5": "overhangs rib base 30.5",
	} {
		files := map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"job.yaml": ribJob + strings.Replace(ribWeld, ", length: 100", "", 1) + ", place: {on: front, with: bottom, from-left: " + left + ", from-bottom: 20, front: down}}\n"}
		if got := found(t, files, plan.FootBeyond, plan.Overhangs); got != want {
			t.Errorf("%s from the left: %q, want %q", left, got, want)
		}
	}
}

// Holes that a part is to hang in by their name or note lie over its centre of gravity, one of
// a group at the least: of a plate of 400 × 200 that is in its middle, where TOP is up, and 10
// under the holes' mouths where its front is.
func TestLiftsLow(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ hole, up, want string }{
		{"name: lifting, at: [[0, -40]], size: 20", "", "lifts-low lifting base 40"},
		{"name: lifting, at: [[0, 40]], size: 20", "", ""},
		{"name: lifting, at: [[-50, -40], [50, 40]], size: 20", "", ""},
		{"name: lifting, at: [[-50, -40], [50, -30]], size: 20", "", "lifts-low lifting base 30"},
		{"name: eyebolts, at: [[0, -40]], size: 20", "", "lifts-low eyebolts base 40"},
		{"name: for-shackle, at: [[0, -40]], size: 20", "", "lifts-low for shackle base 40"},
		{"name: ears, at: [[0, -40]], size: 20, note: \"Hoist here\"", "", "lifts-low ears base 40"},
		{"name: uplifts, at: [[0, -40]], size: 20", "", ""},
		{"name: lifting, at: [[0, -0.3]], size: 4", "", ""},
		{"name: lifting, at: [[0, -0.7]], size: 4", "", "lifts-low lifting base 1"},
		{"name: lifting, at: [[0, -40]], size: 20", "front", ""},
		{"name: lifting, face: back, at: [[0, -40]], size: 20, depth: 4", "front", "lifts-low lifting base 10"},
	} {
		job := ribJob
		if c.up != "" {
			job = strings.Replace(job, "units: mm\n", "units: mm\nup: "+c.up+"\n", 1)
		}
		files := map[string]string{"base.yaml": basePart + "holes:\n  - {" + c.hole + "}\n", "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
			"job.yaml": job + ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n"}
		if got := found(t, files, plan.LiftsLow); got != c.want {
			t.Errorf("%s up %q: %q, want %q", c.hole, c.up, got, c.want)
		}
	}
}

// A post of 900 × 60, 300 high, hangs under a base of 400 × 200 × 20 that is anchored: the
// centre of both lies 250 · 16.2 / 17.8 = 227.5 under the base's middle, and the base's lower
// edge 127.5 over that. Of 20 high the post weighs 1.08 to 1.6, and the centre, 44.3 under the
// middle, lies over the edge.
func TestAnchoredHigh(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ high, anchored, want string }{{"300", "base", "anchored-high base 128"}, {"300", "post", ""}, {"20", "base", ""}} {
		files := map[string]string{"base.yaml": basePart, "post.yaml": "part: post\nkind: plate\nmaterial: S235\nstock: {plate: 60 mm}\noutline: {rectangle: [900, " + c.high + "]}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, post.yaml]\njoints:\n" + strings.Replace(ribWeld, "rib.outline", "post.outline", 1) + ", place: {on: bottom, with: top, from-left: 0, from-bottom: 0, front: up}, anchored: " + c.anchored + "}\n"}
		if got := found(t, files, plan.AnchoredHigh); got != c.want {
			t.Errorf("%s on a post of %s: %q, want %q", c.anchored, c.high, got, c.want)
		}
	}
}

// A flight of 330 on a step of 400 is welded past its end by what it reaches beyond.
func TestWeldPast(t *testing.T) {
	t.Parallel()
	const (
		shaft  = "part: shaft\ntitle: Shaft\nkind: turned\nmaterial: S235\nstock: {round: 75 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: 400}, {name: drive, diameter: 40, length: 60}]\n"
		flight = "part: flight\ntitle: Flight\nkind: flight\nmaterial: S235\nstock: {sheet: 6 mm, cut: plasma}\nflight: {shaft: 70, outside: 150, pitch: 110, thickness: 6, length: 330}\n"
	)
	for back, want := range map[string]string{"350": "", "330": "", "400": "", "400.4": "", "402.5": "weld-past Flight Shaft 2.5", "329.6": "", "328.4": "weld-past Flight Shaft 1.6"} {
		files := map[string]string{"shaft.yaml": shaft, "flight.yaml": flight, "job.yaml": "job: J\nunits: mm\nparts: [shaft.yaml, flight.yaml]\njoints:\n  - name: w\n    weld: {part: flight.inside, to: shaft.body, type: fillet, size: 4 mm, sides: 2}\n    place: {on: front, with: back, at: [0, 0], top: up, gap: -" + back + " mm}\n"}
		if got := found(t, files, plan.WeldPast); got != want {
			t.Errorf("to %s: %q, want %q", back, got, want)
		}
	}
}

// Two plates of 10 face on face: a has holes of 9 in its front, b of 12 in its back, 20 apart
// along their axes, and 10 from those in the back of a; 3 and 4
// beside one another are 5. What lies before the mouths of b's holes is a, as far off as is
// asked for.
func TestApart(t *testing.T) {
	t.Parallel()
	const plate = "part: %s\ntitle: The %[1]s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [200, 100]}\nholes:\n  - {name: bolts, at: [[-80, 0], [80, 0]], size: %s}\n%s"
	job := "job: J\nunits: mm\nparts: [a.yaml, b.yaml, c.yaml]\njoints:\n  - name: j\n    bolt: {through: a.bolts, into: b.bolts, bolt: M8 8.8}\n    face: back-on-front\n" +
		"  - {name: w, weld: {part: c.outline, to: b.outline, type: fillet, length: 40}, place: {on: back, with: front, at: [0, 0], top: up, gap: 3}}\n"
	m, _ := load(t, write(t, map[string]string{"job.yaml": job,
		"a.yaml": fmt.Sprintf(plate, "a", "M8 clearance", "  - {name: x, face: front, at: [[0, 0], [30, 0]], size: 9, depth: 5}\n  - {name: z, face: back, at: [[0, 0]], size: 9, depth: 5}\n"),
		"b.yaml": fmt.Sprintf(plate, "b", "M8 tap", "  - {name: y, face: back, at: [[3, 4], [-33, 0]], size: 12, depth: 4}\n  - {name: edge, face: back, at: [[34, 0], [0, -16], [0, 26]], size: 12, depth: 4}\n"),
		"c.yaml": "part: c\ntitle: The c\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [60, 40]}\nholes:\n  - {name: own, at: [[0, 0]], size: 6}\n"}))
	for _, c := range []struct {
		part, group, other, to string
		apart, beside          float64
		ok                     bool
	}{
		{"a", "x", "b", "y", 20, 5, true}, // seen from the front, y lies at −3 and at 33
		{"a", "z", "b", "y", 10, 5, true},
		{"b", "y", "a", "z", 10, 33, true},
		{"a", "z", "a", "x", 10, 0, true},
		{"a", "z", "c", "none", 0, 0, false},
		{"a", "z", "none", "x", 0, 0, false},
	} {
		apart, beside, ok := m.Apart(c.part, c.group, c.other, c.to)
		if words.Round(apart, 6) != c.apart || words.Round(beside, 6) != c.beside || ok != c.ok {
			t.Errorf("%s of %s to %s of %s: %g and %g, %v", c.group, c.part, c.to, c.other, apart, beside, ok)
		}
	}
	for _, c := range []struct {
		part, group string
		reach       float64
		want        string
	}{{"b", "y", 3, "The c,"}, {"b", "y", 2.9, ","}, {"b", "edge", 50, ",The c,"}, {"a", "x", 50, ","}, {"a", "z", 0, "The b"}} {
		if got := strings.Join(m.Under(c.part, c.group, c.reach), ","); got != c.want {
			t.Errorf("%s of %s, %g off: %q, want %q", c.group, c.part, c.reach, got, c.want)
		}
	}
	a, b := body(t, m, "a#1"), body(t, m, "b#1")
	if !m.Tied(a, b) {
		t.Error("bolted plates are not tied")
	}
}
