package review

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// keyway looks for keyways that are not those of their shaft's diameter, and for
// a TOP on a keyway that is not drawn.
var keyway = together(
	each(everyRadial, (*view).slotKeyway), each(everyKeyway, (*view).keywayDepth, (*view).woodruff, (*view).boughtHub, (*view).keywayEnds, (*view).keyLengths),
	(*view).topKeyway,
)

// slotSeat is the step that a slot is cut along, nil for another opening.
func (v *view) slotSeat(f *parts.Radial) *cylinder {
	if !blindSlot(f) || f.Along.Mm < 1.5*f.Around.Mm {
		return nil
	}
	return at(v.outside, v.axialMm(f))
}

// topKeyway looks for a TOP on a keyway that is not drawn.
func (v *view) topKeyway() {
	slot := func(f parts.Radial) bool { return v.slotSeat(&f) != nil }
	if v.p.Top.Value != "keyway" || slices.ContainsFunc(v.p.Radials, slot) || slices.ContainsFunc(v.q.Keyways, func(k plan.KeywayRow) bool { return k.ClockDeg == 0 }) {
		return
	}
	v.report(Stop, "", v.p.Top.Pos, Finding{
		What: "TOP is to be the keyway, and no keyway is drawn there", Rule: "TOP is a mark that is there", Source: "by geometry", Fix: "draw it under keyways at clock 0, or mark TOP another way",
	})
}

// slotKeyway compares a slot along a shaft with what it is for: the tongue of a locking washer, or a key.
func (v *view) slotKeyway(f *parts.Radial) {
	switch step := v.slotSeat(f); {
	case step == nil:
	case step.threaded():
		v.tongueShut(f, step)
	case isWasher(f):
		v.tongueBeside(f, step)
	default:
		v.slotKey(f, 2*step.RadiusMm())
	}
}

// slotKey compares a slot that is nearly a keyway with the standard one of a diameter.
func (v *view) slotKey(f *parts.Radial, diameterMm float64) {
	key, err := v.keyFor(diameterMm)
	wide, deep := math.Abs(f.Around.Mm-key.WidthMm), f.Depth.Mm-key.ShaftDepthMm
	if err != nil || geom.Over(wide, key.WidthMm/2) || !geom.Over(wide, 0.05) && !geom.Over(-0.3, deep) && !geom.Over(deep, 0.5) { // common practice, no source
		return
	}
	standard := parts.By(v.job.Units, "DIN 6885-1", "ASME B17.1")
	v.report(Check, f.Name.Value, f.Pos, Finding{
		What: f.Name.Value + " is not the keyway of " + v.mm(diameterMm), OverMm: over(max(wide, math.Abs(deep))),
		Numbers: v.mm(f.Around.Mm) + " wide and " + v.mm(f.Depth.Mm) + " deep; the standard has " + v.mm(key.WidthMm) + " and " + v.mm(key.ShaftDepthMm),
		Rule:    "a keyway takes the key of its diameter", Source: standard, Fix: "the width and depth of the standard, or accept it for a key that is made",
	})
}

// tongueBeside reports a slot for the tongue of a locking washer that lies in no thread.
func (v *view) tongueBeside(f *parts.Radial, step *cylinder) {
	z := v.axialMm(f)
	threads := seq.Keep(v.outside, (*cylinder).threaded)
	v.report(Check, f.Name.Value, f.Pos, Finding{
		What: f.Name.Value + " is not in the thread of the nut whose washer it holds", Numbers: "it lies on " + step.Name + ", " + v.mm(2*step.RadiusMm()),
		OverMm: over(seq.Least(threads, func(c *cylinder) float64 { return max(c.FromMm-z, z-c.ToMm) })),
		Rule:   "the tongue of a locking washer lies in the thread of its nut", Source: "by geometry", Fix: "move it along, or a longer thread",
	})
}

