package assembly

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Group is what bodies weigh together.
type Group struct {
	MassKg  float64
	Centre  Vec // of gravity, in the machine's frame
	Box     Box
	Unknown []string // bodies without mass and density, left out
}

// Together sums bodies up.
func Together(bodies []Body) Group {
	out := Group{Box: nothing()}
	var moment Vec
	for i := range bodies {
		b := &bodies[i]
		out.Box = out.Box.Join(b.Box())
		kg, centre, ok := b.Mass()
		if !ok {
			out.Unknown = append(out.Unknown, b.ID)
			continue
		}
		out.MassKg += kg
		moment = moment.Add(centre.Times(kg))
	}
	if out.MassKg > 0 {
		out.Centre = moment.Times(1 / out.MassKg)
	}
	return out
}

// Stand is how bodies stand on level ground.
type Stand struct {
	// Feet are the corners of the area they stand on, in order round it.
	Feet []Vec
	// MarginMm is how far within its edge the centre of gravity is above it;
	// negative outside: it tips.
	MarginMm float64
	// Toward is the level direction from the centre to that edge.
	Toward Vec
	// TipDeg is how far the ground may slope that way before it tips; negative
	// where it tips on the level.
	TipDeg float64
}

// standMm is how far above the lowest point a point still carries. Common
// practice, no source.
const standMm = 0.5

// Standing is how bodies stand with up pointing upwards, on what is made: what is bought, such
// as a screw whose tip comes out below, is no foot unless all of them are. ok is false where no
// mass is known or fewer than three points carry.
func Standing(bodies []Body, up Vec) (Stand, bool) {
	frame := Frame(Vec{}, up, up.Square())
	inv := frame.Inverse()
	low := make([]float64, len(bodies))
	var order []int // the lowest first
	all := !slices.ContainsFunc(bodies, func(b Body) bool { return !b.Bought })
	for i := range bodies {
		if low[i] = bodies[i].Box().Moved(inv).Low.Z; all || !bodies[i].Bought {
			order = append(order, i)
		}
	}
	slices.SortFunc(order, func(i, k int) int { return cmp.Compare(low[i], low[k]) })
	var points []Vec
	lowest := inf
	for _, i := range order {
		if low[i] > lowest+standMm {
			break
		}
		rel := inv.Of(bodies[i].Pose)
		for _, p := range bodies[i].Solid.rests(bodies[i].Pose.Inverse().Turn(up)) {
			q := rel.apply(p)
			lowest = min(lowest, q.Z)
			points = append(points, q)
		}
	}
	points = slices.DeleteFunc(points, func(p Vec) bool { return p.Z >= lowest+standMm })
	return standing(bodies, frame, points, lowest)
}

// StandingOn is how bodies stand that bear on something at places, with up pointing upwards.
func StandingOn(bodies []Body, at []Vec, up Vec) (Stand, bool) {
	if len(at) == 0 {
		return Stand{}, false
	}
	frame := Frame(at[0], up, up.Square())
	inv := frame.Inverse()
	return standing(bodies, frame, seq.Map(at, inv.Apply), 0)
}

// standing is how bodies stand on points at a height, all in a frame whose Z points upwards.
func standing(bodies []Body, frame Pose, on []Vec, lowest float64) (Stand, bool) {
	inv := frame.Inverse()
	g := Together(bodies)
	feet := hull(seq.Map(on, func(p Vec) geom.Point { return geom.Point{XMm: p.X, YMm: p.Y} }))
	if g.MassKg == 0 || len(feet) < 3 {
		return Stand{}, false
	}
	c := inv.Apply(g.Centre)
	out := Stand{MarginMm: inf}
	for i, p := range feet {
		out.Feet = append(out.Feet, frame.Apply(Vec{p.XMm, p.YMm, lowest}))
		e := feet[(i+1)%len(feet)].Minus(p)
		in := geom.Point{XMm: -e.YMm, YMm: e.XMm}.Times(1 / e.LengthMm()) // the hull runs anticlockwise
		if margin := (geom.Point{XMm: c.X, YMm: c.Y}).Minus(p).Dot(in); margin < out.MarginMm {
			out.MarginMm = margin
			out.Toward = frame.Turn(Vec{X: -in.XMm, Y: -in.YMm})
		}
	}
	out.TipDeg = math.Atan2(out.MarginMm, c.Z-lowest) * 180 / math.Pi
	return out, true
}

