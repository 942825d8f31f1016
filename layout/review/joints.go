package review

import (
	"slices"
	"strings"

	"centrepop/layout/joint"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// jointProblems reports what keeps joints from being worked out, and what is
// wrong with the others.
func jointProblems(r *reviewer) {
	for _, p := range r.pl.Faults {
		r.problem(p, Finding{Part: p.Joint, What: p.What, astray: true, doubted: []string{p.Joint}})
	}
	for _, q := range r.pl.Parts {
		for _, p := range q.Problems {
			r.problem(p, Finding{Part: q.Name, Feature: p.Feature, What: p.What})
		}
	}
	for _, j := range r.pl.Joints {
		for i, p := range j.Problems {
			r.problem(p, Finding{Part: j.Name, What: j.Title + ": " + p.What, of: &j.Problems[i]})
		}
	}
}

// problem records what earlier stages found, about a part or joint.
func (r *reviewer) problem(p plan.Problem, f Finding) {
	about := words.AboutKind(p.Kind)
	r.code = about.Code
	f.Severity, f.Pos, f.Rule, f.Source, f.Fix = about.Severity, p.Pos, r.w.Rule(p), r.w.Source(p), r.w.Fix(p)
	if m := about.Measure; m != nil && m.Arg < len(p.Args) {
		f.bare = slices.Contains([]plan.Unit{plan.Number, plan.Degree}, p.Args[m.Arg].Unit)
		if mm := &p.Args[m.Arg].Value; m.More {
			f.OverMm = mm
		} else {
			f.LeftMm = mm
		}
	}
	r.add(f)
}

// taken looks for holes of one copy that the bolts of two joints are to fill.
func taken(r *reviewer) {
	type holes struct {
		part    string
		copy    int
		feature string
	}
	by := map[holes]string{}
	for _, j := range r.job.Of(parts.BoltKind) {
		for _, ref := range j.Refs() {
			at, p := holes{ref.Part, ref.Copy, ref.Feature}, r.job.Part(ref.Part)
			if other := by[at]; other != "" && other != j.Name.Value && p != nil {
				r.add(Finding{
					Severity: Stop, Part: j.Name.Value, Feature: ref.Feature, Pos: ref.Pos,
					What: "the holes " + ref.Feature + " of " + copyTitle(p, ref.Copy) + " have the bolts of " + other + " already",
					Rule: "a hole has one bolt", Source: "by geometry", Fix: "the other copy, or holes of its own",
				})
			}
			by[at] = j.Name.Value
		}
	}
}

func (r *reviewer) jointPos(name string) parts.Pos {
	if j := r.job.Joint(name); j != nil {
		return j.Pos
	}
	return parts.Pos{File: r.job.File, Line: 1, Column: 1}
}

// ofJoint records a finding of a joint, at its place in the job.
func (r *reviewer) ofJoint(j *plan.JointPlan, f Finding) {
	f.Part, f.Pos = j.Name, r.jointPos(j.Name)
	r.add(f)
}

// trapRule is what is said of a part that goes on wrong.
const trapRule = "a part that can be put on wrong one day is"

// trap looks for joints that also go together a wrong way, where something is to be decided before
// metal is cut: TOP is not marked, or an offset hole shuts it out. That is a note of one line.
// The others are for who joins them: the sequence sheet shows the marks and lists the ways.
func (r *reviewer) trap(j *plan.JointPlan) {
	all := slices.Concat(j.Traps, r.machine().Ways(j.Name))
	list := seq.Keep(all, func(t plan.Trap) bool { return len(t.Out) > 0 })
	unmarked := func(e plan.JointEnd) bool {
		q := r.pl.Part(e.Part)
		return q != nil && q.Top == "" && len(j.Traps) > 0
	}
	if len(list) == 0 || len(j.Offset) == 0 && !unmarked(j.A) && !unmarked(j.B) {
		return
	}
	f := Finding{
		Severity: Note, What: j.Title + " also goes together in " + ways(list),
		Rule: trapRule, Fix: "before anything is cut an offset hole: in the job `angles` for the circle of both parts; else the witness mark of the sequence sheet",
	}
	if len(j.Offset) > 0 {
		f.Numbers = "offset hole: " + strings.Join(outs(j.Offset), " and ")
	}
	if harmless := len(all) - len(list); harmless > 0 {
		f.What += ", and in " + number(float64(harmless)) + " that change nothing"
	}
	if bare := seq.Keep([]plan.JointEnd{j.A, j.B}, unmarked); len(bare) > 0 {
		titles := seq.Add(nil, seq.Map(bare, func(e plan.JointEnd) string { return r.pl.Part(e.Part).Title })...)
		f.Severity, f.Numbers = Check, words.Join("; ", "then out of place: "+few(outs(list[0].Out)), f.Numbers)
		f.Fix = strings.TrimSpace("Mark TOP on " + words.Join(" and ", titles...) + ". " + strings.Join(j.Remedies, " "))
	}
	r.ofJoint(j, f)
}

// unlike names the joints in which one metal eats another: which, and what it is to be kept dry by, is decided before it is bought.
func (r *reviewer) unlike(j *plan.JointPlan) {
	for _, said := range j.Unlike {
		r.ofJoint(j, Finding{
			Severity: Note, What: j.Title + ": " + said,
			Rule: "the less noble of two metals is eaten, what is small fastest", Fix: "dry or greased as the step says, or metals that lie near one another",
		})
	}
}

// outs are what lies out of place, in words.
func outs(list []plan.Out) (out []string) { return seq.Map(list, words.Out) }

// ways counts wrong ways and names the first.
func ways(wrong []plan.Trap) string {
	first := "turned by " + number(wrong[0].TurnDeg) + "°"
	switch {
	case wrong[0].Instead != "":
		first = "with " + wrong[0].Instead + " instead"
	case wrong[0].Face != "":
		first = "on its " + wrong[0].Face
	case wrong[0].OtherWay && wrong[0].TurnDeg == 0:
		first = "the other way round"
	case wrong[0].OtherWay:
		first = "the other way round at " + number(wrong[0].TurnDeg) + "°"
	}
	return words.Either(len(wrong) == 1, "one wrong way: "+first, number(float64(len(wrong)))+" wrong ways, such as "+first)
}

// few lists at most four texts.
func few(texts []string) string {
	const most = 4
	if len(texts) > most {
		return strings.Join(texts[:most], ", ") + " and " + number(float64(len(texts)-most)) + " more"
	}
	return strings.Join(texts, ", ")
}

// weldFirst looks for fine sizes that are finished on their part's sheet before
// a weld that moves them. Of several welds on a part the last one counts.
func (r *reviewer) weldFirst(j *plan.JointPlan) {
	for _, end := range []plan.JointEnd{j.A, j.B} {
		welds := seq.Keep(r.planned(parts.WeldKind), func(o *plan.JointPlan) bool { return o.A.Part == end.Part || o.B.Part == end.Part })
		if welds[len(welds)-1] != j {
			continue
		}
		for _, c := range r.viewOf(end.Part).steps() {
			grade, is := 9, func(ref parts.JointRef) bool { return ref.Part == end.Part && ref.Feature == c.Name }
			if slices.ContainsFunc(r.job.Of(parts.SlideKind), func(o *parts.Joint) bool { return is(o.Slide.Hub) || is(o.Slide.On) }) {
				grade = 11 // a weld along it closes more than the play that it slides by
			}
			// A far bore keeps its size; a seat outside comes to run out, for the weld bends what it is on.
			if at := named(r.viewOf(end.Part).steps(), end.Feature); at != nil && c.Inside && !joint.Pulls(r.viewOf(end.Part).m, c.Step, -at.Span().OnMm(c.Span())) {
				continue
			}
			if fine(c.Drawn.Size.Fit, grade) && !c.Drawn.AfterWeld && !r.shutBy(j, end, c.Name) {
				r.weldMoves(j, end, c)
			}
		}
	}
}

// shutBy tells whether a feature is pressed together before a weld, and can be finished at no other time, or goes into
// what it is welded to.
func (r *reviewer) shutBy(weld *plan.JointPlan, end plan.JointEnd, feature string) bool {
	is := func(e plan.JointEnd) bool { return e.Instance() == end.Instance() && e.Feature == feature } // another copy may be shut already
	return slices.ContainsFunc(r.planned(parts.PressKind), func(j *plan.JointPlan) bool { return j.N < weld.N && (is(j.A) || is(j.B)) }) ||
		slices.ContainsFunc(r.job.Of(parts.WeldKind), func(j *parts.Joint) bool {
			return j.Names(end.Part, feature) && r.isBore(j.Weld.Part) != r.isBore(j.Weld.To)
		})
}

// isBore tells a feature that is a bore.
func (r *reviewer) isBore(ref parts.JointRef) bool {
	c := r.stepOf(ref)
	return c != nil && c.Inside
}

func (r *reviewer) weldMoves(j *plan.JointPlan, end plan.JointEnd, c *cylinder) {
	numbers := words.Join(" ", r.mm(2*c.RadiusMm()), c.Drawn.Size.Fit.Class.Value)
	numbers += words.When(j.Weld.BoreLeaveMm > 0, "; leave "+r.mm(j.Weld.BoreLeaveMm)+" on diameter and "+r.mm(j.Weld.SquareUpMm)+" on a face")
	r.ofJoint(j, Finding{
		What: j.Title + ": " + end.Title + " " + c.Name + " is finished on its own sheet, before the weld that distorts it", Numbers: numbers,
		Rule: "fine sizes are finished after the last weld near them", Fix: "after-weld: yes at it, or the weld further from it",
	})
}

// fitSides looks for press fits whose classes are on one part's drawing only,
// or differ from those of the joint.
func (r *reviewer) fitSides(j *parts.Joint) {
	p := j.Press
	bore, shaft, _ := strings.Cut(p.Fit.Value, "/")
	a, b := r.stepOf(p.Bore), r.stepOf(p.Shaft)
	switch {
	case a != nil && a.Drawn.Size.Fit.LightPress.Set(): // it follows the mate as measured
		if p.Fit.Value != "" {
			r.add(Finding{
				Part: j.Name.Value, Pos: p.Fit.Pos, What: "the joint asks for a fit, and the bore for a light press on what is measured", Numbers: p.Fit.Value,
				Rule: "two parts have one fit", Source: "ISO 286-1", Fix: "the light press alone, or the fit on both drawings",
			})
		}
	case a != nil && b != nil:
		r.fitSide(j, p.Bore, a, bore)
		r.fitSide(j, p.Shaft, b, shaft)
	}
}

// fitSide compares one side of a press, as drawn, with its class by the joint.
func (r *reviewer) fitSide(j *parts.Joint, ref parts.JointRef, c *cylinder, class string) {
	drawn, where := c.Drawn.Size.Fit.Class.Value, ref.Part+"."+ref.Feature
	r.firstOf(Finding{
		Part: j.Name.Value, Pos: ref.Pos,
		Rule: "a fit stands on both drawings, as each part is made and checked by its own sheet", Source: "ISO 286-1", Fix: "write the class at both features",
	},
		flaw{class != "" && !c.fitted() && r.job.Part(ref.Part).Kind != parts.Tube, Finding{ // that has a stop of its own
			What: where + " has no fit on its own drawing", Numbers: "the joint asks " + j.Press.Fit.Value}},
		flaw{class != "" && drawn != "" && drawn != class, Finding{
			Severity: Stop, What: where + " is drawn with another fit than the joint's", Numbers: "drawn " + drawn + ", the joint asks " + class}},
	)
}

// stepOf is the step that a joint names, nil where it names another feature.
func (r *reviewer) stepOf(ref parts.JointRef) *cylinder { return r.viewOf(ref.Part).step(ref.Feature) }

// copyTitle is the title of a copy of a part, with its number where there are several.
func copyTitle(p *parts.Part, copy int) string {
	return words.Either(p.Quantity > 1, p.Title.Value+" "+number(float64(copy)), p.Title.Value)
}
