package part

import (
	"fmt"
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// CutOptions say how a part is cut. The zero value takes the cutter from the
// part's stock and applies no kerf.
type CutOptions struct {
	// Cut is laser, plasma, waterjet or flame; "" takes the part's stock.cut.
	Cut string
	// KerfMm is the width of metal that the cut removes, 0 (not known) to 10.
	KerfMm float64
	// Compensate moves the contours by half the kerf into the waste, so that
	// the cutter can follow them without its own correction.
	Compensate bool
	// Piece names the blank to cut, of a cone or square-to-round that is made
	// of several; "" for a part of one piece.
	Piece string
}

// leastHole is the smallest hole a cutter makes well, as a share of the
// thickness and in millimetres.
var leastHole = []struct {
	cut    string
	times  float64
	least  float64
	source string
}{
	{"laser", 1.0, 1, "common practice of laser cutters: 1.0 × thickness and 1 mm; some allow 0.7 ×"},
	{"plasma", 1.5, 6, "common practice, no source: 1.5 × thickness and 6 mm"},
	{"flame", 1.5, 20, "common practice, no source: 1.5 × thickness and 20 mm"},
	{"waterjet", 0.5, 2, "common practice, no source: 0.5 × thickness and 2 mm"},
}

// MaxKerfMm is the widest kerf that is believed.
const MaxKerfMm = 10

// cutSpreadMm is how far apart the limits of a cut size may be expected at
// best (common practice, no source: ± 0.1 mm).
const cutSpreadMm = 0.2

// topLineMm is the length of the scribed TOP line.
const topLineMm = 10.0

// opening is a hole, bore or slot as the shape a disc of the given radius
// sweeps from a to b.
type opening struct {
	name, shape, text string
	a, b              plan.XY
	radius            float64
	pos               parts.Pos
}

// CutProfile lays out the cutting file of a flat part, or of the flat blank of
// a cone or square-to-round. The error is a located
// parts.Errors where the part is at fault, and a plain one for options.
//
// What is cut: the outline and the bore as left for the lathe, through slots,
// and through holes that are plain or for clearance and not smaller than the
// cutter can make. Tapped, reamed, blind and too small holes become marks.
func CutProfile(job *parts.Job, part string, opt CutOptions) (*plan.Profile, error) {
	var p *parts.Part
	for _, q := range job.Parts {
		if q.Name.Value == part {
			p = q
		}
	}
	if p == nil {
		return nil, fmt.Errorf("no part %s in the job", part)
	}
	if !(opt.KerfMm >= 0 && opt.KerfMm <= MaxKerfMm) {
		return nil, fmt.Errorf("kerf %v mm: 0 to %d mm", opt.KerfMm, MaxKerfMm)
	}
	if opt.Compensate && opt.KerfMm == 0 {
		return nil, fmt.Errorf("to compensate, the kerf must be known")
	}
	r := &Model{Job: job, Part: p, W: words.Writer{Units: job.Units}, Out: &plan.PartPlan{Title: p.Title.Value, Material: p.Material.Value}}
	lay := r.profile
	if p.Outline == nil {
		lay = r.blankProfile
	}
	out, err := lay(opt)
	if len(r.Errs) > 0 {
		return nil, r.Errs
	}
	return out, err
}

// newProfile has what is known without the geometry.
func (r *Model) newProfile(opt CutOptions) *plan.Profile {
	p := r.Part
	out := &plan.Profile{
		Part: p.Name.Value, Title: p.Title.Value, Revision: r.Job.Revision.Value, Quantity: p.Quantity, Copies: 1, Side: "front face up",
		Material: p.Material.Value, StockText: r.StockText(), Cut: opt.Cut,
		ThicknessMm: p.Thickness.Mm, KerfMm: opt.KerfMm, Compensated: opt.Compensate,
	}
	if s := p.Stock; (s.Form == "plate" || s.Form == "sheet") && s.Size.Set() {
		out.ThicknessMm = s.Size.Mm
	}
	if out.Cut == "" {
		out.Cut = p.Stock.Cut
	}
	return out
}

// cutter looks up what the cutter can do. An unknown one is a plain error if
// it comes of the options, and a fault of the part otherwise.
func (r *Model) cutter(out *plan.Profile, opt CutOptions) error {
	if findLeast(out) {
		return nil
	}
	if opt.Cut != "" {
		return fmt.Errorf("cutter %q: laser, plasma, waterjet or flame", opt.Cut)
	}
	pos, what := r.Part.Stock.Pos, "the stock does not say how the part is cut"
	if cut := r.Part.Stock.Cut; cut != "" {
		what = "the stock says cut: " + cut + ", which follows no file"
	}
	if pos.Line == 0 {
		pos = r.Part.Pos
	}
	r.fault(pos, what, "cut: laser, plasma, waterjet or flame")
	return nil
}

func (r *Model) profile(opt CutOptions) (*plan.Profile, error) {
	out := r.newProfile(opt)
	if err := r.cutter(out, opt); err != nil || len(r.Errs) > 0 {
		return nil, err
	}
	r.cylinders()
	r.holeGroups()
	if len(r.Errs) > 0 {
		return nil, nil
	}
	openings := r.openings(out)
	outline, outlineText := r.outlineAsCut()
	if len(r.Errs) > 0 {
		return nil, nil
	}
	r.webs(out, openings, outline)
	r.contours(out, openings, outline, outlineText)
	if len(r.Errs) > 0 {
		return nil, nil
	}
	r.topLine(out, openings, outline)
	r.weigh(out, openings, outline)
	return out, nil
}

// findLeast looks up the smallest hole; false if the cutter is not one that
// follows a file.
func findLeast(out *plan.Profile) bool {
	for _, l := range leastHole {
		if l.cut == out.Cut {
			out.LeastMm = geom.Clean(math.Max(l.times*out.ThicknessMm, l.least))
			out.LeastSource = l.source
			return true
		}
	}
	return false
}

// openings sorts what goes through the part into what is cut and what is
// marked. Groups drawn on the back are mirrored to the front.
func (r *Model) openings(out *plan.Profile) []opening {
	var cut []opening
	tooSmall := func(mm float64) string {
		if mm >= out.LeastMm-1e-9 {
			return ""
		}
		return r.W.Size(mm) + " is under the " + r.W.Size(out.LeastMm) + " that the " + out.Cut + " makes well in " + r.W.Size(out.ThicknessMm)
	}
	for i := range r.Groups {
		m := &r.Groups[i]
		why := ""
		switch {
		case !m.Through():
			why = "blind"
		case m.Hole != nil && m.Size.Thread != nil:
			why = "tapped " + m.Size.Thread.Designation
		case m.Hole != nil && m.Hole.Size.Make == parts.PlainHole && m.Size.Size.Class != "":
			why = "finished to " + m.Size.Size.Class + " after drilling"
		default:
			why = tooSmall(m.Group.FinishedMm)
		}
		if why == "blind" && m.Face == parts.Back {
			out.Notes = append(out.Notes, m.Group.Name+": blind from the back, neither cut nor marked.")
			continue
		}
		for k, q := range m.Points {
			name := fmt.Sprintf("%s %d", m.Group.Name, m.Group.First+k)
			half := plan.XY{}
			if m.Slot != nil {
				half = Clock((m.Slot.Length.Mm-m.Slot.Width.Mm)/2, m.Slot.Turn.Deg)
			}
			if m.Face == parts.Back {
				q.XMm, half.XMm = geom.Clean(-q.XMm), -half.XMm
				name += " (from the back)"
			}
			a, b := plan.XY{XMm: geom.Clean(q.XMm + half.XMm), YMm: geom.Clean(q.YMm + half.YMm)}, plan.XY{XMm: geom.Clean(q.XMm - half.XMm), YMm: geom.Clean(q.YMm - half.YMm)}
			if why != "" {
				ends := []plan.XY{a, b}
				if a == b {
					ends = ends[:1]
				}
				for _, e := range ends {
					out.Marks = append(out.Marks, plan.CutMark{Name: name, N: m.Group.First + k, AtMm: e, DrillMm: m.Group.DrillMm, Why: why})
				}
				continue
			}
			o := opening{name: name, shape: "hole", text: r.W.Dia(m.Group.FinishedMm), a: a, b: b, radius: m.Group.FinishedMm / 2}
			if m.Slot != nil {
				o.shape, o.pos = "slot", m.Slot.Pos
				o.text = r.W.Size(m.Slot.Width.Mm) + " × " + r.W.Size(m.Slot.Length.Mm)
			} else {
				o.pos = m.Hole.Pos
			}
			cut = append(cut, o)
		}
	}
	if st := r.StepNamed("bore"); st != nil {
		dia := 2*st.drawnRadius() - r.Part.Bore.Leave.Mm
		switch why := tooSmall(dia); {
		case dia <= 0 || why != "":
			out.Marks = append(out.Marks, plan.CutMark{Name: "bore", N: 0, AtMm: plan.XY{}, DrillMm: geom.Clean(math.Max(0, dia)), Why: why})
		default:
			text := r.W.Dia(dia) + " as cut"
			if r.Part.Bore.Leave.Mm > 0 {
				text += ", " + r.W.Size(r.Part.Bore.Leave.Mm) + " left for " + r.W.Dia(st.Size.NominalMm)
			}
			if r.Part.Bore.Leave.Mm == 0 && (st.Size.Press.Set() || st.Size.Thread != nil || st.Size.Limited && st.Size.MaxMm-st.Size.MinMm < cutSpreadMm) {
				out.Notes = append(out.Notes, "The bore is to be "+st.Size.Class+", finer than the cut, and nothing is left for the lathe: say bore: {leave: ...}.")
			}
			cut = append(cut, opening{name: "bore", shape: "bore", text: text, radius: dia / 2, pos: r.Part.Bore.Pos})
		}
	}
	return cut
}

// outlineAsCut is the outline with what is left on it.
func (r *Model) outlineAsCut() (*canvas.Path, string) {
	path, leave := r.OutlinePath(), r.Part.Outline.LeaveOnPart.Mm
	b := path.Bounds()
	text := r.W.Size(geom.Clean(b.X1-b.X0)) + " × " + r.W.Size(geom.Clean(b.Y1-b.Y0))
	if r.Part.Outline.Shape == parts.CircleOutline {
		text = r.W.Dia(geom.Clean(b.X1 - b.X0 + leave))
	}
	if leave == 0 {
		return path, text
	}
	moved, err := geom.Outward(path, leave/2)
	if err != nil {
		r.fault(r.Part.Outline.LeaveOnPart.Pos, "the outline cannot be left larger: "+err.Error(), "a smaller leave, or wider inside corners")
		return path, text
	}
	return moved, text + " as cut, " + r.W.Size(leave) + " left over its size"
}

// webs checks that no contour runs into another and finds the least metal
// between two.
func (r *Model) webs(out *plan.Profile, openings []opening, outline *canvas.Path) {
	edge := outline.Flatten(geom.FlatMm).Split()[0].Coords()
	take := func(o opening, other string, web float64) {
		if web <= 1e-6 {
			r.fault(o.pos, o.name+" runs into "+other+": contours must not meet", "move it, make it smaller, or draw the shape with outline: {path: ...}")
			return
		}
		if out.Web == nil || web < out.Web.WidthMm {
			out.Web = &plan.CutWeb{Between: o.name + " and " + other, WidthMm: geom.Clean(web), Ratio: geom.Clean(web / out.ThicknessMm)}
		}
	}
	for i, o := range openings {
		if !outline.Contains(o.a.XMm, o.a.YMm, canvas.NonZero) {
			r.fault(o.pos, o.name+" lies outside the outline", "move it onto the part")
			continue
		}
		near := math.Inf(1)
		if c := r.Part.Outline; c.Shape == parts.CircleOutline {
			radius := outline.Bounds().W() / 2
			near = radius - math.Max(math.Hypot(o.a.XMm, o.a.YMm), math.Hypot(o.b.XMm, o.b.YMm)) - o.radius
		} else {
			for k := range edge {
				s, t := edge[k], edge[(k+1)%len(edge)]
				near = math.Min(near, segmentDistance(o.a, o.b, plan.XY{XMm: s.X, YMm: s.Y}, plan.XY{XMm: t.X, YMm: t.Y})-o.radius)
			}
		}
		take(o, "the outline", near)
		for _, q := range openings[:i] {
			// A cheap look first: a thousand holes make half a million pairs.
			gap := geom.Distance(o.a, q.a) - geom.Distance(o.a, o.b) - geom.Distance(q.a, q.b) - o.radius - q.radius
			if out.Web != nil && gap > out.Web.WidthMm {
				continue
			}
			take(o, q.name, segmentDistance(o.a, o.b, q.a, q.b)-o.radius-q.radius)
		}
	}
}

// segmentDistance is the least distance between two straight lines ab and cd.
func segmentDistance(a, b, c, d plan.XY) float64 {
	cross := func(o, p, q plan.XY) float64 {
		return (p.XMm-o.XMm)*(q.YMm-o.YMm) - (p.YMm-o.YMm)*(q.XMm-o.XMm)
	}
	if cross(a, b, c)*cross(a, b, d) < 0 && cross(c, d, a)*cross(c, d, b) < 0 {
		return 0
	}
	return math.Min(math.Min(toSegment(a, c, d), toSegment(b, c, d)), math.Min(toSegment(c, a, b), toSegment(d, a, b)))
}

// toSegment is the distance of p from the line ab.
func toSegment(p, a, b plan.XY) float64 {
	dx, dy := b.XMm-a.XMm, b.YMm-a.YMm
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = math.Max(0, math.Min(1, ((p.XMm-a.XMm)*dx+(p.YMm-a.YMm)*dy)/l))
	}
	return geom.Distance(p, plan.XY{XMm: a.XMm + t*dx, YMm: a.YMm + t*dy})
}

