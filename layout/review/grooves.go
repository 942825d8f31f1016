package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/grooves"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// besideIn are the other grooves of the step that a groove lies in.
func (v *view) besideIn(g plan.GrooveRow) []plan.GrooveRow {
	return seq.Keep(v.q.Grooves, func(o plan.GrooveRow) bool { return o.Face == "" && o.In == g.In && o.Name != g.Name })
}

// grooveEdge looks for retaining rings and O-rings whose groove has too little metal beside
// it: to an end, to a step that falls away, or to another groove.
func (v *view) grooveEdge(g plan.GrooveRow) {
	if g.EdgeMm == 0 && (g.ORing == nil || g.Face != "") {
		return
	}
	c, land := v.step(g.In), endless
	falls := func(o *cylinder) bool { return o == nil || geom.Short(c.outBy(o)) }
	before, behind := c.neighbours()
	bevel := func(edge string) float64 {
		if g.ORing != nil { // a groove in it is asked for with its O-ring
			return 0
		}
		return v.p.BevelMm(c.Name + edge)
	}
	if falls(before) {
		land = g.FromMm - c.FromMm - bevel("-front")
	}
	if falls(behind) {
		land = math.Min(land, c.ToMm-g.ToMm-bevel("-back"))
	}
	land = seq.Min(land, v.besideIn(g), func(o plan.GrooveRow) float64 { return math.Max(o.FromMm-g.ToMm, g.FromMm-o.ToMm) })
	if g.ORing != nil {
		v.thin(g.Name, geom.Clean(land), g.DepthMm, "breaks out beside its O-ring", Finding{
			What: g.Name + " leaves a thin wall beside its O-ring", Rule: "the wall beside an O-ring is as thick as its groove is deep", Fix: "move the groove, or a longer step",
		})
		return
	}
	v.atLeast(g.Name, entryPos(v.p, g.Name), land, g.EdgeMm, Finding{
		What: "the retaining ring of " + g.Name + " has little metal beside it", Numbers: " left, wanted ",
		Rule:   "a groove keeps three times its depth from an end, a bevel or another groove",
		Source: map[bool]string{false: "DIN 471", true: "DIN 472"}[g.Inside], Fix: "move the groove, or a longer step",
	})
}

// grooveWall looks for grooves that leave little metal under them.
func (v *view) grooveWall(g plan.GrooveRow) {
	mid := g.Span().MidMm()
	var wallMm, outsideMm float64
	switch {
	case g.Face != "":
		wallMm, outsideMm = v.behindFace(g), g.OuterMm
	case g.Inside:
		outsideMm = 2 * v.outerAt(mid)
		wallMm = (outsideMm - g.FloorMm) / 2
	default:
		outsideMm = g.DiameterMm
		wallMm = g.FloorMm/2 - radiusAt(v.inside, mid)
	}
	v.thin(g.Name, wallMm, math.Max(leastWallMm(outsideMm), g.DepthMm), "cuts through the wall", Finding{
		What: g.Name + " leaves little metal under it", Rule: "under a groove stays its depth, and a wall that can be turned", Fix: "a shallower groove, another place, or a thicker wall",
	})
}

// outerAt is the radius of the outside at z, its greatest where that is not round.
func (v *view) outerAt(z float64) float64 {
	if len(v.outside) == 0 {
		return v.q.Section.MaxMm
	}
	return radiusAt(v.outside, z)
}

// behindFace is the metal behind a groove in an end face.
func (v *view) behindFace(g plan.GrooveRow) float64 {
	least := endless
	for _, radius := range []float64{g.InnerMm / 2, (g.InnerMm + g.OuterMm) / 4, g.OuterMm / 2} {
		_, thickMm, _ := v.m.Plane(g.Face, radius)
		if thickMm == 0 {
			return 0
		}
		least = min(least, thickMm-g.DepthMm)
	}
	return least
}

