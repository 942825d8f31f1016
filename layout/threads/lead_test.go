package threads

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/parts/golden"
)

// parsed is the thread of a designation.
func parsed(t *testing.T, name string) Thread {
	t.Helper()
	got, err := Parse(name)
	if err != nil || got.Lead == nil {
		t.Fatalf("%s: %+v, %v", name, got, err)
	}
	return got
}

// held compares values with the columns of a row that has them; scale is the unit of the file in mm.
func held(t *testing.T, row golden.Row, scale, tol float64, values map[string]float64) {
	t.Helper()
	for column, value := range values {
		if row[column] != "" && !near(value/scale, row.Number(t, column), tol) {
			t.Errorf("%s %s: %.4f, want %s (%s)", row["designation"], column, value/scale, row[column], row["source"])
		}
	}
}

// TestTrapezoidal holds Tr threads against trapezoidal.csv.
func TestTrapezoidal(t *testing.T) {
	t.Parallel()
	for _, row := range golden.Table(t, "../../testdata/reference/trapezoidal.csv", 28) {
		got := parsed(t, row["designation"])
		s := got.Lead.Screw
		held(t, row, 1, 0.0011, map[string]float64{
			"d2": got.PitchDiameterMm, "d3": got.RootMm(), "D1": got.MinorMm, "D4": got.GroundMm(), "d_min": s.Major[0],
			"d2_min": s.Pitch[0], "d2_max": s.Pitch[1], "d3_min": s.Minor[0], "d3_max": s.Minor[1],
		})
		if s.Class != "7e" || got.Lead.Nut.Class != "7H" || got.Lead.AngleDeg != 30 || got.Class != "" {
			t.Errorf("%s: classes %s and %s, %v°", got.Designation, s.Class, got.Lead.Nut.Class, got.Lead.AngleDeg)
		}
	}
}

// TestTrapezoidalTolerances holds the tolerances of ISO 2903 within a step of the preferred numbers
// R40 of the formulas of ISO 965-1 that they are rounded from (from memory): Td(4) = 0.63 (180 P^⅔ − 3.15/√P),
// TD1(4) = 0.63 · 230 P^0.7, Td2(7) = 1.25 · 90 P^0.4 d^0.1 with d the geometric mean of its range, and of ISO 2903
// es(e) = 50 + 11 P to a pitch of 3, 47.5 √P over it; 0.001 mm.
func TestTrapezoidalTolerances(t *testing.T) {
	t.Parallel()
	step := math.Pow(10, 1.0/40) * 1.005
	like := func(what string, p, got, want float64) {
		t.Helper()
		if got > want*step || got < want/step {
			t.Errorf("%s at pitch %v: %v, by formula %.1f", what, p, got, want)
		}
	}
	for _, r := range trPitches {
		like("major", r.p, r.major, 0.63*(180*math.Cbrt(r.p*r.p)-3.15/math.Sqrt(r.p)))
		like("minor", r.p, r.minor, 0.63*230*math.Pow(r.p, 0.7))
		e := 47.5 * math.Sqrt(r.p)
		if r.p <= 3 {
			e = 50 + 11*r.p
		}
		like("e", r.p, r.e, e)
	}
	from := 5.6
	for _, r := range trPitchTolerance {
		for p, got := range r.of {
			like("pitch diameter", p, got, 1.25*90*math.Pow(p, 0.4)*math.Pow(math.Sqrt(from*r.upTo), 0.1))
		}
		from = r.upTo
	}
	for i := range preferred[1:] { // R40, ISO 3
		like("R40", float64(i), preferred[i+1], preferred[i]*math.Pow(10, 1.0/40))
	}
}

