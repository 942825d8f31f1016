package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// opening is one hole, slot or window in the outside of a round: a box on the
// unrolled surface.
type opening struct {
	radial   *parts.Radial
	clockDeg float64
	zMm      float64 // of its centre, from the front face
	alongMm  float64 // half its length along the axis
	aroundMm float64 // half its length round the outside
	outerMm  float64 // radius of the surface it starts on
}

func (o *opening) title(v *view) string {
	return words.Either(len(o.radial.Clock) == 1, o.radial.Name.Value, o.radial.Name.Value+" at "+number(math.Mod(o.clockDeg+360, 360))+"°")
}

// axialMm is where a radial feature is centred, from the front face.
func (v *view) axialMm(f *parts.Radial) float64 {
	return parts.At(f.From, f.Axial.Mm, v.lengthMm-f.Axial.Mm)
}

// wallAt is the wall of a turned part at z, half the diameter of a solid one.
func (v *view) wallAt(z float64) float64 { return radiusAt(v.outside, z) - radiusAt(v.inside, z) }

func radialThread(f *parts.Radial) *threads.Thread {
	if f.Shape != parts.RadialHole || f.Size.Make != parts.TappedHole {
		return nil
	}
	if t, err := threads.Parse(f.Size.Thread); err == nil {
		return &t
	}
	return nil
}

// openings lists what is cut into the outside.
func (v *view) openings() []opening {
	var out []opening
	for f := range seq.Refs(v.p.Radials) {
		o := opening{radial: f, zMm: v.axialMm(f), alongMm: f.Along.Mm / 2, aroundMm: f.Around.Mm / 2}
		o.outerMm = radiusAt(v.outside, o.zMm)
		if f.Shape == parts.RadialHole {
			o.alongMm = v.radialHoleMm(f) / 2
			o.aroundMm = o.alongMm
		}
		for _, c := range f.Clock {
			o.clockDeg = c.Deg
			out = append(out, o)
		}
	}
	return out
}

// radialHoleMm is the finished diameter of a radial hole.
func (v *view) radialHoleMm(f *parts.Radial) float64 {
	if t := radialThread(f); t != nil {
		return t.MajorMm
	}
	if row := seq.At(v.q.Radials, func(row *plan.RadialRow) bool { return row.Name == f.Name.Value }); row != nil {
		return row.DiameterMm
	}
	return f.Size.Size.Nominal.Mm
}

// oneRound is the step at z, with those beside it that have its diameter; nil off the part.
func (v *view) oneRound(z float64) *cylinder {
	c := at(v.outside, z)
	if c == nil {
		return nil
	}
	round := *c.Step
	for _, s := range v.outside {
		if geom.Alike(s.RadiusMm(), c.RadiusMm()) && !geom.Short(s.Span().OnMm(round.Span())) {
			round.FromMm, round.ToMm = min(round.FromMm, s.FromMm), max(round.ToMm, s.ToMm)
		}
	}
	return &cylinder{Step: &round}
}

// radialEdge looks for openings that break into an end face or cross the
// shoulder of their step.
func radialEdge(v *view) {
	firsts := slices.CompactFunc(v.openings(), func(a, b opening) bool { return a.radial == b.radial })
	for _, o := range firsts {
		fromMm, toMm := o.zMm-o.alongMm, o.zMm+o.alongMm
		numbers := "it runs from " + v.mm(fromMm) + " to " + v.mm(toMm) + " from the front face"
		switch step := v.oneRound(o.zMm); {
		case !geom.Some(fromMm) || !geom.Over(v.lengthMm, toMm):
			severity := words.Either(o.radial.Shape == parts.RadialSlot, Check, Stop) // a keyway may be open at the end
			v.report(severity, o.radial.Name.Value, o.radial.Pos, Finding{
				What: o.title(v) + " breaks into an end face", Numbers: numbers + ", the part from 0 to " + v.mm(v.lengthMm),
				OverMm: over(math.Max(-fromMm, toMm-v.lengthMm)),
				Rule:   "an opening in the outside keeps metal at both ends", Source: "by geometry", Fix: "move it along the axis, or make it shorter",
			})
		case step != nil && (geom.Over(step.FromMm, fromMm) && !o.runsOut(v, fromMm) || geom.Over(toMm, step.ToMm) && !o.runsOut(v, toMm)):
			v.report(Check, o.radial.Name.Value, o.radial.Pos, Finding{
				What: o.title(v) + " runs over the end of " + step.Name, Numbers: numbers + ", " + step.Name + " from " + v.mm(step.FromMm) + " to " + v.mm(step.ToMm),
				OverMm: over(math.Max(step.FromMm-fromMm, toMm-step.ToMm)),
				Rule:   "an opening lies on one diameter, as its template is wrapped round one", Fix: "move it along the axis, or make it shorter",
			})
		case geom.Over(o.leastMm(v), math.Min(fromMm, v.lengthMm-toMm)):
			v.report(Check, o.radial.Name.Value, o.radial.Pos, Finding{
				What: o.title(v) + " leaves little metal at an end face", Numbers: v.mm(math.Min(fromMm, v.lengthMm-toMm)) + " left, wanted " + v.mm(o.leastMm(v)),
				LeftMm: left(math.Min(fromMm, v.lengthMm-toMm)),
				Rule:   "metal beside an opening at least the wall, and no more than half the opening", Fix: "move it along the axis",
			})
		}
	}
}

