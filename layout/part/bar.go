package part

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/bars"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// bar is a length of tube or rolled section, sawn and drilled.
type bar struct {
	usual
	in     *parts.Bar
	shape  bars.Section
	member bars.Member
	sides  bars.Sides
	err    error
	copes  map[parts.Side]bars.Cope
	short  string // how much shorter than drawn
}

func newBar(in *parts.Bar, inch bool) *bar {
	b := &bar{in: in, copes: map[parts.Side]bars.Cope{}, shape: bars.Section{
		Shape: bars.Shape(in.Section), WidthMm: in.Width.Mm, DepthMm: in.Depth.Mm, WallMm: in.Wall.Mm,
		FlangeMm: in.Flange.Mm, CornerMm: in.Corner.Mm, Open: bars.Side(in.Open), Inch: inch,
	}}
	if b.member, b.err = bars.ByPoints(in.Length.Mm, in.Width.Mm, in.Left.RiseDeg(), in.Right.RiseDeg()); b.err == nil {
		b.sides, b.err = b.member.Work()
	}
	return b
}

// Bar is the section of a bar and the bar as it is sawn; ok is false for another part.
func (s *Sizes) Bar() (section bars.Section, member bars.Member, ok bool) {
	b, ok := s.form.(*bar)
	if !ok {
		return bars.Section{}, bars.Member{}, false
	}
	return b.shape, b.member, true
}

// SawnMm is how much a tape shows of what an end is sawn shorter.
func (s *Sizes) SawnMm(mm float64) float64 {
	return words.Round(mm/s.W.Units.Mm(), parts.By(s.W.Units, 1, 3)) * s.W.Units.Mm()
}

// Sawn is the bar as it is sawn, after [Model.SawShort]; ok is false for another part.
func (m *Model) Sawn() (section bars.Section, member bars.Member, ok bool) {
	section, member, ok = m.Bar()
	if ok && m.Out.Bar != nil {
		member.LengthMm -= m.form.(*bar).in.Length.Mm - m.Out.Bar.LengthMm
	}
	return section, member, ok
}

// SawShort has a bar sawn shorter than it is drawn, by leftMm and rightMm at its ends, for
// the gaps of the welds there, or longer where these are negative, for what the welds draw in:
// its sheet shows it so, and its holes from the sawn ends. A coped bar stays as it is drawn; ok
// tells whether another length is sawn.
func (m *Model) SawShort(leftMm, rightMm float64) (ok bool) {
	drawn, is := m.form.(*bar)
	if !is || m.Out.Bar == nil || len(drawn.copes) > 0 || leftMm == 0 && rightMm == 0 {
		return false
	}
	in := *drawn.in
	in.Length.Mm -= leftMm + rightMm
	sawn := newBar(&in, m.Job.Units == parts.Inches)
	if sawn.err != nil {
		return false
	}
	sawn.short = "Sawn " + m.offWords(leftMm) + " at each end"
	if leftMm != rightMm {
		sawn.short = "Sawn left " + m.offWords(leftMm) + " and right " + m.offWords(rightMm)
	}
	sawn.short += ", for the welds: " + m.W.Size(drawn.in.Length.Mm) + " with them."
	sizes := *m.Sizes
	sizes.form, sizes.Groups = sawn, slices.Clone(m.Groups)
	for g := range seq.Refs(sizes.Groups) {
		off := geom.Point{XMm: (leftMm - rightMm) / 2} // of the middle
		if g.On == "" && g.Face == parts.Back {
			off.XMm = -off.XMm
		}
		g.Points = slices.Clone(g.Points)
		for k := range g.Points {
			g.Points[k] = g.Points[k].Minus(off)
		}
	}
	shape := *m.Shape
	shape.Sizes = &sizes
	n := number(&shape)
	m.Out.Bar, m.Out.Overall, m.Out.Features, m.Out.Operations, m.Out.Checks = sawn.plan(n), sawn.overall(&sizes), n.Features, operations(n).ops, checks(n)
	return true
}

