package machine

import (
	"cmp"
	"fmt"
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/measured"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// flangeMm is how thick a flange of a motor is taken for: thin, as no job gives it. Common
// practice, no source.
const flangeMm = 10.0

// stood adds the motors and couplings of which the job says where they stand.
func (m *Machine) stood() {
	for k := range m.job.Loose {
		e := &m.job.Loose[k]
		pose, ok := assembly.Still, false
		if e.Stands != nil && !e.Off {
			pose, ok = m.poses[named(e.Stands.On).id()]
		}
		if !ok {
			continue
		}
		name := words.Head(e.Item.Value)
		b := assembly.Body{ID: name, MassKg: e.MassKg, DensityKgM3: steelKgM3}
		for n := 2; m.roles[b.ID].kind != 0; n++ {
			b.ID = fmt.Sprintf("%s %d", name, n)
		}
		r := m.model(e.Stands.On.Part)
		var at assembly.Pose
		if g := groupNamed(r, e.Stands.On.Feature); g != nil {
			at, b.Solid, ok = m.onPlate(e.Stands, r, g, pose)
		} else {
			at, b.Solid, ok = m.onStep(e.Stands, r)
		}
		if !ok {
			continue
		}
		if b.Pose = pose.Of(at); e.Stands.Diameter.Mm == 0 || e.Stands.Length.Mm == 0 {
			m.Problems = append(m.Problems, problem(e.After.Value, plan.BodyUnknown, e.Stands.Pos, plan.Named(name)))
		}
		on := Instance{r.Part.Name.Value, e.Stands.On.Copy}.id()
		m.allow(b.ID, on, fitMm)
		m.add(b, role{kind: aStanding, joint: e.After.Value, on: on, loose: k, runs: groupNamed(r, e.Stands.On.Feature) == nil})
	}
	m.inLine()
}

// offAxisMm is how far the axes of a motor and of the shaft that it drives may lie apart as placed. Common practice, no source.
const offAxisMm = 0.5

// inLine finds motors that do not stand in line with the shaft that they drive through a coupling, and shafts of theirs
// that the coupling does not reach, by half a diameter at least (common practice, no source).
func (m *Machine) inLine() {
	drive := m.job.Motor
	if drive == nil || !drive.Drives.Set() || !drive.InLine() {
		return
	}
	shaft, ends := m.standing(named(drive.Drives)), map[bool]*assembly.Body{}
	for b := range seq.Refs(m.Bodies) {
		if r := m.roles[b.ID]; r.kind == aStanding {
			ends[r.runs] = b
		}
	}
	motor, coupling := ends[false], ends[true]
	if shaft == nil || motor == nil || math.Abs(shaft.Pose.Z.Dot(motor.Pose.Z)) < 1-1e-6 {
		return
	}
	e := &m.job.Loose[m.roles[motor.ID].loose]
	report := func(kind plan.ProblemKind, args ...plan.Arg) {
		m.Problems = append(m.Problems, problem(e.After.Value, kind, e.Stands.Pos, args...))
	}
	if off := motor.Pose.At.Sub(shaft.Pose.At).Cross(shaft.Pose.Z).Len(); off > offAxisMm {
		report(plan.MotorBeside, plan.Named(motor.ID), m.named(shaft.ID), plan.Of(plan.Mm, off))
		return
	}
	if coupling == nil {
		return
	}
	of := &m.job.Loose[m.roles[coupling.ID].loose]
	diameterMm, lengthMm := MotorShaft(m.job, e.Stands)
	seat := m.model(of.Stands.On.Part).StepNamed(of.Stands.On.Feature)
	for _, bore := range of.Bores(m.job.Units) {
		if diameterMm == 0 && math.Abs(bore-seat.Size.NominalMm) > offAxisMm {
			diameterMm = bore
		}
	}
	tip := motor.Pose.At.Sub(motor.Pose.Z.Times(cmp.Or(lengthMm, measured.ShaftLengthMm(diameterMm))))
	lacks := tip.Sub(coupling.Pose.At).Dot(coupling.Pose.Z) - of.Stands.Length.Mm + diameterMm/2
	if diameterMm > 0 && lacks > offAxisMm {
		report(plan.CouplingShort, plan.Named(coupling.ID), plan.Named(motor.ID), plan.Of(plan.Mm, lacks), plan.Of(plan.Mm, diameterMm))
	}
}

// middle is that of some places.
func middle(of []plan.XY) (at plan.XY) {
	n := float64(len(of))
	for _, q := range of {
		at = at.Plus(plan.XY{XMm: q.XMm / n, YMm: q.YMm / n})
	}
	return at
}

// onPlate is a motor on a face of a plate or a turned part, in its frame: z along its axis, from the
// face to its end. ok is false where nothing tells which face that is.
func (m *Machine) onPlate(s *parts.Stands, r *part.Model, g *part.Group, plate assembly.Pose) (at assembly.Pose, solid *assembly.Solid, ok bool) {
	middle, face := middle(seenFront(g, g.Points)), cmp.Or(s.Face, m.faceAway(plate.Z))
	at = assembly.Move(assembly.Vec{X: middle.XMm, Y: middle.YMm})
	if face == parts.Back {
		at = assembly.Frame(assembly.Vec{X: middle.XMm, Y: middle.YMm}, assembly.AxisZ.Reversed(), assembly.AxisY)
	}
	z, _, onMetal := r.PlaneOf(g, face)
	at.At.Z = -z
	solid = m.motorSolid(s, r, g)
	return at, solid, face != "" && onMetal && solid != nil
}

// faceAway is the face of a plate that looks away from the end of the shaft which the motor drives,
// and with both ends on one side the other, as out points from its front; empty where the job has no such shaft.
func (m *Machine) faceAway(out assembly.Vec) parts.Face {
	motor := m.job.Motor
	if motor == nil || !motor.Drives.Set() {
		return ""
	}
	shaft := m.standing(named(motor.Drives))
	if shaft == nil {
		return ""
	}
	if (shaft.Pose.Z.Dot(out)*m.driven(motor.Drives) > 0) == motor.InLine() {
		return parts.Front
	}
	return parts.Back
}

// motorSolid is a motor with its flange at z = 0 and its shaft below, as far as it is known; nil
// where nothing of it is.
func (m *Machine) motorSolid(s *parts.Stands, r *part.Model, g *part.Group) *assembly.Solid {
	var bore float64
	if r.Part.Bore != nil {
		bore = r.Part.Bore.Size.Nominal.Mm
	}
	face, known := measured.FaceOf(g.Hole.Pattern.PCD.Mm, bore)
	_, inside := r.Sides()
	for i := 0; i < len(inside) && !known; i++ {
		face, known = measured.FaceOf(g.Hole.Pattern.PCD.Mm, inside[i].Size.NominalMm)
	}
	shaftMm, endMm := MotorShaft(m.job, s)
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
		end, _ = measured.FrameShaft(motor.Frame.Value)
	}
	return cmp.Or(s.Shaft.Mm, end.DiameterMm), cmp.Or(s.ShaftEnd.Mm, end.LengthMm)
}

// onStep is a coupling on the step of a shaft, in the shaft's frame: z along its axis, from the
// shoulder of the step to the nearer end and beyond, where it is bored for the shaft of a motor.
func (m *Machine) onStep(s *parts.Stands, r *part.Model) (at assembly.Pose, solid *assembly.Solid, ok bool) {
	outside, _ := r.Sides()
	for _, step := range outside {
		if step.Name != s.On.Feature || s.Diameter.Mm <= step.Size.NominalMm || s.Length.Mm == 0 {
			continue
		}
		at = assembly.Move(assembly.Vec{Z: -step.ToMm})
		if m.driven(s.On) < 0 {
			at = assembly.Frame(assembly.Vec{Z: -step.FromMm}, assembly.AxisZ.Reversed(), assembly.AxisY)
		}
		endMm, boreMm := min(step.ToMm-step.FromMm, s.Length.Mm), step.Size.NominalMm
		solid = assembly.Of(assembly.Tube(s.Diameter.Mm/2, boreMm/2, 0, endMm))
		for k := range m.job.Loose {
			if o := m.job.Loose[k].Stands; o != nil && o != s {
				shaftMm, _ := MotorShaft(m.job, o)
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
