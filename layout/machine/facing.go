package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// faced is a group of holes at one face of a body.
type faced struct {
	body  *assembly.Body
	model *part.Model
	group *part.Group
	at    []assembly.Vec // the middles of the mouths
	run   assembly.Vec   // of slots: from there to the centre of an end; zero of holes
	out   assembly.Vec
	sunk  bool // heads lie in the mouths
	used  bool // by a joint
}

// mouths are the groups of holes of a body, once for each face they open on.
func (m *Machine) mouths(b *assembly.Body) []faced {
	return seq.Keep(m.holesAndSlots(b), func(f faced) bool { return f.group.Hole != nil })
}

// holesAndSlots are the mouths of both.
func (m *Machine) holesAndSlots(b *assembly.Body) (all []faced) {
	r := m.partOf(b.ID)
	for g := range seq.Refs(r.Groups) {
		for _, face := range []parts.Face{parts.Front, parts.Back} {
			if face != g.Face && (!g.Through() || g.OnWall()) {
				continue
			}
			f := faced{body: b, model: r, group: g, out: assembly.AxisZ, used: m.used(r, g)}
			f.sunk = face == g.Face && g.Hole != nil && (g.Hole.Counterbore != nil || g.Hole.Countersink != nil)
			pose, deep := b.Pose.Of(wall(r, g)), 0.0
			if !g.OnWall() {
				if face == parts.Back {
					f.out = f.out.Reversed()
				}
				z, _, ok := r.PlaneOf(g, face)
				if !ok {
					continue
				}
				deep = z
			}
			half, _, _ := g.SlotMm()
			q := seenFront(g, []plan.XY{half})[0]
			f.out, f.run = pose.Turn(f.out), pose.Turn(assembly.Vec{X: q.XMm, Y: q.YMm})
			f.at = seq.Map(seenFront(g, g.OwnMm()), func(q plan.XY) assembly.Vec { return pose.Apply(assembly.Vec{X: q.XMm, Y: q.YMm, Z: -deep}) })
			all = append(all, f)
		}
	}
	return all
}

// faces looks at the holes, in no joint, of two parts whose faces a bolted joint puts
// together, and of loose parts on what they lie on: at those that a part closes, and at those that face one another and do
// not meet.
func (m *Machine) faces() (looks []look) {
	for _, j := range m.ofKind(parts.BoltKind) {
		a, b := m.at(j.A), m.at(j.B)
		if a == nil || b == nil {
			continue
		}
		looks = append(looks, func() (found []plan.Problem) {
			of, to := m.mouths(a), m.mouths(b)
			for i := range of {
				found = append(found, m.deadEnd(j, &of[i], b)...)
				for k := range to {
					found = append(found, m.unmet(j, &of[i], &to[k])...)
				}
			}
			for k := range to {
				found = append(found, m.deadEnd(j, &to[k], a)...)
			}
			return found
		})
	}
	for _, l := range m.laid() {
		on, j := m.standing(l.on), seq.First(m.joints, func(j *plan.JointPlan) bool { return j.Name == l.e.After.Value })
		if b := m.standing(l.Instance); b != nil && on != nil && j != nil {
			looks = append(looks, func() (found []plan.Problem) {
				for _, f := range m.mouths(b) {
					found = append(found, m.deadEnd(j, &f, on)...)
				}
				return found
			})
		}
	}
	return looks
}

// deadEnd finds holes for bolts that a part closes where they come out, and blind threads
// that it closes where the screw goes in.
func (m *Machine) deadEnd(j *plan.JointPlan, f *faced, other *assembly.Body) []plan.Problem {
	hole := f.group.Hole
	if f.used {
		return nil
	}
	if hole.Size.Make == parts.PlainHole && hole.Through {
		return m.partShut(j, f, other)
	}
	if f.sunk || hole.Size.Make != parts.ClearanceHole && (hole.Size.Make != parts.TappedHole || hole.Through) {
		return nil
	}
	if t := f.group.Size.Thread; t != nil && sameAxis(other.Pose, assembly.Pose{Z: f.out, At: f.at[0]}) && m.stepped(other, t) {
		return nil // screwed onto it
	}
	if f.shutBy(other, half) > 0 {
		return []plan.Problem{m.ofHoles(plan.HoleDeadEnd, j, f, m.named(other.ID))}
	}
	return nil
}

