package review

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
)

// bearingsKnown are the designations of the tapered bearings whose outside and width are known, with both.
func bearingsKnown() (rows []string) {
	for _, series := range slices.Sorted(maps.Keys(taperedOf)) {
		for i, own := range taperedOf[series] {
			if own[0] > 0 {
				rows = append(rows, fmt.Sprintf("%s%02d %v %v", series, i+4, own[0], own[1]))
			}
		}
	}
	return rows
}

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "tapered bearings: outside, width T, mm", bearingsKnown())
	golden.Held(t, "ISO 2982-2 KM and MB: thread, pitch, outside, height, washer, mm", golden.Pairs(lockNuts))
	golden.Held(t, "DIN 623-1: bores of the codes 00 to 03 in mm", []float64{parts.CodedBoreMm(0), parts.CodedBoreMm(1), parts.CodedBoreMm(2), parts.CodedBoreMm(3)})
	golden.Held(t, "DIN 623-1: kind, series", otherSeries)
	golden.Held(t, "EN 50347 frames: most kW in 2, 4, 6, 8 poles", framesOf)
	golden.Held(t, "NEMA MG 13 frames: least hp in 8 poles", nemaOf)
	golden.Held(t, "ISO 2768-2 L flatness: to, mm", generalFlat)
	golden.Held(t, "ISO 2768-2 L squareness: to, mm", generalSquare)
	golden.Held(t, "ISO 13857 table 4: width to, off for slot, square, round, mm", reaches)
}
