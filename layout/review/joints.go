package review

import (
	"errors"
	"strings"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// Job reviews a job that may not even resolve. Faults of its joints (patterns
// that do not meet, features that cannot line up, a fit with one side missing)
// become findings to stop at, and the parts are then reviewed alone. The plan
// is nil in that case, and such findings cannot be accepted. The error is that of layout.Resolve if a part itself is
// at fault.
func Job(job *parts.Job) ([]Finding, *plan.Plan, error) {
	pl, err := layout.Resolve(job)
	if err == nil {
		return Review(job, pl), pl, nil
	}
	var faults parts.Errors
	if len(job.Joints) == 0 || !errors.As(err, &faults) {
		return nil, nil, err
	}
	alone := *job
	alone.Joints = nil
	bare, err := layout.Resolve(&alone)
	if err != nil {
		return nil, nil, err
	}
	r := newReviewer(&alone, bare)
	for _, e := range faults {
		k := kindOf(e.What)
		r.code = k.code
		r.add(Finding{
			Severity: Stop, Part: jointAt(job, e.Pos), Pos: e.Pos, What: e.What,
			Rule: k.rule, Source: k.source, Fix: e.Right, hard: true,
		})
	}
	return r.review(), nil, nil
}

// jointAt names the joint that a place in the job file belongs to.
func jointAt(job *parts.Job, pos parts.Pos) string {
	name := ""
	for _, j := range job.Joints {
		if j.Pos.File == pos.File && j.Pos.Line <= pos.Line {
			name = j.Name.Value
		}
	}
	return name
}

// kind is what the review says about a fault of a joint that layout has found.
type kind struct {
	words        string // in layout's text
	code         string
	severity     Severity
	rule, source string
	fix          string
}

const byNumbers = "see the numbers on the sequence sheet"

// kinds is tried in this order; the last one takes the rest.
var kinds = []kind{
	{"do not line up", "align", Stop, "what must line up lies at one clock angle of the assembly", "by geometry", "turn the part or its pattern"},
	{"has no clock angle", "align", Stop, "only features with a clock angle can line up", "by geometry", "name a hole group, a radial feature or top"},
	{"do not meet those", "pattern", Stop, "holes that take one bolt lie on one line", "by geometry", "give both parts the same pattern"},
	{" miss those of ", "pattern", Stop, "holes that take one bolt lie on one line, within their play", "by geometry", "give both parts the same pattern"},
	{" holes and ", "pattern", Stop, "holes that take one bolt are as many on both parts", "by geometry", "give both parts the same pattern"},
	{"too small for", "pattern", Stop, "the hole lets the bolt through", "ISO 273, ASME B18.2.8", "give both parts holes for the same bolt"},
	{"is tapped", "pattern", Stop, "bolt and tapped hole have one thread", "by geometry", "give both the same thread"},
	{"wait for each other", "order", Stop, "every joint can be reached, by tool or torch, when its turn comes", "by geometry", "break the ring with before or after, or let the tool in"},
	{"earlier joints", "place", Stop, "a part has one place", "by geometry", "the same faces and turn in both joints"},
	{"has no face there", "place", Stop, "a part stands against a face", "by geometry", "name the faces that meet"},
	{"has no metal for the bolt", "pattern", Stop, "a bolt clamps metal", "by geometry", "name the faces that meet"},
	{"has no thread and the joint no nuts", "pattern", Stop, "a bolt ends in a thread or a nut", "by geometry", "nut: yes, or a tapped group"},
	{"has no limits", "fit-side", Stop, "a fit needs limits on both sides", "ISO 286-1", "give the other side a class or limits"},
	{"clearance fit", "fit-side", Stop, "a press fit has interference at all limits", "ISO 286-1", "choose a fit such as H7/p6"},
	{"may bind", "register", Check, "a spigot goes into its register freely at all limits", "ISO 286-1", "a fit such as H7/f7"},
	{"yields", "yield", Stop, "von Mises stress at the tightest limits under yield", "Lamé equations; " + byNumbers, "a looser fit, a thicker hub or a stronger material"},
	{"the shop's press", "press-force", Stop, "the force at the tightest limits under that of the press", "Coulomb friction on the pressure; " + byNumbers, "heat the hub, or take a looser fit"},
	{"lead-in", "lead-in", Check, "a pressed part has a chamfer to start on", practice, "add the chamfer to one of the parts"},
	{"no chamfer for the weld", "weld-prep", Check, "a groove weld has a prepared edge", "ISO 9692-1", "add the chamfer with for: weld"},
	{"a square butt does not go through", "weld-prep", Check, "a square edge is for thin metal", "ISO 9692-1", "bevel the edge"},
	{"fillet leg", "weld-size", Check, "a fillet is large enough not to crack", "AWS D1.1:2020 Table 7.7", "a larger leg"},
	{"cracks whatever is done", "weld-metal", Stop, "neither metal cracks when it is welded", practice, "another material, bolts or brazing"},
	{"do not mix", "weld-metal", Stop, "a weld joins metals that mix", practice, "bolts, or one metal for both"},
	{"not readily weldable", "weld-metal", Check, "both metals take an ordinary weld", practice, "preheat by a procedure, another material, or bolts"},
	{"the cone would have to be heated", "heat", Note, "a bearing is not heated over its limit", practice, "press it cold, or a looser seat"},
	{"for the bearing", "seat", Check, "a bearing seat has a fit for its load", "see the advice on the sequence sheet", "give the seat one of the advised classes"},
	{"advised", "seat", Check, "a bearing seat has a fit for its load", "see the advice on the sequence sheet", "one of the advised classes, or the maker's own"},
	{"stock length", "bolt-length", Check, "a bolt reaches its thread and does not bottom", practice, "change the grip, the thread depth or the bolt"},
	{"the thread needs", "engagement", Check, "the bolt breaks before its thread strips", practice, "a deeper thread, a smaller bolt or a nut"},
	{"full thread", "engagement", Check, "the bolt breaks before its thread strips", practice, "a deeper thread, a smaller bolt or a nut"},
	{"of thread engaged", "engagement", Check, "the bolt breaks before its thread strips", practice, "a longer bolt or a deeper thread"},
	{"too short", "bolt-length", Check, "the thread reaches through what it clamps", "by geometry", "a longer thread"},
	{"countersunk", "counterbore", Check, "a countersink takes a countersunk head", "by geometry", "countersunk screws, or counterbore"},
	{"counterbore", "counterbore", Check, "a counterbore is wider than the head", "by geometry", "open the counterbore"},
	{"needs", "head", Check, "head, nut and spanner have room", practice, "socket heads, the head on the other side, or move the holes"},
	{"need ", "head", Check, "head, nut and spanner have room", practice, "socket heads, the head on the other side, or move the holes"},
	{"", "joint", Check, "the joint as drawn has a flaw", byNumbers, "change the joint or the parts"},
}

func kindOf(text string) kind {
	for _, k := range kinds {
		if strings.Contains(text, k.words) {
			return k
		}
	}
	return kinds[len(kinds)-1]
}

// jointProblems reports what layout found wrong with each joint.
func jointProblems(r *reviewer) {
	for _, j := range r.pl.Joints {
		for _, text := range j.Problems {
			k := kindOf(text)
			r.code = k.code
			r.add(Finding{
				Severity: k.severity, Part: j.Name, Pos: r.jointPos(j.Name), What: j.Title + ": " + text,
				Numbers: numbersOf(r, j, k.code), Rule: k.rule, Source: k.source, Fix: k.fix,
			})
		}
	}
}

// numbersOf repeats the figures of a joint that a finding is about.
func numbersOf(r *reviewer, j *plan.JointPlan, code string) string {
	switch p := j.Press; {
	case p != nil && code == "yield":
		return "safety against yield hub " + number(p.HubSafety) + ", shaft " + number(p.ShaftSafety) + " at " + number(p.PressureMPa.Max) + " MPa"
	case p != nil && code == "press-force":
		return number(p.ForceN.Max/1000) + " kN at the tightest, press " + number(p.ShopPressN/1000) + " kN"
	}
	return ""
}

func (r *reviewer) jointPos(name string) parts.Pos {
	if j := r.jointNamed(name); j != nil {
		return j.Pos
	}
	return parts.Pos{File: r.job.File, Line: 1, Column: 1}
}

func (r *reviewer) jointNamed(name string) *parts.Joint {
	for _, j := range r.job.Joints {
		if j.Name.Value == name {
			return j
		}
	}
	return nil
}

// trap looks for joints that also go together a wrong way. With TOP marked on
// both parts that is a note, as the sequence sheet shows the marks.
func trap(r *reviewer) {
	for _, j := range r.pl.Joints {
		var turned, flipped, out []string
		for _, t := range j.Traps {
			if len(t.Out) == 0 {
				continue
			}
			if out == nil {
				out = t.Out
			}
			if t.Flip {
				flipped = append(flipped, number(t.TurnDeg)+"°")
			} else {
				turned = append(turned, number(t.TurnDeg)+"°")
			}
		}
		if out == nil {
			continue
		}
		what := j.Title + " also goes together wrong:"
		if turned != nil {
			what += " turned by " + strings.Join(turned, ", ")
		}
		if flipped != nil {
			if turned != nil {
				what += ";"
			}
			what += " the other way round at " + strings.Join(flipped, ", ")
		}
		severity, fix := Note, strings.Join(j.Remedies, " ")
		if fix == "" {
			fix = "Line up the TOP marks."
		}
		for _, end := range []plan.JointEnd{j.A, j.B} {
			if q := r.pl.Part(end.Part); q != nil && q.Top == "" {
				severity, fix = Check, "Mark TOP on "+q.Title+". "+fix
			}
		}
		r.add(Finding{
			Severity: severity, Part: j.Name, Pos: r.jointPos(j.Name), What: what,
			Numbers: "then out of place: " + few(out),
			Rule:    "a part that can be put on wrong one day is", Source: practice, Fix: fix,
		})
	}
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
func weldFirst(r *reviewer) {
	last := map[string]int{}
	for i, j := range r.pl.Joints {
		if j.Weld != nil {
			last[j.A.Part], last[j.B.Part] = i, i
		}
	}
	for i, j := range r.pl.Joints {
		if j.Weld == nil {
			continue
		}
		for _, end := range []plan.JointEnd{j.A, j.B} {
			p, q := partNamed(r.job, end.Part), r.pl.Part(end.Part)
			if p == nil || q == nil || last[end.Part] != i {
				continue
			}
			v := newView(r, p, q)
			for _, steps := range [][]cylinder{v.outside, v.inside} {
				for _, c := range steps {
					if fine(c.size.Fit, 9) {
						r.weldMoves(j, end, c)
					}
				}
			}
		}
	}
}

func (r *reviewer) weldMoves(j *plan.JointPlan, end plan.JointEnd, c cylinder) {
	numbers := r.mm(2*c.radiusMm) + " " + c.size.Fit.Class.Value
	if j.Weld.BoreLeaveMm > 0 {
		numbers += "; leave " + r.mm(j.Weld.BoreLeaveMm) + " on diameter and " + r.mm(j.Weld.SquareUpMm) + " on each face"
	}
	r.add(Finding{
		Severity: Check, Part: j.Name, Pos: r.jointPos(j.Name),
		What:    j.Title + ": " + end.Title + " " + c.name + " is finished on its own sheet, before the weld that distorts it",
		Numbers: numbers,
		Rule:    "fine sizes are finished after the last weld near them", Source: practice,
		Fix: "rough it before the weld, finish it after, or weld far enough away",
	})
}

// fitSides looks for press fits whose classes are on one part's drawing only,
// or differ from those of the joint.
func fitSides(r *reviewer) {
	for _, j := range r.job.Joints {
		p := j.Press
		if p == nil {
			continue
		}
		bore, shaft, _ := strings.Cut(p.Fit.Value, "/")
		a, okA := r.sizeAt(p.Bore)
		b, okB := r.sizeAt(p.Shaft)
		if !okA || !okB || a.Fit.LightPress.Set() {
			continue // a light press follows the mate as measured
		}
		for _, side := range []struct {
			ref   parts.JointRef
			size  parts.Size
			class string
		}{{p.Bore, a, bore}, {p.Shaft, b, shaft}} {
			drawn := side.size.Fit.Class.Value
			f := Finding{
				Part: j.Name.Value, Pos: side.ref.Pos, Source: "ISO 286-1",
				Rule: "a fit stands on both drawings, as each part is made and checked by its own sheet",
				Fix:  "write the class at both features",
			}
			switch {
			case side.size.Fit.Pos.Line == 0 && side.class != "":
				f.Severity, f.What = Check, side.ref.Part+"."+side.ref.Feature+" has no fit on its own drawing"
				f.Numbers = "the joint asks " + p.Fit.Value
			case drawn != "" && side.class != "" && drawn != side.class:
				f.Severity, f.What = Stop, side.ref.Part+"."+side.ref.Feature+" is drawn with another fit than the joint's"
				f.Numbers = "drawn " + drawn + ", the joint asks " + side.class
			default:
				continue
			}
			r.add(f)
		}
	}
}

// sizeAt finds the size of a round feature.
func (r *reviewer) sizeAt(ref parts.JointRef) (parts.Size, bool) {
	p := partNamed(r.job, ref.Part)
	if p == nil {
		return parts.Size{}, false
	}
	q := r.pl.Part(ref.Part)
	if q == nil {
		return parts.Size{}, false
	}
	v := newView(r, p, q)
	for _, steps := range [][]cylinder{v.outside, v.inside} {
		if c := named(steps, ref.Feature); c != nil {
			return c.size, true
		}
	}
	return parts.Size{}, false
}
