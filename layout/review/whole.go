package review

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// separate looks for assemblies that no joint connects to one that has more than half of the parts, once all joints are
// worked out. Parts that stand in no joint at all are left out.
func separate(r *reviewer) {
	if len(r.pl.Faults) > 0 {
		return
	}
	st, first := r.machine().Stage(), map[parts.Instance]*parts.Joint{}
	var joined []parts.Instance
	for _, j := range r.job.Joints {
		for _, ref := range j.Refs() {
			if i := ref.Instance(); first[i] == nil {
				first[i], joined = j, append(joined, i)
			}
		}
	}
	group, size := map[string]int{}, make([]int, len(joined)) // a group is known by the place of its first among them
	for n, i := range joined {
		if _, known := group[i.ID()]; !known {
			for id := range st.Together(len(st.Joints), i.ID()) {
				group[id] = n
			}
		}
		size[group[i.ID()]]++
	}
	if !slices.ContainsFunc(size, func(n int) bool { return 2*n > len(joined) }) {
		return // a job of several machines
	}
	for n, i := range joined {
		if size[n] > 0 && 2*size[n] <= len(joined) {
			its := seq.Keep(joined, func(o parts.Instance) bool { return group[o.ID()] == n })
			r.add(Finding{
				Part: i.Part, Pos: first[i].Pos, What: "no joint connects " + few(seq.Map(its, func(o parts.Instance) string { return copyTitle(r.job.Part(o.Part), o.Copy) })) + " to the rest",
				Rule: "the joints put one machine together", Fix: "add the joint that is missing, or give the other assembly a job of its own",
			})
		}
	}
}

// unjoined looks for screw holes and tapped holes of two parts that match each
// other alone and are in no joint.
func unjoined(r *reviewer) {
	for a, g := range r.groups() {
		for b, h := range r.groups() {
			if a != b && g.Size.Make == parts.ClearanceHole && h.Size.Make == parts.TappedHole && likeGroups(g, h) && !a.joined(g.Name.Value) &&
				!b.joined(h.Name.Value) && !r.standsOff(a.p, b.p, g.Size.Thread) {
				a.report(Check, g.Name.Value, g.Pos, Finding{
					What:    a.p.Title.Value + " and " + b.p.Title.Value + " have holes for each other, and no joint bolts them",
					Numbers: g.Name.Value + " and " + h.Name.Value + ", " + g.Size.Thread + " on " + r.mm(g.Pattern.PCD.Mm),
					Rule:    "what is drilled for each other is bolted", Fix: "add the bolt joint",
				})
			}
		}
	}
}

// standsOff tells whether a part is laid off another with nuts to buy for its studs, as a gland over its packing is.
func (r *reviewer) standsOff(p, on *parts.Part, thread string) bool {
	return slices.ContainsFunc(r.job.Laid(), func(l parts.Laid) bool {
		m := nutAlone().FindStringSubmatch(l.Loose.Buy.Value)
		return l.Part == p.Name.Value && l.On.Part == on.Name.Value && l.At.Gap.Mm != 0 && m != nil && sameThread(m[1], thread)
	})
}

// likeGroups tells whether as many screws of one thread go into two groups on one circle.
func likeGroups(g, h *parts.HoleGroup) bool {
	circle := g.Pattern.PCD.Set() && h.Pattern.PCD.Set() && geom.Alike(g.Pattern.PCD.Mm, h.Pattern.PCD.Mm)
	return circle && g.Pattern.Count == h.Pattern.Count && sameThread(g.Size.Thread, h.Size.Thread)
}

// forgotten looks for parts in no joint of a job that says which parts no joint fastens,
// and does not name them.
func (v *view) forgotten() {
	name := v.p.Name.Value
	if len(v.job.Loose) > 0 && len(v.job.Joints) > 0 && !v.job.Fastens(name) && !v.job.IsStud(name) && v.job.ByHand(name) == nil {
		v.report(Check, "", v.p.Name.Pos, Finding{
			What: v.p.Title.Value + " is in no joint, and loose does not name it",
			Rule: "a part is fastened, or said to be loose", Fix: "a joint that fastens it, or an entry under loose with what holds it",
		})
	}
}

// spareCopies looks for parts that joints use, and of which more are made.
func spareCopies(r *reviewer) {
	used := map[string][]int{}
	for _, j := range r.job.Joints {
		for _, ref := range j.Refs() {
			used[ref.Part] = seq.Add(used[ref.Part], ref.Copy)
		}
	}
	studs := map[string]int{} // one in each hole
	for _, j := range r.planned(parts.BoltKind) {
		studs[r.job.Joint(j.Name).Stud()] += j.Bolt.Count
	}
	for _, p := range r.job.Parts {
		n := words.Either(r.job.IsStud(p.Name.Value), studs[p.Name.Value], len(used[p.Name.Value]))
		if n > 0 && n < p.Quantity {
			r.add(Finding{
				Part: p.Name.Value, Pos: p.Name.Pos, What: "more copies of " + p.Title.Value + " are made than the joints use",
				Numbers: strconv.Itoa(p.Quantity) + " made, " + strconv.Itoa(n) + " used",
				Rule:    "each copy has its place", Fix: "quantity: " + strconv.Itoa(n) + ", a joint for the others, or accept it for spares",
			})
		}
	}
}

