package picture

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// slung is how far the places of a sling lie from the centre of gravity, in
// shares of what hangs, widest first. Common practice, no source.
var slung = func() (shares []float64) {
	for percent := 35; percent >= 15; percent-- {
		shares = append(shares, float64(percent)/100)
	}
	return shares
}()

// sameMass is how far the mass that the solids have may lie off the one on the
// step. Common practice, no source: keys, seals and weld metal are in neither.
const sameMass = 0.05

// sling finds where to sling what a step lifts: the side of the joint that has
// the mass on the step, level, along its longer way, at the widest places that the centre
// of gravity hangs under, where a strap lies even and keeps clear of the joint.
// Where there are none, the widest; where no strap keeps clear, the threaded holes on top to
// both sides of the centre, if any, and else the centre alone. It stays nil of what no joint
// lifts, and where no floor tells which way is up.
func (s *drawing) sling(j *plan.JointPlan) {
	if j.Lift == nil || j.Lift.Loose || !s.HasFloor {
		return
	}
	ends := stand.EndsOf(j)
	if j.Lift.Tried != "" {
		ends[0] = parts.Instance{Part: j.Lift.Tried, Copy: j.Lift.TriedCopy}.ID()
	}
	for i, id := range ends {
		bodies := s.BodiesOf(j.N-1, id)
		g := assembly.Together(bodies)
		if len(g.Unknown) > 0 || math.Abs(g.MassKg-j.Lift.MassKg) > sameMass*j.Lift.MassKg {
			continue
		}
		h := hung{drawing: s, Group: g, bodies: bodies, others: s.BodiesOf(j.N-1, ends[1-i]), along: assembly.AxisZ}
		size := g.Box.Size()
		found, outward := plan.Sling{End: "front", FrontUp: s.Up == assembly.AxisZ, CentreMm: g.Box.High.Z - g.Centre.Z}, assembly.AxisZ
		if found.FrontUp {
			h.along, outward, found.End, found.CentreMm = assembly.AxisY, assembly.AxisY, "TOP", g.Box.High.Y-g.Centre.Y
		}
		if size.X > size.Dot(h.along) {
			h.along, outward, found.End, found.CentreMm = assembly.AxisX, assembly.AxisX.Reversed(), "left", g.Centre.X-g.Box.Low.X
			if found.FrontUp {
				found.End = "9 o'clock"
			}
		}
		found.At, found.CentreMm = s.endmost(bodies, outward), words.Round(found.CentreMm, 0)
		if j.Lift.Sling = h.made(found); j.Lift.Sling != nil {
			return
		}
		for _, h.strapMm = range strapsMm {
			if j.Lift.Sling = h.straps(found, size.Dot(h.along)); j.Lift.Sling != nil {
				return
			}
		}
		j.Lift.Sling = h.eyes(found)
		return
	}
}

// made adds to a place what is made to lift by, to both sides of the centre of gravity: the threaded holes on top of a part
// that hangs alone, or the eyes of several copies of one part; nil where there is none.
func (h *hung) made(found plan.Sling) *plan.Sling {
	eyes := map[string][]assembly.Vec{}
	own := seq.Keep(h.bodies, func(b assembly.Body) bool { return h.PartOf(b.ID) != nil })
	for b := range seq.Refs(own) {
		for _, f := range h.Mouths(b) {
			r := f.Model
			if f.Used || f.Group.Hole.For != parts.Lifting {
				continue
			}
			name := r.Part.Name.Value
			if eyes[name] = append(eyes[name], f.At...); !h.astride(eyes[name]) {
				continue
			}
			found.Holes, found.On[0], found.OverMm = words.Spaced(f.Group.Group.Name), r.Out.Title, h.overMm(eyes[name])
			switch thread := f.Group.Size.Thread; {
			case thread != nil && len(own) == 1 && f.Out.Dot(h.Up) > machine.Steep && h.free(f.At):
				found.Eyes, found.Through, found.For = thread.Designation, f.Group.Through, true
				return &found
			case thread == nil && r.Part.Quantity > 1:
				found.For = true
				return &found
			}
		}
	}
	return nil
}

// astride tells whether places lie to both sides of the centre of gravity.
func (h *hung) astride(at []assembly.Vec) bool {
	off := func(p assembly.Vec) float64 { return p.Sub(h.Centre).Dot(h.along) }
	return seq.Least(at, off) < -eyeMm && seq.Max(-inf, at, off) > eyeMm
}

// free tells whether nothing stands over places where something is screwed in from above.
func (h *hung) free(at []assembly.Vec) bool {
	all := slices.Concat(h.bodies, h.others)
	return !slices.ContainsFunc(at, func(p assembly.Vec) bool {
		return len(assembly.Crossings(all, p.Add(h.Up.Times(machine.StandsMm)), h.Up)) > 0
	})
}

// hung is what hangs in the hook at a step, and what it is brought to.
type hung struct {
	*drawing
	assembly.Group
	bodies, others []assembly.Body
	along          assembly.Vec // the level way from one place to the other
	strapMm        float64      // width of the straps
}

