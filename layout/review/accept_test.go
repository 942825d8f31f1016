package review

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// An acceptance covers a finding as it was: with its number, not when it got
// worse, never a stop, and it is not called idle because of another fault.
func TestAcceptance(t *testing.T) {
	t.Parallel()
	const was = "number: 2.7 mm, reason"
	for _, c := range []struct {
		name, code, file, from, to string
		accepted                   bool
		says                       string
	}{
		{"as it was", "edge", "job.yaml", was, "number: 2.70 mm, reason", true, ""},
		{"better than it was", "edge", "job.yaml", was, "number: 2.5 mm, reason", true, ""},
		{"worse than it was", "edge", "job.yaml", was, "number: 2.8 mm, reason", false, "worse than the 2.8 mm that was accepted"},
		{"without its number", "edge", "job.yaml", was, "reason", false, "to accept it, give number: 2.7 mm"},
		{"more than was accepted", "breaks-out", "job.yaml", "number: 5 mm", "number: 4 mm", false, "worse than the 4 mm that was accepted"},
		{"as much as was accepted", "breaks-out", "job.yaml", "number: 5 mm", "number: 6 mm", true, ""},
		{"a stop", "edge", "gland-ring.yaml", "circle: {pcd: 104, count: 6, first: 30}, size: M6 clearance", "circle: {pcd: 111, count: 6, first: 30}, size: M6 clearance", false, "a stop cannot be accepted"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			job, err := seed{"pugmill", c.file, c.from, c.to, ""}.load(t)
			if err != nil {
				t.Fatal(err)
			}
			w, err := onPaper(job)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range Review(w) {
				if f.Code != c.code || f.Code == "edge" && f.Part != "gland-ring" {
					continue
				}
				if f.Accepted != c.accepted || !strings.Contains(f.What+f.Fix, c.says) {
					t.Errorf("accepted %v: %s: %s", f.Accepted, f.What, f.Fix)
				}
				return
			}
			t.Error("no such finding")
		})
	}
}

// TestAcceptedAsPrinted: the number that a finding prints, of whatever it is rounded from, accepts it in millimetres and in
// inches; two steps of it less do not.
func TestAcceptedAsPrinted(t *testing.T) {
	t.Parallel()
	for units, stepMm := range map[parts.Units]float64{parts.Millimetres: 0.01, parts.Inches: 0.001 * 25.4} {
		for i := range 200 {
			r := &reviewer{job: &parts.Job{Units: units}, w: words.Writer{Units: units}}
			over := stepMm * (40 + float64(i)/40)
			printed := math.Round(over/stepMm) * stepMm
			for _, less := range []float64{0, 2 * stepMm} {
				r.found = []Finding{{Severity: Check, OverMm: &over}}
				f := &r.found[0]
				a := parts.Accept{Reason: parts.Text{Value: "It may."}, Number: parts.Length{Mm: printed - less, Pos: parts.Pos{Line: 1}}}
				if what, fix := r.refused(f, &a); (what+fix == "") != (less == 0) {
					t.Errorf("%g mm is printed as %s, and with %g less: %q, %q", over, r.mm(over), less, what, fix)
				}
			}
		}
	}
}

// What is left may be nothing, or less than nothing: it is accepted by the number that is printed, and not when it gets worse.
func TestAcceptedBelowNothing(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		left, number float64
		accepted     bool
	}{{0, 0, true}, {-0.02, 0, false}, {-33, -33, true}, {-33.5, -33, false}, {-33, -50, false}} {
		r := &reviewer{job: &parts.Job{}, found: []Finding{{Severity: Check, LeftMm: &c.left}}}
		f := &r.found[0]
		what, fix := r.refused(f, &parts.Accept{Number: parts.Length{Mm: c.number, Pos: parts.Pos{Line: 1}}})
		if (what+fix == "") != c.accepted {
			t.Errorf("%g left, %g accepted: %q, %q", c.left, c.number, what, fix)
		}
	}
}

