package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

const keyShaft = `part: spindle
kind: shaft
material: C45
top: keyway
stock: {round: 70 mm, length: 210 mm, cut: saw}
profile:
  outside:
    - {name: seat, diameter: 38, fit: k6, length: 80}
    - {name: collar, diameter: 60, length: 20}
    - {name: tail, diameter: 30, length: 50}
keyways:
  - {name: key, KEY}
`

const keyHub = `part: hub
kind: flange
material: S235
top: keyway
stock: {plate: 40 mm, cut: laser}
outline: {circle: 120}
bore: {diameter: 38, fit: H7, leave: 2}
keyways:
  - {name: key, in: bore, KEY}
`

func keyed(t *testing.T, units, text, key string) *Model {
	t.Helper()
	return work(t, units, strings.Replace(text, "KEY", key, 1))
}

// A keyway 14 wide (DIN 6885-1 for 50) is broached up to ten widths; a bar slots four
// bores deep, 200, or half from each end to 400. A slot drill goes half its diameter at
// a pass: 14 to 7, 4 to 2 (common practice, no source).
func TestKeywayByItsLength(t *testing.T) {
	t.Parallel()
	for length, want := range map[string][2]string{
		"140": {"Broach with shims in turn, or slot, 3.9 deep", "Too long"},
		"141": {"Too long for a push broach, which cuts about 140 mm (common practice, no source): slot 3.9 deep from the crown of the bore, a little at a stroke.", "Broach with"},
		"200": {"a little at a stroke.", "each end"},
		"371": {"a little at a stroke, half from each end to one TOP line.", "broach 14"},
		"401": {"no bar reaches half of its length: have it cut by wire.", "each end"},
	} {
		m := work(t, "mm", "part: hub\nkind: turned\nmaterial: S235\nstock: {tube: 70 mm, wall: 12.5 mm}\nprofile:\n  outside: [{name: body, diameter: 70, length: "+length+"}]\n  inside: [{name: bore, diameter: 50, fit: H11, length: "+length+"}]\nkeyways:\n  - {name: key, in: bore}\n")
		has(t, m, want[0])
		if strings.Contains(lines(m), want[1]) {
			t.Errorf("%s: %q in\n%s", length, want[1], lines(m))
		}
	}
	for key, want := range map[string]string{
		"in: seat, length: 56":                                "mill 5.1 deep from there in 2 passes, then each side",
		"in: seat, length: 56, depth: 5.1":                    "mill 5.2 deep from there in 2 passes, then each side",
		"in: tail, length: 20, key: 4x4, fit: P9, depth: 4.1": "mill 4.15 deep from there in 3 passes, then each side",
	} {
		has(t, keyed(t, "mm", keyShaft, key), want)
	}
	has(t, work(t, "mm", strings.Split(keyShaft, "keyways:")[0]+"radial:\n  - {name: flute, clock: 0, axial: 40, slot: {around: 8, along: 40}, depth: 4.5}\n"), "Mill to 8 around × 40 along in 2 passes.")
}

// TestKeywayOpens: a keyway that ends with its step runs out at a face, and beside a step
// that is lower, of a bore one that is wider, not beside one as large.
func TestKeywayOpens(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: p\nkind: turned\nmaterial: C45\nstock: {round: 70 mm}\nprofile:\n"+
		"  outside: [{name: a, diameter: 50, length: 20}, {name: b, diameter: 50, length: 20}, {name: c, diameter: 60, length: 40}]\n"+
		"  inside: [{name: d, diameter: 30, length: 30}, {name: e, diameter: 30, length: 20}, {name: f, diameter: 20, length: 30}]\n")
	for _, c := range []struct {
		step        string
		from, to    float64
		front, back bool
	}{
		{"a", 0, 20, true, false}, {"a", 0.1, 19.9, false, false}, {"b", 20, 40, false, false}, {"c", 40, 80, true, true}, {"c", 41, 80, false, true},
		{"d", 0, 30, true, false}, {"e", 30, 50, false, false}, {"f", 50, 80, true, true}, {"f", 50, 79, true, false},
	} {
		s := m.StepNamed(c.step)
		if front, back := m.opensAt(s, false, c.from, c.to), m.opensAt(s, true, c.from, c.to); front != c.front || back != c.back {
			t.Errorf("%s from %g to %g: opens %v and %v", c.step, c.from, c.to, front, back)
		}
	}
}

