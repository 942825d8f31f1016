package review

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// gate is an opening of a guard in space: a hole, a slot, its bore, or an end of its tube.
type gate struct {
	name          string
	pos           parts.Pos
	at            []assembly.Vec // middles of round openings that it is made of: one, or three along a slot
	along         assembly.Vec   // across its mouth
	wideMm, ofMm  float64        // least width, and length
	round, anyWay bool           // anyWay: a hand comes from either side
	fix           string         // "": narrower, or guarded
}

// sheetMm is how long a hole through a guard is: the sheet of a folded one, whose flanges stand off it.
func (v *view) sheetMm() float64 {
	if v.p.Kind == parts.Folded {
		return v.p.Thickness.Mm
	}
	return v.lengthMm
}

// guardGates are the openings of a guard that no joint and nothing fitted fills: holes and slots, in the flanges of a
// folded one too, and the bore of a flat one or the ends of a tube.
func (v *view) guardGates(b *assembly.Body) (out []gate) {
	middle, along := -v.sheetMm()/2, b.Pose.Z
	for h := range seq.Refs(v.holes) {
		if !h.through || h.thread != nil || v.jointNames(h.name) || h.group != nil && h.group.Fitted.Value != "" {
			continue
		}
		frame, at, half := b.Pose, h.middle(), h.b.Minus(h.a).Times(0.5)
		if m := v.m.GroupNamed(h.name); v.p.Kind == parts.Folded && m.OnWall() { // it is dimensioned on its flange
			frame, at = b.Pose.Of(solid.Wall(v.m, m)), m.OwnMm()[h.n-m.Group.First]
			half, _, _ = m.SlotMm()
		}
		in := func(q plan.XY) assembly.Vec { return frame.Apply(assembly.Vec{X: q.XMm, Y: q.YMm, Z: middle}) }
		g := gate{h.name, h.pos, []assembly.Vec{in(at)}, frame.Z, 2 * h.radiusMm, 2 * h.radiusMm, h.slot == nil, true, ""}
		if h.slot != nil {
			g.ofMm += 2 * half.LengthMm()
			g.at = append(g.at, in(at.Plus(half)), in(at.Minus(half)))
		}
		out = append(out, g)
	}
	if v.p.Kind == parts.Folded {
		return out
	}
	in := func(x, y, z float64) assembly.Vec { return b.Pose.Apply(assembly.Vec{X: x, Y: y, Z: z}) }
	ends := map[string]float64{"bore": middle}
	if !v.p.Flat() {
		ends = map[string]float64{"front end": 0, "back end": -v.lengthMm}
	}
	for _, name := range slices.Sorted(maps.Keys(ends)) {
		z, along := ends[name], along
		if name == "back end" {
			along = along.Reversed()
		}
		if bore := radiusAt(v.inside, min(max(-z, geom.CloseMm), v.lengthMm-geom.CloseMm)); bore > 0 {
			out = append(out, gate{name, v.p.Name.Pos, []assembly.Vec{in(0, 0, z)}, along, 2 * bore, 2 * bore, true, v.p.Flat(), ""})
		}
	}
	return out
}

// gates looks for openings that a hand or a finger gets through to what turns with the shaft: of guards, what the flanges of
// folded ones leave open and open ends of tubes among them, and in the outside of what stands round the shaft.
func (r *reviewer) gates(drives parts.JointRef, shaft *assembly.Body) {
	turns := r.turnsWith(drives.Instance())
	sweeps := r.sweptSteps(shaft, turns)
	looking := func(b *assembly.Body, v *view) lookOut {
		return lookOut{v, sweeps, turns, seq.Keep(r.machine().Bodies, func(o assembly.Body) bool { return o.ID != b.ID })}
	}
	for p := range everyStanding(r) {
		if p.along.Find(drives.Instance()) != nil && !turns[r.machine().Of[p.ID]] {
			looking(p.Body, p.v).windows(p.Body)
		}
	}
	for b, v := range r.tiedTo(shaft) {
		if v.p.For != parts.Guarding || turns[r.machine().Of[b.ID]] {
			continue
		}
		l := looking(b, v)
		for _, g := range append(v.guardGates(b), l.feet(b)...) {
			l.tooOpen(l.ringed(g))
		}
	}
}

