package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

const housing = `part: housing
kind: bearing-housing
material: C45
top: keyway
stock: {round: 190 mm, length: 126 mm, cut: saw}
profile:
  outside:
    - {name: front, diameter: 120, fit: f7, length: 6}
    - {name: body, diameter: 180, length: 104}
    - {name: rear, diameter: 130, fit: f7, length: 10}
  inside:
    - {name: cup, diameter: 90, fit: K7, length: 26, seat: cup}
    - {name: wide, diameter: 80, length: 34}
    - {name: narrow, diameter: 70, length: 60}
radial:
  - {name: port, clock: 0, axial: 60, size: M10x1 tap}
  - {name: clear, clock: 90, axial: 80, size: M10x1 tap}
  - {name: short, clock: 180, axial: 80, size: M30 tap}
  - {name: edge, clock: 270, axial: 67, slot: {around: 8, along: 16}}
  - {name: beside, clock: 300, axial: 68, slot: {around: 8, along: 16}}
`

func lines(m *Model) string {
	var out []string
	for _, o := range m.Out.Operations {
		out = append(out, o.Title, o.Holding)
		out = append(out, o.Do...)
	}
	return strings.Join(out, "\n")
}

// has fails for every text that is not in the operations.
func has(t *testing.T, m *Model, texts ...string) {
	t.Helper()
	for _, s := range texts {
		if !strings.Contains(lines(m), s) {
			t.Errorf("no %q in\n%s", s, lines(m))
		}
	}
}

func check(m *Model, what string) *plan.Check {
	i := slices.IndexFunc(m.Out.Checks, func(c plan.Check) bool { return c.What == what })
	if i < 0 {
		return nil
	}
	return &m.Out.Checks[i]
}

func feature(m *Model, name string) plan.Feature {
	i := slices.IndexFunc(m.Features, func(f plan.Feature) bool { return f.Name == name })
	return m.Features[i]
}