// half of a mouth: no screw goes in by less.
const half = 0.5

// shutBy counts the holes of which a body leaves no more than a share free.
func (f *faced) shutBy(other *assembly.Body, share float64) (n int) {
	for _, at := range f.at {
		o := assembly.Opening{At: at, Along: f.out, RadiusMm: f.group.Size.FinishedMm / 2, ReachMm: standsMm}
		if free, covers := o.Look([]assembly.Body{*other}); free <= share && len(covers) > 0 {
			n++
		}
	}
	return n
}

// partShut finds plain holes of one group of which a part closes some, and has none of
// that name itself.
func (m *Machine) partShut(j *plan.JointPlan, f *faced, other *assembly.Body) []plan.Problem {
	n := f.shutBy(other, 0)
	if n == 0 || n == len(f.at) || groupNamed(m.partOf(other.ID), f.group.Group.Name) != nil {
		return nil
	}
	return []plan.Problem{m.ofHoles(plan.HolesPartShut, j, f, m.named(other.ID), plan.Of(plan.Number, float64(n)), plan.Of(plan.Number, float64(len(f.at))))}
}

// meetMm is how far beside one another holes may lie that meet. Common practice,
// no source: what marking out and drilling hold.
const meetMm = 0.25

// unmet finds holes that face one another: those of two groups of one name are to meet
// each with each, but for jack screws in both, and of any two none is to cut the other.
func (m *Machine) unmet(j *plan.JointPlan, f, g *faced) []plan.Problem {
	if f.used || g.used || f.out.Dot(g.out) > -1+1e-6 || math.Abs(g.at[0].Sub(f.at[0]).Dot(f.out)) > standsMm {
		return nil
	}
	a, b := f.group.Size.FinishedMm/2, g.group.Size.FinishedMm/2
	tapped := func(f *faced) bool { return f.group.Hole.Size.Make == parts.TappedHole }
	alike := f.group.Group.Name == g.group.Group.Name && !(tapped(f) && tapped(g))
	few, many := f.at, g.at
	if len(few) > len(many) {
		few, many = many, few
	}
	worst := 0.0
	for _, p := range few {
		off := seq.Min(inf, many, func(q assembly.Vec) float64 { return q.Sub(p).Len() })
		if off > math.Abs(a-b)+meetMm && (alike || off < a+b) {
			worst = max(worst, off)
		}
	}
	if worst == 0 {
		return nil
	}
	return []plan.Problem{m.ofHoles(plan.HolesUnmet, j, f, plan.Named(words.Spaced(g.group.Group.Name)), m.named(g.body.ID), plan.Of(plan.Mm, words.Round(worst, 2)))}
}

// copies are the bodies of a part, those that come off again as well.
func (m *Machine) copies(part string) []assembly.Body {
	return seq.Keep(slices.Concat(m.Bodies, m.passing), func(b assembly.Body) bool { return part != "" && m.Of[b.ID].Part == part })
}

// holes are the mouths of a group of holes of all copies of a part.
func (m *Machine) holes(part, group string) (all []faced) {
	for b := range seq.Refs(m.copies(part)) {
		all = append(all, slices.DeleteFunc(m.mouths(b), func(f faced) bool { return f.group.Group.Name != group })...)
	}
	return all
}

