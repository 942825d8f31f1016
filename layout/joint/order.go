package joint

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// rule is a reason why one joint comes before another.
type rule struct {
	first, then *joint
	why         string
}

// order puts the joints in the order to make them: the job's before and after,
// the rules of the trade, then as written. An order that cannot be is a fault.
func (j *assembly) order(all []*joint) (done []*joint) {
	rules := j.saidRules(all)
	type pair struct{ first, then *joint }
	said, known := map[pair]bool{}, map[pair]bool{}
	for _, r := range rules {
		said[pair{r.first, r.then}], known[pair{r.first, r.then}] = true, true
	}
	for _, r := range j.tradeRules(all) {
		switch {
		case said[pair{r.then, r.first}]:
			r.then.flaws = append(r.then.flaws, plan.Problem{Kind: plan.AgainstTheTrade, Args: []plan.Arg{plan.Named(words.Spaced(r.first.in.Name.Value)), plan.Named(r.why)}})
		case !known[pair{r.first, r.then}]:
			known[pair{r.first, r.then}] = true
			rules = append(rules, r)
		}
	}
	done = sorted(all, rules)
	if late := j.lateWelds(done, rules); len(late) > 0 {
		rules = append(rules, late...)
		done = sorted(all, rules)
	}
	for _, r := range rules {
		r.then.why = append(r.then.why, r)
	}
	if len(done) < len(all) {
		left := seq.Keep(all, func(t *joint) bool { return !slices.Contains(done, t) })
		j.cycle(left, rules)
		return append(done, left...)
	}
	return done
}

// sorted puts joints in an order that keeps the rules, else as they are given.
// Joints that wait for each other are left out.
func sorted(all []*joint, rules []rule) (done []*joint) {
	waits := map[*joint]int{} // rules that a joint still waits for
	frees := map[*joint][]*joint{}
	for _, r := range rules {
		waits[r.then]++
		frees[r.first] = append(frees[r.first], r.then)
	}
	place := map[*joint]int{}
	var ready []int // places of the joints that wait for nothing, rising
	for i, t := range all {
		place[t] = i
		if waits[t] == 0 {
			ready = append(ready, i)
		}
	}
	for len(ready) > 0 {
		t := all[ready[0]]
		ready = ready[1:]
		done = append(done, t)
		for _, next := range frees[t] {
			if waits[next]--; waits[next] == 0 {
				at, _ := slices.BinarySearch(ready, place[next])
				ready = slices.Insert(ready, at, place[next])
			}
		}
	}
	return done
}

// bodies are parts that hang together: each leads to another of its body, but one that stands for all of it.
type bodies map[parts.Instance]parts.Instance

// lateWelds are rules for welds that come after something is bolted to what
// they weld, through parts that other welds tie to it. Where the job wants it so
// it is a flaw of the weld. Common practice, no source.
func (j *assembly) lateWelds(done []*joint, rules []rule) (late []rule) {
	welded := bodies{}
	for _, t := range ofKind(done, parts.WeldKind) {
		welded.tie(t.a.Instance(), t.b.Instance())
	}
	bolted := map[parts.Instance][]*joint{} // of what is welded together in the end
	for _, t := range done {
		a, b := welded.of(t.a.Instance()), welded.of(t.b.Instance())
		switch {
		case !t.forGood() && a != b:
			for _, p := range t.held() { // what it clamps between the two too
				bolted[welded.of(p)] = append(bolted[welded.of(p)], t)
			}
		case t.is(parts.WeldKind) && len(bolted[a]) > 0:
			late = append(late, t.after(bolted[a], rules)...)
		}
	}
	return late
}

// tie makes the bodies of two parts one.
func (b bodies) tie(x, y parts.Instance) {
	if x, y = b.of(x), b.of(y); x != y {
		b[x] = y
	}
}

// of is the part that stands for the body of a part.
func (b bodies) of(i parts.Instance) parts.Instance {
	for next, tied := b[i]; tied; next, tied = b[i] {
		if far, on := b[next]; on { // the next time it is nearer
			b[i] = far
		}
		i = next
	}
	return i
}

