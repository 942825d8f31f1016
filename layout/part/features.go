package part

import (
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// features numbers what the picture and the operations talk about: outsides,
// insides, length, chamfers, undercuts, then holes, slots and radials.
func (r *Model) features() {
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.Name == "outline" || s.Name == "bore" || r.Part.Profile != nil {
			z := geom.Clean((s.FromMm + s.ToMm) / 2)
			note := words.Join("; ", s.Seat, s.Finish)
			if s.Undercut != nil {
				note = words.Join("; ", note, "undercut "+r.W.Size(s.Undercut.Width.Mm)+" wide × "+r.W.Size(s.Undercut.Depth.Mm)+" deep")
			}
			size := r.sizeText(s)
			if r.Part.Profile != nil {
				size += " × " + r.W.Size(geom.Clean(s.ToMm-s.FromMm)) + " long"
			}
			s.Ref = r.add(plan.Feature{Name: words.Spaced(s.Name), Size: size, Limits: r.limitsText(s.Size), Note: note, Balloon: plan.XY{XMm: z, YMm: s.drawnRadius()}})
		}
	}
	length := "length"
	if r.Part.Outline != nil {
		length = "thickness"
		if r.Part.Outline.Shape != parts.CircleOutline {
			b := r.OutlinePath().Bounds()
			r.add(plan.Feature{Name: "outline", Size: r.W.Size(geom.Clean(b.W())) + " × " + r.W.Size(geom.Clean(b.H())) + r.outlineWords(),
				Note: "edges by the job's general tolerance", Balloon: plan.XY{XMm: r.LengthMm() / 2, YMm: r.Out.Section.MaxMm}})
		}
	}
	if f := r.Part.Frustum; f != nil {
		length = "height"
		r.frustumFeatures(f)
	}
	if t := r.Part.Transition; t != nil {
		length = "height"
		r.transitionFeatures(t)
	}
	sized := r.length(r.LengthMm())
	f := plan.Feature{Name: length, Size: r.W.Size(r.LengthMm()), Limits: r.limitsText(sized), Balloon: plan.XY{XMm: r.LengthMm(), YMm: r.Out.Section.MaxMm * 0.9}}
	if r.Part.Outline != nil && r.Part.Stock.Form != "" {
		f.Limits, f.Note = "", "as the plate is bought"
	}
	r.add(f)
	for _, c := range r.Part.Chamfers {
		st, dia := r.chamferDiaMm(c)
		size := r.W.Size(c.Size.Mm) + " × " + words.Trim(c.Angle.Deg, 1) + "°"
		at := plan.XY{XMm: r.LengthMm() / 2, YMm: r.Out.Section.MaxMm}
		if st != nil {
			size += ": Ø" + r.W.Read(dia) + " at the face"
			at = plan.XY{XMm: st.FromMm, YMm: st.drawnRadius()}
			if strings.HasSuffix(c.Edge.Value, "-back") {
				at.XMm = st.ToMm
			}
		}
		note := ""
		if c.For != "" {
			note = "for " + c.For
		}
		r.add(plan.Feature{Name: "chamfer " + words.Spaced(c.Edge.Value), Size: size, Note: note, Balloon: at})
	}
	for i := range r.Groups {
		m := &r.Groups[i]
		m.Ref = r.add(plan.Feature{
			Name: words.Spaced(m.Group.Name), Size: words.CountOf(m.Group.Count) + m.Group.SizeText + ", " + m.Group.DepthText,
			Limits: r.limitsText(m.Size.Size), Note: words.Join("; ", r.patternWords(m), m.Group.Extra), Face: m.Face, Balloon: m.Points[0],
		})
	}
	for i := range r.Radials {
		m := &r.Radials[i]
		row := m.Rows[0]
		m.Ref = r.add(plan.Feature{
			Name: words.Spaced(row.Name), Size: words.CountOf(len(m.Rows)) + row.SizeText + ", " + row.DepthText,
			Note: "clock " + clockList(m.Rows) + ", " + r.W.Size(row.AxialMm) + " from the front face", Balloon: plan.XY{XMm: row.AxialMm, YMm: row.OutsideMm / 2},
		})
	}
	r.saddleFeatures()
}

