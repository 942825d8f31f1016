package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// path looks for seats that what sits on them cannot reach: from both
// ends of the part something larger is in the way.
func path(v *view) {
	for _, side := range v.sides() {
		for i, c := range side.steps {
			if c.step == nil || c.step.Seat.Value == "" || c.size.Fit.Pos.Line == 0 {
				continue
			}
			front, back := inTheWay(side.steps[:i], c, side.sign), inTheWay(side.steps[i+1:], c, side.sign)
			if front == nil || back == nil {
				continue
			}
			v.report(Stop, c.name, c.pos, Finding{
				What:    "what sits on " + c.name + " cannot get there",
				Numbers: c.name + " " + v.mm(2*c.radiusMm) + "; " + front.name + " " + v.mm(2*front.radiusMm) + " and " + back.name + " " + v.mm(2*back.radiusMm) + " are in the way",
				OverMm:  over(2 * math.Min(side.sign*(front.radiusMm-c.radiusMm), side.sign*(back.radiusMm-c.radiusMm))),
				Rule:    "a ring reaches its seat from one end", Source: "by geometry", Fix: "a step that lets it pass, on one side",
			})
		}
	}
}

// inTheWay is the step that keeps a ring from passing, or nil. The tenth of a
// millimetre lets steps with other limits of the same nominal size through.
func inTheWay(steps []cylinder, seat cylinder, sign float64) *cylinder {
	const sameMm = 0.1
	return seq.At(steps, func(s *cylinder) bool { return sign*(s.radiusMm-seat.radiusMm) > sameMm/2 })
}

// seal is the radial shaft seal that a step is the seat of, nil for another.
func (v *view) seal(c cylinder) *part.SealSize { return part.SealOf(c.step.Seat.Value, v.job.Units) }

// seatWords looks for seats that are not those of what the drawing says sits
// on them: a seal of other sizes, a bearing that its joint does not name, or a
// part of the job with another bore.
func seatWords(v *view) {
	for i, c := range slices.Concat(v.outside, v.inside) {
		if c.step == nil || c.step.Seat.Value == "" {
			continue
		}
		inside := i >= len(v.outside)
		if m := v.seal(c); m != nil {
			v.sealSeat(c, m, inside)
			if other := v.sealBore(m); !inside && other != "" {
				v.report(Check, c.name, c.pos, Finding{
					What: c.name + " is the land of a seal that no bore of the job takes", Numbers: m.Name + "; " + other,
					Rule: "the shaft names the seal that its housing takes", Source: "by the job", Fix: "one seal on both drawings",
				})
			}
		}
		v.bearingSeat(c)
		if !inside {
			v.partSeat(c)
		}
	}
}

// sealBore is what the bores for seals on a shaft of that size name, if none names this
// seal.
func (v *view) sealBore(m *part.SealSize) (other string) {
	for _, of := range v.all() {
		for _, c := range of.inside {
			if c.step == nil {
				continue
			}
			if o := v.seal(c); o != nil && *o == *m {
				return ""
			} else if o != nil && o.ShaftMm == m.ShaftMm {
				other = c.name + " of " + of.p.Title.Value + " takes " + o.Name
			}
		}
	}
	return other
}

func (v *view) sealSeat(c cylinder, m *part.SealSize, inside bool) {
	wanted, width := m.ShaftMm, m.WidthMm
	if inside {
		wanted = m.BoreMm
	}
	if got := 2 * c.radiusMm; math.Abs(got-wanted) > slackMm {
		v.report(Stop, c.name, c.pos, Finding{
			What: c.name + " has not the size of its seal " + m.Name, Numbers: v.mm(got) + ", the seal has " + v.mm(wanted),
			Rule: "a seal is named by shaft, bore and width", Source: "ISO 6194-1", Fix: "the size of the seal, or the seal of the size",
		})
	}
	if long := c.toMm - c.fromMm; long < width-slackMm {
		v.report(Check, c.name, c.pos, Finding{
			What: c.name + " is shorter than its seal " + m.Name, Numbers: v.mm(long) + " for " + v.mm(width), LeftMm: left(long),
			Rule: "a seal lies in its seat over its whole width", Source: "by geometry", Fix: "a longer seat, or a narrower seal",
		})
	}
}

