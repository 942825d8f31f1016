package part

import (
	"fmt"
	"slices"
	"strconv"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Group is a set of equal holes or slots on a face. A slot is what a disc
// sweeps from one end to the other; a hole is one whose ends are the same.
type Group struct {
	parts.FaceGroup
	Hole    *parts.HoleGroup // nil for slots
	Group   *plan.Group
	Size    Made
	Dowel   *Dowel    // what it is reamed with; nil for what is finished on the part by itself
	Points  []plan.XY // of a folded part, on its blank
	own     []plan.XY // as dimensioned: on the flange, of one that is on a flange
	kind    groupKind
	halfMm  plan.XY // from the middle of a slot to the centre of one end; zero for holes
	ownHalf plan.XY // the same as dimensioned
}

// groupKind is what differs between holes and slots.
type groupKind interface {
	size(z *sizer) Made
	describe(s *Sizes, m *Group) // fills in chords and what is done at the mouth
	feature() plan.FeatureKind
	operation(b *bench, m *Group, cut bool)
	mark(f *plan.Face, g plan.Group, at []plan.XY, half plan.XY)
	cutText(w words.Writer, m *Group) string
	cutShape() string
	sizes(r *record, m *Group) // checks of what is measured at one of them
	finished(m *Group) string  // why it cannot be cut to size by a cutter, or ""
}

// GroupNamed is the group of holes or slots of a name, nil if there is none.
func (s *Sizes) GroupNamed(name string) *Group {
	return seq.At(s.Groups, func(g *Group) bool { return g.Group.Name == name })
}

// Anchors tells whether anchors to the floor go through a group that no joint puts bolts through.
func (m *Group) Anchors() bool {
	if m.Hole != nil {
		return m.Hole.Anchors()
	}
	return m.FaceGroup.Anchors()
}

// SlotMm is the way from the middle of a slot to the centre of one end, seen on
// the marked face as dimensioned, and its depth, 0 if it goes through; ok is false for holes,
// whose way is none.
func (m *Group) SlotMm() (half plan.XY, depthMm float64, ok bool) {
	return m.ownHalf, m.Depth.Mm, m.Hole == nil
}

// SunkMm is how deep heads lie in the counterbores of a group; 0 without.
func (m *Group) SunkMm() float64 {
	if m.Hole == nil || m.Hole.Counterbore == nil {
		return 0
	}
	return m.Hole.Counterbore.Depth.Mm
}

// groupsOf lists the groups as the drawing gives them, holes first.
func groupsOf(p *parts.Part) []Group {
	var out []Group
	for h := range seq.Refs(p.Holes) {
		out = append(out, Group{FaceGroup: h.FaceGroup, Hole: h, kind: holes{h}})
	}
	for s := range seq.Refs(p.Slots) {
		half := geom.Clock((s.Length.Mm-s.Width.Mm)/2, s.Turn.Deg)
		out = append(out, Group{FaceGroup: s.FaceGroup, kind: slots{s}, halfMm: half, ownHalf: half})
	}
	return out
}

// placeGroup places a group from the edges of the part, seen on its marked face.
func (usual) placeGroup(z *sizer, m *Group) {
	m.Points = m.Pattern.Shape.Places(z.boundsOn(m.Face))
	z.onMetal(m)
}

// faceGroups works out every hole and slot group, front face first.
func (z *sizer) faceGroups() {
	next := 1
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		if !z.form.listed() {
			next = 1
		}
		for _, m := range groupsOf(z.Part) {
			if m.Face != f {
				continue
			}
			m.Size = m.kind.size(z)
			z.form.placeGroup(z, &m)
			m.Group = &plan.Group{
				Name: m.Name.Value, First: next, Count: len(m.Points), SizeText: m.Size.Text, Marked: f,
				DepthText: z.depthText(m.Size, m.Depth), Thread: m.Size.ThreadName(),
				DrillMm: m.Size.DrillMm, FinishedMm: m.Size.FinishedMm,
			}
			m.kind.describe(z.Sizes, &m)
			if m.Through {
				m.Group.DepthText = z.form.throughWords(&m)
			}
			z.Groups = append(z.Groups, m)
			next += len(m.Points)
		}
	}
}

