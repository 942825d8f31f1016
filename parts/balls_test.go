package parts_test

import (
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
)

// Each size of the table, row by row, and nothing beside it.
func TestDeepGrooveSizes(t *testing.T) {
	t.Parallel()
	rows := golden.Table(t, "../testdata/reference/deep_groove.csv", 63)
	for _, row := range rows {
		want := parts.DeepGroove{BoreMm: row.Number(t, "d"), OutsideMm: row.Number(t, "D"), WidthMm: row.Number(t, "B"), ChamferMm: row.Number(t, "r"), Checked: strings.Contains(row["how"], "chart")}
		for _, after := range []string{"", "-2RS", " C3", "ZZ"} {
			if got, known := parts.DeepGrooveOf(row["bearing"] + after); !known || got != want {
				t.Errorf("%s%s is %v, want %v", row["bearing"], after, got, want)
			}
		}
	}
	if len(rows) != 63 {
		t.Errorf("%d rows", len(rows))
	}
	for _, other := range []string{"", "6021", "6097", "600", "60041", "6004.5", "6404", "30204", "7204", "62", "R8"} {
		if got, known := parts.DeepGrooveOf(other); known {
			t.Errorf("%q is %v", other, got)
		}
	}
}

// Two seals or two shields keep the grease in, one does not; DIN 623-1.
func TestSealed(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]bool{"6004-2RS": true, "6004 2RS1": true, "6004-2Z": true, "6004ZZ": true, "6004-2RSH/C3": true, "6004": false, "6004-RS": false, "6202Z": false, "6004-Z": false, "6004 C3": false} {
		b := parts.BearingJoint{Ball: true, Bearing: parts.Text{Value: name}}
		if b.Sealed() != want {
			t.Errorf("%s: sealed %v", name, !want)
		}
	}
	if tapered := (parts.BearingJoint{Bearing: parts.Text{Value: "30204-2RS"}}); tapered.Sealed() {
		t.Error("a tapered bearing is open")
	}
}
