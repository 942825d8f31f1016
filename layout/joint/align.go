package joint

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// clocks are a feature's clock angles in the assembly.
func (j *assembly) clocks(f feature) ([]float64, bool) {
	p := j.at(f.Instance())
	if p == nil {
		return nil, false
	}
	return seq.Map(f.clocks(), p.at.clock), true
}

// aligned finds the clock angle that all features of a rule share, with the
// parts in moved displaced by m.
func (j *assembly) aligned(rule parts.LineRule, moved []parts.Instance, m placement) (deg float64, ok bool) {
	common := []float64(nil)
	if rule.Up {
		common = []float64{0}
	}
	for i, ref := range rule.Refs {
		f := j.find(ref)
		angles, placed := j.clocks(f)
		if !placed {
			return 0, false
		}
		if slices.Contains(moved, f.Instance()) {
			for k := range angles {
				angles[k] = m.clock(angles[k])
			}
		}
		if i == 0 && !rule.Up {
			common = angles
			continue
		}
		common = seq.Keep(common, func(a float64) bool {
			return slices.ContainsFunc(angles, func(b float64) bool { return apart(a, b) <= alignDeg })
		})
	}
	if len(common) == 0 {
		return 0, false
	}
	return slices.Min(common), true
}

// align verifies what must line up.
func (j *making) align(t *joint) {
	for _, rule := range t.in.InLine {
		bad := false
		for _, ref := range rule.Refs {
			f := j.find(ref)
			if len(f.clocks()) == 0 {
				t.refuse(ref.Pos, plan.NoClockAngle, plan.Named(f.text()))
				bad = true
			} else if j.at(f.Instance()) == nil {
				t.refuse(ref.Pos, plan.NotPlaced, plan.Named(f.title()))
				bad = true
			}
		}
		if bad {
			continue
		}
		deg, ok := j.aligned(rule, nil, still)
		if ok {
			t.out.InLine = append(t.out.InLine, plan.InLine{What: j.ruleText(rule), Deg: deg})
			continue
		}
		var where []string
		for _, ref := range rule.Refs {
			angles, _ := j.clocks(j.find(ref))
			where = append(where, ref.Part+"."+ref.Feature+" at "+words.Degrees(angles))
		}
		if rule.Up {
			where = append(where, "up is 0°")
		}
		if turn, ok := j.rotationThatAligns(t); ok {
			t.refuse(rule.Pos, plan.OutOfLineTurn, plan.Named(strings.Join(where, ", ")), plan.Named(words.Trim(turn, 2)))
		} else {
			t.refuse(rule.Pos, plan.OutOfLine, plan.Named(strings.Join(where, ", ")))
		}
	}
}

// rotationThatAligns looks for a rotate: that lines up all that the joint wants in line and,
// for bolts, keeps the holes matching.
func (j *making) rotationThatAligns(t *joint) (deg float64, ok bool) {
	if !t.axis {
		return 0, false
	}
	moved, tied := j.side(t, without(j.all, t))
	if tied {
		return 0, false
	}
	var turns []float64
	if t.is(parts.BoltKind) {
		level := seq.Keep(j.matches(t), func(m placement) bool { return !m.turned() })
		turns = seq.Map(level, func(m placement) float64 { return m.turn })
	} else {
		turns = seq.Flat(t.in.InLine, func(rule parts.LineRule) []float64 { return j.turnsInto(rule, moved) })
		slices.Sort(turns)
	}
	b := j.at(t.b.Instance())
	for _, turn := range turns {
		off := func(rule parts.LineRule) bool { _, ok := j.aligned(rule, moved, turnedBy(turn)); return !ok }
		if !slices.ContainsFunc(t.in.InLine, off) {
			return geom.OnClock(t.in.Rotate.Deg + b.at.s*turn), true
		}
	}
	return 0, false
}

// turnsInto are the turns of what is moved that bring two features of a rule in line.
func (j *making) turnsInto(rule parts.LineRule, moved []parts.Instance) []float64 {
	var in, out []float64
	if rule.Up {
		out = append(out, 0)
	}
	for _, ref := range rule.Refs {
		f := j.find(ref)
		if angles, _ := j.clocks(f); slices.Contains(moved, f.Instance()) {
			in = append(in, angles...)
		} else {
			out = append(out, angles...)
		}
	}
	return seq.Flat(in, func(a float64) []float64 { return seq.Map(out, func(b float64) float64 { return geom.OnClock(b - a) }) })
}

