package part

import (
	"math"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

// TestToBend: how far a place on the base lies from the bend of a flange, which begins a radius and a thickness, 4, from the
// outside: straight up below it, from its nearest end beside it, less than 0 within it, and beside the flange, above
// where it begins, from none.
func TestToBend(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: tray\nkind: folded\nmaterial: S235\nstock: {sheet: 2 mm, cut: laser}\noutline: {rectangle: [100, 80]}\nbends: {radius: 2, flanges: [{side: top, height: 30, left: 30}]}\n")
	f := m.form.(*folded)
	for at, want := range map[plan.XY]float64{
		{XMm: 0, YMm: 30}: 6, {XMm: 0, YMm: 36}: 0, {XMm: 0, YMm: 37}: -1, {XMm: -20, YMm: 37}: -1,
		{XMm: -30, YMm: 30}: math.Hypot(10, 6), {XMm: -23, YMm: 32}: 5, {XMm: -30, YMm: 38}: math.Inf(1),
	} {
		if got := f.toBendMm(&Group{FaceGroup: parts.FaceGroup{Face: parts.Front}}, at); got != want && !(math.Abs(got-want) < 1e-9) {
			t.Errorf("%v: %g, want %g", at, got, want)
		}
		if got := f.toBendMm(&Group{FaceGroup: parts.FaceGroup{Face: parts.Back}}, at.Mirrored()); got != want && !(math.Abs(got-want) < 1e-9) {
			t.Errorf("%v from the back: %g, want %g", at, got, want)
		}
	}
}

// TestFlatsShort: the flats of a round end of 16 facets lie r·(1 − cos 11.25°) inside the round at the middle of the
// plate, r being 149 of 300 outside and 151 of 300 inside with a plate of 2; rolled, there are none.
func TestFlatsShort(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		faceted, inside bool
		want            float64
	}{{false, false, 0}, {false, true, 0}, {true, false, 2.86302}, {true, true, 2.90145}} {
		in := &parts.Transition{Diameter: parts.Length{Mm: 300}, Faceted: c.faceted, Formed: parts.Formed{Inside: c.inside, Thickness: parts.Length{Mm: 2}}}
		if got := FlatsShortMm(in); math.Abs(got-c.want) > 1e-4 {
			t.Errorf("%+v: %.5f", c, got)
		}
	}
}

// TestThreadBlanks: the diameter before a thread is cut: the tap drill inside, to 0.001 where it is no drill of a set, or else the
// minor diameter; outside a tenth of the pitch under the major one, to 0.01, but that itself of a pipe; of a lead screw the
// middle of its limits. In inches all go to 0.001: 0.689, 0.778, 0.746 for 0.6890, 0.7776, 0.7463.
func TestThreadBlanks(t *testing.T) {
	t.Parallel()
	in := threads.Thread{MajorMm: 20, MinorMm: 17.294, PitchMm: 2.5, TapDrillMm: 17.5, TapDrillName: "17.5"}
	drilled, bored, pipe, taper, lead := in, in, in, in, in
	drilled.TapDrillName, drilled.TapDrillMm, bored.TapDrillMm, pipe.Series, taper.Taper = "", 17.50049, 0, threads.PipeG, true
	lead.Lead = &threads.Lead{Screw: threads.LeadLimits{Major: [2]float64{18.849, 19.063}}, Nut: threads.LeadLimits{Minor: [2]float64{23.665, 24}}}
	for _, c := range []struct {
		t      threads.Thread
		inside bool
		mm, in float64
	}{{in, true, 17.5, 17.5}, {drilled, true, 17.5, 0.689 * 25.4}, {bored, true, 17.294, 17.294}, {in, false, 19.75, 0.778 * 25.4}, {pipe, false, 20, 20}, {taper, false, 20, 20},
		{lead, true, 23.83, 0.938 * 25.4}, {lead, false, 18.96, 0.746 * 25.4}} {
		for unit, want := range map[parts.Units]float64{parts.Millimetres: c.mm, parts.Inches: c.in} {
			b := &bench{Numbered: &Numbered{Shape: &Shape{Sizes: &Sizes{W: words.Writer{Units: unit}}}}}
			if got := b.threadBlankMm(&Step{Inside: c.inside, Size: Sized{Thread: &c.t}}); math.Abs(got-want) > 1e-6 {
				t.Errorf("%+v inside %v: %g, want %g", c.t, c.inside, got, want)
			}
		}
	}
}
