// Package review finds what would spoil a part or a joint, before metal is cut.
//
// In goes a job worked out; out come findings, each with
// the place in the input, what is wrong, the numbers, the rule with its source,
// and what would put it right. Lengths inside are millimetres and angles
// degrees; the strings of a finding are written in the job's units.
//
// The rules follow EN 1993-1-8 (distances of bolt holes, used as guidance), ISO
// 2768-1 (general tolerances), ISO 286-1 (fits), DIN 76-1 (thread run-out) and
// the makers' sizes that layout/bolts names. Much of the rest is rule of thumb,
// and such a finding's Source is "common practice, no source".
//
// The package is pure: the same job gives the same findings in the same order.
package review

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Severity sorts findings by what they cost.
type Severity = plan.Severity

// The severities, worst first. A job with an open finding of the first two is
// not ready to cut.
const (
	Stop  = plan.StopSeverity  // the part would be scrap, or cannot be made
	Check = plan.CheckSeverity // right only if somebody meant it so
	Note  = plan.NoteSeverity  // worth knowing
)

// practice is the source of a rule of thumb.
const practice = "common practice, no source"

// endless is as far as one likes: what nothing is near to, or ends.
var endless = math.Inf(1)

// Finding is one thing the review found.
type Finding struct {
	Severity Severity
	Code     string            // the rule's short name, such as edge
	Part     string            // name of the part or joint; empty for the job
	OfJoint  bool              // Part is the name of a joint, which a part may bear too
	Feature  string            // of the part; empty for all of it
	Meets    [2]parts.JointRef // what the joint puts together; empty where Part is none
	Pos      parts.Pos         // what to change in the input
	What     string            // what is wrong, in shop words
	Numbers  string            // what was measured and what was wanted; may be empty
	Rule     string
	Source   string // standard and table, or "common practice, no source"
	Fix      string
	LeftMm   *float64      // what is left or given, the less the worse; nil where nothing is measured
	OverMm   *float64      // what is too much, the more the worse; nil where nothing is measured
	bare     bool          // what is measured is no length but a mere number, or an angle
	Number   string        // that of the two as an acceptance gives it; empty where nothing is measured
	Accepted bool          // the job takes it as it is
	of       *plan.Problem // of a joint, which its page says too; nil for another
	astray   bool          // what stands on it is elsewhere, or nobody knows where
	doubted  []string      // then the joints of which one is wrong, by name
	bodies   []string      // that are in one another's way, by their ids
	Reason   string        // the job's reason for that
	// With are the other places of a note that has one cure for all of them.
	With []Finding
}

// Each are its places: the finding itself, and those with it.
func (f Finding) Each() []Finding { return append([]Finding{f}, f.With...) }

// At is the place as an acceptance names it: part, part.feature, joint, or job.
func (f Finding) At() string { return cmp.Or(words.Join(".", f.Part, f.Feature), "job") }

// Open tells whether a finding is to be settled before metal is cut: it is no
// mere note and the job does not accept it.
func (f Finding) Open() bool { return !f.Accepted && f.Severity != Note }

// Count is how many findings of each sort a list has. Accepted ones are only
// in Accepted.
type Count struct {
	Stop     int `json:"stop"`
	Check    int `json:"check"`
	Note     int `json:"note"`
	Accepted int `json:"accepted"`
}

// Summary counts findings; notes of one sort are one.
func Summary(findings []Finding) Count {
	var c Count
	for _, f := range findings {
		switch {
		case f.Accepted:
			c.Accepted++
		case f.Severity == Stop:
			c.Stop++
		case f.Severity == Check:
			c.Check++
		default:
			c.Note++
		}
	}
	return c
}

// Open counts the findings to settle before metal is cut.
func (c Count) Open() int { return c.Stop + c.Check }

