package joint

import (
	"math"
	"testing"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// TestAgrees: of two parts that others have placed, the first 30 behind the second and turned by
// 40°, a joint that says its faces wants them within half a millimetre and the same way round, one
// with a turn within half a degree.
func TestAgrees(t *testing.T) {
	t.Parallel()
	line := parts.Pos{Line: 1}
	said := parts.Joint{Meet: parts.Meeting{Pos: line}}
	turned := parts.Joint{Rotate: parts.Angle{Pos: line}}
	both := parts.Joint{Meet: parts.Meeting{Pos: line}, Rotate: parts.Angle{Pos: line}}
	bolted, round := parts.Joint{Kind: parts.BoltKind, Bolt: &parts.BoltJoint{}}, parts.Joint{OtherWay: true}
	for _, c := range []struct {
		name string
		in   parts.Joint
		rel  placement
		want plan.ProblemKind
		args []float64 // after the part's title
	}{
		{"as it is", both, placement{30, 40, 1}, "", nil},
		{"half a millimetre", said, placement{30.5, 0, 1}, "", nil},
		{"more", said, placement{30.6, 0, 1}, plan.PlacedElsewhere, []float64{0.6}},
		{"before it", said, placement{29.4, 0, 1}, plan.PlacedElsewhere, []float64{0.6}},
		{"bolted", bolted, placement{25, 0, 1}, plan.PlacedElsewhere, []float64{5}},
		{"says nothing", turned, placement{25, 40, 1}, "", nil},
		{"half a degree", turned, placement{30, 40.5, 1}, "", nil},
		{"turned", turned, placement{30, 41, 1}, plan.TurnedElsewhere, []float64{40, 41}},
		{"turned back", both, placement{30, 350, 1}, plan.TurnedElsewhere, []float64{40, 350}},
		{"no turn said", said, placement{30, 90, 1}, "", nil},
		{"round, said", said, placement{30, 40, -1}, plan.TurnedRound, nil},
		{"round, bolted", bolted, placement{30, 40, -1}, plan.TurnedRound, nil},
		{"the other way round", round, placement{30, 40, -1}, plan.TurnedRound, nil},
		{"round, free to be", turned, placement{30, 40, -1}, "", nil},
	} {
		j := &joint{w: words.Writer{Units: parts.Millimetres}, in: &c.in, out: &plan.JointPlan{}}
		j.a.r = &part.Model{Out: &plan.PartPlan{Title: "A"}, Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}}
		j.agrees(c.rel, placedPart{at: placement{30, 40, 1}}, placedPart{at: placement{0, 0, 1}})
		var got plan.Problem
		if len(j.faults) > 0 {
			got = j.faults[0]
		}
		ok := got.Kind == c.want
		for i, mm := range c.args {
			ok = ok && len(got.Args) > i+1 && math.Abs(got.Args[i+1].Value-mm) < 1e-9
		}
		if !ok {
			t.Errorf("%s: %+v, want %s %v", c.name, got, c.want, c.args)
		}
	}
}

// TestFastenersWeigh: by hand, of steel of 7.85 g/cm³. A hexagon of 20 is 346.41 mm², less its thread of 10
// 267.87; 10 high 21.03 g. A shank of 100, 10 − 0.65 · 2 across, is 5944.7 mm³, under a head of 20, 6 high,
// 62.98 g; under a cylinder of 16, 10 high, with a key of 8 half as deep 60.27 g.
func TestFastenersWeigh(t *testing.T) {
	t.Parallel()
	b := &bolts.Bolt{Thread: threads.Thread{MajorMm: 10, PitchMm: 2}, AcrossFlatsMm: 20, HeadHeightMm: 6, NutAcrossFlatsMm: 20, NutHeightMm: 10, SocketHeadDiameterMm: 16, SocketHeadHeightMm: 10, SocketKeyMm: 8}
	for _, c := range []struct {
		what    string
		kg, own float64
	}{
		{"nut", nutKg(b), 0.02103}, {"none", nutKg(nil), 0}, {"hexagon", boltKg(b, &plan.BoltPlan{LengthMm: 100, Head: "hex"}), 0.06298}, {"socket", boltKg(b, &plan.BoltPlan{LengthMm: 100, Head: "socket"}), 0.06027},
	} {
		if math.Abs(c.kg-c.own) > 0.000006 {
			t.Errorf("%s: %.5f kg, want %.5f", c.what, c.kg, c.own)
		}
	}
}

