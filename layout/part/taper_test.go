package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
)

const taperShaft = `part: spindle
kind: shaft
material: C45
stock: {round: 70 mm, length: 410 mm, cut: saw}
profile:
  outside:
    - {name: cone, diameter: 40, length: 60, TAPER}
    - {name: grip, diameter: 60, length: 20, GRIP}
    - {name: tail, diameter: 30, length: 250}
CENTRES
`

func shaped(t *testing.T, edits ...string) *Model {
	t.Helper()
	text := strings.NewReplacer(edits...).Replace(taperShaft)
	return work(t, "mm", strings.NewReplacer(", TAPER", "", ", GRIP", "", "CENTRES", "").Replace(text))
}

// A taper 1:10 from 40 over 60 ends at 34; its half angle is atan(1/20) =
// 2.86°, the flank 60.1 long, and 0.1 on the diameter is 1 along. An included
// angle of 8° takes 2 · 60 · tan 4° = 8.391 off.
func TestTaper(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		taper, line string
		front, back float64 // radii
		small       string
	}{
		{"taper: {ratio: 10}", "Taper cone 1:10: top slide set 2.86° from the axis (included 5.72°), Ø40 at the front end, Ø34 at the back end; the slide travels 60.1 mm. Gauge plane is the large end: 0.1 mm on the diameter moves the gauge 1 mm along.", 20, 17, "cone at the back end"},
		{"taper: {to: 34, toward: front}", "Taper cone 1:10: top slide set 2.86° from the axis (included 5.72°), Ø40 at the back end, Ø34 at the front end", 17, 20, "cone at the front end"},
		{"taper: {angle: 8}", "top slide set 4° from the axis (included 8°)", 20, 15.804391283, "cone at the back end"},
	} {
		m := shaped(t, "TAPER", c.taper)
		has(t, m, c.line)
		if o := m.Out.Section.Outer; o[0] != (plan.XY{XMm: 0, YMm: c.front}) || o[1] != (plan.XY{XMm: 60, YMm: c.back}) {
			t.Errorf("%s: contour %v", c.taper, o)
		}
		if w := check(m, c.small); w == nil || w.MinMm >= w.MaxMm {
			t.Errorf("%s: no check %s", c.taper, c.small)
		}
		if w := check(m, "cone taper"); w == nil || !strings.HasPrefix(w.Limits, "±0.33") {
			t.Errorf("%s: angle %v", c.taper, w) // ISO 2768-m: 20 minutes over 50 to 120 mm
		}
	}
	for ratio, gauged := range map[string]bool{"3": true, "2.99": false} {
		text := lines(shaped(t, "TAPER", "taper: {ratio: "+ratio+"}"))
		if strings.Contains(text, "moves the gauge") != gauged || !strings.Contains(text, "top slide set") {
			t.Errorf("1:%s, tried with a gauge %v: %s", ratio, gauged, text)
		}
	}
	m := shaped(t, "TAPER", "taper: {ratio: 10}")
	var texts []string
	for _, d := range m.Out.Dimensions {
		if d.Kind == plan.DiameterDim && d.ToMm <= 60 {
			texts = append(texts, d.Text)
			if d.Text == "Ø34" && (d.FromMm != 40 || d.RadiusMm != 17.5) || d.Text == "Ø40" && (d.ToMm != 20 || d.RadiusMm != 19.5) {
				t.Errorf("dimension %v", d)
			}
		}
	}
	if !slices.Equal(texts, []string{"Ø34", "Ø40"}) {
		t.Errorf("dimensions %v", texts)
	}
	// In inches 0.001 on the diameter of 1:8 is 0.008 along.
	inch := work(t, "in", strings.NewReplacer("TAPER", "taper: {ratio: 8}", ", GRIP", "", "CENTRES", "", "diameter: 40", "diameter: 1.6", "length: 60", "length: 2.4").Replace(taperShaft))
	has(t, inch, "0.001 in on the diameter moves the gauge 0.008 in along.")
	job := load(t, "mm", strings.NewReplacer("TAPER", "taper: {ratio: 1.5}", ", GRIP", "", "CENTRES", "").Replace(taperShaft))
	if m := Work(job, job.Parts[0]); len(m.Errs) != 1 || m.Errs[0].What != "the taper comes to a point within its step" {
		t.Errorf("%v", m.Errs)
	}
}

