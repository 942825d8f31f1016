// Package picture draws the machine for its sheets: of every joint the sections
// that show it as it is made, of all that stands by then, with what comes, which
// way, how it is held and slung; and the general arrangement.
//
// In goes a machine that stands; out come plan.Picture and plan.Arrangement, shapes
// on paper in millimetres of the machine, x right and y up, written into the joints
// of the plan. It asks package machine what stands at a step and which ways are
// free, and finds no fault itself. Sizes that only please the eye are common practice,
// no source.
package picture

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// Draw is the general arrangement, nil where nothing is placed; and every
// joint is given the sections that show it, of all that stands by then, and what hoods its bolts.
func Draw(m *machine.Machine) *plan.Arrangement {
	s := &drawing{m.Stage(), map[cutKey][][]plan.XY{}}
	for _, j := range m.Joints {
		a, b := s.BodyOf[j.A.Instance().ID()], s.BodyOf[j.B.Instance().ID()]
		j.StandAs(nil)
		j.Ways = m.Ways(j.Name)
		if j.Kind == parts.BoltKind {
			j.Bolt.Under = m.Hooded(j)
		}
		s.sling(j)
		if a == nil || b == nil {
			continue
		}
		j.UpDeg = s.upDeg(j, b)
		v := &viewed{drawing: s, j: j, mover: a, still: b, stands: s.Together(j.N, a.ID), there: s.Together(j.N-1, a.ID)[b.ID]}
		pressed := j.Kind == parts.PressKind
		if pressed && !j.Press.Inward || j.Screw != nil && j.Screw.Onto || s.OnFloor(j.N-1, a.ID) && !s.OnFloor(j.N-1, b.ID) { // the hub goes on the shaft, and what is free to what stands
			v.mover, v.still = b, a
		}
		if j.Frame == j.Name {
			if p, ok := v.framePicture(); ok {
				j.Pictures = []plan.Picture{p}
				v.number()
				continue
			}
		}
		planes, into := v.planes(a, b)
		if v.come = v.comings(into); pressed && len(v.come) > 0 { // which end of a seat is up
			into = v.come[0].into
		}
		j.Hold = v.hold(into)
		v.draw(planes)
		if len(j.Pictures) == 0 { // the middle of one lies beside the other: through where they meet
			for i := range planes {
				planes[i].At = between(a.Box(), b.Box())
			}
			v.draw(planes)
		}
		v.laidPicture()
		v.endOn()
		v.number()
	}
	return s.arrangement()
}

// draw makes the pictures of the planes that cut both parts.
func (v *viewed) draw(planes []assembly.Pose) {
	v.j.Pictures = nil
	for _, plane := range planes {
		if p, ok := v.picture(plane); ok {
			v.j.Pictures, v.planesOf = append(v.j.Pictures, p), append(v.planesOf, plane)
		}
	}
}

// upDeg is the clock angle of the face of part b with the holes of a joint beside its axis
// at which the machine's TOP lies; 0 of another joint, and of a face that lies level.
func (m *drawing) upDeg(j *plan.JointPlan, b *assembly.Body) float64 {
	if j.Beside == nil {
		return 0
	}
	r := m.Model(j.B.Part)
	up := b.Pose.Of(solid.Wall(r, r.GroupNamed(j.B.Feature))).Inverse().Turn(assembly.AxisY)
	if math.Hypot(up.X, up.Y) < stand.Level {
		return 0
	}
	return geom.OnClock(words.Round(geom.ClockDeg(xy(up.X, up.Y)), 2))
}

// picture is the section by a plane; ok is false where it misses both parts.
func (v *viewed) picture(plane assembly.Pose) (plan.Picture, bool) {
	moverLoops, stillLoops := v.cut(plane, v.mover), v.cut(plane, v.still)
	if len(moverLoops) == 0 || len(stillLoops) == 0 {
		return plan.Picture{}, false
	}
	p := plan.Picture{Cut: v.kindOf(plane)}
	win := v.window(plane, moverLoops, stillLoops)
	p.MinMm, p.MaxMm = win.Min, win.Max
	p.Shapes, p.Centres = v.shapes(plane, win)
	if axis, ok := v.AxisOf(v.j); ok {
		p.Centres = append(p.Centres, win.clipLines([][2]plan.XY{win.through(onPlane(plane, axis.At), dirOn(plane, axis.Z))})...)
	}
	p.Arrows = v.arrows(plane, win, nil)
	return p, true
}
