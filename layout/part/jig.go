package part

import (
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Jigged is a group that is drilled through a jig.
type Jigged struct {
	Group   string  // its name
	Jig     string  // that of the jig
	Lay     string  // how the jig lies on the part: a sentence
	PlateMm float64 // what the jig adds to the depth
}

// placed notes what makes a group instead of punch marks, on each template that shows it.
func (n *Numbered) placed(group, by string) {
	if m := n.GroupNamed(group); m != nil {
		m.Group.Placed = by
	}
	named := func(g *plan.Group) bool { return g.Name == group }
	for _, f := range n.Faces {
		for _, view := range []*plan.Face{f, f.Carried} {
			if view == nil {
				continue
			}
			if g := seq.At(view.Groups, named); g != nil {
				g.Placed = by
			}
		}
	}
}

// DrilledFrom is the face that a group is drilled from, and its places seen there.
func (m *Group) DrilledFrom() (parts.Face, []plan.XY) {
	at, _ := m.seen(m.drilledFrom())
	return m.drilledFrom(), at
}

// CutWhole tells whether the cutter of the blank makes a group to its size.
func (n *Numbered) CutWhole(m *Group) bool { return n.cut.whole[m.Name.Value] }

// jig is the jig that a group is drilled through, or nil.
func (b *bench) jig(m *Group) *Jigged {
	return seq.At(b.jigs, func(j *Jigged) bool { return j.Group == m.Name.Value })
}

// unpunched tells whether a group needs no punch marks: it is cut, turned, drilled
// through a jig or placed by the table of the mill.
func (b *bench) unpunched(m *Group) bool {
	return b.cut.whole[m.Name.Value] || b.central(m) || b.jig(m) != nil || m.byTable()
}

// byTable tells whether a group is placed by the co-ordinates of the mill table.
func (m *Group) byTable() bool { return m.Hole != nil && m.Hole.ByTable }

// jigLines drill a group through its jig: the guide takes the place of the centre
// drill and of the pilot.
func (b *bench) jigLines(j *Jigged, m *Group, way cutting.Way) []string {
	pin := " Put a close " + b.W.Dia(m.Size.DrillMm) + " pin through the jig and hole " + strconv.Itoa(m.Group.First) + " as soon as it is drilled, then drill the others."
	way.Drills = slices.Clone(way.Drills[len(way.Drills)-1:])
	out := append([]string{j.Lay}, b.drillLines(way, false)...)
	out[1] = "Through the jig: " + out[1] + pin
	if !m.Through {
		out = append(out, "The stop of the drill counts the "+b.W.Size(j.PlateMm)+" of the jig on top of the depth.")
	}
	return out
}

// tableLine places the holes of a jig.
func (b *bench) tableLine(m *Group) string {
	var at []string
	for i, q := range m.Points {
		at = append(at, strconv.Itoa(m.Group.First+i)+": "+b.W.Size(q.XMm)+", "+b.W.Size(q.YMm))
	}
	return "Zero the mill table on the axis, x to the right and y to TOP; do not punch. Centre-drill at x, y of " + strings.Join(at, "; ") + "."
}

// jigLookLines say what the template of a face is for whose holes all come through jigs.
func (b *bench) jigLookLines() (out []string) {
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		other := func(m Group) bool { return m.drilledFrom() == f && b.jig(&m) == nil }
		own := func(m Group) bool { return m.drilledFrom() == f }
		if slices.ContainsFunc(b.Groups, own) && !slices.ContainsFunc(b.Groups, other) {
			out = append(out, "The "+string(f)+" template is laid on only to see that the jig lies the right way.")
		}
	}
	return out
}

// needlessFace is why no template of a face is worth printing: all that is marked on it has a better way,
// or its form said so.
func (s *Sizes) needlessFace(out *plan.Face, others bool) string {
	from := seq.Keep(s.Groups, func(m Group) bool { return m.drilledFrom() == out.Face })
	all := func(is func(*Group) bool) bool {
		return !slices.ContainsFunc(from, func(m Group) bool { return !is(&m) })
	}
	switch {
	case !s.marked(out.Face) && s.Clamp != nil:
		return "no hole is marked on it"
	case !s.marked(out.Face):
		return out.NoTemplate
	case len(from) == 0:
		return "its holes go through and are punched from the " + string(out.Face.Other()) + " template"
	case all((*Group).byTable):
		return "its holes are placed by the mill table"
	case all(s.central) && !others:
		return "its one hole is on the axis: the lathe finds it"
	case out.NoTemplate == "" && all(s.cutterMakes):
		return "its holes are cut with the blank"
	}
	return out.NoTemplate
}

// cutterMakes tells whether the cutter of a flat part makes a group to size.
func (s *Sizes) cutterMakes(m *Group) bool {
	cut := s.Part.Stock.Cut
	_, _, follows := LeastHoleMm(cut, s.plateMm())
	return follows && m.whyNot(s, cut) == ""
}
