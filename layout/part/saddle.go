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

// madeSaddle is a saddled end worked out.
type madeSaddle struct {
	end      *parts.TubeEnd
	main     string  // in words, "barrel tube outside, Ø168.3"
	reachMm  float64 // along the branch from the crossing of the axes to the far end
	meanMm   float64 // mean drop of the cut below the tube's full length
	deepMm   float64 // greatest drop
	squareMm float64 // from the far end to the template's square edge
	ref      int
}

// saddles works out the ends of a tube that sit on another round.
func (r *Model) saddles() {
	for i := range r.Part.Ends {
		r.saddle(&r.Part.Ends[i])
	}
}

func (r *Model) saddle(e *parts.TubeEnd) {
	mainMm, wallMm, name, ok := r.mainOf(e)
	if !ok {
		return
	}
	bore := r.Part.Profile.Inside[0].Size.Nominal.Mm
	od := r.widest().Size.NominalMm
	s := develop.Saddle{
		MainDiameterMm: mainMm, MainWallMm: wallMm, BranchDiameterMm: od, BranchWallMm: geom.Clean((od - bore) / 2),
		AngleDeg: e.Angle.Deg, OffsetMm: e.Offset.Mm, GapMm: e.Gap.Mm, PaperMm: r.paperMm(),
		TabMm: math.Min(wrapTabMm, words.Round(math.Pi*od/5, 1)), Divisions: saddleDivisions, SeamDeg: 180,
	}
	if e.SetIn {
		s.Joint = develop.SetIn
	}
	p, err := s.Develop()
	if err != nil {
		r.fault(e.Pos, "the saddle cannot be cut: "+patternFault(err), "a branch no larger than the main, at 30° to 90°, on its surface")
		return
	}
	// The tube's length is to its longest point; that is where the cut comes
	// nearest to the crossing of the axes.
	nearest, deepest, sum := math.Inf(1), math.Inf(-1), 0.0
	for _, o := range p.Ordinates {
		nearest, deepest = math.Min(nearest, o.FromCrossingMm), math.Max(deepest, o.FromCrossingMm)
		sum += o.FromCrossingMm
	}
	m := madeSaddle{
		end: e, main: name, reachMm: geom.Clean(r.LengthMm() + nearest), deepMm: geom.Clean(deepest - nearest),
		meanMm: sum/float64(len(p.Ordinates)) - nearest,
	}
	m.squareMm = geom.Clean(m.reachMm - p.SquareEdgeMm)
	if m.squareMm <= 0 {
		// No room for the paper's margin: the square edge is the free end.
		s.MarginMm = geom.Clean(25 + m.squareMm)
		if s.MarginMm < 1 {
			r.fault(e.Pos, "the saddle is "+r.W.Size(m.deepMm)+" deep and cuts through the far end of the tube", "a longer tube")
			return
		}
		if p, err = s.Develop(); err != nil {
			r.fault(e.Pos, "the saddle cannot be cut: "+patternFault(err), "a longer tube")
			return
		}
		m.squareMm = geom.Clean(m.reachMm - p.SquareEdgeMm)
	}
	r.saddled = append(r.saddled, m)
	r.branchPattern(m, s, p)
	r.mainPattern(m, s, p)
}

// mainOf is the diameter and wall of the round that an end sits on; a solid
// main has no wall.
func (r *Model) mainOf(e *parts.TubeEnd) (mainMm, wallMm float64, name string, ok bool) {
	if !e.Onto.Set() {
		name = r.W.Dia(e.Diameter.Mm)
		return e.Diameter.Mm, e.Wall.Mm, "a main of " + name, e.Diameter.Set()
	}
	i := slices.IndexFunc(r.Job.Parts, func(p *parts.Part) bool { return p.Name.Value == e.Onto.Part })
	if i < 0 || r.Job.Parts[i] == r.Part {
		r.fault(e.Onto.Pos, "there is no other part "+e.Onto.Part+" in the job", "the tube that this end sits on, as part.feature")
		return 0, 0, "", false
	}
	mainMm = r.mate(e.Onto)
	if mainMm == 0 {
		return 0, 0, "", false
	}
	other := &Model{Job: r.Job, Part: r.Job.Parts[i], W: r.W}
	other.cylinders()
	st := other.StepNamed(e.Onto.Feature)
	middle := (st.FromMm + st.ToMm) / 2
	if e.Place != nil {
		middle = e.Place.Axial.Mm
		if e.Place.From == parts.Back {
			middle = other.LengthMm() - middle
		}
		if middle < st.FromMm || middle > st.ToMm {
			r.fault(e.Place.Axial.Pos, "the place lies beyond "+e.Onto.Part+"."+e.Onto.Feature, "an axial distance on that step")
			return 0, 0, "", false
		}
	}
	_, inside := other.Sides()
	for _, b := range inside {
		if middle >= b.FromMm && middle <= b.ToMm {
			wallMm = geom.Clean((mainMm - b.Size.NominalMm) / 2)
		}
	}
	return mainMm, wallMm, r.Job.Parts[i].Title.Value + " " + words.Spaced(e.Onto.Feature) + ", " + r.W.Dia(mainMm), true
}

