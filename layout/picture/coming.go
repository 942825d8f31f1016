package picture

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// coming is what one hand brings in a step, named by its first body, and the straight way to its
// place; or a ring of a bearing.
type coming struct {
	title  string
	bodies []*assembly.Body
	ring   func(plane assembly.Pose) [][]plan.XY
	into   assembly.Vec
	turned *assembly.Vec // from its place to where it comes in, if that is elsewhere
}

// comings are all that comes in a step, each by a way that is free: the rings of bearings, what
// the joint brings, motors and couplings, loose parts. Nothing comes where both parts hang
// together.
func (v *viewed) comings(into assembly.Vec) (all []coming) {
	all = seq.Flat(v.OfKind(parts.BearingKind), v.ringsComing)
	if !v.there && v.j.Frame == "" {
		all = append(all, v.moverComing(into))
	}
	for _, id := range v.Ends[v.j.N-1][2:] {
		if b := v.BodyOf[id]; v.Roles[id].Kind == stand.Standing {
			all = append(all, coming{title: v.Title(id), bodies: []*assembly.Body{b}, into: b.Pose.Z.Reversed()})
		}
	}
	for _, l := range v.Laid() {
		if b := v.BodyOf[l.ID()]; b != nil && slices.Contains(v.News[v.j.N-1], b) {
			all = append(all, v.laidComing(&l, b))
		}
	}
	return all
}

// ringsComing are the rings of a bearing that come by themselves.
func (v *viewed) ringsComing(j *plan.JointPlan) (all []coming) {
	if way, lone := v.ringWay(j, plan.ShapeCup); j.Bearing.Ball {
		if lone && v.ringStep(j, plan.ShapeCup) == v.j.N-1 {
			all = append(all, coming{title: j.Bearing.Bearing, ring: func(plane assembly.Pose) [][]plan.XY {
				return seq.Flat(ballShapes, func(r ringPart) [][]plan.XY { return v.ringLoops(plane, j, r.shape) })
			}, into: way})
		}
		return all
	}
	for _, r := range ringShapes {
		if way, lone := v.ringWay(j, r.kind); lone && v.ringStep(j, r.kind) == v.j.N-1 {
			ring := func(plane assembly.Pose) [][]plan.XY { return v.ringLoops(plane, j, r.shape) }
			all = append(all, coming{title: j.Bearing.Bearing + " " + string(r.kind), ring: ring, into: way})
		}
	}
	return all
}

// moverComing is what the joint brings, by the way that is meant if it is free.
func (v *viewed) moverComing(into assembly.Vec) coming {
	with, c := v.Ends[v.j.N-1], coming{title: v.Title(v.mover.ID), bodies: []*assembly.Body{v.mover}}
	movers, fixed := v.BodiesOf(v.j.N-1, v.mover.ID), v.BodiesOf(v.j.N-1, v.still.ID)
	for _, id := range with[2:] {
		switch b := v.BodyOf[id]; {
		case b == nil, v.j.Bearing != nil && v.j.Bearing.Last && v.Roles[id].Kind != 0:
		case v.Roles[id].Kind == stand.Cup && !v.withMover(), v.Roles[id].Kind == stand.Cone && v.j.Bearing.Ball && !v.withMover():
			fixed = append(fixed, *b)
		case v.Roles[id].Kind == stand.Cup:
			c.bodies, movers = append(c.bodies, b), append(movers, *b)
		case v.Roles[id].Kind == stand.Cone || v.Roles[id].Kind == 0 && v.isNew(b):
			c.bodies, movers = append(c.bodies, b), append(movers, *b)
		}
	}
	c.into, _ = v.FreeInto(v.Poses[with[0]], movers, fixed, into)
	return c
}

// withMover tells whether the bearing of the step is a ball bearing that comes with the part that is moved.
func (v *viewed) withMover() bool {
	on := v.j.B.Instance()
	if v.j.Bearing.OnShaft {
		on = v.j.A.Instance()
	}
	return v.j.Bearing.Ball && v.mover.ID == on.ID()
}

// laidComing is a loose part of the step, held against what is there before it.
func (v *viewed) laidComing(l *stand.Laid, b *assembly.Body) coming {
	c, when := coming{title: v.Title(b.ID), bodies: []*assembly.Body{b}}, v.j.N
	if l.Loose.First {
		when--
	}
	news := v.News[v.j.N-1]
	after := news[slices.Index(news, b):]
	fixed := slices.DeleteFunc(v.BodiesOf(when, l.On.ID()), func(o assembly.Body) bool {
		return slices.ContainsFunc(after, func(n *assembly.Body) bool { return n.ID == o.ID })
	})
	_, _, normal := v.Placed(&l.At.Place, l.Instance, l.On)
	pose, movers := v.Poses[b.ID], []assembly.Body{*b}
	var meant []assembly.Vec
	if c.into = v.Poses[l.On.ID()].Turn(normal.Reversed()); l.At.Gap.Mm >= 0 {
		meant = append(meant, c.into)
	}
	if into, free := v.FreeInto(pose, movers, fixed, meant...); free {
		c.into = into
	} else if into, free := v.FromBeside(pose, movers, fixed); free {
		c.into = into
	} else if into, from, on := v.OnEdge(pose, movers, fixed); on {
		c.into, c.turned = into, &from
	}
	return c
}

