package stand

import (
	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Faced is a group of holes at one face of a body, in the machine.
type Faced struct {
	Body  *assembly.Body
	Model *part.Model
	Group *part.Group
	At    []assembly.Vec // the middles of the mouths
	Run   assembly.Vec   // of slots: from there to the centre of an end; zero of holes
	Out   assembly.Vec   // of the face, of length 1
	Sunk  bool           // heads lie in the mouths
	Used  bool           // by a joint
}

// Mouths are the groups of holes of a body, once for each face they open on.
func (m *Stand) Mouths(b *assembly.Body) []Faced {
	return seq.Keep(m.HolesAndSlots(b), func(f Faced) bool { return f.Group.Hole != nil })
}

// HolesAndSlots are the mouths of both.
func (m *Stand) HolesAndSlots(b *assembly.Body) (all []Faced) {
	r := m.PartOf(b.ID)
	for g := range seq.Refs(r.Groups) {
		for _, face := range []parts.Face{parts.Front, parts.Back} {
			if face != g.Face && (!g.Through || g.OnWall()) {
				continue
			}
			f := Faced{Body: b, Model: r, Group: g, Out: assembly.AxisZ, Used: m.Used(r, g)}
			f.Sunk = face == g.Face && g.Hole != nil && (g.Hole.Counterbore != nil || g.Hole.Countersink != nil)
			pose, deep := b.Pose.Of(solid.Wall(r, g)), 0.0
			if !g.OnWall() {
				f.Out = parts.At(face, f.Out, f.Out.Reversed())
				z, _, ok := r.PlaneOf(g, face)
				if !ok {
					continue
				}
				deep = z
			}
			half, _, _ := g.SlotMm()
			q := g.SeenFront([]plan.XY{half})[0]
			f.Out, f.Run = pose.Turn(f.Out), pose.Turn(assembly.Vec{X: q.XMm, Y: q.YMm})
			f.At = seq.Map(g.SeenFront(g.OwnMm()), func(q plan.XY) assembly.Vec { return pose.Apply(assembly.Vec{X: q.XMm, Y: q.YMm, Z: -deep}) })
			all = append(all, f)
		}
	}
	return all
}

// Used tells whether a joint puts its screws through a group of holes.
func (m *Stand) Used(r *part.Model, g *part.Group) bool {
	return m.Job.Uses(r.Part.Name.Value, g.Group.Name)
}