// tongueShut looks for the slot of a locking washer that is too shallow, or ends within its thread, at the end
// that nut and washer come from: there the outside is nowhere larger than the thread.
func (v *view) tongueShut(f *parts.Radial, thread *cylinder) {
	if !isWasher(f) {
		return
	}
	if t := thread.Size.Thread; t != nil {
		v.atLeast(f.Name.Value, f.Pos, f.Depth.Mm, (t.MajorMm-t.MinorMm)/2+lockNutOf(*t).washerMm, Finding{
			What: f.Name.Value + " is too shallow for the tongue of the washer under the nut", Numbers: ", wanted at least ",
			Rule: "the nut passes over the tongue, which lies under its thread", Source: "ISO 2982-2", Fix: "a deeper slot",
		})
	}
	mid, straight := v.axialMm(f), (f.Along.Mm-f.Around.Mm)/2 // its ends are round
	shut, free := endless, [2]bool{true, true}
	for _, c := range v.outside {
		if geom.Over(c.RadiusMm(), thread.RadiusMm()) {
			free[0], free[1] = free[0] && c.FromMm > thread.FromMm, free[1] && c.FromMm < thread.FromMm
		}
	}
	if free[0] {
		shut = min(shut, mid-straight-thread.FromMm)
	}
	if free[1] {
		shut = min(shut, thread.ToMm-mid-straight)
	}
	if geom.Some(shut) && !math.IsInf(shut, 1) {
		v.report(Check, f.Name.Value, f.Pos, Finding{
			What: f.Name.Value + " is shut at the end of " + thread.Name + " that the washer comes from", Numbers: v.mm(shut) + " of the thread before its full width",
			OverMm: over(shut), Rule: "the tongue of a locking washer gets into its slot from the end", Source: "by geometry",
			Fix: "the slot " + v.mm(shut) + " farther along, or longer: out at the end of the thread",
		})
	}
	v.tongueUnder(f, geom.Between(mid-f.Along.Mm/2, mid+f.Along.Mm/2))
}

// slotInSeat is how much of the seat of a bearing the slot of its washer takes at the most. Common practice, no source.
const slotInSeat = 1.0 / 3

// tongueUnder looks for the slot of a locking washer that runs far under the ring of a bearing, which is creased by its edges.
func (v *view) tongueUnder(f *parts.Radial, slot geom.Span) {
	for _, c := range v.outside {
		if on := slot.OnMm(c.Span()); c.Seat != "" && !c.threaded() && v.jointNames(c.Name) && geom.Over(on, slotInSeat*c.LengthMm()) {
			v.report(Check, f.Name.Value, f.Pos, Finding{
				What: f.Name.Value + " runs far under what sits on " + c.Name, Numbers: v.mm(on) + " of " + v.mm(c.LengthMm()) + ", wanted at most " + v.mm(slotInSeat*c.LengthMm()), OverMm: over(on),
				Rule: "a ring lies on a whole seat; a slot takes a third of its length at the most", Source: practice, Fix: "a shorter slot, or one farther from the seat",
			})
		}
	}
}

// circleOf is the middle of a group of holes, and of its circle the diameter.
func (v *view) circleOf(group string) (middle plan.XY, mm float64) {
	at := v.holesOf(group)
	for _, o := range at {
		middle = middle.Plus(plan.XY{XMm: o.a.XMm / float64(len(at)), YMm: o.a.YMm / float64(len(at))})
	}
	for _, o := range at {
		mm += 2 * geom.Distance(o.a, middle) / float64(len(at))
	}
	return middle, mm
}

// roundAt is the round opening about a place whose diameter is nearest to one, 0 without any.
func (v *view) roundAt(middle plan.XY, wantedMm float64) (mm float64, size parts.Size) {
	near := func(at plan.XY, is float64, s parts.Size) {
		if geom.Distance(at, middle) < faceOffMm && (mm == 0 || math.Abs(is-wantedMm) < math.Abs(mm-wantedMm)) {
			mm, size = is, s
		}
	}
	for _, c := range v.inside {
		near(plan.XY{}, 2*c.RadiusMm(), c.Drawn.Size)
	}
	for _, o := range v.holes {
		if o.group != nil {
			near(o.a, 2*o.radiusMm, o.group.Size.Size)
		}
	}
	return mm, size
}

// groupSize is the number of holes in a group and their finished size.
func (v *view) groupSize(name string) (count int, mm float64) {
	for _, f := range v.q.Faces {
		for _, g := range f.Groups {
			if g.Name == name {
				return g.Count, g.FinishedMm
			}
		}
	}
	return 0, 0
}

// saddle looks for branches that run off the tube they sit on, and for ones
// whose opening in it is not under them.
func (v *view) saddle(end *parts.TubeEnd) {
	main := v.viewOf(end.Onto.Part)
	if end.Place == nil || main == nil {
		return
	}
	if main.p.Kind == parts.Tube {
		v.roughOpening(v.p, end, main)
		v.branchOn(v.p, end, main)
	}
	v.besideHole(end, main)
}

