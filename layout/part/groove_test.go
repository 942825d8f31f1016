package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

const grooveShaft = `part: spindle
kind: shaft
material: C45
stock: {round: 70 mm, length: 210 mm, cut: saw}
profile:
  outside:
    - {name: seat, diameter: 38, fit: k6, length: 80}
    - {name: collar, diameter: 60, length: 20}
    - {name: tail, diameter: 30, length: 50}
  inside:
    - {name: pocket, diameter: 20, length: 30}
chamfers:
  - {edge: seat-front, size: 1 mm, angle: 45, for: lead-in}
grooves:
  - {name: groove, KEY}
`

const groovePlate = `part: lid
kind: flange
material: S235
stock: {plate: 25 mm, cut: laser}
outline: {circle: 120}
bore: {diameter: 40, fit: H7, leave: 2}
grooves:
  - {name: groove, KEY}
`

func grooved(t *testing.T, text, key string) *Model {
	t.Helper()
	return work(t, "mm", strings.Replace(text, "KEY", key, 1))
}

// DIN 471: 38 × 1.75, groove 36 h12 (35.750 to 36.000, ISO 286-2), width 1.85
// H13 (1.850 to 1.990). DIN 472: 20 × 1, groove 21 H11 (21.000 to 21.130), 1.1
// H13 (1.100 to 1.240). O-ring grooves by the trade tables of layout/grooves:
// section 3 at rest is 2.3 deep and 4 wide, 2 is 1.5 deep and 2.7 wide on a
// round, 1.5 and 2.8 in a face.
func TestGrooves(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text, key     string
		from, to      float64
		floor, width  string // limits on the record
		item, setting string
		operates      string
	}{
		{grooveShaft, "in: seat, axial: 5, for: retaining-ring", 5, 6.85, "35.75 – 36.00", "1.85 – 1.99", "Retaining ring DIN 471 38 × 1.75", "Turn from the front face", "a grooving tool narrower than 1.85, feed in 1 from the outside"},
		{grooveShaft, "in: tail, axial: 5, from: back, for: retaining-ring", 143.4, 145, "28.4 – 28.6", "1.60 – 1.74", "Retaining ring DIN 471 30 × 1.5", "Turn from the back face", "5 from the back face to its nearer side"},
		{grooveShaft, "in: pocket, axial: 4, for: retaining-ring", 4, 5.1, "21.00 – 21.13", "1.10 – 1.24", "Retaining ring DIN 472 20 × 1", "Turn from the front face", "feed out 0.5 from the bore"},
		{grooveShaft, "in: seat, axial: 10, for: o-ring, o-ring: 32x3", 10, 14, "33.3 – 33.4", "4.00 – 4.25", "O-ring 32 × 3", "Turn from the front face", "squeezed 17 % to 24 % and fills 74 % of the groove, stretched 4.4 %; what it is pushed over needs a lead-in 4 long at 15°"},
		{grooveShaft, "in: seat, axial: 10, for: o-ring, o-ring: 32x3, against: 38.2", 10, 14, "33.5 – 33.6", "4.00 – 4.25", "O-ring 32 × 3", "Turn from the front face", "stretched 5 %"},
		{grooveShaft, "in: seat, axial: 20, for: grease, width: 5, depth: 1.5", 20, 25, "", "", "", "Turn from the front face", "a sharp edge wipes the grease off"},
		{groovePlate, "in: bore, axial: 5, from: back, for: o-ring, o-ring: 39x2", 17.3, 20, "43.0 – 43.1", "2.70 – 2.95", "O-ring 39 × 2", "Grooves", "feed out 1.5 from the bore"},
		{groovePlate, "in: front, for: o-ring, o-ring: 60x2", 0, 1.5, "1.5 – 1.6", "2.8 – 3.0", "O-ring 60 × 2", "Grooves", "groove Ø58.4 to Ø64 × 1.5 deep, in the front face"},
		{groovePlate, "in: back, for: o-ring, o-ring: 60x2, pressure: outside", 23.5, 25, "1.5 – 1.6", "2.8 – 3.0", "O-ring 60 × 2", "Grooves", "groove Ø60 to Ø65.6 × 1.5 deep, in the back face"},
	} {
		m := grooved(t, c.text, c.key)
		g := &m.Grooves[0]
		if g.Row.FromMm != c.from || g.Row.ToMm != c.to {
			t.Errorf("%s: %v to %v, want %v to %v", c.key, g.Row.FromMm, g.Row.ToMm, c.from, c.to)
		}
		if item := g.Bought(m.W); item != c.item {
			t.Errorf("%s: buys %q, want %q", c.key, item, c.item)
		}
		for what, want := range map[string]string{"floor": c.floor, "depth": c.floor, "width": c.width} {
			if w := check(m, "groove "+what); w != nil && !strings.Contains(w.Limits, want) || w == nil && what == "width" {
				t.Errorf("%s: %s %v, want %s", c.key, what, w, want)
			}
		}
		at := slices.IndexFunc(m.Out.Operations, func(o plan.Operation) bool { return o.Title == c.setting })
		if at < 0 || !strings.Contains(strings.Join(m.Out.Operations[at].Do, "\n"), c.operates) {
			t.Errorf("%s: not in %s: %v", c.key, c.setting, m.Out.Operations)
		}
		if f := feature(m, "groove"); f.Kind != plan.GrooveFeature || !slices.Contains(m.Out.Operations[at].Refs, f.N) {
			t.Errorf("%s: feature %v is not named by its operation", c.key, f)
		}
	}
}