// onMetal checks that every place of a pattern lies on the part. The reader has
// checked those whose sizes it knows; the thread tables and the sizes worked
// out here come after it.
func (z *sizer) onMetal(m *Group) {
	edge, bore := geom.NewContour(z.OutlinePath()), z.BoreMm()
	for i, at := range m.Points {
		front := parts.At(m.Face, at, at.Mirrored())
		if edge.DepthMm(front) > geom.CloseMm && geom.Distance(at, plan.XY{}) >= bore/2-geom.CloseMm {
			continue
		}
		z.fault(m.Pattern.PosOf(i), fmt.Sprintf("the place at x %s, y %s has no metal under it", z.W.Size(at.XMm), z.W.Size(at.YMm)), "a place between the bore and the outside")
	}
}

// SeenFront are places of the group in mm, which are seen on its face, as seen from the front.
func (m *Group) SeenFront(at []plan.XY) []plan.XY {
	return parts.At(m.Face, at, seq.Map(at, plan.XY.Mirrored))
}

// throughMm is how much metal a through group goes through, and how far the drill travels for it.
func (usual) throughMm(s *Sizes, m *Group) (metal, travel float64) {
	all := s.MetalAt(geom.Distance(m.Points[0], plan.XY{}))
	if len(all) == 0 {
		return 0, 0
	}
	return seq.Sum(all, geom.Span.LengthMm), all[len(all)-1].ToMm - all[0].FromMm
}

func (m *Group) feature(n *Numbered) plan.Feature {
	return plan.Feature{
		Kind: m.kind.feature(), Name: words.Spaced(m.Name.Value), Size: words.CountOf(m.Group.Count) + m.Group.SizeText + ", " + m.Group.DepthText,
		Limits: n.limitsText(m.Size.Size), Note: words.Join("; ", n.form.where(n, m), m.Group.Extra), Face: m.Face, Balloon: m.Points[0],
	}
}

// operations make the group, or what is left to do where the blank's cutter has
// made it.
func (m *Group) operations(b *bench) { m.kind.operation(b, m, b.cut.whole[m.Name.Value]) }

// checks are the group's size and, over pins, its spacing; of soft sheet that it lies where it belongs.
func (m *Group) checks(r *record) {
	if m.Dowel != nil { // the step in which it is reamed has its size, and nothing else is held of it
		return
	}
	m.kind.sizes(r, m)
	if r.knifed() { // it stretches between pins
		r.add(plan.Check{Ref: r.ref(m), What: words.Spaced(m.Name.Value) + ", laid flat on what it seals", Limits: "each bolt or pin drops in, nothing is stretched"})
		return
	}
	r.form.checkPlace(r, m)
	all := m.Group.Chords
	if len(all) > 8 { // a long list is checked from the hole table
		seen := map[string]bool{}
		all = slices.DeleteFunc(slices.Clone(all), func(ch plan.Chord) bool {
			again := seen[ch.Kind]
			seen[ch.Kind] = true
			return again
		})
	}
	for _, equal := range words.EqualChords(all) {
		r.checkChords(m, equal)
	}
}

// checkChords is a row for chords of equal length.
func (r *record) checkChords(m *Group, equal []plan.Chord) {
	s, pin, each := r.pitch(equal[0].CentreMm, m.Size), m.Size.pinMm(), ""
	if len(equal) > 1 {
		each = "each "
	}
	s.MinMm, s.MaxMm = s.MinMm+pin, s.MaxMm+pin
	r.sized(plan.Check{
		Ref: r.ref(m), What: words.Spaced(m.Name.Value) + " " + words.Pairs(equal), Gauge: "calipers",
		Wanted: each + r.W.Read(equal[0].OverMm) + " over pins " + r.W.Dia(pin),
	}, s)
}

