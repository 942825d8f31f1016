package develop

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// The angles a branch may have. Below 30° the toe of the branch can no longer
// be reached for welding: common practice, no source.
const (
	MinBranchAngleDeg = 30.0
	MaxBranchAngleDeg = 90.0
)

// DefaultSaddleMarginMm is the paper left beyond the longest ordinate and
// around the hole where MarginMm is zero.
const DefaultSaddleMarginMm = 25.0

// holeMarginMm is the most sheet left around the hole: what a scale and a punch
// need.
const holeMarginMm = 12.5

// Saddle is a round branch on a round main of equal or larger size. Its cut goes
// square through the wall, so that only one edge of it can be exact: at each ordinate
// it is that of the place of the wall that would touch first. Nothing has to be ground
// away to fit up, and the rest of the wall stands clear and forms the groove.
//
// Position round the branch, t, is 0° on the acute side (at 90°: on the side
// chosen as front of the main) and grows clockwise seen from the branch's
// free end, looking towards the main. Offset is to the right in that view
// with the acute side up.
type Saddle struct {
	// MainDiameterMm and BranchDiameterMm are outside diameters.
	MainDiameterMm, BranchDiameterMm float64
	// MainWallMm and BranchWallMm are wall thicknesses, 0 for thin sheet;
	// a branch set in needs the main's wall.
	MainWallMm, BranchWallMm float64
	// AngleDeg is the acute angle between the axes, 30 to 90.
	AngleDeg float64
	// OffsetMm is the distance between the axes, positive to the right.
	OffsetMm float64
	// SetIn puts the branch through the main's wall, flush with the main's bore; the hole is the branch's
	// outside with the gap all round. Else it stands on the main's outside; the hole in the main is the
	// branch's bore.
	SetIn bool
	// GapMm is the root gap for the weld: set on, between branch and
	// main square to the main's surface, set in all round in the hole.
	GapMm float64
	// PaperMm is the thickness of a template wrapped round the outside.
	PaperMm float64
	// TabMm is the overlap of the branch pattern, 0 for a butt.
	TabMm float64
	// SeamDeg is the position t of the branch pattern's ends, -360..360.
	SeamDeg float64
	// MarginMm is the sheet beyond the longest ordinate, 0 for 25 mm.
	MarginMm float64
	// Divisions is the number of ordinates, a multiple of 4; 0 for 12.
	Divisions int
}

// Ordinate is one line of the saddle's table.
type Ordinate struct {
	// PositionDeg is t, see Saddle.
	PositionDeg float64
	// XMm and YMm are the point of the cut on the branch pattern: x from the
	// t = 0° line, y from the square edge.
	XMm, YMm float64
	// FromCrossingMm is the distance along the branch's axis from the
	// crossing of the axes to the cut.
	FromCrossingMm float64
	// DropMm is the largest FromCrossingMm less this one.
	DropMm float64
	// BetweenDeg is the angle between the outside surfaces of branch and
	// main, measured outside the metal and across the joint: 90 for a fillet
	// on a square corner, near 180 at the flanks of an equal tee.
	BetweenDeg float64
}

// SaddlePattern holds both flat patterns of a Saddle.
type SaddlePattern struct {
	// Branch is the pattern of the branch end: y = 0 is a square edge towards
	// the free end, y grows towards the main, x = 0 is t = 0°.
	Branch Development
	// Hole is the pattern of the hole in the main: y grows along the main
	// towards the acute side with y = 0 level with the crossing of the axes,
	// x = 0 is the line of the main that faces the branch when not offset.
	Hole Development
	// Foot is where the branch's axis goes through the outside of the main, on Hole.
	Foot Point
	// HoleMm is how large the hole is on its sheet, round the main and along it,
	// ThroughMm its diameter across the branch.
	HoleMm    [2]float64
	ThroughMm float64
	// LongestMm is the branch from the crossing of the axes to where it is
	// longest, DeepestMm how far the cut goes down from there.
	LongestMm, DeepestMm float64
	// Ordinates is the branch's table, one line per division.
	Ordinates []Ordinate
	// SquareEdgeMm is the distance along the branch's axis from the crossing
	// to the pattern's square edge.
	SquareEdgeMm float64
}

