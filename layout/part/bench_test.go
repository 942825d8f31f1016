package part

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
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

// TestAuxiliaryOnce: the link in brackets is the same one on the drawing, in the
// operations and in the record, on every turned part of the demos: two of them open at
// once leave a length to nobody, none closes the chain (ISO 129-1, from memory).
func TestAuxiliaryOnce(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		job := demo(t, name)
		for _, p := range job.Parts {
			m := Work(job, p)
			for i := range m.Steps {
				s := &m.Steps[i]
				for _, d := range m.Out.Dimensions {
					if p.Profile == nil || d.Kind != plan.LengthDim || d.FromMm != s.FromMm || d.ToMm != s.ToMm || d.Inside != s.Inside || s.LengthMm() > m.LengthMm()-1e-6 {
						continue
					}
					open := strings.HasPrefix(d.Text, "(")
					if !strings.HasSuffix(feature(m, words.Spaced(s.Name)).Size, " × "+d.Text+" long") || open == (check(m, words.Spaced(s.Name)+" length") != nil) {
						t.Errorf("%s of %s: drawn %s, worked %s, measured %v", s.Name, p.Name.Value, d.Text, feature(m, words.Spaced(s.Name)).Size, check(m, words.Spaced(s.Name)+" length"))
					}
				}
			}
		}
	}
}

// TestDatumFace: a place is worked from the face that the drawing measures it from.
// From the other its limits would add to those of the length: of 150, ±0.5.
func TestDatumFace(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: p\nkind: tube\nmaterial: S235\nstock: {tube: 60 mm, wall: 10 mm}\ntube: {outside: 60, wall: 10, length: 150}\nradial:\n  - {name: vent, clock: 0, axial: 40, from: back, size: 6}\n  - {name: port, clock: 0, axial: 30, size: 6}\n")
	has(t, m, "Clock 0°, 40 from the back face to the centre.", "Clock 0°, 30 from the front face to the centre.")
	if note := feature(m, "vent").Note; note != "clock 0°, 40 from the back face" {
		t.Error(note)
	}
	for i, want := range []plan.RadialRow{{AxialMm: 110, Datum: "back", DatumMm: 40}, {AxialMm: 30, Datum: "front", DatumMm: 30}} {
		if got := m.Out.Radials[i]; got.AxialMm != want.AxialMm || got.Datum != want.Datum || got.DatumMm != want.DatumMm {
			t.Errorf("%+v, want %+v", got, want)
		}
	}
}

// TestSlotsTheCutterReaches: a Ø8 end mill cuts 19 mm deep, of the long series 38 (ISO
// 1641-1, from memory); deeper a row of holes opens the slot, no longer than it with what is left for the file: of 30 three of Ø7,
// (30 − 1 − 7) / 2 apart, of 20 two. A plate is open on both sides, a wall on one.
func TestSlotsTheCutterReaches(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 19 mm, cut: saw}\noutline: {rectangle: [100, 80]}\nslots:\n  - {name: a, at: [[0, 0]], width: 8, length: 30, depth: through}\n"
	const ring = "part: p\nkind: ring\nmaterial: S235\nstock: {round: 160 mm}\nprofile:\n  outside: [{name: rim, diameter: 150, length: 40}]\n  inside: [{name: hole, diameter: 112, length: 40}]\nradial:\n  - {name: a, clock: 0, axial: 20, slot: {around: 8, along: 20}, depth: through}\n"
	const ends = " on the middle line, saw out the webs, file"
	three, two := "Chain-drill Ø7, 1135 rev/min, 3 holes 11 mm apart,"+ends, "Chain-drill Ø7, 1135 rev/min, 2 holes 12 mm apart,"+ends
	for _, c := range []struct{ source, tool, way string }{
		{plate, "slot drill up to Ø8, 995 rev/min", "drill the two ends, mill between."},
		{strings.Replace(plate, "19 mm", "38 mm", 1), "slot drill up to Ø8, 995 rev/min, long series", "drill the two ends, mill between."},
		{strings.Replace(plate, "19 mm", "76 mm", 1), "slot drill up to Ø8, 995 rev/min, long series", "mill between, half from each side."},
		{strings.Replace(plate, "19 mm", "77 mm", 1), "drills, files", "no end mill reaches: one of Ø8 cuts 38 mm deep at most. " + three + "."},
		{strings.Replace(plate, "width: 8", "width: 2.2", 1), "drills, files", "no end mill reaches: one of Ø2 cuts 6 mm deep at most. Chain-drill Ø1.76, 4520 rev/min, 13 holes 2.3 mm apart, on the middle line"},
		{strings.NewReplacer("width: 8", "width: 2", "19 mm", "6 mm").Replace(plate), "slot drill up to Ø2, 3980 rev/min", "drill the two ends, mill between."},
		{strings.NewReplacer("width: 8", "width: 2", "19 mm", "12 mm").Replace(plate), "slot drill up to Ø2, 3980 rev/min", "mill between, half from each side."},
		{strings.NewReplacer("width: 8", "width: 0.9", "19 mm", "3 mm").Replace(plate), "drill, piercing saw, files", "drill the two ends, saw between with a piercing saw, file"},
		{strings.NewReplacer("width: 8", "width: 0.9", "19 mm", "4 mm").Replace(plate), "drills, files", "too narrow and deep for a usual end mill: chain-drill Ø0.72"},
		{strings.Replace(plate, "depth: through", "depth: 6", 1), "slot drill Ø8, 995 rev/min", "plunge at one end, mill to the other in 2 passes."},
		{ring, "slot drill up to Ø8, 995 rev/min", "Drill the two ends, mill between to 8 around × 20 along, into the bore, 19 through the wall."},
		{strings.Replace(ring, "112", "74", 1), "slot drill up to Ø8, 995 rev/min, long series", "Drill the two ends, mill between to 8 around × 20 along, into the bore, 38 through the wall."},
		{strings.Replace(ring, "112", "72", 1), "drills, files", "No end mill reaches: one of Ø8 cuts 38 mm deep at most. " + two + " to 8 around × 20 along, into the bore, 39 through the wall."},
	} {
		m := work(t, "mm", c.source)
		i := slices.IndexFunc(m.Out.Operations, func(o plan.Operation) bool { return strings.HasPrefix(o.Title, "a: ") })
		if o := m.Out.Operations[i]; o.Tool != c.tool || !strings.Contains(strings.Join(o.Do, "\n"), c.way) {
			t.Errorf("%s: %v\nwant %s: %s", o.Tool, o.Do, c.tool, c.way)
		}
	}
}

