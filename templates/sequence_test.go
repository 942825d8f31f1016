package templates

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/golden"
)

// sleevePart is a plain sleeve of 100 mm on the flange's bore.
func sleevePart() *plan.PartPlan {
	return &plan.PartPlan{Name: "sleeve", Title: "Sleeve", Kind: "tube", Quantity: 1, Material: "S355", MassKg: 3.2,
		Section: &plan.Section{LengthMm: 100, MaxMm: 57.15,
			Outer: []plan.XY{{XMm: 0, YMm: 55.15}, {XMm: 4, YMm: 57.15}, {XMm: 100, YMm: 57.15}},
			Inner: []plan.XY{{XMm: 0, YMm: 50}, {XMm: 100, YMm: 50}}},
	}
}

// joinedPlan has a joint of each kind on a flange and a sleeve.
func joinedPlan() *plan.Plan {
	pl := jobOf("Pug mill", parts.Millimetres, flangePart(), sleevePart())
	sleeve := plan.JointEnd{Part: "sleeve", Copy: 1, Title: "Sleeve", Feature: "outside", DiameterMm: 114.3, MinMm: 114.3, MaxMm: 114.3, FromMm: 0, ToMm: 100}
	bore := plan.JointEnd{Part: "barrel-flange", Copy: 1, Title: "Barrel flange 1", Feature: "bore", DiameterMm: 114.3, Inside: true, FromMm: 0, ToMm: 8}
	together := []plan.Placed{
		{Part: "barrel-flange", Copy: 1, Title: "Barrel flange 1"},
		{Part: "sleeve", Copy: 1, Title: "Sleeve", FrontMm: 1, New: true},
	}
	marks := []plan.ClockMark{
		{Label: "TOP", Part: "Barrel flange 1", Key: true}, {Label: "TOP", Part: "Sleeve", Deg: 0, Key: true},
		{Label: "grease port", Part: "Sleeve", Deg: 120, Key: true}, {Label: "drain", Part: "Sleeve", Deg: 240},
	}
	press := &plan.JointPlan{N: 1, Name: "press", Title: "Press Barrel flange 1 on Sleeve", Kind: "press", A: sleeve, B: bore,
		How: "front of Sleeve level with the front of Barrel flange 1, the inner part 1 below, TOP of Sleeve at 0° of Barrel flange 1",
		Why: []string{"after a: the job says so", "after b: the job says so"}, Placed: together, Clock: marks,
		Align:   []plan.AlignLine{{What: "Sleeve grease port – Barrel flange 1 bolts", Deg: 120}},
		Figures: []plan.Figure{{Label: "press force", Value: "12 – 34 kN", Source: "at the end of travel"}, {Label: "pressure", Value: "1.2 – 3.4 MPa", Source: "Lamé"}},
		Press: &plan.PressPlan{Method: "press", InterferenceMm: plan.Range{Min: 0.01, Max: 0.03}, LengthMm: 7, ForceN: plan.Range{Min: 12000, Max: 34000},
			HeatHubC: 127, CoolShaftC: -119, ClearanceMm: 0.17, LeadInMm: 5.5, LeadInDeg: 5, ShopPressN: 200000},
		Remedies: []string{"Scribe both at 0°."},
		Steps: []plan.JointStep{
			{N: 1, Title: "Measure", Do: []string{"Measure both at three places."}, Hold: "Do not go on outside these limits."},
			{N: 2, Title: "Press", Do: []string{"Press with even force.", "Scribe both at 0°."}, Caution: "Stop if the force jumps."},
		},
		Checks:   []plan.Check{{What: "seated", Wanted: "level", Limits: "no gap over 0.05 mm", Gauge: "feeler"}},
		Cautions: []string{"Stand aside."}, Problems: []plan.Problem{{What: "no lead-in chamfer is drawn"}}, MassKg: 11.9,
	}
	weld := &plan.JointPlan{N: 2, Name: "weld", Title: "Weld Barrel flange 1 to Sleeve", Kind: "weld", A: bore, B: sleeve, How: "as they were put together", Placed: together, Clock: marks,
		Weld: &plan.WeldPlan{Type: "bevel", Symbol: "single-bevel butt weld", Process: "MAG", Sides: 1, ThinnerMm: 7, ThickerMm: 8, BevelDeg: 45, GapMm: 2.5, RootFaceMm: 1.5, DiameterMm: 114.3, LengthMm: 359,
			Runs: 2, BuyKg: 0.09, TackLengthMm: 44, TacksDeg: []float64{0, 180, 90, 270}, Order: []plan.WeldRun{
				{N: 1, Layer: 1, StartDeg: 0, EndDeg: 90, Clockwise: true}, {N: 2, Layer: 1, StartDeg: 180, EndDeg: 270, Clockwise: true},
				{N: 3, Layer: 2, StartDeg: 45, EndDeg: 315}, {N: 4, Layer: 2, StartDeg: 225, EndDeg: 135}}},
		Steps:    []plan.JointStep{{N: 1, Title: "Tack", Do: []string{"Tack at 0°, 180°, 90°, 270°."}, Hold: "Check square."}},
		Cautions: []string{"The local code comes first.", "Fumes: extraction."},
	}
	end := func(title string) plan.JointEnd {
		return plan.JointEnd{Part: "barrel-flange", Copy: int(title[len(title)-1] - '0'), Title: title, Feature: "bolts", DiameterMm: 11}
	}
	bolt := &plan.JointPlan{N: 3, Name: "bolt", Title: "Bolt Barrel flange 2 to Barrel flange 1", Kind: "bolt", A: end("Barrel flange 2"), B: end("Barrel flange 1"),
		How: "front of Barrel flange 2 on the front of Barrel flange 1", Clock: marks,
		Placed: append(slices.Clone(together), plan.Placed{Part: "barrel-flange", Copy: 2, Title: "Barrel flange 2", FrontMm: 0, Flipped: true, New: true}),
		Bolt: &plan.BoltPlan{Size: "M10", Class: "8.8", Head: "hex", Count: 6, PCDMm: 140, Grip: []plan.GripRow{{What: "Barrel flange 2", ThickMm: 8}, {What: "Barrel flange 1", ThickMm: 8}}, GripMm: 16,
			Ordered: "M10 x 35", LengthMm: 35, EngagementMm: 8.4, NeedMm: 8.4, ProtrusionMm: -1, PreloadN: 25300, PreloadRangeN: plan.Range{Min: 17700, Max: 32900},
			TorqueNm: 51, TorqueRangeNm: plan.Range{Min: 35, Max: 66}, K: 0.2, KSource: "clean and dry", Order: []int{1, 4, 2, 5, 3, 6}, OrderDeg: []float64{30, 210, 90, 270, 150, 330}},
		Traps: []plan.Trap{
			{TurnDeg: 60, Out: []string{"Sleeve grease port at 180° instead of 120°", "Barrel flange 2 pry elsewhere (no rule says where it belongs)"}},
			{TurnDeg: 0, Flip: true, Out: []string{"heads on the wrong side"}}, {TurnDeg: 180, Flip: true, Out: []string{"heads on the wrong side"}}},
		MassKg: 26,
	}
	bearing := &plan.JointPlan{N: 4, Name: "bearing", Title: "Bearing 30210: Sleeve in Barrel flange 1", Kind: "bearing", How: "fronts looking the same way", Placed: together,
		A: plan.JointEnd{Part: "sleeve", Copy: 1, Title: "Sleeve", Feature: "seat", DiameterMm: 80, FromMm: 0, ToMm: 8}, B: bore,
		Bearing: &plan.BearingPlan{Bearing: "30210", ConeSleeveInMm: 50.5, ConeSleeveOutMm: 62, CupRingInMm: 78, CupRingOutMm: 89, HasEndFloat: true, EndFloatMm: plan.Range{Min: -0.03, Max: -0.01}, HeatConeC: 110, GreaseG: 10}}
	apart := &plan.JointPlan{N: 5, Name: "gusset", Title: "Weld Sleeve to Barrel flange 1", Kind: "weld", A: sleeve, B: bore, How: "the parts share no axis",
		Weld: &plan.WeldPlan{Type: "fillet", Symbol: "fillet weld", Designation: "z5", Process: "MAG", Sides: 2, LegMm: 5, ThroatMm: 3.54, LengthMm: 140, Runs: 1, BuyKg: 0.1}}
	pl.Joints = []*plan.JointPlan{press, weld, bolt, bearing, apart}
	pl.Lifts = []string{"after bolt 26 kg"}
	pl.Cuts = []plan.CutRow{{Stock: "tube Ø114.3", Material: "S355", BarMm: 6000, KerfMm: 2, TrimMm: 10, Source: "common practice, no source",
		Bars: []plan.CutBar{{Pieces: []plan.CutPiece{{Part: "Sleeve", LengthMm: 104, FromMm: 10}, {Part: "Sleeve", LengthMm: 104, FromMm: 116}}, OffcutMm: 5778}}}}
	return pl
}

