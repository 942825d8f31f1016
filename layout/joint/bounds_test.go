package joint

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/bolts"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// TestTurnOf: a pitch of 1.5 is 240° to the millimetre: 0.0125 mm is 3°, 0.021 5.04°, and
// between 0.24° and 0.84° there is no whole degree, so their middle, 0.54°, is said.
func TestTurnOf(t *testing.T) {
	t.Parallel()
	nut := &part.Step{Size: part.Sized{Thread: &threads.Thread{PitchMm: 1.5}}}
	for _, c := range []struct {
		lo, hi float64
		want   string
	}{{0.0125, 0.021, "3° to 5°"}, {0.012, 0.0208, "3° to 4°"}, {0.001, 0.0035, "0.5°"}, {0.0045, 0.008, "1.5°"}, {0.0125, 0.0125, "3° to 3°"}} {
		if got := turnOf(nut, c.lo, c.hi); got != c.want {
			t.Errorf("%v to %v: %s, want %s", c.lo, c.hi, got, c.want)
		}
	}
}

// TestHotAndCold: 0.12 of interference and 0.04 to slip with, on Ø40. Heating by
// 0.16 / (11·10⁻⁶ · 40) = 364 K and cooling by 0.16 / (8.5·10⁻⁶ · 40) = 471 K are both too
// much: with the hub at 250 °C, 230 K warmer, 0.0588 is missing, 173 K of the shaft, so
// −153 °C. Both together are only advised where neither alone will do.
func TestHotAndCold(t *testing.T) {
	t.Parallel()
	member := func(name string, in, out float64) press.Member {
		return press.Member{InsideMm: in, OutsideMm: out, Material: press.Material{Name: name, EMPa: 210000, Nu: 0.3, AlphaPerK: 11e-6, ContractPerK: 8.5e-6, StrengthMPa: 300, MaxHeatC: 250, MinColdC: -195.8}}
	}
	in := press.Joint{Hub: member("C45", 40, 80), Shaft: member("S235", 0, 40), InterferenceMm: 0.12, ClearanceMm: 0.04, RoomC: 20, ShaftC: 20}
	for _, c := range []struct {
		hub, shaft      float64
		hot, cold, both bool
	}{{384, -451, true, true, true}, {384, -150, true, false, false}, {200, -451, false, true, false}, {200, -150, false, false, false}, {250, -195.8, false, false, false}, {250.1, -195.9, true, true, true}} {
		j := &joint{w: words.Writer{Units: parts.Millimetres}, out: &plan.JointPlan{}}
		j.thermalFigures(&plan.PressPlan{HeatHubC: c.hub, CoolShaftC: c.shaft, ClearanceMm: 0.04}, in)
		all := ""
		for _, f := range j.out.Figures {
			all += f.Label + " = " + f.Value + "\n"
		}
		for text, want := range map[string]bool{"over the 250 °C that C45 stands: not by heat alone": c.hot, "under the -196 °C to be had: not by cold alone": c.cold, "or both = hub 250 °C and shaft -153 °C\n": c.both, "or both": c.both, ", clearance 0.04": true} {
			if strings.Contains(all, text) != want {
				t.Errorf("hub %v, shaft %v: %q %v in\n%s", c.hub, c.shaft, text, !want, all)
			}
		}
	}
}

// TestSmallRules: of
// two patterns the shortest distance that one lacks is told; the nut of a seat is the nearest
// thread beyond it, and none that begins before its end.
func TestSmallRules(t *testing.T) {
	t.Parallel()
	at := func(c ...float64) (out []plan.XY) {
		for i := 0; i < len(c); i += 2 {
			out = append(out, plan.XY{XMm: c[i], YMm: c[i+1]})
		}
		return out
	}
	three := at(0, 0, 30, 0, 0, 40) // 30, 40 and 50 apart
	for _, c := range []struct {
		b         []plan.XY
		reach     float64
		mm, other float64
	}{{three, 0, 0, 0}, {at(9, 9, 9, 39, 49, 9), 0, 0, 0}, {at(0, 0, 31, 0, 0, 40), 1, 0, 0}, {at(0, 0, 31, 0, 0, 40), 0.9, 30, 31}, {at(0, 0, 30, 0, 0, 41), 0.5, 40, 41}, {at(0, 0, 30, 0, 30, 40), 0.5, 0, 0}, {at(0, 0, 30, 0, 2, 40), 2, 0, 0}} {
		if mm, other := spacing(three, c.b, c.reach); mm != c.mm || other != c.other {
			t.Errorf("%v within %g: %g and %g, want %g and %g", c.b, c.reach, mm, other, c.mm, c.other)
		}
	}
	if got, want := clocked("it", turnedBy(1.0/3), 10.0/3), (plan.Out{What: "it", Clocked: true, AtDeg: 3.67, RightDeg: 3.33}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	for opening, want := range map[float64]string{0: "mitred", 0.5: "square", 400: "square"} {
		if got := (&ring{openingMm: [2]float64{opening, 300}}).word("mitred", "square"); got != want {
			t.Errorf("an opening of %g is of a %s frame", opening, got)
		}
	}
	thread := func(from, to float64, inside bool) part.Step {
		return part.Step{FromMm: from, ToMm: to, Inside: inside, Size: part.Sized{Thread: &threads.Thread{}}}
	}
	for _, c := range []struct {
		name        string
		steps       []part.Step
		front, back float64 // where the thread begins that is nearest before and beyond; −1 for none
	}{
		{"one on each side", []part.Step{thread(0, 20, false), thread(60, 80, false)}, 0, 60},
		{"the nearer of two", []part.Step{thread(0, 5, false), thread(10, 20, false), thread(75, 80, false), thread(60, 70, false)}, 10, 60},
		{"beside it", []part.Step{thread(20, 30, false), thread(50, 60, false)}, 20, 50},
		{"begins before its end", []part.Step{thread(20, 30.5, false), thread(49.5, 60, false)}, -1, -1},
		{"in a bore", []part.Step{thread(0, 20, true), thread(60, 80, true)}, -1, -1},
		{"no thread", []part.Step{{FromMm: 0, ToMm: 20}, {FromMm: 60, ToMm: 80}}, -1, -1},
	} {
		r := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Steps: c.steps}}}}
		f := feature{r: r, step: &part.Step{FromMm: 30, ToMm: 50}}
		from := func(s *part.Step) float64 {
			if s == nil {
				return -1
			}
			return s.FromMm
		}
		if front, back := from(threadBeyond(f, -1)), from(threadBeyond(f, 1)); front != c.front || back != c.back {
			t.Errorf("%s: %g and %g, want %g and %g", c.name, front, back, c.front, c.back)
		}
	}
}

// TestMayGall: stainless screws seize in a stainless thread, of a nut or tapped, and in no other;
// of two nuts a stud has one where it is tapped in.
func TestMayGall(t *testing.T) {
	t.Parallel()
	group := func(tapped bool, metal *material.Material) feature {
		g := &part.Group{Hole: &parts.HoleGroup{}}
		if tapped {
			g.Hole.Size.Make, g.Size.Thread = parts.TappedHole, &threads.Thread{}
		}
		f := stepped(parts.Part{}, part.Step{})
		f.r.Material, f.group, f.step = metal, g, nil
		return f
	}
	stainless, steel := &material.Material{Kind: material.AusteniticStainless}, &material.Material{Kind: material.MildSteel}
	for _, c := range []struct {
		name   string
		screws material.Kind
		in     feature
		stud   string
		nut    bool
		gall   bool
		nuts   int
	}{
		{"in a stainless thread", stainless.Kind, group(true, stainless), "", false, true, 0}, {"in a steel one", stainless.Kind, group(true, steel), "", false, false, 0}, {"in a metal not known", stainless.Kind, group(true, nil), "", false, false, 0},
		{"steel in stainless", steel.Kind, group(true, stainless), "", false, false, 0}, {"through a stainless plate", stainless.Kind, group(false, stainless), "", false, false, 0}, {"with a nut", stainless.Kind, group(false, steel), "", true, true, 1},
		{"a steel nut", steel.Kind, group(false, stainless), "", true, false, 1}, {"a stud with two nuts", stainless.Kind, group(false, steel), "rod", false, true, 2}, {"a stud tapped in", stainless.Kind, group(true, steel), "rod", false, true, 1},
	} {
		j := &joint{in: &parts.Joint{Kind: parts.BoltKind, Bolt: &parts.BoltJoint{Nut: c.nut, Stud: parts.Text{Value: c.stud}}}, a: group(false, nil), b: c.in}
		if got, n := j.mayGall(c.screws), j.nuts(); got != c.gall || n != c.nuts {
			t.Errorf("%s: %v, %d nuts", c.name, got, n)
		}
	}
}

// stepped is a feature of a part whose steps lie on one axis: the first of them.
func stepped(in parts.Part, steps ...part.Step) feature {
	r := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &in, Steps: steps}}}}
	return feature{r: r, step: &r.Steps[0]}
}

func cylinder(from, to, mm float64, inside bool) part.Step {
	return part.Step{FromMm: from, ToMm: to, Inside: inside, Size: part.Sized{NominalMm: mm}}
}