// The wall that holds a ring in a face has limits, H11 outside and h11 inside (ISO 286-1: 190
// for over 50 to 80), where it is cut and in the record; the other follows from the width.
func TestFaceGrooveWalls(t *testing.T) {
	t.Parallel()
	for key, want := range map[string][2]string{
		"in: front, for: o-ring, o-ring: 60x2":                   {"outer wall", "64.00 – 64.19"},
		"in: back, for: o-ring, o-ring: 60x2, pressure: outside": {"inner wall", "59.81 – 60.00"},
	} {
		m := grooved(t, groovePlate, key)
		if c := check(m, "groove "+want[0]); c == nil || c.Limits != want[1] {
			t.Errorf("%s: %+v", key, c)
		}
		if at := slices.IndexFunc(m.Out.Operations, func(o plan.Operation) bool { return o.Title == "Grooves" }); !slices.Contains(m.Out.Operations[at].Limits, "groove "+want[0]+" "+want[1]) {
			t.Errorf("%s: %v", key, m.Out.Operations[at].Limits)
		}
	}
}

// Limits of a length stand where it is cut, those of the general tolerance in the record alone.
func TestLengthLimitsWhereCut(t *testing.T) {
	t.Parallel()
	m := grooved(t, strings.Replace(grooveShaft, "fit: k6, length: 80", "fit: k6, length: 80, length-limits: [79.8, 80]", 1), "in: tail, axial: 110, for: grease, width: 3, depth: 1")
	var limits []string
	for _, o := range m.Out.Operations {
		limits = append(limits, o.Limits...)
	}
	if got := strings.Join(limits, "; "); !strings.Contains(got, "seat 79.8 – 80.0 long") || strings.Count(got, " long") != 1 {
		t.Error(got)
	}
}

// A groove in a face has its label on the section, at the wall nearer to the edge of
// the metal: of a lid Ø120 with a bore of 40, a ring of 60 lies nearer to the bore, one
// of 100 to the edge.
func TestFaceGrooveLabel(t *testing.T) {
	t.Parallel()
	for key, want := range map[string]plan.Dimension{
		"in: front, for: o-ring, o-ring: 60x2":                      {Kind: plan.DiameterDim, FromMm: 0, ToMm: 1.5, RadiusMm: 29.2, Inside: true, Text: "groove"},
		"in: back, for: o-ring, o-ring: 100x2, pressure: outside":   {Kind: plan.DiameterDim, FromMm: 23.5, ToMm: 25, RadiusMm: 52.8, Text: "groove"},
		"in: bore, axial: 5, from: back, for: o-ring, o-ring: 39x2": {Kind: plan.DiameterDim, FromMm: 17.3, ToMm: 20, RadiusMm: 21.5, Inside: true, Text: "Ø43 × 2.7"},
	} {
		if m := grooved(t, groovePlate, key); !slices.Contains(m.Out.Dimensions, want) {
			t.Errorf("%s: %+v, want %+v", key, m.Out.Dimensions, want)
		}
	}
}

