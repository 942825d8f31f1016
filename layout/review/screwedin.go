package review

import (
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// screwedInto compares a screw that is bought with the threads of the part that its words screw it into: those that no joint fills,
// where they name none of them.
func (r *reviewer) screwedInto(e *parts.Loose) {
	m := screwedIn().FindStringSubmatch(e.How.Value)
	o, ok := orderOf(e.Item.Value)
	if m == nil || !ok || e.Part.Value != "" {
		return
	}
	for _, v := range r.all() {
		if v.p.NamedIn(m[2]) {
			v.screwed(e, o, m[1] != "")
		}
	}
}

// screwed is screwedInto for the part; each tells whether all its copies have one.
func (v *view) screwed(e *parts.Loose, o screwOrder, each bool) {
	said := v.untitled(e.Item.Value + " " + e.How.Value)
	free := seq.Keep(v.p.Holes, func(g parts.HoleGroup) bool { return g.Size.Make == parts.TappedHole && !v.jointNames(g.Name.Value) })
	like := seq.Keep(free, func(g parts.HoleGroup) bool { return sameThread(g.Size.Thread, o.thread.Designation) })
	if len(free) == 0 || seq.At(free, func(g *parts.HoleGroup) bool { return saysHoles(said, g.Name.Value) }) != nil ||
		len(like) == 0 && v.threadElse(o.thread) {
		return
	}
	g := &free[0]
	if len(like) > 0 {
		g = &like[0]
	}
	f := v.here(g.Name.Value, e.Item.Pos)
	f.Source = "by the job"
	what, need := "the screws bought for "+g.Name.Value+" of "+v.p.Title.Value, number(float64(v.count(g)))
	wants, misses, rule := o.thread.MajorMm, 0, "a screw holds in one diameter of thread"
	if of := v.m.GroupNamed(g.Name.Value); of.Through && bearsOn().MatchString(e.How.Value) {
		_, thick, _ := v.m.PlaneOf(of, of.Face)
		wants, rule = max(wants, thick), "a screw that bears on something comes through its thread"
		if len(v.pl.Faults) == 0 { // else it is not known where all stands
			misses = seq.Sum(v.machine().Under(v.p.Name.Value, g.Name.Value, o.longMm-thick), func(title string) int { return words.Either(title == "", 1, 0) })
		}
	}
	if o.nut() {
		wants, rule = wants+nutted*o.thread.MajorMm, rule+", and has room for its nut"
	}
	v.firstOf(f,
		flaw{len(like) == 0, Finding{
			Severity: Stop, What: what + " have another thread", Numbers: o.thread.Designation + " in " + g.Size.Thread, Rule: "a screw has the thread of its hole", Fix: "one thread in both places"}},
		flaw{each && len(like) == 1 && max(1, e.Count) < v.count(g) && !v.boughtElse(e, o), Finding{
			What: what + " are fewer than the holes", Numbers: number(float64(max(1, e.Count))) + " for " + need, Rule: "each hole has its screw", Fix: "count: " + need}},
		flaw{geom.Over(wants, o.longMm), Finding{
			What: what + " are too short", Numbers: v.mm(o.longMm) + " long, wanted at least " + v.mm(wants), LeftMm: left(o.longMm), Rule: rule, Source: practice, Fix: "a longer screw"}},
		flaw{misses > 0, Finding{
			What: what + " bear on nothing: their line passes beside all that is there", Numbers: number(float64(misses)) + " of " + need + ", " + v.mm(o.longMm) + " long",
			Rule: "a screw that bears on something meets it", Source: "by geometry", Fix: "the holes, or the part, where the screw meets what it bears on, or a longer screw"}},
	)
}

// threadElse tells whether a step of the part has a thread.
func (v *view) threadElse(t threads.Thread) bool {
	return seq.First(v.steps(), func(c *cylinder) bool { return sameThread(c.Drawn.Size.Thread.Value, t.Designation) }) != nil
}

// boughtElse tells whether another entry orders screws of the same thread that its words put into the part.
func (v *view) boughtElse(e *parts.Loose, o screwOrder) bool {
	return seq.At(v.job.Loose, func(other *parts.Loose) bool {
		its, ok := orderOf(other.Item.Value)
		return other != e && ok && its.thread.Designation == o.thread.Designation && v.p.NamedIn(other.How.Value)
	}) != nil
}