// TestShoulder: a ring stands against the neighbour that is larger outside, smaller inside,
// and touches its step to a micrometre.
func TestShoulder(t *testing.T) {
	t.Parallel()
	seat, bore := cylinder(20, 50, 40, false), cylinder(20, 50, 40, true)
	for _, c := range []struct {
		name        string
		steps       []part.Step
		front, back float64 // diameter of the shoulder before and behind; 0 for none
	}{
		{"larger on both sides", []part.Step{seat, cylinder(0, 20, 50, false), cylinder(50, 80, 60, false)}, 50, 60},
		{"smaller behind", []part.Step{seat, cylinder(0, 20, 50, false), cylinder(50, 80, 30, false)}, 50, 0},
		{"as large", []part.Step{seat, cylinder(0, 20, 40, false), cylinder(50, 80, 40.001, false)}, 0, 40.001},
		{"apart", []part.Step{seat, cylinder(0, 19.99, 50, false), cylinder(50.01, 80, 60, false)}, 0, 0},
		{"over a part of it", []part.Step{seat, cylinder(0, 50, 50, false), cylinder(20, 80, 60, false)}, 0, 0},
		{"in the bore", []part.Step{seat, cylinder(0, 20, 50, true), cylinder(50, 80, 60, true)}, 0, 0},
		{"a bore, smaller on both sides", []part.Step{bore, cylinder(0, 20, 30, true), cylinder(50, 80, 20, true)}, 30, 20},
		{"a bore, larger before", []part.Step{bore, cylinder(0, 20, 50, true), cylinder(50, 80, 39.999, true)}, 0, 39.999},
	} {
		mm := func(s *part.Step) float64 {
			if s == nil {
				return 0
			}
			return s.Size.NominalMm
		}
		f := stepped(parts.Part{}, c.steps...)
		if front, back := mm(shoulder(f, -1)), mm(shoulder(f, 1)); front != c.front || back != c.back {
			t.Errorf("%s: %g and %g, want %g and %g", c.name, front, back, c.front, c.back)
		}
	}
}

// TestMember: of a hub the smallest outside round its bore counts, of a shaft the largest bore
// in its seat; what only touches the seat's ends does not.
func TestMember(t *testing.T) {
	t.Parallel()
	steel := parts.Part{Material: parts.Text{Value: "S235"}, Stock: parts.Stock{Form: "round", Size: parts.Length{Mm: 30}}}
	bore, seat := cylinder(20, 50, 40, true), cylinder(20, 50, 40, false)
	for _, c := range []struct {
		name            string
		steps           []part.Step
		inside, outside float64
	}{
		{"a hub", []part.Step{bore, cylinder(0, 80, 90, false)}, 40, 90},
		{"with a rim over half of it", []part.Step{bore, cylinder(0, 30, 80, false), cylinder(30, 80, 120, false)}, 40, 80},
		{"with necks beside it", []part.Step{bore, cylinder(0, 20, 60, false), cylinder(20, 50, 90, false), cylinder(50, 80, 50, false)}, 40, 90},
		{"with necks over its ends", []part.Step{bore, cylinder(0, 20.1, 60, false), cylinder(20.1, 49.9, 90, false), cylinder(49.9, 80, 50, false)}, 40, 50},
		{"a solid shaft", []part.Step{seat}, 0, 40},
		{"a hollow one", []part.Step{seat, cylinder(0, 30, 12, true), cylinder(30, 80, 8, true)}, 12, 40},
		{"hollow beside it", []part.Step{seat, cylinder(0, 20, 12, true), cylinder(50, 80, 8, true)}, 0, 40},
		{"hollow at its ends", []part.Step{seat, cylinder(0, 20.1, 12, true), cylinder(49.9, 80, 14, true)}, 14, 40},
	} {
		m, err := stepped(steel, c.steps...).member(40)
		if err != nil || m.InsideMm != c.inside || m.OutsideMm != c.outside {
			t.Errorf("%s: %g to %g, %v, want %g to %g", c.name, m.InsideMm, m.OutsideMm, err, c.inside, c.outside)
		}
	}
}

// TestFaces: what is bolted on looks the same way as what it is bolted to unless it goes the
// other way round; what a joint says goes before that, and faces that are level turn it again.
func TestFaces(t *testing.T) {
	t.Parallel()
	pos := parts.Pos{Line: 1}
	at := func(first, second parts.Face, level bool) parts.Meeting {
		return parts.Meeting{Pos: pos, First: first, Second: second, Level: level}
	}
	for _, c := range []struct {
		name     string
		meet     parts.Meeting
		bolted   parts.Face // of what is bolted into; "" without a bolt
		otherWay bool
		want     [2]parts.Face
		facing   float64
	}{
		{"on the front", parts.Meeting{}, parts.Front, false, [2]parts.Face{parts.Back, parts.Front}, 1},
		{"on the back", parts.Meeting{}, parts.Back, false, [2]parts.Face{parts.Front, parts.Back}, 1},
		{"the other way round", parts.Meeting{}, parts.Front, true, [2]parts.Face{parts.Front, parts.Front}, -1},
		{"as said", at(parts.Front, parts.Front, false), parts.Back, false, [2]parts.Face{parts.Front, parts.Front}, -1},
		{"level", at(parts.Front, parts.Front, true), parts.Back, false, [2]parts.Face{parts.Front, parts.Front}, 1},
		{"level, back and front", at(parts.Back, parts.Front, true), "", false, [2]parts.Face{parts.Back, parts.Front}, -1},
	} {
		j := &joint{in: &parts.Joint{Pos: pos, Meet: c.meet, OtherWay: c.otherWay}}
		if c.bolted != "" {
			j.in.Kind, j.in.Bolt, j.b.group = parts.BoltKind, &parts.BoltJoint{}, &part.Group{FaceGroup: parts.FaceGroup{Face: c.bolted}}
		}
		if m := j.meeting(); m.First != c.want[0] || m.Second != c.want[1] || j.facing() != c.facing {
			t.Errorf("%s: %s on %s, facing %g, want %v, %g", c.name, m.First, m.Second, j.facing(), c.want, c.facing)
		}
	}
}

// TestPressCautions: what is too hot or too cold is a problem of the part that it happens to; what a
// bore inside the joint closes by is a figure, and a caution where that bore has a size to keep.
func TestPressCautions(t *testing.T) {
	t.Parallel()
	seat, bore := cylinder(20, 50, 40, false), cylinder(20, 50, 40, true)
	fitted, threaded := cylinder(0, 25, 10, true), cylinder(45, 80, 10, true)
	fitted.Size.Limited, fitted.Size.Class = true, "H7"
	threaded.Size.Thread = &threads.Thread{}
	beyond := []part.Step{fitted, threaded}
	beyond[0].ToMm, beyond[1].FromMm = 20, 50
	for _, c := range []struct {
		code     press.Code
		inside   []part.Step
		problem  string
		figures  int
		cautions int
	}{
		{press.BoreCloses, nil, "", 1, 0}, {press.BoreCloses, []part.Step{fitted}, "", 1, 1}, {press.BoreCloses, []part.Step{threaded}, "", 1, 1}, {press.BoreCloses, beyond, "", 1, 0}, {press.BoreCloses, []part.Step{cylinder(0, 80, 10, true)}, "", 1, 0},
		{press.TooHot, nil, "press-too-hot Hub 300 C45 250", 0, 1}, {press.TooCold, nil, "press-too-cold Pin 300 250 C45", 0, 1},
	} {
		a, b := stepped(parts.Part{}, append([]part.Step{seat}, c.inside...)...), stepped(parts.Part{}, bore)
		a.r.Out, b.r.Out = &plan.PartPlan{Title: "Pin"}, &plan.PartPlan{Title: "Hub"}
		j := &joint{in: &parts.Joint{}, a: a, b: b, w: words.Writer{Units: parts.Millimetres}, out: &plan.JointPlan{}}
		(&making{assembly: &assembly{shop: &shop{}}}).pressCautions(j, []press.Caution{{Code: c.code, C: 300, LimitC: 250, Material: "C45", Mm: 0.01}})
		got := ""
		for _, p := range j.out.Problems {
			got += string(p.Kind)
			for _, a := range p.Args {
				if a.Text == "" {
					a.Text = words.Trim(a.Value, 1)
				}
				got += " " + a.Text
			}
		}
		if got != c.problem || len(j.out.Figures) != c.figures || len(j.out.Cautions) != c.cautions {
			t.Errorf("%v %v: %q, %v, %v", c.code, c.inside, got, j.out.Figures, j.out.Cautions)
		}
	}
}

// TestPull: of the threads inside a shaft the one nearest to its end takes the rod, as deep as it
// begins; a tapped hole in the middle of that face goes before.
func TestPull(t *testing.T) {
	t.Parallel()
	inside := func(from, to float64, name string) part.Step {
		s := cylinder(from, to, 16, true)
		s.Name, s.Size.Thread = name, &threads.Thread{Designation: name}
		return s
	}
	tapped := func(face parts.Face, at ...plan.XY) part.Group {
		return part.Group{FaceGroup: parts.FaceGroup{Face: face}, Points: at, Hole: &parts.HoleGroup{Size: parts.HoleSize{Make: parts.TappedHole}}, Size: part.Made{Thread: &threads.Thread{Designation: "hole"}}, Group: &plan.Group{Name: "hole"}}
	}
	for _, c := range []struct {
		name   string
		steps  []part.Step
		groups []part.Group
		dir    float64
		want   string
		deep   float64
	}{
		{"none", []part.Step{cylinder(0, 30, 16, true)}, nil, -1, "", 0},
		{"one", []part.Step{inside(4, 30, "M16")}, nil, -1, "M16", 4},
		{"two", []part.Step{inside(40, 60, "M12"), inside(4, 30, "M16"), inside(60, 70, "M10")}, nil, -1, "M16", 4},
		{"from behind", []part.Step{inside(4, 30, "M16"), inside(70, 92, "M12"), inside(40, 60, "M10")}, nil, 1, "M12", 8},
		{"a hole", []part.Step{inside(4, 30, "M16")}, []part.Group{tapped(parts.Front, plan.XY{})}, -1, "hole", 0},
		{"a hole in the back", []part.Step{inside(4, 30, "M16")}, []part.Group{tapped(parts.Back, plan.XY{})}, -1, "M16", 4},
		{"from the back", nil, []part.Group{tapped(parts.Front, plan.XY{}), tapped(parts.Back, plan.XY{})}, 1, "hole", 0},
		{"in the front alone", nil, []part.Group{tapped(parts.Front, plan.XY{})}, 1, "", 0},
		{"beside the middle", nil, []part.Group{tapped(parts.Front, plan.XY{YMm: 1}), tapped(parts.Front, plan.XY{}, plan.XY{})}, -1, "", 0},
	} {
		f := feature{r: worked("shaft", 100)}
		f.r.Steps, f.r.Groups = append(f.r.Steps, c.steps...), c.groups
		if got, _, deep, ok := pull(f, c.dir); got.Designation != c.want || deep != c.deep || ok != (c.want != "") {
			t.Errorf("%s: %s at %g, %v", c.name, got.Designation, deep, ok)
		}
	}
}