// groovePath looks for retaining rings that cannot be brought to their groove:
// from both ends a step is in the way.
func (v *view) groovePath(g plan.GrooveRow) {
	if g.EdgeMm == 0 {
		return
	}
	if shut := v.step(g.In).inTheWay(); len(shut) == 2 {
		v.report(Stop, g.Name, entryPos(v.p, g.Name), Finding{
			What: "the retaining ring of " + g.Name + " cannot get there", Numbers: g.In + " " + v.mm(g.DiameterMm) + v.inWords(shut),
			Rule: "a ring is opened to pass its own diameter, not a step", Source: "by geometry", Fix: "a groove in a step that is open to one end",
		})
	}
}

// inWords names what is in the way at both ends.
func (v *view) inWords(shut []*cylinder) string {
	each := seq.Map(shut, func(c *cylinder) string { return c.Name + " " + v.mm(2*c.RadiusMm()) })
	return "; " + strings.Join(each, " and ") + " are in the way"
}

// grooveSeat looks for grooves that leave too little of the seat they lie in:
// less than the width of its bearing or seal, or three fifths of it where that
// is not known.
func (v *view) grooveSeat(g plan.GrooveRow) {
	if g.Face != "" || g.ORing != nil {
		return
	}
	c := v.step(g.In)
	wanted, rule, known := v.seatWidth(c)
	if c.Seat == "" && !known {
		return
	}
	before, behind := g.FromMm-c.FromMm, c.ToMm-g.ToMm
	left := math.Max(before, behind)
	if shut := c.inTheWay(); g.EdgeMm > 0 && len(shut) == 1 { // a ring holds what lies between it and a shoulder
		if left = before; c.toward(shut[0]) == parts.Back {
			left = behind
		}
	}
	left = seq.Min(left, v.besideIn(g), func(o plan.GrooveRow) float64 {
		return max(max(o.FromMm, g.FromMm)-min(o.ToMm, g.ToMm), min(o.FromMm, g.FromMm)-c.FromMm, c.ToMm-max(o.ToMm, g.ToMm))
	})
	if g.Kind == string(parts.GreaseGroove) && !known { // what runs there bears on both sides of it
		left = before + behind
	}
	v.atLeast(g.Name, entryPos(v.p, g.Name), left, wanted, Finding{
		What: g.Name + " eats the seat of " + cmp.Or(c.Seat, "a bearing"), Numbers: " of " + c.Name + " stay whole, wanted ",
		Rule: rule, Fix: "move the groove to an end of " + c.Name + ", or a longer step",
	})
}

// seatWidth is how much of a step what sits there needs, by which rule, and whether its width is known.
func (v *view) seatWidth(c *cylinder) (mm float64, rule string, known bool) {
	for _, j := range v.job.Of(parts.BearingKind) {
		switch b := j.Bearing; {
		case b.Cone.Part == v.p.Name.Value && b.Cone.Feature == c.Name && (b.Ball || b.ConeWidth.Set()):
			return cmp.Or(b.ConeWidth.Mm, b.Width.Mm), "a bearing's ring lies on its seat over its whole width", true
		case b.Cup.Part == v.p.Name.Value && b.Cup.Feature == c.Name:
			return 0.6 * b.Width.Mm, "a bearing's ring lies in its seat over its whole width", true
		}
	}
	if m := v.seal(c); m != nil {
		return m.WidthMm, "a seal lies in its seat over its whole width", true
	}
	return 0.6 * c.LengthMm(), "a groove leaves three fifths of its seat in one piece", false
}

// The limits of squeeze and of the gap beside an O-ring: common practice, no
// source.
const (
	leastSqueeze = 0.08
	mostSqueeze  = 0.35
	mostGapMm    = 0.3 // on diameter
)

