package part

import (
	"fmt"
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// leastHole is the smallest hole a cutter makes well, as a share of the
// thickness and in millimetres.
var leastHole = []struct {
	cut    string
	times  float64
	least  float64
	source string
}{
	{"laser", 1.0, 1, "common practice of laser cutters: 1.0 × thickness, more in thin plate; some allow 0.7 ×"},
	{"plasma", 1.5, 6, "common practice, no source: 1.5 × thickness, more in thin plate"},
	{"flame", 1.5, 20, "common practice, no source: 1.5 × thickness, more in thin plate"},
	{"waterjet", 0.5, 2, "common practice, no source: 0.5 × thickness, more in thin plate"},
}

// LeastHoleMm is the smallest hole that a cutter (laser, plasma, waterjet or
// flame) makes well in a plate, with where that is from; false for a cutter
// that follows no file.
func LeastHoleMm(cut string, thicknessMm float64) (mm float64, source string, ok bool) {
	for _, l := range leastHole {
		if l.cut == cut {
			return geom.Clean(math.Max(l.times*thicknessMm, l.least)), l.source, true
		}
	}
	return 0, "", false
}

// plateMm is the thickness that is cut: of the plate bought, else of the part.
func (s *Sizes) plateMm() float64 {
	if k := s.Part.Stock; k.ByArea() && k.Size.Set() {
		return k.Size.Mm
	}
	return s.Part.Thickness.Mm
}

// opening is a hole, bore or slot as the shape a disc of the given radius
// sweeps from a to b.
type opening struct {
	name, shape, text string
	a, b              plan.XY
	radius            float64
	pos               parts.Pos
	square            bool // its ends are, with corners of this radius; a and b lie then level or upright
	corner            float64
}

// asCut is what the blank of a flat part is cut to, and what its cutter makes
// of the rest. The cutting file and the sheets both take it from here.
type asCut struct {
	outline  *canvas.Path // with what is left on it
	round    bool         // it is a circle round the middle
	size     string       // its size in words
	text     string       // the same, and what is left
	bore     string       // what becomes of the bore, "" if there is none
	boreCut  bool         // the cutter opens the bore
	openings []opening    // what is cut, seen from the front
	marks    []plan.CutMark
	notes    []string
	whole    map[string]bool // the groups that are cut to size
	err      error           // the outline cannot be left larger
}

func (f *flat) round() bool { return f.Outline.Shape == parts.CircleOutline }

// asCut sorts what goes through the part into what is cut and what is marked.
// A saw, or no word of how the part is cut, makes only the outline.
func (f *flat) asCut(s *Sizes, cut string) asCut {
	a := asCut{round: f.round(), whole: map[string]bool{}}
	a.edge(s, f.Outline.LeaveOnPart.Mm)
	if _, _, follows := LeastHoleMm(cut, s.plateMm()); follows {
		for i := range s.Groups {
			a.group(s, &s.Groups[i], cut)
		}
	}
	if bore := s.StepNamed(boreStep); bore != nil {
		a.cutBore(s, bore, cut)
	}
	return a
}

// tooSmall says why an opening is not cut, or nothing.
func tooSmall(s *Sizes, mm float64, cut string) string {
	least, _, _ := LeastHoleMm(cut, s.plateMm())
	if !geom.Over(least, mm) {
		return ""
	}
	return s.W.Size(mm) + " is under the " + s.W.Size(least) + " that the " + cut + " makes well in " + s.W.Size(s.plateMm())
}

// whyNot is why a group is not cut to size, or nothing.
func (m *Group) whyNot(s *Sizes, cut string) string {
	if !m.Through {
		return "blind"
	}
	if why := m.kind.finished(m); why != "" {
		return why
	}
	why := tooSmall(s, m.Group.FinishedMm, cut)
	z := m.Size.Size
	if holds, _ := CutterHolds(cut, z.NominalMm, s.plateMm()); why == "" && z.Limited && z.MaxMm-z.MinMm < holds-1e-9 {
		return "finer than the " + cut + " holds"
	}
	return why
}

// CutterHolds is the width of limits that a cutter holds of a size in plate of a thickness,
// mm, with its source; 0 for a saw, and for what the standard does not know. Laser and water jet
// hold ±0.1 mm.
func CutterHolds(cut string, mm, plateMm float64) (widthMm float64, source lookup.Source) {
	switch cut {
	case "laser", "waterjet":
		return 0.2, lookup.Source{Name: "as the " + cut + " cuts", State: lookup.Practice, Told: true}
	case "plasma", "flame":
		if pm, err := fits.ThermalCut(mm, plateMm); err == nil {
			return 2 * pm, lookup.Standard("ISO 9013 class 2")
		}
	}
	return 0, lookup.Source{}
}

// group cuts or marks a group. One drawn on the back is mirrored to the front.
func (a *asCut) group(s *Sizes, m *Group, cut string) {
	why := m.whyNot(s, cut)
	if !m.Through && m.Face == parts.Back {
		a.notes = append(a.notes, m.Name.Value+": blind from the back, neither cut nor marked.")
		return
	}
	a.whole[m.Name.Value] = why == ""
	points, half := m.seen(parts.Front)
	for k, q := range points {
		name := fmt.Sprintf("%s %d", m.Name.Value, m.Group.First+k)
		name += words.When(m.Face == parts.Back, " (from the back)")
		o := opening{name: name, shape: m.kind.cutShape(), text: m.kind.cutText(s.W, m), radius: m.Group.FinishedMm / 2, pos: m.Pos,
			a: plan.XY{XMm: geom.Clean(q.XMm + half.XMm), YMm: geom.Clean(q.YMm + half.YMm)}, b: plan.XY{XMm: geom.Clean(q.XMm - half.XMm), YMm: geom.Clean(q.YMm - half.YMm)}}
		if why == "" {
			a.openings = append(a.openings, o)
			continue
		}
		for _, end := range slices.Compact([]plan.XY{o.a, o.b}) {
			a.marks = append(a.marks, plan.CutMark{Name: name, N: m.Group.First + k, AtMm: end, DrillMm: m.Group.DrillMm, Why: why})
		}
	}
}

// cutBore cuts the bore as left for the lathe, or marks its centre.
func (a *asCut) cutBore(s *Sizes, st *Step, cut string) {
	leave := BoreLeftMm(s.Job, s.Part.Bore)
	dia := 2*st.RadiusMm() - leave
	turned := s.boreTurned(st)
	_, _, follows := LeastHoleMm(cut, s.plateMm())
	if why := tooSmall(s, dia, cut); dia <= 0 || why != "" {
		a.marks = append(a.marks, plan.CutMark{Name: boreStep, DrillMm: geom.Clean(math.Max(0, dia)), Why: why})
		a.bore = "The bore is only marked: " + why + "."
		return
	}
	text := s.W.Dia(dia) + " as cut"
	a.bore = "Bore as cut " + s.W.Dia(dia) + ": final, no lathe work."
	switch {
	case s.Part.Bore.Waits:
		a.bore = "Bore as cut " + s.W.Dia(dia) + ", until the welds."
	case leave > 0:
		text += ", " + s.W.Size(leave) + " left for " + s.W.Dia(st.Size.NominalMm)
		a.bore = "Bore as cut " + s.W.Dia(dia) + ": " + s.W.Size(leave) + " left on diameter for " + s.borer() + "."
	case follows && turned:
		a.notes = append(a.notes, "The bore is to be "+st.Size.Class+", finer than the cut, and nothing is left for "+s.borer()+": say bore: {leave: ...}.")
		a.bore = "Bore as cut " + s.W.Dia(dia) + ": nothing is left for " + s.borer() + "."
	}
	if a.boreCut = follows; !follows { // a saw cuts no bore
		a.bore = ""
	}
	a.openings = append(a.openings, opening{name: boreStep, shape: "bore", text: text, radius: dia / 2, pos: s.Part.Bore.Pos})
}

// borer is the machine that finishes the bore of a plate.
func (s *Sizes) borer() string { return words.Either(s.form.onMill(s), "the mill", "the lathe") }

// BoreLeftMm is what stays on the diameter of the bore of a flat part when it is cut.
func BoreLeftMm(job *parts.Job, b *parts.Bore) float64 { return b.LeftMm(WeldLeaveMm(job)) }

// weldLeaveMm and its like in inches are left on a diameter that is finished after a weld. Common
// practice, no source.
const (
	weldLeaveMm   = 2.0
	weldLeaveInch = 1.0 / 16
)

// WeldLeaveMm is what stays on a diameter that is finished after the welds, on the diameter: common practice, no source.
func WeldLeaveMm(job *parts.Job) float64 {
	return words.Writer{Units: job.Units}.Step(weldLeaveMm, weldLeaveInch)
}

// boreTurned tells whether the bore of a flat part is machined after cutting:
// where stock is left for it, or its own limits are closer than the cutter's.
func (s *Sizes) boreTurned(bore *Step) bool {
	holds, _ := CutterHolds(s.Part.Stock.Cut, bore.Size.NominalMm, s.plateMm())
	return s.Part.Bore.Leave.Mm != 0 || bore.Size.Press.Set() || bore.Size.Thread != nil ||
		bore.Size.Class != "" && (holds == 0 || bore.Size.MaxMm-bore.Size.MinMm < holds-1e-9)
}

// BlankPath is the outline as it is cut, with what is left on it for machining.
func (s *Shape) BlankPath() *canvas.Path {
	if s.cut.outline != nil {
		return s.cut.outline
	}
	return s.OutlinePath()
}

// edge is the outline with what is left on it.
func (a *asCut) edge(s *Sizes, leaveMm float64) {
	a.outline = s.OutlinePath()
	if leaveMm != 0 {
		moved, err := geom.Outward(a.outline, leaveMm/2)
		if err != nil {
			a.err = err
			return
		}
		a.outline = moved
	}
	b := a.outline.Bounds()
	a.size = s.W.Size(b.W()) + " × " + s.W.Size(b.H())
	if s.Part.Bends != nil { // no drawn size
		a.size = s.W.Read(b.W()) + " × " + s.W.Read(b.H())
	}
	if s.form.round() {
		a.size = s.W.Dia(geom.Clean(b.W()))
	}
	if corner := s.Part.Outline.Corner.Mm; leaveMm != 0 && corner != 0 {
		a.size += ", corners R" + s.W.Size(corner+leaveMm/2)
	}
	if a.text = a.size; leaveMm != 0 {
		a.text += " as cut, " + s.W.Size(leaveMm) + " left over its size"
	}
}

// areaMm2 is what an opening takes out.
func (o opening) areaMm2() float64 {
	area := sweptMm2(2*o.radius, geom.Distance(o.a, o.b))
	if o.square {
		area += (4 - math.Pi) * (o.radius*o.radius - o.corner*o.corner)
	}
	return area
}

// sweptMm2 is the area that a disc sweeps over a distance.
func sweptMm2(diameterMm, overMm float64) float64 {
	return math.Pi/4*diameterMm*diameterMm + diameterMm*overMm
}

// path is the contour of an opening made smaller by inMm all round.
func (o opening) path(inMm float64) *canvas.Path {
	radius := o.radius - inMm
	if o.square {
		low := plan.XY{XMm: min(o.a.XMm, o.b.XMm) - radius, YMm: min(o.a.YMm, o.b.YMm) - radius}
		w, h := math.Abs(o.b.XMm-o.a.XMm)+2*radius, math.Abs(o.b.YMm-o.a.YMm)+2*radius
		return canvas.RoundedRectangle(w, h, max(0, o.corner-inMm)).Translate(low.XMm, low.YMm)
	}
	if o.a == o.b {
		return canvas.Circle(radius).Translate(o.a.XMm, o.a.YMm)
	}
	d := geom.Distance(o.a, o.b)
	nx, ny := radius*(o.b.YMm-o.a.YMm)/d, -radius*(o.b.XMm-o.a.XMm)/d
	p := &canvas.Path{}
	p.MoveTo(o.a.XMm+nx, o.a.YMm+ny)
	p.LineTo(o.b.XMm+nx, o.b.YMm+ny)
	p.ArcTo(radius, radius, 0, false, true, o.b.XMm-nx, o.b.YMm-ny)
	p.LineTo(o.a.XMm-nx, o.a.YMm-ny)
	p.ArcTo(radius, radius, 0, false, true, o.a.XMm+nx, o.a.YMm+ny)
	p.Close()
	return p
}

const (
	outlineStep = "outline"
	boreStep    = "bore"
)