// bearingSeat compares the bearing that a seat names with that of its joint.
func (v *view) bearingSeat(c cylinder) {
	words := strings.Fields(c.step.Seat.Value)
	if len(words) < 2 || words[0] != "bearing" {
		return
	}
	for j, b := range v.bearings() {
		if j.Names(v.p.Name.Value, c.name) && !strings.Contains(b.Bearing.Value, words[1]) {
			v.report(Stop, c.name, c.step.Seat.Pos, Finding{
				What: c.name + " says bearing " + words[1] + ", and the joint " + j.Name.Value + " has " + b.Bearing.Value,
				Rule: "drawing and joint name one bearing", Source: "by the job", Fix: "the same designation in both places",
			})
		}
	}
}

// partSeat compares an outside with the bore of the flat part of the job that
// its seat names.
func (v *view) partSeat(c cylinder) {
	for _, p := range v.job.Parts {
		if p.Bore == nil || p == v.p || !seatNames(c.step.Seat.Value, p) {
			continue
		}
		bore := p.Bore.Size.Nominal.Mm
		if math.Abs(bore-2*c.radiusMm) <= slackMm {
			continue
		}
		v.report(Stop, c.name, c.pos, Finding{
			What: c.name + " is the seat of " + p.Title.Value + ", whose bore is another size", Numbers: v.mm(2*c.radiusMm) + " in " + v.mm(bore),
			Rule: "seat and bore have one nominal size", Source: "ISO 286-1", Fix: "the same nominal size on both drawings",
		})
	}
}

// seatNames tells whether the words of a seat name a part, by its title or its
// name.
func seatNames(seat string, p *parts.Part) bool {
	return titled(seat, p) || strings.Contains(" "+strings.ToLower(seat)+" ", " "+strings.ToLower(p.Name.Value)+" ")
}

// titled tells whether words have the title of a part.
func titled(words string, p *parts.Part) bool {
	return strings.Contains(" "+strings.ToLower(words)+" ", " "+strings.ToLower(p.Title.Value)+" ")
}

// The roughest a bearing's seat and the land of a seal's lip may be, Ra in µm.
const (
	seatRa = 3.2 // common practice, no source: makers ask for 0.8 to 1.6
	lipRa  = 0.8 // ISO 6194-1: 0.2 to 0.8
	// sealBoreRa is that of the bore a seal is pressed into, for rubber outside.
	sealBoreRa = 6.3 // DIN 3760 as seal makers print it
)

// rough looks for seats of bearings and of seal lips that are too rough.
func rough(v *view) {
	for i, c := range slices.Concat(v.outside, v.inside) {
		if c.step == nil {
			continue
		}
		ra := part.RaUm(part.Finish(v.w, c.step.Finish.Value))
		most, source := 0.0, practice
		switch {
		case strings.HasPrefix(c.step.Seat.Value, "bearing "):
			most = seatRa
		case i < len(v.outside) && v.seal(c) != nil:
			most, source = lipRa, "ISO 6194-1"
		case v.seal(c) != nil:
			most, source = sealBoreRa, "DIN 3760 as seal makers print it"
		}
		if most == 0 || ra <= most+slackMm {
			continue
		}
		v.report(Check, c.name, c.step.Finish.Pos, Finding{
			What: c.name + " is too rough for what runs or sits on it", Numbers: part.Finish(v.w, "Ra "+number(ra)+" µm") + ", wanted at most " + part.Finish(v.w, "Ra "+number(most)+" µm"),
			Rule: "a seat is turned fine, and a lip runs on a ground land", Source: source, Fix: "a finer finish",
		})
	}
}

