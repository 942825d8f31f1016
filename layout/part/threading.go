package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// threadSpeed is the speed at the widest of threads that are cut.
func (b *bench) threadSpeed(steps []*Step) string {
	steps = seq.Keep(steps, func(s *Step) bool { return !tapped(s) })
	widest := seq.Max(0, steps, func(s *Step) float64 { return s.Size.NominalMm })
	slow := 1.0
	if slices.ContainsFunc(steps, func(s *Step) bool { return s.Size.Thread.Lead != nil }) {
		slow = leadSlow
	}
	if n, _, _ := b.rpm(cutting.Thread, slow*widest, true); n != 0 {
		return "threads " + words.Trim(n, 0) + " at " + b.W.Dia(widest)
	}
	return ""
}

// threadWork is the line that cuts a thread.
func (b *bench) threadWork(s *Step) string {
	t := s.Size.Thread
	line := "Cut " + words.Spaced(s.Name) + " " + t.Designation
	if tapped(s) {
		return "Tap " + words.Spaced(s.Name) + " " + t.Designation + words.When(t.LeftHand, ", left-hand tap") + ", " + b.W.Size(s.LengthMm()) +
			" long, by hand, the tap on the tailstock centre, square, " + b.fluid() + "."
	}
	if s.Inside && t.MajorMm <= 24 && t.Lead == nil { // what one taps by hand; common practice, no source
		line = "Tap by hand or cut " + words.Spaced(s.Name) + " " + t.Designation
	}
	switch {
	case t.TPI != 0 && b.W.Units == parts.Inches:
		line += ", " + words.Trim(t.TPI, 1) + " per inch"
	case t.TPI != 0:
		line += ", " + words.Trim(t.TPI, 1) + " per inch (pitch " + words.Trim(t.PitchMm, 3) + " mm)"
	default:
		line += ", pitch " + words.Trim(t.PitchMm, 3) + " mm"
	}
	line += words.When(t.Taper, ", taper 1:16")
	return line + ", " + b.W.Size(s.LengthMm()) + " long." + words.Either(t.Lead != nil, b.leadWork(s), b.handed(s))
}

// toolRoom lets the tool that cuts an inside thread run out into a wider bore which is
// not there yet: it is bored later, from the other face; or into the stock behind the part, which is faced or parted off
// later. Room as for a blind thread.
func (b *bench) toolRoom(s *Step, set setting) string {
	if !set.first() || !s.Inside || s.Size.Thread == nil || tapped(s) {
		return ""
	}
	room, err := s.Size.Thread.RunoutMm()
	for _, o := range b.beside(s) {
		if deeper := (o.FromMm > s.FromMm) == (set.face == parts.Front); err == nil && deeper && !slices.Contains(set.steps, o) && o.leastMm() >= b.threadBlankMm(s) {
			end := max(set.face.FromFront(s.FromMm, b.LengthMm()), set.face.FromFront(s.ToMm, b.LengthMm()))
			return "Bore on at " + b.W.Dia(b.threadBlankMm(s)) + " to " + b.W.Said(geom.Clean(end+math.Min(room, o.LengthMm()))) + " deep, where " +
				words.Spaced(o.Name) + " will be: the threading tool runs out there."
		}
	}
	behind := b.backAllowanceMm() + b.moreMm
	if err != nil || !geom.Alike(s.ToMm, b.LengthMm()) || !geom.Over(behind, 0) {
		return ""
	}
	line, off := "Bore on at "+b.W.Dia(b.threadBlankMm(s)), ", which is "+words.Either(b.partedOff(), "parted off", "faced off later")+": the threading tool runs out there."
	if geom.Over(behind, room) {
		return line + " to " + b.W.Said(geom.Clean(b.LengthMm()+room)) + " deep, into what is behind the part" + off
	}
	return line + " through what is left behind the part" + off
}

// thread is the thread of a threaded step.
type thread struct{ bare }

func (thread) check(st *Step, c *plan.Check) {
	if c.Limits = "counterpart runs freely, no shake"; st.Size.Thread.Lead != nil { // it has play
		c.Limits, c.Gauge = "counterpart runs freely over all of it", "gauge, or its own counterpart"
	}
}