// TestHollow: the figure of a press says that its shaft is solid, or how large its bore is.
func TestHollow(t *testing.T) {
	t.Parallel()
	w := words.Writer{Units: parts.Millimetres}
	for inside, want := range map[float64]string{0: ", solid shaft", 1: ", shaft bore Ø1", 12.5: ", shaft bore Ø12.5"} {
		if got := hollow(w, press.Member{InsideMm: inside}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestBarsMeet: two mitred ends that are welded are a corner; a square end stands on the top or the bottom
// of a bar as deep, its ends square too, where its place puts both fronts level.
func TestBarsMeet(t *testing.T) {
	t.Parallel()
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Pos: parts.Pos{Line: 1}} }
	bar := func(end string) feature {
		f := stepped(parts.Part{Bar: &parts.Bar{Depth: parts.Length{Mm: 50}, Width: parts.Length{Mm: 40}, Length: parts.Length{Mm: 500}}}, part.Step{})
		f.ref.Feature = end
		return f
	}
	mitred := parts.BarEnd{Mitre: parts.Angle{Deg: 45, Pos: parts.Pos{Line: 1}}}
	for _, c := range []struct {
		name           string
		change         func(t *joint, end, on *parts.Bar)
		corner, stands bool
		along          float64
	}{
		{"square", func(t *joint, end, on *parts.Bar) {}, false, true, 30},
		{"the other end", func(t *joint, end, on *parts.Bar) { t.a.ref.Feature, t.in.Place.With = "right", "right" }, false, true, 30},
		{"on the bottom", func(t *joint, end, on *parts.Bar) {
			t.b.ref.Feature, t.in.Place.On, t.in.Place.Looks = "bottom", "bottom", "up"
		}, false, true, 30},
		{"on the front", func(t *joint, end, on *parts.Bar) { t.b.ref.Feature, t.in.Place.On = "front", "front" }, false, false, 30},
		{"looking up", func(t *joint, end, on *parts.Bar) { t.in.Place.Looks = "up" }, false, false, 30},
		{"with another face", func(t *joint, end, on *parts.Bar) { t.in.Place.With = "right" }, false, false, 30},
		{"on another face", func(t *joint, end, on *parts.Bar) { t.in.Place.On = "bottom" }, false, false, 30},
		{"with a gap", func(t *joint, end, on *parts.Bar) { t.in.Place.Gap.Mm = 1 }, false, false, 30},
		{"off level", func(t *joint, end, on *parts.Bar) { t.in.Place.At.Y.Mm = 1 }, false, false, 30},
		{"from the left", func(t *joint, end, on *parts.Bar) { t.in.Place.At, t.in.Place.FromLeft = nil, mm(100) }, false, false, -130},
		{"and the bottom", func(t *joint, end, on *parts.Bar) {
			t.in.Place.At, t.in.Place.FromLeft, t.in.Place.FromBottom = nil, mm(100), mm(0)
		}, false, true, -130},
		{"from the right and the top", func(t *joint, end, on *parts.Bar) {
			t.in.Place.At, t.in.Place.FromRight, t.in.Place.FromTop = nil, mm(100), mm(0)
		}, false, true, 130},
		{"over the bottom", func(t *joint, end, on *parts.Bar) { t.in.Place.At, t.in.Place.FromBottom = nil, mm(1) }, false, false, 0},
		{"under the top", func(t *joint, end, on *parts.Bar) { t.in.Place.At, t.in.Place.FromTop = nil, mm(1) }, false, false, 0},
		{"nobody says where", func(t *joint, end, on *parts.Bar) { t.in.Place = nil }, false, true, 0},
		{"the other way round, nobody says where", func(t *joint, end, on *parts.Bar) { t.in.Place, t.a, t.b = nil, t.b, t.a }, false, true, 0},
		{"the bar laid on the end", func(t *joint, end, on *parts.Bar) {
			t.a, t.b, t.in.Place = t.b, t.a, &parts.Place{With: "top", On: "left", Looks: "right", At: &parts.Point{Y: mm(30)}}
		}, false, true, 0},
		{"laid on it by an edge", func(t *joint, end, on *parts.Bar) {
			t.a, t.b, t.in.Place = t.b, t.a, &parts.Place{With: "top", On: "left", Looks: "right", FromRight: mm(0), FromTop: mm(5)}
		}, false, true, 0},
		{"laid on it the other way", func(t *joint, end, on *parts.Bar) {
			t.a, t.b, t.in.Place = t.b, t.a, &parts.Place{With: "top", On: "left", Looks: "left", At: &parts.Point{Y: mm(30)}}
		}, false, false, 0},
		{"laid on it off level", func(t *joint, end, on *parts.Bar) {
			t.a, t.b, t.in.Place = t.b, t.a, &parts.Place{With: "top", On: "left", Looks: "right", At: &parts.Point{X: mm(1)}}
		}, false, false, 0},
		{"less deep", func(t *joint, end, on *parts.Bar) { on.Depth.Mm = 40 }, false, true, 30},
		{"less deep, laid on the end", func(t *joint, end, on *parts.Bar) {
			t.a, t.b, t.in.Place, on.Depth.Mm = t.b, t.a, &parts.Place{With: "top", On: "left", Looks: "right", At: &parts.Point{Y: mm(30)}}, 40
		}, false, false, 0},
		{"bolted", func(t *joint, end, on *parts.Bar) { t.in.Kind = parts.BoltKind }, false, false, 30},
		{"mitred", func(t *joint, end, on *parts.Bar) { end.Left = mitred }, false, false, 30},
		{"on a mitred one", func(t *joint, end, on *parts.Bar) { on.Right = mitred }, false, false, 30},
		{"on a coped one", func(t *joint, end, on *parts.Bar) { on.Left.Round = mm(60) }, false, false, 30},
		{"coped", func(t *joint, end, on *parts.Bar) { end.Left.Onto.Part = "drum" }, false, false, 30},
		{"its other end mitred", func(t *joint, end, on *parts.Bar) { end.Right = mitred }, false, true, 30},
		{"two mitres", func(t *joint, end, on *parts.Bar) { t.b.ref.Feature, end.Left, on.Right = "right", mitred, mitred }, true, false, 30},
		{"two mitres, not welded", func(t *joint, end, on *parts.Bar) {
			t.in.Kind, t.b.ref.Feature, end.Left, on.Right = parts.BoltKind, "right", mitred, mitred
		}, false, false, 30},
	} {
		j := &joint{a: bar("left"), b: bar("top"), in: &parts.Joint{Kind: parts.WeldKind, Weld: &parts.WeldJoint{}, Place: &parts.Place{With: "left", On: "top", Looks: "down", At: &parts.Point{X: mm(30)}}}}
		c.change(j, j.a.r.Part.Bar, j.b.r.Part.Bar)
		end, on, ok := j.stands()
		if along, _ := j.alongMm(end, on); j.corner() != c.corner || ok != c.stands || along != c.along {
			t.Errorf("%s: a corner %v, stands %v, %g along", c.name, j.corner(), ok, along)
		}
	}
}

// TestHeavyLoose: a step that lifts nothing else names the heaviest thing it puts in, over what a hand lifts.
func TestHeavyLoose(t *testing.T) {
	t.Parallel()
	loose := func(name, after string, kg float64) parts.Loose {
		return parts.Loose{Item: parts.Text{Value: name}, After: parts.Text{Value: after}, MassKg: kg}
	}
	for _, c := range []struct {
		name  string
		list  []parts.Loose
		lifts string // already
		want  string
	}{
		{"nothing", nil, "", ""}, {"what a hand lifts", []parts.Loose{loose("chain", "here", plan.LiftKg)}, "", ""}, {"more", []parts.Loose{loose("chain", "here", plan.LiftKg+0.1)}, "", "Chain"},
		{"later", []parts.Loose{loose("chain", "there", 90)}, "", ""}, {"the heaviest", []parts.Loose{loose("chain", "here", 40), loose("motor", "here", 60), loose("gear", "here", 50)}, "", "Motor"}, {"as heavy", []parts.Loose{loose("chain", "here", 40), loose("motor", "here", 40)}, "", "Chain"},
		{"beside a side of its joint", []parts.Loose{loose("motor", "here", 60)}, "Drum", "Drum"},
	} {
		j := &making{assembly: standing()}
		j.job.Loose = c.list
		now := &joint{in: &parts.Joint{Name: parts.Text{Value: "here"}}, out: &plan.JointPlan{}}
		if c.lifts != "" {
			now.out.Lift = &plan.Lift{What: c.lifts}
		}
		j.heavyLoose(now)
		got := ""
		if l := now.out.Lift; l != nil {
			got = l.What
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	for mm, want := range map[float64]int{40: 0, 40.09: 0, 40.11: 1, 60: 1} {
		if got := between([]part.Step{cylinder(0, 1, 40, false)}, []part.Step{cylinder(0, 1, mm, false)}); len(got) != want || want > 0 && got[0] != (20+mm/2)/2 {
			t.Errorf("between 40 and %g: %v", mm, got)
		}
	}
}

// TestJigRegister: a jig for holes of 10 on a circle of 80 is set on a spigot under 70 before a flange that
// takes all of them, 90, or on a bore under 70 that begins at their face; both with limits of their own.
func TestJigRegister(t *testing.T) {
	t.Parallel()
	step := func(name string, from, to, mm float64, inside, fitted bool) part.Step {
		s := cylinder(from, to, mm, inside)
		s.Name, s.Size.Limited = name, fitted
		return s
	}
	spigot := func(mm float64, fitted bool) part.Step { return step("spigot", 0, 10, mm, false, fitted) }
	flange := func(mm float64) part.Step { return step("flange", 10, 30, mm, false, false) }
	plate := step("plate", 0, 30, 100, false, false)
	bore := func(from, mm float64, fitted bool) part.Step { return step("bore", from, 30, mm, true, fitted) }
	pressed := bore(0, 60, false)
	pressed.Size.Press.Part = "shaft"
	for _, c := range []struct {
		name  string
		face  parts.Face
		steps []part.Step
		want  string
	}{
		{"a spigot", parts.Front, []part.Step{spigot(60, true), flange(90)}, "spigot"}, {"without limits", parts.Front, []part.Step{spigot(60, false), flange(90)}, ""}, {"as wide as the holes", parts.Front, []part.Step{spigot(70, true), flange(90)}, ""}, {"just inside", parts.Front, []part.Step{spigot(69.9, true), flange(90)}, "spigot"},
		{"before too small a flange", parts.Front, []part.Step{spigot(60, true), flange(89.9)}, ""}, {"and a bore that it carries", parts.Front, []part.Step{spigot(60, true), flange(90), bore(0, 40, true)}, "spigot"}, {"and a bore, no limits", parts.Front, []part.Step{spigot(60, false), flange(90), bore(0, 40, true)}, ""},
		{"from the back", parts.Back, []part.Step{step("flange", 0, 20, 90, false, false), step("spigot", 20, 30, 60, false, true)}, "spigot"}, {"the wrong side of it", parts.Front, []part.Step{step("flange", 0, 20, 90, false, false), step("spigot", 20, 30, 60, false, true)}, ""},
		{"a bore", parts.Front, []part.Step{plate, bore(0, 60, true)}, "bore"}, {"without limits", parts.Front, []part.Step{plate, bore(0, 60, false)}, ""}, {"pressed", parts.Front, []part.Step{plate, pressed}, "bore"}, {"as wide as the holes", parts.Front, []part.Step{plate, bore(0, 70, true)}, ""}, {"just inside", parts.Front, []part.Step{plate, bore(0, 69.9, true)}, "bore"},
		{"that begins deeper", parts.Front, []part.Step{plate, bore(1, 60, true)}, ""}, {"no bore", parts.Front, []part.Step{plate}, ""},
	} {
		r := stepped(parts.Part{Profile: &parts.Profile{}}, c.steps...).r
		d := drilled{r: r, m: &part.Group{Group: &plan.Group{DrillMm: 10}}, face: c.face, at: []plan.XY{{XMm: 40}, {YMm: 40}, {XMm: -40}}}
		got := ""
		if s := d.register(); s != nil {
			got = s.Name
		}
		if got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.name, c.face, got, c.want)
		}
	}
}

// TestUpToAMillimetre: a jig is a drill and a half thick, and 10 at the least; a sleeve of 235 MPa round a bolt of 20 in a bore of 20.5 carries 50 kN
// on 213 mm², so is 26.3 outside. Both are made in whole millimetres, or in sixteenths of an inch.
func TestUpToAMillimetre(t *testing.T) {
	t.Parallel()
	thick := func(units parts.Units, drill float64) float64 {
		return (&shop{job: &parts.Job{Units: units}, w: words.Writer{Units: units}}).jigMm(jig{first: drilled{m: &part.Group{Group: &plan.Group{DrillMm: drill}}}})
	}
	sleeve := func(n float64) float64 {
		return (&shop{job: &parts.Job{}, w: words.Writer{Units: parts.Millimetres}}).sleeveMm(&joint{out: &plan.JointPlan{Bolt: &plan.BoltPlan{PreloadN: n}}}, 20.5)
	}
	for _, c := range [][2]float64{{thick(parts.Millimetres, 6), 10}, {thick(parts.Millimetres, 6.7), 11}, {thick(parts.Millimetres, 11), 17}, {thick(parts.Inches, 11), 11 * 25.4 / 16}, {sleeve(50000), 27}, {sleeve(60000), 28}} {
		if math.Abs(c[0]-c[1]) > 1e-6 {
			t.Errorf("%g, want %g", c[0], c[1])
		}
	}
}

// TestClocks: what has a clock angle: TOP, a keyway, what goes in from the side, one or all of it, and
// holes, seen from the front, but for one on the axis.
func TestClocks(t *testing.T) {
	t.Parallel()
	at := []plan.XY{{YMm: 10}, {XMm: 10}, {}}
	radial := &part.Radial{Rows: []plan.RadialRow{{ClockDeg: 30}, {ClockDeg: 120}}}
	keyway := &part.Keyway{Row: plan.KeywayRow{ClockDeg: 45}}
	for _, c := range []struct {
		name string
		f    feature
		want []float64
	}{
		{"TOP", feature{ref: parts.JointRef{Feature: "top"}}, []float64{0}}, {"a step", feature{ref: parts.JointRef{Feature: "seat"}, step: &part.Step{}}, nil}, {"a keyway", feature{keyway: keyway}, []float64{45}},
		{"from the side", feature{radial: radial}, []float64{30, 120}}, {"the first", feature{radial: radial, nth: 1}, []float64{30}}, {"the second", feature{radial: radial, nth: 2}, []float64{120}},
		{"holes", feature{group: &part.Group{FaceGroup: parts.FaceGroup{Face: parts.Front}, Points: at}}, []float64{0, 90}}, {"in the back", feature{group: &part.Group{FaceGroup: parts.FaceGroup{Face: parts.Back}, Points: at}}, []float64{0, 270}},
	} {
		if got := c.f.clocks(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestAtHome: a metal welded to its own kind with its own filler: stainless by all but a self-shielded
// wire, aluminium under argon alone (common practice, no source).
func TestAtHome(t *testing.T) {
	t.Parallel()
	stainless, aluminium, mild := material.AusteniticStainless, material.AluminiumAlloy, material.MildSteel
	for _, c := range []struct {
		a, b    material.Kind
		process string
		want    bool
	}{
		{stainless, stainless, "TIG", true}, {stainless, stainless, "MMA", true}, {stainless, stainless, "", true}, {stainless, stainless, "self-shielded", false}, {stainless, mild, "TIG", false},
		{aluminium, aluminium, "TIG", true}, {aluminium, aluminium, "MIG", true}, {aluminium, aluminium, "MAG", false}, {aluminium, aluminium, "MMA", false}, {aluminium, stainless, "TIG", false}, {mild, mild, "TIG", false},
	} {
		end := func(k material.Kind) feature {
			f := stepped(parts.Part{}, part.Step{})
			f.r.Material = &material.Material{Kind: k}
			return f
		}
		j := &joint{in: &parts.Joint{Kind: parts.WeldKind, Weld: &parts.WeldJoint{Process: c.process}}, a: end(c.a), b: end(c.b)}
		if got := j.atHome(); got != c.want {
			t.Errorf("%v to %v by %q: %v", c.a, c.b, c.process, got)
		}
	}
}

// TestInterference: a fit of the joint goes before the drawings, but is not true of a tube as bought; a
// bore turned to what it meets takes 0.01 to 0.03. ISO 286-2: 40 H7 is 0 to 25, p6 26 to 42.
func TestInterference(t *testing.T) {
	t.Parallel()
	limits := func(lo, hi float64) part.Sized {
		return part.Sized{NominalMm: 40, MinMm: lo, MaxMm: hi, Limited: true}
	}
	free, tube := part.Sized{NominalMm: 40, MinMm: 40, MaxMm: 40}, parts.Tube
	for _, c := range []struct {
		name       string
		pin, hub   part.Sized
		kinds      [2]parts.Kind
		fit        string
		lo, hi     float64
		bad, cured string // which is refused, and what would do
	}{
		{"a fit", free, free, [2]parts.Kind{}, "H7/p6", 0.001, 0.042, "", ""}, {"a fit, and limits", limits(40.1, 40.2), limits(40, 40.1), [2]parts.Kind{}, "H7/p6", 0.001, 0.042, "", ""}, {"no fit at all", free, free, [2]parts.Kind{}, "H7/q99", 0, 0, "fit", ""},
		{"limits", limits(40.02, 40.036), limits(40, 40.025), [2]parts.Kind{}, "", -0.005, 0.036, "", ""}, {"turned to it", free, part.Sized{NominalMm: 40, Class: "light press", Press: parts.Ref{Part: "pin"}}, [2]parts.Kind{}, "", 0.01, 0.03, "", ""},
		{"a millimetre apart", free, part.Sized{NominalMm: 41}, [2]parts.Kind{}, "H7/p6", 0.001, 0.042, "", ""}, {"more", free, part.Sized{NominalMm: 41.01}, [2]parts.Kind{}, "H7/p6", 0, 0, "sizes", ""}, {"less", part.Sized{NominalMm: 41.01}, free, [2]parts.Kind{}, "H7/p6", 0, 0, "sizes", ""},
		{"no limits", free, free, [2]parts.Kind{}, "", 0, 0, "pin", "fit: H7/p6"}, {"none on the hub", limits(40, 41), free, [2]parts.Kind{}, "", 0, 0, "hub", "fit: H7/p6"}, {"none on the pin", free, limits(40, 41), [2]parts.Kind{}, "", 0, 0, "pin", "fit: H7/p6"},
		{"a tube goes in", free, free, [2]parts.Kind{tube, ""}, "H7/p6", 0, 0, "pin", "fit: {light-press: pin.seat}"}, {"into a tube", free, free, [2]parts.Kind{"", tube}, "H7/p6", 0, 0, "hub", "tube stock"}, {"into a tube that is turned", free, limits(40, 41), [2]parts.Kind{"", tube}, "H7/p6", 0.001, 0.042, "", ""},
	} {
		end := func(name string, kind parts.Kind, size part.Sized, inside bool) feature {
			f := stepped(parts.Part{Kind: kind}, part.Step{Name: "seat", Inside: inside, Size: size})
			f.ref, f.r.Out = parts.JointRef{Part: name, Feature: "seat", Copy: 1}, &plan.PartPlan{Title: name}
			return f
		}
		j := &joint{in: &parts.Joint{Kind: parts.PressKind, Press: &parts.PressJoint{Fit: parts.Text{Value: c.fit}}}, a: end("pin", c.kinds[0], c.pin, false), b: end("hub", c.kinds[1], c.hub, true), out: &plan.JointPlan{}}
		lo, hi, _, ok := j.interference()
		if lo != c.lo || hi != c.hi || ok != (c.bad == "") {
			t.Errorf("%s: %g to %g, %v", c.name, lo, hi, ok)
		}
		text := ""
		for _, f := range j.faults {
			text = string(f.Kind) + ": " + f.Args[0].Text + "; " + f.Args[1].Text
		}
		if (text != "") != (c.bad != "") || !strings.Contains(text, c.bad) || !strings.Contains(text, c.cured) {
			t.Errorf("%s: %q", c.name, text)
		}
	}
}

// TestBoughtTube: the outside of a tube as bought has the limits of its standard; where none is known it is
// measured.
func TestBoughtTube(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		kind   parts.Kind
		metal  string
		inside bool
		says   string
	}{{parts.Tube, "S235", false, "is as bought, ±"}, {parts.Tube, "oak", false, "No tolerance of tube as bought is known"}, {parts.Tube, "S235", true, ""}, {parts.Shaft, "S235", false, ""}, {parts.Tube, "", false, ""}} {
		f := stepped(parts.Part{Kind: c.kind}, cylinder(0, 100, 60.3, c.inside))
		if f.r.Out = (&plan.PartPlan{Title: "tube"}); c.metal != "" {
			f.r.Material = &material.Material{Name: c.metal}
		}
		j := &joint{in: &parts.Joint{}, a: f, w: words.Writer{Units: parts.Millimetres}, out: &plan.JointPlan{}}
		j.boughtTube()
		if text := strings.Join(j.out.Cautions, " "); !strings.Contains(text, c.says) || (text == "") != (c.says == "") {
			t.Errorf("%+v: %q", c, text)
		}
	}
}

// TestCuts: what a chamfer of 2 on its edges, a groove in it and an undercut of 3 take of a seat from 20 to 50;
// what is at another step or in a face takes none. An undercut lies where the shoulder is.
func TestCuts(t *testing.T) {
	t.Parallel()
	groove := func(in string, face parts.Face) part.Groove {
		return part.Groove{Row: plan.GrooveRow{In: in, Face: face, FromMm: 30, ToMm: 34}}
	}
	chamfer := func(edge string) parts.Chamfer {
		return parts.Chamfer{Edge: parts.Text{Value: edge}, Size: length(2)}
	}
	for _, c := range []struct {
		name          string
		chamfers      []parts.Chamfer
		grooves       []part.Groove
		undercut      bool
		before, after float64 // diameters beside it
		want          []geom.Span
	}{
		{"none", nil, nil, false, 30, 30, nil}, {"at the front", []parts.Chamfer{chamfer("seat-front"), chamfer("nose-front")}, nil, false, 30, 30, []geom.Span{{FromMm: 20, ToMm: 22}}}, {"at the back", []parts.Chamfer{chamfer("seat-back")}, nil, false, 30, 30, []geom.Span{{FromMm: 48, ToMm: 50}}},
		{"a groove", nil, []part.Groove{groove("seat", "")}, false, 30, 30, []geom.Span{{FromMm: 30, ToMm: 34}}}, {"in another step", nil, []part.Groove{groove("nose", "")}, false, 30, 30, nil}, {"in a face", nil, []part.Groove{groove("seat", parts.Front)}, false, 30, 30, nil},
		{"an undercut behind", nil, nil, true, 30, 60, []geom.Span{{FromMm: 47, ToMm: 50}}}, {"before", nil, nil, true, 60, 30, []geom.Span{{FromMm: 20, ToMm: 23}}},
	} {
		seat := cylinder(20, 50, 40, false)
		if seat.Name = "seat"; c.undercut {
			seat.Undercut = &part.Undercut{WidthMm: 3}
		}
		f := stepped(parts.Part{Chamfers: c.chamfers}, cylinder(0, 20, c.before, false), seat, cylinder(50, 80, c.after, false))
		f.ref.Feature, f.step = "seat", &f.r.Steps[1]
		f.r.Grooves = c.grooves
		if got := f.cuts(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestServe: of several registers that a jig may have the one that serves most pieces: a plug in bores of 60
// with a ring over spigots of 30 serves them all, and over one of 54.1 with the wall of 3 it does not.
func TestServe(t *testing.T) {
	t.Parallel()
	four := []plan.XY{{XMm: 40}, {YMm: 40}, {XMm: -40}, {YMm: -40}}
	with := func(n int, step part.Step, lo, hi float64) drilled {
		step.Size.MinMm, step.Size.MaxMm, step.Size.Limited = lo, hi, true
		f := stepped(parts.Part{Quantity: n}, step)
		return drilled{r: f.r, m: &part.Group{Group: &plan.Group{DrillMm: 9}}, at: four, place: f.step}
	}
	bore, spigot := cylinder(0, 20, 60, true), cylinder(0, 20, 30, false)
	for _, c := range []struct {
		name                string
		of                  []drilled
		plugs, rings, lefts int
	}{
		{"bores and spigots", []drilled{with(3, bore, 60, 60.03), with(2, spigot, 29.98, 30)}, 1, 1, 0}, {"the other order", []drilled{with(2, spigot, 29.98, 30), with(3, bore, 60, 60.03)}, 1, 1, 0}, {"more spigots", []drilled{with(1, bore, 60, 60.03), with(5, spigot, 53.98, 54), with(1, spigot, 53.98, 54)}, 0, 2, 1},
		{"too near for its wall", []drilled{with(5, bore, 60, 60.03), with(4, spigot, 53.98, 54)}, 1, 0, 1}, {"just under it", []drilled{with(5, bore, 60, 60.03), with(4, spigot, 53.97, 53.99)}, 1, 1, 0},
		{"other limits", []drilled{with(5, bore, 60, 60.03), with(4, bore, 60.01, 60.03)}, 1, 0, 1}, {"another upper one", []drilled{with(5, bore, 60, 60.03), with(4, bore, 60, 60.02)}, 1, 0, 1}, {"too few", []drilled{with(2, bore, 60, 60.03), with(1, bore, 60, 60.03)}, 0, 0, 2},
		{"two spigots over the plug", []drilled{with(3, bore, 60, 60.03), with(2, spigot, 29.98, 30), with(1, spigot, 29.97, 30)}, 1, 1, 1}, {"shakes", []drilled{with(5, bore, 60, 60.03), with(4, spigot, 29.77, 30)}, 1, 1, 0}, {"shakes more", []drilled{with(5, bore, 60, 60.03), with(4, spigot, 29.75, 30)}, 1, 0, 1},
	} {
		if g := serve(c.of, nil); len(g.plugs) != c.plugs || len(g.rings) != c.rings || len(g.left) != c.lefts {
			t.Errorf("%s: %d plugs, %d rings, %d left", c.name, len(g.plugs), len(g.rings), len(g.left))
		}
	}
	a, b := bore, bore
	if a.Size.Class, b.Size.Class = "H7", "H8"; equal(&a, &b) || !equal(&a, &a) {
		t.Error("one register for two classes of a size")
	}
	short := []bolts.Problem{{Kind: "bolt-short", Mm: []float64{1, 2}}}
	choice := bolts.Choice{Candidates: []bolts.Candidate{{Name: "1", Problems: short}, {Name: "2"}, {Name: "3", Problems: short}, {Name: "4", Problems: short}, {Name: "5", Problems: short}, {Name: "6", Problems: short}}}
	names := ""
	for _, f := range nearestFaults(choice) {
		names += f.Name
	}
	if names != "1345" {
		t.Errorf("the nearest that do not fit: %q", names)
	}
}

// TestCovered: a cover's spigot closes the bore whose end it goes into, up to its end, with its rim over the
// face; the cup stands against it where the cover's own bore is wider or none.
func TestCovered(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		face  parts.Face
		steps []part.Step
		dir   float64 // 0: no cover
		back  float64
		bore  float64
	}{
		{"the spigot first, put on other way round", parts.Front, []part.Step{cylinder(0, 10, 80, false), cylinder(10, 25, 140, false)}, -1, 10, 0},
		{"the spigot first, on the far side of its rim", parts.Front, []part.Step{cylinder(0, 10, 80, false), cylinder(10, 25, 140, false)}, 0, 0, 0},
		{"the spigot last", parts.Front, []part.Step{cylinder(0, 15, 140, false), cylinder(15, 24, 80, false)}, -1, 9, 0},
		{"bored", parts.Front, []part.Step{cylinder(0, 15, 140, false), cylinder(15, 24, 80, false), cylinder(0, 16, 30, true), cylinder(16, 24, 72, true)}, -1, 9, 72},
		{"on the back", parts.Back, []part.Step{cylinder(0, 10, 80, false), cylinder(10, 25, 140, false), cylinder(0, 25, 50, true)}, 1, 90, 50},
		{"a spigot that has a nose", parts.Front, []part.Step{cylinder(0, 15, 140, false), cylinder(15, 24, 80, false), cylinder(24, 30, 60, false)}, 0, 0, 0},
		{"without a rim", parts.Front, []part.Step{cylinder(0, 10, 80, false)}, 0, 0, 0},
		{"of another size", parts.Front, []part.Step{cylinder(0, 10, 79.9, false), cylinder(10, 25, 140, false)}, 0, 0, 0},
		{"a bore of that size", parts.Front, []part.Step{cylinder(0, 10, 140, false), cylinder(0, 10, 80, true)}, 0, 0, 0},
	} {
		last := c.steps[len(c.steps)-1]
		housing, cover := feature{r: worked("body", 100)}, feature{r: worked("body", int(last.ToMm))}
		housing.r.Steps, cover.r.Steps = []part.Step{cylinder(0, 100, 80, true)}, c.steps
		housing.step, housing.ref.Part, cover.ref.Part = &housing.r.Steps[0], "housing", "cover"
		holes := housing
		holes.step, holes.group = nil, &part.Group{FaceGroup: parts.FaceGroup{Face: c.face}}
		in := &joint{in: &parts.Joint{Kind: parts.BearingKind, Bearing: &parts.BearingJoint{}}, b: housing}
		lid := &joint{in: &parts.Joint{Kind: parts.BoltKind, Bolt: &parts.BoltJoint{}, OtherWay: strings.HasSuffix(c.name, "other way round")}, a: cover, b: holes}
		in.covered([]*joint{in, lid})
		got := in.lid
		if got.cupDir != c.dir || got.cupBackMm != c.back || (got.lid == lid) != (c.dir != 0) || c.dir != 0 && got.cupShoulder.Size.NominalMm != c.bore {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// TestFitsOfRings: a ring's fit is known where its table goes so far, of both rings or of neither: 315 and
// 400 by ISO 492. By it 40 k6, +18/+2, is 2 to 30 tight on a bore of 40, 0/−12, and 80 N7, −9/−39, holds a cup
// of 80, 0/−16, by −7 to 39.
func TestFitsOfRings(t *testing.T) {
	t.Parallel()
	made := func(mm, low, high float64) feature {
		s := cylinder(0, 20, mm, false)
		s.Size.MinMm, s.Size.MaxMm, s.Size.Limited = mm+low, mm+high, true
		return stepped(parts.Part{}, s)
	}
	for _, c := range []struct {
		bore, outside float64
		known         bool
		cone, cup     plan.Range
	}{
		{40, 80, true, plan.Range{Min: 2, Max: 30}, plan.Range{Min: -7, Max: 39}},
		{315, 400, true, plan.Range{Min: 2, Max: 53}, plan.Range{Min: -31, Max: 39}},
		{315, 401, false, plan.Range{}, plan.Range{}}, {316, 400, false, plan.Range{}, plan.Range{}}, {316, 401, false, plan.Range{}, plan.Range{}},
	} {
		p := &plan.BearingPlan{}
		b := &joint{in: &parts.Joint{Bearing: &parts.BearingJoint{Bore: length(c.bore), Outside: length(c.outside)}}, a: made(c.bore, 0.002, 0.018), b: made(c.outside, -0.039, -0.009)}
		if known := b.fits(p); known != c.known || p.ConeFitUm != c.cone || p.CupFitUm != c.cup {
			t.Errorf("%g × %g: %v, %v and %v", c.bore, c.outside, known, p.ConeFitUm, p.CupFitUm)
		}
	}
}

// TestSaidRules: a joint comes before and after those that it names; one that cannot be worked out is
// waited for by none.
func TestSaidRules(t *testing.T) {
	t.Parallel()
	one := func(name string, before, after []string) *joint {
		in := &parts.Joint{Name: parts.Text{Value: name}}
		for _, n := range before {
			in.Before = append(in.Before, parts.Text{Value: n})
		}
		for _, n := range after {
			in.After = append(in.After, parts.Text{Value: n})
		}
		return &joint{in: in}
	}
	got := ""
	for _, r := range (&shop{}).saidRules([]*joint{one("a", []string{"b", "gone"}, nil), one("b", nil, []string{"gone"}), one("c", nil, []string{"a"})}) {
		got += r.first.in.Name.Value + r.then.in.Name.Value + " "
	}
	if got != "ab ac " {
		t.Errorf("%q", got)
	}
}

// TestMeanwhile: what holds fine sizes true is why the job accepts that they are finished before a weld of
// the same part: of a weld that it has, and for a part with a fine size.
func TestMeanwhile(t *testing.T) {
	t.Parallel()
	fine := func(name string, copied int, mm float64) feature {
		s := cylinder(0, 20, 40, true)
		s.Size.MinMm, s.Size.MaxMm, s.Size.Limited = 40, 40+mm, true
		f := stepped(parts.Part{Kind: parts.TurnedPart, Profile: &parts.Profile{}}, s)
		f.r.Out, f.step, f.ref = &plan.PartPlan{}, nil, parts.JointRef{Part: name, Copy: copied}
		return f
	}
	weld := &parts.Joint{Name: parts.Text{Value: "weld"}, Kind: parts.WeldKind, Weld: &parts.WeldJoint{Part: parts.JointRef{Part: "hub", Copy: 1}, To: parts.JointRef{Part: "plate", Copy: 2}}}
	bolt := &parts.Joint{Name: parts.Text{Value: "bolt"}, Kind: parts.BoltKind, Bolt: &parts.BoltJoint{Through: parts.JointRef{Part: "hub", Copy: 1}, Into: parts.JointRef{Part: "plate", Copy: 2}}}
	for _, c := range []struct {
		finding, at string
		a, b        feature
		want        string
	}{
		{"weld-first", "weld", fine("hub", 1, 0.02), fine("rib", 1, 1), "plugged"}, {"weld-first", "weld", fine("rib", 1, 1), fine("plate", 2, 0.02), "plugged"},
		{"weld-first", "weld", fine("rib", 1, 0.02), fine("plate", 1, 0.02), ""}, {"weld-first", "weld", fine("hub", 1, 1), fine("rib", 1, 0.02), ""},
		{"weld-holes", "weld", fine("hub", 1, 0.02), fine("rib", 1, 1), ""}, {"weld-first", "bolt", fine("hub", 1, 0.02), fine("rib", 1, 1), ""}, {"weld-first", "hub", fine("hub", 1, 0.02), fine("rib", 1, 1), ""},
	} {
		job := &parts.Job{Joints: []*parts.Joint{weld, bolt}, Accept: []parts.Accept{{Finding: parts.Text{Value: c.finding}, Part: c.at, Reason: parts.Text{Value: "plugged"}}}}
		if got := (&joint{a: c.a, b: c.b}).meanwhile(job); got != c.want {
			t.Errorf("%s at %s of %s and %s: %q", c.finding, c.at, c.a.ref.Part, c.b.ref.Part, got)
		}
	}
}

// TestRowsApart: what bolts hold to two bars of a frame measures from the first hole in one of them to the
// nearest in the other, here 40 apart, and a pin of 9 and one of 11 beyond: by half of the play of M8 in its two
// holes, the less of 1 and 2. Not two rows in one bar, nor what is on another part, another copy or its other face.
func TestRowsApart(t *testing.T) {
	t.Parallel()
	part1, bar := stepped(parts.Part{}, cylinder(0, 1, 1, false)), stepped(parts.Part{Quantity: 2}, cylinder(0, 1, 1, false))
	part1.r.Out, bar.r.Out = &plan.PartPlan{Title: "Lid"}, &plan.PartPlan{Title: "Rail"}
	on := func(f feature, name string, copied int, face parts.Face, mm float64, at ...plan.XY) feature {
		f.ref, f.step = parts.JointRef{Part: name, Copy: copied}, nil
		f.group = &part.Group{FaceGroup: parts.FaceGroup{Face: face}, Points: at, Size: part.Made{FinishedMm: mm}}
		return f
	}
	for _, c := range []struct {
		name   string
		second feature // on what
		copied int     // the second bar
		want   string
	}{
		{"two bars", on(part1, "lid", 1, parts.Front, 9, plan.XY{XMm: 60}, plan.XY{XMm: 40}), 2, "nearest holes 50 over pins Ø10 49.0 – 51.0"},
		{"side by side", on(part1, "lid", 1, parts.Front, 9, plan.XY{XMm: 40, YMm: 20}, plan.XY{XMm: 40}), 2, "holes 50 over pins Ø10 49.0 – 51.0 least, most"},
		{"one bar", on(part1, "lid", 1, parts.Front, 9, plan.XY{XMm: 40}), 1, ""},
		{"another copy", on(part1, "lid", 2, parts.Front, 9, plan.XY{XMm: 40}), 2, ""},
		{"another part", on(part1, "cap", 1, parts.Front, 9, plan.XY{XMm: 40}), 2, ""},
		{"its other face", on(part1, "lid", 1, parts.Back, 9, plan.XY{XMm: 40}), 2, ""},
	} {
		bolt := func(lid, rail feature) *joint {
			return &joint{in: &parts.Joint{Kind: parts.BoltKind, Bolt: &parts.BoltJoint{}}, ofBolts: ofBolts{boltMm: 8}, a: lid, b: rail}
		}
		first := bolt(on(part1, "lid", 1, parts.Front, 9, plan.XY{YMm: 20}, plan.XY{}), on(bar, "rail", 1, parts.Front, 9))
		second := bolt(c.second, on(bar, "rail", c.copied, parts.Front, 11))
		weld := &joint{in: &parts.Joint{Kind: parts.WeldKind, Weld: &parts.WeldJoint{}}, w: words.Writer{Units: parts.Millimetres}, out: &plan.JointPlan{}, a: on(bar, "rail", 1, "", 0), b: on(bar, "rail", 2, "", 0)}
		j, got := &making{all: []*joint{first, weld, second}}, ""
		found := j.rowsApart(weld, &ring{corners: []*joint{weld}})
		for _, k := range weld.out.Checks {
			what, _, _ := strings.Cut(k.What, ",")
			got += words.Join(" ", what, k.Wanted, k.Limits, strings.Join(k.Boxes, ", "))
		}
		if got != c.want || found != (c.want != "") {
			t.Errorf("%s: %q, %v", c.name, got, found)
		}
	}
}

// TestLifts: a step says what is over what a hand lifts, the heavier of two, with what is on it by then.
func TestLifts(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		kg, on float64 // of the part, and of what is on it
		was    float64 // what the step lifts already
		tried  bool
		want   string
	}{
		{"what a hand lifts", plan.LiftKg, 0, 0, false, ""}, {"more", plan.LiftKg + 1, 0, 0, false, "lid"}, {"together", plan.LiftKg, 1, 0, false, "lid with all that is on it"},
		{"with what has no mass", plan.LiftKg + 1, -1, 0, false, "lid with all that is on it"},
		{"to try it on", plan.LiftKg, 1, 0, true, "lid, to try it on"}, {"less than it lifts", 40, 0, 41, false, "drum"}, {"as much", 40, 0, 40, false, "drum"}, {"more than it lifts", 40, 0, 39, false, "lid"},
	} {
		lid, knob := lying("lid", 0, 1, cylinder(0, 10, 90, false)), lying("knob", 10, 1, cylinder(0, 10, 30, false))
		j := &making{assembly: standing(lid, knob)}
		lid.r.Out.MassKg, knob.r.Out.MassKg = c.kg, max(c.on, 0)
		if c.on != 0 {
			j.before = []*joint{{kind: pressKind{}, in: &parts.Joint{Kind: parts.PressKind, Press: &parts.PressJoint{}}, out: &plan.JointPlan{}, a: knob.of(), b: lid.of()}}
		}
		now := &joint{in: &parts.Joint{}, w: j.w, out: &plan.JointPlan{}}
		if c.was > 0 {
			now.out.Lift = &plan.Lift{What: "drum", MassKg: c.was}
		}
		j.lifts(now, lid.of(), c.tried)
		got := plan.Lift{}
		if now.out.Lift != nil {
			got = *now.out.Lift
		}
		if got.What != c.want || c.tried != (got.Tried == "lid") || got.AtLeast != (c.on < 0) {
			t.Errorf("%s: %+v, want %s", c.name, got, c.want)
		}
	}
}

// TestBlocked: heads 8 high, sunk 5 into their part, stand 3 proud: what lies closer over them is told with what
// there is for them, 5 and the gap; what is of another group, or beside them, is not in their way.
func TestBlocked(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		gap, sunk, mm float64 // and the diameter of what lies over them
		group         int
		want          string
	}{
		{2, 5, 200, 0, "heads-covered, the heads, 8, cap, 7"}, {2.9, 5, 200, 0, "heads-covered, the heads, 8, cap, 7.9"}, {3, 5, 200, 0, ""}, {5, 0, 200, 0, "heads-covered, the heads, 8, cap, 5"}, {8, 0, 200, 0, ""},
		{2, 5, 101, 0, "heads-covered, the heads, 8, cap, 7"}, {2, 5, 99, 0, ""}, {2, 5, 200, 1, ""},
	} {
		flange, cap := lying("flange", 0, 1, cylinder(0, 20, 140, false)), placedPart{Instance: parts.Instance{Part: "cap", Copy: 1}, r: worked("over", 30), at: placement{z0: 20 + c.gap, s: 1}, group: c.group}
		cap.r.Steps[0].Size.NominalMm = c.mm
		j := &making{assembly: standing(flange, cap)}
		in := &joint{in: &parts.Joint{}, out: &plan.JointPlan{}}
		j.blocked(in, headSide{what: "heads", zMm: 20, dir: 1, pts: []plan.XY{{YMm: 50}}, headMm: 8, sunkMm: c.sunk, on: feature{ref: parts.JointRef{Part: "flange", Copy: 1}}})
		got := ""
		for _, p := range in.out.Problems {
			got = strings.Join([]string{string(p.Kind), p.Args[0].Text, words.Trim(p.Args[1].Value, 2), p.Args[2].Text, words.Trim(p.Args[3].Value, 2)}, ", ")
		}
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestLowestOver: over heads 50 from the axis, in a band 10 beside them and 4 to a side, from 5 over their seats: a
// flange of 140 that begins 12 over them, or a hub of 130 that begins 20 over. Neither a square plate nor what has no
// section bars it, nor what lies under the band or is not there yet.
func TestLowestOver(t *testing.T) {
	t.Parallel()
	disc := func(name string, z0, mm float64, shape parts.OutlineShape) placedPart {
		p := lying(name, z0, 1, cylinder(0, 10, mm, false))
		p.r.Part.Outline = &parts.Outline{Shape: shape}
		return p
	}
	ring := disc("over", 32, 140, parts.CircleOutline)
	ring.r.Steps = append(ring.r.Steps, cylinder(0, 10, 126, true))
	for _, c := range []struct {
		name string
		over placedPart
		bare bool // it has no section
		mm   float64
	}{
		{"a ring over the outer edge of the band", ring, false, 12},
		{"a flange", disc("over", 32, 140, parts.CircleOutline), false, 12}, {"a hub", disc("over", 40, 130, parts.CircleOutline), false, 20}, {"inside the band", disc("over", 40, 111, parts.CircleOutline), false, math.Inf(1)},
		{"that begins under it", disc("over", 20, 140, parts.CircleOutline), false, 5}, {"that ends under it", disc("over", 15, 140, parts.CircleOutline), false, math.Inf(1)},
		{"a square", disc("over", 32, 140, parts.RectangleOutline), false, math.Inf(1)}, {"no section", disc("over", 32, 140, parts.CircleOutline), true, math.Inf(1)},
	} {
		j := &making{assembly: standing(c.over)}
		s := c.over.r.Steps[0]
		if !c.bare {
			c.over.r.Out.Section = &plan.Section{LengthMm: 10, Outer: []plan.XY{{YMm: s.Size.NominalMm / 2}, {XMm: 10, YMm: s.Size.NominalMm / 2}}}
			for _, bore := range c.over.r.Steps[1:] {
				c.over.r.Out.Section.Inner = []plan.XY{{YMm: bore.Size.NominalMm / 2}, {XMm: 10, YMm: bore.Size.NominalMm / 2}}
			}
		}
		heads := headSide{zMm: 20, dir: 1, pts: []plan.XY{{YMm: 50}}}
		if mm, who := j.lowestOver(heads, []parts.Instance{c.over.Instance}, band{10, 4, 5}); mm != c.mm || (who == "over") == math.IsInf(mm, 1) {
			t.Errorf("%s: %g of %q, want %g", c.name, mm, who, c.mm)
		}
		if mm, _ := j.lowestOver(heads, nil, band{10, 4, 5}); !math.IsInf(mm, 1) {
			t.Errorf("%s, not there: %g", c.name, mm)
		}
	}
}

// TestEndForEndOf: what comes turned end for end looks the same where each of it has its like at the mirrored place:
// of a part, of the step that it is joined by.
func TestEndForEndOf(t *testing.T) {
	t.Parallel()
	at := func(name string, copied, long int, z0, s float64) placedPart {
		return placedPart{Instance: parts.Instance{Part: name, Copy: copied}, r: worked("body", long), at: placement{z0: z0, s: s}}
	}
	for _, c := range []struct {
		name       string
		more       []placedPart
		step, want bool
	}{
		{"alone", nil, false, true}, {"by half of it", nil, true, false},
		{"a ring on one side", []placedPart{at("ring", 1, 10, 10, 1)}, false, false}, {"on both", []placedPart{at("ring", 1, 10, 10, 1), at("ring", 2, 10, 30, -1)}, false, true}, {"looking the same way", []placedPart{at("ring", 1, 10, 10, 1), at("ring", 2, 10, 20, 1)}, false, true},
		{"not as far", []placedPart{at("ring", 1, 10, 10, 1), at("ring", 2, 10, 31, -1)}, false, false}, {"in the middle", []placedPart{at("ring", 1, 10, 15, 1)}, false, true}, {"of two drawings", []placedPart{at("ring", 1, 10, 10, 1), at("disc", 1, 10, 30, -1)}, false, false},
		{"about another axis", []placedPart{{Instance: parts.Instance{Part: "ring", Copy: 1}, r: worked("body", 10), at: placement{z0: 15, s: 1}, group: 1}}, false, false},
	} {
		j := &making{assembly: standing(append([]placedPart{at("hub", 1, 40, 0, 1)}, c.more...)...)}
		in := &joint{a: feature{ref: parts.JointRef{Part: "hub", Copy: 1}, r: j.placed[0].r}}
		if c.step {
			in.a.step = &part.Step{ToMm: 20}
		}
		if got := j.endForEnd(in, seq.Map(j.placed, func(p placedPart) parts.Instance { return p.Instance })); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestSidesOnce: two corners on one side of a part name it once, with both lengths.
func TestSidesOnce(t *testing.T) {
	t.Parallel()
	j := &joint{w: words.Writer{Units: parts.Millimetres}}
	back := plan.Corner{Side: "back", Along: "Leg", Of: "Rail", LengthMm: 29}
	for want, corners := range map[string][]plan.Corner{
		"back (29 and 29) of Rail":                {back, back},
		"front (12) and back (29) of Rail":        {{Side: "front", Along: "Leg", Of: "Rail", LengthMm: 12}, back},
		"back of Rail (29) and back of Foot (12)": {back, {Side: "back", Along: "Leg", Of: "Foot", LengthMm: 12}},
	} {
		if got := j.sides(corners, "Leg"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestAlongSlots: what lies along slots does not count: of 7, 1 and a slot that runs 6, 8, half of that, 3, 4, is along
// it and 4, −3 across. Nothing is along holes, or along slots that cross. A bolt stands where the middle line of one
// slot meets that of another.
func TestAlongSlots(t *testing.T) {
	t.Parallel()
	at, run, cross := plan.XY{XMm: 7, YMm: 1}, plan.XY{XMm: 6, YMm: 8}, plan.XY{XMm: 8, YMm: -6}
	for _, c := range []struct{ a, b, want plan.XY }{
		{run, plan.XY{}, plan.XY{XMm: 4, YMm: -3}}, {plan.XY{}, run, plan.XY{XMm: 4, YMm: -3}}, {run, run.Times(0.5), plan.XY{XMm: 4, YMm: -3}},
		{plan.XY{}, plan.XY{}, at}, {run, cross, at},
	} {
		if got := (leeway{1, c.a, c.b}).across([]plan.XY{at})[0]; geom.Over(geom.Distance(got, c.want), 0) {
			t.Errorf("%v, %v: %v, want %v", c.a, c.b, got, c.want)
		}
	}
	for _, c := range []struct{ a, b, q, want plan.XY }{
		{plan.XY{XMm: 9}, plan.XY{YMm: 5}, plan.XY{XMm: 11, YMm: 3}, plan.XY{XMm: 11, YMm: 1}},
		// Along each other, 9 apart, the one runs 10 to both sides and the other 5: from −10 to −4, or from 4 to 10; 2 apart from −3 to 7.
		{plan.XY{XMm: 10}, plan.XY{XMm: 5}, plan.XY{XMm: -2, YMm: 1}, plan.XY{YMm: 1}}, {plan.XY{XMm: 10}, plan.XY{XMm: -5}, plan.XY{XMm: 16, YMm: 1}, plan.XY{XMm: 14, YMm: 1}}, {plan.XY{XMm: 10}, plan.XY{XMm: 5}, plan.XY{XMm: 9, YMm: 1}, plan.XY{XMm: 9, YMm: 1}},
	} {
		if got := (leeway{1, c.a, c.b}).spot(at, c.q); geom.Over(geom.Distance(got, c.want), 0) {
			t.Errorf("a hole at %v: %v, want %v", c.q, got, c.want)
		}
	}
}

// TestConeHeat: 90 K more let a bore of 40 grow by 12·10⁻⁶ · 40 · 90 = 43.2 µm: 5 or more of them are to be left, and
// what is loose is not heated.
func TestConeHeat(t *testing.T) {
	t.Parallel()
	for tight, want := range map[float64][2]float64{-1: {}, 0: {}, 0.5: {110, 43}, 20: {110, 23}, 38.1: {110, 5}, 38.3: {}} {
		p := &plan.BearingPlan{BoreMm: 40, ConeFitUm: plan.Range{Min: tight - 10, Max: tight}}
		if (*joint)(nil).heats(p); p.HeatConeC != want[0] || p.HeatLeftUm != want[1] {
			t.Errorf("%v µm tight: %v °C, %v µm left, want %v", tight, p.HeatConeC, p.HeatLeftUm, want)
		}
	}
}

// TestSlideUnlike: a bore and a shaft that turns in it, each of a class, have one diameter; what is kept, or has limits
// of its own, may be the other's within the reach of them.
func TestSlideUnlike(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		shaftMm    float64
		hub, shaft string
		kept, said bool
	}{{20, "H8", "f7", false, false}, {19.99, "H8", "f7", false, true}, {20.01, "H8", "f7", false, true}, {19.99, "H8", "f7", true, false}, {19.99, "", "f7", false, false}, {19.99, "H8", "", false, false}} {
		a, b := stepped(parts.Part{}, cylinder(0, 20, 20, true)), stepped(parts.Part{}, cylinder(0, 60, c.shaftMm, false))
		for f, class := range map[*part.Step]string{a.step: c.hub, b.step: c.shaft} {
			f.Size.MinMm, f.Size.MaxMm, f.Size.Limited, f.Size.Class = f.Size.NominalMm, f.Size.NominalMm+0.01, true, class
		}
		a.r.Out, b.r.Out = &plan.PartPlan{Title: "Bush"}, &plan.PartPlan{Title: "Shaft"}
		j := &joint{in: &parts.Joint{Kind: parts.SlideKind, Slide: &parts.SlideJoint{}}, a: a, b: b, ofHub: ofHub{dir: 1}, w: words.Writer{Units: parts.Millimetres}, out: &plan.JointPlan{}}
		if c.kept {
			j.in.Slide.KeptBy.Part = "shaft"
		}
		j.slides()
		if said := len(j.out.Problems) == 1 && j.out.Problems[0].Kind == plan.SlideUnlike && geom.Alike(j.out.Problems[0].Args[4].Value, 0.01); said != c.said || !c.said && len(j.out.Problems) > 0 {
			t.Errorf("%+v: %+v", c, j.out.Problems)
		}
	}
}

// TestWeldMetalProblem: what hardens is said where preheat alone does not do; a metal that is welded its own way, where
// the process of the weld is not that way.
func TestWeldMetalProblem(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		reason  material.JoinReason
		class   material.WeldClass
		process string
		want    plan.ProblemKind
	}{
		{material.JoinHardens, material.WeldPreheated, "TIG", ""}, {material.JoinHardens, material.WeldProcedure, "TIG", plan.WeldHardens}, {material.JoinIron, material.WeldPreheated, "TIG", plan.WeldIron}, {material.JoinIron, material.WeldOwn, "TIG", plan.WeldIron},
		{material.JoinOwn, material.WeldOwn, "TIG", ""}, {material.JoinOwn, material.WeldOwn, "MIG", ""}, {material.JoinOwn, material.WeldOwn, "MMA", plan.WeldOwnWay}, {material.JoinStainless, material.WeldOwn, "TIG", plan.WeldOwnWay}, {material.JoinMetals, material.WeldNever, "TIG", plan.WeldMixed},
	} {
		a, b := stepped(parts.Part{}, cylinder(0, 1, 1, false)), stepped(parts.Part{}, cylinder(0, 1, 1, false))
		metal := &material.Material{Name: "EN AW-5083", Kind: material.AluminiumAlloy}
		a.r.Material, b.r.Material, a.r.Out, b.r.Out = metal, metal, &plan.PartPlan{}, &plan.PartPlan{}
		j := &joint{in: &parts.Joint{Weld: &parts.WeldJoint{Process: c.process}}, a: a, b: b, out: &plan.JointPlan{}}
		weldMetalProblem(j, material.Join{Reason: c.reason, Class: c.class, Worse: *metal})
		got := plan.ProblemKind("")
		if len(j.out.Problems) > 0 {
			got = j.out.Problems[0].Kind
		}
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestGreasePorts: a port of 8 at 40 fills what lies as close along the bore as half of both, there a hole of 6 or
// a window 20 long: those are shut meanwhile. Not one beside them, a tapped hole or a blind one, nor the port itself.
func TestGreasePorts(t *testing.T) {
	t.Parallel()
	port := part.Radial{In: &parts.Radial{Name: parts.Text{Value: "port"}, For: parts.Grease, Through: true}, Rows: []plan.RadialRow{{Name: "port", ClockDeg: 0.25, AxialMm: 40, DiameterMm: 8}}}
	for _, c := range []struct {
		name            string
		through, tapped bool
		row             plan.RadialRow
		shut            bool
	}{
		{"a hole over it", true, false, plan.RadialRow{AxialMm: 46.9, DiameterMm: 6}, true}, {"beside it", true, false, plan.RadialRow{AxialMm: 47, DiameterMm: 6}, false}, {"before it", true, false, plan.RadialRow{AxialMm: 33.1, DiameterMm: 6}, true},
		{"a window over it", true, false, plan.RadialRow{AxialMm: 53.9, AlongMm: 20}, true}, {"a window beside it", true, false, plan.RadialRow{AxialMm: 54, AlongMm: 20}, false},
		{"blind", false, false, plan.RadialRow{AxialMm: 40, DiameterMm: 6}, false}, {"tapped", true, true, plan.RadialRow{AxialMm: 40, DiameterMm: 6}, false},
	} {
		drain := part.Radial{In: &parts.Radial{Name: parts.Text{Value: "drain"}, Through: c.through}}
		if c.tapped {
			drain.Size.Thread = &threads.Thread{}
		}
		c.row.Name, c.row.ClockDeg = "drain", 150.04
		drain.Rows = []plan.RadialRow{c.row}
		housing := lying("housing", 0, 1, cylinder(0, 80, 90, false))
		j := &making{assembly: standing(housing)}
		housing.r.Radials = []part.Radial{port, drain}
		want := "port of housing at 0.25°, 40 from its front"
		if c.shut {
			want += ", drain at 150.04° plugged with a rag meanwhile, open again after"
		}
		if got := j.greasePorts(housing.of()); len(got) != 1 || got[0] != want {
			t.Errorf("%s: %q, want %q", c.name, got, want)
		}
	}
}
