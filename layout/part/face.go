package part

import (
	"cmp"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

func mirrored(p *canvas.Path) *canvas.Path { return p.Transform(canvas.Identity.Scale(-1, 1)) }

func (s *Sizes) marked(f parts.Face) bool {
	return slices.ContainsFunc(s.Groups, func(m Group) bool { return m.Face == f })
}

// bareFace is the outline of a face with the edges that its places are measured from.
func (s *Sizes) bareFace(f parts.Face) *plan.Face {
	path := s.OutlinePath()
	if f == parts.Back {
		path = mirrored(path)
	}
	b := geom.Bounds(path)
	datum, named := s.datumOf(func(m *Group) bool { return m.Face == f }, f)
	if !named {
		datum = s.setBy(f)
	}
	out := &plan.Face{
		Part: s.Part.Title.Value, Face: f, Outline: plan.Contour(path.ToSVG()), MinMm: b.Min, MaxMm: b.Max,
		Mirrored: f == parts.Back, Round: s.form.round() && !named, Datum: datumSides(datum) + " edge",
	}
	out.FromX, out.FromY, _ = strings.Cut(datum, "-")
	out.DatumAt, _, _ = geom.Corner(datum, b)
	out.SetAt, _, _ = geom.Corner(s.setBy(f), b)
	return out
}

// stepsOn draws the steps that show on a face as circles, but for the outline itself.
func (s *Sizes) stepsOn(out *plan.Face) {
	for _, st := range append(s.Side(false), s.Side(true)...) {
		if st == s.widest() || !s.seenFrom(st, out.Face) {
			continue
		}
		size := s.W.Dia(st.Size.NominalMm)
		if st.Size.Thread != nil {
			size = st.Size.Thread.Designation
		}
		out.Circles = append(out.Circles, plan.Circle{Label: size + " " + st.Name, DiameterMm: st.Size.NominalMm})
	}
}

// drilledFrom is the face that the group is punched and drilled from.
func (m *Group) drilledFrom() parts.Face { return cmp.Or(m.Group.PunchedFrom, m.Face) }

// cuts finds the steps of a face that paper does not lie across: one whose inside
// stands proud, and one with holes marked inside it.
func (s *Sizes) cuts(out *plan.Face) {
	at := seq.Map(out.Holes, func(h plan.Hole) plan.XY { return plan.XY{XMm: h.XMm, YMm: h.YMm} })
	at = append(at, seq.Map(out.Slots, func(h plan.Slot) plan.XY { return plan.XY{XMm: h.XMm, YMm: h.YMm} })...)
	if len(at) == 0 {
		return
	}
	radius := func(q plan.XY) float64 { return geom.Distance(q, plan.XY{}) }
	near, far := seq.Least(at, radius), seq.Max(0, at, radius)
	var cuts []plan.FaceCut
	for st := range seq.Refs(s.Steps) {
		d := st.Size.NominalMm
		in, _, okIn := s.Plane(out.Face, d/2-geom.CloseMm)
		past, _, okOut := s.Plane(out.Face, d/2+geom.CloseMm)
		c := plan.FaceCut{DiameterMm: geom.Clean(d), ProudMm: geom.Clean(out.Face.Outward() * (in - past)), Inside: near < d/2, Outside: far >= d/2}
		if okIn && okOut && (c.ProudMm > 0 || c.ProudMm < 0 && c.Inside) {
			cuts = append(cuts, c)
		}
	}
	slices.SortFunc(cuts, func(a, b plan.FaceCut) int { return cmp.Compare(a.DiameterMm, b.DiameterMm) })
	cuts = slices.Compact(cuts)
	// Inside the last that has no hole in it, and outside the first that has all, there is no paper.
	empty := len(seq.Keep(cuts, func(c plan.FaceCut) bool { return !c.Inside }))
	parted := len(seq.Keep(cuts, func(c plan.FaceCut) bool { return c.Outside }))
	out.Cuts = cuts[max(0, empty-1):min(len(cuts), parted+1)]
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
		case !m.Through:
		case others:
			m.shown(s.W, out, offset)
		default:
			at, half := m.seen(out.Face)
			for _, q := range at {
				out.Circles = append(out.Circles, plan.Circle{Label: m.Name.Value + " from the " + string(m.Face), DiameterMm: m.Group.DrillMm, CentreMm: q, HalfMm: half})
			}
		}
	}
}

// shown puts the group on a view of a face; offset shifts its numbers past
// those of the face's own groups.
func (m *Group) shown(w words.Writer, out *plan.Face, offset int) {
	g := *m.Group
	g.First += offset
	if out.Face != m.Face {
		g.PCDAboutMm = g.PCDAboutMm.Mirrored()
	}
	if offset > 0 {
		g.Chords = slices.Clone(g.Chords)
		for i := range g.Chords {
			g.Chords[i].From += offset
			g.Chords[i].To += offset
		}
	}
	out.Groups = append(out.Groups, g)
	if pcd := m.Pattern.PCD.Mm; pcd != 0 && m.On == "" && m.Hole != nil { // slots are measured from edges
		c := plan.Circle{Label: "PCD " + w.Size(pcd), DiameterMm: pcd, CentreMm: g.PCDAboutMm, Pitch: true}
		if !slices.Contains(out.Circles, c) { // two groups may share a pitch circle
			out.Circles = append(out.Circles, c)
		}
	}
	at, half := m.seen(out.Face)
	m.kind.mark(out, g, at, half)
}

// seen is where the group's centres and slot ends lie seen from a face.
func (m *Group) seen(from parts.Face) (at []plan.XY, half plan.XY) {
	if from == m.Face {
		return m.Points, m.halfMm
	}
	at = append(at, seq.Map(m.Points, plan.XY.Mirrored)...)
	return at, m.halfMm.Mirrored()
}

// datumOf are the edges, seen on a face, that the first of some groups is measured from
// which names any; ok is false if none does.
func (s *Sizes) datumOf(some func(*Group) bool, seenOn parts.Face) (datum string, ok bool) {
	for m := range seq.Refs(s.Groups) {
		if d := m.Pattern.Datum; some(m) && strings.Contains(d, "-") {
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
	for _, o := range s.Side(st.Inside) {
		nearer := parts.At(f, o.FromMm < st.FromMm, o.FromMm > st.FromMm)
		hides := o.Size.NominalMm >= st.Size.NominalMm
		if st.Inside {
			hides = o.Size.NominalMm <= st.Size.NominalMm
		}
		if nearer && hides {
			return false
		}
	}
	return !st.Inside || f != parts.Back || s.BoreMm() != 0 // a blind bore does not show on the back
}

// inward is the distance from a datum edge at at, which lies either at min or
// at the other end.
func inward(v, at, min float64) float64 {
	if at == min {
		return geom.Clean(v - at)
	}
	return geom.Clean(at - v)
}
