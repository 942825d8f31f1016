package parts

import "testing"

// What is not said is known by words, and other words say nothing.
func TestUsesInWords(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, note string
		want       Use
	}{
		{"eye", "for the shackle", Lifting}, {"lifting-holes", "", Lifting}, {"eye-bolts", "", Lifting}, {"a", "takes a sling", Lifting}, {"a", "hoisting", Lifting},
		{"jack", "", Jacking}, {"pry", "", Jacking}, {"a", "jacks the joint apart", Jacking}, {"push-off", "", Jacking},
		{"jackscrews", "", Jacking}, {"pusher", "", Jacking}, {"a", "pushed in", ""}, {"draw", "", Drawing}, {"pull", "", Drawing}, {"drawbar", "", Drawing}, {"a", "as drawn", ""}, {"a", "pulled on", ""}, {"grease-port", "", Grease}, {"greaser", "", ""}, {"a", "grease", ""},
		{"drain-2", "", Drain}, {"drip", "", Drain}, {"weep", "", Drain}, {"rear-drain", "", Opening}, {"drainage", "", Drain},
		{"sight-window", "", Opening}, {"vent", "", Opening}, {"inlet", "", Opening}, {"outlet", "", Opening}, {"inspection", "", Opening}, {"port", "", Opening}, {"portal", "", ""},
		{"pins", "", Pins}, {"dowel-holes", "", Pins}, {"spindle", "", ""}, {"bolts", "", ""},
	} {
		if got := HoleUse(c.name, c.note); got != c.want {
			t.Errorf("%s, %q: %q, want %q", c.name, c.note, got, c.want)
		}
	}
	for title, want := range map[string]Use{"Coupling guard": Guarding, "Belt hood": Guarding, "Stand foot": Leg, "Feet": Leg, "Leg": Leg, "Gusset": Brace, "Knee brace": Brace, "Footing": "", "Plate": "", "Door gasket": Gasket, "Gaskets": Gasket, "Key bar": AKey, "Keyhole plate": ""} {
		if got := PartUse("x", title); got != want {
			t.Errorf("%s: %q, want %q", title, got, want)
		}
	}
	if brace, leg, seal := PartUse("gusset-2", "Corner plate"), PartUse("leg", "Corner plate"), PartUse("door-gasket", "Ring"); brace != Brace || leg != "" || seal != Gasket {
		t.Errorf("by name: %q, %q, %q", brace, leg, seal)
	}
	for _, c := range []struct {
		item, how string
		want      Use
	}{
		{"lock nut M30x1.5", "", ANut}, {"support ring 40", "", ASpacer}, {"shims 0.1", "", ASpacer}, {"ring", "with its spacers", ASpacer}, {"bolt", "with its nut", ""},
		{"gear motor 2 kW", "", AMotor}, {"motor, 3 kW", "", AMotor}, {"coupling to the gear motor", "", ""}, {"cover", "", ""},
	} {
		if got := ItemUse(c.item, c.how); got != c.want {
			t.Errorf("%s: %q, want %q", c.item, got, c.want)
		}
	}
	for u, want := range map[Use][2]bool{Lifting: {true, false}, Jacking: {true, false}, Drawing: {true, false}, Grease: {false, true}, Drain: {false, true}, Opening: {false, true}, Pins: {}, NoUse: {}, "": {}} {
		if u.Moves() != want[0] || u.Opens() != want[1] {
			t.Errorf("%s: moves %v, opens %v", u, u.Moves(), u.Opens())
		}
	}
}

// How a thing is held, and whether it comes turned.
func TestHeldInWords(t *testing.T) {
	t.Parallel()
	for how, want := range map[string]Held{
		"stays by its weight": ByWeight, "by its own weight": ByWeight, "pressed in from the front": ByForce, "driven into the hole": ByForce, "hammered home": ByForce,
		"shrunk in": ByForce, "tapped home": ByForce, "knocked through": ByForce, "driven with a mallet into its hole": ByForce, "hammered on": ByForce, "a press fit": ByForce, "a pressed steel cover, laid on": "", "tapped for M6": "", "bolted on": "",
	} {
		if got := HeldBy(how); got != want {
			t.Errorf("%s: %q, want %q", how, got, want)
		}
	}
	for how, want := range map[string]bool{"on edge by the window": true, "through the mouth": true, "tilted": true, "slanting": true, "turned behind it": true, "from above": false} {
		if ComesTurned(how) != want {
			t.Errorf("%s: want %v", how, want)
		}
	}
}

