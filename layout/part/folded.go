package part

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/bend"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// folded is a flat part whose sides are folded up. Its outline is the blank, seen
// on the front of the base; holes are where they lie on the blank.
type folded struct {
	flat
	in    *parts.Bends
	blank bend.PanelBlank
	made  bend.PanelBlank // as it stands in the machine: flanges that would stand in the ram are left open at first
	order []int           // of the flanges, as folded
	die   bend.Die
	err   error
}

// panelSide is a side as package bend counts it.
var panelSide = map[parts.Side]bend.Side{parts.TopSide: bend.Top, parts.RightSide: bend.Right, parts.BottomSide: bend.Bottom, parts.LeftSide: bend.Left}

func newFolded(p *parts.Part, inch bool) *folded {
	in := p.Bends
	f := &folded{flat: flat{Part: p}, in: in}
	panel := bend.Panel{WidthMm: p.Outline.Width.Mm, HeightMm: p.Outline.Height.Mm, ThicknessMm: p.Thickness.Mm, GapMm: in.Gap.Mm, Mitred: in.Mitred.Line != 0, K: in.K.Value}
	for _, a := range in.Flanges {
		side, nth := a.Side.Base()
		panel.Flanges = append(panel.Flanges, bend.Flange{
			Side: panelSide[side], Nth: nth, HeightMm: a.Height.Mm, AngleDeg: a.Angle.Deg, RadiusMm: a.Radius.Mm,
			FromMm: a.Left.Mm, ToMm: a.Right.Mm, Forward: a.Toward == parts.Front,
		})
	}
	if f.blank, f.err = panel.Blank(); f.err != nil {
		return f
	}
	f.order = f.blank.Order()
	f.leaveOpen()
	if in.Die.Set() {
		f.die = bend.Die{OpeningMm: in.Die.Mm, RadiusMm: bend.AirRadiusMm(in.Die.Mm)}
	} else {
		f.die, f.err = bend.DieFor(p.Thickness.Mm, inch)
	}
	return f
}

// What of a flange is closed by hand over a bar, and how thick a sheet. Common practice, no source.
const (
	handDeg   = 20.0
	handThick = 2.0
)

// leaveOpen has flanges that would stand in the ram later folded less far at first, where a hand
// closes them afterwards.
func (f *folded) leaveOpen() {
	f.made = f.blank
	f.made.Folds = slices.Clone(f.blank.Folds)
	for i := range f.made.Folds {
		own := f.blank.Folds[i].AngleDeg
		if deg := f.blank.ClearDeg(f.order, i); own-deg <= handDeg && f.Thickness.Mm <= handThick {
			f.made.Folds[i].AngleDeg = deg
		}
	}
}

// Folded is the blank of a folded part and how its flanges stand; false for
// another part.
func (s *Sizes) Folded() (bend.PanelBlank, bool) {
	f, ok := s.form.(*folded)
	if !ok {
		return bend.PanelBlank{}, false
	}
	return f.blank, true
}

// FlapOf is the side of the flange that a group is on, as the flange of the
// blank; false for a group on the base, and for other parts.
func (s *Sizes) FlapOf(m *Group) (*bend.PanelFold, bool) {
	f, ok := s.form.(*folded)
	if !ok || m.On == "" {
		return nil, false
	}
	return f.on(m.On), true
}

// OnWall tells whether a group is on a flange of a folded part, or on the top or the
// bottom of a bar, and not on the part's front or back.
func (m *Group) OnWall() bool { return m.On != "" }

// WallOf names the flange or the side of a bar that a group is on, and which of its
// faces looks outward; the name is empty for a group on the part's front or back.
func (s *Sizes) WallOf(m *Group) (name string, outside parts.Face) {
	if fold, ok := s.FlapOf(m); ok {
		if fold.Forward {
			return words.Spaced(string(m.On)) + " flange", parts.Back
		}
		return words.Spaced(string(m.On)) + " flange", parts.Front
	}
	if m.On == "" {
		return "", ""
	}
	return string(m.On), parts.Front
}

// OwnMm are a group's places as dimensioned: on its flange, along the side from
// its middle and up from the corner; elsewhere those on the marked face.
func (m *Group) OwnMm() []plan.XY {
	if m.own != nil {
		return m.own
	}
	return m.Points
}

func (f *folded) on(side parts.Side) *bend.PanelFold {
	i := slices.IndexFunc(f.in.Flanges, func(a parts.Flap) bool { return a.Side == side })
	return &f.blank.Folds[i]
}

