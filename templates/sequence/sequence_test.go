package sequence

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

func sequenceDoc(t *testing.T, pl *plan.Plan, paper parts.Paper) *draw.Document {
	t.Helper()
	f := draw.Frame{WidthMm: paper.WidthMm, HeightMm: paper.HeightMm, Name: paper.Name}
	return draw.Bind(draw.Job{Name: pl.Job, Revision: pl.Revision, Date: pl.Date, Tolerance: pl.Tolerance}, append(Chapters(pl, f), Appendix(pl, f, nil)...), "Sequence")
}

func TestSequencePagesAreClean(t *testing.T) {
	for _, paper := range []parts.Paper{sheettest.A4, sheettest.Least, {Name: "A3", WidthMm: 297, HeightMm: 420}} {
		for _, units := range []parts.Units{parts.Millimetres, parts.Inches} {
			pl := sheettest.JoinedPlan()
			pl.Units = units
			doc := sequenceDoc(t, pl, paper)
			if len(doc.Pages) < 5 {
				t.Errorf("%s: only %d pages for 5 joints", paper.Name, len(doc.Pages))
			}
			for i := range doc.Pages {
				sheettest.CheckPage(t, "sequence on "+paper.Name, &doc.Pages[i])
			}
		}
	}
	if got := Chapters(sheettest.JobOf("None", parts.Millimetres, sheettest.FlangePart()), draw.Frame{WidthMm: 210, HeightMm: 297}); got != nil {
		t.Errorf("a plan without joints has %d chapters", len(got))
	}
}

// A sign that no step carries is not explained.
func TestLegendOfLifts(t *testing.T) {
	t.Parallel()
	pl := sheettest.JoinedPlan()
	for _, lifts := range []bool{true, false} {
		if !lifts {
			for _, j := range pl.Joints {
				j.Lift = nil
			}
		}
		if said := strings.Contains(strings.Join(sheettest.TextsOf(t, &sequenceDoc(t, pl, sheettest.A4).Pages[0]), " "), "LIFT: this step moves more than"); said != lifts {
			t.Errorf("lifts %v, explained %v", lifts, said)
		}
	}
}