// path is the contour of an opening made smaller by inMm all round.
func (o opening) path(inMm float64) *canvas.Path {
	radius := o.radius - inMm
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

// contours puts the cuts in order, inside before outside, and moves them by
// half the kerf if that is asked.
func (r *Model) contours(out *plan.Profile, openings []opening, outline *canvas.Path, outlineText string) {
	half := 0.0
	if out.Compensated {
		half = out.KerfMm / 2
	}
	add := func(name, shape, text string, p *canvas.Path) {
		c := plan.CutContour{N: len(out.Contours) + 1, Name: name, Shape: shape, SizeText: text, LengthMm: geom.Clean(geom.NewContour(p).LengthMm()), Path: plan.Contour(p.ToSVG())}
		out.Contours = append(out.Contours, c)
		out.LengthMm = geom.Clean(out.LengthMm + c.LengthMm)
	}
	for _, o := range openings {
		if o.radius <= half {
			r.fault(o.pos, o.name+" is no wider than the kerf", "a wider opening, or a cutter with a narrower kerf")
			return
		}
		add(o.name, o.shape, o.text, o.path(half))
		if s := out.Smallest; s == nil || 2*o.radius < s.SizeMm {
			out.Smallest = &plan.CutSmallest{Name: o.name, SizeMm: geom.Clean(2 * o.radius), Ratio: geom.Clean(2 * o.radius / out.ThicknessMm)}
		}
	}
	drawn := outline
	if half > 0 {
		moved, err := geom.Outward(outline, half)
		if err != nil {
			r.fault(r.Part.Outline.Pos, "the kerf cannot be allowed for: "+err.Error(), "wider inside corners, or leave the kerf to the cutter")
			return
		}
		drawn = moved
	}
	add("outline", "outline", outlineText, drawn)
	out.Pierces = len(out.Contours)
	b := drawn.Bounds()
	out.MinMm, out.MaxMm = plan.XY{XMm: geom.Clean(b.X0), YMm: geom.Clean(b.Y0)}, plan.XY{XMm: geom.Clean(b.X1), YMm: geom.Clean(b.Y1)}
}

// topLine scribes TOP from the upper edge of the part inward, on the metal.
func (r *Model) topLine(out *plan.Profile, openings []opening, outline *canvas.Path) {
	top, found := 0.0, false
	edge := outline.Flatten(geom.FlatMm).Split()[0].Coords()
	for i := range edge {
		a, b := edge[i], edge[(i+1)%len(edge)]
		if a.X < 0 == (b.X < 0) {
			continue
		}
		if y := a.Y - a.X*(b.Y-a.Y)/(b.X-a.X); !found || y > top {
			top, found = y, true
		}
	}
	if b := outline.Bounds(); r.Part.Outline.Shape == parts.CircleOutline {
		top = b.Y1
	}
	if !found || outline.Bounds().X0 > -1e-9 || outline.Bounds().X1 < 1e-9 {
		out.Notes = append(out.Notes, "No TOP line: the origin is not below the upper edge.")
		return
	}
	// Keep a millimetre off the edge, and off what is cut below.
	from := plan.XY{XMm: 0, YMm: geom.Clean(top - 1)}
	for length := topLineMm; length >= 2; length-- {
		to := plan.XY{XMm: 0, YMm: geom.Clean(from.YMm - length)}
		clear := outline.Contains(0, to.YMm, canvas.NonZero)
		for _, o := range openings {
			clear = clear && segmentDistance(from, to, o.a, o.b) > o.radius+1
		}
		if clear {
			out.TopLine = []plan.XY{from, to}
			return
		}
	}
	out.Notes = append(out.Notes, "No TOP line: there is no room for it below the upper edge.")
}

// weigh computes the blank, the area and the masses.
func (r *Model) weigh(out *plan.Profile, openings []opening, outline *canvas.Path) {
	b := outline.Bounds()
	out.BlankXMm, out.BlankYMm = geom.Clean(b.X1-b.X0), geom.Clean(b.Y1-b.Y0)
	area := math.Abs(geom.NewContour(outline).AreaMm2())
	for _, o := range openings {
		area -= math.Pi*o.radius*o.radius + 2*o.radius*geom.Distance(o.a, o.b)
	}
	out.AreaMm2 = geom.Clean(area)
	if r.Out.Material == "" {
		out.Notes = append(out.Notes, "No material is given: masses are left out.")
		return
	}
	g, err := material.Find(r.Out.Material)
	if err != nil {
		out.Notes = append(out.Notes, "Material "+r.Out.Material+" has no density here: masses are left out.")
		return
	}
	out.NetKg = geom.Clean(area * out.ThicknessMm * 1e-9 * g.DensityKgM3)
	out.GrossKg = geom.Clean(out.BlankXMm * out.BlankYMm * out.ThicknessMm * 1e-9 * g.DensityKgM3)
}