func sequenceDoc(t *testing.T, pl *plan.Plan, paper parts.Paper) *Document {
	t.Helper()
	f, err := paperOf(pl, Options{Paper: paper})
	if err != nil {
		t.Fatal(err)
	}
	return bind(pl, sequenceChapters(pl, f), "Sequence")
}

// textsOf are the texts of a page in drawing order.
func textsOf(t *testing.T, page *Page) []string {
	var out []string
	for _, p := range flatten(t, &page.Drawing, 0, 0, nil) {
		if text, ok := p.item.(Text); ok {
			out = append(out, text.Content)
		}
	}
	return out
}

func TestSequencePagesAreClean(t *testing.T) {
	for _, paper := range []parts.Paper{a4, least, {Name: "A3", WidthMm: 297, HeightMm: 420}} {
		for _, units := range []parts.Units{parts.Millimetres, parts.Inches} {
			pl := joinedPlan()
			pl.Units = units
			doc := sequenceDoc(t, pl, paper)
			if len(doc.Pages) < 6 {
				t.Errorf("%s: only %d pages for 5 joints", paper.Name, len(doc.Pages))
			}
			for i := range doc.Pages {
				checkPage(t, "sequence on "+paper.Name, &doc.Pages[i])
			}
		}
	}
	if got := sequenceChapters(jobOf("None", parts.Millimetres, flangePart()), frame{width: 210, height: 297}); got != nil {
		t.Errorf("a plan without joints has %d chapters", len(got))
	}
}

