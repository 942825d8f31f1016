package part

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

const mainTube = "part: barrel\ntitle: Barrel\nkind: tube\nmaterial: S235\ntube: {outside: 200, wall: 5, length: 800}\n"

// branch is a tube whose back end sits on the barrel.
func branch(end string) string {
	return "part: stub\ntitle: Stub\nkind: tube\nmaterial: S235\ntube: {outside: 80, wall: 4, length: 500}\nends:\n  back: {onto: barrel.outside, " + end + "}\n"
}

func development(t *testing.T, m *Model, name string) plan.Development {
	t.Helper()
	i := slices.IndexFunc(m.Developments, func(d plan.Development) bool { return d.Name == name })
	if i < 0 {
		t.Fatalf("no development %s", name)
	}
	return m.Developments[i]
}

// A tube that is rolled is cut by its sizes; the paper round its end and beside its hole is wanted all the same.
func TestRolledTubePaper(t *testing.T) {
	t.Parallel()
	tube := strings.Replace(branch("angle: 90, place: {clock: 0, axial: 300}"), "tube: {", "stock: {sheet: 4 mm, cut: laser}\ntube: {seam: 180, ", 1)
	m := work(t, "mm", tube, mainTube)
	for _, d := range m.Developments {
		if shell := d.Kind == plan.ShellPattern; (d.NoTemplate != "") != shell {
			t.Errorf("%s: no template: %q", d.Name, d.NoTemplate)
		}
	}
	if len(m.Developments) != 3 {
		t.Errorf("%d flat patterns, want the blank, the end and the hole", len(m.Developments))
	}
}

// TestSaddleOrigin: the axis of a branch that leans goes through the outside of
// the main off the crossing of the axes. Looking at the main's outside with its
// front up, clock angles grow to the left (0° at TOP, clockwise seen from the front:
// 90° is on the right of who looks at the front, on the left of who looks the other
// way). The axis is off √(R² − e²)/tan β: with R = 100 and
// β = 45° by 100 along, with e = 50 by 86.603 along and asin(50/100) = 30° round
// (geometry). The template has one ringed cross, there.
func TestSaddleOrigin(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ end, want, lean string }{
		{"angle: 45, place: {clock: 90, axial: 300}", "clock 90°, 200 from the front face", "front"},
		{"angle: 45, place: {clock: 90, axial: 300, leans: back}", "clock 90°, 400 from the front face", "back"},
		{"angle: 45, place: {clock: 90, axial: 300, from: back}", "clock 90°, 400 from the back face", "front"},
		{"angle: 45, offset: 50, place: {clock: 90, axial: 300}", "clock 60°, 213.4 from the front face", "front"},
		{"angle: 45, offset: 50, place: {clock: 90, axial: 300, leans: back}", "clock 120°, 386.6 from the front face", "back"},
		{"angle: 90, offset: -50, place: {clock: 10, axial: 300}", "clock 40°, 300 from the front face", "front"},
	} {
		m := work(t, "mm", branch(c.end), mainTube)
		hole := development(t, m, "hole-back")
		var at []plan.XY
		for _, l := range hole.Labels {
			if l.Text == "origin" {
				at = append(at, l.AtMm)
			}
		}
		if want := "at " + c.want + " of the main"; hole.Origin != want || !slices.Equal(at, []plan.XY{hole.OriginMm}) {
			t.Errorf("%s: %v, %q at %v, want %q", c.end, at, hole.Origin, hole.OriginMm, want)
		}
		if note := hole.Notes[0]; !strings.Contains(note, c.want) || !strings.Contains(note, "towards the "+c.lean+" of the main") {
			t.Errorf("%s: %s", c.end, note)
		}
		if note := strings.Join(development(t, m, "saddle-back").Notes, " "); !strings.Contains(note, "goes to the "+c.lean+" of the main") {
			t.Errorf("%s: %s", c.end, note)
		}
		wantScale := math.Pi * 200.1 / 360
		if c.lean == "front" {
			wantScale = -wantScale
		}
		if math.Abs(hole.ScaleMm-wantScale) > 1e-9 {
			t.Errorf("%s: one degree is %v", c.end, hole.ScaleMm)
		}
		// The cross and the scale under it agree: its x read on the scale is its clock.
		i := slices.IndexFunc(hole.Labels, func(l plan.PatternLabel) bool { return strings.HasPrefix(l.Text, "origin") })
		if clock := hole.ScaleFromDeg + hole.Labels[i].AtMm.XMm/hole.ScaleMm; !strings.HasPrefix(c.want, "clock "+strconv.Itoa(int(math.Round(clock)))+"°") {
			t.Errorf("%s: the cross is at %v° of the scale", c.end, clock)
		}
		has(t, m, "Offer it up to Barrel outside, Ø200, "+c.want+" of the main")
	}
	// A branch set in ends at the bore: on the outside it would gap by more than its own gap.
	in := work(t, "mm", branch("angle: 60, joint: set-in, gap: 2, place: {clock: 90, axial: 300}"), mainTube)
	has(t, in, "It is done before its hole, which is then ground to it. There it enters Barrel outside, Ø200, clock 90°", ": gap 2 mm all round, its end level with the bore there.")
	has(t, work(t, "mm", mainTube, branch("angle: 60, joint: set-in, gap: 2, place: {clock: 90, axial: 300}")), "The branch is done before: enter it and grind the hole to it, not it to the hole.")
	for gap, limits := range map[string]string{"2": "1.0 – 3.0 at any place", "0.8": "up to 1.8 at any place"} { // no gap is less than none
		in := work(t, "mm", branch("angle: 60, joint: set-in, gap: "+gap+", place: {clock: 90, axial: 300}"), mainTube)
		if c := check(in, "back end saddle in its main"); c == nil || c.Limits != limits {
			t.Errorf("gap %s: %+v", gap, c)
		}
	}
	// TOP lies the shorter way round: a quarter of π · 200.1 from 90° and from 270°.
	for _, clock := range []string{"90", "270"} {
		sizes := development(t, work(t, "mm", branch("angle: 60, place: {clock: "+clock+", axial: 300}"), mainTube), "hole-back").Sizes
		if !slices.Contains(sizes, plan.PatternValue{Name: "TOP of the main from the origin, round it", Text: "157.16"}) {
			t.Errorf("from %s°: %v", clock, sizes)
		}
	}
	// Where the place is not said, nothing is claimed of it.
	if note := development(t, work(t, "mm", branch("angle: 60"), mainTube), "hole-back").Notes[0]; !strings.HasPrefix(note, "Lay the ringed cross, the origin, where the branch's axis goes through") {
		t.Error(note)
	}
}

