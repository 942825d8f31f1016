package joint

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// TestToolSizes: tools made in the shop, in millimetres and inches, by the rules of their
// constants: common practice, no source. A step up is 1 or 1/16 in, bar comes in 5 or 1/8 in,
// 1 more than what is turned from it, tube with half a millimetre or 1/32 in more on its wall.
func TestToolSizes(t *testing.T) {
	t.Parallel()
	mm, in := &shop{job: &parts.Job{}, w: words.Writer{Units: parts.Millimetres}}, &shop{job: &parts.Job{Units: parts.Inches}, w: words.Writer{Units: parts.Inches}}
	stock := func(s parts.Stock) string {
		return strings.TrimSpace(fmt.Sprintf("%s %s %.5g %.4g", s.Form, s.Cut, s.Size.Mm, s.Second.Mm))
	}
	tool := func(p *parts.Part) string {
		out := stock(p.Stock) + fmt.Sprintf(", %d", p.Quantity)
		if pr := p.Profile; pr != nil {
			for _, s := range append(pr.Outside, pr.Inside...) {
				out += fmt.Sprintf(", %s %.5g long %.5g", s.Name.Value, s.Size.Nominal.Mm, s.Length.Mm)
				for _, l := range s.Size.Fit.Limits {
					out += fmt.Sprintf(" %.5g", l.Mm)
				}
				for _, l := range s.Size.Fit.Measured {
					out += fmt.Sprintf(" less %.3g", l.Mm)
				}
			}
		}
		for _, q := range p.Require {
			out += fmt.Sprintf(", %s %.3g", q.Kind, q.Within.Mm)
		}
		return out
	}
	plug := func(j *shop, bore, long float64, centred bool) string {
		f := stepped(parts.Part{}, cylinder(0, long, bore, true))
		f.r.Out, f.r.Steps[0].Size.MinMm = &plan.PartPlan{Title: "Tube"}, bore
		return tool(j.plug(f, f.step, centred).sheet)
	}
	jigged := func(drill, radius, long float64, plugs, rings []float64) string { // four holes round registers of these diameters, as long
		g := jig{first: drilled{m: &part.Group{Group: &plan.Group{DrillMm: drill}}, at: []plan.XY{{XMm: radius}, {YMm: radius}, {XMm: -radius}, {YMm: -radius}}}}
		on := func(d float64, inside bool) drilled {
			s := cylinder(0, long, d, inside)
			s.Size.MinMm, s.Size.MaxMm, s.Size.Limited = d, d, true
			return drilled{r: &part.Model{}, place: &s, at: g.first.at}
		}
		for _, d := range plugs {
			g.plugs = append(g.plugs, on(d, true))
		}
		for _, d := range rings {
			g.rings = append(g.rings, on(d, false))
		}
		return tool(mm.jigTool(g).sheet)
	}
	pieces := func(n ...int) bool {
		var of []drilled
		for _, q := range n {
			of = append(of, drilled{r: &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{Quantity: q}}}}}})
		}
		return worth(of, nil)
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"walls of sleeves: 5 to 83.3", []float64{sleeveWallMm(50), sleeveWallMm(83), sleeveWallMm(100)}, []float64{5, 5, 6}},
		{"up", []float64{mm.up(10), mm.up(10.2), in.up(10.2), in.up(9.525)}, []float64{10, 11, 11.1125, 9.525}}, // 7/16 and 3/8
		{"bar", []string{stock(mm.bar(39, 0)), stock(mm.bar(39.1, 0)), stock(in.bar(24.4, 0)), stock(in.bar(25.4, 0))}, []string{"round  40 0", "round  45 0", "round  25.4 0", "round  28.575 0"}},
		{"a wall of 0.15 from bar, a thinner one from tube", []string{stock(mm.bar(100, 70)), stock(mm.bar(100, 70.1)), stock(in.bar(100, 70.1))}, []string{"round  105 0", "tube  105 18", "tube  101.6 16.67"}}, // 15.75 + 0.79 to 21/32
		{"a disc of 5", tool(mm.disc(50, 5)), "round  55 0, 1, outside 50 long 5 49.5 50.5"}, {"a thinner one", tool(mm.disc(50, 4.9)), "sheet saw 4.9 0, 1"},
		{"a sleeve", tool(mm.sleeve(atLeast(40, 0.2), atMost(60, 0.4), 80.5)), "round  65 0, 1, outside 60 long 81 59.6 60, bore 40 long 81 40 40.2, squareness 0.05"},
		{"a plug 0.03 under its bore", plug(mm, 20, 50, false), "round  25 0, 1, outside 19.97 long 50 19.94 19.97"},
		{"of three diameters", plug(mm, 20, 59.9, false), "round  25 0, 1, outside 19.97 long 59.9 19.94 19.97"}, {"two beyond, one and a half long", plug(mm, 20, 60, false), "round  25 0, 2, outside 19.97 long 30 19.94 19.97"},
		{"to 80, solid", plug(mm, 80.03, 50, false), "round  85 0, 1, outside 80 long 50 79.97 80"}, {"beyond, a ring", plug(mm, 80.1, 50, false), "round  85 0, 1, outside 80.07 long 50 80.04 80.07, bore 40 long 50"},
		{"on a centre, as measured", plug(mm, 20, 50, true), "round  25 0, 1, outside 20 long 60 less 0.02 less 0.04"},
		{"a jig: one and a half drills beyond, 10 thick, 6 of register", jigged(6, 30, 20, []float64{40}, nil), "round  80 0, 1, plate 78 long 10, register 39.97 long 6 39.94 39.97"}, {"for a larger drill", jigged(8, 30, 20, []float64{40}, nil), "round  85 0, 1, plate 84 long 12, register 39.97 long 6 39.94 39.97"}, {"half of a short bore", jigged(6, 30, 8, []float64{40}, nil), "round  80 0, 1, plate 78 long 10, register 39.97 long 4 39.94 39.97"}, {"over a spigot", jigged(8, 30, 20, nil, []float64{40}), "round  85 0, 1, plate 84 long 12, ring 40.03 long 12 40.03 40.06"},
		{"four pieces are worth one", []bool{pieces(4), pieces(1, 2, 1), pieces(3), pieces(1, 2)}, []bool{true, true, false, false}},
		{"one in each end", []string{each(&part.Step{ToMm: 59.91, Size: part.Sized{MinMm: 20}}), each(&part.Step{ToMm: 59.92, Size: part.Sized{MinMm: 20}})}, []string{"", ", one in each end"}},
		{"wrenches", []wrench{wrenchFor(10.5), wrenchFor(10.6)}, []wrench{{28, 25, 17}, {38, 35, 22}}},
		{"a gauge that shows a tenth", []bool{weighed(&plan.PressPlan{ForceN: plan.Range{Max: 2000}, ShopPressN: 20000}) == "", weighed(&plan.PressPlan{ForceN: plan.Range{Max: 1999}, ShopPressN: 20000}) == ""}, []bool{true, false}},
		{"saws", func() string {
			k, l := mm.sold(), in.sold()
			return fmt.Sprintf("%.5g %.5g %.5g %.5g %.5g %.5g", k.BarMm, k.KerfMm, k.TrimMm, l.BarMm/25.4, l.KerfMm/25.4, l.TrimMm/25.4)
		}(), "6000 2 10 240 0.09375 0.375"},
		{"rings and hexagons", fmt.Sprintf("%.2f %.2f", ringMm2(80, 40), hexagonMm2(13)), "3769.91 146.36"},
	} {
		if got, want := fmt.Sprint(c.got), fmt.Sprint(c.want); got != want {
			t.Errorf("%s: %s, want %s", c.what, got, want)
		}
	}
}

