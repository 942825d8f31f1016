package layout

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
func (r *resolver) holeSize(h parts.HoleSize) made {
	if h.Make == parts.PlainHole {
		s := r.sizeOf(h.Size)
		m := made{size: s, drillMm: s.nominalMm, finishedMm: s.nominalMm, text: r.w.Drill(s.nominalMm)}
		if way := r.holeWay(m, false, 0); s.limited && s.fitted() && len(way.Drills) > 0 {
			m.drillMm = clean(way.Drills[len(way.Drills)-1].Size.DiaMm)
			m.text = r.w.Dia(s.nominalMm) + " " + s.class + ", drill " + r.w.Drill(m.drillMm) + finishWord(way.Finish)
		}
		return m
	}
	t, err := threads.Parse(h.Thread)
	if err != nil {
		r.fault(h.Pos, "thread "+h.Thread+" is not known", plain(err))
		return made{}
	}
	if h.Make == parts.ClearanceHole {
		d, err := t.ClearanceMm(h.Series)
		if err != nil {
			r.fault(h.Pos, "no clearance hole for "+t.Designation, plain(err))
			return made{}
		}
		return made{
			drillMm: d, finishedMm: d, size: sized{nominalMm: d, minMm: d, maxMm: d, class: "", source: clearanceSource(t)},
			text: r.w.Drill(d) + " for " + t.Designation,
		}
	}
	if t.TapDrillMm == 0 {
		r.fault(h.Pos, "thread "+t.Designation+" is an outside thread and cannot be tapped", "Rc or Rp for an inside pipe thread")
		return made{}
	}
	tap, err := cutting.TapDrill(t, r.drills())
	if err != nil {
		r.fault(h.Pos, "thread "+t.Designation+" cannot be tapped", plain(err))
		return made{}
	}
	drill := r.w.Drill(tap.DiaMm)
	if _, number := strconv.Atoi(tap.Name[:1]); r.drills() == cutting.Inch {
		drill = tap.Name
		if !strings.HasSuffix(drill, " in") && number != nil { // a number or letter drill
			drill += " (" + words.Trim(tap.DiaMm/words.MmPerInch, 3) + " in)"
		}
	}
	return made{
		thread: &t, drillMm: clean(tap.DiaMm), finishedMm: t.MajorMm,
		size: sized{nominalMm: t.MajorMm, minMm: t.MajorMm, maxMm: t.MajorMm, class: t.Designation, source: t.Source, thread: &t},
		text: t.Designation + " tap, drill " + drill,
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
func (r *resolver) depthText(m made, through bool, depth parts.Length) string {
	if through {
		return "through"
	}
	if m.thread != nil {
		if drill, err := m.thread.BlindDrillMm(depth.Mm); err == nil {
			return "thread " + r.w.Size(depth.Mm) + " deep, drill " + r.w.Size(drill) + " deep"
		}
	}
	return r.w.Size(depth.Mm) + " deep"
}

// faces lays out the front and the back, where something is marked there.
func (r *resolver) faces() {
	r.holeGroups()
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		for _, m := range r.made {
			if m.face == f {
				r.out.Faces = append(r.out.Faces, r.face(f, false))
				break
			}
		}
	}
}

// holeGroups works out every hole and slot group, front face first.
func (r *resolver) holeGroups() {
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		edges := geom.Bounds(r.outlinePath())
		if f == parts.Back {
			edges = edges.Mirrored()
		}
		next := 1
		for i := range r.part.Holes {
			h := &r.part.Holes[i]
			if h.Face != f {
				continue
			}
			m := r.holeSize(h.Size)
			pts := h.Pattern.Shape.Places(edges)
			r.onMetal(h.Pattern, f, pts)
			g := &plan.Group{
				Name: h.Name.Value, First: next, Count: len(pts), SizeText: m.text, Marked: f,
				DepthText: r.depthText(m, h.Through, h.Depth), PCDMm: h.Pattern.PCD.Mm,
				DrillMm: m.drillMm, FinishedMm: m.finishedMm,
				Chords: chords(h.Pattern.Shape, pts, next, m.drillMm), Extra: r.extra(h),
			}
			if m.thread != nil {
				g.Thread = m.thread.Designation
			}
			r.made = append(r.made, madeGroup{hole: h, group: g, size: m, face: f, pts: pts})
			next += len(pts)
		}
		for i := range r.part.Slots {
			s := &r.part.Slots[i]
			if s.Face != f {
				continue
			}
			pts := s.Pattern.Shape.Places(edges)
			r.onMetal(s.Pattern, f, pts)
			g := &plan.Group{
				Name: s.Name.Value, First: next, Count: len(pts), Marked: f,
				SizeText:  "slot " + r.w.Size(s.Width.Mm) + " × " + r.w.Size(s.Length.Mm) + " overall",
				DepthText: r.depthText(made{}, s.Through, s.Depth),
				DrillMm:   s.Width.Mm, FinishedMm: s.Width.Mm,
			}
			r.made = append(r.made, madeGroup{slot: s, group: g, face: f, pts: pts,
				size: made{drillMm: s.Width.Mm, finishedMm: s.Width.Mm, text: g.SizeText}})
			next += len(pts)
		}
	}
}