// TestHoleOnMain: the main's own sheet has the hole, with its origin.
func TestHoleOnMain(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", mainTube, branch("angle: 45, place: {clock: 90, axial: 300}"))
	f := feature(m, "hole for Stub")
	if f.Note != "origin at clock 90°, 200 from the front face, leaning to the front" || f.Balloon.XMm != 200 {
		t.Errorf("feature %v", f)
	}
	has(t, m, "Hole for Stub", "Lay the hole template of Stub on the outside, its origin at clock 90°, 200 from the front face")
	if c := check(m, "hole for Stub"); c == nil || c.MinMm != 199 || c.MaxMm != 201 { // by tape: ±1, common practice
		t.Errorf("record %v", c)
	}
}

// TestHoleOnMainIsMadeOnce: a round hole inside that of the branch, bore 72, is cut with it, in one
// operation and one line of the record; one that is tapped, or reaches out of it by more than 0.2, is its own. One of
// less than half the bore is where the cut starts.
func TestHoleOnMainIsMadeOnce(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		hole        string
		once, start bool
	}{
		{"axial: 300, size: 72", true, false},
		{"axial: 300.6, size: 71.1", true, false}, // 0.15 beyond the bore's 36
		{"axial: 300.7, size: 71.1", false, false},
		{"axial: 303, size: 12", true, true},
		{"axial: 300, size: M8 tap", false, false},
	} {
		m := work(t, "mm", mainTube+"radial:\n  - {name: hatch, clock: 90, "+c.hole+"}\n", branch("angle: 90, place: {clock: 90, axial: 300}"))
		own := slices.ContainsFunc(m.Out.Operations, func(o plan.Operation) bool { return strings.HasPrefix(o.Title, "hatch: ") })
		measured := slices.ContainsFunc(m.Out.Checks, func(c plan.Check) bool { return strings.HasPrefix(c.What, "hatch at ") })
		if own == c.once || measured == c.once || len(m.Out.Shown) == 1 != c.once || strings.Contains(lines(m), "Drill hatch, Ø12, inside the marks to start from.") != c.start {
			t.Errorf("%s: %v, %v\n%s", c.hole, own, measured, lines(m))
		}
	}
}