// runsOut tells whether a blind opening ends in the air at z: what lies there is no higher than its floor. The slot of a washer in a
// thread may end wherever the outside differs by less than it is deep.
func (o *opening) runsOut(v *view, z float64) bool {
	out, deep := radiusAt(v.outside, z), o.radial.Depth.Mm
	tongue := o.radial.Shape == parts.RadialSlot && at(v.outside, o.zMm).threaded() && geom.Over(deep, math.Abs(out-o.outerMm))
	return !o.radial.Through && (tongue || !geom.Over(out, o.outerMm-deep))
}

// leastMm is the metal an opening wants beside it.
func (o *opening) leastMm(v *view) float64 {
	return math.Min(v.wallAt(o.zMm), math.Min(o.alongMm, o.aroundMm))
}

// radialGap looks for openings that overlap or nearly do, on the unrolled
// outside.
func radialGap(v *view) {
	all := v.openings()
	worst := &worst{}
	for _, pair := range closeOpenings(v, all) {
		v.metalBetween(&all[pair[0]], &all[pair[1]], worst)
	}
	worst.report()
	v.threadsMeet()
}

// rowOf tells whether a row of the table is of a radial feature, or of one of its copies.
func rowOf(row plan.RadialRow, f *parts.Radial) bool {
	return row.Name == f.Name.Value || strings.HasPrefix(row.Name, f.Name.Value+"-")
}

// threadsMeet looks for threads that are apart on the outside and run into each other towards the axis, where their
// screws meet before they hold.
func (v *view) threadsMeet() {
	type thread struct {
		plan.RadialRow
		f *parts.Radial
	}
	var all []thread
	for _, row := range v.q.Radials {
		f := seq.At(v.p.Radials, func(f *parts.Radial) bool { return rowOf(row, f) })
		if f == nil || radialThread(f) == nil {
			continue
		}
		for _, o := range all {
			turn := (row.ClockDeg - o.ClockDeg) * math.Pi / 180
			need := (row.DiameterMm + o.DiameterMm) / 2
			apart := func(a, b float64) float64 {
				return math.Hypot(row.AxialMm-o.AxialMm, math.Hypot(b*math.Sin(turn), a-b*math.Cos(turn)))
			}
			low, lowest := max(0, row.OutsideMm/2-row.DepthMm), max(0, o.OutsideMm/2-o.DepthMm)
			near := func(from, at, high float64) float64 { return max(from, min(high, at*math.Cos(turn))) }
			gap := min(apart(low, near(lowest, low, o.OutsideMm/2)), apart(near(low, lowest, row.OutsideMm/2), lowest)) - need
			oneLine := math.Cos(turn) < geom.CloseMm-1 && geom.Alike(row.AxialMm, o.AxialMm)
			if gap < -geom.CloseMm && apart(row.OutsideMm/2, o.OutsideMm/2) > need && !oneLine {
				v.report(Check, f.Name.Value, f.Pos, Finding{
					What: row.Name + " and " + o.Name + " of " + v.p.Title.Value + " run into each other inside", Numbers: "they overlap by " + v.mm(-gap) + " before they end", OverMm: over(-gap),
					Rule: "a screw holds in a thread that no other crosses", Source: "by geometry", Fix: "less deep, or apart along the axis",
				})
			}
		}
		all = append(all, thread{row, f})
	}
}

// Metal wanted between an opening and the seam of a rolled tube, in thicknesses, common practice, no source; and the
// inside radius, in thicknesses, over which the middle of the sheet keeps its length: DIN 6935, the factor k is 1 over 5.
const (
	seamThicks = 3.0
	rollThicks = 5.0
)

// rolledTight finds a tube that is rolled so tightly that its blank, measured at the middle of the sheet, comes out
// other than drawn, and its rolls do not close it.
func rolledTight(v *view) {
	if f := v.p.Rolled; f != nil {
		v.atLeast("", v.p.Profile.Pos, v.openMm(), rollThicks*f.Thickness.Mm, Finding{
			What: v.p.Title.Value + " is rolled tightly: its inside radius is small for its sheet", Numbers: ", wanted at least ",
			Rule: "the middle of the sheet keeps its length where the inside radius is over five thicknesses", Source: "DIN 6935, from memory",
			Fix: "stock: {tube: ...}, a thinner sheet, or a trial piece",
		})
	}
}

