package part

import (
	"cmp"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

func mirrored(p *canvas.Path) *canvas.Path {
	return p.Transform(canvas.Identity.Scale(-1, 1))
}

func (s *Sizes) marked(f parts.Face) bool {
	return slices.ContainsFunc(s.Groups, func(m Group) bool { return m.Face == f })
}

// face is the view of one face with the groups marked on it; with others, also
// the through holes of the other face, to punch from here.
func (s *Sizes) face(f parts.Face, others bool) *plan.Face {
	path := s.OutlinePath()
	if f == parts.Back {
		path = mirrored(path)
	}
	b := geom.Bounds(path)
	out := &plan.Face{
		Part: s.Part.Title.Value, Face: f, Outline: plan.Contour(path.ToSVG()), MinMm: b.Min, MaxMm: b.Max,
		Mirrored: f == parts.Back, Round: s.form.round(),
	}
	datum, named := s.datumOf(func(m *Group) bool { return m.Face == f }, f)
	if !named {
		datum = s.setBy(f)
	}
	out.Datum, out.Round = datumSides(datum)+" edge", out.Round && !named
	out.FromX, out.FromY, _ = strings.Cut(datum, "-")
	out.DatumAt, _, _ = geom.Corner(datum, b)
	out.SetAt, _, _ = geom.Corner(s.setBy(f), b)
	if v, ok := s.form.(faced); ok {
		v.onFace(s.W, out)
	}
	for _, st := range append(s.Side(false), s.Side(true)...) {
		outline := !st.Inside && st == s.widest()
		if !outline && s.seenFrom(st, f) {
			size := s.W.Dia(st.Size.NominalMm)
			if st.Size.Thread != nil {
				size = st.Size.Thread.Designation
			}
			out.Circles = append(out.Circles, plan.Circle{Label: size + " " + st.Name, DiameterMm: st.Size.NominalMm})
		}
	}
	for k := range seq.Refs(s.Keyways) {
		if k.opensAt(f, s.LengthMm()) {
			out.Notches = append(out.Notches, k.notch(f))
		}
	}
	s.groupsOn(out, others)
	s.carry(out)
	s.cuts(out)
	if s.Clamp != nil {
		s.Clamp.split(out)
		if !s.marked(f) {
			out.NoTemplate = "no hole is marked on it"
		}
	}
	if s.allCentral(f) && !others {
		out.NoTemplate = "its one hole is on the axis: the lathe finds it"
	}
	if s.marked(f) && !slices.ContainsFunc(s.Groups, func(m Group) bool { return m.Face == f && !m.byTable() }) {
		out.NoTemplate = "its holes are placed by the mill table"
	}
	if out.NoTemplate == "" && s.marked(f) && !slices.ContainsFunc(s.Groups, func(m Group) bool { return m.drilledFrom() == f && !s.cutterMakes(&m) }) {
		out.NoTemplate = "its holes are cut with the blank"
	}
	return out
}

// cutterMakes tells whether the cutter of a flat part makes a group to size.
func (s *Sizes) cutterMakes(m *Group) bool {
	cut := s.Part.Stock.Cut
	_, _, follows := LeastHoleMm(cut, s.plateMm())
	return follows && m.whyNot(s, cut) == ""
}

// cuts finds the steps of a face that paper does not lie across: one whose inside
// stands proud, and one with holes marked inside it.
func (s *Sizes) cuts(out *plan.Face) {
	if len(out.Holes)+len(out.Slots) == 0 {
		return
	}
	away := out.Face.Outward()
	for i := range s.Steps {
		d := s.Steps[i].Size.NominalMm
		in, _, okIn := s.Plane(out.Face, d/2-geom.CloseMm)
		past, _, okOut := s.Plane(out.Face, d/2+geom.CloseMm)
		proud := geom.Clean(away * (in - past))
		if !okIn || !okOut || proud == 0 || slices.ContainsFunc(out.Cuts, func(c plan.FaceCut) bool { return c.DiameterMm == geom.Clean(d) }) {
			continue
		}
		c := plan.FaceCut{DiameterMm: geom.Clean(d), ProudMm: proud}
		note := func(q plan.XY) {
			inside := geom.Distance(q, plan.XY{}) < d/2
			c.Inside, c.Outside = c.Inside || inside, c.Outside || !inside
		}
		for _, h := range out.Holes {
			note(plan.XY{XMm: h.XMm, YMm: h.YMm})
		}
		for _, h := range out.Slots {
			note(plan.XY{XMm: h.XMm, YMm: h.YMm})
		}
		if c.Inside || proud > 0 {
			out.Cuts = append(out.Cuts, c)
		}
	}
	slices.SortFunc(out.Cuts, func(a, b plan.FaceCut) int { return cmp.Compare(a.DiameterMm, b.DiameterMm) })
	kept := out.Cuts[:0] // outside the first that has all holes in it, and inside the last that has none, there is no paper
	for i, c := range out.Cuts {
		beyond := c.Inside && !c.Outside && i > 0 && !out.Cuts[i-1].Outside
		within := !c.Inside && i+1 < len(out.Cuts) && !out.Cuts[i+1].Inside
		if !beyond && !within {
			kept = append(kept, c)
		}
	}
	out.Cuts = kept
}

// groupsOn puts the face's own groups on it, and, to punch from here or as
// circles, those that come through from the other face.
func (s *Sizes) groupsOn(out *plan.Face, others bool) {
	offset := 0
	for m := range seq.Refs(s.Groups) {
		switch {
		case m.Face == out.Face:
			m.shown(s.W, out, 0)
			offset = max(offset, m.Group.First+m.Group.Count-1)
		case !m.through:
		case others:
			m.shown(s.W, out, offset)
		default:
			at, half := m.seen(out.Face)
			for _, q := range at {
				out.Circles = append(out.Circles, plan.Circle{Label: m.name + " from the " + string(m.Face), DiameterMm: m.Group.DrillMm, CentreMm: q, HalfMm: half})
			}
		}
	}
}

// datumOf are the edges, seen on a face, that the first of some groups is measured from
// which names any; ok is false if none does.
func (s *Sizes) datumOf(some func(*Group) bool, seenOn parts.Face) (datum string, ok bool) {
	for m := range seq.Refs(s.Groups) {
		if d := m.pattern.Datum; some(m) && strings.Contains(d, "-") {
			if m.Face != seenOn {
				d = mirroredDatum.Replace(d)
			}
			return d, true
		}
	}
	return "left-bottom", false
}

// mirroredDatum has the edges of one face as they are seen on the other.
var mirroredDatum = strings.NewReplacer("left", "right", "right", "left")

// setBy are the two edges that the template of a face is set by: those that what it
// marks is measured from, or else the same edges of the metal as those of the other.
func (s *Sizes) setBy(f parts.Face) string {
	datum, ok := s.datumOf(func(m *Group) bool { return m.drilledFrom() == f }, f)
	if !ok {
		datum, ok = s.datumOf(func(m *Group) bool { return m.drilledFrom() == f.Other() }, f)
	}
	if !ok && f == parts.Back && s.marked(parts.Front) {
		return mirroredDatum.Replace(datum)
	}
	return datum
}

// datumSides names the two edges of a datum: "left and top".
func datumSides(datum string) string { return strings.Replace(datum, "-", " and ", 1) }

// seenFrom tells whether a step's circle shows on a face: the outermost step
// there, and every step that is not hidden behind a larger one.
func (s *Sizes) seenFrom(st *Step, f parts.Face) bool {
	for o := range seq.Refs(s.Steps) {
		if o == st || o.Inside != st.Inside {
			continue
		}
		nearer := o.FromMm < st.FromMm
		if f == parts.Back {
			nearer = o.FromMm > st.FromMm
		}
		hides := o.Size.NominalMm >= st.Size.NominalMm
		if st.Inside {
			hides = o.Size.NominalMm <= st.Size.NominalMm
		}
		if nearer && hides {
			return false
		}
	}
	if st.Inside && f == parts.Back {
		return s.boreMm() > 0 // a blind bore does not show on the back
	}
	return true
}

// inward is the distance from a datum edge at at, which lies either at min or
// at the other end.
func inward(v, at, min float64) float64 {
	if at == min {
		return geom.Clean(v - at)
	}
	return geom.Clean(at - v)
}
