package stand

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/measured"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// flangeMm is how thick a flange of a motor is taken for: thin, as no job gives it. Common
// practice, no source.
const flangeMm = 10.0

// stood adds the motors and couplings of which the job says where they stand.
func (m *Stand) stood() {
	for k := range m.Job.Loose {
		e := &m.Job.Loose[k]
		pose, ok := assembly.Still, false
		if e.Stands != nil && !e.Off {
			pose, ok = m.Poses[e.Stands.On.Instance().ID()]
		}
		if !ok {
			continue
		}
		name := words.Head(e.Item.Value)
		b := assembly.Body{ID: name, MassKg: e.MassKg, DensityKgM3: steelKgM3}
		for n := 2; m.Roles[b.ID].Kind != 0; n++ {
			b.ID = fmt.Sprintf("%s %d", name, n)
		}
		r := m.Model(e.Stands.On.Part)
		var at assembly.Pose
		if g := r.GroupNamed(e.Stands.On.Feature); g != nil {
			at, b.Solid, ok = m.onPlate(e.Stands, r, g, pose)
		} else {
			at, b.Solid, ok = m.onStep(e.Stands, r)
		}
		if !ok {
			continue
		}
		if b.Pose = pose.Of(at); e.Stands.Diameter.Mm == 0 || e.Stands.Length.Mm == 0 {
			m.Problems = append(m.Problems, Problem(e.After.Value, plan.BodyUnknown, e.Stands.Pos, plan.Named(name)))
		}
		on := e.Stands.On.Instance().ID()
		m.Allow(b.ID, on, FitMm)
		m.add(b, Role{Kind: Standing, Joint: e.After.Value, On: on, Loose: k, Runs: r.GroupNamed(e.Stands.On.Feature) == nil})
	}
	m.inLine()
}

// offAxisMm is how far the axes of a motor and of the shaft that it drives may lie apart as placed. Common practice, no source.
const offAxisMm = 0.5

// inLine finds motors that do not stand in line with the shaft that they drive through a coupling, and shafts of theirs
// that the coupling does not reach, by half a diameter at least (common practice, no source).
func (m *Stand) inLine() {
	drive := m.Job.Motor
	if drive == nil || !drive.Drives.Set() || !drive.InLine() {
		return
	}
	shaft, ends := m.Standing(drive.Drives.Instance()), map[bool]*assembly.Body{}
	for b := range seq.Refs(m.Bodies) {
		if r := m.Roles[b.ID]; r.Kind == Standing {
			ends[r.Runs] = b
		}
	}
	motor, coupling := ends[false], ends[true]
	if shaft == nil || motor == nil || !m.Tied(shaft, motor) || geom.Over(1, math.Abs(shaft.Pose.Z.Dot(motor.Pose.Z))) {
		return
	}
	e := &m.Job.Loose[m.Roles[motor.ID].Loose]
	report := func(kind plan.ProblemKind, args ...plan.Arg) {
		m.Problems = append(m.Problems, Problem(e.After.Value, kind, e.Stands.Pos, args...))
	}
	if off := motor.Pose.At.Sub(shaft.Pose.At).Cross(shaft.Pose.Z).Len(); off > offAxisMm {
		report(plan.MotorBeside, plan.Named(motor.ID), m.Named(shaft.ID), plan.Of(plan.Mm, off))
	} else if coupling != nil {
		if lacks, diameterMm := m.lacksInCoupling(motor, coupling, e); diameterMm > 0 && lacks > offAxisMm {
			report(plan.CouplingShort, plan.Named(coupling.ID), plan.Named(motor.ID), plan.Of(plan.Mm, lacks), plan.Of(plan.Mm, diameterMm))
		}
	}
}

// Opposed tells whether the shaft of a motor that drives by a belt or a pair of gears looks the other way than the driven
// end of its shaft, beside it: parts.Motor.TurnsClockwise takes both for one side, and is then to be turned over. False
// where nothing stands that tells.
func (m *Stand) Opposed() bool {
	drive := m.Job.Motor
	if drive == nil || !drive.Drives.Set() || drive.InLine() {
		return false
	}
	shaft := m.Standing(drive.Drives.Instance())
	return shaft != nil && slices.ContainsFunc(m.Bodies, func(b assembly.Body) bool {
		r, shaftOut := m.Roles[b.ID], b.Pose.Z.Reversed()
		end := shaft.Pose.Z.Times(m.Driven(drive.Drives))
		return r.Kind == Standing && !r.Runs && m.Tied(shaft, &b) && !geom.Over(shaftOut.Dot(end), -1)
	})
}

// lacksInCoupling is how much of half its diameter the shaft of a motor lacks in its coupling, and that diameter, which
// the coupling says where the motor does not; 0 where neither is known.
func (m *Stand) lacksInCoupling(motor, coupling *assembly.Body, e *parts.Loose) (lacks, diameterMm float64) {
	of := &m.Job.Loose[m.Roles[coupling.ID].Loose]
	diameterMm, lengthMm := MotorShaft(m.Job, e.Stands)
	seat := m.Model(of.Stands.On.Part).StepNamed(of.Stands.On.Feature)
	for _, bore := range of.Bores(m.Job.Units) {
		if diameterMm == 0 && math.Abs(bore-seat.Size.NominalMm) > offAxisMm {
			diameterMm = bore
		}
	}
	tip := motor.Pose.At.Sub(motor.Pose.Z.Times(cmp.Or(lengthMm, measured.ShaftLengthMm(diameterMm))))
	return tip.Sub(coupling.Pose.At).Dot(coupling.Pose.Z) - of.Stands.Length.Mm + diameterMm/2, diameterMm
}

