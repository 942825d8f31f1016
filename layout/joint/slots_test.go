package joint_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// A foot of 12 mm with two slots 11 × 31, so 20 between the centres of their ends, is bolted to a base; worked by
// hand. M10 has a clearance hole of 10.5, 11 or 12 (ISO 273); its washer of ISO 7089 is 20 on 10.5, that of ISO
// 7093-1 30, its head 16 across flats.
func TestSlots(t *testing.T) {
	t.Parallel()
	const into = "holes: [{name: h, at: [[-40, 0], [40, 0]], size: M10 tap}]\n"
	const through = "holes: [{name: h, at: [[-40, 0], [40, 0]], size: M10 clearance}]\n"
	foot := func(slots string) string {
		return "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [140, 60]}\n" + slots + "\n"
	}
	slot := func(at string, more string) string { return "slots: [{name: s, at: " + at + ", " + more + "}]" }
	const both = "[[-40, 0], [40, 0]]"
	for _, c := range []struct{ name, foot, base, bolt, want string }{
		{"upright", slot(both, "width: 11, length: 31"), into, "washer: yes", "10 0 10"},
		{"across", slot(both, "width: 11, length: 31, turn: 90"), into, "washer: yes", "10 90 10"},
		{"across, another pitch", slot("[[-43, 0], [43, 0]]", "width: 11, length: 31, turn: 90"), into, "washer: yes", "7 90 7"},
		{"across, pitch beyond the run", slot("[[-51, 0], [51, 0]]", "width: 11, length: 31, turn: 90"), into, "washer: yes", "holes-miss-apart, foot s, base h, 102, 10.5, slots, 80"},
		{"upright, another pitch", slot("[[-43, 0], [43, 0]]", "width: 11, length: 31"), into, "washer: yes", "holes-miss-apart, foot s, base h, 86, 0.5, slots, 80"},
		{"upright, nearly the pitch", slot("[[-40.4, 0], [40.4, 0]]", "width: 11, length: 31"), into, "washer: yes", "play-used, foot s, 0.4, base h, 0.5, slots"},
		{"one off by its run", slot("[[-40, 0], [40, 20]]", "width: 11, length: 31"), into, "washer: yes", "0 0 0"},
		{"leaning", slot(both, "width: 11, length: 31, turn: 30"), into, "washer: yes", "10 30 10"},
		{"narrow", slot(both, "width: 10.4, length: 31"), into, "washer: yes", "hole-too-small, foot s, 10.4, M10, slots"},
		{"fine", slot(both, "width: 10.5, length: 31"), into, "washer: yes", "10.25 0 10.25"},
		{"no washer", slot(both, "width: 11, length: 31"), into, "", "slot-bare, heads, foot s, 2"}, // 16/2 − 11 + 10/2
		{"too wide for a washer", slot(both, "width: 15, length: 35"), into, "washer: yes", "slot-unbridged, heads, foot s, 0, 15, 20, washer: yes and wide: yes, Ø30 × 2.5"},
		{"a wide washer", slot(both, "width: 15, length: 35"), into, "washer: yes, wide: yes", "10 0 10"},
		{"too wide for any", slot(both, "width: 20, length: 35"), into, "washer: yes", "slot-unbridged, heads, foot s, 0, 20, 20, narrower slots"},
		{"as far as asked", slot(both, "width: 11, length: 31"), into, "washer: yes, adjust: 10", "10 0 10"},
		{"too short", slot(both, "width: 11, length: 31"), into, "washer: yes, adjust: 10.5", "shift-short, foot, 10, 10.5"},
		{"holes are not shifted", "holes: [{name: s, at: " + both + ", size: M10 clearance}]", into, "adjust: 1", "shift-short, foot, 0, 1"},
		{"slots below", "holes: [{name: s, at: " + both + ", size: M10 clearance}]", slot(both, "width: 11, length: 31") + "\n", "washer: yes, nut: yes", "10 0 10"},
		{"slots on slots", slot(both, "width: 11, length: 31"), slot(both, "width: 11, length: 21, turn: 180") + "\n", "washer: yes, nut: yes", "15 0 15"},
		{"slots across slots", slot(both, "width: 11, length: 31"), slot(both, "width: 11, length: 21, turn: 90") + "\n", "washer: yes, nut: yes", "10 0 10; 5 90 5"},
		{"slots on holes", slot(both, "width: 11, length: 31"), through, "washer: yes, nut: yes", "10 0 10"},
		{"blind", slot(both, "width: 11, length: 31, depth: 6"), into, "washer: yes", "not-through, foot s, 6, 12"},
		{"taps too shallow", slot(both, "width: 11, length: 31"), "holes: [{name: h, at: [[-40, 0], [40, 0]], size: M10 tap, depth: 6}]\n", "washer: yes", "short-thread, 6, 10, 11.5, steel; no-stock-length, M10"}, // one diameter, and 6 of thread
		{"blind below", slot(both, "width: 11, length: 31"), slot(both, "width: 11, length: 31, depth: 6") + "\n", "washer: yes, nut: yes", "not-through, base h, 6, 20"},
		{"seen from the back", slot(both, "face: back, width: 11, length: 31, turn: 30"), into, "washer: yes", "10 330 10"},
	} {
		base := "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\n" + strings.Replace(c.base, "name: s", "name: h", 1)
		p, err := draft(jobOf(t, "{name: x, bolt: {through: foot.s, into: base.h, bolt: M10 8.8, "+strings.TrimSuffix(c.bolt, ",")+"}, face: back-on-front}", foot(c.foot), base))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := shiftsOf(p); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// shiftsOf are the faults and problems of the one joint of a plan, or else how far it can be shifted.
func shiftsOf(p *plan.Plan) string {
	all := p.Faults
	for _, j := range p.Joints {
		all = append(all, j.Problems...)
	}
	var out []string
	for _, f := range all {
		said := []string{string(f.Kind)}
		for _, a := range f.Args {
			if a.Text != "" {
				said = append(said, a.Text)
			} else {
				said = append(said, words.Trim(a.Value, 2))
			}
		}
		out = append(out, strings.Join(said, ", "))
	}
	if out == nil {
		for _, s := range p.Joints[0].Bolt.Shifts {
			out = append(out, fmt.Sprint(words.Trim(s.Mm, 2), " ", words.Trim(s.TowardsDeg, 2), " ", words.Trim(s.BackMm, 2)))
		}
	}
	return strings.Join(out, "; ")
}

// A foot that its place has 4 to the right of the middle of its slots, which run across: the bolts stand 4 to the
// left of those, and it goes 6 on and 14 back.
func TestSlotsOffTheMiddle(t *testing.T) {
	t.Parallel()
	const foot = "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [140, 60]}\nslots: [{name: s, at: [[-40, 0], [40, 0]], width: 11, length: 31, turn: 90}]\n"
	const base = "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\nholes: [{name: h, at: [[-40, 0], [40, 0]], size: M10 tap}]\n"
	p, err := draft(jobOf(t, "{name: x, bolt: {through: foot.s, into: base.h, bolt: M10 8.8, washer: yes}, place: {on: front, with: back, at: [4, 0], top: up}}", foot, base))
	if err != nil || len(p.Faults) > 0 {
		t.Fatalf("%v, %+v", err, p)
	}
	b := p.Joints[0].Bolt
	if got := shiftsOf(p); got != "6 90 14" && got != "14 270 6" {
		t.Error(got)
	}
	for _, off := range b.OffMm {
		if math.Abs(off.XMm+4) > 1e-9 || off.YMm != 0 {
			t.Errorf("%+v", b.OffMm)
		}
	}
	text := ""
	for _, s := range p.Joints[0].Steps {
		text += strings.Join(s.Do, " ")
	}
	const right, left = "6 mm towards its right and 14 mm towards its left along the slots of foot", "14 mm towards its left and 6 mm towards its right along the slots of foot"
	if low := text; !strings.Contains(low, right) && !strings.Contains(low, left) || !strings.Contains(text, "(slot numbers of ") {
		t.Error(text)
	}
}

// Slots that lean by 30.26° are named by that, to a tenth: shifted 4 that way the foot goes 6 on and 14 back.
func TestSlotsThatLean(t *testing.T) {
	t.Parallel()
	sin, cos := math.Sincos(30.26 * math.Pi / 180)
	const foot = "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [140, 60]}\nslots: [{name: s, at: [[-40, 0], [40, 0]], width: 11, length: 31, turn: 30.26}]\n"
	const base = "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\nholes: [{name: h, at: [[-40, 0], [40, 0]], size: M10 tap}]\n"
	p, err := draft(jobOf(t, fmt.Sprintf("{name: x, bolt: {through: foot.s, into: base.h, bolt: M10 8.8, washer: yes}, place: {on: front, with: back, at: [%.6f, %.6f], top: up}}", 4*sin, 4*cos), foot, base))
	if err != nil {
		t.Fatal(err)
	}
	text := ""
	for _, s := range p.Joints[0].Steps {
		text += strings.Join(s.Do, " ")
	}
	const on, back = "6 mm towards 30.3° seen on the front of foot", "14 mm towards 210.3° seen on the front of foot"
	if !strings.Contains(text, on+" and "+back) && !strings.Contains(text, back+" and "+on) {
		t.Errorf("%s; %s", shiftsOf(p), text)
	}
}

// What bolts through slots is set slot on hole, with the washers that the job asks for.
func TestSlotOnHole(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "guard-bracket-1"), []string{"slot on hole, TOP of Cable bracket 1", "a wide washer under each head and nut"}, []string{"hole on hole", "a washer under"})
}

