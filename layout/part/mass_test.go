package part

import (
	"math"
	"strconv"
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

// TestBranchMass: an opening inside the hole of a branch is not counted besides it; the hole
// summed over a grid, by the main's wall where the round of the branch's axis goes through it.
func TestBranchMass(t *testing.T) {
	t.Parallel()
	const tube = "part: p\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 5 mm, length: 303 mm}\ntube: {outside: 100 mm, wall: 5 mm, length: 300 mm}\n"
	const rough = "radial: [{name: rough, clock: 0, axial: %Z%, window: {around: 30, along: 30, corner: 15}}]\n"
	const stub = "part: q\nkind: tube\nmaterial: S235\nstock: {tube: 60.3 mm, wall: 3 mm, length: 203 mm}\ntube: {outside: 60.3 mm, wall: 3 mm, length: 200 mm}\n" +
		"ends:\n  back: {onto: p.outside, angle: %A%, offset: %O%, joint: set-on, gap: 0, clock: 0, place: {clock: 0, axial: 150, from: front%L%}}\n"
	for _, c := range []struct {
		angle, offset float64
		leans, at     string // where its axis goes through the outside, 50·cot 60° from their crossing
	}{{90, 0, "", "150"}, {90, 10, "", "150"}, {60, 0, ", leans: front", "121.132"}} {
		text := strings.NewReplacer("%A%", strconv.FormatFloat(c.angle, 'f', -1, 64), "%O%", strconv.FormatFloat(c.offset, 'f', -1, 64), "%L%", c.leans).Replace(stub)
		hole, r, h := 0.0, 27.15, 0.05
		for u := -r + h/2; u < r; u += h {
			for v := -r + h/2; v < r; v += h {
				if side := u + c.offset; u*u+v*v < r*r {
					hole += h * h * (math.Sqrt(2500-side*side) - math.Sqrt(2025-side*side)) / math.Sin(c.angle*math.Pi/180)
				}
			}
		}
		want := math.Pi/4*(10000-8100)*300 - hole
		for _, main := range []string{tube, tube + strings.Replace(rough, "%Z%", c.at, 1)} {
			if got := work(t, "mm", main, text).Out.MassKg * 1e9 / 7850; math.Abs(got-want) > 0.001*hole {
				t.Errorf("%v: %.1f mm³, by hand %.1f", c, got, want)
			}
		}
	}
}

// TestLapMass: the lap that is cut with a blank stays on the part.
func TestLapMass(t *testing.T) {
	t.Parallel()
	for _, form := range []string{
		"cone\nstock: {sheet: 2 mm, cut: none}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: 0%}",
		"cone\nstock: {sheet: 2 mm, cut: none}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: 20, seam: 90%}",
		"transition\nstock: {sheet: 2 mm, cut: none}\ntransition: {width: 300, depth: 300, diameter: 150, height: 200, thickness: 2, seam: 90%}",
	} {
		var mm3 [2]float64
		for i, lap := range []string{"", ", overlap: 15"} {
			m := work(t, "mm", "part: p\nmaterial: S235\nkind: "+strings.Replace(form, "%", lap, 1)+"\n")
			mm3[i] = m.Out.MassKg * 1e9 / 7850
		}
		// Its seam is the slant of the side.
		if got, want := mm3[1]-mm3[0], 15*2*math.Hypot(200, 75); math.Abs(got-want) > 0.01*want {
			t.Errorf("%s: the lap is %.1f mm³, by hand %.1f", form, got, want)
		}
	}
}