// Apart is how far the holes of two groups of two parts stand apart along their axes and
// beside one another where they come nearest, mm; ok is false where none are parallel,
// one has no place, or the parts lie in one another.
func (m *Machine) Apart(part, group, other, to string) (apartMm, besideMm float64, ok bool) {
	least := inf
	for _, f := range m.holes(part, group) {
		for _, g := range m.holes(other, to) {
			if math.Abs(f.out.Dot(g.out)) < 1-1e-6 || m.overlapping[[2]string{f.body.ID, g.body.ID}] {
				continue
			}
			along := math.Abs(g.at[0].Sub(f.at[0]).Dot(f.out))
			beside := seq.Max(0, f.at, func(p assembly.Vec) float64 { return g.beside(p, f.out) })
			if along+beside < least {
				least, apartMm, besideMm, ok = along+beside, along, beside, true
			}
		}
	}
	return apartMm, besideMm, ok
}

// beside is how far the nearest hole, or the middle line of a slot, lies beside an axis through a place.
func (f *faced) beside(p, along assembly.Vec) float64 {
	return seq.Min(inf, f.at, func(q assembly.Vec) float64 {
		off := q.Sub(p).Sub(along.Times(q.Sub(p).Dot(along)))
		if long := f.run.Dot(f.run); long > 0 {
			off = off.Sub(f.run.Times(max(-1, min(1, off.Dot(f.run)/long))))
		}
		return off.Len()
	})
}

// Off is how far beside all holes of a group of another part the nearest hole or slot of a copy of a part lies, mm,
// of the copy that lies farthest; ok is false where one has no place, or none are parallel.
func (m *Machine) Off(part, other, to string) (offMm float64, ok bool) {
	holes := m.holes(other, to)
	for b := range seq.Refs(m.copies(part)) {
		near := inf
		for f := range seq.Refs(m.holesAndSlots(b)) {
			for _, g := range holes {
				if math.Abs(f.out.Dot(g.out)) > 1-1e-6 {
					near = seq.Min(near, g.at, func(p assembly.Vec) float64 { return f.beside(p, f.out) })
				}
			}
		}
		offMm, ok = max(offMm, near), ok || !math.IsInf(near, 1)
	}
	return offMm, ok
}

// On is a place of a part in the frames of the copies of another on its axis, for each copy of both.
func (m *Machine) On(part string, at assembly.Vec, other string) (all []assembly.Vec) {
	for a := range seq.Refs(m.Bodies) {
		for b := range seq.Refs(m.Bodies) {
			of, to := m.Of[a.ID].Part, m.Of[b.ID].Part
			if rel := b.Pose.Inverse().Of(a.Pose); of == part && to == other && a != b && math.Abs(rel.Z.Z) > 1-1e-6 && math.Hypot(rel.At.X, rel.At.Y) < standsMm {
				all = append(all, rel.Apply(at))
			}
		}
	}
	return all
}

// Under are the titles of what lies before a mouth of each hole of a group, copy by copy of a part that
// has a place, reachMm off at most; empty for nothing.
func (m *Machine) Under(part, group string, reachMm float64) (all []string) {
	of, under := "", []string(nil)
	for _, f := range m.holes(part, group) {
		if f.body.ID != of {
			all, of, under = append(all, under...), f.body.ID, nil
		}
		others := m.others(f.body.ID)
		for n, at := range f.at {
			if n == len(under) {
				under = append(under, "")
			}
			if hit := assembly.Crossings(others, at, f.out); len(hit) > 0 && hit[0].FromMm <= reachMm {
				under[n] = m.partOf(hit[0].ID).Out.Title
			}
		}
	}
	return append(all, under...)
}

// others are the made bodies but for one.
func (m *Machine) others(id string) []assembly.Body {
	return seq.Keep(m.Bodies, func(b assembly.Body) bool { return b.ID != id && m.made(b.ID) })
}

// Above is what lies nearest over the upper mouths of a group of holes, made or standing there, and how far
// over them it is, mm; empty for nothing.
func (m *Machine) Above(part, group string) (over string, freeMm float64) {
	return m.beforeMouths(part, group, m.Up)
}

