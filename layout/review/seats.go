package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// path looks for seats that what sits on them cannot reach: from both
// ends of the part something larger is in the way.
func (v *view) path(c *cylinder) {
	if shut := c.inTheWay(); c.Seat != "" && c.fitted() && len(shut) == 2 {
		v.report(Stop, c.Name, c.Drawn.Pos, Finding{
			What: "what sits on " + c.Name + " cannot get there", Numbers: c.Name + " " + v.mm(2*c.RadiusMm()) + v.inWords(shut),
			OverMm: over(2 * seq.Least(shut, c.outBy)),
			Rule:   "a ring reaches its seat from one end", Source: "by geometry", Fix: "a step that lets it pass, on one side",
		})
	}
}

// seatWords looks for seats that are not those of what the drawing says sits
// on them: a seal of other sizes, a bearing that its joint does not name, or a
// part of the job with another bore.
func (v *view) seatWords(c *cylinder) {
	if m := v.seal(c); m != nil {
		v.sealSeat(c, m)
		if other := v.sealBore(m); !c.Inside && other != "" {
			v.report(Check, c.Name, c.Drawn.Pos, Finding{
				What: c.Name + " is the land of a seal that no bore of the job takes", Numbers: m.Name + "; " + other,
				Rule: "the shaft names the seal that its housing takes", Source: "by the job", Fix: "one seal on both drawings",
			})
		}
	}
	v.bearingSeat(c)
	if !c.Inside {
		v.partSeat(c)
	}
}

// sealBore is what the bores for seals on a shaft of that size name, if none names this
// seal.
func (v *view) sealBore(m *part.SealSize) (other string) {
	for _, of := range v.all() {
		for _, c := range of.inside {
			if o := v.seal(c); o != nil && *o == *m {
				return ""
			} else if o != nil && o.ShaftMm == m.ShaftMm {
				other = c.Name + " of " + of.p.Title.Value + " takes " + o.Name
			}
		}
	}
	return other
}

func (v *view) sealSeat(c *cylinder, m *part.SealSize) {
	wanted, width := words.Either(c.Inside, m.BoreMm, m.ShaftMm), m.WidthMm
	if got := 2 * c.RadiusMm(); !geom.Alike(got, wanted) {
		v.report(Stop, c.Name, c.Drawn.Pos, Finding{
			What: c.Name + " has not the size of its seal " + m.Name, Numbers: v.mm(got) + ", the seal has " + v.mm(wanted),
			Rule: "a seal is named by shaft, bore and width", Source: "ISO 6194-1", Fix: "the size of the seal, or the seal of the size",
		})
	}
	if long := c.LengthMm(); geom.Over(width, long) {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What: c.Name + " is shorter than its seal " + m.Name, Numbers: v.mm(long) + " for " + v.mm(width), LeftMm: left(long),
			Rule: "a seal lies in its seat over its whole width", Source: "by geometry", Fix: "a longer seat, or a narrower seal",
		})
	}
}

// bearingSeat compares the bearing that a seat names with that of its joint.
func (v *view) bearingSeat(c *cylinder) {
	words := strings.Fields(c.Seat)
	if len(words) < 2 || words[0] != "bearing" {
		return
	}
	for _, j := range v.job.Of(parts.BearingKind) {
		if j.Names(v.p.Name.Value, c.Name) && !strings.Contains(j.Bearing.Bearing.Value, words[1]) {
			v.report(Stop, c.Name, c.Drawn.Seat.Pos, Finding{
				What: c.Name + " says bearing " + words[1] + ", and the joint " + j.Name.Value + " has " + j.Bearing.Bearing.Value,
				Rule: "drawing and joint name one bearing", Source: "by the job", Fix: "the same designation in both places",
			})
		}
	}
}

// partSeat compares an outside with the bore of the flat part of the job that
// its seat names.
func (v *view) partSeat(c *cylinder) {
	for _, p := range v.job.Parts {
		if p.Bore == nil || p == v.p || !p.NamedIn(c.Seat) {
			continue
		}
		bore, same := p.Bore.Size.Nominal.Mm, func(mm float64) bool { return geom.Alike(mm, 2*c.RadiusMm()) }
		if same(bore) || slices.ContainsFunc(p.Holes, func(g parts.HoleGroup) bool { return same(g.Size.Size.Nominal.Mm) }) {
			continue
		}
		v.report(Stop, c.Name, c.Drawn.Pos, Finding{
			What: c.Name + " is the seat of " + p.Title.Value + ", whose bore is another size", Numbers: v.mm(2*c.RadiusMm()) + " in " + v.mm(bore),
			Rule: "seat and bore have one nominal size", Source: "ISO 286-1", Fix: "the same nominal size on both drawings",
		})
	}
}