// add numbers a feature from 1 and returns the number.
func (r *Model) add(f plan.Feature) int {
	f.N = len(r.Out.Features) + 1
	r.Out.Features = append(r.Out.Features, f)
	return f.N
}

func (r *Model) frustumFeatures(f *parts.Frustum) {
	at := "outside"
	if f.Inside {
		at = "inside"
	}
	r.add(plan.Feature{Name: "large end", Size: r.W.Dia(f.Large.Mm) + " " + at, Limits: r.limitsText(r.length(f.Large.Mm)), Balloon: plan.XY{XMm: 0, YMm: r.Out.Section.MaxMm}})
	r.add(plan.Feature{Name: "small end", Size: r.W.Dia(f.Small.Mm) + " " + at, Limits: r.limitsText(r.length(f.Small.Mm)), Balloon: plan.XY{XMm: f.Height.Mm, YMm: r.Out.Section.Outer[1].YMm}})
	size := "clock " + words.Trim(f.Seam.Deg, 2) + "°"
	if f.Overlap.Mm > 0 {
		size += ", overlap " + r.W.Size(f.Overlap.Mm)
	}
	r.add(plan.Feature{Name: "seam", Size: size, Balloon: plan.XY{XMm: f.Height.Mm / 2, YMm: (r.Out.Section.Outer[0].YMm + r.Out.Section.Outer[1].YMm) / 2}})
}

// sizeText is a diameter with its class: "Ø90 H7", "M40x1.5".
func (r *Model) sizeText(s *Step) string {
	if s.Size.Thread != nil {
		t := s.Size.Thread.Designation + " thread"
		if s.Inside && s.Size.Thread.TapDrillMm > 0 {
			t += ", bore " + r.W.Dia(s.Size.Thread.TapDrillMm) + " first"
		}
		return t
	}
	t := r.W.Dia(s.Size.NominalMm)
	switch s.Size.Class {
	case "", "limits":
		return t
	case "light press":
		return t + " light press on " + s.Size.Press.Part + " " + words.Spaced(s.Size.Press.Feature)
	}
	return t + " " + s.Size.Class
}

func (r *Model) outlineWords() string {
	o := r.Part.Outline
	switch {
	case o.Corner.Mm > 0:
		return ", corners R" + r.W.Size(o.Corner.Mm)
	case o.Shape == parts.SlotOutline:
		return ", round ends"
	case o.Shape == parts.PolygonOutline && o.Sides > 0:
		return ", " + words.Trim(float64(o.Sides), 0) + " sides, " + r.W.Size(o.Width.Mm) + " across flats"
	}
	return ""
}

// patternWords says where the holes are: "PCD 140, first at 30°".
func (r *Model) patternWords(m *Group) string {
	p := m.Pattern()
	face := string(m.Face) + " face"
	switch shape := p.Shape.(type) {
	case geom.Ring, geom.Arc, geom.Angles:
		return "PCD " + r.W.Size(p.PCD.Mm) + ", hole " + words.Trim(float64(m.Group.First), 0) + " at " + words.Trim(geom.ClockDeg(m.Points[0]), 3) + "°, " + face
	case geom.Grid:
		return r.gridWords(shape) + ", " + face
	case geom.Staggered:
		return r.gridWords(geom.Grid(shape)) + ", every second row one less and half a pitch in, " + face
	}
	return "see the hole table, " + face
}

// gridWords says "3 × 2 at 40 × 30".
func (r *Model) gridWords(g geom.Grid) string {
	return words.Trim(float64(g.Columns), 0) + " × " + words.Trim(float64(g.Rows), 0) + " at " + r.W.Size(g.PitchXMm) + " × " + r.W.Size(g.PitchYMm)
}

func clockList(rows []plan.RadialRow) string {
	var t []string
	for i, row := range rows {
		if i == 8 {
			t = append(t, "…")
			break
		}
		t = append(t, words.Trim(row.ClockDeg, 3)+"°")
	}
	return strings.Join(t, ", ")
}