// after judges a weld that comes after bolts: a flaw where the rules lead from
// one to it, else a rule that puts it before them.
func (t *joint) after(bolts []*joint, rules []rule) (late []rule) {
	before := earlier(rules, t)
	said := false
	for _, b := range bolts {
		switch {
		case !before[b]:
			late = append(late, rule{t, b, weldBeforeBolting})
		case !said:
			said = true
			t.flaws = append(t.flaws, plan.Problem{Kind: plan.WeldLate, Args: []plan.Arg{plan.Named(words.Spaced(b.in.Name.Value))}})
		}
	}
	return late
}

// earlier are the joints that rules put before one.
func earlier(rules []rule, t *joint) map[*joint]bool {
	before := map[*joint][]*joint{}
	for _, r := range rules {
		before[r.then] = append(before[r.then], r.first)
	}
	seen := map[*joint]bool{t: true}
	for next := []*joint{t}; len(next) > 0; next = next[1:] {
		for _, o := range before[next[0]] {
			if !seen[o] {
				seen[o] = true
				next = append(next, o)
			}
		}
	}
	return seen
}

// cycle reports joints that wait for each other.
func (j *shop) cycle(left []*joint, rules []rule) {
	waits := func(t *joint) *rule {
		return seq.At(rules, func(r *rule) bool { return r.then == t && slices.Contains(left, r.first) })
	}
	var path []*joint
	t := left[0]
	for !slices.Contains(path, t) {
		path = append(path, t)
		t = waits(t).first
	}
	path = path[slices.Index(path, t):]
	var said []string
	for _, t := range path {
		r := waits(t)
		said = append(said, t.in.Name.Value+" comes after "+r.first.in.Name.Value+" ("+r.why+")")
	}
	path[0].refuse(path[0].in.Pos, plan.WaitForEachOther, plan.Named(strings.Join(said, "; ")))
}

func (j *shop) saidRules(all []*joint) []rule {
	var out []rule
	add := func(first, then *joint) {
		if first != nil && then != nil { // one that cannot be worked out waits for nothing
			out = append(out, rule{first, then, "the job says so"})
		}
	}
	named := func(name string) *joint {
		return seq.First(all, func(t *joint) bool { return t.in.Name.Value == name })
	}
	for _, t := range all {
		for _, n := range t.in.Before {
			add(t, named(n.Value))
		}
		for _, n := range t.in.After {
			add(named(n.Value), t)
		}
	}
	return out
}

// trade says which of two joints comes first, by their kinds, where when is so, and why. Common practice, no source.
var trade = map[[2]parts.JointKind]struct {
	why  string
	when func(first, then *joint, all []*joint) bool
}{
	{parts.PressKind, parts.WeldKind}:   {"put together before it is welded", func(t, o *joint, _ []*joint) bool { return t.joins(o) }},
	{parts.WeldKind, parts.BearingKind}: {"welding heat pulls a bore out of size: weld, measure the bore cold, then press", sharing},
	{parts.WeldKind, parts.PressKind}: {"welding heat pulls a bore out of size: weld, measure the bore cold, then press",
		func(t, o *joint, all []*joint) bool { return t.shares(o) && !welded(o, all) }},
	{parts.PressKind, parts.SlideKind}:  {"a bush closes as it is pressed in: before its shaft", (*joint).opens},
	{parts.WeldKind, parts.SlideKind}:   {"welding heat pulls a bore out of size: weld, measure the bore cold, then slide it on", sharing},
	{parts.PressKind, parts.ScrewKind}:  {"a thread closes as it is pressed in: before its screw", sharing},
	{parts.WeldKind, parts.ScrewKind}:   {"weld before threads meet: heat and spatter bind them", sharing},
	{parts.WeldKind, parts.BoltKind}:    {weldBeforeBolting, sharing},
	{parts.BearingKind, parts.BoltKind}: {"the bearing goes in first", func(t, o *joint, _ []*joint) bool { return o.covers(t) }},
	{parts.SlideKind, parts.BoltKind}:   {"what keeps a hub goes on after it", func(t, o *joint, _ []*joint) bool { return t.in.Slide.KeptBy.Is(o.in.Bolt.Into) }},
}

