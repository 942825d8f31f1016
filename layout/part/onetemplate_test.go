package part

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

const twoFaces = `
part: plate
kind: plate
material: S235
stock: {plate: 10 mm, cut: saw}
outline: {rectangle: [200, 100]}
BORE
holes:
FRONT
BACK
slots: [SLOT]
`

// TestOneTemplate: what goes through a flat part is punched from one face, mirrored
// under the other's numbers; a face with all of it elsewhere has no template, one with
// blind holes keeps them alone, and the face whose blind holes need the smaller paper
// is the second. The places are reckoned by hand: from the back x is the other way.
func TestOneTemplate(t *testing.T) {
	t.Parallel()
	const (
		through = "  - {name: NAME, face: FACE, at: [[10, 20], [60, -30]], size: 8}"
		blind   = "  - {name: NAME, face: FACE, at: [AT], size: M6 tap, depth: 5}"
		sunk    = "  - {name: NAME, face: FACE, at: [[10, 20], [60, -30]], size: 8, countersink: {diameter: 16, angle: 90}, note: for the latch}"
	)
	on := func(text, name, face string) string {
		return strings.NewReplacer("NAME", name, "FACE", face, "AT", "[-80, 30]").Replace(text)
	}
	for name, c := range map[string]struct {
		front, back, slot string
		from              map[string]parts.Face // by group
		none              parts.Face            // the face without a template
		want              []string
	}{
		"back goes through": {on(through, "a", "front"), on(through, "b", "back"), "", map[string]parts.Face{"b": parts.Front}, parts.Back,
			[]string{"Cut out the front template, set it to the left and bottom edge", "B1–B2 on the front template are 1–2 of the back: they go through and are made from here.", "Centre-drill holes 1 to 2 (B1–B2 of the front template)."}},
		"sunk at the back": {on(through, "a", "front"), on(sunk, "b", "back"), "", map[string]parts.Face{"b": parts.Front}, parts.Back,
			[]string{"Turn it over, back face up: countersink Ø16 × 90°"}},
		"the front alone is through": {on(through, "a", "front"), on(blind, "far", "back"), "", map[string]parts.Face{"a": parts.Back}, parts.Front,
			[]string{"Scribe TOP on the front face, for setting out; carry it over the edge to the back.", "F1–F2 on the back template are 1–2 of the front"}},
		"both blind, the front the smaller": {on(through, "a", "front") + "\n" + on(blind, "deep", "front"), on(through, "b", "back") + "\n" + strings.NewReplacer("NAME", "far", "FACE", "back").Replace(blind), "",
			map[string]parts.Face{"a": parts.Back}, "", []string{"Cut out the front and the back template, set each", "Centre-drill hole 3."}},
		"one hole": {on(through, "a", "front"), "  - {name: b, face: back, at: [[10, 20]], size: 8}", "", map[string]parts.Face{"b": parts.Front}, parts.Back,
			[]string{"B1 on the front template is 1 of the back: it goes through and is made from here."}},
		"a slot turned as seen from the other side": {on(blind, "deep", "front"), on(through, "b", "back"), "{name: s, face: back, at: [[20, 0]], width: 8, length: 20, turn: 30}",
			map[string]parts.Face{"b": parts.Front, "s": parts.Front}, parts.Back, []string{"Set the long axis to clock 150° seen on the front, whose template has them as B3;", "B1–B3 on the front template"}},
	} {
		text := strings.NewReplacer("BORE\n", "", "FRONT", c.front, "BACK", strings.Replace(c.back, "AT", "[-10, 0]", 1), "SLOT", c.slot).Replace(twoFaces)
		if c.slot == "" {
			text = strings.Replace(text, "slots: []\n", "", 1)
		}
		m := work(t, "mm", text)
		carried := 0
		for i := range m.Groups {
			g := &m.Groups[i]
			if g.Group.PunchedFrom != c.from[g.Name.Value] {
				t.Errorf("%s: %s is punched from %q, want %q", name, g.Name.Value, g.Group.PunchedFrom, c.from[g.Name.Value])
			}
			if g.Group.PunchedFrom != "" {
				carried += g.Group.Count
			}
		}
		for _, f := range m.Out.Faces {
			if (f.NoTemplate != "") != (f.Face == c.none) {
				t.Errorf("%s: %s face: %q", name, f.Face, f.NoTemplate)
			}
			if f.Carried == nil {
				continue
			}
			carried -= len(f.Carried.Holes) + len(f.Carried.Slots)
			h := f.Carried.Holes[0]
			if at := (plan.XY{XMm: h.XMm, YMm: h.YMm}); h.N != 1 || at != (plan.XY{XMm: -10, YMm: 20}) {
				t.Errorf("%s: hole %d is carried at %v", name, h.N, at)
			}
		}
		if carried != 0 {
			t.Errorf("%s: %d more are punched elsewhere than are carried", name, carried)
		}
		has(t, m, c.want...)
	}
}

// TestOneTemplateOfFlats: a turned part keeps a template for each face, for its faces
// may step.
func TestOneTemplateOfFlats(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", strings.NewReplacer("kind: plate", "kind: ring", "stock: {plate: 10 mm, cut: saw}", "stock: {round: 210 mm, length: 12 mm}",
		"outline: {rectangle: [200, 100]}", "profile: {outside: [{name: rim, diameter: 200, length: 10}]}", "BORE\n", "", "slots: [SLOT]\n", "",
		"FRONT", "  - {name: a, at: [[10, 20]], size: 8}", "BACK", "  - {name: b, face: back, at: [[10, 30]], size: 8}").Replace(twoFaces))
	for _, f := range m.Out.Faces {
		if f.NoTemplate != "" || f.Carried != nil {
			t.Errorf("%s: %q, %+v", f.Face, f.NoTemplate, f.Carried)
		}
	}
}

// TestCutHolesHaveNoTemplate: where the laser makes all that is punched from a face,
// no template is printed; a tapped hole or a saw that makes none needs it.
func TestCutHolesHaveNoTemplate(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 8 mm, cut: laser}\noutline: {rectangle: [100, 80]}\nholes: [{name: a, at: [[30, 0]], size: 9 mm}]\nslots: [{name: s, at: [[0, 0]], width: 10, length: 20}]\n"
	for name, c := range map[string]struct{ old, new, why string }{
		"laser":  {"", "", "its holes are cut with the blank"},
		"tapped": {"size: 9 mm", "size: M8 tap", ""},
		"small":  {"size: 9 mm", "size: 2 mm", ""},
		"saw":    {"cut: laser", "cut: saw", ""},
	} {
		if got := work(t, "mm", strings.Replace(plate, c.old, c.new, 1)).Out.Faces[0].NoTemplate; got != c.why {
			t.Errorf("%s: %q", name, got)
		}
	}
}

// TestPitchCircleIsOfHoles: slots on a circle, which are measured one by one, have no
// pitch circle drawn through them.
func TestPitchCircleIsOfHoles(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 8 mm, cut: saw}\noutline: {rectangle: [100, 80]}\nKIND: [{name: s, circle: {pcd: 60, count: 2}, SIZE}]\n"
	for size, want := range map[string]int{"holes, size: 9": 1, "slots, width: 6, length: 20": 0} {
		kind, size, _ := strings.Cut(size, ", ")
		if got := work(t, "mm", strings.NewReplacer("KIND", kind, "SIZE", size).Replace(plate)).Out.Faces[0].Circles; len(got) != want {
			t.Errorf("%s: %+v", kind, got)
		}
	}
}
