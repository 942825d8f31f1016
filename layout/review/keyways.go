package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/keys"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// keywayDepth looks for a keyway drawn deeper or less deep than the key of its
// diameter has it, within what that standard allows.
func (v *view) keywayDepth(k plan.KeywayRow) {
	key, err := v.keyFor(k.DiameterMm)
	if err != nil || !geom.Alike(key.WidthMm, k.WidthMm) || !geom.Alike(key.HeightMm, k.HeightMm) {
		return
	}
	depthMm, deeperMm := key.ShaftDepthMm, key.ShaftDeeperMm
	if k.Inside {
		depthMm, deeperMm = key.HubDepthMm, key.HubDeeperMm
	}
	if geom.Over(depthMm, k.DepthMm) || geom.Over(k.DepthMm, depthMm+deeperMm) {
		v.report(Check, k.Name, entryPos(v.p, k.Name), Finding{
			What: k.Name + " has not the depth of its key's standard", Numbers: v.mm(k.DepthMm) + ", the standard has " + v.mm(depthMm) + ", up to " + v.mm(deeperMm) + " more",
			OverMm: over(math.Abs(k.DepthMm - depthMm)), Rule: "a keyway takes the key of its diameter", Source: key.Source.String(), Fix: "delete depth, or accept it for a key that is made",
		})
	}
}

func (v *view) keyFor(shaftMm float64) (keys.Parallel, error) {
	if v.job.Units == parts.Inches {
		return keys.ForInch(shaftMm, keys.Square)
	}
	return keys.For(shaftMm)
}

// boughtHub looks for a keyway of another key than that of its diameter where no part of
// the job sits: what is bought has the standard one.
func (v *view) boughtHub(k plan.KeywayRow) {
	key, err := v.keyFor(k.DiameterMm)
	c := named(v.outside, k.In)
	if err != nil || k.Inside || k.Woodruff != "" || c == nil || c.Seat == "" || geom.Alike(key.WidthMm, k.WidthMm) {
		return
	}
	if slices.ContainsFunc(v.job.Parts, func(p *parts.Part) bool { return p.NamedIn(c.Seat) }) {
		return
	}
	v.report(Check, k.Name, entryPos(v.p, k.Name), Finding{
		What:    k.Name + " has another key than its diameter, and what sits there is bought",
		Numbers: v.mm(k.WidthMm) + " wide for " + c.Seat + " on " + v.mm(k.DiameterMm) + ", the standard has " + v.mm(key.WidthMm),
		OverMm:  over(math.Abs(key.WidthMm - k.WidthMm)), Rule: "a hub as bought has the keyway of its bore", Source: key.Source.String(),
		Fix: "delete key, or accept it where the hub is bored and keyed for this shaft",
	})
}

// keyEnd is one end of a keyway: the step beside its own there, and what of that it leaves.
type keyEnd struct {
	next   *cylinder
	leftMm float64
}

// ends are those of a keyway in a step, from the back, where a step has its undercut if it can.
func (c *cylinder) ends(k plan.KeywayRow) [2]keyEnd {
	before, behind := c.neighbours()
	return [2]keyEnd{{behind, c.ToMm - k.ToMm}, {before, k.FromMm - c.FromMm}}
}

// risesMm is how much higher than the step of the keyway that beside it is.
func (e keyEnd) risesMm(c *cylinder) float64 { return outerMm(e.next) - c.RadiusMm() }

// keywayEnds looks for a keyway of a shaft that runs through the undercut of its step or leaves a
// sliver before its open end.
func (v *view) keywayEnds(k plan.KeywayRow) {
	c := named(v.outside, k.In)
	if c == nil || k.Woodruff != "" {
		return
	}
	f := v.onSeat(k)
	relieved := false // the undercut is at the first shoulder from the back
	for _, end := range c.ends(k) {
		rises := end.risesMm(c)
		switch f.OverMm = left(end.leftMm); {
		case geom.Some(rises) && c.Undercut != nil && !relieved:
			relieved = true
			v.firstOf(f, flaw{geom.Over(c.Undercut.WidthMm, end.leftMm), Finding{
				What: k.Name + " runs through the undercut of " + c.Name, Numbers: v.mm(end.leftMm) + " before its shoulder, the undercut is " + v.mm(c.Undercut.WidthMm) + " wide",
				Source: "by geometry", Fix: "a shorter keyway, or one nearer the other end"}})
		case geom.Short(rises) && geom.Some(end.leftMm):
			v.firstOf(f, flaw{geom.Over(keyEndMm, end.leftMm), Finding{
				What: k.Name + " nearly runs out at the end of " + c.Name, Numbers: v.mm(end.leftMm) + " of metal left, wanted at least " + v.mm(keyEndMm),
				Fix: "a shorter keyway, or one out at the end"}})
		}
	}
}

