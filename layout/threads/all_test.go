package threads

import (
	"testing"

	"centrepop/parts/golden"
)

// TestEveryThread holds every thread against threads_all.csv, value by value.
// The last columns of a row say what its values were compared with; those that
// nothing was found for are marked unchecked, and stand there so that they
// change only on purpose.
func TestEveryThread(t *testing.T) {
	t.Parallel()
	rows := golden.Table(t, "../../testdata/reference/threads_all.csv", 400)
	all := All()
	if len(rows) != len(all) {
		t.Errorf("threads_all.csv has %d rows for %d threads", len(rows), len(all))
	}
	for i, row := range rows {
		name := row["designation"]
		if i < len(all) && all[i].Designation != name {
			t.Fatalf("thread %d is %s, in the file %s", i+1, all[i].Designation, name)
		}
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		hole := Clearance{}
		if got.Clearance != nil {
			hole = *got.Clearance
		}
		if (got.Clearance != nil) != (row["medium_mm"] != "") || got.TapDrillName != row["tap_drill_name"] {
			t.Errorf("%s: %+v, drill %q, want %q", name, got.Clearance, got.TapDrillName, row["tap_drill_name"])
		}
		for column, value := range map[string]float64{
			"pitch_mm": got.PitchMm, "tpi": got.TPI, "major_mm": got.MajorMm, "pitch_diameter_mm": got.PitchDiameterMm,
			"minor_internal_mm": got.MinorMm, "tap_drill_mm": got.TapDrillMm,
			"fine_mm": hole.FineMm, "medium_mm": hole.MediumMm, "coarse_mm": hole.CoarseMm,
			"gauge_mm": got.GaugeLengthMm, "useful_mm": got.UsefulLengthMm,
		} {
			if want := row.Number(t, column); !near(value, want, 1e-9) {
				t.Errorf("%s %s = %v, want %v (%s; drill %s; %s)", name, column, value, want, row["dimensions"], row["drill"], row["clearance_or_gauge"])
			}
		}
	}
}

// TestEveryRunout holds the run-outs against runouts.csv; between two pitches they are
// shared out by the pitch and rounded to a tenth.
func TestEveryRunout(t *testing.T) {
	t.Parallel()
	rows := golden.Table(t, "../../testdata/reference/runouts.csv", len(runouts))
	if len(rows) != len(runouts) {
		t.Errorf("%d rows for %d run-outs", len(rows), len(runouts))
	}
	for i, row := range rows {
		p, want := row.Number(t, "pitch_mm"), row.Number(t, "regular_mm")
		if got, err := (Thread{PitchMm: p}).RunoutMm(); err != nil || got != want {
			t.Errorf("pitch %v: %v, %v, want %v", p, got, err, want)
		}
		if i == 0 {
			continue
		}
		last := rows[i-1]
		p, want = p-0.25*(p-last.Number(t, "pitch_mm")), want-0.25*(want-last.Number(t, "regular_mm"))
		if got, err := (Thread{PitchMm: p}).RunoutMm(); err != nil || !near(got, want, 0.05001) {
			t.Errorf("pitch %v: %v, %v, want %v", p, got, err, want)
		}
	}
	for _, p := range []float64{0.19, 8.01} {
		if got, err := (Thread{PitchMm: p}).RunoutMm(); err == nil {
			t.Errorf("pitch %v has a run-out of %v", p, got)
		}
	}
}

// TestDrillNotes: where P = 1.25 leaves a drill that is not sold, the next tenth
// is named, to M14.
func TestDrillNotes(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]string{
		"M10x1.25": "tap drill by the rule d − P; 8.8 is the common drill", "M12x1.25": "tap drill by the rule d − P; 10.8 is the common drill",
		"M14x1.25": "tap drill by the rule d − P; 12.8 is the common drill", "M14x1.5": "tap drill by the rule d − P", "M8": "",
	} {
		if got, err := Parse(name); err != nil || got.Note != want {
			t.Errorf("%s: %q, %v, want %q", name, got.Note, err, want)
		}
	}
}

// TestNumbers: digits with one point or comma, to 10 000.
func TestNumbers(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]float64{"10000": 10000, "0,75": 0.75, " 09.5 ": 9.5, "10000.5": 0, "-1": 0, "1e3": 0, "1..2": 0, "": 0, "9:": 0, "0/1": 0} {
		if got, ok := decimal(text); ok != (want != 0) || ok && got != want {
			t.Errorf("%q: %v, %v, want %v", text, got, ok, want)
		}
	}
}

// TestSmallMinorTolerance: the formula of ISO 965-1 at pitches the table does not
// have, worked out by hand from log tables' 0.3^1.22 = 0.23020, 0.2^1.22 = 0.14036.
func TestSmallMinorTolerance(t *testing.T) {
	t.Parallel()
	for p, want := range map[float64]float64{0.3: (129.9 - 190*0.23020) / 1000, 0.2: (86.6 - 190*0.14036) / 1000} {
		if _, got := (Thread{Series: MetricCoarse, PitchMm: p}).MinorLimitsMm(); !near(got, want, 0.0006) {
			t.Errorf("pitch %v: %v, want %v", p, got, want)
		}
	}
}
