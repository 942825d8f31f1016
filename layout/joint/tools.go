package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
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

// tool is something that the workshop makes for itself.
type tool struct {
	name  string      // "Cone driver"
	sizes string      // what follows the name in the list
	sheet *parts.Part // what it is made as; nil where any plate does
	uses  []*joint
}

// tooling collects tools, one for equal ones.
type tooling []*tool

func (list *tooling) add(t *joint, x tool) {
	for _, old := range *list {
		if old.name == x.name && old.sizes == x.sizes {
			old.uses = append(old.uses, t)
			return
		}
	}
	x.uses = []*joint{t}
	*list = append(*list, &x)
}

// tools are what the joints made need and no merchant sells, in their order, with
// sheets if the job asks for them. Each joint learns the names of its own.
func (j *assembly) tools(made []*joint) []plan.ToolRow {
	var list tooling
	for i, t := range made {
		switch {
		case t.in.Press != nil:
			j.pressTool(t, &list)
		case t.in.Bearing != nil:
			j.bearingTools(t, &list)
		case t.in.Weld != nil:
			j.plugs(t, made[:i], &list)
		}
	}
	var out []plan.ToolRow
	for i, x := range list {
		row := plan.ToolRow{Name: "T" + words.Trim(float64(i+1), 0) + " " + x.name, Tool: x.name + x.sizes}
		for _, t := range x.uses {
			row.For = words.Join("; ", row.For, t.use())
			t.out.Tools = append(t.out.Tools, row.Name)
		}
		if j.job.Tools && x.sheet != nil {
			row.Sheet = j.toolSheet(&row, x.sheet)
		}
		out = append(out, row)
	}
	return out
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
		list.add(t, tool{"Stop disc", " " + t.w.Dia(d-overMm) + " × " + t.w.Size(-out) + " thick, to lie on the end of " + t.a.r.Out.Title, j.disc(d-overMm, -out), nil})
	case out > 0 && !hot:
		passed := d
		outside, _ := t.a.r.Sides()
		for _, s := range outside {
			if s.FromMm < span[1]-geom.CloseMm && s.ToMm > span[0]+geom.CloseMm {
				passed = math.Max(passed, s.Size.NominalMm)
			}
		}
		in := bounds{passed + overMm/2, passed + 3*overMm/2, passed + overMm}
		list.add(t, tool{"Press sleeve", " " + t.w.Dia(in.nominal) + " inside, " + t.w.Size(j.up(out+endMm)) + " long, ends square", j.sleeve(in, free(j.up(in.high+2*sleeveWallMm(d))), out+endMm), nil})
	case !hot:
		list.add(t, tool{"Flat plate", " wider than " + t.w.Dia(d), nil, nil})
	}
}

// bearingTools are the driver for the cone and the ring for the cup, long enough
// to stand out of shaft and housing; where the end of the shaft can be pulled on,
// the driver is the tube of a draw bolt.
func (j *assembly) bearingTools(t *joint, list *tooling) {
	p := t.out.Bearing
	m, ok := t.mount()
	if !ok {
		return
	}
	comes := -m.coneDir // the side that the cone comes from
	if p.Adjusted {
		comes = m.coneDir
	}
	hollow := func(in, out, longMm float64) string {
		return " " + t.w.Dia(in) + " inside, " + t.w.Dia(out) + " outside, " + t.w.Size(j.up(longMm)) + " long, "
	}
	coneIn, coneOut := atLeast(p.ConeSleeveInMm, 0.3), atMost(p.ConeSleeveOutMm, 1)
	name, long := "Cone driver", reachMm(t.a, comes)+endMm
	if t.draw != nil {
		name, long = "Draw tube", j.tubeMm(t, m)
	}
	list.add(t, tool{name, hollow(p.ConeSleeveInMm, p.ConeSleeveOutMm, long) + "on the cone's " + follows(p) + " end", j.sleeve(coneIn, coneOut, long), nil})
	if t.draw != nil {
		j.drawTools(t, list)
	}
	ring := reachMm(t.b, -m.cupDir) + endMm
	list.add(t, tool{"Press ring", hollow(p.CupRingInMm, p.CupRingOutMm, ring) + "on the cup", j.sleeve(atLeast(p.CupRingInMm, 0.3), within(p.CupRingOutMm, 0.5), ring), nil})
}

// reachMm is how far a step lies from the end of its part in a direction.
func reachMm(f feature, dir float64) float64 {
	if dir < 0 {
		return f.step.FromMm
	}
	return geom.Clean(f.r.LengthMm() - f.step.ToMm)
}

// plugs hold the finished bores of what is welded true: those with limits that
// nothing stands in yet.
func (j *assembly) plugs(t *joint, before []*joint, list *tooling) {
	for _, f := range []feature{t.a, t.b} {
		for i := range f.r.Steps {
			if s := &f.r.Steps[i]; s.Inside && s.Size.Fitted() && !filled(f.inst(), s, append(slices.Clone(before), t)) {
				list.add(t, j.plug(f, s))
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

// toolSheet works a tool out as any other part of the job; nil if that cannot be.
func (j *shop) toolSheet(row *plan.ToolRow, p *parts.Part) *plan.PartPlan {
	name, _, _ := strings.Cut(row.Name, " ")
	p.Name.Value, p.Title.Value = strings.ToLower(name), row.Name
	p.Notes = append([]parts.Text{{Value: words.Capital(row.For) + "."}}, p.Notes...)
	m := part.Work(j.job, p)
	if len(m.Errs) > 0 {
		return nil
	}
	return m.Out
}
