package press

import (
	"errors"
	"math"
	"slices"
	"testing"

	"centrepop/layout/material"
	"centrepop/parts/geom"
)

// Which figure of the one table rules: yield, or tension for a brittle iron.
func TestLookup(t *testing.T) {
	for _, c := range []struct {
		name    string
		section float64
		want    float64
		brittle bool
		family  material.Family
	}{
		{"S235JR", 16, 235, false, material.Steel}, {"S355J2+N", 40, 345, false, material.Steel}, {"P265GH", 10, 265, false, material.Steel},
		{"EN-GJL-250", 20, 225, true, material.CastIron}, {"SAE 660", 20, 97, false, material.CopperAlloy}, {"C93200 continuous cast", 20, 138, false, material.CopperAlloy}, {"6082", 50, 260, false, material.Aluminium},
	} {
		m, err := Lookup(c.name, c.section)
		from, _ := material.Find(c.name)
		if err != nil || m.StrengthMPa != c.want || m.Brittle != c.brittle || m.Family != c.family || m.Source == "" || m.check() != nil {
			t.Errorf("Lookup(%q, %v) = %+v, %v; want %v", c.name, c.section, m, err, c.want)
		}
		if m.EMPa != from.EMPa || m.Nu != from.Nu || m.AlphaPerK != from.AlphaPerK || m.ContractPerK != from.ContractPerK || m.MaxHeatC != from.MaxHeatC || m.MinColdC != from.MinColdC {
			t.Errorf("Lookup(%q) = %+v, the table has %+v", c.name, m, from)
		}
	}
	var unknown *material.UnknownError
	if m, err := Lookup("oak", 10); !errors.As(err, &unknown) || m.Name != "" {
		t.Errorf("oak: %+v, %v", m, err)
	}
	var section *material.SectionError
	if m, err := Lookup("S235", 251); !errors.As(err, &section) || m.Name != "" {
		t.Errorf("S235 at 251: %+v, %v", m, err)
	}
}

func TestFrictionFor(t *testing.T) {
	get := func(name string) Material {
		m, err := Lookup(name, 10)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	steel, iron, bronze, alu := get("S355"), get("GG25"), get("CuSn8"), get("6082")
	for _, c := range []struct {
		hub, shaft Material
		j          Joining
		lo, hi     float64
	}{
		{steel, steel, Shrunk, 0.15, 0.20}, // DIN 7190-1, 5.3, as quoted
		{iron, steel, Shrunk, 0.10, 0.16},
		{steel, bronze, Shrunk, 0.17, 0.25},
		{alu, steel, Shrunk, 0.10, 0.15},
		{iron, bronze, Shrunk, 0.10, 0.25}, // both spans
		{bronze, bronze, PressedOiled, 0.04, 0.10},
	} {
		f, err := FrictionFor(c.hub, c.shaft, c.j)
		if err != nil || f.Min != c.lo || f.Max != c.hi || f.Source == "" {
			t.Errorf("%s on %s: %v, %v; want %v-%v", c.hub.Name, c.shaft.Name, f, err, c.lo, c.hi)
		}
	}
	// Dry steel must cover the textbook 0.10-0.15 and 0.12-0.20; oil never rubs more.
	dry, _ := FrictionFor(steel, steel, PressedDry)
	if dry.Min > 0.10 || dry.Max < 0.20 {
		t.Errorf("dry steel %v does not cover its sources", dry)
	}
	for _, m := range []Material{steel, iron, bronze, alu} {
		dry, _ := FrictionFor(m, steel, PressedDry)
		oiled, err := FrictionFor(m, steel, PressedOiled)
		if err != nil || oiled.Min > dry.Min || oiled.Max > dry.Max {
			t.Errorf("%s: oiled %v above dry %v (%v)", m.Name, oiled, dry, err)
		}
	}
	if _, err := FrictionFor(steel, steel, 7); err == nil {
		t.Error("unknown joining: want an error")
	}
	if _, err := FrictionFor(Material{Family: 9}, steel, Shrunk); err == nil {
		t.Error("unknown family: want an error")
	}
}

func TestLeadIn(t *testing.T) {
	l, err := LeadInFor(64, 0.08, 60)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "length", l, 4, 1e-9)                   // cube root of 64
	if l, err = LeadInFor(8, 0.5, 30); err != nil { // cube root 2 would give 0.35 mm only
		t.Fatal(err)
	}
	near(t, "long lead-in, 0.1 smaller than it needs", 2*l*math.Tan(5*math.Pi/180), 0.6, 1e-9)
	if l, err = LeadInFor(64, 0.08, 25); err != nil { // a tenth of what is engaged
		t.Fatal(err)
	}
	near(t, "short lead-in", l, 2.5, 1e-9)
	for _, bad := range [][3]float64{{0, 0, 9}, {-5, 0, 9}, {5, -1, 9}, {math.NaN(), 0, 9}, {5, math.Inf(1), 9}, {5, 0.1, 0}} {
		if l, err := LeadInFor(bad[0], bad[1], bad[2]); err == nil || l != 0 {
			t.Errorf("LeadInFor(%v) = %v, want an error", bad, l)
		}
	}
}

