package changes

import (
	"slices"
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"

	"github.com/tdewolff/canvas"
)

func round(minMm, maxMm float64) part.Sized { return part.Sized{MinMm: minMm, MaxMm: maxMm} }

func thread(t *testing.T, name string) part.Sized {
	t.Helper()
	th, err := threads.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return part.Sized{MinMm: th.MajorMm, MaxMm: th.MajorMm, Thread: &th}
}

// TestStepUse: M30x2 has pitch diameter 28.701 and minor diameter 27.835 (ISO
// 724); the root of its bolt is 27.546 by ISO 68-1, and 27.439 is taken.
func TestStepUse(t *testing.T) {
	t.Parallel()
	m30 := thread(t, "M30x2")
	for _, c := range []struct {
		name    string
		was, is part.Sized
		inside  bool
		want    Use
	}{
		{"same limits", round(20, 20.1), round(20, 20.1), false, AsIs},
		{"wider limits", round(20, 20.1), round(19.9, 20.1), false, AsIs},
		{"shaft, limits overlap", round(20, 20.1), round(19.9, 20.05), false, Measure},
		{"shaft smaller", round(20, 20.1), round(19.9, 20), false, Rework},
		{"shaft larger", round(20, 20.1), round(20.1, 20.2), false, Scrap},
		{"bore larger", round(20, 20.1), round(20.1, 20.2), true, Rework},
		{"bore smaller", round(20, 20.1), round(19.9, 20), true, Scrap},
		{"same thread", m30, m30, false, AsIs},
		{"bolt turned off to its root", m30, round(27.43, 27.6), false, Rework},
		{"bolt turned off just to its root", m30, round(m30.MaxMm-2*rootPitches, 27.6), false, Rework},
		{"bolt whose root would show", m30, round(27.45, 27.6), false, Scrap},
		{"nut bored out", m30, round(30, 30.1), true, Rework},
		{"nut bored to its root", m30, round(29.9, 30.1), true, Rework},
		{"nut bored to less", m30, round(29.8, 29.9), true, Scrap},
		{"thread on a larger round", round(30, 30.2), m30, false, Rework},
		{"thread on a round about its size", round(29.8, 30.2), m30, false, Measure},
		{"thread on a round under its pitch diameter", round(28.5, 28.7), m30, false, Scrap},
		{"thread in a smaller bore", round(27, 27.835), m30, true, Rework},
		{"thread in a bore about its size", round(27.8, 28.8), m30, true, Measure},
		{"thread on a round as large as its pitch diameter", round(28.5, m30.Thread.PitchDiameterMm), m30, false, Measure},
		{"thread in a bore as large as its pitch diameter", round(m30.Thread.PitchDiameterMm, 29), m30, true, Measure},
		{"thread in a bore over its pitch diameter", round(28.71, 29), m30, true, Scrap},
	} {
		if got := stepUse(c.was, c.is, c.inside); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestClampUse: a ring made shorter by 2 at its front keeps its screw, which then lies 2 nearer to it; a counterbore
// can be made deeper and a cut wider, and neither taken back.
func TestClampUse(t *testing.T) {
	t.Parallel()
	was := plan.ClampRow{ClockDeg: 90, AtMm: 14, AxialMm: 10, SlotMm: 2, HoleMm: 5.5, HeadMm: 10, DeepMm: 6}
	for _, c := range []struct {
		axial, slot, deep, shift float64
		want                     Use
	}{
		{8, 2, 6, 2, NoMetal}, {10, 2, 6, 2, Scrap}, {12, 2, 6, 2, Scrap}, {10, 2, 6, 0, NoMetal},
		{10, 2.5, 6, 0, Rework}, {10, 2, 7, 0, Rework}, {10, 1.5, 6, 0, Scrap}, {10, 2, 5, 0, Scrap}, {10, 2.5, 5, 0, Scrap},
	} {
		is := was
		is.AxialMm, is.SlotMm, is.DeepMm = c.axial, c.slot, c.deep
		if got := clampUse(&was, &is, c.shift); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestWorse: the uses have one order.
func TestWorse(t *testing.T) {
	t.Parallel()
	for i, a := range uses {
		for k, b := range uses {
			if got := worse(a, b); got != uses[max(i, k)] {
				t.Errorf("of %q and %q: %q", a, b, got)
			}
		}
		if a != NoMetal && useWords[a] == "" {
			t.Errorf("no words for %q", a)
		}
	}
}

// TestHoleUse: an M10 has a core of 8.5 (ISO 2306) and a major diameter of 10.
func TestHoleUse(t *testing.T) {
	t.Parallel()
	m10, m12 := thread(t, "M10").Thread, thread(t, "M12").Thread
	plain := func(min, max float64) part.Made { return part.Made{Size: round(min, max), FinishedMm: min} }
	drilled := func(mm float64) part.Made { return part.Made{FinishedMm: mm} }
	tapped := part.Made{Thread: m10, DrillMm: 8.5, FinishedMm: 10, Size: round(10, 10)}
	larger := part.Made{Thread: m12, DrillMm: 10.2, FinishedMm: 12, Size: round(12, 12)}
	for _, c := range []struct {
		name    string
		was, is part.Made
		want    Use
	}{
		{"same thread", tapped, tapped, AsIs},
		{"the next thread", tapped, larger, Rework},
		{"a smaller thread", larger, tapped, Scrap},
		{"tapped through its core", plain(8.4, 8.5), tapped, Rework},
		{"tapped where the core is gone", plain(8.5, 8.6), tapped, Scrap},
		{"tapped through a core that is off by rounding", plain(8.4, 8.5+sameMm), tapped, Rework},
		{"tapped in a drilled hole", drilled(8.5), tapped, Rework},
		{"tapped in a larger drilled hole", drilled(8.6), tapped, Scrap},
		{"a thread drilled out", tapped, plain(10, 10.2), Rework},
		{"a thread drilled to just its size", tapped, plain(9.9, 10), Rework},
		{"a thread that would show", tapped, plain(9.8, 9.9), Scrap},
		{"larger", plain(8, 8.1), plain(8.1, 8.2), Rework},
		{"smaller", plain(8, 8.1), plain(7.8, 7.9), Scrap},
		{"same", plain(8, 8.1), plain(8, 8.1), AsIs},
	} {
		if got := holeUse(c.was, c.is); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestSwallowed: an old hole of 10 that moves by 1 vanishes in one of 12.
func TestSwallowed(t *testing.T) {
	t.Parallel()
	hole := func(mm float64, places int) *feature {
		return &feature{made: &part.Made{FinishedMm: mm}, sizes: make([]size, 1), places: make([]plan.XY, places)}
	}
	tapped := hole(14, 2)
	tapped.made.Thread, tapped.made.DrillMm = thread(t, "M14").Thread, 12
	mouth := hole(10, 2)
	mouth.sizes = make([]size, 2)
	round := hole(12, 2)
	round.roundMm = 80
	for _, c := range []struct {
		name    string
		was, is *feature
		moved   float64
		want    bool
	}{
		{"just", hole(10, 2), hole(12, 2), 1, true}, {"not quite", hole(10, 2), hole(12, 2), 1.001, false}, {"more of them", hole(10, 2), hole(12, 3), 1, true},
		{"fewer", hole(10, 2), hole(12, 1), 1, false}, {"the core counts", hole(10, 2), tapped, 1, true}, {"and not the crest", hole(10, 2), tapped, 1.5, false},
		{"a wider mouth", mouth, hole(12, 2), 1, false}, {"on a round", hole(10, 2), round, 1, false},
	} {
		if got := swallowed(c.was, c.is, c.moved); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestWeldUse: more may be laid on a weld, and too much of it serves; another
// type is decided by hand.
func TestWeldUse(t *testing.T) {
	t.Parallel()
	was := plan.WeldPlan{Type: "fillet", LegMm: 5, LengthMm: 200, Sides: 1}
	for _, c := range []struct {
		name string
		is   plan.WeldPlan
		want Use
	}{
		{"larger leg", plan.WeldPlan{Type: "fillet", LegMm: 6, LengthMm: 200, Sides: 1}, WeldOn}, {"longer", plan.WeldPlan{Type: "fillet", LegMm: 5, LengthMm: 300, Sides: 1}, WeldOn},
		{"on both sides", plan.WeldPlan{Type: "fillet", LegMm: 5, LengthMm: 200, Sides: 2}, WeldOn}, {"smaller leg", plan.WeldPlan{Type: "fillet", LegMm: 4, LengthMm: 200, Sides: 1}, AsIs},
		{"shorter", plan.WeldPlan{Type: "fillet", LegMm: 5, LengthMm: 100, Sides: 1}, AsIs}, {"smaller and longer", plan.WeldPlan{Type: "fillet", LegMm: 4, LengthMm: 300, Sides: 1}, WeldOn},
		{"another type", plan.WeldPlan{Type: "bevel", LegMm: 5, LengthMm: 200, Sides: 1}, ByHand},
	} {
		out := weld(nil, &plan.JointPlan{Weld: &was}, &plan.JointPlan{Weld: &c.is})
		if len(out) != 1 || out[0].Use != c.want {
			t.Errorf("%s: %+v, want %q", c.name, out, c.want)
		}
	}
	if out := weld(nil, &plan.JointPlan{Weld: &was}, &plan.JointPlan{Weld: &was}); len(out) != 0 {
		t.Errorf("the same weld: %+v", out)
	}
}

// TestAlong: points of an outline no further apart than a millimetre, or a
// two-thousandth of a long one, corners among them, each once.
func TestAlong(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		svg  string
		n    int
		step float64
	}{{"M0 0H30V20H0Z", 100, 1}, {"M0 0H30.5V20H0Z", 31 + 20 + 31 + 20, 1}, {"M0 0H2000V1000H0Z", 2*667 + 2*334, 3}, {"M0 0H1500V500H0Z", 2000, 2}} {
		points := along(canvas.MustParseSVGPath(c.svg))
		if len(points) != c.n || points[0] != (geom.Point{}) {
			t.Errorf("%s: %d points, want %d", c.svg, len(points), c.n)
		}
		for i, p := range points {
			if d := geom.Distance(p, points[(i+1)%len(points)]); d > c.step+1e-9 || d < 1e-9 {
				t.Errorf("%s: %v apart at %v", c.svg, d, p)
				break
			}
		}
	}
}

// TestValue: what a number of a change is printed as, in its unit; two decimals of an
// angle and of a count.
func TestValue(t *testing.T) {
	t.Parallel()
	w := words.Writer{Units: parts.Millimetres}
	for _, c := range []struct {
		unit plan.Unit
		v    float64
		text string
		want string
	}{
		{plan.Mm, 12.5, "", "12.5 mm"}, {plan.Diameter, 30, "", "Ø30"}, {plan.Degree, 22.1262, "", "22.13°"}, {plan.Degree, 45, "", "45°"},
		{plan.Number, 2.3456, "", "2.35"}, {plan.Number, 4, "", "4"}, {plan.Mm, 12.5, "M10", "M10"}, {plan.Text, 3, "", ""},
	} {
		if got := value(w, c.unit, c.v, c.text); got != c.want {
			t.Errorf("%v of unit %v, %q: %q, want %q", c.v, c.unit, c.text, got, c.want)
		}
	}
}

// What is off by no more than rounding counts as the same, on the edge of it too.
func TestUseAtRounding(t *testing.T) {
	t.Parallel()
	if !same(0, sameMm) || !same(sameMm, 0) || same(0, 2*sameMm) || same(5, 5-2*sameMm) {
		t.Error("what is the same")
	}
	is := limits{1.5, 1, 2}
	for _, c := range []struct {
		was  limits
		want Use
	}{
		{limits{1.5, is.min - sameMm, is.max + sameMm}, AsIs}, {limits{1.5, is.min - 2*sameMm, 2}, Measure}, {limits{1.5, 1, is.max + 2*sameMm}, Measure},
		{limits{0.5, 0, is.min + sameMm}, Rework}, {limits{0.5, 0, is.min + 2*sameMm}, Measure}, {limits{3, is.max - sameMm, 4}, Scrap}, {limits{3, is.max - 2*sameMm, 4}, Measure},
	} {
		if got := cutUse(c.was, is); got != c.want {
			t.Errorf("%v for %v: %q, want %q", c.was, is, got, c.want)
		}
		flip := func(l limits) limits { return limits{-l.at, -l.max, -l.min} }
		if got := metalUse(flip(c.was), flip(is)); got != c.want {
			t.Errorf("metal %v for %v: %q, want %q", c.was, is, got, c.want)
		}
	}
	bar := func(long, r float64) *plan.Section {
		return &plan.Section{LengthMm: long, MaxMm: r, Outer: []plan.XY{{XMm: 0, YMm: r}, {XMm: long, YMm: r}}}
	}
	tube := func(long, r, bore float64) *plan.Section {
		s := bar(long, r)
		s.Inner = []plan.XY{{XMm: 0, YMm: bore}, {XMm: long, YMm: bore}}
		return s
	}
	stepped := func(long, r, bore float64) *plan.Section { // bored in its back half alone
		s := bar(long, r)
		s.Inner = []plan.XY{{XMm: long / 2, YMm: bore}, {XMm: long, YMm: bore}}
		return s
	}
	for _, c := range []struct {
		was, is *plan.Section
		shift   float64
		want    Use
	}{
		{tube(60, 10, 5), tube(50, 10, 5), 5, Rework}, {tube(60, 10, 5), tube(50, 10, 6), 0, Rework}, {tube(50, 10, 5), tube(50, 10, 6), 0, Rework}, {tube(50, 10, 5), tube(50, 10, 4), 0, Scrap},
		{stepped(60, 10, 5), tube(30, 10, 5), 30, Rework}, {stepped(60, 10, 5), tube(31, 10, 5), 29, Rework}, {stepped(60, 10, 5), tube(31, 10, 0), 29, Scrap}, {stepped(60, 10, 5), tube(30, 10, 0), 0, Rework},
		{bar(50, 10), bar(50, 10+nearMm), 0, AsIs}, {bar(50, 10), bar(50, 10+1.1*nearMm), 0, Scrap}, {bar(50, 10), bar(50, 10-nearMm), 0, AsIs}, {bar(50, 10), bar(50, 10-1.1*nearMm), 0, Rework},
		{tube(50, 10, 5), tube(50, 10, 5-nearMm), 0, AsIs}, {tube(50, 10, 5), tube(50, 10, 5-1.1*nearMm), 0, Scrap}, {tube(50, 10, 5), tube(50, 10, 5+nearMm), 0, AsIs}, {tube(50, 10, 5), tube(50, 10, 5+1.1*nearMm), 0, Rework},
		{bar(50, 10), bar(50, 10), 0, AsIs}, {bar(50+2*sameMm, 10), bar(50, 10), 0, Rework}, {bar(50+sameMm/2, 10), bar(50, 10), 0, AsIs},
		{bar(60, 10), bar(50, 10), 5, Rework}, {bar(60, 10), bar(50, 10), 11, Scrap}, {bar(50, 10), bar(50, 9), 0, Rework}, {bar(50, 10), bar(50, 11), 0, Scrap}, {bar(50, 10), bar(51, 10), 0, Scrap}, {bar(50, 10), bar(60, 10), -10, Scrap},
	} {
		if got := sectionUse(c.was, c.is, c.shift); got != c.want {
			t.Errorf("%g × %g for %g × %g, %g on: %q, want %q", c.was.MaxMm, c.was.LengthMm, c.is.MaxMm, c.is.LengthMm, c.shift, got, c.want)
		}
	}
}

// The state before has the name that the head of its job had.
func TestBefore(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		heading []Change
		want    string
	}{
		{nil, "the state before"},
		{[]Change{{What: "tolerance", OldText: "m"}}, "the state before"},
		{[]Change{{What: "revision", NewText: "A"}}, "the state before"},
		{[]Change{{What: "tolerance", OldText: "m"}, {What: "date", OldText: "2025-01-31"}, {What: "revision", OldText: "A"}}, "revision A"},
		{[]Change{{What: "date", OldText: "2025-01-31"}, {What: "revision", NewText: "B"}}, "2025-01-31"},
	} {
		if got := (&Report{Heading: c.heading}).Before(); got != c.want {
			t.Errorf("%v: %q, want %q", c.heading, got, c.want)
		}
	}
}

// Openings are in their place within 1e-5 mm, on a round by the chord (of 1° on Ø80: 80·sin
// 0.5° = 0.698); a pitch circle is told of where both have one.
func TestPlaceAtRounding(t *testing.T) {
	t.Parallel()
	at := func(x ...float64) (out []plan.XY) {
		for _, v := range x {
			out = append(out, plan.XY{XMm: v})
		}
		return out
	}
	for _, c := range []struct {
		name    string
		was, is feature
		want    []Change
	}{
		{"off by rounding", feature{places: at(0, 50)}, feature{places: at(placeMm, 50)}, nil},
		{"off by more", feature{places: at(0, 50)}, feature{places: at(2*placeMm, 50)}, []Change{{Code: Moved, MovedMm: 2 * placeMm, Use: Scrap}}},
		{"one more", feature{places: at(0)}, feature{places: at(placeMm, 50)}, []Change{{Code: More, Count: 1, Use: Rework}}},
		{"twice in its place", feature{places: at(0)}, feature{places: at(0, 0)}, []Change{{Code: More, Count: 1, Use: Rework}}},
		{"two less", feature{places: at(0, 50, 90)}, feature{places: at(placeMm)}, []Change{{Code: Fewer, Count: 2, Use: Plug}}},
		{"one more, elsewhere", feature{places: at(0)}, feature{places: at(3, 50)}, []Change{{Code: Moved, MovedMm: 47 + 3, Count: 1, Use: Scrap}}},
		{"another pitch circle", feature{places: at(30), pcdMm: 60}, feature{places: at(31), pcdMm: 62}, []Change{{Code: Moved, MovedMm: 1, Use: Scrap, What: "pitch circle", Unit: plan.Diameter, Old: 60, New: 62}}},
		{"the same pitch circle", feature{places: at(30), pcdMm: 60}, feature{places: at(31), pcdMm: 60}, []Change{{Code: Moved, MovedMm: 1, Use: Scrap}}},
		{"no pitch circle before", feature{places: at(30)}, feature{places: at(31), pcdMm: 62}, []Change{{Code: Moved, MovedMm: 1, Use: Scrap}}},
		{"none now", feature{places: at(30), pcdMm: 60}, feature{places: at(31)}, []Change{{Code: Moved, MovedMm: 1, Use: Scrap}}},
		{"on a round", feature{places: at(90), roundMm: 80}, feature{places: at(91), roundMm: 80}, []Change{{Code: Moved, MovedMm: 0.698123, Use: Scrap}}},
	} {
		var p pair
		p.place(&c.was, &c.is)
		for i := range p.out {
			p.out[i].MovedMm = words.Round(p.out[i].MovedMm, 6)
		}
		if !slices.Equal(p.out, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, p.out, c.want)
		}
	}
	var p pair
	if p.chamfer(&feature{}, &feature{chamfer: &parts.Chamfer{}}); p.out != nil {
		t.Errorf("a bevel where none was is no other size: %+v", p.out)
	}
	if got := (size{text: "through", value: exactly(throughMm)}).number(); got != 0 {
		t.Errorf("through is %g", got)
	}
}

// What is formed from sheet comes, goes and reads otherwise by its kind and name; how a
// ring is split, wherever it stands among the features; a check whose limits became wider
// is passed by what passed before.
func TestByWords(t *testing.T) {
	t.Parallel()
	seam := plan.Feature{Kind: plan.SeamFeature, Name: "seam", Size: "80 long"}
	end, bore := plan.Feature{Kind: plan.EndFeature, Name: "seam", Size: "cut"}, plan.Feature{Name: "bore", Size: "Ø40"}
	longer, other := seam, seam
	longer.Size, other.Note = "90 long", "tacked first"
	split, wider := plan.Feature{Kind: plan.ClampFeature, Size: "split 2"}, plan.Feature{Kind: plan.ClampFeature, Size: "split 3", Note: "M5"}
	check := func(min, max float64) []plan.Check {
		return []plan.Check{{What: "length", Limits: words.Trim(min, 7) + " to " + words.Trim(max, 7), MinMm: min, MaxMm: max}}
	}
	for _, c := range []struct {
		name    string
		was, is plan.PartPlan
		shiftMm float64
		want    []Change
	}{
		{"the same", plan.PartPlan{Features: []plan.Feature{bore, seam, split}}, plan.PartPlan{Features: []plan.Feature{seam, split}}, 0, nil},
		{"longer", plan.PartPlan{Features: []plan.Feature{seam}}, plan.PartPlan{Features: []plan.Feature{longer}}, 0, []Change{{Code: Reworded, Feature: "seam", OldText: "80 long", NewText: "90 long", Use: ByHand}}},
		{"another note", plan.PartPlan{Features: []plan.Feature{seam}}, plan.PartPlan{Features: []plan.Feature{other}}, 0, []Change{{Code: Reworded, Feature: "seam", OldText: "80 long", NewText: "80 long; tacked first", Use: ByHand}}},
		{"another kind", plan.PartPlan{Features: []plan.Feature{seam}}, plan.PartPlan{Features: []plan.Feature{end}}, 0, []Change{{Code: Added, Feature: "seam", NewText: "cut", Use: ByHand}, {Code: Removed, Feature: "seam", OldText: "80 long", Use: ByHand}}},
		{"gone", plan.PartPlan{Features: []plan.Feature{seam, bore}}, plan.PartPlan{}, 0, []Change{{Code: Removed, Feature: "seam", OldText: "80 long", Use: ByHand}}},
		{"split", plan.PartPlan{}, plan.PartPlan{Features: []plan.Feature{split}}, 0, []Change{{Code: Added, Feature: "clamp", NewText: "split 2", Use: Rework}}},
		{"whole", plan.PartPlan{Features: []plan.Feature{bore, split}}, plan.PartPlan{Features: []plan.Feature{bore}}, 0, []Change{{Code: Removed, Feature: "clamp", OldText: "split 2", Use: Scrap}}},
		{"split wider", plan.PartPlan{Features: []plan.Feature{split}, Clamp: &plan.ClampRow{SlotMm: 2}}, plan.PartPlan{Features: []plan.Feature{bore, wider}, Clamp: &plan.ClampRow{SlotMm: 3}}, 0, []Change{{Code: Reworded, Feature: "clamp", OldText: "split 2", NewText: "split 3; M5", Use: Rework}}},
		{"wider limits", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(40+sameMm, 41-sameMm)}, 0, []Change{{Code: Limits, What: "length", OldText: "40 to 41", NewText: "40.000001 to 40.999999", Use: AsIs}}},
		{"less at the bottom", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(40.1, 41)}, 0, []Change{{Code: Limits, What: "length", OldText: "40 to 41", NewText: "40.1 to 41", Use: Measure}}},
		{"less at the top", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(39, 40.9)}, 0, []Change{{Code: Limits, What: "length", OldText: "40 to 41", NewText: "39 to 40.9", Use: Measure}}},
		{"none within", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(41.1, 42)}, 0, []Change{{Code: Limits, What: "length", OldText: "40 to 41", NewText: "41.1 to 42", Use: ByHand}}},
		{"none within, from a face taken off", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(35, 36)}, 2, []Change{{Code: Limits, What: "length", OldText: "40 to 41", NewText: "35 to 36", Use: ByHand}}},
		{"no number before", plan.PartPlan{Checks: check(0, 0)}, plan.PartPlan{Checks: check(0, 1)}, 0, []Change{{Code: Limits, What: "length", OldText: "0 to 0", NewText: "0 to 1", Use: Measure}}},
		{"from a face taken off", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(38, 39)}, 2, nil},
		{"and other limits", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(38, 39.5)}, 2, []Change{{Code: Limits, What: "length", OldText: "40 to 41", NewText: "38 to 39.5", Use: Measure}}},
		{"and other limits below", plan.PartPlan{Checks: check(40, 41)}, plan.PartPlan{Checks: check(37.5, 39)}, 2, []Change{{Code: Limits, What: "length", OldText: "40 to 41", NewText: "37.5 to 39", Use: Measure}}},
	} {
		p := pair{was: model{plan: &c.was}, is: model{plan: &c.is}, shiftMm: c.shiftMm}
		p.formed()
		p.clamp()
		p.checks()
		if !slices.Equal(p.out, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, p.out, c.want)
		}
	}
}

// The review is printed again where a finding reads, stands, is cured or is accepted otherwise.
func TestReviewAgain(t *testing.T) {
	t.Parallel()
	f := review.Finding{Code: "edge", Part: "ring", Feature: "bolts", What: "near the edge", Numbers: "2 mm", Fix: "move it", Reason: "holds"}
	for name, change := range map[string]func(*review.Finding){
		"code": func(f *review.Finding) { f.Code = "wall" }, "part": func(f *review.Finding) { f.Part = "plate" }, "feature": func(f *review.Finding) { f.Feature = "taps" }, "words": func(f *review.Finding) { f.What = "at the edge" },
		"numbers": func(f *review.Finding) { f.Numbers = "3 mm" }, "cure": func(f *review.Finding) { f.Fix = "leave it" }, "reason": func(f *review.Finding) { f.Reason = "" }, "": func(f *review.Finding) { f.Rule = "another" },
	} {
		g := f
		change(&g)
		var r Report
		r.sheets(&side{findings: []review.Finding{f}}, &side{findings: []review.Finding{g}})
		if want := name != ""; slices.Contains(r.Print, "review") != want || slices.Contains(r.Discard, "review") != want {
			t.Errorf("%q: %v", name, r.Print)
		}
	}
}
