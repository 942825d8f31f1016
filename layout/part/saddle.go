package part

import (
	"math"
	"slices"
	"strconv"

	"centrepop/layout/develop"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// saddleDivisions is the number of ordinates printed, one every 15 degrees.
const saddleDivisions = 24

// saddle is a saddled end worked out.
type saddle struct {
	end       *parts.TubeEnd
	main      string     // in words, "barrel tube outside, Ø168.3"
	mainMm    float64    // its diameter
	wallMm    float64    // its wall, 0 of a solid bar
	reachMm   float64    // along the branch from the crossing of the axes to the far end
	meanMm    float64    // mean drop of the cut below the tube's full length
	deepMm    float64    // greatest drop
	squareMm  float64    // from the far end to the template's square edge
	boreMm    float64    // of the branch
	holeMm    [2]float64 // of its hole, round the main and along it
	throughMm float64    // diameter of that across the branch
	dropsMm   []float64  // of the cut below the tube's full length, at even steps of position
	origin    *origin    // nil if the place is not said
}

// saddle works out an end of a tube that sits on another round.
func (d *shaper) saddle(e *parts.TubeEnd) {
	on, ok := d.mainOf(e)
	if !ok {
		return
	}
	od := d.widest().Size.NominalMm
	s := develop.Saddle{
		MainDiameterMm: on.diaMm, MainWallMm: on.wallMm, BranchDiameterMm: od, BranchWallMm: geom.Clean((od - d.Side(true)[0].Size.NominalMm) / 2),
		AngleDeg: e.Angle.Deg, OffsetMm: e.Offset.Mm, SetIn: e.SetIn, GapMm: e.Gap.Mm, PaperMm: d.paperMm(),
		TabMm: math.Min(wrapTabMm, words.Round(math.Pi*od/5, 1)), Divisions: saddleDivisions, SeamDeg: 180,
	}
	p, err := s.Develop()
	if err != nil {
		d.fault(e.Pos, "the saddle cannot be cut: "+d.W.Refused(err), "a branch no larger than the main, at 30° to 90°, on its surface")
		return
	}
	m := &saddle{end: e, main: on.name, mainMm: on.diaMm, wallMm: on.wallMm, boreMm: s.BranchDiameterMm - 2*s.BranchWallMm, holeMm: p.HoleMm, throughMm: p.ThroughMm}
	m.measure(p, d.LengthMm())
	m.origin = on.foot(e, p)
	if o := m.origin; o != nil && (geom.Over(on.fromMm, o.fromFrontMm()) || geom.Over(o.fromFrontMm(), on.toMm)) {
		right := "an axial distance on that step"
		if off := words.Round(math.Abs(p.Foot.YMm), 2); off > 0 {
			right = "the axial distance of where the axes cross: they come out of the outside " + d.W.Size(off) + " nearer the " + string(o.leans)
		}
		d.fault(e.Place.Axial.Pos, "the place lies beyond "+e.Onto.Part+"."+e.Onto.Feature, right)
		return
	}
	if m.squareMm <= 0 {
		// No room for the paper's margin: the square edge is the free end.
		s.MarginMm = geom.Clean(25 + m.squareMm)
		if s.MarginMm < 1 {
			d.fault(e.Pos, "the saddle is "+d.W.Size(m.deepMm)+" deep and cuts through the far end of the tube", "a longer tube")
			return
		}
		if p, err = s.Develop(); err != nil {
			d.fault(e.Pos, "the saddle cannot be cut: "+d.W.Refused(err), "a longer tube")
			return
		}
		m.squareMm = geom.Clean(m.reachMm - p.SquareEdgeMm)
	}
	d.saddles = append(d.saddles, m)
	d.Developments = append(d.Developments, d.branchPattern(m, s, p), d.mainPattern(m, s, p))
}

// measure takes the lengths of a saddle from its pattern. The tube's length is
// to its longest point; that is where the cut comes nearest to the crossing of
// the axes.
func (m *saddle) measure(p develop.SaddlePattern, lengthMm float64) {
	nearest := p.LongestMm - p.DeepestMm
	sum := seq.Sum(p.Ordinates, func(o develop.Ordinate) float64 { return o.FromCrossingMm })
	m.reachMm, m.deepMm = geom.Clean(lengthMm+nearest), words.Round(p.DeepestMm, 2)
	m.dropsMm = seq.Map(p.Ordinates, func(o develop.Ordinate) float64 { return geom.Clean(o.FromCrossingMm - nearest) })
	m.meanMm = sum/float64(len(p.Ordinates)) - nearest
	m.squareMm = geom.Clean(m.reachMm - p.SquareEdgeMm)
}

// dropMm is how far the cut lies below the tube's full length at a clock angle of the
// tube, between two ordinates on the line through them; exact tells that it is on one.
func (m *saddle) dropMm(clockDeg float64) (mm float64, exact bool) {
	t := clockDeg - m.end.Clock.Deg
	if m.end.Face == parts.Front { // seen from the far end, the back
		t = -t
	}
	n := len(m.dropsMm)
	step, rest := math.Modf(math.Mod(t+720, 360) / 360 * float64(n))
	a, b := m.dropsMm[int(step)%n], m.dropsMm[(int(step)+1)%n]
	return a + (b-a)*rest, rest == 0
}

// ReachMm is the length along a tube with a saddle from the crossing of the axes
// to its other end, and the diameter of what it sits on; 0, 0 and false where the
// end has none.
func (g *Shape) ReachMm(f parts.Face) (reachMm, mainMm float64, ok bool) {
	if m := g.saddleAt(f); m != nil {
		return m.reachMm, m.mainMm, true
	}
	return 0, 0, false
}

// saddleAt is the saddle of an end, nil where it has none.
func (g *Shape) saddleAt(f parts.Face) *saddle {
	return seq.First(g.saddles, func(m *saddle) bool { return m.end.Face == f })
}

// Stand is how a branch with a saddle stands on its main, in mm and degrees.
type Stand struct {
	AxialMm          float64    // from a face of the main to where the branch's axis goes through its outside
	From             parts.Face // that face
	ClockDeg         float64    // of the main, of the same point
	PointsDeg        float64    // clock angle of the main that the branch points to; that of the point without an offset
	AngleDeg         float64    // between the axes, 30 to 90
	Leans            parts.Face // of the main, that the branch leans to; at 90° that of its Line0Deg
	Line0Deg         float64    // clock angle of the branch that lies on that side
	FarMm            float64    // from the main's far side to the middle of the branch's free end
	FreeMm           float64    // from the same face as AxialMm to that
	LengthMm, MainMm float64    // of the branch, and the main's outside diameter
}

// Stands is how the branch with a saddle at an end stands; nil where no place is said.
func (g *Shape) Stands(f parts.Face) *Stand {
	m := g.saddleAt(f)
	if m == nil || m.origin == nil {
		return nil
	}
	o, sin, cos := m.origin, math.Sin(m.end.Angle.Deg*math.Pi/180), math.Cos(m.end.Angle.Deg*math.Pi/180)
	far, along := words.Round(m.reachMm*sin+m.mainMm/2, 1), words.Round(o.alongMm(m.reachMm*cos), 1)
	return &Stand{o.axialMm, o.from, o.clockDeg, o.pointsDeg, m.end.Angle.Deg, o.leans, m.end.Clock.Deg, far, along, g.LengthMm(), m.mainMm}
}

// Text says it of a branch on a main by their names.
func (s *Stand) Text(w words.Writer, branch, main string) string {
	text := branch + " on " + main + ", its axis through the outside of " + main + " at clock " + words.Angle(s.ClockDeg) + ", " + w.Size(s.AxialMm) +
		" from the " + string(s.From) + " face, " + words.FineAngle(s.AngleDeg) + " between the axes"
	past := math.Abs(math.Sin((s.PointsDeg-s.ClockDeg)*math.Pi/180)) * s.MainMm / 2
	text += words.When(s.PointsDeg != s.ClockDeg, ", pointing to "+words.Angle(s.PointsDeg)+" of that clock and so past the axis of "+main+" by "+w.Read(past))
	text += words.When(s.AngleDeg != 90, ", leaning to the "+string(s.Leans)+" of "+main)
	return text + ", " + s.Way(main) + ", the middle of its free end " + w.Size(s.FarMm) + " from the far side of " + main
}

// Way says which way the branch is turned about its own axis.
func (s *Stand) Way(main string) string {
	mark := words.Either(s.Line0Deg != 0, words.Angle(s.Line0Deg)+" of its clock", "its TOP")
	return mark + " to the " + string(s.Leans) + " of " + main
}

// onMain is the round that an end sits on; a solid one has no wall.
type onMain struct {
	diaMm, wallMm float64
	name          string  // in words
	main          *Sizes  // nil if it is no part of the job
	crossMm       float64 // of the axes, from its front face; where they lean it may lie beyond its ends
	fromMm, toMm  float64 // of that round, from the same face
}

// origin is where the branch's axis goes through the outside of the main: the
// one place that its hole is laid out from.
type origin struct {
	main     *parts.Part
	from     parts.Face
	lengthMm float64 // of the main
	crossMm  float64 // of the axes, from the front face
	axialMm  float64 // from that face
	clockDeg float64
	// The branch points that way; without an offset it is clockDeg.
	pointsDeg float64
	leans     parts.Face
}

// foot works out the origin. The axes cross at the place that is said; the
// branch goes through the outside off that by its lean and its offset, which
// is to the right seen from the free end with the acute side up. Clock angles are
// seen from the front: who looks at the outside with the front up has 90° to the
// left of TOP, so to the right they fall; with the back up they grow.
func (on onMain) foot(e *parts.TubeEnd, p develop.SaddlePattern) *origin {
	if e.Place == nil || on.main == nil {
		return nil
	}
	turn := math.Asin(2*e.Offset.Mm/on.diaMm) * 180 / math.Pi
	if e.Place.Leans == parts.Front {
		turn = -turn
	}
	o := &origin{main: on.main.Part, lengthMm: on.main.LengthMm(), from: e.Place.From, leans: e.Place.Leans, crossMm: on.crossMm}
	o.axialMm = o.alongMm(p.Foot.YMm)
	at, points := []float64{e.Place.Clock.Deg + turn}, []float64{e.Place.Clock.Deg}
	geom.FromTop(at)
	geom.FromTop(points)
	o.clockDeg, o.pointsDeg = at[0], points[0]
	return o
}

// alongMm is what lies so far from the crossing of the axes the way the branch leans, from the face that places are told from.
func (o *origin) alongMm(mm float64) float64 {
	if o.leans == parts.Front {
		mm = -mm
	}
	return geom.Clean(o.from.FromFront(o.crossMm+mm, o.lengthMm))
}

// words say where the origin lies: "clock 30°, 140 from the back face".
func (o *origin) words(w words.Writer) string {
	return "clock " + words.Angle(o.clockDeg) + ", " + w.Size(o.axialMm) + " from the " + string(o.from) + " face"
}

// side names the side that line 0 goes to.
func (m *saddle) side() string {
	if side := m.endSide(); side != "acute" {
		return side + " of the main"
	}
	return "acute side"
}

// mainOf finds the round that an end sits on.
func (d *shaper) mainOf(e *parts.TubeEnd) (onMain, bool) {
	if !e.Onto.Set() {
		return onMain{diaMm: e.Diameter.Mm, wallMm: e.Wall.Mm, name: "a main of " + d.W.Dia(e.Diameter.Mm)}, e.Diameter.Set()
	}
	if p := d.Job.Part(e.Onto.Part); p == nil || p == d.Part {
		d.fault(e.Onto.Pos, "there is no other part "+e.Onto.Part+" in the job", "the tube that this end sits on, as part.feature")
		return onMain{}, false
	}
	other, st := d.mateOf(&d.faults, e.Onto)
	if st == nil {
		return onMain{}, false
	}
	middle := st.MidMm()
	if e.Place != nil {
		middle = e.Place.AxialMm(other.LengthMm())
	}
	out := onMain{
		main: other, crossMm: middle, fromMm: st.FromMm, toMm: st.ToMm, diaMm: st.Size.NominalMm,
		name: other.Part.Title.Value + " " + words.Spaced(st.Name) + ", " + d.W.Dia(st.Size.NominalMm),
	}
	if b := other.boreAt(max(st.FromMm, min(middle, st.ToMm))); b != nil {
		out.wallMm = geom.Clean((out.diaMm - b.Size.NominalMm) / 2)
	}
	return out, true
}

// far is the end of the tube that stays square.
func (m *saddle) far() parts.Face { return m.end.Face.Other() }

// endSide names where line 0 of a branch lies on the main.
func (m *saddle) endSide() string {
	switch {
	case m.origin != nil:
		return string(m.origin.leans)
	case m.end.Angle.Deg == 90:
		return string(parts.Front)
	}
	return "acute"
}

func (d *shaper) branchPattern(m *saddle, s develop.Saddle, p develop.SaddlePattern) plan.Development {
	e := m.end
	out := d.pattern("saddle-"+string(e.Face), plan.BranchPattern, p.Branch)
	for l := range seq.Refs(out.Lines) {
		if i, err := strconv.Atoi(l.Name); err == nil {
			l.Text = d.exact(p.Ordinates[i].YMm) + words.When(i == 0, " "+m.endSide())
		}
	}
	out.Title = "Saddle cut: " + string(e.Face) + " end, branch " + d.W.Dia(s.BranchDiameterMm)
	out.On = "this tube, " + d.W.Dia(s.BranchDiameterMm) + "; it meets " + m.main
	out.Edge = "square to the axis, " + d.exact(m.squareMm) + " from the " + string(m.far()) + " face"
	out.Beyond = "to the " + string(e.Face)
	out.PaperMm, out.SeamDeg, out.WrapMm = s.PaperMm, s.SeamDeg, p.Branch.WrapMm
	out.Sizes = append(d.values(p.Branch.Inputs), d.values(p.Branch.Results)...)
	out.Sizes = append(out.Sizes, plan.PatternValue{Name: "square edge from the " + string(m.far()) + " face", Text: d.exact(m.squareMm)},
		plan.PatternValue{Name: "crossing of the axes from the " + string(m.far()) + " face", Text: d.exact(m.reachMm)})
	out.Tables = d.tables(p.Branch.Tables)
	line := "Line 0 is at clock " + words.Angle(e.Clock.Deg) + " of this tube and goes to the " + m.side()
	if m.origin != nil && e.Angle.Deg != 90 {
		line += ", to which this tube leans from square by " + words.Angle(90-e.Angle.Deg)
	}
	out.Notes = []string{
		"The number along each line is its ordinate, from the square edge to the curve.",
		"Wrap it printed side out, " + out.Edge + ".",
		line + "; numbers grow clockwise seen from the " + string(m.far()) + " face.",
		"Cut square through the wall along the curve. The metal on the side of the square edge stays.",
	}
	if e.Gap.Mm != 0 && e.SetIn {
		out.Notes = append(out.Notes, "The gap of "+d.W.Size(e.Gap.Mm)+" for the weld is left by the hole, which is larger than the tube all round; this curve leaves none.")
	} else if e.Gap.Mm != 0 {
		out.Notes = append(out.Notes, "The curve leaves a gap of "+d.W.Size(e.Gap.Mm)+" for the weld: set it with wire or strip while tacking.")
	}
	return out
}

func (d *shaper) mainPattern(m *saddle, s develop.Saddle, p develop.SaddlePattern) plan.Development {
	e := m.end
	out := d.pattern("hole-"+string(e.Face), plan.MainPattern, p.Hole)
	out.OriginMm = at(p.Foot)
	for l := range seq.Refs(out.Lines) {
		if l.Role == string(develop.Top) {
			l.Text = m.side() + " →"
			if e.Place != nil {
				l.Text = "clock " + words.Angle(e.Place.Clock.Deg) + ", " + l.Text
			}
		}
	}
	out.Title = "Hole in the main for the " + string(e.Face) + " end, " + e.Joint()
	out.On, out.Beyond = m.main, "to the "+m.side()
	out.PaperMm = s.PaperMm
	out.Sizes = append(d.values(p.Hole.Inputs), d.values(p.Hole.Results)...)
	out.Tables = d.tables(p.Hole.Tables)
	out.Origin = "where the branch's axis goes through the outside of the main"
	if m.origin != nil {
		out.Origin = "at " + m.origin.words(d.W) + " of the main"
		out.ScaleMm = math.Pi * (s.MainDiameterMm + s.PaperMm) / 360
		out.ScaleFromDeg = e.Place.Clock.Deg
		if m.origin.leans == parts.Front {
			out.ScaleMm = -out.ScaleMm
		}
		out.Sizes = append(out.Sizes, plan.PatternValue{Name: "one degree of the main's clock", Text: d.exact(math.Abs(out.ScaleMm))},
			plan.PatternValue{Name: "TOP of the main from the origin, round it", Text: d.exact(math.Abs(out.ScaleMm) * math.Min(m.origin.clockDeg, 360-m.origin.clockDeg))})
	}
	out.Notes = []string{
		"Lay the ringed cross, the origin, " + out.Origin + "; printed side out, the long centre line along the main, up towards the " + m.side() + ".",
		"Cut through the wall in the direction of the branch's axis.",
		"Cut the branch first and hold it to the main: its bore (set on) or outside (set in) must agree with this curve.",
	}
	return out
}

// where is the place of the branch on the main, and how it leans.
func (m *saddle) where(w words.Writer) string {
	if m.origin == nil {
		return ""
	}
	return m.origin.words(w) + " of the main" + words.When(m.end.Angle.Deg != 90, ", leaning to its "+string(m.origin.leans))
}

// said is one of two texts: for a branch set on its main, or set in.
func (m *saddle) said(on, in string) string { return words.Either(m.end.SetIn, in, on) }

func (m *saddle) feature(n *Numbered) plan.Feature {
	z := m.end.Face.FromFront(0, n.LengthMm())
	return plan.Feature{Kind: plan.SaddleFeature, Name: string(m.end.Face) + " end saddle",
		Size: m.said("on ", "set in ") + m.main + " at " + words.Angle(m.end.Angle.Deg) + ", " + n.W.Size(m.deepMm) + " deep",
		Note: words.Join("; ", "gap "+n.W.Size(m.end.Gap.Mm), m.where(n.W)), Balloon: plan.XY{XMm: z, YMm: n.Section.MaxMm * 0.95}}
}

// operations cut the end.
func (m *saddle) operations(b *bench) {
	var limits []string
	if m == b.saddles[len(b.saddles)-1] {
		limits = b.wholeLimits("length over the tips")
	}
	b.op(warn(plan.Operation{
		Machine: plan.Bench, Title: "Cut the " + string(m.end.Face) + " end to the saddle curve",
		Do: []string{
			"Wrap the saddle template round the tube, its square edge " + b.W.Said(m.squareMm) + " from the " + string(m.far()) + " face, line 0 at clock " + words.Angle(m.end.Clock.Deg) + ".",
			"Punch along the curve every " + b.W.Near(10) + ", take the paper off, cut outside the marks and grind to them.",
			m.said("Offer it up to ", "It is done before its hole, which is then ground to it. There it enters ") + words.Join(", ", m.main, m.where(b.W)) + ": gap " + b.W.Said(m.end.Gap.Mm) +
				m.said(" all round.", " all round, its end level with the bore there."),
		},
		Tool: "saw, plasma or grinder", Gauge: "feeler or wire " + b.W.Size(m.end.Gap.Mm),
		Limits: limits, Refs: []int{b.ref(m)},
	}, grinding))
}

// checks is how the cut end meets its main.
func (m *saddle) checks(r *record) {
	r.add(plan.Check{
		Ref: r.ref(m), What: string(m.end.Face) + m.said(" end saddle on its main", " end saddle in its main"), Wanted: "gap " + r.W.Size(m.end.Gap.Mm) + " all round",
		Limits: "± " + r.W.About(1) + " at any place", Gauge: "wire or feeler", Source: lookup.NoSource,
	})
}

// branchHole is the hole that a branch of another part needs in this one.
type branchHole struct {
	*saddle
	branch *parts.Part
}

// branches are the holes that other parts' saddled ends need in this part.
func (s *Sizes) branches() []*branchHole {
	var out []*branchHole
	for _, p := range s.Job.Parts {
		for e := range seq.Refs(p.Ends) {
			if p != s.Part && e.Onto.Part == s.Part.Name.Value && e.Place != nil {
				d := &shaper{Shape: &Shape{Sizes: newSizer(s.Job, p).Sizes}, faults: faults{job: s.Job}}
				if d.saddle(e); len(d.saddles) > 0 {
					out = append(out, &branchHole{d.saddles[0], p})
				}
			}
		}
	}
	return out
}

func (h *branchHole) name() string { return "hole for " + h.branch.Title.Value }

func (h *branchHole) feature(n *Numbered) plan.Feature {
	return plan.Feature{Kind: plan.SaddleFeature, Name: h.name(), Size: "by the template of " + h.branch.Title.Value + ", " + h.end.Joint() + " at " + words.Angle(h.end.Angle.Deg),
		Note: h.note(n.W), Balloon: plan.XY{XMm: h.origin.fromFrontMm(), YMm: n.Section.MaxMm}}
}

// fromFrontMm is how far from the front face of the main it lies.
func (o *origin) fromFrontMm() float64 { return geom.Clean(o.from.FromFront(o.axialMm, o.lengthMm)) }

// row is the hole as the main's drawing shows it.
func (h *branchHole) row(n *Numbered) plan.RadialRow {
	return plan.RadialRow{
		Shape: "branch", ClockDeg: h.origin.clockDeg, AxialMm: h.origin.fromFrontMm(), Datum: string(h.origin.from), DatumMm: h.origin.axialMm,
		SizeText: "by the template of " + h.branch.Title.Value, DepthText: "through", AroundMm: geom.Clean(h.holeMm[0]), AlongMm: geom.Clean(h.holeMm[1]),
		DepthMm:   n.form.wallMm(n.Sizes, h.origin.fromFrontMm()),
		OutsideMm: h.mainMm, ArcMm: geom.Clean(h.origin.clockDeg * math.Pi / 360 * h.mainMm),
	}
}

// shownRows are what is cut into the outside, as a drawing shows it: an opening in the hole of a
// branch is cut with that.
func (n *Numbered) shownRows() []plan.RadialRow {
	rows := n.rows()
	for _, h := range n.holed {
		row := h.row(n)
		i := slices.IndexFunc(rows, func(r plan.RadialRow) bool { return n.branchOver(r.N) == h })
		if i < 0 {
			row.N, row.Name = len(rows)+1, h.name()
			rows = append(rows, row)
			continue
		}
		row.N, row.Name, row.SizeText = rows[i].N, rows[i].Name, h.name()+", "+row.SizeText
		rows[i] = row
	}
	return rows
}

func (h *branchHole) note(w words.Writer) string {
	return "origin at " + h.origin.words(w) + words.When(h.end.Angle.Deg != 90, ", leaning to the "+string(h.origin.leans))
}

func (h *branchHole) operations(b *bench) {
	refs, start := []int{b.ref(h)}, ""
	for m := range seq.Refs(b.Radials) { // what is cut with it
		row := m.Rows[0]
		if b.branchOver(row.N) != h {
			continue
		}
		refs = append(refs, b.ref(m))
		if row.DiameterMm != 0 && row.DiameterMm < h.boreMm/2 {
			start = "Drill " + words.Spaced(row.Name) + ", " + b.W.Drill(row.DiameterMm) + ", inside the marks to start from. "
		}
	}
	b.op(warn(plan.Operation{Machine: plan.Bench, Title: words.Capital(h.name()),
		Do: []string{
			"Lay the hole template of " + h.branch.Title.Value + " on the outside, its " + h.note(b.W) +
				", and punch along the curve. Measure where the origin lies for the record now: the cut may take it away.",
			start + "Cut through the wall in the direction of the branch's axis, inside the marks. The branch is done before: " +
				words.Either(h.end.SetIn, "enter it", "offer it up") + " and grind the hole to it, not it to the hole.",
		},
		Tool: "plasma, hole saw or grinder", Gauge: "the cut branch", Refs: refs}, grinding))
}

func (h *branchHole) checks(r *record) {
	r.sized(plan.Check{
		Ref: r.ref(h), What: h.name(), Wanted: r.W.Size(h.origin.axialMm) + " from the " + string(h.origin.from) + " face to its origin, before it is cut",
		Gauge: "tape",
	}, r.taped(h.origin.axialMm))
}
