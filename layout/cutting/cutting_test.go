package cutting

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/material"
)

// Cutting speed to rev/min, exact: testdata/reference/worked_examples.md (i).
func TestSpindleRPM(t *testing.T) {
	for _, c := range []struct {
		v, d, want float64
	}{
		{25, 10, 796}, // drill, mild steel
		{18, 10, 573}, // drill, stainless
		{80, 10, 2546},
		{110, 50, 700}, // turning, carbide, mild steel
		{10, 0.5, 6366}, {0.5, 100, 2},
	} {
		if got := SpindleRPM(c.v, c.d); math.Round(got) != c.want {
			t.Errorf("SpindleRPM(%v, %v) = %.2f, want %v", c.v, c.d, got, c.want)
		}
	}
	for _, bad := range [][2]float64{{0, 10}, {25, 0}, {-1, 10}, {25, -10}, {-25, -10}, {math.NaN(), 10}, {25, math.NaN()}, {math.Inf(1), 10}, {25, math.Inf(1)}, {1e308, 1e-300}} {
		if got := SpindleRPM(bad[0], bad[1]); got != 0 {
			t.Errorf("SpindleRPM(%v) = %v, want 0", bad, got)
		}
	}
}

func TestChooseSpeed(t *testing.T) {
	lathe := []float64{70, 115, 190, 300, 480, 755, 1200}
	for _, c := range []struct {
		want, rpm float64
		note      string // part of it
	}{
		{796, 755, ""},
		{755, 755, ""},
		{754.9, 480, ""},
		{70, 70, ""},
		{69, 70, "warning: lowest speed"},
		{1300, 1200, ""},
		{2000, 1200, ""}, {2001, 1200, "slow"}, // 60 percent
		{2546, 1200, "slow"},
	} {
		rpm, note := ChooseSpeed(c.want, lathe)
		if rpm != c.rpm || !strings.Contains(note, c.note) || (c.note == "") != (note == "") {
			t.Errorf("ChooseSpeed(%v) = %v, %q; want %v, %q", c.want, rpm, note, c.rpm, c.note)
		}
	}
	if rpm, note := ChooseSpeed(0.4, []float64{0.7, 0.5, 0.6}); rpm != 0.5 || !strings.Contains(note, "lowest speed") {
		t.Errorf("a slow drive: %v, %q; want its lowest", rpm, note)
	}
	if rpm, note := ChooseSpeed(0.6, []float64{0.7, 0.5, 0.6}); rpm != 0.6 || note != "" {
		t.Errorf("a slow drive: %v, %q; want 0.6", rpm, note)
	}
	if rpm, _ := ChooseSpeed(200, []float64{300, math.NaN(), -5, 190, math.Inf(1), 70}); rpm != 190 {
		t.Errorf("unsorted list with bad entries: %v, want 190", rpm)
	}
	for _, want := range []float64{math.NaN(), 0, -1, math.Inf(1)} {
		if rpm, note := ChooseSpeed(want, lathe); rpm != 0 || note == "" {
			t.Errorf("ChooseSpeed(%v) = %v, %q; want 0 and a reason", want, rpm, note)
		}
	}
	if rpm, note := ChooseSpeed(100, nil); rpm != 0 || note == "" {
		t.Errorf("no speeds: %v, %q; want 0 and a reason", rpm, note)
	}
}

// 1260/(pi 0.4) = 1003, 300/(pi 0.4) = 239; a small part turns with its chuck of
// 160 mm: 2507.
func TestSpindleLimit(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		mm     float64
		uneven bool
		want   float64
	}{{400, false, 1003}, {400, true, 239}, {20, false, 2507}, {160, true, 597}, {161, false, 2491}, {0, false, 0}, {math.NaN(), true, 0}, {math.Inf(1), false, 0}} {
		if got := SpindleLimitRPM(c.mm, c.uneven); math.Round(got) != c.want {
			t.Errorf("SpindleLimitRPM(%v, %v) = %.1f, want %v", c.mm, c.uneven, got, c.want)
		}
	}
}

