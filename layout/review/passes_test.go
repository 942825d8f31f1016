package review

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// A screw reaches out of its nut with its thread and with what is beyond that.
func TestScrewReach(t *testing.T) {
	t.Parallel()
	step := func(from, to, d float64) *cylinder { return cyl("", from, to, d, parts.Step{}) }
	front, back := sideBy(false, step(0, 5, 6), step(5, 105, 20), step(105, 115, 12), step(115, 155, 25))[1].reaches()
	if want := (reach{10, 105}); front != want {
		t.Errorf("in front %v, want %v", front, want)
	}
	if want := (reach{12.5, 150}); back != want {
		t.Errorf("behind %v, want %v", back, want)
	}
}

// The narrowest place of a bore counts, and a closed end has none.
func TestNarrowest(t *testing.T) {
	t.Parallel()
	outer := []plan.XY{{YMm: 20}, {XMm: 10, YMm: 20}}
	for _, c := range []struct {
		inner []plan.XY
		want  float64
	}{
		{[]plan.XY{{YMm: 8}, {XMm: 4, YMm: 8}, {XMm: 4, YMm: 6}, {XMm: 10, YMm: 6}}, 6},
		{[]plan.XY{{YMm: 8}, {XMm: 4, YMm: 8}, {XMm: 4}}, 0},
	} {
		if got := narrowest(&plan.Section{LengthMm: 10, Outer: outer, Inner: c.inner}); got != c.want {
			t.Errorf("%v: narrowest %v, want %v", c.inner, got, c.want)
		}
	}
}

// A screw of Tr30 x 20 with a tail of 20 x 50 before its thread and a collar of 44 x 30 behind it sticks out of its nut by 70 to the
// front and by 50 to the back: the bore of a cover so near before the nut lets 30 pass, of one behind it 44.
func TestScrewPasses(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		behind bool
		gap    float64
		bore   string
		want   string
	}{
		{true, 5, "44", ""}, {true, 5, "43.9", "Screw does not pass Cover: 44 mm through 43.9 mm"}, {true, 49.9, "43.9", "Screw does not pass Cover: 44 mm through 43.9 mm"}, {true, 50.1, "43.9", ""},
		{false, 5, "30", ""}, {false, 5, "29.9", "Screw does not pass Cover: 30 mm through 29.9 mm"}, {false, 69.9, "29.9", "Screw does not pass Cover: 30 mm through 29.9 mm"}, {false, 70.1, "29.9", ""},
	} {
		rooms := []string{"{name: seat, diameter: 60, fit: H7, length: 60}", fmt.Sprintf("{name: room, diameter: 65, length: %g}", c.gap), "{name: end, diameter: 70, fit: H7, length: 20}"}
		level := "back-with-back"
		if !c.behind {
			rooms[0], rooms[2], level = rooms[2], rooms[0], "front-with-front"
		}
		turned := func(name, outside, inside string) string {
			return "part: " + name + "\ntitle: " + strings.ToUpper(name[:1]) + name[1:] + "\nkind: turned\nmaterial: C45\nstock: {round: 130}\nprofile:\n  outside: [" + outside + "]\n" + inside
		}
		all := reviewOf(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [housing.yaml, nut.yaml, cover.yaml, screw.yaml]\njoints:\n  - {name: nut, press: {shaft: nut.outside, bore: housing.seat}, level: " + map[bool]string{true: "front-with-front", false: "back-with-back"}[c.behind] + "}\n" +
				"  - {name: cover, press: {shaft: cover.outside, bore: housing.end}, level: " + level + ", after: nut}\n",
			"housing.yaml": turned("housing", fmt.Sprintf("{name: outside, diameter: 120, length: %g}", 80+c.gap), "  inside: ["+strings.Join(rooms, ", ")+"]\n"),
			"nut.yaml":     turned("nut", "{name: outside, diameter: 60, fit: s6, length: 60}", "  inside: [{name: screw, thread: Tr30x6, length: 60}]\n"),
			"cover.yaml":   turned("cover", "{name: outside, diameter: 70, fit: s6, length: 20}", "  inside: [{name: bore, diameter: "+c.bore+", length: 20}]\n"),
			"screw.yaml":   turned("screw", "{name: tail, diameter: 20, length: 50}, {name: screw, thread: Tr30x6, length: 20}, {name: collar, diameter: 44, length: 30}", ""),
		})
		got := ""
		for _, f := range all {
			if strings.Contains(f.What, "does not pass Cover") {
				got += f.What + ": " + f.Numbers
			}
		}
		if got != c.want {
			t.Errorf("%+v: %q: %q", c, got, told(all))
		}
	}
}

// A hub that a joint puts on the screw travels with it; the cover that another joint holds does not.
func TestRidesOnAScrew(t *testing.T) {
	t.Parallel()
	part := func(name string) *parts.Part { return &parts.Part{Name: parts.Text{Value: name}} }
	slide := &parts.Joint{Kind: parts.SlideKind, Slide: &parts.SlideJoint{Hub: parts.JointRef{Part: "hub", Feature: "bore"}, On: parts.JointRef{Part: "screw", Feature: "pin"}}}
	r := &reviewer{job: &parts.Job{Joints: []*parts.Joint{slide}}}
	if screw := part("screw"); !r.ridesOn(part("hub"), screw) || r.ridesOn(part("cover"), screw) {
		t.Error("what rides on a screw")
	}
}

// Holes of 5 in rows staggered at 4 run into one another by 1, at 5 they touch, and at 5.1 there is metal between them.
func TestSheetHolesMeet(t *testing.T) {
	t.Parallel()
	for at, want := range map[string]string{"4": "the holes of Perforated sheet run into one another: 5 mm at 4 mm, over 1", "5": "the holes of Perforated sheet run into one another: 5 mm at 5 mm, over 0", "5.1": ""} {
		e := parts.Loose{Item: parts.Text{Value: "perforated sheet, holes 5"}, How: parts.Text{Value: "staggered at " + at}}
		r := &reviewer{job: &parts.Job{}}
		r.holesMeet(&e)
		got := ""
		for _, f := range r.found {
			got += fmt.Sprintf("%s: %s, over %g", f.What, f.Numbers, *f.OverMm)
		}
		if got != want {
			t.Errorf("at %s: %q, want %q", at, got, want)
		}
	}
}
