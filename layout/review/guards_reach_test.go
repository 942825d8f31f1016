package review

import (
	"math"
	"testing"

	"centrepop/layout/words"
	"centrepop/parts"
)

// ISO 13857 table 4: how far off an opening is by its width.
func TestStandOff(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		width, length float64
		round         bool
		want          float64
	}{
		{4, 50, false, 2}, {8, 50, false, 20}, {8, 8, false, 15}, {8, 8, true, 5}, {9, 50, false, 80}, {12, 12, true, 80}, {20, 200, false, 120},
		{25, 66, false, 850}, {25, 65, false, 120}, {38, 38, true, 120}, {40, 40, false, 200}, {45, 50, false, 850}, {120, 120, true, 850}, {121, 121, true, math.Inf(1)},
	} {
		if got := standOffMm(c.width, c.length, c.round); got != c.want {
			t.Errorf("%v: %v", c, got)
		}
	}
	// A finger goes through what a hand does not, a hole of a grille as any other.
	r := &reviewer{job: &parts.Job{Units: parts.Millimetres}, w: words.Writer{Units: parts.Millimetres}}
	for wide, who := range map[float64]string{20: "a finger", 20.5: "a hand"} {
		if got := r.tooOpen(wide, "the grille", r.mm(wide), 90, ""); got.What != who+" gets through the grille" || got.Numbers != r.mm(wide)+" open, "+r.mm(90)+" off" {
			t.Errorf("%g: %+v", wide, got)
		}
	}
}

// What a press or a key holds to a shaft turns with it; what a bearing or a plain bush has of it does not, nor what
// stands on that.
func TestTurnsWith(t *testing.T) {
	t.Parallel()
	at := func(name string) parts.JointRef { return parts.JointRef{Part: name, Copy: 1} }
	job := &parts.Job{Joints: []*parts.Joint{
		{Kind: parts.PressKind, Press: &parts.PressJoint{Shaft: at("wheel"), Bore: at("shaft")}},
		{Kind: parts.SlideKind, Slide: &parts.SlideJoint{Hub: at("pulley"), On: at("shaft"), KeptBy: parts.JointRef{Part: "shaft", Pos: parts.Pos{Line: 1}}}},
		{Kind: parts.WeldKind, Weld: &parts.WeldJoint{Part: at("blade"), To: at("wheel")}},
		{Kind: parts.SlideKind, Slide: &parts.SlideJoint{Hub: at("bush"), On: at("shaft")}},
		{Kind: parts.BearingKind, Bearing: &parts.BearingJoint{Cone: at("housing"), Cup: at("shaft")}},
		{Kind: parts.PressKind, Press: &parts.PressJoint{Shaft: at("bush"), Bore: at("plate")}},
	}}
	turns := (&reviewer{job: job}).turnsWith(at("shaft").Instance())
	for part, want := range map[string]bool{"shaft": true, "wheel": true, "pulley": true, "blade": true, "bush": false, "housing": false, "plate": false} {
		if turns[parts.Instance{Part: part, Copy: 1}] != want {
			t.Errorf("%s: %v", part, !want)
		}
	}
}