// seamGap looks for openings across the seam of a rolled tube, lap and all, or beside it.
func (v *view) seamGap() {
	f, worst := v.p.Rolled, &worst{}
	if f == nil {
		return
	}
	for o := range seq.Refs(v.openings()) {
		gap := f.SeamGapMm(2*o.outerMm, o.clockDeg, o.aroundMm)
		if least := seamThicks * f.Thickness.Mm; geom.Over(least, gap) {
			worst.add(o.radial.Name.Value, gap, func(count int) {
				v.report(Check, o.radial.Name.Value, o.radial.Pos, Finding{
					What: o.title(v) + words.Either(!geom.Some(gap), " is cut through the seam", " lies close to the seam") + same(count),
					Numbers: words.Either(!geom.Some(gap), "seam at "+number(f.Seam.Deg)+"°, opening at "+number(o.clockDeg)+"°",
						v.mm(gap)+" of metal between them, wanted "+v.mm(least)), LeftMm: left(max(0, gap)),
					Rule: "an opening keeps three thicknesses off a seam that is welded", Source: practice, Fix: "seam: at another clock angle",
				})
			})
		}
	}
	worst.report()
}

// closeOpenings lists the pairs that can be too close. A box is an opening's
// clock angle and place along the axis, with the metal it wants on each side;
// it stands there a second time a turn on, for its neighbours across 0.
func closeOpenings(v *view, all []opening) [][2]int {
	radius := seq.Least(all, func(a opening) float64 { return a.outerMm })
	var boxes []box
	for i := range all {
		o := &all[i]
		room := o.leastMm(v)
		clock := math.Mod(o.clockDeg+720, 360)
		around := (o.aroundMm + room) / max(radius, geom.CloseMm) * 180 / math.Pi
		for _, at := range []float64{clock, clock + 360} {
			boxes = append(boxes, box{i, at - around, o.zMm - o.alongMm - room, at + around, o.zMm + o.alongMm + room})
		}
	}
	return meeting(boxes)
}

// metalBetween looks at the metal between two openings.
func (v *view) metalBetween(a, b *opening, worst *worst) {
	turn := math.Abs(math.Mod(a.clockDeg-b.clockDeg+720+180, 360) - 180)
	radius := math.Min(a.outerMm, b.outerMm)
	// Blind ones on opposite sides of a solid do not meet.
	around := turn*math.Pi/180*radius - a.aroundMm - b.aroundMm
	along := math.Abs(a.zMm-b.zMm) - a.alongMm - b.alongMm
	gap := words.Either(min(around, along) > 0, math.Hypot(around, along), math.Max(around, along))
	least := math.Min(a.leastMm(v), b.leastMm(v))
	if !geom.Over(least, gap) {
		return
	}
	worst.add(a.radial.Name.Value+" "+b.radial.Name.Value, gap, func(count int) {
		f := Finding{
			What:    a.title(v) + " and " + b.title(v) + " lie close together on the outside" + same(count),
			Numbers: v.mm(gap) + " of metal between them, wanted " + v.mm(least), LeftMm: left(gap),
			Rule: "metal beside an opening at least the wall, and no more than half the opening", Fix: "turn one of them round the part, or move it along the axis",
		}
		severity := Check
		if !geom.Some(gap) {
			severity, f.What = Stop, a.title(v)+" and "+b.title(v)+" run into each other on the outside"+same(count)
			f.Numbers = "they overlap by " + v.mm(-gap)
		}
		v.report(severity, b.radial.Name.Value, b.radial.Pos, f)
	})
}