// steps of a folded part there are none; here it is refused what cannot be
// folded.
func (f *folded) steps(z *sizer) []Step {
	if f.err != nil {
		z.foldFault(f.in.Pos, f.err)
		return nil
	}
	mitred := false
	for i := range f.blank.Folds {
		f.reach(z, i)
		mitred = mitred || f.blank.Folds[i].RightMitreMm > 0
	}
	if f.in.Mitred.Line != 0 && !mitred {
		z.fault(f.in.Mitred, "no two flanges that are turned in meet at a corner in one plane", "corners: square, or walls of one height with flanges on them, all at 90 and turned to one side")
	}
	return nil
}

// reach refuses a flange that the die cannot hold.
func (f *folded) reach(z *sizer, i int) {
	fold, in := &f.blank.Folds[i], &f.in.Flanges[i]
	least, err := f.die.MinFlangeMm(fold.AngleDeg)
	switch {
	case err != nil:
		z.foldFault(in.Pos, err)
		return
	case geom.Over(least, fold.HeightMm):
		z.fault(in.Height.Pos, "the flange of "+z.W.Said(fold.HeightMm)+" slips into a die of "+z.W.Said(f.die.OpeningMm),
			"at least "+z.W.Said(z.W.Up(least, 0.1, 0.01))+", or a narrower die: fold it higher and cut it down")
	}
	way := f.blank.WayOf(f.order, i)
	// A block twice as wide as its opening: common practice, no source.
	if die := f.die.OpeningMm; geom.Over(die, way.UnderMm) {
		z.fault(in.Height.Pos,
			"a flange that hangs "+z.W.Said(z.W.Rounded(way.UnderMm, 1))+" from the fold line meets the die when the "+f.flapName(i)+" is folded",
			"at least "+z.W.Said(die)+", the opening of the die, a narrower die, or two parts")
	}
}

// foldFault is a refusal of package bend as a located fault.
func (z *sizer) foldFault(pos parts.Pos, err error) {
	z.sizeFault(pos, "it cannot be folded: its ", err)
}

// sizeFault is a library's refusal of a size as a located fault; it begins with
// a lead that the size's name ends.
func (z *sizer) sizeFault(pos parts.Pos, lead string, err error) {
	what, right := lead+"sizes do not go together: "+err.Error(), "other sizes"
	if r := (*lookup.RangeError)(nil); errors.As(err, &r) {
		value, above, upTo := words.Trim(r.Value, 3), words.Trim(r.Above, 3), words.Trim(r.UpTo, 3)
		if r.Unit == "mm" {
			value, above, upTo = z.W.Said(geom.Clean(r.Value)), z.W.Said(geom.Clean(r.Above)), z.W.Said(r.UpTo)
		}
		what = lead + r.What + " is " + value
		right = words.Either(r.Value > r.Above, "at most "+upTo, "more than "+above)
	}
	z.fault(pos, what, right)
}

// placeGroup places a group from the edges of its flange, or of the base as folded.
func (f *folded) placeGroup(z *sizer, m *Group) {
	box := geom.Bounds(f.Outline.Contour().Path)
	switch {
	case m.On != "":
		box = f.in.On(m.On).BoxMm(f.Outline)
	case m.Face == parts.Back:
		box = box.Mirrored()
	}
	m.Points = m.Pattern.Shape.Places(box)
	f.onBlank(z, m)
	z.onMetal(m)
}

// checkPlace: its holes are checked on the blank.
func (f *folded) checkPlace(*record, *Group) {}

func (f *folded) fromEdge(s *Sizes, mm float64) Sized {
	return f.cutLimits(s, s.General(geom.Clean(mm)), 0)
}

// onBlank brings a group from where it is dimensioned to the blank, and refuses
// places in a bend.
func (f *folded) onBlank(z *sizer, m *Group) {
	if f.err != nil {
		return
	}
	for i, at := range m.Points {
		if f.toBendMm(m, at) < 0 {
			z.fault(m.Pattern.PosOf(i), "the place at x "+z.W.Size(at.XMm)+", y "+z.W.Size(at.YMm)+" lies in a bend, where no hole keeps its shape", "a place further from the bend")
		}
	}
	if m.On == "" {
		return
	}
	m.own = m.Points
	fold := f.on(m.On)
	m.Points = nil
	for _, at := range m.own {
		q := fold.OnBlank(at.XMm, at.YMm)
		m.Points = append(m.Points, plan.XY{XMm: geom.Clean(q.XMm), YMm: geom.Clean(q.YMm)})
	}
	m.halfMm = fold.Side.TurnedTo(m.halfMm)
}

