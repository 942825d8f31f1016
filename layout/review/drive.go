package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// keyShare is the least that a key bears along, as a share of its shaft's
// diameter. Common practice, no source: as long as the diameter is usual.
const keyShare = 0.5

// looseClass is the first class of a shaft, by its letter, on which a keyed hub
// sits well enough. Common practice, no source: h, j and k are usual, g slides.
const looseClass = "g"

// keyMPa is the pressure on the side of a key, over half its height, that any of the
// usual metals bears. Common practice, no source: steel takes twice as much.
const keyMPa = 40.0

// keyYield is the share of its shaft's yield that the pressure on the side of a key stays under. Common practice,
// no source: what presses harder sets its keyway.
const keyYield = 0.9

// bearsMm is the length on which the side of a key, on half its height, carries a torque at a pressure.
func bearsMm(k plan.KeywayRow, nm, mpa float64) float64 {
	return 2000 * nm / k.DiameterMm / (mpa * k.HeightMm / 2)
}

// keyLength looks for a key that bears on hardly any length: where a limiter holds the
// torque, for that; else for its shaft, or for what the motor puts through it.
func (v *view) keyLength(k plan.KeywayRow) {
	f := Finding{
		What: "the key of " + k.Name + " is short for its shaft", Rule: "a key bears along half the diameter of its shaft at the least",
		Fix: "a longer keyway, or accept it for a light drive",
	}
	bears, least := k.Span().LengthMm()-float64(k.RoundEnds)*k.WidthMm/2, keyShare*k.DiameterMm
	limiter, m := v.limiterNm(), v.motor()
	switch driven := m.Drives.Part == v.p.Name.Value && m.Drives.Feature == k.In; {
	case k.HeightMm == 0:
	case limiter > 0:
		least = bearsMm(k, limiter, keyMPa)
		f.What, f.Rule, f.Fix = "the key of "+k.Name+" is short for what the limiter lets through", v.w.Torque(limiter)+" on half the height of the key, at "+
			v.w.Stresses(keyMPa, keyMPa, 0), "a longer keyway, or a limiter set lower"
	case driven:
		mpa, nm := keyYield*v.yieldMPa(k.DiameterMm), m.OutputNm()
		if mpa > 0 && bearsMm(k, nm, mpa) > least {
			least = bearsMm(k, nm, mpa)
			f.What, f.Rule, f.Fix = "the key of "+k.Name+" is short for what the motor puts through it", v.w.Torque(nm)+
				" on half the height of the key, at nine tenths of the yield of "+v.p.Material.Value+", "+
				v.w.Stresses(mpa, mpa, 0), "a longer keyway, a larger shaft, or a limiter"
		}
	}
	f.Numbers = words.Either(k.RoundEnds == 2, " between its round ends, wanted ", " along its straight sides, wanted ")
	if !k.Inside && k.Woodruff == "" {
		v.atLeast(k.Name, entryPos(v.p, k.Name), bears, least, f)
	}
}

// drive looks for seats of what turns a shaft without a keyway or with play, and
// for keys that bear on hardly any length.
var drive = together(each(everyKeyway, (*view).keyLength), each(everyOutside, (*view).driven, (*view).drives))

// driven looks at the step that the motor drives.
func (v *view) driven(c *cylinder) {
	m := v.motor()
	switch {
	case m.Drives.Part != v.p.Name.Value || m.Drives.Feature != c.Name:
	case v.holdsBy(c):
		v.twist(c, cmp.Or(v.limiterNm(), m.OutputNm()))
	default:
		v.report(Check, c.Name, m.Drives.Pos, Finding{
			What: "the motor is to drive " + c.Name + ", which nothing turns", Numbers: "no keyway, no flat, and a fit that may be loose",
			Rule: "what drives is keyed, or shrunk on", Fix: "drives: the step that its coupling sits on, or a keyway there",
		})
	}
}

