package part

import (
	"math"
	"slices"
	"strconv"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// saddleDivisions is the number of ordinates printed, one every 15 degrees.
const saddleDivisions = 24

// saddle is a saddled end worked out.
type saddle struct {
	end      *parts.TubeEnd
	main     string  // in words, "barrel tube outside, Ø168.3"
	reachMm  float64 // along the branch from the crossing of the axes to the far end
	meanMm   float64 // mean drop of the cut below the tube's full length
	deepMm   float64 // greatest drop
	squareMm float64 // from the far end to the template's square edge
}

// saddle works out an end of a tube that sits on another round.
func (d *shaper) saddle(e *parts.TubeEnd) {
	on, ok := d.mainOf(e)
	if !ok {
		return
	}
	od := d.widest().Size.NominalMm
	_, inside := d.Sides()
	s := develop.Saddle{
		MainDiameterMm: on.diaMm, MainWallMm: on.wallMm, BranchDiameterMm: od, BranchWallMm: geom.Clean((od - inside[0].Size.NominalMm) / 2),
		AngleDeg: e.Angle.Deg, OffsetMm: e.Offset.Mm, GapMm: e.Gap.Mm, PaperMm: d.paperMm(),
		TabMm: math.Min(wrapTabMm, words.Round(math.Pi*od/5, 1)), Divisions: saddleDivisions, SeamDeg: 180,
	}
	if e.SetIn {
		s.Joint = develop.SetIn
	}
	p, err := s.Develop()
	if err != nil {
		d.fault(e.Pos, "the saddle cannot be cut: "+patternFault(err), "a branch no larger than the main, at 30° to 90°, on its surface")
		return
	}
	m := &saddle{end: e, main: on.name}
	m.measure(p, d.LengthMm())
	if m.squareMm <= 0 {
		// No room for the paper's margin: the square edge is the free end.
		s.MarginMm = geom.Clean(25 + m.squareMm)
		if s.MarginMm < 1 {
			d.fault(e.Pos, "the saddle is "+d.W.Size(m.deepMm)+" deep and cuts through the far end of the tube", "a longer tube")
			return
		}
		if p, err = s.Develop(); err != nil {
			d.fault(e.Pos, "the saddle cannot be cut: "+patternFault(err), "a longer tube")
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
	nearest, deepest, sum := math.Inf(1), math.Inf(-1), 0.0
	for _, o := range p.Ordinates {
		nearest, deepest = math.Min(nearest, o.FromCrossingMm), math.Max(deepest, o.FromCrossingMm)
		sum += o.FromCrossingMm
	}
	m.reachMm, m.deepMm = geom.Clean(lengthMm+nearest), geom.Clean(deepest-nearest)
	m.meanMm = sum/float64(len(p.Ordinates)) - nearest
	m.squareMm = geom.Clean(m.reachMm - p.SquareEdgeMm)
}

// onMain is the round that an end sits on; a solid one has no wall.
type onMain struct {
	diaMm, wallMm float64
	name          string // in words
}

// mainOf finds the round that an end sits on.
func (d *shaper) mainOf(e *parts.TubeEnd) (onMain, bool) {
	if !e.Onto.Set() {
		return onMain{diaMm: e.Diameter.Mm, wallMm: e.Wall.Mm, name: "a main of " + d.W.Dia(e.Diameter.Mm)}, e.Diameter.Set()
	}
	if !slices.ContainsFunc(d.Job.Parts, func(p *parts.Part) bool { return p.Name.Value == e.Onto.Part && p != d.Part }) {
		d.fault(e.Onto.Pos, "there is no other part "+e.Onto.Part+" in the job", "the tube that this end sits on, as part.feature")
		return onMain{}, false
	}
	other, st := d.mateOf(&d.faults, e.Onto)
	if st == nil {
		return onMain{}, false
	}
	middle := (st.FromMm + st.ToMm) / 2
	if e.Place != nil {
		middle = e.Place.Axial.Mm
		if e.Place.From == parts.Back {
			middle = other.LengthMm() - middle
		}
		if middle < st.FromMm || middle > st.ToMm {
			d.fault(e.Place.Axial.Pos, "the place lies beyond "+e.Onto.Part+"."+e.Onto.Feature, "an axial distance on that step")
			return onMain{}, false
		}
	}
	out := onMain{diaMm: st.Size.NominalMm, name: other.Part.Title.Value + " " + words.Spaced(st.Name) + ", " + d.W.Dia(st.Size.NominalMm)}
	_, inside := other.Sides()
	if b := stepAt(inside, middle); b != nil {
		out.wallMm = geom.Clean((out.diaMm - b.Size.NominalMm) / 2)
	}
	return out, true
}

// far is the end of the tube that stays square.
func (m *saddle) far() parts.Face {
	if m.end.Face == parts.Front {
		return parts.Back
	}
	return parts.Front
}

// placeWords says where on the main the axes cross.
func (s *Sizes) placeWords(e *parts.TubeEnd) string {
	if e.Place == nil {
		return ""
	}
	return "clock " + words.Trim(e.Place.Clock.Deg, 2) + "°, " + s.W.Size(e.Place.Axial.Mm) + " from the " + string(e.Place.From) + " face of the main"
}

// endSide names where line 0 of a branch lies on the main.
func endSide(e *parts.TubeEnd) string {
	if e.Angle.Deg == 90 {
		return "front"
	}
	return "acute"
}

func (d *shaper) branchPattern(m *saddle, s develop.Saddle, p develop.SaddlePattern) plan.Development {
	e := m.end
	out := d.pattern("saddle-"+string(e.Face), plan.BranchPattern, p.Branch)
	for i, o := range p.Ordinates {
		for j := range out.Lines {
			if l := &out.Lines[j]; l.Name == strconv.Itoa(i) {
				l.Text = d.exact(o.YMm)
				if i == 0 {
					l.Text = endSide(e) + " " + l.Text
				}
			}
		}
	}
	out.Title = "Saddle cut: " + string(e.Face) + " end, branch " + d.W.Dia(s.BranchDiameterMm)
	out.On = "this tube, " + d.W.Dia(s.BranchDiameterMm) + "; it meets " + m.main
	out.Edge = "this edge square to the axis, " + d.exact(m.squareMm) + " from the " + string(m.far()) + " face"
	out.Beyond = "to the " + string(e.Face)
	out.PaperMm, out.SeamDeg = s.PaperMm, s.SeamDeg
	out.WrapMm, _ = p.Branch.Result("girth on the sheet")
	out.Sizes = append(d.values(p.Branch.Inputs), d.values(p.Branch.Results)...)
	out.Sizes = append(out.Sizes, plan.PatternValue{Name: "square edge from the " + string(m.far()) + " face", Text: d.exact(m.squareMm)},
		plan.PatternValue{Name: "crossing of the axes from the " + string(m.far()) + " face", Text: d.exact(m.reachMm)})
	out.Tables = d.tables(p.Branch.Tables)
	line := "Line 0 is at clock " + words.Trim(e.Clock.Deg, 2) + "° of this tube and goes to the acute side"
	if e.Angle.Deg == 90 {
		line = "Line 0 is at clock " + words.Trim(e.Clock.Deg, 2) + "° of this tube and goes towards the front of the main"
	}
	out.Notes = []string{
		"The number along each line is its ordinate, from the square edge to the curve.",
		"Wrap it printed side out, " + out.Edge[len("this edge "):] + ".",
		line + "; numbers grow clockwise seen from the " + string(m.far()) + " face.",
		"Cut square through the wall along the curve. The metal on the side of the square edge stays.",
	}
	if e.Gap.Mm > 0 {
		out.Notes = append(out.Notes, "The curve leaves a gap of "+d.W.Size(e.Gap.Mm)+" for the weld: set it with wire or strip while tacking.")
	}
	return out
}

func (d *shaper) mainPattern(m *saddle, s develop.Saddle, p develop.SaddlePattern) plan.Development {
	e := m.end
	out := d.pattern("hole-"+string(e.Face), plan.MainPattern, p.Hole)
	joint := "set on"
	if e.SetIn {
		joint = "set in"
	}
	for j := range out.Lines {
		if l := &out.Lines[j]; l.Role == develop.Top.String() {
			l.Text = "this way to the acute side →"
			if e.Angle.Deg == 90 {
				l.Text = "this way to the front of the main →"
			}
		}
	}
	out.Title = "Hole in the main for the " + string(e.Face) + " end, " + joint
	out.On = m.main
	out.PaperMm = s.PaperMm
	out.Sizes = append(d.values(p.Hole.Inputs), d.values(p.Hole.Results)...)
	out.Tables = d.tables(p.Hole.Tables)
	where := "Lay the cross of the branch axis on the main at the marked place"
	if w := d.placeWords(e); w != "" {
		where = "Lay the crossing of the centre lines at " + w
	}
	out.Notes = []string{
		where + "; printed side out, the long centre line along the main, up towards the acute side (at 90° the front).",
		"Cut through the wall in the direction of the branch's axis.",
		"Cut the branch first and hold it to the main: its bore (set on) or outside (set in) must agree with this curve.",
	}
	return out
}

func (m *saddle) feature(n *Numbered) plan.Feature {
	z := n.LengthMm()
	if m.end.Face == parts.Front {
		z = 0
	}
	return plan.Feature{Kind: plan.SaddleFeature, Name: string(m.end.Face) + " end saddle", Size: "on " + m.main + " at " + words.Trim(m.end.Angle.Deg, 2) + "°, " + n.W.Size(m.deepMm) + " deep",
		Note: words.Join("; ", "gap "+n.W.Size(m.end.Gap.Mm), n.placeWords(m.end)), Balloon: plan.XY{XMm: z, YMm: n.Section.MaxMm * 0.95}}
}

// operations cut the end.
func (m *saddle) operations(b *bench) {
	b.op(plan.Operation{
		Machine: "Bench", Title: "Cut the " + string(m.end.Face) + " end to the saddle curve",
		Do: []string{
			"Wrap the saddle template round the tube, its square edge " + b.exact(m.squareMm) + " from the " + string(m.far()) + " face, line 0 at clock " + words.Trim(m.end.Clock.Deg, 2) + "°.",
			"Punch along the curve every " + b.W.Said(10) + ", take the paper off, cut outside the marks and grind to them.",
			"Offer it up to " + m.main + ": gap " + b.W.Said(m.end.Gap.Mm) + " all round.",
		},
		Tool: "saw, plasma or grinder", Gauge: "feeler or wire " + b.W.Size(m.end.Gap.Mm),
		Caution: "Grinding: face shield, guard on, sparks away from people. Cut edges are sharp and hot.", Refs: []int{b.ref(m)},
	})
}

// checks is how the cut end meets its main.
func (m *saddle) checks(r *record) {
	r.add(plan.Check{
		Ref: r.ref(m), What: string(m.end.Face) + " end saddle on its main", Wanted: "gap " + r.W.Size(m.end.Gap.Mm) + " all round",
		Limits: "± " + r.W.Size(1) + " at any place", Gauge: "wire or feeler", Source: "common practice, no source",
	})
}