func sharing(first, then *joint, _ []*joint) bool { return first.shares(then) }

// opens tells whether a bush that is pressed in is one of those which a shaft that turns goes through at once.
func (t *joint) opens(shaft *joint, all []*joint) bool {
	return shaft.turns() && slices.ContainsFunc(all, func(o *joint) bool {
		return o.turns() && o.a.Instance() == t.a.Instance() && o.b.Instance() == shaft.b.Instance()
	})
}

const weldBeforeBolting = "weld before bolting: heat pulls the joint face"

// tradeRules are what the trade knows. Common practice, no source.
func (j *assembly) tradeRules(all []*joint) (out []rule) {
	for _, t := range all {
		for _, o := range all {
			if r, ok := trade[[2]parts.JointKind{t.in.Kind, o.in.Kind}]; ok && r.when(t, o, all) {
				out = append(out, rule{t, o, r.why})
			}
		}
		out = append(out, j.reachRules(t, all)...)
	}
	return out
}

// shares tells whether two joints hold a part in common, joins whether they are between the same two.
func (t *joint) shares(o *joint) bool {
	return o.takes(t.a.Instance()) || o.takes(t.b.Instance()) || slices.ContainsFunc(t.in.Clamped(), func(r parts.JointRef) bool { return o.takes(r.Instance()) })
}

func (t *joint) joins(o *joint) bool {
	_, other, ok := t.from(o.a.Instance())
	return ok && other.Instance() == o.b.Instance()
}

// welded tells whether a pressed pair is welded as well: the press only locates.
func welded(o *joint, all []*joint) bool {
	return slices.ContainsFunc(ofKind(all, parts.WeldKind), o.joins)
}

// covers tells whether a bolted joint closes the end of the housing where the
// bearing goes in.
func (t *joint) covers(bearing *joint) bool {
	h := bearing.b
	if h.step == nil || t.b.Instance() != h.Instance() || t.b.group == nil {
		return false
	}
	end := parts.Front
	if h.step.FromMm+h.step.ToMm > h.r.LengthMm() {
		end = parts.Back
	}
	return t.meeting().Second == end
}

// reachRules finds the parts that come to lie over the heads (or nuts) of a
// bolted joint: the bolts go in before them.
func (j *assembly) reachRules(t *joint, all []*joint) (out []rule) {
	if !t.is(parts.BoltKind) || !t.axis {
		return nil
	}
	for _, side := range j.headSides(t) {
		for p := range seq.Refs(j.placed) {
			if p.group != side.group || t.takes(p.Instance) {
				continue
			}
			if gap, over := j.over(p, side); !over || gap > side.needMm {
				continue
			}
			if o := t.brings(p.Instance, all); o != nil {
				out = append(out, rule{t, o, copyTitle(p.r, p.Copy) + " covers the " + side.what})
			}
		}
	}
	return out
}

// brings is the joint by which a part comes to those of a bolted joint: with what it is welded or
// pressed on, which is made before, its first joint otherwise. nil where it comes by that joint itself.
func (t *joint) brings(part parts.Instance, all []*joint) (by *joint) {
	for with, i := []parts.Instance{part}, 0; i < len(with); i++ {
		for _, o := range all {
			_, other, ok := o.from(with[i])
			if !ok || o == t || o.joins(t) {
				continue
			}
			by = cmp.Or(by, o)
			if !o.forGood() || t.has(other.Instance()) {
				return o
			}
			with = seq.Add(with, other.Instance())
		}
	}
	return by
}

// headSide is where the heads or nuts of a bolted joint sit in the assembly.
type headSide struct {
	what   string // heads or nuts
	isNut  bool
	on     feature
	mate   parts.Face // of what they sit on, away from them
	headMm float64
	group  int
	zMm    float64 // the face they bear on
	dir    float64 // outward, along the assembly's axis
	pts    []plan.XY
	far    []plan.XY // where those come to as far as slots let the parts be shifted
	needMm float64   // room along the axis for the head and the tool on it
	sunkMm float64   // depth of the counterbore
}