// The roughest a bearing's seat and the land of a seal's lip may be, Ra in µm.
const (
	seatRa = 3.2 // common practice, no source: makers ask for 0.8 to 1.6
	lipRa  = 0.8 // ISO 6194-1: 0.2 to 0.8
	// sealBoreRa is that of the bore a seal is pressed into, for rubber outside.
	sealBoreRa = 6.3 // DIN 3760 as seal makers print it
)

// rough looks for seats of bearings and of seal lips that are too rough.
func (v *view) rough(c *cylinder) {
	ra := part.RaUm(part.Finish(v.w, c.Drawn.Finish.Value))
	most, source := 0.0, practice
	switch {
	case c.Bears():
		most = seatRa
	case !v.sealsOn(c):
		return
	case c.Inside:
		most, source = sealBoreRa, "DIN 3760 as seal makers print it"
	default:
		most, source = lipRa, "ISO 6194-1"
	}
	if !geom.Over(ra, most) {
		return
	}
	v.report(Check, c.Name, c.Drawn.Finish.Pos, Finding{
		What: c.Name + " is too rough for what runs or sits on it", Numbers: part.Finish(v.w, "Ra "+number(ra)+" µm") + ", wanted at most " + part.Finish(v.w, "Ra "+number(most)+" µm"),
		Rule: "a seat is turned fine, and a lip runs on a ground land", Source: source, Fix: "a finer finish",
	})
}

// leadIn looks for a seat that something is pressed onto or into, and for a turned thread
// that a nut or a screw starts on, without a chamfer at the end of the part where it does.
func (v *view) leadIn(c *cylinder) {
	first, last := len(c.before) == 0, len(c.behind) == 0
	var f Finding
	switch {
	case c.threaded():
		first = first && !geom.Some(c.FromMm) || !c.Inside && c.passes(c.before)
		last = last && !geom.Over(v.lengthMm, c.ToMm) || !c.Inside && c.passes(c.behind)
		f = Finding{What: "a thread is started", Numbers: c.Drawn.Size.Thread.Value, Rule: "a thread starts at a chamfer", Fix: "size: the depth of the thread, angle: 45"}
	case c.Seat != "" && pressed(c):
		f = Finding{What: words.Either(c.Inside, "something goes into it with a fit", "something is pressed over it"),
			Numbers: c.Seat + " on " + v.mm(2*c.RadiusMm()), Rule: "a press fit has a lead-in", Fix: "size: " + v.mm(1) + ", angle: 30"}
	default:
		return
	}
	if first {
		v.noLeadIn(c, parts.Front, f)
	}
	if last {
		v.noLeadIn(c, parts.Back, f)
	}
}

// steep looks for lead-ins of a plain step that a part is not led in by: its edge meets them as a step.
func (v *view) steep(c *parts.Chamfer) {
	const mostDeg = 45 // from the axis: common practice, no source
	name, _ := c.On()
	if step := v.step(name); c.For == "lead-in" && c.Angle.Deg > mostDeg && (step == nil || !step.threaded()) {
		v.report(Check, c.Edge.Value, c.Edge.Pos, Finding{
			What: "the lead-in " + c.Edge.Value + " is steep", Numbers: number(c.Angle.Deg) + "° from the axis, wanted at most " + number(mostDeg) + "°",
			Rule: "a lead-in slopes gently to the axis", Source: practice, Fix: "angle: 15 to 30, which counts from the axis",
		})
	}
}

// passes tells whether a nut reaches an outside thread over all of these steps.
func (c *cylinder) passes(steps []*cylinder) bool {
	return !slices.ContainsFunc(steps, func(o *cylinder) bool { return !geom.Over(c.RadiusMm(), o.RadiusMm()) })
}

// noLeadIn reports a chamfer that the edge of a step at a face lacks: why, and with what size.
func (v *view) noLeadIn(c *cylinder, face parts.Face, f Finding) {
	edge := c.Name + "-" + string(face)
	if v.chamferOn(c, face) != nil {
		return
	}
	f.What, f.Source = edge+" has no chamfer, and "+f.What, practice
	f.Fix = "add a chamfer: {edge: " + edge + ", " + f.Fix + ", for: lead-in}"
	v.report(Check, c.Name, c.Drawn.Pos, f)
}

// pressed tells seats that hold by interference, or may: of bearings with a
// fit, and of classes from j on.
func pressed(c *cylinder) bool {
	return c.Bears() && c.fitted() || strings.ToLower(c.Drawn.Size.Fit.Class.Value) >= "j"
}