// A safety is no length: its number reads the same in jobs of millimetres and of inches, and is given back as it is printed.
func TestAcceptedWithoutUnit(t *testing.T) {
	t.Parallel()
	for units, unitMm := range map[parts.Units]float64{parts.Millimetres: 1, parts.Inches: 25.4} {
		for given, accepted := range map[float64]bool{0.94: true, 0.96: false, 0.5: false} {
			r := &reviewer{job: &parts.Job{Units: units}, w: words.Writer{Units: units}}
			r.problem(plan.Problem{Kind: plan.BushYields, Args: []plan.Arg{plan.Of(plan.Number, 0.942), plan.Named("Bush"), plan.Of(plan.MPa, 30)}}, Finding{What: "yields"})
			f := &r.found[0]
			what, fix := r.refused(f, &parts.Accept{Number: parts.Length{Mm: given * unitMm, Pos: parts.Pos{Line: 1}}})
			if f.Number != "0.94" || (what+fix == "") != accepted {
				t.Errorf("%v: number %s, given %g: %q, %q", units, f.Number, given, what, fix)
			}
		}
	}
}

// A joint's problem that the job takes as it is says so on the joint's own page.
func TestAcceptedOnThePage(t *testing.T) {
	t.Parallel()
	p := &plan.Problem{Kind: plan.WeldHardens}
	r := &reviewer{job: &parts.Job{Accept: []parts.Accept{{Reason: parts.Text{Value: "By the procedure."}}}}, pl: &plan.Plan{}, found: []Finding{{Severity: Check, of: p}}}
	if r.accept(); !r.found[0].Accepted || p.Accepted != "By the procedure." {
		t.Errorf("%+v, %+v", r.found[0], p)
	}
}

// TestAcceptedAlone: an acceptance with a number takes what has that number and what is less by the same rule, and nothing
// else that is found at its place; what has no number asks for an entry of its own.
func TestAcceptedAlone(t *testing.T) {
	t.Parallel()
	gap, less, other := 40.0, 30.0, 30.0
	found := []Finding{
		{Severity: Check, What: "gap", Rule: "ends", OverMm: &gap}, {Severity: Check, What: "less", Rule: "ends", OverMm: &less},
		{Severity: Check, What: "hand", Rule: "openings", OverMm: &other}, {Severity: Check, What: "side", Rule: "ends"},
	}
	number := func(mm float64) parts.Accept {
		return parts.Accept{Reason: parts.Text{Value: "It may."}, Number: parts.Length{Mm: mm, Pos: parts.Pos{Line: 1}}}
	}
	for _, c := range []struct {
		accept []parts.Accept
		left   string
	}{
		{[]parts.Accept{number(40)}, "hand, and 40 mm is accepted, by which worse would pass side"},
		{[]parts.Accept{number(40), number(30)}, "side"},
		{[]parts.Accept{number(40), {Reason: parts.Text{Value: "Nobody comes there."}}}, "hand"},
	} {
		r := &reviewer{job: &parts.Job{Accept: c.accept}, pl: &plan.Plan{}, found: slices.Clone(found)}
		r.accept()
		var left []string
		for _, f := range seq.Keep(r.found, Finding.Open) {
			left = append(left, f.What)
		}
		if got := strings.Join(left, " "); got != c.left {
			t.Errorf("%d entries: %q stay open, want %q", len(c.accept), got, c.left)
		}
	}
}

// A joint that cannot be worked out hides its other findings; what is accepted
// about it is not out of date for that.
func TestAcceptanceOfAHiddenFinding(t *testing.T) {
	t.Parallel()
	job, err := seed{"pugmill", "gusset.yaml", "material: S235", "material: S235", ""}.load(t)
	if err != nil {
		t.Fatal(err)
	}
	for _, j := range job.Joints {
		if j.Name.Value == "housing" {
			j.Rotate.Deg = 10
			j.Rotate.Pos.Line = 1
		}
	}
	found, pl, err := reviewed(job)
	if err != nil || len(pl.Faults) == 0 {
		t.Fatalf("faults %v, %v", pl.Faults, err)
	}
	for _, f := range found {
		if f.Code == "accepted-nothing" {
			t.Errorf("%s", f.What)
		}
	}
}