// follow drops what only follows from a flange that is the wrong way round, for all that stands
// on it, or comes to it, is out of place, and from holes that do not meet, or a joint that is not worked out.
func (r *reviewer) follow() {
	follows := func(drop []string, why func(Finding) bool) {
		if slices.ContainsFunc(r.found, why) {
			r.found = slices.DeleteFunc(r.found, func(f Finding) bool { return slices.Contains(drop, f.Code) })
		}
	}
	follows(placedCodes, func(f Finding) bool { return f.Code == "level" })
	follows([]string{"motor-line"}, func(f Finding) bool { return f.Code == "pattern" && f.Severity == Stop })
	follows([]string{"travel"}, func(f Finding) bool { return f.Severity == Stop && slices.Contains(astray, f.Code) })
	follows([]string{"overlap", "place", "head"}, func(f Finding) bool { return f.astray && f.Code == "stud" })
	follows([]string{"order"}, func(f Finding) bool { return f.astray && f.Code != "order" })
	if wrong := seq.Keep(r.found, func(f Finding) bool { return f.astray && !f.Accepted }); len(wrong) > 0 {
		whole := r.pieces(wrong)
		r.shared()
		r.found = slices.DeleteFunc(r.found, func(f Finding) bool { return !f.astray && slices.Contains(elsewhereCodes, f.Code) && !whole(f.bodies) })
	}
	follows([]string{"weld-gap"}, func(f Finding) bool { return f.astray && f.Severity == Stop && f.Code == "place" })
}

// shared says of several loops that do not close which joint, or else which part, is in all of them, if one alone is.
func (r *reviewer) shared() {
	var joints, copies []string
	n := 0
	for f := range seq.Refs(r.found) {
		if !f.astray || len(f.doubted) < 2 {
			continue
		}
		var own []string
		for _, name := range f.doubted {
			if j := r.pl.Joint(name); j != nil {
				own = append(own, r.machine().Title(j.A.Instance().ID()), r.machine().Title(j.B.Instance().ID()))
			}
		}
		if n++; n == 1 {
			joints, copies = f.doubted, own
		}
		joints = seq.Keep(joints, func(name string) bool { return slices.Contains(f.doubted, name) })
		copies = seq.Keep(seq.Add(nil, copies...), func(title string) bool { return slices.Contains(own, title) })
	}
	if in := words.Either(len(joints) == 1, joints, copies); n > 1 && len(in) == 1 {
		for f := range seq.Refs(r.found) {
			if f.astray && len(f.doubted) > 1 {
				f.Fix += "; first look at " + in[0] + ", which alone is in all that do not agree"
			}
		}
	}
}

// pieces tells of bodies whether they hold their places to one another whatever is wrong with the joints that some findings doubt.
func (r *reviewer) pieces(wrong []Finding) func(bodies []string) bool {
	doubted := map[string]bool{}
	for _, f := range wrong {
		for _, name := range f.doubted {
			doubted[name] = true
		}
	}
	piece := map[string]string{}
	of := func(id string) string {
		for piece[id] != "" {
			id = piece[id]
		}
		return id
	}
	held := map[string]string{} // what each body hangs on that a joint holds
	for _, j := range r.pl.Joints {
		a, b := j.A.Instance().ID(), j.B.Instance().ID()
		held[a], held[b] = a, b
		if !doubted[j.Name] && of(a) != of(b) {
			piece[of(a)] = of(b)
		}
	}
	return func(bodies []string) bool {
		on := seq.Map(bodies, func(id string) string {
			role := r.machine().Roles[id]
			if j := r.pl.Joint(role.Joint); j != nil && !doubted[j.Name] {
				return j.A.Instance().ID()
			}
			return held[cmp.Or(role.On, id)]
		})
		return len(on) > 0 && !slices.ContainsFunc(on, func(id string) bool { return id == "" || of(id) != of(on[0]) })
	}
}

// elsewhereCodes are what a part seems to do, or not to do, that stands elsewhere than it is meant to: where a joint is not worked out or
// misses by much, a part lies the other way round or what holds two apart has no shoulder; what lies within one piece is said all the same.
var elsewhereCodes = []string{"overlap", "way", "early", "tips", "guard", "heads", "ring", "belt"}

// astray are stops that say why what travels does not: it is out of place, or what it meets is.
var astray = []string{"joint", "level", "overlap", "pattern", "place"}

// placedCodes are the findings that where things stand decides.
var placedCodes = []string{"overlap", "way", "order", "head", "covered", "place", "tips", "lift", "loose", "held", "facing", "dead-end", "hand", "guard", "bolt-length", "engagement", "motor-line"}

// gathered makes one finding of the notes of one code and cure: the first, with the
// others, and the rules and sources of all.
func gathered(found []Finding) []Finding {
	type kind struct{ code, fix string }
	at := map[kind]int{}
	out := found[:0]
	add := func(list *string, text string) {
		*list += words.When(!strings.Contains(*list, text), "; "+text)
	}
	for _, f := range found {
		k := kind{f.Code, f.Fix}
		i, before := at[k]
		switch {
		case f.Accepted || f.Severity != Note:
		case before:
			first := &out[i]
			first.With = append(first.With, f)
			add(&first.Rule, f.Rule)
			add(&first.Source, f.Source)
			continue
		default:
			at[k] = len(out)
		}
		out = append(out, f)
	}
	return out
}

