package machine

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// bridgedMm is the widest gap that a weld bridges, looked for at places
// seamFinestMm apart. Common practice, no source.
const (
	bridgedMm    = 5.0
	seamFinestMm = 2.0
	apartToMm    = 0.8 // to which it is said how far parts stand apart, and standOffToMm how far off a brace stands
	standOffToMm = 0.2
)

// contact finds parts that are to be welded and stand apart.
func (m *Machine) contact() (looks []look) {
	for _, j := range m.OfKind(parts.WeldKind) {
		looks = append(looks, func() []plan.Problem {
			return slices.Concat(m.apart(j), m.otherSide(j), m.beyond(j), m.mouthPast(j), m.bracesOne(j))
		})
	}
	return looks
}

// apart tells whether the parts of a weld stand apart.
func (m *Machine) apart(j *plan.JointPlan) []plan.Problem {
	a, b := m.At(j.A), m.At(j.B)
	skew := slices.ContainsFunc(m.Problems, func(p plan.Problem) bool { return p.Kind == plan.FrameSkew && p.Joint == j.Name })
	if a == nil || b == nil || a == b || skew || assembly.Near(a, b, bridgedMm, seamFinestMm) {
		return nil
	}
	mm, _ := assembly.Clearance(a, b, geom.LargestMm, apartToMm)
	if mm > geom.LargestMm-2*apartToMm { // they stand in the room by chance
		return []plan.Problem{m.Fault(j.Name, plan.WeldUnplaced, m.Named(a.ID), m.Named(b.ID), words.InPlaceOf(m.Joint(j.Name).Meet))}
	}
	return []plan.Problem{m.Fault(j.Name, plan.WeldApart, m.Named(a.ID), m.Named(b.ID), m.Rounded(mm, 0))}
}

// otherSide finds welds that name another side of a part than that to which what they weld on it reaches. What a
// place: says of the sides is held against their names elsewhere.
func (m *Machine) otherSide(j *plan.JointPlan) []plan.Problem {
	if m.Joint(j.Name).Place != nil {
		return nil
	}
	for _, pair := range [][2]plan.JointEnd{{j.A, j.B}, {j.B, j.A}} {
		on, other, side := m.At(pair[0]), m.At(pair[1]), pair[0].Feature
		if on == nil || other == nil || on == other || !slices.Contains(solid.Faces, side) || m.Mitred(pair[0].Instance(), side) {
			continue
		}
		out := on.Pose.Turn(solid.OutOf(side))
		_, face := on.Along(out)
		if _, reach := other.Along(out); face-reach > bridgedMm {
			return []plan.Problem{m.Fault(j.Name, plan.WeldOtherSide, m.Named(other.ID), plan.Named(words.Spaced(side)), m.Named(on.ID), m.Rounded(face-reach, 0))}
		}
	}
	return nil
}

// beyond finds plates that stand on edge and are welded along more than lies on what
// they touch of what is welded by then.
func (m *Machine) beyond(j *plan.JointPlan) []plan.Problem {
	in, a := m.Joint(j.Name), m.At(j.A)
	if a == nil || !in.OnEdge() || !in.Weld.Length.Set() || !m.Model(j.A.Part).Part.PlateLike() {
		return nil
	}
	on, there := 0.0, map[string]bool{a.ID: true}
	for _, o := range slices.Backward(plan.OfKind(m.Joints[:j.N], parts.WeldKind)) { // what it is welded to first
		for _, end := range []plan.JointEnd{o.A, o.B} {
			b := m.At(end)
			if b == nil || there[b.ID] {
				continue
			}
			if there[b.ID] = true; Touch(b, a) {
				on += CommonMm(a, b)
			}
			if in.Weld.Length.Mm <= on+2*StandsMm {
				return nil
			}
		}
	}
	if on == 0 {
		return nil
	}
	return []plan.Problem{m.Fault(j.Name, plan.SeamBeyond, plan.Of(plan.Mm, in.Weld.Length.Mm), m.Named(a.ID), m.Rounded(on, 1))}
}

// mouthEveryMm is how far apart the rim of a mouth is looked at, mouthOffMm how far it is off what it stands on where no
// fillet closes that. Common practice, no source.
const mouthEveryMm, mouthOffMm = 5.0, 3.0

// mouthPast finds the square mouth of a transition that is welded on and stands partly in the air, beside what is flat
// there: how far off it is at the most.
func (m *Machine) mouthPast(j *plan.JointPlan) []plan.Problem {
	a, b := m.At(j.A), m.At(j.B)
	if a == nil || b == nil || j.A.Feature != "mouth" {
		return nil
	}
	in := m.PartOf(a.ID).Part.Transition
	x, y, others := (in.Width.Mm-in.Thickness.Mm)/2, (in.Depth.Mm-in.Thickness.Mm)/2, m.others(a.ID)
	var off []float64
	corners := []assembly.Vec{{X: -x, Y: -y}, {X: x, Y: -y}, {X: x, Y: y}, {X: -x, Y: y}}
	for i, from := range corners {
		along := corners[(i+1)%len(corners)].Sub(from)
		n := math.Ceil(along.Len() / mouthEveryMm)
		for k := range int(n) + 1 {
			at := a.Pose.Apply(from.Add(along.Times(float64(k) / n)))
			off = append(off, seq.Least(others, func(o assembly.Body) float64 { return o.Dist(at) }))
		}
	}
	least, most := slices.Min(off), slices.Max(off)
	if least >= mouthOffMm || most < mouthOffMm {
		return nil
	}
	return []plan.Problem{m.Fault(j.Name, plan.MouthPast, m.Named(a.ID), m.Named(b.ID), m.Rounded(most, 1))}
}

