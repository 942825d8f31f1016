package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/measured"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// mounted is a group of holes of a part that a motor stands on, or may: with the standard flange that the job names, or
// that is compared with it; nil where there is none.
type mounted struct {
	*view
	h    *parts.HoleGroup
	face *measured.Standard
}

// mountings are what stands on a group of holes, each with the flange that words of the job give the motor, or without a
// gear its frame.
func (v *view) mountings(h *parts.HoleGroup) (out []mounted) {
	m := v.motor()
	for e := range seq.Refs(v.job.Loose) {
		if !v.stoodOn(e, h.Name.Value) {
			continue
		}
		on, said := mounted{v, h, nil}, []string{m.Flange.Value, e.Item.Value}
		if m.OutRPM.Value == 0 {
			said = append(said, m.Frame.Value)
		}
		if i := slices.IndexFunc(said, func(s string) bool { return len(measured.Named(s)) > 0 }); i >= 0 {
			if named := measured.Named(said[i]); len(named) == 1 {
				on.face = &named[0]
			}
		}
		out = append(out, on)
	}
	return out
}

// motorFlange compares holes and the bore in their middle with the flange of the motor that stands on them, as the job
// names it, or with one of IEC of which two of pitch circle, bore and holes are nearly theirs.
func (v *view) motorFlange(h *parts.HoleGroup) {
	on := v.mountings(h)
	named := seq.Keep(on, func(m mounted) bool { return m.face != nil })
	for _, m := range named {
		m.onFace(Stop)
	}
	for e := range seq.Refs(v.job.Loose) {
		if v.stoodOn(e, h.Name.Value) && e.Stands.Flange.Set() {
			v.flangeAcross(e, h)
		}
	}
	if len(named) > 0 || v.p.Bore == nil || h.Size.Make == parts.TappedHole && len(on) == 0 {
		return
	}
	for _, s := range measured.Standards() {
		// What stands there has a spigot, however far off the bore.
		if near := func(mm, of float64) bool { return math.Abs(mm-of) <= 0.1*of }; !s.Tapped && near(h.Pattern.PCD.Mm, s.PitchMm) && (len(on) > 0 || near(v.p.Bore.Size.Nominal.Mm, s.SpigotMm)) {
			mounted{v, h, &s}.like()
		}
	}
}

// flangeAcross compares how wide the flange is that a motor stands with with that of the pitch circle of its holes.
func (v *view) flangeAcross(e *parts.Loose, h *parts.HoleGroup) {
	wide := func(s measured.Standard) bool { return math.Abs(s.OutsideMm-e.Stands.Flange.Mm) <= faceOffMm }
	of := seq.Keep(measured.Standards(), func(s measured.Standard) bool { return math.Abs(h.Pattern.PCD.Mm-s.PitchMm) <= faceOffMm })
	its := seq.Keep(measured.Standards(), wide)
	if len(of) == 0 || len(its) == 0 || slices.ContainsFunc(of, wide) {
		return
	}
	v.report(Check, h.Name.Value, e.Stands.Flange.Pos, Finding{
		What:    "the flange of " + words.Head(e.Item.Value) + " is wider or narrower than that of " + h.Name.Value + " of " + v.p.Title.Value,
		Numbers: v.mm(e.Stands.Flange.Mm) + ", which " + its[0].Name + " has; a pitch circle of " + v.mm(of[0].PitchMm) + " is that of " + of[0].Name + ", " + v.mm(of[0].OutsideMm) + " wide",
		OverMm:  over(math.Abs(e.Stands.Flange.Mm - of[0].OutsideMm)), Rule: "plate and motor have one flange", Source: measured.StandardSource,
		Fix: "the motor of that flange, or the holes and the bore of the motor's",
	})
}

// like compares holes with a flange of IEC that is like them, where two of three sizes are its own.
func (m mounted) like() {
	is, severity, said := m.sizes(), Check, m.motor().Flange
	if slices.Contains(flangeNumber().FindAllString(said.Value, -1), number(m.face.PitchMm)) {
		severity = Stop // it is the job's motor, and it does not go on
	} else if is == flangeSizes && flangeNumber().MatchString(said.Value) {
		m.report(Check, m.h.Name.Value, said.Pos, Finding{
			What: m.p.Title.Value + " is for a motor flange " + m.face.Name + ", and the job's motor has another", Numbers: said.Value,
			Rule: "plate and motor have one flange", Source: "by the job", Fix: "the flange on the motor's plate",
		})
	}
	if is > 1 {
		m.onFace(severity)
	}
}

