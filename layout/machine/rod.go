package machine

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// How wide and how long a nipple is with the coupler of a grease gun on it, straight from the mouth of its
// hole. Common practice, no source: 15 across; 20 of nipple and 40 of coupler.
const gunWideMm, gunLongMm = 15.0, 60.0

// Rods are what rods screwed into the holes of a group meet where they stand up out of them, level with the
// lower mouth or the floor and longMm long: what they lie in, by title, and the openings outward of parts, of
// those for a nipple, that they stand before. Holes that do not stand upright are not looked at.
func (m *Machine) Rods(of, group string, diameterMm, longMm float64) (in, before []string) {
	for rod := range seq.Refs(m.rods(of, group, diameterMm, longMm)) {
		in = append(in, m.rodIn(rod)...)
		for b, r := range m.Parts() {
			for k := range r.Radials {
				if row := r.Radials[k].In; row.For == parts.Grease && rodBefore(rod, b, &r.Radials[k]) {
					before = append(before, row.Name.Value+" of "+m.Title(b.ID))
				}
			}
		}
	}
	return seq.Add(nil, in...), seq.Add(nil, before...)
}

// rods are those of Rods that stand out of the mouths of their holes.
func (m *Machine) rods(of, group string, diameterMm, longMm float64) (rods []assembly.Body) {
	for _, f := range m.holes(of, group) {
		_, deep, ok := f.Model.PlaneOf(f.Group, f.Group.Face)
		if !f.Group.Through {
			deep = f.Group.Hole.Depth.Mm
		}
		if !ok || f.Group.OnWall() || f.Out.Dot(m.Up) < Steep || longMm <= deep {
			continue
		}
		solid := assembly.Of(assembly.Cylinder(diameterMm/2, 0, longMm-deep))
		for _, at := range f.At {
			rods = append(rods, assembly.Body{ID: f.Body.ID, Solid: solid, Pose: assembly.Frame(at, f.Out, f.Out.Square())})
		}
	}
	return rods
}

// RodsPast is how far the rods of Rods reach above the top of a part's first copy, mm, below 0 where they end under
// it; ok is false where none of them stands.
func (m *Machine) RodsPast(of, group string, diameterMm, longMm float64, name string) (mm float64, ok bool) {
	b := m.Standing(parts.Instance{Part: name, Copy: 1})
	for _, rod := range m.rods(of, group, diameterMm, longMm) {
		if b != nil {
			return rod.Solid.Box().High.Z - b.Box().Moved(rod.Pose.Inverse()).High.Z, true
		}
	}
	return mm, false
}

// rodIn are what a rod lies in, besides the part of its own name.
func (m *Machine) rodIn(rod *assembly.Body) (titles []string) {
	for b := range seq.Refs(m.Bodies) {
		if b.ID == rod.ID {
			continue
		}
		if _, meets := assembly.PairOverlap(rod, b, pairTolerance); meets {
			titles = append(titles, m.Title(b.ID))
		}
	}
	return titles
}

// rodBefore tells whether a rod stands where a grease gun goes to an opening of a part.
func rodBefore(rod, b *assembly.Body, f *part.Radial) bool {
	return slices.ContainsFunc(f.Rows, func(row plan.RadialRow) bool {
		o := openingOf(b, &row)
		o.RadiusMm, o.ReachMm = gunWideMm/2, gunLongMm
		free, _ := o.Look([]assembly.Body{*rod})
		return free < 1
	})
}

// Past is how far a part reaches beyond a face of another on whose axis it stands, mm, at most 0 where it ends
// before that; ok is false where they share no axis. The first copy of each is looked at.
func (m *Machine) Past(name, other string, face parts.Face) (mm float64, ok bool) {
	b, on := m.Standing(parts.Instance{Part: name, Copy: 1}), m.Standing(parts.Instance{Part: other, Copy: 1})
	if b == nil || on == nil || !stand.SameAxis(b.Pose, on.Pose) {
		return mm, false
	}
	box, own := b.Box().Moved(on.Pose.Inverse()), on.Solid.Box()
	if face == parts.Back {
		return own.Low.Z - box.Low.Z, true
	}
	return box.High.Z - own.High.Z, true
}
