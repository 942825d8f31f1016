package review

import (
	"slices"
	"strings"

	"centrepop/layout/measured"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// mounted is a part with holes that a motor stands on, and the motor's flange as the job names it; nil where it does not.
type mounted struct {
	*view
	face *measured.Standard
}

// mounting is what a group of holes is for that screws are ordered for with a thing, if a motor stands there: that thing
// or another.
func (v *view) mounting(e *parts.Loose, g *parts.HoleGroup) (m mounted, ok bool) {
	if !v.stoodOn(e, g.Name.Value) {
		e = seq.At(v.job.Loose, func(o *parts.Loose) bool { return v.stoodOn(o, g.Name.Value) })
	}
	if e == nil {
		return m, false
	}
	return mounted{v, v.flangeOn(e, g)}, true
}

// nutsBought tells whether nuts of a thread are bought by themselves.
func (r *reviewer) nutsBought(thread string) bool {
	return slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool {
		m := nutAlone.FindStringSubmatch(e.Item.Value + "; " + e.Buy.Value)
		return m != nil && sameThread(m[1], thread)
	})
}

// screws looks at screws that are ordered for a motor on a group of holes, and tells whether it has found anything.
func (m mounted) screws(h *hole, o screwOrder, f Finding) bool {
	return m.face != nil && m.forFace(h, o, f) || m.holdMotor(h, o, f)
}

// forFace compares screws with the holes of the motor's flange.
func (m mounted) forFace(h *hole, o screwOrder, f Finding) bool {
	of, source := ofMotor(*m.face)
	motors, in := " the motor's "+of+m.face.Name, o.longMm-o.washers()*o.thread.MajorMm-(h.toMm-h.fromMm)
	what, tapped := f.What, m.face.Tapped
	f.Source = source
	return m.firstOf(f,
		flaw{tapped && !sameThread(m.face.Thread, o.thread.Designation), Finding{
			What: what + " have not the thread of" + motors, Numbers: o.words + "; it is tapped " + m.face.Thread,
			Rule: "a screw has the thread of its hole", Fix: "screws " + m.face.Thread}},
		flaw{!tapped && !passesThrough(m.face.HoleMm, o.thread), Finding{
			What: what + " are not for the holes of" + motors, Numbers: o.words + "; they are for " + m.face.Thread,
			Rule: "a screw has the thread of its hole, or goes through it without rattling", Fix: "bolts " + m.face.Thread}},
		flaw{tapped && o.nut() && !strings.Contains(o.words, "stud"), Finding{
			What: what + " come with nuts, and" + motors + " is tapped", Numbers: o.words,
			Rule: "a nut goes on where a bolt comes through", Fix: "screws without nuts, or studs"}},
		flaw{tapped && m.face.DeepMm > 0 && geom.Over(in, m.face.DeepMm), Finding{
			What: what + " come deeper into" + motors + " than its holes let them", Numbers: m.mm(in) + " in, " + m.mm(m.face.DeepMm) + " at the most", OverMm: over(in - m.face.DeepMm),
			Rule: "a screw clamps before it meets the bottom", Fix: "a shorter screw"}},
		flaw{!tapped && h.thread == nil && !o.nut() && !m.nutsBought(o.thread.Designation), Finding{
			What: what + " hold nothing: its holes and those of" + motors + " are free", Numbers: o.words,
			Rule: "a bolt has a nut or a thread behind it", Fix: "with nut and washers, or tapped holes in the plate"}},
	)
}

// How thick a flange is at the least that bolts go through, in their diameters: of any, and of a motor to a standard.
// Common practice, no source.
const (
	flangeLeast = 0.8
	motorFlange = 1.0
)

// holdMotor looks at the length of screws for a motor: into it, or through its flange into the part or a nut.
func (m mounted) holdMotor(h *hole, o screwOrder, f Finding) bool {
	what, d, deep := f.What, o.thread.MajorMm, h.toMm-h.fromMm
	in, need, rule := o.longMm-o.washers()*d-deep, screwHolds*d, "a screw holds in one diameter of thread"
	free := m.face != nil && !m.face.Tapped || o.nut() || m.nutsBought(o.thread.Designation)
	flange := flangeLeast * d
	if m.face != nil {
		flange = motorFlange * d
	}
	through, into := m.mm(o.longMm)+" long through "+m.mm(deep), " hardly reach into the motor"
	switch {
	case h.thread != nil && o.nut():
		return false
	case h.thread != nil:
		in += deep - flange
		through, into = m.mm(o.longMm)+" long, "+m.mm(flange)+" of it in the flange at the least", " hardly reach into their threads through the motor's flange"
	case free:
		need, into, rule = flange+nutted*d, " are too short for their nuts behind the motor's flange", "a bolt comes through its nut"
	}
	in = max(0, in)
	return m.firstOf(f, flaw{geom.Over(need, in), Finding{
		What: what + into, Numbers: through + ": " + m.mm(in) + " beyond" + words.Either(o.washers() > 0, ", less the washers", "") + ", wanted " + m.mm(need), LeftMm: left(in),
		Rule: rule, Fix: "a longer screw"}})
}