// unwelded finds copies of a part with a chamfer for a weld that are pressed
// together with another and not welded to it.
func (r *reviewer) unwelded(j *parts.Joint) {
	bore := j.Press.Bore
	p := r.job.Part(bore.Part)
	prepared := func(c parts.Chamfer) bool {
		of, _ := c.On()
		return c.For == "weld" && of == bore.Feature
	}
	welds := func(w *parts.Joint) bool {
		return w.Some(func(ref parts.JointRef) bool { return ref.Is(bore) })
	}
	if slices.ContainsFunc(p.Chamfers, prepared) && !slices.ContainsFunc(r.job.Of(parts.WeldKind), welds) {
		r.add(Finding{
			Part: j.Name.Value, Pos: j.Pos, What: p.Title.Value + " has a chamfer for a weld, and no joint welds it",
			Rule: "what is prepared for a weld is welded", Fix: "add the weld joint after this one",
		})
	}
}

// jointFace looks for flat parts that are bolted on the face that is prepared
// for a weld: the weld then stands in the joint.
func (r *reviewer) jointFace(j *parts.Joint) {
	for _, name := range []string{j.Bolt.Through.Part, j.Bolt.Into.Part} {
		v := r.viewOf(name)
		face, ok := r.faceOf(j.Name.Value, name)
		for _, c := range v.p.Chamfers {
			if ok && c.For == "weld" && strings.HasSuffix(c.Edge.Value, "-"+string(face)) {
				v.report(Stop, c.Edge.Value, c.Edge.Pos, Finding{
					What: "the weld at " + c.Edge.Value + " of " + v.p.Title.Value + " stands in the joint " + j.Name.Value,
					Rule: "a joint face is free of welds", Fix: "prepare the other face, or bolt the part on the other way round",
				})
			}
		}
	}
}

// weldSense looks at the numbers of welds.
var weldSense = together(
	each(everyPlan(parts.WeldKind), (*reviewer).weldSize, (*reviewer).weldLong, (*reviewer).squareOnRound, (*reviewer).slips, (*reviewer).shallow, (*reviewer).braceShort),
	of(everyPart, each(everyEnd, (*view).rootGap)),
)

// weldSize looks for a leg or a process that the thinner part does not stand, for one side of a tee, and for a
// fillet without a corner.
func (r *reviewer) weldSize(j *plan.JointPlan) {
	w, thin := r.job.Joint(j.Name).Weld, j.Weld.ThinnerMm
	fillet, most := w.Type == "fillet", thin+max(1, 0.2*thin)
	r.eachOf(Finding{Part: j.Name, Pos: r.jointPos(j.Name)},
		flaw{fillet && w.Size.Set() && thin > 0 && geom.Over(w.Size.Mm, most), Finding{
			What: j.Title + ": the leg is larger than the thinner part takes", Numbers: r.mm(w.Size.Mm) + " on " + r.mm(thin) + ", wanted at most " + r.mm(most), OverMm: over(w.Size.Mm),
			Rule: "a leg is about as large as the thinner part at most: more only burns and bends", Fix: "a smaller leg"}},
		flaw{fillet && r.tee(j) && j.Weld.OneSided(), Finding{
			What: j.Title + ": a tee is welded on one side only", Rule: "a fillet on one side tears open at its root", Fix: "sides: 2, or accept it for light brackets"}},
		flaw{fillet && r.barSeamMm(w.Part, false) > 0 && r.barSeamMm(w.To, false) > 0, Finding{
			What: j.Title + ": two ends meet flush, and a fillet has no corner but inside", Rule: "ends that meet are welded by a butt weld", Fix: "type: v, or square where the wall is thin"}},
		flaw{w.Process == "MMA" && thin > 0 && geom.Over(stickMm, thin), Finding{
			What: j.Title + ": a stick burns through the thinner part", Numbers: r.mm(thin) + ", wanted at least " + r.mm(stickMm), LeftMm: left(thin),
			Rule: "thin sheet is welded by TIG or MAG", Fix: "process: TIG or MAG"}},
	)
}

// tee tells whether a weld stands one plate on the edge of another, or on a bar.
func (r *reviewer) tee(j *plan.JointPlan) bool {
	in := r.job.Joint(j.Name)
	onEdge := in.Weld.To.Feature == "outline" || r.job.Part(in.Weld.To.Part).Kind == parts.BarPart
	return in.Weld.Part.Feature == "outline" && onEdge && (in.Place == nil || in.OnEdge())
}