// oring looks for O-rings that are stretched, squeezed or confined beyond what
// they take, or that have too wide a gap beside them.
func (v *view) oring(g plan.GrooveRow) {
	o := g.ORing
	if o == nil {
		return
	}
	percent := func(share float64) string { return words.Trim(100*share, 1) + " %" }
	say := func(severity Severity, what, numbers, fix string) {
		v.report(severity, g.Name, entryPos(v.p, g.Name), Finding{
			What: "the O-ring of " + g.Name + " " + what, Numbers: numbers,
			Rule: "an O-ring is squeezed by its groove, hardly stretched, and has room to swell", Source: practice, Fix: fix,
		})
	}
	for _, p := range o.Problems {
		what := map[grooves.Code]string{grooves.StretchHigh: "is stretched too far", grooves.StretchLow: "lies loose, or is pressed together", grooves.FillHigh: "fills its groove"}[p.Code]
		say(Check, what, percent(p.Value)+", wanted "+percent(p.Least)+" to "+percent(p.Most), "an O-ring of another size")
	}
	if o.SqueezeMin < leastSqueeze-1e-9 || o.SqueezeMax > mostSqueeze+1e-9 {
		say(Check, "is squeezed too little or too much", percent(o.SqueezeMin)+" to "+percent(o.SqueezeMax)+", wanted "+percent(leastSqueeze)+" to "+percent(mostSqueeze), "another section")
	}
	if g.Face == "" {
		v.oringBevel(g)
	}
	gap := g.AgainstMm - g.DiameterMm
	if g.Inside {
		gap = -gap
	}
	switch {
	case g.Face != "":
	case geom.Short(gap):
		say(Stop, "seals against a round that does not go together with "+g.In, v.mm(g.AgainstMm)+" and "+v.mm(g.DiameterMm), "against: the diameter of the counterpart")
	case geom.Over(gap, mostGapMm):
		say(Check, "can be pressed into the gap beside it", v.mm(gap)+" on diameter, wanted at most "+v.mm(mostGapMm), "a closer fit of the counterpart")
	default:
		v.oringLeadIn(g)
	}
}

// againstMm is how far the diameter that an O-ring seals against may be off that of its counterpart.
const againstMm = 0.5

// oringBevel looks for the groove of an O-ring that is cut into the bevel of an edge.
func (v *view) oringBevel(g plan.GrooveRow) {
	c := v.step(g.In)
	front, back := c.Name+"-front", c.Name+"-back"
	for _, end := range []struct {
		edge string
		left float64
	}{{front, g.FromMm - c.FromMm}, {back, c.ToMm - g.ToMm}} {
		if bevel := v.p.BevelMm(end.edge); geom.Over(bevel, end.left) {
			v.report(Stop, g.Name, entryPos(v.p, g.Name), Finding{
				What: "the O-ring groove " + g.Name + " is cut into the bevel of " + end.edge, Numbers: v.mm(end.left) + " from the edge, bevel " + v.mm(bevel),
				Rule: "a groove has a wall at both sides", Source: "by geometry", Fix: "move the groove, or a smaller bevel",
			})
		}
	}
}

// The angle to the axis of a lead-in that an O-ring is pushed over.
const oringMinDeg, oringMaxDeg = 10, 20 // common practice, no source: 15° is drawn

// oringLeadIn looks for a counterpart that the seat names, or that a joint puts on this part, without a lead-in for the
// O-ring.
func (v *view) oringLeadIn(g plan.GrooveRow) {
	for _, p := range v.job.Parts {
		if p == v.p || !p.NamedIn(v.step(g.In).Seat) && !v.joinedWith(p) {
			continue
		}
		edges := v.viewOf(p.Name.Value).edges(g.AgainstMm, againstMm, !g.Inside)
		if len(edges) == 0 || slices.ContainsFunc(p.Chamfers, func(c parts.Chamfer) bool {
			return slices.Contains(edges, c.Edge.Value) && !geom.Over(g.LeadInMm, c.Size.Mm) && c.Angle.Deg >= oringMinDeg && c.Angle.Deg <= oringMaxDeg
		}) {
			continue
		}
		v.report(Check, g.Name, entryPos(v.p, g.Name), Finding{
			What: p.Title.Value + " has no lead-in for the O-ring of " + g.Name, Numbers: "wanted " + v.mm(g.LeadInMm) + " at 15° on " + strings.Join(edges, " or "),
			Rule: "a sharp edge cuts the O-ring that is pushed over it", Source: "trade tables of O-ring housings", Fix: "add a chamfer there: angle 15, for: lead-in",
		})
	}
}

