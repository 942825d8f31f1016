package keys

import (
	"errors"
	"math"
	"testing"

	"centrepop/layout/lookup"
)

// DIN 6888:1956: sizes up to a width of 4 mm and lengths as its page reads; the
// other rows and lengths from memory.
func TestWoodruff(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name                                             string
		shaft, over, upTo, disc, length, depth, hubDepth float64
		state                                            lookup.State
	}{
		{"1x1.4", 4, 3, 4, 4, 3.82, 1, 0.6, lookup.Checked},
		{"1.5x2.6", 6, 4, 6, 7, 6.76, 2, 0.8, lookup.Checked},
		{"2x2.6", 7, 6, 8, 7, 6.76, 1.8, 1, lookup.Checked},
		{"2x3.7", 8, 6, 8, 10, 9.66, 2.9, 1, lookup.Checked},
		{"3x3.7", 9, 8, 10, 10, 9.66, 2.5, 1.4, lookup.Checked},
		{"3x5", 10, 8, 10, 13, 12.65, 3.8, 1.4, lookup.Checked},
		{"3x6.5", 10, 8, 10, 16, 15.72, 5.3, 1.4, lookup.Checked},
		{"4x5", 11, 10, 12, 13, 12.65, 3.5, 1.7, lookup.Checked},
		{"4x6.5", 12, 10, 12, 16, 15.72, 5, 1.7, lookup.Checked},
		{"4x7.5", 12, 10, 12, 19, 18.57, 6, 1.7, lookup.Checked},
		{"5x6.5", 15, 12, 17, 16, 15.72, 4.5, 2.2, lookup.FromMemory},
		{"5x7.5", 15, 12, 17, 19, 18.57, 5.5, 2.2, lookup.FromMemory},
		{"5x9", 17, 12, 17, 22, 21.63, 7, 2.2, lookup.FromMemory},
		{"6x7.5", 20, 17, 22, 19, 18.57, 5.1, 2.6, lookup.FromMemory},
		{"6x9", 22, 17, 22, 22, 21.63, 6.6, 2.6, lookup.FromMemory},
		{"6x11", 22, 17, 22, 28, 27.35, 8.6, 2.6, lookup.FromMemory},
		{"8x9", 25, 22, 30, 22, 21.63, 6.2, 3, lookup.FromMemory},
		{"8x11", 30, 22, 30, 28, 27.35, 8.2, 3, lookup.FromMemory},
		{"8x13", 30, 22, 30, 32, 31.43, 10.2, 3, lookup.FromMemory},
		{"10x11", 35, 30, 38, 28, 27.35, 7.8, 3.4, lookup.FromMemory},
		{"10x13", 38, 30, 38, 32, 31.43, 9.8, 3.4, lookup.FromMemory},
		{"10x16", 38, 30, 38, 45, 43.08, 12.8, 3.4, lookup.FromMemory},
	} {
		found := false
		list, err := WoodruffFor(c.shaft)
		for _, w := range list {
			if w.Designation != c.name {
				continue
			}
			found = true
			if w.OverMm != ([2]float64{c.over, c.upTo}) || w.DiscMm != c.disc || !near(w.LengthMm, c.length, 0.005) ||
				w.ShaftDepthMm != c.depth || w.HubDepthMm != c.hubDepth || w.Source.State != c.state || w.Standard != "DIN 6888" {
				t.Errorf("%s: %+v", c.name, w)
			}
		}
		if !found || err != nil {
			t.Errorf("%s is not offered for %v: %v", c.name, c.shaft, err)
		}
	}
	if list, err := WoodruffFor(8); err != nil || len(list) != 2 {
		t.Errorf("8: %v, %v", list, err)
	}
}