// toBendMm is how far a place of a group lies from the nearest bend, along the
// flat; negative within one.
func (f *folded) toBendMm(m *Group, at plan.XY) float64 {
	if m.On != "" {
		fold := f.on(m.On)
		from := at.YMm - fold.SetbackMm
		if fold.NextMm != 0 {
			from = math.Min(from, fold.HeightMm-fold.NextMm-at.YMm)
		}
		return from
	}
	at = parts.At(m.Face, at, at.Mirrored())
	least := math.Inf(1)
	for fold := range seq.Refs(f.blank.Folds) {
		if fold.Nth > 0 {
			continue
		}
		back := (4 - fold.Side) % 4
		own := back.TurnedTo(at) // seen with the side at the top
		beside := math.Max(fold.LeftMm-own.XMm, own.XMm-fold.RightMm)
		if up := fold.BeginMm - own.YMm; beside <= 0 || up > 0 {
			least = math.Min(least, math.Hypot(math.Max(0, up), math.Max(0, beside))+math.Min(0, up))
		}
	}
	return least
}

func (f *folded) outline(*Sizes) *canvas.Path {
	if f.err != nil {
		return f.Outline.Contour().Path
	}
	return geom.Polygon(f.blank.Outline)
}

func (f *folded) overall(s *Sizes) string {
	cuts, overMm := f.cuts(s)
	low, top := 0.0, 0.0
	for _, v := range cuts {
		low, top = min(low, v.MinMm.YMm), max(top, v.MaxMm.YMm)
	}
	return s.W.Read(overMm[0]) + " × " + s.W.Read(overMm[1]) + " × " + s.W.Read(top-low) + " folded, of " + s.W.Size(f.Thickness.Mm)
}

func (f *folded) features(n *Numbered) {
	b := n.Bounds()
	n.add(plan.Feature{Kind: plan.EdgeFeature, Name: "flat blank", Size: n.W.Read(b.Max.XMm-b.Min.XMm) + " × " + n.W.Read(b.Max.YMm-b.Min.YMm), Face: parts.Front, Balloon: b.Min})
	n.lengthFeature(plan.ThicknessFeature)
	n.Features[len(n.Features)-1].Limits = ""
}

func (f *folded) developments(d *shaper) {
	f.flat.developments(d)
	if f.err == nil && len(d.list) == 0 {
		d.Developments = append(d.Developments, f.pattern(d))
	}
}

// pattern is the blank's template: edge, fold lines and holes.
func (f *folded) pattern(d *shaper) plan.Development {
	b := d.Bounds()
	out := plan.Development{
		Name: string(plan.FoldPattern), Kind: plan.FoldPattern, Title: "Flat blank", Copies: 1, MinMm: b.Min, MaxMm: b.Max, Corners: f.cornersText(d.W, b),
		Lines: append([]plan.PatternLine{{Name: "edge", Role: "edge", Path: plan.Contour(d.OutlinePath().ToSVG())}}, f.foldLines(d.W)...),
		Sizes: []plan.PatternValue{{Name: "width", Text: d.exact(b.Max.XMm - b.Min.XMm)}, {Name: "height", Text: d.exact(b.Max.YMm - b.Min.YMm)}},
	}
	out.AreaMm2 = math.Abs(geom.NewContour(d.OutlinePath()).AreaMm2())
	if d.Part.Stock.Form != "" {
		out.On = d.StockText()
	}
	for m := range seq.Refs(d.Groups) {
		at, half := m.seen(parts.Front)
		for k, q := range at {
			for _, end := range ends(q, half) {
				out.Marks = append(out.Marks, plan.PatternMark{N: m.Group.First + k, Name: m.Name.Value, Size: m.Group.SizeText, CentreMm: end, MinMm: end, MaxMm: end, DiameterMm: m.Group.DrillMm})
			}
		}
	}
	table := plan.PatternTable{Title: "Folds, in order", Heads: []string{"No.", "flange", "long", "turn", "inside", "stop", "shorter by"}}
	for n, i := range f.order {
		fold := &f.blank.Folds[i]
		table.Rows = append(table.Rows, []string{strconv.Itoa(n + 1), words.Spaced(string(f.in.Flanges[i].Side)), d.exact(fold.RightMm - fold.LeftMm),
			words.Join(", ", words.Trim(fold.AngleDeg, 1)+"° "+f.way(i), mitredText(fold)), "R" + d.W.Size(fold.RadiusMm), f.stopText(d, i),
			d.exact(fold.DeductionMm)})
	}
	out.Tables = append(out.Tables, table)
	k := words.Either(f.in.K.Value != 0, "k as given", "k of DIN 6935")
	for _, fold := range f.blank.Folds {
		k += ", " + words.Trim(fold.K, 3) + " of the thickness at R" + d.W.Size(fold.RadiusMm)
		if len(f.blank.Folds) > 1 && f.sameRadius() {
			break
		}
	}
	edge := "stop: free edge"
	edge += words.When(slices.ContainsFunc(f.blank.Folds, func(b bend.PanelFold) bool { return b.Nth > 0 }), ", or outside of the flange folded there,")
	out.Rules = []string{edge + " to fold line", "shorter by: 2 setbacks less the length of the bend at its neutral line", k}
	return out
}

