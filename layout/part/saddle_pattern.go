package part

import (
	"math"
	"strconv"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

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

func (d *shaper) branchPattern(m *saddle, s develop.Saddle, p develop.SaddlePattern) plan.Development {
	e := m.end
	out := d.pattern("saddle-"+string(e.Face), plan.BranchPattern, p.Branch)
	for l := range seq.Refs(out.Lines) {
		if i, err := strconv.Atoi(l.Name); err == nil {
			l.Text = l.Name + ": " + d.exact(p.Ordinates[i].YMm) + words.When(i == 0, " "+m.endSide())
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
		"Along each line stand its number and its ordinate, from the square edge to the curve.",
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
