package part

import (
	"math"
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
		return "on the middle line of the " + string(m.Side())
	}
	return strings.Join(lines, ", ") + " over the lower edge of the " + string(m.Side())
}

// longAxis is how a slot lies on its side, seen with that side's lower edge down.
func (b *bar) longAxis(_ *Group, s slots) string {
	switch turn := math.Mod(s.in.Turn.Deg+360, 180); turn {
	case 0:
		return "square across the bar"
	case 90:
		return "along the bar"
	default:
		return "to clock " + words.Angle(turn) + " as it is seen with the " + words.Either(s.in.On == "" && s.in.Face == parts.Back, "right", "left") + " end at the left"
	}
}

// sectionContour draws a loop of a section, x to the back. Up and out make a frame that x and y turn over
// twice: the sense stays.
func sectionContour(loop geom.Loop) plan.Contour {
	return plan.Contour(loopOf(loop, false, func(q plan.XY) plan.XY { return plan.XY{XMm: -q.YMm, YMm: q.XMm} }).ToSVG())
}

// PlaneOf is where a face of what a group goes through lies, and how much metal lies
// behind it there: of the part, or of the flange or side of a bar that the group is
// on, which counts from its front. Both walls of a tube count as one.
func (s *Sizes) PlaneOf(m *Group, f parts.Face) (zMm, thickMm float64, ok bool) {
	metal, across := s.form.wallsMm(s, m)
	switch {
	case m.BothWalls():
		thickMm = across
	case m.OnWall():
		thickMm = metal
	default:
		return s.Plane(f, geom.MeanRadiusMm(m.Points))
	}
	return parts.At(f, zMm, thickMm), thickMm, true
}

// wraps tells whether paper goes all round the bar.
func (b *bar) wraps() bool { return b.in.Section != parts.AngleBar && b.in.Section != parts.ChannelBar }

// apartMm is how far two holes of a group lie apart, also across the bar.
func (m *Group) apartMm(i, k int) float64 {
	p, q := m.Points[i], m.Points[k]
	return geom.Clean(math.Hypot(p.XMm-q.XMm, p.YMm-q.YMm))
}