// The ranges must overlap every published range of worked_examples.md (i) and
// stay within the union of its sources.
func TestSpeedsAgainstPublished(t *testing.T) {
	for _, c := range []struct {
		material string
		op       Op
		tool     Tool
		lo, hi   float64 // union of the sources
		with     []Range // each must be touched
	}{
		{"S235", Turn, HSS, 20, 76, []Range{{20, 35}, {30, 76}, {24, 37}}},
		{"A36", Turn, Carbide, 90, 135, []Range{{90, 135}}},
		{"1018", Drill, HSS, 20, 37, []Range{{20, 30}, {21, 37}}},
		{"1.4301", Turn, HSS, 12, 35, []Range{{20, 35}, {12, 15}}},
		{"316L", Turn, Carbide, 70, 120, []Range{{70, 120}}},
		{"304", Drill, HSS, 15, 25, []Range{{15, 25}}},
		{"EN AW-6082 T6", Turn, HSS, 107, 213, []Range{{150, 180}, {107, 213}}},
		{"6061-T6", Turn, Carbide, 335, 365, []Range{{335, 365}}},
		{"aluminium", Drill, HSS, 30, 152, []Range{{30, 120}, {76, 152}}},
		{"CuZn39Pb3", Turn, HSS, 76, 152, []Range{{90, 105}, {76, 152}}},
		{"brass", Turn, Carbide, 180, 200, []Range{{180, 200}}},
		{"brass", Drill, HSS, 46, 137, []Range{{50, 55}, {46, 137}}},
		{"CuZn37", Turn, HSS, 60, 152, []Range{{60, 75}}},
		{"SAE 660", Turn, Carbide, 150, 165, []Range{{150, 165}}},
		{"bronze", Drill, HSS, 35, 137, []Range{{35, 40}}},
	} {
		m, err := material.Find(c.material)
		if err != nil {
			t.Errorf("%s: %v", c.material, err)
			continue
		}
		r, src, err := Speed(m.Kind, c.op, c.tool)
		if err != nil || src == "" {
			t.Errorf("%s %s %s: source %q, error %v", c.material, c.op, c.tool, src, err)
			continue
		}
		if r.MinMPerMin < c.lo || r.MaxMPerMin > c.hi {
			t.Errorf("%s %s %s: %v outside the published union %v-%v", c.material, c.op, c.tool, r, c.lo, c.hi)
		}
		for _, w := range c.with {
			if r.MaxMPerMin < w.MinMPerMin || r.MinMPerMin > w.MaxMPerMin {
				t.Errorf("%s %s %s: %v does not touch the published %v", c.material, c.op, c.tool, r, w)
			}
		}
	}
}

func TestDerivedSpeeds(t *testing.T) {
	drill, _, _ := Speed(material.MildSteel, Drill, HSS)
	ream, src, err := Speed(material.MildSteel, Ream, HSS)
	if err != nil || ream.MinMPerMin != drill.MinMPerMin/2 || ream.MaxMPerMin != drill.MaxMPerMin/2 || !strings.Contains(src, "common practice") {
		t.Errorf("reaming %v (%s, %v), want half of drilling %v", ream, src, err, drill)
	}
	for k := material.Kind(0); k.Data().Name != ""; k++ {
		for _, tool := range []Tool{HSS, Carbide} {
			turn, _, err := Speed(k, Turn, tool)
			if err != nil {
				t.Fatal(err)
			}
			for _, op := range []Op{Bore, Thread} {
				r, src, err := Speed(k, op, tool)
				if err != nil || src == "" || !(r.MinMPerMin > 0 && r.MinMPerMin < turn.MinMPerMin && r.MaxMPerMin < turn.MaxMPerMin && r.MaxMPerMin >= r.MinMPerMin) {
					t.Errorf("%s %s %s: %v from turning %v (%q, %v)", k.Data().Name, op, tool, r, turn, src, err)
				}
			}
		}
		for _, op := range []Op{Drill, Ream, Tap} {
			if _, _, err := Speed(k, op, Carbide); err == nil {
				t.Errorf("%s %s carbide: want an error", k.Data().Name, op)
			}
			r, _, err := Speed(k, op, HSS)
			if err != nil || !(r.MinMPerMin > 0 && r.MinMPerMin <= r.MidMPerMin() && r.MidMPerMin() <= r.MaxMPerMin) {
				t.Errorf("%s %s: %v, %v", k.Data().Name, op, r, err)
			}
		}
		hss, _, _ := Speed(k, Turn, HSS)
		car, _, _ := Speed(k, Turn, Carbide)
		if car.MinMPerMin < 1.9*hss.MinMPerMin || car.MaxMPerMin < 1.9*hss.MaxMPerMin {
			t.Errorf("%s: carbide %v not about twice HSS %v or more", k.Data().Name, car, hss)
		}
	}
	if _, _, err := Speed(material.MildSteel, "grind", HSS); err == nil {
		t.Error("unknown operation: want an error")
	}
	if _, _, err := Speed(material.MildSteel, Turn, "stellite"); err == nil {
		t.Error("unknown tool: want an error")
	}
	if _, _, err := Speed(99, Turn, HSS); err == nil {
		t.Error("unknown kind: want an error")
	}
}