// where says where the holes are: "PCD 140, first at 30°".
func (usual) where(n *Numbered, m *Group) string {
	p := m.Pattern
	face := string(m.Face) + " face"
	switch shape := p.Shape.(type) {
	case geom.Ring, geom.Arc, geom.Angles:
		return words.PitchCircle(p.PCD.Mm, p.Centre, n.W.Size) + ", hole " + strconv.Itoa(m.Group.First) + " at " + words.FineAngle(geom.ClockDeg(m.Points[0].Minus(p.Centre))) + ", " + face
	case geom.Grid:
		return n.gridWords(shape) + ", " + face
	case geom.Along:
		return n.alongWords(shape) + ", " + face
	case geom.Staggered:
		return n.gridWords(geom.Grid(shape)) + ", every second row one less and half a pitch in, " + face
	}
	return "see the hole table, " + face
}

// alongWords says "2 at 40, the first 30 from the left edge".
func (n *Numbered) alongWords(a geom.Along) string {
	edge := words.Either(a.FromRight, "right", "left")
	text := "the first " + n.W.Size(a.FirstMm) + " from the " + edge + " edge"
	return words.Either(a.Count > 1, strconv.Itoa(a.Count)+" at "+n.W.Size(a.PitchMm)+", "+text, text)
}

// gridWords says "3 × 2 at 40 × 30".
func (n *Numbered) gridWords(g geom.Grid) string {
	return strconv.Itoa(g.Columns) + " × " + strconv.Itoa(g.Rows) + " at " + n.W.Size(g.PitchXMm) + " × " + n.W.Size(g.PitchYMm)
}

// holesWords names the holes of a group by their numbers.
func holesWords(g *plan.Group) string { return numbered("hole", g) }

// numbered names the places of a group by what they are and their numbers.
func numbered(what string, g *plan.Group) string {
	return words.Either(g.Count == 1, what+" "+strconv.Itoa(g.First), what+"s "+strconv.Itoa(g.First)+" to "+strconv.Itoa(g.First+g.Count-1))
}

// placesWords names the holes as they are found on the metal: by the letter of their
// face where the other face's template marks them.
func (m *Group) placesWords() string {
	return words.Either(m.Group.PunchedFrom == "", holesWords(m.Group),
		holesWords(m.Group)+" ("+words.Lettered(m.Face, m.Group.First, m.Group.Count)+" of the "+string(m.Group.PunchedFrom)+" template)")
}

// central tells whether a group is one hole on the axis of a turned part: the lathe
// drills it, and nothing is set out for it.
func (s *Sizes) central(m *Group) bool {
	return s.Part.Turned() && m.Hole != nil && len(m.Points) == 1 && m.Points[0].LengthMm() < geom.CloseMm
}

// allCentral tells whether nothing but central holes is marked on a face.
func (s *Sizes) allCentral(f parts.Face) bool {
	return s.marked(f) && !slices.ContainsFunc(s.Groups, func(m Group) bool { return m.Face == f && !s.central(&m) })
}

// heldCentral is how the lathe holds the part for a central hole: on what is finished, over copper.
func (b *bench) heldCentral(m *Group) string {
	on := "in the chuck"
	on += words.When(anyTurned(b.Side(false)), " over copper, on no thread,")
	return "set true at the " + string(m.Face) + " end, " + on + " or a steady; drill in the tailstock"
}

// anyTurned tells whether a tool turns any of some steps, which are not all as bought.
func anyTurned(steps []*Step) bool {
	return slices.ContainsFunc(steps, func(s *Step) bool { return !s.Size.AsBought })
}

// tapped tells whether an inside thread is drilled and tapped because a boring bar
// does not reach through it.
func tapped(s *Step) bool {
	t := s.Size.Thread
	if !s.Inside || t == nil || t.TapDrillMm == 0 || t.MajorMm > 30 { // larger taps are not at hand; common practice, no source
		return false
	}
	ok, both := cutting.BarReach(t.TapDrillMm, s.ToMm-s.FromMm)
	return !ok || both
}