// Every problem that can be accepted has its number, but for those that are a
// choice: they have none, or none that could get worse.
func TestProblemsHaveTheirNumber(t *testing.T) {
	t.Parallel()
	choices := []plan.ProblemKind{
		plan.BoreSinkWrongSide, plan.Countersunk, plan.NoCountersink, plan.SlotBare, plan.SeatWithoutFit, plan.SeatNotAdvised, plan.SeatLimits,
		plan.NoLeadIn, plan.LaidFalls, plan.LeadInBehind, plan.AgainstTheTrade, plan.HoleDeadEnd, plan.HolesPartShut, plan.PortShut, plan.FeedClosed, plan.WeldLate, plan.NoWeldChamfer, plan.FilletOnChamfer, plan.SocketGrade, plan.SlideNoKey, plan.WeldHardens, plan.WeldIron, plan.WeldOwnWay, plan.CentreThin, plan.FloatUnset, plan.FloatEarly, plan.NutApart, plan.PinEarly, plan.PinUnlike, plan.PinKeyless, plan.SquareUpNowhere, plan.OneBolt, plan.StudShut, plan.SlideDragged, plan.ClosedIn, plan.RingNowhere, plan.BallLeft, plan.BallUnborne, plan.ComesOff, plan.OnEdge, plan.ShiftHeld,
		plan.BendRadius,    // either way
		plan.NoStockLength, // each length tried has its own

		"nut-not-filled", plan.OpeningPartly, // a share
		plan.SeatsUnproved,
		plan.LoopLength, plan.LoopTurn, plan.LoopTurned, plan.LoopFlips, plan.LoopFolded, plan.LoopFloats, // of the finding that they explain
	}
	for _, a := range words.Problems {
		has := a.Measure != nil
		if choice := slices.Contains(choices, a.Kind); a.Severity == plan.CheckSeverity && has == choice {
			t.Errorf("%s: measured %v, a choice %v", a.Kind, has, choice)
		}
	}
}

// Notes of one code and cure are one finding with the rules and sources of all; what is
// open or accepted stands alone.
func TestGathered(t *testing.T) {
	t.Parallel()
	note := func(what, rule, source, fix string) Finding {
		return Finding{Severity: Note, Code: "pierce", What: what, Rule: rule, Source: source, Fix: fix}
	}
	open, agreed := note("open", "r", "t", "f"), note("agreed", "r", "t", "f")
	open.Severity, agreed.Accepted = Check, true
	got := gathered([]Finding{open, note("a", "r", "t", "f"), note("b", "s", "t", "f"), agreed, note("c", "r", "u", "f"), note("d", "r", "t", "g")})
	var said []string
	for _, f := range got {
		one := f.Rule + "/" + f.Source
		for _, each := range f.Each() {
			one += " " + each.What
		}
		said = append(said, one)
	}
	if want := []string{"r/t open", "r; s/t; u a b c", "r/t agreed", "r/t d"}; !slices.Equal(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
	if c := Summary(got); c != (Count{Check: 1, Note: 2, Accepted: 1}) {
		t.Errorf("%+v", c)
	}
}

// Notes are what is to be decided before cutting, each sort once: offset holes, metals that eat
// one another, and what the cutters only mark. What a look at a step guards stands on the step.
func TestNotesOfTheDemos(t *testing.T) {
	t.Parallel()
	for name, demo := range demos {
		found, err := demo()
		if err != nil {
			t.Fatal(err)
		}
		var codes []string
		for _, f := range found {
			if f.Severity == Note && !f.Accepted {
				codes = append(codes, f.Code)
			}
		}
		if got := strings.Join(codes, " "); got != "trap unlike pierce" || Summary(found).Note != len(codes) {
			t.Errorf("%s: %s, counted %d", name, got, Summary(found).Note)
		}
	}
}

// What seems to lie in something, or in the way, where a joint is not worked out, where a part lies the other way round and where a stud has no shoulder is
// not said beside that; all else is, and so are joints that wait for each other where nothing else is wrong.
func TestFollow(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ found, left string }{
		{"overlap way tips", "overlap way tips"}, {"pattern! overlap way early tips guard heads ring belt edge", "pattern! edge"}, {"pattern! order! way", "pattern!"}, {"order! way edge", "order! edge"},
		{"place! overlap weld-gap", "place!"}, {"pattern! weld-gap", "pattern! weld-gap"}, {"place weld-gap overlap", "place weld-gap overlap"}, {"stud! overlap place head edge", "stud! edge"}, {"stud overlap", "stud overlap"},
		{"overlap! overlap place", "overlap! place"}, {"accepted place! overlap", "place! overlap"},
	} {
		r, accepted := &reviewer{pl: &plan.Plan{}}, false
		for _, code := range strings.Fields(c.found) {
			name, astray := strings.CutSuffix(code, "!")
			if name == "accepted" {
				accepted = true
				continue
			}
			r.found = append(r.found, Finding{Code: name, Severity: words.Either(astray, Stop, Check), astray: astray, Accepted: astray && accepted})
		}
		r.follow()
		left := seq.Map(r.found, func(f Finding) string { return f.Code + words.When(f.astray, "!") })
		if got := strings.Join(left, " "); got != c.left {
			t.Errorf("%s: %q, want %q", c.found, got, c.left)
		}
	}
}