// leadIn looks for seats that something is pressed onto or into, and for turned threads
// that a nut or a screw starts on, without a chamfer at the end of the part where it does.
func leadIn(v *view) {
	for k, steps := range [][]cylinder{v.outside, v.inside} {
		for i := range steps {
			if steps[i].step != nil {
				v.leadInAt(steps, i, k == 0)
			}
		}
	}
}

// leadInAt looks at one of the steps of the outside or the inside.
func (v *view) leadInAt(steps []cylinder, i int, outside bool) {
	c, first, last := steps[i], i == 0, i == len(steps)-1
	var f Finding
	switch {
	case c.size.Thread.Value != "":
		first = first && c.fromMm < slackMm || outside && c.passes(steps[:i])
		last = last && c.toMm > v.lengthMm-slackMm || outside && c.passes(steps[i+1:])
		f = Finding{What: "a thread is started", Numbers: c.size.Thread.Value, Rule: "a thread starts at a chamfer", Fix: "size: the depth of the thread, angle: 45"}
	case c.step.Seat.Value != "" && pressed(c):
		f = Finding{What: "something is pressed over it", Numbers: c.step.Seat.Value + " on " + v.mm(2*c.radiusMm), Rule: "a press fit has a lead-in", Fix: "size: " + v.mm(1) + ", angle: 30"}
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

// passes tells whether a nut reaches an outside thread over all of these steps.
func (c cylinder) passes(steps []cylinder) bool {
	return !slices.ContainsFunc(steps, func(o cylinder) bool { return o.radiusMm >= c.radiusMm-slackMm })
}

// noLeadIn reports a chamfer that the edge of a step at a face lacks: why, and with what size.
func (v *view) noLeadIn(c cylinder, face parts.Face, f Finding) {
	edge := c.name + "-" + string(face)
	if slices.ContainsFunc(v.p.Chamfers, func(h parts.Chamfer) bool { return h.Edge.Value == edge }) {
		return
	}
	f.What, f.Source = edge+" has no chamfer, and "+f.What, practice
	f.Fix = "add a chamfer: {edge: " + edge + ", " + f.Fix + ", for: lead-in}"
	v.report(Check, c.name, c.pos, f)
}

// pressed tells seats that hold by interference, or may: of bearings with a
// fit, and of classes from j on.
func pressed(c cylinder) bool {
	if strings.HasPrefix(c.step.Seat.Value, "bearing ") && c.size.Fit.Pos.Line > 0 {
		return true
	}
	class := strings.ToLower(strings.TrimRight(c.size.Fit.Class.Value, "0123456789"))
	return class >= "j" && class != "js" || class == "js"
}

// limitsOff looks for limits that lie far from the nominal size they belong to.
func limitsOff(v *view) {
	const mostMm = 0.25
	for _, c := range v.outside {
		v.asMeasured(c)
	}
	for _, c := range slices.Concat(v.outside, v.inside) {
		l := c.size.Fit.Limits
		if len(l) != 2 {
			continue
		}
		nominal := c.size.Nominal.Mm
		off := math.Max(l[0].Mm-nominal, nominal-l[1].Mm)
		if off <= mostMm+slackMm {
			continue
		}
		v.report(Check, c.name, c.pos, Finding{
			What: "the limits of " + c.name + " are not those of its nominal size", Numbers: v.mm(l[0].Mm) + " to " + v.mm(l[1].Mm) + " for " + v.mm(nominal),
			OverMm: over(off), Rule: "limits lie at the nominal size", Fix: "the nominal size or the limits are wrong",
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

// asMeasured looks at a step that is turned to what its counterpart measures: to a gap that it
// goes in by and that centres it, and near the size that is drawn.
func (v *view) asMeasured(c cylinder) {
	gap := c.size.Fit.Measured
	if len(gap) != 2 || c.step == nil {
		return
	}
	for _, tube := range v.all() {
		if tube == v || tube.p.Kind != parts.Tube || !seatNames(c.step.Seat.Value, tube.p) {
			continue
		}
		inner, _, ok := tube.q.Section.RadiiAt(tube.lengthMm / 2)
		bore, low, high, drawn := 2*inner, gap[0].Mm, gap[1].Mm, c.size.Nominal.Mm
		f := Finding{Numbers: v.w.Limits(low, high) + " in a bore of " + v.mm(bore), Source: practice}
		switch off := math.Max(bore-high-drawn, drawn-(bore-low)); {
		case !ok:
			continue
		case low < leastMeasured*bore:
			f.What, f.LeftMm = c.name+" does not go into a tube as it comes", left(low)
			f.Rule, f.Fix = "a tube that is not bored is out of round, by its weld and by what is welded to it", "measured: at least "+v.mm(leastMeasured*bore)
		case high > mostMeasured*bore:
			f.What, f.OverMm = c.name+" is so loose in its tube that it centres nothing", over(high)
			f.Rule, f.Fix = "a spigot is smaller than its bore by a hundredth or so at the most", "measured: at most "+v.mm(mostMeasured*bore)
		case off > drawnMeasured*bore:
			f.What, f.OverMm = c.name+" is not drawn at the size that the tube and its gap give", over(off)
			f.Numbers += ", drawn " + v.mm(drawn)
			f.Rule, f.Fix = "words and numbers of one drawing agree", "the diameter, or the gap"
		default:
			continue
		}
		v.report(Check, c.name, c.pos, f)
	}
}

// nutThread looks for a screw and a nut of the job that bear the same name and
// have other threads, and for a bore of the nut that its screw does not pass.
func nutThread(v *view) {
	for i, nut := range v.inside {
		for _, w := range v.all() {
			if screw := named(w.outside, nut.name); nut.thread != nil && screw != nil && screw.thread != nil && w != v {
				v.nutOn(w.p, i, screw.step, nut.thread, screw.thread)
			}
		}
	}
}

// nutOn compares an inside thread of a part with the screw in it.
func (v *view) nutOn(q *parts.Part, i int, screw *parts.Step, in, out *threads.Thread) {
	r, p, nut := v.reviewer, v.p, v.inside[i].step
	if in.Designation != out.Designation {
		r.add(Finding{
			Severity: Stop, Part: p.Name.Value, Feature: nut.Name.Value, Pos: nut.Pos,
			What: p.Title.Value + " and " + q.Title.Value + " have other threads at " + nut.Name.Value, Numbers: in.Designation + " and " + out.Designation,
			Rule: "a nut has the thread of its screw", Source: "by the job", Fix: "the same thread on both drawings",
		})
		return
	}
	r.seizes(p, q, nut, *out)
	if nut.Length.Mm >= motionShare*out.MajorMm {
		r.screwPasses(p, q, screw)
	}
	if screw.Length.Mm <= nut.Length.Mm {
		if has, wants := screw.Length.Mm, math.Min(nut.Length.Mm, out.MajorMm); has < wants-slackMm {
			r.add(Finding{
				Part: q.Name.Value, Feature: screw.Name.Value, Pos: screw.Pos, What: q.Title.Value + " has little thread for " + p.Title.Value,
				Numbers: r.mm(has) + " in a nut of " + r.mm(nut.Length.Mm) + ", wanted " + r.mm(wants), LeftMm: left(has),
				Rule: "a nut is filled, or at least one diameter of it", Fix: "a longer thread, or a thinner nut",
			})
		}
		return
	}
	for _, next := range beside(v.inside, i) {
		if c := next.step; c.Size.Thread.Value == "" && c.Size.Nominal.Mm < out.MajorMm-slackMm {
			r.add(Finding{
				Severity: Stop, Part: p.Name.Value, Feature: c.Name.Value, Pos: c.Pos, What: q.Title.Value + " does not pass " + c.Name.Value + " of " + p.Title.Value,
				Numbers: r.mm(out.MajorMm) + " of " + out.Designation + " through " + r.mm(c.Size.Nominal.Mm),
				Rule:    "a screw that is longer than its nut comes out behind it", Source: "by geometry", Fix: "a bore wider than the thread",
			})
		}
	}
}