// straps are the widest places that the centre of gravity hangs under, or else the widest; nil
// where none keeps clear.
func (h *hung) straps(found plan.Sling, longMm float64) (best *plan.Sling) {
	for _, share := range slung {
		half := math.Floor(share * longMm)
		at, ok := assembly.Slings(h.bodies, h.Up, h.along, half)
		if !ok || !h.carries(at.IDs[0]) || !h.carries(at.IDs[1]) || math.Abs(at.Points[0].Sub(at.Points[1]).Dot(h.Up)) > unevenMm || !h.even(at, half) || h.caught(half) || h.caught(-half) {
			continue
		}
		place := found
		place.StrapMm, place.HalfMm, place.HookMm, place.OverMm = h.strapMm, half, math.Ceil(half*math.Tan(plan.SlingDeg*math.Pi/180)), h.overMm(at.Points[:])
		place.On = [2]string{h.Title(at.IDs[1]), h.Title(at.IDs[0])} // front or right first
		if place.OverMm == 0 {
			return &place
		}
		best = cmp.Or(best, &place)
	}
	return best
}

// strapsMm are the widths of straps to try, and looseMm is how far it keeps from what must not catch it; the
// two places lie within unevenMm of a height. Common practice, no source: a webbing
// sling is 50 mm wide, the narrowest 30 mm.
var strapsMm = []float64{50, 30}

const (
	looseMm  = 5.0
	unevenMm = 25.0
)

// even tells whether a strap lies on one body at each place, under no step and on none of its holes.
func (h *hung) even(at assembly.Sling, half float64) bool {
	for _, share := range []float64{-0.5, -0.25, 0.25, 0.5} {
		q, ok := assembly.Slings(h.bodies, h.Up, h.along, half+share*h.strapMm)
		for i := range q.IDs {
			if !ok || q.IDs[i] != at.IDs[i] || math.Abs(q.Points[i].Sub(at.Points[i]).Dot(h.Up)) > looseMm {
				return false
			}
		}
	}
	return !h.onHole(at.IDs[0], at.Points[0]) && !h.onHole(at.IDs[1], at.Points[1])
}

// onHole tells whether a strap over a place lies on a hole in a wall of the body there.
func (h *hung) onHole(id string, place assembly.Vec) bool {
	b := h.BodyOf[id]
	under := func(at assembly.Vec, wideMm float64) bool {
		return math.Abs(at.Sub(place).Dot(h.along)) < (h.strapMm+wideMm)/2
	}
	for _, f := range h.Mouths(b) {
		for _, at := range f.At {
			if math.Abs(f.Out.Dot(h.along)) < machine.Steep && under(at, f.Group.Size.FinishedMm) {
				return true
			}
		}
	}
	for _, f := range h.PartOf(id).Radials {
		for _, row := range f.Rows {
			if under(b.Pose.Apply(assembly.Vec{Z: -row.AxialMm}), max(f.Size.FinishedMm, row.AlongMm)) {
				return true
			}
		}
	}
	return false
}

// caught tells whether a strap round what hangs, mm along it from the centre of gravity, lies between it
// and what it is brought to. What lies inside it catches nothing.
func (h *hung) caught(mm float64) bool {
	middle := h.Centre.Dot(h.along) + mm
	for i := range h.others {
		other, near := h.across(h.others[i].Box(), middle)
		if !near {
			continue
		}
		for k := range h.bodies {
			if own, here := h.across(h.bodies[k].Box(), middle); here && own.Meets(other, looseMm) && own.Join(other) != own {
				return true
			}
		}
	}
	return false
}

// across is what of a box lies under a strap about a place along the load.
func (h *hung) across(b assembly.Box, middle float64) (assembly.Box, bool) {
	low, high := b.Low.Dot(h.along), b.High.Dot(h.along)
	b.Low = b.Low.Add(h.along.Times(max(0, middle-h.strapMm/2-low)))
	b.High = b.High.Add(h.along.Times(min(0, middle+h.strapMm/2-high)))
	return b, b.Low.Dot(h.along) < b.High.Dot(h.along)
}

// eyes adds to a place the free threaded holes on top that eye bolts go into, of one part to both sides
// of the centre of gravity: the widest.
func (h *hung) eyes(found plan.Sling) *plan.Sling {
	for b := range seq.Refs(h.bodies) {
		if !h.carries(b.ID) {
			continue
		}
		for _, f := range h.Mouths(b) {
			thread := f.Group.Size.Thread
			if thread == nil || thread.MajorMm < eyeMm || f.Used || f.Out.Dot(h.Up) < machine.Steep {
				continue
			}
			if h.astride(f.At) && h.free(f.At) {
				found.Eyes, found.Holes, found.OverMm, found.Through = thread.Designation, words.Spaced(f.Group.Group.Name), h.overMm(f.At), f.Group.Through
				found.On = [2]string{h.Title(b.ID), h.Title(b.ID)}
				return &found
			}
		}
	}
	return &found
}

// eyeMm is the least thread of an eye bolt that this program names. Common practice, no source.
const eyeMm = 10.0

// endmost is the title of the part that reaches farthest outward, the first of several;
// what is bought does not count.
func (s *drawing) endmost(bodies []assembly.Body, outward assembly.Vec) (title string) {
	most := -inf
	for i := range bodies {
		_, reach := bodies[i].Along(outward)
		if _, made := s.Of[bodies[i].ID]; made && geom.Over(reach, most) {
			title, most = s.Title(bodies[i].ID), reach
		}
	}
	return title
}

// overMm is how far the centre of gravity lies above the lowest place of a sling, whole mm;
// 0 where it hangs below all.
func (h *hung) overMm(at []assembly.Vec) float64 {
	return math.Ceil(max(0, -seq.Least(at, func(p assembly.Vec) float64 { return p.Sub(h.Centre).Dot(h.Up) })))
}

// carries tells whether a body is solid enough to sling: a part, and none of
// sheet.
func (s *drawing) carries(id string) bool {
	r := s.PartOf(id)
	return r != nil && r.Part.Stock.Form != "sheet" && !r.Part.Kind.OfSheet()
}
