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