// A groove is cut after its step is turned and chamfered, and stands in the
// section: 36 deep in 38 from 5 to 6.85.
func TestGrooveOrder(t *testing.T) {
	t.Parallel()
	m := grooved(t, grooveShaft, "in: seat, axial: 5, for: retaining-ring")
	var order []string
	for _, o := range m.Out.Operations {
		for _, line := range o.Do {
			for _, word := range []string{"Turn seat", "Chamfer seat front", "Groove for retaining"} {
				if strings.HasPrefix(line, word) {
					order = append(order, word)
				}
			}
		}
	}
	if want := []string{"Turn seat", "Chamfer seat front", "Groove for retaining"}; !slices.Equal(order, want) {
		t.Errorf("order %v", order)
	}
	want := []plan.XY{{XMm: 0, YMm: 18}, {XMm: 1, YMm: 19}, {XMm: 5, YMm: 19}, {XMm: 5, YMm: 18}, {XMm: 6.85, YMm: 18}, {XMm: 6.85, YMm: 19}, {XMm: 80, YMm: 19}}
	if got := m.Out.Section.Outer[:7]; !slices.Equal(got, want) {
		t.Errorf("contour %v", got)
	}
	if d := m.Out.Dimensions[len(m.Out.Dimensions)-2]; d.Text != "Ø36 h12 × 1.85 H13" || d.RadiusMm != 18 || d.FromMm != 5 {
		t.Errorf("dimension %v", d)
	}
}

// What no table has is refused with what would do.
// A metric ring is ordered by its millimetres in inches too: a shaft of 38, 1.4961 in, has DIN 471 38 × 1.75; one of
// 1-1/2 in has none.
func TestMetricRingInInches(t *testing.T) {
	t.Parallel()
	for size, want := range map[string]string{"38 mm": "Retaining ring DIN 471 38 × 1.75 mm", "1-1/2 in": "Ø1.4961 in or Ø1.5354 in, for rings of 38 or 39 mm"} {
		job := load(t, "in", "part: shaft\nkind: turned\nmaterial: 1018\nstock: {round: 2, length: 4}\nprofile:\n  outside: [{name: seat, diameter: "+size+", length: 3}]\ngrooves: [{name: groove, in: seat, axial: 1, for: retaining-ring}]\n")
		m := Work(job, job.Parts[0])
		got := ""
		if len(m.Errs) > 0 {
			got = m.Errs[0].Right
		} else {
			got = m.Grooves[0].Bought(m.W)
		}
		if got != want {
			t.Errorf("%s: %q, want %q", size, got, want)
		}
	}
}

