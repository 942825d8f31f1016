package measured

import (
	"encoding/csv"
	"fmt"
	"os"
	"testing"
)

// TestShaftEnds holds every row against the reference file, which says how far it is
// checked itself.
func TestShaftEnds(t *testing.T) {
	t.Parallel()
	f, err := os.Open("../../testdata/reference/motor_frames.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) != len(shaftEnds)+1 {
		t.Fatalf("%d rows of %d: %v", len(rows), len(shaftEnds), err)
	}
	for _, row := range rows[1:] {
		if got, ok := FrameShaft(row[0], 0); !ok || fmt.Sprint(got.DiameterMm) != row[1] || fmt.Sprint(got.LengthMm) != row[2] {
			t.Errorf("%v: %+v", row, got)
		}
	}
}

// A shaft is as long as its range of diameters says, up to its largest; twice as long as thick beyond the table: the table of
// the code again (its source there).
func TestShaftLength(t *testing.T) {
	t.Parallel()
	ranges := [][2]float64{{11, 23}, {14, 30}, {19, 40}, {24, 50}, {28, 60}, {38, 80}, {56, 110}, {75, 140}, {95, 170}}
	for i, e := range ranges {
		next := 2 * (e[0] + 0.1)
		if i+1 < len(ranges) {
			next = ranges[i+1][1]
		}
		if got, over := ShaftLengthMm(e[0]), ShaftLengthMm(e[0]+0.1); got != e[1] || over != next {
			t.Errorf("Ø%g: %g, and over it %g, want %g and %g", e[0], got, over, e[1], next)
		}
	}
}

// A frame has letters for its length, its shaft and its face.
func TestFrameShaft(t *testing.T) {
	t.Parallel()
	for frame, mm := range map[string]float64{
		"100L": 28, "90 S": 24, "132M2": 38, "184TC": 28.575, "184T": 28.575, "56-C": 15.875, "56HC": 15.875, "56J": 15.875, "56": 9, "215 TC": 34.925, "254TCH": 41.275,
		"": 0, "99": 0, "100X": 0, "284TS": 0, "1000": 0, "flange 100": 0,
	} {
		if got, ok := FrameShaft(frame, 0.09); got.DiameterMm != mm || ok != (mm > 0) {
			t.Errorf("%q: %+v, %v, want %g", frame, got, ok, mm)
		}
	}
	for kw, mm := range map[float64]float64{0.12: 9, 0.186: 15.875, 1.1: 15.875} { // 56 of NEMA from 1/4 hp
		if got, _ := FrameShaft("56", kw); got.DiameterMm != mm {
			t.Errorf("56 of %g kW: %+v", kw, got)
		}
	}
}

// The faces of NEMA MG 1 in inches, by two makers' charts (BD of frame 48, the largest with its
// face; of 254): bolt circle AJ, spigot AK, outside BD, height BB. That of FF265 by IEC 60072-1.
func TestFaceOf(t *testing.T) {
	t.Parallel()
	const inch = 25.4
	for _, want := range []struct{ PitchMm, SpigotMm, OutsideMm, SpigotHeightMm float64 }{
		{3.75 * inch, 3 * inch, 5.625 * inch, inch / 8}, {5.875 * inch, 4.5 * inch, 6.5 * inch, inch / 8}, {7.25 * inch, 8.5 * inch, 10 * inch, inch / 4},
		{9 * inch, 10.5 * inch, 11.25 * inch, inch / 4}, {11 * inch, 12.5 * inch, 13.375 * inch, inch / 4}, {265, 230, 300, 4},
	} {
		for off, fits := range map[float64]bool{0: true, 0.49: true, -0.49: true, 0.51: false, -0.51: false} {
			got, ok := FaceOf(want.PitchMm+off, want.SpigotMm)
			_, bored := FaceOf(want.PitchMm, want.SpigotMm-off)
			is := []float64{got.PitchMm, got.SpigotMm, got.OutsideMm, got.SpigotHeightMm}
			if ok != fits || bored != fits || fits && fmt.Sprintf("{%.3f %.3f %.3f %.3f}", is[0], is[1], is[2], is[3]) != fmt.Sprintf("%.3f", want) {
				t.Errorf("%+v, %g off: %+v, %v, %v", want, off, got, ok, bored)
			}
		}
	}
}

// Flanges by their names in words: faces of NEMA MG 1 by the frames that have them, from memory, 5.875 and
// 4.5 in with 3/8-16 of a 56C or 145TC, 7.25 and 8.5 in with 1/2-13 of a 184TC, 11 and 12.5 in with 5/8-11 of a
// 326TC; those of IEC 60072-1 by their pitch circle.
func TestNamed(t *testing.T) {
	t.Parallel()
	const inch = 25.4
	for words, want := range map[string]string{
		"48C": "48C 3.75 3 1/4-20 UNC", "56C": "56C 5.875 4.5 3/8-16 UNC", "NEMA 145tc": "145TC 5.875 4.5 3/8-16 UNC", "184TC": "184TC 7.25 8.5 1/2-13 UNC", "286TC": "286TC 9 10.5 1/2-13 UNC", "face 326TC": "326TC 11 12.5 5/8-11 UNC",
		"B5 FF165": "FF165 6.496 5.118 M10", "ft 100": "FT100 3.937 3.15 M6", "145T": "", "gear flange 265, spigot 230": "", "FF166": "",
	} {
		var got string
		for _, s := range Named(words) {
			got += fmt.Sprintf("%s %.4g %.4g %s", s.Name, s.PitchMm/inch, s.SpigotMm/inch, s.Thread)
		}
		if got != want {
			t.Errorf("%s: %q, want %q", words, got, want)
		}
	}
	if got := Named("FT115 on a 56C"); len(got) != 2 {
		t.Errorf("two: %v", got)
	}
}