// extra is what is done at the mouth of a hole, and its note.
func (r *resolver) extra(h *parts.HoleGroup) string {
	var bore, sink string
	if c := h.Counterbore; c != nil {
		bore = "counterbore " + r.w.Dia(c.Diameter.Mm) + " × " + r.w.Size(c.Depth.Mm) + " deep"
	}
	if c := h.Countersink; c != nil {
		sink = "countersink " + r.w.Dia(c.Diameter.Mm) + " × " + words.Trim(c.Angle.Deg, 1) + "°"
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
		r := &resolver{job: job, part: p, w: words.Writer{Units: job.Units}, out: &plan.PartPlan{Title: p.Title.Value}}
		r.cylinders()
		r.holeGroups()
		if len(r.errs) > 0 {
			return nil, r.errs
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
func (r *resolver) face(f parts.Face, others bool) *plan.Face {
	path := r.outlinePath()
	if f == parts.Back {
		path = mirrored(path)
	}
	b := geom.Bounds(path)
	out := &plan.Face{
		Part: r.out.Title, Face: f, Outline: plan.Contour(path.ToSVG()),
		MinMm: b.Min, MaxMm: b.Max,
		Datum: "left and bottom edge", Mirrored: f == parts.Back,
	}
	out.DatumAt = out.MinMm
	out.Round = r.part.Profile != nil || r.part.Outline.Shape == parts.CircleOutline
	for _, m := range r.made {
		if d := m.pattern().Datum; m.face == f && d != "" && d != "centre" {
			out.DatumAt, _, _ = geom.Corner(d, b)
			out.Datum, out.Round = datumWords(d), false
			break
		}
	}
	outside, inside := r.sides()
	for _, s := range append(outside, inside...) {
		if !s.inside && s == r.widest() {
			continue // it is the outline
		}
		if r.seenFrom(s, f) {
			out.Circles = append(out.Circles, plan.Circle{Label: r.w.Dia(s.size.nominalMm) + " " + s.name, DiameterMm: s.size.nominalMm})
		}
	}
	offset := 0
	for _, m := range r.made {
		switch {
		case m.face == f:
			r.addGroup(out, m, m.pts, 0)
			offset = max(offset, m.group.First+m.group.Count-1)
		case others && m.through():
			pts := make([]plan.XY, len(m.pts))
			for i, q := range m.pts {
				pts[i] = q.Mirrored()
			}
			r.addGroup(out, m, pts, offset)
		case m.through():
			for _, q := range m.pts {
				out.Circles = append(out.Circles, plan.Circle{
					Label: m.group.Name + " from the " + string(m.face), DiameterMm: m.group.DrillMm, CentreMm: q.Mirrored(),
				})
			}
		}
	}
	return out
}

func (m *madeGroup) pattern() parts.Pattern {
	if m.hole != nil {
		return m.hole.Pattern
	}
	return m.slot.Pattern
}

func (m *madeGroup) through() bool {
	if m.hole != nil {
		return m.hole.Through
	}
	return m.slot.Through
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
func (r *resolver) seenFrom(s *step, f parts.Face) bool {
	for i := range r.steps {
		o := &r.steps[i]
		if o == s || o.inside != s.inside {
			continue
		}
		nearer := o.fromMm < s.fromMm
		if f == parts.Back {
			nearer = o.fromMm > s.fromMm
		}
		hides := o.size.nominalMm >= s.size.nominalMm
		if s.inside {
			hides = o.size.nominalMm <= s.size.nominalMm
		}
		if nearer && hides {
			return false
		}
	}
	if s.inside && f == parts.Back {
		// A blind bore does not show on the back.
		_, inside := r.sides()
		return inside[len(inside)-1].toMm >= r.lengthMm()-1e-9
	}
	return true
}

// addGroup puts a group on a face; offset shifts its numbers past those of the
// face's own groups.
func (r *resolver) addGroup(out *plan.Face, m madeGroup, pts []plan.XY, offset int) {
	g := *m.group
	g.First += offset
	if offset > 0 {
		g.Chords = nil
		for _, c := range m.group.Chords {
			c.From += offset
			c.To += offset
			g.Chords = append(g.Chords, c)
		}
	}
	out.Groups = append(out.Groups, g)
	pattern := m.pattern()
	if pattern.PCD.Mm > 0 {
		c := plan.Circle{Label: "PCD " + r.w.Size(pattern.PCD.Mm), DiameterMm: pattern.PCD.Mm, Pitch: true}
		if !slices.Contains(out.Circles, c) { // two groups may share a pitch circle
			out.Circles = append(out.Circles, c)
		}
	}
	for i, q := range pts {
		if m.slot != nil {
			turn := m.slot.Turn.Deg
			if m.face != out.Face {
				turn = -turn
			}
			half := Clock((m.slot.Length.Mm-m.slot.Width.Mm)/2, turn)
			out.Slots = append(out.Slots, plan.Slot{
				N: g.First + i, Group: g.Name, XMm: q.XMm, YMm: q.YMm,
				WidthMm: m.slot.Width.Mm, LengthMm: m.slot.Length.Mm, TurnDeg: turn,
				EndsMm: [2]plan.XY{{XMm: clean(q.XMm + half.XMm), YMm: clean(q.YMm + half.YMm)}, {XMm: clean(q.XMm - half.XMm), YMm: clean(q.YMm - half.YMm)}},
			})
			continue
		}
		out.Holes = append(out.Holes, plan.Hole{
			N: g.First + i, Group: g.Name, XMm: q.XMm, YMm: q.YMm,
			AngleDeg: geom.ClockDeg(q), RadiusMm: clean(canvas.Point{X: q.XMm, Y: q.YMm}.Length()),
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
		return clean(v - at)
	}
	return clean(at - v)
}