// windows looks at what is cut through the outside, to what turns in the bore, one of each kind.
func (l lookOut) windows(b *assembly.Body) {
	said, all := "", l.sweeps
	for _, o := range l.v.openings() {
		name, inner := o.radial.Name.Value, radiusAt(l.v.inside, o.zMm)
		if blind := !o.radial.Through && geom.Over(o.outerMm-inner, o.radial.Depth.Mm); blind || name == said || radialThread(o.radial) != nil || l.v.jointNames(name) {
			continue
		}
		long, round := o.alongMm-o.aroundMm, o.radial.Shape == parts.RadialHole
		g := gate{name, o.radial.Pos, nil, b.Pose.Turn(assembly.ClockWay(o.clockDeg)), 2 * min(o.alongMm, o.aroundMm), 2 * max(o.alongMm, o.aroundMm), round, false, ""}
		for _, share := range []float64{0, 1, -1} {
			at := assembly.Clock(o.outerMm, o.clockDeg+share*max(0, -long)/o.outerMm*180/math.Pi)
			at.Z = share*max(0, long) - o.zMm
			g.at = append(g.at, b.Pose.Apply(at))
		}
		l.sweeps = seq.Keep(all, func(s swept) bool { return geom.Over(inner, s.farMm) })
		if l.tooOpen(g) {
			said = name
		}
	}
}

// lookOut is a guard whose openings are looked at.
type lookOut struct {
	v      *view
	sweeps []swept
	turns  map[parts.Instance]bool
	others []assembly.Body // all but the guard
}

// feet are the slots that the flanges of a folded guard leave to what they close against, each less than its flange is high.
func (l *lookOut) feet(b *assembly.Body) (out []gate) {
	blank, _ := l.v.m.Folded()
	for f := range seq.Refs(blank.Folds) {
		if f.Nth > 0 {
			continue
		}
		frame, gap := b.Pose.Of(solid.OnFlap(f)), f.HeightMm
		at := func(share, up float64) assembly.Vec {
			return frame.Apply(assembly.Vec{X: f.LeftMm + share*(f.RightMm-f.LeftMm), Y: f.HeightMm + up, Z: -f.ThicknessMm / 2})
		}
		shares := []float64{0.5, 0.25, 0.75}
		for _, s := range shares {
			if still := l.still(at(s, -geom.CloseMm), frame.Y); len(still) > 0 {
				gap = min(gap, still[0].FromMm-geom.CloseMm)
			}
		}
		if gap < f.HeightMm && gap > geom.CloseMm {
			name := "foot of the " + string(l.v.p.Bends.Flanges[blank.Index(f)].Side) + " flange"
			mid := func(s float64) assembly.Vec { return at(s, gap/2) }
			out = append(out, gate{name, l.v.p.Name.Pos, seq.Map(shares, mid), frame.Z, gap, f.RightMm - f.LeftMm, false, true, "flanges that reach what they close against"})
		}
	}
	return out
}

// ringed is an opening that what turns comes through the middle of as the ring that is left open round it: a slot, by
// its middles at eight places.
func (l *lookOut) ringed(g gate) gate {
	const spokes = 8
	if !g.round || !g.anyWay {
		return g
	}
	frame, turned := assembly.Frame(g.at[0], g.along, g.along.Square()), 0.0
	round := func(r float64) (out []assembly.Vec) {
		for _, deg := range geom.Evenly(spokes) {
			out = append(out, frame.Apply(assembly.Clock(r, deg)))
		}
		return out
	}
	for s := range seq.Refs(l.sweeps) {
		for _, to := range round(1) {
			in := seq.Keep(assembly.Crossings([]assembly.Body{*s.Body}, g.at[0], to.Sub(g.at[0]).Unit()), func(c assembly.Crossing) bool { return c.FromMm < geom.CloseMm })
			turned = seq.Max(turned, in, func(c assembly.Crossing) float64 { return c.ToMm })
		}
	}
	if turned == 0 || turned >= g.wideMm/2 {
		return g
	}
	middle := (g.wideMm/2 + turned) / 2
	g.at, g.wideMm, g.ofMm, g.round = round(middle), g.wideMm/2-turned, 2*math.Pi*middle, false
	return g
}