// drives looks at a step by which something that sits on it is turned.
func (v *view) drives(c *cylinder) {
	stands := slices.ContainsFunc(v.job.Loose, func(e parts.Loose) bool { return v.stoodOn(&e, c.Name) })
	turns := driven().MatchString(c.Seat)
	if !c.fitted() || !stands && !turns {
		return
	}
	_, high, _ := limitsOf(c.Drawn.Size)
	if class := c.Drawn.Size.Fit.Class.Value; c.Drawn.Taper == nil && class != "" && class < looseClass {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What:    "the " + cmp.Or(c.Seat, "coupling") + " sits loose on " + c.Name,
			Numbers: v.mm(2*c.RadiusMm()) + " " + class + ": " + v.mm(2*c.RadiusMm()-high) + " of play at the least in a bore of its size",
			Rule:    "what is keyed sits without play, or the key works loose", Fix: "fit: h6 or k6",
		})
	}
	if turns && !v.holdsBy(c) {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What: "nothing turns the " + c.Seat + " on " + c.Name, Numbers: "no keyway, no flat, and a fit that may be loose",
			Rule: "what drives is keyed, or shrunk on", Fix: "add a keyway, or accept it where screws or a clamp hold",
		})
	}
}

// yieldMPa is what the metal of a part yields at where it is so thick; 0 where that is not known.
func (v *view) yieldMPa(sectionMm float64) float64 {
	metal, err := material.Find(v.p.Material.Value)
	if err != nil {
		return 0
	}
	s, _ := metal.Strength(sectionMm)
	return s.YieldMPa
}

// twist looks for a driven step that the motor's torque shears by more than half of what its metal
// yields at, taken as solid outside and open as its bore.
func (v *view) twist(c *cylinder, nm float64) {
	d, open := 2*c.RadiusMm(), 0.0
	for _, in := range v.inside {
		if geom.Over(math.Min(in.ToMm, c.ToMm), math.Max(in.FromMm, c.FromMm)) {
			open = math.Max(open, 2*in.RadiusMm())
		}
	}
	const share = 0.577 / 2 // of yield: its shear by von Mises, twice over
	yield := v.yieldMPa(d)
	if mpa := 16 * 1000 * nm * d / (math.Pi * (math.Pow(d, 4) - math.Pow(open, 4))); yield > 0 && mpa > share*yield {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What: c.Name + " is thin for the torque that drives it", Numbers: v.w.Torque(nm) + ": " + v.w.Stresses(mpa, mpa, 0) +
				" of shear, wanted at most " + v.w.Stresses(share*yield, share*yield, 0) + " in " + v.p.Material.Value + ", without its keyway",
			Rule: "a shaft takes its torque at half of its shear yield", Fix: "a larger diameter, a stronger metal, or a limiter",
		})
	}
}

// holdsBy tells whether a seat has what turns the thing on it.
func (v *view) holdsBy(c *cylinder) bool {
	return v.fast(c) || slices.ContainsFunc(v.q.Keyways, func(k plan.KeywayRow) bool { return k.In == c.Name })
}

// keySlot is a slot or keyway that a key may go into.
type keySlot struct {
	part, name                 string
	wideMm, longMm, straightMm float64 // straight between its round ends
}

// keySlots are those of all parts of the job.
func (r *reviewer) keySlots() (slots []keySlot) {
	for _, v := range r.all() {
		of := " of " + v.p.Title.Value
		for f := range seq.Refs(v.p.Radials) {
			if blindSlot(f) && f.Along.Mm > f.Around.Mm && !isWasher(f) {
				slots = append(slots, keySlot{v.p.Name.Value, f.Name.Value + of, f.Around.Mm, f.Along.Mm, f.Along.Mm})
			}
		}
		slots = append(slots, seq.Map(v.q.Keyways, func(k plan.KeywayRow) keySlot {
			long := k.Span().LengthMm()
			return keySlot{v.p.Name.Value, k.Name + of, k.WidthMm, long, long - float64(v.roundEnds(k))*k.WidthMm/2}
		})...)
	}
	return slots
}

// roundEnds is how many ends of a keyway an end mill leaves round: those inside a shaft.
func (v *view) roundEnds(k plan.KeywayRow) (n int) {
	c := named(v.outside, k.In)
	if k.Inside || k.Woodruff != "" || k.RunoutMm > 0 || c == nil {
		return 0
	}
	for _, e := range c.ends(k) {
		if geom.Some(e.risesMm(c)) || geom.Some(e.leftMm) {
			n++
		}
	}
	return n
}