// TestSaddleIsAsDeepAsItsTable: on the main of R 100, at 55° and 20 off, the outside of the branch
// (r 40, the wall that touches first) lies (√(R² − (e + r sin t)²) + r cos t cos b)/sin b from the
// crossing of the axes, that with r 36 where it is more: from 90.823 to 148.638 by 100 000 places
// (worked out apart from this program), 57.815 deep; the ordinates every 15° see 57.65 of it.
func TestSaddleIsAsDeepAsItsTable(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", branch("angle: 55, offset: 20, place: {clock: 60, axial: 300}"), mainTube)
	deep := slices.IndexFunc(development(t, m, "saddle-back").Sizes, func(v plan.PatternValue) bool { return v.Name == "deepest drop" })
	text := development(t, m, "saddle-back").Sizes[deep].Text
	mm, err := strconv.ParseFloat(text, 64)
	if f := feature(m, "back end saddle"); err != nil || math.Abs(mm-57.815) > 0.006 || !strings.HasSuffix(f.Size, ", "+text+" deep") {
		t.Errorf("table %s, feature %s", text, f.Size)
	}
}

// TestStands: a tube 500 long to its longest points, which touch the main of R 100 with
// the inside of 36 beside the middle, √(100² − 36²) = 93.295 over its axis: 500 + 93.3 +
// 100 from the far side of Barrel. At 45° the middle of the end lies (reach) · sin 45° + 100 over it.
func TestStands(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ end, want string }{
		{"place: {clock: 0, axial: 300}", "Stub on Barrel, its axis through the outside of Barrel at clock 0°, 300 from the front face, 90° between the axes, its TOP to the front of Barrel, the middle of its free end 693.3 from the far side of Barrel"},
		{"angle: 45, clock: 30.25, place: {clock: 90.25, axial: 300, from: back, leans: back}", "Stub on Barrel, its axis through the outside of Barrel at clock 90.25°, 200 from the back face, 45° between the axes, leaning to the back of Barrel, 30.25° of its clock to the back of Barrel, the middle of its free end REACH from the far side of Barrel"},
		{"angle: 60, offset: 20, place: {clock: 110, axial: 300, leans: back}", "Stub on Barrel, its axis through the outside of Barrel at clock 121.54°, 356.57 from the front face, 60° between the axes, pointing to 110° of that clock and so past the axis of Barrel by 20, leaning to the back of Barrel, its TOP to the back of Barrel, the middle of its free end 609.4 from the far side of Barrel"},
		{"angle: 60", ""},
	} {
		m := work(t, "mm", branch(c.end), mainTube)
		reach, _, ok := m.ReachMm(parts.Back)
		want := strings.Replace(c.want, "REACH", m.W.Size(math.Round(10*(reach*math.Sqrt2/2+100))/10), 1)
		got := ""
		if s := m.Stands(parts.Back); s != nil {
			got = s.Text(m.W, "Stub", "Barrel")
		}
		if !ok || got != want || m.Stands(parts.Front) != nil {
			t.Errorf("%s:\n%q\n%q", c.end, got, want)
		}
	}
}

// TestGapIsLeft: set on, the curve of the branch leaves the gap; set in, the hole
// does: its radius is that of the branch and the gap (develop.Saddle), 40 + 2.
func TestGapIsLeft(t *testing.T) {
	t.Parallel()
	notes := func(end string) string {
		return strings.Join(development(t, work(t, "mm", branch(end), mainTube), "saddle-back").Notes, " ")
	}
	if s := notes("joint: set-on, gap: 2"); !strings.Contains(s, "The curve leaves a gap of 2") {
		t.Error(s)
	}
	if s := notes("joint: set-in, gap: 2"); strings.Contains(s, "The curve leaves a gap") || !strings.Contains(s, "left by the hole") {
		t.Error(s)
	}
	hole := development(t, work(t, "mm", branch("joint: set-in, gap: 2"), mainTube), "hole-back")
	if !slices.Contains(hole.Sizes, plan.PatternValue{Name: "hole diameter across the branch", Text: "84.00"}) {
		t.Errorf("sizes %v", hole.Sizes)
	}
}

