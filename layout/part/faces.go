package part

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// holeSize works out a hole: the drill, the finished size and the words.
func (r *Model) holeSize(h parts.HoleSize) Made {
	if h.Make == parts.PlainHole {
		s := r.sizeOf(h.Size)
		m := Made{Size: s, DrillMm: s.NominalMm, FinishedMm: s.NominalMm, Text: r.W.Drill(s.NominalMm)}
		if way := r.holeWay(m, false, 0); s.Limited && s.Fitted() && len(way.Drills) > 0 {
			m.DrillMm = geom.Clean(way.Drills[len(way.Drills)-1].Size.DiaMm)
			m.Text = r.W.Dia(s.NominalMm) + " " + s.Class + ", drill " + r.W.Drill(m.DrillMm) + finishWord(way.Finish)
		}
		return m
	}
	t, err := threads.Parse(h.Thread)
	if err != nil {
		r.fault(h.Pos, "thread "+h.Thread+" is not known", Plain(err))
		return Made{}
	}
	if h.Make == parts.ClearanceHole {
		d, err := t.ClearanceMm(h.Series)
		if err != nil {
			r.fault(h.Pos, "no clearance hole for "+t.Designation, Plain(err))
			return Made{}
		}
		return Made{
			DrillMm: d, FinishedMm: d, Size: Sized{NominalMm: d, MinMm: d, MaxMm: d, Class: "", Source: clearanceSource(t)},
			Text: r.W.Drill(d) + " for " + t.Designation,
		}
	}
	if t.TapDrillMm == 0 {
		r.fault(h.Pos, "thread "+t.Designation+" is an outside thread and cannot be tapped", "Rc or Rp for an inside pipe thread")
		return Made{}
	}
	tap, err := cutting.TapDrill(t, r.drills())
	if err != nil {
		r.fault(h.Pos, "thread "+t.Designation+" cannot be tapped", Plain(err))
		return Made{}
	}
	drill := r.W.Drill(tap.DiaMm)
	if _, number := strconv.Atoi(tap.Name[:1]); r.drills() == cutting.Inch {
		drill = tap.Name
		if !strings.HasSuffix(drill, " in") && number != nil { // a number or letter drill
			drill += " (" + words.Trim(tap.DiaMm/words.MmPerInch, 3) + " in)"
		}
	}
	return Made{
		Thread: &t, DrillMm: geom.Clean(tap.DiaMm), FinishedMm: t.MajorMm,
		Size: Sized{NominalMm: t.MajorMm, MinMm: t.MajorMm, MaxMm: t.MajorMm, Class: t.Designation, Source: t.Source, Thread: &t},
		Text: t.Designation + " tap, drill " + drill,
	}
}

// finishWord is what follows the drill in a hole's text.
func finishWord(f cutting.Finish) string {
	switch f {
	case cutting.Reamed, cutting.AdjustReamed:
		return ", ream"
	case cutting.Bored:
		return ", bore"
	}
	return ""
}

func clearanceSource(t threads.Thread) string {
	if t.TPI > 0 {
		return "ASME B18.2.8"
	}
	return "ISO 273"
}

// depthText is how deep to go, and for a blind tapped hole how deep to drill.
func (r *Model) depthText(m Made, through bool, depth parts.Length) string {
	if through {
		return "through"
	}
	if m.Thread != nil {
		if drill, err := m.Thread.BlindDrillMm(depth.Mm); err == nil {
			return "thread " + r.W.Size(depth.Mm) + " deep, drill " + r.W.Size(drill) + " deep"
		}
	}
	return r.W.Size(depth.Mm) + " deep"
}

// faces lays out the front and the back, where something is marked there.
func (r *Model) faces() {
	r.holeGroups()
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		for _, m := range r.Groups {
			if m.Face == f {
				r.Out.Faces = append(r.Out.Faces, r.face(f, false))
				break
			}
		}
	}
}