// TestDrillsShorterThanTheHole: flutes of a Ø7.5 drill are 69 long, of Ø15 114, of Ø30
// 175 (ISO 235, from memory): in 120 mm a pilot goes as deep as it can, and through 180
// the last has to be a long one.
func TestDrillsShorterThanTheHole(t *testing.T) {
	t.Parallel()
	const block = "part: p\nkind: bearing-housing\nmaterial: S235\nstock: {round: 120 mm}\nprofile:\n  outside: [{name: body, diameter: 110, length: 120}]\n  inside: [{name: hole, diameter: 60, length: 120}]\n"
	has(t, work(t, "mm", block), "Drill Ø7.5, pilot, as deep as its flutes go: ", "Drill Ø15, open out, as deep as its flutes go: ", "Drill Ø30, leaves 30 mm on diameter: ")
	has(t, work(t, "mm", strings.ReplaceAll(block, "length: 120", "length: 180")), "Drill Ø30, leaves 30 mm on diameter, flutes over 193 mm: ") // 3 of stock behind it and a point of 30 / 2 / tan 59° = 9.01
	has(t, work(t, "mm", strings.ReplaceAll(block, "length: 120", "length: 63")), "Drill Ø7.5, pilot: ")                                        // 63 + 3 + 2.25
	// What goes through a flange is as deep as the flange, not as the part.
	const flanged = "part: p\nkind: turned\nmaterial: S235\nstock: {round: 130 mm}\nprofile:\n  outside: [{name: flange, diameter: 120, length: 14}, {name: neck, diameter: 60, length: 106}]\nholes:\n  - {name: bolts, face: front, circle: {pcd: 90, count: 4}, size: M10 clearance}\n"
	has(t, work(t, "mm", flanged), "Drill Ø5.5, pilot: ", "Drill Ø11, finish: ")
	has(t, work(t, "mm", strings.Replace(flanged, "length: 14", "length: 55", 1)), "Drill Ø5.5, pilot: ") // its flutes are 57, its point 1.65
	has(t, work(t, "mm", strings.Replace(flanged, "length: 14", "length: 56", 1)), "Drill Ø5.5, pilot, as deep as its flutes go: ")
}