func rank(s Severity) int { return slices.Index([]Severity{Stop, Check, Note}, s) }

// reviewer collects the findings of one job.
type reviewer struct {
	job     *parts.Job
	pl      *plan.Plan
	model   func(name string) *part.Model
	machine func() *machine.Machine
	w       words.Writer
	code    string // of the rule at work
	found   []Finding
	views   map[string]*view
	said    string // all words, once asked for

	standing []standingIn // those of everyStanding, once asked for
}

// motor is that of the job, without data where it has none.
func (r *reviewer) motor() *parts.Motor { return cmp.Or(r.job.Motor, &parts.Motor{}) }

// run is the first run of the job, without data where it has none.
func (r *reviewer) run() *parts.FirstRun { return cmp.Or(r.job.FirstRun, &parts.FirstRun{}) }

// upkeep is that of the job, empty where it says none.
func (r *reviewer) upkeep() *parts.Upkeep { return cmp.Or(r.job.Upkeep, &parts.Upkeep{}) }

// flaw is what may be wrong with a thing: whether it is, and what is said of it then.
type flaw struct {
	is bool
	Finding
}

// firstOf records the first flaw that a thing has, with what is common to all where it says nothing of its own; it
// tells whether there is one.
func (r *reviewer) firstOf(common Finding, flaws ...flaw) bool {
	for _, f := range flaws {
		if f.is {
			r.add(f.or(common))
			return true
		}
	}
	return false
}

// eachOf records every flaw that a thing has.
func (r *reviewer) eachOf(common Finding, flaws ...flaw) {
	for _, f := range flaws {
		r.firstOf(common, f)
	}
}

// or is a finding with what another says where it says nothing itself.
func (f Finding) or(o Finding) Finding {
	f.Severity, f.Part, f.Feature, f.Pos = cmp.Or(f.Severity, o.Severity), cmp.Or(f.Part, o.Part), cmp.Or(f.Feature, o.Feature), cmp.Or(f.Pos, o.Pos)
	f.What, f.Numbers, f.Rule, f.Source, f.Fix = cmp.Or(f.What, o.What), cmp.Or(f.Numbers, o.Numbers), cmp.Or(f.Rule, o.Rule), cmp.Or(f.Source, o.Source), cmp.Or(f.Fix, o.Fix)
	if f.LeftMm == nil && f.OverMm == nil {
		f.LeftMm, f.OverMm = o.LeftMm, o.OverMm
	}
	return f
}

// add records a finding of the rule at work: to check, by common practice, where it says no other.
func (r *reviewer) add(f Finding) {
	f.Code, f.Severity, f.Source = r.code, cmp.Or(f.Severity, Check), cmp.Or(f.Source, practice)
	j := r.job.Joint(f.Part)
	if f.OfJoint = j != nil && f.Feature == "" && f.Pos.File == j.Pos.File; f.OfJoint { // a part has its own file
		f.Meets[0], f.Meets[1] = j.Ends()
	}
	if f.measured() {
		f.Number = r.measure(f, f.number())
		text := f.Number
		if is, wanted, _ := strings.Cut(f.Numbers, "wanted "); strings.Contains(is, text) && strings.Contains(wanted, text) {
			f.Numbers = strings.Replace(f.Numbers, text, r.w.Setting(f.number()), 1) // else both read alike
		}
	}
	if !slices.ContainsFunc(r.found, f.again) {
		r.found = append(r.found, f)
	}
}

// number writes a plain number with at most two decimals.
func number(x float64) string { return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64) }

// mm writes a length in the job's units, with the unit.
func (r *reviewer) mm(v float64) string { return r.w.Said(math.Round(v/r.stepMm()) * r.stepMm()) }

// stepMm is what mm rounds a length to.
func (r *reviewer) stepMm() float64 { return r.w.Step(0.01, 0.001) }

// again tells whether another says the same of the same place.
func (f Finding) again(o Finding) bool {
	return f.Code == o.Code && f.Pos == o.Pos && f.What == o.What && f.Numbers == o.Numbers
}

