package joint_test

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// stockRow is the row of a piece of stock.
func stockRow(t *testing.T, p *plan.Plan, stock string) plan.CutRow {
	t.Helper()
	i := slices.IndexFunc(p.Cuts, func(c plan.CutRow) bool { return c.Stock == stock })
	if i < 0 {
		t.Fatalf("no row for %s in %+v", stock, p.Cuts)
	}
	return p.Cuts[i]
}

// All stock is on the list: blanks by their thickness and their box rounded up to 1 mm or
// 1/16 in, castings, and pieces that fill less than half a bar, 6 m or 20 ft, as sawn by
// the merchant. Sizes worked out by hand from the demos' parts.
func TestStockToOrder(t *testing.T) {
	t.Parallel()
	mill, jack := demoPlan(t, "pugmill"), demoPlan(t, "gatejack")
	for _, c := range []struct {
		p     *plan.Plan
		stock string
		want  []plan.CutPiece
	}{
		{mill, "round Ø190, saw cut", []plan.CutPiece{{Part: "Bearing housing", Name: "bearing-housing", Count: 1, LengthMm: 126}}},
		{mill, "round Ø30, saw cut", []plan.CutPiece{{Part: "Pillar", Name: "pillar", Count: 4, LengthMm: 266}}},
		{mill, "casting 265", []plan.CutPiece{{Part: "Lantern", Name: "lantern", Count: 1, LengthMm: 106}}},
		{mill, "plate 20, laser cut", []plan.CutPiece{{Part: "Die ring", Name: "die-ring", Count: 1, LengthMm: 262, AcrossMm: 262, Round: true}, {Part: "Motor adapter", Name: "motor-adapter", Count: 1, LengthMm: 320, AcrossMm: 314}}},
		{mill, "plate 6, laser cut", []plan.CutPiece{{Part: "Auger lock plate", Name: "lock-plate", Count: 1, LengthMm: 104, AcrossMm: 90}}}, // 90/cos 30° = 103.9
		{mill, "sheet 6, plasma cut", []plan.CutPiece{{Part: "Auger flight", Name: "auger-flight", Count: 3, LengthMm: 164, AcrossMm: 163}}},
		{jack, "plate 0.5 in, laser cut", []plan.CutPiece{{Part: "Pedestal flange", Name: "pedestal-flange", Count: 2, LengthMm: 177.8, AcrossMm: 177.8, Round: true}, {Part: "Cord arm", Name: "cord-arm", Count: 1, LengthMm: 139.7, AcrossMm: 63.5}}},
		{jack, "sheet 0.06 in", []plan.CutPiece{{Part: "Rain cone", Name: "rain-cone", Count: 1, LengthMm: 10.4375 * 25.4, AcrossMm: 8.3125 * 25.4}}},
	} {
		row := stockRow(t, c.p, c.stock)
		for i := range c.want {
			if i < len(row.Bars[0].Pieces) { // of inches to the last digit
				c.want[i].LengthMm, c.want[i].AcrossMm = near(c.want[i].LengthMm, row.Bars[0].Pieces[i].LengthMm), near(c.want[i].AcrossMm, row.Bars[0].Pieces[i].AcrossMm)
			}
		}
		if !reflect.DeepEqual(row.Bars, []plan.CutBar{{Pieces: c.want}}) || row.BarMm != 0 {
			t.Errorf("%s: %+v", c.stock, row)
		}
	}
	if i := slices.IndexFunc(mill.Cuts, func(c plan.CutRow) bool { return strings.HasPrefix(c.Stock, "plate") }); !strings.HasPrefix(mill.Cuts[i-1].Stock, "tube") {
		t.Errorf("plate stands after %s", mill.Cuts[i-1].Stock)
	}
}

// near is the length got where it is the one wanted to a nanometre.
func near(want, got float64) float64 {
	if d := got - want; d > -1e-6 && d < 1e-6 {
		return got
	}
	return want
}

// Half a bar of 6 m: pillars of 266, 2 lost at each cut and 10 at the first end. 11 come to
// 2958 and are bought sawn, 12 to 3226 of a bar that leaves 2774.
func TestWholeBars(t *testing.T) {
	t.Parallel()
	for count, want := range map[string]plan.CutBar{
		"11": {Pieces: []plan.CutPiece{{Part: "Pillar", Name: "pillar", Count: 11, LengthMm: 266}}},
		"12": {Pieces: []plan.CutPiece{{Part: "Pillar", Name: "pillar", Count: 12, LengthMm: 266, FromMm: 10}}, OffcutMm: 2774},
	} {
		p, err := draft(editedDemo(t, "pugmill", "pillar.yaml", "quantity: 4", "quantity: "+count))
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(p.Cuts, func(c plan.CutRow) bool { return strings.HasPrefix(c.Stock, "round Ø30") })
		if row := p.Cuts[i]; !reflect.DeepEqual(row.Bars, []plan.CutBar{want}) || (row.BarMm == 6000) != (count == "12") || strings.HasSuffix(row.Stock, ", saw cut") != (count == "11") {
			t.Errorf("%s: %+v", count, row)
		}
	}
}