// joinedWith tells whether one joint holds this part and another.
func (v *view) joinedWith(p *parts.Part) bool {
	return slices.ContainsFunc(v.job.Joints, func(j *parts.Joint) bool { return j.Holds(v.p.Name.Value) && j.Holds(p.Name.Value) })
}

// sealed is what the seal needs that runs on a step or sits in it; false where none is known.
func (v *view) sealed(c *cylinder) (land grooves.SealLand, ok bool) {
	m := v.seal(c)
	if m == nil {
		return land, false
	}
	land, err := grooves.SealLandFor(m.ShaftMm, 0)
	return land, err == nil
}

// sealLand looks for the land of a shaft seal that is soft.
func (v *view) sealLand(c *cylinder) {
	land, ok := v.sealed(c)
	h := c.Drawn.Hardness
	if !ok || c.Inside || h.Value >= land.HardnessHRC {
		return
	}
	said := words.Either(h.Pos.Line > 0, number(h.Value)+" HRC", "not said")
	v.report(Check, c.Name, c.Drawn.Pos, Finding{
		What:    c.Name + " is not hard enough for the lip of its seal",
		Numbers: said + ", wanted " + number(land.HardnessHRC) + " HRC, and " + number(land.HardnessFastHRC) + " from 4 m/s on or in dirt",
		Rule:    "a lip wears a groove into a soft land", Source: land.Source.String(), Fix: "hardness: " + number(land.HardnessHRC) + ", a hardened sleeve, or accept it at a low speed",
	})
}

// sealFit looks for a land that the lip of a seal cannot be pushed onto, and for the
// bore of a seal without its fit and lead-in.
func (v *view) sealFit(c *cylinder) {
	switch land, ok := v.sealed(c); {
	case !ok:
	case c.Inside:
		v.sealHousing(c, land)
	default:
		v.sealLeadIn(c, land)
		v.sealRound(c, land)
	}
}

// sealLip looks for seals of which nobody said where the lip looks.
func (v *view) sealLip(c *cylinder) {
	for _, m := range v.q.Section.Seals {
		if !c.Inside || c.Drawn.Lip != "" || !c.Span().Holds(m.Span().MidMm()) {
			continue
		}
		lip := words.Either(m.LipBack, parts.Back, parts.Front)
		v.report(Note, c.Name, c.Drawn.Pos, Finding{
			What: "which way the lip of the seal in " + c.Name + " looks is not said", Numbers: "taken: to the " + string(lip) + ", away from the open end of the bore",
			Rule: "a lip keeps back what it looks at", Fix: "lip: front, or lip: back",
		})
	}
}