// accept marks the findings that the job takes as they are, and notes each
// acceptance that meets no finding. A stop cannot be accepted; a measured
// finding only with its number, and not when it has got worse.
func (r *reviewer) accept() {
	met := map[*parts.Accept]bool{}
	for f := range seq.Refs(r.found) {
		var what, fix string
		for a := range seq.Refs(r.job.Accept) {
			if f.Code != a.Finding.Value || f.Part != a.Part || a.Feature != "" && f.Feature != a.Feature {
				continue
			}
			met[a] = true
			if what, fix = r.refused(f, a); what+fix == "" {
				f.accept(a.Reason.Value)
				break
			}
		}
		f.What, f.Fix = f.What+what, f.Fix+fix
	}
	stops := slices.ContainsFunc(r.found, func(f Finding) bool { return f.Severity == Stop && !f.Accepted })
	for a := range seq.Refs(r.job.Accept) {
		if worked := len(r.pl.Faults) == 0 || r.job.Joint(a.Part) == nil; !met[a] && worked { // else it may be about what the joint decides
			r.unmatched(*a, stops)
		}
	}
}

// refused is why an acceptance does not take a finding, behind what that says and behind its cure; nothing if it does.
// One with a number is for what has about that number, what is less of its rule, and nothing else that is found there.
func (r *reviewer) refused(f *Finding, a *parts.Accept) (what, fix string) {
	measured := f.measured()
	off, rounded := a.Number.Mm, r.roundedMm()
	if f.bare { // it is given as a length is, in the job's units
		off, rounded = off/words.Either(r.w.Units == parts.Inches, geom.MmPerInch, 1), bareRounded
	}
	switch {
	case f.Severity == Stop:
		return "", "; a stop cannot be accepted"
	case !measured && a.Number.Set():
		return "", "; to accept this, an entry without number"
	case !measured:
		return "", ""
	case !a.Number.Set():
		return "", "; to accept it, give number: " + f.Number
	case f.LeftMm != nil && *f.LeftMm < off-rounded, f.OverMm != nil && *f.OverMm > off+rounded:
		return ", worse than the " + r.measure(*f, off) + " that was accepted", ""
	case !slices.ContainsFunc(r.found, func(o Finding) bool {
		return o.Code == f.Code && o.Part == f.Part && o.Feature == f.Feature && o.Rule == f.Rule && o.measured() &&
			math.Abs(o.number()-off) <= staleShare*max(math.Abs(o.number()), math.Abs(off))+rounded
	}):
		return ", and " + r.measure(*f, off) + " is accepted, by which worse would pass", "; to accept it as it is, number: " + f.Number
	}
	return "", ""
}

// staleShare is how far the number of an acceptance may lie from what is found. Common practice,
// no source: what is signed is what is there.
const staleShare = 0.2

func (f *Finding) accept(reason string) {
	f.Accepted, f.Reason = true, reason
	if f.of != nil {
		f.of.Accepted = reason
	}
}

// measured tells whether a finding has a number that could get worse.
func (f *Finding) measured() bool { return f.LeftMm != nil || f.OverMm != nil }

// number is what was measured.
func (f *Finding) number() float64 {
	if f.LeftMm != nil {
		return *f.LeftMm
	}
	return *f.OverMm
}

// measure writes what a finding measures.
func (r *reviewer) measure(f Finding, v float64) string {
	if f.bare {
		return number(v)
	}
	return r.mm(v)
}

// bareRounded is what number may round by, and a little more.
const bareRounded = 0.006

// roundedMm is what mm may round a length by, and a little more, so that the number printed is one that accepts.
func (r *reviewer) roundedMm() float64 { return 0.6 * r.stepMm() }

// unmatched says that an acceptance has no finding; what is to stop at may hide it.
func (r *reviewer) unmatched(a parts.Accept, stops bool) {
	where := words.Either(a.Part != "", " at "+words.Join(".", a.Part, a.Feature), " about the job")
	r.code = "accepted-nothing"
	r.add(Finding{
		Severity: Note, Part: a.Part, Feature: a.Feature, Pos: a.Pos,
		What: "the job accepts " + a.Finding.Value + where + ", but the review finds no such thing" + words.When(stops, " as long as something is to stop at"),
		Rule: "an acceptance that is out of date would hide the next fault of its sort",
		Fix:  words.Either(stops, "first settle what is to stop at, which may hide it", "delete the entry, or correct its code or place"),
	})
}

// left is a measured length, the less the worse.
func left(mm float64) *float64 { return &mm }

// over is a measured length, the more the worse.
func over(mm float64) *float64 { return &mm }
