package machine

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// faces looks at the holes, in no joint, of two parts whose faces a bolted joint puts
// together, and of loose parts on what they lie on: at those that a part closes, and at those that face one another and do
// not meet; and at what runs through a part that is welded on another.
func (m *Machine) faces() (looks []look) {
	for _, j := range m.OfKind(parts.BoltKind) {
		a, b := m.At(j.A), m.At(j.B)
		looks = append(looks, func() (found []plan.Problem) {
			of, to := m.Mouths(a), m.Mouths(b)
			for i := range of {
				found = append(found, m.deadEnd(j, &of[i], b)...)
				for k := range to {
					found = append(found, m.unmet(j, &of[i], &to[k])...)
				}
			}
			for k := range to {
				found = append(found, m.deadEnd(j, &to[k], a)...)
			}
			return append(found, m.narrowed(j, a, b)...)
		})
	}
	for _, j := range m.OfKind(parts.WeldKind) {
		a, b := m.At(j.A), m.At(j.B)
		if a == nil || b == nil {
			continue
		}
		looks = append(looks, func() []plan.Problem {
			return append(m.portsShut(j, a, b), m.portsShut(j, b, a)...)
		})
	}
	for _, l := range m.Laid() {
		on, j := m.Standing(l.On), seq.First(m.Joints, func(j *plan.JointPlan) bool { return j.Name == l.Loose.After.Value })
		if b := m.Standing(l.Instance); b != nil && on != nil && j != nil {
			looks = append(looks, func() []plan.Problem {
				return seq.Flat(m.Mouths(b), func(f stand.Faced) []plan.Problem { return m.deadEnd(j, &f, on) })
			})
		}
	}
	return looks
}

// deadEnd finds holes for bolts that a part closes where they come out, and blind threads
// that it closes where the screw goes in.
func (m *Machine) deadEnd(j *plan.JointPlan, f *stand.Faced, other *assembly.Body) []plan.Problem {
	hole := f.Group.Hole
	if f.Used {
		return nil
	}
	if hole.Size.Make == parts.PlainHole && hole.Through {
		return m.partShut(j, f, other)
	}
	if f.Sunk || hole.Size.Make != parts.ClearanceHole && (hole.Size.Make != parts.TappedHole || hole.Through) {
		return nil
	}
	if t := f.Group.Size.Thread; t != nil && stand.SameAxis(other.Pose, assembly.Pose{Z: f.Out, At: f.At[0]}) && m.HasThread(other, t) {
		return nil // screwed onto it
	}
	if slices.ContainsFunc(m.Mouths(other), func(g stand.Faced) bool { return leadsOn(f, &g) }) {
		return nil
	}
	if shutBy(f, other, half) > 0 {
		return []plan.Problem{m.ofHoles(plan.HoleDeadEnd, j, f, m.Named(other.ID))}
	}
	return nil
}

// leadsOn tells whether holes for a bolt lie on threads for it, whose drill is much smaller than they are.
func leadsOn(f, g *stand.Faced) bool {
	bolt, err := threads.Parse(f.Group.Size.For)
	to := g.Group.Size.Thread
	return err == nil && to != nil && to.Designation == bolt.Designation && parallel(f, g) &&
		!geom.Over(seq.Max(0, f.At, func(p assembly.Vec) float64 { return beside(g, p, f.Out) }), f.Group.Size.FinishedMm-bolt.MajorMm+meetMm)
}

// portsShut finds through holes for what runs in or out that come out on the metal of what their part is welded to.
func (m *Machine) portsShut(j *plan.JointPlan, b, other *assembly.Body) (found []plan.Problem) {
	for _, f := range m.Mouths(b) {
		if f.Group.For.Opens() && f.Group.Hole.Through && shutBy(&f, other, half) > 0 {
			found = append(found, m.ofHoles(plan.PortShut, j, &f, m.Named(other.ID)))
		}
	}
	return found
}

// half of a mouth: no screw goes in by less.
const half = 0.5

// shutBy counts the holes of which a body leaves no more than a share free.
func shutBy(f *stand.Faced, other *assembly.Body, share float64) (n int) {
	for _, at := range f.At {
		o := assembly.Opening{At: at, Along: f.Out, RadiusMm: f.Group.Size.FinishedMm / 2, ReachMm: StandsMm}
		if free, covers := o.Look([]assembly.Body{*other}); free <= share && len(covers) > 0 {
			n++
		}
	}
	return n
}

// A share of an opening that is free is as good as all of it. Common practice, no source: what plates are off by
// when their bolts have play.
const openShare = 0.95