// hardStep looks for a step that is to be harder than its metal is sure to get.
func (v *view) hardStep(c *cylinder) {
	m, err := material.Find(v.p.Material.Value)
	if err != nil || c.Drawn.Hardness.Pos.Line == 0 || m.HardHRC > 0 && c.Drawn.Hardness.Value <= m.HardHRC {
		return
	}
	wanted := number(c.Drawn.Hardness.Value) + " HRC"
	severity, f := Check, Finding{
		What: m.Name + " does not get as hard as " + c.Name + " is to be", Numbers: wanted + ", and it is no metal to be quenched",
		Rule: "a metal hardens as far as its carbon lets it", Fix: "a grade that hardens (C45 or 1045 to 55, 42CrMo4 or 4140 to 53), or a hardened sleeve",
	}
	switch {
	case m.HardHRC > 0:
		f.Numbers, f.Source = wanted+", and its surface is sure of "+number(m.HardHRC), "EN 10083-2 and EN 10083-3, flame or induction hardened, from memory; case-hardened 58, common practice"
		f.Fix = "hardness: " + number(m.HardHRC) + ", another grade, a hardened sleeve, or accept it on the word of who hardens it"
	case m.HardHRC == 0:
		severity, f.What, f.Numbers, f.Fix = Note, "how hard "+m.Name+" gets is not known here", c.Name+" is to have "+wanted, "ask who hardens it before it is turned"
	case m.Kind == material.MildSteel:
		f.Fix += ", or accept it to be case-hardened"
	default:
		severity = Stop
	}
	v.report(severity, c.Name, c.Drawn.Hardness.Pos, f)
}

// sealRound finds a land whose limits lie outside those of its seal's class.
func (v *view) sealRound(c *cylinder, land grooves.SealLand) {
	low, high, ok := limitsOf(c.Drawn.Size)
	least, most := land.Shaft.MinMm, land.Shaft.MaxMm
	f := v.here(c.Name, c.Drawn.Pos)
	f.Numbers, f.Rule, f.Source, f.Fix = "wanted "+v.w.Limits(least, most), "a seal's shaft is h11", land.Source.String(), "fit: h11"
	v.eachOf(f,
		flaw{!c.fitted(), Finding{What: c.Name + " has no limits, and the lip of a seal runs on it"}},
		flaw{ok && (geom.Over(least, low) || geom.Over(high, most)), Finding{
			What: c.Name + " has other limits than the lip of its seal takes", Numbers: v.w.Limits(low, high) + ", wanted " + v.w.Limits(least, most), OverMm: over(max(least-low, high-most))}},
	)
}

// lipEdges are the edges of a land that the lip of its seal comes over: no outside beyond is higher, and if that leaves two, no
// bearing's ring stands against it as its shoulder.
func (v *view) lipEdges(c *cylinder) []string {
	next, behind := c.neighbours()
	edges, beside := []string{c.Name + "-front", c.Name + "-back"}, []*cylinder{next, behind}
	open := seq.Keep([]int{0, 1}, func(side int) bool {
		return !slices.ContainsFunc(v.outside, func(s *cylinder) bool {
			return geom.Over(s.RadiusMm(), c.RadiusMm()) && (s.FromMm > c.FromMm) == (side == 1)
		})
	})
	if len(open) == 0 {
		open = []int{0, 1}
	}
	free := seq.Keep(open, func(side int) bool { return beside[side] == nil || !beside[side].Bears() })
	if len(free) == 0 {
		free = open
	}
	return seq.Map(free, func(side int) string { return edges[side] })
}

// sealLeadIn finds a land that its lip comes on to over no slope: no chamfer, and no cone beside it that
// is as steep at the most.
func (v *view) sealLeadIn(c *cylinder, land grooves.SealLand) {
	cone := func(s *cylinder) bool {
		front := !geom.Over(s.ToMm, c.FromMm)
		rise := s.endMm(!front) - s.endMm(front)
		return geom.Alike(s.endMm(!front), c.RadiusMm()) && 2*s.endMm(front) <= land.LeadInMm+0.01 && rise <= s.LengthMm()*math.Tan(land.LeadInDeg.Max*math.Pi/180)
	}
	edges, least := v.lipEdges(c), 2*c.RadiusMm()
	chamfer := func(h parts.Chamfer) bool {
		if slices.Contains(edges, h.Edge.Value) && !geom.Over(land.LeadInDeg.Min, h.Angle.Deg) && !geom.Over(h.Angle.Deg, land.LeadInDeg.Max) {
			least = min(least, 2*(c.RadiusMm()-h.AcrossMm()))
		}
		return least <= land.LeadInMm+0.01
	}
	if slices.ContainsFunc(c.next(), cone) || slices.ContainsFunc(v.p.Chamfers, chamfer) {
		return
	}
	v.report(Check, c.Name, c.Drawn.Pos, Finding{
		What: c.Name + " has " + words.Either(least < 2*c.RadiusMm(), "too little", "no") + " lead-in for the lip of its seal",
		Numbers: words.When(least < 2*c.RadiusMm(), "down to "+v.mm(least)+", ") +
			"wanted down to " + v.mm(land.LeadInMm) + " at " + number(land.LeadInDeg.Min) + "° to " + number(land.LeadInDeg.Max) + "°",
		Rule: "a lip that is pushed over a sharp edge leaks", Source: land.LeadInSource.String(), Fix: "a chamfer on " + words.Join(" or ", edges...) + ", for: lead-in",
	})
}