// The bore of a plate is open at both ends: a deep one is drilled from each.
func TestDeepBoreOfPlate(t *testing.T) {
	t.Parallel()
	has(t, work(t, "mm", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 100 mm, cut: saw}\noutline: {rectangle: [120, 120]}\nbore: {diameter: 8}\n"), "Deep: drill half from each end, to meet in the middle.")
}

// TestSetOutByTable: the one place on a round is named, and has no outlines to punch along.
func TestSetOutByTable(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: p\nkind: shaft\nmaterial: S235\nstock: {round: 65 mm}\nprofile:\n  outside: [{name: a, diameter: 60, length: 40}, {name: b, diameter: 50, length: 40}]\nradial:\n  - {name: p, clock: 0, axial: 20, size: 6, depth: 8}\n  - {name: q, clock: 0, axial: 60, size: 6, depth: 8}\n")
	has(t, m, "The outside of a, Ø60: p alone is set out there, by the table, without a template, from TOP, scribed on from the front face with a square; punch every centre.", "The outside of b, Ø50: q alone is")
}

// TestReamedBlind: a reamer's lead cuts nothing to size, so a blind hole is drilled
// deeper than it is reamed: 12 + 6/4 + 2 (common practice, no source).
func TestReamedBlind(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: laser}\noutline: {rectangle: [100, 80]}\nholes:\n  - {name: dowel, at: [[20, 0]], size: {diameter: 6, fit: H7}, depth: 12}\n  - {name: ties, at: [[0, 20]], size: 20, note: for ties}\n"
	m := work(t, "mm", plate)
	has(t, m, "Depth: 12 deep, drilled 15.5.")
	// What the cutter has made is not drilled again, whatever its note says.
	if s := lines(m); strings.Contains(s, "\nties: ") || !strings.Contains(s, "Cut with it ties") {
		t.Errorf("in\n%s", s)
	}
	has(t, work(t, "mm", strings.Replace(plate, "depth: 12", "depth: through", 1)), "Depth: through.")
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
	has(t, m, "It breaks out across the step from wide to narrow: feed by hand there, and deburr inside.")
	// What begins on a step of the outside has nothing to deburr inside.
	m = work(t, "mm", strings.Replace(housing, "axial: 80, size: M30 tap", "axial: 110, size: 8, depth: 9", 1))
	has(t, m, "It starts across the step from body to rear: begin with an end mill, fed by hand, and deburr it there.")
}

// TestThickUntilFaced: a plate that is thicker than its part says so in its heading as in its
// record; round ends and slants are not milled by one edge and those square to it.
func TestThickUntilFaced(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: laser}\nthickness: THICK\noutline: {OUTLINE, leave: 4}\n"
	for _, c := range []struct{ thick, outline, note, limits, mill string }{
		{"20", "rectangle: [100, 50]", "", "as bought", "one edge, those square to it"},
		{"18", "slot: [100, 50]", "20 as bought, faced to 18 later", "20 as bought, faced to 18 later", "alike everywhere"},
		{"20", "polygon: {sides: 6, across-flats: 90}", "", "as bought", "alike everywhere"},
	} {
		m := work(t, "mm", strings.NewReplacer("THICK", c.thick, "OUTLINE", c.outline).Replace(plate))
		has(t, m, c.mill)
		i := slices.IndexFunc(m.Out.Features, func(f plan.Feature) bool { return f.Kind == plan.ThicknessFeature })
		if at := check(m, "thickness"); m.Out.Features[i].Note != c.note || at == nil || at.Limits != c.limits {
			t.Errorf("%s: %q, record %v", c.outline, m.Out.Features[i].Note, at)
		}
	}
}

// TestCrossTap: through a wall of (180 − 70)/2 = 55 an M10 is tapped 15 deep, not
// 55; M30 goes through, for 55 is under four diameters, which a hand tap reaches (common
// practice). What lies on the shoulder goes through 50 on its one side, 55 on the other.
func TestCrossTap(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", housing)
	has(t, m, "Depth: thread 15 deep, drilled into the bore, 50 to 55 through the wall.", "Depth: thread 15 deep, drilled into the bore, 55 through the wall.",
		"Depth: into the bore, 55 through the wall.", "8 around × 16 along, into the bore, 50 to 55 through the wall.", "8 around × 16 along, into the bore, 55 through the wall.")
	// A hole of 10 at 54 ends 1 before the step at 60: one wall, (180 − 80)/2.
	if d := work(t, "mm", strings.Replace(housing, "clock: 90, axial: 80", "clock: 90, axial: 54", 1)).Radials[1].Rows[0].DepthText; d != "thread 15 deep, drilled into the bore, 50 through the wall" {
		t.Error(d)
	}
	for size, want := range map[string]string{"M14": "into the bore, 55", "M12": "thread 18 deep", "G2": "into the bore, 50 to 55", "G1-1/2": "thread 36 deep"} { // 4 × 14 = 56, 4 × 12 = 48; G2 is Ø59.6, G1-1/2 Ø47.8
		if d := work(t, "mm", strings.Replace(housing, "M30", size, 1)).Radials[2].Rows[0].DepthText; !strings.HasPrefix(d, want) {
			t.Errorf("%s: %s", size, d)
		}
	}
	if strings.Contains(lines(m), "thread 45 deep") {
		t.Error("M30 is not tapped through")
	}
}