// narrowed finds openings that a gasket there, or a part with an opening of its own, closes in part; all of it is closed by a lid,
// and a plate with a bore may carry what goes in.
func (m *Machine) narrowed(j *plan.JointPlan, a, b *assembly.Body) (found []plan.Problem) {
	row := []*assembly.Body{a}
	for _, ref := range m.Joint(j.Name).Bolt.Stack {
		if between := m.Standing(ref.Instance()); between != nil {
			row = append(row, between)
		}
	}
	row = append(row, b)
	for _, body := range row {
		for _, other := range row {
			if other != body {
				found = append(found, m.closesPart(j, body, other)...)
			}
		}
	}
	return found
}

// closesPart finds the openings of a body that another closes in part.
func (m *Machine) closesPart(j *plan.JointPlan, b, other *assembly.Body) (found []plan.Problem) {
	open, r := func(g *part.Group) bool { return g.For == parts.Opening }, m.PartOf(other.ID)
	if m.PartOf(b.ID).Part.For == parts.Gasket || r.Part.For != parts.Gasket && seq.At(r.Groups, open) == nil { // a gasket may end beside the edge that it seals
		return nil
	}
	for _, f := range m.HolesAndSlots(b) {
		if !open(f.Group) {
			continue
		}
		if least := seq.Min(1, f.At, func(at assembly.Vec) float64 { return freeOf(&f, at, other) }); least > 0 && least < openShare {
			found = append(found, stand.Problem(j.Name, plan.OpeningPartly, f.Group.Pos, plan.Named(words.Spaced(f.Group.Group.Name)), m.Named(b.ID),
				m.Named(other.ID), plan.Of(plan.Number, words.Round(100*least, 0))))
		}
	}
	return found
}

// freeOf is the share of a mouth that a body leaves free, looked at in rows across it and all along a slot.
func freeOf(f *stand.Faced, at assembly.Vec, other *assembly.Body) float64 {
	const rows = 40
	radius, run, way := f.Group.Size.FinishedMm/2, f.Run.Len(), cmp.Or(f.Run.Unit(), f.Out.Square())
	across, step, body := f.Out.Cross(way), 2*radius/rows, []assembly.Body{*other}
	var free, all float64
	for y := -radius + step/2; y < radius; y += step {
		for x := -radius - run + step/2; x < radius+run; x += step {
			if math.Hypot(x-max(-run, min(run, x)), y) > radius {
				continue
			}
			all++
			if hit := assembly.Crossings(body, at.Add(way.Times(x)).Add(across.Times(y)), f.Out); len(hit) == 0 || geom.Over(hit[0].FromMm, StandsMm) {
				free++
			}
		}
	}
	return free / all
}

// partShut finds plain holes of one group of which a part closes some, and has none of
// that name itself.
func (m *Machine) partShut(j *plan.JointPlan, f *stand.Faced, other *assembly.Body) []plan.Problem {
	n := shutBy(f, other, 0)
	if n == 0 || n == len(f.At) || m.PartOf(other.ID).GroupNamed(f.Group.Group.Name) != nil {
		return nil
	}
	return []plan.Problem{m.ofHoles(plan.HolesPartShut, j, f, m.Named(other.ID), plan.Of(plan.Number, float64(n)), plan.Of(plan.Number, float64(len(f.At))))}
}

// meetMm is how far beside one another holes may lie that meet. Common practice,
// no source: what marking out and drilling hold.
const meetMm = 0.25

// unmet finds holes that face one another: those of two groups of one name are to meet
// each with each, but for jack screws in both, and of any two none is to cut the other.
func (m *Machine) unmet(j *plan.JointPlan, f, g *stand.Faced) []plan.Problem {
	if f.Used || g.Used || f.Out.Dot(g.Out) > stand.Level-1 || math.Abs(g.At[0].Sub(f.At[0]).Dot(f.Out)) > StandsMm {
		return nil
	}
	a, b := f.Group.Size.FinishedMm/2, g.Group.Size.FinishedMm/2
	tapped := func(f *stand.Faced) bool { return f.Group.Hole.Size.Make == parts.TappedHole }
	alike := f.Group.Group.Name == g.Group.Group.Name && !(tapped(f) && tapped(g))
	few, many := f.At, g.At
	if len(few) > len(many) {
		few, many = many, few
	}
	var worst float64
	for _, p := range few {
		off := seq.Least(many, func(q assembly.Vec) float64 { return q.Sub(p).Len() })
		if off > math.Abs(a-b)+meetMm && (alike || off < a+b) {
			worst = max(worst, off)
		}
	}
	if worst == 0 {
		return nil
	}
	return []plan.Problem{m.ofHoles(plan.HolesUnmet, j, f, plan.Named(words.Spaced(g.Group.Group.Name)), m.Named(g.Body.ID), m.Rounded(worst, 2))}
}