// testdata/reference/worked_examples.md (c).
func TestThermal(t *testing.T) {
	mat := func(alpha float64) Material {
		return Material{Name: "test", AlphaPerK: alpha, ContractPerK: alpha}
	}
	for _, c := range []struct {
		what                         string
		bore, shaft, alpha, clear, t float64
		want                         float64 // rise, K
	}{
		{"aluminium ring on tube", 438, 440, 23e-6, 0.5, 20, 248.2},
		{"iron rim on wheel", 997.5, 1000, 11e-6, 1e-9, 20, 227.8},
	} {
		j := Joint{Hub: Member{InsideMm: c.bore, Material: mat(c.alpha)}, Shaft: Member{OutsideMm: c.shaft, Material: mat(c.alpha)},
			InterferenceMm: c.shaft - c.bore, ClearanceMm: c.clear, RoomC: c.t, ShaftC: c.t}
		a, err := Heat(j)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.what, a.RiseK, c.want, 0.06)
		near(t, c.what+" temperature", a.HubC, c.t+c.want, 0.06)
	}
	// Rod 20.046 cooled to 20.000: 191.23 K on its own diameter (the book's 191.67
	// divides by 20.000).
	j := Joint{Hub: Member{InsideMm: 20, Material: mat(12e-6)}, Shaft: Member{OutsideMm: 20.046, Material: mat(12e-6)},
		InterferenceMm: 0.046, ClearanceMm: 1e-9, RoomC: 0}
	c, cautions, err := Cool(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cooled rod", c, -191.23, 0.01)
	if want := []Caution{{Code: NeedsNitrogen, Who: ShaftMember, Material: "test", C: c, LimitC: -78.5}, {Code: Frost, Who: ShaftMember, C: c}}; !slices.Equal(cautions, want) {
		t.Errorf("cautions %+v, want %+v", cautions, want)
	}
}