// weldLong compares a length that is given with the edge.
func (r *reviewer) weldLong(j *plan.JointPlan) {
	w := r.job.Joint(j.Name).Weld
	if !w.Length.Set() {
		return
	}
	if edge := max(r.edgeMm(w.Part.Part), r.barSeamMm(w.Part, true)); edge > 0 && geom.Over(w.Length.Mm, edge) {
		r.ofJoint(j, Finding{
			What: j.Title + ": the weld is longer than the edge it is on", Numbers: r.mm(w.Length.Mm) + " on " + r.mm(edge), OverMm: over(w.Length.Mm - edge),
			Rule: "a weld lies on an edge", Source: "by geometry", Fix: "the length of the edge",
		})
	}
	edge, long := r.seamMm(r.job.Joint(j.Name)), w.Length.Mm
	switch {
	case j.Weld.CornerMm > 0: // on all sides
		edge, long = j.Weld.CornerMm, w.Length.Mm*float64(w.Sides)
	case j.Weld.DiameterMm > 0:
		edge = math.Pi * j.Weld.DiameterMm
	}
	if geom.Over(shortShare*edge, long) {
		r.ofJoint(j, Finding{
			What: j.Title + ": the weld holds a small part of the edge it is on", Numbers: r.mm(long) + " on " + r.mm(edge) + ", wanted at least " + r.mm(shortShare*edge), LeftMm: left(long),
			Rule: "a weld that carries runs over a quarter of its edge at the least", Fix: "the length of the edge, or accept it for a part that carries nothing",
		})
	}
}

// braceShort looks for a brace that is welded on by the far shorter of two sides that face one another: it is the wrong way round.
func (r *reviewer) braceShort(j *plan.JointPlan) {
	const least = 0.5 // common practice, no source: a brace is as wide at what it holds as anywhere
	in := r.job.Joint(j.Name)
	v := r.viewOf(in.Weld.Part.Part)
	if !in.OnEdge() || v.p.For != parts.Brace {
		return
	}
	far := map[string]string{"left": "right", "right": "left", "top": "bottom", "bottom": "top"}[in.Place.With]
	if long, other := v.sideMm(in.Place.With), v.sideMm(far); geom.Over(least*other, long) {
		r.ofJoint(j, Finding{
			What: j.Title + ": the brace is welded on by its short side, " + in.Place.With, Numbers: r.mm(long) + ", its " + far + " " + r.mm(other), LeftMm: left(long),
			Rule: "a brace holds by its long sides", Fix: "with: " + far,
		})
	}
}

// sideMm is how long the outline of a flat part lies along one side of its box.
func (v *view) sideMm(side string) float64 {
	way := map[string]plan.XY{"left": {XMm: -1}, "right": {XMm: 1}, "bottom": {YMm: -1}, "top": {YMm: 1}}[side]
	off := func(p plan.XY) float64 { return p.XMm*way.XMm + p.YMm*way.YMm }
	along := func(p plan.XY) float64 { return p.XMm*way.YMm + p.YMm*way.XMm }
	most := seq.Max(-endless, v.outline, off)
	on := seq.Keep(v.outline, func(p plan.XY) bool { return geom.Alike(off(p), most) })
	return seq.Max(-endless, on, along) + seq.Max(-endless, on, func(p plan.XY) float64 { return -along(p) })
}

// stickMm is the thinnest sheet that is welded by stick. Common practice, no source: from about
// 2.5 mm up, by the 2 mm electrode.
const stickMm = 2.4

// shallow looks for edges prepared for a bevel that hardly bevel it.
func (r *reviewer) shallow(j *plan.JointPlan) {
	const least = 0.5
	in := r.job.Joint(j.Name)
	v := r.viewOf(in.Weld.Part.Part)
	if in.Weld.Type != "bevel" && in.Weld.Type != "v" {
		return
	}
	for _, c := range v.p.Chamfers {
		if of, _ := c.On(); c.For == "weld" && of == in.Weld.Part.Feature {
			v.atLeast(c.Edge.Value, c.Size.Pos, c.Size.Mm, least*j.Weld.ThinnerMm, Finding{
				What: "the weld at " + c.Edge.Value + " of " + v.p.Title.Value + " is prepared too shallow", Numbers: " for a wall of " + r.mm(j.Weld.ThinnerMm) + ", wanted at least ",
				Rule: "a bevel goes half through the thinner part at the least", Fix: "a larger chamfer",
			})
		}
	}
}

// shortShare is the least part of an edge that its weld runs over. Common practice,
// no source: of a broken weld a third.
const shortShare = 0.25