// holeGroups works out every hole and slot group, front face first.
func (r *Model) holeGroups() {
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		edges := geom.Bounds(r.OutlinePath())
		if f == parts.Back {
			edges = edges.Mirrored()
		}
		next := 1
		for i := range r.Part.Holes {
			h := &r.Part.Holes[i]
			if h.Face != f {
				continue
			}
			m := r.holeSize(h.Size)
			pts := h.Pattern.Shape.Places(edges)
			r.onMetal(h.Pattern, f, pts)
			g := &plan.Group{
				Name: h.Name.Value, First: next, Count: len(pts), SizeText: m.Text, Marked: f,
				DepthText: r.depthText(m, h.Through, h.Depth), PCDMm: h.Pattern.PCD.Mm,
				DrillMm: m.DrillMm, FinishedMm: m.FinishedMm,
				Chords: chords(h.Pattern.Shape, pts, next, m.DrillMm), Extra: r.extra(h),
			}
			if m.Thread != nil {
				g.Thread = m.Thread.Designation
			}
			r.Groups = append(r.Groups, Group{Hole: h, Group: g, Size: m, Face: f, Points: pts})
			next += len(pts)
		}
		for i := range r.Part.Slots {
			s := &r.Part.Slots[i]
			if s.Face != f {
				continue
			}
			pts := s.Pattern.Shape.Places(edges)
			r.onMetal(s.Pattern, f, pts)
			g := &plan.Group{
				Name: s.Name.Value, First: next, Count: len(pts), Marked: f,
				SizeText:  "slot " + r.W.Size(s.Width.Mm) + " × " + r.W.Size(s.Length.Mm) + " overall",
				DepthText: r.depthText(Made{}, s.Through, s.Depth),
				DrillMm:   s.Width.Mm, FinishedMm: s.Width.Mm,
			}
			r.Groups = append(r.Groups, Group{Slot: s, Group: g, Face: f, Points: pts,
				Size: Made{DrillMm: s.Width.Mm, FinishedMm: s.Width.Mm, Text: g.SizeText}})
			next += len(pts)
		}
	}
}

// extra is what is done at the mouth of a hole, and its note.
func (r *Model) extra(h *parts.HoleGroup) string {
	var bore, sink string
	if c := h.Counterbore; c != nil {
		bore = "counterbore " + r.W.Dia(c.Diameter.Mm) + " × " + r.W.Size(c.Depth.Mm) + " deep"
	}
	if c := h.Countersink; c != nil {
		sink = "countersink " + r.W.Dia(c.Diameter.Mm) + " × " + words.Trim(c.Angle.Deg, 1) + "°"
	}
	return words.Join("; ", bore, sink, h.Note.Value)
}

// FaceView is a face of a part as seen by who looks at it, with every hole
// that shows there: those marked on it, and, mirrored in x, the through holes
// marked on the other face. It returns nil for a part without holes there.
// Numbers stay with the hole, so that they run anticlockwise on a mirrored
// circle.
func FaceView(job *parts.Job, part string, face parts.Face) (*plan.Face, error) {
	for _, p := range job.Parts {
		if p.Name.Value != part {
			continue
		}
		r := &Model{Job: job, Part: p, W: words.Writer{Units: job.Units}, Out: &plan.PartPlan{Title: p.Title.Value}}
		r.cylinders()
		r.holeGroups()
		if len(r.Errs) > 0 {
			return nil, r.Errs
		}
		f := r.face(face, true)
		if len(f.Groups) == 0 {
			return nil, nil
		}
		return f, nil
	}
	return nil, fmt.Errorf("no part %s in the job", part)
}

// face is the view of one face with the groups marked on it; with others, also
// the through holes of the other face, to punch from here.
func (r *Model) face(f parts.Face, others bool) *plan.Face {
	path := r.OutlinePath()
	if f == parts.Back {
		path = mirrored(path)
	}
	b := geom.Bounds(path)
	out := &plan.Face{
		Part: r.Out.Title, Face: f, Outline: plan.Contour(path.ToSVG()),
		MinMm: b.Min, MaxMm: b.Max,
		Datum: "left and bottom edge", Mirrored: f == parts.Back,
	}
	out.DatumAt = out.MinMm
	out.Round = r.Part.Profile != nil || r.Part.Outline.Shape == parts.CircleOutline
	for _, m := range r.Groups {
		if d := m.Pattern().Datum; m.Face == f && d != "" && d != "centre" {
			out.DatumAt, _, _ = geom.Corner(d, b)
			out.Datum, out.Round = datumWords(d), false
			break
		}
	}
	outside, inside := r.Sides()
	for _, s := range append(outside, inside...) {
		if !s.Inside && s == r.widest() {
			continue // it is the outline
		}
		if r.seenFrom(s, f) {
			out.Circles = append(out.Circles, plan.Circle{Label: r.W.Dia(s.Size.NominalMm) + " " + s.Name, DiameterMm: s.Size.NominalMm})
		}
	}
	offset := 0
	for _, m := range r.Groups {
		switch {
		case m.Face == f:
			r.addGroup(out, m, m.Points, 0)
			offset = max(offset, m.Group.First+m.Group.Count-1)
		case others && m.Through():
			pts := make([]plan.XY, len(m.Points))
			for i, q := range m.Points {
				pts[i] = q.Mirrored()
			}
			r.addGroup(out, m, pts, offset)
		case m.Through():
			for _, q := range m.Points {
				out.Circles = append(out.Circles, plan.Circle{
					Label: m.Group.Name + " from the " + string(m.Face), DiameterMm: m.Group.DrillMm, CentreMm: q.Mirrored(),
				})
			}
		}
	}
	return out
}