// far is the end of the tube that stays square.
func (m *madeSaddle) far() parts.Face {
	if m.end.Face == parts.Front {
		return parts.Back
	}
	return parts.Front
}

// placeWords says where on the main the axes cross.
func (r *Model) placeWords(e *parts.TubeEnd) string {
	if e.Place == nil {
		return ""
	}
	return "clock " + words.Trim(e.Place.Clock.Deg, 2) + "°, " + r.W.Size(e.Place.Axial.Mm) + " from the " + string(e.Place.From) + " face of the main"
}

// endSide names where line 0 of a branch lies on the main.
func endSide(e *parts.TubeEnd) string {
	if e.Angle.Deg == 90 {
		return "front"
	}
	return "acute"
}

func (r *Model) branchPattern(m madeSaddle, s develop.Saddle, p develop.SaddlePattern) {
	e := m.end
	out := r.pattern("saddle-"+string(e.Face), plan.BranchPattern, p.Branch)
	for i, o := range p.Ordinates {
		for j := range out.Lines {
			if l := &out.Lines[j]; l.Name == strconv.Itoa(i) {
				l.Text = r.exact(o.YMm)
				if i == 0 {
					l.Text = endSide(e) + " " + l.Text
				}
			}
		}
	}
	out.Title = "Saddle cut: " + string(e.Face) + " end, branch " + r.W.Dia(s.BranchDiameterMm)
	out.On = "this tube, " + r.W.Dia(s.BranchDiameterMm) + "; it meets " + m.main
	out.Edge = "this edge square to the axis, " + r.exact(m.squareMm) + " from the " + string(m.far()) + " face"
	out.Beyond = "to the " + string(e.Face)
	out.PaperMm, out.SeamDeg = s.PaperMm, s.SeamDeg
	out.WrapMm, _ = p.Branch.Result("girth on the sheet")
	out.Sizes = append(r.values(p.Branch.Inputs), r.values(p.Branch.Results)...)
	out.Sizes = append(out.Sizes, plan.PatternValue{Name: "square edge from the " + string(m.far()) + " face", Text: r.exact(m.squareMm)},
		plan.PatternValue{Name: "crossing of the axes from the " + string(m.far()) + " face", Text: r.exact(m.reachMm)})
	out.Tables = r.tables(p.Branch.Tables)
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
		out.Notes = append(out.Notes, "The curve leaves a gap of "+r.W.Size(e.Gap.Mm)+" for the weld: set it with wire or strip while tacking.")
	}
	r.Out.Developments = append(r.Out.Developments, out)
}

func (r *Model) mainPattern(m madeSaddle, s develop.Saddle, p develop.SaddlePattern) {
	e := m.end
	out := r.pattern("hole-"+string(e.Face), plan.MainPattern, p.Hole)
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
	out.Sizes = append(r.values(p.Hole.Inputs), r.values(p.Hole.Results)...)
	out.Tables = r.tables(p.Hole.Tables)
	where := "Lay the cross of the branch axis on the main at the marked place"
	if w := r.placeWords(e); w != "" {
		where = "Lay the crossing of the centre lines at " + w
	}
	out.Notes = []string{
		where + "; printed side out, the long centre line along the main, up towards the acute side (at 90° the front).",
		"Cut through the wall in the direction of the branch's axis.",
		"Cut the branch first and hold it to the main: its bore (set on) or outside (set in) must agree with this curve.",
	}
	r.Out.Developments = append(r.Out.Developments, out)
}