// onSeat is the beginning of a finding about where a keyway lies.
func (v *view) onSeat(k plan.KeywayRow) Finding {
	f := v.here(k.Name, entryPos(v.p, k.Name))
	f.Rule = "a key lies between two ends of its keyway, on its whole seat"
	return f
}

// keyLengths looks for a key with round ends of a length that is not sold.
func (v *view) keyLengths(k plan.KeywayRow) {
	c := named(v.outside, k.In)
	if c == nil || k.Woodruff != "" {
		return
	}
	open := func(e keyEnd) bool { return geom.Short(e.risesMm(c)) && !geom.Some(e.leftMm) }
	ends := c.ends(k)
	key, err := keys.Of(k.DiameterMm, k.WidthMm, k.HeightMm, v.job.Units == parts.Inches)
	long := k.Span().LengthMm()
	sold := seq.Keep(key.LengthsMm(), func(l float64) bool { return l <= c.LengthMm() }) // none for inch keys, which are cut from bar
	if err != nil || open(ends[0]) || open(ends[1]) || k.RunoutMm > 0 || len(sold) == 0 {
		return
	}
	off := func(l float64) float64 { return math.Abs(l - long) }
	near := slices.MinFunc(sold, func(a, b float64) int { return cmp.Compare(off(a), off(b)) })
	v.firstOf(v.onSeat(k), flaw{geom.Some(off(near)), Finding{
		What: k.Name + " has a length in which no key with round ends is sold", Numbers: v.mm(long) + ", the nearest is " + v.mm(near), OverMm: over(off(near)),
		Source: "DIN 6885-1, series of lengths", Fix: "length: " + v.mm(near) + ", or accept it for a key that is cut and filed round"}})
}

// keyEndMm is the least metal between a keyway and the end of its seat. Common practice, no source.
const keyEndMm = 1.5

// woodruff looks for a Woodruff key in a shaft that its standard has others for.
func (v *view) woodruff(k plan.KeywayRow) {
	key, err := keys.WoodruffNamed(k.Woodruff)
	if err != nil || k.Inside || geom.Over(k.DiameterMm, key.OverMm[0]) && !geom.Over(k.DiameterMm, key.OverMm[1]) {
		return
	}
	v.report(Check, k.Name, entryPos(v.p, k.Name), Finding{
		What: "the Woodruff key " + k.Woodruff + " is not one of its shaft", Numbers: v.mm(k.DiameterMm) + "; it is for over " + v.mm(key.OverMm[0]) + " up to " + v.mm(key.OverMm[1]),
		Rule: "a keyway takes a key of its diameter", Source: key.Source.String(), Fix: "another size, or accept it where it only keeps the clock",
	})
}

// keywayFit looks for keyways whose class of width is none of those that their
// side of a parallel key has, and for seats of keys whose own diameter has no limits.
func (v *view) keywayFit(k plan.KeywayRow) {
	if c := v.step(k.In); c != nil && !c.fitted() && c.Drawn.Taper == nil {
		v.report(Check, k.In, c.Drawn.Pos, Finding{
			What: k.In + " has no limits, and a key turns shaft and hub as one there", Numbers: v.mm(2 * c.RadiusMm()),
			Rule: "shaft and hub of a key are fitted to one another", Source: practice, Fix: "a fit: such as " + words.Either(k.Inside, "H7 for the bore", "h6 for the shaft"),
		})
	}
	classes := map[bool][]string{false: {"H9", "N9", "P9"}, true: {"D10", "JS9", "P9"}}[k.Inside]
	fit := seq.First(v.p.Keyways, func(p parts.Keyway) bool { return p.Name.Value == k.Name }).Fit
	if c := fit.Class.Value; c != "" && v.job.Units != parts.Inches && !slices.Contains(classes, c) {
		v.report(Check, k.Name, fit.Pos, Finding{
			What: k.Name + " has not the class of its key", Numbers: c + "; here " + strings.Join(classes, ", ") + " from loose to tight",
			Rule: "a key sits in its shaft, and slides in its hub if at all", Source: "DIN 6885-1", Fix: "fit: " + classes[1],
		})
	}
}