// TestTopPlace: a keyway that is TOP is scribed where it comes, on the face that it
// reaches or on the outside, and on the face of the holes too.
func TestTopPlace(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\ntop: keyway\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: tip, diameter: 20, length: 10}\n    - {name: seat, diameter: 40, length: 100}\nkeyways:\n  - {name: key, in: seat, clock: 0, axial: FROM, length: LONG}\n"
	for _, c := range []struct{ from, long, more, first, last string }{
		{"60", "40", "", "First scribe TOP lightly on the outside of seat, where the keyway comes.", "on the outside of seat"},
		{"85", "50", "", "First scribe TOP lightly on the back face, where the keyway comes.", "on the back face"},
		{"60", "40", "holes: [{name: a, face: front, at: [[5, 0]], size: 3 mm, depth: 5}]\n", "First scribe TOP lightly on the front face and on the outside of seat, where the keyway comes.", "on the outside of seat"},
	} {
		m := work(t, "mm", strings.NewReplacer("FROM", c.from, "LONG", c.long).Replace(shaft)+c.more)
		has(t, m, c.first)
		if i := slices.IndexFunc(m.Out.Checks, func(k plan.Check) bool { return k.What == "TOP marked" }); i < 0 || m.Out.Checks[i].Limits != c.last {
			t.Errorf("%s to %s: %+v", c.from, c.long, m.Out.Checks)
		}
	}
	// Without a keyway it is the first slot at 0° that is TOP: no hole, and no slot elsewhere.
	const slot = "{name: s, clock: 0, axial: 50, slot: {around: 8, along: 28}, depth: 5}"
	for radial, want := range map[string]string{
		slot: "seat",
		"{name: h, clock: 90, axial: 5, slot: {around: 3, along: 4}, depth: 5}, " + slot: "seat",
		"{name: h, clock: 0, axial: 5, size: 5 mm, depth: 5}, " + slot:                   "seat",
		"{name: h, clock: 0, axial: 5, slot: {around: 3, along: 4}, depth: 5}, " + slot:  "tip",
	} {
		if got := work(t, "mm", strings.Split(shaft, "keyways")[0]+"radial: ["+radial+"]\n").topPlace(); got != "on the outside of "+want {
			t.Errorf("%s: %s", radial, got)
		}
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
	m = work(t, "mm", strings.NewReplacer("length: 126", "length: 72", "length: 104", "length: 50", "length: 60}", "length: 6}", "axial: 80", "axial: 40", "axial: 60", "axial: 30", "axial: 67", "axial: 30", "axial: 68", "axial: 32").Replace(housing))
	has(t, m, "only 10 mm for the jaws, 62 mm sticks out: light cuts")
	// Ø40 × 120 held on a step of 30: nothing to say of grip or mass.
	light := work(t, "mm", "part: pin\nkind: shaft\nmaterial: S235\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: a, diameter: 40, length: 60}\n    - {name: b, diameter: 44, length: 40}\n")
	if s := lines(light); strings.Contains(s, "for the jaws") || strings.Contains(s, "kg before") {
		t.Error(s)
	}
}

// TestHoisted: what is heavy is hoisted into the chuck as bought, whatever it is bought as,
// and again when it is turned round. By hand: casting π/4 × (0.26² − 0.05²) × 0.206 × 7200 =
// 75.8 kg, disc π/4 × (0.406² − 0.094²) × 0.06 × 7850 = 57.7, square bar 0.2² × 0.206 × 7850 = 64.7.
func TestHoisted(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ part, kg string }{
		{"kind: turned\nmaterial: EN-GJL-250\nstock: {casting: 260, length: 206 mm}\nprofile:\n  outside: [{name: a, diameter: 250, fit: h8, length: 200}]\n  inside: [{name: b, diameter: 60, fit: H7, length: 200}]\n", "76"},
		{"kind: flange\nmaterial: S355\nstock: {plate: 60 mm, cut: flame}\noutline: {circle: 400, fit: h9, leave: 6}\nbore: {diameter: 100, fit: H7, leave: 6}\n", "58"},
		{"kind: turned\nmaterial: S355\nstock: {square: 200 mm, length: 206 mm}\nprofile:\n  outside: [{name: a, diameter: 190, fit: h8, length: 200}]\n", "65"},
	} {
		m := work(t, "mm", "part: p\n"+c.part)
		has(t, m, c.kg+" kg before turning: hoist it in and do not let go before the jaws hold", "kg: hoist it round and do not let go")
	}
	// A plate that may have to be turned round for its chamfer, π/4 × (0.4² − 0.1²) × 0.06 × 7850 = 55.5 kg.
	m := work(t, "mm", "part: p\nkind: flange\nmaterial: S355\nstock: {plate: 60 mm, cut: flame}\noutline: {circle: 400}\nbore: {diameter: 100, fit: H7, leave: 6}\nchamfers: [{edge: bore-back, size: 2}]\n")
	has(t, m, "else turn round and set true; 55 kg: hoist it round and do not let go before the jaws hold")
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
	has(t, finished, "First scribe TOP lightly on the outside of a, where the keyway comes.", "punch only centres that are drilled away; scribe the outlines lightly, for no punch mark may stay on this finished surface")
	if strings.Contains(lines(finished), "punch every centre and along") {
		t.Error(lines(finished))
	}
	for _, size := range []string{"seat: bearing 6206,", "thread: M30x1.5,"} {
		on := strings.Replace(text, "FIT", size, 1)
		if strings.HasPrefix(size, "thread") {
			on = strings.Replace(on, "diameter: 30, ", "", 1)
		}
		has(t, work(t, "mm", on), "punch only centres that are drilled away; scribe the outlines lightly")
	}
	// M30x1.5 is turned to 30 - 1.5/10 = 29.85: the floor 15 - 4 = 11 over the axis is 25.93 from its far side.
	onThread := strings.Replace(strings.Replace(text, "diameter: 30, ", "", 1), "FIT", "thread: M30x1.5,", 1)
	has(t, work(t, "mm", onThread), "no punch mark may stay on this thread", "Depth 4 from Ø30 nominal: 25.93 left to the far side of Ø29.85 as turned.")
	has(t, finished, "Depth 4 from the top of the round: 26 left to the far side of Ø30.")
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
	// Over three diameters a bar reaches half from each end, or springs where it has one end alone (common practice, no source).
	long := work(t, "mm", strings.Replace(sleeve, "SIZE", "30", 1))
	has(t, long, "Bore core Ø30 H8, 120 long, half of it from here, the rest when turned round", "Bore the rest of core to Ø30 H8, to meet what was bored before.")
	if o := long.Out.Operations[2]; o.Title != "Turn from the back face" || !slices.Contains(o.Limits, "core 30.00 – 30.03") {
		t.Errorf("%+v", o)
	}
	blind := work(t, "mm", strings.NewReplacer("SIZE", "20", "fit: H8, length: 120", "fit: H8, length: 80").Replace(sleeve))
	has(t, blind, "Bore core Ø20 H8, 80 long, with the thickest bar that goes in, light last cuts")
	if s := lines(blind) + lines(wide); strings.Contains(s, "half of it") || strings.Contains(lines(wide), "thickest bar") {
		t.Error(s)
	}
}

