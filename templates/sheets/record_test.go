package sheets

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"

	"centrepop/layout/changes"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// workedPlan is the plan of one of the small jobs of layout/joint; the drive stands in
// space.
func workedPlan(t *testing.T, name string) *plan.Plan {
	t.Helper()
	w := sheettest.Worked(t, "joint", name)
	if name == "drive" {
		w.Arrange()
	} else {
		w.ArrangeAs(&plan.Plan{}) // cards alone
	}
	return w.Plan
}

// all are the sheets of chapters.
func all(chapters []draw.Chapter) (out []*draw.Sheet) {
	for _, c := range chapters {
		out = append(out, c.Sheets...)
	}
	return out
}

// TestRecorded: the sheets of small plans are drawn as recorded: each text and each
// line with its place to 0.1 mm. CENTREPOP_UPDATE=1 writes testdata anew: read the
// difference, and look at the page.
func TestRecorded(t *testing.T) {
	t.Parallel()
	letter := draw.Frame{WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}
	made := sheettest.JoinedPlan()
	found := []review.Finding{
		{Part: "barrel-flange", Feature: "bolts", Severity: review.Stop, Code: "edge", What: "bolts lie 3 mm from the edge", Numbers: "3 mm, 5 mm wanted", Rule: "1.5 diameters", Source: "common practice, no source", Fix: "a smaller circle", Pos: parts.Pos{File: "flange.yaml", Line: 9}},
		{Part: "press", Severity: review.Check, Code: "loose", What: "it may be loose", Rule: "tight at the least", Source: "a table", Fix: "a tighter class"},
		{Part: "sleeve", Severity: review.Note, Code: "pierce", What: "pierce first", Rule: "a start", Source: "a table", Fix: "drill"},
		{Part: "sleeve", Severity: review.Check, Code: "wall", What: "thin wall", Rule: "3 mm", Source: "a table", Fix: "more", Accepted: true, Reason: "it carries nothing"},
	}
	altered := &changes.Report{Job: "Pug mill", Units: parts.Millimetres,
		Heading: []changes.Change{{Code: changes.Reworded, What: "revision", OldText: "A", NewText: "B"}},
		Parts:   []changes.Item{{Name: "sleeve", Title: "Sleeve", State: changes.Reworded, Use: changes.Rework, Changes: []changes.Change{{Code: changes.Size, Use: changes.Rework, Feature: "outside", What: "length", Unit: plan.Mm, Old: 100, New: 104}}}},
		Joints:  []changes.Item{{Name: "press", Title: "Press", State: changes.Added}},
		Sign:    []changes.Sign{{Code: "wall", At: "sleeve", State: changes.Reworded, Reason: "it carries nothing", Was: "4 mm", Is: "3 mm"}},
		Discard: []string{"cover", "sleeve"}, Print: []string{"cover", "sleeve", "step press"},
	}
	notes := Notes(made, found)
	made.Parts[0].Faces[0].MinMm = plan.XY{XMm: -92.5, YMm: -82.5}
	many := &plan.Plan{Job: "Many", Units: parts.Millimetres}
	for i := range 9 {
		many.Parts = append(many.Parts, &plan.PartPlan{Name: fmt.Sprint("part-", i), Title: fmt.Sprint("Part ", i)})
	}
	flange, housing := sheettest.FlangePart(), sheettest.HousingPart()
	housing.Operations = housing.Operations[:4]
	ring := sheettest.RingPart(620)
	for i := range 64 {
		ring.Checks = append(ring.Checks, plan.Check{Ref: i, What: fmt.Sprint("hole ", i), Wanted: "590", Limits: fmt.Sprintf("%d – %d", 589+i%2, 591+i%3), Gauge: "calipers"})
	}
	long, a5 := sheettest.RingPart(620), draw.Frame{WidthMm: 148, HeightMm: 210, Name: "A5"}
	for i := range 190 {
		long.Checks = append(long.Checks, plan.Check{Ref: i, What: fmt.Sprint("hole ", i), Wanted: "590", Limits: "589 – 591", Gauge: "calipers"})
	}
	drive, frame := workedPlan(t, "drive"), workedPlan(t, "frame")
	drive.Tools = drive.Tools[:2]
	small := []*plan.PartPlan{drive.Part("washer"), drive.Part("sleeve"), workedPlan(t, "formed").Part("tray")}
	few := &plan.Plan{Job: "Drive", Units: parts.Inches, Parts: frame.Parts, Arrangement: drive.Arrangement, Lifts: drive.Lifts, Dangers: drive.Dangers, Notes: []string{"Oil it."}}
	flange.Faces[0].Cuts = []plan.FaceCut{{DiameterMm: 90, ProudMm: 3, Inside: true, Outside: true}}
	flange.Faces[0].Slots = []plan.Slot{{N: 9, Group: "pry", XMm: 40, YMm: -20, WidthMm: 6, LengthMm: 20, TurnDeg: 30}}
	patterned := &plan.PartPlan{Name: "cone", Title: "Cone", Quantity: 2, Developments: []plan.Development{{
		Name: "blank", Kind: plan.ConePattern, Title: "Cone development", MinMm: plan.XY{XMm: -100}, MaxMm: plan.XY{XMm: 200, YMm: 150}, Copies: 2,
		Lines:  []plan.PatternLine{{Name: "edge", Role: "edge", Path: "M-100 0L200 0L150 150L-50 150Z"}},
		Sizes:  []plan.PatternValue{{Name: "large radius", Text: "180"}, {Name: "small radius", Text: "90"}, {Name: "angle", Text: "120°"}},
		Tables: []plan.PatternTable{{Title: "Stations", Heads: []string{"No.", "Along", "Up"}, Rows: [][]string{{"1", "0", "12.5"}, {"2", "10", "14.25"}}}},
		Rules:  []string{"L = π·D"}, Notes: []string{"Roll it printed side out."}}, {Name: "ring", Title: "Ring", Kind: plan.WrapPattern, Copies: 1, Sizes: []plan.PatternValue{{Name: "wrap", Text: "314"}}}}}
	feeder, sieve := workedPlan(t, "feeder"), workedPlan(t, "sieve")
	for name, drawn := range map[string][]*draw.Sheet{
		"feeder":  slices.Concat(Parts(feeder, feeder.Parts, letter, nil, nil), all(Tools(feeder, letter)), all(Cards(feeder, letter)), all(Bars(feeder, feeder.Parts, letter))),
		"sieve":   slices.Concat(Parts(sieve, sieve.Parts, a4, nil, nil), all(Tools(sieve, a4)), all(Cards(sieve, a4)), all(Bars(sieve, sieve.Parts, a4))),
		"cover":   Cover(made, found, a4, []draw.Chapter{{Name: PartsName, Sheets: []*draw.Sheet{{Parts: []string{"Barrel flange", "Sleeve"}}}}, {Name: "Templates, 1:1", Sheets: []*draw.Sheet{{Scale: "1:1", Part: "Sleeve"}}}}, 0),
		"review":  Review(made, found, a4, notes),
		"flange":  Parts(made, []*plan.PartPlan{flange}, a4, map[string]Patterns{flange.Name: {Notes: []string{"no template of the drum"}}}, nil),
		"housing": Parts(sheettest.JobOf("Jack", parts.Inches, housing), []*plan.PartPlan{housing}, letter, nil, nil),
		"pattern": Parts(made, []*plan.PartPlan{patterned}, a4, nil, nil),
		"ring":    Parts(made, []*plan.PartPlan{ring}, a4, nil, nil),
		"long":    Parts(made, []*plan.PartPlan{long}, a4, nil, nil),
		"narrow":  slices.Concat(Parts(made, []*plan.PartPlan{flange, ring}, a5, nil, nil), all(Tools(drive, a5)), Review(made, found, a5, notes), Cover(few, found[1:], a5, nil, 1)),
		"many":    Review(many, nil, a4, nil),
		"small":   Parts(drive, small, a4, nil, nil),
		"few":     append(Cover(few, found[1:], letter, nil, 1), Review(few, append(found[2:], found[1]), letter, nil)...),
		"tools":   all(Tools(drive, a4)),
		"cards":   all(Cards(drive, a4)),
		"bars":    all(Bars(frame, frame.Parts, a4)),
		"changes": all(Changes(made, altered, a4)),
	} {
		golden.Whole(t, filepath.Join("testdata", name+".txt"), []byte(sheettest.RecordSheets(t, drawn)))
	}
}
