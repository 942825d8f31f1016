package part

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// checkSizes checks lengths that stand in one row.
func (r *record) checkSizes(ref int, what string, mm ...float64) {
	r.checkSized(ref, what, seq.Map(mm, func(v float64) Sized { return r.General(geom.Clean(v)) })...)
}

// checkSized checks lengths by their own limits.
func (r *record) checkSized(ref int, what string, sizes ...Sized) {
	c := plan.Check{Ref: ref, What: what, Wanted: words.Join(" × ", seq.Map(sizes, func(z Sized) string { return r.W.Size(z.NominalMm) })...), Gauge: "calipers"}
	c.Limits, c.Source = r.limitsOf(sizes...)
	r.add(c)
}

// limitsOf are the limits of several lengths, with the source of the first; none where nothing limits
// one of them.
func (s *Sizes) limitsOf(sizes ...Sized) (text string, source lookup.Source) {
	for _, z := range sizes {
		if !z.Limited {
			return words.OrNone(""), lookup.Source{}
		}
		text, source = words.Join(" × ", text, s.limitsText(z)), cmp.Or(source, z.Source)
	}
	return text, source
}

// angleLimits are those of an angle by the general tolerance, with their source.
func (r *record) angleLimits(legMm float64) (text string, source lookup.Source) {
	pm, err := fits.GeneralAngle(legMm, r.Job.Tolerance.Value)
	if err != nil {
		return words.OrNone(""), lookup.Source{}
	}
	return "±" + words.Angle(pm), generalBy(r.Job.Tolerance.Value, "")
}

// checkHole completes the check of a hole's size: the gauge of its thread, its limits,
// or that its bolt passes. deepMm is the depth of a blind hole, threadMm that of a
// thread which does not go right through; else 0.
func (r *record) checkHole(c plan.Check, m Made, deepMm, threadMm float64) {
	c.Source, c.Gauge = m.Size.Source, "calipers"
	switch {
	case m.Thread != nil:
		c.Wanted, c.Limits, c.Gauge = c.Wanted+m.Thread.Designation, r.runsFreely(m.Thread, threadMm), "thread gauge or new bolt"
	case m.Size.Limited:
		c.Wanted, c.Limits, c.MinMm, c.MaxMm = c.Wanted+m.Text, r.limitsText(m.Size), m.Size.MinMm, m.Size.MaxMm
		if m.DrillMm != m.FinishedMm {
			c.Gauge = plugGauge
		}
		if deepMm > 0 {
			deep, _ := r.limitsOf(r.General(geom.Clean(deepMm)))
			c.Wanted, c.Limits = c.Wanted+", "+r.W.Size(deepMm)+" deep", c.Limits+" × "+deep
		}
	default:
		c.Wanted, c.Limits = c.Wanted+m.Text, r.W.Dia(m.FinishedMm)+", bolt passes"
	}
	r.add(c)
}

// runsFreely is what is asked of a tapped hole; mm is the depth of its thread, 0 where
// it goes right through. Into a taper thread its mate goes by hand to the gauge length, a turn more or less
// (ASME B1.20.1; ISO 7-1 from memory).
func (s *Sizes) runsFreely(t *threads.Thread, mm float64) string {
	switch {
	case t.Taper:
		return "fitting goes in " + s.W.Said(t.GaugeLengthMm) + " by hand, 1 turn more or less"
	case mm > 0:
		return s.classLimits(t) + "runs freely " + s.W.Size(mm) + " deep, square"
	}
	return s.classLimits(t) + "runs freely, square"
}

// classLimits are the limits of a thread of a class, before what else is asked of it; "" without one.
func (s *Sizes) classLimits(t *threads.Thread) string {
	lo, hi := t.PitchLimitsMm()
	return words.When(hi != 0, "class "+t.Class+", pitch diameter "+s.W.Limits(lo, hi)+"; ")
}

// plugGauge measures a hole that is finished after the drill.
const plugGauge = "plug gauge or bore gauge"

// checkSize checks a length that callipers reach, by the general tolerance.
func (r *record) checkSize(ref int, what string, mm float64) {
	r.sized(plan.Check{Ref: ref, What: what, Wanted: r.W.Read(mm), Gauge: "calipers"}, r.General(geom.Clean(mm)))
}

// sizes of a hole are its own and those of its mouth.
func (h holes) sizes(r *record, m *Group) {
	r.checkHole(plan.Check{Ref: r.ref(m), What: words.Spaced(m.Name.Value), Wanted: words.CountOf(m.Group.Count)}, m.Size, m.Depth.Mm, m.Depth.Mm)
	if c := h.in.Countersink; c != nil {
		s := r.General(c.Diameter.Mm) // in a smaller one the head stands proud
		s.MinMm, s.MaxMm = c.Diameter.Mm, 2*s.MaxMm-c.Diameter.Mm
		r.sized(plan.Check{Ref: r.ref(m), What: words.Spaced(m.Name.Value) + " countersink " + words.Trim(c.Angle.Deg, 1) + "°, Ø at the face", Wanted: r.W.Read(c.Diameter.Mm), Gauge: "calipers"}, s)
	}
	if c := h.in.Counterbore; c != nil {
		r.checkSize(r.ref(m), words.Spaced(m.Name.Value)+" counterbore "+r.W.Dia(c.Diameter.Mm)+", depth", c.Depth.Mm)
	}
}

// sizes of a slot are its width and its length over all, and of a blind one its depth.
func (s slots) sizes(r *record, m *Group) {
	what := words.Spaced(m.Name.Value) + " width × length"
	if m.Through {
		r.checkSizes(r.ref(m), what, s.in.Width.Mm, s.in.Length.Mm)
		return
	}
	r.checkSizes(r.ref(m), what+" × depth", s.in.Width.Mm, s.in.Length.Mm, m.Depth.Mm)
}