// ladder reads the bore from the measured counterpart.
func (r *Model) ladder(s *Step, mateMm float64) plan.Ladder {
	l := plan.Ladder{
		Feature: words.Spaced(s.Name), Counterpart: s.Size.Press.Part + " " + words.Spaced(s.Size.Press.Feature),
		Note: "Measure the counterpart at three places across; take the largest. Bore " + r.W.Size(0.01) + " to " + r.W.Said(0.03) + " under it (common practice, no source).",
	}
	rungs, err := fits.LightPressLadder(mateMm, 0.6, 0.05)
	if err != nil {
		r.fault(s.Size.Press.Pos, "no light press for "+r.W.Dia(mateMm), Plain(err))
		return l
	}
	for _, g := range rungs {
		l.Rungs = append(l.Rungs, plan.Rung{
			MeasuredMm: g.MeasuredMm, BoreMinMm: g.BoreMinMm, BoreMaxMm: g.BoreMaxMm,
			Measured: r.W.Exact(g.MeasuredMm), Bore: r.W.Exact(g.BoreMinMm) + " – " + r.W.Exact(g.BoreMaxMm),
		})
	}
	return l
}

// checks lists what is measured before the part leaves the bench.
func (r *Model) checks() {
	for i := range r.Steps {
		s := &r.Steps[i]
		c := plan.Check{Ref: s.Ref, What: words.Spaced(s.Name), Wanted: r.sizeText(s), Limits: r.limitsText(s.Size), Source: s.Size.Source, Gauge: gauge(s)}
		switch {
		case s.Size.Thread != nil:
			c.Limits = "counterpart runs freely, no shake"
		case s.Size.Limited:
			c.MinMm, c.MaxMm = s.Size.MinMm, s.Size.MaxMm
		case c.Limits == "":
			c.Limits = "no tolerance given"
			if c.Source == "tube as bought" {
				c.Limits = "as bought: write the measured size"
			}
		}
		r.Out.Checks = append(r.Out.Checks, c)
		if r.Part.Profile != nil && geom.Clean(s.ToMm-s.FromMm) != geom.Clean(r.LengthMm()) {
			r.checkLength(s.Ref, words.Spaced(s.Name)+" length", s.ToMm-s.FromMm)
		}
	}
	for _, f := range r.Out.Features {
		switch f.Name {
		case "length", "height":
			r.checkLength(f.N, f.Name, r.LengthMm())
		case "thickness", "outline", "large end", "small end", "rectangle", "round end":
			if r.StepNamed(f.Name) == nil {
				r.Out.Checks = append(r.Out.Checks, plan.Check{Ref: f.N, What: f.Name, Wanted: f.Size, Limits: words.OrNone(f.Limits), Gauge: "tape or calipers", Source: r.generalSource(f.Limits)})
			}
		}
	}
	for i := range r.Part.Chamfers {
		c := &r.Part.Chamfers[i]
		if st, dia := r.chamferDiaMm(*c); st != nil {
			check := plan.Check{Ref: r.refs("chamfer " + words.Spaced(c.Edge.Value))[0], What: "chamfer " + words.Spaced(c.Edge.Value), Wanted: "Ø" + r.W.Read(dia) + " at the face", Limits: "no tolerance given", Gauge: "calipers"}
			if pm, err := fits.GeneralChamfer(c.Size.Mm, r.Job.Tolerance.Value); err == nil {
				check.Limits = "depth " + r.W.Limits(c.Size.Mm-pm, c.Size.Mm+pm)
				check.Source = "ISO 2768-" + r.Job.Tolerance.Value + " (chamfers)"
			}
			r.Out.Checks = append(r.Out.Checks, check)
		}
	}
	for i := range r.Groups {
		r.checkGroup(&r.Groups[i])
	}
	for i := range r.Radials {
		m := &r.Radials[i]
		for _, row := range m.Rows {
			s := r.length(row.AxialMm)
			r.Out.Checks = append(r.Out.Checks, plan.Check{
				Ref: m.Ref, What: words.Spaced(row.Name) + " at " + words.Trim(row.ClockDeg, 3) + "°", Wanted: r.W.Size(row.AxialMm) + " from the front face",
				Limits: words.OrNone(r.limitsText(s)), MinMm: s.MinMm, MaxMm: s.MaxMm, Gauge: "calipers, depth rod", Source: s.Source,
			})
		}
	}
	r.saddleChecks()
	if r.Out.Top != "" {
		r.Out.Checks = append(r.Out.Checks, plan.Check{What: "TOP marked", Wanted: r.Out.Top, Limits: "seen from the " + r.topFace() + " face", Gauge: "eye"})
	}
}

