package part

import (
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// detail is something on a step besides its diameter and length. What a kind
// has nothing to say to, bare says nothing to.
type detail interface {
	contour(s *Sizes, st *Step, line []plan.XY) []plan.XY // the step's contour, front to back, with it
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
func details(st *Step) []detail {
	in := st.Drawn
	var out []detail
	if st.Undercut != nil {
		out = append(out, undercut{Undercut: st.Undercut})
	}
	if st.Finish != "" {
		out = append(out, finish{text: st.Finish, ground: in.Hardness.Pos.Line != 0})
	}
	if in.Seat.Value != "" {
		text := in.Seat.Value
		text += words.When(in.Lip != "", ", lip to the "+string(in.Lip))
		out = append(out, seat{text: text})
	}
	if in.Hardness.Pos.Line != 0 {
		out = append(out, hardened{hrc: in.Hardness.Value})
	}
	if st.Size.Thread != nil {
		out = append(out, thread{})
	}
	return out
}

// bare is a detail that changes nothing.
type bare struct{}

func (bare) contour(_ *Sizes, _ *Step, line []plan.XY) []plan.XY       { return line }
func (bare) note(words.Writer) string                                  { return "" }
func (bare) clause(words.Writer) string                                { return "" }
func (bare) after(*bench, *Step) (int, string)                         { return 0, "" }
func (bare) check(*Step, *plan.Check)                                  {}
func (bare) more(*record, *Step)                                       {}
func (bare) dimension(*Sizes, *Step, *plan.Dimension) []plan.Dimension { return nil }

// seat is what sits on the step.
type seat struct {
	bare
	text string
}

func (s seat) note(words.Writer) string   { return s.text }
func (s seat) clause(words.Writer) string { return " (" + s.text + ")" }

// detailOf is the detail of a kind on a step; ok is false where it has none.
func detailOf[T detail](s *Step) (d T, ok bool) {
	for _, on := range s.details {
		if d, ok = on.(T); ok {
			break
		}
	}
	return d, ok
}
