package review

import (
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// lockNut is a locking nut for bearings and its washer: the pitch of its thread, how wide and high it is and how
// thick the washer, mm.
type lockNut struct{ pitchMm, overMm, highMm, washerMm float64 }

// lockNuts are those of series KM, KM0 to KM30, with washers MB, by their thread: ISO 2982-2 (DIN 981 and DIN 5406).
var lockNuts = map[float64]lockNut{
	10: {0.75, 18, 4, 1}, 12: {1, 22, 4, 1}, 15: {1, 25, 5, 1}, 17: {1, 28, 5, 1}, 20: {1, 32, 6, 1}, 25: {1.5, 38, 7, 1.25},
	30: {1.5, 45, 7, 1.25}, 35: {1.5, 52, 8, 1.25}, 40: {1.5, 58, 9, 1.25}, 45: {1.5, 65, 10, 1.25}, 50: {1.5, 70, 11, 1.25},
	55: {2, 75, 11, 1.5}, 60: {2, 80, 11, 1.5}, 65: {2, 85, 12, 1.5}, 70: {2, 92, 12, 1.5}, 75: {2, 98, 13, 1.5}, 80: {2, 105, 15, 1.75},
	85: {2, 110, 16, 1.75}, 90: {2, 120, 16, 1.75}, 95: {2, 125, 17, 1.75}, 100: {2, 130, 18, 1.75}, 105: {2, 140, 18, 1.75},
	110: {2, 145, 19, 1.75}, 115: {2, 150, 19, 2}, 120: {2, 155, 20, 2}, 125: {2, 160, 21, 2}, 130: {2, 165, 21, 2}, 135: {2, 175, 22, 2},
	140: {2, 180, 22, 2}, 145: {2, 190, 24, 2}, 150: {2, 195, 24, 2},
}

// leastNutOver is how wide a nut is at the least whose series is not known, as a share of its
// thread. Common practice, no source: locking nuts of ISO 2982-2 are 1.27 and more.
const leastNutOver = 1.3

// lockNutOf is the locking nut on a thread. One of no series is taken to be as wide as most of them are at the least, as high
// as they are on the whole, and to have a washer of the middle: common practice, no source.
func lockNutOf(t threads.Thread) lockNut {
	if n := lockNuts[t.MajorMm]; n.pitchMm == t.PitchMm {
		return n
	}
	return lockNut{t.PitchMm, leastNutOver * t.MajorMm, 0.15*t.MajorMm + 3, 1.25}
}

// tabs are how wide the inner tab of a locking washer is at the least on threads from a diameter on, mm: of series MB, and W where it is in inches.
// DIN 5406 and ABMA 8.2, from memory.
var tabs = map[bool][][2]float64{
	false: {{80, 10}, {55, 8}, {35, 6}, {25, 5}, {15, 4}, {0, 3}},
	true:  {{38, 0.290 * geom.MmPerInch}, {19, 0.176 * geom.MmPerInch}, {0, 0.120 * geom.MmPerInch}},
}

// tabMm is how wide the tab of the washer on a thread is at the least.
func tabMm(t threads.Thread) float64 {
	return seq.First(tabs[t.TPI > 0], func(row [2]float64) bool { return t.MajorMm >= row[0] })[1]
}

func isWasher(f *parts.Radial) bool { return washer().MatchString(f.Name.Value + " " + f.Note.Value) }