// Room above a head for the hand: a hexagon is reached from the side with a
// spanner, a socket head needs its key in line. Common practice, no source.
const (
	sideRoomMm = 25.0
	keyRoomMm  = 100.0
)

// headSides are the head's side and, with nuts or studs, the other.
func (j *assembly) headSides(t *joint) (out []headSide) {
	if j.at(t.a.Instance()) == nil || j.at(t.b.Instance()) == nil || t.bolt == nil || t.walls() {
		return nil
	}
	m := t.meeting()
	sides := []headSide{{what: "heads", on: t.a, mate: m.First, headMm: t.headHighMm()}, {what: "nuts", on: t.b, mate: m.Second, headMm: t.bolt.NutHeightMm, isNut: true}}
	if t.b.group.Size.Thread != nil {
		sides = sides[:1]
	}
	for _, s := range sides {
		if j.seat(t, &s) {
			out = append(out, s)
		}
	}
	return out
}

// headHighMm is how high the heads are, or the nuts on studs.
func (t *joint) headHighMm() float64 {
	switch s, _ := t.bolt.Sunk(); {
	case t.in.Stud() != "":
		return t.bolt.NutHeightMm
	case t.head() == bolts.Socket:
		return t.bolt.SocketHeadHeightMm
	case t.head() == bolts.Countersunk:
		return s.HeightMm
	}
	return t.bolt.HeadHeightMm
}

// seat says where heads or nuts sit in the assembly, and what room they need there; false where there is no face.
func (j *assembly) seat(t *joint, s *headSide) bool {
	z, thick, ok := s.on.plane(s.mate)
	if !ok {
		return false
	}
	p := j.at(s.on.Instance())
	s.group, s.pts = p.group, j.pattern(s.on)
	s.zMm, s.dir = p.at.z0+p.at.s*(z-s.mate.Outward()*thick), -p.at.way(s.mate.Outward())
	if t.out != nil && t.out.Bolt != nil && t.out.Bolt.OffMm != nil {
		s.pts, s.far = j.stood(t, s.on)
	}
	if s.on.group.Face != s.mate {
		s.sunkMm = t.headsMm(s.on)
		if t.head() == bolts.Countersunk && !s.isNut {
			s.sunkMm += s.headMm
		}
	}
	s.needMm = s.headMm - s.sunkMm + sideRoomMm
	if !s.isNut && t.head().Keyed() {
		s.needMm = s.headMm - s.sunkMm + keyRoomMm
	}
	return true
}

// all are the places of bolts, and those that they come to.
func (s headSide) all() []plan.XY { return append(slices.Clone(s.pts), s.far...) }

// outMm is how far out of the face that the heads bear on a place of a part lies.
func (s headSide) outMm(p *placedPart, mm float64) float64 {
	return (p.at.z0 + p.at.s*mm - s.zMm) * s.dir
}

// over tells whether a part has metal above the heads, and how far above their
// bearing face.
func (j *assembly) over(p *placedPart, side headSide) (gapMm float64, over bool) {
	gapMm = math.Inf(1)
	far := math.Inf(1)
	if p.r.Part.Flat() {
		b := p.r.Bounds()
		far = math.Hypot(max(-b.Min.XMm, b.Max.XMm), max(-b.Min.YMm, b.Max.YMm))
	}
	for _, q := range side.all() {
		radius := math.Hypot(q.XMm, q.YMm)
		if radius > far {
			continue
		}
		for _, m := range p.r.MetalAt(radius) {
			for _, z := range []float64{m.FromMm, m.ToMm} {
				if d := side.outMm(p, z); !geom.Over(0, d) {
					gapMm, over = math.Min(gapMm, math.Max(0, d)), true
				}
			}
		}
	}
	return gapMm, over
}