// sealHousing looks at the bore that a seal is pressed into.
func (v *view) sealHousing(c *cylinder, land grooves.SealLand) {
	fit := c.Drawn.Size.Fit
	class := fit.Class.Value
	led := slices.ContainsFunc(v.p.Chamfers, func(h parts.Chamfer) bool {
		return c.edge(h.Edge.Value) && !geom.Over(land.HousingChamferDeg.Min, h.Angle.Deg) && !geom.Over(h.Angle.Deg, land.HousingChamferDeg.Max)
	})
	f := v.here(c.Name, c.Drawn.Pos)
	f.Source = land.Source.String()
	wanted, nominal, holds := land.HousingClass, c.Drawn.Size.Nominal.Mm, class == land.HousingClass
	by := f.Source
	if less, more, source := grooves.InchSealBore(nominal); v.seal(c).Inch {
		by = source.String() + "; " + by
		wanted += ", or " + v.mm(nominal-less) + " to " + v.mm(nominal+more) + " by " + source.String()
		limits := fit.Limits
		if fit.PlusMinus.Set() {
			limits = []parts.Length{{Mm: nominal - fit.PlusMinus.Mm}, {Mm: nominal + fit.PlusMinus.Mm}}
		}
		holds = holds || len(limits) == 2 && !geom.Over(nominal-less, limits[0].Mm) && !geom.Over(limits[1].Mm, nominal+more)
	}
	v.eachOf(f,
		flaw{!holds, Finding{
			What: c.Name + " has not the class that holds a seal", Numbers: cmp.Or(class, "no class") + ", wanted " + wanted,
			Rule: "a seal is pressed into its bore", Source: by, Fix: "fit: " + land.HousingClass}},
		flaw{!led, Finding{
			What: c.Name + " has no lead-in for its seal", Numbers: "wanted " + number(land.HousingChamferDeg.Min) + "° to " + number(land.HousingChamferDeg.Max) + "°",
			Rule: "a seal that is pressed over a sharp edge is damaged", Fix: "add a chamfer: size " + v.mm(1) + ", angle 15, for: lead-in"}},
	)
}

// edge tells whether a name is that of one of the edges of a step.
func (c *cylinder) edge(name string) bool { return name == c.Name+"-front" || name == c.Name+"-back" }

// end is the outside step at a face.
func (v *view) end(face parts.Face) *cylinder {
	return parts.At(face, v.outside[0], v.outside[len(v.outside)-1])
}

// centreHole looks for a centre hole that takes up nearly the whole end: a rim
// of a tenth of its diameter has to stay, beside the bevel.
func (v *view) centreHole(c plan.CentreRow) {
	end := v.end(c.Face)
	flat := 2 * end.RadiusMm()
	if h := v.chamferOn(end, c.Face); h != nil && !h.Sphere {
		flat -= 2 * h.AcrossMm()
	}
	pos := v.p.Pos
	if in := v.p.Centres; in != nil {
		pos = in.Pos
	}
	v.atMost("", pos, c.MouthMm, flat-0.2*2*end.RadiusMm(), Finding{
		What: "the centre in the " + string(c.Face) + " end leaves hardly a face", Numbers: " of " + v.mm(flat) + ", wanted at most ",
		Rule: "a rim of a tenth of the diameter stays round a centre", Fix: "a smaller pilot, or form A",
	})
}