// What is fitted, by a note, and as it is bought for a thread.
func TestFitted(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ note, thread, fitted, ordered string }{
		{"grease nipple", "M10x1", "grease nipple", "grease nipple M10x1"},
		{"a nipple, straight", "M6", "nipple", "nipple M6"},
		{"closed by a plug", "G1/2", "plug", "plug G1/2"},
		{"set screw, cone point, 12 long", "M6", "set screw, cone point, 12 long", "set screw M6, cone point, 12 long"},
		{"closed by plugs", "M6", "plug", "plug M6"}, {"Grease nipples", "M6", "Grease nipple", "Grease nipple M6"}, {"two set screws, 12 long", "M6", "set screw, 12 long", "set screw M6, 12 long"}, {"cone-point screw, 8 long", "M5", "cone-point screw, 8 long", "cone-point screw M5, 8 long"}, {"dowel pins 4 m6 × 16, in", "", "dowel pin 4 m6 × 16", "dowel pin 4 m6 × 16"},
		{"grub screw", "M6", "grub screw", "grub screw M6"}, {"set screw M6x25", "M6", "set screw M6x25", "set screw M6x25"}, {"plug 1/4-18", "1/4-18 NPT", "plug", "plug 1/4-18 NPT"},
		{"set screw 1/4-20 x 1/2", "1/4-20 UNC", "set screw 1/4-20 x 1/2", "set screw 1/4-20 x 1/2"}, {"set screw M60", "M6", "set screw M60", "set screw M60 M6"},
		{"dowel pin 4 m6 × 16, pressed in", "", "dowel pin 4 m6 × 16", "dowel pin 4 m6 × 16"},
		{"plugged while it is turned", "M6", "", ""},
		{"left open", "", "", ""},
	} {
		fitted := Fitted(c.note)
		if fitted != c.fitted {
			t.Errorf("%q: %q, want %q", c.note, fitted, c.fitted)
		}
		if got := Ordered(fitted, c.thread); got != c.ordered {
			t.Errorf("%q: %q, want %q", c.note, got, c.ordered)
		}
	}
}

// TestAskedBy: notes that ask for work at a machine, what each says, and notes that do not.
func TestAskedBy(t *testing.T) {
	t.Parallel()
	for note, want := range map[string]Asked{
		"DRILL: two holes 6 at 90°":                    {At: "Drill", Do: "two holes 6 at 90°", Placed: true},
		"MILL: a flat 12 from the edge, for the foot.": {At: "Mill", Do: "a flat 12 from the edge", For: ", for the foot", Placed: true},
		"LATHE: a groove 3 wide.":                      {At: "Lathe", Do: "a groove 3 wide"},
		"BENCH: slots 60 mm apart":                     {At: "Bench", Do: "slots 60 mm apart", Placed: true},
		"BENCH: file 2 in from a corner":               {At: "Bench", Do: "file 2 in from a corner", Placed: true},
	} {
		if got := AskedBy(note); got == nil || *got != want {
			t.Errorf("%q: %+v, want %+v", note, got, want)
		}
	}
	for _, note := range []string{"", "Drill: two holes", "SAW: to length", "DRILL two holes", "by hand, DRILL: two holes"} {
		if got := AskedBy(note); got != nil {
			t.Errorf("%q asks for %+v", note, got)
		}
	}
}

// TestSeatUse: a bearing is named by its number, or only called so; a part of the job may begin with the word.
func TestSeatUse(t *testing.T) {
	t.Parallel()
	for seat, want := range map[string]Use{
		"bearing 30210 cone": ABearing, "Bearing NU 205": ABearing, "bearing": ABearing, "bearings": ABearing, "bearing-housing front spigot": "", "bearing housing": "", "hub on bearing 6205": "",
		"seal 40x62x8": ASeal, "Seal": ASeal, "seal-ring": "", "sealed": "", "": "",
	} {
		if got := SeatUse(seat); got != want {
			t.Errorf("%q: %q, want %q", seat, got, want)
		}
	}
}