func TestGrooveRefused(t *testing.T) {
	t.Parallel()
	for key, want := range map[string]string{
		"in: seat, axial: 79, for: retaining-ring":                     "groove is 1.85 wide and does not lie in seat",
		"in: seat, axial: 10, for: o-ring, o-ring: 32x3.2":             "no groove is known for a section of 3.2",
		"in: seat, axial: 10, for: o-ring, o-ring: 32x9":               "no groove is known for this O-ring on Ø38",
		"in: seat, axial: 10, for: o-ring, o-ring: 32x3, against: 43":  "the floor of groove would lie outside its step: no groove is left",
		"in: pocket, axial: 10, for: o-ring, o-ring: 12x2, against: 6": "the floor of groove would lie outside its step: no groove is left",
		"in: front, for: o-ring, o-ring: 36x3":                         "the groove, from Ø33.6 to Ø42.16 at its limits, does not lie on one level of the front face: seat ends in it at Ø38",
	} {
		job := load(t, "mm", strings.Replace(grooveShaft, "KEY", key, 1))
		m := Work(job, job.Parts[0])
		got := ""
		if len(m.Errs) > 0 {
			got = m.Errs[0].What
		}
		if got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
	// A face as large as the largest groove, 42.16, holds it; one of 42.14 does not.
	for dia, faults := range map[string]int{"42.16": 0, "42.14": 1} {
		text := strings.NewReplacer("diameter: 38, fit: k6", "diameter: "+dia, "KEY", "in: front, for: o-ring, o-ring: 36x3", "size: 1 mm, angle: 45, for: lead-in", "size: 1 mm").Replace(grooveShaft)
		if job := load(t, "mm", text); len(Work(job, job.Parts[0]).Errs) != faults {
			t.Errorf("Ø%s: %v", dia, Work(job, job.Parts[0]).Errs)
		}
	}
	job := load(t, "mm", strings.Replace(strings.Replace(grooveShaft, "diameter: 38", "diameter: 49", 1), "KEY", "in: seat, axial: 5, for: retaining-ring", 1))
	if m := Work(job, job.Parts[0]); len(m.Errs) != 1 || m.Errs[0].What != "no standard retaining ring is for Ø49" || m.Errs[0].Right != "Ø48 or Ø50" {
		t.Errorf("%v", m.Errs)
	}
}

// A step that is hardened says so where it is turned, and how it is proved.
func TestHardened(t *testing.T) {
	t.Parallel()
	m := grooved(t, strings.Replace(grooveShaft, "fit: k6,", "fit: k6, hardness: 55,", 1), "in: tail, axial: 120, for: grease, width: 3, depth: 1")
	has(t, m, "Turn seat Ø38 k6 (38.002 – 38.018), 80 long; leave 0.3 mm on the diameter for grinding", "Have seat hardened to 55 HRC at least, then grind it to size.")
	// Ground last: what is milled or drilled in it is there by then, and nothing is punched on what is polished.
	last := work(t, "mm", "part: pol\nkind: shaft\nmaterial: C45\nstock: {round: 65 mm}\nprofile:\n  outside:\n    - {name: a, diameter: 60, length: 60, finish: Ra 0.4}\n    - {name: b, diameter: 50, length: 60, hardness: 58}\nradial:\n  - {name: s1, clock: [90, 200], axial: 30, slot: {around: 10, along: 30}, depth: 4}\n  - {name: s2, clock: [90, 200], axial: 90, slot: {around: 10, along: 30}, depth: 4}\n")
	if text := lines(last); strings.Contains(text, "along the outlines") || strings.Index(text, "Have b hardened") < strings.LastIndex(text, "s2") {
		t.Error(text)
	}
	if c := check(m, "seat"); c == nil || c.Gauge != "micrometer, hardness tester or file" {
		t.Errorf("check %v", c)
	}
}

// A land of less than two broken edges, 1 mm, keeps its edges: in a round to the end of the
// step, in a face to the bore: Ø40.025 (H7) at the most beside the wall of a groove for 43 × 2,
// Ø41 less twice what its width may be over, 0.2. What holds a retaining ring loses nothing of its depth.
func TestNarrowLands(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ text, key, want string }{
		{grooveShaft, "in: pocket, axial: 0.9, for: retaining-ring", "Those of groove the burr alone: the ring bears on them, and the land beside it is 0.9 wide."},
		{grooveShaft, "in: pocket, axial: 1, for: retaining-ring", "Those of groove the burr alone: the ring bears on them."},
		{grooveShaft, "in: tail, axial: 0.7, from: back, for: retaining-ring", "Those of groove the burr alone: the ring bears on them, and the land beside it is 0.7 wide."},
		{groovePlate, "in: front, for: o-ring, o-ring: 43x2", "Those of groove only 0.1 mm: the land beside it is 0.48 wide at the limits."},
		{groovePlate, "in: back, for: o-ring, o-ring: 43x2", "Those of groove only 0.1 mm: the land beside it is 0.48 wide at the limits."},
		{groovePlate, "in: front, for: o-ring, o-ring: 45x2", ""},
	} {
		m := grooved(t, c.text, c.key)
		if has(t, m, "Deburr and inspect", c.want); c.want == "" && strings.Contains(lines(m), "Those of groove") {
			t.Errorf("%s: %s", c.key, lines(m))
		}
	}
}

// A plain groove says what it is for, or nothing where its name says it; the operation cuts it to its size all the same.
func TestPlainGrooves(t *testing.T) {
	for kind, want := range map[string][2]string{
		"grease": {"Wire for grease: groove Ø52 × 6, 20 from the front face", "for grease; "},
		"relief": {"Wire for the tool to run out: groove Ø52 × 6, 20 from the front face", "for the tool to run out; "},
		"other":  {"Wire: groove Ø52 × 6, 20 from the front face", "20 from"},
	} {
		m := work(t, "mm", "part: roll\nkind: shaft\nmaterial: C45\nstock: {round: 65 mm}\nprofile:\n  outside: [{name: body, diameter: 60, length: 200}]\ngrooves: [{name: wire, in: body, axial: 20, for: "+kind+", width: 6, depth: 4}]\n")
		text := ""
		for _, o := range m.Out.Operations {
			text += strings.Join(o.Do, " ")
		}
		note := ""
		for _, f := range m.Out.Features {
			if f.Name == "wire" {
				note = f.Note
			}
		}
		if !strings.Contains(text, want[0]) || !strings.HasPrefix(note, want[1]) {
			t.Errorf("%s: %q, %q", kind, text, note)
		}
	}
}