// bought tells whether a step stays as the tube comes.
func (s *Step) bought() bool { return s.Size.Source == "tube as bought" }

// saddledEnd tells whether a face is cut to a saddle curve.
func (r *Model) saddledEnd(f parts.Face) bool {
	return slices.ContainsFunc(r.Part.Ends, func(e parts.TubeEnd) bool { return e.Face == f })
}

// onlySawn tells whether an end needs no lathe: it gets a saddle and the tube
// is not turned there.
func (r *Model) onlySawn(face string, steps []*Step) bool {
	return r.saddledEnd(parts.Face(face)) && len(r.Part.Chamfers) == 0 && !slices.ContainsFunc(steps, func(s *Step) bool { return !s.bought() })
}

// faceFront and faceBack say how the ends are faced; one that gets a saddle is
// only sawn.
func (r *Model) faceFront() string {
	if r.saddledEnd(parts.Front) {
		return "Leave the front end as sawn: it is cut to the saddle curve."
	}
	return "Face the front clean."
}

func (r *Model) faceBack() string {
	if r.saddledEnd(parts.Back) {
		return "Leave the back end as sawn, at least " + r.W.Size(r.LengthMm()) + " from the front: it is cut to the saddle curve."
	}
	return "Face the back to length " + r.W.Size(r.LengthMm()) + "."
}

// saddleFeatures numbers the saddled ends.
func (r *Model) saddleFeatures() {
	for i := range r.saddled {
		m := &r.saddled[i]
		z := r.LengthMm()
		if m.end.Face == parts.Front {
			z = 0
		}
		m.ref = r.add(plan.Feature{Name: string(m.end.Face) + " end saddle", Size: "on " + m.main + " at " + words.Trim(m.end.Angle.Deg, 2) + "°, " + r.W.Size(m.deepMm) + " deep",
			Note: words.Join("; ", "gap "+r.W.Size(m.end.Gap.Mm), r.placeWords(m.end)), Balloon: plan.XY{XMm: z, YMm: r.Out.Section.MaxMm * 0.95}})
	}
}

// saddleOperations cuts the saddled ends.
func (r *Model) saddleOperations() {
	for i := range r.saddled {
		m := &r.saddled[i]
		r.op(plan.Operation{
			Machine: "Bench", Title: "Cut the " + string(m.end.Face) + " end to the saddle curve",
			Do: []string{
				"Wrap the saddle template round the tube, its square edge " + r.exact(m.squareMm) + " from the " + string(m.far()) + " face, line 0 at clock " + words.Trim(m.end.Clock.Deg, 2) + "°.",
				"Punch along the curve every " + r.W.Said(10) + ", take the paper off, cut outside the marks and grind to them.",
				"Offer it up to " + m.main + ": gap " + r.W.Said(m.end.Gap.Mm) + " all round.",
			},
			Tool: "saw, plasma or grinder", Gauge: "feeler or wire " + r.W.Size(m.end.Gap.Mm),
			Caution: "Grinding: face shield, guard on, sparks away from people. Cut edges are sharp and hot.", Refs: []int{m.ref},
		})
	}
}

// saddleChecks are the ordinates to measure on the cut end, a quarter apart.
func (r *Model) saddleChecks() {
	for i := range r.saddled {
		m := &r.saddled[i]
		r.Out.Checks = append(r.Out.Checks, plan.Check{
			Ref: m.ref, What: string(m.end.Face) + " end saddle on its main", Wanted: "gap " + r.W.Size(m.end.Gap.Mm) + " all round",
			Limits: "± " + r.W.Size(1) + " at any place", Gauge: "wire or feeler", Source: "common practice, no source",
		})
	}
}

// saddleVolumeMm3 is what the saddled ends take off the straight tube.
func (r *Model) saddleVolumeMm3() float64 {
	sum := 0.0
	for _, m := range r.saddled {
		od := r.widest().Size.NominalMm
		id := r.Part.Profile.Inside[0].Size.Nominal.Mm
		sum += math.Pi / 4 * (od*od - id*id) * m.meanMm
	}
	return sum
}

// countSaddles is for the overall size in words.
func (r *Model) countSaddles() string {
	switch n := len(r.Part.Ends); n {
	case 0:
		return ""
	case 1:
		return ", " + string(r.Part.Ends[0].Face) + " end saddled"
	default:
		return ", " + strconv.Itoa(n) + " ends saddled"
	}
}