// copies are the bodies of a part, those that come off again as well.
func (m *Machine) copies(part string) []assembly.Body {
	return seq.Keep(slices.Concat(m.Bodies, m.Passing), func(b assembly.Body) bool { return part != "" && m.Of[b.ID].Part == part })
}

// holes are the mouths of a group of holes of all copies of a part.
func (m *Machine) holes(part, group string) (all []stand.Faced) {
	for b := range seq.Refs(m.copies(part)) {
		all = append(all, slices.DeleteFunc(m.HolesAndSlots(b), func(f stand.Faced) bool { return f.Group.Group.Name != group })...)
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
			if !parallel(&f, &g) || m.overlapping[[2]string{f.Body.ID, g.Body.ID}] {
				continue
			}
			along := math.Abs(g.At[0].Sub(f.At[0]).Dot(f.Out))
			beside := seq.Max(0, f.At, func(p assembly.Vec) float64 { return beside(&g, p, f.Out) })
			if off := math.Hypot(along, beside); geom.Over(least, off) {
				least, apartMm, besideMm, ok = off, along, beside, true
			}
		}
	}
	return apartMm, besideMm, ok
}

// parallel tells whether the axes of two groups of holes are.
func parallel(f, g *stand.Faced) bool { return math.Abs(f.Out.Dot(g.Out)) > 1-stand.Level }