// ASME B17.2: Shigley's Tables 7-7 and 7-8, the whole of them; the depths
// belong together, which a misread digit would break.
func TestWoodruffInch(t *testing.T) {
	t.Parallel()
	numbers := map[string]Woodruff{}
	for d := 0.32; d <= 2.625; d += 1.0 / 64 {
		list, err := WoodruffForInch(d * 25.4)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range list {
			numbers[w.Designation] = w
		}
	}
	for name, want := range map[string][7]float64{ // width, height, disc, shaft depth, hub depth, shafts from, to: inches
		"202": {1.0 / 16, 0.109, 0.25, 0.0728, 0.0372, 0.3125, 0.5}, "203": {1.0 / 16, 0.172, 0.375, 0.1358, 0.0372, 0.3125, 0.5},
		"303": {3.0 / 32, 0.172, 0.375, 0.1202, 0.0529, 0.375, 0.875}, "304": {3.0 / 32, 0.203, 0.5, 0.1511, 0.0529, 0.375, 0.875},
		"305": {3.0 / 32, 0.250, 0.625, 0.1981, 0.0529, 0.375, 0.875}, "404": {0.125, 0.203, 0.5, 0.1355, 0.0685, 0.375, 1.5},
		"405": {0.125, 0.250, 0.625, 0.1825, 0.0685, 0.375, 1.5}, "406": {0.125, 0.313, 0.75, 0.2455, 0.0685, 0.375, 1.5},
		"505": {5.0 / 32, 0.250, 0.625, 0.1669, 0.0841, 0.5, 1.625}, "506": {5.0 / 32, 0.313, 0.75, 0.2299, 0.0841, 0.5, 1.625},
		"507": {5.0 / 32, 0.375, 0.875, 0.2919, 0.0841, 0.5, 1.625}, "606": {3.0 / 16, 0.313, 0.75, 0.2143, 0.0997, 0.5625, 2},
		"607": {3.0 / 16, 0.375, 0.875, 0.2763, 0.0997, 0.5625, 2}, "608": {3.0 / 16, 0.438, 1, 0.3393, 0.0997, 0.5625, 2},
		"807": {0.25, 0.375, 0.875, 0.2450, 0.1310, 0.6875, 2.25}, "808": {0.25, 0.438, 1, 0.3080, 0.1310, 0.6875, 2.25},
		"810": {0.25, 0.547, 1.25, 0.4170, 0.1310, 0.6875, 2.25}, "1008": {5.0 / 16, 0.438, 1, 0.2768, 0.1622, 0.75, 2.375},
		"1010": {5.0 / 16, 0.547, 1.25, 0.3858, 0.1622, 0.75, 2.375}, "1012": {5.0 / 16, 0.641, 1.5, 0.4798, 0.1622, 0.75, 2.375},
		"1210": {0.375, 0.547, 1.25, 0.3545, 0.1935, 1, 2.625}, "1212": {0.375, 0.641, 1.5, 0.4485, 0.1935, 1, 2.625},
	} {
		w := numbers[name]
		for i, got := range []float64{w.WidthMm, w.HeightMm, w.DiscMm, w.ShaftDepthMm, w.HubDepthMm, w.OverMm[0], w.OverMm[1]} {
			if !near(got/25.4, want[i], 1e-9) {
				t.Errorf("%s: value %d is %v, want %v", name, i, got/25.4, want[i])
			}
		}
		// ASME B17.2 sinks the key to half its width above the shaft, with five
		// thousandths of room: seen in every row of the table.
		if half := want[0] / 2; !near(want[4], half+0.006, 0.0002) || !near(want[3], want[1]-half, 0.0061) {
			t.Errorf("%s: depths %v, %v do not go with width and height", name, want[3], want[4])
		}
	}
	// 808: half a disc of 1 in but for its flat, 2·√(0.438·0.562).
	if got := numbers["808"].LengthMm / 25.4; !near(got, 0.992282, 1e-6) {
		t.Errorf("808 is %v long", got)
	}
	if len(numbers) != 22 {
		t.Errorf("%d keys, want 22", len(numbers))
	}
}

func TestWoodruffOutside(t *testing.T) {
	t.Parallel()
	for _, d := range []float64{3, 38.1, math.NaN(), math.Inf(1), -5} {
		var r *lookup.RangeError
		if _, err := WoodruffFor(d); !errors.As(err, &r) || r.Above != 3 || r.UpTo != 38 {
			t.Errorf("%v: %v", d, err)
		}
	}
	for _, d := range []float64{0.3125, 2.63} {
		if _, err := WoodruffForInch(d * 25.4); err == nil {
			t.Errorf("%v in is accepted", d)
		}
	}
}

