package review

import (
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/threads"
	"centrepop/parts"
)

// What notes ask for in words that neither an operation nor the record takes up.
var (
	saidWithin  = regexp.MustCompile(`(?i)\b(flat(?:ness)?|square(?:ness)?|perpendicular(?:ity)?|parallel(?:ism)?|equal|same length|coaxial(?:ity)?|concentric(?:ity)?|run-?out|runs? true|true)\b[^.;]*?\bwithin\s+([0-9][0-9./-]*(?: ?(?:mm|in)\b)?)`)
	saidSetting = regexp.MustCompile(`(?i)\b(?:one|the same|a single) (?:setting|chucking|set-?up)\b|without (?:letting go|re-?chucking)`)
)

// demanded is the requirement that a word of a note means, and what follows it.
var demanded = []struct {
	word string
	kind parts.RequirementKind
	rest string
}{
	{"flat", parts.Flatness, "of: front"}, {"square", parts.Squareness, "of: front, to: bore"}, {"perpend", parts.Squareness, "of: front, to: bore"},
	{"parallel", parts.Parallelism, "of: back, to: front"}, {"equal", parts.EqualLength, "of: length"}, {"same", parts.EqualLength, "of: length"},
	{"coax", parts.Coaxiality, "of: one step, to: another"}, {"concen", parts.Coaxiality, "of: one step, to: another"}, {"run", parts.RunOut, "of: one step, to: another"}, {"true", parts.RunOut, "of: one step, to: another"},
}

// saidDemands looks for tolerances and settings in free text: only a key gets them into an
// operation and the record.
func saidDemands(v *view) {
	for _, n := range v.texts() {
		f := Finding{Rule: "what is to be made and inspected has a key", Source: "by the job"}
		if m := saidWithin.FindStringSubmatch(n.Value); m != nil {
			for _, d := range demanded {
				if !strings.HasPrefix(strings.ToLower(m[1]), d.word) {
					continue
				}
				if !slices.ContainsFunc(v.p.Require, func(q parts.Requirement) bool { return q.Kind == d.kind }) {
					f.What, f.Numbers, f.Fix = "a note of "+v.p.Title.Value+" gives a tolerance that nothing works to or inspects", m[0], "require: [{is: "+string(d.kind)+", within: "+m[2]+", "+d.rest+"}] in place of the words"
					v.report(Check, "", n.Pos, f)
				}
				break
			}
		}
		if m := saidSetting.FindString(n.Value); m != "" && (v.p.Profile == nil || len(v.p.Profile.OneSetting) == 0) {
			f.What, f.Numbers, f.Fix = "a note of "+v.p.Title.Value+" asks for one setting, and the operations do not obey it", m, "other words"
			if v.p.Profile != nil {
				f.Fix = "one-setting: [the steps] in the profile where one face reaches them all, else require: [{is: coaxiality, within: 0.01 mm, of: one step, to: another}]; without the words"
			}
			v.report(Check, "", n.Pos, f)
		}
	}
}

// tapReach looks for inside threads that are tapped, for no bar reaches, and are deeper than
// a hand tap goes.
func tapReach(v *view) {
	for i := range v.inside {
		c := &v.inside[i]
		t, err := threads.Parse(c.size.Thread.Value)
		if c.size.Thread.Value == "" || err != nil || t.TapDrillMm == 0 {
			continue
		}
		most, long := cutting.TapReachMm(t.MajorMm), c.toMm-c.fromMm
		if near, both := cutting.BarReach(t.TapDrillMm, long); most > 0 && (!near || both) && long > most+slackMm {
			v.report(Check, c.name, c.pos, Finding{
				What: "no hand tap goes through " + c.name, OverMm: over(long), Numbers: v.mm(long) + " of " + t.Designation + ", wanted at most " + v.mm(most),
				Rule: "a hand tap is as long as its standard has it, and a wrench holds its square", Source: "ISO 529, from memory", Fix: "a shorter thread with a wider bore beside it, or a tap with a long shank, accepted here",
			})
		}
	}
}
