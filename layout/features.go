package layout

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
func (r *resolver) features() {
	for i := range r.steps {
		s := &r.steps[i]
		if s.name == "outline" || s.name == "bore" || r.part.Profile != nil {
			z := clean((s.fromMm + s.toMm) / 2)
			note := words.Join("; ", s.seat, s.finish)
			if s.undercut != nil {
				note = words.Join("; ", note, "undercut "+r.w.Size(s.undercut.Width.Mm)+" wide × "+r.w.Size(s.undercut.Depth.Mm)+" deep")
			}
			size := r.sizeText(s)
			if r.part.Profile != nil {
				size += " × " + r.w.Size(clean(s.toMm-s.fromMm)) + " long"
			}
			s.ref = r.add(plan.Feature{Name: words.Spaced(s.name), Size: size, Limits: r.limitsText(s.size), Note: note, Balloon: plan.XY{XMm: z, YMm: s.drawnRadius()}})
		}
	}
	length := "length"
	if r.part.Outline != nil {
		length = "thickness"
		if r.part.Outline.Shape != parts.CircleOutline {
			b := r.outlinePath().Bounds()
			r.add(plan.Feature{Name: "outline", Size: r.w.Size(clean(b.W())) + " × " + r.w.Size(clean(b.H())) + r.outlineWords(),
				Note: "edges by the job's general tolerance", Balloon: plan.XY{XMm: r.lengthMm() / 2, YMm: r.out.Section.MaxMm}})
		}
	}
	if f := r.part.Frustum; f != nil {
		length = "height"
		r.frustumFeatures(f)
	}
	if t := r.part.Transition; t != nil {
		length = "height"
		r.transitionFeatures(t)
	}
	sized := r.length(r.lengthMm())
	f := plan.Feature{Name: length, Size: r.w.Size(r.lengthMm()), Limits: r.limitsText(sized), Balloon: plan.XY{XMm: r.lengthMm(), YMm: r.out.Section.MaxMm * 0.9}}
	if r.part.Outline != nil && r.part.Stock.Form != "" {
		f.Limits, f.Note = "", "as the plate is bought"
	}
	r.add(f)
	for _, c := range r.part.Chamfers {
		st, dia := r.chamferDiaMm(c)
		size := r.w.Size(c.Size.Mm) + " × " + words.Trim(c.Angle.Deg, 1) + "°"
		at := plan.XY{XMm: r.lengthMm() / 2, YMm: r.out.Section.MaxMm}
		if st != nil {
			size += ": Ø" + r.w.Read(dia) + " at the face"
			at = plan.XY{XMm: st.fromMm, YMm: st.drawnRadius()}
			if strings.HasSuffix(c.Edge.Value, "-back") {
				at.XMm = st.toMm
			}
		}
		note := ""
		if c.For != "" {
			note = "for " + c.For
		}
		r.add(plan.Feature{Name: "chamfer " + words.Spaced(c.Edge.Value), Size: size, Note: note, Balloon: at})
	}
	for i := range r.made {
		m := &r.made[i]
		m.ref = r.add(plan.Feature{
			Name: words.Spaced(m.group.Name), Size: words.CountOf(m.group.Count) + m.group.SizeText + ", " + m.group.DepthText,
			Limits: r.limitsText(m.size.size), Note: words.Join("; ", r.patternWords(m), m.group.Extra), Face: m.face, Balloon: m.pts[0],
		})
	}
	for i := range r.radials {
		m := &r.radials[i]
		row := m.rows[0]
		m.ref = r.add(plan.Feature{
			Name: words.Spaced(row.Name), Size: words.CountOf(len(m.rows)) + row.SizeText + ", " + row.DepthText,
			Note: "clock " + clockList(m.rows) + ", " + r.w.Size(row.AxialMm) + " from the front face", Balloon: plan.XY{XMm: row.AxialMm, YMm: row.OutsideMm / 2},
		})
	}
	r.saddleFeatures()
}

// add numbers a feature from 1 and returns the number.
func (r *resolver) add(f plan.Feature) int {
	f.N = len(r.out.Features) + 1
	r.out.Features = append(r.out.Features, f)
	return f.N
}

func (r *resolver) frustumFeatures(f *parts.Frustum) {
	at := "outside"
	if f.Inside {
		at = "inside"
	}
	r.add(plan.Feature{Name: "large end", Size: r.w.Dia(f.Large.Mm) + " " + at, Limits: r.limitsText(r.length(f.Large.Mm)), Balloon: plan.XY{XMm: 0, YMm: r.out.Section.MaxMm}})
	r.add(plan.Feature{Name: "small end", Size: r.w.Dia(f.Small.Mm) + " " + at, Limits: r.limitsText(r.length(f.Small.Mm)), Balloon: plan.XY{XMm: f.Height.Mm, YMm: r.out.Section.Outer[1].YMm}})
	size := "clock " + words.Trim(f.Seam.Deg, 2) + "°"
	if f.Overlap.Mm > 0 {
		size += ", overlap " + r.w.Size(f.Overlap.Mm)
	}
	r.add(plan.Feature{Name: "seam", Size: size, Balloon: plan.XY{XMm: f.Height.Mm / 2, YMm: (r.out.Section.Outer[0].YMm + r.out.Section.Outer[1].YMm) / 2}})
}

