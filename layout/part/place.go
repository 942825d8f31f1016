package part

import (
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// checkSizes checks two lengths that stand in one row.
func (r *record) checkSizes(ref int, what string, a, b float64) {
	s, t := r.length(geom.Clean(a)), r.length(geom.Clean(b))
	c := plan.Check{Ref: ref, What: what, Wanted: r.W.Read(a) + " × " + r.W.Read(b), Limits: words.OrNone(""), Gauge: "calipers", Source: s.Source}
	if s.Limited && t.Limited {
		c.Limits = r.limitsText(s) + " × " + r.limitsText(t)
	}
	r.add(c)
}

// checkSize checks a length that callipers reach, by the general tolerance.
func (r *record) checkSize(ref int, what string, mm float64) {
	s := r.length(geom.Clean(mm))
	c := plan.Check{Ref: ref, What: what, Wanted: r.W.Read(mm), Limits: words.OrNone(r.limitsText(s)), Gauge: "calipers", Source: s.Source}
	if s.Limited {
		c.MinMm, c.MaxMm = s.MinMm, s.MaxMm
	}
	r.add(c)
}

// sizes of a hole are those of its counterbore.
func (h holes) sizes(r *record, m *Group) {
	if c := h.in.Counterbore; c != nil {
		r.checkSize(r.ref(m), words.Spaced(m.name)+" counterbore "+r.W.Dia(c.Diameter.Mm)+", depth", c.Depth.Mm)
	}
}

// sizes of a slot are its width and its length over all.
func (s slots) sizes(r *record, m *Group) {
	r.checkSizes(r.ref(m), words.Spaced(m.name)+" width × length", s.in.Width.Mm, s.in.Length.Mm)
}

// checkPlace checks where the group lies, which no chord shows: on a pitch circle
// by the metal between pins and the round about or inside them, alike at two
// places far apart; else by the edges that places are measured from.
func (m *Group) checkPlace(r *record) {
	if b, ok := r.form.(*bar); ok {
		b.checkGroup(r, m)
		return
	}
	if _, bent := r.form.(*folded); bent {
		return // its holes are checked on the blank
	}
	for _, f := range r.Faces {
		if f.Face == m.Face && m.pattern.PCD.Mm > 0 && m.Group.Count > 1 {
			m.checkRound(r)
		} else if f.Face == m.Face && m.pattern.PCD.Mm == 0 && !f.Round {
			m.checkEdges(r, f)
		}
	}
}

// checkRound: each hole lies on the radius within its general tolerance, so two
// gaps differ by twice that at most.
func (m *Group) checkRound(r *record) {
	s := r.length(m.pattern.PCD.Mm / 2)
	if !s.Limited {
		return
	}
	far := 0
	for i, q := range m.Points {
		if geom.Distance(m.Points[0], q) > geom.Distance(m.Points[0], m.Points[far])+geom.CloseMm {
			far = i
		}
	}
	edge := "outside"
	if _, inside := r.Sides(); len(inside) > 0 {
		edge = "bore"
	}
	first := m.Group.First
	r.add(plan.Check{Ref: r.ref(m), What: words.Spaced(m.name) + " " + edge + " to pin, at " + words.Trim(float64(first), 0) + " and " + words.Trim(float64(first+far), 0),
		Limits: "alike within " + r.W.Read(geom.Clean(s.MaxMm-s.MinMm)), MaxMm: geom.Clean(s.MaxMm - s.MinMm), Gauge: "calipers", Source: s.Source})
}

// checkEdges measures the first hole from two edges.
func (m *Group) checkEdges(r *record, f *plan.Face) {
	x, y := "left", "bottom"
	if strings.Contains(f.Datum, "right") {
		x = "right"
	}
	if strings.Contains(f.Datum, "top") {
		y = "top"
	}
	for _, h := range f.Holes {
		if h.Group != m.Group.Name || h.N != m.Group.First {
			continue
		}
		half := m.Group.DrillMm / 2
		sx, sy := r.length(h.FromXMm), r.length(h.FromYMm)
		c := plan.Check{Ref: r.ref(m), What: words.Spaced(m.name) + " " + words.Trim(float64(h.N), 0) + ", " + x + " and " + y + " edge to pin",
			Wanted: r.W.Read(h.FromXMm-half) + ", " + r.W.Read(h.FromYMm-half), Limits: words.OrNone(""), Gauge: "calipers", Source: sx.Source}
		if sx.Limited && sy.Limited {
			c.Limits = r.W.Limits(sx.MinMm-half, sx.MaxMm-half) + ", " + r.W.Limits(sy.MinMm-half, sy.MaxMm-half)
		}
		r.add(c)
	}
}
