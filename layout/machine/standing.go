package machine

import (
	"cmp"
	"math"
	"slices"
	"strconv"

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

// foot finds what is welded together and stands on the face of a plate: over its
// edge, or on one of its holes.
func (m *Machine) foot() (looks []look) {
	group := m.weldGroups()
	for plate, r := range m.Parts() {
		if group[plate.ID] == "" || !r.Part.PlateLike() {
			continue
		}
		for b, other := range m.Parts() {
			if b == plate || group[b.ID] != group[plate.ID] || m.overlapping[[2]string{plate.ID, b.ID}] {
				continue
			}
			if !other.Part.PlateLike() && other.Part.Kind != parts.BarPart {
				continue // it may stand in the bore
			}
			if face, ok := facing(plate, b); ok {
				looks = append(looks, func() []plan.Problem {
					return slices.Concat(m.overhangs(plate, b, face), m.closes(plate, b, face))
				})
			}
		}
	}
	return looks
}

// weldGroups names, for each body that a weld holds, what it is welded into in
// the end.
func (m *Machine) weldGroups() map[string]string { return groups(m.OfKind(parts.WeldKind)) }

// groups names, for each body that joints hold, one of those with which it goes.
func groups(joints []*plan.JointPlan) map[string]string {
	group := map[string]string{}
	for _, j := range joints {
		a, b := j.A.Instance().ID(), j.B.Instance().ID()
		was, is := group[b], cmp.Or(group[a], a)
		group[a], group[b] = is, is
		for id, of := range group {
			if was != "" && of == was {
				group[id] = is
			}
		}
	}
	return group
}

// carriedPart is the least part of a foot that lies on what it stands on. Common
// practice, no source.
const carriedPart = 0.7

// lappedPart is the least part of what lies flat against an upright face that is on it: its seam
// holds it there, and nothing tips. Common practice, no source.
const lappedPart = 1.0 / 3

// weldedOn tells whether the first of two bodies is welded onto the second.
func (m *Machine) weldedOn(first, second string) bool {
	return slices.ContainsFunc(m.OfKind(parts.WeldKind), func(j *plan.JointPlan) bool {
		return slices.Equal(stand.EndsOf(j), []string{first, second})
	})
}

// overhangs tells whether a body stands over the edge of a plate.
func (m *Machine) overhangs(plate, b *assembly.Body, face parts.Face) []plan.Problem {
	box, own := b.Box().Moved(plate.Pose.Inverse()), plate.Solid.Box()
	toward := outward(plate, face).Reversed()
	beyond := max(box.High.X-own.High.X, own.Low.X-box.Low.X, box.High.Y-own.High.Y, own.Low.Y-box.Low.Y)
	wide, high := box.High.X-box.Low.X, box.High.Y-box.Low.Y
	long := m.FormOf(b.ID) == parts.BarPart && max(wide, high) > max(own.High.X-own.Low.X, own.High.Y-own.Low.Y) // a plate lies across it
	if beyond < StandsMm && box.High.Z-box.Low.Z >= min(wide, high) && m.weldedOn(b.ID, plate.ID) {
		beyond = m.cornerShare(plate, b, toward) * max(wide, high)
	}
	if beyond < StandsMm || long || m.weldedOn(plate.ID, b.ID) && geom.Over(wide*high, (own.High.X-own.Low.X)*(own.High.Y-own.Low.Y)) {
		return nil // else it is the plate that stands, on the body
	}
	if !assembly.Touches(plate, b, toward, StandsMm) {
		return nil
	}
	whole, least := footMm2(plate, b, toward), carriedPart
	on, over := m.carriedBy(plate, b, toward)
	if _, known := m.floor(); box.High.Z-box.Low.Z >= min(wide, high) {
		over = false // on edge
	} else if known && math.Abs(toward.Dot(m.Up)) < stand.Level {
		least, over = lappedPart, false
	}
	if over {
		return nil
	}
	if on >= least*whole {
		return m.braceBeyond(plate, b, beyond)
	}
	return []plan.Problem{m.Fault(m.between(b.ID, plate.ID), plan.Overhangs, m.Named(b.ID), m.Named(plate.ID), m.Rounded(beyond, 1))}
}

// carriedBy is the area on which a body lies on a plate and on others level with that, and whether its
// centre of gravity is over or between them.
func (m *Machine) carriedBy(plate, b *assembly.Body, toward assembly.Vec) (mm2 float64, over bool) {
	inv, all := plate.Pose.Inverse(), plate.Solid.Box()
	for o := range seq.Refs(m.Bodies) {
		if on := TouchMm2(o, b, toward); o.ID != b.ID && on > 0 {
			mm2, all = mm2+on, all.Join(o.Box().Moved(inv))
		}
	}
	_, at, _ := b.Mass()
	at = inv.Apply(at)
	return mm2, min(at.X-all.Low.X, all.High.X-at.X, at.Y-all.Low.Y, all.High.Y-at.Y) > StandsMm
}

// footMm is how far the foot of a brace may reach over an edge. Common practice, no
// source: what a rounded corner of the plate takes away.
const footMm = 5.0

// braceBeyond finds plates on edge, welded to a plate or to what stands on it, whose foot
// reaches over its edge.
func (m *Machine) braceBeyond(plate, b *assembly.Body, beyond float64) []plan.Problem {
	braces := func(j *plan.JointPlan) bool {
		a, on := j.A.Instance().ID(), j.B.Instance().ID()
		in := m.Joint(j.Name)
		said := on == plate.ID && in.Kind == parts.WeldKind && in.Weld.Length.Set() // as too long a seam
		return a == b.ID && !said && in.OnEdge()
	}
	if beyond < footMm || !m.PartOf(b.ID).Part.PlateLike() || !slices.ContainsFunc(m.Joints, braces) {
		return nil
	}
	joint := m.between(b.ID, plate.ID)
	return []plan.Problem{m.Fault(joint, plan.FootBeyond, m.Named(b.ID), m.Named(plate.ID), m.Rounded(beyond, 1))}
}

// footMm2 is the area with which a body would lie on a plate that is larger than it.
func footMm2(plate, b *assembly.Body, toward assembly.Vec) float64 {
	box, own := b.Box().Moved(plate.Pose.Inverse()), plate.Solid.Box()
	box.Low.Z, box.High.Z = own.Low.Z, own.High.Z
	floor := assembly.Body{Pose: plate.Pose, Solid: assembly.Of(assembly.Cuboid(box.Low, box.High))}
	return TouchMm2(&floor, b, toward)
}

// cornerShare is how much of the foot of what stands on a plate is where the outline of that has a corner cut or rounded off.
func (m *Machine) cornerShare(plate, b *assembly.Body, toward assembly.Vec) float64 {
	r := m.PartOf(plate.ID)
	if !r.Part.Flat() {
		return 0
	}
	whole := assembly.Body{Pose: plate.Pose, Solid: assembly.Of(assembly.Prism(assembly.Outline(solid.Outline(r)), -r.LengthMm(), 0))}
	foot := footMm2(plate, b, toward)
	return (foot - TouchMm2(&whole, b, toward)) / max(foot, StandsMm)
}

// closes tells whether a body stands on a hole or slot of a plate that no joint uses:
// no screw goes in there, or its head finds no room.
func (m *Machine) closes(plate, b *assembly.Body, face parts.Face) []plan.Problem {
	r := m.PartOf(plate.ID)
	depth := parts.At(face, 0, r.LengthMm())
	for g := range seq.Refs(r.Groups) {
		if g.Face != face && !g.Through || m.Used(r, g) {
			continue
		}
		radius, along, what := g.Size.FinishedMm/2, []plan.XY{{}}, "hole "
		if half, _, ok := g.SlotMm(); ok {
			along, what = alongSlot(half, radius), "slot "
		}
		for n, q := range g.Points {
			of := 0.0
			for _, off := range along {
				at := g.SeenFront([]plan.XY{q.Plus(off)})[0]
				o := assembly.Opening{At: plate.Pose.Apply(assembly.Vec{X: at.XMm, Y: at.YMm, Z: -depth}), Along: outward(plate, face), RadiusMm: radius, ReachMm: StandsMm}
				free, _ := o.Look(nearby([]assembly.Body{*b}, plate.ID, o))
				of += 1 - free
			}
			if of > 0 {
				return []plan.Problem{stand.Problem(m.between(b.ID, plate.ID), plan.HoleClosed, g.Pos, plan.Named(words.Spaced(g.Group.Name)), m.Named(plate.ID), m.Named(b.ID),
					plan.Named(what+strconv.Itoa(g.Group.First+n)), plan.Of(plan.Number, words.Round(100*(1-of/float64(len(along))), 0)))}
			}
		}
	}
	return nil
}

// alongSlot are middles of circles that lie close to one another along a slot, whose
// ends are half from its middle.
func alongSlot(half plan.XY, radiusMm float64) (at []plan.XY) {
	n := math.Max(1, math.Ceil(2*math.Hypot(half.XMm, half.YMm)/radiusMm))
	for i := range int(n) + 1 {
		share := 2*float64(i)/n - 1
		at = append(at, plan.XY{XMm: share * half.XMm, YMm: share * half.YMm})
	}
	return at
}

// tipsMm is how far beside a bush the centre of gravity of what turns in it may lie: by play and estimate no more than
// within. Common practice, no source.
const tipsMm = 1.0

// liftsAside finds eyes for lifting, copies of one part, that all lie on one side of the centre of gravity, of what they are
// welded to and of the whole machine: of two along the line between them, of more all round.
func (m *Machine) liftsAside() (found []plan.Problem) {
	_, known := m.floor()
	eyes, hole, group := map[string][]*assembly.Body{}, map[string]*parts.HoleGroup{}, m.weldGroups()
	for b, r := range m.Parts() {
		for _, f := range m.Mouths(b) {
			if name := r.Part.Name.Value; f.Group.Hole.For == parts.Lifting && !f.Used && stand.StandsIn(b) == 0 {
				eyes[name], hole[name] = seq.Add(eyes[name], b), f.Group.Hole
			}
		}
	}
	for _, r := range m.Job.Parts {
		of := eyes[r.Name.Value]
		if !known || len(of) < 2 {
			continue
		}
		beside := func(in func(b assembly.Body) bool) float64 {
			all := assembly.Together(seq.Keep(m.Bodies, in))
			return besideMm(seq.Map(of, func(b *assembly.Body) assembly.Vec { return b.Box().Centre().Sub(all.Centre) }), m.Up)
		}
		welded := beside(func(b assembly.Body) bool { return group[b.ID] != "" && group[b.ID] == group[of[0].ID] })
		whole := beside(func(b assembly.Body) bool { return stand.StandsIn(&b) == 0 })
		if off := min(welded, whole); geom.Over(off, tipsMm) {
			found = append(found, stand.Problem(m.between(of[0].ID, ""), plan.LiftsAside, hole[r.Name.Value].Pos, plan.Named(r.Title.Value), m.Rounded(off, 0)))
		}
	}
	return found
}

// besideMm is how far places, of two or more, all lie on one side of a centre, across the way up.
func besideMm(at []assembly.Vec, up assembly.Vec) (mm float64) {
	const sides = 72
	ways := assembly.Round(up, sides)
	if line := at[0].Sub(at[1]); len(at) == 2 {
		line = line.Sub(up.Times(line.Dot(up)))
		ways = []assembly.Vec{line.Unit(), line.Unit().Reversed()}
	}
	for _, way := range ways {
		mm = max(mm, seq.Least(at, func(p assembly.Vec) float64 { return p.Dot(way) }))
	}
	return mm
}

// liftsLow finds holes for lifting of which none lies over the centre of gravity of their part
// as it stands.
func (m *Machine) liftsLow() (found []plan.Problem) {
	for b := range m.Parts() {
		seen := map[*part.Group]bool{}
		for _, f := range m.Mouths(b) {
			in := f.Group.Hole
			if seen[f.Group] || f.Used || in.For != parts.Lifting {
				continue
			}
			seen[f.Group] = true
			_, centre, known := b.Mass()
			high := seq.Max(-inf, f.At, func(at assembly.Vec) float64 { return at.Sub(centre).Dot(m.Up) })
			if known && geom.Over(-high, StandsMm) {
				joint := m.between(b.ID, "")
				found = append(found, stand.Problem(joint, plan.LiftsLow, in.Pos, plan.Named(words.Spaced(f.Group.Group.Name)), m.Named(b.ID), m.Rounded(-high, 0)))
			}
		}
	}
	return found
}