// Below is the same under their lower mouths.
func (m *Machine) Below(part, group string) (under string, freeMm float64) {
	return m.beforeMouths(part, group, m.Up.Reversed())
}

// beforeMouths is what lies nearest before the mouths of a group that look a way, beside a smaller hole in it too.
func (m *Machine) beforeMouths(part, group string, way assembly.Vec) (title string, freeMm float64) {
	freeMm = inf
	for _, f := range m.holes(part, group) {
		if f.out.Dot(way) <= 0.5 {
			continue
		}
		rim := f.out.Square().Times(0.45 * f.group.Size.FinishedMm)
		for k := range 3 * len(f.at) {
			at := f.at[k/3].Add(rim.Times(float64(k%3 - 1)))
			if hit := assembly.Crossings(m.Bodies, at, f.out); len(hit) > 0 && hit[0].FromMm < freeMm {
				title, freeMm = m.title(hit[0].ID), hit[0].FromMm
			}
		}
	}
	return title, freeMm
}

// Uneven is how much deeper than elsewhere round its axis a screw in one of the holes of a group comes down,
// on what lies nearest before a mouth of it and reachMm off at most: how much at the worst, mm, and on what.
func (m *Machine) Uneven(part, group string, radiusMm, reachMm float64) (mm float64, on string) {
	const rays = 12
	nearest := inf
	for _, f := range m.holes(part, group) {
		others := slices.DeleteFunc(slices.Clone(m.Bodies), func(b assembly.Body) bool { return b.ID == f.body.ID || m.roles[b.ID].kind == aScrew })
		for _, at := range f.at {
			low, high, first := inf, 0.0, ""
			for k := range rays + 1 {
				side := f.out.Square().Times(radiusMm)
				if k == rays {
					side = assembly.Vec{}
				}
				off := reachMm
				if hit := assembly.Crossings(others, at.Add(assembly.Rotate(f.out, 360*float64(k)/rays).Turn(side)), f.out); len(hit) > 0 && hit[0].FromMm < reachMm {
					off = hit[0].FromMm
					if off < low {
						first = hit[0].ID
					}
				}
				low, high = min(low, off), max(high, off)
			}
			if low < nearest-standsMm || low < nearest+standsMm && high-low > mm {
				nearest, mm, on = low, high-low, m.title(first)
			}
		}
	}
	return mm, on
}

// Over is the part that lies nearest over a hole of a group, radiusMm round its middle and up to
// highMm over its upper mouth, with how far round it is free, mm; empty where none does.
func (m *Machine) Over(part, group string, radiusMm, highMm float64) (other string, freeMm float64) {
	const rounds, rays = 48, 12
	for _, f := range m.holes(part, group) {
		others := m.others(f.body.ID)
		for k := range len(f.at) * rounds * rays {
			at, r := f.at[k/rounds/rays], radiusMm*float64(k/rays%rounds)/rounds // the full radius itself may touch
			if f.out.Dot(m.Up) < 0.5 || other != "" && r >= freeMm {
				continue
			}
			side := assembly.Rotate(f.out, 360*float64(k%rays)/rays).Turn(f.out.Square())
			if hit := assembly.Crossings(others, at.Add(side.Times(r)), f.out); len(hit) > 0 && hit[0].FromMm <= highMm {
				other, freeMm = m.Of[hit[0].ID].Part, r
			}
		}
	}
	return other, freeMm
}

// ofHoles is a problem of holes whose first arguments name them.
func (m *Machine) ofHoles(kind plan.ProblemKind, j *plan.JointPlan, f *faced, more ...plan.Arg) plan.Problem {
	return problem(j.Name, kind, f.group.Hole.Pos, append([]plan.Arg{plan.Named(words.Spaced(f.group.Group.Name)), m.named(f.body.ID)}, more...)...)
}