// coarseMm is how finely a surface is looked at for the points that a body is seen to stand on.
const coarseMm = 10

// rests are the corners of what of a solid lies within standMm of its lowest point, with up
// pointing upwards, all in its own frame.
func (s *Solid) rests(up Vec) []Vec {
	s.known.resting.Lock()
	defer s.known.resting.Unlock()
	out, done := s.known.rests[up]
	if done {
		return out
	}
	var points []Vec
	lowest := inf
	low := func(centre Vec, reach float64, _ among) among {
		if centre.Dot(up)-reach < lowest+standMm {
			return 1
		}
		return 0
	}
	s.walk(inf, low, func(p Vec, _ among) { lowest = min(lowest, p.Dot(up)) }) // corners: most others lie higher
	s.walk(coarseMm, low, func(p Vec, _ among) {
		lowest, points = min(lowest, p.Dot(up)), append(points, p)
	})
	inv := Frame(Vec{}, up, up.Square()).Inverse()
	var flat []geom.Point
	of := map[geom.Point]Vec{}
	for _, p := range points {
		if p.Dot(up) < lowest+standMm {
			q := inv.Apply(p)
			flat, of[geom.Point{XMm: q.X, YMm: q.Y}] = append(flat, geom.Point{XMm: q.X, YMm: q.Y}), p
		}
	}
	for _, c := range hull(flat) {
		out = append(out, of[c])
	}
	if s.known.rests == nil {
		s.known.rests = map[Vec][]Vec{}
	}
	s.known.rests[up] = out
	return out
}

// hull is the convex hull, anticlockwise from the leftmost point.
func hull(pts []geom.Point) []geom.Point {
	slices.SortFunc(pts, func(a, b geom.Point) int { return cmp.Or(cmp.Compare(a.XMm, b.XMm), cmp.Compare(a.YMm, b.YMm)) })
	var out []geom.Point
	half := func(p geom.Point, start int) {
		for n := len(out); n >= start+2 && !geom.Some(out[n-1].Minus(out[n-2]).Cross(p.Minus(out[n-2]))); n-- {
			out = out[:n-1]
		}
		out = append(out, p)
	}
	for _, p := range pts {
		half(p, 0)
	}
	start := len(out) - 1
	for i := len(pts) - 2; i >= 0; i-- {
		half(pts[i], start)
	}
	if len(out) < 2 {
		return out
	}
	return out[:len(out)-1]
}

// Sling is a pair of places to lift by.
type Sling struct {
	Points [2]Vec
	IDs    [2]string // the bodies there
}

// Slings are two places on top of the bodies at equal distances in mm either
// side of the centre of gravity along a level direction, so that the load hangs
// level; up is along an axis. ok is false where nothing lies there.
func Slings(bodies []Body, up, along Vec, halfMm float64) (Sling, bool) {
	g := Together(bodies)
	var out Sling
	_, high := g.Box.Along(up)
	for i, side := range []float64{-1, 1} {
		p := g.Centre.Add(along.Times(side * halfMm))
		p = p.Add(up.Times(high + 1 - p.Dot(up)))
		hit := Crossings(bodies, p, up.Reversed())
		if len(hit) == 0 {
			return Sling{}, false
		}
		out.Points[i], out.IDs[i] = p.Sub(up.Times(hit[0].FromMm)), hit[0].ID
	}
	return out, g.MassKg > 0
}
