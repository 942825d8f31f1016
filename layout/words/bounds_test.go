package words

import (
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestWriterBounds: figures at the sizes where the way of writing changes, and large ones
// in a smaller unit's thousands, by hand.
func TestWriterBounds(t *testing.T) {
	t.Parallel()
	mm, in := Writer{parts.Millimetres}, Writer{parts.Inches}
	for _, c := range []struct{ name, got, want string }{
		{"Limits", mm.Limits(10.0010, 10.1290), "10.01 – 10.12"}, // no finer where there is a tenth
		{"Limits", mm.Limits(10.0010, 10.0960), "10.001 – 10.096"},
		{"Limits", mm.Limits(10.0004, 10.0046), "10.001 – 10.004"}, // never finer than 0.001
		{"Limits", mm.Limits(10.04, 10.96), "10.04 – 10.96"},
		{"Limits", mm.Limits(10, 11), "10.0 – 11.0"},
		{"ReadLimits", mm.ReadLimits(0.0349, 0.4151), "0.03 – 0.42"}, // to the nearest, outward too
		{"Limits", mm.Limits(0, 1.1), "0.0 – 1.1"},
		{"Limits", in.Limits(1.0001*25.4, 1.0129*25.4), "1.001 – 1.012 in"},
		{"Limits", in.Limits(1.0001*25.4, 1.0096*25.4), "1.0001 – 1.0096 in"},
		{"Limits", in.Limits(1.00004*25.4, 1.00046*25.4), "1.0001 – 1.0004 in"},
		{"Fine", in.Fine(25400, 50800), "1 – 2 in"},
		{"Forces", mm.Forces(900400, 999600, 0), "900 – 1000 kN"},
		{"Grams", in.Grams(2834.95), "100 oz"}, {"Grams", mm.Grams(2), "2 g"}, {"Grams", mm.Grams(2.4), "2 g"}, // 100 ounces are 2834.95 g
		{"Mass", mm.Mass(0.9994), "0.999 kg"}, {"Mass", mm.Mass(0.9996), "1.00 kg"}, {"Mass", mm.Mass(9.994), "9.99 kg"}, {"Mass", mm.Mass(9.996), "10.0 kg"},
		{"Mass", mm.Mass(99.94), "99.9 kg"}, {"Mass", mm.Mass(99.96), "100 kg"}, {"Mass", mm.Mass(150.4), "150 kg"}, {"Mass", in.Mass(45.359237), "100 lb"},
		{"RoundMass", in.RoundMass(45.359237, 1), "100 lb"}, {"RoundMass", mm.RoundMass(1.26, 1), "1.3 kg"}, {"RoundMass", mm.RoundMass(0.0018, 2), "1.8 g"}, {"RoundMass", mm.RoundMass(0.006, 2), "0.01 kg"},
		{"Heats", in.Heats(110.2, 120.3), "230 – 249 °F (110 – 120 °C)"}, // 230.36 and 248.54
		{"Torques", mm.Torques(2.44, 3), "2 – 3 N m"}, {"Torques", mm.Torques(2.44, 2.96), "2.4 – 3 N m"},
		{"LengthWord", LengthWord(parts.Inches), "inches"}, {"LengthWord", LengthWord(parts.Millimetres), "mm"},
		{"Fixed", Fixed(-0.004, parts.Millimetres), "0.00"}, {"Fixed", Fixed(12.345678, parts.Millimetres), "12.35"}, {"Fixed", Fixed(25.4, parts.Inches), "1.000"}, {"Fixed", Fixed(-12.7, parts.Inches), "-0.500"},
		{"Short", Short(25.4*1.2346, parts.Inches), "1.235"}, {"Short", Short(1.2346, parts.Millimetres), "1.23"},
		{"Room", mm.Room(12.0000004), "12"}, {"Room", mm.Room(12.1), "13"}, {"Room", in.Room(25.4 * 2.001), "2.01 in"}, {"Room", in.Room(25.4 * 7.75), "7.75 in"}, {"Room", in.Room(25.4 * 2), "2 in"},
		{"Even", in.Said(in.Even(27.4, 0.01, 0.01)), "1.08 in"}, {"Even", in.Said(in.Even(18.796, 0.01, 0.001)), "0.74 in"}, {"Even", mm.Said(mm.Even(61.54, 0.1, 0.01)), "61.5 mm"}, {"Even", mm.Said(mm.Even(54, 10, 0.25)), "50 mm"}, {"Even", in.Said(in.Even(54, 10, 0.25)), "2.25 in"},
		{"Lettered", Lettered(parts.Back, 3, 1), "B3"}, {"Lettered", Lettered(parts.Front, 3, 2), "F3–F4"},
		{"TorqueUnit", in.Torque(10 * NmPerPoundFoot), "10 lb ft (14 N m)"}, // ten pound feet are the wrench's
		{"Holds", mm.Holds(&plan.Hold{GapMm: 0.8}, "the lug"), "Pack the gap of 0.8 and clamp the lug until its tacks hold."},
		{"Holds", mm.Holds(&plan.Hold{GapMm: 0.8, PieceDeg: 5}, "the lug"), "Pack the gap of 0.8 and clamp the lug until its tacks hold."},
		{"Holds", mm.Holds(&plan.Hold{PieceDeg: 0.8}, "the lug"), "Loose, the lug falls over when it leans 1°: clamp it to an angle plate or a block until its tacks hold."},
		{"Holds", mm.Holds(&plan.Hold{UprightDeg: 0.8}, "the lug"), "Upright, it falls over when it leans 1°: guide it until the ram holds it."},
		{"Holds", mm.Holds(&plan.Hold{BeyondMm: 6, At: "Barrel"}, ""), "Only the anchors keep it from tipping: the centre of gravity lies 6 beyond its feet, towards Barrel. Until they are tight a prop under it there."},
		{"Holds", mm.Holds(&plan.Hold{BeyondMm: 6, At: "Barrel", Free: true}, ""), "By itself it tips: the centre of gravity lies 6 beyond its feet, towards Barrel. A prop under it there."},
		{"Holds", mm.Holds(&plan.Hold{BeyondMm: 6, At: "Barrel", Free: true, Later: []string{"Lid"}}, ""), "By itself it tips: the centre of gravity lies 6 beyond its feet, towards Barrel. A prop under it there; so again whenever Lid is off."},
		{"Holds", mm.Holds(&plan.Hold{RunsOn: []string{"Rib"}}, ""), "Its seam runs on along Rib."}, {"Holds", mm.Holds(&plan.Hold{}, "the lug"), ""}, {"Holds", mm.Holds(nil, "the lug"), ""},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
	turned := mm.Sling(&plan.Lift{Sling: &plan.Sling{On: [2]string{"a", "a"}, OverMm: 12.4}})
	if want := " It lies up to 13 above those places: hold the top with a third sling, or the load turns over."; turned[len(turned)-len(want):] != want {
		t.Errorf("%q", turned)
	}
}