// sizeText is a diameter with its class: "Ø90 H7", "M40x1.5".
func (r *resolver) sizeText(s *step) string {
	if s.size.thread != nil {
		t := s.size.thread.Designation + " thread"
		if s.inside && s.size.thread.TapDrillMm > 0 {
			t += ", bore " + r.w.Dia(s.size.thread.TapDrillMm) + " first"
		}
		return t
	}
	t := r.w.Dia(s.size.nominalMm)
	switch s.size.class {
	case "", "limits":
		return t
	case "light press":
		return t + " light press on " + s.size.press.Part + " " + words.Spaced(s.size.press.Feature)
	}
	return t + " " + s.size.class
}

func (r *resolver) outlineWords() string {
	o := r.part.Outline
	switch {
	case o.Corner.Mm > 0:
		return ", corners R" + r.w.Size(o.Corner.Mm)
	case o.Shape == parts.SlotOutline:
		return ", round ends"
	case o.Shape == parts.PolygonOutline && o.Sides > 0:
		return ", " + words.Trim(float64(o.Sides), 0) + " sides, " + r.w.Size(o.Width.Mm) + " across flats"
	}
	return ""
}

// patternWords says where the holes are: "PCD 140, first at 30°".
func (r *resolver) patternWords(m *madeGroup) string {
	p := m.pattern()
	face := string(m.face) + " face"
	switch shape := p.Shape.(type) {
	case geom.Ring, geom.Arc, geom.Angles:
		return "PCD " + r.w.Size(p.PCD.Mm) + ", hole " + words.Trim(float64(m.group.First), 0) + " at " + words.Trim(geom.ClockDeg(m.pts[0]), 3) + "°, " + face
	case geom.Grid:
		return r.gridWords(shape) + ", " + face
	case geom.Staggered:
		return r.gridWords(geom.Grid(shape)) + ", every second row one less and half a pitch in, " + face
	}
	return "see the hole table, " + face
}

