package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// Shop-made tools clear what they pass over by overMm on diameter, stand endMm
// out for the ram or the hand, and a plug is plugMm under the least bore. Common
// practice, no source.
const (
	overMm = 1.0
	endMm  = 20.0
	plugMm = 0.03
)

// tooling collects the tools that the workshop makes for itself, one row for
// equal ones.
type tooling []plan.ToolRow

func (list *tooling) add(tool, use string) {
	for i := range *list {
		if row := &(*list)[i]; row.Tool == tool {
			if !strings.Contains(row.For, use) {
				row.For += "; " + use
			}
			return
		}
	}
	*list = append(*list, plan.ToolRow{Tool: tool, For: use})
}

// tools are what the joints made need and no merchant sells, in their order; nil
// if the job does not ask for them.
func (j *assembly) tools(made []*joint) []plan.ToolRow {
	if !j.job.Tools {
		return nil
	}
	var list tooling
	for i, t := range made {
		switch {
		case t.in.Press != nil:
			j.pressTool(t, &list)
		case t.in.Bearing != nil:
			t.bearingTools(&list)
		case t.in.Weld != nil:
			j.plugs(t, made[:i], &list)
		}
	}
	return list
}

// use names the step that a tool is for.
func (t *joint) use() string {
	return "step " + words.Trim(float64(t.out.N), 0) + ", " + words.Spaced(t.out.Name)
}

// standsOutMm is how far the shaft of a press stands out of the hub at the end
// where the hub goes on, which is the nearer one; below 0 it lies under the
// hub's face. Span is the shaft from there to its end, on its own axis.
func (j *assembly) standsOutMm(t *joint) (mm float64, span [2]float64, ok bool) {
	shaft, hub := j.at(t.a.inst()), j.at(t.b.inst())
	if shaft == nil || hub == nil {
		return 0, span, false
	}
	to := hub.at.then(shaft.at.inverse()) // the hub's axis to the shaft's
	u, v := to.z0+to.s*t.b.step.FromMm, to.z0+to.s*t.b.step.ToMm
	low, high := math.Min(u, v), math.Max(u, v)
	if long := t.a.r.LengthMm(); low+high > long {
		return geom.Clean(long - high), [2]float64{high, long}, true
	}
	return geom.Clean(low), [2]float64{0, low}, true
}

// pressTool is what stands between the ram and the hub: a sleeve over a shaft
// that stands out, or a disc that stops the ram where the shaft lies under the
// hub's face. A hub that is heated needs the disc alone.
func (j *assembly) pressTool(t *joint, list *tooling) {
	out, span, ok := j.standsOutMm(t)
	if !ok {
		return
	}
	hot := t.in.Press.Method != "press"
	switch d := t.b.step.Size.NominalMm; {
	case out < 0:
		list.add("Stop disc "+t.w.Dia(d-overMm)+" × "+t.w.Size(-out)+" thick, to lie on the end of "+t.a.r.Out.Title, t.use())
	case out > 0 && !hot:
		passed := d
		outside, _ := t.a.r.Sides()
		for _, s := range outside {
			if s.FromMm < span[1]-geom.CloseMm && s.ToMm > span[0]+geom.CloseMm {
				passed = math.Max(passed, s.Size.NominalMm)
			}
		}
		list.add("Press sleeve "+t.w.Dia(passed+overMm)+" inside, "+t.w.Size(out+endMm)+" long, ends square", t.use())
	case !hot:
		list.add("Flat plate wider than "+t.w.Dia(d), t.use())
	}
}

// bearingTools are the sleeve for the cone and the ring for the cup, long enough
// to stand out of shaft and housing.
func (t *joint) bearingTools(list *tooling) {
	p := t.out.Bearing
	m, ok := t.mount()
	if !ok {
		return
	}
	comes := -m.coneDir // the side that the cone comes from
	if p.Adjusted {
		comes = m.coneDir
	}
	reach := func(f feature, dir float64) float64 {
		if dir < 0 {
			return f.step.FromMm
		}
		return f.r.LengthMm() - f.step.ToMm
	}
	hollow := func(inMm, outMm, longMm float64) string {
		return " " + t.w.Dia(inMm) + " inside, " + t.w.Dia(outMm) + " outside, " + t.w.Size(geom.Clean(longMm+endMm)) + " long, "
	}
	list.add("Sleeve"+hollow(p.ConeSleeveInMm, p.ConeSleeveOutMm, reach(t.a, comes))+"on the cone's "+follows(p)+" end", t.use())
	list.add("Ring"+hollow(p.CupRingInMm, p.CupRingOutMm, reach(t.b, -m.cupDir))+"on the cup", t.use())
}

// plugs hold the finished bores of what is welded true: those with limits that
// nothing stands in yet.
func (j *assembly) plugs(t *joint, before []*joint, list *tooling) {
	for _, f := range []feature{t.a, t.b} {
		for i := range f.r.Steps {
			if s := &f.r.Steps[i]; s.Inside && s.Size.Fitted() && !filled(f.inst(), s, append(slices.Clone(before), t)) {
				d := s.Size.MinMm - plugMm
				list.add("Scrap plug "+t.w.Dia(words.Round(d, 3))+" × "+t.w.Size(s.LengthMm())+" long, for the "+words.Spaced(s.Name)+" of "+f.title(), t.use())
			}
		}
	}
}

// filled tells whether one of some joints puts a part into a bore.
func filled(of inst, s *part.Step, made []*joint) bool {
	return slices.ContainsFunc(made, func(o *joint) bool {
		return o.b.inst() == of && o.b.step != nil && o.b.step.Name == s.Name || o.a.inst() == of && o.a.step != nil && o.a.step.Name == s.Name
	})
}