// offWords says what is sawn off an end, or left on.
func (m *Model) offWords(mm float64) string {
	return words.Either(mm == 0, "as drawn", words.Either(mm < 0, m.W.Size(-mm)+" long", m.W.Size(mm)+" short"))
}

// Cope is the hollow in an end of a bar; ok is false where it has none.
func (s *Sizes) Cope(end parts.Side) (c bars.Cope, ok bool) {
	if b, is := s.form.(*bar); is {
		c, ok = b.copes[end]
	}
	return c, ok
}

// BothWalls tells whether the holes of a group go through both walls of a tube.
func (m *Group) BothWalls() bool { return m.Walls == parts.BothWalls }

func (b *bar) lengthMm() float64         { return b.in.Depth.Mm }
func (b *bar) listed() bool              { return true }
func (b *bar) stockText(s *Sizes) string { return b.sectionWords(s.W) }
func (b *bar) volumeMm3(*Shape) float64  { return b.shape.VolumeMm3(b.member) - b.hollowed() }

func (b *bar) metalAt(*Sizes, float64) []geom.Span { return b.shape.Metal() }

// hollowed is what the copes take off, taken as the segment of the round over the
// share of it that is metal.
func (b *bar) hollowed() float64 {
	sum, all := 0.0, b.in.Width.Mm*b.in.Depth.Mm
	for _, c := range b.copes {
		half := math.Asin(b.in.Width.Mm / 2 / c.RadiusMm)
		segment := c.RadiusMm*c.RadiusMm*half - b.in.Width.Mm/2*c.EdgeMm
		sum += segment * b.in.Depth.Mm * b.shape.AreaMm2() / all
	}
	return sum
}

// wallMm is the thickness that heat flows into: a wall, or half a solid bar.
func (b *bar) wallMm(*Sizes, float64) float64 {
	switch {
	case b.in.Wall.Mm != 0:
		return b.in.Wall.Mm
	case b.in.Section == parts.FlatBar:
		return b.in.Depth.Mm
	}
	return math.Min(b.in.Width.Mm, b.in.Depth.Mm) / 2
}

// steps of a bar there are none; here it is refused what cannot be sawn.
func (b *bar) steps(z *sizer) []Step {
	if b.err != nil {
		z.sizeFault(b.in.Length.Pos, "the bar cannot be sawn: its ", b.err)
		return nil
	}
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		e := b.in.End(side)
		if !e.Coped() {
			continue
		}
		mm := e.Round.Mm
		if e.Onto.Set() {
			_, mate := z.mateOf(&z.faults, e.Onto)
			if mate == nil {
				if len(z.list) == 0 {
					z.fault(e.Onto.Pos, "there is no round "+e.Onto.Part+"."+e.Onto.Feature+" in the job", "an outside of a part, or onto: {diameter: 114.3}")
				}
				continue
			}
			mm = mate.Size.NominalMm
		}
		cope, err := bars.CopeOn(mm, b.in.Width.Mm)
		switch {
		case err != nil:
			z.sizeFault(e.Pos, "the end cannot be coped: its ", err)
		case cope.DepthMm >= b.in.Length.Mm:
			z.fault(e.Pos, "the cope is deeper than the bar is long", "a longer bar")
		default:
			b.copes[side] = cope
		}
	}
	return nil
}