// checkRound: each hole lies on the radius within its general tolerance, or within
// what the cutter holds of a round that it cuts, so two gaps differ by twice that at most.
func (m *Group) checkRound(r *record) {
	s := r.General(m.Pattern.PCD.Mm / 2)
	if !s.Limited {
		return
	}
	far := 0
	for i, q := range m.Points {
		if geom.Distance(m.Points[0], q) > geom.Distance(m.Points[0], m.Points[far])+geom.CloseMm {
			far = i
		}
	}
	edge, round := "outside", r.StepNamed(outlineStep)
	if inside := r.Side(true); len(inside) > 0 {
		edge, round = "bore", inside[0]
	}
	if round != nil && round.Size.AsCut && round.Size.MaxMm-round.Size.MinMm > s.MaxMm-s.MinMm {
		s.MinMm, s.MaxMm, s.Source = round.Size.MinMm, round.Size.MaxMm, round.Size.Source
	}
	first := m.Group.First
	r.add(plan.Check{Ref: r.ref(m), What: words.Spaced(m.Name.Value) + " " + edge + " to pin, at " + strconv.Itoa(first) + " and " + strconv.Itoa(first+far),
		Limits: "alike within " + r.W.Read(geom.Clean(s.MaxMm-s.MinMm)), MaxMm: geom.Clean(s.MaxMm - s.MinMm), Gauge: "calipers", Source: s.Source})
}

// checkEdges measures the first hole from two edges.
func (m *Group) checkEdges(r *record, f *plan.Face) {
	half := m.Group.DrillMm / 2
	m.fromEdges(r, f, placed{m.Group.First, "pin", m.Points[0], plan.XY{XMm: half, YMm: half}})
	m.checkRows(r)
}

// checkRows measures over pins from the group of alike holes before this one: their distances
// from the edges are too rough for what is bolted to both.
func (m *Group) checkRows(r *record) {
	var row []plan.Chord
	for o := range seq.Refs(r.Groups) {
		if o.Hole == nil || o.Face != m.Face || o.Pattern.AboutAxis() || o.Group.First >= m.Group.First || o.Group.Count != m.Group.Count || o.Size.Text != m.Size.Text {
			continue
		}
		near := plan.Chord{From: o.Group.First, CentreMm: math.Inf(1)}
		for k, q := range m.Points {
			if d := geom.Clean(geom.Distance(o.Points[0], q)); d < near.CentreMm {
				near.CentreMm, near.To, near.OverMm = d, m.Group.First+k, geom.Clean(d+m.Size.pinMm())
			}
		}
		row = []plan.Chord{near}
	}
	if row != nil && m.Hole != nil {
		r.checkChords(m, row)
	}
}

// placed is what stands at a place on a face, and how far it reaches towards the edges
// that the record measures from; to is the side that is measured to.
type placed struct {
	n         int
	to        string
	at, reach plan.XY
}

// fromEdges measures from the two edges that the template is set by which marks the group.
func (m *Group) fromEdges(r *record, f *plan.Face, of placed) {
	datum := r.setBy(m.drilledFrom())
	if m.drilledFrom() != f.Face {
		datum = mirroredDatum.Replace(datum)
	}
	corner, sx, sy := geom.Corner(datum, geom.Box{Min: f.MinMm, Max: f.MaxMm})
	fromX, fromY := geom.Clean((of.at.XMm-corner.XMm)*sx), geom.Clean((of.at.YMm-corner.YMm)*sy)
	x, y := r.form.fromEdge(r.Sizes, fromX), r.form.fromEdge(r.Sizes, fromY)
	c := plan.Check{Ref: r.ref(m), What: words.Spaced(m.Name.Value) + " " + strconv.Itoa(of.n) + ", " + datumSides(datum) + " edge to " + of.to,
		Wanted: r.W.Read(geom.Clean(fromX-of.reach.XMm)) + ", " + r.W.Read(geom.Clean(fromY-of.reach.YMm)), Limits: words.OrNone(""), Gauge: "calipers", Source: x.Source}
	if laid := r.laidOn(f, datum, of.at, corner); laid != "" {
		c.Gauge = "straight edge laid on the " + laid + " edge, calipers from it"
	}
	if x.Limited && y.Limited {
		c.Limits = r.W.Limits(x.MinMm-of.reach.XMm, x.MaxMm-of.reach.XMm) + ", " + r.W.Limits(y.MinMm-of.reach.YMm, y.MaxMm-of.reach.YMm)
	}
	r.add(c)
}

// laidOn names the edges of a datum that do not face a place: across from it the outline has left the line that its edge
// is on, so that no jaw lies there.
func (s *Sizes) laidOn(f *plan.Face, datum string, at, corner plan.XY) string {
	if !s.Flat() {
		return ""
	}
	line := s.OutlinePath().Flatten(geom.FlatMm).Coords()
	faces := func(q plan.XY) bool {
		q.XMm *= parts.At(f.Face, 1.0, -1.0)
		for i := range line {
			a, b := line[i], line[(i+1)%len(line)]
			if geom.ToSegment(q, plan.XY{XMm: a.X, YMm: a.Y}, plan.XY{XMm: b.X, YMm: b.Y}) < 2*geom.FlatMm {
				return true
			}
		}
		return false
	}
	side, level, _ := strings.Cut(datumSides(datum), " and ")
	return words.Join(" and ", words.When(!faces(plan.XY{XMm: corner.XMm, YMm: at.YMm}), side), words.When(!faces(plan.XY{XMm: at.XMm, YMm: corner.YMm}), level))
}
