package part

import (
	"math"
	"strings"
	"testing"
)

// TestMass: what is drilled, sunk, milled and slotted is taken off, by hand; S235 has
// 7850 kg/m³.
func TestMass(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [100, 80]}\n"
	const bar = "part: p\nkind: shaft\nmaterial: S235\nstock: {round: 50 mm}\nprofile: {outside: [{name: body, diameter: 50, length: 100}]}\n"
	quarter := math.Pi / 4
	round := quarter * 2500 * 100
	for _, c := range []struct {
		name, text string
		mm3        float64
	}{
		{"drilled through", plate + "holes: [{name: a, at: [[0, 0]], size: 10 mm}]", 160000 - quarter*100*20},
		{"reamed, not the drill", plate + "holes: [{name: a, at: [[0, 0]], size: {diameter: 10, fit: H7}}]", 160000 - quarter*100*20},
		{"tapped, the drill", plate + "holes: [{name: a, at: [[0, 0]], size: M10 tap}]", 160000 - quarter*8.5*8.5*20},
		{"counterbored", plate + "holes: [{name: a, at: [[0, 0]], size: 10 mm, counterbore: {diameter: 18, depth: 8}}]", 160000 - quarter*(100*12+324*8)},
		// From 10 to 20 over 5 mm at 90 degrees: a truncated cone of π/12·5·(400+200+100).
		{"countersunk", plate + "holes: [{name: a, at: [[0, 0]], size: 10 mm, countersink: {diameter: 20, angle: 90}}]", 160000 - quarter*100*15 - math.Pi/12*5*700},
		{"bored with a chamfer", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {circle: 100}\nbore: {diameter: 40}\nchamfers: [{edge: bore-front, size: 2}]",
			quarter*(10000-1600)*20 - math.Pi*2*(20+2.0/3)*2},
		{"a slot into a bar", bar + "radial: [{name: s, clock: 0, axial: 50, slot: {around: 8, along: 28}, depth: 5}]", round - (8*20+quarter*64)*(5-(25-math.Sqrt(625-16))/3)},
		{"a slot through a bar", bar + "radial: [{name: s, clock: [0, 90], axial: 50, slot: {around: 8, along: 28}}]", round - 2*(8*20+quarter*64)*50},
		{"a keyway", bar + "keyways: [{name: k, in: body, length: 40}]", round - (14*40-(1-quarter)*196)*(5.5-(25-math.Sqrt(625-49))/3)},
		// A disc of 28 sunk 8.2: r²·acos((r-h)/r) - (r-h)·√(h(2r-h)), less a third of the fall
		// of the crown along its chord.
		{"a Woodruff keyway", strings.Replace(bar, "diameter: 50", "diameter: 28", 1) + "keyways: [{name: k, in: body, key: woodruff 8x11}]",
			quarter*784*100 - 8*(196*math.Acos(5.8/14)-5.8*math.Sqrt(8.2*19.8)-2*math.Sqrt(8.2*19.8)*(14-math.Sqrt(196-16))/3)},
		{"a keyway with a cutter's ends", bar + "keyways: [{name: k, in: body, length: 40, cutter: 50}]",
			round - 14*40*(5.5-(25-math.Sqrt(625-49))/3) - 14*(625*math.Acos(19.5/25)-19.5*math.Sqrt(5.5*44.5)-2*math.Sqrt(5.5*44.5)*(25-math.Sqrt(625-49))/3)},
	} {
		m := work(t, "mm", c.text)
		if got := m.Out.MassKg * 1e9 / 7850; math.Abs(got-c.mm3) > 1 {
			t.Errorf("%s: %.1f mm³, by hand %.1f", c.name, got, c.mm3)
		}
	}
}