// saddleGeometry is the checked input in radii and sines.
type saddleGeometry struct {
	in             Saddle
	mainOut        float64 // radius of the main's outside
	cutSurface     float64 // radius of the cylinder the branch is cut to
	branchBore     float64 // radii of the branch's wall
	branchOut      float64
	holeRadius     float64
	branchScale    float64 // radius that turns t into x
	mainScale      float64 // radius that turns the main's angle into x
	sin, cos       float64 // of the angle between the axes
	divisions      int
	margin, square float64
	leftDeg        float64 // t at the left end, -360 < t <= 0
	longest        float64 // from the crossing of the axes along the branch
	shortest       float64
}

// Develop returns the patterns of branch and hole. It refuses a branch larger
// than the main, an offset at which the branch misses or overhangs the main,
// an angle outside 30..90°, walls thicker than the tube allows, and a set-in
// branch wider than the main's bore.
func (s Saddle) Develop() (SaddlePattern, error) {
	g, err := s.check()
	if err != nil {
		return SaddlePattern{}, err
	}
	g.leftDeg = geom.OnClock(s.SeamDeg)
	if g.leftDeg > 0 {
		g.leftDeg -= 360
	}
	g.shortest = math.Inf(1)
	for _, n := range []int{720, g.divisions} {
		for _, t := range g.stations(0, 360, n) {
			g.longest, g.shortest = math.Max(g.longest, g.cut(t)), math.Min(g.shortest, g.cut(t))
		}
	}
	g.square = g.longest + g.margin
	p := SaddlePattern{
		SquareEdgeMm: g.square, LongestMm: g.longest, DeepestMm: g.longest - g.shortest, ThroughMm: 2 * g.holeRadius, Ordinates: g.ordinates(),
		Foot: Point{XMm: g.mainScale * asin(s.OffsetMm/g.mainOut), YMm: g.axisFoot()},
	}
	p.Branch = g.branch(p.Ordinates)
	g.hole(&p)
	return p, nil
}

func (s Saddle) check() (saddleGeometry, error) {
	err := cmp.Or(
		checkLength("main diameter", s.MainDiameterMm), checkLength("branch diameter", s.BranchDiameterMm),
		checkAllowance("main wall", s.MainWallMm), checkAllowance("branch wall", s.BranchWallMm),
		checkOffset("offset", s.OffsetMm), checkAllowance("gap", s.GapMm), checkAllowance("paper thickness", s.PaperMm),
		checkAllowance("tab", s.TabMm), checkAngle("seam position", s.SeamDeg))
	if err != nil {
		return saddleGeometry{}, err
	}
	if s.MarginMm != 0 { // without it the shortest line has no length
		if err := checkLength("margin", s.MarginMm); err != nil {
			return saddleGeometry{}, err
		}
	}
	mainOut, branchOut := s.MainDiameterMm/2, s.BranchDiameterMm/2
	g := saddleGeometry{in: s, mainOut: mainOut, branchBore: branchOut - s.BranchWallMm, branchOut: branchOut,
		divisions: cmp.Or(s.Divisions, DefaultDivisions), margin: cmp.Or(s.MarginMm, DefaultSaddleMarginMm),
		branchScale: branchOut + s.PaperMm/2, mainScale: mainOut + s.PaperMm/2, sin: sinDeg(s.AngleDeg), cos: cosDeg(s.AngleDeg)}
	if err := s.meets(); err != nil {
		return g, err
	}
	return g, g.setJoint()
}

