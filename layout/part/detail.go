package part

import (
	"strings"

	"centrepop/layout/grooves"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// detail is something on a step besides its diameter and length. What a kind
// has nothing to say to, bare says nothing to.
type detail interface {
	contour(s *Sizes, st *Step, line []plan.XY) []plan.XY // the step's contour, front to back, with it
	thread(st *Step) *plan.ThreadLine                     // a line drawn beside the contour
	note(w words.Writer) string                           // beside the step in the list of features
	clause(w words.Writer) string                         // at the end of the line that turns the step
	after(b *bench, st *Step) (phase int, line string)    // a line of its own once all steps are turned, and where
	check(st *Step, c *plan.Check)                        // what it changes in the check of the step
	more(r *record, st *Step)                             // checks of its own
	// dimension changes that of the step, and adds its own.
	dimension(s *Sizes, st *Step, d *plan.Dimension) []plan.Dimension
}

// details makes what is on a step, in the order it is worked; a new kind of
// detail is a file like this and a line here.
func details(in parts.Step, st *Step) []detail {
	var out []detail
	if st.Undercut != nil {
		out = append(out, undercut{Undercut: st.Undercut})
	}
	if st.Finish != "" {
		out = append(out, finish{text: st.Finish, ground: in.Hardness.Pos.Line > 0})
	}
	if in.Seat.Value != "" {
		text := in.Seat.Value
		if in.Lip != "" {
			text += ", lip to the " + string(in.Lip)
		}
		out = append(out, seat{text: text})
	}
	if in.Hardness.Pos.Line > 0 {
		out = append(out, hardened{hrc: in.Hardness.Value})
	}
	if st.Size.Thread != nil {
		out = append(out, thread{})
	}
	return out
}

// bare is a detail that changes nothing.
type bare struct{}

func (bare) contour(_ *Sizes, _ *Step, line []plan.XY) []plan.XY { return line }
func (bare) thread(*Step) *plan.ThreadLine                       { return nil }
func (bare) note(words.Writer) string                            { return "" }
func (bare) clause(words.Writer) string                          { return "" }
func (bare) after(*bench, *Step) (int, string) {
	return 0, ""
}
func (bare) check(*Step, *plan.Check) {}
func (bare) more(*record, *Step)      {}
func (bare) dimension(*Sizes, *Step, *plan.Dimension) []plan.Dimension {
	return nil
}

// finish is the surface wanted.
type finish struct {
	bare
	text   string
	ground bool // it is hardened and ground anyway
}

func (f finish) note(words.Writer) string { return f.text }

// seat is what sits on the step.
type seat struct {
	bare
	text string
}

func (s seat) note(words.Writer) string   { return s.text }
func (s seat) clause(words.Writer) string { return " (" + s.text + ")" }

func (f finish) check(_ *Step, c *plan.Check) { c.Wanted = words.Join(", ", c.Wanted, f.text) }

// hardened is a step that is hardened and ground after it is turned; one of no hardness is ground with
// those that are, as they move it.
type hardened struct {
	bare
	hrc float64
}

func (h hardened) note(words.Writer) string {
	if h.hrc == 0 {
		return ""
	}
	return words.Trim(h.hrc, 1) + " HRC at least"
}
func (h hardened) clause(w words.Writer) string {
	return "; leave " + w.Near(grindMm) + " on the diameter for grinding (common practice, no source)"
}

// grindMm is left on a diameter for grinding, within grindOffMm. Common practice, no source.
const (
	grindMm    = 0.3
	grindOffMm = 0.05
)

// hardened is how hard a step is made before it is ground to its size; ok is false for one that is not.
func (s *Step) hardened() (h hardened, ok bool) { return detailOf[hardened](s) }

// detailOf is the detail of a kind on a step; ok is false where it has none.
func detailOf[T detail](s *Step) (d T, ok bool) {
	for _, on := range s.details {
		if d, ok = on.(T); ok {
			break
		}
	}
	return d, ok
}

// hard tells whether a name is that of a step that is hardened and ground.
func (s *Sizes) hard(name string) bool {
	st := s.StepNamed(name)
	if st == nil {
		return false
	}
	_, ok := st.hardened()
	return ok
}

// fine tells whether a step is polished, ground or hardened, and bears no mark.
func (s *Step) fine() bool {
	ra := RaUm(s.Finish)
	_, hard := s.hardened()
	return ra > 0 && ra <= turnedRaUm || hard
}

// grindHardened has steps hardened and ground, and measured to each other, once all that an ordinary cutter makes in them is
// there: no cutter of high speed steel cuts over 45 HRC or so (common practice, no source).
func (b *bench) grindHardened() {
	var o plan.Operation
	var after []string
	for s := range seq.Refs(b.Steps) {
		h, ok := s.hardened()
		if !ok {
			continue
		}
		if o.Refs = append(o.Refs, b.ref(s)); h.hrc == 0 {
			after = append(after, words.Spaced(s.Name))
		} else {
			o.Do = append(o.Do, "Have "+words.Spaced(s.Name)+" hardened to "+words.Trim(h.hrc, 1)+" HRC at least, then grind it to size.")
		}
		o.Limits = append(o.Limits, b.limits(words.Spaced(s.Name), s.Size)...)
	}
	if len(after) > 0 {
		o.Do = append(o.Do, "Then grind "+strings.Join(after, ", ")+" to size in the same setting: hardening beside has moved it.")
	}
	if len(o.Do) > 0 {
		o.Do, o.Refs = append(o.Do, b.ground...), append(o.Refs, b.groundRefs...)
		o.Machine, o.Title, o.Holding, o.Gauge = plan.Grind, "Harden and grind", "as it was turned, set true again", "micrometer"
		b.op(o)
	}
}

func (h hardened) check(_ *Step, c *plan.Check) {
	if h.hrc > 0 {
		c.Gauge += ", hardness tester or file"
	}
}

// thread is the thread of a threaded step.
type thread struct{ bare }

func (thread) thread(st *Step) *plan.ThreadLine {
	t := st.Size.Thread
	line := &plan.ThreadLine{FromMm: st.FromMm, ToMm: st.ToMm, RadiusMm: t.MinorMm / 2, Inside: st.Inside}
	if st.Inside {
		line.RadiusMm = st.Size.NominalMm / 2
	}
	return line
}

func (thread) after(b *bench, st *Step) (int, string) {
	return threadPhase, b.threadWork(st) + b.runOut(st)
}

// runOut says how a thread ends, without an undercut, at metal that
// stands over its root: a shoulder, or a seat of the same diameter, which the tool
// would mark. Nothing where it runs out freely.
func (b *bench) runOut(st *Step) string {
	t := st.Size.Thread
	over := func(s *Step) float64 { return s.Size.NominalMm - t.MinorMm }
	if st.Inside {
		over = func(s *Step) float64 { return t.MajorMm - s.Size.NominalMm }
	}
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
		before := "the floor"
		if !blind {
			before = words.Spaced(next.Name)
		}
		return " No undercut is drawn: the last " + b.W.Said(b.W.Even(e1, 0.01, 0.001)) + " before " + before + " is no full thread (DIN 76-1); what screws in ends short of it."
	}
	e, err := grooves.ThreadEndFor(t.MajorMm, t.PitchMm, false, false)
	if err != nil {
		return ""
	}
	from, stop := "the shoulder", ""
	if next.Size.NominalMm <= t.MajorMm {
		from = words.Spaced(next.Name)
		stop = "; stop the tool short of " + from + ", it would mark it"
	}
	return " No undercut is drawn: the last " + b.W.Said(b.W.Even(e.RunoutMm, 0.01, 0.001)) + " run out, and full thread ends " + b.W.Said(b.W.Even(e.ShoulderMm, 0.01, 0.001)) + " from " + from + " at most (" + e.Source.Name + ")" + stop + "; what screws on up to there needs a recess or a spacer."
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
	if st.Undercut != nil || next == nil || next.Size.NominalMm <= t.MinorMm {
		return 0
	}
	e, err := grooves.ThreadEndFor(t.MajorMm, t.PitchMm, false, false)
	if err != nil {
		return 0
	}
	return e.ShoulderMm
}

func (thread) check(_ *Step, c *plan.Check) { c.Limits = "counterpart runs freely, no shake" }