// TestEqualLengthWhenBothEndsAreThere: a length is compared in the setting that makes
// its second end, and its size stands there.
func TestEqualLengthWhenBothEndsAreThere(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: p\nkind: shaft\nquantity: 4\nmaterial: S235\nstock: {round: 30 mm}\nprofile:\n  outside: [{name: a, diameter: 16, length: 38}, {name: body, diameter: 30, length: 180}, {name: b, diameter: 16, length: 42}]\nrequire:\n  - {is: equal, within: 0.05 mm, of: body}\n")
	front, back, _ := strings.Cut(lines(m), "Turn from the back face")
	if line := "Before letting go: Length of body 180 mm: write down what the first piece has, set a stop by it, and make the others like it within 0.025 mm: "; strings.Contains(front, "Before letting go") || !strings.Contains(back, line) {
		t.Errorf("in\n%s", lines(m))
	}
	m = work(t, "mm", "part: p\nkind: turned\nquantity: 2\nmaterial: S235\nstock: {tube: 21.3, wall: 2.6, length: 245, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 20, length: 240}]\n  inside: [{name: bore, diameter: 16.1, length: 240}]\nrequire:\n  - {is: equal, within: 0.03, of: body}\n")
	front, back, _ = strings.Cut(lines(m), "Turn from the back face") // its second end is the face of the part
	if line := "Before letting go: Length of body 240 mm"; strings.Contains(front, line) || !strings.Contains(back, line) {
		t.Errorf("in\n%s", lines(m))
	}
}

// TestRimsBeforeTheirBore: the edge of a bore that is bored later, from the other face, is chamfered on what is opened
// there to 1 under the bore, 1 deeper than the chamfer; nothing is opened where the bore itself comes first.
func TestRimsBeforeTheirBore(t *testing.T) {
	t.Parallel()
	const housing = "part: p\nkind: bearing-housing\nmaterial: S355\nstock: {round: 155, length: 66, cut: saw}\nprofile:\n  one-setting: [spigot, bush-bore]\n  outside: [{name: flange, diameter: 150, length: 14}, {name: spigot, diameter: 90, fit: h7, length: 12}, {name: tail, diameter: 80, length: 34}]\n  inside: [{name: bush-bore, diameter: 45, fit: H7, length: 60}]\nchamfers: [{edge: bush-bore-front, size: 1}]\n"
	const opened = "Open bush bore at the face to Ø44, 2 mm deep: the rest is bored later, from the back; its edge is cut now."
	front, back, _ := strings.Cut(lines(work(t, "mm", housing)), "Turn from the back face")
	if !strings.Contains(front, opened) || strings.Index(front, opened) > strings.Index(front, "Chamfer bush bore front") || !strings.Contains(back, "Bore bush bore Ø45 H7") {
		t.Errorf("in\n%s\n%s", front, back)
	}
	for _, text := range []string{strings.Replace(housing, "one-setting: [spigot, bush-bore]", "", 1), strings.Replace(housing, "bush-bore-front", "bush-bore-back", 1)} {
		if got := lines(work(t, "mm", text)); strings.Contains(got, "at the face to Ø44") {
			t.Error(got)
		}
	}
}

