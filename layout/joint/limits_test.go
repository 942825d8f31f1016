package joint

import (
	"math"
	"slices"
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// TestRingTolerances: ISO 492, tapered roller bearings of normal class: the lower
// deviation of the bore and of the outside by steps of diameter (nodeshk.com, "Tapered roller bearings tolerances"; a
// ring at the end of a step belongs to it).
func TestRingTolerances(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		what  string
		table []ringTolerance
		ends  []float64
		um    []float64
	}{
		{"bore", coneBores, []float64{18, 30, 50, 80, 120, 180, 250, 315}, []float64{-12, -12, -12, -15, -20, -25, -30, -35}},
		{"outside", cupSizes, []float64{30, 50, 80, 120, 150, 180, 250, 315, 400}, []float64{-12, -14, -16, -18, -20, -25, -30, -35, -40}},
	} {
		for i, end := range c.ends {
			if got, ok := deviation(c.table, end); !ok || got.Min != c.um[i] || got.Max != 0 {
				t.Errorf("%s of %g: %v, want %g", c.what, end, got, c.um[i])
			}
			got, ok := deviation(c.table, end+0.5)
			if last := i+1 == len(c.ends); ok == last || !last && got.Min != c.um[i+1] {
				t.Errorf("%s over %g: %v, %v", c.what, end, got, ok)
			}
		}
	}
}

// TestAdviceAtItsLimits: where the table of seats goes to its next row, as a bearing maker's general catalogue prints
// it, "Fits of radial bearings with shafts", cylindrical and tapered rollers, which has no light loads over 200 mm.
func TestAdviceAtItsLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		load string
		d    float64
		want string
	}{
		{"light", 0.5, "js6"}, {"normal", 0.5, "k5"}, {"heavy", 0.5, "k5"},
		{"light", 39.9, "js6"}, {"light", 40, "k6"}, {"light", 140, "k6"}, {"light", 140.5, "m6"}, {"light", 200, "m6"}, {"light", 200.1, "p6"},
		{"normal", 39.9, "k5"}, {"normal", 40, "m5"}, {"normal", 100, "m5"}, {"normal", 100.1, "m6"}, {"normal", 140, "m6"}, {"normal", 140.1, "n6"}, {"normal", 200, "n6"}, {"normal", 200.1, "p6"},
		{"heavy", 49.9, "m5"}, {"heavy", 50, "n6"}, {"heavy", 140, "n6"}, {"heavy", 140.1, "p6"}, {"heavy", 200, "p6"}, {"heavy", 200.1, "r6"},
	} {
		if got := seatOf(coneSeats, &parts.BearingJoint{Load: c.load, Bore: length(c.d)}).classes; got[0] != c.want {
			t.Errorf("%s load, %g mm: %v, want %s", c.load, c.d, got, c.want)
		}
	}
	for _, c := range []struct { // ball bearings, the same table
		load string
		d    float64
		want string
	}{
		{"light", 0.5, "js5"}, {"light", 17.9, "js5"}, {"light", 18, "js6"}, {"light", 100, "js6"}, {"light", 100.1, "k6"}, {"light", 300, "k6"},
		{"normal", 0.5, "js5"}, {"normal", 17.9, "js5"}, {"normal", 18, "k5"}, {"normal", 100, "k5"}, {"heavy", 100.1, "m5"}, {"normal", 140, "m5"}, {"normal", 140.1, "m6"}, {"heavy", 300, "m6"},
	} {
		in := &parts.BearingJoint{Ball: true, Load: c.load, Bore: length(c.d)}
		if shafts, housings := seatTables(in); seatOf(shafts, in).classes[0] != c.want || seatOf(housings, in).classes[0] != "H7" {
			t.Errorf("%s load, ball bearing of %g: %v, want %s", c.load, c.d, seatOf(shafts, in).classes, c.want)
		}
	}
	for load, want := range map[string]string{"light": "M7", "normal": "N7", "heavy": "N7"} {
		in := &parts.BearingJoint{Ball: true, Load: load, Rotating: "outer", Bore: length(0.5)}
		if shafts, housings := seatTables(in); seatOf(shafts, in).classes[0] != "g6" || seatOf(housings, in).classes[0] != want {
			t.Errorf("%s load on an outer ring that turns, ball bearing: %v, %v", load, seatOf(shafts, in).classes, seatOf(housings, in).classes)
		}
	}
	for _, c := range [][3]string{{"light", "g6", "M7"}, {"normal", "g6", "N7"}, {"heavy", "g6", "P7"}} {
		for _, d := range []float64{0.5, 39, 300} { // where the outer ring turns, of whatever size
			in := &parts.BearingJoint{Load: c[0], Rotating: "outer", Bore: length(d)}
			if cone, cup := seatOf(coneSeats, in).classes[0], seatOf(cupSeats, in).classes[0]; cone != c[1] || cup != c[2] {
				t.Errorf("%s load on an outer ring that turns, %g mm: %s, %s", c[0], d, cone, cup)
			}
			in.Rotating = "inner"
			if cup := seatOf(cupSeats, in).classes[0]; cup != "H7" {
				t.Errorf("%s load, outer ring stands, %g mm: %s", c[0], d, cup)
			}
		}
	}
	for mm, inch := range map[[2]float64]bool{{40, 80}: false, {31.75, 62}: true, {40, 73.431}: true, {40.005, 80}: false, {40, 80.02}: true, {40.0099, 80}: false, {40.0105, 80}: true, {40, 79.9895}: true} {
		if got := inchBearing(&parts.BearingJoint{Bore: length(mm[0]), Outside: length(mm[1])}); got != inch {
			t.Errorf("%v: inches %v", mm, got)
		}
	}
}