// slotsOver are those of the parts whose keyway is to go over the part, by their words; all where there are none.
func (v *view) slotsOver(slots []keySlot) []keySlot {
	for e := range seq.Refs(v.job.Loose) {
		its := seq.Keep(slots, func(s keySlot) bool { return s.part == e.Part.Value })
		if e.Part.Value != v.p.Name.Value && len(its) > 0 && v.p.NamedIn(e.How.Value) && strings.Contains(e.How.Value, "keyway") {
			slots = its
		}
	}
	return slots
}

// barKey compares a part that is a key by its title with the slots and keyways
// of the job: it goes into one of its width that is no shorter.
func (v *view) barKey() {
	if !isKey(v.p) {
		return
	}
	all := v.keySlots()
	own, title := v.slotsOver(all), v.p.Title.Value
	thick, _, long := v.keyMm()
	f := v.here("", v.p.Name.Pos)
	f.Rule, f.Source = "a key goes into a keyway of its own size", "by geometry"
	if len(own) == 0 {
		f.What, f.Fix = "the job has no keyway for "+title, "a keyway, or for: other where it is no key"
		v.add(f)
		return
	}
	off := func(s keySlot) float64 { return math.Abs(s.wideMm - thick) }
	best := slices.MinFunc(own, func(a, b keySlot) int {
		return cmp.Or(cmp.Compare(geom.Clean(off(a)), geom.Clean(off(b))), cmp.Compare(b.longMm, a.longMm))
	})
	of := words.Either(len(own) < len(all), " has not the width of the keyway that is to go over it", " has the width of no keyway")
	v.firstOf(f,
		flaw{geom.Some(off(best)), Finding{What: title + of, Numbers: v.mm(thick) + "; " + best.name + " is " + v.mm(best.wideMm) + " wide", Fix: "one width for both", OverMm: over(off(best))}},
		flaw{geom.Over(long, best.longMm), Finding{
			What: title + " is longer than the longest keyway of its width", Numbers: v.mm(long) + "; " + best.name + " is " + v.mm(best.longMm) + " long", OverMm: over(long - best.longMm),
			Fix: "a longer keyway, or a shorter key"}},
		flaw{v.p.Kind == parts.BarPart && geom.Over(long, best.straightMm), Finding{
			What:    title + " is sawn square, and longer than its keyway is between the round ends",
			Numbers: v.mm(long) + "; " + best.name + " is straight for " + v.mm(best.straightMm), OverMm: over(long - best.straightMm),
			Rule: "the corners of a square key do not go into the round end that the cutter leaves", Fix: "a shorter key, a longer keyway, or the ends of the key filed round and accept it"}},
	)
}

// isKey tells whether a flat part or a bar is a key.
func isKey(p *parts.Part) bool {
	return p.For == parts.AKey && (p.Flat() || p.Kind == parts.BarPart)
}

// keyMm are the sizes of a part that is a key: across its keyway, up out of it and along it.
func (v *view) keyMm() (thick, high, long float64) {
	if b := v.p.Bar; v.p.Kind == parts.BarPart {
		return b.Depth.Mm, b.Width.Mm, b.Length.Mm
	}
	wide, across := v.box()
	return v.lengthMm, min(wide, across), max(wide, across)
}

// motionShare is from what length on, in diameters, a nut is there to travel and
// not to hold. Common practice, no source: a nut that holds is about one high.
const motionShare = 2.0

// seizes looks for a nut that travels on a screw of its own metal, or steel on steel.
func (v *view) seizes(w *view, nut *cylinder, screw *threads.Thread) {
	a, errA := material.Find(v.p.Material.Value)
	b, errB := material.Find(w.p.Material.Value)
	steel := func(m material.Material) bool { return m.Kind.Data().Family == material.Steel }
	if errA != nil || errB != nil || a.Name != b.Name && !(steel(a) && steel(b)) {
		return
	}
	v.report(Check, nut.Name, v.p.Material.Pos, Finding{
		What: v.p.Title.Value + " of " + a.Name + " travels on " + w.p.Title.Value + " of " + b.Name + ": like on like seizes", Numbers: v.mm(nut.LengthMm()) + " of thread on " + screw.Designation,
		Rule: "a nut that travels is of bronze or iron, its screw of steel", Fix: "material: CuSn12 for the nut, or accept it for a slow, greased thread",
	})
}