// meets refuses a branch that does not come out of the side of its main.
func (s Saddle) meets() error {
	mainOut, branchOut, offset := s.MainDiameterMm/2, s.BranchDiameterMm/2, math.Abs(s.OffsetMm)
	mainBore, branchBore := mainOut-s.MainWallMm, branchOut-s.BranchWallMm
	switch {
	case !(s.AngleDeg >= MinBranchAngleDeg && s.AngleDeg <= MaxBranchAngleDeg):
		return refuse("angle is %g°, want the acute angle between the axes, %g to %g°", s.AngleDeg, MinBranchAngleDeg, MaxBranchAngleDeg)
	case s.BranchDiameterMm > s.MainDiameterMm:
		return refuse("the branch, %v, is larger than the main, %v", lookup.Mm(s.BranchDiameterMm), lookup.Mm(s.MainDiameterMm))
	case mainBore <= 0:
		return refuse("a main of %v cannot have a wall of %v", lookup.Mm(s.MainDiameterMm), lookup.Mm(s.MainWallMm))
	case branchBore <= 0:
		return refuse("a branch of %v cannot have a wall of %v", lookup.Mm(s.BranchDiameterMm), lookup.Mm(s.BranchWallMm))
	case offset >= mainOut+branchOut:
		return refuse("with an offset of %v the branch misses the main", lookup.Mm(s.OffsetMm))
	case !within(offset+branchOut, mainOut):
		return refuse("with an offset of %v the branch overhangs the side of the main by %v", lookup.Mm(s.OffsetMm), lookup.Mm(offset+branchOut-mainOut))
	case s.GapMm > branchOut:
		return refuse("a gap of %v is more than the branch's radius", lookup.Mm(s.GapMm))
	case s.TabMm > math.Pi*branchOut:
		return refuse("a tab of %v is more than half round the branch", lookup.Mm(s.TabMm))
	}
	return nil
}

// setJoint sets the surface that the branch ends at and the hole in the main.
func (g *saddleGeometry) setJoint() error {
	s := g.in
	mainBore, offset := g.mainOut-s.MainWallMm, math.Abs(s.OffsetMm)
	g.cutSurface, g.holeRadius = g.mainOut+s.GapMm, g.branchBore
	if !s.SetIn {
		return nil
	}
	g.cutSurface, g.holeRadius = mainBore, g.branchOut+s.GapMm
	switch {
	case s.MainWallMm == 0:
		return refuse("a set-in branch needs the main's wall thickness")
	case !within(offset+g.branchOut, mainBore):
		return refuse("a set-in branch of %v does not pass the main's bore of %v at this offset: set it on", lookup.Mm(s.BranchDiameterMm), lookup.Mm(2*mainBore))
	case !within(offset+g.holeRadius, g.mainOut):
		return refuse("the hole with a gap of %v is wider than the main", lookup.Mm(s.GapMm))
	}
	return nil
}

// within reports a <= b but for rounding.
func within(a, b float64) bool { return a <= b*(1+1e-12) }

// along returns the distance along the branch's axis from the crossing to the
// cylinder of the given radius about the main's axis, on the line of the
// branch at radius rho and position t.
func (g saddleGeometry) along(rho, tDeg, surface float64) float64 {
	side := g.in.OffsetMm + rho*sinDeg(tDeg)
	height := math.Sqrt(math.Max(0, surface*surface-side*side))
	return (height + rho*cosDeg(tDeg)*g.cos) / g.sin
}

// cut returns along for the part of the wall that touches first. In rho it is
// the root of a hollow-down parabola plus a straight line, so it has a single
// maximum: there side/height = cos t·cos b/sin t.
func (g saddleGeometry) cut(tDeg float64) float64 {
	sine, lean := sinDeg(tDeg), cosDeg(tDeg)*g.cos
	rho := g.branchBore
	if sine == 0 {
		if lean > 0 {
			rho = g.branchOut
		}
	} else {
		side := g.cutSurface * math.Copysign(lean, lean*sine) / math.Hypot(sine, lean)
		rho = math.Max(g.branchBore, math.Min(g.branchOut, (side-g.in.OffsetMm)/sine))
	}
	return g.along(rho, tDeg, g.cutSurface)
}

// between returns the angle between the outside surfaces at t: 180° less the
// angle between their outward normals.
func (g saddleGeometry) between(tDeg float64) float64 {
	side := g.in.OffsetMm + g.branchOut*sinDeg(tDeg)
	height := math.Sqrt(math.Max(0, g.mainOut*g.mainOut-side*side))
	dot := (side*sinDeg(tDeg) - height*cosDeg(tDeg)*g.cos) / g.mainOut
	return 90 + deg(asin(dot))
}

// stations returns from, to and every multiple of 360/n between, rising. The
// quadrants are among them, where an equal tee has its corners.
func (g saddleGeometry) stations(from, to float64, n int) []float64 {
	step := 360 / float64(n)
	out := []float64{from}
	for k := math.Floor((from+1e-9)/step) + 1; k*step < to-1e-9; k++ {
		out = append(out, k*step)
	}
	return append(out, to)
}

