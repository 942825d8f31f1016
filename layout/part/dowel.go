package part

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Dowel is what a group of holes for dowel pins is reamed together with, once the two parts are bolted to each other.
// Made each by itself, no distance between two centres is held so well that two pins without play go in.
type Dowel struct {
	Parts []string // the other part; of a part in several copies those that they are bolted to
	Title string   // as sheets name it
	Group string   // and its holes
	Guide bool     // these are drilled first, and guide the drill
}

// dowels finds the groups that are reamed with those of another part.
func (s *Sizes) dowels() {
	for m := range seq.Refs(s.Groups) {
		if m.pinned() {
			m.Dowel = s.dowel(m)
		}
		if m.Dowel != nil {
			m.Group.ReamedWith, m.Group.SizeText = strings.Join(m.Dowel.Parts, ", "), "Ø"+m.Size.Size.worked(s.W)+", "+m.together(s)
		}
	}
}

// pinned tells whether pins are driven into the holes of a group, which are reamed for them.
func (m *Group) pinned() bool {
	return m.Hole != nil && m.Hole.For == parts.Pins && m.Size.Reamed
}

// dowel is the group of the parts bolted to this one that the same pins go into; nil if there is none.
func (s *Sizes) dowel(m *Group) (found *Dowel) {
	for _, j := range s.Job.Of(parts.BoltKind) {
		p, g, guide := s.sharesPins(m, j)
		switch {
		case g == nil:
		case found == nil:
			found = &Dowel{[]string{p.Name.Value}, p.Title.Value, g.Name.Value, guide}
		case found.Guide == guide && found.Group == g.Name.Value && !slices.Contains(found.Parts, p.Name.Value):
			found.Parts, found.Title = append(found.Parts, p.Name.Value), found.Title+" or "+p.Title.Value
		}
	}
	return found
}

// sharesPins is the group of the other part of a bolt joint that the same pins go into: reamed alike and placed alike, one of the
// two in the part that the bolts go through, which guides, and through that; nil if there is none. What studs hold apart shares
// no pins.
func (s *Sizes) sharesPins(m *Group, j *parts.Joint) (p *parts.Part, g *Group, guide bool) {
	own, other := j.Bolt.Into, j.Bolt.Through
	if guide = j.Bolt.Through.Part == s.Part.Name.Value; guide {
		own, other = other, own
	}
	if p = s.Job.Part(other.Part); own.Part != s.Part.Name.Value || other.Part == own.Part || p == nil {
		return p, nil, guide
	}
	o, errs := newSizes(s.Job, p)
	bolts, theirs := s.GroupNamed(own.Feature), o.GroupNamed(other.Feature)
	if len(errs) > 0 || bolts == nil || theirs == nil || s.studsPart(j, bolts) {
		return p, nil, guide
	}
	return p, seq.At(o.Groups, func(g *Group) bool { return g.takesPinsOf(m, guide) && alikePlaced(m, bolts, g, theirs) }), guide
}

// studsPart tells whether the studs of a joint have a body that does not go into its holes, and so holds its parts apart.
func (s *Sizes) studsPart(j *parts.Joint, holes *Group) bool {
	stud := s.Job.Part(j.Stud())
	if stud == nil || stud.Profile == nil {
		return false
	}
	steps := stud.Profile.Outside
	last := len(steps) - 1
	return slices.ContainsFunc(steps[min(1, last):max(1, last)], func(o parts.Step) bool { return o.Size.Nominal.Mm > holes.Size.FinishedMm })
}

// takesPinsOf tells whether the holes of a group are reamed as those of another, with the ones that guide through their part.
func (m *Group) takesPinsOf(o *Group, guide bool) bool {
	through := m
	if guide {
		through = o
	}
	return m.pinned() && through.Through && m.Size.Size.NominalMm == o.Size.Size.NominalMm && m.Size.Size.Class == o.Size.Size.Class
}

// alikePlaced tells whether two groups lie alike beside the bolts of one joint in their parts: the distances between
// them and to the bolts are the same, however the parts are turned.
func alikePlaced(m, bolts, o, others *Group) bool {
	a, b := distances(m, bolts), distances(o, others)
	return slices.EqualFunc(a, b, func(x, y float64) bool { return math.Abs(x-y) < geom.CloseMm })
}

// distances are those between the places of a group and from them to those of another, sorted.
func distances(m, to *Group) (out []float64) {
	for _, p := range m.Points {
		for _, q := range slices.Concat(m.Points, to.Points) {
			out = append(out, geom.Distance(p, q))
		}
	}
	slices.Sort(out)
	return out
}

// guided is the hole as it is drilled on the sheet of the part whose holes guide the drill.
func (m *Group) guided() Made {
	return Made{DrillMm: m.Size.DrillMm, FinishedMm: m.Size.DrillMm, Size: Sized{NominalMm: m.Size.DrillMm}}
}

