package review

import (
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/fits"
	"centrepop/layout/part"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// demanded is the requirement that a word of a note means, and what follows it.
var demanded = []demand{
	{"flat", parts.Flatness, "of: front"}, {"square", parts.Squareness, "of: front, to: bore"}, {"perpend", parts.Squareness, "of: front, to: bore"},
	{"parallel", parts.Parallelism, "of: back, to: front"}, {"equal", parts.EqualLength, "of: length"}, {"same", parts.EqualLength, "of: length"},
	{"coax", parts.Coaxiality, "of: one step, to: another"}, {"concen", parts.Coaxiality, "of: one step, to: another"},
	{"run", parts.RunOut, "of: one step, to: another"}, {"true", parts.RunOut, "of: one step, to: another"},
}

type demand struct {
	word string
	kind parts.RequirementKind
	rest string
}

// saidDemands looks for tolerances and settings in free text: only a key gets them into an
// operation and the record.
func (v *view) saidDemands(n parts.Text) {
	f := Finding{Rule: "what is to be made and inspected has a key", Source: "by the job"}
	if m := saidWithin().FindStringSubmatch(n.Value); m != nil {
		d := seq.First(demanded, func(d demand) bool { return strings.HasPrefix(strings.ToLower(m[1]), d.word) })
		if d.word != "" && !slices.ContainsFunc(v.p.Require, func(q parts.Requirement) bool { return q.Kind == d.kind }) {
			f.What, f.Numbers, f.Fix = "a note of "+v.p.Title.Value+" gives a tolerance that nothing works to or inspects", m[0], "require: [{is: "+
				string(d.kind)+", within: "+m[2]+", "+d.rest+"}] in place of the words"
			v.report(Check, "", n.Pos, f)
		}
	}
	if m := saidSetting().FindString(n.Value); m != "" && !v.obeysSetting(n.Value, m) {
		f.What, f.Numbers, f.Fix = "a note of "+v.p.Title.Value+" asks for one setting, and the operations do not obey it", m, "other words"
		if v.turned() {
			f.Fix = "one-setting: [the steps] in the profile where one face reaches them all, else require: [{is: coaxiality, within: 0.01 mm, of: one step, to: another}]; without the words"
		}
		v.report(Check, "", n.Pos, f)
	}
}

// obeysSetting tells whether the profile turns in one setting what the sentence of a note around
// the words for that names.
func (v *view) obeysSetting(note, said string) bool {
	p := v.p.Profile
	if !v.turned() || len(p.OneSetting) == 0 {
		return false
	}
	sentence := seq.First(strings.FieldsFunc(note, func(r rune) bool { return r == '.' || r == ';' }), func(s string) bool { return strings.Contains(s, said) })
	return !slices.ContainsFunc(slices.Concat(p.Outside, p.Inside), func(s parts.Step) bool {
		named := regexp.MustCompile(`(?i)\b` + regexp.QuoteMeta(s.Name.Value) + `\b`).MatchString(sentence)
		return named && !slices.ContainsFunc(p.OneSetting, func(t parts.Text) bool { return t.Value == s.Name.Value })
	})
}

// What the general tolerances of the coarsest class leave, mm, up to a size in mm: ISO
// 2768-2 class L, Tables 1 (flatness), 2 (squareness) and 4 (run-out).
var (
	generalFlat   = [][2]float64{{10, 0.1}, {30, 0.2}, {100, 0.4}, {300, 0.8}, {1000, 1.2}, {3000, 1.6}}
	generalSquare = [][2]float64{{100, 0.6}, {300, 1}, {1000, 1.5}, {3000, 2}}
)

const generalRunOutMm = 0.5

// The most that helps what a face or a seat does, mm. Common practice, no source: a gasket
// fills twice as much at best, plates on studs lean by it, and the rollers of a bearing carry on one side beyond.
const (
	sealedMm = 0.2
	rolledMm = 0.06
)

// idleRequire looks for demands that leave as much as the general tolerance does, or
// more than what the feature does can bear.
func (v *view) idleRequire(q parts.Requirement) {
	of := parts.Face(q.Of.Value)
	other := string(of.Other())
	twice := slices.ContainsFunc(v.p.Require, func(o parts.Requirement) bool { return o.Kind == q.Kind && o.Of.Value == other })
	if isFace := of == parts.Front || of == parts.Back; isFace && q.Kind == parts.Flatness && v.seals(other) && !v.seals(q.Of.Value) && !twice {
		v.report(Check, q.Of.Value, q.Pos, Finding{
			What: "the " + q.Of.Value + " of " + v.p.Title.Value + " is to be flat, and it is the " + other + " that seals", OverMm: over(q.Within.Mm), Numbers: "within " + v.mm(q.Within.Mm),
			Rule: "a tolerance that is written serves its face", Source: "by the job", Fix: "of: " + other,
		})
	}
	most, by, source := v.useful(q)
	if most == 0 || geom.Over(most, q.Within.Mm) || source == practice && !geom.Over(q.Within.Mm, most) {
		return
	}
	f := Finding{
		What: "the " + string(q.Kind) + " demanded of " + q.Of.Value + " is no help", OverMm: over(q.Within.Mm), Numbers: "within " + v.mm(q.Within.Mm) + ", " + by + " " + v.mm(most),
		Rule: "a tolerance that is written is finer than the general one, and serves its face", Source: source, Fix: "a finer one, or leave the line out",
	}
	if q.Kind == parts.EqualLength {
		f.What = "the demand for equal lengths of " + q.Of.Value + " asks for nothing"
	}
	v.report(Check, q.Of.Value, q.Pos, f)
}

// useful is the most that a demand may allow, in words and with its source; 0 where nothing says it.
func (v *view) useful(q parts.Requirement) (mm float64, by, source string) {
	size, general := 2*v.q.Section.MaxMm, "the general tolerance leaves"
	upTo := func(table [][2]float64) float64 {
		for _, row := range table {
			if size <= row[0] {
				return row[1]
			}
		}
		return 0
	}
	switch c := v.step(q.Of.Value); {
	case q.Kind == parts.EqualLength && v.job.IsStud(v.p.Name.Value):
		return sealedMm, "the plates on studs want", practice
	case q.Kind == parts.EqualLength && c != nil:
		if plusMinus, err := fits.General(c.LengthMm(), v.job.Tolerance.Value); err == nil {
			return 2 * plusMinus, "the general tolerance lets copies differ by", "ISO 2768-1"
		}
		return 0, "", ""
	case v.rolls(q.Of.Value) || v.rolls(q.To.Value):
		return rolledMm, "a bearing's seats and shoulders want", practice
	case v.seals(q.Of.Value):
		return sealedMm, "a sealing face wants", practice
	case q.Kind == parts.Flatness || q.Kind == parts.Parallelism:
		return upTo(generalFlat), general, "ISO 2768-2 class L"
	case q.Kind == parts.Squareness:
		return upTo(generalSquare), general, "ISO 2768-2 class L"
	}
	return generalRunOutMm, general, "ISO 2768-2 class L"
}

// unmadeRequire looks for demands on the faces of plates and bars as bought: the record asks
// for them, and no operation makes them. One that is thicker in the stock is faced by the step
// that the allowance is for. A thread is no face to measure by.
func (v *view) unmadeRequire(q parts.Requirement) {
	for _, name := range []parts.Text{q.Of, q.To} {
		if c := v.step(name.Value); c != nil && c.threaded() {
			v.report(Check, q.Of.Value, name.Pos, Finding{
				What: "a demand is measured on the thread " + name.Value, Numbers: string(q.Kind) + " within " + v.mm(q.Within.Mm), LeftMm: left(q.Within.Mm),
				Rule: "an indicator and a caliper stand on plain faces", Fix: "a plain step beside it, that is turned in one setting with it",
			})
		}
	}
	made := v.turned() || q.Kind == parts.EqualLength || v.p.Stock.ByArea() && geom.Over(v.p.Stock.Size.Mm, v.lengthMm)
	if made || q.Of.Value != string(parts.Front) && q.Of.Value != string(parts.Back) {
		return
	}
	v.report(Check, q.Of.Value, q.Pos, Finding{
		What:    "no operation makes the " + q.Of.Value + " of " + v.p.Title.Value + " as the drawing demands",
		Numbers: string(q.Kind) + " within " + v.mm(q.Within.Mm) + ", the face as bought", LeftMm: left(q.Within.Mm),
		Rule: "what the record asks for, an operation makes", Source: "by the job",
		Fix: "kind: turned, which faces it, thicker stock that a step faces, or accept it with who grinds it; else leave the line out",
	})
}

// rolls tells whether a step is the seat of a rolling bearing, or the shoulder beside one.
func (v *view) rolls(name string) bool {
	c := v.step(name)
	return c != nil && (c.Bears() || c.Seat == "" && slices.ContainsFunc(c.next(), func(s *cylinder) bool { return s.Bears() && s.Drawn.Size.Nominal.Mm != c.Drawn.Size.Nominal.Mm }))
}

// seals tells whether a face seals, by a groove in it or by the words about it.
func (v *view) seals(face string) bool {
	return slices.ContainsFunc(v.p.Grooves, func(g parts.Groove) bool { return g.In.Value == face }) || slices.ContainsFunc(v.texts(), func(t parts.Text) bool {
		return slices.ContainsFunc(clauses(t, ".;"), func(s string) bool {
			return sealing().MatchString(s) && slices.Contains(strings.Fields(strings.ToLower(s)), face)
		})
	})
}

// recess looks for a step of a bore that is shut in: what is narrower lies before it, and behind it too
// or the end of a blind bore. What is to be measured or to take something there is out of reach.
func (v *view) recess(c *cylinder) {
	narrow := func(steps []*cylinder) bool {
		return slices.ContainsFunc(steps, func(o *cylinder) bool { return geom.Over(c.RadiusMm(), o.RadiusMm()) })
	}
	n := len(v.inside)
	if !c.Inside || !v.turned() || !narrow(c.before) {
		return
	}
	end, blind := v.inside[n-1].ToMm, geom.Over(v.lengthMm, v.inside[n-1].ToMm)
	wanted := fine(c.Drawn.Size.Fit, 9) || c.Size.Thread != nil || c.Seat != ""
	if !wanted || !blind && !narrow(c.behind) {
		return
	}
	f := Finding{What: c.Name + " is wider than the bore on both its sides", Rule: "a seat in a bore is open to one end of it", Source: "by geometry", Fix: "steps that narrow from an end"}
	if blind {
		f.What, f.Numbers, f.Fix = c.Name+" is wider than the bore before it, and the bore is blind: no tool gets in from the back", v.mm(end)+" of bore in "+
			v.mm(v.lengthMm), "inside steps as long as the part together, or a bore that narrows"
	}
	v.report(Stop, c.Name, c.Drawn.Pos, f)
}

// leftInWay looks for a step that is finished after a weld and, with what is left on it until then, stands in the
// way of the thread beside it, which is cut before.
func (v *view) leftInWay(c *cylinder) {
	t := c.Size.Thread
	if t == nil || c.AfterWeld {
		return
	}
	wantMm, s, leaveMm := words.Either(c.Inside, t.MajorMm, t.MinorMm), c.sign(), part.WeldLeaveMm(v.job)
	before, behind := c.neighbours()
	for _, o := range []*cylinder{before, behind} {
		if o == nil || !o.AfterWeld || geom.Over(s*(o.Size.NominalMm-wantMm), 0) || !geom.Over(s*(o.Size.NominalMm-wantMm)+leaveMm, 0) {
			continue
		}
		v.report(Check, o.Name, o.Drawn.Pos, Finding{
			What:    o.Name + " with what is left on it for after the weld stands in the way of " + c.Name + ": that is cut before, and is not full up to it",
			Numbers: v.mm(o.Size.NominalMm+s*leaveMm) + ", " + words.Either(c.Inside, "wanted at least ", "wanted at most ") + v.mm(wantMm) + " beside " + t.Designation,
			LeftMm:  left(s * (wantMm - o.Size.NominalMm - s*leaveMm)), Rule: "a thread ends where nothing is in its way", Source: "by geometry",
			Fix: "no after-weld at " + o.Name + ", where the weld lets it be, or one that is " + words.Either(c.Inside, "wider", "narrower"),
		})
	}
}

// tapReach looks for inside threads that are tapped, for no bar reaches, and are deeper than
// a hand tap goes.
func (v *view) tapReach(c *cylinder) {
	t := c.Size.Thread
	if !c.Inside || t == nil || t.TapDrillMm == 0 {
		return
	}
	most, long := cutting.TapReachMm(t.MajorMm), c.LengthMm()
	if near, both := cutting.BarReach(t.TapDrillMm, long); most > 0 && (!near || both) {
		v.atMost(c.Name, c.Drawn.Pos, long, most, Finding{
			What: "no hand tap goes through " + c.Name, Numbers: " of " + t.Designation + ", wanted at most ",
			Rule: "a hand tap is as long as its standard has it, and a wrench holds its square", Source: "ISO 529, from memory",
			Fix: "a shorter thread with a wider bore beside it, or a tap with a long shank, accepted here",
		})
	}
}