// What round holes hold already is not set along the slots of a later joint, but where the job wants it set there; one whose
// slots come first is. By geometry.
func TestNothingSetAlongSlots(t *testing.T) {
	t.Parallel()
	const part = "kind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 200}\n"
	const foot = "part: foot\n" + part + "holes: [{name: r, at: [[0, 60], [0, -60]], size: M10 clearance}]\nslots: [{name: s, at: [[-40, 0], [40, 0]], width: 11, length: 31}]\n"
	const base = "part: base\n" + part + "holes: [{name: r, at: [[0, 60], [0, -60]], size: M10 tap}, {name: s, at: [[-40, 0], [40, 0]], size: M10 tap}]\n"
	round := "{name: round, bolt: {through: foot.r, into: base.r, bolt: M10 8.8}, face: back-on-front}"
	slots := func(adjust string) string {
		return "{name: slots, bolt: {through: foot.s, into: base.s, bolt: M10 8.8, washer: yes" + adjust + "}, face: back-on-front}"
	}
	const now, none = "as far as nothing asks for another: from there it can be shifted", "Earlier steps hold foot and base to one another already: nothing is set along the slots here."
	for _, c := range [][4]string{{round, slots(""), none, now}, {slots(""), round, now, none}, {round, slots(", adjust: 5"), now, none}} {
		p, err := draft(jobOf(t, c[0]+"\n  - "+c[1], foot, base))
		if err != nil {
			t.Fatal(err)
		}
		says(t, jointNamed(t, p, "slots"), c[2:3], c[3:])
	}
}