// TestDimensionChain: 6 + 104 + 10 is 120. One link of a closed chain is
// auxiliary: in brackets, without limits, and not in the record (ISO 129-1, from
// memory); outside and inside. A blind bore closes no chain.
func TestDimensionChain(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", housing)
	for name, want := range map[string]string{"front": "× 6 long", "body": "× (104) long", "rear": "× 10 long", "cup": "× 26 long", "wide": "× 34 long", "narrow": "× (60) long"} {
		if got := feature(m, name).Size; !strings.HasSuffix(got, want) {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
		if measured := check(m, name+" length") != nil; measured != !strings.Contains(want, "(") {
			t.Errorf("%s: length measured %v", name, measured)
		}
	}
	if c := check(m, "length"); c == nil || c.MinMm != 119.7 || c.MaxMm != 120.3 { // ISO 2768-m, 30 to 120 mm
		t.Errorf("overall length %v", c)
	}
	has(t, m, "Turn body Ø180, (104) long")
	blind := work(t, "mm", strings.Replace(housing, "length: 60}", "length: 50}", 1))
	if got := feature(blind, "narrow").Size; !strings.HasSuffix(got, "× 50 long") || check(blind, "narrow length") == nil {
		t.Errorf("blind bore: %s", got)
	}
}

// TestBreakOut: what runs across the edge of a step in the bore says so; the
// hole at 80 lies clear of the step at 60, and a slot of 16 at 68 just touches it
// (geometry).
func TestBreakOut(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", housing)
	var got []string
	for _, p := range m.Out.Problems {
		if p.Kind != plan.BreaksOut || p.Pos.Line == 0 {
			t.Errorf("problem %v", p)
		}
		got = append(got, p.Feature+" "+p.Args[4].Text+m.W.Arg(p.Args[4]))
	}
	// The tapped hole is 10 wide: 5 from its middle; the slot is 16 long and 7 away.
	if want := []string{"port 5", "edge 1"}; !slices.Equal(got, want) {
		t.Errorf("breaks out: %v, want %v", got, want)
	}
	has(t, m, "It breaks out across the step from wide to narrow")
}

// TestCrossTap: through a wall of (180 − 70)/2 = 55 an M10 is tapped 15 deep, not
// 55; M30 goes through, for 55 is under two diameters (common practice).
func TestCrossTap(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", housing)
	has(t, m, "Depth: thread 15 deep, drilled into the bore, 55 through the wall.",
		"Depth: into the bore, 55 through the wall.")
	if strings.Contains(lines(m), "thread 45 deep") {
		t.Error("M30 is not tapped through")
	}
}

// TestOverhang: the bar of Ø190 × 126 in steel of 7850 kg/m³ is
// π/4 × 0.19² × 0.126 × 7850 = 28.0 kg before it is turned.
func TestOverhang(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", housing)
	b := &bench{Numbered: m.Numbered}
	if kg := b.stockKg(); kg < 28.0 || kg > 28.1 {
		t.Errorf("bar of %v kg", kg)
	}
	has(t, m, "chuck on the back end, set true; 28 kg before turning: hoist it in", "Turn body Ø180, (104) long, as far as the jaws allow, the rest when turned round.", "Turn the rest of body to Ø180, to meet what was turned before.")
	// The same with a body too short to be held twice, on a spigot long enough: from
	// the back. On a short one: little for the jaws.
	long := strings.NewReplacer("length: 104", "length: 30", "fit: f7, length: 6", "length: 80").Replace(housing)
	if m = work(t, "mm", long); strings.Index(lines(m), "Turn body") < strings.Index(lines(m), "Turn from the back face") {
		t.Error(lines(m))
	}
	m = work(t, "mm", strings.NewReplacer("length: 104", "length: 50", "length: 60}", "length: 6}", "axial: 80", "axial: 40", "axial: 60", "axial: 30", "axial: 67", "axial: 30", "axial: 68", "axial: 32").Replace(housing))
	has(t, m, "only 13 mm for the jaws, 113 mm sticks out: light cuts")
	// Ø40 × 120 held on a step of 30: nothing to say of grip or mass.
	light := work(t, "mm", "part: pin\nkind: shaft\nmaterial: S235\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: a, diameter: 40, length: 60}\n    - {name: b, diameter: 44, length: 40}\n")
	if s := lines(light); strings.Contains(s, "for the jaws") || strings.Contains(s, "kg before") {
		t.Error(s)
	}
}

// TestRunOut: DIN 76-1 for a pitch of 1.5 gives 3.8 of run-out and 4.5 to the
// shoulder; an undercut or a free end needs neither. A seat over
// the root is marked by the tool: 28.376 is the minor diameter of M30x1.5, and a unified thread
// takes the row of the next larger pitch, 2.5 for 12 per inch.
func TestRunOut(t *testing.T) {
	t.Parallel()
	const text = "part: pin\nkind: shaft\nmaterial: S235\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: a, thread: M20x1.5, length: 30UNDERCUT}\n    - {name: b, diameter: 40, length: 40}\n    - {name: c, diameter: SEAT, length: 20}\n    - {name: d, thread: END, length: 20}\n"
	shaft := func(edits ...string) string {
		return strings.NewReplacer(append(edits, "UNDERCUT", "", "SEAT", "28", "END", "M30x1.5")...).Replace(text)
	}
	m := work(t, "mm", shaft())
	has(t, m, "Cut a M20x1.5, pitch 1.5 mm, 30 long. No undercut is drawn: the last 3.8 mm run out, and full thread ends 4.5 mm from the shoulder at most (DIN 76-1)")
	if strings.Count(lines(m), "No undercut") != 1 {
		t.Error("a thread that runs out at a free end needs no undercut:\n" + lines(m))
	}
	if s := lines(work(t, "mm", shaft("UNDERCUT", ", undercut: {width: 5, depth: 1.2}"))); strings.Contains(s, "No undercut") {
		t.Error(s)
	}
	for seat, said := range map[string]bool{"28.3": false, "28.4": true, "30": true} {
		if s := lines(work(t, "mm", shaft("SEAT", seat))); said != strings.Contains(s, "full thread ends 4.5 mm from c at most (DIN 76-1); stop the tool short of c, it would mark it; what screws on") {
			t.Errorf("Ø%s:\n%s", seat, s)
		}
	}
	has(t, work(t, "mm", shaft("SEAT", "34.9", "END", "1 3/8-12 UNF")), "the last 6.3 mm run out, and full thread ends 7.5 mm from c at most (DIN 76-1, next larger pitch); stop the tool")
	if s := lines(work(t, "mm", shaft("SEAT", "30", "END", "R1"))); strings.Contains(s, "from c at most") {
		t.Error(s)
	}
}

// TestPunchAndTop: no punch marks stay on a finished seat, and TOP is not marked
// on a keyway that is milled later.
func TestPunchAndTop(t *testing.T) {
	t.Parallel()
	const key = "\nradial:\n  - {name: key, clock: 0, axial: 20, slot: {around: 8, along: 20}, depth: 4}\n"
	const shaft = "part: pin\nkind: shaft\nmaterial: S235\ntop: TOP\nprofile:\n  outside:\n    - {name: a, diameter: 30, FIT length: 40}\n    - {name: b, diameter: 40, length: 40}\n"
	text := strings.Replace(shaft, "TOP", "keyway", 1) + key[1:]
	finished := work(t, "mm", strings.Replace(text, "FIT", "fit: k6,", 1))
	has(t, finished, "First scribe TOP lightly on the front face, where the keyway comes.", "scribe the outlines lightly, for no punch mark may stay")
	if strings.Contains(lines(finished), "punch every centre and along") {
		t.Error(lines(finished))
	}
	has(t, work(t, "mm", strings.Replace(text, "FIT", "", 1)), "punch every centre and along the outlines")
	has(t, work(t, "mm", strings.Replace(strings.Replace(text, "FIT", "", 1), "top: keyway", "top: scribe", 1)), "Mark TOP on the front face (scribe).")
}

// TestDeepBore: a bar as thick as will go in reaches six diameters, half from each
// end (common practice), so that a bore of 12 through 120 is drilled and
// reamed; one of 40 is bored.
func TestDeepBore(t *testing.T) {
	t.Parallel()
	const sleeve = "part: sleeve\nkind: shaft\nmaterial: S235\nstock: {round: 65 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 60, length: 120}\n  inside:\n    - {name: core, diameter: SIZE, fit: H8, length: 120}\n"
	deep := work(t, "mm", strings.Replace(sleeve, "SIZE", "12", 1))
	has(t, deep, "Ream Ø12 H8", "Core Ø12 H8, 120 long: made by the drill above, no bar reaches so deep.")
	if strings.Contains(lines(deep), "Bore core") {
		t.Error(lines(deep))
	}
	wide := work(t, "mm", strings.Replace(sleeve, "SIZE", "40", 1))
	has(t, wide, "Bore core Ø40 H8, 120 long.")
	if strings.Contains(lines(wide), "Ream") {
		t.Error(lines(wide))
	}
}