// A taper with limits of its own seats in its mate, which measures it: 0.02 on the diameter of 1:10 is 0.2 along, ±0.1, and blue
// bears on 45 of 60. Neither its small end by the general tolerance nor a protractor does; a steeper one, or one without limits, has both.
func TestSeatedTaper(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		ratio, fit string
		seats      bool
	}{{"10", ", fit: {plus-minus: 0.01}", true}, {"10", "", false}, {"2", ", fit: {plus-minus: 0.01}", false}} {
		text := strings.NewReplacer("TAPER", "taper: {ratio: "+c.ratio+"}", ", GRIP", "", "CENTRES", "").Replace(taperShaft)
		m := work(t, "mm", strings.Replace(text, "diameter: 40", "diameter: 40"+c.fit, 1))
		mate, small, angle, large := check(m, "cone on its mate"), check(m, "cone at the back end"), check(m, "cone taper"), check(m, "cone at the front end")
		if (mate != nil) != c.seats || (small == nil) != c.seats || (angle == nil) != c.seats || large == nil || strings.HasSuffix(large.Gauge, "its mate") != c.seats {
			t.Errorf("1:%s%s: %+v %+v %+v %+v", c.ratio, c.fit, mate, small, angle, large)
		}
		if mate != nil && (mate.Limits != "within 0.1 mm along of its place" || mate.Wanted != "blue all round, on 45 along or more; no rock") {
			t.Errorf("%+v", mate)
		}
	}
}

// A tapered bore is bored to its small end first.
func TestTaperedBore(t *testing.T) {
	t.Parallel()
	m := shaped(t, "CENTRES", "  inside:\n    - {name: socket, diameter: 20, length: 40, taper: {to: 16}}")
	has(t, m, "Bore socket to Ø16, 40 long, the small end of its taper.", "leaves 1 mm on diameter")
	if in := m.Out.Section.Inner; in[0].YMm != 10 || in[1].YMm != 8 {
		t.Errorf("contour %v", in)
	}
}

// A cone through a hub is bored from its large end, where its gauge goes in, and its keyway is broached with a bush
// turned to it: a straight one does not enter.
func TestTaperedHub(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ toward, first, second, tool string }{
		{", taper: {ratio: 10, toward: front}", "", "Taper bore", "broach 10 with a bush turned to the cone, its slot along the axis, and shims, or slotting machine"},
		{", taper: {ratio: 10}", "Taper bore", "", "broach 10 with a bush turned to the cone, its slot along the axis, and shims, or slotting machine"},
		{"", "Machine bore Ø38", "", "broach 10 with its bush Ø38 and shims, or slotting machine"},
	} {
		job := load(t, "mm", "part: hub\nkind: turned\nmaterial: C45\nstock: {round: 105, length: 54, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 70, length: 30}, {name: flange, diameter: 100, length: 18}]\n  inside: [{name: bore, diameter: 38, length: 48"+c.toward+"}]\nkeyways: [{name: key, in: bore, key: 10x8}]\n")
		m, got := Work(job, job.Parts[0]), map[string]string{}
		tool := ""
		for _, o := range m.Out.Operations {
			got[o.Title] = strings.Join(o.Do, " ")
			if strings.HasPrefix(o.Title, "key") {
				tool = o.Tool
			}
		}
		for title, want := range map[string]string{"Turn from the front face": c.first, "Turn from the back face": c.second} {
			if text := got[title]; want != "" && !strings.Contains(text, want) || want == "" && strings.Contains(text, "bore") {
				t.Errorf("%s, %s: %q, want %q", c.toward, title, text, want)
			}
		}
		if tool != c.tool {
			t.Errorf("%s: %q, want %q", c.toward, tool, c.tool)
		}
	}
}

// A chamfer on a taper starts on the cone: 2 long at 30° on 20 falling 1:10 is
// 20 − 0.2 + 4 tan 30° = 22.109 at the face of the large end; outside 40 − 0.2 −
// 2.309 = 37.491, and 34 + 0.2 − 2.309 = 31.891 at the small one. It is cut after
// the taper, whose end is measured before.
func TestTaperChamfer(t *testing.T) {
	t.Parallel()
	m := shaped(t, "CENTRES", "  inside:\n    - {name: socket, diameter: 20, length: 40, taper: {to: 16}}\nchamfers:\n  - {edge: socket-front, size: 2, angle: 30}")
	in := m.Out.Section.Inner
	if want := (plan.XY{XMm: 2, YMm: 9.9}); in[1] != want || math.Abs(in[0].YMm-22.109401077/2) > 1e-8 {
		t.Errorf("contour %v", in)
	}
	has(t, m, "Chamfer socket front 2 × 30°: to Ø22.11 at the face", "Measure Ø20 and write it down before its chamfer takes it away.")
	if strings.Contains(lines(m), "Measure Ø16") {
		t.Error("an end that no chamfer takes away is measured before one")
	}
	if s := lines(m); strings.Index(s, "Taper socket") > strings.Index(s, "Chamfer socket front") {
		t.Error(s)
	}
	if check(m, "socket at the front end, before its chamfer") == nil {
		t.Error("the end is measured after it is gone")
	}
	m = shaped(t, "TAPER", "taper: {ratio: 10}", "CENTRES", "chamfers:\n  - {edge: cone-front, size: 2, angle: 30}")
	has(t, m, "to Ø37.49 at the face")
	m = shaped(t, "TAPER", "taper: {ratio: 10, toward: front}", "CENTRES", "chamfers:\n  - {edge: cone-front, size: 2, angle: 30}")
	has(t, m, "to Ø31.89 at the face", "Measure Ø34 and write it down") // 34 + 0.2 − 2.309
	if check(m, "cone at the front end, before its chamfer") == nil {
		t.Error("the small end is measured after it is gone")
	}
}

