package words

import (
	"cmp"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// A lift is slung in the job's units, and one part on both sides is named once.
func TestSling(t *testing.T) {
	t.Parallel()
	lift := &plan.Lift{Sling: &plan.Sling{End: "front", At: "Cap", CentreMm: 254, HalfMm: 127, StrapMm: 50.8, On: [2]string{"Tube", "Tube"}, HookMm: 220}}
	const after = ", legs 60° to the level or steeper (common practice, no source); lift a hand's breadth and look."
	for units, want := range map[parts.Units]string{
		parts.Millimetres: "On the hoist: its centre of gravity, as worked out, lies 254 from its front end, that of Cap: sling it 127 to each side of that, straps at most 50 wide, on Tube, the hook 220 or more above the upper strap" + after,
		parts.Inches:      "On the hoist: its centre of gravity, as worked out, lies 10 in from its front end, that of Cap: sling it 5 in to each side of that, straps at most 2 in wide, on Tube, the hook 8.7 in or more above the upper strap" + after,
	} {
		if got := (Writer{Units: units}).Sling(lift); got != want {
			t.Errorf("%v: %s", units, got)
		}
	}
	lift.Sling.On[1] = "Head"
	if got, want := (Writer{}).Sling(lift), "On the hoist: its centre of gravity, as worked out, lies 254 from its front end, that of Cap: sling it 127 to each side of that, straps at most 50 wide, on Tube and Head, the hook 220 or more above the upper strap"+after; got != want {
		t.Error(got)
	}
	for want, at := range map[string]plan.Sling{
		"lies 254 from its left end, that of Cap: hold it to both sides of that, the straps clear of the joint; lift a hand's breadth and look.":                                                                                                                                          {End: "left"},
		"lies 254 from its side at TOP, front up, that of Cap: hold it to both sides of that, the straps clear of the joint; lift a hand's breadth and look.":                                                                                                                             {End: "TOP", FrontUp: true},
		"lies 254 from its side at 9 o'clock, front up, that of Cap: hold it to both sides of that, the straps clear of the joint; lift a hand's breadth and look.":                                                                                                                       {End: "9 o'clock", FrontUp: true},
		"lies 254 from its front end, that of Cap: hold it to both sides of that, the straps clear of the joint; lift a hand's breadth and look.":                                                                                                                                         {},
		"lies 254 from its front end, that of Cap: a strap would be caught: eye bolts rated for it, home in the M12 holes jacking of Base to both sides of that, legs 60° to the level or steeper, the hook so high that none touches what stands there; lift a hand's breadth and look.": {Eyes: "M12", Holes: "jacking", On: [2]string{"Base", "Base"}},
		"that of Cap: eye bolts rated for it, home in the M12 holes lifting of Base to both sides of that, legs 60° to the level or steeper, the hook so high that none touches what stands there; lift a hand's breadth and look.":                                                       {Eyes: "M12", Holes: "lifting", For: true, On: [2]string{"Base"}},
		"that of Cap: shackles rated for it in hole of each Eye to both sides of that, legs 60° to the level or steeper; lift a hand's breadth and look.":                                                                                                                                 {Holes: "hole", For: true, On: [2]string{"Eye"}},
		"home in the M12 holes jacking of Base to both sides of that, no thread out below, legs 60° to the level or steeper, the hook so high that none touches what stands there; lift a hand's breadth and look.":                                                                       {Eyes: "M12", Holes: "jacking", Through: true, On: [2]string{"Base", "Base"}},
	} {
		at.End, at.At, at.CentreMm = cmp.Or(at.End, "front"), "Cap", 254
		if got := (Writer{}).Sling(&plan.Lift{Sling: &at}); !strings.HasSuffix(got, want) {
			t.Error(got)
		}
	}
	lift.Sling.OverMm = 41
	if got, want := (Writer{}).Sling(lift), " It lies up to 41 above those places: hold the top with a third sling, or the load turns over."; !strings.HasSuffix(got, want) {
		t.Error(got)
	}
	if got := (Writer{}).Sling(&plan.Lift{}); got != "" {
		t.Error(got)
	}
}

func TestHolds(t *testing.T) {
	t.Parallel()
	for want, h := range map[string]*plan.Hold{
		"": nil,
		"Loose, Rib falls over when it leans 5°: clamp it to an angle plate or a block until its tacks hold.":                             {PieceDeg: 5},
		"Pack the gap of 0.059 in and clamp Rib until its tacks hold.":                                                                    {PieceDeg: 5, GapMm: 1.5},
		"Loose, Rib comes off the upright face of Post: clamp it to that until its tacks hold.":                                           {PieceDeg: 5, Against: "Post"},
		"Nothing is under Rib: prop it, or clamp it to an angle plate, until its tacks hold.":                                             {PieceDeg: 5, Hangs: true},
		"Upright, it falls over when it leans 6°: guide it until the ram holds it.":                                                       {UprightDeg: 6},
		"Upright, it falls over when it leans 6°: clamp its foot down until the two have gripped and are cold.":                           {UprightDeg: 6, Hot: true},
		"Upright, it falls over when it leans 6°, and it is let down once: two hold it, or a sling, until the hub grips.":                 {UprightDeg: 6, Grips: true},
		"Upright, it falls over when it leans 10°: clamp its foot down, do not lay it down; never hold it by Hub, which only lies on it.": {UprightDeg: 10, Lies: "Hub"},
		"Upright, it falls over when it leans 10°: one holds it until two bolts are home; Hub only lies on it: off first, then on again.": {UprightDeg: 10, Bolts: true, Lies: "Hub"},
		"Nothing carries Housing there: prop it or hold it to the face until two bolts are home.":                                         {Comes: "Housing"},
		"Upright, it falls over when it leans 10°: one holds it until two bolts are home.":                                                {UprightDeg: 10, Bolts: true},
		"It stands upright on Tube.": {Foot: "Tube"},
		"By itself it falls over: pack it up level on what is firm and clamp it, or leave it in the sling, until the step is done.":                                                                                        {Packed: true},
		"For the cups upright on the table, as their rows say. Once together it rolls or falls over: chocked V-blocks under both ends of Tube, its centre of gravity between them, 10 in from its front end, that of Cap.": {Once: true, Cups: true, On: [2]string{"Tube", "Tube"}, CentreMm: 254, At: "Cap"},
		"Its seam runs on along Base and Rail.":                         {RunsOn: []string{"Base", "Rail"}},
		"What hangs in the sling stays in it until the joint is tight.": {Slung: true},
		"Clamp Head down, or it tips. Take the block out from under Rod as this goes over it. Then chocked V-blocks under Head and Tube, astride its centre of gravity, 10 in from its front end, that of Cap.": {On: [2]string{"Head", "Tube"}, CentreMm: 254, At: "Cap", Out: "Rod", TipsMm: 25.4},
		"Clamp Head down. Take the block out from under Rod as this goes over it. Then chocked V-blocks under Head and Tube, astride its centre of gravity, 10 in from its front end, that of Cap.":             {On: [2]string{"Head", "Tube"}, CentreMm: 254, At: "Cap", Out: "Rod"},
		"By itself it rolls or falls over: chocked V-blocks under both ends of Tube, its centre of gravity between them, 10 in from its front end, that of Cap.":                                                {On: [2]string{"Tube", "Tube"}, CentreMm: 254, At: "Cap"},
		"Once together it rolls or falls over: chocked V-blocks under both ends of Tube, its centre of gravity between them, 10 in from its front end, that of Cap.":                                            {Once: true, On: [2]string{"Tube", "Tube"}, CentreMm: 254, At: "Cap"},
		"By itself it rolls or falls over: chocked V-blocks under Head and Tube, astride its centre of gravity, 10 in from its front end, that of Cap.":                                                         {On: [2]string{"Head", "Tube"}, CentreMm: 254, At: "Cap"},
	} {
		if got := (Writer{Units: parts.Inches}).Holds(h, "Rib"); got != want {
			t.Errorf("%+v: %q, want %q", h, got, want)
		}
	}
}

// 110 °C is 230 °F, −40 is the same in both.
func TestHeat(t *testing.T) {
	t.Parallel()
	in, mm := Writer{Units: parts.Inches}, Writer{}
	for _, c := range [][2]string{
		{in.Heat(110), "230 °F (110 °C)"}, {in.Heat(-40), "-40 °F (-40 °C)"}, {mm.Heat(110), "110 °C"}, {in.Heats(150, 250), "302 – 482 °F (150 – 250 °C)"},
	} {
		if c[0] != c[1] {
			t.Errorf("%q, want %q", c[0], c[1])
		}
	}
}
