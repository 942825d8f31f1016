package bolts

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/threads"
	"centrepop/parts/golden"
)

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

func value(t *testing.T, cell string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(strings.TrimSpace(cell), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func find(t *testing.T, size string) Bolt {
	t.Helper()
	b, err := Find(size)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Every row names its sources: ISO 898-1:2013, ISO 4014:2011, ISO 4032:2012,
// ISO 4762:2004, ISO 7089:2000.
func TestReferenceBolts(t *testing.T) {
	for _, row := range golden.Table(t, "../../testdata/reference/bolts.csv", 24) {
		b, class := find(t, row["bolt"]), row["property_class"]
		grade, err := b.Grade(class)
		if err != nil {
			t.Error(err)
			continue
		}
		proof, err := b.ProofLoadN(class)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, c := range []struct {
			name string
			got  float64
		}{
			{"tensile_stress_area_mm2", b.StressAreaMm2},
			{"proof_stress_MPa", grade.ProofMPa},
			{"proof_load_N", proof},
			{"hex_across_flats_mm", b.AcrossFlatsMm},
			{"hex_head_height_mm", b.HeadHeightMm},
			{"hex_nut_height_max_mm", b.NutHeightMm},
			{"socket_head_diameter_mm", b.SocketHeadDiameterMm},
			{"socket_head_height_mm", b.SocketHeadHeightMm},
			{"washer_od_mm", b.WasherODMm},
		} {
			if want := row.Number(t, c.name); c.got != want {
				t.Errorf("%s %s: %s = %v, want %v", b.Thread.Designation, class, c.name, c.got, want)
			}
		}
	}
}

// The tables hang together: areas follow the ISO 898-1 formula, printed loads
// area times stress, washers the fine holes of ISO 273 and the heads they
// carry, and everything grows with the size.
func TestMetricTableConsistent(t *testing.T) {
	last := metricRow{}
	for i, row := range metricBolts {
		b := find(t, "M"+strconv.FormatFloat(row.d, 'f', -1, 64))
		area, err := StressAreaMm2(b.Thread)
		if err != nil || !near(area/row.area, 1, 0.006) {
			t.Errorf("M%v: area %v, formula %v, %v", row.d, row.area, area, err)
		}
		for class, load := range map[string]float64{"8.8": row.proof88, "10.9": row.proof109, "12.9": row.proof129} {
			grade, err := b.Grade(class)
			if err != nil || !near(load/(grade.ProofMPa*row.area), 1, 0.006) {
				t.Errorf("M%v %s: load %v, area times stress %v, %v", row.d, class, load, grade.ProofMPa*row.area, err)
			}
		}
		if row.washerID != b.Thread.Clearance.FineMm {
			t.Errorf("M%v: washer bore %v, ISO 273 fine %v", row.d, row.washerID, b.Thread.Clearance.FineMm)
		}
		if row.washerOD < row.flats || row.key >= row.socket || row.head < 0.6*row.d || row.head > 0.75*row.d || row.nut < 0.75*row.d || row.nut > 1.0*row.d {
			t.Errorf("M%v: proportions %+v", row.d, row)
		}
		if !(row.hexFrom < row.boltFrom && row.socketFrom <= row.hexFrom) {
			t.Errorf("M%v: lengths %+v", row.d, row)
		}
		if i > 0 && !(row.d > last.d && row.area > last.area && row.flats > last.flats && row.nut > last.nut && row.socket > last.socket && row.washerOD > last.washerOD && row.proof88 > last.proof88) {
			t.Errorf("M%v does not grow from M%v", row.d, last.d)
		}
		last = row
	}
}

// Stress areas of ASME B1.1 follow their formula to the printed digits.
func TestInchTableConsistent(t *testing.T) {
	for _, row := range inchBolts {
		for series, area := range map[string]float64{threads.UnifiedUNC: row.areaUNC, threads.UnifiedUNF: row.areaUNF} {
			found := false
			for _, thread := range threads.All() {
				if thread.Series != series || !near(thread.MajorMm, row.d*inch, 0.001) {
					continue
				}
				found = true
				got, err := StressAreaMm2(thread)
				if err != nil || !near(got/(inch*inch)/area, 1, 0.006) {
					t.Errorf("%s: area %v, formula %v, %v", thread.Designation, area, got/(inch*inch), err)
				}
				b := find(t, thread.Designation)
				if b.WasherIDMm < b.Thread.MajorMm || b.WasherODMm < b.AcrossFlatsMm*0.95 || b.NutAcrossFlatsMm < b.AcrossFlatsMm {
					t.Errorf("%s: proportions %+v", thread.Designation, b)
				}
			}
			if !found {
				t.Errorf("no %s thread of %v in", series, row.d)
			}
		}
	}
}

// Proof loads printed in SAE J429 Table 1, pounds-force, looked up in a
// buyer's specification that reprints it; printed to 50 or 100 lbf.
func TestInchProofLoads(t *testing.T) {
	const lbf = 4.4482216
	for _, c := range []struct {
		size, class string
		load        float64
	}{
		{"1/4-20 UNC", "grade 5", 2700}, {"1/4-20 UNC", "Grade 8", 3800}, {"3/8-16 UNC", "5", 6600},
		{"5/8-11 UNC", "grade 2", 12400}, {"5/8-11 UNC", "grade 8", 27100}, {"7/8-9 UNC", "grade 5", 39300}, {"7/8-9 UNC", "grade 8", 55400}, {"1-8 UNC", "grade 2", 20000},
		{"1/4-20 UNC", "grade 2", 1750}, {"5/16-18 UNC", "grade 5", 4450}, {"3/8-24 UNF", "grade 5", 7450}, {"1/4-28 UNF", "grade 8", 4350},
		{"1/2-13 UNC", "grade 2", 7800}, {"1/2-13 UNC", "gr 5", 12100}, {"1/2-13 UNC", "SAE 8", 17000},
		{"5/8-11 UNC", "grade 5", 19200}, {"3/4-10 UNC", "grade 5", 28400}, {"3/4-10 UNC", "grade 8", 40100},
		{"3/4-10 UNC", "grade 2", 18400}, {"7/8-9 UNC", "grade 2", 15200}, {"1-8 UNC", "grade 5", 51500}, {"1-8 UNC", "grade 8", 72700},
	} {
		got, err := find(t, c.size).ProofLoadN(c.class)
		if err != nil || !near(got/lbf, c.load, 51) {
			t.Errorf("%s %s: %v lbf, %v, want %v", c.size, c.class, got/lbf, err, c.load)
		}
	}
}

func TestFinePitch(t *testing.T) {
	b := find(t, "M10x1.25")
	// ISO 898-1:2013 Table 6, fine pitch: 61.2 mm², from memory.
	if !near(b.StressAreaMm2, 61.2, 0.05) || b.AcrossFlatsMm != 16 {
		t.Errorf("M10x1.25: %+v", b)
	}
	if load, err := b.ProofLoadN("8.8"); err != nil || !near(load, 35500, 50) { // Table 7, from memory
		t.Errorf("M10x1.25 8.8: %v, %v", load, err)
	}
}

func TestRefusals(t *testing.T) {
	for size, want := range map[string]string{
		"M7": "sizes are", "M42": "sizes are", "G1/2": "not the thread of a bolt", "1/2-16 UN": "not the thread of a bolt", "#12-24 UNC": "#10 and 1/4 to 1 in", "1 1/4 UNC": "1/4 to 1 in", "M10x1.2": "nearest",
	} {
		if b, err := Find(size); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("Find(%q) = %+v, %v, want %q", size, b, err, want)
		}
	}
	m10, half := find(t, "M10"), find(t, "1/2 UNC")
	for _, c := range []struct {
		b           Bolt
		class, want string
	}{
		{m10, "8.9", "not known"}, {m10, "grade 5", "does not go with M10"}, {half, "8.8", "does not go with 1/2-13 UNC"},
		{find(t, "M30"), "A4-80", "not made in M30"}, {m10, "", "not known"}, {Bolt{}, "8.8", "does not go"},
	} {
		if g, err := c.b.Grade(c.class); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %q: %+v, %v, want %q", c.b.Thread.Designation, c.class, g, err, c.want)
		}
	}
	for _, b := range []Bolt{m10, half} {
		if g, err := b.Grade("a2-70"); err != nil || g.ProofMPa != 450 {
			t.Errorf("A2-70: %+v, %v", g, err)
		}
	}
	if _, err := find(t, "9/16 UNC").HeadDiameterMm(Socket); err == nil {
		t.Error("9/16 has no socket head in ASME B18.3")
	}
	if _, err := StressAreaMm2(threads.Thread{Series: threads.MetricCoarse, MajorMm: math.NaN()}); err == nil {
		t.Error("NaN accepted")
	}
}

// ASME B18.2.1-1996 hex cap screws (head height basic), ASME B18.3-2003 socket
// heads (diameter, key) and ASME B18.2.2 nuts (across flats, height), inches,
// from makers' reprints.
func TestInchHeads(t *testing.T) {
	for _, c := range []struct {
		size                                    string
		flats, head, socket, key, nutFlats, nut float64
	}{
		{"#6 UNC", 0, 0, 0.226, 7.0 / 64, 0.3125, 7.0 / 64}, // nuts of the numbers from memory
		{"#8 UNC", 0, 0, 0.270, 9.0 / 64, 0.34375, 0.125},
		{"#10 UNF", 0, 0, 0.312, 5.0 / 32, 0.375, 0.125},
		{"1/4 UNC", 0.4375, 0.15625, 0.375, 0.1875, 0.4375, 7.0 / 32},
		{"5/16 UNC", 0.5, 0.203125, 0.469, 0.25, 0.5, 17.0 / 64},
		{"3/8 UNC", 0.5625, 0.234375, 0.562, 0.3125, 0.5625, 21.0 / 64},
		{"7/16 UNC", 0.625, 0.28125, 0.656, 0.375, 0.6875, 3.0 / 8},
		{"1/2 UNC", 0.75, 0.3125, 0.750, 0.375, 0.75, 7.0 / 16},
		{"9/16 UNC", 0.8125, 0.359375, 0, 0, 0.875, 31.0 / 64},
		{"5/8 UNC", 0.9375, 0.390625, 0.938, 0.5, 0.9375, 35.0 / 64},
		{"3/4 UNC", 1.125, 0.46875, 1.125, 0.625, 1.125, 41.0 / 64},
		{"7/8 UNC", 1.3125, 0.546875, 1.312, 0.75, 1.3125, 0.75},
		{"1 UNC", 1.5, 0.609375, 1.5, 0.75, 1.5, 55.0 / 64},
	} {
		b := find(t, c.size)
		if !near(b.AcrossFlatsMm, c.flats*inch, 1e-6) || !near(b.HeadHeightMm, c.head*inch, 1e-6) || !near(b.SocketHeadDiameterMm, c.socket*inch, 1e-6) || !near(b.SocketKeyMm, c.key*inch, 1e-6) || !near(b.NutAcrossFlatsMm, c.nutFlats*inch, 1e-6) || !near(b.NutHeightMm, c.nut*inch, 1e-6) {
			t.Errorf("%s: %+v, want %+v", c.size, b, c)
		}
	}
}

// TestCoarse: the sizes of ISO 4017 hexagon screws and those of ASME B18.2.1 in inches that
// the tables hold; number sizes have no hexagon.
func TestCoarse(t *testing.T) {
	for inches, want := range map[bool]string{
		false: "M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20 M22 M24 M27 M30 M33 M36",
		true:  "1/4-20 UNC 5/16-18 UNC 3/8-16 UNC 7/16-14 UNC 1/2-13 UNC 9/16-12 UNC 5/8-11 UNC 3/4-10 UNC 7/8-9 UNC 1-8 UNC",
	} {
		var got []string
		for _, b := range Coarse(inches) {
			got = append(got, b.Thread.Designation)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("inches %v: %q", inches, got)
		}
	}
}
