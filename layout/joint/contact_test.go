package joint

import (
	"strings"
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

// Yield goes by the stock as bought: a hub turned from a bar of 120 has the 195
// MPa of EN 10025-2 over 100 to 150, whatever its wall; a plate its own thickness.
func TestStrengthByStock(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		stock parts.Stock
		want  float64
	}{
		{parts.Stock{Form: "round", Size: parts.Length{Mm: 120}}, 120}, {parts.Stock{Form: "plate", Size: parts.Length{Mm: 12}}, 12},
		{parts.Stock{Form: "tube", Size: parts.Length{Mm: 100}, Second: parts.Length{Mm: 8}}, 8}, {parts.Stock{Form: "flat", Size: parts.Length{Mm: 60}, Second: parts.Length{Mm: 10}}, 10},
		{parts.Stock{Form: "casting"}, 20}, {parts.Stock{}, 20},
	} {
		if got := strengthSectionMm(&parts.Part{Stock: c.stock}, press.Member{OutsideMm: 100, InsideMm: 60}); got != c.want {
			t.Errorf("%+v: %v, want %v", c.stock, got, c.want)
		}
	}
	if got := strengthSectionMm(&parts.Part{}, press.Member{OutsideMm: 100}); got != 100 {
		t.Errorf("solid: %v", got)
	}
}

// TestNested: an outside step lies in a bore from half a millimetre of common length
// on and where their sizes are near, within 1 mm, or up to 6 mm where both are fitted
// (common practice), whichever way the parts stand; never where either is a thread.
func TestNested(t *testing.T) {
	t.Parallel()
	sized := func(mm float64, class string) part.Sized {
		return part.Sized{NominalMm: mm, Class: class, Limited: class != ""}
	}
	for _, c := range []struct {
		out, in part.Sized
		deepMm  float64
		want    bool
	}{
		{sized(80, ""), sized(80, ""), 0.5, true},
		{sized(80, ""), sized(80, ""), 0.49, false},
		{sized(80, ""), sized(80, ""), 1.4, true},
		{sized(80, ""), sized(81, ""), 5, true},
		{sized(81, ""), sized(80, ""), 5, true},
		{sized(80, ""), sized(81.1, ""), 5, false},
		{sized(81.1, "h6"), sized(80, "H7"), 5, false},
		{sized(80, "h6"), sized(86, "H7"), 5, true},
		{sized(80, "h6"), sized(86.1, "H7"), 5, false},
		{sized(80, "h6"), sized(86, ""), 5, false},
		{sized(80, ""), sized(86, "H7"), 5, false},
		{part.Sized{NominalMm: 80, Thread: &threads.Thread{}}, sized(80, ""), 5, false},
		{sized(80, ""), part.Sized{NominalMm: 80, Thread: &threads.Thread{}}, 5, false},
	} {
		out, in := &part.Step{FromMm: 0, ToMm: 20, Size: c.out}, &part.Step{Inside: true, FromMm: 0, ToMm: 10, Size: c.in}
		// The bore's part lies with its front at 0; the other ends so deep in it, as
		// it is and the other way round.
		for _, at := range []placement{{c.deepMm - 20, 0, 1}, {c.deepMm, 0, -1}, {10 - c.deepMm, 0, 1}, {30 - c.deepMm, 90, -1}} {
			if got := (spigot{placedPart{at: at}, placedPart{at: placement{0, 0, 1}}, out, in}).nested(); got != c.want {
				t.Errorf("Ø%g in Ø%g, %g deep at %v: %v", c.out.NominalMm, c.in.NominalMm, c.deepMm, at, got)
			}
		}
	}
}

// TestSharesLead: a joint follows a drawing's holes only if they are that drawing's
// and that feature's: of the part of which there are more pieces, else the first named.
func TestSharesLead(t *testing.T) {
	t.Parallel()
	end := func(name, holes string, pieces int) feature {
		return feature{ref: parts.JointRef{Part: name, Feature: holes}, r: &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{Quantity: pieces}}}}}, group: &part.Group{}}
	}
	lead := end("flange", "bolts", 2)
	for _, c := range []struct {
		a, b feature
		want bool
	}{
		{lead, end("body", "taps", 1), true},
		{end("body", "taps", 1), lead, true},
		{end("body", "taps", 2), lead, false},
		{end("flange", "others", 2), end("body", "taps", 1), false},
		{end("ring", "bolts", 2), end("body", "taps", 1), false},
		{feature{ref: lead.ref, r: lead.r}, end("body", "taps", 1), false},
	} {
		if got := (&joint{a: c.a, b: c.b}).sharesLead(lead); got != c.want {
			t.Errorf("%s.%s and %s.%s: %v", c.a.ref.Part, c.a.ref.Feature, c.b.ref.Part, c.b.ref.Feature, got)
		}
	}
}

// TestPlayLeft: a bush is bored so that a shaft of 20 keeps 0.0005 of that, 0.01, at the least in it once it is pressed in: the
// least play of 0.05 − 0.02 and closed by 0.02 does, by 0.0201 not. It is the bore inside the press, of that copy, and a shaft
// that turns in it.
func TestPlayLeft(t *testing.T) {
	t.Parallel()
	sized := func(mm, low, high float64, inside bool) part.Step {
		s := cylinder(0, 30, mm, inside)
		s.Size.MinMm, s.Size.MaxMm, s.Size.Limited = mm+low, mm+high, true
		return s
	}
	bush := stepped(parts.Part{}, sized(20, 0.05, 0.071, true), sized(30, 0.02, 0.04, false), sized(20, 0.05, 0.071, true))
	shaft := stepped(parts.Part{}, sized(20, 0, 0.02, false))
	bush.r.Out, shaft.r.Out = &plan.PartPlan{Title: "Bush"}, &plan.PartPlan{Title: "Shaft"}
	for name, c := range map[string]struct {
		closes float64
		change func(o *joint)
		want   string
	}{
		"just enough": {0.02, func(*joint) {}, "0.02 mm, and is made for it: Shaft keeps 10 – 71 µm of play"}, "less": {0.0201, func(*joint) {}, ""},
		"of another bush": {0.02, func(o *joint) { o.a.ref.Copy = 2 }, ""}, "in another bore": {0.02, func(o *joint) { o.a.step = &bush.r.Steps[2] }, ""},
		"refused": {0.02, func(o *joint) { o.faults = []plan.Problem{{}} }, ""}, "kept along": {0.02, func(o *joint) { o.in.Slide.KeptBy.Part = "nut" }, ""}, "no slide": {0.02, func(o *joint) { o.in.Slide = nil }, ""},
	} {
		o := &joint{in: &parts.Joint{Kind: parts.SlideKind, Slide: &parts.SlideJoint{}}, a: bush, b: shaft}
		pressed := &joint{in: &parts.Joint{}, a: bush, w: words.Writer{Units: parts.Millimetres}}
		c.change(o)
		if got := (&making{all: []*joint{o}}).playLeft(pressed, bush.step, c.closes); !strings.Contains(got, c.want) || (got == "") != (c.want == "") {
			t.Errorf("%s: %q", name, got)
		}
	}
}