func without(all []*joint, t *joint) []*joint {
	return seq.Keep(all, func(o *joint) bool { return o != t })
}

func (j *shop) ruleText(rule parts.LineRule) string {
	t := seq.Map(rule.Refs, func(ref parts.JointRef) string { return j.find(ref).text() })
	if rule.Up {
		t = append(t, "up")
	}
	return strings.Join(t, " – ")
}

// matches lists the wrong ways in which a bolted joint's holes match.
func (j *making) matches(t *joint) []placement {
	return motions(j.pattern(t.a), j.pattern(t.b), j.leeway(t), j.canFlip(t))
}

// traps finds the wrong ways in which the holes match.
func (boltKind) traps(j *making, t *joint, moved []parts.Instance) {
	harmless, serious := 0, false
	for _, m := range j.matches(t) {
		out, breaks := j.outOfPlace(t, moved, m)
		if len(out) == 0 {
			harmless++
			continue
		}
		t.out.Traps = append(t.out.Traps, plan.Trap{TurnDeg: m.turn, OtherWay: m.turned(), Breaks: breaks, Out: out})
		serious = serious || breaks || m.turned()
	}
	serious = j.otherPlaces(t) || serious
	if harmless > 0 {
		t.figure("wrong ways that do no harm", strconv.Itoa(harmless)+", as the parts look the same", "")
	}
	j.cures(t, serious)
}

// witness asks for a mark where a round joint turns freely and something must
// line up.
func (j *making) witness(t *joint, moved []parts.Instance) {
	if t.a.step == nil || t.b.step == nil {
		return
	}
	keep, needed := "", turned(t.a.r.Out) && turned(t.b.r.Out)
	rules := append(slices.Clone(t.in.InLine), j.rules()...)
	if rule, ok := seq.Find(rules, func(rule parts.LineRule) bool { return j.crosses(rule, moved) }); ok {
		keep, needed = ", and keep "+j.ruleText(rule)+" in line", true
	}
	if needed {
		t.scribe(true, "Nothing but a mark holds the clock angle of this round joint: scribe "+t.a.title()+" and "+t.b.title()+
			" at "+words.Angle(j.markDeg(t))+" (assembly clock) before joining"+keep+".")
	}
}

// turned tells whether a part has something off its axis that lies elsewhere when it is
// turned: holes on a face or round about, a keyway, a branch end.
func turned(p *plan.PartPlan) bool {
	return len(p.Radials)+len(p.Keyways) > 0 ||
		slices.ContainsFunc(p.Developments, func(d plan.Development) bool { return d.Kind == plan.BranchPattern }) ||
		slices.ContainsFunc(p.Faces, func(f *plan.Face) bool {
			return slices.ContainsFunc(f.Holes, func(h plan.Hole) bool { return h.RadiusMm != 0 }) || len(f.Slots) > 0
		})
}

// rules are the align rules of all joints whose parts are placed.
func (j *shop) rules() []parts.LineRule {
	return seq.Flat(j.job.Joints, func(in *parts.Joint) []parts.LineRule { return in.InLine })
}

// crosses tells whether a rule ties moved parts to parts that stay.
func (j *shop) crosses(rule parts.LineRule, moved []parts.Instance) bool {
	comes := func(ref parts.JointRef) bool { return slices.Contains(moved, ref.Instance()) }
	stays := func(ref parts.JointRef) bool { return !comes(ref) }
	return slices.ContainsFunc(rule.Refs, comes) && (rule.Up || slices.ContainsFunc(rule.Refs, stays))
}

// outOfPlace lists what would lie wrong with the moved parts displaced.
func (j *making) outOfPlace(t *joint, moved []parts.Instance, m placement) (out []plan.Out, breaks bool) {
	var named []parts.JointRef
	for _, rule := range j.rules() {
		if !j.crosses(rule, moved) {
			continue
		}
		right, ok := j.aligned(rule, nil, still)
		if !ok {
			continue
		}
		named = append(named, rule.Refs...)
		if _, still := j.aligned(rule, moved, m); !still {
			breaks = true
			for _, ref := range rule.Refs {
				if f := j.find(ref); slices.Contains(moved, f.Instance()) {
					out = seq.Add(out, clocked(f.text(), m, right))
				}
			}
		}
	}
	for _, i := range moved {
		p := j.at(i)
		if p == nil || p.group != j.at(t.a.Instance()).group {
			continue // it has another axis
		}
		out = seq.Add(out, j.shifted(t, *p, m, named)...)
	}
	if m.turned() {
		out = seq.Add(out, j.changedOver(t, moved)...)
	}
	return out, breaks
}