// outline is the front view.
func (b *bar) outline(*Sizes) *canvas.Path {
	half, top := b.in.Length.Mm/2, b.in.Width.Mm/2
	x := func(side parts.Side, y float64) float64 {
		if side == parts.LeftEnd {
			return -half + b.in.EndMm(side, y)
		}
		return half - b.in.EndMm(side, y)
	}
	p := &canvas.Path{}
	p.MoveTo(x(parts.LeftEnd, -top), -top)
	p.LineTo(x(parts.RightEnd, -top), -top)
	if c, coped := b.copes[parts.RightEnd]; coped {
		p.ArcTo(c.RadiusMm, c.RadiusMm, 0, false, false, half, top)
	} else {
		p.LineTo(x(parts.RightEnd, top), top)
	}
	p.LineTo(x(parts.LeftEnd, top), top)
	if c, coped := b.copes[parts.LeftEnd]; coped {
		p.ArcTo(c.RadiusMm, c.RadiusMm, 0, false, false, -half, -top)
	}
	p.Close()
	return p
}

// sectionWords names the section as it is bought.
func (b *bar) sectionWords(w words.Writer) string {
	in := b.in
	name := map[parts.BarSection]string{
		parts.SquareBar: "square", parts.RectangleBar: "rectangular", parts.RoundBar: "round", parts.AngleBar: "angle", parts.ChannelBar: "channel", parts.FlatBar: "flat",
	}[in.Section]
	kind := ""
	switch {
	case in.Tube():
		kind = " tube"
	case in.Section == parts.SquareBar || in.Section == parts.RectangleBar || in.Section == parts.RoundBar:
		kind = " bar"
	}
	across, deep := in.Width.Mm, in.Depth.Mm
	if in.Section == parts.ChannelBar && (in.Open == parts.TopSide || in.Open == parts.BottomSide) {
		across, deep = deep, across
	}
	size := w.Size(across)
	switch {
	case in.Section == parts.RoundBar:
		size = "Ø" + size
	case in.Section != parts.SquareBar || in.Tube():
		size += " × " + w.Size(deep)
	}
	size += words.When(in.Wall.Mm != 0, " × "+w.Size(in.Wall.Mm))
	size += words.When(in.Flange.Mm != 0 && in.Flange.Mm != in.Wall.Mm, ", flanges "+w.Size(in.Flange.Mm))
	return name + kind + " " + size
}

func (b *bar) overall(s *Sizes) string {
	return b.sectionWords(s.W) + ", " + s.W.Size(b.in.Length.Mm) + " long"
}

// section is the room that the bar takes, for those who ask any part for it.
func (b *bar) section(*Sizes) *plan.Section {
	d, half := b.in.Depth.Mm, b.in.Width.Mm/2
	return &plan.Section{LengthMm: d, Flat: true, MaxMm: half, Outer: []plan.XY{{YMm: half}, {XMm: d, YMm: half}}}
}

func (b *bar) features(n *Numbered) {
	n.add(plan.Feature{Kind: plan.EdgeFeature, Name: "section", Size: b.sectionWords(n.W), Note: "as the bar is bought"})
	n.add(plan.Feature{Kind: plan.LengthFeature, Name: "length", Size: n.W.Size(b.in.Length.Mm), Limits: n.limitsText(n.General(b.in.Length.Mm)), Note: "between the outermost points"})
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		if cut := b.endPlan(n.W, side); cut.SawDeg != 0 || cut.Cope != "" {
			n.add(plan.Feature{Kind: plan.EndFeature, Name: string(side) + " end", Size: cut.Cut})
		}
	}
}

// endPlan is how an end is cut, in words.
func (b *bar) endPlan(w words.Writer, side parts.Side) plan.BarEnd {
	e := b.in.End(side)
	out := plan.BarEnd{Name: string(side), Cut: "square"}
	if e.Mitred() {
		out.SawDeg, out.Long = e.Mitre.Deg, string(e.Long)
		out.Cut = words.Angle(e.Mitre.Deg) + ", long point at the " + out.Long
	}
	if c, ok := b.copes[side]; ok {
		out.Cope = strings.Join(b.copeLines(w, side, c), " ")
		out.Cut = "coped R" + w.Size(c.RadiusMm) + ", " + w.Read(c.DepthMm) + " deep"
	}
	return out
}

