package part

import (
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// slots is the kind of group that is milled, with round ends.
type slots struct{ in *parts.FaceSlot }

func (s slots) size(z *sizer) Made {
	w := s.in.Width.Mm
	return Made{DrillMm: w, FinishedMm: w, Text: "slot " + z.W.Size(w) + " × " + z.W.Size(s.in.Length.Mm) + " overall"}
}

func (slots) describe(*Sizes, *Group)   {}
func (slots) feature() plan.FeatureKind { return plan.SlotsFeature }
func (slots) cutShape() string          { return "slot" }
func (slots) finished(*Group) string    { return "" }

func (s slots) cutText(w words.Writer, _ *Group) string {
	return w.Size(s.in.Width.Mm) + " × " + w.Size(s.in.Length.Mm)
}

func (s slots) mark(f *plan.Face, g plan.Group, at []plan.XY, half plan.XY) {
	turn := s.in.Turn.Deg
	if s.in.On != "" { // as it lies on the blank
		turn = math.Mod(geom.ClockDeg(half), 180)
	}
	if s.in.Face != f.Face {
		turn = -turn
	}
	for i, q := range at {
		f.Slots = append(f.Slots, plan.Slot{
			N: g.First + i, Group: g.Name, XMm: q.XMm, YMm: q.YMm,
			WidthMm: s.in.Width.Mm, LengthMm: s.in.Length.Mm, TurnDeg: turn,
			EndsMm: [2]plan.XY{{XMm: geom.Clean(q.XMm + half.XMm), YMm: geom.Clean(q.YMm + half.YMm)}, {XMm: geom.Clean(q.XMm - half.XMm), YMm: geom.Clean(q.YMm - half.YMm)}},
		})
	}
}

func (s slots) operation(b *bench, m *Group, cut bool) {
	if cut {
		return
	}
	seen := ""
	if f := m.Group.PunchedFrom; f != "" {
		seen = " seen on the " + string(f) + ", whose template has them as " + words.Lettered(m.Face, m.Group.First, m.Group.Count)
	}
	tool, way := b.slotDrill("", s.in.Width.Mm), "plunge at one end, mill to the other"+passes(m.Depth.Mm, s.in.Width.Mm)
	if m.Through {
		_, travel := b.DrillMm(m)
		tool, way = b.slotTool(s.in.Width.Mm, s.in.Length.Mm, travel, true)
	}
	b.op(plan.Operation{Machine: plan.Mill, Title: words.Spaced(m.Name.Value) + ": " + words.CountOf(m.Group.Count) + m.Group.SizeText,
		Do:      []string{"Set the long axis " + b.form.longAxis(m, s) + seen + "; " + way + ".", "Depth: " + m.Group.DepthText + "."},
		Holding: b.form.heldUnder(b, m), Tool: tool, Refs: []int{b.ref(m)}})
}

// checkPlace measures each slot from the edges; on a round face from the bore or the
// outside, and how far it lies from the first, which no chord over pins shows.
func (s slots) checkPlace(r *record, m *Group, f *plan.Face) {
	for _, q := range f.Slots {
		if q.Group != m.Group.Name {
			continue
		}
		what := words.Spaced(m.Name.Value) + " " + strconv.Itoa(q.N)
		if math.Mod(q.TurnDeg, 90) != 0 {
			limits, source := r.angleLimits(q.LengthMm)
			r.add(plan.Check{Ref: r.ref(m), What: what + ", long axis at clock", Wanted: words.Angle(math.Mod(q.TurnDeg+360, 180)), Limits: limits, Gauge: "protractor", Source: source})
		}
		half := plan.XY{XMm: (q.EndsMm[0].XMm - q.EndsMm[1].XMm) / 2, YMm: (q.EndsMm[0].YMm - q.EndsMm[1].YMm) / 2}
		if !f.Round {
			m.fromEdges(r, f, placed{q.N, "its near sides", plan.XY{XMm: q.XMm, YMm: q.YMm},
				plan.XY{XMm: math.Abs(half.XMm) + q.WidthMm/2, YMm: math.Abs(half.YMm) + q.WidthMm/2}})
			continue
		}
		edge, mm := "outside", f.MaxMm.XMm-q.WidthMm/2-max(geom.Distance(q.EndsMm[0], plan.XY{}), geom.Distance(q.EndsMm[1], plan.XY{}))
		if bore := r.boreAt(f.Face.FromFront(0, r.LengthMm())); bore != nil {
			edge, mm = "bore", geom.ToSegment(plan.XY{}, q.EndsMm[0], q.EndsMm[1])-(q.WidthMm+bore.Size.NominalMm)/2
		}
		r.checkSize(r.ref(m), what+", "+edge+" to its near side", mm)
		if q.N > m.Group.First {
			r.checkSize(r.ref(m), what+" from "+strconv.Itoa(m.Group.First)+", side to like side", geom.Distance(m.Points[0], m.Points[q.N-m.Group.First]))
		}
	}
}

// checkPlace checks where the group lies, which no chord shows: on a pitch circle
// by the metal between pins and the round about or inside them, alike at two
// places far apart; else by the edges that places are measured from.
func (usual) checkPlace(r *record, m *Group) {
	s, slot := m.kind.(slots)
	for _, f := range r.Faces {
		if slot && f.Face == m.Face {
			s.checkPlace(r, m, f)
			continue
		}
		if f.Face == m.Face && m.Pattern.AboutAxis() && m.Group.Count > 1 {
			m.checkRound(r)
		} else if f.Face == m.Face && !m.Pattern.AboutAxis() && !f.Round {
			m.checkEdges(r, f)
		}
	}
}

// turnDeg is the clock angle of the long axis as it lies on the metal: of a
// folded part on its blank, else seen on the face that it is punched on.
func (s slots) turnDeg(m *Group) float64 {
	switch {
	case m.Group.PunchedFrom != "":
		return math.Mod(360-s.in.Turn.Deg, 180)
	case s.in.On == "":
		return s.in.Turn.Deg
	}
	return math.Mod(geom.ClockDeg(m.halfMm), 180)
}

// work mills a slot.
func (radialSlot) work(b *bench, m *Radial, o *plan.Operation) {
	row := m.Rows[0]
	narrow := math.Min(row.AroundMm, row.AlongMm)
	if m.In.Through && narrow > milledMm {
		radialWindow{}.work(b, m, o)
		return
	}
	o.Machine = plan.Mill
	if m.In.Through {
		way := ""
		if noWider.MatchString(m.In.Note.Value) { // a cutter cuts a little wider than it is
			narrow = max(narrow-b.W.Step(narrowStepMm, narrowStepIn), narrow/2)
		}
		o.Tool, way = b.slotTool(narrow, math.Max(row.AroundMm, row.AlongMm), b.radialMm(m, row.AxialMm), b.boreAt(row.AxialMm) == nil)
		o.Do = append(o.Do, words.Capital(way)+" to "+row.SizeText+", "+b.radialDepth(m, row.AxialMm)+".")
		return
	}
	o.Tool = b.slotDrill("", narrow)
	round, from, turned := row.OutsideMm, "the top of the round", ""
	if st := b.outsideAt(row.AxialMm); st != nil && st.Size.Thread != nil {
		round, from, turned = b.threadBlankMm(st), b.W.Dia(round)+" nominal", " as turned"
	}
	floor := geom.Clean((row.OutsideMm+round)/2 - m.In.Depth.Mm)
	o.Do = append(o.Do, "Mill to "+row.SizeText+passes(m.In.Depth.Mm, narrow)+".",
		"Depth "+b.W.Size(m.In.Depth.Mm)+" from "+from+": "+b.W.Size(floor)+" left to the far side of "+b.W.Dia(round)+turned+".")
}