func TestHeatAndCold(t *testing.T) {
	s355, _ := Lookup("S355", 30)
	c45, _ := Lookup("C45", 30)
	j := Joint{Hub: Member{140, 90, s355}, Shaft: Member{90, 0, c45}, InterferenceMm: 0.059, RoomC: 20, ShaftC: 20}
	warm, err := Heat(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "clearance", warm.ClearanceMm, 0.09, 1e-12) // a thousandth of 90
	near(t, "hub", warm.HubC, 20+0.149/(11e-6*90), 1e-9)
	if len(warm.Cautions) != 0 {
		t.Errorf("cautions %+v at %.0f C, want none", warm.Cautions, warm.HubC)
	}
	j.ShaftC = DryIceC
	cold, err := Heat(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shrink", cold.ShrinkMm, 8.5e-6*90*98.5, 1e-12)
	if cold.HubC >= warm.HubC {
		t.Errorf("with a cold shaft the hub needs %.0f C, without %.0f C", cold.HubC, warm.HubC)
	}
	// Cooling exactly to what Cool asks leaves nothing to heat.
	alone, _, err := Cool(j)
	if err != nil {
		t.Fatal(err)
	}
	j.ShaftC = alone
	if a, err := Heat(j); err != nil || a.RiseK > 1e-6 {
		t.Errorf("rise %v with the shaft at %v (%v), want 0", a.RiseK, alone, err)
	}
	j.ShaftC = alone - 50
	if a, err := Heat(j); err != nil || a.RiseK != 0 || a.ClearanceMm <= 0.09 {
		t.Errorf("colder: rise %v, clearance %v (%v)", a.RiseK, a.ClearanceMm, err)
	}

	j.ShaftC, j.InterferenceMm = 20, 0.4
	if a, err := Heat(j); err != nil || len(a.Cautions) != 1 || a.Cautions[0] != (Caution{Code: TooHot, Who: HubMember, Material: "S355", C: a.HubC, LimitC: 350}) {
		t.Errorf("%.0f C: cautions %+v, %v", a.HubC, a.Cautions, err)
	}
}

func TestThermalRefuses(t *testing.T) {
	s355, _ := Lookup("S355", 30)
	good := Joint{Hub: Member{140, 90, s355}, Shaft: Member{90, 0, s355}, InterferenceMm: 0.05, RoomC: 20, ShaftC: 20}
	for name, spoil := range map[string]func(*Joint){
		"interference": func(j *Joint) { j.InterferenceMm = 0 },
		"bore":         func(j *Joint) { j.Hub.InsideMm = math.NaN() },
		"shaft":        func(j *Joint) { j.Shaft.OutsideMm = math.Inf(1) },
		"clearance":    func(j *Joint) { j.ClearanceMm = -1 },
		"room":         func(j *Joint) { j.RoomC = math.Inf(1) },
		"too cold":     func(j *Joint) { j.RoomC, j.ShaftC = -280, -280 },
		"expansion":    func(j *Joint) { j.Hub.Material.AlphaPerK = 0 },
	} {
		j := good
		spoil(&j)
		if a, err := Heat(j); err == nil || a.HubC != 0 || a.Cautions != nil {
			t.Errorf("Heat, %s: %+v, want an error", name, a)
		}
		if c, cautions, err := Cool(j); err == nil || c != 0 || cautions != nil {
			t.Errorf("Cool, %s: %v, want an error", name, c)
		}
		if hub, shaft, ok, err := Together(j); err == nil || hub != 0 || shaft != 0 || ok {
			t.Errorf("Together, %s: %v and %v, want an error", name, hub, shaft)
		}
	}
	j := good
	j.ShaftC = 30 // warmer than the room
	if a, err := Heat(j); err == nil {
		t.Errorf("warm shaft: %+v, want an error", a)
	}
	j.ShaftC, j.Shaft.Material.ContractPerK = -50, 0
	if a, err := Heat(j); err == nil {
		t.Errorf("no contraction known: %+v, want an error", a)
	}
	if c, cautions, err := Cool(j); err == nil || c != 0 || cautions != nil {
		t.Errorf("no contraction known: %v, want an error", c)
	}
	if JoinClearanceMm(math.NaN()) != 0 || JoinClearanceMm(20) != 0.05 || JoinClearanceMm(200) != 0.2 {
		t.Error("joining clearance: want 0, 0.05 and 0.2")
	}
}

// Grey iron to 250 C and no colder than liquid nitrogen: a joint that would ask
// 510 C of the hub is joined with both parts at once, or not at all. By hand:
// 0.6 mm on 140: rise 490 K at 10e-6 gives 0.686, clearance 0.14 - 0.054.
func TestHeatAndColdLimits(t *testing.T) {
	grey, _ := Lookup("GG25", 30)
	steel, _ := Lookup("S355", 30)
	j := Joint{Hub: Member{200, 140, grey}, Shaft: Member{140, 0, steel}, InterferenceMm: 0.546, RoomC: 20, ShaftC: 20}
	a, err := Heat(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "hub", a.HubC, 510, 1e-9)
	if want := []Caution{{Code: TooHot, Who: HubMember, Material: "EN-GJL-250", C: a.HubC, LimitC: 250}, {Code: HeatSlowly, Who: HubMember, Material: "EN-GJL-250"}}; !slices.Equal(a.Cautions, want) {
		t.Errorf("cautions %+v, want %+v", a.Cautions, want)
	}
	c, cautions, err := Cool(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shaft", c, 20-0.686/(8.5e-6*140), 1e-9) // -556.5
	if cautions[0] != (Caution{Code: TooCold, Who: ShaftMember, Material: "S355", C: c, LimitC: -195.8}) {
		t.Errorf("cautions %+v", cautions)
	}
	hub, shaft, ok, err := Together(j)
	if err != nil || ok || hub != 250 {
		t.Errorf("together: %v, %v, %v, %v", hub, shaft, ok, err)
	}
	near(t, "shaft with a hot hub", shaft, 20-(510-250)*10e-6/8.5e-6, 1e-9) // -285.9
	j.InterferenceMm = 0.4
	if hub, shaft, ok, err = Together(j); err != nil || !ok || hub != 250 {
		t.Errorf("together: %v, %v, %v, %v", hub, shaft, ok, err)
	}
	near(t, "shaft with a hot hub", shaft, 20-(0.54/140-230*10e-6)/8.5e-6, 1e-6)
	j.InterferenceMm = 0.05
	if hub, shaft, ok, err = Together(j); err != nil || !ok || shaft != 20 {
		t.Errorf("hub alone: %v, %v, %v, %v", hub, shaft, ok, err)
	}
	near(t, "hub alone", hub, 20+0.19/140/10e-6, 1e-9)
	j.InterferenceMm, j.Shaft.Material.ContractPerK = 0.5, 0
	if hub, shaft, ok, err = Together(j); err == nil || ok || hub != 0 || shaft != 0 {
		t.Error("no contraction known: want an error")
	}
	j.Hub.Material.MaxHeatC = 0
	if _, _, ok, err = Together(j); err != nil || ok {
		t.Errorf("no limit known: %v, %v", ok, err)
	}
	// A hub that stands no more than the room is not heated; one whose limit leaves the shaft 128 K to
	// fall, 100 · 2⁻⁷ of expansion over 100 · 2⁻¹⁴ of contraction, is joined at just that.
	k := Joint{Hub: Member{200, 100, Material{AlphaPerK: 1.0 / 16384, MaxHeatC: 20}}, Shaft: Member{100, 0, Material{ContractPerK: 1.0 / 16384, MinColdC: -108}}, InterferenceMm: 100.0 / 128, ClearanceMm: 100.0 / 16384, RoomC: 20, ShaftC: 20}
	for limit, want := range map[float64][2]float64{20: {0, 0}, 21: {21, -108}, 20.5: {20.5, -108.5}, 149: {149, 20}, 150: {149, 20}} {
		k.Hub.Material.MaxHeatC = limit
		if hub, shaft, ok, err := Together(k); err != nil || hub != want[0] || shaft != want[1] || ok != (limit >= 21) {
			t.Errorf("to %v: %v, %v, %v, %v", limit, hub, shaft, ok, err)
		}
	}
	// A material's own cold limit, when it is above that of nitrogen.
	if (Material{MinColdC: -100}).coldest() != -100 || (Material{MinColdC: -300}).coldest() != -195.8 || (Material{}).coldest() != -195.8 {
		t.Error("coldest: want -100, -195.8, -195.8")
	}
}

// Engagement counts full contact only. The three rows are the flanges of the demo
// jobs: 12 thick, tube 1 mm below, chamfer 5 at the back; 8, 1 and 4; and in
// inches 1/2, 1/32 and 3/16.
func TestContact(t *testing.T) {
	on := geom.Between
	for _, c := range []struct {
		hub, shaft geom.Span
		cuts       []geom.Span
		want       float64
	}{
		{on(0, 12), on(1, 500), []geom.Span{on(7, 12)}, 6},
		{on(0, 8), on(1, 130), []geom.Span{on(4, 8)}, 3},
		{on(0, 0.5), on(0.03125, 24), []geom.Span{on(0.3125, 0.5)}, 0.28125},
		{on(0, 12), on(0, 12), nil, 12},
		{on(0, 12), on(3, 9), nil, 6},
		{on(0, 12), on(1, 500), []geom.Span{on(0, 2), on(1, 3), on(7, 12), on(20, 30)}, 4},
		{on(0, 12), on(0, 12), []geom.Span{on(5, 7), on(0, 1)}, 9},
		{on(0, 12), on(0, 12), []geom.Span{on(2, 10), on(3, 5)}, 4},
		{on(0, 12), on(12, 20), nil, 0}, {on(5, 5), on(0, 12), nil, 0}, {on(0, 12), on(0, 12), []geom.Span{on(5, 5)}, 12},
		{on(0, 12), on(15, 20), []geom.Span{on(0, 1)}, 0},
		{on(0, 12), on(0, 12), []geom.Span{on(-3, 20)}, 0},
		{on(0, 12), on(0, 12), []geom.Span{on(-3, -1)}, 12},
	} {
		got, err := ContactMm(c.hub, c.shaft, c.cuts)
		if err != nil || math.Abs(got-c.want) > 1e-12 {
			t.Errorf("ContactMm(%v, %v, %v) = %v, %v; want %v", c.hub, c.shaft, c.cuts, got, err, c.want)
		}
	}
	for _, bad := range []geom.Span{{FromMm: 2, ToMm: 1}, {FromMm: math.NaN(), ToMm: 1}, {ToMm: math.Inf(1)}, {FromMm: math.Inf(-1)}} {
		if got, err := ContactMm(bad, on(0, 1), nil); err == nil || got != 0 {
			t.Errorf("hub %v: %v, want an error", bad, got)
		}
		if got, err := ContactMm(on(0, 1), on(0, 1), []geom.Span{bad}); err == nil {
			t.Errorf("cut %v: %v, want an error", bad, got)
		}
	}
}

// The whole tables of friction and heat limits (sources beside them in the code):
// a figure that slips must fail here.
func TestTables(t *testing.T) {
	t.Parallel()
	for family, want := range map[material.Family][3][2]float64{
		material.Steel:       {{0.10, 0.20}, {0.05, 0.12}, {0.15, 0.20}},
		material.CastIron:    {{0.10, 0.16}, {0.05, 0.10}, {0.10, 0.16}},
		material.CopperAlloy: {{0.05, 0.25}, {0.04, 0.10}, {0.17, 0.25}},
		material.Aluminium:   {{0.07, 0.15}, {0.05, 0.10}, {0.10, 0.15}},
	} {
		for way, w := range want {
			f, err := FrictionFor(Material{Family: family}, Material{Family: family}, Joining(way))
			if err != nil || f.Min != w[0] || f.Max != w[1] {
				t.Errorf("family %d, way %d: %v, %v; want %v", family, way, f, err, w)
			}
		}
	}
	for _, j := range []Joining{-1, 3} {
		if f, err := FrictionFor(Material{}, Material{}, j); err == nil || f != (Friction{}) {
			t.Errorf("way %d: %v, want an error", j, f)
		}
	}
	if OpenBearingC != 120 || LeadInDeg != 5 || MaxPressMmPerSec != 2 || RestHours != 24 || DryIceC != -78.5 || LiquidNitrogenC != -195.8 {
		t.Error("rules of pressing: want 5 degrees, 2 mm/s, 24 h, -78.5 and -195.8 C")
	}
	for _, f := range []Friction{{0, 0.1, ""}, {0.2, 0.1, ""}, {0.1, 1.01, ""}} {
		if f.check() == nil {
			t.Errorf("%v: want an error", f)
		}
	}
	if err := (Friction{1, 1, ""}).check(); err != nil {
		t.Error(err)
	}
}

// On the very edge of each rule.
func TestEdges(t *testing.T) {
	t.Parallel()
	if positive(0) || !positive(0.5) || positive(math.Inf(1)) || !notNegative(0) || !notNegative(0.5) || notNegative(-0.5) || notNegative(math.Inf(1)) {
		t.Error("positive and notNegative")
	}
	steel := Material{Name: "s", EMPa: 2e5, AlphaPerK: 1e-5, ContractPerK: 1e-5, MinColdC: -100, MaxHeatC: 120}
	j := Joint{Shaft: Member{100, 0, steel}}
	for c, want := range map[float64][]Code{0.5: nil, 0: nil, -0.5: {Frost}, -78.5: {Frost}, -79: {NeedsNitrogen, Frost}, -100: {NeedsNitrogen, Frost}, -100.5: {TooCold}} {
		var got []Code
		for _, caution := range j.cold(c) {
			got = append(got, caution.Code)
		}
		if !slices.Equal(got, want) {
			t.Errorf("cooled to %v: %v, want %v", c, got, want)
		}
	}
	j.Hub.Material = steel
	if got := j.hot(Assembly{HubC: 120, RiseK: 100}); got != nil {
		t.Errorf("just at the limits: %v", got)
	}
	j.Hub.Material.Family, j.Hub.Material.MaxHeatC = material.CastIron, 0
	if got := j.hot(Assembly{HubC: 900}); got != nil {
		t.Errorf("no limit and not heated: %v", got)
	}
	if got := j.hot(Assembly{HubC: 900, RiseK: 0.5}); len(got) != 1 || got[0].Code != HeatSlowly {
		t.Errorf("iron heated a little: %v", got)
	}
	// A very cold shaft slips without heat, with what is left as clearance.
	k := Joint{Hub: Member{200, 100, steel}, Shaft: Member{100, 0, steel}, InterferenceMm: 0.02, RoomC: 20, ShaftC: -180}
	a, err := Heat(k)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "clearance left", a.ClearanceMm, 100*200e-5-0.02, 1e-12)
	near(t, "shrink", a.ShrinkMm, 0.2, 1e-12)
	// Out of all proportion: an infinite temperature is refused, with zeros.
	k.InterferenceMm, k.Hub.Material.AlphaPerK, k.Shaft.Material.ContractPerK = 1e300, 1e-300, 1e-300
	if a, err := Heat(k); err == nil || a.HubC != 0 {
		t.Errorf("heat: %+v, %v", a, err)
	}
	if c, cautions, err := Cool(k); err == nil || c != 0 || cautions != nil {
		t.Errorf("cool: %v, %v, %v", c, cautions, err)
	}
	// Temperatures just in and out of range: absolute zero, the room itself.
	for _, c := range []struct {
		room, shaft float64
		ok          bool
	}{{20, 20, true}, {20, 20.1, false}, {20, -273.15, false}, {20, -273.1, true}, {-273.15, -273.15, false}, {-273.1, -273.1, true}, {math.Inf(1), 20, false}} {
		k := Joint{Hub: Member{200, 100, steel}, Shaft: Member{100, 0, steel}, InterferenceMm: 0.02, RoomC: c.room, ShaftC: c.shaft}
		if err := k.check(); (err == nil) != c.ok {
			t.Errorf("room %v, shaft %v: %v", c.room, c.shaft, err)
		}
	}
}