// TestProcesses: each word of a job is its process; none is the one that takes most metal.
func TestProcesses(t *testing.T) {
	t.Parallel()
	for word, want := range map[string]weld.Process{"MMA": weld.Stick, "MIG": weld.MIG, "TIG": weld.TIG, "flux-cored": weld.FluxCored, "metal-cored": weld.MetalCored, "self-shielded": weld.SelfShielded, "MAG": weld.MAG, "": weld.Stick} {
		if got := weldProcesses[word]; got != want {
			t.Errorf("%s: %v, want %v", word, got, want)
		}
	}
}

// The weld metal of all joints is bought by process: 0.07 + 0.11 and 0.02 kg; 0.397 lb and 0.044 lb;
// that of a metal with a filler of its own by itself.
func TestBuyFiller(t *testing.T) {
	t.Parallel()
	var made []*joint
	for _, p := range []*plan.WeldPlan{{Process: "MAG", BuyKg: 0.07}, nil, {Process: "TIG", BuyKg: 0.02}, {Process: "MAG", BuyKg: 0.11}, {Process: "TIG", Metal: "1.4301", BuyKg: 0.05}} {
		made = append(made, &joint{out: &plan.JointPlan{Weld: p}})
	}
	for units, want := range map[parts.Units][]string{parts.Millimetres: {"0.18 kg", "0.02 kg", "0.05 kg"}, parts.Inches: {"0.4 lb", "0.04 lb", "0.11 lb"}} {
		var list buying
		(&shop{w: words.Writer{Units: units}}).buyFiller(made, &list)
		if len(list) != 3 || list[2].Item != "Filler for TIG on 1.4301, to the welding procedure, "+want[2] || list[0].Item != "Filler for MAG, to the welding procedure, "+want[0] || list[1].Item != "Filler for TIG, to the welding procedure, "+want[1] {
			t.Errorf("%q", seq.Map(list, func(r *wanted) string { return r.Item }))
		}
	}
}

// TestChamferAtTheWeld: a tube 360 long in a flange whose bore goes 12 along it. The chamfer of the
// tube's back counts where the flange stands within 3 of chamfer, 5 of leg and half a millimetre of it.
func TestChamferAtTheWeld(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		z0, s float64 // of the flange's front on the tube
		axis  bool
		onB   bool
		end   parts.Face
		want  bool
	}{
		{"flange at the front, chamfer at the back", 7, 1, true, true, parts.Back, false},
		{"chamfer at the front, 7 away", 7, 1, true, true, parts.Front, true},
		{"9 away", 9, 1, true, true, parts.Front, false},
		{"flange at the back", 341, 1, true, true, parts.Back, true},
		{"turned end for end at the back", 353, -1, true, true, parts.Back, true},
		{"turned end for end, further in", 350, -1, true, true, parts.Back, false},
		{"the flange's own edge", 7, 1, true, false, parts.Back, true},
		{"its edge beyond the tube", 360, 1, true, false, parts.Back, false},
		{"no axis", 7, 1, false, true, parts.Back, true},
	} {
		j := &joint{in: &parts.Joint{Weld: &parts.WeldJoint{Size: parts.Length{Mm: 5}}}, axis: c.axis, rel: placement{z0: c.z0, s: c.s}}
		bare := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}}
		j.a, j.b = feature{r: bare, step: &part.Step{ToMm: 12}}, feature{r: bare, step: &part.Step{ToMm: 360}}
		if got := j.reaches(c.onB, c.end, 3); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