// limitsOff looks for limits that lie far from the nominal size they belong to.
func (v *view) limitsOff(c *cylinder) {
	const mostMm = 0.25
	v.asMeasured(c)
	v.lengthOff(c)
	l, nominal := c.Drawn.Size.Fit.Limits, c.Drawn.Size.Nominal.Mm
	if len(l) != 2 {
		return
	}
	if off := math.Max(l[0].Mm-nominal, nominal-l[1].Mm); geom.Over(off, mostMm) {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What: "the limits of " + c.Name + " are not those of its nominal size", Numbers: v.mm(l[0].Mm) + " to " + v.mm(l[1].Mm) + " for " + v.mm(nominal),
			OverMm: over(off), Rule: "limits lie at the nominal size", Fix: "the nominal size or the limits are wrong",
		})
	}
}

// lengthOff looks at the limits of a length, which lie about it: all other places along the axis are worked out from the
// length.
func (v *view) lengthOff(c *cylinder) {
	l, long := c.Drawn.Limits, c.Drawn.Length.Mm
	if len(l) != 2 {
		return
	}
	if off := math.Max(l[0].Mm-long, long-l[1].Mm); geom.Some(off) {
		v.report(Check, c.Name, l[0].Pos, Finding{
			What: "the length of " + c.Name + " does not lie between its limits", Numbers: v.mm(l[0].Mm) + " to " + v.mm(l[1].Mm) + " for " + v.mm(long),
			OverMm: over(off), Rule: "limits lie about what they limit", Fix: "the length, by which all places are worked out, between them: the middle is " + v.mm((l[0].Mm+l[1].Mm)/2),
		})
	}
}

// What a spigot is smaller than the tube that it goes into as that is measured, as a share of
// its bore, and how far from what is drawn it comes. Common practice, no source: a welded tube
// that is not bored is out of round by a part in a thousand and more.
const (
	leastMeasured = 0.001
	mostMeasured  = 0.015
	drawnMeasured = 0.003
)

// joinedTo tells whether a joint holds a step and a feature of another part.
func (v *view) joinedTo(c *cylinder, to parts.Ref) bool {
	return slices.ContainsFunc(v.job.Joints, func(j *parts.Joint) bool { return j.Names(v.p.Name.Value, c.Name) && j.Names(to.Part, to.Feature) })
}

// asMeasured looks at a step that is turned to what its counterpart measures: to a gap that it goes in by and that centres
// it in a tube, else near the size that is drawn.
func (v *view) asMeasured(c *cylinder) {
	gap := c.Drawn.Size.Fit.Measured
	if len(gap) != 2 {
		return
	}
	to, near := v.measuredAgainst(c)
	if near == nil {
		return
	}
	if its := 2 * near.RadiusMm(); geom.Over(c.offGapMm(its), drawnMeasured*its) {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What:    c.Name + " is not drawn at the size that " + near.Name + " of " + to.p.Title.Value + " and its gap give",
			Numbers: v.w.Limits(gap[0].Mm, gap[1].Mm) + words.Either(near.Inside, " in a bore of ", " over ") + v.mm(its) + ", drawn " + v.mm(c.Drawn.Size.Nominal.Mm), OverMm: over(c.offGapMm(its)),
			Rule: "words and numbers of one drawing agree", Fix: "the diameter, or the gap",
		})
	}
}

// measuredAgainst is the step of another part that joints or words put against one that is turned to it as measured, the nearest
// of several; nil where there is none, or its tube is found not to fit.
func (v *view) measuredAgainst(c *cylinder) (to *view, near *cylinder) {
	for _, o := range v.all() {
		named := o.p.NamedIn(c.Seat) // what is welded there is held by its weld
		for _, s := range o.steps() {
			if o == v || s.Inside == c.Inside || !named && !v.joinedTo(c, parts.Ref{Part: o.p.Name.Value, Feature: s.Name}) {
				continue
			}
			if named && s.Inside && o.p.Kind == parts.Tube && v.gapInTube(c, 2*s.RadiusMm()) {
				return nil, nil
			}
			if near == nil || c.offGapMm(2*s.RadiusMm()) < c.offGapMm(2*near.RadiusMm()) {
				to, near = o, s
			}
		}
	}
	return to, near
}

