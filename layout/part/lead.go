package part

import (
	"strconv"

	"centrepop/layout/grooves"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// The broad flanks of a lead screw are cut at half the speed of a thread that holds (leadSlow is by what its
// diameter is taken larger), and past finePitchMm no longer with a tool that cuts on its whole edge. Common
// practice, no source.
const leadSlow, finePitchMm = 2.0, 3.0

// leadCrest are the limits of what is turned or bored before such a thread is cut.
func leadCrest(st *Step) (lo, hi float64) {
	l := st.Size.Thread.Lead.Of(st.Inside)
	if st.Inside {
		return l.Minor[0], l.Minor[1]
	}
	return l.Major[0], l.Major[1]
}

// leadWork is how the thread of a lead screw or its nut is cut: the tool, its depth, how it is fed, and what the
// hand and the starts ask of the lathe; "" for another thread.
func (b *bench) leadWork(st *Step) string {
	t, w := st.Size.Thread, b.W
	if t.Lead == nil {
		return ""
	}
	l := t.Lead.Of(st.Inside)
	deep := w.Size(l.DepthMm) + " on the radius from its basic diameter, root " + w.Limits(l.Minor[0], l.Minor[1])
	if st.Inside {
		deep = w.Size(l.DepthMm) + " on the radius from its least bore, " + w.Dia(l.Major[0]) + " at the least"
	}
	line := " Tool ground to " + words.Trim(t.Lead.AngleDeg, 0) + "°, its point " + w.Read(-w.Up(-l.FlatMm, 0.01, 0.001)) +
		" wide at most, its leading side relieved for a helix of " + words.Trim(t.HelixDeg(), 1) + "°, set square by a gauge; depth " + deep + "."
	switch half := words.Trim(t.Lead.AngleDeg/2, 1); {
	case t.Lead.Starts == 1 && t.PitchMm <= finePitchMm:
		line += " Many light passes, fed by the top slide, set " + half + "° from square to the axis, the last ones straight in, "
	default:
		line += " Many light passes, straight in, the top slide along the axis: first with a narrower tool, then its point moved to one flank and the other, so that one edge cuts, "
	}
	line += b.fluid() + "."
	if n := t.Lead.Starts; n > 1 {
		line += " " + strconv.Itoa(n) + " starts: the gears for a lead of " + w.Said(t.Lead.LeadMm) +
			"; each next one with the top slide moved on by one pitch, " + w.Said(t.Lead.LeadMm/float64(n)) + "."
	}
	return line + b.handed(st) + " Finish by " + b.leadGauge(st) + "."
}

// handed says how a thread is cut where that is not forward and towards the headstock. Its hand goes by the turning
// and the way together, and the tool ends at metal without an undercut: it cannot begin there.
func (b *bench) handed(s *Step) string {
	t := s.Size.Thread
	tail, head := b.neighbours(s)
	atTail, atHead := false, b.blind(s)
	if b.face == parts.Back {
		tail, head, atTail, atHead = head, tail, atHead, atTail
	}
	left := t.LeftHand || t.Lead != nil && t.Lead.LeftHand
	toTail := left
	if s.Undercut == nil && !t.Taper {
		atHead, atTail = atHead || overRoot(s, head) > geom.CloseMm, atTail || overRoot(s, tail) > geom.CloseMm
		toTail = !atHead && (atTail || toTail)
	}
	from, to := "headstock", "tailstock"
	if !toTail {
		from, to = to, from
	}
	way := "the carriage goes from the " + from + " to the " + to
	switch {
	case toTail == left:
		return words.When(left, " LEFT HAND: the lathe runs forward, "+way+".")
	case left:
		way = "LEFT HAND, and it ends at metal: the lathe runs in reverse, " + way
	default:
		way = "It ends at metal: the lathe runs in reverse, " + way
	}
	return " " + way + ", the tool upside down or on the far side; a chuck that is screwed on is locked first."
}

// overRoot is how far, on diameter, a step stands over the root of a thread; at most 0 where there is none.
func overRoot(st, s *Step) float64 {
	switch t := st.Size.Thread; {
	case s == nil:
		return 0
	case st.Inside:
		return t.GroundMm() - s.Size.NominalMm
	default:
		return s.Size.NominalMm - t.RootMm()
	}
}

// leadGauge is what the thread is finished by: wires where they are a fair measure, or its counterpart.
func (s *Sizes) leadGauge(st *Step) string {
	if st.Inside {
		return "a gauge screw, or the screw itself"
	}
	if wire, lo, hi, ok := s.overWires(st.Size.Thread); ok {
		return "three wires " + s.W.Dia(wire) + ", " + s.W.Limits(lo, hi) + " over them, or a gauge nut"
	}
	return "a gauge nut, or the nut itself"
}

// overWires are wires near the best ones for a thread, and the limits over them.
func (s *Sizes) overWires(t *threads.Thread) (wire, lo, hi float64, ok bool) {
	wire = s.W.Even(t.BestWireMm(), 0.1, 0.005)
	lo, hi, ok = t.OverWiresMm(wire)
	return wire, lo, hi, ok
}

// leadLimits are those of the diameter that is turned or bored before.
func (b *bench) leadLimits(st *Step) []string {
	if t := st.Size.Thread; t == nil || t.Lead == nil {
		return nil
	}
	return []string{words.Spaced(st.Name) + " before the thread " + b.W.Limits(leadCrest(st))}
}

// more are the crest of a lead screw's thread, and what lies over the wires.
func (thread) more(r *record, st *Step) {
	t := st.Size.Thread
	if t.Lead == nil {
		return
	}
	lo, hi := leadCrest(st)
	what, side := words.Spaced(st.Name), "outside"
	if st.Inside {
		side = "bore"
	}
	r.sized(plan.Check{Ref: r.ref(st), What: what + " " + side, Wanted: r.leadName(st), Gauge: "calipers"}, spread(lo, 0, hi-lo, t.Source))
	if wire, least, most, ok := r.overWires(t); ok && !st.Inside {
		r.sized(plan.Check{Ref: r.ref(st), What: what + " over wires", Wanted: r.W.Dia(wire), Gauge: "three wires, micrometer"}, spread(least, 0, most-least, t.Source))
	}
}

// threadEnd is the length in which an outside thread runs out, and from full thread to a shoulder; of a
// lead screw, which DIN 76-1 has no rows for, what passes while the tool is drawn back.
func threadEnd(t *threads.Thread) (grooves.ThreadEnd, error) {
	if t.Lead == nil {
		return grooves.ThreadEndFor(t.MajorMm, t.PitchMm, false, false)
	}
	out, err := t.RunoutMm()
	return grooves.ThreadEnd{RunoutMm: out, ShoulderMm: out, Source: lookup.NoSource}, err
}

// threadBlankMm is the diameter before threading: the tap drill inside;
// outside the major diameter, less a tenth of the pitch on metric and unified
// threads, which stays inside their 6g and 2A limits (common practice, no
// source). Of a lead screw and its nut it is the middle of the limits.
func (b *bench) threadBlankMm(s *Step) float64 {
	t := s.Size.Thread
	switch {
	case t.Lead != nil:
		lo, hi := leadCrest(s)
		return b.W.Even((lo+hi)/2, 0.01, 0.001)
	case s.Inside && t.TapDrillMm != 0 && t.TapDrillName == "":
		return b.W.Even(t.TapDrillMm, 0.001, 0.001)
	case s.Inside && t.TapDrillMm != 0:
		return t.TapDrillMm
	case s.Inside:
		return t.MinorMm
	case t.Series == threads.PipeG || t.Taper:
		return t.MajorMm
	}
	return b.W.Even(t.MajorMm-t.PitchMm/10, 0.01, 0.001)
}
