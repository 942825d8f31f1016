package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// slung is how far the places of a sling lie from the centre of gravity, in
// shares of what hangs, widest first. Common practice, no source.
var slung = []float64{0.35, 0.3, 0.25, 0.2, 0.15}

// sameMass is how far the mass that the solids have may lie off the one on the
// step. Common practice, no source: keys, seals and weld metal are in neither.
const sameMass = 0.05

// sling finds where to sling what a step lifts: the side of the joint that has
// the mass on the step, level, along its longer way, at the widest places that the centre
// of gravity hangs under, about as high as each other: through an opening on top one comes
// to the floor of the inside, and a flange out there carries nothing.
// Where there are none, the widest. What it does not find stays
// nil: no place on something solid, no floor that tells which way is up.
func (s *stage) sling(j *plan.JointPlan) {
	if j.Lift == nil || !s.hasFloor {
		return
	}
	for _, end := range []plan.JointEnd{j.A, j.B} {
		bodies := s.bodiesOf(j.N-1, Instance{end.Part, end.Copy}.id())
		g := assembly.Together(bodies)
		if len(g.Unknown) > 0 || math.Abs(g.MassKg-j.Lift.MassKg) > sameMass*j.Lift.MassKg {
			continue
		}
		along, size := assembly.AxisZ, g.Box.High.Sub(g.Box.Low)
		found, outward := plan.Sling{End: "front", CentreMm: g.Box.High.Z - g.Centre.Z}, assembly.AxisZ
		if s.up == assembly.AxisZ {
			along, outward, found.End, found.CentreMm = assembly.AxisY, assembly.AxisY, "top", g.Box.High.Y-g.Centre.Y
		}
		if size.X > size.Dot(along) {
			along, outward, found.End, found.CentreMm = assembly.AxisX, assembly.AxisX.Times(-1), "left", g.Centre.X-g.Box.Low.X
		}
		found.At = s.endmost(bodies, outward)
		for _, share := range slung {
			half := math.Floor(share * size.Dot(along))
			at, ok := assembly.Slings(bodies, s.up, along, half)
			if !ok || !s.carries(at.IDs[0]) || !s.carries(at.IDs[1]) {
				continue
			}
			over := s.overMm(at, g.Centre)
			uneven := math.Abs(at.Points[0].Sub(at.Points[1]).Dot(s.up)) > besideMm
			if uneven || over > 0 && j.Lift.Sling != nil {
				continue
			}
			hole := slices.ContainsFunc([]float64{half - besideMm, half + besideMm}, func(mm float64) bool {
				beside, ok := assembly.Slings(bodies, s.up, along, mm)
				return ok && s.overMm(beside, g.Centre) > over
			})
			if hole {
				continue
			}
			place := found
			place.HalfMm, place.HookMm, place.OverMm = half, math.Ceil(half*math.Tan(plan.SlingDeg*math.Pi/180)), over
			place.CentreMm = words.Round(place.CentreMm, 0)
			place.On = [2]string{s.title(at.IDs[1]), s.title(at.IDs[0])} // front or right first
			if j.Lift.Sling = &place; over == 0 {
				return
			}
		}
		if j.Lift.Sling != nil {
			return
		}
	}
}

// endmost is the title of the part that reaches farthest outward, the first of several;
// what is bought does not count.
func (s *stage) endmost(bodies []assembly.Body, outward assembly.Vec) (title string) {
	most := math.Inf(-1)
	for i := range bodies {
		b := bodies[i].Box()
		reach := max(b.Low.Dot(outward), b.High.Dot(outward))
		if _, made := s.Of[bodies[i].ID]; made && reach > most+1e-6 {
			title, most = s.title(bodies[i].ID), reach
		}
	}
	return title
}

// besideMm is how far to either side of it a place of a sling has to be as good. Common
// practice, no source: a webbing sling is 50 mm wide.
const besideMm = 25.0

// overMm is how far the centre of gravity lies above the lower place of a sling, whole mm;
// 0 where it hangs below both.
func (s *stage) overMm(at assembly.Sling, centre assembly.Vec) float64 {
	low := min(at.Points[0].Dot(s.up), at.Points[1].Dot(s.up))
	return math.Ceil(max(0, centre.Dot(s.up)-low))
}

// carries tells whether a body is solid enough to sling: a part, and none of
// sheet.
func (s *stage) carries(id string) bool {
	of, made := s.Of[id]
	if !made {
		return false
	}
	p := s.model(of.Part).Part
	return p.Stock.Form != "sheet" && p.Frustum == nil && p.Transition == nil && p.Flight == nil && p.Bends == nil
}