// onPlate is a motor on a face of a plate or a turned part, in its frame: z along its axis, from the
// face to its end. ok is false where nothing tells which face that is.
func (m *Stand) onPlate(s *parts.Stands, r *part.Model, g *part.Group, plate assembly.Pose) (at assembly.Pose, solid *assembly.Solid, ok bool) {
	middle, face := geom.Mean(g.SeenFront(g.Points)), cmp.Or(s.Face, m.faceAway(plate.Z))
	on := assembly.Vec{X: middle.XMm, Y: middle.YMm}
	at = parts.At(face, assembly.Move(on), assembly.Frame(on, assembly.AxisZ.Reversed(), assembly.AxisY))
	z, _, onMetal := r.PlaneOf(g, face)
	at.At.Z = -z
	solid = m.motorSolid(s, r, g)
	return at, solid, face != "" && onMetal && solid != nil
}

// faceAway is the face of a plate that looks away from the end of the shaft which the motor drives,
// and with both ends on one side the other, as out points from its front; empty where the job has no such shaft.
func (m *Stand) faceAway(out assembly.Vec) parts.Face {
	motor := m.Job.Motor
	if motor == nil || !motor.Drives.Set() {
		return ""
	}
	shaft := m.Standing(motor.Drives.Instance())
	if shaft == nil {
		return ""
	}
	if (shaft.Pose.Z.Dot(out)*m.Driven(motor.Drives) > 0) == motor.InLine() {
		return parts.Front
	}
	return parts.Back
}

// motorSolid is a motor with its flange at z = 0 and its shaft below, as far as it is known; nil
// where nothing of it is.
func (m *Stand) motorSolid(s *parts.Stands, r *part.Model, g *part.Group) *assembly.Solid {
	var bore float64
	if r.Part.Bore != nil {
		bore = r.Part.Bore.Size.Nominal.Mm
	}
	face, known := measured.FaceOf(g.Hole.Pattern.PCD.Mm, bore)
	_, inside := r.Sides()
	for i := 0; i < len(inside) && !known; i++ {
		face, known = measured.FaceOf(g.Hole.Pattern.PCD.Mm, inside[i].Size.NominalMm)
	}
	shaftMm, endMm := MotorShaft(m.Job, s)
	var out []assembly.Simple
	round := func(diameterMm, lowMm, highMm float64) {
		if diameterMm > 0 && highMm > lowMm {
			out = append(out, assembly.Cylinder(diameterMm/2, lowMm, highMm))
		}
	}
	round(cmp.Or(s.Flange.Mm, face.OutsideMm), 0, flangeMm)
	round(s.Diameter.Mm, flangeMm, s.Length.Mm)
	round(face.SpigotMm, -face.SpigotHeightMm, 0)
	round(shaftMm, -endMm, -face.SpigotHeightMm)
	if len(out) == 0 {
		return nil
	}
	return assembly.Of(out...)
}

// MotorShaft is the shaft of a motor, as the job gives it or by the frame where no gear is
// between, in mm; 0 where nothing tells.
func MotorShaft(job *parts.Job, s *parts.Stands) (diameterMm, lengthMm float64) {
	var end measured.ShaftEnd
	if motor := job.Motor; motor != nil && motor.OutRPM.Value == 0 {
		end, _ = measured.FrameShaft(motor.Frame.Value, motor.Kilowatts())
	}
	return cmp.Or(s.Shaft.Mm, end.DiameterMm), cmp.Or(s.ShaftEnd.Mm, end.LengthMm)
}

// onStep is a coupling on the step of a shaft, in the shaft's frame: z along its axis, from the
// shoulder of the step to the nearer end and beyond, where it is bored for the shaft of a motor.
func (m *Stand) onStep(s *parts.Stands, r *part.Model) (at assembly.Pose, solid *assembly.Solid, ok bool) {
	outside, _ := r.Sides()
	for _, step := range outside {
		if step.Name != s.On.Feature || s.Diameter.Mm <= step.Size.NominalMm || s.Length.Mm == 0 {
			continue
		}
		at = assembly.Move(assembly.Vec{Z: -step.ToMm})
		if m.Driven(s.On) < 0 {
			at = assembly.Frame(assembly.Vec{Z: -step.FromMm}, assembly.AxisZ.Reversed(), assembly.AxisY)
		}
		endMm, boreMm := min(step.ToMm-step.FromMm, s.Length.Mm), step.Size.NominalMm
		solid = assembly.Of(assembly.Tube(s.Diameter.Mm/2, boreMm/2, 0, endMm))
		for k := range m.Job.Loose {
			if o := m.Job.Loose[k].Stands; o != nil && o != s {
				shaftMm, _ := MotorShaft(m.Job, o)
				boreMm = max(boreMm, shaftMm)
			}
		}
		if endMm < s.Length.Mm && boreMm < s.Diameter.Mm {
			solid = assembly.Of(assembly.Tube(s.Diameter.Mm/2, step.Size.NominalMm/2, 0, endMm), assembly.Tube(s.Diameter.Mm/2, boreMm/2, endMm, s.Length.Mm))
		}
		return at, solid, true
	}
	return at, nil, false
}

// Driven is 1 where the step that a motor turns is nearer the front end of its
// shaft, else −1.
func (m *Stand) Driven(step parts.JointRef) float64 {
	r := m.Model(step.Part)
	outside, _ := r.Sides()
	if slices.ContainsFunc(outside, func(s *part.Step) bool { return s.Name == step.Feature && s.FromMm+s.ToMm > r.LengthMm() }) {
		return -1
	}
	return 1
}