// gridWords says "3 × 2 at 40 × 30".
func (r *resolver) gridWords(g geom.Grid) string {
	return words.Trim(float64(g.Columns), 0) + " × " + words.Trim(float64(g.Rows), 0) + " at " + r.w.Size(g.PitchXMm) + " × " + r.w.Size(g.PitchYMm)
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

// ladder reads the bore from the measured mate.
func (r *resolver) ladder(s *step, mateMm float64) plan.Ladder {
	l := plan.Ladder{
		Feature: words.Spaced(s.name), Mate: s.size.press.Part + " " + words.Spaced(s.size.press.Feature),
		Note: "Measure the mate at three places across; take the largest. Bore " + r.w.Size(0.01) + " to " + r.w.Said(0.03) + " under it (common practice, no source).",
	}
	rungs, err := fits.LightPressLadder(mateMm, 0.6, 0.05)
	if err != nil {
		r.fault(s.size.press.Pos, "no light press for "+r.w.Dia(mateMm), plain(err))
		return l
	}
	for _, g := range rungs {
		l.Rungs = append(l.Rungs, plan.Rung{
			MeasuredMm: g.MeasuredMm, BoreMinMm: g.BoreMinMm, BoreMaxMm: g.BoreMaxMm,
			Measured: r.w.Exact(g.MeasuredMm), Bore: r.w.Exact(g.BoreMinMm) + " – " + r.w.Exact(g.BoreMaxMm),
		})
	}
	return l
}

// checks lists what is measured before the part leaves the bench.
func (r *resolver) checks() {
	for i := range r.steps {
		s := &r.steps[i]
		c := plan.Check{Ref: s.ref, What: words.Spaced(s.name), Wanted: r.sizeText(s), Limits: r.limitsText(s.size), Source: s.size.source, Gauge: gauge(s)}
		switch {
		case s.size.thread != nil:
			c.Limits = "mate runs freely, no shake"
		case s.size.limited:
			c.MinMm, c.MaxMm = s.size.minMm, s.size.maxMm
		case c.Limits == "":
			c.Limits = "no tolerance given"
			if c.Source == "tube as bought" {
				c.Limits = "as bought: write the measured size"
			}
		}
		r.out.Checks = append(r.out.Checks, c)
		if r.part.Profile != nil && clean(s.toMm-s.fromMm) != clean(r.lengthMm()) {
			r.checkLength(s.ref, words.Spaced(s.name)+" length", s.toMm-s.fromMm)
		}
	}
	for _, f := range r.out.Features {
		switch f.Name {
		case "length", "height":
			r.checkLength(f.N, f.Name, r.lengthMm())
		case "thickness", "outline", "large end", "small end", "rectangle", "round end":
			if r.stepNamed(f.Name) == nil {
				r.out.Checks = append(r.out.Checks, plan.Check{Ref: f.N, What: f.Name, Wanted: f.Size, Limits: words.OrNone(f.Limits), Gauge: "tape or calipers", Source: r.generalSource(f.Limits)})
			}
		}
	}
	for i := range r.part.Chamfers {
		c := &r.part.Chamfers[i]
		if st, dia := r.chamferDiaMm(*c); st != nil {
			check := plan.Check{Ref: r.refs("chamfer " + words.Spaced(c.Edge.Value))[0], What: "chamfer " + words.Spaced(c.Edge.Value), Wanted: "Ø" + r.w.Read(dia) + " at the face", Limits: "no tolerance given", Gauge: "calipers"}
			if pm, err := fits.GeneralChamfer(c.Size.Mm, r.job.Tolerance.Value); err == nil {
				check.Limits = "depth " + r.w.Limits(c.Size.Mm-pm, c.Size.Mm+pm)
				check.Source = "ISO 2768-" + r.job.Tolerance.Value + " (chamfers)"
			}
			r.out.Checks = append(r.out.Checks, check)
		}
	}
	for i := range r.made {
		r.checkGroup(&r.made[i])
	}
	for i := range r.radials {
		m := &r.radials[i]
		for _, row := range m.rows {
			s := r.length(row.AxialMm)
			r.out.Checks = append(r.out.Checks, plan.Check{
				Ref: m.ref, What: words.Spaced(row.Name) + " at " + words.Trim(row.ClockDeg, 3) + "°", Wanted: r.w.Size(row.AxialMm) + " from the front face",
				Limits: words.OrNone(r.limitsText(s)), MinMm: s.minMm, MaxMm: s.maxMm, Gauge: "calipers, depth rod", Source: s.source,
			})
		}
	}
	r.saddleChecks()
	if r.out.Top != "" {
		r.out.Checks = append(r.out.Checks, plan.Check{What: "TOP marked", Wanted: r.out.Top, Limits: "seen from the " + r.topFace() + " face", Gauge: "eye"})
	}
}

func (r *resolver) topFace() string {
	if len(r.out.Faces) > 0 {
		return string(r.out.Faces[0].Face)
	}
	return string(parts.Front)
}

func (r *resolver) generalSource(limits string) string {
	if limits == "" || r.job.Tolerance.Value == "" {
		return ""
	}
	return "ISO 2768-" + r.job.Tolerance.Value
}

func (r *resolver) checkLength(ref int, what string, mm float64) {
	s := r.length(clean(mm))
	c := plan.Check{Ref: ref, What: what, Wanted: r.w.Size(clean(mm)), Limits: words.OrNone(r.limitsText(s)), Gauge: "calipers", Source: s.source}
	if s.limited {
		c.MinMm, c.MaxMm = s.minMm, s.maxMm
	}
	r.out.Checks = append(r.out.Checks, c)
}

// checkGroup checks a hole group's size and, over pins, its spacing.
func (r *resolver) checkGroup(m *madeGroup) {
	c := plan.Check{Ref: m.ref, What: words.Spaced(m.group.Name), Wanted: words.CountOf(m.group.Count) + m.group.SizeText, Gauge: "calipers or drill shank", Source: m.size.size.source}
	switch {
	case m.size.thread != nil:
		c.Limits, c.Gauge = "bolt runs freely, square", "thread gauge or new bolt"
	case m.size.size.limited:
		c.Limits, c.MinMm, c.MaxMm = r.limitsText(m.size.size), m.size.size.minMm, m.size.size.maxMm
		if m.size.drillMm != m.size.finishedMm {
			c.Gauge = "plug gauge or bore gauge"
		}
	default:
		c.Limits = r.w.Dia(m.group.FinishedMm) + ", bolt passes"
		if m.slot != nil {
			c.Limits = "bolt slides the full length"
		}
	}
	r.out.Checks = append(r.out.Checks, c)
	seen := map[string]bool{}
	for _, ch := range m.group.Chords {
		if seen[ch.Kind] && len(m.group.Chords) > 8 {
			continue // a long list is checked from the hole table
		}
		seen[ch.Kind] = true
		s := r.length(ch.CentreMm)
		k := plan.Check{
			Ref: m.ref, What: words.Spaced(m.group.Name) + ", holes " + words.Trim(float64(ch.From), 0) + " to " + words.Trim(float64(ch.To), 0),
			Wanted: r.w.Size(ch.OverMm) + " over pins " + r.w.Dia(m.group.DrillMm),
			Limits: words.OrNone(""), Gauge: "pins and calipers", Source: s.source,
		}
		if s.limited {
			k.MinMm, k.MaxMm = s.minMm+m.group.DrillMm, s.maxMm+m.group.DrillMm
			k.Limits = r.w.Limits(k.MinMm, k.MaxMm)
		}
		r.out.Checks = append(r.out.Checks, k)
	}
}

// gauge names what reaches the size to the fineness its limits ask.
func gauge(s *step) string {
	if s.size.thread != nil {
		return "thread gauge or mate"
	}
	fine := s.size.press.Set() || (s.size.limited && s.size.maxMm-s.size.minMm < 0.1)
	switch {
	case fine && s.inside:
		return "bore gauge, or telescopic and micrometer"
	case fine:
		return "micrometer"
	}
	return "calipers"
}