func (b *bar) cutFile(c *cutter) (*plan.Profile, error) {
	c.fault(c.Part.Pos, c.Part.Name.Value+" is sawn from bar, and has no flat blank", "profiles are for flat parts, cones and square-to-rounds")
	return nil, nil
}

// placeGroup puts a group on its side as seen.
func (b *bar) placeGroup(_ *sizer, m *Group) {
	m.Points = m.Pattern.Shape.Places(b.in.SideMm(m.Side()))
}

// throughMm is how much metal a through hole of a group goes through, and how far the
// drill travels for it.
func (b *bar) throughMm(s *Sizes, m *Group) (metal, travel float64) {
	metal, across := b.wallsMm(s, m)
	if m.BothWalls() {
		return 2 * metal, across
	}
	return metal, metal
}

// wallsMm are the metal at a side, and the bar across from there.
func (b *bar) wallsMm(_ *Sizes, m *Group) (metal, across float64) {
	side := m.Side()
	across = b.in.Depth.Mm
	if side == parts.TopSide || side == parts.BottomSide {
		across = b.in.Width.Mm
	}
	return b.shape.AtMm(bars.Side(side)), across
}

// DrillMm is how deep a group goes: the metal, and the way of the drill, in mm.
func (s *Sizes) DrillMm(m *Group) (metal, travel float64) {
	if !m.Through {
		return m.Depth.Mm, m.Depth.Mm
	}
	return s.form.throughMm(s, m)
}

// throughWords is how far a through group goes.
func (b *bar) throughWords(m *Group) string {
	switch {
	case m.BothWalls():
		return "through both walls"
	case b.shape.Hollow():
		return "through this wall only"
	}
	return "through"
}

// barXMm is a place of a group along the front view.
func (m *Group) barXMm(i int) float64 { return m.inFront(m.Points[i]).XMm }

// inFront is a place or a way on the side of a group as it lies in the front view and those beside it.
func (m *Group) inFront(at plan.XY) plan.XY {
	if m.On == "" && m.Face == parts.Back {
		return at.Mirrored()
	}
	return at
}

// alongMm is where the middle of a group's holes lies, to the right of the bar's middle.
func (m *Group) alongMm() float64 {
	var sum float64
	for i := range m.Points {
		sum += m.barXMm(i)
	}
	return sum / float64(len(m.Points))
}

// NearEnd is the end of a bar that the middle of a group's holes lies nearer to.
func (m *Group) NearEnd() parts.Side {
	if m.alongMm() > geom.CloseMm {
		return parts.RightEnd
	}
	return parts.LeftEnd
}

// OffEndMm is how far the middle of a group's holes lies from the nearer end of its bar.
func (m *Group) OffEndMm(bar *parts.Bar) float64 { return bar.Length.Mm/2 - math.Abs(m.alongMm()) }

// fromEnd is where a place lies along the bar: from the end its row counts from, else the
// nearer one.
func (b *bar) fromEnd(m *Group, i int) (mm float64, end parts.Side) {
	x, half := m.barXMm(i), b.in.Length.Mm/2
	end = parts.LeftEnd
	if a, row := m.Pattern.Shape.(geom.Along); row {
		if a.FromRight != (m.On == "" && m.Face == parts.Back) {
			end = parts.RightEnd
		}
	} else if x > geom.CloseMm {
		end = parts.RightEnd
	}
	if mm = half + x; end == parts.RightEnd {
		mm = half - x
	}
	return geom.Clean(mm), end
}

// FromEnd is where the holes of a bar's group are measured to: along the bar from the end
// that they count from, and up from the lower edge of their side, in mm; and on which side
// and from which end in words.
func (s *Sizes) FromEnd(m *Group) (at []plan.XY, where string) {
	b := s.form.(*bar)
	_, first := b.fromEnd(m, 0)
	for i := range m.Points {
		mm, end := b.fromEnd(m, i)
		if end != first { // counted on from the first's
			mm = geom.Clean(b.in.Length.Mm - mm)
		}
		at = append(at, plan.XY{XMm: mm, YMm: b.upMm(m, i)})
	}
	return at, string(m.Side()) + ", from the " + string(first) + " end"
}