// DIN 82:1973: straight knurling grows by half its pitch, RGE by two thirds.
func TestKnurl(t *testing.T) {
	t.Parallel()
	m := shaped(t, "GRIP", "knurl: RAA 1")
	has(t, m, "Turn grip to Ø59.5, 20 long, for the knurl.", "Knurl DIN 82-RAA 1 (straight) on grip: slow, with oil, until the points are full; it grows from Ø59.5 to about Ø60 (DIN 82:1973, from memory); how far depends on the metal.")
	if w := check(m, "grip"); w == nil || w.Wanted != "Ø60 over the points" || w.MaxMm != 0 {
		t.Errorf("check %v", w)
	}
	if i := slices.IndexFunc(m.Out.Dimensions, func(d plan.Dimension) bool { return d.Text == "Ø60 RAA 1" }); i < 0 {
		t.Errorf("dimensions %v", m.Out.Dimensions)
	}
	// A whole rim with a knurl is turned in two settings and knurled in one go.
	rim := work(t, "mm", "part: p\nkind: turned\nmaterial: C45\nstock: {round: 55 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 50, length: 16, knurl: RAA 1}]\n  inside: [{name: bore, diameter: 25, length: 16}]\n")
	_, back, _ := strings.Cut(lines(rim), "Turn from the back face")
	for _, want := range []string{"Turn the rest of rim to Ø49.5, for the knurl, to meet", "On a mandrel in the bore, over the whole length: knurl DIN 82-RAA 1"} {
		if !strings.Contains(back, want) {
			t.Errorf("no %q in\n%s", want, lines(rim))
		}
	}
	if n := strings.Count(lines(rim), "DIN 82-RAA"); n != 1 || slices.ContainsFunc(rim.Out.Operations, func(o plan.Operation) bool { return strings.Contains(strings.Join(o.Limits, " "), "rim") }) {
		t.Errorf("knurled %d times, or to limits: %v", n, rim.Out.Operations)
	}
	for knurl, want := range map[string]string{"RAX 1": "no knurl is of the type RAX", "RAA 0.9": "no knurl has this pitch on Ø60"} {
		job := load(t, "mm", strings.NewReplacer(", TAPER", "", "GRIP", "knurl: "+knurl, "CENTRES", "").Replace(taperShaft))
		if m := Work(job, job.Parts[0]); len(m.Errs) != 1 || m.Errs[0].What != want {
			t.Errorf("%s: %v", knurl, m.Errs)
		}
	}
}

// ISO 6411: B 3.15 is 10 wide at the face, A 6.7; a pilot of 3.15 is for ends to
// 63 mm, 2 to 25 (trainees' handbook). A long solid bar has centres anyway.
func TestCentres(t *testing.T) {
	t.Parallel()
	for in, want := range map[string][2]string{
		"": {"ISO 6411-A 3.15/6.7", "ISO 6411-A 3.15/6.7"}, "centres: {form: B}": {"ISO 6411-B 3.15/10", "ISO 6411-B 3.15/10"},
		"centres: {form: R, pilot: 4, ends: back}": {"", "ISO 6411-R 4/8.5"}, "centres: {pilot: 2, ends: front}": {"ISO 6411-A 2/4.25", ""},
	} {
		m := shaped(t, "CENTRES", in)
		do := strings.Join(seq.Flat(m.Out.Operations, func(o plan.Operation) []string { return o.Do }), "\n") // one alone, in the setting of its face
		for i, face := range []string{"front", "back"} {
			got := ""
			for _, row := range m.Out.Centres {
				if string(row.Face) == face {
					got = row.Designation
				}
			}
			if got != want[i] {
				t.Errorf("%s: %s is %q, want %q", in, face, got, want[i])
			}
			if want[i] != "" && (!strings.Contains(do, "centre-drill "+want[i]) || check(m, "centre "+face) == nil) {
				t.Errorf("%s: %s not drilled: %s", in, face, do)
			}
		}
	}
	job := load(t, "mm", strings.NewReplacer(", TAPER", "", ", GRIP", "", "CENTRES", "centres: {pilot: 7}").Replace(taperShaft))
	if m := Work(job, job.Parts[0]); len(m.Errs) != 2 || m.Errs[0].What != "no centre hole has a pilot of 7" {
		t.Errorf("%v", m.Errs)
	}
}
