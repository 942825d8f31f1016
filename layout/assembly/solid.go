package assembly

import (
	"slices"
	"sync"

	"centrepop/parts/geom"
)

// shape is a simple solid in a frame of its own.
type shape interface {
	// dist is the distance from p to the surface, negative inside: the sign is
	// exact, and the surface is never nearer than it says.
	dist(p Vec) float64
	box() Box
	// faces cover the surface; points of a face that are off it count for
	// nothing.
	faces() []face
	// columns are lines along z that stand for the solid's area; n is how
	// finely.
	columns(n int) []column
	// bulk is the exact volume and centre of gravity.
	bulk() (mm3 float64, centre Vec)
	// edges are the sharp edges, and what limits the solid seen along view.
	edges(view Vec) [][]Vec
	// generators are, turn by turn, lines along z on the surface.
	generators() []generator
}

// generator is a turn of lines along z on a surface, by their feet at z = 0, from low to high.
type generator struct {
	feet      []Vec
	low, high float64
}

// column is a line along z and the area in mm² that it stands for.
type column struct {
	at   geom.Point
	area float64
}

// Simple is a simple solid that can be placed and combined.
type Simple struct {
	shape    shape
	at, back Pose
	still    bool // its frame is the solid's
	bound    Box  // where it stands
	hollow   bool // as a cut: lies wholly in what it is cut from
}

func simple(s shape) Simple {
	return Simple{shape: s, at: Still, back: Still, still: true, bound: s.box()}
}

// At is the same solid with its frame at p.
func (s Simple) At(p Pose) Simple {
	at := p.Of(s.at)
	return Simple{shape: s.shape, at: at, back: at.Inverse(), bound: s.shape.box().Moved(at)}
}

// dist is the shape's, of a point in the solid's frame.
func (s *Simple) dist(p Vec) float64 {
	if !s.still {
		p = s.back.apply(p)
	}
	return s.shape.dist(p)
}

// hits are the shape's, of a line in the solid's frame.
func (s *Simple) hits(o, d Vec, ts []float64) []float64 {
	if !s.still {
		o, d = s.back.apply(o), s.back.Turn(d)
	}
	switch shape := s.shape.(type) { // each by its name, so that ts stays on the stack
	case *turned:
		return shape.hits(o, d, ts)
	case *prism:
		return shape.hits(o, d, ts)
	case *ruled:
		return shape.hits(o, d, ts)
	}
	return ts
}

// Solid is what lies in any of the solids it was made Of, in all of those it
// was kept Within, and in none of those Cut away. It does not change.
type Solid struct {
	add, within, cut []Simple
	bound, cuts      Box    // about it, and about what is cut away
	faces            []face // of all the simple solids, in the solid's frame
	known            *known
}

// known is what was worked out of a solid when it was first asked for.
type known struct {
	walked, weighed, outlined, rimmed sync.Once

	surface []walked
	bulk    Bulk
	outline []Vec // sameEveryMm apart
	rims    [][]Vec

	resting sync.Mutex
	rests   map[Vec][]Vec // by the way up in the solid's frame
}

// Of is the union of simple solids.
func Of(add ...Simple) *Solid {
	return &Solid{add: add, bound: boxOf(add), cuts: nothing(), faces: facesOf(add), known: &known{}}
}

func boxOf(list []Simple) Box {
	out := nothing()
	for i := range list {
		out = out.Join(list[i].bound)
	}
	return out
}

// Cut is the solid without what lies in the others.
func (s *Solid) Cut(away ...Simple) *Solid {
	out := *s
	out.known = &known{}
	out.cut = slices.Concat(s.cut, away)
	out.cuts = s.cuts.Join(boxOf(away))
	out.faces = slices.Concat(s.faces, facesOf(away))
	return &out
}

// Hollow is the solid without others that lie wholly in it, such as the inside
// of a shell, which makes its volume exact.
func (s *Solid) Hollow(inside ...Simple) *Solid {
	out := s.Cut(inside...)
	for i := len(s.cut); i < len(out.cut); i++ { // before anybody weighs it
		c := &out.cut[i]
		c.hollow = true
		if r, ok := c.shape.(*ruled); ok {
			open := *r
			open.open, c.shape = true, &open
		}
	}
	return out
}

// Within is what of the solid lies in every one of the others too.
func (s *Solid) Within(keep ...Simple) *Solid {
	out := *s
	out.known = &known{}
	out.within = slices.Concat(s.within, keep)
	out.faces = slices.Concat(s.faces, facesOf(keep))
	for _, k := range keep {
		out.bound = out.bound.Common(k.bound)
	}
	return &out
}