// changedOver lists what of a joint's first part lies on the wrong side once that is turned end for end.
func (j *making) changedOver(t *joint, moved []parts.Instance) (out []plan.Out) {
	say := func(what string) { out = append(out, plan.Out{What: what}) }
	if g := t.a.group; g != nil && g.Hole != nil && (g.Hole.Counterbore != nil || g.Hole.Countersink != nil) {
		sunk := "counterbores"
		if g.Hole.Counterbore == nil {
			sunk = "countersinks"
		}
		say("heads on the wrong side of " + t.a.title() + ": the " + sunk + " face the joint")
	}
	for _, c := range t.a.r.Part.Chamfers {
		switch {
		case c.For != "weld" && c.For != "lead-in":
		case !t.a.r.Mirrored(c.Edge.Value):
			say(c.Word() + " " + words.Spaced(c.Edge.Value) + " of " + t.a.title() + " on the wrong side")
		case !j.endForEnd(t, moved):
			say("front and back of " + t.a.title() + " changed over")
		}
	}
	return out
}

// endForEnd tells whether what comes with the first part of a joint looks the same turned end for end there:
// each of it has its like at the mirrored place, looking the other way or the same from both ends.
func (j *making) endForEnd(t *joint, moved []parts.Instance) bool {
	first := j.at(t.a.Instance())
	about := first.along()
	if t.a.step != nil {
		about = first.at.span(t.a.step.Span())
	}
	return !slices.ContainsFunc(moved, func(i parts.Instance) bool {
		p := j.at(i)
		if p == nil || p.group != first.group {
			return true
		}
		return !slices.ContainsFunc(moved, func(k parts.Instance) bool {
			o := j.at(k)
			if o == nil || o.Part != p.Part || o.group != p.group || o.at.s == p.at.s && !p.r.EndForEnd() {
				return false
			}
			return geom.Alike(o.along().FromMm+p.along().ToMm, about.FromMm+about.ToMm)
		})
	})
}

// clocked is what a motion puts at another angle than its right one.
func clocked(what string, m placement, rightDeg float64) plan.Out {
	return plan.Out{What: what, Clocked: true, AtDeg: words.Round(m.clock(rightDeg), 2), RightDeg: words.Round(rightDeg, 2)}
}

// shifted lists the features of one part that change place, other than those
// that a rule names.
func (j *making) shifted(t *joint, p placedPart, m placement, named []parts.JointRef) (out []plan.Out) {
	title := copyTitle(p.r, p.Copy)
	for rad := range seq.Refs(p.r.Radials) {
		name := rad.In.Name.Value
		angles := seq.Map(rad.Rows, func(row plan.RadialRow) float64 { return p.at.clock(row.ClockDeg) })
		leaves := func(a float64) bool {
			return !slices.ContainsFunc(angles, func(b float64) bool { return apart(m.clock(a), b) <= alignDeg })
		}
		if slices.ContainsFunc(angles, leaves) && !isNamed(p.Instance, named, name) {
			o := clocked(title+" "+words.Spaced(name), m, angles[0])
			o.Unruled = true
			out = append(out, o)
		}
	}
	for f := range seq.Refs(p.r.Flats) {
		deg := p.at.clock(f.Row.ClockDeg)
		if every := 360 / float64(f.Row.Sides); math.Abs(math.Remainder(m.clock(deg)-deg, every)) > alignDeg && !isNamed(p.Instance, named, f.Row.Name) {
			o := clocked(title+" "+words.Spaced(f.Row.Name), m, deg)
			o.Unruled = true
			out = append(out, o)
		}
	}
	for i := range p.r.Groups {
		f := feature{ref: parts.JointRef{Part: p.Part, Copy: p.Copy, Feature: p.r.Groups[i].Group.Name}, r: p.r, group: &p.r.Groups[i]}
		if p.Instance == t.a.Instance() && f.group == t.a.group {
			continue
		}
		pts := j.pattern(f)
		if !isNamed(p.Instance, named, f.ref.Feature) && !meets(pts, pts, m, leeway{mm: 0.25}) {
			out = append(out, plan.Out{What: f.text(), Elsewhere: true, Unruled: true})
		} else if m.turned() && !f.group.Through {
			out = append(out, plan.Out{What: f.text() + " on the wrong side"})
		}
	}
	return out
}