// cornersText is the edge of the blank corner by corner, clockwise from the lowest on the
// left, from its left and its bottom edge.
func (f *folded) cornersText(w words.Writer, box geom.Box) (text string) {
	low := func(a, b geom.Point) int {
		return cmp.Or(cmp.Compare(a.XMm, b.XMm), cmp.Compare(a.YMm, b.YMm))
	}
	edge := f.blank.Outline
	first := slices.Index(edge, slices.MinFunc(edge, low))
	for i := range edge {
		from, at, to := edge[(first+i+len(edge)-1)%len(edge)], edge[(first+i)%len(edge)], edge[(first+i+1)%len(edge)]
		if a, b := at.Minus(from), to.Minus(at); math.Abs(a.XMm*b.YMm-a.YMm*b.XMm) < geom.CloseMm {
			continue // on a straight edge
		}
		text = words.Join(", ", text, "("+w.Read(at.XMm-box.Min.XMm)+", "+w.Read(at.YMm-box.Min.YMm)+")")
	}
	return "Corners from the left and the bottom edge, clockwise: " + text + "."
}

// stopText is the distance of a fold line from the stop; none where the edge is turned to
// a slant.
func (f *folded) stopText(d *shaper, i int) string {
	if next := f.next(i); next != nil && next.AngleDeg != 90 {
		return "by the line"
	}
	return d.exact(f.blank.Folds[i].StopMm())
}

// ends are the centres of both ends of a slot; a hole has one place.
func ends(q, half plan.XY) []plan.XY {
	if half == (plan.XY{}) {
		return []plan.XY{q}
	}
	return []plan.XY{q.Plus(half), q.Minus(half)}
}

func (f *folded) sameRadius() bool {
	return !slices.ContainsFunc(f.blank.Folds, func(b bend.PanelFold) bool { return b.RadiusMm != f.blank.Folds[0].RadiusMm })
}

// needless: a stop sets every fold, and the cutter makes the rest.
func (f *folded) needless(d *shaper) string {
	for i := range f.blank.Folds {
		if next := f.next(i); next != nil && next.AngleDeg != 90 {
			return ""
		}
	}
	if slices.ContainsFunc(d.Groups, func(m Group) bool { return !d.cutterMakes(&m) }) {
		return ""
	}
	return "the cutter makes edge and holes, and a stop sets every fold"
}

// way says to which side of the blank a flange goes, the front up.
func (f *folded) way(i int) string { return words.Either(f.blank.Folds[i].Forward, "up", "down") }

// foldLines are the fold lines on the blank, with what is done at each.
func (f *folded) foldLines(w words.Writer) []plan.PatternLine {
	var out []plan.PatternLine
	for n, i := range f.order {
		fold := &f.blank.Folds[i]
		out = append(out, plan.PatternLine{
			Name: "fold " + words.Spaced(string(f.in.Flanges[i].Side)), Role: "fold", Path: lineOf(fold.LineFrom, fold.LineTo),
			Text: "fold " + strconv.Itoa(n+1) + ": " + words.Trim(fold.AngleDeg, 1) + "° " + f.way(i) + ", R" + w.Size(fold.RadiusMm),
		})
	}
	return out
}

// onFace draws the fold lines on a face of the blank, whose own template has them
// and every hole.
func (f *folded) onFace(w words.Writer, out *plan.Face) {
	out.NoTemplate = "its holes are on the template of the flat blank"
	for _, l := range f.foldLines(w) {
		path := canvas.MustParseSVGPath(string(l.Path))
		if out.Face == parts.Back {
			path = mirrored(path)
		}
		out.Folds = append(out.Folds, plan.Contour(path.ToSVG()))
	}
}

