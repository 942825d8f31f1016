package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Screwing is a hole of a loose part that screws go through, with the thread that it meets where it lies, or else the nearest
// free one before it in what the part lies on.
type Screwing struct {
	Group  string  // of the hole
	On     string  // the part that has the thread; empty where there is none
	Thread string  // what the thread is called there
	Meets  bool    // a screw goes straight from the hole into the thread
	OffMm  float64 // how far the thread lies beside the axis of the hole
	GapMm  float64 // and beyond its mouth
	GripMm float64 // from under the head to the thread
	DeepMm float64 // the thread may be
	Blind  bool    // it is
}

// Screws are what is bought to go through the holes of a loose part: their thread, how long they are, and what holes of a
// diameter let them through.
type Screws struct {
	Thread threads.Thread
	LongMm float64
	Passes func(holeMm float64) bool
}

// socket is a thread that no joint fills, at its mouth; shank a hole that a screw goes through, at one of its.
type socket struct {
	body, part, name string
	at, out          assembly.Vec
	deepMm           float64
	blind, met       bool
}
type shank struct {
	on, name                string // the body that its part lies on
	at, out, run            assembly.Vec
	thickMm, sunkMm, playMm float64
}

// squareTo is how much of the axis of a screw lies along that of its thread at the least: it is within 1° of it. Common
// practice, no source.
var squareTo = math.Cos(math.Pi / 180)

// Screwings are the holes of all copies of a loose part, in no joint, that screws go through.
func (m *Machine) Screwings(of string, s Screws) (all []Screwing) {
	sockets, unmet := m.sockets(of, s.Thread), []shank(nil)
	for _, h := range m.shanks(of, s) {
		if to := seq.At(sockets, func(t *socket) bool { return h.meets(t, s.LongMm) }); to != nil {
			to.met = true
			all = append(all, h.into(to, true))
			continue
		}
		unmet = append(unmet, h)
	}
	for _, h := range unmet {
		var near *socket
		for t := range seq.Refs(sockets) {
			if !t.met && t.body == h.on && h.before(t) && (near == nil || h.farMm(t) < h.farMm(near)) {
				near = t
			}
		}
		all = append(all, h.into(near, false))
	}
	return all
}

// shanks are the holes of the copies of a loose part, in no joint, that let screws through.
func (m *Machine) shanks(of string, s Screws) (all []shank) {
	for _, l := range m.Laid() {
		b := m.Stage().BodyOf[l.ID()]
		if l.Part != of || b == nil {
			continue
		}
		for _, f := range m.HolesAndSlots(b) {
			g := f.Group
			_, thick, ok := f.Model.PlaneOf(g, g.Face)
			if !ok || f.Used || g.Size.Thread != nil || !s.Passes(g.Size.FinishedMm) || !g.OnWall() && (f.Out.Dot(b.Pose.Z) < 0) != (g.Face == parts.Back) {
				continue
			}
			h := shank{on: l.On.ID(), name: g.Group.Name, out: f.Out, run: f.Run, thickMm: thick, playMm: g.Size.FinishedMm - s.Thread.MajorMm}
			if f.Sunk && g.Hole.Counterbore != nil {
				h.sunkMm = g.Hole.Counterbore.Depth.Mm
			}
			for _, h.at = range f.At {
				all = append(all, h)
			}
		}
	}
	return all
}

// sockets are the threads of all parts but one, in no joint.
func (m *Machine) sockets(but string, t threads.Thread) (all []socket) {
	fits := func(size part.Made) bool { return size.Thread != nil && size.Thread.Designation == t.Designation }
	for b, r := range m.Parts() {
		if r.Part.Name.Value == but {
			continue
		}
		for _, f := range m.Mouths(b) {
			if _, thick, ok := r.PlaneOf(f.Group, f.Group.Face); ok && !f.Used && fits(f.Group.Size) && !f.Group.For.Moves() {
				all = append(all, socketsOf(&f, thick)...)
			}
		}
		for _, f := range r.Radials {
			if !fits(f.Size) || m.Job.Uses(r.Part.Name.Value, f.In.Name.Value) {
				continue
			}
			for _, row := range f.Rows {
				o := openingOf(b, &row)
				all = append(all, socket{body: b.ID, part: r.Part.Name.Value, name: row.Name, at: o.At, out: o.Along, deepMm: row.DepthMm, blind: !f.In.Through && f.In.Depth.Mm > 0})
			}
		}
	}
	return all
}

// socketsOf are the threads of a group in metal of a thickness.
func socketsOf(f *stand.Faced, thickMm float64) []socket {
	if !f.Group.Through {
		thickMm = f.Group.Hole.Depth.Mm
	}
	return seq.Map(f.At, func(at assembly.Vec) socket {
		return socket{body: f.Body.ID, part: f.Model.Part.Name.Value, name: f.Group.Group.Name, at: at, out: f.Out, deepMm: thickMm, blind: !f.Group.Through}
	})
}

// along is how far a thread lies beyond the mouth of a hole that is nearer to it, and from under the head of a screw
// at the other.
func (h *shank) along(t *socket) (gapMm, gripMm float64) {
	off := t.at.Sub(h.at).Dot(h.out)
	if off <= -h.thickMm/2 { // the mouth is where the head lies
		return -off - h.thickMm, -off - h.sunkMm
	}
	return off, off + h.thickMm
}

// before tells whether a hole lies before the mouth of a thread, and looks its way.
func (h *shank) before(t *socket) bool {
	gap, _ := h.along(t)
	return gap >= -StandsMm && math.Abs(h.out.Dot(t.out)) > looksPart && h.at.Sub(t.at).Dot(t.out) >= -StandsMm
}

// offMm is how far a thread lies beside the axis of a hole, or of a slot's middle line.
func (h *shank) offMm(t *socket) float64 {
	return beside(&stand.Faced{At: []assembly.Vec{h.at}, Run: h.run}, t.at, h.out)
}

// farMm is how far the mouths of a hole and of a thread lie apart.
func (h *shank) farMm(t *socket) float64 {
	gap, _ := h.along(t)
	return math.Hypot(gap, h.offMm(t))
}

// meets tells whether a screw of a length comes through a hole straight to a thread.
func (h *shank) meets(t *socket, longMm float64) bool {
	gap, _ := h.along(t)
	return gap < longMm && h.before(t) && math.Abs(h.out.Dot(t.out)) >= squareTo && h.offMm(t) <= h.playMm+meetMm
}

// into is a hole with a thread; nil for none.
func (h *shank) into(t *socket, meets bool) Screwing {
	s := Screwing{Group: h.name}
	if t != nil {
		s.On, s.Thread, s.Meets, s.OffMm, s.DeepMm, s.Blind = t.part, t.name, meets, h.offMm(t), t.deepMm, t.blind
		s.GapMm, s.GripMm = h.along(t)
	}
	return s
}