// DIN 6885-1 for 38: key 10 × 8, shaft 5 deep and 33 over the far side, hub 3.3
// deep and 41.3; both up to 0.2 deeper (from memory). 10 N9 is 9.964 to 10.000,
// 10 JS9 9.982 to 10.018, 10 P9 9.949 to 9.985 (ISO 286-2).
func TestKeyways(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text, key     string
		from, to      float64
		width, across string // limits on the record
		machine, item string
		operates      string
	}{
		{keyShaft, "in: seat, length: 56", 12, 68, "9.964 – 10.000", "32.8 – 33.0", "Mill", "Key 10 × 8 × 56, round ends, DIN 6885-1 C45+C", "slot drill Ø8, "},
		{keyShaft, "in: seat, axial: 28, length: 56", 0, 56, "9.964 – 10.000", "32.8 – 33.0", "Mill", "Key 10 × 8 × 56, one end round, DIN 6885-1 C45+C", "slot drill Ø8, "},
		{keyShaft, "in: tail, axial: 30, from: back, length: 20, fit: P9", 110, 130, "7.949 – 7.985", "25.8 – 26.0", "Mill", "Key 8 × 7 × 20, round ends, DIN 6885-1 C45+C", "slot drill Ø6, "},
		{keyShaft, "in: seat, length: 40, cutter: 63, fit: {limits: [10.01, 10.02]}", 20, 60, "10.01 – 10.02", "32.8 – 33.0", "Mill", "Key 10 × 8 × 40, square ends, DIN 6885-1 C45+C", "it runs out 17.2 mm beyond each end"},
		{keyShaft, "in: tail", 100, 150, "7.964 – 8.000", "25.8 – 26.0", "Mill", "Key 8 × 7 × 50, one end round, DIN 6885-1 C45+C", "slot drill Ø6, "},
		{keyHub, "clock: 0", 0, 40, "9.982 – 10.018", "41.3 – 41.5", "Bench", "", "broach 10 with its bush Ø38"},
		{keyHub, "length: 25", 0, 25, "9.982 – 10.018", "41.3 – 41.5", "Bench", "", "Drill or recess the closed end first"},
		{keyHub, "length: 25, from: back, depth: 4", 15, 40, "9.982 – 10.018", "42.0 – 42.2", "Bench", "", "slot 4.1 deep from the crown of the bore"},
	} {
		m := keyed(t, "mm", c.text, c.key)
		k := &m.Keyways[0]
		if k.Row.FromMm != c.from || k.Row.ToMm != c.to {
			t.Errorf("%s: %v to %v, want %v to %v", c.key, k.Row.FromMm, k.Row.ToMm, c.from, c.to)
		}
		if item, _ := k.Bought(m.W); item != c.item {
			t.Errorf("%s: buys %q, want %q", c.key, item, c.item)
		}
		if w := check(m, "key width"); w == nil || !strings.Contains(w.Limits, c.width) || w.MinMm >= w.MaxMm {
			t.Errorf("%s: width %v, want %s", c.key, w, c.width)
		}
		if w := check(m, "key floor to far side"); w == nil || !strings.Contains(w.Limits, c.across) || w.MinMm >= w.MaxMm {
			t.Errorf("%s: across %v, want %s", c.key, w, c.across)
		}
		has(t, m, "This keyway is TOP from now on.", "First scribe TOP lightly")
		last := m.Out.Operations[len(m.Out.Operations)-2]
		if string(last.Machine) != c.machine || !strings.Contains(strings.Join(append(last.Do, last.Tool), "\n"), c.operates) {
			t.Errorf("%s: %v", c.key, last)
		}
		if f := feature(m, "key"); f.Kind != plan.KeywayFeature || !strings.Contains(f.Size, "keyway "+m.W.Size(k.Row.WidthMm)) {
			t.Errorf("%s: feature %v", c.key, f)
		}
	}
}