// threadLine is drawn beside the contour of a threaded step.
func (s *Step) threadLine() plan.ThreadLine {
	bottom := s.Size.Thread.RootMm()
	if s.Inside {
		bottom = s.Size.Thread.GroundMm()
	}
	return plan.ThreadLine{FromMm: s.FromMm, ToMm: s.ToMm, RadiusMm: bottom / 2, CrestMm: s.RadiusMm(), Inside: s.Inside}
}

func (thread) after(b *bench, st *Step) (int, string) {
	return threadPhase, b.threadWork(st) + b.runOut(st)
}

// runOut says how a thread ends, without an undercut, at metal that
// stands over its root: a shoulder, or a seat of the same diameter, which the tool
// would mark. Nothing where it runs out freely.
func (b *bench) runOut(st *Step) string {
	t := st.Size.Thread
	over := func(s *Step) float64 { return overRoot(st, s) }
	if st.Undercut != nil || t.Taper {
		return ""
	}
	var next *Step
	for _, s := range b.beside(st) {
		if over(s) > geom.CloseMm && (next == nil || over(s) > over(next)) {
			next = s
		}
	}
	blind := b.blind(st)
	if next == nil && !blind {
		return ""
	}
	if st.Inside {
		e1, err := t.RunoutMm()
		if err != nil {
			return ""
		}
		source := words.Either(t.Lead != nil, words.NoSource, "DIN 76-1")
		before := "the floor"
		if !blind {
			before = words.Spaced(next.Name)
		}
		return " No undercut is drawn: the last " + b.W.Said(b.W.Even(e1, 0.01, 0.001)) + " before " + before + " is no full thread (" + source + "); what screws in ends short of it."
	}
	e, err := threadEnd(t)
	if err != nil {
		return ""
	}
	from, stop := "the shoulder", ""
	if next.Size.NominalMm <= t.MajorMm {
		from = words.Spaced(next.Name)
		stop = "; stop the tool short of " + from + ", it would mark it"
	}
	return " No undercut is drawn: the last " + b.W.Said(b.W.Even(e.RunoutMm, 0.01, 0.001)) + " run out, and full thread ends " +
		b.W.Said(b.W.Even(e.ShoulderMm, 0.01, 0.001)) + " from " + from + " at most (" + cmp.Or(e.Source.Name, e.Source.String()) + ")" + stop +
		"; what screws on up to there needs a recess or a spacer."
}

// RunoutMm is how far before its end, the back or else the front, an inside thread is no full thread
// any more: its undercut, or by DIN 76-1 before a narrower bore or a floor; 0 where its tool runs out freely.
func (s *Sizes) RunoutMm(st *Step, back bool) float64 {
	next, after := s.neighbours(st)
	if back {
		next = after
	}
	if over := overRoot(st, next); over <= geom.CloseMm && !(back && s.blind(st)) {
		return 0
	}
	if u := st.Undercut; u != nil && s.UndercutAtBack(st) == back {
		return u.WidthMm
	}
	mm, err := st.Size.Thread.RunoutMm()
	if err != nil {
		return 0
	}
	return mm
}

// FullSpan is where along the axis a thread is full: less its undercut and the chamfers of its ends, and with runout less its run-out before
// metal.
func (s *Sizes) FullSpan(st *Step, runout bool) geom.Span {
	at := st.Span()
	lost := func(back bool) float64 {
		bevel := s.Part.BevelMm(st.Name + "-" + string(words.Either(back, parts.Back, parts.Front)))
		switch u := st.Undercut; {
		case u != nil && s.UndercutAtBack(st) == back:
			return max(bevel, u.WidthMm)
		case !runout:
			return bevel
		case st.Inside:
			return max(bevel, s.RunoutMm(st, back))
		}
		return max(bevel, s.FullThreadMm(st, back))
	}
	at.FromMm, at.ToMm = at.FromMm+lost(false), at.ToMm-lost(true)
	at.ToMm = max(at.FromMm, at.ToMm)
	return at
}

// FullThreadMm is how far from its end, the back or else the front, an outside thread
// is cut in full at most: beside metal that stands over its root, by DIN 76-1; 0 where
// it has an undercut or runs out freely.
func (s *Sizes) FullThreadMm(st *Step, back bool) float64 {
	next, after := s.neighbours(st)
	if back {
		next = after
	}
	t := st.Size.Thread
	if st.Undercut != nil || next == nil || next.Size.NominalMm <= t.RootMm() {
		return 0
	}
	e, err := threadEnd(t)
	if err != nil {
		return 0
	}
	return e.ShoulderMm
}