// seamMm is the edge that a weld lies on: round the end of a bar, or the outline of
// the smaller of two plates, of a rectangle on its edge that edge. 0 if it is neither.
func (r *reviewer) seamMm(in *parts.Joint) float64 {
	var least float64
	for i, ref := range []parts.JointRef{in.Weld.Part, in.Weld.To} {
		mm := words.Either(ref.Feature == "outline", r.edgeMm(ref.Part), r.barSeamMm(ref, false))
		if p := r.job.Part(ref.Part); i == 0 && in.OnEdge() && p.Flat() && p.Outline.Shape == parts.RectangleOutline { // the edge that it stands on
			if wide, high := r.viewOf(ref.Part).box(); in.Place.With == "left" || in.Place.With == "right" {
				mm = high
			} else {
				mm = wide
			}
		}
		if mm > 0 && (least == 0 || mm < least) {
			least = mm
		}
	}
	return least
}

// copedShare is how much longer than round the bar an end may be that is coped onto a
// round. Common practice, no source: the arc over a tube as wide as the bar is π/2 of its
// width, on two of the four sides.
const copedShare = 1.3

// barSeamMm is the way round the end of a bar, as cut or else as if it were square; 0 of
// anything else.
func (r *reviewer) barSeamMm(ref parts.JointRef, asCut bool) float64 {
	p, share := r.job.Part(ref.Part), 1.0
	switch end := p.BarEnd(ref.Feature); {
	case end == nil:
		return 0
	case !asCut:
	case end.Mitred():
		share = 1 / math.Cos(end.Mitre.Deg*math.Pi/180)
	case end.Coped():
		share = copedShare
	}
	return share * 2 * (p.Bar.Width.Mm + p.Bar.Depth.Mm)
}

// offRoundMm is the widest gap that a fillet bridges without a longer leg, 1/16 in: AWS
// D1.1, fit-up of fillet welds.
const offRoundMm = 1.6

// squareOnRound looks for a bar whose square end is welded to a round: it touches along a
// line, and its sides stand off.
func (r *reviewer) squareOnRound(j *plan.JointPlan) {
	w := r.job.Joint(j.Name).Weld
	p, to := r.job.Part(w.Part.Part), r.viewOf(w.To.Part)
	end, c := p.BarEnd(w.Part.Feature), named(to.outside, w.To.Feature)
	if end == nil || c == nil || !to.turned() || end.Mitred() || end.Coped() {
		return
	}
	half := min(p.Bar.Width.Mm, p.Bar.Depth.Mm) / 2
	off := c.RadiusMm()
	if half < c.RadiusMm() {
		off -= math.Sqrt(c.RadiusMm()*c.RadiusMm() - half*half)
	}
	if off > offRoundMm {
		r.ofJoint(j, Finding{
			What: j.Title + ": a square end stands on a round", OverMm: over(off), Numbers: "its sides stand off by " + r.mm(off) + ", wanted at most " + r.mm(offRoundMm),
			Rule: "an end is coped to the round that it is welded to", Fix: "onto: " + w.To.Part + "." + w.To.Feature + " at the bar's end, with its place",
		})
	}
}

// edgeMm is the longest stretch of outline that a part is welded along: the
// longer side of a rectangle, two sides of the box round anything else. 0 if it
// is not flat.
func (r *reviewer) edgeMm(name string) float64 {
	v := r.viewOf(name)
	if !v.p.Flat() {
		return 0
	}
	wide, high := v.box()
	if p := v.p; p.Outline.Shape == parts.SquareOutline || p.Outline.Shape == parts.RectangleOutline {
		return max(wide, high)
	}
	return wide + high
}

// rootGap looks for a saddle with more gap than a weld bridges.
func (v *view) rootGap(end *parts.TubeEnd) {
	const mostMm = 4
	v.atMost("", end.Gap.Pos, end.Gap.Mm, mostMm, Finding{
		What: "the root gap of " + v.p.Title.Value + " is too wide to weld",
		Rule: "a root gap is bridged by one run", Fix: v.mm(1) + " to " + v.mm(3),
	})
}

// heldShare is the least part of a bore that a press holds by. Common practice, no
// source.
const heldShare = 0.25

// shortPress looks for presses that hold on a narrow ring of their bore: what
// chamfers and the ends leave.
func (r *reviewer) shortPress(j *plan.JointPlan) {
	whole := j.B.ToMm - j.B.FromMm
	if on := j.Press.LengthMm; geom.Over(heldShare*whole, on) {
		r.ofJoint(j, Finding{
			LeftMm: left(on), What: j.Title + ": little of the bore is left to hold", Numbers: r.mm(on) + " of " + r.mm(whole) + ", wanted at least " + r.mm(heldShare*whole),
			Rule: "a press holds by a quarter of its bore at the least, or the part tilts", Fix: "smaller chamfers, a thicker part, or less below its face",
		})
	}
}