func (f *folded) operations(b *bench) {
	f.cutBlank(b)
	o := &b.ops[len(b.ops)-1]
	if f.stopped(b.Shape) {
		o.Do = append(o.Do, "No line is scribed: the stops set the folds.")
		return
	}
	o.Do = append(o.Do, "Scribe both ends of every fold line from the template on the side that the punch meets; no scribed line across the outside of a bend.")
}

// cutFile has of the folds what the sheet has scribed: both ends, on the side that the punch
// meets, where that lies up.
func (f *folded) cutFile(c *cutter) (*plan.Profile, error) {
	out, err := f.flat.cutFile(c)
	if out == nil || err != nil {
		return nil, err
	}
	if f.stopped(c.Shape) {
		return out, nil
	}
	for i, l := range f.foldLines(c.W) {
		fold := &f.blank.Folds[f.order[i]]
		if !fold.Forward {
			out.Notes = append(out.Notes, l.Name+": the punch meets the back; its ends are scribed there from the template.")
			continue
		}
		at, to := fold.LineFrom, fold.LineTo
		share := math.Min(topLineMm/geom.Distance(at, to), 1.0/3)
		dx, dy := share*(to.XMm-at.XMm), share*(to.YMm-at.YMm)
		both := &canvas.Path{}
		both.MoveTo(at.XMm, at.YMm)
		both.LineTo(at.XMm+dx, at.YMm+dy)
		both.MoveTo(to.XMm-dx, to.YMm-dy)
		both.LineTo(to.XMm, to.YMm)
		out.Lines = append(out.Lines, plan.CutLine{Name: l.Name + ", both ends", Role: l.Role, Path: plan.Contour(both.ToSVG())})
	}
	return out, nil
}

// stopped tells whether nothing of the blank is scribed: the stops set all folds, and it has
// no template.
func (f *folded) stopped(s *Shape) bool {
	return len(s.Developments) > 0 && s.Developments[0].NoTemplate != ""
}

// problems are the holes near a bend, the flanges that stand where the punch has to go,
// and the radii that the die does not leave.
func (f *folded) problems(n *Numbered) []plan.Problem {
	if f.err != nil {
		return nil
	}
	var out []plan.Problem
	for m := range seq.Refs(n.Groups) {
		for k, at := range m.OwnMm() {
			room := seq.Least(ends(at, m.ownHalf), func(end plan.XY) float64 { return f.toBendMm(m, end) - m.Group.FinishedMm/2 })
			if least := nearBendThick * f.Thickness.Mm; geom.Over(least, room) {
				out = append(out, plan.Problem{Kind: plan.NearBend, Pos: m.Pattern.PosOf(k), Feature: m.Name.Value, Args: []plan.Arg{
					plan.Named(words.Spaced(m.Name.Value)), plan.Of(plan.Mm, math.Max(0, n.W.Rounded(room, 2))), plan.Of(plan.Mm, least)}})
				break
			}
		}
	}
	for i := range f.blank.Folds {
		if beside := f.blank.WayOf(f.order, i).BesideMm; geom.Over(f.in.Punch.Mm/2, beside) {
			out = append(out, plan.Problem{Kind: plan.PunchBlocked, Pos: f.in.Flanges[i].Height.Pos, Args: []plan.Arg{
				plan.Named(f.flapName(i)), plan.Of(plan.Mm, n.W.Rounded(max(0, beside), 1))}})
		}
		if own := f.made.Folds[i].AngleDeg; own == f.blank.Folds[i].AngleDeg && f.blank.ClearDeg(f.order, i) < own {
			out = append(out, plan.Problem{Kind: plan.FoldInRam, Pos: f.in.Flanges[i].Pos, Args: []plan.Arg{
				plan.Named("the " + f.flapName(i)), plan.Of(plan.Mm, f.blank.Folds[i].HeightMm), plan.Of(plan.Mm, handThick)}})
		}
	}
	for i := range f.blank.Folds {
		r := f.blank.Folds[i].RadiusMm
		if math.Abs(f.die.RadiusMm-r) > besidesRadius*r {
			out = append(out, plan.Problem{Kind: plan.BendRadius, Pos: f.in.Flanges[i].Pos, Args: []plan.Arg{
				plan.Of(plan.Mm, f.die.OpeningMm), plan.Of(plan.Mm, n.W.Rounded(f.die.RadiusMm, 2)), plan.Of(plan.Mm, r)}})
			break
		}
	}
	return out
}