// bracesOne finds a brace on edge that touches one part alone, and what it stands off.
func (m *Machine) bracesOne(j *plan.JointPlan) []plan.Problem {
	in, a, plate := m.Joint(j.Name), m.At(j.A), m.At(j.B)
	if a == nil || plate == nil || !in.OnEdge() || m.PartOf(a.ID).Part.For != parts.Brace {
		return nil
	}
	up := outward(plate, parts.Face(in.Place.On))
	above := func(b *assembly.Body) assembly.Box {
		return b.Box().Moved(assembly.Frame(assembly.Vec{}, up, up.Square()).Inverse())
	}
	touched, near, least := "", "", inf
	welds := m.OfKind(parts.WeldKind)
	for b := range seq.Refs(m.Bodies) {
		if b == a || !slices.ContainsFunc(welds, func(o *plan.JointPlan) bool { return slices.Contains(stand.EndsOf(o), b.ID) }) {
			continue
		}
		switch {
		case !Touch(b, a):
			if above(b).High.Z < above(a).Low.Z+bridgedMm {
				continue // behind what it stands on
			}
			if mm, ok := assembly.Clearance(a, b, min(least, geom.LargestMm), standOffToMm); ok && mm < least {
				near, least = b.ID, mm
			}
		case touched != "":
			return nil
		default:
			touched = b.ID
		}
	}
	if touched == "" || near == "" {
		return nil
	}
	return []plan.Problem{m.Fault(j.Name, plan.BracesOne, m.Named(a.ID), m.Named(touched), m.Named(near), m.Rounded(least, 1))}
}

// How far an opening is free outside its mouth, and how much of it may be
// covered before it counts. Common practice, no source.
const (
	freeMm   = 8.0
	freePart = 0.7
)

// openings looks out of every opening in a part's side, and into the bore, and says what covers it.
func (m *Machine) openings() (looks []look) {
	for b, r := range m.Parts() {
		for f := range seq.Refs(r.Radials) {
			looks = append(looks, func() []plan.Problem { return slices.Concat(m.lookOut(b, r, f), m.lookIn(b, f)) })
		}
	}
	return looks
}

// nearby are those of some bodies that come near the mouth of an opening of one.
func nearby(all []assembly.Body, id string, o assembly.Opening) []assembly.Body {
	far := o.RadiusMm + o.ReachMm
	room := assembly.Box{Low: o.At.Sub(assembly.Vec{X: far, Y: far, Z: far}), High: o.At.Add(assembly.Vec{X: far, Y: far, Z: far})}
	return seq.Keep(all, func(b assembly.Body) bool { return b.ID != id && b.Box().Meets(room, 0) })
}

// openingOf is the mouth of an opening in a round, looked out of.
func openingOf(b *assembly.Body, row *plan.RadialRow) assembly.Opening {
	out := assembly.ClockWay(row.ClockDeg)
	mouth := out.Times(row.OutsideMm / 2).Add(assembly.Vec{Z: -row.AxialMm})
	return assembly.Opening{At: b.Pose.Apply(mouth), Along: b.Pose.Turn(out)}
}

// lookOut looks out of the openings of one row. The first that is covered speaks
// for the others.
func (m *Machine) lookOut(b *assembly.Body, r *part.Model, f *part.Radial) []plan.Problem {
	for _, row := range f.Rows {
		o := openingOf(b, &row)
		o.RadiusMm, o.ReachMm = cmp.Or(f.Size.FinishedMm, math.Min(row.AroundMm, row.AlongMm))/2, freeMm
		if f.In.Shape == parts.RadialSlot && !f.In.Through {
			o.ReachMm = min(o.ReachMm, f.In.Depth.Mm) // a key or a tongue lies in it
		}
		free, covers := o.Look(nearby(m.Bodies, b.ID, o))
		if free >= freePart || len(covers) == 0 {
			continue
		}
		if r := m.PartOf(covers[0].ID); r != nil && r.Part.For == parts.Guarding {
			continue // that is what a guard is for
		}
		joint := m.between(b.ID, covers[0].ID)
		if in := m.Joint(joint); in != nil && in.Kind == parts.PressKind {
			continue // what is pressed on is looked at where the press is
		}
		return []plan.Problem{stand.Problem(joint, plan.OpeningCovered, f.In.Pos, plan.Named(words.Spaced(row.Name)), m.Named(b.ID), m.Named(covers[0].ID), m.Rounded(covers[0].FirstMm, 1))}
	}
	return nil
}

// lookIn looks from the openings of one row that feed or drain a bore at what is pressed into it, and says what closes
// one whole. A groove round that lets through.
func (m *Machine) lookIn(b *assembly.Body, f *part.Radial) []plan.Problem {
	if !f.In.For.Opens() || !f.In.Through || f.Size.FinishedMm == 0 {
		return nil
	}
	const skinMm = 0.5 // each side of the surface of the bore
	for _, row := range f.Rows {
		in := openingOf(b, &row)
		in.Along = in.Along.Reversed()
		in.At = in.At.Add(in.Along.Times(row.DepthMm - skinMm))
		in.RadiusMm, in.ReachMm = f.Size.FinishedMm/4, 2*skinMm
		for _, j := range m.OfKind(parts.PressKind) {
			inner, outer := m.At(j.A), m.At(j.B)
			if free, _ := in.Look([]assembly.Body{*inner}); outer == b && free == 0 {
				return []plan.Problem{stand.Problem(j.Name, plan.FeedClosed, f.In.Pos, plan.Named(words.Spaced(row.Name)), m.Named(b.ID), m.Named(inner.ID))}
			}
		}
	}
	return nil
}