// radialDepth looks for blind openings that come out in the bore, and for ones
// "through" into a bore that is not there.
func (v *view) radialDepth(f *parts.Radial) {
	z := v.axialMm(f)
	wallMm, bore := v.wallAt(z), radiusAt(v.inside, z)
	switch {
	case f.Through && bore == 0 && f.For != parts.Pins && !tommy().MatchString(f.Name.Value): // a pin or a bar goes right through
		v.report(Check, f.Name.Value, f.Pos, Finding{
			What:    f.Name.Value + " is drawn through, but there is no bore here: it comes out on the other side",
			Numbers: "solid, " + v.mm(2*wallMm) + " across at " + v.mm(z) + " from the front face", OverMm: over(2 * wallMm),
			Rule: "through ends in the bore, or runs right through a solid", Source: "by geometry", Fix: "give it a depth; for: pins, where one goes right through",
		})
	case !f.Through && bore > 0 && !geom.Over(wallMm, f.Depth.Mm):
		v.report(Check, f.Name.Value, f.Pos, Finding{
			What: f.Name.Value + " is blind, but comes out in the bore", Numbers: v.mm(f.Depth.Mm) + " deep in a wall of " + v.mm(wallMm), OverMm: over(f.Depth.Mm),
			Rule: "a blind opening keeps a floor", Source: "by geometry", Fix: "make it shallower, or depth: through",
		})
	case !f.Through && bore > 0:
		if drill, tip := v.radialDrillMm(f); geom.Over(tip, wallMm) {
			v.report(Check, f.Name.Value, f.Depth.Pos, Finding{
				What: f.Name.Value + " is blind, but its drill comes out inside", OverMm: over(tip - wallMm),
				Numbers: "drilled " + v.mm(drill) + " deep, with the point " + v.mm(tip) + ", in a wall of " + v.mm(wallMm),
				Rule:    "a blind hole keeps a floor", Source: "118° point by geometry; run-out of a thread by DIN 76-1", Fix: "make it shallower, or depth: through",
			})
		}
	}
}

// pointShare is the length of a 118° drill point as a share of the diameter:
// 0.5/tan 59°.
const pointShare = 0.3004

// radialDrillMm is how deep a blind hole in the outside is drilled, with the run-out of its thread, and how deep
// the point of the drill goes; 0 for what is milled.
func (v *view) radialDrillMm(f *parts.Radial) (drill, tip float64) {
	if f.Shape != parts.RadialHole || f.Through {
		return 0, 0
	}
	drill, dia := f.Depth.Mm, v.radialHoleMm(f)
	if t := radialThread(f); t != nil {
		drill, dia = fullMm(t, drill), t.TapDrillMm
	}
	return drill, drill + pointShare*dia
}

// crossing looks for holes from a face that meet an opening from the outside.
func crossing(v *view) {
	worst := &worst{}
	for _, o := range v.openings() {
		var floorMm float64 // radius where the opening ends
		if !o.radial.Through {
			floorMm = math.Max(0, o.outerMm-o.radial.Depth.Mm)
		}
		for h := range seq.Refs(v.holes) {
			r := h.centreMm()
			if r > o.outerMm || r+h.radiusMm < floorMm || r == 0 {
				continue
			}
			along := -h.span().OnMm(geom.Around(o.zMm, o.alongMm))
			turn := (geom.ClockDeg(h.middle()) - o.clockDeg) * math.Pi / 180
			if !sameSide(geom.ClockDeg(h.middle()), o.clockDeg) {
				continue
			}
			across := r*math.Abs(math.Sin(turn)) - h.radiusMm - o.aroundMm
			gap := math.Max(along, across)
			if !geom.Short(gap) {
				continue
			}
			worst.add(o.radial.Name.Value+" "+h.name, gap, func(count int) {
				v.report(Check, h.name, h.pos, Finding{
					What: h.title() + " runs into " + o.title(v) + same(count), Numbers: "they overlap by " + v.mm(-gap), OverMm: over(-gap),
					Rule: "a drill that comes out in the side of another hole runs off, and a tap breaks",
					Fix:  "turn the pattern, make the hole shallower, or move the opening",
				})
			})
		}
	}
	worst.report()
}

// sameSide tells whether two clock angles lie on one side of the axis.
func sameSide(a, b float64) bool { return math.Cos((a-b)*math.Pi/180) > 0 }

// blindSlot tells whether it is a slot or keyway that is cut into a part and not through.
func blindSlot(f *parts.Radial) bool { return f.Shape == parts.RadialSlot && !f.Through }

// fast tells whether a seat has what holds the thing on it both round and along: a hole or slot across
// it, flats, a taper, a knurl, or a fit with interference throughout.
func (v *view) fast(c *cylinder) bool {
	class := strings.TrimRight(c.Drawn.Size.Fit.Class.Value, "0123456789")
	return c.Drawn.Taper != nil || c.Drawn.Knurl != nil || class >= "p" && class <= "zc" ||
		slices.ContainsFunc(v.q.Flats, func(f plan.FlatsRow) bool { return f.In == c.Name }) ||
		seq.At(v.p.Radials, func(f *parts.Radial) bool { z := v.axialMm(f); return z > c.FromMm && z < c.ToMm }) != nil
}

// offBranch is how far the middle of an opening lies from that of a branch of
// the given radius on the same tube, infinite where it does not open under it.
func offBranch(row plan.RadialRow, z, clockDeg, half float64) float64 {
	turn := math.Remainder(row.ClockDeg-clockDeg, 360) * math.Pi / 180
	off := math.Hypot(row.AxialMm-z, turn*row.OutsideMm/2)
	if reach := half + math.Max(row.AlongMm, row.AroundMm)/2; off > reach+half {
		return endless
	}
	return off
}