// gapInTube reports a gap by which a spigot does not go into the bore of a tube, or is not centred there, and tells whether it did.
func (v *view) gapInTube(c *cylinder, bore float64) bool {
	low, high := c.Drawn.Size.Fit.Measured[0].Mm, c.Drawn.Size.Fit.Measured[1].Mm
	f := v.here(c.Name, c.Drawn.Pos)
	f.Numbers = v.w.Limits(low, high) + " in a bore of " + v.mm(bore)
	return v.firstOf(f,
		flaw{low < leastMeasured*bore, Finding{
			What: c.Name + " does not go into a tube as it comes", LeftMm: left(low),
			Rule: "a tube that is not bored is out of round, by its weld and by what is welded to it", Fix: "measured: at least " + v.mm(leastMeasured*bore)}},
		flaw{high > mostMeasured*bore, Finding{
			What: c.Name + " is so loose in its tube that it centres nothing", OverMm: over(high),
			Rule: "a spigot is smaller than its bore by a hundredth or so at the most", Fix: "measured: at most " + v.mm(mostMeasured*bore)}},
	)
}

// offGapMm is how far a step is drawn outside the sizes that a counterpart and the gap it is measured for give; less than
// nothing within them.
func (c *cylinder) offGapMm(its float64) float64 {
	gap := c.sign() * (its - c.Drawn.Size.Nominal.Mm)
	return math.Max(c.Drawn.Size.Fit.Measured[0].Mm-gap, gap-c.Drawn.Size.Fit.Measured[1].Mm)
}

// nutThread looks for a screw and a nut of the job that bear the same name and
// have other threads, and for a bore of the nut that its screw does not pass.
func (v *view) nutThread(nut *cylinder) {
	for _, w := range v.all() {
		if screw := named(w.outside, nut.Name); nut.Inside && nut.Size.Thread != nil && screw != nil && screw.Size.Thread != nil && w != v {
			v.nutOn(w, nut, screw)
		}
	}
}

// screwedElsewhere tells whether another part of the job has an outside thread that goes into one inside this: a step
// that only bears the same name is not its screw.
func (v *view) screwedElsewhere(nut *cylinder) bool {
	return slices.ContainsFunc(v.all(), func(w *view) bool {
		return w != v && slices.ContainsFunc(w.outside, func(c *cylinder) bool {
			return c.Size.Thread != nil && c.Size.Thread.Designation == nut.Size.Thread.Designation
		})
	})
}

// nutOn compares an inside thread of a part with the screw in it.
func (v *view) nutOn(w *view, nut, screw *cylinder) {
	title, its, out := v.p.Title.Value, w.p.Title.Value, screw.Size.Thread
	joined := slices.ContainsFunc(v.job.Of(parts.ScrewKind), func(j *parts.Joint) bool { return j.Holds(v.p.Name.Value) && j.Holds(w.p.Name.Value) })
	if nut.Size.Thread.Designation != out.Designation {
		if joined || v.screwedElsewhere(nut) {
			return
		}
		v.report(Stop, nut.Name, nut.Drawn.Pos, Finding{
			What: title + " and " + its + " have other threads at " + nut.Name, Numbers: nut.Size.Thread.Designation + " and " + out.Designation,
			Rule: "a nut has the thread of its screw", Source: "by the job", Fix: "the same thread on both drawings",
		})
		return
	}
	laid := slices.ContainsFunc(v.job.Loose, func(e parts.Loose) bool { return e.Part.Value == v.p.Name.Value && len(e.Lies) > 0 }) // it is known how far it goes on
	if !joined && (out.Lead != nil || nut.LengthMm() >= motionShare*out.MajorMm && !laid) {
		v.seizes(w, nut, out)
		v.screwPasses(v.p, w.p, screw)
	}
	if has, wants := screw.LengthMm(), math.Min(nut.LengthMm(), out.MajorMm); !geom.Over(has, nut.LengthMm()) {
		w.atLeast(screw.Name, screw.Drawn.Pos, has, wants, Finding{
			What: its + " has little thread for " + title, Numbers: " in a nut of " + v.mm(nut.LengthMm()) + ", wanted ",
			Rule: "a nut is filled, or at least one diameter of it", Fix: "a longer thread, or a thinner nut",
		})
		return
	}
	for _, c := range nut.next() {
		if !c.threaded() && geom.Over(out.MajorMm, c.Drawn.Size.Nominal.Mm) {
			v.report(Stop, c.Name, c.Drawn.Pos, Finding{
				What: its + " does not pass " + c.Name + " of " + title, Numbers: v.mm(out.MajorMm) + " of " + out.Designation + " through " + v.mm(c.Drawn.Size.Nominal.Mm),
				Rule: "a screw that is longer than its nut comes out behind it", Source: "by geometry", Fix: "a bore wider than the thread",
			})
		}
	}
}
