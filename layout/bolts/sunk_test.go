package bolts

import (
	"math"
	"slices"
	"testing"
)

// Heads as two pages print them: ISO 10642 as codecupboard.com and engineeringhardware.com have it, ASME B18.3 as
// designparams.com, its keys as adfastcomponents.com prints BS 2470. The height is that of the cone from the thread to
// the sharp edge, to the last digit printed.
func TestSunk(t *testing.T) {
	for size, want := range map[string][4]float64{
		"M3": {6.72, 1.86, 2, 90}, "M6": {13.44, 3.72, 4, 90}, "M8": {17.92, 4.96, 5, 90}, "M10": {22.4, 6.2, 6, 90}, "M12": {26.88, 7.44, 8, 90}, "M16": {33.6, 8.8, 10, 90}, "M20": {40.32, 10.16, 12, 90},
		"1/4-20 UNC": {0.531 * inch, 0.161 * inch, 5.0 / 32 * inch, 82}, "3/8-16 UNC": {0.781 * inch, 0.234 * inch, 7.0 / 32 * inch, 82}, "1/2-13 UNC": {0.938 * inch, 0.251 * inch, 5.0 / 16 * inch, 82}, "3/4-10 UNC": {1.438 * inch, 0.396 * inch, 0.5 * inch, 82},
	} {
		s, ok := find(t, size).Sunk()
		if got := [4]float64{s.DiameterMm, s.HeightMm, s.KeyMm, s.AngleDeg}; !ok || got != want {
			t.Errorf("%s: %v, want %v", size, got, want)
		}
	}
	for _, row := range sunkHeads {
		if high := (row.diameterMm - row.majorMm) / 2 / math.Tan(row.angleDeg/2*math.Pi/180); math.Abs(high-row.heightMm) > 0.03 {
			t.Errorf("%v: %v high, its cone %v", row.majorMm, row.heightMm, high)
		}
	}
	if _, ok := find(t, "M24").Sunk(); ok {
		t.Error("ISO 10642 ends at M20")
	}
	if _, err := find(t, "M24").HeadDiameterMm(Countersunk); err == nil {
		t.Error("M24 has no countersunk head")
	}
}

// M8, by hand: in a cone of 18 the head of 17.92 lies 0.04 under the face, in one of 16 it stands 0.96 proud. Listed from
// 10 to 80 or 100 mm; 28 of thread, and 4.96 of head that no shank lies in: threaded to the head up to 40. 0.8 of
// 0.75 of 21200 N.
func TestSunkScrew(t *testing.T) {
	b := find(t, "M8")
	s, _ := b.Sunk()
	if !near(s.DeepMm(18), 0.04, 1e-9) || !near(s.DeepMm(16), -0.96, 1e-9) {
		t.Errorf("%v and %v deep", s.DeepMm(18), s.DeepMm(16))
	}
	if l := b.StockLengths(Countersunk); l[0] != 10 || l[len(l)-1] != 100 || !slices.Contains(l, 45) {
		t.Errorf("lengths %v", l)
	}
	for l, want := range map[float64]float64{20: 20, 40: 40, 45: 32.96, 60: 32.96} {
		if got := b.ThreadLengthMm(Countersunk, l); !near(got, want, 1e-9) {
			t.Errorf("%v long: %v of thread, want %v", l, got, want)
		}
	}
	if got, err := b.Tighten(Tightening{Head: Countersunk, Class: "8.8"}); err != nil || !near(got.PreloadN, 12720, 1e-6) {
		t.Errorf("preload %v, %v", got.PreloadN, err)
	}
	c, err := b.ChooseLength(Joint{Head: Countersunk, GripMm: 9.96, Hole: &TappedHole{ThreadMm: 20, Through: true}})
	if err != nil || c.Chosen == nil || c.Chosen.LengthMm != 20 {
		t.Errorf("chosen %+v, %v", c.Chosen, err)
	}
	if _, err := b.HeadRoom(Place{Head: Countersunk, Tool: ToolRing}); err == nil {
		t.Error("a ring spanner on a countersunk head")
	}
	in := find(t, "1/2-13 UNC")
	if !in.MadeWith("F835", Countersunk) || in.MadeWith("A574", Countersunk) || in.MadeWith("F835", Socket) || !in.MadeWith("A2-70", Countersunk) || in.MadeWith("grade 5", Countersunk) {
		t.Error("countersunk heads of inch screws are of F835 or stainless")
	}
}