// keywayWall looks for a keyway that comes out on the other side of its wall,
// leaves less of it than it is deep, or whose cutter runs into a shoulder.
func (v *view) keywayWall(k plan.KeywayRow) {
	beyond, where := v.pinch(!k.Inside, k.Span())
	leftMm := k.DiameterMm/2 - k.DepthMm - beyond
	switch {
	case k.Inside:
		leftMm = beyond - k.DiameterMm/2 - k.DepthMm
	case beyond == 0:
		leftMm += k.DiameterMm / 2 // to the far side
	}
	if geom.Over(k.DepthMm, leftMm) {
		v.thin(k.Name, leftMm-k.DeeperMm/2, k.DepthMm, "cuts through the wall"+where, Finding{
			What: k.Name + " leaves little metal under it" + where, Rule: "metal under a keyway at least its depth", Fix: "a lower key, or a thicker wall",
		})
	}
	v.cutterRoom(k)
}

// pinch is the radius to which the bores, or the outside, come nearest to the other side along a stretch: of their steps, cones
// at the end that is nearer, threads on the outside to their roots, undercuts and grooves. Where that is not in the middle of the stretch, it says at
// what; it is 0 without bores.
func (v *view) pinch(bores bool, along geom.Span) (radiusMm float64, where string) {
	steps, sign, name := v.outside, 1.0, ""
	radiusMm = v.outerAt(along.MidMm())
	if bores {
		steps, sign, radiusMm = v.inside, -1, radiusAt(v.inside, along.MidMm())
	}
	nearer := func(s geom.Span, mm float64, what string) {
		if s.Meets(along) && geom.Over(sign*radiusMm, sign*mm) {
			radiusMm, name = mm, " at "+what
		}
	}
	for _, c := range steps {
		mm := c.RadiusMm()
		if t := c.Drawn.Taper; t != nil && !bores {
			mm = t.SmallMm(2*mm, c.LengthMm()) / 2
		} else if !bores {
			mm = c.rootMm()
		}
		nearer(c.Span(), mm, c.Name)
		if u := c.Undercut; u != nil {
			nearer(v.m.Undercut(c.Step), c.RadiusMm()-sign*u.DepthMm, "the undercut of "+c.Name)
		}
	}
	for _, g := range v.q.Grooves {
		if g.Inside == bores && g.Face == "" {
			nearer(g.Span(), g.FloorMm/2, g.Name)
		}
	}
	return radiusMm, name
}

// cutterRoom looks for a side-and-face cutter that meets a higher step.
func (v *view) cutterRoom(k plan.KeywayRow) {
	if k.RunoutMm == 0 {
		return
	}
	for _, c := range v.outside {
		if c.Name != k.In && geom.Over(c.RadiusMm(), k.DiameterMm/2) && c.Span().Meets(geom.Span{FromMm: k.FromMm - k.RunoutMm, ToMm: k.ToMm + k.RunoutMm}) {
			v.report(Stop, k.Name, entryPos(v.p, k.Name), Finding{
				What:    "the cutter of " + k.Name + " runs into " + c.Name,
				Numbers: "it runs out " + v.mm(k.RunoutMm) + " beyond the full depth, to " + v.mm(k.FromMm-k.RunoutMm) + " and " + v.mm(k.ToMm+k.RunoutMm) + " from the front face",
				Rule:    "a side-and-face cutter runs out at both ends", Source: "by geometry", Fix: "a smaller cutter, an end mill, or a shorter keyway",
			})
		}
	}
}

// keyed is one side of a joint between a shaft and a hub.
type keyed struct {
	*view
	step string
}

// row is the keyway in the step, nil if it has none.
func (k keyed) row() *plan.KeywayRow {
	return seq.At(k.q.Keyways, func(r *plan.KeywayRow) bool { return r.In == k.step })
}

// keywayMates compares the keyways of shafts and of the hubs on them, which
// press joints, hubs that slide and the words of a seat put together.
var keywayMates = together(
	each(everyJoint(parts.PressKind), (*reviewer).pressedKeys), each(everyJoint(parts.SlideKind), (*reviewer).slidKeys),
	of(everyPart, each(everyOutside, (*view).seatKeys)),
)