// screwedIn tells whether a part is a stud that a joint has screwed in before anything lies round it.
func (v *view) screwedIn() bool {
	return slices.ContainsFunc(v.pl.Joints, func(j *plan.JointPlan) bool {
		return j.Bolt != nil && j.Bolt.StudStandsMm > 0 && v.job.Joint(j.Name).Bolt.Stud.Value == v.p.Name.Value
	})
}

// flatsFree looks for flats that a hole beside them runs into, and for those of a spanner that
// another part lies round.
func (v *view) flatsFree(f plan.FlatsRow) {
	apart := 360 / float64(max(1, f.Sides)) // from one flat to the next
	flat := geom.Span{FromMm: f.FromMm, ToMm: f.ToMm}
	for o := range seq.Refs(v.p.Radials) {
		z, off := v.axialMm(o), math.Abs(math.Remainder(o.Clock[0].Deg-f.ClockDeg, apart))
		if hole := geom.Around(z, v.radialHoleMm(o)/2); o.Shape == parts.RadialHole && hole.Meets(flat) && off > 5 {
			v.report(Check, o.Name.Value, o.Pos, Finding{What: o.Name.Value + " lies beside the flats " + f.Name,
				Numbers: v.mm(z) + " from the front; they run from " + v.mm(f.FromMm) + " to " + v.mm(f.ToMm), OverMm: over(hole.OnMm(flat)),
				Rule: "a hole lies on a flat or clear of it", Source: practice, Fix: "move one of them along the axis"})
		}
	}
	b := v.bodyOf(v.p.Name.Value)
	if b == nil || !wrenchFlats().MatchString(f.Name) || v.screwedIn() {
		return
	}
	m, mid := v.machine(), assembly.Vec{Z: -flat.MidMm()}
	beside := []assembly.Vec{b.Pose.Apply(mid.Add(assembly.Clock(f.DiameterMm/2+1, f.ClockDeg-20))), b.Pose.Apply(mid.Add(assembly.Clock(f.DiameterMm/2+1, f.ClockDeg+20)))}
	for o := range seq.Refs(m.Bodies) {
		if o.ID != b.ID && m.Of[o.ID].Part != "" && slices.ContainsFunc(beside, func(at assembly.Vec) bool { return o.Dist(at) < 0 }) {
			v.report(Check, f.Name, entryPos(v.p, f.Name), Finding{What: m.Of[o.ID].Part + " lies round the flats " + f.Name + " of " + v.p.Title.Value,
				Numbers: v.mm(f.FromMm) + " to " + v.mm(f.ToMm) + " from the front", OverMm: over(flat.LengthMm()),
				Rule: "a spanner gets onto its flats", Source: "by geometry", Fix: "flats where nothing lies round them"})
		}
	}
}

// flatsWall looks for flats that leave a thin wall over a bore.
func (v *view) flatsWall(f plan.FlatsRow) {
	over := seq.Keep(v.inside, func(c *cylinder) bool { return geom.Over(f.ToMm, c.FromMm) && geom.Over(c.ToMm, f.FromMm) })
	if bore := mostMm(over); bore > 0 {
		v.thin(f.Name, f.DiameterMm/2-f.DepthMm-bore, leastWallMm(f.DiameterMm), "cuts into the bore", Finding{
			What: f.Name + " leaves little metal over the bore", Rule: "under a flat stays a wall that can be turned", Fix: "a larger size across the flats, or a smaller bore",
		})
	}
}