// TestTurnOnto: the least turn of a pattern about its middle onto another, which
// stands elsewhere; none where the turn is said and does not fit.
func TestTurnOnto(t *testing.T) {
	t.Parallel()
	pattern := func(x, y, first float64, degs ...float64) (out []plan.XY) {
		for _, d := range degs {
			sin, cos := math.Sincos((first + d) * math.Pi / 180)
			out = append(out, plan.XY{XMm: x + 50*sin, YMm: y + 50*cos})
		}
		return out
	}
	four, three := []float64{0, 90, 180, 270}, []float64{0, 120, 240}
	for _, c := range []struct {
		name string
		a, b []plan.XY
		said bool
		deg  float64
		ok   bool
	}{
		{"beside", pattern(0, 0, 45, four...), pattern(200, 30, 45, four...), false, 0, true},
		{"turned by 30", pattern(0, 0, 0, four...), pattern(200, 30, 30, four...), false, 30, true},
		{"back by 30", pattern(0, 0, 30, four...), pattern(-200, 30, 0, four...), false, 330, true},
		{"three, by 50", pattern(0, 0, 0, three...), pattern(0, 99, 50, three...), false, 50, true},
		{"said, and it fits", pattern(0, 0, 45, four...), pattern(200, 30, 135, four...), true, 0, true},
		{"said, and it does not", pattern(0, 0, 45, four...), pattern(200, 30, 75, four...), true, 0, false},
		{"another pattern", pattern(0, 0, 0, four...), pattern(200, 30, 0, 0, 80, 180, 270), false, 0, false},
	} {
		deg, ok := turnOnto(c.a, c.b, leeway{mm: 0.3}, c.said)
		if ok != c.ok || math.Abs(math.Remainder(deg-c.deg, 360)) > 1e-9 {
			t.Errorf("%s: %g, %v; want %g, %v", c.name, deg, ok, c.deg, c.ok)
		}
	}
}