// TestBarsToLength: 4 × 120 of flat with 3 cuts of 2 and 10 at the first end are 496, bought as 500; the tubes of the
// stand fill half a bar of 6 m, and it is bought whole.
func TestBarsToLength(t *testing.T) {
	t.Parallel()
	for job, want := range map[string]string{"pugmill": "[6000 1] [500 1]", "gatejack": "[1384.3 1] [215.9 1] [76.2 1]"} {
		var got []string
		for _, b := range demoPlan(t, job).Bars {
			got = append(got, fmt.Sprint([]any{geom.Clean(b.BarMm), len(b.Bars)}))
			if off := b.Bars[0].OffcutMm; off < 0 || off >= 13 != (b.BarMm == 6000) {
				t.Errorf("%s leaves %g", b.Section, off)
			}
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%s buys %s", job, s)
		}
	}
}

// TestBuyGrease: what open bearings are packed with and what the card of upkeep asks for is bought, once for all places.
func TestBuyGrease(t *testing.T) {
	t.Parallel()
	for job, want := range map[string]string{
		"pugmill":  "1 Gear oil as on its plate for upkeep; 1 Grease, lithium soap NLGI 2 for steps 10–11",
		"gatejack": "1 Bearing oil for upkeep; 1 Grease, calcium NLGI 2 for steps 14–15; 1 Water-resistant grease for upkeep",
	} {
		var got []string
		for _, b := range demoPlan(t, job).Bought {
			if low := strings.ToLower(b.Item); strings.HasSuffix(low, " grease") || strings.HasPrefix(low, "grease, ") || strings.Contains(low, " oil") {
				got = append(got, strconv.Itoa(b.Quantity)+" "+b.Item+" for "+b.For)
			}
		}
		if s := strings.Join(got, "; "); s != want {
			t.Errorf("%s buys %s", job, s)
		}
	}
}

// What is welded inside a part is bought too: its seam, by the process that the job welds it on
// by; that of stainless steel by its own.
func TestBuySeams(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	for item, want := range map[string]bool{"Filler for 1.4301, to the welding procedure, 1.7 g": true, "Filler for MAG, to the welding procedure, 1.05 kg": true, "Filler for S235": false} {
		if slices.ContainsFunc(p.Bought, func(b plan.BoughtRow) bool { return strings.HasPrefix(b.Item, item) }) != want {
			t.Errorf("%q: %v wanted in %+v", item, want, p.Bought)
		}
	}
}

// A seam whose process the job does not tell takes the wire that is bought for its metal all the same, by the name that the job calls that
// metal; without such a weld its own. By the words of the list.
func TestOneNameForAWire(t *testing.T) {
	t.Parallel()
	const rolled = "part: NAME\nkind: tube\nmaterial: \"304\"\nstock: {sheet: 2, cut: laser}\ntube: {outside: OUT, wall: 2, length: 200, seam: 180}\n"
	tube := func(name, out string) string { return strings.NewReplacer("NAME", name, "OUT", out).Replace(rolled) }
	for joints, want := range map[string]int{
		"{name: j, weld: {part: a.outside, to: b.bore, type: fillet, process: TIG}, level: front-with-front}": 1,
		"{name: j, weld: {part: a.outside, to: b.bore, type: fillet, process: MAG}, level: front-with-front}": 1,
	} {
		p := planned(t, jobOf(t, joints, tube("a", "200"), tube("b", "204.4"), tube("c", "300")))
		var fillers []string
		for _, b := range p.Bought {
			if strings.HasPrefix(b.Item, "Filler for") {
				fillers = append(fillers, b.Item)
			}
		}
		if len(fillers) != want || !strings.Contains(fillers[0], " on 304,") {
			t.Errorf("%s: %q", joints, fillers)
		}
	}
}

// A casting is ordered by its name, and cut to no length, nor parted off from a length that it has not.
func TestCastingByItsName(t *testing.T) {
	t.Parallel()
	const disc = "part: disc\nkind: turned\nmaterial: GG20\nstock: {casting: disc blank 7}\nprofile:\n  one-setting: [rim, bore]\n  outside: [{name: rim, diameter: 200, length: 20}]\n  inside: [{name: bore, diameter: 30, fit: H7, length: 20}]\n"
	p := planned(t, jobOf(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8}, face: back-on-front}", drilledPlate("a", "M8 clearance", ""), drilledPlate("b", "M8 tap", ""), disc))
	i := slices.IndexFunc(p.Cuts, func(c plan.CutRow) bool { return c.Stock == "casting disc blank 7" })
	if i < 0 || p.Cuts[i].Bars[0].Pieces[0].LengthMm != 0 {
		t.Errorf("%+v", p.Cuts)
	}
	if how := fmt.Sprint(p.Part("disc").Operations); strings.Contains(how, "Part off") || !strings.Contains(how, "Turn the rest of rim") {
		t.Error(how)
	}
}

