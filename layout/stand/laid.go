package stand

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Laid is a copy of a loose part that the job gives a place.
type Laid = parts.Laid

// Laid are those of the job.
func (m *Stand) Laid() []Laid { return m.Job.Laid() }

// lies are the meets of loose parts with what they lie on.
func (m *Stand) lies() []assembly.Meet {
	return seq.Map(m.Laid(), func(l Laid) assembly.Meet {
		rel, _, _ := m.Placed(&l.At.Place, l.Instance, l.On)
		return assembly.Meet{ID: l.Loose.After.Value, A: l.On.ID(), B: l.ID(), OnA: rel, OnB: assembly.Still}
	})
}

// screwed lets loose parts and others lie in one another where the thread of a step of one is that of a step of
// the other, or of its tapped hole on the axis, as deep as that is.
func (m *Stand) screwed() {
	all := slices.Concat(m.Bodies, m.Passing)
	for _, l := range m.Laid() {
		mine := seq.At(all, func(b *assembly.Body) bool { return b.ID == l.ID() })
		for b := range m.Parts() {
			for _, pair := range [][2]*assembly.Body{{mine, b}, {b, mine}} {
				if mine == nil || b.ID == mine.ID {
					continue
				}
				for _, t := range threadsOf(m.PartOf(pair[0].ID)) {
					if m.threaded(pair[1], pair[0].Pose, t) {
						m.Allow(mine.ID, b.ID, (t.MajorMm-t.MinorMm)/2+FitMm)
					}
				}
			}
		}
	}
}

// driven lets parts lie in one another that joints have brought to one axis and whose steps have one thread, as
// a lead screw and the nut that it moves do.
func (m *Stand) driven() {
	for screw, r := range m.Parts() {
		for _, t := range threadsOn(r.Side(false)) {
			for nut, of := range m.Parts() {
				if SameAxis(screw.Pose, nut.Pose) && hasThread(threadsOn(of.Side(true)), t) {
					m.Allow(screw.ID, nut.ID, (t.MajorMm-t.MinorMm)/2+FitMm)
				}
			}
		}
	}
}

// threaded tells whether a step of a body, or a tapped hole of it on an axis, has a thread.
func (m *Stand) threaded(b *assembly.Body, axis assembly.Pose, t *threads.Thread) bool {
	return m.HasThread(b, t) ||
		slices.ContainsFunc(m.Mouths(b), func(f Faced) bool {
			o := f.Group.Size.Thread
			return o != nil && o.Designation == t.Designation && slices.ContainsFunc(f.At, func(at assembly.Vec) bool { return SameAxis(axis, assembly.Pose{Z: f.Out, At: at}) })
		})
}

// HasThread tells whether a step of a body, on its outside or inside, has a thread.
func (m *Stand) HasThread(b *assembly.Body, t *threads.Thread) bool {
	return hasThread(threadsOf(m.PartOf(b.ID)), t)
}

// hasThread tells whether a thread is one of some.
func hasThread(list []*threads.Thread, t *threads.Thread) bool {
	return slices.ContainsFunc(list, func(o *threads.Thread) bool { return o.Designation == t.Designation })
}

// threadsOf are the threads of a turned part.
func threadsOf(r *part.Model) []*threads.Thread {
	outside, inside := r.Sides()
	return threadsOn(slices.Concat(outside, inside))
}

// threadsOn are the threads of some steps.
func threadsOn(steps []*part.Step) (list []*threads.Thread) {
	for _, s := range steps {
		if s.Size.Thread != nil {
			list = append(list, s.Size.Thread)
		}
	}
	return list
}