// flangeSizes are those by which a plate is for a flange: its pitch circle, its bore and its holes. sizes counts those
// that holes and the bore in their middle have.
const flangeSizes = 3

func (m mounted) sizes() int {
	count, hole := m.groupSize(m.h.Name.Value)
	same := []bool{math.Abs(m.h.Pattern.PCD.Mm-m.face.PitchMm) < 0.05, math.Abs(m.p.Bore.Size.Nominal.Mm-m.face.SpigotMm) < 0.05,
		count == m.face.Holes && (math.Abs(hole-m.face.HoleMm) < 1.01 || sameThread(m.h.Size.Thread, m.face.Thread))}
	return len(seq.Keep(same, func(is bool) bool { return is }))
}

// standardFace tells whether holes and the bore in their middle are those of a standard flange of motors, which has less
// metal between them than rules ask.
func (v *view) standardFace(h *parts.HoleGroup) bool {
	return h != nil && v.p.Bore != nil && slices.ContainsFunc(measured.Standards(), func(s measured.Standard) bool { return mounted{v, h, &s}.sizes() == flangeSizes })
}

// called is the word before the name of the motor's flange, and where the sizes of that come from.
func (m mounted) called() (word, source string) {
	if strings.HasPrefix(m.face.Name, "F") {
		return "flange ", measured.StandardSource
	}
	return "face ", measured.FaceSource
}

// onFace compares a group of holes, and the round in its middle, with the motor's flange: how bad it is that it does
// not go on.
func (m mounted) onFace(stop Severity) {
	name, s := m.h.Name.Value, m.face
	what, source := m.called()
	f := m.here(name, m.h.Pos)
	f.Severity, f.Rule, f.Source, f.Fix = stop, "a motor's "+what+"has its standard's sizes", source, "the size of the standard, or measure the motor"
	not, has := " not that of the motor's "+what+s.Name, ", the "+what+"has "
	middle, pcd := m.circleOf(name)
	off := math.Abs(pcd - s.PitchMm)
	count, mm := m.groupSize(name)
	screws := words.Either(s.Tapped, "is tapped "+s.Thread+", and the plate has clearance holes", "has holes for "+s.Thread)
	m.eachOf(f,
		flaw{off > faceOffMm, Finding{What: "the pitch circle of " + name + " is" + not, Numbers: m.mm(pcd) + has + m.mm(s.PitchMm), OverMm: over(off)}},
		flaw{count != s.Holes, Finding{What: "the number of holes of " + name + " is" + not, Numbers: number(float64(count)) + has + number(float64(s.Holes)), OverMm: over(0)}},
		flaw{m.otherScrew(mm), Finding{What: "the screw of " + name + " is" + not, Numbers: cmp.Or(m.h.Size.Thread, m.mm(mm)) + "; the " + what + screws, OverMm: over(0)}},
	)
	m.spigotIn(middle, f, what)
	m.clocked()
	if m.p.Bore != nil {
		m.leadIn()
	}
}

// otherScrew tells whether the holes, of a size, are none for the screws of a motor's flange.
func (m mounted) otherScrew(mm float64) bool {
	s, size := m.face, m.h.Size
	t, err := threads.Parse(s.Thread)
	switch {
	case err != nil:
		return false
	case s.Tapped && size.Make == parts.TappedHole:
		return true
	case size.Thread != "":
		return !sameThread(size.Thread, s.Thread)
	}
	return mm < t.MajorMm || mm > plainShare*t.MajorMm
}

// spigotIn compares the round in the middle of a motor's holes with its spigot.
func (m mounted) spigotIn(middle plan.XY, f Finding, what string) {
	bore, size := m.roundAt(middle, m.face.SpigotMm)
	off := bore - m.face.SpigotMm
	severity := words.Either(off < 0, f.Severity, Check)
	m.firstOf(f,
		flaw{geom.Short(off) || off > faceOffMm, Finding{
			Severity: severity, What: "the bore round the spigot is not that of the motor's " + what + m.face.Name,
			Numbers: m.mm(bore) + ", the spigot " + m.mm(m.face.SpigotMm), OverMm: over(math.Abs(off))}},
		flaw{size.Fit.Pos.Line > 0 && !fine(size.Fit, 8), Finding{
			Severity: Check, Pos: size.Fit.Pos, What: "the bore does not centre the spigot of a motor " + what + m.face.Name, Numbers: m.mm(bore) + " " + size.Fit.Class.Value,
			Rule: "the spigot of a motor is j6; its bore H7 or H8", Fix: "fit: H7"}},
	)
}