func facesOf(list []Simple) []face {
	var out []face
	for i := range list {
		for _, f := range list[i].shape.faces() {
			out = append(out, f.of(&list[i]))
		}
	}
	return out
}

// Box is a bounding box in the solid's frame; cuts do not make it smaller.
func (s *Solid) Box() Box { return s.bound }

// Dist is the distance in mm from p to the solid's surface, negative inside.
// The sign is exact. The surface is never nearer than it says; beside simple
// solids that meet it can be further.
func (s *Solid) Dist(p Vec) float64 {
	d := inf
	for i := range s.add {
		a := &s.add[i]
		if a.bound.within(p, d) {
			d = min(d, a.dist(p))
		}
	}
	for i := range s.within {
		d = max(d, s.within[i].dist(p))
	}
	if !s.cuts.within(p, -d) {
		return d
	}
	for i := range s.cut {
		// Outside a cut's box the cut is no nearer than the box.
		if c := &s.cut[i]; c.bound.within(p, -d) {
			d = max(d, -c.dist(p))
		}
	}
	return d
}

// holds tells whether p lies in the solid, further than a limit from its surface: Dist < -mm, without the distance.
func (s *Solid) holds(p Vec, mm float64) bool {
	in := false
	for i := 0; i < len(s.add) && !in; i++ {
		a := &s.add[i]
		in = a.bound.within(p, 0) && a.dist(p) <= -mm
	}
	for i := 0; i < len(s.within) && in; i++ {
		in = s.within[i].dist(p) <= -mm
	}
	for i := 0; i < len(s.cut) && in; i++ {
		c := &s.cut[i]
		in = !c.bound.within(p, mm) || c.dist(p) >= mm
	}
	return in
}

// normal points out of the solid near p, by differences.
func (s *Solid) normal(p Vec) Vec {
	const h = 1e-4
	return Vec{
		s.Dist(p.Add(Vec{X: h})) - s.Dist(p.Add(Vec{X: -h})),
		s.Dist(p.Add(Vec{Y: h})) - s.Dist(p.Add(Vec{Y: -h})),
		s.Dist(p.Add(Vec{Z: h})) - s.Dist(p.Add(Vec{Z: -h})),
	}.Unit()
}

// Spans are the stretches of a line that lie in the solid, in order. along has
// length 1. A line that only touches the surface has none there.
func (s *Solid) Spans(from, along Vec) []Span { return s.spans(from, along, -inf, inf) }

// spans is Spans between two distances.
func (s *Solid) spans(from, along Vec, low, high float64) []Span {
	if !s.bound.meetsLine(from, along, low, high) {
		return nil
	}
	var buf [24]float64
	ts := s.hits(from, along, Span{low, high}, buf[:0])
	var out []Span
	for i := 0; i+1 < len(ts); i++ {
		a, b := max(low, ts[i]), min(high, ts[i+1])
		if b-a < 1e-7 || !s.holds(from.Add(along.Times((a+b)/2)), 1e-9) { // what runs along the surface is not in it
			continue
		}
		if n := len(out); n > 0 && !geom.Over(a, out[n-1].ToMm) {
			out[n-1].ToMm = b
		} else {
			out = append(out, Span{a, b})
		}
	}
	return out
}

// hits are the places on a line, in order, where it crosses the simple solids that it meets
// between two distances, appended to ts.
func (s *Solid) hits(from, along Vec, of Span, ts []float64) []float64 {
	for _, list := range [3][]Simple{s.add, s.within, s.cut} {
		for i := range list {
			if p := &list[i]; p.bound.meetsLine(from, along, of.FromMm, of.ToMm) {
				ts = p.hits(from, along, ts)
			}
		}
	}
	slices.Sort(ts)
	return ts
}

// blocks tells whether a line from a point, over a length, runs in the solid for
// more than leastMm in one go: nearer to it than a limit.
func (s *Solid) blocks(from, along Vec, length, limit, leastMm float64) bool {
	var buf [24]float64
	ts := s.hits(from, along, Span{0, length}, buf[:0])
	var run float64
	for i := 0; i+1 < len(ts); i++ {
		a, b := max(0, ts[i]), min(length, ts[i+1])
		if !geom.Over(b, a) {
			continue
		}
		if s.Dist(from.Add(along.Times((a+b)/2))) > limit {
			run = 0
		} else if run += b - a; run > leastMm {
			return true
		}
	}
	return false
}