// beside is how far the nearest hole, or the middle line of a slot, lies beside an axis through a place.
func beside(f *stand.Faced, p, along assembly.Vec) float64 {
	return seq.Least(f.At, func(q assembly.Vec) float64 {
		off := q.Sub(p).Sub(along.Times(q.Sub(p).Dot(along)))
		if long := f.Run.Dot(f.Run); long > 0 {
			off = off.Sub(f.Run.Times(max(-1, min(1, off.Dot(f.Run)/long))))
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
		for f := range seq.Refs(m.HolesAndSlots(b)) {
			for _, g := range holes {
				if parallel(f, &g) {
					near = seq.Min(near, g.At, func(p assembly.Vec) float64 { return beside(f, p, f.Out) })
				}
			}
		}
		offMm, ok = max(offMm, near), ok || near < inf
	}
	return offMm, ok
}

// On is a place of a part in the frames of the copies of another on its axis, for each copy of both.
func (m *Machine) On(part string, at assembly.Vec, other string) (all []assembly.Vec) {
	for a := range seq.Refs(m.Bodies) {
		for b := range seq.Refs(m.Bodies) {
			of, to := m.Of[a.ID].Part, m.Of[b.ID].Part
			if rel := b.Pose.Inverse().Of(a.Pose); of == part && to == other && a != b && math.Abs(rel.Z.Z) > 1-stand.Level && math.Hypot(rel.At.X, rel.At.Y) < StandsMm {
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
		if f.Body.ID != of {
			all, of, under = append(all, under...), f.Body.ID, nil
		}
		others := m.others(f.Body.ID)
		for n, at := range f.At {
			if n == len(under) {
				under = append(under, "")
			}
			if hit := assembly.Crossings(others, at, f.Out); len(hit) > 0 && hit[0].FromMm <= reachMm {
				under[n] = m.PartOf(hit[0].ID).Out.Title
			}
		}
	}
	return append(all, under...)
}

// others are the made bodies but for one.
func (m *Machine) others(id string) []assembly.Body {
	return seq.Keep(m.Bodies, func(b assembly.Body) bool { return b.ID != id && m.made(b.ID) })
}

// InMetal tells whether a hole of a group ends in the metal of its part and meets none of its other openings on its
// way; false of a part that has no place.
func (m *Machine) InMetal(part, group string) bool {
	const beside, rings, rays = 0.3, 8, 12 // beside its wall; along it; round it
	for _, f := range m.holes(part, group) {
		radius := f.Group.Size.FinishedMm / 2 // of a thread its largest
		for _, at := range f.At {
			own := seq.Keep(f.Body.Spans(at, f.Out.Reversed()), func(s assembly.Span) bool { return s.ToMm > 0 })
			if len(own) == 0 {
				continue // it goes through all that lies there
			}
			deep, into := own[0].FromMm, f.Body.Pose.Inverse()
			frame := assembly.Frame(at, f.Out, f.Out.Square())
			var places []assembly.Vec
			for ring := range rings {
				for _, side := range assembly.Round(assembly.AxisZ, rays) {
					place := side.Times(radius + beside)
					place.Z = -deep * float64(ring+2) / (rings + 1) // not at its mouth, and down to its end
					places = append(places, into.Apply(frame.Apply(place)))
				}
			}
			if !slices.ContainsFunc(places, func(p assembly.Vec) bool { return f.Body.Solid.Dist(p) > 0 }) {
				return true
			}
		}
	}
	return false
}

// looksPart is how much of a direction lies along another that it looks that way: 60° off it at the most. Common
// practice, no source.
const looksPart = 0.5

// looks tells whether the mouths of a group look a way.
func looks(f *stand.Faced, way assembly.Vec) bool { return f.Out.Dot(way) > looksPart }

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
		if !looks(&f, way) {
			continue
		}
		rim := f.Out.Square().Times(0.45 * f.Group.Size.FinishedMm)
		for k := range 3 * len(f.At) {
			at := f.At[k/3].Add(rim.Times(float64(k%3 - 1)))
			if hit := assembly.Crossings(m.Bodies, at, f.Out); len(hit) > 0 && hit[0].FromMm < freeMm {
				title, freeMm = m.Title(hit[0].ID), hit[0].FromMm
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
		others := slices.DeleteFunc(slices.Clone(m.Bodies), func(b assembly.Body) bool { return b.ID == f.Body.ID || m.Roles[b.ID].Kind == stand.Screw })
		for _, at := range f.At {
			round := []assembly.Vec{at}
			for _, side := range assembly.Round(f.Out, rays) {
				round = append(round, at.Add(side.Times(radiusMm)))
			}
			low, high, first := inf, -inf, ""
			for _, p := range round {
				off := reachMm
				if hit := assembly.Crossings(others, p, f.Out); len(hit) > 0 && hit[0].FromMm < reachMm {
					off = hit[0].FromMm
					if off < low {
						first = hit[0].ID
					}
				}
				low, high = min(low, off), max(high, off)
			}
			if low < nearest-StandsMm || low < nearest+StandsMm && high-low > mm {
				nearest, mm, on = low, high-low, m.Title(first)
			}
		}
	}
	return mm, on
}

// Over is the part that lies nearest over a hole of a group, radiusMm round its middle and up to
// highMm over its upper mouth, with how far round it is free, mm; empty where none does. Nothing is free in a part
// that stands all round a hole, but in a hole of it that a socket reaches through, three times as deep (common
// practice, no source).
func (m *Machine) Over(part, group string, radiusMm, highMm float64) (other string, freeMm float64) {
	const rounds, rays, socket = 48, 12, 3
	for _, f := range m.holes(part, group) {
		if !looks(&f, m.Up) {
			continue
		}
		others, round := m.others(f.Body.ID), assembly.Round(f.Out, rays)
		for k := range len(f.At) * rounds * rays {
			at, r := f.At[k/rounds/rays], radiusMm*float64(k/rays%rounds)/rounds // the full radius itself may touch
			if other != "" && r >= freeMm {
				continue
			}
			if hit := assembly.Crossings(others, at.Add(round[k%rays].Times(r)), f.Out); len(hit) > 0 && hit[0].FromMm <= highMm {
				other, freeMm = m.Of[hit[0].ID].Part, r
			}
		}
		for _, at := range f.At {
			if round := allRound(others, at.Add(f.Out.Times(socket*highMm)), f.Out); round != "" {
				return m.Of[round].Part, 0
			}
		}
	}
	return other, freeMm
}

// allRound is the body that a point lies in the middle of, looked at every 30° round an axis: a tube or a hollow bar;
// empty for none.
func allRound(bodies []assembly.Body, at, axis assembly.Vec) (id string) {
	const rays = 12
	for _, way := range assembly.Round(axis, rays) {
		hit := assembly.Crossings(bodies, at, way)
		if len(hit) == 0 || id != "" && hit[0].ID != id {
			return ""
		}
		id = hit[0].ID
	}
	return id
}

// ofHoles is a problem of holes whose first arguments name them.
func (m *Machine) ofHoles(kind plan.ProblemKind, j *plan.JointPlan, f *stand.Faced, more ...plan.Arg) plan.Problem {
	return stand.Problem(j.Name, kind, f.Group.Hole.Pos, append([]plan.Arg{plan.Named(words.Spaced(f.Group.Group.Name)), m.Named(f.Body.ID)}, more...)...)
}