// profile returns the cut on the branch pattern from position a to b.
func (g saddleGeometry) profile(a, b float64) []Point {
	at := func(t float64) Point { return Point{XMm: g.branchScale * rad(t), YMm: g.square - g.cut(t)} }
	st := g.stations(a, b, 16)
	out := []Point{at(a)}
	for i := range len(st) - 1 {
		out = append(out, sample(at, st[i], st[i+1], 1)[1:]...)
	}
	return out
}

func (g saddleGeometry) ordinates() []Ordinate {
	out := make([]Ordinate, g.divisions)
	for i := range out {
		t := 360 * float64(i) / float64(g.divisions)
		w := g.cut(t)
		x := t
		if x > g.leftDeg+360 {
			x -= 360
		}
		out[i] = Ordinate{
			PositionDeg: t, XMm: g.branchScale * rad(x), YMm: g.square - w,
			FromCrossingMm: w, DropMm: g.longest - w, BetweenDeg: g.between(t),
		}
	}
	return out
}

func (g saddleGeometry) branch(table []Ordinate) (d Development) {
	s := g.in
	left, right := g.branchScale*rad(g.leftDeg), g.branchScale*rad(g.leftDeg+360)
	girth := 2 * math.Pi * g.branchScale
	d.WrapMm = girth
	top := g.profile(g.leftDeg, g.leftDeg+360)
	slices.Reverse(top)
	d.Curves = append(d.Curves, polygon(append([]Point{{XMm: left, YMm: 0}, {XMm: right, YMm: 0}}, top...)...))
	if s.TabMm > 0 {
		over := g.profile(g.leftDeg+360, g.leftDeg+360+deg(s.TabMm/g.branchScale))
		slices.Reverse(over)
		tab := append([]Point{{XMm: right, YMm: 0}, {XMm: right + s.TabMm, YMm: 0}}, over...)
		d.Curves = append(d.Curves, polyline("tab", Tab, tab...), polyline("seam", Seam, Point{XMm: right, YMm: 0}, over[len(over)-1]))
	}
	t := Table{Title: "ordinates", Drawn: true, Columns: []Column{
		{"position", "deg"}, {"x from 0° line", "mm"}, {"from left edge", "mm"}, {"ordinate from square edge", "mm"},
		{"from axis crossing", "mm"}, {"drop", "mm"}, {"between surfaces", "deg"},
	}}
	for i, o := range table {
		role, label := Division, fmt.Sprint(i)
		if i == 0 {
			role = Top
		}
		for _, x := range copies(o.XMm, girth, left, right) {
			d.Curves = append(d.Curves, polyline(label, role, Point{XMm: x, YMm: 0}, Point{XMm: x, YMm: o.YMm}))
			d.Labels = append(d.Labels, Label{label, Point{XMm: x, YMm: 0}})
		}
		t.Rows = append(t.Rows, Row{Label: label, Values: []float64{o.PositionDeg, o.XMm, o.XMm - left, o.YMm, o.FromCrossingMm, o.DropMm, o.BetweenDeg}})
	}
	d.Tables = []Table{t}
	d.Inputs = g.inputs()
	d.Results = []Value{
		{"girth on the sheet", girth, "mm"},
		{"longest from axis crossing", g.longest, "mm"},
		{"deepest drop", g.longest - g.shortest, "mm"},
		{"square edge from axis crossing", g.square, "mm"},
	}
	d.Formulas = []Formula{
		{"cut along the branch", "w = (√(R² - (e + r·sin t)²) + r·cos t·cos b)/sin b"},
		{"girth", "x = (d + paper)/2·t; rolled: (d - wall)/2·t"},
		{"ordinate", "y = longest w + margin - w"},
		{"surfaces, set on, whole wall", "R = main outside/2 + gap, r = the part of the branch's wall that touches first"},
	}
	if s.SetIn {
		d.Formulas[3] = Formula{"surfaces, set in, whole wall", "R = main bore/2, r = the part of the branch's wall that touches first"}
	}
	return d
}

func (g saddleGeometry) inputs() []Value {
	s := g.in
	return []Value{
		{"main outside diameter", s.MainDiameterMm, "mm"},
		{"main wall", s.MainWallMm, "mm"},
		{"branch outside diameter", s.BranchDiameterMm, "mm"},
		{"branch wall", s.BranchWallMm, "mm"},
		{"angle between axes", s.AngleDeg, "deg"},
		{"offset of axes", s.OffsetMm, "mm"},
		{"gap", s.GapMm, "mm"},
		{"paper thickness", s.PaperMm, "mm"},
	}
}