// A Woodruff key in 17: 5x6.5 has a disc of 16 sunk 4.5 (DIN 6888, from memory), whose
// half chord at the crown is the root of 4.5 × 11.5, 7.194; 12.5 stay below it. Its hub is
// slotted 2.2 to 2.3 deep, 19.2 to 19.3 across: 2.25 aims at the middle.
func TestWoodruffKeyways(t *testing.T) {
	t.Parallel()
	shaft := strings.Replace(strings.Replace(keyShaft, "diameter: 38", "diameter: 17", 1), "diameter: 30", "diameter: 17", 1)
	hub := strings.Replace(keyHub, "diameter: 38", "diameter: 17", 1)
	for _, c := range []struct {
		text, key  string
		from, to   float64
		item, wide string
		across     string
		does       []string
	}{
		{shaft, "in: seat, key: woodruff 5x6.5", 40, 40, "Key Woodruff 5x6.5, DIN 6888", "4.97 – 5.00", "12.4 – 12.5",
			[]string{"Woodruff keyway 5 N9 × Ø16", "its middle 40 from the front face", "to 7.2 mm each side of its middle"}},
		{shaft, "in: tail, axial: 20, from: back, key: woodruff 5x6.5", 130, 130, "Key Woodruff 5x6.5, DIN 6888", "4.97 – 5.00", "12.4 – 12.5", []string{"its middle 130 from the front face"}},
		{shaft, "in: seat, axial: 20, key: woodruff 606", 20, 20, "Key Woodruff 606, 4.76 × 7.95, ASME B17.2", "4.733 – 4.775", "11.43 – 11.55", []string{"sink it 5.51 deep"}},
		{hub, "key: woodruff 5x6.5", 0, 40, "", "4.985 – 5.015", "19.2 – 19.3", []string{"key: keyway 5 JS9 × 40", "2.25 deep from the crown of the bore"}},
	} {
		m := keyed(t, "mm", c.text, c.key)
		k := &m.Keyways[0]
		if k.Row.FromMm != c.from || k.Row.ToMm != c.to {
			t.Errorf("%s: %v to %v", c.key, k.Row.FromMm, k.Row.ToMm)
		}
		if item, note := k.Bought(m.W); item != c.item || note != "" {
			t.Errorf("%s: buys %q, %q", c.key, item, note)
		}
		if w := check(m, "key width"); w == nil || !strings.Contains(w.Limits, c.wide) {
			t.Errorf("%s: width %v", c.key, w)
		}
		if a := check(m, "key floor to far side"); a == nil || !strings.Contains(a.Limits, c.across) {
			t.Errorf("%s: across %v", c.key, a)
		}
		if check(m, "key length") != nil {
			t.Errorf("%s: a length is measured", c.key)
		}
		has(t, m, c.does...)
		if op := m.Out.Operations[len(m.Out.Operations)-2]; strings.HasPrefix(op.Tool, "Woodruff cutter "+m.W.Dia(k.cutter)+" × "+m.W.Size(k.Row.WidthMm)) != k.sunk() {
			t.Errorf("%s: %v", c.key, op)
		}
		if f := feature(m, "key"); !strings.Contains(f.Size, k.sizeText(m.W)) || strings.Contains(f.Size, "long") == k.sunk() {
			t.Errorf("%s: feature %v", c.key, f)
		}
		d := m.Out.Dimensions
		if !slices.ContainsFunc(d, func(d plan.Dimension) bool {
			return d.Text == "keyway "+map[bool]string{true: k.sizeText(m.W), false: "5 JS9"}[k.sunk()] && d.RadiusMm == k.floorMm() && d.FromMm <= d.ToMm
		}) {
			t.Errorf("%s: not in %v", c.key, d)
		}
	}
	k := keyed(t, "mm", shaft, "in: seat, key: woodruff 5x6.5").Keyways[0].Row
	if key := k.Key(); math.Abs(key.FromMm-32.806) > 0.001 || math.Abs(key.ToMm-47.194) > 0.001 || math.Abs(k.RunoutMm-7.1937) > 1e-4 {
		t.Errorf("the key lies at %v, %v", key, k.RunoutMm)
	}
	k = keyed(t, "mm", keyShaft, "in: seat, length: 40, cutter: 63").Keyways[0].Row
	if key := k.Key(); key != (geom.Span{FromMm: 20, ToMm: 60}) {
		t.Errorf("a parallel key lies at %v", key)
	}
}

// A cone 1:10 of 28 has 26 at 20 from its large end: 8x11 (DIN 6888, from memory: 8.2 deep in the
// shaft, up to 0.1 deeper) sunk 8.25 leaves 17.75 there, and the floor lies along the axis (ISO 775, from
// memory); 60 from it, the other way round, 22. In a cone 1:8 of 50, 40 from its large end, it is 14 × 9
// for 45, 5.5 deep. In 1:3, 80 long, the round falls by 26.7 / 4 on either side of the middle, over 5.
func TestKeywaysOnCones(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ step, key, across, does string }{
		{"diameter: 28, taper: {ratio: 10}", "axial: 20, key: woodruff 8x11", "17.7 – 17.8", "Measure floor to far side: 17.75 on Ø26 at its middle"},
		{"diameter: 28, taper: {ratio: 10, toward: front}", "axial: 20, key: woodruff 8x11", "13.7 – 13.8", "13.75 on Ø22 at its middle"},
		{"diameter: 50, taper: {ratio: 8}", "axial: 40, length: 20", "39.3 – 39.5", "39.4 on Ø45 at its middle"},
	} {
		m := keyed(t, "mm", strings.Replace(keyShaft, "diameter: 38, fit: k6", c.step, 1), "in: seat, "+c.key)
		if a := check(m, "key floor to far side at its middle"); a == nil || !strings.Contains(a.Limits, c.across) {
			t.Errorf("%s: across %v", c.key, a)
		}
		has(t, m, c.does, "The floor lies along the axis")
	}
	job := load(t, "mm", strings.Replace(strings.Replace(keyShaft, "diameter: 38, fit: k6", "diameter: 50, taper: {ratio: 3}", 1), "KEY", "in: seat", 1))
	if m := Work(job, job.Parts[0]); len(m.Errs) != 1 || !strings.Contains(m.Errs[0].What, "leaves the cone") {
		t.Errorf("a floor that leaves its cone: %v", m.Errs)
	}
}