// TestSawnLength: of stock that is sawn to a length a piece is as long as the job says, or else as a plate is
// across at its widest and a turned part along its axis, with 2 to face off each end.
func TestSawnLength(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ said, plate, pin float64 }{{0, 200, 44}, {95, 95, 95}} {
		job := jobOf(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8}, face: back-on-front}", drilledPlate("a", "M8 clearance", ""), drilledPlate("b", "M8 tap", ""), pinYAML)
		for i, form := range []string{"flat", "square", "round"} {
			job.Parts[i].Stock = parts.Stock{Form: form, Size: parts.Length{Mm: 160 + float64(i)}, Second: parts.Length{Mm: 10}, Length: parts.Length{Mm: c.said}}
		}
		got := map[string]float64{}
		for _, row := range planned(t, job).Cuts {
			got[row.Bars[0].Pieces[0].Part] = row.Bars[0].Pieces[0].LengthMm
		}
		if want := map[string]float64{"a": c.plate, "b": c.plate, "pin": c.pin}; !maps.Equal(got, want) {
			t.Errorf("%v, want %v", got, want)
		}
	}
}

// What is ordered and said of a metal has the name that the drawing gives it: 304 in one shop is 1.4301 in another.
func TestMetalAsDrawn(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"304", "1.4301", "AISI 304"} {
		other := strings.Replace(drilledPlate("b", "M8 tap", ""), "S235", name, 1)
		p := planned(t, jobOf(t, "{name: j, weld: {part: b.outline, to: a.outline, type: fillet, process: TIG, length: 30}, place: {on: front, with: back, at: [0, 0], top: up}}", drilledPlate("a", "M8 clearance", ""), other))
		if !slices.ContainsFunc(p.Bought, func(b plan.BoughtRow) bool {
			return strings.HasPrefix(b.Item, "Filler for TIG on "+name+" to S235")
		}) {
			t.Errorf("%s: %+v", name, p.Bought)
		}
		if j := jointNamed(t, p, "j"); !slices.ContainsFunc(j.Problems, func(q plan.Problem) bool {
			return q.Kind == plan.WeldOwnWay && q.Args[0].Text == name
		}) {
			t.Errorf("%s: %+v", name, j.Problems)
		}
	}
}

// A pin that is let into a plate down to its collar is welded round that, 30 across: π · 30. Let in less deep its collar
// stands off the plate, and nothing meets.
func TestWeldedAtItsCollar(t *testing.T) {
	t.Parallel()
	const pin = "part: pin\nkind: turned\nmaterial: S235\nstock: {round: 35}\nprofile:\n  outside: [{name: journal, diameter: 20, length: 40}, {name: collar, diameter: 30, length: 8}, {name: spigot, diameter: 16, length: 12}]\n"
	const plate = "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {square: 200}\nholes: [{name: pin, at: [[30, 0]], size: 16.5}]\n"
	weld := "{name: on, weld: {part: pin.collar, to: base.outline, type: fillet, size: 5}, place: {on: front, with: back, at: [30, 0], top: up, gap: GAP}}"
	if w := jointNamed(t, planned(t, jobOf(t, strings.Replace(weld, "GAP", "-12", 1), pin, plate)), "on").Weld; w.DiameterMm != 30 || w.LengthMm != 94.25 {
		t.Errorf("%v round %v", w.LengthMm, w.DiameterMm)
	}
	p, err := draft(jobOf(t, strings.Replace(weld, "GAP", "-10", 1), pin, plate))
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Joints) > 0 {
		t.Errorf("a collar that stands off is welded: %+v", p.Joints[0].Weld)
	}
}

// The end of a flat bar of 30 × 10 is welded round where the weld is longer than any two of its sides, 40; a shorter one is a
// seam, tacked as such.
func TestFlatBarByALength(t *testing.T) {
	t.Parallel()
	const bar = "part: arm\nkind: bar\nmaterial: S235\nbar: {flat: [30, 10], length: 110}\n"
	const plate = "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {square: 200}\n"
	for long, round := range map[string]bool{"30": false, "40": false, "50": true} {
		weld := "{name: on, weld: {part: arm.left, to: base.outline, type: fillet, size: 5, length: " + long + "}, place: {on: front, with: left, at: [30, 0], front: up}}"
		want, not := "Tack 1 × ", "opposite sides of the section"
		if round {
			want, not = not, want
		}
		says(t, jointNamed(t, planned(t, jobOf(t, weld, bar, plate)), "on"), []string{want}, []string{not})
	}
}