// A Woodruff key by its name lies in keyways of its table: 5x6.5 is sunk 4.5 and 2.2
// (DIN 6888, from memory), 5 N9 is 4.970 to 5.000 and 5 JS9 4.985 to 5.015, 3 N9 2.971 to
// 2.996 and 3 JS9 2.9875 to 3.0125 (ISO 286-2);
// 808 0.3080 and 0.1310 (Shigley, Table 7-7), widths and 0.005 in more depth of
// ASME B17.2, Table 10.
func TestWoodruffNamed(t *testing.T) {
	t.Parallel()
	for name, want := range map[string][9]float64{ // scale, diameter, across the shaft, across the hub, deeper; shaft and hub width
		"5x6.5": {1, 17, 12.5, 19.2, 0.1, 4.970, 5.000, 4.985, 5.015},
		"3x5":   {1, 10, 6.2, 11.4, 0.1, 2.971, 2.996, 2.9875, 3.0125},
		"808":   {25.4, 1, 0.692, 1.131, 0.005, 0.2487, 0.2505, 0.2510, 0.2530},
		"202":   {25.4, 0.5, 0.4272, 0.5372, 0.005, 0.0615, 0.0630, 0.0635, 0.0655},
		"305":   {25.4, 0.5, 0.3019, 0.5529, 0.005, 0.0928, 0.0943, 0.0948, 0.0968},
		"406":   {25.4, 1, 0.7545, 1.0685, 0.005, 0.1240, 0.1255, 0.1260, 0.1280},
		"507":   {25.4, 1, 0.7081, 1.0841, 0.005, 0.1553, 0.1568, 0.1573, 0.1593},
		"606":   {25.4, 0.75, 0.5357, 0.8497, 0.005, 0.1863, 0.1880, 0.1885, 0.1905},
		"1010":  {25.4, 2, 1.6142, 2.1622, 0.005, 0.3111, 0.3130, 0.3135, 0.3155},
		"1212":  {25.4, 2, 1.5515, 2.1935, 0.005, 0.3735, 0.3755, 0.3760, 0.3780},
	} {
		w, err := WoodruffNamed(name)
		if err != nil || w.Designation != name {
			t.Fatalf("%s: %v, %v", name, w, err)
		}
		k := w.In(want[1] * want[0])
		shaft, from, err := k.Keyway(false)
		hub, _, again := k.Keyway(true)
		for i, got := range []float64{k.ShaftAcrossMm, k.HubAcrossMm, k.ShaftDeeperMm, shaft.MinMm, shaft.MaxMm, hub.MinMm, hub.MaxMm} {
			if !near(got/want[0], want[i+2], 5e-7) {
				t.Errorf("%s: value %d is %v, want %v", name, i, got/want[0], want[i+2])
			}
		}
		if err != nil || again != nil || (from.State == lookup.FromMemory) != (w.Standard == metricDiscs) || k.HubDeeperMm != k.ShaftDeeperMm || w.Standard == metricDiscs != (want[0] == 1) {
			t.Errorf("%s: %v, %v, %v, %v", name, err, again, from, k)
		}
		if l := shaft.LowerUm; want[0] > 1 && !near(l, (want[5]-w.WidthMm/25.4)*25400, 1e-6) {
			t.Errorf("%s: lower %v µm", name, l)
		}
		for l, most := range map[float64]float64{shaft.UpperUm: want[6], hub.UpperUm: want[8]} {
			if want[0] > 1 && !near(l, (most-w.WidthMm/25.4)*25400, 1e-6) {
				t.Errorf("%s: upper %v µm", name, l)
			}
		}
	}
	var u *lookup.UnknownError
	if _, err := WoodruffNamed("5x7"); !errors.As(err, &u) || u.Value != "5x7" || len(u.Known) != 22+22 {
		t.Errorf("5x7: %v", err)
	}
	if _, _, err := (Parallel{WidthMm: 7, Standard: inchDiscs}).Keyway(true); err == nil {
		t.Error("no error for a key 7 mm wide")
	}
}