// hole puts the pattern of the hole in the main, and how large that is.
func (g saddleGeometry) hole(p *SaddlePattern) {
	s, foot, d := g.in, p.Foot, &p.Hole
	at := func(t float64) Point {
		side := s.OffsetMm + g.holeRadius*sinDeg(t)
		height := math.Sqrt(math.Max(0, g.mainOut*g.mainOut-side*side))
		return Point{
			XMm: g.mainScale * asin(side/g.mainOut),
			YMm: (g.holeRadius*cosDeg(t) + height*g.cos) / g.sin,
		}
	}
	// Positions grow clockwise on the sheet; run them backwards so that the
	// closed curve is anticlockwise like every other.
	points := sample(at, 360, 0, 16)
	points[len(points)-1] = points[0]
	curve := polyline("hole", Cut, points...)
	curve.Closed = true
	b := curve.Box()
	round := math.Min(g.margin, holeMarginMm)
	lo, hi := Point{XMm: b.Min.XMm - round, YMm: b.Min.YMm - round}, Point{XMm: b.Max.XMm + round, YMm: b.Max.YMm + round}
	d.Curves = []Curve{
		polygon(lo, Point{XMm: hi.XMm, YMm: lo.YMm}, hi, Point{XMm: lo.XMm, YMm: hi.YMm}), curve,
	}
	if lo.XMm < 0 && hi.XMm > 0 {
		d.Curves = append(d.Curves, polyline("line facing the branch", Top, Point{XMm: 0, YMm: lo.YMm}, Point{XMm: 0, YMm: hi.YMm}))
	}
	d.Curves = append(d.Curves,
		polyline("branch axis", Division, Point{XMm: lo.XMm, YMm: foot.YMm}, Point{XMm: hi.XMm, YMm: foot.YMm}),
		polyline("branch axis", Division, Point{XMm: foot.XMm, YMm: lo.YMm}, Point{XMm: foot.XMm, YMm: hi.YMm}))
	d.Labels = append(d.Labels, Label{"origin", foot})
	g.holePoints(d, at)
	d.Inputs = g.inputs()
	p.HoleMm = [2]float64{b.Size().XMm, b.Size().YMm}
	d.Results = []Value{
		{"hole diameter across the branch", p.ThroughMm, "mm"},
		{"hole width on the sheet", p.HoleMm[0], "mm"},
		{"hole length along the main", p.HoleMm[1], "mm"},
		{"branch axis meets the surface at y", foot.YMm, "mm"},
	}
	d.Formulas = []Formula{
		{"round the main", "x = (D + paper)/2·asin((e + r·sin t)/(D/2)); rolled: (D - wall)/2"},
		{"along the main", "y = (r·cos t + √(R² - (e + r·sin t)²)·cos b)/sin b, R = D/2"},
	}
	if s.SetIn {
		d.Formulas = append(d.Formulas, Formula{"hole size, set in", "r = branch outside/2 + gap"})
	} else {
		d.Formulas = append(d.Formulas, Formula{"hole size, set on", "r = branch bore/2"})
	}
}

// holePoints adds the points of the hole at the divisions, numbered, with their
// table; at gives the point at a position in degrees.
func (g saddleGeometry) holePoints(d *Development, at func(float64) Point) {
	t := Table{Title: "hole points", Drawn: true, Columns: []Column{{"position", "deg"}, {"x round the main", "mm"}, {"y along the main", "mm"}}}
	for i := range g.divisions {
		a := 360 * float64(i) / float64(g.divisions)
		p := at(a)
		label := fmt.Sprint(i)
		d.Labels = append(d.Labels, Label{label, p})
		t.Rows = append(t.Rows, Row{Label: label, Values: []float64{a, p.XMm, p.YMm}})
	}
	d.Tables = []Table{t}
}

// axisFoot returns how far along the main from the crossing the branch's axis
// goes through the main's outside.
func (g saddleGeometry) axisFoot() float64 {
	height := math.Sqrt(g.mainOut*g.mainOut - g.in.OffsetMm*g.in.OffsetMm)
	return height * g.cos / g.sin
}
