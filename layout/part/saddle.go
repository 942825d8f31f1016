package part

import (
	"math"

	"centrepop/layout/develop"
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
	text := branch + " on " + main + ", its axis through the outside of " + main + " at clock " + words.Angle(s.ClockDeg) + ", " + w.Read(s.AxialMm) +
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

// alongMm is what lies so far from the crossing of the axes the way the branch leans, from the face that places are told from.
func (o *origin) alongMm(mm float64) float64 {
	if o.leans == parts.Front {
		mm = -mm
	}
	return geom.Clean(o.from.FromFront(o.crossMm+mm, o.lengthMm))
}

// words say where the origin lies: "clock 30°, 140 from the back face".
func (o *origin) words(w words.Writer) string {
	return "clock " + words.Angle(o.clockDeg) + ", " + w.Read(o.axialMm) + " from the " + string(o.from) + " face"
}

// side names the side that line 0 goes to.
func (m *saddle) side() string {
	if side := m.endSide(); side != "acute" {
		return side + " of the main"
	}
	return "acute side"
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

// branchHole is the hole that a branch of another part needs in this one.
type branchHole struct {
	*saddle
	branch *parts.Part
}

func (h *branchHole) name() string { return "hole for " + h.branch.Title.Value }

func (h *branchHole) feature(n *Numbered) plan.Feature {
	return plan.Feature{Kind: plan.SaddleFeature, Name: h.name(), Size: "by the template of " + h.branch.Title.Value + ", " + h.end.Joint() + " at " + words.Angle(h.end.Angle.Deg),
		Note: h.note(n.W), Balloon: plan.XY{XMm: h.origin.fromFrontMm(), YMm: n.Section.MaxMm}}
}

func (h *branchHole) note(w words.Writer) string {
	return "origin at " + h.origin.words(w) + words.When(h.end.Angle.Deg != 90, ", leaning to the "+string(h.origin.leans))
}

// row is the hole as the main's drawing shows it.
func (h *branchHole) row(n *Numbered) plan.RadialRow {
	return plan.RadialRow{
		Shape: "branch", ClockDeg: h.origin.clockDeg, AxialMm: h.origin.fromFrontMm(), Datum: string(h.origin.from), DatumMm: h.origin.axialMm,
		SizeText: "by the template of " + h.branch.Title.Value, DepthText: "through", AroundMm: geom.Clean(h.holeMm[0]), AlongMm: geom.Clean(h.holeMm[1]),
		DepthMm:   n.form.wallMm(n.Sizes, h.origin.fromFrontMm()),
		OutsideMm: h.mainMm, ArcMm: geom.Clean(h.origin.clockDeg * math.Pi / 360 * h.mainMm),
	}
}