// TestMotion: a turn is clockwise seen from the front; a flip is about the line
// that it leaves standing, and a point and its clock angle go together.
func TestMotion(t *testing.T) {
	t.Parallel()
	for _, m := range []placement{turnedBy(30), turnedBy(200), {turn: 30, s: -1}, {s: -1}, {turn: -75, s: -1}} {
		for deg := 0.0; deg < 360; deg += 25 {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			got := m.point(plan.XY{XMm: 10 * sin, YMm: 10 * cos})
			sin, cos = math.Sincos(m.clock(deg) * math.Pi / 180)
			if math.Hypot(got.XMm-10*sin, got.YMm-10*cos) > 1e-9 {
				t.Errorf("%+v: %g° goes to %v, by its clock to %g°", m, deg, got, m.clock(deg))
			}
		}
	}
	if got := turnedBy(90).point(plan.XY{YMm: 10}); math.Hypot(got.XMm-10, got.YMm) > 1e-9 {
		t.Errorf("TOP turned by 90° is at %v", got)
	}
}

// TestRely: of a length that is there as drawn it is told where its limits take more than there
// is; not of one that is too short already, or has as much left.
func TestRely(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		mm, less, want float64
		said           bool
	}{{10, 0.5, 10, true}, {10.4, 0.5, 10, true}, {10.5, 0.5, 10, false}, {9.9, 0.5, 10, false}, {10, 0, 10, false}, {10.3, 0.5, 10, true}} {
		j := &joint{w: words.Writer{Units: parts.Millimetres}, in: &parts.Joint{}, out: &plan.JointPlan{}}
		j.rely(relied{what: "it", mm: c.mm, less: c.less, wantMm: c.want, of: "step"})
		if (len(j.out.Problems) == 1) != c.said || c.said && math.Abs(j.out.Problems[0].Args[3].Value-(c.mm-c.less)) > 1e-9 {
			t.Errorf("%+v: %+v", c, j.out.Problems)
		}
	}
}

// TestShake: a ring that goes over the largest of a spigot has its limits to shake by on the smallest,
// and twice the play of a plug, as a plug in a bore; one without limits has its plug turned to it.
func TestShake(t *testing.T) {
	t.Parallel()
	step := func(inside bool, low, high float64, class string) part.Step {
		return part.Step{Name: "nose", Inside: inside, Size: part.Sized{NominalMm: high, MinMm: low, MaxMm: high, Limited: true, Class: class}}
	}
	least, most := step(false, 60-shakeMm+2*plugMm, 60, "h11"), step(false, 60-shakeMm+2*plugMm-0.01, 60, "h11")
	for _, c := range []struct {
		step part.Step
		want float64
	}{{part.Step{Inside: true, Size: part.Sized{MinMm: 60, MaxMm: 60.5}}, 0}, {step(true, 60, 60.5, "H12"), 0.5 + 2*plugMm}, {step(false, 59.8, 60, "h11"), 0.2 + 2*plugMm}, {least, shakeMm}, {most, shakeMm + 0.01}} {
		if got := shake(&c.step); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %g, want %g", c.step.Size, got, c.want)
		}
	}
	for _, c := range []struct {
		place *part.Step
		rings int
		want  string
	}{
		{nil, 1, "P: no bore or spigot with limits at the front face to set it on"}, {&most, 1, "P: its nose has too wide limits to set it on"},
		{&least, 0, "P: too few pieces for one that is set by its nose"}, {&least, 1, "P: its register is another"},
	} {
		g := &jig{rings: make([]drilled, c.rings), left: []drilled{{r: &part.Model{Out: &plan.PartPlan{Title: "P"}}, face: parts.Front, place: c.place}}}
		if got := g.whyNot(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
		g.left = append(g.left, g.left[0]) // another pattern of the same part
		if got := g.whyNot(); got != c.want {
			t.Errorf("twice: %q", got)
		}
	}
}

// What is bought is for each that needs it, once, though the name of one stands in another's.
func TestBoughtForEach(t *testing.T) {
	t.Parallel()
	var list buying
	for _, use := range []string{"Ring holder", "Ring", "Ring"} {
		list.add("O-ring 40x2", 1, use, "")
	}
	if got := list[0]; len(list) != 1 || got.Quantity != 3 || !slices.Equal(got.others, []string{"Ring holder", "Ring"}) {
		t.Errorf("%+v", got)
	}
}