// TestRingBounds: bearings at the bounds of their rules and beyond, by hand: common practice,
// no source. Of one 40 × 80 × 20 the section is 40.
func TestRingBounds(t *testing.T) {
	t.Parallel()
	made := func() *joint {
		a, b := stepped(parts.Part{}, cylinder(0, 20, 40, false)), stepped(parts.Part{}, cylinder(0, 20, 80, true))
		a.r.Out, b.r.Out = &plan.PartPlan{Title: "Shaft"}, &plan.PartPlan{Title: "Housing"}
		mm := func(v float64) parts.Length { return parts.Length{Mm: v} }
		return &joint{kind: bearingKind{}, in: &parts.Joint{Kind: parts.BearingKind, Bearing: &parts.BearingJoint{Bore: mm(40), Outside: mm(80), Width: mm(20)}}, a: a, b: b, w: words.Writer{Units: parts.Millimetres}, out: &plan.JointPlan{}}
	}
	kinds := func(work func(j *joint)) string {
		j := made()
		work(j)
		var out []string
		for _, p := range j.out.Problems {
			out = append(out, string(p.Kind))
		}
		return strings.Join(out, " ")
	}
	seat := func(nominal, least, most float64, inch, inside bool) string {
		return kinds(func(j *joint) {
			f := stepped(parts.Part{}, cylinder(0, 20, nominal, inside))
			f.r.Out = &plan.PartPlan{Title: "Shaft"}
			f.step.Size.MinMm, f.step.Size.MaxMm, f.step.Size.Limited, f.step.Size.Class = least, most, true, "limits"
			j.seat(f, 40, inch, advice{classes: []string{"k5", "m6"}})
		})
	}
	mounted := func(cup, small, off, long float64) string {
		return kinds(func(j *joint) {
			j.a.step.ToMm, j.b.step.ToMm = long, long
			m, p := mounting{cupShoulder: &part.Step{Size: part.Sized{NominalMm: cup}}, nut: &part.Step{}, small: &part.Step{Size: part.Sized{NominalMm: small}}}, &plan.BearingPlan{}
			j.abutments(p)
			j.judgeMounting(p, m, off)
		})
	}
	held := func(shoulder float64) string {
		return kinds(func(j *joint) {
			m, p := mounting{cupShoulder: &part.Step{Size: part.Sized{NominalMm: 70}}, fixed: &part.Step{Size: part.Sized{NominalMm: shoulder}}}, &plan.BearingPlan{}
			j.abutments(p)
			j.judgeMounting(p, m, 0)
		})
	}
	welded := func(play, throat float64) string {
		return kinds(func(j *joint) {
			j.in = &parts.Joint{Kind: parts.WeldKind, Weld: &parts.WeldJoint{}}
			in, out := &j.a.step.Size, &j.b.step.Size
			in.MinMm, in.MaxMm, out.NominalMm, out.MinMm, out.MaxMm = 40, 40, 40+play, 40+play, 40+play
			new(making).slack(j, &plan.WeldPlan{LegMm: 5, ThroatMm: throat})
		})
	}
	hot := func(um float64) string {
		p := &plan.BearingPlan{BoreMm: 40, ConeFitUm: plan.Range{Max: um}}
		made().heats(p)
		return fmt.Sprint(p.HeatConeC, p.HeatLeftUm)
	}
	register := func(out, in float64, fitted bool, common float64) string {
		a, b := cylinder(0, 20, out, false), cylinder(20-common, 40, in, true)
		a.Size.Limited, b.Size.Limited = fitted, fitted
		return fmt.Sprint(spigot{placedPart{at: placement{s: 1}}, placedPart{at: placement{s: 1}}, &a, &b}.nested())
	}
	p := &plan.BearingPlan{}
	made().abutments(p)
	weighs := func() float64 {
		j := made()
		j.a.r.Part.Name.Value, j.a.r.Out.MassKg, j.a.ref.Part = "shaft", 1, "shaft"
		s := &shop{job: &parts.Job{}, models: []*part.Model{j.a.r}}
		j.in.Bearing.Width.Mm = 19.75
		kg, _ := s.massKg([]parts.Instance{j.a.Instance()}, []*joint{j})
		return kg
	}
	fitsOf := func(bore, outside float64) string { // seats 10 to 30 over the bore and under the outside
		j := made()
		j.in.Bearing.Bore.Mm, j.in.Bearing.Outside.Mm = bore, outside
		for s, at := range map[*part.Sized]float64{&j.a.step.Size: bore + 0.02, &j.b.step.Size: outside - 0.02} {
			s.MinMm, s.MaxMm, s.Limited = at-0.01, at+0.01, true
		}
		p := &plan.BearingPlan{}
		known := j.fits(p)
		return fmt.Sprint(known, p.ConeFitUm, p.CupFitUm)
	}
	off := func(table []ringTolerance, mm ...float64) (out []float64) {
		for _, v := range mm {
			um, _ := deviation(table, v)
			out = append(out, um.Min)
		}
		return out
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		// ISO 492, as a seller prints it.
		{"bores by size", off(coneBores, 18, 50, 50.1, 80, 80.1, 120.1, 180.1, 250.1, 315, 315.1), []float64{-12, -12, -15, -15, -20, -25, -30, -35, -35, 0}},
		{"outsides by size", off(cupSizes, 30, 30.1, 50.1, 80.1, 120.1, 150.1, 180.1, 250.1, 315.1, 400, 400.1), []float64{-12, -14, -16, -18, -20, -25, -30, -35, -40, -40, 0}},
		// ABMA 19.2 classes 4 and 2: bores of 0 to +13 to 76.2, outsides of 0 to +25 to 304.8.
		{"inch rings on their seats", fitsOf(38.1, 76.2), "true {-2.7 30} {10 55.4}"}, {"large ones", fitsOf(76.2, 304.8), "true {-2.7 30} {10 55.4}"}, {"a larger bore", fitsOf(76.3, 304.8), "false {0 0} {0 0}"}, {"a larger outside", fitsOf(76.2, 304.9), "false {0 0} {0 0}"}, {"metric ones", fitsOf(40, 80), "true {10 42} {-6 30}"},
		{"abutments of 0.16, 2.8 and 0.14, 2.5 and 0.145 ± 0.06, and 0.09 of the section", []float64{p.SmallEndMaxMm, p.LargeEndMinMm, p.CupBackMinMm, p.CupBackMaxMm, p.CupFaceMinMm}, []float64{46.4, 48.4, 69.3, 74.1, 76.4}},
		{"a seat for an inch ring, 0.0015 of it tighter", seat(40, 40.01, 40.059, true, false), ""}, {"tighter", seat(40, 40.01, 40.061, true, false), "seat-tightness"}, {"0.001 of it looser", seat(40, 39.96, 40.01, true, false), ""}, {"looser", seat(40, 39.959, 40.01, true, false), "seat-tightness"},
		{"a bore for one, 0.0015 of it tighter", seat(40, 39.941, 40, true, true), ""}, {"tighter", seat(40, 39.939, 40, true, true), "seat-tightness"}, {"0.001 of it looser", seat(40, 40, 40.04, true, true), ""}, {"looser", seat(40, 40, 40.041, true, true), "seat-tightness"},
		{"of another size by 0.002 of it", seat(40, 40.07, 40.08, true, false), "seat-tightness"}, {"by more", seat(40, 40.081, 40.09, true, false), "bearing-size"}, {"by less", seat(40, 39.91, 39.919, true, false), "bearing-size"}, {"drawn 0.009 off", seat(40.009, 40, 40.02, true, false), ""}, {"0.011 off", seat(40.011, 40, 40.02, true, false), "bearing-size"},
		{"limits of k5 to m6: 40.002 to 40.025, ISO 286-2", seat(40, 40.002, 40.025, false, false), ""}, {"over", seat(40, 40.002, 40.026, false, false), "seat-limits"}, {"under", seat(40, 40.001, 40.025, false, false), "seat-limits"},
		{"a cup's shoulder", mounted(74.1, 46.4, 0, 16), ""}, {"lower", mounted(74.2, 46.4, 0, 16), "cup-shoulder-low"}, {"higher", mounted(69.2, 46.4, 0, 16), "cup-shoulder-high"}, {"as high", mounted(69.3, 46.4, 0, 16), ""},
		{"what the cage touches", mounted(70, 46.5, 4.9, 16), "cage-touches"}, {"5 off", mounted(70, 46.5, 5, 16), ""}, {"seats of 0.8", mounted(70, 40, 0, 15.9), "seat-short seat-short"}, {"a cone's shoulder", held(48.4), ""}, {"lower", held(48.3), "cone-shoulder-low"},
		{"0.5 and 0.2 of a throat of 5 bridged", welded(3, 5), ""}, {"more", welded(3.02, 5), "fillet-gap"}, {"3 at the most", welded(6, 20), ""}, {"more", welded(6.02, 20), "fillet-gap"},
		// 40 · 12e-6 · 90 are 43.2 µm.
		{"a cone that slips on", hot(38.1), "110 5"}, {"that does not", hot(38.3), "0 0"}, {"that is loose", hot(0), "0 0"},
		{"a spigot 1 smaller", register(39, 40, false, 5), "true"}, {"more", register(38.9, 40, false, 5), "false"}, {"1 larger", register(41, 40, false, 5), "true"}, {"fitted, 6 smaller", register(34, 40, true, 5), "true"}, {"more", register(33.9, 40, true, 5), "false"}, {"fitted and larger", register(41.1, 40, true, 5), "false"}, {"0.5 deep", register(40, 40, true, 0.5), "true"}, {"less", register(40, 40, true, 0.4), "false"},
		{"30208 beside 1 kg: 0.73 of its ring", weighs(), math.Round((1+0.73*7850e-9*19.75*3769.91)*1000) / 1000},
	} {
		if got, want := fmt.Sprint(c.got), fmt.Sprint(c.want); got != want {
			t.Errorf("%s: %s, want %s", c.what, got, want)
		}
	}
}

// TestKinds: every kind of joint that the reader takes is worked out here.
func TestKinds(t *testing.T) {
	t.Parallel()
	for _, k := range parts.JointKinds {
		if kinds[k] == nil {
			t.Errorf("%s is not worked out", k)
		}
	}
}

// TestSidesOfSeveral: sides that a fillet runs along are those of the one part that ends there; of several, whose each is.
func TestSidesOfSeveral(t *testing.T) {
	t.Parallel()
	leg, plate := plan.Corner{Side: "back", Of: "Plate", Along: "Leg", LengthMm: 29}, plan.Corner{Side: "back", Of: "Strip", Along: "Leg", LengthMm: 12}
	j := new(joint)
	if got := j.sides([]plan.Corner{leg, {Side: "top", Of: "Plate", Along: "Rail", LengthMm: 5}}, "Leg"); got != "back (29) of Plate" {
		t.Error(got)
	}
	if got := j.sides([]plan.Corner{leg, plate}, "Leg"); got != "back of Plate (29) and back of Strip (12)" {
		t.Error(got)
	}
}