// TestJointSheetsSayEverything looks for what each kind of joint must show.
func TestJointSheetsSayEverything(t *testing.T) {
	doc := sequenceDoc(t, sheettest.JoinedPlan(), sheettest.A4)
	var all []string
	for i := range doc.Pages {
		all = append(all, sheettest.TextsOf(t, &doc.Pages[i])...)
	}
	joint := strings.Join(all, "\n") + strings.Join(all, " ") // a text may break into lines
	for _, want := range []string{
		"PRESS", "WELD", "BOLT", "BEARING", "HOLD", "Signed", "12–34 kN", "127 °C", "10–30 µm", // press
		"4 × 44 mm", "then runs a, b …", "Across the weld", "leg 5 mm", "throat 3.54 mm", // welds
		"6 × M10 x 35", "51 N m", "threads dry; oiled 38", "16 mm", "Tighten in this order", // bolts
		"-30 to -10 µm", "Preload", "Ø50.5 / 62", "Ø78 / 89", // bearing
		"It also fits turned by 60°, and the wrong way round at 0°, 180°, and is wrong then.", "Right is Sleeve grease port at 120° (4 o’clock).", "Out of place then: Barrel flange 2 pry; heads on the wrong side.",
		"26.0 kg", "then 26.0 kg", "26.0 kg LIFT", "LIFT 26.0 kg: Barrel flange 2 with all that is on it. Hoist or two people.", "In the order: after steps 1, 2: the job says so.",
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

// A trap says the right place once for all wrong turns, and of a long list how many more.
func TestTrapLine(t *testing.T) {
	t.Parallel()
	turned := func(deg float64, out ...plan.Out) plan.Trap { return plan.Trap{TurnDeg: deg, Out: out} }
	loose := func(names string) (out []plan.Out) {
		for _, name := range strings.Split(names, "") {
			out = append(out, plan.Out{What: name, Elsewhere: true, Unruled: true})
		}
		return out
	}
	port := func(deg float64) plan.Out { return plan.Out{What: "Lid port", Clocked: true, AtDeg: deg, RightDeg: 30} }
	for _, c := range []struct {
		j    plan.JointPlan
		want string
	}{
		{plan.JointPlan{}, ""},
		{plan.JointPlan{Traps: []plan.Trap{{Instead: "Lid 2"}}}, "It also goes together with Lid 2 instead."},
		{plan.JointPlan{Traps: []plan.Trap{turned(90, port(120)), turned(180, port(210), plan.Out{What: "Lid feet", Elsewhere: true, Unruled: true})}},
			"It also fits turned by 90°, 180°, and is wrong then. Right is Lid port at 30° (1 o’clock). Out of place then: Lid feet."},
		{plan.JointPlan{Ways: []plan.Trap{turned(180), {OtherWay: true}}}, ""},
		{plan.JointPlan{Ways: []plan.Trap{turned(180), {OtherWay: true, Out: loose("A")}}},
			"It also fits the wrong way round at 0°, wrongly: look again before it is fixed."},
		{plan.JointPlan{Ways: []plan.Trap{{Face: "left", Out: loose("A")}, {Face: "top"}, {Face: "right", Out: loose("A")}, {Instead: "Lug 2", Out: loose("A")}}},
			"It also fits on its left or its right, wrongly: look again before it is fixed. It also goes together with Lug 2 instead."},
		{plan.JointPlan{Bolt: &plan.BoltPlan{}, Ways: []plan.Trap{turned(180, loose("ABCD")...)}},
			"It also fits turned by 180°, and is wrong then. Out of place then: A; B; C; D. Once all lies as its place and the picture say, scribe a line across both."},
		{plan.JointPlan{Bolt: &plan.BoltPlan{}, Ways: []plan.Trap{turned(180, loose("ABCDEF")...)}},
			"It also fits turned by 180°, and is wrong then. Out of place then: A; B; C; D; and 2 more. Once all lies as its place and the picture say, scribe a line across both."},
	} {
		if got := trapLine(&c.j); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestClockWords(t *testing.T) {
	for deg, want := range map[float64]string{0: "12 o’clock", 30: "1 o’clock", 120: "4 o’clock", 45: "half past 1", 15: "half past 12", 359: "12 o’clock", 345: "half past 11", 127: "quarter past 4", 217.63: "quarter past 7", 352: "quarter to 12", 8: "quarter past 12", 22: "quarter to 1", 123: "4 o’clock"} {
		if got := oclock(deg); got != want {
			t.Errorf("%g° is %q, not %q", deg, got, want)
		}
	}
	marks := hourMarks([]plan.ClockMark{{Label: "b", Part: "P", Deg: 90}, {Label: "a", Part: "P"}, {Label: "c", Part: "Q", Deg: 90.1, Key: true}})
	if len(marks) != 2 || marks[1].letter != "B" || !marks[1].key || marks[0].key || len(marks[1].whats) != 2 {
		t.Errorf("marks %v", marks)
	}
}

// TestStepsOnOnePage: on A4 a step is on one page, equal ones that follow one
// another are one, and all computed numbers stand in the appendix once.
func TestStepsOnOnePage(t *testing.T) {
	pl := sheettest.JoinedPlan()
	again := *pl.Joints[4]
	again.N, again.A.Copy, again.A.Title, again.Title = 6, 2, "Sleeve 2", "Weld Sleeve 2 to Barrel flange 1"
	pl.Joints = append(pl.Joints, &again)
	pages := 0
	for _, c := range Chapters(pl, draw.Frame{WidthMm: 210, HeightMm: 297}) {
		if strings.HasPrefix(c.Name, "Step") {
			pages += len(c.Sheets)
		}
	}
	if pages != 3 {
		t.Errorf("6 steps, two of them equal, take %d pages", pages)
	}
	runs := equalRuns(pl.Joints)
	if last := runs[len(runs)-1]; len(last) != 2 || stepsWord(last) != "Steps 5–6" {
		t.Errorf("the equal welds are %d steps: %s", len(last), stepsWord(last))
	}
	if got := titleOf(runs[len(runs)-1]); got != "Weld Sleeve 1 and 2 to Barrel flange 1" {
		t.Errorf("together they are %q", got)
	}
	// What the last one adds ends the run.
	third := again
	weld := *again.Weld
	weld.Finish = []string{"bore"}
	third.N, third.Weld, third.Steps = 7, &weld, append(slices.Clone(again.Steps), plan.JointStep{N: 1, Title: "Finish"})
	fourth := third
	fourth.N = 8
	if got := len(equalRuns(append(slices.Clone(pl.Joints), &third))); got != 5 {
		t.Errorf("with a last one that finishes there are %d pages", got)
	}
	if got := len(equalRuns(append(slices.Clone(pl.Joints), &third, &fourth))); got != 6 {
		t.Errorf("with a further one there are %d pages", got)
	}
	again.Weld = &plan.WeldPlan{Type: "fillet", LegMm: 6}
	if sameWork(pl.Joints[4], &again) {
		t.Error("welds of different legs count as equal")
	}
}