// screwSeizes looks for that where a joint has a screw run in its nut.
func (r *reviewer) screwSeizes(j *parts.Joint) {
	screw, nut := r.viewOf(j.Screw.Screw.Part), r.viewOf(j.Screw.Nut.Part)
	if step := named(nut.inside, j.Screw.Nut.Feature); step != nil && step.Size.Thread != nil && r.job.Runs(j) {
		nut.seizes(screw, step, step.Size.Thread)
	}
}

// nutRoom looks for a thread that is shorter, beyond the cone, than the locking nut on it with
// its washer and one turn for the chamfer.
func (r *reviewer) nutRoom(j *plan.JointPlan, t threads.Thread) {
	nut := lockNutOf(t)
	wanted := nut.highMm
	shaft := r.viewOf(j.A.Part)
	if slices.ContainsFunc(shaft.p.Radials, func(f parts.Radial) bool { return isWasher(&f) }) {
		wanted += nut.washerMm + t.PitchMm
	}
	for _, c := range shaft.outside {
		if c.Drawn.Size.Thread.Value == j.Bearing.HeldBy {
			shaft.atLeast(c.Name, c.Drawn.Pos, r.beyondCone(j, c), wanted, Finding{
				What: c.Name + " has no room for the nut that adjusts " + j.Bearing.Bearing, Numbers: " of " + t.Designation + ", wanted ",
				Rule: "the thread is longer than its locking nut", Source: "ISO 2982-2", Fix: "a longer thread",
			})
		}
	}
}

// beyondCone is how long the thread of a nut that sets a bearing is beyond the cone.
func (r *reviewer) beyondCone(j *plan.JointPlan, c *cylinder) float64 {
	long, b := c.LengthMm(), j.Bearing
	me := r.along(j).Find(j.A.Instance())
	if me == nil || b.LargeEndDir == 0 {
		return long
	}
	end := me.Own(b.LargeEndMm)
	far := words.Either(me.Own(b.LargeEndMm+b.LargeEndDir) < end, c.FromMm, c.ToMm)
	return min(long, math.Abs(far-end))
}

// nutOf tells whether a part has a thread inside.
func (r *reviewer) nutOf(part, designation string) bool {
	v := r.viewOf(part)
	return v != nil && slices.ContainsFunc(v.inside, func(c *cylinder) bool { return c.Size.Thread != nil && c.Size.Thread.Designation == designation })
}

// lockNuts looks for metric threads, and left-hand ones in inches, that adjust a bearing and that no locking nut
// fits, made or bought.
func (r *reviewer) lockNuts(j *plan.JointPlan) {
	b := j.Bearing
	t, err := threads.Parse(b.HeldBy)
	if !b.Adjusted || b.HeldBy == "" || err != nil {
		return
	}
	made := slices.ContainsFunc(r.all(), func(v *view) bool { return r.nutOf(v.p.Name.Value, t.Designation) })
	if t.TPI > 0 {
		ordered := slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool { return e.As == parts.ANut && leftHanded().MatchString(e.Item.Value) })
		if t.LeftHand && !made && !ordered {
			r.ofJoint(j, Finding{
				What: "no locking nut has the left-hand thread " + t.Designation + " that adjusts " + b.Bearing,
				Rule: "locking nuts of the series are right-hand: their tongued washer holds them either way", Source: "ABMA 8.2, from memory",
				Fix: "a right-hand thread, or a nut among the parts or ordered as left-hand",
			})
		}
		return
	}
	r.nutRoom(j, t)
	if lockNuts[t.MajorMm].pitchMm == t.PitchMm && !t.LeftHand || made {
		return
	}
	fits := math.Floor(b.BoreMm + geom.CloseMm)
	for fits > 10 && lockNuts[fits].pitchMm == 0 {
		fits--
	}
	r.ofJoint(j, Finding{
		What: "no locking nut has the thread " + t.Designation + " that adjusts " + b.Bearing,
		Rule: "a bearing is adjusted by a locking nut of the series, or one of the job", Source: "ISO 2982-2",
		Fix: "a thread of the series, such as M" + words.Trim(fits, 0) + "x" + words.Trim(lockNuts[fits].pitchMm, 2) + ", or a nut among the parts",
	})
}
