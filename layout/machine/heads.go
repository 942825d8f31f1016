package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// landMm is how far a head stands over the edge of its hole, all round, at the least: edges are broken by less.
// Common practice, no source.
const landMm = 0.5

// headsPass finds loose parts, and pins that slide, whose shoulder lies at the mouth of a hole that is as wide as their
// head, while nothing else holds them that way: they fall through.
func (m *Machine) headsPass() (found []plan.Problem) {
	of, said := m.fixed(), map[string]bool{} // the first of a part speaks for the others
	look := func(i parts.Instance, joint string, pos parts.Pos) {
		if pin := m.Standing(i); pin != nil && !said[i.Part] {
			if p := m.headPasses(pin, of); p != nil {
				p.Joint, p.Pos, said[i.Part] = joint, pos, true
				found = append(found, *p)
			}
		}
	}
	for _, l := range m.Laid() {
		if l.Loose.Travels == nil && l.Loose.Held != parts.ByForce {
			look(l.Instance, l.Loose.After.Value, l.At.Pos)
		}
	}
	for _, j := range m.OfKind(parts.SlideKind) {
		if m.Job.Runs(m.Joint(j.Name)) {
			look(j.B.Instance(), j.Name, m.PosOf(j.Name))
		}
	}
	return found
}

// headPasses is what is wrong with the shoulder of a pin that lies at the mouth of a hole; nil where something else that is
// not fixed to the pin meets it on that way.
func (m *Machine) headPasses(pin *assembly.Body, of func(id string) string) *plan.Problem {
	steps := m.PartOf(pin.ID).Side(false)
	for n := range len(steps) - 1 {
		head, shank, toward, at := steps[n], steps[n+1], pin.Pose.Z.Reversed(), steps[n].ToMm
		if head.Size.NominalMm < shank.Size.NominalMm {
			head, shank, toward = shank, head, pin.Pose.Z
		}
		if head.Size.Thread != nil || shank.Size.Thread != nil {
			continue
		}
		for b := range m.Parts() {
			if b.ID == pin.ID {
				continue
			}
			h := seq.At(m.mouths(b), func(h *mouth) bool {
				return h.holds(pin.Pose, shank.Span(), nil) && h.opensAt(pin.Pose.Apply(assembly.Vec{Z: -at})) && h.isMm > head.Size.NominalMm-2*landMm &&
					h.isMm-head.Size.NominalMm <= max(stand.FitMm, roomShare*head.Size.NominalMm)
			})
			if h == nil || m.meets(pin, toward, func(o string) bool { return o == b.ID || of(o) == of(pin.ID) }) {
				continue
			}
			p := stand.Problem("", plan.HeadPasses, parts.Pos{}, plan.Named(m.Title(pin.ID)+" "+words.Spaced(head.Name)),
				plan.Named(m.Title(b.ID)+" "+words.Spaced(h.name)), plan.Of(plan.Diameter, head.Size.NominalMm), plan.Of(plan.Diameter, h.isMm))
			return &p
		}
	}
	return nil
}

// opensAt tells whether one of the mouths of a hole lies in the plane across its axis at a place.
func (h *mouth) opensAt(at assembly.Vec) bool {
	deep := h.at.Sub(at).Dot(h.out)
	return math.Abs(deep) <= StandsMm || math.Abs(deep-h.deepMm) <= StandsMm
}

// meets tells whether a body touches anything on a way, but for some.
func (m *Machine) meets(b *assembly.Body, toward assembly.Vec, but func(id string) bool) bool {
	return slices.ContainsFunc(m.Bodies, func(o assembly.Body) bool {
		return o.ID != b.ID && !but(o.ID) && TouchMm2(&o, b, toward) > 0
	})
}

// shutIn finds screws whose heads lie inside a tube bar that is none of their joint. The
// first of a joint speaks for the others.
func (m *Machine) shutIn() (found []plan.Problem) {
	var tubes []assembly.Body
	for b, r := range m.Parts() {
		if r.Part.Tubular() {
			tubes = append(tubes, *b)
		}
	}
	for _, j := range m.Joints {
		if p, ok := m.headIn(j, tubes); ok {
			found = append(found, p)
		}
	}
	return found
}

func (m *Machine) headIn(j *plan.JointPlan, tubes []assembly.Body) (p plan.Problem, ok bool) {
	for s := range seq.Refs(m.Bodies) {
		for b := range seq.Refs(tubes) {
			if of := m.Of[b.ID]; of.Part != j.A.Part && of.Part != j.B.Part && m.IsScrew(s.ID, j) && headBoxed(b, s) {
				return m.Fault(j.Name, plan.HeadShutIn, plan.Named(words.Spaced(j.Name)), m.Named(b.ID), m.Rounded(fromEnds(b, topOf(s)), 1)), true
			}
		}
	}
	return p, false
}

// Hooded lists the folded parts that later joints bring, in whose box heads of a joint lie: guards
// and hoods, which come off before a hand reaches them.
func (m *Machine) Hooded(j *plan.JointPlan) (titles []string) {
	for b, r := range m.Parts() {
		if r.Part.Kind != parts.Folded || slices.ContainsFunc(m.Joints[:j.N], func(o *plan.JointPlan) bool { return slices.Contains(stand.EndsOf(o), b.ID) }) {
			continue
		}
		if slices.ContainsFunc(m.Bodies, func(s assembly.Body) bool {
			return m.IsScrew(s.ID, j) && headBoxed(b, &s)
		}) {
			titles = append(titles, m.Title(b.ID))
		}
	}
	return titles
}

// topOf is the top of the head of a screw, in the machine; headBoxed tells whether that head lies in the box of a body.
func topOf(screw *assembly.Body) assembly.Vec {
	return screw.Pose.Apply(assembly.Vec{Z: screw.Solid.Box().High.Z})
}

func headBoxed(b, screw *assembly.Body) bool {
	return boxed(b, screw.Pose.At) && boxed(b, topOf(screw))
}

// boxed tells whether a place lies in the box that a body fills in its own frame, its
// faces with it.
func boxed(b *assembly.Body, at assembly.Vec) bool {
	q := b.Pose.Inverse().Apply(at)
	return b.Solid.Box().Meets(assembly.Box{Low: q, High: q}, stand.Level)
}

// fromEnds is how far a place in a bar, which lies along x, lies from its farther end.
func fromEnds(b *assembly.Body, at assembly.Vec) float64 {
	q, box := b.Pose.Inverse().Apply(at), b.Solid.Box()
	return math.Max(q.X-box.Low.X, box.High.X-q.X)
}