// TestToolRunsOutInside: an inside thread of G2 before a bore that is made later, from
// the other face, is bored 10.5 on (DIN 76-1 e1 for a pitch of 2.309 mm, between the
// rows for 2 and 2.5, from memory), no further than that bore, and not into a narrower one.
func TestToolRunsOutInside(t *testing.T) {
	t.Parallel()
	const end = "part: p\nkind: turned\nmaterial: S235\nstock: {round: 100 mm}\nprofile:\n  outside: [{name: body, diameter: 95, length: 50}]\n  inside: [{name: pipe, thread: G2, length: 26}, {name: throat, diameter: 70, length: 24}]\n"
	has(t, work(t, "mm", end), "Bore on at Ø57 to 36.5 mm deep, where throat will be: the threading tool runs out there.", "Drill Ø30, leaves 27 mm on diameter")
	has(t, work(t, "mm", strings.NewReplacer("length: 50", "length: 32", "length: 24", "length: 6").Replace(end)), "to 32 mm deep")
	// To the back face: the stock behind the part is 3 less what faces the front, or a piece for the jaws.
	nut := "part: n\nkind: turned\nmaterial: CuSn12\nstock: {round: 65 mm, length: %s}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 30}, {name: neck, diameter: 40, length: 20}]\n  inside: [{name: bite, thread: Tr24x5, length: 50}]\n"
	has(t, work(t, "mm", fmt.Sprintf(nut, "53 mm")), "Bore on at Ø19.23 through what is left behind the part, which is faced off later: the threading tool runs out there.")
	has(t, work(t, "mm", fmt.Sprintf(nut, "90 mm")), "Bore on at Ø19.23 to 60 mm deep, into what is behind the part, which is faced off later: the threading tool runs out there.")
	m := work(t, "mm", strings.Replace(end, "diameter: 70", "diameter: 50", 1))
	if s := lines(m); strings.Contains(s, "Bore on") {
		t.Error(s)
	}
	// On a narrower bore and on the floor of a blind one it ends short: DIN 76-1, e1 of 2 and 2.5 pitch 9.3 and 11.2, of 1.5 7.3, from memory.
	has(t, m, "No undercut is drawn: the last 10.5 mm before throat is no full thread")
	has(t, work(t, "mm", strings.NewReplacer("G2", "M48x1.5", ", {name: throat, diameter: 70, length: 24}", "").Replace(end)), "the last 7.3 mm before the floor is no full thread")
	if s := lines(work(t, "mm", end)); strings.Contains(s, "no full thread") {
		t.Error(s)
	}
	// Its chamfer is turned on the bore as it is: 57 + 2 × 2.
	m = work(t, "mm", end+"chamfers: [{edge: pipe-front, size: 2 mm, angle: 45, for: lead-in}]\n")
	has(t, m, "Chamfer pipe front 2 × 45°: to Ø61 at the face")
}

// TestConeIsMeasuredOverItsEdges: 300 to 150 in 200 falls 20.556°, so 2 mm sheet stands
// 2 sin 20.556° = 0.702 higher over edges cut square to it (geometry); limits of 1 as welded (ISO 13920 class A, over 120 to 400).
func TestConeIsMeasuredOverItsEdges(t *testing.T) {
	t.Parallel()
	const cone = "part: p\nkind: cone\nmaterial: S235\nstock: {sheet: 2 mm, cut: none}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: 0, measured: outside, seam: 180, overlap: 15}\n"
	straight := work(t, "mm", cone)
	if f := straight.Features[len(straight.Features)-1]; f.Kind != plan.HeightFeature || f.Size != "(200)" || f.Limits != "" {
		t.Errorf("a height that nothing measures has limits: %+v", f)
	}
	if c := check(straight, "height over its square-cut edges"); c == nil || c.MinMm < 199.7 || c.MinMm > 199.71 || c.MaxMm < 201.7 || c.MaxMm > 201.71 || c.Wanted != "200.7" {
		t.Errorf("%+v", c)
	}
	if c := check(work(t, "mm", strings.Replace(cone, "offset: 0", "offset: 20", 1)), "height"); c == nil || c.MinMm != 199 || c.Source.Name != "ISO 13920 class A" {
		t.Errorf("leaning: %+v", c)
	}
}

// TestCutEdges: water leaves no hot edges; grey iron is turned dry, at the slowest
// speed too (common practice).
func TestCutEdges(t *testing.T) {
	t.Parallel()
	for cut, want := range map[string]string{"laser": "hot edges", "plasma": "hot edges", "waterjet": "sharp edges, wet"} {
		m := work(t, "mm", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: "+cut+"}\noutline: {rectangle: [100, 80]}\n")
		if got := m.Out.Operations[0].Caution; got != want {
			t.Errorf("%s: %s", cut, got)
		}
	}
	for stock, want := range map[string]string{"sheet: 1 mm": "sharp edges", "plate: 10 mm": "clamp, support the long end"} {
		m := work(t, "mm", "part: p\nkind: plate\nmaterial: S235\nstock: {"+stock+", cut: saw}\noutline: {circle: 100}\n")
		if o := m.Out.Operations[0]; o.Caution != want || o.Tool != "saw; then mill or file to the outline" {
			t.Errorf("%s: %s, %s", stock, o.Caution, o.Tool)
		}
	}
	for metal, want := range map[string]string{"EN-GJL-250": "light cuts, dry", "S235": "light cuts, coolant"} {
		job := load(t, "mm", "part: p\nkind: turned\nmaterial: "+metal+"\nstock: {round: 600 mm}\nprofile:\n  outside: [{name: body, diameter: 590, length: 100}]\n")
		job.Shop.LatheRPM = []parts.Number{{Value: 45}}
		m := Work(job, job.Parts[0])
		if o := m.Out.Operations[1]; !strings.HasSuffix(o.Speed, want) {
			t.Errorf("%s: %s", metal, o.Speed)
		}
	}
}

