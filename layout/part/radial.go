package part

import (
	"cmp"
	"math"
	"regexp"
	"strings"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Radial is one feature cut from outside into a round, at each of its clock
// angles.
type Radial struct {
	In   *parts.Radial
	Rows []plan.RadialRow
	Size Made // of holes
	kind radialKind
}

// radialKind is what differs between holes, slots and windows.
type radialKind interface {
	size(z *sizer, m *Radial, row *plan.RadialRow)
	work(b *bench, m *Radial, o *plan.Operation)                   // machine, tool and lines
	wrap(row plan.RadialRow, f *develop.Feature) (alongMm float64) // its shape on the wrap
}

// radials lays out what is cut from outside, numbered on in the order of the
// drawing.
func (z *sizer) radials() {
	n := 0
	for f := range seq.Refs(z.Part.Radials) {
		m := Radial{In: f, kind: radialKinds[f.Shape]}
		axial := geom.Clean(f.From.FromFront(f.Axial.Mm, z.LengthMm()))
		row := plan.RadialRow{Name: f.Name.Value, Shape: string(f.Shape), AxialMm: axial, Datum: string(cmp.Or(f.From, parts.Front)), DatumMm: geom.Clean(f.Axial.Mm)}
		if st := z.outsideAt(axial); st != nil {
			row.OutsideMm = geom.Clean(st.Size.NominalMm)
		}
		m.kind.size(z, &m, &row)
		row.DepthMm = z.radialMm(&m, axial)
		row.DepthText = words.Join("; ", z.radialDepth(&m, axial), f.Note.Value)
		angles := seq.Map(f.Clock, func(a parts.Angle) float64 { return a.Deg })
		geom.FromTop(angles)
		for _, a := range angles {
			n++
			row.N, row.ClockDeg = n, a
			row.ArcMm = geom.Clean(math.Pi * row.OutsideMm * a / 360)
			m.Rows = append(m.Rows, row)
		}
		z.Radials = append(z.Radials, m)
	}
}

// radialDepth is how deep a radial feature goes, without its note.
func (s *Sizes) radialDepth(m *Radial, axialMm float64) string {
	if !m.In.Through {
		return s.depthText(m.Size, m.In.Depth)
	}
	least, wall := s.throughMm(m, axialMm)
	text := s.W.Size(wall) + " through the wall"
	if least < wall-geom.CloseMm {
		text = s.W.Size(least) + " to " + text
	}
	text = "into the bore, " + text
	if s.boreAt(axialMm) == nil {
		text = "through, " + s.W.Size(wall)
	}
	switch t := s.threadMm(m.Size, wall); {
	case t < wall && m.BearsInBore(s, axialMm):
		return "drilled " + text + ", opened out from outside " + s.W.Size(geom.Clean(wall-t)) + " deep, thread in the " + s.W.Size(t) + " left at the bore"
	case t < wall:
		return "thread " + s.W.Size(t) + " deep, drilled " + text
	}
	return text
}

// BearsInBore tells whether what is fitted in a radial feature is a set screw that bears on what is in the bore.
func (m *Radial) BearsInBore(s *Sizes, axialMm float64) bool {
	return m.In.Through && parts.SetScrew(m.In.Fitted.Value) && s.boreAt(axialMm) != nil
}

// radialMm is how much metal a radial feature goes through, where that is most.
func (s *Sizes) radialMm(m *Radial, axialMm float64) float64 {
	if !m.In.Through {
		return m.In.Depth.Mm
	}
	_, most := s.throughMm(m, axialMm)
	return most
}

// throughMm is the least and the most metal that a radial feature goes through from one
// of its sides along the axis to the other: more than one where it breaks out on a step.
func (s *Sizes) throughMm(m *Radial, axialMm float64) (least, most float64) {
	if s.boreAt(axialMm) == nil {
		mm := s.outsideAt(axialMm).Size.NominalMm
		return mm, mm
	}
	const edgeMm = 0.01 // inside what it touches
	least = geom.Clean(s.WallMm(axialMm))
	most = least
	for _, off := range []float64{-1, 1} {
		z := axialMm + off*(math.Max(m.In.Along.Mm, m.Size.FinishedMm)/2-edgeMm)
		if s.boreAt(z) != nil {
			wall := geom.Clean(s.WallMm(z))
			least, most = math.Min(least, wall), math.Max(most, wall)
		}
	}
	return least, most
}

// reachedByTap is how many diameters deep a hand tap cuts a thread: a screw in such a
// hole may have to come through it.
const reachedByTap = 4.0

// threadMm is how deep a thread is cut in a hole of some depth: all of it, but where no
// hand tap reaches that one diameter and a half, to a whole millimetre or sixteenth,
// which hold a screw; of a pipe thread, which a plug or a nipple only closes, half as
// much in any hole over a diameter (common practice, no source); a taper thread as long
// as that of its mate.
func (s *Sizes) threadMm(m Made, deepMm float64) float64 {
	if m.Thread == nil {
		return deepMm
	}
	full, reach := 1.5*m.Thread.MajorMm, reachedByTap*m.Thread.MajorMm
	switch {
	case m.Thread.Series == threads.PipeG:
		full, reach = full/2, m.Thread.MajorMm
	case m.Thread.Taper: // the tap widens it the farther it goes in
		full, reach = m.Thread.UsefulLengthMm, m.Thread.UsefulLengthMm
	}
	if deepMm <= reach+geom.CloseMm {
		return deepMm
	}
	whole := s.W.Step(1, 1.0/16)
	return math.Ceil(full/whole-geom.CloseMm) * whole
}

// breakOut is a change of diameter that a radial feature runs across.
type breakOut struct {
	before, after *Step
	clearMm       float64 // how far it would have to move to clear it
}

// breakOuts are the changes of diameter that a feature runs across: of the
// outside, and where it comes through of the bore.
func (s *Sizes) breakOuts(m *Radial) []breakOut {
	row := m.Rows[0]
	half := math.Max(row.AlongMm, math.Max(row.DiameterMm, m.Size.FinishedMm)) / 2
	outside, inside := s.Sides()
	if !m.In.Through {
		inside = nil
	}
	var out []breakOut
	for _, steps := range [][]*Step{outside, inside} {
		for i := 1; i < len(steps); i++ {
			off := math.Abs(row.AxialMm - steps[i].FromMm)
			if off < half-geom.CloseMm && steps[i-1].Size.NominalMm != steps[i].Size.NominalMm && !s.runsOut(m, steps[i-1], steps[i]) && !m.tongued(steps[i-1], steps[i]) {
				out = append(out, breakOut{steps[i-1], steps[i], geom.Clean(half - off)})
			}
		}
	}
	return out
}

// runsOut tells whether a blind feature ends in the air at a change of diameter: the step
// on the other side of it lies no higher than its floor.
func (s *Sizes) runsOut(m *Radial, before, after *Step) bool {
	row, beyond := m.Rows[0], before
	if row.AxialMm < after.FromMm {
		beyond = after
	}
	return !m.In.Through && beyond.Size.NominalMm < row.OutsideMm-2*m.In.Depth.Mm+geom.CloseMm
}

// tongued tells whether a change of diameter that a feature runs across is at an end of the thread which it is the slot of a washer in, and
// lower than the slot is deep: the tongue comes in there, and the mill cuts on both sides.
func (m *Radial) tongued(before, after *Step) bool {
	z := m.Rows[0].AxialMm
	in := before
	if z > after.FromMm {
		in = after
	}
	return !m.In.Through && m.In.Shape == parts.RadialSlot && in.Size.Thread != nil && math.Abs(before.Size.NominalMm-after.Size.NominalMm)/2 < m.In.Depth.Mm-geom.CloseMm
}

// problems are the break-outs, for the review.
func (m *Radial) problems(n *Numbered) []plan.Problem {
	var out []plan.Problem
	for _, b := range n.breakOuts(m) {
		out = append(out, plan.Problem{Kind: plan.BreaksOut, Pos: m.In.Pos, Feature: m.Rows[0].Name, Args: []plan.Arg{
			plan.Named(words.Spaced(m.Rows[0].Name)), plan.Named(words.Spaced(b.before.Name)), plan.Named(words.Spaced(b.after.Name)),
			plan.Of(plan.Mm, b.after.FromMm), plan.Of(plan.Mm, b.clearMm),
		}})
	}
	return out
}

func (m *Radial) feature(n *Numbered) plan.Feature {
	row := m.Rows[0]
	return plan.Feature{
		Kind: plan.RadialFeature, Name: words.Spaced(row.Name), Size: words.CountOf(len(m.Rows)) + row.SizeText + ", " + row.DepthText,
		Note: "clock " + clockList(m.Rows) + n.clockFrom(clocksDeg(m.Rows)...) + ", " + fromDatum(n.W, row), Balloon: plan.XY{XMm: row.AxialMm, YMm: row.OutsideMm / 2},
	}
}

// fromDatum is where a radial feature lies as the drawing measures it: measured from
// the other face, its limits would add to those of the length.
func fromDatum(w words.Writer, row plan.RadialRow) string {
	return w.Size(row.DatumMm) + " from the " + row.Datum + " face"
}

// clocksDeg are the clock angles of radial features.
func clocksDeg(rows []plan.RadialRow) []float64 {
	return seq.Map(rows, func(r plan.RadialRow) float64 { return r.ClockDeg })
}

func clockList(rows []plan.RadialRow) string {
	var t []string
	for i, row := range rows {
		if i == 8 {
			t = append(t, "…")
			break
		}
		t = append(t, words.FineAngle(row.ClockDeg))
	}
	return strings.Join(t, ", ")
}

// holderMm is the least distance from a tool's axis at which its holder passes a shoulder
// (common practice, no source).
const holderMm = 20.0

// radialHole is a hole drilled into a round.
type radialHole struct{}

func (radialHole) size(z *sizer, m *Radial, row *plan.RadialRow) {
	m.Size = z.holeSize(m.In.Size)
	row.SizeText, row.DiameterMm = m.Size.Text, geom.Clean(m.Size.DrillMm)
}

func (radialHole) wrap(row plan.RadialRow, f *develop.Feature) float64 {
	f.Kind, f.DiameterMm = develop.Hole, row.DiameterMm
	return row.DiameterMm
}

// opened is what slots and windows have in common.
type opened struct{}

func (opened) size(z *sizer, m *Radial, row *plan.RadialRow) {
	f, w := m.In, z.W
	row.AroundMm, row.AlongMm, row.CornerMm = geom.Clean(f.Around.Mm), geom.Clean(f.Along.Mm), geom.Clean(f.Corner.Mm)
	row.SizeText = w.Size(f.Around.Mm) + " around × " + w.Size(f.Along.Mm) + " along"
	row.SizeText += words.When(f.Corner.Mm != 0, ", corners R"+w.Size(f.Corner.Mm))
}

// radialSlot is a slot with round ends; a blind one is a keyway.
type radialSlot struct{ opened }

// milledMm is the widest slot that is milled, not chain-drilled like a window. Common practice, no source.
const milledMm = 25.0

// noWider are words for a width that is the most that it may be.
var noWider = regexp.MustCompile(`(?i)^no wider\b`)

// filedMm is how close what is chain-drilled and filed comes out. Common practice, no source.
const filedMm = 1.0

// End mills under those of the tables come by half millimetres, or 1/32 in, from the second on, and cut narrowReach diameters
// deep. Common practice, no source.
const narrowStepMm, narrowStepIn, narrowReach = 0.5, 1.0 / 32, 3.0

// sheetMm is how thick metal is at the most that a piercing saw follows a line in. Common practice, no source.
const sheetMm = 3.0

// A row of holes leaves chainLeaveMm, or 1/64 in, on each side for the file, of what is narrow a tenth of the width, and webs
// of twice that; its drill is at most chainMostMm, or 3/8 in. Common practice, no source.
const chainLeaveMm, chainMostMm, chainLeavePart = 0.5, 10.0, 0.1

func (radialSlot) wrap(row plan.RadialRow, f *develop.Feature) float64 {
	f.Kind, f.WidthMm, f.LengthMm = develop.AxialSlot, row.AroundMm, row.AlongMm
	if row.AroundMm > row.AlongMm {
		f.Kind, f.WidthMm, f.LengthMm = develop.AroundSlot, row.AlongMm, row.AroundMm
	}
	return row.AlongMm
}

// radialWindow is a rectangular opening.
type radialWindow struct{ opened }

func (radialWindow) wrap(row plan.RadialRow, f *develop.Feature) float64 {
	f.Kind, f.OnSurface = develop.Window, true
	f.WidthMm, f.LengthMm, f.CornerMm = row.AroundMm, row.AlongMm, row.CornerMm
	return row.AlongMm
}