// TestRecordedJoint compares the texts of the pages of the press joint.
func TestRecordedJoint(t *testing.T) {
	doc := sequenceDoc(t, joinedPlan(), a4)
	var b strings.Builder
	found := false
	for i := range doc.Pages {
		texts := textsOf(t, &doc.Pages[i])
		if !slices.Contains(texts, "Step 1: press") {
			continue
		}
		found = true
		fmt.Fprintf(&b, "page %s\n", doc.Pages[i].Label)
		for _, m := range doc.Pages[i].Bookmarks {
			fmt.Fprintf(&b, "  bookmark %d %s\n", m.Level, m.Title)
		}
		for _, text := range texts {
			fmt.Fprintf(&b, "  %s\n", text)
		}
	}
	if !found {
		t.Fatal("no page of step 1")
	}
	golden.Compare(t, filepath.Join("testdata", "joint-press.txt"), []byte(b.String()))
}

// TestJointSheetsSayEverything looks for what each kind of joint must show.
func TestJointSheetsSayEverything(t *testing.T) {
	doc := sequenceDoc(t, joinedPlan(), a4)
	var all []string
	for i := range doc.Pages {
		all = append(all, textsOf(t, &doc.Pages[i])...)
	}
	joint := strings.Join(all, "\n")
	for _, want := range []string{
		"PRESS", "WELD", "BOLT", "BEARING", "HOLD", "Signed", "12–34 kN", "127 °C", "10–30 µm", // press
		"4 × 44 mm", "Layer 2 of 2, in order", "Across the weld", "leg 5 mm", "throat 3.54 mm", // welds
		"6 × M10 x 35", "51 N m", "35–66", "K = 0.2", "Tighten in this order", // bolts
		"-30 to -10 µm", "Preload", "Ø50.5 / 62", // bearing
		"Sleeve grease port at 180° (6 o’clock) instead of 120°", "Elsewhere, with no rule to say where: Barrel flange 2 pry",
		"wrong way round", "180°, wrong way round", "26.0 kg", "then 26.0 kg: LIFT", "2 goes on", "left over 5778 mm", "Its place in the order: after a, b: the job says so.",
	} {
		if !strings.Contains(joint, want) {
			t.Errorf("no sheet says %q", want)
		}
	}
	for _, no := range []string{"Stands out", "So that it cannot go wrong"} { // a negative length; a remedy that a step has said
		if strings.Contains(joint, no) {
			t.Errorf("a sheet says %q", no)
		}
	}
}