// keyedAt is the side of a joint.
func (r *reviewer) keyedAt(ref parts.JointRef) keyed { return keyed{r.viewOf(ref.Part), ref.Feature} }

func (r *reviewer) pressedKeys(j *parts.Joint) {
	r.mated(r.keyedAt(j.Press.Shaft), r.keyedAt(j.Press.Bore), true, Stop)
}

func (r *reviewer) slidKeys(j *parts.Joint) {
	unlike := func(f plan.Problem) bool { return f.Kind == plan.SlideSizes && f.Joint == j.Name.Value }
	if !slices.ContainsFunc(r.pl.Faults, unlike) { // else keyways for other diameters follow
		r.mated(r.keyedAt(j.Slide.On), r.keyedAt(j.Slide.Hub), false, Stop) // its keyways set the clock angle
	}
}

func (v *view) seatKeys(c *cylinder) {
	slid := slices.ContainsFunc(v.job.Of(parts.SlideKind), func(j *parts.Joint) bool { return j.Slide.On.Part == v.p.Name.Value && j.Slide.On.Feature == c.Name })
	if hub := v.hubNamed(c.Seat, c.Drawn.Size.Nominal.Mm); hub != nil && !slid {
		v.mated(keyed{v, c.Name}, *hub, true, Check)
	}
}

// hubNamed finds the part that a seat names and its bore of the seat's diameter.
func (r *reviewer) hubNamed(seat string, diameterMm float64) *keyed {
	if seat == "" || diameterMm == 0 {
		return nil
	}
	for _, v := range r.all() {
		for _, c := range v.inside {
			if geom.Alike(2*c.RadiusMm(), diameterMm) && v.p.NamedIn(seat) {
				return &keyed{v, c.Name}
			}
		}
	}
	return nil
}

// mated compares the keyways of a shaft and of the hub on it; and where TOP is
// to meet TOP their clock angles. One without a keyway is as bad as how surely the two
// are joined.
func (r *reviewer) mated(shaft, hub keyed, tops bool, joined Severity) {
	a, b := shaft.row(), hub.row()
	with, without := shaft, hub
	if a == nil {
		with, without = hub, shaft
	}
	k := with.row()
	if k == nil {
		return
	}
	f := with.here(k.Name, entryPos(with.p, k.Name))
	f.Severity, f.Rule, f.Source = Stop, "one key lies in both keyways", "by geometry"
	if a == nil || b == nil {
		f.Severity, f.Fix = joined, "draw both, or none"
		f.What = with.p.Title.Value + " has a keyway in " + with.step + " and " + without.p.Title.Value + " none in " + without.step
		r.add(f)
		return
	}
	names := " of " + shaft.p.Title.Value + " and " + hub.p.Title.Value
	high, deep := max(a.HeightMm, b.HeightMm), a.DepthMm+b.DepthMm
	long, room := a.Key().LengthMm(), b.Span().LengthMm()
	level := func(deg float64) bool { return geom.Alike(math.Remainder(deg, 360), 0) }
	r.eachOf(f,
		flaw{!geom.Alike(a.WidthMm, b.WidthMm), Finding{What: "the keyways" + names + " are not of one width", Numbers: r.mm(a.WidthMm) + " and " + r.mm(b.WidthMm), Fix: "the same key at both"}},
		flaw{geom.Over(high, deep), Finding{
			What: "the key does not go into the keyways" + names, Numbers: "it is " + r.mm(high) + " high, the two are " + r.mm(deep) + " deep", Fix: "a deeper keyway, or the standard depths"}},
		flaw{geom.Over(long, room), Finding{Severity: Check, What: "the key is longer than the keyway" + names, Numbers: r.mm(long) + " in " + r.mm(room), Fix: "a shorter key, or a longer hub"}},
		flaw{tops && !level(a.ClockDeg-b.ClockDeg) && !level(a.ClockDeg+b.ClockDeg), Finding{
			Severity: Check, What: "the keyways" + names + " are not at one clock angle", Numbers: number(a.ClockDeg) + "° and " + number(b.ClockDeg) + "°: their TOPs do not meet",
			Fix: "the same clock angle, or accept it if TOP means nothing there"}},
	)
}