// A length that is not sold is cut from a longer key, an inch key from bar
// (DIN 6885-1 lengths from memory: 56, 63).
func TestKeyLengths(t *testing.T) {
	t.Parallel()
	for units, want := range map[string]string{"mm": "no stock length: cut from a longer one", "in": "cut from bar"} {
		text, key := keyShaft, "in: seat, length: 60"
		if units == "in" {
			text = strings.NewReplacer("38, fit: k6, length: 80", "1-1/4, length: 3", "diameter: 60, length: 20", "diameter: 2, length: 1", "diameter: 30, length: 50", "diameter: 1, length: 2").Replace(text)
			key = "in: seat, length: 1"
		}
		m := keyed(t, units, text, key)
		if _, note := m.Keyways[0].Bought(m.W); note != want {
			t.Errorf("%s: %q, want %q", units, note, want)
		}
	}
}

// What has no standard needs its own depth and width.
func TestKeyRefused(t *testing.T) {
	t.Parallel()
	for key, want := range map[string]string{
		"in: seat, length: 40, key: 11x8":                           "no standard key is 11 × 8",
		"in: seat, length: 40, key: 11x8, depth: 4":                 "no standard key is 11 × 8",
		"in: seat, length: 40, cutter: 9":                           "a cutter of Ø9 does not reach 5 deep",
		"in: seat, length: 40, fit: {limits: [12, 12.1]}":           "the limits are far from the key's width of 10",
		"in: seat, length: 40, key: 11x8, depth: 4, fit: N9":        "",
		"in: seat, length: 40, key: 8x7":                            "",
		"in: seat, length: 40, key: 8x7, depth: 4.5, fit: JS9":      "",
		"in: seat, length: 40, fit: {plus-minus: 0.05}, clock: -30": "",
	} {
		job := load(t, "mm", strings.Replace(keyShaft, "KEY", key, 1))
		m := Work(job, job.Parts[0])
		got := ""
		if len(m.Errs) > 0 {
			got = m.Errs[0].What
		}
		if got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
}

// TestWorkedSizes: a size that lies outside its own limits, or has only them, is never said
// alone where it is worked to.
func TestWorkedSizes(t *testing.T) {
	for _, c := range []struct{ units, fit, want string }{
		{"mm", "k6", "Ø38 k6 (38.002 – 38.018)"}, // ISO 286-2: k6 over 30 to 50 mm is +18 +2 µm
		{"mm", "h7", "Ø38 h7"},
		{"mm", "{limits: [37.971, 37.980]}", "Ø37.971 – 37.980"},
		{"in", "{limits: [1.3760, 1.3765]}", "Ø1.3760 – 1.3765 in"},
	} {
		text := strings.Replace(strings.Replace(keyShaft, "keyways:\n  - {name: key, KEY}\n", "", 1), "top: keyway", "top: scribe", 1)
		if c.units == "in" {
			text = strings.NewReplacer("diameter: 38", "diameter: 1-3/8", "diameter: 60", "diameter: 2", "diameter: 30", "diameter: 1", "70 mm", "2-1/4 in", "210 mm", "122 in", "length: 80", "length: 78", "length: 20", "length: 22").Replace(text)
		}
		m := work(t, c.units, strings.Replace(text, "fit: k6", "fit: "+c.fit, 1))
		if !slices.ContainsFunc(m.Out.Operations, func(o plan.Operation) bool {
			return strings.Contains(strings.Join(o.Do, " "), "seat "+c.want+",")
		}) {
			t.Errorf("%s: no row turns to %s", c.fit, c.want)
		}
		if !slices.ContainsFunc(m.Out.Dimensions, func(d plan.Dimension) bool { return d.Text == c.want || d.Text+" ("+d.Limits+")" == c.want }) {
			t.Errorf("%s: the picture does not say %s", c.fit, c.want)
		}
	}
}