func (m *Group) Pattern() parts.Pattern {
	if m.Hole != nil {
		return m.Hole.Pattern
	}
	return m.Slot.Pattern
}

func (m *Group) Through() bool {
	if m.Hole != nil {
		return m.Hole.Through
	}
	return m.Slot.Through
}

func datumWords(datum string) string {
	switch datum {
	case "left-top":
		return "left and top edge"
	case "right-bottom":
		return "right and bottom edge"
	case "right-top":
		return "right and top edge"
	}
	return "left and bottom edge"
}

// seenFrom tells whether a step's circle shows on a face: the outermost step
// there, and every step that is not hidden behind a larger one.
func (r *Model) seenFrom(s *Step, f parts.Face) bool {
	for i := range r.Steps {
		o := &r.Steps[i]
		if o == s || o.Inside != s.Inside {
			continue
		}
		nearer := o.FromMm < s.FromMm
		if f == parts.Back {
			nearer = o.FromMm > s.FromMm
		}
		hides := o.Size.NominalMm >= s.Size.NominalMm
		if s.Inside {
			hides = o.Size.NominalMm <= s.Size.NominalMm
		}
		if nearer && hides {
			return false
		}
	}
	if s.Inside && f == parts.Back {
		// A blind bore does not show on the back.
		_, inside := r.Sides()
		return inside[len(inside)-1].ToMm >= r.LengthMm()-1e-9
	}
	return true
}

// addGroup puts a group on a face; offset shifts its numbers past those of the
// face's own groups.
func (r *Model) addGroup(out *plan.Face, m Group, pts []plan.XY, offset int) {
	g := *m.Group
	g.First += offset
	if offset > 0 {
		g.Chords = nil
		for _, c := range m.Group.Chords {
			c.From += offset
			c.To += offset
			g.Chords = append(g.Chords, c)
		}
	}
	out.Groups = append(out.Groups, g)
	pattern := m.Pattern()
	if pattern.PCD.Mm > 0 {
		c := plan.Circle{Label: "PCD " + r.W.Size(pattern.PCD.Mm), DiameterMm: pattern.PCD.Mm, Pitch: true}
		if !slices.Contains(out.Circles, c) { // two groups may share a pitch circle
			out.Circles = append(out.Circles, c)
		}
	}
	for i, q := range pts {
		if m.Slot != nil {
			turn := m.Slot.Turn.Deg
			if m.Face != out.Face {
				turn = -turn
			}
			half := Clock((m.Slot.Length.Mm-m.Slot.Width.Mm)/2, turn)
			out.Slots = append(out.Slots, plan.Slot{
				N: g.First + i, Group: g.Name, XMm: q.XMm, YMm: q.YMm,
				WidthMm: m.Slot.Width.Mm, LengthMm: m.Slot.Length.Mm, TurnDeg: turn,
				EndsMm: [2]plan.XY{{XMm: geom.Clean(q.XMm + half.XMm), YMm: geom.Clean(q.YMm + half.YMm)}, {XMm: geom.Clean(q.XMm - half.XMm), YMm: geom.Clean(q.YMm - half.YMm)}},
			})
			continue
		}
		out.Holes = append(out.Holes, plan.Hole{
			N: g.First + i, Group: g.Name, XMm: q.XMm, YMm: q.YMm,
			AngleDeg: geom.ClockDeg(q), RadiusMm: geom.Clean(canvas.Point{X: q.XMm, Y: q.YMm}.Length()),
			FromXMm:    inward(q.XMm, out.DatumAt.XMm, out.MinMm.XMm),
			FromYMm:    inward(q.YMm, out.DatumAt.YMm, out.MinMm.YMm),
			DiameterMm: g.DrillMm,
		})
	}
}

// inward is the distance from a datum edge at at, which lies either at min or
// at the other end.
func inward(v, at, min float64) float64 {
	if at == min {
		return geom.Clean(v - at)
	}
	return geom.Clean(at - v)
}