func TestStackPicture(t *testing.T) {
	pl := joinedPlan()
	v, ok := newStack(pl, pl.Joints[0])
	if !ok {
		t.Fatal("the parts are not placed")
	}
	// The sleeve is as wide as the bore over all its length, so the flange can
	// come from either end, and its place decides.
	if got := v.entry(pl.Joints[0]); got != 0 {
		t.Errorf("the flange enters from %g, not from either end", got)
	}
	pl.Joints[0].A.ToMm = 90
	v.a.section.Outer = append(v.a.section.Outer, plan.XY{XMm: 100, YMm: 70})
	if got := v.entry(pl.Joints[0]); got != -1 {
		t.Errorf("with a collar at the back the flange enters from %g, not from the front", got)
	}
	// The chamfer of the flange's bore is at its back: that is where it is welded.
	bevel := cornerAt(8, 101, 1, 57.15, 2, v.b, v.a)
	plain := cornerAt(0, 1, -1, 57.15, 2, v.b, v.a)
	if bevel.rank != 2 || bevel.points[2].YMm < 62 {
		t.Errorf("the prepared edge is %v", bevel)
	}
	if plain.rank >= bevel.rank && plain.points[0].XMm < 1 {
		t.Errorf("the plain edge is %v", plain)
	}
	inner, outer, ok := v.b.reach(5.5)
	if !ok || math.Abs(inner-59.65) > 1e-9 || outer != 82.5 {
		t.Errorf("the flange at 5.5 reaches from %g to %g", inner, outer)
	}
	flipped := *v.b
	flipped.Flipped, flipped.FrontMm = true, 8
	if inner, _, _ := flipped.reach(2.5); math.Abs(inner-59.65) > 1e-9 {
		t.Errorf("turned round, the bore at 2.5 is %g", inner)
	}
	if lo, hi := flipped.Span(plan.JointEnd{FromMm: 0, ToMm: 3}); lo != 5 || hi != 8 {
		t.Errorf("turned round, 0 to 3 lies at %g to %g", lo, hi)
	}
}

func TestClipHalf(t *testing.T) {
	square := []plan.XY{{XMm: 0, YMm: 0}, {XMm: 4, YMm: 0}, {XMm: 4, YMm: 4}, {XMm: 0, YMm: 4}}
	area := func(p []plan.XY) (sum float64) {
		for i, q := range p {
			o := p[(i+1)%len(p)]
			sum += (q.XMm*o.YMm - o.XMm*q.YMm) / 2
		}
		return sum
	}
	for at, want := range map[float64]float64{-1: 16, 1: 12, 3: 4, 5: 0} {
		if got := area(clipHalf(square, func(q plan.XY) float64 { return q.XMm - at })); math.Abs(got-want) > 1e-12 {
			t.Errorf("right of %g: area %g, not %g", at, got, want)
		}
	}
}

func TestClockWords(t *testing.T) {
	for deg, want := range map[float64]string{0: "12 o’clock", 30: "1 o’clock", 120: "4 o’clock", 45: "half past 1", 15: "half past 12", 359: "12 o’clock", 345: "half past 11", 127: "4 o’clock"} {
		if got := oclock(deg); got != want {
			t.Errorf("%g° is %q, not %q", deg, got, want)
		}
	}
	if got := withHour("port at 240° instead of 180°"); got != "port at 240° (8 o’clock) instead of 180°" {
		t.Error(got)
	}
	if got := withHour("heads on the wrong side"); got != "heads on the wrong side" {
		t.Error(got)
	}
	marks := hourMarks([]plan.ClockMark{{Label: "b", Part: "P", Deg: 90}, {Label: "a", Part: "P"}, {Label: "c", Part: "Q", Deg: 90.1, Key: true}})
	if len(marks) != 2 || marks[1].letter != "B" || !marks[1].key || marks[0].key || len(marks[1].whats) != 2 {
		t.Errorf("marks %v", marks)
	}
	if got := span2(-0.5, 2, 1); got != "-0.5 to 2" {
		t.Error(got)
	}
}