// tooOpen tells whether an opening is too near to what turns, and says so.
func (l *lookOut) tooOpen(g gate) bool {
	v := l.v
	wide, length, off, near := g.wideMm, g.ofMm, standOffMm(g.wideMm, g.ofMm, g.round), ""
	for s := range seq.Refs(l.sweeps) {
		for _, at := range g.at {
			to := s.nearest(at).Sub(at)
			outward, way := g.along, to.Dot(g.along)
			switch {
			case to.Len() >= off || g.anyWay && math.Abs(way) < v.sheetMm()/2 || !g.anyWay && way > geom.CloseMm:
				continue // it is far, turns in the opening itself, or outside of the tube
			case way > 0:
				outward = outward.Reversed()
			}
			free, beyond, closed := l.mouth(at, outward, g.wideMm/2)
			at = at.Add(outward.Times(beyond))
			d, open := s.nearest(at).Sub(at).Len(), min(g.wideMm, 2*free)
			if !closed && d < min(off, standOffMm(open, g.ofMm-g.wideMm+open, g.round)) && !l.stopped(at, s.nearest(at)) {
				wide, length, off, near = open, g.ofMm-g.wideMm+open, d, v.machine().Title(s.ID)
			}
		}
	}
	if near == "" {
		return false
	}
	open := words.Either(g.round, v.mm(wide), v.mm(wide)+" x "+v.mm(length))
	v.report(Check, words.When(g.pos != v.p.Name.Pos, g.name), g.pos,
		v.tooOpen(wide, words.Spaced(g.name)+" of "+v.p.Title.Value+" to "+near+", which turns", open, off, cmp.Or(g.fix, "a narrower opening, or a guard over it")))
	return true
}

// mouth is the radius that is free before the middle of an opening, and how far outward what narrows it reaches. It is closed
// where something stands before its middle, or where another guard narrows it, whose own opening counts.
func (l *lookOut) mouth(at, outward assembly.Vec, radiusMm float64) (free, beyondMm float64, closed bool) {
	const rings, spokes = 24, 8
	var shut []assembly.Crossing
	frame, most, first := assembly.Frame(at, outward, outward.Square()), radiusMm-geom.CloseMm, rings
	before := func(r float64) []assembly.Crossing {
		var hits []assembly.Crossing
		for _, deg := range geom.Evenly(spokes) {
			hits = append(hits, l.before(frame.Apply(assembly.Clock(r, deg)), outward)...)
		}
		return hits
	}
	for k := rings; k > 0; k-- {
		if hits := before(most * float64(k) / rings); len(hits) > 0 {
			shut, first = append(shut, hits...), k-1
		}
	}
	closed = len(l.before(at, outward)) > 0 || slices.ContainsFunc(shut, func(c assembly.Crossing) bool { return l.guards(c.ID) })
	if len(shut) == 0 {
		return radiusMm, 0, closed
	}
	free, wide := most*float64(first)/rings, most*float64(first+1)/rings
	for wide-free > geom.CloseMm {
		if mid := (free + wide) / 2; len(before(mid)) > 0 {
			wide = mid
		} else {
			free = mid
		}
	}
	return free, seq.Max(0, before(wide), func(c assembly.Crossing) float64 { return c.ToMm }), closed
}

// guards looks for folded guards that leave open what turns: between their end and the plate
// that they close against, or on one side of the two.
func guards(r *reviewer) {
	m := r.motor()
	if !m.Drives.Set() {
		return
	}
	all := r.machine()
	shaft := all.Standing(m.Drives.Instance())
	if shaft == nil {
		return
	}
	for b, v := range r.tiedTo(shaft) {
		if v.p.Kind != parts.Folded || v.p.For != parts.Guarding {
			continue
		}
		g := guardOn{v, b, shaft}
		if g.away(m.Drives) || m.Through == "belt" && g.beside(all.Bodies) {
			continue
		}
		g.ends(all.Bodies)
		g.sides()
		g.saidUnder()
	}
	r.gates(m.Drives, shaft)
	r.grilles(shaft)
}

// before are the parts that shut a place outward: another guard however far off, or the shaft, and what stands so near that
// no fingers come in between.
func (l *lookOut) before(from, outward assembly.Vec) []assembly.Crossing {
	return seq.Keep(assembly.Crossings(l.others, from, outward), func(c assembly.Crossing) bool { return c.FromMm <= openMm || l.guards(c.ID) })
}

// guards tells whether a body is a guard.
func (l *lookOut) guards(id string) bool {
	v := l.v.viewOf(l.v.machine().Of[id].Part)
	return v != nil && v.p.For == parts.Guarding
}

// stopped tells whether something that stands still lies on the line from an opening to what turns.
func (l *lookOut) stopped(from, to assembly.Vec) bool {
	way := to.Sub(from)
	long := way.Len()
	return long > geom.CloseMm && slices.ContainsFunc(l.still(from, way.Unit()), func(c assembly.Crossing) bool { return c.FromMm < long-geom.CloseMm })
}

// still are the parts on a line that stand still.
func (l *lookOut) still(from, way assembly.Vec) []assembly.Crossing {
	m := l.v.machine()
	return seq.Keep(assembly.Crossings(l.others, from, way), func(c assembly.Crossing) bool { return !l.turns[m.Of[c.ID]] && !m.Roles[c.ID].Runs })
}
