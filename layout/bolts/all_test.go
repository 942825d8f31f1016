package bolts

import (
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/threads"
	"centrepop/parts/golden"
)

// TestEveryBolt holds every size against bolts_all.csv, value by value, with
// the lengths it is listed in. The last column of a row says what its values
// were compared with, and which are unchecked: those stand there so that they
// change only on purpose.
func TestEveryBolt(t *testing.T) {
	t.Parallel()
	rows := golden.Table(t, "../../testdata/reference/bolts_all.csv", len(metricBolts)+2*len(inchBolts))
	for _, row := range rows {
		b := find(t, row["bolt"])
		for column, got := range map[string]float64{
			"stress_area_mm2": b.StressAreaMm2, "flats_mm": b.AcrossFlatsMm, "head_mm": b.HeadHeightMm,
			"nut_flats_mm": b.NutAcrossFlatsMm, "nut_mm": b.NutHeightMm,
			"socket_mm": b.SocketHeadDiameterMm, "socket_height_mm": b.SocketHeadHeightMm, "key_mm": b.SocketKeyMm,
			"washer_id_mm": b.WasherIDMm, "washer_od_mm": b.WasherODMm, "washer_mm": b.WasherThicknessMm,
		} {
			if want := row.Number(t, column); !near(got, want, 1e-9*(1+want)) {
				t.Errorf("%s %s = %v, want %v (%s)", row["bolt"], column, got, want, row["how"])
			}
		}
		for column, h := range map[string]Head{"hex_lengths_mm": Hex, "socket_lengths_mm": Socket} {
			var lengths []string
			for _, l := range b.StockLengths(h) {
				lengths = append(lengths, strconv.FormatFloat(l, 'g', 10, 64))
			}
			if got := strings.Join(lengths, " "); got != row[column] {
				t.Errorf("%s %s:\ngot  %s\nwant %s", row["bolt"], column, got, row[column])
			}
		}
		for _, class := range []string{"8.8", "10.9", "12.9"} {
			want := row.Number(t, "load_"+class+"_n")
			if got, err := b.ProofLoadN(class); (err != nil) != (want == 0) || got != want {
				t.Errorf("%s %s: %v N, %v, want %v", row["bolt"], class, got, err, want)
			}
		}
	}
}

// TestEveryGrade holds the strength of each class at the sizes about its steps
// against bolt_grades.csv. A row without figures is a refusal.
func TestEveryGrade(t *testing.T) {
	t.Parallel()
	seen := map[string]bool{}
	for _, row := range golden.Table(t, "../../testdata/reference/bolt_grades.csv", 100) {
		seen[row["class"]] = true
		got, err := find(t, row["bolt"]).Grade(row["class"])
		if refused := row["proof_mpa"] == ""; refused != (err != nil) {
			t.Errorf("%s %s: %v", row["bolt"], row["class"], err)
			continue
		}
		if !near(got.ProofMPa, row.Number(t, "proof_mpa"), 1e-6) || !near(got.YieldMPa, row.Number(t, "yield_mpa"), 1e-6) || !near(got.TensileMPa, row.Number(t, "tensile_mpa"), 1e-6) {
			t.Errorf("%s %s: %+v, want %v", row["bolt"], row["class"], got, row)
		}
	}
	for _, row := range gradeRows {
		if !seen[row.name] {
			t.Errorf("%s is not in bolt_grades.csv", row.name)
		}
	}
}

// TestGradeEnds: the diameter up to which a standard has each class, that one
// included: ISO 898-1 to M39, with a step of 8.8 at M16; ISO 3506-1 to M24 but
// for A2-50 (a table of ISO 4762; 80 like 70, within the scope of M39); SAE J429 to 1 1/2 in, grade 5 here to 1 in, grade 2
// with a step at 3/4 in.
func TestGradeEnds(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		class      string
		metric     bool
		toMm       float64
		last, next float64 // tensile strength there and just beyond, MPa
	}{
		{"4.6", true, 39, 400, 0}, {"5.6", true, 39, 500, 0}, {"5.8", true, 39, 520, 0}, {"6.8", true, 39, 600, 0},
		{"8.8", true, 16, 800, 830}, {"8.8", true, 39, 830, 0}, {"10.9", true, 39, 1040, 0}, {"12.9", true, 39, 1220, 0},
		{"A2-50", true, 39, 500, 0}, {"A2-70", true, 24, 700, 0}, {"A4-70", false, 24, 700, 0}, {"A4-80", true, 24, 800, 0},
		{"2", false, 19.05, 74 * ksi, 60 * ksi}, {"2", false, 38.1, 60 * ksi, 0}, {"5", false, 25.4, 120 * ksi, 0}, {"8", false, 38.1, 150 * ksi, 0},
		{"A574", false, 12.7, 180 * ksi, 170 * ksi}, {"ASTM A574", false, 38.1, 170 * ksi, 0},
	} {
		for over, want := range map[float64]float64{0: c.last, 0.01: c.next} {
			b := Bolt{Thread: threads.Thread{MajorMm: c.toMm + over}, metric: c.metric}
			got, err := b.Grade(c.class)
			if (err != nil) != (want == 0) || !near(got.TensileMPa, want, 1e-9) {
				t.Errorf("%s at %v mm: %v MPa, %v, want %v", c.class, b.Thread.MajorMm, got.TensileMPa, err, want)
			}
		}
	}
}

// TestMadeWith: SAE J429 is hexagon bolts, ASTM A574 socket head screws; the proof
// load printed in it for 1/2-13 is 19,900 lbf, three figures.
func TestMadeWith(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		bolt, class string
		hex, socket bool
	}{{"1/2 UNC", "grade 5", true, false}, {"1/2 UNC", "A574", false, true}, {"1/2 UNC", "A2-70", true, true}, {"M10", "8.8", true, true}, {"M10", "none", true, true}} {
		b := find(t, c.bolt)
		if b.MadeWith(c.class, Hex) != c.hex || b.MadeWith(c.class, Socket) != c.socket {
			t.Errorf("%s %s", c.bolt, c.class)
		}
	}
	if n, err := find(t, "1/2 UNC").ProofLoadN("A574"); err != nil || !near(n/4.4482216, 19900, 50) {
		t.Errorf("%v lbf, %v", n/4.4482216, err)
	}
}

// TestRequestLengths: ISO 888 lengths beyond the listed ones to 20 diameters,
// that one included, or 360 mm.
func TestRequestLengths(t *testing.T) {
	t.Parallel()
	for size, want := range map[string][2]float64{"M6": {65, 120}, "M10": {110, 200}, "M36": {0, 0}} {
		b := find(t, size)
		stock := b.StockLengths(Hex)
		more := b.requestLengths(stock)
		if want[0] == 0 {
			if len(more) != 0 {
				t.Errorf("%s: %v beyond %v", size, more, stock)
			}
			continue
		}
		if len(more) == 0 || more[0] != want[0] || more[len(more)-1] != want[1] {
			t.Errorf("%s: %v beyond %v, want from %v to %v", size, more, stock, want[0], want[1])
		}
	}
	if more := find(t, "1/2 UNC").requestLengths([]float64{25.4}); more != nil {
		t.Errorf("inch lengths %v on request", more)
	}
	if d, err := find(t, "M10").HeadDiameterMm("round"); err == nil || d != 0 {
		t.Errorf("a round head has %v mm, %v", d, err)
	}
}