// besideHole looks for an opening of its own in a main that the hole of a branch, where that comes out of the outside, only cuts
// into: it opens beside the branch, or under its wall.
func (v *view) besideHole(end *parts.TubeEnd, main *view) {
	square := end.Angle.Deg == 90 && end.Offset.Mm == 0
	if main.p.Kind == parts.Tube && square { // branchOn has it
		return
	}
	hole := seq.At(main.q.Shown, func(row *plan.RadialRow) bool { return row.Name == "hole for "+v.p.Title.Value })
	for row := range seq.Refs(main.q.Radials) {
		weldedTo := slices.ContainsFunc(v.job.Of(parts.WeldKind), func(j *parts.Joint) bool {
			return j.Weld.Part.Part == v.p.Name.Value && j.Weld.To.Part == main.p.Name.Value && j.Weld.To.Feature == row.Name
		})
		if hole == nil || !weldedTo {
			continue
		}
		if off := offBranch(*row, hole.AxialMm, hole.ClockDeg, endless); off > 1 {
			v.report(Check, "", end.Place.Pos, Finding{
				What:    "the opening " + row.Name + " in " + main.p.Title.Value + " is not under " + v.p.Title.Value,
				Numbers: "its middle lies " + v.mm(off) + " off that of the branch", OverMm: over(off),
				Rule: "a branch opens into its tube", Source: "by geometry", Fix: "the opening where the branch comes out of the outside, at clock: " +
					number(geom.Clean(hole.ClockDeg)) + ", " + v.mm(hole.AxialMm) + " from the front of " + main.p.Title.Value +
					"; or another place: of the branch",
			})
		}
	}
}

// footOf is the stretch along a main of the given radius on which a branch stands, from where
// the axes cross: the curve in which the outsides of both meet; and how deep that is along the
// branch.
func footOf(end *parts.TubeEnd, halfMm, mainMm float64) (lowMm, highMm, deepMm float64) {
	lowMm, highMm = endless, -endless
	least, most := lowMm, highMm
	sin, cos := math.Sincos(end.Angle.Deg * math.Pi / 180)
	if end.Place.Leans == parts.Front {
		cos = -cos
	}
	for deg := range 360 {
		along, beside := math.Sincos(float64(deg) * math.Pi / 180)
		beside = end.Offset.Mm + halfMm*beside
		up := math.Sqrt(max(0, mainMm*mainMm-beside*beside))
		z, out := (halfMm*along+up*cos)/sin, (up+halfMm*along*cos)/sin
		lowMm, highMm, least, most = min(lowMm, z), max(highMm, z), min(least, out), max(most, out)
	}
	return lowMm, highMm, most - least
}

// branchOn looks at one branch on its main.
func (r *reviewer) branchOn(p *parts.Part, end *parts.TubeEnd, main *view) {
	z := end.Place.AxialMm(main.lengthMm)
	half := r.pl.Part(p.Name.Value).Section.MaxMm
	low, high, _ := footOf(end, half, main.wideMm())
	f := Finding{Part: p.Name.Value, Pos: end.Place.Pos, Source: "by geometry"}
	if !geom.Some(z+low) || !geom.Over(main.lengthMm, z+high) {
		f.Severity, f.What = Stop, p.Title.Value+" runs off the end of "+main.p.Title.Value
		f.Numbers = "it covers " + r.mm(z+low) + " to " + r.mm(z+high) + ", the tube 0 to " + r.mm(main.lengthMm)
		f.Rule, f.Fix = "a branch stands on the tube all round", "move it along the tube"
		r.add(f)
		return
	}
	if end.Angle.Deg != 90 || end.Offset.Mm != 0 {
		return // the middle of its hole is worked out elsewhere
	}
	near := seq.Least(main.q.Radials, func(row plan.RadialRow) float64 { return offBranch(row, z, end.Place.Clock.Deg, half) })
	r.branchOpening(p, end, main, z, near)
	if near > 1 && !math.IsInf(near, 1) {
		f.OverMm = over(near)
		f.Severity, f.What = Check, "the opening in "+main.p.Title.Value+" is not under "+p.Title.Value
		f.Numbers = "its middle lies " + r.mm(near) + " off that of the branch"
		f.Rule, f.Fix = "a branch opens into its tube", r.branchCure(end, main, z)
		r.add(f)
	}
}