// TestSlotFromBehind: a through slot of the front is a slot of its length on the
// back too, mirrored: its axis at clock 30° is at 330° there (geometry).
func TestSlotFromBehind(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", `part: plate
kind: plate
material: S235
stock: {plate: 10, cut: saw}
outline: {rectangle: [200, 150]}
slots:
  - {name: adjust, at: [[40, 20]], width: 10, length: 50, turn: 30}
holes:
  - {name: taps, face: back, at: [[0, 0]], size: M8 tap}
`)
	for _, f := range m.Faces {
		if f.Face != parts.Back {
			continue
		}
		i := slices.IndexFunc(f.Circles, func(c plan.Circle) bool { return strings.HasPrefix(c.Label, "adjust") })
		c := f.Circles[i]
		want := plan.XY{XMm: -10, YMm: 20 * math.Cos(math.Pi/6)}
		if c.CentreMm != (plan.XY{XMm: -40, YMm: 20}) || c.DiameterMm != 10 || math.Abs(c.HalfMm.XMm-want.XMm) > 1e-9 || math.Abs(c.HalfMm.YMm-want.YMm) > 1e-9 {
			t.Errorf("seen from the back %+v, half %v", c, want)
		}
	}
}

// A tube with a saddled end is cut from TOP to 180°: a branch of radius 40 stands on a round of
// radius 100. Its wall ends at TOP and 180°, over the crest of the round, and is longest at its sides, where the inside
// of its wall of 4 reaches 100 - √(100² - 36²) = 6.705 further down. On its clock 90° the longest places lie at TOP.
func TestSaddledSection(t *testing.T) {
	t.Parallel()
	for clock, want := range map[string]float64{"0": 500 - 6.705, "90": 500} {
		m := work(t, "mm", branch("angle: 90, clock: "+clock), mainTube)
		s := m.Section
		if len(s.Whole) != 2 || len(s.Seen) != 2 {
			t.Fatalf("%v, %v", s.Whole, s.Seen)
		}
		for _, loop := range s.Whole {
			far := 0.0
			for _, q := range loop {
				far = math.Max(far, q.XMm)
			}
			if math.Abs(far-want) > 0.01 {
				t.Errorf("clock %s: %v, want %g", clock, loop, want)
			}
		}
		side := s.Seen[1][len(s.Seen[1])/2]
		if math.Abs(side.XMm-(500+500-6.705-want)) > 0.01 || math.Abs(side.YMm) > 1e-6 {
			t.Errorf("clock %s: the side at %v", clock, side)
		}
		said := slices.ContainsFunc(m.Out.Dimensions, func(d plan.Dimension) bool {
			return d.Text == "493.3 at TOP and 180°"
		})
		if said != (clock == "0") {
			t.Errorf("clock %s: %+v", clock, m.Out.Dimensions)
		}
	}
}

// A cone of Ø120 to Ø30, 90 high, whose small end stands 20 to TOP, is at TOP 60 to 35 from the
// axis and at 180° 60 to -5; how far is measured.
func TestLeaningSection(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: stub\ntitle: Stub\nkind: cone\nmaterial: S235\ncone: {large: 120, small: 30, height: 90, thickness: 1.5, measured: outside, offset: 20, seam: 90}\n")
	s := m.Section
	if len(s.Whole) != 2 || s.Whole[0][0].YMm != 60 || s.Whole[0][1].YMm != 35 || s.Whole[1][0].YMm != -60 || s.Whole[1][1].YMm != 5 {
		t.Errorf("%v", s.Whole)
	}
	i := slices.IndexFunc(m.Out.Checks, func(c plan.Check) bool { return c.What == "small end, its middle to TOP" })
	if i < 0 || m.Out.Checks[i].Wanted != "20" || m.Out.Checks[i].Limits != "19.0 – 21.0" { // ISO 13920 class A, up to 30: 1
		t.Errorf("%+v", m.Out.Checks)
	}
}

// Where a branch's axis goes through its main is told as calipers read it, however the sizes come out, and each line of its template has its own
// number before its ordinate.
func TestSaddleRead(t *testing.T) {
	t.Parallel()
	m := work(t, "in", "part: stub\nkind: tube\nmaterial: S235\nstock: {tube: 1.5, wall: 0.065, length: 6, cut: saw}\ntube: {outside: 1.5, wall: 0.065, length: 5}\nends:\n"+
		"  back: {onto: main.outside, angle: 60, place: {clock: 0, axial: 6.33, from: back, leans: back}}\n",
		"part: main\nkind: tube\nmaterial: S235\nstock: {tube: 15, wall: 0.25, length: 5, cut: saw}\ntube: {outside: 15, wall: 0.25, length: 4}\n")
	has(t, m, "clock 0°, 2 in from the back face")
	for _, l := range development(t, m, "saddle-back").Lines {
		if n, err := strconv.Atoi(l.Name); err == nil && !strings.HasPrefix(l.Text, strconv.Itoa(n)+": ") {
			t.Errorf("%+v", l)
		}
	}
}