// TestBarRecord: of a group of holes each place from its end, of a long row the outer ones and the pitch; a cope may stand off its
// round by 1 mm, so be that much too deep or too shallow (common practice, no source).
func TestBarRecord(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: p\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 400, right: {onto: main.outside, place: {clock: 0, axial: 100}}}\nholes:\n  - {name: guard, along: {from: left, first: 60, pitch: 40, count: 3}, size: 7, walls: both}\n",
		"part: main\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 5 mm}\ntube: {outside: 100, wall: 5, length: 300}\n")
	got := m.Out.Bar.Measures
	if len(got) != 2 || got[0] != (plan.BarRecord{What: "guard, holes 1 to 3 from the left end", Wanted: "60, 100, 140; Ø7", Limits: "59.7 – 60.3, 99.7 – 100.3, 139.5 – 140.5; Ø6.8 – 7.2"}) {
		t.Errorf("%+v", got)
	}
	if got[1].What != "right cope, depth" || got[1].Wanted != "6.7" || got[1].Limits != "5.7 – 7.6" { // 50 − √(50² − 25²) = 6.699
		t.Errorf("%+v", got[1])
	}
	long := work(t, "mm", "part: p\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 400}\nholes:\n  - {name: row, along: {from: right, first: 60, pitch: 50, count: 5}, size: 7}\n  - {name: two, face: front, at: [[-150, 0], [170, 0]], size: M6 tap}\n").Out.Bar.Measures
	want := []plan.BarRecord{
		{What: "row, holes 1, 5 from the right end, hole to hole", Wanted: "60, 260, each 50; Ø7", Limits: "59.7 – 60.3, 259.5 – 260.5, 49.7 – 50.3; Ø6.8 – 7.2"},
		{What: "two, hole 6 from the left end", Wanted: "50; M6", Limits: "49.7 – 50.3; runs freely, square"},
		{What: "two, hole 7 from the right end", Wanted: "30", Limits: "29.8 – 30.2"},
	}
	if !slices.Equal(long, want) {
		t.Errorf("%+v", long)
	}
}

// TestLengthWhereItEnds: a shoulder between two cups ends where the second is bored; one of a shaft, where
// its own diameter is turned.
func TestLengthWhereItEnds(t *testing.T) {
	t.Parallel()
	const housing = "part: p\nkind: bearing-housing\nmaterial: S235\nstock: {round: 130 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 100, length: 60}\n    - {name: flange, diameter: 125, length: 20}\n" +
		"  inside:\n    - {name: front-cup, diameter: 70, length: 25, length-limits: [24.9, 25]}\n    - {name: shoulder, diameter: 60, length: 30, length-limits: [29.9, 30]}\n    - {name: rear-cup, diameter: 70, length: 25}\n"
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: front, diameter: 30, length: 20}\n    - {name: seat, diameter: 35, length: 30, length-limits: [29.9, 30]}\n    - {name: collar, diameter: 42, length: 20, length-limits: [19.9, 20]}\n    - {name: rear, diameter: 30, length: 40}\n"
	for _, c := range []struct{ file, limit, face string }{
		{housing, "front cup 24.9 – 25.0 long", "front"}, {housing, "shoulder 29.9 – 30.0 long", "back"},
		{shaft, "seat 29.9 – 30.0 long", "front"}, {shaft, "collar 19.9 – 20.0 long", "back"},
	} {
		var at []string
		for _, o := range work(t, "mm", c.file).Out.Operations {
			for _, l := range o.Limits {
				if strings.HasSuffix(l, " long") && strings.HasPrefix(c.limit, strings.Fields(l)[0]) {
					at = append(at, o.Title+": "+l)
				}
			}
		}
		if len(at) != 1 || !strings.HasPrefix(at[0], "Turn from the "+c.face) || !strings.HasSuffix(at[0], ": "+c.limit) {
			t.Errorf("%s at the %s: %q", c.limit, c.face, at)
		}
	}
}