// upMm is where a place lies over the lower edge of its side.
func (b *bar) upMm(m *Group, i int) float64 {
	return geom.Clean(m.Points[i].YMm - b.in.SideMm(m.Side()).Min.YMm)
}

func (b *bar) where(n *Numbered, m *Group) string {
	w := n.W
	mm, end := b.fromEnd(m, 0)
	text := string(m.Side()) + ", " + w.Size(mm)
	for i := 1; i < len(m.Points) && i < 4; i++ {
		mm, _ = b.fromEnd(m, i)
		text += ", " + w.Size(mm)
	}
	text += words.When(len(m.Points) > 4, " …")
	return text + " from the " + string(end) + " end, " + w.Size(b.upMm(m, 0)) + " over the lower edge of that side"
}

// gaugeText says on which lines along a side the holes of a group lie.
func (b *bar) gaugeText(w words.Writer, m *Group) string {
	var lines []string
	for i := range m.Points {
		lines = seq.Add(lines, w.Size(b.upMm(m, i)))
	}
	if len(lines) == 1 && math.Abs(m.Points[0].YMm) < geom.CloseMm {
		return "on the middle line"
	}
	return strings.Join(lines, ", ") + " over the lower edge of the " + string(m.Side())
}

func (b *bar) show(n *Numbered, out *plan.PartPlan) { out.Dimensions, out.Bar = nil, b.plan(n) }

// plan is the bar as the cut list shows it.
func (b *bar) plan(n *Numbered) *plan.BarPlan {
	in := b.in
	out := &plan.BarPlan{
		Section: b.sectionWords(n.W), Outline: plan.Contour(b.outline(n.Sizes).ToSVG()), WidthMm: in.Width.Mm, DepthMm: in.Depth.Mm, LengthMm: words.Round(in.Length.Mm, 6),
		TopMm: words.Round(b.sides.TopMm, 6), BottomMm: words.Round(b.sides.BottomMm, 6), Length: n.W.Size(in.Length.Mm), Limits: n.limitsText(n.General(in.Length.Mm)), Short: b.short,
		Left: b.endPlan(n.W, parts.LeftEnd), Right: b.endPlan(n.W, parts.RightEnd),
	}
	if out.TopMm != out.LengthMm || out.BottomMm != out.LengthMm {
		out.Top, out.Bottom = n.W.Taped(out.TopMm), n.W.Taped(out.BottomMm)
	}
	out.Profile = append(out.Profile, seq.Map(b.shape.Loops(), sectionContour)...)
	for m := range seq.Refs(n.Groups) {
		for k, q := range m.Points {
			mm, end := b.fromEnd(m, k)
			out.Holes = append(out.Holes, plan.BarHole{
				N: m.Group.First + k, Group: m.Name.Value, Side: string(m.Side()), XMm: m.barXMm(k), YMm: q.YMm, DiameterMm: m.Group.DrillMm, Size: m.Group.SizeText, EndMm: m.inFront(m.ownHalf),
				From: n.W.Size(mm) + " from the " + string(end), Up: n.W.Size(b.upMm(m, k)),
			})
		}
		lie := ""
		if s, ok := m.kind.(slots); ok {
			lie = "long axis " + b.longAxis(m, s) + ", "
		}
		text := words.Spaced(m.Name.Value) + ", " + numbered(m.kind.cutShape(), m.Group) + ": " + words.CountOf(m.Group.Count) + m.Group.SizeText + ", " +
			lie + m.Group.DepthText + ", " + b.gaugeText(n.W, m)
		out.Ways = append(out.Ways, words.Join("; ", text, m.Group.Extra))
		out.Measures = append(out.Measures, b.holeRecords(n, m)...)
	}
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		if c, ok := b.copes[side]; ok {
			out.Measures = append(out.Measures, plan.BarRecord{
				What: string(side) + " cope, depth", Wanted: n.W.Read(c.DepthMm), Limits: n.W.Limits(math.Max(0, c.DepthMm-copeGapMm), c.DepthMm+copeGapMm),
			})
		}
	}
	return out
}

