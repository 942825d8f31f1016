package parts_test

import (
	"math"
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

// The bore that two figures say, DIN 623-1: 00 to 03 are 10, 12, 15 and 17 mm, from 04 on five times the figures; and the sizes of pins as ordered.
func TestSizesInWords(t *testing.T) {
	t.Parallel()
	for code, want := range map[int]float64{-1: 0, 0: 10, 1: 12, 2: 15, 3: 17, 4: 20, 20: 100, 96: 480, 97: 0} {
		if got := parts.CodedBoreMm(code); got != want {
			t.Errorf("%02d is of %g mm, want %g", code, got, want)
		}
	}
	for words, want := range map[string][2]float64{"dowel pin 8 m6 x 20": {8, 20}, "2 pins, 6 x 30 mm": {6, 30}, "pin 1/4 x 1 in": {6.35, 25.4}, "clevis pin 1/2 × 1-1/4": {12.7, 31.75}, "spring pin 5x16": {5, 16}, "split pin 4": {0, 0}, "bolt 8 x 20": {0, 0}} {
		if across, long := parts.PinSizes(words, parts.Millimetres); math.Abs(across-want[0]) > 1e-9 || math.Abs(long-want[1]) > 1e-9 {
			t.Errorf("%s: %g x %g mm, want %v", words, across, long, want)
		}
	}
	if across, long := parts.PinSizes("pin 0.5 x 20 mm", parts.Inches); across != 12.7 || long != 20 {
		t.Errorf("in a job in inches: %g x %g mm", across, long)
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