// arrows show the ways of what comes, or only of some bodies of it, where a picture shows it, at the
// side from which it comes.
func (v *viewed) arrows(plane assembly.Pose, win rect, only []*assembly.Body) (out []plan.Arrow) {
	for c := range seq.Refs(v.come) {
		if only != nil && (c.ring != nil || !slices.Contains(only, c.bodies[0])) {
			continue
		}
		d := dirOn(plane, c.into)
		if loops := win.clip(c.loops(v, plane)); len(loops) > 0 && math.Hypot(d.XMm, d.YMm) > 0.5 {
			d = d.Times(1 / math.Hypot(d.XMm, d.YMm))
			at := tail(loops, d)
			if c.turned != nil {
				at = onPlane(plane, c.bodies[0].Box().Centre().Add(*c.turned))
			}
			out = append(out, plan.Arrow{Of: c.title, AtMm: win.inside(at), Dir: xy(d.XMm, d.YMm)})
		}
	}
	return out
}

func (c *coming) loops(v *viewed, plane assembly.Pose) [][]plan.XY {
	if c.ring != nil {
		return c.ring(plane)
	}
	return seq.Flat(c.bodies, func(b *assembly.Body) [][]plan.XY { return v.cut(plane, b) })
}

// tail is the place on closed contours where what moves along d is pushed: of the one that
// reaches furthest back, the highest of equals, behind its middle.
func tail(loops [][]plan.XY, d plan.XY) plan.XY {
	along := d.Dot
	var best []plan.XY
	back, top := inf, -inf
	for _, loop := range loops {
		last := along(slices.MinFunc(loop, func(a, b plan.XY) int { return cmp.Compare(along(a), along(b)) }))
		high := geom.BoxOf(loop...).Max.YMm
		if last < back-stand.Level || last < back+stand.Level && high > top {
			best, back, top = loop, last, high
		}
	}
	c := geom.BoxOf(best...).Middle()
	off := func(q plan.XY) float64 { return d.Cross(q.Minus(c)) }
	at := c
	for i, q := range best {
		p := best[(i+len(best)-1)%len(best)]
		if a, b := off(p), off(q); a < 0 != (b < 0) {
			if hit := p.Plus(q.Minus(p).Times(a / (a - b))); along(hit) < along(at) {
				at = hit
			}
		}
	}
	return at
}

// endOn marks what comes square to all pictures that show it, in the first of them: its arrow has
// no direction there.
func (v *viewed) endOn() {
	for c := range seq.Refs(v.come) {
		for k := range v.j.Pictures {
			p := &v.j.Pictures[k]
			if slices.ContainsFunc(v.j.Pictures, func(o plan.Picture) bool {
				return slices.ContainsFunc(o.Arrows, func(a plan.Arrow) bool { return a.Of == c.title })
			}) {
				break
			}
			if loops := spanning(p.MinMm, p.MaxMm).clip(c.loops(v, v.planesOf[k])); len(loops) > 0 {
				p.Arrows = append(p.Arrows, plan.Arrow{Of: c.title, AtMm: tail(loops, plan.XY{YMm: -1})})
			}
		}
	}
}

// number says which parts have their numbers in which picture: what comes and the two that the joint
// names in all, another in the one that shows it largest. What is put in by hand is new in its own
// picture, and has there alone a number.
func (v *viewed) number() {
	const sliver = 0.08 // of the picture's larger side
	pics := v.j.Pictures
	if last := len(pics) - 1; v.byHand {
		own := func(title string) bool {
			return slices.ContainsFunc(pics[last].Arrows, func(a plan.Arrow) bool { return a.Of == title })
		}
		for i := range pics[:last] {
			pics[i].Shapes = slices.DeleteFunc(pics[i].Shapes, func(s plan.Shape) bool { return s.New && own(s.Title) })
			pics[i].Arrows = slices.DeleteFunc(pics[i].Arrows, func(a plan.Arrow) bool { return own(a.Of) })
		}
		for i := range pics[last].Shapes {
			pics[last].Shapes[i].Named = pics[last].Shapes[i].New
		}
		pics = pics[:last]
	}
	largest := map[int]*plan.Shape{}
	share := map[int]float64{}
	for p := range seq.Refs(pics) {
		whole := spanning(p.MinMm, p.MaxMm).longest()
		for s := range seq.Refs(p.Shapes) {
			s.Named = s.Item > 0 && (s.New || s.Title == v.j.A.Title || s.Title == v.j.B.Title)
			if part := rectOf(s.Loops).longest() / whole; !s.Named && s.Item > 0 && part > max(sliver, share[s.Item]) {
				largest[s.Item], share[s.Item] = s, part
			}
		}
	}
	for _, s := range largest {
		s.Named = true
	}
}