func (r *Model) topFace() string {
	if len(r.Out.Faces) > 0 {
		return string(r.Out.Faces[0].Face)
	}
	return string(parts.Front)
}

func (r *Model) generalSource(limits string) string {
	if limits == "" || r.Job.Tolerance.Value == "" {
		return ""
	}
	return "ISO 2768-" + r.Job.Tolerance.Value
}

func (r *Model) checkLength(ref int, what string, mm float64) {
	s := r.length(geom.Clean(mm))
	c := plan.Check{Ref: ref, What: what, Wanted: r.W.Size(geom.Clean(mm)), Limits: words.OrNone(r.limitsText(s)), Gauge: "calipers", Source: s.Source}
	if s.Limited {
		c.MinMm, c.MaxMm = s.MinMm, s.MaxMm
	}
	r.Out.Checks = append(r.Out.Checks, c)
}

// checkGroup checks a hole group's size and, over pins, its spacing.
func (r *Model) checkGroup(m *Group) {
	c := plan.Check{Ref: m.Ref, What: words.Spaced(m.Group.Name), Wanted: words.CountOf(m.Group.Count) + m.Group.SizeText, Gauge: "calipers or drill shank", Source: m.Size.Size.Source}
	switch {
	case m.Size.Thread != nil:
		c.Limits, c.Gauge = "bolt runs freely, square", "thread gauge or new bolt"
	case m.Size.Size.Limited:
		c.Limits, c.MinMm, c.MaxMm = r.limitsText(m.Size.Size), m.Size.Size.MinMm, m.Size.Size.MaxMm
		if m.Size.DrillMm != m.Size.FinishedMm {
			c.Gauge = "plug gauge or bore gauge"
		}
	default:
		c.Limits = r.W.Dia(m.Group.FinishedMm) + ", bolt passes"
		if m.Slot != nil {
			c.Limits = "bolt slides the full length"
		}
	}
	r.Out.Checks = append(r.Out.Checks, c)
	seen := map[string]bool{}
	for _, ch := range m.Group.Chords {
		if seen[ch.Kind] && len(m.Group.Chords) > 8 {
			continue // a long list is checked from the hole table
		}
		seen[ch.Kind] = true
		s := r.length(ch.CentreMm)
		k := plan.Check{
			Ref: m.Ref, What: words.Spaced(m.Group.Name) + ", holes " + words.Trim(float64(ch.From), 0) + " to " + words.Trim(float64(ch.To), 0),
			Wanted: r.W.Size(ch.OverMm) + " over pins " + r.W.Dia(m.Group.DrillMm),
			Limits: words.OrNone(""), Gauge: "pins and calipers", Source: s.Source,
		}
		if s.Limited {
			k.MinMm, k.MaxMm = s.MinMm+m.Group.DrillMm, s.MaxMm+m.Group.DrillMm
			k.Limits = r.W.Limits(k.MinMm, k.MaxMm)
		}
		r.Out.Checks = append(r.Out.Checks, k)
	}
}

// gauge names what reaches the size to the fineness its limits ask.
func gauge(s *Step) string {
	if s.Size.Thread != nil {
		return "thread gauge or counterpart"
	}
	fine := s.Size.Press.Set() || (s.Size.Limited && s.Size.MaxMm-s.Size.MinMm < 0.1)
	switch {
	case fine && s.Inside:
		return "bore gauge, or telescopic and micrometer"
	case fine:
		return "micrometer"
	}
	return "calipers"
}