// mostListed is how many holes of a row are measured one by one; of a longer one the
// first, the last and the pitch are.
const mostListed = 4

// holeRecords are what is measured of a group of holes: each place from the end it counts
// from, and with the first of them the size and the thread.
func (b *bar) holeRecords(n *Numbered, m *Group) []plan.BarRecord {
	byEnd := map[parts.Side][]int{}
	for i := range m.Points {
		_, end := b.fromEnd(m, i)
		byEnd[end] = append(byEnd[end], i)
	}
	var out []plan.BarRecord
	for _, end := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		at := byEnd[end]
		if len(at) == 0 {
			continue
		}
		g := *m.Group
		g.First, g.Count = g.First+at[0], len(at)
		shape := m.kind.cutShape()
		what, ends := numbered(shape, &g), at
		row, along := m.Pattern.Shape.(geom.Along)
		pitched := along && len(at) > mostListed
		if pitched {
			ends = []int{at[0], at[len(at)-1]}
			what = shape + "s " + strconv.Itoa(g.First) + ", " + strconv.Itoa(g.First+g.Count-1)
		}
		r := plan.BarRecord{What: words.Spaced(m.Name.Value) + ", " + what + " from the " + string(end) + " end"}
		add := func(z Sized, prefix string) {
			r.Wanted, r.Limits = words.Join(", ", r.Wanted, prefix+n.W.Size(z.NominalMm)), words.Join(", ", r.Limits, n.limitsText(z))
		}
		var mm [2]float64 // of the last and the one before
		for _, k := range ends {
			mm[1] = mm[0]
			mm[0], _ = b.fromEnd(m, k)
			add(n.General(mm[0]), "")
		}
		if pitched {
			r.What += ", " + shape + " to " + shape
			add(n.pitch(row.PitchMm, m.Size), "each ")
		} else if (along || len(at) == 2) && len(at) > 1 && n.pitchLost(mm[1], mm[0], m.Size) {
			add(n.pitch(m.apartMm(ends[len(ends)-2], ends[len(ends)-1]), m.Size), "pitch ")
		}
		if len(out) == 0 {
			b.sizeRecord(n, m, &r)
		}
		out = append(out, r)
	}
	return out
}

// sizeRecord adds the diameter that has limits, and the thread.
func (b *bar) sizeRecord(n *Numbered, m *Group, r *plan.BarRecord) {
	if l := n.limitsText(m.Size.Size); l != "" {
		r.Wanted, r.Limits = r.Wanted+"; "+m.Group.SizeText, r.Limits+"; Ø"+l
	}
	if s, ok := m.kind.(slots); ok {
		r.Wanted += "; " + s.cutText(n.W, m)
		r.Limits = words.Join("; ", r.Limits, words.Join(" × ", n.limitsText(n.General(s.in.Width.Mm)), n.limitsText(n.General(s.in.Length.Mm))))
	}
	if m.Size.Thread == nil {
		return
	}
	r.Wanted, r.Limits = r.Wanted+"; "+m.Size.Thread.Designation, r.Limits+"; "+n.runsFreely(m.Size.Thread, m.Depth.Mm)
}

// sectionContour draws a loop of a section, x to the back. Up and out make a frame that x and y turn over
// twice: the sense stays.
func sectionContour(loop geom.Loop) plan.Contour {
	return plan.Contour(loopOf(loop, false, func(q plan.XY) plan.XY { return plan.XY{XMm: -q.YMm, YMm: q.XMm} }).ToSVG())
}
