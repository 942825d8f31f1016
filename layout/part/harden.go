package part

import (
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

// hardened is a step that is hardened and ground after it is turned; one of no hardness is ground with
// those that are, as they move it.
type hardened struct {
	bare
	hrc float64
}

func (h hardened) note(words.Writer) string {
	return words.When(h.hrc != 0, words.Trim(h.hrc, 1)+" HRC at least")
}
func (h hardened) clause(w words.Writer) string {
	return "; leave " + w.Near(grindMm) + " on the diameter for grinding (common practice, no source)"
}

func (h hardened) check(_ *Step, c *plan.Check) {
	c.Gauge += words.When(h.hrc != 0, ", hardness tester or file")
}

// grindMm is left on a diameter for grinding, within grindOffMm. Common practice, no source.
const (
	grindMm    = 0.3
	grindOffMm = 0.05
)

// hardened is how hard a step is made before it is ground to its size; ok is false for one that is not.
func (s *Step) hardened() (h hardened, ok bool) { return detailOf[hardened](s) }

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