// clocked looks at how the holes of a motor flange are turned.
func (m mounted) clocked() {
	f := Finding{Rule: "the holes of a motor lie on both sides of its TOP", Source: "IEC 60072-1, from memory"}
	pitch := 360 / float64(m.face.Holes)
	holes := m.holesOf(m.h.Name.Value)
	if len(holes) == 0 {
		return
	}
	if deg := geom.ClockDeg(holes[0].a); math.Abs(math.Remainder(deg, pitch)) < pitch/2-1 {
		f.What, f.Numbers, f.Fix = m.h.Name.Value+" stands turned against the holes of a motor", "one at "+number(deg)+"°, wanted "+number(pitch/2)+"°", "first: "+number(pitch/2)
		m.report(Check, m.h.Name.Value, m.h.Pos, f)
	}
}

// leadIn looks for a lead-in on the face that lies on another part: the motor's spigot
// comes from the other one.
func (m mounted) leadIn() {
	lead := func(face parts.Face) bool {
		return slices.ContainsFunc(m.p.Chamfers, func(c parts.Chamfer) bool { return c.Edge.Value == "bore-"+string(face) })
	}
	for _, j := range m.job.Of(parts.BoltKind) {
		first, second := j.Ends()
		meet := m.job.MeetingOf(j)
		lies, with := meet.Second, m.job.Part(first.Part)
		if first.Part == m.p.Name.Value {
			lies, with = meet.First, m.job.Part(second.Part)
		}
		other := lies.Other()
		if with.Kind == parts.Folded || !meet.Set() || !j.Holds(m.p.Name.Value) || !lead(lies) || lead(other) { // the flange of a guard leaves the bore open
			continue
		}
		m.report(Check, "bore", m.p.Bore.Pos, Finding{
			What: "the lead-in of the bore is on the face that lies on another part, and the spigot of the motor " + m.face.Name + " comes from the other", Numbers: "bore-" + string(lies),
			Rule: "a spigot comes in at its lead-in", Fix: "the part the other way round, by face: at " + j.Name.Value + ", or edge: bore-" + string(other),
		})
	}
}

// nutsBought tells whether nuts of a thread are bought by themselves.
func (r *reviewer) nutsBought(thread string) bool {
	return slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool {
		m := nutAlone().FindStringSubmatch(e.Item.Value + "; " + e.Buy.Value)
		return m != nil && sameThread(m[1], thread)
	})
}

// screws looks at screws that are ordered for a motor on a group of holes, and tells whether it has found anything.
func (m mounted) screws(h *hole, o screwOrder, f Finding) bool {
	return m.face != nil && m.forFace(h, o, f) || m.holdMotor(h, o, f)
}

// forFace compares screws with the holes of the motor's flange.
func (m mounted) forFace(h *hole, o screwOrder, f Finding) bool {
	of, source := m.called()
	motors, in := " the motor's "+of+m.face.Name, o.longMm-o.washers()*o.thread.MajorMm-h.span().LengthMm()
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

// passesThrough tells whether a screw goes through a hole and does not rattle in it.
func passesThrough(holeMm float64, t threads.Thread) bool {
	return holeMm > t.MajorMm && holeMm < widest*t.MajorMm
}

// holdMotor looks at the length of screws for a motor: into it, or through its flange into the part or a nut.
func (m mounted) holdMotor(h *hole, o screwOrder, f Finding) bool {
	what, d, deep := f.What, o.thread.MajorMm, h.span().LengthMm()
	in, need, rule := o.longMm-o.washers()*d-deep, screwHolds*d, "a screw holds in one diameter of thread"
	free := m.face != nil && !m.face.Tapped || o.nut() || m.nutsBought(o.thread.Designation)
	flange := words.Either(m.face != nil, motorFlange*d, flangeLeast*d)
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