// TestFlutesReachThroughTheStock: 150 of the part, 1.5 of stock behind it, half of 3, and a point of 16 / 2 / tan 59° =
// 4.81 are 156.3; a blind one needs no more than its own point, 104.8.
func TestFlutesReachThroughTheStock(t *testing.T) {
	t.Parallel()
	const nut = "part: p\nkind: turned\nmaterial: C45\nstock: {round: 45 mm, length: 153 mm}\nprofile:\n  outside: [{name: body, diameter: 40, length: 150}]\n  inside: [{name: clear, diameter: 16, length: 150}]\n"
	has(t, work(t, "mm", nut), "Drill Ø16, finish, flutes over 157 mm: ")
	has(t, work(t, "mm", strings.Replace(nut, "16, length: 150", "16, length: 118", 1)), "Drill Ø16, finish, flutes over 123 mm: ")
	has(t, work(t, "in", "part: p\nkind: turned\nmaterial: C45\nstock: {round: 2 in, length: 5-1/4 in}\nprofile:\n  outside: [{name: body, diameter: 1-3/4, length: 5}]\n  inside: [{name: clear, diameter: 5/8, length: 5}]\n"),
		"Drill Ø5/8 in, finish, flutes over 5.38 in: ") // 5 + 0.25 - 0.0591 + 0.1878 = 5.3787
}

// TestToolsOfTheLathe: what a facing and turning tool does not do is named, each where it is done: the bar, the tool
// between two shoulders, the recess of an undercut, the thread inside; and what measures 20 within 0.05 from the face.
func TestToolsOfTheLathe(t *testing.T) {
	t.Parallel()
	const sheave = "part: p\nkind: turned\nmaterial: S355\nstock: {round: 85 mm, length: 65 mm}\nprofile:\n  outside:\n    - {name: rim, diameter: 80, length: 20}\n    - {name: neck, diameter: 60, length: 20}\n    - {name: far, diameter: 80, length: 20}\n" +
		"  inside:\n    - {name: seat, diameter: 40, fit: H7, length: 20, undercut: {width: 2, depth: 0.3}}\n    - {name: web, diameter: 34, length: 20, length-limits: [19.95, 20]}\n    - {name: nut, thread: M40x1.5, length: 20}\n"
	m := work(t, "mm", sheave)
	tools := map[string]string{}
	for _, o := range m.Out.Operations {
		tools[o.Title] = o.Tool + " · " + o.Gauge
	}
	for title, want := range map[string]string{
		"Turn from the front face": "facing and turning tool, boring bar, internal recessing tool · bore gauge, calipers",
		"Turn from the back face":  "facing and turning tool, grooving tool, boring bar, internal threading tool · depth micrometer, thread gauge or counterpart, calipers",
	} {
		if tools[title] != want {
			t.Errorf("%s: %q, want %q", title, tools[title], want)
		}
	}
	for _, c := range []struct{ edge, tool string }{{"radius: 2", "form tool"}, {"radius: 5", ""}, {"size: 2, angle: 45", "chamfer tool"}} {
		if text := told(work(t, "mm", sheave+"chamfers: [{edge: rim-front, "+c.edge+"}]\n")); c.tool != "" && !strings.Contains(text, "internal recessing tool, "+c.tool+"\n") || c.tool == "" && !strings.Contains(text, "internal recessing tool\n") {
			t.Errorf("%s: no %q in %s", c.edge, c.tool, text)
		}
	}
	for what, want := range map[string]string{"web length": "depth micrometer", "far length": "calipers"} {
		if c := check(m, what); c == nil || c.Gauge != want {
			t.Errorf("%s: %+v, want %s", what, c, want)
		}
	}
	const collar = "part: p\nkind: shaft\nmaterial: S355\nstock: {round: 85 mm, length: 65 mm}\nprofile:\n  outside:\n    - {name: a, diameter: A, length: 20}\n    - {name: b, diameter: 60, length: 20, length-limits: [19.95, 20.04]}\n    - {name: c, diameter: A, length: 20}\n"
	for a, want := range map[string]string{"50": "micrometer", "70": "gauge blocks", "60.5": "gauge blocks"} {
		if c := check(work(t, "mm", strings.ReplaceAll(collar, ": A", ": "+a)), "b length"); c == nil || c.Gauge != want {
			t.Errorf("beside Ø%s: %+v, want %s", a, c, want)
		}
	}
}

// What a laser or water cuts by a file is not set out on its sheet by a template or a trammel.
func TestBlankByItsFile(t *testing.T) {
	t.Parallel()
	const cone = "part: p\nkind: cone\nmaterial: S235\nstock: {sheet: 2 mm, cut: CUT}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: 20, measured: outside, seam: 180}\n"
	for cut, want := range map[string]string{"laser": "cutting file of the blank", "waterjet": "cutting file of the blank", "plasma": "1:1 template", "none": "1:1 template"} {
		if do := work(t, "mm", strings.Replace(cone, "CUT", cut, 1)).Out.Operations[0].Do[0]; !strings.HasPrefix(do, "Cut by the ") || !strings.Contains(do, want) {
			t.Errorf("%s: %q", cut, do)
		}
	}
}
