package joint

import (
	"math"
	"slices"
	"strconv"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// feature is what a JointRef points at. At most one of step, group and radial
// is set; none for TOP and for an outline that is not round.
type feature struct {
	ref    parts.JointRef
	r      *part.Model
	step   *part.Step
	group  *part.Group
	radial *part.Radial
	keyway *part.Keyway
	nth    int // of radial, from 1; 0 is all
}

// Instance is the copy of a part that it is on.
func (f feature) Instance() parts.Instance { return f.ref.Instance() }

// title names the part for people, with the copy where there are several.
func (f feature) title() string { return copyTitle(f.r, f.ref.Copy) }

func copyTitle(r *part.Model, n int) string {
	t := r.Out.Title
	t += words.When(r.Part.Quantity > 1, " "+strconv.Itoa(n))
	return t
}

func (f feature) text() string { return f.title() + " " + words.Spaced(f.ref.Feature) }

// onWall tells whether a feature is a group of holes on a flange of a folded part, or
// on the top or the bottom of a bar.
func (f feature) onWall() bool { return f.group != nil && f.group.OnWall() }

// plane is where a face of what a group of holes goes through lies, and how much
// metal lies behind it.
func (f feature) plane(face parts.Face) (zMm, thickMm float64, ok bool) {
	return f.r.PlaneOf(f.group, face)
}

// thickMm is the thickness that heat flows into at a feature: the plate, the
// wall, or half a solid bar.
func (f feature) thickMm() float64 {
	switch {
	case f.step != nil:
		return f.r.WallMm(f.step.MidMm())
	case f.radial != nil:
		return f.r.WallMm(f.radial.Rows[0].AxialMm)
	}
	return f.r.WallMm(f.r.LengthMm() / 2)
}

// points are the centres of a hole group seen from the part's front, or from the
// front of the wall that it is on.
func (f feature) points() []plan.XY {
	switch {
	case f.group == nil:
		return nil
	case f.group.Face == parts.Back:
		return flipped(f.group.OwnMm())
	}
	return f.group.OwnMm()
}

// clocks are the clock angles of a feature seen from the part's front.
func (f feature) clocks() []float64 {
	switch {
	case f.keyway != nil:
		return []float64{f.keyway.Row.ClockDeg}
	case f.radial != nil:
		rows := f.radial.Rows
		if f.nth > 0 {
			rows = rows[min(f.nth-1, len(rows)):min(f.nth, len(rows))]
		}
		return seq.Map(rows, func(row plan.RadialRow) float64 { return row.ClockDeg })
	case f.group != nil && !f.onWall():
		off := func(q plan.XY) bool { return geom.Over(q.LengthMm(), 0) }
		return seq.Map(seq.Keep(f.points(), off), geom.ClockDeg)
	case f.ref.Feature == "top":
		return []float64{0}
	}
	return nil
}

func (f feature) end() plan.JointEnd {
	e := plan.JointEnd{Part: f.ref.Part, Copy: f.ref.Copy, Title: f.title(), PartTitle: f.r.Out.Title, Feature: f.ref.Feature}
	if s := f.step; s != nil {
		e.DiameterMm, e.MinMm, e.MaxMm, e.Inside = geom.Clean(s.Size.NominalMm), geom.Clean(s.Size.MinMm), geom.Clean(s.Size.MaxMm), s.Inside
		e.FromMm, e.ToMm = geom.Clean(s.FromMm), geom.Clean(s.ToMm)
	}
	if f.group != nil {
		e.DiameterMm = f.group.Size.FinishedMm
	}
	return e
}

// end is a step's end in a direction.
func end(s *part.Step, dir float64) float64 {
	if back(dir) {
		return s.ToMm
	}
	return s.FromMm
}

// back tells whether a direction along an axis, 1 or -1, is toward the back.
func back(dir float64) bool { return dir > 0 }

// round tells whether a feature is a plain cylinder, inside or outside.
func round(f feature, inside bool) bool {
	return f.step != nil && f.step.Inside == inside && f.step.Size.Thread == nil
}

// roundMm is the diameter of a round feature, 0 for another.
func (f feature) roundMm() float64 { return f.r.RoundMm(f.ref.Feature) }

func (f feature) barEnd() (end parts.Side, ok bool) {
	return parts.Side(f.ref.Feature), f.r.Part.BarEnd(f.ref.Feature) != nil
}

// middled tells whether the origin of a part is its middle: a person at the bench knows no other.
func (f feature) middled() bool {
	p := f.r.Part
	if !p.Flat() {
		return p.Bar == nil
	}
	box := f.r.Bounds()
	return p.Bends == nil && !geom.Over(math.Hypot(box.Min.XMm+box.Max.XMm, box.Min.YMm+box.Max.YMm), 0)
}

// wallText names a face of what a group of holes is on: "outside of the top flange of
// Guard".
func (f feature) wallText(face parts.Face) string {
	name := f.wallName()
	if name == "" {
		return string(face) + " of " + f.title()
	}
	return f.lookOf(face) + " of the " + name + " of " + f.title()
}

// wallName is the flange or the side of a bar that a group is on; empty on the front or back.
func (f feature) wallName() string {
	if f.group == nil {
		return ""
	}
	name, _ := f.r.WallOf(f.group)
	return name
}

// lookOf is the way that a face of a wall looks.
func (f feature) lookOf(face parts.Face) string {
	if f.group != nil {
		if _, outside := f.r.WallOf(f.group); face == outside {
			return "outside"
		}
	}
	return "inside"
}

// isNamed tells whether one of some references is to a feature of an instance, or to one of its row.
func isNamed(i parts.Instance, refs []parts.JointRef, feature string) bool {
	return slices.ContainsFunc(refs, func(r parts.JointRef) bool {
		base, _, _ := parts.Numbered(r.Feature)
		return r.Instance() == i && (r.Feature == feature || base == feature)
	})
}

func diameterMm(s *part.Step) float64 { return s.Size.NominalMm }

// shoulder is the step that a ring on a feature's step stands against in a
// direction: the neighbour that is smaller inside, larger outside; nil if the
// step runs out there.
func shoulder(f feature, dir float64) *part.Step {
	for s := range seq.Refs(f.r.Steps) {
		if s.Inside != f.step.Inside || !geom.Alike(end(s, -dir), end(f.step, dir)) {
			continue
		}
		higher := s.Size.NominalMm - f.step.Size.NominalMm
		if f.step.Inside {
			higher = -higher
		}
		if geom.Over(higher, 0) {
			return s
		}
	}
	return nil
}