// TestTrapezoidalClasses: the pitch diameters of Tr20x4 in the other classes and of its nut, ISO 2903 (from memory).
func TestTrapezoidalClasses(t *testing.T) {
	t.Parallel()
	for name, want := range map[string][2]float64{"Tr20x4": {17.640, 17.905}, "Tr20x4-8e": {17.570, 17.905}, "Tr20x4-8c": {17.475, 17.810}} {
		if got := parsed(t, name).Lead.Screw.Pitch; !near(got[0], want[0], 1e-9) || !near(got[1], want[1], 1e-9) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	for name, want := range map[string]float64{"Tr20x4": 18.355, "Tr20x4-8H": 18.450, "Tr10x2": 9.25} {
		got := parsed(t, name).Lead.Nut
		if !near(got.Pitch[1], want, 1e-9) || got.Major[1] != 0 {
			t.Errorf("%s: %+v, want to %v", name, got, want)
		}
	}
	if lo, hi := parsed(t, "Tr20x4").MinorLimitsMm(); lo != 16 || hi != 16.375 {
		t.Errorf("bore of the nut %v to %v", lo, hi)
	}
}

// TestAcme holds Acme threads against acme.csv, to the last digit the maker prints; and the nut of 3/4-6 as
// Machinery's Handbook has it (from memory).
func TestAcme(t *testing.T) {
	t.Parallel()
	for _, row := range golden.Table(t, "../../testdata/reference/acme.csv", 10) {
		got := parsed(t, row["designation"])
		s := got.Lead.Screw
		held(t, row, 25.4, 1e-6, map[string]float64{
			"major_min": s.Major[0], "pitch_max": s.Pitch[1], "pitch_min": s.Pitch[0], "minor_max": s.Minor[1],
		})
		held(t, row, 25.4, 0.000101, map[string]float64{ // the sheets round once, at the end
			"minor_min": s.Minor[0], "nut_minor_max": got.Lead.Nut.Minor[1], "minor_min_3g": parsed(t, row["designation"]+"-3G").Lead.Screw.Minor[0],
			"minor_min_4g": parsed(t, row["designation"]+"-4G").Lead.Screw.Minor[0],
		})
	}
	nut := parsed(t, "3/4-6 ACME").Lead.Nut
	for i, want := range []float64{0.77, 0.79, 0.6667, 0.6841, 0.5833, 0.5917} {
		if got := [...][2]float64{nut.Major, nut.Pitch, nut.Minor}[i/2][i%2]; !near(got/25.4, want, 0.00006) {
			t.Errorf("nut of 3/4-6 ACME: %.4f, want %v", got/25.4, want)
		}
	}
}

// TestLeadTools: the flat of the tool, the depth, what is measured over wires. Tr20x4: 0.366 P − 0.536 ac (from memory);
// coefficients over wires as webmachinist.net prints them for 30° (0.51764, 4.8637, 1.866025), and Machinery's
// Handbook for 29° (0.51645, 4.9939, 1.933357; from memory), without what the slope adds.
func TestLeadTools(t *testing.T) {
	t.Parallel()
	tr, acme := parsed(t, "Tr20x4"), parsed(t, "3/4-6 ACME")
	in := 1 / 25.4
	for what, c := range map[string][2]float64{
		"flat Tr": {tr.Lead.Screw.FlatMm, 0.366*4 - 0.536*0.25}, "depth Tr": {tr.Lead.Screw.DepthMm, 2.25}, "wire Tr": {tr.BestWireMm(), 0.51764 * 4},
		"flat ACME": {acme.Lead.Nut.FlatMm * in, 0.3707/6 - 0.0052}, "depth ACME": {acme.Lead.Nut.DepthMm * in, 1.0/12 + 0.01}, "wire ACME": {acme.BestWireMm() * in, 0.51645 / 6},
		"helix Tr": {math.Round(60*tr.HelixDeg()) / 60, 4 + 3.0/60}, // the maker of trapezoidal.csv
	} {
		if !near(c[0], c[1], 0.001) {
			t.Errorf("%s: %v, want %v", what, c[0], c[1])
		}
	}
	_, m, ok := tr.OverWiresMm(2)
	slope := math.Pow(math.Tan(tr.HelixDeg()*math.Pi/180), 2) * math.Pow(math.Cos(math.Pi/12), 2) / math.Sin(math.Pi/12)
	if want := 17.905 + 4.8637*2 - 1.866025*4; !ok || !near(m-slope, want, 0.0002) {
		t.Errorf("over wires of 2: %v, %v, want %v and %v", m, ok, want, slope)
	}
	fine := parsed(t, "5-2 ACME")
	_, m, ok = fine.OverWiresMm(0.25 * 25.4)
	slope = 0.125 * 25.4 * math.Pow(math.Tan(fine.HelixDeg()*math.Pi/180), 2) * math.Pow(math.Cos(14.5*math.Pi/180), 2) / math.Sin(14.5*math.Pi/180)
	if want := 25.4 * (fine.Lead.Screw.Pitch[1]/25.4 + 4.9939*0.25 - 1.933357*0.5); !ok || !near(m-slope, want, 0.002) {
		t.Errorf("over wires of 1/4 in: %v, %v, want %v", m, ok, want)
	}
	if _, _, ok := parsed(t, "Tr24x10P5").OverWiresMm(2.5); ok {
		t.Error("steeper than five degrees")
	}
	if m10, _ := Parse("M10"); m10.BestWireMm() != 0 || m10.RootMm() != m10.MinorMm || m10.GroundMm() != 10 || !near(m10.HelixDeg(), 3.03, 0.01) {
		t.Error("M10 is no lead screw")
	}
}

// TestLeadNames: the ways of writing one, and what is refused.
func TestLeadNames(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{
		"Tr20x4": "Tr20x4", "tr 20 × 4": "Tr20x4", "TR20X4-7e": "Tr20x4 7e", "Tr24x5 LH": "Tr24x5 LH", "Tr24x5LH": "?", "Tr24x5-LH-8H": "Tr24x5 LH 8H", "Tr24x10P5": "Tr24x10P5",
		"Tr24x10 (P5) LH": "Tr24x10P5 LH", "Tr24x10P 5 lh 8c": "Tr24x10P5 LH 8c", "Tr24x5P5": "Tr24x5", "Tr24x12P5": "?", "Tr24x4": "?", "Tr21x4": "?", "Tr20": "?", "Tr20x4 6g": "?", "Tr": "?",
		"Tr20x4-7H/7e": "?", "Tr24x90P5": "?", "Tr24x10P0": "?",
		"3/4-6 ACME": "3/4-6 ACME", "3/4-6ACME-2G": "3/4-6 ACME 2G", "3/4-6 Acme LH": "3/4-6 ACME LH", ".750-6-ACME-3G": "3/4-6 ACME 3G", "3/4 ACME": "3/4-6 ACME", "1-5 ACME, 2 starts": "1-5 ACME 2 start",
		"1-5 ACME 2 start 4G LH": "1-5 ACME 2 start LH 4G", "1 1/8-5 ACME": "1 1/8-5 ACME", "1-1/8-5 ACME": "1 1/8-5 ACME", "3/4-7 ACME": "?", "3/4-6 ACME-2C": "?", "ACME": "?", "3/4-6 ACME 9 starts": "?",
	} {
		got, err := Parse(text)
		if is := strings.TrimSpace(got.Designation + " " + got.Class); (err == nil) != (want != "?") || err == nil && is != want {
			t.Errorf("%q: %q, %v, want %q", text, is, err, want)
		}
	}
	if _, err := Parse("Tr24x4"); err == nil || !strings.Contains(err.Error(), "nearest: Tr24x5, Tr24x3, Tr24x8") {
		t.Error(err)
	}
	if _, err := Parse("3/4-7 ACME"); err == nil || !strings.Contains(err.Error(), "3/4-6 ACME") {
		t.Error(err)
	}
}

// TestLeadSound: every one, in any class and hand, reads back as it is written; its screw goes into its nut with room at the
// crests and flanks, and several starts have the lead.
func TestLeadSound(t *testing.T) {
	t.Parallel()
	var names []string
	for _, a := range All() {
		if a.Lead != nil {
			names = append(names, a.Designation)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(names).Draw(t, "name") + rapid.SampledFrom([]string{"", " LH"}).Draw(t, "hand")
		classes := acmeClasses
		if name[0] == 'T' {
			classes = trClasses
		}
		got, err := Parse(name + " " + rapid.SampledFrom(classes).Draw(t, "class"))
		if err != nil || got.Designation != name || got.Lead.LeftHand != strings.HasSuffix(name, "LH") {
			t.Fatalf("%s: %+v, %v", name, got, err)
		}
		s, n := got.Lead.Screw, got.Lead.Nut
		for _, l := range [][2]float64{s.Major, s.Pitch, s.Minor, {n.Major[0], max(n.Major[1], n.Major[0]+1)}, n.Pitch, n.Minor} {
			if l[0] >= l[1] {
				t.Fatalf("%s: %v", name, l)
			}
		}
		if n.Major[0]-s.Major[1] < 2*got.Lead.ClearanceMm-1e-3 || n.Minor[0]-s.Minor[1] < 2*got.Lead.ClearanceMm-1e-3 || n.Pitch[0] <= s.Pitch[1] || s.FlatMm <= 0 || n.FlatMm <= 0 {
			t.Fatalf("%s: %+v", name, got.Lead)
		}
		if got.Misfits(true) && got.Misfits(false) || got.Series == Acme && got.Misfits(true) {
			t.Fatalf("%s %s is of no side", name, got.Class)
		}
	})
	if two, u := parsed(t, "1-5 ACME 2 start").Lead, parsed(t, "Tr24x15P5").Lead; !near(two.LeadMm, 10.16, 1e-9) || u.LeadMm != 15 || u.Starts != 3 {
		t.Error(two, u)
	}
}