// Pin is a dowel pin as it is ordered, by this group or by the one it is reamed with.
func (m *Group) Pin(o *Group, w words.Writer) string {
	return cmp.Or(m.Hole.Fitted.Value, o.Hole.Fitted.Value, "dowel pin "+w.Dia(m.Size.FinishedMm))
}

// undrilled is what the sheet of a part says of holes that are drilled through those of another.
func (m *Group) undrilled(b *bench) plan.Operation {
	return plan.Operation{
		Machine: plan.Drill, Title: words.Spaced(m.Name.Value) + ": not on this part alone", Refs: []int{b.ref(m)},
		Do: []string{"Neither punch nor drill " + m.placesWords() + ": once " + m.Dowel.Title + " is bolted to it, drilled through its holes " +
			words.Spaced(m.Dowel.Group) + " and reamed with them, in that step."},
	}
}

// together says how the holes of a group come to their size with those of another part.
func (m *Group) together(s *Sizes) string {
	if d := m.Dowel; !d.Guide {
		return "drilled and reamed through " + d.Title
	}
	return "drill " + s.DowelDrill(m) + ", reamed with " + m.Dowel.Title
}

// DowelDrill is the drill that a group for dowel pins is drilled with before it is reamed, as the rack is marked.
func (s *Sizes) DowelDrill(m *Group) string {
	way := s.holeWay(m.guided(), 0, false)
	if n := len(way.Drills); n > 0 {
		return s.drillName(way.Drills[n-1].Size)
	}
	return s.W.Drill(m.Size.DrillMm)
}

func (h holes) drill(b *bench, m *Group, o *plan.Operation) {
	size := m.Size
	if m.Dowel != nil {
		size = m.guided()
	}
	depth, apart := b.drilledMm(m)
	way := b.holeWay(size, depth, !m.Through)
	if wall, _ := b.form.wallsMm(b.Sizes, m); m.BothWalls() && slices.ContainsFunc(way.Drills, func(d cutting.DrillStep) bool { return b.fluted(way, d) != "" }) {
		way, apart = b.holeWay(size, wall, false), " Each wall from its own side: carry the marks square round the bar."
	}
	saw := b.holeSaw(m, &way)
	centred := slices.ContainsFunc(b.centres, func(c *centreHole) bool { return b.drilledAway(c) == m })
	switch j := b.jig(m); {
	case j != nil && len(way.Drills) > 0:
		o.Do = append(o.Do, b.jigLines(j, m, way)...)
	case m.byTable():
		o.Machine = plan.Mill
		o.Do = append(append(o.Do, b.tableLine(m)), b.drillLines(way, b.central(m))...)
	case centred:
		o.Do = append(o.Do, b.drillLines(way, true)...)
	default:
		o.Do = append(append(o.Do, "Centre-drill "+m.placesWords()+"."), b.drillLines(way, b.central(m))...)
	}
	o.Do = append(o.Do, saw...)
	o.Do = append(o.Do, "Depth: "+m.Group.DepthText+words.When(!m.Through && size.Thread != nil, " + point")+"."+apart)
	if seat := seatMm(m); seat > 0 && centred {
		o.Do = append(o.Do, "Countersink 60° to "+b.W.Dia(seat)+": the thread begins clean, and the part runs on that centre again.")
	}
	if m.Dowel != nil {
		o.Do = append(o.Do, "Not reamed here: once "+m.Dowel.Title+" is bolted to it, both are, in that step.")
		return
	}
	o.Do = append(o.Do, b.finishLines(m.Size, way)...)
	if m.Size.Thread == nil {
		o.Limits = b.limits(words.Spaced(m.Name.Value), m.Size.Size)
	}
	if o.Limits != nil && m.Size.DrillMm != m.Size.FinishedMm {
		o.Gauge = plugGauge
	}
}

// operation drills, reams, taps and sinks the group.
func (h holes) operation(b *bench, m *Group, cut bool) {
	if m.Dowel != nil && !m.Dowel.Guide {
		b.op(m.undrilled(b))
		return
	}
	o := plan.Operation{
		Machine: plan.Drill, Title: words.Spaced(m.Name.Value) + ": " + words.CountOf(m.Group.Count) + m.Group.SizeText,
		Holding: b.form.heldUnder(b, m),
		Refs:    []int{b.ref(m)},
	}
	if b.central(m) {
		o.Machine, o.Holding = plan.Lathe, b.heldCentral(m)
	}
	mouth := h.sunk(b, m)
	if cut {
		mouth = mouth[:2]
	} else {
		h.drill(b, m, &o)
	}
	extra := words.Join("; ", mouth...)
	switch sunk := h.in.Counterbore != nil || h.in.Countersink != nil; {
	case extra == "":
	case sunk && m.Group.PunchedFrom != "":
		o.Do = append(o.Do, "Turn it over, "+string(m.Face)+" face up: "+extra+".")
	default:
		o.Do = append(o.Do, words.Capital(extra)+".")
	}
	switch {
	case len(o.Do) == 0:
	case b.central(m):
		b.op(o)
	default:
		b.op(warn(o, clampPart))
	}
}
